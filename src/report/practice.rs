//! Practice of a class, set side by side: what each apprentice found at the same furnace, and what it cost.

use std::collections::BTreeMap;

use serde::Serialize;

use super::findings::{COLUMNS, Look, counted};
use crate::audit::statistics::wilson;
use crate::bench::practice::{Mark, Mode, Setup};
use crate::source::{Safe, ascii, safe, wrap};

/// A practice call of somebody.
#[derive(Clone, Debug)]
pub struct Practised {
    /// The session.
    pub session: String,
    /// Who practised, where that was said.
    pub apprentice: Option<String>,
    /// On which furnace.
    pub setup: Setup,
    /// The program and the library that it was drawn and walked with, without which the setup is another furnace.
    pub drawn_with: String,
    /// What came of it; none where it is not finished.
    pub mark: Option<Mark>,
}

/// Fewest furnaces of which a share says something of somebody (a choice of ours: the interval of ten is still half as wide as
/// it can be).
const ENOUGH: u64 = 10;

/// Widest column of names.
const WIDEST: usize = 17;

/// What stands where nothing is known.
const NOT_NAMED: &str = "not named";

/// Each furnace with everybody who practised on it, then each apprentice. Nobody is ranked: both go by name.
pub fn text(practised: &[Practised], look: Look) -> String {
    let mut page = Page {
        look,
        text: String::new(),
    };
    let open = practised.iter().filter(|one| one.mark.is_none()).count();
    let unfinished = match open {
        0 => String::new(),
        open => format!(", {open} of them not finished"),
    };
    let sum = format!("{}{unfinished}", counted(practised.len(), "practice session"));
    page.line(0, &sum);
    let furnaces = furnaces(practised);
    for (setup, tries) in &furnaces {
        page.line(0, "");
        let same = furnaces.iter().filter(|(other, _)| other == setup).count();
        furnace(&mut page, *setup, tries, same > 1);
    }
    page.line(0, "");
    apprentices(&mut page, practised);
    page.line(0, "");
    for line in [
        "proven: named, and what was taken proves it, or nothing was wrong and enough was looked at. not proven, guessed: the right \
         name, with some or nothing of its proof. stopped, handed on: nothing condemned, and no diagnosis. missed: left as if nothing \
         were wrong. wrong: something good was blamed.",
        "for nothing: good parts condemned. dangers, open: overlooked, and not put back. places: probes put elsewhere than asked. \
         guesses: other faults named before the last, unproven.",
        "Only the first try at a furnace counts for an apprentice: after it the fault is known. Nobody is ranked.",
    ] {
        page.line(0, line);
    }
    page.text
}

/// For another program: each session, in the order of furnaces and apprentices.
pub fn json(practised: &[Practised]) -> String {
    let all: Vec<Session> = (furnaces(practised).iter())
        .flat_map(|(_, tries)| tries)
        .map(session)
        .collect();
    // Texts and numbers in a struct: there is nothing here that JSON cannot say.
    serde_json::to_string_pretty(&all).unwrap_or_default() + "\n"
}

#[derive(Serialize)]
struct Session {
    session: String,
    apprentice: Option<String>,
    seed: u64,
    level: u8,
    guided: bool,
    drawn_with: String,
    /// Counted from 1.
    attempt: usize,
    came: Option<&'static str>,
    solved: Option<bool>,
    minutes: Option<f64>,
    tree_minutes: Option<f64>,
    misplaced: Option<usize>,
    condemned_for_nothing: Option<String>,
    dangers_overlooked: Option<usize>,
    left_open: Option<usize>,
    named_before: Option<usize>,
}

fn session(tried: &Tried<'_>) -> Session {
    let Practised {
        session,
        apprentice,
        setup,
        drawn_with,
        mark,
    } = tried.practised;
    let mark = mark.as_ref();
    Session {
        session: safe(session).to_string(),
        apprentice: apprentice.as_ref().map(|name| safe(name).to_string()),
        seed: setup.seed,
        level: setup.level.number(),
        guided: setup.mode == Mode::Guided,
        drawn_with: safe(drawn_with).to_string(),
        attempt: tried.attempt,
        came: mark.map(|mark| mark.came.words()),
        solved: mark.map(|mark| mark.came.is_solved()),
        minutes: mark.map(|mark| mark.minutes),
        tree_minutes: mark.map(|mark| mark.tree_minutes),
        misplaced: mark.map(|mark| mark.misplaced),
        condemned_for_nothing: mark.map(|mark| safe(&mark.condemned).to_string()),
        dangers_overlooked: mark.map(|mark| mark.overlooked),
        left_open: mark.map(|mark| mark.left_open),
        named_before: mark.map(|mark| mark.named_before),
    }
}

/// A practice call, and which of the same apprentice's at the same furnace it is, from 1.
struct Tried<'a> {
    practised: &'a Practised,
    attempt: usize,
}

/// Each furnace with its calls, by apprentice and the order in which they were opened.
fn furnaces(practised: &[Practised]) -> Vec<(Setup, Vec<Tried<'_>>)> {
    let key = |one: &Practised| {
        let Setup { level, seed, mode } = one.setup;
        (level.number(), seed, mode == Mode::Guided, one.drawn_with.clone())
    };
    let mut by_setup: BTreeMap<_, (Setup, Vec<&Practised>)> = BTreeMap::new();
    for one in practised {
        let entry = by_setup.entry(key(one));
        entry.or_insert_with(|| (one.setup, Vec::new())).1.push(one);
    }
    let furnaces = by_setup.into_values().map(|(setup, mut all)| {
        // The ids of sessions grow with time.
        all.sort_by_key(|one| (one.apprentice.clone(), one.session.clone()));
        let mut tries: Vec<Tried<'_>> = Vec::new();
        for practised in all {
            // Of those who gave no name nobody knows whether they are one.
            let before = tries.last().filter(|last| {
                practised.apprentice.is_some() && last.practised.apprentice == practised.apprentice
            });
            let attempt = before.map_or(1, |last| last.attempt + 1);
            tries.push(Tried { practised, attempt });
        }
        (setup, tries)
    });
    furnaces.collect()
}

fn name(apprentice: Option<&str>) -> String {
    safe(apprentice.unwrap_or(NOT_NAMED))
        .cut(WIDEST)
        .as_str()
        .to_owned()
}

/// A furnace; where several go by the same setup, with what it was drawn with.
fn furnace(page: &mut Page, setup: Setup, tries: &[Tried<'_>], is_one_of_several: bool) {
    let tree = tries.iter().find_map(|tried| tried.practised.mark.as_ref());
    let tree = tree.map_or_else(String::new, |mark| {
        format!(": the tree takes {} min", mark.tree_minutes)
    });
    let mode = match setup.mode {
        Mode::Guided => "guided",
        Mode::Free => "free",
    };
    page.line(
        0,
        &format!(
            "SEED {}, LEVEL {}, {mode}{tree}",
            setup.seed,
            setup.level.number()
        ),
    );
    if let Some(tried) = tries.first().filter(|_| is_one_of_several) {
        page.line(2, &format!("drawn with {}", tried.practised.drawn_with));
    }
    page.row(&[
        "apprentice",
        "found",
        "min",
        "for nothing",
        "dangers",
        "open",
        "places",
    ]);
    for tried in tries {
        let who = name(tried.practised.apprentice.as_deref());
        let found = |short: &str| match tried.attempt {
            1 => short.to_owned(),
            again => format!("{short}, try {again}"),
        };
        let Some(mark) = &tried.practised.mark else {
            page.row(&[&who, &found("not finished"), "-", "-", "-", "-", "-"]);
            continue;
        };
        page.row(&[
            &who,
            &found(mark.came.short()),
            &mark.minutes.to_string(),
            if mark.has_condemned() { "yes" } else { "-" },
            &count(mark.overlooked),
            &count(mark.left_open),
            &count(mark.misplaced),
        ]);
        if mark.has_condemned() {
            page.line(4, &format!("condemned for nothing: {}", mark.condemned));
        }
        if mark.named_before > 0 {
            page.line(
                4,
                &format!("other faults named before, unproven: {}", mark.named_before),
            );
        }
    }
    let first: Vec<&Mark> = tries
        .iter()
        .filter(|tried| tried.attempt == 1)
        .filter_map(|tried| tried.practised.mark.as_ref())
        .collect();
    let solved = first.iter().filter(|mark| mark.came.is_solved()).count();
    if first.is_empty() {
        return;
    }
    page.line(
        2,
        &format!("proven by {solved} of {} at the first try", first.len()),
    );
}

/// A count in a column: nothing is a dash, so that what is there is seen.
fn count(count: usize) -> String {
    match count {
        0 => "-".to_owned(),
        count => count.to_string(),
    }
}

/// What an apprentice's first tries came to.
#[derive(Default)]
struct Sum {
    furnaces: u64,
    solved: u64,
    minutes: f64,
    tree_minutes: f64,
    condemned: usize,
    overlooked: usize,
    left_open: usize,
    named_before: usize,
    unfinished: usize,
}

fn apprentices(page: &mut Page, practised: &[Practised]) {
    let mut sums: BTreeMap<String, Sum> = BTreeMap::new();
    for (_, tries) in furnaces(practised) {
        for tried in tries.iter().filter(|tried| tried.attempt == 1) {
            let Some(who) = &tried.practised.apprentice else {
                continue;
            };
            let sum = sums.entry(who.clone()).or_default();
            let Some(mark) = &tried.practised.mark else {
                sum.unfinished += 1;
                continue;
            };
            sum.furnaces += 1;
            sum.solved += u64::from(mark.came.is_solved());
            sum.minutes += mark.minutes;
            sum.tree_minutes += mark.tree_minutes;
            sum.condemned += usize::from(mark.has_condemned());
            sum.overlooked += mark.overlooked;
            sum.left_open += mark.left_open;
            sum.named_before += mark.named_before;
        }
    }
    page.line(0, "EACH APPRENTICE, first tries");
    if sums.is_empty() {
        page.line(2, "Nobody gave a name with --technician");
        return;
    }
    page.row(&[
        "apprentice",
        "proven",
        "min, tree",
        "for nothing",
        "dangers",
        "open",
        "guesses",
    ]);
    for (who, sum) in &sums {
        page.row(&[
            &name(Some(who)),
            &format!("{} of {}", sum.solved, sum.furnaces),
            &format!("{}, {}", sum.minutes.round(), sum.tree_minutes.round()),
            &count(sum.condemned),
            &count(sum.overlooked),
            &count(sum.left_open),
            &count(sum.named_before),
        ]);
        if sum.unfinished > 0 {
            let left = match sum.unfinished {
                1 => "1 first try".to_owned(),
                many => format!("{many} first tries"),
            };
            page.line(4, &format!("{left} not finished, and not counted"));
        }
        if sum.furnaces > 0 {
            page.line(4, &share(sum));
        }
    }
}

/// What the furnaces of an apprentice say of those to come.
fn share(sum: &Sum) -> String {
    if sum.furnaces < ENOUGH {
        return format!("{}: too few to say", counted(sum.furnaces as usize, "furnace"));
    }
    let (low, high) = wilson(sum.solved, sum.furnaces);
    format!(
        "proves {:.0} to {:.0} % of such furnaces",
        100.0 * low,
        100.0 * high
    )
}

struct Page {
    look: Look,
    text: String,
}

/// Columns of a row: the name, what was found, then numbers.
const ROW: [usize; 7] = [WIDEST + 1, 16, 10, 13, 9, 6, 8];

impl Page {
    fn shown(&self, text: &str) -> Safe {
        let text = safe(text);
        if self.look.ascii { ascii(&text) } else { text }
    }

    fn line(&mut self, indent: usize, text: &str) {
        let lines = wrap(&self.shown(text), COLUMNS - indent);
        if lines.is_empty() {
            self.text.push('\n');
        }
        for line in lines {
            self.text.push_str(format!("{:indent$}{line}\n", "").as_str());
        }
    }

    fn row(&mut self, cells: &[&str; 7]) {
        let mut row = String::new();
        for (at, (cell, wide)) in cells.iter().zip(ROW).enumerate() {
            let cell = self.shown(cell);
            let gap = " ".repeat(wide.saturating_sub(cell.width()));
            match at {
                0 | 1 => row.push_str(&format!("{cell}{gap}")),
                _ => row.push_str(&format!("{gap}{cell}")),
            }
        }
        self.text.push_str(row.trim_end());
        self.text.push('\n');
    }
}
