//! Sentences that both faces say.

use crate::source::{Safe, safe};
use crate::walk::{Again, Claimed, LackKind, NotLookedAt, ShownValue, TrailEntry};

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
        Again::Elsewhere { put, shown } => {
            format!("There one measures “{put}”, and the meter shows {shown}. That is not what is asked.")
        }
    }
}

/// What was asked and what was answered: `Inlet pressure: 4.5 in.w.c.`
pub fn asked_and_answered(entry: &TrailEntry) -> Safe {
    safe(&format!("{} {}", led(&entry.title), entry.answer))
}

/// What leads to an answer: with a colon, unless it ends as a question or a sentence does.
fn led(title: &Safe) -> Safe {
    let colon = if title.as_str().ends_with(['?', ':', '.']) {
        ""
    } else {
        ":"
    };
    safe(&format!("{title}{colon}"))
}

/// Over what was not looked at: `Venting, since “Vent sloped wrong” was noted`
pub fn not_looked_at_since(visit: &NotLookedAt) -> String {
    format!("{}, since “{}” was noted", visit.tree, visit.because)
}

/// A value that nobody was asked for and what it means: `Temperature rise: 56 °F: as the plate asks`
pub fn came_out(came_out: &ShownValue) -> Safe {
    let means = (came_out.means.as_ref()).map(|means| format!(": {means}"));
    let (title, value) = (led(&came_out.title), &came_out.value);
    safe(&format!("{title} {value}{}", means.unwrap_or_default()))
}

/// Questions that may still come at worst, above which nothing is said: a bound so far off tells nobody anything.
const FAR: usize = 20;

/// How many questions may still come, where that is near enough to be of use.
pub fn near(at_worst: usize) -> Option<usize> {
    (at_worst <= FAR).then_some(at_worst)
}

/// How many of a list are named before the rest is only counted: after an early answer half a library can be out of reach.
const FEW: usize = 4;

/// The first few of a list of faults, and how many more there are.
pub fn few(faults: &[Safe]) -> Safe {
    let named: Vec<&str> = faults.iter().take(FEW).map(Safe::as_str).collect();
    let named = named.join(", ");
    safe(&match faults.len().saturating_sub(FEW) {
        0 => named,
        more => format!("{named}, and {more} more"),
    })
}

/// Why a line of a proof does not hold.
pub fn why_lacking(why: LackKind) -> &'static str {
    match why {
        LackKind::NotTaken => "not taken",
        LackKind::Borderline => "too near to its bound to tell",
        LackKind::Contradicted => "what was taken says otherwise",
    }
}

/// Over the alternatives of a line of a proof.
pub const ANY_ONE: &str = "any one of these";

/// What an alternative of a proof takes, with the mark of a list before the first, its words, and how each stands.
pub fn alternative(claims: &[Claimed]) -> impl Iterator<Item = (&'static str, Safe, &'static str)> {
    claims.iter().enumerate().map(|(number, claimed)| {
        let (mark, and) = if number == 0 { ("-", "") } else { (" ", "and ") };
        let words = safe(&format!("{and}{}", claimed.words));
        (mark, words, claimed.because.map_or("holds", why_lacking))
    })
}
