//! Every screen, at three sizes.

use proofwalk::tui::{Dialog, Look, Message, Model, Purpose, Scene, keys, update};
use proofwalk::walk::{Ask, Command, NotDone, Refusal, Standing};

use crate::scene;

const SIZES: [(u16, u16); 3] = [(40, 20), (80, 24), (120, 40)];

fn compare(name: &str, model: &Model, scene: Scene<'_>, looks: &[Look]) {
    for look in looks {
        for (width, height) in SIZES {
            let drawn = scene::drawn((width, height), model, scene, *look);
            let letters = if look.unicode { "" } else { "_ascii" };
            insta::assert_snapshot!(format!("{name}_{width}x{height}{letters}"), drawn);
        }
    }
}

fn question(name: &str, model: &Model, ask: &Ask, standing: &Standing) {
    compare(
        name,
        model,
        Scene::Call {
            ask,
            standing,
            known: &[],
        },
        &[scene::RICH],
    );
}

fn typed(text: &str) -> Model {
    Model {
        input: text.into(),
        ..Model::default()
    }
}

fn dialog(dialog: Dialog) -> Model {
    Model {
        dialog: Some(dialog),
        ..Model::default()
    }
}

#[test]
fn number() {
    let (ask, standing) = (scene::number(), scene::standing());
    let both = [scene::RICH, scene::PLAIN];
    compare(
        "number",
        &Model::default(),
        Scene::Call {
            ask: &ask,
            standing: &standing,
            known: &[],
        },
        &both,
    );
    compare(
        "number_typed",
        &typed("3.5"),
        Scene::Call {
            ask: &ask,
            standing: &standing,
            known: &[],
        },
        &both,
    );
    question("number_misread", &typed("3.5 V"), &ask, &standing);
    question("number_implausible", &typed("35"), &ask, &standing);
    question("number_again", &typed("800 Pa"), &scene::again(), &standing);
}

#[test]
fn choice() {
    let chosen = Model {
        chosen: Some(2),
        ..Model::default()
    };
    question("choice", &chosen, &scene::choice(), &scene::standing());
}

#[test]
fn what_came_out_of_the_last_answers() {
    let standing = scene::came_out();
    question("came_out", &Model::default(), &scene::choice(), &standing);
    question(
        "came_out_trail",
        &dialog(Dialog::Trail(None)),
        &scene::choice(),
        &standing,
    );
}

#[test]
fn act() {
    question("act", &Model::default(), &scene::act(), &scene::standing());
}

#[test]
fn unproven() {
    let chosen = Model {
        chosen: Some(1),
        ..Model::default()
    };
    question("unproven", &chosen, &scene::unproven(), &scene::standing());
}

#[test]
fn a_line_of_a_proof_that_any_one_of_several_would_do_for() {
    let ask = scene::any_of();
    question("unproven_any", &Model::default(), &ask, &scene::standing());
}

#[test]
fn put_back_and_finished() {
    question(
        "put_back",
        &Model::default(),
        &scene::put_back(),
        &scene::standing(),
    );
    question("finished", &Model::default(), &scene::finished(), &scene::ended());
    let shut_down = scene::shut_down();
    question(
        "put_back_shut_down",
        &Model::default(),
        &scene::put_back(),
        &shut_down,
    );
    question(
        "finished_shut_down",
        &Model::default(),
        &scene::finished(),
        &shut_down,
    );
}

#[test]
fn refused_and_not_saved() {
    let (ask, standing) = (scene::number(), scene::standing());
    let scene = Scene::Call {
        ask: &ask,
        standing: &standing,
        known: &[],
    };
    let mut model = typed("3.5");
    let refusal = Refusal::new("`3,5` has a comma", "write the decimals behind a point: `3.5`");
    update(&mut model, scene, Message::NotDone(NotDone::Refused(refusal)));
    compare("refused", &model, scene, &[scene::RICH]);
    let full = NotDone::NotSaved {
        message: "no space is left on the disk".into(),
        help: "make room, then press Enter again".into(),
    };
    update(&mut model, scene, Message::NotDone(full));
    compare("not_saved", &model, scene, &[scene::RICH]);
}

#[test]
fn dialogs() {
    let (ask, standing) = (scene::number(), scene::standing());
    let writing = Dialog::Writing(
        Purpose::Stop,
        "The customer wants the furnace off until the spring".into(),
    );
    let sure = Dialog::Sure(Command::Back(1), Box::new(Dialog::Trail(Some(1))));
    question("standing", &dialog(Dialog::Standing), &ask, &standing);
    question("trail", &dialog(Dialog::Trail(Some(1))), &ask, &standing);
    question("danger", &dialog(Dialog::Danger(Some(0))), &ask, &standing);
    question("writing", &dialog(writing), &ask, &standing);
    question("sure", &dialog(sure), &ask, &standing);
    question("leaving", &dialog(Dialog::Leaving), &ask, &standing);
    question(
        "help",
        &dialog(Dialog::Help(keys::Place::Number, None)),
        &ask,
        &standing,
    );
}

#[test]
fn home() {
    let chosen = Model {
        chosen: Some(1),
        ..Model::default()
    };
    compare(
        "home",
        &chosen,
        Scene::Home(&scene::home()),
        &[scene::RICH, scene::PLAIN],
    );
}
