//! Practice of a class, set side by side: what each apprentice found at the same furnace, and what it cost.

mod apprentices;
mod json;
mod page;

use std::collections::{BTreeMap, BTreeSet};

use super::findings::{Look, counted};
use crate::bench::practice::{Mark, Mode, Setup};
use page::{Page, count, name};

pub use json::json;

/// What was found of a class.
#[derive(Clone, Debug, Default)]
pub struct Class {
    /// The practice calls.
    pub practised: Vec<Practised>,
    /// How many other sessions lay among them: calls at a house.
    pub calls: usize,
    /// How many practice calls of another version, of whose furnaces this one knows nothing.
    pub foreign: usize,
    /// What was wrong is told also while somebody has not finished.
    pub tells: bool,
}

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
    /// What came of it.
    pub end: End,
}

/// What came of a practice call.
#[derive(Clone, Debug, PartialEq)]
pub enum End {
    /// It is not closed yet.
    NotFinished,
    /// It is closed, by a version that wrote down otherwise what came of it.
    NotKnown,
    /// This.
    Came(Mark),
}

impl End {
    /// What came of it, where that is known.
    pub fn mark(&self) -> Option<&Mark> {
        match self {
            Self::Came(mark) => Some(mark),
            Self::NotFinished | Self::NotKnown => None,
        }
    }
}

/// Each furnace with everybody who practised on it, then each apprentice. Nobody is ranked: both go by name.
pub fn text(class: &Class, look: Look) -> String {
    let mut page = Page {
        look,
        text: String::new(),
    };
    page.line(0, &summary(class));
    for line in left_out(class) {
        page.line(0, &line);
    }
    if class.practised.is_empty() {
        page.line(
            0,
            "`proofwalk practice --seed N --technician NAME --sessions DIR` makes one in the folder DIR.",
        );
        return page.text;
    }
    let furnaces = furnaces(class);
    for (setup, tries) in &furnaces {
        page.line(0, "");
        let same = furnaces.iter().filter(|(other, _)| other == setup).count();
        furnace(&mut page, *setup, tries, same > 1);
    }
    page.line(0, "");
    apprentices::write(&mut page, class);
    page.line(0, "");
    for line in MEANINGS {
        page.line(0, line);
    }
    if class.practised.iter().any(|one| one.end == End::NotKnown) {
        page.line(0, NOT_KNOWN);
    }
    page.text
}

/// What else lay among them, a line each.
pub fn left_out(class: &Class) -> Vec<String> {
    let kinds = [
        (
            class.foreign,
            "practice of another version of proofwalk, whose furnaces are others",
        ),
        (class.calls, "calls at a house, no practice"),
    ];
    let kinds = kinds.into_iter().filter(|(count, _)| *count > 0);
    kinds
        .map(|(count, what)| format!("Left out ({what}): {}", counted(count, "session")))
        .collect()
}

/// What the words of the page mean.
const MEANINGS: [&str; 3] = [
    "proven: named, and what was taken proves it, or nothing was wrong and enough was looked at. not proven, guessed: the right \
     name, with some or nothing of its proof. stopped, handed on: nothing condemned, and no diagnosis. missed: left as if nothing \
     were wrong. wrong: something good was blamed.",
    "min, tree: minutes it took, and those of the tree's own way. for nothing: good parts condemned. dangers, open: overlooked, \
     and not put back. places: probes put elsewhere than asked. guesses: other faults named before the last, unproven.",
    "Only the first try at a furnace counts for an apprentice, guided or free: after it the fault is known. Nobody is ranked.",
];

/// Why a closed call has no result.
const NOT_KNOWN: &str = "not known: closed by an older version of proofwalk, which wrote down otherwise what came of it. \
                         `proofwalk report SESSION` still tells it.";

/// `6 practice sessions, 2 of them not finished`.
fn summary(class: &Class) -> String {
    let of = |end: End| class.practised.iter().filter(|one| one.end == end).count();
    let mut summary = counted(class.practised.len(), "practice session");
    for (count, what) in [
        (of(End::NotFinished), "not finished"),
        (of(End::NotKnown), "not known"),
    ] {
        match count {
            0 => {}
            1 if class.practised.len() == 1 => summary.push_str(&format!(", {what}")),
            count => summary.push_str(&format!(", {count} of them {what}")),
        }
    }
    summary
}

/// A practice call, and which of the same apprentice's at the same furnace it is, from 1.
struct Tried<'a> {
    practised: &'a Practised,
    attempt: usize,
    /// What was wrong is not told, since somebody is still at the same furnace.
    is_held_back: bool,
}

/// What a furnace is drawn from; how it is practised changes nothing of it.
fn drawn_from(one: &Practised) -> (u8, u64, &str) {
    (one.setup.level.number(), one.setup.seed, &one.drawn_with)
}

/// Each furnace, guided or free, with its calls by apprentice and the order in which they were opened.
fn furnaces(class: &Class) -> Vec<(Setup, Vec<Tried<'_>>)> {
    let mut all: Vec<&Practised> = class.practised.iter().collect();
    // The ids of sessions grow with time.
    all.sort_by(|one, other| one.session.cmp(&other.session));
    let open = all.iter().filter(|one| one.end == End::NotFinished);
    let open: BTreeSet<_> = open.map(|one| drawn_from(one)).collect();
    let mut tried: BTreeMap<_, usize> = BTreeMap::new();
    let mut by_setup: BTreeMap<_, (Setup, Vec<Tried<'_>>)> = BTreeMap::new();
    for practised in all {
        let furnace = drawn_from(practised);
        // Of those who gave no name nobody knows whether they are one.
        let attempt = practised.apprentice.as_deref().map_or(1, |apprentice| {
            let attempt = tried.entry((furnace, apprentice)).or_default();
            *attempt += 1;
            *attempt
        });
        let (level, seed, drawn_with) = furnace;
        let key = (level, seed, practised.setup.mode == Mode::Guided, drawn_with);
        let (_, tries) = by_setup
            .entry(key)
            .or_insert_with(|| (practised.setup, Vec::new()));
        tries.push(Tried {
            practised,
            attempt,
            is_held_back: !class.tells && open.contains(&furnace),
        });
    }
    let furnaces = by_setup.into_values().map(|(setup, mut tries)| {
        tries.sort_by_key(|tried| &tried.practised.apprentice);
        (setup, tries)
    });
    furnaces.collect()
}

/// What the columns of a furnace's rows are called.
const HEADS: [&str; 7] = [
    "apprentice",
    "found",
    "min",
    "for nothing",
    "dangers",
    "open",
    "places",
];

/// A furnace; where several go by the same setup, with what it was drawn with.
fn furnace(page: &mut Page, setup: Setup, tries: &[Tried<'_>], is_one_of_several: bool) {
    let known = tries.iter().find_map(|tried| tried.practised.end.mark());
    let tree = known.map_or_else(String::new, |mark| {
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
    // Whoever is still at it may read this page.
    let is_held_back = tries.iter().any(|tried| tried.is_held_back);
    if let Some(mark) = known {
        let was = if is_held_back {
            "told once all have finished; `--tell` tells it now"
        } else {
            &mark.truth
        };
        page.line(2, &format!("what was wrong: {was}"));
    }
    page.head(&HEADS);
    for tried in tries {
        let who = name(tried.practised.apprentice.as_deref());
        let found = |short: &str| match tried.attempt {
            1 => short.to_owned(),
            again => format!("{short}, try {again}"),
        };
        let mark = match &tried.practised.end {
            End::Came(mark) => mark,
            End::NotFinished => {
                page.row(&HEADS, &[&who, &found("not finished"), "-", "-", "-", "-", "-"]);
                continue;
            }
            End::NotKnown => {
                page.row(&HEADS, &[&who, &found("not known"), "-", "-", "-", "-", "-"]);
                continue;
            }
        };
        page.row(
            &HEADS,
            &[
                &who,
                &found(mark.came.short()),
                &mark.minutes.to_string(),
                if mark.has_condemned() { "yes" } else { "-" },
                &count(mark.overlooked),
                &count(mark.left_open),
                &count(mark.misplaced),
            ],
        );
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
        .filter_map(|tried| tried.practised.end.mark())
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
