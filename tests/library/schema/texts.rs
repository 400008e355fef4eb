//! Texts of the small grammar: what the measure room reads, an editor does not underline.

use proofwalk::measure::{Accuracy, Amount, BandText, PlausibleRange, Scale, Unit};
use serde_json::{Value, json};

use super::judge;
use proofwalk::library::FileKind;

const AMOUNTS: [&str; 14] = [
    "24 V",
    "24V",
    " 24  V ",
    "-40 °F",
    "−4 degF",
    "+3.5 in. w.c.",
    ".5 uA",
    "5. µA",
    "1e3 ohm",
    "2E-6 A",
    "80000 BTU per hour",
    "3 ft³/h",
    "90 %",
    "7",
];

fn bounds() -> Vec<String> {
    let mut bounds: Vec<String> = AMOUNTS.map(str::to_owned).into();
    for amount in AMOUNTS {
        bounds.push(format!("plate.rise_max - {amount}"));
        bounds.push(format!("plate.a+{amount}"));
        bounds.push(format!("{amount} of plate.input"));
    }
    bounds.push("plate.rise_max".to_owned());
    bounds
}

#[track_caller]
fn taken<T>(read: Option<T>, kind: FileKind, value: &Value, count: &mut usize) {
    if read.is_some() {
        let said = judge(kind, value);
        assert!(said.is_empty(), "{value}: {said:?}");
        *count += 1;
    }
}

#[test]
fn bands() {
    let mut bands = Vec::new();
    for bound in bounds() {
        for words in ["below", "At Most", "above ", "at  least"] {
            bands.push(format!("{words} {bound}"));
        }
        bands.push(format!("{bound} to 9 V"));
        bands.push(format!("1 V  TO  {bound}"));
    }
    let pairs: Vec<String> = bands
        .iter()
        .zip(bands.iter().rev())
        .map(|(a, b)| format!("{a} , {b}"))
        .collect();
    let mut count = 0;
    for band in bands.iter().chain(&pairs) {
        let tree = json!({ "tree": "a", "title": "A", "start": "s", "steps": {
            "s": { "measure": "x", "bands": { band: "s" } },
        } });
        taken(BandText::parse(band).ok(), FileKind::Tree, &tree, &mut count);
    }
    assert!(count > 300, "{count}");
}

#[test]
fn quantities_ranges_and_accuracies() {
    let mut count = 0;
    for amount in AMOUNTS {
        let call = json!({ "scenario": "S", "tree": "a", "readings": { "x": amount }, "expect": { "verdict": "f" } });
        taken(Amount::parse(amount).ok(), FileKind::Scenario, &call, &mut count);
        let reading = |plausible: &str, accuracy: &str| {
            json!({ "readings": { "x": {
                "title": "X", "unit": "V", "plausible": plausible, "accuracy": accuracy,
            } } })
        };
        for unit in Unit::all() {
            for range in [
                format!("-100 {} to {amount}", unit.symbol()),
                format!("at least -100 {}, at most {amount}", unit.ascii()),
            ] {
                let read = PlausibleRange::parse(&range, Scale::of(unit)).ok();
                taken(read, FileKind::Readings, &reading(&range, "1 V"), &mut count);
            }
            for accuracy in [
                amount.to_owned(),
                format!("±1 % + {amount}"),
                format!("{amount} of reading+2%"),
            ] {
                let read = Accuracy::parse(&accuracy, Scale::of(unit)).ok();
                taken(
                    read,
                    FileKind::Readings,
                    &reading("0 V to 9 V", &accuracy),
                    &mut count,
                );
            }
        }
    }
    assert!(count > 100, "{count}");
}

#[test]
fn units() {
    let mut count = 0;
    for spelling in Unit::all().flat_map(Unit::spellings) {
        let spaced: String = spelling.chars().flat_map(|letter| [letter, ' ', '.']).collect();
        for text in [
            spelling.to_owned(),
            spelling.to_uppercase(),
            spelling.to_lowercase(),
            spaced,
            spelling.replace("in", "″"),
            spelling.replace("ohm", "Ω"),
        ] {
            let field =
                json!({ "fields": { "x": { "title": "X", "unit": text, "plausible": "0 V to 9 V" } } });
            taken(Unit::parse(&text), FileKind::Plate, &field, &mut count);
        }
    }
    assert!(count > 300, "{count}");
}
