//! Every text that an author wrote for a reader.

use crate::library::{Answers, Choice, FieldKind, Kind, Library, Step, Taking};
use crate::source::Span;

/// Hands over every text of a library, with the place of the thing it belongs to.
pub(super) fn each<'a>(library: &'a Library, take: &mut dyn FnMut(Span, &'a str)) {
    registries(library, take);
    for (_, tree) in library.trees.iter() {
        let others = [&tree.complaint, &tree.edition, &tree.changed];
        all(
            tree.at,
            [Some(tree.title.as_str())]
                .into_iter()
                .chain(others.map(Option::as_deref)),
            take,
        );
    }
    for step in &library.steps {
        of_step(step, take);
    }
    for scenario in &library.scenarios {
        take(scenario.at, &scenario.title);
    }
}

fn registries<'a>(library: &'a Library, take: &mut dyn FnMut(Span, &'a str)) {
    if let Some((file, _)) = library
        .files
        .iter()
        .find(|(_, file)| file.layer().number() == 0 && file.name() == "library.yaml")
    {
        let (start, end) = (0, 0);
        let texts = [&library.name, &library.edition, &library.title];
        all(
            Span { file, start, end },
            texts.map(|text| Some(text.as_str())),
            take,
        );
    }
    for overlay in &library.overlays {
        let texts = [&overlay.name, &overlay.title, &overlay.edition];
        // Without a file of its own it has only a folder's name, which no author wrote as a text.
        if let Some(at) = overlay.at {
            all(at, texts.map(|text| Some(text.as_str())), take);
        }
    }
    for danger in &library.dangers {
        take(danger.at, &danger.label);
    }
    for (_, field) in library.plate.iter() {
        all(field.at, [Some(field.title.as_str()), field.how.as_deref()], take);
        if let FieldKind::Choices(values) = &field.kind {
            choices(values, take);
        }
    }
    for (_, reading) in library.readings.iter() {
        take(reading.at, &reading.title);
        taking(reading.at, &reading.taking, take);
    }
    for (_, sign) in library.signs.iter() {
        take(sign.at, &sign.ask);
        choices(&sign.values, take);
        taking(sign.at, &sign.taking, take);
    }
    for (_, part) in library.parts.iter() {
        take(part.at, &part.title);
    }
    for (_, fault) in library.faults.iter() {
        all(
            fault.at,
            [Some(fault.title.as_str()), fault.text.as_deref()],
            take,
        );
    }
    for (_, restore) in library.restores.iter() {
        take(restore.at, &restore.text);
    }
    for (_, caution) in library.cautions.iter() {
        take(caution.at, &caution.text);
    }
    for (_, source) in library.sources.iter() {
        all(
            source.at,
            [
                Some(source.title.as_str()),
                source.section.as_deref(),
                Some(source.kind.as_str()),
            ],
            take,
        );
    }
}

fn of_step<'a>(step: &'a Step, take: &mut dyn FnMut(Span, &'a str)) {
    all(step.at, [step.title.as_deref(), step.why.as_deref()], take);
    match &step.kind {
        Kind::Measure { how, answers, .. } | Kind::Observe { how, answers, .. } => {
            all(step.at, [how.as_deref()], take);
            if let Answers::Bands(bands) = answers {
                for answer in bands {
                    take(answer.at, &answer.text);
                }
            }
        }
        Kind::Do { text, .. } => take(step.at, text),
        Kind::Verdict { because, advice, .. } => {
            all(step.at, [Some(because.as_str()), advice.as_deref()], take);
        }
        Kind::Plate { .. } | Kind::Visit { .. } | Kind::Return { .. } | Kind::Unresolved { .. } => {}
    }
    step.edges().for_each(|edge| {
        let finding = edge.finding.as_ref().map(|finding| finding.text.as_str());
        all(edge.at, [edge.means.as_deref(), finding], take);
    });
}

fn choices<'a>(values: &'a [Choice], take: &mut dyn FnMut(Span, &'a str)) {
    for value in values {
        take(value.at, &value.text);
    }
}

fn taking<'a>(at: Span, taking: &'a Taking, take: &mut dyn FnMut(Span, &'a str)) {
    all(at, [taking.how.as_deref()], take);
}

fn all<'a>(at: Span, texts: impl IntoIterator<Item = Option<&'a str>>, take: &mut dyn FnMut(Span, &'a str)) {
    texts.into_iter().flatten().for_each(|text| take(at, text));
}
