//! Reading an archive on all cores, and adding its calls in one order: so the same archive gives the same audit.

use std::sync::mpsc::sync_channel;
use std::thread;

use rayon::prelude::*;

use super::index::{self, Calls, Kept, Memory};
use super::libraries::Libraries;
use super::progress::Progress;
use super::read::{Gathered, gather};
use crate::audit::{Auditor, WhatIsWrong};
use crate::export::{Export, ExportError};
use crate::source::safe;
use crate::store::{Archive, Found, Room};

/// Sessions that a core takes in one go, into the same room. What is read and not yet added is held, so there are few.
const IN_ONE_GO: usize = 64;

/// Batches that may wait to be added; reading pauses then.
const WAITING: usize = 1;

/// Takes every session of an archive and adds its calls, in the order of their ids; to an export as well, where there is one. What was
/// kept before and has not changed is not read; what is read is kept.
pub(super) fn all(
    archive: &mut Archive,
    auditor: &mut Auditor,
    mut export: Option<&mut Export>,
    memory: Option<(&mut Memory<'_>, Option<Calls>)>,
) -> Result<(), ExportError> {
    let (mut memory, mut known) = match memory {
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
    thread::scope(|scope| {
        let (sender, receiver) = sync_channel::<Vec<(Found, Gathered)>>(WAITING);
        let libraries = &libraries;
        scope.spawn(move || {
            let batch_of = IN_ONE_GO * rayon::current_num_threads();
            loop {
                let batch: Vec<(Found, Option<Kept>)> = (sessions.by_ref().take(batch_of))
                    .map(|found| {
                        let kept = known.as_mut().and_then(|known| known.find(&found.name));
                        (found, kept)
                    })
                    .collect();
                if known.as_ref().is_some_and(|known| known.is_damaged) {
                    known = None;
                    index::say_damaged();
                }
                let is_last = batch.is_empty();
                let read: Vec<(Found, Gathered)> = (batch.into_par_iter().with_min_len(IN_ONE_GO))
                    .map_init(Room::default, |room, (found, kept)| {
                        let gathered = gather(archive, libraries, room, &found, kept);
                        (found, gathered)
                    })
                    .collect();
                // Nobody receives any more only where adding has failed, which ends the program.
                if is_last || sender.send(read).is_err() {
                    return;
                }
            }
        });
        for batch in receiver {
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
}
