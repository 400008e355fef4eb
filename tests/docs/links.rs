//! Every link of a page leads somewhere: to a file of the project, and to a heading in it.

use std::path::Path;

use super::kept::page;

const PAGES: [&str; 8] = [
    "README.md",
    "DEVELOPERS.md",
    "docs/export.md",
    "docs/format.md",
    "docs/guide.md",
    "docs/keys.md",
    "docs/rules.md",
    "docs/sessions.md",
];

#[test]
fn every_link_leads_somewhere() {
    let mut links = 0;
    for name in PAGES {
        for link in page(name).split("](").skip(1) {
            let (link, _) = link.split_once(')').unwrap();
            let (file, heading) = link.split_once('#').unwrap_or((link, ""));
            let to = match file {
                "" => name.to_owned(),
                file => beside(name, file),
            };
            let text = page(&to);
            assert!(!text.is_empty(), "{name}: there is no {link}");
            assert!(
                heading.is_empty() || headings(&text).any(|found| found == heading),
                "{name}: {to} has no heading {heading}"
            );
            links += 1;
        }
    }
    assert!(links > 30, "only {links} links were read");
}

/// A file as a page names it, from the root of the project.
fn beside(page: &str, file: &str) -> String {
    let folder = Path::new(page).parent().unwrap();
    match file.strip_prefix("../") {
        Some(file) => file.to_owned(),
        None => folder.join(file).to_str().unwrap().to_owned(),
    }
}

/// The headings of a page as links name them: small letters, hyphens for spaces, nothing else but digits and underscores.
fn headings(page: &str) -> impl Iterator<Item = String> {
    let headings = page.lines().filter(|line| line.starts_with('#'));
    headings.map(|line| {
        let kept = |letter: &char| letter.is_alphanumeric() || " -_".contains(*letter);
        let words: String = line.trim_start_matches('#').trim().chars().filter(kept).collect();
        words.to_lowercase().replace(' ', "-")
    })
}
