//! Every session below several folders, in little memory: a company keeps a million.

use std::os::fd::AsFd;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use rustix::fs::{AtFlags, Dir, FileType, statat};

use super::error::StoreError;
use super::folder::SessionFolder;
use super::id::SessionId;
use super::kept;
use super::merged::Merged;
use super::name::Name;
use super::packs::{Known, PACK_ENDING, Pack};

/// Folders that lie deeper are named and not read.
pub(super) const DEEPEST: usize = 16;

/// Folders that are held open; further ones are opened for each session.
const HELD: usize = 256;

/// The sessions below several folders.
#[derive(Debug, Default)]
pub struct Archive {
    places: Vec<Place>,
    /// Sorted.
    entries: Vec<Entry>,
    /// Packs, each with the position of its folder. Their tables of contents are not copied.
    packs: Vec<(Arc<Pack>, u32)>,
    /// Files that end as sessions do, under names that no session can have: the folder's position, and the name.
    pub strangers: Vec<(u32, String)>,
    /// Packs that are damaged, and entries of packs: the folder's position, the name, and why.
    pub bad_packs: Vec<(u32, String, String)>,
    /// Folders and packs that could not be read: the position of the folder above, the name, and why.
    pub unreadable: Vec<(u32, String, String)>,
    /// How many other files there were.
    pub others: u64,
}

/// A folder with sessions.
#[derive(Debug)]
struct Place {
    path: PathBuf,
    /// The folder above it, where that belongs to the archive, too.
    above: Option<u32>,
    held: Option<SessionFolder>,
    /// What is known of its packs.
    packs: Known,
}

/// A session that has a file of its own, and the position of its folder.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
struct Entry {
    name: Name,
    place: u32,
}

impl Archive {
    /// Looks through folders and those in them, without following links. Sessions are sorted by id.
    ///
    /// # Errors
    ///
    /// Where one of the folders that were named cannot be opened, as with [`SessionFolder::open_existing`]. Of a folder that lies
    /// below one, that is told in [`unreadable`](Self::unreadable).
    pub fn find(roots: &[PathBuf]) -> Result<Self, StoreError> {
        let mut archive = Self::default();
        for root in roots {
            let folder = SessionFolder::open_existing(root)?;
            archive.look(folder, None, 0);
        }
        archive.entries.sort_unstable();
        archive.strangers.sort_unstable();
        Ok(archive)
    }

    /// The folders, in the order they were found.
    pub fn folders(&self) -> impl Iterator<Item = &Path> {
        self.places.iter().map(|place| place.path.as_path())
    }

    /// How many sessions there are, copies counted once.
    pub fn len(&self) -> usize {
        self.sessions().count()
    }

    /// The same with each copy counted, which takes no looking at all of them.
    pub fn at_most(&self) -> usize {
        let packed: usize = self.packs.iter().map(|(pack, _)| pack.names().len()).sum();
        self.entries.len() + packed
    }

    /// Whether there is none.
    pub fn is_empty(&self) -> bool {
        self.at_most() == 0
    }

    /// Each session with the positions of the folders that have it, in the order of ids. In a folder, one that has a file of its own
    /// and lies in a pack is read from its file, so that folder counts once.
    pub fn sessions(&self) -> impl Iterator<Item = (SessionId, Vec<u32>)> {
        let own = self.entries.iter().map(|entry| (&entry.name, entry.place));
        let packed = (self.packs.iter()).map(|(pack, place)| pack.names().map(|name| (name, *place)));
        let mut merged = Merged::default();
        merged.add(own);
        packed.for_each(|names| merged.add(names));
        merged
    }

    /// A folder by its position.
    ///
    /// # Errors
    ///
    /// Where it can no longer be opened.
    pub fn folder(&self, position: u32) -> Result<SessionFolder, StoreError> {
        let place = &self.places[position as usize];
        match &place.held {
            Some(folder) => Ok(folder.clone()),
            None => Ok(SessionFolder {
                known: Known::clone(&place.packs),
                ..SessionFolder::open_existing(&place.path)?
            }),
        }
    }

    /// A folder, then those above it that belong to the archive: where the library of a session may be kept.
    pub fn upwards(&self, position: u32) -> impl Iterator<Item = u32> {
        std::iter::successors(Some(position), |at| self.places[*at as usize].above)
    }

    fn look(&mut self, folder: SessionFolder, above: Option<u32>, depth: usize) {
        let mut waiting = vec![(folder, above, depth)];
        while let Some((folder, above, depth)) = waiting.pop() {
            let position = self.places.len() as u32;
            let path = folder.path.clone();
            let below = self.list(&folder, position);
            let packs = Known::clone(&folder.known);
            let held = (self.places.len() < HELD).then_some(folder);
            self.places.push(Place {
                path,
                above,
                held,
                packs,
            });
            let below = match below {
                Ok(below) => below,
                Err(error) => {
                    let (place, name) = match (above, self.places[position as usize].path.file_name()) {
                        (Some(above), Some(name)) => (above, format!("{}/", name.to_string_lossy())),
                        _ => (position, "./".to_owned()),
                    };
                    self.unreadable.push((place, name, error.reason()));
                    continue;
                }
            };
            // The last is looked at first.
            for name in below.into_iter().rev() {
                let path = self.places[position as usize].path.join(&name);
                let opened = match depth < DEEPEST {
                    true => SessionFolder::open_existing(&path).map_err(|error| error.reason()),
                    false => Err(format!(
                        "it lies more than {DEEPEST} folders deep, so it is not read"
                    )),
                };
                match opened {
                    Ok(folder) => waiting.push((folder, Some(position), depth + 1)),
                    Err(why) => self.unreadable.push((position, format!("{name}/"), why)),
                }
            }
        }
    }

    /// Takes the sessions of a folder; the names of the folders in it, sorted.
    fn list(&mut self, folder: &SessionFolder, place: u32) -> Result<Vec<String>, StoreError> {
        let unreadable = |error: rustix::io::Errno| StoreError::unreadable(&folder.path, error.into());
        let mut below = Vec::new();
        let mut has_packs = false;
        for entry in Dir::read_from(&folder.fd).map_err(unreadable)? {
            let entry = entry.map_err(unreadable)?;
            let name = String::from_utf8_lossy(entry.file_name().to_bytes());
            if name == "." || name == ".." {
                continue;
            }
            let stem = name.strip_suffix(".jsonl").filter(|_| !name.starts_with('.'));
            match (stem, stem.map(SessionId::parse)) {
                (Some(_), Some(Ok(id))) => {
                    let name = Name::from(id);
                    self.entries.push(Entry { name, place });
                }
                (Some(_), _) => self.strangers.push((place, name.into_owned())),
                (None, _) if is_folder(folder, &entry) => {
                    if name != kept::FOLDER && !name.starts_with('.') {
                        below.push(name.into_owned());
                    }
                }
                (None, _) if name.ends_with(PACK_ENDING) && !name.starts_with('.') => has_packs = true,
                (None, _) => self.others += 1,
            }
        }
        if has_packs {
            self.packed(folder, place)?;
        }
        below.sort_unstable();
        Ok(below)
    }

    /// Takes the sessions of a folder's packs.
    fn packed(&mut self, folder: &SessionFolder, place: u32) -> Result<(), StoreError> {
        let packs = folder.look_for_packs()?;
        let sound = packs.sound.iter().map(|pack| (Arc::clone(pack), place));
        self.packs.extend(sound);
        for (name, error) in &packs.bad {
            let list = match error.is_damage() {
                true => &mut self.bad_packs,
                false => &mut self.unreadable,
            };
            list.push((place, name.clone(), error.reason()));
        }
        Ok(())
    }
}

fn is_folder(folder: &SessionFolder, entry: &rustix::fs::DirEntry) -> bool {
    match entry.file_type() {
        FileType::Directory => true,
        // Some file systems do not say.
        FileType::Unknown => statat(folder.fd.as_fd(), entry.file_name(), AtFlags::SYMLINK_NOFOLLOW)
            .is_ok_and(|status| FileType::from_raw_mode(status.st_mode) == FileType::Directory),
        _ => false,
    }
}
