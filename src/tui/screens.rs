//! One file for each screen: what it says, as a [`Sheet`].

pub mod answer;
pub mod choice;
pub mod danger;
pub mod finished;
pub mod head;
pub mod help;
pub mod home;
pub mod known;
pub mod leaving;
pub mod number;
pub mod put_back;
pub mod said;
pub mod standing;
pub mod stated;
pub mod sure;
pub mod trail;
pub mod unproven;
pub mod writing;

use super::model::{Dialog, Model, Scene};
use super::sheet::Sheet;
use super::theme::Theme;
use crate::source::{Safe, safe};
use crate::walk::Question;

/// What the present screen says, for a column so wide.
pub fn sheet(theme: Theme, model: &Model, scene: Scene<'_>, width: usize) -> Sheet {
    let mut sheet = match (&model.dialog, scene) {
        (Some(Dialog::Danger(chosen)), scene) => danger::sheet(theme, scene.dangers(), *chosen, width),
        (Some(Dialog::Help(place, _)), _) => help::sheet(theme, *place, width),
        (Some(Dialog::Standing), Scene::Call { standing, .. }) => standing::sheet(theme, standing, width),
        (Some(Dialog::Trail(chosen)), Scene::Call { standing, .. }) => {
            trail::sheet(theme, standing, *chosen, width)
        }
        (Some(Dialog::Writing(purpose, input)), Scene::Call { ask, .. }) => {
            writing::sheet(theme, ask, *purpose, input, width)
        }
        (Some(Dialog::Sure(command, _)), Scene::Call { standing, .. }) => {
            sure::sheet(theme, command, standing, width)
        }
        (Some(Dialog::Known), Scene::Call { known, .. }) => known::sheet(theme, known, width),
        (Some(Dialog::Leaving), _) => leaving::sheet(theme, width),
        (_, Scene::Home(home)) => home::sheet(theme, home, model.chosen, width),
        (None, Scene::Call { ask, standing, .. }) => match &ask.question {
            Question::Number { .. } => number::sheet(theme, ask, &model.input, width),
            Question::Choice { .. } => choice::sheet(theme, ask, &model.input, model.chosen, width),
            Question::Act { .. } => head::act(theme, ask, width),
            Question::Unproven { .. } => unproven::sheet(theme, ask, model.chosen, width),
            Question::PutBack { left, .. } => put_back::sheet(theme, ask, standing, *left, width),
            Question::Finished => finished::sheet(theme, standing, false, width),
            Question::Closed => finished::sheet(theme, standing, true, width),
        },
    };
    match (&model.said, &model.dialog, scene) {
        (Some(said), ..) => said::add(theme, said, width, &mut sheet.foot),
        (None, None, Scene::Call { standing, .. }) => {
            said::came_out(theme, standing, width, &mut sheet.foot);
        }
        _ => {}
    }
    sheet
}

/// A count with its word: `1 answer`, `3 answers`.
fn counted(count: usize, one: &str) -> Safe {
    let ending = if count == 1 { "" } else { "s" };
    safe(&format!("{count} {one}{ending}"))
}
