//! What passes between the two halves of a furnace at each step of simulated time.

/// What the electric half does to the rest.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Drive {
    /// Share of the inducer's rated speed that its motor makes (0 while it stands).
    pub inducer: f64,
    /// Whether the gas valve's coil is fed well enough to pull in.
    pub valve_fed: bool,
    /// Whether the valve's second stage is fed too, where it has one.
    pub high_fed: bool,
    /// Whether gas is let to the pilot, or held there by its thermocouple.
    pub pilot_fed: bool,
    /// Whether what lights the gas is hot enough, or sparks well enough, to light it.
    pub igniting: bool,
    /// Share of its full torque (constant torque) or of its speed at no load (tapped) that the blower's motor can give, or
    /// of the airflow it is commanded to hold (constant airflow); 0 while it stands.
    pub blower: f64,
}

/// What the rest does that the electric half senses, in the units of its fields' names.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Process {
    /// Differential across the pressure switch, as its label counts it, in.w.c.
    pub switch_draft: f64,
    /// Share of the main burners that burn (0 where no flame stands).
    pub flame: f64,
    /// Whether flame stands in front of the sensor, and how well it is bathed (0 to 1).
    pub sensor_bathed: f64,
    /// The pilot's flame, share of a good one's size; of a standing one, with its knob held in.
    pub pilot: f64,
    /// Whether water stands at the high-water switch of the condensate pump, and that switch is wired.
    pub high_water: bool,
    /// Temperature at the main limit's disc, °F.
    pub limit_temperature: f64,
    /// Temperature at the rollout switch's disc, °F.
    pub rollout_temperature: f64,
    /// Temperature of the return air at the furnace, °F.
    pub return_air: f64,
    /// Temperature of the supply air, out of sight of the exchanger, °F.
    pub supply_air: f64,
}
