//! Random sections that are valid by construction: joints of cables and similar shapes, and partitions without a trade.

use super::patches::{Frame, fill, quarter, round_end, rounded, trumpet};
use super::sketch::{Matter, Sample, Sketch, Step};
use rand::{Rng, SeedableRng};
use rand_chacha::ChaCha8Rng;

/// Random numbers from a seed.
pub(crate) struct Chance(ChaCha8Rng);

impl Chance {
    pub fn new(seed: u64) -> Self {
        Self(ChaCha8Rng::seed_from_u64(seed))
    }

    /// From 0 to 1, 1 left out.
    pub fn share(&mut self) -> f64 {
        // The upper 53 bits fill a mantissa.
        (self.0.next_u64() >> 11) as f64 / 9_007_199_254_740_992.0
    }

    pub fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.share()
    }

    /// Between two lengths, with every decade equally likely.
    pub fn log(&mut self, low: f64, high: f64) -> f64 {
        low * (high / low).powf(self.share())
    }

    pub fn below(&mut self, n: usize) -> usize {
        (self.share() * n as f64) as usize
    }

    pub fn is(&mut self, probability: f64) -> bool {
        self.share() < probability
    }
}

/// The section of a seed; if it has no field, the next seed's section.
pub(crate) fn sample(seed: u64) -> Sample {
    let mut chance = Chance::new(seed);
    loop {
        let drawn = match chance.below(10) {
            0..=4 => joint(&mut chance),
            5..=7 => rectangle(&mut chance),
            8 => strips(&mut chance),
            _ => fan(&mut chance),
        };
        if let Some(sample) = drawn {
            return sample;
        }
    }
}

const BODY: Matter = Matter::Body(1);
const RUBBER: Matter = Matter::Body(2);
const FILM: Matter = Matter::Body(0);

/// Matter beyond the four sides of a rectangle: least r, greatest r, least z, greatest z.
fn sides(
    low: [f64; 2],
    high: [f64; 2],
    beyond: [Matter; 4],
) -> impl Fn([f64; 2], [f64; 2]) -> Matter {
    move |a, b| {
        let is_on = |axis: usize, at: f64| a[axis] == b[axis] && (a[axis] - at).abs() < 1e-8;
        let found = [
            is_on(0, low[0]),
            is_on(0, high[0]),
            is_on(1, low[1]),
            is_on(1, high[1]),
        ];
        found
            .iter()
            .position(|is| *is)
            .map_or(Matter::Absent, |side| beyond[side])
    }
}

/// Roughly half a joint: insulation, a layer as thick as the screen or a film, a deflector's room, a body.
///
/// ```text
///   r ^  body     | body       | body      | body         outer
///     |  deflector| deflector  | trumpet   | body
///     |  screen   | lip + film | film      | film         layer
///     |  insulation ...                      electrode?
///     +---------------------------------------------> z
/// ```
fn joint(chance: &mut Chance) -> Option<Sample> {
    let mut sketch = Sketch::default();
    let inner = if chance.is(0.15) {
        0.0
    } else {
        rounded(chance.log(2.0, 25.0))
    };
    let wall = chance.log(1.5, 20.0);
    let screen = if chance.is(0.3) {
        chance.log(0.02, 0.1)
    } else {
        chance.log(0.1, 3.0)
    };
    // The film is as thick as the screen, or thinner, or absent.
    let film = [screen, screen, screen * chance.log(0.05, 0.9), 0.0][chance.below(4)];
    let room = chance.log(1.0, 15.0);
    let rest = chance.log(1.0, 30.0);
    let radii = [0.0, wall, screen, room, rest].map(rounded);
    let lengths: Vec<f64> = (0..3 + chance.below(4))
        .map(|_| chance.log(0.5, 60.0))
        .collect();
    // Few sections are as long in proportion to their films as real ones, so that thousands can be solved.
    let thinnest = if film > 0.0 { film.min(screen) } else { screen };
    let longest = thinnest * if chance.is(0.02) { 1500.0 } else { 60.0 };
    let whole: f64 = lengths.iter().sum();
    let shrunk = |length: f64| rounded((length * (longest / whole).min(1.0)).max(0.05));
    let lengths: Vec<f64> = lengths.into_iter().map(shrunk).collect();
    let tracks: Vec<f64> = radii
        .iter()
        .scan(inner, |r, width| {
            *r += width;
            Some(rounded(*r))
        })
        .collect();
    let mut z = rounded(-chance.between(0.0, 50.0));
    let first = z;
    let (end, heel) = (chance.below(2), chance.below(3));
    for (cell, &length) in lengths.iter().enumerate() {
        let frame = |track: usize| {
            Frame::new(
                tracks[track],
                z,
                [tracks[track + 1] - tracks[track], length],
            )
        };
        insulation(
            &mut sketch,
            chance,
            frame(0),
            inner == 0.0 && cell == 0,
            cell + 1 == lengths.len(),
        );
        layer(
            &mut sketch,
            chance,
            frame(1),
            film,
            [cell < end, cell == end],
        );
        deflector(&mut sketch, chance, frame(2), [cell < heel, cell == heel]);
        if chance.is(0.2) {
            fill(&mut sketch, chance, frame(3), RUBBER, 1);
        } else {
            plain(&mut sketch, frame(3), RUBBER);
        }
        z = rounded(z + length);
    }
    let conductor = if inner == 0.0 {
        Matter::Absent
    } else {
        Matter::High
    };
    let beyond = [conductor, Matter::Low, Matter::Absent, Matter::Absent];
    let border = sides([tracks[0], first], [tracks[4], z], beyond);
    let probability = chance.share();
    sketch.sample(&border, &mut || chance.is(probability))
}

fn plain(sketch: &mut Sketch, frame: Frame, matter: Matter) {
    let [w, h] = frame.size;
    let corners = [[0.0, 0.0], [w, 0.0], [w, h], [0.0, h]]
        .map(|[x, y]| sketch.point(frame.r + x, frame.z + y));
    sketch.face(
        matter,
        corners[0],
        &corners[1..]
            .iter()
            .map(|&point| Step::Line(point))
            .collect::<Vec<_>>(),
    );
}

fn insulation(
    sketch: &mut Sketch,
    chance: &mut Chance,
    frame: Frame,
    is_conductor: bool,
    is_last: bool,
) {
    if is_conductor {
        // A section that reaches the axis has its conductor end there.
        plain(sketch, frame, Matter::High);
    } else if chance.is(0.15) || (is_last && chance.is(0.3)) {
        fill(sketch, chance, frame, BODY, 1);
    } else {
        plain(sketch, frame, BODY);
    }
}

/// The layer on the insulation: the screen, its lip, or a film below the body.
fn layer(
    sketch: &mut Sketch,
    chance: &mut Chance,
    frame: Frame,
    film: f64,
    [is_screen, is_lip]: [bool; 2],
) {
    let [w, h] = frame.size;
    if is_screen {
        return plain(sketch, frame, Matter::Low);
    }
    let host = if film == 0.0 { RUBBER } else { FILM };
    if is_lip && h > w {
        return match chance.below(4) {
            // Square, then the film.
            0 => plain(sketch, frame, Matter::Low),
            1 => quarter(
                sketch,
                chance,
                &frame.mirrored([chance_is(h), false]),
                host,
                Matter::Low,
            ),
            2 => round_end(sketch, chance, &frame, host, Matter::Low),
            _ => quarter(sketch, chance, &frame, host, Matter::Low),
        };
    }
    if film < w && film > 0.0005 {
        let inner = Frame {
            size: [rounded(film), h],
            ..frame
        };
        let outer = Frame {
            r: frame.r + rounded(film),
            size: [w - rounded(film), h],
            ..frame
        };
        plain(sketch, inner, FILM);
        plain(sketch, outer, RUBBER);
    } else {
        plain(sketch, frame, host);
    }
}

/// Half of all lengths, by their digits.
fn chance_is(length: f64) -> bool {
    (length * 1e6) as i64 % 2 == 0
}

fn deflector(sketch: &mut Sketch, chance: &mut Chance, frame: Frame, [is_heel, is_end]: [bool; 2]) {
    if is_heel {
        plain(sketch, frame, Matter::Low);
    } else if is_end {
        if chance.is(0.7) {
            trumpet(sketch, chance, &frame, RUBBER, Matter::Low);
        } else {
            round_end(sketch, chance, &frame, RUBBER, Matter::Low);
        }
    } else if chance.is(0.25) {
        fill(sketch, chance, frame, RUBBER, 1);
    } else {
        plain(sketch, frame, RUBBER);
    }
}

/// A rectangle of any proportions, filled with anything.
fn rectangle(chance: &mut Chance) -> Option<Sample> {
    let mut sketch = Sketch::default();
    let inner = if chance.is(0.4) {
        0.0
    } else {
        rounded(chance.log(0.05, 100.0))
    };
    let size = match chance.below(5) {
        0 => [chance.log(0.05, 1.0), chance.log(5.0, 20.0)],
        1 => [chance.log(5.0, 20.0), chance.log(0.05, 1.0)],
        _ => [chance.log(0.5, 50.0), chance.log(0.5, 50.0)],
    }
    .map(rounded);
    let z = rounded(chance.between(-100.0, 100.0));
    let frame = Frame::new(inner, z, size);
    fill(&mut sketch, chance, frame, BODY, 3);
    let beyond = if inner == 0.0 || chance.is(0.3) {
        [Matter::Absent, Matter::Absent, Matter::High, Matter::Low]
    } else {
        [Matter::High, Matter::Low, Matter::Absent, Matter::Absent]
    };
    let border = sides([inner, z], [inner + size[0], z + size[1]], beyond);
    let probability = chance.share();
    sketch.sample(&border, &mut || chance.is(probability))
}

/// Turns and moves places so that all lie beyond a radius.
struct Turn {
    cosine: f64,
    sine: f64,
    shift: f64,
}

impl Turn {
    fn new(chance: &mut Chance, places: &[[f64; 2]]) -> Self {
        let (sine, cosine) = chance.between(0.0, std::f64::consts::TAU).sin_cos();
        let mut turn = Self {
            cosine,
            sine,
            shift: 0.0,
        };
        let least = places
            .iter()
            .map(|place| turn.place(*place)[0])
            .fold(f64::INFINITY, f64::min);
        turn.shift = chance.log(0.01, 50.0) - least;
        turn
    }

    fn place(&self, [x, y]: [f64; 2]) -> [f64; 2] {
        [
            self.cosine * x - self.sine * y + self.shift,
            self.sine * x + self.cosine * y,
        ]
    }
}

/// A chain's segment between two columns.
#[derive(Clone, Copy)]
enum Segment {
    Straight,
    /// About a centre, in unturned places.
    Bent([f64; 2]),
}

/// Strips between chains that run from left to right, touch here and there, and bulge.
fn strips(chance: &mut Chance) -> Option<Sample> {
    let (n_chains, n_columns) = (3 + chance.below(4), 2 + chance.below(6));
    let scale = chance.log(0.3, 30.0);
    let mut x = vec![0.0];
    for column in 0..n_columns {
        x.push(x[column] + scale * chance.log(0.05, 1.0));
    }
    let mut y: Vec<Vec<f64>> = vec![
        x.iter()
            .map(|_| scale * chance.between(-0.2, 0.2))
            .collect(),
    ];
    for chain in 1..n_chains {
        let is_outer = chain == 1 || chain + 1 == n_chains;
        let row = (0..=n_columns)
            .map(|column| {
                let gap = match chance.below(6) {
                    0 if !is_outer => 0.0,
                    1 => chance.log(0.001, 0.1),
                    _ => scale * chance.log(0.02, 0.7),
                };
                y[chain - 1][column] + gap
            })
            .collect();
        y.push(row);
    }
    let segments = segments(chance, &x, &y);
    let corners: Vec<[f64; 2]> = y
        .iter()
        .flat_map(|row| x.iter().zip(row).map(|(x, y)| [*x, *y]))
        .collect();
    let turn = Turn::new(chance, &corners);
    let mut sketch = Sketch::default();
    let points: Vec<usize> = corners
        .iter()
        .map(|corner| {
            let [r, z] = turn.place(*corner);
            sketch.point(r, z)
        })
        .collect();
    let n_row = n_columns + 1;
    for chain in 1..n_chains {
        for column in 0..n_columns {
            let [low, high] = [chain - 1, chain].map(|chain| chain * n_row + column);
            if points[low] == points[high] && points[low + 1] == points[high + 1] {
                continue;
            }
            let step = |chain: usize, to: usize| match segments[chain][column] {
                Segment::Straight => Step::Line(to),
                Segment::Bent(center) => Step::Arc(to, turn.place(center)),
            };
            let matter = match chain {
                1 => Matter::High,
                _ if chain + 1 == n_chains => Matter::Low,
                _ => Matter::Body(chance.below(5) as u8),
            };
            let steps = [
                step(chain - 1, points[low + 1]),
                Step::Line(points[high + 1]),
                step(chain, points[high]),
            ];
            sketch.face(matter, points[low], &steps);
        }
    }
    let probability = chance.share();
    sketch.sample(&|_, _| Matter::Absent, &mut || chance.is(probability))
}

/// Bends segments as far as the room to their neighbours allows.
///
/// With a sagitta s, the arc's slope against its chord is at most 4 s over the chord, and its distance from the chord at most s.
/// Two neighbours with less than a quarter each of the angle, and of the room, between them cannot meet.
fn segments(chance: &mut Chance, x: &[f64], y: &[Vec<f64>]) -> Vec<Vec<Segment>> {
    let n_columns = x.len() - 1;
    let mut segments = vec![vec![Segment::Straight; n_columns]; y.len()];
    for chain in 0..y.len() {
        for column in 0..n_columns {
            let room = |one: usize, other: usize| -> f64 {
                let gaps = [0, 1].map(|side| y[other][column + side] - y[one][column + side]);
                gaps[0].max(gaps[1])
                    * if gaps[0].min(gaps[1]) > 0.0 {
                        gaps[0].min(gaps[1]) / gaps[0].max(gaps[1])
                    } else {
                        1.0
                    }
            };
            let mut least = f64::INFINITY;
            if chain > 0 {
                least = least.min(room(chain - 1, chain));
            }
            if chain + 1 < y.len() {
                least = least.min(room(chain, chain + 1));
            }
            let (a, b) = (
                [x[column], y[chain][column]],
                [x[column + 1], y[chain][column + 1]],
            );
            let chord = (a[0] - b[0]).hypot(a[1] - b[1]);
            let slant = (b[0] - a[0]) / chord;
            let sagitta = (0.06 * least * slant * slant).min(0.1 * chord * slant) * chance.share();
            if sagitta < 0.0005 || chance.is(0.3) {
                continue;
            }
            let radius = (0.25 * chord * chord + sagitta * sagitta) / (2.0 * sagitta);
            let depth = (radius - sagitta) * if chance.is(0.5) { 1.0 } else { -1.0 };
            let across = [-(b[1] - a[1]) / chord, (b[0] - a[0]) / chord];
            segments[chain][column] = Segment::Bent([
                0.5 * (a[0] + b[0]) + depth * across[0],
                0.5 * (a[1] + b[1]) + depth * across[1],
            ]);
        }
    }
    segments
}

/// Wedges about one point; some are very thin, and some begin with a zero angle.
fn fan(chance: &mut Chance) -> Option<Sample> {
    let radius = chance.log(0.3, 30.0);
    let n_spokes = 4 + chance.below(6);
    let mut angles = vec![0.0_f64];
    for spoke in 1..n_spokes {
        let step = match chance.below(4) {
            0 => chance.log(0.01, 0.1),
            _ => chance.between(0.1, 0.6),
        };
        angles.push(angles[spoke - 1] + step);
    }
    // An arc tangent to the spoke below may cut off a thin wedge in place of a line.
    let is_bent: Vec<bool> = angles
        .iter()
        .enumerate()
        .map(|(spoke, angle)| spoke > 0 && angle - angles[spoke - 1] < 0.45 && chance.is(0.4))
        .collect();
    let rim: Vec<[f64; 2]> = angles
        .iter()
        .map(|a| [radius * a.cos(), radius * a.sin()])
        .collect();
    let bent_center = |spoke: usize| {
        // On the normal to the tangent at the hub, so that the chord's end lies on the circle.
        let (tangent, half) = (angles[spoke - 1], angles[spoke] - angles[spoke - 1]);
        let own = radius / (2.0 * half.sin());
        [-own * tangent.sin(), own * tangent.cos()]
    };
    let mut corners = rim.clone();
    corners.push([0.0, 0.0]);
    for step in 0..40 {
        let angle = angles[n_spokes - 1] * f64::from(step) / 39.0;
        corners.push([radius * angle.cos(), radius * angle.sin()]);
    }
    let turn = Turn::new(chance, &corners);
    let mut sketch = Sketch::default();
    let points: Vec<usize> = corners[..=n_spokes]
        .iter()
        .map(|corner| {
            let [r, z] = turn.place(*corner);
            sketch.point(r, z)
        })
        .collect();
    let hub = points[n_spokes];
    let to_rim = |spoke: usize, to: usize| {
        if is_bent[spoke] {
            Step::Arc(to, turn.place(bent_center(spoke)))
        } else {
            Step::Line(to)
        }
    };
    for spoke in 1..n_spokes {
        let steps = [
            to_rim(spoke - 1, points[spoke - 1]),
            if chance.is(0.7) {
                Step::Arc(points[spoke], turn.place([0.0, 0.0]))
            } else {
                Step::Line(points[spoke])
            },
            to_rim(spoke, hub),
        ];
        sketch.face(Matter::Body(chance.below(5) as u8), hub, &steps);
    }
    let ends: Vec<[f64; 2]> = [0, 1, n_spokes - 2, n_spokes - 1]
        .map(|spoke| turn.place(rim[spoke]))
        .to_vec();
    let is_at = |place: [f64; 2], end: usize| {
        (place[0] - ends[end][0]).hypot(place[1] - ends[end][1]) < 1e-7
    };
    let border = move |a: [f64; 2], b: [f64; 2]| {
        let joins =
            |i: usize, j: usize| (is_at(a, i) && is_at(b, j)) || (is_at(a, j) && is_at(b, i));
        if joins(0, 1) {
            Matter::High
        } else if joins(2, 3) {
            Matter::Low
        } else {
            Matter::Absent
        }
    };
    let probability = chance.share();
    sketch.sample(&border, &mut || chance.is(0.5 * probability))
}
