//! Finding a formula by words: those of its name and sentence, of its arguments, and its units.

use super::spoken::in_our_words;
use crate::cli::failure::{Failure, WRONG_USE};
use crate::measure::{Dimension, System, Unit};
use crate::source::{nearest, safe};
use crate::trade::{self, Formula, Group};

/// Words that say nothing of what is looked for.
const IDLE: [&str; 10] = ["a", "an", "the", "of", "to", "for", "from", "in", "is", "and"];

/// Endings that one word has in a question and another in a sentence: clocking, clocked, clocks.
const ENDINGS: [&str; 5] = ["ing", "ed", "es", "s", "e"];

/// A word shorter than this stands for itself alone: `CO` is not the start of copper.
const SHORTEST_START: usize = 4;

/// What is found by words: formulas with all of them; where no formula has, and they are no name that was mistyped, those with the
/// most of them.
pub(super) fn by_words(words: &str) -> Result<Vec<&'static Formula>, Failure> {
    let mut found = with_words(words);
    if found.is_empty() && nearest(words, trade::all().iter().map(|formula| formula.name)).is_none() {
        found = with_most(&sought(words));
        if !found.is_empty() {
            crate::cli::tell("No formula has all of these words. Those that have the most:");
        }
    }
    match found.is_empty() {
        true => Err(unknown(words, &[])),
        false => Ok(found),
    }
}

/// The formulas of a group, or with every word of some in what they say of themselves; where there is none, those that have them in
/// what they say of their arguments.
pub(super) fn with_words(words: &str) -> Vec<&'static Formula> {
    let words = words.to_lowercase().replace(['_', '-'], " ");
    let group = chosen(&|formula| formula.group.name() == words.trim());
    if !group.is_empty() {
        return group;
    }
    let sought = sought(&words);
    if sought.is_empty() {
        return Vec::new();
    }
    let by_name = chosen(&|formula| sought.iter().all(|word| names(formula, word)));
    if !by_name.is_empty() {
        return by_name;
    }
    chosen(&|formula| sought.iter().all(|word| asks(formula, word)))
}

/// Those that have more of the words than all others.
fn with_most(sought: &[String]) -> Vec<&'static Formula> {
    let had = |formula: &Formula| sought.iter().filter(|word| asks(formula, word)).count();
    let most = trade::all().iter().map(|formula| had(formula)).max();
    chosen(&|formula| had(formula) > 0 && Some(had(formula)) == most)
}

/// The words that say something, as the formulas have them.
fn sought(words: &str) -> Vec<String> {
    let words = words.to_lowercase().replace(['_', '-'], " ");
    let words: Vec<&str> = words.split_whitespace().collect();
    let ours = in_our_words(&words).into_iter();
    ours.filter(|word| !IDLE.contains(word))
        .map(str::to_owned)
        .collect()
}

fn chosen(is_chosen: &dyn Fn(&Formula) -> bool) -> Vec<&'static Formula> {
    (trade::all().iter().copied())
        .filter(|formula| is_chosen(formula))
        .collect()
}

/// Whether it has the word in what it says of itself.
fn names(formula: &Formula, word: &str) -> bool {
    says(formula, word) || measures(formula, word)
}

/// Whether it has the word at all.
fn asks(formula: &Formula, word: &str) -> bool {
    names(formula, word) || takes(formula, word)
}

/// Whether a formula's name, sentence or group has the word, or an argument's name.
fn says(formula: &Formula, word: &str) -> bool {
    let texts = [formula.name, formula.sentence, formula.group.name()];
    let names = formula.arguments.iter().map(|argument| argument.name);
    texts.into_iter().chain(names).any(|text| has(text, word))
}

/// Whether one of its arguments is described with the word.
fn takes(formula: &Formula, word: &str) -> bool {
    let mut meanings = formula.arguments.iter().map(|argument| argument.meaning);
    meanings.any(|text| has(text, word))
}

/// Whether the word is a unit that it takes or gives a number in: its own, that of the other system, or one with another prefix.
fn measures(formula: &Formula, word: &str) -> bool {
    let Some(unit) = Unit::parse(word) else {
        return false;
    };
    let scales = formula.arguments.iter().map(|argument| argument.scale);
    let mut units = scales.chain([formula.result]).map(|scale| scale.unit);
    units.any(|own| own.in_system(System::Si) == unit.in_system(System::Si) || differs_by_prefix(own, unit))
}

/// Whether one is the other with a prefix that meters put before it: mA where A is asked for.
fn differs_by_prefix(own: Unit, unit: Unit) -> bool {
    let is_shared = own.system().is_none() && unit.system().is_none();
    // Parts per million of one gas are no per cent of another.
    is_shared && own.dimension() == unit.dimension() && own.dimension() != Dimension::Ratio
}

fn has(text: &str, word: &str) -> bool {
    let text = text.to_lowercase();
    let stem = stem(word);
    text.split(|letter: char| !letter.is_alphanumeric())
        .any(|own| own == word || stem.len() >= SHORTEST_START && own.starts_with(stem))
}

/// The word without the ending that another form of it has not.
fn stem(word: &str) -> &str {
    let stems = ENDINGS.iter().filter_map(|ending| word.strip_suffix(ending));
    stems
        .filter(|stem| stem.len() >= SHORTEST_START)
        .max_by_key(|stem| word.len() - stem.len())
        .unwrap_or(word)
}

/// What to say of a name that no formula has; the inputs behind it may tell which was meant.
pub(super) fn unknown(name: &str, inputs: &[String]) -> Failure {
    let names = || trade::all().iter().map(|formula| formula.name);
    let words = names()
        .flat_map(|name| name.split('_'))
        .filter(|word| word.len() >= SHORTEST_START);
    let group = Group::ALL
        .iter()
        .find(|group| group.name() == name.to_lowercase());
    let found = with_words(name);
    let help = if let Some(group) = group {
        format!(
            "that is a group of formulas: `proofwalk formula {}` lists them{}",
            group.name(),
            taking(inputs)
        )
    } else if let Some(meant) = nearest(name, names()) {
        format!("did you mean `{meant}`?")
    } else if !found.is_empty() {
        format!(
            "`proofwalk formula {}` lists those with the word{}",
            safe(name),
            taking(inputs)
        )
    } else if let Some(meant) = nearest(name, words) {
        format!("did you mean `{meant}`?")
    } else {
        "`proofwalk formula` lists them".to_owned()
    };
    Failure::new(
        WRONG_USE,
        format!("no formula is called `{}`", safe(name).cut(64)),
    )
    .help(help)
}

/// Which formulas take all that was given, where they are few.
fn taking(inputs: &[String]) -> String {
    let given: Vec<String> = inputs
        .iter()
        .filter_map(|word| Some(word.split_once('=')?.0.trim().to_lowercase()))
        .collect();
    let takers = trade::all()
        .iter()
        .filter(|formula| given.iter().all(|name| formula.argument(name).is_some()));
    let takers: Vec<String> = takers.map(|formula| format!("`{}`", formula.name)).collect();
    let ands = |names: &[String]| {
        names
            .iter()
            .map(|name| format!("`{name}`"))
            .collect::<Vec<_>>()
            .join(" and ")
    };
    match takers.as_slice() {
        _ if given.is_empty() => String::new(),
        [] => String::new(),
        [only] => format!("; {} is an argument of {only}", ands(&given)),
        [one, two] => format!("; {} goes into {one} and {two}", ands(&given)),
        _ => String::new(),
    }
}
