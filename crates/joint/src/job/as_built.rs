//! As built: what was read on the finished ends of one phase, beside what the job plans.
//!
//! Why its own room: windows say where a cut may lie; a reading says where it lies, and every later room computes with it.
//!
//! Invariants: a reading never moves a window; only the place between the windows is replaced.
//!
//! Not here: the file of readings and their conversion (`built`), the places that follow (`cutback`).

use crate::plane::Plane;
use jointwright_units::{Interval, Station};
use std::collections::BTreeMap;

/// Facts as built of one phase of a joint.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct AsBuilt {
    /// Phase; no other one is judged.
    pub phase: u8,
    /// Legs with a reading, by name.
    pub legs: BTreeMap<String, LegAsBuilt>,
}

/// Facts as built of one leg in one phase; an error of the instrument is within least and greatest.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct LegAsBuilt {
    /// Least and greatest place of a cut or a mark, from the square-cut conductor end.
    pub places: BTreeMap<Plane, (Station, Station)>,
    /// Least and greatest distance between two planes, with the planes.
    pub distances: Vec<((Plane, Plane), (Station, Station))>,
    /// Length of the connector as made, and who read it.
    pub connector_length: Option<(Interval, String)>,
}

impl LegAsBuilt {
    /// The same without the places that were read: a connector's growth is a fact about the connector and stays.
    #[must_use]
    pub fn without_places(&self) -> LegAsBuilt {
        LegAsBuilt {
            connector_length: self.connector_length.clone(),
            ..LegAsBuilt::default()
        }
    }
}

impl AsBuilt {
    /// The same without the places that were read.
    #[must_use]
    pub fn without_places(&self) -> AsBuilt {
        let legs = self.legs.iter();
        AsBuilt {
            phase: self.phase,
            legs: legs
                .map(|(leg, built)| (leg.clone(), built.without_places()))
                .collect(),
        }
    }
}
