//! What joins a furnace to its twin: the call comes by way of it, and the blowers are kept in step by it.

use crate::bench::make::Link;

/// What is wrong between two twins.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Twin {
    /// Whether the link does not carry the call.
    pub link_open: bool,
    /// Whether the two transformers stand against each other.
    pub out_of_phase: bool,
    /// Whether the two boards differ in their delays.
    pub boards_differ: bool,
}

impl Twin {
    /// Whether the call of the one comes to the other. Boards that are joined by a wire share R, and hear nothing across
    /// transformers that stand against each other; a relay of its own keeps them apart.
    pub fn passes(&self, link: Link) -> bool {
        !self.link_open && (link == Link::Kit || !self.out_of_phase)
    }

    /// Between the two R with their C joined, where each stands at so many volts: their difference in phase, their sum against
    /// it (phasors, elementary theory).
    pub fn between(&self, one: f64, other: f64) -> f64 {
        match self.out_of_phase {
            true => one + other,
            false => (one - other).abs(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn transformers_against_each_other_add_up_and_in_step_cancel() {
        let against = Twin {
            out_of_phase: true,
            ..Twin::default()
        };
        // Common practice: about 48 V out of phase, near 0 in phase.
        assert_eq!(against.between(24.5, 24.0), 48.5);
        assert!(Twin::default().between(24.5, 24.0) < 4.0);
        assert!(!against.passes(Link::Wire) && against.passes(Link::Kit));
    }
}
