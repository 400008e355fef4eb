//! Session ids in little memory: a company keeps a million.

use uuid::Uuid;

use super::SessionId;

/// Characters of a UUID, with hyphens and without braces.
const WRITTEN: usize = 36;

/// A session's id, small: nearly all are UUIDs.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Name {
    /// A UUID.
    Uuid([u8; 16]),
    /// Any other.
    Named(Box<SessionId>),
}

impl Name {
    /// Reads an id that a file is named by; none where it is none.
    pub(super) fn parse(text: &str) -> Option<Self> {
        // Most by far, and told without a text of their own.
        let is_written_so = text.len() == WRITTEN && !text.bytes().any(|byte| byte.is_ascii_uppercase());
        match Uuid::try_parse(text) {
            Ok(uuid) if is_written_so => Some(Self::Uuid(uuid.into_bytes())),
            _ => SessionId::parse(text).ok().map(Self::from),
        }
    }
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

#[cfg(test)]
mod tests {
    use super::Name;
    use crate::store::SessionId;

    #[test]
    fn a_name_is_the_same_read_at_once_or_by_way_of_the_id() {
        for text in [
            "017f22e2-79b0-7cc3-98c4-dc0c0c07398f",
            "017F22E2-79B0-7CC3-98C4-DC0C0C07398F",
            "017f22e279b07cc398c4dc0c0c07398f",
            "{017f22e2-79b0-7cc3-98c4-dc0c0c07398f}",
            "urn:uuid:017f22e2-79b0-7cc3-98c4-dc0c0c07398f",
            "017f22e2-79b0-7cc3-98c4-dc0c0c07398g",
            "call-7",
            "",
            "../7",
        ] {
            let by_id = SessionId::parse(text).ok().map(Name::from);
            assert_eq!(Name::parse(text), by_id, "{text}");
            assert!(by_id.is_none_or(|name| SessionId::from(&name).as_str() == text));
        }
    }
}
