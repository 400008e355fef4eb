//! The rules, one file each. Everything a rule says stands in its file.

mod band_gap;
mod band_overlap;
mod choice_gap;
mod crowded_screen;
mod dead_end;
mod duplicate_name;
mod endless_loop;
mod endless_visit;
mod idle_question;
mod malformed;
mod missing_caution;
mod missing_source;
mod unit_mismatch;
mod unknown_name;
mod unmapped_outcome;
mod unreachable_step;
mod unsafe_text;
mod unused_name;

use super::rule::Rule;

/// Every rule, in the order of their names.
pub(super) static ALL: [&Rule; 18] = [
    &band_gap::BAND_GAP,
    &band_overlap::BAND_OVERLAP,
    &choice_gap::CHOICE_GAP,
    &crowded_screen::CROWDED_SCREEN,
    &dead_end::DEAD_END,
    &duplicate_name::DUPLICATE_NAME,
    &endless_loop::ENDLESS_LOOP,
    &endless_visit::ENDLESS_VISIT,
    &idle_question::IDLE_QUESTION,
    &malformed::MALFORMED,
    &missing_caution::MISSING_CAUTION,
    &missing_source::MISSING_SOURCE,
    &unit_mismatch::UNIT_MISMATCH,
    &unknown_name::UNKNOWN_NAME,
    &unmapped_outcome::UNMAPPED_OUTCOME,
    &unreachable_step::UNREACHABLE_STEP,
    &unsafe_text::UNSAFE_TEXT,
    &unused_name::UNUSED_NAME,
];
