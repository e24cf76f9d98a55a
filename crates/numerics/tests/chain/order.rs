//! The order in which links are written down changes nothing.

use super::{Scene, scenes};
use jointwright_numerics::chain::{Chain, ChainError, Link, Path, Solution, Spread, SpreadOptions};
use proptest::prelude::*;

const OPTIONS: SpreadOptions = SpreadOptions {
    seed: 20,
    n_samples: 50,
};

fn pairs(n_planes: usize) -> Vec<(usize, usize)> {
    (0..n_planes * n_planes)
        .map(|at| (at / n_planes, at % n_planes))
        .collect()
}

/// Writes the links in another order; `was[k]` is the old index of the new link k.
fn shuffled(links: &[Link], keys: &[u32]) -> (Vec<Link>, Vec<usize>) {
    let mut was: Vec<usize> = (0..links.len()).collect();
    was.sort_by_key(|&index| keys[index % keys.len()].rotate_left(index as u32));
    (was.iter().map(|&index| links[index]).collect(), was)
}

fn renamed(path: &Path, was: &[usize]) -> Path {
    let mut path = path.clone();
    path.steps
        .iter_mut()
        .for_each(|step| step.link = was[step.link]);
    path
}

fn all_spreads(
    solution: &Solution,
    n_planes: usize,
    was: &[usize],
) -> Result<Vec<Spread>, ChainError> {
    let mut spreads = solution.spread(&pairs(n_planes), OPTIONS)?;
    for spread in &mut spreads {
        spread
            .share
            .iter_mut()
            .for_each(|(link, _)| *link = was[*link]);
    }
    Ok(spreads)
}

proptest! {
    #[test]
    fn reordering_links_changes_nothing(
        scene in scenes(6, 2, (20, 60)).prop_filter("simple", Scene::is_simple),
        keys in prop::collection::vec(any::<u32>(), 9),
    ) {
        let (links, was) = shuffled(&scene.links, &keys);
        let same: Vec<usize> = (0..links.len()).collect();
        let n = scene.n_planes();
        let (one, two) = (scene.solve(), Chain::new(n, links).unwrap().solve(0).unwrap());
        for (a, b) in pairs(n) {
            prop_assert_eq!(one.nominal(a, b), two.nominal(a, b));
            prop_assert_eq!(one.bounds(a, b), two.bounds(a, b));
            prop_assert_eq!(one.path(a, b), renamed(&two.path(a, b), &was));
        }
        prop_assert_eq!(all_spreads(&one, n, &same), all_spreads(&two, n, &was));
    }

    #[test]
    fn reordering_links_changes_no_error(
        scene in scenes(6, 4, (0, 3)).prop_filter("simple", Scene::is_simple),
        keys in prop::collection::vec(any::<u32>(), 9),
        off in prop::collection::vec(-3_i64..=3, 9),
    ) {
        let wrong: Vec<Link> =
            scene.links.iter().zip(&off).map(|(l, by)| Link { nominal: l.nominal + by, ..*l }).collect();
        let (links, was) = shuffled(&wrong, &keys);
        let errors = |links| Chain::new(scene.n_planes(), links).unwrap().solve_all_errors(0).err();
        let renamed = errors(links).map(|errors| errors.into_iter().map(|error| match error {
            ChainError::Contradiction { plane, first, first_value, second, second_value } => {
                let (first, second) = (renamed(&first, &was), renamed(&second, &was));
                ChainError::Contradiction { plane, first, first_value, second, second_value }
            }
            ChainError::WindowsExclude { around, least, greatest } => {
                ChainError::WindowsExclude { around: renamed(&around, &was), least, greatest }
            }
            other => other,
        }).collect());
        prop_assert_eq!(errors(wrong), renamed);
    }

    #[test]
    fn turning_round_a_link_that_shares_nothing_changes_no_spread(
        scene in scenes(6, 2, (20, 60)).prop_filter("simple", Scene::is_simple),
        at in any::<prop::sample::Index>(),
    ) {
        let mut links = scene.links.clone();
        let l = &mut links[at.index(scene.links.len())];
        l.shared = None;
        let straight = Scene { links: { let mut s = scene.links.clone(); s[at.index(scene.links.len())] = *l; s }, ..scene };
        *l = Link { from: l.to, to: l.from, nominal: -l.nominal, minus: l.plus, plus: l.minus, shared: None };
        let same: Vec<usize> = (0..links.len()).collect();
        let n = straight.n_planes();
        let turned = Chain::new(n, links).unwrap().solve(0).unwrap();
        prop_assert_eq!(all_spreads(&straight.solve(), n, &same), all_spreads(&turned, n, &same));
    }

    #[test]
    fn the_datum_changes_no_distance(scene in scenes(6, 2, (20, 60)), datum in any::<prop::sample::Index>()) {
        let n = scene.n_planes();
        let same: Vec<usize> = (0..scene.links.len()).collect();
        let one = scene.solve();
        let two = Chain::new(n, scene.links.clone()).unwrap().solve(datum.index(n)).unwrap();
        for (a, b) in pairs(n) {
            prop_assert_eq!((one.nominal(a, b), one.bounds(a, b)), (two.nominal(a, b), two.bounds(a, b)));
        }
        prop_assert_eq!(all_spreads(&one, n, &same), all_spreads(&two, n, &same));
    }

    /// Twin: another seed, or wider windows, do change the samples.
    #[test]
    fn another_seed_or_window_changes_the_spread(scene in scenes(4, 0, (500, 900))) {
        let pairs = [(0, 1)];
        let before = scene.solve().spread(&pairs, OPTIONS).unwrap();
        let seeded = scene.solve().spread(&pairs, SpreadOptions { seed: 21, ..OPTIONS }).unwrap();
        prop_assert_ne!(&before, &seeded);
        let mut wider = scene.clone();
        wider.links.iter_mut().for_each(|l| l.minus *= 2);
        let wider = wider.solve().spread(&pairs, OPTIONS).unwrap();
        prop_assert_ne!(&before, &wider);
    }
}
