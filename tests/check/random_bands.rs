//! Random bands around two plate fields, against trying every plate and value of a grid.
//!
//! The ends differ from a field by whole volts, and three numbers are in play: what some plate and value satisfy at all,
//! some on quarter volts does. So the grid decides, and needs no published value.

use proptest::prelude::*;

use crate::library::Written;

#[derive(Clone, Copy, Debug)]
enum End {
    Fixed(i32),
    Low(i32),
    High(i32),
}

#[derive(Clone, Copy, Debug)]
struct Condition {
    words: &'static str,
    end: End,
}

type Band = Vec<Condition>;

/// A value, and the two fields, in volts.
type Point = [f64; 3];

impl Condition {
    fn holds(self, [value, low, high]: Point) -> bool {
        let end = match self.end {
            End::Fixed(volts) => f64::from(volts),
            End::Low(more) => low + f64::from(more),
            End::High(more) => high + f64::from(more),
        };
        match self.words {
            "below" => value < end,
            "at most" => value <= end,
            "above" => value > end,
            _ => value >= end,
        }
    }

    fn text(self) -> String {
        let leaning = |field: &str, more: i32| match more {
            0 => format!("plate.{field}"),
            1.. => format!("plate.{field} + {more} V"),
            _ => format!("plate.{field} - {} V", -more),
        };
        let end = match self.end {
            End::Fixed(volts) => format!("{volts} V"),
            End::Low(more) => leaning("low_mark", more),
            End::High(more) => leaning("high_mark", more),
        };
        format!("{} {end}", self.words)
    }
}

fn conditions() -> impl Strategy<Value = Condition> {
    let end = prop_oneof![
        (0..4).prop_map(End::Fixed),
        (-1..2).prop_map(End::Low),
        (-1..2).prop_map(End::High)
    ];
    let words = prop::sample::select(vec!["below", "at most", "above", "at least"]);
    (words, end).prop_map(|(words, end)| Condition { words, end })
}

fn takes(band: &Band, point: Point) -> bool {
    band.iter().all(|condition| condition.holds(point))
}

/// Every point of the grid; both fields are positive.
fn grid() -> impl Iterator<Item = Point> {
    let quarters = |from: i32, to: i32| (from..to).map(|quarter| f64::from(quarter) / 4.0);
    quarters(-16, 40)
        .flat_map(move |value| quarters(1, 30).map(move |low| [value, low]))
        .flat_map(move |[value, low]| quarters(1, 30).map(move |high| [value, low, high]))
}

/// The value and the fields that a message names; a field that it does not name matters to nothing.
fn named(message: &str) -> Point {
    let volts = |before: &str| {
        let rest = message.split_once(before)?.1;
        rest.split(' ').next()?.parse().ok()
    };
    let value = volts("no band takes ").or_else(|| volts("both take "));
    let field = |name| volts(name).unwrap_or(1.0);
    [value.unwrap(), field("low_mark is "), field("high_mark is ")]
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 200, ..ProptestConfig::default() })]

    #[test]
    fn a_gap_an_overlap_and_an_empty_band_are_found_exactly_where_there_are_any(
        bands in prop::collection::vec(prop::collection::vec(conditions(), 1..3), 1..5),
        ordered: bool,
    ) {
        let texts: Vec<String> = bands.iter().map(|band| {
            band.iter().map(|condition| condition.text()).collect::<Vec<_>>().join(", ")
        }).collect();
        let texts: Vec<&str> = texts.iter().map(String::as_str).collect();
        let mut library = Written::small().bands("valve_voltage", &texts);
        if ordered {
            let order = "  - [rise_min, rise_max]\n";
            library = library.swapped("registry/plate.yaml", order, &format!("{order}  - [low_mark, high_mark]\n"));
        }
        let found = library.found();

        let counts = |point: &Point| bands.iter().filter(|band| takes(band, *point)).count();
        let mut points = grid().filter(|[_, low, high]| !ordered || low < high);
        let (mut gap, mut overlap) = (false, false);
        let mut taken = vec![false; bands.len()];
        for point in points.by_ref() {
            let count = counts(&point);
            gap |= count == 0;
            overlap |= count > 1;
            for (band, taken) in bands.iter().zip(&mut taken) {
                *taken |= takes(band, point);
            }
        }
        let has = |rule| found.iter().any(|found| found.rule == rule);
        prop_assert_eq!((has("band-gap"), has("band-overlap")), (gap, overlap), "{:?}", found);
        let empty = found.iter().filter(|found| found.rule == "impossible-band").count();
        prop_assert_eq!(empty, taken.iter().filter(|taken| !**taken).count(), "{:?}", found);
        for found in found.iter().filter(|found| found.rule != "impossible-band") {
            let count = counts(&named(&found.message));
            match found.rule {
                "band-gap" => prop_assert_eq!(count, 0, "{}", found.message),
                _ => prop_assert!(count > 1, "{}", found.message),
            }
        }
    }
}
