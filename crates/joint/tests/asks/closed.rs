//! Closed: a named engineer's own word on a question is printed as such, and is never a pass.

use crate::cases::{Case, accepted, lines, named, read};
use jointwright_joint::judge::{judge, judge_unsolved};
use jointwright_joint::limit::Outcome;
use jointwright_joint::plan::Plan;
use jointwright_wording::plan;

const CASE: &str = "straight-wires-growth-measured";
const CLOSING: &str = r#"
[[closing]]
check = "seal_overlap"
leg = "A"
fact = "jacket-shrinks"
why = "This jacket was seen to shrink less than a millimetre on the last forty joints."
by = "Ines Calloway"
date = 2026-03-01
until = 2026-12-31
"#;

fn job(decides: &str, closing: &str) -> (String, Case) {
    let case = named(CASE);
    let start = case.job.find("decides = [").expect("somebody decides");
    let end = start + case.job[start..].find(']').expect("its end") + 1;
    let job = format!("{}{decides}{}", &case.job[..start], &case.job[end..]);
    (format!("{job}\n{closing}"), case)
}

const ALL: &str = r#"decides = ["windows", "limits", "confirmations", "bridge", "closings"]"#;

fn plan_with(closing: &str) -> Plan {
    let (job, case) = job(ALL, closing);
    let order = accepted(read(&job, &case.catalogues()), CASE);
    plan(&accepted(judge_unsolved(&order), CASE))
}

fn refused(decides: &str, closing: &str) -> String {
    let (job, case) = job(decides, closing);
    lines(&read(&job, &case.catalogues()).expect_err("refused"))
}

#[test]
fn a_closed_question_stays_not_judged_and_is_no_longer_asked() {
    let (before, after) = (plan_with(""), plan_with(CLOSING));
    let of = |plan: &Plan, leg: &str| {
        let mut rulings = plan.rulings.iter();
        let found = rulings.find(|r| {
            r.check == "seal_overlap"
                && r.leg.as_deref() == Some(leg)
                && r.ruling == Outcome::NotJudged
        });
        found.expect("an open question").clone()
    };
    let closed = of(&after, "A");
    let word = closed.closed_by.expect("a word");
    for part in [
        "Ines Calloway",
        "owner's engineer",
        "forty joints",
        "2026-03-01",
        "2026-12-31",
    ] {
        assert!(word.contains(part), "{word}");
    }
    assert_eq!(after.outcome, Outcome::NotJudged);
    // The other leg's question stays open.
    assert_eq!(of(&after, "B").closed_by, None);
    let asked = |plan: &Plan| {
        let ask = plan.asks.iter().find(|ask| ask.key() == "jacket-shrinks");
        ask.expect("asked").of.clone()
    };
    assert_eq!(asked(&before), ["A", "B"]);
    assert_eq!(asked(&after), ["B"]);
}

#[test]
fn a_closing_changes_no_outcome() {
    let outcomes = |plan: &Plan| {
        let all = plan.rulings.iter().map(|r| (r.check.clone(), r.ruling));
        all.collect::<Vec<_>>()
    };
    assert_eq!(outcomes(&plan_with("")), outcomes(&plan_with(CLOSING)));
}

#[test]
fn a_closing_that_has_run_out_counts_as_open() {
    let plan = plan_with(&CLOSING.replace("2026-12-31", "2026-03-10"));
    let ruling = plan.rulings.iter().find(|r| r.closed_until.is_some());
    let ruling = ruling.expect("a word that has run out");
    assert_eq!(ruling.closed_by, None);
    let ask = plan.asks.iter().find(|ask| ask.key() == "jacket-shrinks");
    assert_eq!(ask.expect("asked").of, ["A", "B"]);
}

/// Complaint about a word on no question.
#[track_caller]
fn refused_when_judged(closing: &str) -> String {
    let (job, case) = job(ALL, closing);
    let order = accepted(read(&job, &case.catalogues()), CASE);
    lines(&judge_unsolved(&order).expect_err("a word on no question"))
}

#[test]
fn issue_16_a_closing_that_matches_no_question_is_refused_at_its_row_with_the_nearest() {
    let said = refused_when_judged(&CLOSING.replace("jacket-shrinks", "moisture"));
    let (text, case) = job(ALL, &CLOSING.replace("jacket-shrinks", "moisture"));
    let row = text
        .lines()
        .position(|line| line == "fact = \"moisture\"")
        .expect("the row");
    assert!(said.contains(&format!(":{}:", row + 1)), "{said}");
    assert!(
        said.contains("`seal_overlap` of leg A does not wait for the fact `moisture`")
            && said.contains("jacket-shrinks"),
        "{said}"
    );
    // One phase of a question that is asked of a leg; the whole joint.
    let phase = CLOSING.replace("leg = \"A\"", "leg = \"A\"\nphase = 1");
    let said = refused_when_judged(&phase);
    assert!(
        said.contains("asks nothing of leg A, phase 1")
            && said.contains("It asks of: leg A; leg B"),
        "{said}"
    );
    let joint = refused_when_judged(&CLOSING.replace("leg = \"A\"\n", ""));
    assert!(joint.contains("asks nothing of joint"), "{joint}");
    // A check that asks nothing of this joint.
    let ports = refused_when_judged(&CLOSING.replace("seal_overlap", "bus_ports"));
    assert!(ports.contains("Take the row out"), "{ports}");
    // A word on a check that rests on a field waits for the field.
    let field = CLOSING.replace("seal_overlap", "interface_stress");
    let (text, _) = job(ALL, &field);
    let order = accepted(read(&text, &case.catalogues()), CASE);
    assert!(judge_unsolved(&order).is_ok());
    assert!(judge(&order).is_err());
}

#[test]
fn issue_16_a_closing_of_a_question_that_is_judged_now_is_named_and_changes_nothing() {
    let judged = CLOSING.replace("seal_overlap", "insulation_in_body");
    let phase = judged.replace("leg = \"A\"", "leg = \"A\"\nphase = 1");
    let plan = plan_with(&phase);
    let [idle] = plan.idle_closings.as_slice() else {
        panic!("{:?}", plan.idle_closings);
    };
    assert!(
        idle.contains("Ines Calloway") && idle.contains("insulation in body of leg A, phase 1"),
        "{idle}"
    );
    assert!(plan.rulings.iter().all(|r| r.closed_by.is_none()));
    // The twin: a word on an open question is none of these.
    assert!(plan_with(CLOSING).idle_closings.is_empty());
}

#[test]
fn a_closing_needs_somebody_with_the_right_and_names_that_mean_something() {
    let without = r#"decides = ["windows", "limits", "confirmations", "bridge"]"#;
    assert!(refused(without, CLOSING).contains("decides closings"));
    assert!(
        refused(ALL, &CLOSING.replace("seal_overlap", "seal_overlab"))
            .contains("No check is named")
    );
    assert!(
        refused(ALL, &CLOSING.replace("jacket-shrinks", "jacket-shrank"))
            .contains("No fact is named")
    );
    assert!(
        refused(ALL, &CLOSING.replace("2026-12-31", "2026-02-01")).contains("before it was made")
    );
    assert!(
        refused(ALL, &CLOSING.replace("2026-03-01", "2026-03-12"))
            .contains("after the day of the work")
    );
}
