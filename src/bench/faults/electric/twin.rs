//! Faults between two twins.

use crate::bench::faults::Fault;
use crate::bench::make::{Link, Make};

fn twin(make: &Make) -> bool {
    make.link().is_some()
}

fn by_wire(make: &Make) -> bool {
    make.link() == Some(Link::Wire)
}

fn by_kit(make: &Make) -> bool {
    make.link() == Some(Link::Kit)
}

/// These faults.
pub const FAULTS: &[Fault] = &[
    Fault {
        name: "twin_phase_wrong",
        title: "The transformers of two twins stand against each other",
        part: None,
        verdicts: &["twin_phase_wrong"],
        fits: by_wire,
        strike: |condition, _, _| condition.electric.twin.out_of_phase = true,
    },
    Fault {
        name: "twin_link_broken",
        title: "The wire between two twins is broken",
        part: None,
        verdicts: &["twin_link_broken"],
        fits: by_wire,
        strike: |condition, _, _| condition.electric.twin.link_open = true,
    },
    Fault {
        name: "twin_boards_differ",
        title: "The boards of two twins differ in their delays",
        part: None,
        verdicts: &["twin_boards_differ"],
        fits: twin,
        strike: |condition, _, _| condition.electric.twin.boards_differ = true,
    },
    Fault {
        name: "twin_kit_dead",
        title: "The relay between two twins does not pass the call",
        part: None,
        verdicts: &["twin_kit_dead"],
        fits: by_kit,
        strike: |condition, _, _| condition.electric.twin.link_open = true,
    },
];
