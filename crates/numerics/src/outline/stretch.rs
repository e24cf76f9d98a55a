//! Stretches of a curve: sorted, disjoint intervals of its share of length within [0, 1].

/// Sorted, disjoint, closed intervals.
pub(super) type Stretches = Vec<[f64; 2]>;

/// The whole curve.
pub(super) const WHOLE: [f64; 2] = [0.0, 1.0];

/// One interval cut to [0, 1]; empty if it lies outside or runs backwards.
pub(super) fn clipped(low: f64, high: f64) -> Stretches {
    // Written so that NaN yields no interval.
    if low <= high && low <= 1.0 && high >= 0.0 {
        vec![[low.max(0.0), high.min(1.0)]]
    } else {
        Vec::new()
    }
}

/// Union.
pub(super) fn union(mut one: Stretches, other: Stretches) -> Stretches {
    one.extend(other);
    one.sort_by(|a, b| a[0].total_cmp(&b[0]));
    let mut merged: Stretches = Vec::new();
    for stretch in one {
        match merged.last_mut() {
            Some(last) if stretch[0] <= last[1] => last[1] = last[1].max(stretch[1]),
            _ => merged.push(stretch),
        }
    }
    merged
}

/// Intersection.
pub(super) fn intersection(one: &[[f64; 2]], other: &[[f64; 2]]) -> Stretches {
    let mut both = Vec::new();
    for a in one {
        for b in other {
            let (low, high) = (a[0].max(b[0]), a[1].min(b[1]));
            if low <= high {
                both.push([low, high]);
            }
        }
    }
    both.sort_by(|a: &[f64; 2], b| a[0].total_cmp(&b[0]));
    both
}

/// Complement within the curve.
pub(super) fn complement(of: &[[f64; 2]]) -> Stretches {
    let mut left = Vec::new();
    let mut low = 0.0;
    for stretch in of {
        if stretch[0] > low {
            left.push([low, stretch[0]]);
        }
        low = stretch[1].max(low);
    }
    if low < 1.0 {
        left.push([low, 1.0]);
    }
    left
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn union_intersection_and_complement_are_those_of_sets() {
        let one = vec![[0.0, 0.2], [0.5, 0.6]];
        let other = vec![[0.1, 0.3], [0.7, 1.0]];
        assert_eq!(
            union(one.clone(), other.clone()),
            vec![[0.0, 0.3], [0.5, 0.6], [0.7, 1.0]]
        );
        assert_eq!(intersection(&one, &other), vec![[0.1, 0.2]]);
        assert_eq!(complement(&one), vec![[0.2, 0.5], [0.6, 1.0]]);
        assert_eq!(complement(&[]), vec![WHOLE]);
        assert!(complement(&[WHOLE]).is_empty());
        assert!(clipped(f64::NAN, 1.0).is_empty() && clipped(0.5, 0.4).is_empty());
    }
}
