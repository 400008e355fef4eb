//! The files as they are written, before any name is looked up.
//!
//! Every key is optional here: what is missing is reported together with all else, not by the first file that lacks it.

use std::fmt;

use serde::Deserialize;
use serde::de::value::MapAccessDeserializer;
use serde::de::{Deserializer, Error, MapAccess, Visitor};

use super::yaml::{At, Entries, Keyed, Node};

pub(super) type Text = At<String>;
pub(super) type Texts = Vec<Text>;

#[derive(Debug, Default, Deserialize)]
pub(super) struct LibraryFile {
    pub library: Option<Text>,
    pub edition: Option<Text>,
    pub title: Option<Text>,
    pub standing_cautions: Option<Texts>,
    pub gate: Option<Text>,
    pub dangers: Option<Entries<Text>>,
}

#[derive(Debug, Default, Deserialize)]
pub(super) struct PlateFile {
    pub fields: Option<Entries<Keyed<Field>>>,
    pub order: Option<Vec<Texts>>,
}

#[derive(Debug, Deserialize)]
pub(super) struct Field {
    pub title: Option<Text>,
    pub choices: Option<Entries<Text>>,
    pub unit: Option<Text>,
    pub difference: Option<bool>,
    pub plausible: Option<Text>,
    pub how: Option<Text>,
}

#[derive(Debug, Default, Deserialize)]
pub(super) struct ReadingsFile {
    pub readings: Option<Entries<Keyed<Reading>>>,
}

#[derive(Debug, Deserialize)]
pub(super) struct Reading {
    pub title: Option<Text>,
    pub unit: Option<Text>,
    pub difference: Option<bool>,
    pub plausible: Option<Text>,
    pub accuracy: Option<Text>,
    pub worked_out: Option<Entries<Text>>,
    pub minutes: Option<At<f64>>,
    pub cautions: Option<Texts>,
    pub leaves: Option<Texts>,
    pub source: Option<Text>,
    pub how: Option<Text>,
}

#[derive(Debug, Default, Deserialize)]
pub(super) struct SignsFile {
    pub signs: Option<Entries<Keyed<Sign>>>,
}

#[derive(Debug, Deserialize)]
pub(super) struct Sign {
    pub ask: Option<Text>,
    pub values: Option<Entries<Text>>,
    pub minutes: Option<At<f64>>,
    pub cautions: Option<Texts>,
    pub leaves: Option<Texts>,
    pub source: Option<Text>,
    pub how: Option<Text>,
}

#[derive(Debug, Default, Deserialize)]
pub(super) struct PartsFile {
    pub parts: Option<Entries<Keyed<Part>>>,
}

#[derive(Debug, Deserialize)]
pub(super) struct Part {
    pub title: Option<Text>,
    pub proof: Option<Proof>,
}

/// A proof: a list of maps, each with one claim or several, or with alternatives.
pub(super) type Proof = Vec<At<Entries<Node>>>;

#[derive(Debug, Default, Deserialize)]
pub(super) struct FaultsFile {
    pub faults: Option<Entries<Keyed<Fault>>>,
}

#[derive(Debug, Deserialize)]
pub(super) struct Fault {
    pub title: Option<Text>,
    pub remedy: Option<Text>,
    pub text: Option<Text>,
    pub proof: Option<Proof>,
    pub group: Option<Texts>,
    pub weight: Option<At<f64>>,
}

#[derive(Debug, Default, Deserialize)]
pub(super) struct RestoresFile {
    pub restores: Option<Entries<Text>>,
}

#[derive(Debug, Default, Deserialize)]
pub(super) struct CautionsFile {
    pub cautions: Option<Entries<Keyed<Caution>>>,
}

#[derive(Debug, Deserialize)]
pub(super) struct Caution {
    pub text: Option<Text>,
    pub source: Option<Text>,
}

#[derive(Debug, Default, Deserialize)]
pub(super) struct SourcesFile {
    pub sources: Option<Entries<Keyed<Source>>>,
}

#[derive(Debug, Deserialize)]
pub(super) struct Source {
    pub title: Option<Text>,
    pub section: Option<Text>,
    pub kind: Option<Text>,
}

#[derive(Debug, Deserialize)]
pub(super) struct TreeFile {
    pub tree: Option<Text>,
    pub title: Option<Text>,
    pub status: Option<Text>,
    pub complaint: Option<Text>,
    pub outcomes: Option<Texts>,
    pub edition: Option<Text>,
    pub changed: Option<Text>,
    pub start: Option<Text>,
    /// Each in a place of its own: a step is large, and lists of them are copied as they grow.
    pub steps: Option<Entries<Box<Keyed<Step>>>>,
}

#[derive(Debug, Deserialize)]
pub(super) struct Step {
    pub measure: Option<Text>,
    pub observe: Option<Text>,
    #[serde(rename = "do")]
    pub act: Option<Text>,
    pub plate: Option<Text>,
    pub visit: Option<Text>,
    pub verdict: Option<Text>,
    #[serde(rename = "return")]
    pub back: Option<Text>,
    pub bands: Option<Entries<Edge>>,
    pub choices: Option<Entries<Edge>>,
    pub go: Option<Edge>,
    pub unable: Option<Edge>,
    pub unsure: Option<Edge>,
    pub returns: Option<Entries<Edge>>,
    pub on_verdict: Option<Edge>,
    pub how: Option<Text>,
    pub voids: Option<Texts>,
    pub leaves: Option<Texts>,
    pub restores: Option<Texts>,
    pub because: Option<Text>,
    pub advice: Option<Text>,
    pub title: Option<Text>,
    pub why: Option<Text>,
    pub cautions: Option<Texts>,
    pub source: Option<Text>,
    pub minutes: Option<At<f64>>,
}

/// An edge as written: a step's name, or a map with more to say.
pub(super) type Edge = At<EdgeForm>;

#[derive(Debug)]
pub(super) enum EdgeForm {
    /// Nothing stands there.
    Nothing,
    Name(String),
    /// A number or a truth value, which is no name.
    Other,
    Map(Box<Keyed<EdgeMap>>),
}

#[derive(Debug, Deserialize)]
pub(super) struct EdgeMap {
    pub go: Option<Text>,
    pub at_most: Option<At<u32>>,
    pub then: Option<Edge>,
    pub means: Option<Text>,
    pub finding: Option<Keyed<Finding>>,
}

#[derive(Debug, Deserialize)]
pub(super) struct Finding {
    pub severity: Option<Text>,
    pub text: Option<Text>,
}

impl<'de> Deserialize<'de> for EdgeForm {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Form;

        impl<'de> Visitor<'de> for Form {
            type Value = EdgeForm;

            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("a step's name, or a map with `go`")
            }

            fn visit_str<E: Error>(self, name: &str) -> Result<EdgeForm, E> {
                Ok(EdgeForm::Name(name.to_owned()))
            }

            fn visit_bool<E: Error>(self, _: bool) -> Result<EdgeForm, E> {
                Ok(EdgeForm::Other)
            }

            fn visit_i64<E: Error>(self, _: i64) -> Result<EdgeForm, E> {
                Ok(EdgeForm::Other)
            }

            fn visit_u64<E: Error>(self, _: u64) -> Result<EdgeForm, E> {
                Ok(EdgeForm::Other)
            }

            fn visit_f64<E: Error>(self, _: f64) -> Result<EdgeForm, E> {
                Ok(EdgeForm::Other)
            }

            fn visit_unit<E: Error>(self) -> Result<EdgeForm, E> {
                Ok(EdgeForm::Nothing)
            }

            fn visit_map<A: MapAccess<'de>>(self, map: A) -> Result<EdgeForm, A::Error> {
                let map = Keyed::deserialize(MapAccessDeserializer::new(map))?;
                Ok(EdgeForm::Map(Box::new(map)))
            }
        }

        deserializer.deserialize_any(Form)
    }
}

#[derive(Debug, Deserialize)]
pub(super) struct ScenarioFile {
    pub scenario: Option<Text>,
    pub tree: Option<Text>,
    pub plate: Option<Entries<Node>>,
    pub readings: Option<Entries<Node>>,
    pub signs: Option<Entries<Node>>,
    pub unable: Option<Texts>,
    pub unsure: Option<Texts>,
    pub expect: Option<Keyed<Expect>>,
}

#[derive(Debug, Deserialize)]
pub(super) struct Expect {
    pub verdict: Option<Text>,
    pub outcome: Option<Text>,
    pub ends: Option<Text>,
    pub asked: Option<Texts>,
    pub put_back: Option<Texts>,
    pub findings: Option<Texts>,
}
