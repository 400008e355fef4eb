//! What an audit came to, kept for as long as no file of the archive changes.
//!
//! It holds no sessions, only the page that was printed, and is found by what the system says of every file (name, device, inode,
//! size, both times), by this program and by what was asked. It proves nothing: a page out of it says so.
//!
//! A kept file is the page and, after its end, a line that says what it is of. The page may be large, so it is never held in memory.

use std::fs::File;
use std::io::{self, Read, Seek, SeekFrom, Write};

use jiff::Timestamp;
use serde::{Deserialize, Serialize};

use crate::cli::arguments::Audited;
use crate::cli::audit::Paper;
use crate::cli::failure::Failure;
use crate::store::{Cache, Fingerprint, Hash, Summing};

/// Longest last line of a kept file, in bytes.
const LONGEST: u64 = 1024;

/// What is kept of one question.
pub(in crate::cli::audit) struct Index {
    cache: Cache,
    /// The sum of what was asked.
    question: String,
    /// What the system says of the files, where that was asked for.
    now: Option<Fingerprint>,
    /// When the files were looked at.
    since: Timestamp,
}

/// What a kept page is of.
#[derive(Serialize, Deserialize)]
struct About {
    /// The sum of what was asked: a page that was put under another question's name is no answer to it.
    question: String,
    /// The sum of what the system said of the files.
    files_sum: String,
    /// How many files those were.
    files: u64,
    /// When they were read.
    since: Timestamp,
    code: u8,
    /// The length of the page, in bytes, and its sum: a page that was changed is not printed.
    length: u64,
    page_sum: String,
    /// The sum of all this: none of it is believed where any was changed.
    sum: String,
}

/// An answer that was kept, its page whole.
pub(in crate::cli::audit) struct Answer {
    /// How many files it is of.
    pub files: u64,
    /// When they were read.
    pub since: Timestamp,
    pub code: u8,
    /// The page.
    pub page: io::Take<File>,
}

impl Index {
    /// Looks at the files where a page was kept that may be of them; none where there is no place to keep anything.
    pub fn look(how: &Audited, paper: &Paper, library: Option<&Hash>) -> Result<Option<Self>, Failure> {
        let Some(cache) = Cache::open("audit") else {
            return Ok(None);
        };
        let since = Timestamp::now();
        let question = format!(
            "{:?} {:?} {} {:?} {paper:?} {} {}",
            how.folders,
            how.format,
            how.window,
            how.clock,
            library.map_or_else(String::new, Hash::to_string),
            program(),
        );
        let question = Hash::of(question.as_bytes()).to_string();
        let may_answer = !how.fresh && cache.read(&name(&question)).is_some();
        let now = may_answer.then(|| Fingerprint::of(&how.folders)).transpose()?;
        Ok(Some(Self {
            cache,
            question,
            now,
            since,
        }))
    }

    /// The answer that was kept, where nothing has changed since.
    pub fn answer(&self) -> Option<Answer> {
        let now = self.now?;
        let mut file = self.cache.read(&name(&self.question))?;
        let end = file.seek(SeekFrom::End(0)).ok()?;
        file.seek(SeekFrom::Start(end.saturating_sub(LONGEST))).ok()?;
        let mut last = Vec::new();
        (&file).take(LONGEST).read_to_end(&mut last).ok()?;
        let begin = last
            .iter()
            .rposition(|byte| *byte == b'\n')
            .map_or(0, |at| at + 1);
        let about: About = serde_json::from_slice(&last[begin..]).ok()?;
        let is_same = about.files_sum == now.to_string() && about.files == now.files;
        if !is_same || about.question != self.question || about.sum != about.worked_out() {
            return None;
        }
        file.rewind().ok()?;
        let mut sum = Summing::new(io::sink());
        io::copy(&mut (&file).take(about.length), &mut sum).ok()?;
        let is_whole = sum.written() == about.length && sum.sum().to_string() == about.page_sum;
        file.rewind().ok()?;
        is_whole.then(|| Answer {
            files: about.files,
            since: about.since,
            code: about.code,
            page: file.take(about.length),
        })
    }

    /// Where it is kept.
    pub fn cache(&self) -> &Cache {
        &self.cache
    }

    /// When the files were looked at.
    pub fn since(&self) -> Timestamp {
        self.since
    }

    /// What the system said of the files before any was read; none where it is to be asked of each as that is read.
    pub fn looked(&self) -> Option<Fingerprint> {
        self.now
    }

    /// Keeps a page of what was read since a time, if a change since the files were looked at would show.
    pub fn keep(
        &self,
        code: u8,
        since: Timestamp,
        looked: &Fingerprint,
        page: impl FnOnce(&mut dyn Write) -> io::Result<()>,
    ) {
        if !looked.is_settled(self.since.as_second()) {
            return;
        }
        self.cache.write(&name(&self.question), |out| {
            let mut summing = Summing::new(&mut *out);
            page(&mut summing)?;
            let mut about = About {
                question: self.question.clone(),
                files_sum: looked.to_string(),
                files: looked.files,
                since,
                code,
                length: summing.written(),
                page_sum: summing.sum().to_string(),
                sum: String::new(),
            };
            about.sum = about.worked_out();
            out.write_all(b"\n")?;
            Ok(serde_json::to_writer(out, &about)?)
        });
    }
}

/// The name of what is kept of a question.
fn name(question: &str) -> String {
    format!("{question}.page")
}

impl About {
    fn worked_out(&self) -> String {
        let Self {
            question,
            files_sum,
            files,
            since,
            code,
            length,
            page_sum,
            sum: _,
        } = self;
        let all = format!("{question} {files_sum} {files} {since} {code} {length} {page_sum}");
        Hash::of(all.as_bytes()).to_string()
    }
}

/// This very program: its version, and its file, since a version that is not released yet changes.
pub(super) fn program() -> String {
    let file = std::env::current_exe().and_then(|path| path.metadata());
    let file = file.and_then(|status| Ok((status.len(), status.modified()?)));
    format!("{} {:?}", env!("CARGO_PKG_VERSION"), file.ok())
}
