//! A map whose keys the author chose.

use std::fmt;
use std::marker::PhantomData;

use serde::de::{Deserialize, Deserializer, MapAccess, Visitor};

use super::At;

/// One line of such a map.
#[derive(Clone, Debug)]
pub(in crate::library) struct Entry<T> {
    pub key: At<String>,
    pub value: T,
}

/// A map in the author's order, with repeated keys kept: whether one may repeat is for the rules to say.
#[derive(Clone, Debug)]
pub(in crate::library) struct Entries<T>(pub Vec<Entry<T>>);

impl<T> Default for Entries<T> {
    fn default() -> Self {
        Self(Vec::new())
    }
}

impl<'de, T: Deserialize<'de>> Deserialize<'de> for Entries<T> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Lines<T>(PhantomData<T>);

        impl<'de, T: Deserialize<'de>> Visitor<'de> for Lines<T> {
            type Value = Entries<T>;

            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("a map of names")
            }

            fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Self::Value, A::Error> {
                let mut entries = Vec::with_capacity(map.size_hint().unwrap_or_default());
                while let Some(key) = map.next_key()? {
                    let value = map.next_value()?;
                    entries.push(Entry { key, value });
                }
                Ok(Entries(entries))
            }
        }

        deserializer.deserialize_map(Lines(PhantomData))
    }
}
