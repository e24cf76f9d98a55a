//! Two rows that put one plane at two places are refused, with both ways, both values and the place of a row.

use crate::cases::{Case, lines, named, read, texts};
use jointwright_joint::judge::judge_unsolved as judge;
use jointwright_wording::ComplaintText;

/// The straight case with a distance of the owner for the screen edge, which table 2 puts at 4 13/16 in = 122.2375 mm.
fn complaints(distance: &str) -> Vec<ComplaintText> {
    let case: Case = named("straight-wires-growth-measured");
    let link = format!(
        "owner_link = [{{ leg = \"A\", from = \"conductor-end\", to = \"insulation-screen-edge\", distance = \"{distance}\", by = \"Ines Calloway\", date = 2026-03-02 }}]\n"
    );
    let job = case
        .job
        .replacen("\n[job]\n", &format!("\n{link}\n[job]\n"), 1);
    assert_ne!(job, case.job);
    let order = crate::cases::accepted(read(&job, &case.catalogues()), distance);
    texts(&judge(&order).err().unwrap_or_default())
}

#[track_caller]
fn check(distance: &str, value: &str) {
    let complaints = complaints(distance);
    assert!(!complaints.is_empty(), "{distance} is accepted");
    let ComplaintText {
        path,
        line,
        column,
        message,
        hint,
        ..
    } = &complaints[0];
    for part in [
        "leg A",
        "122.2375 mm",
        value,
        "DS-15 revision 1",
        "table 2",
        "Ines Calloway, 2026-03-02",
    ] {
        assert!(message.contains(part), "{part:?} is not in: {message}");
    }
    assert!(
        ["job.toml", "demonstration"].contains(&path.as_str()),
        "{path}"
    );
    assert!(*line > 1 && *column >= 1, "{line}:{column}");
    assert!(!hint.is_empty());
}

#[test]
fn both_ways_and_both_values_are_named() {
    check("122 mm", "122 mm");
    check("5 in", "127 mm");
}

#[test]
fn a_refusal_is_in_words_and_names_no_links_by_number() {
    // 5 in lies outside both windows of table 2, so the windows exclude each other too.
    for distance in ["122 mm", "5 in"] {
        let complaints = complaints(distance);
        for word in ["link ", "counts", "loop"] {
            let all = lines(&complaints);
            assert!(
                !all.contains(word),
                "{word:?} is no word of the trade: {all}"
            );
        }
    }
}

#[test]
fn a_nanometre_is_a_contradiction() {
    check("122.237501 mm", "122.237501 mm");
}

#[test]
fn the_place_is_that_of_a_row_that_takes_part() {
    let complaint = &complaints("122 mm")[0];
    let case = named("straight-wires-growth-measured");
    let text = match complaint.path.as_str() {
        "job.toml" => return assert!(complaint.message.contains("Ines Calloway")),
        _ => case.catalogues()[0].1.clone(),
    };
    let row = text.lines().nth(complaint.line - 1).expect("the line");
    assert!(row.contains("insulation-screen-edge"), "{row}");
}

#[test]
fn the_same_place_said_twice_is_no_contradiction() {
    for distance in ["122.2375 mm", "4 13/16 in"] {
        let complaints = complaints(distance);
        assert!(complaints.is_empty(), "{}", lines(&complaints));
    }
}
