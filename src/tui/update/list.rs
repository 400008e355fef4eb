//! Choosing from a list.

use crate::tui::keys::Press;
use crate::tui::model::{Dialog, Model, Scene};

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
    let (chosen, count) = list(model, scene);
    if at < count {
        *chosen = Some(at);
    }
}

/// Chooses the next, or the one before; the first where nothing is chosen.
pub fn step(model: &mut Model, scene: Scene<'_>, forward: bool) {
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
        _ => (&mut model.chosen, scene.choices()),
    }
}
