//! An open part is not as good as a named part: a seal left open is not a seal of zero length, a body left open is not the body of the other leg.
//!
//! A window is judged at its worse end.

use crate::cases::{accepted, named, plan_of, read};

/// First ruling of a check on a leg, or on the joint.
#[track_caller]
fn ruling(slug: &str, job: &str, check: &str, leg: Option<&str>) -> String {
    let case = named(slug);
    let order = accepted(read(job, &case.catalogues()), slug);
    let plan = plan_of(&order, slug);
    let mut ours = plan
        .rulings
        .iter()
        .filter(|r| r.check == check && r.leg.as_deref() == leg);
    ours.next()
        .expect("the check rules")
        .ruling
        .name()
        .to_owned()
}

/// Ruling of a check on leg A with its seal and with the seal left open.
#[track_caller]
fn rulings(slug: &str, check: &str, change: impl Fn(&str) -> String) -> [String; 2] {
    let case = named(slug);
    let job = change(case.job);
    let open = job.replacen("seal = \"demo-seal-30\"\n", "", 1);
    assert_ne!(open, job);
    [job, open].map(|job| ruling(slug, &job, check, Some("A")))
}

#[test]
fn room_too_short_for_body_and_seal_does_not_pass_while_the_seal_is_open() {
    // Body 470 mm and seal 240 mm while parked; the room is 27 15/16 in = 709.6125 mm.
    let [with, open] = rulings(
        "branch-corrugated-park-room-short",
        "park_room",
        str::to_owned,
    );
    assert_eq!(with, "fail");
    assert_eq!(open, "not-judged");
}

#[test]
fn a_leg_too_short_for_its_seal_does_not_pass_while_the_seal_is_open() {
    // The seal ends at 377.825 mm, the body and its straight stretch at 198 + 150 = 348 mm; 14 in = 355.6 mm lies between.
    let short = |job: &str| job.replacen("straight = \"28 in\"", "straight = \"14 in\"", 1);
    let [with, open] = rulings(
        "three-way-straps-brush-of-the-other-metal",
        "straight_length",
        short,
    );
    assert_eq!(with, "fail");
    assert_eq!(open, "not-judged");
}

#[test]
fn a_leg_without_a_body_is_not_said_to_share_the_one_body() {
    let slug = "straight-wires-growth-measured";
    let job = named(slug).job;
    let body = "body = \"demo-straight-15\"\n";
    let at = job.rfind(body).expect("leg B names its body");
    let with = |other: &str| format!("{}{other}{}", &job[..at], &job[at + body.len()..]);
    let common = |job: &str| ruling(slug, job, "common_parts", None);
    assert_eq!(common(job), "pass");
    assert_eq!(common(&with("body = \"demo-straight-25\"\n")), "fail");
    assert_eq!(common(&with("")), "not-judged");
}

#[test]
fn a_leg_is_straight_for_as_far_as_the_windows_let_the_seal_go() {
    // The seal ends at 377.825 mm as planned and at 384.175 mm at the far end of its window; lengths around the leg are good to 2 mm.
    let slug = "three-way-straps-brush-of-the-other-metal";
    let straight = |length: &str, error: &str| {
        let job = named(slug).job.replacen(
            "room_error = \"2 mm\"\nstraight = \"28 in\"",
            &format!("{error}straight = \"{length}\""),
            1,
        );
        ruling(slug, &job, "straight_length", Some("A"))
    };
    let good_to_2_mm = "room_error = \"2 mm\"\n";
    assert_eq!(straight("386.175 mm", good_to_2_mm), "pass");
    assert_eq!(straight("386.174 mm", good_to_2_mm), "not-judged");
    assert_eq!(straight("384.174 mm", good_to_2_mm), "fail");
    // Nobody states the error: a stretch that is too short still fails, and nothing passes.
    assert_eq!(straight("900 mm", ""), "not-judged");
    assert_eq!(straight("384.174 mm", ""), "fail");
}
