//! Words of files for the construction of a cable.

use crate::cable::{Layer, Metal, ShieldKind, Stranding};
use crate::form::Record;

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
