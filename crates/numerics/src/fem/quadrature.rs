//! Points and weights for integrals over the reference triangle (0,0) (1,0) (0,1).
//!
//! **What.** Two symmetric rules: six points of degree 4, twelve points of degree 6.
//!
//! **Why separate.** Tabulated numbers stand apart from the code that uses them.
//!
//! **Invariants.** All weights are positive and add up to the area 1/2; all points lie inside.
//!
//! **Source.** Points and weights from memory of the rules of Dunavant (1985), then brought to the last digit of an `f64`
//! by solving their moment equations with 40 digits; the tests compare every monomial with its closed form.

/// A point of the reference triangle with its weight.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct QuadraturePoint {
    /// Place in the reference triangle (x, y).
    pub place: [f64; 2],
    /// Weight; the weights of a rule add up to 1/2.
    pub weight: f64,
}

/// Exact for polynomials up to degree 4: on straight triangles grad · grad r has degree 3.
pub const DEGREE_4: [QuadraturePoint; 6] = {
    let outer = three(0.445_948_490_915_964_9, 0.223_381_589_678_011_47);
    let inner = three(0.091_576_213_509_770_74, 0.109_951_743_655_321_87);
    [outer[0], outer[1], outer[2], inner[0], inner[1], inner[2]]
};

/// Exact for polynomials up to degree 6: for curved triangles, whose integrands are not polynomials.
pub const DEGREE_6: [QuadraturePoint; 12] = {
    let middle = three(0.249_286_745_170_910_42, 0.116_786_275_726_379_37);
    let corner = three(0.063_089_014_491_502_23, 0.050_844_906_370_206_82);
    let side = six(
        0.053_145_049_844_816_95,
        0.310_352_451_033_784_4,
        0.082_851_075_618_373_58,
    );
    [
        middle[0], middle[1], middle[2], corner[0], corner[1], corner[2], side[0], side[1],
        side[2], side[3], side[4], side[5],
    ]
};

/// The three points with two equal barycentric coordinates; `share` of the whole area each.
const fn three(equal: f64, share: f64) -> [QuadraturePoint; 3] {
    let other = 1.0 - 2.0 * equal;
    [
        point(equal, equal, share),
        point(equal, other, share),
        point(other, equal, share),
    ]
}

/// The six points with three different barycentric coordinates; `share` of the whole area each.
const fn six(first: f64, second: f64, share: f64) -> [QuadraturePoint; 6] {
    let third = 1.0 - first - second;
    [
        point(first, second, share),
        point(second, first, share),
        point(first, third, share),
        point(third, first, share),
        point(second, third, share),
        point(third, second, share),
    ]
}

const fn point(x: f64, y: f64, share: f64) -> QuadraturePoint {
    QuadraturePoint {
        place: [x, y],
        weight: 0.5 * share,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// ∫ x^p y^q over the reference triangle is p! q! / (p + q + 2)!.
    fn closed_form(p: u32, q: u32) -> f64 {
        let factorial = |n: u32| (1..=n).map(f64::from).product::<f64>();
        factorial(p) * factorial(q) / factorial(p + q + 2)
    }

    /// Greatest relative error over the monomials of one degree.
    fn error_of_degree(rule: &[QuadraturePoint], degree: u32) -> f64 {
        let error = |p: u32| {
            let q = degree - p;
            let sum: f64 = rule
                .iter()
                .map(|at| at.weight * at.place[0].powi(p as i32) * at.place[1].powi(q as i32))
                .sum();
            (sum / closed_form(p, q) - 1.0).abs()
        };
        (0..=degree).map(error).fold(0.0, f64::max)
    }

    #[track_caller]
    fn check_exact_to(rule: &[QuadraturePoint], degree: u32) {
        // A dozen terms, each rounded a few times: 1e-14 is about fifty roundings.
        for lower in 0..=degree {
            let error = error_of_degree(rule, lower);
            assert!(error < 1e-14, "degree {lower}: {error:e}");
        }
        // The twin: a polynomial one degree higher is not integrated exactly, so the comparison can fail.
        assert!(error_of_degree(rule, degree + 1) > 1e-5);
        let mut moved = rule.to_vec();
        moved[0].place[0] += 1e-9;
        assert!((0..=degree).any(|lower| error_of_degree(&moved, lower) > 1e-14));
    }

    #[test]
    fn six_points_are_exact_to_degree_4() {
        check_exact_to(&DEGREE_4, 4);
    }

    #[test]
    fn twelve_points_are_exact_to_degree_6() {
        check_exact_to(&DEGREE_6, 6);
    }

    #[test]
    fn weights_are_positive_and_add_up_to_the_area() {
        for rule in [&DEGREE_4[..], &DEGREE_6[..]] {
            assert!(rule.iter().all(|at| at.weight > 0.0));
            let sum: f64 = rule.iter().map(|at| at.weight).sum();
            assert!((sum - 0.5).abs() < 4.0 * f64::EPSILON);
        }
    }
}
