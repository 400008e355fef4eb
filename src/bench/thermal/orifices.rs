//! What the orifices pass, of the gas that comes.
//!
//! # Equations
//!
//! Heat through an orifice goes with the heating value and the square root of pressure over density. So the other gas's
//! orifices, or the other gas through the same ones, take another input by the register's `input_with_other_gas`; and sea
//! level's, high above it, by `input_at_altitude`, where the plate asks for `derated_input_above_2000_ft`.

use super::condition::{Burners, Gas};
use super::fuel::Fuel;
use super::register::worked;
use crate::bench::make::Make;
use crate::trade::{derated_input_above_2000_ft, input_at_altitude, input_with_other_gas};

/// The orifices of a furnace and the gas they get.
#[derive(Clone, Copy, Debug)]
pub struct Orifices {
    /// The gas that comes.
    pub fuel: Fuel,
    /// What the burners take when all is right here, BTU/h.
    pub rated: f64,
    /// What they take at the plate's manifold pressure, BTU/h.
    pub at_plate: f64,
    /// What the flow at the plate's manifold pressure loses on its way, against that of a furnace in order.
    pub loses: f64,
}

impl Orifices {
    /// Those of a furnace.
    pub fn new(make: &Make, gas: &Gas, burners: &Burners) -> Self {
        let (natural, propane) = (Fuel::natural(make.seed), Fuel::propane());
        let choose = |is_propane: bool| if is_propane { propane } else { natural };
        let plate = choose(make.propane);
        let fuel = choose(make.propane != gas.other_gas);
        let sized = choose(make.propane != burners.orifices_of_other_gas);
        let sized_for = if burners.orifices_of_other_gas {
            sized.usual_manifold
        } else {
            make.manifold
        };
        let altitude = make.altitude.clamp(0.0, 10_000.0);
        let rated = worked(
            &derated_input_above_2000_ft::FORMULA,
            [make.input, altitude],
            make.input,
        );
        let through = [
            rated,
            sized_for,
            sized.heating_value,
            sized.specific_gravity,
            make.manifold,
            fuel.heating_value,
            fuel.specific_gravity,
        ];
        let mut at_plate =
            worked(&input_with_other_gas::FORMULA, through, rated) * (1.0 + burners.orifices_large);
        if burners.orifices_not_derated {
            at_plate *= worked(&input_at_altitude::FORMULA, [make.input, altitude], rated) / rated;
        }
        let flow = at_plate / rated * plate.heating_value / fuel.heating_value;
        let loses = flow * flow * fuel.specific_gravity / plate.specific_gravity;
        Self {
            fuel,
            rated,
            at_plate,
            loses,
        }
    }
}
