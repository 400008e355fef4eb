//! What an author's editor is told, against what the loader takes.

mod agree;
mod explain;
mod refuse;
mod texts;

use crate::schemas::{complaints, judge};
