//! Assembly of element matrices to a sparse system, and energy and fluxes of a solution.
//!
//! **What.** [`Pattern`]: the position of the entries of each element, computed once; [`Pattern::assemble`]: the values for any coefficients.
//!
//! **Why separate.** A section is solved many times with the same topology; the sorting is done once.
//!
//! **Invariants.** Rows of a column are sorted; the diagonal is always present, first in its column of the lower triangle.
//! Two local nodes of one element may share an unknown; their off-diagonal entry then counts twice on the diagonal.
//! Entries are added in the order of elements, so the same input gives the same bits.
//!
//! **Not here.** Element integrals (`triangle`), factorisation (`sparse`).
//!
//! **Source.** Derived here.

use super::dofs::Dofs;
use super::ordering::FIXED;
use super::sparse::Structure;
use super::triangle;

/// Position of each entry of each element matrix in the lower triangle of the system.
#[derive(Clone, Debug)]
pub struct Pattern {
    structure: Structure,
    /// Position of each packed entry among the values; `n_entries` for an entry that is dropped.
    slots: Vec<[u32; 21]>,
    /// (element, packed entry) of off-diagonal pairs that share an unknown.
    doubled: Vec<(u32, u32)>,
    /// Elements with both fixed and free nodes.
    mixed: Vec<(u32, [u32; 6])>,
    n_nodes: usize,
}

/// Values of the lower triangle and the right-hand side.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct System {
    /// Values of the lower triangle, `[n_entries]`, in the order of the pattern's structure.
    pub values: Vec<f64>,
    /// Right-hand side, `[n_free]`: minus the contribution of the fixed nodes.
    pub rhs: Vec<f64>,
}

impl Pattern {
    /// Computes the pattern of a mesh for a set of unknowns.
    ///
    /// # Shapes
    /// `triangles` [n_triangles, 6]: nodes in the order of [`triangle`].
    ///
    /// # Panics
    /// If a triangle names a node that `dofs` does not have.
    ///
    /// ```
    /// use jointwright_numerics::fem::{assembly::Pattern, dofs::Dofs};
    /// let dofs = Dofs::new(6, &[(0, 1.0)], &[]).unwrap();
    /// let pattern = Pattern::new(&[[0, 1, 2, 3, 4, 5]], &dofs);
    /// assert_eq!(pattern.structure().n(), 5);
    /// assert_eq!(pattern.structure().n_entries(), 15);
    /// ```
    pub fn new(triangles: &[[u32; 6]], dofs: &Dofs) -> Self {
        let local = local_unknowns::<6>(triangles, dofs);
        let mut slots = vec![[FIXED; 21]; triangles.len()];
        let mut doubled = Vec::new();
        let (starts, rows) = columns(&local, dofs.n_free(), true, |place| {
            let entry = packed(place.row_node, place.column_node);
            slots[place.element][entry] = place.slot;
            if place.is_diagonal && place.row_node < place.column_node {
                doubled.push((place.element as u32, entry as u32));
            }
        });
        let n_entries = rows.len() as u32;
        for slot in slots.as_flattened_mut() {
            *slot = (*slot).min(n_entries);
        }
        let is_mixed = |unknowns: &[u32; 6]| {
            unknowns.contains(&FIXED) && unknowns.iter().any(|&unknown| unknown != FIXED)
        };
        let mixed = (0..triangles.len())
            .filter(|&element| is_mixed(&local[element]))
            .map(|element| (element as u32, triangles[element]))
            .collect();
        Self {
            structure: Structure::of_sorted(starts, rows, dofs.is_ordered()),
            slots,
            doubled,
            mixed,
            n_nodes: dofs.n_nodes(),
        }
    }

    /// The structure of the lower triangle, for a factorisation.
    ///
    /// ```
    /// use jointwright_numerics::fem::{assembly::Pattern, dofs::Dofs, sparse::Cholesky};
    /// let dofs = Dofs::new(6, &[(0, 1.0)], &[]).unwrap();
    /// let pattern = Pattern::new(&[[0, 1, 2, 3, 4, 5]], &dofs);
    /// assert!(Cholesky::new(pattern.structure()).is_ok());
    /// ```
    pub fn structure(&self) -> &Structure {
        &self.structure
    }

    /// Sums element matrices, each times its coefficient.
    ///
    /// The system of a complex coefficient a + jb is assembled by two calls, one with every a and one with every b,
    /// and solved by [`super::sparse::QuasiDefinite`].
    ///
    /// # Shapes
    /// `matrices` `[n_triangles]` packed; `coefficients` `[n_triangles]`.
    ///
    /// # Panics
    /// If lengths differ from the pattern's, or `dofs` numbers other nodes.
    ///
    /// ```
    /// use jointwright_numerics::fem::{assembly::Pattern, dofs::Dofs, triangle};
    /// use jointwright_numerics::outline::Point;
    /// let nodes = triangle::straight(Point::new(1.0, 0.0), Point::new(2.0, 0.0), Point::new(1.0, 1.0));
    /// let dofs = Dofs::new(6, &[(0, 1.0)], &[]).unwrap();
    /// let pattern = Pattern::new(&[[0, 1, 2, 3, 4, 5]], &dofs);
    /// let matrix = triangle::stiffness(&nodes);
    /// let system = pattern.assemble(&[matrix], &[3.0], &dofs);
    /// assert_eq!(system.values[0], 3.0 * matrix[2]); // node 1 is unknown 0
    /// assert_eq!(system.rhs[0], -3.0 * matrix[1]);
    /// ```
    pub fn assemble(&self, matrices: &[[f64; 21]], coefficients: &[f64], dofs: &Dofs) -> System {
        let mut system = System::default();
        self.assemble_into(matrices, coefficients, dofs, &mut system);
        system
    }

    /// Does the same as [`Pattern::assemble`], into a system whose memory is reused.
    ///
    /// # Panics
    /// As [`Pattern::assemble`].
    ///
    /// ```
    /// use jointwright_numerics::fem::assembly::{Pattern, System};
    /// use jointwright_numerics::fem::dofs::Dofs;
    /// let dofs = Dofs::new(6, &[(0, 1.0)], &[]).unwrap();
    /// let pattern = Pattern::new(&[[0, 1, 2, 3, 4, 5]], &dofs);
    /// let mut system = System::default();
    /// pattern.assemble_into(&[[1.0; 21]], &[3.0], &dofs, &mut system);
    /// assert_eq!(system, pattern.assemble(&[[1.0; 21]], &[3.0], &dofs));
    /// ```
    pub fn assemble_into(
        &self,
        matrices: &[[f64; 21]],
        coefficients: &[f64],
        dofs: &Dofs,
        system: &mut System,
    ) {
        let slots = &self.slots;
        assert_eq!(matrices.len(), slots.len());
        assert_eq!(coefficients.len(), slots.len());
        assert_eq!(dofs.n_nodes(), self.n_nodes);
        assert_eq!(dofs.n_free(), self.structure.n());
        let n_entries = self.structure.n_entries();
        let values = &mut system.values;
        values.clear();
        // One more value takes the dropped entries: cheaper than a test at every entry.
        values.resize(n_entries + 1, 0.0);
        for ((slots, matrix), coefficient) in slots.iter().zip(matrices).zip(coefficients) {
            for (&slot, entry) in slots.iter().zip(matrix) {
                values[slot as usize] += coefficient * entry;
            }
        }
        for &(element, entry) in &self.doubled {
            let (element, entry) = (element as usize, entry as usize);
            let slot = slots[element][entry] as usize;
            values[slot] += coefficients[element] * matrices[element][entry];
        }
        values.pop();
        system.rhs.clear();
        system.rhs.resize(self.structure.n(), 0.0);
        for (element, nodes) in &self.mixed {
            let element = *element as usize;
            // Free nodes hold 0 among the fixed values.
            let fixed = element_values(nodes, dofs.values());
            let fluxes = triangle::product(&matrices[element], &fixed);
            for (&node, flux) in nodes.iter().zip(fluxes) {
                let unknown = dofs.unknowns()[node as usize];
                if unknown != FIXED {
                    system.rhs[unknown as usize] -= coefficients[element] * flux;
                }
            }
        }
    }
}

/// Position of each entry of each full element matrix in an unsymmetric system, as Newton's method needs it.
///
/// With two parts, unknown u of part p (0 real, 1 imaginary) is row and column 2u + p.
#[derive(Clone, Debug)]
pub struct FullPattern {
    structure: Structure,
    n_parts: usize,
    n_triangles: usize,
    /// Position among the values for each row and column of each element, parts side by side; `n_entries` for an entry that is dropped.
    slots: Vec<u32>,
}

impl FullPattern {
    /// Computes the pattern of a mesh for a set of unknowns, with one part or with two (a complex field).
    ///
    /// # Panics
    /// If a triangle names a node that `dofs` does not have, or the number of parts is neither one nor two.
    ///
    /// ```
    /// use jointwright_numerics::fem::{assembly::FullPattern, dofs::Dofs};
    /// let dofs = Dofs::new(6, &[(0, 1.0)], &[]).unwrap();
    /// let pattern = FullPattern::new(&[[0, 1, 2, 3, 4, 5]], &dofs, 2);
    /// assert_eq!(pattern.structure().n_entries(), 4 * 25);
    /// ```
    pub fn new(triangles: &[[u32; 6]], dofs: &Dofs, n_parts: usize) -> Self {
        assert!(n_parts == 1 || n_parts == 2);
        if n_parts == 1 {
            Self::of_width::<6>(triangles, dofs)
        } else {
            Self::of_width::<12>(triangles, dofs)
        }
    }

    fn of_width<const WIDTH: usize>(triangles: &[[u32; 6]], dofs: &Dofs) -> Self {
        let n_parts = WIDTH / 6;
        let local = local_unknowns::<WIDTH>(triangles, dofs);
        let mut slots = vec![FIXED; triangles.len() * WIDTH * WIDTH];
        let (starts, rows) = columns(&local, n_parts * dofs.n_free(), false, |place| {
            let row = place.element * WIDTH + place.row_node;
            slots[row * WIDTH + place.column_node] = place.slot;
        });
        let n_entries = rows.len() as u32;
        for slot in &mut slots {
            *slot = (*slot).min(n_entries);
        }
        Self {
            structure: Structure::of_sorted(starts, rows, false),
            n_parts,
            n_triangles: triangles.len(),
            slots,
        }
    }

    /// The structure of the whole matrix, for [`super::sparse::Lu`].
    ///
    /// ```
    /// use jointwright_numerics::fem::{assembly::FullPattern, dofs::Dofs};
    /// let dofs = Dofs::new(6, &[], &[]).unwrap();
    /// assert_eq!(FullPattern::new(&[[0, 1, 2, 3, 4, 5]], &dofs, 2).structure().n(), 12);
    /// ```
    pub fn structure(&self) -> &Structure {
        &self.structure
    }

    /// Sums full element matrices.
    ///
    /// # Shapes
    /// `blocks`: for each part of the rows and, within it, each part of the columns, the matrices [n_triangles, 36] by rows.
    ///
    /// # Panics
    /// If lengths differ from the pattern's.
    ///
    /// ```
    /// use jointwright_numerics::fem::{assembly::FullPattern, dofs::Dofs};
    /// let dofs = Dofs::new(6, &[], &[]).unwrap();
    /// let pattern = FullPattern::new(&[[0, 1, 2, 3, 4, 5]], &dofs, 1);
    /// let matrix: [f64; 36] = std::array::from_fn(|entry| entry as f64);
    /// // Columns are stored one after another: entry (1, 0) follows (0, 0).
    /// assert_eq!(pattern.assemble(&[&[matrix]])[..2], [0.0, 6.0]);
    /// ```
    pub fn assemble(&self, blocks: &[&[[f64; 36]]]) -> Vec<f64> {
        let n_parts = self.n_parts;
        assert_eq!(blocks.len(), n_parts * n_parts);
        let width = 6 * n_parts;
        // One more value takes the dropped entries.
        let mut values = vec![0.0; self.structure.n_entries() + 1];
        for (block, matrices) in blocks.iter().enumerate() {
            assert_eq!(matrices.len(), self.n_triangles);
            let (row_part, column_part) = (block / n_parts, block % n_parts);
            for (slots, matrix) in self.slots.chunks_exact(width * width).zip(*matrices) {
                for (b, line) in matrix.chunks_exact(6).enumerate() {
                    let row_slots = &slots[(n_parts * b + row_part) * width..][..width];
                    for (a, entry) in line.iter().enumerate() {
                        values[row_slots[n_parts * a + column_part] as usize] += entry;
                    }
                }
            }
        }
        values.pop();
        values
    }
}

/// Index of the entry of two local nodes in a packed element matrix.
const fn packed(a: usize, b: usize) -> usize {
    if a >= b {
        a * (a + 1) / 2 + b
    } else {
        b * (b + 1) / 2 + a
    }
}

/// Unknowns of each element, parts side by side, [n_triangles, WIDTH = 6 n_parts].
fn local_unknowns<const WIDTH: usize>(triangles: &[[u32; 6]], dofs: &Dofs) -> Vec<[u32; WIDTH]> {
    let unknowns = dofs.unknowns();
    let n_parts = WIDTH / 6;
    let of_triangle = |nodes: &[u32; 6]| {
        std::array::from_fn(|index| match unknowns[nodes[index / n_parts] as usize] {
            FIXED => FIXED,
            unknown => unknown * n_parts as u32 + (index % n_parts) as u32,
        })
    };
    triangles.iter().map(of_triangle).collect()
}

/// Position of the entry of two local nodes of an element.
struct Place {
    element: usize,
    row_node: usize,
    column_node: usize,
    slot: u32,
    is_diagonal: bool,
}

/// Builds the columns one after another: the start and the sorted rows of each; also returns the position of each pair of local nodes.
///
/// `local`: unknowns of the elements, a fixed number for each (the inner loop divides by it); with `is_lower`, only rows from the diagonal on.
fn columns<const WIDTH: usize>(
    local: &[[u32; WIDTH]],
    n_free: usize,
    is_lower: bool,
    mut tell: impl FnMut(Place),
) -> (Vec<u32>, Vec<u32>) {
    let (visit_starts, visits) = visits(local.as_flattened(), n_free);
    let mut starts = Vec::with_capacity(n_free + 1);
    let mut rows: Vec<u32> = Vec::with_capacity(8 * n_free);
    // One more than the position of a row in the current column; at most `start` if only earlier columns had it.
    let mut places = vec![0; n_free];
    starts.push(0);
    for column in 0..n_free {
        let start = rows.len();
        let first = if is_lower { column as u32 } else { 0 };
        let visits = &visits[visit_starts[column] as usize..visit_starts[column + 1] as usize];
        let unknowns_of = |visit: u32| &local[visit as usize / WIDTH];
        rows.push(column as u32);
        places[column] = start as u32 + 1;
        for &visit in visits {
            for &row in unknowns_of(visit) {
                if row != FIXED && row >= first && places[row as usize] <= start as u32 {
                    places[row as usize] = start as u32 + 1;
                    rows.push(row);
                }
            }
        }
        rows[start..].sort_unstable();
        for (slot, &row) in rows.iter().enumerate().skip(start) {
            places[row as usize] = slot as u32 + 1;
        }
        for &visit in visits {
            for (row_node, &row) in unknowns_of(visit).iter().enumerate() {
                if row != FIXED && row >= first {
                    tell(Place {
                        element: visit as usize / WIDTH,
                        row_node,
                        column_node: visit as usize % WIDTH,
                        slot: places[row as usize] - 1,
                        is_diagonal: row == column as u32,
                    });
                }
            }
        }
        starts.push(rows.len() as u32);
    }
    (starts, rows)
}

/// Positions of each unknown in `local`: the start of its list, and the lists.
fn visits(local: &[u32], n_free: usize) -> (Vec<u32>, Vec<u32>) {
    assert!(local.len() < FIXED as usize);
    let mut starts = vec![0; n_free + 2];
    for &unknown in local.iter().filter(|unknown| **unknown != FIXED) {
        starts[unknown as usize + 2] += 1;
    }
    for unknown in 0..n_free {
        starts[unknown + 2] += starts[unknown + 1];
    }
    // starts[u + 1] is the slot of the next visit of u; at the end it is the start of the list of u + 1.
    let mut lists = vec![0; starts[n_free + 1] as usize];
    for (index, &unknown) in local.iter().enumerate() {
        if unknown != FIXED {
            let next = &mut starts[unknown as usize + 1];
            lists[*next as usize] = index as u32;
            *next += 1;
        }
    }
    (starts, lists)
}

/// The six values at the nodes of one triangle.
///
/// # Panics
/// If a node has no value.
///
/// ```
/// use jointwright_numerics::fem::assembly::element_values;
/// let values = [0.0, 10.0, 20.0, 30.0, 40.0, 50.0];
/// assert_eq!(element_values(&[5, 4, 3, 2, 1, 0], &values)[0], 50.0);
/// ```
#[inline]
pub fn element_values(nodes: &[u32; 6], values: &[f64]) -> [f64; 6] {
    nodes.map(|node| values[node as usize])
}

/// Sums of six values of each element, for every node, `[n_nodes]`.
///
/// # Panics
/// If lengths differ or a triangle names a node beyond `n_nodes`.
///
/// ```
/// use jointwright_numerics::fem::assembly::node_sums;
/// let sums = node_sums(&[[0, 1, 2, 3, 4, 5], [0, 2, 6, 5, 7, 8]], &[[1.0; 6], [2.0; 6]], 9);
/// assert_eq!(sums[..3], [3.0, 1.0, 3.0]);
/// ```
pub fn node_sums(triangles: &[[u32; 6]], vectors: &[[f64; 6]], n_nodes: usize) -> Vec<f64> {
    assert_eq!(triangles.len(), vectors.len());
    let mut sums = vec![0.0; n_nodes];
    for (nodes, vector) in triangles.iter().zip(vectors) {
        for (&node, value) in nodes.iter().zip(vector) {
            sums[node as usize] += value;
        }
    }
    sums
}

/// Sums over the nodes of each unknown, `[n_free]`: a residual from the result of [`node_sums`] or [`fluxes`].
///
/// # Panics
/// If `sums` is not of length n_nodes.
///
/// ```
/// use jointwright_numerics::fem::{assembly::free_sums, dofs::Dofs};
/// let dofs = Dofs::new(4, &[(1, 5.0)], &[vec![0, 3]]).unwrap();
/// assert_eq!(free_sums(&[1.0, 10.0, 100.0, 1000.0], &dofs), [1001.0, 100.0]);
/// ```
pub fn free_sums(sums: &[f64], dofs: &Dofs) -> Vec<f64> {
    assert_eq!(sums.len(), dofs.n_nodes());
    let mut free = vec![0.0; dofs.n_free()];
    for (value, &unknown) in sums.iter().zip(dofs.unknowns()) {
        if unknown != FIXED {
            free[unknown as usize] += value;
        }
    }
    free
}

/// Flux into the section at every node, Σ c K φ, `[n_nodes]`: with permittivities and volts, coulombs.
///
/// It is 0, apart from rounding, at free nodes; its sum over a conductor's nodes is the conductor's charge.
///
/// # Shapes
/// `triangles`, `matrices`, `coefficients` `[n_triangles]`; `values` `[n_nodes]`.
///
/// # Panics
/// If lengths differ.
///
/// ```
/// use jointwright_numerics::fem::{assembly::fluxes, triangle};
/// use jointwright_numerics::outline::Point;
/// let nodes = triangle::straight(Point::new(1.0, 0.0), Point::new(2.0, 0.0), Point::new(1.0, 1.0));
/// let flows = fluxes(&[[0, 1, 2, 3, 4, 5]], &[triangle::stiffness(&nodes)], &[2.0], &nodes.map(|node| node.z));
/// // What flows in flows out, and little of it is nothing.
/// assert!(flows.iter().sum::<f64>().abs() < 1e-13 && flows[2] > 0.1);
/// ```
pub fn fluxes(
    triangles: &[[u32; 6]],
    matrices: &[[f64; 21]],
    coefficients: &[f64],
    values: &[f64],
) -> Vec<f64> {
    assert_eq!(triangles.len(), matrices.len());
    assert_eq!(triangles.len(), coefficients.len());
    let mut sums = vec![0.0; values.len()];
    for ((nodes, matrix), coefficient) in triangles.iter().zip(matrices).zip(coefficients) {
        let products = triangle::product(matrix, &element_values(nodes, values));
        for (&node, flux) in nodes.iter().zip(products) {
            sums[node as usize] += coefficient * flux;
        }
    }
    sums
}

/// Energy ½ Σ c φ·K φ: with permittivities and volts, joules.
///
/// For a complex field in rms or peak values, add the energies of its two parts.
///
/// # Shapes
/// `triangles`, `matrices`, `coefficients` `[n_triangles]`; `values` `[n_nodes]`.
///
/// # Panics
/// If lengths differ.
///
/// ```
/// use jointwright_numerics::fem::{assembly::energy, triangle};
/// use jointwright_numerics::outline::Point;
/// let nodes = triangle::straight(Point::new(1.0, 0.0), Point::new(2.0, 0.0), Point::new(1.0, 1.0));
/// let stored = energy(&[[0, 1, 2, 3, 4, 5]], &[triangle::stiffness(&nodes)], &[2.0], &nodes.map(|node| node.z));
/// // ½ · 2 · 1² in each cubic metre of the ring.
/// assert!((stored - std::f64::consts::PI * 4.0 / 3.0).abs() < 1e-14);
/// ```
pub fn energy(
    triangles: &[[u32; 6]],
    matrices: &[[f64; 21]],
    coefficients: &[f64],
    values: &[f64],
) -> f64 {
    assert_eq!(triangles.len(), matrices.len());
    assert_eq!(triangles.len(), coefficients.len());
    let mut sum = 0.0;
    for ((nodes, matrix), coefficient) in triangles.iter().zip(matrices).zip(coefficients) {
        let own = element_values(nodes, values);
        sum += coefficient * triangle::bilinear(matrix, &own, &own);
    }
    0.5 * sum
}

#[cfg(test)]
#[path = "assembly_tests.rs"]
mod tests;
