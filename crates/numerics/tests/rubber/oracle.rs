//! Oracle: a tube of rubber on a rigid cylinder as finite elements of the half-plane, without any formula for tubes.
//!
//! **Why separate.** It shares no line with `jointwright_numerics::rubber`: it has its own laws, units, mesh and elimination.
//!
//! **Invariants.** Lengths in mm, moduli and pressures in MPa.
//! The deformed shape is assumed to be a body of revolution with plane ends, and nothing else.
//!
//! **Not here.** Anything that changes along the axis; see `tests/published/rubber-tube`.
//!
//! **Source.** Large-deformation elasticity, textbook: the energy W + p (J − 1) is stationary;
//! displacement biquadratic, p linear in each rectangle and free to jump, Newton in steps of the stretch.
//!
//! ```text
//!   Z                         u_r = (stretch − 1) A on the bore, u_z free there
//!   +--+---+------+           u_z = w + e Z; w = 0 on both end planes
//!   |  |   |      |           e = 0 at fixed length, an unknown for free ends
//!   +--+---+------+
//!   A                 R       unknowns: column, column, p of the rectangles between, column …, e last
//! ```

/// Stored energy of a rubber, of the invariants of the stretch.
#[derive(Clone, Copy, Debug)]
pub enum Law {
    MooneyRivlin { c1_mpa: f64, c2_mpa: f64 },
    Gent { mu_mpa: f64, limit: f64 },
}

#[derive(Clone, Copy, Debug)]
pub struct Ring {
    pub outer_mm: f64,
    pub law: Law,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ends {
    FixedLength,
    Free,
}

#[derive(Clone, Copy, Debug)]
pub struct Oracle {
    pub pressure_mpa: f64,
    pub axial_stretch: f64,
}

/// Components of the deformation gradient: rr, rz, zr, zz, hoop.
const N_PARTS: usize = 5;
type Parts = [f64; N_PARTS];

/// A number with its first and second derivatives by the deformation gradient.
#[derive(Clone, Copy)]
struct Jet {
    value: f64,
    slope: Parts,
    bend: [Parts; N_PARTS],
}

impl Jet {
    fn part(at: &Parts, index: usize) -> Jet {
        let mut slope = [0.0; N_PARTS];
        slope[index] = 1.0;
        Jet {
            value: at[index],
            slope,
            bend: [[0.0; N_PARTS]; N_PARTS],
        }
    }

    /// f of this number, from the value, first and second derivative of f.
    fn through(&self, value: f64, slope: f64, bend: f64) -> Jet {
        let mut out = *self;
        out.value = value;
        for i in 0..N_PARTS {
            out.slope[i] = slope * self.slope[i];
            for j in 0..N_PARTS {
                out.bend[i][j] = slope * self.bend[i][j] + bend * self.slope[i] * self.slope[j];
            }
        }
        out
    }

    fn scaled(&self, factor: f64) -> Jet {
        self.through(factor * self.value, factor, 0.0)
    }

    fn plus(&self, other: &Jet) -> Jet {
        let mut out = *self;
        out.value += other.value;
        for i in 0..N_PARTS {
            out.slope[i] += other.slope[i];
            for j in 0..N_PARTS {
                out.bend[i][j] += other.bend[i][j];
            }
        }
        out
    }

    fn times(&self, other: &Jet) -> Jet {
        let mut out = self.scaled(other.value).plus(&other.scaled(self.value));
        out.value = self.value * other.value;
        for i in 0..N_PARTS {
            for j in 0..N_PARTS {
                out.bend[i][j] += self.slope[i] * other.slope[j] + other.slope[i] * self.slope[j];
            }
        }
        out
    }
}

/// Stored energy and volume ratio at a deformation gradient.
fn energy(law: Law, at: &Parts) -> (Jet, Jet) {
    let [rr, rz, zr, zz, hoop] = [0, 1, 2, 3, 4].map(|index| Jet::part(at, index));
    let square = |jet: &Jet| jet.times(jet);
    let in_plane = square(&rr)
        .plus(&square(&rz))
        .plus(&square(&zr))
        .plus(&square(&zz));
    let area = rr.times(&zz).plus(&rz.times(&zr).scaled(-1.0));
    let first = in_plane.plus(&square(&hoop));
    let stored = match law {
        Law::MooneyRivlin { c1_mpa, c2_mpa } => {
            let second = in_plane.times(&square(&hoop)).plus(&square(&area));
            first.scaled(c1_mpa).plus(&second.scaled(c2_mpa))
        }
        Law::Gent { mu_mpa, limit } => {
            let left = limit - (first.value - 3.0);
            let half = mu_mpa * limit / 2.0;
            first.through(
                -half * (left / limit).ln(),
                half / left,
                half / (left * left),
            )
        }
    };
    (stored, area.times(&hoop))
}

/// Rectangles along the axis, with uneven heights so that nothing cancels, and their corners.
const HEIGHTS: [f64; 3] = [0.0, 3.0, 8.0];
const N_ROWS: usize = HEIGHTS.len() - 1;
const N_NODES: usize = 2 * N_ROWS + 1;
/// Numbers of unknowns: of one column of nodes, of the pressures between two columns of corners, and of an element.
const COLUMN: usize = 2 * N_NODES;
const PRESSURES: usize = 3 * N_ROWS;
const LOCAL: usize = 22;
/// Greatest distance of two unknowns of one element, the last one excepted.
const BAND: usize = 3 * COLUMN + PRESSURES;
const GAUSS: [(f64, f64); 3] = [
    (-0.774_596_669_241_483_4, 5.0 / 9.0),
    (0.0, 8.0 / 9.0),
    (0.774_596_669_241_483_4, 5.0 / 9.0),
];

/// Quadratic shape functions on −1 … 1 and their slopes.
fn shapes(x: f64) -> ([f64; 3], [f64; 3]) {
    (
        [x * (x - 1.0) / 2.0, 1.0 - x * x, x * (x + 1.0) / 2.0],
        [x - 0.5, -2.0 * x, x + 0.5],
    )
}

/// A tube divided into rectangles, with the condition at its ends.
pub struct Mesh {
    radii: Vec<f64>,
    laws: Vec<Law>,
    ends: Ends,
}

/// Rows of the linearised equations, and the residual.
struct System {
    matrix: Vec<Vec<f64>>,
    residual: Vec<f64>,
}

impl Mesh {
    /// So many rectangles across each ring, each the same factor wider than the last.
    pub fn new(rings: &[Ring], bore_mm: f64, ends: Ends, n_across: usize) -> Mesh {
        let (mut radii, mut laws) = (vec![bore_mm], Vec::new());
        for ring in rings {
            let inner = *radii.last().expect("there is a bore");
            for k in 1..=n_across {
                radii.push(inner * (ring.outer_mm / inner).powf(k as f64 / n_across as f64));
                laws.push(ring.law);
            }
        }
        Mesh { radii, laws, ends }
    }

    fn n_unknowns(&self) -> usize {
        self.laws.len() * (2 * COLUMN + PRESSURES) + COLUMN + 1
    }

    /// Index of the radial unknown of a node; the axial one is next.
    fn node(column: usize, row: usize) -> usize {
        column * COLUMN + column / 2 * PRESSURES + 2 * row
    }

    /// Indices of the unknowns of a rectangle: 9 nodes twice, 3 pressures, e.
    fn places(&self, across: usize, up: usize) -> [usize; LOCAL] {
        let mut places = [self.n_unknowns() - 1; LOCAL];
        for i in 0..3 {
            for j in 0..3 {
                let node = Self::node(2 * across + i, 2 * up + j);
                places[2 * (3 * i + j)] = node;
                places[2 * (3 * i + j) + 1] = node + 1;
            }
        }
        let pressures = Self::node(2 * across + 1, 0) + COLUMN + 3 * up;
        for k in 0..3 {
            places[18 + k] = pressures + k;
        }
        places
    }

    /// Equations at a state, of the energy over 2π.
    fn system(&self, state: &[f64]) -> System {
        let n = self.n_unknowns();
        let mut system = System {
            matrix: vec![vec![0.0; n]; n],
            residual: vec![0.0; n],
        };
        for across in 0..self.laws.len() {
            for up in 0..N_ROWS {
                for (x, by_x) in GAUSS {
                    for (y, by_y) in GAUSS {
                        self.add_point(state, (across, up), (x, y), by_x * by_y, &mut system);
                    }
                }
            }
        }
        system
    }

    fn add_point(
        &self,
        state: &[f64],
        (across, up): (usize, usize),
        (x, y): (f64, f64),
        weight: f64,
        system: &mut System,
    ) {
        let places = self.places(across, up);
        let half_width = (self.radii[across + 1] - self.radii[across]) / 2.0;
        let half_height = (HEIGHTS[up + 1] - HEIGHTS[up]) / 2.0;
        let radius = self.radii[across] + half_width * (1.0 + x);
        let ((along_x, slope_x), (along_y, slope_y)) = (shapes(x), shapes(y));
        // Effect of one unit of each unknown on the deformation gradient, and the shape function of each pressure.
        let mut lever = [[0.0; N_PARTS]; LOCAL];
        for i in 0..3 {
            for j in 0..3 {
                let by_r = slope_x[i] * along_y[j] / half_width;
                let by_z = along_x[i] * slope_y[j] / half_height;
                let hoop = along_x[i] * along_y[j] / radius;
                lever[2 * (3 * i + j)] = [by_r, by_z, 0.0, 0.0, hoop];
                lever[2 * (3 * i + j) + 1] = [0.0, 0.0, by_r, by_z, 0.0];
            }
        }
        lever[LOCAL - 1][3] = 1.0;
        let shape = [1.0, x, y];
        let mut gradient = [1.0, 0.0, 0.0, 1.0, 1.0];
        for (place, lever) in places.iter().zip(&lever) {
            for part in 0..N_PARTS {
                gradient[part] += state[*place] * lever[part];
            }
        }
        let pressure: f64 = (0..3).map(|k| shape[k] * state[places[18 + k]]).sum();
        let (stored, volume) = energy(self.laws[across], &gradient);
        let total = stored.plus(&volume.scaled(pressure));
        let weight = weight * half_width * half_height * radius;
        let dot = |a: &Parts, b: &Parts| -> f64 { a.iter().zip(b).map(|(a, b)| a * b).sum() };
        for (a, place) in places.iter().enumerate() {
            let bent = total.bend.map(|row| dot(&row, &lever[a]));
            system.residual[*place] += weight * dot(&total.slope, &lever[a]);
            for (b, other) in places.iter().enumerate() {
                system.matrix[*place][*other] += weight * dot(&bent, &lever[b]);
            }
            for k in 0..3 {
                let both = weight * shape[k] * dot(&volume.slope, &lever[a]);
                system.matrix[*place][places[18 + k]] += both;
                system.matrix[places[18 + k]][*place] += both;
            }
        }
        for k in 0..3 {
            system.residual[places[18 + k]] += weight * shape[k] * (volume.value - 1.0);
        }
    }

    /// Unknowns that are given, and whether they move with the bore.
    fn given(&self) -> Vec<(usize, bool)> {
        let mut given: Vec<(usize, bool)> =
            (0..N_NODES).map(|row| (Self::node(0, row), true)).collect();
        for column in 0..=2 * self.laws.len() {
            given.push((Self::node(column, 0) + 1, false));
            given.push((Self::node(column, N_NODES - 1) + 1, false));
        }
        if self.ends == Ends::FixedLength {
            given.push((self.n_unknowns() - 1, false));
        }
        given
    }

    /// Moves the bore outward by a distance, mm, and finds the new equilibrium; returns the sizes of Newton's steps, mm.
    fn widen(&self, state: &mut [f64], by_mm: f64) -> Vec<f64> {
        let mut sizes = Vec::new();
        while sizes.last().is_none_or(|size| *size > SETTLED_MM) {
            assert!(sizes.len() < NEWTON_MOST, "no equilibrium: {sizes:?}");
            let System {
                mut matrix,
                residual,
            } = self.system(state);
            let mut right: Vec<f64> = residual.iter().map(|left| -left).collect();
            for (place, moves) in self.given() {
                let step = if moves && sizes.is_empty() {
                    by_mm
                } else {
                    0.0
                };
                for row in 0..right.len() {
                    right[row] -= matrix[row][place] * step;
                    matrix[row][place] = 0.0;
                    matrix[place][row] = 0.0;
                }
                matrix[place][place] = 1.0;
                right[place] = step;
            }
            let step = eliminated(matrix, right);
            for (value, step) in state.iter_mut().zip(&step) {
                *value += step;
            }
            let node_steps = (0..=2 * self.laws.len()).map(|column| step[Self::node(column, 1)]);
            sizes.push(node_steps.fold(0.0, |most, step| step.abs().max(most)));
        }
        sizes
    }

    /// Pressure and axial stretch on a cylinder of this multiple of the bore.
    pub fn pressed(&self, stretch: f64) -> Oracle {
        let mut state = vec![0.0; self.n_unknowns()];
        let n_steps = ((stretch - 1.0) / STRETCH_STEP).ceil().max(1.0);
        let way_mm = (stretch - 1.0) * self.radii[0];
        for _ in 0..n_steps as usize {
            self.widen(&mut state, way_mm / n_steps);
        }
        // The force on the bore is the reaction of its nodes; its area over 2π is radius times length.
        let residual = self.system(&state).residual;
        let force: f64 = (0..N_NODES).map(|row| residual[Self::node(0, row)]).sum();
        let axial_stretch = 1.0 + state[self.n_unknowns() - 1];
        let area = stretch * self.radii[0] * axial_stretch * HEIGHTS[N_ROWS];
        Oracle {
            pressure_mpa: force / area,
            axial_stretch,
        }
    }
}

const NEWTON_MOST: usize = 12;
/// Size of the last step, mm: the remaining error is its square.
const SETTLED_MM: f64 = 1e-7;
const STRETCH_STEP: f64 = 0.25;

/// Elimination with row exchanges within the band; the last unknown is coupled to all others.
fn eliminated(mut matrix: Vec<Vec<f64>>, mut right: Vec<f64>) -> Vec<f64> {
    let n = right.len();
    for k in 0..n - 1 {
        let low = (k + BAND).min(n - 1);
        let high = (k + 2 * BAND).min(n - 1);
        let best = (k..low).max_by(|a, b| matrix[*a][k].abs().total_cmp(&matrix[*b][k].abs()));
        let best = best.expect("there is a row");
        matrix.swap(k, best);
        right.swap(k, best);
        let pivot = matrix[k].clone();
        for row in (k + 1..low).chain([n - 1]) {
            let factor = matrix[row][k] / pivot[k];
            if factor != 0.0 {
                for column in (k..high).chain([n - 1]) {
                    matrix[row][column] -= factor * pivot[column];
                }
                right[row] -= factor * right[k];
            }
        }
    }
    for k in (0..n).rev() {
        let known: f64 = (k + 1..n)
            .map(|column| matrix[k][column] * right[column])
            .sum();
        right[k] = (right[k] - known) / matrix[k][k];
    }
    right
}

/// Pressure of a tube of these rings on a cylinder of this multiple of the bore.
pub fn contact_pressure(rings: &[Ring], bore_mm: f64, stretch: f64, ends: Ends) -> Oracle {
    Mesh::new(rings, bore_mm, ends, 6).pressed(stretch)
}
