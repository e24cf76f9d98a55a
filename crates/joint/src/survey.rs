//! Survey: the diameters of an end, from its readings.
//!
//! Why its own room: a reading is an interval with an instrument's error, taken over a named layer at a temperature; a fit must know all four.
//!
//! Invariants: no reading is averaged away: the least and the greatest are kept; a tape gives no ovality; no result says which circuit a cable is or whether it is dead.
//!
//! Not here: whether anything fits (`fit`, `checks`).

use crate::cable::{
    Construction, Evidence, Layer, Likeness, Metal, ShieldKind, candidates, compare,
    denied_by_papers,
};
use crate::end::EndId;
use crate::job::{End, Job, Leg, Reading};
use crate::limit::Known;
use crate::said::{Of, Said, UnlikeSaid};
use jointwright_units::{Interval, Length};
use std::collections::BTreeMap;

/// Diameters of one layer of one end.
#[derive(Clone, Debug, PartialEq)]
pub struct Diameter {
    /// Diameter as read, with its error.
    pub known: Known,
    /// Greatest difference between the diameters of one place, where four or more were read around it.
    pub ovality: Option<Length>,
    /// Whether four diameters or more were read around the cable at every place, with an instrument that can.
    pub is_read_around: bool,
    /// Temperatures of the readings, degrees Celsius; `None` if any reading has none.
    pub degc: Option<(f64, f64)>,
}

/// Readings of one end.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct EndSurvey {
    /// Diameters, by the layer over which they were read.
    pub diameters: BTreeMap<Layer, Diameter>,
    /// Counts and metals that were seen.
    pub seen: Seen,
}

/// Counts, metals and forms of conductor and shield as seen: the greatest count, the first metal and form.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Seen {
    /// Straps or wires of the shield.
    pub shield_elements: Option<u32>,
    /// Strands of the conductor.
    pub strands: Option<u32>,
    /// Metal of the conductor.
    pub metal: Option<Metal>,
    /// Form of the shield.
    pub shield_kind: Option<ShieldKind>,
}

/// Gathers the readings of an end.
pub fn survey(job: &Job, end: End<'_>) -> EndSurvey {
    let mut by_layer: BTreeMap<Layer, Vec<&Reading>> = BTreeMap::new();
    for reading in job.readings.of(&end.id()) {
        by_layer.entry(reading.over).or_default().push(reading);
    }
    let diameters = by_layer
        .into_iter()
        .filter_map(|(layer, readings)| Some((layer, diameter(&readings)?)))
        .collect();
    let counts = || job.counts.of(&end.id()).iter();
    EndSurvey {
        diameters,
        seen: Seen {
            shield_elements: counts().filter_map(|c| c.shield_elements).max(),
            strands: counts().filter_map(|c| c.strands).max(),
            metal: counts().find_map(|c| c.metal),
            shield_kind: counts().find_map(|c| c.shield_kind),
        },
    }
}

fn diameter(readings: &[&Reading]) -> Option<Diameter> {
    let read = Interval::hull(readings.iter().flat_map(|r| r.values.iter().copied()))?;
    let error = readings.iter().map(|r| r.error).max()?;
    let ovality = readings
        .iter()
        .filter(|r| is_read_around(r))
        .filter_map(|r| Some(Interval::hull(r.values.iter().copied())?.width()))
        .max();
    let degc = readings
        .iter()
        .map(|r| r.degc.map(|t| (t, t)))
        .reduce(|a, b| {
            let (a, b) = (a?, b?);
            Some((a.0.min(b.0), a.1.max(b.1)))
        });
    Some(Diameter {
        known: Known { read, error },
        ovality,
        is_read_around: readings.iter().all(|r| is_read_around(r)),
        degc: degc.flatten(),
    })
}

/// Number of diameters around the cable that shows its ovality.
const N_AROUND: usize = 4;

/// Whether a reading shows the thinnest and the thickest diameter of its place; a tape shows neither.
fn is_read_around(reading: &Reading) -> bool {
    let shows_one_diameter = matches!(reading.instrument.as_str(), "calliper" | "micrometer");
    shows_one_diameter && reading.values.len() >= N_AROUND
}

/// Cable of a leg with its measured diameter over the insulation screen, and that diameter; the papers' cable unless every phase was measured.
///
/// Readings count with the instrument's error.
pub fn measured(job: &Job, leg: &Leg) -> (Construction, Option<Interval>) {
    let mut cable = leg.cable.clone();
    let of_phase = |phase: u8| {
        let readings = job.readings.of(&EndId::new(&leg.id, phase)).iter();
        let readings = readings.filter(|reading| reading.over == Layer::InsulationScreen);
        let ends = readings.flat_map(|reading| {
            let read = Interval::hull(reading.values.iter().copied());
            let read = read.map(|read| read.widened(reading.error));
            read.into_iter()
                .flat_map(|read| [read.least(), read.greatest()])
        });
        Interval::hull(ends)
    };
    let phases: Option<Vec<Interval>> = job.phase_numbers().map(of_phase).collect();
    let ends = phases.unwrap_or_default();
    let ends = ends.iter().flat_map(|read| [read.least(), read.greatest()]);
    let read = Interval::hull(ends);
    if let Some(read) = read {
        cable.stated.insert(Layer::InsulationScreen, read);
    }
    (cable, read)
}

/// Place of a diameter for an ask.
pub fn place_of(leg: &Leg, phase: u8, over: Layer) -> Of {
    let end = EndId::new(&leg.id, phase);
    Of::Diameter { end, over }
}

impl EndSurvey {
    /// Evidence for the comparison with the cable's papers.
    pub fn evidence(&self) -> Evidence {
        Evidence {
            diameters: self
                .diameters
                .iter()
                .map(|(layer, d)| (*layer, d.known.read.widened(d.known.error)))
                .collect(),
            shield_elements: self.seen.shield_elements,
            shield_kind: self.seen.shield_kind,
            metal: self.seen.metal,
            strands: self.seen.strands,
            stranding: None,
        }
    }
}

/// Whether an end measures like its papers.
pub fn likeness(end: End<'_>, survey: &EndSurvey) -> Likeness {
    compare(&end.leg.cable, &survey.evidence(), candidates())
}

/// Readings of an end that the job's own statements about the cable contradict, without any row of the table.
pub fn denied(end: End<'_>, survey: &EndSurvey) -> Vec<Said> {
    let denied = denied_by_papers(&end.leg.cable, &survey.evidence());
    denied
        .into_iter()
        .map(|unlike| UnlikeSaid::from(unlike).into())
        .collect()
}
