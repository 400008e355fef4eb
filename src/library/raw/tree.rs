//! A tree, as it is written.

use schemars::JsonSchema;
use serde::Deserialize;

use super::super::schema::form::{
    Band, List, Map, Minutes, Must, Name, NonEmpty, Said, StatusName, TreeName, Words,
};
use super::super::schema::shape::Leads;
use super::super::schema::when;
use super::super::yaml::{At, Entries, Keyed};
use super::{Edge, Text, Texts};

/// One tree; the file is named for it.
#[derive(Debug, Deserialize, JsonSchema)]
pub(in crate::library) struct TreeFile {
    /// The tree's name, the same as its file's. Example: `no-heat`
    #[schemars(with = "Must<TreeName>")]
    pub tree: Option<Text>,
    /// What the tree is called on a screen. Example: `The flame does not hold`
    #[schemars(with = "Must<Said>")]
    pub title: Option<Text>,
    /// How far its judgement has been reviewed; a walk shows it. Without it, a tree is a draft. Example: `field-trial`
    #[schemars(with = "Option<StatusName>")]
    pub status: Option<Text>,
    /// What the owner complains of. Without it, the tree is not offered at the start, only visited by others. Example:
    /// `Lights, then drops out before the call is satisfied`
    #[schemars(with = "Option<Words>")]
    pub complaint: Option<Text>,
    /// The outcomes that its `return` steps give back; a visit says where each of them leads. Example: `[flame_holds]`
    #[schemars(with = "Option<List<Name>>")]
    pub outcomes: Option<Texts>,
    /// The author's edition of this tree, shown with each of its questions. An approved tree is not released without it.
    /// Example: `3`
    #[schemars(with = "Option<Words>")]
    pub edition: Option<Text>,
    /// What changed last, in a line. An approved tree is not released without it. Example:
    /// `Asks for the supply before the sensor`
    #[schemars(with = "Option<Words>")]
    pub changed: Option<Text>,
    /// The step a walk begins with. Example: `flame_current`
    #[schemars(with = "Must<Name>")]
    pub start: Option<Text>,
    /// The steps, each with its name. Every cycle of them needs an edge with `at_most`. Example:
    /// `level: { observe: water_level, choices: { high: supply, low: fine } }`
    #[schemars(with = "Must<NonEmpty<Map<Name, Keyed<Step>>>>")]
    // Each in a place of its own: a step is large, and lists of them are copied as they grow.
    pub steps: Option<Entries<Box<Keyed<Step>>>>,
}

/// A step: exactly one of `measure`, `observe`, `do`, `plate`, `visit`, `verdict` and `return`, with the keys that go with
/// it.
#[derive(Debug, Deserialize, JsonSchema)]
#[schemars(transform = when::one_kind)]
pub(in crate::library) struct Step {
    /// Asks for a reading of registry/readings.yaml. A reading that still stands is not asked for again. Example:
    /// `flame_current`
    #[schemars(with = "Must<Name>")]
    pub measure: Option<Text>,
    /// Asks for a sign of registry/signs.yaml. A sign that still stands is not asked for again. Example: `flame_shape`
    #[schemars(with = "Must<Name>")]
    pub observe: Option<Text>,
    /// Work for the technician. Example: `Take out the sensor, clean the rod with a fine abrasive, refit it.`
    #[serde(rename = "do")]
    #[schemars(with = "Must<Words>")]
    pub act: Option<Text>,
    /// Asks for a field of the rating plate, from registry/plate.yaml. Example: `gas`
    #[schemars(with = "Must<Name>")]
    pub plate: Option<Text>,
    /// Walks another tree, and goes on with what it returns. Example: `airflow`
    #[schemars(with = "Must<TreeName>")]
    pub visit: Option<Text>,
    /// States a fault of registry/faults.yaml, once its proof holds. Example: `board_drops_valve_output`
    #[schemars(with = "Must<Name>")]
    pub verdict: Option<Text>,
    /// Ends this tree with one of its outcomes. Example: `flame_holds`
    #[serde(rename = "return")]
    #[schemars(with = "Must<Name>")]
    pub back: Option<Text>,
    /// Where each band of values leads. The bands cover every value once: `below B`, `at most B`, `above B`,
    /// `at least B`, `A to B`, or several joined by a comma. Write them as a block, a line each. Example:
    /// `below 0.5 uA: sensor_ground`
    #[schemars(with = "Option<Map<Band, Leads>>")]
    pub bands: Option<Entries<Edge>>,
    /// Where each value of the sign or plate field leads. Example: `{ blue_drawn_in: done, yellow_lazy: primary_air }`
    #[schemars(with = "Option<Map<Name, Leads>>")]
    pub choices: Option<Entries<Edge>>,
    /// The step that comes next, whatever the answer. Example: `flame_current`
    pub go: Option<Edge>,
    /// Where to go when it cannot be taken; without it, the walk ends unproven. Example: `no_meter`
    pub unable: Option<Edge>,
    /// Where to go when the technician cannot tell; without it, the walk ends unproven. Example: `rollout`
    pub unsure: Option<Edge>,
    /// Where each outcome of the visited tree leads, all of them. Example: `{ airflow_in_range: rise }`
    #[schemars(with = "Option<Map<Name, Leads>>")]
    pub returns: Option<Entries<Edge>>,
    /// Where to go on after a verdict of the visited tree, which is then noted; without it, a verdict ends the walk.
    /// Example: `next_check`
    pub on_verdict: Option<Edge>,
    /// How to take it at this step, beside what the registry says. Example: `At the board's own pin, not at the plug.`
    #[schemars(with = "Option<Words>")]
    pub how: Option<Text>,
    /// Readings, signs and plate fields that this work has changed, so that what was taken before no longer counts.
    /// Example: `[flame_current]`
    #[schemars(with = "Option<List<Name>>")]
    pub voids: Option<Texts>,
    /// What this work opens, by the names in registry/restores.yaml; each must be put back. Example: `[door_switch]`
    #[schemars(with = "Option<List<Name>>")]
    pub leaves: Option<Texts>,
    /// What this work puts back, by the names in registry/restores.yaml. Example: `[manifold_tap]`
    #[schemars(with = "Option<List<Name>>")]
    pub restores: Option<Texts>,
    /// What the verdict rests on, in a sentence. Example: `The valve has its voltage, and no gas comes through it.`
    #[schemars(with = "Must<Said>")]
    pub because: Option<Text>,
    /// What else to tell or to do. Example: `Look for what overheated it before a new one goes in.`
    #[schemars(with = "Option<Words>")]
    pub advice: Option<Text>,
    /// What this step is called on a screen. Example: `The flame signal, with the burners lit`
    #[schemars(with = "Option<Words>")]
    pub title: Option<Text>,
    /// Why this is asked or done now. Example: `A board that cannot see the flame closes the valve on a good flame.`
    #[schemars(with = "Option<Words>")]
    pub why: Option<Text>,
    /// Cautions that are shown with this step, by their names in registry/cautions.yaml. Example: `[hot_surface]`
    #[schemars(with = "Option<List<Name>>")]
    pub cautions: Option<Texts>,
    /// Where its bounds come from, by the name in registry/sources.yaml. Example: `common_practice`
    #[schemars(with = "Option<Name>")]
    pub source: Option<Text>,
    /// How many minutes it takes. Example: `4`
    #[schemars(with = "Option<Minutes>")]
    pub minutes: Option<At<f64>>,
}
