//! Exit codes, and the words printed with them.

use super::{EXAMPLES, Ran, Vault, example};

/// Text of the straight joint with a measured sleeve.
fn straight() -> String {
    std::fs::read_to_string(example("dock-straight-pressed")).expect("the example is there")
}

/// Owner's rows about the values from memory.
const CONFIRMED: &str = r#"confirmation = [
  { key = "insulation-level-133", edition = "invented edition", by = "Ines Calloway", date = 2026-03-09 },
  { key = "cable-table", edition = "invented edition", by = "Ines Calloway", date = 2026-03-09 },
]
"#;

/// Checks the refusal of an unusable input: exit 2, nothing on standard output, the words on standard error, no file.
#[track_caller]
fn check(vault: &Vault, arguments: &[&str], says: &[&str]) {
    let ran: Ran = vault.run(arguments);
    assert_eq!(ran.code, Some(2), "{ran:?}");
    assert_eq!(ran.out, "");
    for words in says {
        assert!(ran.err.contains(words), "`{words}` is not in {}", ran.err);
    }
    assert!(!vault.path("out").exists());
}

#[test]
fn each_example_ends_with_the_code_that_its_rulings_ask_for() {
    for slug in EXAMPLES {
        let expected = if *slug == "tannery-change" { 1 } else { 3 };
        let ran = Vault::new().plan(slug, &[]);
        assert_eq!((ran.code, ran.err.as_str()), (Some(expected), ""), "{slug}");
    }
}

#[test]
fn a_joint_of_which_everything_passes_ends_with_0_and_says_what_that_is_not() {
    let vault = Vault::new();
    let job = vault.write("job.toml", format!("{CONFIRMED}{}", straight()));
    let ran = vault.run(&["plan", job]);
    assert_eq!(ran.code, Some(0), "{ran:?}");
    let whole: Vec<&str> = ran.out.split_whitespace().collect();
    assert!(
        whole
            .join(" ")
            .contains("that does not say that it may be built")
    );
}

#[test]
fn issue_16_a_fail_that_is_a_whole_sentence_ends_with_one_full_stop() {
    let vault = Vault::new();
    let other = straight().replace("size = \"350 kcmil\"\n", "size = \"1/0 AWG\"\n");
    assert_ne!(other, straight());
    let job = vault.write("job.toml", format!("{CONFIRMED}{other}"));
    let ran = vault.run(&["plan", job]);
    assert_eq!(ran.code, Some(1), "{ran:?}");
    assert!(ran.out.contains("is dead."), "{}", ran.out);
    assert!(!ran.out.contains(".."), "{}", ran.out);
}

#[test]
fn half_a_confirmation_leaves_something_not_judged() {
    let vault = Vault::new();
    let half: String = CONFIRMED
        .lines()
        .filter(|l| !l.contains("cable-table"))
        .map(|l| format!("{l}\n"))
        .collect();
    let job = vault.write("job.toml", format!("{half}{}", straight()));
    assert_eq!(vault.run(&["plan", job]).code, Some(3));
}

#[test]
fn a_job_that_cannot_be_read_is_named_with_its_place() {
    let vault = Vault::new();
    check(&vault, &["plan", "none.toml"], &["none.toml:1:1 "]);
    check(&vault, &["plan", "."], &[".:1:1 "]);
    vault.write("empty.toml", "");
    check(
        &vault,
        &["plan", "empty.toml"],
        &["empty.toml:1:1 ", "is empty"],
    );
    vault.write("bytes.toml", b"a = 1\nb = \xff\n");
    check(
        &vault,
        &["plan", "bytes.toml"],
        &["bytes.toml:2:5 ", "UTF-8"],
    );
    vault.write("zip.toml", b"PK\x03\x04\x14\0\x08\0\x08\0\x9c");
    check(&vault, &["plan", "zip.toml"], &["zip.toml:1:11 ", "UTF-8"]);
}

#[test]
fn a_catalogue_that_cannot_be_read_is_complained_of_where_the_job_names_it() {
    let vault = Vault::new();
    let text = straight();
    let named = |name: &str| {
        text.replace(
            "[\"demonstration\"]",
            &format!("[\"demonstration\", \"{name}\"]"),
        )
    };
    vault.write("job.toml", named("none.toml"));
    check(
        &vault,
        &["plan", "job.toml"],
        &["job.toml:5:32 ", "none.toml"],
    );
    vault.write("job.toml", named("."));
    check(&vault, &["plan", "job.toml"], &["job.toml:5:32 "]);
    vault.write("parts.toml", b"\xff");
    vault.write("job.toml", named("parts.toml"));
    check(&vault, &["plan", "job.toml"], &["parts.toml:1:1 ", "UTF-8"]);
}

#[test]
fn a_catalogue_is_looked_for_beside_the_job_wherever_one_stands() {
    let vault = Vault::new();
    std::fs::create_dir(vault.path("jobs")).expect("a folder is made");
    let parts = "[[consumable]]\nid = \"tape\"\n";
    vault.write("jobs/parts.toml", parts);
    let text = straight().replace("[\"demonstration\"]", "[\"demonstration\", \"parts.toml\"]");
    vault.write("jobs/job.toml", text);
    check(
        &vault,
        &["plan", "jobs/job.toml"],
        &["jobs/parts.toml:1:1 "],
    );
}

#[test]
fn complaints_go_to_standard_error_with_json_too() {
    let vault = Vault::new();
    let text = straight().replace("slack = \"30 in\"", "slack = 30");
    vault.write("job.toml", text);
    let ran = vault.run(&["plan", "job.toml"]);
    assert_eq!(ran.err.lines().count(), 2, "{}", ran.err);
    assert!(ran.err.lines().all(|l| l.starts_with("job.toml:")));
    let with_json = vault.run(&["plan", "job.toml", "--json"]);
    assert_eq!((with_json.code, with_json.out.as_str()), (Some(2), ""));
    assert_eq!(with_json.err, ran.err);
}

#[test]
fn a_folder_that_cannot_be_made_is_named() {
    let vault = Vault::new();
    vault.write("taken", "a file");
    let job = example("dock-straight-pressed");
    let job = job.to_str().expect("the path is UTF-8");
    for more in [
        &["--out", "taken"][..],
        &["--out", "taken/deeper"],
        &["--out", "taken", "--json"],
    ] {
        let arguments: Vec<&str> = ["plan", job].iter().chain(more).copied().collect();
        check(&vault, &arguments, &["taken", "--out"]);
    }
    assert_eq!(vault.read("taken"), "a file");
}

#[test]
fn a_file_that_cannot_be_replaced_is_named() {
    let vault = Vault::new();
    std::fs::create_dir_all(vault.path("o/plan.json/full")).expect("a folder is made");
    let ran = vault.plan("dock-straight-pressed", &["--out", "o"]);
    assert_eq!((ran.code, ran.out.as_str()), (Some(2), ""));
    assert!(ran.err.contains("o/plan.json"), "{}", ran.err);
}

#[test]
fn new_writes_a_job_that_plans_and_never_overwrites() {
    let vault = Vault::new();
    let ran = vault.run(&["new", "mine.toml"]);
    assert_eq!((ran.code, ran.out.as_str()), (Some(0), "Wrote mine.toml\n"));
    let planned = vault.run(&["plan", "mine.toml"]);
    assert!(matches!(planned.code, Some(0 | 1 | 3)), "{planned:?}");
    vault.write("mine.toml", "mine");
    let again = vault.run(&["new", "mine.toml"]);
    assert_eq!((again.code, again.out.as_str()), (Some(2), ""));
    assert!(again.err.contains("mine.toml"));
    assert_eq!(vault.read("mine.toml"), "mine");
    let nowhere = vault.run(&["new", "none/mine.toml"]);
    assert_eq!(nowhere.code, Some(2));
    assert!(nowhere.err.contains("none/mine.toml"));
}

#[test]
fn the_help_of_plan_says_what_each_exit_code_means() {
    for arguments in [&["--help"][..], &["plan", "--help"]] {
        let ran = Vault::new().run(arguments);
        assert_eq!(ran.code, Some(0));
        let whole: Vec<&str> = ran.out.split_whitespace().collect();
        let whole = whole.join(" ");
        for words in [
            "0 every ruling passes",
            "1 one fails",
            "2 the input",
            "3 none fails",
        ] {
            assert!(whole.contains(words), "`{words}` is not in {whole}");
        }
    }
}

#[test]
fn arguments_that_are_none_end_with_2() {
    for arguments in [&["frob"][..], &["plan"], &["schema", "frob"], &[]] {
        let ran = Vault::new().run(arguments);
        assert_eq!((ran.code, ran.out.as_str()), (Some(2), ""));
        assert!(!ran.err.is_empty());
    }
}

#[test]
fn the_first_command_of_the_readme_ends_with_0_or_3() {
    let readme = std::fs::read_to_string(super::tree().join("README.md")).expect("it is there");
    let command = "cargo run --release -- plan ";
    let line = readme.lines().find_map(|l| l.strip_prefix(command));
    let job = super::tree().join(line.expect("the README plans a job"));
    let ran = Vault::new().run(&["plan", job.to_str().expect("the path is UTF-8")]);
    assert!(matches!(ran.code, Some(0 | 3)), "{ran:?}");
}

#[test]
fn every_command_is_completed_and_has_its_place_in_the_manual() {
    let vault = Vault::new();
    let commands = [
        "plan",
        "solve",
        "lint",
        "new",
        "schema",
        "completions",
        "man",
    ];
    for shell in ["bash", "zsh", "fish", "elvish", "powershell"] {
        let ran = vault.run(&["completions", shell]);
        assert_eq!((ran.code, ran.err.as_str()), (Some(0), ""), "{shell}");
        for command in commands {
            assert!(ran.out.contains(command), "{command} for {shell}");
        }
    }
    let manual = vault.run(&["man"]);
    assert_eq!((manual.code, manual.err.as_str()), (Some(0), ""));
    for command in commands {
        let heading = format!(".TH jointwright-{command} 1");
        assert!(manual.out.contains(&heading), "{command}");
    }
    assert!(manual.out.contains("0 never means"));
    assert_eq!(vault.run(&["completions", "abacus"]).code, Some(2));
}
