//! End: one cable end of a joint, and the rows that belong to it.
//!
//! Why its own room: readings, counts, lots and tests belong to an end; if every reader filtered one list by leg and phase, one of them would filter it wrong one day.
//!
//! Invariants: the row of an end does not name its end, so it cannot name a wrong one; rows come end by end, and within an end in the order in which they were written.
//!
//! Not here: the cable of a leg (`job`), the subject of a ruling (`limit`).

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use std::fmt;

/// One cable end: a leg in one phase.
///
/// ```
/// use jointwright_joint::end::EndId;
/// assert_eq!(EndId::new("A", 1).to_string(), "A1");
/// ```
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema)]
pub struct EndId {
    /// Name of the leg.
    pub leg: String,
    /// Phase.
    pub phase: u8,
}

impl EndId {
    /// The end of a leg in a phase.
    pub fn new(leg: &str, phase: u8) -> EndId {
        EndId {
            leg: leg.to_owned(),
            phase,
        }
    }
}

/// The mark of the end: "A1".
impl fmt::Display for EndId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}{}", self.leg, self.phase)
    }
}

/// Rows of one kind, by the end that they belong to.
///
/// ```
/// use jointwright_joint::end::{ByEnd, EndId};
/// let mut counts = ByEnd::default();
/// counts.add(EndId::new("B", 1), 9);
/// counts.add(EndId::new("A", 2), 8);
/// assert_eq!(counts.of(&EndId::new("B", 1)), [9]);
/// assert_eq!(counts.of_leg("A").map(|(_, n)| *n).collect::<Vec<_>>(), [8]);
/// assert!(counts.of(&EndId::new("A", 1)).is_empty());
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct ByEnd<T>(BTreeMap<EndId, Vec<T>>);

impl<T> Default for ByEnd<T> {
    fn default() -> ByEnd<T> {
        ByEnd(BTreeMap::new())
    }
}

impl<T> ByEnd<T> {
    /// Adds a row to an end.
    pub fn add(&mut self, end: EndId, row: T) {
        self.0.entry(end).or_default().push(row);
    }

    /// Rows of an end.
    pub fn of(&self, end: &EndId) -> &[T] {
        self.0.get(end).map_or(&[], Vec::as_slice)
    }

    /// Rows of an end, to be changed.
    pub fn of_mut(&mut self, end: &EndId) -> &mut Vec<T> {
        self.0.entry(end.clone()).or_default()
    }

    /// Rows of a leg with their ends, phase by phase.
    pub fn of_leg<'r>(&'r self, leg: &str) -> impl Iterator<Item = (&'r EndId, &'r T)> {
        let of_leg = self.0.range(EndId::new(leg, 0)..=EndId::new(leg, u8::MAX));
        of_leg.flat_map(|(end, rows)| rows.iter().map(move |row| (end, row)))
    }

    /// Keeps the rows of one phase only.
    pub fn keep_phase(&mut self, phase: u8) {
        self.0.retain(|end, _| end.phase == phase);
    }

    /// All rows with their ends.
    pub fn iter(&self) -> impl Iterator<Item = (&EndId, &T)> {
        let ends = self.0.iter();
        ends.flat_map(|(end, rows)| rows.iter().map(move |row| (end, row)))
    }

    /// Whether no end has a row.
    pub fn is_empty(&self) -> bool {
        self.0.values().all(Vec::is_empty)
    }
}

impl<T> Extend<(EndId, T)> for ByEnd<T> {
    fn extend<I: IntoIterator<Item = (EndId, T)>>(&mut self, rows: I) {
        for (end, row) in rows {
            self.add(end, row);
        }
    }
}

impl<T> FromIterator<(EndId, T)> for ByEnd<T> {
    fn from_iter<I: IntoIterator<Item = (EndId, T)>>(rows: I) -> ByEnd<T> {
        let mut by_end = ByEnd::default();
        for (end, row) in rows {
            by_end.add(end, row);
        }
        by_end
    }
}
