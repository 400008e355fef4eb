//! The index: what an audit came to, kept for as long as no file of the archive changes.
//!
//! It holds no sessions, only the page that was printed, and is found by what the system says of every file (name, device, inode,
//! size, both times), by this program and by what was asked. It proves nothing: a page out of it says so.

use jiff::Timestamp;
use serde::{Deserialize, Serialize};

use crate::cli::arguments::Audited;
use crate::cli::failure::Failure;
use crate::store::{Cache, Fingerprint, Hash};

/// The index of one question.
pub(super) struct Index {
    cache: Cache,
    name: String,
    now: Fingerprint,
    /// When the files were looked at.
    since: Timestamp,
}

/// An answer that was kept.
#[derive(Serialize, Deserialize)]
pub(super) struct Answer {
    /// The sum of what the system said of the files.
    files_sum: String,
    /// How many files those were.
    pub files: u64,
    /// When they were read.
    pub since: Timestamp,
    pub code: u8,
    /// The sum of the page: a page that was changed is not printed.
    page_sum: String,
    pub page: String,
}

impl Index {
    /// Looks at the files; none where there is no place to keep anything.
    pub fn look(how: &Audited, ascii: bool, library: Option<&Hash>) -> Result<Option<Self>, Failure> {
        let Some(cache) = Cache::open("audit") else {
            return Ok(None);
        };
        let since = Timestamp::now();
        let now = Fingerprint::of(&how.folders)?;
        let question = format!(
            "{:?} {:?} {} {:?} {ascii} {} {}",
            how.folders,
            how.format,
            how.window,
            how.clock,
            library.map_or_else(String::new, Hash::to_string),
            program(),
        );
        let name = format!("{}.json", Hash::of(question.as_bytes()));
        Ok(Some(Self {
            cache,
            name,
            now,
            since,
        }))
    }

    /// The answer that was kept, where nothing has changed since.
    pub fn answer(&self) -> Option<Answer> {
        let answer: Answer = serde_json::from_slice(&self.cache.read(&self.name)?).ok()?;
        let is_same = answer.files_sum == self.now.sum.to_string()
            && answer.files == self.now.files
            && answer.page_sum == Hash::of(answer.page.as_bytes()).to_string();
        is_same.then_some(answer)
    }

    /// How many files it knows.
    pub fn files(&self) -> u64 {
        self.now.files
    }

    /// Keeps an answer, if a change since the files were looked at would show.
    pub fn keep(&self, page: String, code: u8) {
        if !self.now.is_settled(self.since.as_second()) {
            return;
        }
        let answer = Answer {
            files_sum: self.now.sum.to_string(),
            files: self.now.files,
            since: self.since,
            code,
            page_sum: Hash::of(page.as_bytes()).to_string(),
            page,
        };
        if let Ok(text) = serde_json::to_vec(&answer) {
            self.cache.write(&self.name, &text);
        }
    }
}

/// This very program: its version, and its file, since a version that is not released yet changes.
fn program() -> String {
    let file = std::env::current_exe().and_then(|path| path.metadata());
    let file = file.and_then(|status| Ok((status.len(), status.modified()?)));
    format!("{} {:?}", env!("CARGO_PKG_VERSION"), file.ok())
}
