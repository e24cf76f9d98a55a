//! Colours: from light to dark, so that they keep their order without colour.

/// Bands of a picture, weakest first, as red, green, blue.
///
/// The lightness falls from band to band, so that a copy in grey says the same.
pub(crate) const BANDS: [[u8; 3]; 10] = [
    [253, 248, 232],
    [250, 236, 196],
    [246, 219, 156],
    [241, 196, 118],
    [233, 169, 88],
    [220, 138, 70],
    [198, 106, 64],
    [166, 76, 66],
    [124, 52, 66],
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
}
