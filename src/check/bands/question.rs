//! A step that asks for a number and sorts it into bands.

use crate::library::{Answers, BandAnswer, Datum, FieldKind, Id, Kind, Library, PlateField, Step};
use crate::measure::{PlausibleRange, Scale};

/// A number that is asked for, and the bands it is sorted into.
#[derive(Clone, Copy)]
pub(in crate::check) struct Question<'a> {
    pub library: &'a Library,
    /// What is asked for.
    pub datum: Datum,
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
    /// Whether a plate field is asked for, or compared with the value.
    pub fn leans_on_the_plate(&self) -> bool {
        let mut bounds = self.bands.iter().flat_map(|answer| answer.band.bounds());
        self.asked.is_some() || bounds.any(|bound| bound.leans_on().is_some())
    }

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
        let (datum, answers, scale, plausible) = match &step.kind {
            Kind::Measure { reading, answers, .. } => {
                let (datum, reading) = (Datum::Reading(*reading), &library.readings[*reading]);
                (datum, answers, reading.scale, reading.plausible)
            }
            Kind::Plate { field, answers, .. } => match library.plate[*field].kind {
                FieldKind::Number { scale, plausible } => {
                    (Datum::Field(*field), answers, scale, Some(plausible))
                }
                FieldKind::Choices(_) => return None,
            },
            _ => return None,
        };
        let Answers::Bands(bands) = answers else {
            return None;
        };
        let asked = match datum {
            Datum::Field(field) => Some(field),
            Datum::Reading(_) | Datum::Sign(_) => None,
        };
        Some(Self {
            library,
            datum,
            scale,
            plausible,
            asked,
            bands,
        })
    }
}
