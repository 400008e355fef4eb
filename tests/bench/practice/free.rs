//! Free practice: the apprentice chooses what is taken, and names the fault.

use std::collections::BTreeSet;

use proofwalk::bench::practice::{Backing, Came, Groups, Level, Mode, Proof, Setup};
use proofwalk::bench::trials::{Outcome, judge_verdict};
use proofwalk::walk::{Again, Command, Question};

use super::apprentices::{Practised, SOUND, TRANSFORMER_DEAD, names, page, practise, setups};
use crate::told::with;

#[test]
fn a_free_apprentice_who_takes_everything_is_told_nothing_by_the_tree() {
    let library = with(None);
    for setup in setups(Mode::Free).step_by(5) {
        let mut group = 0;
        let mut member = 0;
        let practised = practise(&library, setup, |question, _| match question {
            Question::Act { .. } => Command::Done,
            Question::PutBack { restore, .. } => Command::PutBack(*restore),
            Question::Finished => Command::Close,
            Question::Choice { options, prompt, .. } => {
                if prompt.as_str().starts_with("You stand") {
                    return Command::Choose(0);
                }
                if prompt.as_str().starts_with("What of this") {
                    member += 1;
                    if member + 1 >= options.len() {
                        (group, member) = (group + 1, 0);
                    }
                    return Command::Choose(member.saturating_sub(1));
                }
                if group + 1 >= options.len() {
                    return Command::Stop("all of it is taken".to_owned());
                }
                Command::Choose(group)
            }
            other => unreachable!("{other:?}"),
        });
        let Practised {
            debrief,
            state,
            truth,
            asked,
        } = practised;
        for (fault, _) in library.faults.iter() {
            let proven = Backing::of(&library, &state, fault).is_proven();
            let wrong = judge_verdict(&library, fault, &truth, truth.is_empty()) == Outcome::Wrong;
            assert!(
                !(proven && wrong),
                "{setup:?}: {} would be proven at {:?}",
                library.faults[fault].name,
                debrief.truth
            );
        }
        assert!(
            state.moment.stated.is_empty() && state.withheld.is_empty(),
            "{setup:?}"
        );
        assert!(
            debrief.left_running.is_empty() || debrief.outcome != Outcome::Right,
            "{debrief:?}"
        );
        assert!(state.trail.len() > 50, "{}", state.trail.len());
        for title in &debrief.truth {
            assert!(
                !asked.iter().any(|asked| asked.contains(title.as_str())),
                "{title} is told"
            );
        }
    }
}

#[test]
fn what_is_named_before_anything_was_taken_is_never_proven() {
    let library = with(None);
    let mut at_gate = practise(&library, TRANSFORMER_DEAD, |question, _| match question {
        Question::Choice { options, prompt, .. } if prompt.as_str().starts_with("You stand") => {
            assert_eq!(options.len(), 2);
            Command::Choose(0)
        }
        Question::Choice { .. } => Command::Stop("only the gate".to_owned()),
        Question::Act { .. } => Command::Done,
        _ => Command::Close,
    });
    assert!(at_gate.state.trail.len() >= 4);
    for (fault, _) in library.faults.iter() {
        let backing = Backing::of(&library, &at_gate.state, fault);
        assert!(!backing.is_proven(), "{}", library.faults[fault].name);
    }
    at_gate.state.moment.values.clear();
    assert!(!Backing::of_nothing(&library, &at_gate.state).is_proven());
}

#[test]
fn a_right_name_that_nothing_proves_is_a_lucky_guess_and_says_what_would_have_proven_it() {
    let library = with(None);
    let lucky = practise(&library, TRANSFORMER_DEAD, names("Transformer dead")).debrief;
    assert_eq!(lucky.outcome, Outcome::Right);
    assert!(
        matches!(&lucky.proof, Proof::Lacking(backing) if backing.holds == 0),
        "{:?}",
        lucky.proof
    );
    assert_eq!(lucky.condemned_unproven, ["Transformer"]);
    assert!(lucky.condemned_for_nothing.is_empty());
    assert!(!lucky.ended.contains("Verdict, proven"), "{}", lucky.ended);
    let page: Vec<String> = lucky
        .sections()
        .iter()
        .flat_map(|section| section.lines.iter().map(ToString::to_string))
        .take_while(|line| !line.contains('→'))
        .collect();
    let page = page.join("\n");
    assert!(page.contains("A lucky guess"), "{page}");
    assert!(
        page.contains("secondary with its load off: below 20.4 V (not taken)"),
        "{page}"
    );

    let guess = practise(&library, TRANSFORMER_DEAD, names("Gas valve leaks through")).debrief;
    assert_eq!(guess.outcome, Outcome::Referred);
    assert!(
        !guess.overlooked_at_gate.is_empty(),
        "a shut-down does not excuse the gate"
    );
    let parts = practise(&library, TRANSFORMER_DEAD, names("Thermostat says it calls")).debrief;
    assert_eq!(
        (parts.outcome, parts.condemned_for_nothing),
        (Outcome::Wrong, vec!["Thermostat".to_owned()])
    );
}

/// At the cock of a furnace without a pilot, where the shortest way to the verdict asks for one.
const COCK_CLOSED: Setup = Setup {
    seed: 1,
    level: Level::Common,
    mode: Mode::Free,
};

#[test]
fn what_would_have_proven_it_is_told_of_this_furnace_a_claim_a_line() {
    let library = with(None);
    let lacks = |words: &'static str| {
        let debrief = practise(&library, COCK_CLOSED, names(words)).debrief;
        assert!(debrief.truth[0].contains("cock"), "{:?}", debrief.truth);
        match debrief.proof {
            Proof::Lacking(backing) => backing,
            other => panic!("{other:?}"),
        }
    };
    let by_the_trees = lacks("Gas turned off at the valve or cock").lacks;
    assert!(
        !by_the_trees.is_empty() && !by_the_trees.iter().any(|lack| lack.contains("pilot")),
        "{by_the_trees:?}"
    );
    // A proof of several alternatives is told by one of them, and that there are others; afterwards only those that this
    // furnace can give.
    let practised = practise(&library, COCK_CLOSED, names("Gas valve does not open"));
    let valve = *practised.state.withheld.last().unwrap();
    let before = Backing::of(&library, &practised.state, valve);
    assert!(before.others > 0 && before.otherwise == 0, "{before:?}");
    assert!(
        before.lacks.iter().all(|lack| !lack.contains(", or Voltage")),
        "{before:?}"
    );
    let Proof::Lacking(after) = practised.debrief.proof else {
        panic!("{:?}", practised.debrief.proof);
    };
    assert!(after.otherwise > 0, "a good valve is not shown bad: {after:?}");
}

/// Just below the 26.4 V that a board is to have at most: the tree goes on by it, as it names a broken cable by its answers alone.
#[test]
fn what_leads_the_tree_on_leads_an_apprentice_on_however_near_to_a_bound() {
    let library = with(None);
    let broken_cable = |seed| {
        let setup = Setup {
            seed,
            ..TRANSFORMER_DEAD
        };
        let mut last = names("Thermostat cable broken");
        let mut left = 20;
        let practised = practise(&library, setup, |question, again| match question {
            Question::Choice { prompt, .. } if prompt.as_str().contains("PROVEN") && left > 0 => {
                left -= 1;
                Command::Choose(0)
            }
            _ => last(question, again),
        });
        let mut standing = practised.state.moment.values.values();
        let is_near = standing.any(|value| ["26.1 V", "26.2 V", "26.3 V"].contains(&&*value.typed));
        (practised.debrief.outcome == Outcome::Right && is_near).then_some(practised)
    };
    let practised = (0..400)
        .find_map(broken_cable)
        .expect("a board's voltage is near to its bound");
    assert_eq!(
        practised.debrief.came(),
        Came::Proven,
        "{:?}",
        practised.debrief.proof
    );
}

#[test]
fn no_two_things_that_are_offered_read_the_same() {
    let library = with(None);
    let groups = Groups::of(&library, &[]);
    let mut seen = BTreeSet::new();
    for datum in groups.data.iter().flat_map(|group| &group.members) {
        let title = library.title_of(*datum);
        assert!(seen.insert(title), "two are called so: {title}");
    }
    for fault in groups.faults.iter().flat_map(|group| &group.members) {
        let title = library.faults[*fault].title.as_str();
        assert!(seen.insert(title), "two are called so: {title}");
    }
}

#[test]
fn at_a_sound_furnace_whoever_stops_has_named_nothing_and_whoever_says_so_is_right() {
    let library = with(None);
    let stop = |question: &Question, _: Option<&Again>| match question {
        Question::Choice { prompt, .. } if prompt.as_str().starts_with("You stand") => Command::Choose(1),
        Question::Choice { .. } => Command::Stop("nothing found".to_owned()),
        _ => Command::Close,
    };
    let sound = practise(&library, SOUND, stop).debrief;
    assert!(sound.truth.is_empty(), "{:?}", sound.truth);
    assert_eq!(
        (sound.outcome, sound.came()),
        (Outcome::Referred, Came::StoppedSound)
    );
    let page = page(&sound);
    assert!(page.contains("Stopped: nothing named"), "{page}");
    assert!(
        page.contains("What would have shown that nothing is wrong"),
        "{page}"
    );
    let named = practise(&library, SOUND, names("No fault found")).debrief;
    assert_eq!(named.outcome, Outcome::Right);
    assert!(matches!(named.proof, Proof::Lacking(_)));
    let missed = practise(&library, TRANSFORMER_DEAD, names("No fault found")).debrief;
    assert_eq!(missed.outcome, Outcome::Missed);
    let stopped = practise(&library, TRANSFORMER_DEAD, stop).debrief;
    assert_eq!(stopped.outcome, Outcome::Referred);
}
