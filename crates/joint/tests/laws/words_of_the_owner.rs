//! The owner's words beside the instructions: they can tighten, are never dropped in silence, and can state shrink-back.

use crate::cases::{accepted, lines, named, plan_of, read};
use jointwright_joint::plan::Plan;

const CASE: &str = "straight-wires-growth-measured";

fn job_with(more: &str) -> String {
    let case = named(CASE);
    let people = "decides = [\"windows\", \"limits\", \"confirmations\", \"bridge\"]";
    assert!(case.job.contains("decides"), "the case names people");
    let job = if case.job.contains(people) {
        case.job.to_owned()
    } else {
        // Somebody in the case gets the authority that these rows need.
        let start = case.job.find("decides = [").expect("a list");
        let end = start + case.job[start..].find(']').expect("its end");
        format!("{}{people}{}", &case.job[..start], &case.job[end + 1..])
    };
    format!("{job}\n{more}")
}

/// Name of the first person under `authority`, and the day of the work.
fn by() -> String {
    let case = named(CASE);
    let people = &case.job[case.job.find("person = [").expect("people")..];
    let name = &people[people.find("name = \"").expect("a name") + 8..];
    let date = &case.job[case.job.find("\ndate = ").expect("a day") + 8..];
    format!(
        "by = \"{}\"\ndate = {}",
        name.split('"').next().unwrap_or_default(),
        date.lines().next().unwrap_or_default()
    )
}

fn plan(more: &str) -> Plan {
    let job = job_with(more);
    plan_of(&accepted(read(&job, &named(CASE).catalogues()), more), more)
}

fn outcomes(plan: &Plan, check: &str) -> Vec<String> {
    let of_check = plan.rulings.iter().filter(|r| r.check == check);
    of_check.map(|r| r.ruling.name().to_owned()).collect()
}

#[test]
fn a_stricter_limit_of_the_owner_fails_beside_instructions_that_pass() {
    let limit = |least: &str| {
        format!(
            "[[owner_limit]]\ncheck = \"seal_overlap\"\nleast = \"{least}\"\n{}\n",
            by()
        )
    };
    // The case does not state the shrink-back of its jackets: the ruling on each leg says so beside the limits.
    let open = "not-judged";
    assert_eq!(
        outcomes(&plan(""), "seal_overlap"),
        ["pass", open, "pass", open]
    );
    let both = format!("{}{}", limit("1 mm"), limit("200 mm"));
    let found = outcomes(&plan(&both), "seal_overlap");
    let of_a_leg = ["pass", "pass", "fail", open];
    assert_eq!(found, [of_a_leg, of_a_leg].concat());
}

#[test]
fn a_limit_that_would_have_no_effect_is_refused() {
    let more = format!(
        "[[owner_limit]]\ncheck = \"bend_radius\"\nleast = \"3 m\"\n{}\n",
        by()
    );
    let refused = read(&job_with(&more), &named(CASE).catalogues()).expect_err("no effect");
    assert!(
        lines(&refused).contains("takes no limit of the owner"),
        "{}",
        lines(&refused)
    );
}

/// Overlap of the seal on the jacket of leg A at its worst, mm.
fn overlap(more: &str) -> f64 {
    let plan = plan(more);
    let ruling = plan
        .rulings
        .iter()
        .find(|r| r.check == "seal_overlap")
        .expect("a ruling");
    ruling.margin.expect("a margin")
}

#[test]
fn a_jacket_that_shrinks_back_takes_that_off_the_overlap() {
    let shrinks = |plus: &str| {
        format!(
            "[[owner_link]]\nfrom = \"jacket-edge\"\nto = \"jacket-edge-shrunk-back\"\ndistance = \"0 mm\"\nminus = \"0 mm\"\nplus = \"{plus}\"\n{}\n",
            by()
        )
    };
    let lost = overlap("") - overlap(&shrinks("4 mm"));
    assert!((lost - 4.0).abs() < 1e-9, "lost {lost} mm");
    // The twin: without shrink-back nothing is lost.
    assert!((overlap("") - overlap(&shrinks("0 mm"))).abs() < 1e-9);
}
