//! One session file, read through and told into a call.

use std::cmp::Reverse;
use std::io::ErrorKind;
use std::sync::Arc;

use super::index::{Kept, Source, Walked};
use super::libraries::Libraries;
use crate::audit::{Call, Said, Teller, WhatIsWrong};
use crate::source::safe;
use crate::store::{
    Archive, Fingerprint, Found, Hash, Identity, Lies, ReadError, Room, SESSION_LIMIT, SessionId, Streamed,
};

/// One who reads sessions, with what is at hand for that.
pub(super) struct Reader<'a> {
    archive: &'a Archive,
    libraries: &'a Libraries<'a>,
    room: Room,
    /// The library of the session before: most are walked with the same.
    walked: Option<Arc<Walked>>,
    /// What the system says of the files that were read, where that is asked for.
    pub looked: Option<Fingerprint>,
}

/// What came of a session.
pub(super) struct Gathered {
    pub call: Result<Call, NotACall>,
    /// What it was read from, where it may be kept.
    pub source: Option<Source>,
    /// It was kept, and not read again.
    pub was_known: bool,
    /// How many more files of it there are that say the same, as far as they go.
    pub copies: usize,
    /// Files that go by its id and are no copies of it.
    pub others: Vec<NotACall>,
}

/// One of several files of a session.
struct Copy {
    place: u32,
    call: Result<Call, NotACall>,
    /// The sums of its records.
    sums: Vec<Hash>,
}

/// A session file that holds no call.
pub(super) struct NotACall {
    pub folder: u32,
    pub file: String,
    pub what: WhatIsWrong,
    pub why: String,
}

impl<'a> Reader<'a> {
    /// Who has read nothing yet, and looks at files as he reads them, or does not.
    pub fn new(archive: &'a Archive, libraries: &'a Libraries<'a>, is_looking: bool) -> Self {
        Self {
            archive,
            libraries,
            room: Room::default(),
            walked: None,
            looked: is_looking.then(Fingerprint::default),
        }
    }

    /// Takes a session that was kept, if nothing of it has changed; reads any other.
    pub fn gather(&mut self, found: &Found, kept: Option<Kept>) -> Gathered {
        let Some(Kept { source, mut call }) = kept.filter(|kept| self.is_same(found, &kept.source)) else {
            return self.read(found);
        };
        if let Some(looked) = &mut self.looked {
            (self.archive).look_at(looked, &found.id(), &found.lies, Some(source.file));
        }
        call.session = found.id().as_str().into();
        call.folder = found.lies.place;
        Gathered {
            source: Some(source),
            was_known: true,
            ..Gathered::alone(Ok(call))
        }
    }

    /// Whether a session would be read from the same file as before, and told in the same words. One that has copies is compared with
    /// them, so it is read.
    fn is_same(&self, found: &Found, source: &Source) -> bool {
        let walked = &source.walked;
        let words = || {
            let place = found.lies.place;
            (self.libraries).words(place, &walked.name, &walked.edition, &walked.hash)
        };
        found.others.is_empty()
            && self.archive.identity(&found.id(), &found.lies) == Some(source.file)
            && words().sum.is_written_as(&walked.meanings)
    }

    /// Reads a session. Of several copies, the one that goes farthest is taken; whatever is no copy of that is named.
    fn read(&mut self, found: &Found) -> Gathered {
        let id = &found.id();
        if found.others.is_empty() {
            let mut source = None;
            let call = self.one(id, &found.lies, Asked::Source(&mut source));
            return Gathered {
                source: source.filter(|_| call.is_ok()),
                ..Gathered::alone(call)
            };
        }
        let read = |lies: &Lies| {
            let mut sums = Vec::new();
            let call = self.one(id, lies, Asked::Sums(&mut sums));
            Copy {
                place: lies.place,
                call,
                sums,
            }
        };
        let mut all: Vec<Copy> = std::iter::once(&found.lies)
            .chain(&found.others)
            .map(read)
            .collect();
        all.sort_by_key(|copy| Reverse((copy.call.is_ok(), copy.sums.len())));
        let mut all = all.into_iter();
        let Some(best) = all.next() else {
            return Gathered::alone(Err(not_a_call(id, 0, WhatIsWrong::Unreadable, "it is gone")));
        };
        let mut gathered = Gathered::alone(best.call);
        for copy in all {
            match copy.call {
                Ok(_) if best.sums.starts_with(&copy.sums) => gathered.copies += 1,
                Ok(_) => {
                    let why = "another call goes by the same id and is counted; this one is not: give it a name of its own";
                    let other = not_a_call(id, copy.place, WhatIsWrong::SameId, why);
                    gathered.others.push(other);
                }
                Err(not) => gathered.others.push(not),
            }
        }
        gathered
    }

    /// What a file of a session holds.
    fn one(&mut self, id: &SessionId, lies: &Lies, asked: Asked<'_>) -> Result<Call, NotACall> {
        let place = lies.place;
        let streamed = self.archive.stream_in(id, lies, &mut self.room);
        if let Some(looked) = &mut self.looked {
            let file = streamed.as_ref().ok().and_then(|(_, file)| *file);
            self.archive.look_at(looked, id, lies, file);
        }
        let (libraries, walked) = (self.libraries, &mut self.walked);
        let told =
            streamed.map(|(records, file)| through(records, file, libraries, walked, (id, place), asked));
        match told {
            Ok(Ok(call)) => Ok(call),
            Ok(Err((what, why))) => Err(not_a_call(id, place, what, &why)),
            Err(error) => Err(not_a_call(id, place, WhatIsWrong::Unreadable, &error.reason())),
        }
    }
}

impl Gathered {
    /// What came of a session that has no copies.
    fn alone(call: Result<Call, NotACall>) -> Self {
        Self {
            call,
            source: None,
            was_known: false,
            copies: 0,
            others: Vec::new(),
        }
    }
}

/// What is asked for beside the call.
enum Asked<'a> {
    /// What it was read from.
    Source(&'a mut Option<Source>),
    /// The sums of its records.
    Sums(&'a mut Vec<Hash>),
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
    mut records: Streamed<'_>,
    file: Option<Identity>,
    libraries: &Libraries<'_>,
    before: &mut Option<Arc<Walked>>,
    (id, place): (&SessionId, u32),
    mut asked: Asked<'_>,
) -> Told {
    let is_kept = matches!(asked, Asked::Source(_));
    let mut wrong = None;
    let mut walked = None;
    let mut teller: Option<Teller> = None;
    // Told where it lies: none where it is no event, and false where it opens no call and none is open.
    let mut hear = |time, event: &str| match (&mut teller, Said::read(event)?) {
        (Some(teller), said) => {
            teller.tell(said, time);
            Some(true)
        }
        (None, Said::Opened(opening)) => {
            let mark = &opening.library;
            let words = libraries.words(place, &mark.name, &mark.edition, &mark.hash);
            if is_kept {
                let same = before.take().filter(|before| before.is(mark, &words.sum));
                walked = same.or_else(|| Some(Arc::new(Walked::new(mark, &words.sum))));
                before.clone_from(&walked);
            }
            teller = Some(Teller::new(id.as_str(), place, &opening, time, words.meanings));
            Some(true)
        }
        (None, _) => Some(false),
    };
    while let Some(record) = records.next_as(&mut hear) {
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
        if let Asked::Sums(sums) = &mut asked {
            sums.push(records.report().head);
        }
        if records.report().bytes > SESSION_LIMIT {
            let why = format!(
                "it is larger than the {} MiB that a session may have",
                SESSION_LIMIT >> 20
            );
            wrong = Some((WhatIsWrong::Unreadable, why));
            break;
        }
        match record.event {
            Some(true) => {}
            Some(false) => {
                let why = "it does not begin with the opening of a call".to_owned();
                wrong = Some((WhatIsWrong::Foreign, why));
                break;
            }
            None => {
                let why = format!("line {} holds no event of this version", record.line);
                wrong = Some((WhatIsWrong::Foreign, why));
                break;
            }
        }
    }
    if let Asked::Source(source) = asked {
        *source = file.zip(walked).map(|(file, walked)| Source::new(file, walked));
    }
    match (wrong, teller) {
        (Some(wrong), _) => Err(wrong),
        (None, Some(teller)) => Ok(teller.end(records.report().torn_tail)),
        (None, None) => Err((WhatIsWrong::Empty, "nothing was recorded in it".to_owned())),
    }
}
