//! Each thermal fault shows at gauges and to eyes as the trade says: common practice, where no other source is named.

use proofwalk::bench::condition::Condition;
use proofwalk::bench::faults;
use proofwalk::bench::furnace::{Furnace, Run};
use proofwalk::bench::make::{Make, Taps};
use proofwalk::bench::probe::{self, Printed};

use crate::sound::{furnaces, reading, sign};

/// What is seen of a fault at a furnace.
struct Struck {
    name: &'static str,
    furnace: Furnace,
    run: Run,
}

impl Struck {
    fn is(&self, probe: &str, value: &str) {
        assert_eq!(
            sign(probe, &self.furnace, &self.run),
            Some(value),
            "{probe} of {self}"
        );
    }

    fn number(&self, probe: &str) -> f64 {
        let value = reading(probe, &self.furnace, &self.run);
        value.unwrap_or_else(|| panic!("no {probe} of {self}"))
    }

    /// What the plate says of the stage that is tested, in.w.c.
    fn manifold(&self) -> f64 {
        match probe::plate("manifold").unwrap()(&self.furnace, &self.run) {
            Some(Printed::Number(manifold)) => manifold,
            other => panic!("{other:?} of {self}"),
        }
    }

    fn below(&self, probe: &str, bound: f64) {
        let value = self.number(probe);
        assert!(value < bound, "{probe} {value}, not below {bound}, of {self}");
    }

    fn above(&self, probe: &str, bound: f64) {
        let value = self.number(probe);
        assert!(value > bound, "{probe} {value}, not above {bound}, of {self}");
    }
}

impl std::fmt::Display for Struck {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{} at {:?}", self.name, self.furnace)
    }
}

/// Many furnaces with a fault, at several severities.
fn struck(name: &'static str) -> impl Iterator<Item = Struck> {
    let fault = faults::all().find(|fault| fault.name == name).unwrap();
    let makes = (0..60).map(|seed| (seed, Make::random(seed)));
    // A pilot's sequence is another: see `kinds`.
    let mut some = makes
        .filter(|(_, make)| make.pilot().is_none() && (fault.fits)(make))
        .peekable();
    assert!(some.peek().is_some(), "no furnace can have {name}");
    some.map(move |(seed, make)| {
        let mut condition = Condition::default();
        (fault.strike)(&mut condition, &make, (seed % 5) as f64 / 4.0);
        let furnace = Furnace { make, condition };
        Struck {
            name,
            run: furnace.run(),
            furnace,
        }
    })
}

#[test]
fn weak_draft_opens_the_switch_and_shows_its_cause() {
    let causes = [
        ("inducer_wheel_loose", "inducer_wheel", "loose_or_broken"),
        ("inducer_wheel_dirty", "inducer_wheel", "dirty"),
        ("inducer_gasket", "inducer_housing", "leaks"),
        ("inducer_choke_wrong", "inducer_housing", "port_plugged"),
        ("inducer_port", "inducer_housing", "port_plugged"),
        ("draft_hose", "draft_hoses", "split_or_off"),
        ("draft_hoses_swapped", "draft_hoses", "swapped"),
        ("water_in_hose", "draft_hoses", "wet"),
        ("vent_blocked", "vent_terminals", "blocked"),
        ("vent_obstructed", "vent_inside", "obstructed"),
        ("vent_overlong", "vent_run", "beyond_table"),
        ("vent_sags", "vent_run", "sags"),
        ("intake_blocked", "vent_terminals", "blocked"),
        ("drain_trap_dry", "drain_trap", "dry"),
    ];
    for (name, probe, value) in causes {
        for struck in struck(name) {
            struck.is(probe, value);
            struck.is("full_run", "flame_cuts_out");
            struck.below("draft_at_switch", 1.06 * struck.furnace.make.switch_set_point);
        }
    }
}

#[test]
fn a_switch_that_cannot_feel_stays_open_under_good_draft() {
    for name in ["switch_port_plugged", "reference_plugged"] {
        for struck in struck(name) {
            struck.is("switch_ports", "plugged");
            struck.is("full_run", "flame_cuts_out");
            struck.above("draft_at_switch", struck.furnace.make.switch_set_point + 0.05);
        }
    }
}

#[test]
fn between_housing_and_switch_the_draft_is_lost() {
    for name in ["draft_hose", "water_in_hose"] {
        for struck in struck(name) {
            struck.above("draft_at_housing", 1.15 * struck.furnace.make.switch_set_point);
        }
    }
}

/// The taps decide whether a plugged exchanger shows as weak draft or as strong draft with too little air.
#[test]
fn a_plugged_exchanger_shows_by_the_taps() {
    for struck in struck("primary_sooted") {
        assert_eq!(struck.furnace.make.switch_taps, Taps::AcrossChoke);
        struck.below("draft_at_switch", 1.06 * struck.furnace.make.switch_set_point);
    }
    for name in [
        "primary_sooted_unseen",
        "secondary_plugged_unseen",
        "intake_blocked_unseen",
    ] {
        for struck in struck(name) {
            struck.above("draft_at_switch", 1.15 * struck.furnace.make.switch_set_point);
        }
    }
}

/// A collector before which the way is stopped is pulled beyond three times what closes the switch, and one in order is not:
/// of one stage, since with two the switch is made for low speed, and not across the choke, where a stopped way shows as weak
/// draft. The figure is from memory.
#[test]
fn an_inducer_behind_a_plugged_exchanger_pulls_on_itself() {
    let tells = |make: &Make| make.staging().is_none() && make.switch_taps != Taps::AcrossChoke;
    for furnace in furnaces().filter(|furnace| tells(&furnace.make)) {
        let draft = reading("draft_at_housing", &furnace, &furnace.run()).unwrap();
        assert!(draft < 2.7 * furnace.make.switch_set_point, "{draft} {furnace:?}");
    }
    let plugged = struck("primary_sooted_unseen").filter(|struck| tells(&struck.furnace.make));
    let (mut all, mut told) = (0, 0);
    for struck in plugged {
        all += 1;
        let pulled = struck.number("draft_at_housing");
        told += usize::from(pulled > 3.0 * struck.furnace.make.switch_set_point);
    }
    assert!(all > 10 && told * 10 >= all * 8, "{told} of {all}");
}

/// A slow motor turns slower than its plate; what it draws through, or cannot draw through, does not slow it.
#[test]
fn an_inducers_speed_tells_the_motor_from_what_holds_it_back() {
    let on_line = |struck: &Struck| !struck.furnace.make.inducer_commanded;
    let of_plate = |struck: &Struck| {
        let plate = probe::plate("inducer_rpm").unwrap()(&struck.furnace, &struck.run);
        match plate {
            Some(Printed::Number(plate)) => struck.number("inducer_speed") / plate,
            other => panic!("{other:?} of {struck}"),
        }
    };
    for struck in struck("inducer_weak") {
        assert!(of_plate(&struck) < 0.9, "{struck}");
    }
    for name in ["primary_sooted", "vent_obstructed", "inducer_wheel_loose"] {
        for struck in struck(name).filter(on_line) {
            assert!(of_plate(&struck) > 0.95, "{struck}");
        }
    }
}

#[test]
fn water_in_the_collector_stops_the_furnace() {
    for struck in struck("drain_trap_blocked") {
        struck.is("drain_trap", "blocked");
        struck.is("full_run", "flame_cuts_out");
    }
}

#[test]
fn gas_shows_where_it_is_lost() {
    for struck in struck("gas_turned_off") {
        struck.is("valve_switch", "set_to_off");
        struck.is("flame_after_ignition", "none");
        struck.below("manifold_pressure", 0.05);
        struck.above("inlet_pressure", struck.furnace.make.inlet_min);
    }
    for struck in struck("supply_shut") {
        struck.is("flame_after_ignition", "none");
        struck.below("inlet_pressure_at_rest", 0.05);
    }
    for struck in struck("supply_weak") {
        struck.below("inlet_pressure_at_rest", struck.furnace.make.inlet_min);
    }
    for struck in struck("supply_collapses") {
        struck.above("inlet_pressure_at_rest", struck.furnace.make.inlet_min);
        struck.below("inlet_pressure", struck.furnace.make.inlet_min);
    }
    for struck in struck("regulator_freezes") {
        struck.above("inlet_pressure_at_rest", struck.furnace.make.inlet_min);
        struck.below("inlet_pressure", struck.furnace.make.inlet_min);
        struck.is("flame_after_ignition", "holds");
    }
    for struck in struck("gas_pressure_high") {
        struck.above("inlet_pressure_at_rest", struck.furnace.make.inlet_max);
    }
}

/// Of a valve that fails, the supply is right, its voltage is there, and the manifold is not.
#[test]
fn a_bad_valve_has_gas_before_it_and_none_behind_it() {
    for (name, volts) in [
        ("gas_valve_stays_shut", "valve_voltage_in_trial"),
        ("gas_valve_falls", "valve_voltage_at_dropout"),
    ] {
        for struck in struck(name) {
            struck.above(volts, 20.4);
            struck.above("inlet_pressure", struck.furnace.make.inlet_min);
            struck.below("inlet_pressure", struck.furnace.make.inlet_max);
            struck.below("manifold_pressure", 0.5 * struck.manifold());
        }
    }
    for struck in struck("valve_leaks_through") {
        struck.is("flame_at_end", "lingers");
    }
}

#[test]
fn a_wrong_set_regulator_shows_at_the_manifold() {
    for struck in struck("manifold_set_high") {
        struck.above("manifold_pressure", 1.1 * struck.manifold());
    }
    for struck in struck("manifold_set_low") {
        let plate = struck.manifold();
        struck.below("manifold_pressure", 0.9 * plate);
        struck.above("manifold_pressure", 0.5 * plate);
    }
    for struck in struck("valve_vent_plugged") {
        struck.is("valve_vent", "plugged");
        let share = struck.number("manifold_pressure") / struck.manifold();
        // A supply of propane stands hardly above what its manifold needs, so that there is little to go up to.
        assert!(!(0.93..1.05).contains(&share), "{share} of {struck}");
    }
}

/// Of orifices for another gas the manifold pressure says nothing; the flame and the orifices themselves do.
#[test]
fn wrong_orifices_show_in_themselves_and_in_the_fire() {
    for name in ["propane_on_natural_orifices", "propane_never_converted"] {
        for struck in struck(name) {
            struck.is("orifices", "wrong_gas");
            // Where the first call has rolled out, the next one does not come to its trial.
            if struck.run.trial.is_some() {
                struck.below("manifold_pressure", 1.1 * struck.manifold());
            }
            assert_ne!(
                sign("flame_shape", &struck.furnace, &struck.run),
                Some("blue_drawn_in"),
                "{struck}"
            );
        }
    }
    for struck in struck("natural_on_propane_orifices") {
        struck.is("orifices", "wrong_gas");
        struck.above("manifold_pressure", 0.9 * struck.manifold());
    }
    for name in ["orifices_drilled_out", "orifices_not_derated"] {
        struck(name).for_each(|struck| struck.is("orifices", "wrong_size"));
    }
}

#[test]
fn burners_show_what_keeps_the_flame_away() {
    for struck in struck("igniter_misplaced") {
        struck.is("burners", "igniter_misplaced");
        struck.is("flame_after_ignition", "none");
        struck.above("manifold_pressure", 0.9 * struck.manifold());
    }
    for struck in struck("carryover_bad") {
        struck.is("burners", "out_of_place");
        struck.is("flame_after_ignition", "none");
    }
    for struck in struck("orifice_plugged") {
        struck.is("burners", "plugged");
        struck.is("flame_after_ignition", "none");
    }
    for struck in struck("burners_dirty") {
        struck.is("burners", "plugged");
        struck.is("flame_shape", "yellow_lazy");
        struck.above("flue_gas_co", 50.0);
    }
    struck("flame_lifts").for_each(|struck| struck.is("flame_shape", "lifts"));
}

/// What holds the air back raises the static beyond the plate; what weakens the blower lowers it.
#[test]
fn little_air_shows_by_its_cause() {
    let external = |struck: &Struck| struck.number("return_static") + struck.number("supply_static");
    let held = [
        ("filter_loaded", Some(("filter", "loaded"))),
        ("filter_too_small", Some(("filter", "clean"))),
        ("coil_loaded", None),
        ("return_restricted", None),
        ("supply_restricted", None),
        ("registers_closed", Some(("registers", "some_closed"))),
    ];
    for (name, seen) in held {
        for struck in struck(name) {
            seen.iter().for_each(|(probe, value)| struck.is(probe, value));
            let plate = struck.furnace.make.static_max;
            // On low the blower moves less, and less is lost on the way (fan laws).
            if struck.run.is_tested_on_low() {
                continue;
            }
            assert!(
                external(&struck) > plate,
                "{} over {plate} of {struck}",
                external(&struck)
            );
        }
    }
    let weak = [
        ("blower_wheel_dirty", "blower_wheel", "dirty"),
        ("blower_wheel_loose", "blower_wheel", "loose"),
        ("blower_wheel_backward", "blower_wheel", "backward"),
        ("blower_speed_low", "blower_speed", "too_low"),
    ];
    for (name, probe, value) in weak {
        for struck in struck(name) {
            struck.is(probe, value);
            // What little air low fire asks for, a motor that holds its airflow may still move.
            if struck.furnace.make.staging().is_some() {
                continue;
            }
            struck.is("blower", "weak");
            let plate = struck.furnace.make.static_max;
            assert!(
                external(&struck) < plate,
                "{} under {plate} of {struck}",
                external(&struck)
            );
        }
    }
}

#[test]
fn hot_air_at_the_limit_opens_it_at_its_mark() {
    for name in ["limit_hot_spot", "humidifier_bypass_open"] {
        let opened = struck(name).filter(|struck| struck.run.limit_opened.is_some());
        let mut count = 0;
        for struck in opened {
            let mark = struck.furnace.make.limit_opens;
            // Discs open within some degrees of their marks, and a step of time goes a little beyond.
            struck.above("limit_temperature", mark - 10.0);
            struck.below("limit_temperature", mark + 15.0);
            count += 1;
        }
        assert!(count > 30, "{name} opens {count} limits of 60");
    }
}

#[test]
fn the_room_shows_and_its_air_carries_what_spills() {
    struck("room_starved").for_each(|struck| struck.is("combustion_room", "starved"));
    struck("room_negative").for_each(|struck| struck.is("combustion_room", "starved"));
    for struck in struck("water_heater_spills") {
        struck.is("combustion_room", "spills");
        // BPI-1200 (memory) has 9 ppm as the first level at which its source is looked for.
        struck.above("room_co", 5.0);
    }
}

/// Oxygen that rises as the blower starts is house air: of a small crack there is too little to be told from the drift of a
/// cold start.
#[test]
fn a_crack_lets_house_air_in() {
    for struck in struck("exchanger_cracked") {
        let shift = reading("oxygen_shift", &struck.furnace, &struck.run);
        if let Some(shift) = shift.filter(|_| struck.furnace.condition.thermal.flue.cracked > 0.4) {
            // What presses it through is the blower's static, which goes with the square of the flow (fan laws), and on low
            // that is less.
            let least = 0.1 * struck.furnace.make.low_fire().powi(2);
            assert!(shift > least, "{shift} of {struck}");
        }
        assert_ne!(
            sign("exchanger_look", &struck.furnace, &struck.run),
            Some("nothing_seen"),
            "{struck}"
        );
    }
}

#[test]
fn a_parted_vent_is_seen_on_its_run() {
    struck("vent_parted").for_each(|struck| struck.is("vent_run", "parted"));
}
