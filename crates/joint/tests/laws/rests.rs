//! Table of checks: a check reads the solved results that its row names, and no other solved result.

use crate::cases::{EXAMPLES, accepted};
use jointwright_joint::job::Order;
use jointwright_joint::judge::{Judged, judge, judge_unsolved, judge_without_fields};
use jointwright_joint::limit::{Rests, Ruling, TABLE};

type Judge = fn(&Order) -> Result<Judged<'_>, Vec<jointwright_joint::form::Complaint>>;

/// Rulings of the checks that rest on one kind of result, for a joint solved to a depth.
fn rulings(order: &Order, judge: Judge, rests: Rests) -> Vec<Ruling> {
    let judged = accepted(judge(order), "the example");
    let is_of = |ruling: &&Ruling| {
        let row = TABLE.iter().find(|row| row.slug == ruling.check);
        row.is_some_and(|row| row.rests == rests)
    };
    judged.rulings.iter().filter(is_of).cloned().collect()
}

#[test]
fn a_check_says_the_same_whether_a_result_is_solved_on_which_it_does_not_rest() {
    for case in EXAMPLES {
        let order = case.order();
        let whole = rulings(&order, judge, Rests::Nothing);
        assert!(!whole.is_empty());
        assert_eq!(rulings(&order, judge_unsolved, Rests::Nothing), whole);
        for rests in [Rests::Pressure, Rests::Load] {
            let whole = rulings(&order, judge, rests);
            assert_eq!(rulings(&order, judge_without_fields, rests), whole);
        }
    }
}

#[test]
fn a_check_says_nothing_of_a_result_that_nobody_solved() {
    for case in EXAMPLES {
        let order = case.order();
        for rests in [Rests::Field, Rests::Pressure, Rests::Load] {
            assert!(!rulings(&order, judge, rests).is_empty(), "{}", case.slug);
            let unsolved = rulings(&order, judge_unsolved, rests);
            assert!(unsolved.is_empty(), "{}: {unsolved:#?}", case.slug);
        }
    }
}
