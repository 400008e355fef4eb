//! What a face shows of an exercise: the walk's question as an apprentice is to meet it.

use super::Mode;
use super::ahead::is_free;
use super::backing::Backing;
use super::exercise::{Exercise, Turn};
use super::menu::Menu;
use super::places::places;
use crate::bench::machine::Machine;
use crate::library::{Datum, Id, Library, Reading, Remedy};
use crate::source::{Safe, safe};
use crate::walk::{Again, Ask, Question, ShownOption, Standing, State, Way, ask, standing};

impl<M: Machine> Exercise<M> {
    /// The question that stands.
    pub fn ask(&self, library: &Library, state: &State) -> Ask {
        let mut ask = ask(library, state);
        match self.turn(library, state) {
            Turn::Gate | Turn::Menu => self.list(library, state, &mut ask),
            Turn::Place(id) => self.where_to(library, id, &mut ask),
            Turn::Take(leaf) => {
                take(library, leaf, &mut ask);
                if is_free(self.setup.mode, state) {
                    // All is taken out of turn, and mostly for no proof.
                    ask.again.take_if(|again| *again == Again::ForProof);
                    // The complaint's tree stands still.
                    for way in [&mut ask.unable, &mut ask.unsure] {
                        *way = way.map(|_| Way::LeftUntaken);
                    }
                }
            }
            Turn::Work(_) | Turn::Call => {}
        }
        if state.ended.is_none() {
            let minutes = format!("Practice, {} min so far", self.score.minutes);
            ask.title = Some(match ask.title {
                Some(title) => safe(&format!("{minutes}. {title}")),
                None => safe(&minutes),
            });
        }
        ask
    }

    /// What stands beside it. In free practice nothing tells what is still possible: the tree would know too much.
    pub fn standing(&self, library: &Library, state: &State) -> Standing {
        let mut standing = standing(library, state);
        standing.last_is_news = true;
        if self.setup.mode == Mode::Free {
            standing.possible.clear();
            standing.not_looked_at.clear();
            // How many questions are left is the apprentice's to say.
            standing.at_worst = usize::MAX;
            for entry in &mut standing.trail {
                entry.ruled_out.clear();
            }
        }
        standing
    }

    /// Whether words look for something.
    pub fn searches(&self, library: &Library, state: &State) -> bool {
        self.turn(library, state) == Turn::Menu
    }

    fn list(&self, library: &Library, state: &State, ask: &mut Ask) {
        let prompt = match &self.menu {
            Menu::Gate => "You stand before the house. What first?".to_owned(),
            // The last of a long list, which a small screen does not show.
            Menu::Groups => format!(
                "What do you look at or measure next? {} names the fault.",
                self.groups.data.len() + 1
            ),
            Menu::Data(at) => match self.groups.data.get(*at) {
                Some(group) => format!("What of this: {}?", group.heading),
                None => "What of this?".to_owned(),
            },
            Menu::FaultGroups => "What is the fault about?".to_owned(),
            Menu::Faults(at) => match self.groups.faults.get(*at) {
                Some(group) => format!("Which fault is it: {}?", group.heading),
                None => "Which fault is it?".to_owned(),
            },
            Menu::Found(found) => found.prompt(),
            Menu::Lacking(fault) => {
                let title = &library.faults[*fault].title;
                match Backing::of(library, state, *fault).is_proven() {
                    true => match library.faults[*fault].remedy {
                        // What proves a part bad does not tell what is wrong with it.
                        Remedy::Replace(part) => format!(
                            "PROVEN by what was taken: {} is bad. You name it: {title}. What now?",
                            library.parts[part].title
                        ),
                        _ => format!("PROVEN by what was taken: {title}. What now?"),
                    },
                    false => format!("NOT PROVEN: {title}. What now?"),
                }
            }
        };
        ask.why = match &self.menu {
            Menu::Lacking(fault) => lacks(&Backing::of(library, state, *fault)),
            _ => Vec::new(),
        };
        // Those of every call are for whoever stands before the house.
        let standing = std::mem::take(&mut ask.standing_cautions);
        ask.cautions = match &self.menu {
            Menu::Gate => standing,
            _ => Vec::new(),
        };
        let mut entries = self.entries(library, state);
        let listed = entries.len();
        entries.extend(self.beyond(library, state));
        let shown = entries
            .into_iter()
            .map(|(entry, text)| (text, entry.known_by(library)));
        let mut all = options(shown);
        ask.by_words = all.split_off(listed);
        only(ask, safe(&prompt), None, all);
        (ask.minutes, ask.unable, ask.unsure) = (None, None, None);
    }

    fn where_to(&self, library: &Library, id: Id<Reading>, ask: &mut Ask) {
        let places = places(library, &self.groups, id, self.setup.seed);
        let prompt = safe(&format!(
            "{}: where does the probe go?",
            library.readings[id].title
        ));
        let datum = Some(Datum::Reading(id));
        let places = places.into_iter().map(|place| (place.words, Safe::default()));
        only(ask, prompt, datum, options(places));
        if let Some(elsewhere) = self.elsewhere.as_ref().filter(|elsewhere| elsewhere.asked == id) {
            ask.again = Some(Again::Elsewhere {
                put: safe(&library.readings[elsewhere.put].title),
                shown: elsewhere.shown.clone(),
            });
        }
    }
}

/// Asks for one of some options, and tells nothing that would give the answer away.
fn only(ask: &mut Ask, prompt: Safe, datum: Option<Datum>, options: Vec<ShownOption>) {
    ask.how.clear();
    ask.source = None;
    ask.question = Question::Choice {
        datum,
        prompt,
        options,
    };
}

/// Options of what they say, and of the other words that they are found by.
fn options(texts: impl Iterator<Item = (Safe, Safe)>) -> Vec<ShownOption> {
    let options = texts.enumerate().map(|(value, (text, known_by))| ShownOption {
        value,
        text,
        known_by,
        means: None,
        finding: None,
    });
    options.collect()
}

/// What a named fault lacks, as far as a screen holds it.
fn lacks(backing: &Backing) -> Vec<Safe> {
    let mut words = backing.lack_words("It lacks: ");
    // What kind of furnace it is may not have been looked at yet.
    if backing.by_the_trees {
        words.push(
            "That is one way that leads to it; where it does not fit this furnace, another may".to_owned(),
        );
    }
    words.iter().map(|line| safe(line)).collect()
}

/// Has something taken: the furnace answers.
fn take(library: &Library, leaf: Datum, ask: &mut Ask) {
    let title = library.title_of(leaf);
    let text = match leaf {
        Datum::Field(_) => format!("Read from the plate: {title}"),
        Datum::Reading(_) => format!("Measure: {title}"),
        Datum::Sign(_) => format!("Look: {title}"),
    };
    ask.question = Question::Act {
        text: vec![safe(&text)],
    };
    // Only a face's own question for a sign knows how to be unsure.
    ask.unsure = ask.unsure.filter(|way| *way == Way::GoesOn);
}
