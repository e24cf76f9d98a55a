//! Equipotential: the lines on which the potential is a given share of its whole difference.

use crate::band::crossing;
use crate::frame::Frame;
use crate::trace::{Spot, lines};
use jointwright_numerics::mesh::Mesh;

/// Least and greatest potential, V, and whether it is a modulus.
pub(crate) type Range = (f64, f64, bool);

/// Lines of one tenth of the difference.
#[derive(Debug)]
pub(crate) struct Tenth {
    /// Number of the tenth, 1 to 9.
    pub(crate) tenth: u32,
    /// Its lines in the picture.
    pub(crate) lines: Vec<Vec<Spot>>,
}

impl Tenth {
    /// The longest of its lines.
    pub(crate) fn longest(&self) -> Option<&Vec<Spot>> {
        self.lines.iter().max_by_key(|line| length(line))
    }

    /// Text on the line.
    pub(crate) fn label(&self) -> String {
        format!("{}0 %", self.tenth)
    }
}

/// Potential in tenths, and its range; `None` if the potential is constant.
pub(crate) fn tenths(
    mesh: &Mesh,
    potential: &[[f64; 2]],
    frame: &Frame,
) -> Option<(Range, Vec<Tenth>)> {
    let is_modulus = potential.iter().any(|[_, imaginary]| *imaginary != 0.0);
    let number = |[real, imaginary]: &[f64; 2]| {
        if is_modulus {
            real.hypot(*imaginary)
        } else {
            *real
        }
    };
    let numbers: Vec<f64> = potential.iter().map(number).collect();
    let least = numbers.iter().copied().fold(f64::INFINITY, f64::min);
    let greatest = numbers.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    if !(greatest > least && (greatest - least).is_finite()) {
        return None;
    }
    let of = |tenth: u32| {
        let level = least + 0.1 * f64::from(tenth) * (greatest - least);
        let lines = lines(&pieces(mesh, &numbers, frame, level));
        Tenth { tenth, lines }
    };
    Some(((least, greatest, is_modulus), (1..10).map(of).collect()))
}

/// Pieces of the line on which a number of the nodes has a level.
fn pieces(mesh: &Mesh, numbers: &[f64], frame: &Frame, level: f64) -> Vec<(Spot, Spot)> {
    // A quadratic triangle as four triangles with straight sides.
    const PARTS: [[usize; 3]; 4] = [[0, 3, 5], [3, 1, 4], [5, 4, 2], [3, 4, 5]];
    let mut found = Vec::new();
    for triangle in &mesh.triangles {
        for part in PARTS {
            let node = |at: usize| {
                let node = triangle[part[at]] as usize;
                Some((frame.spot(*mesh.nodes.get(node)?), *numbers.get(node)?))
            };
            let (Some(a), Some(b), Some(c)) = (node(0), node(1), node(2)) else {
                continue;
            };
            let crossed: Vec<Spot> = [(a, b), (b, c), (c, a)]
                .into_iter()
                .filter(|(one, other)| (one.1 >= level) != (other.1 >= level))
                .map(|(one, other)| crossing([one.1, other.1], [one.0, other.0], level))
                .collect();
            if let [from, to] = crossed[..] {
                found.push((from, to));
            }
        }
    }
    found
}

fn length(line: &[Spot]) -> i64 {
    let piece = |pair: &[Spot]| {
        let d = |axis: usize| f64::from(pair[1][axis]) - f64::from(pair[0][axis]);
        d(0).hypot(d(1)) as i64
    };
    line.windows(2).map(piece).sum()
}

/// Place at a share of a line, counted from its end farther to the left.
pub(crate) fn along(line: &[Spot], share: f64) -> Spot {
    let mut line = line.to_vec();
    if line.first() > line.last() {
        line.reverse();
    }
    let goal = share * length(&line) as f64;
    let mut walked = 0.0;
    for pair in line.windows(2) {
        let piece = length(pair) as f64;
        if walked + piece >= goal && piece > 0.0 {
            let share = (goal - walked) / piece;
            return [0, 1].map(|axis| {
                let (from, to) = (f64::from(pair[0][axis]), f64::from(pair[1][axis]));
                (from + share * (to - from)).round() as i32
            });
        }
        walked += piece;
    }
    line.first().copied().unwrap_or_default()
}
