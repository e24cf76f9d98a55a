//! Conductivity that rises with the field: Newton's method on a smooth law.
//!
//! With σ(q), q = |∇a|² + |∇b|² for φ = a + jb, and s = σ/(ωε₀), the equations of the complex regime are
//!
//! ```text
//!   ∫ 2πr (ε ∇a + s ∇b)·∇N = 0        derivative of s in the direction (α, β): 2 s' (∇a·∇α + ∇b·∇β)
//!   ∫ 2πr (ε ∇b − s ∇a)·∇N = 0
//! ```
//!
//! and at rest ∫ 2πr σ ∇a·∇N = 0.
//! The law is introduced by continuation: its power rises from 0 in steps, and each step that
//! does not lower the residual is halved.

use super::section::{Conductivity, Regime, Section};
use super::solved::FieldError;
use super::system::{System, VACUUM_PERMITTIVITY};
use crate::fem::assembly::{FullPattern, free_sums, node_sums};
use crate::fem::sparse::Lu;
use crate::fem::triangle::{self, Sample};

/// Residual, as a share of the currents at the electrodes, at which a solution is accepted.
const RESIDUAL_ENOUGH: f64 = 1e-10;
const STEPS_MOST: usize = 30;
const HALVINGS_MOST: usize = 8;
/// Least step of the continuation, as a share of the power.
const RISE_LEAST: f64 = 1.0 / 64.0;

/// Permittivity (if any), conductivity, and its derivative with respect to the squared field, in common units.
struct Law<'s> {
    section: &'s Section,
    /// Divisor of conductivities.
    unit: f64,
    is_complex: bool,
    /// Current share of the power.
    share: f64,
}

impl<'s> Law<'s> {
    fn new(section: &'s Section) -> Self {
        let is_complex = matches!(section.regime, Regime::Complex { .. });
        let unit = match section.regime {
            Regime::Complex { frequency_hz } => {
                2.0 * std::f64::consts::PI * frequency_hz * VACUUM_PERMITTIVITY
            }
            _ => section
                .materials
                .iter()
                .map(|material| match material.conductivity {
                    Conductivity::Constant(value) => value,
                    Conductivity::Rising { at_rest, .. } => at_rest,
                })
                .fold(f64::MIN_POSITIVE, f64::max),
        };
        Self {
            section,
            unit,
            is_complex,
            share: 0.0,
        }
    }

    /// ε_r (0 at rest), s and ds/dq in a region at a squared field q.
    fn at(&self, region: u32, squared: f64) -> [f64; 3] {
        let material = &self.section.materials[region as usize];
        let permittivity = if self.is_complex {
            material.relative_permittivity
        } else {
            0.0
        };
        let (value, slope) = match material.conductivity {
            Conductivity::Constant(value) => (value, 0.0),
            Conductivity::Rising {
                at_rest,
                knee,
                power,
            } => {
                let half = 0.5 * power * self.share;
                let base = 1.0 + squared / (knee * knee);
                let value = at_rest * base.powf(half);
                (value, value * half / (base * knee * knee))
            }
        };
        [permittivity, value / self.unit, slope / self.unit]
    }
}

/// Whether conduction counts and any conductivity of a section rises with the field.
pub(super) fn is_needed(section: &Section) -> bool {
    section.regime != Regime::Capacitive
        && section
            .materials
            .iter()
            .any(|material| matches!(material.conductivity, Conductivity::Rising { .. }))
}

/// Solves from a first potential; returns the potential and the residual after each step at the full power.
pub(super) fn solve(
    section: &Section,
    system: &System,
    first: Vec<[f64; 2]>,
) -> Result<(Vec<[f64; 2]>, Vec<f64>), FieldError> {
    let mut law = Law::new(section);
    let n_parts = if law.is_complex { 2 } else { 1 };
    let pattern = FullPattern::new(&system.mesh.triangles, &system.dofs, n_parts);
    let mut solver = Lu::new(pattern.structure()).map_err(FieldError::Sparse)?;
    let mut potential = first;
    let mut rise = 1.0;
    let mut reached = 0.0;
    loop {
        law.share = f64::min(reached + rise, 1.0);
        match settle(&law, system, &pattern, &mut solver, potential.clone())? {
            Ok((found, residuals)) => {
                potential = found;
                reached = law.share;
                if reached >= 1.0 {
                    return Ok((potential, residuals));
                }
            }
            Err(residual) => {
                rise *= 0.5;
                if rise < RISE_LEAST {
                    return Err(FieldError::Newton { residual });
                }
            }
        }
    }
}

/// A potential with the residuals of its steps, or the residual at which it stuck.
type Settled = Result<(Vec<[f64; 2]>, Vec<f64>), f64>;

fn settle(
    law: &Law<'_>,
    system: &System,
    pattern: &FullPattern,
    solver: &mut Lu,
    mut potential: Vec<[f64; 2]>,
) -> Result<Settled, FieldError> {
    let mut state = State::new(law, system, &potential);
    let mut residuals = vec![state.relative];
    for _ in 0..STEPS_MOST {
        if state.relative <= RESIDUAL_ENOUGH {
            return Ok(Ok((potential, residuals)));
        }
        let blocks: Vec<&[[f64; 36]]> = state.blocks.iter().map(Vec::as_slice).collect();
        let mut step = state.residual.clone();
        solver
            .factorise(&pattern.assemble(&blocks))
            .and_then(|factor| factor.solve(&mut step))
            .map_err(FieldError::Sparse)?;
        let mut size = 1.0;
        let mut next = None;
        for _ in 0..HALVINGS_MOST {
            let tried = stepped(system, law, &potential, &step, size);
            let found = State::new(law, system, &tried);
            if found.relative < (1.0 - 0.1 * size) * state.relative {
                next = Some((tried, found));
                break;
            }
            size *= 0.5;
        }
        let Some((tried, found)) = next else {
            // Rounding leaves no further improvement.
            let is_enough = state.relative <= 1e3 * RESIDUAL_ENOUGH;
            return Ok(if is_enough {
                Ok((potential, residuals))
            } else {
                Err(state.relative)
            });
        };
        potential = tried;
        state = found;
        residuals.push(state.relative);
    }
    Ok(Err(state.relative))
}

fn stepped(
    system: &System,
    law: &Law<'_>,
    potential: &[[f64; 2]],
    step: &[f64],
    size: f64,
) -> Vec<[f64; 2]> {
    let n_parts = if law.is_complex { 2 } else { 1 };
    let mut stepped = potential.to_vec();
    for (node, value) in stepped.iter_mut().enumerate() {
        if let Some(unknown) = system.dofs.unknown(node as u32) {
            for (part, entry) in value.iter_mut().take(n_parts).enumerate() {
                *entry -= size * step[n_parts * unknown as usize + part];
            }
        }
    }
    stepped
}

/// Residual and derivative at a potential.
struct State {
    /// Residual of each unknown, parts side by side.
    residual: Vec<f64>,
    /// Its norm, divided by the norm of the currents at all nodes.
    relative: f64,
    blocks: Vec<Vec<[f64; 36]>>,
}

impl State {
    fn new(law: &Law<'_>, system: &System, potential: &[[f64; 2]]) -> Self {
        let n_parts = if law.is_complex { 2 } else { 1 };
        let mesh = &system.mesh;
        let n_triangles = mesh.triangles.len();
        let mut blocks = vec![Vec::with_capacity(n_triangles); n_parts * n_parts];
        let mut sides: Vec<Vec<[f64; 6]>> = vec![Vec::with_capacity(n_triangles); n_parts];
        for (index, numbers) in mesh.triangles.iter().enumerate() {
            let nodes = numbers.map(|node| mesh.nodes[node as usize]);
            let samples: Vec<Sample> = triangle::samples(&nodes).collect();
            let values = [0, 1].map(|part| numbers.map(|node| potential[node as usize][part]));
            element(
                law,
                mesh.region[index],
                &samples,
                &values,
                &mut blocks,
                &mut sides,
            );
        }
        let mut residual = vec![0.0; n_parts * system.dofs.n_free()];
        let mut whole = 0.0;
        for (part, vectors) in sides.iter().enumerate() {
            let sums = node_sums(&mesh.triangles, vectors, mesh.nodes.len());
            whole += sums.iter().map(|value| value * value).sum::<f64>();
            for (unknown, value) in free_sums(&sums, &system.dofs).into_iter().enumerate() {
                residual[n_parts * unknown + part] = value;
            }
        }
        let own: f64 = residual.iter().map(|value| value * value).sum();
        Self {
            residual,
            relative: (own / whole.max(f64::MIN_POSITIVE)).sqrt(),
            blocks,
        }
    }
}

/// Adds one triangle's residual and derivative.
fn element(
    law: &Law<'_>,
    region: u32,
    samples: &[Sample],
    values: &[[f64; 6]; 2],
    blocks: &mut [Vec<[f64; 36]>],
    sides: &mut [Vec<[f64; 6]>],
) {
    let n_parts = sides.len();
    let a: Vec<[f64; 2]> = samples.iter().map(|s| s.gradient(&values[0])).collect();
    let b: Vec<[f64; 2]> = samples.iter().map(|s| s.gradient(&values[1])).collect();
    let squared = |g: [f64; 2]| g[0] * g[0] + g[1] * g[1];
    let laws: Vec<[f64; 3]> = (0..samples.len())
        .map(|q| law.at(region, squared(a[q]) + squared(b[q])))
        .collect();
    let part = |which: usize| -> Vec<f64> { laws.iter().map(|law| law[which]).collect() };
    let (permittivity, conductivity) = (part(0), part(1));
    let doubled = |sign: f64| -> Vec<f64> { laws.iter().map(|law| 2.0 * sign * law[2]).collect() };
    let displacement = triangle::full(&triangle::stiffness_with(samples, &permittivity));
    let conduction = triangle::full(&triangle::stiffness_with(samples, &conductivity));
    let product = |matrix: &[f64; 36], value: &[f64; 6]| -> [f64; 6] {
        std::array::from_fn(|row| {
            matrix[6 * row..6 * row + 6]
                .iter()
                .zip(value)
                .map(|(entry, value)| entry * value)
                .sum()
        })
    };
    if n_parts == 1 {
        let mut matrix = conduction;
        sides[0].push(product(&conduction, &values[0]));
        triangle::add_rank_one(&mut matrix, samples, &doubled(1.0), &a, &a);
        blocks[0].push(matrix);
        return;
    }
    let (da, db) = (
        product(&displacement, &values[0]),
        product(&displacement, &values[1]),
    );
    let (ca, cb) = (
        product(&conduction, &values[0]),
        product(&conduction, &values[1]),
    );
    sides[0].push(std::array::from_fn(|row| da[row] + cb[row]));
    sides[1].push(std::array::from_fn(|row| db[row] - ca[row]));
    let mut real_real = displacement;
    triangle::add_rank_one(&mut real_real, samples, &doubled(1.0), &b, &a);
    let mut real_imaginary = conduction;
    triangle::add_rank_one(&mut real_imaginary, samples, &doubled(1.0), &b, &b);
    let mut imaginary_real = conduction.map(|entry| -entry);
    triangle::add_rank_one(&mut imaginary_real, samples, &doubled(-1.0), &a, &a);
    let mut imaginary_imaginary = displacement;
    triangle::add_rank_one(&mut imaginary_imaginary, samples, &doubled(-1.0), &a, &b);
    for (block, matrix) in blocks.iter_mut().zip([
        real_real,
        real_imaginary,
        imaginary_real,
        imaginary_imaginary,
    ]) {
        block.push(matrix);
    }
}
