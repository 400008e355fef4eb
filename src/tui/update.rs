//! What a key does: the screen's only rules.

mod answer;
mod list;
mod write;

use super::keys::{Action, Place, Press, action};
use super::model::{Dialog, Effect, Message, Model, Purpose, Said, Scene};
use crate::face::HomeChoice;
use crate::face::Left;
use crate::layout::PAGE;
use crate::walk::{Command, Question};

/// Takes a message in; the effect that comes back is the caller's to carry out, and to answer with
/// [`Message::CarriedOut`] or [`Message::NotDone`].
pub fn update(model: &mut Model, scene: Scene<'_>, message: Message) -> Option<Effect> {
    match message {
        Message::Press(press) => return pressed(model, scene, press),
        Message::Paste(text) => {
            write::paste(model, scene, &text);
            list::typed(model, scene);
        }
        Message::CarriedOut => carried_out(model),
        Message::NotDone(why) => not_done(model, Said::Not(why)),
        Message::TooEarly => {
            model.said = Some(Said::Hint(
                "Keys that came together with the last answer were not taken. Read the question, then answer.",
            ));
        }
    }
    None
}

fn pressed(model: &mut Model, scene: Scene<'_>, press: Press) -> Option<Effect> {
    let place = model.place(scene);
    let action = action(place, press)?;
    if !matches!(action, Action::ScrollUp | Action::ScrollDown | Action::Redraw) {
        model.said = None;
    }
    match action {
        Action::Answer => return answer::answer(model, scene),
        Action::Yes => return answer::yes(model),
        Action::Retake => return answer::retake(model, scene),
        Action::Unsure => return answer::carry_out(model, Command::Unsure),
        Action::Pick => list::pick(model, scene, press),
        Action::Previous => list::step(model, scene, false),
        Action::Next => list::step(model, scene, true),
        Action::ScrollUp => model.scroll = model.scroll.saturating_sub(PAGE),
        Action::ScrollDown => model.scroll = (model.scroll + PAGE).min(model.scroll_most),
        Action::Unable => open(model, Dialog::Writing(Purpose::Unable, Default::default())),
        Action::Note => open(model, Dialog::Writing(Purpose::Note, Default::default())),
        Action::Stop => open(model, Dialog::Writing(Purpose::Stop, Default::default())),
        Action::Insist => open(model, Dialog::Writing(Purpose::Insist, Default::default())),
        Action::LeaveOpen => leave_open(model, scene),
        Action::Trail => open(model, Dialog::Trail(list::newest(scene))),
        Action::Standing => open(model, Dialog::Standing),
        Action::Known => known(model, scene),
        Action::Danger => open(model, Dialog::Danger(None)),
        Action::Help => {
            let before = model.dialog.take().map(Box::new);
            open(model, Dialog::Help(place, before));
        }
        Action::Close => close(model),
        Action::Leave => return leave(model, scene, place),
        Action::Redraw => return Some(Effect::Redraw),
        Action::Suspend => return Some(Effect::Suspend),
        Action::Type
        | Action::DeleteBefore
        | Action::DeleteAfter
        | Action::DeleteWord
        | Action::DeleteLine
        | Action::Left
        | Action::Right
        | Action::ToStart
        | Action::ToEnd => {
            write::edit(model, action, press);
            list::typed(model, scene);
        }
    }
    None
}

fn known(model: &mut Model, scene: Scene<'_>) {
    match scene {
        Scene::Call { known, .. } if !known.is_empty() => open(model, Dialog::Known),
        _ => {
            model.said = Some(Said::Hint(
                "Nothing is known of this equipment: no earlier call here has its id.",
            ));
        }
    }
}

fn open(model: &mut Model, dialog: Dialog) {
    model.dialog = Some(dialog);
    model.scroll = 0;
}

fn close(model: &mut Model) {
    model.scroll = 0;
    model.dialog = match model.dialog.take() {
        Some(Dialog::Sure(_, before)) => Some(*before),
        Some(Dialog::Help(_, before)) => before.map(|before| *before),
        _ => None,
    };
}

fn leave(model: &mut Model, scene: Scene<'_>, place: Place) -> Option<Effect> {
    match place {
        Place::Closed => return Some(Effect::Leave(Left::Closed)),
        Place::Leaving => return Some(Effect::Leave(Left::Quit)),
        _ => {}
    }
    if let Scene::Home(_) = scene {
        return Some(Effect::Choose(HomeChoice::Quit));
    }
    open(model, Dialog::Leaving);
    None
}

fn leave_open(model: &mut Model, scene: Scene<'_>) {
    if let Scene::Call { ask, .. } = scene
        && let Question::PutBack { restore, .. } = ask.question
    {
        open(
            model,
            Dialog::Writing(Purpose::LeaveOpen(restore), Default::default()),
        );
    }
}

fn carried_out(model: &mut Model) {
    if model.aside {
        model.aside = false;
        model.dialog = None;
    } else {
        *model = Model::default();
    }
}

/// What was typed stays, so that it can be tried again.
fn not_done(model: &mut Model, said: Said) {
    model.aside = false;
    if let Some(Dialog::Sure(..)) = model.dialog {
        close(model);
    }
    model.said = Some(said);
}
