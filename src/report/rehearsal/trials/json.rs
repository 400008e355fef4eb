//! What came of the simulated faults, as JSON.

use std::collections::BTreeMap;

use serde::Serialize;

use super::super::json::shown;
use super::{Report, outcome, truth};
use crate::bench::trials::Tally;

#[derive(Serialize)]
struct Trials {
    library: String,
    seed: u64,
    pairs: bool,
    faults: usize,
    #[serde(flatten)]
    sum: Counts,
    minutes: Spread,
    steps: Spread,
    by_fault: Vec<Fault>,
    by_part: Vec<Part>,
    shown: Vec<Shown>,
}

#[derive(Serialize)]
struct Counts {
    calls: usize,
    right: usize,
    referred: usize,
    missed: usize,
    wrong: usize,
}

#[derive(Serialize)]
struct Spread {
    mean: f64,
    worst: f64,
}

#[derive(Serialize)]
struct Fault {
    fault: &'static str,
    part: Option<&'static str>,
    title: &'static str,
    #[serde(flatten)]
    counts: Counts,
    minutes: Spread,
    steps: Spread,
    ended: BTreeMap<String, usize>,
}

#[derive(Serialize)]
struct Part {
    part: Option<&'static str>,
    #[serde(flatten)]
    counts: Counts,
    blamed: BTreeMap<String, usize>,
}

#[derive(Serialize)]
struct Shown {
    fault: &'static str,
    seed: u64,
    outcome: &'static str,
    ended: String,
    truth: String,
    tree: &'static str,
    again: String,
    walk: Vec<Step>,
}

#[derive(Serialize)]
struct Step {
    step: String,
    answered: String,
    took: Option<String>,
    go: Option<String>,
}

/// For another program, as JSON. Texts are made safe here as well.
///
/// A fault without a part is a condition that is put right. `ended` counts the calls by the fault they ended in, by the
/// outcome of their tree, or as `unproven`. `shown` plays the first calls of each fault again that were wrong or missed.
pub fn json(report: &Report<'_>) -> String {
    let sum = report.trials.sum();
    let mut parts: BTreeMap<Option<&'static str>, Tally> = BTreeMap::new();
    for (subject, tally) in &report.trials.by_fault {
        parts
            .entry(subject.fault().and_then(|fault| fault.part))
            .or_default()
            .add(tally);
    }
    let trials = Trials {
        library: shown(&report.library.name),
        seed: report.seed,
        pairs: report.pairs,
        faults: report.trials.by_fault.len(),
        sum: counts(&sum),
        minutes: minutes(&sum),
        steps: steps(&sum),
        by_fault: (report.trials.by_fault.iter())
            .map(|(subject, tally)| Fault {
                fault: subject.name(),
                part: subject.fault().and_then(|fault| fault.part),
                title: subject.fault().map_or("Nothing is wrong", |fault| fault.title),
                counts: counts(tally),
                minutes: minutes(tally),
                steps: steps(tally),
                ended: texts(&tally.ended),
            })
            .collect(),
        by_part: (parts.iter())
            .map(|(part, tally)| Part {
                part: *part,
                counts: counts(tally),
                blamed: texts(&tally.blamed),
            })
            .collect(),
        shown: calls(report),
    };
    // Texts and numbers in a struct: there is nothing here that JSON cannot say.
    serde_json::to_string_pretty(&trials).unwrap_or_default() + "\n"
}

fn calls(report: &Report<'_>) -> Vec<Shown> {
    let mut calls = Vec::with_capacity(report.shown.len());
    for (subject, call, played) in &report.shown {
        let rows = report.rows(played);
        let steps = rows.iter().map(|row| Step {
            step: shown(&row.step),
            answered: shown(&row.said),
            took: row.took.as_ref().map(|took| shown(&took.answer)),
            go: row.took.as_ref().map(|took| shown(&took.go)),
        });
        calls.push(Shown {
            fault: subject.name(),
            seed: call.seed,
            outcome: outcome(call),
            ended: shown(&call.ended),
            truth: truth(played),
            tree: played.tree,
            again: report.again(*subject, call.seed),
            walk: steps.collect(),
        });
    }
    calls
}

fn counts(tally: &Tally) -> Counts {
    let Tally {
        calls,
        right,
        referred,
        missed,
        wrong,
        ..
    } = *tally;
    Counts {
        calls,
        right,
        referred,
        missed,
        wrong,
    }
}

fn minutes(tally: &Tally) -> Spread {
    Spread {
        mean: tenths(tally.mean_minutes()),
        worst: tenths(tally.most_minutes),
    }
}

fn steps(tally: &Tally) -> Spread {
    Spread {
        mean: tenths(tally.mean_steps()),
        worst: tally.most_steps as f64,
    }
}

fn tenths(number: f64) -> f64 {
    (number * 10.0).round() / 10.0
}

fn texts(counts: &BTreeMap<String, usize>) -> BTreeMap<String, usize> {
    counts.iter().map(|(name, count)| (shown(name), *count)).collect()
}
