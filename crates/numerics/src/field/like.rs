//! A new mesh that is at once as fine as the mesh of a similar section.
//!
//! **What.** [`Like::refined`]: refines a new mesh along the curves on which the known mesh is finer.
//!
//! **Why separate.** A refinement costs one solution on each mesh on the way; a similar section needs its finest mesh only.
//!
//! **Invariants.** Edges on a curve are compared by their shares of the curve, so a curve that moved or grew keeps its refinement.
//! A number on the new mesh is judged by `goal::carried`; if it does not settle, the usual refinement goes on.
//!
//! **Not here.** The same mesh on moved nodes (`warm`).
//!
//! **Source.** `docs/theory/field.md`.

use super::goal::Goal;
use crate::mesh::{self, Mesh};
use crate::outline::Outline;

/// Greatest ratio of a known edge to an edge of the new mesh for which the new edge is halved.
const FINER_RATIO: f64 = 0.6;

/// Least and greatest share of each edge of a mesh on a curve, by curve and in order.
pub(super) type Spans = Vec<Vec<[f64; 2]>>;

/// The edges and the numbers of a similar section that was refined step by step.
pub(super) struct Like<'p> {
    pub spans: &'p Spans,
    pub goals: &'p [Goal],
    /// Number of refinements that made its mesh.
    pub n_refined: usize,
}

impl Like<'_> {
    /// Refines a new mesh until its edges on curves are about as short as those of the known mesh.
    pub fn refined(&self, outline: &Outline, mesh: Mesh) -> Mesh {
        let mut mesh = mesh;
        for _ in 0..self.n_refined {
            let is_marked = coarser(&mesh, self.spans);
            if !is_marked.contains(&true) {
                break;
            }
            mesh = mesh::refine(outline, &mesh, &is_marked);
        }
        mesh
    }
}

/// Edges of a mesh on curves.
pub(super) fn spans(mesh: &Mesh, n_curves: usize) -> Spans {
    let mut spans = vec![Vec::new(); n_curves];
    for rim in &mesh.rims {
        spans[rim.curve_index as usize].push(span(rim.shares));
    }
    for own in &mut spans {
        own.sort_by(|a, b| a[0].total_cmp(&b[0]));
    }
    spans
}

fn span([a, b]: [f64; 2]) -> [f64; 2] {
    [a.min(b), a.max(b)]
}

/// Triangles with an edge on a curve that is longer than the known edge there.
fn coarser(mesh: &Mesh, spans: &Spans) -> Vec<bool> {
    let mut is_coarse = vec![false; mesh.nodes.len()];
    for rim in &mesh.rims {
        let [low, high] = span(rim.shares);
        let own = &spans[rim.curve_index as usize];
        let known = own.partition_point(|known| known[1] < 0.5 * (low + high));
        is_coarse[rim.nodes[2] as usize] = own
            .get(known)
            .is_some_and(|known| known[1] - known[0] < FINER_RATIO * (high - low));
    }
    let middles = mesh.triangles.iter().map(|triangle| &triangle[3..]);
    middles
        .map(|middles| middles.iter().any(|&middle| is_coarse[middle as usize]))
        .collect()
}
