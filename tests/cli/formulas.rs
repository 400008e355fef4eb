//! `formula`: what the trade computes, as a technician asks for it.

use serde_json::Value;

use crate::common::scene::{PROGRAM, Said, program, run};
use proofwalk::trade;

/// Runs `proofwalk formula` with words as a shell would split them.
pub(super) fn formula(words: &str) -> Said {
    let words: Vec<&str> = std::iter::once("formula")
        .chain(words.split_whitespace())
        .collect();
    run(&words)
}

#[track_caller]
pub(super) fn computes(words: &str, first_line: &str) -> String {
    let said = formula(words).exits(0);
    assert_eq!(said.out.lines().next(), Some(first_line), "{words}");
    assert_eq!(said.err, "", "{words}");
    said.out
}

#[track_caller]
pub(super) fn refuses(words: &str, message: &str) {
    let said = formula(words).exits(2);
    assert_eq!(said.out, "", "{words}");
    assert_eq!(said.err.trim_end(), message, "{words}");
}

#[track_caller]
pub(super) fn fits(text: &str) {
    let wide = text.lines().find(|line| line.chars().count() >= 80);
    assert_eq!(wide, None);
}

#[test]
fn all_are_listed_by_group_a_line_each() {
    let list = formula("").exits(0).out;
    fits(&list);
    for formula in trade::all() {
        let start = format!("  {} ", formula.name);
        assert_eq!(list.lines().filter(|line| line.starts_with(&start)).count(), 1);
    }
    // What follows a blank line says how to go on.
    let groups = (list.lines().take_while(|line| !line.is_empty())).filter(|line| !line.starts_with(' '));
    let groups: Vec<String> = groups.map(str::to_lowercase).collect();
    let mut known: Vec<_> = trade::all().iter().map(|formula| formula.group).collect();
    known.sort();
    known.dedup();
    assert_eq!(groups, known.iter().map(|group| group.name()).collect::<Vec<_>>());
}

#[test]
fn a_word_lists_those_that_have_it() {
    let list = formula("Pressure").exits(0).out;
    assert!(
        list.contains("  pressure_difference ") && list.contains("  total_external_static "),
        "{list}"
    );
    assert!(!list.contains("co_air_free"), "{list}");
    // The column of the names is as wide as the longest one.
    let words: Vec<&str> = list.split_whitespace().collect();
    let whole = "total_external_static The pressure the blower works against outside the furnace.";
    assert!(words.join(" ").contains(whole), "{list}");
    let list = formula("orifice drill").exits(0).out;
    assert!(
        list.contains("  orifice_drill_for_input ") && list.contains("  orifice_flow_by_drill "),
        "{list}"
    );
    let page = formula("temperature rise").exits(0).out;
    assert_eq!(page, formula("temperature_rise").exits(0).out);
    let list = formula("electrical").exits(0).out;
    assert!(
        list.contains("  capacitance_under_load ") && !list.contains("Gas\n"),
        "{list}"
    );
    refuses(
        "temprature_rise",
        "proofwalk: no formula is called `temprature_rise`\n  help: did you mean `temperature_rise`?",
    );
    refuses(
        "temprise",
        "proofwalk: no formula is called `temprise`\n  help: did you mean `temperature_rise`?",
    );
    refuses(
        "thermister",
        "proofwalk: no formula is called `thermister`\n  help: did you mean `thermistor`?",
    );
    refuses(
        "phase_of_the_moon",
        "proofwalk: no formula is called `phase_of_the_moon`\n  help: `proofwalk formula` lists them",
    );
    // With numbers behind it, a word can only be meant as a name.
    formula("pressure high=1").exits(2);
}

/// What technicians say stands in no formula: they find it all the same.
#[test]
fn the_words_of_the_trade_find_what_is_called_otherwise() {
    for (words, name) in [
        ("tesp", "total_external_static"),
        ("delta t", "temperature_rise"),
        ("LP gas", "gas_pipe_size_propane"),
        ("propane conversion", "converted_orifice_diameter"),
        ("fan laws", "fan_airflow_at_speed"),
        ("spud", "orifice_flow"),
        ("aluminum wire", "wire_resistance_aluminium"),
        ("gas meter", "input_from_meter"),
        ("KAIR", "room_volume_known_infiltration"),
        ("make-up air", "combustion_air_mechanical"),
        ("pulley", "fan_speed_from_pulleys"),
        ("duct size", "equivalent_round_diameter"),
        ("#43", "drill_diameter"),
    ] {
        let list = formula(words).exits(0).out;
        assert!(list.contains(&format!("  {name} ")), "{words}\n{list}");
    }
    let said = formula("carburettor jet").exits(0);
    assert!(said.out.contains("  orifice_flow "), "{said:?}");
    assert!(
        said.err.starts_with("No formula has all of these words."),
        "{said:?}"
    );
    let list = formula("meter").exits(0).out;
    assert!(!list.contains("air_density"), "a meter is no metre\n{list}");
}

#[test]
fn a_page_explains_all_that_is_needed_to_compute() {
    let page = formula("capacitance-under-load").exits(0).out;
    for text in [
        "capacitance = 1000000 * current / (2 * pi * frequency * voltage)",
        "  current    A (or mA, µA): in one of the capacitor's own wires\n",
        "  frequency  Hz: of the supply; taken as 60 Hz where it is not given",
        "  gives      a capacitance, µF\n",
        "Holds: Sine waves",
        "From:  Common practice at 60 Hz",
        "Caution: Line voltage and charged capacitors can kill.",
        "the maker's instructions and local codes govern",
        "  proofwalk formula capacitance_under_load current='1.05 A'",
        "  = 7.528 µF\n",
    ] {
        let flat = |text: &str| text.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(flat(&page).contains(&flat(text)), "{text}\n{page}");
    }
    let page = formula("temperature_rise --units si").exits(0).out;
    assert!(page.contains("Warns: where the rise is below zero: "), "{page}");
    assert!(
        page.contains("supply='51.7 °C' return='21.1 °C'\n  = 30.6 °C ("),
        "{page}"
    );
}

/// Every page fits, its example can be typed into a shell, and gives what the page says it gives.
#[test]
fn the_example_of_every_page_can_be_typed() {
    for formula in trade::all() {
        let page = run(&["formula", formula.name]).exits(0).out;
        fits(&page);
        let typed: Vec<&str> = page
            .lines()
            .skip_while(|line| !line.starts_with("  proofwalk formula "))
            .take_while(|line| !line.starts_with("  = "))
            .collect();
        let script = typed.join("\n").replacen("proofwalk", "\"$PROGRAM\"", 1);
        let said = std::process::Command::new("sh")
            .args(["-c", &script])
            .env("PROGRAM", PROGRAM)
            .env("LANG", "C.UTF-8")
            .output()
            .unwrap();
        let said = Said::from(said).exits(0);
        let gives = page.lines().last().unwrap().trim_start();
        let first = said.out.lines().next().unwrap();
        assert_eq!(first.split_once(' ').unwrap(), (formula.name, gives), "{script}");
        fits(&said.out);
    }
}

#[test]
fn a_result_stands_in_the_system_of_its_inputs() {
    computes(
        "temperature_rise supply=128°F return=68°F",
        "temperature_rise = 60 °F (33.33 °C)",
    );
    computes(
        "temperature_rise supply=50°C return=20°C",
        "temperature_rise = 30 °C (54 °F)",
    );
    computes(
        "temperature_rise supply=50°C return=68°F",
        "temperature_rise = 54 °F (30 °C)",
    );
    computes(
        "temperature_rise supply=50°C return=20°C --units us",
        "temperature_rise = 54 °F (30 °C)",
    );
    computes(
        "total_external_static return=-90Pa supply=75Pa",
        "total_external_static = 165 Pa (0.6631 in.w.c.)",
    );
    computes(
        "total_external_static return=0.35in.w.c. supply=0.30inwc",
        "total_external_static = 0.65 in.w.c. (161.7 Pa)",
    );
    computes("co_air_free co=87ppm o2=5%", "co_air_free = 114.4 ppm");
    // Who asks for °C may have meant them.
    let said = computes(
        "temperature_rise supply=50 return=20°C --units si",
        "temperature_rise = -10 °C (-18 °F)",
    );
    let warning = "Warning: supply is taken in °F, since no unit was given.";
    assert!(said.contains(warning), "{said}");
}

#[test]
fn what_was_understood_is_said() {
    let said = computes(
        "capacitance_under_load current=1050 mA voltage=370",
        "capacitance_under_load = 7.528 µF",
    );
    for line in [
        "  current = 1050 mA (1.05 A)\n",
        "  voltage = 370 V, given without a unit, so taken as V\n",
        "  frequency = 60 Hz, not given, so taken as usual: the supply of North America\n",
        "Caution: Line voltage",
    ] {
        assert!(said.contains(line), "{line}\n{said}");
    }
    let said = computes(
        "temperature_rise supply= -3 F return= -5 F",
        "temperature_rise = 2 °F (1.111 °C)",
    );
    assert!(said.contains("  supply = -3 °F\n"), "{said}");
}

/// The low-pressure equation of the fuel gas code, worked outside: 119 ft³/h.
#[test]
fn a_pipe_is_asked_for_by_its_size() {
    let said = computes(
        "gas_pipe_capacity_natural size=1/2 in length=20 ft pressure_drop=0.5 in.w.c.",
        "gas_pipe_capacity_natural = 118.9 ft³/h (3.368 m³/h)",
    );
    assert!(said.contains("  size = 0.5 in\n"), "{said}");
    refuses(
        "gas_pipe_capacity_natural size=1/3in length=20ft pressure_drop=0.5",
        "proofwalk: size: `1/3in` is a fraction\n  help: write it with a point: `0.3333`",
    );
}

/// Of what length a result is, is said beside its number; sizes and falls are taken as metric tables have them.
#[test]
fn metric_figures_are_those_of_metric_tables() {
    let said = computes(
        "drain_drop length=3m slope=20mm/m",
        "drain_drop = 60 mm (2.362 in)",
    );
    assert!(said.contains("  slope = 6.096 mm (0.24 in)\n"), "{said}");
    computes(
        "drain_drop length=10ft slope=2%",
        "drain_drop = 2.4 in (60.96 mm)",
    );
    // 1.25 in in 10 ft are 1/8 in in a foot, a share of 1/96.
    computes(
        "drain_slope drop=1.25in length=10ft",
        "drain_slope = 0.125 in per ft (10.42 mm per m)",
    );
    computes(
        "available_friction_rate external_static=125Pa losses=65Pa length=60m",
        "available_friction_rate = 1 Pa per m (0.1225 in.w.c. per 100 ft)",
    );
    let said = computes(
        "gas_pipe_size_natural flow=3m3/h length=18m pressure_drop=125Pa",
        "gas_pipe_size_natural = DN 20 (0.75 in)",
    );
    assert!(said.contains("  flow = 3 m³/h ("), "{said}");
    computes(
        "gas_pipe_capacity_natural size=DN20 length=60ft pressure_drop=0.5",
        "gas_pipe_capacity_natural = 137.4 ft³/h (3.89 m³/h)",
    );
    refuses(
        "gas_pipe_capacity_natural size=21mm length=60ft pressure_drop=0.5",
        "proofwalk: no steel pipe has the nominal size 0.8268 in\n  \
         help: give one of 0.25, 0.375, 0.5, 0.75, 1, 1.25, 1.5, 2, 2.5, 3 and 4 in, or DN 8 to DN 100",
    );
    computes(
        "temperature_rise supply=50°C±0.5K return=20°C",
        "temperature_rise = 30 °C ± 0.5 °C (54 °F ± 0.9 °F)",
    );
}

#[test]
fn a_result_that_is_to_be_trusted_less_says_so() {
    let said = computes(
        "input_from_meter dial=0.5 time=18 heating_value=1000",
        "input_from_meter = 100000 BTU/h (29.31 kW)",
    );
    let warning = "Warning: the time is below 25 s: half a second is more than 2 % of it";
    assert!(said.contains(warning), "{said}");
    // Arithmetic: 18 s against 17.5 s are 2.9 %.
    let slip = "Slip: 0.5 s more or less of time moves it by up to 2857 BTU/h (0.8373 kW), 2.9 % of it: ";
    assert!(
        said.split_whitespace()
            .collect::<Vec<_>>()
            .join(" ")
            .contains(slip),
        "{said}"
    );
    let said = formula("input_from_meter dial=0.5 time=25 heating_value=1000")
        .exits(0)
        .out;
    assert!(!said.contains("Warning"), "{said}");
}

#[test]
fn accuracies_make_an_uncertainty() {
    let first = "temperature_rise = 60 °F ± 2 °F (33.3 °C ± 1.2 °C)";
    computes("temperature_rise supply=128°F±1°F return=68±1", first);
    computes("temperature_rise supply=128+-1 return=68+/-1F", first);
    let said = computes(
        "temperature_rise supply=128 return=68 --accuracy supply=±1F --accuracy return=1",
        first,
    );
    assert!(
        said.contains("  supply = 128 °F ± 1 °F, given without a unit"),
        "{said}"
    );
    assert!(said.contains("± is at worst: "), "{said}");
    // 0.5 points of oxygen at 14.8 % reach 15.3 %, where the formula gives nothing.
    let said = computes("co_air_free co=50 o2=14.8±0.5", "co_air_free = 171.3 ppm");
    assert!(said.contains("± cannot be told: "), "{said}");
}

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
