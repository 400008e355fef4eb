//! Short numbers: a gap is easier to see at 1.5 V than at 1.4375 V.

/// Decimals, from the coarsest on, that are tried.
const STEPS: std::ops::RangeInclusive<i32> = -9..=9;

/// The shortest number strictly between two, near their middle; ends that are infinite stand a little way off the other.
///
/// Where no short number lies between them, their middle.
pub(in crate::check) fn between(low: f64, high: f64) -> f64 {
    let (low, high) = match (low.is_finite(), high.is_finite()) {
        (true, true) => (low, high),
        (true, false) => (low, low + low.abs().max(1.0)),
        (false, true) => (high - high.abs().max(1.0), high),
        (false, false) => return 0.0,
    };
    let middle = low + (high - low) / 2.0;
    for exponent in STEPS.rev() {
        // Dividing by a power of ten rounds better than multiplying by a tenth does.
        let (step, parts) = (10f64.powi(exponent.max(0)), 10f64.powi((-exponent).max(0)));
        let number = (middle * parts / step).round() * step / parts;
        if low < number && number < high {
            // No minus in front of nothing.
            return number + 0.0;
        }
    }
    middle
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_shortest_number_near_the_middle_is_taken() {
        for (low, high, number) in [
            (1.0, 2.0, 1.5),
            (0.5, 1.5, 1.0),
            (20.4, 30.0, 25.0),
            (40.0, 72.0, 60.0),
            (1500.0, 3000.0, 2000.0),
            (3.2, 3.5, 3.4),
            (-1.0, 1.0, 0.0),
        ] {
            assert_eq!(between(low, high), number, "between {low} and {high}");
        }
    }

    #[test]
    fn an_open_end_stays_near_the_other() {
        assert_eq!(between(30.0, f64::INFINITY), 50.0);
        assert_eq!(between(f64::NEG_INFINITY, 0.0), -0.5);
        assert_eq!(between(f64::NEG_INFINITY, f64::INFINITY), 0.0);
    }
}
