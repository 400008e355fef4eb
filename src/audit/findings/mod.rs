//! What an audit finds, one file each. Every finding names its sessions.

mod alike;
mod borderline;
mod callbacks;
mod combustion;
mod condemned;
mod drift;
mod expected;
mod left_open;
mod misdiagnosis;
mod same_visit;
mod steps;
mod unsound;
mod written;

pub use alike::{Alike, LookAlikes, Spelling};
pub use borderline::Borderline;
pub use callbacks::Pair;
pub use combustion::{Combustion, NoTest};
pub use condemned::{Condemned, Insisted};
pub use drift::Drift;
pub use left_open::{LeftOpen, WhyOpen};
pub use misdiagnosis::Misdiagnosis;
pub use steps::Step;
pub use unsound::{Unsound, WhatIsWrong};
pub use written::{Digits, Hurried, Repeated, Written};

pub(super) use alike::look_alikes;
pub(super) use borderline::Borderlines;
pub(super) use callbacks::{Fate, Followed};
pub(super) use combustion::Tests;
pub(super) use condemned::proven_and_insisted;
pub(super) use drift::Drifts;
pub(super) use left_open::LeftOpens;
pub(super) use steps::Steps;
pub(super) use unsound::Unsounds;
pub(super) use written::Writings;
