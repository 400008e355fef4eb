//! How much heat warm gases carry.
//!
//! Heat capacities as the polynomials in temperature of NASA (McBride, Gordon and Reno, NASA TM-4513, 1993) in the coefficients
//! that GRI-Mech 3.0 publishes for 300 to 1000 K. What they give is held against the equations of state of another library.

/// The temperature that heats of combustion are stated for, and from which warmth is counted: 25 °C, in kelvin.
pub(super) const REFERENCE: f64 = 298.15;
/// The heat that a mole of water gives off when it condenses at 25 °C, in J: 2441.7 kJ/kg, IAPWS.
pub(super) const LATENT: f64 = 43_990.0;
/// The molar gas constant, in J/(mol K); exact in the SI, here to six digits.
const GAS_CONSTANT: f64 = 8.314_46;

/// A molar heat capacity over the gas constant: the factors of 1, T, T², T³ and T⁴.
pub(super) type Capacity = [f64; 5];

/// CO2.
pub(super) const CARBON_DIOXIDE: Capacity = [
    2.356_773_52,
    8.984_596_77e-3,
    -7.123_562_69e-6,
    2.459_190_22e-9,
    -1.436_995_48e-13,
];
/// H2O, as vapour.
pub(super) const WATER: Capacity = [
    4.198_640_56,
    -2.036_434_1e-3,
    6.520_402_11e-6,
    -5.487_970_62e-9,
    1.771_978_17e-12,
];
/// N2.
const NITROGEN: Capacity = [
    3.298_677,
    1.408_240_4e-3,
    -3.963_222e-6,
    5.641_515e-9,
    -2.444_854e-12,
];
/// O2.
pub(super) const OXYGEN: Capacity = [
    3.782_456_36,
    -2.996_734_16e-3,
    9.847_302_01e-6,
    -9.681_295_09e-9,
    3.243_728_37e-12,
];

/// Argon, which has no more than any gas of single atoms.
const ARGON: Capacity = [2.5, 0.0, 0.0, 0.0, 0.0];
/// The share of argon in what air has beside oxygen and carbon dioxide.
const ARGON_OF_INERT: f64 = 0.0118;

/// The heat that warms a mole of the nitrogen and argon of air by `net` kelvin from the reference temperature, in J.
pub(super) fn rise_of_inert(net: f64) -> f64 {
    (1.0 - ARGON_OF_INERT) * rise(&NITROGEN, net) + ARGON_OF_INERT * rise(&ARGON, net)
}

/// The heat that warms a mole by `net` kelvin from the reference temperature, in J.
pub(super) fn rise(capacity: &Capacity, net: f64) -> f64 {
    GAS_CONSTANT * (integral(capacity, REFERENCE + net) - integral(capacity, REFERENCE))
}

fn integral(capacity: &Capacity, temperature: f64) -> f64 {
    let terms = capacity.iter().zip([1.0, 2.0, 3.0, 4.0, 5.0]).rev();
    terms.fold(0.0, |sum, (factor, power)| (sum + factor / power) * temperature)
}
