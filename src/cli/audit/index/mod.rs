//! The index: what is kept of an audit, so that what has not changed is not read again. All of it may be deleted at any time.
//!
//! - `page`: the page that was printed, for the same question about an archive of which nothing has changed. It costs one look at each file.
//! - `kept`: the call that each session came to, for whatever is asked of an archive of which most has not changed.
//! - `call`, `block`: a call as bytes.
//!
//! Neither proves anything: an audit says how much of it was not read again.

mod block;
mod call;
mod kept;
mod page;
#[cfg(test)]
mod tests;

pub(super) use kept::{Calls, Keeping, Kept, Source, Walked};
pub(super) use page::Index;

use std::fs;
use std::path::PathBuf;

use jiff::Timestamp;

use super::super::arguments::Audited;
use crate::audit::Call;
use crate::store::{Cache, Hash, Lies, Name};

/// Of so few sessions, all are kept anew whenever one is read.
const FEW: usize = 4096;

/// Where no more than one in so many was read anew, what is kept stays as it is: writing all of it costs more than reading those again.
const ONE_IN: usize = 32;

/// What is kept of the sessions of an archive, while an audit goes through them.
pub(super) struct Memory<'i> {
    cache: &'i Cache,
    name: String,
    /// When the files were looked at.
    now: Timestamp,
    keeping: Option<Keeping>,
    /// How many sessions were read that could have been kept.
    anew: usize,
    all: usize,
    /// How many files of a session each came out of it, and which packs any came out of.
    files: u64,
    packs: Vec<bool>,
    since: Option<Timestamp>,
}

impl<'i> Memory<'i> {
    /// What is kept of an archive of so many sessions, and those that were kept before; none of these where everything is to be read.
    pub fn begin(index: &'i Index, how: &Audited, sessions: usize) -> (Self, Option<Calls>) {
        let of = Hash::of(format!("{:?} {}", in_one_spelling(&how.folders), page::program()).as_bytes());
        let name = format!("{of}.calls");
        let (cache, now) = (index.cache(), index.since());
        let mut known = None;
        if !how.fresh
            && let Some(file) = cache.read(&name)
        {
            known = Calls::open(file, &of);
            if known.is_none() {
                say_damaged();
            }
        }
        let since = known.as_ref().map(|known| known.since);
        let stays = sessions > FEW
            && known
                .as_ref()
                .is_some_and(|known| sessions <= known.sessions + known.sessions / ONE_IN);
        let keeping = || {
            let draft = cache.draft(&name)?;
            Some(Keeping::new(draft, &of, since.unwrap_or(now), sessions))
        };
        let keeping = if stays { None } else { keeping() };
        let memory = Self {
            cache,
            name,
            now,
            keeping,
            anew: 0,
            all: sessions,
            files: 0,
            packs: Vec::new(),
            since,
        };
        (memory, known)
    }

    /// A session that was read, and from what.
    pub fn read(&mut self, name: &Name, source: &Source, call: &Call) {
        if source.file.is_settled(self.now.as_second()) {
            self.anew += 1;
            self.keep(name, source, call);
        }
    }

    /// A session that was kept and is still the same.
    pub fn known(&mut self, name: &Name, lies: &Lies, source: &Source, call: &Call) {
        match lies.pack() {
            None => self.files += 1,
            Some(pack) => {
                let packs = self.packs.len().max(pack + 1);
                self.packs.resize(packs, false);
                self.files += u64::from(!std::mem::replace(&mut self.packs[pack], true));
            }
        }
        self.keep(name, source, call);
    }

    fn keep(&mut self, name: &Name, source: &Source, call: &Call) {
        if let Some(keeping) = &mut self.keeping {
            keeping.add(name, source, call);
        }
    }

    /// Keeps what was read. How many files (and packs) were not read, and since when they are unchanged, where there are any.
    pub fn finish(self) -> Option<(u64, Timestamp)> {
        match self.keeping {
            Some(keeping) => keeping.finish(),
            // The next audit keeps all of it anew.
            None if self.anew * ONE_IN > self.all => self.cache.remove(&self.name),
            None => {}
        }
        self.since
            .filter(|_| self.files > 0)
            .map(|since| (self.files, since))
    }
}

/// The folders as the system names them, in any order: a kept call does not know how its folder was spelled, nor which of several it was.
fn in_one_spelling(folders: &[PathBuf]) -> Vec<PathBuf> {
    let in_full = |folder: &PathBuf| fs::canonicalize(folder).unwrap_or_else(|_| folder.clone());
    let mut folders: Vec<PathBuf> = folders.iter().map(in_full).collect();
    folders.sort();
    folders
}

/// Says that what was kept is not believed.
pub(super) fn say_damaged() {
    crate::cli::tell(
        "proofwalk: what was kept of an audit before is damaged; it is left aside, and what it held is read again",
    );
}
