//! How far two colours stand apart, for the tests of what is drawn.

/// Contrast of two colours, by the definitions of relative luminance and contrast ratio in WCAG 2.2.
pub(super) fn contrast(one: &str, other: &str) -> f64 {
    let luminance = |colour: &str| {
        let part = |at: usize| f64::from(u8::from_str_radix(&colour[at..at + 2], 16).unwrap()) / 255.0;
        let linear = |part: f64| match part <= 0.04045 {
            true => part / 12.92,
            false => ((part + 0.055) / 1.055).powf(2.4),
        };
        0.2126 * linear(part(1)) + 0.7152 * linear(part(3)) + 0.0722 * linear(part(5))
    };
    let (one, other) = (luminance(one), luminance(other));
    (one.max(other) + 0.05) / (one.min(other) + 0.05)
}
