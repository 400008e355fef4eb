//! How a face leaves a call.

/// How a call was left. Whatever was answered is saved in any case.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Left {
    /// The call is closed.
    Closed,
    /// It stays open and can be resumed.
    Quit,
    /// The terminal went away or the system asked to end: the number of the signal. It stays open.
    HungUp(i32),
}
