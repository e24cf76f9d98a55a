//! Table of fields of a job's head.

use crate::form::Need::{Optional, Required};
use crate::form::{Kind, Shape, field};

const WORDS: &[&str] = &["us", "iec"];
/// Languages by their codes in ISO 639-1.
const LANGUAGES: &[&str] = &["en", "es"];

pub(super) const JOB_HEAD: Shape = Shape {
    name: "job",
    about: "What is to be joined.",
    fields: &[
        field("id", Kind::Id, Required, "Short name of the job."),
        field("title", Kind::Said, Required, "What and where, in words."),
        field(
            "date",
            Kind::Date,
            Required,
            "Day of the work; ages in store are counted to it.",
        ),
        field(
            "issue",
            Kind::Integer {
                least: 1,
                greatest: 9999,
            },
            Optional,
            "Which issue of the plan this is, counted up by one each time papers are printed anew; each replaces the one before it.",
        ),
        field(
            "kind",
            Kind::Text,
            Required,
            "\"straight\", \"branch\" or \"separable\"; \"cable\" for one run of cable without a joint, which `rate` rates.",
        ),
        field(
            "phases",
            Kind::Integer {
                least: 1,
                greatest: 3,
            },
            Required,
            "Number of phases.",
        ),
        field(
            "words",
            Kind::Choice(WORDS),
            Required,
            "Names of the layers: US or IEC practice.",
        ),
        field(
            "language",
            Kind::Choice(LANGUAGES),
            Optional,
            "Language of pages and papers: English (\"en\", also where none is named) or Spanish (\"es\").",
        ),
        field(
            "invented",
            Kind::Flag,
            Optional,
            "True for a job made up to show the program.",
        ),
    ],
};
