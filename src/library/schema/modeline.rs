//! The line at the top of a file that tells an editor where its schema is.

use super::FileKind;

/// What the line begins with, as editors with a YAML language server read it.
const MARK: &str = "# yaml-language-server:";

/// A file's text with the line at its top that names its schema, where the schemas are in the library's folder `schema/`.
///
/// One that stands among the comments at the top already is put right; nothing else is touched. None where nothing is to
/// be changed, and for a file whose name says no kind. `name` is the file's name inside the library.
pub fn with_modeline(name: &str, text: &str) -> Option<String> {
    let kind = FileKind::of(name)?;
    let up = "../".repeat(name.matches('/').count());
    let line = format!("{MARK} $schema={up}schema/{}.json", kind.name());
    // Some editors put a byte order mark before all else, and it must stay there.
    let body = text.strip_prefix('\u{feff}').unwrap_or(text);
    let start = text.len() - body.len();
    let changed = match standing(body) {
        Some(old) if body[old.clone()] == line => return None,
        Some(old) => [&text[..start + old.start], &line, &body[old.end..]].concat(),
        None => [&text[..start], &line, ending(body), body].concat(),
    };
    Some(changed)
}

/// Where such a line stands among the comments before the first of anything else.
fn standing(text: &str) -> Option<std::ops::Range<usize>> {
    let mut at = 0;
    for whole in text.split_inclusive('\n') {
        let line = whole.trim_end_matches(['\n', '\r']);
        if !line.is_empty() && !line.starts_with('#') {
            return None;
        }
        if line.starts_with(MARK) {
            return Some(at..at + line.len());
        }
        at += whole.len();
    }
    None
}

/// How the file ends its lines.
fn ending(text: &str) -> &'static str {
    match text.split_once('\n') {
        Some((first, _)) if first.ends_with('\r') => "\r\n",
        _ => "\n",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn becomes(name: &str, text: &str, wanted: &str) {
        assert_eq!(with_modeline(name, text).as_deref(), Some(wanted));
        assert_eq!(with_modeline(name, wanted), None, "a second time");
    }

    const TREE: &str = "# yaml-language-server: $schema=schema/tree.json";

    #[test]
    fn the_line_goes_to_the_top_and_nothing_else_is_touched() {
        becomes(
            "no-heat.yaml",
            "# Why.\ntree: no-heat",
            &format!("{TREE}\n# Why.\ntree: no-heat"),
        );
        becomes("no-heat.yaml", "", &format!("{TREE}\n"));
        becomes(
            "no-heat.yaml",
            "\u{feff}a: 1\n",
            &format!("\u{feff}{TREE}\na: 1\n"),
        );
    }

    #[test]
    fn the_path_leads_up_from_a_folder() {
        let (plate, scenario) = (
            with_modeline("registry/plate.yaml", ""),
            with_modeline("scenarios/a/b.yaml", ""),
        );
        assert_eq!(
            plate.unwrap(),
            "# yaml-language-server: $schema=../schema/plate.json\n"
        );
        assert_eq!(
            scenario.unwrap(),
            "# yaml-language-server: $schema=../../schema/scenario.json\n"
        );
    }

    #[test]
    fn the_lines_end_as_the_file_ends_its_own() {
        becomes("a.yaml", "x: 1\r\ny: 2\n", &format!("{TREE}\r\nx: 1\r\ny: 2\n"));
        let wrong = "# yaml-language-server: $schema=tree.json\r\nx: 1\r\n";
        becomes("a.yaml", wrong, &format!("{TREE}\r\nx: 1\r\n"));
    }

    #[test]
    fn one_among_the_comments_at_the_top_is_put_right_where_it_stands() {
        let (before, after) = ("# Why.\n\n", "\n# More.\ntree: a\n");
        let old = "# yaml-language-server: $schema=https://example.invalid/x.json";
        becomes(
            "a.yaml",
            &[before, old, after].concat(),
            &[before, TREE, after].concat(),
        );
    }

    #[test]
    fn one_further_down_is_somebody_elses() {
        let text = "x: |\n  # yaml-language-server: $schema=a.json\n";
        becomes("a.yaml", text, &format!("{TREE}\n{text}"));
    }

    #[test]
    fn a_file_of_no_kind_is_left_alone() {
        assert_eq!(with_modeline("registry/pumps.yaml", "pumps: {}\n"), None);
    }
}
