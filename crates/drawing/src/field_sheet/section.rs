//! Section: bands, lines, outlines and numbered places in the upper half of a field sheet.

use super::{FieldSheet, Format, Shown, rail};
use crate::band::Strength;
use crate::canvas::{
    Anchor, BLACK, Bounds, Canvas, EQUIPOTENTIAL, Element, FRAME, LETTER, Look, OUTLINE, PAPER,
    Place, Trail, Words, do_cross,
};
use crate::colour::{BANDS, hex};
use crate::equipotential::{Tenth, along, tenths};
use crate::frame::{Frame, curves};
use crate::level::{multiples, round_up, short, to_step};
use crate::trace::{Spot, path};
use jointwright_numerics::outline::Point;
use jointwright_wording::Tongue;
use jointwright_wording::label::{FieldLegend, Potential};

/// Greatest number of peaks that are numbered and listed.
pub(super) const PEAKS_MOST: usize = 24;
/// Offsets of a name from its place, in sizes of letters.
const ASIDE: [[f64; 2]; 9] = [
    [0.0, 0.0],
    [0.0, -1.5],
    [0.0, 1.5],
    [4.0, 0.0],
    [-4.0, 0.0],
    [4.0, -1.5],
    [-4.0, -1.5],
    [8.0, 0.0],
    [-8.0, 0.0],
];
/// Colour of the hatching where there is no part.
const HATCH: &str = "#777";
/// Colour of the lines from the section down to the numbers along z.
const GUIDE: &str = "#ddd";
/// Shares of an equipotential line at which its number may stand, after its own share.
const SHARES: [f64; 7] = [0.0, 0.12, 0.24, 0.36, 0.48, 0.6, 0.72];

/// Draws the section; `rail_y` is the middle of the numbers above it.
pub(super) fn draw(
    canvas: &mut Canvas,
    sheet: &FieldSheet,
    frame: &Frame,
    rail_y: f64,
    format: &Format,
) -> Shown {
    let bounds = Bounds::new(frame.origin, frame.size);
    canvas.trail(
        hatching(&bounds, 0.55 * format.size),
        &Look::line(HATCH, 0.7),
    );
    let strength = Strength::new(sheet.mesh, sheet.potential, frame);
    let step = strength.step();
    for (at, colour) in BANDS.iter().enumerate() {
        let level = (at > 0).then_some(at as f64 * step);
        let look = Look::filled(hex(*colour));
        canvas.path(&path(&strength.above(level), true), &look);
    }
    let (range, tenths) = tenths(sheet.mesh, sheet.potential, frame).unzip();
    let tenths = tenths.unwrap_or_default();
    equipotentials(canvas, &tenths, format);
    outlines(canvas, sheet, frame, format);
    r_axis(canvas, frame, format);
    let marked = numbers(canvas, sheet, frame, rail_y, format);
    if !format.is_strip {
        name_parts(canvas, sheet, frame, format);
    }
    number_tenths(canvas, &tenths, &bounds, format);
    Shown {
        step,
        range,
        stretch: frame.stretch,
        marked,
        unwritten: Vec::new(),
    }
}

fn equipotentials(canvas: &mut Canvas, tenths: &[Tenth], format: &Format) {
    let mut drawn = String::new();
    for tenth in tenths {
        drawn.push_str(&path(&tenth.lines, false));
    }
    // On a strip the lines lie close: thin and without ground, so that the bands are still visible between them.
    if !format.is_strip {
        canvas.path(&drawn, &Look::line(PAPER, 2.0).round().faint(0.5));
    }
    let width = if format.is_strip { 0.4 } else { 0.8 };
    canvas.path(&drawn, &Look::line(EQUIPOTENTIAL, width).round());
}

/// Writes on each line the number of its tenth, where there is room; on a strip only on every other line.
fn number_tenths(canvas: &mut Canvas, tenths: &[Tenth], within: &Bounds, format: &Format) {
    let size = (0.85 * format.size).max(10.0);
    let is_numbered = |tenth: &&Tenth| !format.is_strip || tenth.tenth % 2 == 1;
    for tenth in tenths.iter().filter(is_numbered) {
        let Some(longest) = tenth.longest() else {
            continue;
        };
        for more in SHARES {
            // Each number stands a little farther along than the one before.
            let share = (0.1 * f64::from(tenth.tenth) + more) % 1.0;
            let [x, y] = along(longest, share).map(|x| f64::from(x) / 10.0);
            let words = Words::new([x, y + 0.35 * size], size, &tenth.label());
            let words = words.anchored(Anchor::Middle).on_picture();
            if canvas.text_if_free(words, within) {
                break;
            }
        }
    }
}

/// Slanted lines over a rectangle, inside its edges.
fn hatching(bounds: &Bounds, step: f64) -> Trail {
    let (width, height) = (bounds.right - bounds.left, bounds.bottom - bounds.top);
    let mut lines = Trail::default();
    let n = ((width + height) / step).min(2000.0) as u32;
    for at in 1..=n {
        // From the lower left to the upper right: x − left + y − top is the same along a line.
        let sum = step * f64::from(at);
        let from = [sum.min(width), sum - sum.min(width)];
        let to = [sum - sum.min(height), sum.min(height)];
        let [from, to] = [from, to].map(|[x, y]| [bounds.left + x, bounds.top + y]);
        lines.join(Trail::from(from).to(to));
    }
    lines
}

fn outlines(canvas: &mut Canvas, sheet: &FieldSheet, frame: &Frame, format: &Format) {
    let (mut thin, mut thick) = (Vec::new(), Vec::new());
    for (curve, places) in sheet.outline.curves.iter().zip(curves(sheet.outline)) {
        let line: Vec<Spot> = places.iter().map(|place| frame.spot(*place)).collect();
        match sheet.conductors.contains(&curve.tag) {
            true => thick.push(line),
            false => thin.push(line),
        }
    }
    canvas.path(&path(&thin, false), &Look::line(OUTLINE, 0.8).round());
    let thick_line = Look::line(BLACK, 2.2 * format.pen).round();
    canvas.path(&path(&thick, false), &thick_line);
    let section = Element::rectangle(&Bounds::new(frame.origin, frame.size));
    let section = section.drawn(&Look::line(FRAME, 0.6));
    canvas.shape(section.tagged("data-part", "section"));
}

fn r_axis(canvas: &mut Canvas, frame: &Frame, format: &Format) {
    let [left, top] = frame.origin;
    let size = format.size;
    // As many numbers as have room, at most six.
    let n_most = (frame.size[1] / (2.0 * size)).clamp(1.0, 6.0);
    let step = round_up((frame.r[1] - frame.r[0]) * 1e3 / n_most);
    let mut ticks = Trail::default();
    for mm in multiples(frame.r.map(|r| r * 1e3), step) {
        let y = frame.at(Point::new(mm / 1e3, frame.z[0]))[1];
        ticks.join(Trail::from([left, y]).level_to(left - 5.0));
        let words = Words::new([left - 8.0, y + 0.35 * size], size, &to_step(mm, step));
        canvas.text(words.anchored(Anchor::End));
    }
    canvas.trail(ticks, &Look::line(FRAME, 1.0));
    let words = Words::new([left - 8.0, top - 0.9 * size], size, "r, mm");
    canvas.text(words.anchored(Anchor::End));
}

/// Writes numbers along z below everything, and draws their lines through the diagram up to the section.
pub(super) fn z_axis(
    canvas: &mut Canvas,
    frame: &Frame,
    [section, bottom]: [f64; 2],
    tongue: Tongue,
    format: &Format,
) {
    let n_most = if format.is_strip { 8.0 } else { 12.0 };
    let step = round_up((frame.z[1] - frame.z[0]) * 1e3 / n_most);
    let (mut ticks, mut guides) = (Trail::default(), Trail::default());
    for mm in multiples(frame.z.map(|z| z * 1e3), step) {
        let x = frame.at(Point::new(0.0, mm / 1e3))[0];
        for y in [section, bottom] {
            ticks.join(Trail::from([x, y]).upright_to(y + 5.0));
        }
        let from = section + 2.0 * format.size;
        if bottom > from {
            guides.join(Trail::from([x, from]).upright_to(bottom));
        }
        let at = [x, bottom + 5.0 + format.size];
        let words = Words::new(at, format.size, &to_step(mm, step));
        canvas.text(words.anchored(Anchor::Middle));
    }
    canvas.trail(guides, &Look::line(GUIDE, 0.7));
    canvas.trail(ticks, &Look::line(FRAME, 1.0));
    let words = match format.is_strip {
        true => {
            let at = [frame.origin[0] - 8.0, bottom + 5.0 + format.size];
            Words::new(at, format.size, "z, mm")
        }
        false => {
            let right = frame.origin[0] + frame.size[0];
            let at = [right, bottom + 5.0 + 2.2 * format.size];
            Words::new(at, format.size, &tongue.label(&FieldLegend::AlongAxis))
        }
    };
    canvas.text(words.anchored(Anchor::End));
}

/// Draws marks, leaders and numbers of the greatest fields; returns the numbers that are marked.
fn numbers(
    canvas: &mut Canvas,
    sheet: &FieldSheet,
    frame: &Frame,
    y: f64,
    format: &Format,
) -> Vec<usize> {
    let radius = 0.75 * format.size;
    let bounds = Bounds::new(frame.origin, frame.size).grown(0.5);
    let step = 2.0 * radius + 3.0;
    let n_most = (PEAKS_MOST as f64).min(frame.size[0] / step) as usize;
    let marked: Vec<(usize, Place)> = sheet
        .peaks
        .iter()
        .enumerate()
        .map(|(at, peak)| (at + 1, frame.at(peak.at)))
        .filter(|(_, place)| bounds.holds(*place))
        .take(n_most)
        .collect();
    let places: Vec<Place> = marked.iter().map(|(_, place)| *place).collect();
    let rail = rail::spread(&places, y, [bounds.left, bounds.right], step);
    let mut leaders = Trail::default();
    for ([x, y], [to_x, to_y]) in rail.iter().zip(&places) {
        leaders.join(Trail::from([*x, *y]).to([*to_x, *to_y]));
        canvas.lines.push([[*x, *y], [*to_x, *to_y]]);
        // A text may not lie on the mark itself either.
        for [aside, down] in [[4.5, 0.0], [0.0, 4.5]] {
            let ends = [-1.0, 1.0].map(|by| [to_x + by * aside, to_y + by * down]);
            canvas.lines.push(ends);
        }
    }
    for look in [Look::line(PAPER, 3.0), Look::line(BLACK, 1.1)] {
        canvas.trail_above(leaders.clone(), &look);
    }
    let ring = |width| Look::filled(PAPER).edged(BLACK, width);
    for ((number, at), [x, y]) in marked.iter().zip(&rail) {
        let peak = Element::circle(*at, 3.2).drawn(&ring(1.4));
        canvas.shape_above(peak.tagged("data-part", "peak"));
        let numbered = Element::circle([*x, *y], radius).drawn(&ring(1.1));
        canvas.shape_above(numbered.tagged("data-part", "number"));
        let size = (0.85 * format.size).max(10.0);
        let words = Words::new([*x, y + 0.36 * size], size, &number.to_string()).bold();
        canvas.text(words.anchored(Anchor::Middle));
    }
    marked.into_iter().map(|(number, _)| number).collect()
}

/// Writes names of parts, each at its place or at a free place near it in the same part.
fn name_parts(canvas: &mut Canvas, sheet: &FieldSheet, frame: &Frame, format: &Format) {
    let bounds = Bounds::new(frame.origin, frame.size);
    let mut rims: Vec<[Place; 2]> = Vec::new();
    for curve in curves(sheet.outline) {
        rims.extend(
            curve
                .windows(2)
                .map(|pair| [frame.at(pair[0]), frame.at(pair[1])]),
        );
    }
    for (name, at) in &sheet.regions {
        let place = frame.at(*at);
        for aside in ASIDE {
            let moved = [0, 1].map(|axis| place[axis] + aside[axis] * format.size);
            if rims.iter().any(|rim| do_cross(*rim, [place, moved])) {
                continue;
            }
            let base = [moved[0], moved[1] + 0.35 * format.size];
            let words = Words::new(base, format.size, name).anchored(Anchor::Middle);
            if canvas.text_if_free(words.on_picture(), &bounds) {
                break;
            }
        }
    }
}

/// Draws the legend of shading, lines and scale.
pub(super) fn legend(canvas: &mut Canvas, shown: &Shown, tongue: Tongue, format: &Format) {
    let kv_per_mm = shown.step / 1e6;
    let size = format.size;
    let left = format.margin() + 0.5 * size;
    let width = if format.is_strip { 21.0 } else { 58.0 };
    canvas.y += 0.5 * size;
    for (at, colour) in BANDS.iter().enumerate() {
        let x = left + at as f64 * width;
        let patch = Bounds::new([x, canvas.y], [width, 1.1 * size]);
        let look = Look::filled(hex(*colour)).edged(OUTLINE, 0.7);
        canvas.shape(Element::rectangle(&patch).drawn(&look));
        // Every other number where they would meet.
        let number = to_step(at as f64 * kv_per_mm, kv_per_mm);
        let is_crowded = 4.0 * LETTER * size > width - 2.0;
        if !is_crowded || at % 2 == 0 {
            let at = [x, canvas.y + 2.1 * size];
            canvas.text(Words::new(at, size, &number).anchored(Anchor::Middle));
        }
    }
    let title = if format.is_strip {
        FieldLegend::AndAboveInShort
    } else {
        FieldLegend::AndAboveDarker
    };
    let title = tongue.label(&title);
    let at = [
        left + BANDS.len() as f64 * width + 6.0,
        canvas.y + 0.95 * size,
    ];
    let title = Words::new(at, size, &title);
    let sentences = sentences(shown, tongue, format);
    if format.is_strip {
        let at = [format.right(), at[1]];
        canvas.text(Words::new(at, size, &sentences.join(" ")).anchored(Anchor::End));
        canvas.text(title);
        canvas.y += 2.1 * size;
        return;
    }
    canvas.text(title);
    canvas.y += 2.3 * size;
    for line in sentences {
        super::lines(canvas, &line, format);
    }
}

/// Sentences of the legend.
fn sentences(shown: &Shown, tongue: Tongue, format: &Format) -> Vec<String> {
    let of = |label: FieldLegend| tongue.label(&label);
    let ratio = shown.stretch;
    if format.is_strip {
        let scale = match ratio > 1.0 {
            true => FieldLegend::StretchedInShort { ratio },
            false => FieldLegend::OneScaleInShort,
        };
        return vec![of(FieldLegend::HatchedInShort), of(scale)];
    }
    let scale = scale_said(ratio);
    let lines = shown.range.map(|(least, greatest, is_modulus)| {
        of(FieldLegend::ThinLines {
            of: potential_said(is_modulus),
            least_kv: short(least / 1e3),
            greatest_kv: short(greatest / 1e3),
        })
    });
    let hatched = of(FieldLegend::Hatched { scale: of(scale) });
    lines.into_iter().chain([hatched]).collect()
}

/// Label of the scales of r and z.
pub(crate) const fn scale_said(ratio: f64) -> FieldLegend {
    if ratio > 1.0 {
        FieldLegend::Stretched { ratio }
    } else {
        FieldLegend::OneScale
    }
}

/// Potential of which the lines are drawn.
pub(crate) const fn potential_said(is_modulus: bool) -> Potential {
    if is_modulus {
        Potential::Modulus
    } else {
        Potential::Real
    }
}
