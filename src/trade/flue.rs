//! Flue gas, by what an analyser says of it and by what follows from that.
//!
//! A dry sample is a mixture of what burning without excess air leaves and of fresh air. Oxygen tells the share of fresh air,
//! since only fresh air has any; so does carbon dioxide, of which fresh air has next to none. All is for dry combustion air at
//! sea level, burned completely.

use super::atmosphere::{self, RANKINE};
use super::enthalpy::{CARBON_DIOXIDE, LATENT, OXYGEN, WATER, rise, rise_of_inert};
use super::formula::{not_negative, positive};
use super::fuel::{BTU, Burning, CARBON_DIOXIDE_OF_AIR, OXYGEN_OF_AIR};
use super::limits::within;
use super::saturation;
use super::unfit::Unfit;

/// The standard atmosphere at sea level, in Pa.
const SEA_LEVEL: f64 = 101_325.0;
/// psi, in Pa.
const POUND_PER_SQUARE_INCH: f64 = 6_894.757;
/// ft³, in m³.
const CUBIC_FOOT: f64 = 0.028_316_847;
/// The molar gas constant, in J/(mol·K).
const GAS_CONSTANT: f64 = 8.314_463;
/// Oxygen at which a sample says more about the cell than about the flame, in per cent.
const TOO_DILUTE: f64 = 15.0;
/// Oxygen above which a sample may hold air that never was at the burner, in per cent.
const DILUTE: f64 = 12.0;
/// More carbon monoxide than a flame short of air leaves, in ppm.
const MOST_CARBON_MONOXIDE: f64 = 100_000.0;
/// Oxygen in fresh air as an analyser shows it and as the trade's short formulas have it, in per cent.
pub(super) const OXYGEN_AS_READ: f64 = 20.9;
/// What to do about a reading that no flue gas has.
pub(super) const ZERO: &str = "zero the analyser in fresh air outdoors and take the sample again";
const LEAK: &str = "look for air leaking into the probe or the vent, and sample where oxygen is below 15 %";

/// What burned, and how much more air there was than it needed, in moles.
pub(super) struct FlueGas {
    fuel: &'static Burning,
    excess: f64,
}

/// Refuses oxygen that no flue gas has, or that leaves little to be said about the flame; in per cent.
pub(super) fn oxygen_of_a_flame(o2: f64) -> Result<(), Unfit> {
    not_negative(o2, "oxygen", ZERO)?;
    if o2 < TOO_DILUTE {
        return Ok(());
    }
    let message = format!(
        "at {o2} % oxygen the sample is mostly air, and the oxygen cell's error would decide the result"
    );
    Err(Unfit::new(message, LEAK))
}

/// Refuses carbon monoxide that no flame leaves, in ppm.
pub(super) fn carbon_monoxide_of_a_flame(co: f64) -> Result<(), Unfit> {
    not_negative(co, "carbon monoxide", ZERO)?;
    within(co, 0.0, MOST_CARBON_MONOXIDE, "carbon monoxide", "ppm")
}

/// Whether carbon monoxide free of air, in ppm, is more than the standard of central furnaces lets one leave.
pub(super) fn is_unsafe(co_air_free: f64) -> bool {
    co_air_free > 400.0
}

/// Refuses carbon dioxide that a gas cannot give, or that leaves little to be said about the flame; all in per cent.
pub(super) fn carbon_dioxide_of_a_flame(co2: f64, ultimate: f64) -> Result<(), Unfit> {
    positive(co2, "carbon dioxide")?;
    if co2 > ultimate {
        return Err(Unfit::new(
            format!("{co2} % is more carbon dioxide than this fuel can give, which is {ultimate:.1} %"),
            "check which fuel burns and which one the analyser is set to, and take the sample again",
        ));
    }
    if fresh_by_carbon_dioxide(co2 / 100.0, ultimate / 100.0) < TOO_DILUTE / 100.0 / OXYGEN_OF_AIR {
        return Ok(());
    }
    let message =
        format!("at {co2} % carbon dioxide the sample is mostly air, and its error would decide the result");
    Err(Unfit::new(message, LEAK))
}

/// Refuses an ultimate carbon dioxide that no fuel has, in per cent.
pub(super) fn ultimate_of_a_fuel(ultimate: f64) -> Result<(), Unfit> {
    if (5.0..=OXYGEN_AS_READ).contains(&ultimate) {
        return Ok(());
    }
    Err(Unfit::new(
        format!("{ultimate:.1} % is the ultimate carbon dioxide of no fuel"),
        "about 11.9 % is natural gas, 13.8 % propane; check both readings, or the fuel",
    ))
}

/// Whether oxygen, in per cent, is so high that the sample may hold air that never was at the burner.
pub(super) fn is_dilute(o2: f64) -> bool {
    o2 > DILUTE
}

/// The flow of flue gas in CFM, for an input in BTU/h, its temperature in °F and the altitude in ft.
pub(super) fn flow(flue: &FlueGas, input: f64, temperature: f64, altitude: f64) -> Result<f64, Unfit> {
    positive(input, "the input")?;
    within(temperature, 32.0, 1_000.0, "the flue temperature", "°F")?;
    let pressure = atmosphere::pressure(altitude)? * POUND_PER_SQUARE_INCH;
    let kelvin = (temperature + RANKINE) / 1.8;
    Ok(input * BTU * flue.volume(kelvin, pressure) / 60.0 / CUBIC_FOOT)
}

/// The share of fresh air in a dry sample.
fn fresh_by_carbon_dioxide(co2: f64, ultimate: f64) -> f64 {
    (ultimate - co2) / (ultimate - CARBON_DIOXIDE_OF_AIR)
}

impl FlueGas {
    /// By oxygen in the dry sample, in per cent.
    pub(super) fn from_oxygen(fuel: &'static Burning, o2: f64) -> Result<Self, Unfit> {
        oxygen_of_a_flame(o2)?;
        Ok(Self::with_fresh(fuel, o2 / 100.0 / OXYGEN_OF_AIR))
    }

    /// By carbon dioxide in the dry sample, in per cent.
    pub(super) fn from_carbon_dioxide(fuel: &'static Burning, co2: f64) -> Result<Self, Unfit> {
        let ultimate = fuel.ultimate_carbon_dioxide();
        carbon_dioxide_of_a_flame(co2, 100.0 * ultimate)?;
        Ok(Self::with_fresh(
            fuel,
            fresh_by_carbon_dioxide(co2 / 100.0, ultimate),
        ))
    }

    fn with_fresh(fuel: &'static Burning, share: f64) -> Self {
        let excess = fuel.dry() * share / (1.0 - share);
        Self { fuel, excess }
    }

    /// How much more air there was than the gas needed, in per cent of what it needed.
    pub(super) fn excess_air(&self) -> f64 {
        100.0 * self.excess / self.fuel.air
    }

    /// Oxygen in the dry flue gas, in per cent.
    pub(super) fn oxygen(&self) -> f64 {
        100.0 * OXYGEN_OF_AIR * self.excess / self.dry()
    }

    /// The temperature at which water begins to condense, in kelvin.
    pub(super) fn dew_point(&self) -> f64 {
        let water = self.fuel.water;
        saturation::temperature(SEA_LEVEL * water / (water + self.dry()))
    }

    /// The share of its water that has condensed where it has settled at a temperature, in kelvin.
    pub(super) fn condensed(&self, temperature: f64) -> f64 {
        1.0 - self.vapour(temperature, SEA_LEVEL) / self.fuel.water
    }

    /// How much room it takes for each J of the gas's heat where it has settled at a temperature, in kelvin, under a pressure,
    /// in Pa: in m³.
    pub(super) fn volume(&self, temperature: f64, pressure: f64) -> f64 {
        let moles = self.dry() + self.vapour(temperature, pressure);
        moles * GAS_CONSTANT * temperature / pressure / self.fuel.heat
    }

    /// The water that is still vapour at a temperature, in kelvin, under a pressure, in Pa.
    fn vapour(&self, temperature: f64, pressure: f64) -> f64 {
        let water = self.fuel.water;
        if temperature >= saturation::temperature(pressure * water / (water + self.dry())) {
            return water;
        }
        let saturated = saturation::pressure(temperature) / pressure;
        self.dry() * saturated / (1.0 - saturated)
    }

    /// The share of the heat that it carries away when it leaves `net` kelvin warmer than the air came, all water as vapour.
    pub(super) fn lost(&self, net: f64) -> f64 {
        let fuel = self.fuel;
        let nitrogen = fuel.nitrogen + (1.0 - OXYGEN_OF_AIR) * self.excess;
        let carried = fuel.carbon_dioxide * rise(&CARBON_DIOXIDE, net)
            + fuel.water * (rise(&WATER, net) + LATENT)
            + nitrogen * rise_of_inert(net)
            + OXYGEN_OF_AIR * self.excess * rise(&OXYGEN, net);
        carried / fuel.heat
    }

    fn dry(&self) -> f64 {
        self.fuel.dry() + self.excess
    }
}
