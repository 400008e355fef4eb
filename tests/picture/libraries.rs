//! The libraries that are drawn.

use proofwalk::library::{self, Id, Library, Tree};
use proofwalk::report::picture::{Part, Picture};
use proofwalk::source::{Files, SourceFile};
use proofwalk::store;

use crate::common::scene::root;

/// The built-in library.
pub fn built_in() -> Library {
    let files = store::read_library(&root().join("trees")).unwrap();
    library::load(Files::new(files)).0
}

/// A library of these files, whatever is wrong with it.
pub fn written(files: &[(&str, &str)]) -> Library {
    let files = files.iter().map(|(name, text)| SourceFile::new(*name, *text));
    library::load(Files::new(files.collect())).0
}

/// The whole of a tree.
#[track_caller]
pub fn whole<'l>(library: &'l Library, tree: &str) -> Picture<'l> {
    let id = library.trees.find(tree).expect("there is such a tree");
    picture(library, id)
}

/// The whole of a tree.
#[track_caller]
pub fn picture(library: &Library, tree: Id<Tree>) -> Picture<'_> {
    Picture::new(library, tree, Part::default()).unwrap()
}

/// A sump pump that does not run: a tree with a step of each kind.
pub const FILES: [(&str, &str); 9] = [
    (
        "library.yaml",
        "library: sump-pump\nedition: 2026.1\ntitle: Sump pumps in basements\nstanding_cautions: [qualified]\n",
    ),
    (
        "registry/plate.yaml",
        "fields:\n  phases: { title: Phases on the rating plate, choices: { one: One, three: Three } }\n",
    ),
    (
        "registry/readings.yaml",
        "readings:\n  supply: { title: Volts at the pump's socket, unit: V, plausible: 0 V to 300 V, accuracy: 1 %, \
         cautions: [line_voltage], leaves: [cover] }\n",
    ),
    (
        "registry/signs.yaml",
        "signs:\n  float: { ask: Where does the float hang?, values: { free: Free, caught: Caught on the wall } }\n",
    ),
    (
        "registry/parts.yaml",
        "parts:\n  pump: { title: Pump, proof: [ { supply: 108 V to 132 V }, { any: [ { float: free } ] } ] }\n",
    ),
    (
        "registry/faults.yaml",
        "faults:\n  pump_dead: { title: Pump dead, remedy: replace pump }\n  feed: { title: No power at the socket, \
         remedy: refer, text: Call an electrician }\n  wet: { title: Water at the socket, remedy: shut_down }\n",
    ),
    (
        "registry/restores.yaml",
        "restores:\n  cover: Refit the cover of the pit\n",
    ),
    (
        "registry/cautions.yaml",
        "cautions:\n  line_voltage: { text: Line voltage kills }\n  qualified: { text: For qualified people }\n",
    ),
    (
        "pump.yaml",
        "tree: pump
title: The pump does not run
status: field-trial
complaint: Water in the basement
outcomes: [pump_runs]
edition: 3
start: plate
steps:
  plate:
    plate: phases
    choices: { one: float, three: other }
    unable: other
  float:
    observe: float
    choices: { free: supply, caught: { go: lift, at_most: 2, then: other } }
    unsure: supply
  lift: { do: Lift the float off the wall., voids: [float], go: float }
  supply:
    title: Power
    measure: supply
    bands:
      below 108 V: no_power
      108 V to 132 V: dead
      above 132 V: { go: other, means: Not this pump's supply, finding: { severity: danger, text: Overvoltage } }
  other: { visit: socket, returns: { dry: back } }
  dead: { verdict: pump_dead, because: It has power and does not run. }
  no_power: { verdict: feed, because: No power. }
  back: { return: pump_runs }
",
    ),
];

/// The tree that the pump's visits.
pub const SOCKET: (&str, &str) = (
    "socket.yaml",
    "tree: socket\ntitle: Around the socket\noutcomes: [dry]\nstart: look\nsteps:\n  look: { observe: float, choices: { \
     free: dry, caught: wet } }\n  dry: { return: dry }\n  wet: { verdict: wet, because: So. }\n",
);

/// The sump pumps.
pub fn sump_pumps() -> Library {
    written(&[&FILES[..], &[SOCKET]].concat())
}
