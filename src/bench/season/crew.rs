//! Who works the season, and how.

use crate::bench::dice::Dice;

/// What a technician makes of the trees.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Habit {
    /// Reads what is asked, takes what a proof lacks, puts back what was opened.
    Careful,
    /// Often knows what it is before looking, sees what would fit, and insists on a part that is not proven.
    ChangesParts,
    /// Takes no readings of the flue gas.
    SkipsTheTest,
    /// Leaves things open: in writing, or by driving off.
    LeavesOpen,
    /// Writes down readings that were not taken: what is usual, in round numbers, within seconds.
    Writes,
}

impl Habit {
    /// In a word or two, as the truth of a season has it.
    pub fn name(self) -> &'static str {
        match self {
            Self::Careful => "careful",
            Self::ChangesParts => "changes-parts",
            Self::SkipsTheTest => "skips-the-test",
            Self::LeavesOpen => "leaves-open",
            Self::Writes => "writes",
        }
    }
}

/// The technicians of a company.
#[derive(Clone, Debug)]
pub struct Crew {
    habits: Vec<Habit>,
}

/// Who is in every crew, from `t-01` on; those of a larger one are drawn.
const FIRST: [Habit; 6] = [
    Habit::Careful,
    Habit::ChangesParts,
    Habit::SkipsTheTest,
    Habit::LeavesOpen,
    Habit::Writes,
    Habit::Careful,
];

/// Calls of one technician in a season, once the company is larger than the smallest.
const CALLS_EACH: u32 = 200;

/// The largest company.
const MOST: usize = 500;

impl Crew {
    /// As many as so many calls need.
    pub fn of(calls: u32, seed: u64) -> Self {
        let size = (calls.div_ceil(CALLS_EACH) as usize).clamp(FIRST.len(), MOST);
        let mut habits = FIRST.to_vec();
        let mut dice = Dice::of(&[seed, 0]);
        while habits.len() < size {
            habits.push(match dice.below(10) {
                0 => Habit::ChangesParts,
                1 => Habit::SkipsTheTest,
                2 => Habit::LeavesOpen,
                3 => Habit::Writes,
                _ => Habit::Careful,
            });
        }
        Self { habits }
    }

    /// How a technician works, by number.
    pub fn habit(&self, technician: usize) -> Habit {
        self.habits[technician]
    }

    /// How a technician is called in the sessions: `t-01` is the first.
    pub fn id(technician: usize) -> String {
        format!("t-{:02}", technician + 1)
    }

    /// One of all.
    pub(super) fn any(&self, dice: &mut Dice) -> usize {
        dice.below(self.habits.len())
    }

    /// One of those with this habit; the first where there is none.
    pub(super) fn with(&self, habit: Habit, dice: &mut Dice) -> usize {
        let have = |technician: &usize| self.habits[*technician] == habit;
        let who: Vec<usize> = (0..self.habits.len()).filter(have).collect();
        match who.is_empty() {
            true => 0,
            false => who[dice.below(who.len())],
        }
    }
}
