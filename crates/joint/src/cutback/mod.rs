//! Cutback: the cut of every layer of a leg, its window, and its source.
//!
//! Why its own room: instructions measure from many datums, a crew from one; here the links of all parts are solved for the conductor end.
//!
//! Invariants:
//! - Any two ways to a plane agree exactly, or the rows are refused, naming both ways.
//! - A number printed without a tolerance gives a nominal and no window.
//! - Growth that is not measured is never assumed.
//! - A window computed here is never wider than the window of the instructions.
//!
//! Not here: the mathematics (`numerics::chain`), whether an overlap suffices (`checks`).
//!
//! Source: `docs/theory/chain.md` and `docs/theory/cutback.md`.

mod as_built;
mod dimension;
mod links;
mod refusal;
mod way;
mod windows;

pub use dimension::{Dimension, StackSample};
pub use links::Growth;
pub(crate) use links::{Joined, Tolerance, connector_links, from_row};
pub use refusal::Refusal;
pub use windows::Narrowed;

use crate::cable::Words;
use crate::catalogue::PartKind;
use crate::fit::Chosen;
use crate::job::{Job, Leg};
use crate::plane::Plane;
use crate::said::{CutSaid, Said, Whose};
use jointwright_numerics::chain::{Chain, Link, Solution};
use jointwright_units::{Length, Station, Window};
use std::collections::{BTreeMap, BTreeSet};
use windows::{Deviation, Groups, OwnBound, Span};

/// Growth of a whole sleeve at each rung of the ladder: every sixteenth of an inch to half an inch, or every millimetre to twelve.
fn rungs(words: Words) -> Vec<Length> {
    match words {
        Words::Us => (0..=8).map(|n| Length::INCH_64TH * (4 * n)).collect(),
        Words::Iec => (0..=12).map(|n| Length::MM * n).collect(),
    }
}
/// Growth that shows which planes move with it; its size does not matter.
const PROBE: Station = Station::from_half_nm(2_000_000);

/// A place to cut or to mark on one leg.
#[derive(Clone, Debug, PartialEq)]
pub struct Cut {
    /// Plane.
    pub plane: Plane,
    /// Distance from the square-cut conductor end, before pressing; `None` if it is not known.
    pub nominal: Option<Station>,
    /// Window; `None` if nobody sets one.
    pub window: Option<Window>,
    /// Sources of the window.
    pub whose: Vec<Whose>,
    /// Sources of the place: rows from this plane back to the nearest plane with a place of its own, and that plane; `None` if it has no place.
    pub placed: Option<Placed>,
    /// Rows that narrowed the window, if it is narrower than the window in the row that places the plane.
    pub narrowed: Option<Narrowed>,
    /// Reason why there is no nominal, or no window.
    pub why: Option<Said>,
    /// Rows and owners whose windows leave no place for it; empty if they leave one.
    pub conflict: Vec<Whose>,
    /// For a cut that waits for the growth: its place for each growth.
    pub ladder: Vec<Rung>,
}

/// Source of a plane's place.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Placed {
    /// Rows; the row that ends at the plane comes first.
    pub by: Vec<Whose>,
    /// Plane from which they lead: a cut or a mark with a place and rows of its own, or the conductor end.
    pub from: Plane,
}

/// Place of a cut for one growth of the sleeve.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rung {
    /// Growth of the whole sleeve.
    pub grew: Length,
    /// Distance from the square-cut conductor end, before pressing.
    pub nominal: Station,
    /// Window for this growth; `None` if nobody sets one.
    pub window: Option<Window>,
}

/// Reason why a plane has no place with a window.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Lack {
    /// No row states its place.
    Place,
    /// It moves with a growth that nobody measured.
    Growth,
    /// Nobody sets a window.
    Window,
    /// Windows, play and growth leave no place.
    Room,
}

/// The cutbacks of one leg.
#[derive(Clone, Debug)]
pub struct Cutback {
    /// Cuts and marks, from the conductor end outward.
    pub cuts: Vec<Cut>,
    /// Growth, as far as it is known.
    pub growth: Growth,
    nominals: BTreeMap<Plane, Station>,
    /// Planes that move with the growth, and their direction: 1 with the mouth, -1 against it.
    moved_by_growth: BTreeMap<Plane, i64>,
    groups: Groups,
    /// Distances that were read between two planes.
    measured: Vec<((Plane, Plane), Span)>,
}

/// Solves the cutbacks of one leg.
///
/// # Errors
/// All contradictions between the rows; each names both ways to the plane and both values.
pub fn cutback(job: &Job, leg: &Leg, chosen: &Chosen<'_>) -> Result<Cutback, Vec<Refusal>> {
    let growth = links::growth(job, leg, chosen);
    let joined = links::links(job, leg, chosen, &growth, Station::ZERO);
    let planes = reached(&joined);
    let nominals =
        nominals(&planes, &joined).map_err(|e| refusal::refusals(&leg.id, &e, &planes, &joined))?;
    let moved_by_growth = match growth {
        Growth::Unknown(_) => {
            let probed = links::links(job, leg, chosen, &growth, PROBE);
            let probed = self::nominals(&planes, &probed)
                .map_err(|e| refusal::refusals(&leg.id, &e, &planes, &joined))?;
            let moved = planes
                .iter()
                .map(|p| (*p, (probed[p] - nominals[p]).half_nm() / PROBE.half_nm()));
            moved.filter(|(_, way)| *way != 0).collect()
        }
        _ => BTreeMap::new(),
    };
    let bounds: Vec<OwnBound> = job
        .owner_windows
        .iter()
        .filter(|w| w.leg.as_ref().is_none_or(|l| *l == leg.id))
        .map(|w| OwnBound {
            plane: w.plane,
            minus: Station::from(w.minus),
            plus: Station::from(w.plus),
            source: Whose::Person(w.source.clone()),
        })
        .collect();
    let groups = Groups::new(&planes, &joined, &bounds);
    let mut nominals = nominals;
    for (plane, station) in &mut nominals {
        // If play or growth leaves a window beside the planned place, the plan moves into its window.
        *station = *station + groups.shift(*plane);
    }
    let mut cutback = Cutback {
        cuts: Vec::new(),
        growth,
        nominals,
        moved_by_growth,
        groups,
        measured: Vec::new(),
    };
    let wanted = wanted(&planes);
    let cut = |plane: &Plane| {
        let cut = cutback.cut(*plane, leg, chosen, job.words);
        let placed = cutback.nominals.contains_key(plane);
        Cut {
            placed: placed
                .then(|| way::placed(*plane, &wanted, &joined))
                .flatten(),
            ..cut
        }
    };
    cutback.cuts = wanted.iter().map(cut).collect();
    if let Some(built) = job.as_built_of(leg) {
        cutback.take(built);
    }
    Ok(cutback)
}

/// Planes that a way of links joins to the conductor end; the conductor end is always among them.
fn reached(joined: &[Joined]) -> Vec<Plane> {
    let mut reached = BTreeSet::from([Plane::ConductorEnd]);
    loop {
        let before = reached.len();
        for link in joined {
            if reached.contains(&link.from) || reached.contains(&link.to) {
                reached.extend([link.from, link.to]);
            }
        }
        if reached.len() == before {
            return reached.into_iter().collect();
        }
    }
}

/// Planes that the make-up needs, and marks that a row gives.
fn wanted(planes: &[Plane]) -> Vec<Plane> {
    Plane::ALL
        .iter()
        .copied()
        .filter(|p| {
            p.is_cut()
                || (matches!(p, Plane::BodyEnd | Plane::ParkMark | Plane::SealEnd)
                    && planes.contains(p))
        })
        .collect()
}

fn nominals(
    planes: &[Plane],
    joined: &[Joined],
) -> Result<BTreeMap<Plane, Station>, Vec<jointwright_numerics::chain::ChainError>> {
    let index = |plane: Plane| planes.iter().position(|p| *p == plane);
    let links: Vec<Link> = joined
        .iter()
        .filter_map(|link| {
            let (minus, plus) = match link.tolerance {
                Tolerance::Window(minus, plus) => (minus.half_nm(), plus.half_nm()),
                _ => (0, 0),
            };
            Some(Link {
                from: index(link.from)?,
                to: index(link.to)?,
                nominal: link.distance.half_nm(),
                minus,
                plus,
                shared: None,
            })
        })
        .collect();
    let solution: Solution = Chain::new(planes.len(), links)
        .map_err(|e| vec![e])?
        .solve_all_errors(0)?;
    Ok(planes
        .iter()
        .enumerate()
        .map(|(i, plane)| (*plane, Station::from_half_nm(solution.nominal(0, i))))
        .collect())
}

impl Cutback {
    fn cut(&self, plane: Plane, leg: &Leg, chosen: &Chosen<'_>, words: Words) -> Cut {
        let mut cut = Cut {
            plane,
            nominal: None,
            window: None,
            whose: Vec::new(),
            placed: None,
            narrowed: self.groups.narrowed(plane),
            why: None,
            conflict: Vec::new(),
            ladder: Vec::new(),
        };
        let Some(nominal) = self.nominals.get(&plane).copied() else {
            let no_end = chosen.no_end(leg);
            cut.why = Some(no_end.map_or_else(|| unplaced(plane, chosen).into(), Said::from));
            return cut;
        };
        let window = self.groups.window(plane);
        if let Deviation::UsedUp(sources) = window {
            let whose = sources.clone();
            cut.why = Some(CutSaid::NoPlaceKeepsEveryWindow { whose }.into());
            cut.conflict = sources;
            return cut;
        }
        if let (Some(way), Growth::Unknown(why), Some(connector)) = (
            self.moved_by_growth.get(&plane),
            &self.growth,
            chosen.connector,
        ) {
            cut.why = Some(match window {
                Deviation::Unset => Said::all([why.clone(), CutSaid::NoTolerance.into()]),
                _ => why.clone(),
            });
            cut.ladder = rungs(words)
                .into_iter()
                .map(|whole| {
                    let moved = links::mouth_share(connector, whole).half_nm() * way;
                    let nominal = nominal + Station::from_half_nm(moved);
                    let window = match &window {
                        Deviation::Within(span, _) => {
                            Window::new(nominal + span.least, nominal + span.greatest)
                        }
                        _ => None,
                    };
                    Rung {
                        grew: whole,
                        nominal,
                        window,
                    }
                })
                .collect();
            return cut;
        }
        cut.nominal = Some(nominal);
        match window {
            Deviation::Within(span, whose) => {
                cut.window = Window::new(nominal + span.least, nominal + span.greatest);
                cut.whose = whose;
            }
            _ => cut.why = Some(CutSaid::NoTolerance.into()),
        }
        cut
    }

    /// Planned station of a plane; `None` if it is not known.
    pub fn nominal(&self, plane: Plane) -> Option<Station> {
        if self.moved_by_growth.contains_key(&plane) {
            return None;
        }
        self.nominals.get(&plane).copied()
    }

    /// Whether any row or owner places a plane.
    pub fn places(&self, plane: Plane) -> bool {
        self.nominals.contains_key(&plane)
    }

    /// Farthest place of a plane from the conductor end; `None` without a place or a window.
    pub fn farthest(&self, plane: Plane) -> Option<Station> {
        let dimension = self.dimension(Plane::ConductorEnd, plane);
        dimension.ok().map(|d| d.greatest)
    }

    /// Reasons why a plane has no place with a window; empty if it has both.
    pub fn lacks(&self, plane: Plane) -> Vec<Lack> {
        if !self.nominals.contains_key(&plane) {
            return vec![Lack::Place];
        }
        let moves = self.moved_by_growth.contains_key(&plane);
        let window = match self.groups.window(plane) {
            Deviation::Within(..) => None,
            Deviation::Unset => Some(Lack::Window),
            Deviation::UsedUp(_) => Some(Lack::Room),
        };
        let is_datum = plane == Plane::ConductorEnd;
        let window = window.filter(|_| !is_datum);
        moves
            .then_some(Lack::Growth)
            .into_iter()
            .chain(window)
            .collect()
    }

    /// Edge that counts in service: the edge shrunk back if a row gives it, else the cut.
    pub fn in_service(&self, cut: Plane) -> Plane {
        let shrunk = match cut {
            Plane::InsulationEnd => Plane::InsulationEndShrunk,
            Plane::JacketEdge => Plane::JacketEdgeShrunk,
            other => other,
        };
        if self.nominals.contains_key(&shrunk) {
            shrunk
        } else {
            cut
        }
    }

    /// Distance from one plane to another over all places that the windows allow.
    ///
    /// # Errors
    /// The missing fact.
    pub fn dimension(&self, from: Plane, to: Plane) -> Result<Dimension, CutSaid> {
        dimension::dimension(self, from, to)
    }
}

fn unplaced(plane: Plane, chosen: &Chosen<'_>) -> CutSaid {
    let parts: Vec<PartKind> = [
        (chosen.connector.is_none(), PartKind::Connector),
        (chosen.body.is_none(), PartKind::Body),
        (chosen.shield_part.is_none(), PartKind::ShieldPart),
        (chosen.seal.is_none(), PartKind::Seal),
    ]
    .into_iter()
    .filter_map(|(open, part)| open.then_some(part))
    .collect();
    if parts.is_empty() {
        CutSaid::NoRowReaches { plane }
    } else {
        CutSaid::LeftOpen { parts }
    }
}
