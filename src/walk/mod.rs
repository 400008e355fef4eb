//! One service call: commands decided into events, events folded into a state, a state asked what any face must show.
//!
//! [`decide()`] holds every rule, [`apply()`] only folds. Neither knows of files, clocks or terminals.

mod apply;
mod ask;
mod at_worst;
mod call;
mod codec;
mod command;
mod decide;
mod event;
mod longest;
mod overlays;
mod possible;
mod proof;
mod rehearse;
mod retrace;
mod route;
mod show;
mod standing;
mod state;
mod stated;
mod unchecked;
mod wanted;
mod words;

pub use apply::{Misfit, apply, fold, inputs_of, leans_on};
pub use ask::{
    Again, Ask, CalledBy, Claimed, End as BandEnd, Lack, LackKind, NotLookedAt, Question, ShownBand,
    ShownOption, ShownValue, Standing, TrailEntry, Way, is_called,
};
pub use at_worst::at_worst;
pub use call::{Call, Known, NotDone};
pub use codec::{decode, encode};
pub use command::{Command, Refusal};
pub use decide::{carry_out, decide, go_on, open, open_at};
pub use event::{Doubt, End, Event, LibraryMark, Opened, OverlayMark, Role, Voiding};
pub use overlays::overlay_words;
pub use possible::{possible, ruled_out};
pub use proof::{
    Holding, answer_holds, claim_holds, holding_alternative, is_proven, lines as proof_lines, takeable,
    unread_fields,
};
pub use rehearse::{
    Answerer, Coverage, Departure, Goal, Missed, Parting, Passed, Rehearsal, Run, Said, Suggestion, Tally,
    TreeCoverage, answer_in, departures, parting, passed, rehearse, suggestion, wanted_words,
};
pub use retrace::{ByTheTrees, Due, Followed, Given, Rules, Stray, compare, retrace};
pub use show::ask;
pub use standing::standing;
pub use state::{
    Answered, CameOut, Frame, Moment, Noted, PutBackDone, Standing as StandingValue, State, Value, What,
};
pub use stated::Stated;
pub use unchecked::{Unchecked, unchecked};
pub use wanted::{Wanted, wanted};
pub use words::{NO_LONGER, claim_words, end_words, line_words, remedy_words, status_words};
