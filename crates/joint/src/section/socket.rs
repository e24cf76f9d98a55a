//! Socket: the body around a tapered plug as its row states it, or the missing facts and whom to ask.
//!
//! A region that touches the bore has exactly two corners there, one after the other: one at an end of the plug and one where the region leaves the bore.
//! Both corners are moved onto the drawn line; the corners of a row that was measured on a cut body lie off it by its uncertainty.

use super::cone::Cone;
use super::path::{Piece, rounded};
use super::{NotDrawn, Unknown};
use crate::catalogue::{FieldDuty, Region, Taper};
use crate::said::{Said, SectionAsk, SectionRow};
use jointwright_numerics::outline::Point;

/// Least tolerance with which a corner lies on the bore, m.
const ON_BORE_LEAST: f64 = 0.05e-3;
/// Length of the section beyond either end of the plug, in radii of the outside.
const BEYOND_RADII: f64 = 1.5;

/// The body around a plug, cut off where its section ends.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Socket {
    /// Relative permittivity of its insulation.
    pub relative_permittivity: f64,
    /// Start of the section on the plug's side, before the large end, m.
    pub(super) start: f64,
    /// Beginning of the body, m.
    pub(super) bottom: f64,
    /// End of the section beyond the small end, m.
    pub(super) top: f64,
    deflector: Run,
    electrode: Run,
    outside: Run,
}

/// Corners in order and their radii, m; the first two corners of a conducting region lie on the bore.
#[derive(Clone, Debug, PartialEq)]
struct Run {
    name: String,
    corners: Vec<Point>,
    radii: Vec<f64>,
}

impl Socket {
    /// Reads the body around a plug.
    ///
    /// # Errors
    /// The missing facts, with the questions to put to the maker; else the reason why the stated values make no section.
    pub fn read(taper: &Taper, cone: &Cone) -> Result<Socket, NotDrawn> {
        let found = Found::of(taper)?;
        let tolerance = taper.uncertainty.m().max(ON_BORE_LEAST);
        let run = |region: &Region, is_rising: bool| {
            Run::read(region, cone, tolerance, is_rising).map_err(NotDrawn::Refused)
        };
        let (deflector, electrode) = (run(found.deflector, true)?, run(found.electrode, false)?);
        let mut outside = run(found.insulation, false)?;
        for (run, index, end) in [
            (&deflector, 0, 0.0),
            (&electrode, 0, cone.length),
            (&outside, 0, cone.length),
            (&outside, 1, 0.0),
        ] {
            run.covers(index, end, tolerance)
                .map_err(NotDrawn::Refused)?;
        }
        let (lowest, highest) = (
            outside.lowest().max(deflector.lowest()),
            outside.highest().min(electrode.highest()),
        );
        outside.corners.drain(..2);
        outside.radii.drain(..2);
        let radius = outside.corners.iter().map(|at| at.r).fold(0.0, f64::max);
        let start = -BEYOND_RADII * radius;
        let bottom = lowest.max(start);
        let top = highest.min(cone.length + BEYOND_RADII * radius);
        let cut =
            |run: &Run, plane: f64, sign: f64| run.up_to(plane, sign, 1).map_err(NotDrawn::Refused);
        let deflector = cut(&deflector, bottom, -1.0)?;
        let electrode = cut(&electrode, top, 1.0)?;
        let outside = outside.between(bottom, top).map_err(NotDrawn::Refused)?;
        let sharp = [deflector.sharp(), electrode.sharp()].concat();
        if !sharp.is_empty() {
            return Err(unknown(SectionRow::SharpAroundPlug, sharp));
        }
        Ok(Socket {
            relative_permittivity: found.relative_permittivity,
            start,
            bottom,
            top,
            deflector,
            electrode,
            outside,
        })
    }

    /// Outline of the deflector over a bore, from the plug's large end.
    ///
    /// # Errors
    /// The reason why it cannot be drawn.
    pub fn deflector(&self, bore: &Cone) -> Result<Vec<Piece>, Said> {
        self.deflector.on(bore, 0.0)
    }

    /// Outline of the electrode over a bore, from the plug's small end.
    ///
    /// # Errors
    /// The reason why it cannot be drawn.
    pub fn electrode(&self, bore: &Cone) -> Result<Vec<Piece>, Said> {
        self.electrode.on(bore, bore.length)
    }

    /// Outline of the insulation's outside, from the large end's side to the small end's side.
    ///
    /// # Errors
    /// The reason why it cannot be drawn.
    pub fn outside(&self) -> Result<Vec<Piece>, Said> {
        rounded(&self.outside.corners, &self.outside.radii).map_err(|why| self.outside.named(why))
    }
}

impl Run {
    /// Turns the order of the corners so that the two on the bore come first, and lead up or down the bore.
    fn read(region: &Region, cone: &Cone, tolerance: f64, is_rising: bool) -> Result<Run, Said> {
        let n = region.corners.len();
        let mut corners: Vec<(Point, f64)> = Vec::with_capacity(n);
        for (index, (along, diameter)) in region.corners.iter().enumerate() {
            let radius = region.radii.get(index).map_or(0.0, |radius| radius.m());
            let at = Point::new(diameter.m() / 2.0, along.m());
            corners.push((at, radius));
        }
        let is_on_bore = |index: usize| {
            let at = corners[index % n].0;
            let is_beside = at.z >= -tolerance && at.z <= cone.length + tolerance;
            is_beside && cone.distance(at) <= tolerance
        };
        let start = (0..n).find(|&index| is_on_bore(index) && is_on_bore(index + 1));
        let n_on_bore = (0..n).filter(|&index| is_on_bore(index)).count();
        let (Some(start), 2) = (start, n_on_bore) else {
            return Err(SectionRow::CornersOnCone {
                region: region.name.clone(),
                n_corners: n_on_bore as u32,
                within_mm: tolerance * 1e3,
            }
            .into());
        };
        corners.rotate_left(start);
        if (corners[0].0.z < corners[1].0.z) != is_rising {
            corners.swap(0, 1);
            corners[2..].reverse();
        }
        let (corners, radii) = corners.into_iter().unzip();
        Ok(Run {
            name: region.name.clone(),
            corners,
            radii,
        })
    }

    fn named(&self, why: impl Into<Said>) -> Said {
        let region = self.name.clone();
        Said::of(SectionRow::Region { region }, why)
    }

    fn lowest(&self) -> f64 {
        self.corners
            .iter()
            .map(|at| at.z)
            .fold(f64::INFINITY, f64::min)
    }

    fn highest(&self) -> f64 {
        let places = self.corners.iter().map(|at| at.z);
        places.fold(f64::NEG_INFINITY, f64::max)
    }

    /// Checks that a region covers its end of the plug; otherwise something not stated would lie there.
    fn covers(&self, index: usize, end: f64, tolerance: f64) -> Result<(), Said> {
        let found = self.corners[index].z;
        if (found - end).abs() <= tolerance {
            return Ok(());
        }
        Err(self.named(SectionRow::BeginsOnBore {
            found_mm: found * 1e3,
            end_mm: end * 1e3,
        }))
    }

    /// Corners from an index on to the first that reaches a plane: rising for a sign of 1, falling for −1.
    fn up_to(&self, plane: f64, sign: f64, from: usize) -> Result<Run, Said> {
        let mut kept = Run {
            name: self.name.clone(),
            corners: self.corners[..=from].to_vec(),
            radii: self.radii[..=from].to_vec(),
        };
        for index in from + 1..self.corners.len() {
            let (before, at) = (self.corners[index - 1], self.corners[index]);
            let (a, b) = (sign * (before.z - plane), sign * (at.z - plane));
            if b < 0.0 {
                kept.corners.push(at);
                kept.radii.push(self.radii[index]);
                continue;
            }
            if a >= 0.0 {
                break;
            }
            let mut last = before.towards(at, a / (a - b));
            last.z = plane;
            kept.corners.push(last);
            kept.radii.push(0.0);
            return Ok(kept);
        }
        Err(self.named(SectionRow::NotReaching {
            end_mm: plane * 1e3,
        }))
    }

    /// Part of the outside between two planes, from the last point on the lower plane to the first point on the upper plane.
    fn between(&self, bottom: f64, top: f64) -> Result<Run, Said> {
        let n = self.corners.len();
        let below = (0..n).rev().find(|&index| self.corners[index].z <= bottom);
        let Some(below) = below else {
            return Err(self.named(SectionRow::OutsideNotReaching {
                begin_mm: bottom * 1e3,
            }));
        };
        let tail = Run {
            name: self.name.clone(),
            corners: self.corners[below..].to_vec(),
            radii: self.radii[below..].to_vec(),
        };
        let mut kept = tail.up_to(top, 1.0, 0)?;
        let (first, next) = (kept.corners[0], kept.corners[1]);
        let share = (bottom - first.z) / (next.z - first.z);
        kept.corners[0] = first.towards(next, share);
        kept.corners[0].z = bottom;
        kept.radii[0] = 0.0;
        Ok(kept)
    }

    /// Questions for the corners between its ends that have no radius: the field at a sharp corner has no greatest value.
    fn sharp(&self) -> Vec<SectionAsk> {
        (1..self.corners.len() - 1)
            .filter(|&index| self.radii[index] <= 0.0)
            .map(|index| {
                let at = self.corners[index];
                SectionAsk::PlugCornerRadius {
                    region: self.name.clone(),
                    along_mm: at.z * 1e3,
                    diameter_mm: 2e3 * at.r,
                }
            })
            .collect()
    }

    /// Lines and arcs with both corners of the bore on another line, the first at the plug's end.
    fn on(&self, bore: &Cone, end: f64) -> Result<Vec<Piece>, Said> {
        let mut corners = self.corners.clone();
        corners[0] = bore.at(end);
        corners[1] = bore.at(corners[1].z);
        rounded(&corners, &self.radii).map_err(|why| self.named(why))
    }
}

/// Regions that a section needs.
struct Found<'t> {
    insulation: &'t Region,
    electrode: &'t Region,
    deflector: &'t Region,
    relative_permittivity: f64,
}

impl Found<'_> {
    fn of(taper: &Taper) -> Result<Found<'_>, NotDrawn> {
        let mut open: Vec<SectionAsk> = Vec::new();
        let mut one = |duty: FieldDuty| {
            let mut all = taper.regions.iter().filter(|r| r.serves == Some(duty));
            // Two of one kind: it is not known which one is meant.
            let found = all.next().filter(|_| all.next().is_none());
            if found.is_none() {
                open.push(SectionAsk::PlugWhereLies { duty });
            }
            found
        };
        let insulation = one(FieldDuty::Insulation);
        let (electrode, deflector) = (one(FieldDuty::Electrode), one(FieldDuty::Deflector));
        let permittivity = insulation.and_then(|region| region.relative_permittivity);
        if insulation.is_some() && permittivity.is_none() {
            open.push(SectionAsk::PlugPermittivity);
        }
        match (insulation, electrode, deflector, permittivity) {
            (Some(insulation), Some(electrode), Some(deflector), Some(permittivity)) => Ok(Found {
                insulation,
                electrode,
                deflector,
                relative_permittivity: permittivity,
            }),
            _ => Err(unknown(SectionRow::AroundPlugNotWhole, open)),
        }
    }
}

/// Questions about a plug of which nothing is known, with the name of the body that sits on it.
pub(super) fn questions(id: &str) -> Vec<SectionAsk> {
    let part = || id.to_owned();
    vec![
        SectionAsk::PlugSizes { part: part() },
        SectionAsk::PlugFilm { part: part() },
        SectionAsk::PlugInside { part: part() },
    ]
}

fn unknown(why: SectionRow, questions: Vec<SectionAsk>) -> NotDrawn {
    NotDrawn::Unknown(Unknown::new(why, questions))
}
