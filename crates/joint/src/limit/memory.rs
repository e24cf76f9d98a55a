//! Limits from memory: kept as data, ruling nothing until the owner confirms them.

use serde::Deserialize;
use std::sync::LazyLock;

/// A limit from memory.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MemoryRow {
    /// Key under which the owner may confirm it.
    pub key: String,
    /// Check that uses it.
    pub check: String,
    /// Sentence of the limit.
    pub says: String,
    /// Longest clearing time, s.
    pub clearing_time_greatest_s: Option<f64>,
    /// Insulation level of the limit.
    pub level_percent: Option<i64>,
    /// Source that it is remembered from.
    pub source: String,
    /// Certainty of the memory.
    pub sure: String,
}

#[derive(Deserialize)]
struct Table {
    row: Vec<MemoryRow>,
}

/// Text of the file of limits from memory.
pub const MEMORY_TEXT: &str = include_str!("../../../../data/limit/from_memory.toml");

static ROWS: LazyLock<Vec<MemoryRow>> = LazyLock::new(|| {
    let table: Result<Table, _> = toml::from_str(MEMORY_TEXT);
    table
        .expect("the embedded table of limits is well formed; a test reads it")
        .row
});

/// Keys of all values from memory.
pub fn memory_keys() -> impl Iterator<Item = &'static str> {
    ROWS.iter().map(|row| row.key.as_str())
}

/// Row of a check; for its insulation level where the check has one row for each.
pub fn memory_row(check: &str, level_percent: Option<i64>) -> Option<&'static MemoryRow> {
    ROWS.iter()
        .find(|row| row.check == check && row.level_percent == level_percent)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_row_names_a_check_and_has_a_key_of_its_own() {
        let mut keys: Vec<&str> = memory_keys().collect();
        for row in ROWS.iter() {
            assert!(
                super::super::check_row(&row.check).is_some(),
                "{}",
                row.check
            );
            assert_eq!(row.sure, "M");
        }
        keys.sort_unstable();
        keys.dedup();
        assert_eq!(keys.len(), ROWS.len());
    }
}
