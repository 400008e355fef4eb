//! What must hold before a part may be condemned.

use super::super::raw;
use super::super::registry::{Claim, ClaimKind, Datum, Proof, ProofLine};
use super::super::yaml::{At, Entries, Entry, Form, Node};
use super::Resolver;
use super::lookup::Valued;
use crate::source::{FileId, Span};

impl Resolver<'_> {
    /// Resolves a proof. A line that cannot be read makes the whole proof one that never holds.
    pub(super) fn proof(&mut self, lines: &raw::Proof, file: FileId) -> Proof {
        let mut proof = Proof::default();
        for line in lines {
            match self.proof_line(line, file) {
                Some(line) => proof.lines.push(line),
                None => proof.broken = true,
            }
        }
        proof
    }

    fn proof_line(&mut self, line: &At<Entries<Node>>, file: FileId) -> Option<ProofLine> {
        let at = line
            .value
            .0
            .first()
            .map_or(line.span(file), |entry| entry.key.span(file));
        let alternatives = match line.value.0.as_slice() {
            [Entry { key, value }] if key.value == "any" => self.alternatives(key.span(file), value, file)?,
            [] => {
                self.malformed(at, "a line of the proof is empty", "write `- READING: band`");
                return None;
            }
            claims => vec![self.claims(claims, file)?],
        };
        Some(ProofLine { at, alternatives })
    }

    fn alternatives(&mut self, at: Span, value: &Node, file: FileId) -> Option<Vec<Vec<Claim>>> {
        let maps = match &value.value {
            Form::List(maps) if !maps.is_empty() => maps,
            _ => {
                self.malformed(
                    at,
                    "`any` holds no alternatives",
                    "write a list of maps below it: `- READING: band`",
                );
                return None;
            }
        };
        let mut alternatives = Vec::new();
        let mut whole = true;
        for map in maps {
            match &map.value {
                Form::Map(claims) if !claims.0.is_empty() => match self.claims(&claims.0, file) {
                    Some(claims) => alternatives.push(claims),
                    None => whole = false,
                },
                _ => {
                    self.malformed(
                        map.span(file),
                        "this is no alternative",
                        "write `- READING: band`",
                    );
                    whole = false;
                }
            }
        }
        whole.then_some(alternatives)
    }

    fn claims(&mut self, entries: &[Entry<Node>], file: FileId) -> Option<Vec<Claim>> {
        self.once_each(entries, file);
        let claims: Vec<Option<Claim>> = entries
            .iter()
            .map(|entry| self.proof_claim(entry, file))
            .collect();
        claims.into_iter().collect()
    }

    fn proof_claim(&mut self, entry: &Entry<Node>, file: FileId) -> Option<Claim> {
        let name = entry
            .key
            .clone()
            .map(|name| name.trim_start_matches("plate.").to_owned());
        let what = match self.find_datum(&name, file)? {
            Datum::Reading(reading) => {
                let scale = self.library.readings.get(reading)?.scale;
                let text = self.one_text(&entry.value, file)?;
                ClaimKind::Reading(reading, self.band(&text, scale, file)?)
            }
            Datum::Sign(sign) => {
                ClaimKind::Sign(sign, self.claimed_values(&entry.value, Valued::Sign(sign), file)?)
            }
            Datum::Field(field) => match self.field_scales.get(field.index()).copied()? {
                Some(scale) => {
                    let text = self.one_text(&entry.value, file)?;
                    ClaimKind::FieldNumber(field, self.band(&text, scale, file)?)
                }
                None => ClaimKind::FieldChoice(
                    field,
                    self.claimed_values(&entry.value, Valued::Field(field), file)?,
                ),
            },
        };
        Some(Claim {
            at: entry.key.span(file),
            what,
        })
    }

    fn claimed_values(&mut self, node: &Node, of: Valued, file: FileId) -> Option<Vec<usize>> {
        let names = self.texts(node, file)?;
        let values: Vec<_> = names.iter().map(|name| self.find_value(of, name, file)).collect();
        values.into_iter().collect()
    }

    /// One text, where a list or a map would make no sense.
    pub(super) fn one_text(&mut self, node: &Node, file: FileId) -> Option<At<String>> {
        let mut texts = self.texts(node, file)?;
        if texts.len() == 1 {
            return texts.pop();
        }
        self.malformed(
            node.span(file),
            "one text is wanted here",
            "write it on the key's own line",
        );
        None
    }

    /// One text or a list of them, as they were typed.
    pub(super) fn texts(&mut self, node: &Node, file: FileId) -> Option<Vec<At<String>>> {
        let typed = |node: &Node| match &node.value {
            Form::Text(text) => Some(node.clone().map(|_| text.clone())),
            Form::Plain => {
                let text = self.files.excerpt(node.span(file)).to_owned();
                Some(node.clone().map(|_| text))
            }
            Form::Nothing | Form::List(_) | Form::Map(_) => None,
        };
        let texts: Option<Vec<At<String>>> = match &node.value {
            Form::List(items) => items.iter().map(typed).collect(),
            _ => typed(node).map(|text| vec![text]),
        };
        match texts {
            Some(texts) if !texts.is_empty() => Some(texts),
            _ => {
                self.malformed(
                    node.span(file),
                    "a text, or a list of texts, is wanted here",
                    "write one, or several in brackets: [one, two]",
                );
                None
            }
        }
    }
}
