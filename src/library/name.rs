//! What may be a name.

/// Words that YAML readers disagree about; none of them is a name.
const NO_NAMES: [&str; 7] = ["yes", "no", "on", "off", "true", "false", "null"];

/// Longest name, in characters.
const LONGEST: usize = 64;

/// Whether a text is a name in snake case: of steps, readings, signs, parts, faults and all else but trees.
pub(super) fn is_snake(text: &str) -> bool {
    is_name(text, '_')
}

/// Whether a text is a name in kebab case: of trees and libraries.
pub(super) fn is_kebab(text: &str) -> bool {
    is_name(text, '-')
}

fn is_name(text: &str, joint: char) -> bool {
    let plain = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit();
    text.starts_with(plain)
        && text.ends_with(plain)
        && text.contains(|c: char| c.is_ascii_lowercase())
        && text.chars().all(|c| plain(c) || c == joint)
        && text.len() <= LONGEST
        && !NO_NAMES.contains(&text)
}

/// What a name looks like in print, where some letters and digits cannot be told apart.
pub(super) fn look(name: &str) -> String {
    let mut look = String::with_capacity(name.len());
    for character in name.chars() {
        let same = match character {
            'l' => '1',
            'o' => '0',
            '_' | '-' if look.ends_with('_') => continue,
            '-' => '_',
            other => other,
        };
        look.push(same);
    }
    look
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
        assert_eq!(look("valve_l"), look("valve_1"));
        assert_eq!(look("loop"), look("l00p"));
        assert_ne!(look("inlet"), look("outlet"));
    }
}
