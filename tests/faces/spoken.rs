//! The line face, as a reader sees it.

use std::cell::Cell;

use proofwalk::library::{Datum, Id};
use proofwalk::plain::{self, Options};
use proofwalk::source::safe;
use proofwalk::tui::{HomeChoice, Left};
use proofwalk::walk::{Ask, Command, NotDone, Question, Refusal};

use crate::scene::{self, Scripted};

const PIPE: Options<'static> = Options {
    width: 78,
    unicode: true,
    echo: true,
    early: None,
};

fn talk(call: &mut Scripted, input: &str, options: Options<'_>) -> (String, Left) {
    let mut output = Vec::new();
    let left = plain::call(input.as_bytes(), &mut output, call, options).unwrap();
    (String::from_utf8(output).unwrap(), left)
}

fn closed() -> Ask {
    scene::ask(Question::Closed)
}

#[test]
fn a_call_reads_like_a_dialogue() {
    let mut call = Scripted::new([
        scene::number(),
        scene::choice(),
        scene::act(),
        scene::unproven(),
        scene::put_back(),
        scene::finished(),
        closed(),
    ]);
    let input = "3.5\n3\ndone\n1\ndone\nclose\n";
    let (said, left) = talk(&mut call, input, PIPE);
    assert_eq!(left, Left::Closed);
    insta::assert_snapshot!("dialogue", said);
    assert_eq!(
        call.asked,
        [
            Command::Type("3.5".into()),
            Command::Choose(2),
            Command::Done,
            Command::Take(Datum::Reading(Id::new(7))),
            Command::PutBack(Id::new(0)),
            Command::Close,
        ]
    );
}

#[test]
fn what_a_verdict_asks_for_is_said_before_the_put_backs_and_at_the_end() {
    let mut call = Scripted::new([scene::put_back(), scene::finished(), closed()]);
    call.standing = scene::shut_down();
    let (said, _) = talk(&mut call, "done\nclose\n", PIPE);
    insta::assert_snapshot!("shut_down", said);
    let at: Vec<_> = said
        .match_indices("SHUT DOWN: It must not run")
        .map(|(at, _)| at)
        .collect();
    assert_eq!(at.len(), 2, "{said}");
    assert!(at[0] < said.find("Put back:").unwrap(), "{said}");
}

#[test]
fn how_many_questions_may_come_is_said_where_they_are_few() {
    for (at_worst, words) in [
        (1, Some("At most 1 question more\n")),
        (20, Some("At most 20 questions more\n")),
        (21, None),
    ] {
        let mut call = Scripted::new([scene::choice()]);
        call.standing.at_worst = at_worst;
        let (said, _) = talk(&mut call, "overview\n", PIPE);
        assert_eq!(said.contains("At most"), words.is_some(), "{said}");
        assert!(said.contains(words.unwrap_or_default()), "{said}");
    }
}

#[test]
fn the_words_beside_the_answers() {
    let mut call = Scripted::new([scene::choice()]);
    let input = "help\noverview\nanswers\ndanger\nnote the tap was stiff\nnote\nback 9\nblue\n";
    let (said, left) = talk(&mut call, input, PIPE);
    assert_eq!(left, Left::Quit);
    insta::assert_snapshot!("words", said);
    assert_eq!(call.asked, [Command::Note("the tap was stiff".into())]);
}

#[track_caller]
fn asks_for(ask: Ask, input: &str, commands: &[Command]) {
    let mut call = Scripted::new([ask]);
    talk(&mut call, input, PIPE);
    assert_eq!(call.asked, commands, "{input}");
}

#[test]
fn what_ends_something_needs_a_yes() {
    asks_for(scene::number(), "stop no access\nno\n", &[]);
    asks_for(
        scene::number(),
        "stop no access\nyes\n",
        &[Command::Stop("no access".into())],
    );
    asks_for(
        scene::unproven(),
        "insist seen it\nyes\n",
        &[Command::Insist("seen it".into())],
    );
    asks_for(
        scene::put_back(),
        "open on order\nyes\n",
        &[Command::LeaveOpen(Id::new(0), "on order".into())],
    );
    asks_for(scene::number(), "back 2\nyes\n", &[Command::Back(1)]);
    asks_for(scene::number(), "stop\nyes\n", &[Command::Type("yes".into())]);
}

#[test]
fn other_words_are_carried_out_at_once() {
    asks_for(
        scene::number(),
        "retake 3\n",
        &[Command::Retake(Datum::Reading(Id::new(2)))],
    );
    asks_for(
        scene::number(),
        "unable no port\n",
        &[Command::Unable("no port".into())],
    );
    asks_for(scene::choice(), "unsure\n", &[Command::Unsure]);
    asks_for(
        scene::choice(),
        "only some burners light\n",
        &[Command::Choose(1)],
    );
    asks_for(scene::choice(), "danger 2\n", &[Command::Danger(1)]);
    asks_for(scene::choice(), "danger 7\n", &[]);
    // The number that answers which danger it is answers no other question.
    asks_for(scene::choice(), "danger\n2\n", &[Command::Danger(1)]);
    asks_for(scene::number(), "danger\ndanger 2\n", &[Command::Danger(1)]);
    asks_for(scene::number(), "danger\n24\n", &[]);
    asks_for(
        scene::number(),
        "danger\nunable no port\n",
        &[Command::Unable("no port".into())],
    );
    asks_for(scene::finished(), "3.5\nleave\nclose\n", &[]);
}

#[test]
fn a_refusal_and_a_full_disk_say_what_to_do() {
    let mut call = Scripted::new([scene::number(), closed()]);
    call.refusals = [
        Some(NotDone::Refused(Refusal::new("`3,5` has a comma", "write `3.5`"))),
        Some(NotDone::NotSaved {
            message: "the disk is full".into(),
            help: "make room".into(),
        }),
    ]
    .into();
    let (said, left) = talk(&mut call, "3,5\n3.5\n3.5\n", PIPE);
    assert_eq!(left, Left::Closed);
    assert!(
        said.contains("NOT TAKEN: `3,5` has a comma; write `3.5`\n"),
        "{said}"
    );
    assert!(
        said.contains("NOT SAVED: the disk is full; make room\n"),
        "{said}"
    );
}

#[test]
fn three_pasted_lines_are_one_answer() {
    let waiting = Cell::new(2);
    let early = || {
        let left = waiting.get();
        waiting.set(left - 1);
        left > 0
    };
    let mut call = Scripted::new([scene::number(), scene::number(), scene::number()]);
    let options = Options {
        early: Some(&early),
        ..Options::default()
    };
    let (said, _) = talk(&mut call, "1\n1\n1\n", options);
    assert_eq!(call.asked, [Command::Type("1".into())]);
    assert!(
        said.contains("2 lines came before the question below was shown."),
        "{said}"
    );
}

#[test]
fn from_a_pipe_every_line_is_an_answer() {
    let mut call = Scripted::new([scene::number(), scene::number(), scene::number()]);
    talk(&mut call, "1\n2\n", PIPE);
    assert_eq!(call.asked, [Command::Type("1".into()), Command::Type("2".into())]);
}

#[test]
fn no_control_character_is_written_at_any_width() {
    let mut ask = scene::number();
    ask.why.push(safe("\u{1b}]0;title\u{7} \u{202e}reversed µA"));
    for (width, unicode) in [(1, true), (20, false), (40, true), (200, false)] {
        let mut call = Scripted::new([ask.clone()]);
        let options = Options {
            width,
            unicode,
            ..PIPE
        };
        let (said, _) = talk(&mut call, "note \u{1b}[2J\n\u{9b}5\n", options);
        let bad = said
            .chars()
            .find(|c| *c != '\n' && proofwalk::source::is_unsafe(*c));
        assert_eq!(bad, None);
        assert!(unicode || said.is_ascii(), "{said}");
    }
}

#[test]
fn the_first_screen_offers_and_takes_a_number() {
    let home = scene::home();
    let choose = |input: &str| {
        let mut output = Vec::new();
        let choice = plain::home(input.as_bytes(), &mut output, &home, PIPE).unwrap();
        (choice, String::from_utf8(output).unwrap())
    };
    let (choice, said) = choose("hello\n5\n");
    assert_eq!(choice, HomeChoice::Resume(0));
    insta::assert_snapshot!("home", said);
    assert_eq!(choose("1\n").0, HomeChoice::Walk(0));
    assert_eq!(choose("danger\ndanger 2\n").0, HomeChoice::Danger(1));
    assert_eq!(choose("leave\n").0, HomeChoice::Quit);
    assert_eq!(choose("").0, HomeChoice::Quit);
}
