//! Libraries with every kind of step, in trees that visit one another.

use std::fmt::Write;

use super::File;
use super::blocks::{Block, PLATE, PROOF, RISE, VISIT, WORK};
use super::dice::Dice;
use super::registry;

/// So many trees belong together: a call comes to the first, and each visits the next.
const GROUP: usize = 8;

/// Steps for each circuit that is registered.
const STEPS_A_CIRCUIT: usize = 250;

/// A library of so many steps, in trees of so many.
pub fn library(steps: usize, tree: usize) -> Vec<File> {
    let circuits = (steps / STEPS_A_CIRCUIT).max(8);
    let trees = (steps / tree).max(1);
    let mut files = registry::files(circuits);
    let mut dice = Dice::new(steps as u64);
    for number in 0..trees {
        let is_last = number + 1 == trees;
        let tree = Tree {
            number,
            circuits,
            visits_next: !is_last && number % GROUP != GROUP - 1,
            steps: if is_last { steps - number * tree } else { tree },
        };
        files.push((format!("check-{number}.yaml"), tree.text(&mut dice)));
        if tree.is_called() {
            files.push(tree.worked_call());
        }
    }
    files
}

struct Tree {
    number: usize,
    circuits: usize,
    visits_next: bool,
    steps: usize,
}

impl Tree {
    fn is_called(&self) -> bool {
        self.number.is_multiple_of(GROUP)
    }

    /// Blocks one after the other, what room they leave filled with things to do, and the ways out.
    fn text(&self, dice: &mut Dice) -> String {
        let mut room = self.steps.saturating_sub(WAYS_OUT);
        let mut blocks: Vec<(&Block, usize)> = Vec::new();
        for position in 0.. {
            let (block, circuit) = self.block(position, dice);
            if block.steps > room {
                break;
            }
            room -= block.steps;
            blocks.push((block, circuit));
        }
        let prefix = |position: usize| format!("b{position}_");
        let first = |(position, (block, _)): (usize, &(&Block, usize))| block.entry(&prefix(position));
        let entries = blocks.iter().enumerate().map(first);
        let padding = (0..room).map(|position| format!("p{position}"));
        let entries: Vec<String> = entries.chain(padding).chain(["end".to_owned()]).collect();

        let mut text = self.head(&entries[0]);
        for (position, (block, circuit)) in blocks.iter().enumerate() {
            text += &block.write(&prefix(position), *circuit, &entries[position + 1], dice);
        }
        for pair in entries[blocks.len()..].windows(2) {
            let _ = writeln!(
                text,
                "  {}: {{ do: Wipe the panel clean, go: {} }}",
                pair[0], pair[1]
            );
        }
        text + self.ways_out()
    }

    /// A block and its circuit.
    fn block(&self, position: usize, dice: &mut Dice) -> (&'static Block, usize) {
        let circuit = (self.number + position) % self.circuits;
        match position {
            0 => (&PROOF, circuit),
            1 if self.visits_next => (&VISIT, self.number + 1),
            _ => ([&PROOF, &PROOF, &PLATE, &RISE, &WORK][dice.throw(5)], circuit),
        }
    }

    fn head(&self, start: &str) -> String {
        let number = self.number;
        let way_in = if self.is_called() {
            format!("complaint: Circuit {number} does nothing")
        } else {
            "outcomes: [in_order, set_right]".to_owned()
        };
        format!(
            "# Made to measure.\ntree: check-{number}\ntitle: Check {number}\nstatus: draft\n{way_in}\nstart: {start}\nsteps:\n"
        )
    }

    fn ways_out(&self) -> &'static str {
        if self.is_called() { VERDICTS } else { RETURNS }
    }

    /// A call that ends at the tree's first measurement.
    fn worked_call(&self) -> File {
        let (number, circuit) = (self.number, self.number % self.circuits);
        let text = format!(
            "scenario: Valve {circuit} gets no voltage\ntree: check-{number}\nreadings: {{ supply_{circuit}: 12 V }}\n\
             expect: {{ verdict: no_supply_{circuit}, asked: [supply_{circuit}] }}\n"
        );
        (format!("scenarios/check-{number}.yaml"), text)
    }
}

/// Steps at the end of every tree.
const WAYS_OUT: usize = 3;

const VERDICTS: &str = "
  end:
    observe: anything_set
    choices: { something: set_right, nothing: in_order }
  set_right:
    verdict: set_right
    because: Something was set on the way, and all is in order now.
  in_order:
    verdict: nothing_found
    because: Every circuit does what it should.
";

const RETURNS: &str = "
  end:
    observe: anything_set
    choices: { something: set_right, nothing: in_order }
  set_right: { return: set_right }
  in_order: { return: in_order }
";
