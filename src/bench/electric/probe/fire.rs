//! Probes on igniter, valve and flame signal.

use crate::bench::electric::condition::Ground;
use crate::bench::electric::{OPEN, Spark, shown};
use crate::bench::furnace::Furnace;
use crate::bench::make::Pilot;
use crate::bench::probe::{ReadingProbe, SignProbe};

pub(super) fn reading(name: &str) -> Option<ReadingProbe> {
    igniter(name).or_else(|| valve(name)).or_else(|| flame(name))
}

fn igniter(name: &str) -> Option<ReadingProbe> {
    Some(match name {
        "igniter_voltage" => |furnace, run| {
            let moment = run.warm_up.unwrap_or(run.end);
            (!furnace.make.spark).then_some(moment.volts.glow.plug)
        },
        "board_igniter_output" => |furnace, run| {
            let moment = run.warm_up.unwrap_or(run.end);
            (!furnace.make.spark).then_some(moment.volts.igniter_pin)
        },
        "igniter_resistance" => |furnace, run| {
            let ohms = furnace.condition.electric.igniter.cold_ohms(&run.sound.element);
            (!furnace.make.spark).then_some(shown(ohms))
        },
        "igniter_current" => |furnace, run| {
            let moment = run.warm_up.unwrap_or(run.end);
            (!furnace.make.spark).then_some(moment.volts.glow.amps)
        },
        _ => return None,
    })
}

fn valve(name: &str) -> Option<ReadingProbe> {
    Some(match name {
        "valve_voltage_in_trial" => |_, run| Some(run.trial.unwrap_or(run.end).volts.valve),
        "board_valve_output_in_trial" => |_, run| Some(run.trial.unwrap_or(run.end).volts.valve_pin),
        "valve_voltage_at_dropout" => |_, run| match run.dropout {
            Some(dropout) => Some(dropout.valve),
            None => run.steady.map(|steady| steady.volts.valve),
        },
        "board_valve_output_at_dropout" => |_, run| recorded(run.fire?.valve_pin),
        _ => return None,
    })
}

fn flame(name: &str) -> Option<ReadingProbe> {
    Some(match name {
        "flame_current" => |furnace, run| {
            has_rod(furnace).then_some(())?;
            recorded(run.fire?.flame_current)
        },
        "flame_current_good_rod" => |furnace, run| {
            has_rod(furnace).then_some(())?;
            let electric = &furnace.condition.electric;
            let volts = &run.fire_moment()?.volts;
            let driven = volts.line.board > 0.0 && !electric.board.no_sensing;
            let sensing = electric.sensing.with_good_rod();
            let returned = electric.line.flame_return();
            // Recorded like the first rod's: in the worst of the same flame.
            let current = sensing.current(run.sound.flame_current, run.fire?.bathed, returned);
            Some(if driven { current } else { 0.0 })
        },
        "standing_flame_signal" => |_, run| Some(run.draft.volts.flame_current),
        // The higher of burners to cabinet and cabinet to the supply's ground.
        "burner_ground" => |furnace, run| {
            let electric = &furnace.condition.electric;
            let joint = run.sound.joint_ohms + electric.sensing.ground_ohms;
            Some(shown(joint.max(electric.line.ground_ohms())))
        },
        "sensor_lead_resistance" => |furnace, run| {
            let lead = furnace.condition.electric.sensing.lead_ohms;
            Some(shown(run.sound.lead_ohms + lead))
        },
        "sensor_insulation" => |furnace, _| Some(furnace.condition.electric.sensing.insulation()),
        "sensor_supply_voltage" => |furnace, run| {
            let electric = &furnace.condition.electric;
            let lead = electric.sensing.lead_ohms < OPEN && !electric.board.no_sensing;
            let grounded = electric.line.ground != Ground::Lost;
            let line = match grounded {
                true => run.rest.volts.line.hot_to_ground,
                false => run.rest.volts.line.hot_to_ground * run.sound.stray,
            };
            Some(if lead {
                run.sound.sensing_volts * line / 120.0
            } else {
                0.0
            })
        },
        _ => return None,
    })
}

/// Whether a rod watches its flame: over a standing pilot a thermocouple does.
fn has_rod(furnace: &Furnace) -> bool {
    furnace.make.pilot() != Some(Pilot::Standing)
}

/// A lowest value, where anything was recorded.
fn recorded(lowest: f64) -> Option<f64> {
    lowest.is_finite().then_some(lowest)
}

/// What a technician sees on a rod: a coating from a share of the signal on that it takes.
const COATED: f64 = 0.1;

/// A rod is seen to stand out of the flame with this share of it outside.
const OUTSIDE: f64 = 0.3;

pub(super) fn sign(name: &str) -> Option<SignProbe> {
    Some(match name {
        "igniter_connector" => |furnace, _| {
            let bad = furnace.condition.electric.igniter.plug_ohms > 0.0;
            Some(if bad { "bad_connection" } else { "sound" })
        },
        "spark_gap" => |furnace, _| {
            let spark = furnace.condition.electric.igniter.spark;
            // At the burners, or at a pilot that is lit on each call.
            let sparks = furnace.make.spark && furnace.make.pilot() != Some(Pilot::Standing);
            sparks.then_some(match spark {
                Spark::Sound | Spark::Source => "right",
                Spark::Gap => "gap_wrong",
                Spark::Cracked => "cracked",
                Spark::Lead => "lead_bad",
            })
        },
        "sensor_rod" => |furnace, _| {
            let sensing = &furnace.condition.electric.sensing;
            Some(match sensing.cracked {
                true => "cracked",
                false if sensing.bent > OUTSIDE => "out_of_flame",
                false if sensing.coated > COATED => "coated",
                false => "clean_in_flame",
            })
        },
        _ => return None,
    })
}
