//! Patches: the contents of a rectangle of a section, from a plain wall to a rounded electrode.
//!
//! Each patch is drawn in its own coordinates, x across from 0 to w and y along from 0 to h, and put into its rectangle
//! in one of eight orientations: mirrored along, mirrored across, and turned.

use super::random::Chance;
use super::sketch::{Matter, Sketch, Step};

/// A rectangle to be filled, mm, with the orientation of its own coordinates.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Frame {
    pub r: f64,
    pub z: f64,
    pub size: [f64; 2],
    pub is_mirrored: [bool; 2],
    pub is_turned: bool,
}

impl Frame {
    pub fn new(r: f64, z: f64, size: [f64; 2]) -> Self {
        Self {
            r,
            z,
            size,
            is_mirrored: [false; 2],
            is_turned: false,
        }
    }

    /// The same rectangle with x along r, mirrored as wanted.
    pub fn mirrored(self, is_mirrored: [bool; 2]) -> Self {
        Self {
            is_mirrored,
            ..self
        }
    }

    fn any_way(self, chance: &mut Chance) -> Self {
        Self {
            is_mirrored: [chance.is(0.5), chance.is(0.5)],
            is_turned: chance.is(0.5),
            ..self
        }
    }

    fn across(&self) -> f64 {
        self.size[usize::from(self.is_turned)]
    }

    fn along(&self) -> f64 {
        self.size[usize::from(!self.is_turned)]
    }

    /// Place of own coordinates, mm.
    fn place(&self, x: f64, y: f64) -> [f64; 2] {
        let [mut r, mut z] = if self.is_turned { [y, x] } else { [x, y] };
        if self.is_mirrored[0] {
            r = self.size[0] - r;
        }
        if self.is_mirrored[1] {
            z = self.size[1] - z;
        }
        [self.r + r, self.z + z]
    }

    /// A part of the rectangle, by own coordinates.
    fn part(&self, low: [f64; 2], high: [f64; 2]) -> Self {
        let (a, b) = (self.place(low[0], low[1]), self.place(high[0], high[1]));
        let (r, z) = (a[0].min(b[0]), a[1].min(b[1]));
        Self::new(r, z, [a[0].max(b[0]) - r, a[1].max(b[1]) - z])
    }
}

/// A step in own coordinates: to (x, y), straight or about (x, y).
#[derive(Clone, Copy)]
enum To {
    Line(f64, f64),
    Arc([f64; 2], [f64; 2]),
}

use To::{Arc, Line};

fn face(sketch: &mut Sketch, frame: &Frame, matter: Matter, steps: &[To]) {
    let mut points = Vec::new();
    for step in steps {
        let (x, y, center) = match *step {
            Line(x, y) => (x, y, None),
            Arc([x, y], [u, v]) => (x, y, Some(frame.place(u, v))),
        };
        let [r, z] = frame.place(x, y);
        let point = sketch.point(r, z);
        points.push(match center {
            None => Step::Line(point),
            Some(center) => Step::Arc(point, center),
        });
    }
    let (Step::Line(first) | Step::Arc(first, _)) = points[0];
    sketch.face(matter, first, &points[1..]);
}

fn plain(sketch: &mut Sketch, frame: &Frame, matter: Matter) {
    let (w, h) = (frame.across(), frame.along());
    face(
        sketch,
        frame,
        matter,
        &[Line(0.0, 0.0), Line(w, 0.0), Line(w, h), Line(0.0, h)],
    );
}

/// Content of a rectangle of some matter.
fn insert(chance: &mut Chance, host: Matter) -> Matter {
    match chance.below(6) {
        0 => Matter::High,
        1 => Matter::Low,
        2 => Matter::Floating(chance.below(1000) as u16),
        3 => Matter::Absent,
        _ => match host {
            Matter::Body(body) => Matter::Body(body + 1),
            other => other,
        },
    }
}

/// Least side of a rectangle that is filled, mm.
const SIDE_LEAST: f64 = 0.01;

/// Fills a rectangle with a random content, and parts of it in the same way, `depth` times.
pub(crate) fn fill(
    sketch: &mut Sketch,
    chance: &mut Chance,
    frame: Frame,
    host: Matter,
    depth: usize,
) {
    let frame = frame.any_way(chance);
    let (w, h) = (frame.across(), frame.along());
    if w.min(h) < SIDE_LEAST || chance.is(0.1) {
        return plain(sketch, &frame, host);
    }
    let other = insert(chance, host);
    if depth > 0 && chance.is(0.6) {
        let at = cut(chance, w, h);
        let rest = if chance.is(0.5) { host } else { other };
        fill(
            sketch,
            chance,
            frame.part([0.0, 0.0], [at, h]),
            host,
            depth - 1,
        );
        return fill(
            sketch,
            chance,
            frame.part([at, 0.0], [w, h]),
            rest,
            depth - 1,
        );
    }
    match chance.below(12) {
        0 => quarter(sketch, chance, &frame, host, other),
        1 => round_end(sketch, chance, &frame, host, other),
        2 | 3 => trumpet(sketch, chance, &frame, host, other),
        4 => void(sketch, chance, &frame, host, other),
        5 => lens(sketch, chance, &frame, host, other),
        6 => half_void(sketch, chance, &frame, host, other),
        7 => cone(sketch, chance, &frame, host, other),
        8 => ogive(sketch, chance, &frame, host, other),
        9 => bulge(sketch, chance, &frame, host, other),
        10 => twins(sketch, chance, &frame, host, other),
        _ => brush(sketch, chance, &frame, host, other),
    }
}

/// Place where a side is divided: at a film or a step of 1 to 50 µm, or anywhere.
///
/// A strip is at most 100 times as long as thick: thousands of sections must not have too many triangles.
fn cut(chance: &mut Chance, side: f64, length: f64) -> f64 {
    let at = match chance.below(4) {
        0 => chance.log(0.02, 0.1).max(length / 100.0),
        1 => chance.log(0.001, 0.05).max(length / 100.0),
        2 => 0.5 * side,
        _ => side * chance.between(0.05, 0.95),
    };
    let at = if chance.is(0.5) { at } else { side - at };
    rounded(if at > 0.0005 && at < side - 0.0005 {
        at
    } else {
        0.5 * side
    })
}

/// A length as a file holds it, to 1e-9 mm.
pub(crate) fn rounded(length: f64) -> f64 {
    (length * 1e9).round() / 1e9
}

/// A lip: a quarter disc whose arc is tangent to a side, if its radius is the whole width.
pub(crate) fn quarter(
    sketch: &mut Sketch,
    chance: &mut Chance,
    frame: &Frame,
    host: Matter,
    other: Matter,
) {
    let (w, h) = (frame.across(), frame.along());
    let radius = match chance.below(4) {
        0 if w.min(h) > 0.05 => chance.log(0.05, w.min(h)),
        _ => w.min(h),
    };
    let center = [w, 0.0];
    let (low, high) = ([w - radius, 0.0], [w, radius]);
    face(
        sketch,
        frame,
        other,
        &[Line(w, 0.0), Line(w, radius), Arc(low, center)],
    );
    face(
        sketch,
        frame,
        host,
        &[
            Line(0.0, 0.0),
            Line(low[0], 0.0),
            Arc(high, center),
            Line(w, h),
            Line(0.0, h),
        ],
    );
}

/// The end of an electrode with two rounded edges, as thick as the rectangle is wide or thinner.
pub(crate) fn round_end(
    sketch: &mut Sketch,
    chance: &mut Chance,
    frame: &Frame,
    host: Matter,
    other: Matter,
) {
    let (w, h) = (frame.across(), frame.along());
    let edge = |chance: &mut Chance| match chance.below(4) {
        0 | 1 => 0.0,
        2 if w > 0.05 => chance.log(0.001, 0.2 * w),
        _ => w * chance.between(0.05, 0.4),
    };
    let (x0, x1) = (edge(chance), w - edge(chance));
    let thickness = x1 - x0;
    let radius = 0.5
        * thickness
        * if chance.is(0.6) {
            1.0
        } else {
            chance.between(0.1, 0.9)
        };
    if radius > 0.95 * h {
        return plain(sketch, frame, host);
    }
    let end = radius + (0.98 * h - radius) * chance.share();
    let y = end - radius;
    let centers = [[x1 - radius, y], [x0 + radius, y]];
    // With a radius of half the thickness the two arcs meet in one point.
    let tops = if radius == 0.5 * thickness {
        [[0.5 * (x0 + x1), end]; 2]
    } else {
        [[x1 - radius, end], [x0 + radius, end]]
    };
    face(
        sketch,
        frame,
        other,
        &[
            Line(x0, 0.0),
            Line(x1, 0.0),
            Line(x1, y),
            Arc(tops[0], centers[0]),
            Line(tops[1][0], tops[1][1]),
            Arc([x0, y], centers[1]),
        ],
    );
    let mut steps = Vec::new();
    if x0 > 0.0 {
        steps.extend([Line(0.0, 0.0), Line(x0, 0.0)]);
    }
    steps.extend([
        Line(x0, y),
        Arc(tops[1], centers[1]),
        Line(tops[0][0], tops[0][1]),
        Arc([x1, y], centers[0]),
    ]);
    if x1 < w {
        steps.extend([Line(x1, 0.0), Line(w, 0.0)]);
    }
    steps.extend([Line(w, h), Line(0.0, h)]);
    face(sketch, frame, host, &steps);
}

/// A deflector: an arc that leaves a side tangentially, and a rounded tip that continues it.
pub(crate) fn trumpet(
    sketch: &mut Sketch,
    chance: &mut Chance,
    frame: &Frame,
    host: Matter,
    other: Matter,
) {
    let (w, h) = (frame.across(), frame.along());
    let angle = chance.between(0.1, 1.3);
    // As large as fits, or less.
    let tip_share = chance.log(0.01, 0.8);
    let high = 1.0 - (1.0 - tip_share) * angle.cos() + tip_share;
    let long = (1.0 - tip_share) * angle.sin() + tip_share;
    let most = (w / high).min(h / long);
    let radius = if chance.is(0.3) {
        most
    } else {
        most * chance.between(0.2, 0.98)
    };
    let tip = radius * tip_share;
    let start = if chance.is(0.5) {
        0.0
    } else {
        (h - radius * long) * chance.share() * 0.98
    };
    if radius < 0.003 || tip < 0.001 {
        return plain(sketch, frame, host);
    }
    let center = [radius, start];
    let (sine, cosine) = angle.sin_cos();
    let end = [radius * (1.0 - cosine), start + radius * sine];
    let tip_center = [
        radius - (radius - tip) * cosine,
        start + (radius - tip) * sine,
    ];
    let mut top = tip_center[0] + tip;
    if radius == most && w / high <= h / long {
        top = w;
    }
    let on_tip = |angle: f64| {
        [
            tip_center[0] - tip * angle.cos(),
            tip_center[1] + tip * angle.sin(),
        ]
    };
    let mut apex = on_tip(0.5 * std::f64::consts::PI);
    if radius == most && top < w {
        apex[1] = h;
    }
    let back = [top, tip_center[1]];
    let mut electrode = vec![Line(0.0, 0.0), Line(top, 0.0), Line(back[0], back[1])];
    electrode.extend([
        Arc(apex, tip_center),
        Arc(end, tip_center),
        Arc([0.0, start], center),
    ]);
    face(sketch, frame, other, &electrode);
    let mut body = vec![Line(0.0, start), Arc(end, center), Arc(apex, tip_center)];
    body.push(Arc(back, tip_center));
    if top < w {
        body.extend([Line(top, 0.0), Line(w, 0.0)]);
    }
    body.extend([Line(w, h), Line(0.0, h)]);
    face(sketch, frame, host, &body);
}

/// Distance of a round part from a side: it touches, nearly touches, or neither.
fn stand_off(chance: &mut Chance, radius: f64, room: f64) -> f64 {
    let gap = match chance.below(4) {
        0 => 0.0,
        1 => 0.001,
        _ => room * chance.share(),
    };
    radius + if gap <= room { gap } else { 0.0 }
}

/// A round void of four arcs; walls connect it to the sides, so that no region has a hole.
fn void(sketch: &mut Sketch, chance: &mut Chance, frame: &Frame, host: Matter, other: Matter) {
    let (w, h) = (frame.across(), frame.along());
    let radius = 0.5 * w.min(0.95 * h) * chance.between(0.05, 0.98);
    if radius < 0.002 {
        return plain(sketch, frame, host);
    }
    let x = stand_off(chance, radius, w - 2.0 * radius);
    let y = radius + (h - 2.0 * radius) * chance.between(0.01, 0.99);
    disc(sketch, frame, other, [x, y], radius);
    let (center, left, right) = ([x, y], [x - radius, y], [x + radius, y]);
    let (top, bottom) = ([x, y + radius], [x, y - radius]);
    face(
        sketch,
        frame,
        host,
        &[
            Line(0.0, 0.0),
            Line(w, 0.0),
            Line(w, y),
            Line(right[0], right[1]),
            Arc(bottom, center),
            Arc(left, center),
            Line(0.0, y),
        ],
    );
    face(
        sketch,
        frame,
        host,
        &[
            Line(0.0, h),
            Line(0.0, y),
            Line(left[0], left[1]),
            Arc(top, center),
            Arc(right, center),
            Line(w, y),
            Line(w, h),
        ],
    );
}

fn disc(sketch: &mut Sketch, frame: &Frame, matter: Matter, center: [f64; 2], radius: f64) {
    let [x, y] = center;
    face(
        sketch,
        frame,
        matter,
        &[
            Line(x + radius, y),
            Arc([x, y + radius], center),
            Arc([x - radius, y], center),
            Arc([x, y - radius], center),
            Arc([x + radius, y], center),
        ],
    );
}

/// Radius of the arc over half a chord with a sagitta.
fn radius_over(half: f64, sagitta: f64) -> f64 {
    (half * half + sagitta * sagitta) / (2.0 * sagitta)
}

/// A flat void of two arcs across the rectangle.
fn lens(sketch: &mut Sketch, chance: &mut Chance, frame: &Frame, host: Matter, other: Matter) {
    let (w, h) = (frame.across(), frame.along());
    let half = 0.5 * w * chance.between(0.05, 0.98);
    let sagitta = (half * chance.log(0.02, 0.95)).min(0.45 * h);
    if half < 0.002 || sagitta < 0.001 {
        return plain(sketch, frame, host);
    }
    let x = stand_off(chance, half, w - 2.0 * half);
    let y = sagitta + (h - 2.0 * sagitta) * chance.between(0.01, 0.99);
    let depth = radius_over(half, sagitta) - sagitta;
    let (upper, lower) = ([x, y - depth], [x, y + depth]);
    let (left, right) = ([x - half, y], [x + half, y]);
    face(
        sketch,
        frame,
        other,
        &[Line(left[0], y), Arc(right, lower), Arc(left, upper)],
    );
    face(
        sketch,
        frame,
        host,
        &[
            Line(0.0, 0.0),
            Line(w, 0.0),
            Line(w, y),
            Line(right[0], y),
            Arc(left, lower),
            Line(0.0, y),
        ],
    );
    face(
        sketch,
        frame,
        host,
        &[
            Line(0.0, h),
            Line(0.0, y),
            Line(left[0], y),
            Arc(right, upper),
            Line(w, y),
            Line(w, h),
        ],
    );
}

/// Half a void on a side: a whole one if that side is the axis.
fn half_void(sketch: &mut Sketch, chance: &mut Chance, frame: &Frame, host: Matter, other: Matter) {
    let (w, h) = (frame.across(), frame.along());
    let half = 0.5 * h * chance.between(0.05, 0.95);
    let most = half.min(0.999 * w);
    if half < 0.002 || most < 0.002 {
        return plain(sketch, frame, host);
    }
    let y = half + (h - 2.0 * half) * chance.between(0.01, 0.99);
    let (low, high) = ([0.0, y - half], [0.0, y + half]);
    let mut there = Vec::new();
    let mut back = Vec::new();
    if most == half && chance.is(0.5) {
        let center = [0.0, y];
        there.extend([Arc([half, y], center), Arc(high, center)]);
        back.extend([Arc([half, y], center), Arc(low, center)]);
    } else {
        let sagitta = (half * chance.log(0.02, 0.95)).min(most);
        let center = [sagitta - radius_over(half, sagitta), y];
        there.push(Arc(high, center));
        back.push(Arc(low, center));
    }
    let start = [Line(low[0], low[1])];
    face(sketch, frame, other, &[&start[..], &there].concat());
    let walls = [
        Line(0.0, 0.0),
        Line(w, 0.0),
        Line(w, h),
        Line(0.0, h),
        Line(high[0], high[1]),
    ];
    face(sketch, frame, host, &[&walls[..], &back].concat());
}

/// A slanted plane: a cone, or a wedge of small angle.
fn cone(sketch: &mut Sketch, chance: &mut Chance, frame: &Frame, host: Matter, other: Matter) {
    let (w, h) = (frame.across(), frame.along());
    let mut ends = [0.0, 0.0];
    ends[1] = match chance.below(3) {
        0 => h * chance.log(0.01, 1.0),
        1 => (w * chance.log(0.005, 0.3)).min(h),
        _ => h,
    };
    if chance.is(0.3) {
        ends[0] = (h - ends[1]) * chance.between(0.1, 1.0);
    }
    if ends[1] < 0.001 || (ends[0] > 0.0 && ends[0] < 0.001) || (ends[0] - ends[1]).abs() < 0.001 {
        return plain(sketch, frame, host);
    }
    face(
        sketch,
        frame,
        other,
        &[
            Line(0.0, 0.0),
            Line(w, 0.0),
            Line(w, ends[1]),
            Line(0.0, ends[0]),
        ],
    );
    face(
        sketch,
        frame,
        host,
        &[
            Line(0.0, h),
            Line(0.0, ends[0]),
            Line(w, ends[1]),
            Line(w, h),
        ],
    );
}

/// Two equal arcs that lead smoothly from one side to the other, tangent to both.
fn ogive(sketch: &mut Sketch, chance: &mut Chance, frame: &Frame, host: Matter, other: Matter) {
    let (w, h) = (frame.across(), frame.along());
    if h <= w {
        return cone(sketch, chance, frame, host, other);
    }
    let length = if chance.is(0.2) {
        h
    } else {
        w + (h - w) * chance.between(0.01, 0.99)
    };
    let start = (h - length) * chance.between(0.05, 0.95);
    let angle = 2.0 * (w / length).atan();
    let radius = length / (2.0 * angle.sin());
    let middle = [0.5 * w, start + 0.5 * length];
    let end = [w, start + length];
    let centers = [[radius, start], [w - radius, start + length]];
    face(
        sketch,
        frame,
        other,
        &[
            Line(0.0, 0.0),
            Line(w, 0.0),
            Line(end[0], end[1]),
            Arc(middle, centers[1]),
            Arc([0.0, start], centers[0]),
        ],
    );
    face(
        sketch,
        frame,
        host,
        &[
            Line(0.0, h),
            Line(0.0, start),
            Arc(middle, centers[0]),
            Arc(end, centers[1]),
            Line(w, h),
        ],
    );
}

/// An arc from side to side, which may just reach the far end.
fn bulge(sketch: &mut Sketch, chance: &mut Chance, frame: &Frame, host: Matter, other: Matter) {
    let (w, h) = (frame.across(), frame.along());
    let y = h * chance.between(0.0, 0.9);
    let touches = 0.45 * w > h - y && chance.is(0.4);
    let sagitta = if touches {
        h - y
    } else {
        (0.48 * w).min(h - y) * chance.between(0.02, 0.99)
    };
    if y < 0.001 || sagitta < 0.001 {
        return plain(sketch, frame, host);
    }
    let center = [0.5 * w, y + sagitta - radius_over(0.5 * w, sagitta)];
    let top = if touches {
        [0.5 * w, h]
    } else {
        [0.5 * w, y + sagitta]
    };
    face(
        sketch,
        frame,
        other,
        &[
            Line(0.0, 0.0),
            Line(w, 0.0),
            Line(w, y),
            Arc(top, center),
            Arc([0.0, y], center),
        ],
    );
    if touches {
        face(
            sketch,
            frame,
            host,
            &[Line(0.0, h), Line(0.0, y), Arc(top, center)],
        );
        face(
            sketch,
            frame,
            host,
            &[Line(w, h), Line(top[0], top[1]), Arc([w, y], center)],
        );
    } else {
        face(
            sketch,
            frame,
            host,
            &[
                Line(0.0, h),
                Line(0.0, y),
                Arc(top, center),
                Arc([w, y], center),
                Line(w, h),
            ],
        );
    }
}

/// Two equal discs one above the other that touch, or stand a micrometre or more apart.
fn twins(sketch: &mut Sketch, chance: &mut Chance, frame: &Frame, host: Matter, other: Matter) {
    let (w, h) = (frame.across(), frame.along());
    let radius = (0.49 * w).min(0.24 * h) * chance.between(0.1, 1.0);
    if radius < 0.01 {
        return plain(sketch, frame, host);
    }
    let gap = [0.0, 0.001, 0.02 * radius][chance.below(3)];
    let x = stand_off(chance, radius, w - 2.0 * radius);
    let low = radius + (h - 4.0 * radius - gap) * chance.between(0.05, 0.95);
    let high = low + 2.0 * radius + gap;
    let (below, above) = ([x, low], [x, high]);
    disc(sketch, frame, other, below, radius);
    disc(sketch, frame, other, above, radius);
    let (left, right) = (x - radius, x + radius);
    let base = [Line(0.0, 0.0), Line(w, 0.0), Line(w, low), Line(right, low)];
    let arcs = [
        Arc([x, low - radius], below),
        Arc([left, low], below),
        Line(0.0, low),
    ];
    face(
        sketch,
        frame,
        host,
        &[base, [arcs[0], arcs[1], arcs[2], arcs[2]]].concat(),
    );
    let roof = [
        Line(0.0, h),
        Line(0.0, high),
        Line(left, high),
        Arc([x, high + radius], above),
    ];
    face(
        sketch,
        frame,
        host,
        &[
            roof,
            [
                Arc([right, high], above),
                Line(w, high),
                Line(w, h),
                Line(w, h),
            ],
        ]
        .concat(),
    );
    let tops = [
        [x, low + radius],
        [
            x,
            if gap == 0.0 {
                low + radius
            } else {
                high - radius
            },
        ],
    ];
    let inner = [
        Line(0.0, high),
        Line(0.0, low),
        Line(left, low),
        Arc(tops[0], below),
    ];
    let outer = [
        Arc([right, low], below),
        Line(w, low),
        Line(w, high),
        Line(right, high),
    ];
    let last = [Arc(tops[1], above), Arc([left, high], above)];
    if gap == 0.0 && chance.is(0.5) {
        face(sketch, frame, host, &[&inner[..], &last[1..]].concat());
        face(
            sketch,
            frame,
            host,
            &[&[Line(tops[0][0], tops[0][1])], &outer[..], &last[..1]].concat(),
        );
    } else {
        // At the contact the loop passes twice.
        face(sketch, frame, host, &[&inner[..], &outer, &last].concat());
    }
}

/// Arcs that all leave one corner along one side.
fn brush(sketch: &mut Sketch, chance: &mut Chance, frame: &Frame, host: Matter, other: Matter) {
    let (w, h) = (frame.across(), frame.along());
    let mut radii = vec![w * chance.between(1.0, 1.2)];
    for _ in 0..=chance.below(2) {
        let last = radii[radii.len() - 1];
        radii.push(last * chance.between(1.15, 3.0));
    }
    let ends: Vec<f64> = radii
        .iter()
        .map(|radius| (2.0 * radius * w - w * w).max(0.0).sqrt())
        .collect();
    if ends.iter().any(|end| *end > 0.99 * h) || w < 0.02 {
        return plain(sketch, frame, host);
    }
    let mut before: Option<(f64, [f64; 2])> = None;
    for (position, (&radius, &end)) in radii.iter().zip(&ends).enumerate() {
        let center = [radius, 0.0];
        let matter = if position % 2 == 0 { other } else { host };
        let mut steps = vec![Line(0.0, 0.0)];
        match before {
            None => steps.push(Line(w, 0.0)),
            Some((end, center)) => steps.push(Arc([w, end], center)),
        }
        steps.extend([Line(w, end), Arc([0.0, 0.0], center)]);
        face(sketch, frame, matter, &steps);
        before = Some((end, center));
    }
    if let Some((end, center)) = before {
        let steps = [
            Line(0.0, 0.0),
            Arc([w, end], center),
            Line(w, h),
            Line(0.0, h),
        ];
        face(sketch, frame, host, &steps);
    }
}
