//! The rules, one file each. Everything a rule says stands in its file.

mod band_gap;
mod band_overlap;
mod choice_gap;
mod crowded_screen;
mod dead_end;
mod draft_tree;
mod duplicate_name;
mod endless_loop;
mod endless_visit;
mod idle_question;
mod impossible_band;
mod malformed;
mod missing_caution;
mod missing_edition;
mod missing_source;
mod unit_mismatch;
mod unknown_name;
mod unmapped_outcome;
mod unproven_verdict;
mod unreachable_step;
mod unsafe_text;
mod unused_name;

use super::rule::Rule;

/// Every rule, in the order of their names.
pub(super) static ALL: [&Rule; 20] = [
    &band_gap::BAND_GAP,
    &band_overlap::BAND_OVERLAP,
    &choice_gap::CHOICE_GAP,
    &crowded_screen::CROWDED_SCREEN,
    &dead_end::DEAD_END,
    &duplicate_name::DUPLICATE_NAME,
    &endless_loop::ENDLESS_LOOP,
    &endless_visit::ENDLESS_VISIT,
    &idle_question::IDLE_QUESTION,
    &impossible_band::IMPOSSIBLE_BAND,
    &malformed::MALFORMED,
    &missing_caution::MISSING_CAUTION,
    &missing_source::MISSING_SOURCE,
    &unit_mismatch::UNIT_MISMATCH,
    &unknown_name::UNKNOWN_NAME,
    &unmapped_outcome::UNMAPPED_OUTCOME,
    &unproven_verdict::UNPROVEN_VERDICT,
    &unreachable_step::UNREACHABLE_STEP,
    &unsafe_text::UNSAFE_TEXT,
    &unused_name::UNUSED_NAME,
];

/// The rules that only a library which is to be released must keep, in the order of their names.
pub(super) static RELEASE: [&Rule; 2] = [&draft_tree::DRAFT_TREE, &missing_edition::MISSING_EDITION];
