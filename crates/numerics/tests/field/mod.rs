//! Fields compared with closed forms, with sections solved elsewhere, and with laws that they must obey.

mod along;
mod breakdown;
mod carried;
mod closed_forms;
mod growing;
mod laws;
mod orders;
mod published;

use jointwright_numerics::field::{
    Answer, Conductivity, Material, Options, Regime, Section, Unwatched, Wanted, solve,
};
use jointwright_numerics::outline::{Curve, Outline, Point, Region, Shape, Side};

/// A material that does not conduct.
pub fn insulator(relative_permittivity: f64) -> Material {
    conductor(relative_permittivity, 0.0)
}

/// A material with a constant conductivity, S/m.
pub fn conductor(relative_permittivity: f64, conductivity: f64) -> Material {
    Material {
        relative_permittivity,
        conductivity: Conductivity::Constant(conductivity),
    }
}

pub fn line(from: usize, to: usize, tag: &str) -> Curve {
    Curve {
        from,
        to,
        shape: Shape::Line,
        tag: tag.to_owned(),
    }
}

pub fn arc(from: usize, to: usize, center: Point, tag: &str) -> Curve {
    Curve {
        from,
        to,
        shape: Shape::Arc { center },
        tag: tag.to_owned(),
    }
}

/// A region of curves counted from 1, negative when run backwards.
pub fn region(name: &str, boundary: &[i64]) -> Region {
    Region {
        name: name.to_owned(),
        boundary: boundary
            .iter()
            .map(|&curve| Side {
                curve_index: (curve.unsigned_abs() - 1) as usize,
                is_reversed: curve < 0,
            })
            .collect(),
    }
}

/// Nested cylinders between two planes: `radii` from the conductor outward, with one material between each two.
///
/// The innermost curve has the tag `inner`, the outermost `outer`, those between `between`.
pub fn coaxial(radii: &[f64], length: f64, materials: &[Material], volts: f64) -> Section {
    let n_layers = radii.len() - 1;
    let points = radii
        .iter()
        .flat_map(|&r| [Point::new(r, 0.0), Point::new(r, length)])
        .collect();
    let mut curves = Vec::new();
    for layer in 0..=n_layers {
        let tag = match layer {
            0 => "inner",
            l if l == n_layers => "outer",
            _ => "between",
        };
        curves.push(line(2 * layer, 2 * layer + 1, tag));
    }
    let mut regions = Vec::new();
    for layer in 0..n_layers {
        let top = curves.len() as i64 + 1;
        curves.push(line(2 * layer + 1, 2 * layer + 3, "plane"));
        curves.push(line(2 * layer, 2 * layer + 2, "plane"));
        let (inside, outside) = (layer as i64 + 1, layer as i64 + 2);
        let name = format!("layer {layer}");
        regions.push(region(&name, &[inside, top, -outside, -(top + 1)]));
    }
    Section {
        outline: Outline {
            points,
            curves,
            regions,
        },
        materials: materials.to_vec(),
        potentials: vec![("inner".to_owned(), volts), ("outer".to_owned(), 0.0)],
        floating: Vec::new(),
        regime: Regime::Capacitive,
        leave_out: Vec::new(),
    }
}

/// Solves to a relative tolerance, the same for capacitances.
pub fn answers(section: &Section, wanted: &[Wanted], tolerance: f64) -> Vec<Answer> {
    let options = Options {
        tolerance,
        capacitance_tolerance: tolerance,
        n_unknowns_most: 150_000,
        work_most: usize::MAX,
    };
    solve(section, wanted, &options, &mut Unwatched)
        .unwrap_or_else(|error| panic!("no answers: {error}"))
        .answers
}

/// Whether two numbers agree within a share of the second.
pub fn is_near(value: f64, expected: f64, tolerance: f64) -> bool {
    (value - expected).abs() <= tolerance * expected.abs()
}
