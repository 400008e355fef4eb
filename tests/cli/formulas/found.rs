//! How a formula is found and explained.

use super::{fits, formula, refuses};
use crate::common::scene::{PROGRAM, Said, run};
use proofwalk::trade;

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
