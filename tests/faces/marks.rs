//! How far a tree is trusted, which edition it is, and what was laid over the library: on both faces.

use proofwalk::plain::{self, Options};
use proofwalk::source::safe;
use proofwalk::tui::{Home, Model, Scene};
use proofwalk::walk::Ask;

use crate::scene::{self, Scripted};

const PIPE: Options<'static> = Options {
    width: 78,
    unicode: true,
    echo: true,
    early: None,
};

const OVERLAY: &str = "The north branch, edition 7; it replaces nothing";

fn draft() -> Ask {
    Ask {
        status: Some(safe("DRAFT")),
        edition: Some(safe("2026.3")),
        overlays: scene::all(&[OVERLAY]),
        through: Vec::new(),
        ..scene::act()
    }
}

fn home() -> Home {
    Home {
        overlays: scene::all(&[OVERLAY]),
        ..scene::home()
    }
}

fn spoken(ask: Ask) -> String {
    let mut output = Vec::new();
    plain::call(&b"leave\n"[..], &mut output, &mut Scripted::new([ask]), PIPE).unwrap();
    String::from_utf8(output).unwrap()
}

fn drawn(size: (u16, u16), scene: Scene<'_>) -> String {
    scene::drawn(size, &Model::default(), scene, scene::RICH)
}

#[test]
fn the_line_face_says_them_with_the_tree() {
    let said = spoken(draft());
    assert!(said.contains(" (DRAFT, edition 2026.3)\n"), "{said}");
    assert!(said.contains(&format!("Overlay: {OVERLAY}\n")), "{said}");
    let approved = Ask {
        status: None,
        edition: None,
        ..scene::act()
    };
    let said = spoken(approved);
    assert!(!said.contains("(DRAFT") && !said.contains("Overlay"), "{said}");
}

#[test]
fn the_screen_shows_a_draft_at_every_size_and_the_edition_where_there_is_room() {
    let (ask, standing) = (draft(), scene::standing());
    for (size, edition) in [((40, 20), false), ((80, 24), true), ((120, 40), true)] {
        let call = Scene::Call {
            ask: &ask,
            standing: &standing,
            known: &[],
        };
        let screen = drawn(size, call);
        let header = screen.lines().next().unwrap();
        assert!(header.contains("DRAFT"), "{screen}");
        assert_eq!(header.contains("2026.3"), edition, "{screen}");
        assert!(screen.contains("The north branch"), "{screen}");
    }
}

#[test]
fn the_first_screen_shows_the_overlays() {
    let home = home();
    assert!(drawn((80, 24), Scene::Home(&home)).contains(OVERLAY));
    let mut output = Vec::new();
    plain::home(&b"leave\n"[..], &mut output, &home, PIPE).unwrap();
    assert!(String::from_utf8(output).unwrap().contains(OVERLAY));
}
