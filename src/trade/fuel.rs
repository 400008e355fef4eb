//! What fuel gases are made of, and what burning them takes and leaves.
//!
//! Natural gas is no one gas. The analysis here is one that an Ontario gas distributor published as typical of its system
//! ("Chemical Composition of Natural Gas", in moles: methane 95.0 %, ethane 3.2, propane 0.2, butanes and heavier 0.09,
//! nitrogen 1.0, carbon dioxide 0.5). Over the gases that the same source calls usual, the ultimate carbon dioxide, the
//! efficiency and the excess air move by about 0.2 points each. Propane is taken as pure.
//!
//! Heats of combustion: ISO 6976, ideal gas at 25 °C, water condensed (memory; held against the enthalpies of GRI-Mech 3.0
//! in the checks). Dry air: oxygen 20.946 % (standard atmosphere), carbon dioxide 0.04 %, the rest nitrogen and argon.

/// The share of oxygen in dry air.
pub(super) const OXYGEN_OF_AIR: f64 = 0.209_46;
/// The share of carbon dioxide in dry air.
pub(super) const CARBON_DIOXIDE_OF_AIR: f64 = 0.0004;

/// The mass of a mole of water, in kg.
const WATER_MOLE: f64 = 0.018_015;
/// The density of water at room temperature, in kg/m³.
const WATER_DENSITY: f64 = 998.0;
/// The BTU, in J.
pub(super) const BTU: f64 = 1_055.056;
/// The US gallon, in m³.
const GALLON: f64 = 3.785_412e-3;

/// What a gas is made of, in moles or in any other measure of volume.
pub(super) struct Gas {
    /// CH4.
    pub methane: f64,
    /// C2H6.
    pub ethane: f64,
    /// C3H8.
    pub propane: f64,
    /// C4H10, and heavier.
    pub butanes: f64,
    /// N2.
    pub nitrogen: f64,
    /// CO2.
    pub carbon_dioxide: f64,
}

/// What burning a gas completely takes and leaves, with no more air than it needs, in moles.
pub(super) struct Burning {
    /// Dry air that it takes.
    pub air: f64,
    /// Carbon dioxide that it leaves, with what came in the gas and in the air.
    pub carbon_dioxide: f64,
    /// Nitrogen and argon that it leaves.
    pub nitrogen: f64,
    /// Water that it leaves.
    pub water: f64,
    /// Heat that it sets free, the water condensed, in J.
    pub heat: f64,
}

/// Natural gas.
pub(super) static NATURAL: Burning = Gas {
    methane: 95.0,
    ethane: 3.2,
    propane: 0.2,
    butanes: 0.09,
    nitrogen: 1.0,
    carbon_dioxide: 0.5,
}
.burning();

/// Propane.
pub(super) static PROPANE: Burning = Gas {
    methane: 0.0,
    ethane: 0.0,
    propane: 1.0,
    butanes: 0.0,
    nitrogen: 0.0,
    carbon_dioxide: 0.0,
}
.burning();

impl Gas {
    /// What burning it takes and leaves.
    pub(super) const fn burning(&self) -> Burning {
        // A paraffin of n carbon atoms takes (3 n + 1) / 2 of oxygen and leaves n of carbon dioxide and n + 1 of water.
        let paraffins = self.methane + self.ethane + self.propane + self.butanes;
        let carbon = self.methane + 2.0 * self.ethane + 3.0 * self.propane + 4.0 * self.butanes;
        let oxygen = (3.0 * carbon + paraffins) / 2.0;
        let air = oxygen / OXYGEN_OF_AIR;
        let carbon_dioxide = carbon + self.carbon_dioxide + CARBON_DIOXIDE_OF_AIR * air;
        Burning {
            air,
            carbon_dioxide,
            nitrogen: self.nitrogen + (1.0 - OXYGEN_OF_AIR - CARBON_DIOXIDE_OF_AIR) * air,
            water: carbon + paraffins,
            heat: 890_630.0 * self.methane
                + 1_560_690.0 * self.ethane
                + 2_219_170.0 * self.propane
                + 2_877_400.0 * self.butanes,
        }
    }
}

impl Burning {
    /// The dry flue gas that it leaves.
    pub(super) const fn dry(&self) -> f64 {
        self.carbon_dioxide + self.nitrogen
    }

    /// The share of carbon dioxide in the dry flue gas: the most that this gas can give.
    pub(super) const fn ultimate_carbon_dioxide(&self) -> f64 {
        self.carbon_dioxide / self.dry()
    }

    /// How many gallons of water it leaves for each BTU of its heat.
    pub(super) const fn gallons_of_water_per_btu(&self) -> f64 {
        let kilograms_per_joule = self.water * WATER_MOLE / self.heat;
        kilograms_per_joule * BTU / WATER_DENSITY / GALLON
    }
}
