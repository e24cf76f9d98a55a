//! Diagram: strengths along z below a section, on the section's own z axis.

use super::{Curve, FieldSheet, Format};
use crate::canvas::{
    Anchor, Bounds, Canvas, Element, FRAME, GRID, INK, Look, Place, Trail, Words, do_cross,
};
use crate::frame::Frame;
use crate::level::{multiples, round_up, to_step};
use crate::trace::{Spot, path};
use jointwright_numerics::outline::Point;
use jointwright_wording::label::FieldLabel;

/// Offsets of a text from its curve: to the side and up or down, nearest first.
const AWAY: [[f64; 2]; 10] = [
    [14.0, -14.0],
    [14.0, 16.0],
    [-14.0, -14.0],
    [-14.0, 16.0],
    [30.0, -28.0],
    [30.0, 30.0],
    [-30.0, -28.0],
    [-30.0, 30.0],
    [50.0, -50.0],
    [-50.0, -50.0],
];
/// Dashes of the dashed curves, in their order.
const DASHES: [&str; 3] = ["9 5", "2 4", "14 4 2 4"];
/// Ratio of a step along z to the usual step from which the step is a gap: nothing is known in it.
const GAP_RATIO: f64 = 3.0;
/// Greatest number of places that are tried for a text.
const TRIES_MOST: usize = 80;

/// Rectangle of the diagram below a frame.
pub(super) fn room(frame: &Frame, top: f64, height: f64) -> Bounds {
    let left = frame.at(Point::new(0.0, frame.z[0]))[0];
    Bounds::new([left, top], [frame.size[0], height])
}

/// Draws curves into a rectangle; returns the texts that found no room at their line, as sentences.
pub(super) fn draw(
    canvas: &mut Canvas,
    frame: &Frame,
    room: &Bounds,
    sheet: &FieldSheet<'_>,
    format: &Format,
) -> Vec<String> {
    let curves = &sheet.curves;
    let known = curves.iter().map(|curve| known(curve, frame));
    let known: Vec<Vec<(f64, f64)>> = known.collect();
    let greatest = known.iter().flatten().map(|(_, e)| e / 1e6);
    let greatest = greatest.fold(0.0, f64::max);
    let step = round_up(1.04 * greatest / f64::from(format.n_steps));
    let most = step * (1.04 * greatest / step).ceil().max(1.0);
    scale(canvas, room, [step, most], format);
    let drawn: Vec<Vec<Vec<Place>>> = known
        .iter()
        .map(|known| runs(known, frame, room, most))
        .collect();
    let mut n_dashed = 0;
    for (curve, runs) in curves.iter().zip(&drawn) {
        let lines: Vec<Vec<Spot>> = runs.iter().map(|run| spots(run)).collect();
        let dashes = match curve.dashed {
            true => DASHES[n_dashed % DASHES.len()],
            false => "",
        };
        n_dashed += usize::from(curve.dashed);
        let width = if curve.dashed { 1.4 } else { 2.0 } * format.pen;
        let look = Look::line(INK, width).round().dashed(dashes);
        let d = path(&lines, false);
        if !d.is_empty() {
            canvas.shape_above(Element::path(d, &look).tagged("data-part", "curve"));
        }
        for run in runs {
            let pieces = run.windows(2).map(|pair| [pair[0], pair[1]]);
            canvas.lines.extend(pieces);
        }
    }
    let mut unwritten = Vec::new();
    for (of, curve) in curves.iter().enumerate() {
        if !write_at_line(canvas, room, &drawn, of, curve, format) {
            let label = curve.label.clone();
            let line = match curve.dashed {
                true => FieldLabel::DashedLine { label },
                false => FieldLabel::FullLine { label },
            };
            unwritten.push(sheet.tongue.label(&line));
        }
    }
    unwritten
}

/// Places of a curve that are numbers and lie within the section, by rising z.
fn known(curve: &Curve, frame: &Frame) -> Vec<(f64, f64)> {
    let slack = 1e-9 * (frame.z[1] - frame.z[0]);
    let mut known: Vec<(f64, f64)> = curve
        .points
        .iter()
        .map(|(z, e)| (*z, e.abs()))
        .filter(|(z, e)| e.is_finite() && *z >= frame.z[0] - slack && *z <= frame.z[1] + slack)
        .collect();
    known.sort_by(|a, b| a.0.total_cmp(&b.0));
    known
}

/// The curve on the page, divided at gaps in z.
fn runs(known: &[(f64, f64)], frame: &Frame, room: &Bounds, most: f64) -> Vec<Vec<Place>> {
    let mut steps: Vec<f64> = known.windows(2).map(|pair| pair[1].0 - pair[0].0).collect();
    steps.sort_by(f64::total_cmp);
    let usual = steps.get(steps.len() / 2).copied().unwrap_or(0.0);
    let mut runs: Vec<Vec<Place>> = Vec::new();
    let mut before = f64::NEG_INFINITY;
    for (z, e) in known {
        let x = frame.at(Point::new(0.0, *z))[0];
        let place = [x, room.bottom - e / 1e6 / most * (room.bottom - room.top)];
        match runs.last_mut() {
            Some(run) if z - before <= GAP_RATIO * usual => run.push(place),
            _ => runs.push(vec![place]),
        }
        before = *z;
    }
    runs.retain(|run| run.len() > 1);
    runs
}

fn spots(run: &[Place]) -> Vec<Spot> {
    let mut spots: Vec<Spot> = run
        .iter()
        .map(|place| place.map(|x| (10.0 * x).round() as i32))
        .collect();
    spots.dedup();
    spots
}

/// Draws frame, lines and numbers of the strengths.
fn scale(canvas: &mut Canvas, room: &Bounds, [step, most]: [f64; 2], format: &Format) {
    let height = room.bottom - room.top;
    let mut lines = Trail::default();
    for strength in multiples([0.0, most * (1.0 + 1e-9)], step) {
        let y = room.bottom - strength / most * height;
        lines.join(Trail::from([room.left, y]).level_to(room.right));
        let words = Words::new(
            [room.left - 8.0, y + 0.35 * format.size],
            format.size,
            &to_step(strength, step),
        );
        canvas.text(words.anchored(Anchor::End));
    }
    canvas.trail(lines, &Look::line(GRID, 0.7));
    let frame = Element::rectangle(room).drawn(&Look::line(FRAME, 1.0));
    canvas.shape(frame.tagged("data-part", "diagram"));
}

/// Writes a curve's label beside it where there is room; returns whether there was.
fn write_at_line(
    canvas: &mut Canvas,
    room: &Bounds,
    drawn: &[Vec<Vec<Place>>],
    of: usize,
    curve: &Curve,
    format: &Format,
) -> bool {
    let places: Vec<Place> = drawn[of].iter().flatten().copied().collect();
    let highest = (0..places.len()).min_by(|a, b| places[*a][1].total_cmp(&places[*b][1]));
    let Some(highest) = highest else {
        return false;
    };
    let stride = places.len().div_ceil(TRIES_MOST).max(1);
    let mut tried: Vec<usize> = (0..places.len()).step_by(stride).collect();
    // From the highest place outward.
    tried.sort_by_key(|at| at.abs_diff(highest));
    let inner = room.grown(-3.0);
    for at in tried {
        for [aside, down] in AWAY {
            let place = [places[at][0] + aside, places[at][1] + down];
            let anchor = match aside > 0.0 {
                true => Anchor::Start,
                false => Anchor::End,
            };
            let base = [place[0], place[1] + 0.3 * format.size];
            let words = Words::new(base, format.size, &curve.label)
                .anchored(anchor)
                .on_picture();
            let leader = [[place[0] - aside.signum() * 3.0, place[1]], places[at]];
            let is_clear = drawn.iter().enumerate().all(|(other, runs)| {
                other == of
                    || runs
                        .iter()
                        .flat_map(|run| run.windows(2))
                        .all(|pair| !do_cross(leader, [pair[0], pair[1]]))
            });
            if is_clear && canvas.text_if_free(words, &inner) {
                canvas.trail_above(Trail::through(&leader), &Look::line(INK, 0.8));
                canvas.lines.push(leader);
                return true;
            }
        }
    }
    false
}
