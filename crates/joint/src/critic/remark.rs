//! Remark: rows with a doubt although nothing in them contradicts itself.
//!
//! A remark is no defect: a file that has only remarks has no defects.

use super::entry::entries;
use crate::catalogue::Catalogue;
use crate::form::Span;

/// A row with a doubt.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Remark {
    /// Place of the row.
    pub place: Span,
    /// Short name of the row.
    pub row: String,
    /// Doubts, sentence fragments.
    pub doubts: Vec<String>,
}

/// Rows that no second person has checked, and rows whose paper nobody states to be the one in force, in the order of files and lines.
pub fn remarks(catalogue: &Catalogue) -> Vec<Remark> {
    let mut remarks: Vec<Remark> = entries(catalogue)
        .iter()
        .filter_map(|entry| {
            let mut doubts = Vec::new();
            if entry.head.checked.is_none() {
                doubts.push("row not checked by a second person".to_owned());
            }
            if entry.head.instructions.seen_current.is_none() {
                doubts.push("not known until when its paper was the one in force".to_owned());
            }
            (!doubts.is_empty()).then(|| Remark {
                place: entry.head.place.clone(),
                row: entry.head.id.clone(),
                doubts,
            })
        })
        .collect();
    remarks.sort_by(|a, b| a.place.cmp(&b.place));
    remarks
}
