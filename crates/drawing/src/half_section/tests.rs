//! Half-sections: their numbers are the plan's, nothing lies on anything, and the mark stays.

use super::page::{Page, Rect};
use super::{Style, Theme, WIDTH, drawn, half_section};
use jointwright_joint::catalogue::{DEMONSTRATION, DEMONSTRATION_TEXT};
use jointwright_joint::form::Source;
use jointwright_joint::plan::Plan;
use jointwright_joint::{job, judge, plan};
use proptest::prelude::*;

const PRINT: Style = Style {
    theme: Theme::Print,
};
const JOBS: [&str; 4] = [
    include_str!("../../../../examples/larkspur-three-way/job.toml"),
    include_str!("../../../../examples/dock-straight-not-pressed/job.toml"),
    include_str!("../../../../examples/quarry-four-way/job.toml"),
    include_str!("../../../../examples/tannery-change/job.toml"),
];

fn planned(text: &str) -> Plan {
    let catalogue = Source::new(DEMONSTRATION, DEMONSTRATION_TEXT.to_owned());
    let source = Source::new("job.toml", text.to_owned());
    let order = job::read_order(&source, &[catalogue]).expect("the job is read");
    plan::plan(&judge::judge(&order).expect("the rows agree"))
}

fn meet(a: &Rect, b: &Rect) -> bool {
    a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3]
}

/// What lies on what: texts on texts, lines on texts, texts off the page.
fn collisions(page: &Page, height: f64) -> Vec<String> {
    let mut found = Vec::new();
    for (at, (rect, text)) in page.texts.iter().enumerate() {
        for (other, other_text) in &page.texts[at + 1..] {
            if meet(rect, other) {
                found.push(format!("{text:?} on {other_text:?}"));
            }
        }
        for line in &page.lines {
            if meet(rect, line) {
                found.push(format!("a line at {line:?} through {text:?}"));
            }
        }
        if rect[0] < 0.0 || rect[1] < 0.0 || rect[2] > WIDTH || rect[3] > height {
            found.push(format!("{text:?} leaves the page: {rect:?}"));
        }
    }
    for line in &page.lines {
        if line[0] < 0.0 || line[2] > WIDTH || line[3] > height {
            found.push(format!("a line leaves the page: {line:?}"));
        }
    }
    found
}

#[test]
fn nothing_lies_on_anything_in_the_examples() {
    for text in JOBS {
        let plan = planned(text);
        for leg in &plan.legs {
            let (page, height) = drawn(leg, &plan, PRINT);
            assert_eq!(collisions(&page, height), [""; 0], "{}", plan.job.id);
            assert!(page.texts.len() > 5);
        }
    }
}

#[test]
fn a_text_moved_onto_another_is_found() {
    let plan = planned(JOBS[0]);
    let (mut page, height) = drawn(&plan.legs[0], &plan, PRINT);
    let rect = page.texts[4].0;
    page.text([rect[0], rect[3]], 3.0, true, "moved");
    page.dimension_line([rect[0], rect[1]], [rect[2], rect[3]], 0.1, "");
    assert!(collisions(&page, height).len() >= 2);
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 300, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn nothing_lies_on_anything_in_a_random_leg(
        places in prop::collection::vec(5.0_f64..900.0, 8),
        words in prop::collection::vec("[a-zA-Z ]{1,90}", 8),
        diameters in prop::collection::vec(2.0_f64..80.0, 6),
        job in 0_usize..3,
    ) {
        let mut plan = planned(JOBS[job]);
        for (cut, (place, words)) in plan.legs[0].cuts.iter_mut().zip(places.iter().zip(&words)) {
            if cut.mark_at_mm.is_some() {
                cut.mark_at_mm = Some(*place);
                cut.words.clone_from(words);
                if let Some(window) = &mut cut.printed_window {
                    window.at_mm = Some([place - 3.0, place + 3.0]);
                }
            }
        }
        let mut sorted = diameters;
        sorted.sort_by(f64::total_cmp);
        for (layer, diameter) in plan.legs[0].layers.iter_mut().zip(sorted) {
            layer.diameter_mm = diameter;
        }
        plan.legs[0].cable = words.join(" ");
        let (page, height) = drawn(&plan.legs[0], &plan, PRINT);
        prop_assert_eq!(collisions(&page, height), Vec::<String>::new());
    }
}

/// Numbers with a unit that a picture prints.
fn lengths(svg: &str) -> Vec<String> {
    let mut found = Vec::new();
    for part in svg.split("<text").skip(1) {
        let said = part.split_once('>').map_or("", |(_, rest)| rest);
        let said = said.split("</text>").next().unwrap_or_default();
        let words: Vec<&str> = said.split_whitespace().collect();
        for pair in words.windows(2) {
            let is_number = pair[0]
                .chars()
                .all(|c| c.is_ascii_digit() || c == '.' || c == '/');
            if is_number && matches!(pair[1].trim_end_matches(','), "mm" | "in") {
                found.push(pair[0].to_owned());
            }
        }
    }
    found
}

#[test]
fn every_length_is_a_text_of_the_plan() {
    for text in &JOBS[..3] {
        let plan = planned(text);
        for leg in &plan.legs {
            let found = lengths(&half_section(leg, &plan, &PRINT));
            assert!(found.len() >= 8, "{found:?}");
            let known: Vec<String> = leg
                .cuts
                .iter()
                .flat_map(|cut| {
                    let window = cut.printed_window.as_ref().map(|w| w.text());
                    [cut.inch.clone(), cut.mark_mm.clone(), window]
                })
                .flatten()
                .collect();
            let known = known.join(" ");
            let known: Vec<&str> = known.split([' ', ',']).collect();
            for length in found {
                assert!(
                    known.contains(&length.as_str()),
                    "{length} is no text of the plan"
                );
            }
        }
    }
}

#[test]
fn a_failing_joint_shows_no_number() {
    let plan = planned(JOBS[3]);
    assert_eq!(plan.outcome, "fail");
    for leg in &plan.legs {
        let svg = half_section(leg, &plan, &PRINT);
        assert_eq!(lengths(&svg), [""; 0]);
        assert!(svg.contains("a check fails: no number is printed"));
    }
}

#[test]
fn the_mark_stands_in_every_theme_and_only_the_plan_sets_it() {
    let mut plan = planned(JOBS[0]);
    for theme in [Theme::Light, Theme::Dark, Theme::Print] {
        let svg = half_section(&plan.legs[0], &plan, &Style { theme });
        assert_eq!(svg.matches("INVENTED DEMONSTRATION DATA").count(), 2);
    }
    plan.invented = None;
    assert!(!half_section(&plan.legs[0], &plan, &PRINT).contains("INVENTED"));
}

#[test]
fn print_is_black_on_white_alone() {
    let plan = planned(JOBS[0]);
    let svg = half_section(&plan.legs[0], &plan, &PRINT);
    for colour in svg
        .split('#')
        .skip(1)
        .map(|rest| rest.get(..6).unwrap_or_default())
    {
        let is_pattern = [
            "metal\"", "tape)\"", "window", "grey)\"", "metal)", "tape)", "grey)",
        ]
        .iter()
        .any(|name| colour.starts_with(&name[..4]));
        assert!(
            is_pattern || ["000000", "ffffff"].contains(&colour),
            "{colour}"
        );
    }
    let dark = half_section(&plan.legs[0], &plan, &Style { theme: Theme::Dark });
    assert!(dark.contains("#eeeeee") && !dark.contains("#000000"));
}

#[test]
fn a_text_of_the_job_cannot_break_out() {
    let mut plan = planned(JOBS[0]);
    plan.legs[0].cable = "</text><script>".to_owned();
    plan.legs[0].mark = "<g>".to_owned();
    plan.job.id = "\u{202e}&".to_owned();
    let svg = half_section(&plan.legs[0], &plan, &PRINT);
    assert!(!svg.contains("<script>") && !svg.contains("<g>") && !svg.contains('\u{202e}'));
}

#[test]
fn a_leg_without_any_place_is_still_a_picture() {
    let mut plan = planned(JOBS[0]);
    plan.legs[0].planes.clear();
    plan.legs[0].layers.clear();
    plan.legs[0].connector = None;
    for cut in &mut plan.legs[0].cuts {
        cut.mark_at_mm = None;
        cut.nominal_mm = None;
        cut.mark_mm = None;
    }
    let svg = half_section(&plan.legs[0], &plan, &PRINT);
    assert!(svg.contains("not set") && !svg.contains("NaN") && !svg.contains("inf"));
}

#[test]
fn the_same_plan_gives_the_same_picture() {
    let plan = planned(JOBS[2]);
    let picture = || half_section(&plan.legs[1], &plan, &PRINT);
    assert_eq!(picture(), picture());
}
