//! What no simulated furnace has, and why: whoever asks for it is told that it cannot be taken.

const NO_DATA: &str = "every simulated thermostat calls by R and W";
const NO_AMPS: &str = "no simulated inducer has a current on its plate";

/// Names of readings, signs and plate fields, each with the reason.
const ABSENT: &[(&str, &str)] = &[
    ("data_supply", NO_DATA),
    ("data_wires", NO_DATA),
    ("data_code", NO_DATA),
    ("data_volts", NO_DATA),
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
