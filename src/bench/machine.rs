//! A machine as a technician meets it: asked for readings and signs, worked upon by steps.

use crate::library::{Datum, Id, Step};

/// What a machine answers when it is asked.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Truth {
    /// A number, in the unit its reading or plate field is registered in, before any meter errs.
    Number(f64),
    /// The index of a sign's or a field's value, as registered.
    Value(usize),
}

/// What can be asked and worked upon.
pub trait Machine {
    /// What a reading, a sign or a plate field is now; none where it cannot be taken at this machine (no such part, or
    /// a state that does not come up).
    fn ask(&mut self, of: Datum) -> Option<Truth>;

    /// A step's work is done on it, with whatever that mends.
    fn work(&mut self, step: Id<Step>);

    /// Whether work has put right all that was wrong with it; never where that is not known.
    fn is_mended(&self) -> bool {
        false
    }
}
