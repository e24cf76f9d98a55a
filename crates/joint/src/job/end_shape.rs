//! Fields by which a row of a job names its ends, and fields by which a job names files of such rows.
//!
//! A row may name several ends if it states what goes there, what somebody decided or the worst condition found.
//! A row about a reading, a count or a test names one end: a list would give one end's values to another.

use crate::form::Need::{Optional, Required};
use crate::form::{Field, Kind, field};

const PHASE: Kind = Kind::Integer {
    least: 1,
    greatest: 3,
};

pub(crate) const ONE_LEG: Field = field("leg", Kind::Sole(&Kind::Id), Required, "Leg.");
pub(crate) const ONE_PHASE: Field = field("phase", Kind::Sole(&PHASE), Required, "Phase.");
pub(super) const LEGS: Field = field(
    "leg",
    Kind::Several(&Kind::Id),
    Required,
    "Leg, or a list of legs: the row counts once for each.",
);
pub(super) const PHASES: Field = field(
    "phase",
    Kind::Several(&PHASE),
    Required,
    "Phase, or a list of phases: the row counts once for each.",
);
pub(super) const LEGS_OR_ALL: Field = field(
    "leg",
    Kind::Several(&Kind::Id),
    Optional,
    "Leg, or a list of legs; left out: all legs.",
);
pub(super) const CLOSED_LEGS: Field = field(
    "leg",
    Kind::Several(&Kind::Id),
    Optional,
    "Leg, or a list of legs: the word counts once for each; left out: a question about the whole joint.",
);
pub(super) const CLOSED_PHASES: Field = field(
    "phase",
    Kind::Several(&PHASE),
    Optional,
    "Phase, or a list of phases; left out: every phase of the leg.",
);
pub(super) const READINGS_CSV: Field = field(
    "readings_csv",
    Kind::Text,
    Optional,
    "CSV file beside the job with more readings: one header line with the names of the fields, then one reading a line.",
);
pub(super) const COUNTS_CSV: Field = field(
    "counts_csv",
    Kind::Text,
    Optional,
    "CSV file beside the job with more counts: one header line with the names of the fields, then one count a line.",
);
pub(super) const LOTS_CSV: Field = field(
    "lots_csv",
    Kind::Text,
    Optional,
    "CSV file beside the job with more lots: one header line with the names of the fields, then one lot a line.",
);
