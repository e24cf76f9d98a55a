//! Place: the curves and regions of an outline at a place, or along a straight line.
//!
//! **Invariants.** The outline has passed [`super::check()`] without a flaw; for another outline the answers mean little, but nothing fails.

use super::contact::TOUCH;
use super::piece::Piece;
use super::winding::winding;
use super::{Outline, Point, Shape};

/// A curve at a place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CurveAt {
    /// Index of the curve.
    pub curve_index: usize,
    /// Unit vector (r, z) along it there.
    pub tangent: [f64; 2],
}

impl Outline {
    /// Share of a curve's length at which it is nearest to a place, and that distance, m; `None` if there is no such curve.
    ///
    /// ```
    /// use jointwright_numerics::outline::{Curve, Outline, Point, Shape};
    /// let outline = Outline {
    ///     points: vec![Point::new(0.1, 0.0), Point::new(0.0, 0.1)],
    ///     curves: vec![Curve { from: 0, to: 1, shape: Shape::Arc { center: Point::new(0.0, 0.0) }, tag: "rim".to_owned() }],
    ///     regions: vec![],
    /// };
    /// let (share, distance) = outline.nearest(0, Point::new(0.05, 0.05)).unwrap();
    /// assert!((share - 0.5).abs() < 1e-12 && (distance - (0.1 - 0.05 * 2.0_f64.sqrt())).abs() < 1e-12);
    /// ```
    pub fn nearest(&self, curve_index: usize, place: Point) -> Option<(f64, f64)> {
        self.piece(curve_index).map(|piece| piece.nearest(place))
    }

    /// The curves on which a place lies, within 1e-9 m.
    ///
    /// ```
    /// use jointwright_numerics::outline::{Curve, Outline, Point, Shape};
    /// let outline = Outline {
    ///     points: vec![Point::new(0.0, 0.0), Point::new(0.0, 0.4)],
    ///     curves: vec![Curve { from: 0, to: 1, shape: Shape::Line, tag: "axis".to_owned() }],
    ///     regions: vec![],
    /// };
    /// assert_eq!(outline.curves_at(Point::new(0.0, 0.3))[0].tangent, [0.0, 1.0]);
    /// assert!(outline.curves_at(Point::new(0.1, 0.3)).is_empty());
    /// ```
    pub fn curves_at(&self, place: Point) -> Vec<CurveAt> {
        let mut found = Vec::new();
        for curve_index in 0..self.curves.len() {
            let Some(piece) = self.piece(curve_index) else {
                continue;
            };
            let (t, distance) = piece.nearest(place);
            if distance <= TOUCH {
                found.push(CurveAt {
                    curve_index,
                    tangent: piece.tangent(t),
                });
            }
        }
        found
    }

    /// The regions that contain a place, or have it on their boundary within 1e-9 m.
    ///
    /// ```
    /// use jointwright_numerics::outline::{Curve, Outline, Point, Region, Shape, Side};
    /// let curve = |from, to| Curve { from, to, shape: Shape::Line, tag: "rim".to_owned() };
    /// let side = |curve_index| Side { curve_index, is_reversed: false };
    /// let outline = Outline {
    ///     points: vec![Point::new(0.0, 0.0), Point::new(0.2, 0.0), Point::new(0.0, 0.2)],
    ///     curves: vec![curve(0, 1), curve(1, 2), curve(2, 0)],
    ///     regions: vec![Region { name: "wall".to_owned(), boundary: vec![side(0), side(1), side(2)] }],
    /// };
    /// assert_eq!(outline.regions_at(Point::new(0.05, 0.05)), vec![0]);
    /// assert_eq!(outline.regions_at(Point::new(0.1, 0.1)), vec![0]);
    /// assert!(outline.regions_at(Point::new(0.1, 0.11)).is_empty());
    /// ```
    pub fn regions_at(&self, place: Point) -> Vec<usize> {
        (0..self.regions.len())
            .filter(|region_index| self.is_in_region(*region_index, place))
            .collect()
    }

    /// Whether a stretch of a straight line lies in the section, its boundary included.
    ///
    /// ```
    /// use jointwright_numerics::outline::{Outline, Point};
    /// assert!(!Outline::default().holds_part_of(Point::new(0.0, 0.0), Point::new(0.0, 1.0)));
    /// ```
    pub fn holds_part_of(&self, from: Point, to: Point) -> bool {
        let line = Piece::new(from, to, Shape::Line);
        // Between two places at which the line meets a curve, it lies in one region or in none.
        self.parted(&line).windows(2).any(|pair| {
            let is_long = (pair[1] - pair[0]) * line.length() > 4.0 * TOUCH;
            is_long
                && !self
                    .regions_at(line.place(0.5 * (pair[0] + pair[1])))
                    .is_empty()
        })
    }

    /// The first place at which a straight line leaves the section for a stretch, or `None` if it does not.
    ///
    /// ```
    /// use jointwright_numerics::outline::{Outline, Point};
    /// let (from, to) = (Point::new(0.0, 0.0), Point::new(0.0, 1.0));
    /// assert_eq!(Outline::default().leaves_at(from, to), Some(from));
    /// ```
    pub fn leaves_at(&self, from: Point, to: Point) -> Option<Point> {
        let line = Piece::new(from, to, Shape::Line);
        let shares = self.parted(&line);
        let outside = shares.windows(2).find(|pair| {
            let is_long = (pair[1] - pair[0]) * line.length() > 4.0 * TOUCH;
            is_long
                && self
                    .regions_at(line.place(0.5 * (pair[0] + pair[1])))
                    .is_empty()
        });
        outside.map(|pair| line.place(pair[0]))
    }

    /// Shares of a line at which it meets a curve, with both ends of the line.
    fn parted(&self, line: &Piece) -> Vec<f64> {
        let mut shares = vec![0.0, 1.0];
        for curve_index in 0..self.curves.len() {
            if let Some(piece) = self.piece(curve_index) {
                shares.extend(line.near(&piece, TOUCH).into_iter().flatten());
            }
        }
        shares.sort_by(f64::total_cmp);
        shares
    }

    fn is_in_region(&self, region_index: usize, place: Point) -> bool {
        let mut runs = Vec::new();
        for side in &self.regions[region_index].boundary {
            let Some(piece) = self.piece(side.curve_index) else {
                return false;
            };
            if piece.nearest(place).1 <= TOUCH {
                return true;
            }
            runs.push((piece, side.is_reversed));
        }
        winding(runs.iter().map(|(piece, run)| (piece, *run)), place) != 0
    }

    /// A curve with the places of its ends; `None` if there is no such curve.
    pub(crate) fn piece(&self, curve_index: usize) -> Option<Piece> {
        let curve = self.curves.get(curve_index)?;
        let (from, to) = (self.points.get(curve.from)?, self.points.get(curve.to)?);
        Some(Piece::new(*from, *to, curve.shape))
    }
}
