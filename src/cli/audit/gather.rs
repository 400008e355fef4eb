//! Reading an archive on all cores, and adding its calls in one order: so the same archive gives the same audit.

use std::sync::mpsc::{Receiver, SyncSender, sync_channel};
use std::thread;

use rayon::Scope;

use super::index::{self, Calls, Kept, Memory};
use super::libraries::Libraries;
use super::progress::Progress;
use super::read::{Gathered, gather};
use crate::audit::{Auditor, WhatIsWrong};
use crate::export::{Export, ExportError};
use crate::source::safe;
use crate::store::{Archive, Found, Room};

/// Sessions that a core takes in one go. What is read and not yet added is held, so there are few.
const IN_ONE_GO: usize = 32;

/// Batches that may wait at each core to be read, and as many to be added; who is ahead pauses then.
const WAITING: usize = 1;

/// Sessions that are to be read, each with what was kept of it.
type Batch = Vec<(Found, Option<Kept>)>;

/// The same, read.
type Read = Vec<(Found, Gathered)>;

/// Takes every session of an archive and adds its calls, in the order of their ids; to an export as well, where there is one. What was
/// kept before and has not changed is not read; what is read is kept.
pub(super) fn all(
    archive: &mut Archive,
    auditor: &mut Auditor,
    mut export: Option<&mut Export>,
    memory: Option<(&mut Memory<'_>, Option<Calls>)>,
) -> Result<(), ExportError> {
    let (mut memory, known) = match memory {
        Some((memory, known)) => (Some(memory), known),
        None => (None, None),
    };
    let mut progress = Progress::new(archive.at_most());
    let names = archive.take_names();
    let archive = &*archive;
    let libraries = Libraries::new(archive);
    let folders: Vec<String> = (archive
        .folders()
        .map(|folder| folder.to_string_lossy().into_owned()))
    .collect();
    let mut sessions = archive.each(names).peekable();
    if let Some(first) = sessions.peek() {
        // Read once more below. Reading its library takes far more memory than what is kept of that, and what is left over here is
        // used again for what is kept of all calls; in a thread that only reads, it would be left over to the end.
        gather(archive, &libraries, &mut Room::default(), first, None);
    }
    let libraries = &libraries;
    rayon::in_place_scope(|pool| {
        let cores = rayon::current_num_threads();
        let (readers, read): (Vec<_>, Vec<_>) = (0..cores).map(|_| reader(pool, archive, libraries)).unzip();
        thread::scope(|scope| {
            // Let go of in here: where adding fails, the readers find nobody to hand on to, and end.
            let read = read;
            scope.spawn(move || deal(sessions, known, &readers));
            // As they were dealt: whose turn it is and has no more, was dealt the last but what has come already.
            let batches = read.iter().cycle().map_while(|read| read.recv().ok());
            for batch in batches {
                progress.moved_on(batch.len());
                for (found, gathered) in batch {
                    if let (Some(memory), Ok(call), Some(source)) =
                        (&mut memory, &gathered.call, &gathered.source)
                    {
                        match gathered.was_known {
                            true => memory.known(&found.name, &found.lies, source, call),
                            false => memory.read(&found.name, source, call),
                        }
                    }
                    for _ in 0..gathered.copies {
                        auditor.copy();
                    }
                    for not in gathered.others {
                        auditor.not_a_call(not.folder, &not.file, not.what, &not.why);
                    }
                    match gathered.call {
                        Ok(call) if call.practice => auditor.practised(&call),
                        Ok(call) => {
                            auditor.add(&call);
                            if let Some(export) = &mut export {
                                export.add(&call, &folders[call.folder as usize])?;
                            }
                        }
                        Err(not) => auditor.not_a_call(not.folder, &not.file, not.what, &not.why),
                    }
                }
            }
            for bad in archive.bad_packs() {
                let what = match bad.is_damaged {
                    true => WhatIsWrong::Damaged,
                    false => WhatIsWrong::Unreadable,
                };
                auditor.not_a_call(bad.folder, &safe(&bad.name).to_string(), what, &bad.why);
            }
            Ok(())
        })
    })
}

/// Deals the sessions out to the readers in turn, each with what was kept of it.
fn deal(mut sessions: impl Iterator<Item = Found>, mut known: Option<Calls>, readers: &[SyncSender<Batch>]) {
    for reader in readers.iter().cycle() {
        let batch: Batch = (sessions.by_ref().take(IN_ONE_GO))
            .map(|found| {
                let kept = known.as_mut().and_then(|known| known.find(&found.name));
                (found, kept)
            })
            .collect();
        if known.as_ref().is_some_and(|known| known.is_damaged) {
            known = None;
            index::say_damaged();
        }
        // Nobody reads any more only where adding has failed, which ends the program.
        if batch.is_empty() || reader.send(batch).is_err() {
            return;
        }
    }
}

/// One who reads batches and hands them on, in the order they come. The threads are those that have looked at the files: each keeps what
/// it has once used of memory.
fn reader<'s>(
    pool: &Scope<'s>,
    archive: &'s Archive,
    libraries: &'s Libraries<'s>,
) -> (SyncSender<Batch>, Receiver<Read>) {
    let (sender, batches) = sync_channel::<Batch>(WAITING);
    let (read, receiver) = sync_channel(WAITING);
    pool.spawn(move |_| {
        let mut room = Room::default();
        for batch in batches {
            let gathered = batch.into_iter().map(|(found, kept)| {
                let gathered = gather(archive, libraries, &mut room, &found, kept);
                (found, gathered)
            });
            if read.send(gathered.collect()).is_err() {
                return;
            }
        }
    });
    (sender, receiver)
}
