//! Answers, and what is confirmed before it is done.

use crate::face::HomeChoice;
use crate::face::Left;
use crate::tui::model::{Dialog, Effect, Model, Purpose, Said, Scene, listed, words_of};
use crate::walk::{Ask, Command, Question, Standing};

/// Carries a command out.
pub fn carry_out(model: &mut Model, command: Command) -> Option<Effect> {
    model.aside = matches!(command, Command::Note(_));
    Some(Effect::CarryOut(command))
}

/// What Enter does.
pub fn answer(model: &mut Model, scene: Scene<'_>) -> Option<Effect> {
    match model.dialog.take() {
        None => match scene {
            Scene::Home(home) => {
                let choice = model.chosen.and_then(|chosen| home.choice(chosen));
                hint_unless(
                    model,
                    choice.map(Effect::Choose),
                    "Choose a complaint or a call first.",
                )
            }
            Scene::Call { ask, .. } => question(model, ask),
        },
        Some(Dialog::Danger(chosen)) => {
            let effect = chosen.map(|at| match scene {
                Scene::Home(_) => Effect::Choose(HomeChoice::Danger(at)),
                Scene::Call { .. } => Effect::CarryOut(Command::Danger(at)),
            });
            model.dialog = Some(Dialog::Danger(chosen));
            hint_unless(model, effect, "Choose the danger first.")
        }
        Some(Dialog::Trail(chosen)) => {
            let position = chosen.and_then(|at| Some(standing(scene)?.trail.get(at)?.position));
            let before = Dialog::Trail(chosen);
            model.dialog = Some(match position {
                Some(position) => Dialog::Sure(Command::Back(position), Box::new(before)),
                None => before,
            });
            None
        }
        Some(Dialog::Writing(purpose, input)) => {
            let words = input.value().trim().to_owned();
            let before = Dialog::Writing(purpose, input);
            written(model, purpose, words, before)
        }
        Some(Dialog::Leaving) => Some(Effect::Leave(Left::Quit)),
        other => {
            model.dialog = other;
            None
        }
    }
}

/// Carries out what was to be confirmed. The dialog stays until that is done.
pub fn yes(model: &mut Model) -> Option<Effect> {
    let Some(Dialog::Sure(command, _)) = &model.dialog else {
        return None;
    };
    let command = command.clone();
    carry_out(model, command)
}

/// Takes the chosen answer's value again.
pub fn retake(model: &mut Model, scene: Scene<'_>) -> Option<Effect> {
    let Some(Dialog::Trail(Some(chosen))) = model.dialog else {
        return None;
    };
    let datum = standing(scene)?.trail.get(chosen)?.datum;
    let effect = datum.map(|datum| Effect::CarryOut(Command::Retake(datum)));
    hint_unless(model, effect, "Nothing was taken here that could be taken again.")
}

fn standing(scene: Scene<'_>) -> Option<&Standing> {
    match scene {
        Scene::Call { standing, .. } => Some(standing),
        Scene::Home(_) => None,
    }
}

fn question(model: &mut Model, ask: &Ask) -> Option<Effect> {
    let command = match &ask.question {
        Question::Number { .. } => {
            let typed = model.input.value().trim().to_owned();
            let command = (!typed.is_empty()).then_some(Command::Type(typed));
            return hint_unless(model, command.map(Effect::CarryOut), "Type the reading first.");
        }
        Question::Choice { .. } => {
            let listed = listed(ask, model.input.value());
            let option = model.chosen.and_then(|chosen| listed.get(chosen));
            let command = option.map(|option| Command::Choose(option.value));
            let hint = match words_of(model.input.value()) {
                None => "Choose one of the answers first.",
                Some(_) if listed.is_empty() => "Nothing is called so: type other words.",
                Some(_) => "Choose one of those found: Down, then Enter.",
            };
            return hint_unless(model, command.map(Effect::CarryOut), hint);
        }
        Question::Unproven { lacks, .. } => {
            let mut takes = lacks.iter().flat_map(|lack| &lack.take);
            let take = model.chosen.and_then(|chosen| takes.nth(chosen));
            let command = take.map(|(datum, _)| Command::Take(*datum));
            return hint_unless(model, command.map(Effect::CarryOut), "Choose what to take first.");
        }
        Question::Act { .. } => Command::Done,
        Question::PutBack { restore, .. } => Command::PutBack(*restore),
        Question::Finished => Command::Close,
        Question::Closed => return Some(Effect::Leave(Left::Closed)),
    };
    carry_out(model, command)
}

fn hint_unless(model: &mut Model, effect: Option<Effect>, hint: &'static str) -> Option<Effect> {
    if effect.is_none() {
        model.said = Some(Said::Hint(hint));
    }
    effect
}

fn written(model: &mut Model, purpose: Purpose, words: String, before: Dialog) -> Option<Effect> {
    if words.is_empty() {
        model.dialog = Some(before);
        model.said = Some(Said::Hint("Write it down first, in a few words."));
        return None;
    }
    let command = match purpose {
        Purpose::Note => Command::Note(words),
        Purpose::Unable => Command::Unable(words),
        Purpose::Stop => Command::Stop(words),
        Purpose::Insist => Command::Insist(words),
        Purpose::LeaveOpen(restore) => Command::LeaveOpen(restore, words),
    };
    if matches!(purpose, Purpose::Note | Purpose::Unable) {
        model.dialog = Some(before);
        return carry_out(model, command);
    }
    model.dialog = Some(Dialog::Sure(command, Box::new(before)));
    None
}
