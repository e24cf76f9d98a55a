//! Compares each case with its snapshot, `plan.snap` beside the job.
//!
//! A changed number is a reviewed difference: it needs its reason under `changes/`.

use super::facts::facts;
use super::{CASES, named};

/// Banner across everything that is invented.
const INVENTED: &str = "INVENTED DEMONSTRATION DATA - NOT FOR ANY CABLE";

#[track_caller]
fn check(slug: &str) {
    let plan = named(slug).plan();
    insta::with_settings!({
        snapshot_path => format!("../../../../tests/cases/{slug}"),
        prepend_module_to_snapshot => false,
        omit_expression => true,
    }, {
        insta::assert_snapshot!("plan", facts(&plan));
    });
}

macro_rules! golden {
    ($($name:ident $slug:literal)*) => {
        const GOLDEN: &[&str] = &[$($slug),*];
        $(#[test] fn $name() { check($slug); })*
    };
}

golden! {
    branch_corrugated_park_room_short "branch-corrugated-park-room-short"
    branch_straps_screen_read_as_insulation "branch-straps-screen-read-as-insulation"
    branch_tape_slack_short "branch-tape-slack-short"
    branch_wires_kit_past_its_date "branch-wires-kit-past-its-date"
    four_way_corrugated_range_at_another_temperature "four-way-corrugated-range-at-another-temperature"
    four_way_straps_blank_without_plug "four-way-straps-blank-without-plug"
    four_way_tape_confirmed_by_the_owner "four-way-tape-confirmed-by-the-owner"
    four_way_wires_parts_left_open "four-way-wires-parts-left-open"
    straight_corrugated_isolated_earthing "straight-corrugated-isolated-earthing"
    straight_straps_owner_tightens_the_screen_window "straight-straps-owner-tightens-the-screen-window"
    straight_tape_growth_unknown "straight-tape-growth-unknown"
    straight_wires_growth_measured "straight-wires-growth-measured"
    three_way_corrugated_iec_words "three-way-corrugated-iec-words"
    three_way_straps_brush_of_the_other_metal "three-way-straps-brush-of-the-other-metal"
    three_way_tape_read_with_a_tape_only "three-way-tape-read-with-a-tape-only"
    three_way_wires_adapter_on_two_legs "three-way-wires-adapter-on-two-legs"
}

#[test]
fn every_kind_of_joint_meets_every_shield_and_every_case_has_a_snapshot() {
    let slugs: Vec<&str> = CASES.iter().map(|case| case.slug).collect();
    assert_eq!(slugs, GOLDEN);
    for kind in ["straight", "branch", "three-way", "four-way"] {
        for shield in ["straps", "wires", "tape", "corrugated"] {
            let start = format!("{kind}-{shield}-");
            let n = slugs.iter().filter(|s| s.starts_with(&start)).count();
            assert_eq!(n, 1, "{start}");
        }
    }
}

#[test]
fn every_case_is_the_joint_and_the_shield_that_its_name_says() {
    for case in CASES {
        let plan = case.plan();
        let kind = case.slug.split('-').next().unwrap_or_default();
        let n_legs = plan.legs.len();
        match kind {
            "straight" => assert_eq!((plan.job.kind.name(), n_legs), ("straight", 2)),
            "branch" => assert_eq!((plan.job.kind.name(), n_legs), ("branch", 3)),
            _ => assert_eq!((plan.job.kind.name(), n_legs), ("separable", 3)),
        }
        let shields = [
            ("-straps-", "flat straps shield"),
            ("-wires-", "concentric wires shield"),
            ("-tape-", "lapped tape shield"),
            ("-corrugated-", "corrugated tape shield"),
        ];
        let shield = shields.iter().find(|(mark, _)| case.slug.contains(mark));
        let (_, shield) = shield.unwrap_or_else(|| panic!("{} names no shield", case.slug));
        for leg in &plan.legs {
            assert!(leg.cable.ends_with(shield), "{}: {}", case.slug, leg.cable);
        }
    }
}

#[test]
fn every_case_says_across_its_face_that_it_is_invented() {
    for case in CASES {
        assert_eq!(case.plan().invented.as_deref(), Some(INVENTED));
        for text in [Some(case.job), case.parts].into_iter().flatten() {
            assert!(
                text.lines().take(2).any(|l| l.contains("INVENTED TEST")),
                "{}",
                case.slug
            );
        }
    }
}
