//! One session file, read through and told into a call.

use std::io::ErrorKind;

use super::libraries::Libraries;
use crate::audit::{Call, Teller, WhatIsWrong};
use crate::source::safe;
use crate::store::{Archive, ChainReport, ReadError, Room, SESSION_LIMIT, SessionId, StoreError};
use crate::walk::{Event, decode};

/// What came of a session.
pub(super) struct Gathered {
    pub call: Result<Call, NotACall>,
    /// How many more files of it there are.
    pub copies: usize,
}

/// A session file that holds no call.
pub(super) struct NotACall {
    pub folder: u32,
    pub file: String,
    pub what: WhatIsWrong,
    pub why: String,
}

/// Reads a session. Of several copies, the one that goes farthest is taken.
pub(super) fn read(
    archive: &Archive,
    libraries: &Libraries<'_>,
    room: &mut Room,
    id: &SessionId,
    places: &[u32],
) -> Gathered {
    let mut best: Option<(u64, Result<Call, NotACall>)> = None;
    for place in places {
        let (records, call) = one(archive, libraries, room, id, *place);
        let is_better = match &best {
            None => true,
            Some((most, known)) => (call.is_ok(), records) > (known.is_ok(), *most),
        };
        if is_better {
            best = Some((records, call));
        }
    }
    let nothing = || Err(not_a_call(id, 0, WhatIsWrong::Unreadable, "it is gone"));
    Gathered {
        call: best.map_or_else(nothing, |(_, call)| call),
        copies: places.len().saturating_sub(1),
    }
}

/// A copy of a session, and how many of its records are whole.
fn one(
    archive: &Archive,
    libraries: &Libraries<'_>,
    room: &mut Room,
    id: &SessionId,
    place: u32,
) -> (u64, Result<Call, NotACall>) {
    match through(archive, libraries, room, id, place) {
        Ok((report, Ok(call))) => (report.records, Ok(call)),
        Ok((report, Err((what, why)))) => (report.records, Err(not_a_call(id, place, what, &why))),
        Err(error) => (
            0,
            Err(not_a_call(id, place, WhatIsWrong::Unreadable, &error.to_string())),
        ),
    }
}

fn not_a_call(id: &SessionId, folder: u32, what: WhatIsWrong, why: &str) -> NotACall {
    NotACall {
        folder,
        file: id.as_str().to_owned(),
        what,
        why: why.to_owned(),
    }
}

type Told = Result<Call, (WhatIsWrong, String)>;

/// Reads a session file to its end, or to the first thing that is wrong with it.
fn through(
    archive: &Archive,
    libraries: &Libraries<'_>,
    room: &mut Room,
    id: &SessionId,
    place: u32,
) -> Result<(ChainReport, Told), StoreError> {
    let mut records = archive.folder(place)?.stream_in(id, room)?;
    let mut wrong = None;
    let mut teller: Option<Teller> = None;
    while let Some(record) = records.next_as(|event| decode(event).ok()) {
        let record = match record {
            Ok(record) => record,
            Err(ReadError::Damage(damage)) => {
                wrong = Some((WhatIsWrong::Damaged, damage.to_string()));
                break;
            }
            Err(ReadError::Io(error)) => {
                // Of a pack that is not what was packed.
                let what = match error.kind() {
                    ErrorKind::InvalidData => WhatIsWrong::Damaged,
                    _ => WhatIsWrong::Unreadable,
                };
                wrong = Some((what, safe(&error.to_string()).to_string()));
                break;
            }
        };
        if records.report().bytes > SESSION_LIMIT {
            let why = format!(
                "it is larger than the {} MiB that a session may have",
                SESSION_LIMIT >> 20
            );
            wrong = Some((WhatIsWrong::Unreadable, why));
            break;
        }
        match (&mut teller, record.event) {
            (Some(teller), Some(event)) => teller.tell(event, record.time),
            (None, Some(Event::Opened(opened))) => {
                let meanings = libraries.meanings(place, &opened.library);
                teller = Some(Teller::new(id.as_str(), place, &opened, record.time, meanings));
            }
            (None, Some(_)) => {
                let why = "it does not begin with the opening of a call".to_owned();
                wrong = Some((WhatIsWrong::Foreign, why));
                break;
            }
            (_, None) => {
                let why = format!("line {} holds no event of this version", record.line);
                wrong = Some((WhatIsWrong::Foreign, why));
                break;
            }
        }
    }
    let report = records.report().clone();
    let told = match (wrong, teller) {
        (Some(wrong), _) => Err(wrong),
        (None, Some(teller)) => Ok(teller.end(report.torn_tail)),
        (None, None) => Err((WhatIsWrong::Empty, "nothing was recorded in it".to_owned())),
    };
    Ok((report, told))
}
