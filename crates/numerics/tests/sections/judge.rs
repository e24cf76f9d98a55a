//! Properties that every mesh must have, and every field solved on it.

use super::counts::area;
use super::sketch::{HIGH, LOW, Sample};
use jointwright_numerics::fem::assembly::{self, Pattern};
use jointwright_numerics::fem::dofs::Dofs;
use jointwright_numerics::fem::quadrature::{DEGREE_4, DEGREE_6, QuadraturePoint};
use jointwright_numerics::fem::sparse::Cholesky;
use jointwright_numerics::fem::triangle;
use jointwright_numerics::mesh::Mesh;
use jointwright_numerics::outline::{Outline, Point, Shape};
use std::collections::BTreeMap;

fn cross(a: Point, b: Point, c: Point) -> f64 {
    (b.r - a.r) * (c.z - a.z) - (b.z - a.z) * (c.r - a.r)
}

fn nodes(mesh: &Mesh, triangle: usize) -> [Point; 6] {
    mesh.triangles[triangle].map(|node| mesh.nodes[node as usize])
}

/// Area of a quadratic triangle: the straight one and, over each edge, 2/3 of chord × sagitta.
fn triangle_area(nodes: &[Point; 6]) -> f64 {
    let [a, b, c, ab, bc, ca] = *nodes;
    let straight = cross(a, b, c);
    let over = |from: Point, to: Point, middle: Point| -2.0 / 3.0 * cross(from, to, middle);
    0.5 * straight + over(a, b, ab) + over(b, c, bc) + over(c, a, ca)
}

/// First fault that keeps a mesh from being a mesh of its outline.
pub(crate) fn fault(outline: &Outline, mesh: &Mesh) -> Option<String> {
    shapes(mesh)
        .or_else(|| edges(outline, mesh))
        .or_else(|| rims(outline, mesh))
        .or_else(|| areas(outline, mesh))
}

/// Checks that every triangle is counter-clockwise and no edge is bent so far that it folds.
///
/// At a cusp the determinant is zero, and rounding decides its sign.
/// Points are rounded to 1e-12 m: the ends of an arc lie up to 0.7e-12 m off the mean of their circles, another arc's, or
/// a line's, as far the other way, ε = 1.4e-12 m together.
/// The parabola through them begins 3 ε too steep for a triangle of height h: the determinant is −3 ε/h of the straight one,
/// and its mean is 2/3 of that at a cusp: −6.3e-12 m/h.
fn shapes(mesh: &Mesh) -> Option<String> {
    (0..mesh.triangles.len()).find_map(|index| {
        let nodes = nodes(mesh, index);
        let twice = cross(nodes[0], nodes[1], nodes[2]);
        let longest = (0..3)
            .map(|side| nodes[side].distance(nodes[(side + 1) % 3]))
            .fold(0.0, f64::max);
        let rounding = 7e-12 / (twice / longest);
        let is_positive =
            |point: &QuadraturePoint| triangle::mapping(&nodes, point.place).determinant > 0.0;
        let is_sound = twice > 0.0
            && (triangle::is_straight(&nodes)
                || triangle::determinant_ratio(&nodes) > -rounding
                    && DEGREE_4.iter().chain(&DEGREE_6).all(is_positive));
        (!is_sound).then(|| {
            format!(
                "triangle {index} is folded, {} rounding {rounding}: {nodes:?}",
                triangle::determinant_ratio(&nodes)
            )
        })
    })
}

/// Checks that edges fit: two triangles share all three nodes in opposite directions, or one triangle has an edge of the border.
fn edges(outline: &Outline, mesh: &Mesh) -> Option<String> {
    let mut beside = vec![[usize::MAX; 2]; outline.curves.len()];
    for (index, region) in outline.regions.iter().enumerate() {
        for side in &region.boundary {
            let pair = &mut beside[side.curve_index];
            pair[usize::from(pair[0] != usize::MAX)] = index;
        }
    }
    let mut curve_of: BTreeMap<u32, u32> = BTreeMap::new();
    for rim in &mesh.rims {
        curve_of.insert(rim.nodes[2], rim.curve_index);
    }
    let mut users: Vec<Vec<([u32; 2], u32)>> = vec![Vec::new(); mesh.nodes.len()];
    for (triangle, region) in mesh.triangles.iter().zip(&mesh.region) {
        for side in 0..3 {
            let ends = [triangle[side], triangle[(side + 1) % 3]];
            if ends.iter().any(|&end| end as usize >= mesh.n_corners) {
                return Some(format!("a corner of {triangle:?} is a mid-node"));
            }
            users[triangle[3 + side] as usize].push((ends, *region));
        }
    }
    for (node, users) in users.iter().enumerate().skip(mesh.n_corners) {
        let mut regions = [usize::MAX; 2];
        for (slot, user) in regions.iter_mut().zip(users) {
            *slot = user.1 as usize;
        }
        let is_paired = match users[..] {
            [_] => true,
            [one, other] => one.0 == [other.0[1], other.0[0]],
            _ => false,
        };
        let is_placed = match curve_of.get(&(node as u32)) {
            None => users.len() == 2 && regions[0] == regions[1],
            Some(&curve) => {
                let expected = beside[curve as usize];
                regions == expected || regions == [expected[1], expected[0]]
            }
        };
        if !is_paired || !is_placed {
            return Some(format!(
                "edge {node} at {:?} has {users:?}",
                mesh.nodes[node]
            ));
        }
    }
    None
}

/// Checks that every curve is covered from end to end, and that its nodes lie on it.
fn rims(outline: &Outline, mesh: &Mesh) -> Option<String> {
    let mut shares: Vec<Vec<[f64; 2]>> = vec![Vec::new(); outline.curves.len()];
    for rim in &mesh.rims {
        let curve = rim.curve_index as usize;
        shares[curve].push(rim.shares);
        let [from, to] = rim.shares;
        for (node, share) in rim.nodes.into_iter().zip([from, to, 0.5 * (from + to)]) {
            let (found, expected) = (mesh.nodes[node as usize], outline.place(curve, share));
            // A few roundings of places within a metre.
            if found.distance(expected) > 1e-14 {
                return Some(format!(
                    "node {node} of curve {curve} is at {found:?}, not {expected:?}"
                ));
            }
        }
    }
    for (curve, mut shares) in shares.into_iter().enumerate() {
        shares.sort_by(|a, b| a[0].total_cmp(&b[0]));
        let is_whole = shares.first().is_some_and(|first| first[0] == 0.0)
            && shares.last().is_some_and(|last| last[1] == 1.0)
            && shares.windows(2).all(|pair| pair[0][1] == pair[1][0]);
        if !is_whole {
            return Some(format!("curve {curve} is covered by {shares:?}"));
        }
    }
    None
}

/// Checks that each region has its exact area, apart from the difference between parabolas and arcs.
///
/// The piece between a chord and an arc of radius R and turn ψ is R²/2 (ψ − sin ψ), and 2/3 of chord × sagitta under a
/// parabola: by their series they differ by R²ψ⁵/960, less for the next term.
fn areas(outline: &Outline, mesh: &Mesh) -> Option<String> {
    let mut found = vec![0.0; outline.regions.len()];
    for (index, region) in mesh.region.iter().enumerate() {
        found[*region as usize] += triangle_area(&nodes(mesh, index));
    }
    let mut missed = vec![0.0; outline.curves.len()];
    for rim in &mesh.rims {
        let curve = &outline.curves[rim.curve_index as usize];
        if curve.shape != Shape::Line {
            let (from, to) = (outline.points[curve.from], outline.points[curve.to]);
            let turn = (curve.turn(from, to) * (rim.shares[1] - rim.shares[0])).abs();
            missed[rim.curve_index as usize] +=
                curve.radius(from, to).powi(2) * turn.powi(5) / 960.0;
        }
    }
    outline
        .regions
        .iter()
        .zip(found)
        .find_map(|(region, found)| {
            let exact = area(outline, region).abs();
            let sides = || region.boundary.iter().map(|side| side.curve_index);
            let missed: f64 = sides().map(|curve| missed[curve]).sum();
            let length: f64 = sides().map(|curve| outline.length(curve)).sum();
            // The ends of arcs are rounded to 1e-12 m.
            let is_right = (found - exact).abs() <= missed + 2e-12 * length + 1e-12 * exact;
            (!is_right || found <= 0.0).then(|| {
                format!(
                    "region {} has {found} m², not {exact}, arcs miss {missed}",
                    region.name
                )
            })
        })
}

/// Least and greatest potential, V, and energy, J, of a section solved on a mesh.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Solved {
    pub least: f64,
    pub greatest: f64,
    pub energy: f64,
    pub n_unknowns: usize,
}

/// Solves ∇·(ε∇φ) = 0 with its conductors at 1 V and 0 V.
pub(crate) fn solve(sample: &Sample, mesh: &Mesh) -> Result<Solved, String> {
    let mut fixed = BTreeMap::new();
    let mut tied = vec![Vec::new(); sample.floating.len()];
    for rim in &mesh.rims {
        let tag = &sample.outline.curves[rim.curve_index as usize].tag;
        if tag == HIGH || tag == LOW {
            let volts = if tag == HIGH { 1.0 } else { 0.0 };
            fixed.extend(rim.nodes.map(|node| (node, volts)));
        } else if let Some(group) = sample.floating.iter().position(|name| name == tag) {
            tied[group].extend(rim.nodes);
        }
    }
    let fixed: Vec<(u32, f64)> = fixed.into_iter().collect();
    let dofs = Dofs::new(mesh.nodes.len(), &fixed, &tied)
        .map_err(|error| error.to_string())?
        .ordered(&mesh.triangles);
    let pattern = Pattern::new(&mesh.triangles, &dofs);
    let matrices: Vec<[f64; 21]> = (0..mesh.triangles.len())
        .map(|index| triangle::stiffness(&nodes(mesh, index)))
        .collect();
    let permittivities: Vec<f64> = mesh
        .region
        .iter()
        .map(|&region| sample.permittivities[region as usize])
        .collect();
    let system = pattern.assemble(&matrices, &permittivities, &dofs);
    let mut values = system.rhs;
    let mut cholesky = Cholesky::new(pattern.structure()).map_err(|error| error.to_string())?;
    let factor = cholesky
        .factorise(&system.values)
        .map_err(|error| error.to_string())?;
    factor
        .solve(&mut values)
        .map_err(|error| error.to_string())?;
    let potential = dofs.expansion(&values, 1.0);
    Ok(Solved {
        least: potential.iter().copied().fold(f64::INFINITY, f64::min),
        greatest: potential.iter().copied().fold(f64::NEG_INFINITY, f64::max),
        energy: assembly::energy(&mesh.triangles, &matrices, &permittivities, &potential),
        n_unknowns: dofs.n_free(),
    })
}
