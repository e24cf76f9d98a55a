//! Draw: an end as a section with its curves, materials and potentials, and the numbers wanted of it.

use super::path::{Piece, cut_at, reversed};
use super::{End, GapPlace, NotDrawn, Quantity, Sleeve};
use crate::said::{Contour, Said, SectionShape};
use jointwright_numerics::field::Conductivity;
use jointwright_numerics::field::{Disc, Material, Regime, Section, Wanted};
use jointwright_numerics::gas::Curve as Breakdown;
use jointwright_numerics::outline::{Curve, Outline, Point, Region, Shape, Side, check};

/// Distance before the edge of the screen at which the field along the cable is judged, m.
///
/// An edge cut by hand has no radius that could be surveyed; half a millimetre away, the field no longer depends on the radius.
pub const STAND_OFF: f64 = 0.5e-3;
/// Cable shown beyond the outermost of heel and screen edge, in walls.
const BEYOND_WALLS: f64 = 3.0;
/// Cable shown under the electrode, in walls.
const UNDER_WALLS: f64 = 3.0;
/// Body shown inward of the electrode's end, in radii of the outside.
const INWARD_RADII: f64 = 1.0;
/// Least distance of the drawing from the axis of an arm that leaves a junction, in radii of the outside.
///
/// Source: `tests/published/junction-reach`: beyond at most 1.84 radii (conductor a fifth of the outside) a perpendicular arm changes no field by more than 1 %.
const JUNCTION_RADII: f64 = 2.0;
/// Radius of the disc that peaks leave out round a cusp, as a share of the radius that makes the cusp.
const CUSP_SHARE: f64 = 0.1;
const HEEL_SHARE: f64 = 0.05;
/// Radius of the disc that peaks leave out round the corners of an edge without a radius, m.
const SHARP_DISC: f64 = 10e-6;
/// Least length of screen before the heel that is drawn, in radii of its edge.
const EXPOSED_RADII_LEAST: f64 = 1.5;
/// The same where the edge is sharp, m.
const EXPOSED_LEAST: f64 = 10e-6;
/// Greatest radius of an edge, as a share of the screen's thickness.
pub const EDGE_SHARE_GREATEST: f64 = 0.45;
/// Pressure of the gas in a gap, Pa: one standard atmosphere, in a gap that nothing presses.
pub const GAP_PRESSURE_PA: f64 = 101_325.0;
/// Name of the gap before the edge of the screen, and tags of its two sides.
const GAP: &str = "gap before the screen edge";
const ON_CABLE: &str = "gap_on_cable";
const ON_RUBBER: &str = "gap_on_rubber";
const SCREEN_EDGE: &str = "screen_edge";
/// Curves between which the gap is crossed; the screen is nowhere nearer to a side than that side is to the screen.
const ACROSS_GAP: [[&[&str]; 2]; 4] = [
    [&[ON_CABLE], &[ON_RUBBER]],
    [&[ON_RUBBER], &[ON_CABLE]],
    [&[ON_CABLE], &[SCREEN_EDGE]],
    [&[ON_RUBBER], &[SCREEN_EDGE]],
];

/// Tags of conductors at the conductor's potential.
const AT_CONDUCTOR: [&str; 4] = ["conductor", "electrode_bore", "electrode", "electrode_end"];
/// Tags of conductors at earth.
const AT_EARTH: [&str; 6] = [
    "screen",
    SCREEN_EDGE,
    "deflector",
    "deflector_heel",
    "deflector_tip",
    "outside",
];

/// A drawn end.
#[derive(Clone, Debug)]
pub struct Drawn {
    /// Section in metres from the body's datum, with the drive's voltage on its conductor.
    pub section: Section,
    /// Numbers wanted of the section.
    pub wanted: Vec<Wanted>,
    /// Judged field of each wanted number; `None` for the gap.
    pub quantities: Vec<Option<Quantity>>,
    /// Ways on which the gap before the screen edge is nearest to breakdown; empty if no gap lies in the field.
    pub gap: Vec<GapPlace>,
    /// Both ends of the interface on the cable, as far as its field is judged, m.
    pub interface: [Point; 2],
    /// Whether the edge of the screen lies in the field.
    pub is_edge_in_field: bool,
    /// Names of the regions with a place to write each.
    pub labels: Vec<(String, Point)>,
}

/// Draws an end.
///
/// # Errors
/// [`NotDrawn::Refused`] with the reason, if the dimensions do not make a section.
pub fn draw(end: &End<'_>) -> Result<Drawn, NotDrawn> {
    let plan = Measures::new(end).map_err(NotDrawn::Refused)?;
    let mut sheet = Sheet::default();
    plan.draw(end, &mut sheet);
    let outline = sheet.outline;
    let flaws = check(&outline);
    if let Some(flaw) = flaws.first() {
        let flaw = flaw.to_string();
        return Err(NotDrawn::Refused(SectionShape::NoSection { flaw }.into()));
    }
    let present = |tag: &str| outline.curves.iter().any(|curve| curve.tag == tag);
    let at = |tags: &[&str], volts: f64| -> Vec<(String, f64)> {
        let tags = tags.iter().filter(|tag| present(tag));
        tags.map(|tag| ((*tag).to_owned(), volts)).collect()
    };
    let volts = end.drive.voltage.v();
    let potentials = [at(&AT_CONDUCTOR, volts), at(&AT_EARTH, 0.0)].concat();
    let (wanted, quantities, gap) = plan.wanted(end, &outline);
    let section = Section {
        outline,
        materials: sheet.materials,
        potentials,
        floating: Vec::new(),
        regime: end
            .drive
            .frequency_hz
            .map_or(Regime::Capacitive, |hz| Regime::Complex {
                frequency_hz: hz,
            }),
        leave_out: plan.cusps(),
    };
    Ok(Drawn {
        section,
        wanted,
        quantities,
        gap,
        interface: [plan.interface_start(), plan.judged_end()],
        is_edge_in_field: plan.edge.is_some(),
        labels: sheet.labels,
    })
}

/// Dimensions measured before the drawing begins, m.
struct Measures {
    /// Radius over the insulation.
    on: f64,
    /// Radius on which the body sits.
    under_body: f64,
    conductor: f64,
    start: f64,
    under: f64,
    end: f64,
    electrode: Vec<Piece>,
    deflector: Vec<Piece>,
    outside: Vec<Piece>,
    /// Edge of the screen, if it lies in the field.
    edge: Option<Edge>,
}

/// Step at the edge of the screen.
struct Edge {
    /// Beginning of the gap, on the insulation; `None` if the rubber follows the step.
    tip: Option<Point>,
    /// Point at which the edge leaves the insulation.
    foot: Point,
    face: [Point; 2],
    /// Point at which the edge reaches the top of the screen.
    top: Point,
    /// Point at which the far side of the gap touches the edge.
    touch: Point,
    radius: f64,
}

impl Measures {
    fn new(end: &End<'_>) -> Result<Measures, Said> {
        let (cable, state, profile) = (&end.cable, &end.state, end.profile);
        let on = cable.insulation_radius_m;
        let wall = on - cable.conductor_radius_m;
        if wall <= 0.0 {
            return Err(SectionShape::ScreenNotInside {
                screen_mm: 2e3 * cable.conductor_radius_m,
                insulation_mm: 2e3 * on,
            }
            .into());
        }
        let top = on + cable.screen_thickness_m;
        let under_body = end.sleeve.map_or(on, |sleeve| sleeve.outside_radius_m);
        if let Some(sleeve) = end.sleeve.filter(|_| under_body < top + 0.2e-3) {
            return Err(SectionShape::NoRoomOverScreen {
                between: sleeve.between,
                outside_mm: 2e3 * under_body,
                screen_mm: 2e3 * top,
            }
            .into());
        }
        let heel_of = |on: f64| -> Result<(Vec<Piece>, f64), Said> {
            let pieces = profile.deflector(on)?;
            let heel = pieces
                .first()
                .map_or(state.screen_edge_m, |piece| piece.from.z);
            Ok((pieces, heel))
        };
        let (mut deflector, mut heel) = heel_of(under_body)?;
        let is_exposed = state.screen_edge_m <= heel + profile.uncertainty_m;
        if is_exposed && end.sleeve.is_none() {
            // The screen lies under the heel and lifts it by its thickness.
            (deflector, heel) = heel_of(top)?;
        }
        let electrode = profile.electrode(under_body)?;
        let outside = profile.outside(under_body)?;
        let tip = electrode.first().map_or(0.0, |piece| piece.from.z);
        let least_start = if end.is_junction {
            JUNCTION_RADII * profile.outside_radius_m()
        } else {
            0.0
        };
        let start = (tip - INWARD_RADII * profile.outside_radius_m()).max(least_start);
        let edge = (is_exposed || end.sleeve.is_some())
            .then(|| Edge::new(end, heel, end.sleeve.is_none()));
        let last = heel.max(edge.as_ref().map_or(heel, |edge| edge.top.z));
        let plan = Measures {
            on,
            under_body,
            conductor: cable.conductor_radius_m,
            start,
            under: state
                .insulation_end_m
                .max(tip - UNDER_WALLS * wall)
                .max(start),
            end: last + BEYOND_WALLS * wall,
            electrode,
            deflector,
            outside,
            edge,
        };
        plan.cut(tip, heel)
    }

    /// Cuts the body off at the end of the section, or says which dimensions do not fit.
    fn cut(mut self, tip: f64, heel: f64) -> Result<Measures, Said> {
        let first = self
            .edge
            .as_ref()
            .map_or(heel, |edge| edge.tip.unwrap_or(edge.foot).z - STAND_OFF);
        if self.start > tip - 2e-3 {
            let electrode_mm = tip * 1e3;
            return Err(SectionShape::NearJunction { electrode_mm }.into());
        }
        if self.under > tip - 1e-3 {
            return Err(SectionShape::InsulationShort {
                insulation_mm: self.under * 1e3,
                electrode_mm: tip * 1e3,
            }
            .into());
        }
        if first < tip + 1e-3 {
            return Err(SectionShape::ScreenAtElectrode {
                first_mm: first * 1e3,
                electrode_mm: tip * 1e3,
            }
            .into());
        }
        let end_of = |pieces: &[Piece]| pieces.last().map_or(self.end, |piece| piece.to.z);
        let far = end_of(&self.deflector).min(end_of(&self.outside));
        if far < heel.max(first) + (self.on - self.conductor) {
            return Err(SectionShape::BodyShort { end_mm: far * 1e3 }.into());
        }
        self.end = self.end.min(far - 1e-6);
        self.electrode = cut_at(&self.electrode, self.start, Contour::Electrode)?;
        if !self.deflector.is_empty() {
            self.deflector = cut_at(&self.deflector, self.end, Contour::Deflector)?;
        }
        self.outside = cut_at(&self.outside, self.end, Contour::Outside)?;
        self.outside = reversed(&cut_at(
            &reversed(&self.outside),
            self.start,
            Contour::Outside,
        )?);
        Ok(self)
    }

    fn electrode_foot(&self) -> Point {
        self.electrode[0].from
    }

    /// End of the body's interface: the heel of the deflector, else the end of the section.
    fn heel(&self) -> Point {
        self.deflector
            .first()
            .map_or(Point::new(self.under_body, self.end), |piece| piece.from)
    }

    fn interface_start(&self) -> Point {
        Point::new(self.on, self.electrode_foot().z)
    }

    /// End of the judged field along the interface: the stand-off before the edge, else the heel.
    fn judged_end(&self) -> Point {
        self.edge.as_ref().map_or(self.heel(), |edge| {
            Point::new(self.on, edge.face[0].z - STAND_OFF)
        })
    }

    /// The same on the outside of a layer: the heel, else as far as on the cable.
    fn judged_end_outside(&self) -> Point {
        if self.deflector.is_empty() {
            Point::new(self.under_body, self.judged_end().z)
        } else {
            self.heel()
        }
    }

    /// End of the interface on the cable: the edge of the screen, else the heel.
    fn interface_end(&self) -> Point {
        self.edge.as_ref().map_or(self.heel(), |edge| edge.foot)
    }

    fn cusps(&self) -> Vec<Disc> {
        let of = |piece: &Piece, share: f64| {
            let radius = match piece.shape {
                Shape::Arc { center } => center.distance(piece.from),
                Shape::Line => 0.0,
            };
            Disc {
                at: piece.from,
                radius: share * radius,
            }
        };
        let mut cusps = vec![of(&self.electrode[0], CUSP_SHARE)];
        let is_on_screen = self.edge.is_some() && self.on == self.under_body;
        if let (false, Some(heel)) = (is_on_screen, self.deflector.first()) {
            // Where the heel lies on the screen, the conductor goes on smoothly and there is no cusp.
            cusps.push(of(heel, HEEL_SHARE));
        }
        if let Some(edge) = &self.edge {
            cusps.push(Disc {
                at: edge.foot,
                radius: CUSP_SHARE * edge.radius,
            });
        }
        cusps.retain(|disc| disc.radius > 0.0);
        // The field at a sharp edge has no bound: the disc leaves it out and makes the mesh fine there.
        let sharp = self.edge.as_ref().filter(|edge| edge.radius <= 0.0);
        cusps.extend(sharp.iter().flat_map(|edge| {
            [edge.foot, edge.top].map(|at| Disc {
                at,
                radius: SHARP_DISC,
            })
        }));
        cusps
    }
}

impl Edge {
    fn new(end: &End<'_>, heel: f64, is_under_heel: bool) -> Edge {
        let (cable, state) = (&end.cable, &end.state);
        let on = cable.insulation_radius_m;
        let top = on + cable.screen_thickness_m;
        let radius = state
            .edge_radius_m
            .min(EDGE_SHARE_GREATEST * cable.screen_thickness_m);
        let z = if is_under_heel {
            let exposed = (EXPOSED_RADII_LEAST * radius).max(EXPOSED_LEAST);
            state.screen_edge_m.min(heel - exposed)
        } else {
            state.screen_edge_m
        };
        let bridging = end.profile.step.bridging.m();
        let tip = (bridging > 0.0).then(|| Point::new(on, z - bridging));
        let center = Point::new(top - radius, z + radius);
        let top_point = Point::new(top, z + radius);
        Edge {
            tip,
            foot: Point::new(on, z + radius),
            face: [Point::new(on + radius, z), Point::new(top - radius, z)],
            top: top_point,
            touch: tip.map_or(top_point, |tip| touched(tip, center, radius)),
            radius,
        }
    }

    fn foot_center(&self) -> Point {
        Point::new(self.foot.r + self.radius, self.foot.z)
    }

    fn top_center(&self) -> Point {
        Point::new(self.top.r - self.radius, self.top.z)
    }
}

/// Point at which a line from a place outside a circle touches it, on the side away from the axis.
fn touched(from: Point, center: Point, radius: f64) -> Point {
    let (r, z) = (center.r - from.r, center.z - from.z);
    let distance = r.hypot(z);
    let length = (distance * distance - radius * radius).max(0.0).sqrt();
    let (cosine, sine) = (length / distance, radius / distance);
    // Turned from the way to the centre by the angle whose sine is radius over distance, outward.
    let way = [
        (r * cosine + z * sine) / distance,
        (z * cosine - r * sine) / distance,
    ];
    Point::new(from.r + length * way[0], from.z + length * way[1])
}

/// Outline during drawing.
#[derive(Default)]
pub(super) struct Sheet {
    pub outline: Outline,
    pub materials: Vec<Material>,
    pub labels: Vec<(String, Point)>,
}

impl Sheet {
    fn point(&mut self, at: Point) -> usize {
        let same = |point: &Point| point.distance(at) < 1e-12;
        if let Some(index) = self.outline.points.iter().position(same) {
            return index;
        }
        self.outline.points.push(at);
        self.outline.points.len() - 1
    }

    /// Side along a curve; draws the curve unless it stands already.
    fn side(&mut self, piece: &Piece, tag: &str) -> Side {
        let (from, to) = (self.point(piece.from), self.point(piece.to));
        let same = |curve: &Curve| {
            (curve.from, curve.to) == (from, to) || (curve.to, curve.from) == (from, to)
        };
        if let Some(curve_index) = self.outline.curves.iter().position(same) {
            return Side {
                curve_index,
                is_reversed: self.outline.curves[curve_index].from != from,
            };
        }
        self.outline.curves.push(Curve {
            from,
            to,
            shape: piece.shape,
            tag: tag.to_owned(),
        });
        Side {
            curve_index: self.outline.curves.len() - 1,
            is_reversed: false,
        }
    }

    pub(super) fn region(
        &mut self,
        name: &str,
        permittivity: f64,
        label: Point,
        loop_: &[(Piece, &str)],
    ) {
        let material = (permittivity, Conductivity::Constant(0.0));
        self.conducting(name, material, label, loop_);
    }

    fn conducting(
        &mut self,
        name: &str,
        (relative_permittivity, conductivity): (f64, Conductivity),
        label: Point,
        loop_: &[(Piece, &str)],
    ) {
        let boundary = loop_
            .iter()
            .map(|(piece, tag)| self.side(piece, tag))
            .collect();
        self.outline.regions.push(Region {
            name: name.to_owned(),
            boundary,
        });
        self.materials.push(Material {
            relative_permittivity,
            conductivity,
        });
        self.labels.push((name.to_owned(), label));
    }
}

/// Lines through places, each with its tag.
pub(super) fn through<'t>(places: &[Point], tags: &[&'t str]) -> Vec<(Piece, &'t str)> {
    places
        .windows(2)
        .zip(tags)
        .map(|(pair, tag)| (Piece::line(pair[0], pair[1]), *tag))
        .collect()
}

impl Measures {
    fn draw(&self, end: &End<'_>, sheet: &mut Sheet) {
        self.draw_insulation(end, sheet);
        if let Some(sleeve) = end.sleeve {
            self.draw_sleeve(&sleeve, sheet);
        }
        self.draw_gap(end, sheet);
        self.draw_body(end, sheet);
    }

    /// The interface on the cable, from its outer end inward.
    fn interface(&self) -> Vec<(Piece, &'static str)> {
        let (outer, inner) = (self.interface_end(), self.interface_start());
        match self.edge.as_ref().and_then(|edge| edge.tip) {
            Some(tip) => through(&[outer, tip, inner], &[ON_CABLE, "interface"]),
            None => through(&[outer, inner], &["interface"]),
        }
    }

    fn draw_insulation(&self, end: &End<'_>, sheet: &mut Sheet) {
        let (on, inner) = (self.on, self.conductor);
        let outer_end = Point::new(on, self.end);
        let mut round = through(
            &[
                Point::new(inner, self.under),
                Point::new(inner, self.end),
                outer_end,
                self.interface_end(),
            ],
            &["conductor", "interior", "screen"],
        );
        round.extend(self.interface());
        // Without an adapter the electrode lies on the insulation from its foot inward.
        let tag = if end.sleeve.is_some() {
            "interface"
        } else {
            "electrode_bore"
        };
        round.extend(through(
            &[
                self.interface_start(),
                Point::new(on, self.under),
                Point::new(inner, self.under),
            ],
            &[tag, "electrode_bore"],
        ));
        let label = Point::new((on + inner) / 2.0, (self.under + self.end) / 2.0);
        sheet.region(
            "insulation of the cable",
            end.cable.relative_permittivity,
            label,
            &round,
        );
    }

    /// Edge of the screen, from its foot up to the point where the gap's far side touches it; without arcs if it is sharp.
    fn edge_up(&self, edge: &Edge) -> Vec<(Piece, &'static str)> {
        let mut up = vec![Piece::line(edge.face[0], edge.face[1])];
        if edge.radius > 0.0 {
            up.insert(0, Piece::arc(edge.foot, edge.face[0], edge.foot_center()));
            up.push(Piece::arc(edge.face[1], edge.touch, edge.top_center()));
        }
        up.into_iter().map(|piece| (piece, SCREEN_EDGE)).collect()
    }

    fn edge_over(&self, edge: &Edge) -> Vec<(Piece, &'static str)> {
        if edge.tip.is_none() || edge.radius <= 0.0 {
            return Vec::new();
        }
        let over = Piece::arc(edge.touch, edge.top, edge.top_center());
        vec![(over, SCREEN_EDGE)]
    }

    fn draw_gap(&self, end: &End<'_>, sheet: &mut Sheet) {
        let Some(edge) = &self.edge else { return };
        let Some(tip) = edge.tip else { return };
        let mut round = vec![(Piece::line(tip, edge.foot), ON_CABLE)];
        round.extend(self.edge_up(edge));
        round.push((Piece::line(edge.touch, tip), ON_RUBBER));
        let permittivity = match &end.profile.step.filler {
            Some(filler) if !end.state.is_empty => filler.relative_permittivity,
            _ => 1.0,
        };
        let label = Point::new(
            edge.face[0].r,
            edge.face[0].z - 0.3 * (edge.face[0].z - tip.z),
        );
        sheet.region(GAP, permittivity, label, &round);
    }

    /// Shape of rubber over the edge: from the place before the edge on the interface, over the edge, to the top of the screen.
    fn over_edge(&self, edge: &Edge) -> Vec<(Piece, &'static str)> {
        let mut over = match edge.tip {
            Some(tip) => vec![(Piece::line(tip, edge.touch), ON_RUBBER)],
            None => self.edge_up(edge),
        };
        over.extend(self.edge_over(edge));
        over
    }

    fn interface_before_edge(&self) -> (Piece, &'static str) {
        let last = self
            .edge
            .as_ref()
            .and_then(|edge| edge.tip)
            .unwrap_or_else(|| self.interface_end());
        (Piece::line(self.interface_start(), last), "interface")
    }

    fn draw_sleeve(&self, sleeve: &Sleeve, sheet: &mut Sheet) {
        let Some(edge) = &self.edge else { return };
        let out = self.under_body;
        let mut round = vec![
            (
                Piece::line(Point::new(self.on, self.under), self.interface_start()),
                "interface",
            ),
            self.interface_before_edge(),
        ];
        round.extend(self.over_edge(edge));
        let corner = Point::new(out, self.end);
        let over_top = [edge.top, Point::new(edge.top.r, self.end), corner];
        round.extend(through(&over_top, &["screen", "interior"]));
        if !self.deflector.is_empty() {
            round.push((Piece::line(corner, self.heel()), "deflector"));
        }
        round.extend(through(
            &[
                self.heel(),
                self.electrode_foot(),
                Point::new(out, self.under),
                Point::new(self.on, self.under),
            ],
            &["interface", "electrode_bore", "electrode_bore"],
        ));
        let label = Point::new((self.on + out) / 2.0, self.electrode_foot().z);
        let material = (sleeve.relative_permittivity, sleeve.conductivity);
        sheet.conducting(sleeve.name(), material, label, &round);
    }

    fn draw_body(&self, end: &End<'_>, sheet: &mut Sheet) {
        let mut round: Vec<(Piece, &'static str)> = Vec::new();
        for piece in &self.electrode {
            let tag = if piece.is_arc() {
                "electrode_end"
            } else {
                "electrode"
            };
            round.push((*piece, tag));
        }
        let last = self.electrode[self.electrode.len() - 1].to;
        round.push((Piece::line(last, self.outside[0].from), "interior"));
        round.extend(self.outside.iter().map(|piece| (*piece, "outside")));
        let outer = self.outside[self.outside.len() - 1].to;
        let back = reversed(&self.deflector);
        let next = back.first().map_or(self.heel(), |piece| piece.from);
        round.push((Piece::line(outer, next), "interior"));
        let n = back.len();
        for (index, piece) in back.iter().enumerate() {
            let tag = match (piece.is_arc(), index + 1 == n) {
                (true, true) => "deflector_heel",
                (true, false) => "deflector_tip",
                (false, _) => "deflector",
            };
            round.push((*piece, tag));
        }
        match &self.edge {
            Some(edge) if end.sleeve.is_none() => {
                let mut down = vec![(Piece::line(self.heel(), edge.top), "screen")];
                let over: Vec<(Piece, &str)> = self.over_edge(edge);
                let pieces: Vec<Piece> = over.iter().map(|(piece, _)| *piece).collect();
                let tags = over.iter().rev().map(|(_, tag)| *tag);
                down.extend(reversed(&pieces).into_iter().zip(tags));
                let (along, tag) = self.interface_before_edge();
                down.push((reversed(&[along])[0], tag));
                round.extend(down);
            }
            _ => round.push((Piece::line(self.heel(), self.electrode_foot()), "interface")),
        }
        let r = (self.under_body + self.outside[0].from.r) / 2.0;
        let z = (self.electrode_foot().z + self.heel().z) / 2.0;
        sheet.region(
            "insulation of the body",
            end.profile.relative_permittivity,
            Point::new(r, z),
            &round,
        );
    }

    fn wanted(
        &self,
        end: &End<'_>,
        outline: &Outline,
    ) -> (Vec<Wanted>, Vec<Option<Quantity>>, Vec<GapPlace>) {
        let mut asked = Asked::default();
        let start = self.interface_start();
        let from = Point::new(self.on, start.z + 1e-5);
        asked.add(
            Quantity::Interface,
            Wanted::PeakTangentialOnLine {
                from,
                to: self.judged_end(),
            },
        );
        if end.sleeve.is_some() {
            let foot = self.electrode_foot();
            asked.add(
                Quantity::Interface,
                Wanted::PeakTangentialOnLine {
                    from: Point::new(foot.r, foot.z + 1e-5),
                    to: self.judged_end_outside(),
                },
            );
        }
        for (quantity, tag) in [
            (Quantity::ElectrodeEnd, "electrode_end"),
            (Quantity::DeflectorTip, "deflector_tip"),
            (Quantity::DeflectorHeel, "deflector_heel"),
        ] {
            if outline.curves.iter().any(|curve| curve.tag == tag) {
                let tag = tag.to_owned();
                asked.add(quantity, Wanted::PeakOnCurve { tag });
            }
        }
        if let Some(edge) = &self.edge {
            let at = Point::new(self.on, edge.face[0].z - STAND_OFF);
            asked.add(Quantity::ScreenEdge, Wanted::AxialFieldAt { at });
            asked.breakdown(outline, GAP, &ACROSS_GAP);
        }
        (asked.wanted, asked.quantities, asked.gap)
    }
}

/// List of wanted numbers as it grows.
#[derive(Default)]
pub(super) struct Asked {
    pub wanted: Vec<Wanted>,
    pub quantities: Vec<Option<Quantity>>,
    pub gap: Vec<GapPlace>,
}

impl Asked {
    pub fn add(&mut self, quantity: Quantity, wanted: Wanted) {
        self.wanted.push(wanted);
        self.quantities.push(Some(quantity));
    }

    /// Adds the way in a region of gas on which it is nearest to breakdown, by both curves.
    ///
    /// Ways run from every place on the curves of a group's first tags to the nearest place on the curves of its second tags.
    pub fn breakdown(&mut self, outline: &Outline, region: &str, ways: &[[&[&str]; 2]]) {
        let mut regions = outline.regions.iter();
        let Some(region_index) = regions.position(|drawn| drawn.name == region) else {
            return;
        };
        let names = |tags: &&[&str]| tags.iter().map(|tag| (*tag).to_owned()).collect();
        for curve in [Breakdown::Townsend, Breakdown::LowerOfBoth] {
            self.gap.push(GapPlace {
                wanted_index: self.wanted.len(),
                curve,
            });
            self.wanted.push(Wanted::BreakdownShare {
                region_index,
                ways: ways
                    .iter()
                    .map(|[from, to]| [names(from), names(to)])
                    .collect(),
                curve,
                pressure_pa: GAP_PRESSURE_PA,
            });
            self.quantities.push(None);
        }
    }
}
