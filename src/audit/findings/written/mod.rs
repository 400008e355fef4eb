//! Readings that look written rather than read: last digits that no meter gives, the same value again and again, answers
//! faster than a hand can measure.
//!
//! Each has innocent causes, too: a meter that steps by fives, a supply that really is steady, readings noted on paper and
//! typed in the van. What is found here is a reason to look, and no more.

mod commonest;
mod digits;
mod hurried;
mod repeated;

pub use digits::Digits;
pub use hurried::Hurried;
pub use repeated::Repeated;

use std::sync::Arc;

use serde::Serialize;

use super::super::call::Call;
use super::super::rows::Rows;
use super::super::visits::Visits;

/// So often the last digit of one value counts, of one technician and reading: more of it is a value again and again. Who has the
/// same gas at every house would otherwise be found by the last digit of its heating value.
const COUNTED: u64 = 3;

/// Readings that look written rather than read.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Written {
    /// Technicians whose last digits are uneven.
    pub digits: Vec<Digits>,
    /// Technicians who give the same value again and again.
    pub repeated: Vec<Repeated>,
    /// Calls answered faster than a hand can measure.
    pub hurried: Rows<Hurried>,
}

/// Collects what readings look like.
#[derive(Debug, Default)]
pub(in super::super) struct Writings {
    digits: digits::LastDigits,
    repeated: repeated::Values,
    hurried: hurried::Hurry,
}

impl Writings {
    pub fn add(&mut self, call: &Call, number: u32, visits: &mut Visits) {
        self.hurried.add(call, number, visits);
        // Digits and values are compared between technicians.
        if let Some(technician) = &call.technician {
            let technician = visits.name(technician);
            for taken in &call.readings {
                let Some(typed) = &taken.typed else { continue };
                let times = self.repeated.add(taken, number, technician, visits);
                self.digits.add(typed, number, technician, times <= COUNTED);
            }
        }
    }

    pub fn found(self, visits: &Arc<Visits>) -> Written {
        Written {
            digits: self.digits.found(visits),
            repeated: self.repeated.found(visits),
            hurried: self.hurried.found(visits),
        }
    }
}
