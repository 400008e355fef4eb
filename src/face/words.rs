//! Sentences that both faces say.

use crate::source::{Safe, safe};
use crate::walk::{Again, LackKind, TrailEntry};

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

/// What was asked and what was answered: `Inlet pressure: 4.5 in.w.c.`
pub fn asked_and_answered(entry: &TrailEntry) -> Safe {
    let colon = if entry.title.as_str().ends_with(['?', ':', '.']) {
        ""
    } else {
        ":"
    };
    safe(&format!("{}{colon} {}", entry.title, entry.answer))
}

/// Why a line of a proof does not hold.
pub fn why_lacking(why: LackKind) -> &'static str {
    match why {
        LackKind::NotTaken => "not taken",
        LackKind::Borderline => "too near to its bound to tell",
        LackKind::Contradicted => "what was taken says otherwise",
    }
}
