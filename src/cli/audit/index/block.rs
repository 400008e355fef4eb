//! Numbers and texts as bytes, in blocks: what comes again and again stands once in a block's tables.
//!
//! Reading gives nothing where the bytes end too soon or name what is in no table; whether they are the ones that were written, a sum
//! says that stands beside the block.

use std::collections::HashMap;

use compact_str::CompactString;
use foldhash::fast::RandomState;

/// Bits of a number that a byte holds; the eighth says that another follows.
const BITS: u32 = 7;

/// A block that grows.
#[derive(Default)]
pub(super) struct Writing {
    texts: HashMap<CompactString, u64, RandomState>,
    text_table: Vec<u8>,
    floats: HashMap<u64, u64, RandomState>,
    float_table: Vec<u8>,
    body: Vec<u8>,
}

/// A block as it was written.
pub(super) struct Block {
    texts: Vec<CompactString>,
    floats: Vec<f64>,
    bytes: Vec<u8>,
    body: usize,
}

/// A place in a block.
#[derive(Clone)]
pub(super) struct Reading<'b> {
    block: &'b Block,
    at: usize,
}

impl Writing {
    /// How many bytes it has so far.
    pub fn len(&self) -> usize {
        self.text_table.len() + self.float_table.len() + self.body.len()
    }

    /// A number.
    pub fn number(&mut self, number: impl Into<u64>) {
        put(&mut self.body, number.into());
    }

    /// A number that may be below zero.
    pub fn signed(&mut self, number: i64) {
        self.number(((number << 1) ^ (number >> 63)) as u64);
    }

    /// Bytes, whose number is known where they are read.
    pub fn bytes(&mut self, bytes: &[u8]) {
        self.body.extend(bytes);
    }

    /// A number that is mostly another each time.
    pub fn value(&mut self, value: f64) {
        self.body.extend(value.to_bits().to_le_bytes());
    }

    /// A number that is often the same.
    pub fn float(&mut self, float: f64) {
        let new = self.floats.len() as u64;
        let at = *self.floats.entry(float.to_bits()).or_insert(new);
        if at == new {
            self.float_table.extend(float.to_bits().to_le_bytes());
        }
        self.number(at);
    }

    /// A text.
    pub fn text(&mut self, text: &str) {
        let at = match self.texts.get(text) {
            Some(at) => *at,
            None => {
                let new = self.texts.len() as u64;
                self.texts.insert(text.into(), new);
                put(&mut self.text_table, text.len() as u64);
                self.text_table.extend(text.as_bytes());
                new
            }
        };
        self.number(at);
    }

    /// So many of something.
    pub fn list<T>(&mut self, list: &[T], mut each: impl FnMut(&mut Self, &T)) {
        self.number(list.len() as u64);
        list.iter().for_each(|item| each(self, item));
    }

    /// The block, whole; the next begins with nothing.
    pub fn take(&mut self) -> Vec<u8> {
        let mut bytes = Vec::with_capacity(self.len() + 20);
        put(&mut bytes, self.texts.len() as u64);
        bytes.append(&mut self.text_table);
        put(&mut bytes, self.floats.len() as u64);
        bytes.append(&mut self.float_table);
        bytes.append(&mut self.body);
        self.texts.clear();
        self.floats.clear();
        bytes
    }
}

fn put(into: &mut Vec<u8>, mut number: u64) {
    while number >> BITS > 0 {
        into.push(number as u8 | 1 << BITS);
        number >>= BITS;
    }
    into.push(number as u8);
}

impl Block {
    /// Reads its tables.
    pub fn open(bytes: Vec<u8>) -> Option<Self> {
        let mut block = Self {
            texts: Vec::new(),
            floats: Vec::new(),
            bytes,
            body: 0,
        };
        let mut reading = block.begin();
        let mut texts = Vec::new();
        for _ in 0..reading.number()? {
            let length = reading.number()?;
            texts.push(str::from_utf8(reading.bytes(length)?).ok()?.into());
        }
        let mut floats = Vec::new();
        for _ in 0..reading.number()? {
            floats.push(reading.value()?);
        }
        block.body = reading.at;
        (block.texts, block.floats) = (texts, floats);
        Some(block)
    }

    /// What follows its tables.
    pub fn begin(&self) -> Reading<'_> {
        self.at(self.body)
    }

    /// A place that [`Reading::place`] told.
    pub fn at(&self, at: usize) -> Reading<'_> {
        Reading { block: self, at }
    }
}

impl<'b> Reading<'b> {
    /// Where it is.
    pub fn place(&self) -> usize {
        self.at
    }

    /// Whether nothing follows.
    pub fn is_at_end(&self) -> bool {
        self.at == self.block.bytes.len()
    }

    pub fn bytes(&mut self, length: u64) -> Option<&'b [u8]> {
        let end = self.at.checked_add(usize::try_from(length).ok()?)?;
        let bytes = self.block.bytes.get(self.at..end)?;
        self.at = end;
        Some(bytes)
    }

    pub fn number(&mut self) -> Option<u64> {
        let mut number = 0;
        for shift in (0..u64::BITS).step_by(BITS as usize) {
            let byte = *self.block.bytes.get(self.at)?;
            self.at += 1;
            number |= u64::from(byte & !(1 << BITS)) << shift;
            if byte >> BITS == 0 {
                return Some(number);
            }
        }
        None
    }

    pub fn signed(&mut self) -> Option<i64> {
        let number = self.number()?;
        Some((number >> 1) as i64 ^ -((number & 1) as i64))
    }

    pub fn value(&mut self) -> Option<f64> {
        let bytes = self.bytes(8)?.try_into().ok()?;
        Some(f64::from_bits(u64::from_le_bytes(bytes)))
    }

    pub fn float(&mut self) -> Option<f64> {
        let at = usize::try_from(self.number()?).ok()?;
        self.block.floats.get(at).copied()
    }

    pub fn text(&mut self) -> Option<CompactString> {
        let at = usize::try_from(self.number()?).ok()?;
        self.block.texts.get(at).cloned()
    }

    pub fn list<T>(&mut self, mut each: impl FnMut(&mut Self) -> Option<T>) -> Option<Vec<T>> {
        let length = self.number()?;
        (0..length).map(|_| each(self)).collect()
    }
}
