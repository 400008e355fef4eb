//! The rule `crowded-screen` says of a step exactly what the screen does with it.

use proofwalk::check;
use proofwalk::library::{Library, load};
use proofwalk::source::{Files, SourceFile};
use proofwalk::tui::{Model, Scene};
use proofwalk::walk::{self, Command, LibraryMark, Opened, Question, State};

use crate::scene;

/// Numbers that look like chance, the same in every run.
struct Chance(u64);

impl Chance {
    fn below(&mut self, most: usize) -> usize {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        (self.0 >> 33) as usize % most
    }

    fn either<'a>(&mut self, texts: &[&'a str]) -> &'a str {
        texts[self.below(texts.len())]
    }
}

/// A step in the making, with the words that must be seen.
struct Made {
    chance: Chance,
    words: Vec<String>,
}

impl Made {
    /// A text of some words, each unlike all others.
    fn seen(&mut self, most: usize) -> String {
        let first = self.words.len();
        for number in first..=first + self.chance.below(most) {
            let padding = "x".repeat(self.chance.below(9));
            self.words.push(format!("{padding}w{number}."));
        }
        self.words[first..].join(" ")
    }

    /// Where an answer leads, with all that may stand beside it.
    fn edge(&mut self, means: bool) -> String {
        let means = match means || self.chance.below(3) == 0 {
            true => format!(", means: {}", self.seen(8)),
            false => String::new(),
        };
        let severity = self.chance.either(&["", "", "note", "danger"]);
        let finding = match severity {
            "" => String::new(),
            _ => format!(", finding: {{ severity: {severity}, text: Found }}"),
        };
        format!("{{ go: done{means}{finding} }}")
    }

    /// What a step and what it asks for may say beside the question; the long text may be let go.
    fn aside(&mut self) -> String {
        let source = self.chance.either(&["", ", source: practice"]);
        let minutes = self.chance.either(&["", "", ", minutes: 2.5", ", minutes: 45"]);
        format!("{source}{minutes}")
    }

    fn choices(&mut self, count: usize) -> (String, String) {
        let values: Vec<String> = (0..count).map(|at| format!("v{at}: {}", self.seen(14))).collect();
        let edges: Vec<String> = (0..count)
            .map(|at| format!("v{at}: {}", self.edge(false)))
            .collect();
        (
            format!("{{ {} }}", values.join(", ")),
            format!("choices: {{ {} }}", edges.join(", ")),
        )
    }

    /// Bands that lean on a plate field or do not. What each means is seen, so that each can be told to be.
    fn bands(&mut self, count: usize) -> String {
        let before = self.chance.either(&["", "plate.mark + "]);
        let band = |at: usize| match at {
            0 => format!("below {before}1 V"),
            at if at + 1 == count => format!("at least {before}{at} V"),
            at => format!("at least {before}{at} V, below {before}{} V", at + 1),
        };
        let lines = (0..count).map(|at| format!("\n      {}: {}", band(at), self.edge(true)));
        format!("bands:{}", lines.collect::<String>())
    }

    /// A library with one question in it, at the step `asked`.
    fn library(&mut self) -> Library {
        let cautions = self.chance.below(5);
        let names = |from: usize| {
            (from..cautions)
                .map(|at| format!("c{at}"))
                .collect::<Vec<_>>()
                .join(", ")
        };
        // Named by both, a caution is shown once.
        let (by_step, by_taking) = (names(0), names(cautions / 2));
        let mut texts = String::from("cautions:\n  always: { text: Take care }\n");
        for at in 0..cautions {
            texts += &format!("  c{at}: {{ text: {} }}\n", self.seen(24));
        }
        let how = self.chance.either(&["", ", how: Because of this and that"]);
        let taking = format!("{how}{}, cautions: [{by_taking}]", self.aside());
        let question = self.seen(12);
        let scale = "unit: V, plausible: 0 V to 98765.43 V";
        let exact = self.chance.either(&["1 V", "0 V"]);
        let (kind, values, answers) = match self.chance.below(4) {
            0 | 1 => {
                let count = 2 + self.chance.below(20);
                let (values, edges) = self.choices(count);
                (self.chance.either(&["observe", "plate"]), values, edges)
            }
            2 => {
                let count = 2 + self.chance.below(16);
                ("measure", String::new(), self.bands(count))
            }
            _ => {
                let count = 2 + self.chance.below(16);
                ("number", String::new(), self.bands(count))
            }
        };
        let registered = match kind {
            "observe" => (
                "registry/signs.yaml",
                format!("signs:\n  q: {{ ask: {question}, values: {values}{taking} }}\n"),
            ),
            "measure" => (
                "registry/readings.yaml",
                format!("readings:\n  q: {{ title: {question}, {scale}, accuracy: {exact}{taking} }}\n"),
            ),
            "plate" => (
                "registry/more.yaml",
                format!("  q: {{ title: {question}, choices: {values}{how} }}\n"),
            ),
            _ => (
                "registry/more.yaml",
                format!("  q: {{ title: {question}, {scale}{how} }}\n"),
            ),
        };
        let mut plate = format!("fields:\n  mark: {{ title: Mark, {scale} }}\n");
        let mut files = vec![("registry/cautions.yaml", texts)];
        match registered {
            ("registry/more.yaml", field) => plate += &field,
            other => files.push(other),
        }
        let asked = if kind == "number" { "plate" } else { kind };
        let title = match self.chance.below(3) {
            0 => format!("\n    title: {}", self.seen(9)),
            _ => String::new(),
        };
        let why = self
            .chance
            .either(&["", "\n    why: Because of this and that and the other thing"]);
        let ways = match asked {
            "observe" => {
                self.chance
                    .either(&["", "\n    unable: done", "\n    unsure: done\n    unable: done"])
            }
            _ => self.chance.either(&["", "\n    unable: done"]),
        };
        let aside = self.aside().replace(", ", "\n    ");
        files.push((
            "t.yaml",
            format!(
                "tree: t\ntitle: T\ncomplaint: T\nstart: asked\nsteps:\n  asked:\n    {asked}: q{title}{why}{ways}{aside}\n    \
                 cautions: [{by_step}]\n    {answers}\n  done: {{ verdict: nothing, because: So. }}\n"
            ),
        ));
        files.push(("registry/plate.yaml", plate));
        files.push((
            "registry/faults.yaml",
            "faults: { nothing: { title: Nothing, remedy: none } }\n".into(),
        ));
        files.push((
            "registry/sources.yaml",
            "sources: { practice: { title: Practice, kind: practice } }\n".into(),
        ));
        files.push(("library.yaml", "library: l\nstanding_cautions: [always]\n".into()));
        let files = files.into_iter().map(|(name, text)| SourceFile::new(name, text));
        let (library, problems) = load(Files::new(files.collect()));
        assert_eq!(
            problems,
            [],
            "{}",
            library
                .files
                .iter()
                .map(|(_, file)| file.text())
                .collect::<String>()
        );
        library
    }
}

/// The call in front of the question: where its bands lean on the plate, the largest plausible number is read off it.
fn at_the_question(library: &Library) -> State {
    let opened = Opened {
        library: LibraryMark::default(),
        tree: "t".to_owned(),
        technician: None,
        site: None,
        equipment: None,
        program: "0".to_owned(),
        answered_from: None,
    };
    let mut state = State::default();
    let mut take_in = |events: Vec<walk::Event>| {
        for event in events {
            walk::apply(library, &mut state, &event).unwrap();
        }
        state.clone()
    };
    let at_first = take_in(walk::open(library, opened).unwrap());
    match walk::ask(library, &at_first).question {
        Question::Number { title, .. } if title.as_str() == "Mark" => {
            take_in(walk::decide(library, &at_first, &Command::Type("98765.43".into())).unwrap())
        }
        _ => at_first,
    }
}

#[test]
fn the_screen_hides_an_answer_exactly_where_the_rule_says_so() {
    let mut crowded = [0, 0];
    for seed in 1..=240 {
        let mut made = Made {
            chance: Chance(0x9e37_79b9_7f4a_7c15_u64.wrapping_mul(seed)),
            words: Vec::new(),
        };
        let library = made.library();
        let findings = check::run(&library, &[]);
        let said = findings.iter().any(|finding| finding.rule == "crowded-screen");

        let state = at_the_question(&library);
        let (ask, standing) = (walk::ask(&library, &state), walk::standing(&library, &state));
        let scene = Scene::Call {
            ask: &ask,
            standing: &standing,
            known: &[],
        };
        for look in [scene::RICH, scene::PLAIN] {
            let drawn = scene::drawn((80, 24), &Model::default(), scene, look);
            let shown = |word: &String| drawn.split([' ', '\n']).any(|part| part == word);
            let hidden = made.words.iter().find(|word| !shown(word));
            assert_eq!(
                hidden.is_some(),
                said,
                "{seed}: {hidden:?}\n{drawn}\n{findings:#?}"
            );
        }
        crowded[usize::from(said)] += 1;
    }
    assert!(crowded.iter().all(|count| *count > 40), "{crowded:?}");
}

#[test]
fn what_can_be_let_go_is_let_go_before_an_answer_is() {
    let mut ask = scene::choice();
    let Question::Choice { options, .. } = &mut ask.question else {
        unreachable!("it is a choice");
    };
    let first = options[0].clone();
    *options = (0..14)
        .map(|value| walk::ShownOption {
            value,
            ..first.clone()
        })
        .collect();
    let standing = scene::standing();
    let scene = Scene::Call {
        ask: &ask,
        standing: &standing,
        known: &[],
    };
    let drawn = scene::drawn((80, 24), &Model::default(), scene, scene::PLAIN);
    assert_eq!(drawn.matches("Steady and blue").count(), 14, "{drawn}");
    assert!(
        drawn.contains("possible 4") && !drawn.contains("still possible"),
        "{drawn}"
    );
}
