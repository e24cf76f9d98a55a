//! Inputs that once broke something, or that are made to break something.

use super::{Came, JOBS, complaints, complaints_with, exchanged, run};
use jointwright_joint::catalogue::DEMONSTRATION_TEXT;
use jointwright_joint::plane::Plane;

/// The straight joint with a measured sleeve.
const STRAIGHT: &str = JOBS[2];

/// Checks the one complaint about a text; shows all if there are others.
#[track_caller]
fn check(text: &str, at: &str, says: &str) {
    let found = complaints(text);
    let place = format!("job.toml:{} ", place(text, at));
    let is_found = |c: &&String| c.starts_with(&place) && c.contains(says);
    assert!(
        found.iter().any(|c| is_found(&c)),
        "expected \"{says}\" at {place}; found {found:#?}"
    );
}

/// Line and column of a passage, which stands once in the text.
#[track_caller]
pub(super) fn place(text: &str, passage: &str) -> String {
    let mut places = text.match_indices(passage);
    let (at, _) = places.next().expect("the passage stands in the text");
    assert!(places.next().is_none(), "`{passage}` stands there twice");
    let before = &text[..at];
    let line_start = before.rfind('\n').map_or(0, |i| i + 1);
    let column = text[line_start..at].chars().count() + 1;
    format!("{}:{column}", before.matches('\n').count() + 1)
}

#[track_caller]
fn plan_text(job: &str, catalogue: &str) -> String {
    match run(job.as_bytes(), catalogue.as_bytes()) {
        Ok(Came::Planned(mut plan)) => {
            // Its mark depends on every byte.
            for text in [
                &mut plan.plan_mark.short,
                &mut plan.plan_mark.aloud,
                &mut plan.plan_mark.whole,
            ] {
                text.clear();
            }
            serde_json::to_string(&plan).expect("a plan is JSON")
        }
        Ok(Came::Refused(complaints)) => panic!("refused: {complaints:#?}"),
        Err(broken) => panic!("{broken}"),
    }
}

#[test]
fn the_ends_of_lines_and_a_byte_order_mark_change_nothing_but_the_mark() {
    for job in JOBS {
        let expected = plan_text(job, DEMONSTRATION_TEXT);
        let crlf = job.replace('\n', "\r\n");
        let marked = format!("\u{feff}{job}");
        let catalogue = DEMONSTRATION_TEXT.replace('\n', "\r\n");
        assert_eq!(plan_text(&crlf, &catalogue), expected);
        assert_eq!(plan_text(&marked, DEMONSTRATION_TEXT), expected);
        let other = job.replacen("\nid = \"", "\nid = \"x", 1);
        assert_ne!(plan_text(&other, DEMONSTRATION_TEXT), expected);
    }
}

#[test]
fn a_length_beyond_what_is_handled_is_refused_where_it_stands() {
    for huge in [
        "9223372036 m",
        "9223372036854775807 mm",
        "99999999999999999999999999999 in",
        "10001 m",
    ] {
        let text = STRAIGHT.replacen("slack = \"30 in\"", &format!("slack = \"{huge}\""), 1);
        check(&text, &format!("\"{huge}\""), "more than 10 km");
    }
}

#[test]
fn a_whole_number_at_the_ends_of_its_type_is_refused_where_it_stands() {
    for number in ["9223372036854775807", "-9223372036854775808"] {
        let text = exchanged(STRAIGHT, "reclosing = 0", &format!("reclosing = {number}"));
        check(&text, number, "a whole number from");
    }
}

#[test]
fn ten_kilometres_on_every_link_add_up_or_are_refused_in_words() {
    let mut far = String::new();
    for line in DEMONSTRATION_TEXT.split_inclusive('\n') {
        match (
            line.find("distance = \""),
            line.trim().starts_with("{ from"),
        ) {
            (Some(at), true) => {
                let from = at + "distance = \"".len();
                let to = from + line[from..].find('"').expect("a text ends");
                far.push_str(&format!("{}10000 m{}", &line[..from], &line[to..]));
            }
            _ => far.push_str(line),
        }
    }
    for job in JOBS {
        run(job.as_bytes(), far.as_bytes()).expect("a plan or a refusal that keeps its promises");
    }
}

#[test]
fn seals_ten_kilometres_away_are_placed_exactly() {
    let far = exchanged(
        DEMONSTRATION_TEXT,
        "to = \"jacket-edge\", distance = \"2 in\"",
        "to = \"jacket-edge\", distance = \"10000 m\"",
    );
    let far = exchanged(
        &far,
        "to = \"seal-end\", distance = \"4 in\"",
        "to = \"seal-end\", distance = \"10000 m\"",
    );
    let place = |catalogue: &str| match run(STRAIGHT.as_bytes(), catalogue.as_bytes()) {
        Ok(Came::Planned(plan)) => plan.legs[0]
            .cuts
            .iter()
            .find(|cut| cut.plane == Plane::SealEnd)
            .and_then(|cut| cut.nominal_mm)
            .expect("the seal's end is placed"),
        _ => panic!("no plan"),
    };
    let moved = place(&far) - place(DEMONSTRATION_TEXT);
    // As JSON has it, in binary: to a nanometre.
    assert!((moved - (20.0e6 - 6.0 * 25.4)).abs() < 1.0e-6, "{moved}");
}

#[test]
fn days_at_the_end_of_the_calendar_are_no_overflow() {
    let text = STRAIGHT.replace("expanded = 2025-09-20", "expanded = 9999-12-31");
    let catalogue = DEMONSTRATION_TEXT.replace("months = 36", "months = 600");
    plan_text(&text, &catalogue);
}

#[test]
fn nesting_without_end_is_refused() {
    for opening in ["[", "{a=", "[{a="] {
        let text = format!("leg = {}", opening.repeat(50_000));
        assert!(!complaints(&text).is_empty());
    }
    let dotted = format!("{} = 1", vec!["a"; 50_000].join("."));
    assert!(!complaints(&dotted).is_empty());
}

#[test]
fn a_zero_byte_is_refused_where_it_stands() {
    let text = exchanged(STRAIGHT, "slack = \"30 in\"", "slack = \"30\0 in\"");
    check(&text, "\0 in", "not TOML");
}

#[test]
fn digits_of_other_scripts_are_no_digits() {
    let text = exchanged(
        STRAIGHT,
        "slack = \"30 in\"",
        "slack = \"\u{0663}\u{0660} in\"",
    );
    check(&text, "\"\u{0663}", "slack");
}

#[test]
fn text_that_would_forge_a_line_of_the_page_is_refused() {
    for escaped in ["\\nRulings: 0 fail", "\\u001b[2J", "\\r", "\\t", "\\u0085"] {
        let title = format!("title = \"x{escaped}\"");
        let text = exchanged(
            STRAIGHT,
            "title = \"Straight joint, feeder 7b (invented)\"",
            &title,
        );
        check(&text, &title["title = ".len()..], "line break");
    }
}

#[test]
fn text_of_a_catalogue_that_would_forge_a_line_is_refused() {
    let catalogue = exchanged(
        DEMONSTRATION_TEXT,
        "place = \"figure 2\"",
        "place = \"figure\\n2\"",
    );
    let found = complaints_with(STRAIGHT, &catalogue);
    let expected = place(&catalogue, "\"figure\\n2\"");
    assert_eq!(found.len(), 1, "{found:#?}");
    assert!(found[0].starts_with(&format!("demonstration:{expected} ")));
}

#[test]
fn a_limit_of_the_owner_the_wrong_way_round_is_refused() {
    let text = format!(
        "{STRAIGHT}\n[[owner_limit]]\ncheck = \"electrode_cover\"\nleast = \"2 mm\"\ngreatest = \"1 mm\"\nby = \"Ines Calloway\"\ndate = 2026-03-09\n"
    );
    check(&text, "\"2 mm\"\ngreatest", "greatest");
    let right = text.replace("least = \"2 mm\"", "least = \"0 mm\"");
    assert!(complaints(&right).is_empty());
}

#[test]
fn a_day_with_a_time_is_no_date() {
    let text = exchanged(STRAIGHT, "date = 2026-03-11", "date = 2026-03-11T10:00:00");
    check(&text, "2026-03-11T", "a date such as");
}

#[test]
fn a_syntax_error_does_not_breed_complaints_about_what_it_hides() {
    let text = exchanged(STRAIGHT, "kind = \"straight\"", "kind \"straight\"");
    let found = complaints(&text);
    assert!(found[0].contains("not TOML"), "{found:#?}");
    assert!(
        !found.iter().any(|c| c.contains("No leg is named")),
        "{found:#?}"
    );
}

#[test]
fn bytes_that_are_not_text_are_refused_where_they_stand() {
    let mut bytes = STRAIGHT.as_bytes().to_vec();
    let at = STRAIGHT.find("slack").expect("the job says its slack");
    bytes[at] = 0xFF;
    let Ok(Came::Refused(found)) = run(&bytes, DEMONSTRATION_TEXT.as_bytes()) else {
        panic!("not refused");
    };
    let line = STRAIGHT[..at].matches('\n').count() + 1;
    assert_eq!((found.len(), found[0].line, found[0].column), (1, line, 1));
}

#[test]
fn cuts_out_of_order_never_come_out_without_a_fail() {
    let outcome = |parts: &str| match run(STRAIGHT.as_bytes(), parts.as_bytes()) {
        Ok(Came::Planned(plan)) => plan.outcome.name(),
        Ok(Came::Refused(_)) => "refused",
        Err(broken) => panic!("{broken}"),
    };
    let turned = exchanged(
        DEMONSTRATION_TEXT,
        "to = \"jacket-edge\", distance = \"2 in\"",
        "to = \"jacket-edge\", toward_end = true, distance = \"8 in\"",
    );
    assert_eq!(outcome(&turned), "fail");
    assert_eq!(outcome(DEMONSTRATION_TEXT), "not-judged");
}

#[test]
fn issue_16_a_part_that_is_not_found_while_a_catalogue_is_wrong_is_answered_with_that() {
    let of = |rows: &str| -> Vec<String> {
        let found = complaints_with(STRAIGHT, rows).into_iter();
        found
            .filter(|c| c.contains("in the job's catalogues"))
            .collect()
    };
    let bad = DEMONSTRATION_TEXT.replace("id = \"demo-straight-15\"", "id = \"demo straight 15\"");
    assert_ne!(bad, DEMONSTRATION_TEXT);
    let wrong = of(&bad);
    assert!(!wrong.is_empty());
    for complaint in &wrong {
        assert!(
            complaint.contains("Something is wrong in a catalogue"),
            "{complaint}"
        );
        assert!(!complaint.contains("have none"), "{complaint}");
    }
    // The twin: a sound catalogue without a body.
    let without = of("about = \"nothing\"\n");
    assert!(
        without.iter().any(|c| c.contains("have none")),
        "{without:#?}"
    );
}
