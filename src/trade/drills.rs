//! The number and letter sizes of twist drills.
//!
//! Diameters: ASME B94.11M, twist drills, as machinists' tables print them.

use crate::measure::Unit;

use super::argument::Argument;
use super::unfit::Unfit;

/// In inches, from number 1 to number 80.
#[rustfmt::skip] // ten a line, so that a number is found at a glance
const DIAMETERS: [f64; 80] = [
    0.2280, 0.2210, 0.2130, 0.2090, 0.2055, 0.2040, 0.2010, 0.1990, 0.1960, 0.1935,
    0.1910, 0.1890, 0.1850, 0.1820, 0.1800, 0.1770, 0.1730, 0.1695, 0.1660, 0.1610,
    0.1590, 0.1570, 0.1540, 0.1520, 0.1495, 0.1470, 0.1440, 0.1405, 0.1360, 0.1285,
    0.1200, 0.1160, 0.1130, 0.1110, 0.1100, 0.1065, 0.1040, 0.1015, 0.0995, 0.0980,
    0.0960, 0.0935, 0.0890, 0.0860, 0.0820, 0.0810, 0.0785, 0.0760, 0.0730, 0.0700,
    0.0670, 0.0635, 0.0595, 0.0550, 0.0520, 0.0465, 0.0430, 0.0420, 0.0410, 0.0400,
    0.0390, 0.0380, 0.0370, 0.0360, 0.0350, 0.0330, 0.0320, 0.0310, 0.0292, 0.0280,
    0.0260, 0.0250, 0.0240, 0.0225, 0.0210, 0.0200, 0.0180, 0.0160, 0.0145, 0.0135,
];

/// In inches, from letter A to letter Z.
#[rustfmt::skip] // ten a line
const LETTERS: [f64; 26] = [
    0.2340, 0.2380, 0.2420, 0.2460, 0.2500, 0.2570, 0.2610, 0.2660, 0.2720, 0.2770,
    0.2810, 0.2900, 0.2950, 0.3020, 0.3160, 0.3230, 0.3320, 0.3390, 0.3480, 0.3580,
    0.3680, 0.3770, 0.3860, 0.3970, 0.4040, 0.4130,
];

/// What a text that names a drill, or a gauge of wire, is for an argument: the number itself where a number is asked for, else the
/// diameter of the hole. `None` where it names none.
pub(super) fn named(text: &str, argument: &Argument) -> Option<String> {
    let is_number = argument.scale.unit == Unit::Number;
    if !argument.is_drilled && !is_number {
        return None;
    }
    let lower = text.trim().to_lowercase();
    let ends = [" drill", " awg", " gauge"];
    let starts = ["#", "no.", "no ", "number ", "drill ", "awg ", "letter "];
    let named = starts
        .iter()
        .find_map(|start| lower.strip_prefix(start))
        .or_else(|| ends.iter().find_map(|end| lower.strip_suffix(end)));
    let name = named.unwrap_or(&lower).trim();
    // As it is printed on the thickest cable there is.
    if argument.name == "gauge" && name == "1/0" {
        return Some("0".to_owned());
    }
    if name.bytes().all(|letter| letter.is_ascii_digit()) && named.is_some() {
        // A number that is no drill's stays what it is, so that the formula says so.
        let number: f64 = name.parse().ok()?;
        return if is_number {
            Some(name.to_owned())
        } else {
            Some(inches(diameter(number).ok()?))
        };
    }
    match name.as_bytes() {
        [letter @ b'a'..=b'z'] if !is_number => Some(inches(LETTERS[usize::from(letter - b'a')])),
        _ => None,
    }
}

fn inches(diameter: f64) -> String {
    format!("{diameter} in")
}

/// The diameter of a numbered drill, in inches.
pub(super) fn diameter(number: f64) -> Result<f64, Unfit> {
    let found = (1..)
        .zip(DIAMETERS)
        .find(|&(drill, _)| f64::from(drill) == number);
    found.map(|(_, diameter)| diameter).ok_or_else(|| {
        Unfit::new(
            format!("there is no drill {number}"),
            "give the number stamped on the orifice or the drill, 1 to 80; for a letter or a fraction of an inch, give the \
             diameter to `orifice_flow`",
        )
    })
}

/// The number of the drill whose diameter lies nearest, of two as near the smaller hole.
pub(super) fn nearest(diameter: f64) -> Result<f64, Unfit> {
    // A little beyond the ends, since there is no step outwards whose half could be the limit.
    if !(0.98 * DIAMETERS[79]..=1.02 * DIAMETERS[0]).contains(&diameter) {
        return Err(Unfit::new(
            format!("no numbered drill is near {diameter:.4} in: they go from 0.0135 to 0.2280 in"),
            "check the inputs, or take a fraction of an inch or a metric size",
        ));
    }
    let mut best = (1, DIAMETERS[0]);
    for (drill, candidate) in (1..).zip(DIAMETERS) {
        if (candidate - diameter).abs() <= (best.1 - diameter).abs() {
            best = (drill, candidate);
        }
    }
    Ok(f64::from(best.0))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::trade::find;

    /// As machinists' tables print them: ASME B94.11M.
    #[test]
    fn a_hole_may_be_named_by_its_drill() {
        let hole = find("orifice_flow").unwrap().argument("diameter").unwrap();
        for (text, inches) in [
            ("#70", "0.028 in"),
            ("no. 43", "0.089 in"),
            ("number 1", "0.228 in"),
            ("letter F", "0.257 in"),
            ("z", "0.413 in"),
            ("43 drill", "0.089 in"),
        ] {
            assert_eq!(named(text, hole).as_deref(), Some(inches), "{text}");
        }
        for text in ["70", "0.028", "1/4 in", "#0", "#81", "AA", "#", ""] {
            assert_eq!(named(text, hole), None, "{text}");
        }
        let drill = find("orifice_flow_by_drill").unwrap().argument("drill").unwrap();
        assert_eq!(named("#70", drill).as_deref(), Some("70"));
        assert_eq!(named("letter F", drill), None);
        let gauge = find("wire_resistance").unwrap().argument("gauge").unwrap();
        for text in ["#18", "18 AWG", "awg 18"] {
            assert_eq!(named(text, gauge).as_deref(), Some("18"), "{text}");
        }
        for text in ["1/0", "1/0 AWG"] {
            assert_eq!(named(text, gauge).as_deref(), Some("0"), "{text}");
        }
    }
}
