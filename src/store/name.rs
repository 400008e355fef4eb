//! Session ids in little memory: a company keeps a million.

use uuid::Uuid;

use super::SessionId;

/// A session's id, small: nearly all are UUIDs.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Name {
    /// A UUID.
    Uuid([u8; 16]),
    /// Any other.
    Named(Box<SessionId>),
}

impl From<SessionId> for Name {
    fn from(id: SessionId) -> Self {
        match Uuid::try_parse(id.as_str()) {
            Ok(uuid) if uuid.to_string() == id.as_str() => Self::Uuid(uuid.into_bytes()),
            _ => Self::Named(Box::new(id)),
        }
    }
}

impl From<&Name> for SessionId {
    fn from(name: &Name) -> Self {
        match name {
            Name::Uuid(bytes) => Self::of(Uuid::from_bytes(*bytes)),
            Name::Named(id) => Self::clone(id),
        }
    }
}
