//! Rail: numbers in a row above a section, each joined to its place, so that none lies on another.
//!
//! ```text
//!    (2) (1)   (3)      numbers, never nearer than a step
//!      \  |    /        leaders, none across another
//!       x |   x
//!         x
//! ```

use crate::canvas::{Place, do_cross};

/// Places on the rail, in the order of their items.
///
/// # Assumes
/// All have room: `step` times the number of places is at most the length from `left` to `right`.
pub(super) fn spread(places: &[Place], y: f64, [left, right]: [f64; 2], step: f64) -> Vec<Place> {
    let mut order: Vec<usize> = (0..places.len()).collect();
    order.sort_by(|a, b| places[*a][0].total_cmp(&places[*b][0]));
    let mut slots = evened(&order, places, [left, right], step);
    // Two leaders that cross become shorter together when they exchange ends, so the loop terminates;
    // the bound is for rounding alone.
    let mut is_tangled = true;
    for _ in 0..places.len() * places.len() {
        if !is_tangled {
            break;
        }
        is_tangled = false;
        for a in 0..places.len() {
            for b in a + 1..places.len() {
                let leader = |of: usize, slot: usize| [[slots[slot], y], places[of]];
                if do_cross(leader(a, a), leader(b, b)) && !do_cross(leader(a, b), leader(b, a)) {
                    slots.swap(a, b);
                    is_tangled = true;
                }
            }
        }
    }
    slots.into_iter().map(|x| [x, y]).collect()
}

/// Positions along the rail: each over its place, moved as far as the others require.
fn evened(order: &[usize], places: &[Place], [left, right]: [f64; 2], step: f64) -> Vec<f64> {
    let mut slots = vec![left; places.len()];
    // Groups that push each other stand about the mean of their places.
    let mut groups: Vec<(f64, usize)> = Vec::new();
    for &of in order {
        groups.push((places[of][0], 1));
        while let [.., before, last] = groups[..] {
            let half = |group: (f64, usize)| 0.5 * step * group.1 as f64;
            let room = |group: (f64, usize)| {
                group.0.clamp(
                    left + half(group),
                    (right - half(group)).max(left + half(group)),
                )
            };
            if room(before) + half(before) <= room(last) - half(last) + 1e-9 {
                break;
            }
            let n = before.1 + last.1;
            let mean = (before.0 * before.1 as f64 + last.0 * last.1 as f64) / n as f64;
            groups.truncate(groups.len() - 2);
            groups.push((mean, n));
        }
    }
    let mut next = order.iter();
    for (mean, n) in groups {
        let half = 0.5 * step * n as f64;
        let first = mean.clamp(left + half, (right - half).max(left + half)) - half + 0.5 * step;
        for (at, of) in next.by_ref().take(n).enumerate() {
            slots[*of] = first + step * at as f64;
        }
    }
    slots
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(places: &[Place]) {
        let rail = spread(places, 0.0, [0.0, 500.0], 20.0);
        for a in 0..rail.len() {
            assert!(
                (10.0 - 1e-9..=490.0 + 1e-9).contains(&rail[a][0]),
                "{rail:?}"
            );
            for b in a + 1..rail.len() {
                assert!((rail[a][0] - rail[b][0]).abs() > 20.0 - 1e-6, "{rail:?}");
                assert!(
                    !do_cross([rail[a], places[a]], [rail[b], places[b]]),
                    "{a} {b} {rail:?}"
                );
            }
        }
    }

    #[test]
    fn numbers_have_room_and_leaders_do_not_cross() {
        check(&[[100.0, 50.0]]);
        check(&[[100.0, 150.0], [102.0, 20.0], [104.0, 90.0], [99.0, 10.0]]);
        check(&[
            [0.0, 50.0],
            [0.0, 90.0],
            [1.0, 40.0],
            [500.0, 60.0],
            [499.0, 30.0],
        ]);
        check(&[[250.0, 80.0]; 9]);
        // A row that fills the rail.
        let row: Vec<Place> = (0..25)
            .map(|n| [10.0 + f64::from(n * n % 17), 30.0 + f64::from(n)])
            .collect();
        check(&row);
    }

    #[test]
    fn a_number_alone_stands_over_its_place() {
        let rail = spread(&[[123.0, 80.0], [300.0, 40.0]], 7.0, [0.0, 500.0], 20.0);
        assert_eq!(rail, [[123.0, 7.0], [300.0, 7.0]]);
    }
}
