//! The kinds of files that a library has, and how a file's name says which it is.

/// A kind of file.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FileKind {
    /// `library.yaml`
    Library,
    /// `registry/plate.yaml`
    Plate,
    /// `registry/readings.yaml`
    Readings,
    /// `registry/signs.yaml`
    Signs,
    /// `registry/parts.yaml`
    Parts,
    /// `registry/faults.yaml`
    Faults,
    /// `registry/restores.yaml`
    Restores,
    /// `registry/cautions.yaml`
    Cautions,
    /// `registry/sources.yaml`
    Sources,
    /// Every other file: one tree.
    Tree,
    /// `scenarios/*.yaml`
    Scenario,
}

impl FileKind {
    /// Every kind.
    pub const ALL: [Self; 11] = [
        Self::Library,
        Self::Plate,
        Self::Readings,
        Self::Signs,
        Self::Parts,
        Self::Faults,
        Self::Restores,
        Self::Cautions,
        Self::Sources,
        Self::Tree,
        Self::Scenario,
    ];

    /// The registries, in the order of the format page.
    const REGISTRIES: [Self; 8] = [
        Self::Plate,
        Self::Readings,
        Self::Signs,
        Self::Parts,
        Self::Faults,
        Self::Restores,
        Self::Cautions,
        Self::Sources,
    ];

    /// What it is called, in one word.
    pub fn name(self) -> &'static str {
        match self {
            Self::Library => "library",
            Self::Plate => "plate",
            Self::Readings => "readings",
            Self::Signs => "signs",
            Self::Parts => "parts",
            Self::Faults => "faults",
            Self::Restores => "restores",
            Self::Cautions => "cautions",
            Self::Sources => "sources",
            Self::Tree => "tree",
            Self::Scenario => "scenario",
        }
    }

    /// The kind of a name.
    pub fn named(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|kind| kind.name() == name)
    }

    /// Which files are of this kind.
    pub fn files(self) -> String {
        match self {
            Self::Library => "library.yaml".to_owned(),
            Self::Tree => "every other *.yaml, a tree a file".to_owned(),
            Self::Scenario => "scenarios/*.yaml".to_owned(),
            registry => format!("registry/{}.yaml", registry.name()),
        }
    }

    /// The kind of a file, by its name inside the library's folder; none for a stranger among the registries.
    pub fn of(file: &str) -> Option<Self> {
        if file == "library.yaml" {
            return Some(Self::Library);
        }
        if let Some(registry) = file.strip_prefix("registry/") {
            let stem = registry.strip_suffix(".yaml")?;
            return Self::REGISTRIES.into_iter().find(|kind| kind.name() == stem);
        }
        Some(if file.starts_with("scenarios/") {
            Self::Scenario
        } else {
            Self::Tree
        })
    }

    /// The names of the registries' files.
    pub(super) fn registries() -> Vec<String> {
        Self::REGISTRIES
            .map(|kind| format!("{}.yaml", kind.name()))
            .into()
    }
}
