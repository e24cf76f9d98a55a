//! Taper: the tapered plug between a bus and the body of a leg, as a section with its film and the numbers wanted of it.
//!
//! Why its own room: its axis is the plug's, not the cable's, and the thin judged layer is a film along a cone.
//!
//! ```text
//!   r
//!   |  outside, at earth
//!   |  ............................................................
//!   |  deflector   )       insulation of the body    ( electrode
//!   |  ============)                                 (=============
//!   |  +~~~~~~~~~~~~~~~~~~~~~~~~~ film ~~~~~~~~~~~~~~~~~~~~~~+
//!   |  | collar             plug                             | small end
//!   +--+-----------------------------------------------------+------ z, from the plug's large end
//!     stud
//! ```
//!
//! Assumes: plug and body are round, concentric and fully seated; the film has one thickness square to the cone; the body keeps its stated shape, except that the line of its bore lies that thickness off the plug.
//!
//! Not here: how the rows are read (`socket`), which thickness is worst (`study`).
//!
//! Source: `docs/theory/taper.md`.

use super::cone::Cone;
use super::draw::{Asked, Drawn, Sheet, through};
use super::path::{Piece, reversed};
use super::socket::{Socket, questions};
use super::{NotDrawn, Quantity, Unknown};
use crate::catalogue::{Body, FieldDuty, Taper};
use crate::said::{PlugShape, Said, SectionRow, SectionShape};
use jointwright_numerics::field::{Disc, Regime, Section, Wanted};
use jointwright_numerics::outline::{Outline, Point, Shape, check};

/// Thickness below which no film is drawn, m.
///
/// Air does not break down below about 330 V at any width (`numerics::gas::LEAST_V`): over ten micrometres that needs a field of 33 kV/mm, and a thicker film of the same fit is nearer to breakdown.
pub const FILM_LEAST_M: f64 = 10e-6;
/// Radius of the disc that peaks leave out round a cusp, as a share of the radius that makes the cusp.
const CUSP_SHARE: f64 = 0.1;
const HEEL_SHARE: f64 = 0.05;
/// Radius of the disc that peaks leave out round the collar's corner, m.
const COLLAR_DISC: f64 = 0.5e-3;
/// Least length of the bore that a conducting region covers, m.
const ON_BORE_LEAST: f64 = 1e-3;
/// Least length of the bore between deflector and electrode, m.
const BETWEEN_LEAST: f64 = 2e-3;
/// Distance from the point where a conductor leaves the interface to the beginning of the lines along it, m.
const OFF_FOOT: f64 = 1e-5;
/// Name of the film.
const FILM: &str = "film between plug and body";
const ON_PLUG: &str = "film_on_plug";
/// Tags of the line of the bore, on the other side of the film.
const BORE: [&str; 3] = ["interface", "deflector_bore", "electrode_bore"];
/// Curves between which the film is crossed.
const ACROSS_FILM: [[&[&str]; 2]; 2] = [[&[ON_PLUG], &BORE], [&BORE, &[ON_PLUG]]];

/// Tags of conductors at the conductor's potential.
const AT_CONDUCTOR: [&str; 5] = [
    "conductor",
    "front",
    "electrode_bore",
    "electrode",
    "electrode_end",
];
/// Tags of conductors at earth.
const AT_EARTH: [&str; 6] = [
    "collar",
    "deflector_bore",
    "deflector",
    "deflector_heel",
    "deflector_tip",
    "outside",
];

/// State of a plug that its fit leaves open.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TaperState {
    /// Thickness of the film between plug and body, square to the cone, m.
    pub film_thickness_m: f64,
    /// Whether the film has lost its filler.
    pub is_empty: bool,
}

/// Questions about the plug of a body that has a mating interface, if nothing is known of the plug.
pub fn taper_questions(body: &Body) -> Option<Unknown> {
    let is_open = body.interface.is_some() && body.taper.is_none();
    let part = body.head.id.clone();
    is_open.then(|| Unknown::new(SectionRow::PlugNotKnown { part }, questions(&body.head.id)))
}

/// Draws the plug of a leg with the body around it; positions run from the plug's large end.
///
/// # Errors
/// [`NotDrawn::Unknown`] with its questions, if a region or a radius is not stated; [`NotDrawn::Refused`] with the reason, if the dimensions do not make a section.
pub fn draw_taper(taper: &Taper, state: &TaperState) -> Result<Drawn, NotDrawn> {
    let cone = Cone::of(taper).map_err(|why| NotDrawn::Refused(why.into()))?;
    let socket = Socket::read(taper, &cone)?;
    let plan = Measures::new(taper, state, cone, &socket).map_err(NotDrawn::Refused)?;
    let mut sheet = Sheet::default();
    plan.draw(taper, state, &socket, &mut sheet);
    let outline = sheet.outline;
    if let Some(flaw) = check(&outline).first() {
        let flaw = flaw.to_string();
        return Err(NotDrawn::Refused(SectionShape::NoSection { flaw }.into()));
    }
    let present = |tag: &str| outline.curves.iter().any(|curve| curve.tag == tag);
    let at = |tags: &[&str], volts: f64| -> Vec<(String, f64)> {
        let tags = tags.iter().filter(|tag| present(tag));
        tags.map(|tag| ((*tag).to_owned(), volts)).collect()
    };
    let potentials = [at(&AT_CONDUCTOR, 1.0), at(&AT_EARTH, 0.0)].concat();
    let asked = plan.wanted(&outline);
    Ok(Drawn {
        section: Section {
            outline,
            materials: sheet.materials,
            potentials,
            floating: Vec::new(),
            regime: Regime::Capacitive,
            leave_out: plan.cusps(),
        },
        wanted: asked.wanted,
        quantities: asked.quantities,
        gap: asked.gap,
        interface: plan.on_plug(),
        is_edge_in_field: true,
        labels: sheet.labels,
    })
}

/// Dimensions measured before the drawing begins, m.
struct Measures {
    stud: f64,
    start: f64,
    /// The plug's cone.
    cone: Cone,
    /// The line of the body's bore.
    bore: Cone,
    /// Thickness of the film; zero if none is drawn.
    film: f64,
    /// Outline from the point where it leaves the bore; the same for the next.
    deflector: Vec<Piece>,
    electrode: Vec<Piece>,
    outside: Vec<Piece>,
}

impl Measures {
    fn new(
        taper: &Taper,
        state: &TaperState,
        cone: Cone,
        socket: &Socket,
    ) -> Result<Measures, Said> {
        let thickness = state.film_thickness_m;
        if !(thickness.is_finite() && thickness >= 0.0) {
            let thickness_mm = thickness * 1e3;
            return Err(PlugShape::FilmThickness { thickness_mm }.into());
        }
        let film = if thickness < FILM_LEAST_M {
            0.0
        } else {
            thickness
        };
        let bore = cone.lifted(film);
        let plan = Measures {
            stud: taper.stud_diameter.m() / 2.0,
            start: socket.start,
            cone,
            bore,
            film,
            deflector: off_the_bore(socket.deflector(&bore)?, FieldDuty::Deflector)?,
            electrode: off_the_bore(socket.electrode(&bore)?, FieldDuty::Electrode)?,
            outside: socket.outside()?,
        };
        plan.refuse_what_is_too_close(socket.top)?;
        Ok(plan)
    }

    fn refuse_what_is_too_close(&self, top: f64) -> Result<(), PlugShape> {
        let (heel, foot) = (self.heel().z, self.foot().z);
        let covered = [
            (heel, FieldDuty::Deflector),
            (self.cone.length - foot, FieldDuty::Electrode),
        ];
        for (length, duty) in covered {
            if length < ON_BORE_LEAST {
                return Err(PlugShape::LiesShort {
                    duty,
                    over_mm: length * 1e3,
                    least_mm: ON_BORE_LEAST * 1e3,
                });
            }
        }
        if foot < heel + BETWEEN_LEAST {
            return Err(PlugShape::LittleBetween {
                deflector_mm: heel * 1e3,
                electrode_mm: foot * 1e3,
                least_mm: BETWEEN_LEAST * 1e3,
            });
        }
        let last = self.electrode.iter().filter(|piece| piece.is_arc());
        let round_to = last.map(|piece| piece.to.z).fold(foot, f64::max);
        let wall = end_of(&self.outside).r - end_of(&self.electrode).r;
        if top < round_to + wall {
            return Err(PlugShape::BodyShort {
                end_mm: top * 1e3,
                wall_mm: wall * 1e3,
                electrode_mm: round_to * 1e3,
            });
        }
        Ok(())
    }

    /// Point at which the deflector leaves the bore.
    fn heel(&self) -> Point {
        self.deflector[0].from
    }

    /// Point at which the electrode leaves the bore.
    fn foot(&self) -> Point {
        self.electrode[0].from
    }

    /// Points on the plug at which the deflector and the electrode leave the bore.
    fn on_plug(&self) -> [Point; 2] {
        [self.heel(), self.foot()].map(|at| self.cone.moved(at, -self.film))
    }

    fn cusps(&self) -> Vec<Disc> {
        let of = |pieces: &[Piece], share: f64| Disc {
            at: pieces[0].from,
            radius: share * rounding(pieces),
        };
        let mut cusps = vec![
            of(&self.deflector, HEEL_SHARE),
            of(&self.electrode, CUSP_SHARE),
            Disc {
                at: self.cone.at(0.0),
                radius: COLLAR_DISC,
            },
        ];
        cusps.retain(|disc| disc.radius > 0.0);
        cusps
    }

    fn draw(&self, taper: &Taper, state: &TaperState, socket: &Socket, sheet: &mut Sheet) {
        self.draw_plug(taper.relative_permittivity, sheet);
        if self.film > 0.0 {
            let permittivity = match &taper.filler {
                Some(filler) if !state.is_empty => filler.relative_permittivity,
                _ => 1.0,
            };
            self.draw_film(permittivity, sheet);
        }
        self.draw_body(socket.relative_permittivity, sheet);
    }

    /// The bore from the plug's small end to its large end.
    fn bore_down(&self) -> Vec<(Piece, &'static str)> {
        through(
            &[
                self.bore.small_end(),
                self.foot(),
                self.heel(),
                self.bore.at(0.0),
            ],
            &["electrode_bore", "interface", "deflector_bore"],
        )
    }

    fn draw_plug(&self, permittivity: f64, sheet: &mut Sheet) {
        let (stud, end) = (self.stud, self.cone.small_end());
        let large = self.cone.at(0.0);
        let mut round = through(
            &[Point::new(stud, self.start), Point::new(stud, end.z), end],
            &["conductor", "front"],
        );
        if self.film > 0.0 {
            round.push((Piece::line(end, large), ON_PLUG));
        } else {
            round.extend(self.bore_down());
        }
        round.extend(through(
            &[
                large,
                Point::new(large.r, self.start),
                Point::new(stud, self.start),
            ],
            &["collar", "interior"],
        ));
        let middle = end.z / 2.0;
        let label = Point::new((stud + self.cone.radius(middle)) / 2.0, middle);
        sheet.region("plug", permittivity, label, &round);
    }

    fn draw_film(&self, permittivity: f64, sheet: &mut Sheet) {
        let (large, end) = (self.cone.at(0.0), self.cone.small_end());
        let mut round = through(&[large, end, self.bore.small_end()], &[ON_PLUG, "front"]);
        round.extend(self.bore_down());
        round.push((Piece::line(self.bore.at(0.0), large), "collar"));
        let middle = self.heel().towards(self.foot(), 0.5);
        let label = self.cone.moved(middle, -self.film / 2.0);
        sheet.region(FILM, permittivity, label, &round);
    }

    fn draw_body(&self, permittivity: f64, sheet: &mut Sheet) {
        let mut round = vec![(Piece::line(self.heel(), self.foot()), "interface")];
        round.extend(self.electrode.iter().map(|piece| {
            let is_end = piece.is_arc();
            (*piece, if is_end { "electrode_end" } else { "electrode" })
        }));
        let (inner, outer) = (end_of(&self.electrode), end_of(&self.outside));
        round.push((Piece::line(inner, outer), "interior"));
        let down = reversed(&self.outside);
        round.extend(down.iter().map(|piece| (*piece, "outside")));
        let back = reversed(&self.deflector);
        round.push((Piece::line(end_of(&down), back[0].from), "interior"));
        let n = back.len();
        for (index, piece) in back.iter().enumerate() {
            let tag = match (piece.is_arc(), index + 1 == n) {
                (true, true) => "deflector_heel",
                (true, false) => "deflector_tip",
                (false, _) => "deflector",
            };
            round.push((*piece, tag));
        }
        let middle = self.heel().towards(self.foot(), 0.5);
        let label = Point::new((middle.r + outer.r) / 2.0, middle.z);
        sheet.region("insulation of the body", permittivity, label, &round);
    }

    fn wanted(&self, outline: &Outline) -> Asked {
        let mut asked = Asked::default();
        let mut lines = vec![self.on_plug()];
        if self.film > 0.0 {
            lines.push([self.heel(), self.foot()]);
        }
        for [from, to] in lines {
            let share = OFF_FOOT / from.distance(to);
            let (from, to) = (from.towards(to, share), to.towards(from, share));
            asked.add(
                Quantity::Interface,
                Wanted::PeakTangentialOnLine { from, to },
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
        if self.film > 0.0 {
            asked.breakdown(outline, FILM, &ACROSS_FILM);
        }
        asked
    }
}

/// Radius with which a conductor leaves the bore, m; zero if it leaves along a line.
fn rounding(pieces: &[Piece]) -> f64 {
    match pieces[0].shape {
        Shape::Arc { center } => center.distance(pieces[0].from),
        Shape::Line => 0.0,
    }
}

/// Outline of a conducting region without the line along the bore.
fn off_the_bore(mut pieces: Vec<Piece>, duty: FieldDuty) -> Result<Vec<Piece>, PlugShape> {
    if pieces.len() < 2 || pieces[0].is_arc() {
        return Err(PlugShape::NothingOnBore { duty });
    }
    pieces.remove(0);
    Ok(pieces)
}

fn end_of(pieces: &[Piece]) -> Point {
    pieces[pieces.len() - 1].to
}
