//! What every question starts with, and things to do.

use crate::face::why_again;
use crate::layout::{self, Part, letter};
use crate::library::Datum;
use crate::source::{Safe, safe};
use crate::tui::page::{Page, Piece};
use crate::tui::sheet::Sheet;
use crate::tui::theme::{Role, Theme};
use crate::walk::{Ask, Question, Way};

/// The question, why it comes again, the cautions; and the long text.
pub fn sheet(theme: Theme, ask: &Ask, width: usize) -> Sheet {
    let mut head = Page::new(theme, width);
    if let Some(title) = &ask.title {
        head.entry("", Role::Label, &[(title.clone(), Role::Quiet)]);
    }
    let (label, asked) = asked(&ask.question);
    let role = |part: Part| match part {
        Part::Minutes => Role::Quiet,
        _ => Role::Strong,
    };
    let pieces = layout::asked(&asked, ask.minutes).into_iter();
    let pieces: Vec<Piece> = pieces.map(|(text, part)| (text, role(part))).collect();
    head.entry(label, Role::Label, &pieces);
    if let Some(again) = &ask.again {
        head.entry("again", Role::Label, &[(safe(&why_again(again)), Role::Strong)]);
    }
    for caution in &ask.cautions {
        head.entry("CAUTION", Role::Caution, &[(caution.clone(), Role::Strong)]);
    }
    Sheet {
        head: head.into_lines(),
        text: text(theme, ask, width),
        gives_way: true,
        ..Sheet::default()
    }
}

/// Something to do.
pub fn act(theme: Theme, ask: &Ask, width: usize) -> Sheet {
    Sheet {
        ways: ways(theme, ask, width),
        ..sheet(theme, ask, width)
    }
}

/// What comes of an answer that is no value.
pub fn ways(theme: Theme, ask: &Ask, width: usize) -> Vec<ratatui::text::Line<'static>> {
    let mut page = Page::new(theme, width);
    let mut label = "or";
    let unable = match ask.question {
        Question::Act { .. } => "cannot do it",
        _ => "cannot take it",
    };
    for (way, key, words) in [
        (ask.unable, "Ctrl-X", unable),
        (ask.unsure, "Ctrl-Y", "cannot tell"),
    ] {
        let Some(way) = way else { continue };
        let comes = match way {
            Way::GoesOn => "goes another way",
            Way::EndsUnproven => "ends unproven",
            Way::LeftUntaken => "left untaken",
        };
        let pieces = [
            (safe(key), Role::Strong),
            (safe(&format!("  {words}: {comes}")), Role::Plain),
        ];
        page.entry(label, Role::Label, &pieces);
        label = "";
    }
    page.into_lines()
}

fn asked(question: &Question) -> (&'static str, Vec<&Safe>) {
    match question {
        Question::Number {
            datum: Datum::Field(_),
            title,
            ..
        } => ("plate", vec![title]),
        Question::Number { title, .. } => ("measure", vec![title]),
        Question::Choice {
            datum: None, prompt, ..
        } => ("choose", vec![prompt]),
        Question::Choice {
            datum: Some(Datum::Reading(_)),
            prompt,
            ..
        } => ("probe", vec![prompt]),
        Question::Choice {
            datum: Some(Datum::Field(_)),
            prompt,
            ..
        } => ("plate", vec![prompt]),
        Question::Choice { prompt, .. } => ("observe", vec![prompt]),
        Question::Act { text } => ("do", text.iter().collect()),
        Question::Unproven { fault, .. } => ("verdict", vec![fault]),
        Question::PutBack { text, .. } => ("restore", vec![text]),
        Question::Finished | Question::Closed => ("", Vec::new()),
    }
}

fn text(theme: Theme, ask: &Ask, width: usize) -> Vec<ratatui::text::Line<'static>> {
    let mut page = Page::new(theme, width);
    for caution in &ask.standing_cautions {
        page.entry("CAUTION", Role::Caution, &[(caution.clone(), Role::Plain)]);
    }
    for overlay in &ask.overlays {
        page.entry("overlay", Role::Label, &[(overlay.clone(), Role::Plain)]);
    }
    for (number, line) in ask.why.iter().enumerate() {
        page.entry(
            if number == 0 { "why" } else { "" },
            Role::Label,
            &[(line.clone(), Role::Plain)],
        );
    }
    for (number, line) in ask.how.iter().enumerate() {
        page.entry(
            if number == 0 { "how" } else { "" },
            Role::Label,
            &[(line.clone(), Role::Plain)],
        );
    }
    if let Question::Number {
        works_out,
        accuracy,
        bands,
        ..
    } = &ask.question
    {
        if let Some(works_out) = works_out {
            page.entry("for", Role::Label, &[(works_out.clone(), Role::Plain)]);
        }
        let mut label = "written";
        for (number, band) in bands.iter().enumerate() {
            let Some(written) = &band.written else { continue };
            let written = safe(&format!("{}: {written}", letter(number)));
            page.entry(label, Role::Label, &[(written, Role::Quiet)]);
            label = "";
        }
        if let Some(accuracy) = accuracy {
            page.entry("meter", Role::Label, &[(accuracy.clone(), Role::Plain)]);
        }
    }
    if let Some(source) = &ask.source {
        page.entry("source", Role::Label, &[(source.clone(), Role::Quiet)]);
    }
    page.into_lines()
}
