//! What it takes to parse a library's files and do nothing with them: into plain texts, and into texts with their places.

#![allow(dead_code, reason = "what is parsed here is only thrown away")]

use std::fmt;
use std::marker::PhantomData;

use proofwalk::source::Files;
use serde::Deserialize;
use serde::de::value::MapAccessDeserializer;
use serde::de::{DeserializeOwned, Deserializer, Error, MapAccess, SeqAccess, Visitor};
use serde_yaml::{Spanned, budget, from_str_with_options, options};

/// Parses every file of a library into plain structs.
pub fn plain(files: &Files) {
    parse::<Plain>(files);
}

/// Parses every file of a library into structs in which every text, edge and key has its place.
pub fn placed(files: &Files) {
    parse::<Placed>(files);
}

fn parse<M: Mark>(files: &Files) {
    // Kept to the end, as a reader would: giving memory back is part of the work.
    let mut trees: Vec<Tree<M>> = Vec::new();
    let mut others: Vec<M::Of<Node<M>>> = Vec::new();
    for (_, file) in files.iter() {
        if file.name().contains('/') || file.name() == "library.yaml" {
            others.push(parsed(file.text()));
        } else {
            trees.push(parsed(file.text()));
        }
    }
    std::hint::black_box((trees, others));
}

fn parsed<T: DeserializeOwned>(text: &str) -> T {
    let options = options! {
        budget: budget! { max_nodes: usize::MAX, max_events: usize::MAX },
        strict_booleans: true,
        with_snippet: false,
    };
    from_str_with_options(text, options).expect("what is made to measure can be parsed")
}

/// Whether the place of a value is kept.
trait Mark: 'static {
    type Of<V: DeserializeOwned>: DeserializeOwned;
}

struct Plain;

impl Mark for Plain {
    type Of<V: DeserializeOwned> = V;
}

struct Placed;

impl Mark for Placed {
    type Of<V: DeserializeOwned> = Spanned<V>;
}

type Text<M> = Option<<M as Mark>::Of<String>>;
type Texts<M> = Option<Vec<<M as Mark>::Of<String>>>;
type Edge<M> = <M as Mark>::Of<EdgeForm<M>>;

#[derive(Deserialize)]
#[serde(bound = "")]
struct Tree<M: Mark> {
    tree: Text<M>,
    title: Text<M>,
    status: Text<M>,
    complaint: Text<M>,
    outcomes: Texts<M>,
    start: Text<M>,
    steps: Lines<M, Step<M>>,
}

#[derive(Deserialize)]
#[serde(bound = "")]
struct Step<M: Mark> {
    measure: Text<M>,
    observe: Text<M>,
    #[serde(rename = "do")]
    act: Text<M>,
    plate: Text<M>,
    visit: Text<M>,
    verdict: Text<M>,
    #[serde(rename = "return")]
    back: Text<M>,
    bands: Option<Lines<M, Edge<M>>>,
    choices: Option<Lines<M, Edge<M>>>,
    go: Option<Edge<M>>,
    unable: Option<Edge<M>>,
    unsure: Option<Edge<M>>,
    returns: Option<Lines<M, Edge<M>>>,
    on_verdict: Option<Edge<M>>,
    voids: Texts<M>,
    leaves: Texts<M>,
    restores: Texts<M>,
    because: Text<M>,
    advice: Text<M>,
    title: Text<M>,
    why: Text<M>,
    cautions: Texts<M>,
    source: Text<M>,
    minutes: Option<M::Of<f64>>,
}

#[derive(Deserialize)]
#[serde(bound = "")]
struct EdgeMap<M: Mark> {
    go: Text<M>,
    at_most: Option<M::Of<u32>>,
    then: Option<Edge<M>>,
    means: Text<M>,
    finding: Option<Finding<M>>,
}

#[derive(Deserialize)]
#[serde(bound = "")]
struct Finding<M: Mark> {
    severity: Text<M>,
    text: Text<M>,
}

enum EdgeForm<M: Mark> {
    Name(String),
    Map(Box<EdgeMap<M>>),
}

impl<'de, M: Mark> Deserialize<'de> for EdgeForm<M> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Form<M>(PhantomData<M>);

        impl<'de, M: Mark> Visitor<'de> for Form<M> {
            type Value = EdgeForm<M>;

            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("an edge")
            }

            fn visit_str<E: Error>(self, name: &str) -> Result<Self::Value, E> {
                Ok(EdgeForm::Name(name.to_owned()))
            }

            fn visit_map<A: MapAccess<'de>>(self, map: A) -> Result<Self::Value, A::Error> {
                Deserialize::deserialize(MapAccessDeserializer::new(map)).map(EdgeForm::Map)
            }
        }

        deserializer.deserialize_any(Form(PhantomData))
    }
}

/// A map of names that the author chose.
struct Lines<M: Mark, V>(Vec<(M::Of<String>, V)>);

impl<'de, M: Mark, V: Deserialize<'de>> Deserialize<'de> for Lines<M, V> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Each<M, V>(PhantomData<(M, V)>);

        impl<'de, M: Mark, V: Deserialize<'de>> Visitor<'de> for Each<M, V> {
            type Value = Lines<M, V>;

            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("a map")
            }

            fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Self::Value, A::Error> {
                let mut lines = Vec::new();
                while let Some(line) = map.next_entry()? {
                    lines.push(line);
                }
                Ok(Lines(lines))
            }
        }

        deserializer.deserialize_map(Each(PhantomData))
    }
}

/// Anything: what registries and worked calls are made of.
enum Node<M: Mark> {
    Text(String),
    Other,
    List(Vec<M::Of<Node<M>>>),
    Map(Lines<M, M::Of<Node<M>>>),
}

impl<'de, M: Mark> Deserialize<'de> for Node<M> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Any<M>(PhantomData<M>);

        impl<'de, M: Mark> Visitor<'de> for Any<M> {
            type Value = Node<M>;

            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("anything")
            }

            fn visit_str<E: Error>(self, text: &str) -> Result<Self::Value, E> {
                Ok(Node::Text(text.to_owned()))
            }

            fn visit_bool<E: Error>(self, _: bool) -> Result<Self::Value, E> {
                Ok(Node::Other)
            }

            fn visit_u64<E: Error>(self, _: u64) -> Result<Self::Value, E> {
                Ok(Node::Other)
            }

            fn visit_f64<E: Error>(self, _: f64) -> Result<Self::Value, E> {
                Ok(Node::Other)
            }

            fn visit_seq<A: SeqAccess<'de>>(self, mut seq: A) -> Result<Self::Value, A::Error> {
                let mut items = Vec::new();
                while let Some(item) = seq.next_element()? {
                    items.push(item);
                }
                Ok(Node::List(items))
            }

            fn visit_map<A: MapAccess<'de>>(self, map: A) -> Result<Self::Value, A::Error> {
                Lines::deserialize(MapAccessDeserializer::new(map)).map(Node::Map)
            }
        }

        deserializer.deserialize_any(Any(PhantomData))
    }
}
