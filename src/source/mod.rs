//! Where something was written, and what is wrong with it: files, spans, diagnostics, and text that is safe to show.

mod ascii;
mod diagnostic;
mod file;
mod layer;
mod nearest;
mod safe;
mod wrap;

pub use ascii::ascii;
pub use diagnostic::{Diagnostic, Level, Walked, WitnessAnswer};
pub use file::{FileId, Files, Place, SourceFile, Span, Unread};
pub use layer::Layer;
pub use nearest::nearest;
pub use safe::{Safe, is_plain, is_unsafe, safe, safe_lines};
pub use wrap::{wrap, wrap_ranges};
