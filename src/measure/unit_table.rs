//! The one table that feeds reading, showing and converting units.
//!
//! Sources of the factors:
//!
//! - *exact*: by definition. Foot, inch and pound: the international yard and pound agreement of 1959 (1 ft = 0.3048 m).
//!   BTU: the international table BTU, 1055.055 852 62 J (Fifth International Conference on the Properties of Steam,
//!   1956). °F: 0 °F is 459.67 °F above absolute zero; a degree is 5/9 K.
//! - *SP 811*: NIST Special Publication 811 (2008), *Guide for the Use of the International System of Units*, appendix B.8;
//!   quoted from memory.

use super::dimension::Dimension;
use super::unit::Unit;

/// One unit: `base value = (number + offset) × factor`.
pub(super) struct Row {
    pub unit: Unit,
    pub dimension: Dimension,
    pub symbol: &'static str,
    pub ascii: &'static str,
    /// Further spellings, in the plain form that [`spelling`](super::spelling) reduces every text to.
    pub others: &'static [&'static str],
    pub factor: f64,
    /// Added to the number before it is multiplied, except where the scale is a difference.
    pub offset: f64,
}

const FOOT: f64 = 0.3048;
const CUBIC_FOOT: f64 = FOOT * FOOT * FOOT;
const INCH: f64 = 0.0254;
const GALLON: f64 = 231.0 * INCH * INCH * INCH;
const POUND: f64 = 0.453_592_37;
const BTU: f64 = 1_055.055_852_62;
const HOUR: f64 = 3600.0;

const fn row(
    unit: Unit,
    dimension: Dimension,
    symbol: &'static str,
    ascii: &'static str,
    others: &'static [&'static str],
    factor: f64,
) -> Row {
    Row {
        unit,
        dimension,
        symbol,
        ascii,
        others,
        factor,
        offset: 0.0,
    }
}

const fn degree(
    unit: Unit,
    symbol: &'static str,
    ascii: &'static str,
    others: &'static [&'static str],
    factor: f64,
    offset: f64,
) -> Row {
    Row {
        offset,
        ..row(unit, Dimension::Temperature, symbol, ascii, others, factor)
    }
}

#[rustfmt::skip] // one unit a line, so that the table reads as a table
pub(super) static ROWS: &[Row] = &[
    row(Unit::Volt, Dimension::Voltage, "V", "V", &["volt", "volts", "Vac", "Vdc"], 1.0),
    row(Unit::Millivolt, Dimension::Voltage, "mV", "mV", &["millivolt", "millivolts"], 1e-3),
    row(Unit::Ampere, Dimension::Current, "A", "A", &["amp", "amps", "ampere", "amperes"], 1.0),
    row(Unit::Milliampere, Dimension::Current, "mA", "mA", &["milliamp", "milliamps"], 1e-3),
    row(Unit::Microampere, Dimension::Current, "µA", "uA", &["microamp", "microamps"], 1e-6),
    row(Unit::Ohm, Dimension::Resistance, "Ω", "ohm", &["ohms"], 1.0),
    row(Unit::Kilohm, Dimension::Resistance, "kΩ", "kohm", &["kohms", "kiloohm", "kiloohms", "kilohm", "kilohms"], 1e3),
    row(Unit::Megohm, Dimension::Resistance, "MΩ", "Mohm", &["Mohms", "megaohm", "megaohms", "megohm", "megohms"], 1e6),
    // Exact.
    row(Unit::OhmPerThousandFeet, Dimension::ResistancePerLength, "Ω/kft", "ohm/kft", &["ohms/kft", "ohm/1000ft", "ohms/1000ft"], 1.0 / (1e3 * FOOT)),
    row(Unit::OhmPerKilometre, Dimension::ResistancePerLength, "Ω/km", "ohm/km", &["ohms/km"], 1e-3),
    row(Unit::Microfarad, Dimension::Capacitance, "µF", "uF", &["mfd", "MFD", "microfarad", "microfarads"], 1e-6),
    // Exact.
    degree(Unit::DegreeFahrenheit, "°F", "degF", &["F", "fahrenheit", "℉"], 5.0 / 9.0, 459.67),
    degree(Unit::DegreeCelsius, "°C", "degC", &["C", "celsius", "℃"], 1.0, 273.15),
    // SP 811: inch of water (60 °F), 2.488 4 E+02 Pa.
    row(Unit::InchWaterColumn, Dimension::Pressure, "in.w.c.", "in.w.c.",
        &["wc", "inwg", "inH2O", "iwc", "inchwc", "inchesw.c.", "inchesofwater", "inchesofwatercolumn"], 248.84),
    row(Unit::Pascal, Dimension::Pressure, "Pa", "Pa", &["pascal", "pascals"], 1.0),
    row(Unit::Kilopascal, Dimension::Pressure, "kPa", "kPa", &["kilopascal", "kilopascals"], 1e3),
    row(Unit::Millibar, Dimension::Pressure, "mbar", "mbar", &["millibar", "millibars", "hPa"], 100.0),
    // SP 811: pound-force per square inch, 6.894 757 E+03 Pa.
    row(Unit::PoundPerSquareInch, Dimension::Pressure, "psi", "psi", &["psig", "lbf/in2"], 6_894.757),
    // SP 811: inch of mercury, conventional, 3.386 389 E+03 Pa.
    row(Unit::InchMercury, Dimension::Pressure, "inHg", "inHg", &["inchesofmercury"], 3_386.389),
    // Exact.
    row(Unit::BtuPerHour, Dimension::Power, "BTU/h", "BTU/h", &["BTUH", "BTU/hr", "BTUperhour"], BTU / HOUR),
    row(Unit::KilobtuPerHour, Dimension::Power, "kBTU/h", "kBTU/h", &["kBTUH", "kBTU/hr", "MBH", "mbh"], 1e3 * BTU / HOUR),
    row(Unit::Kilowatt, Dimension::Power, "kW", "kW", &["kilowatt", "kilowatts"], 1e3),
    row(Unit::Watt, Dimension::Power, "W", "W", &["watt", "watts"], 1.0),
    // SP 811: horsepower (550 ft·lbf/s), 7.456 999 E+02 W.
    row(Unit::Horsepower, Dimension::Power, "hp", "hp", &["horsepower"], 745.699_9),
    row(Unit::VoltAmpere, Dimension::ApparentPower, "VA", "VA", &["voltamp", "voltamps"], 1.0),
    // Exact.
    row(Unit::CubicFoot, Dimension::Volume, "ft³", "ft3", &["cuft", "cf", "cubicfoot", "cubicfeet"], CUBIC_FOOT),
    row(Unit::CubicMetre, Dimension::Volume, "m³", "m3", &["cubicmetre", "cubicmetres", "cubicmeter", "cubicmeters"], 1.0),
    // Exact: the US gallon is 231 cubic inches.
    row(Unit::Gallon, Dimension::Volume, "gal", "gal", &["gallon", "gallons"], GALLON),
    row(Unit::Litre, Dimension::Volume, "L", "L", &["litre", "litres", "liter", "liters"], 1e-3),
    row(Unit::CubicFootPerHour, Dimension::Flow, "ft³/h", "ft3/h", &["cfh", "scfh", "ft3/hr", "cuft/h", "cuft/hr"], CUBIC_FOOT / HOUR),
    row(Unit::CubicMetrePerHour, Dimension::Flow, "m³/h", "m3/h", &["m3/hr"], 1.0 / HOUR),
    row(Unit::CubicFootPerMinute, Dimension::Flow, "CFM", "CFM", &["ft3/min", "cuft/min"], CUBIC_FOOT / 60.0),
    row(Unit::LitrePerSecond, Dimension::Flow, "L/s", "L/s", &["L/sec"], 1e-3),
    row(Unit::GallonPerHour, Dimension::Flow, "gal/h", "gal/h", &["gph", "gal/hr", "gallon/h", "gallons/h", "gallons/hour"], GALLON / HOUR),
    row(Unit::LitrePerHour, Dimension::Flow, "L/h", "L/h", &["L/hr", "litre/h", "litres/h", "liter/h", "liters/h"], 1e-3 / HOUR),
    // Exact: the international pound is 0.453 592 37 kg.
    row(Unit::PoundPerHour, Dimension::MassFlow, "lb/h", "lb/h", &["lb/hr", "lbs/h", "lbs/hr", "pph"], POUND / HOUR),
    row(Unit::KilogramPerHour, Dimension::MassFlow, "kg/h", "kg/h", &["kg/hr"], 1.0 / HOUR),
    row(Unit::PoundPerCubicFoot, Dimension::Density, "lb/ft³", "lb/ft3", &["lbs/ft3", "lb/cuft", "lbs/cuft", "pcf"], POUND / CUBIC_FOOT),
    row(Unit::KilogramPerCubicMetre, Dimension::Density, "kg/m³", "kg/m3", &[], 1.0),
    row(Unit::FootPerMinute, Dimension::Speed, "ft/min", "ft/min", &["fpm", "feet/min", "feetperminute"], FOOT / 60.0),
    row(Unit::MetrePerSecond, Dimension::Speed, "m/s", "m/s", &["m/sec", "metres/s", "meters/s"], 1.0),
    // Exact.
    row(Unit::BtuPerCubicFoot, Dimension::HeatingValue, "BTU/ft³", "BTU/ft3", &["BTU/cuft", "BTU/cf"], BTU / CUBIC_FOOT),
    row(Unit::MegajoulePerCubicMetre, Dimension::HeatingValue, "MJ/m³", "MJ/m3", &[], 1e6),
    // Exact.
    row(Unit::KilowattHourPerCubicMetre, Dimension::HeatingValue, "kWh/m³", "kWh/m3", &[], 3.6e6),
    row(Unit::PartPerMillion, Dimension::Ratio, "ppm", "ppm", &[], 1e-6),
    row(Unit::Percent, Dimension::Ratio, "%", "%", &["percent", "pct"], 1e-2),
    row(Unit::Second, Dimension::Time, "s", "s", &["sec", "secs", "second", "seconds"], 1.0),
    row(Unit::Minute, Dimension::Time, "min", "min", &["mins", "minute", "minutes", "Min", "MIN"], 60.0),
    row(Unit::Hour, Dimension::Time, "h", "h", &["hr", "hrs", "hour", "hours"], HOUR),
    // Exact, down to the square metre.
    row(Unit::Inch, Dimension::Length, "in", "in", &["inch", "inches"], INCH),
    row(Unit::Foot, Dimension::Length, "ft", "ft", &["foot", "feet"], FOOT),
    row(Unit::Millimetre, Dimension::Length, "mm", "mm", &["millimetre", "millimetres", "millimeter", "millimeters"], 1e-3),
    row(Unit::Centimetre, Dimension::Length, "cm", "cm", &["centimetre", "centimetres", "centimeter", "centimeters"], 1e-2),
    row(Unit::Metre, Dimension::Length, "m", "m", &["metre", "metres", "meter", "meters"], 1.0),
    row(Unit::SquareInch, Dimension::Area, "in²", "in2", &["sqin", "squareinch", "squareinches"], INCH * INCH),
    row(Unit::SquareFoot, Dimension::Area, "ft²", "ft2", &["sqft", "squarefoot", "squarefeet"], FOOT * FOOT),
    row(Unit::SquareMillimetre, Dimension::Area, "mm²", "mm2", &["sqmm"], 1e-6),
    row(Unit::SquareCentimetre, Dimension::Area, "cm²", "cm2", &["sqcm"], 1e-4),
    row(Unit::SquareMetre, Dimension::Area, "m²", "m2", &["sqm", "squaremetre", "squaremetres", "squaremeter", "squaremeters"], 1.0),
    row(Unit::Hertz, Dimension::Frequency, "Hz", "Hz", &["hertz"], 1.0),
    row(Unit::RevolutionPerMinute, Dimension::RotationalSpeed, "rpm", "rpm", &["r/min", "rev/min"], 1.0),
    row(Unit::Number, Dimension::Number, "", "", &["number", "none"], 1.0),
];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_rows_stand_in_the_order_of_the_enum() {
        for (at, row) in ROWS.iter().enumerate() {
            assert_eq!(row.unit as usize, at, "{:?}", row.unit);
        }
        assert_eq!(ROWS.last().map(|row| row.unit), Some(Unit::Number));
    }

    #[test]
    fn the_plain_twins_are_plain() {
        for row in ROWS {
            assert!(row.ascii.is_ascii(), "{:?}", row.unit);
        }
    }
}
