//! How much flue gas leaves a furnace on natural gas, as warm as it leaves.
//!
//! # Equation
//!
//! `volume = input * (dry + excess + vapour) * gas_constant * (flue_temperature + 459.67) / barometer / gross heating
//! value`, where burning the gas leaves `dry`, oxygen tells `excess`, and `vapour` is the water that has not condensed,
//! all in moles.
//!
//! # Arguments
//!
//! - `input`, BTU/h: what the burner takes, as clocked at the meter or on the rating plate.
//! - `o2`, %: oxygen in dry flue gas, before any dilution air.
//! - `flue_temperature`, °F: of the flue gas where its volume is wanted.
//! - `altitude`, ft: above sea level.
//!
//! # Range
//!
//! Oxygen from 0 to below 15 %: above, little flue gas is left in the sample. Flue gas from 32 to 1,000 °F, complete
//! combustion of dry air; altitude as for `air_density`. Below the dew point, what has condensed is taken out, as
//! evenly cooled flue gas has it. Air that a draft hood or a leak adds comes on top. It sizes no vent: the maker's
//! tables and the local code do.
//!
//! # Warnings
//!
//! - Where oxygen is above 12 %: the sample may hold air that never was at the burner; look for leaks at the probe and
//!   the joints, and sample before any draft hood.
//!
//! # Example
//!
//! Computed: 100,000 BTU/h at 5 % of oxygen and 300 °F.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::flue_gas_volume_natural::FORMULA;
//! let volume = formula.compute_typed(&["100000 BTU/h", "5 %", "300 °F", "0 ft"])?;
//! assert_eq!(volume.display(formula.result).digits(4).to_string(), "31.97 CFM");
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - Stoichiometry of complete combustion with dry air, and the ideal gas law.
//! - A gas distributor's published typical analysis of natural gas: 95 % methane, 3.2 % ethane.
//! - Heats of combustion: ISO 6976 (memory).
//! - IAPWS-IF97, revised release of 2007, equations 30 and 31: the saturation line of water.
//! - 40 CFR 75, appendix F, table 1: dry flue gas for each million BTU.
//! - 40 CFR 60, appendix A-7, method 19, table 19-2: wet flue gas for each million BTU (memory).

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::flue::{self, FlueGas};
use super::formula::{Formula, each};
use super::fuel;
use super::group::Group;
use super::warning::Warning;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "flue_gas_volume_natural",
    group: Group::Venting,
    sentence: "How much flue gas leaves a furnace on natural gas, as warm as it leaves.",
    equation: "volume = input * (dry + excess + vapour) * gas_constant * (flue_temperature + 459.67) / \
               barometer / gross heating value",
    arguments: &[
        Argument::new(
            "input",
            Scale::of(Unit::BtuPerHour),
            "what the burner takes, as clocked at the meter or on the rating plate",
        ),
        Argument::new(
            "o2",
            Scale::of(Unit::Percent),
            "oxygen in dry flue gas, before any dilution air",
        ),
        Argument::new(
            "flue_temperature",
            Scale::of(Unit::DegreeFahrenheit),
            "of the flue gas where its volume is wanted",
        ),
        Argument::new("altitude", Scale::of(Unit::Foot), "above sea level"),
    ],
    result: Scale::of(Unit::CubicFootPerMinute),
    range: "Oxygen from 0 to below 15 %: above, little flue gas is left in the sample. Flue gas from 32 to \
            1,000 °F, complete combustion of dry air; altitude as for `air_density`. Below the dew point, \
            what has condensed is taken out, as evenly cooled flue gas has it. Air that a draft hood or a \
            leak adds comes on top. It sizes no vent: the maker's tables and the local code do.",
    warnings: &[Warning {
        when: "oxygen is above 12 %",
        reason: "the sample may hold air that never was at the burner",
        help: "look for leaks at the probe and the joints, and sample before any draft hood",
        applies: |numbers, _| flue::is_dilute(numbers[1]),
    }],
    example: &["100000 BTU/h", "5 %", "300 °F", "0 ft"],
    references: &[
        "Stoichiometry of complete combustion with dry air, and the ideal gas law.",
        "A gas distributor's published typical analysis of natural gas: 95 % methane, 3.2 % ethane.",
        "Heats of combustion: ISO 6976 (memory).",
        "IAPWS-IF97, revised release of 2007, equations 30 and 31: the saturation line of water.",
        "40 CFR 75, appendix F, table 1: dry flue gas for each million BTU.",
        "40 CFR 60, appendix A-7, method 19, table 19-2: wet flue gas for each million BTU (memory).",
    ],
    compute: |numbers| {
        let [input, o2, temperature, altitude] = each(numbers);
        let flue = FlueGas::from_oxygen(&fuel::NATURAL, o2)?;
        flue::flow(&flue, input, temperature, altitude)
    },
};
