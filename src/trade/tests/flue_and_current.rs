//! What must hold of combustion, electricity and condensate whatever the numbers: pairs that undo each other, directions, limits.

use proptest::prelude::*;

use super::air_and_gas::computed;
use super::*;

/// The result's number for numbers in the arguments' units; `None` where they are refused.
fn attempted(name: &str, numbers: &[f64]) -> Option<f64> {
    let formula = formula(name);
    let result = formula.compute(&inputs(formula, numbers)).ok()?;
    Some(result.number_in(formula.result))
}

fn inputs(formula: &Formula, numbers: &[f64]) -> Vec<Quantity> {
    let scales = formula.arguments.iter().map(|argument| argument.scale);
    scales
        .zip(numbers)
        .map(|(scale, &number)| Quantity::new(number, scale))
        .collect()
}

fn warned(name: &str, numbers: &[f64]) -> Vec<&'static str> {
    let formula = formula(name);
    let warnings = formula.warnings(&inputs(formula, numbers)).unwrap();
    warnings.iter().map(|warning| warning.when).collect()
}

fn near(one: f64, other: f64) -> bool {
    (one - other).abs() <= 1e-8 * one.abs().max(other.abs()).max(1.0)
}

/// What goes up and what goes down: the formula, inputs in the middle of its range, and for each of them the sign of the
/// result's slope. Elementary physics.
#[rustfmt::skip] // one formula a line, so that the table reads as a table
const DIRECTIONS: &[(&str, &[f64], &[i8])] = &[
    ("cable_voltage_drop", &[18.0, 50.0, 0.8, 68.0], &[0, 1, 1, 1]),
    ("capacitor_deviation", &[4.8, 5.0], &[1, -1]),
    ("co2_from_o2", &[5.0, 11.9], &[-1, 1]),
    ("co_air_free_from_co2", &[50.0, 9.0, 11.9], &[1, -1, 1]),
    ("combustion_efficiency_natural", &[5.0, 400.0], &[-1, -1]),
    ("combustion_efficiency_natural_from_co2", &[9.0, 400.0], &[1, -1]),
    ("combustion_efficiency_propane", &[5.0, 400.0], &[-1, -1]),
    ("combustion_efficiency_propane_from_co2", &[10.0, 400.0], &[1, -1]),
    ("condensate_natural", &[60_000.0, 60.0], &[1, 1]),
    ("condensate_propane", &[60_000.0, 60.0], &[1, 1]),
    ("condensed_share_natural", &[5.0, 105.0], &[-1, -1]),
    ("condensed_share_propane", &[5.0, 100.0], &[-1, -1]),
    ("copper_resistance", &[10.0, 68.0, 140.0], &[1, -1, 1]),
    ("drain_drop", &[12.0, 0.25], &[1, 1]),
    ("drain_slope", &[3.0, 12.0], &[1, -1]),
    ("excess_air_natural", &[5.0], &[1]),
    ("excess_air_natural_from_co2", &[9.0], &[-1]),
    ("excess_air_propane", &[5.0], &[1]),
    ("excess_air_propane_from_co2", &[10.0], &[-1]),
    ("flame_signal_margin", &[2.4, 0.8], &[1, -1]),
    ("flue_gas_dew_point_natural", &[5.0], &[-1]),
    ("flue_gas_dew_point_propane", &[5.0], &[-1]),
    ("flue_gas_volume_natural", &[80_000.0, 5.0, 300.0, 500.0], &[1, 1, 1, 1]),
    ("flue_gas_volume_propane", &[80_000.0, 5.0, 100.0, 500.0], &[1, 1, 1, 1]),
    ("motor_load", &[5.0, 6.0], &[1, -1]),
    ("net_stack_temperature", &[430.0, 70.0], &[1, -1]),
    ("o2_from_co2", &[9.0, 11.9], &[-1, 1]),
    ("thermistor_beta", &[10_000.0, 77.0, 3_603.0, 122.0], &[1, 1, -1, -1]),
    ("thermistor_resistance", &[60.0, 10_000.0, 3_934.0], &[-1, 1, 1]),
    ("thermistor_resistance_from_curve", &[60.0, 32_651.0, 32.0, 10_000.0, 77.0, 3_603.0, 122.0], &[-1, 1, 1, 1, 1, -1, -1]),
    ("thermistor_resistance_from_table", &[70.0, 12_262.0, 68.0, 7_908.0, 86.0], &[-1, 1, 1, 1, 1]),
    ("thermistor_temperature", &[15_000.0, 10_000.0, 3_934.0], &[-1, 1, 1]),
    ("thermistor_temperature_from_curve", &[15_000.0, 32_651.0, 32.0, 10_000.0, 77.0, 3_603.0, 122.0], &[-1, 1, 1, 1, 1, -1, -1]),
    ("thermistor_temperature_from_table", &[9_814.0, 12_262.0, 68.0, 7_908.0, 86.0], &[-1, 1, 1, 1, 1]),
    ("transformer_apparent_power", &[25.0, 1.2], &[1, 1]),
    ("transformer_load", &[25.0, 1.2, 40.0], &[1, 1, -1]),
    ("transformer_secondary_current", &[40.0, 24.0], &[1, -1]),
    ("trap_depth", &[0.9, 1.0], &[1, 1]),
    ("ultimate_co2", &[5.0, 9.0], &[1, 1]),
    ("winding_temperature", &[10.0, 68.0, 13.0], &[-1, 1, 1]),
    ("wire_resistance", &[18.0, 68.0], &[0, 1]),
];

#[test]
fn results_rise_and_fall_with_their_inputs() {
    for (name, numbers, signs) in DIRECTIONS {
        let middle = computed(name, numbers);
        for (at, &sign) in signs.iter().enumerate().filter(|(_, sign)| **sign != 0) {
            let mut more = numbers.to_vec();
            more[at] *= 1.01;
            let change = computed(name, &more) - middle;
            assert!(
                change * f64::from(sign) > 0.0,
                "{name}: input {at} moves it by {change}"
            );
        }
    }
}

#[test]
fn no_oxygen_is_no_excess_air_and_the_ultimate_carbon_dioxide() {
    for name in ["excess_air_natural", "excess_air_propane"] {
        assert_eq!(computed(name, &[0.0]), 0.0);
    }
    assert_eq!(computed("co2_from_o2", &[0.0, 11.9]), 11.9);
    assert_eq!(computed("o2_from_co2", &[11.9, 11.9]), 0.0);
}

#[test]
fn a_thicker_wire_loses_less() {
    let of = |gauge: i32| computed("wire_resistance", &[f64::from(gauge), 68.0]);
    assert!((0..30).all(|gauge| of(gauge) < of(gauge + 1)));
    // Three gauges double the section, nearly: the rule of thumb of wire tables.
    assert!((of(18) / of(15) - 2.0).abs() < 0.01);
}

#[test]
fn doubtful_flue_gas_is_warned_of() {
    for (name, good, dilute) in [
        ("excess_air_natural", 6.0, 13.0),
        ("excess_air_natural_from_co2", 8.5, 4.0),
        ("excess_air_propane", 6.0, 13.0),
        ("excess_air_propane_from_co2", 9.5, 4.5),
        ("flue_gas_dew_point_natural", 6.0, 13.0),
    ] {
        assert!(warned(name, &[good]).is_empty(), "{name}");
        assert_eq!(warned(name, &[dilute]).len(), 1, "{name}");
    }
    let efficiency = "combustion_efficiency_natural";
    assert!(warned(efficiency, &[5.0, 300.0]).is_empty());
    assert_eq!(
        warned(efficiency, &[5.0, 70.0]),
        ["the flue gas is within 27 °F of its dew point"]
    );
    assert!(warned("thermistor_temperature", &[8_057.0, 10_000.0, 3_934.0]).is_empty());
    assert_eq!(
        warned("thermistor_temperature", &[2_489.0, 10_000.0, 3_934.0]).len(),
        1
    );
}

/// ANSI Z21.47: 400 ppm of air-free carbon monoxide from a vented central furnace. The rest is common practice.
#[test]
fn what_is_unsafe_overloaded_or_misread_is_warned_of() {
    for (name, good, bad) in [
        ("co_air_free", [390.0, 0.0], [410.0, 0.0]),
        ("motor_load", [6.0, 6.0], [6.3, 6.0]),
        ("capacitor_deviation", [4.8, 5.0], [4.6, 5.0]),
        ("drain_slope", [3.0, 12.0], [-1.0, 12.0]),
        ("flame_signal_margin", [2.4, 0.8], [1.2, 0.8]),
        ("total_external_static", [-0.35, 0.3], [-0.35, 75.0]),
        ("temperature_rise", [125.0, 70.0], [330.0, 70.0]),
    ] {
        assert!(warned(name, &good).is_empty(), "{name}");
        assert_eq!(warned(name, &bad).len(), 1, "{name}");
    }
    assert_eq!(warned("transformer_load", &[24.0, 2.0, 40.0]).len(), 1);
    // A current in mA, taken for amperes.
    assert_eq!(warned("capacitance_under_load", &[700.0, 370.0, 60.0]).len(), 1);
}

#[test]
fn a_slip_of_the_unit_or_of_the_point_is_told() {
    let refused = |name: &str, inputs: &[&str]| formula(name).compute_typed(inputs).unwrap_err().message;
    assert_eq!(
        refused("net_stack_temperature", &["430 °F", "-600 °F"]),
        "combustion_air is -600 °F, which is below absolute zero"
    );
    assert_eq!(
        refused("input_from_meter", &["0.5 ft3", "29 s", "10 BTU/ft3"]),
        "heating_value is 10 BTU/ft³, which nothing in this work comes near"
    );
    assert!(refused("co_air_free", &["30 %", "5 %"]).contains("lies outside 0 to 100000 ppm"));
}

/// Published: a chiller maker's table of a 5 kΩ thermistor has 6246 Ω at 20 °C, 5000 at 25 and 4028 at 30. A reading or a row from
/// elsewhere is told.
#[test]
fn a_reading_beyond_the_table_and_a_misread_row_are_warned_of() {
    let rows = [6_246.0, 68.0, 4_028.0, 86.0];
    let by_rows = |reading: f64| {
        warned(
            "thermistor_temperature_from_table",
            &[&[reading], &rows[..]].concat(),
        )
    };
    assert!(by_rows(5_000.0).is_empty());
    assert_eq!(by_rows(4_000.0), ["the resistance lies outside of the two rows"]);
    let by_curve = |reading: f64, middle: f64| {
        let points = [reading, 48_536.0, -4.0, middle, 68.0, 1_244.0, 140.0];
        warned("thermistor_temperature_from_curve", &points)
    };
    assert!(by_curve(5_000.0, 6_246.0).is_empty());
    assert_eq!(
        by_curve(1_000.0, 6_246.0),
        ["the resistance lies outside of the outer points"]
    );
    assert_eq!(
        by_curve(5_000.0, 5_000.0),
        ["the three points bend more than a thermistor does"]
    );
}

/// The latent heat of its water is 9.8 % of the gross heat of natural gas and 7.9 % of propane's (heats of combustion and of
/// evaporation, from any handbook): no dry flue gas keeps it, and the coolest one loses little more.
#[test]
fn dry_flue_gas_loses_its_latent_heat() {
    for (name, most) in [
        ("combustion_efficiency_natural", 90.2),
        ("combustion_efficiency_propane", 92.1),
    ] {
        let coolest = (1..)
            .map(f64::from)
            .find(|&net| attempted(name, &[0.0, net]).is_some());
        let best = computed(name, &[0.0, coolest.unwrap()]);
        assert!((most - 1.5..most).contains(&best), "{name}: {best}");
    }
}

proptest! {
    #[test]
    fn oxygen_and_carbon_dioxide_tell_one_story(o2 in 0.0..14.9_f64, net in 250.0..900.0_f64) {
        for (fuel, analysis) in [
            ("natural", [95.0, 3.2, 0.2, 0.09, 1.0, 0.5]),
            ("propane", [0.0, 0.0, 100.0, 0.0, 0.0, 0.0]),
        ] {
            let ultimate = computed("ultimate_co2_of_gas", &analysis);
            let fresh = o2 / 20.946;
            let co2 = ultimate * (1.0 - fresh) + 0.04 * fresh;
            let excess = format!("excess_air_{fuel}");
            let other = format!("{excess}_from_co2");
            prop_assert!(near(computed(&excess, &[o2]), computed(&other, &[co2])));
            let efficiency = format!("combustion_efficiency_{fuel}");
            let other = format!("{efficiency}_from_co2");
            prop_assert!(near(computed(&efficiency, &[o2, net]), computed(&other, &[co2, net])));
        }
    }

    #[test]
    fn the_short_forms_undo_each_other(o2 in 0.0..14.8_f64, ultimate in 9.0..20.0_f64, co in 0.0..2_000.0_f64) {
        let co2 = computed("co2_from_o2", &[o2, ultimate]);
        prop_assert!(near(computed("o2_from_co2", &[co2, ultimate]), o2));
        prop_assert!(near(computed("ultimate_co2", &[o2, co2]), ultimate));
        let by_co2 = computed("co_air_free_from_co2", &[co, co2, ultimate]);
        prop_assert!(near(by_co2, computed("co_air_free", &[co, o2])));
    }

    #[test]
    fn water_condenses_below_the_dew_point_and_nowhere_else(o2 in 0.0..14.9_f64, away in 0.01..50.0_f64) {
        for fuel in ["natural", "propane"] {
            let dew_point = computed(&format!("flue_gas_dew_point_{fuel}"), &[o2]);
            let share = |at: f64| computed(&format!("condensed_share_{fuel}"), &[o2, at]);
            prop_assert_eq!(share(dew_point + away), 0.0);
            prop_assert!(share(dew_point - away) > 0.0);
        }
    }

    #[test]
    fn windings_and_thermistors_tell_their_temperature(
        cold in 0.5..500.0_f64, cold_at in 0.0..100.0_f64, hot_at in 0.0..300.0_f64, beta in 3_000.0..4_500.0_f64,
    ) {
        let hot = computed("copper_resistance", &[cold, cold_at, hot_at]);
        prop_assert!(near(computed("winding_temperature", &[cold, cold_at, hot]), hot_at));
        let resistance = computed("thermistor_resistance", &[hot_at, 10_000.0, beta]);
        prop_assert!(near(computed("thermistor_temperature", &[resistance, 10_000.0, beta]), hot_at));
        if (hot_at - 77.0).abs() > 10.0 {
            let mut points = [(77.0, 10_000.0), (hot_at, resistance)];
            points.sort_by(|one, other| one.0.total_cmp(&other.0));
            let [(cooler, high), (warmer, low)] = points;
            prop_assert!(near(computed("thermistor_beta", &[high, cooler, low, warmer]), beta));
        }
    }

    /// Published coefficients of a 10 kΩ thermistor, in the manual of a data logger: any three points of that curve lead back to it.
    #[test]
    fn a_table_tells_its_own_thermistor(
        coldest in -40.0..60.0_f64, gaps in (9.0..90.0_f64, 9.0..90.0_f64), share in 0.0..1.0_f64,
    ) {
        let curve = |log: f64| 1.8 / (1.129148e-3 + 2.34125e-4 * log + 8.76741e-8 * log.powi(3)) - 459.67;
        let [cold, middle, warm] = [coldest, coldest + gaps.0, coldest + gaps.0 + gaps.1].map(|at| {
            let (mut low, mut high) = (1.0_f64, 20.0_f64);
            for _ in 0..100 {
                let log = (low + high) / 2.0;
                if curve(log) > at { low = log } else { high = log }
            }
            [low.exp(), at]
        });
        let points = [cold, middle, warm].concat();
        let reading = (cold[0].ln() + share * (warm[0] / cold[0]).ln()).exp();
        let with = |first: f64, rows: &[f64]| [&[first], rows].concat();
        let told = computed("thermistor_temperature_from_curve", &with(reading, &points));
        prop_assert!((told - curve(reading.ln())).abs() < 1e-5, "{told}");
        prop_assert!(near(computed("thermistor_resistance_from_curve", &with(told, &points)), reading));
        let rows = [cold, warm].concat();
        let told = computed("thermistor_temperature_from_table", &with(reading, &rows));
        prop_assert!((cold[1] - 1e-9..=warm[1] + 1e-9).contains(&told), "{told}");
        prop_assert!(near(computed("thermistor_resistance_from_table", &with(told, &rows)), reading));
    }

    #[test]
    fn drains_and_transformers_come_out_even(length in 0.1..200.0_f64, slope in 0.01..12.0_f64, plate in 5.0..200.0_f64) {
        let drop = computed("drain_drop", &[length, slope]);
        prop_assert!(near(computed("drain_slope", &[drop, length]), slope));
        let current = computed("transformer_secondary_current", &[plate, 24.0]);
        prop_assert!(near(computed("transformer_load", &[24.0, current, plate]), 100.0));
        prop_assert!(near(computed("transformer_apparent_power", &[24.0, current]), plate));
    }
}
