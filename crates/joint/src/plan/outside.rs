//! Outside: outside diameters of a leg's layers, as a picture draws them.
//!
//! Why its own file: a picture needs one number for each layer, and nothing that is judged may come from a mean.
//!
//! Invariants: a layer is left out if it was not read and its papers do not give its diameter.
//! No check reads these numbers.
//!
//! Not here: readings and their errors (`survey`).

use super::words::layer_words;
use crate::cable::Layer;
use crate::checks::LegInputs;
use crate::judge::Judged;
use crate::said::Wording;
use jointwright_units::{Length, Station};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Outside of one layer of a leg.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct LayerDoc {
    /// Layer, as job files name it.
    pub layer: Layer,
    /// A crew's name for the layer.
    pub words: String,
    /// Outside diameter, mm: mean of all readings on the leg's ends, else the middle of the range that its papers allow.
    pub diameter_mm: f64,
    /// Origin of the diameter.
    pub of: DiameterOf,
}

/// Origin of a diameter.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum DiameterOf {
    /// Readings of the leg's ends.
    Readings,
    /// The cable's papers, which may rest on the table of cables.
    Papers,
}

/// Layers of a leg from the inside out.
pub(super) fn layer_docs(
    judged: &Judged<'_>,
    leg: &LegInputs<'_>,
    wording: &dyn Wording,
) -> Vec<LayerDoc> {
    let doc = |layer: Layer| {
        let (diameter_mm, of) = match mean_read(judged, leg, layer) {
            Some(mean_mm) => (mean_mm, DiameterOf::Readings),
            None => (middle_of_papers(leg, layer)?, DiameterOf::Papers),
        };
        Some(LayerDoc {
            layer,
            words: layer_words(layer, wording),
            diameter_mm,
            of,
        })
    };
    Layer::ALL.into_iter().filter_map(doc).collect()
}

/// Mean of all readings over a layer on the leg's ends, mm.
fn mean_read(judged: &Judged<'_>, leg: &LegInputs<'_>, layer: Layer) -> Option<f64> {
    let job = &judged.inputs.order.job;
    let values: Vec<Length> = leg
        .ends
        .iter()
        .flat_map(|end| job.readings.of(&end.id))
        .filter(|reading| reading.over == layer)
        .flat_map(|reading| reading.values.iter().copied())
        .collect();
    let sum_nm: i128 = values.iter().map(|value| i128::from(value.nm())).sum();
    // The division drops less than a nanometre, which no picture shows.
    let mean_nm = sum_nm.checked_div(values.len() as i128)?;
    i64::try_from(mean_nm)
        .ok()
        .map(|nm| Length::from_nm(nm).mm())
}

/// Middle of the range that the papers allow, mm.
fn middle_of_papers(leg: &LegInputs<'_>, layer: Layer) -> Option<f64> {
    let allowed = leg.leg.cable.diameter_over(layer).ok()?.interval();
    let (least, greatest) = (allowed.least().nm(), allowed.greatest().nm());
    Some(Station::from_half_nm(least.checked_add(greatest)?).mm())
}
