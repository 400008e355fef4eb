//! Bands: what their words mean on a scale.

use std::collections::HashMap;
use std::ops::Range;

use super::super::raw::Text;
use super::super::registry::PlateField;
use super::super::table::Id;
use super::Resolver;
use crate::measure::{Band, BandText, Misread, Scale};
use crate::source::FileId;

/// Bands that were read before, by their words and the scale they were read on.
///
/// A few thresholds stand in many steps, and each takes as long to read as all else that an answer says.
#[derive(Default)]
pub(super) struct Bands(HashMap<String, Vec<(Scale, FieldBand)>>);

/// A band whose fields are known.
type FieldBand = Band<Id<PlateField>>;

impl Bands {
    fn known(&self, text: &str, scale: Scale) -> Option<&FieldBand> {
        let on_scales = self.0.get(text)?.iter();
        let mut on_this = on_scales.filter(|(known, _)| *known == scale);
        on_this.next().map(|(_, band)| band)
    }

    fn keep(&mut self, text: &str, scale: Scale, band: &FieldBand) {
        let on_scales = self.0.entry(text.to_owned()).or_default();
        on_scales.push((scale, band.clone()));
    }
}

/// Why a band could not be resolved.
enum Unresolved {
    /// A quantity or a field measures something else.
    Wrong(Misread),
    /// A field is not on the plate, or has no number.
    Field { name: String, range: Range<usize> },
}

impl From<Misread> for Unresolved {
    fn from(wrong: Misread) -> Self {
        Self::Wrong(wrong)
    }
}

impl Resolver<'_> {
    /// A band on a number; none where it could not be read, which has then been reported.
    pub(super) fn band(&mut self, text: &Text, scale: Scale, file: FileId) -> Option<FieldBand> {
        if let Some(band) = self.bands.known(&text.value, scale) {
            return Some(band.clone());
        }
        let band = self.read_band(text, scale, file)?;
        self.bands.keep(&text.value, scale, &band);
        Some(band)
    }

    fn read_band(&mut self, text: &Text, scale: Scale, file: FileId) -> Option<FieldBand> {
        let written = match BandText::parse(&text.value) {
            Ok(written) => written,
            Err(wrong) => {
                self.misread(text, file, wrong);
                return None;
            }
        };
        let band = written.resolve(scale, |name, range| {
            let field = self.scope.fields.find(name);
            let found = field.and_then(|field| {
                let scale = self.field_scales.get(field.index()).copied().flatten()?;
                Some((field, scale))
            });
            found.ok_or_else(|| Unresolved::Field {
                name: name.to_owned(),
                range,
            })
        });
        match band {
            Ok(band) => Some(band),
            Err(Unresolved::Wrong(wrong)) => {
                self.quantity_wrong(text, file, wrong);
                None
            }
            Err(Unresolved::Field { name, range }) => {
                let span = self.within(text, file, range);
                self.field_without_number(&name, span);
                None
            }
        }
    }
}
