//! Faults found by a reading of the whole code, each with the job that showed it and its sound twin.

use crate::cases::{accepted, named, plan_of, read};
use jointwright_joint::catalogue::PartKind;
use jointwright_joint::plan::Plan;

const DOCK: &str = "dock-straight-pressed";
const NOT_PRESSED: &str = "dock-straight-not-pressed";
const TANNERY: &str = "tannery-change";
const BRANCH: &str = "branch-tape-slack-short";

/// Plan of an example with edits of its job and invented catalogue; each passage stands in its text and is exchanged everywhere.
#[track_caller]
fn plan(slug: &str, job: &[(&str, &str)], parts: &[(&str, &str)], more: &str) -> Plan {
    let case = named(slug);
    let mut job_text = format!("{}\n{more}", case.job);
    let mut catalogues = case.catalogues();
    for (text, edits) in [(&mut job_text, job), (&mut catalogues[0].1, parts)] {
        for (from, to) in edits {
            assert!(text.contains(from), "{from} stands in the text");
            *text = text.replace(from, to);
        }
    }
    plan_of(&accepted(read(&job_text, &catalogues), slug), slug)
}

/// Rulings of a check, in order.
fn rulings(plan: &Plan, check: &str) -> Vec<String> {
    let of_check = plan.rulings.iter().filter(|r| r.check == check);
    of_check.map(|r| r.ruling.name().to_owned()).collect()
}

fn fails(plan: &Plan, check: &str) -> usize {
    rulings(plan, check).iter().filter(|r| *r == "fail").count()
}

#[test]
fn a_branch_body_with_an_open_mouth_fails() {
    let with_legs = |n: &str| plan(BRANCH, &[], &[("legs = 3", n)], "");
    assert_eq!(fails(&with_legs("legs = 3"), "body_class"), 0);
    assert_eq!(fails(&with_legs("legs = 6"), "body_class"), 3);
}

#[test]
fn windows_that_leave_no_place_print_no_ladder_and_fail() {
    let gap = |gap: &str| {
        let sleeve = "means = \"compression\"\nends = 2\nmade_of = \"copper\"\nresistance_ratio = 0.7\nsizes = [\"350 kcmil\"]";
        plan(
            NOT_PRESSED,
            &[],
            &[(sleeve, &format!("gap_greatest = \"{gap}\"\n{sleeve}"))],
            "",
        )
    };
    let insulation = |plan: &Plan| plan.legs[0].cuts[0].clone();
    // 1/8 in is permitted; a gap of 5 mm is more.
    let (room, none) = (gap("1 mm"), gap("5 mm"));
    assert!(!insulation(&room).growth_ladder.is_empty());
    assert_eq!(fails(&room, "cut_window"), 0);
    assert!(insulation(&none).growth_ladder.is_empty());
    assert_eq!(insulation(&none).nominal_mm, None);
    assert_eq!(fails(&none, "cut_window"), 2);
}

#[test]
fn a_shared_body_is_proposed_only_where_it_fits_every_leg() {
    let open = plan(TANNERY, &[("body = \"demo-straight-25\"\n", "")], &[], "");
    let of_body = open.proposals.iter().filter(|p| p.part == PartKind::Body);
    let fitting: Vec<Vec<&str>> = of_body
        .map(|p| p.fits.iter().map(|f| f.id.as_str()).collect())
        .collect();
    // The 25 kV body fits leg A alone and is 2.3 mm too large for leg B, so it is not offered; the one body is asked for once.
    assert_eq!(fitting, [["demo-straight-15"]]);
}

#[test]
fn a_lot_without_a_date_does_not_silence_the_age() {
    let lasts = "shelf = { months = 36, from = \"expanded\", store_least = \"-20 degC\", store_greatest = \"40 degC\" }\n";
    let surfaces = "jacket_surfaces = [\"smooth\", \"embossed\"]\n";
    // The seal's shelf life alone: the bodies keep theirs.
    let silent = plan(DOCK, &[], &[(&format!("{surfaces}{lasts}"), surfaces)], "");
    let asked = rulings(&silent, "kit_age");
    assert_eq!(
        // Its age and its store, on either end.
        asked.iter().filter(|r| *r == "not-judged").count(),
        4,
        "{asked:?}"
    );
    let stated = rulings(&plan(DOCK, &[], &[], ""), "kit_age");
    assert!(stated.iter().all(|r| r == "pass"), "{stated:?}");
}

#[test]
fn one_body_is_parked_on_one_leg() {
    let parking = |second: &str| plan(DOCK, &[("parks = false", second)], &[], "");
    assert_eq!(fails(&parking("parks = false"), "park_room"), 0);
    assert_eq!(fails(&parking("parks = true"), "park_room"), 1);
}

/// `goes_on` was read but not used: a seal that is wrapped round the finished joint is slid on nowhere.
#[test]
fn a_seal_that_is_wrapped_needs_no_room_to_park() {
    let silent = ("parked_length = \"240 mm\"\n", "");
    let wrapped = (
        "goes_on = \"holdout\"\ntakes_lead",
        "goes_on = \"wrapped\"\ntakes_lead",
    );
    let room = ("\npark_room = ", "\n# park_room = ");
    let of = |job: &[(&str, &str)], rows: &[(&str, &str)]| {
        rulings(&plan(DOCK, job, rows, ""), "park_room")
    };
    assert_eq!(of(&[], &[silent]), ["not-judged", "not-judged"]);
    assert_eq!(of(&[], &[silent, wrapped]), ["pass", "pass"]);
    // Leg A parks the body, and its room is asked for; leg B parks nothing.
    let mut bare = of(&[room], &[silent, wrapped]);
    bare.sort();
    assert_eq!(bare, ["not-judged", "pass"]);
}

#[test]
fn a_window_of_the_owner_lies_about_the_place_that_is_shown() {
    let owner = "[[owner_window]]\nplane = \"insulation-end\"\nminus = \"0.2 mm\"\nplus = \"0.2 mm\"\nby = \"Ines Calloway\"\ndate = 2026-03-09\n";
    let cut = |more: &str| plan(DOCK, &[], &[], more).legs[0].cuts[0].clone();
    let (alone, with) = (cut(""), cut(owner));
    let (shown, least) = (
        alone.nominal_mm.expect("a place"),
        alone.min_mm.expect("a window"),
    );
    // Growth with its error leaves the place at the low end of its window, so only the upper side is left.
    assert_eq!(shown, least);
    assert_eq!((with.nominal_mm, with.min_mm), (Some(shown), Some(least)));
    assert!((with.max_mm.expect("a window") - (shown + 0.2)).abs() < 1e-9);
}

#[test]
fn the_worst_that_the_instructions_allow_has_shrunk_back_too() {
    let row = "{ from = \"connector-mouth\", to = \"insulation-end\", distance = \"1/8 in\", minus = \"0 in\", plus = \"1/8 in\", place = \"step 5\" }";
    let shrinks = format!(
        "{row},\n  {{ from = \"insulation-end\", to = \"insulation-end-shrunk-back\", distance = \"9 mm\", minus = \"1 mm\", plus = \"1 mm\" }}"
    );
    // The 4 in sleeve is inside the 115 mm that the paper admits, so it cannot cover less than the worst that is allowed.
    let cover = |parts: &[(&str, &str)]| rulings(&plan(DOCK, &[], parts, ""), "electrode_cover");
    assert_eq!(cover(&[]), ["pass"; 4]);
    assert_eq!(cover(&[(row, &shrinks)]), ["pass"; 4]);
}

#[test]
fn an_iec_cable_is_not_held_to_its_nominal_voltage() {
    let edits = [
        ("class = \"15 kV\"\nlevel = 133", "rated = \"12/20 kV\""),
        ("nominal = \"13.2 kV\"", "nominal = \"22 kV\""),
        ("highest = \"14.5 kV\"", "highest = \"24 kV\""),
    ];
    let level = rulings(&plan(DOCK, &edits, &[], ""), "cable_level");
    assert_eq!(level, ["not-judged", "not-judged"]);
}
