//! Papers: whether a leg measures like its papers, and whether a reading was taken over the layer that it names.
//!
//! Why its own file: the answer is one of five sentences, never a percentage, and each states its own limits.
//!
//! Invariants:
//! - Papers never "fit" unless all their layers together can give the readings; a layer that does not fit is named, with the reading and the expectation.
//! - The papers' own row is never named as another construction.
//! - Only readings rule out a construction, so fewer readings never leave fewer constructions.
//! - Every sentence ends with the statement that it names no circuit and no dead cable.
//!
//! Assumes: each reading's interval holds the mean diameter there; several readings over one layer are taken together, because a cable is oval.

use super::candidate::{BuildUp, Candidate, INNER, step};
use super::unlike::Unlike;
use super::{Conductor, Construction, Layer, Metal, ShieldKind, Stranding, Unknown};
use jointwright_units::{Interval, Length};

/// Observations and readings of an end; only what somebody could tell is filled in.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Evidence {
    /// Diameters with their reading errors.
    pub diameters: Vec<(Layer, Interval)>,
    /// Straps or wires counted.
    pub shield_elements: Option<u32>,
    /// Form of the metallic shield.
    pub shield_kind: Option<ShieldKind>,
    /// Metal of the conductor.
    pub metal: Option<Metal>,
    /// Arrangement of the strands.
    pub stranding: Option<Stranding>,
    /// Strands counted.
    pub strands: Option<u32>,
}

/// A construction of the table, with its distance from the readings.
#[derive(Clone, Debug, PartialEq)]
pub struct Near {
    /// Construction.
    pub candidate: Candidate,
    /// Greatest ratio of a reading's distance from its nominal diameter to the reading's own error.
    pub off_ratio: f64,
}

/// Reason why readings do not allow an answer.
#[derive(Clone, Debug, PartialEq)]
pub enum Lacking {
    /// No diameter under the metallic layer was measured.
    Diameter,
    /// The table has no row for a layer that was measured.
    Row(Unknown),
}

/// Whether a leg measures like its papers.
#[derive(Clone, Debug, PartialEq)]
pub enum Likeness {
    /// Like the papers, and like nothing else in the table.
    FitsPapersOnly,
    /// Like the papers, and like these too, the nearest first.
    FitsOthersAlso(Vec<Near>),
    /// Not like the papers, with this first difference, but like these, the nearest first.
    FitsOthersNotPapers(Unlike, Vec<Near>),
    /// Not like the papers, with this first difference, and like no other construction of the table.
    FitsNone(Unlike),
    /// The readings do not allow an answer; the reason.
    NotEnough(Lacking),
}

/// Hull of the readings over each layer, from the inside out.
type Readings = [Option<Interval>; Layer::ALL.len()];

fn hulls(evidence: &Evidence) -> Readings {
    Layer::ALL.map(|layer| {
        let ours = evidence.diameters.iter().filter(|(over, _)| *over == layer);
        Interval::hull(ours.flat_map(|(_, reading)| [reading.least(), reading.greatest()]))
    })
}

/// Compares an end's readings with its papers and with every candidate of `table`.
///
/// A construction fits if diameters exist over all its layers that meet every reading, each larger than the one inside by a thickness that the layer may have.
/// Other constructions are compared by the layers under the metallic shield, because the table does not say which shield a cable has.
/// The row that the papers name is none of them, even if another layer, or another statement of the papers, does not fit.
pub fn compare(stated: &Construction, evidence: &Evidence, table: &[Candidate]) -> Likeness {
    let readings = hulls(evidence);
    if readings[..INNER.len()].iter().all(Option::is_none) {
        return Likeness::NotEnough(Lacking::Diameter);
    }
    let unlike = match unlike_papers(stated, evidence, &readings) {
        Ok(unlike) => unlike,
        Err(unknown) => return Likeness::NotEnough(Lacking::Row(unknown)),
    };
    let wall_nominal = stated.wall_nominal().ok();
    let is_papers =
        |c: &Candidate| c.conductor == stated.conductor && Some(c.wall_nominal) == wall_nominal;
    let fits = |c: &&Candidate| {
        !is_papers(c) && visible_fits(c.conductor, evidence) && steps_fit(&c.steps, &readings)
    };
    let others = table.iter().filter(fits).map(|candidate| Near {
        candidate: candidate.clone(),
        off_ratio: off_ratio(candidate, &readings),
    });
    let mut others: Vec<Near> = others.collect();
    // At equal distance, in the order of the table.
    others.sort_by(|a, b| a.off_ratio.total_cmp(&b.off_ratio));
    match (unlike, others.is_empty()) {
        (None, true) => Likeness::FitsPapersOnly,
        (None, false) => Likeness::FitsOthersAlso(others),
        (Some(unlike), false) => Likeness::FitsOthersNotPapers(unlike, others),
        (Some(unlike), true) => Likeness::FitsNone(unlike),
    }
}

/// Greatest ratio of a reading's distance from the nominal diameter of a construction to the reading's own error.
fn off_ratio(candidate: &Candidate, readings: &Readings) -> f64 {
    let each = candidate.nominals.iter().zip(readings);
    let off = each.filter_map(|(nominal, reading)| {
        let reading = (*reading)?;
        let middle = (reading.least().mm() + reading.greatest().mm()) / 2.0;
        let error = (reading.width().mm() / 2.0).max(ERROR_LEAST_MM);
        Some((middle - nominal.mm()).abs() / error)
    });
    off.fold(0.0, f64::max)
}

/// Least error of a reading of a cable's diameter, mm.
const ERROR_LEAST_MM: f64 = 0.01;

fn visible_fits(conductor: Conductor, evidence: &Evidence) -> bool {
    evidence.metal.is_none_or(|seen| seen == conductor.metal)
        && evidence
            .stranding
            .is_none_or(|seen| seen == conductor.stranding)
        && evidence
            .strands
            .is_none_or(|n| can_have_strands(conductor, n))
}

/// Whether a conductor can have this number of strands: one strand is solid, several are not; otherwise only the usual numbers of round wires are distinguished, and compacted ones not at all.
///
/// # Source
/// 7, 19, 37, 61 wires by size: astm_b8 class B, memory; it rules out constructions named beside the papers, nothing else.
fn can_have_strands(conductor: Conductor, n: u32) -> bool {
    let kcmil = conductor.size.kcmil();
    match conductor.stranding {
        Stranding::Solid => n == 1,
        Stranding::Compact => n > 1,
        _ if conductor.size.is_metric() => n > 1,
        // 2 AWG is 66 kcmil, 4/0 AWG 212.
        _ if kcmil < 70.0 => n == 7,
        _ if kcmil < 220.0 => n == 19,
        _ if kcmil < 510.0 => n == 37,
        _ if kcmil < 1010.0 => n == 61,
        _ => n > 61,
    }
}

/// Observations that contradict the papers' own statements in the job; no row of the table is used.
///
/// Every diameter of the table rests on tolerances or thicknesses that nobody here has read, so only observations and the diameters in the papers themselves count.
pub fn denied_by_papers(stated: &Construction, evidence: &Evidence) -> Vec<Unlike> {
    let mut denied = seen_unlike(stated, evidence);
    // Papers of a tape do not mention wires beside it.
    denied.retain(|unlike| {
        !matches!(unlike, Unlike::ShieldElements(_, papers) if papers.elements().is_none())
    });
    for (layer, reading) in Layer::ALL.into_iter().zip(hulls(evidence)) {
        if let (Some(read), Some(papers)) = (reading, stated.stated.get(&layer))
            && papers.meet(read).is_none()
        {
            denied.push(Unlike::Over {
                layer,
                read,
                papers: *papers,
            });
        }
    }
    denied
}

/// Observations and counts that differ from the papers; for strands one or several, not their number.
fn seen_unlike(stated: &Construction, evidence: &Evidence) -> Vec<Unlike> {
    let papers = stated.conductor;
    let shield = stated.shield;
    let metal = evidence.metal.filter(|seen| *seen != papers.metal);
    let stranding = evidence.stranding.filter(|seen| *seen != papers.stranding);
    let is_solid = papers.stranding == Stranding::Solid;
    let strands = evidence.strands.filter(|n| (*n == 1) != is_solid);
    let kind = evidence.shield_kind.filter(|seen| *seen != shield.kind());
    let elements = evidence
        .shield_elements
        .filter(|n| shield.elements() != Some(*n));
    let all = [
        metal.map(|seen| Unlike::Metal(seen, papers.metal)),
        stranding.map(|seen| Unlike::Stranding(seen, papers.stranding)),
        strands.map(|n| Unlike::Strands(n, papers.stranding)),
        kind.map(|seen| Unlike::ShieldKind(seen, shield.kind())),
        elements.map(|n| Unlike::ShieldElements(n, shield)),
    ];
    all.into_iter().flatten().collect()
}

fn steps_fit(steps: &[BuildUp], readings: &Readings) -> bool {
    let mut inside = None;
    for (step, reading) in steps.iter().zip(readings) {
        let Some(diameters) = step.from(inside) else {
            return false;
        };
        match reading.map_or(Some(diameters), |reading| diameters.meet(reading)) {
            Some(possible) => inside = Some(possible),
            None => return false,
        }
    }
    true
}

/// First difference from the papers, observations before layers from the inside out; an error if a measured layer has no row and no stated diameter.
fn unlike_papers(
    stated: &Construction,
    evidence: &Evidence,
    readings: &Readings,
) -> Result<Option<Unlike>, Unknown> {
    let mut first = seen_unlike(stated, evidence).into_iter().next();
    let outermost = readings.iter().rposition(Option::is_some).unwrap_or(0);
    let mut inside: Result<Interval, Unknown> = step_over(stated, Layer::Conductor, None);
    for (index, layer) in Layer::ALL.into_iter().enumerate().take(outermost + 1) {
        if index > 0 {
            inside = step_over(stated, layer, Some(inside));
        }
        let Some(read) = readings[index] else {
            continue;
        };
        let papers = inside.clone()?;
        match papers.meet(read) {
            Some(possible) => inside = Ok(possible),
            // Further layers are judged from the papers' range, so that a missing row outside is still reported.
            None => {
                first.get_or_insert(Unlike::Over {
                    layer,
                    read,
                    papers,
                });
            }
        }
    }
    Ok(first)
}

fn step_over(
    stated: &Construction,
    layer: Layer,
    inside: Option<Result<Interval, Unknown>>,
) -> Result<Interval, Unknown> {
    match (step(stated, layer)?, inside) {
        (BuildUp::Over(interval), _) => Ok(interval),
        (BuildUp::Grows(by), Some(inside)) => Ok(inside? + by),
        (BuildUp::Grows(by), None) => Ok(by),
    }
}

/// Layer over which a reading seems to have been taken, if it cannot be over the layer it names.
///
/// Only a screen and its neighbours are confused; `None` if the reading can be over `said`, if it fits no neighbour, or if a row is missing.
pub fn wrong_layer(stated: &Construction, said: Layer, reading: Interval) -> Option<Layer> {
    let meets = |layer: Layer| {
        let band = stated.diameter_over(layer).ok()?;
        Some(band.interval().meet(reading).is_some())
    };
    if meets(said)? {
        return None;
    }
    beside(stated, said, reading)
}

/// Neighbour of a layer over which a reading can have been taken, if either is a screen.
fn beside(stated: &Construction, said: Layer, reading: Interval) -> Option<Layer> {
    let meets = |layer: Layer| {
        let band = stated.diameter_over(layer).ok();
        band.is_some_and(|band| band.interval().meet(reading).is_some())
    };
    let is_screen = |layer| matches!(layer, Layer::ConductorScreen | Layer::InsulationScreen);
    let neighbours = [said.outer(), said.inner()].into_iter().flatten();
    neighbours
        .filter(|n| is_screen(said) || is_screen(*n))
        .find(|n| meets(*n))
}

/// Layer over which a reading seems to have been taken, though its error leaves a doubt.
///
/// As read it cannot be over `said`; with its greatest error it can, and it can also be over the neighbour.
/// `None` in every clearer case.
pub fn doubtful_layer(
    stated: &Construction,
    said: Layer,
    read: Interval,
    error: Length,
) -> Option<Layer> {
    let band = stated.diameter_over(said).ok()?.interval();
    if band.meet(read).is_some() || band.meet(read.widened(error)).is_none() {
        return None;
    }
    beside(stated, said, read.widened(error))
}

#[cfg(test)]
mod matrix;
#[cfg(test)]
mod tests;
