//! Count: what was counted and seen at one end.

use super::reader::JobReader;
use crate::cable::{Metal, ShieldKind};
use crate::catalogue::{metal, shield_kind};
use crate::end::EndId;
use crate::form::Record;
use crate::said::{RowHint, RowSaid};

/// Counts and looks at one end.
#[derive(Clone, Debug, Default)]
pub struct Count {
    /// Straps or wires of the metallic shield.
    pub shield_elements: Option<u32>,
    /// Strands of the conductor.
    pub strands: Option<u32>,
    /// Metal of the conductor, as seen.
    pub metal: Option<Metal>,
    /// Form of the metallic shield, as seen.
    pub shield_kind: Option<ShieldKind>,
}

pub(super) fn count(reader: &mut JobReader<'_>, row: &Record) -> Option<(EndId, Count)> {
    let end = reader.end(row)?;
    let seen = ["shield_elements", "strands", "metal", "shield_kind"];
    if !seen.iter().any(|name| row.is_given(name)) {
        reader.complain(
            row.at,
            RowSaid::CountSaysNothing,
            RowHint::ItTakes {
                fields: seen.map(str::to_owned).to_vec(),
            },
        );
        return None;
    }
    let whole = |name| row.integer(name).and_then(|n| u32::try_from(n).ok());
    let row = Count {
        shield_elements: whole("shield_elements"),
        strands: whole("strands"),
        metal: row.text("metal").and_then(metal),
        shield_kind: row.text("shield_kind").and_then(shield_kind),
    };
    Some((end, row))
}
