//! Grid: division of an arm into cells, along and across.

use super::shape::{Arm, Slice};

/// Greatest ratio of the outer to the inner radius of a cell.
const RATIO_MOST: f64 = 1.15;
/// Number of cells across a core.
const N_CORE: usize = 1;
/// Length of a cell beside a step, as a share of the radius there.
const STEP_RATIO: f64 = 0.25;
/// Growth ratio of cells away from a step.
const GROWTH: f64 = 1.4;
/// Greatest length of a cell, m.
const LONGEST_M: f64 = 0.1;

/// Cells of an arm: all slices have the same radii, so that neighbours share their faces.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Grid {
    /// Radii, from 0, m.
    pub radii_m: Vec<f64>,
    /// Places along the axis, from 0, m.
    pub places_m: Vec<f64>,
    /// Slice of each cell along the axis.
    pub slice_of: Vec<usize>,
}

impl Grid {
    /// Divides an arm into cells; `fineness` = 1 is usual, 2 gives twice as many cells each way.
    pub fn new(arm: &Arm, fineness: usize) -> Grid {
        let (places_m, slice_of) = along(arm, fineness);
        Grid {
            radii_m: across(arm, fineness),
            places_m,
            slice_of,
        }
    }

    pub fn n_along(&self) -> usize {
        self.slice_of.len()
    }

    pub fn n_across(&self) -> usize {
        self.radii_m.len() - 1
    }

    /// Number of cells across a slice.
    pub fn n_of(&self, slice: &Slice) -> usize {
        let outside = slice.outside_m();
        self.radii_m[1..]
            .iter()
            .filter(|radius| **radius <= outside * (1.0 + 1e-12))
            .count()
    }

    /// Index of the ring of a slice that contains a cell.
    pub fn ring_of(&self, slice: &Slice, across: usize) -> usize {
        let middle = 0.5 * (self.radii_m[across] + self.radii_m[across + 1]);
        let inner = slice.rings.iter().filter(|ring| ring.outside_m < middle);
        inner.count()
    }
}

/// All radii of all slices, with more between them if they are far apart.
fn across(arm: &Arm, fineness: usize) -> Vec<f64> {
    let rings = arm.slices.iter().flat_map(|slice| &slice.rings);
    let mut steps: Vec<f64> = rings.map(|ring| ring.outside_m).collect();
    steps.sort_by(f64::total_cmp);
    steps.dedup_by(|a, b| *a - *b <= 1e-9);
    let mut radii = vec![0.0];
    for radius in steps {
        let inside = *radii.last().unwrap_or(&0.0);
        let n = if inside == 0.0 {
            N_CORE
        } else {
            ((radius / inside).ln() / RATIO_MOST.ln()).ceil().max(1.0) as usize
        };
        let n = n * fineness;
        for part in 1..n {
            let share = part as f64 / n as f64;
            radii.push(if inside == 0.0 {
                radius * share
            } else {
                inside * (radius / inside).powf(share)
            });
        }
        radii.push(radius);
    }
    radii
}

fn along(arm: &Arm, fineness: usize) -> (Vec<f64>, Vec<usize>) {
    let (mut places, mut slice_of) = (vec![0.0], Vec::new());
    let mut start = 0.0;
    let last = arm.slices.len() - 1;
    for (index, slice) in arm.slices.iter().enumerate() {
        let step = STEP_RATIO * slice.outside_m();
        let is_end = (false, index == last);
        for share in shares(slice.length_m, step, is_end, fineness) {
            places.push(start + share * slice.length_m);
            slice_of.push(index);
        }
        start += slice.length_m;
    }
    (places, slice_of)
}

/// Ends of cells as shares of a length: short beside its ends and longer inward; an end without a step needs no short cells.
fn shares(length: f64, step: f64, is_end: (bool, bool), fineness: usize) -> Vec<f64> {
    let mut sizes: Vec<f64> = Vec::new();
    // The wanted size at a place grows with the distance from the nearer step.
    let wanted = |at: f64| -> f64 {
        let near = if is_end.0 { f64::INFINITY } else { at };
        let far = if is_end.1 { f64::INFINITY } else { length - at };
        let distance = near.min(far).max(0.0);
        (step + (GROWTH - 1.0) * distance).min(LONGEST_M)
    };
    let mut at = 0.0;
    while at < length {
        let first = wanted(at);
        let size = wanted(at + 0.5 * first).min(first * GROWTH);
        sizes.push(size);
        at += size;
    }
    let total: f64 = sizes.iter().sum();
    let mut ends = Vec::new();
    let mut reached = 0.0;
    for size in &sizes {
        for _ in 0..fineness {
            reached += size / (fineness as f64 * total);
            ends.push(reached);
        }
    }
    if let Some(end) = ends.last_mut() {
        *end = 1.0;
    }
    ends
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn cells_fill_their_length_and_grow_inward() {
        let ends = shares(1.0, 0.01, (false, false), 1);
        assert_eq!(*ends.last().unwrap(), 1.0);
        let sizes: Vec<f64> = std::iter::once(ends[0])
            .chain(ends.windows(2).map(|pair| pair[1] - pair[0]))
            .collect();
        assert!(sizes.iter().all(|size| *size > 0.0));
        let middle = sizes[sizes.len() / 2];
        assert!(middle > 5.0 * sizes[0], "{sizes:?}");
        assert!(sizes[sizes.len() - 1] < 0.5 * middle, "{sizes:?}");
        assert_eq!(shares(1.0, 0.01, (false, false), 2).len(), 2 * ends.len());
    }
}
