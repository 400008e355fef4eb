//! What no simulated furnace has, and why: whoever asks for it is told that it cannot be taken.

const ONE_STAGE: &str = "every simulated furnace burns on one stage";
const NO_PILOT: &str = "every simulated furnace lights by hot surface or direct spark";
const NO_DATA: &str = "every simulated thermostat calls by R and W";
const NO_TWIN: &str = "every simulated furnace stands alone";
const NO_AMPS: &str = "no simulated inducer has a current on its plate";

/// Names of readings, signs and plate fields, each with the reason.
const ABSENT: &[(&str, &str)] = &[
    ("low_fire_manifold", ONE_STAGE),
    ("second_stage_call", ONE_STAGE),
    ("second_stage_valve", ONE_STAGE),
    ("high_switch_voltage", ONE_STAGE),
    ("stage_problem", ONE_STAGE),
    ("stage_setting", ONE_STAGE),
    ("low_manifold", ONE_STAGE),
    ("pilot_signal", NO_PILOT),
    ("pilot_signal_open", NO_PILOT),
    ("pilot_flame", NO_PILOT),
    ("pilot_kind", NO_PILOT),
    ("pilot_spark", NO_PILOT),
    ("main_after_pilot", NO_PILOT),
    ("thermocouple_place", NO_PILOT),
    ("pilot_safety_chain", NO_PILOT),
    ("data_supply", NO_DATA),
    ("data_wires", NO_DATA),
    ("data_code", NO_DATA),
    ("data_volts", NO_DATA),
    ("phase_voltage", NO_TWIN),
    ("twin_link", NO_TWIN),
    ("twin_boards", NO_TWIN),
    ("twin_state", NO_TWIN),
    ("condensate_pump", "every simulated drain ends at a floor drain"),
    ("inducer_current", NO_AMPS),
    ("inducer_amps", NO_AMPS),
    (
        "vent_pressure",
        "no simulated vent has a test port past its inducer",
    ),
];

/// Why a furnace has no such thing; none where it has.
pub fn reason(name: &str) -> Option<&'static str> {
    ABSENT
        .iter()
        .find_map(|(absent, why)| (*absent == name).then_some(*why))
}

/// Every name of what no simulated furnace has.
pub fn names() -> impl Iterator<Item = &'static str> {
    ABSENT.iter().map(|(name, _)| *name)
}
