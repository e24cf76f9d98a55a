//! Builds a mesh from an outline.

use super::divide::{Division, divide};
use super::quadratic::{RimEdge, folded, quadratic};
use super::regions::{mark, sides};
use super::size::Sizes;
use super::triangulation::{Clash, NONE, Triangulation, area2, triangulate};
use super::{Mesh, MeshError, insert, smooth};
use crate::outline::{Outline, Point};

/// Greatest number of rounds of dividing the curves before the outline is given up.
const ROUNDS_MOST: usize = 40;
/// Greatest number of these rounds that may split edges only for their length.
const ROUNDS_OF_SIZE: usize = 25;
/// Greatest number of edges on all curves together.
const EDGES_MOST: usize = 60_000;
/// Greatest ratio of an edge to the next one on its curve.
const NEXT_RATIO: f64 = 2.6;
/// Greatest ratio of the two sides of one corner in a triangle, whatever the angle.
const CORNER_SIDES_RATIO: f64 = 1.5;

/// Fineness of the first mesh.
#[derive(Clone, Debug, PartialEq)]
pub struct MeshOptions {
    /// Scale of every size that the geometry alone sets: 1 is usual, a smaller value is finer.
    pub fineness: f64,
    /// Greatest number of corners.
    pub n_corners_most: usize,
    /// Places where edges shall not be longer than given, m; the permitted length grows with the distance.
    pub fine: Vec<(Point, f64)>,
}

impl Default for MeshOptions {
    fn default() -> Self {
        Self {
            fineness: 1.0,
            n_corners_most: 200_000,
            fine: Vec::new(),
        }
    }
}

/// Curves of an outline as edges between places.
struct Edges {
    places: Vec<Point>,
    /// Corners of each edge, with the one nearer the beginning of its curve first.
    ends: Vec<[u32; 2]>,
    /// Curve of each edge, and position of the edge in the division of that curve.
    curve_of: Vec<u32>,
    position_of: Vec<u32>,
}

/// Meshes an outline.
///
/// Triangles are quadratic; an edge on an arc has its mid-node on the arc.
///
/// # Assumes
/// The outline has no flaw.
/// An outline with a flaw may be refused, or meshed as it is drawn, but causes no panic.
///
/// # Errors
/// [`MeshError`] names two curves and a place where no triangles fit between them.
pub fn build(outline: &Outline, options: &MeshOptions) -> Result<Mesh, MeshError> {
    let sizes = Sizes::new(outline, options.fineness, &options.fine);
    if !(sizes.box_sides[0] > 0.0 && sizes.box_sides[1].is_finite()) {
        return Err(MeshError::Flat);
    }
    let sides = sides(outline);
    let mut divisions = divide(outline, &sizes);
    let mut trouble = None;
    for round in 0..ROUNDS_MOST {
        let edges = edges(outline, &divisions);
        let n_edges = edges.ends.len();
        if n_edges > EDGES_MOST {
            return Err(trouble.unwrap_or_else(|| too_fine(outline, &edges)));
        }
        let mut mesh = match triangulate(&edges.places, &edges.ends) {
            Ok(mesh) => mesh,
            Err(Clash::Points) => return Err(together(outline, &edges)),
            Err(Clash::Edges(lost)) => {
                trouble = Some(part(outline, &mut divisions, &edges, &lost));
                continue;
            }
        };
        let starts: Vec<u32> = edges.ends.iter().map(|ends| ends[0]).collect();
        if let Err(triangle) = mark(&mut mesh, &sides, &edges.curve_of, &starts) {
            trouble = Some(unravel(outline, &mut divisions, &edges, &mesh, triangle));
            continue;
        }
        // Long edges give poor triangles, but valid ones.
        let may_split = round < ROUNDS_OF_SIZE && n_edges < EDGES_MOST / 2;
        if may_split && split_long(&mesh, &edges, &mut divisions, &sizes) {
            continue;
        }
        let mut rim_sizes = rim_sizes(&edges);
        insert::fill(&mut mesh, &mut rim_sizes, options.n_corners_most);
        smooth::smooth(&mut mesh, 3);
        let built = finish(outline, &divisions, &edges, &mesh);
        match split_bent(outline, &built, &mut divisions) {
            None => return Ok(built),
            Some(found) => trouble = Some(found),
        }
    }
    Err(trouble.unwrap_or(MeshError::Flat))
}

fn too_fine(outline: &Outline, edges: &Edges) -> MeshError {
    let length = |edge: usize| {
        let [a, b] = edges.ends[edge].map(|corner| edges.places[corner as usize]);
        a.distance(b)
    };
    let shortest = (0..edges.ends.len()).min_by(|&a, &b| length(a).total_cmp(&length(b)));
    let place = middle(edges, shortest.unwrap_or(0));
    MeshError::TooFine {
        curves: nearest_curves(outline, place),
        place,
        n_edges: EDGES_MOST,
    }
}

/// Names the two corners that lie nearest together among neighbours in the order of r.
fn together(outline: &Outline, edges: &Edges) -> MeshError {
    let mut places = edges.places.clone();
    places.sort_by(|a, b| a.r.total_cmp(&b.r).then(a.z.total_cmp(&b.z)));
    let nearest = places
        .windows(2)
        .min_by(|a, b| a[0].distance(a[1]).total_cmp(&b[0].distance(b[1])));
    let place = nearest.map_or(places[0], |pair| pair[0]);
    MeshError::Together {
        curves: nearest_curves(outline, place),
        place,
    }
}

/// The two curves nearest to a place; only for messages, so sampling many places is accurate enough.
fn nearest_curves(outline: &Outline, place: Point) -> [usize; 2] {
    const N_LOOKS: usize = 64;
    let mut found: Vec<(f64, usize)> = (0..outline.curves.len())
        .map(|curve_index| {
            let nearest = (0..=N_LOOKS)
                .map(|look| outline.place(curve_index, look as f64 / N_LOOKS as f64))
                .fold(f64::INFINITY, |nearest, at| nearest.min(at.distance(place)));
            (nearest, curve_index)
        })
        .collect();
    found.sort_by(|a, b| a.0.total_cmp(&b.0));
    [0, 1].map(|rank| found.get(rank).or(found.first()).map_or(0, |entry| entry.1))
}

fn edges(outline: &Outline, divisions: &[Division]) -> Edges {
    let mut number = vec![NONE; outline.points.len()];
    let mut edges = Edges {
        places: Vec::new(),
        ends: Vec::new(),
        curve_of: Vec::new(),
        position_of: Vec::new(),
    };
    for (curve_index, division) in divisions.iter().enumerate() {
        let curve = &outline.curves[curve_index];
        let [from, to] = [curve.from, curve.to].map(|point| {
            if number[point] == NONE {
                number[point] = edges.places.len() as u32;
                edges.places.push(outline.points[point]);
            }
            number[point]
        });
        let n_edges = division.shares.len() - 1;
        let mut before = from;
        for position in 0..n_edges {
            let after = if position + 1 == n_edges {
                to
            } else {
                edges
                    .places
                    .push(outline.place(curve_index, division.shares[position + 1]));
                edges.places.len() as u32 - 1
            };
            edges.ends.push([before, after]);
            edges.curve_of.push(curve_index as u32);
            edges.position_of.push(position as u32);
            before = after;
        }
    }
    edges
}

/// Splits the edges that could not be kept and the edges that cross them; returns the fault found.
fn part(outline: &Outline, divisions: &mut [Division], edges: &Edges, lost: &[usize]) -> MeshError {
    let mut is_marked = vec![false; edges.ends.len()];
    let mut trouble = MeshError::Flat;
    for &edge in lost {
        is_marked[edge] = true;
        let others: Vec<usize> = (0..edges.ends.len())
            .filter(|&other| other != edge && stands_in_way(edges, edge, other))
            .collect();
        let curve = edges.curve_of[edge] as usize;
        let place = middle(edges, edge);
        let mut on = others.iter().map(|&other| edges.curve_of[other] as usize);
        trouble = MeshError::Crossing {
            curves: on
                .find(|&other| other != curve)
                .map_or_else(|| nearest_curves(outline, place), |other| [curve, other]),
            place,
        };
        for other in others {
            is_marked[other] = true;
        }
    }
    split(divisions, edges, &is_marked);
    trouble
}

/// Splits the edges about a triangle that would lie in two regions: there, a chord has the corner of another curve on its wrong side.
fn unravel(
    outline: &Outline,
    divisions: &mut [Division],
    edges: &Edges,
    mesh: &Triangulation,
    triangle: u32,
) -> MeshError {
    let mut is_marked = vec![false; edges.ends.len()];
    let here = mesh.triangles[triangle as usize];
    let meets = |corners: &[u32; 3]| corners.iter().any(|corner| here.corners.contains(corner));
    let about = mesh.triangles.iter().filter(|other| meets(&other.corners));
    for rim in about
        .flat_map(|other| other.rims)
        .filter(|&rim| rim != NONE)
    {
        is_marked[rim as usize] = true;
    }
    split(divisions, edges, &is_marked);
    let [a, b, c] = here.corners.map(|corner| mesh.places[corner as usize]);
    let place = Point::new((a.r + b.r + c.r) / 3.0, (a.z + b.z + c.z) / 3.0);
    MeshError::Unglued {
        curves: nearest_curves(outline, place),
        place,
    }
}

/// Whether another edge crosses this one or has a corner on it.
fn stands_in_way(edges: &Edges, edge: usize, other: usize) -> bool {
    let [a, b] = edges.ends[edge];
    let [c, d] = edges.ends[other];
    let place = |corner: u32| edges.places[corner as usize];
    let (pa, pb, pc, pd) = (place(a), place(b), place(c), place(d));
    let near = 1e-9 * pa.distance(pb) * pa.distance(pb);
    let (sc, sd) = (area2(pa, pb, pc), area2(pa, pb, pd));
    let (sa, sb) = (area2(pc, pd, pa), area2(pc, pd, pb));
    let is_beside = |s: f64, t: f64| (s > near && t > near) || (s < -near && t < -near);
    let shares_end = a == c || a == d || b == c || b == d;
    let along = |p: Point| {
        let length = pa.distance(pb);
        ((p.r - pa.r) * (pb.r - pa.r) + (p.z - pa.z) * (pb.z - pa.z)) / (length * length)
    };
    if shares_end {
        let free = if a == c || b == c { pd } else { pc };
        let share = along(free);
        return area2(pa, pb, free).abs() <= near && share > 0.0 && share < 1.0;
    }
    !is_beside(sc, sd) && !is_beside(sa, sb)
}

fn middle(edges: &Edges, edge: usize) -> Point {
    let [a, b] = edges.ends[edge].map(|corner| edges.places[corner as usize]);
    a.towards(b, 0.5)
}

/// Splits marked edges in the middle; returns whether any was marked.
fn split(divisions: &mut [Division], edges: &Edges, is_marked: &[bool]) -> bool {
    let mut is_any = false;
    // From the back, so that the remaining positions stay valid.
    for edge in (0..edges.ends.len()).rev() {
        if is_marked[edge] {
            let division = &mut divisions[edges.curve_of[edge] as usize];
            let position = edges.position_of[edge] as usize;
            let share = 0.5 * (division.shares[position] + division.shares[position + 1]);
            division.shares.insert(position + 1, share);
            is_any = true;
        }
    }
    is_any
}

/// Splits edges that are long for the room beside them or for the next edge; returns whether it split any.
fn split_long(
    mesh: &Triangulation,
    edges: &Edges,
    divisions: &mut [Division],
    sizes: &Sizes,
) -> bool {
    let length = |edge: usize| {
        let [a, b] = edges.ends[edge].map(|corner| edges.places[corner as usize]);
        a.distance(b)
    };
    let may_split = |edge: usize| {
        let division = &divisions[edges.curve_of[edge] as usize];
        !division.is_matched(edges.position_of[edge] as usize)
            && length(edge) > 2.0 * sizes.finest()
    };
    let mut is_marked = vec![false; edges.ends.len()];
    for triangle in mesh.triangles.iter().filter(|t| t.region != NONE) {
        for side in 0..3 {
            let rim = triangle.rims[side];
            if rim == NONE {
                continue;
            }
            // The angle at a corner stays the same, however short its sides become.
            let is_side_of_corner = [1, 2].into_iter().any(|k| {
                let other = triangle.rims[(side + k) % 3];
                other != NONE && length(rim as usize) <= CORNER_SIDES_RATIO * length(other as usize)
            });
            if is_side_of_corner {
                continue;
            }
            let length = length(rim as usize);
            let [a, b, c] = [0, 1, 2].map(|k| triangle.corners[(side + k) % 3]);
            let height = mesh.area2(a, b, c) / length;
            if length > sizes.stretch(height) * height && may_split(rim as usize) {
                is_marked[rim as usize] = true;
            }
        }
    }
    let mut shortest = vec![f64::INFINITY; edges.places.len()];
    for edge in 0..edges.ends.len() {
        for corner in edges.ends[edge] {
            let entry = &mut shortest[corner as usize];
            *entry = entry.min(length(edge));
        }
    }
    for edge in 0..edges.ends.len() {
        let [a, b] = edges.ends[edge].map(|corner| shortest[corner as usize]);
        if length(edge) > NEXT_RATIO * a.min(b) && may_split(edge) {
            is_marked[edge] = true;
        }
    }
    split(divisions, edges, &is_marked)
}

/// Wanted size at each corner on a curve: the mean length of its edges, m.
fn rim_sizes(edges: &Edges) -> Vec<f64> {
    let mut sums = vec![(0.0, 0.0); edges.places.len()];
    for ends in &edges.ends {
        let [a, b] = ends.map(|corner| edges.places[corner as usize]);
        for corner in ends {
            let entry = &mut sums[*corner as usize];
            *entry = (entry.0 + a.distance(b), entry.1 + 1.0);
        }
    }
    sums.iter().map(|(sum, count)| sum / count).collect()
}

/// Keeps the triangles in regions and adds mid-nodes.
fn finish(outline: &Outline, divisions: &[Division], edges: &Edges, mesh: &Triangulation) -> Mesh {
    let mut number = vec![NONE; mesh.places.len()];
    let mut corners = Vec::new();
    let mut triangles = Vec::new();
    let mut region = Vec::new();
    for triangle in mesh.triangles.iter().filter(|t| t.region != NONE) {
        triangles.push(triangle.corners.map(|corner| {
            let entry = &mut number[corner as usize];
            if *entry == NONE {
                *entry = corners.len() as u32;
                corners.push(mesh.places[corner as usize]);
            }
            *entry
        }));
        region.push(triangle.region);
    }
    let rims = (0..edges.ends.len())
        .filter(|&edge| edges.ends[edge].iter().all(|&c| number[c as usize] != NONE))
        .map(|edge| {
            let curve_index = edges.curve_of[edge];
            let position = edges.position_of[edge] as usize;
            let shares = &divisions[curve_index as usize].shares;
            RimEdge {
                curve_index,
                corners: edges.ends[edge].map(|corner| number[corner as usize]),
                shares: [shares[position], shares[position + 1]],
            }
        })
        .collect();
    quadratic(outline, corners, &triangles, region, rims)
}

/// Splits the edges on arcs whose triangles the arc turns inside out; returns an error that names such a curve, or `None` if there is none.
fn split_bent(outline: &Outline, mesh: &Mesh, divisions: &mut [Division]) -> Option<MeshError> {
    let mut middles = vec![NONE; mesh.nodes.len()];
    for (position, rim) in mesh.rims.iter().enumerate() {
        middles[rim.nodes[2] as usize] = position as u32;
    }
    let mut found = None;
    for index in folded(mesh, &mesh.nodes) {
        let triangle = mesh.triangles[index];
        for &node in &triangle[3..] {
            let position = middles[node as usize];
            if position == NONE {
                continue;
            }
            let rim = mesh.rims[position as usize];
            let curve_index = rim.curve_index as usize;
            let shares = &mut divisions[curve_index].shares;
            let share = 0.5 * (rim.shares[0] + rim.shares[1]);
            if let Err(place) = shares.binary_search_by(|s| s.total_cmp(&share)) {
                shares.insert(place, share);
            }
            found = Some(MeshError::Crossing {
                curves: nearest_curves(outline, outline.place(curve_index, share)),
                place: outline.place(curve_index, share),
            });
        }
        if found.is_none() {
            found = Some(MeshError::Crossing {
                curves: nearest_curves(outline, mesh.nodes[triangle[0] as usize]),
                place: mesh.nodes[triangle[0] as usize],
            });
        }
    }
    found
}
