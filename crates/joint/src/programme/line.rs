//! Line: a sentence of a step, with its source.

use super::practice;
use crate::catalogue::Head;
use crate::said::{Paper, Said};

/// A sentence with its source.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    /// Sentence.
    pub say: Said,
    /// Source of the sentence.
    pub source: Said,
}

/// A line of common practice.
pub(super) fn common(say: impl Into<Said>) -> Line {
    Line {
        say: say.into(),
        source: practice(),
    }
}

/// Paper of a part, without the doubts about its row.
pub(super) fn paper(head: &Head) -> Said {
    let doubts = Vec::new();
    Paper {
        doubts,
        ..head.paper()
    }
    .into()
}
