//! Insertion of corners into triangles that are larger than wanted, with flips that keep the triangulation Delaunay.
//!
//! A corner is inserted at the circumcentre of a triangle that is too large, if it is visible from the triangle
//! without crossing a given edge and is far enough from corners and given edges.
//! A fan about the corner replaces the triangles whose circumcircles contain it.
//! No angle is required, and the process ends because every new corner keeps its distance from all others.

use super::triangulation::{NONE, Triangle, Triangulation, area2};
use crate::outline::Point;

/// Greatest circumradius of a triangle, as a share of the wanted size; a triangle with three equal sides has 0.577.
const CIRCLE_RATIO: f64 = 0.8;
/// Least distance of a new corner from others, and from given edges, as shares of the size wanted.
const CORNER_RATIO: f64 = 0.6;
const EDGE_RATIO: f64 = 0.38;
/// Rate at which the wanted size may grow with the distance from a corner.
const GROWTH_RATIO: f64 = 0.3;

/// Corners during insertion; `sizes` holds the wanted edge length at each corner, m.
pub(super) struct Insertion<'t> {
    mesh: &'t mut Triangulation,
    sizes: &'t mut Vec<f64>,
    cavity: Vec<u32>,
    is_in_cavity: Vec<bool>,
    /// Edges round the cavity: corners, triangle across, rim, region inside.
    border: Vec<([u32; 2], u32, u32, u32)>,
    queue: Vec<u32>,
}

/// Inserts corners until no triangle of a region is larger than wanted, or until there are `n_most` corners.
pub(super) fn fill(mesh: &mut Triangulation, sizes: &mut Vec<f64>, n_most: usize) {
    let queue = (0..mesh.triangles.len() as u32).rev().collect();
    let is_in_cavity = vec![false; mesh.triangles.len()];
    let mut insertion = Insertion {
        mesh,
        sizes,
        cavity: Vec::new(),
        is_in_cavity,
        border: Vec::new(),
        queue,
    };
    while let Some(triangle) = insertion.queue.pop() {
        if insertion.mesh.places.len() >= n_most {
            break;
        }
        insertion.refine(triangle);
    }
}

impl Insertion<'_> {
    fn refine(&mut self, start: u32) {
        let triangle = self.mesh.triangles[start as usize];
        if triangle.region == NONE {
            return;
        }
        let corners = triangle.corners.map(|c| self.mesh.places[c as usize]);
        let wanted = triangle
            .corners
            .iter()
            .map(|&c| self.sizes[c as usize])
            .sum::<f64>()
            / 3.0;
        let Some((middle, radius)) = circle(corners) else {
            return;
        };
        if radius <= CIRCLE_RATIO * wanted {
            return;
        }
        let middle_of_longest = longest_middle(corners);
        if !self.put(start, middle) {
            self.put(start, middle_of_longest);
        }
    }

    /// Inserts a corner at a place if it is visible from the triangle `start` and far enough from all others.
    fn put(&mut self, start: u32, place: Point) -> bool {
        let Some(holder) = self.walk(start, place) else {
            return false;
        };
        let triangle = self.mesh.triangles[holder as usize];
        let size = triangle
            .corners
            .iter()
            .map(|&c| {
                let distance = self.mesh.places[c as usize].distance(place);
                self.sizes[c as usize] + GROWTH_RATIO * distance
            })
            .fold(f64::INFINITY, f64::min);
        self.dig(holder, place);
        let is_free = self.is_free(place, size);
        for &t in &self.cavity {
            self.is_in_cavity[t as usize] = false;
        }
        if !is_free {
            return false;
        }
        let corner = self.mesh.places.len() as u32;
        self.mesh.places.push(place);
        self.sizes.push(size);
        self.fan(corner);
        true
    }

    /// The triangle that contains the place, found by walking from `start` without crossing a given edge; `None` if there is none.
    fn walk(&self, start: u32, place: Point) -> Option<u32> {
        let mut here = start;
        for _ in 0..64 {
            let triangle = &self.mesh.triangles[here as usize];
            let outside = (0..3).find(|&side| {
                let a = self.mesh.places[triangle.corners[side] as usize];
                let b = self.mesh.places[triangle.corners[(side + 1) % 3] as usize];
                area2(a, b, place) < 0.0
            });
            match outside {
                None => return Some(here),
                Some(side) if triangle.rims[side] == NONE && triangle.across[side] != NONE => {
                    here = triangle.across[side];
                }
                Some(_) => return None,
            }
        }
        None
    }

    /// Collects the triangles whose circumcircles contain the place, up to given edges, and the border of these triangles.
    fn dig(&mut self, holder: u32, place: Point) {
        self.cavity.clear();
        self.border.clear();
        self.cavity.push(holder);
        self.is_in_cavity[holder as usize] = true;
        let mut next = 0;
        while next < self.cavity.len() {
            let triangle = self.mesh.triangles[self.cavity[next] as usize];
            next += 1;
            for side in 0..3 {
                let other = triangle.across[side];
                if triangle.rims[side] != NONE || other == NONE || self.is_in_cavity[other as usize]
                {
                    continue;
                }
                let corners = self.mesh.triangles[other as usize]
                    .corners
                    .map(|c| self.mesh.places[c as usize]);
                if circle_holds(corners, place) {
                    self.is_in_cavity[other as usize] = true;
                    self.cavity.push(other);
                }
            }
        }
        for &t in &self.cavity {
            let triangle = &self.mesh.triangles[t as usize];
            for side in 0..3 {
                let other = triangle.across[side];
                let is_border = triangle.rims[side] != NONE
                    || other == NONE
                    || !self.is_in_cavity[other as usize];
                if is_border {
                    let ends = [triangle.corners[side], triangle.corners[(side + 1) % 3]];
                    self.border
                        .push((ends, other, triangle.rims[side], triangle.region));
                }
            }
        }
    }

    /// Whether a fan about the place is valid and no corner or given edge is too near.
    fn is_free(&self, place: Point, size: f64) -> bool {
        self.border.iter().all(|&([a, b], _, rim, _)| {
            let (pa, pb) = (self.mesh.places[a as usize], self.mesh.places[b as usize]);
            let length = pa.distance(pb);
            let height = area2(pa, pb, place) / length;
            let least = if rim == NONE {
                1e-3 * length
            } else {
                EDGE_RATIO * size.min(length)
            };
            height > least
                && pa.distance(place) > CORNER_RATIO * size
                && pb.distance(place) > CORNER_RATIO * size
        })
    }

    /// Replaces the cavity by a fan about a new corner.
    fn fan(&mut self, corner: u32) {
        let border = std::mem::take(&mut self.border);
        let n_old = self.cavity.len();
        let slot = |position: usize, cavity: &[u32], n_triangles: usize| -> u32 {
            if position < n_old {
                cavity[position]
            } else {
                (n_triangles + position - n_old) as u32
            }
        };
        let n_triangles = self.mesh.triangles.len();
        let slots: Vec<u32> = (0..border.len())
            .map(|position| slot(position, &self.cavity, n_triangles))
            .collect();
        // A border in one piece has two triangles more than the cavity, so no slot remains.
        self.mesh.triangles.resize(
            n_triangles + border.len() - n_old,
            self.mesh.triangles[self.cavity[0] as usize],
        );
        self.is_in_cavity.resize(self.mesh.triangles.len(), false);
        for (position, &([a, b], other, rim, region)) in border.iter().enumerate() {
            let here = slots[position];
            let after = border.iter().position(|entry| entry.0[0] == b);
            let before = border.iter().position(|entry| entry.0[1] == a);
            self.mesh.triangles[here as usize] = Triangle {
                corners: [a, b, corner],
                across: [
                    other,
                    after.map_or(NONE, |p| slots[p]),
                    before.map_or(NONE, |p| slots[p]),
                ],
                rims: [rim, NONE, NONE],
                region,
            };
            if other != NONE {
                let neighbour = &mut self.mesh.triangles[other as usize];
                for side in 0..3 {
                    if neighbour.corners[side] == b && neighbour.corners[(side + 1) % 3] == a {
                        neighbour.across[side] = here;
                    }
                }
            }
            self.queue.push(here);
        }
        self.border = border;
    }
}

/// Centre and radius of the circumcircle of three places; `None` if they are collinear.
pub(super) fn circle(corners: [Point; 3]) -> Option<(Point, f64)> {
    let [a, b, c] = corners;
    let twice = area2(a, b, c);
    let (br, bz) = (b.r - a.r, b.z - a.z);
    let (cr, cz) = (c.r - a.r, c.z - a.z);
    let (bb, cc) = (br * br + bz * bz, cr * cr + cz * cz);
    let (r, z) = (
        (cz * bb - bz * cc) / (2.0 * twice),
        (br * cc - cr * bb) / (2.0 * twice),
    );
    let radius = r.hypot(z);
    radius
        .is_finite()
        .then_some((Point::new(a.r + r, a.z + z), radius))
}

fn circle_holds(corners: [Point; 3], place: Point) -> bool {
    circle(corners).is_some_and(|(middle, radius)| middle.distance(place) < radius)
}

fn longest_middle(corners: [Point; 3]) -> Point {
    let [a, b, c] = corners;
    let mut longest = (a, b);
    for (p, q) in [(b, c), (c, a)] {
        if p.distance(q) > longest.0.distance(longest.1) {
            longest = (p, q);
        }
    }
    longest.0.towards(longest.1, 0.5)
}
