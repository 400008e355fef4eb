//! What a furnace brings into the house of the heat it is made for.

use super::orifices::Orifices;
use super::shown::Shown;
use crate::bench::make::Make;

/// What a furnace should burn where it stands, BTU/h: its plate's input, after the derating that the code asks for high above the
/// sea.
fn rated(make: &Make) -> f64 {
    Orifices::new(make, &Default::default(), &Default::default()).rated
}

/// Share of its rated heat that comes into the house at a moment: what burns against what should, less what the air had
/// lost before it came to the furnace. None where no air is warmed.
pub fn delivered(make: &Make, shown: &Shown) -> Option<f64> {
    let rise = shown.supply_air - shown.return_air;
    (rise > 1.0).then(|| shown.input / rated(make) * (shown.supply_air - make.indoor) / rise)
}
