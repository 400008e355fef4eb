//! The files as they are written, before any name is looked up.
//!
//! Every key is optional here: what is missing is reported together with all else, not by the first file that lacks it.
//! What an author's editor is told of a key stands beside it: its description is the doc comment, its form and whether it
//! is required are the type after `with`, see [`schema`](super::schema).

mod edge;
mod registries;
mod scenario;
mod tree;

use schemars::JsonSchema;
use serde::Deserialize;

pub(super) use edge::{Edge, EdgeForm, EdgeMap, Finding};
pub(super) use registries::{
    Caution, CautionsFile, Fault, FaultsFile, Field, Part, PartsFile, PlateFile, Proof, Reading,
    ReadingsFile, RestoresFile, Sign, SignsFile, Source, SourcesFile,
};
pub(super) use scenario::{Expect, ScenarioFile};
pub(super) use tree::{Step, TreeFile};

use super::schema::form::{Anything, List, Map, Name, Said, TreeName, Words};
use super::yaml::{At, Entries};

pub(super) type Text = At<String>;
pub(super) type Texts = Vec<Text>;

/// What the library is called, where its calls begin, and what is offered from every step.
#[derive(Debug, Default, Deserialize, JsonSchema)]
pub(super) struct LibraryFile {
    /// The library's name, which sessions record. Every library needs one; an overlay may go by its folder. Example: `sump-pump`
    #[schemars(with = "Option<Said>")]
    pub library: Option<Text>,
    /// Which edition of the library this is, which sessions record. Example: `2026.1`
    #[schemars(with = "Option<Words>")]
    pub edition: Option<Text>,
    /// What the library is called on a screen. Example: `Sump pumps in basements`
    #[schemars(with = "Option<Words>")]
    pub title: Option<Text>,
    /// Cautions that always stand, by their names in registry/cautions.yaml. Example: `[qualified_person]`
    #[schemars(with = "Option<List<Name>>")]
    pub standing_cautions: Option<Texts>,
    /// A tree that is walked before every complaint. Whatever it returns, the call goes on; what is not safe must end in a
    /// verdict. Example: `safe-to-start`
    #[schemars(with = "Option<TreeName>")]
    pub gate: Option<Text>,
    /// A tree by which work is proven: whoever ends a call with something to replace or to set right is told to walk it once that is
    /// done. It needs no complaint. Example: `prove-it`
    #[schemars(with = "Option<TreeName>")]
    pub after_work: Option<Text>,
    /// Dangers that are offered from every step: what the technician reads, and the tree it leads to. A verdict in that
    /// tree ends the call; a return goes back to the question, with every reading and sign void. Example:
    /// `Someone got a shock: electric-shock`
    #[schemars(with = "Option<Map<Anything, TreeName>>")]
    pub dangers: Option<Entries<Text>>,
}
