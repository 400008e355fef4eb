//! Where answers lead, and what an edge may say beside it.

use crate::written::{TREE, Written};

fn quiet_leads(edge: &str) -> Written {
    Written::small().swapped(TREE, "quiet: fine", &format!("quiet: {edge}"))
}

#[test]
fn a_limit_and_what_comes_after_it_go_together() {
    quiet_leads("{ go: fine, at_most: 1 }")
        .says(&["stands-still.yaml:12:58 malformed: the edge has `at_most`, and has no `then`"]);
    quiet_leads("{ go: fine, then: motor }")
        .says(&["stands-still.yaml:12:58 malformed: the edge has `then`, and has no `at_most`"]);
    quiet_leads("{ go: fine, at_most: 0, then: motor }")
        .says(&["stands-still.yaml:12:79 malformed: an edge that may be taken at most 0 times is none"]);
    quiet_leads("{ go: fine, at_most: 2, then: { go: motor, means: Again } }").says(&[]);
}

#[test]
fn an_edge_leads_somewhere() {
    quiet_leads("{ means: Nothing }").says(&["stands-still.yaml:12:58 malformed: the edge has no `go`"]);
    quiet_leads("7").says(&["stands-still.yaml:12:58 malformed: this is no step's name"]);
}

#[test]
fn a_finding_has_a_severity_and_a_text() {
    quiet_leads("{ go: fine, finding: { text: Odd } }")
        .says(&["stands-still.yaml:12:58 malformed: the finding has no `severity`"]);
    quiet_leads("{ go: fine, finding: { severity: advise } }")
        .says(&["stands-still.yaml:12:58 malformed: the finding has no `text`"]);
    let library = quiet_leads("{ go: fine, finding: { severity: grave, text: Odd } }");
    library.says(&["stands-still.yaml:12:91 malformed: `grave` is no severity"]);
    assert_eq!(library.helps(), ["write note, advise, repair or danger"]);
}

#[test]
fn a_comma_in_braces_is_answered_with_the_way_to_write_it() {
    let block = "bands:\n      below 100 V: fine\n      at least 100 V: noise";
    let library = Written::small().swapped(
        TREE,
        block,
        "bands: { below 100 V: fine, at least 100 V, below 130 V: noise, at least 130 V: fine }",
    );
    library.says(&["stands-still.yaml:9:47 malformed: no step is named here"]);
    assert_eq!(
        library.helps(),
        [
            "name the step this leads to; inside {…} a comma ends a key, so write bands as a block, a line each"
        ]
    );
}
