//! A row that names several legs or phases counts once for each; a row about a single reading, count or test is refused if it names several.

use crate::cases::{accepted, lines, named, plan_of, read, texts};
use jointwright_joint::form::json_schema;
use jointwright_joint::job::JOB;
use jointwright_wording::ComplaintText;

const LARKSPUR: &str = "larkspur-three-way";
const SURFACE: &str = r#"  { leg = ["A", "B", "C"], phase = [1, 2, 3], jacket = "smooth", by = "Tomas Brandt" },
"#;
const LINK: &str = r#"{ from = "jacket-edge", to = "jacket-edge-shrunk-back","#;
const LAST: &str = r#"{ what = "duct bank (invented)", "#;
const WINDOW: &str = "[[owner_window]]\nplane = \"jacket-edge\"\nminus = \"1/8 in\"\nplus = \"1/8 in\"\nby = \"Ines Calloway\"\ndate = 2026-03-02\n";
const CLOSING: &str = "[[closing]]\ncheck = \"seal_overlap\"\nfact = \"jacket-shrinks\"\nwhy = \"w\"\nby = \"Ines Calloway\"\ndate = 2026-03-01\nuntil = 2026-12-31\n";

/// The job with one passage exchanged and more at its end.
fn edited(from: &str, to: &str, more: &str) -> String {
    let job = named(LARKSPUR).job;
    assert!(job.contains(from), "nothing to edit: {from}");
    format!("{}\n{more}", job.replacen(from, to, 1))
}

fn document(job: &str) -> String {
    let order = accepted(read(job, &named(LARKSPUR).catalogues()), LARKSPUR);
    let mut plan = plan_of(&order, LARKSPUR);
    let mark = &mut plan.plan_mark;
    for text in [&mut mark.short, &mut mark.aloud, &mut mark.whole] {
        text.clear();
    }
    serde_json::to_string_pretty(&plan).expect("a document")
}

/// Checks for one complaint, on these words of the job, that says so.
#[track_caller]
fn refused(job: &str, at: &str, says: &str) {
    let complaints: Vec<ComplaintText> = match read(job, &named(LARKSPUR).catalogues()) {
        Ok(_) => Vec::new(),
        Err(complaints) => texts(&complaints),
    };
    let [complaint] = complaints.as_slice() else {
        panic!("{at}: {}", lines(&complaints));
    };
    assert!(complaint.to_string().contains(says), "{complaint}");
    let line = job.lines().nth(complaint.line - 1).unwrap_or_default();
    let there: String = line.chars().skip(complaint.column - 1).collect();
    assert!(there.starts_with(at), "{complaint} stands on `{there}`");
}

fn each_end(of: impl Fn(&str, u8) -> String) -> String {
    let ends = ["A", "B", "C"].map(|leg| [1, 2, 3].map(|phase| of(leg, phase)).concat());
    ends.concat()
}

#[test]
fn a_row_of_several_ends_is_a_row_of_each() {
    let apart = each_end(|leg, phase| {
        format!(
            "  {{ leg = \"{leg}\", phase = {phase}, jacket = \"smooth\", by = \"Tomas Brandt\" }},\n"
        )
    });
    let together = document(named(LARKSPUR).job);
    assert_eq!(document(&edited(SURFACE, &apart, "")), together);
    // The twin: one end fewer is another document.
    let fewer = edited("phase = [1, 2, 3], jacket", "phase = [1, 2], jacket", "");
    assert_ne!(document(&fewer), together);
}

#[test]
fn a_lot_of_several_phases_is_a_lot_of_each() {
    let lot = |phase: &str| {
        format!(
            "[[lot]]\nleg = \"A\"\nphase = {phase}\npart = \"connector\"\nlot = \"INV-K-9\"\nmade = 2026-01-14\nno_expiry = true\n"
        )
    };
    // Rows in two forms cannot stand in one list, so all rows of the job are written out.
    let job = |rows: &str| {
        let job = named(LARKSPUR).job;
        let start = job.find("lot = [\n").expect("lots");
        let end = start + job[start..].find("\n]\n").expect("their end") + 3;
        format!("{}{}\n{rows}", &job[..start], &job[end..])
    };
    let apart = ["1", "2", "3"].map(lot).concat();
    let together = document(&job(&lot("[3, 1, 2]")));
    assert_eq!(document(&job(&apart)), together);
    assert_ne!(document(&job(&lot("[1, 2]"))), together);
}

#[test]
fn a_word_of_the_owner_on_several_legs_is_a_word_on_each() {
    let leg = |legs: &str, row: &str| row.replacen('\n', &format!("\nleg = {legs}\n"), 1);
    let windows = |legs: &[&str]| {
        let rows: String = legs.iter().map(|legs| leg(legs, WINDOW)).collect();
        document(&edited("", "", &rows))
    };
    assert_eq!(windows(&["[\"A\", \"C\"]"]), windows(&["\"A\"", "\"C\""]));
    assert_ne!(windows(&["[\"A\", \"C\"]"]), windows(&["\"A\""]));
    let links = |legs: &str| {
        let job = named(LARKSPUR).job;
        let start = job.find(LINK).expect("a link");
        let end = start + job[start..].find("},\n").expect("its end") + 3;
        let row = &job[start + 1..end];
        let rows: Vec<String> = legs
            .split('|')
            .map(|leg| format!("{{ leg = {leg},{row}"))
            .collect();
        document(&format!(
            "{}{}{}",
            &job[..start],
            rows.concat(),
            &job[end..]
        ))
    };
    assert_eq!(links("[\"A\", \"B\"]"), links("\"A\"|\"B\""));
    assert_ne!(links("[\"A\", \"B\"]"), links("\"A\""));
}

#[test]
fn a_word_that_closes_questions_of_several_ends_closes_each() {
    let whom = |rows: &str| {
        let decides = "decides = [";
        let job = edited(decides, &format!("{decides}\"closings\", "), rows);
        let order = accepted(read(&job, &named(LARKSPUR).catalogues()), LARKSPUR);
        let whom = order.job.closings.iter().map(|row| row.whom.words());
        whom.collect::<Vec<String>>()
    };
    let at = |ends: &str| CLOSING.replacen('\n', &format!("\n{ends}\n"), 1);
    assert_eq!(
        whom(&at("leg = [\"A\", \"B\"]\nphase = [1, 3]")),
        [
            "leg A, phase 1",
            "leg A, phase 3",
            "leg B, phase 1",
            "leg B, phase 3"
        ]
    );
    assert_eq!(whom(&at("leg = [\"A\", \"B\"]")), ["leg A", "leg B"]);
}

#[test]
fn what_is_named_twice_in_one_row_is_refused_at_its_place() {
    let says = "names the same twice in one list";
    let edit = |to: &str| edited("leg = [\"A\", \"B\", \"C\"], phase = [1, 2, 3]", to, "");
    refused(
        &edit("leg = [\"A\", \"B\", \"C\"], phase = [1, 3, 3]"),
        "3], jacket",
        says,
    );
    refused(
        &edit("leg = [\"A\", \"B\", \"A\"], phase = [1, 2, 3]"),
        "\"A\"], phase",
        says,
    );
}

#[test]
fn what_stands_once_and_is_named_by_two_rows_is_refused_as_in_single_rows() {
    let last = r#"  { leg = ["A", "B"], what = "still air (invented)", temperature = "30 degC", film_w_per_m2k = 8.0, from = "invented", by = "Ines Calloway", date = 2026-03-02 },
"#;
    let says = "Two stretches of what surrounds leg `A` end at the far end";
    let job = edited(LAST, &format!("{}  {LAST}", last.trim_start()), "");
    refused(&job, LAST, says);
    let single = job.replacen("[\"A\", \"B\"], what", "\"A\", what", 1);
    refused(&single, LAST, says);
}

#[test]
fn an_empty_list_of_ends_is_refused() {
    let says = "is an empty list";
    let surface = "phase = [1, 2, 3], jacket";
    refused(
        &edited(surface, "phase = [], jacket", ""),
        "[], jacket",
        says,
    );
    // For a row that holds for all legs if none is named, an empty list would mean all.
    let window = WINDOW.replacen('\n', "\nleg = []\n", 1);
    refused(&edited("", "", &window), "[]", says);
}

#[test]
fn an_end_that_is_not_there_is_refused_where_the_list_names_it() {
    let edit = |from: &str, to: &str| edited(from, to, "");
    refused(
        &edit(
            "[\"A\", \"B\", \"C\"], phase",
            "[\"A\", \"B\", \"D\"], phase",
        ),
        "\"D\"]",
        "No leg is named `D`",
    );
    refused(
        &edit("[1, 2, 3], jacket", "[1, 2, 4], jacket"),
        "4]",
        "a whole number from 1 to 3",
    );
}

#[test]
fn what_was_read_counted_or_tested_holds_for_one_end_alone() {
    let says = "what one end shows says nothing of another";
    for row in [
        "over = \"conductor\"",
        "shield_elements = 7",
        "in = \"conductor\"",
        "resistance = \"91.6 mohm\"",
        "at = \"wires to bond\"",
    ] {
        let job = named(LARKSPUR).job;
        let there = job.lines().find(|line| line.contains(row)).expect("a row");
        let phase = there.replacen("phase = 1", "phase = [1, 2]", 1);
        refused(&edited(there, &phase, ""), "[1, 2]", says);
        let (head, leg) = there.split_once("leg = ").expect("a leg");
        let legs = format!("{head}leg = [{}]{}", &leg[..3], &leg[3..]);
        refused(&edited(there, &legs, ""), "[\"", says);
    }
}

#[test]
fn the_schema_takes_one_or_several_where_the_reader_does() {
    let schema = json_schema(&JOB, "job");
    let phase = |table: &str| {
        let row = &schema["properties"][table]["items"]["properties"]["phase"];
        (row["type"].clone(), row["anyOf"][1]["uniqueItems"].clone())
    };
    assert_eq!(phase("reading").0, "integer");
    assert_eq!(phase("count").0, "integer");
    for table in ["lot", "surface", "closing"] {
        assert_eq!(phase(table).1, true, "{table}");
    }
}
