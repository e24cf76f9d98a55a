//! Sketch: a plane divided into faces, made into a section.
//!
//! Faces are drawn one by one, each as a separate loop.
//! Points are whole picometres, as a file rounds them (1e-9 mm), so that equal places are identical.
//! A line along r or z is divided wherever another face has a point on it, so that neighbours share their curves.

use jointwright_numerics::outline::{Curve, Outline, Point, Region, Shape, Side};
use std::collections::{BTreeMap, BTreeSet};

/// Matter of a face.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Matter {
    /// Carries field; the number chooses its permittivity.
    Body(u8),
    /// A conductor at 1 V.
    High,
    /// A conductor at 0 V.
    Low,
    /// A floating conductor.
    Floating(u16),
    /// No field: its border is a wall without flux.
    Absent,
}

/// A step of a loop: to a point, along a line or about a centre (mm).
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Step {
    Line(usize),
    Arc(usize, [f64; 2]),
}

#[derive(Clone, Copy, Debug, PartialEq)]
struct Edge {
    from: usize,
    to: usize,
    center: Option<[f64; 2]>,
}

/// An edge, regardless of direction.
type Key = (usize, usize, Option<[u64; 2]>);

impl Edge {
    fn key(&self) -> Key {
        let center = self.center.map(|c| c.map(f64::to_bits));
        (self.from.min(self.to), self.from.max(self.to), center)
    }
}

#[derive(Clone, Debug)]
struct Face {
    edges: Vec<Edge>,
    matter: Matter,
}

/// A section with the information that a solve needs.
#[derive(Clone, Debug)]
pub(crate) struct Sample {
    pub outline: Outline,
    /// Relative permittivity of each region.
    pub permittivities: Vec<f64>,
    /// Tags of the floating conductors.
    pub floating: Vec<String>,
}

/// Tag of curves at 1 V.
pub(crate) const HIGH: &str = "high";
/// Tag of curves at 0 V.
pub(crate) const LOW: &str = "low";

/// Matter beyond a border between two places, mm.
pub(crate) type Border<'a> = &'a dyn Fn([f64; 2], [f64; 2]) -> Matter;

#[derive(Clone, Debug, Default)]
pub(crate) struct Sketch {
    spots: Vec<[i64; 2]>,
    numbers: BTreeMap<[i64; 2], usize>,
    faces: Vec<Face>,
}

impl Sketch {
    /// The point at a place, mm, rounded to 1e-9 mm.
    pub fn point(&mut self, r: f64, z: f64) -> usize {
        let spot = [(r * 1e9).round() as i64, (z * 1e9).round() as i64];
        // A place computed in two ways may differ in the last digit.
        for near in (0..9).map(|way| [spot[0] + [0, -1, 1][way % 3], spot[1] + [0, -1, 1][way / 3]])
        {
            if let Some(&number) = self.numbers.get(&near) {
                return number;
            }
        }
        self.numbers.insert(spot, self.spots.len());
        self.spots.push(spot);
        self.spots.len() - 1
    }

    /// Draws a face from its first point on; steps without length are left out.
    pub fn face(&mut self, matter: Matter, first: usize, steps: &[Step]) {
        let mut edges = Vec::new();
        let mut from = first;
        let back = [Step::Line(first)];
        for step in steps.iter().chain(&back) {
            let (to, center) = match *step {
                Step::Line(to) => (to, None),
                Step::Arc(to, center) => (to, Some(center)),
            };
            if to != from {
                edges.push(Edge { from, to, center });
            }
            from = to;
        }
        self.faces.push(Face { edges, matter });
    }

    fn place(&self, point: usize) -> [f64; 2] {
        self.spots[point].map(|x| x as f64 / 1e9)
    }

    /// Divides lines along r or z at every point that lies on them.
    fn divide_lines(&mut self) {
        let used: BTreeSet<usize> = self
            .faces
            .iter()
            .flat_map(|face| face.edges.iter().map(|edge| edge.from))
            .collect();
        let mut on: [BTreeMap<i64, Vec<(i64, usize)>>; 2] = Default::default();
        for &point in &used {
            for axis in 0..2 {
                let spot = self.spots[point];
                let row = on[axis].entry(spot[axis]).or_default();
                row.push((spot[1 - axis], point));
            }
        }
        for row in on.iter_mut().flat_map(|rows| rows.values_mut()) {
            row.sort_unstable();
        }
        let spots = &self.spots;
        for face in &mut self.faces {
            let mut edges = Vec::new();
            for edge in &face.edges {
                let (from, to) = (spots[edge.from], spots[edge.to]);
                let axis = (0..2).find(|&axis| from[axis] == to[axis]);
                let (None, Some(axis)) = (edge.center, axis) else {
                    edges.push(*edge);
                    continue;
                };
                let (low, high) = (
                    from[1 - axis].min(to[1 - axis]),
                    from[1 - axis].max(to[1 - axis]),
                );
                let mut between: Vec<usize> = on[axis][&from[axis]]
                    .iter()
                    .filter(|(along, _)| low < *along && *along < high)
                    .map(|(_, point)| *point)
                    .collect();
                if from[1 - axis] > to[1 - axis] {
                    between.reverse();
                }
                let mut before = edge.from;
                for point in between.into_iter().chain([edge.to]) {
                    edges.push(Edge {
                        from: before,
                        to: point,
                        center: None,
                    });
                    before = point;
                }
            }
            face.edges = edges;
        }
    }

    /// Faces of each edge.
    fn beside(&self) -> BTreeMap<Key, Vec<usize>> {
        let mut beside: BTreeMap<Key, Vec<usize>> = BTreeMap::new();
        for (index, face) in self.faces.iter().enumerate() {
            for edge in &face.edges {
                beside.entry(edge.key()).or_default().push(index);
            }
        }
        beside
    }

    /// Merges conductors that touch others of another potential into bodies.
    fn part_conductors(&mut self, border: Border<'_>) {
        let mut taken: BTreeMap<usize, Matter> = BTreeMap::new();
        for (key, faces) in self.beside() {
            if faces.len() == 1 {
                let matter = border(self.place(key.0), self.place(key.1));
                if !matches!(matter, Matter::Absent | Matter::Body(_)) {
                    taken.insert(key.0, matter);
                    taken.insert(key.1, matter);
                }
            }
        }
        for face in &mut self.faces {
            if matches!(face.matter, Matter::Absent | Matter::Body(_)) {
                continue;
            }
            let is_free = face.edges.iter().all(|edge| {
                taken
                    .get(&edge.from)
                    .is_none_or(|matter| *matter == face.matter)
            });
            if is_free {
                taken.extend(face.edges.iter().map(|edge| (edge.from, face.matter)));
            } else {
                face.matter = Matter::Body(3);
            }
        }
    }

    /// Joins neighbours of the same matter whose common edges are one run of both loops, if `chance` says so.
    fn merge(&mut self, chance: &mut dyn FnMut() -> bool) {
        for (_, faces) in self.beside() {
            let &[one, other] = &faces[..] else { continue };
            // A face that was joined to another has no edges left.
            let is_same = one != other && self.faces[one].matter == self.faces[other].matter;
            if is_same
                && matches!(self.faces[one].matter, Matter::Body(_))
                && chance()
                && let Some(edges) = joined(&self.faces[one].edges, &self.faces[other].edges)
            {
                self.faces[one].edges = edges;
                self.faces[other].edges.clear();
            }
        }
        self.faces.retain(|face| !face.edges.is_empty());
    }

    /// Joins two lines along r or z that meet where no other curve ends, if `chance` says so.
    fn straighten(&mut self, border: Border<'_>, chance: &mut dyn FnMut() -> bool) {
        let mut ends: BTreeMap<usize, BTreeSet<Key>> = BTreeMap::new();
        let beside = self.beside();
        for key in beside.keys() {
            ends.entry(key.0).or_default().insert(*key);
            ends.entry(key.1).or_default().insert(*key);
        }
        for (point, keys) in ends {
            let straight = |axis: usize| {
                keys.iter().all(|key| {
                    key.2.is_none() && self.spots[key.0][axis] == self.spots[key.1][axis]
                })
            };
            if keys.len() != 2 || !(straight(0) || straight(1)) || !chance() {
                continue;
            }
            let matters: BTreeSet<Matter> = keys
                .iter()
                .map(|key| border(self.place(key.0), self.place(key.1)))
                .collect();
            if matters.len() > 1 && keys.iter().any(|key| beside[key].len() == 1) {
                continue;
            }
            for face in &mut self.faces {
                let n_edges = face.edges.len();
                if let Some(at) = face.edges.iter().position(|edge| edge.to == point) {
                    let next = (at + 1) % n_edges;
                    face.edges[at].to = face.edges[next].to;
                    face.edges.remove(next);
                }
            }
        }
    }

    /// Makes the section, or `None` if it has no field; the last argument decides the chances.
    pub fn sample(
        mut self,
        border: Border<'_>,
        chance: &mut dyn FnMut() -> bool,
    ) -> Option<Sample> {
        self.divide_lines();
        self.part_conductors(border);
        self.merge(chance);
        self.straighten(border, chance);
        let kept = self.kept(border);
        let beside = self.beside();
        let mut sample = Sample {
            outline: Outline::default(),
            permittivities: Vec::new(),
            floating: Vec::new(),
        };
        let mut floating = BTreeSet::new();
        let mut points = BTreeMap::new();
        let mut curves: BTreeMap<Key, (usize, usize)> = BTreeMap::new();
        for &index in &kept {
            let face = &self.faces[index];
            let mut boundary = Vec::new();
            for edge in &face.edges {
                let key = edge.key();
                let outline = &mut sample.outline;
                let (curve_index, from) = *curves.entry(key).or_insert_with(|| {
                    let ends = [edge.from, edge.to].map(|point| {
                        *points.entry(point).or_insert_with(|| {
                            let [r, z] = self.spots[point].map(|x| x as f64 / 1e12);
                            outline.points.push(Point::new(r, z));
                            outline.points.len() - 1
                        })
                    });
                    let other = beside[&key].iter().find(|&&other| other != index);
                    let matter = match other {
                        None => border(self.place(edge.from), self.place(edge.to)),
                        Some(other) => self.faces[*other].matter,
                    };
                    outline.curves.push(Curve {
                        from: ends[0],
                        to: ends[1],
                        shape: match edge.center {
                            None => Shape::Line,
                            Some([r, z]) => Shape::Arc {
                                center: Point::new(r / 1e3, z / 1e3),
                            },
                        },
                        tag: tag(matter, &mut floating),
                    });
                    (outline.curves.len() - 1, edge.from)
                });
                boundary.push(Side {
                    curve_index,
                    is_reversed: from != edge.from,
                });
            }
            let Matter::Body(body) = face.matter else {
                continue;
            };
            let name = format!("region {index}");
            sample.outline.regions.push(Region { name, boundary });
            sample
                .permittivities
                .push([1.0, 2.3, 3.0, 5.0, 20.0][usize::from(body) % 5]);
        }
        sample.floating = floating.into_iter().collect();
        (!kept.is_empty() && !has_doubtful_touch(&sample.outline)).then_some(sample)
    }

    /// The bodies of connected parts that touch both potentials.
    fn kept(&self, border: Border<'_>) -> Vec<usize> {
        let mut root: Vec<usize> = (0..self.faces.len()).collect();
        let mut touches: Vec<[bool; 2]> = vec![[false; 2]; self.faces.len()];
        let is_body = |index: usize| matches!(self.faces[index].matter, Matter::Body(_));
        for (key, faces) in self.beside() {
            let bodies: Vec<usize> = faces
                .iter()
                .copied()
                .filter(|&face| is_body(face))
                .collect();
            if bodies.len() == 2 {
                let (kept, gone) = (root[bodies[0]], root[bodies[1]]);
                for entry in &mut root {
                    if *entry == gone {
                        *entry = kept;
                    }
                }
            }
            let beyond = match faces[..] {
                [_] => border(self.place(key.0), self.place(key.1)),
                _ => faces
                    .iter()
                    .map(|&face| self.faces[face].matter)
                    .find(|matter| !matches!(matter, Matter::Body(_)))
                    .unwrap_or(Matter::Absent),
            };
            for body in bodies {
                touches[body][0] |= beyond == Matter::High;
                touches[body][1] |= beyond == Matter::Low;
            }
        }
        let is_kept = |index: usize| {
            (0..2).all(|which| {
                (0..self.faces.len())
                    .any(|other| root[other] == root[index] && touches[other][which])
            })
        };
        (0..self.faces.len())
            .filter(|&index| is_body(index) && is_kept(index))
            .collect()
    }
}

/// Whether a point is so close to an arc that it might be meant to lie on it: such a drawing would be a mistake.
fn has_doubtful_touch(outline: &Outline) -> bool {
    outline.curves.iter().any(|curve| {
        let Shape::Arc { center } = curve.shape else {
            return false;
        };
        let (from, to) = (outline.points[curve.from], outline.points[curve.to]);
        let (radius, turn) = (curve.radius(from, to), curve.turn(from, to));
        let middle = curve.place(from, to, 0.5);
        outline.points.iter().enumerate().any(|(index, point)| {
            let is_end = index == curve.from || index == curve.to;
            let is_near_circle = (point.distance(center) - radius).abs() < 1e-8;
            let chord = 2.0 * radius * (0.25 * turn.abs()).sin();
            !is_end && is_near_circle && point.distance(middle) < chord
        })
    })
}

fn tag(matter: Matter, floating: &mut BTreeSet<String>) -> String {
    match matter {
        Matter::High => HIGH.to_owned(),
        Matter::Low => LOW.to_owned(),
        Matter::Floating(number) => {
            let tag = format!("floating {number}");
            floating.insert(tag.clone());
            tag
        }
        Matter::Body(_) => "face".to_owned(),
        Matter::Absent => "interior".to_owned(),
    }
}

/// The loop round two loops with one common run of edges; `None` if they have more runs, or if the run is all of one loop.
fn joined(one: &[Edge], other: &[Edge]) -> Option<Vec<Edge>> {
    let of_one: BTreeSet<Key> = one.iter().map(Edge::key).collect();
    let of_other: BTreeSet<Key> = other.iter().map(Edge::key).collect();
    let rest = |edges: &[Edge], keys: &BTreeSet<Key>| -> Option<Vec<Edge>> {
        let n_edges = edges.len();
        let is_common: Vec<bool> = edges
            .iter()
            .map(|edge| keys.contains(&edge.key()))
            .collect();
        let starts: Vec<usize> = (0..n_edges)
            .filter(|&at| !is_common[at] && is_common[(at + n_edges - 1) % n_edges])
            .collect();
        let [start] = starts[..] else { return None };
        let n_rest = is_common.iter().filter(|is_common| !**is_common).count();
        Some(
            (0..n_rest)
                .map(|step| edges[(start + step) % n_edges])
                .collect(),
        )
    };
    let mut edges = rest(one, &of_other)?;
    let mut others = rest(other, &of_one)?;
    if edges.last()?.to != others.first()?.from {
        // The other loop has the opposite direction.
        others = others
            .iter()
            .rev()
            .map(|edge| Edge {
                from: edge.to,
                to: edge.from,
                ..*edge
            })
            .collect();
    }
    if edges.last()?.to != others.first()?.from || others.last()?.to != edges.first()?.from {
        return None;
    }
    edges.extend(others);
    Some(edges)
}
