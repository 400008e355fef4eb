//! The table of keys is all there is to know about them.

use proofwalk::tui::keys::{Place, TABLE};
use proofwalk::tui::{Dialog, Model, Scene};

use crate::scene;

#[test]
fn the_help_shows_every_key() {
    let (ask, standing) = (scene::number(), scene::standing());
    let model = Model {
        dialog: Some(Dialog::Help(Place::Number, None)),
        ..Model::default()
    };
    let tall = scene::drawn(
        (100, 200),
        &model,
        Scene::Call {
            ask: &ask,
            standing: &standing,
            known: &[],
        },
        scene::RICH,
    );
    for binding in TABLE {
        let line = tall
            .lines()
            .find(|line| line.starts_with(&binding.keys.to_string()) && line.ends_with(binding.help));
        assert!(line.is_some(), "{} {}", binding.keys, binding.help);
    }
}

#[test]
fn the_key_bar_shows_only_keys_of_the_table() {
    let (ask, standing) = (scene::choice(), scene::standing());
    let screen = scene::drawn(
        (120, 24),
        &Model::default(),
        Scene::Call {
            ask: &ask,
            standing: &standing,
            known: &[],
        },
        scene::RICH,
    );
    let bar = screen.lines().last().unwrap();
    for shown in bar.split(" · ") {
        let (word, key) = shown.rsplit_once(' ').unwrap();
        let known = TABLE.iter().any(|binding| {
            binding.word == word && binding.keys.short() == key && binding.places.contains(&Place::Choice)
        });
        assert!(known, "{shown}");
    }
}
