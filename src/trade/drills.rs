//! The number sizes of twist drills.
//!
//! Diameters: ASME B94.11M, twist drills, as machinists' tables print them.

use super::unfit::Unfit;

/// In inches, from number 1 to number 80.
#[rustfmt::skip] // ten a line, so that a number is found at a glance
const DIAMETERS: [f64; 80] = [
    0.2280, 0.2210, 0.2130, 0.2090, 0.2055, 0.2040, 0.2010, 0.1990, 0.1960, 0.1935,
    0.1910, 0.1890, 0.1850, 0.1820, 0.1800, 0.1770, 0.1730, 0.1695, 0.1660, 0.1610,
    0.1590, 0.1570, 0.1540, 0.1520, 0.1495, 0.1470, 0.1440, 0.1405, 0.1360, 0.1285,
    0.1200, 0.1160, 0.1130, 0.1110, 0.1100, 0.1065, 0.1040, 0.1015, 0.0995, 0.0980,
    0.0960, 0.0935, 0.0890, 0.0860, 0.0820, 0.0810, 0.0785, 0.0760, 0.0730, 0.0700,
    0.0670, 0.0635, 0.0595, 0.0550, 0.0520, 0.0465, 0.0430, 0.0420, 0.0410, 0.0400,
    0.0390, 0.0380, 0.0370, 0.0360, 0.0350, 0.0330, 0.0320, 0.0310, 0.0292, 0.0280,
    0.0260, 0.0250, 0.0240, 0.0225, 0.0210, 0.0200, 0.0180, 0.0160, 0.0145, 0.0135,
];

/// The diameter of a numbered drill, in inches.
pub(super) fn diameter(number: f64) -> Result<f64, Unfit> {
    let found = (1..)
        .zip(DIAMETERS)
        .find(|&(drill, _)| f64::from(drill) == number);
    found.map(|(_, diameter)| diameter).ok_or_else(|| {
        Unfit::new(
            format!("there is no drill {number}"),
            "give the number stamped on the orifice or the drill, 1 to 80",
        )
    })
}

/// The number of the drill whose diameter lies nearest, of two as near the smaller hole.
pub(super) fn nearest(diameter: f64) -> Result<f64, Unfit> {
    // A little beyond the ends, since there is no step outwards whose half could be the limit.
    if !(0.98 * DIAMETERS[79]..=1.02 * DIAMETERS[0]).contains(&diameter) {
        return Err(Unfit::new(
            format!("no numbered drill is near {diameter:.4} in: they go from 0.0135 to 0.2280 in"),
            "check the inputs, or take a fraction of an inch or a metric size",
        ));
    }
    let mut best = (1, DIAMETERS[0]);
    for (drill, candidate) in (1..).zip(DIAMETERS) {
        if (candidate - diameter).abs() <= (best.1 - diameter).abs() {
            best = (drill, candidate);
        }
    }
    Ok(f64::from(best.0))
}
