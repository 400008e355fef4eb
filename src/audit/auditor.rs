//! The fold: calls in, an audit out.

use std::panic::resume_unwind;
use std::sync::Arc;
use std::thread;

use jiff::Timestamp;

use super::call::Call;
use super::clocks::Clocks;
use super::findings::{
    Borderlines, Drifts, Followed, LeftOpens, Steps, Tests, Unsounds, WhatIsWrong, Writings,
};
use super::groups::{self, Counted};
use super::summary::{Audit, CAUTION, SessionRef};
use super::visits::Visits;

/// The window within which a call counts as a callback.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Window {
    /// Days of 24 h, the last instant included.
    pub days: u32,
}

impl Default for Window {
    fn default() -> Self {
        Self { days: 30 }
    }
}

/// Takes calls one at a time, and says in the end what they come to.
///
/// It keeps a few dozen bytes a call and sums by equipment, technician and step, so that its memory grows with those and not with
/// events. Calls added in the same order give the same audit, to the last digit.
#[derive(Debug)]
pub struct Auditor {
    window: Window,
    folders: Vec<String>,
    visits: Visits,
    clocks: Clocks,
    without_library: u64,
    other_files: u64,
    copies: u64,
    practice: Vec<SessionRef>,
    left_open: LeftOpens,
    borderline: Borderlines,
    written: Writings,
    steps: Steps,
    tests: Tests,
    unsound: Unsounds,
    drift: Drifts,
}

impl Auditor {
    /// Of these folders, as they are named to the user.
    pub fn new(window: Window, folders: Vec<String>) -> Self {
        Self {
            window,
            folders,
            visits: Visits::default(),
            clocks: Clocks::default(),
            without_library: 0,
            other_files: 0,
            copies: 0,
            practice: Vec::new(),
            left_open: LeftOpens::default(),
            borderline: Borderlines::default(),
            written: Writings::default(),
            steps: Steps::default(),
            tests: Tests::default(),
            unsound: Unsounds::default(),
            drift: Drifts::default(),
        }
    }

    /// The same, made at this time: of a call whose clock is more than a day ahead of it, the clock is doubted, and the archive does not
    /// end with it.
    #[must_use]
    pub fn made_at(self, now: Timestamp) -> Self {
        Self {
            clocks: Clocks::made_at(now),
            ..self
        }
    }

    /// The latest time that a call can have, where some are doubted for being ahead of it.
    pub fn latest(&self) -> Option<Timestamp> {
        self.clocks.latest()
    }

    /// The first opening that is believed; none where there is no call.
    pub fn earliest(&self) -> Option<Timestamp> {
        self.clocks.ends().from
    }

    /// Takes a call.
    pub fn add(&mut self, call: &Call) {
        let number = self.visits.add(call);
        self.clocks.add(call, number);
        self.without_library += u64::from(!call.with_library);
        self.left_open.add(call, number, &mut self.visits);
        self.borderline.add(call, number, &mut self.visits);
        self.written.add(call, number, &mut self.visits);
        self.steps.add(call, number);
        self.tests.add(call, number);
        self.unsound.add(call, number);
        self.drift.add(call, number, &mut self.visits);
    }

    /// Takes a file that is no call: what it is called, and what is wrong with it.
    pub fn not_a_call(&mut self, folder: u32, file: &str, what: WhatIsWrong, why: &str) {
        self.unsound.file(folder, file, what, why);
    }

    /// Takes files that were passed over.
    pub fn passed_over(&mut self, files: u64) {
        self.other_files += files;
    }

    /// Takes a session in which an apprentice practised at a simulated furnace: nothing of the company's is in it.
    pub fn practised(&mut self, call: &Call) {
        self.practice.push(SessionRef {
            id: call.session.to_string(),
            folder: call.folder,
        });
    }

    /// Takes a copy of a session that is counted elsewhere.
    pub fn copy(&mut self) {
        self.copies += 1;
    }

    /// What it all comes to.
    pub fn finish(mut self) -> Audit {
        let ends = self.clocks.ends();
        let visits = &Arc::new(self.visits);
        let doubted = visits.opened_before(self.clocks.earliest());
        // What takes most memory is looked at first, and let go.
        let drift = self.drift.found(visits, ends);
        let written = self.written.found(visits);
        let steps = self.steps.found(visits);
        let by_equipment = &visits.by_equipment();
        // Two at a time, each made as if alone.
        let (followed, (alike, left_open_calls, (borderline, combustion))) = both(
            || Followed::new(visits, by_equipment, self.window, ends),
            || {
                let alike = super::findings::look_alikes(visits);
                let left_open = self.left_open.found(visits, by_equipment);
                let tests = self.tests.found(visits, by_equipment);
                (alike, left_open, (self.borderline.found(visits), tests))
            },
        );
        let ((callbacks, callback_pairs), (counted, by_month)) = both(
            || (followed.counts(visits), followed.pairs(visits)),
            || {
                (
                    Counted::new(visits, &followed),
                    groups::by_month(visits, &followed),
                )
            },
        );
        let all = counted.all();
        Audit {
            caution: CAUTION,
            window_days: self.window.days,
            from: ends.from,
            until: ends.until,
            calls: visits.len() as u64,
            closed: all.closed,
            damaged: self.unsound.damaged(),
            other_files: self.other_files,
            copies: self.copies,
            practice: self.practice.len() as u64,
            from_index: 0,
            ahead: self.clocks.ahead_and_believed() as u64,
            without_library: self.without_library,
            without_equipment: (visits.len() - by_equipment.len()) as u64,
            callbacks,
            callback_pairs,
            came_again: followed.came_again(visits),
            suspected_misdiagnoses: followed.misdiagnoses(visits),
            unproven: all.unproven,
            insisted: all.insisted,
            left_open: all.left_open,
            by_technician: counted.by_technician(visits),
            by_tree: counted.by_tree(visits),
            by_part: counted.by_part(visits),
            by_month,
            learned: super::learned::learned(visits, &followed),
            condemned: super::findings::proven_and_insisted(visits),
            left_open_calls,
            borderline,
            written,
            steps,
            combustion,
            unsound: self
                .unsound
                .found(visits, followed.twins(), &doubted, &self.clocks.ahead()),
            practice_sessions: self.practice,
            drift,
            alike,
            follow_ups: followed.follow_ups(visits),
            passages: self.steps.passages(),
            folders: self.folders,
        }
    }
}

/// Works out two things at once. The one that takes more memory comes first: it stays on this thread, where memory was let go.
fn both<A, B: Send>(one: impl FnOnce() -> A, other: impl FnOnce() -> B + Send) -> (A, B) {
    thread::scope(|scope| {
        let other = scope.spawn(other);
        let one = one();
        match other.join() {
            Ok(other) => (one, other),
            Err(panic) => resume_unwind(panic),
        }
    })
}
