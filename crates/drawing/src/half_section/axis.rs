//! Axis: where a place along the leg lies in the picture, with long stretches broken.

/// Scales that a drawing may have, as the 2.5 of 1 : 2.5.
const SCALES: [f64; 9] = [1.0, 1.25, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 8.0];
/// Scale up to which a drawing is not broken.
const WHOLE_MOST: f64 = 3.0;
/// Shortest that a broken stretch is drawn, mm of paper.
const BROKEN_LEAST: f64 = 14.0;

/// A stretch between two places that something is drawn at.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Stretch {
    /// From, to, mm along the leg.
    along: [f64; 2],
    /// From, to, mm of paper.
    paper: [f64; 2],
}

/// Places along a leg on paper.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Axis {
    stretches: Vec<Stretch>,
    /// The 2.5 of 1 : 2.5.
    pub(crate) scale: f64,
}

impl Axis {
    /// An axis for places from 0 on, in order, that has `room` mm of paper from `left` on.
    pub(crate) fn new(places: &[f64], left: f64, room: f64) -> Axis {
        let mut places: Vec<f64> = places.iter().copied().filter(|p| p.is_finite()).collect();
        places.push(0.0);
        places.sort_by(f64::total_cmp);
        places.dedup();
        let gaps: Vec<f64> = places.windows(2).map(|p| p[1] - p[0]).collect();
        let (scale, most) = fitting(&gaps, room);
        let mut paper = left;
        let mut stretches = Vec::new();
        for (pair, gap) in places.windows(2).zip(&gaps) {
            let drawn = (gap / scale).min(most);
            stretches.push(Stretch {
                along: [pair[0], pair[1]],
                paper: [paper, paper + drawn],
            });
            paper += drawn;
        }
        if stretches.is_empty() {
            stretches.push(Stretch {
                along: [0.0, scale],
                paper: [left, left + 1.0],
            });
        }
        Axis { stretches, scale }
    }

    /// Place on paper, mm.
    pub(crate) fn at(&self, along: f64) -> f64 {
        let inside = self
            .stretches
            .iter()
            .find(|s| along >= s.along[0] && along <= s.along[1]);
        if let Some(s) = inside {
            let share = (along - s.along[0]) / (s.along[1] - s.along[0]);
            return s.paper[0] + share * (s.paper[1] - s.paper[0]);
        }
        // Beyond either end the scale goes on.
        let (first, last) = (self.stretches[0], self.stretches[self.stretches.len() - 1]);
        if along < first.along[0] {
            first.paper[0] + (along - first.along[0]) / self.scale
        } else {
            last.paper[1] + (along - last.along[1]) / self.scale
        }
    }

    /// Middles, on paper, of the stretches that are drawn shorter than to scale.
    pub(crate) fn breaks(&self) -> Vec<f64> {
        let broken = |s: &&Stretch| {
            let to_scale = (s.along[1] - s.along[0]) / self.scale;
            to_scale > s.paper[1] - s.paper[0] + 1.0e-9
        };
        self.stretches
            .iter()
            .filter(broken)
            .map(|s| 0.5 * (s.paper[0] + s.paper[1]))
            .collect()
    }

    /// Right end of what is drawn, mm of paper.
    pub(crate) fn right(&self) -> f64 {
        self.stretches[self.stretches.len() - 1].paper[1]
    }
}

/// Scale, and the most that one stretch is drawn at, mm of paper, so that all of it has room.
fn fitting(gaps: &[f64], room: f64) -> (f64, f64) {
    let drawn = |scale: f64, most: f64| gaps.iter().map(|gap| (gap / scale).min(most)).sum::<f64>();
    for scale in SCALES {
        if drawn(scale, f64::INFINITY) <= room {
            return (scale, f64::INFINITY);
        }
        if scale < WHOLE_MOST {
            continue;
        }
        let mut most = room;
        while most >= BROKEN_LEAST {
            if drawn(scale, most) <= room {
                return (scale, most);
            }
            most -= 1.0;
        }
    }
    let n = gaps.len().max(1) as f64;
    (SCALES[SCALES.len() - 1], room / n)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_short_leg_is_whole_and_to_one_scale() {
        let axis = Axis::new(&[40.0, 90.0], 10.0, 100.0);
        assert_eq!((axis.scale, axis.breaks()), (1.0, Vec::new()));
        assert_eq!(axis.at(40.0), 50.0);
        assert_eq!(axis.at(65.0), 75.0);
        assert_eq!(axis.at(-10.0), 0.0);
    }

    #[test]
    fn a_long_stretch_is_broken_and_the_others_stay_to_scale() {
        let axis = Axis::new(&[50.0, 900.0, 950.0], 0.0, 100.0);
        assert_eq!(axis.scale, WHOLE_MOST);
        assert_eq!(axis.breaks().len(), 1);
        let drawn = 50.0 / WHOLE_MOST;
        assert!((axis.at(50.0) - drawn).abs() < 1.0e-9);
        assert!((axis.at(950.0) - axis.at(900.0) - drawn).abs() < 1.0e-9);
        assert!(axis.right() <= 100.0 + 1.0e-9);
    }

    #[test]
    fn places_keep_their_order_whatever_they_are() {
        let axis = Axis::new(&[3.0, 6.0, 9.0, 2000.0, 2003.0], 0.0, 60.0);
        let found: Vec<f64> = [0.0, 3.0, 6.0, 9.0, 2000.0, 2003.0]
            .map(|p| axis.at(p))
            .to_vec();
        assert!(
            found.is_sorted() && axis.right() <= 60.0 + 1.0e-9,
            "{found:?}"
        );
    }
}
