//! What kind of thing a quantity measures.

/// What kind of thing a quantity measures; only quantities of one dimension can be compared.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Dimension {
    /// Electric potential difference; base unit volt.
    Voltage,
    /// Electric current; base unit ampere.
    Current,
    /// Electric resistance; base unit ohm.
    Resistance,
    /// Electric resistance per length of a conductor; base unit ohm per metre.
    ResistancePerLength,
    /// Electric capacitance; base unit farad.
    Capacitance,
    /// A temperature on a thermometer; base unit kelvin.
    Temperature,
    /// How far two temperatures lie apart; base unit kelvin.
    TemperatureDifference,
    /// Pressure, always a difference between two places, so that no absolute one is taken for it; base unit pascal.
    Pressure,
    /// Heat rate and real electric power; base unit watt.
    Power,
    /// Volts times amperes, whatever their phase; base unit volt-ampere.
    ApparentPower,
    /// Volume; base unit cubic metre.
    Volume,
    /// Volume per time; base unit cubic metre per second.
    Flow,
    /// Mass per time; base unit kilogram per second.
    MassFlow,
    /// Mass per volume; base unit kilogram per cubic metre.
    Density,
    /// Length per time; base unit metre per second.
    Speed,
    /// Heat set free per volume of gas; base unit joule per cubic metre.
    HeatingValue,
    /// A share of a whole, in parts per million or per cent; base unit one.
    Ratio,
    /// Time; base unit second.
    Time,
    /// Length; base unit metre.
    Length,
    /// Area; base unit square metre.
    Area,
    /// Cycles of an alternating current per time; base unit hertz.
    Frequency,
    /// Turns per time; base unit turn per minute.
    RotationalSpeed,
    /// A number without a unit, such as a count of flashes.
    Number,
}

impl Dimension {
    /// The dimension as messages name it, with its article: "a voltage".
    pub fn name(self) -> &'static str {
        match self {
            Self::Voltage => "a voltage",
            Self::Current => "a current",
            Self::Resistance => "a resistance",
            Self::ResistancePerLength => "a resistance per length",
            Self::Capacitance => "a capacitance",
            Self::Temperature => "a temperature",
            Self::TemperatureDifference => "a temperature difference",
            Self::Pressure => "a pressure",
            Self::Power => "a power",
            Self::ApparentPower => "an apparent power",
            Self::Volume => "a volume",
            Self::Flow => "a flow",
            Self::MassFlow => "a mass flow",
            Self::Density => "a density",
            Self::Speed => "a speed",
            Self::HeatingValue => "a heating value",
            Self::Ratio => "a ratio",
            Self::Time => "a time",
            Self::Length => "a length",
            Self::Area => "an area",
            Self::Frequency => "a frequency",
            Self::RotationalSpeed => "a rotational speed",
            Self::Number => "a plain number",
        }
    }

    /// Whether it is a temperature or a difference of two.
    pub(super) fn is_thermal(self) -> bool {
        matches!(self, Self::Temperature | Self::TemperatureDifference)
    }
}
