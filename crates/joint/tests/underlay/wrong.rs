//! The joints of `tests/cases` that are wrong on purpose, in words that a crew lead understands, each with its twin just inside the limit.

use crate::cases::{accepted, named, read};
use jointwright_joint::judge::judge_unsolved;
use jointwright_joint::limit::{Outcome, Ruling};
use jointwright_joint::plane::Plane;

/// Rulings of a case with replaced texts in its parts.
#[track_caller]
fn rulings(slug: &str, changes: &[(&str, &str)]) -> Vec<Ruling> {
    let case = named(slug);
    let mut catalogues = case.catalogues();
    for (from, to) in changes {
        let parts = &mut catalogues.last_mut().expect("its own parts").1;
        assert!(parts.contains(from), "the parts have no `{from}`");
        *parts = parts.replacen(from, to, 1);
    }
    let order = accepted(read(case.job, &catalogues), slug);
    accepted(judge_unsolved(&order), slug).rulings
}

fn fails(rulings: &[Ruling]) -> Vec<(&str, String)> {
    let fails = rulings.iter().filter(|r| r.outcome == Outcome::Fail);
    fails
        .map(|r| (r.check, crate::cases::english(&r.why)))
        .collect()
}

/// Checks that one check fails, once for each leg, with these words in its ruling on leg A.
#[track_caller]
fn check(slug: &str, check: &str, says: &[&str]) {
    let rulings = rulings(slug, &[]);
    let fails = fails(&rulings);
    let of_check: Vec<_> = fails.iter().filter(|(c, _)| *c == check).collect();
    assert_eq!(of_check.len(), 2, "{fails:#?}");
    for words in says {
        assert!(of_check[0].1.contains(words), "`{words}`: {fails:#?}");
    }
}

/// The twin: with one text of the parts replaced nothing fails.
#[track_caller]
fn check_right(slug: &str, from: &str, to: &str) {
    let rulings = rulings(slug, &[(from, to)]);
    let fails = fails(&rulings);
    assert!(fails.is_empty(), "{fails:#?}");
}

#[test]
fn a_body_of_18_in_that_ends_over_the_jacket_fails_there() {
    check(
        "body-over-the-jacket",
        "body_layer",
        &[
            "leg A: body end at 8 7/8 in lies 1/2 in over the jacket",
            "the row cover-body gives it no range there",
            "metallic shield edge at 6 7/8 in",
            "jacket edge at 8 3/8 in",
        ],
    );
}

#[test]
fn a_body_that_ends_just_inside_the_shield_edge_does_not_fail() {
    // Half of it 9 in less 2 3/8 in: its end lies at 6 1/2 in, 1/8 in either way; the shield edge at 6 7/8 in, 1/8 in either way.
    let slug = "body-over-the-jacket";
    check_right(slug, "distance = \"9 in\"", "distance = \"6 5/8 in\"");
    // Exactly at the edge is still inside: 6 5/8 in + 1/8 in against 6 7/8 in - 1/8 in.
    check_right(slug, "distance = \"9 in\"", "distance = \"6 3/4 in\"");
}

#[test]
fn a_body_past_the_shield_edge_by_a_sixty_fourth_in_the_worst_case_alone_fails_and_names_the_windows()
 {
    let change = ("distance = \"9 in\"", "distance = \"6 49/64 in\"");
    let rulings = rulings("body-over-the-jacket", &[change]);
    let fail = rulings.iter().find(|r| r.outcome == Outcome::Fail);
    let fail = fail.expect("a fail");
    assert_eq!(fail.check, "body_layer");
    let why = crate::cases::english(&fail.why);
    assert!(
        why.contains(
            "can come to lie 1/32 in, at the worst of the windows, over the metallic shield"
        ),
        "{why}"
    );
    let hint = crate::cases::english(&fail.hint);
    for whose in ["CB-1", "CM-1"] {
        assert!(hint.contains(whose), "{hint}");
    }
}

#[test]
fn a_body_that_ends_past_its_own_seal_fails_there() {
    check(
        "body-past-its-own-seal",
        "body_layer",
        &["body end at 11 7/8 in lies 3 1/2 in over the jacket"],
    );
}

#[test]
fn a_layer_that_the_row_names_is_allowed() {
    let slug = "body-over-the-jacket";
    let to =
        "bondings = [\"solid\"]\nmay_lie_on = [\"metallic-shield\", \"jacket\"]\nbend_keep_off";
    check_right(slug, "bondings = [\"solid\"]\nbend_keep_off", to);
}

const NO_WIDTH: (&str, &str) = (
    "minus = \"1/32 in\", plus = \"1/32 in\"",
    "minus = \"1/16 in\", plus = \"1/16 in\"",
);

#[test]
fn a_window_without_width_fails_and_names_the_rows_that_leave_no_room() {
    check(
        "window-without-width",
        "cut_window",
        &[
            "body end: its window has no width",
            "cover-body, invented paper CB-1 revision 1, row not checked by a second person, step 6",
            "cover-sleeve, invented paper CC-1 revision 1",
        ],
    );
    check_right("window-without-width", NO_WIDTH.0, NO_WIDTH.1);
}

#[test]
fn a_window_that_holds_no_mark_of_a_tape_or_a_rule_fails_and_one_that_holds_one_does_not() {
    // Half of the body 155.5 mm less 3.175 and 0.79375 mm: 151.53125 mm, 0.00325 mm either way.
    let half = ("distance = \"6 1/8 in\"", "distance = \"155.5 mm\"");
    let narrow = |play: &str| -> Vec<String> {
        let play = format!("minus = \"{play}\", plus = \"{play}\"");
        let rulings = rulings("window-without-width", &[half, (NO_WIDTH.0, &play)]);
        let fails = fails(&rulings);
        fails.iter().map(|(_, why)| (*why).to_owned()).collect()
    };
    let none = narrow("0.797 mm");
    assert_eq!(none.len(), 2, "{none:?}");
    let says = "is too narrow for a mark in sixty-fourths of an inch or tenths of a millimetre";
    assert!(none[0].contains(says), "{none:?}");
    // 0.9 mm leaves 151.425 mm to 151.6375 mm, which holds two tenths of a millimetre.
    let some = narrow("0.9 mm");
    assert!(some.is_empty(), "{some:?}");
}

#[test]
fn each_window_says_how_wide_its_paper_is_and_who_narrowed_it() {
    let plan = named("straight-straps-owner-tightens-the-screen-window").plan();
    let narrowed = |plane: &str| {
        let cut = plan.legs[0].cuts.iter().find(|c| c.plane.name() == plane);
        cut.expect("the cut").narrowed.clone()
    };
    let shield = narrowed("metallic-shield-edge").expect("it is narrower");
    assert_eq!((shield.printed_mm, shield.left_mm), (12.7, 6.35));
    assert!(shield.paper.starts_with("demo-bond-straps"), "{shield:?}");
    // Half of the seal's link to the jacket edge is less than the part that the screen edge leaves.
    assert_eq!(shield.by.len(), 1, "{shield:?}");
    assert!(shield.by[0].starts_with("demo-seal-30"), "{shield:?}");
    let screen = narrowed("insulation-screen-edge").expect("the owner's is narrower");
    assert_eq!((screen.printed_mm, screen.left_mm), (6.35, 3.175));
    assert!(!screen.by[0].starts_with("demo"), "{screen:?}");
    let seal = narrowed("seal-end").expect("it is shared");
    assert_eq!(seal.shared_with, [Plane::JacketEdge]);
    assert_eq!((seal.printed_mm, seal.left_mm), (25.4, 12.7));
    // The sleeve's conductor may lie 1 mm short of its stop.
    let body = narrowed("body-end").expect("the sleeve's play is taken off");
    assert_eq!((body.printed_mm, body.left_mm), (6.0, 5.0));
    assert!(body.by[0].starts_with("demo-sleeve-bolt"), "{body:?}");
}

#[test]
fn a_window_as_wide_as_its_paper_prints_says_nothing() {
    let plan = named("straight-wires-growth-measured").plan();
    let cuts = plan.legs.iter().flat_map(|leg| &leg.cuts);
    let mut n_wide = 0;
    for cut in cuts {
        match &cut.narrowed {
            Some(narrowed) => assert!(narrowed.left_mm < narrowed.printed_mm, "{cut:?}"),
            None => n_wide += 1,
        }
    }
    // Screen edge and body end on each leg.
    assert_eq!(n_wide, 4);
}
