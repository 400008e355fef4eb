//! A map whose keys the format fixes.

use std::fmt;
use std::marker::PhantomData;

use serde::de::value::StrDeserializer;
use serde::de::{Deserialize, DeserializeSeed, Deserializer, IgnoredAny, MapAccess, Visitor};
use serde::forward_to_deserialize_any;

use super::At;
use crate::source::{FileId, Span};

/// A key that the value could not take.
#[derive(Clone, Debug)]
pub(in crate::library) struct StrayKey {
    pub key: At<String>,
    /// The same key stood there before; otherwise it is none of the format's.
    pub repeated: bool,
    /// The keys that the format has here.
    pub known: &'static [&'static str],
}

/// A struct read from a map, with the place of each of its keys and those that it could not take.
///
/// Serde's derived reader throws the places of keys away and stops at the first key it does not know. This one stands
/// between it and the file and keeps both.
#[derive(Clone, Debug)]
pub(in crate::library) struct Keyed<T> {
    pub value: T,
    keys: Vec<At<&'static str>>,
    pub stray: Vec<StrayKey>,
}

impl<T> Keyed<T> {
    /// Where a key stands, if it was given.
    pub fn key(&self, name: &str, file: FileId) -> Option<Span> {
        let key = self.keys.iter().find(|key| key.value == name)?;
        Some(key.span(file))
    }

    /// Whether a key was given.
    pub fn has(&self, name: &str) -> bool {
        self.keys.iter().any(|key| key.value == name)
    }

    /// Every key that was given.
    pub fn names(&self) -> impl Iterator<Item = &'static str> + '_ {
        self.keys.iter().map(|key| key.value)
    }
}

impl<'de, T: Deserialize<'de>> Deserialize<'de> for Keyed<T> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let mut seen = Seen::default();
        let value = T::deserialize(Between {
            deserializer,
            seen: &mut seen,
        })?;
        Ok(Self {
            value,
            keys: seen.keys,
            stray: seen.stray,
        })
    }
}

#[derive(Default)]
struct Seen {
    keys: Vec<At<&'static str>>,
    stray: Vec<StrayKey>,
}

/// Hands a derived struct its map through [`Watched`].
struct Between<'a, D> {
    deserializer: D,
    seen: &'a mut Seen,
}

impl<'de, D: Deserializer<'de>> Deserializer<'de> for Between<'_, D> {
    type Error = D::Error;

    fn deserialize_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, D::Error> {
        self.deserializer.deserialize_any(visitor)
    }

    fn deserialize_struct<V: Visitor<'de>>(
        self,
        _name: &'static str,
        known: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, D::Error> {
        self.deserializer.deserialize_map(Struct {
            visitor,
            known,
            seen: self.seen,
            of: PhantomData,
        })
    }

    forward_to_deserialize_any! {
        bool i8 i16 i32 i64 i128 u8 u16 u32 u64 u128 f32 f64 char str string bytes byte_buf option unit unit_struct
        newtype_struct seq tuple tuple_struct map enum identifier ignored_any
    }
}

struct Struct<'a, 'de, V> {
    visitor: V,
    known: &'static [&'static str],
    seen: &'a mut Seen,
    of: PhantomData<&'de ()>,
}

impl<'de, V: Visitor<'de>> Visitor<'de> for Struct<'_, 'de, V> {
    type Value = V::Value;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "a map with the keys {}", self.known.join(", "))
    }

    fn visit_map<A: MapAccess<'de>>(self, map: A) -> Result<V::Value, A::Error> {
        self.visitor.visit_map(Watched {
            map,
            known: self.known,
            seen: self.seen,
        })
    }
}

/// A map from which the keys that do not belong have been taken out.
struct Watched<'a, A> {
    map: A,
    known: &'static [&'static str],
    seen: &'a mut Seen,
}

impl<'de, A: MapAccess<'de>> MapAccess<'de> for Watched<'_, A> {
    type Error = A::Error;

    fn next_key_seed<K: DeserializeSeed<'de>>(&mut self, seed: K) -> Result<Option<K::Value>, A::Error> {
        while let Some(key) = self.map.next_key::<At<String>>()? {
            let name = self.known.iter().find(|name| **name == key.value);
            let repeated = self.seen.keys.iter().any(|seen| seen.value == key.value);
            if let (Some(name), false) = (name, repeated) {
                let value = seed.deserialize(StrDeserializer::<A::Error>::new(name))?;
                self.seen.keys.push(key.map(|_| *name));
                return Ok(Some(value));
            }
            self.map.next_value::<IgnoredAny>()?;
            self.seen.stray.push(StrayKey {
                key,
                repeated,
                known: self.known,
            });
        }
        Ok(None)
    }

    fn next_value_seed<S: DeserializeSeed<'de>>(&mut self, seed: S) -> Result<S::Value, A::Error> {
        self.map.next_value_seed(seed)
    }
}
