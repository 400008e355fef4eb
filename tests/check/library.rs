//! A small library that is right, to put something wrong into.

use std::collections::BTreeMap;

use proofwalk::check;
use proofwalk::library::{Library, Problem, load};
use proofwalk::source::{Diagnostic, Files, SourceFile};

/// A library as text: its files by name.
#[derive(Clone)]
pub struct Written(BTreeMap<String, String>);

/// A finding as the tests compare it.
#[derive(Debug, PartialEq, Eq)]
pub struct Found {
    pub rule: &'static str,
    /// `file:line`.
    pub place: String,
    pub message: String,
    pub help: String,
    pub witness: Vec<String>,
}

const FILES: [(&str, &str); 10] = [
    (
        "library.yaml",
        "library: small\nedition: '1'\ntitle: A small library\nstanding_cautions: [qualified_person]\n",
    ),
    (
        "registry/plate.yaml",
        "\
fields:
  gas: { title: Gas, choices: { natural: Natural gas, propane: Propane } }
  rise_min: { title: Lowest rise, unit: °F, difference: true, plausible: 15 °F to 60 °F }
  rise_max: { title: Highest rise, unit: °F, difference: true, plausible: 40 °F to 100 °F }
  low_mark: { title: Lower mark, unit: V, plausible: 2 V to 10 V }
  high_mark: { title: Upper mark, unit: V, plausible: 2 V to 10 V }
order:
  - [rise_min, rise_max]
",
    ),
    (
        "registry/readings.yaml",
        "\
readings:
  flame_current: { title: Flame current, unit: uA, plausible: 0 uA to 50 uA, accuracy: 0.1 uA }
  valve_voltage: { title: Voltage at the valve, unit: V, plausible: 0 V to 40 V, accuracy: 0.3 V }
  temperature_rise: { title: Rise, unit: °F, difference: true, plausible: 0 °F to 150 °F, accuracy: 2 °F }
",
    ),
    (
        "registry/signs.yaml",
        "signs:\n  flame_shape: { ask: How does the flame look?, values: { steady: Steady, lazy: Lazy } }\n",
    ),
    ("registry/restores.yaml", "restores:\n  door_switch: Release the door switch and close the door\n"),
    (
        "registry/cautions.yaml",
        "cautions:\n  qualified_person: { text: Work for a qualified person, source: common_practice }\n",
    ),
    ("registry/sources.yaml", "sources:\n  common_practice: { title: Common trade practice, kind: practice }\n"),
    (
        "registry/faults.yaml",
        "\
faults:
  nothing_found: { title: Nothing found, remedy: none }
  rod_dirty: { title: Rod dirty, remedy: correct }
  flue_gas_unsafe: { title: Flue gas unsafe, remedy: shut_down }
",
    ),
    // Uses every registered name, so that the tree below can use what it likes.
    (
        "every-name.yaml",
        "\
tree: every-name
title: Every name
complaint: Everything
start: which_gas
steps:
  which_gas: { plate: gas, choices: { natural: current, propane: voltage } }
  current: { measure: flame_current, go: voltage }
  voltage: { measure: valve_voltage, source: common_practice, bands: { below plate.low_mark: rise, at least plate.low_mark: marks } }
  marks: { plate: high_mark, source: common_practice, bands: { below 5 V: rise, at least 5 V: look } }
  rise:
    measure: temperature_rise
    source: common_practice
    bands:
      below plate.rise_min: look
      plate.rise_min to plate.rise_max: flame
      above plate.rise_max: unsafe
  look: { do: Open the door and look., leaves: [door_switch], go: flame }
  flame: { visit: flame-check, returns: { flame_holds: done, flame_drops: dirty } }
  unsafe: { verdict: flue_gas_unsafe, because: It is too hot. }
  dirty: { verdict: rod_dirty, because: The flame drops. }
  done: { verdict: nothing_found, because: The flame holds. }
",
    ),
    (
        "flame-check.yaml",
        "\
tree: flame-check
title: The flame alone
outcomes: [flame_holds, flame_drops]
start: shape
steps:
  shape: { observe: flame_shape, choices: { steady: holds, lazy: drops } }
  holds: { return: flame_holds }
  drops: { return: flame_drops }
",
    ),
];

impl Written {
    /// The library with nothing wrong in it.
    pub fn small() -> Self {
        Self(
            FILES
                .map(|(name, text)| (name.to_owned(), text.to_owned()))
                .into(),
        )
    }

    /// With one file written otherwise, or added.
    pub fn with(mut self, name: &str, text: impl Into<String>) -> Self {
        self.0.insert(name.to_owned(), text.into());
        self
    }

    /// With a piece of one file swapped for another.
    pub fn swapped(self, name: &str, old: &str, new: &str) -> Self {
        let text = self.0[name].clone();
        assert!(text.contains(old), "{name} has no {old:?}");
        self.with(name, text.replace(old, new))
    }

    /// With a tree `no-heat`, whose steps begin in line 6; it starts at the first.
    pub fn steps(self, steps: &str) -> Self {
        let start = steps.trim_start().split(':').next().unwrap();
        let head = "tree: no-heat\ntitle: No heat\ncomplaint: It does not heat\n";
        self.with("no-heat.yaml", format!("{head}start: {start}\nsteps:\n{steps}"))
    }

    /// With a tree `no-heat` that sorts a reading into bands, the first of them in line 10.
    pub fn bands(self, reading: &str, bands: &[&str]) -> Self {
        // The first notes something, so that it makes a difference which of them takes the value.
        let noted = "{ go: done, finding: { severity: note, text: Low } }";
        let answers = std::iter::once(noted).chain(std::iter::repeat("done"));
        let lines: String = (bands.iter().zip(answers))
            .map(|(band, answer)| format!("      {band}: {answer}\n"))
            .collect();
        self.steps(&format!(
            "  asked:\n    measure: {reading}\n    source: common_practice\n    bands:\n{lines}  \
             done: {{ verdict: nothing_found, because: It is over. }}\n"
        ))
    }

    pub fn files(&self) -> Files {
        Files::new(
            self.0
                .iter()
                .map(|(name, text)| SourceFile::new(name, text))
                .collect(),
        )
    }

    /// Everything that the checker says.
    pub fn found(&self) -> Vec<Found> {
        self.found_by(check::run)
    }

    /// Everything that the checker says where the library is to be released.
    pub fn found_for_release(&self) -> Vec<Found> {
        self.found_by(check::run_for_release)
    }

    fn found_by(&self, run: fn(&Library, &[Problem]) -> Vec<Diagnostic>) -> Vec<Found> {
        let (library, problems) = load(self.files());
        crate::schemas::refuse_nothing_of(&library.files, &problems);
        let found = run(&library, &problems).into_iter();
        found
            .map(|finding| {
                let place = library.files.place(finding.span);
                Found {
                    rule: finding.rule,
                    place: format!("{}:{}", place.file, place.line),
                    message: finding.message,
                    help: finding.help,
                    witness: finding.witness,
                }
            })
            .collect()
    }

    /// Checks rule, place and message of everything that is found.
    #[track_caller]
    pub fn says(&self, expected: &[(&str, &str, &str)]) {
        let found = self.found();
        let found: Vec<(&str, &str, &str)> = found
            .iter()
            .map(|f| (f.rule, f.place.as_str(), f.message.as_str()))
            .collect();
        assert_eq!(found, expected);
    }

    /// Checks that nothing is wrong.
    #[track_caller]
    pub fn is_right(&self) {
        self.says(&[]);
    }
}

#[test]
fn the_small_library_is_right() {
    Written::small().is_right();
}
