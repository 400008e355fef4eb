//! What keys do.

use proofwalk::library::{Datum, Id};
use proofwalk::source::{Safe, safe};
use proofwalk::tui::keys::Press;
use proofwalk::tui::{Dialog, Effect, Home, HomeChoice, Left, Message, Model, Said, Scene, update};
use proofwalk::walk::{Ask, Command, NotDone, Question, Refusal, ShownOption, Standing};

use crate::scene;

struct Bench {
    model: Model,
    ask: Ask,
    standing: Standing,
}

impl Bench {
    fn new(ask: Ask) -> Self {
        Self {
            model: Model::default(),
            ask,
            standing: scene::standing(),
        }
    }

    fn send(&mut self, message: Message) -> Option<Effect> {
        let scene = Scene::Call {
            ask: &self.ask,
            standing: &self.standing,
            known: &[],
        };
        update(&mut self.model, scene, message)
    }

    fn press(&mut self, press: Press) -> Option<Effect> {
        self.send(Message::Press(press))
    }

    fn write(&mut self, text: &str) {
        for character in text.chars() {
            assert_eq!(self.press(Press::Char(character)), None);
        }
    }
}

fn does(command: Command) -> Option<Effect> {
    Some(Effect::CarryOut(command))
}

#[test]
fn a_reading_is_typed_and_answered_with_enter() {
    let mut bench = Bench::new(scene::number());
    assert_eq!(bench.press(Press::Enter), None);
    assert!(matches!(bench.model.said, Some(Said::Hint(_))));
    bench.write("3.56");
    bench.press(Press::Backspace);
    assert_eq!(bench.press(Press::Enter), does(Command::Type("3.5".into())));
}

#[test]
fn what_was_typed_stays_until_it_is_saved() {
    let mut bench = Bench::new(scene::number());
    bench.write("3.5");
    bench.press(Press::Enter);
    let full = NotDone::NotSaved {
        message: "the disk is full".into(),
        help: "make room".into(),
    };
    bench.send(Message::NotDone(full.clone()));
    assert_eq!(bench.model.said, Some(Said::Not(full)));
    assert_eq!(bench.press(Press::Enter), does(Command::Type("3.5".into())));
    bench.send(Message::CarriedOut);
    assert_eq!(bench.model.input.value(), "");
}

#[test]
fn nothing_is_chosen_before_somebody_chooses() {
    let mut bench = Bench::new(scene::choice());
    assert_eq!(bench.press(Press::Enter), None);
    bench.press(Press::Char('9'));
    assert_eq!(bench.press(Press::Enter), None);
    bench.press(Press::Char('2'));
    assert_eq!(bench.press(Press::Enter), does(Command::Choose(1)));
    bench.press(Press::Down);
    bench.press(Press::Down);
    assert_eq!(bench.press(Press::Enter), does(Command::Choose(2)));
}

#[test]
fn what_a_proof_lacks_is_taken_by_number() {
    let mut bench = Bench::new(scene::unproven());
    bench.press(Press::Char('2'));
    assert_eq!(
        bench.press(Press::Enter),
        does(Command::Take(Datum::Reading(Id::new(8))))
    );
}

#[test]
fn to_stop_takes_words_and_a_yes() {
    let mut bench = Bench::new(scene::number());
    bench.write("3.5");
    bench.press(Press::Ctrl('e'));
    assert_eq!(bench.press(Press::Enter), None);
    assert!(
        matches!(bench.model.dialog, Some(Dialog::Writing(..))),
        "words are needed"
    );
    bench.write("no access?");
    assert_eq!(bench.press(Press::Enter), None);
    assert_eq!(bench.press(Press::Enter), None, "Enter is no yes");
    assert_eq!(
        bench.press(Press::Char('y')),
        does(Command::Stop("no access?".into()))
    );
    bench.send(Message::NotDone(NotDone::Refused(Refusal::new("no", "wait"))));
    assert!(matches!(&bench.model.dialog, Some(Dialog::Writing(_, input)) if input.value() == "no access?"));
    bench.press(Press::Esc);
    assert!(bench.model.dialog.is_none());
    assert_eq!(bench.model.input.value(), "3.5", "the reading is still there");
}

#[test]
fn to_insist_and_to_leave_open_take_words_and_a_yes() {
    let mut bench = Bench::new(scene::unproven());
    bench.press(Press::Ctrl('o'));
    bench.write("seen it");
    bench.press(Press::Enter);
    assert_eq!(
        bench.press(Press::Char('y')),
        does(Command::Insist("seen it".into()))
    );
    let mut bench = Bench::new(scene::put_back());
    bench.press(Press::Ctrl('l'));
    bench.write("part on order");
    bench.press(Press::Enter);
    assert_eq!(
        bench.press(Press::Char('y')),
        does(Command::LeaveOpen(Id::new(0), "part on order".into()))
    );
}

#[test]
fn a_note_leaves_the_reading_alone() {
    let mut bench = Bench::new(scene::number());
    bench.write("3.");
    bench.press(Press::Ctrl('n'));
    bench.write("tap stiff");
    assert_eq!(bench.press(Press::Enter), does(Command::Note("tap stiff".into())));
    bench.send(Message::CarriedOut);
    assert!(bench.model.dialog.is_none());
    assert_eq!(bench.model.input.value(), "3.");
}

#[test]
fn back_names_the_answer_and_asks_first() {
    let mut bench = Bench::new(scene::choice());
    bench.press(Press::Ctrl('t'));
    bench.press(Press::Up);
    bench.press(Press::Enter);
    assert_eq!(bench.press(Press::Char('y')), does(Command::Back(1)));
}

#[test]
fn a_reading_is_taken_again_from_the_answers() {
    let mut bench = Bench::new(scene::choice());
    bench.press(Press::Ctrl('t'));
    assert_eq!(
        bench.press(Press::Char('r')),
        does(Command::Retake(Datum::Reading(Id::new(2))))
    );
    bench.standing.trail[2].datum = None;
    assert_eq!(bench.press(Press::Char('r')), None);
}

#[test]
fn danger_is_one_key_away_even_while_writing() {
    let mut bench = Bench::new(scene::number());
    bench.press(Press::Ctrl('n'));
    bench.press(Press::Ctrl('d'));
    bench.press(Press::Char('1'));
    assert_eq!(bench.press(Press::Enter), does(Command::Danger(0)));
}

#[test]
fn leaving_asks_once_and_keeps_the_call_open() {
    let mut bench = Bench::new(scene::number());
    assert_eq!(bench.press(Press::Ctrl('c')), None);
    assert_eq!(bench.press(Press::Ctrl('c')), Some(Effect::Leave(Left::Quit)));
    bench.press(Press::Esc);
    bench.press(Press::Ctrl('q'));
    assert_eq!(bench.press(Press::Enter), Some(Effect::Leave(Left::Quit)));
}

#[test]
fn help_comes_back_to_where_it_was_opened() {
    let mut bench = Bench::new(scene::number());
    bench.press(Press::Ctrl('t'));
    bench.press(Press::F(1));
    bench.press(Press::Esc);
    assert!(matches!(bench.model.dialog, Some(Dialog::Trail(Some(2)))));
}

#[test]
fn pasted_lines_become_one_line_and_no_answer() {
    let mut bench = Bench::new(scene::number());
    assert_eq!(bench.send(Message::Paste("3.5\r\n4\n\u{1b}[31m5\n".into())), None);
    assert_eq!(bench.model.input.value(), "3.5 4 ^[[31m5");
    assert!(matches!(bench.model.said, Some(Said::Hint(_))));
}

#[test]
fn a_paste_of_megabytes_is_cut() {
    let mut bench = Bench::new(scene::number());
    bench.send(Message::Paste("7".repeat(10_000_000)));
    assert_eq!(bench.model.input.value().len(), 64);
    bench.send(Message::Paste("8".into()));
    assert_eq!(bench.model.input.value().len(), 64);
}

#[test]
fn nothing_is_pasted_where_nothing_is_typed() {
    let mut bench = Bench::new(scene::choice());
    assert_eq!(bench.send(Message::Paste("1\n".into())), None);
    assert_eq!(bench.model.chosen, None);
}

#[test]
fn the_first_screen_numbers_complaints_and_calls_in_one_list() {
    let home = scene::home();
    let choose = |presses: &[Press]| {
        let mut model = Model::default();
        let scene = Scene::Home(&home);
        presses
            .iter()
            .filter_map(|press| update(&mut model, scene, Message::Press(*press)))
            .last()
    };
    let chosen = |choice| Some(Effect::Choose(choice));
    assert_eq!(
        choose(&[Press::Char('2'), Press::Enter]),
        chosen(HomeChoice::Walk(1))
    );
    assert_eq!(
        choose(&[Press::Char('5'), Press::Enter]),
        chosen(HomeChoice::Resume(0))
    );
    assert_eq!(
        choose(&[Press::Ctrl('d'), Press::Down, Press::Enter]),
        chosen(HomeChoice::Danger(0))
    );
    assert_eq!(choose(&[Press::Ctrl('q')]), chosen(HomeChoice::Quit));
    assert_eq!(choose(&[Press::Enter]), None);
    assert_eq!(Home::default().choice(0), None);
}

fn long_list() -> Ask {
    let option = |(value, text): (usize, &str)| ShownOption {
        value,
        text: safe(text),
        known_by: Safe::default(),
        means: None,
        finding: None,
    };
    let words = [
        "Gas", "Air", "Draft", "Flame", "Heat", "Water", "Room", "Vent", "Call", "Line", "Limit", "Plate",
    ];
    Ask {
        by_words: [(12, "Flame current (3 min)"), (13, "Draft at the switch (2 min)")]
            .map(option)
            .to_vec(),
        ..scene::ask(Question::Choice {
            datum: None,
            prompt: safe("What next?"),
            options: words.into_iter().enumerate().map(option).collect(),
        })
    }
}

#[test]
fn a_long_list_takes_numbers_of_two_digits() {
    let mut bench = Bench::new(long_list());
    bench.write("1");
    assert_eq!(bench.model.chosen, Some(0));
    bench.write("2");
    assert_eq!(bench.press(Press::Enter), does(Command::Choose(11)));
    bench.write("9");
    assert_eq!(bench.model.chosen, None, "there is no option 129");
    assert_eq!(bench.press(Press::Enter), None);
    bench.press(Press::Esc);
    assert_eq!(bench.model.input.value(), "");
}

#[test]
fn words_find_what_a_long_list_holds_and_what_it_does_not_show() {
    let mut bench = Bench::new(long_list());
    bench.write("flame");
    assert_eq!(
        bench.model.chosen, None,
        "two are called so: nothing is chosen for anybody"
    );
    assert_eq!(bench.press(Press::Enter), None);
    let hinted =
        |bench: &Bench, words| matches!(bench.model.said, Some(Said::Hint(hint)) if hint.contains(words));
    assert!(hinted(&bench, "Down, then Enter"));
    bench.press(Press::Down);
    bench.press(Press::Down);
    assert_eq!(bench.press(Press::Enter), does(Command::Choose(12)));
    bench.press(Press::Esc);
    bench.write("DRAFT sw");
    assert_eq!(
        bench.press(Press::Enter),
        does(Command::Choose(13)),
        "the only one"
    );
    bench.write("xyz");
    assert_eq!(bench.press(Press::Enter), None);
    assert!(hinted(&bench, "Nothing is called so"));
}
