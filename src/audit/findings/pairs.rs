//! Callbacks by the numbers of their calls: an archive has many, and each is told when it is asked for.

use std::fmt;
use std::sync::Arc;

use serde::{Serialize, Serializer};

use super::super::visits::Visits;
use super::callbacks::Callback;

/// Callbacks, in the order of their equipment.
#[derive(Clone)]
pub struct Pairs {
    visits: Arc<Visits>,
    list: Vec<(u32, u32)>,
}

impl Pairs {
    /// Sorts pairs of calls.
    pub(super) fn of(visits: &Arc<Visits>, pairs: impl Iterator<Item = (u32, u32)>) -> Self {
        let mut list: Vec<(u32, u32)> = pairs.collect();
        let equipment = |call: u32| visits.named(visits.get(call).equipment);
        list.sort_unstable_by(|(one, _), (other, _)| {
            let by_session = || visits.session(*one).cmp(&visits.session(*other));
            equipment(*one).cmp(&equipment(*other)).then_with(by_session)
        });
        let visits = Arc::clone(visits);
        Self { visits, list }
    }

    /// How many there are.
    pub fn len(&self) -> usize {
        self.list.len()
    }

    /// Whether there is none.
    pub fn is_empty(&self) -> bool {
        self.list.is_empty()
    }

    /// Each of them.
    pub fn iter(&self) -> impl ExactSizeIterator<Item = Callback> {
        let pairs = self.list.iter();
        pairs.map(|(first, second)| Callback::of(&self.visits, *first, *second))
    }
}

impl PartialEq for Pairs {
    fn eq(&self, other: &Self) -> bool {
        self.iter().eq(other.iter())
    }
}

impl fmt::Debug for Pairs {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_list().entries(self.iter()).finish()
    }
}

impl Serialize for Pairs {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_seq(self.iter())
    }
}
