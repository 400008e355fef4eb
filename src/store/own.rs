//! The sessions of a folder that have files of their own, by name: sixteen bytes each.

use super::name::Name;

/// The sessions of a folder that have files of their own.
#[derive(Debug, Default)]
pub(super) struct Own {
    /// Nearly all of them.
    uuids: Vec<[u8; 16]>,
    named: Vec<Name>,
}

impl Own {
    /// One more.
    pub fn push(&mut self, name: Name) {
        match name {
            Name::Uuid(uuid) => self.uuids.push(uuid),
            Name::Named(_) => self.named.push(name),
        }
    }

    /// There are no more: sorts them.
    pub fn sort(&mut self) {
        self.uuids.sort_unstable();
        self.uuids.shrink_to_fit();
        self.named.sort_unstable();
    }

    /// How many there are.
    pub fn len(&self) -> usize {
        self.uuids.len() + self.named.len()
    }

    /// Each of them; sorted, once they were. UUIDs come before other names.
    pub fn iter(&self) -> impl Iterator<Item = Name> + Send {
        let uuids = self.uuids.iter().map(|uuid| Name::Uuid(*uuid));
        uuids.chain(self.named.iter().cloned())
    }

    /// The same, to let go of.
    pub fn into_names(self) -> impl Iterator<Item = Name> + Send {
        self.uuids.into_iter().map(Name::Uuid).chain(self.named)
    }
}
