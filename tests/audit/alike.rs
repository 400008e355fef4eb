//! Names that differ in case, blanks and punctuation only.

use proofwalk::audit::findings::Alike;
use proofwalk::audit::{Audit, Rows};
use proofwalk::report::audit;

use crate::told::{Told, audited, done};

/// A call of a technician at an equipment, the later the higher its number.
fn call(number: usize, technician: &str, equipment: &str) -> Told {
    let time = format!("2026-01-{:02}T10:00:00Z", number + 1);
    done(&format!("s{number}"), &time)
        .by(technician)
        .equipment_of(equipment)
}

/// Calls at each of these, by one technician.
fn at(equipment: &[&str]) -> Audit {
    let calls = equipment.iter().enumerate();
    let calls: Vec<Told> = calls.map(|(number, name)| call(number, "kim", name)).collect();
    audited(&calls)
}

/// Each group's names, with how many calls each has, and the latest.
fn told(groups: &Rows<Alike>) -> Vec<Vec<(String, u64, String)>> {
    let group = |group: Alike| {
        let names = group.names.into_iter();
        names
            .map(|spelling| (spelling.name, spelling.calls, spelling.latest.id))
            .collect()
    };
    groups.iter().map(group).collect()
}

fn one(name: &str, calls: u64, latest: &str) -> (String, u64, String) {
    (name.to_owned(), calls, latest.to_owned())
}

#[test]
fn names_with_the_same_letters_and_digits_are_grouped_and_not_merged() {
    let audit = at(&["F-12", "f-12", "F 12", "F-12.", "F-12", "F-13", "G-1", "g/1"]);
    let furnace = vec![
        one("F-12", 2, "s4"),
        one("F 12", 1, "s2"),
        one("F-12.", 1, "s3"),
        one("f-12", 1, "s1"),
    ];
    let other = vec![one("G-1", 1, "s6"), one("g/1", 1, "s7")];
    assert_eq!(told(&audit.alike.equipment), [furnace, other]);
    assert!(audit.alike.technicians.is_empty());
    // Only the fifth call follows one at its own name.
    assert_eq!((audit.callbacks.rate.count, audit.callbacks.rate.of), (1, 8));
}

#[test]
fn letters_of_any_language_count_and_a_name_without_any_is_like_no_other() {
    let audit = at(&["Öfen 1", "ÖFEN-1", "Ofen 1", "--", "..", "- -"]);
    assert_eq!(
        told(&audit.alike.equipment),
        [vec![one("ÖFEN-1", 1, "s1"), one("Öfen 1", 1, "s0")]]
    );
}

#[test]
fn one_name_in_two_codings_or_cases_is_alike() {
    let audit = at(&[
        "\u{c9}lan 3",
        "E\u{301}lan-3",
        "Stra\u{df}e 1",
        "STRASSE 1",
        "\u{ff26}7",
        "F7",
    ]);
    let names: Vec<Vec<String>> = (told(&audit.alike.equipment).into_iter())
        .map(|group| group.into_iter().map(|(name, ..)| name).collect())
        .collect();
    assert_eq!(
        names,
        [
            ["E\u{301}lan-3", "\u{c9}lan 3"],
            ["F7", "\u{ff26}7"],
            ["STRASSE 1", "Stra\u{df}e 1"],
        ]
    );
}

#[test]
fn technicians_are_compared_with_technicians_only() {
    let calls = [
        call(0, "Ann", "one"),
        call(1, "ann", "two"),
        call(2, "ONE", "three"),
        call(3, "ann", "four"),
    ];
    let audit = audited(&calls);
    assert!(audit.alike.equipment.is_empty());
    assert_eq!(
        told(&audit.alike.technicians),
        [vec![one("ann", 2, "s3"), one("Ann", 1, "s0")]]
    );
    assert_eq!(audit.by_technician.len(), 3);
}

#[test]
fn every_form_names_them() {
    let calls = [
        call(0, "Ann", "F-12"),
        call(1, "ann", "f-12"),
        call(2, "ann", "F 12."),
    ];
    let audit = audited(&calls);
    let words = |page: String| page.split_whitespace().collect::<Vec<_>>().join(" ");
    let first = "These look like one furnace: “F 12.”, “F-12”, “f-12”; a call at one is no callback of the other. These look like \
                 one technician: “ann”, “Ann”; each is counted alone.";
    for page in [words(audit::text(&audit, 78, false)), words(audit::html(&audit))] {
        assert!(page.contains(first), "{page}");
        let list = page
            .to_lowercase()
            .find("one furnace by several names? (1)")
            .unwrap_or_else(|| panic!("{page}"));
        assert!(
            page[list..].contains("“F 12.” (1 call), “F-12” (1 call), “f-12” (1 call)"),
            "{page}"
        );
    }
    let json: serde_json::Value = serde_json::from_str(&audit::json(&audit)).unwrap();
    let ann = &json["alike"]["technicians"][0]["names"][0];
    assert_eq!(
        *ann,
        serde_json::json!({ "name": "ann", "calls": 2, "latest": "s2" })
    );
    assert_eq!(json["alike"]["equipment"][0]["names"][1]["name"], "F-12");
    let csv = audit::csv(&audit);
    let rows = |kind: &str| csv.lines().filter(|line| line.starts_with(kind)).count();
    assert_eq!((rows("one furnace?,"), rows("one technician?,")), (3, 2));
    assert!(csv.contains("one furnace?,,s1,,calls,,f-12,F 12.,1,"), "{csv}");
}

#[test]
fn many_groups_are_counted_and_the_first_is_named() {
    let audit = at(&["A1", "A-1", "B1", "B-1", "C1", "C-1", "D1", "D-1"]);
    let page = audit::text(&audit, 78, true);
    let page: String = page.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(
        page.contains("one furnace: \"A-1\", \"A1\"; so do the names of 3 more; a call"),
        "{page}"
    );
}

#[test]
fn where_two_numbers_are_parted_matters_and_where_a_word_is_does_not() {
    assert_eq!(told(&at(&["1-12", "11-2", "112"]).alike.equipment).len(), 0);
    assert_eq!(told(&at(&["1-12", "1 / 12", "1.12 "]).alike.equipment).len(), 1);
    assert_eq!(told(&at(&["F-12", "f12", "F 12."]).alike.equipment).len(), 1);
}
