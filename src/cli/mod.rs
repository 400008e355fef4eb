//! The commands, one file each: the edge where the house meets files, clocks and terminals.

mod arguments;
mod audit;
mod check;
mod desk;
mod failure;
mod formula;
mod history;
mod home;
mod library;
mod look;
mod message;
mod misplaced;
mod pack;
mod picture;
mod practice;
mod rehearse;
mod replay;
mod report;
mod resume;
mod retrace;
mod schema;
mod session;
mod sessions;
mod verify;
mod walk;
mod watch;

use std::io::{self, BufWriter, IsTerminal, Write};
use std::path::{Path, PathBuf};

use clap::{CommandFactory, FromArgMatches};

use arguments::{Arguments, CheckFormat, Command};
use failure::{Failure, NOT_SAVED, WRONG_USE};
use message::{is_too_wide, tell};

use crate::report::picture::Part;
use crate::source::{is_plain, safe_lines};

/// Runs the program with the process's own arguments: its exit code.
pub fn run() -> u8 {
    let mut program = Arguments::command();
    let read = program.try_get_matches_from_mut(std::env::args_os());
    let arguments = read.and_then(|matches| {
        let arguments = Arguments::from_arg_matches(&matches).map_err(|error| error.format(&mut program))?;
        Ok((arguments, matches))
    });
    let (arguments, matches) = match arguments {
        Ok(read) => read,
        Err(error) => {
            let code = if error.use_stderr() { WRONG_USE } else { 0 };
            say_how_it_is_used(&error);
            return code;
        }
    };
    match misplaced::refuse(&program, &matches).and_then(|()| carry_out(arguments)) {
        Ok(code) => code,
        Err(failure) => {
            tell(&failure.to_string());
            failure.code
        }
    }
}

/// Prints what clap says. What was typed stands in it as it was typed, so it is made safe unless it is help. Where a terminal is
/// narrow, clap breaks only help, and of that not the line that begins with `Usage:`.
fn say_how_it_is_used(error: &clap::Error) {
    // Where not even the message can be written, the exit code has to do.
    let said = error.render().to_string();
    if error.use_stderr() && (!is_plain(&said) || is_too_wide(&said)) {
        let lines: Vec<String> = safe_lines(said.trim_end())
            .into_iter()
            .map(String::from)
            .collect();
        tell(&lines.join("\n"));
    } else if !error.use_stderr()
        && let Some(page) = message::folded(&said)
    {
        let _ = print(&page);
    } else {
        let _ = error.print();
    }
}

/// How a command is used, as its own help says it.
fn usage_of(command: &str) -> String {
    let mut program = Arguments::command();
    program.build();
    let found = program.find_subcommand_mut(command);
    let page = found.map_or_else(String::new, |found| found.render_long_help().to_string());
    message::folded(&page).unwrap_or(page)
}

fn carry_out(arguments: Arguments) -> Result<u8, Failure> {
    // A full disk must reach us as an error, not end the process.
    crate::store::ignore_file_size_signal()?;
    let Arguments { command, home } = arguments;
    match command {
        None => home::run(&home),
        Some(Command::Walk {
            tree,
            walking,
            answers,
        }) => walk::run(&tree, &walking, answers.as_deref()),
        Some(Command::Resume { session, walking }) => {
            resume::say_what_stays(&walking);
            resume::run(session.as_deref(), &walking)
        }
        Some(Command::Sessions { sessions }) => sessions::run(sessions.sessions.as_deref()),
        Some(Command::Report {
            session,
            format,
            sessions,
        }) => report::run(&session, format, sessions.sessions.as_deref()),
        Some(Command::Replay { session, sessions }) => replay::run(&session, sessions.sessions.as_deref()),
        Some(Command::Brief { session, sessions }) => report::brief(&session, sessions.sessions.as_deref()),
        Some(Command::History {
            equipment,
            format,
            sessions,
        }) => history::run(&equipment, format, sessions.sessions.as_deref()),
        Some(Command::Check {
            explain: Some(rule), ..
        }) => explain(rule.as_deref()),
        Some(Command::Check {
            library,
            overlays,
            release,
            format,
            watch,
            ..
        }) => checked(library.folder()?, &overlays.folders, release, format, watch),
        Some(Command::Rehearse(how)) => rehearse::run(&how),
        Some(Command::Practice(how)) => practice::run(&how),
        Some(Command::Picture {
            tree,
            format,
            from,
            depth,
            library,
            overlays,
        }) => {
            let part = Part { from, depth };
            picture::run(&tree, format, part, library.as_deref(), &overlays.folders)
        }
        Some(Command::Formula(how)) => formula::run(&how),
        Some(Command::Verify { paths }) => verify::run(&paths),
        Some(Command::Pack(how)) => pack::run(&how),
        Some(Command::Audit(how)) => audit::run(&how),
        Some(Command::Schema {
            write: Some(folder),
            modelines,
            ..
        }) => schema::write(&folder, modelines),
        Some(Command::Schema { kind, .. }) => {
            print(&kind.map_or_else(schema::list, schema::text)).map(|()| 0)
        }
        Some(Command::Completions { shell }) => {
            let mut script = Vec::new();
            clap_complete::generate(shell, &mut Arguments::command(), "proofwalk", &mut script);
            print(&String::from_utf8_lossy(&script)).map(|()| 0)
        }
        Some(Command::Man) => {
            let mut page = Vec::new();
            clap_mangen::Man::new(Arguments::command()).render(&mut page)?;
            print(&String::from_utf8_lossy(&page)).map(|()| 0)
        }
    }
}

fn checked(
    folder: Option<&Path>,
    overlays: &[PathBuf],
    release: bool,
    format: CheckFormat,
    watched: bool,
) -> Result<u8, Failure> {
    let (format, header) = match format {
        CheckFormat::Text => (check::Format::Text, watch::Header::Beside),
        CheckFormat::Json => (check::Format::Json, watch::Header::Apart),
        CheckFormat::Sarif => (check::Format::Sarif, watch::Header::Apart),
    };
    library::say_which(folder, "check");
    let once = || {
        let files = library::files(folder, overlays)?;
        let look = look::of_findings(&io::stdout());
        Ok(check::run(files, folder, release, format, look))
    };
    if watched {
        return watch::run(folder, overlays, header, once);
    }
    let (text, code) = once()?;
    print(&text)?;
    Ok(code)
}

fn explain(rule: Option<&str>) -> Result<u8, Failure> {
    let Some(rule) = rule else {
        return print(&check::list()).map(|()| 0);
    };
    match check::explain(rule) {
        (page, 0) => print(&format!("{}\n", page.trim_end())).map(|()| 0),
        (message, code) => Err(Failure::new(code, message.trim_end())),
    }
}

/// Prints on standard output; a reader that has gone is no error.
fn print(text: &str) -> Result<(), Failure> {
    print_with(|out| out.write_all(text.as_bytes()))
}

/// The same for what is written bit by bit.
fn print_with(write: impl FnOnce(&mut dyn Write) -> io::Result<()>) -> Result<(), Failure> {
    let mut out = BufWriter::with_capacity(1 << 16, io::stdout().lock());
    match write(&mut out).and_then(|()| out.flush()) {
        Err(error) if error.kind() == io::ErrorKind::BrokenPipe => Ok(()),
        Err(error) => {
            let message = format!("what was to be printed could not be written: {error}");
            Err(Failure::new(NOT_SAVED, message)
                .help("see to the disk or the program that it goes to, and run it again"))
        }
        Ok(()) => Ok(()),
    }
}

/// Whether a person sits at both ends.
fn is_interactive() -> bool {
    io::stdin().is_terminal() && io::stdout().is_terminal()
}
