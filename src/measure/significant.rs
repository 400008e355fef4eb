//! Rounding to the digits that are meant.

/// `value` to `digits` significant digits, as its decimal form has them.
///
/// Goes through text: that rounds the decimal digits correctly on every machine, which scaling by a power of ten does not.
pub(super) fn round_to(value: f64, digits: usize) -> f64 {
    // What Rust writes of a float is always a float again.
    let rounded: f64 = format!("{value:.*e}", digits.saturating_sub(1))
        .parse()
        .unwrap_or(value);
    // Adding zero turns -0 into 0, which is how a person writes it.
    rounded + 0.0
}

/// `value` to twelve significant digits: what a quantity keeps.
///
/// By way of fourteen: a decimal whose thirteenth and last digit is a five would otherwise go up or down by what the
/// arithmetic left in its sixteenth.
pub(super) fn round(value: f64) -> f64 {
    if is_short(value) {
        return value + 0.0;
    }
    rounded_at_once(value).unwrap_or_else(|| round_to(round_to(value, 14), 12))
}

/// `value` to twelve significant digits where arithmetic is sure of them; a walk rounds too often to go through text each time.
///
/// Both factors are powers of ten that a float holds exactly, so each step is rounded once: the digits are off by no more than a
/// thousandth of the last, and from whole digits the float comes out that their text would. What lies near a half is left to the text.
fn rounded_at_once(value: f64) -> Option<f64> {
    const NEAR_HALF: f64 = 0.48;
    let decade = value.abs().log10().floor();
    // Whether it is no number, nothing, or beyond what the powers reach.
    if !(-10.0..=30.0).contains(&decade) {
        return None;
    }
    let places = 11 - decade as i32;
    let power = 10f64.powi(places.abs());
    let digits = if places >= 0 { value * power } else { value / power };
    let whole = digits.round();
    let sure = (digits - whole).abs() < NEAR_HALF && (1e11..1e12).contains(&whole.abs());
    sure.then(|| if places >= 0 { whole / power } else { whole * power })
}

/// Whether a value has no more digits than are kept, as almost all have that a person wrote: then it is what it rounds to,
/// and need not go through text.
fn is_short(value: f64) -> bool {
    const WHOLE: f64 = 1e12;
    // A value is the one float nearest to its decimal form; where a thousandth of a whole number is the same float, it has
    // that form, with no more digits than the whole number.
    let thousandths = (value * 1e3).round();
    thousandths.abs() < WHOLE && thousandths / 1e3 == value
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn digits_that_no_one_wrote_are_dropped() {
        assert_eq!(round(0.1 + 0.2), 0.3);
        assert_eq!(round(3.5 - 0.3), 3.2);
        assert_eq!(round(1e-7 * 3.0), 3e-7);
        assert_eq!(round_to(-123_456.0, 3), -123_000.0);
        assert_eq!(round(4_092_264.855_104_999_6), round(4_092_264.855_105));
    }

    #[test]
    fn a_short_number_is_what_it_rounds_to() {
        for text in ["0", "24", "-40", "20.4", "0.3", "-0.05", "3.125", "999999999.999"] {
            let value: f64 = text.parse().unwrap();
            assert!(is_short(value), "{text}");
            assert_eq!(round_to(round_to(value, 14), 12), value, "{text}");
        }
        for value in [0.1 + 0.2, 1e-7, 1e12, f64::INFINITY, f64::NAN] {
            assert!(!is_short(value), "{value}");
        }
    }

    #[test]
    fn what_arithmetic_is_sure_of_is_what_the_text_says() {
        let mut at_once = 0;
        for step in 1..40_000 {
            // Awkward numbers of every size: multiples of e's digits, near halves of the thirteenth digit among them.
            let decade = 10f64.powi(step % 44 - 12);
            for value in [
                std::f64::consts::E * f64::from(step) * decade,
                -decade * (1.0 + f64::from(step) * 5e-13),
                decade / f64::from(step),
            ] {
                let by_text = round_to(round_to(value, 14), 12);
                if let Some(rounded) = rounded_at_once(value) {
                    at_once += 1;
                    assert_eq!(rounded.to_bits(), by_text.to_bits(), "{value:e}");
                }
            }
        }
        assert!(at_once > 80_000, "only {at_once} were sure");
    }

    #[test]
    fn the_ends_of_the_number_line_stay_what_they_are() {
        assert!(round(-0.0).is_sign_positive());
        assert_eq!(round(f64::INFINITY), f64::INFINITY);
        assert!(round(f64::NAN).is_nan());
        assert_eq!(round(f64::MIN_POSITIVE), 2.225_073_858_51e-308);
    }
}
