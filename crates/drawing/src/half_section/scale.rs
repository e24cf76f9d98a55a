//! Scale: distances along the cable as places on the page, with long stretches broken.

/// Aim for the ratio: millimetres on the cable per millimetre on the page.
const WANTED: f64 = 2.5;
/// Length from which a stretch without any plane is always broken, mm.
const LONGEST: f64 = 90.0;
/// Length that stays of a broken stretch, mm: tried in this order.
const KEPT: [f64; 4] = [14.0, 10.0, 7.0, 5.0];

/// Distances along the cable on the page.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Scale {
    /// Place on the page of the first plane, mm.
    origin: f64,
    /// Millimetres on the cable per millimetre on the page.
    pub(super) ratio: f64,
    first: f64,
    /// Pieces that are taken out: their ends, mm on the cable.
    gaps: Vec<[f64; 2]>,
}

impl Scale {
    /// Scale for planes (mm, in any order) from `origin` to `end` on the page, with a ratio of at least `least`.
    ///
    /// A stretch that begins before `whole` mm, the connector's mouth, is broken only if it is very long.
    pub(super) fn new(planes: &[f64], whole: f64, [origin, end]: [f64; 2], least: f64) -> Self {
        let room = end - origin;
        let mut planes: Vec<f64> = planes.iter().copied().filter(|x| x.is_finite()).collect();
        planes.sort_by(f64::total_cmp);
        let first = planes.first().copied().unwrap_or(0.0);
        let length = planes.last().copied().unwrap_or(0.0) - first;
        let mut stretches: Vec<[f64; 2]> = planes.windows(2).map(|x| [x[0], x[1]]).collect();
        stretches.sort_by(|a, b| (b[1] - b[0]).total_cmp(&(a[1] - a[0])));
        let mut gaps = Vec::new();
        let mut drawn = length;
        for kept in KEPT {
            gaps.clear();
            drawn = length;
            for [from, to] in &stretches {
                let is_long = to - from > LONGEST;
                let is_wanted = drawn > WANTED * room && *from >= whole;
                if !(is_long || is_wanted) || to - from < 1.5 * kept {
                    continue;
                }
                gaps.push([from + 0.5 * kept, to - 0.5 * kept]);
                drawn -= to - from - kept;
            }
            if drawn <= WANTED * room {
                break;
            }
        }
        gaps.sort_by(|a, b| a[0].total_cmp(&b[0]));
        let ratio = (10.0 * (drawn / room).max(least).max(1.0) - 1e-9).ceil() / 10.0;
        Self {
            origin,
            ratio,
            first,
            gaps,
        }
    }

    /// Place on the page, mm.
    pub(super) fn at(&self, mm: f64) -> f64 {
        let out: f64 = self
            .gaps
            .iter()
            .map(|[from, to]| (mm.min(*to) - from).max(0.0))
            .sum();
        self.origin + (mm - self.first - out) / self.ratio
    }

    /// Places of the breaks on the page, mm.
    pub(super) fn breaks(&self) -> Vec<f64> {
        self.gaps.iter().map(|[from, _]| self.at(*from)).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const PLANES: [f64; 7] = [-12.0, 0.0, 48.0, 51.0, 120.0, 260.0, 700.0];

    #[test]
    fn planes_stay_in_order_and_near_a_plane_the_scale_holds() {
        let scale = Scale::new(&PLANES, 48.0, [6.0, 113.0], 1.0);
        assert!(scale.ratio <= WANTED && !scale.gaps.is_empty(), "{scale:?}");
        assert!(scale.at(700.0) <= 113.0 + 1e-9 && scale.at(-12.0) == 6.0);
        for pair in PLANES.windows(2) {
            assert!(scale.at(pair[0]) < scale.at(pair[1]), "{pair:?}");
        }
        for plane in PLANES {
            let true_to_scale = scale.at(plane + 1.0) - scale.at(plane - 1.0);
            assert!((true_to_scale * scale.ratio - 2.0).abs() < 1e-9, "{plane}");
        }
        // The twin: the ratio does not hold in a break.
        let across = scale.at(491.0) - scale.at(449.0);
        assert!(across * scale.ratio < 42.0 - 1.0, "{across}");
    }

    #[test]
    fn what_fits_is_not_broken_unless_it_is_very_long() {
        let scale = |planes: &[f64]| Scale::new(planes, 0.0, [0.0, 100.0], 1.0);
        assert!(scale(&[0.0, 60.0, 120.0, 180.0]).gaps.is_empty());
        assert_eq!(scale(&[0.0, 60.0, 152.0]).gaps.len(), 1);
        assert_eq!(scale(&[]).ratio, 1.0);
    }
}
