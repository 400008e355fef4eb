//! The layers of a library: its own folder, and the overlays laid over it.

/// Which layer of a library a file belongs to.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Layer {
    number: usize,
    folder: String,
}

/// Stands before an overlay's number in a key. Hidden folders are no part of a library, so no name in it begins like this.
const MARK: &str = ".overlay-";

impl Layer {
    /// The overlay of a number, counted from 1 in the order they are laid, with its folder as it was given.
    pub fn overlay(number: usize, folder: impl Into<String>) -> Self {
        Self {
            number,
            folder: folder.into(),
        }
    }

    /// 0 for the library itself, 1 for the first overlay.
    pub fn number(&self) -> usize {
        self.number
    }

    /// The overlay's folder as it was given; empty where that is not known, and for the library itself.
    pub fn folder(&self) -> &str {
        &self.folder
    }

    pub(super) fn key(&self, name: &str) -> String {
        match self.number {
            0 => name.to_owned(),
            number => format!("{MARK}{number}/{name}"),
        }
    }

    pub(super) fn shown(&self, name: &str) -> String {
        match self.folder.trim_end_matches('/') {
            "" if self.folder.is_empty() => self.key(name),
            folder => format!("{folder}/{name}"),
        }
    }
}

/// The overlay and the name in it that a key stands for; nothing where it stands for a file of the library itself.
pub(super) fn of_key(key: &str) -> Option<(Layer, &str)> {
    let (number, name) = key.strip_prefix(MARK)?.split_once('/')?;
    let number = number.parse().ok().filter(|number| *number > 0)?;
    Some((Layer::overlay(number, ""), name))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_key_is_read_as_it_is_written_and_does_not_tell_the_folder() {
        let layer = Layer::overlay(12, "/srv/company/");
        assert_eq!(
            layer.key("registry/parts.yaml"),
            ".overlay-12/registry/parts.yaml"
        );
        assert_eq!(
            of_key(".overlay-12/registry/parts.yaml"),
            Some((Layer::overlay(12, ""), "registry/parts.yaml"))
        );
    }

    #[test]
    fn any_other_name_is_the_librarys_own() {
        assert_eq!(Layer::default().key("no-heat.yaml"), "no-heat.yaml");
        for key in [
            "no-heat.yaml",
            ".overlay-0/a.yaml",
            ".overlay-x/a.yaml",
            ".overlay-1",
        ] {
            assert_eq!(of_key(key), None, "{key}");
        }
    }

    #[test]
    fn a_file_is_shown_where_it_can_be_opened() {
        assert_eq!(
            Layer::overlay(1, "../company/").shown("a.yaml"),
            "../company/a.yaml"
        );
        assert_eq!(Layer::overlay(1, "/").shown("a.yaml"), "/a.yaml");
        assert_eq!(Layer::overlay(1, "").shown("a.yaml"), ".overlay-1/a.yaml");
        assert_eq!(Layer::default().shown("a.yaml"), "a.yaml");
    }
}
