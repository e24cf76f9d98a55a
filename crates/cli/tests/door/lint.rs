//! `lint`: exit codes, streams, 80 columns, the document.

use super::{Ran, Vault, tree};

const INVENTED: &str = "INVENTED DEMONSTRATION DATA - NOT FOR ANY CABLE";

/// A catalogue of the critic's tests, as text.
fn text(slug: &str) -> String {
    let path = tree().join("tests/critic").join(format!("{slug}.toml"));
    std::fs::read_to_string(path).expect("the catalogue is there")
}

/// Runs `lint` on catalogues of these texts.
fn lint(texts: &[&str], more: &[&str]) -> Ran {
    let vault = Vault::new();
    let names: Vec<String> = (0..texts.len()).map(|n| format!("c{n}.toml")).collect();
    for (name, text) in names.iter().zip(texts) {
        vault.write(name, text);
    }
    let mut arguments = vec!["lint"];
    arguments.extend(names.iter().map(String::as_str));
    arguments.extend(more);
    vault.run(&arguments)
}

/// Exit code and last line.
#[track_caller]
fn check(ran: &Ran, code: i32, last: &str) {
    assert_eq!((ran.code, ran.err.as_str()), (Some(code), ""), "{ran:?}");
    assert_eq!(ran.out.lines().last(), Some(last));
    for line in ran.out.lines() {
        assert!(line.chars().count() <= 80, "{line}");
    }
    let words: Vec<&str> = ran.out.split_whitespace().collect();
    let words = words.join(" ");
    assert!(words.contains("does not mean that a table is right"));
}

#[test]
fn catalogues_in_which_nothing_is_found_end_with_0() {
    let ran = lint(&[&text("clean-tables")], &[]);
    check(&ran, 0, "No defects found in 13 rows.");
}

#[test]
fn catalogues_in_which_something_is_found_end_with_1() {
    let ran = lint(&[&text("rows_gap")], &[]);
    check(&ran, 1, "1 defect found in 4 rows.");
    assert!(ran.out.contains("c0.toml:60:1 rows_gap"), "{}", ran.out);
    assert!(ran.out.contains("hint: "));
}

#[test]
fn the_word_demonstration_names_the_embedded_catalogue() {
    let ran = Vault::new().run(&["lint", "demonstration"]);
    assert!(matches!(ran.code, Some(0 | 1)), "{ran:?}");
    assert!(ran.out.lines().next().is_some_and(|l| l.contains(INVENTED)));
    assert!(
        ran.out
            .lines()
            .last()
            .is_some_and(|l| l.ends_with(" found in 24 rows."))
    );
}

#[test]
fn several_catalogues_are_read_together() {
    let body = text("text_against_number-presses");
    let ran = lint(&[&text("rows_gap"), &body], &[]);
    check(&ran, 1, "2 defects found in 5 rows.");
}

#[test]
fn rows_that_are_invented_say_so_and_others_do_not() {
    let real = text("rows_gap")
        .replace("demonstration = true\n", "")
        .replace("Invented", "Some");
    assert!(!lint(&[&real], &[]).out.contains(INVENTED));
    assert!(lint(&[&text("rows_gap")], &[]).out.contains(INVENTED));
}

#[test]
fn a_catalogue_that_cannot_be_used_ends_with_2_and_every_complaint() {
    let broken = text("clean").replace("presses = 4", "presses = \"four\"");
    let ran = lint(&[&broken], &["missing.toml"]);
    assert_eq!((ran.code, ran.out.as_str()), (Some(2), ""), "{ran:?}");
    assert_eq!(ran.err.lines().count(), 2, "{}", ran.err);
    assert!(
        ran.err
            .contains("missing.toml:1:1 The catalogue file cannot be read")
    );
    assert!(
        ran.err.contains("`catalogue.connector ") && ran.err.contains(".presses`"),
        "{}",
        ran.err
    );
}

#[test]
fn no_catalogue_at_all_ends_with_2() {
    let ran = Vault::new().run(&["lint"]);
    assert_eq!((ran.code, ran.out.as_str()), (Some(2), ""));
}

#[test]
fn the_document_holds_every_defect() {
    let ran = lint(
        &[
            &text("electrode_short"),
            &text("rows_gap")
                .replace("\"t-", "\"u-")
                .replace("paper T-1", "paper U-1"),
        ],
        &["--json"],
    );
    assert_eq!(ran.code, Some(1), "{ran:?}");
    let document: serde_json::Value = serde_json::from_str(&ran.out).expect("it is JSON");
    assert_eq!(document["invented"], INVENTED);
    assert_eq!(document["n_rows"], 5);
    let defects = document["defects"].as_array().expect("a list");
    let classes: Vec<&str> = defects.iter().filter_map(|d| d["class"].as_str()).collect();
    assert_eq!(document["n_defects"], defects.len());
    assert_eq!(classes, ["electrode_short", "rows_gap"]);
    for field in ["place", "found", "expected", "hint"] {
        assert!(
            defects[0][field]
                .as_str()
                .is_some_and(|text| !text.is_empty())
        );
    }
    assert_eq!(defects[1]["rows"], serde_json::json!(["u-2", "u-3"]));
}

#[test]
fn the_help_of_lint_keeps_to_80_columns() {
    let ran = Vault::new().run(&["lint", "--help"]);
    assert_eq!(ran.code, Some(0));
    assert!(ran.out.lines().all(|l| l.chars().count() <= 80));
    assert!(ran.out.contains("does not mean"));
}
