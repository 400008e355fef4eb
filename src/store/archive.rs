//! Every session below several folders, in little memory: a company keeps a million.

mod find;

use std::borrow::Cow;
use std::os::fd::AsFd;
use std::path::{Path, PathBuf};
use std::sync::{Mutex, PoisonError};

use rustix::fs::{AtFlags, statat};

use super::error::StoreError;
use super::fingerprint::{Fingerprint, Told};
use super::folder::SessionFolder;
use super::id::SessionId;
use super::identity::Identity;
use super::merged::{Lies, List, Merged};
use super::name::Name;
use super::own::Own;
use super::packs::{Cover, Known, Pack, Room, Streamed};
use super::records::Records;

/// Folders that lie deeper are named and not read.
pub(super) const DEEPEST: usize = 16;

/// The sessions below several folders.
#[derive(Debug, Default)]
pub struct Archive {
    places: Vec<Place>,
    /// Packs. Of their tables of contents, only those are kept that are being read.
    packs: Vec<Packed>,
    /// Files that end as sessions do, under names that no session can have: the folder's position, and the name.
    pub strangers: Vec<(u32, String)>,
    bad_packs: Mutex<Vec<BadPack>>,
    /// Folders that could not be read: the position of the folder above, the name, and why.
    pub unreadable: Vec<(u32, String, String)>,
    /// How many other files there were.
    pub others: u64,
    looked: Option<Fingerprint>,
}

/// The names of sessions that have files of their own, folder by folder.
#[derive(Debug)]
pub struct OwnNames(Vec<Own>);

/// A pack, or an entry of one, that could not be read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BadPack {
    /// The position of its folder.
    pub folder: u32,
    /// Its name.
    pub name: String,
    /// Why.
    pub why: String,
    /// Whether it is damaged; otherwise it could not be opened or read.
    pub is_damaged: bool,
}

/// A session, and where it lies.
#[derive(Debug)]
pub struct Found {
    /// Its id, small.
    pub name: Name,
    /// Where it lies.
    pub lies: Lies,
    /// Where else.
    pub others: Vec<Lies>,
}

/// A pack, and the position of its folder.
#[derive(Debug)]
struct Packed {
    cover: Cover,
    place: u32,
    first: Name,
    sessions: usize,
}

/// A folder with sessions.
#[derive(Debug)]
struct Place {
    path: PathBuf,
    /// The folder above it, where that belongs to the archive, too.
    above: Option<u32>,
    held: Option<SessionFolder>,
    own: Own,
    /// What is known of its packs.
    packs: Known,
}

impl Archive {
    /// Looks through folders and those in them, without following links. Sessions are sorted by id.
    ///
    /// # Errors
    ///
    /// Where one of the folders that were named cannot be opened, as with [`SessionFolder::open_existing`]. Of a folder that lies
    /// below one, that is told in [`unreadable`](Self::unreadable).
    pub fn find(roots: &[PathBuf]) -> Result<Self, StoreError> {
        Self::default().found(roots)
    }

    /// The same, and begins the [`Fingerprint`] of these folders: of all in them but sessions with files of their own, which are
    /// [asked about](Self::look_at) as they are read.
    ///
    /// # Errors
    ///
    /// As [`find`](Self::find).
    pub fn find_looking(roots: &[PathBuf]) -> Result<(Self, Fingerprint), StoreError> {
        let looking = Self {
            looked: Some(Fingerprint::default()),
            ..Self::default()
        };
        let mut archive = looking.found(roots)?;
        let looked = archive.looked.take().unwrap_or_default();
        Ok((archive, looked))
    }

    /// Takes in what the system says of the file of its own that a session lies in: what it said of it as that was opened, where it was;
    /// what it says now, otherwise.
    pub fn look_at(&self, looked: &mut Fingerprint, id: &SessionId, lies: &Lies, opened: Option<Identity>) {
        let None = lies.packed else { return };
        let Ok(folder) = self.folder(lies.place) else {
            return;
        };
        let name = SessionFolder::file_name(id);
        let told = opened.map_or_else(|| Told::of(&folder, name.as_bytes()), Told::File);
        looked.name(&folder.path, name.as_bytes(), told);
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
        let packed: usize = self.packs.iter().map(|pack| pack.sessions).sum();
        let own: usize = self.places.iter().map(|place| place.own.len()).sum();
        own + packed
    }

    /// Whether there is none.
    pub fn is_empty(&self) -> bool {
        self.at_most() == 0
    }

    /// Each session in the order of ids.
    pub fn sessions(&self) -> impl Iterator<Item = Found> + Send {
        let own = (0..).zip(&self.places);
        self.merged(own.map(|(place, folder)| (place, folder.own.iter())))
    }

    /// Takes the names of sessions that have files of their own out of the archive, for [`each`](Self::each): a million of them are
    /// let go as they are gone through, and the archive is without them then.
    pub fn take_names(&mut self) -> OwnNames {
        OwnNames(
            self.places
                .iter_mut()
                .map(|place| std::mem::take(&mut place.own))
                .collect(),
        )
    }

    /// The same as [`sessions`](Self::sessions), of the names that were taken out.
    pub fn each(&self, names: OwnNames) -> impl Iterator<Item = Found> + Send {
        let own = (0..).zip(names.0);
        self.merged(own.map(|(place, own)| (place, own.into_names())))
    }

    /// Each session, of the sorted names of those in each folder that have files of their own.
    fn merged<'a>(
        &'a self,
        own: impl Iterator<Item = (u32, impl Iterator<Item = Name> + Send + 'a)>,
    ) -> impl Iterator<Item = Found> + Send + 'a {
        let mut merged = Merged::default();
        for (place, names) in own {
            let mut names = names.peekable();
            if let Some(first) = names.peek().cloned() {
                let packed = None;
                let own = names.map(move |name| (name, Lies { place, packed }));
                merged.add(first, Box::new(|| Box::new(own)));
            }
        }
        for (at, pack) in (0..).zip(&self.packs) {
            merged.add(pack.first.clone(), Box::new(move || self.contents(at, pack)));
        }
        merged.map(|(name, lies, others)| Found { name, lies, others })
    }

    /// What is in a pack, when it is its turn.
    fn contents(&self, at: u32, pack: &Packed) -> List<'_> {
        let place = pack.place;
        let opened =
            (self.folder(place)).and_then(|folder| Pack::open(&folder.fd, &folder.path, pack.cover.name()));
        match opened {
            Ok(pack) => Box::new(pack.into_entries().into_iter().map(move |entry| {
                let packed = Some((at, entry.extent));
                (entry.name, Lies { place, packed })
            })),
            Err(error) => {
                self.bad_pack(place, pack.cover.name().to_owned(), &error);
                Box::new(std::iter::empty())
            }
        }
    }

    /// The packs that could not be read so far: some are only looked into when it is their turn.
    pub fn bad_packs(&self) -> Vec<BadPack> {
        // Nothing can fail while the lock is held.
        let mut bad = self.bad_packs.lock().unwrap_or_else(PoisonError::into_inner);
        std::mem::take(&mut bad)
    }

    fn bad_pack(&self, folder: u32, name: String, error: &StoreError) {
        let mut list = self.bad_packs.lock().unwrap_or_else(PoisonError::into_inner);
        list.push(BadPack {
            folder,
            name,
            why: error.reason(),
            is_damaged: error.is_damage(),
        });
    }

    /// Reads a session, as [`SessionFolder::stream_in`] does. Where it was read at once, the file or the pack is told that it was
    /// read from.
    ///
    /// # Errors
    ///
    /// As that.
    pub fn stream_in<'r>(
        &self,
        id: &SessionId,
        lies: &Lies,
        room: &'r mut Room,
    ) -> Result<(Streamed<'r>, Option<Identity>), StoreError> {
        let folder = self.folder(lies.place)?;
        if let Some((pack, extent)) = lies.packed {
            let cover = &self.packs[pack as usize].cover;
            if room.unpack(&folder, cover, extent).is_some() {
                return Ok((Records::new(Box::new(room.text())), Some(cover.identity())));
            }
        }
        folder.stream_with(id, room)
    }

    /// What the system says of the file or the pack that a session lies in, without reading it; none where nobody knows.
    pub fn identity(&self, id: &SessionId, lies: &Lies) -> Option<Identity> {
        match lies.packed {
            Some((pack, _)) => Some(self.packs[pack as usize].cover.identity()),
            None => {
                let folder = self.folder(lies.place).ok()?;
                let name = SessionFolder::file_name(id);
                let status = statat(folder.fd.as_fd(), name, AtFlags::SYMLINK_NOFOLLOW).ok()?;
                Some(Identity::of(&status))
            }
        }
    }

    /// A folder by its position.
    ///
    /// # Errors
    ///
    /// Where it can no longer be opened.
    pub fn folder(&self, position: u32) -> Result<Cow<'_, SessionFolder>, StoreError> {
        let place = &self.places[position as usize];
        match &place.held {
            Some(folder) => Ok(Cow::Borrowed(folder)),
            None => Ok(Cow::Owned(SessionFolder {
                known: Known::clone(&place.packs),
                ..SessionFolder::open_existing(&place.path)?
            })),
        }
    }

    /// A folder, then those above it that belong to the archive: where the library of a session may be kept.
    pub fn upwards(&self, position: u32) -> impl Iterator<Item = u32> {
        std::iter::successors(Some(position), |at| self.places[*at as usize].above)
    }
}

impl Found {
    /// Its id.
    pub fn id(&self) -> SessionId {
        SessionId::from(&self.name)
    }
}
