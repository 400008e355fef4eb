//! A session folder of its own for each test, and the program run on it.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Output, Stdio};

use tempfile::TempDir;

use super::wait::until;

/// The program under test.
pub const PROGRAM: &str = env!("CARGO_BIN_EXE_proofwalk");

/// A folder that is removed after the test; the sessions are in `sessions`.
pub struct Scene {
    pub temp: TempDir,
}

/// What a run of the program said.
#[derive(Debug)]
pub struct Said {
    pub code: Option<i32>,
    pub out: String,
    pub err: String,
}

impl From<Output> for Said {
    fn from(output: Output) -> Self {
        Self {
            code: output.status.code(),
            out: String::from_utf8(output.stdout).expect("standard output is text"),
            err: String::from_utf8(output.stderr).expect("standard error is text"),
        }
    }
}

impl Said {
    /// Stops the test where the exit code is another.
    #[track_caller]
    pub fn exits(self, code: i32) -> Self {
        assert_eq!(self.code, Some(code), "{self:#?}");
        self
    }
}

pub fn scene() -> Scene {
    let temp = tempfile::tempdir().unwrap();
    Scene { temp }
}

/// A command that sees nothing of who runs the tests, nor of how.
pub fn program() -> Command {
    let mut command = Command::new(PROGRAM);
    let path = std::env::var_os("PATH").unwrap_or_default();
    command
        .env_clear()
        .env("PATH", path)
        .env("LANG", "C.UTF-8")
        .stdin(Stdio::null());
    command
}

/// The root of the project.
pub fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

/// A scenario of the built-in library.
pub fn scenario(name: &str) -> String {
    let path = root().join("trees/scenarios").join(name).with_extension("yaml");
    path.to_str().unwrap().to_owned()
}

/// Runs the program where it keeps no sessions.
pub fn run(arguments: &[&str]) -> Said {
    program().args(arguments).output().unwrap().into()
}

impl Scene {
    pub fn sessions(&self) -> PathBuf {
        self.temp.path().join("sessions")
    }

    /// The program with this scene's sessions.
    pub fn command(&self, arguments: &[&str]) -> Command {
        let mut command = program();
        command.args(arguments).arg("--sessions").arg(self.sessions());
        command
    }

    pub fn run(&self, arguments: &[&str]) -> Said {
        self.command(arguments).output().unwrap().into()
    }

    /// Writes a file beside the sessions and gives its path.
    pub fn write(&self, name: &str, text: &str) -> String {
        let path = self.temp.path().join(name);
        fs::create_dir_all(path.parent().unwrap()).unwrap();
        fs::write(&path, text).unwrap();
        path.to_str().unwrap().to_owned()
    }

    /// The ids of all sessions, oldest first.
    pub fn ids(&self) -> Vec<String> {
        let Ok(entries) = fs::read_dir(self.sessions()) else {
            return Vec::new();
        };
        let names = entries.map(|entry| entry.unwrap().file_name().into_string().unwrap());
        let mut ids: Vec<String> = names
            .filter_map(|name| name.strip_suffix(".jsonl").map(str::to_owned))
            .collect();
        ids.sort();
        ids
    }

    /// The one session there is.
    #[track_caller]
    pub fn id(&self) -> String {
        let mut ids = self.ids();
        assert_eq!(ids.len(), 1, "{ids:?}");
        ids.remove(0)
    }

    pub fn file(&self, id: &str) -> PathBuf {
        self.sessions().join(format!("{id}.jsonl"))
    }

    /// Whether the program that walked the session has ended, or ends soon.
    pub fn is_let_go(&self, id: &str) -> bool {
        let file = fs::File::open(self.file(id)).unwrap();
        until(|| file.try_lock().ok()).is_some()
    }

    /// Runs `verify` on the session's file.
    pub fn verify(&self, id: &str) -> Said {
        run(&["verify", self.file(id).to_str().unwrap()])
    }

    /// Walks a scenario of the built-in library to its end: a closed session.
    #[track_caller]
    pub fn closed(&self) -> String {
        let before = self.ids();
        self.run(&[
            "walk",
            "no-heat",
            "--answers",
            &scenario("nothing-found-runs-through"),
        ])
        .exits(0);
        self.newest(&before)
    }

    /// Walks with answers that do not suffice: a session that is left open.
    #[track_caller]
    pub fn left_open(&self) -> String {
        let before = self.ids();
        let answers = self.write("half.yaml", HALF);
        self.run(&["walk", "no-heat", "--answers", &answers]).exits(1);
        self.newest(&before)
    }

    fn newest(&self, before: &[String]) -> String {
        self.ids()
            .into_iter()
            .find(|id| !before.contains(id))
            .expect("there is a new session")
    }
}

/// Answers that stop before the flame is looked at.
pub const HALF: &str = "\
scenario: Half a call
tree: no-heat
signs: { furnace_kind: one_stage, inducer: runs, igniter_in_warm_up: glows }
expect: { verdict: nothing_found }
";
