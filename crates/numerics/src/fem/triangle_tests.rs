use super::super::quadrature::{DEGREE_4, DEGREE_6};
use super::*;

/// A triangle with all three edges bulged, well within the valid range.
fn curved() -> [Point; 6] {
    let mut nodes = straight(
        Point::new(0.5, 0.1),
        Point::new(1.6, 0.3),
        Point::new(0.8, 1.2),
    );
    nodes[3].z -= 0.07;
    nodes[4].r += 0.05;
    nodes[5].r -= 0.04;
    nodes[5].z += 0.02;
    nodes
}

fn plain() -> [Point; 6] {
    straight(
        Point::new(0.5, 0.1),
        Point::new(1.6, 0.3),
        Point::new(0.8, 1.2),
    )
}

#[test]
fn shapes_are_1_at_their_own_node_and_add_up_to_1() {
    for (own, place) in REFERENCE_NODES.into_iter().enumerate() {
        for (other, shape) in shapes(place).into_iter().enumerate() {
            assert_eq!(shape, if own == other { 1.0 } else { 0.0 });
        }
    }
    for at in DEGREE_6 {
        let sum: f64 = shapes(at.place).iter().sum();
        assert!((sum - 1.0).abs() < 4.0 * f64::EPSILON);
        let gradients = reference_gradients(at.place);
        for axis in 0..2 {
            let sum: f64 = gradients.iter().map(|gradient| gradient[axis]).sum();
            assert!(sum.abs() < 8.0 * f64::EPSILON);
        }
    }
    // The twin: five of the six do not.
    let five: f64 = shapes(DEGREE_6[0].place)[..5].iter().sum();
    assert!((five - 1.0).abs() > 0.1);
}

#[test]
fn reference_gradients_are_the_slopes_of_the_shapes() {
    let step = 0.25; // central differences of quadratics are exact for any step
    for at in DEGREE_6 {
        let [x, y] = at.place;
        let gradients = reference_gradients(at.place);
        let slope = |ahead: [f64; 2], behind: [f64; 2], node: usize| {
            (shapes(ahead)[node] - shapes(behind)[node]) / (2.0 * step)
        };
        for (node, gradient) in gradients.iter().enumerate() {
            assert!((gradient[0] - slope([x + step, y], [x - step, y], node)).abs() < 1e-14);
            assert!((gradient[1] - slope([x, y + step], [x, y - step], node)).abs() < 1e-14);
        }
        // The twin: at a place next to it the slopes are others.
        let moved = reference_gradients([x + 1e-3, y]);
        assert!((moved[0][0] - gradients[0][0]).abs() > 1e-4);
    }
}

#[test]
fn linear_fields_have_exact_gradients_on_curved_elements_and_quadratic_ones_on_straight() {
    for at in DEGREE_6 {
        let nodes = curved();
        let values = nodes.map(|node| 1.0 + 3.0 * node.r - 2.0 * node.z);
        let [along_r, along_z] = mapping(&nodes, at.place).gradient(&values);
        assert!((along_r - 3.0).abs() < 1e-13 && (along_z + 2.0).abs() < 1e-13);

        let quadratic =
            |node: Point| node.r * node.r - 3.0 * node.r * node.z + 0.5 * node.z * node.z;
        let nodes = plain();
        let mapped = mapping(&nodes, at.place);
        let [along_r, along_z] = mapped.gradient(&nodes.map(quadratic));
        let Point { r, z } = mapped.point;
        assert!((along_r - (2.0 * r - 3.0 * z)).abs() < 1e-13);
        assert!((along_z - (z - 3.0 * r)).abs() < 1e-13);
        // The twin: on the curved element, a quadratic of r and z is not a quadratic of x and y.
        let nodes = curved();
        let mapped = mapping(&nodes, at.place);
        let [along_r, _] = mapped.gradient(&nodes.map(quadratic));
        assert!((along_r - (2.0 * mapped.point.r - 3.0 * mapped.point.z)).abs() > 1e-4);
    }
}

/// Checks x, y and x y of the reference coordinates, which have known gradients on a curved element: rows of the inverse Jacobian.
#[test]
fn quadratics_of_the_reference_have_exact_derivatives_on_a_curved_element() {
    let nodes = curved();
    for at in DEGREE_6 {
        let mapped = mapping(&nodes, at.place);
        let gradient = |field: fn([f64; 2]) -> f64| mapped.gradient(&REFERENCE_NODES.map(field));
        let (of_x, of_y) = (gradient(|[x, _]| x), gradient(|[_, y]| y));
        let of_product = gradient(|[x, y]| x * y);
        for axis in 0..2 {
            let wanted = at.place[1] * of_x[axis] + at.place[0] * of_y[axis];
            assert!((of_product[axis] - wanted).abs() < 1e-14);
            // The twin: x and y exchanged.
            let wrong = at.place[0] * of_x[axis] + at.place[1] * of_y[axis];
            assert!(at.place[0] == at.place[1] || (of_product[axis] - wrong).abs() > 1e-3);
        }
    }
}

#[test]
fn stiffness_has_row_sums_of_zero_and_is_positive() {
    for nodes in [plain(), curved()] {
        let matrix = stiffness(&nodes);
        // Entries of about 10, a dozen roundings.
        assert!(
            product(&matrix, &[1.0; 6])
                .iter()
                .all(|sum| sum.abs() < 1e-13)
        );
        for own in 0..6 {
            let mut values = [0.0; 6];
            values[own] = 1.0;
            assert!(bilinear(&matrix, &values, &values) > 0.1);
        }
        // The twin: one entry off by a millionth.
        let mut off = matrix;
        off[4] *= 1.0 + 1e-6;
        assert!(product(&off, &[1.0; 6]).iter().any(|sum| sum.abs() > 1e-8));
    }
}

#[test]
fn exact_matrix_of_a_straight_triangle_is_that_of_quadrature() {
    for nodes in [
        plain(),
        // On the axis, and far from square.
        straight(
            Point::new(0.0, 0.0),
            Point::new(1e-3, 0.0),
            Point::new(0.0, 0.5),
        ),
    ] {
        let exact = stiffness(&nodes);
        let largest = exact
            .iter()
            .fold(0.0_f64, |most, entry| most.max(entry.abs()));
        let differs = |matrix: &[f64; 21]| {
            let pairs = exact.iter().zip(matrix);
            pairs
                .map(|(one, other)| (one - other).abs())
                .fold(0.0, f64::max)
                / largest
        };
        assert!(differs(&curved_stiffness(&nodes)) < 1e-14);
        let samples: Vec<Sample> = samples(&nodes).collect();
        assert_eq!(samples.len(), DEGREE_4.len());
        assert!(differs(&stiffness_with(&samples, &[1.0; 6])) < 1e-14);
        // The twin: a coefficient off by a millionth at one point.
        let mut coefficients = [1.0; 6];
        coefficients[2] += 1e-6;
        assert!(differs(&stiffness_with(&samples, &coefficients)) > 1e-9);
    }
}

#[test]
fn a_triangle_bent_by_a_billionth_has_nearly_the_matrix_of_the_straight_one() {
    let mut bent = plain();
    bent[3].z -= 1e-9;
    assert!(!is_straight(&bent));
    let pairs = stiffness(&bent).into_iter().zip(stiffness(&plain()));
    let most = pairs
        .map(|(one, other)| (one - other).abs())
        .fold(0.0, f64::max);
    assert!(most > 0.0 && most < 1e-6, "off by {most:e}");
}

#[test]
fn volume_of_a_ring_with_a_round_edge_follows_pappus() {
    // A parabolic bulge of height h on an edge of length s adds 2/3 s h, here along r at the radius 1.
    let mut nodes = straight(
        Point::new(1.0, 0.0),
        Point::new(2.0, 0.0),
        Point::new(1.0, 1.0),
    );
    let volume = |nodes: &[Point; 6]| samples(nodes).map(|sample| sample.weight).sum::<f64>();
    let before = volume(&nodes);
    nodes[5].r -= 0.1;
    // ∫ 2πr over the bulge: 2π ∫ (1 − w²)/... with width w(z) = 0.4 z (1 − z): 2π ∫ (w − w²/2) dz.
    let added = 2.0 * PI * (0.4 / 6.0 - 0.5 * 0.16 / 30.0);
    assert!((volume(&nodes) - before - added).abs() < 1e-13);
    // The twin: the bulge taken at the radius 1 throughout.
    assert!((volume(&nodes) - before - 2.0 * PI * 0.4 / 6.0).abs() > 1e-2);
}

/// Residual ∫ 2πr c(|g|²) g · ∇N_i with c(q) = 1 + q/2.
fn nonlinear_residual(samples: &[Sample], values: &[f64; 6]) -> [f64; 6] {
    let squares = samples.iter().map(|sample| square(sample.gradient(values)));
    let coefficients: Vec<f64> = squares.map(|square| 1.0 + 0.5 * square).collect();
    product(&stiffness_with(samples, &coefficients), values)
}

fn square([along_r, along_z]: [f64; 2]) -> f64 {
    along_r * along_r + along_z * along_z
}

#[test]
fn stiffness_and_rank_one_terms_are_the_derivative_of_a_nonlinear_residual() {
    for nodes in [plain(), curved()] {
        let samples: Vec<Sample> = samples(&nodes).collect();
        let values = [0.3, -0.4, 1.1, 0.2, 0.9, -0.5];
        let gradients: Vec<[f64; 2]> = samples.iter().map(|at| at.gradient(&values)).collect();
        let coefficients: Vec<f64> = gradients.iter().map(|&g| 1.0 + 0.5 * square(g)).collect();
        let frozen = full(&stiffness_with(&samples, &coefficients));
        let mut newton = frozen;
        let slopes = vec![2.0 * 0.5; samples.len()];
        add_rank_one(&mut newton, &samples, &slopes, &gradients, &gradients);
        let off = |matrix: &[f64; 36]| {
            let mut most = 0.0_f64;
            for column in 0..6 {
                let step = 1e-5;
                let shifted = |sign: f64| {
                    let mut moved = values;
                    moved[column] += sign * step;
                    nonlinear_residual(&samples, &moved)
                };
                let (ahead, behind) = (shifted(1.0), shifted(-1.0));
                for row in 0..6 {
                    let slope = (ahead[row] - behind[row]) / (2.0 * step);
                    most = most.max((matrix[6 * row + column] - slope).abs());
                }
            }
            most
        };
        // Central differences: 1e-10 of a third derivative of some hundreds, and rounding over the step.
        assert!(off(&newton) < 1e-6, "off by {:e}", off(&newton));
        // The twin: without the terms it is not the derivative.
        assert!(off(&frozen) > 0.1);
    }
}

#[test]
fn rank_one_terms_of_two_fields_stand_with_rows_on_the_left() {
    let nodes = plain();
    let samples: Vec<Sample> = samples(&nodes).collect();
    let (left, right) = (nodes.map(|node| node.r), nodes.map(|node| node.z));
    let mut matrix = [0.0; 36];
    add_rank_one(
        &mut matrix,
        &samples,
        &[1.0; 6],
        &[[1.0, 0.0]; 6],
        &[[0.0, 1.0]; 6],
    );
    let form = |rows: &[f64; 6], columns: &[f64; 6]| -> f64 {
        let line = |i: usize| (0..6).map(|j| matrix[6 * i + j] * columns[j]).sum::<f64>();
        (0..6).map(|i| rows[i] * line(i)).sum()
    };
    let volume: f64 = samples.iter().map(|sample| sample.weight).sum();
    assert!((form(&left, &right) - volume).abs() < 1e-13);
    // The twin: with rows and columns exchanged the form is 0.
    assert!(form(&right, &left).abs() < 1e-13 && volume > 1.0);
}

/// Least determinant over a fine grid of the element, relative to the mean.
fn sampled_ratio(nodes: &[Point; 6]) -> f64 {
    let n = 200;
    let mut least = f64::INFINITY;
    for i in 0..=n {
        for j in 0..=n - i {
            let place = [f64::from(i) / f64::from(n), f64::from(j) / f64::from(n)];
            least = least.min(mapping(nodes, place).determinant);
        }
    }
    least / mean_determinant(nodes)
}

fn mean_determinant(nodes: &[Point; 6]) -> f64 {
    let weighted = DEGREE_4
        .iter()
        .map(|at| 2.0 * at.weight * mapping(nodes, at.place).determinant);
    weighted.sum()
}

#[test]
fn determinant_ratio_is_the_least_over_the_element() {
    let shifts = [
        [0.0, 0.0, 0.0, 0.0, 0.0, 0.0],
        [0.0, -0.07, 0.05, 0.0, -0.04, 0.02],
        [0.0, 0.2, 0.0, 0.0, 0.0, 0.0],
        [0.1, 0.1, -0.1, -0.1, 0.1, -0.1],
        [-0.15, -0.1, 0.12, 0.1, -0.12, 0.12],
        [0.3, 0.0, -0.2, 0.25, 0.1, 0.3],
        [0.0, -0.3, 0.3, 0.3, -0.3, 0.0],
        [0.4, 0.4, 0.1, -0.4, -0.4, 0.3],
        [0.4, 0.5, 0.5, -0.4, -0.3, 0.1],
    ];
    for shift in shifts {
        let nodes = shifted(shift);
        let (found, sampled) = (determinant_ratio(&nodes), sampled_ratio(&nodes));
        // A quadratic with second derivatives of some tens, on a grid of 1/200: the grid misses the least value by 1e-3 at most.
        assert!(found <= sampled + 1e-12, "{found} above {sampled}");
        assert!(found > sampled - 1e-3, "{found} below {sampled}");
    }
    // The twin: corners and edges do not suffice; the last element has its least value inside, and is folded though its corners are not.
    let folded = shifted(shifts[shifts.len() - 1]);
    let least_of = |places: &mut dyn Iterator<Item = [f64; 2]>| {
        places.fold(f64::INFINITY, |least, place| {
            least.min(mapping(&folded, place).determinant)
        })
    };
    assert!(least_of(&mut REFERENCE_NODES[..3].iter().copied()) > 0.0);
    let shares = (0..=100).map(|step| f64::from(step) / 100.0);
    let mut edges = shares.flat_map(|share| [[share, 0.0], [0.0, share], [share, 1.0 - share]]);
    let mean = mean_determinant(&folded);
    assert!(least_of(&mut edges) / mean > determinant_ratio(&folded) + 1e-2);
}

/// The straight triangle with its mid-nodes moved.
fn shifted(shift: [f64; 6]) -> [Point; 6] {
    let mut nodes = plain();
    for (mid, pair) in nodes[3..].iter_mut().zip(shift.chunks_exact(2)) {
        mid.r += pair[0];
        mid.z += pair[1];
    }
    nodes
}

#[test]
fn determinant_ratio_of_a_flat_or_infinite_triangle_is_no_number() {
    let point = Point::new(1.0, 1.0);
    assert!(determinant_ratio(&straight(point, point, point)).is_nan());
    let far = Point::new(f64::INFINITY, 0.0);
    assert!(determinant_ratio(&straight(point, far, Point::new(0.0, 2.0))).is_nan());
    assert!(determinant_ratio(&plain()) > 0.999);
}

#[test]
fn points_are_found_again() {
    for nodes in [plain(), curved()] {
        for at in DEGREE_6.iter().map(|at| at.place).chain(REFERENCE_NODES) {
            let point = mapping(&nodes, at).point;
            let [x, y] = reference_place(&nodes, point).unwrap();
            assert!((x - at[0]).abs() < 1e-12 && (y - at[1]).abs() < 1e-12);
            // The twin: a point next to it is different.
            let [x, _] = reference_place(&nodes, Point::new(point.r + 1e-6, point.z)).unwrap();
            assert!((x - at[0]).abs() > 1e-8);
        }
    }
}

#[test]
fn a_point_outside_is_found_outside_and_a_flat_triangle_finds_none() {
    let [x, y] = reference_place(&plain(), Point::new(0.5, 0.0)).unwrap();
    assert!(x < 0.0 || y < 0.0 || x + y > 1.0);
    let flat = straight(
        Point::new(1.0, 0.0),
        Point::new(2.0, 0.0),
        Point::new(3.0, 0.0),
    );
    assert_eq!(reference_place(&flat, Point::new(1.0, 1.0)), None);
    assert_eq!(reference_place(&plain(), Point::new(f64::NAN, 1.0)), None);
    assert_eq!(reference_place(&curved(), Point::new(f64::NAN, 1.0)), None);
}

// Coordinates of a section are rounded to some 1e-17 m: of a triangle of 30 µm that is more than 1e-12 of its size.
#[test]
fn issue_18_a_small_curved_triangle_far_from_the_origin_finds_its_places() {
    let (r, z, size) = (12.3e-3, 131.7e-3, 30e-6);
    let at = |x: f64, y: f64| Point::new(r + size * x, z + size * y);
    for turn in 0..400 {
        let angle = 0.016 * f64::from(turn);
        let (sine, cosine) = angle.sin_cos();
        let [a, b, c] = [
            at(cosine, sine),
            at(-0.5 * cosine - 0.8 * sine, 0.8 * cosine - 0.5 * sine),
            at(-0.4 * cosine + 0.9 * sine, -0.9 * cosine - 0.4 * sine),
        ];
        let mut nodes = straight(a, b, c);
        nodes[3].r += 0.03 * size;
        for place in DEGREE_6.iter().map(|at| at.place) {
            let point = mapping(&nodes, place).point;
            let [x, y] = reference_place(&nodes, point)
                .unwrap_or_else(|| panic!("turned by {angle}: nothing at {place:?}"));
            assert!((x - place[0]).abs() < 1e-9 && (y - place[1]).abs() < 1e-9);
        }
    }
}
