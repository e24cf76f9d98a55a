//! The bounds against a grid of all whole-number deviations.
//!
//! The grid is exact: the matrix of difference constraints is totally unimodular, so with whole-number windows the
//! extremes are attained at whole-number positions.

use super::{Scene, link, scenes, solved};
use jointwright_numerics::chain::{Bounds, Link};
use proptest::prelude::*;

/// Least and greatest distance of every pair over all whole-number deviations of the tree links that keep the
/// windows of the others; row by row.
/// `None` if no deviations do.
pub fn grid(n_planes: usize, links: &[Link]) -> Option<Vec<Bounds>> {
    let (tree, closing) = links.split_at(n_planes - 1);
    let mut found: Option<Vec<Bounds>> = None;
    let mut deviations: Vec<i64> = tree.iter().map(|l| -l.minus).collect();
    loop {
        let positions = placed(n_planes, tree, &deviations);
        let distance = |a: usize, b: usize| positions[b] - positions[a];
        let keeps = |l: &Link| (-l.minus..=l.plus).contains(&(distance(l.from, l.to) - l.nominal));
        if closing.iter().all(keeps) {
            let start = vec![
                Bounds {
                    least: i64::MAX,
                    greatest: i64::MIN
                };
                n_planes * n_planes
            ];
            let bounds = found.get_or_insert(start);
            for (at, held) in bounds.iter_mut().enumerate() {
                let value = distance(at / n_planes, at % n_planes);
                *held = Bounds {
                    least: held.least.min(value),
                    greatest: held.greatest.max(value),
                };
            }
        }
        // The next deviations, as a counter with one digit for each link.
        let Some(digit) = (0..tree.len()).find(|&at| deviations[at] < tree[at].plus) else {
            return found;
        };
        deviations[digit] += 1;
        for at in 0..digit {
            deviations[at] = -tree[at].minus;
        }
    }
}

/// Positions from plane 0; link k of the tree brings in plane k + 1.
fn placed(n_planes: usize, tree: &[Link], deviations: &[i64]) -> Vec<i64> {
    let mut positions = vec![0; n_planes];
    for (at, (l, deviation)) in tree.iter().zip(deviations).enumerate() {
        let distance = l.nominal + deviation;
        if l.to == at + 1 {
            positions[l.to] = positions[l.from] + distance;
        } else {
            positions[l.from] = positions[l.to] - distance;
        }
    }
    positions
}

fn solver(scene: &Scene) -> Vec<Bounds> {
    let (solution, n) = (scene.solve(), scene.n_planes());
    (0..n * n)
        .map(|at| solution.bounds(at / n, at % n))
        .collect()
}

proptest! {
    #[test]
    fn bounds_equal_the_grid_on_trees(scene in scenes(5, 0, (0, 3))) {
        prop_assert_eq!(Some(solver(&scene)), grid(scene.n_planes(), &scene.links));
    }

    #[test]
    fn bounds_equal_the_grid_on_closed_loops(scene in scenes(5, 4, (0, 3)).prop_filter("loop", Scene::has_loop)) {
        prop_assert_eq!(Some(solver(&scene)), grid(scene.n_planes(), &scene.links));
    }

    /// Twin: one link of a tree that reaches one count farther is detected.
    #[test]
    fn the_grid_of_a_wider_tree_differs(scene in scenes(5, 0, (0, 3)), at in any::<prop::sample::Index>()) {
        let mut links = scene.links.clone();
        let at = at.index(links.len());
        links[at].plus += 1;
        prop_assert_ne!(Some(solver(&scene)), grid(scene.n_planes(), &links));
    }

    /// Twin: without its closing links the grid of a chain that they narrow differs.
    #[test]
    fn the_grid_without_a_narrow_closing_link_differs(scene in scenes(5, 0, (1, 3))) {
        let mut narrowed = scene.clone();
        let first = narrowed.links[0];
        narrowed.links.push(Link { minus: 0, plus: 0, ..first });
        prop_assert_ne!(Some(solver(&narrowed)), grid(scene.n_planes(), &scene.links));
    }
}

#[track_caller]
fn check(links: &[Link], pair: (usize, usize), least: i64, greatest: i64) {
    let n_planes = links.iter().map(|l| l.from.max(l.to)).max().unwrap() + 1;
    assert_eq!(
        solved(n_planes, links).bounds(pair.0, pair.1),
        Bounds { least, greatest }
    );
}

#[test]
fn tree_links_add_their_windows() {
    check(
        &[link(0, 1, 100, 1, 2), link(1, 2, 50, 3, 4)],
        (0, 2),
        146,
        156,
    );
}

#[test]
fn a_link_walked_backward_swaps_the_ends_of_its_window() {
    check(
        &[link(0, 1, 100, 1, 2), link(2, 1, 50, 3, 4)],
        (0, 2),
        45,
        55,
    );
}

#[test]
fn a_closing_link_narrows_the_others() {
    let links = [
        link(0, 1, 100, 9, 9),
        link(1, 2, 50, 9, 9),
        link(0, 2, 150, 1, 1),
    ];
    check(&links, (0, 2), 149, 151);
    check(&links, (0, 1), 91, 109);
}
