//! Refusals, and whether each names everything that is needed to find the cause.

use super::bounds::grid;
use super::{Scene, link, scenes, shared};
use jointwright_numerics::chain::{Bounds, Chain, ChainError, Link, REACH_MOST};
use proptest::prelude::*;

fn errors(n_planes: usize, links: &[Link]) -> Vec<ChainError> {
    Chain::new(n_planes, links.to_vec())
        .unwrap()
        .solve_all_errors(0)
        .err()
        .unwrap_or_default()
}

#[track_caller]
fn check(n_planes: usize, links: &[Link], expected: &[&str]) {
    let found: Vec<String> = errors(n_planes, links)
        .iter()
        .map(ToString::to_string)
        .collect();
    assert_eq!(found, expected);
    let first = Chain::new(n_planes, links.to_vec())
        .unwrap()
        .solve(0)
        .err()
        .map(|error| error.to_string());
    assert_eq!(first.as_deref(), expected.first().copied());
}

#[track_caller]
fn check_refused(links: &[Link], expected: &str) {
    let refused = Chain::new(2, links.to_vec()).unwrap_err();
    assert_eq!(refused.to_string(), expected);
}

#[test]
fn a_contradiction_names_both_paths_and_both_values() {
    let links = [
        link(0, 1, 100, 2, 2),
        link(1, 2, 50, 2, 2),
        link(2, 0, -153, 2, 2),
        link(2, 3, 7, 0, 0),
    ];
    check(
        4,
        &links,
        &["plane 2 stands at 153 counts by the path 0 <-(link 2)- 2, \
           but at 150 counts by 0 -(link 0)-> 1 -(link 1)-> 2"],
    );
}

#[test]
fn every_independent_contradiction_is_named() {
    let links = [
        link(0, 1, 100, 2, 2),
        link(0, 1, 101, 3, 3),
        link(1, 2, 50, 2, 2),
        link(2, 1, -52, 3, 3),
        link(1, 2, 50, 9, 9),
    ];
    check(
        3,
        &links,
        &[
            "plane 1 stands at 100 counts by the path 0 -(link 0)-> 1, but at 101 counts by 0 -(link 1)-> 1",
            "plane 2 stands at 150 counts by the path 0 -(link 0)-> 1 -(link 2)-> 2, \
             but at 152 counts by 0 -(link 0)-> 1 <-(link 3)- 2",
        ],
    );
}

#[test]
fn the_plane_in_doubt_is_the_one_farther_from_the_datum() {
    check(
        3,
        &[
            link(0, 2, 10, 1, 1),
            link(2, 1, 5, 1, 1),
            link(1, 2, -6, 2, 2),
        ],
        &[
            "plane 1 stands at 15 counts by the path 0 -(link 0)-> 2 -(link 1)-> 1, \
           but at 16 counts by 0 -(link 0)-> 2 <-(link 2)- 1",
        ],
    );
}

#[test]
fn every_open_plane_is_named_and_contradictions_among_them_too() {
    let links = [
        link(0, 2, 10, 1, 1),
        link(3, 1, 5, 1, 1),
        link(3, 1, 6, 2, 2),
    ];
    check(
        5,
        &links,
        &[
            "no way over the links leads from the datum to plane 1; a link to it is missing",
            "no way over the links leads from the datum to plane 3; a link to it is missing",
            "no way over the links leads from the datum to plane 4; a link to it is missing",
            "plane 3 stands at -5 counts by the path 1 <-(link 1)- 3, but at -6 counts by 1 <-(link 2)- 3",
        ],
    );
}

#[test]
fn a_chain_that_closes_has_no_errors() {
    check(
        3,
        &[
            link(0, 1, 100, 2, 2),
            link(1, 2, 50, 2, 2),
            link(2, 0, -150, 2, 2),
        ],
        &[],
    );
}

#[test]
fn windows_that_exclude_each_other_name_their_loop() {
    check(
        2,
        &[link(0, 1, 100, 2, 2), link(1, 0, -110, 3, 3)],
        &[
            "plane 1 stands at 100 counts by the path 0 -(link 0)-> 1, but at 110 counts by 0 <-(link 1)- 1",
            "around the loop 1 <-(link 0)- 0 <-(link 1)- 1 the windows add up to 5 to 15 counts, and never to 0",
        ],
    );
}

#[test]
fn a_loop_over_two_closing_links_is_found_when_each_alone_can_be_kept() {
    // Plane 1 may stand within 5 of the datum; one closing link wants it at 5 to 11, the other at -11 to -5.
    let links = [
        link(0, 1, 0, 5, 5),
        link(0, 2, 0, 0, 0),
        link(0, 3, 0, 0, 0),
        link(2, 1, 8, 3, 3),
        link(3, 1, -8, 3, 3),
    ];
    let found = errors(4, &links);
    let excluded: Vec<&ChainError> = found
        .iter()
        .filter(|error| matches!(error, ChainError::WindowsExclude { .. }))
        .collect();
    assert_eq!((found.len(), excluded.len()), (3, 1));
    let ChainError::WindowsExclude {
        around,
        least,
        greatest,
    } = excluded[0]
    else {
        unreachable!()
    };
    let mut planes = around.planes();
    assert_eq!((planes.pop(), planes[0]), (Some(0), 0));
    planes.sort_unstable();
    assert_eq!(planes, [0, 1, 2, 3]);
    assert_eq!(
        (
            least.abs().min(greatest.abs()),
            least.abs().max(greatest.abs())
        ),
        (10, 22)
    );
}

proptest! {
    /// Also the twin of itself: both outcomes are reached (see the next test), and each is checked by the grid.
    #[test]
    fn windows_are_called_exclusive_exactly_when_the_grid_is_empty(
        scene in scenes(4, 3, (0, 2)).prop_filter("loop", Scene::has_loop),
        moved in prop::collection::vec(-4_i64..=4, 3),
    ) {
        let mut links = scene.links.clone();
        for (l, by) in links.iter_mut().skip(scene.n_tree()).zip(moved) {
            l.nominal += by;
        }
        let found = errors(scene.n_planes(), &links);
        let excluded = found.iter().any(|error| matches!(error, ChainError::WindowsExclude { .. }));
        prop_assert_eq!(excluded, grid(scene.n_planes(), &links).is_none());
    }
}

#[test]
fn the_grid_itself_is_empty_only_when_windows_exclude_each_other() {
    assert_eq!(grid(2, &[link(0, 1, 0, 2, 2), link(0, 1, 5, 2, 2)]), None);
    let meets = grid(2, &[link(0, 1, 0, 2, 2), link(0, 1, 4, 2, 2)]).unwrap();
    assert_eq!(
        meets[1],
        Bounds {
            least: 2,
            greatest: 2
        }
    );
}

#[test]
fn a_link_out_of_range_is_refused() {
    check_refused(
        &[link(0, 2, 1, 0, 0)],
        "link 0 names plane 2, but the chain has 2 planes, numbered from 0",
    );
}

#[test]
fn a_link_to_the_same_plane_is_refused() {
    check_refused(
        &[link(1, 1, 0, 0, 0)],
        "link 0 goes from plane 1 to the same plane; a link needs two",
    );
}

#[test]
fn a_negative_window_is_refused() {
    check_refused(
        &[link(0, 1, 1, 0, 0), link(0, 1, 1, 0, -3)],
        "link 1 has the window -(0) +(-3) counts; neither part may be negative",
    );
}

#[test]
fn a_shared_part_above_the_whole_is_refused() {
    check_refused(
        &[shared(link(0, 1, 1, 0, 0), 0, 1_000_001)],
        "link 0 shares 1000001 parts per million of its window; 1000000 is the whole",
    );
}

#[test]
fn a_datum_out_of_range_is_refused() {
    let chain = Chain::new(2, vec![link(0, 1, 1, 0, 0)]).unwrap();
    let expected = ChainError::Datum {
        plane: 2,
        n_planes: 2,
    };
    assert_eq!(chain.solve_all_errors(2).unwrap_err(), [expected]);
    let empty = Chain::new(0, vec![]).unwrap();
    assert_eq!(
        empty.solve(0).unwrap_err(),
        ChainError::Datum {
            plane: 0,
            n_planes: 0
        }
    );
}

#[test]
fn sizes_beyond_the_range_are_refused() {
    let refused = |links: &[Link]| Chain::new(2, links.to_vec()).unwrap_err();
    let most = link(0, 1, REACH_MOST, 0, 0);
    for beyond in [
        link(0, 1, i64::MIN, 0, 0),
        link(0, 1, i64::MAX, i64::MAX, i64::MAX),
        link(0, 1, 0, i64::MAX, 0),
        link(0, 1, REACH_MOST, 0, 1),
    ] {
        assert_eq!(refused(&[beyond]), ChainError::Overflow { link: 0 });
    }
    assert_eq!(
        refused(&[most, link(0, 1, -1, 0, 0)]),
        ChainError::Overflow { link: 1 }
    );
    assert!(Chain::new(2, vec![most]).is_ok());
}

#[test]
fn the_greatest_sizes_that_are_taken_do_not_overflow() {
    let half = REACH_MOST / 6;
    let links = [link(0, 1, half, half, half), link(1, 2, half, half, half)];
    let solution = Chain::new(3, links.to_vec()).unwrap().solve(2).unwrap();
    assert_eq!(
        solution.bounds(0, 2),
        Bounds {
            least: 0,
            greatest: 4 * half
        }
    );
    assert_eq!(
        solution.bounds(2, 0),
        Bounds {
            least: -4 * half,
            greatest: 0
        }
    );
    let options = jointwright_numerics::chain::SpreadOptions {
        seed: 1,
        n_samples: 1000,
    };
    let spread = &solution.spread(&[(2, 0)], options).unwrap()[0];
    assert!(spread.least_seen >= -4 * half && spread.greatest_seen <= 0);
    assert!(spread.greatest_seen - spread.least_seen > half);
    // A contradiction at the greatest sizes, whose lengths fall without limit around the loop.
    let third = REACH_MOST / 3;
    let links = [
        link(0, 1, third, 0, 0),
        link(1, 2, third, 0, 0),
        link(2, 0, third, 0, 0),
    ];
    assert_eq!(errors(3, &links).len(), 2);
}
