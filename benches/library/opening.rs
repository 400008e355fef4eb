//! What a technician waits for: opening a call, and the next question after an answer, with all that stands beside it.

use proofwalk::library;
use proofwalk::walk::{self, Command, LibraryMark, Opened, State};

use crate::clock::timed;
use crate::made::{self, Shape};

/// A line for each library of so many steps in one tree, all of which the call may still come to.
pub fn table(sizes: &[usize]) {
    println!(
        "\n{:>18} {:>9} {:>9} {:>9}",
        "steps in one tree", "open ms", "ask ms", "next ms"
    );
    for &size in sizes {
        let (mut library, _) = library::load(made::library(Shape::OneTree, size));
        library.gate = None;
        let opened = Opened {
            library: LibraryMark::default(),
            tree: "check-0".to_owned(),
            technician: None,
            site: None,
            equipment: None,
            program: String::new(),
            answered_from: None,
        };
        let mut state = State::default();
        let open = timed(|| {
            let events = walk::open(&library, opened).expect("the call opens");
            take(&library, &mut state, &events);
        });
        let ask = timed(|| show(&library, &state));
        let next = timed(|| {
            let events = walk::decide(&library, &state, &Command::Done).expect("the first step is work");
            take(&library, &mut state, &events);
            show(&library, &state);
        });
        let [open, ask, next] = [open, ask, next].map(|((), time)| time.as_secs_f64() * 1e3);
        println!("{size:18} {open:9.1} {ask:9.1} {next:9.1}");
    }
}

fn take(library: &library::Library, state: &mut State, events: &[walk::Event]) {
    for event in events {
        walk::apply(library, state, event).expect("an event of the walk's own fits");
    }
}

/// All that a face asks of the walk for one screen.
fn show(library: &library::Library, state: &State) {
    std::hint::black_box((walk::ask(library, state), walk::standing(library, state)));
}
