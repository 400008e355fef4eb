//! Choosing from a list.

use crate::tui::keys::{Place, Press};
use crate::tui::model::{Dialog, Model, Scene, words_of};

/// The newest answer of the trail.
pub fn newest(scene: Scene<'_>) -> Option<usize> {
    match scene {
        Scene::Call { standing, .. } => standing.trail.len().checked_sub(1),
        Scene::Home(_) => None,
    }
}

/// Chooses by number.
pub fn pick(model: &mut Model, scene: Scene<'_>, press: Press) {
    let Press::Char(digit @ '1'..='9') = press else {
        return;
    };
    let at = usize::from(digit as u8 - b'1');
    model.scroll = 0;
    let (chosen, count) = list(model, scene);
    if at < count {
        *chosen = Some(at);
    }
}

/// Chooses by what is typed: the option of a number, or the only one that is called by the words.
pub fn typed(model: &mut Model, scene: Scene<'_>) {
    if model.place(scene) != Place::List {
        return;
    }
    model.scroll = 0;
    let typed = model.input.value();
    let count = scene.choices(typed);
    model.chosen = match words_of(typed) {
        Some(_) => (count == 1).then_some(0),
        None => {
            let number = typed.trim().parse().ok();
            number
                .and_then(|number: usize| number.checked_sub(1))
                .filter(|at| *at < count)
        }
    };
}

/// Chooses the next, or the one before; the first where nothing is chosen.
pub fn step(model: &mut Model, scene: Scene<'_>, forward: bool) {
    // Who chooses has read; what is chosen is to be seen whole.
    model.scroll = 0;
    let (chosen, count) = list(model, scene);
    let Some(last) = count.checked_sub(1) else {
        return;
    };
    *chosen = Some(match *chosen {
        None if forward => 0,
        None => last,
        Some(at) if forward => (at + 1).min(last),
        Some(at) => at.saturating_sub(1),
    });
}

fn list<'m>(model: &'m mut Model, scene: Scene<'_>) -> (&'m mut Option<usize>, usize) {
    match &mut model.dialog {
        Some(Dialog::Trail(chosen)) => (chosen, newest(scene).map_or(0, |newest| newest + 1)),
        Some(Dialog::Danger(chosen)) => (chosen, scene.dangers().len()),
        _ => {
            let count = scene.choices(model.input.value());
            (&mut model.chosen, count)
        }
    }
}
