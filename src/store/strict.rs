//! JSON, read without the leniency that lets two readers see two different things in one text.

use std::collections::HashSet;
use std::fmt;

use serde::Deserialize;
use serde::de::{Deserializer, Error, MapAccess, SeqAccess, Visitor};
use serde_json::value::RawValue;

/// Says what is wrong with a JSON text: its syntax, a key that an object has twice, a number no `f64` can hold, half a
/// surrogate pair, or a nesting deeper than 127.
pub(super) fn check(text: &str) -> Result<(), String> {
    serde_json::from_str::<Checked>(text)
        .map(drop)
        .map_err(|error| wording(&error))
}

/// What the parser found, without its count of lines: it is only ever given one, which has another number in its file.
pub(super) fn wording(error: &serde_json::Error) -> String {
    let text = error.to_string();
    let place = format!(" at line {} column {}", error.line(), error.column());
    match text.strip_suffix(&place) {
        Some(what) => format!("{what} at column {}", error.column()),
        None => text,
    }
}

/// The members of a JSON object with their texts, in the order they stand.
pub(super) struct Members<'a>(pub Vec<(String, &'a RawValue)>);

/// A value that has been looked at, and forgotten.
struct Checked;

impl<'de> Deserialize<'de> for Checked {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_any(CheckValue)
    }
}

struct CheckValue;

impl<'de> Visitor<'de> for CheckValue {
    type Value = Checked;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a JSON value")
    }

    fn visit_bool<E>(self, _: bool) -> Result<Checked, E> {
        Ok(Checked)
    }

    fn visit_i64<E>(self, _: i64) -> Result<Checked, E> {
        Ok(Checked)
    }

    fn visit_u64<E>(self, _: u64) -> Result<Checked, E> {
        Ok(Checked)
    }

    fn visit_f64<E>(self, _: f64) -> Result<Checked, E> {
        Ok(Checked)
    }

    fn visit_str<E>(self, _: &str) -> Result<Checked, E> {
        Ok(Checked)
    }

    fn visit_unit<E>(self) -> Result<Checked, E> {
        Ok(Checked)
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut items: A) -> Result<Checked, A::Error> {
        while items.next_element::<Checked>()?.is_some() {}
        Ok(Checked)
    }

    fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Checked, A::Error> {
        let mut seen = HashSet::new();
        while let Some(key) = map.next_key::<String>()? {
            map.next_value::<Checked>()?;
            if let Some(twice) = seen.replace(key) {
                return Err(A::Error::custom(format_args!("the key `{twice}` stands twice")));
            }
        }
        Ok(Checked)
    }
}

impl<'de> Deserialize<'de> for Members<'de> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_map(CollectMembers)
    }
}

struct CollectMembers;

impl<'de> Visitor<'de> for CollectMembers {
    type Value = Members<'de>;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a JSON object")
    }

    fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Self::Value, A::Error> {
        let mut members = Vec::new();
        while let Some(member) = map.next_entry()? {
            members.push(member);
        }
        Ok(Members(members))
    }
}

#[cfg(test)]
mod tests {
    use super::check;

    #[test]
    fn plain_json_passes() {
        for text in [
            r#"{"a":[1,-2,0.5e3,true,null,"€ \ud83d\ude00"],"b":{"a":{}}}"#,
            "0",
        ] {
            assert_eq!(check(text), Ok(()), "{text}");
        }
    }

    #[track_caller]
    fn refused(text: &str, why: &str) {
        let error = check(text).unwrap_err();
        assert!(error.contains(why), "{error}");
    }

    #[test]
    fn what_two_readers_could_read_differently_is_refused() {
        refused(
            r#"{"verdict":"pass","verdict":"fail"}"#,
            "the key `verdict` stands twice",
        );
        refused(r#"{"a":{"x":1,"\u0078":2}}"#, "the key `x` stands twice");
        refused("1e400", "number out of range");
        refused(r#""\ud800""#, "unexpected end of hex escape at column 8");
        refused(r#""\udc00""#, "lone leading surrogate in hex escape");
        refused(&"[".repeat(100_000), "recursion limit");
        refused("{} {}", "trailing characters");
        refused("\"a\0\"", "control character");
        refused("NaN", "expected");
    }
}
