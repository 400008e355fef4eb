//! What happens on a made call: fifteen lines a call, as short calls have them.

use jiff::{SignedDuration, Timestamp};
use proofwalk::bench::dice::Dice;
use proofwalk::walk::{End, Event, LibraryMark, Opened, Role, encode};

use crate::plan::Visit;

/// A complaint: its tree, the steps that are walked, a sign, two readings and two faults.
struct Complaint {
    tree: &'static str,
    steps: [&'static str; 3],
    sign: [&'static str; 2],
    readings: [Reading; 2],
    faults: [&'static str; 2],
}

/// A reading: its name and unit, what is usual, how far it strays, what the meter leaves open.
struct Reading(&'static str, &'static str, f64, f64, f64);

/// Trees, readings and faults of the built-in library. What they show says nothing about furnaces.
const COMPLAINTS: [Complaint; 6] = [
    Complaint {
        tree: "no-ignition",
        steps: ["igniter", "resistance", "igniter_bad"],
        sign: ["igniter_glow", "dark"],
        readings: [
            Reading("igniter_resistance", "Ω", 60.0, 30.0, 1.2),
            Reading("igniter_voltage", "V", 119.0, 3.0, 2.2),
        ],
        faults: ["igniter_out_of_range", "igniter_connector_bad"],
    },
    Complaint {
        tree: "flame-drops-out",
        steps: ["signal_first", "rod", "clean"],
        sign: ["flame_look", "steady"],
        readings: [
            Reading("flame_current", "µA", 1.4, 0.9, 0.1),
            Reading("burner_ground", "Ω", 0.4, 0.2, 0.1),
        ],
        faults: ["flame_sensor_dirty", "burner_ground_bad"],
    },
    Complaint {
        tree: "inducer-silent",
        steps: ["plug", "by_hand", "winding"],
        sign: ["inducer", "silent"],
        readings: [
            Reading("inducer_plug_voltage", "V", 120.0, 3.0, 2.2),
            Reading("inducer_winding", "Ω", 24.0, 8.0, 0.4),
        ],
        faults: ["inducer_capacitor_weak", "inducer_blocked"],
    },
    Complaint {
        tree: "airflow",
        steps: ["filter", "supply", "return"],
        sign: ["filter_state", "clean"],
        readings: [
            Reading("supply_static", "in.w.c.", 0.3, 0.1, 0.01),
            Reading("return_static", "in.w.c.", -0.3, 0.1, 0.01),
        ],
        faults: ["return_restricted", "supply_restricted"],
    },
    Complaint {
        tree: "nothing-happens",
        steps: ["line", "control", "call"],
        sign: ["door_fit", "presses"],
        readings: [
            Reading("line_voltage", "V", 121.0, 3.0, 2.2),
            Reading("control_supply", "V", 25.5, 1.5, 0.6),
        ],
        faults: ["transformer_dead", "transformer_feed"],
    },
    Complaint {
        tree: "combustion-check",
        steps: ["oxygen", "as_read", "too_much_gas"],
        sign: ["flame_look", "blue"],
        readings: [
            Reading("exhaust_oxygen", "%", 8.0, 1.5, 0.3),
            Reading("flue_gas_co", "ppm", 40.0, 30.0, 5.0),
        ],
        faults: ["burners_dirty", "flue_gas_unsafe"],
    },
];

/// The lines of a call, each with when it was said.
pub fn told(mark: &LibraryMark, visit: &Visit) -> Vec<(Timestamp, String)> {
    let mut dice = Dice::new(visit.seed);
    // A callback is of the same complaint as the call before it.
    let complaint = &COMPLAINTS[visit.complaint as usize % COMPLAINTS.len()];
    let technician = dice.below(visit.crew);
    let fault = complaint.faults[usize::from(dice.chance(0.3))].to_owned();
    let end = dice.share();
    let is_hurried = dice.chance(0.005);
    let step = |number: usize| format!("{}/{}", complaint.tree, complaint.steps[number]);
    let mut time = visit.opened;
    let mut lines = Vec::with_capacity(15);
    let mut say = |event: Event| {
        lines.push((time, encode(&event).expect("its numbers are finite")));
        let seconds = if is_hurried {
            4
        } else {
            60 + dice.below(180) as i64
        };
        time = time
            .saturating_add(SignedDuration::from_secs(seconds))
            .expect("no call ends beyond time");
        dice.share()
    };
    say(Event::Opened(Box::new(Opened {
        library: mark.clone(),
        tree: complaint.tree.to_owned(),
        technician: Some(format!("t-{technician:03}")),
        site: Some(format!("house {:06}", visit.equipment)),
        equipment: Some(format!("furnace-{:06}", visit.equipment)),
        program: "made to measure".to_owned(),
        answered_from: None,
    })));
    say(Event::Entered {
        tree: "safe-to-start".to_owned(),
        role: Role::Gate,
    });
    say(Event::Observed {
        sign: "gas_odour".to_owned(),
        value: "none".to_owned(),
    });
    say(Event::Returned {
        outcome: "ready".to_owned(),
    });
    say(Event::Entered {
        tree: complaint.tree.to_owned(),
        role: Role::Complaint,
    });
    say(Event::Observed {
        sign: complaint.sign[0].to_owned(),
        value: complaint.sign[1].to_owned(),
    });
    let mut strays = say(Event::Took {
        edge: 7,
        from: step(0),
        to: step(1),
    });
    say(Event::LeftOpen {
        restores: vec!["door_switch".to_owned()],
    });
    for (number, Reading(name, unit, usual, stray, margin)) in complaint.readings.iter().enumerate() {
        let value = ((usual + stray * (2.0 * strays - 1.0)) * 100.0).round() / 100.0;
        strays = say(Event::Measured {
            reading: (*name).to_owned(),
            typed: Some(format!("{value} {unit}")),
            value,
            unit: (*unit).to_owned(),
            margin: *margin,
            borderline: strays < 0.01,
            warnings: Vec::new(),
        });
        if number == 0 {
            strays = say(Event::Took {
                edge: 8,
                from: step(1),
                to: step(2),
            });
        }
    }
    if end < 0.01 {
        // Left, and never taken up again.
        return lines;
    }
    let end = match end {
        0.01..0.03 => End::Unproven {
            why: "the meter is in the other van".to_owned(),
        },
        0.03..0.04 => End::Insisted {
            fault,
            words: "seen it often enough".to_owned(),
        },
        0.04..0.10 => End::Outcome {
            outcome: "serviced".to_owned(),
        },
        _ => {
            say(Event::Stated {
                fault: fault.clone(),
                noted: false,
            });
            End::Verdict { fault, danger: false }
        }
    };
    let refuses = say(Event::Ended(end)) < 0.01;
    let (restore, why) = (
        "door_switch".to_owned(),
        "the next customer is waiting".to_owned(),
    );
    say(if refuses {
        Event::KeptOpen { restore, why }
    } else {
        Event::PutBack { restore }
    });
    say(Event::Closed);
    lines
}
