//! The first screen: complaints on offer, calls not finished, the danger keys.

use std::collections::BTreeSet;

use super::arguments::Walking;
use super::failure::{Failure, WRONG_USE};
use super::library::{load, sound};
use super::resume::{is_open, of};
use super::sessions::about;
use super::walk::sessions;
use super::{look, resume, walk};
use crate::library::{Id, Kind, Library, Named, Remedy, Status, Step, Tree};
use crate::source::safe;
use crate::store::Listed;
use crate::tui::{self, Home, HomeChoice, HomeLine};
use crate::walk::status_words;

/// What a fault of a part counts that stands in a complaint's own tree.
const NEAREST: u64 = 1 << 32;

/// Shows the first screen and goes where it leads.
pub(super) fn run(walking: &Walking) -> Result<u8, Failure> {
    if super::is_interactive() && !walking.plain && !look::can_draw() {
        return Err(
            Failure::new(WRONG_USE, "TERM says that this terminal cannot draw a screen").help(format!(
                "set TERM to what it is, or walk a call with `{}`",
                plain_walk(walking)
            )),
        );
    }
    if !super::is_interactive() || walking.plain {
        return Err(
            Failure::new(WRONG_USE, "without a terminal there is no first screen").help(format!(
                "walk a call with `{}`; `proofwalk --help` lists the commands",
                plain_walk(walking)
            )),
        );
    }
    let loaded = sound(walking.library.as_deref(), &walking.overlays.folders)?;
    let library = &loaded.library;
    let folder = sessions(walking.sessions.sessions.as_deref())?;
    let mut open: Vec<Listed> = folder.list()?.into_iter().filter(is_open).collect();
    open.retain(|listed| walking.technician.is_none() || of(listed) == walking.technician);
    open.reverse();
    let complaints = complaints(library);
    let home = Home {
        title: safe(&library.title),
        overlays: (library.overlays.iter())
            .map(|overlay| safe(&overlay.titled()))
            .collect(),
        standing_cautions: (library.standing_cautions.iter())
            .map(|caution| safe(&library.cautions[*caution].text))
            .collect(),
        complaints: (complaints.iter())
            .map(|(_, tree)| HomeLine {
                label: safe(tree.complaint.as_deref().unwrap_or(&tree.title)),
                note: (tree.status != Status::Approved).then(|| safe(status_words(tree.status))),
            })
            .collect(),
        unfinished: (open.iter())
            .map(|listed| HomeLine {
                label: safe(&about(listed).unwrap_or_default()),
                note: Some(safe(listed.id.as_str())),
            })
            .collect(),
        dangers: library.dangers.iter().map(|danger| safe(&danger.label)).collect(),
    };
    let tree = match tui::home(&home, look::of_terminal())? {
        HomeChoice::Quit => return Ok(0),
        HomeChoice::Resume(index) => {
            let id = open.get(index).map(|listed| listed.id.as_str().to_owned());
            return resume::run(id.as_deref(), walking);
        }
        HomeChoice::Walk(index) => complaints.get(index).map(|(_, tree)| tree.name.clone()),
        HomeChoice::Danger(index) => library
            .dangers
            .get(index)
            .map(|danger| library.trees[danger.tree].name.clone()),
    };
    let Some(tree) = tree else {
        return Ok(0);
    };
    let (id, mut desk) = walk::open(&loaded, &tree, walking)?;
    walk::face(&id, &mut desk, walking)
}

/// The trees that a call can begin with, the widest first: where a call begins of which nothing more is known. Rounds,
/// which note what they find and go on, come after those that look for what is wrong.
fn complaints(library: &Library) -> Vec<(Id<Tree>, &Named<Tree>)> {
    let mut complaints: Vec<_> = (library.trees.iter())
        .filter(|(_, tree)| tree.complaint.is_some())
        .collect();
    complaints.sort_by_cached_key(|(id, _)| {
        let below = trees_below(library, *id);
        let widest = (parts_near(library, &below), below.len());
        (is_round(library, *id), std::cmp::Reverse(widest))
    });
    complaints
}

/// The command that walks a call of the library in lines.
fn plain_walk(walking: &Walking) -> String {
    let (library, overlays) = (&walking.library, &walking.overlays.folders);
    let loaded = load(library.as_deref(), overlays).ok();
    // What cannot be read is said where it is walked.
    let tree =
        (loaded.as_ref()).and_then(|loaded| complaints(&loaded.library).first().map(|(_, tree)| &tree.name));
    let mut command = format!("proofwalk walk {}", tree.map_or("TREE", String::as_str));
    let folders = library.iter().map(|folder| ("library", folder));
    for (option, folder) in folders.chain(overlays.iter().map(|folder| ("overlay", folder))) {
        command.push_str(&format!(" --{option} {}", safe(&folder.to_string_lossy())));
    }
    command + " --plain"
}

/// Whether a tree notes what the trees it visits find, and goes on.
fn is_round(library: &Library, id: Id<Tree>) -> bool {
    let steps = &library.steps[library.trees[id].steps.clone()];
    let goes_on = |step: &Step| {
        matches!(
            &step.kind,
            Kind::Visit {
                on_verdict: Some(_),
                ..
            }
        )
    };
    steps.iter().any(goes_on)
}

/// How many faults of parts trees may end in, one counted half as much for each visit that it is farther away: what is behind a
/// complaint, not what some way through other trees may come to as well.
fn parts_near(library: &Library, trees: &[(Id<Tree>, u32)]) -> u64 {
    let mut seen = BTreeSet::new();
    let mut sum = 0;
    for (tree, visits) in trees {
        for step in &library.steps[library.trees[*tree].steps.clone()] {
            if let Kind::Verdict { fault, .. } = step.kind
                && matches!(library.faults[fault].remedy, Remedy::Replace(_))
                && seen.insert(fault)
            {
                sum += NEAREST.checked_shr(*visits).unwrap_or(0);
            }
        }
    }
    sum
}

/// The trees that a tree may lead into, itself among them, each with the fewest visits on the way there: the nearest first.
fn trees_below(library: &Library, id: Id<Tree>) -> Vec<(Id<Tree>, u32)> {
    let mut seen = vec![(id, 0)];
    let mut at = 0;
    while let Some((tree, visits)) = seen.get(at).copied() {
        at += 1;
        for step in &library.steps[library.trees[tree].steps.clone()] {
            if let Kind::Visit { tree, .. } = step.kind
                && seen.iter().all(|(other, _)| *other != tree)
            {
                seen.push((tree, visits + 1));
            }
        }
    }
    seen
}
