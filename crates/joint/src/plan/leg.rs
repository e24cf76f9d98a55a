//! Leg: shapes of legs and ends in `plan.json`, and the functions that fill them.

use super::cut::CutDoc;
use super::cut_of_leg::cut_doc;
use super::field::{FieldDoc, field_doc};
use super::make_up::{KnifeDoc, knife};
use super::outside::{LayerDoc, layer_docs};
use super::pressure::{PressureDoc, pressure_doc};
use super::shield::{ShieldDoc, shield_doc};
use super::words::{layer_words, plane_words};
use crate::cable::Layer;
use crate::catalogue::{Connector, Head, MayMove, Means, PartKind};
use crate::checks::{EndInputs, LegInputs};
use crate::cutback::{Dimension, Growth};
use crate::job::{End, Job};
use crate::judge::Judged;
use crate::plane::{Holder, Plane};
use crate::said::{Distance, MayMoveSaid, Mover, Paper, PapersSaid, PlanSaid, Said, Wording};
use crate::slot::Slot;
use crate::survey::likeness;
use jointwright_units::{Length, Station};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// One leg.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct LegDoc {
    /// Letter or short name.
    pub mark: String,
    /// Destination of the leg.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub goes_to: Option<String>,
    /// Cable by its papers.
    pub cable: String,
    /// Its layers from the inside out, for pictures; nothing is judged by them.
    pub layers: Vec<LayerDoc>,
    /// Port of the bus, for separable joints.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub port: Option<i64>,
    /// Whether the body parks on this leg.
    pub parks: bool,
    /// Connector of the leg.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub connector: Option<ConnectorDoc>,
    /// Parts by kind and name; open parts are left out.
    pub parts: Vec<PartDoc>,
    /// Cuts and marks from the conductor end outward.
    pub cuts: Vec<CutDoc>,
    /// Other planes with a known place, from the conductor end outward: planes of the parts, and edges shrunk back.
    pub planes: Vec<PlaneDoc>,
    /// Limit of the depth of a knife cut into the insulation screen.
    pub knife: KnifeDoc,
    /// Fields at the worst of the windows; left out if the body is open.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub field: Option<FieldDoc>,
    /// Shield of the leg beyond the joint.
    pub shield: ShieldDoc,
    /// Distances that vary within the windows.
    pub stacks: Vec<StackDoc>,
    /// Ends.
    pub ends: Vec<EndDoc>,
}

/// Plane that the crew neither cuts nor marks.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct PlaneDoc {
    /// Plane.
    pub plane: Plane,
    /// A crew's name for the plane.
    pub words: String,
    /// Distance from the square-cut conductor end, mm, not rounded.
    pub nominal_mm: f64,
}

/// Connector of a leg.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct ConnectorDoc {
    /// Means by which it grips.
    pub means: Means,
    /// Whether it has two ends (sleeve) or one (contact).
    pub two_ended: bool,
    /// End that takes this leg, where the two ends differ; null if nobody says which end.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub end: Option<String>,
    /// Reason why no end is known to take this leg.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub end_open: Option<String>,
    /// Reach of the other end beyond the connector-centre before the connector is made, mm, where the two ends differ.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub other_end_mm: Option<f64>,
    /// Length before the connector is made, mm.
    pub length_mm: f64,
    /// Stop between the two conductors, or behind the single one, mm.
    pub stop_mm: f64,
    /// Greatest outside diameter of the made connector, mm.
    pub outside_diameter_mm: f64,
    /// Die, by its name in the instructions.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub die: Option<String>,
    /// Number of presses for each end by the instructions.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub presses: Option<i64>,
    /// Least and greatest growth of the mouth, which the cuts already hold, mm.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub growth_of_mouth_mm: Option<[f64; 2]>,
    /// Source of the trial press.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub growth_source: Option<String>,
}

/// A part of a leg.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct PartDoc {
    /// Kind.
    pub kind: PartKind,
    /// Name in the catalogue.
    pub id: String,
    /// Side of the body by which this leg comes in, where the two sides differ.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub side: Option<String>,
    /// Name in plain words.
    pub name: String,
    /// Instructions and their revision.
    pub instructions: String,
    /// Doubts about its row: no second person has checked it, or its paper may have been replaced.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub doubts: Vec<String>,
    /// Time until which a placed part may still be moved.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub may_move: Option<String>,
}

/// Distance that varies within the windows.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct StackDoc {
    /// Name of the distance.
    pub what: String,
    /// Plane from which it is measured.
    pub from: Plane,
    /// Plane to which it is measured.
    pub to: Plane,
    /// Planned distance, mm.
    pub nominal_mm: f64,
    /// Least over all windows, mm.
    pub min_mm: f64,
    /// Greatest over all windows, mm.
    pub max_mm: f64,
    /// Bounds of the middle 95 percent of a seeded stack, mm: every deviation is uniform in its window, and half of each crew mark's deviation is common to all marks (one tape).
    #[serde(skip_serializing_if = "Option::is_none")]
    pub middle_95_mm: Option<[f64; 2]>,
    /// Share of each plane in the variance, greatest first: the first mark matters most.
    pub shares: Vec<ShareDoc>,
}

/// Share of one plane.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct ShareDoc {
    /// Plane.
    pub plane: Plane,
    /// A crew's name for the thing that moves the plane.
    pub words: String,
    /// Share of the variance, 0 to 1, as if all deviations were independent.
    pub share_ratio: f64,
}

/// One end.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct EndDoc {
    /// Phase.
    pub phase: u8,
    /// Outcome of the comparison with its papers, in a few words.
    pub measures: String,
    /// Sentence that says whether the end measures like its papers, and what that never means.
    pub like_its_papers: String,
    /// Readings.
    pub readings: Vec<ReadingDoc>,
    /// Slots that a row of the job fills.
    pub filled: Vec<Slot>,
    /// Pressure of its parts; left out if nobody asked.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pressure: Option<PressureDoc>,
}

/// Readings over one layer.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct ReadingDoc {
    /// Slot: end and layer.
    pub slot: Slot,
    /// Layer, as job files name it.
    pub over: Layer,
    /// A crew's name for the layer.
    pub words: String,
    /// Least diameter read, mm.
    pub min_mm: f64,
    /// Greatest diameter read, mm.
    pub max_mm: f64,
    /// Error of either reading, mm.
    pub error_mm: f64,
    /// Greatest difference at one place, mm; null if only one diameter was read.
    pub ovality_mm: Option<f64>,
}

pub(super) fn leg_doc(judged: &Judged<'_>, leg: &LegInputs<'_>, wording: &dyn Wording) -> LegDoc {
    let words = judged.inputs.order.job.words;
    let cable = &leg.leg.cable;
    let dimensions = [
        (
            Plane::ConnectorMouth,
            Plane::ElectrodeEnd,
            Distance::ElectrodePastMouth,
        ),
        (
            Plane::InsulationEnd,
            Plane::ElectrodeEnd,
            Distance::ElectrodeOntoInsulation,
        ),
        (
            Plane::ControlNear,
            Plane::ScreenEdge,
            Distance::InnerEndOfControl,
        ),
        (
            Plane::ScreenEdge,
            Plane::ControlFar,
            Distance::OuterEndOfControl,
        ),
        (Plane::JacketEdge, Plane::SealEnd, Distance::SealOntoJacket),
    ];
    let stacks = dimensions.into_iter().filter_map(|(from, to, what)| {
        let dimension = leg.cutback.dimension(from, to).ok()?;
        Some(stack_doc(what, (from, to), &dimension, wording))
    });
    LegDoc {
        mark: leg.leg.id.clone(),
        goes_to: leg.leg.goes_to.clone(),
        cable: wording.say(
            &PlanSaid::Cable {
                conductor: cable.conductor,
                wall: cable.wall.into(),
                shield: cable.shield.kind(),
            }
            .into(),
        ),
        layers: layer_docs(judged, leg, wording),
        port: leg.leg.port,
        parks: leg.leg.parks,
        connector: leg.chosen.connector.map(|c| connector_doc(c, leg, wording)),
        parts: part_docs(leg, wording),
        cuts: leg
            .cutback
            .cuts
            .iter()
            .map(|cut| cut_doc(cut, leg, words, wording))
            .collect(),
        planes: plane_docs(leg, wording),
        knife: knife(leg, words, wording),
        field: field_doc(&judged.inputs, leg, wording),
        shield: shield_doc(&judged.inputs.order.job, leg, wording),
        stacks: stacks.collect(),
        ends: leg
            .ends
            .iter()
            .map(|end| end_doc(&judged.inputs.order.job, leg, end, wording))
            .collect(),
    }
}

/// Planes with a known place, except the datum and the planes that the crew cuts or marks.
fn plane_docs(leg: &LegInputs<'_>, wording: &dyn Wording) -> Vec<PlaneDoc> {
    let is_cut = |plane: &Plane| leg.cutback.cuts.iter().any(|cut| cut.plane == *plane);
    let mut planes: Vec<(Station, Plane)> = Plane::ALL
        .iter()
        .copied()
        .filter(|plane| *plane != Plane::ConductorEnd && !is_cut(plane))
        .filter_map(|plane| Some((leg.cutback.nominal(plane)?, plane)))
        .collect();
    planes.sort();
    planes
        .into_iter()
        .map(|(nominal, plane)| PlaneDoc {
            plane,
            words: plane_words(plane, wording),
            nominal_mm: nominal.mm(),
        })
        .collect()
}

fn connector_doc(
    connector: &Connector,
    leg: &LegInputs<'_>,
    wording: &dyn Wording,
) -> ConnectorDoc {
    let end = leg.chosen.end;
    let other = end.and_then(|end| connector.other_end(end));
    let measured = match &leg.cutback.growth {
        Growth::Measured {
            least,
            greatest,
            source,
        } => Some(([least.mm(), greatest.mm()], wording.say(&source.into()))),
        _ => None,
    };
    ConnectorDoc {
        means: connector.means,
        two_ended: connector.two_ended,
        end: end.and_then(|end| end.name.clone()),
        end_open: leg
            .chosen
            .no_end(leg.leg)
            .map(|why| wording.say(&why.into())),
        other_end_mm: other.map(|other| other.reach.mm()),
        length_mm: connector.length.mm(),
        stop_mm: connector.stop.mm(),
        outside_diameter_mm: end
            .map_or(connector.outside_diameter, |end| end.outside_diameter)
            .mm(),
        die: end.and_then(|end| end.die.clone()),
        presses: end.and_then(|end| end.presses),
        growth_of_mouth_mm: measured.as_ref().map(|(growth, _)| *growth),
        growth_source: measured.map(|(_, source)| source),
    }
}

fn part_docs(leg: &LegInputs<'_>, wording: &dyn Wording) -> Vec<PartDoc> {
    let chosen = leg.chosen;
    let parts = [
        (
            PartKind::Body,
            chosen.body.map(|p| (&p.head, p.may_move.as_ref())),
        ),
        (
            PartKind::Adapter,
            chosen.adapter.map(|p| (&p.head, p.may_move.as_ref())),
        ),
        (
            PartKind::Connector,
            chosen.connector.map(|p| (&p.head, None)),
        ),
        (
            PartKind::ShieldPart,
            chosen.shield_part.map(|p| (&p.head, None)),
        ),
        (
            PartKind::Seal,
            chosen.seal.map(|p| (&p.head, p.may_move.as_ref())),
        ),
    ];
    let side = chosen.body.and_then(|body| body.side.clone());
    let doc = |(kind, part): (PartKind, Option<(&Head, Option<&MayMove>)>)| {
        let (head, may_move) = part?;
        Some(PartDoc {
            kind,
            id: head.id.clone(),
            side: side.clone().filter(|_| kind == PartKind::Body),
            name: head.name.clone(),
            instructions: wording.say(&paper_alone(head).into()),
            doubts: head
                .paper()
                .doubts
                .into_iter()
                .map(|doubt| wording.say(&Said::Doubt(doubt)))
                .collect(),
            may_move: may_move.map(|may| wording.say(&may_move_said(may).into())),
        })
    };
    parts.into_iter().filter_map(doc).collect()
}

/// Paper of a part without the doubts of its row; the plan prints those beside it.
fn paper_alone(head: &Head) -> Paper {
    Paper {
        doubts: Vec::new(),
        ..head.paper()
    }
}

const fn may_move_said(may_move: &MayMove) -> MayMoveSaid {
    match may_move {
        MayMove::Never => MayMoveSaid::Never,
        MayMove::BeforeHoldoutIsOut => MayMoveSaid::UntilHoldoutIsOut,
        MayMove::WithinMinutes(minutes) => MayMoveSaid::WithinMinutes { minutes: *minutes },
    }
}

fn stack_doc(
    what: Distance,
    (from, to): (Plane, Plane),
    dimension: &Dimension,
    wording: &dyn Wording,
) -> StackDoc {
    let spread = dimension.stack_sample();
    let spread = spread.as_ref();
    StackDoc {
        what: wording.say(&what.into()),
        from,
        to,
        nominal_mm: dimension.nominal.mm(),
        min_mm: dimension.least.mm(),
        max_mm: dimension.greatest.mm(),
        middle_95_mm: spread.map(|s| [s.middle_95.0.mm(), s.middle_95.1.mm()]),
        shares: spread
            .map(|s| {
                s.share_ratios
                    .iter()
                    .map(|(plane, share)| ShareDoc {
                        plane: *plane,
                        words: wording.say(&mover(*plane).into()),
                        share_ratio: *share,
                    })
                    .collect()
            })
            .unwrap_or_default(),
    }
}

/// Mover of a plane.
fn mover(plane: Plane) -> Mover {
    match plane.holder() {
        Holder::Body => Mover::Body,
        Holder::Connector => Mover::Connector,
        Holder::Crew if plane == Plane::ScreenEdge => Mover::ScreenCut,
        Holder::Crew => Mover::Plane(plane),
    }
}

fn end_doc(job: &Job, leg: &LegInputs<'_>, end: &EndInputs, wording: &dyn Wording) -> EndDoc {
    let readings = end
        .survey
        .diameters
        .iter()
        .map(|(layer, d): (&Layer, _)| ReadingDoc {
            slot: Slot::diameter(&end.id, *layer),
            over: *layer,
            words: layer_words(*layer, wording),
            min_mm: d.known.read.least().mm(),
            max_mm: d.known.read.greatest().mm(),
            error_mm: d.known.error.mm(),
            ovality_mm: d.ovality.map(Length::mm),
        });
    let likeness = likeness(
        End {
            leg: leg.leg,
            phase: end.id.phase,
        },
        &end.survey,
    );
    EndDoc {
        phase: end.id.phase,
        measures: wording.say(&PapersSaid::in_short(&likeness).into()),
        like_its_papers: wording.say(&PapersSaid::of(&likeness).into()),
        readings: readings.collect(),
        filled: job.filled_slots(&end.id).into_iter().collect(),
        pressure: pressure_doc(end, wording),
    }
}
