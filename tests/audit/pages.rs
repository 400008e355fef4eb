//! What is printed of an audit: it fits, and nothing in it acts on a terminal or a spreadsheet.

use proofwalk::report::audit;
use unicode_width::UnicodeWidthStr;

use crate::told::{Told, audited, done, told};

/// Calls with something for every part of the page, and names that nobody would choose in good faith.
fn hostile() -> Vec<Told> {
    let long = "x".repeat(200);
    let names = [
        "=cmd|' /C calc'!A1",
        "+1",
        "-1+1",
        "@sum",
        "\tx",
        "\r=x",
        "a,\"b\"\nc",
        "\u{1b}[2J\u{202e}",
        &long,
    ];
    let calls = names.iter().enumerate().flat_map(|(number, name)| {
        let make = |id: &str, time: &str| told(&format!("{id}-{number}"), time).by(name).equipment_of(name);
        [
            make("a", "2026-01-01T10:00:00Z")
                .left_open(name)
                .verdict("valve_dead")
                .refused(name)
                .closed(),
            make("b", "2026-01-05T10:00:00Z")
                .reading("voltage", "20.1 V", true)
                .insisted("board_dead")
                .closed(),
            make("c", "2026-01-09T10:00:00Z").took(name, name),
        ]
    });
    calls.collect()
}

#[test]
fn the_page_fits_and_holds_nothing_that_acts_on_a_terminal() {
    for (ascii, columns) in [(true, 80), (false, 80), (true, 40), (false, 40), (false, 61)] {
        let page = audit::text(&audited(&hostile()), columns, ascii);
        for line in page.lines() {
            assert!(
                line.width() <= columns,
                "{} of {columns} columns: {line}",
                line.width()
            );
            assert!(!line.contains(['\u{1b}', '\r', '\t', '\u{202e}']), "{line:?}");
            assert!(!ascii || line.is_ascii(), "{line:?}");
        }
        let words: Vec<&str> = page.split_whitespace().collect();
        assert!(words.join(" ").contains("does not assign"), "the caution: {page}");
    }
}

/// The fields of a table, read as RFC 4180 has it.
fn fields(csv: &str) -> Vec<Vec<String>> {
    let mut rows = vec![vec![String::new()]];
    let mut quoted = false;
    let mut rest = csv.chars().peekable();
    while let Some(character) = rest.next() {
        let row = rows.last_mut().unwrap();
        match character {
            '"' if quoted && rest.peek() == Some(&'"') => row.last_mut().unwrap().push(rest.next().unwrap()),
            '"' => quoted = !quoted,
            ',' if !quoted => row.push(String::new()),
            '\r' if !quoted && rest.peek() == Some(&'\n') => {
                rest.next();
                rows.push(vec![String::new()]);
            }
            other => row.last_mut().unwrap().push(other),
        }
    }
    assert_eq!(rows.pop(), Some(vec![String::new()]), "the last line ends");
    rows
}

#[test]
fn the_table_has_as_many_fields_in_every_row_and_no_formula() {
    let rows = fields(&audit::csv(&audited(&hostile())));
    for row in &rows {
        assert_eq!(row.len(), rows[0].len(), "{row:?}");
        for field in row {
            let is_formula = field.starts_with(['=', '+', '-', '@', '\t', '\r']);
            assert!(!is_formula || field.parse::<f64>().is_ok(), "{field}");
            assert!(!field.contains(['\u{1b}', '\n', '\u{202e}']), "{field:?}");
        }
    }
    let named = |kind: &str| rows.iter().filter(|row| row[0] == kind).count();
    assert_eq!(
        (
            named("all"),
            named("technician"),
            named("callback"),
            named("insisted")
        ),
        (1, 9, 18, 9)
    );
}

#[test]
fn json_has_what_others_read() {
    let json: serde_json::Value = serde_json::from_str(&audit::json(&audited(&hostile()))).unwrap();
    for key in [
        "window_days",
        "calls",
        "closed",
        "damaged",
        "unproven",
        "insisted",
        "left_open",
    ] {
        assert!(json[key].is_u64(), "{key}");
    }
    for key in ["count", "of", "rate", "low", "high", "at_30_days"] {
        assert!(json["callbacks"][key].is_number(), "{key}");
    }
    for key in ["suspected_misdiagnoses", "by_technician", "by_tree", "by_part"] {
        assert!(!json[key].as_array().unwrap().is_empty(), "{key}");
    }
    for key in ["first", "second", "equipment", "condemned", "then"] {
        assert!(json["suspected_misdiagnoses"][0][key].is_string(), "{key}");
    }
}

#[test]
fn of_nothing_a_table_has_no_share_and_json_has_its_numbers() {
    let nothing = audited(&[done("a", "2026-01-01T10:00:00Z").equipment(None)]);
    let some = audited(&[done("a", "2026-01-01T10:00:00Z")]);
    let told = |table: &str| -> Vec<String> {
        let rows = fields(table);
        let columns = [
            "callbacks",
            "of",
            "rate",
            "low",
            "high",
            "settled_of",
            "settled_rate",
            "settled_low",
            "settled_high",
        ];
        let at = |name: &&str| rows[0].iter().position(|column| column == name).unwrap();
        columns.iter().map(|name| rows[1][at(name)].clone()).collect()
    };
    assert_eq!(
        told(&audit::csv(&nothing)),
        ["0", "0", "", "", "", "0", "", "", ""]
    );
    // Wilson's upper end of 0 of 1 is z² / (1 + z²), with z = 1.959964: 0.793451.
    let one = ["0", "1", "0.000000", "0.000000", "0.793451", "0", "", "", ""];
    assert_eq!(told(&audit::csv(&some)), one);
    let json: serde_json::Value = serde_json::from_str(&audit::json(&nothing)).unwrap();
    let callbacks = &json["callbacks"];
    assert_eq!(
        (&callbacks["rate"], &callbacks["low"], &callbacks["high"]),
        (&0.0.into(), &0.0.into(), &1.0.into())
    );
}
