//! The measurements that name a part where nothing else tells it from its neighbours show what the trade says of them (common
//! practice).

use proofwalk::bench::make::{Link, Make};
use proofwalk::bench::probe::{Printed, plate};

use crate::kinds::{sound, struck};
use crate::sound::{reading, sign};

#[test]
fn a_look_or_a_trial_tells_the_part_from_what_drives_it() {
    for (fault, looked_at, shown) in [
        // In the board's place, a motor's own tester tells the two apart.
        ("board_no_blower_command", "blower_on_tester", "runs"),
        ("blower_airflow_module", "blower_on_tester", "stays_still"),
        ("commanded_inducer", "inducer_follows", "falls_short"),
        // Only a stage that is open follows its own screw.
        ("second_stage_valve_stuck", "high_fire_screw", "stays"),
        ("low_fire_set_high", "high_fire_screw", "follows"),
        ("inducer_stays_on_low", "inducer_goes_high", "stays"),
        ("second_stage_draft", "inducer_goes_high", "rises"),
        ("second_stage_draft", "high_switch_look", "right"),
        // With nothing on its terminal a board sees what it makes up itself, and no leaking rod.
        ("board_sees_false_flame", "flame_without_rod", "still_seen"),
        ("false_flame_signal", "flame_without_rod", "not_seen"),
    ] {
        for (furnace, run) in struck(fault) {
            let seen = sign(looked_at, &furnace, &run);
            assert_eq!(seen, Some(shown), "{looked_at} of {fault}: {furnace:?}");
        }
    }
}

#[test]
fn a_good_rod_proves_a_pilot_only_where_its_own_was_the_reason() {
    let by_rod = |fault| {
        struck(fault)
            .filter(|(furnace, run)| sign("pilot_flame", furnace, run) == Some("goes_out"))
            .map(|(furnace, run)| sign("pilot_good_rod", &furnace, &run))
            .collect::<Vec<_>>()
    };
    let proved = by_rod("pilot_not_proved");
    assert!(proved.len() > 5 && proved.iter().all(|seen| *seen == Some("proved")));
    // Swapped wires leave nothing between any rod and ground.
    assert!(
        by_rod("polarity_reversed")
            .iter()
            .all(|seen| *seen == Some("not_proved"))
    );
}

/// Draft goes with the square of the inducer's speed (fan laws): low speed does not come to the second switch's set point.
#[test]
fn the_second_switch_has_its_draft_on_high_speed_alone() {
    let beyond_label = |fault: Option<&str>| -> Vec<f64> {
        let furnaces: Vec<_> = match fault {
            Some(fault) => struck(fault).collect(),
            None => sound(|make| make.staging().is_some()).collect(),
        };
        let of = furnaces.iter().map(|(furnace, run)| {
            let label = plate("high_switch_set_point").unwrap()(furnace, run).unwrap();
            let Printed::Number(label) = label else {
                panic!("{label:?}")
            };
            reading("high_draft", furnace, run).unwrap() - label
        });
        of.collect()
    };
    assert!(beyond_label(None).iter().all(|beyond| *beyond > 0.05));
    assert!(
        beyond_label(Some("second_stage_draft"))
            .iter()
            .all(|beyond| *beyond > 0.05)
    );
    assert!(
        beyond_label(Some("inducer_stays_on_low"))
            .iter()
            .all(|beyond| *beyond < -0.05)
    );
}

#[test]
fn the_cabinets_ground_is_measured_apart_from_the_burners() {
    for (furnace, run) in struck("burner_ground_bad") {
        assert!(reading("burner_ground", &furnace, &run).unwrap() > 1.0);
        assert!(reading("equipment_ground", &furnace, &run).unwrap() < 1.0);
    }
    for (furnace, run) in struck("ground_lost") {
        assert!(reading("equipment_ground", &furnace, &run).unwrap() > 1.0);
    }
}

/// A relay that is fed and does not pass has the call's voltage across its contact, and a good one nothing.
#[test]
fn a_relay_between_twins_answers_at_coil_and_contact() {
    let kit = |make: &Make| make.link() == Some(Link::Kit);
    for (furnace, run) in struck("twin_kit_dead") {
        assert!(reading("twin_kit_coil", &furnace, &run).unwrap() >= 20.4);
        assert!(reading("twin_kit_contact", &furnace, &run).unwrap() >= 20.4);
    }
    let good: Vec<_> = sound(kit).collect();
    assert!(!good.is_empty());
    for (furnace, run) in good {
        assert!(reading("twin_kit_contact", &furnace, &run).unwrap() < 2.0);
    }
}

/// Read in the worst of the same flame, a new rod gives no more than the old one where it is the flame that stands off.
#[test]
fn a_good_rod_does_not_mend_a_flame_that_lifts() {
    let mut lifted = 0;
    for (furnace, run) in struck("flame_lifts") {
        let of = |name| reading(name, &furnace, &run);
        let (Some(own), Some(good)) = (of("flame_current"), of("flame_current_good_rod")) else {
            continue;
        };
        assert!((good - own).abs() < 0.1 * own, "{own} {good} {furnace:?}");
        lifted += 1;
    }
    assert!(lifted > 3, "{lifted}");
}
