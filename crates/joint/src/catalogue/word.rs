//! Words that rows may use, and the construction of a cable that some of them name.

use crate::cable::{Layer, Metal, ShieldKind, Stranding};
use crate::form::Record;

/// Words for the layers on which a part may sit.
pub const LAYER_NAMES: &[&str] = &[
    "conductor",
    "conductor-screen",
    "insulation",
    "insulation-screen",
    "metallic-shield",
    "jacket",
];
/// Words for the kinds of metallic shield.
pub const SHIELD_KINDS: &[&str] = &[
    "flat-straps",
    "concentric-wires",
    "lapped-tape",
    "corrugated-tape",
    "tape-with-wires",
];
/// Words for conductor metals.
pub const METALS: &[&str] = &["copper", "aluminium"];
/// Words for strandings.
pub const STRANDINGS: &[&str] = &["solid", "concentric", "compressed", "compact"];
/// Words for the kinds of joint.
pub const KINDS: &[&str] = &["straight", "branch", "separable"];
/// Words for the bondings of a leg's shield.
pub const BONDINGS: &[&str] = &["solid", "open", "linked"];
/// Words for the earthings of a system.
pub const EARTHINGS: &[&str] = &["solid", "impedance", "resonant", "isolated"];
/// Words for the places of a fit.
pub const WHERE_NAMES: &[&str] = &["bore", "mouth", "seal"];
/// Words for the time until which a made-up part may be moved.
pub const MOVES: &[&str] = &["never", "before-holdout-is-out", "within-minutes"];
/// Words for the surface of a jacket under a seal.
pub const JACKET_SURFACES: &[&str] = &["smooth", "scored", "wrinkled", "embossed", "cracked"];
/// Words for the span of a seal.
pub const SPANS: &[&str] = &["leg", "joint"];
/// Words for the origin of inner geometry.
pub const ORIGINS: &[&str] = &["maker", "measured"];
/// Words for the date from which the months of a shelf life run.
pub const FROM_DATES: &[&str] = &["made", "expanded"];

/// Layers that a list of a row names.
pub(super) fn layers(record: &Record, name: &str) -> Vec<Layer> {
    let words = record.texts(name);
    words.iter().filter_map(|word| layer(word)).collect()
}

/// Layer for a word in a file.
pub fn layer(word: &str) -> Option<Layer> {
    Layer::ALL
        .into_iter()
        .find(|layer| layer.file_name() == word)
}

/// Word in a file for a kind of metallic shield.
pub const fn shield_word(kind: ShieldKind) -> &'static str {
    match kind {
        ShieldKind::FlatStraps => "flat-straps",
        ShieldKind::ConcentricWires => "concentric-wires",
        ShieldKind::LappedTape => "lapped-tape",
        ShieldKind::CorrugatedTape => "corrugated-tape",
        ShieldKind::TapeWithWires => "tape-with-wires",
    }
}

/// Kind of shield for a word.
pub fn shield_kind(word: &str) -> Option<ShieldKind> {
    ShieldKind::ALL
        .into_iter()
        .find(|kind| shield_word(*kind) == word)
}

/// Metal for a word in a file.
pub fn metal(word: &str) -> Option<Metal> {
    Some(match word {
        "copper" => Metal::Copper,
        "aluminium" => Metal::Aluminium,
        _ => return None,
    })
}

/// Stranding for a word in a file.
pub fn stranding(word: &str) -> Option<Stranding> {
    Some(match word {
        "solid" => Stranding::Solid,
        "concentric" => Stranding::Concentric,
        "compressed" => Stranding::Compressed,
        "compact" => Stranding::Compact,
        _ => return None,
    })
}
