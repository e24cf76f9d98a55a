//! Things that are not regular files, full disks, killed runs.
#![cfg(target_os = "linux")]

use super::{Ran, Vault, example};
use std::collections::BTreeMap;
use std::os::unix::process::ExitStatusExt;
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

/// Longest time that a refusal may take.
const REFUSAL_MOST: Duration = Duration::from_secs(20);

fn dock() -> String {
    std::fs::read_to_string(example("dock-straight-pressed")).expect("the example is there")
}

fn fifo(vault: &Vault, name: &str) {
    let made = Command::new("mkfifo").arg(vault.path(name)).status();
    assert!(made.expect("mkfifo runs").success());
}

/// Runs the program, and ends a run that takes too long.
#[track_caller]
fn in_time(vault: &Vault, arguments: &[&str]) -> Ran {
    let mut command = vault.command(arguments);
    command.stdout(Stdio::piped()).stderr(Stdio::piped());
    let begun = Instant::now();
    let mut child = command.spawn().expect("the program runs");
    while child.try_wait().expect("it can be waited for").is_none() {
        if begun.elapsed() > REFUSAL_MOST {
            child.kill().expect("it can be ended");
            panic!("{arguments:?} goes on and on");
        }
        std::thread::yield_now();
    }
    Ran::of(child.wait_with_output().expect("it has ended"))
}

/// Checks a refusal: exit 2, these words on standard error, nothing on standard output.
#[track_caller]
fn refused(vault: &Vault, arguments: &[&str], says: &[&str]) {
    let ran = in_time(vault, arguments);
    assert_eq!((ran.code, ran.out.as_str()), (Some(2), ""), "{ran:?}");
    for words in says {
        assert!(ran.err.contains(words), "`{words}` is not in {}", ran.err);
    }
}

#[test]
fn what_is_no_regular_file_is_refused_at_once_and_never_waited_for() {
    let vault = Vault::new();
    fifo(&vault, "pipe.toml");
    for (name, what) in [
        ("pipe.toml", "a pipe"),
        ("/dev/zero", "a device"),
        ("/dev/null", "a device"),
        (".", "a folder"),
    ] {
        for door in ["plan", "field", "rate", "solve", "lint"] {
            refused(
                &vault,
                &[door, name],
                &[what, "only regular files are read"],
            );
        }
        vault.write(
            "job.toml",
            dock().replace(
                "[\"demonstration\"]",
                &format!("[\"demonstration\", \"{name}\"]"),
            ),
        );
        refused(&vault, &["plan", "job.toml"], &["job.toml:5:32 ", what]);
    }
}

#[test]
fn a_file_is_read_up_to_a_stated_size_and_no_further() {
    let vault = Vault::new();
    let file = std::fs::File::create(vault.path("large.toml")).expect("a file");
    // A sparse file takes no room on the disk.
    file.set_len(1 << 40).expect("a length");
    for door in ["plan", "solve", "lint"] {
        refused(
            &vault,
            &[door, "large.toml"],
            &["more than the 8388608 bytes"],
        );
    }
    // A regular file that states a size of 0 is no way round the limit.
    refused(&vault, &["plan", "/proc/self/maps"], &["/proc/self/maps:"]);
}

#[test]
fn a_file_that_is_missing_is_named_with_the_place_where_it_was_looked_for() {
    let vault = Vault::new();
    let folder = vault.path("").canonicalize().expect("a folder");
    let place = |name: &str| format!("nothing is at {}", folder.join(name).display());
    refused(
        &vault,
        &["plan", "none.toml"],
        &["none.toml:1:1 ", &place("none.toml")],
    );
    vault.write(
        "job.toml",
        dock().replace("[\"demonstration\"]", "[\"mine.toml\"]"),
    );
    let ran = vault.run(&["plan", "job.toml"]);
    assert!(ran.err.contains(&place("mine.toml")), "{}", ran.err);
    assert!(ran.err.contains("\"mine.toml\""), "{}", ran.err);
    // Parts of a missing catalogue give no complaints of their own.
    assert_eq!(ran.err.lines().count(), 1, "{}", ran.err);
}

#[test]
fn a_name_that_is_no_name_of_a_catalogue_is_the_only_complaint() {
    let vault = Vault::new();
    for wrong in ["[\"demonstraton\"]", "[7]", "[\"\"]", "\"demonstration\""] {
        vault.write("job.toml", dock().replace("[\"demonstration\"]", wrong));
        let ran = vault.run(&["plan", "job.toml"]);
        assert_eq!(ran.code, Some(2), "{wrong}");
        assert_eq!(ran.err.lines().count(), 1, "{wrong}: {}", ran.err);
        assert!(ran.err.starts_with("job.toml:5:"), "{wrong}: {}", ran.err);
    }
}

/// Runs with a limit on file size, in blocks of 512 bytes; with `is_told` a longer write returns an error, else it kills the program.
fn with_little_room(
    vault: &Vault,
    n_blocks: u32,
    is_told: bool,
    arguments: &[&str],
) -> std::process::Output {
    let trap = if is_told { "trap '' XFSZ; " } else { "" };
    // A block has 512 bytes in dash and 1024 in bash; the limits below hold for both.
    let script = format!("ulimit -c 0; {trap}ulimit -f {n_blocks}; exec \"$0\" \"$@\"");
    let program = vault.command::<&str>(&[]);
    let mut command = Command::new("sh");
    command
        .arg("-c")
        .arg(script)
        .arg(program.get_program())
        .args(arguments);
    command.current_dir(vault.path("")).stdin(Stdio::null());
    command.output().expect("a shell runs")
}

/// Returns every file below a folder of the vault, with its bytes.
fn contents(vault: &Vault, folder: &str) -> BTreeMap<String, Vec<u8>> {
    let entries = std::fs::read_dir(vault.path(folder)).expect("the folder is there");
    let file = |entry: std::io::Result<std::fs::DirEntry>| {
        let path = entry.expect("an entry").path();
        let name = path
            .file_name()
            .expect("a name")
            .to_string_lossy()
            .into_owned();
        (name, std::fs::read(path).expect("a file"))
    };
    entries.map(file).collect()
}

#[test]
fn new_on_a_full_disk_leaves_nothing_and_writes_when_there_is_room() {
    let vault = Vault::new();
    let output = with_little_room(&vault, 1, true, &["new", "mine.toml"]);
    assert_eq!(output.status.code(), Some(2));
    assert!(String::from_utf8_lossy(&output.stderr).contains("cannot write mine.toml"));
    assert_eq!(contents(&vault, ""), BTreeMap::new());
    assert_eq!(vault.run(&["new", "mine.toml"]).code, Some(0));
    let again = vault.run(&["new", "mine.toml"]);
    assert_eq!(again.code, Some(2));
    assert!(
        again.err.contains("mine.toml is there already"),
        "{}",
        again.err
    );
}

#[test]
fn what_a_killed_run_leaves_the_next_one_takes_away() {
    let vault = Vault::new();
    let output = with_little_room(&vault, 1, false, &["new", "mine.toml"]);
    assert!(output.status.signal().is_some(), "{output:?}");
    let left: Vec<String> = contents(&vault, "").into_keys().collect();
    assert!(
        left.len() == 1 && left[0].starts_with(".jointwright-"),
        "{left:?}"
    );
    // Files of a run that is still writing stay, and so do files that are not ours.
    let ours = format!(".jointwright-{}-x.part", std::process::id());
    vault.write(".jointwright-notes", "mine");
    std::fs::write(vault.path(&ours), "half").expect("a file");
    assert_eq!(vault.run(&["new", "mine.toml"]).code, Some(0));
    let left: Vec<String> = contents(&vault, "").into_keys().collect();
    let mut expected = vec![
        ours,
        ".jointwright-notes".to_owned(),
        "mine.toml".to_owned(),
    ];
    expected.sort();
    assert_eq!(left, expected);
}

#[test]
fn a_disk_that_fills_up_leaves_the_plan_before_whole_and_never_two_generations() {
    let vault = Vault::new();
    vault.plan("larkspur-three-way", &["--out", "o"]);
    let before = contents(&vault, "o");
    assert!(before.len() >= 6);
    let dock = example("dock-straight-pressed");
    let arguments = ["plan", dock.to_str().expect("a path"), "--out", "o"];
    // The limit leaves room for the page, but not for the sheet.
    let output = with_little_room(&vault, 100, true, &arguments);
    assert_eq!(output.status.code(), Some(2), "{output:?}");
    assert!(String::from_utf8_lossy(&output.stderr).contains("cannot write o/"));
    assert_eq!(contents(&vault, "o"), before);
    // The twin: with enough room all files are of the other plan.
    let ran = vault.run(&arguments);
    assert_eq!(ran.code, Some(3), "{ran:?}");
    let after = contents(&vault, "o");
    assert!(!after.contains_key("leg-C.svg"));
    for (name, bytes) in &after {
        assert_ne!(before.get(name), Some(bytes), "{name}");
    }
}

#[test]
fn a_place_that_is_taken_by_a_folder_leaves_the_plan_before_whole() {
    let vault = Vault::new();
    std::fs::create_dir_all(vault.path("o/leg-B.svg/full")).expect("a folder");
    vault.write("o/plan.json", "the plan before");
    let ran = vault.plan("dock-straight-pressed", &["--out", "o"]);
    assert_eq!(ran.code, Some(2));
    assert!(
        ran.err.contains("o/leg-B.svg") && ran.err.contains("a folder"),
        "{}",
        ran.err
    );
    assert_eq!(vault.read("o/plan.json"), "the plan before");
    assert!(!vault.path("o/make-up-sheet.pdf").exists());
}

#[test]
fn a_standard_output_that_is_full_is_said_and_ends_with_2() {
    let vault = Vault::new();
    let dock = example("dock-straight-pressed");
    let dock = dock.to_str().expect("a path");
    for arguments in [
        &["plan", dock][..],
        &["plan", dock, "--json"],
        &["rate", dock],
        &["schema", "job"],
        &["man"],
        &["completions", "bash"],
        &["lint", "demonstration"],
        &["new", "mine.toml"],
    ] {
        let full = std::fs::File::options().write(true).open("/dev/full");
        let mut command = vault.command(arguments);
        command.stdout(full.expect("/dev/full"));
        let output = command.output().expect("the program runs");
        let said = String::from_utf8_lossy(&output.stderr);
        assert_eq!(output.status.code(), Some(2), "{arguments:?}: {said}");
        assert!(said.contains("standard output"), "{arguments:?}: {said}");
    }
}

const READINGS: &str = "leg,phase,over,instrument,error,temperature,values\nA,1,jacket,diameter-tape,0.05 mm,12 degC,40.20 mm\n";

/// Job with one more file of readings.
fn listing(name: &str) -> String {
    format!("readings_csv = \"{name}\"\n{}", dock())
}

#[test]
fn a_file_of_rows_is_read_beside_its_job_and_shows_on_the_plan() {
    let vault = Vault::new();
    vault.write("job.toml", dock());
    let mark = |vault: &Vault| {
        vault.run(&["plan", "job.toml", "--out", "out"]);
        let plan: serde_json::Value =
            serde_json::from_str(&vault.read("out/plan.json")).expect("a document");
        plan["plan_mark"]["whole"].clone()
    };
    let without = mark(&vault);
    vault.write("job.toml", listing("readings.csv"));
    vault.write("readings.csv", READINGS);
    let with = mark(&vault);
    vault.write("readings.csv", READINGS.replace("40.20", "40.21"));
    let other = mark(&vault);
    assert!(without != with && with != other && without != other);
    // The file lies beside the job, wherever the program runs.
    std::fs::create_dir(vault.path("deep")).expect("a folder");
    vault.write("deep/job.toml", listing("mine.csv"));
    vault.write("deep/mine.csv", READINGS.replace("jacket", "jackett"));
    refused(
        &vault,
        &["plan", "deep/job.toml"],
        &["deep/mine.csv:2:5 ", "Did you mean \"jacket\"?"],
    );
}

#[test]
fn what_is_no_regular_file_of_rows_is_refused_at_once() {
    let vault = Vault::new();
    fifo(&vault, "pipe.csv");
    let large = std::fs::File::create(vault.path("large.csv")).expect("a file");
    large.set_len(1 << 40).expect("a length");
    vault.write("sheet.csv", b"PK\x03\x04\xff\xfe");
    for (name, what) in [
        ("pipe.csv", "a pipe"),
        ("/dev/zero", "a device"),
        (".", "a folder"),
        ("none.csv", "nothing is at"),
        ("large.csv", "more than the 8388608 bytes"),
    ] {
        vault.write("job.toml", listing(name));
        refused(&vault, &["plan", "job.toml"], &["job.toml:1:16 ", what]);
    }
    vault.write("job.toml", listing("sheet.csv"));
    refused(
        &vault,
        &["plan", "job.toml"],
        &["sheet.csv:1:5 ", "is not UTF-8 text"],
    );
}
