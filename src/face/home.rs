//! The first screen, as the caller hands it over.

use crate::source::Safe;

/// What the first screen offers.
#[derive(Clone, Debug, Default)]
pub struct Home {
    /// The library's title.
    pub title: Safe,
    /// The overlays laid over it, with their editions.
    pub overlays: Vec<Safe>,
    /// Cautions for all work.
    pub standing_cautions: Vec<Safe>,
    /// The complaints on offer.
    pub complaints: Vec<HomeLine>,
    /// Calls that were not finished, newest first.
    pub unfinished: Vec<HomeLine>,
    /// The dangers on offer.
    pub dangers: Vec<Safe>,
}

/// One line to choose.
#[derive(Clone, Debug, Default)]
pub struct HomeLine {
    /// What it says.
    pub label: Safe,
    /// What is to be known about it.
    pub note: Option<Safe>,
}

/// What was chosen on the first screen: positions in the lists of [`Home`].
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HomeChoice {
    /// A complaint.
    Walk(usize),
    /// A call that was not finished.
    Resume(usize),
    /// A danger.
    Danger(usize),
    /// Nothing.
    Quit,
}

impl Home {
    /// The choice at a position of the one list that a face numbers through: complaints, then unfinished calls.
    pub fn choice(&self, position: usize) -> Option<HomeChoice> {
        let complaints = self.complaints.len();
        if position < complaints {
            return Some(HomeChoice::Walk(position));
        }
        let unfinished = position - complaints;
        (unfinished < self.unfinished.len()).then_some(HomeChoice::Resume(unfinished))
    }
}
