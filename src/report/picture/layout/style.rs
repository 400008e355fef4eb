//! How each kind of line is set.

use super::super::lettering::Letters;

/// How a line is set; each has a class of its own in the style sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in super::super) enum Style {
    /// The head of the sheet.
    Title,
    /// What stands below the head.
    Head,
    /// What nobody may miss in the head.
    Warning,
    /// A step's number and the word for its kind.
    Kind,
    /// Its author's name.
    Name,
    Heading,
    Text,
    Remedy,
    Danger,
    Mark,
    Answer,
    Means,
    Limit,
    Finding,
    /// A heading of the foot.
    Section,
    /// What a paragraph of the foot is about.
    Entry,
    Foot,
}

impl Style {
    /// Every style.
    pub const ALL: [Self; 17] = [
        Self::Title,
        Self::Head,
        Self::Warning,
        Self::Kind,
        Self::Name,
        Self::Heading,
        Self::Text,
        Self::Remedy,
        Self::Danger,
        Self::Mark,
        Self::Answer,
        Self::Means,
        Self::Limit,
        Self::Finding,
        Self::Section,
        Self::Entry,
        Self::Foot,
    ];

    /// Its class.
    pub fn class(self) -> &'static str {
        match self {
            Self::Title => "title",
            Self::Head => "head",
            Self::Warning => "warning",
            Self::Kind => "kind",
            Self::Name => "name",
            Self::Heading => "heading",
            Self::Text => "text",
            Self::Remedy => "remedy",
            Self::Danger => "danger",
            Self::Mark => "mark",
            Self::Answer => "says",
            Self::Means => "means",
            Self::Limit => "limit",
            Self::Finding => "finding",
            Self::Section => "section",
            Self::Entry => "entry",
            Self::Foot => "foot",
        }
    }

    /// Its size and weight.
    pub fn letters(self) -> Letters {
        match self {
            Self::Title => Letters::bold(26.0),
            Self::Head => Letters::plain(12.0),
            Self::Warning => Letters::bold(12.0),
            Self::Kind => Letters::bold(10.0),
            Self::Heading => Letters::bold(11.0),
            Self::Text => Letters::plain(11.5),
            Self::Remedy | Self::Danger => Letters::bold(10.5),
            Self::Name => Letters::plain(9.0),
            Self::Mark => Letters::plain(9.5),
            Self::Answer => Letters::bold(10.0),
            Self::Means => Letters::plain(9.5),
            Self::Limit | Self::Finding => Letters::bold(9.5),
            Self::Section => Letters::bold(12.0),
            Self::Entry => Letters::bold(9.5),
            Self::Foot => Letters::plain(9.5),
        }
    }

    /// From the line before to this one: a heading of the foot stands apart.
    pub fn leading(self) -> f64 {
        let apart = if self == Self::Section { 9.0 } else { 0.0 };
        self.letters().leading() + apart
    }
}
