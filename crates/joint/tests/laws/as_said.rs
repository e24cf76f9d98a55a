//! Tests that text is read as its writer means it, and that printed numbers are usable by a crew.

use crate::cases::{EXAMPLES, everything, lines, named, plan_of, read};
use jointwright_joint::cable::Words;
use jointwright_joint::limit::Outcome;
use jointwright_joint::plan::Plan;
use jointwright_wording::Tongue;

const US: Tongue = Tongue::english(Words::Us);
const JOB: &str = "tannery-change";

fn read_with(from: &str, to: &str) -> Result<String, String> {
    let case = named(JOB);
    assert!(case.job.contains(from), "the job has no `{from}`");
    let order = read(&case.job.replace(from, to), &case.catalogues());
    let order = order.map_err(|complaints| lines(&complaints))?;
    Ok(unmarked(&plan_of(&order, JOB)))
}

/// A plan without its mark, which depends on the input bytes.
fn unmarked(plan: &Plan) -> String {
    let mut plan = serde_json::to_value(plan).expect("a plan is JSON");
    plan["plan_mark"] = serde_json::Value::Null;
    plan.to_string()
}

/// Checks that another spelling gives the same plan.
#[track_caller]
fn check_same(from: &str, to: &str) {
    let as_it_stands = unmarked(&named(JOB).plan());
    assert_eq!(read_with(from, to).as_ref(), Ok(&as_it_stands), "{to}");
}

/// Checks that a spelling is refused, with these words in the complaint.
#[track_caller]
fn check_refused(from: &str, to: &str, words: &[&str]) {
    let said = read_with(from, to).expect_err("it is refused");
    for word in words {
        assert!(said.contains(word), "`{word}` is not in {said}");
    }
}

#[test]
fn words_that_people_use_are_read_as_what_they_mean() {
    check_same("metal = \"aluminium\"", "metal = \"aluminum\"");
    check_same("metal = \"copper\"", "metal = \"Copper\"");
    check_same("insulation = \"tr-xlpe\"", "insulation = \"TR-XLPE\"");
    check_same("kind = \"vault\"", "kind = \"manhole\"");
    check_same("instrument = \"calliper\"", "instrument = \"Caliper\"");
    check_same(
        "instrument = \"diameter-tape\"",
        "instrument = \"diameter tape\"",
    );
    // The twin: another metal is another cable.
    let other = read_with("metal = \"aluminium\"", "metal = \"copper\"");
    assert_ne!(other, Ok(unmarked(&named(JOB).plan())));
}

#[test]
fn a_word_that_could_mean_two_things_is_refused_with_both() {
    check_refused(
        "kind = \"concentric-wires\"",
        "kind = \"tape\"",
        &["\"lapped-tape\" or \"corrugated-tape\""],
    );
    check_refused(
        "earthing = \"solid\"",
        "grounding = \"solid\"",
        &["Did you mean `earthing`?"],
    );
    check_refused(
        "stranding = \"compressed\"",
        "stranding = \"grounded\"",
        &["grounded"],
    );
}

#[test]
fn the_gauge_of_a_wire_is_answered_with_its_diameter() {
    // 14 AWG is 0.0641 in by the definition of the gauge.
    check_refused(
        "diameter = \"64.1 mil\"",
        "diameter = \"14 AWG\"",
        &["A solid wire of 14 AWG is 64.1 mil thick"],
    );
}

#[test]
fn decimal_inches_are_read_where_nothing_is_cut_or_marked() {
    check_same("bend_radius = \"24 in\"", "bend_radius = \"24.0 in\"");
    check_same("room_error = \"1/8 in\"", "room_error = \"0.125 in\"");
    check_same(
        "length_after = [\"4 1/4 in\", \"4 17/64 in\"]",
        "length_after = [\"4.25 in\", \"4.265625 in\"]",
    );
    let window = "distance = \"3 mm\", minus = \"3 mm\"";
    check_refused(
        window,
        "distance = \"0.118 in\", minus = \"3 mm\"",
        &["owner_link"],
    );
}

#[test]
fn a_complaint_names_the_leg_by_its_own_letter() {
    let case = named(JOB);
    let at_b = case.job.find("id = \"B\"").expect("leg B");
    let (first, second) = case.job.split_at(at_b);
    let job = format!(
        "{first}{}",
        second.replacen("class = \"15 kV\"", "class = \"16 kV\"", 1)
    );
    let said = read(&job, &case.catalogues()).expect_err("it is refused");
    let said = lines(&said);
    assert!(said.contains("leg B.cable.class`"), "{said}");
}

/// Cuts and marks nearer to an end of their window than a quarter of it, though a sixty-fourth lies in its middle.
fn off_the_middle(plan: &Plan) -> Vec<String> {
    let cuts = plan.legs.iter().flat_map(|leg| &leg.cuts);
    let off = cuts.filter_map(|cut| {
        let (least, most, at) = (cut.min_mm?, cut.max_mm?, cut.mark_at_mm?);
        let width = most - least;
        let room = (at - least).min(most - at);
        let is_off = room < 0.0 || (width >= 25.4 / 32.0 && 4.0 * room < width - 1e-9);
        is_off.then(|| format!("{} at {at} in {least} to {most}", cut.plane.name()))
    });
    off.collect()
}

#[test]
fn every_mark_stands_in_the_middle_of_its_window() {
    let mut n_marks = 0;
    for case in everything() {
        let mut plan = case.plan();
        assert_eq!(off_the_middle(&plan), [""; 0], "{}", case.slug);
        for cut in plan.legs.iter_mut().flat_map(|leg| &mut leg.cuts) {
            if let (Some(least), Some(most), Some(_)) = (cut.min_mm, cut.max_mm, cut.mark_at_mm)
                && most - least >= 25.4 / 32.0
            {
                n_marks += 1;
                cut.mark_at_mm = Some(least + 0.2 * (most - least));
            }
        }
        // The twin: a fifth of the window from its end is not its middle.
        let n_off = off_the_middle(&plan).len();
        let n_wide = plan.legs.iter().flat_map(|leg| &leg.cuts).filter(|cut| {
            cut.mark_at_mm.is_some()
                && cut
                    .min_mm
                    .zip(cut.max_mm)
                    .is_some_and(|(a, b)| b - a >= 25.4 / 32.0)
        });
        assert_eq!(n_off, n_wide.count(), "{}", case.slug);
    }
    assert!(n_marks > 100, "{n_marks}");
}

#[test]
fn diameters_stand_in_inches_on_a_page_with_inches_and_no_window_is_one_tick() {
    let mut n_ranges = 0;
    for case in everything() {
        let plan = case.plan();
        let is_us = plan.job.words == Words::Us;
        let steps = plan.make_up.steps.iter();
        for wanted in steps.flat_map(|step| &step.hold) {
            let Some(window) = &wanted.window else {
                continue;
            };
            if wanted.what.contains("diameter over") {
                n_ranges += usize::from(is_us);
                assert_eq!(window.contains(" in ("), is_us, "{}: {window}", case.slug);
            }
            assert!(!window.contains(" only"), "{}: {window}", case.slug);
        }
    }
    assert!(n_ranges > 50, "{n_ranges}");
}

#[test]
fn what_decides_a_ruling_is_printed_with_no_more_figures_than_it_has() {
    let (mut n_figures, mut longest) = (0, 0);
    for case in everything() {
        for ruling in &case.plan().rulings {
            let Some(figures) = US.figures(ruling) else {
                continue;
            };
            n_figures += 1;
            assert!(figures.contains(" left"), "{figures}");
            let margin = ruling.margin.unwrap_or(0.0);
            let is_broken = ruling.ruling == Outcome::Fail || margin < 0.0;
            // As many digits as a margin needs, and no more.
            let digits = figures
                .split(|c: char| !c.is_ascii_digit())
                .map(str::len)
                .max();
            if margin > 0.05 && !is_broken {
                longest = longest.max(digits.unwrap_or(0));
            }
        }
    }
    assert!(n_figures > 500, "{n_figures}");
    assert!(longest <= 4, "{longest}");
}

#[test]
fn what_comes_nearest_to_its_limit_is_named_with_its_figures() {
    for case in EXAMPLES {
        let plan = case.plan();
        let Some(governs) = &plan.governs else {
            continue;
        };
        let said = US.figures(governs).expect("figures");
        assert!(said.contains(" mm left"), "{said}");
    }
    assert_eq!(US.outcome(Outcome::NotJudged), "not judged");
}
