//! A row that nobody but its writer compared with its paper says so wherever a ruling rests on it; so does a paper that may have been replaced since.

use crate::cases::{accepted, lines, named, read};
use jointwright_joint::catalogue::{Catalogue, DEMONSTRATION, DEMONSTRATION_TEXT};
use jointwright_joint::critic::{criticise, remarks};
use jointwright_joint::form::{Complaints, Source};
use jointwright_joint::judge::judge_unsolved as judge;
use jointwright_wording::plan;

const NOT_CHECKED: &str = "row not checked by a second person";
const DOCK: &str = "dock-straight-pressed";
const CHECKED: &str = "checked_by = \"Ines Calloway (invented)\"\nchecked = 2026-01-19\n";

/// Sources of all rulings on a job with these rows.
#[track_caller]
fn sources(rows: &str) -> Vec<String> {
    let rows = [(DEMONSTRATION.to_owned(), rows.to_owned())];
    let order = accepted(read(named(DOCK).job, &rows), DOCK);
    let judged = accepted(judge(&order), DOCK);
    judged
        .rulings
        .iter()
        .filter(|r| r.source.is_some())
        .map(|r| crate::cases::english(&r.source))
        .collect()
}

fn of<'s>(sources: &'s [String], id: &str) -> Vec<&'s String> {
    // A window may rest on several rows.
    let of_row = sources
        .iter()
        .filter(|source| source.contains(id) && source.matches("demo-").count() == 1);
    of_row.collect()
}

#[test]
fn every_ruling_on_an_unchecked_row_says_so_and_no_other() {
    let checked = sources(DEMONSTRATION_TEXT);
    let body = of(&checked, "demo-straight-15");
    assert!(body.len() >= 3, "{checked:#?}");
    assert!(
        !body.iter().any(|source| source.contains(NOT_CHECKED)),
        "{body:#?}"
    );
    let bond = of(&checked, "demo-bond");
    assert!(!bond.is_empty(), "{checked:#?}");
    assert!(
        bond.iter().all(|source| source.contains(NOT_CHECKED)),
        "{bond:#?}"
    );

    let unchecked = sources(&DEMONSTRATION_TEXT.replace(CHECKED, ""));
    let body = of(&unchecked, "demo-straight-15");
    assert!(
        body.iter().all(|source| source.contains(NOT_CHECKED)),
        "{body:#?}"
    );
}

#[test]
fn a_paper_that_may_have_been_replaced_is_said_to_be_known_only_until_then() {
    let old = DEMONSTRATION_TEXT.replace("seen_current = 2026-06-30", "seen_current = 2025-12-31");
    let said = "paper known to be current only until 2025-12-31";
    let sources_then = sources(&old);
    let body = of(&sources_then, "demo-straight-15");
    assert!(body.iter().all(|source| source.contains(said)), "{body:#?}");
    let today = sources(DEMONSTRATION_TEXT);
    assert!(
        !of(&today, "demo-straight-15")
            .iter()
            .any(|s| s.contains("known to be current"))
    );
}

#[test]
fn the_list_of_parts_says_it_too() {
    let order = named(DOCK).order();
    let document = plan(&accepted(judge(&order), DOCK));
    let text = serde_json::to_string(&document.make_up).expect("JSON");
    assert!(text.contains(NOT_CHECKED));
}

#[test]
fn lint_lists_unchecked_rows_as_remarks_and_not_as_defects() {
    let mut complaints = Complaints::default();
    let catalogue = |text: &str, complaints: &mut Complaints| {
        let source = Source::new(DEMONSTRATION, text.to_owned());
        Catalogue::read(&[source], true, complaints)
    };
    let some = remarks(&catalogue(DEMONSTRATION_TEXT, &mut complaints));
    let all_text = DEMONSTRATION_TEXT.replace(CHECKED, "");
    let all_rows = catalogue(&all_text, &mut complaints);
    let all = remarks(&all_rows);
    assert!(complaints.is_empty());
    assert!(!some.is_empty() && some.len() < all.len());
    assert!(some.iter().any(|remark| remark.row == "demo-bond-wires"));
    assert!(!some.iter().any(|remark| remark.row == "demo-straight-15"));
    assert_eq!(criticise(&all_rows), []);
}

#[test]
fn a_name_without_a_day_is_refused() {
    let half = DEMONSTRATION_TEXT.replacen("\nchecked = 2026-01-19", "", 1);
    let rows = [(DEMONSTRATION.to_owned(), half)];
    let complaints = read(named(DOCK).job, &rows).expect_err("half a check");
    assert!(lines(&complaints).contains("`checked_by` is given without `checked`"));
}
