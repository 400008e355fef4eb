//! A class's page, of calls that are made up.

use proofwalk::bench::practice::{Came, Level, Mark, Mode, Setup};
use proofwalk::report::findings::Look;
use proofwalk::report::practice::{Class, End, Practised, json, text};

fn of(apprentice: &str, end: End) -> Practised {
    Practised {
        session: format!("session of {apprentice}"),
        apprentice: Some(apprentice.to_owned()),
        setup: Setup {
            seed: 3,
            level: Level::Common,
            mode: Mode::Free,
        },
        drawn_with: "this".to_owned(),
        end,
    }
}

fn proven() -> End {
    End::Came(Mark {
        came: Came::Proven,
        minutes: 40.0,
        tree_minutes: 79.0,
        misplaced: 0,
        condemned: "none".to_owned(),
        overlooked: 0,
        left_open: 0,
        named_before: 0,
        truth: "The filter is loaded".to_owned(),
    })
}

#[test]
fn what_was_wrong_is_told_to_nobody_who_is_still_at_it() {
    let class = |practised| Class {
        practised,
        ..Class::default()
    };
    let page = text(
        &class(vec![of("t-01", proven()), of("t-02", End::NotFinished)]),
        Look::default(),
    );
    assert!(page.contains("told once all have finished"), "{page}");
    assert!(!page.contains("The filter is loaded"), "{page}");
    // Who never finishes does not keep it from the others for good.
    let told = Class {
        tells: true,
        ..class(vec![of("t-01", proven()), of("t-02", End::NotFinished)])
    };
    let page = text(&told, Look::default());
    assert!(page.contains("what was wrong: The filter is loaded"), "{page}");
    assert!(json(&told).contains(r#""what_was_wrong": "The filter is loaded""#));
    let page = text(&class(vec![of("t-02", End::NotFinished)]), Look::default());
    assert!(page.starts_with("1 practice session, not finished\n"), "{page}");
    let done = class(vec![of("t-01", proven())]);
    assert!(
        json(&done).contains(r#""what_was_wrong": "The filter is loaded""#),
        "{}",
        json(&done)
    );
    let page = text(&done, Look::default());
    assert!(page.contains("what was wrong: The filter is loaded"), "{page}");
}

#[test]
fn what_an_older_version_closed_is_not_called_unfinished() {
    let class = Class {
        practised: vec![of("t-01", proven()), of("t-02", End::NotKnown)],
        calls: 2,
        foreign: 1,
        ..Class::default()
    };
    let page = text(&class, Look::default());
    for line in [
        "2 practice sessions, 1 of them not known",
        "Left out (practice of another version of proofwalk, whose furnaces are others):",
        "Left out (calls at a house, no practice): 2 sessions",
        "t-02              not known",
        "1 first try not known, and not counted",
        "closed by an older version of proofwalk",
    ] {
        assert!(page.contains(line), "{line}\n{page}");
    }
    assert!(!page.contains("not finished"), "{page}");
    assert!(page.lines().all(|line| line.chars().count() <= 80), "{page}");
    let all: serde_json::Value = serde_json::from_str(&json(&class)).unwrap();
    assert_eq!(
        (&all[1]["closed"], &all[1]["came"]),
        (&true.into(), &serde_json::Value::Null)
    );
}

/// The furnace is the same in both modes, so whoever was led through it knows it.
#[test]
fn a_furnace_that_was_walked_guided_is_known_when_it_is_free() {
    let guided = Practised {
        session: "1".to_owned(),
        setup: Setup {
            mode: Mode::Guided,
            ..of("t-01", proven()).setup
        },
        ..of("t-01", proven())
    };
    let free = Practised {
        session: "2".to_owned(),
        ..of("t-01", proven())
    };
    let mut class = Class {
        practised: vec![free, guided],
        ..Class::default()
    };
    let page = text(&class, Look::default());
    assert!(page.contains("t-01              proven, try 2"), "{page}");
    assert!(page.contains("t-01              1 of 1"), "{page}");
    // Somebody who is still led through it must not read here what it is.
    class.practised.push(Practised {
        end: End::NotFinished,
        ..class.practised[1].clone()
    });
    let page = text(&class, Look::default());
    assert!(!page.contains("The filter is loaded"), "{page}");
}

/// A page that is read on a telephone: nothing of it is wider, and every number says what it is.
#[test]
fn on_forty_columns_each_number_is_named() {
    let class = Class {
        practised: vec![of("t-01", proven()), of("t-02", End::NotFinished)],
        ..Class::default()
    };
    let look = Look {
        columns: Some(40),
        ..Look::default()
    };
    let page = text(&class, look);
    assert!(page.lines().all(|line| line.chars().count() <= 40), "{page}");
    assert!(page.contains("found: proven; min: 40\n"), "{page}");
}
