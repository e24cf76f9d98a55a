//! Decisions: each is an entry of its own, whole or refused, and changes no finding.

use super::{HEAD, PLAN};
use crate::cases::{accepted, lines, named, texts};
use jointwright_joint::built::{Built, FindingKind, read_built};
use jointwright_joint::form::Source;
use jointwright_joint::job::Order;
use jointwright_joint::judge::judge_unsolved;
use jointwright_wording::findings;

const CASE: &str = "larkspur-three-way";
const DECISION: &str = r#"decision = [
  { id = "d1", by = "Ines Calloway", role = "owner's engineer", authority = "the owner's rule 7", reached = "by telephone, written down by Tomas Brandt", date = 2026-03-09, time = "14:20", what = "cut it back" },
]
"#;

fn row(rest: &str) -> String {
    format!(
        "along = [{{ leg = \"B\", phase = 1, of = \"insulation-screen-edge\", with = \"rule\", {rest} }}]\n"
    )
}

fn read(order: &Order, rows: &str) -> Result<Built, String> {
    let text = format!("job = \"{CASE}\"\nplan = \"{PLAN}\"\n{HEAD}{rows}");
    let source = Source::new("readings.toml", text);
    read_built(&source, &order.job, PLAN).map_err(|found| lines(&texts(&found)))
}

#[test]
fn a_decision_stands_beside_its_finding_and_changes_it_not() {
    let order = named(CASE).order();
    let judged = accepted(judge_unsolved(&order), CASE);
    for (mm, kind) in [(130, FindingKind::StopAndAsk), (124, FindingKind::InWindow)] {
        let reading = format!("at = [\"{mm} mm\"], time = \"13:05\", decision = \"d1\"");
        let rows = format!("{DECISION}{}", row(&reading));
        let built = read(&order, &rows).unwrap_or_else(|why| panic!("{why}"));
        let found = findings(&judged, &built);
        let mut found = found.findings.iter();
        let finding = found.find(|of| of.read.is_some()).expect("one");
        assert_eq!(finding.kind, kind);
        let decided = finding.decided.as_deref().expect("it was decided");
        for said in [
            "“cut it back”",
            "Ines Calloway, owner's engineer",
            "the owner's rule 7",
            "2026-03-09 14:20",
            "by telephone, written down by Tomas Brandt",
        ] {
            assert!(decided.contains(said), "{said}: {decided}");
        }
        let by = finding.by.as_deref();
        assert_eq!(by, Some("Tomas Brandt, 2026-03-09 13:05"));
    }
}

#[test]
fn a_person_whom_the_job_does_not_name_is_said_to_be_none_of_those_who_decide() {
    let mut order = named(CASE).order();
    let rows = format!("{DECISION}{}", row("at = [\"130 mm\"], decision = \"d1\""));
    let said = |order: &Order| {
        let judged = accepted(judge_unsolved(order), CASE);
        let built = read(order, &rows).unwrap_or_else(|why| panic!("{why}"));
        let found = findings(&judged, &built).findings.into_iter();
        found.filter_map(|of| of.decided).collect::<String>()
    };
    let of_job = order.job.people.iter().map(|person| person.name.clone());
    assert!(of_job.into_iter().any(|name| name == "Ines Calloway"));
    assert!(!said(&order).contains("does not name"));
    // The crew lead is named, and decides on no window.
    let by_lead = rows.replace("by = \"Ines Calloway\"", "by = \"Tomas Brandt\"");
    let judged = accepted(judge_unsolved(&order), CASE);
    let built = read(&order, &by_lead).unwrap_or_else(|why| panic!("{why}"));
    let found = findings(&judged, &built).findings.into_iter();
    let decided: String = found.filter_map(|of| of.decided).collect();
    assert!(decided.contains("does not name Tomas Brandt among those who decide"));
    order.job.people.clear();
    assert!(said(&order).contains("the job does not name Ines Calloway"));
}

#[test]
fn a_decision_without_one_of_its_facts_or_without_its_reading_is_refused() {
    let order = named(CASE).order();
    let reading = row("at = [\"130 mm\"], decision = \"d1\"");
    for field in ["by", "role", "authority", "reached", "time", "what"] {
        let start = DECISION.find(&format!("{field} = \"")).expect("a field");
        let end = start + DECISION[start..].find("\", ").map_or(0, |at| at + 3);
        let without = if end > start {
            format!("{}{}", &DECISION[..start], &DECISION[end..])
        } else {
            DECISION.replace(", what = \"cut it back\"", "")
        };
        let said = read(&order, &format!("{without}{reading}")).expect_err(field);
        assert!(said.contains(field), "{field}: {said}");
    }
    for (rows, expected) in [
        (
            format!("{DECISION}{}", row("at = [\"130 mm\"]")),
            "No reading names the decision `d1`",
        ),
        (
            row("at = [\"130 mm\"], decision = \"d2\""),
            "No decision is named `d2`. Hint: List it under `decision`",
        ),
        (
            format!("{DECISION}{}", row("at = [], decision = \"d1\"")),
            "a note or a decision and no value",
        ),
        (
            format!("{}{reading}", DECISION.replace("14:20", "2 pm")),
            "`2 pm` is no time of day",
        ),
        (
            format!("{}{reading}", DECISION.replace("14:20", "25:20")),
            "`25:20` is no time of day",
        ),
    ] {
        let said = read(&order, &rows).expect_err("it is wrong");
        assert!(said.contains(expected), "{expected}: {said}");
    }
}
