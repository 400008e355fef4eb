//! `proofwalk picture`: a tree to look at, to print, and to hang in the shop.

use std::path::{Path, PathBuf};

use super::arguments::PictureFormat;
use super::failure::{FINDINGS, Failure, WRONG_USE};
use super::library::{check_command, load, plural};
use super::walk::known_tree;
use crate::check;
use crate::report::picture::{Part, Picture, Refusal, TooLarge};
use crate::source::{Level, nearest, safe};

/// Prints the picture. Where the library has an error, the picture says so, and the exit code too.
pub(super) fn run(
    tree: &str,
    format: PictureFormat,
    part: Part,
    folder: Option<&Path>,
    overlays: &[PathBuf],
) -> Result<u8, Failure> {
    let loaded = load(folder, overlays)?;
    let library = &loaded.library;
    let id = known_tree(&loaded, folder, tree).map_err(|failure| match loaded.problems.is_empty() {
        true if nearest(tree, library.trees.names()).is_some() => failure,
        true => {
            let names: Vec<&str> = library.trees.names().collect();
            failure.help(format!("the trees are {}", names.join(", ")))
        }
        false => failure.help(format!(
            "its file may be one that cannot be read: see what is wrong with `{}`",
            check_command(folder, overlays)
        )),
    })?;
    // Before the check, which takes longer than to see that a tree is too large.
    let picture = Picture::new(library, id, part).map_err(|refusal| failure(tree, refusal))?;
    let found = check::run(library, &loaded.problems);
    let errors = found
        .iter()
        .filter(|finding| finding.level == Level::Error)
        .count();
    let picture = picture.with_errors(errors);
    super::print(&match format {
        PictureFormat::Svg => picture.svg(),
        PictureFormat::Dot => picture.dot(),
    })?;
    if errors == 0 {
        return Ok(0);
    }
    super::tell(&format!(
        "proofwalk: the library has {errors} error{}, so this is the picture of what could be read\n  help: see what is wrong with `{}`",
        plural(errors),
        check_command(folder, overlays)
    ));
    Ok(FINDINGS)
}

fn failure(tree: &str, refusal: Refusal) -> Failure {
    let wrong = |message: String| Failure::new(WRONG_USE, message);
    match refusal {
        Refusal::NoSuchStep { name, steps } => {
            let steps = steps.iter().map(String::as_str);
            let failure = wrong(format!("`{tree}` has no step `{}`", safe(&name).cut(64)));
            match nearest(&name, steps) {
                Some(meant) => failure.help(format!("did you mean `{}`?", safe(meant))),
                None => failure.help("a picture without `--from` shows every step with its name".to_owned()),
            }
        }
        Refusal::TooLarge(TooLarge { most }) => wrong(format!(
            "more than {most} steps of `{tree}` would stand on the sheet, and nobody could read it"
        ))
        .help("draw a part of it: `--from STEP` for what follows from a step, `--depth N` for N steps on"),
    }
}
