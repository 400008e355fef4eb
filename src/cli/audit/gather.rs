//! Reading an archive on all cores, and adding its calls in one order: so the same archive gives the same audit.

use std::sync::mpsc::{Receiver, Sender, SyncSender, channel, sync_channel};
use std::sync::{Mutex, PoisonError};
use std::thread;

use rayon::Scope;

use super::index::{self, Calls, Kept, Memory};
use super::libraries::Libraries;
use super::progress::Progress;
use super::read::{Gathered, Reader};
use crate::audit::{Auditor, WhatIsWrong};
use crate::export::{Export, ExportError};
use crate::source::safe;
use crate::store::{Archive, Fingerprint, Found};

/// Sessions that a core takes in one go. What is read and not yet added is held, so there are few.
const IN_ONE_GO: usize = 32;

/// Batches that may wait at each core to be read, and as many to be added; who is ahead pauses then.
const WAITING: usize = 4;

/// Sessions that are to be read, each with what was kept of it.
type Batch = Vec<(Found, Option<Kept>)>;

/// The same, read.
type Read = Vec<(Found, Gathered)>;

/// Takes every session of an archive and adds its calls, in the order of their ids; to an export as well, where there is one. What was
/// kept before and has not changed is not read; what is read is kept. Where it was begun, what the system says of them goes into the
/// fingerprint.
pub(super) fn all(
    archive: &mut Archive,
    auditor: &mut Auditor,
    mut export: Option<&mut Export>,
    memory: Option<(&mut Memory<'_>, Option<Calls>)>,
    looked: Option<&mut Fingerprint>,
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
        Reader::new(archive, &libraries, false).gather(first, None);
    }
    let libraries = &libraries;
    let looked = looked.map(Mutex::new);
    let looked = looked.as_ref();
    rayon::in_place_scope(|pool| {
        let cores = rayon::current_num_threads();
        let reads = |_| reads(pool, Reader::new(archive, libraries, looked.is_some()), looked);
        let (readers, hands): (Vec<_>, Vec<_>) = (0..cores).map(reads).unzip();
        thread::scope(|scope| {
            // Let go of in here: where adding fails, the readers find nobody to hand on to, and end.
            let hands = hands;
            scope.spawn(move || deal(sessions, known, &readers));
            // As they were dealt: whose turn it is and has no more, was dealt the last but what has come already.
            let batches = (hands.iter().cycle()).map_while(|hand| Some((hand, hand.read.recv().ok()?)));
            for (hand, batch) in batches {
                progress.moved_on(batch.len());
                for (found, gathered) in &batch {
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
                    for not in &gathered.others {
                        auditor.not_a_call(not.folder, &not.file, not.what, &not.why);
                    }
                    match &gathered.call {
                        Ok(call) if call.practice => auditor.practised(call),
                        Ok(call) => {
                            auditor.add(call);
                            if let Some(export) = &mut export {
                                export.add(call, &folders[call.folder as usize])?;
                            }
                        }
                        Err(not) => auditor.not_a_call(not.folder, &not.file, not.what, &not.why),
                    }
                }
                // Whoever has nothing more to read does not take it back.
                let _ = hand.used.send(batch);
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

/// What a reader hands on.
struct Hand {
    read: Receiver<Read>,
    /// To hand back what was added: memory goes back sooner where it came from.
    used: Sender<Read>,
}

/// Lets somebody read batches and hand them on, in the order they come. The threads are those that may have looked at the files: each
/// keeps what it has once used of memory.
fn reads<'s>(
    pool: &Scope<'s>,
    mut reader: Reader<'s>,
    looked: Option<&'s Mutex<&'s mut Fingerprint>>,
) -> (SyncSender<Batch>, Hand) {
    let (sender, batches) = sync_channel::<Batch>(WAITING);
    let (read, receiver) = sync_channel(WAITING);
    let (used, back) = channel::<Read>();
    pool.spawn(move |_| {
        for batch in batches {
            back.try_iter().for_each(drop);
            let gathered = batch.into_iter().map(|(found, kept)| {
                let gathered = reader.gather(&found, kept);
                (found, gathered)
            });
            if read.send(gathered.collect()).is_err() {
                return;
            }
        }
        if let (Some(all), Some(own)) = (looked, reader.looked) {
            // Nothing can fail while the lock is held.
            all.lock().unwrap_or_else(PoisonError::into_inner).add(own);
        }
    });
    let hand = Hand { read: receiver, used };
    (sender, hand)
}
