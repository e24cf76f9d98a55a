//! System of equations of a mesh, and its solution.

use super::section::{Conductivity, Regime, Section};
use super::solution::Neighbours;
use super::solved::FieldError;
use crate::fem::assembly::{self, Pattern};
use crate::fem::dofs::Dofs;
use crate::fem::sparse::{Cholesky, QuasiDefinite};
use crate::fem::triangle;
use crate::mesh::Mesh;

/// Vacuum permittivity, F/m (CODATA 2018).
pub const VACUUM_PERMITTIVITY: f64 = 8.854_187_812_8e-12;

/// Factors whose structure is reused by the next solve on the same topology.
#[derive(Clone)]
enum Solver {
    Real(Cholesky),
    Complex(QuasiDefinite),
}

/// A mesh with its unknowns and its element matrices.
#[derive(Clone)]
pub(super) struct System {
    pub mesh: Mesh,
    pub neighbours: Neighbours,
    /// ∫ 2πr ∇N_i·∇N_j dA of each triangle, packed.
    pub matrices: Vec<[f64; 21]>,
    pub dofs: Dofs,
    pattern: Pattern,
    solver: Solver,
}

impl System {
    /// Numbers the unknowns of a mesh and computes the structure of its equations.
    pub fn new(section: &Section, mesh: Mesh) -> Result<Self, FieldError> {
        let dofs = unknowns(section, &mesh)?;
        let pattern = Pattern::new(&mesh.triangles, &dofs);
        let solver = match section.regime {
            Regime::Complex { .. } => Solver::Complex(
                QuasiDefinite::new(pattern.structure()).map_err(FieldError::Sparse)?,
            ),
            _ => Solver::Real(Cholesky::new(pattern.structure()).map_err(FieldError::Sparse)?),
        };
        Ok(Self {
            neighbours: Neighbours::new(&mesh),
            matrices: matrices(&mesh),
            mesh,
            dofs,
            pattern,
            solver,
        })
    }

    /// Number of unknowns, with both parts of a complex unknown counted.
    pub fn n_unknowns(&self) -> usize {
        match self.solver {
            Solver::Real(_) => self.dofs.n_free(),
            Solver::Complex(_) => 2 * self.dofs.n_free(),
        }
    }

    /// Moves the nodes of the mesh; its topology stays.
    pub fn move_nodes(&mut self, nodes: Vec<crate::outline::Point>) {
        self.mesh.nodes = nodes;
        self.matrices = matrices(&self.mesh);
        self.neighbours.measure(&self.mesh);
    }

    /// Solves with the conductivities at zero field.
    pub fn solve_linear(&mut self, section: &Section) -> Result<Vec<[f64; 2]>, FieldError> {
        let per_region = coefficients(section);
        let coefficient = |part: usize| -> Vec<f64> {
            self.mesh
                .region
                .iter()
                .map(|&region| per_region[region as usize][part])
                .collect()
        };
        match &mut self.solver {
            Solver::Real(cholesky) => {
                let system = self
                    .pattern
                    .assemble(&self.matrices, &coefficient(0), &self.dofs);
                let mut values = system.rhs;
                cholesky
                    .factorise(&system.values)
                    .and_then(|factor| factor.solve(&mut values))
                    .map_err(FieldError::Sparse)?;
                let all = self.dofs.expansion(&values, 1.0);
                Ok(all.into_iter().map(|value| [value, 0.0]).collect())
            }
            Solver::Complex(solver) => {
                let real = self
                    .pattern
                    .assemble(&self.matrices, &coefficient(0), &self.dofs);
                let imaginary = self
                    .pattern
                    .assemble(&self.matrices, &coefficient(1), &self.dofs);
                let (mut x, mut y) = (real.rhs, imaginary.rhs);
                solver
                    .factorise(&real.values, &imaginary.values)
                    .and_then(|factor| factor.solve(&mut x, &mut y))
                    .map_err(FieldError::Sparse)?;
                let real = self.dofs.expansion(&x, 1.0);
                let imaginary = self.dofs.expansion(&y, 0.0);
                Ok(real
                    .into_iter()
                    .zip(imaginary)
                    .map(|(x, y)| [x, y])
                    .collect())
            }
        }
    }

    /// Electric energy ½ ∫ ε |E|² over the whole turn, J.
    pub fn energy(&self, section: &Section, potential: &[[f64; 2]]) -> f64 {
        let permittivity: Vec<f64> = self
            .mesh
            .region
            .iter()
            .map(|&region| {
                VACUUM_PERMITTIVITY * section.materials[region as usize].relative_permittivity
            })
            .collect();
        [0, 1]
            .map(|part| {
                let values: Vec<f64> = potential.iter().map(|value| value[part]).collect();
                assembly::energy(&self.mesh.triangles, &self.matrices, &permittivity, &values)
            })
            .iter()
            .sum()
    }
}

fn matrices(mesh: &Mesh) -> Vec<[f64; 21]> {
    mesh.triangles
        .iter()
        .map(|numbers| triangle::stiffness(&numbers.map(|node| mesh.nodes[node as usize])))
        .collect()
}

/// Coefficient of each region, real and imaginary part: ε_r, or σ over the greatest σ, or (1 + j)(ε_r − jσ/(ωε₀)).
pub(super) fn coefficients(section: &Section) -> Vec<[f64; 2]> {
    let conductivity = |index: usize| match section.materials[index].conductivity {
        Conductivity::Constant(value) => value,
        Conductivity::Rising { at_rest, .. } => at_rest,
    };
    let n_regions = section.materials.len();
    let greatest = (0..n_regions).map(conductivity).fold(0.0, f64::max);
    (0..n_regions)
        .map(|index| {
            let permittivity = section.materials[index].relative_permittivity;
            match section.regime {
                Regime::Capacitive => [permittivity, 0.0],
                Regime::Resistive => [conductivity(index) / greatest, 0.0],
                Regime::Complex { frequency_hz } => {
                    let turn = 2.0 * std::f64::consts::PI * frequency_hz * VACUUM_PERMITTIVITY;
                    let loss = conductivity(index) / turn;
                    // Rotated by an eighth of a turn, the second part of ε_r − js is never greater than the first,
                    // so a factorisation without pivoting stays accurate however well a region conducts.
                    [permittivity + loss, permittivity - loss]
                }
            }
        })
        .collect()
}

/// Nodes that are held at a potential, and groups of nodes that share an unknown one.
fn unknowns(section: &Section, mesh: &Mesh) -> Result<Dofs, FieldError> {
    let mut held: Vec<Option<f64>> = vec![None; mesh.nodes.len()];
    let mut tied: Vec<Vec<u32>> = vec![Vec::new(); section.floating.len()];
    // The condition of a tag is looked up once for each curve, not for each edge.
    let volts: Vec<Option<f64>> = section
        .outline
        .curves
        .iter()
        .map(|curve| {
            let found = section.potentials.iter().find(|(tag, _)| *tag == curve.tag);
            found.map(|(_, volts)| *volts)
        })
        .collect();
    let groups: Vec<Option<usize>> = section
        .outline
        .curves
        .iter()
        .map(|curve| section.floating.iter().position(|tag| *tag == curve.tag))
        .collect();
    for rim in &mesh.rims {
        let curve = rim.curve_index as usize;
        if let Some(volts) = volts[curve] {
            for node in rim.nodes {
                held[node as usize] = Some(volts);
            }
        }
        if let Some(group) = groups[curve] {
            tied[group].extend(rim.nodes);
        }
    }
    let fixed: Vec<(u32, f64)> = held
        .iter()
        .enumerate()
        .filter_map(|(node, volts)| volts.map(|volts| (node as u32, volts)))
        .collect();
    for group in &mut tied {
        group.sort_unstable();
        group.dedup();
    }
    tied.retain(|group| !group.is_empty());
    let dofs = Dofs::new(mesh.nodes.len(), &fixed, &tied).map_err(FieldError::Unknowns)?;
    Ok(dofs.ordered(&mesh.triangles))
}
