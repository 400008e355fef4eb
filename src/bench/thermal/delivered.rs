//! What a furnace brings into the house of the heat it is made for.

use super::orifices::Orifices;
use super::shown::Shown;
use crate::bench::make::Make;

/// Share of its rated heat that comes into the house at a moment: what burns against what should, less what the air had
/// lost before it came to the furnace. None where no air is warmed.
pub fn delivered(make: &Make, shown: &Shown) -> Option<f64> {
    let rated = Orifices::new(make, &Default::default(), &Default::default()).rated;
    let rise = shown.supply_air - shown.return_air;
    (rise > 1.0).then(|| shown.input / rated * (shown.supply_air - make.indoor) / rise)
}
