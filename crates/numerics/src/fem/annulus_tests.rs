//! Whole solutions against closed forms: coaxial and spherical layers.
//!
//! Source of the closed forms: the field of a line charge and of a point charge, by Gauss's law; layers in series.

use super::assembly::{FullPattern, Pattern, energy, fluxes, free_sums};
use super::dofs::Dofs;
use super::grid_tests::{Grid, Mids};
use super::sparse::{Cholesky, Lu, QuasiDefinite, complex_residual, residual};
use super::triangle;
use crate::outline::Point;
use std::f64::consts::PI;

/// Solves and returns the values of all nodes.
fn solution(grid: &Grid, coefficients: &[f64], dofs: &Dofs) -> Vec<f64> {
    let pattern = Pattern::new(&grid.triangles, dofs);
    let system = pattern.assemble(&grid.matrices(), coefficients, dofs);
    let mut values = system.rhs.clone();
    let mut cholesky = Cholesky::new(pattern.structure()).unwrap();
    let factor = cholesky.factorise(&system.values).unwrap();
    factor.solve(&mut values).unwrap();
    let rest = residual(
        pattern.structure(),
        true,
        &system.values,
        &values,
        &system.rhs,
    );
    assert!(rest < 1e-14, "residual {rest:e}");
    dofs.expansion(&values, 1.0)
}

/// Energy of one volt between the first and the last u, with coefficient 1.
fn energy_of_one_volt(grid: &Grid) -> f64 {
    let last = 2 * grid.n_cells[0];
    let fixed = [grid.fixed(0, 1.0), grid.fixed(last, 0.0)].concat();
    let dofs = Dofs::new(grid.nodes.len(), &fixed, &[])
        .unwrap()
        .ordered(&grid.triangles);
    let ones = vec![1.0; grid.triangles.len()];
    let values = solution(grid, &ones, &dofs);
    energy(&grid.triangles, &grid.matrices(), &ones, &values)
}

/// Observed orders of the energy's error from one halving to the next.
fn orders(exact: f64, grid: impl Fn(usize) -> Grid) -> Vec<f64> {
    let errors: Vec<f64> = [2, 4, 8, 16]
        .map(|n| (energy_of_one_volt(&grid(n)) / exact - 1.0).abs())
        .to_vec();
    errors
        .windows(2)
        .map(|pair| (pair[0] / pair[1]).log2())
        .collect()
}

const COAX: [f64; 2] = [0.01, 0.025];
const COAX_LENGTH: f64 = 0.02;

fn coax(n: usize) -> Grid {
    let [inner, outer] = COAX;
    Grid::new([n, n], Mids::Straight, |u, v| {
        Point::new(inner + u * (outer - inner), v * COAX_LENGTH)
    })
}

#[test]
fn coaxial_energy_converges_with_order_4_to_the_closed_form() {
    let exact = PI * COAX_LENGTH / (COAX[1] / COAX[0]).ln();
    for order in orders(exact, coax) {
        assert!((3.5..4.3).contains(&order), "order {order}");
    }
    let error = energy_of_one_volt(&coax(16)) / exact - 1.0;
    // The energy of a potential that is not the true one is too large; a 16th of the gap leaves 1e-6 of it.
    assert!(error > 0.0 && error < 1e-6, "error {error:e}");
    // The twin: a radius off by a thousandth is detected at once, and nothing converges to it.
    let wrong = PI * COAX_LENGTH / (COAX[1] * 1.001 / COAX[0]).ln();
    assert!((energy_of_one_volt(&coax(16)) / wrong - 1.0).abs() > 1e-4);
    assert!(orders(wrong, coax)[2].abs() < 1.0);
}

const SPHERES: [f64; 2] = [0.01, 0.02];

fn spheres(n: usize, mids: Mids) -> Grid {
    let [inner, outer] = SPHERES;
    Grid::new([n, 3 * n], mids, |u, v| {
        let (radius, turn) = (inner + u * (outer - inner), v * PI);
        // On the axis r is 0, not the sine's rounding.
        let sine = if v == 0.0 || v == 1.0 {
            0.0
        } else {
            turn.sin()
        };
        Point::new(radius * sine, -radius * turn.cos())
    })
}

#[test]
fn spherical_energy_converges_with_order_4_on_curved_edges_and_2_on_straight_ones() {
    let exact = 2.0 * PI / (1.0 / SPHERES[0] - 1.0 / SPHERES[1]);
    for mids in [Mids::Mapped, Mids::MappedOnRims] {
        let orders = orders(exact, |n| spheres(n, mids));
        // From the second halving on; the first halving begins with six triangles in a half turn.
        assert!(
            orders[1..].iter().all(|order| (3.5..4.5).contains(order)),
            "orders {orders:?}"
        );
    }
    // The twin: with the mid-nodes on the chords, the circle is a polygon.
    let straight = orders(exact, |n| spheres(n, Mids::Straight));
    assert!(
        straight[1..].iter().all(|order| (1.7..2.3).contains(order)),
        "orders {straight:?}"
    );
}

/// Two layers with a shell between them; the outer layer differs in its upper half.
fn layered(n: usize) -> (Grid, [f64; 3]) {
    let radii = [0.01, 0.016, 0.025];
    let grid = Grid::new([2 * n, 2 * n], Mids::Straight, |u, v| {
        let radius = if u < 0.5 {
            radii[0] + 2.0 * u * (radii[1] - radii[0])
        } else {
            radii[1] + (2.0 * u - 1.0) * (radii[2] - radii[1])
        };
        Point::new(radius, v * COAX_LENGTH)
    });
    (grid, radii)
}

/// The coefficient of each triangle: inner layer, outer layer below, outer layer above.
fn by_layer(grid: &Grid, n: usize, values: [f64; 3]) -> Vec<f64> {
    grid.cells
        .iter()
        .map(|&[u, v]| match (u < n, v < n) {
            (true, _) => values[0],
            (false, true) => values[1],
            (false, false) => values[2],
        })
        .collect()
}

fn layered_dofs(grid: &Grid, n: usize, is_floating: bool) -> Dofs {
    let fixed = [grid.fixed(0, 1.0), grid.fixed(4 * n, 0.0)].concat();
    let shell = grid.column(2 * n);
    let tied = if is_floating { vec![shell] } else { vec![] };
    Dofs::new(grid.nodes.len(), &fixed, &tied)
        .unwrap()
        .ordered(&grid.triangles)
}

#[test]
fn floating_shell_has_no_charge_and_the_potential_of_layers_in_series() {
    let n = 8;
    let (grid, radii) = layered(n);
    let coefficients = by_layer(&grid, n, [2.3, 3.0, 15.0]);
    // With the shell at one potential every field line is radial, so the two halves are in parallel.
    let inner = 2.3 / (radii[1] / radii[0]).ln();
    let outer = 0.5 * (3.0 + 15.0) / (radii[2] / radii[1]).ln();
    let exact = inner / (inner + outer);
    let shell = grid.column(2 * n);
    let shell_charge = |values: &[f64]| -> f64 {
        let flows = fluxes(&grid.triangles, &grid.matrices(), &coefficients, values);
        shell.iter().map(|&node| flows[node as usize]).sum()
    };
    let dofs = layered_dofs(&grid, n, true);
    let values = solution(&grid, &coefficients, &dofs);
    // Order 4, a sixteenth of each layer: 1e-6 of the potential.
    for &node in &shell {
        assert!((values[node as usize] / exact - 1.0).abs() < 1e-6);
    }
    let flows = fluxes(&grid.triangles, &grid.matrices(), &coefficients, &values);
    // Some thousand terms of about 0.1 each, rounded: 1e-13.
    assert!(shell_charge(&values).abs() < 1e-13);
    assert!(free_sums(&flows, &dofs).iter().all(|sum| sum.abs() < 1e-13));
    // The twins: without the tie the shell has no single potential, and held at another potential it has a charge.
    let untied = solution(&grid, &coefficients, &layered_dofs(&grid, n, false));
    assert!((untied[shell[0] as usize] / exact - 1.0).abs() > 1e-2);
    let mut fixed = [grid.fixed(0, 1.0), grid.fixed(4 * n, 0.0)].concat();
    fixed.extend(shell.iter().map(|&node| (node, 1.001 * exact)));
    let held = solution(
        &grid,
        &coefficients,
        &Dofs::new(grid.nodes.len(), &fixed, &[]).unwrap(),
    );
    assert!(shell_charge(&held).abs() > 1e-6);
}

/// Potential of the shell between lossy layers, from coefficients ωε and −σ.
fn lossy_shell(permittive: [f64; 3], conductive: [f64; 3], radii: [f64; 3]) -> [f64; 2] {
    let logs = [(radii[1] / radii[0]).ln(), (radii[2] / radii[1]).ln()];
    let admittance =
        |values: [f64; 3]| [values[0] / logs[0], 0.5 * (values[1] + values[2]) / logs[1]];
    let (a, b) = (admittance(permittive), admittance(conductive));
    // (a0 + j b0) / (a0 + a1 + j (b0 + b1))
    let (sum_a, sum_b) = (a[0] + a[1], b[0] + b[1]);
    let square = sum_a * sum_a + sum_b * sum_b;
    [
        (a[0] * sum_a + b[0] * sum_b) / square,
        (b[0] * sum_a - a[0] * sum_b) / square,
    ]
}

const PERMITTIVE: [f64; 3] = [2.3, 15.0, 4.0];
const CONDUCTIVE: [f64; 3] = [-0.1, -20.0, -7.0];

#[test]
fn lossy_layers_have_the_complex_potential_of_admittances_in_series() {
    let n = 8;
    let (grid, radii) = layered(n);
    let dofs = layered_dofs(&grid, n, true);
    let pattern = Pattern::new(&grid.triangles, &dofs);
    let matrices = grid.matrices();
    let real = pattern.assemble(&matrices, &by_layer(&grid, n, PERMITTIVE), &dofs);
    let imaginary = pattern.assemble(&matrices, &by_layer(&grid, n, CONDUCTIVE), &dofs);
    let mut solver = QuasiDefinite::new(pattern.structure()).unwrap();
    let (mut x, mut y) = (real.rhs.clone(), imaginary.rhs.clone());
    let factor = solver.factorise(&real.values, &imaginary.values).unwrap();
    factor.solve(&mut x, &mut y).unwrap();
    let rest = complex_residual(
        pattern.structure(),
        [&real.values, &imaginary.values],
        [&x, &y],
        [&real.rhs, &imaginary.rhs],
    );
    assert!(rest < 1e-14, "residual {rest:e}");
    let shell = dofs.unknown(grid.column(2 * n)[0]).unwrap() as usize;
    let off = |[exact_x, exact_y]: [f64; 2]| (x[shell] - exact_x).hypot(y[shell] - exact_y);
    let exact = lossy_shell(PERMITTIVE, CONDUCTIVE, radii);
    assert!(off(exact) < 1e-6, "off by {:e}", off(exact));
    // The twins: the other sign of the losses, and a conductivity off by a thousandth.
    assert!(
        off(lossy_shell(
            PERMITTIVE,
            CONDUCTIVE.map(|value| -value),
            radii
        )) > 0.1
    );
    assert!(
        off(lossy_shell(
            PERMITTIVE,
            CONDUCTIVE.map(|value| 1.001 * value),
            radii
        )) > 1e-5
    );
}

#[test]
fn unsymmetric_factors_of_the_complex_system_agree_with_symmetric_ones() {
    let n = 4;
    let (grid, _) = layered(n);
    let dofs = layered_dofs(&grid, n, false);
    let matrices = grid.matrices();
    let (a, b) = (
        by_layer(&grid, n, PERMITTIVE),
        by_layer(&grid, n, CONDUCTIVE),
    );
    let pattern = Pattern::new(&grid.triangles, &dofs);
    let real = pattern.assemble(&matrices, &a, &dofs);
    let imaginary = pattern.assemble(&matrices, &b, &dofs);
    let mut solver = QuasiDefinite::new(pattern.structure()).unwrap();
    let (mut x, mut y) = (real.rhs.clone(), imaginary.rhs.clone());
    let factor = solver.factorise(&real.values, &imaginary.values).unwrap();
    factor.solve(&mut x, &mut y).unwrap();

    let full = FullPattern::new(&grid.triangles, &dofs, 2);
    let block = |coefficients: &[f64], sign: f64| -> Vec<[f64; 36]> {
        let pairs = matrices.iter().zip(coefficients);
        pairs
            .map(|(matrix, coefficient)| {
                triangle::full(matrix).map(|entry| sign * coefficient * entry)
            })
            .collect()
    };
    let (plus_a, plus_b, minus_b) = (block(&a, 1.0), block(&b, 1.0), block(&b, -1.0));
    let values = full.assemble(&[&plus_a, &minus_b, &plus_b, &plus_a]);
    let rhs: Vec<f64> = real
        .rhs
        .iter()
        .zip(&imaginary.rhs)
        .flat_map(|(&f, &g)| [f, g])
        .collect();
    let difference = |values: &[f64]| -> f64 {
        let mut both = rhs.clone();
        let mut lu = Lu::new(full.structure()).unwrap();
        lu.factorise(values).unwrap().solve(&mut both).unwrap();
        let rest = residual(full.structure(), false, values, &both, &rhs);
        assert!(rest < 1e-14, "residual {rest:e}");
        let pairs = both.chunks_exact(2).zip(x.iter().zip(&y));
        pairs
            .map(|(pair, (x, y))| (pair[0] - x).hypot(pair[1] - y))
            .fold(0.0, f64::max)
    };
    assert!(
        difference(&values) < 1e-12,
        "off by {:e}",
        difference(&values)
    );
    // The twin: without one of the blocks it is a different system.
    let other = full.assemble(&[&plus_a, &minus_b, &block(&b, 0.0), &plus_a]);
    assert!(difference(&other) > 1e-2);
}

#[test]
fn the_order_of_unknowns_changes_nothing_but_rounding() {
    let (grid, _) = layered(4);
    let coefficients = by_layer(&grid, 4, [2.3, 3.0, 15.0]);
    let ordered = layered_dofs(&grid, 4, true);
    let fixed = [grid.fixed(0, 1.0), grid.fixed(16, 0.0)].concat();
    let plain = Dofs::new(grid.nodes.len(), &fixed, &[grid.column(8)]).unwrap();
    assert_ne!(ordered, plain);
    let one = solution(&grid, &coefficients, &ordered);
    let other = solution(&grid, &coefficients, &plain);
    let most = one
        .iter()
        .zip(&other)
        .map(|(a, b)| (a - b).abs())
        .fold(0.0, f64::max);
    // Potentials of at most 1 V, a condition of some hundreds.
    assert!(most < 1e-12, "off by {most:e}");
    // The twin: another coefficient is detected.
    let changed = solution(&grid, &by_layer(&grid, 4, [2.3, 3.0, 15.001]), &plain);
    assert!(one.iter().zip(&changed).any(|(a, b)| (a - b).abs() > 1e-6));
}
