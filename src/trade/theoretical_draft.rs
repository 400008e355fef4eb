//! The draft that a standing column of warm vent gas makes, before any friction.
//!
//! # Equation
//!
//! `draft = 0.2554 * barometer * height * (1 / (outdoor + 459.67) - 1 / (vent_gas + 459.67))`, in in.w.c., inHg, ft
//! and °F; the barometer is that of the standard atmosphere, see `air_density`.
//!
//! # Arguments
//!
//! - `height`, ft: of the vent above the flue collar or draft hood.
//! - `outdoor`, °F: of the air outdoors.
//! - `vent_gas`, °F: of the gas in the vent, the mean over its height.
//! - `altitude`, ft: above sea level.
//!
//! # Range
//!
//! Vents up to 200 ft, outdoor air from -60 to 130 °F, vent gas from -60 to 1,000 °F; altitude as for `air_density`.
//! Vent gas is taken to weigh as much as air of its temperature. What is left at the appliance is less: friction,
//! turns, wind and a house under suction take from it. The local code and the maker's instructions govern.
//!
//! # Warnings
//!
//! - Where the draft is not above zero: the vent does not draw, and flue gas may come into the room; shut the
//!   appliance down until it is known why the vent is cold.
//!
//! # Example
//!
//! Computed: 20 ft of vent gas at 300 °F make 0.111 in.w.c. at 30 °F outdoors.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::theoretical_draft::FORMULA;
//! let draft = formula.compute_typed(&["20 ft", "30 °F", "300 °F", "0 ft"])?;
//! assert_eq!((draft.number_in(formula.result) * 1e3).round(), 111.0);
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - ASHRAE Handbook, HVAC Systems and Equipment, chapter Chimney, Vent, and Fireplace Systems: 0.2554 (memory).
//! - Steam: Its Generation and Use: theoretical draft of a stack.

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::atmosphere::{INCH_MERCURY_PER_PSI, RANKINE, pressure};
use super::formula::{Formula, each, positive};
use super::group::Group;
use super::limits::within;
use super::warning::Warning;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "theoretical_draft",
    group: Group::Venting,
    sentence: "The draft that a standing column of warm vent gas makes, before any friction.",
    equation: "draft = 0.2554 * barometer * height * (1 / (outdoor + 459.67) - 1 / (vent_gas + 459.67))",
    arguments: &[
        Argument::new(
            "height",
            Scale::of(Unit::Foot),
            "of the vent above the flue collar or draft hood",
        ),
        Argument::new(
            "outdoor",
            Scale::of(Unit::DegreeFahrenheit),
            "of the air outdoors",
        ),
        Argument::new(
            "vent_gas",
            Scale::of(Unit::DegreeFahrenheit),
            "of the gas in the vent, the mean over its height",
        ),
        Argument::new("altitude", Scale::of(Unit::Foot), "above sea level"),
    ],
    result: Scale::of(Unit::InchWaterColumn),
    range: "Vents up to 200 ft, outdoor air from -60 to 130 °F, vent gas from -60 to 1,000 °F; altitude as \
            for `air_density`. Vent gas is taken to weigh as much as air of its temperature. What is left \
            at the appliance is less: friction, turns, wind and a house under suction take from it. The \
            local code and the maker's instructions govern.",
    warnings: &[Warning {
        when: "the draft is not above zero",
        reason: "the vent does not draw, and flue gas may come into the room",
        help: "shut the appliance down until it is known why the vent is cold",
        applies: |_, draft| draft <= 0.0,
    }],
    example: &["20 ft", "30 °F", "300 °F", "0 ft"],
    references: &[
        "ASHRAE Handbook, HVAC Systems and Equipment, chapter Chimney, Vent, and Fireplace Systems: 0.2554 \
         (memory).",
        "Steam: Its Generation and Use: theoretical draft of a stack.",
    ],
    compute: |numbers| {
        let [height, outdoor, vent_gas, altitude] = each(numbers);
        positive(height, "the height")?;
        within(height, 0.0, 200.0, "the height", "ft")?;
        within(outdoor, -60.0, 130.0, "the temperature outdoors", "°F")?;
        within(vent_gas, -60.0, 1000.0, "the temperature of the vent gas", "°F")?;
        let lighter = 1.0 / (outdoor + RANKINE) - 1.0 / (vent_gas + RANKINE);
        Ok(0.2554 * pressure(altitude)? * INCH_MERCURY_PER_PSI * height * lighter)
    },
};
