//! What came of a library's scenarios, for a person and for another program.

pub mod cost;
mod coverage;
mod departure;
mod explained;
mod json;
mod table;
pub mod trials;
mod way;

use super::findings::{Look, counted};
use crate::library::{Datum, Library};
use crate::source::{Safe, ascii, safe, wrap};
use crate::walk::{Rehearsal, inputs_of};

pub use json::json;

/// How many scenarios that departed are shown with their walk; of more, the first line.
const SHOWN: usize = 10;

/// How much of what no scenario takes is listed.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Listed {
    /// Nothing, nor how much was walked: where only some of the scenarios were.
    Nothing,
    /// A few of each tree.
    #[default]
    Few,
    /// All of it.
    All,
}

/// For a person: how much was walked, then every scenario that departed, with the walk as it went, and at the end a count
/// that names the library as it is `called`, where it is.
pub fn text(rehearsal: &Rehearsal<'_>, listed: Listed, called: Option<&Safe>, look: Look) -> String {
    let mut page = Page {
        look,
        text: String::new(),
    };
    if listed != Listed::Nothing {
        coverage::write(&mut page, rehearsal, listed);
    }
    let library = rehearsal.library;
    for idle in &rehearsal.idle {
        let place = library.files.place(idle.at);
        let words = idle_words(library, idle.what);
        page.line(
            0,
            &format!("{}:{}:{}: note: {words}", place.file, place.line, place.column),
        );
    }
    if !rehearsal.idle.is_empty() {
        page.blank();
    }
    for (scenario, run) in rehearsal.failed.iter().take(SHOWN) {
        departure::write(&mut page, library, scenario, run);
    }
    for (scenario, run) in rehearsal.failed.iter().skip(SHOWN) {
        departure::write_short(&mut page, library, scenario, run);
    }
    if rehearsal.failed.len() > SHOWN {
        page.line(0, "`--only WORD` shows one of them in full.");
        page.blank();
    }
    match called {
        Some(called) => page.sum(called, &summary(rehearsal)),
        None => page.line(0, &summary(rehearsal)),
    }
    page.text
}

/// Why an answer is idle, and what to give instead of one that is worked out.
fn idle_words(library: &Library, datum: Datum) -> String {
    let inputs = inputs_of(library, datum);
    let names: Vec<String> = (inputs.iter())
        .map(|input| format!("`{}`", library.name_of(*input)))
        .collect();
    let name = library.name_of(datum);
    match names.is_empty() {
        true => format!("`{name}` is never asked for"),
        false => format!(
            "`{name}` is never asked for: it is worked out, so give {} instead",
            names.join(" and ")
        ),
    }
}

/// `12 scenarios, 11 as expected, 1 not`.
pub fn summary(rehearsal: &Rehearsal<'_>) -> String {
    let failed = rehearsal.failed.len();
    let held = rehearsal.walked - failed;
    let walked = counted(rehearsal.walked, "scenario");
    format!("{walked}, {held} as expected, {failed} not")
}

/// Lines that fit, safe to show.
struct Page {
    look: Look,
    text: String,
}

impl Page {
    fn columns(&self) -> usize {
        self.look.columns()
    }

    /// A line; what does not fit goes on below, four columns further in.
    fn line(&mut self, indent: usize, text: &str) {
        self.hanging(indent, 4, text);
    }

    /// A line; what does not fit goes on below, so many columns further in.
    fn hanging(&mut self, indent: usize, further: usize, text: &str) {
        let text = self.shown(text);
        let Some(first) = wrap(&text, self.columns() - indent).into_iter().next() else {
            return;
        };
        self.text.push_str(&format!("{:indent$}{first}\n", ""));
        let rest = text.as_str()[first.as_str().len()..].trim_start();
        if rest.is_empty() {
            return;
        }
        let indent = indent + further;
        for line in wrap(&safe(rest), self.columns() - indent) {
            self.text.push_str(&format!("{:indent$}{line}\n", ""));
        }
    }

    /// What it all comes to, behind what the library is called: a folder's name in one piece, however long it is.
    fn sum(&mut self, called: &Safe, words: &str) {
        let called = format!("{}:", self.shown(called.as_str()));
        let whole = format!("{called} {words}");
        if safe(&whole).width() <= self.columns() {
            return self.text.push_str(&format!("{whole}\n"));
        }
        match called.split(' ').all(|word| word.len() <= self.columns()) {
            true => self.hanging(0, 2, &called),
            false => self.text.push_str(&format!("{called}\n")),
        }
        self.hanging(2, 0, words);
    }

    fn blank(&mut self) {
        self.text.push('\n');
    }

    fn shown(&self, text: &str) -> Safe {
        let text = safe(text);
        match self.look.ascii {
            true => ascii(&text),
            false => text,
        }
    }
}
