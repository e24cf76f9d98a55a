//! The field along a straight line of a solved section, place by place.
//!
//! **What.** [`along`] samples the potential and the recovered slopes at equal steps from one place to another.
//!
//! **Why separate.** A diagram needs many places of one solution, a wanted number only the greatest value; this file refines and judges nothing.
//!
//! **Invariants.** The slopes are the same as for the wanted numbers: by region, never across an interface.
//! Every returned place lies in a triangle.
//!
//! **Not here.** The greatest value with its error estimate: `Wanted::PeakTangentialOnLine`.

use super::recovery::Slope;
use super::section::{Regime, Section};
use super::solution::{Neighbours, Solution, modulus};
use super::solved::Solved;
use crate::fem::triangle;
use crate::outline::Point;

/// A place may lie outside its nearest triangle by this share of its height: rounding on a curved rim, not a conductor.
const RIM_RATIO: f64 = 1e-3;

/// The field at one place of a line.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LineSample {
    /// Share of the line from its first place, 0 to 1.
    pub share: f64,
    /// The place, m.
    pub at: Point,
    /// E·t, V/m, t from the first place of the line to the last: the modulus in the complex regime, with its sign otherwise.
    pub tangential: f64,
    /// |E|, V/m; at a place between regions, the greatest value of their sides.
    pub magnitude: f64,
    /// Potential, real and imaginary part, V.
    pub potential: [f64; 2],
}

/// Samples the field of a solved section at `n` equal steps of the straight line from one place to another, both ends included.
///
/// E = −∇φ from the recovered slopes.
/// At a place between regions both sides share E·t, which is the mean of their values.
/// Places in no triangle, that is in a conductor or outside, are left out.
/// Discs that peaks leave out are included here: at a singular place a sample means little.
///
/// # Shapes
/// At most `n` samples, by rising share; `n` = 1 gives the first place alone, and a line without length has no samples.
///
/// # Assumes
/// `solved` is the result of solving this `section`.
///
/// # Accuracy
/// The accuracy of the section's wanted `PeakTangentialOnLine` on the same line; no separate error is estimated.
///
/// ```
/// use jointwright_numerics::{case, field::{Options, Unwatched, along, solve}, outline::Point};
/// let text = r#"{"case": "coaxial", "about": "invented", "points": [[1, 0], [2, 0], [2, 5], [1, 5]],
///   "curves": [{"from": 0, "to": 1, "tag": "interior"}, {"from": 1, "to": 2, "tag": "outer"},
///              {"from": 2, "to": 3, "tag": "interior"}, {"from": 3, "to": 0, "tag": "inner"}],
///   "regions": [{"name": "wall", "material": "pe", "boundary": [1, 2, 3, 4]}],
///   "materials": {"pe": {"eps_r": 2.3}}, "potentials_kv": {"inner": 10, "outer": 0},
///   "wanted": [{"name": "E", "kind": "peak-in-region", "region": "wall"}]}"#;
/// let case = case::read(text).unwrap();
/// let wanted: Vec<_> = case.wanted.iter().map(|named| named.wanted.clone()).collect();
/// let solved = solve(&case.section, &wanted, &Options::default(), &mut Unwatched).unwrap();
/// // From the conductor, at 1 mm, outward: E·t is V / (r ln 2), and half of the line lies outside of the screen.
/// let places = along(&case.section, &solved, Point::new(1e-3, 2e-3), Point::new(3e-3, 2e-3), 21);
/// assert_eq!(places.len(), 11);
/// assert!((places[5].tangential - 10e3 / (1.5e-3 * 2.0_f64.ln())).abs() < 1e4);
/// ```
pub fn along(
    section: &Section,
    solved: &Solved,
    from: Point,
    to: Point,
    n: usize,
) -> Vec<LineSample> {
    let length = from.distance(to);
    if !(length > 0.0 && length.is_finite()) {
        return Vec::new();
    }
    let way = [(to.r - from.r) / length, (to.z - from.z) / length];
    let is_complex = matches!(section.regime, Regime::Complex { .. });
    let neighbours = Neighbours::new(&solved.mesh);
    let n_regions = section.materials.len();
    let mut solution = Solution::new(&solved.mesh, &neighbours, &solved.potential, n_regions);
    let n_steps = n.saturating_sub(1).max(1) as f64;
    (0..n)
        .filter_map(|step| {
            let share = step as f64 / n_steps;
            let at = from.towards(to, share);
            let sides = sides(&solution, at);
            let first = *sides.first()?;
            let slopes: Vec<Slope> = sides
                .iter()
                .map(|&side| solution.recovery.slope(side, at))
                .collect();
            Some(LineSample {
                share,
                at,
                tangential: tangential(&slopes, way, is_complex),
                magnitude: slopes.iter().map(|s| modulus(*s)).fold(0.0, f64::max),
                potential: solution.potential_at(first, at),
            })
        })
        .collect()
}

/// One triangle of each region that contains a place.
///
/// One triangle of a region suffices: recovered slopes agree where triangles of a region meet.
fn sides(solution: &Solution<'_>, at: Point) -> Vec<u32> {
    let mesh = solution.mesh;
    let mut sides: Vec<u32> = Vec::new();
    for triangle in solution.holders(at, None) {
        let region = mesh.region[triangle as usize];
        let is_new = sides
            .iter()
            .all(|side| mesh.region[*side as usize] != region);
        let nodes = mesh.triangles[triangle as usize].map(|node| mesh.nodes[node as usize]);
        let is_inside = triangle::reference_place(&nodes, at)
            .is_some_and(|[x, y]| x.min(y).min(1.0 - x - y) >= -RIM_RATIO);
        if is_new && is_inside {
            sides.push(triangle);
        }
    }
    sides
}

/// −∇φ·t, the mean over the sides, as one number.
fn tangential(slopes: &[Slope], way: [f64; 2], is_complex: bool) -> f64 {
    let mean = |part: usize| {
        let sum: f64 = slopes
            .iter()
            .map(|slope| slope[0][part] * way[0] + slope[1][part] * way[1])
            .sum();
        -sum / slopes.len() as f64
    };
    if is_complex {
        mean(0).hypot(mean(1))
    } else {
        mean(0)
    }
}
