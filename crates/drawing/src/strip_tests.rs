//! Strips: marks read back from the picture, what is left out, what cannot be turned off.

use crate::strip::{BETWEEN, Block, Strip, TEXT, Words, arranged, strip, unbroken};
use jointwright_joint::catalogue::{DEMONSTRATION, DEMONSTRATION_TEXT};
use jointwright_joint::form::Source;
use jointwright_joint::plan::Plan;
use jointwright_joint::{job, judge, plan};

const THREE_WAY: &str = include_str!("../../../examples/larkspur-three-way/job.toml");
const NOT_PRESSED: &str = include_str!("../../../examples/dock-straight-not-pressed/job.toml");
const FAILING: &str = include_str!("../../../examples/tannery-change/job.toml");
/// Height that a letter page leaves, mm.
const LETTER_PAGE_MM: f64 = 238.0;

fn planned(text: &str) -> Plan {
    let catalogue = Source::new(DEMONSTRATION, DEMONSTRATION_TEXT.to_owned());
    let source = Source::new("job.toml", text.to_owned());
    let order = job::read_order(&source, &[catalogue]).expect("the job is read");
    plan::plan(&judge::judge(&order).expect("the rows agree"))
}

fn strip_of(plan: &Plan, leg: usize) -> Strip {
    strip(&plan.legs[leg], 1, plan, LETTER_PAGE_MM).expect("a strip")
}

/// The value of an attribute in a line of SVG.
fn attribute(line: &str, name: &str) -> Option<f64> {
    let (_, rest) = line.split_once(&format!(" {name}=\""))?;
    rest.split('"').next()?.parse().ok()
}

/// Lines of the picture with this attribute and value.
fn lines_with<'s>(svg: &'s str, attribute: &str) -> Vec<&'s str> {
    svg.lines().filter(|l| l.contains(attribute)).collect()
}

#[test]
fn every_mark_stands_at_its_place_on_both_edges() {
    let plan = planned(THREE_WAY);
    for (at, leg) in plan.legs.iter().enumerate() {
        let strip = strip_of(&plan, at);
        let mut n = 0;
        for cut in &leg.cuts {
            let lines = lines_with(&strip.svg, &format!("data-plane=\"{}\"", cut.plane));
            let place = cut.mark_at_mm.expect("every cut of this job has a place");
            if place > LETTER_PAGE_MM {
                assert!(lines.is_empty() && strip.left_out.iter().any(|s| s.contains(&cut.words)));
                continue;
            }
            if lines.is_empty() {
                assert!(
                    strip.left_out.iter().any(|s| s.contains(&cut.words)),
                    "{}",
                    cut.plane
                );
                continue;
            }
            assert_eq!(lines.len(), 2, "{}", cut.plane);
            for line in lines {
                for name in ["y1", "y2"] {
                    let y = attribute(line, name).expect("a place");
                    assert!(
                        (y - place).abs() < 1.0e-4,
                        "{} at {y}, not {place}",
                        cut.plane
                    );
                }
            }
            n += 1;
        }
        assert!(n >= 3, "leg {at}: {n} marks");
    }
}

#[test]
fn a_window_stands_from_its_least_to_its_greatest() {
    let plan = planned(THREE_WAY);
    let strip = strip_of(&plan, 0);
    let mut n = 0;
    for cut in &plan.legs[0].cuts {
        let lines = lines_with(&strip.svg, &format!("data-window=\"{}\"", cut.plane));
        let bounds = cut.printed_window.as_ref().and_then(|w| w.at_mm);
        let (Some([least, greatest]), [line]) = (bounds, lines.as_slice()) else {
            continue;
        };
        let (y, height) = (attribute(line, "y"), attribute(line, "height"));
        assert!((y.expect("a place") - least).abs() < 1.0e-4);
        assert!((height.expect("a height") - (greatest - least)).abs() < 1.0e-4);
        n += 1;
    }
    assert!(n >= 3, "{n} windows");
}

#[test]
fn the_bars_are_as_long_as_they_say() {
    let strip = strip_of(&planned(THREE_WAY), 0);
    let mut lengths: Vec<f64> = lines_with(&strip.svg, "data-what=\"bar\"")
        .into_iter()
        .map(|line| {
            let side = |a, b| {
                attribute(line, a).unwrap_or(f64::NAN) - attribute(line, b).unwrap_or(f64::NAN)
            };
            side("x2", "x1").hypot(side("y2", "y1"))
        })
        .collect();
    lengths.sort_by(f64::total_cmp);
    let expected = [30.0, 100.0, 101.6];
    assert_eq!(lengths.len(), expected.len());
    for (found, expected) in lengths.iter().zip(expected) {
        assert!(
            (found - expected).abs() < 1.0e-3,
            "{found} mm, not {expected}"
        );
    }
}

#[test]
fn ticks_of_both_scales_are_where_the_rules_have_them() {
    let strip = strip_of(&planned(THREE_WAY), 0);
    for (what, step) in [("inch", 25.4 / 16.0), ("mm", 1.0)] {
        let ticks = lines_with(&strip.svg, &format!("data-what=\"{what}\""));
        assert!(ticks.len() > 100, "{what}");
        for (n, line) in ticks.iter().enumerate() {
            let y = attribute(line, "y1").expect("a place");
            assert!(
                (y - (n + 1) as f64 * step).abs() < 1.0e-4,
                "{what} {n}: {y}"
            );
        }
    }
}

#[test]
fn a_cut_that_waits_for_growth_is_not_marked_and_says_so() {
    let plan = planned(NOT_PRESSED);
    let strip = strip_of(&plan, 0);
    assert!(lines_with(&strip.svg, "data-plane=\"insulation-end\"").is_empty());
    assert!(
        strip
            .left_out
            .iter()
            .any(|s| s.contains("waits for the growth"))
    );
}

#[test]
fn a_joint_that_fails_has_no_strip() {
    let plan = planned(FAILING);
    assert_eq!(plan.outcome, "fail");
    assert_eq!(strip(&plan.legs[0], 1, &plan, LETTER_PAGE_MM), None);
}

#[test]
fn what_stands_on_a_strip_is_said_to_be_invented() {
    let mut plan = planned(THREE_WAY);
    assert!(
        strip_of(&plan, 0)
            .svg
            .contains("INVENTED DEMONSTRATION DATA")
    );
    // The twin: the words come from the plan's mark alone.
    plan.invented = None;
    assert!(!strip_of(&plan, 0).svg.contains("INVENTED"));
}

#[test]
fn carbon_is_kept_off_the_insulation_in_either_vocabulary() {
    let us = strip_of(&planned(THREE_WAY), 0).svg.replace("</text>", " ");
    let iec = planned(&THREE_WAY.replace("words = \"us\"", "words = \"iec\""));
    let iec = strip_of(&iec, 0).svg;
    for words in ["toner", "carbon", "last wipe"] {
        assert!(us.contains(words) || us.contains(words.split(' ').next().unwrap_or_default()));
        assert!(iec.contains(words.split(' ').next().unwrap_or_default()));
    }
    assert!(us.contains("semicon") && iec.contains("oversheath") && !iec.contains("semicon"));
}

#[test]
fn a_text_of_the_job_cannot_break_out() {
    let mut plan = planned(THREE_WAY);
    plan.job.id = "</text><script>".to_owned();
    plan.legs[0].mark = "<g>".to_owned();
    let svg = strip_of(&plan, 0).svg;
    assert!(!svg.contains("<script>") && !svg.contains("<g>"));
}

#[test]
fn a_number_is_never_broken_over_two_lines() {
    let text = unbroken("may lie 7 3/4 to 7 13/16 in, then call");
    let lines = Words::lines(2.5, false, &text);
    for line in &lines {
        let first = line.text.trim_start().chars().next();
        assert!(
            !line.text.ends_with(" 7") && first != Some('1'),
            "{lines:?}"
        );
    }
    assert!(lines.len() > 1);
}

#[test]
fn the_shortest_page_that_holds_no_bars_holds_no_strip() {
    let plan = planned(THREE_WAY);
    assert_eq!(strip(&plan.legs[0], 1, &plan, 90.0), None);
    let shorter = strip(&plan.legs[0], 1, &plan, 215.0).expect("a strip");
    assert!(shorter.height_mm <= 215.0 + 1.0e-6);
    assert!(shorter.left_out.len() > strip_of(&plan, 0).left_out.len());
}

/// Blocks that lie on each other, in order of their tops.
fn collisions(blocks: &[Block]) -> usize {
    let mut sorted: Vec<&Block> = blocks.iter().collect();
    sorted.sort_by(|a, b| a.top.total_cmp(&b.top));
    sorted
        .windows(2)
        .filter(|p| p[1].top < p[0].bottom())
        .count()
}

fn block(mark: Option<f64>, n_lines: usize) -> Block {
    Block {
        mark,
        lines: vec![Words::bold(3.0, "text"); n_lines],
        top: mark.unwrap_or(0.0),
    }
}

#[test]
fn texts_do_not_collide_even_where_marks_are_three_millimetres_apart() {
    for first in [20.0, 60.0, 150.0, 220.0] {
        let marks: Vec<Block> = [block(None, 5)]
            .into_iter()
            .chain((0..6).map(|n| block(Some(first + 3.0 * f64::from(n)), 3)))
            .collect();
        let crowded = marks.clone();
        let found = arranged(marks, vec![block(None, 4), block(None, 6)], 238.0).expect("room");
        assert_eq!(collisions(&found), 0, "from {first}");
        assert!(
            found
                .iter()
                .all(|b| b.top >= -BETWEEN && b.bottom() <= 238.0)
        );
        // The twin: where they would stand by themselves they do collide.
        assert!(collisions(&crowded) > 0);
    }
    assert_eq!(arranged(vec![block(None, 90)], Vec::new(), 238.0), None);
}

#[test]
fn no_line_is_wider_than_its_column() {
    let lines = Words::lines(2.3, true, &"word ".repeat(60));
    let most = (TEXT[1] - TEXT[0]) / (0.6 * 2.3);
    assert!(
        lines
            .iter()
            .all(|l| (l.text.chars().count() as f64) <= most)
    );
}

#[test]
fn the_same_plan_gives_the_same_strip() {
    let plan = planned(THREE_WAY);
    assert_eq!(strip_of(&plan, 1), strip_of(&plan, 1));
}
