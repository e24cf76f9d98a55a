use super::super::grid_tests::{Grid, Mids};
use super::*;
use crate::fem::sparse::residual;
use crate::outline::Point;

fn grid() -> Grid {
    Grid::new([3, 2], Mids::Straight, |u, v| {
        Point::new(1.0 + u + 0.1 * v, 2.0 * v + 0.2 * u)
    })
}

fn coefficients(grid: &Grid) -> Vec<f64> {
    (0..grid.triangles.len())
        .map(|index| 1.0 + index as f64)
        .collect()
}

/// The same system by a full matrix over the nodes and a matrix of ones that ties nodes together.
fn dense(grid: &Grid, dofs: &Dofs) -> (Vec<Vec<f64>>, Vec<f64>) {
    let n_nodes = grid.nodes.len();
    let mut nodal = vec![vec![0.0; n_nodes]; n_nodes];
    let all = grid
        .triangles
        .iter()
        .zip(grid.matrices())
        .zip(coefficients(grid));
    for ((nodes, matrix), coefficient) in all {
        let matrix = triangle::full(&matrix);
        for (a, &row) in nodes.iter().enumerate() {
            for (b, &column) in nodes.iter().enumerate() {
                nodal[row as usize][column as usize] += coefficient * matrix[6 * a + b];
            }
        }
    }
    let n_free = dofs.n_free();
    let mut reduced = vec![vec![0.0; n_free]; n_free];
    let mut rhs = vec![0.0; n_free];
    for (row, line) in nodal.iter().enumerate() {
        let Some(own) = dofs.unknown(row as u32) else {
            continue;
        };
        for (column, entry) in line.iter().enumerate() {
            match dofs.unknown(column as u32) {
                Some(other) => reduced[own as usize][other as usize] += entry,
                None => rhs[own as usize] -= entry * dofs.fixed_value(column as u32).unwrap(),
            }
        }
    }
    (reduced, rhs)
}

/// Greatest difference between the assembled and the dense system, in the lower triangle and in the right-hand side.
fn difference(grid: &Grid, dofs: &Dofs) -> f64 {
    let pattern = Pattern::new(&grid.triangles, dofs);
    let system = pattern.assemble(&grid.matrices(), &coefficients(grid), dofs);
    let (reduced, rhs) = dense(grid, dofs);
    // A x for each unit vector x: if A x = b, the residual is 0.
    let mut most = 0.0_f64;
    for (column, wanted) in reduced.iter().enumerate() {
        let mut unit = vec![0.0; dofs.n_free()];
        unit[column] = 1.0;
        let rest = residual(pattern.structure(), true, &system.values, &unit, wanted);
        most = most.max(rest);
    }
    for (one, other) in system.rhs.iter().zip(&rhs) {
        most = most.max((one - other).abs() / 1e3);
    }
    most
}

fn dofs(grid: &Grid, tied: &[Vec<u32>]) -> Dofs {
    let fixed = [grid.fixed(0, 3.0), grid.fixed(6, -1.0)].concat();
    Dofs::new(grid.nodes.len(), &fixed, tied).unwrap()
}

#[test]
fn assembled_system_is_that_of_the_full_matrix() {
    let grid = grid();
    // A column of the lattice, a whole triangle, and two nodes that have no element in common.
    let triangle = grid.triangles[10]
        .iter()
        .copied()
        .filter(|&node| node >= 10)
        .collect();
    let groups: [Vec<Vec<u32>>; 4] = [
        vec![],
        vec![grid.column(2)],
        vec![triangle],
        vec![vec![grid.column(1)[0], grid.column(5)[4]], grid.column(3)],
    ];
    for tied in groups {
        let tied: Vec<Vec<u32>> = tied
            .into_iter()
            .map(|group| {
                let is_inner = |node: &u32| *node >= 5 && *node < 30;
                group.into_iter().filter(is_inner).collect()
            })
            .collect();
        let plain = dofs(&grid, &tied);
        assert!(difference(&grid, &plain) < 1e-14);
        assert!(difference(&grid, &plain.ordered(&grid.triangles)) < 1e-14);
    }
}

#[test]
fn tied_nodes_of_one_element_count_their_pair_twice() {
    let grid = grid();
    let tied = dofs(&grid, &[grid.column(2)]);
    let mut pattern = Pattern::new(&grid.triangles, &tied);
    assert!(!pattern.doubled.is_empty());
    let whole = pattern.assemble(&grid.matrices(), &coefficients(&grid), &tied);
    // The twin: without the second count the matrix is different.
    pattern.doubled.clear();
    let lacking = pattern.assemble(&grid.matrices(), &coefficients(&grid), &tied);
    let unknown = tied.unknown(grid.column(2)[0]).unwrap() as usize;
    let diagonal = pattern.structure().diagonal_entry(unknown);
    assert!((whole.values[diagonal] - lacking.values[diagonal]).abs() > 1.0);
}

#[test]
fn same_pattern_serves_new_values_and_other_fixed_potentials() {
    let grid = grid();
    let first = dofs(&grid, &[]);
    let pattern = Pattern::new(&grid.triangles, &first);
    let mut system = pattern.assemble(&grid.matrices(), &coefficients(&grid), &first);
    let before = system.clone();
    let doubled: Vec<f64> = coefficients(&grid)
        .iter()
        .map(|value| 2.0 * value)
        .collect();
    pattern.assemble_into(&grid.matrices(), &doubled, &first, &mut system);
    assert!(
        system
            .values
            .iter()
            .zip(&before.values)
            .all(|(two, one)| *two == 2.0 * one)
    );
    let fixed = [grid.fixed(0, 6.0), grid.fixed(6, -2.0)].concat();
    let second = Dofs::new(grid.nodes.len(), &fixed, &[]).unwrap();
    let other = pattern.assemble(&grid.matrices(), &coefficients(&grid), &second);
    assert!(
        other
            .rhs
            .iter()
            .zip(&before.rhs)
            .all(|(two, one)| *two == 2.0 * one)
    );
    assert_ne!(other.rhs, before.rhs);
}

#[test]
fn full_pattern_holds_every_entry_once_and_in_its_part() {
    let grid = grid();
    let dofs = dofs(&grid, &[grid.column(2)]);
    let full = FullPattern::new(&grid.triangles, &dofs, 2);
    // An unsymmetric matrix: each entry identifies its row, its column and its block.
    let block = |weight: f64| -> Vec<[f64; 36]> {
        let of_triangle = |nodes: &[u32; 6]| {
            std::array::from_fn(|entry| {
                weight * (f64::from(nodes[entry / 6]) + 100.0 * f64::from(nodes[entry % 6]))
            })
        };
        grid.triangles.iter().map(of_triangle).collect()
    };
    let blocks = [block(1.0), block(10.0), block(100.0), block(1000.0)];
    let values = full.assemble(&[&blocks[0], &blocks[1], &blocks[2], &blocks[3]]);
    let n = 2 * dofs.n_free();
    let mut wanted = vec![vec![0.0; n]; n];
    for nodes in &grid.triangles {
        for &row in nodes {
            for &column in nodes {
                let (Some(own), Some(other)) = (dofs.unknown(row), dofs.unknown(column)) else {
                    continue;
                };
                let value = f64::from(row) + 100.0 * f64::from(column);
                for (index, weight) in [1.0, 10.0, 100.0, 1000.0].into_iter().enumerate() {
                    let (row_part, column_part) = (index / 2, index % 2);
                    wanted[2 * other as usize + column_part][2 * own as usize + row_part] +=
                        weight * value;
                }
            }
        }
    }
    let most = |values: &[f64]| {
        (0..n)
            .map(|column| {
                let mut unit = vec![0.0; n];
                unit[column] = 1.0;
                residual(full.structure(), false, values, &unit, &wanted[column])
            })
            .fold(0.0, f64::max)
    };
    assert!(most(&values) < 1e-15);
    // The twin: two blocks exchanged.
    let exchanged = full.assemble(&[&blocks[0], &blocks[2], &blocks[1], &blocks[3]]);
    assert!(most(&exchanged) > 1e-3);
}

#[test]
fn mesh_without_unknowns_gives_an_empty_system() {
    let fixed: Vec<(u32, f64)> = (0..6).map(|node| (node, 1.0)).collect();
    let dofs = Dofs::new(6, &fixed, &[])
        .unwrap()
        .ordered(&[[0, 1, 2, 3, 4, 5]]);
    let pattern = Pattern::new(&[[0, 1, 2, 3, 4, 5]], &dofs);
    let system = pattern.assemble(&[[1.0; 21]], &[1.0], &dofs);
    assert_eq!((system.values.len(), system.rhs.len()), (0, 0));
}
