//! Properties over files broken at random.

use super::mutate::{Break, any_break, any_measure, broken};
use super::{Came, JOBS, run};
use jointwright_joint::catalogue::DEMONSTRATION_TEXT;
use proptest::prelude::*;
use proptest::test_runner::{Config, RngSeed, TestRunner};

const CASES: u32 = 300;
const SEED: u64 = 20_260_309;

#[allow(
    clippy::disallowed_methods,
    reason = "tests are no part of the core; --long asks for more cases"
)]
fn number<N: std::str::FromStr>(name: &str) -> Option<N> {
    std::env::var(name).ok()?.parse().ok()
}

pub(crate) fn config() -> Config {
    Config {
        cases: number("JOINTWRIGHT_HOSTILE_CASES")
            .or_else(|| number("PROPTEST_CASES"))
            .unwrap_or(CASES),
        rng_seed: RngSeed::Fixed(number("JOINTWRIGHT_HOSTILE_SEED").unwrap_or(SEED)),
        failure_persistence: None,
        ..Config::default()
    }
}

fn breaks<S: Strategy<Value = Break>>(each: S, most: usize) -> impl Strategy<Value = Vec<Break>> {
    prop::collection::vec(each, 0..=most)
}

/// Runs the property and checks the share of cases that still reached a plan.
#[track_caller]
fn check<S>(each: fn() -> S, most: usize, plans_least_percent: u32)
where
    S: Strategy<Value = Break>,
{
    let input = (0..JOBS.len(), breaks(each(), most), breaks(each(), most));
    let n_planned = std::cell::Cell::new(0_u32);
    let config = config();
    let n_cases = config.cases;
    let ran = TestRunner::new(config).run(&input, |(job, of_job, of_catalogue)| {
        let came = run(
            &broken(JOBS[job], &of_job),
            &broken(DEMONSTRATION_TEXT, &of_catalogue),
        )
        .map_err(TestCaseError::fail)?;
        if matches!(came, Came::Planned(_)) {
            n_planned.set(n_planned.get() + 1);
        }
        Ok(())
    });
    if let Err(broken) = ran {
        panic!("{broken}");
    }
    // If all files were refused, the plans would stay untried.
    assert!(
        n_planned.get() * 100 >= n_cases * plans_least_percent,
        "{} of {n_cases} cases came to a plan",
        n_planned.get()
    );
}

#[test]
fn a_file_broken_in_one_or_two_places_is_read_or_refused_in_words() {
    check(any_break, 1, 10);
}

#[test]
fn a_file_broken_in_many_places_is_read_or_refused_in_words() {
    check(any_break, 12, 0);
}

#[test]
fn a_file_whose_lengths_are_anything_is_planned_or_refused_in_words() {
    check(any_measure, 6, 5);
}

#[test]
fn bytes_that_never_were_a_file_are_refused_in_words() {
    let bytes = prop::collection::vec(any::<u8>(), 0..400);
    let text = "[\\[\\]{}=\"'#.,\\n a-z0-9\\\\]{0,200}";
    let input = (bytes, text);
    let ran = TestRunner::new(config()).run(&input, |(bytes, text)| {
        for job in [&bytes[..], text.as_bytes()] {
            let came = run(job, DEMONSTRATION_TEXT.as_bytes()).map_err(TestCaseError::fail)?;
            prop_assert!(matches!(came, Came::Refused(_)));
        }
        Ok(())
    });
    if let Err(broken) = ran {
        panic!("{broken}");
    }
}
