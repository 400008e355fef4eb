//! What a debrief says: nothing that is not so at this furnace, and nothing of what was left out.

use proofwalk::bench::practice::{
    Backing, Came, Debrief, LeftRunning, Level, Mark, Mode, Proof, Setup, TreeCame,
};
use proofwalk::bench::trials::Outcome;
use proofwalk::walk::{Command, Question};

use super::apprentices::{ALL_THE_SAME, SOUND, TRANSFORMER_DEAD, at, names, page, practise};
use crate::told::with;

fn lacking(debrief: &Debrief) -> &Backing {
    match &debrief.proof {
        Proof::Lacking(backing) => backing,
        other => panic!("{other:?}"),
    }
}

#[test]
fn what_is_handed_on_is_safe_and_no_diagnosis_and_the_fault_is_told() {
    let library = with(None);
    // The tree hands this one on, too: its verdict is reached over what the furnace does not show.
    let relay_lets_go = Setup {
        seed: 63,
        level: Level::Hard,
        mode: Mode::Free,
    };
    let handed_on = practise(&library, relay_lets_go, names("What let go first")).debrief;
    assert_eq!(
        (handed_on.outcome, handed_on.came()),
        (Outcome::Referred, Came::HandedOnSafe)
    );
    let told = page(&handed_on);
    let short = told.lines().last().unwrap();
    assert!(
        short.starts_with(
            "Handed on: safe, but not a diagnosis; what was wrong: A relay of the board lets the valve go"
        ),
        "{told}"
    );
    assert_eq!(handed_on.tree_came, TreeCame::HandedOn);
    assert!(!told.contains("A proven way"), "{told}");
    assert!(!told.contains("no tree comes to it"), "{told}");
    let lacks = &lacking(&handed_on).lacks;
    assert!(
        lacks.iter().any(|lack| lack.starts_with("Flame current")),
        "{lacks:?}"
    );
}

#[test]
fn what_is_handed_on_for_something_else_is_not_told_as_safe() {
    let library = with(None);
    // A blocked trap, and a capacitor that nobody doubts but the apprentice.
    let trap = Setup {
        seed: 3,
        ..TRANSFORMER_DEAD
    };
    let handed_on = practise(&library, trap, names("Blower's run capacitor in doubt")).debrief;
    assert_eq!(
        (handed_on.outcome, handed_on.came()),
        (Outcome::Referred, Came::HandedOn)
    );
}

#[test]
fn the_words_of_the_list_stand_beside_what_was_wrong() {
    let library = with(None);
    let debrief = practise(&library, TRANSFORMER_DEAD, names("Thermostat says it calls")).debrief;
    let truth = &debrief.sections()[0].lines;
    let said: Vec<&str> = truth.iter().map(|line| line.as_str()).collect();
    assert_eq!(
        said[1], "In the list of faults: Transformer dead or low",
        "{said:?}"
    );
    // Of two faults each has its own.
    let two = Setup {
        seed: 5,
        level: Level::Hard,
        mode: Mode::Free,
    };
    let debrief = practise(&library, two, names("Thermostat says it calls")).debrief;
    assert_eq!(debrief.truth.len(), 2, "{:?}", debrief.truth);
    assert!(page(&debrief).contains("The line sags under load\nIn the list of faults: Line voltage too low"));
    // Wires that touch are named by the tree for what they do to the transformer; a list has both names.
    let wires = Setup { seed: 3, ..two };
    let debrief = practise(&library, wires, names("Transformer overloaded")).debrief;
    let told = page(&debrief);
    assert!(
        told.contains("In the list of faults: Transformer overloaded, or Gas-valve wire shorted"),
        "{told}"
    );
    let short = told.lines().last().unwrap();
    assert!(
        short.contains("left to the next call: The blower's motor is seized"),
        "{short}"
    );
}

#[test]
fn what_would_have_shown_it_can_be_had_at_this_furnace() {
    let library = with(None);
    for (seed, words) in [(6, "No fault found"), (377, "Vent or intake blocked")] {
        let setup = Setup { seed, ..SOUND };
        let debrief = practise(&library, setup, names(words)).debrief;
        let backing = lacking(&debrief);
        assert_eq!(debrief.outcome, Outcome::Right);
        assert_eq!(backing.otherwise, 0, "{seed}: {backing:?}");
        assert!(
            !backing.lacks.iter().any(|lack| lack.contains("one stage")),
            "{backing:?}"
        );
    }
}

#[test]
fn a_way_that_proves_nothing_is_not_headed_a_proven_way() {
    let library = with(None);
    // A blocked intake that a seasonal service clears as it goes, and then comes out as serviced.
    let intake = Setup { seed: 377, ..SOUND };
    let debrief = practise(&library, intake, names("Vent or intake blocked")).debrief;
    assert_eq!(debrief.tree_came, TreeCame::PutRight);
    let told = page(&debrief);
    assert!(
        told.contains("The tree's way") && !told.contains("A proven way"),
        "{told}"
    );
    assert!(told.contains("it proves no verdict"), "{told}");
}

#[test]
fn a_right_name_does_not_hide_what_was_left_nor_what_was_guessed_before() {
    let library = with(None);
    let mut guesses = ["Thermostat says it calls", "Gas valve leaks through"].into_iter();
    let mut guess = guesses.next();
    let mut last = names("Transformer dead");
    let debrief = practise(&library, TRANSFORMER_DEAD, |question, again| {
        let (Some(words), Question::Choice { options, prompt, .. }) = (guess, question) else {
            return last(question, again);
        };
        if prompt.as_str().starts_with("You stand") {
            return Command::Choose(1);
        }
        if let Some(back) = at(options, "Back to the list").filter(|_| at(options, ALL_THE_SAME).is_some()) {
            guess = guesses.next();
            return Command::Choose(back);
        }
        match at(options, &format!("Name it: {words}")) {
            Some(at) => Command::Choose(at),
            None => Command::Type(words.to_owned()),
        }
    })
    .debrief;
    assert_eq!(debrief.outcome, Outcome::Right);
    assert_eq!(debrief.named_before.len(), 2, "{:?}", debrief.named_before);
    assert_eq!(Mark::of(&debrief).named_before, 2);
    let told = page(&debrief);
    assert!(
        told.contains("Named before, and not proven: Thermostat"),
        "{told}"
    );
    let short = told.lines().last().unwrap();
    assert!(
        short.contains("but 5 steps of the gate left out")
            && short.contains("2 other faults were named before"),
        "{short}"
    );

    let left = Debrief {
        left_running: vec![LeftRunning {
            title: "The exchanger is cracked".to_owned(),
            off: false,
            by_the_tree: true,
        }],
        left_open: vec!["Doors on".to_owned(), "Hose on".to_owned()],
        ..debrief
    };
    let told = page(&left);
    let short = told.lines().last().unwrap();
    assert!(
        short.contains("but this was left running: The exchanger is cracked (the tree leaves it too)")
            && short.contains("but 2 things were left open"),
        "{short}"
    );
}

#[test]
fn whoever_finds_nothing_finds_the_words_for_it() {
    let library = with(None);
    for words in ["nothing is wrong", "sound"] {
        let mut last = names("No fault found");
        let mut looked = false;
        let debrief = practise(&library, SOUND, |question, again| match question {
            Question::Choice { prompt, options, .. } if prompt.as_str().starts_with("Which of these") => {
                let named = options
                    .iter()
                    .any(|option| option.text.as_str().contains("No fault found"));
                looked |= named;
                last(question, again)
            }
            Question::Choice { prompt, .. } if prompt.as_str().starts_with("What do you look") && !looked => {
                Command::Type(words.to_owned())
            }
            _ => last(question, again),
        })
        .debrief;
        assert!(looked, "{words}");
        assert_eq!(debrief.outcome, Outcome::Right);
    }
}

#[test]
fn once_all_that_lacked_is_taken_the_list_is_headed_as_proven() {
    let library = with(None);
    let mut last = names("Transformer dead");
    let mut heads: Vec<String> = Vec::new();
    let debrief = practise(&library, TRANSFORMER_DEAD, |question, again| match question {
        Question::Choice { prompt, options, .. } if prompt.as_str().contains("PROVEN") => {
            heads.push(prompt.as_str().to_owned());
            assert!(!options[0].text.as_str().starts_with(ALL_THE_SAME), "{prompt}");
            Command::Choose(0)
        }
        _ => last(question, again),
    })
    .debrief;
    assert_eq!(debrief.came(), Came::Proven);
    assert!(heads[0].starts_with("NOT PROVEN: Transformer dead"), "{heads:?}");
    assert!(
        heads.last().unwrap().starts_with("PROVEN by what was taken"),
        "{heads:?}"
    );
}

/// A furnace with a shorted coil. Its ohms prove the valve bad, whichever way they are out.
const COIL_SHORTED: Setup = Setup {
    seed: 173,
    level: Level::Any,
    mode: Mode::Free,
};

#[test]
fn a_bad_part_named_by_another_of_its_faults_is_told_as_that() {
    let library = with(None);
    let named = |words: &'static str| {
        let mut last = names(words);
        let mut left = 20;
        practise(&library, COIL_SHORTED, |question, again| match question {
            Question::Choice { prompt, .. } if prompt.as_str().contains("PROVEN") && left > 0 => {
                left -= 1;
                Command::Choose(0)
            }
            _ => last(question, again),
        })
        .debrief
    };
    let open = named("Gas valve's coil open");
    assert!(open.truth[0].contains("coil is shorted"), "{:?}", open.truth);
    assert_eq!((open.outcome, open.came()), (Outcome::Right, Came::OtherFault));
    assert_eq!(named("Gas valve's coil shorted").came(), Came::Proven);
}
