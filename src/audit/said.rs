//! What a line of a log says, borrowed from the line: an audit reads millions of them, and keeps none.
//!
//! It takes exactly the texts that [`Event`](crate::walk::Event) takes; a test holds that, event by event.

use std::borrow::Cow;
use std::fmt;
use std::ops::Deref;

use serde::de::{Deserialize, Deserializer, Error, Visitor};

use crate::walk::{Doubt, End, Event, LibraryMark, Opened, Role, Voiding};

/// A text, borrowed where it has no escapes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Text<'l>(Cow<'l, str>);

/// One thing that has happened. What an audit does not ask for is read all the same, since a line that is no event is no line of
/// a call.
#[derive(Clone, Debug, PartialEq, serde::Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
#[allow(missing_docs, reason = "each is said of the event of this name")]
pub enum Said<'l> {
    // There is one to a call, and it is twice as large as any other.
    #[serde(borrow)]
    Opened(Box<Opening<'l>>),
    Entered {
        tree: Text<'l>,
        role: Role,
    },
    Took {
        #[serde(rename = "edge")]
        _edge: u32,
        from: Text<'l>,
        to: Text<'l>,
    },
    Returned {
        #[serde(rename = "outcome")]
        _outcome: Text<'l>,
    },
    Left {
        depth: usize,
    },
    Measured {
        reading: Text<'l>,
        #[serde(default)]
        typed: Option<Text<'l>>,
        value: f64,
        unit: Text<'l>,
        margin: f64,
        #[serde(default)]
        borderline: bool,
        #[serde(default, rename = "warnings")]
        _warnings: Vec<Text<'l>>,
    },
    Observed {
        sign: Text<'l>,
        #[serde(rename = "value")]
        _value: Text<'l>,
    },
    ReadPlate {
        #[serde(rename = "field")]
        _field: Text<'l>,
        #[serde(rename = "value")]
        _value: Text<'l>,
    },
    Doubted {
        #[serde(rename = "datum")]
        _datum: Text<'l>,
        #[serde(rename = "value")]
        _value: Text<'l>,
        #[serde(rename = "why")]
        _why: Doubt,
        #[serde(rename = "against")]
        _against: Text<'l>,
    },
    CouldNot {
        datum: Text<'l>,
        why: Text<'l>,
    },
    WasUnsure {
        #[serde(rename = "sign")]
        _sign: Text<'l>,
    },
    Did {
        #[serde(rename = "step")]
        _step: Text<'l>,
    },
    Voided {
        data: Vec<Text<'l>>,
        why: Voiding,
    },
    Retaking {
        #[serde(rename = "datum")]
        _datum: Text<'l>,
        #[serde(default, rename = "for_proof")]
        _for_proof: bool,
    },
    LeftOpen {
        restores: Vec<Text<'l>>,
    },
    Restored {
        restores: Vec<Text<'l>>,
    },
    Withheld {
        #[serde(rename = "fault")]
        _fault: Text<'l>,
    },
    Stated {
        fault: Text<'l>,
        #[serde(default)]
        noted: bool,
    },
    Ended(Ended<'l>),
    WentBack {
        to: usize,
    },
    Noted {
        #[serde(rename = "text")]
        _text: Text<'l>,
    },
    PutBack {
        restore: Text<'l>,
    },
    KeptOpen {
        restore: Text<'l>,
        #[serde(rename = "why")]
        _why: Text<'l>,
    },
    Closed,
    TailCut {
        #[serde(rename = "bytes")]
        _bytes: u64,
        #[serde(rename = "kept")]
        _kept: Text<'l>,
    },
}

/// How a call was opened.
#[derive(Clone, Debug, PartialEq, serde::Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Opening<'l> {
    /// The library.
    pub library: LibraryMark,
    /// The tree of the complaint.
    #[serde(borrow)]
    pub tree: Text<'l>,
    /// Who walks it.
    #[serde(default)]
    pub technician: Option<Text<'l>>,
    /// Where.
    #[serde(default)]
    pub site: Option<Text<'l>>,
    /// At which equipment.
    #[serde(default)]
    pub equipment: Option<Text<'l>>,
    #[serde(rename = "program")]
    _program: Text<'l>,
    /// The file that answered, or the practice that it was.
    #[serde(default)]
    pub answered_from: Option<Text<'l>>,
}

/// How a walk ended.
#[derive(Clone, Debug, PartialEq, serde::Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
#[allow(missing_docs, reason = "each is said of the end of this name")]
pub enum Ended<'l> {
    Verdict {
        #[serde(borrow)]
        fault: Text<'l>,
        #[serde(default, rename = "danger")]
        _danger: bool,
    },
    Outcome {
        outcome: Text<'l>,
    },
    Unproven {
        why: Text<'l>,
    },
    Insisted {
        fault: Text<'l>,
        #[serde(rename = "words")]
        _words: Text<'l>,
    },
}

impl<'l> Said<'l> {
    /// What stands for an event in a log; none where it is no event of this format.
    pub fn read(text: &'l str) -> Option<Self> {
        serde_json::from_str(text).ok()
    }
}

impl Deref for Text<'_> {
    type Target = str;

    fn deref(&self) -> &str {
        &self.0
    }
}

impl From<String> for Text<'_> {
    fn from(text: String) -> Self {
        Self(Cow::Owned(text))
    }
}

impl<'l, 'de: 'l> Deserialize<'de> for Text<'l> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Read;

        impl<'de> Visitor<'de> for Read {
            type Value = Text<'de>;

            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("a text")
            }

            fn visit_borrowed_str<E: Error>(self, text: &'de str) -> Result<Self::Value, E> {
                Ok(Text(Cow::Borrowed(text)))
            }

            fn visit_str<E: Error>(self, text: &str) -> Result<Self::Value, E> {
                Ok(text.to_owned().into())
            }
        }

        deserializer.deserialize_str(Read)
    }
}

impl From<Opened> for Opening<'_> {
    fn from(opened: Opened) -> Self {
        Self {
            library: opened.library,
            tree: opened.tree.into(),
            technician: opened.technician.map(Text::from),
            site: opened.site.map(Text::from),
            equipment: opened.equipment.map(Text::from),
            _program: opened.program.into(),
            answered_from: opened.answered_from.map(Text::from),
        }
    }
}

impl From<End> for Ended<'_> {
    fn from(end: End) -> Self {
        match end {
            End::Verdict { fault, danger } => Self::Verdict {
                fault: fault.into(),
                _danger: danger,
            },
            End::Outcome { outcome } => Self::Outcome {
                outcome: outcome.into(),
            },
            End::Unproven { why } => Self::Unproven { why: why.into() },
            End::Insisted { fault, words } => Self::Insisted {
                fault: fault.into(),
                _words: words.into(),
            },
        }
    }
}

impl From<Event> for Said<'_> {
    fn from(event: Event) -> Self {
        let texts = |list: Vec<String>| list.into_iter().map(Text::from).collect();
        match event {
            Event::Opened(opened) => Self::Opened(Box::new((*opened).into())),
            Event::Ended(end) => Self::Ended(end.into()),
            Event::Closed => Self::Closed,
            Event::Entered { tree, role } => Self::Entered {
                tree: tree.into(),
                role,
            },
            Event::Took { edge, from, to } => Self::Took {
                _edge: edge,
                from: from.into(),
                to: to.into(),
            },
            Event::Returned { outcome } => Self::Returned {
                _outcome: outcome.into(),
            },
            Event::Left { depth } => Self::Left { depth },
            Event::Observed { sign, value } => Self::Observed {
                sign: sign.into(),
                _value: value.into(),
            },
            Event::ReadPlate { field, value } => Self::ReadPlate {
                _field: field.into(),
                _value: value.into(),
            },
            Event::CouldNot { datum, why } => Self::CouldNot {
                datum: datum.into(),
                why: why.into(),
            },
            Event::WasUnsure { sign } => Self::WasUnsure { _sign: sign.into() },
            Event::Did { step } => Self::Did { _step: step.into() },
            Event::Voided { data, why } => Self::Voided {
                data: texts(data),
                why,
            },
            Event::Retaking { datum, for_proof } => Self::Retaking {
                _datum: datum.into(),
                _for_proof: for_proof,
            },
            Event::LeftOpen { restores } => Self::LeftOpen {
                restores: texts(restores),
            },
            Event::Restored { restores } => Self::Restored {
                restores: texts(restores),
            },
            Event::Withheld { fault } => Self::Withheld { _fault: fault.into() },
            Event::Stated { fault, noted } => Self::Stated {
                fault: fault.into(),
                noted,
            },
            Event::WentBack { to } => Self::WentBack { to },
            Event::Noted { text } => Self::Noted { _text: text.into() },
            Event::PutBack { restore } => Self::PutBack {
                restore: restore.into(),
            },
            Event::KeptOpen { restore, why } => Self::KeptOpen {
                restore: restore.into(),
                _why: why.into(),
            },
            Event::TailCut { bytes, kept } => Self::TailCut {
                _bytes: bytes,
                _kept: kept.into(),
            },
            Event::Doubted {
                datum,
                value,
                why,
                against,
            } => Self::Doubted {
                _datum: datum.into(),
                _value: value.into(),
                _why: why,
                _against: against.into(),
            },
            Event::Measured {
                reading,
                typed,
                value,
                unit,
                margin,
                borderline,
                warnings,
            } => Self::Measured {
                reading: reading.into(),
                typed: typed.map(Text::from),
                value,
                unit: unit.into(),
                margin,
                borderline,
                _warnings: texts(warnings),
            },
        }
    }
}
