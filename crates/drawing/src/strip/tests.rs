//! Tests of strips: marks read back from the picture, marks left out, and texts that cannot be switched off.

use super::block::{BETWEEN, Block, Line, arranged, unbroken};
use super::layout::{FIGURES, TEXT};
use super::{Strip, strips};
use jointwright_joint::catalogue::{DEMONSTRATION, DEMONSTRATION_TEXT};
use jointwright_joint::form::Source;
use jointwright_joint::plan::Plan;
use jointwright_joint::{job, judge};

const THREE_WAY: &str = include_str!("../../../../examples/larkspur-three-way/job.toml");
const NOT_PRESSED: &str = include_str!("../../../../examples/dock-straight-not-pressed/job.toml");
const FAILING: &str = include_str!("../../../../examples/tannery-change/job.toml");
/// Height that a letter page leaves, mm.
const LETTER_PAGE_MM: f64 = 238.0;

fn planned(text: &str) -> Plan {
    let catalogue = Source::new(DEMONSTRATION, DEMONSTRATION_TEXT.to_owned());
    let source = Source::new("job.toml", text.to_owned());
    let order = job::read_order(&source, &[catalogue]).expect("the job is read");
    jointwright_wording::plan(&judge::judge(&order).expect("the rows agree"))
}

/// The first piece of a leg's strip.
fn strip_of(plan: &Plan, leg: usize) -> Strip {
    let mut pieces = strips(&plan.legs[leg], 1, plan, LETTER_PAGE_MM);
    assert!(!pieces.is_empty(), "a strip");
    pieces.remove(0)
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

/// Cuts of a leg with a place that stand on no piece at it, and marks that stand where no cut is; empty if all is as it should be.
fn misplaced(plan: &Plan, leg: usize, pieces: &[Strip]) -> Vec<String> {
    let mut wrong = Vec::new();
    for cut in &plan.legs[leg].cuts {
        let Some(place) = cut.mark_at_mm else {
            continue;
        };
        let mut n = 0;
        for piece in pieces {
            let lines = lines_with(&piece.svg, &format!("data-plane=\"{}\"", cut.plane.name()));
            let [from, to] = piece.covers_mm;
            for line in &lines {
                let ys = ["y1", "y2"].map(|name| attribute(line, name).unwrap_or(f64::NAN));
                let is_there = ys.iter().all(|y| (y - place).abs() < 1.0e-4);
                if !is_there || !(from..=to).contains(&place) {
                    wrong.push(format!("{} at {ys:?}, not {place}", cut.plane.name()));
                }
            }
            n += lines.len() / 2;
        }
        if n == 0 {
            wrong.push(format!("{} at {place} mm is on no piece", cut.plane.name()));
        }
    }
    wrong
}

const DOCK: &str = include_str!("../../../../examples/dock-straight-pressed/job.toml");
const QUARRY: &str = include_str!("../../../../examples/quarry-four-way/job.toml");

/// The examples that have strips, in inches and in millimetres.
fn all_plans() -> Vec<Plan> {
    let jobs = [THREE_WAY, NOT_PRESSED, DOCK, QUARRY];
    let iec = |text: &&str| text.replace("words = \"us\"", "words = \"iec\"");
    let both = jobs.iter().flat_map(|text| [(*text).to_owned(), iec(text)]);
    both.map(|text| planned(&text)).collect()
}

#[test]
fn issue_16_every_cut_and_mark_of_every_leg_lies_on_some_piece_at_its_place() {
    let mut n_far = 0;
    for plan in all_plans() {
        for (at, leg) in plan.legs.iter().enumerate() {
            let pieces = strips(leg, 1, &plan, LETTER_PAGE_MM);
            let none: Vec<String> = Vec::new();
            assert_eq!(misplaced(&plan, at, &pieces), none, "{} {at}", plan.job.id);
            let places = leg.cuts.iter().filter_map(|cut| cut.mark_at_mm);
            n_far += places.filter(|place| *place > LETTER_PAGE_MM).count();
            // The marks left out wait for a number; none is too far away.
            let left_out = &pieces[0].left_out;
            let waiting = leg.cuts.iter().filter(|cut| cut.mark_at_mm.is_none());
            assert_eq!(left_out.len(), waiting.count(), "{left_out:?}");
        }
    }
    assert!(n_far > 20, "{n_far} cuts lie beyond one page");
}

#[test]
fn a_cut_that_stands_on_no_piece_or_a_fifth_of_a_millimetre_off_is_found() {
    let mut plan = planned(THREE_WAY);
    let pieces = strips(&plan.legs[0], 1, &plan, LETTER_PAGE_MM);
    assert!(pieces.len() > 1);
    assert!(!misplaced(&plan, 0, &pieces[..1]).is_empty());
    let cut = plan.legs[0]
        .cuts
        .iter_mut()
        .find_map(|cut| cut.mark_at_mm.as_mut());
    *cut.expect("a place") += 0.2;
    assert!(!misplaced(&plan, 0, &pieces).is_empty());
}

/// Joins of a piece: name and place.
fn joins(piece: &Strip) -> Vec<(String, f64)> {
    let lines = lines_with(&piece.svg, "data-join=\"");
    let mut joins: Vec<(String, f64)> = lines
        .iter()
        .map(|line| {
            let (_, rest) = line.split_once("data-join=\"").expect("a join");
            let name = rest.split('"').next().expect("a name").to_owned();
            (name, attribute(line, "y1").expect("a place"))
        })
        .collect();
    joins.dedup();
    joins.sort_by(|a, b| a.1.total_cmp(&b.1));
    joins.dedup();
    joins
}

#[test]
fn pieces_overlap_at_two_lines_an_inch_apart_that_stand_on_both() {
    let mut n_joins = 0;
    for plan in all_plans() {
        for leg in &plan.legs {
            let pieces = strips(leg, 1, &plan, LETTER_PAGE_MM);
            let n = pieces.len();
            let places = leg.cuts.iter().filter_map(|cut| cut.mark_at_mm);
            let farthest = places.fold(0.0, f64::max);
            assert_eq!(n > 1, farthest > 229.0, "{} {farthest}", plan.job.id);
            n_joins += n - 1;
            for (at, pair) in pieces.windows(2).enumerate() {
                assert_eq!(pair[0].piece, [at + 1, n]);
                let name = |line: char| format!("{}{line}", at + 1);
                let place = |piece: &Strip, line: char| {
                    let all = joins(piece);
                    let found = all.iter().find(|(n, _)| *n == name(line));
                    found.map(|(_, at)| *at).expect("both lines")
                };
                let [a, b] = ['a', 'b'].map(|line| place(&pair[0], line));
                assert_eq!([a, b], ['a', 'b'].map(|line| place(&pair[1], line)));
                assert!((b - a - 25.4).abs() < 1.0e-3, "{a} {b}");
                // Both lines lie on the paper of both pieces, and every place between is on one of them.
                for piece in pair {
                    let [from, to] = piece.covers_mm;
                    assert!(from < a - 4.9 && b + 4.9 < to, "{from} {a} {b} {to}");
                }
            }
            for piece in &pieces {
                assert!(piece.height_mm <= LETTER_PAGE_MM + 1.0e-6);
                let is_first = piece.piece[0] == 1;
                assert_eq!(piece.svg.contains("data-what=\"zero\""), is_first);
                assert_eq!(piece.svg.contains("THIS EDGE"), !is_first);
                assert_eq!(lines_with(&piece.svg, "data-what=\"bar\"").len(), 3);
                assert!(
                    piece.svg.contains(&plan.plan_mark.words()),
                    "{:?}",
                    piece.piece
                );
            }
        }
    }
    assert!(n_joins > 10, "{n_joins} joins");
}

#[test]
fn a_window_stands_from_its_least_to_its_greatest() {
    let plan = planned(THREE_WAY);
    let strip = strip_of(&plan, 0);
    let mut n = 0;
    for cut in &plan.legs[0].cuts {
        let lines = lines_with(&strip.svg, &format!("data-window=\"{}\"", cut.plane.name()));
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
    assert_eq!(plan.outcome, jointwright_joint::limit::Outcome::Fail);
    assert_eq!(strips(&plan.legs[0], 1, &plan, LETTER_PAGE_MM), Vec::new());
}

#[test]
fn what_stands_on_a_strip_is_said_to_be_invented() {
    let mut plan = planned(THREE_WAY);
    assert!(
        strip_of(&plan, 0)
            .svg
            .contains("INVENTED DEMONSTRATION DATA")
    );
    // The twin: the words come only from the plan's mark.
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
    let lines = Line::wrapped(2.5, false, &text);
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
    assert_eq!(strips(&plan.legs[0], 1, &plan, 90.0), Vec::new());
    let shorter = strips(&plan.legs[0], 1, &plan, 215.0);
    assert!(
        shorter
            .iter()
            .all(|piece| piece.height_mm <= 215.0 + 1.0e-6)
    );
    assert!(shorter.len() >= strips(&plan.legs[0], 1, &plan, LETTER_PAGE_MM).len());
    assert_eq!(misplaced(&plan, 0, &shorter), Vec::<String>::new());
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
        lines: vec![Line::bold(3.0, "text"); n_lines],
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
        // The twin: in their own places they do collide.
        assert!(collisions(&crowded) > 0);
    }
    assert_eq!(arranged(vec![block(None, 90)], Vec::new(), 238.0), None);
}

#[test]
fn no_line_is_wider_than_its_column() {
    let lines = Line::wrapped(2.3, true, &"word ".repeat(60));
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

/// Numbers of the scales: left edge, right edge with the widest letters, baseline.
fn figures(piece: &Strip) -> Vec<[f64; 3]> {
    let texts = piece.svg.lines().filter(|l| l.starts_with("<text"));
    let of = |line: &str| {
        let (_, rest) = line.split_once('>')?;
        let text = rest.split('<').next()?;
        let is_figure = !text.is_empty() && text.bytes().all(|b| b.is_ascii_digit());
        let (x, y) = (attribute(line, "x")?, attribute(line, "y")?);
        let size = attribute(line, "font-size")?;
        let is_scale = !FIGURES.iter().all(|[from, to]| x < *from || x > *to);
        (is_figure && is_scale).then_some([x, x + 0.6 * size * text.len() as f64, y])
    };
    texts.filter_map(of).collect()
}

#[test]
fn no_line_and_no_ring_of_a_join_lies_on_a_figure_of_a_scale() {
    let (mut n_rings, mut n_near) = (0, 0);
    for plan in all_plans() {
        for leg in &plan.legs {
            for piece in strips(leg, 1, &plan, LETTER_PAGE_MM) {
                let figures = figures(&piece);
                assert!(figures.iter().all(|[_, right, _]| {
                    FIGURES
                        .iter()
                        .any(|[_, to]| (to - right).abs() < 6.0 && right <= to)
                }));
                let rings = lines_with(&piece.svg, "<circle").into_iter().map(|line| {
                    let [x, y, r] = ["cx", "cy", "r"].map(|n| attribute(line, n).expect("a ring"));
                    n_rings += 1;
                    [x - r, x + r, y]
                });
                let ends =
                    |line: &str| ["x1", "x2", "y1"].map(|n| attribute(line, n).expect("a line"));
                let lines = lines_with(&piece.svg, "data-join=").into_iter().map(ends);
                let drawn: Vec<[f64; 3]> = rings.chain(lines).collect();
                for [left, right, y] in drawn {
                    for figure in &figures {
                        if (y - figure[2] + 1.0).abs() > 2.6 {
                            continue;
                        }
                        n_near += 1;
                        assert!(
                            right < figure[0] || left > figure[1],
                            "{left} to {right} at {y} lies on {figure:?}"
                        );
                    }
                }
            }
        }
    }
    assert!(
        n_rings > 20 && n_near > 20,
        "{n_rings} rings, {n_near} near"
    );
}
