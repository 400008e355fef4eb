//! A step that asks for a number and sorts it into bands.

use crate::library::{Answers, BandAnswer, FieldKind, Id, Kind, Library, PlateField, Step};
use crate::measure::{PlausibleRange, Scale};

/// A number that is asked for, and the bands it is sorted into.
#[derive(Clone, Copy)]
pub(in crate::check) struct Question<'a> {
    pub library: &'a Library,
    /// What the number is in.
    pub scale: Scale,
    /// What is believed at once.
    pub plausible: Option<PlausibleRange>,
    /// The plate field that is asked for, if it is one: then the value is the field's.
    pub asked: Option<Id<PlateField>>,
    /// Where each value leads.
    pub bands: &'a [BandAnswer],
}

impl<'a> Question<'a> {
    /// Whether two plate fields or more are compared with one another, by way of the value or as the value.
    pub fn leans_on_several_fields(&self) -> bool {
        let bounds = self.bands.iter().flat_map(|answer| answer.band.bounds());
        let mut fields = bounds
            .filter_map(|bound| bound.leans_on().copied())
            .chain(self.asked);
        fields
            .next()
            .is_some_and(|first| fields.any(|field| field != first))
    }

    /// The question that a step asks, if it asks for a number and sorts it.
    pub fn of(library: &'a Library, step: &'a Step) -> Option<Self> {
        let (answers, scale, plausible, asked) = match &step.kind {
            Kind::Measure { reading, answers, .. } => {
                let reading = &library.readings[*reading];
                (answers, reading.scale, reading.plausible, None)
            }
            Kind::Plate { field, answers, .. } => match library.plate[*field].kind {
                FieldKind::Number { scale, plausible } => (answers, scale, Some(plausible), Some(*field)),
                FieldKind::Choices(_) => return None,
            },
            _ => return None,
        };
        let Answers::Bands(bands) = answers else {
            return None;
        };
        Some(Self {
            library,
            scale,
            plausible,
            asked,
            bands,
        })
    }
}
