//! System: the heat equations on one mesh.
//!
//! M dT/dt = b − A T.
//! A holds conduction and films, less the growth of the losses with the temperature; in the steady state A T = b.

use super::across::area_m2;
use super::section::{HeatError, HeatSection};
use super::step::Flow;
use crate::fem::assembly::{Pattern, element_values, free_sums, node_sums};
use crate::fem::dofs::Dofs;
use crate::fem::quadrature::DEGREE_6;
use crate::fem::sparse::{Cholesky, SparseError};
use crate::fem::triangle;
use crate::mesh::Mesh;
use crate::outline::Point;
use std::f64::consts::PI;

/// Distance outside a triangle, as a share of its height, up to which a place still counts as inside.
const INSIDE_RATIO: f64 = 1e-7;
/// Distance of a place on a bent rim from the nearest triangle, as a share of the triangle's height, that is permitted.
const NEAR_RATIO: f64 = 0.3;
/// Temperature at which resistances are stated, °C.
const STATED_DEGC: f64 = 20.0;
/// Points and weights of the Gauss rule on 0 … 1, exact to degree 7: a film's integrand has degree 5 on a straight rim.
const GAUSS: [(f64, f64); 4] = [
    (0.069_431_844_202_973_71, 0.173_927_422_568_726_92),
    (0.330_009_478_207_571_87, 0.326_072_577_431_273_07),
    (0.669_990_521_792_428_1, 0.326_072_577_431_273_07),
    (0.930_568_155_797_026_3, 0.173_927_422_568_726_92),
];

/// The equations on one mesh.
pub(super) struct System {
    mesh: Mesh,
    dofs: Dofs,
    pattern: Pattern,
    cholesky: Cholesky,
    /// A of each element, packed, W/K.
    resting: Vec<[f64; 21]>,
    /// M of each element, packed, J/K.
    storing: Vec<[f64; 21]>,
    /// b of each unknown, W.
    load: Vec<f64>,
    /// Loss at a temperature: its value at 0 °C, W, and its slope at each element's nodes, W/K.
    loss_w: f64,
    loss_slopes: Vec<[f64; 6]>,
    has_film: bool,
}

/// A packed entry of two local nodes.
fn packed(i: usize, j: usize) -> usize {
    let (high, low) = (i.max(j), i.min(j));
    high * (high + 1) / 2 + low
}

impl System {
    pub fn new(section: &HeatSection, mesh: Mesh) -> Result<System, HeatError> {
        let dofs = Dofs::new(mesh.nodes.len(), &[], &[]).map_err(HeatError::Unknowns)?;
        let dofs = dofs.ordered(&mesh.triangles);
        let pattern = Pattern::new(&mesh.triangles, &dofs);
        let cholesky = Cholesky::new(pattern.structure()).map_err(HeatError::Sparse)?;
        let mut elements = Elements::new(section, &mesh);
        elements.add_films(section, &mesh);
        let sums = node_sums(&mesh.triangles, &elements.loads, mesh.nodes.len());
        Ok(System {
            load: free_sums(&sums, &dofs),
            resting: elements.resting,
            storing: elements.storing,
            loss_w: elements.loss_w,
            loss_slopes: elements.loss_slopes,
            has_film: elements.has_film,
            mesh,
            dofs,
            pattern,
            cholesky,
        })
    }

    pub fn mesh(&self) -> &Mesh {
        &self.mesh
    }

    pub fn n_unknowns(&self) -> usize {
        self.dofs.n_free()
    }

    /// The same temperature for all unknowns.
    pub fn even(&self, degc: f64) -> Vec<f64> {
        vec![degc; self.dofs.n_free()]
    }

    /// Steady temperatures, unknown by unknown.
    ///
    /// # Errors
    /// [`HeatError::NoCooling`], [`HeatError::Runaway`].
    pub fn steady(&mut self) -> Result<Vec<f64>, HeatError> {
        if !self.has_film {
            return Err(HeatError::NoCooling);
        }
        let ones = vec![1.0; self.resting.len()];
        let values = self
            .pattern
            .assemble(&self.resting, &ones, &self.dofs)
            .values;
        let mut solution = self.load.clone();
        // Without a positive pivot the losses outgrow the cooling: thermal runaway.
        let factor = self
            .cholesky
            .factorise(&values)
            .map_err(|_| HeatError::Runaway)?;
        factor.solve(&mut solution).map_err(HeatError::Sparse)?;
        let is_number = solution.iter().all(|degc| degc.is_finite());
        is_number.then_some(solution).ok_or(HeatError::Runaway)
    }

    /// Values of M + s A.
    fn step_values(&self, step_s: f64) -> Vec<f64> {
        let one = vec![1.0; self.resting.len()];
        let mut values = self
            .pattern
            .assemble(&self.storing, &one, &self.dofs)
            .values;
        let times = vec![step_s; self.resting.len()];
        let rest = self
            .pattern
            .assemble(&self.resting, &times, &self.dofs)
            .values;
        for (value, more) in values.iter_mut().zip(rest) {
            *value += more;
        }
        values
    }

    /// Loss of all currents, W.
    pub fn loss_w(&self, solution: &[f64]) -> f64 {
        let degc = self.dofs.expansion(solution, 1.0);
        let of_element = |(nodes, slopes): (&[u32; 6], &[f64; 6])| -> f64 {
            let values = element_values(nodes, &degc);
            values.iter().zip(slopes).map(|(t, slope)| t * slope).sum()
        };
        self.loss_w
            + self
                .mesh
                .triangles
                .iter()
                .zip(&self.loss_slopes)
                .map(of_element)
                .sum::<f64>()
    }

    /// Temperature at a place, °C; `None` if no triangle contains it.
    pub fn temperature_at(&self, solution: &[f64], at: Point) -> Option<f64> {
        let degc = self.dofs.expansion(solution, 1.0);
        let mut nearest: Option<(f64, usize, [f64; 2])> = None;
        for (index, numbers) in self.mesh.triangles.iter().enumerate() {
            let nodes = numbers.map(|node| self.mesh.nodes[node as usize]);
            let Some([x, y]) = triangle::reference_place(&nodes, at) else {
                continue;
            };
            let least = x.min(y).min(1.0 - x - y);
            if least > -NEAR_RATIO && nearest.is_none_or(|(other, ..)| least > other) {
                nearest = Some((least, index, [x, y]));
            }
            if least >= -INSIDE_RATIO {
                break;
            }
        }
        let (_, index, place) = nearest?;
        let values = element_values(&self.mesh.triangles[index], &degc);
        let shapes = triangle::shapes(place);
        Some(values.iter().zip(shapes).map(|(t, shape)| t * shape).sum())
    }
}

impl Flow for System {
    fn with_step<T>(
        &mut self,
        step_s: f64,
        work: impl FnOnce(
            &dyn Fn(&[f64]) -> Vec<f64>,
            &dyn Fn(&mut [f64]) -> Result<(), SparseError>,
        ) -> Result<T, SparseError>,
    ) -> Result<T, HeatError> {
        let values = self.step_values(step_s);
        let balance = Balance {
            mesh: &self.mesh,
            dofs: &self.dofs,
            resting: &self.resting,
            load: &self.load,
        };
        let factor = self
            .cholesky
            .factorise(&values)
            .map_err(HeatError::Sparse)?;
        work(&|degc| balance.surplus(degc), &|right| factor.solve(right)).map_err(HeatError::Sparse)
    }
}

/// Rate of change of the temperatures, times M.
struct Balance<'s> {
    mesh: &'s Mesh,
    dofs: &'s Dofs,
    resting: &'s [[f64; 21]],
    load: &'s [f64],
}

impl Balance<'_> {
    /// b − A T, W.
    fn surplus(&self, solution: &[f64]) -> Vec<f64> {
        let degc = self.dofs.expansion(solution, 1.0);
        let fluxes: Vec<[f64; 6]> = self
            .mesh
            .triangles
            .iter()
            .zip(self.resting)
            .map(|(nodes, matrix)| triangle::product(matrix, &element_values(nodes, &degc)))
            .collect();
        let sums = node_sums(&self.mesh.triangles, &fluxes, self.mesh.nodes.len());
        let out = free_sums(&sums, self.dofs);
        self.load
            .iter()
            .zip(out)
            .map(|(in_w, out_w)| in_w - out_w)
            .collect()
    }
}

/// Sums of the elements.
struct Elements {
    resting: Vec<[f64; 21]>,
    storing: Vec<[f64; 21]>,
    loads: Vec<[f64; 6]>,
    loss_w: f64,
    loss_slopes: Vec<[f64; 6]>,
    has_film: bool,
}

impl Elements {
    fn new(section: &HeatSection, mesh: &Mesh) -> Elements {
        let n = mesh.triangles.len();
        let mut elements = Elements {
            resting: Vec::with_capacity(n),
            storing: vec![[0.0; 21]; n],
            loads: vec![[0.0; 6]; n],
            loss_w: 0.0,
            loss_slopes: vec![[0.0; 6]; n],
            has_film: false,
        };
        for (index, numbers) in mesh.triangles.iter().enumerate() {
            let nodes = numbers.map(|node| mesh.nodes[node as usize]);
            let region = mesh.region[index] as usize;
            let conductivity = section.stuffs[region].conductivity_w_per_mk;
            elements
                .resting
                .push(triangle::stiffness(&nodes).map(|entry| conductivity * entry));
            elements.add_element(section, index, region, &nodes);
        }
        elements
    }

    /// Heat storage, and the losses of the currents in the element.
    fn add_element(
        &mut self,
        section: &HeatSection,
        index: usize,
        region: usize,
        nodes: &[Point; 6],
    ) {
        let capacity = section.stuffs[region].capacity_j_per_m3k;
        let joules = section
            .joules
            .iter()
            .filter(|joule| joule.regions.contains(&region));
        let joules: Vec<_> = joules.collect();
        for point in &DEGREE_6 {
            let mapping = triangle::mapping(nodes, point.place);
            let shapes = triangle::shapes(point.place);
            let volume = 2.0 * PI * mapping.point.r * mapping.determinant * point.weight;
            let (mut density, mut slope) = (0.0, 0.0);
            for joule in &joules {
                let area = area_m2(&section.outline, region, mapping.point.z);
                let at_20 = joule.current_a * joule.current_a * joule.resistance20_ohm_per_m / area;
                density += at_20 * (1.0 - STATED_DEGC * joule.alpha_per_k);
                slope += at_20 * joule.alpha_per_k;
            }
            self.loss_w += density * volume;
            for i in 0..6 {
                self.loads[index][i] += density * shapes[i] * volume;
                self.loss_slopes[index][i] += slope * shapes[i] * volume;
                for j in 0..=i {
                    let product = shapes[i] * shapes[j] * volume;
                    self.storing[index][packed(i, j)] += capacity * product;
                    self.resting[index][packed(i, j)] -= slope * product;
                }
            }
        }
    }

    /// Heat that the films carry away.
    fn add_films(&mut self, section: &HeatSection, mesh: &Mesh) {
        let mut beside = vec![usize::MAX; mesh.nodes.len()];
        for (index, numbers) in mesh.triangles.iter().enumerate() {
            for middle in &numbers[3..] {
                beside[*middle as usize] = index;
            }
        }
        for rim in &mesh.rims {
            let tag = &section.outline.curves[rim.curve_index as usize].tag;
            let Some(film) = section.films.iter().find(|film| film.tag == *tag) else {
                continue;
            };
            let index = beside[rim.nodes[2] as usize];
            let local = rim.nodes.map(|node| {
                let found = mesh.triangles[index]
                    .iter()
                    .position(|other| *other == node);
                found.unwrap_or_default()
            });
            let places = rim.nodes.map(|node| mesh.nodes[node as usize]);
            self.has_film |= film.coefficient_w_per_m2k > 0.0;
            for (t, weight) in GAUSS {
                let (shapes, slopes) = along(t);
                let sum = |of: &[f64; 3], part: fn(&Point) -> f64| -> f64 {
                    of.iter()
                        .zip(&places)
                        .map(|(share, place)| share * part(place))
                        .sum()
                };
                let length = sum(&slopes, |p| p.r).hypot(sum(&slopes, |p| p.z));
                let h =
                    film.coefficient_w_per_m2k * 2.0 * PI * sum(&shapes, |p| p.r) * length * weight;
                for a in 0..3 {
                    self.loads[index][local[a]] += h * film.ambient_degc * shapes[a];
                    for b in 0..=a {
                        self.resting[index][packed(local[a], local[b])] +=
                            h * shapes[a] * shapes[b];
                    }
                }
            }
        }
    }
}

/// Quadratic shape functions on 0 … 1 and their slopes: at the beginning, the end, the middle.
fn along(t: f64) -> ([f64; 3], [f64; 3]) {
    (
        [
            (1.0 - t) * (1.0 - 2.0 * t),
            t * (2.0 * t - 1.0),
            4.0 * t * (1.0 - t),
        ],
        [4.0 * t - 3.0, 4.0 * t - 1.0, 4.0 - 8.0 * t],
    )
}
