//! Practice: an apprentice at a simulated furnace, on the faces of a real call.

mod desk;

use uuid::Uuid;

use super::arguments::Practising;
use super::failure::{Failure, WRONG_USE};
use super::library::sound;
use super::look;
use super::rehearse::known_to_furnace;
use super::walk::{about, all_saved, hand_over, new_id, sessions};
use crate::bench::condition::Condition;
use crate::bench::furnace::Furnace;
use crate::bench::make::Make;
use crate::bench::practice::{Exercise, Level, Mode, Reference, Setup};
use crate::bench::simulated::{Probes, Simulated};
use crate::bench::trials::play;
use crate::face::Left;
use crate::library::Library;
use crate::source::{Safe, ascii, safe, wrap};
use crate::walk::{Known, Opened};
use desk::{Desk, PracticeDesk};

/// Seeds that a person can say across a room.
const SEEDS: u64 = 10_000;

/// Columns that a continued line is indented by.
const INDENT: usize = 4;

/// Walks a practice call and tells what came of it.
pub(super) fn run(how: &Practising) -> Result<u8, Failure> {
    let loaded = sound(how.library.as_deref(), &how.overlays.folders)?;
    let library = &loaded.library;
    let probes = Probes::of(library);
    known_to_furnace(library, &probes)?;
    let setup = setup(how)?;
    let build = |make: Make, condition: Condition| Simulated::new(&probes, Furnace { make, condition });
    let Some((subject, drawn)) = setup.draw(library, build) else {
        return Err(
            Failure::new(WRONG_USE, "no complaint of this library fits a simulated furnace")
                .help("name its trees as those of the built-in library, or practise with that"),
        );
    };
    let played = play(library, subject, setup.seed, build)?;
    let Some(played) = played else {
        return Err(Failure::new(WRONG_USE, "this furnace cannot be drawn again").help("take another seed"));
    };
    let opened = Opened {
        library: loaded.mark(),
        tree: drawn.tree.to_owned(),
        technician: how.technician.clone(),
        site: None,
        equipment: None,
        program: env!("CARGO_PKG_VERSION").to_owned(),
        answered_from: Some(setup.mark()),
    };
    let folder = sessions(how.sessions.sessions.as_deref())?;
    folder.keep_library(&loaded.hash, library.files.as_slice())?;
    let id = new_id(how.clock);
    let journal = folder.create(&id)?;
    let brief = brief(library, drawn.tree, &setup);
    let missing: Vec<&str> = probes.missing().collect();
    let exercise = Exercise::new(library, setup, drawn.machine, &missing);
    let events = exercise.open(library, opened)?;
    let desk = Desk::begin(library, &events, journal, how.clock)?;
    let mut desk = PracticeDesk::new(library, desk, exercise, Reference { played }, brief);
    let left = hand_over(&mut desk, how.plain)?;
    let folder = how.sessions.sessions.as_deref();
    if left == Left::Closed {
        super::print(&page(&desk.known_after(), &setup))?;
        super::tell(&format!(
            "Closed. The job report: {}",
            about("report", &id, folder)
        ));
    } else {
        super::tell(&format!(
            "Practice left; it is not taken up again. The same furnace: {}",
            command(&setup)
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
        Mode::Guided => "The tree asks. Say where the probe goes; the furnace answers there.",
        Mode::Free => {
            "Take what you need; each costs its minutes. Name the fault when you are sure, or stop with your reason."
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
fn page(sections: &[Known], setup: &Setup) -> String {
    let look = look::plain_options();
    let mut page = String::new();
    for section in sections {
        page.push_str(&format!("\n{}\n", section.heading.as_str().to_uppercase()));
        for text in &section.lines {
            let text = if look.unicode { text.clone() } else { ascii(text) };
            let lines = wrap(&text, look.width.saturating_sub(INDENT).max(INDENT));
            for (number, line) in lines.iter().enumerate() {
                let indent = if number == 0 { "  " } else { "    " };
                page.push_str(&format!("{indent}{line}\n"));
            }
        }
    }
    page.push_str(&format!("\nThe same furnace for others: {}\n", command(setup)));
    page
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
