//! How one furnace differs a little from the next of its make.

/// A number from `low` to `high` that depends on nothing but a furnace's seed and on what it is for.
pub fn spread(seed: u64, what: u64, low: f64, high: f64) -> f64 {
    // SplitMix64, whose outputs for neighbouring inputs have nothing in common.
    let mut x = seed ^ what.wrapping_mul(0x9e37_79b9_7f4a_7c15);
    x = x.wrapping_add(0x9e37_79b9_7f4a_7c15);
    x = (x ^ (x >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    x = (x ^ (x >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    x ^= x >> 31;
    low + (high - low) * (x >> 11) as f64 / (1_u64 << 53) as f64
}
