//! Readings that look written rather than read.

use crate::told::{Told, audited, told};

const TEN: &str = "2026-01-01T10:00:00Z";

/// A call of a technician with these voltages, a few minutes apart.
fn call(technician: &str, number: usize, volts: impl IntoIterator<Item = String>) -> Told {
    let mut call = told(&format!("{technician}-{number}"), TEN)
        .by(technician)
        .equipment_of(&format!("{technician}-{number}"));
    for volts in volts {
        call = call.after(300).measured("voltage", &format!("{volts} V"));
    }
    call.verdict("nothing_found").closed()
}

/// Twelve calls of ten voltages each: every last digit as often as the others, no value often.
fn reads(technician: &str) -> Vec<Told> {
    let calls = (0..12).map(|number| {
        let volts = (0..10).map(|digit| format!("{}.{}", 18 + (number + 3 * digit) % 11, digit));
        call(technician, number, volts)
    });
    calls.collect()
}

/// As many, all of them ending in 0 or 5.
fn rounds(technician: &str) -> Vec<Told> {
    let calls = (0..12).map(|number| {
        let volts = (0..10).map(|digit| format!("{}.{}", 18 + (number + 3 * digit) % 11, 5 * (digit % 2)));
        call(technician, number, volts)
    });
    calls.collect()
}

#[test]
fn last_digits_that_no_meter_gives_are_told_with_their_technician() {
    let audit = audited(&[reads("ada"), reads("bo"), rounds("cy")].concat());
    let found = &audit.written.digits;
    assert_eq!(found.len(), 1, "{found:?}");
    assert_eq!((&*found[0].technician, found[0].zeros_and_fives), ("cy", 1.0));
    // Of eleven voltages with either digit, each counts three times at most.
    assert_eq!(
        (found[0].counts[0], found[0].counts[5], found[0].others[3]),
        (33, 33, 24)
    );
    assert_eq!(found[0].sessions.len(), 12);
}

/// Forty-two calls of ten voltages each, with the zero after the point left out as a hand leaves it.
fn leaves_zeros_out(technician: &str) -> Vec<Told> {
    let calls = (0..42).map(|number| {
        let volts = (0..10).map(|digit| match digit {
            0 => format!("{}", 20 + number % 10),
            _ => format!("{}.{digit}", 18 + (number + 3 * digit) % 11),
        });
        call(technician, number, volts)
    });
    calls.collect()
}

#[test]
fn who_makes_readings_up_does_not_set_the_others_apart() {
    let honest = ["ada", "bo", "dee"].map(leaves_zeros_out).concat();
    let makes_up = (0..3).flat_map(|_| rounds("cy")).collect();
    let audit = audited(&[honest, makes_up].concat());
    let names: Vec<&str> = (audit.written.digits.iter())
        .map(|found| found.technician.as_str())
        .collect();
    assert_eq!(names, ["cy"]);
}

/// Forty calls of four voltages each, every last digit as often as the others, and of the gas.
fn asks_for_the_gas(technician: &str, heating_value: impl Fn(usize) -> usize) -> Vec<Told> {
    let calls = (0..40).map(|number| {
        let volts = (0..4).map(|at| format!("{}.{}", 18 + (number + 3 * at) % 11, (4 * number + at) % 10));
        let call = told(&format!("{technician}-{number}"), TEN)
            .by(technician)
            .equipment_of(&format!("{technician}-{number}"));
        let call = volts.fold(call, |call, volts| {
            call.after(300).measured("voltage", &format!("{volts} V"))
        });
        call.after(300)
            .measured("heating_value", &format!("{} BTU/ft³", heating_value(number)))
            .verdict("nothing_found")
            .closed()
    });
    calls.collect()
}

#[test]
fn the_same_gas_at_every_house_is_no_last_digit_of_a_hand() {
    let others = ["ada", "bo", "cy"].map(|name| asks_for_the_gas(name, |number| 1000 + 7 * number % 50));
    let one_town = asks_for_the_gas("dee", |_| 1015);
    let audit = audited(&[others.concat(), one_town].concat());
    assert_eq!(audit.written.digits, []);
}

#[test]
fn where_everybodys_digits_are_uneven_nobody_stands_out() {
    let audit = audited(&[rounds("ada"), rounds("bo"), rounds("cy")].concat());
    assert_eq!(audit.written.digits, []);
}

#[test]
fn a_value_that_only_one_technician_gives_again_and_again_is_told() {
    let copies: Vec<Told> = (0..10)
        .map(|number| call("dee", number, ["24.3".to_owned()]))
        .collect();
    let audit = audited(&[reads("ada"), reads("bo"), copies].concat());
    let found = &audit.written.repeated;
    assert_eq!(found.len(), 1, "{found:?}");
    assert_eq!(
        (&*found[0].technician, found[0].value, found[0].times, found[0].of),
        ("dee", 24.3, 10, 10)
    );
    assert_eq!(found[0].sessions.len(), 10);
}

#[test]
fn a_value_that_all_give_is_what_it_is() {
    let all =
        ["ada", "bo", "cy"].map(|name| (0..10).map(move |number| call(name, number, ["24.3".to_owned()])));
    let audit = audited(&all.into_iter().flatten().collect::<Vec<_>>());
    assert_eq!(audit.written.repeated, []);
}

/// Twelve calls with one value of each of these readings: the same every time, or another each time.
fn gives(technician: &str, same: &[(&str, &str)], other: &[&str]) -> Vec<Told> {
    let calls = (0..12).map(|number| {
        let name = format!("{technician}-{number}");
        let mut call = told(&name, TEN).by(technician).equipment_of(&name);
        for (reading, value) in same {
            call = call.after(300).measured(reading, value);
        }
        for reading in other {
            let value = format!("{}.{} V", 18 + 7 * number % 11, technician.len() + number % 7);
            call = call.after(300).measured(reading, &value);
        }
        call.verdict("nothing_found").closed()
    });
    calls.collect()
}

#[test]
fn who_keeps_to_one_dial_of_the_meter_is_not_named_where_the_others_keep_to_theirs() {
    let measured = ["voltage", "current"];
    let all = [
        ("ada", "2 ft³"),
        ("bo", "1 ft³"),
        ("cy", "0.5 ft³"),
        ("dee", "5 ft³"),
    ];
    let calls = all.map(|(name, dial)| gives(name, &[("meter_dial", dial)], &measured));
    assert_eq!(audited(&calls.concat()).written.repeated, []);
    // The same of a reading that the others find another each time.
    let others = ["bo", "cy", "dee"].map(|name| gives(name, &[], &["meter_dial"]));
    let one = gives("ada", &[("meter_dial", "2 ft³")], &[]);
    let found = audited(&[others.concat(), one].concat()).written.repeated;
    assert_eq!(found.len(), 1, "{found:?}");
    assert!(found[0].usual < 0.3, "{found:?}");
}

#[test]
fn who_works_in_one_town_has_its_altitude_and_its_gas_at_every_house() {
    let measured = ["voltage", "current", "draft"];
    let looked_up = ["altitude", "heating_value"];
    let others = ["bo", "cy", "dee"].map(|name| gives(name, &[], &[&measured[..], &looked_up].concat()));
    let town = [("altitude", "850 ft"), ("heating_value", "1015 BTU/ft³")];
    let one_town = gives("ada", &town, &measured);
    assert_eq!(
        audited(&[others.concat(), one_town].concat()).written.repeated,
        []
    );
    // Who has the same voltage and current at each, too, is asked about all of them.
    let more = [("voltage", "24 V"), ("current", "3.5 A")];
    let writes = gives("ada", &[&town[..], &more].concat(), &["draft"]);
    let found = audited(&[others.concat(), writes].concat()).written.repeated;
    let readings: Vec<&str> = found.iter().map(|found| found.reading.as_str()).collect();
    assert_eq!(readings, ["altitude", "current", "heating_value", "voltage"]);
    assert!(
        found
            .iter()
            .all(|found| (found.readings, found.of_readings) == (4, 5))
    );
}

/// A call whose two voltages, of four minutes each, come after so many seconds each.
fn typed_after(id: &str, seconds: i64) -> Told {
    told(id, TEN)
        .after(seconds)
        .measured("voltage", "24.1 V")
        .after(seconds)
        .measured("voltage", "24.3 V")
        .verdict("nothing_found")
        .closed()
}

#[test]
fn answers_in_less_than_a_tenth_of_the_usual_minutes_are_in_a_hurry() {
    let audit = audited(&[typed_after("slow", 24), typed_after("fast", 23)]);
    assert_eq!(audit.written.hurried.len(), 1);
    let found = audit.written.hurried.get(0).unwrap();
    assert_eq!(found.session.id, "fast");
    assert_eq!(
        (found.readings, found.of, found.seconds, found.minutes),
        (2, 2, 23.0, 4.0)
    );
}

#[test]
fn a_clock_that_stood_still_measures_no_hurry() {
    assert!(audited(&[typed_after("a", 0)]).written.hurried.is_empty());
}
