//! What must hold of air, gas, combustion air and venting whatever the numbers: pairs that undo each other, and directions.

use proptest::prelude::*;

use super::*;

/// The result's number for numbers in the arguments' units.
#[track_caller]
pub(super) fn computed(name: &str, numbers: &[f64]) -> f64 {
    let formula = formula(name);
    let scales = formula.arguments.iter().map(|argument| argument.scale);
    let inputs: Vec<Quantity> = scales
        .zip(numbers)
        .map(|(scale, &number)| Quantity::new(number, scale))
        .collect();
    match formula.compute(&inputs) {
        Ok(result) => result.number_in(formula.result),
        Err(unfit) => panic!("{name} {numbers:?}: {unfit}"),
    }
}

fn near(one: f64, other: f64) -> bool {
    (one - other).abs() <= 1e-9 * one.abs().max(other.abs())
}

/// What goes up and what goes down: the formula, inputs in the middle of its range, and for each of them the sign of the
/// result's slope. Elementary physics, and the codes' proportions.
#[rustfmt::skip] // one formula a line, so that the table reads as a table
const DIRECTIONS: &[(&str, &[f64], &[i8])] = &[
    ("air_density", &[4_000.0, 80.0], &[-1, -1]),
    ("airflow_from_rise", &[64_000.0, 50.0, 4_000.0, 70.0], &[1, -1, 1, 1]),
    ("standard_airflow_from_rise", &[64_000.0, 50.0], &[1, -1]),
    ("fan_airflow_at_speed", &[1_000.0, 1_000.0, 1_100.0], &[1, -1, 1]),
    ("fan_pressure_at_speed", &[0.5, 1_000.0, 1_100.0], &[1, -1, 1]),
    ("fan_power_at_speed", &[400.0, 1_000.0, 1_100.0], &[1, -1, 1]),
    ("fan_power_at_airflow", &[400.0, 1_000.0, 1_100.0], &[1, -1, 1]),
    ("static_at_airflow", &[0.5, 1_000.0, 1_100.0], &[1, -1, 1]),
    ("duct_friction_rate", &[400.0, 10.0, 0.0003], &[1, -1, 1]),
    ("available_friction_rate", &[0.6, 0.2, 300.0], &[1, -1, -1]),
    ("equivalent_round_diameter", &[12.0, 8.0], &[1, 1]),
    ("gas_volume_correction", &[7.0, 50.0, 4_000.0], &[1, -1, -1]),
    ("input_from_uncompensated_meter", &[2.0, 70.0, 1_000.0, 7.0, 50.0, 4_000.0], &[1, -1, 1, 1, -1, -1]),
    ("timing_error", &[40.0, 0.5], &[-1, 1]),
    ("input_deviation", &[80_000.0, 80_000.0], &[1, -1]),
    ("orifice_flow", &[0.042, 3.5, 0.6, 0.75], &[1, 1, -1, 1]),
    ("orifice_diameter_for_input", &[80_000.0, 4.0, 1_000.0, 3.5, 0.6, 0.75], &[1, 0, -1, -1, 1, -1]),
    ("converted_orifice_diameter", &[0.08, 3.5, 1_000.0, 0.6, 11.0, 2_500.0, 1.5], &[1, 1, 1, -1, -1, -1, 1]),
    ("converted_manifold_pressure", &[3.5, 0.08, 1_000.0, 0.6, 0.05, 2_500.0, 1.5], &[1, 1, 1, -1, -1, -1, 1]),
    ("input_with_other_gas", &[80_000.0, 3.5, 1_000.0, 0.6, 11.0, 2_500.0, 1.5], &[1, -1, -1, 1, 1, 1, -1]),
    ("derated_input_from_sea_level", &[80_000.0, 5_000.0], &[1, -1]),
    ("derated_input_above_2000_ft", &[80_000.0, 5_000.0], &[1, -1]),
    ("input_at_altitude", &[80_000.0, 5_000.0], &[1, -1]),
    ("gas_pipe_capacity_natural", &[0.75, 50.0, 0.5], &[0, -1, 1]),
    ("gas_pipe_capacity_propane", &[0.75, 50.0, 0.5], &[0, -1, 1]),
    ("gas_pipe_pressure_drop_natural", &[0.75, 50.0, 100.0], &[0, 1, 1]),
    ("gas_pipe_pressure_drop_propane", &[0.75, 50.0, 100.0], &[0, 1, 1]),
    ("room_volume_standard", &[80_000.0], &[1]),
    ("room_volume_known_infiltration", &[40_000.0, 80_000.0, 0.3], &[1, 1, -1]),
    ("opening_between_rooms", &[200_000.0], &[1]),
    ("opening_between_storeys", &[80_000.0], &[1]),
    ("opening_outdoors_direct", &[80_000.0], &[1]),
    ("opening_outdoors_horizontal", &[80_000.0], &[1]),
    ("opening_outdoors_single", &[200_000.0, 20.0], &[1, 0]),
    ("combustion_air_mechanical", &[80_000.0], &[1]),
    ("louver_area", &[30.0, 60.0], &[1, -1]),
    ("louver_area_metal", &[30.0], &[1]),
    ("louver_area_wood", &[30.0], &[1]),
    ("theoretical_draft", &[20.0, 30.0, 300.0, 2_000.0], &[1, -1, 1, -1]),
    ("connector_length_by_diameter", &[6.0], &[1]),
    ("connector_length_single_wall", &[20.0], &[1]),
    ("connector_length_double_wall", &[20.0], &[1]),
    ("connector_rise", &[12.0], &[1]),
];

/// Sizes of pipe, nominal, and the next smaller one.
const PIPES: [f64; 11] = [0.25, 0.375, 0.5, 0.75, 1.0, 1.25, 1.5, 2.0, 2.5, 3.0, 4.0];

proptest! {
    #[test]
    fn results_rise_and_fall_as_they_must(lower in 0.85..1.1_f64, step in 1.001..1.1_f64) {
        for &(name, middle, slopes) in DIRECTIONS {
            for (at, &slope) in slopes.iter().enumerate().filter(|(_, slope)| **slope != 0) {
                let mut numbers = middle.to_vec();
                numbers[at] *= lower;
                let before = computed(name, &numbers);
                numbers[at] *= step;
                let rose = computed(name, &numbers) - before;
                prop_assert!(rose * f64::from(slope) > 0.0, "{name}: argument {at}, {rose}");
            }
        }
    }

    #[test]
    fn an_orifice_found_for_an_input_gives_it(
        input in 1e3..2e5_f64, orifices in 1..8_i32, heating_value in 900.0..2_600.0_f64,
        pressure in 1.0..14.0_f64, gravity in 0.5..2.0_f64,
    ) {
        let orifices = f64::from(orifices);
        let diameter = computed(
            "orifice_diameter_for_input",
            &[input, orifices, heating_value, pressure, gravity, 0.9],
        );
        let flow = computed("orifice_flow", &[diameter, pressure, gravity, 0.9]);
        prop_assert!(near(flow * orifices * heating_value, input));
    }

    #[test]
    fn a_drill_found_for_its_own_input_is_itself(drill in 1..=80_i32, pressure in 1.0..14.0_f64) {
        let drill = f64::from(drill);
        let flow = computed("orifice_flow_by_drill", &[drill, pressure, 0.6, 0.9]);
        let found = computed("orifice_drill_for_input", &[flow * 1_000.0, 1.0, 1_000.0, pressure, 0.6, 0.9]);
        prop_assert_eq!(found, drill);
    }

    #[test]
    fn a_conversion_gives_the_input_it_promises_and_goes_back(
        diameter in 0.02..0.12_f64, pressure in 2.0..5.0_f64, new_pressure in 8.0..12.0_f64,
        value in 950.0..1_100.0_f64, new_value in 2_400.0..2_600.0_f64,
        gravity in 0.55..0.7_f64, new_gravity in 1.45..1.6_f64,
    ) {
        let new_diameter = computed(
            "converted_orifice_diameter",
            &[diameter, pressure, value, gravity, new_pressure, new_value, new_gravity],
        );
        let heat = |diameter, pressure, gravity, value| {
            computed("orifice_flow", &[diameter, pressure, gravity, 0.9]) * value
        };
        prop_assert!(near(
            heat(diameter, pressure, gravity, value),
            heat(new_diameter, new_pressure, new_gravity, new_value),
        ));
        let back = computed(
            "converted_manifold_pressure",
            &[pressure, diameter, value, gravity, new_diameter, new_value, new_gravity],
        );
        prop_assert!(near(back, new_pressure));
    }

    #[test]
    fn a_pipe_takes_the_drop_its_capacity_was_asked_for(
        size in 0..PIPES.len(), length in 5.0..300.0_f64, drop in 0.1..6.0_f64,
    ) {
        for fuel in ["natural", "propane"] {
            let flow = computed(&format!("gas_pipe_capacity_{fuel}"), &[PIPES[size], length, drop]);
            let back = computed(&format!("gas_pipe_pressure_drop_{fuel}"), &[PIPES[size], length, flow]);
            prop_assert!(near(back, drop), "{back} {drop}");
        }
    }

    #[test]
    fn a_pipe_is_large_enough_and_no_larger(flow in 20.0..20_000.0_f64, length in 5.0..200.0_f64) {
        for fuel in ["natural", "propane"] {
            let size = formula(&format!("gas_pipe_size_{fuel}"));
            let typed = [format!("{flow} ft3/h"), format!("{length} ft"), "0.5 in.w.c.".to_owned()];
            // A load that no pipe of the table carries is refused, and that is tested with the reference values.
            let Ok(size) = size.compute_typed(&typed.each_ref().map(String::as_str)) else { continue };
            let size = size.number_in(Scale::of(Unit::Inch));
            let at = PIPES.iter().position(|nominal| near(*nominal, size)).unwrap();
            let carries = |at: usize| computed(&format!("gas_pipe_capacity_{fuel}"), &[PIPES[at], length, 0.5]);
            prop_assert!(carries(at) >= flow * (1.0 - 1e-9));
            prop_assert!(at == 0 || carries(at - 1) < flow);
        }
    }

    #[test]
    fn air_carries_the_heat_its_flow_was_worked_out_from(
        output in 2e4..2e5_f64, rise in 20.0..80.0_f64, altitude in 0.0..10_000.0_f64, warm in 50.0..140.0_f64,
    ) {
        let flow = computed("airflow_from_rise", &[output, rise, altitude, warm]);
        let density = computed("air_density", &[altitude, warm]);
        prop_assert!(near(60.0 * 0.24 * flow * density * rise, output));
    }

    /// The law for the power is the product of the other two.
    #[test]
    fn fan_laws_belong_together(speed in 300.0..1_500.0_f64, new_speed in 300.0..1_500.0_f64) {
        let airflow = computed("fan_airflow_at_speed", &[1.0, speed, new_speed]);
        let pressure = computed("fan_pressure_at_speed", &[1.0, speed, new_speed]);
        let power = computed("fan_power_at_speed", &[1.0, speed, new_speed]);
        prop_assert!(near(power, airflow * pressure));
        prop_assert!(near(pressure, computed("static_at_airflow", &[1.0, 1.0, airflow])));
        prop_assert!(near(power, computed("fan_power_at_airflow", &[1.0, 1.0, airflow])));
    }

    /// Two readings of one rule: above 2000 ft they lie 8 % of the plate apart, and physics asks for less than either.
    #[test]
    fn the_altitude_rules_keep_their_distance(altitude in 2_000.0..10_000.0_f64) {
        let from_sea_level = computed("derated_input_from_sea_level", &[1.0, altitude]);
        let above_2000_ft = computed("derated_input_above_2000_ft", &[1.0, altitude]);
        prop_assert!(near(above_2000_ft - from_sea_level, 0.08));
        prop_assert!(computed("input_at_altitude", &[1.0, altitude]) > from_sea_level);
    }

    #[test]
    fn a_duct_is_as_wide_as_it_is_high(width in 4.0..30.0_f64, flat in 1.0..8.0_f64) {
        let height = width / flat;
        let one = computed("equivalent_round_diameter", &[width, height]);
        prop_assert!(near(one, computed("equivalent_round_diameter", &[height, width])));
        // Friction wants more wall than section: the round duct is the smaller one.
        prop_assert!(std::f64::consts::PI / 4.0 * one.powi(2) < width * height);
    }
}

/// Machinery's Handbook, 31st edition, table 2 of tap drills; drills 1, 7 and 80 as machinists' charts print them.
#[test]
fn drills_have_the_diameters_of_the_machinists_table() {
    for (drill, diameter) in [
        (1.0, 0.2280),
        (7.0, 0.2010),
        (42.0, 0.0935),
        (43.0, 0.0890),
        (44.0, 0.0860),
        (45.0, 0.0820),
        (46.0, 0.0810),
        (47.0, 0.0785),
        (49.0, 0.0730),
        (50.0, 0.0700),
        (53.0, 0.0595),
        (80.0, 0.0135),
    ] {
        let by_drill = computed("orifice_flow_by_drill", &[drill, 3.5, 0.6, 0.9]);
        let by_diameter = computed("orifice_flow", &[diameter, 3.5, 0.6, 0.9]);
        assert!(near(by_drill, by_diameter), "drill {drill}");
    }
}

#[test]
fn every_drill_of_a_larger_number_is_smaller() {
    let flow = |drill: i32| computed("orifice_flow_by_drill", &[f64::from(drill), 3.5, 0.6, 0.9]);
    for drill in 1..80 {
        assert!(flow(drill) > flow(drill + 1), "drill {drill}");
    }
}

/// One case in the units of two systems; the factors are those of the table of units.
#[test]
fn inputs_may_be_metric() {
    for (name, inches, metric) in [
        ("air_density", &["5000 ft", "68 °F"][..], &["1524 m", "20 °C"][..]),
        (
            "orifice_flow",
            &["0.05 in", "3.5 in.w.c.", "0.6", "0.9"],
            &["1.27 mm", "870.94 Pa", "0.6", "0.9"],
        ),
        (
            "gas_pipe_capacity_natural",
            &["0.75 in", "50 ft", "0.5 in.w.c."],
            &["19.05 mm", "15.24 m", "124.42 Pa"],
        ),
        (
            "theoretical_draft",
            &["20 ft", "32 °F", "302 °F", "0 ft"],
            &["6.096 m", "0 °C", "150 °C", "0 m"],
        ),
    ] {
        let one = formula(name).compute_typed(inches).unwrap().base();
        let other = formula(name).compute_typed(metric).unwrap().base();
        assert!((one - other).abs() < 1e-9 * one.abs(), "{name}: {one} {other}");
    }
}

/// Each formula's example is fine or not, and each warning is given on its own side of its line.
#[test]
fn warnings_are_given_where_they_belong() {
    for (name, inputs, warned) in [
        ("airflow_from_rise", &["64000", "19", "0", "70"][..], 1),
        ("airflow_from_rise", &["64000", "20", "0", "70"], 0),
        ("standard_airflow_from_rise", &["64000", "19"], 1),
        ("standard_airflow_from_rise", &["64000", "40"], 0),
        ("fan_airflow_at_speed", &["1000", "400", "900"], 1),
        ("fan_airflow_at_speed", &["1000", "1000", "900"], 0),
        ("fan_pressure_at_speed", &["0.5", "1000", "400"], 1),
        ("fan_pressure_at_speed", &["0.5", "1000", "600"], 0),
        ("fan_power_at_speed", &["400", "400", "900"], 2),
        ("fan_power_at_speed", &["400", "1000", "900"], 0),
        ("fan_power_at_airflow", &["400", "1000", "1100"], 1),
        ("fan_power_at_airflow", &["400", "1000", "900"], 0),
        ("static_at_airflow", &["0.5", "1000", "2100"], 1),
        ("static_at_airflow", &["0.5", "1000", "1900"], 0),
        ("duct_friction_rate", &["500", "10", "0.0003"], 1),
        ("duct_friction_rate", &["480", "10", "0.0003"], 0),
        ("available_friction_rate", &["0.50", "0.33", "300"], 1),
        ("available_friction_rate", &["0.50", "0.26", "300"], 0),
        ("available_friction_rate", &["0.80", "0.20", "300"], 1),
        ("equivalent_round_diameter", &["25", "6"], 1),
        ("equivalent_round_diameter", &["24", "6"], 0),
        (
            "input_from_uncompensated_meter",
            &["1", "24", "1000", "7", "60", "0"],
            1,
        ),
        (
            "input_from_uncompensated_meter",
            &["1", "25", "1000", "7", "60", "0"],
            0,
        ),
        ("timing_error", &["22", "0.5"], 1),
        ("input_from_meter", &["20", "29", "1000"], 1),
        ("input_from_meter", &["0.25", "120", "1000"], 1),
        ("input_at_manifold_pressure", &["80000", "7", "3.5"], 1),
        ("input_at_manifold_pressure", &["80000", "2.5", "3.5"], 1),
        ("input_at_manifold_pressure", &["80000", "3.5", "3.5"], 0),
        ("drill_for_diameter", &["0.089"], 0),
        ("drill_for_diameter", &["0.0575"], 1),
        ("timing_error", &["26", "0.5"], 0),
        ("input_deviation", &["84100", "80000"], 1),
        ("input_deviation", &["84000", "80000"], 0),
        ("input_deviation", &["75900", "80000"], 1),
        (
            "orifice_drill_for_input",
            &["80000", "4", "1000", "3.5", "0.60", "0.9"],
            1,
        ),
        (
            "orifice_drill_for_input",
            &["2220", "1", "1000", "3.5", "0.60", "0.9"],
            0,
        ),
        (
            "input_with_other_gas",
            &["80000", "3.5", "1000", "0.6", "3.5", "2500", "1.5"],
            1,
        ),
        (
            "input_with_other_gas",
            &["80000", "3.5", "1000", "0.6", "3.5", "1020", "0.6"],
            0,
        ),
        ("derated_input_from_sea_level", &["80000", "2000"], 1),
        ("derated_input_from_sea_level", &["80000", "2100"], 0),
        ("derated_input_above_2000_ft", &["80000", "2100"], 1),
        ("derated_input_above_2000_ft", &["80000", "2000"], 0),
        ("input_at_altitude", &["80000", "2100"], 1),
        ("input_at_altitude", &["80000", "1000"], 0),
        ("gas_pipe_capacity_natural", &["0.5", "20", "4"], 1),
        ("gas_pipe_capacity_natural", &["0.5", "20", "0.5"], 0),
        ("gas_pipe_capacity_propane", &["0.5", "20", "4"], 1),
        ("gas_pipe_size_natural", &["100", "20", "4"], 1),
        ("gas_pipe_size_propane", &["100", "20", "4"], 1),
        ("gas_pipe_pressure_drop_natural", &["0.5", "20", "400"], 1),
        ("gas_pipe_pressure_drop_natural", &["0.5", "20", "100"], 0),
        ("gas_pipe_pressure_drop_propane", &["0.5", "20", "300"], 1),
        ("theoretical_draft", &["20", "60", "50", "0"], 1),
        ("theoretical_draft", &["20", "60", "300", "0"], 0),
    ] {
        let formula = formula(name);
        let inputs: Vec<Quantity> = (inputs.iter().zip(formula.arguments))
            .map(|(number, argument)| Quantity::new(number.parse().unwrap(), argument.scale))
            .collect();
        let given = formula.warnings(&inputs).unwrap();
        assert_eq!(given.len(), warned, "{name} {inputs:?}: {given:?}");
    }
}
