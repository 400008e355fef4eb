//! Colours and glyphs.
//!
//! Only the terminal's own sixteen colours and its own ground: they are chosen to read on a light ground and on a dark one.
//! What matters is said in a word as well.

use ratatui::style::{Color, Modifier, Style};

use crate::face::Look;
use crate::library::Severity;
use crate::source::{Safe, ascii, safe};

/// What a piece of text is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Role {
    /// Running text.
    Plain,
    /// A heading, an answer, a key.
    Strong,
    /// What can be passed over.
    Quiet,
    /// A word in the margin.
    Label,
    /// What is chosen, or where the reading lies.
    Here,
    /// The word that marks a caution, and what will not be believed.
    Caution,
    /// The word that marks a danger, a refusal, or what is not saved.
    Alarm,
}

/// Colours and glyphs for one terminal.
#[derive(Clone, Copy, Debug)]
pub struct Theme {
    look: Look,
}

impl Theme {
    /// For a terminal of this look.
    pub fn new(look: Look) -> Self {
        Self { look }
    }

    /// How a role is shown.
    pub fn style(self, role: Role) -> Style {
        let style = Style::new();
        let style = match role {
            Role::Plain => style,
            Role::Strong | Role::Here => style.add_modifier(Modifier::BOLD),
            Role::Quiet => style.add_modifier(Modifier::DIM),
            Role::Label => style,
            Role::Caution | Role::Alarm if self.look.colour => style.add_modifier(Modifier::BOLD),
            Role::Caution | Role::Alarm => style.add_modifier(Modifier::BOLD | Modifier::REVERSED),
        };
        if !self.look.colour {
            return style;
        }
        match role {
            Role::Label | Role::Here => style.fg(Color::Magenta),
            Role::Caution => style.fg(Color::Black).bg(Color::Yellow),
            Role::Alarm => style.fg(Color::White).bg(Color::Red),
            Role::Plain | Role::Strong | Role::Quiet => style,
        }
    }

    /// How a finding's word is shown.
    pub fn severity(self, severity: Severity) -> Role {
        match severity {
            Severity::Note => Role::Quiet,
            Severity::Advise => Role::Label,
            Severity::Repair => Role::Strong,
            Severity::Danger => Role::Alarm,
        }
    }

    /// The text as this terminal can show it.
    pub fn text(self, text: &Safe) -> Safe {
        if self.look.unicode {
            text.clone()
        } else {
            ascii(text)
        }
    }

    /// Words of our own as this terminal can show them.
    pub fn words(self, words: &str) -> Safe {
        self.text(&safe(words))
    }

    /// At most `columns` of a text, as this terminal can show it.
    pub fn cut(self, text: &Safe, columns: usize) -> Safe {
        let text = self.text(text);
        if text.width() <= columns || self.look.unicode {
            return text.cut(columns);
        }
        // The ellipsis of `cut` is no ASCII, and takes the last column.
        let short = String::from(text.cut(columns));
        safe(&short.replace('…', "~"))
    }

    fn either<T>(self, unicode: T, ascii: T) -> T {
        if self.look.unicode { unicode } else { ascii }
    }

    /// Points at what is chosen.
    pub fn mark(self) -> &'static str {
        self.either("▸", ">")
    }

    /// Between the trees of a path.
    pub fn step(self) -> &'static str {
        self.either(" › ", " > ")
    }

    /// Between two keys, or two counts.
    pub fn dot(self) -> &'static str {
        self.either(" · ", " | ")
    }

    /// Before what is no longer reached.
    pub fn cross(self) -> &'static str {
        self.either("×", "x")
    }

    /// Before what is open.
    pub fn open(self) -> &'static str {
        self.either("○", "o")
    }

    /// A stroke across.
    pub fn stroke(self) -> char {
        self.either('─', '-')
    }

    /// A stroke down between two columns.
    pub fn divider(self) -> char {
        self.either('┊', ':')
    }

    /// The stroke where the reading lies.
    pub fn heavy(self) -> char {
        self.either('━', '=')
    }

    /// Where two bands meet, and at the ends of the line.
    pub fn cut_mark(self) -> char {
        self.either('┴', '+')
    }

    /// Points up at the line; at its ends it points beyond.
    pub fn pointer(self, beyond: std::cmp::Ordering) -> char {
        match beyond {
            std::cmp::Ordering::Less => self.either('◂', '<'),
            std::cmp::Ordering::Equal => self.either('▲', '^'),
            std::cmp::Ordering::Greater => self.either('▸', '>'),
        }
    }
}
