//! Calls about furnaces that are in order: their complaint does not tell, and the trees end them rightly.

use std::collections::BTreeMap;

use proofwalk::bench::furnace::Furnace;
use proofwalk::bench::practice::{Level, Mode, Setup};
use proofwalk::bench::simulated::{Probes, Simulated};
use proofwalk::bench::trials::{Outcome, Subject, play};
use proofwalk::library::Remedy;

use crate::told::with;

#[test]
fn a_sound_furnace_is_called_about_for_what_owners_notice_and_nothing_is_condemned() {
    let library = with(None);
    let probes = Probes::of(&library);
    let build = |make, condition| Simulated::new(&probes, Furnace { make, condition });
    let mut complaints: BTreeMap<&str, usize> = BTreeMap::new();
    let calls = 200;
    let mut right = 0;
    for seed in 0..calls {
        let played = play(&library, Subject::Sound, seed, build).unwrap().unwrap();
        let occasion = played.occasion.unwrap();
        assert_eq!(occasion.tree, played.tree);
        *complaints.entry(played.tree).or_default() += 1;
        let said = &played.walked.state.moment.stated;
        let acted = said.iter().map(|fault| library.faults[*fault].remedy);
        for remedy in acted {
            assert!(
                !matches!(remedy, Remedy::Replace(_) | Remedy::Correct),
                "{seed}: {} {remedy:?}",
                played.tree
            );
        }
        // A call may still be handed on, where a meter errs at a bound.
        assert!(
            matches!(played.outcome, Outcome::Right | Outcome::Referred),
            "{seed}: {} {:?}",
            played.tree,
            played.outcome
        );
        right += u64::from(played.outcome == Outcome::Right);
    }
    assert!(complaints.len() >= 9, "{complaints:?}");
    assert!(right * 100 >= calls * 98, "{right} of {calls} right");
}

#[test]
fn no_complaint_of_practice_is_for_sound_furnaces_alone_and_none_mostly() {
    let library = with(None);
    let probes = Probes::of(&library);
    let build = |make, condition| Simulated::new(&probes, Furnace { make, condition });
    let mut drawn: BTreeMap<&str, (usize, usize)> = BTreeMap::new();
    for seed in 0..2_500 {
        let (level, mode) = (Level::Any, Mode::Free);
        let (subject, drawn_now) = Setup { seed, level, mode }.draw(&library, build).unwrap();
        let (sound, all) = drawn.entry(drawn_now.tree).or_default();
        *sound += usize::from(matches!(subject, Subject::Sound));
        *all += 1;
    }
    let with_sound = drawn.values().filter(|(sound, _)| *sound > 0).count();
    assert!(with_sound >= 9, "{drawn:?}");
    for (complaint, (sound, all)) in &drawn {
        // Of a few calls a share says little; a complaint that tells would be all sound.
        assert!(
            sound * 3 <= all * 2 || *all < 6,
            "{complaint}: {sound} of {all} sound"
        );
    }
}
