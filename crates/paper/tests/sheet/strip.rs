//! A strip in the PDF, measured: every line of the page in millimetres, through every transform on the way.

use super::{THREE_WAY, planned};
use hayro_syntax::Pdf;
use hayro_syntax::content::TypedIter;
use hayro_syntax::content::ops::TypedInstruction;
use hayro_syntax::page::Resources;
use jointwright_joint::plan::{LegDoc, Plan};
use jointwright_paper::make_up_sheet;

/// What a mark, a tick or a bar may be off, mm.
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

/// Marks that do not stand where the plan has them, measured from the best zero edge of the page; none if all do.
fn misplaced(page: &[Segment], leg: &LegDoc) -> Option<Vec<String>> {
    let level: Vec<Segment> = page.iter().copied().filter(|s| s.is_level()).collect();
    let zeros = level
        .iter()
        .filter(|s| (s.length() - 60.0).abs() < OFF_MOST_MM);
    let wanted: Vec<(&str, f64)> = leg
        .cuts
        .iter()
        .filter_map(|cut| Some((cut.plane.as_str(), cut.mark_at_mm?)))
        .filter(|(_, at)| *at < 226.0)
        .collect();
    assert!(wanted.len() >= 3);
    zeros
        .map(|zero| {
            let is_there = |place: f64| {
                level.iter().any(|s| {
                    (s.from[1] - zero.from[1] - place).abs() <= OFF_MOST_MM
                        && (s.from[0] - zero.from[0]).abs() <= OFF_MOST_MM
                        && (s.length() - 14.0).abs() < OFF_MOST_MM
                })
            };
            wanted
                .iter()
                .filter(|(_, place)| !is_there(*place))
                .map(|(plane, place)| format!("{plane} is not at {place} mm"))
                .collect::<Vec<String>>()
        })
        .min_by_key(Vec::len)
}

/// Pages that hold a zero edge, in the order of the legs.
fn strip_pages(plan: &Plan) -> Vec<Vec<Segment>> {
    let bytes = make_up_sheet(plan, &[]).expect("a sheet");
    segments(bytes)
        .into_iter()
        .filter(|page| {
            let edges = page
                .iter()
                .filter(|s| s.is_level() && (s.length() - 60.0).abs() < OFF_MOST_MM);
            edges.count() >= plan.legs[0].ends.len()
        })
        .collect()
}

#[test]
fn every_mark_of_every_strip_is_within_a_tenth_of_a_millimetre() {
    let plan = planned(THREE_WAY);
    let pages = strip_pages(&plan);
    assert_eq!(pages.len(), plan.legs.len());
    for (page, leg) in pages.iter().zip(&plan.legs) {
        assert_eq!(misplaced(page, leg), Some(Vec::new()), "leg {}", leg.mark);
    }
}

#[test]
fn a_mark_a_fifth_of_a_millimetre_off_is_found() {
    let plan = planned(THREE_WAY);
    let pages = strip_pages(&plan);
    let mut moved = plan.legs[0].clone();
    if let Some(place) = moved
        .cuts
        .iter_mut()
        .find_map(|cut| cut.mark_at_mm.as_mut())
    {
        *place += 0.2;
    }
    assert_eq!(misplaced(&pages[0], &moved).map(|m| m.len()), Some(1));
}

#[test]
fn the_calibration_bars_are_within_a_tenth_of_a_millimetre_both_ways() {
    let plan = planned(THREE_WAY);
    for page in strip_pages(&plan) {
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
