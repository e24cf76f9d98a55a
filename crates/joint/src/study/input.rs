//! Input: the dimensions of one leg from its readings, papers, rows and windows, and the dimensions that the instructions allow.

use super::FittedLeg;
use crate::cable::Layer;
use crate::catalogue::{Adapter, Body, Fits};
use crate::cutback::{Cutback, cutback};
use crate::job::{AsBuilt, Job, JointKind};
use crate::plane::Plane;
use crate::said::{CutSaid, Read, Said, StudyAdapter, StudyCable, StudySaid};
use crate::section::{Drive, EDGE_SHARE_GREATEST, NotDrawn, Profile, Unknown};
use crate::underlay::{past_edge, past_edge_least};
use jointwright_units::{Interval, Length, Station, Toward};

/// Greatest ratio by which the rubber may be stretched or released from the diameter for which its inside is stated.
const STRETCH_GREATEST: f64 = 1.5;
/// Tolerance, m, in addition to the uncertainty, between the electrode of the row's inside and the plane that the row's own links give.
const PLANE_CLOSE: f64 = 0.5e-3;

/// Least and greatest of a length, m.
pub type Range = (f64, f64);

/// Dimensions that are left open, with their bounds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DimensionRanges {
    /// Radius over the insulation, m.
    pub radius: Range,
    /// Edge of the insulation screen from the body's datum, m.
    pub screen_edge_m: Range,
    /// Radius of the screen's edge, m.
    pub edge_radius_m: Range,
}

/// An adapter as its row states it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SleeveRow {
    /// Relative permittivity.
    pub relative_permittivity: f64,
    /// Radii over the insulation that it takes, m.
    pub bore: Range,
    /// Its outside radius on the least and on the greatest of them, m.
    pub outside: Range,
}

impl SleeveRow {
    /// Outside radius on a cable of this radius over the insulation, both in m: linear between the stated radii.
    pub(super) fn outside_on(&self, on: f64) -> f64 {
        let span = self.bore.1 - self.bore.0;
        let share = if span > 0.0 {
            (on - self.bore.0) / span
        } else {
            0.0
        };
        self.outside.0 + share * (self.outside.1 - self.outside.0)
    }
}

/// Dimensions of a study, m.
#[derive(Clone, Debug, PartialEq)]
pub struct Input {
    /// Inside of the body.
    pub profile: Profile,
    /// Insulation wall under the body.
    pub wall_m: f64,
    /// Thickness of the insulation screen.
    pub screen_thickness_m: f64,
    /// Relative permittivity of the cable's insulation.
    pub relative_permittivity: f64,
    /// Farthest end of the insulation from the body's datum.
    pub insulation_end_m: f64,
    /// The same as planned, for the states that the instructions allow: a reading as built does not move it.
    pub planned_insulation_end_m: f64,
    /// The adapter, if there is one.
    pub sleeve: Option<SleeveRow>,
    /// Drive of the conductor in service: the highest continuous voltage to earth.
    pub service: Drive,
    /// Drive of the conductor at the trial, if one is named and a conducting material makes its field another.
    pub trial: Option<Drive>,
    /// Whether the datum is a junction of more than two arms.
    pub is_junction: bool,
    /// This leg.
    pub here: DimensionRanges,
    /// Dimensions that the instructions allow, or the reason why they are not known.
    pub allowed: Result<DimensionRanges, Said>,
}

/// Reads the dimensions of a leg.
///
/// # Errors
/// A fact that is missing, or dimensions that disagree.
pub fn read(subject: &FittedLeg<'_>) -> Result<Input, NotDrawn> {
    let (job, chosen) = (subject.job, subject.chosen);
    let Some(body) = chosen.body else {
        return Err(unknown(CutSaid::BodyLeftOpen));
    };
    let profile = Profile::read(body)?;
    let Some(permittivity) = subject.leg.relative_permittivity else {
        let leg = subject.leg.id.clone();
        return Err(NotDrawn::Unknown(Unknown::new(
            StudySaid::PermittivityNotStated,
            [StudySaid::AskPermittivity { leg }],
        )));
    };
    let insulation = read_over(subject, Layer::Insulation)?;
    let screen_thickness_m = screen_thickness(subject, &insulation)?;
    let wall = wall(subject, &insulation)?;
    let datum = datum(subject.cutback, body)?;
    agree(subject, body, &profile, datum)?;
    let from_datum = |plane: Plane| -> Result<Range, NotDrawn> {
        let dimension = subject.cutback.dimension(datum, plane);
        let interval = dimension.map_err(unknown)?.interval();
        Ok((interval.least().m(), interval.greatest().m()))
    };
    let insulation_end_m = from_datum(subject.cutback.in_service(Plane::InsulationEnd))?.1;
    let planned_insulation_end_m = match planned_insulation_end(subject, datum) {
        Some(planned) => planned.map_err(unknown)?,
        None => insulation_end_m,
    };
    let edge_radius_m = edge_radius(&profile, screen_thickness_m);
    stretch(body, &profile, half(insulation))?;
    let here = DimensionRanges {
        radius: half(insulation),
        screen_edge_m: from_datum(Plane::ScreenEdge)?,
        edge_radius_m,
    };
    let sleeve = chosen.adapter.map(sleeve).transpose()?;
    drawable(body, &profile, sleeve.is_some())?;
    if let Some(row) = &sleeve {
        reaches(subject, &profile, row, &here, &from_datum)?;
    }
    let allowed = allowed(subject, body, datum, edge_radius_m);
    let (service, trial) = drives(job, &profile);
    Ok(Input {
        profile,
        wall_m: wall,
        screen_thickness_m,
        relative_permittivity: permittivity,
        insulation_end_m,
        planned_insulation_end_m,
        sleeve,
        service,
        trial,
        is_junction: job.kind != JointKind::Straight,
        here,
        allowed,
    })
}

/// Farthest end of the insulation from the body's datum without the places that were read, m; `None` if none was read.
fn planned_insulation_end(subject: &FittedLeg<'_>, datum: Plane) -> Option<Result<f64, CutSaid>> {
    subject.job.as_built_of(subject.leg)?;
    let job = Job {
        as_built: subject.job.as_built.as_ref().map(AsBuilt::without_places),
        ..subject.job.clone()
    };
    let planned = cutback(&job, subject.leg, subject.chosen).ok()?;
    let end = planned.in_service(Plane::InsulationEnd);
    let dimension = planned.dimension(datum, end);
    Some(dimension.map(|dimension| dimension.interval().greatest().m()))
}

/// Drive of the conductor in service, and at the trial if its field is another.
fn drives(job: &Job, profile: &Profile) -> (Drive, Option<Drive>) {
    let layer = profile.grading;
    let conducts = layer.is_some_and(|layer| layer.conductivity_s_per_m > 0.0);
    let service = Drive {
        voltage: job.system.voltage(),
        frequency_hz: conducts.then_some(job.system.frequency_hz),
    };
    let trial = job.trial.as_ref().filter(|_| conducts).map(|trial| Drive {
        voltage: trial.sine_of_same_crest(),
        frequency_hz: Some(trial.frequency_hz),
    });
    (service, trial)
}

/// Radii of the screen's edge as drawn: the thickness of the screen limits the radius of its edge.
fn edge_radius(profile: &Profile, screen_thickness_m: f64) -> Range {
    let most = EDGE_SHARE_GREATEST * screen_thickness_m;
    let (least, greatest) = range(profile.step.edge_radius);
    (least.min(most), greatest.min(most))
}

/// Checks that the inside is not stated for quite another cable, about which it says nothing.
fn stretch(body: &Body, profile: &Profile, radius: Range) -> Result<(), NotDrawn> {
    let ratio = |radius: f64| {
        let ratio = radius / profile.on_radius_m;
        ratio.max(1.0 / ratio)
    };
    if ratio(radius.0).max(ratio(radius.1)) <= STRETCH_GREATEST {
        return Ok(());
    }
    Err(NotDrawn::Refused(
        StudySaid::StatedForOther {
            part: body.head.id.clone(),
            stated_mm: 2e3 * profile.on_radius_m,
            least_mm: 2e3 * radius.0,
            greatest_mm: 2e3 * radius.1,
        }
        .into(),
    ))
}

/// Checks for details that are known but not drawn, or not examined.
fn drawable(body: &Body, profile: &Profile, has_adapter: bool) -> Result<(), NotDrawn> {
    let (part, Some(layer)) = (body.head.id.clone(), profile.grading) else {
        return Ok(());
    };
    if has_adapter {
        return Err(NotDrawn::Refused(StudyAdapter::UnderLayer { part }.into()));
    }
    if layer.rise_kv_per_mm.is_some() {
        return Err(NotDrawn::Refused(StudySaid::LayerRises { part }.into()));
    }
    Ok(())
}

fn unknown(why: impl Into<Said>) -> NotDrawn {
    NotDrawn::Unknown(Unknown::plain(why))
}

/// Diameters over a layer on all ends, with the instruments' errors.
fn read_over(subject: &FittedLeg<'_>, layer: Layer) -> Result<Interval, NotDrawn> {
    let mut all: Vec<Length> = Vec::new();
    for (phase, survey) in subject.job.phase_numbers().zip(subject.surveys) {
        let Some(diameter) = survey.diameters.get(&layer) else {
            let phase = u32::from(phase);
            return Err(unknown(StudyCable::NotMeasuredInPhase { layer, phase }));
        };
        let read = diameter.known.read.widened(diameter.known.error);
        all.extend([read.least(), read.greatest()]);
    }
    Interval::hull(all).ok_or_else(|| unknown(StudyCable::NotMeasured { layer }))
}

/// Thickness of the insulation screen: half the difference of the middle readings, else the papers' value.
fn screen_thickness(subject: &FittedLeg<'_>, insulation: &Interval) -> Result<f64, NotDrawn> {
    if let Ok(screen) = read_over(subject, Layer::InsulationScreen) {
        let thickness = (middle(screen) - middle(*insulation)) / 2.0;
        if thickness > 0.0 {
            return Ok(thickness);
        }
        return Err(unknown(StudyCable::ScreenNotThicker {
            insulation_mm: middle(*insulation) * 1e3,
            screen_mm: middle(screen) * 1e3,
        }));
    }
    let band = subject.leg.cable.thickness_of(Layer::InsulationScreen);
    band.map(|band| band.nominal.m())
        .map_err(|_| unknown(StudyCable::ScreenThicknessNotKnown))
}

/// Wall between conductor screen and insulation screen, from the middle reading over the insulation and the papers' diameter over the conductor screen.
fn wall(subject: &FittedLeg<'_>, insulation: &Interval) -> Result<f64, NotDrawn> {
    let band = subject.leg.cable.diameter_over(Layer::ConductorScreen);
    let screen = band.map_err(|_| unknown(StudyCable::ConductorScreenNotKnown))?;
    let wall = (middle(*insulation) - screen.nominal.m()) / 2.0;
    if wall <= 0.0 {
        return Err(NotDrawn::Refused(
            StudyCable::NoWall {
                insulation_mm: middle(*insulation) * 1e3,
                screen_mm: screen.nominal.m() * 1e3,
            }
            .into(),
        ));
    }
    Ok(wall)
}

/// The body's own datum.
fn datum(cutback: &Cutback, body: &Body) -> Result<Plane, NotDrawn> {
    [Plane::BodyCentre, Plane::BodySeat]
        .into_iter()
        .find(|plane| cutback.nominal(*plane).is_some())
        .ok_or_else(|| {
            let part = body.head.id.clone();
            unknown(StudySaid::DatumNotPlaced { part })
        })
}

/// Checks that the inside of a body and the planes of its links describe the same body.
fn agree(
    subject: &FittedLeg<'_>,
    body: &Body,
    profile: &Profile,
    datum: Plane,
) -> Result<(), NotDrawn> {
    let end = subject.cutback.dimension(datum, Plane::ElectrodeEnd);
    let Ok(end) = end else { return Ok(()) };
    let (linked, inside) = (end.interval().least().m(), profile.electrode_end_m());
    if (linked - inside).abs() > profile.uncertainty_m + PLANE_CLOSE {
        return Err(NotDrawn::Refused(
            StudySaid::ElectrodeElsewhere {
                part: body.head.id.clone(),
                linked_mm: linked * 1e3,
                inside_mm: inside * 1e3,
            }
            .into(),
        ));
    }
    Ok(())
}

fn sleeve(adapter: &Adapter) -> Result<SleeveRow, NotDrawn> {
    let part = || adapter.head.id.clone();
    let Some(permittivity) = adapter.relative_permittivity else {
        return Err(NotDrawn::Unknown(Unknown::new(
            StudyAdapter::StuffNotKnown { part: part() },
            [StudyAdapter::AskStuff { part: part() }],
        )));
    };
    let Some(over) = Fits::bore_over(&adapter.fits, Layer::Insulation) else {
        return Err(unknown(no_range(&adapter.head.id)));
    };
    Ok(SleeveRow {
        relative_permittivity: permittivity,
        bore: half(over.range),
        outside: half(adapter.outside),
    })
}

/// Checks that an adapter reaches from under the electrode to the end of the section, wherever the windows let it lie; it is drawn so.
///
/// Between two conductors of one potential a field falls to 4 % over their distance.
/// So an adapter that passes edge, heel and foot by its own thickness is long enough.
fn reaches(
    subject: &FittedLeg<'_>,
    profile: &Profile,
    row: &SleeveRow,
    here: &DimensionRanges,
    from_datum: &dyn Fn(Plane) -> Result<Range, NotDrawn>,
) -> Result<(), NotDrawn> {
    let Some(adapter) = subject.chosen.adapter else {
        return Ok(());
    };
    let part = || adapter.head.id.clone();
    let refused = |why: StudyAdapter| Err(NotDrawn::Refused(why.into()));
    let missing = |why: CutSaid| unknown(Said::of(CutSaid::WhereLies { part: part() }, why));
    let past = past_edge(subject.cutback).map_err(missing)?;
    if let Some(short) = too_short(adapter, past) {
        return Err(unknown(short));
    }
    let near = from_datum(Plane::AdapterNear)?.1;
    let far = from_datum(Plane::AdapterFar)?.0;
    for on in [here.radius.0, here.radius.1] {
        let outside = row.outside_on(on);
        let thick = outside - on;
        let (foot, heel) = profile.bore_ends_m(outside).map_err(NotDrawn::Refused)?;
        if near > foot - thick {
            return refused(StudyAdapter::BeginsAfter {
                part: part(),
                begins_mm: near * 1e3,
                electrode_mm: foot * 1e3,
            });
        }
        if let Some(heel) = heel.filter(|heel| far < heel + thick) {
            return refused(StudyAdapter::EndsBeforeDeflector {
                part: part(),
                ends_mm: far * 1e3,
                deflector_mm: heel * 1e3,
            });
        }
    }
    Ok(())
}

/// Message about an adapter that does not pass the edge of the insulation screen by its own thickness, wherever the windows let it lie.
fn too_short(adapter: &Adapter, past: Station) -> Option<StudyAdapter> {
    let least = past_edge_least(adapter)?;
    if past >= Station::from(least) {
        return None;
    }
    let part = adapter.head.id.clone();
    Some(if past < Station::ZERO {
        StudyAdapter::EndsBeforeEdge {
            part,
            by: Read::along((-past).ceil(), Toward::Longer),
        }
    } else {
        StudyAdapter::EndsTooNear {
            part,
            past: Read::along(past.floor(), Toward::Shorter),
            thick: Read::along(least, Toward::Longer),
        }
    })
}

fn no_range(id: &str) -> CutSaid {
    CutSaid::NoRangeOver {
        part: id.to_owned(),
        layer: Layer::Insulation,
    }
}

/// Dimensions that the instructions allow: every diameter of the range over the insulation, the edge at the ends of its tolerance, without the owner's limits.
fn allowed(
    subject: &FittedLeg<'_>,
    body: &Body,
    datum: Plane,
    edge_radius_m: Range,
) -> Result<DimensionRanges, Said> {
    let adapter = subject.chosen.adapter;
    let on_insulation = subject.chosen.on_insulation();
    let (head, fits) = on_insulation.unwrap_or((&body.head, &body.fits));
    let range = Fits::bore_over(fits, Layer::Insulation)
        .ok_or_else(|| no_range(&head.id))?
        .range;
    let alone = cutback(
        &subject.job.by_instructions_alone(),
        subject.leg,
        subject.chosen,
    )
    .map_err(|_| StudySaid::NoEdgeByInstructions)?;
    if let Some(adapter) = adapter
        && let Some(short) = too_short(adapter, past_edge(&alone)?)
    {
        let said = short.into();
        return Err(StudySaid::ByInstructionsAlone { said }.into());
    }
    let edge = alone.dimension(datum, Plane::ScreenEdge)?.interval();
    let mut edge = (edge.least().m(), edge.greatest().m());
    // Never outside the stretch in which the body controls the stress, whatever the sum of the tolerances.
    if let Ok(near) = alone.dimension(datum, Plane::ControlNear) {
        edge.0 = edge.0.max(near.interval().least().m());
    }
    if let Ok(far) = alone.dimension(datum, Plane::ControlFar) {
        edge.1 = edge.1.min(far.interval().greatest().m());
    }
    if edge.0 > edge.1 {
        let part = head.id.clone();
        return Err(StudySaid::NoPlaceForEdge { part }.into());
    }
    Ok(DimensionRanges {
        radius: half(range),
        screen_edge_m: edge,
        edge_radius_m,
    })
}

fn range(interval: Interval) -> Range {
    (interval.least().m(), interval.greatest().m())
}

fn half(diameter: Interval) -> Range {
    let (least, greatest) = range(diameter);
    (least / 2.0, greatest / 2.0)
}

fn middle(interval: Interval) -> f64 {
    (interval.least().m() + interval.greatest().m()) / 2.0
}
