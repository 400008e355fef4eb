//! Sentences that both faces say.

use crate::walk::{Again, LackKind};

/// Why a value is asked for a second time.
pub fn why_again(again: &Again) -> String {
    match again {
        Again::Borderline { typed, bound } => {
            format!("{typed} is too near to its bound, {bound}, for the meter to tell. Take it once more.")
        }
        Again::Implausible { typed, range } => {
            format!("{typed} is outside what is plausible, {range}. Check the meter, then take it once more.")
        }
        Again::Retake => "You wanted to take it again.".to_owned(),
        Again::ForProof => "The proof of a verdict lacks it.".to_owned(),
    }
}

/// Why a line of a proof does not hold.
pub fn why_lacking(why: LackKind) -> &'static str {
    match why {
        LackKind::NotTaken => "not taken",
        LackKind::Borderline => "too near to its bound to tell",
        LackKind::Contradicted => "what was taken says otherwise",
    }
}
