//! Papers: does a leg measure like its papers, and was a reading taken over the layer it says?
//!
//! Why its own file: the answer is one of five sentences, never a percentage, and each says what it does not say.
//!
//! Invariants: papers whose layers cannot all have measured so are never said to fit; a construction is only ruled out by readings taken, so fewer readings never leave fewer constructions; every sentence ends by saying that it names no circuit and no dead cable.
//!
//! Assumes: each reading's interval holds the mean diameter there; several readings over one layer are taken together, because a cable is oval.

use super::candidate::{Candidate, INNER, Step, step};
use super::{Construction, Layer, Metal, ShieldKind, Stranding, Unknown, Words};
use jointwright_units::{Interval, Length};

/// What was seen and measured on an end; only what someone could tell is filled in.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Evidence {
    /// Diameters with their reading error.
    pub diameters: Vec<(Layer, Interval)>,
    /// Straps or wires counted.
    pub shield_elements: Option<u32>,
    /// Form of the metallic shield.
    pub shield_kind: Option<ShieldKind>,
    /// Metal of the conductor.
    pub metal: Option<Metal>,
    /// How the strands lie.
    pub stranding: Option<Stranding>,
}

/// Whether a leg measures like its papers.
#[derive(Clone, Debug, PartialEq)]
pub enum Likeness {
    /// Like the papers, and like nothing else in the table.
    FitsPapersOnly,
    /// Like the papers, and like these too.
    FitsOthersAlso(Vec<Candidate>),
    /// Not like the papers, but like these.
    FitsOthersNotPapers(Vec<Candidate>),
    /// Like nothing in the table, the papers included.
    FitsNone,
    /// The readings do not allow an answer, and why.
    NotEnough(String),
}

/// Last words of every sentence.
const NEVER: &str =
    "This says what the cable is made of, never which circuit it is or whether it is dead.";

/// How many constructions a sentence names before it counts the rest.
const NAMED_MAX: usize = 3;

impl Likeness {
    /// A plain sentence, and what it does not say.
    pub fn sentence(&self, words: Words) -> String {
        let said = match self {
            Likeness::FitsPapersOnly => {
                "The leg measures like its papers, and like no other construction of the table."
                    .to_owned()
            }
            Likeness::FitsOthersAlso(others) => {
                format!(
                    "The leg measures like its papers, but also like {}.",
                    list(others, words)
                )
            }
            Likeness::FitsOthersNotPapers(others) => {
                format!(
                    "The leg does not measure like its papers; it measures like {}.",
                    list(others, words)
                )
            }
            Likeness::FitsNone => format!(
                "The leg measures neither like its papers nor like any construction of the table: measure again, and see that each reading is over the layer it says ({}, {}).",
                Layer::Insulation.name(words),
                Layer::InsulationScreen.name(words)
            ),
            Likeness::NotEnough(why) => {
                format!("The readings do not say whether the leg measures like its papers: {why}.")
            }
        };
        format!("{said} {NEVER}")
    }
}

fn list(others: &[Candidate], words: Words) -> String {
    let named: Vec<String> = others
        .iter()
        .take(NAMED_MAX)
        .map(|c| c.phrase(words))
        .collect();
    let rest = others.len().saturating_sub(NAMED_MAX);
    if rest == 0 {
        named.join("; ")
    } else {
        format!("{}; and {rest} more", named.join("; "))
    }
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
/// A construction fits when diameters exist over all its layers, each growing on the one inside by a thickness it may have, that meet every reading.
/// Other constructions are compared by the layers under the metallic shield, since the table does not say which shield a cable has.
pub fn compare(stated: &Construction, evidence: &Evidence, table: &[Candidate]) -> Likeness {
    let readings = hulls(evidence);
    if readings[..INNER.len()].iter().all(Option::is_none) {
        return Likeness::NotEnough("no diameter under the metallic layer was measured".to_owned());
    }
    let like_papers = match papers_fit(stated, evidence, &readings) {
        Ok(fits) => fits,
        Err(unknown) => return Likeness::NotEnough(unknown.to_string()),
    };
    let wall_nominal = stated.wall_nominal().ok();
    // The papers' own row is no other construction, unless the papers say of it what the readings deny.
    let is_papers = |c: &Candidate| {
        like_papers && c.conductor == stated.conductor && Some(c.wall_nominal) == wall_nominal
    };
    let fits = |c: &&Candidate| {
        !is_papers(c)
            && visible_fits(c.conductor.metal, c.conductor.stranding, evidence)
            && steps_fit(&c.steps, &readings)
    };
    let others: Vec<Candidate> = table.iter().filter(fits).cloned().collect();
    match (like_papers, others.is_empty()) {
        (true, true) => Likeness::FitsPapersOnly,
        (true, false) => Likeness::FitsOthersAlso(others),
        (false, false) => Likeness::FitsOthersNotPapers(others),
        (false, true) => Likeness::FitsNone,
    }
}

fn visible_fits(metal: Metal, stranding: Stranding, evidence: &Evidence) -> bool {
    evidence.metal.is_none_or(|seen| seen == metal)
        && evidence.stranding.is_none_or(|seen| seen == stranding)
}

fn steps_fit(steps: &[Step], readings: &Readings) -> bool {
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

/// Whether the papers fit; an error when a layer that was measured has no row and no stated diameter.
fn papers_fit(
    stated: &Construction,
    evidence: &Evidence,
    readings: &Readings,
) -> Result<bool, Unknown> {
    let shield = stated.shield;
    let seen = visible_fits(stated.conductor.metal, stated.conductor.stranding, evidence)
        && evidence
            .shield_kind
            .is_none_or(|kind| kind == shield.kind())
        && evidence
            .shield_elements
            .is_none_or(|count| shield.elements() == Some(count));
    let outermost = readings.iter().rposition(Option::is_some).unwrap_or(0);
    let mut inside: Result<Interval, Unknown> = step_over(stated, Layer::Conductor, None);
    let mut fits = seen;
    for (index, layer) in Layer::ALL.into_iter().enumerate().take(outermost + 1) {
        if index > 0 {
            inside = step_over(stated, layer, Some(inside));
        }
        let Some(reading) = readings[index] else {
            continue;
        };
        let diameters = inside.clone()?;
        match diameters.meet(reading) {
            Some(possible) => inside = Ok(possible),
            // Further layers are judged from what the papers allow, so that a missing row outside is still told.
            None => fits = false,
        }
    }
    Ok(fits)
}

fn step_over(
    stated: &Construction,
    layer: Layer,
    inside: Option<Result<Interval, Unknown>>,
) -> Result<Interval, Unknown> {
    match (step(stated, layer)?, inside) {
        (Step::Over(interval), _) => Ok(interval),
        (Step::Grows(by), Some(inside)) => Ok(inside? + by),
        (Step::Grows(by), None) => Ok(by),
    }
}

/// The layer that a reading seems to have been taken over, when it cannot be over the layer it says.
///
/// Only a screen and its neighbours are taken for one another; `None` when the reading can be over `said`, when it fits no neighbour, and when a row is missing.
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

/// The neighbour of a layer over which a reading can have been taken, where either is a screen.
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

/// The layer that a reading seems to have been taken over, and with its error may not have been.
///
/// As read it cannot be over `said`; as far off as it may be, it can, and it can be over the neighbour too.
/// `None` where it says anything clearer.
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
