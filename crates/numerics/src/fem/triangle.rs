//! The quadratic triangle: shapes, mapping, and integrals with weight 2πr.
//!
//! ```text
//!   y
//!   2               corners 0 1 2, mid-nodes 3 on 0–1, 4 on 1–2, 5 on 2–0;
//!   |\              reference coordinates (x, y): corner 0 at (0, 0), 1 at (1, 0), 2 at (0, 1);
//!   5 4             curved: a mid-node lies anywhere near the middle of its edge
//!   |  \
//!   0-3-1 x
//! ```
//!
//! **What.** Shape functions, mapping and integrals of one element; a field is six values at its nodes.
//!
//! **Why separate.** This is the inner loop of every solution, and only this file knows the shape functions.
//!
//! **Invariants.** Symmetric 6×6 matrices are packed by rows of the lower triangle: entry (i, j), j ≤ i, at i(i+1)/2 + j.
//! A straight triangle has its mid-nodes in the middle of its edges within rounding; its matrix is exact.
//! Matrices hold only geometry; coefficients are multiplied afterwards or given for each quadrature point.
//!
//! **Not here.** Sums over elements (`assembly`); free and fixed nodes (`dofs`).
//!
//! **Source.** Textbook isoparametric elements; the exact matrix of the straight triangle is derived at `EXACT`.

use super::quadrature::{DEGREE_4, DEGREE_6, QuadraturePoint};
use crate::outline::Point;
use std::f64::consts::PI;

/// The straight triangle's corners and mid-nodes in reference coordinates.
const REFERENCE_NODES: [[f64; 2]; 6] = [
    [0.0, 0.0],
    [1.0, 0.0],
    [0.0, 1.0],
    [0.5, 0.0],
    [0.5, 0.5],
    [0.0, 0.5],
];

/// Place of a reference point in the section, with the derivatives there.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mapping {
    /// Its place, m.
    pub point: Point,
    /// Gradient of each shape function (∂/∂r, ∂/∂z), 1/m.
    pub gradients: [[f64; 2]; 6],
    /// Determinant of the Jacobian, m²: positive if the corners are counter-clockwise and nothing is folded.
    pub determinant: f64,
}

/// A quadrature point of an element, ready for summation.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sample {
    /// Its place, m.
    pub point: Point,
    /// Gradient of each shape function (∂/∂r, ∂/∂z), 1/m.
    pub gradients: [[f64; 2]; 6],
    /// 2πr times the determinant times the weight of the rule, m³: the samples of an element add up to the volume of its ring.
    pub weight: f64,
}

impl Sample {
    /// Gradient (∂/∂r, ∂/∂z) of the field with these values at the nodes, in the values' unit per metre.
    ///
    /// ```
    /// use jointwright_numerics::{fem::triangle, outline::Point};
    /// let nodes = triangle::straight(Point::new(1.0, 0.0), Point::new(2.0, 0.0), Point::new(1.0, 1.0));
    /// let values = nodes.map(|node| 3.0 * node.r + 5.0 * node.z);
    /// for sample in triangle::samples(&nodes) {
    ///     let [along_r, along_z] = sample.gradient(&values);
    ///     assert!((along_r - 3.0).abs() < 1e-13 && (along_z - 5.0).abs() < 1e-13);
    /// }
    /// ```
    #[inline]
    pub fn gradient(&self, values: &[f64; 6]) -> [f64; 2] {
        combination(&self.gradients, values)
    }
}

impl Mapping {
    /// Gradient (∂/∂r, ∂/∂z) of the field with these values at the nodes, in the values' unit per metre.
    ///
    /// ```
    /// use jointwright_numerics::{fem::triangle, outline::Point};
    /// let nodes = triangle::straight(Point::new(1.0, 0.0), Point::new(2.0, 0.0), Point::new(1.0, 1.0));
    /// let squares = nodes.map(|node| node.r * node.r);
    /// let [along_r, _] = triangle::mapping(&nodes, [0.5, 0.0]).gradient(&squares);
    /// assert!((along_r - 2.0 * 1.5).abs() < 1e-14);
    /// ```
    #[inline]
    pub fn gradient(&self, values: &[f64; 6]) -> [f64; 2] {
        combination(&self.gradients, values)
    }
}

#[inline]
fn combination(vectors: &[[f64; 2]; 6], factors: &[f64; 6]) -> [f64; 2] {
    let mut sum = [0.0; 2];
    for (vector, factor) in vectors.iter().zip(factors) {
        sum[0] += factor * vector[0];
        sum[1] += factor * vector[1];
    }
    sum
}

/// The six nodes of the straight triangle on three corners.
///
/// ```
/// use jointwright_numerics::{fem::triangle, outline::Point};
/// let nodes = triangle::straight(Point::new(0.0, 0.0), Point::new(2.0, 0.0), Point::new(0.0, 2.0));
/// assert_eq!(nodes[4], Point::new(1.0, 1.0));
/// ```
pub fn straight(first: Point, second: Point, third: Point) -> [Point; 6] {
    [
        first,
        second,
        third,
        first.towards(second, 0.5),
        second.towards(third, 0.5),
        third.towards(first, 0.5),
    ]
}

/// Values of the six shape functions at a reference point.
///
/// ```
/// use jointwright_numerics::fem::triangle::shapes;
/// assert_eq!(shapes([0.5, 0.5]), [0.0, 0.0, 0.0, 0.0, 1.0, 0.0]);
/// ```
#[inline]
pub const fn shapes(place: [f64; 2]) -> [f64; 6] {
    let [x, y] = place;
    let rest = 1.0 - x - y;
    [
        rest * (2.0 * rest - 1.0),
        x * (2.0 * x - 1.0),
        y * (2.0 * y - 1.0),
        4.0 * rest * x,
        4.0 * x * y,
        4.0 * y * rest,
    ]
}

/// Gradients (∂/∂x, ∂/∂y) of the six shape functions in reference coordinates.
///
/// ```
/// use jointwright_numerics::fem::triangle::reference_gradients;
/// let at_corner = reference_gradients([0.0, 0.0]);
/// assert_eq!(at_corner[0], [-3.0, -3.0]);
/// assert_eq!(at_corner[3], [4.0, 0.0]);
/// ```
#[inline]
pub const fn reference_gradients(place: [f64; 2]) -> [[f64; 2]; 6] {
    let [x, y] = place;
    let rest = 1.0 - x - y;
    let own = 1.0 - 4.0 * rest;
    [
        [own, own],
        [4.0 * x - 1.0, 0.0],
        [0.0, 4.0 * y - 1.0],
        [4.0 * (rest - x), -4.0 * x],
        [4.0 * y, 4.0 * x],
        [-4.0 * y, 4.0 * (rest - y)],
    ]
}

/// Maps a reference point into the section.
///
/// # Assumes
/// The determinant there is not 0; see [`determinant_ratio`].
///
/// ```
/// use jointwright_numerics::{fem::triangle, outline::Point};
/// let nodes = triangle::straight(Point::new(0.0, 0.0), Point::new(2.0, 0.0), Point::new(0.0, 3.0));
/// let mapping = triangle::mapping(&nodes, [0.25, 0.5]);
/// assert_eq!((mapping.point, mapping.determinant), (Point::new(0.5, 1.5), 6.0));
/// ```
#[inline]
pub fn mapping(nodes: &[Point; 6], place: [f64; 2]) -> Mapping {
    let reference = reference_gradients(place);
    let (point, jacobian) = place_and_jacobian(nodes, place, &reference);
    let [[r_x, r_y], [z_x, z_y]] = jacobian;
    let determinant = r_x * z_y - r_y * z_x;
    let inverse = 1.0 / determinant;
    let gradients = reference.map(|[along_x, along_y]| {
        [
            (z_y * along_x - z_x * along_y) * inverse,
            (r_x * along_y - r_y * along_x) * inverse,
        ]
    });
    Mapping {
        point,
        gradients,
        determinant,
    }
}

/// Place, and [[∂r/∂x, ∂r/∂y], [∂z/∂x, ∂z/∂y]].
#[inline]
fn place_and_jacobian(
    nodes: &[Point; 6],
    place: [f64; 2],
    reference: &[[f64; 2]; 6],
) -> (Point, [[f64; 2]; 2]) {
    let shapes = shapes(place);
    let mut point = Point::new(0.0, 0.0);
    let mut jacobian = [[0.0; 2]; 2];
    for ((node, shape), [along_x, along_y]) in nodes.iter().zip(shapes).zip(reference) {
        point.r += shape * node.r;
        point.z += shape * node.z;
        jacobian[0][0] += along_x * node.r;
        jacobian[0][1] += along_y * node.r;
        jacobian[1][0] += along_x * node.z;
        jacobian[1][1] += along_y * node.z;
    }
    (point, jacobian)
}

/// Whether every mid-node lies in the middle of its edge, within 1e-12 of the edge and the rounding of coordinates.
///
/// ```
/// use jointwright_numerics::{fem::triangle, outline::Point};
/// let mut nodes = triangle::straight(Point::new(0.1, 0.0), Point::new(0.2, 0.0), Point::new(0.1, 0.1));
/// assert!(triangle::is_straight(&nodes));
/// nodes[3].z -= 1e-10;
/// assert!(!triangle::is_straight(&nodes));
/// ```
#[inline]
pub fn is_straight(nodes: &[Point; 6]) -> bool {
    let is_middle = |mid: Point, one: Point, other: Point| {
        let off = (2.0 * mid.r - (one.r + other.r)).abs() + (2.0 * mid.z - (one.z + other.z)).abs();
        let edge = (one.r - other.r).abs() + (one.z - other.z).abs();
        let rounding = 2.0 * f64::EPSILON * (mid.r.abs() + mid.z.abs());
        off <= 1e-12 * edge + rounding
    };
    let [first, second, third, on_first, on_second, on_third] = *nodes;
    is_middle(on_first, first, second)
        & is_middle(on_second, second, third)
        & is_middle(on_third, third, first)
}

/// The quadrature points of an element: six if it is straight, twelve if it is curved.
///
/// ```
/// use jointwright_numerics::{fem::triangle, outline::Point};
/// let nodes = triangle::straight(Point::new(1.0, 0.0), Point::new(2.0, 0.0), Point::new(1.0, 1.0));
/// let volume: f64 = triangle::samples(&nodes).map(|sample| sample.weight).sum();
/// // Pappus: the area 1/2 on a circle of radius 4/3.
/// assert!((volume - std::f64::consts::PI * 4.0 / 3.0).abs() < 1e-14);
/// ```
#[inline]
pub fn samples(nodes: &[Point; 6]) -> impl Iterator<Item = Sample> {
    let rule: &'static [QuadraturePoint] = if is_straight(nodes) {
        &DEGREE_4
    } else {
        &DEGREE_6
    };
    let nodes = *nodes;
    rule.iter().map(move |at| {
        let mapping = mapping(&nodes, at.place);
        Sample {
            point: mapping.point,
            gradients: mapping.gradients,
            weight: 2.0 * PI * mapping.point.r * mapping.determinant * at.weight,
        }
    })
}

/// The matrix ∫ 2πr ∇N_i · ∇N_j dA, packed, m.
///
/// # Accuracy
/// Exact to rounding for straight triangles; twelve points of degree 6 for curved ones.
///
/// ```
/// use jointwright_numerics::{fem::triangle, outline::Point};
/// let nodes = triangle::straight(Point::new(1.0, 0.0), Point::new(2.0, 0.0), Point::new(1.0, 1.0));
/// let matrix = triangle::stiffness(&nodes);
/// // The field z has gradient 1 everywhere: its square is the ring's volume.
/// let values = nodes.map(|node| node.z);
/// let square = triangle::bilinear(&matrix, &values, &values);
/// assert!((square - std::f64::consts::PI * 4.0 / 3.0).abs() < 1e-14);
/// ```
#[inline]
pub fn stiffness(nodes: &[Point; 6]) -> [f64; 21] {
    if is_straight(nodes) {
        straight_stiffness(&[nodes[0], nodes[1], nodes[2]])
    } else {
        curved_stiffness(nodes)
    }
}

/// Rows of [`EXACT`]: products xx, xy + yx, yy, each with the radius of corners 0, 1, 2.
const N_EXACT: usize = 9;

/// ∫ ∂N_i/∂a ∂N_j/∂b L_m over the reference triangle, for ab in xx, xy + yx, yy (outer) and corners m (inner), packed.
///
/// Gradients of quadratic shapes are linear, so they are their corner values times L_k, and
/// ∫ L_k L_l L_m = 1/20 if all are the same corner, 1/60 if two are, 1/120 if none:
/// from ∫ L0^p L1^q L2^s = p! q! s! / (p + q + s + 2)!.
const EXACT: [[f64; 21]; N_EXACT] = {
    let corner_gradients = [
        reference_gradients(REFERENCE_NODES[0]),
        reference_gradients(REFERENCE_NODES[1]),
        reference_gradients(REFERENCE_NODES[2]),
    ];
    let mut table = [[0.0; 21]; N_EXACT];
    let mut i = 0;
    while i < 6 {
        let mut j = 0;
        while j <= i {
            let mut k = 0;
            while k < 27 {
                let (one, other, corner) = (k / 9, k / 3 % 3, k % 3);
                let triple = triple_integral(one, other, corner);
                let [x_i, y_i] = corner_gradients[one][i];
                let [x_j, y_j] = corner_gradients[other][j];
                let entry = i * (i + 1) / 2 + j;
                table[corner][entry] += triple * x_i * x_j;
                table[3 + corner][entry] += triple * (x_i * y_j + y_i * x_j);
                table[6 + corner][entry] += triple * y_i * y_j;
                k += 1;
            }
            j += 1;
        }
        i += 1;
    }
    table
};

const fn triple_integral(k: usize, l: usize, m: usize) -> f64 {
    if k == l && l == m {
        1.0 / 20.0
    } else if k == l || l == m || m == k {
        1.0 / 60.0
    } else {
        1.0 / 120.0
    }
}

/// With edges a = 1 − 0 and b = 2 − 0 and determinant D = a × b:
/// ∇N_i · ∇N_j D = (b·b N_i,x N_j,x − a·b (N_i,x N_j,y + N_i,y N_j,x) + a·a N_i,y N_j,y) / D, and r is linear.
#[inline]
fn straight_stiffness(corners: &[Point; 3]) -> [f64; 21] {
    let [first, second, third] = *corners;
    let (a_r, a_z) = (second.r - first.r, second.z - first.z);
    let (b_r, b_z) = (third.r - first.r, third.z - first.z);
    let scale = 2.0 * PI / (a_r * b_z - a_z * b_r);
    let metric = [
        scale * (b_r * b_r + b_z * b_z),
        -scale * (a_r * b_r + a_z * b_z),
        scale * (a_r * a_r + a_z * a_z),
    ];
    let radii = [first.r, second.r, third.r];
    let mut matrix = [0.0; 21];
    for (rows, product) in EXACT.chunks_exact(3).zip(metric) {
        for (row, radius) in rows.iter().zip(radii) {
            let factor = product * radius;
            for (entry, value) in matrix.iter_mut().zip(row) {
                *entry += factor * value;
            }
        }
    }
    matrix
}

fn curved_stiffness(nodes: &[Point; 6]) -> [f64; 21] {
    let mut matrix = [0.0; 21];
    for sample in samples(nodes) {
        add_products(&mut matrix, &sample.gradients, sample.weight);
    }
    matrix
}

#[inline]
fn add_products(matrix: &mut [f64; 21], gradients: &[[f64; 2]; 6], factor: f64) {
    let mut entry = 0;
    for i in 0..6 {
        let [along_r, along_z] = [factor * gradients[i][0], factor * gradients[i][1]];
        for gradient in &gradients[..=i] {
            matrix[entry] += along_r * gradient[0] + along_z * gradient[1];
            entry += 1;
        }
    }
}

/// The matrix ∫ 2πr c ∇N_i · ∇N_j dA, packed, with the coefficient c at each of the element's [`samples`].
///
/// # Panics
/// If the number of coefficients differs from the number of samples.
///
/// ```
/// use jointwright_numerics::{fem::triangle, outline::Point};
/// let nodes = triangle::straight(Point::new(1.0, 0.0), Point::new(2.0, 0.0), Point::new(1.0, 1.0));
/// let samples: Vec<_> = triangle::samples(&nodes).collect();
/// let doubled = triangle::stiffness_with(&samples, &[2.0; 6]);
/// let plain = triangle::stiffness(&nodes);
/// assert!(doubled.iter().zip(plain).all(|(two, one)| (two - 2.0 * one).abs() < 1e-12));
/// ```
pub fn stiffness_with(samples: &[Sample], coefficients: &[f64]) -> [f64; 21] {
    assert_eq!(samples.len(), coefficients.len());
    let mut matrix = [0.0; 21];
    for (sample, coefficient) in samples.iter().zip(coefficients) {
        add_products(&mut matrix, &sample.gradients, sample.weight * coefficient);
    }
    matrix
}

/// Adds ∫ 2πr s (a · ∇N_i) (b · ∇N_j) dA to a full matrix, row by row: the term that Newton's method adds to the stiffness.
///
/// For a coefficient c(q) with q = |g|², s = 2 dc/dq and a = b = g, the gradient itself;
/// with a complex field, a and b are its real or its imaginary part, and the matrix is not symmetric.
///
/// # Shapes
/// `factors` s, `left` a and `right` b: one for each of the element's [`samples`].
///
/// # Panics
/// If the lengths differ.
///
/// ```
/// use jointwright_numerics::{fem::triangle, outline::Point};
/// let nodes = triangle::straight(Point::new(1.0, 0.0), Point::new(2.0, 0.0), Point::new(1.0, 1.0));
/// let samples: Vec<_> = triangle::samples(&nodes).collect();
/// let mut matrix = triangle::full(&triangle::stiffness(&nodes));
/// triangle::add_rank_one(&mut matrix, &samples, &[2.0; 6], &[[1.0, 0.0]; 6], &[[0.0, 1.0]; 6]);
/// assert!((matrix[1] - matrix[6]).abs() > 0.1);
/// ```
pub fn add_rank_one(
    matrix: &mut [f64; 36],
    samples: &[Sample],
    factors: &[f64],
    left: &[[f64; 2]],
    right: &[[f64; 2]],
) {
    let n_samples = samples.len();
    assert_eq!(factors.len(), n_samples);
    assert_eq!(left.len(), n_samples);
    assert_eq!(right.len(), n_samples);
    for (q, sample) in samples.iter().enumerate() {
        let along = |direction: [f64; 2]| {
            sample
                .gradients
                .map(|gradient| direction[0] * gradient[0] + direction[1] * gradient[1])
        };
        let (rows, columns) = (along(left[q]), along(right[q]));
        let factor = sample.weight * factors[q];
        for (line, row) in matrix.chunks_exact_mut(6).zip(rows) {
            for (entry, column) in line.iter_mut().zip(columns) {
                *entry += factor * row * column;
            }
        }
    }
}

/// A packed symmetric matrix in full, row by row.
///
/// ```
/// use jointwright_numerics::fem::triangle::full;
/// let packed: [f64; 21] = std::array::from_fn(|entry| entry as f64);
/// assert_eq!(full(&packed)[..8], [0.0, 1.0, 3.0, 6.0, 10.0, 15.0, 1.0, 2.0]);
/// ```
#[inline]
pub fn full(packed: &[f64; 21]) -> [f64; 36] {
    let mut matrix = [0.0; 36];
    let mut entry = 0;
    for i in 0..6 {
        for j in 0..=i {
            matrix[6 * i + j] = packed[entry];
            matrix[6 * j + i] = packed[entry];
            entry += 1;
        }
    }
    matrix
}

/// A packed symmetric matrix times the values at the nodes.
///
/// ```
/// use jointwright_numerics::fem::triangle::product;
/// let mut packed = [0.0; 21];
/// packed[1] = 2.0; // entry (1, 0), and so (0, 1)
/// assert_eq!(product(&packed, &[3.0, 5.0, 0.0, 0.0, 0.0, 0.0]), [10.0, 6.0, 0.0, 0.0, 0.0, 0.0]);
/// ```
#[inline]
pub fn product(packed: &[f64; 21], values: &[f64; 6]) -> [f64; 6] {
    let mut sums = [0.0; 6];
    let mut entry = 0;
    for i in 0..6 {
        for j in 0..i {
            sums[i] += packed[entry] * values[j];
            sums[j] += packed[entry] * values[i];
            entry += 1;
        }
        sums[i] += packed[entry] * values[i];
        entry += 1;
    }
    sums
}

/// left · matrix · right, for a packed symmetric matrix.
///
/// ```
/// use jointwright_numerics::fem::triangle::bilinear;
/// let mut packed = [0.0; 21];
/// packed[1] = 2.0;
/// let values = [3.0, 5.0, 0.0, 0.0, 0.0, 0.0];
/// assert_eq!(bilinear(&packed, &values, &values), 60.0);
/// ```
#[inline]
pub fn bilinear(packed: &[f64; 21], left: &[f64; 6], right: &[f64; 6]) -> f64 {
    let products = product(packed, right);
    left.iter()
        .zip(products)
        .map(|(one, other)| one * other)
        .sum()
}

/// Least determinant of the Jacobian over the whole element, relative to its mean.
///
/// 1 for a straight triangle; at or below 0 the element is folded, and its integrals are meaningless.
/// The determinant is a quadratic polynomial, so its least value is found exactly: at a corner, on an edge or inside.
/// A clockwise triangle has a negative mean, which [`mapping`]'s determinant shows; NaN if the mean is 0.
///
/// ```
/// use jointwright_numerics::{fem::triangle, outline::Point};
/// let mut nodes = triangle::straight(Point::new(1.0, 0.0), Point::new(2.0, 0.0), Point::new(1.0, 1.0));
/// assert!((triangle::determinant_ratio(&nodes) - 1.0).abs() < 1e-12);
/// nodes[3].z += 0.3; // the edge bulges inward, past a quarter of the height
/// assert!(triangle::determinant_ratio(&nodes) < 0.0);
/// ```
pub fn determinant_ratio(nodes: &[Point; 6]) -> f64 {
    let values = REFERENCE_NODES.map(|place| {
        let (_, [[r_x, r_y], [z_x, z_y]]) =
            place_and_jacobian(nodes, place, &reference_gradients(place));
        r_x * z_y - r_y * z_x
    });
    // ∫ of a quadratic over a triangle is its area times the mean of the three mid-values.
    let mean = (values[3] + values[4] + values[5]) / 3.0;
    let relative = values.map(|value| value / mean);
    let mut least = relative.iter().copied().fold(f64::INFINITY, f64::min);
    for (begin, end, mid) in [(0, 1, 3), (1, 2, 4), (2, 0, 5)] {
        least = least.min(edge_least(relative[begin], relative[mid], relative[end]));
    }
    if mean == 0.0 || !mean.is_finite() {
        return f64::NAN;
    }
    least.min(inner_least(&relative))
}

/// Least value of the parabola through the beginning, middle and end of an edge, between its ends.
fn edge_least(begin: f64, middle: f64, end: f64) -> f64 {
    let slope = 4.0 * middle - 3.0 * begin - end;
    let bend = 2.0 * (begin + end - 2.0 * middle);
    let share = -slope / (2.0 * bend);
    if bend > 0.0 && share > 0.0 && share < 1.0 {
        begin + share * (slope + share * bend)
    } else {
        begin.min(end)
    }
}

/// Value at the stationary point of a quadratic, if that lies inside the triangle; otherwise infinite.
fn inner_least(values: &[f64; 6]) -> f64 {
    // The gradient is linear: at corner 0 it is (x, y), and it changes by these second derivatives.
    let [x, y] = combination(&reference_gradients([0.0, 0.0]), values);
    let xx = 4.0 * (values[0] + values[1] - 2.0 * values[3]);
    let yy = 4.0 * (values[0] + values[2] - 2.0 * values[5]);
    let xy = 4.0 * (values[0] - values[3] + values[4] - values[5]);
    let determinant = xx * yy - xy * xy;
    let place = [
        (xy * y - yy * x) / determinant,
        (xy * x - xx * y) / determinant,
    ];
    if determinant > 0.0 && place[0] > 0.0 && place[1] > 0.0 && place[0] + place[1] < 1.0 {
        shapes(place)
            .iter()
            .zip(values)
            .map(|(shape, value)| shape * value)
            .sum()
    } else {
        f64::INFINITY
    }
}

/// Greatest number of steps of Newton's method for curved triangles: it converges quadratically, so 20 are plenty or no number suffices.
const N_NEWTON_STEPS: usize = 20;

/// Finds the reference coordinates of a point of the section; for a point outside the element they lie outside the reference triangle.
///
/// `None` if the element is degenerate, or so curved that Newton's method does not reach the point.
///
/// # Accuracy
/// To rounding: 1e-12 of the element.
///
/// ```
/// use jointwright_numerics::{fem::triangle, outline::Point};
/// let nodes = triangle::straight(Point::new(0.0, 0.0), Point::new(2.0, 0.0), Point::new(0.0, 4.0));
/// assert_eq!(triangle::reference_place(&nodes, Point::new(0.5, 2.0)), Some([0.25, 0.5]));
/// ```
pub fn reference_place(nodes: &[Point; 6], point: Point) -> Option<[f64; 2]> {
    let is_straight = is_straight(nodes);
    // Measured from the first corner: with coordinates of the whole section, the rounding for a small triangle would
    // exceed the step at which Newton's method stops.
    let first = nodes[0];
    let off = |place: Point| Point::new(place.r - first.r, place.z - first.z);
    let (nodes, point) = (&nodes.map(off), off(point));
    let [_, second, third, ..] = *nodes;
    let corner_jacobian = [[second.r, third.r], [second.z, third.z]];
    let mut place = solution(corner_jacobian, [point.r, point.z])?;
    if is_straight {
        return Some(place);
    }
    for _ in 0..N_NEWTON_STEPS {
        let (reached, jacobian) = place_and_jacobian(nodes, place, &reference_gradients(place));
        let step = solution(jacobian, [point.r - reached.r, point.z - reached.z])?;
        place = [place[0] + step[0], place[1] + step[1]];
        if step[0].abs() + step[1].abs() < 1e-12 {
            return Some(place);
        }
    }
    None
}

/// Solves two equations; `None` if the answer is not finite.
fn solution(matrix: [[f64; 2]; 2], wanted: [f64; 2]) -> Option<[f64; 2]> {
    let [[xx, xy], [yx, yy]] = matrix;
    let determinant = xx * yy - xy * yx;
    let found = [
        (yy * wanted[0] - xy * wanted[1]) / determinant,
        (xx * wanted[1] - yx * wanted[0]) / determinant,
    ];
    (found[0].is_finite() && found[1].is_finite()).then_some(found)
}

#[cfg(test)]
#[path = "triangle_tests.rs"]
mod tests;
