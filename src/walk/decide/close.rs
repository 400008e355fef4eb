//! Leaving: what is open is put back, then the call is closed.

use super::super::command::Refusal;
use super::super::event::Event;
use super::super::wanted::Wanted;
use super::Walk;
use crate::library::{Id, Restore};

impl Walk<'_> {
    /// Puts something back, or leaves it open for a reason in writing.
    pub(super) fn put_back(&mut self, restore: Id<Restore>, refused: Option<String>) -> Result<(), Refusal> {
        if !self.state.open.contains(&restore) {
            return Err(Refusal::new(
                "this is not open",
                "choose one of what is listed as open",
            ));
        }
        let restore = self.library.restores[restore].name.clone();
        match refused {
            None => self.emit(Event::PutBack { restore }),
            Some(_) if self.state.ended.is_none() => Err(Refusal::new(
                "the walk goes on, so nothing has to stay open yet",
                "decide at the end whether it can be put back",
            )),
            Some(why) => self.emit(Event::KeptOpen { restore, why }),
        }
    }

    pub(super) fn close(&mut self) -> Result<(), Refusal> {
        match self.wanted() {
            Wanted::Close => self.emit(Event::Closed),
            Wanted::PutBack(_) => Err(Refusal::new(
                "something is still open",
                "put it back, or say in writing why it stays open",
            )),
            _ => Err(Refusal::new(
                "the walk has not ended",
                "go on, or stop without a verdict first",
            )),
        }
    }
}
