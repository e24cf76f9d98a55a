//! Every path gives the same nominal; the links' contents decide which path is shown.

use super::{Scene, link, scenes, solved};
use jointwright_numerics::chain::{Chain, ChainError, Link, Path};
use proptest::prelude::*;

/// Sums of the nominals along all simple paths from `at` to `goal`.
fn sums_of_all_paths(
    links: &[Link],
    at: usize,
    goal: usize,
    passed: &mut Vec<usize>,
    sum: i64,
    sums: &mut Vec<i64>,
) {
    if at == goal {
        return sums.push(sum);
    }
    passed.push(at);
    for l in links {
        for (start, end, step) in [(l.from, l.to, l.nominal), (l.to, l.from, -l.nominal)] {
            if start == at && !passed.contains(&end) {
                sums_of_all_paths(links, end, goal, passed, sum + step, sums);
            }
        }
    }
    passed.pop();
}

/// Sum of the nominals along a path, by the caller's own links.
fn walked(links: &[Link], path: &Path) -> i64 {
    let mut at = path.start;
    let mut sum = 0;
    for step in &path.steps {
        let l = links[step.link];
        let (start, end) = if step.forward {
            (l.from, l.to)
        } else {
            (l.to, l.from)
        };
        assert_eq!(
            (start, end),
            (at, step.plane),
            "the step does not continue the path"
        );
        sum += if step.forward { l.nominal } else { -l.nominal };
        at = end;
    }
    sum
}

fn all_paths_agree(scene: &Scene, links: &[Link], a: usize, b: usize) -> bool {
    let mut sums = Vec::new();
    sums_of_all_paths(links, a, b, &mut Vec::new(), 0, &mut sums);
    assert!(!sums.is_empty(), "no path from {a} to {b}");
    sums.iter()
        .all(|&sum| sum == scene.positions[b] - scene.positions[a])
}

proptest! {
    #[test]
    fn any_two_paths_to_a_plane_agree_exactly(scene in scenes(6, 4, (0, 50)), datum in any::<prop::sample::Index>()) {
        let datum = datum.index(scene.n_planes());
        let solution = Chain::new(scene.n_planes(), scene.links.clone()).unwrap().solve(datum).unwrap();
        for a in 0..scene.n_planes() {
            for b in 0..scene.n_planes() {
                prop_assert!(all_paths_agree(&scene, &scene.links, a, b));
                prop_assert_eq!(solution.nominal(a, b), scene.positions[b] - scene.positions[a]);
                let path = solution.path(a, b);
                prop_assert_eq!(*path.planes().last().unwrap(), b);
                prop_assert_eq!(walked(&scene.links, &path), solution.nominal(a, b));
            }
        }
    }

    /// Twin: one closing link that is one count off breaks the agreement, and the solver detects it too.
    #[test]
    fn one_count_off_on_a_loop_breaks_the_agreement(scene in scenes(6, 4, (0, 50)).prop_filter("loop", Scene::has_loop)) {
        let mut links = scene.links.clone();
        let off = links.len() - 1;
        links[off].nominal += 1;
        prop_assert!(!all_paths_agree(&scene, &links, links[off].from, links[off].to));
        let errors = Chain::new(scene.n_planes(), links.clone()).unwrap().solve_all_errors(0).unwrap_err();
        let mut n_contradictions = 0;
        for error in errors {
            if let ChainError::Contradiction { plane, first, first_value, second, second_value } = error {
                n_contradictions += 1;
                prop_assert_eq!((first_value - second_value).abs(), 1);
                prop_assert_eq!((first.start, second.start), (0, 0));
                prop_assert_eq!((walked(&links, &first), walked(&links, &second)), (first_value, second_value));
                let last = |path: &Path| *path.planes().last().unwrap();
                prop_assert_eq!((last(&first), last(&second)), (plane, plane));
            }
        }
        prop_assert!(n_contradictions > 0);
    }
}

#[track_caller]
fn check_path(links: &[Link], to: usize, expected: &str) {
    let n_planes = links.iter().map(|l| l.from.max(l.to)).max().unwrap() + 1;
    assert_eq!(solved(n_planes, links).path(0, to).to_string(), expected);
}

#[test]
fn fewest_links_come_before_least_width() {
    let links = [
        link(0, 1, 5, 0, 0),
        link(1, 2, 5, 0, 0),
        link(0, 2, 10, 90, 90),
    ];
    check_path(&links, 2, "0 -(link 2)-> 2");
}

#[test]
fn least_width_comes_before_plane_numbers() {
    let links = [
        link(0, 1, 5, 1, 1),
        link(0, 2, 5, 1, 0),
        link(1, 3, 5, 1, 1),
        link(3, 2, -5, 1, 1),
    ];
    check_path(&links, 3, "0 -(link 1)-> 2 <-(link 3)- 3");
}

#[test]
fn plane_numbers_settle_equal_width_from_the_datum_on() {
    // The ways 0-2-3-5 and 0-1-4-5 are equally wide; 1 stands before 2 although 4 stands after 3.
    let links = [
        link(0, 2, 1, 1, 1),
        link(2, 3, 1, 1, 1),
        link(3, 5, 1, 1, 1),
        link(0, 1, 1, 1, 1),
        link(1, 4, 1, 1, 1),
        link(4, 5, 1, 1, 1),
    ];
    check_path(&links, 5, "0 -(link 3)-> 1 -(link 4)-> 4 -(link 5)-> 5");
}

#[test]
fn the_narrowest_of_parallel_links_is_walked() {
    check_path(
        &[link(0, 1, 5, 1, 1), link(1, 0, -5, 0, 1)],
        1,
        "0 <-(link 1)- 1",
    );
}

#[test]
fn the_direction_a_parallel_link_is_written_in_does_not_decide() {
    check_path(
        &[link(0, 1, 100, 1, 3), link(0, 1, 100, 3, 1)],
        1,
        "0 -(link 0)-> 1",
    );
    check_path(
        &[link(0, 1, 100, 1, 3), link(1, 0, -100, 1, 3)],
        1,
        "0 -(link 0)-> 1",
    );
    check_path(
        &[link(1, 0, -100, 1, 3), link(0, 1, 100, 1, 3)],
        1,
        "0 -(link 1)-> 1",
    );
}
