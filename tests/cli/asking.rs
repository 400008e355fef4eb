//! `formula`: how a tradesman asks, and what he is told of his numbers.

use super::formulas::{computes, fits, formula, refuses};
use crate::common::scene::run;
use proofwalk::trade;

/// 348 ppm at 2.7 to 3.3 % of oxygen are 399.6 to 413.2 ppm free of air (arithmetic): across the 400 of the standard.
#[test]
fn a_limit_within_the_accuracy_is_told() {
    let said = formula("co_air_free co=348 o2=3±0.3").exits(0).out;
    let flat = said.split_whitespace().collect::<Vec<_>>().join(" ");
    for text in [
        "Warning: whether it is above 400 ppm cannot be told, since the limit lies within the accuracy: read again, or with a better meter.",
        "Until then take it that it is so: a vented central furnace may not leave more; shut it down",
    ] {
        assert!(flat.contains(text), "{text}\n{said}");
    }
    let said = formula("co_air_free co=300 o2=3±0.3").exits(0).out;
    assert!(!said.contains("Warning"), "{said}");
    // A cell that reads 3 ppm is not off to below nothing.
    computes("co_air_free co=3±5 o2=5", "co_air_free = 3.9 ppm ± 6.6 ppm");
}

#[test]
fn what_no_house_has_is_warned_of_or_refused() {
    let said = formula("room_volume_standard input=8000000").exits(0).out;
    let flat = said.split_whitespace().collect::<Vec<_>>().join(" ");
    let warning =
        "Warning: input is 8000000 BTU/h; in houses it is 2000 BTU/h to 600000 BTU/h. Check it for a slip";
    assert!(flat.contains(warning), "{said}");
    let said = formula("input_at_manifold_pressure input=80000 pressure=7 plate_pressure=3.5")
        .exits(0)
        .out;
    assert!(
        said.contains("Warning: the input is more than 5 % over the plate's: the burner is overfired"),
        "{said}"
    );
    let said = formula("winding_temperature cold=13 cold_at=68 hot=9").exits(2);
    assert!(
        said.err.contains("is no temperature of a winding"),
        "{}",
        said.err
    );
    let said = formula("winding_temperature cold=10.5 cold_at=68 hot=10")
        .exits(0)
        .out;
    assert!(
        said.contains("Warning: the winding is colder than it was cold"),
        "{said}"
    );
    for words in [
        "capacitance_under_load current=1 voltage=370 frequency=600Hz",
        "input_from_meter dial=5000 time=29 heating_value=1000",
        "input_at_manifold_pressure input=80000 pressure=60 plate_pressure=3.5",
    ] {
        formula(words).exits(2);
    }
}

/// As a tradesman types it: each against the plain way of writing the same.
#[test]
fn what_a_tradesman_types_is_read() {
    let result = |words: &[&str]| {
        let words: Vec<&str> = [&["formula"], words].concat();
        run(&words)
            .exits(0)
            .out
            .lines()
            .next()
            .unwrap_or_default()
            .to_owned()
    };
    for (typed, plain) in [
        (
            vec!["temperature_rise", "SUPPLY=128", "Return=68"],
            vec!["temperature_rise", "supply=128", "return=68"],
        ),
        (
            vec!["co_air_free", "co=87,o2=5"],
            vec!["co_air_free", "co=87", "o2=5"],
        ),
        (
            vec!["co_air_free", "co=87,", "o2=5"],
            vec!["co_air_free", "co=87", "o2=5"],
        ),
        (
            vec!["input_deviation", "input=64 MBH", "plate_input=60 kBtu/h"],
            vec!["input_deviation", "input=64000", "plate_input=60000"],
        ),
        (
            vec!["connector_rise", "length=12'"],
            vec!["connector_rise", "length=12 ft"],
        ),
        (
            vec!["connector_rise", "length=12' 6\""],
            vec!["connector_rise", "length=12.5 ft"],
        ),
        (
            vec![
                "gas_pipe_capacity_natural",
                "size=1½",
                "length=20'",
                "pressure_drop=0.5wc",
            ],
            vec![
                "gas_pipe_capacity_natural",
                "size=1.5",
                "length=20",
                "pressure_drop=0.5",
            ],
        ),
        (
            vec![
                "gas_pipe_size_natural",
                "flow=100 scfh",
                "length=60",
                "pressure_drop=½ in.w.c.",
            ],
            vec![
                "gas_pipe_size_natural",
                "flow=100",
                "length=60",
                "pressure_drop=0.5",
            ],
        ),
        (
            vec![
                "input_from_meter",
                "dial=2",
                "time=1 min 12 s",
                "heating_value=1025",
            ],
            vec!["input_from_meter", "dial=2", "time=72", "heating_value=1025"],
        ),
        (
            vec![
                "orifice_flow_by_drill",
                "drill=#70",
                "pressure=3.5",
                "specific_gravity=0.6",
            ],
            vec![
                "orifice_flow_by_drill",
                "drill=70",
                "pressure=3.5",
                "specific_gravity=0.6",
            ],
        ),
        (
            vec![
                "orifice_flow",
                "diameter=letter F",
                "pressure=3.5",
                "specific_gravity=0.6",
            ],
            vec![
                "orifice_flow",
                "diameter=0.257",
                "pressure=3.5",
                "specific_gravity=0.6",
            ],
        ),
    ] {
        assert_eq!(result(&typed), result(&plain), "{typed:?}");
    }
    let shouted = formula("temperature_rise supply=128 return=68 --units SI")
        .exits(0)
        .out;
    assert_eq!(
        shouted.lines().next(),
        Some("temperature_rise = 33.33 °C (60 °F)")
    );
    refuses(
        "orifice_flow_by_drill drill=F pressure=3.5 specific_gravity=0.6",
        "proofwalk: drill: `F` does not start with a number\n  help: give its number, 1 to 80; a letter or a fraction of an inch \
         goes into `orifice_flow`, as its diameter",
    );
    refuses(
        "room_volume_standard input=80MBtu/h",
        "proofwalk: input: `MBtu/h` is a thousand to some and a million to others\n  \
         help: write it in BTU/h, or in kBTU/h, which are thousands",
    );
}

#[test]
fn a_search_matches_whole_words_units_and_arguments() {
    let found = |words: &str| -> Vec<String> {
        let all = formula(words).exits(0).out;
        let names = all
            .lines()
            .filter_map(|line| line.strip_prefix("  ")?.split(' ').next());
        let known = names.filter(|name| trade::find(name).is_some());
        known.map(str::to_owned).collect()
    };
    assert_eq!(found("CO"), ["co_air_free", "co_air_free_from_co2"]);
    assert_eq!(
        found("clocking"),
        [
            "input_from_meter",
            "input_from_uncompensated_meter",
            "timing_error"
        ]
    );
    for unit in ["uF", "mfd"] {
        assert_eq!(
            found(unit),
            ["capacitance_under_load", "capacitor_deviation"],
            "{unit}"
        );
    }
    assert!(found("cfm").contains(&"airflow_from_rise".to_owned()));
    assert!(found("wc").contains(&"pressure_difference".to_owned()));
    assert!(!found("amp").contains(&"temperature_rise".to_owned()));
    assert_eq!(found("dropout"), ["flame_signal_margin"]);
    assert!(found("altitude").contains(&"derated_input_from_sea_level".to_owned()));
    assert!(found("MBH").contains(&"input_from_meter".to_owned()));
    assert_eq!(formula("list").exits(0).out, formula("").exits(0).out);
    assert!(formula("help").exits(0).out.contains("Usage: proofwalk formula"));
    refuses(
        "gas dial=2",
        "proofwalk: no formula is called `gas`\n  help: that is a group of formulas: `proofwalk formula gas` lists them; \
         `dial` goes into `input_from_meter` and `input_from_uncompensated_meter`",
    );
    refuses(
        "--accuracy supply=1",
        "proofwalk: `--accuracy supply=1` is of no formula\n  help: name the formula first, and give it its numbers",
    );
    refuses(
        "temperature_rise supply=128 return=68 --accuracy 1",
        "proofwalk: `1` does not say which argument it is\n  \
         help: say of which argument, for instance --accuracy supply='1 degF'",
    );
}

/// Its figures by hand: 20 ft are 6.096 m, 300 °F are 148.9 °C.
#[test]
fn a_page_in_metric_units_is_metric() {
    let page = formula("theoretical_draft --units si").exits(0).out;
    fits(&page);
    for text in [
        "height m (or in, ft",
        "up to 200 ft (61 m)",
        "-60 to 130 °F (-51.1 to 54.4 °C)",
        "height='6.1 m'",
        "vent_gas='149 °C'",
        "write the unit",
    ] {
        assert!(
            page.split_whitespace()
                .collect::<Vec<_>>()
                .join(" ")
                .contains(&text.split_whitespace().collect::<Vec<_>>().join(" ")),
            "{text}\n{page}"
        );
    }
    let gives = page.lines().last().unwrap().trim();
    assert!(gives.starts_with("= 27.") && gives.contains("Pa ("), "{gives}");
}

#[test]
fn a_long_result_stands_on_two_lines() {
    let said = formula("gas_pipe_pressure_drop_natural size=0.75 length=60±1 flow=100±3")
        .exits(0)
        .out;
    fits(&said);
    let mut lines = said.lines();
    assert!(
        lines
            .next()
            .unwrap()
            .starts_with("gas_pipe_pressure_drop_natural = ")
    );
    // Sizes that are made have nothing between them.
    let said = formula("gas_pipe_size_natural flow=100±40 length=60 pressure_drop=0.5")
        .exits(0)
        .out;
    assert_eq!(
        said.lines().next(),
        Some("gas_pipe_size_natural = 0.75 in (DN 20)")
    );
    assert!(
        said.contains("± off as far as they may be, the inputs reach sizes up to "),
        "{said}"
    );
}
