//! The units the trade writes numbers in.

use super::dimension::Dimension;
use super::spelling;
use super::unit_table::{ROWS, Row};

/// A unit of measurement; what it is worth and how it is written stands in one table.
///
/// ```
/// use proofwalk::measure::Unit;
/// assert_eq!(Unit::parse("uA"), Some(Unit::Microampere));
/// assert_eq!(Unit::Microampere.symbol(), "µA");
/// assert_eq!(Unit::parse("MV"), None); // a megavolt is no millivolt
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Unit {
    /// V
    Volt,
    /// mV
    Millivolt,
    /// A
    Ampere,
    /// mA
    Milliampere,
    /// µA
    Microampere,
    /// Ω
    Ohm,
    /// kΩ
    Kilohm,
    /// MΩ
    Megohm,
    /// Ω per 1000 ft, of a conductor.
    OhmPerThousandFeet,
    /// Ω/km, of a conductor.
    OhmPerKilometre,
    /// µF
    Microfarad,
    /// °F; without its offset where the [`Scale`](super::Scale) is a difference.
    DegreeFahrenheit,
    /// °C; without its offset where the [`Scale`](super::Scale) is a difference.
    DegreeCelsius,
    /// in.w.c.: inches of water column, of water at 60 °F (248.84 Pa).
    InchWaterColumn,
    /// Pa
    Pascal,
    /// kPa
    Kilopascal,
    /// mbar
    Millibar,
    /// psi: pound-force per square inch.
    PoundPerSquareInch,
    /// inHg: inches of mercury at 32 °F (3386.389 Pa).
    InchMercury,
    /// BTU/h, of the international table BTU (1055.055 852 62 J).
    BtuPerHour,
    /// kBTU/h: a thousand BTU/h, which the trade also writes MBH.
    KilobtuPerHour,
    /// kW
    Kilowatt,
    /// W
    Watt,
    /// hp: mechanical horsepower, 550 ft·lbf/s (745.6999 W).
    Horsepower,
    /// VA
    VoltAmpere,
    /// ft³
    CubicFoot,
    /// m³
    CubicMetre,
    /// gal: US gallons, 231 in³.
    Gallon,
    /// L
    Litre,
    /// ft³/h: how fast gas goes through a meter.
    CubicFootPerHour,
    /// m³/h
    CubicMetrePerHour,
    /// CFM: cubic feet per minute, how fast air moves.
    CubicFootPerMinute,
    /// L/s
    LitrePerSecond,
    /// gal/h, of US gallons: how fast condensate drips.
    GallonPerHour,
    /// L/h
    LitrePerHour,
    /// lb/h
    PoundPerHour,
    /// kg/h
    KilogramPerHour,
    /// lb/ft³
    PoundPerCubicFoot,
    /// kg/m³
    KilogramPerCubicMetre,
    /// ft/min: how fast air moves past a point.
    FootPerMinute,
    /// m/s
    MetrePerSecond,
    /// BTU/ft³, of the international table BTU.
    BtuPerCubicFoot,
    /// MJ/m³
    MegajoulePerCubicMetre,
    /// kWh/m³, as gas bills have it; by the gross heating value, like every other.
    KilowattHourPerCubicMetre,
    /// ppm: parts per million, by volume for a gas.
    PartPerMillion,
    /// %
    Percent,
    /// s
    Second,
    /// min
    Minute,
    /// h
    Hour,
    /// in
    Inch,
    /// ft
    Foot,
    /// mm
    Millimetre,
    /// cm
    Centimetre,
    /// m
    Metre,
    /// in²
    SquareInch,
    /// ft²
    SquareFoot,
    /// mm²
    SquareMillimetre,
    /// cm²
    SquareCentimetre,
    /// m²
    SquareMetre,
    /// Hz
    Hertz,
    /// rpm
    RevolutionPerMinute,
    /// No unit: a count, or a figure without dimension. Its symbol is empty; an author names it `number`.
    Number,
}

impl Unit {
    /// The unit that a text names.
    ///
    /// The spelling itself comes first. Failing that, the case of letters is forgiven, except that of a leading m, since
    /// M is mega and m is milli. Spaces and full stops inside do not matter: `in. w.c.` is `in.w.c.`.
    pub fn parse(text: &str) -> Option<Self> {
        spelling::find(text)
    }

    /// The symbol, as it is shown; empty for [`Unit::Number`].
    pub fn symbol(self) -> &'static str {
        self.row().symbol
    }

    /// The symbol in plain ASCII, for terminals and keyboards that have no more.
    pub fn ascii(self) -> &'static str {
        self.row().ascii
    }

    /// What it measures; for °F and °C a temperature, see [`Scale`](super::Scale) for differences.
    pub fn dimension(self) -> Dimension {
        self.row().dimension
    }

    /// Every unit, in the order of the table.
    pub fn all() -> impl Iterator<Item = Self> {
        ROWS.iter().map(|row| row.unit)
    }

    /// Every way it is spelled, beside what [`parse`](Self::parse) forgives: capitals, spaces, full stops.
    pub fn spellings(self) -> impl Iterator<Item = &'static str> {
        let row = self.row();
        let all = [row.symbol, row.ascii]
            .into_iter()
            .chain(row.others.iter().copied());
        all.filter(|spelling| !spelling.is_empty())
    }

    pub(super) fn row(self) -> &'static Row {
        // The rows stand in the order of the enum, one each: held by a test of the table.
        &ROWS[self as usize]
    }
}
