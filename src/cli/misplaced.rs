//! Options that stand before a command, where they would count for nothing.

use clap::parser::ValueSource;
use clap::{Arg, ArgMatches, Command};

use super::failure::{Failure, WRONG_USE};
use crate::source::safe;

/// Refuses the first option that was written before a command: it is meant for the command, which would not hear of it.
pub(super) fn refuse(program: &Command, matches: &ArgMatches) -> Result<(), Failure> {
    let Some((name, _)) = matches.subcommand() else {
        return Ok(());
    };
    let typed = |argument: &&Arg| {
        // What an environment variable gives stands before no command.
        let id = argument.get_id().as_str();
        matches.try_contains_id(id).is_ok() && matches.value_source(id) == Some(ValueSource::CommandLine)
    };
    let Some(long) = program.get_arguments().find(typed).and_then(Arg::get_long) else {
        return Ok(());
    };
    let taken = program.find_subcommand(name).into_iter();
    let is_taken = taken
        .flat_map(Command::get_arguments)
        .any(|argument| argument.get_long() == Some(long));
    let name = safe(name);
    let help = match is_taken {
        true => format!("put it behind the command: `proofwalk {name} … --{long} …`"),
        false => format!("leave it out: `{name}` takes no `--{long}`"),
    };
    let message = format!("`--{long}` stands before the command `{name}` and would not count there");
    Err(Failure::new(WRONG_USE, message).help(help))
}
