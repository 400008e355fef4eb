//! What a call says of the library it is walked with.

use proofwalk::library::{Library, load};
use proofwalk::source::{Files, Layer, SourceFile, safe};
use proofwalk::walk::{Ask, OverlayMark, ask, overlay_words};

use crate::call::{Call, library, tree};

const STEPS: &str = "  look: { observe: noise, choices: { hum: dirty, quiet: fine } }\n";

/// What the first question says where the tree has these lines.
fn first(head: &str) -> Ask {
    let call = Call::open(library(&[tree("t", head, STEPS)]));
    ask(&call.library, &call.state)
}

#[track_caller]
fn marked(head: &str, status: Option<&str>, edition: Option<&str>) {
    let ask = first(head);
    assert_eq!(ask.status.as_ref().map(|status| status.as_str()), status);
    assert_eq!(ask.edition.as_ref().map(|edition| edition.as_str()), edition);
}

#[test]
fn a_question_says_how_far_its_tree_is_trusted_and_which_edition_it_is() {
    marked("", Some("DRAFT"), None);
    marked("status: draft\nedition: 3\n", Some("DRAFT"), Some("3"));
    marked("status: field-trial\n", Some("field trial"), None);
    marked("status: approved\nedition: 3\n", None, Some("3"));
}

/// The library of these tests with one overlay, whose files are these.
fn overlaid(files: &[(&str, &str)]) -> Library {
    let base = library(&[tree("t", "", STEPS)]).files;
    let base = base.iter().map(|(_, file)| file.clone());
    let over = (files.iter())
        .map(|(name, text)| SourceFile::new(*name, *text).in_layer(Layer::overlay(1, "company")));
    let (library, problems) = load(Files::new(base.chain(over).collect()));
    assert_eq!(problems, []);
    library
}

const REPLACES: (&str, &str) = (
    "registry/restores.yaml",
    "restores: { door: Shut it, tap: Plug it, lid: Close it }\n",
);

#[test]
fn the_first_question_names_the_overlay_and_what_it_replaced_and_the_next_does_not() {
    let mut call = Call::open(overlaid(&[
        ("library.yaml", "title: The north branch\nedition: 7\n"),
        REPLACES,
    ]));
    let words = ask(&call.library, &call.state).overlays;
    let expected = "The north branch, edition 7; it replaces the put-back door, the put-back tap";
    assert_eq!(words, [safe(expected)]);
    call.chooses("hum");
    assert_eq!(ask(&call.library, &call.state).overlays, []);
    assert_eq!(
        overlay_words(&call.library, &call.state),
        words,
        "the report still says it"
    );
}

#[test]
fn an_overlay_without_a_title_goes_by_what_the_log_calls_it_once_its_folder_is_not_known() {
    let library = overlaid(&[REPLACES]);
    let kept = library.files.iter();
    let kept = kept.map(|(_, file)| SourceFile::from_key(&file.key(), file.text()));
    let (library, problems) = load(Files::new(kept.collect()));
    assert_eq!(problems, []);
    let mut call = Call::open(library);
    assert!(
        overlay_words(&call.library, &call.state)[0]
            .as_str()
            .starts_with("overlay 1; ")
    );
    let mark = OverlayMark {
        name: "company".to_owned(),
        edition: String::new(),
    };
    call.state.opened.as_mut().unwrap().library.overlays.push(mark);
    assert!(
        overlay_words(&call.library, &call.state)[0]
            .as_str()
            .starts_with("company; ")
    );
}

#[test]
fn of_many_replaced_things_the_first_are_named() {
    let over = "faults:\n  motor_dead: { title: A, remedy: replace motor }\n  valve_dead: { title: B, remedy: replace valve }\n  \
                dirty: { title: C, remedy: correct }\n  fine: { title: D, remedy: none }\n";
    let call = Call::open(overlaid(&[("registry/faults.yaml", over)]));
    assert_eq!(
        overlay_words(&call.library, &call.state)[0].as_str(),
        "company; it replaces the fault motor_dead, the fault valve_dead, the fault dirty, and 1 more"
    );
}
