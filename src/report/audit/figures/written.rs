//! What to say of readings that look written rather than read.

use super::{counted, percent, short};
use crate::audit::findings::{Digits, Repeated};

/// A share of zeros and fives that is told as rounding: a fifth is to be expected, and half as much again is our own choice.
const ROUNDED: f64 = 0.3;

/// What else may make readings look written.
pub(in super::super) const INNOCENT: &str = "Each has innocent causes, too: a meter that steps by fives, a supply that is steady, readings noted on paper and typed \
     in the van. Ask before anything is concluded.";

/// What is uneven in last digits: rounding, where that is it, or the digit that comes most.
pub(in super::super) fn unevenness(digits: &Digits) -> String {
    let all: u64 = digits.counts.iter().sum();
    if digits.zeros_and_fives > ROUNDED {
        let share = percent(digits.zeros_and_fives);
        return format!("{share} of {all} are 0 or 5, where a fifth is to be expected");
    }
    let most = (0..).zip(digits.counts).max_by_key(|(_, count)| *count);
    let (digit, times) = most.unwrap_or_default();
    let tenth = all.div_ceil(10);
    format!("of {all}, {times} are {digit}, where some {tenth} are to be expected")
}

/// Of whom the same values again and again are told, and of whom not.
pub(in super::super) fn whose_values(repeated: &[Repeated]) -> String {
    let each = repeated.chunk_by(|one, other| one.technician == other.technician);
    let each: Vec<String> = (each.filter_map(<[Repeated]>::first))
        .map(|one| {
            format!(
                "{} in {} of {}",
                short(&one.technician),
                one.readings,
                one.of_readings
            )
        })
        .collect();
    format!(
        "A technician is named only where at least half of the readings that they took eight times or more repeat so: {}. One or two \
         say nothing: the dial of a meter is chosen, and a town has one altitude.",
        each.join(", ")
    )
}

/// How often the others gave a value that one technician gives again and again.
pub(in super::super) fn others_gave(repeated: &Repeated) -> String {
    format!(
        "the others gave that {} of {}",
        counted(repeated.others, "time", "times"),
        repeated.others_of
    )
}
