//! Questions to show, and a call that does what a test tells it.

use std::collections::VecDeque;

use proofwalk::library::{Datum, Id, Severity};
use proofwalk::measure::{Quantity, Scale, Unit};
use proofwalk::source::{Safe, safe};
use proofwalk::tui::{Home, HomeLine, Look, Model, Scene, view};
use proofwalk::walk::{
    Again, Ask, BandEnd as End, Call, Claimed, Command, Lack, LackKind, NotDone, Question, ShownBand,
    ShownOption, ShownValue, Standing, Stated, TrailEntry, Way,
};
use ratatui::Terminal;
use ratatui::backend::TestBackend;

pub const PLAIN: Look = Look {
    colour: false,
    unicode: false,
};
pub const RICH: Look = Look {
    colour: true,
    unicode: true,
};

const WATER: Scale = Scale::of(Unit::InchWaterColumn);

pub fn all(texts: &[&str]) -> Vec<Safe> {
    texts.iter().map(|text| safe(text)).collect()
}

pub fn ask(question: Question) -> Ask {
    Ask {
        tree: safe("Gas supply at the valve"),
        status: None,
        edition: None,
        overlays: Vec::new(),
        standing_cautions: Vec::new(),
        through: all(&["No heat: burners light, then go out"]),
        question,
        by_words: Vec::new(),
        title: None,
        why: Vec::new(),
        how: Vec::new(),
        cautions: Vec::new(),
        source: None,
        minutes: None,
        again: None,
        unable: None,
        unsure: None,
    }
}

fn band(words: &str, low: Option<f64>, high: Option<f64>, means: &str) -> ShownBand {
    let end = |at: f64| End {
        at: Quantity::new(at, WATER),
        included: true,
    };
    ShownBand {
        words: safe(words),
        written: None,
        low: low.map(|at| End {
            included: high.is_some(),
            ..end(at)
        }),
        high: high.map(|at| End {
            included: low.is_some(),
            ..end(at)
        }),
        means: Some(safe(means)),
        finding: None,
    }
}

pub fn number() -> Ask {
    let mut over = band("above 3.8 in.w.c.", Some(3.8), None, "set too high");
    over.finding = Some(Severity::Repair);
    let mut set = band("3.2 to 3.8 in.w.c.", Some(3.2), Some(3.8), "as the plate asks");
    set.written = Some(safe(
        "plate.manifold - 0.3 in.w.c. to plate.manifold + 0.3 in.w.c.",
    ));
    Ask {
        title: Some(safe("Burners lit, thermostat calling")),
        why: all(&["It tells a starved burner from a flame that is not proven."]),
        how: all(&[
            "Close the gas cock. Take the plug out of the outlet tap of the valve and fit the hose of the manometer.",
            "Open the cock, let the furnace light, and wait one minute before you read.",
        ]),
        cautions: all(&["Gas can escape at an open tap: no flame near it, and close it before you leave."]),
        source: Some(safe("rating plate of the furnace")),
        minutes: Some(6.0),
        unable: Some(Way::GoesOn),
        unsure: Some(Way::EndsUnproven),
        ..ask(Question::Number {
            datum: Datum::Reading(Id::new(3)),
            title: safe("Manifold pressure"),
            scale: WATER,
            works_out: None,
            bands: vec![
                band(
                    "below 3.2 in.w.c.",
                    None,
                    Some(3.2),
                    "supply or regulator too low",
                ),
                set,
                over,
            ],
            plausible: Some((Quantity::new(0.0, WATER), Quantity::new(14.0, WATER))),
            accuracy: Some(safe("± 0.05 in.w.c.")),
        })
    }
}

pub fn again() -> Ask {
    Ask {
        again: Some(Again::Borderline {
            typed: safe("3.2 in.w.c."),
            bound: safe("below 3.2 in.w.c."),
        }),
        ..number()
    }
}

fn option(value: usize, text: &str, means: Option<&str>) -> ShownOption {
    ShownOption {
        value,
        text: safe(text),
        known_by: Safe::default(),
        means: means.map(safe),
        finding: None,
    }
}

pub fn choice() -> Ask {
    let mut sooty = option(2, "Yellow, lifting, or sooty", Some("combustion is wrong"));
    sooty.finding = Some(Severity::Danger);
    Ask {
        status: Some(safe("field trial")),
        why: all(&["A flame that is there but not seen points at the sensor."]),
        cautions: all(&["The burner box is hot."]),
        minutes: Some(1.0),
        unsure: Some(Way::GoesOn),
        ..ask(Question::Choice {
            datum: Some(Datum::Sign(Id::new(1))),
            prompt: safe("How does the flame look when the burners light?"),
            options: vec![
                option(
                    0,
                    "Steady and blue over all burners",
                    Some("gas and air are in order"),
                ),
                option(1, "Only some burners light", None),
                sooty,
            ],
        })
    }
}

pub fn act() -> Ask {
    Ask {
        how: all(&["The switch is on the side of the cabinet, or at the head of the stairs."]),
        cautions: all(&[
            "230 V or 120 V can stand at the board until the switch is off: check with the meter.",
        ]),
        unable: Some(Way::EndsUnproven),
        ..ask(Question::Act {
            text: all(&[
                "Switch the furnace off at its service switch.",
                "Wait until the blower stands still.",
            ]),
        })
    }
}

pub fn unproven() -> Ask {
    ask(Question::Unproven {
        fault: safe("Gas valve does not open"),
        remedy: safe("replace the gas valve"),
        lacks: vec![
            Lack {
                words: safe("24 V at the valve is 20 to 30 V"),
                any_of: Vec::new(),
                take: vec![(Datum::Reading(Id::new(7)), safe("voltage at the valve"))],
                because: LackKind::NotTaken,
            },
            Lack {
                words: safe("inlet pressure is at least 4.5 in.w.c."),
                any_of: Vec::new(),
                take: vec![(Datum::Reading(Id::new(8)), safe("inlet pressure"))],
                because: LackKind::Borderline,
            },
        ],
    })
}

/// The first line of a proof has two alternatives, of which one is out and the other half taken.
pub fn any_of() -> Ask {
    let mut ask = unproven();
    if let Question::Unproven { lacks, .. } = &mut ask.question {
        let claimed = |words: &str, because| Claimed {
            words: safe(words),
            because,
        };
        lacks[0].any_of = vec![
            vec![claimed("coil above 1 Mohm", Some(LackKind::Contradicted))],
            vec![
                claimed("coil at least 20 ohm", None),
                claimed("24 V at the valve", Some(LackKind::NotTaken)),
            ],
        ];
    }
    ask
}

pub fn put_back() -> Ask {
    ask(Question::PutBack {
        restore: Id::new(0),
        text: safe("Close the outlet tap of the gas valve and check it with leak solution"),
        left: 1,
    })
}

pub fn finished() -> Ask {
    ask(Question::Finished)
}

pub fn standing() -> Standing {
    let entry = |position, title: &str, answer: &str, ruled_out: &[&str]| TrailEntry {
        position,
        title: safe(title),
        datum: Some(Datum::Reading(Id::new(position))),
        answer: safe(answer),
        borderline: position == 2,
        worked_out: Vec::new(),
        stood: Vec::new(),
        ruled_out: all(ruled_out),
    };
    Standing {
        possible: all(&[
            "Gas valve does not open",
            "Regulator sticks",
            "Supply pressure too low",
            "Flame sensor is fouled",
        ]),
        trail: vec![
            entry(0, "Complaint", "burners light, then go out", &[]),
            entry(
                1,
                "Error light",
                "three flashes",
                &["Pressure switch stuck open", "Limit has opened"],
            ),
            entry(2, "Inlet pressure", "4.5 in.w.c.", &["Gas cock closed"]),
        ],
        open: all(&["Outlet tap of the gas valve", "Burner box cover"]),
        findings: vec![
            (Severity::Advise, safe("The filter is loaded")),
            (Severity::Note, safe("No carbon monoxide alarm")),
        ],
        last_is_news: false,
        not_looked_at: Vec::new(),
        at_worst: 7,
        dangers: all(&[
            "I smell gas",
            "A carbon monoxide alarm sounds",
            "Water runs over live parts",
        ]),
        ended: None,
        stated: None,
    }
}

/// The last answer was all that something to be worked out still lacked.
pub fn came_out() -> Standing {
    let mut standing = standing();
    standing.trail[2].worked_out = vec![ShownValue {
        title: safe("Pressure drop over the valve"),
        value: safe("1.062 in.w.c."),
        means: Some(safe("more than the valve takes")),
    }];
    standing
}

pub fn ended() -> Standing {
    Standing {
        possible: Vec::new(),
        open: Vec::new(),
        at_worst: 0,
        ended: Some(safe("Verdict, proven: Flame sensor is fouled")),
        stated: Some(Stated {
            shut_down: false,
            remedy: safe("Set right"),
            text: all(&["Clean the sensor with fine steel wool and wipe it dry."]),
            cautions: all(&["The burner box is hot."]),
            because: all(&["The flame is steady, and the sensor's current is too low."]),
            advice: all(&["Have the sensor cleaned every year."]),
            then: Some(safe(
                "Once that is done, walk leaving: “The repair is done, prove it before leaving”",
            )),
        }),
        ..standing()
    }
}

/// Ended in a shut-down, with something to put back.
pub fn shut_down() -> Standing {
    Standing {
        open: standing().open,
        ended: Some(safe("Verdict, proven: Heat exchanger is cracked")),
        stated: Some(Stated {
            shut_down: true,
            remedy: safe("It must not run"),
            text: all(&[
                "Close the gas cock, switch it off at the service switch, tag both, and leave them so. Tell the owner in \
                 writing before you leave that nobody may light it again.",
            ]),
            cautions: all(&["Air the rooms: carbon monoxide may be in them."]),
            because: all(&["Carbon monoxide rose in the supply air when the blower started."]),
            advice: all(&["A furnace of this age is replaced rather than mended."]),
            then: None,
        }),
        ..ended()
    }
}

pub fn home() -> Home {
    let line = |label: &str, note: Option<&str>| HomeLine {
        label: safe(label),
        note: note.map(safe),
    };
    Home {
        title: safe("Residential gas furnaces"),
        overlays: Vec::new(),
        standing_cautions: all(&[
            "Local codes, the maker's instructions and your licence come before anything said here.",
        ]),
        complaints: vec![
            line("No heat at all", None),
            line("Burners light, then go out", None),
            line("Too little heat", Some("field trial")),
            line("Noise at start", None),
        ],
        unfinished: vec![line(
            "No heat at all",
            Some("opened 09:12 at site K-14, 5 answers"),
        )],
        dangers: standing().dangers,
    }
}

/// A screen as text, one line each.
pub fn drawn(size: (u16, u16), model: &Model, scene: Scene<'_>, look: Look) -> String {
    let mut terminal = Terminal::new(TestBackend::new(size.0, size.1)).unwrap();
    terminal
        .draw(|frame| {
            view(frame, model, scene, look);
        })
        .unwrap();
    let text = terminal.backend().to_string();
    let lines = text
        .lines()
        .map(|line| line.trim_start_matches('"').trim_end_matches('"').trim_end());
    lines.collect::<Vec<_>>().join("\n")
}

/// A call that shows what it is given, and remembers what it is asked to do.
pub struct Scripted {
    pub asks: VecDeque<Ask>,
    pub standing: Standing,
    pub asked: Vec<Command>,
    pub refusals: VecDeque<Option<NotDone>>,
}

impl Scripted {
    pub fn new(asks: impl IntoIterator<Item = Ask>) -> Self {
        Self {
            asks: asks.into_iter().collect(),
            standing: standing(),
            asked: Vec::new(),
            refusals: VecDeque::new(),
        }
    }
}

impl Call for Scripted {
    fn ask(&self) -> &Ask {
        &self.asks[0]
    }

    fn standing(&self) -> &Standing {
        &self.standing
    }

    fn carry_out(&mut self, command: Command) -> Result<(), NotDone> {
        self.asked.push(command.clone());
        if let Some(Some(refusal)) = self.refusals.pop_front() {
            return Err(refusal);
        }
        if !matches!(command, Command::Note(_)) && self.asks.len() > 1 {
            self.asks.pop_front();
        }
        Ok(())
    }
}
