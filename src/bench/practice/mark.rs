//! What came of a practice call in one line of its record, written and read again.

use super::came::Came;
use super::debrief::Debrief;

/// What came of a practice call, as its record keeps it.
#[derive(Clone, Debug, PartialEq)]
pub struct Mark {
    /// What it came to.
    pub came: Came,
    /// Minutes it took.
    pub minutes: f64,
    /// Minutes that the tree takes.
    pub tree_minutes: f64,
    /// Probes that were put elsewhere than asked.
    pub misplaced: usize,
    /// Titles of the good parts that were condemned, or `none`.
    pub condemned: String,
    /// How many dangers were overlooked.
    pub overlooked: usize,
    /// How many things were left open.
    pub left_open: usize,
    /// How many other faults were named before the last, unproven.
    pub named_before: usize,
    /// What was wrong.
    pub truth: String,
}

const BEGINS: &str = "Practice: ";
const TOOK: &str = "; ";
const TREE: &str = " min, the tree ";
const MISPLACED: &str = " min; probes misplaced: ";
const CONDEMNED: &str = "; parts condemned for nothing: ";
const OVERLOOKED: &str = "; dangers overlooked: ";
const OPEN: &str = "; left open: ";
const NAMED: &str = "; named before: ";
const TRUTH: &str = "; it was: ";
const NONE: &str = "none";

impl Mark {
    /// Of a call that has ended.
    pub fn of(debrief: &Debrief) -> Self {
        Self {
            came: debrief.came(),
            minutes: debrief.minutes,
            tree_minutes: debrief.tree_minutes,
            misplaced: debrief.misplaced,
            condemned: match debrief.condemned_for_nothing.as_slice() {
                [] => NONE.to_owned(),
                parts => parts.join(", "),
            },
            overlooked: debrief.overlooked_at_gate.len() + debrief.left_running.len(),
            left_open: debrief.left_open.len(),
            named_before: debrief.named_before.len(),
            truth: match debrief.truth.as_slice() {
                [] => "nothing, the furnace is sound".to_owned(),
                truth => truth.join(", and "),
            },
        }
    }

    /// The line.
    pub fn line(&self) -> String {
        let Self {
            came,
            minutes,
            tree_minutes,
            misplaced,
            condemned,
            overlooked,
            left_open,
            named_before,
            truth,
        } = self;
        let came = came.words();
        format!(
            "{BEGINS}{came}{TOOK}{minutes}{TREE}{tree_minutes}{MISPLACED}{misplaced}{CONDEMNED}{condemned}{OVERLOOKED}\
             {overlooked}{OPEN}{left_open}{NAMED}{named_before}{TRUTH}{truth}"
        )
    }

    /// What a line says; none where it says something else.
    pub fn read(line: &str) -> Option<Self> {
        let (came, rest) = line.strip_prefix(BEGINS)?.split_once(TREE)?;
        let (came, minutes) = came.rsplit_once(TOOK)?;
        let (tree_minutes, rest) = rest.split_once(MISPLACED)?;
        let (misplaced, rest) = rest.split_once(CONDEMNED)?;
        let (rest, truth) = rest.rsplit_once(TRUTH)?;
        let (rest, named_before) = rest.rsplit_once(NAMED)?;
        let (rest, left_open) = rest.rsplit_once(OPEN)?;
        let (condemned, overlooked) = rest.rsplit_once(OVERLOOKED)?;
        Some(Self {
            came: Came::ALL.iter().copied().find(|known| known.words() == came)?,
            minutes: minutes.parse().ok()?,
            tree_minutes: tree_minutes.parse().ok()?,
            misplaced: misplaced.parse().ok()?,
            condemned: condemned.to_owned(),
            overlooked: overlooked.parse().ok()?,
            left_open: left_open.parse().ok()?,
            named_before: named_before.parse().ok()?,
            truth: truth.to_owned(),
        })
    }

    /// Whether a good part was condemned.
    pub fn has_condemned(&self) -> bool {
        self.condemned != NONE
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_line_is_read_as_it_was_written() {
        for came in Came::ALL {
            let mark = Mark {
                came: *came,
                minutes: 12.5,
                tree_minutes: 38.0,
                misplaced: 2,
                condemned: "Inducer; with motor, Gas valve".to_owned(),
                overlooked: 5,
                left_open: 1,
                named_before: 3,
                truth: "The line sags under load, and the filter is loaded".to_owned(),
            };
            assert_eq!(Mark::read(&mark.line()), Some(mark));
        }
        for other in [
            "Practice: the gate was left out",
            "a note",
            "Practice: right; 1 min, the tree 2 min",
            // As it was written before it said what was wrong.
            "Practice: wrong; 1 min, the tree 2 min; probes misplaced: 0; parts condemned for nothing: none; dangers \
             overlooked: 0; left open: 0; named before: 0",
        ] {
            assert_eq!(Mark::read(other), None, "{other}");
        }
    }
}
