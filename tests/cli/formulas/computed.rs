//! What a formula comes to, in whose units, and how far it is to be trusted.

use super::{computes, formula, refuses};

#[test]
fn a_result_stands_in_the_system_of_its_inputs() {
    computes(
        "temperature_rise supply=128°F return=68°F",
        "temperature_rise = 60 °F (33.33 °C)",
    );
    computes(
        "temperature_rise supply=50°C return=20°C",
        "temperature_rise = 30 °C (54 °F)",
    );
    computes(
        "temperature_rise supply=50°C return=68°F",
        "temperature_rise = 54 °F (30 °C)",
    );
    computes(
        "temperature_rise supply=50°C return=20°C --units us",
        "temperature_rise = 54 °F (30 °C)",
    );
    computes(
        "total_external_static return=-90Pa supply=75Pa",
        "total_external_static = 165 Pa (0.6631 in.w.c.)",
    );
    computes(
        "total_external_static return=0.35in.w.c. supply=0.30inwc",
        "total_external_static = 0.65 in.w.c. (161.7 Pa)",
    );
    computes("co_air_free co=87ppm o2=5%", "co_air_free = 114.4 ppm");
    // Who asks for °C may have meant them.
    let said = computes(
        "temperature_rise supply=50 return=20°C --units si",
        "temperature_rise = -10 °C (-18 °F)",
    );
    let warning = "Warning: supply is taken in °F, since no unit was given.";
    assert!(said.contains(warning), "{said}");
}

#[test]
fn what_was_understood_is_said() {
    let said = computes(
        "capacitance_under_load current=1050 mA voltage=370",
        "capacitance_under_load = 7.528 µF",
    );
    for line in [
        "  current = 1050 mA (1.05 A)\n",
        "  voltage = 370 V, given without a unit, so taken as V\n",
        "  frequency = 60 Hz, not given, so taken as usual: the supply of North America\n",
        "Caution: Line voltage",
    ] {
        assert!(said.contains(line), "{line}\n{said}");
    }
    let said = computes(
        "temperature_rise supply= -3 F return= -5 F",
        "temperature_rise = 2 °F (1.111 °C)",
    );
    assert!(said.contains("  supply = -3 °F\n"), "{said}");
}

/// The low-pressure equation of the fuel gas code, worked outside: 119 ft³/h.
#[test]
fn a_pipe_is_asked_for_by_its_size() {
    let said = computes(
        "gas_pipe_capacity_natural size=1/2 in length=20 ft pressure_drop=0.5 in.w.c.",
        "gas_pipe_capacity_natural = 118.9 ft³/h (3.368 m³/h)",
    );
    assert!(said.contains("  size = 0.5 in\n"), "{said}");
    refuses(
        "gas_pipe_capacity_natural size=1/3in length=20ft pressure_drop=0.5",
        "proofwalk: size: `1/3in` is a fraction\n  help: write it with a point: `0.3333`",
    );
}

/// Of what length a result is, is said beside its number; sizes and falls are taken as metric tables have them.
#[test]
fn metric_figures_are_those_of_metric_tables() {
    let said = computes(
        "drain_drop length=3m slope=20mm/m",
        "drain_drop = 60 mm (2.362 in)",
    );
    assert!(said.contains("  slope = 6.096 mm (0.24 in)\n"), "{said}");
    computes(
        "drain_drop length=10ft slope=2%",
        "drain_drop = 2.4 in (60.96 mm)",
    );
    // 1.25 in in 10 ft are 1/8 in in a foot, a share of 1/96.
    computes(
        "drain_slope drop=1.25in length=10ft",
        "drain_slope = 0.125 in per ft (10.42 mm per m)",
    );
    computes(
        "available_friction_rate external_static=125Pa losses=65Pa length=60m",
        "available_friction_rate = 1 Pa per m (0.1225 in.w.c. per 100 ft)",
    );
    let said = computes(
        "gas_pipe_size_natural flow=3m3/h length=18m pressure_drop=125Pa",
        "gas_pipe_size_natural = DN 20 (0.75 in)",
    );
    assert!(said.contains("  flow = 3 m³/h ("), "{said}");
    computes(
        "gas_pipe_capacity_natural size=DN20 length=60ft pressure_drop=0.5",
        "gas_pipe_capacity_natural = 137.4 ft³/h (3.89 m³/h)",
    );
    refuses(
        "gas_pipe_capacity_natural size=21mm length=60ft pressure_drop=0.5",
        "proofwalk: no steel pipe has the nominal size 0.8268 in\n  \
         help: give one of 0.25, 0.375, 0.5, 0.75, 1, 1.25, 1.5, 2, 2.5, 3 and 4 in, or DN 8 to DN 100",
    );
    computes(
        "temperature_rise supply=50°C±0.5K return=20°C",
        "temperature_rise = 30 °C ± 0.5 °C (54 °F ± 0.9 °F)",
    );
}

#[test]
fn a_result_that_is_to_be_trusted_less_says_so() {
    let said = computes(
        "input_from_meter dial=0.5 time=18 heating_value=1000",
        "input_from_meter = 100000 BTU/h (29.31 kW)",
    );
    let warning = "Warning: the time is below 25 s: half a second is more than 2 % of it";
    assert!(said.contains(warning), "{said}");
    // Arithmetic: 18 s against 17.5 s are 2.9 %.
    let slip = "Slip: 0.5 s more or less of time moves it by up to 2857 BTU/h (0.8373 kW), 2.9 % of it: ";
    assert!(
        said.split_whitespace()
            .collect::<Vec<_>>()
            .join(" ")
            .contains(slip),
        "{said}"
    );
    let said = formula("input_from_meter dial=0.5 time=25 heating_value=1000")
        .exits(0)
        .out;
    assert!(!said.contains("Warning"), "{said}");
}

#[test]
fn accuracies_make_an_uncertainty() {
    let first = "temperature_rise = 60 °F ± 2 °F (33.3 °C ± 1.2 °C)";
    computes("temperature_rise supply=128°F±1°F return=68±1", first);
    computes("temperature_rise supply=128+-1 return=68+/-1F", first);
    let said = computes(
        "temperature_rise supply=128 return=68 --accuracy supply=±1F --accuracy return=1",
        first,
    );
    assert!(
        said.contains("  supply = 128 °F ± 1 °F, given without a unit"),
        "{said}"
    );
    assert!(said.contains("± is at worst: "), "{said}");
    // 0.5 points of oxygen at 14.8 % reach 15.3 %, where the formula gives nothing.
    let said = computes("co_air_free co=50 o2=14.8±0.5", "co_air_free = 171.3 ppm");
    assert!(said.contains("± cannot be told: "), "{said}");
}
