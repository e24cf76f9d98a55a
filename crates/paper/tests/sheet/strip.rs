//! A strip in the PDF, measured: every line of the page in millimetres, through every transform on the way.

use super::{THREE_WAY, planned};
use hayro_syntax::Pdf;
use hayro_syntax::content::TypedIter;
use hayro_syntax::content::ops::TypedInstruction;
use hayro_syntax::page::Resources;
use jointwright_joint::plan::{LegDoc, Plan};
use jointwright_paper::make_up_sheet;

/// Greatest error of a mark, a tick or a bar, mm.
const OFF_MOST_MM: f64 = 0.1;
const MM_A_POINT: f64 = 25.4 / 72.0;
/// Forms inside forms deeper than this would be a fault of the test.
const DEPTH_MOST: usize = 8;

type Matrix = [f64; 6];

/// A straight piece of a path, mm from the upper left corner of the page.
#[derive(Clone, Copy, Debug)]
struct Segment {
    from: [f64; 2],
    to: [f64; 2],
}

impl Segment {
    fn is_level(self) -> bool {
        (self.from[1] - self.to[1]).abs() < 1.0e-3
    }

    fn is_upright(self) -> bool {
        (self.from[0] - self.to[0]).abs() < 1.0e-3
    }

    fn length(self) -> f64 {
        (self.from[0] - self.to[0]).hypot(self.from[1] - self.to[1])
    }
}

fn times(first: Matrix, then: Matrix) -> Matrix {
    let [a, b, c, d, e, f] = first;
    let [p, q, r, s, t, u] = then;
    [
        a * p + b * r,
        a * q + b * s,
        c * p + d * r,
        c * q + d * s,
        e * p + f * r + t,
        e * q + f * s + u,
    ]
}

fn at(matrix: Matrix, [x, y]: [f64; 2]) -> [f64; 2] {
    let [a, b, c, d, e, f] = matrix;
    [a * x + c * y + e, b * x + d * y + f]
}

/// Gathers the straight pieces of a content stream and of the forms in it.
fn gather(
    mut content: TypedIter<'_>,
    resources: &Resources<'_>,
    outer: Matrix,
    depth: usize,
    found: &mut Vec<([f64; 2], [f64; 2])>,
) {
    assert!(depth <= DEPTH_MOST);
    let mut matrix = outer;
    let mut saved = Vec::new();
    let mut pen = [0.0, 0.0];
    while let Some(instruction) = content.next() {
        match instruction {
            TypedInstruction::SaveState(_) => saved.push(matrix),
            TypedInstruction::RestoreState(_) => matrix = saved.pop().unwrap_or(outer),
            TypedInstruction::Transform(t) => {
                let own = [t.0, t.1, t.2, t.3, t.4, t.5].map(|n| n.as_f64());
                matrix = times(own, matrix);
            }
            TypedInstruction::MoveTo(to) => pen = [to.0.as_f64(), to.1.as_f64()],
            TypedInstruction::LineTo(to) => {
                let next = [to.0.as_f64(), to.1.as_f64()];
                found.push((at(matrix, pen), at(matrix, next)));
                pen = next;
            }
            TypedInstruction::XObject(name) => {
                let Some(stream) = resources.get_x_object(name.0) else {
                    continue;
                };
                let dict = stream.dict();
                let own = dict
                    .get::<[f64; 6]>(b"Matrix".as_slice())
                    .unwrap_or([1.0, 0.0, 0.0, 1.0, 0.0, 0.0]);
                let inner = dict.get(b"Resources".as_slice()).unwrap_or_default();
                let inner = Resources::from_parent(inner, resources.clone());
                let Ok(data) = stream.decoded() else { continue };
                gather(
                    TypedIter::new(&data),
                    &inner,
                    times(own, matrix),
                    depth + 1,
                    found,
                );
            }
            _ => {}
        }
    }
}

/// Straight pieces of every page.
fn segments(bytes: Vec<u8>) -> Vec<Vec<Segment>> {
    let pdf = Pdf::new(bytes).expect("a PDF");
    let of_page = |page: &hayro_syntax::page::Page<'_>| {
        let mut found = Vec::new();
        let unit = [1.0, 0.0, 0.0, 1.0, 0.0, 0.0];
        gather(
            page.typed_operations(),
            page.resources(),
            unit,
            0,
            &mut found,
        );
        let height = f64::from(page.base_dimensions().1);
        let on_page = |[x, y]: [f64; 2]| [x * MM_A_POINT, (height - y) * MM_A_POINT];
        found
            .into_iter()
            .map(|(from, to)| Segment {
                from: on_page(from),
                to: on_page(to),
            })
            .collect()
    };
    pdf.pages().iter().map(of_page).collect()
}

/// Marks of a leg's first end that do not stand where the plan has them, on any of its pages; a page is measured from its zero edge, or from the join that it shares with the page before.
fn misplaced(pages: &[Vec<Segment>], leg: &LegDoc) -> Vec<String> {
    let wanted: Vec<(&str, f64)> = leg
        .cuts
        .iter()
        .filter_map(|cut| Some((cut.plane.name(), cut.mark_at_mm?)))
        .collect();
    assert!(wanted.len() >= 3);
    // Every place that some mark of some page has from the zero of its strip.
    let mut seen: Vec<f64> = Vec::new();
    let mut before: Option<f64> = None;
    for page in pages {
        let (at_paper, at_cable) = match before {
            None => (zero(page), 0.0),
            // The first join of this page is the last of the page before.
            Some(at) => (joins(page)[0], at),
        };
        let marks = page.iter().filter(|s| is_of_first(s, 14.0));
        seen.extend(marks.map(|s| s.from[1] - at_paper + at_cable));
        // The last but one is the first line of the next join.
        let all = joins(page);
        before = all
            .len()
            .checked_sub(2)
            .map(|n| all[n] - at_paper + at_cable);
    }
    let is_there = |place: f64| seen.iter().any(|at| (at - place).abs() <= OFF_MOST_MM);
    wanted
        .iter()
        .filter(|(_, place)| !is_there(*place))
        .map(|(plane, place)| format!("{plane} is not at {place} mm"))
        .collect()
}

/// Left edge of the first strip of a page, mm.
const LEFT_MM: f64 = 8.0 + 1.5;

/// A level piece of this length that begins at the left edge of the first strip.
fn is_of_first(segment: &Segment, length: f64) -> bool {
    segment.is_level()
        && (segment.length() - length).abs() < OFF_MOST_MM
        && (segment.from[0].min(segment.to[0]) - LEFT_MM).abs() < 0.5
}

/// The upper edge of the first strip.
fn zero(page: &[Segment]) -> f64 {
    let edges = page.iter().filter(|s| is_of_first(s, 60.0));
    edges.map(|s| s.from[1]).fold(f64::INFINITY, f64::min)
}

/// Lines of joins of the first strip, from above.
fn joins(page: &[Segment]) -> Vec<f64> {
    // From the edge to the figures of the inches.
    let lines = page.iter().filter(|s| is_of_first(s, 5.2));
    let mut places: Vec<f64> = lines.map(|s| s.from[1]).collect();
    places.sort_by(f64::total_cmp);
    places
}

/// Pages of strips, leg by leg.
fn strip_pages(plan: &Plan) -> Vec<Vec<Vec<Segment>>> {
    let bytes = make_up_sheet(plan, &[]).expect("a sheet");
    let mut legs: Vec<Vec<Vec<Segment>>> = Vec::new();
    for page in segments(bytes) {
        let edges = page
            .iter()
            .filter(|s| s.is_level() && (s.length() - 60.0).abs() < OFF_MOST_MM);
        if edges.count() < 2 * plan.legs[0].ends.len() {
            continue;
        }
        let before = legs
            .last()
            .and_then(|pages| pages.last())
            .map(|page| joins(page).len());
        // A leg's pages go on as long as each has a join to the next below its own.
        let goes_on = before.is_some_and(|n| {
            let is_first = legs.last().is_some_and(|pages| pages.len() == 1);
            if is_first { n == 2 } else { n == 4 }
        });
        match legs.last_mut() {
            Some(pages) if goes_on => pages.push(page),
            _ => legs.push(vec![page]),
        }
    }
    legs
}

#[test]
fn every_mark_of_every_strip_is_within_a_tenth_of_a_millimetre() {
    let plan = planned(THREE_WAY);
    let legs = strip_pages(&plan);
    assert_eq!(legs.len(), plan.legs.len());
    for (pages, leg) in legs.iter().zip(&plan.legs) {
        assert!(pages.len() > 1, "leg {}", leg.mark);
        assert_eq!(
            misplaced(pages, leg),
            Vec::<String>::new(),
            "leg {}",
            leg.mark
        );
    }
}

#[test]
fn lines_of_a_join_are_an_inch_apart_on_every_page_that_has_them() {
    let plan = planned(THREE_WAY);
    let mut n = 0;
    for page in strip_pages(&plan).iter().flatten() {
        for pair in joins(page).chunks(2) {
            assert!((pair[1] - pair[0] - 25.4).abs() <= OFF_MOST_MM, "{pair:?}");
            n += 1;
        }
    }
    assert!(n >= 2 * plan.legs.len(), "{n}");
}

#[test]
fn a_mark_a_fifth_of_a_millimetre_off_is_found() {
    let plan = planned(THREE_WAY);
    let legs = strip_pages(&plan);
    // The nearest and the farthest.
    for last in [false, true] {
        let mut moved = plan.legs[0].clone();
        let mut places: Vec<&mut f64> = moved
            .cuts
            .iter_mut()
            .filter_map(|cut| cut.mark_at_mm.as_mut())
            .collect();
        places.sort_by(|a, b| a.total_cmp(b));
        let place = if last {
            places.pop()
        } else {
            places.into_iter().next()
        };
        *place.expect("a place") += 0.2;
        assert_eq!(misplaced(&legs[0], &moved).len(), 1);
    }
    // A page that is missing is found.
    assert!(!misplaced(&legs[0][..1], &plan.legs[0]).is_empty());
}

#[test]
fn the_calibration_bars_are_within_a_tenth_of_a_millimetre_both_ways() {
    let plan = planned(THREE_WAY);
    for page in strip_pages(&plan).iter().flatten() {
        let n = |is_wanted: fn(Segment) -> bool, length: f64| {
            page.iter()
                .filter(|s| is_wanted(**s) && (s.length() - length).abs() <= OFF_MOST_MM)
                .count()
        };
        let n_strips = plan.legs[0].ends.len();
        assert_eq!(n(Segment::is_upright, 100.0), n_strips);
        assert_eq!(n(Segment::is_upright, 101.6), n_strips);
        assert_eq!(n(Segment::is_level, 30.0), n_strips);
        // The twin: no bar is half a millimetre longer.
        assert_eq!(n(Segment::is_upright, 100.5), 0);
    }
}
