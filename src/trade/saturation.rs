//! When water condenses.
//!
//! The saturation line of IAPWS-IF97 (region 4, equations 30 and 31 of the revised release of 2007), from 0 to 374 °C; the two
//! directions are exact inverses.

/// The freezing point of water, in kelvin; the lower end of the line.
pub(super) const FREEZING: f64 = 273.15;

/// The ten coefficients of the release's table 34.
const N: [f64; 10] = [
    0.116_705_214_527_67e4,
    -0.724_213_167_032_06e6,
    -0.170_738_469_400_92e2,
    0.120_208_247_024_70e5,
    -0.323_255_503_223_33e7,
    0.149_151_086_135_30e2,
    -0.482_326_573_615_91e4,
    0.405_113_405_420_57e6,
    -0.238_555_575_678_49,
    0.650_175_348_447_98e3,
];

/// The pressure at which water boils at a temperature: in Pa, of kelvin.
pub(super) fn pressure(temperature: f64) -> f64 {
    let t = temperature + N[8] / (temperature - N[9]);
    let a = t * t + N[0] * t + N[1];
    let b = N[2] * t * t + N[3] * t + N[4];
    let c = N[5] * t * t + N[6] * t + N[7];
    1e6 * (2.0 * c / (-b + (b * b - 4.0 * a * c).sqrt())).powi(4)
}

/// The temperature at which water boils at a pressure: in kelvin, of Pa.
pub(super) fn temperature(pressure: f64) -> f64 {
    let p = (pressure / 1e6).powf(0.25);
    let e = p * p + N[2] * p + N[5];
    let f = N[0] * p * p + N[3] * p + N[6];
    let g = N[1] * p * p + N[4] * p + N[7];
    let d = 2.0 * g / (-f - (f * f - 4.0 * e * g).sqrt());
    let sum = N[9] + d;
    (sum - (sum * sum - 4.0 * (N[8] + N[9] * d)).sqrt()) / 2.0
}

#[cfg(test)]
mod tests {
    use super::*;

    /// IAPWS-IF97, revised release 2007, tables 35 and 36: what a program is to be checked with.
    #[test]
    fn the_release_s_own_values_come_out() {
        for (kelvin, megapascal) in [
            (300.0, 0.353_658_941e-2),
            (500.0, 0.263_889_776e1),
            (600.0, 0.123_443_146e2),
        ] {
            assert!(
                (pressure(kelvin) / 1e6 / megapascal - 1.0).abs() < 1e-8,
                "{kelvin} K"
            );
        }
        for (megapascal, kelvin) in [(0.1, 372.755_919), (1.0, 453.035_632), (10.0, 584.149_488)] {
            assert!(
                (temperature(megapascal * 1e6) - kelvin).abs() < 1e-6,
                "{megapascal} MPa"
            );
        }
    }
}
