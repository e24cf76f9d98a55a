//! Layout: where everything stands across a strip, and the sizes of its bars.

/// Room around the strip, so that its edges are seen, mm.
pub(super) const RIM: f64 = 1.5;
pub(super) const WIDTH: f64 = 60.0;
/// From left to right: the window's bar, the leader, the texts, the bars, and the left end of the millimetre scale, mm.
pub(super) const WINDOW: [f64; 2] = [8.5, 13.5];
pub(super) const LEADER: [f64; 2] = [14.0, 17.5];
pub(super) const TEXT: [f64; 2] = [18.0, 48.0];
pub(super) const BARS: [f64; 2] = [49.6, 51.8];
pub(super) const MM_LEFT: f64 = 53.0;
/// Columns of the numbers of inches and of millimetres, from left to right, mm.
pub(super) const FIGURES: [[f64; 2]; 2] = [[5.2, 9.0], [MM_LEFT, 57.4]];
/// Calibration bars: lengthwise in millimetres and in inches, and across, mm.
pub(super) const BAR_MM: f64 = 100.0;
pub(super) const BAR_IN: f64 = 4.0 * 25.4;
pub(super) const BAR_ACROSS: f64 = 30.0;
/// Beginning of the lengthwise bars, mm.
pub(super) const BAR_TOP: f64 = 5.0;
/// Height below which no strip is made: the bars must be on it, mm.
pub(super) const HEIGHT_LEAST: f64 = BAR_TOP + BAR_IN + 5.0;
/// Distance between the two lines at which pieces are joined, mm: the crew measures it.
pub(super) const JOIN: f64 = 25.4;
