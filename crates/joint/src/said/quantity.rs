//! Quantity: judged quantities of a field.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Judged field, by its place.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
pub enum Quantity {
    /// Largest field along the interfaces between cable, adapter and body, up to the stand-off before the edge of the screen.
    Interface,
    /// Largest field at the rounded end of the electrode.
    ElectrodeEnd,
    /// Largest field at the tip of the deflector.
    DeflectorTip,
    /// Largest field at the heel of the deflector.
    DeflectorHeel,
    /// Field along the cable at the stand-off before the edge of the screen.
    ScreenEdge,
}

impl Quantity {
    /// All of them.
    pub const ALL: [Quantity; 5] = [
        Quantity::Interface,
        Quantity::ElectrodeEnd,
        Quantity::DeflectorTip,
        Quantity::DeflectorHeel,
        Quantity::ScreenEdge,
    ];
}
