//! A folder of which the system tells when something in it changes.

use std::os::unix::fs::MetadataExt;
use std::path::{Path, PathBuf};
use std::sync::mpsc::Sender;

use notify::event::{AccessKind, AccessMode};
use notify::{EventKind, RecommendedWatcher, RecursiveMode, Watcher};

use super::Heard;
use crate::cli::failure::{Failure, WRONG_USE};
use crate::source::safe;

/// A folder of which the system tells when something in it changes.
pub(super) struct Watched {
    watcher: RecommendedWatcher,
    folder: PathBuf,
    /// The device and number of the folder that is watched; none while there is none.
    which: Option<(u64, u64)>,
}

impl Watched {
    pub fn new(folder: &Path, news: Sender<Heard>) -> Result<Self, Failure> {
        let folder = std::path::absolute(folder)?;
        let within = folder.clone();
        let watcher = notify::recommended_watcher(move |event: notify::Result<notify::Event>| {
            // Where an event was lost, or is none of a file, it is better to look once too often.
            let matters = event.map_or(true, |event| event.need_rescan() || matters(&event, &within));
            if matters {
                // Nobody listens any more where the program is about to end.
                let _ = news.send(Heard::Saved);
            }
        });
        let mut watched = Self {
            watcher: watcher.map_err(|error| cannot_watch(&folder, &error))?,
            folder,
            which: None,
        };
        watched.start()?;
        Ok(watched)
    }

    fn start(&mut self) -> Result<(), Failure> {
        let which = which(&self.folder);
        if which.is_some() {
            (self.watcher)
                .watch(&self.folder, RecursiveMode::Recursive)
                .map_err(|error| cannot_watch(&self.folder, &error))?;
        }
        self.which = which;
        Ok(())
    }

    /// Takes up the folder that stands there now, where the one that was watched is gone; whether it is another.
    pub fn keep(&mut self) -> bool {
        if which(&self.folder) == self.which {
            return false;
        }
        // What is gone need not be left, and what cannot be watched yet is tried at the next tick.
        let _ = self.watcher.unwatch(&self.folder);
        self.which = None;
        let _ = self.start();
        true
    }
}

fn cannot_watch(folder: &Path, error: &notify::Error) -> Failure {
    let shown = folder.to_string_lossy();
    let message = format!("{} cannot be watched: {}", safe(&shown), safe(&error.to_string()));
    let failure = Failure::new(WRONG_USE, message);
    match error.kind {
        notify::ErrorKind::MaxFilesWatch => failure.help(
            "name a smaller folder, or raise how many the system watches (fs.inotify.max_user_watches)",
        ),
        _ => failure.help("run it without `--watch`"),
    }
}

fn which(folder: &Path) -> Option<(u64, u64)> {
    let status = std::fs::metadata(folder).ok().filter(std::fs::Metadata::is_dir)?;
    Some((status.dev(), status.ino()))
}

/// Whether an event may have changed the library: reading it does not, nor does what is hidden.
fn matters(event: &notify::Event, folder: &Path) -> bool {
    let reads = match event.kind {
        EventKind::Access(AccessKind::Close(AccessMode::Write)) => false,
        EventKind::Access(_) => true,
        _ => false,
    };
    let hidden = |path: &PathBuf| {
        let inside = path.strip_prefix(folder).unwrap_or(path);
        inside
            .iter()
            .any(|part| part.as_encoded_bytes().starts_with(b"."))
    };
    !reads && (event.paths.is_empty() || !event.paths.iter().all(hidden))
}

#[cfg(test)]
mod tests {
    use notify::event::{CreateKind, DataChange, ModifyKind};

    use super::*;

    fn event(kind: EventKind, path: &str) -> notify::Event {
        notify::Event::new(kind).add_path(PathBuf::from(path))
    }

    #[test]
    fn reading_and_what_is_hidden_wake_nobody() {
        let folder = Path::new("/home/.trees/lib");
        let modified = EventKind::Modify(ModifyKind::Data(DataChange::Any));
        let read = EventKind::Access(AccessKind::Close(AccessMode::Read));
        let written = EventKind::Access(AccessKind::Close(AccessMode::Write));
        for (kind, path, expected) in [
            (modified, "/home/.trees/lib/a.yaml", true),
            (written, "/home/.trees/lib/a.yaml", true),
            (
                EventKind::Create(CreateKind::Folder),
                "/home/.trees/lib/scenarios",
                true,
            ),
            (read, "/home/.trees/lib/a.yaml", false),
            (modified, "/home/.trees/lib/.git/index", false),
            (modified, "/home/.trees/lib/.a.yaml.swp", false),
        ] {
            assert_eq!(matters(&event(kind, path), folder), expected, "{kind:?} {path}");
        }
    }
}
