//! Hostile text, and terminals of every size.

use proofwalk::source::{Safe, safe};
use proofwalk::tui::keys::Place;
use proofwalk::tui::{Dialog, Model, Purpose, Scene, view};
use proofwalk::walk::{Ask, Command, NotLookedAt, Question, Standing, Stated};
use ratatui::Terminal;
use ratatui::backend::TestBackend;

use crate::scene;

const HOSTILE: &str = "a\u{1b}[2J\u{9b}31m\u{202e}x\u{200b}\u{e0041}\u{7}\u{8}\r\n日本語 👩‍👩‍👧 e\u{301}\u{301}\u{301}\u{301}\u{301}\u{301}";

fn hostile() -> Safe {
    safe(HOSTILE)
}

fn models() -> Vec<Model> {
    let typed = Model {
        input: HOSTILE.into(),
        chosen: Some(0),
        scroll: 3,
        ..Model::default()
    };
    let dialogs = [
        Dialog::Standing,
        Dialog::Trail(Some(1)),
        Dialog::Danger(Some(2)),
        Dialog::Writing(Purpose::Note, HOSTILE.into()),
        Dialog::Sure(Command::Stop(HOSTILE.into()), Box::new(Dialog::Standing)),
        Dialog::Sure(Command::Back(0), Box::new(Dialog::Standing)),
        Dialog::Leaving,
        Dialog::Help(Place::Writing, None),
    ];
    let dialogs = dialogs.map(|dialog| Model {
        dialog: Some(dialog),
        ..Model::default()
    });
    [Model::default(), typed].into_iter().chain(dialogs).collect()
}

fn asks() -> Vec<Ask> {
    let mut asks = vec![
        scene::number(),
        scene::again(),
        scene::choice(),
        scene::act(),
        scene::unproven(),
        scene::put_back(),
        scene::finished(),
        scene::ask(Question::Closed),
    ];
    for ask in &mut asks {
        ask.tree = hostile();
        ask.title = Some(hostile());
        ask.cautions.push(hostile());
        ask.why = vec![hostile(); 5];
        ask.how = vec![hostile()];
    }
    asks
}

fn standing() -> Standing {
    let mut standing = scene::standing();
    standing.possible.push(hostile());
    standing.dangers.push(hostile());
    standing.trail[1].title = hostile();
    standing.trail[1].ruled_out.push(hostile());
    standing.open.push(hostile());
    standing.not_looked_at.push(NotLookedAt {
        tree: hostile(),
        because: hostile(),
        checks: vec![hostile(); 2],
    });
    standing.ended = Some(hostile());
    standing.stated = Some(Stated {
        shut_down: true,
        remedy: hostile(),
        text: vec![hostile(); 3],
        cautions: vec![hostile()],
        because: vec![hostile()],
        advice: vec![hostile()],
        then: Some(hostile()),
    });
    standing
}

/// Draws every screen at a size, and hands each cell's text on.
fn every_cell(width: u16, height: u16, mut check: impl FnMut(&str)) {
    let standing = standing();
    let mut home = scene::home();
    home.title = hostile();
    home.complaints[0].label = hostile();
    let asks = asks();
    let calls = asks.iter().map(|ask| Scene::Call {
        ask,
        standing: &standing,
        known: &[],
    });
    for scene in calls.chain([Scene::Home(&home)]) {
        for model in models() {
            for look in [scene::RICH, scene::PLAIN] {
                let mut terminal = Terminal::new(TestBackend::new(width, height)).unwrap();
                terminal
                    .draw(|frame| {
                        view(frame, &model, scene, look);
                    })
                    .unwrap();
                let buffer = terminal.backend().buffer();
                buffer.content().iter().for_each(|cell| check(cell.symbol()));
                if look == scene::PLAIN {
                    assert!(buffer.content().iter().all(|cell| cell.symbol().is_ascii()));
                }
            }
        }
    }
}

#[test]
fn nothing_that_acts_or_hides_reaches_the_screen() {
    for width in [41, 77] {
        every_cell(width, 30, |symbol| {
            let bad = symbol
                .chars()
                .find(|character| proofwalk::source::is_unsafe(*character));
            assert_eq!(bad, None, "{symbol:?}");
        });
    }
}

#[test]
fn no_size_panics() {
    for (width, height) in [
        (1, 1),
        (10, 3),
        (20, 6),
        (21, 7),
        (30, 9),
        (46, 10),
        (76, 6),
        (300, 100),
    ] {
        every_cell(width, height, |_| ());
    }
}

#[test]
fn a_terminal_too_small_is_told_so() {
    let (ask, standing) = (scene::number(), scene::standing());
    let scene = Scene::Call {
        ask: &ask,
        standing: &standing,
        known: &[],
    };
    let drawn = scene::drawn((19, 6), &Model::default(), scene, scene::RICH);
    assert!(drawn.starts_with("too small"), "{drawn}");
}
