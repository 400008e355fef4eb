//! A log decided again: what was walked follows from its library, and what was changed afterwards does not.

use proofwalk::library::{Datum, FieldKind, Library};
use proofwalk::walk::{
    ByTheTrees, Command, Due, End, Event, Role, State, Stray, Wanted, apply, decide, encode, fold, go_on,
    open, rehearse, retrace, wanted,
};
use proptest::prelude::*;
use proptest::test_runner::{Config, TestRunner};

use crate::built_in::built_in;
use crate::call::{Call, opened};

/// A motor is proven dead, with a door to close.
fn motor() -> Call {
    let mut call = Call::of(
        "  a: { measure: volts, bands: { below 20 V: dirty, at least 20 V: b } }\n  b: { observe: noise, choices: { hum: motor_dead, quiet: fine } }\n",
    );
    call.types("25 V");
    call.chooses("hum");
    call
}

fn closed() -> Call {
    let mut call = motor();
    call.does(Command::PutBack(call.library.restores.find("door").unwrap()));
    call.does(Command::Close);
    call
}

fn follows(library: &Library, events: &[Event]) -> Result<(), Stray> {
    retrace(library, events, &ByTheTrees).map(drop)
}

/// Where the log strays, and what would have come there as the log would hold it.
#[track_caller]
fn strays(call: &Call, events: &[Event]) -> (usize, String) {
    let stray = follows(&call.library, events).unwrap_err();
    let due = match stray.due {
        Due::Event(event) => encode(&event).unwrap(),
        Due::Refused(refusal) => refusal.message,
        Due::Nothing => String::new(),
    };
    (stray.at, due)
}

fn place(events: &[Event], is: impl Fn(&Event) -> bool) -> usize {
    events.iter().position(is).unwrap()
}

fn verdict(fault: &str) -> Event {
    let (fault, danger) = (fault.to_owned(), false);
    Event::Ended(End::Verdict { fault, danger })
}

fn stated(fault: &str) -> Event {
    let (fault, noted) = (fault.to_owned(), false);
    Event::Stated { fault, noted }
}

#[test]
fn a_verdict_of_another_fault_does_not_follow() {
    let call = closed();
    let at = place(&call.events, |event| matches!(event, Event::Stated { .. }));
    for other in ["fine", "no_such_fault"] {
        let mut events = call.events.clone();
        events[at] = stated(other);
        events[at + 1] = verdict(other);
        let due = r#"{"stated":{"fault":"motor_dead"}}"#.to_owned();
        assert_eq!(strays(&call, &events), (at, due));
    }
}

#[test]
fn a_call_ends_in_the_verdict_that_was_stated() {
    let call = closed();
    let at = place(&call.events, |event| matches!(event, Event::Ended(_)));
    let why = "w".to_owned();
    for other in [
        verdict("dirty"),
        verdict("no_such_fault"),
        Event::Ended(End::Unproven { why }),
    ] {
        let mut events = call.events.clone();
        events[at] = other;
        let due = r#"{"ended":{"verdict":{"fault":"motor_dead"}}}"#.to_owned();
        assert_eq!(strays(&call, &events), (at, due));
    }
}

#[test]
fn a_way_leads_from_where_the_walk_stands_to_where_its_library_says() {
    let call = closed();
    let at = place(&call.events, |event| matches!(event, Event::Took { .. }));
    let Event::Took { edge, from, to } = call.events[at].clone() else {
        unreachable!("it was found")
    };
    let due = encode(&call.events[at]).unwrap();
    let others = [
        Event::Took {
            edge,
            from: from.clone(),
            to: "t/fine".to_owned(),
        },
        Event::Took {
            edge,
            from: to.clone(),
            to: to.clone(),
        },
        // The other band's: it leaves the step, and was not what was measured.
        Event::Took {
            edge: edge - 1,
            from,
            to: "t/dirty".to_owned(),
        },
    ];
    for other in others {
        let mut events = call.events.clone();
        events[at] = other;
        assert_eq!(strays(&call, &events), (at, due.clone()));
    }
}

#[test]
fn a_verdict_without_a_question_does_not_follow() {
    let call = closed();
    let mut events = call.events[..2].to_vec();
    events.extend([stated("motor_dead"), verdict("motor_dead"), Event::Closed]);
    assert_eq!(strays(&call, &events), (2, String::new()));
}

#[test]
fn a_call_at_a_house_begins_at_the_gate() {
    let library = built_in();
    let mut events = open(&library, opened("no-heat")).unwrap();
    assert_eq!(follows(&library, &events), Ok(()));
    assert!(matches!(events[1], Event::Entered { role: Role::Gate, .. }));
    let (tree, role) = ("no-heat".to_owned(), Role::Complaint);
    events[1] = Event::Entered { tree, role };
    assert_eq!(follows(&library, &events).unwrap_err().at, 1);
    // Where a file answers, as a scenario does, the gate is left out.
    let Event::Opened(opened) = &mut events[0] else {
        unreachable!("a call begins with its opening")
    };
    opened.answered_from = Some("answers.yaml".to_owned());
    assert_eq!(follows(&library, &events), Ok(()));
}

#[test]
fn nothing_follows_a_close_and_nothing_is_opened_twice() {
    let call = closed();
    let taken = call.events[place(&call.events, |event| matches!(event, Event::Measured { .. }))].clone();
    let cut = Event::TailCut {
        bytes: 1,
        kept: "f".to_owned(),
    };
    for more in [taken, Event::Closed, cut] {
        let mut events = call.events.clone();
        events.push(more);
        assert_eq!(strays(&call, &events).0, call.events.len());
    }
    let mut twice = motor().events;
    twice.extend(call.events.iter().take(2).cloned());
    assert_eq!(strays(&call, &twice).0, motor().events.len());
    assert_eq!(
        strays(&call, &call.events[1..]).0,
        0,
        "a session begins with its opening"
    );
}

#[test]
fn what_was_measured_is_what_was_typed_by_the_meter_of_its_library() {
    let call = closed();
    let at = place(&call.events, |event| matches!(event, Event::Measured { .. }));
    let change = |changes: fn(&mut f64, &mut f64, &mut bool)| {
        let mut events = call.events.clone();
        if let Event::Measured {
            value,
            margin,
            borderline,
            ..
        } = &mut events[at]
        {
            changes(value, margin, borderline);
        }
        follows(&call.library, &events)
    };
    assert_eq!(change(|value, _, _| *value *= 1.0 + 1e-15), Ok(()));
    assert_eq!(change(|value, _, _| *value += 0.1).unwrap_err().at, at);
    assert_eq!(change(|_, margin, _| *margin /= 2.0).unwrap_err().at, at);
    assert_eq!(change(|_, _, borderline| *borderline = true).unwrap_err().at, at);
}

#[test]
fn what_the_program_words_itself_may_be_worded_otherwise() {
    let mut call = Call::of("  a: { measure: volts, bands: { below 20 V: dirty, at least 20 V: fine } }\n");
    call.types("20.1 V");
    call.does(Command::Unable("no meter".to_owned()));
    let mut events = call.events.clone();
    for event in &mut events {
        match event {
            Event::Doubted { against, .. } => *against = "twenty volts".to_owned(),
            Event::Ended(End::Unproven { why }) => *why = "it was not to be had".to_owned(),
            _ => {}
        }
    }
    assert_ne!(events, call.events);
    assert_eq!(follows(&call.library, &events), Ok(()));
}

#[test]
fn every_scenario_follows_and_no_edit_of_what_was_decided_does() {
    let library = built_in();
    let is_danger = |tree| library.dangers.iter().any(|danger| danger.tree == tree);
    let scenarios = library
        .scenarios
        .iter()
        .filter(|scenario| !is_danger(scenario.tree));
    let mut edits = 0;
    for (number, scenario) in scenarios.enumerate() {
        let events = rehearse(&library, scenario).events;
        assert_eq!(follows(&library, &events), Ok(()), "{}", scenario.name);
        if number % 25 != 0 {
            continue;
        }
        for (at, event) in events.iter().enumerate() {
            for other in others(&library, event) {
                let mut edited = events.clone();
                edited[at] = other.clone();
                edits += 1;
                assert!(
                    follows(&library, &edited).is_err(),
                    "{}: {event:?}, {other:?}",
                    scenario.name
                );
            }
            if at + 1 < events.len() && !matches!(event, Event::Noted { .. }) {
                let mut edited = events.clone();
                edited.remove(at);
                assert!(
                    follows(&library, &edited).is_err(),
                    "{}: without {event:?}",
                    scenario.name
                );
            }
            if is_once(event) {
                let mut edited = events.clone();
                edited.insert(at, event.clone());
                assert!(
                    follows(&library, &edited).is_err(),
                    "{}: twice {event:?}",
                    scenario.name
                );
            }
        }
    }
    assert!(edits > 2_000, "only {edits} edits");
}

/// Whether it stands once for each answer; what a call may have been cut off behind stands there again where it was taken up.
fn is_once(event: &Event) -> bool {
    matches!(
        event,
        Event::Opened(_)
            | Event::Entered { .. }
            | Event::Took { .. }
            | Event::Measured { .. }
            | Event::Observed { .. }
            | Event::Ended(_)
            | Event::PutBack { .. }
            | Event::Closed
    )
}

/// What could stand in the place of an event, and did not happen.
fn others(library: &Library, event: &Event) -> Vec<Event> {
    let faults = || {
        library
            .faults
            .iter()
            .step_by(9)
            .map(|(_, fault)| fault.name.clone())
    };
    match event {
        Event::Took { edge, from, to } => {
            let took = |edge: u32, from: &str, to: &str| Event::Took {
                edge,
                from: from.to_owned(),
                to: to.to_owned(),
            };
            vec![
                took(edge + 1, from, to),
                took(edge.wrapping_sub(1), from, to),
                took(*edge, from, from),
            ]
        }
        Event::Entered { tree, role } => {
            let roles = [Role::Gate, Role::Complaint, Role::Visit];
            let others = library.trees.iter().step_by(5).map(|(_, tree)| tree.name.clone());
            let roles = roles.into_iter().map(|role| (tree.clone(), role));
            let all = others.map(|tree| (tree, *role)).chain(roles);
            let all = all.filter(|other| *other != (tree.clone(), *role));
            all.map(|(tree, role)| Event::Entered { tree, role }).collect()
        }
        Event::Stated { fault, .. } => (faults().filter(|other| other != fault))
            .flat_map(|fault| {
                [true, false].map(|noted| Event::Stated {
                    fault: fault.clone(),
                    noted,
                })
            })
            .collect(),
        Event::Withheld { fault } => (faults().filter(|other| other != fault))
            .map(|fault| Event::Withheld { fault })
            .collect(),
        Event::Ended(End::Verdict { fault, .. }) => {
            let outcome = "ok".to_owned();
            let others = faults()
                .filter(|other| other != fault)
                .map(|fault| verdict(&fault));
            others
                .chain([Event::Ended(End::Outcome { outcome }), Event::Closed])
                .collect()
        }
        Event::Measured {
            reading,
            typed,
            value,
            unit,
            margin,
            borderline,
            warnings,
        } => {
            let measured = |value: f64, margin: f64, borderline: bool| Event::Measured {
                reading: reading.clone(),
                typed: typed.clone(),
                value,
                unit: unit.clone(),
                margin,
                borderline,
                warnings: warnings.clone(),
            };
            vec![
                measured(value + 1.0, *margin, *borderline),
                measured(*value, margin + 1.0, *borderline),
                measured(*value, *margin, !borderline),
            ]
        }
        Event::Returned { .. } => vec![Event::Returned {
            outcome: "another".to_owned(),
        }],
        Event::Left { depth } => vec![Event::Left { depth: depth + 1 }],
        Event::LeftOpen { .. } => vec![Event::LeftOpen { restores: Vec::new() }],
        Event::Restored { .. } => vec![Event::Restored { restores: Vec::new() }],
        Event::Did { step } => vec![Event::Did {
            step: format!("{step}_other"),
        }],
        _ => Vec::new(),
    }
}

/// A command that a technician might give, by chance; it may be refused.
fn command(library: &Library, state: &State, pick: u16) -> Command {
    let words = || "in a few words".to_owned();
    let of = |count: usize| usize::from(pick / 64) % count.max(1);
    match pick % 64 {
        0 => return Command::Unable(words()),
        1 => return Command::Unsure,
        2 => return Command::Note(words()),
        3 => return Command::Danger(of(library.dangers.len())),
        4 | 5 if !state.trail.is_empty() => {
            return Command::Back(state.trail.len() - 1 - of(3).min(state.trail.len() - 1));
        }
        6..=9 if !state.moment.values.is_empty() => {
            let standing: Vec<Datum> = state.moment.values.keys().copied().collect();
            return Command::Retake(standing[of(standing.len())]);
        }
        10 if pick > 40_000 => return Command::Stop(words()),
        11 if !state.open.is_empty() => return Command::PutBack(state.open[of(state.open.len())]),
        12 if !state.open.is_empty() => return Command::LeaveOpen(state.open[of(state.open.len())], words()),
        13 => {
            let (id, _) = library
                .readings
                .iter()
                .nth(of(library.readings.iter().count()))
                .unwrap();
            return Command::Take(Datum::Reading(id));
        }
        _ => {}
    }
    match wanted(library, state) {
        Wanted::Value { leaf, .. } => answer(library, leaf, pick),
        Wanted::Work(_) => Command::Done,
        Wanted::Decision(_) if pick.is_multiple_of(2) => Command::Insist(words()),
        Wanted::Decision(_) => Command::Stop(words()),
        Wanted::PutBack(restore) => Command::PutBack(restore),
        Wanted::Close | Wanted::Nothing | Wanted::Onward => Command::Close,
    }
}

/// A value from a little below what is plausible to a little above.
fn answer(library: &Library, leaf: Datum, pick: u16) -> Command {
    let share = f64::from(pick) / f64::from(u16::MAX) * 1.1 - 0.05;
    let (range, scale) = match leaf {
        Datum::Reading(id) => (library.readings[id].plausible, library.readings[id].scale),
        Datum::Field(id) => match &library.plate[id].kind {
            FieldKind::Number { plausible, scale } => (Some(*plausible), *scale),
            FieldKind::Choices(choices) => return Command::Choose(usize::from(pick) % choices.len()),
        },
        Datum::Sign(id) => return Command::Choose(usize::from(pick) % library.signs[id].values.len()),
    };
    let (low, high) = range.map_or((0.0, 100.0), |range| {
        (range.low.number_in(scale), range.high.number_in(scale))
    });
    Command::Type(format!("{:.3}", low + (high - low) * share))
}

#[test]
fn whatever_a_technician_does_and_wherever_the_call_is_cut_off_its_log_follows() {
    let library = built_in();
    let complaints: Vec<String> = (library.trees.iter())
        .filter(|(_, tree)| tree.complaint.is_some())
        .map(|(_, tree)| tree.name.clone())
        .collect();
    let mut runner = TestRunner::new(Config::with_cases(200));
    let picks = (
        0..complaints.len(),
        prop::collection::vec(any::<(u16, u8)>(), 100),
    );
    runner
        .run(&picks, |(tree, picks)| {
            let mut log = open(&library, opened(&complaints[tree])).unwrap();
            let mut state = fold(&library, &log).unwrap();
            for (pick, cut) in picks {
                let Ok(mut events) = decide(&library, &state, &command(&library, &state, pick)) else {
                    continue;
                };
                let kept = usize::from(cut / 16);
                let is_cut = cut % 16 == 0 && kept < events.len();
                if is_cut {
                    events.truncate(kept);
                    if cut % 32 == 0 {
                        events.push(Event::TailCut {
                            bytes: 3,
                            kept: "f".to_owned(),
                        });
                    }
                }
                for event in &events {
                    apply(&library, &mut state, event).unwrap();
                }
                log.extend(events);
                if is_cut {
                    let events = go_on(&library, &state).unwrap();
                    for event in &events {
                        apply(&library, &mut state, event).unwrap();
                    }
                    log.extend(events);
                }
            }
            prop_assert_eq!(follows(&library, &log), Ok(()), "{:#?}", log);
            Ok(())
        })
        .unwrap();
}
