//! What gauges, probes and eyes would show of the plant at a moment.

/// A moment of the plant, to be kept beside the electric one.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Shown {
    /// Supply pressure at the valve's inlet, in.w.c.
    pub inlet: f64,
    /// Lowest supply pressure since the valve was last fed, in.w.c.
    pub inlet_lowest: f64,
    /// Manifold pressure, in.w.c.
    pub manifold: f64,
    /// Lowest manifold pressure since the valve was last fed, its first moments left out, in.w.c.
    pub manifold_lowest: f64,
    /// Heat of the gas that flows, BTU/h.
    pub input: f64,
    /// Share of the burners that burn.
    pub flame: f64,
    /// What the flame does.
    pub shape: Shape,
    /// Draft at the port on the housing, as the switch's label counts it, in.w.c.
    pub draft_housing: f64,
    /// Draft at tees close to the switch, in.w.c.
    pub draft_switch: f64,
    /// Lowest draft at the tees since the inducer came to speed, in.w.c.
    pub draft_lowest: f64,
    /// How much of it comes and goes, share.
    pub draft_wavers: f64,
    /// Oxygen in the dry flue gas, per cent.
    pub oxygen: f64,
    /// Carbon monoxide in the flue gas as read, ppm.
    pub co: f64,
    /// Whether it still rises.
    pub co_rises: bool,
    /// How much house air comes through the exchanger's wall, share of the flue gas.
    pub house_air: f64,
    /// Airflow through the furnace, ft³/min.
    pub airflow: f64,
    /// Suction between filter and blower, in.w.c.
    pub return_static: f64,
    /// Suction before the filter, in.w.c.
    pub return_duct_static: f64,
    /// Pressure between furnace and coil, in.w.c.
    pub supply_static: f64,
    /// Pressure after the coil, in.w.c.
    pub supply_duct_static: f64,
    /// Return air, °F.
    pub return_air: f64,
    /// Supply air, °F.
    pub supply_air: f64,
    /// The limit's disc, °F.
    pub limit: f64,
    /// The rollout switch's disc, °F.
    pub rollout: f64,
    /// Mean temperature of the exchanger's metal, °F.
    pub exchanger: f64,
    /// Water in the collector, share of its height.
    pub water: f64,
    /// The pilot's flame, share of a good one's size; of a standing one, with its knob held in.
    pub pilot: f64,
    /// Whether the condensate pump runs over.
    pub runs_over: bool,
    /// Carbon monoxide in the room, ppm.
    pub room_co: f64,
}

/// What the burner flames do.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Shape {
    /// No flame.
    #[default]
    None,
    /// Steady and blue, drawn into every tube.
    Blue,
    /// Yellow tips, lazy.
    Yellow,
    /// Lifts off or flutters.
    Lifts,
    /// Rolls back toward the burner box.
    RollsBack,
}
