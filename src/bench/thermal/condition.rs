//! What can be wrong with gas, burners, vent, water, air and exchanger.
//!
//! Every number is how far something is out: 0 is in order, and 1 all the way where it is a share.

/// The thermal condition of a furnace; the default is one in order.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Thermal {
    /// Gas up to the orifices.
    pub gas: Gas,
    /// Orifices, burners and the flame's way from one to the next.
    pub burners: Burners,
    /// Exchanger passages, vent and intake.
    pub flue: Flue,
    /// The inducer's wheel and housing.
    pub inducer: Inducer,
    /// Hoses and ports between the housing and the pressure switch.
    pub hoses: Hoses,
    /// House air: filter, coil, ducts, wheel.
    pub air: Air,
    /// The room the furnace stands in.
    pub room: Room,
    /// The condensate pump.
    pub pump: Pump,
}

/// What can be wrong with the gas before the orifices.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Gas {
    /// The cock before the furnace is closed, or the supply is shut or empty.
    pub shut: Shut,
    /// Share of the supply pressure that is lacking at rest.
    pub supply_lacks: f64,
    /// What a small pipe or a weak regulator loses more than usual at full flow, in.w.c.
    pub supply_drop: f64,
    /// Share of the supply pressure that a freezing regulator takes away within minutes of flow.
    pub icing: f64,
    /// By how much a regulator that does not lock up lets the supply rise above its highest, in.w.c.
    pub lock_up: f64,
    /// Seconds of flow until air in the line has left through the burners.
    pub air_in_line: f64,
    /// Share of the valve's seat that stays shut when it is fed.
    pub valve_stuck: f64,
    /// Share of full flow that passes the valve when it is not fed.
    pub valve_leaks: f64,
    /// Share of its warmth that the valve lacks when it lets go, though it is fed.
    pub valve_lets_go: f64,
    /// Share by which the valve's regulator is set above (below: negative) the plate.
    pub regulator: f64,
    /// Share by which a plugged vent or a hose on the wrong port misleads the regulator, above or below.
    pub reference: f64,
    /// Share by which the regulator's low stage is set above (below: negative) its own figure.
    pub low_regulator: f64,
    /// The valve's second stage does not open though it is fed.
    pub high_stuck: bool,
    /// Share of the pilot's orifice or tube that is clogged.
    pub pilot_clogged: f64,
    /// What comes out of the pipe is the other gas than the plate's.
    pub other_gas: bool,
}

/// Where gas is shut off.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Shut {
    /// Nowhere.
    #[default]
    Open,
    /// At the furnace: its cock or the valve's own switch.
    AtFurnace,
    /// Before the furnace: meter, tank, a cock upstream.
    Upstream,
}

/// What can be wrong with orifices and burners.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Burners {
    /// The orifices are those of the other gas.
    pub orifices_of_other_gas: bool,
    /// Share by which the orifices' area is too large.
    pub orifices_large: f64,
    /// The orifices are sea level's, though the furnace stands high.
    pub orifices_not_derated: bool,
    /// Share of one orifice that is plugged.
    pub orifice_plugged: f64,
    /// Which burner, counted from the igniter.
    pub plugged_burner: u8,
    /// Share of the primary air that lint and rust keep away.
    pub dirty: f64,
    /// Share of primary air that the burners draw too much.
    pub airy: f64,
    /// How far burners or carryovers stand out of line.
    pub out_of_line: f64,
    /// How far the igniter or electrode stands from where the gas comes.
    pub igniter_away: f64,
}

/// What can be wrong on the way of the flue gas.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Flue {
    /// Share of the intake's area that is blocked at its end.
    pub intake_blocked: f64,
    /// Share of the vent's area that is blocked at its end outdoors.
    pub terminal_blocked: f64,
    /// Share of the vent's area that is blocked halfway.
    pub vent_obstructed: f64,
    /// How many times the longest allowed vent it is, less one.
    pub vent_overlong: f64,
    /// Share of the vent's area that water stands in.
    pub vent_sags: f64,
    /// Share of the flue gas that leaves by an open joint into the room.
    pub vent_parted: f64,
    /// Share of flue gas in what the intake draws.
    pub drawn_back: f64,
    /// Gusts against the terminal, in.w.c.
    pub wind: f64,
    /// Share of the primary exchanger's passages that soot fills.
    pub primary_sooted: f64,
    /// Share of the secondary exchanger's passages that deposits fill.
    pub secondary_plugged: f64,
    /// Opening in the exchanger's wall, share of the flue gas's flow that it lets house air add at 1 in.w.c.
    pub cracked: f64,
    /// How much of the condensate's way out is blocked.
    pub trap_blocked: f64,
    /// How much air the dry trap lets in, share of its opening.
    pub trap_dry: f64,
}

/// What can be wrong with the inducer's wheel and housing.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Inducer {
    /// Share of the wheel's turning that slips on the shaft.
    pub wheel_loose: f64,
    /// Share of the wheel's pressure lost to dirt on its vanes.
    pub wheel_dirty: f64,
    /// Air that a torn gasket lets in, share of the flue gas's flow at full suction.
    pub gasket_leaks: f64,
    /// The choke is missing or of another furnace: share of its resistance that is lacking.
    pub choke_wrong: f64,
    /// Share of the port on the housing that is plugged.
    pub port_plugged: f64,
}

/// What can be wrong between the housing and the pressure switch.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Hoses {
    /// Share of the draft that a split or loose hose loses.
    pub split: f64,
    /// The hoses are on each other's ports.
    pub swapped: bool,
    /// Water that stands in a hose, in.w.c.
    pub water: f64,
    /// Share of the switch's own port, or of its open reference, that is plugged.
    pub switch_port_plugged: f64,
}

/// What can be wrong with house air.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Air {
    /// Share of the filter's area that dirt fills.
    pub filter_loaded: f64,
    /// Share of a usual filter's area that this clean one lacks.
    pub filter_small: f64,
    /// Share of the coil's area that dirt fills.
    pub coil_loaded: f64,
    /// Share of the return duct's area that is lacking.
    pub return_tight: f64,
    /// Share of the supply duct's area that is lacking.
    pub supply_tight: f64,
    /// Share of the registers that are closed.
    pub registers_closed: f64,
    /// Share of the wheel's pressure lost to dirt in its vanes.
    pub wheel_dirty: f64,
    /// Share of the wheel's turning that slips on the shaft.
    pub wheel_loose: f64,
    /// The wheel turns the wrong way, or is fitted wrong way round.
    pub wheel_backward: bool,
    /// Share by which the speed set for heat lies below the maker's.
    pub speed_low: f64,
    /// Share of the supply air that goes straight back into the return through a bypass left open in winter.
    pub bypass: f64,
    /// Share of the return air that a leak draws from a cold place.
    pub return_leaks: f64,
    /// How unevenly air passes the limit: what it feels above the rest, share of what the exchanger has over the air.
    pub hot_spot: f64,
}

/// What can be wrong with the room.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Room {
    /// Share of the openings for combustion air that is lacking.
    pub starved: f64,
    /// Suction that exhaust fans make, in.w.c.
    pub negative: f64,
    /// Share of another appliance's flue gas that spills.
    pub spills: f64,
}

/// What can be wrong with the condensate pump.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Pump {
    /// Its float sticks or its motor is dead.
    pub dead: bool,
    /// Its outlet is dead, or it is unplugged.
    pub unfed: bool,
    /// Share of its discharge line that is plugged or frozen.
    pub line_plugged: f64,
    /// Its high-water switch is not wired.
    pub unwired: bool,
    /// It or its hose drips.
    pub leaks: bool,
}
