//! Improves triangles on the same corners: flips edges, and moves free corners to the mean of their neighbours.

use super::triangulation::{NONE, Triangulation, area2};
use crate::outline::Point;

/// Quality of a triangle, from 0 (flat) to 1 (three equal sides): 2√3 × twice the area ÷ the sum of squared sides.
pub(super) fn quality(a: Point, b: Point, c: Point) -> f64 {
    let squares = [(a, b), (b, c), (c, a)]
        .iter()
        .map(|(p, q)| (p.r - q.r).powi(2) + (p.z - q.z).powi(2))
        .sum::<f64>();
    2.0 * 3.0_f64.sqrt() * area2(a, b, c) / squares
}

/// Flips edges and moves corners, `n_sweeps` times.
pub(super) fn smooth(mesh: &mut Triangulation, n_sweeps: usize) {
    let mut is_free = vec![true; mesh.places.len()];
    for triangle in &mesh.triangles {
        for side in 0..3 {
            if triangle.rims[side] != NONE || triangle.across[side] == NONE {
                is_free[triangle.corners[side] as usize] = false;
                is_free[triangle.corners[(side + 1) % 3] as usize] = false;
            }
        }
    }
    for _ in 0..n_sweeps {
        flip(mesh);
        move_corners(mesh, &is_free);
    }
    flip(mesh);
}

/// Flips edges whose opposite angles add up to more than half a turn.
fn flip(mesh: &mut Triangulation) {
    for _ in 0..3 {
        let mut n_flips = 0;
        for here in 0..mesh.triangles.len() {
            for side in 0..3 {
                n_flips += usize::from(flip_edge(mesh, here, side));
            }
        }
        if n_flips == 0 {
            break;
        }
    }
}

fn flip_edge(mesh: &mut Triangulation, here: usize, side: usize) -> bool {
    let one = mesh.triangles[here];
    let there = one.across[side];
    if one.rims[side] != NONE || there == NONE || one.region == NONE {
        return false;
    }
    let two = mesh.triangles[there as usize];
    let Some(back) = (0..3).find(|&s| two.across[s] == here as u32) else {
        return false;
    };
    // One triangle is (a, b, c) and the other (b, a, d): afterwards (a, d, c) and (d, b, c).
    let [a, b, c] = [0, 1, 2].map(|k| one.corners[(side + k) % 3]);
    let d = two.corners[(back + 2) % 3];
    let place = |corner: u32| mesh.places[corner as usize];
    let [one_sine, one_cosine] = sine_cosine(place(b), place(c), place(a));
    let [two_sine, two_cosine] = sine_cosine(place(a), place(d), place(b));
    // Each of the two angles is below half a turn, so their sum exceeds half a turn exactly if its sine is negative.
    let (former, latter) = (one_sine * two_cosine, one_cosine * two_sine);
    if former + latter >= -1e-9 * (former.abs() + latter.abs())
        || quality(place(a), place(d), place(c)) <= 1e-6
        || quality(place(d), place(b), place(c)) <= 1e-6
    {
        return false;
    }
    let (bc, ca) = ((side + 1) % 3, (side + 2) % 3);
    let (ad, db) = ((back + 1) % 3, (back + 2) % 3);
    let first = &mut mesh.triangles[here];
    first.corners = [a, d, c];
    first.across = [two.across[ad], there, one.across[ca]];
    first.rims = [two.rims[ad], NONE, one.rims[ca]];
    let second = &mut mesh.triangles[there as usize];
    second.corners = [d, b, c];
    second.across = [two.across[db], one.across[bc], here as u32];
    second.rims = [two.rims[db], one.rims[bc], NONE];
    redirect(mesh, two.across[ad], there, here as u32, [d, a]);
    redirect(mesh, one.across[bc], here as u32, there, [c, b]);
    true
}

/// Tells a neighbour which triangle now lies across its edge from `ends[0]` to `ends[1]`.
fn redirect(mesh: &mut Triangulation, neighbour: u32, from: u32, to: u32, ends: [u32; 2]) {
    if neighbour == NONE {
        return;
    }
    let triangle = &mut mesh.triangles[neighbour as usize];
    for side in 0..3 {
        if triangle.across[side] == from
            && triangle.corners[side] == ends[0]
            && triangle.corners[(side + 1) % 3] == ends[1]
        {
            triangle.across[side] = to;
        }
    }
}

/// Sine and cosine of the angle at `at` from the direction of `p` to that of `q`, times both distances.
fn sine_cosine(q: Point, at: Point, p: Point) -> [f64; 2] {
    let (u, v) = ([p.r - at.r, p.z - at.z], [q.r - at.r, q.z - at.z]);
    [u[0] * v[1] - u[1] * v[0], u[0] * v[0] + u[1] * v[1]]
}

/// Moves each free corner to the mean of its neighbours, if its worst triangle then is better, or good.
fn move_corners(mesh: &mut Triangulation, is_free: &[bool]) {
    let rings = Rings::new(mesh);
    for corner in 0..mesh.places.len() {
        let ring = rings.of(corner);
        if !is_free[corner] || ring.is_empty() {
            continue;
        }
        let mut mean = Point::default();
        for &t in ring {
            let corners = mesh.triangles[t as usize].corners;
            let side = corners.iter().position(|&c| c as usize == corner);
            let next = mesh.places[corners[(side.unwrap_or(0) + 1) % 3] as usize];
            mean = Point::new(mean.r + next.r, mean.z + next.z);
        }
        let n_ring = ring.len() as f64;
        let goal = Point::new(mean.r / n_ring, mean.z / n_ring);
        let old = mesh.places[corner];
        let before = worst(mesh, ring);
        mesh.places[corner] = goal;
        let after = worst(mesh, ring);
        if after < before && after < 0.6 {
            mesh.places[corner] = old;
        }
    }
}

fn worst(mesh: &Triangulation, ring: &[u32]) -> f64 {
    ring.iter()
        .map(|&t| {
            let [a, b, c] = mesh.triangles[t as usize]
                .corners
                .map(|corner| mesh.places[corner as usize]);
            quality(a, b, c)
        })
        .fold(f64::INFINITY, f64::min)
}

/// Indices of the triangles about each corner.
struct Rings {
    starts: Vec<u32>,
    triangles: Vec<u32>,
}

impl Rings {
    fn new(mesh: &Triangulation) -> Self {
        let mut starts = vec![0_u32; mesh.places.len() + 1];
        let inside = || {
            mesh.triangles
                .iter()
                .enumerate()
                .filter(|(_, t)| t.region != NONE)
        };
        for (_, triangle) in inside() {
            for corner in triangle.corners {
                starts[corner as usize + 1] += 1;
            }
        }
        for corner in 0..mesh.places.len() {
            starts[corner + 1] += starts[corner];
        }
        let mut next = starts.clone();
        let mut triangles = vec![0; starts[mesh.places.len()] as usize];
        for (index, triangle) in inside() {
            for corner in triangle.corners {
                triangles[next[corner as usize] as usize] = index as u32;
                next[corner as usize] += 1;
            }
        }
        Self { starts, triangles }
    }

    fn of(&self, corner: usize) -> &[u32] {
        &self.triangles[self.starts[corner] as usize..self.starts[corner + 1] as usize]
    }
}
