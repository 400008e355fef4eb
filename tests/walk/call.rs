//! A library with a bit of everything, and a call that is walked through it.

use proofwalk::library::{Datum, FieldKind, Library, load};
use proofwalk::report::{Job, Log};
use proofwalk::source::{Files, SourceFile};
use proofwalk::walk::{
    ByTheTrees, Command, Event, LibraryMark, Opened, Refusal, State, Wanted, apply, decide, encode, fold,
    open, possible, retrace, wanted,
};

const FILES: [(&str, &str); 8] = [
    (
        "registry/plate.yaml",
        "\
fields:
  gas: { title: Gas, choices: { natural: Natural, propane: Propane } }
  low: { title: Lower mark, unit: V, plausible: 2 V to 10 V }
  high: { title: Upper mark, unit: V, plausible: 2 V to 20 V }
order: [[low, high]]
",
    ),
    (
        "registry/readings.yaml",
        "\
readings:
  volts: { title: Volts, unit: V, plausible: 0 V to 30 V, accuracy: 0.5 V, leaves: [door] }
  amps: { title: Amps, unit: A, plausible: 0 A to 10 A, accuracy: 0.1 A }
  warm: { title: Warm, unit: °F, plausible: 30 °F to 200 °F, accuracy: 1 °F }
  cold: { title: Cold, unit: °F, plausible: 30 °F to 120 °F, accuracy: 1 °F }
  rise: { title: Rise, unit: °F, difference: true, worked_out: { formula: temperature_rise, supply: warm, return: cold } }
",
    ),
    (
        "registry/signs.yaml",
        "signs:\n  noise: { ask: Noise?, values: { hum: Hum, quiet: Quiet } }\n  smell: { ask: Smell?, values: { gas_smell: Gas, nothing: Nothing } }\n",
    ),
    (
        "registry/parts.yaml",
        "\
parts:
  motor: { title: Motor, proof: [ { volts: 20 V to 30 V }, { any: [ { noise: hum }, { amps: above 5 A } ] } ] }
  valve: { title: Valve, proof: [ { volts: at least plate.low } ] }
",
    ),
    (
        "registry/faults.yaml",
        "\
faults:
  motor_dead: { title: Motor dead, remedy: replace motor }
  valve_dead: { title: Valve dead, remedy: replace valve }
  dirty: { title: Dirty, remedy: correct }
  unsafe_here: { title: Unsafe, remedy: shut_down }
  fine: { title: Fine, remedy: none }
",
    ),
    ("registry/restores.yaml", "restores:\n  door: Close the door\n  tap: Refit the tap\n"),
    (
        "fire.yaml",
        "tree: fire\ntitle: Fire\noutcomes: [out]\nstart: smell\nsteps:\n  smell: { observe: smell, choices: { gas_smell: stop, nothing: back } }\n  stop: { verdict: unsafe_here, because: It burns. }\n  back: { return: out }\n",
    ),
    ("library.yaml", "library: small\ndangers: { It burns: fire }\n"),
];

const ENDS: &str = "
  motor_dead: { verdict: motor_dead, because: B. }
  valve_dead: { verdict: valve_dead, because: B. }
  dirty: { verdict: dirty, because: B. }
  unsafe_here: { verdict: unsafe_here, because: B. }
  fine: { verdict: fine, because: B. }
";

/// A tree file of that name; each fault has a step of its own name.
pub fn tree(name: &str, head: &str, steps: &str) -> (String, String) {
    let start = steps.trim_start().split(':').next().unwrap();
    let head = format!("tree: {name}\ntitle: T\ncomplaint: C\n{head}start: {start}\n");
    (format!("{name}.yaml"), format!("{head}steps:\n{steps}{ENDS}"))
}

/// The library with these files added or written otherwise.
pub fn library(files: &[(String, String)]) -> Library {
    let own = FILES
        .iter()
        .filter(|(name, _)| files.iter().all(|(other, _)| name != other));
    let own = own.map(|(name, text)| SourceFile::new(*name, *text));
    let added = files.iter().map(|(name, text)| SourceFile::new(name, text));
    let (library, problems) = load(Files::new(own.chain(added).collect()));
    assert_eq!(problems, [], "the library of a test is right");
    crate::schemas::refuse_nothing_of(&library.files, &problems);
    library
}

pub fn opened(tree: &str) -> Opened {
    Opened {
        library: LibraryMark::default(),
        tree: tree.to_owned(),
        technician: None,
        site: None,
        equipment: None,
        program: "0".to_owned(),
        answered_from: None,
    }
}

/// A call that is being walked.
pub struct Call {
    pub library: Library,
    pub state: State,
    pub events: Vec<Event>,
}

impl Call {
    /// A call in the tree `t` of these steps.
    pub fn of(steps: &str) -> Self {
        Self::open(library(&[tree("t", "", steps)]))
    }

    /// A call in the tree `t` of a library.
    pub fn open(library: Library) -> Self {
        let mut call = Self {
            library,
            state: State::default(),
            events: Vec::new(),
        };
        let events = open(&call.library, opened("t")).unwrap();
        call.take_in(events);
        call
    }

    fn take_in(&mut self, events: Vec<Event>) {
        for event in events {
            apply(&self.library, &mut self.state, &event).unwrap();
            self.events.push(event);
        }
        let folded = fold(&self.library, &self.events).unwrap();
        assert_eq!(
            format!("{folded:?}"),
            format!("{:?}", self.state),
            "a state is its events, folded"
        );
        let retraced = retrace(&self.library, &self.events, &ByTheTrees);
        assert_eq!(retraced.err(), None, "what was walked follows from its library");
    }

    /// Carries a command out; what it led to, as the log would hold it.
    #[track_caller]
    pub fn does(&mut self, command: Command) -> Vec<String> {
        let events = decide(&self.library, &self.state, &command).unwrap();
        let lines = events.iter().map(|event| encode(event).unwrap()).collect();
        self.take_in(events);
        lines
    }

    /// A command that must be refused, and change nothing.
    #[track_caller]
    pub fn refuses(&self, command: Command) -> Refusal {
        let refusal = decide(&self.library, &self.state, &command).unwrap_err();
        assert!(!refusal.help.is_empty(), "{refusal} says no way out");
        refusal
    }

    #[track_caller]
    pub fn types(&mut self, text: &str) -> Vec<String> {
        self.does(Command::Type(text.to_owned()))
    }

    /// Chooses a value of the sign or field that is asked for, by its name.
    #[track_caller]
    pub fn chooses(&mut self, name: &str) -> Vec<String> {
        let Wanted::Value { leaf, .. } = wanted(&self.library, &self.state) else {
            unreachable!("nothing is asked for: {}", self.wants());
        };
        let values = match leaf {
            Datum::Sign(sign) => &self.library.signs[sign].values,
            Datum::Field(field) => match &self.library.plate[field].kind {
                FieldKind::Choices(choices) => choices,
                FieldKind::Number { .. } => unreachable!("a number is asked for"),
            },
            Datum::Reading(_) => unreachable!("a number is asked for"),
        };
        let at = values.iter().position(|choice| choice.name == name).unwrap();
        self.does(Command::Choose(at))
    }

    /// Its job report.
    pub fn report(&self) -> Job {
        let log = Log {
            session: "s",
            opened: String::new(),
            last: String::new(),
            head: String::new(),
            records: 1,
        };
        Job::new(&self.library, &self.state, &self.events, log)
    }

    pub fn datum(&self, name: &str) -> Datum {
        self.library.datum(name).unwrap()
    }

    pub fn takes(&mut self, name: &str) -> Vec<String> {
        self.does(Command::Take(self.datum(name)))
    }

    /// What the walk waits for, in a word or two.
    pub fn wants(&self) -> String {
        match wanted(&self.library, &self.state) {
            Wanted::Value { leaf, .. } => self.library.name_of(leaf).to_owned(),
            Wanted::Work(step) => format!("do {}", self.library[step].name),
            Wanted::Decision(fault) => format!("decide {}", self.library.faults[fault].name),
            Wanted::PutBack(restore) => format!("put back {}", self.library.restores[restore].name),
            Wanted::Close => "close".to_owned(),
            Wanted::Nothing => "nothing".to_owned(),
            Wanted::Onward => "onward".to_owned(),
        }
    }

    /// The last end that was logged, as the log holds it.
    pub fn ended(&self) -> String {
        let end = self
            .state
            .ended
            .clone()
            .map(|end| encode(&Event::Ended(end)).unwrap());
        end.unwrap_or_default()
    }

    /// The names of the faults that are still possible.
    pub fn possible(&self) -> Vec<&str> {
        let faults = possible(&self.library, &self.state.moment);
        faults
            .into_iter()
            .map(|fault| self.library.faults[fault].name.as_str())
            .collect()
    }

    pub fn findings(&self) -> Vec<&str> {
        let findings = self.state.moment.findings.iter();
        findings.map(|(_, finding)| finding.text.as_str()).collect()
    }
}
