//! The whole of a small picture, so that a change of it is seen.

use crate::libraries::{sump_pumps, whole};

#[test]
fn the_sheet_of_a_small_tree() {
    insta::assert_snapshot!(whole(&sump_pumps(), "socket").svg());
}

#[test]
fn the_graph_of_a_small_tree() {
    insta::assert_snapshot!(whole(&sump_pumps(), "pump").dot());
}
