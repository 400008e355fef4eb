//! Probes on chain, pressure switch and inducer.

use super::door_open;
use crate::bench::electric::{OPEN, shown};
use crate::bench::furnace::Furnace;
use crate::bench::probe::{ReadingProbe, SignProbe};

/// A closed contact or a good wire between two probes, Ω.
const CLOSED: f64 = 0.1;

pub(super) fn reading(name: &str) -> Option<ReadingProbe> {
    chain(name).or_else(|| inducer(name))
}

fn chain(name: &str) -> Option<ReadingProbe> {
    Some(match name {
        "limit_chain_voltage" => |_, run| Some(run.draft.volts.chain.whole),
        "rollout_voltage" => |_, run| Some(run.draft.volts.chain.rollout),
        "pressure_switch_voltage" => |_, run| Some(run.draft.volts.chain.switch),
        "pressure_switch_voltage_at_rest" => |_, run| Some(run.rest.volts.chain.switch),
        "pressure_switch_resistance_bare" => |furnace, _| {
            let welded = furnace.condition.electric.switch.welded;
            Some(shown(if welded { CLOSED } else { OPEN }))
        },
        "limit_voltage_at_dropout" => |_, run| run.fire.map(|fire| fire.limit),
        "rollout_voltage_at_dropout" => |_, run| run.fire.map(|fire| fire.rollout),
        "pressure_switch_voltage_at_dropout" => |_, run| run.fire.map(|fire| fire.switch),
        "limit_temperature" => |_, run| run.limit_opened,
        "rollout_resistance" => |furnace, _| {
            let open = furnace.condition.electric.chain.rollout_open;
            Some(shown(if open { OPEN } else { CLOSED }))
        },
        "limit_resistance_cold" => |furnace, _| {
            let open = furnace.condition.electric.chain.limit_open;
            Some(shown(if open { OPEN } else { CLOSED }))
        },
        _ => return None,
    })
}

fn inducer(name: &str) -> Option<ReadingProbe> {
    Some(match name {
        "inducer_plug_voltage" => |_, run| Some(run.draft.volts.inducer_plug),
        "board_inducer_output" => |_, run| Some(run.draft.volts.inducer_pin),
        // A commanded one runs at what its board asks for, and has no speed on its plate.
        "inducer_speed" => |furnace, run| {
            let turns = run.draft.volts.inducer_turns;
            (!furnace.make.inducer_commanded).then_some(turns * furnace.make.inducer_rpm())
        },
        "inducer_winding" => |furnace, run| {
            let motor = &furnace.condition.electric.inducer;
            Some(shown(motor.winding_ohms(run.sound.inducer_ohms)))
        },
        "inducer_capacitance" => |furnace, run| {
            let left = 1.0 - furnace.condition.electric.inducer.capacitor_lost;
            furnace
                .make
                .inducer_uf
                .map(|label| label * run.sound.capacitor * left)
        },
        _ => return None,
    })
}

pub(super) fn sign(name: &str) -> Option<SignProbe> {
    Some(match name {
        "inducer" => |furnace, run| {
            let volts = &run.draft.volts;
            // A board that begins anew again and again is heard by its relays.
            let chatters = run.resets > 0 && run.burned == 0.0;
            Some(match volts.inducer_turns > 0.0 {
                _ if door_open(furnace) => "silent",
                _ if chatters => "hums",
                true => "runs",
                // A winding without a way through does not even hum.
                false if volts.inducer_plug < HUMS || furnace.condition.electric.inducer.winding_open => {
                    "silent"
                }
                false => "hums",
            })
        },
        "inducer_by_hand" => |furnace, _| {
            let motor = &furnace.condition.electric.inducer;
            Some(match (motor.blocked, motor.seized) {
                (true, _) => "blocked",
                (false, true) => "seized",
                (false, false) => "turns_free",
            })
        },
        "inducer_follows" => |furnace, run| {
            furnace.make.inducer_commanded.then_some(())?;
            let volts = &run.draft.volts;
            let high = run.fire_moment().is_some_and(|moment| moment.volts.stage.told);
            let stays_low = high && furnace.condition.electric.stages.speed_stays_low;
            Some(match volts.inducer_pin > 0.0 {
                false => "not_commanded",
                true if volts.inducer_plug < LIVE => "not_fed",
                true if volts.inducer_turns < FOLLOWS || stays_low => "falls_short",
                true => "follows",
            })
        },
        "inducer_after_cooling" => |furnace, _| Some(if starts(furnace) { "starts" } else { "still_dead" }),
        "draft_fails" => |_, run| {
            let later = run.trial.is_some() || run.lit > 0.0;
            Some(if later { "opens_later" } else { "never_closes" })
        },
        "switch_label" => |furnace, _| {
            let wrong = furnace.condition.electric.switch.wrong;
            Some(if wrong { "wrong_part" } else { "right_part" })
        },
        "limit_opens_when" => |_, run| match (run.rollout_open, run.limit_open_cold, run.limit_opened) {
            (true, ..) => Some("manual_one"),
            (_, true, _) => Some("when_cold"),
            (_, _, Some(_)) => Some("while_firing"),
            _ if run.limit_opened_after => Some("after_the_call"),
            _ => None,
        },
        _ => return None,
    })
}

/// A plug with less than this is not fed as its motor needs it, V.
const LIVE: f64 = 90.0;

/// Share of its speed below which a motor does not do what it is told.
const FOLLOWS: f64 = 0.9;

/// A motor that is fed less than this is not heard, V.
const HUMS: f64 = 30.0;

/// Whether the inducer's motor starts when it is fed as its plate says.
fn starts(furnace: &Furnace) -> bool {
    let motor = &furnace.condition.electric.inducer;
    let turns = motor.speed(1.0, furnace.make.inducer_uf.is_some());
    turns * (1.0 - motor.command_lost) > 0.0
}
