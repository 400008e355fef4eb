//! Numbers that are easy to read, where there is room for several.

use crate::check::bands::{Room, round};
use crate::measure::{PlausibleRange, Quantity, Scale};

/// Where an input may lie.
#[derive(Clone, Copy)]
pub(super) struct Range {
    pub low: f64,
    pub high: f64,
    pub scale: Scale,
    /// An end is not in it.
    pub open: bool,
}

impl Range {
    /// The number at a share of the way, as short as that leaves room for.
    pub fn at(&self, share: f64) -> Quantity {
        // Off the ends, where those are not in.
        let share = if self.open { 0.001 + share * 0.998 } else { share };
        let base = self.low + (self.high - self.low) * share;
        let exact = Quantity::from_base(base, self.scale.dimension());
        let number = exact.number_in(self.scale);
        // A thousandth of the range is as fine as it has to be.
        let unit = exact.number_in(self.scale)
            - Quantity::from_base(base - (self.high - self.low) / 1000.0, self.scale.dimension())
                .number_in(self.scale);
        if unit <= 0.0 {
            return exact;
        }
        let digit = 10f64.powf(unit.log10().floor());
        let rounded = Quantity::new((number / digit).round() * digit, self.scale);
        if (self.low..=self.high).contains(&rounded.base()) {
            rounded
        } else {
            exact
        }
    }
}

/// A short number in a room, all in base units; a plausible one where there is one.
pub(super) fn short(room: Room, scale: Scale, plausible: Option<PlausibleRange>) -> Quantity {
    let exact = Quantity::from_base(room.low, scale.dimension());
    if room.low >= room.high {
        return exact;
    }
    let believed = plausible.map(|range| Room {
        low: room.low.max(range.low.base()),
        high: room.high.min(range.high.base()),
    });
    let room = believed
        .filter(|believed| believed.low < believed.high)
        .unwrap_or(room);
    let number = |base: f64| match base.is_finite() {
        true => Quantity::from_base(base, scale.dimension()).number_in(scale),
        false => base,
    };
    Quantity::new(round::between(number(room.low), number(room.high)), scale)
}
