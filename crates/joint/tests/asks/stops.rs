//! Tests that a cable that does not measure like its papers stops the work, and withholds every number to cut to, before anything rules.

use super::plan_with_fields;
use crate::cases::{Case, everything, named};
use jointwright_joint::plan::Plan;

const CASE: &str = "straight-wires-growth-measured";

/// The case with other papers for its cables, and more rows before its tables: the readings stay.
fn with_papers(size: &str, metal: &str, rows: &str) -> (String, Case) {
    let case = named(CASE);
    let was = "size = \"1/0 AWG\"\nmetal = \"aluminium\"";
    assert_eq!(case.job.matches(was).count(), 2, "two cables");
    let is = format!("size = \"{size}\"\nmetal = \"{metal}\"");
    let decides = "decides = [\"windows\", \"limits\", \"confirmations\"";
    let job = case.job.replace(was, &is);
    assert!(job.contains(decides), "somebody decides");
    let job = job.replace(decides, &format!("{decides}, \"closings\""));
    (format!("{rows}\n{job}"), case)
}

fn papers(plan: &Plan) -> Vec<&str> {
    let rulings = plan
        .rulings
        .iter()
        .filter(|r| r.check == "measures_like_papers");
    rulings.map(|r| r.ruling.name()).collect()
}

#[test]
fn issue_16_a_cable_that_is_not_like_its_papers_stops_the_work_before_anybody_confirms_the_table() {
    let (job, case) = with_papers("4/0 AWG", "copper", "");
    let plan = plan_with_fields(&job, case);
    assert_eq!(papers(&plan), ["not-judged"; 2]);
    assert!(plan.must_stop());
    assert_eq!(plan.stops.len(), 2);
    for stop in &plan.stops {
        assert!(stop.say.contains("key = \"cable-table\""), "{}", stop.say);
    }
    // The twin: nothing stops the unchanged job.
    let plan = plan_with_fields(case.job, case);
    assert!(!plan.must_stop() && plan.stops.is_empty());
}

fn by(key: &str) -> String {
    format!("{key} = [{{ ")
}

#[test]
fn what_was_seen_against_the_papers_fails_without_any_table() {
    let case = named(CASE);
    let seen = |row: &str| {
        let rows = format!("count = [{{ leg = \"A\", phase = 1, {row} }}]");
        plan_with_fields(&format!("{rows}\n{}", case.job), case)
    };
    for row in [
        "metal = \"copper\"",
        "strands = 1",
        "shield_kind = \"flat-straps\"",
        "shield_elements = 10",
    ] {
        let plan = seen(row);
        assert_eq!(papers(&plan), ["fail", "not-judged"], "{row}");
    }
    // The twin: observations that agree with the papers.
    let plan = seen(
        "metal = \"aluminium\", strands = 19, shield_kind = \"concentric-wires\", shield_elements = 11",
    );
    assert_eq!(papers(&plan), ["not-judged"; 2]);
    assert!(plan.stops.is_empty());
}

#[test]
fn what_was_seen_rules_out_what_is_named_and_the_nearest_come_first() {
    let case = named(CASE);
    let rows = "count = [{ leg = \"A\", phase = 1, metal = \"aluminium\", strands = 19 }]";
    let with = plan_with_fields(&format!("{rows}\n{}", case.job), case);
    let without = plan_with_fields(case.job, case);
    let said = |plan: &Plan| plan.legs[0].ends[0].like_its_papers.clone();
    assert!(!said(&with).contains("copper"), "{}", said(&with));
    assert!(!said(&with).contains("solid"), "{}", said(&with));
    // The twin: where nobody looked, copper and solid conductors are among the possible ones.
    assert!(said(&without).contains("copper"), "{}", said(&without));
    let off: Vec<f64> = said(&without)
        .split(" times the readings' error off")
        .filter_map(|part| part.rsplit('(').next()?.parse().ok())
        .collect();
    assert!(
        off.len() == 3 && off.is_sorted(),
        "{off:?} in {}",
        said(&without)
    );
}

#[test]
fn issue_16_a_jacket_alone_that_does_not_fit_is_named_and_the_papers_are_not_among_what_it_is_like()
{
    let case = named(CASE);
    let jacket = "values = [\"28.26 mm\"]";
    assert_eq!(case.job.matches(jacket).count(), 2, "two jackets");
    let said = |job: &str| {
        let plan = plan_with_fields(job, case);
        (
            plan.legs[0].ends[0].like_its_papers.clone(),
            plan.must_stop(),
        )
    };
    let (text, stops) = said(&case.job.replace(jacket, "values = [\"46.00 mm\"]"));
    assert!(stops);
    let own = "1/0 AWG aluminum compressed";
    assert!(
        text.contains("over the jacket 1.810 to 1.812 in") && text.contains("by its papers it is"),
        "{text}"
    );
    assert!(!text.contains(own), "{text}");
    // The twin: the jacket as on its papers.
    let (text, stops) = said(case.job);
    assert!(!stops && !text.contains("over the jacket"), "{text}");
}

#[test]
fn confirming_the_table_makes_the_stop_a_fail() {
    let rows = format!(
        "{}key = \"cable-table\", edition = \"2020\", by = \"Ines Calloway\", date = 2026-03-01 }}]",
        by("confirmation")
    );
    let (job, case) = with_papers("4/0 AWG", "copper", &rows);
    let plan = plan_with_fields(&job, case);
    assert_eq!(papers(&plan), ["fail"; 2]);
    assert!(plan.stops.is_empty() && plan.must_stop());
}

#[test]
fn a_diameter_of_its_own_papers_that_was_not_read_fails_without_any_table() {
    let case = named(CASE);
    let of = |least: &str, greatest: &str| {
        let papers = format!(
            "papers = [{{ over = \"insulation\", least = \"{least}\", greatest = \"{greatest}\" }}]\nbend_radius_least"
        );
        plan_with_fields(&case.job.replace("bend_radius_least", &papers), case)
    };
    assert_eq!(papers(&of("21 mm", "22 mm")), ["fail"; 2]);
    assert_eq!(papers(&of("18 mm", "20 mm")), ["not-judged"; 2]);
}

#[test]
fn the_word_of_a_named_person_lifts_the_stop_and_passes_nothing() {
    let word = |fact: &str| {
        format!(
            "{{ check = \"measures_like_papers\", leg = \"LEG\", fact = \"{fact}\", why = \"read the print\", by = \"Ines Calloway\", date = 2026-03-01, until = 2026-03-31 }}"
        )
    };
    let both = [word("cable"), word("confirmation")].join(", ");
    let (a, b) = (both.replace("LEG", "A"), both.replace("LEG", "B"));
    let (job, case) = with_papers("4/0 AWG", "copper", &format!("closing = [{a}, {b}]"));
    let plan = plan_with_fields(&job, case);
    let lifted = plan.stops.iter().all(|stop| stop.lifted_by.is_some());
    assert!(lifted && plan.stops.len() == 2);
    assert_eq!(papers(&plan), ["not-judged"; 2]);
    // The twin: a word on one leg alone lifts nothing of the joint.
    let (job, case) = with_papers("4/0 AWG", "copper", &format!("closing = [{a}]"));
    assert!(plan_with_fields(&job, case).must_stop());
}

#[test]
fn issue_16_letters_carry_the_mark_and_ask_for_no_cut_while_work_stops() {
    let during = ["(fact: moisture)", "(fact: contact)", "(fact: count)"];
    let asks_for_a_cut = |case: &Case| {
        let plan = plan_with_fields(case.job, *case);
        let letters = jointwright_wording::letters(&plan);
        assert!(!letters.is_empty(), "{}", case.slug);
        for letter in &letters {
            assert!(
                letter.text.contains(&plan.plan_mark.words()),
                "{}",
                letter.text
            );
            assert_eq!(letter.text.contains("CUT NOTHING"), plan.must_stop());
        }
        let asks = letters
            .iter()
            .any(|l| during.iter().any(|fact| l.text.contains(fact)));
        (plan.must_stop(), asks)
    };
    let of = |slug: &str| everything().find(|case| case.slug == slug).expect(slug);
    assert_eq!(asks_for_a_cut(&of("tannery-change")), (true, false));
    assert_eq!(
        asks_for_a_cut(&of("dock-straight-not-pressed")),
        (false, true)
    );
}
