//! Source files, read without their comments and strings.

use std::fs;
use std::path::Path;

/// A file of the house.
pub struct SourceFile {
    /// Its path from the root of the project.
    pub name: String,
    /// The folder, or the file, right below `src`.
    pub room: String,
    /// What it says, without comments and with its strings emptied.
    pub text: String,
}

/// Every file below `src`.
pub fn files() -> Vec<SourceFile> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let mut found = Vec::new();
    let mut waiting = vec![root.join("src")];
    while let Some(folder) = waiting.pop() {
        for entry in fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                waiting.push(path);
            } else if path.extension().is_some_and(|extension| extension == "rs") {
                let within = path.strip_prefix(root).unwrap();
                let room = within.iter().nth(1).unwrap().to_str().unwrap();
                found.push(SourceFile {
                    name: within.to_str().unwrap().to_owned(),
                    room: room.trim_end_matches(".rs").to_owned(),
                    text: bare(&fs::read_to_string(&path).unwrap()),
                });
            }
        }
    }
    found.sort_by(|a, b| a.name.cmp(&b.name));
    found
}

/// The rooms that a text names as `crate::room`, with the line of each.
pub fn rooms_named(text: &str) -> Vec<(usize, String)> {
    let text = bare(text);
    let mut found = Vec::new();
    for (at, start) in text.match_indices("crate::") {
        let line = text[..at].lines().count().max(1) + usize::from(text[..at].ends_with('\n'));
        let rest = &text[at + start.len()..];
        for room in first_names(rest) {
            found.push((line, room));
        }
    }
    found
}

/// The name that a path goes on with; all of them where it goes on with a group in braces.
fn first_names(rest: &str) -> Vec<String> {
    let Some(group) = rest.strip_prefix('{') else {
        return vec![word(rest)];
    };
    let mut depth = 0;
    let mut names = Vec::new();
    let mut expected = true;
    for (at, character) in group.char_indices() {
        match character {
            '{' => depth += 1,
            '}' if depth == 0 => break,
            '}' => depth -= 1,
            ',' if depth == 0 => expected = true,
            _ if expected && !character.is_whitespace() => {
                names.push(word(&group[at..]));
                expected = false;
            }
            _ => {}
        }
    }
    names
}

fn word(text: &str) -> String {
    text.chars()
        .take_while(|c| c.is_alphanumeric() || *c == '_')
        .collect()
}

/// Whether code has this word, outside comments and strings.
pub fn names(text: &str, wanted: &str) -> bool {
    let text = bare(text);
    let mut words = text.split(|c: char| !c.is_alphanumeric() && c != '_');
    words.any(|word| word == wanted)
}

/// The text with its line comments removed and its strings emptied, line for line.
fn bare(text: &str) -> String {
    let mut bare = String::with_capacity(text.len());
    let mut rest = text;
    while let Some(character) = rest.chars().next() {
        if rest.starts_with("//") {
            rest = &rest[rest.find('\n').unwrap_or(rest.len())..];
        } else if let Some((hashes, inside)) = raw_string(rest) {
            let end = format!("\"{}", "#".repeat(hashes));
            let length = inside.find(&end).map_or(inside.len(), |at| at + end.len());
            bare.extend(inside[..length].matches('\n'));
            bare.push_str("\"\"");
            rest = &inside[length..];
        } else if rest.starts_with("'\"'") {
            rest = &rest[3..];
        } else if rest.starts_with("'\\\"'") {
            rest = &rest[4..];
        } else if character == '"' {
            let length = string_length(&rest[1..]);
            bare.extend(rest[1..=length].matches('\n'));
            bare.push_str("\"\"");
            rest = &rest[1 + length..];
        } else {
            bare.push(character);
            rest = &rest[character.len_utf8()..];
        }
    }
    bare
}

/// How many hash signs a raw string at the start has, and what stands after its opening quote.
fn raw_string(text: &str) -> Option<(usize, &str)> {
    let after = text.strip_prefix("r").or_else(|| text.strip_prefix("br"))?;
    let hashes = after.len() - after.trim_start_matches('#').len();
    after[hashes..].strip_prefix('"').map(|inside| (hashes, inside))
}

/// The bytes of a string up to and with its closing quote.
fn string_length(text: &str) -> usize {
    let mut escaped = false;
    for (at, character) in text.char_indices() {
        match character {
            _ if escaped => escaped = false,
            '\\' => escaped = true,
            '"' => return at + 1,
            _ => {}
        }
    }
    text.len()
}
