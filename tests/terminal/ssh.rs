//! A call over SSH, and a connection that breaks.

use std::fs::{self, File};
use std::net::{TcpListener, TcpStream};
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};

use portable_pty::CommandBuilder;

use crate::common::call::{first_number_after, turns};
use crate::common::scene::{PROGRAM, Said, Scene, scene};
use crate::common::wait::until;
use crate::pty::Pty;
use crate::seat::{Terminal, answers, is_asked, leaves_closed, shows};
use crate::tools::tool;

/// A server on this machine alone, with keys of its own.
struct Server {
    child: Child,
    port: u16,
    folder: PathBuf,
}

impl Server {
    /// None where OpenSSH is not installed.
    fn start(scene: &Scene) -> Option<Self> {
        let (sshd, keygen) = (tool("sshd")?, tool("ssh-keygen")?);
        tool("ssh")?;
        if rustix::process::geteuid().is_root() {
            // The server drops its rights in there, and starts nowhere else.
            fs::create_dir_all("/run/sshd").unwrap();
        }
        let folder = scene.temp.path().to_owned();
        for name in ["host", "own"] {
            let made = Command::new(&keygen)
                .args(["-q", "-t", "ed25519", "-N", "", "-f"])
                .arg(folder.join(name))
                .stdin(Stdio::null())
                .status();
            assert!(made.unwrap().success());
        }
        let port = free_port();
        let path = |name: &str| folder.join(name).display().to_string();
        let config = format!(
            "Port {port}\nListenAddress 127.0.0.1\nHostKey {}\nAuthorizedKeysFile {}\nPidFile none\nUsePAM no\n\
             StrictModes no\nPasswordAuthentication no\nKbdInteractiveAuthentication no\n\
             PermitRootLogin prohibit-password\nLogLevel ERROR\n",
            path("host"),
            path("own.pub"),
        );
        let config = scene.write("sshd.conf", &config);
        let log = File::create(folder.join("sshd.log")).unwrap();
        let child = Command::new(sshd)
            .args(["-D", "-e", "-f", &config])
            .stdin(Stdio::null())
            .stderr(log)
            .spawn()
            .unwrap();
        let server = Self { child, port, folder };
        let up = until(|| TcpStream::connect(("127.0.0.1", port)).ok());
        assert!(up.is_some(), "{}", server.log());
        Some(server)
    }

    fn log(&self) -> String {
        fs::read_to_string(self.folder.join("sshd.log")).unwrap_or_default()
    }

    fn arguments(&self, terminal: bool) -> Vec<String> {
        let known = format!("UserKnownHostsFile={}", self.folder.join("known").display());
        let options = [
            "StrictHostKeyChecking=accept-new",
            "BatchMode=yes",
            "IdentitiesOnly=yes",
            "LogLevel=ERROR",
            &known,
        ];
        let mut arguments = vec![
            "-F".to_owned(),
            "/dev/null".to_owned(),
            "-p".to_owned(),
            self.port.to_string(),
        ];
        arguments.extend(["-i".to_owned(), self.folder.join("own").display().to_string()]);
        arguments.extend(
            options
                .iter()
                .flat_map(|option| ["-o".to_owned(), (*option).to_owned()]),
        );
        arguments.extend(terminal.then(|| "-tt".to_owned()));
        arguments.push("127.0.0.1".to_owned());
        arguments
    }

    /// The program at the other end, in a terminal of this one.
    fn terminal(&self, scene: &Scene, arguments: &str) -> Pty {
        let mut command = CommandBuilder::new("ssh");
        command.args(self.arguments(true));
        command.arg(remote(&scene.sessions(), arguments));
        Pty::start(command, 80, 24)
    }

    fn run(&self, scene: &Scene, arguments: &str) -> Said {
        let mut command = Command::new("ssh");
        command
            .args(self.arguments(false))
            .arg(remote(&scene.sessions(), arguments));
        command.stdin(Stdio::null()).output().unwrap().into()
    }
}

impl Drop for Server {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

fn remote(sessions: &Path, arguments: &str) -> String {
    format!(
        "LANG=C.UTF-8 {PROGRAM} {arguments} --sessions {}",
        sessions.display()
    )
}

fn free_port() -> u16 {
    TcpListener::bind("127.0.0.1:0")
        .unwrap()
        .local_addr()
        .unwrap()
        .port()
}

#[test]
fn a_connection_that_breaks_in_the_middle_of_an_answer_loses_only_that() {
    let scene = scene();
    let Some(server) = Server::start(&scene) else {
        return;
    };
    let at = first_number_after(turns(), 8);
    let mut terminal = server.terminal(&scene, "walk no-heat");
    answers(&mut terminal, &scene, &turns()[..at]);
    is_asked(&terminal, &turns()[at]);
    terminal.send("98.7");
    shows(&terminal, "98.7");
    terminal.child.kill().unwrap();
    terminal.child.wait().unwrap();

    let id = scene.id();
    let file = File::open(scene.file(&id)).unwrap();
    let let_go = until(|| file.try_lock().ok());
    assert!(
        let_go.is_some(),
        "the program at the other end has ended\n{}",
        server.log()
    );
    drop(file);
    let verified = scene.verify(&id).exits(0);
    assert!(verified.out.contains("whole, open"), "{}", verified.out);
    assert!(!fs::read_to_string(scene.file(&id)).unwrap().contains("98.7"));

    let mut terminal = server.terminal(&scene, "resume");
    is_asked(&terminal, &turns()[at]);
    assert!(!terminal.screen().contains("98.7"), "{}", terminal.screen());
    answers(&mut terminal, &scene, &turns()[at..]);
    leaves_closed(&mut terminal);
    assert_eq!(terminal.ends(), 0);
    assert!(scene.verify(&id).exits(0).out.contains("whole, closed"));
    let report = server.run(&scene, &format!("report {id}")).exits(0);
    assert!(report.out.contains("Verdict, proven"), "{}", report.out);
}

#[test]
fn without_a_terminal_at_the_other_end_there_is_advice() {
    let scene = scene();
    let Some(server) = Server::start(&scene) else {
        return;
    };
    let said = server.run(&scene, "").exits(2);
    assert!(
        said.err.contains("proofwalk walk no-heat --plain"),
        "{}",
        said.err
    );
}
