//! Walking a call: opening it, handing it to a face, and saying how it was left.

use std::io::{self, IsTerminal};
use std::path::Path;

use jiff::Timestamp;
use uuid::Uuid;

use super::arguments::Walking;
use super::desk::Desk;
use super::failure::{FINDINGS, Failure, NOT_SAVED, WRONG_USE};
use super::library::{Loaded, built_in_as, resolved, sound};
use super::look;
use crate::library::{Id, Library, Scenario, Tree, load};
use crate::plain;
use crate::source::{Files, safe};
use crate::store::{self, SessionFolder, SessionId};
use crate::tui::{self, Left};
use crate::walk::{self, Answerer, Call, NotDone, Opened};

/// Opens the folder of sessions.
pub(super) fn sessions(folder: Option<&Path>) -> Result<SessionFolder, Failure> {
    let folder = match folder {
        Some(folder) => folder.to_owned(),
        None => store::default_folder()?,
    };
    Ok(SessionFolder::open(folder)?)
}

/// Opens the folder of sessions for a command that only reads: a folder that was named and is not there is mistyped, and is
/// not made.
pub(super) fn existing_sessions(folder: Option<&Path>) -> Result<SessionFolder, Failure> {
    let is_missing = |path: &&Path| {
        path.symlink_metadata()
            .is_err_and(|error| error.kind() == io::ErrorKind::NotFound)
    };
    match folder.filter(is_missing) {
        Some(path) => {
            let shown = safe(&path.to_string_lossy()).to_string();
            let message = format!("the folder of sessions `{shown}` does not exist");
            Err(Failure::new(WRONG_USE, message).help(
                "check its name, or leave out `--sessions` for the usual folder; `walk` and `practice` make a new one",
            ))
        }
        None => sessions(folder),
    }
}

/// Walks a call that begins with a complaint.
pub(super) fn run(tree: &str, walking: &Walking, answers: Option<&Path>) -> Result<u8, Failure> {
    let mut loaded = sound(walking.library.as_deref(), &walking.overlays.folders)?;
    let id = known_tree(&loaded, walking.library.as_deref(), tree)?;
    if let Some(file) = answers {
        return answered(&mut loaded, tree, walking, file);
    }
    begins_a_call(&loaded.library, id)?;
    let (id, mut desk) = open(&loaded, tree, walking)?;
    face(&id, &mut desk, walking)
}

/// The tree of a name; a failure that says what there is, where there is none.
pub(super) fn known_tree(loaded: &Loaded, folder: Option<&Path>, tree: &str) -> Result<Id<Tree>, Failure> {
    let library = &loaded.library;
    if let Some(id) = library.trees.find(tree) {
        return Ok(id);
    }
    let offered = complaints(library);
    let (which, other) = match folder {
        Some(_) => ("library", ""),
        None => ("built-in library", "; `--library DIR` names another"),
    };
    let failure = Failure::new(WRONG_USE, format!("the {which} has no tree `{}`", safe(tree)));
    let help = match crate::source::nearest(tree, library.trees.names()) {
        Some(meant) => format!("did you mean `{meant}`?"),
        None if offered.is_empty() => "no tree of it has a `complaint`, by which a call can begin".to_owned(),
        None => format!("the complaints are {}{other}", offered.join(", ")),
    };
    Err(failure.help(help))
}

/// The names of the trees that a call may begin with.
fn complaints(library: &Library) -> Vec<&str> {
    let offered = library.trees.iter().filter(|(_, tree)| tree.complaint.is_some());
    offered.map(|(_, tree)| tree.name.as_str()).collect()
}

/// Refuses a tree that is only visited: what it takes for known was never asked. The gate, the tree after work and the dangers
/// stand for themselves.
fn begins_a_call(library: &Library, id: Id<Tree>) -> Result<(), Failure> {
    let tree = &library.trees[id];
    let is_danger = library.dangers.iter().any(|danger| danger.tree == id);
    let stands_by_itself = library.standing_by_themselves().any(|tree| tree == id);
    if tree.complaint.is_some() || is_danger || stands_by_itself {
        return Ok(());
    }
    let message = format!(
        "no call begins with `{}`: it has no `complaint`, so it is only visited",
        tree.name
    );
    let help = match &complaints(library)[..] {
        [] => "no tree of this library has a `complaint`, by which a call can begin".to_owned(),
        offered => format!("the complaints are {}", offered.join(", ")),
    };
    Err(Failure::new(WRONG_USE, message).help(help))
}

/// Opens a session and the call in it. The library is kept beside the sessions first, so that the call can be replayed.
pub(super) fn open<'l>(
    loaded: &'l Loaded,
    tree: &str,
    walking: &Walking,
) -> Result<(SessionId, Desk<'l>), Failure> {
    let folder = sessions(walking.sessions.sessions.as_deref())?;
    folder.keep_library(&loaded.hash, loaded.library.files.as_slice())?;
    let id = new_id(walking.clock);
    let journal = folder.create(&id)?;
    let opened = Opened {
        library: loaded.mark(),
        tree: tree.to_owned(),
        technician: walking.technician.clone(),
        site: walking.site.clone(),
        equipment: walking.equipment.clone(),
        program: env!("CARGO_PKG_VERSION").to_owned(),
        answered_from: None,
    };
    let desk = Desk::open(&loaded.library, opened, journal, walking.clock)?;
    Ok((id, desk))
}

pub(super) fn new_id(clock: Option<Timestamp>) -> SessionId {
    // The last ten bytes of a fresh UUID v7 are random but for its version and variant bits.
    let fresh = Uuid::now_v7();
    let mut random = [0; 10];
    random.copy_from_slice(&fresh.as_bytes()[6..]);
    SessionId::new(clock.unwrap_or_else(Timestamp::now), random)
}

/// Hands a call to the face that fits, and says how it was left.
pub(super) fn face(id: &SessionId, desk: &mut Desk<'_>, walking: &Walking) -> Result<u8, Failure> {
    let equipment = desk
        .state()
        .opened
        .as_ref()
        .and_then(|opened| opened.equipment.clone());
    if let Some(equipment) = equipment {
        // A call is not held up by an archive that cannot be read; `proofwalk history` says what is wrong with it.
        let folder = sessions(walking.sessions.sessions.as_deref())?;
        if let Ok((Some(history), _)) = super::history::read(&folder, &equipment, Some(id)) {
            desk.knows(history.known());
        }
    }
    let left = hand_over(desk, walking.plain)?;
    let (said, command) = match left {
        Left::Closed => ("Closed. The job report:", "report"),
        Left::Quit | Left::HungUp(_) => ("Left open. To go on:", "resume"),
    };
    let folder = walking.sessions.sessions.as_deref();
    super::tell(&format!("{said} {}", about(command, id, folder)));
    all_saved(desk)?;
    Ok(0)
}

/// Hands a call to the screen, or to the line face where that is wanted or nothing can be drawn.
pub(super) fn hand_over(call: &mut dyn Call, plain: bool) -> Result<Left, Failure> {
    let terminal = io::stdin().is_terminal() && io::stdout().is_terminal();
    if terminal && !plain && look::can_draw() {
        return Ok(tui::call(call, look::of_terminal())?);
    }
    let left = plain::call(
        io::stdin().lock(),
        io::stdout().lock(),
        call,
        look::plain_options(),
    );
    match left {
        // Nobody reads any more; what was answered is on disk.
        Err(error) if error.kind() == io::ErrorKind::BrokenPipe => Ok(Left::Quit),
        other => Ok(other?),
    }
}

/// A command about a session, as it is typed.
pub(super) fn about(command: &str, id: &SessionId, folder: Option<&Path>) -> String {
    let place = match folder {
        Some(folder) => format!(" --sessions {}", safe(&folder.to_string_lossy())),
        None => String::new(),
    };
    format!("proofwalk {command} {}{place}", id.as_str())
}

/// A failure where the last answer could not be saved.
pub(super) fn all_saved(desk: &Desk<'_>) -> Result<(), Failure> {
    match desk.is_unsaved() {
        false => Ok(()),
        true => Err(Failure::new(
            NOT_SAVED,
            "the last answer is not saved; every one before it is",
        )),
    }
}

/// Walks a call with a scenario file for answers.
fn answered(loaded: &mut Loaded, tree: &str, walking: &Walking, file: &Path) -> Result<u8, Failure> {
    let scenario = read_scenario(loaded, file)?;
    if loaded.library.trees[scenario.tree].name != tree {
        let named = &loaded.library.trees[scenario.tree].name;
        return Err(Failure::new(
            WRONG_USE,
            format!("the answers are for the tree `{named}`, not `{tree}`"),
        )
        .help(format!("walk `{named}`, or give other answers")));
    }
    let mut without_gate = loaded.library.clone();
    without_gate.gate = None;
    let library = without_gate;
    let opened = Opened {
        library: loaded.mark(),
        tree: tree.to_owned(),
        technician: walking.technician.clone(),
        site: walking.site.clone(),
        equipment: walking.equipment.clone(),
        program: env!("CARGO_PKG_VERSION").to_owned(),
        answered_from: Some(safe(&file.to_string_lossy()).to_string()),
    };
    let folder = sessions(walking.sessions.sessions.as_deref())?;
    folder.keep_library(&loaded.hash, loaded.library.files.as_slice())?;
    let id = new_id(walking.clock);
    let journal = folder.create(&id)?;
    let mut desk = Desk::open(&library, opened, journal, walking.clock)?;
    let mut answerer = Answerer::new(&scenario);
    while !desk.state().closed {
        let Some(command) = answerer.answer(&library, desk.state()) else {
            let asked = walk::wanted_words(&library, desk.state());
            super::print(&format!(
                "DEPARTS  the walk asks for {asked}, and the answers have none\n"
            ))?;
            return Ok(FINDINGS);
        };
        match desk.carry_out(command) {
            Ok(()) => {}
            Err(NotDone::Refused(refusal)) => {
                super::print(&format!("DEPARTS  an answer is refused: {refusal}\n"))?;
                return Ok(FINDINGS);
            }
            Err(NotDone::NotSaved { message, .. }) => {
                return Err(Failure::new(NOT_SAVED, message));
            }
        }
    }
    for entry in &desk.standing().trail {
        let close = if entry.borderline { "  (borderline)" } else { "" };
        super::print(&format!("{}: {}{close}\n", entry.title, entry.answer))?;
    }
    if let Some(ended) = &desk.standing().ended {
        super::print(&format!("{ended}\n"))?;
    }
    super::print(&format!("Session {}\n", id.as_str()))?;
    let departures = walk::departures(&library, &scenario, desk.state());
    for departure in &departures {
        super::print(&format!(
            "DEPARTS  expected: {}; happened: {}\n",
            safe(&departure.expected),
            safe(&departure.happened)
        ))?;
    }
    Ok(if departures.is_empty() { 0 } else { FINDINGS })
}

/// Reads a scenario file as if it stood in the library.
fn read_scenario(loaded: &Loaded, file: &Path) -> Result<Scenario, Failure> {
    let shown = safe(&file.to_string_lossy()).to_string();
    let name = "scenarios/answers-given-on-the-command-line.yaml";
    let read = store::read_alone(file, name)?;
    let files = loaded
        .library
        .files
        .as_slice()
        .iter()
        .filter(|file| !file.name().starts_with("scenarios/"))
        .cloned();
    let files = files.chain([read]).collect();
    let (mut library, problems) = load(Files::new(files));
    let findings = crate::check::run(&library, &problems);
    let errors: Vec<_> = findings
        .into_iter()
        .filter(|finding| finding.level == crate::source::Level::Error)
        .collect();
    if !errors.is_empty() {
        let text = crate::report::findings::text(&library, &errors, None, look::for_messages());
        // Read as part of the library, told by the name that it was given by.
        let text = text.replace(name, &shown);
        return Err(Failure::new(
            WRONG_USE,
            format!("the answers in {shown} do not fit the library\n{text}"),
        ));
    }
    library
        .scenarios
        .pop()
        .ok_or_else(|| Failure::new(WRONG_USE, format!("{shown} holds no scenario")))
}

/// The library that a session was walked with: kept beside it by its hash, or built in under the same one.
pub(super) fn kept(folder: &SessionFolder, opened: &Opened) -> Result<Loaded, Failure> {
    let hash: store::Hash = opened.library.hash.parse().map_err(|_| {
        Failure::new(
            FINDINGS,
            "the session names its library by something that is no hash",
        )
    })?;
    let kept = folder
        .kept_library(&hash)?
        .map(|files| resolved(Files::new(files)));
    kept.or_else(|| built_in_as(&hash)).ok_or_else(|| {
        let name = safe(&opened.library.name);
        let message =
            format!("the library of this session ({name}) is not kept here, and the built-in one is another");
        Failure::new(WRONG_USE, message).help("copy the folder `libraries` from where the session was walked")
    })
}
