//! Ask: the missing facts for the comparison of a check, so that a ruling can name them.
//!
//! Why its own room: the inputs of a place, a field, a pressure or a temperature are the same for every check that rests on it, and are asked for in one way.
//!
//! Invariants: a given fact is not asked for; when every fact that is named here is given, no fact of this kind is missing.
//!
//! Not here: the table of facts (`limit::fact_table`), the computations from them, who asks whom (`plan`).

mod cable;
mod field;
mod heat;
mod pressure;
mod shield;

pub use cable::{cable, cable_duty, cable_route};
pub use heat::heat;

use crate::cable::Layer;
use crate::catalogue::Fits;
use crate::cutback::{Cutback, Growth, Lack};
use crate::fit::Chosen;
use crate::job::{Job, Leg};
use crate::limit::{Ask, Outcome, Ruling, fact_table as fact};
use crate::plane::Plane;
use crate::said::{Of, PartKind, Subject};
use crate::survey::{EndSurvey, place_of};

/// One leg with possibly missing facts.
#[derive(Clone, Debug)]
pub struct Missing<'a> {
    /// Job.
    pub job: &'a Job,
    /// Leg.
    pub leg: &'a Leg,
    /// Parts of the leg.
    pub chosen: &'a Chosen<'a>,
    /// Cutbacks of the leg.
    pub cutback: &'a Cutback,
    /// Readings of its ends, in the order of phases.
    pub surveys: Vec<&'a EndSurvey>,
}

/// Adds these asks to the rulings that are not judged and name no fact yet.
pub fn asking(rulings: Vec<Ruling>, asks: impl Fn() -> Vec<Ask>) -> Vec<Ruling> {
    let is_open = |ruling: &Ruling| ruling.outcome == Outcome::NotJudged && ruling.asks.is_empty();
    rulings
        .into_iter()
        .map(|ruling| {
            if is_open(&ruling) {
                ruling.asking_all(asks())
            } else {
                ruling
            }
        })
        .collect()
}

impl Missing<'_> {
    /// Parts of the leg that are left open.
    pub fn open_parts(&self) -> Vec<Ask> {
        let parts = [
            (self.chosen.body.is_none(), PartKind::Body),
            (self.chosen.connector.is_none(), PartKind::Connector),
            (self.chosen.shield_part.is_none(), PartKind::ShieldPart),
            (self.chosen.seal.is_none(), PartKind::Seal),
        ];
        let open = parts.into_iter().filter(|(is_open, _)| *is_open);
        open.map(|(_, kind)| self.part(kind)).collect()
    }

    /// One part that is left open; a body that all legs share, and the connector of a straight joint, are asked for once.
    pub fn part(&self, kind: PartKind) -> Ask {
        use crate::job::JointKind::{Separable, Straight};
        let is_shared = match kind {
            PartKind::Body => self.job.kind != Separable,
            PartKind::Connector => self.job.kind == Straight,
            _ => false,
        };
        let leg = (!is_shared).then(|| self.leg.id.clone());
        fact::PART.of(Of::Part { kind, leg })
    }

    /// Facts that these planes lack to be placed with their windows.
    pub fn places(&self, planes: &[Plane]) -> Vec<Ask> {
        let mut asks: Vec<Ask> = Vec::new();
        for plane in planes {
            for lack in self.cutback.lacks(*plane) {
                for ask in self.place(*plane, lack) {
                    if !asks.contains(&ask) {
                        asks.push(ask);
                    }
                }
            }
        }
        asks
    }

    fn place(&self, plane: Plane, lack: Lack) -> Vec<Ask> {
        let of = || Of::plane(plane, Subject::leg(&self.leg.id));
        match lack {
            Lack::Place => {
                let open = self.open_parts();
                if open.is_empty() {
                    vec![fact::LINK.of(of())]
                } else {
                    open
                }
            }
            Lack::Growth => vec![self.growth()],
            Lack::Window => vec![fact::WINDOW.of(of())],
            Lack::Room => vec![fact::WORD.of(of())],
        }
    }

    /// Growth of the connector of this leg.
    pub fn growth(&self) -> Ask {
        let conductor = self.leg.cable.conductor;
        let row = self.chosen.connector.map_or("", |c| c.head.id.as_str());
        let row = row.to_owned();
        fact::TRIAL_PRESS.of(Of::Sleeve { row, conductor })
    }

    /// Growth of the connector, if it is not known.
    pub fn unknown_growth(&self) -> Option<Ask> {
        matches!(self.cutback.growth, Growth::Unknown(_)).then(|| self.growth())
    }

    /// A reading over a layer of one end.
    pub fn reading(&self, phase: u8, over: Layer) -> Ask {
        fact::READING.of(self.over(phase, over))
    }

    fn over(&self, phase: u8, over: Layer) -> Of {
        place_of(self.leg, phase, over)
    }

    /// Missing facts for the comparison with the papers: a reading under the metallic shield, or a row for the cable.
    pub fn likeness(&self, phase: u8, survey: &EndSurvey) -> Vec<Ask> {
        let inner = [
            Layer::Conductor,
            Layer::ConductorScreen,
            Layer::Insulation,
            Layer::InsulationScreen,
        ];
        if inner
            .iter()
            .all(|layer| !survey.diameters.contains_key(layer))
        {
            return vec![self.reading(phase, Layer::Insulation)];
        }
        vec![fact::CABLE_PAPERS.of(&self.leg.id)]
    }

    /// Missing facts for the diameter of one end that a range needs.
    pub fn diameter(&self, phase: u8, survey: &EndSurvey, fits: &Fits) -> Vec<Ask> {
        let Some(diameter) = survey.diameters.get(&fits.over) else {
            return vec![self.reading(phase, fits.over)];
        };
        let Some(at) = fits.at_degc else {
            return Vec::new();
        };
        match diameter.degc {
            None => {
                let temperature = fact::READING_TEMPERATURE.of(self.over(phase, fits.over));
                let grows = fits.over == Layer::Insulation && self.leg.expansion_per_k.is_none();
                let expansion = grows.then(|| fact::EXPANSION.of(&self.leg.id));
                std::iter::once(temperature).chain(expansion).collect()
            }
            Some((coldest, warmest)) if coldest == at && warmest == at => Vec::new(),
            Some(_) if fits.over == Layer::Insulation && self.leg.expansion_per_k.is_none() => {
                vec![fact::EXPANSION.of(&self.leg.id)]
            }
            Some(_) if fits.over == Layer::Insulation => Vec::new(),
            Some(_) => vec![fact::READING_WARMED.of(self.over(phase, fits.over))],
        }
    }
}
