//! From files to what they say: which file is which, and each read on its own.

use super::file_kind::FileKind;
use super::problem::{Problem, ProblemKind};
use super::raw::{
    CautionsFile, FaultsFile, LibraryFile, PartsFile, PlateFile, ReadingsFile, RestoresFile, ScenarioFile,
    SignsFile, SourcesFile, TreeFile,
};
use super::yaml::{Keyed, read};
use crate::source::{FileId, Files, SourceFile, Span, Unread, nearest};

/// A file's content with the file it came from, layer after layer; without those that are not there or could not be read.
pub(super) type From<T> = Vec<(FileId, Keyed<T>)>;

/// Everything the files say.
#[derive(Default)]
pub(super) struct Raw {
    pub library: From<LibraryFile>,
    pub plate: From<PlateFile>,
    pub readings: From<ReadingsFile>,
    pub signs: From<SignsFile>,
    pub parts: From<PartsFile>,
    pub faults: From<FaultsFile>,
    pub restores: From<RestoresFile>,
    pub cautions: From<CautionsFile>,
    pub sources: From<SourcesFile>,
    /// With the stem of the file's name.
    pub trees: Vec<(FileId, String, Keyed<TreeFile>)>,
    /// With the stem of the file's name.
    pub scenarios: Vec<(FileId, String, Keyed<ScenarioFile>)>,
}

/// The one file that every library has.
const ABOUT: &str = "library.yaml";

/// The files with a place for what is wrong about `library.yaml` where a library has none. An overlay needs none.
pub(super) fn with_place_for_about(files: Files) -> Files {
    let has = |(_, file): (FileId, &SourceFile)| file.layer().number() == 0 && file.name() == ABOUT;
    if files.iter().any(has) {
        return files;
    }
    let why = Unread {
        message: "the library has no `library.yaml`".to_owned(),
        help: "write one, with at least a line `library: NAME`; its title, edition, gate and dangers stand there"
            .to_owned(),
    };
    files.with(SourceFile::unread(ABOUT, "", why))
}

/// Reads every file.
pub(super) fn read_all(files: &Files) -> (Raw, Vec<Problem>) {
    let mut raw = Raw::default();
    let mut problems = Vec::new();
    for (id, file) in files.iter() {
        read_one(&mut raw, &mut problems, id, file);
    }
    (raw, problems)
}

fn read_one(raw: &mut Raw, problems: &mut Vec<Problem>, id: FileId, file: &SourceFile) {
    let mut wrong = |span, message: String, help: String| {
        let kind = ProblemKind::Malformed { message, help };
        problems.push(Problem { span, kind });
    };
    macro_rules! read_into {
        ($slot:expr) => {
            match read(id, file) {
                Ok(value) => $slot.push((id, value)),
                Err(error) => wrong(error.span, error.message, error.help),
            }
        };
    }
    let name = file.name();
    let stem = stem(name);
    if let Some(unread) = file.why_unread() {
        let end = file.text().len() as u32;
        let span = Span {
            file: id,
            start: end,
            end,
        };
        return wrong(span, unread.message.clone(), unread.help.clone());
    }
    let Some(kind) = FileKind::of(name) else {
        let given = name.trim_start_matches("registry/");
        let registries = FileKind::registries();
        let help = match nearest(given, registries.iter().map(String::as_str)) {
            Some(meant) => format!("did you mean `registry/{meant}`?"),
            None => format!("the registries are {}", registries.join(", ")),
        };
        let top = Span {
            file: id,
            start: 0,
            end: 0,
        };
        wrong(top, format!("`{given}` is no registry of the format"), help);
        return;
    };
    match kind {
        FileKind::Library => read_into!(raw.library),
        FileKind::Plate => read_into!(raw.plate),
        FileKind::Readings => read_into!(raw.readings),
        FileKind::Signs => read_into!(raw.signs),
        FileKind::Parts => read_into!(raw.parts),
        FileKind::Faults => read_into!(raw.faults),
        FileKind::Restores => read_into!(raw.restores),
        FileKind::Cautions => read_into!(raw.cautions),
        FileKind::Sources => read_into!(raw.sources),
        FileKind::Scenario => match read(id, file) {
            Ok(value) => raw.scenarios.push((id, stem, value)),
            Err(error) => wrong(error.span, error.message, error.help),
        },
        FileKind::Tree => match read(id, file) {
            Ok(value) => raw.trees.push((id, stem, value)),
            Err(error) => wrong(error.span, error.message, error.help),
        },
    }
}

/// The last part of a name, without its ending.
fn stem(name: &str) -> String {
    let last = name.rsplit('/').next().unwrap_or(name);
    last.strip_suffix(".yaml").unwrap_or(last).to_owned()
}
