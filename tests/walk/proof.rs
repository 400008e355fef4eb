//! A verdict is stated only when its proof holds, fresh.

use proofwalk::walk::{Command, Holding, LackKind, Question, answer_holds, ask, claim_holds, proof_lines};

use crate::call::Call;

const MOTOR: &str = "  a: { measure: volts, go: motor_dead }\n";

fn lacks(call: &Call) -> Vec<(String, LackKind, Vec<String>)> {
    let Question::Unproven { lacks, .. } = ask(&call.library, &call.state).question else {
        unreachable!("the verdict is withheld, not: {}", call.wants());
    };
    let lacks = lacks.into_iter().map(|lack| {
        let take = lack
            .take
            .iter()
            .map(|(datum, _)| call.library.name_of(*datum).to_owned());
        (lack.words.to_string(), lack.because, take.collect())
    });
    lacks.collect()
}

#[test]
fn what_is_missing_is_said_and_offered() {
    let mut call = Call::of(MOTOR);
    let lines = call.types("24 V");
    assert_eq!(lines.last().unwrap(), r#"{"withheld":{"fault":"motor_dead"}}"#);
    assert_eq!(call.wants(), "decide motor_dead");
    let words = "Noise? Hum, or Amps: above 5 A".to_owned();
    assert_eq!(
        lacks(&call),
        [(
            words,
            LackKind::NotTaken,
            vec!["noise".to_owned(), "amps".to_owned()]
        )]
    );
}

#[test]
fn taking_what_is_missing_completes_the_proof() {
    let mut call = Call::of(MOTOR);
    call.types("24 V");
    call.takes("amps");
    assert_eq!(call.wants(), "amps");
    call.types("7 A");
    assert_eq!(call.ended(), r#"{"ended":{"verdict":{"fault":"motor_dead"}}}"#);
}

/// Of a meter that errs by 0.1 A, 5.02 A may be 4.92 A.
#[test]
fn a_value_near_a_bound_proves_nothing_and_answers_all_the_same() {
    for (typed, answers) in [("5.02 A", Holding::Holds), ("4.98 A", Holding::Contradicted)] {
        let mut call = Call::of(MOTOR);
        call.types("24 V");
        call.takes("amps");
        call.types(typed);
        let fault = call.library.faults.find("motor_dead").unwrap();
        let lines = proof_lines(&call.library, &call.state, fault);
        let mut claims = lines
            .iter()
            .flat_map(|(line, _)| line.alternatives.iter().flatten());
        let amps = claims
            .find(|claim| call.library.name_of(claim.datum()) == "amps")
            .unwrap();
        assert_eq!(claim_holds(&call.state, amps), Holding::Borderline, "{typed}");
        assert_eq!(answer_holds(&call.state, amps), answers, "{typed}");
    }
}

#[test]
fn one_alternative_that_fails_leaves_the_other() {
    let mut call = Call::of(MOTOR);
    call.types("24 V");
    call.takes("noise");
    call.chooses("quiet");
    assert_eq!(lacks(&call)[0].2, ["amps"]);
    call.takes("amps");
    call.does(Command::Unable("no clamp".to_owned()));
    assert_eq!(call.wants(), "decide motor_dead");
    assert!(
        lacks(&call)[0].2.is_empty(),
        "what cannot be taken is not offered again"
    );
}

#[test]
fn a_borderline_reading_does_not_complete_a_proof() {
    let mut call = Call::of(MOTOR);
    call.types("20.3 V");
    assert_eq!(
        (lacks(&call)[0].1, lacks(&call)[0].2.clone()),
        (LackKind::Borderline, vec!["volts".to_owned()])
    );
    call.takes("volts");
    call.types("21 V");
    assert_eq!(lacks(&call).len(), 1, "only the noise is left");
}

#[test]
fn a_reading_that_says_otherwise_is_not_offered_again() {
    let mut call = Call::of(MOTOR);
    call.types("3 V");
    assert_eq!(
        (lacks(&call)[0].1, lacks(&call)[0].2.len()),
        (LackKind::Contradicted, 0)
    );
}

#[test]
fn a_plate_field_that_the_proof_leans_on_is_asked_for() {
    let mut call = Call::of("  a: { measure: volts, go: valve_dead }\n");
    call.types("24 V");
    assert_eq!(call.wants(), "low");
    call.types("5 V");
    assert_eq!(call.ended(), r#"{"ended":{"verdict":{"fault":"valve_dead"}}}"#);
}

#[test]
fn a_proof_whose_plate_field_cannot_be_read_does_not_hold() {
    let mut call = Call::of("  a: { measure: volts, go: valve_dead }\n");
    call.types("24 V");
    call.does(Command::Unable("painted over".to_owned()));
    assert_eq!(call.wants(), "decide valve_dead");
}

#[test]
fn what_was_voided_proves_nothing() {
    let mut call = Call::of(
        "  a: { observe: noise, go: b }\n  b: { measure: volts, go: c }\n  c: { do: Oil., voids: [noise], go: motor_dead }\n",
    );
    call.chooses("hum");
    call.types("24 V");
    call.does(Command::Done);
    assert_eq!(call.wants(), "decide motor_dead");
}

#[test]
fn an_own_verdict_is_given_in_writing_and_logged_as_such() {
    let mut call = Call::of(MOTOR);
    call.types("24 V");
    call.refuses(Command::Insist("  ".to_owned()));
    call.does(Command::Insist("It smells burnt".to_owned()));
    assert_eq!(
        call.ended(),
        r#"{"ended":{"insisted":{"fault":"motor_dead","words":"It smells burnt"}}}"#
    );
    assert!(call.state.moment.stated.is_empty());
}

/// A line that may be proven in several ways is told by the nearest of them, claim by claim; JSON has all of it.
#[test]
fn the_job_report_lists_what_an_unproven_verdict_lacks() {
    let mut call = Call::of(MOTOR);
    call.types("24 V");
    call.takes("noise");
    call.chooses("quiet");
    call.does(Command::Insist("It smells burnt".to_owned()));
    let job = call.report();
    let text = job.text(None);
    let (_, proof) = text.split_once("PROOF\n").unwrap();
    let (proof, _) = proof.split_once("\n\n").unwrap();
    assert_eq!(
        proof,
        "  - holds: Volts: 20 V to 30 V\n      Volts: 24 V\n  - NOT PROVEN; what comes nearest:\n    - not taken: Amps: above 5 A\n    \
         It can be proven in one other way, which lacks no less."
    );
    let narrow = job.text(Some(40));
    assert!(narrow.lines().all(|line| line.chars().count() <= 40), "{narrow}");
    assert!(job.html().contains("<li>not taken: Amps: above 5 A</li>"));
    assert!(job.json().contains(", or Amps: above 5 A"), "{}", job.json());
}

#[test]
fn a_walk_may_end_without_the_verdict() {
    let mut call = Call::of(MOTOR);
    call.types("24 V");
    call.does(Command::Stop("The owner wants no more".to_owned()));
    assert!(call.ended().contains("unproven"));
}
