//! Solver: the states of a leg one after another, each on the mesh of the last state if that is good enough.

use super::gap::Across;
use super::input::Input;
use crate::said::{Between, Said, StudySaid};
use crate::section::{CableShape, Drawn, Drive, End, NotDrawn, Quantity, Sleeve, State, draw};
use jointwright_numerics::field::{
    Answer, Conductivity, FieldError, Options, Prepared, Regime, Section, Solved, Unwatched,
    prepare, solve,
};
use std::collections::BTreeMap;
use std::sync::Arc;

/// Greatest ratio of a number's estimated error to the number.
const CLOSE: f64 = 1e-2;
/// Greatest number of unknowns of one solution, so that a hopeless section ends.
const N_UNKNOWNS_MOST: usize = 40_000;
/// The same for a conducting material, where each unknown is complex and the factors cost four times as much.
const N_UNKNOWNS_MOST_COMPLEX: usize = 16_000;

/// Greatest number of kept meshes.
const KEPT_MOST: usize = 12;
/// Greatest distance between states over which a mesh is carried, m; see [`Point::far_from_m`].
const CARRIED_MOST_M: f64 = 4.5e-3;
/// Weight of the edge's radius in that distance.
const EDGE_WEIGHT: f64 = 100.0;

/// Distance that an emptied gap counts for, m.
const EMPTIED_M: f64 = 1.0;

/// One state of a leg, m.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Point {
    /// Radius over the insulation.
    pub radius_m: f64,
    /// Edge of the insulation screen from the body's datum.
    pub screen_edge_m: f64,
    /// Radius of the screen's edge.
    pub edge_radius_m: f64,
    /// Whether the gap before the edge has lost its filler.
    pub is_empty: bool,
}

/// Judged field of one state, per volt.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Value {
    /// Field, 1/m.
    pub per_volt_per_m: f64,
    /// Estimated error of the field, 1/m.
    pub error_per_m: f64,
    /// Place along the axis, m from the body's datum; `None` if the field is not a peak.
    pub at_m: Option<(f64, f64)>,
    /// Whether the estimated error settled below the tolerance.
    pub is_settled: bool,
}

impl Value {
    /// The field with its error on top, 1/m.
    pub(super) fn upper(&self) -> f64 {
        self.per_volt_per_m + self.error_per_m
    }
}

/// Result of one state.
#[derive(Clone, Debug, Default)]
pub struct Outcome {
    /// Fields; a field that is not in the section is zero.
    pub values: BTreeMap<Quantity, Value>,
    /// Ways on which the gap before the screen edge is nearest to discharge.
    pub gap: Vec<Across>,
    /// Whether the edge of the screen lies in the field.
    pub is_edge_in_field: bool,
}

/// Solves states of one leg.
pub struct Solver<'i> {
    input: &'i Input,
    drive: Drive,
    /// Farthest end of the insulation from the body's datum, m.
    insulation_end_m: f64,
    /// Meshes of states that were solved, the oldest first.
    kept: Meshes,
    /// Number of states that were solved.
    pub n_solved: usize,
}

impl<'i> Solver<'i> {
    /// Makes a solver for one leg with this voltage on its conductor.
    pub fn new(input: &'i Input, drive: Drive) -> Solver<'i> {
        Solver {
            input,
            drive,
            insulation_end_m: input.insulation_end_m,
            kept: Meshes::default(),
            n_solved: 0,
        }
    }

    /// Makes a solver that begins with the meshes of another one of the same leg.
    pub(super) fn with(input: &'i Input, drive: Drive, kept: Meshes) -> Solver<'i> {
        Solver {
            kept,
            ..Solver::new(input, drive)
        }
    }

    /// Meshes of the states that were solved.
    pub(super) fn meshes(self) -> Meshes {
        self.kept
    }

    /// Makes a solver for the states that the instructions allow.
    pub fn of_allowed(input: &'i Input, drive: Drive) -> Solver<'i> {
        Solver {
            insulation_end_m: input.planned_insulation_end_m,
            ..Solver::new(input, drive)
        }
    }

    /// Draws the section of a state.
    ///
    /// # Errors
    /// The reason why there is no section.
    pub fn drawn(&self, point: &Point) -> Result<Drawn, Said> {
        let input = self.input;
        let adapter = input.sleeve.map(|row| Sleeve {
            between: Between::Adapter,
            outside_radius_m: row.outside_on(point.radius_m),
            relative_permittivity: row.relative_permittivity,
            conductivity: Conductivity::Constant(0.0),
        });
        let layer = input.profile.grading.map(|layer| Sleeve {
            between: Between::SpreadsTheField,
            outside_radius_m: input.profile.grading_outside_m(point.radius_m),
            relative_permittivity: layer.relative_permittivity,
            conductivity: Conductivity::Constant(layer.conductivity_s_per_m),
        });
        let sleeve = adapter.or(layer);
        let end = End {
            profile: &input.profile,
            cable: CableShape {
                conductor_radius_m: point.radius_m - input.wall_m,
                insulation_radius_m: point.radius_m,
                screen_thickness_m: input.screen_thickness_m,
                relative_permittivity: input.relative_permittivity,
            },
            sleeve,
            is_junction: input.is_junction,
            drive: self.drive,
            state: State {
                screen_edge_m: point.screen_edge_m,
                insulation_end_m: self.insulation_end_m,
                edge_radius_m: point.edge_radius_m,
                is_empty: point.is_empty,
            },
        };
        draw(&end).map_err(|why| match why {
            NotDrawn::Unknown(unknown) => unknown.why,
            NotDrawn::Refused(why) => why,
        })
    }

    /// Solves a state.
    ///
    /// # Errors
    /// The reason why there is no result.
    pub fn outcome(&mut self, point: &Point) -> Result<Outcome, Said> {
        let drawn = self.drawn(point)?;
        let solved = self.solve(point, &drawn)?;
        Ok(outcome(&drawn, &solved.answers, self.drive.voltage.v()))
    }

    /// Solves a state from scratch and keeps its whole solution.
    ///
    /// # Errors
    /// The reason why there is no solution.
    pub fn solved(&self, point: &Point) -> Result<(Drawn, Solved), Said> {
        let drawn = self.drawn(point)?;
        let solved = solve(
            &drawn.section,
            &drawn.wanted,
            &options(&drawn.section),
            &mut Unwatched,
        )
        .map_err(|error| not_solved(&error))?;
        Ok((drawn, solved))
    }

    /// Solves a state on the mesh of the nearest state before, or on a new mesh that is kept.
    fn solve(&mut self, point: &Point, drawn: &Drawn) -> Result<Solved, Said> {
        self.n_solved += 1;
        let alike = (0..self.kept.0.len())
            .filter(|&index| self.kept.0[index].is_edge_in_field == drawn.is_edge_in_field);
        let far = |index: usize| self.kept.0[index].point.far_from_m(point);
        let nearest = alike.min_by(|&a, &b| far(a).total_cmp(&far(b)));
        let is_near = nearest.is_some_and(|index| far(index) <= CARRIED_MOST_M);
        if let (Some(index), true) = (nearest, is_near) {
            let kept = &mut self.kept.0[index];
            if let Some(solved) = carried(Arc::make_mut(&mut kept.prepared), drawn)? {
                kept.point = *point;
                return Ok(solved);
            }
        }
        let known = nearest.map(|index| self.kept.0[index].prepared.as_ref());
        let (prepared, solved) = meshed(known, drawn)?;
        if let (Some(index), true) = (nearest, is_near) {
            // The new mesh takes the place of the mesh that does not reach so far.
            self.kept.0.remove(index);
        }
        if self.kept.0.len() >= KEPT_MOST {
            self.kept.0.remove(0);
        }
        self.kept.0.push(Kept {
            point: *point,
            is_edge_in_field: drawn.is_edge_in_field,
            prepared: Arc::new(prepared),
        });
        Ok(solved)
    }
}

/// Solution on a mesh that is carried along; `None` if it does not reach so far.
///
/// # Errors
/// The reason why there is no solution.
pub(super) fn carried(prepared: &mut Prepared, drawn: &Drawn) -> Result<Option<Solved>, Said> {
    let solved = prepared.solve_carried_for(&drawn.section, &drawn.wanted, &mut Unwatched);
    solved.map_err(|error| not_solved(&error))
}

/// Solution on a new mesh, as fine as the mesh of a similar section if there is one.
///
/// # Errors
/// The reason why there is no solution.
pub(super) fn meshed(known: Option<&Prepared>, drawn: &Drawn) -> Result<(Prepared, Solved), Said> {
    let (section, wanted) = (&drawn.section, &drawn.wanted);
    let solved = match known {
        Some(known) => known.prepare_like(section, wanted, &mut Unwatched),
        None => prepare(section, wanted, &options(section), &mut Unwatched),
    };
    solved.map_err(|error| not_solved(&error))
}

/// Meshes of states that were solved, the oldest first; a copy shares each mesh until one of both carries it along.
#[derive(Clone, Default)]
pub(super) struct Meshes(Vec<Kept>);

impl std::fmt::Debug for Meshes {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{} meshes", self.0.len())
    }
}

/// Mesh of a state, ready for a state near it.
#[derive(Clone)]
struct Kept {
    point: Point,
    is_edge_in_field: bool,
    prepared: Arc<Prepared>,
}

impl Point {
    /// Distance that the nodes of a mesh must move from another state, m.
    ///
    /// The edge's radius counts more, because its triangles are smallest; an emptied gap counts as far.
    fn far_from_m(&self, other: &Point) -> f64 {
        let apart = |a: f64, b: f64| (a - b).abs();
        let emptied = if self.is_empty == other.is_empty {
            0.0
        } else {
            EMPTIED_M
        };
        emptied
            + apart(self.radius_m, other.radius_m)
            + apart(self.screen_edge_m, other.screen_edge_m)
            + EDGE_WEIGHT * apart(self.edge_radius_m, other.edge_radius_m)
    }
}

pub(super) fn options(section: &Section) -> Options {
    let is_complex = matches!(section.regime, Regime::Complex { .. });
    Options {
        tolerance: CLOSE,
        n_unknowns_most: if is_complex {
            N_UNKNOWNS_MOST_COMPLEX
        } else {
            N_UNKNOWNS_MOST
        },
        ..Options::default()
    }
}

/// Message for a field that was not solved.
pub(super) fn not_solved(error: &FieldError) -> Said {
    use std::error::Error;
    let mut text = error.to_string();
    let mut cause = error.source();
    while let Some(inner) = cause {
        text.push_str(": ");
        text.push_str(&inner.to_string());
        cause = inner.source();
    }
    StudySaid::NotSolved { why: text }.into()
}

/// Values of a solved section, per volt.
pub(super) fn outcome(drawn: &Drawn, answers: &[Answer], volts: f64) -> Outcome {
    let nothing = Value {
        per_volt_per_m: 0.0,
        error_per_m: 0.0,
        at_m: None,
        is_settled: true,
    };
    // Before an edge under the deflector the field is zero; any other field that is not in the section is not judged.
    let mut values = BTreeMap::from([(Quantity::ScreenEdge, nothing)]);
    for (answer, quantity) in answers.iter().zip(&drawn.quantities) {
        let Some(quantity) = quantity else { continue };
        let value = Value {
            per_volt_per_m: answer.value.abs() / volts,
            error_per_m: answer.error_estimate / volts,
            at_m: answer.at.map(|at| (at.r, at.z)),
            is_settled: answer.is_settled,
        };
        let greatest = values.entry(*quantity).or_insert(nothing);
        let is_settled = (value.is_settled || value.upper() < greatest.per_volt_per_m)
            && (greatest.is_settled || greatest.upper() < value.per_volt_per_m);
        if value.per_volt_per_m > greatest.per_volt_per_m {
            *greatest = value;
        }
        greatest.is_settled = is_settled;
    }
    let gap = drawn
        .gap
        .iter()
        .filter_map(|place| Across::of(place, answers, volts))
        .collect();
    Outcome {
        values,
        gap,
        is_edge_in_field: drawn.is_edge_in_field,
    }
}
