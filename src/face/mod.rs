//! What both faces share: the first screen as the caller hands it over, how a call is left, and a few sentences.

mod home;
mod leave;
mod look;
mod words;

pub use home::{Home, HomeChoice, HomeLine};
pub use leave::Left;
pub use look::Look;
pub use words::{
    ANY_ONE, alternative, asked_and_answered, came_out, few, near, not_looked_at_since, why_again,
    why_lacking,
};
