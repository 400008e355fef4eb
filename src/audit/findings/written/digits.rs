//! Last digits: those of a meter come about equally often, those of a person do not.

use std::collections::BTreeMap;
use std::sync::Arc;

use serde::Serialize;

use super::super::super::bits::Bits;
use super::super::super::rows::Sessions;
use super::super::super::statistics::{apart, digits, false_discovery};
use super::super::super::visits::{NameNo, Visits};

/// Of a list of technicians who stand out, so large a share may do so by chance. The digits of a call hang together, as a voltage
/// is measured at several places: those of honest technicians are up to a quarter farther off than chance alone makes them, and one in a
/// hundred would be named.
const BY_CHANCE: f64 = 0.001;

/// A technician whose last digits are uneven, and more so than those of the others.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Digits {
    /// Who.
    pub technician: String,
    /// How often each digit from 0 to 9 came last, in readings of two digits and more; the same value of a reading counts three times
    /// at most.
    pub counts: [u64; 10],
    /// The same for all others, but for those who stood out more.
    pub others: [u64; 10],
    /// How far from equal shares: the chi-square of the counts, without the zeros where those are few.
    pub chi_square: f64,
    /// How often chance alone would be as far, corrected for looking at every technician.
    pub chance: f64,
    /// How often chance alone would set these counts so far apart from the others'; none where the others are too few.
    pub chance_against_others: Option<f64>,
    /// The share of zeros and fives, by which rounding shows; a fifth is expected.
    pub zeros_and_fives: f64,
    /// The calls.
    pub sessions: Sessions,
}

/// Counts last digits.
#[derive(Debug, Default)]
pub(super) struct LastDigits {
    technicians: BTreeMap<NameNo, [u64; 10]>,
    /// The calls with such digits.
    calls: Bits,
}

impl LastDigits {
    /// A reading as it was typed, and whether it counts.
    pub fn add(&mut self, typed: &str, number: u32, technician: NameNo, counts: bool) {
        if let Some(digit) = last_digit(typed) {
            self.technicians.entry(technician).or_default()[digit] += u64::from(counts);
            self.calls.set(number);
        }
    }

    pub fn found(self, visits: &Arc<Visits>) -> Vec<Digits> {
        let mut all = [0; 10];
        for counts in self.technicians.values() {
            all.iter_mut().zip(counts).for_each(|(all, count)| *all += count);
        }
        let tested: Vec<(NameNo, [u64; 10], digits::Digits)> = (self.technicians.iter())
            .filter_map(|(name, counts)| Some((*name, *counts, digits::test(counts)?)))
            .collect();
        let chances: Vec<f64> = tested.iter().map(|(_, _, test)| test.chance).collect();
        let adjusted = false_discovery::adjusted(&chances);
        let mut uneven: Vec<_> = (tested.into_iter().zip(adjusted))
            .filter(|(_, chance)| *chance <= BY_CHANCE)
            .collect();
        // The farthest off first, and out of the others once found: one who makes readings up would set all the rest apart.
        uneven.sort_by(|((.., one), _), ((.., other), _)| other.chi_square.total_cmp(&one.chi_square));
        let mut found = Vec::new();
        for ((name, counts, test), chance) in uneven {
            let mut others = all;
            others
                .iter_mut()
                .zip(counts)
                .for_each(|(other, count)| *other -= count);
            let chance_against_others = apart::chance(&counts, &others);
            // Where everybody's are uneven, the meters are, or what is measured.
            if chance_against_others.is_none_or(|chance| chance <= BY_CHANCE) {
                all = others;
                found.push(Digits {
                    technician: visits.owned(name).unwrap_or_default(),
                    counts,
                    others,
                    chi_square: test.chi_square,
                    chance,
                    chance_against_others,
                    zeros_and_fives: test.zeros_and_fives,
                    sessions: Sessions::of_calls(visits, self.calls_of(visits, name)),
                });
            }
        }
        found.sort_by(|one, other| one.technician.cmp(&other.technician));
        found
    }

    /// The calls of a technician with such digits: so few are asked for that no list is kept for each.
    fn calls_of(&self, visits: &Visits, technician: NameNo) -> Vec<u32> {
        let theirs = (0..)
            .zip(visits.iter())
            .filter(|(number, visit)| visit.technician == technician && self.calls.has(*number));
        theirs.map(|(number, _)| number).collect()
    }
}

/// The last digit of a number as it was typed, where at least two of its digits matter.
fn last_digit(typed: &str) -> Option<usize> {
    let number: &str = typed.trim_start_matches(['+', '-', '−']);
    let end = number
        .find(|c: char| !c.is_ascii_digit() && c != '.' && c != ',')
        .unwrap_or(number.len());
    let (number, rest) = number.split_at(end);
    let matter = number
        .bytes()
        .filter(u8::is_ascii_digit)
        .skip_while(|byte| *byte == b'0')
        .count();
    let last = number.bytes().rfind(u8::is_ascii_digit)?;
    (matter >= 2 && !rest.starts_with(['e', 'E'])).then(|| usize::from(last - b'0'))
}

#[cfg(test)]
mod tests {
    use super::last_digit;

    #[test]
    fn the_last_digit_is_that_of_the_number_as_it_was_typed() {
        for (typed, digit) in [
            ("24.1 V", Some(1)),
            ("120 V", Some(0)),
            ("-0.35 in.w.c.", Some(5)),
            ("3.50 in.w.c.", Some(0)),
            ("80,000 BTU/h", Some(0)),
        ] {
            assert_eq!(last_digit(typed), digit, "{typed}");
        }
    }

    #[test]
    fn a_number_of_one_digit_says_nothing() {
        for typed in ["0 V", "0.0 V", "7 uA", "0.7 uA", "", "V", "1e9 ohm"] {
            assert_eq!(last_digit(typed), None, "{typed}");
        }
    }
}
