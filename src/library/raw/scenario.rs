//! A worked call, as it is written.

use schemars::JsonSchema;
use serde::Deserialize;

use super::super::schema::form::{
    Amounts, AnyOfName, EndName, List, Map, Must, Name, Names, Said, SeverityName, TreeName,
};
use super::super::schema::when;
use super::super::yaml::{Entries, Keyed, Node};
use super::{Text, Texts};

/// A worked call: given these answers, the walk must end so. An answer may be a list, given in turn, the last one again and
/// again.
#[derive(Debug, Deserialize, JsonSchema)]
pub(in crate::library) struct ScenarioFile {
    /// What this call shows. Example: `The board lets the valve go`
    #[schemars(with = "Must<Said>")]
    pub scenario: Option<Text>,
    /// The tree the call is walked in. Example: `no-heat`
    #[schemars(with = "Must<TreeName>")]
    pub tree: Option<Text>,
    /// What the rating plate says. Example: `{ gas: natural, input: 80000 BTU/h }`
    #[schemars(with = "Option<Map<Name, AnyOfName>>")]
    pub plate: Option<Entries<Node>>,
    /// What is measured. For a worked-out reading, give its inputs. Example: `flame_current: 3.1 uA`
    #[schemars(with = "Option<Map<Name, Amounts>>")]
    pub readings: Option<Entries<Node>>,
    /// What is seen, heard, felt or smelled. Example: `inducer: runs`
    #[schemars(with = "Option<Map<Name, Names>>")]
    pub signs: Option<Entries<Node>>,
    /// Readings, signs and plate fields that cannot be taken. Example: `[exhaust_oxygen]`
    #[schemars(with = "Option<List<Name>>")]
    pub unable: Option<Texts>,
    /// Signs that the technician cannot tell. Example: `[flame_shape]`
    #[schemars(with = "Option<List<Name>>")]
    pub unsure: Option<Texts>,
    /// How the walk must end: exactly one of `verdict`, `outcome` and `ends`, and what else must hold. Example:
    /// `{ verdict: board_drops_valve_output, put_back: [door_switch] }`
    #[schemars(required)]
    pub expect: Option<Keyed<Expect>>,
}

/// How a walk must end.
#[derive(Debug, Deserialize, JsonSchema)]
#[schemars(transform = when::one_end)]
pub(in crate::library) struct Expect {
    /// The fault it must state; of several that were noted, the last. Example: `board_drops_valve_output`
    #[schemars(with = "Option<Name>")]
    pub verdict: Option<Text>,
    /// The outcome it must return. Example: `flame_holds`
    #[schemars(with = "Option<Name>")]
    pub outcome: Option<Text>,
    /// `unproven`, where it must end without a verdict. Example: `unproven`
    #[schemars(with = "Option<EndName>")]
    pub ends: Option<Text>,
    /// Readings, signs and plate fields it must have asked for. Example: `[valve_voltage_at_dropout]`
    #[schemars(with = "Option<List<Name>>")]
    pub asked: Option<Texts>,
    /// What it must have left open at its end, to be put back; `[]` for nothing. Example: `[door_switch]`
    #[schemars(with = "Option<List<Name>>")]
    pub put_back: Option<Texts>,
    /// The severities on the job report, in order; `[]` for none. Example: `[advise, danger]`
    #[schemars(with = "Option<List<SeverityName>>")]
    pub findings: Option<Texts>,
}
