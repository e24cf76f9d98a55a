//! Bounds: rectangles about drawn things, and their intersections.

/// A place on the page, picture points.
pub(crate) type Place = [f64; 2];

/// A rectangle, picture points.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Bounds {
    pub(crate) left: f64,
    pub(crate) top: f64,
    pub(crate) right: f64,
    pub(crate) bottom: f64,
}

impl Bounds {
    /// Rectangle from a corner and a size.
    pub(crate) fn new([left, top]: Place, [width, height]: [f64; 2]) -> Self {
        Self {
            left,
            top,
            right: left + width,
            bottom: top + height,
        }
    }

    /// Rectangle larger by an amount on every side; smaller if it is negative.
    pub(crate) fn grown(&self, by: f64) -> Self {
        Self {
            left: self.left - by,
            top: self.top - by,
            right: self.right + by,
            bottom: self.bottom + by,
        }
    }

    /// Whether two rectangles share more than an edge.
    pub(crate) fn meets(&self, other: &Self) -> bool {
        self.left < other.right
            && other.left < self.right
            && self.top < other.bottom
            && other.top < self.bottom
    }

    /// Whether it lies completely in another.
    pub(crate) fn is_in(&self, other: &Self) -> bool {
        self.left >= other.left
            && self.right <= other.right
            && self.top >= other.top
            && self.bottom <= other.bottom
    }

    /// Whether a place lies in it or on its edge.
    pub(crate) fn holds(&self, [x, y]: Place) -> bool {
        x >= self.left && x <= self.right && y >= self.top && y <= self.bottom
    }

    /// Whether a straight line passes through it.
    pub(crate) fn is_crossed(&self, [from, to]: [Place; 2]) -> bool {
        let (mut low, mut high) = (0.0_f64, 1.0_f64);
        let limits = [[self.left, self.right], [self.top, self.bottom]];
        for axis in 0..2 {
            let way = to[axis] - from[axis];
            let [least, most] = limits[axis].map(|limit| limit - from[axis]);
            if way == 0.0 {
                if least >= 0.0 || most <= 0.0 {
                    return false;
                }
                continue;
            }
            let (a, b) = (least / way, most / way);
            low = low.max(a.min(b));
            high = high.min(a.max(b));
        }
        low < high
    }
}

/// Whether two straight lines cross between their ends; a common end is no crossing.
pub(crate) fn do_cross([a, b]: [Place; 2], [c, d]: [Place; 2]) -> bool {
    let turn = |p: Place, q: Place, s: Place| {
        (q[0] - p[0]) * (s[1] - p[1]) - (q[1] - p[1]) * (s[0] - p[0])
    };
    turn(a, b, c) * turn(a, b, d) < 0.0 && turn(c, d, a) * turn(c, d, b) < 0.0
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_line_crosses_a_rectangle_only_where_it_passes_through() {
        let bounds = Bounds::new([10.0, 10.0], [20.0, 10.0]);
        for (line, is_crossed) in [
            ([[0.0, 0.0], [40.0, 30.0]], true),
            ([[15.0, 12.0], [16.0, 13.0]], true),
            ([[0.0, 0.0], [40.0, 5.0]], false),
            ([[20.0, 0.0], [20.0, 40.0]], true),
            ([[5.0, 0.0], [5.0, 40.0]], false),
            ([[0.0, 25.0], [9.0, 10.0]], false),
        ] {
            assert_eq!(bounds.is_crossed(line), is_crossed, "{line:?}");
        }
    }

    #[test]
    fn lines_that_share_an_end_do_not_cross() {
        let [o, a, b] = [[0.0, 0.0], [4.0, 4.0], [4.0, 0.0]];
        assert!(!do_cross([o, a], [o, b]));
        assert!(do_cross([o, a], [[0.0, 3.0], b]));
    }
}
