//! Colours: from light to dark, so they keep their order in grey.

/// Bands of a picture, weakest first, as red, green, blue.
///
/// The lightness L* falls by the same step from band to band, so a copy in grey says the same and no step looks larger than another.
pub(crate) const BANDS: [[u8; 3]; 10] = [
    [253, 248, 232],
    [243, 222, 178],
    [240, 192, 114],
    [230, 162, 84],
    [217, 133, 69],
    [198, 106, 64],
    [173, 82, 66],
    [143, 63, 66],
    [112, 47, 64],
    [78, 34, 60],
];

/// A colour as SVG writes it.
pub(crate) fn hex([red, green, blue]: [u8; 3]) -> String {
    format!("#{red:02x}{green:02x}{blue:02x}")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_band_is_darker_than_the_one_before() {
        let lightness = |[red, green, blue]: [u8; 3]| {
            0.2126 * f64::from(red) + 0.7152 * f64::from(green) + 0.0722 * f64::from(blue)
        };
        for pair in BANDS.windows(2) {
            assert!(lightness(pair[0]) > lightness(pair[1]) + 8.0, "{pair:?}");
        }
    }

    /// L* of the CIE (1976), white at 100.
    fn l_star(colour: [u8; 3]) -> f64 {
        let linear = colour.map(|part| {
            let share = f64::from(part) / 255.0;
            if share <= 0.04045 {
                share / 12.92
            } else {
                ((share + 0.055) / 1.055).powf(2.4)
            }
        });
        let light = 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2];
        116.0 * light.cbrt() - 16.0
    }

    #[test]
    fn each_step_of_lightness_is_as_large_as_any_other() {
        let mean = (l_star(BANDS[0]) - l_star(BANDS[9])) / 9.0;
        assert!(mean > 8.0, "{mean}");
        for pair in BANDS.windows(2) {
            let step = l_star(pair[0]) - l_star(pair[1]);
            // A colour of whole 255ths cannot be closer to it than this.
            assert!(
                (step - mean).abs() < 0.04 * mean,
                "{pair:?}: {step} for {mean}"
            );
        }
    }
}
