//! Why an outline could not be meshed.

use crate::outline::Point;

/// Why an outline could not be meshed; two curves and a place are named wherever there are two.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum MeshError {
    /// Two curves whose edges cross, or fold the triangles between them, however finely they are divided.
    #[error("curves {} and {} cross near r {:.4} mm, z {:.4} mm, however finely they are divided", curves[0] + 1, curves[1] + 1, place.r * 1e3, place.z * 1e3)]
    Crossing {
        /// Indices of the two curves, from 0.
        curves: [usize; 2],
        /// Where, m.
        place: Point,
    },
    /// The sides of a curve do not agree with those of a curve beside it.
    #[error("curves {} and {} do not separate the same regions near r {:.4} mm, z {:.4} mm: a neighbour does not share one of them", curves[0] + 1, curves[1] + 1, place.r * 1e3, place.z * 1e3)]
    Unglued {
        /// Indices of the two curves, from 0.
        curves: [usize; 2],
        /// Where, m.
        place: Point,
    },
    /// Points of two curves fall together without being one point.
    #[error("points of curves {} and {} fall together at r {:.4} mm, z {:.4} mm without being one point", curves[0] + 1, curves[1] + 1, place.r * 1e3, place.z * 1e3)]
    Together {
        /// Indices of the two curves, from 0.
        curves: [usize; 2],
        /// Where, m.
        place: Point,
    },
    /// So many edges that no answer would come.
    #[error("curves {} and {} lie so near together at r {:.4} mm, z {:.4} mm that more than {n_edges} edges would be needed", curves[0] + 1, curves[1] + 1, place.r * 1e3, place.z * 1e3)]
    TooFine {
        /// Indices of the two curves, from 0.
        curves: [usize; 2],
        /// Where, m.
        place: Point,
        /// How many edges would not do.
        n_edges: usize,
    },
    /// The section has no curve, or no area.
    #[error("the section has no area")]
    Flat,
}
