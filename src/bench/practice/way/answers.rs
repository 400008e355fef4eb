//! What the answers to a question claim, and how far that stands by what was taken.

use super::search::Ways;
use super::{Found, NOT_SHOWN, Needed, OTHERWISE};
use crate::bench::technician::NOT_HERE;
use crate::library::{Answers, Claim, ClaimKind, Datum, Edge, FieldKind, Id, Library, Step};
use crate::walk::{Holding, answer_holds, claim_words};

impl Ways<'_> {
    /// Where each answer to a question leads, and what it takes to give it.
    pub(super) fn answered<'e>(
        &self,
        datum: Datum,
        answers: &Answers,
        without: impl Iterator<Item = &'e Edge>,
        void: &[Datum],
    ) -> Vec<(Id<Step>, Found, Vec<Datum>)> {
        let is_void = void.contains(&datum);
        let claims = claims(self.library, datum, answers);
        let answers = claims.into_iter().map(|(go, claim)| {
            let found = self.stands(datum, claim.as_ref(), is_void);
            (go, found, Vec::new())
        });
        let without = without.map(|edge| (edge.go, self.not_shown(datum, is_void), Vec::new()));
        answers.chain(without).collect()
    }

    /// Whether the furnace itself was found not to show it: whoever only says so has not looked.
    fn is_not_here(&self, datum: Datum) -> bool {
        self.state
            .could_not
            .get(&datum)
            .is_some_and(|why| why == NOT_HERE)
    }

    /// What it takes to go on without an answer.
    fn not_shown(&self, datum: Datum, is_void: bool) -> Found {
        if self.is_not_here(datum) && !is_void {
            return Found::default();
        }
        let taken = self.state.value(datum).is_some() && !is_void;
        let shows = self.here.map(|here| here.shows(datum));
        let otherwise = !taken && !is_void && shows == Some(true);
        Found {
            cost: match shows {
                _ if taken || otherwise => OTHERWISE,
                Some(false) => 1,
                _ => NOT_SHOWN,
            },
            needed: vec![Needed {
                words: format!("{}: not to be had at this furnace", self.library.title_of(datum)),
                holding: match taken {
                    true => Holding::Contradicted,
                    false => Holding::Missing,
                },
                data: vec![datum],
                after_work: is_void,
                otherwise,
            }],
        }
    }

    fn stands(&self, datum: Datum, claim: Option<&Claim>, after_work: bool) -> Found {
        let holding = match claim {
            // What stands was taken before it.
            _ if after_work => Holding::Missing,
            Some(claim) => answer_holds(self.state, claim),
            None if self.state.value(datum).is_some() => Holding::Holds,
            None => Holding::Missing,
        };
        // What is not to be had here is no nearer than what was found otherwise.
        let missing = holding == Holding::Missing && !after_work;
        let otherwise = missing
            && (self.is_not_here(datum)
                || self.here.is_some_and(|here| match claim {
                    Some(claim) => here.rules_out(claim),
                    None => !here.shows(datum),
                }));
        let words = match claim {
            // Where every answer will do, to list them all says nothing.
            Some(claim) if !is_any(self.library, claim) => claim_words(self.library, claim),
            _ => self.library.title_of(datum).to_owned(),
        };
        let bands = claim.into_iter().flat_map(bounds);
        let data = std::iter::once(datum).chain(bands).collect();
        Found {
            cost: match holding {
                Holding::Holds => 0,
                _ if otherwise => OTHERWISE,
                Holding::Missing | Holding::Borderline => 1,
                Holding::Contradicted => OTHERWISE,
            },
            needed: vec![Needed {
                words,
                holding,
                data,
                after_work,
                otherwise,
            }],
        }
    }
}

/// What each way out of a question claims of its answer; nothing where any answer will do.
fn claims(library: &Library, datum: Datum, answers: &Answers) -> Vec<(Id<Step>, Option<Claim>)> {
    match answers {
        Answers::Go(edge) => vec![(edge.go, None)],
        Answers::Bands(bands) => (bands.iter())
            .filter_map(|answer| {
                let what = match datum {
                    Datum::Reading(id) => ClaimKind::Reading(id, answer.band.clone()),
                    Datum::Field(id) => ClaimKind::FieldNumber(id, answer.band.clone()),
                    Datum::Sign(_) => return None,
                };
                Some((answer.edge.go, Some(Claim { at: answer.at, what })))
            })
            .collect(),
        Answers::Choices(choices) => {
            // Values that lead the same way are one answer.
            let mut ways: Vec<(Id<Step>, Claim)> = Vec::new();
            for answer in choices {
                let what = match datum {
                    Datum::Sign(id) => ClaimKind::Sign(id, vec![answer.value]),
                    Datum::Field(id) if matches!(library.plate[id].kind, FieldKind::Choices(_)) => {
                        ClaimKind::FieldChoice(id, vec![answer.value])
                    }
                    _ => continue,
                };
                let same = ways.iter_mut().find(|(go, _)| *go == answer.edge.go);
                match same.map(|(_, claim)| &mut claim.what) {
                    Some(ClaimKind::Sign(_, values) | ClaimKind::FieldChoice(_, values)) => {
                        values.push(answer.value);
                    }
                    _ => ways.push((answer.edge.go, Claim { at: answer.at, what })),
                }
            }
            ways.into_iter().map(|(go, claim)| (go, Some(claim))).collect()
        }
    }
}

/// Whether every answer fulfils a claim.
fn is_any(library: &Library, claim: &Claim) -> bool {
    match &claim.what {
        ClaimKind::Sign(id, values) => values.len() == library.signs[*id].values.len(),
        ClaimKind::FieldChoice(id, values) => match &library.plate[*id].kind {
            FieldKind::Choices(choices) => values.len() == choices.len(),
            FieldKind::Number { .. } => false,
        },
        ClaimKind::Reading(..) | ClaimKind::FieldNumber(..) => false,
    }
}

/// The plate fields that the bounds of a claim lean on.
fn bounds(claim: &Claim) -> Vec<Datum> {
    match &claim.what {
        ClaimKind::Reading(_, band) | ClaimKind::FieldNumber(_, band) => {
            let fields = band.bounds().filter_map(|bound| bound.leans_on());
            fields.map(|field| Datum::Field(*field)).collect()
        }
        ClaimKind::Sign(..) | ClaimKind::FieldChoice(..) => Vec::new(),
    }
}
