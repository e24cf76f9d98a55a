//! Observed orders of convergence on a section between two spheres with a known potential.
//!
//! φ(ρ) = U (1/ρ − 1/b) / (1/a − 1/b), ρ² = r² + z², on the quarter a ≤ ρ ≤ b, r ≥ 0, z ≥ 0.

use super::{arc, line, region};
use jointwright_numerics::fem::assembly::{Pattern, energy};
use jointwright_numerics::fem::dofs::Dofs;
use jointwright_numerics::fem::sparse::Cholesky;
use jointwright_numerics::fem::triangle;
use jointwright_numerics::mesh::{Mesh, MeshOptions, build, refine};
use jointwright_numerics::outline::{Outline, Point};
use std::f64::consts::PI;

const A: f64 = 1.0;
const B: f64 = 2.0;

fn quarter() -> Outline {
    let center = Point::new(0.0, 0.0);
    Outline {
        points: vec![
            Point::new(A, 0.0),
            Point::new(B, 0.0),
            Point::new(0.0, B),
            Point::new(0.0, A),
        ],
        curves: vec![
            line(0, 1, "plane"),
            arc(1, 2, center, "outer"),
            line(2, 3, "axis"),
            arc(3, 0, center, "inner"),
        ],
        regions: vec![region("between", &[1, 2, 3, 4])],
    }
}

fn exact(place: Point) -> f64 {
    (1.0 / place.r.hypot(place.z) - 1.0 / B) / (1.0 / A - 1.0 / B)
}

/// ½ ∫ |∇φ|² over the half space: 2π U² / (1/a − 1/b), halved for the upper half.
const ENERGY: f64 = PI / (1.0 / A - 1.0 / B);

/// Relative errors of the mean potential and of the energy.
fn errors(mesh: &Mesh, outline: &Outline) -> [f64; 2] {
    let mut fixed = Vec::new();
    for rim in &mesh.rims {
        let volts = match outline.curves[rim.curve_index as usize].tag.as_str() {
            "inner" => 1.0,
            "outer" => 0.0,
            _ => continue,
        };
        fixed.extend(rim.nodes.map(|node| (node, volts)));
    }
    fixed.sort_by_key(|pair| pair.0);
    fixed.dedup_by_key(|pair| pair.0);
    let dofs = Dofs::new(mesh.nodes.len(), &fixed, &[]).unwrap_or_else(|error| panic!("{error}"));
    let pattern = Pattern::new(&mesh.triangles, &dofs);
    let places = |numbers: &[u32; 6]| numbers.map(|node| mesh.nodes[node as usize]);
    let matrices: Vec<[f64; 21]> = mesh
        .triangles
        .iter()
        .map(|numbers| triangle::stiffness(&places(numbers)))
        .collect();
    let ones = vec![1.0; matrices.len()];
    let system = pattern.assemble(&matrices, &ones, &dofs);
    let mut values = system.rhs;
    Cholesky::new(pattern.structure())
        .and_then(|mut solver| solver.factorise(&system.values)?.solve(&mut values))
        .unwrap_or_else(|error| panic!("{error}"));
    let potential = dofs.expansion(&values, 1.0);
    let (mut square, mut whole) = (0.0, 0.0);
    for numbers in &mesh.triangles {
        for point in jointwright_numerics::fem::quadrature::DEGREE_6 {
            let mapping = triangle::mapping(&places(numbers), point.place);
            let shapes = triangle::shapes(point.place);
            let found: f64 = shapes
                .iter()
                .zip(numbers)
                .map(|(shape, &node)| shape * potential[node as usize])
                .sum();
            let weight = point.weight * mapping.determinant * mapping.point.r;
            square += weight * (found - exact(mapping.point)).powi(2);
            whole += weight * exact(mapping.point).powi(2);
        }
    }
    let energy = energy(&mesh.triangles, &matrices, &ones, &potential);
    [(square / whole).sqrt(), (energy / ENERGY - 1.0).abs()]
}

/// The same mesh with the mid-nodes of arcs on their chords.
fn straightened(mesh: &Mesh) -> Mesh {
    let mut mesh = mesh.clone();
    for rim in &mesh.rims {
        let [a, b, middle] = rim.nodes.map(|node| node as usize);
        mesh.nodes[middle] = mesh.nodes[a].towards(mesh.nodes[b], 0.5);
    }
    mesh
}

/// Errors on four meshes; each mesh has all edges of the previous one halved.
fn table(change: impl Fn(&Mesh) -> Mesh) -> Vec<[f64; 2]> {
    let outline = quarter();
    let mut mesh =
        build(&outline, &MeshOptions::default()).unwrap_or_else(|error| panic!("{error}"));
    (0..4)
        .map(|level| {
            if level > 0 {
                mesh = refine(&outline, &mesh, &vec![true; mesh.triangles.len()]);
            }
            errors(&change(&mesh), &outline)
        })
        .collect()
}

fn order(table: &[[f64; 2]], which: usize) -> f64 {
    let [before, last] = [table.len() - 2, table.len() - 1].map(|level| table[level][which]);
    (before / last).log2()
}

#[test]
fn curved_triangles_converge_with_order_3_in_the_mean_and_4_in_energy() {
    let table = table(Mesh::clone);
    assert!((order(&table, 0) - 3.0).abs() < 0.25, "{table:?}");
    assert!((order(&table, 1) - 4.0).abs() < 0.3, "{table:?}");
    assert!(table[3][0] < 1e-5 && table[3][1] < 2e-7, "{table:?}");
}

#[test]
fn straight_edges_for_arcs_cost_the_order_down_to_2() {
    let table = table(straightened);
    assert!((order(&table, 0) - 2.0).abs() < 0.25, "{table:?}");
    assert!((order(&table, 1) - 2.0).abs() < 0.25, "{table:?}");
}
