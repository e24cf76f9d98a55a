//! The page: 80 columns, no escape codes without a terminal, and its banner.

use super::{EXAMPLES, Vault};

const INVENTED: &str = "INVENTED DEMONSTRATION DATA - NOT FOR ANY CABLE";

#[test]
fn every_line_keeps_to_80_columns() {
    for slug in EXAMPLES {
        let ran = Vault::new().plan(slug, &[]);
        assert!(ran.out.lines().count() > 20);
        for line in ran.out.lines() {
            assert!(line.chars().count() <= 80, "{slug}: {line}");
        }
    }
    for arguments in [&["--help"][..], &["plan", "--help"], &["new", "--help"]] {
        let ran = Vault::new().run(arguments);
        assert!(ran.out.lines().all(|l| l.chars().count() <= 80));
    }
}

#[test]
fn long_words_of_a_job_do_not_widen_the_page() {
    let vault = Vault::new();
    let text =
        std::fs::read_to_string(super::example("dock-straight-pressed")).expect("it is there");
    let long = "x".repeat(300);
    let text = text
        .replace("title = \"Straight joint", &format!("title = \"{long}"))
        .replace("name = \"Vault 9", &format!("name = \"{long}"))
        .replace("id = \"B\"", &format!("id = \"{}\"", "b".repeat(64)))
        .replace("leg = \"B\"", &format!("leg = \"{}\"", "b".repeat(64)));
    vault.write("job.toml", text);
    let ran = vault.run(&["plan", "job.toml"]);
    assert_eq!(ran.code, Some(3), "{ran:?}");
    for line in ran.out.lines() {
        assert!(line.chars().count() <= 80, "{line}");
    }
}

#[test]
fn no_escape_code_goes_anywhere_but_to_a_terminal() {
    for slug in EXAMPLES {
        let vault = Vault::new();
        for no_color in [None, Some(""), Some("1")] {
            let mut command = vault.command(&["plan"]);
            command.arg(super::example(slug));
            if let Some(value) = no_color {
                command.env("NO_COLOR", value);
            }
            let output = command.output().expect("the program runs");
            assert!(!output.stdout.contains(&0x1b) && !output.stderr.contains(&0x1b));
        }
        assert!(!vault.read(&format!("out/{slug}/plan.txt")).contains('\x1b'));
    }
}

#[test]
fn invented_data_say_so_across_every_page_and_document() {
    for slug in EXAMPLES {
        let vault = Vault::new();
        vault.plan(slug, &[]);
        let page = vault.read(&format!("out/{slug}/plan.txt"));
        let lines: Vec<&str> = page.lines().collect();
        assert!(lines[0].contains(INVENTED) && lines[lines.len() - 1].contains(INVENTED));
        let document = vault.read(&format!("out/{slug}/plan.json"));
        let document: serde_json::Value = serde_json::from_str(&document).expect("it is JSON");
        assert_eq!(document["invented"], INVENTED);
    }
}

#[test]
fn parts_that_are_invented_mark_a_job_that_does_not_say_so_itself() {
    let vault = Vault::new();
    let text =
        std::fs::read_to_string(super::example("dock-straight-pressed")).expect("it is there");
    assert!(text.contains("\ninvented = true\n"));
    vault.write("job.toml", text.replace("\ninvented = true\n", "\n"));
    assert!(vault.run(&["plan", "job.toml"]).out.contains(INVENTED));
}

#[test]
fn every_page_says_what_it_never_says_and_whom_to_call() {
    for slug in EXAMPLES {
        let out = Vault::new().plan(slug, &[]).out;
        let whole: Vec<&str> = out.split_whitespace().collect();
        let whole = whole.join(" ");
        assert!(whole.contains("This plan says nothing about which cable is dead"));
        assert!(whole.contains("Stop and call: Ines Calloway"));
        assert!(!whole.to_lowercase().contains("safe to"));
    }
}

#[test]
fn invented_parts_stay_marked_when_their_rows_are_copied_under_other_names() {
    let vault = Vault::new();
    let rows = std::fs::read_to_string(super::tree().join("data/catalogue/demonstration.toml"));
    let rows = rows
        .expect("the catalogue is there")
        .replace("demonstration = true\n", "")
        .replace("\"demo-", "\"own-")
        .replace("nvented", "wn");
    assert!(!rows.contains("\ndemonstration = true"));
    vault.write("parts.toml", rows);
    let text =
        std::fs::read_to_string(super::example("dock-straight-pressed")).expect("it is there");
    let text = text
        .replace("\ninvented = true\n", "\n")
        .replace("[\"demonstration\"]", "[\"parts.toml\"]")
        .replace("\"demo-", "\"own-")
        .replace("nvented", "wn");
    vault.write("job.toml", text);
    let ran = vault.run(&["plan", "job.toml"]);
    assert_eq!(ran.err, "");
    assert!(ran.out.contains(INVENTED), "{}", ran.out);
}

#[test]
fn a_plan_bears_the_time_of_the_clock_where_none_is_given_and_no_other_words() {
    let vault = Vault::new();
    let job = super::example("dock-straight-pressed");
    let job = job.to_str().expect("the path is UTF-8");
    let made = |ran: &super::Ran| {
        let document: serde_json::Value = serde_json::from_str(&ran.out).expect("it is JSON");
        let mark = &document["plan_mark"];
        let of = |name: &str| mark[name].as_str().unwrap_or_default().to_owned();
        (of("made"), of("whole"))
    };
    let (clock, whole) = made(&vault.run(&["plan", job, "--json"]));
    // "2026-03-09 14:05 UTC+01:00"
    assert!(clock.len() == 26 && clock.contains(" UTC"), "{clock}");
    let given = vault.run(&["plan", job, "--json", "--made", super::MADE]);
    assert_eq!(made(&given), (super::MADE.to_owned(), whole));
    let words = vault.run(&["plan", job, "--made", "approved: may be energised"]);
    assert_eq!((words.code, words.out.as_str()), (Some(2), ""));
}

#[test]
fn the_first_lines_of_a_page_tell_the_plan_from_every_other() {
    let mut marks = std::collections::BTreeSet::new();
    for slug in EXAMPLES {
        let out = Vault::new().plan(slug, &[]).out;
        let second = out.lines().nth(1).expect("a second line");
        let (mark, aloud) = second.split_once(": ").expect("a mark and its words");
        assert!(mark.starts_with("PLAN ") && mark.len() == 14, "{mark}");
        assert_eq!(aloud.split_whitespace().count(), 8, "{aloud}");
        assert!(marks.insert(mark.to_owned()), "{mark} is there twice");
    }
}

#[test]
fn a_picture_of_a_field_bears_the_mark_of_its_plan() {
    let vault = Vault::new();
    let job = super::example("larkspur-three-way");
    let job = job.to_str().expect("the path is UTF-8");
    let ran = vault.run(&[
        "field",
        job,
        "--leg",
        "A",
        "--svg",
        "a.svg",
        "--json",
        "--made",
        super::MADE,
    ]);
    let document: serde_json::Value = serde_json::from_str(&ran.out).expect("it is JSON");
    let mark = document["plan_mark"]["short"].as_str().expect("a mark");
    let svg = vault.read("a.svg");
    for words in [
        &format!("PLAN {mark}"),
        "issue 2, replaces 1, destroy it",
        super::MADE,
    ] {
        assert!(svg.contains(words), "{words}");
    }
}

#[test]
fn issue_16_a_cut_without_a_place_is_said_with_the_verdict() {
    let head = |slug: &str| {
        let page = Vault::new().plan(slug, &[]).out;
        let head: Vec<&str> = page.lines().take(14).collect();
        head.join(" ")
            .split_whitespace()
            .collect::<Vec<_>>()
            .join(" ")
    };
    let waits = head("dock-straight-not-pressed");
    assert!(
        waits.contains("NOT COMPLETE: no place yet for insulation end."),
        "{waits}"
    );
    assert!(!head("dock-straight-pressed").contains("NOT COMPLETE"));
}
