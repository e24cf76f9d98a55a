//! Level: round steps for bands, axes and scales.

/// Round number (1, 2 or 5 times a power of ten) at or above a positive number.
pub(crate) fn round_up(number: f64) -> f64 {
    up_to(number, &[1.0, 2.0, 5.0, 10.0])
}

/// The same with a finer choice of round numbers.
pub(crate) fn finely_up(number: f64) -> f64 {
    up_to(
        number,
        &[1.0, 1.2, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0],
    )
}

fn up_to(number: f64, factors: &[f64]) -> f64 {
    if !(number > 0.0 && number.is_finite()) {
        return 1.0;
    }
    let power = 10.0_f64.powf(number.log10().floor());
    // The last digits of a quotient of decimal numbers are rounding errors.
    let factor = factors
        .iter()
        .find(|factor| number <= **factor * power * (1.0 + 1e-9));
    factor.copied().unwrap_or(10.0) * power
}

/// A number with as many decimals as its step needs.
pub(crate) fn to_step(number: f64, step: f64) -> String {
    // One decimal more if the step has two digits, as 0.25.
    let mut n_places = (-step.log10().floor()).clamp(0.0, 12.0) as usize;
    let scaled = step * 10.0_f64.powf(n_places as f64);
    if (scaled - scaled.round()).abs() > 1e-6 * scaled {
        n_places += 1;
    }
    let text = format!("{number:.n_places$}");
    if text
        .trim_start_matches('-')
        .chars()
        .all(|c| matches!(c, '0' | '.'))
    {
        "0".to_owned()
    } else {
        text
    }
}

/// A number with three digits, without an exponent where that is readable.
pub(crate) fn short(number: f64) -> String {
    if number == 0.0 {
        return "0".to_owned();
    }
    let size = number.abs();
    if !(1e-4..1e6).contains(&size) {
        return format!("{number:.2e}");
    }
    let n_places = (2.0 - size.log10().floor()).clamp(0.0, 12.0) as usize;
    format!("{number:.n_places$}")
}

/// Multiples of a step within two limits.
pub(crate) fn multiples([low, high]: [f64; 2], step: f64) -> Vec<f64> {
    const MOST: f64 = 200.0;
    let (first, last) = ((low / step).ceil(), (high / step).floor());
    if (last - first).is_nan() || last - first > MOST {
        return Vec::new();
    }
    let mut found = Vec::new();
    let mut number = first;
    while number <= last {
        found.push(number * step);
        number += 1.0;
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn steps_are_round() {
        for (number, expected) in [
            (0.3, 0.5),
            (1.0, 1.0),
            (1.1, 2.0),
            (70.0, 100.0),
            (0.02, 0.02),
            (0.0, 1.0),
        ] {
            assert!((round_up(number) - expected).abs() < 1e-12, "{number}");
        }
        assert_eq!(to_step(0.30000000000000004, 0.1), "0.3");
        assert_eq!(to_step(0.75, 0.25), "0.75");
        assert_eq!(to_step(3e3, 1e3), "3000");
        assert!((finely_up(0.284) - 0.3).abs() < 1e-12);
        assert_eq!(to_step(-0.00001, 0.5), "0");
        assert_eq!(
            (short(0.012345), short(12.345), short(1234.5)),
            ("0.0123".to_owned(), "12.3".to_owned(), "1234".to_owned())
        );
    }
}
