use super::*;

/// A chain of n unknowns: 2 on the diagonal, −1 beside it; positive definite.
fn chain(n: usize) -> (Structure, Vec<f64>) {
    let mut starts = vec![0];
    let (mut rows, mut values) = (Vec::new(), Vec::new());
    for column in 0..n {
        rows.push(column as u32);
        values.push(2.0);
        if column + 1 < n {
            rows.push(column as u32 + 1);
            values.push(-1.0);
        }
        starts.push(rows.len() as u32);
    }
    (Structure::new(starts, rows).unwrap(), values)
}

/// Same as [`chain`], with the entries above the diagonal too.
fn square_chain(n: usize) -> (Structure, Vec<f64>) {
    let mut starts = vec![0];
    let (mut rows, mut values) = (Vec::new(), Vec::new());
    for column in 0..n {
        for row in column.saturating_sub(1)..(column + 2).min(n) {
            rows.push(row as u32);
            values.push(if row == column { 2.0 } else { -1.0 });
        }
        starts.push(rows.len() as u32);
    }
    (Structure::new(starts, rows).unwrap(), values)
}

fn ordered(structure: &Structure) -> Structure {
    structure.clone().into_ordered()
}

#[test]
fn a_chain_between_grounds_hangs_in_a_parabola() {
    let n = 200;
    let (structure, values) = chain(n);
    for structure in [structure.clone(), ordered(&structure)] {
        let mut cholesky = Cholesky::new(&structure).unwrap();
        let factor = cholesky.factorise(&values).unwrap();
        let mut solution = vec![1.0; n];
        factor.solve(&mut solution).unwrap();
        // −u'' = 1 with steps of 1: u_i = (i + 1)(n − i) / 2, at most about 5000; a condition of about 2e4.
        for (index, value) in solution.iter().enumerate() {
            let exact = (index + 1) as f64 * (n - index) as f64 / 2.0;
            assert!((value / exact - 1.0).abs() < 1e-11);
        }
        assert!(residual(&structure, true, &values, &solution, &vec![1.0; n]) < 1e-15);
        // The twin: one value off.
        solution[7] += 1e-3;
        assert!(residual(&structure, true, &values, &solution, &vec![1.0; n]) > 1e-9);
    }
}

#[test]
fn several_right_hand_sides_are_solved_as_one_by_one() {
    let n = 50;
    let (structure, values) = chain(n);
    let mut cholesky = Cholesky::new(&structure).unwrap();
    let factor = cholesky.factorise(&values).unwrap();
    let rhs: Vec<f64> = (0..3 * n)
        .map(|index| ((index * 37) % 11) as f64 - 5.0)
        .collect();
    let mut together = rhs.clone();
    factor.solve(&mut together).unwrap();
    for (one, whole) in rhs.chunks_exact(n).zip(together.chunks_exact(n)) {
        let mut alone = one.to_vec();
        factor.solve(&mut alone).unwrap();
        assert!(alone.iter().zip(whole).all(|(a, b)| (a - b).abs() < 1e-12));
        assert!(residual(&structure, true, &values, whole, one) < 1e-15);
    }
}

#[test]
fn matrix_that_is_not_positive_is_told_with_its_unknown() {
    // A chain with no ground at either end is singular; one with a negative diagonal is indefinite.
    for structure in [chain(40).0, ordered(&chain(40).0)] {
        let mut values = chain(40).1;
        let mut cholesky = Cholesky::new(&structure).unwrap();
        let middle = structure.diagonal_entry(20);
        values[middle] = -5.0;
        let error = cholesky.factorise(&values).unwrap_err();
        assert!(matches!(error, SparseError::NotPositive { unknown } if unknown < 40));
        // The twin; also, a failure leaves the solver usable.
        values[middle] = 2.0;
        assert!(cholesky.factorise(&values).is_ok());
    }
}

#[test]
fn singular_matrices_are_errors() {
    // Two unknowns that float together.
    let (structure, _) = chain(2);
    let floating = [1.0, -1.0, 1.0];
    let error = Cholesky::new(&structure)
        .unwrap()
        .factorise(&floating)
        .unwrap_err();
    assert!(matches!(error, SparseError::NotPositive { .. }));
    let error = QuasiDefinite::new(&structure)
        .unwrap()
        .factorise(&floating, &[0.0; 3])
        .unwrap_err();
    assert!(matches!(error, SparseError::NotPositive { .. }));
    let (square, _) = square_chain(2);
    let mut lu = Lu::new(&square).unwrap();
    let solved = lu
        .factorise(&[1.0, -1.0, -1.0, 1.0])
        .and_then(|factor| factor.solve(&mut [1.0, 0.0]));
    assert_eq!(solved, Err(SparseError::Singular));
    let zero = lu
        .factorise(&[0.0; 4])
        .and_then(|factor| factor.solve(&mut [1.0, 0.0]));
    assert_eq!(zero, Err(SparseError::Singular));
}

const HOSTILE: [f64; 6] = [
    f64::NAN,
    f64::INFINITY,
    f64::NEG_INFINITY,
    1e308,
    -1e308,
    f64::MIN_POSITIVE,
];

/// Puts each hostile value at each entry in turn: a value that is not finite must be reported, and a finite one must not panic.
#[track_caller]
fn check_hostile(values: &[f64], mut solve: impl FnMut(&[f64]) -> Vec<Result<(), SparseError>>) {
    for bad in HOSTILE {
        for index in 0..values.len() {
            let mut changed = values.to_vec();
            changed[index] = bad;
            let what = Values::Matrix;
            for result in solve(&changed) {
                if !bad.is_finite() {
                    assert_eq!(result, Err(SparseError::NotFinite { what, index }));
                }
            }
        }
    }
    // The twin: the original values are solved.
    assert!(solve(values).iter().all(Result::is_ok));
}

#[test]
fn hostile_values_in_symmetric_matrices_are_errors_and_never_panics() {
    let n = 30;
    let (lower, values) = chain(n);
    for structure in [lower.clone(), ordered(&lower)] {
        let mut cholesky = Cholesky::new(&structure).unwrap();
        let mut complex = QuasiDefinite::new(&structure).unwrap();
        check_hostile(&values, |changed| {
            let real = cholesky
                .factorise(changed)
                .and_then(|factor| factor.solve(&mut vec![1.0; n]));
            let mut pair = |one: &[f64], other: &[f64]| {
                let (mut x, mut y) = (vec![1.0; n], vec![0.0; n]);
                let factor = complex.factorise(one, other)?;
                factor.solve(&mut x, &mut y)
            };
            vec![real, pair(changed, &values), pair(&values, changed)]
        });
    }
}

#[test]
fn hostile_values_in_unsymmetric_matrices_are_errors_and_never_panics() {
    let (square, values) = square_chain(30);
    let mut lu = Lu::new(&square).unwrap();
    check_hostile(&values, |changed| {
        let factor = lu.factorise(changed);
        vec![factor.and_then(|factor| factor.solve(&mut [1.0; 30]))]
    });
}

#[test]
fn right_hand_side_that_is_no_number_is_an_error() {
    let (structure, values) = chain(5);
    let mut cholesky = Cholesky::new(&structure).unwrap();
    let factor = cholesky.factorise(&values).unwrap();
    let error = factor.solve(&mut [0.0, 0.0, 0.0, f64::NAN, 0.0]);
    let what = Values::RightHandSide;
    assert_eq!(error, Err(SparseError::NotFinite { what, index: 3 }));
    assert_eq!(factor.solve(&mut [0.0; 5]), Ok(()));
}

#[test]
fn complex_chain_is_solved_and_a_real_part_that_is_not_positive_refused() {
    let n = 60;
    let (lower, values) = chain(n);
    let imaginary: Vec<f64> = values
        .iter()
        .enumerate()
        .map(|(index, value)| value * (index % 5) as f64)
        .collect();
    for structure in [lower.clone(), ordered(&lower)] {
        let mut solver = QuasiDefinite::new(&structure).unwrap();
        let (f, g): (Vec<f64>, Vec<f64>) = (0..n)
            .map(|index| (index as f64, 1.0 - index as f64))
            .unzip();
        let (mut x, mut y) = (f.clone(), g.clone());
        solver
            .factorise(&values, &imaginary)
            .unwrap()
            .solve(&mut x, &mut y)
            .unwrap();
        let rest = |x: &[f64], y: &[f64]| {
            complex_residual(&structure, [&values, &imaginary], [x, y], [&f, &g])
        };
        assert!(rest(&x, &y) < 1e-14);
        // The twins: the conjugate is no solution, and a negative real part is refused.
        let conjugate: Vec<f64> = y.iter().map(|value| -value).collect();
        assert!(rest(&x, &conjugate) > 1e-3);
        let negative: Vec<f64> = values.iter().map(|value| -value).collect();
        let error = solver.factorise(&negative, &imaginary).unwrap_err();
        assert!(matches!(error, SparseError::NotPositive { unknown } if unknown < n));
    }
}

#[test]
fn diagonal_matrices_and_none_at_all_are_solved() {
    // Without a chain of eliminations, the library stores the factor column by column.
    let diagonal = Structure::new(vec![0, 1, 2, 3], vec![0, 1, 2]).unwrap();
    for structure in [diagonal.clone(), ordered(&diagonal)] {
        let mut solution = [2.0, 6.0, 12.0];
        let mut cholesky = Cholesky::new(&structure).unwrap();
        cholesky
            .factorise(&[1.0, 2.0, 3.0])
            .unwrap()
            .solve(&mut solution)
            .unwrap();
        assert!(
            solution
                .iter()
                .zip([2.0, 3.0, 4.0])
                .all(|(a, b)| (a - b).abs() < 1e-14)
        );
        let mut solver = QuasiDefinite::new(&structure).unwrap();
        assert!(solver.factorise(&[1.0, -2.0, 3.0], &[0.0; 3]).is_err());
        assert!(solver.factorise(&[1.0, 2.0, 3.0], &[0.0; 3]).is_ok());
    }
    let none = Structure::new(vec![0], vec![]).unwrap();
    for structure in [none.clone(), ordered(&none)] {
        Cholesky::new(&structure)
            .unwrap()
            .factorise(&[])
            .unwrap()
            .solve(&mut [])
            .unwrap();
        let mut solver = QuasiDefinite::new(&structure).unwrap();
        solver
            .factorise(&[], &[])
            .unwrap()
            .solve(&mut [], &mut [])
            .unwrap();
    }
    Lu::new(&none)
        .unwrap()
        .factorise(&[])
        .unwrap()
        .solve(&mut [])
        .unwrap();
}

#[test]
fn unsymmetric_factors_of_a_symmetric_matrix_agree_with_its_own() {
    let n = 100;
    let (lower, values) = chain(n);
    let (square, square_values) = square_chain(n);
    let rhs: Vec<f64> = (0..n).map(|index| (index as f64).sin()).collect();
    let (mut one, mut other) = (rhs.clone(), rhs.clone());
    Cholesky::new(&lower)
        .unwrap()
        .factorise(&values)
        .unwrap()
        .solve(&mut one)
        .unwrap();
    let mut lu = Lu::new(&square).unwrap();
    lu.factorise(&square_values)
        .unwrap()
        .solve(&mut other)
        .unwrap();
    let most = |a: &[f64], b: &[f64]| {
        a.iter()
            .zip(b)
            .map(|(a, b)| (a - b).abs())
            .fold(0.0, f64::max)
    };
    assert!(
        most(&one, &other) < 1e-10,
        "off by {:e}",
        most(&one, &other)
    );
    // The twin: one entry above the diagonal changes, and the answer with it.
    let mut changed = square_values.clone();
    changed[2] = -0.9;
    let mut third = rhs.clone();
    lu.factorise(&changed).unwrap().solve(&mut third).unwrap();
    assert!(most(&one, &third) > 1e-2);
    assert!(residual(&square, false, &changed, &third, &rhs) < 1e-14);
}

#[test]
fn structures_that_are_none_are_refused() {
    let error =
        |starts: &[u32], rows: &[u32]| Structure::new(starts.to_vec(), rows.to_vec()).unwrap_err();
    assert_eq!(error(&[], &[]), SparseError::Structure { column: 0 });
    assert_eq!(
        error(&[0, 1, 2], &[0, 0]),
        SparseError::Structure { column: 1 }
    );
    assert_eq!(
        error(&[0, 2, 3], &[0, 2, 1]),
        SparseError::Structure { column: 0 }
    );
    assert_eq!(
        error(&[0, 2, 1], &[0, 1]),
        SparseError::Structure { column: 1 }
    );
    assert_eq!(
        error(&[0, 1, 9], &[0, 1]),
        SparseError::Structure { column: 1 }
    );
    assert_eq!(
        error(&[0, 1, 2], &[0, 1, 1]),
        SparseError::Structure { column: 2 }
    );
    let upper = Structure::new(vec![0, 1, 3], vec![0, 0, 1]).unwrap();
    assert_eq!(
        Cholesky::new(&upper).err(),
        Some(SparseError::Structure { column: 1 })
    );
    assert_eq!(
        QuasiDefinite::new(&upper).err(),
        Some(SparseError::Structure { column: 1 })
    );
    assert!(Cholesky::new(&chain(2).0).is_ok());
}
