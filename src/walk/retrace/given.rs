//! From what was recorded, back to what was given.

use super::super::command::Command;
use super::super::event::{End, Event, Role};
use super::Given;
use crate::library::{Datum, FieldKind, Library};

/// What must have been given, if what was recorded came of it; none where nothing that a technician can give begins so.
///
/// It need not be possible here: whoever decides it says so.
pub(super) fn given(library: &Library, recorded: &[Event]) -> Option<Given> {
    let [first, rest @ ..] = recorded else { return None };
    if let Event::LeftOpen { .. } = first {
        // What an answer opens stands before it.
        let answer = rest.first().filter(|next| {
            matches!(
                next,
                Event::Measured { typed: Some(_), .. } | Event::Observed { .. } | Event::Did { .. }
            )
        });
        let command = answer.and_then(|answer| command(library, answer, None));
        return Some(command.map_or(Given::Opening, Given::Command));
    }
    command(library, first, rest.first()).map(Given::Command)
}

fn command(library: &Library, event: &Event, next: Option<&Event>) -> Option<Command> {
    Some(match event {
        Event::Measured { typed, .. } => Command::Type(typed.clone()?),
        Event::Observed { sign, value } => {
            let sign = &library.signs[library.signs.find(sign)?];
            Command::Choose(sign.values.iter().position(|choice| choice.name == *value)?)
        }
        Event::ReadPlate { field, value } => match &library.plate[library.plate.find(field)?].kind {
            FieldKind::Choices(choices) => {
                Command::Choose(choices.iter().position(|choice| choice.name == *value)?)
            }
            FieldKind::Number { .. } => Command::Type(value.clone()),
        },
        Event::Doubted { value, .. } => Command::Type(value.clone()),
        // Whoever is unsure of what is taken out of turn has it recorded like this, too, and it leads to the same.
        Event::CouldNot { why, .. } => Command::Unable(why.clone()),
        Event::WasUnsure { .. } => Command::Unsure,
        Event::Did { .. } => Command::Done,
        Event::Voided { data, .. } => match next {
            Some(Event::Retaking { datum, for_proof }) => take(library, datum, *for_proof)?,
            // Cut off behind it. The value itself stands behind those that it is worked out from.
            _ => take(library, data.last()?, false)?,
        },
        Event::Retaking { datum, for_proof } => take(library, datum, *for_proof)?,
        Event::WentBack { to } => Command::Back(*to),
        Event::Entered {
            tree,
            role: Role::Danger,
        } => {
            let tree = library.trees.find(tree)?;
            Command::Danger(library.dangers.iter().position(|danger| danger.tree == tree)?)
        }
        Event::Ended(End::Unproven { why }) => Command::Stop(why.clone()),
        Event::Ended(End::Insisted { words, .. }) => Command::Insist(words.clone()),
        Event::Noted { text } => Command::Note(text.clone()),
        Event::PutBack { restore } => Command::PutBack(library.restores.find(restore)?),
        Event::KeptOpen { restore, why } => Command::LeaveOpen(library.restores.find(restore)?, why.clone()),
        Event::Closed => Command::Close,
        // What only follows from something else, stands at the beginning, or is told of the file.
        Event::Opened(_)
        | Event::Entered { .. }
        | Event::Took { .. }
        | Event::Returned { .. }
        | Event::Left { .. }
        | Event::LeftOpen { .. }
        | Event::Restored { .. }
        | Event::Withheld { .. }
        | Event::Stated { .. }
        | Event::Ended(End::Verdict { .. } | End::Outcome { .. })
        | Event::TailCut { .. } => return None,
    })
}

fn take(library: &Library, datum: &str, for_proof: bool) -> Option<Command> {
    let datum: Datum = library.datum(datum)?;
    Some(match for_proof {
        true => Command::Take(datum),
        false => Command::Retake(datum),
    })
}
