//! Text on each stream and in each file, and readers that close their pipe.

use super::{EXAMPLES, Vault, example};
use std::io::Read;
use std::process::Stdio;

#[test]
fn json_prints_one_document_and_nothing_else_and_writes_nothing() {
    for slug in EXAMPLES {
        let vault = Vault::new();
        let ran = vault.plan(slug, &["--json"]);
        assert_eq!(ran.err, "");
        let document: serde_json::Value = serde_json::from_str(&ran.out).expect("one document");
        assert_eq!(document["job"]["id"], *slug);
        assert!(!vault.path("out").exists());
    }
}

#[test]
fn files_go_below_out_by_the_name_of_the_job_and_their_paths_are_said() {
    for slug in EXAMPLES {
        let vault = Vault::new();
        let ran = vault.plan(slug, &[]);
        assert!(ran.out.contains(&format!("Wrote into out/{slug}:")));
        for name in ["plan.json", "plan.txt", "make-up-sheet.pdf", "leg-A.svg"] {
            assert!(ran.out.contains(name), "{name} is not said");
            let file = std::fs::read(vault.path(&format!("out/{slug}/{name}")));
            assert!(!file.expect("it is written").is_empty());
        }
        let page = vault.read(&format!("out/{slug}/plan.txt"));
        assert!(ran.out.starts_with(&page));
        let document = vault.plan(slug, &["--json"]).out;
        assert_eq!(vault.read(&format!("out/{slug}/plan.json")), document);
    }
}

#[test]
fn out_names_another_folder_with_json_too() {
    let vault = Vault::new();
    vault.plan("tannery-change", &["--out", "a/b"]);
    let ran = vault.plan("tannery-change", &["--out", "c", "--json"]);
    assert_eq!(vault.read("a/b/plan.json"), ran.out);
    assert_eq!(vault.read("c/plan.json"), ran.out);
    assert_eq!(vault.read("a/b/plan.txt"), vault.read("c/plan.txt"));
    assert!(!vault.path("out").exists());
}

#[test]
fn the_same_job_gives_the_same_bytes() {
    for slug in EXAMPLES {
        let (one, other) = (Vault::new(), Vault::new());
        for more in [&[][..], &["--json"]] {
            assert_eq!(one.plan(slug, more).out, other.plan(slug, more).out);
        }
    }
    let one = Vault::new().plan(EXAMPLES[0], &["--json"]);
    let other = Vault::new().plan(EXAMPLES[1], &["--json"]);
    assert_ne!(one.out, other.out);
}

#[test]
fn an_old_plan_is_replaced_whole() {
    let vault = Vault::new();
    std::fs::create_dir_all(vault.path("o")).expect("a folder is made");
    vault.write("o/plan.json", "x".repeat(1_000_000));
    let ran = vault.plan("tannery-change", &["--out", "o", "--json"]);
    assert_eq!(vault.read("o/plan.json"), ran.out);
    let left = std::fs::read_dir(vault.path("o")).expect("the folder is there");
    let mut left: Vec<String> = left
        .map(|entry| {
            let name = entry.expect("an entry").file_name();
            name.to_string_lossy().into_owned()
        })
        .collect();
    left.sort();
    let expected = [
        "leg-A.svg",
        "leg-B.svg",
        "make-up-sheet.pdf",
        "plan.json",
        "plan.txt",
    ];
    assert_eq!(left, expected, "nothing half written is left");
}

#[test]
fn a_reader_of_standard_output_that_goes_away_is_no_panic() {
    let vault = Vault::new();
    let job = example("larkspur-three-way");
    for more in [&["--json"][..], &[]] {
        let mut command = vault.command(&["plan"]);
        command.arg(&job).args(more);
        command.stdout(Stdio::piped()).stderr(Stdio::piped());
        let mut child = command.spawn().expect("the program runs");
        drop(child.stdout.take());
        let mut err = String::new();
        let stderr = child.stderr.take();
        stderr
            .expect("it is piped")
            .read_to_string(&mut err)
            .expect("it is UTF-8");
        let code = child.wait().expect("the program ends").code();
        assert!(matches!(code, Some(0..=3)), "{code:?}: {err}");
        assert!(!err.contains("panicked"), "{err}");
    }
}

#[test]
fn a_reader_of_standard_error_that_goes_away_is_no_panic() {
    let vault = Vault::new();
    let many: String = (0..5_000).map(|i| format!("key-{i} = {i}\n")).collect();
    vault.write("job.toml", many);
    let mut command = vault.command(&["plan", "job.toml"]);
    command.stdout(Stdio::null()).stderr(Stdio::piped());
    let mut child = command.spawn().expect("the program runs");
    drop(child.stderr.take());
    let code = child.wait().expect("the program ends").code();
    assert_eq!(code, Some(2));
}

#[test]
fn a_picture_of_an_older_plan_does_not_stand_beside_a_new_one() {
    let vault = Vault::new();
    vault.plan("larkspur-three-way", &["--out", "o"]);
    assert!(vault.path("o/leg-C.svg").exists());
    vault.write("o/leg-work.svg", "<svg>a drawing of somebody else</svg>");
    vault.plan("tannery-change", &["--out", "o"]);
    assert!(!vault.path("o/leg-C.svg").exists());
    assert!(vault.path("o/leg-A.svg").exists() && vault.path("o/leg-work.svg").exists());
}
