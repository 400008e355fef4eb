//! The registries of a mixed library: a handful of entries for every circuit that its trees look at.

use std::fmt::Write;

use super::File;

/// The registries for so many circuits.
pub fn files(circuits: usize) -> Vec<File> {
    let mut files: Vec<File> = [
        ("library.yaml", LIBRARY),
        ("safe-to-start.yaml", GATE),
        ("electric-shock.yaml", DANGER),
        ("registry/plate.yaml", PLATE),
        ("registry/sources.yaml", SOURCES),
        ("registry/cautions.yaml", CAUTIONS),
    ]
    .map(|(name, text)| (name.to_owned(), text.to_owned()))
    .into();
    let mut readings = READINGS.to_owned();
    let mut signs = SIGNS.to_owned();
    let mut parts = "parts:\n".to_owned();
    let mut faults = FAULTS.to_owned();
    let mut restores = "restores:\n".to_owned();
    for circuit in 0..circuits {
        let numbered = |template: &str| template.replace('#', &circuit.to_string());
        readings += &numbered(CIRCUIT_READINGS);
        signs += &numbered(CIRCUIT_SIGN);
        parts += &numbered(CIRCUIT_PART);
        faults += &numbered(CIRCUIT_FAULTS);
        let _ = writeln!(
            restores,
            "  tap_{circuit}: Refit the plug of tap {circuit}, and test it for leaks"
        );
    }
    let registries = [
        ("readings", readings),
        ("signs", signs),
        ("parts", parts),
        ("faults", faults),
        ("restores", restores),
    ];
    files.extend(registries.map(|(name, text)| (format!("registry/{name}.yaml"), text)));
    files
}

const LIBRARY: &str = "\
library: made-to-measure
edition: 2026.1
title: Circuits that nobody built
standing_cautions: [qualified_person]
gate: safe-to-start
dangers:
  Someone got a shock: electric-shock
";

const GATE: &str = "\
tree: safe-to-start
title: Safe to start
status: approved
outcomes: [safe]
start: look
steps:
  look:
    observe: site
    choices:
      sound: safe
      unsound: unsafe
  safe: { return: safe }
  unsafe:
    verdict: not_safe
    because: The site is not sound.
";

const DANGER: &str = "\
tree: electric-shock
title: Someone got a shock
status: approved
start: help
steps:
  help:
    do: Switch off, call for help, and stay with them.
    go: over
  over:
    verdict: not_safe
    because: Someone got a shock.
";

const PLATE: &str = "\
fields:
  gas: { title: Gas on the rating plate, choices: { natural: Natural gas, propane: Propane } }
  rise_min: { title: Lowest temperature rise, unit: °F, difference: true, plausible: 15 °F to 60 °F }
  rise_max: { title: Highest temperature rise, unit: °F, difference: true, plausible: 40 °F to 100 °F }
  manifold: { title: Manifold pressure, unit: in.w.c., plausible: 1 in.w.c. to 12 in.w.c. }
  inlet_min: { title: Lowest supply pressure, unit: in.w.c., plausible: 4 in.w.c. to 12 in.w.c. }
  inlet_max: { title: Highest supply pressure, unit: in.w.c., plausible: 7 in.w.c. to 15 in.w.c. }
order:
  - [rise_min, rise_max]
  - [inlet_min, inlet_max]
";

const SOURCES: &str = "\
sources:
  common_practice: { title: Common practice, kind: practice }
";

const CAUTIONS: &str = "\
cautions:
  qualified_person: { text: Only a qualified person may work on this, source: common_practice }
  gas: { text: 'Test for leaks after every change, and keep flames away', source: common_practice }
  hot_surface: { text: Let it cool before you touch it, source: common_practice }
";

const READINGS: &str = "\
readings:
  supply_air:
    title: Air temperature behind the furnace
    unit: °F
    plausible: 32 °F to 250 °F
    accuracy: 1 °F
    minutes: 4
    source: common_practice
  return_air:
    title: Air temperature in front of the furnace
    unit: °F
    plausible: 32 °F to 120 °F
    accuracy: 1 °F
    minutes: 2
    source: common_practice
  temperature_rise:
    title: Temperature rise
    unit: °F
    difference: true
    worked_out: { formula: temperature_rise, supply: supply_air, return: return_air }
";

const SIGNS: &str = "\
signs:
  site:
    ask: Is the site sound?
    minutes: 1
    values:
      sound: Sound
      unsound: Not sound
  anything_set:
    ask: Was anything set on the way?
    minutes: 1
    values:
      something: Something was
      nothing: Nothing was
";

const FAULTS: &str = "\
faults:
  not_safe: { title: Not safe to start, remedy: shut_down }
  set_right: { title: Out of adjustment, remedy: correct, text: It was set right on the way }
  air_short: { title: Too little air, remedy: correct, text: Open the registers and clean the filter }
  over_fired: { title: Too much gas, remedy: refer, text: Call the gas supplier }
  nothing_found: { title: Nothing found, remedy: none }
";

const CIRCUIT_READINGS: &str = "  supply_#:
    title: Voltage across the terminals of valve #
    unit: V
    plausible: 0 V to 45 V
    accuracy: 1 % + 0.3 V
    minutes: 3
    source: common_practice
    how: |
      Meter on AC volts. One probe on each terminal of valve #,
      while the thermostat calls for heat.
  pressure_#:
    title: Gas pressure at tap #
    unit: in.w.c.
    plausible: 0 in.w.c. to 20 in.w.c.
    accuracy: 1 % + 0.05 in.w.c.
    minutes: 5
    cautions: [gas]
    leaves: [tap_#]
    source: common_practice
    how: Manometer on tap #, valve open, every other appliance off.
  coil_#:
    title: Resistance of the coil of valve #
    unit: ohm
    plausible: 0 ohm to 10000000 ohm
    accuracy: 1 % + 0.2 ohm
    minutes: 4
    source: common_practice
";

const CIRCUIT_SIGN: &str = "  sound_#:
    ask: What do you hear from valve # as the call begins?
    minutes: 1
    values:
      clicks: It clicks
      hums: It hums
      silent: Nothing
";

const CIRCUIT_PART: &str = "  valve_#:
    title: Gas valve #
    proof:
      - supply_#: 20.4 V to 30 V
      - pressure_#: at least plate.inlet_min
      - any:
          - coil_#: above 1000 ohm
          - sound_#: silent
";

const CIRCUIT_FAULTS: &str = "  valve_dead_#: { title: Valve # does not open, remedy: replace valve_# }
  no_supply_#: { title: Valve # gets no voltage, remedy: correct, text: Follow the wires back from valve # }
  blocked_#: { title: Too little gas at tap #, remedy: refer, text: Call the gas supplier }
";
