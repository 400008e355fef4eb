//! Practice: an apprentice at a simulated furnace, on the faces of a real call.

mod class;
mod desk;

use std::path::Path;

use uuid::Uuid;

use super::arguments::{PracticeFormat, Practising, Walking};
use super::failure::{Failure, WRONG_USE};
use super::library::{Loaded, as_typed, sound};
use super::look;
use super::rehearse::known_to_furnace;
use super::resume::{is_closed, mended};
use super::session::{events, opened};
use super::walk::{about, all_saved, hand_over, new_id, sessions};
use crate::bench::condition::Condition;
use crate::bench::furnace::Furnace;
use crate::bench::machine::Machine;
use crate::bench::make::Make;
use crate::bench::practice::{Exercise, Level, Mode, Reference, Setup};
use crate::bench::simulated::{Probes, Simulated};
use crate::bench::trials::play;
use crate::face::Left;
use crate::library::Library;
use crate::plain;
use crate::source::{Safe, ascii, safe, wrap};
use crate::store::{SessionId, TakenUp};
use crate::walk::{Call, Known, Opened};
use desk::{Desk, PracticeDesk};

/// Seeds that a person can say across a room.
const SEEDS: u64 = 10_000;

/// Columns that a continued line is indented by.
const INDENT: usize = 4;

/// Walks a practice call and tells what came of it.
pub(super) fn run(how: &Practising) -> Result<u8, Failure> {
    if !how.class.is_empty() {
        return class::run(&how.class, how.tell, how.format.unwrap_or(PracticeFormat::Text));
    }
    if how.format.is_some() {
        return Err(Failure::new(WRONG_USE, "--format is for the practice of a class")
            .help("set sessions side by side with `proofwalk practice --class DIR --format json`"));
    }
    let loaded = sound(how.library.as_deref(), &how.overlays.folders)?;
    let library = &loaded.library;
    let setup = setup(how)?;
    let probes = Probes::of(library);
    let (exercise, reference, tree) = drawn(library, &probes, setup)?;
    let opened = Opened {
        library: loaded.mark(),
        tree: tree.to_owned(),
        technician: how.technician.clone(),
        site: None,
        equipment: None,
        program: env!("CARGO_PKG_VERSION").to_owned(),
        answered_from: Some(setup.mark()),
    };
    let place = how.sessions.sessions.as_deref();
    let folder = sessions(place)?;
    folder.keep_library(&loaded.hash, library.files.as_slice())?;
    let id = new_id(how.clock);
    let journal = folder.create(&id)?;
    let events = exercise.open(library, opened)?;
    let desk = Desk::begin(library, &events, journal, how.clock)?;
    let brief = brief(library, tree, &setup);
    let mut desk = PracticeDesk::new(library, desk, exercise, reference, brief);
    let mut typed = command(&setup);
    let folders = how.library.iter().map(|folder| ("library", folder));
    for (flag, folder) in folders.chain(how.overlays.folders.iter().map(|folder| ("overlay", folder))) {
        typed.push_str(&format!(" --{flag} {}", as_typed(&folder.to_string_lossy())));
    }
    let again = Again {
        typed,
        with: String::new(),
    };
    practise(&mut desk, &id, &again, place, how.plain)
}

/// Takes up a practice call: the furnace is drawn again, and the work that was done on it done again.
pub(super) fn take_up(
    id: &SessionId,
    loaded: &Loaded,
    taken: TakenUp,
    walking: &Walking,
) -> Result<u8, Failure> {
    let library = &loaded.library;
    let events = events(&taken.records)?;
    let opened = opened(&events)?;
    let setup = setup_of(opened)?;
    let probes = Probes::of(library);
    let (mut exercise, reference, tree) = drawn(library, &probes, setup)?;
    if tree != opened.tree {
        return Err(another_furnace(&setup));
    }
    let state = exercise.take_up(library, &events)?;
    if state.closed {
        return Err(is_closed(id));
    }
    let mut desk = Desk::at(library, state, taken.journal, walking.clock);
    if let Some(repair) = taken.repair {
        mended(&mut desk, repair)?;
    }
    let on = exercise.go_on(library, desk.state())?;
    desk.keep_on(&on)?;
    let brief = brief(library, tree, &setup);
    let mut desk = PracticeDesk::new(library, desk, exercise, reference, brief);
    let place = walking.sessions.sessions.as_deref();
    let again = Again {
        typed: command(&setup),
        with: with(loaded),
    };
    practise(&mut desk, id, &again, place, walking.plain)
}

/// How a practice call is begun anew.
struct Again {
    /// What is typed.
    typed: String,
    /// What it is to be typed with, in words, where that is not known to the letter.
    with: String,
}

/// With which library a call is begun anew that was kept beside its session: nobody knows any more in which folder it lay.
fn with(loaded: &Loaded) -> String {
    if loaded.is_built_in() {
        return String::new();
    }
    let Library { name, edition, .. } = &loaded.library;
    let overlays = match loaded.library.overlays.is_empty() {
        true => "",
        false => " and its overlays",
    };
    format!(
        ", with `--library` for {}{overlays}",
        safe(format!("{name} {edition}").trim_end())
    )
}

/// The setup of a practice call; a failure where this program would draw another furnace for it.
pub(super) fn setup_of(opened: &Opened) -> Result<Setup, Failure> {
    let mark = opened.answered_from.as_deref().unwrap_or_default();
    let Some(setup) = Setup::read(mark) else {
        let message = format!("this version knows no such practice: {}", safe(mark));
        return Err(Failure::new(WRONG_USE, message).help("begin another with `proofwalk practice`"));
    };
    match opened.program == env!("CARGO_PKG_VERSION") {
        true => Ok(setup),
        false => Err(another_furnace(&setup)),
    }
}

fn another_furnace(setup: &Setup) -> Failure {
    let message = "this practice was begun with another version of proofwalk, whose furnaces are others";
    Failure::new(WRONG_USE, message).help(format!("begin anew: {}", command(setup)))
}

/// The exercise of a setup, what it is held against, and the tree of its complaint.
fn drawn<'l>(
    library: &'l Library,
    probes: &'l Probes<'l>,
    setup: Setup,
) -> Result<(Exercise<Simulated<'l>>, Reference, &'static str), Failure> {
    known_to_furnace(library, probes)?;
    let build = |make: Make, condition: Condition| Simulated::new(probes, Furnace { make, condition });
    let Some((subject, drawn)) = setup.draw(library, build) else {
        return Err(
            Failure::new(WRONG_USE, "no complaint of this library fits a simulated furnace")
                .help("name its trees as those of the built-in library, or practise with that"),
        );
    };
    let Some(played) = play(library, subject, setup.seed, build)? else {
        return Err(Failure::new(WRONG_USE, "this furnace cannot be drawn again").help("take another seed"));
    };
    let missing: Vec<&str> = probes.missing().collect();
    let reference = Reference::new(library, played, setup.mode, &mut drawn.machine.clone());
    let exercise = Exercise::new(library, setup, drawn.machine, &missing);
    Ok((exercise, reference, drawn.tree))
}

/// Hands a practice call to a face, and tells what came of it.
fn practise<M: Machine + Clone>(
    desk: &mut PracticeDesk<'_, M>,
    id: &SessionId,
    again: &Again,
    place: Option<&Path>,
    plain: bool,
) -> Result<u8, Failure> {
    let left = hand_over(desk, plain)?;
    if left == Left::Closed {
        super::print(&page(desk.known_after(), again))?;
        super::tell(&format!("Closed. The job report: {}", about("report", id, place)));
    } else {
        super::tell(&format!(
            "Practice left. To go on: {}",
            about("resume", id, place)
        ));
        super::tell(&format!(
            "The same furnace from the start{}: {}",
            again.with, again.typed
        ));
    }
    all_saved(desk.desk())?;
    Ok(0)
}

fn setup(how: &Practising) -> Result<Setup, Failure> {
    let level = Level::of(how.level)
        .ok_or_else(|| Failure::new(WRONG_USE, "there is no such level").help("take 1, 2 or 3"))?;
    Ok(Setup {
        // The low half of a fresh UUID v7 is random.
        seed: how.seed.unwrap_or_else(|| Uuid::now_v7().as_u64_pair().1 % SEEDS),
        level,
        mode: match how.guided {
            true => Mode::Guided,
            false => Mode::Free,
        },
    })
}

/// What the apprentice is told before the call.
fn brief(library: &Library, tree: &str, setup: &Setup) -> Vec<Known> {
    let tree = library.trees.find(tree).map(|tree| &library.trees[tree]);
    let complaint = tree.map(|tree| tree.complaint.as_deref().unwrap_or(&tree.title));
    let ask = match setup.mode {
        Mode::Guided => {
            "Guided: the tree asks. Say where the probe goes; the furnace answers when it is where it should be."
        }
        Mode::Free => {
            "Free: take what you need; each costs its minutes. Name the fault, or that nothing is wrong, once what you took \
             proves it; stop, with your reason, where you would hand it on (the help says how)."
        }
    };
    let section = |heading: &str, lines: Vec<Safe>| Known {
        heading: safe(heading),
        lines,
    };
    vec![
        section(
            "Practice: a simulated furnace",
            vec![
                safe(&format!(
                    "Seed {}, level {}: {}",
                    setup.seed,
                    setup.level.number(),
                    setup.level.words()
                )),
                safe(ask),
            ],
        ),
        section("The complaint", vec![safe(complaint.unwrap_or_default())]),
    ]
}

/// The debrief as it is printed.
fn page(sections: &[Known], again: &Again) -> String {
    let look = look::plain_options();
    let mut page = String::new();
    for section in sections {
        page.push_str(&format!("\n{}\n", section.heading.as_str().to_uppercase()));
        for text in &section.lines {
            page.push_str(&lines(text, look));
        }
    }
    // The command in one piece, however long: it is there to be typed again.
    page.push_str(&format!(
        "\nThe same furnace for others{}:\n  {}\n",
        again.with, again.typed
    ));
    page
}

/// A text as it fits, indented.
fn lines(text: &Safe, look: plain::Options<'_>) -> String {
    let text = if look.unicode { text.clone() } else { ascii(text) };
    let lines = wrap(&text, look.width.saturating_sub(INDENT).max(INDENT));
    let indented = lines.iter().enumerate().map(|(number, line)| {
        let indent = if number == 0 { "  " } else { "    " };
        format!("{indent}{line}\n")
    });
    indented.collect()
}

fn command(setup: &Setup) -> String {
    let guided = match setup.mode {
        Mode::Guided => " --guided",
        Mode::Free => "",
    };
    format!(
        "proofwalk practice{guided} --level {} --seed {}",
        setup.level.number(),
        setup.seed
    )
}
