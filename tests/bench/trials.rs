//! Many calls: no good part is condemned, a call plays again from its seed, and the sums do not depend on the threads.

use std::num::NonZero;

use proofwalk::bench::faults;
use proofwalk::bench::furnace::Furnace;
use proofwalk::bench::make::Make;
use proofwalk::bench::simulated::{Probes, Simulated};
use proofwalk::bench::trials::{Plan, Subject, Trials, ending, play, run};
use proofwalk::library::Library;

use crate::told::with;

fn plan(subjects: Vec<Subject>, calls: usize, threads: usize) -> Plan {
    Plan {
        subjects,
        calls,
        seed: 0,
        threads: NonZero::new(threads).unwrap(),
    }
}

fn ran(library: &Library, plan: &Plan) -> Trials {
    let probes = Probes::of(library);
    run(library, plan, |make, condition| {
        Simulated::new(&probes, Furnace { make, condition })
    })
    .unwrap()
}

#[test]
fn no_good_part_is_condemned_and_no_sound_furnace_blamed() {
    let library = with(None);
    let faults = faults::all().map(Subject::One);
    let all = ran(&library, &plan(faults.chain([Subject::Sound]).collect(), 6, 2));
    let sum = all.sum();
    assert!(all.by_fault.len() > 80, "only {} faults", all.by_fault.len());
    assert_eq!(sum.right + sum.referred + sum.missed + sum.wrong, sum.calls);
    assert_eq!(sum.calls, 6 * all.by_fault.len(), "every fault fits some furnace");
    let wrong: Vec<_> = (all.by_fault.iter())
        .filter(|(_, tally)| tally.wrong > 0)
        .map(|(subject, tally)| (subject.name(), &tally.shown))
        .collect();
    assert!(wrong.is_empty(), "{wrong:?}");
    assert!(
        sum.right * 10 > sum.calls * 7,
        "only {} of {} isolated",
        sum.right,
        sum.calls
    );
    let sound = all.sum_of(|subject| matches!(subject, Subject::Sound));
    assert_eq!(sound.right, sound.calls, "{sound:?}");
}

#[test]
fn the_sums_are_the_same_on_any_number_of_threads() {
    let library = with(None);
    let some: Vec<_> = faults::all().step_by(40).map(Subject::One).collect();
    let one = ran(&library, &plan(some.clone(), 120, 1));
    let three = ran(&library, &plan(some, 120, 3));
    for ((subject, alone), (_, together)) in one.by_fault.iter().zip(&three.by_fault) {
        assert_eq!(alone, together, "{}", subject.name());
    }
}

/// The trees with which calls about a fault come in.
fn complaints(library: &Library, fault: &str) -> Vec<&'static str> {
    let probes = Probes::of(library);
    let build = |make, condition| Simulated::new(&probes, Furnace { make, condition });
    let fault = faults::all().find(|known| known.name == fault).unwrap();
    let calls = (0..12).filter_map(|seed| play(library, Subject::One(fault), seed, build).unwrap());
    calls.map(|played| played.tree).collect()
}

#[test]
fn a_call_comes_in_by_what_the_owner_sees() {
    let library = with(None);
    for (fault, tree) in [
        ("return_duct_leaks", "not-enough-heat"),
        ("manifold_set_low", "not-enough-heat"),
        ("limit_opens_early", "short-cycling"),
        ("valve_leaks_through", "does-not-stop"),
        ("inducer_relay_welded", "does-not-stop"),
        ("thermostat_open", "no-heat"),
        ("carryover_bad", "delayed-ignition"),
        ("drain_trap_blocked", "condensate"),
        ("orifices_not_derated", "tune-up"),
    ] {
        let complaints = complaints(&library, fault);
        assert!(complaints.contains(&tree), "{fault}: {complaints:?}");
    }
}

#[test]
fn a_call_plays_again_from_its_seed() {
    let library = with(None);
    let probes = Probes::of(&library);
    let build = |make, condition| Simulated::new(&probes, Furnace { make, condition });
    let cracked = faults::all()
        .find(|fault| fault.name == "exchanger_cracked")
        .unwrap();
    let all = ran(&library, &plan(vec![Subject::One(cracked)], 60, 2));
    let (subject, tally) = &all.by_fault[0];
    assert!(
        !tally.shown.is_empty(),
        "a crack that shifts no oxygen is missed: no shift clears nothing"
    );
    for shown in &tally.shown {
        let played = play(&library, *subject, shown.seed, build).unwrap().unwrap();
        assert_eq!(played.outcome, shown.outcome);
        assert_eq!(ending(&library, &played.walked).name(), shown.ended);
        assert!(played.walked.state.closed && played.walked.state.open.is_empty());
    }
}

#[test]
fn a_second_fault_is_another_that_the_furnace_can_have() {
    let library = with(None);
    let probes = Probes::of(&library);
    let build = |make, condition| Simulated::new(&probes, Furnace { make, condition });
    let filter = faults::all().find(|fault| fault.name == "filter_loaded").unwrap();
    for seed in 0..40 {
        let played = play(&library, Subject::Two(filter), seed, build)
            .unwrap()
            .unwrap();
        let [(first, _), (second, severity)] = played.truth[..] else {
            panic!("two faults: {:?}", played.truth);
        };
        assert_eq!(first.name, "filter_loaded");
        assert!(second.name != first.name && (second.fits)(&played.make) && (0.0..=1.0).contains(&severity));
    }
}

#[test]
fn a_fault_that_fits_no_furnace_has_no_call() {
    static NOWHERE: faults::Fault = faults::Fault {
        name: "nowhere",
        title: "What no furnace has",
        part: None,
        verdicts: &[],
        fits: |_: &Make| false,
        strike: |_, _, _| {},
    };
    let library = with(None);
    let all = ran(&library, &plan(vec![Subject::One(&NOWHERE)], 3, 1));
    assert_eq!(all.sum().calls, 0);
    assert_eq!(all.by_fault[0].1.shown, []);
}

/// A verdict that is called by a fault's own name is true of it.
#[test]
fn a_fault_that_the_library_knows_by_name_may_be_called_by_it() {
    let library = with(None);
    for fault in faults::all().filter(|fault| library.faults.find(fault.name).is_some()) {
        assert!(fault.verdicts.contains(&fault.name), "{}", fault.name);
    }
}
