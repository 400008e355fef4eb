//! Looking through folders for sessions, following no links.

use std::os::fd::AsFd;
use std::path::PathBuf;

use rustix::fs::{AtFlags, Dir, FileType, statat};

use super::{Archive, DEEPEST, Packed, Place};
use crate::store::error::StoreError;
use crate::store::fingerprint::{Fingerprint, Told};
use crate::store::folder::SessionFolder;
use crate::store::kept;
use crate::store::name::Name;
use crate::store::own::Own;
use crate::store::packs::{Cover, Known, PACK_ENDING};

/// Folders that are held open; further ones are opened for each session.
const HELD: usize = 256;

impl Archive {
    pub(super) fn found(mut self, roots: &[PathBuf]) -> Result<Self, StoreError> {
        for root in roots {
            let folder = SessionFolder::open_existing(root)?;
            self.look(folder, None, 0);
        }
        self.strangers.sort_unstable();
        Ok(self)
    }

    fn look(&mut self, folder: SessionFolder, above: Option<u32>, depth: usize) {
        let mut waiting = vec![(folder, above, depth)];
        while let Some((folder, above, depth)) = waiting.pop() {
            let position = self.places.len() as u32;
            let path = folder.path.clone();
            let mut own = Own::default();
            let below = self.list(&folder, (position, depth), &mut own);
            own.sort();
            let packs = Known::clone(&folder.known);
            let held = (self.places.len() < HELD).then_some(folder);
            self.places.push(Place {
                path,
                above,
                held,
                own,
                packs,
            });
            let below = match below {
                Ok(below) => below,
                Err(error) => {
                    let path = &self.places[position as usize].path;
                    if let Some(looked) = &mut self.looked {
                        looked.shut(path, &error);
                    }
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
                    true => SessionFolder::open_existing(&path).map_err(|error| {
                        if let Some(looked) = &mut self.looked {
                            looked.shut(&path, &error);
                        }
                        error.reason()
                    }),
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
    fn list(
        &mut self,
        folder: &SessionFolder,
        (place, depth): (u32, usize),
        own: &mut Own,
    ) -> Result<Vec<String>, StoreError> {
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
            let parsed = stem.and_then(Name::parse);
            if let (Some(looked), None) = (&mut self.looked, &parsed) {
                let bytes = entry.file_name().to_bytes();
                let told = Told::of(folder, bytes);
                looked.name(&folder.path, bytes, told);
                if name == kept::FOLDER && matches!(told, Told::Folder) && depth < DEEPEST {
                    looked.add(Fingerprint::at(&folder.path.join(&*name), depth + 1));
                }
            }
            match (stem, parsed) {
                (_, Some(name)) => own.push(name),
                (Some(_), None) => self.strangers.push((place, name.into_owned())),
                (None, None) if is_folder(folder, &entry) => {
                    if name != kept::FOLDER && !name.starts_with('.') {
                        below.push(name.into_owned());
                    }
                }
                (None, None) if name.ends_with(PACK_ENDING) && !name.starts_with('.') => has_packs = true,
                (None, None) => self.others += 1,
            }
        }
        if has_packs {
            self.packed(folder, place)?;
        }
        below.sort_unstable();
        Ok(below)
    }

    /// Takes the packs of a folder.
    fn packed(&mut self, folder: &SessionFolder, place: u32) -> Result<(), StoreError> {
        for name in folder.pack_names()? {
            match Cover::look(&folder.fd, &folder.path, &name) {
                Ok((cover, first, sessions)) => {
                    for (entry, error) in cover.doubled() {
                        self.bad_pack(place, entry, &error);
                    }
                    // None in an empty one.
                    if let Some(first) = first {
                        self.packs.push(Packed {
                            cover,
                            place,
                            first,
                            sessions,
                        });
                    }
                }
                Err(error) => self.bad_pack(place, name, &error),
            }
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
