//! Warnings that several formulas give.

use super::fan::stretched;
use super::flue::{is_dilute, is_unsafe};
use super::warning::Warning;

/// Of a sample whose oxygen stands first: it may not all come from the burner.
pub(super) const DILUTE: Warning = Warning {
    when: "oxygen is above 12 %",
    reason: "the sample may hold air that never was at the burner",
    help: "look for leaks at the probe and the joints, and sample before any draft hood",
    applies: |numbers, _| is_dilute(numbers[0]),
};

/// Of carbon monoxide free of air: more than a furnace may leave.
pub(super) const UNSAFE: Warning = Warning {
    when: "it is above 400 ppm",
    reason: "a vented central furnace may not leave more",
    help: "shut it down, and let nobody use it until it is known why and put right",
    applies: |_, co| is_unsafe(co),
};

/// Of a fan whose old and new speeds stand second and third.
pub(super) const STRETCHED_BY_SPEED: Warning = Warning {
    when: "the new speed is below half or above twice the old",
    reason: "the fan laws are stretched",
    help: "measure at the new speed",
    applies: |numbers, _| stretched(numbers[1], numbers[2]),
};

/// Of a fan whose old and new airflows stand second and third.
pub(super) const STRETCHED_BY_AIRFLOW: Warning = Warning {
    when: "the new airflow is below half or above twice the old",
    reason: "the fan laws are stretched",
    help: "measure at the new airflow",
    applies: |numbers, _| stretched(numbers[1], numbers[2]),
};

/// Of gas pipe whose pressure drop stands third.
pub(super) const STARVING: Warning = Warning {
    when: "more than 3 in.w.c. are lost",
    reason: "appliances at the end of the pipe may starve",
    help: "size for 0.3 to 0.5 in.w.c. in low-pressure pipe (common practice)",
    applies: |numbers, _| numbers[2] > 3.0,
};

/// Of an airflow whose temperature rise stands second.
pub(super) const SMALL_RISE: Warning = Warning {
    when: "the rise is below 20 °F",
    reason: "two thermometers that are each off by a degree move the result by a tenth and more",
    help: "check both probes at steady state, and check the input",
    applies: |numbers, _| numbers[1] < 20.0,
};
