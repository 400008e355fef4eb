//! The sessions of a finding by their numbers: an archive may name each of its sessions in one, and a text for each takes far more.

use std::fmt;
use std::sync::Arc;

use serde::{Serialize, Serializer};

use super::summary::SessionRef;
use super::visits::Visits;

/// The sessions of a finding, each made when it is asked for.
#[derive(Clone)]
pub struct Sessions {
    visits: Arc<Visits>,
    numbers: Vec<u32>,
}

impl Sessions {
    /// The sessions of these calls.
    pub(super) fn of(visits: &Arc<Visits>, numbers: Vec<u32>) -> Self {
        let visits = Arc::clone(visits);
        Self { visits, numbers }
    }

    /// How many there are.
    pub fn len(&self) -> usize {
        self.numbers.len()
    }

    /// Whether there is none.
    pub fn is_empty(&self) -> bool {
        self.numbers.is_empty()
    }

    /// Each of them.
    pub fn iter(&self) -> impl ExactSizeIterator<Item = SessionRef> {
        self.numbers.iter().map(|number| self.visits.session(*number))
    }
}

impl PartialEq for Sessions {
    fn eq(&self, other: &Self) -> bool {
        self.iter().eq(other.iter())
    }
}

impl fmt::Debug for Sessions {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_list().entries(self.iter()).finish()
    }
}

impl Serialize for Sessions {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_seq(self.iter())
    }
}
