//! Calls told by hand, event by event, at any time.

use std::sync::{Arc, OnceLock};

use jiff::{SignedDuration, Timestamp};
use proofwalk::audit::{Audit, Auditor, Call, Meanings, Teller, Window};
use proofwalk::library::load;
use proofwalk::source::{Files, SourceFile};
use proofwalk::store::{SessionFolder, SessionId, library_hash};
use proofwalk::walk::{End, Event, LibraryMark, Opened, Role, encode};

/// A library of a few names: what they mean is all that an audit takes from it.
const LIBRARY: [(&str, &str); 9] = [
    (
        "library.yaml",
        "library: small\nedition: '1'\ntitle: Small\nafter_work: prove-it\n",
    ),
    (
        "registry/parts.yaml",
        "parts:\n  gas_valve: { title: Gas valve, proof: [ { voltage: above 20 V } ] }\n  board: { title: Board, proof: [ { \
         voltage: below 20 V } ] }\n",
    ),
    (
        "registry/faults.yaml",
        "faults:\n  valve_dead: { title: Valve dead, remedy: replace gas_valve }\n  valve_stuck: { title: Valve stuck, remedy: \
         replace gas_valve }\n  board_dead: { title: Board dead, remedy: replace board }\n  filter_loaded: { title: Filter, remedy: \
         correct }\n  gas_off: { title: Gas off, remedy: refer }\n  leak: { title: Leak, remedy: shut_down }\n  nothing_found: { \
         title: Nothing, remedy: none }\n",
    ),
    (
        "registry/readings.yaml",
        "readings:\n  voltage: { title: Voltage, unit: V, plausible: 0 V to 150 V, accuracy: 0.3 V, minutes: 4 }\n  co: { title: CO, \
         unit: ppm, plausible: 0 ppm to 9000 ppm, accuracy: 5 ppm, minutes: 12 }\n  oxygen: { title: Oxygen, unit: percent, \
         plausible: 0 percent to 21 percent, accuracy: 0.3 percent, minutes: 2 }\n  co_free: { title: CO free of air, unit: ppm, \
         worked_out: { formula: co_air_free, co: co, o2: oxygen } }\n",
    ),
    (
        "registry/restores.yaml",
        "restores:\n  door: Release the door switch\n  tap: Refit the plug\n",
    ),
    (
        "no-heat.yaml",
        "tree: no-heat\ntitle: No heat\ncomplaint: No heat\nstart: volts\nsteps:\n  volts:\n    measure: voltage\n    go: bad\n  \
         bad:\n    verdict: nothing_found\n    because: So it is.\n",
    ),
    (
        "no-gas.yaml",
        "tree: no-gas\ntitle: No gas\ncomplaint: No gas\nstart: free\nsteps:\n  free:\n    measure: co_free\n    go: bad\n  \
         bad:\n    verdict: nothing_found\n    because: So it is.\n",
    ),
    (
        "prove-it.yaml",
        "tree: prove-it\ntitle: Prove it\ncomplaint: Prove it\nstart: bad\nsteps:\n  bad:\n    verdict: nothing_found\n    \
         because: So it is.\n",
    ),
    (
        "no-cool.yaml",
        "tree: no-cool\ntitle: No cooling\ncomplaint: No cooling\nstart: bad\nsteps:\n  bad:\n    verdict: nothing_found\n    \
         because: So it is.\n",
    ),
];

/// What the names of that library mean.
pub fn meanings() -> Arc<Meanings> {
    static MEANINGS: OnceLock<Arc<Meanings>> = OnceLock::new();
    let read = || {
        let files = LIBRARY.map(|(name, text)| SourceFile::new(name, text));
        Arc::new(Meanings::of(&load(Files::new(files.to_vec())).0))
    };
    Arc::clone(MEANINGS.get_or_init(read))
}

/// Keeps that library beside sessions; how they name it.
pub fn keep(folder: &SessionFolder) -> LibraryMark {
    let files = LIBRARY.map(|(name, text)| SourceFile::new(name, text));
    let hash = library_hash(&files);
    folder.keep_library(&hash, &files).unwrap();
    LibraryMark {
        name: "small".to_owned(),
        edition: "1".to_owned(),
        overlays: Vec::new(),
        hash: hash.to_string(),
    }
}

/// A call, told event by event.
#[derive(Clone)]
pub struct Told {
    id: String,
    opened: Opened,
    since: Timestamp,
    now: Timestamp,
    events: Vec<(Timestamp, Event)>,
}

/// A call on no heat, opened at a time.
pub fn told(id: &str, time: &str) -> Told {
    Told {
        id: id.to_owned(),
        opened: Opened {
            library: LibraryMark::default(),
            tree: "no-heat".to_owned(),
            technician: Some("kim".to_owned()),
            site: None,
            equipment: Some("e1".to_owned()),
            program: "test".to_owned(),
            answered_from: None,
        },
        since: at(time),
        now: at(time),
        events: Vec::new(),
    }
}

/// A time.
pub fn at(time: &str) -> Timestamp {
    time.parse().unwrap()
}

impl Told {
    pub fn on(mut self, tree: &str) -> Self {
        self.opened.tree = tree.to_owned();
        self
    }

    pub fn answered_from(mut self, source: &str) -> Self {
        self.opened.answered_from = Some(source.to_owned());
        self
    }

    pub fn by(mut self, technician: &str) -> Self {
        self.opened.technician = Some(technician.to_owned());
        self
    }

    pub fn by_nobody(mut self) -> Self {
        self.opened.technician = None;
        self
    }

    pub fn at_site(mut self, site: &str) -> Self {
        self.opened.site = Some(site.to_owned());
        self
    }

    pub fn equipment(mut self, equipment: impl Into<Option<&'static str>>) -> Self {
        self.opened.equipment = equipment.into().map(str::to_owned);
        self
    }

    pub fn equipment_of(mut self, equipment: &str) -> Self {
        self.opened.equipment = Some(equipment.to_owned());
        self
    }

    /// The same with another mark of its library.
    pub fn walked_with(mut self, library: LibraryMark) -> Self {
        self.opened.library = library;
        self
    }

    /// So many seconds pass.
    pub fn after(mut self, seconds: i64) -> Self {
        self.now += SignedDuration::from_secs(seconds);
        self
    }

    pub fn then(mut self, event: Event) -> Self {
        self.events.push((self.now, event));
        self
    }

    pub fn entered(self, tree: &str, role: Role) -> Self {
        let tree = tree.to_owned();
        self.then(Event::Entered { tree, role })
    }

    pub fn took(self, from: &str, to: &str) -> Self {
        let (from, to) = (from.to_owned(), to.to_owned());
        self.then(Event::Took { edge: 0, from, to })
    }

    pub fn measured(self, reading: &str, typed: &str) -> Self {
        self.reading(reading, typed, false)
    }

    pub fn reading(self, reading: &str, typed: &str, borderline: bool) -> Self {
        let (number, unit) = typed.split_once(' ').unwrap();
        self.then(Event::Measured {
            reading: reading.to_owned(),
            typed: Some(typed.to_owned()),
            value: number.parse().unwrap(),
            unit: unit.to_owned(),
            margin: 0.3,
            borderline,
            warnings: Vec::new(),
        })
    }

    pub fn left_open(self, restore: &str) -> Self {
        let restores = vec![restore.to_owned()];
        self.then(Event::LeftOpen { restores })
    }

    pub fn put_back(self, restore: &str) -> Self {
        let restore = restore.to_owned();
        self.then(Event::PutBack { restore })
    }

    pub fn refused(self, restore: &str) -> Self {
        let (restore, why) = (restore.to_owned(), "no plug".to_owned());
        self.then(Event::KeptOpen { restore, why })
    }

    pub fn verdict(self, fault: &str) -> Self {
        let fault = fault.to_owned();
        self.then(Event::Ended(End::Verdict { fault, danger: false }))
    }

    pub fn noted(self, fault: &str) -> Self {
        let fault = fault.to_owned();
        self.then(Event::Stated { fault, noted: true })
    }

    pub fn insisted(self, fault: &str) -> Self {
        let (fault, words) = (fault.to_owned(), "I know this one".to_owned());
        self.then(Event::Ended(End::Insisted { fault, words }))
    }

    pub fn outcome(self, outcome: &str) -> Self {
        let outcome = outcome.to_owned();
        self.then(Event::Ended(End::Outcome { outcome }))
    }

    pub fn unproven(self) -> Self {
        let why = "no meter".to_owned();
        self.then(Event::Ended(End::Unproven { why }))
    }

    pub fn closed(self) -> Self {
        self.then(Event::Closed)
    }

    /// As the audit sees it.
    pub fn call(&self) -> Call {
        let mut teller = Teller::new(&self.id, 0, &self.opened.clone().into(), self.since, meanings());
        for (time, event) in &self.events {
            teller.tell(event.clone(), *time);
        }
        teller.end(None)
    }

    /// As a session file.
    pub fn write(&self, folder: &SessionFolder) {
        let mut journal = folder.create(&SessionId::parse(&self.id).unwrap()).unwrap();
        let opened = Event::Opened(Box::new(self.opened.clone()));
        journal.append(&[encode(&opened).unwrap()], self.since).unwrap();
        for (time, event) in &self.events {
            journal.append(&[encode(event).unwrap()], *time).unwrap();
        }
    }
}

/// A call that ended in nothing found, and was closed at once.
pub fn done(id: &str, time: &str) -> Told {
    told(id, time).verdict("nothing_found").closed()
}

/// An audit of calls, with a window of 30 days.
pub fn audited(calls: &[Told]) -> Audit {
    within(30, calls)
}

/// An audit of calls with another window.
pub fn within(days: u32, calls: &[Told]) -> Audit {
    let mut auditor = Auditor::new(Window { days }, vec!["calls".to_owned()]);
    for call in calls {
        auditor.add(&call.call());
    }
    auditor.finish()
}

/// An audit of calls that is made at a time.
pub fn made_at(now: &str, calls: &[Told]) -> Audit {
    let mut auditor =
        Auditor::new(Window { days: 30 }, vec!["calls".to_owned()]).made_at(now.parse().unwrap());
    for call in calls {
        auditor.add(&call.call());
    }
    auditor.finish()
}

/// The ids of sessions.
pub fn ids<'a>(sessions: impl IntoIterator<Item = &'a proofwalk::audit::SessionRef>) -> Vec<&'a str> {
    sessions.into_iter().map(|session| session.id.as_str()).collect()
}
