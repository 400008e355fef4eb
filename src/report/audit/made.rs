//! A season of an invented company, made up by chance that is the same every time, for the tests of both pages.

use jiff::{Timestamp, ToSpan};

use crate::audit::{Audit, Auditor, Call, Ending, PutBacks, Remedy, Stay, Verdict, Window};

/// Calls of the season.
const CALLS: u64 = 900;

/// Faults with the part that is replaced for each, and the way that leads there.
const FAULTS: [(&str, &str, [&str; 4]); 4] = [
    (
        "valve_does_not_open",
        "gas_valve",
        ["thermostat", "inducer", "flame", "valve_volts"],
    ),
    (
        "board_lets_go",
        "control_board",
        ["thermostat", "inducer", "flame", "board_pin"],
    ),
    (
        "igniter_open",
        "igniter",
        ["thermostat", "inducer", "igniter_ohms", "igniter_visible"],
    ),
    (
        "switch_does_not_close",
        "pressure_switch",
        ["thermostat", "inducer", "switch_volts", "tube"],
    ),
];

pub(super) struct Chance(pub u64);

impl Chance {
    /// Below a number.
    pub fn below(&mut self, number: u64) -> u64 {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) % number
    }
}

pub(super) fn start() -> Timestamp {
    "2025-09-01T08:00:00Z".parse().unwrap()
}

/// A call that is closed after an hour.
pub(super) fn call(number: u64, opened: Timestamp) -> Call {
    let closed = opened + 1.hour();
    Call {
        session: format!("0199{number:04x}-0000-7000-8000-{number:012x}").into(),
        folder: 0,
        opened,
        last: closed,
        closed: Some(closed),
        sealed: true,
        torn: None,
        clock_went_back: false,
        from_file: false,
        practice: false,
        with_library: true,
        tree: "no-heat".into(),
        technician: None,
        site: None,
        equipment: None,
        ending: Ending::Open,
        noted: Vec::new(),
        put_backs: PutBacks::default(),
        readings: Vec::new(),
        not_taken: Vec::new(),
        stays: Vec::new(),
        could_test_combustion: true,
        after_work: false,
    }
}

/// The season.
pub(super) fn season() -> Audit {
    let mut chance = Chance(7);
    let mut auditor = Auditor::new(Window::default(), vec!["season".to_owned()]);
    for number in 0..CALLS {
        let opened = start() + ((number * 200 * 24 / CALLS) as i64).hours();
        let mut call = call(number, opened);
        let (fault, part, way) = FAULTS[(chance.below(10) / 3) as usize];
        // One technician has few calls, one many and twice the callbacks: their furnaces are visited again sooner.
        let technician = [1, 1, 2, 2, 2, 3, 3, 3, 3, 4, 4, 4, 4, 5, 5, 5, 5, 6][chance.below(18) as usize];
        let technician = if number % 75 == 3 { 7 } else { technician };
        let furnaces = if technician == 4 { 90 } else { 500 };
        call.technician = Some(format!("T{technician}").into());
        call.equipment = Some(format!("furnace-{technician}-{}", chance.below(furnaces)).into());
        call.tree = if chance.below(4) == 0 {
            "drops-out"
        } else {
            "no-heat"
        }
        .into();
        let verdict = Verdict {
            fault: fault.into(),
            remedy: Remedy::Replace(part.into()),
        };
        call.ending = match chance.below(12) {
            0 => Ending::Unproven {
                why: "could not measure".into(),
            },
            1 => Ending::Insisted(verdict),
            _ => Ending::Verdict(verdict),
        };
        if chance.below(40) == 0 {
            call.put_backs.refused.push("door_switch".into());
        }
        let gives_up = call.verdict().is_none();
        let steps: Vec<String> = way.iter().map(|step| format!("{}/{step}", call.tree)).collect();
        let many = if gives_up { 3 } else { 4 };
        for (place, step) in steps.iter().take(many).enumerate() {
            call.stays.push(Stay {
                step: step.as_str().into(),
                to: (steps.get(place + 1).filter(|_| place + 1 < many)).map(|to| to.as_str().into()),
                seconds: Some(60.0 + chance.below(1500) as f64),
                minutes: Some(3.0),
            });
        }
        auditor.add(&call);
    }
    auditor.finish()
}
