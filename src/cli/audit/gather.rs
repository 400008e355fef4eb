//! Reading an archive on all cores, and adding its calls in one order: so the same archive gives the same audit.

use std::sync::mpsc::sync_channel;
use std::thread;

use rayon::prelude::*;

use super::libraries::Libraries;
use super::progress::Progress;
use super::read::{Gathered, read};
use crate::audit::{Auditor, WhatIsWrong};
use crate::export::{Export, ExportError};
use crate::source::safe;
use crate::store::{Archive, Room};

/// Sessions that a core takes in one go, into the same room. What is read and not yet added is held, so there are few.
const IN_ONE_GO: usize = 64;

/// Batches that may wait to be added; reading pauses then.
const WAITING: usize = 1;

/// Reads every session of an archive and adds its calls, in the order of their ids; to an export as well, where there is one.
pub(super) fn all(
    archive: &Archive,
    auditor: &mut Auditor,
    mut export: Option<&mut Export>,
) -> Result<(), ExportError> {
    let libraries = Libraries::new(archive);
    let folders: Vec<String> = (archive
        .folders()
        .map(|folder| folder.to_string_lossy().into_owned()))
    .collect();
    let mut progress = Progress::new(archive.at_most());
    thread::scope(|scope| {
        let (sender, receiver) = sync_channel::<Vec<Gathered>>(WAITING);
        let libraries = &libraries;
        scope.spawn(move || {
            let batch_of = IN_ONE_GO * rayon::current_num_threads();
            let mut sessions = archive.sessions();
            loop {
                let batch: Vec<_> = sessions.by_ref().take(batch_of).collect();
                let read: Vec<Gathered> = (batch.par_iter().with_min_len(IN_ONE_GO))
                    .map_init(Room::default, |room, found| read(archive, libraries, room, found))
                    .collect();
                // Nobody receives any more only where adding has failed, which ends the program.
                if batch.is_empty() || sender.send(read).is_err() {
                    return;
                }
            }
        });
        for batch in receiver {
            progress.moved_on(batch.len());
            for gathered in batch {
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
