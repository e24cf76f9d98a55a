//! Layer: the surfaces of a single-core cable from the inside out, and their names.
//!
//! Why its own file: a reading over the wrong layer is a joint that does not fit, so a layer is always named in full.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Trade vocabulary of a page.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Default, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Words {
    /// North American words.
    #[default]
    Us,
    /// IEC words.
    Iec,
}

/// A layer; a diameter "over" it is measured on its outer surface. Ordered from the inside out.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
pub enum Layer {
    /// Bare conductor.
    Conductor,
    /// Extruded semiconducting layer on the conductor.
    ConductorScreen,
    /// Insulation.
    Insulation,
    /// Extruded semiconducting layer on the insulation.
    InsulationScreen,
    /// Wires, straps or tape.
    MetallicShield,
    /// Outermost layer.
    Jacket,
}

impl Layer {
    /// Every layer, from the inside out.
    pub const ALL: [Layer; 6] = [
        Layer::Conductor,
        Layer::ConductorScreen,
        Layer::Insulation,
        Layer::InsulationScreen,
        Layer::MetallicShield,
        Layer::Jacket,
    ];

    /// Word in files.
    pub const fn file_name(self) -> &'static str {
        match self {
            Layer::Conductor => "conductor",
            Layer::ConductorScreen => "conductor-screen",
            Layer::Insulation => "insulation",
            Layer::InsulationScreen => "insulation-screen",
            Layer::MetallicShield => "metallic-shield",
            Layer::Jacket => "jacket",
        }
    }

    /// Full name, so that no layer is confused with another.
    pub fn name(self, words: Words) -> &'static str {
        match (self, words) {
            (Layer::Conductor, _) => "conductor",
            (Layer::ConductorScreen, Words::Us) => "conductor shield",
            (Layer::ConductorScreen, Words::Iec) => "conductor screen",
            (Layer::Insulation, _) => "insulation",
            (Layer::InsulationScreen, Words::Us) => "insulation shield (black semicon)",
            (Layer::InsulationScreen, Words::Iec) => "insulation screen",
            (Layer::MetallicShield, Words::Us) => "metallic shield",
            (Layer::MetallicShield, Words::Iec) => "metallic screen",
            (Layer::Jacket, Words::Us) => "jacket",
            (Layer::Jacket, Words::Iec) => "oversheath",
        }
    }

    /// The next layer inwards, or `None` under the conductor.
    pub fn inner(self) -> Option<Layer> {
        Layer::ALL.into_iter().rev().find(|l| *l < self)
    }

    /// The next layer outwards, or `None` over the jacket.
    pub fn outer(self) -> Option<Layer> {
        Layer::ALL.into_iter().find(|l| *l > self)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    #[test]
    fn no_two_layers_share_a_name() {
        for words in [Words::Us, Words::Iec] {
            let names: BTreeSet<_> = Layer::ALL.iter().map(|l| l.name(words)).collect();
            assert_eq!(names.len(), Layer::ALL.len());
        }
    }

    #[test]
    fn inner_undoes_outer() {
        for layer in Layer::ALL {
            if let Some(outer) = layer.outer() {
                assert_eq!(outer.inner(), Some(layer));
            }
        }
        assert_eq!(Layer::Conductor.inner(), None);
        assert_eq!(Layer::Jacket.outer(), None);
    }
}
