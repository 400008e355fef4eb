//! Bands: gaps and overlaps, with the value and the plate that show them.

use crate::library::Written;

const MARKS: [&str; 3] = [
    "below plate.low_mark",
    "plate.low_mark to plate.high_mark",
    "above plate.high_mark",
];

#[track_caller]
fn says(reading: &str, bands: &[&str], expected: &[(&str, &str, &str)]) {
    Written::small().bands(reading, bands).says(expected);
}

#[track_caller]
fn helps(library: &Written, help: &str) {
    assert_eq!(library.found()[0].help, help);
}

#[test]
fn bands_that_take_every_value_once_are_right() {
    says(
        "flame_current",
        &["below 0.5 uA", "at least 0.5 uA, below 1.5 uA", "at least 1.5 uA"],
        &[],
    );
    says(
        "temperature_rise",
        &[
            "below plate.rise_min",
            "plate.rise_min to plate.rise_max",
            "above plate.rise_max",
        ],
        &[],
    );
    says(
        "valve_voltage",
        &["below 90 % of plate.low_mark", "at least 90 % of plate.low_mark"],
        &[],
    );
    says(
        "temperature_rise",
        &["at most plate.rise_min + 5 °F", "above plate.rise_min + 5 °F"],
        &[],
    );
}

#[test]
fn a_gap_is_shown_by_a_short_believable_value() {
    let gap = |message| [("band-gap", "no-heat.yaml:9", message)];
    says(
        "flame_current",
        &["below 1 uA", "at least 2 uA"],
        &gap("no band takes 1.5 µA"),
    );
    says(
        "flame_current",
        &["below 1 uA", "above 1 uA"],
        &gap("no band takes 1 µA"),
    );
    says(
        "flame_current",
        &["1 uA to 2 uA"],
        &gap("no band takes 0.5 µA or 30 µA"),
    );
    // Outside what is believed, every value still must be taken.
    says(
        "flame_current",
        &["0 uA to 60 uA", "above 60 uA"],
        &gap("no band takes -0.5 µA"),
    );
}

#[test]
fn an_overlap_stands_at_the_later_band_with_a_value_of_both() {
    says(
        "valve_voltage",
        &["below 2 V", "at least 1 V"],
        &[(
            "band-overlap",
            "no-heat.yaml:11",
            "`below 2 V` and `at least 1 V` both take 1.5 V",
        )],
    );
    let touching = Written::small().bands("valve_voltage", &["at most 2 V", "at least 2 V"]);
    touching.says(&[(
        "band-overlap",
        "no-heat.yaml:11",
        "`at most 2 V` and `at least 2 V` both take 2 V",
    )]);
    helps(
        &touching,
        "they meet there: write `below` or `above` in one of the two",
    );
}

#[test]
fn a_gap_between_plate_fields_is_shown_with_a_plate() {
    let bands = ["at most plate.rise_min", "at least plate.rise_max"];
    says(
        "temperature_rise",
        &bands,
        &[(
            "band-gap",
            "no-heat.yaml:9",
            "no band takes 60 °F where plate.rise_min is 40 °F and plate.rise_max is 70 °F",
        )],
    );
}

#[test]
fn fields_without_an_order_may_lie_either_way_and_the_mend_is_the_order() {
    let library = Written::small().bands("valve_voltage", &MARKS);
    let found = library.found();
    assert_eq!(found.len(), 1, "{found:?}");
    assert_eq!(
        (found[0].rule, found[0].place.as_str()),
        ("band-overlap", "no-heat.yaml:12")
    );
    assert!(
        found[0]
            .message
            .starts_with("`below plate.low_mark` and `above plate.high_mark` both take "),
        "{}",
        found[0].message
    );
    helps(
        &library,
        "if it is so on every plate, add [low_mark, high_mark] to `order:` in registry/plate.yaml: then these bands are \
         right",
    );
    let order = "  - [rise_min, rise_max]\n";
    let ordered = format!("{order}  - [low_mark, high_mark]\n");
    library.swapped("registry/plate.yaml", order, &ordered).is_right();
}

/// Three bands around two plate fields, with and without an order, and with their end points in or out. Which of them
/// leave a gap or share a value was computed by trying every weak order of two fields and a value.
#[test]
fn three_bands_around_two_fields() {
    let cases = [
        (["below low", "low to high", "above high"], false, (false, true)),
        (["below low", "low to high", "above high"], true, (false, false)),
        (["at most low", "low to high", "above high"], false, (false, true)),
        (["at most low", "low to high", "above high"], true, (false, true)),
        (
            ["below low", "above low, below high", "above high"],
            false,
            (true, true),
        ),
        (
            ["below low", "above low, below high", "above high"],
            true,
            (true, false),
        ),
    ];
    for (bands, ordered, (gap, overlap)) in cases {
        let (low, high, reading) = if ordered {
            ("rise_min", "rise_max", "temperature_rise")
        } else {
            ("low_mark", "high_mark", "valve_voltage")
        };
        let bands = bands.map(|band| {
            band.replace("low", &format!("plate.{low}"))
                .replace("high", &format!("plate.{high}"))
        });
        // `below` has a `low` in it.
        let bands = bands.map(|band| band.replace(&format!("beplate.{low}"), "below"));
        let bands: Vec<&str> = bands.iter().map(String::as_str).collect();
        let found = Written::small().bands(reading, &bands).found();
        let has = |rule| found.iter().any(|found| found.rule == rule);
        assert_eq!(
            (has("band-gap"), has("band-overlap")),
            (gap, overlap),
            "{bands:?}: {found:?}"
        );
    }
}

#[test]
fn a_field_whose_plausible_range_is_positive_is_positive() {
    // The half of a positive mark lies below it.
    says(
        "valve_voltage",
        &[
            "below 50 % of plate.low_mark",
            "50 % of plate.low_mark to plate.low_mark",
            "above plate.low_mark",
        ],
        &[],
    );
    let library = Written::small()
        .bands(
            "valve_voltage",
            &[
                "below 50 % of plate.low_mark",
                "50 % of plate.low_mark to plate.low_mark",
                "above plate.low_mark",
            ],
        )
        .swapped(
            "registry/plate.yaml",
            "Lower mark, unit: V, plausible: 2 V",
            "Lower mark, unit: V, plausible: -2 V",
        );
    let found = library.found();
    assert!(!found.is_empty());
    assert!(
        found[0].message.contains("where plate.low_mark is -"),
        "{found:?}"
    );
}

#[test]
fn the_value_of_a_plate_step_is_the_field_itself() {
    let asked = |bands: &str| {
        Written::small().steps(&format!(
            "  a:\n    plate: rise_max\n    source: common_practice\n    bands:\n{bands}  done: {{ verdict: nothing_found, because: So. }}\n"
        ))
    };
    // rise_max lies above rise_min on every plate, and above nothing.
    asked("      above plate.rise_min: done\n").is_right();
    asked("      above 0 °F: done\n").is_right();
    asked("      above 20 °F: done\n").says(&[("band-gap", "no-heat.yaml:9", "no band takes 10 °F")]);
}

#[test]
fn the_same_words_are_judged_by_what_they_are_asked_of() {
    let library = Written::small().steps(
        "  a: { plate: rise_max, source: common_practice, bands: { above plate.rise_min: b } }
  b: { measure: temperature_rise, source: common_practice, bands: { above plate.rise_min: c } }
  c: { measure: temperature_rise, source: common_practice, bands: { above plate.rise_min: done } }
  done: { verdict: nothing_found, because: So. }
",
    );
    let found = library.found();
    let places: Vec<_> = found.iter().map(|f| (f.rule, f.place.as_str())).collect();
    assert_eq!(
        places,
        [("band-gap", "no-heat.yaml:7"), ("band-gap", "no-heat.yaml:8")]
    );
}

#[test]
fn the_same_words_are_read_on_each_scale() {
    let bands = "source: common_practice, bands: { below 40 °F: NEXT, above 50 °F: done }";
    let steps = "  a: { measure: room_air, BANDS }
  b: { measure: temperature_rise, BANDS }
  done: { verdict: nothing_found, because: So. }
";
    let [a, b] = ["b", "done"].map(|next| bands.replace("NEXT", next));
    let steps = steps.replacen("BANDS", &a, 1).replacen("BANDS", &b, 1);
    let reading = "room_air: { title: Air in the room, unit: °F, plausible: 0 °F to 120 °F, accuracy: 1 °F }";
    let rise = "temperature_rise: {";
    let library = Written::small()
        .swapped("registry/readings.yaml", rise, &format!("{reading}\n  {rise}"))
        .steps(&steps);
    library.says(&[
        ("band-gap", "no-heat.yaml:6", "no band takes 45 °F"),
        ("band-gap", "no-heat.yaml:7", "no band takes 45 °F"),
    ]);
}

#[test]
fn a_list_of_no_bands_takes_nothing() {
    let library =
        Written::small()
            .bands("flame_current", &[])
            .swapped("no-heat.yaml", "bands:\n", "bands: {}\n");
    assert!(
        library
            .found()
            .iter()
            .any(|found| found.message == "no band takes any value")
    );
}

#[test]
fn thousands_of_bands_are_swept() {
    let mut bands: Vec<String> = (0..5000)
        .map(|at| format!("at least {at} V, below {} V", at + 1))
        .collect();
    bands.push("below 0 V".to_owned());
    bands.push("at least 5000 V, below plate.low_mark".to_owned());
    bands.push("at least 5000 V, at least plate.low_mark".to_owned());
    bands.remove(2500);
    let bands: Vec<&str> = bands.iter().map(String::as_str).collect();
    says(
        "valve_voltage",
        &bands,
        &[
            (
                "crowded-screen",
                "no-heat.yaml:6",
                "`asked` takes 5006 lines with its 5002 answers, and a screen of 80 by 24 has 20",
            ),
            (
                "band-gap",
                "no-heat.yaml:9",
                "no band takes 2500.5 V where plate.low_mark is 6 V",
            ),
        ],
    );
}

#[test]
fn more_fields_than_can_be_decided_are_said_so() {
    let fields: String = (0..9)
        .map(|at| format!("  f{at}: {{ title: F, unit: V, plausible: 0 V to 9 V }}\n"))
        .collect();
    let bands: Vec<String> = (0..9).map(|at| format!("above plate.f{at}")).collect();
    let bands: Vec<&str> = bands.iter().map(String::as_str).collect();
    let library = Written::small().bands("valve_voltage", &bands).swapped(
        "registry/plate.yaml",
        "fields:\n",
        &format!("fields:\n{fields}"),
    );
    library.says(&[
        (
            "band-gap",
            "no-heat.yaml:9",
            "whether these bands take every value cannot be decided",
        ),
        (
            "band-overlap",
            "no-heat.yaml:9",
            "whether two of these bands take one value cannot be decided",
        ),
    ]);
}

#[test]
fn bands_made_to_be_hard_are_given_up_in_time() {
    let fields: String = (0..7)
        .map(|at| format!("  f{at}: {{ title: F, unit: V, plausible: 0 V to 9 V }}\n"))
        .collect();
    let bands: Vec<String> = (0..60)
        .map(|at| {
            let (low, high) = (at % 7, (at + 1 + at / 7) % 7);
            format!(
                "above {} % of plate.f{low}, below plate.f{high} + {at} V",
                90 + at
            )
        })
        .collect();
    let bands: Vec<&str> = bands.iter().map(String::as_str).collect();
    let library = Written::small().bands("valve_voltage", &bands).swapped(
        "registry/plate.yaml",
        "fields:\n",
        &format!("fields:\n{fields}"),
    );
    let start = std::time::Instant::now();
    assert!(!library.found().is_empty());
    assert!(start.elapsed().as_secs() < 30);
}
