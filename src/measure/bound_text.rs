//! Reading one bound of a band.

use std::ops::Range;

use super::amount::{Amount, asked};
use super::bound::Bound;
use super::dimension::Dimension;
use super::misread::{Misread, quoted, range_in};
use super::scale::Scale;
use super::significant::round;
use super::unit::Unit;

/// What a field of the rating plate is written with.
const PLATE: &str = "plate.";
const BOUND_HELP: &str = "write a quantity (`24 V`), a field (`plate.rise_max`), a share (`90 % of plate.input`), or a \
                          field and an offset (`plate.manifold - 0.3 in.w.c.`)";

/// A bound as it was written, before anybody knows which fields there are.
#[derive(Clone, Debug, PartialEq)]
pub struct BoundText {
    /// The bytes of the band's text that it covers.
    pub range: Range<usize>,
    /// The share of the field that is meant; `None` is the whole.
    pub share: Option<f64>,
    /// The field's name without `plate.`, and the bytes of the whole `plate.NAME`.
    pub field: Option<(String, Range<usize>)>,
    /// A fixed part: its sign (1 or −1), the amount, and the amount's bytes.
    pub amount: Option<(f64, Amount, Range<usize>)>,
}

impl BoundText {
    /// Reads `part`, a slice of the band's `text`.
    pub(super) fn parse(text: &str, part: &str) -> Result<Self, Misread> {
        let part = part.trim();
        let mut bound = Self {
            range: range_in(text, part),
            share: None,
            field: None,
            amount: None,
        };
        let mut field = part;
        if let Some((share, rest)) = split_at_of(part) {
            bound.share = Some(read_share(text, share)?);
            field = rest;
        }
        match field.strip_prefix(PLATE) {
            Some(named) => bound.read_field(text, named)?,
            None if bound.share.is_some() || part.contains(PLATE) || !starts_like_a_number(part) => {
                let message = format!("{} is not a bound", quoted(part));
                return Err(Misread::new(bound.range, message, BOUND_HELP));
            }
            None => bound.amount = Some(read_amount(text, part, 1.0)?),
        }
        Ok(bound)
    }

    /// Reads `NAME`, `NAME + Q` or `NAME - Q`, which stands behind `plate.`.
    fn read_field(&mut self, text: &str, named: &str) -> Result<(), Misread> {
        let end = named
            .find(|letter: char| !letter.is_alphanumeric() && letter != '_')
            .unwrap_or(named.len());
        let (name, rest) = named.split_at(end);
        let range = range_in(text, name);
        let range = range.start - PLATE.len()..range.end;
        if name.is_empty() {
            return Err(Misread::new(range, "`plate.` names no field", BOUND_HELP));
        }
        self.field = Some((name.to_owned(), range));
        let rest = rest.trim();
        let mut letters = rest.chars();
        let sign = match letters.next() {
            None => return Ok(()),
            Some('+') => 1.0,
            Some('-' | '−') => -1.0,
            Some(_) => {
                let message = format!("{} cannot follow a field", quoted(rest));
                return Err(Misread::new(range_in(text, rest), message, BOUND_HELP));
            }
        };
        let offset = letters.as_str().trim();
        if !offset.starts_with(|letter: char| letter.is_ascii_digit() || letter == '.') {
            let message = format!("the offset {} is not a quantity without a sign", quoted(offset));
            return Err(Misread::new(range_in(text, rest), message, BOUND_HELP));
        }
        self.amount = Some(read_amount(text, offset, sign)?);
        Ok(())
    }

    /// The bound on a scale: see [`BandText::resolve`](super::BandText::resolve).
    pub(super) fn resolve<F, E: From<Misread>>(
        &self,
        scale: Scale,
        field: &mut impl FnMut(&str, Range<usize>) -> Result<(F, Scale), E>,
    ) -> Result<Bound<F>, E> {
        let mut bound = Bound {
            share: None,
            offset: None,
        };
        if let Some((name, range)) = &self.field {
            let (field, field_scale) = field(name, range.clone())?;
            if let Some(misread) = unfit_field(name, range, self.share, field_scale, scale) {
                return Err(misread.into());
            }
            bound.share = Some((self.share.unwrap_or(1.0), field));
        }
        if let Some((sign, amount, range)) = &self.amount {
            let scale = if self.field.is_some() {
                scale.of_offsets()
            } else {
                scale
            };
            let value = amount
                .quantity(scale)
                .map_err(|misread| misread.moved(range.start))?;
            bound.offset = Some(if *sign < 0.0 { value.times(-1.0) } else { value });
        }
        Ok(bound)
    }
}

fn unfit_field(
    name: &str,
    range: &Range<usize>,
    share: Option<f64>,
    field: Scale,
    asked_for: Scale,
) -> Option<Misread> {
    let named = || quoted(&format!("{PLATE}{name}"));
    if field.dimension() != asked_for.dimension() {
        let message = format!(
            "{} is {}; {}",
            named(),
            field.dimension().name(),
            asked(asked_for)
        );
        let help = format!("use a field that is {}", asked_for.dimension().name());
        return Some(Misread::new(range.clone(), message, help).mismatched());
    }
    if share.is_some() && field.dimension() == Dimension::Temperature {
        let message = format!("{} is a temperature, of which a share means nothing", named());
        let help = "add or subtract a difference instead: `plate.limit - 10 °F`";
        return Some(Misread::new(range.clone(), message, help));
    }
    None
}

/// Splits `90 % of plate.input` at its `of`.
fn split_at_of(part: &str) -> Option<(&str, &str)> {
    let of = part.split_whitespace().find(|word| *word == "of")?;
    let at = range_in(part, of);
    Some((part[..at.start].trim_end(), part[at.end..].trim_start()))
}

fn read_share(text: &str, share: &str) -> Result<f64, Misread> {
    let range = range_in(text, share);
    let amount = Amount::parse(share).map_err(|misread| misread.moved(range.start))?;
    if amount.unit != Some(Unit::Percent) || amount.number <= 0.0 {
        let message = format!("{} is not a share", quoted(share));
        let help = "a share is above 0 %, for instance `90 % of plate.input`";
        return Err(Misread::new(range, message, help));
    }
    Ok(round(amount.number / 100.0))
}

fn read_amount(text: &str, part: &str, sign: f64) -> Result<(f64, Amount, Range<usize>), Misread> {
    let range = range_in(text, part);
    let amount = Amount::parse(part).map_err(|misread| misread.moved(range.start))?;
    Ok((sign, amount, range))
}

fn starts_like_a_number(part: &str) -> bool {
    let bare = part.trim_start_matches(['+', '-', '−', '.']).to_ascii_lowercase();
    // Those that mean no finite number get their own message from the reader of numbers.
    bare.starts_with(|letter: char| letter.is_ascii_digit())
        || bare.starts_with("inf")
        || bare.starts_with("nan")
}
