//! What may be a name.

use std::hash::{Hash, Hasher};

/// Words that YAML readers disagree about; none of them is a name.
const NO_NAMES: [&str; 7] = ["yes", "no", "on", "off", "true", "false", "null"];

/// Longest name, in characters.
const LONGEST: usize = 64;

/// Whether a text is a name in snake case: of steps, readings, signs, parts, faults and all else but trees.
pub(super) fn is_snake(text: &str) -> bool {
    is_name(text, b'_')
}

/// Whether a text is a name in kebab case: of trees and libraries.
pub(super) fn is_kebab(text: &str) -> bool {
    is_name(text, b'-')
}

fn is_name(text: &str, joint: u8) -> bool {
    let bytes = text.as_bytes();
    let is_joint = |byte: Option<&u8>| byte == Some(&joint);
    let mut has_letter = false;
    // In one go: every name of a library comes through here.
    let mut all = bytes.iter().take(LONGEST + 1);
    let are_plain = all.all(|byte| {
        has_letter |= byte.is_ascii_lowercase();
        byte.is_ascii_lowercase() || byte.is_ascii_digit() || *byte == joint
    });
    are_plain
        && has_letter
        && bytes.len() <= LONGEST
        && !is_joint(bytes.first())
        && !is_joint(bytes.last())
        && !NO_NAMES.contains(&text)
}

/// What a name looks like in print, where some letters and digits cannot be told apart: equal looks are equal.
#[derive(Clone, Copy)]
pub(super) struct Look<'a>(pub &'a str);

impl Look<'_> {
    fn bytes(self) -> impl Iterator<Item = u8> {
        let mut last = 0;
        self.0.bytes().filter_map(move |byte| {
            let same = match byte {
                b'l' => b'1',
                b'o' => b'0',
                b'-' => b'_',
                other => other,
            };
            let is_new = same != b'_' || last != b'_';
            last = same;
            is_new.then_some(same)
        })
    }
}

impl PartialEq for Look<'_> {
    fn eq(&self, other: &Self) -> bool {
        self.bytes().eq(other.bytes())
    }
}

impl Eq for Look<'_> {}

impl Hash for Look<'_> {
    fn hash<H: Hasher>(&self, state: &mut H) {
        // In one piece, as far as a name may be long: a hasher takes its time over every single byte.
        let mut piece = [0; LONGEST];
        let mut length = 0;
        for (place, byte) in piece.iter_mut().zip(self.bytes()) {
            *place = byte;
            length += 1;
        }
        state.write(&piece[..length]);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_are_plain_ascii() {
        assert!(is_snake("flame_current_2"));
        assert!(is_kebab("flame-drops-out"));
        for text in [
            "",
            "_a",
            "a_",
            "24",
            "Flame",
            "flame-out",
            "fl\u{430}me",
            "no",
            "null",
            "a b",
            "a.b",
        ] {
            assert!(!is_snake(text), "{text}");
        }
        assert!(!is_snake(&"a".repeat(65)));
    }

    #[test]
    fn names_that_look_alike_have_one_look() {
        let alike = |one, other| Look(one) == Look(other);
        assert!(alike("valve_l", "valve_1"));
        assert!(alike("loop", "l00p"));
        assert!(alike("a__b", "a-b"));
        assert!(!alike("inlet", "outlet"));
    }
}
