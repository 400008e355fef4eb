//! How one furnace differs a little from the next of its make.

/// What is a furnace's own; numbered, so that one more does not make every furnace another.
#[derive(Clone, Copy, Debug)]
pub enum Own {
    /// Heating value of the gas where it stands.
    HeatingValue = 1,
    /// Pressure of the supply at rest.
    Supply = 2,
    /// How near the plate the valve's regulator is set.
    Regulator = 3,
    /// What the gas pipe loses.
    PipeLoss = 4,
    /// What the valve's seat loses.
    SeatLoss = 5,
    /// How far its draft stands above its switch's set point.
    Draft = 10,
    /// How steep its inducer's curve is.
    InducerCurve = 11,
    /// How high its vent is.
    VentHeight = 12,
    /// Oxygen in its flue gas.
    Oxygen = 20,
    /// Carbon monoxide that its flame makes in any case.
    Monoxide = 21,
    /// Where in the plate's range its rise lies.
    Rise = 30,
    /// What its filter loses.
    FilterLoss = 31,
    /// What its coil loses.
    CoilLoss = 32,
    /// What its return duct loses.
    ReturnLoss = 33,
    /// What its supply duct loses.
    SupplyLoss = 34,
    /// How far below its mark the limit's disc stays at the highest rise.
    LimitMargin = 40,
    /// Fresh air of its room.
    FreshAir = 50,
    /// Whether its flue passages can be seen.
    PassagesSeen = 60,
    /// Whether every cell of its exchanger can be seen.
    CellsSeen = 61,
    /// How full its condensate pump stands.
    PumpLevel = 74,
    /// How long its condensate drain is.
    DrainRun = 70,
    /// Whether a water heater stands beside it.
    WaterHeater = 71,
    /// How damp its house is.
    Humidity = 72,
    /// What its supply air loses on the way to the farthest register.
    DuctLoss = 73,
}

/// A number from `low` to `high` that depends on nothing but a furnace's seed and on what it is for.
pub fn spread(seed: u64, own: Own, low: f64, high: f64) -> f64 {
    // SplitMix64, whose outputs for neighbouring inputs have nothing in common.
    let mut x = seed ^ (own as u64).wrapping_mul(0x9e37_79b9_7f4a_7c15);
    x = x.wrapping_add(0x9e37_79b9_7f4a_7c15);
    x = (x ^ (x >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    x = (x ^ (x >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    x ^= x >> 31;
    low + (high - low) * (x >> 11) as f64 / (1_u64 << 53) as f64
}
