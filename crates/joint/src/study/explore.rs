//! Explore: the worst of each judged field over ranges of dimensions.
//!
//! A field is not monotone in every deviation, so four kinds of states are solved:
//! - each dimension by itself at both ends of its range;
//! - for each field, the corner to which those states point;
//! - states inside the ranges;
//! - radii of the edge about the radius at which the gap is nearest to discharge.
//!
//! The report names the worst state that was solved.

use super::gap::{Across, inception};
use super::input::DimensionRanges;
use super::solver::{Outcome, Point, Solver, Value};
use crate::said::{Said, StudySaid};
use crate::section::Quantity;
use jointwright_numerics::gas::Curve;
use std::collections::BTreeMap;

/// Inner states, as shares of the ranges of radius, screen edge and edge radius: fixed, well apart, none on a bound.
const INNER: [[f64; 3]; 3] = [[0.25, 0.75, 0.5], [0.75, 0.25, 0.75], [0.5, 0.6, 0.25]];
/// Share of the range of the edge's radius at which the search for the least inception voltage ends, and its greatest number of steps.
const CLOSED_SHARE: f64 = 0.125;
const STEPS_MOST: usize = 12;
/// A range shorter than this has one state, m.
const NARROW: f64 = 1e-6;

/// Worst value of one field.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Seen {
    /// Field.
    pub value: Value,
    /// State in which the worst value was found.
    pub point: Point,
}

/// Worst values of all fields over one set of ranges.
#[derive(Clone, Debug)]
pub struct Worst {
    /// Fields.
    pub seen: BTreeMap<Quantity, Seen>,
    /// Gap before the screen edge with its filler, in the state with the least inception voltage; `None` where the field has no such gap.
    pub gap_filled: Option<(Vec<Across>, Point)>,
    /// The same gap without filler.
    pub gap_empty: Option<(Vec<Across>, Point)>,
    /// Number of states that were solved.
    pub n_solved: usize,
}

impl Worst {
    /// Takes in the worst values over ranges that lie within this one's.
    pub(super) fn take_in(&mut self, inner: &Worst) {
        for (quantity, seen) in &inner.seen {
            let known = self.seen.entry(*quantity).or_insert(*seen);
            if seen.value.per_volt_per_m > known.value.per_volt_per_m {
                *known = *seen;
            }
        }
        let worse = |known: &mut Option<(Vec<Across>, Point)>,
                     other: &Option<(Vec<Across>, Point)>| {
            let onset = |gap: &Option<(Vec<Across>, Point)>| {
                let gap = gap
                    .as_ref()
                    .and_then(|(gap, _)| inception(gap, Curve::LowerOfBoth));
                gap.map_or(f64::INFINITY, |volts| volts.v())
            };
            if onset(other) < onset(known) {
                known.clone_from(other);
            }
        };
        worse(&mut self.gap_filled, &inner.gap_filled);
        worse(&mut self.gap_empty, &inner.gap_empty);
    }
}

/// Searches for the worst values.
///
/// # Errors
/// The first state that could not be drawn or solved, and the reason.
pub(super) fn explore(
    solver: &mut Solver<'_>,
    ranges: &DimensionRanges,
    filler: Filler,
) -> Result<Worst, Said> {
    let before = solver.n_solved;
    let mut search = Search {
        ranges,
        is_empty: filler == Filler::None,
        states: Vec::new(),
    };
    search.alone(solver)?;
    if search
        .states
        .iter()
        .any(|(_, outcome)| outcome.is_edge_in_field)
    {
        for corner in search.corners() {
            search.add(solver, corner)?;
        }
        for shares in INNER {
            search.add(solver, search.inside(shares))?;
        }
        let is_filled = filler != Filler::None;
        if is_filled {
            search.close_in(solver, false)?;
        }
        if filler == Filler::Passing {
            search.add_empty(solver)?;
        }
        if filler != Filler::Permanent {
            search.close_in(solver, true)?;
        }
    }
    Ok(search.worst(solver.n_solved - before))
}

/// Filler of the gap before the screen edge.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Filler {
    /// No filler.
    None,
    /// Filler that may be gone one day: the gap is computed empty as well.
    Passing,
    /// Filler that the row calls permanent there.
    Permanent,
}

struct Search<'s> {
    ranges: &'s DimensionRanges,
    /// Whether the gap is without filler from the beginning.
    is_empty: bool,
    states: Vec<(Point, Outcome)>,
}

impl Search<'_> {
    fn add(&mut self, solver: &mut Solver<'_>, point: Point) -> Result<(), Said> {
        if self.states.iter().any(|(known, _)| *known == point) {
            return Ok(());
        }
        let outcome = solver.outcome(&point).map_err(|why| at(&point, &why))?;
        // Where the edge lies under the deflector, neither its place nor its radius matters.
        self.states.push((point, outcome));
        Ok(())
    }

    fn inside(&self, shares: [f64; 3]) -> Point {
        let at = |range: (f64, f64), share: f64| range.0 + share * (range.1 - range.0);
        Point {
            radius_m: at(self.ranges.radius, shares[0]),
            screen_edge_m: at(self.ranges.screen_edge_m, shares[1]),
            edge_radius_m: at(self.ranges.edge_radius_m, shares[2]),
            is_empty: self.is_empty,
        }
    }

    /// The middle, and each dimension by itself at both ends of its range.
    fn alone(&mut self, solver: &mut Solver<'_>) -> Result<(), Said> {
        let middle = self.inside([0.5; 3]);
        self.add(solver, middle)?;
        let DimensionRanges {
            radius,
            screen_edge_m,
            edge_radius_m,
        } = *self.ranges;
        for bound in ends(radius) {
            let point = Point {
                radius_m: bound,
                ..middle
            };
            self.add(solver, point)?;
        }
        // The other dimensions matter only where the edge nearest the electrode is in the field.
        // The heel moves with the radius, so every radius is tried.
        let nearest = |radius_m: f64| Point {
            radius_m,
            screen_edge_m: screen_edge_m.0,
            ..middle
        };
        let mut exposed: Vec<Point> = Vec::new();
        for radius_m in [middle.radius_m, radius.0, radius.1] {
            let point = nearest(radius_m);
            let drawn = solver.drawn(&point).map_err(|why| at(&point, &why))?;
            if drawn.is_edge_in_field && !exposed.contains(&point) {
                exposed.push(point);
            }
        }
        let Some(nearest) = exposed.first().copied() else {
            return Ok(());
        };
        for point in exposed {
            self.add(solver, point)?;
        }
        for bound in ends(screen_edge_m) {
            let point = Point {
                screen_edge_m: bound,
                ..middle
            };
            self.add(solver, point)?;
        }
        for bound in ends(edge_radius_m) {
            let point = Point {
                edge_radius_m: bound,
                ..nearest
            };
            self.add(solver, point)?;
        }
        Ok(())
    }

    /// For each field, the corner to which the states solved so far point.
    fn corners(&self) -> Vec<Point> {
        let mut corners: Vec<Point> = Vec::new();
        // Nearness to discharge is one more quantity, after the fields.
        let quantities = Quantity::ALL.into_iter().map(Some);
        for quantity in quantities.chain(std::iter::once(None)) {
            let value = |outcome: &Outcome| match quantity {
                Some(quantity) => strength(outcome, quantity),
                None => 1.0 / onset(outcome),
            };
            let Some((worst, _)) = greatest(&self.states, value) else {
                continue;
            };
            let by = |pick: fn(&Point) -> f64| {
                // The end of this dimension with the greater field; the other dimensions stay as they were there.
                let of = |bound: f64| {
                    let states = self.states.iter().filter(|(p, _)| pick(p) == bound);
                    states.map(|(_, o)| value(o)).fold(0.0, f64::max)
                };
                let bounds: Vec<f64> = self.states.iter().map(|(p, _)| pick(p)).collect();
                let low = bounds.iter().copied().fold(f64::INFINITY, f64::min);
                let high = bounds.iter().copied().fold(f64::NEG_INFINITY, f64::max);
                if of(low) > of(high) { low } else { high }
            };
            let corner = Point {
                radius_m: by(|p| p.radius_m),
                screen_edge_m: by(|p| p.screen_edge_m),
                edge_radius_m: by(|p| p.edge_radius_m),
                is_empty: worst.is_empty,
            };
            if !corners.contains(&corner) {
                corners.push(corner);
            }
        }
        corners
    }

    /// Adds the worst states again, with the gap empty.
    fn add_empty(&mut self, solver: &mut Solver<'_>) -> Result<(), Said> {
        let mut points: Vec<Point> = Vec::new();
        for quantity in [Quantity::Interface, Quantity::ScreenEdge] {
            let value = |outcome: &Outcome| strength(outcome, quantity);
            points.extend(greatest(&self.states, value).map(|(point, _)| *point));
        }
        points.extend(self.least(false).map(|(point, _)| point));
        for point in points {
            let point = Point {
                is_empty: true,
                ..point
            };
            self.add(solver, point)?;
        }
        Ok(())
    }

    /// Least inception voltage so far, with the gap empty or filled.
    fn least(&self, is_empty: bool) -> Option<(Point, f64)> {
        let states = self
            .states
            .iter()
            .filter(|(point, outcome)| point.is_empty == is_empty && !outcome.gap.is_empty());
        states
            .map(|(point, outcome)| (*point, onset(outcome)))
            .min_by(|a, b| a.1.total_cmp(&b.1))
    }

    /// Narrows the radius of the edge at which the gap is nearest to discharge.
    ///
    /// The inception voltage has a minimum inside the range: a sharper edge has the stronger field, a rounder edge the wider gap under it.
    fn close_in(&mut self, solver: &mut Solver<'_>, is_empty: bool) -> Result<(), Said> {
        let (least, greatest) = self.ranges.edge_radius_m;
        let Some(mut best) = self.least(is_empty) else {
            return Ok(());
        };
        if greatest - least < NARROW {
            return Ok(());
        }
        let mut step = (greatest - least) / 2.0;
        for _ in 0..STEPS_MOST {
            let before = best.0;
            for radius in [before.edge_radius_m - step, before.edge_radius_m + step] {
                if radius < least - NARROW || radius > greatest + NARROW {
                    continue;
                }
                let point = Point {
                    edge_radius_m: radius.clamp(least, greatest),
                    ..before
                };
                self.add(solver, point)?;
            }
            best = self.least(is_empty).unwrap_or(best);
            let is_closed = step <= CLOSED_SHARE * (greatest - least);
            if is_closed && best.0 == before {
                break;
            }
            if best.0 == before {
                step /= 2.0;
            }
        }
        Ok(())
    }

    fn worst(self, n_solved: usize) -> Worst {
        let mut seen = BTreeMap::new();
        for quantity in Quantity::ALL {
            let value = |outcome: &Outcome| strength(outcome, quantity);
            if let Some((point, outcome)) = greatest(&self.states, value) {
                let Some(value) = outcome.values.get(&quantity) else {
                    continue;
                };
                let (mut value, point) = (*value, *point);
                // A state that is a little weaker but less certain may be the worst.
                value.is_settled = self
                    .states
                    .iter()
                    .filter_map(|(_, outcome)| outcome.values.get(&quantity))
                    .all(|other| other.is_settled || other.upper() < value.per_volt_per_m);
                seen.insert(quantity, Seen { value, point });
            }
        }
        let gap = |is_empty: bool| {
            let states = self
                .states
                .iter()
                .filter(|(point, outcome)| point.is_empty == is_empty && !outcome.gap.is_empty());
            states
                .min_by(|a, b| onset(&a.1).total_cmp(&onset(&b.1)))
                .map(|(point, outcome)| (outcome.gap.clone(), *point))
        };
        Worst {
            gap_filled: gap(false),
            gap_empty: gap(true),
            seen,
            n_solved,
        }
    }
}

/// Field of a state, per volt; negative if the field is not in the section.
fn strength(outcome: &Outcome, quantity: Quantity) -> f64 {
    outcome
        .values
        .get(&quantity)
        .map_or(-1.0, |value| value.per_volt_per_m)
}

fn onset(outcome: &Outcome) -> f64 {
    inception(&outcome.gap, Curve::LowerOfBoth).map_or(f64::INFINITY, |volts| volts.v())
}

/// The first state with the greatest value.
fn greatest(
    states: &[(Point, Outcome)],
    value: impl Fn(&Outcome) -> f64,
) -> Option<&(Point, Outcome)> {
    let mut best: Option<&(Point, Outcome)> = None;
    for state in states {
        if best.is_none_or(|(_, outcome)| value(&state.1) > value(outcome)) {
            best = Some(state);
        }
    }
    best
}

fn ends(range: (f64, f64)) -> Vec<f64> {
    if range.1 - range.0 < NARROW {
        Vec::new()
    } else {
        vec![range.0, range.1]
    }
}

fn at(point: &Point, why: &Said) -> Said {
    let at = StudySaid::WithState {
        insulation_mm: 2e3 * point.radius_m,
        edge_mm: 1e3 * point.screen_edge_m,
    };
    Said::of(at, why)
}
