//! An audit borrows what a line says: it must take the very lines that are events, and hear the same.

use proofwalk::audit::Said;
use proofwalk::walk::decode;
use proptest::prelude::*;

/// One event of each kind and then some, as they stand in logs.
const EVENTS: [&str; 34] = [
    r#"{"opened":{"library":{"name":"l","edition":"1","hash":"00"},"tree":"no-heat","program":"p"}}"#,
    r#"{"opened":{"library":{"name":"l","edition":"1","overlays":[{"name":"o","edition":"2"}],"hash":"00"},"tree":"no-heat","technician":"kim","site":"s","equipment":"e1","program":"p","answered_from":"a.yaml"}}"#,
    r#"{"entered":{"tree":"no-heat","role":"complaint"}}"#,
    r#"{"entered":{"tree":"gas","role":"danger"}}"#,
    r#"{"took":{"edge":7,"from":"a/b","to":"a/c"}}"#,
    r#"{"returned":{"outcome":"ready"}}"#,
    r#"{"left":{"depth":2}}"#,
    r#"{"measured":{"reading":"voltage","typed":"24.1 V","value":24.1,"unit":"V","margin":0.3}}"#,
    r#"{"measured":{"reading":"rise","value":31,"unit":"°F","margin":1e-1,"borderline":true,"warnings":["dry air","low flow"]}}"#,
    r#"{"observed":{"sign":"glow","value":"dark"}}"#,
    r#"{"read_plate":{"field":"input","value":"80,000 BTU/h"}}"#,
    r#"{"doubted":{"datum":"voltage","value":"200 V","why":"implausible","against":"150 V"}}"#,
    r#"{"could_not":{"datum":"co","why":"the \"meter\" is in the other van"}}"#,
    r#"{"was_unsure":{"sign":"glow"}}"#,
    r#"{"did":{"step":"a/b"}}"#,
    r#"{"voided":{"data":["co","oxygen"],"why":"retake"}}"#,
    r#"{"voided":{"data":[],"why":"work"}}"#,
    r#"{"retaking":{"datum":"co"}}"#,
    r#"{"retaking":{"datum":"co","for_proof":true}}"#,
    r#"{"left_open":{"restores":["door"]}}"#,
    r#"{"restored":{"restores":["door","tap"]}}"#,
    r#"{"withheld":{"fault":"valve_dead"}}"#,
    r#"{"stated":{"fault":"valve_dead"}}"#,
    r#"{"stated":{"fault":"valve_dead","noted":true}}"#,
    r#"{"ended":{"verdict":{"fault":"valve_dead","danger":true}}}"#,
    r#"{"ended":{"outcome":{"outcome":"serviced"}}}"#,
    r#"{"ended":{"unproven":{"why":"night\nfell"}}}"#,
    r#"{"ended":{"insisted":{"fault":"valve_dead","words":"seen it"}}}"#,
    r#"{"went_back":{"to":3}}"#,
    r#"{"noted":{"text":"dog \u00e9"}}"#,
    r#"{"put_back":{"restore":"door"}}"#,
    r#"{"kept_open":{"restore":"door","why":"in a hurry"}}"#,
    r#""closed""#,
    r#"{"tail_cut":{"bytes":12,"kept":"a.torn"}}"#,
];

fn heard_alike(text: &str) -> Result<(), TestCaseError> {
    let event = decode(text).ok();
    prop_assert_eq!(Said::read(text), event.map(Said::from), "{}", text);
    Ok(())
}

#[test]
fn every_event_is_heard_as_it_was_written() {
    for text in EVENTS {
        assert!(decode(text).is_ok(), "{text}");
        heard_alike(text).unwrap();
    }
}

#[test]
fn a_key_too_many_too_few_or_twice_is_refused_alike() {
    for text in EVENTS {
        let keys: Vec<&str> = text.matches("\":").collect();
        for (before, _) in text.match_indices(',') {
            // From the comma to the next one, or to the end of its object: left out, and then doubled.
            let rest = &text[before + 1..];
            let end = before + 1 + rest.find([',', '}']).unwrap_or(0);
            let member = &text[before..end];
            heard_alike(&text.replacen(member, "", 1)).unwrap();
            heard_alike(&text.replacen(member, &member.repeat(2), 1)).unwrap();
        }
        if !keys.is_empty() {
            heard_alike(&text.replacen(":{", ":{\"more\":1,", 1)).unwrap();
        }
        for (one, other) in [
            ("true", "null"),
            ("\"V\"", "1"),
            (":", ":null,\"x\":"),
            ("[", "[1,"),
        ] {
            heard_alike(&text.replacen(one, other, 1)).unwrap();
        }
    }
}

proptest! {
    #[test]
    fn whatever_a_byte_is_changed_to_is_heard_alike(
        event in 0..EVENTS.len(), at in any::<prop::sample::Index>(), byte in prop::char::range(' ', '~')
    ) {
        let mut text: Vec<char> = EVENTS[event].chars().collect();
        let at = at.index(text.len());
        text[at] = byte;
        heard_alike(&text.into_iter().collect::<String>())?;
    }
}
