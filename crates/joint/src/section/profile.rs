//! Profile: the inside of a body as the field needs it and as its row states it, or the missing facts and whom to ask.
//!
//! A region that touches the bore has exactly two corners on it, both on the diameter for which the inside is stated.

use super::path::{Piece, rounded};
use super::{NotDrawn, Unknown};
use crate::catalogue::{Body, FieldDuty, Grading, Inner, Region, ScreenStep};
use crate::said::{Said, SectionAsk, SectionRow};
use jointwright_numerics::outline::Point;
use jointwright_units::Length;

/// Inside of one half of a body, as stated.
#[derive(Clone, Debug, PartialEq)]
pub struct Profile {
    /// Radius over the insulation for which the inside is stated, m.
    pub on_radius_m: f64,
    /// Uncertainty of every place of the inside, m.
    pub uncertainty_m: f64,
    /// Relative permittivity of the insulation.
    pub relative_permittivity: f64,
    /// Shape of the rubber over the edge of the insulation screen.
    pub step: ScreenStep,
    /// Layer that spreads the field, if there is one.
    pub grading: Option<Grading>,
    /// Radius of the bore on which electrode and deflector lie, as stated, m.
    bore: f64,
    electrode: Chain,
    deflector: Option<Chain>,
    outside: Chain,
}

/// Corners in order and their radii, m; the first two corners lie on the bore where the chain touches it.
#[derive(Clone, Debug, PartialEq)]
struct Chain {
    name: String,
    corners: Vec<Point>,
    radii: Vec<f64>,
}

impl Profile {
    /// Reads the inside of a body.
    ///
    /// # Errors
    /// The missing facts, with the questions to put to the maker.
    pub fn read(body: &Body) -> Result<Profile, NotDrawn> {
        let id = &body.head.id;
        let Some(inner) = &body.inner else {
            return Err(unknown(
                SectionRow::InsideNotKnown { part: id.clone() },
                questions(id),
            ));
        };
        let duties = [
            FieldDuty::Insulation,
            FieldDuty::Electrode,
            FieldDuty::Deflector,
        ];
        let regions = duties.map(|duty| one(inner, duty));
        let open = open_questions(id, inner, duties, regions);
        let ([Some(insulation), Some(electrode), deflector], Some(on), Some(step), true) = (
            regions,
            inner.on_diameter,
            inner.screen_step.clone(),
            open.is_empty(),
        ) else {
            return Err(unknown(
                SectionRow::InsideNotWhole { part: id.clone() },
                open,
            ));
        };
        let Some(permittivity) = insulation.relative_permittivity else {
            return Err(unknown(
                SectionRow::InsideNotWhole { part: id.clone() },
                open,
            ));
        };
        conducting_as_served(id, insulation, electrode, deflector)?;
        let layer = inner.grading.map_or(Length::ZERO, |layer| layer.thickness);
        let bore = on + layer + layer;
        let chain = |region: &Region, is_outward: bool| Chain::read(id, region, bore, is_outward);
        let electrode = chain(electrode, true)?;
        let deflector = deflector.map(|region| chain(region, false)).transpose()?;
        let mut outside = chain(insulation, false)?;
        // Along the bore inward, then back along the outside.
        outside.corners.drain(..2);
        outside.radii.drain(..2);
        for chain in std::iter::once(&electrode).chain(&deflector) {
            chain.rounded_where_it_matters(id)?;
        }
        Ok(Profile {
            on_radius_m: radius(on),
            uncertainty_m: inner.uncertainty.m(),
            relative_permittivity: permittivity,
            step,
            grading: inner.grading,
            bore: radius(bore),
            electrode,
            deflector,
            outside,
        })
    }

    /// Outline of the electrode on a bore of this radius, m, from the point where it leaves the bore.
    ///
    /// # Errors
    /// The reason why it cannot be drawn.
    pub(super) fn electrode(&self, on: f64) -> Result<Vec<Piece>, Said> {
        self.off_the_bore(&self.electrode, on)
    }

    /// Outline of the deflector on a bore of this radius, m, from its heel; empty if a layer takes its place.
    ///
    /// # Errors
    /// The reason why it cannot be drawn.
    pub(super) fn deflector(&self, on: f64) -> Result<Vec<Piece>, Said> {
        match &self.deflector {
            Some(deflector) => self.off_the_bore(deflector, on),
            None => Ok(Vec::new()),
        }
    }

    /// Outside radius of the layer that spreads the field, on a cable of this radius over its insulation, both in m.
    pub fn grading_outside_m(&self, on_m: f64) -> f64 {
        (self.bore * self.bore + on_m * on_m - self.on_radius_m * self.on_radius_m)
            .max(0.0)
            .sqrt()
    }

    /// Outside of the insulation on a bore of this radius, m, from the inner end outward.
    ///
    /// # Errors
    /// The reason why it cannot be drawn.
    pub(super) fn outside(&self, on: f64) -> Result<Vec<Piece>, Said> {
        rounded(&self.stretched(&self.outside, on), &self.outside.radii)
            .map_err(|why| Said::of(&self.outside.name, why))
    }

    /// Places where the electrode leaves a bore of this radius and where the deflector begins on it, after rounding, all in m; `None` for the second without a deflector.
    ///
    /// # Errors
    /// The reason why they cannot be computed.
    pub fn bore_ends_m(&self, on_m: f64) -> Result<(f64, Option<f64>), Said> {
        let first = |pieces: &[Piece]| pieces.first().map(|piece| piece.from.z);
        let foot = first(&self.electrode(on_m)?).unwrap_or_else(|| self.electrode_end_m());
        Ok((foot, first(&self.deflector(on_m)?)))
    }

    /// Place of the electrode's end along the bore as its row states it, before rounding, m.
    pub fn electrode_end_m(&self) -> f64 {
        self.electrode.corners[1].z
    }

    /// Largest radius of the outside as stated, m.
    pub fn outside_radius_m(&self) -> f64 {
        let radii = self.outside.corners.iter().map(|corner| corner.r);
        radii.fold(0.0, f64::max)
    }

    /// The same profile with another outside, for tests.
    #[cfg(test)]
    pub(super) fn read_outside(&self, radius: f64) -> Profile {
        let mut other = self.clone();
        for corner in &mut other.outside.corners {
            corner.r = radius;
        }
        other
    }

    fn off_the_bore(&self, chain: &Chain, on: f64) -> Result<Vec<Piece>, Said> {
        let mut pieces = rounded(&self.stretched(chain, on), &chain.radii)
            .map_err(|why| Said::of(&chain.name, why))?;
        // The line along the bore, up to the beginning of the rounding.
        pieces.remove(0);
        Ok(pieces)
    }

    /// Corners with the bore on another radius.
    ///
    /// The rubber is incompressible and keeps its length: r² grows by the same amount everywhere.
    fn stretched(&self, chain: &Chain, on: f64) -> Vec<Point> {
        let more = on * on - self.bore * self.bore;
        let stretch = |corner: &Point| {
            let is_on_bore = corner.r == self.bore;
            let r = if is_on_bore {
                on
            } else {
                (corner.r * corner.r + more).max(0.0).sqrt()
            };
            Point::new(r, corner.z)
        };
        chain.corners.iter().map(stretch).collect()
    }
}

impl Chain {
    /// Turns the order of the corners so that the two on the bore come first, and lead outward or inward along the bore.
    fn read(id: &str, region: &Region, on: Length, is_outward: bool) -> Result<Chain, NotDrawn> {
        let n = region.corners.len();
        let mut corners: Vec<(Point, f64)> = (0..n)
            .map(|index| {
                let (along, diameter) = region.corners[index];
                let rounding = region.radii.get(index).copied().unwrap_or(Length::ZERO);
                (Point::new(radius(diameter), along.m()), rounding.m())
            })
            .collect();
        let is_on_bore = |index: usize| region.corners[index % n].1 == on;
        let start = (0..n).find(|&index| is_on_bore(index) && is_on_bore(index + 1));
        let n_on_bore = (0..n).filter(|&index| is_on_bore(index)).count();
        let (Some(start), 2) = (start, n_on_bore) else {
            return Err(NotDrawn::Refused(
                SectionRow::CornersOnBore {
                    part: id.to_owned(),
                    region: region.name.clone(),
                    n_corners: n_on_bore as u32,
                    diameter: on.to_string(),
                }
                .into(),
            ));
        };
        corners.rotate_left(start);
        if (corners[0].0.z < corners[1].0.z) != is_outward {
            corners.swap(0, 1);
            corners[2..].reverse();
        }
        let (corners, radii) = corners.into_iter().unzip();
        Ok(Chain {
            name: format!("{id}, {}", region.name),
            corners,
            radii,
        })
    }

    /// Checks that the corners of a conductor are rounded: the field at a sharp corner has no greatest value.
    fn rounded_where_it_matters(&self, id: &str) -> Result<(), NotDrawn> {
        // The last corner lies at the end of the section, and so does the corner on the bore at which the bore's line begins.
        let n = self.corners.len();
        let sharp: Vec<SectionAsk> = (1..n - 1)
            .filter(|&index| self.radii[index] <= 0.0)
            .map(|index| {
                let corner = self.corners[index];
                SectionAsk::CornerRadius {
                    region: self.name.clone(),
                    along_mm: corner.z * 1e3,
                    diameter_mm: 2e3 * corner.r,
                }
            })
            .collect();
        if sharp.is_empty() {
            return Ok(());
        }
        let part = id.to_owned();
        Err(unknown(SectionRow::SharpInside { part }, sharp))
    }
}

/// Facts about an inside that the row does not state.
fn open_questions(
    id: &str,
    inner: &Inner,
    duties: [FieldDuty; 3],
    regions: [Option<&Region>; 3],
) -> Vec<SectionAsk> {
    let part = || id.to_owned();
    let mut open: Vec<SectionAsk> = Vec::new();
    if inner.on_diameter.is_none() {
        open.push(SectionAsk::OnWhatDiameter { part: part() });
    }
    if inner.screen_step.is_none() {
        open.push(SectionAsk::OverEdge { part: part() });
    }
    for (duty, region) in duties.into_iter().zip(&regions) {
        // A layer that spreads the field may take the deflector's place.
        let may_lack = inner.grading.is_some() && duty == FieldDuty::Deflector;
        if region.is_none() && !may_lack {
            open.push(SectionAsk::WhereLies { part: part(), duty });
        }
    }
    if regions[0].is_some_and(|r| r.relative_permittivity.is_none()) {
        open.push(SectionAsk::Permittivity { part: part() });
    }
    open
}

/// Checks that a region conducts if it serves as a conductor, and does not if it insulates.
fn conducting_as_served(
    id: &str,
    insulation: &Region,
    electrode: &Region,
    deflector: Option<&Region>,
) -> Result<(), NotDrawn> {
    let served = [
        (Some(insulation), false),
        (Some(electrode), true),
        (deflector, true),
    ];
    for (region, conducts) in served {
        let Some(region) = region.filter(|region| region.conductive != conducts) else {
            continue;
        };
        return Err(NotDrawn::Refused(
            SectionRow::ServesOtherwise {
                part: id.to_owned(),
                region: region.name.clone(),
                serves_as_conductor: conducts,
                conducts: region.conductive,
            }
            .into(),
        ));
    }
    Ok(())
}

fn one(inner: &Inner, duty: FieldDuty) -> Option<&Region> {
    let mut found = inner.regions.iter().filter(|r| r.serves == Some(duty));
    let first = found.next();
    // Two of one kind: it is not known which one is meant.
    if found.next().is_some() { None } else { first }
}

fn questions(id: &str) -> Vec<SectionAsk> {
    let part = || id.to_owned();
    vec![
        SectionAsk::Inside { part: part() },
        SectionAsk::Permittivity { part: part() },
        SectionAsk::EdgeRadii { part: part() },
    ]
}

fn unknown(why: SectionRow, questions: Vec<SectionAsk>) -> NotDrawn {
    NotDrawn::Unknown(Unknown::new(why, questions))
}

fn radius(diameter: Length) -> f64 {
    diameter.mm() * 0.5e-3
}
