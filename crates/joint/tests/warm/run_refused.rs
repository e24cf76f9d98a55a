//! Run refused: an input of a run of cable that nobody computes does not stand beside a pass.

use crate::cases::{lines, read};
use jointwright_joint::catalogue::{DEMONSTRATION, DEMONSTRATION_TEXT};

const RUN: &str = include_str!("../../../../examples/millbrook-cable-run/job.toml");

/// Complaints with these words exchanged; empty if there are none.
#[track_caller]
fn complaints(edits: &[(&str, &str)]) -> String {
    let mut job = RUN.to_owned();
    for (from, to) in edits {
        assert!(job.contains(from), "`{from}` is not in the job");
        job = job.replacen(from, to, 1);
    }
    let catalogues = [(DEMONSTRATION.to_owned(), DEMONSTRATION_TEXT.to_owned())];
    let refused = read(&job, &catalogues).err().unwrap_or_default();
    lines(&refused)
}

#[test]
fn an_emergency_and_a_short_circuit_of_a_run_are_refused() {
    assert_eq!(complaints(&[]), "");
    for line in [
        "emergency = \"2 kA\"",
        "fault = \"50 kA\"",
        "emergency_time = \"100 h\"",
    ] {
        let with = format!("[duty]\n{line}");
        let said = complaints(&[("[duty]", &with)]);
        assert!(said.contains("no emergency and no short circuit"), "{said}");
    }
}

#[test]
fn a_reading_that_nothing_reads_is_refused() {
    let with = "count = [{ leg = \"A\", phase = 1, metal = \"aluminium\" }]\n\n[job]";
    let said = complaints(&[("[job]", with)]);
    assert!(
        said.contains("nothing here reads the job's `count`"),
        "{said}"
    );
}

#[test]
fn cables_lie_at_one_distance() {
    let said = complaints(&[("depth = \"", "spacing = \"3 m\", depth = \"")]);
    assert!(said.contains("those of leg A lie"), "{said}");
    assert_eq!(
        complaints(&[("depth = \"", "spacing = \"35 mm\", depth = \"")]),
        ""
    );
}

#[test]
fn a_limit_at_which_no_resistance_is_known_is_refused() {
    let of = |degc: &str| {
        let with = format!("conductor_greatest = \"{degc} degC\"");
        complaints(&[("conductor_greatest = \"90 degC\"", &with)])
    };
    assert!(
        of("1000").contains("known up to 250 degC"),
        "{}",
        of("1000")
    );
    assert_eq!(of("250"), "");
}
