//! How a wrong use is told, and what terminals and other programs get.

use serde_json::Value;

use super::{fits, formula, refuses};
use crate::common::scene::{Said, program, run};
use proofwalk::trade;

#[test]
fn what_is_wrong_is_told_with_its_mend() {
    for (words, message) in [
        (
            "temperature_rise supply=128",
            "proofwalk: return is missing: the air just before it\n  help: give it in degF, for instance return='70 °F'",
        ),
        (
            "temperature_rise suply=128 return=68",
            "proofwalk: `suply` is no argument of temperature_rise\n  help: did you mean `supply`?",
        ),
        (
            "temperature_rise supply=128 return=68 supply=129",
            "proofwalk: supply is given twice: `128` and `129`\n  help: give it once",
        ),
        (
            "temperature_rise supply=24V return=68",
            "proofwalk: supply: `24V` is a voltage; °F measures a temperature\n  help: write it in degF or degC",
        ),
        (
            "temperature_rise supply=hot return=68,5",
            "proofwalk: supply: `hot` does not start with a number\n  \
             help: write a number and its unit, for instance `24 degF`\n\
             proofwalk: return: `68,5` has a comma, which can be read two ways\n  help: write a decimal point: `68.5`",
        ),
        (
            "input_from_meter dial=0.5 time=29 heating_value=1,000",
            "proofwalk: heating_value: `1,000` has a comma, which can be read two ways\n  help: write `1000`",
        ),
        (
            "total_external_static return=0.3 furlong supply=0.3",
            "proofwalk: return: `furlong` is not a unit\n  \
             help: write it in in.w.c., Pa, kPa, mbar, psi or inHg",
        ),
        (
            "co_air_free co=50 o2=16",
            "proofwalk: at 16 % oxygen the sample is mostly air, and the oxygen cell's error would decide the result\n  \
             help: look for air leaking into the probe or the vent, and sample where oxygen is below 15 %",
        ),
        (
            "temperature_rise 128 68",
            "proofwalk: `128` does not say which argument it is\n  \
             help: write ARG=QUANTITY, for instance supply='125 °F'",
        ),
        (
            "temperature_rise supply=128±1±2 return=68",
            "proofwalk: how far supply may be off is given twice\n  help: write one accuracy behind the value",
        ),
        (
            "temperature_rise supply=128±1 return=68 --accuracy supply=2",
            "proofwalk: how far supply may be off is given twice\n  help: write `128` without it, or leave out the other",
        ),
        (
            "temperature_rise supply=128 return=68 --accuracy sipply=2",
            "proofwalk: `sipply` is no argument of temperature_rise\n  help: did you mean `supply`?",
        ),
        (
            "temperature_rise supply=1e999 return=68",
            "proofwalk: supply: `1e999` is too large\n  help: write a number a meter can show",
        ),
    ] {
        refuses(words, message);
    }
    formula("temperature_rise supply=128 return=68 --units metric").exits(2);
}

#[test]
fn nothing_that_was_typed_acts_on_the_terminal() {
    let hostile = "\u{1b}]0;owned\u{7}\u{202e}";
    for words in [
        vec![hostile.to_owned()],
        vec!["temperature_rise".to_owned(), format!("{hostile}=1")],
        vec!["temperature_rise".to_owned(), hostile.to_owned()],
        vec![
            "temperature_rise".to_owned(),
            format!("supply={hostile}"),
            "return=1".to_owned(),
        ],
        vec![
            "temperature_rise".to_owned(),
            format!("supply=1 {hostile}"),
            "return=1".to_owned(),
        ],
        vec![
            "temperature_rise".to_owned(),
            format!("supply=1±{hostile}"),
            "return=1".to_owned(),
        ],
        vec!["temperature_rise".to_owned(), "x".repeat(100_000)],
    ] {
        let words: Vec<&str> = std::iter::once("formula")
            .chain(words.iter().map(String::as_str))
            .collect();
        let said = run(&words).exits(2);
        assert!(!said.err.contains(['\u{1b}', '\u{7}', '\u{202e}']), "{said:?}");
        assert!(said.err.len() < 1_000, "{} bytes", said.err.len());
    }
}

#[test]
fn a_plain_terminal_gets_what_it_can_show_and_type() {
    let plain = |words: &[&str]| -> Said {
        let output = program().env("LANG", "C").arg("formula").args(words).output();
        output.unwrap().into()
    };
    let page = plain(&["capacitance_under_load"]).exits(0).out;
    assert!(page.is_ascii(), "{page}");
    for words in [
        vec![],
        vec!["gas"],
        vec!["airflow_from_rise"],
        vec!["cable_voltage_drop", "--units", "si"],
    ] {
        fits(&plain(&words).exits(0).out);
    }
    let said = plain(&["temperature_rise", "supply=125 degF+-1", "return=70 degF"])
        .exits(0)
        .out;
    assert!(
        said.starts_with("temperature_rise = 55 degF +/- 1 degF"),
        "{said}"
    );
}

#[test]
fn other_programs_get_json() {
    let read = |words: &str| -> Value { serde_json::from_str(&formula(words).exits(0).out).unwrap() };
    let all = read("--format json");
    let names: Vec<&str> = (all.as_array().unwrap().iter())
        .map(|page| page["name"].as_str().unwrap())
        .collect();
    assert_eq!(
        names,
        trade::all()
            .iter()
            .map(|formula| formula.name)
            .collect::<Vec<_>>()
    );
    let page = read("capacitance_under_load --format json");
    assert_eq!(page["group"], "electrical");
    assert_eq!(page["arguments"][2]["default"]["value"], 60.0);
    assert_eq!(page["example"][0]["given"], "1.05 A");

    let worked = read("temperature_rise supply=50°C±0.5°C return=20°C --format json");
    assert_eq!(worked["result"]["value"], 30.0);
    assert_eq!(worked["result"]["unit"], "°C");
    assert_eq!(worked["result"]["margin"], 0.5);
    assert_eq!(worked["inputs"][0]["origin"], "written");
    assert_eq!(worked["warnings"], Value::Array(vec![]));
    let worked = read("input_from_meter dial=0.5 time=18 heating_value=1000 --format json");
    assert_eq!(worked["inputs"][1]["origin"], "bare");
    assert_eq!(worked["slips"][0]["value"], 0.5);
    assert_eq!(worked["slips"][0]["moves"]["unit"], "BTU/h");
    assert_eq!(worked["warnings"][0]["when"], "the time is below 25 s");
    assert_eq!(worked["warnings"][0]["borderline"], false);
    let worked = read("input_from_meter dial=0.5 time=26±2 heating_value=1000 --format json");
    assert_eq!(worked.get("unusual"), None);
    assert_eq!(worked["warnings"][0]["borderline"], true);
}
