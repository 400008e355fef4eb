//! Bands that are read, and what they let through.

use super::{band_of, difference, quantity, scale};
use crate::measure::{Band, BandText, Bound, Interval, Misread, Quantity, Relation, Scale, Unit};

const RISE: Scale = Scale::difference(Unit::DegreeFahrenheit);

#[track_caller]
fn volts(text: &str) -> Band<String> {
    band_of(text, scale("V"), scale("V")).unwrap()
}

#[track_caller]
fn holds(band: &Band<String>, value: &str, plate: &[(&str, Quantity)]) -> Option<bool> {
    band.contains(quantity(value), &|name: &String| {
        plate
            .iter()
            .find(|(field, _)| field == name)
            .map(|&(_, value)| value)
    })
}

#[test]
fn each_relation_is_read() {
    for (text, at_bound, beneath, beyond) in [
        ("below 5 V", false, true, false),
        ("at most 5 V", true, true, false),
        ("above 5 V", false, false, true),
        ("at least 5 V", true, false, true),
    ] {
        let band = volts(text);
        assert_eq!(holds(&band, "5000 mV", &[]), Some(at_bound), "{text}");
        assert_eq!(holds(&band, "4.99 V", &[]), Some(beneath), "{text}");
        assert_eq!(holds(&band, "5.01 V", &[]), Some(beyond), "{text}");
    }
}

#[test]
fn both_ends_of_a_range_are_in() {
    let band = volts("20.4 V to 30 V");
    let relations: Vec<Relation> = band
        .conditions
        .iter()
        .map(|condition| condition.relation)
        .collect();
    assert_eq!(relations, [Relation::AtLeast, Relation::AtMost]);
    for (value, inside) in [
        ("20.4 V", true),
        ("30 V", true),
        ("20.39 V", false),
        ("30.01 V", false),
    ] {
        assert_eq!(holds(&band, value, &[]), Some(inside), "{value}");
    }
}

#[test]
fn joined_conditions_must_all_hold() {
    let band = volts("above 0.5 V,  below 1.5 V");
    assert_eq!(holds(&band, "0.5 V", &[]), Some(false));
    assert_eq!(holds(&band, "1 V", &[]), Some(true));
    assert_eq!(holds(&band, "1.5 V", &[]), Some(false));
}

#[test]
fn space_and_case_of_the_words_do_not_matter() {
    assert_eq!(
        volts("  At   Least  5 V ,\tBELOW 9 V "),
        volts("at least 5 V, below 9 V")
    );
    assert_eq!(volts("1 V To 2 V"), volts("1 V to 2 V"));
    let input = |text: &str| band_of(text, scale("BTU/h"), scale("BTU/h")).unwrap();
    assert_eq!(
        input("below 90%  of  plate.input-500 BTU/h"),
        input("below 90 percent of plate.input - 500 BTU/h")
    );
}

#[test]
fn a_bound_may_lean_on_the_plate() {
    let input = band_of(
        "at least 90 % of plate.input, at most plate.input",
        scale("BTU/h"),
        scale("BTU/h"),
    )
    .unwrap();
    let plate = [("input", quantity("80000 BTU/h"))];
    assert_eq!(holds(&input, "72000 BTU/h", &plate), Some(true));
    assert_eq!(holds(&input, "71999 BTU/h", &plate), Some(false));
    assert_eq!(holds(&input, "80001 BTU/h", &plate), Some(false));

    let manifold = band_of(
        "plate.set - 0.3 in.w.c. to plate.set + 0.3 in.w.c.",
        scale("inwc"),
        scale("inwc"),
    )
    .unwrap();
    let plate = [("set", quantity("3.5 in.w.c."))];
    assert_eq!(holds(&manifold, "3.2 in.w.c.", &plate), Some(true));
    assert_eq!(holds(&manifold, "3.8 in.w.c.", &plate), Some(true));
    assert_eq!(holds(&manifold, "3.81 in.w.c.", &plate), Some(false));
}

#[test]
fn share_and_offset_combine() {
    let band = band_of(
        "above 50 % of plate.input + 1000 BTU/h",
        scale("BTU/h"),
        scale("BTU/h"),
    )
    .unwrap();
    let plate = [("input", quantity("10000 BTU/h"))];
    assert_eq!(holds(&band, "6000 BTU/h", &plate), Some(false));
    assert_eq!(holds(&band, "6001 BTU/h", &plate), Some(true));
}

#[test]
fn an_offset_on_a_temperature_is_a_difference() {
    let band = band_of("above plate.opens - 10 °C", scale("F"), scale("F")).unwrap();
    // 10 °C below 200 °F is 182 °F (arithmetic).
    let plate = [("opens", quantity("200 °F"))];
    assert_eq!(holds(&band, "182 °F", &plate), Some(false));
    assert_eq!(holds(&band, "182.1 °F", &plate), Some(true));
}

#[test]
fn an_unknown_field_decides_nothing_unless_another_condition_does() {
    let band = volts("above 5 V, below plate.most");
    assert_eq!(holds(&band, "6 V", &[]), None);
    assert_eq!(holds(&band, "4 V", &[]), Some(false));
    assert_eq!(holds(&band, "6 ohm", &[]), None);
    assert_eq!(holds(&band, "6 V", &[("most", quantity("9 ohm"))]), None);
}

#[test]
fn the_caller_names_the_fields_and_knows_where_they_stand() {
    #[derive(Debug, PartialEq)]
    enum Problem {
        Unknown(String, std::ops::Range<usize>),
        Text(Misread),
    }
    impl From<Misread> for Problem {
        fn from(misread: Misread) -> Self {
            Self::Text(misread)
        }
    }
    let text = "at least 90 % of plate.inputt - 5 V";
    let read = BandText::parse(text).unwrap();
    let resolved = read.resolve::<(), _>(scale("V"), |name, range| {
        Err(Problem::Unknown(name.to_owned(), range))
    });
    assert_eq!(resolved, Err(Problem::Unknown("inputt".into(), 17..29)));
    assert_eq!(&text[17..29], "plate.inputt");
    let bound = &read.conditions[0].bound;
    assert_eq!(&text[bound.range.clone()], "90 % of plate.inputt - 5 V");
    assert_eq!(bound.share, Some(0.9));
    let (sign, amount, range) = bound.amount.clone().unwrap();
    assert_eq!((sign, amount.number, &text[range]), (-1.0, 5.0, "5 V"));

    let resolved = read.resolve(scale("ohm"), |_, _| Ok::<_, Problem>(((), scale("ohm"))));
    let Err(Problem::Text(misread)) = resolved else {
        panic!("{resolved:?}");
    };
    assert_eq!(&text[misread.range], "5 V");
}

#[test]
fn a_band_is_shown_in_its_own_words() {
    for text in [
        "below 5 V",
        "20.4 V to 30 V",
        "above 0.5 V, below 1.5 V",
        "at most plate.x",
        "plate.x to 9 V",
    ] {
        let shown = volts(text)
            .display(scale("V"), |name| format!("plate.{name}"))
            .to_string();
        assert_eq!(shown, text);
    }
    let text = "at least 92.5 % of plate.rise - 5 °F";
    let band = band_of(text, RISE, RISE).unwrap();
    assert_eq!(
        band.display(RISE, |name| format!("plate.{name}")).to_string(),
        text
    );
    let band = band_of("below 24000 mV", scale("V"), scale("V")).unwrap();
    assert_eq!(band.display(scale("V"), String::clone).to_string(), "below 24 V");
}

#[test]
fn bounds_can_be_asked_for_their_value_and_field() {
    let band = band_of("plate.least + 5 °F to 70 °F", RISE, RISE).unwrap();
    let plate = |name: &String| (name == "least").then(|| difference("35 °F"));
    let values: Vec<_> = band.bounds().map(|bound| bound.value(&plate)).collect();
    assert_eq!(values, [Some(difference("40 °F")), Some(difference("70 °F"))]);
    let fields: Vec<_> = band.bounds().map(Bound::leans_on).collect();
    assert_eq!(fields, [Some(&"least".to_owned()), None]);
    assert_eq!(
        Bound::field("x").value(&|_| Some(quantity("3 V"))),
        Some(quantity("3 V"))
    );
    assert_eq!(
        Bound::<()>::fixed(quantity("3 V")).value(&|()| None),
        Some(quantity("3 V"))
    );
    assert_eq!(
        band.map_fields(String::len)
            .bounds()
            .next()
            .and_then(Bound::leans_on),
        Some(&5)
    );
}

#[test]
fn a_band_is_an_interval_once_its_fields_are_known() {
    let band = volts("above 5 V, at most plate.most");
    assert_eq!(band.interval(&|_| None), None);
    let interval = band.interval(&|_| Some(quantity("9 V"))).unwrap();
    assert!(!interval.contains(5.0) && interval.contains(9.0) && !interval.contains(9.1));
    let upside_down = volts("9 V to 5 V").interval(&|_| None).unwrap();
    assert!(upside_down.is_empty());
    assert_eq!(Interval::from_conditions([]), Interval::everything());
}
