//! Coming: the moment at which each part of a leg comes over its end.
//!
//! Why its own file: a part that passes the jacket is parked before the cleaning; a part that does not is pushed on after the cleaning, and before the connector if the connector would bar its way.
//!
//! Invariants: a part comes on at one moment; the part's own paper prevails over the diameters, and a person decides if the two clash.
//!
//! Source: common practice, no source; the parts' own instructions prevail.

use crate::cable::Layer;
use crate::catalogue::{Adapter, Body, Fits, GoesOn, Head, PartKind, Seal};
use crate::checks::{Inputs, LegInputs};
use crate::job::JointKind;
use crate::said::{Read, UnsettledSaid};
use crate::stage::Stage;
use jointwright_units::{Length, Toward};

/// A part that comes over an end.
#[derive(Clone, Debug)]
pub(super) struct Coming<'i> {
    /// Kind of part.
    pub part: PartKind,
    pub head: &'i Head,
    /// Method by which it comes on, where its row states it or implies it.
    pub by: Option<GoesOn>,
    /// Stage at which it comes on.
    pub stage: Stage,
    /// Question about it that a person must settle.
    pub trouble: Option<UnsettledSaid>,
}

/// Whether a part passes over the jacket.
#[derive(Clone, Debug, PartialEq)]
enum Passing {
    Yes,
    No(Length, Length),
    Unknown,
}

/// Properties of one part.
struct Asked<'i> {
    part: PartKind,
    head: &'i Head,
    by: Option<GoesOn>,
    passes: Option<Length>,
    hold: Option<Length>,
    fits: &'i [Fits],
}

impl<'i> Asked<'i> {
    fn body(body: &'i Body) -> Self {
        Asked {
            part: PartKind::Body,
            head: &body.head,
            by: body.comes_by(),
            passes: body.passes,
            hold: body.rubber.as_ref().and_then(|r| r.hold_diameter),
            fits: &body.fits,
        }
    }

    fn adapter(adapter: &'i Adapter) -> Self {
        Asked {
            part: PartKind::Adapter,
            head: &adapter.head,
            by: adapter.comes_by(),
            passes: adapter.passes,
            hold: adapter.rubber.as_ref().and_then(|r| r.hold_diameter),
            fits: &adapter.fits,
        }
    }

    fn seal(seal: &'i Seal) -> Self {
        Asked {
            part: PartKind::Seal,
            head: &seal.head,
            by: seal.comes_by(),
            passes: seal.passes,
            hold: seal.rubber.as_ref().and_then(|r| r.hold_diameter),
            fits: &seal.fits,
        }
    }

    /// Widest opening by its row.
    fn opening(&self) -> Option<Length> {
        let range = self.fits.iter().map(|fits| fits.range.greatest()).min();
        self.passes.or(match self.by {
            Some(GoesOn::Holdout) => self.hold,
            Some(GoesOn::Torch | GoesOn::Wrapped) => None,
            Some(GoesOn::PushOn) | None => range,
        })
    }

    fn passing(&self, leg: &LegInputs<'_>) -> Passing {
        let is_supplied_wide = matches!(self.by, Some(GoesOn::Holdout | GoesOn::Torch));
        match (self.opening(), jacket_greatest(leg)) {
            (Some(opening), Some(jacket)) if jacket > opening => Passing::No(opening, jacket),
            (Some(_), Some(_)) => Passing::Yes,
            // A part is supplied expanded so that it passes.
            _ if is_supplied_wide => Passing::Yes,
            _ => Passing::Unknown,
        }
    }

    /// Whether the part's row has a step at a stage.
    fn has_step(&self, stage: Stage) -> bool {
        self.head.steps.iter().any(|step| step.stage == Some(stage))
    }

    /// Whether the part's paper brings it on after the cleaning.
    fn is_late_by_paper(&self) -> bool {
        let at_place = |stage: Option<Stage>| stage.is_none_or(|s| s == Stage::Place);
        let pushes = self.head.steps.iter().any(|step| at_place(step.stage));
        let is_late = self.has_step(Stage::Clean) && pushes;
        !self.has_step(Stage::SlideOn)
            && self.by != Some(GoesOn::Holdout)
            && (self.has_step(Stage::PushOn) || is_late)
    }

    /// Moment at which it comes on; `late` is the stage for a part that cannot be parked.
    fn coming(self, leg: &LegInputs<'_>, late: Stage) -> Coming<'i> {
        let passing = self.passing(leg);
        let is_parked = match &passing {
            _ if self.is_late_by_paper() => false,
            Passing::Yes => true,
            Passing::No(..) => false,
            Passing::Unknown => self.has_step(Stage::SlideOn),
        };
        let row = self.head.id.clone();
        let reads = |opening: Length, jacket: Length| {
            let passes = Read::diameter(opening, Toward::Shorter);
            (passes, Read::diameter(jacket, Toward::Longer))
        };
        let trouble = match passing {
            Passing::No(opening, jacket) if self.has_step(Stage::SlideOn) => {
                let (leg, (passes, jacket)) = (leg.leg.id.clone(), reads(opening, jacket));
                Some(UnsettledSaid::SlidOnByPaper {
                    row,
                    leg,
                    passes,
                    jacket,
                })
            }
            Passing::No(opening, jacket) if self.by == Some(GoesOn::Holdout) => {
                let (leg, (passes, jacket)) = (leg.leg.id.clone(), reads(opening, jacket));
                Some(UnsettledSaid::CannotPark {
                    row,
                    leg,
                    passes,
                    jacket,
                })
            }
            Passing::No(..) | Passing::Unknown if self.by.is_none() && !self.is_late_by_paper() => {
                Some(UnsettledSaid::HowItGoesOn { row })
            }
            _ => None,
        };
        Coming {
            part: self.part,
            head: self.head,
            by: self.by,
            stage: if is_parked { Stage::SlideOn } else { late },
            trouble,
        }
    }
}

/// Greatest diameter of a leg's jacket: as read with its error, else as its papers allow; `None` if an end has neither.
fn jacket_greatest(leg: &LegInputs<'_>) -> Option<Length> {
    let papers = || {
        let band = leg.leg.cable.diameter_over(Layer::Jacket).ok()?;
        Some(band.interval().greatest())
    };
    let of_ends: Option<Vec<Length>> = leg
        .ends
        .iter()
        .map(|end| {
            let read = end.survey.diameters.get(&Layer::Jacket);
            read.map(|d| d.known.read.greatest() + d.known.error)
                .or_else(papers)
        })
        .collect();
    of_ends?.into_iter().max()
}

/// Parts that come over the ends of a leg; the part farthest from the conductor end comes first.
pub(super) fn comings<'i>(inputs: &Inputs<'i>, leg: &LegInputs<'i>) -> Vec<Coming<'i>> {
    let chosen = &leg.chosen;
    let is_separable = inputs.order.job.kind == JointKind::Separable;
    // One seal over the whole joint comes onto the leg that parks, once.
    let seal = chosen
        .seal
        .filter(|seal| !seal.spans_joint || parks(inputs, leg))
        .map(Asked::seal)
        .filter(|asked| asked.by != Some(GoesOn::Wrapped));
    let body = chosen
        .body
        .filter(|_| is_separable || parks(inputs, leg))
        .map(Asked::body);
    let adapter = chosen.adapter.map(Asked::adapter);
    // A body that is plugged goes over its contact; a body over a sleeve must be on before the sleeve.
    let late_body = if is_separable {
        Stage::Place
    } else {
        Stage::PushOn
    };
    let late_adapter = |asked: &Asked<'_>| {
        let connector = chosen.connector.map(|c| c.outside_diameter);
        let goes_over = connector.zip(asked.opening()).is_some_and(|(c, o)| c <= o);
        if is_separable && goes_over {
            Stage::Place
        } else {
            Stage::PushOn
        }
    };
    let mut comings: Vec<Coming<'i>> = Vec::new();
    // A seal whose range the jacket exceeds fits nowhere; its own check says so.
    comings.extend(seal.map(|asked| asked.coming(leg, Stage::SlideOn)));
    comings.extend(body.map(|asked| asked.coming(leg, late_body)));
    comings.extend(adapter.map(|asked| {
        let late = late_adapter(&asked);
        asked.coming(leg, late)
    }));
    comings
}

/// Whether this leg is the only one named to park the one body.
fn parks(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> bool {
    leg.leg.parks && inputs.legs.iter().filter(|l| l.leg.parks).count() == 1
}
