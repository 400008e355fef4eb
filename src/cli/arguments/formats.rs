//! The words of which one is chosen: how something is printed, and by what it is measured.

use clap::ValueEnum;

#[derive(Clone, Copy, Debug, ValueEnum)]
pub(in crate::cli) enum ReportFormat {
    Text,
    Html,
    Json,
}

#[derive(Clone, Copy, Debug, ValueEnum)]
pub(in crate::cli) enum HistoryFormat {
    Text,
    Json,
}

#[derive(Clone, Copy, Debug, ValueEnum)]
pub(in crate::cli) enum AuditFormat {
    Text,
    Json,
    Csv,
    Html,
    /// How often each fault is met, learned from verdicts that held, as `registry/faults.yaml` of an overlay.
    Weights,
}

#[derive(Clone, Copy, Debug, ValueEnum)]
pub(in crate::cli) enum CheckFormat {
    Text,
    Json,
    Sarif,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(in crate::cli) enum RehearseFormat {
    Text,
    Json,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(in crate::cli) enum FormulaFormat {
    Text,
    Json,
}

/// A system of units.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(in crate::cli) enum Units {
    /// Degrees Fahrenheit, inches of water column, BTU per hour.
    Us,
    /// Degrees Celsius, pascals, kilowatts.
    Si,
}

/// What every scenario together must have walked.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(in crate::cli) enum Required {
    Steps,
    Edges,
}

#[derive(Clone, Copy, Debug, ValueEnum)]
pub(in crate::cli) enum PictureFormat {
    Svg,
    Dot,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(in crate::cli) enum PracticeFormat {
    Text,
    Json,
}
