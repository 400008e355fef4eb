//! The registries, as they are written.

use schemars::JsonSchema;
use serde::Deserialize;

use super::super::schema::form::{
    AccuracyWords, List, Map, Minutes, Must, Name, NonEmpty, Plausible, RemedyWords, Said, SourceKind,
    UnitSpelling, Weight, Words,
};
use super::super::schema::formula::Formula;
use super::super::schema::proof::Line;
use super::super::schema::when;
use super::super::yaml::{At, Entries, Keyed, Node};
use super::{Text, Texts};

/// The fields of a rating plate, and the order among them. A field is asked for when it is first needed.
#[derive(Debug, Default, Deserialize, JsonSchema)]
pub(in crate::library) struct PlateFile {
    /// The fields, each with its name. A band may lean on one: `below 90 % of plate.input`. Example:
    /// `rise_max: { title: Highest temperature rise, unit: °F, difference: true, plausible: 40 °F to 100 °F }`
    pub fields: Option<Entries<Keyed<Field>>>,
    /// Lists of fields of which each is smaller than the next on every plate; a plate that breaks this is refused.
    /// Example: `- [rise_min, rise_max]`
    #[schemars(with = "Option<List<List<Name>>>")]
    pub order: Option<Vec<Texts>>,
}

/// A field of the rating plate: a number with `unit` and `plausible`, or one of several `choices`.
#[derive(Debug, Deserialize, JsonSchema)]
#[schemars(transform = when::choices_or_a_number)]
pub(in crate::library) struct Field {
    /// What the technician is asked for. Example: `Input rate on the rating plate`
    #[schemars(with = "Must<Said>")]
    pub title: Option<Text>,
    /// What may stand on the plate, each value with what the technician reads. Example:
    /// `{ natural: Natural gas, propane: Propane }`
    #[schemars(with = "Option<Map<Name, Words>>")]
    pub choices: Option<Entries<Text>>,
    /// The unit the number is asked in. Quote a bare percent sign, or write `percent`. Example: `BTU/h`
    #[schemars(with = "Option<UnitSpelling>")]
    pub unit: Option<Text>,
    /// true for a difference of temperatures, which is converted without the 32 °F offset. Example: `true`
    pub difference: Option<bool>,
    /// The range that is believed at once; outside it, the number is asked for again. Example:
    /// `20000 BTU/h to 250000 BTU/h`
    #[schemars(with = "Option<Plausible>")]
    pub plausible: Option<Text>,
    /// Where to find it on the plate. Example: `Inside the lower door, third line of the label.`
    #[schemars(with = "Option<Words>")]
    pub how: Option<Text>,
}

/// Every number that can be measured or worked out.
#[derive(Debug, Default, Deserialize, JsonSchema)]
pub(in crate::library) struct ReadingsFile {
    /// The readings, each with its name. A reading and a sign do not share a name. Example:
    /// `supply_voltage: { title: Voltage at the outlet, unit: V, plausible: 0 V to 250 V, accuracy: 1 % + 0.5 V }`
    pub readings: Option<Entries<Keyed<Reading>>>,
}

/// A reading: measured, with `plausible` and `accuracy`, or `worked_out` from others.
#[derive(Debug, Deserialize, JsonSchema)]
#[schemars(transform = when::measured_or_worked_out)]
pub(in crate::library) struct Reading {
    /// What is measured, and where. Example: `Voltage across the gas-valve terminals`
    #[schemars(with = "Must<Said>")]
    pub title: Option<Text>,
    /// The unit it is asked in; other units of its kind are taken as well. `number` for a count. Quote a bare percent
    /// sign, or write `percent`. Example: `V`
    #[schemars(with = "Must<UnitSpelling>")]
    pub unit: Option<Text>,
    /// true for a difference of temperatures, which is converted without the 32 °F offset. Example: `true`
    pub difference: Option<bool>,
    /// The range that is believed at once; outside it, a reading is asked for again before it is taken. Example:
    /// `0 V to 150 V`
    #[schemars(with = "Option<Plausible>")]
    pub plausible: Option<Text>,
    /// How far the usual meter may be off: a share of the reading, an amount, or both. A reading this close to a bound is
    /// borderline, and completes no proof. Example: `1 % + 0.3 V`
    #[schemars(with = "Option<AccuracyWords>")]
    pub accuracy: Option<Text>,
    /// How it follows from other readings, by a formula of the program. Its arguments are readings, `plate.FIELD`s or
    /// quantities. Example: `{ formula: temperature_rise, supply: supply_air, return: return_air }`
    #[schemars(with = "Option<Formula>")]
    pub worked_out: Option<Entries<Text>>,
    /// How many minutes it takes. Example: `4`
    #[schemars(with = "Option<Minutes>")]
    pub minutes: Option<At<f64>>,
    /// Cautions that are shown with it, by their names in registry/cautions.yaml. Example: `[line_voltage, gas]`
    #[schemars(with = "Option<List<Name>>")]
    pub cautions: Option<Texts>,
    /// What taking it opens, by the names in registry/restores.yaml; each must be put back before the call is closed.
    /// Example: `[door_switch]`
    #[schemars(with = "Option<List<Name>>")]
    pub leaves: Option<Texts>,
    /// Where its thresholds come from, by the name in registry/sources.yaml. Example: `common_practice`
    #[schemars(with = "Option<Name>")]
    pub source: Option<Text>,
    /// How to take it, in the order of the work. Example: `Meter on AC volts, proven on a live source first.`
    #[schemars(with = "Option<Words>")]
    pub how: Option<Text>,
}

/// Everything seen, heard, felt or smelled.
#[derive(Debug, Default, Deserialize, JsonSchema)]
pub(in crate::library) struct SignsFile {
    /// The signs, each with its name. A reading and a sign do not share a name. Example:
    /// `water_level: { ask: How high does the water stand?, values: { high: Above the float, low: Below it } }`
    pub signs: Option<Entries<Keyed<Sign>>>,
}

/// A sign: a question to eyes, ears, hands or nose, with every answer to it.
#[derive(Debug, Deserialize, JsonSchema)]
pub(in crate::library) struct Sign {
    /// What the technician is asked. Example: `What do the burner flames do at full fire?`
    #[schemars(with = "Must<Said>")]
    pub ask: Option<Text>,
    /// Every answer: its name, and what the technician reads. Example:
    /// `{ blue_drawn_in: "Steady and blue, drawn into every tube", yellow_lazy: "Yellow tips, lazy" }`
    #[schemars(with = "Must<NonEmpty<Map<Name, Words>>>")]
    pub values: Option<Entries<Text>>,
    /// How many minutes it takes. Example: `1`
    #[schemars(with = "Option<Minutes>")]
    pub minutes: Option<At<f64>>,
    /// Cautions that are shown with it, by their names in registry/cautions.yaml. Example: `[hot_surface]`
    #[schemars(with = "Option<List<Name>>")]
    pub cautions: Option<Texts>,
    /// What looking opens, by the names in registry/restores.yaml; each must be put back before the call is closed.
    /// Example: `[door_switch]`
    #[schemars(with = "Option<List<Name>>")]
    pub leaves: Option<Texts>,
    /// Where it comes from, by the name in registry/sources.yaml. Example: `common_practice`
    #[schemars(with = "Option<Name>")]
    pub source: Option<Text>,
    /// How to look, in the order of the work. Example: `Door on, window clean, two minutes after ignition.`
    #[schemars(with = "Option<Words>")]
    pub how: Option<Text>,
}

/// Replaceable parts, each with the proof that condemns it.
#[derive(Debug, Default, Deserialize, JsonSchema)]
pub(in crate::library) struct PartsFile {
    /// The parts, each with its name. Example:
    /// `float_switch: { title: Float switch, proof: [{ pump_supply: 108 V to 132 V }, { float_resistance: above 100 ohm }] }`
    pub parts: Option<Entries<Keyed<Part>>>,
}

/// A part that can be replaced.
#[derive(Debug, Deserialize, JsonSchema)]
pub(in crate::library) struct Part {
    /// What the part is called. Example: `Gas valve`
    #[schemars(with = "Must<Said>")]
    pub title: Option<Text>,
    /// What must hold, every line of it and measured on this call, before the part may be condemned. A line names a
    /// reading with a band, a sign with a value or a list of values, or a plate field; `any` holds maps of which one is
    /// enough. Example: `- valve_voltage: 20.4 V to 30 V`
    #[schemars(with = "Must<NonEmpty<List<Line>>>")]
    pub proof: Option<Proof>,
}

/// A proof: a list of maps, each with one claim or several, or with alternatives.
pub(in crate::library) type Proof = Vec<At<Entries<Node>>>;

/// What a walk can end in, each with its remedy.
#[derive(Debug, Default, Deserialize, JsonSchema)]
pub(in crate::library) struct FaultsFile {
    /// The faults, each with its name. Example:
    /// `filter_loaded: { title: Filter loaded, remedy: correct, text: Replace the filter }`
    pub faults: Option<Entries<Keyed<Fault>>>,
}

/// A fault: what a verdict states.
#[derive(Debug, Deserialize, JsonSchema)]
pub(in crate::library) struct Fault {
    /// What is wrong. Example: `Control board lets its gas-valve output go during the call`
    #[schemars(with = "Must<Said>")]
    pub title: Option<Text>,
    /// What is done about it: `replace PART`, `correct`, `shut_down`, `refer` or `none`. What replaces a part needs that
    /// part's proof. Example: `replace control_board`
    #[schemars(with = "Must<RemedyWords>")]
    pub remedy: Option<Text>,
    /// What the technician should do or say. Example: `Call the gas supplier`
    #[schemars(with = "Option<Words>")]
    pub text: Option<Text>,
    /// What must hold for this verdict beside its part's proof. Example: `- co_air_free: above 400 ppm`
    #[schemars(with = "Option<List<Line>>")]
    pub proof: Option<Proof>,
    /// Parts that no field measurement tells apart; the verdict then says that it is one of these. Example:
    /// `[blower_motor, blower_module]`
    #[schemars(with = "Option<List<Name>>")]
    pub group: Option<Texts>,
    /// How often it is met, relative to other faults. Example: `3`
    #[schemars(with = "Option<Weight>")]
    pub weight: Option<At<f64>>,
}

/// What must be put back before leaving.
#[derive(Debug, Default, Deserialize, JsonSchema)]
pub(in crate::library) struct RestoresFile {
    /// Each thing with its name, and what the technician does to put it back. Example:
    /// `door_switch: Release the door switch; open the door and see that it stops`
    #[schemars(with = "Option<Map<Name, Words>>")]
    pub restores: Option<Entries<Text>>,
}

/// Hazards, and the usual caution for each.
#[derive(Debug, Default, Deserialize, JsonSchema)]
pub(in crate::library) struct CautionsFile {
    /// The cautions, each with its name. Example: `hot_surface: { text: Hot surfaces. Let it cool., source: practice }`
    pub cautions: Option<Entries<Keyed<Caution>>>,
}

/// A caution, shown with every step that names its hazard.
#[derive(Debug, Deserialize, JsonSchema)]
pub(in crate::library) struct Caution {
    /// What the technician reads. Example: `Line voltage. Prove the meter on a live source first.`
    #[schemars(with = "Must<Said>")]
    pub text: Option<Text>,
    /// Where it comes from, by the name in registry/sources.yaml. Example: `common_practice`
    #[schemars(with = "Option<Name>")]
    pub source: Option<Text>,
}

/// Where thresholds come from.
#[derive(Debug, Default, Deserialize, JsonSchema)]
pub(in crate::library) struct SourcesFile {
    /// The sources, each with its name. Example: `practice: { title: Common trade practice, kind: practice }`
    pub sources: Option<Entries<Keyed<Source>>>,
}

/// A source.
#[derive(Debug, Deserialize, JsonSchema)]
pub(in crate::library) struct Source {
    /// What it is called. Example: `Common trade practice`
    #[schemars(with = "Must<Said>")]
    pub title: Option<Text>,
    /// Where in it. Example: `9.3.2`
    #[schemars(with = "Option<Words>")]
    pub section: Option<Text>,
    /// What kind of source it is: `published`, `practice`, or another word. Example: `published`
    #[schemars(with = "Must<SourceKind>")]
    pub kind: Option<Text>,
}
