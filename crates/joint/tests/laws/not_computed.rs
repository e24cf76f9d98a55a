//! A missing fact is reported as missing, with the fact that would settle it; "not computed by this version" never stands for a fact that a datum would give.

use crate::cases::{accepted, everything, read};
use jointwright_joint::judge::judge;
use jointwright_joint::plan::Plan;
use jointwright_wording::plan;

/// Limits of this version.
const NOT_COMPUTED: [&str; 4] = [
    "the field of layers whose conductivity rises with the field",
    "what hot insulation keeps of an imprint",
    "short circuits in the bus",
    "water past the seals",
];

/// Statements of a plan about missing things that it has, or for which it names no reason; empty if all are true.
fn untrue(plan: &Plan) -> Vec<String> {
    let mut wrong = Vec::new();
    if plan.not_computed != NOT_COMPUTED {
        wrong.push(format!("{:?}", plan.not_computed));
    }
    for said in &plan.missing {
        match said.split_once(": ") {
            Some((_, why)) if why.len() > 8 => {}
            _ => wrong.push(format!("no reason: {said}")),
        }
    }
    let says = |what: &str| plan.missing.iter().any(|said| said.starts_with(what));
    for leg in &plan.legs {
        let is_solved = leg.field.as_ref().is_some_and(|f| !f.stresses.is_empty());
        let of = |said: &String| {
            let (what, _) = said.split_once(": ").unwrap_or((said, ""));
            let who = what.strip_prefix("electric field of ");
            who.is_some_and(|who| who.split(' ').any(|name| name == leg.mark))
        };
        if is_solved == plan.missing.iter().any(of) {
            wrong.push(format!("field of {} is solved: {is_solved}", leg.mark));
        }
    }
    let is_warm = plan.warm.as_ref().is_some_and(|warm| !warm.legs.is_empty());
    if is_warm == says("temperatures under load") {
        wrong.push(format!("temperatures are there: {is_warm}"));
    }
    wrong
}

#[test]
fn issue_16_a_plan_calls_missing_what_is_missing_and_nothing_else() {
    let mut n_missing = 0;
    for case in
        everything().filter(|case| case.slug.len() % 3 == 0 || case.slug.contains("larkspur"))
    {
        let order = accepted(read(case.job, &case.catalogues()), case.slug);
        let plan = plan(&accepted(judge(&order), case.slug));
        assert_eq!(untrue(&plan), Vec::<String>::new(), "{}", case.slug);
        n_missing += plan.missing.len();
        // The twin: two untrue statements are found.
        let mut other = plan.clone();
        other.not_computed.push("electric field of A".to_owned());
        other.missing.push("interface pressure".to_owned());
        assert_eq!(untrue(&other).len(), 2, "{}", case.slug);
    }
    assert!(n_missing > 0);
}
