//! What came of the simulated faults, for a person and for another program.

mod json;
mod text;

use super::explained::{Explained, Row};
use crate::bench::trials::{Played, Shown, Subject, Trials};
use crate::library::Library;
use crate::walk::Run;

pub use json::json;
pub use text::text;

/// What came of a run of simulated calls.
#[derive(Debug)]
pub struct Report<'l> {
    /// The library that was walked.
    pub library: &'l Library,
    /// The seed of each fault's first call.
    pub seed: u64,
    /// Whether each furnace had a second fault.
    pub pairs: bool,
    /// What names the library on a command line, with a blank before it; empty for the built-in one.
    pub with: String,
    /// What the calls came to.
    pub trials: &'l Trials,
    /// The calls that are shown, played again.
    pub shown: Vec<(Subject, Shown, Played)>,
}

impl Report<'_> {
    /// What another program types to play a call again.
    fn again(&self, subject: Subject, seed: u64) -> String {
        let pairs = if self.pairs { " --pairs" } else { "" };
        format!(
            "proofwalk rehearse{} --bench{pairs} --only {} --seed {seed} --calls 1",
            self.with,
            subject.name()
        )
    }

    fn rows(&self, played: &Played) -> Vec<Row> {
        let run = Run {
            events: played.walked.events.clone(),
            state: played.walked.state.clone(),
            departures: Vec::new(),
            idle: Vec::new(),
        };
        Explained::of(self.library, &run).rows()
    }
}

/// What was wrong with a furnace, and how badly: `filter_loaded (severity 0.42)`.
fn truth(played: &Played) -> String {
    let faults: Vec<String> = (played.truth.iter())
        .map(|(fault, severity)| format!("{} (severity {severity:.2})", fault.name))
        .collect();
    match faults.is_empty() {
        true => "nothing".to_owned(),
        false => faults.join(" and "),
    }
}

fn outcome(shown: &Shown) -> &'static str {
    use crate::bench::trials::Outcome;
    match shown.outcome {
        Outcome::Right => "right",
        Outcome::Referred => "referred",
        Outcome::Missed => "missed",
        Outcome::Wrong => "wrong",
    }
}
