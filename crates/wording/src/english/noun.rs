//! Nouns: what planes and judged fields are called.

use jointwright_joint::cable::{Layer, Words};
use jointwright_joint::plane::Plane;
use jointwright_joint::said::Quantity;

/// Plane, as a crew calls it; a cut is named by the layer that it goes through.
pub(crate) fn plane(plane: Plane, words: Words) -> String {
    let of = |layer: Layer| layer.name(words);
    match (plane.layer(), plane) {
        (_, Plane::AdapterNear) => "inner end of the adapter".to_owned(),
        (_, Plane::AdapterFar) => "outer end of the adapter".to_owned(),
        (_, Plane::ContactNear) => "inner end of the shield contact".to_owned(),
        (_, Plane::ContactFar) => "outer end of the shield contact".to_owned(),
        (_, Plane::SealStart) => "inner end of the seal".to_owned(),
        (Some(layer), Plane::InsulationEnd) => format!("{} end", of(layer)),
        (Some(layer), _) => format!("{} edge", of(layer)),
        (None, plane) => plane.name().replace('-', " "),
    }
}

/// Judged field, as a crew calls it.
pub(crate) fn quantity(quantity: Quantity) -> &'static str {
    match quantity {
        Quantity::Interface => "field along the interface",
        Quantity::ElectrodeEnd => "field at the end of the electrode",
        Quantity::DeflectorTip => "field at the tip of the deflector",
        Quantity::DeflectorHeel => "field at the heel of the deflector",
        Quantity::ScreenEdge => "field along the cable before the screen edge",
    }
}
