//! Integral: numerical quadrature of a smooth function, with its estimated error.
//!
//! Source: the 7-point Gauss and 15-point Kronrod rules; nodes as in QUADPACK (Piessens and others, 1983).

/// Nodes of the 15-point rule on the positive side; every second one belongs to the 7-point rule.
const NODES: [f64; 8] = [
    0.991_455_371_120_812_6,
    0.949_107_912_342_758_5,
    0.864_864_423_359_769_1,
    0.741_531_185_599_394_4,
    0.586_087_235_467_691_1,
    0.405_845_151_377_397_2,
    0.207_784_955_007_898_47,
    0.0,
];
/// Weights of the 15-point rule.
const WEIGHTS: [f64; 8] = [
    0.022_935_322_010_529_224,
    0.063_092_092_629_978_55,
    0.104_790_010_322_250_18,
    0.140_653_259_715_525_92,
    0.169_004_726_639_267_9,
    0.190_350_578_064_785_4,
    0.204_432_940_075_298_9,
    0.209_482_141_084_727_82,
];
/// Weights of the 7-point rule.
const WEIGHTS_7: [f64; 4] = [
    0.129_484_966_168_869_7,
    0.279_705_391_489_276_64,
    0.381_830_050_505_118_9,
    0.417_959_183_673_469_4,
];
/// Relative error at which an interval is no longer divided.
const CLOSE: f64 = 1e-12;
/// Greatest number of halvings of an interval.
const DEPTH_MOST: u32 = 12;

/// Integral from `from` to `to`, and its estimated error.
///
/// # Errors
/// The first error that the function returns.
pub(super) fn integral<E>(
    f: &impl Fn(f64) -> Result<f64, E>,
    from: f64,
    to: f64,
) -> Result<(f64, f64), E> {
    halved(f, from, to, DEPTH_MOST)
}

fn halved<E>(
    f: &impl Fn(f64) -> Result<f64, E>,
    from: f64,
    to: f64,
    depth: u32,
) -> Result<(f64, f64), E> {
    let (value, error) = rule(f, from, to)?;
    if depth == 0 || error <= CLOSE * value.abs() {
        return Ok((value, error));
    }
    let middle = 0.5 * (from + to);
    let (left, left_error) = halved(f, from, middle, depth - 1)?;
    let (right, right_error) = halved(f, middle, to, depth - 1)?;
    Ok((left + right, left_error + right_error))
}

fn rule<E>(f: &impl Fn(f64) -> Result<f64, E>, from: f64, to: f64) -> Result<(f64, f64), E> {
    let (middle, half) = (0.5 * (from + to), 0.5 * (to - from));
    let at_middle = f(middle)?;
    let mut of_15 = WEIGHTS[7] * at_middle;
    let mut of_7 = WEIGHTS_7[3] * at_middle;
    let mut size = of_15.abs();
    for (index, node) in NODES.iter().enumerate().take(7) {
        let (left, right) = (f(middle - half * node)?, f(middle + half * node)?);
        of_15 += WEIGHTS[index] * (left + right);
        size += WEIGHTS[index] * (left.abs() + right.abs());
        if index % 2 == 1 {
            of_7 += WEIGHTS_7[index / 2] * (left + right);
        }
    }
    // The 15-point rule is far better than the 7-point rule; QUADPACK scales the difference in the same way.
    let difference = (of_15 - of_7).abs();
    let scaled = if size > 0.0 {
        size * (200.0 * difference / size).powf(1.5).min(1.0)
    } else {
        0.0
    };
    let error = scaled.min(difference).max(4.0 * f64::EPSILON * size);
    Ok((of_15 * half, error * half.abs()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::convert::Infallible;

    fn of(f: impl Fn(f64) -> f64, from: f64, to: f64) -> (f64, f64) {
        integral::<Infallible>(&|x| Ok(f(x)), from, to).expect("never fails")
    }

    // Oracle: the rule is exact for polynomials up to degree 22; the integral of the logarithm is known.
    #[test]
    fn polynomials_and_a_sharp_peak_come_out() {
        for power in [0, 7, 20, 22] {
            let (value, _) = of(|x: f64| x.powi(power), 0.0, 2.0);
            let exact = 2.0_f64.powi(power + 1) / f64::from(power + 1);
            assert!((value - exact).abs() < 1e-13 * exact, "{power}");
        }
        let (value, error) = of(|x: f64| 1.0 / (x * x + 1e-4), -1.0, 1.0);
        let exact = 2.0 * 100.0 * (100.0_f64).atan();
        assert!((value - exact).abs() <= error.max(1e-9), "{value} {exact}");
        assert!(error < 1e-8);
    }

    // A rule with one weight off by a thousandth would be detected.
    #[test]
    fn the_weights_add_up_to_the_length() {
        let sum = |weights: &[f64]| {
            let n = weights.len();
            2.0 * weights[..n - 1].iter().sum::<f64>() + weights[n - 1]
        };
        assert!((sum(&WEIGHTS) - 2.0).abs() < 1e-15);
        assert!((sum(&WEIGHTS_7) - 2.0).abs() < 1e-15);
    }
}
