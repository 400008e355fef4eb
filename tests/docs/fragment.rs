//! A piece of a file, as the guide shows it: a whole file, or entries that are added to one or changed in one.

use std::fs;
use std::path::Path;

/// A piece of a file, under a first line that says which: `# FILE`, `# FILE, added` or `# FILE, changed`.
pub struct Fragment<'a> {
    file: &'a str,
    how: How,
    text: &'a str,
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum How {
    /// All of a file.
    Whole,
    /// Goes to the end of a file that is there.
    Added,
    /// Each entry takes the place of the one with its key; one with a new key stands behind the entry before it.
    Changed,
}

impl<'a> Fragment<'a> {
    pub fn of(block: &'a str) -> Self {
        let (first, text) = block.split_once('\n').unwrap();
        let first = first
            .strip_prefix("# ")
            .unwrap_or_else(|| panic!("`{first}` does not name a file"));
        let (file, how) = match first.split_once(", ") {
            None => (first, How::Whole),
            Some((file, "added")) => (file, How::Added),
            Some((file, "changed")) => (file, How::Changed),
            Some((_, how)) => panic!("`{how}` is not a way to put a piece into a file"),
        };
        Self { file, how, text }
    }

    /// Writes it into the file it names, below a folder.
    pub fn put_into(&self, folder: &Path) {
        let path = folder.join(self.file);
        let before = fs::read_to_string(&path).ok();
        let after = match (self.how, before) {
            (How::Whole, None) => self.text.to_owned(),
            (How::Whole, Some(_)) => panic!("{} is there already", self.file),
            (How::Added, Some(before)) => format!("{before}{}", self.text),
            (How::Changed, Some(before)) => changed(&before, self.text),
            (_, None) => panic!("{} is not there yet", self.file),
        };
        fs::create_dir_all(path.parent().unwrap()).unwrap();
        fs::write(path, after).unwrap();
    }
}

/// A file in which each entry of a piece takes the place of the one with its key.
fn changed(file: &str, piece: &str) -> String {
    let mut lines: Vec<String> = file.lines().map(str::to_owned).collect();
    let mut behind = None;
    for entry in entries(piece) {
        let key = key(entry[0]).unwrap();
        let stands = lines.iter().position(|line| self::key(line) == Some(key));
        let (from, to) = match (stands, behind) {
            (Some(from), _) => (from, end(&lines, from)),
            (None, Some(behind)) => (behind, behind),
            (None, None) => panic!("there is no `{}` to change in\n{file}", key.trim()),
        };
        behind = Some(from + entry.len());
        lines.splice(from..to, entry.iter().map(|&line| line.to_owned()));
    }
    lines.join("\n") + "\n"
}

/// The entries of a piece, each of one or more lines. All begin in the same column.
fn entries(piece: &str) -> Vec<Vec<&str>> {
    let column = indent(piece);
    let mut entries: Vec<Vec<&str>> = Vec::new();
    for line in piece.lines() {
        match entries.last_mut() {
            Some(entry) if line.is_empty() || indent(line) > column => entry.push(line),
            _ => entries.push(vec![line]),
        }
    }
    entries
}

/// Where the entry that begins on a line ends. The empty lines behind it are not its own.
fn end(lines: &[String], from: usize) -> usize {
    let column = indent(&lines[from]);
    let own = |line: &&String| line.is_empty() || indent(line) > column;
    let own = lines[from + 1..].iter().take_while(own).count();
    let last = lines[from..=from + own].iter().rposition(|line| !line.is_empty());
    from + 1 + last.unwrap_or_default()
}

fn indent(line: &str) -> usize {
    line.len() - line.trim_start_matches(' ').len()
}

/// The key that a line begins with, with what it is indented by.
fn key(line: &str) -> Option<&str> {
    line.split_once(':').map(|(key, _)| key)
}

#[test]
fn entries_take_the_place_of_those_with_their_keys() {
    let file = "tree: a\nsteps:\n  one:\n    do: Wait.\n    go: two\n\n  two: { return: done }\n";
    assert_eq!(
        changed(
            file,
            "  one: { do: Look., go: three }\n  three:\n    do: Sit.\n    go: two\n"
        ),
        "tree: a\nsteps:\n  one: { do: Look., go: three }\n  three:\n    do: Sit.\n    go: two\n\n  two: { return: done }\n"
    );
}
