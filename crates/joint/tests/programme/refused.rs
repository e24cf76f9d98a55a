//! Contradictions in the words of rows and jobs on which the order of steps rests.

use crate::cases::{lines, named, read};

/// Complaints about a case with these changes to its job and catalogue.
fn complaints(job: [&str; 2], parts: [&str; 2]) -> String {
    let case = named("dock-straight-pressed");
    let changed = |text: &str, [from, to]: [&str; 2]| {
        assert!(text.contains(from), "{from} is not there");
        text.replacen(from, to, 1)
    };
    let catalogues: Vec<(String, String)> = case
        .catalogues()
        .into_iter()
        .map(|(name, text)| (name, changed(&text, parts)))
        .collect();
    match read(&changed(case.job, job), &catalogues) {
        Ok(_) => String::new(),
        Err(complaints) => lines(&complaints),
    }
}

const SAME: [&str; 2] = ["[job]", "[job]"];
const PARTS: [&str; 2] = ["[[bus]]", "[[bus]]"];

#[track_caller]
fn refused(job: [&str; 2], parts: [&str; 2], says: &str) {
    let said = complaints(job, parts);
    assert!(said.contains(says), "{said:?}");
}

#[test]
fn what_is_as_it_was_is_not_refused() {
    assert_eq!(complaints(SAME, PARTS), "");
}

#[test]
fn a_shield_that_is_laid_back_and_cut_off_is_refused() {
    let cut = "cut_off = [\"corrugated-tape\"]";
    let both = "cut_off = [\"corrugated-tape\"]\nlay_back = { shields = [\"corrugated-tape\"] }";
    refused(SAME, [cut, both], "both laid back and cut off");
}

#[test]
fn the_edge_of_a_shield_that_a_row_does_not_take_is_refused() {
    let cut = "cut_off = [\"corrugated-tape\"]";
    refused(
        SAME,
        [cut, "cut_off = [\"lapped-tape\"]"],
        "does not take them by its `shields`",
    );
}

#[test]
fn a_bridge_comes_off_by_nobodys_word_who_may_not_decide_it() {
    let by = [
        "bridge_off = { when = \"after-bond-is-measured\", by = \"Ines Calloway\"",
        "bridge_off = { when = \"after-bond-is-measured\", by = \"Tomas Brandt\"",
    ];
    refused(
        by,
        PARTS,
        "Tomas Brandt is not named under `authority` as one who decides bridge",
    );
}

#[test]
fn half_a_window_of_a_connector_as_made_is_refused() {
    let half = ["across_least = \"21.4 mm\", ", ""];
    refused(SAME, half, "a window has two sides");
    let turned = ["torque_least = \"18 N·m\"", "torque_least = \"28 N·m\""];
    refused(SAME, turned, "the least cannot be above the greatest");
    let bare = ["torque_least = \"18 N·m\"", "torque_least = \"18\""];
    refused(SAME, bare, "torque_least");
}

#[test]
fn issue_16_an_adapter_without_length_is_refused() {
    let length = "from = \"adapter-near\", to = \"adapter-far\", distance = \"85 mm\"";
    let says = "leaves nothing between adapter-near and adapter-far";
    let with = |other: &str| length.replace("\"85 mm\"", other);
    for none in ["\"0 mm\"", "\"2 mm\", minus = \"2 mm\", plus = \"2 mm\""] {
        refused(SAME, [length, &with(none)], says);
    }
    // Twins: something is left.
    for some in ["\"1 mm\"", "\"2 mm\", minus = \"1 mm\", plus = \"2 mm\""] {
        assert_eq!(complaints(SAME, [length, &with(some)]), "", "{some}");
    }
    let turned = "from = \"adapter-far\", to = \"adapter-near\", distance = \"85 mm\"";
    let says = "leaves nothing between adapter-far and adapter-near";
    refused(SAME, [length, turned], says);
}
