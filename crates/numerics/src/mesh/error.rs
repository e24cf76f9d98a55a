//! Mesh errors: the reasons why an outline could not be meshed.

use crate::outline::Point;

/// Reason why an outline could not be meshed; it names two curves and a place if there are two.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum MeshError {
    /// The edges of two curves cross, or fold the triangles between them, however finely the curves are divided.
    #[error("curves {} and {} cross near r {:.4} mm, z {:.4} mm, however finely they are divided", curves[0] + 1, curves[1] + 1, place.r * 1e3, place.z * 1e3)]
    Crossing {
        /// Indices of the two curves, from 0.
        curves: [usize; 2],
        /// Place of the fault, m.
        place: Point,
    },
    /// The sides of a curve contradict those of a neighbouring curve.
    #[error("curves {} and {} do not separate the same regions near r {:.4} mm, z {:.4} mm: a neighbour does not share one of them", curves[0] + 1, curves[1] + 1, place.r * 1e3, place.z * 1e3)]
    Unglued {
        /// Indices of the two curves, from 0.
        curves: [usize; 2],
        /// Place of the fault, m.
        place: Point,
    },
    /// Points of two curves coincide without being the same point.
    #[error("points of curves {} and {} fall together at r {:.4} mm, z {:.4} mm without being one point", curves[0] + 1, curves[1] + 1, place.r * 1e3, place.z * 1e3)]
    Together {
        /// Indices of the two curves, from 0.
        curves: [usize; 2],
        /// Place of the fault, m.
        place: Point,
    },
    /// The number of edges is so large that no answer would come.
    #[error("curves {} and {} lie so near together at r {:.4} mm, z {:.4} mm that more than {n_edges} edges would be needed", curves[0] + 1, curves[1] + 1, place.r * 1e3, place.z * 1e3)]
    TooFine {
        /// Indices of the two curves, from 0.
        curves: [usize; 2],
        /// Place of the fault, m.
        place: Point,
        /// Number of edges that did not suffice.
        n_edges: usize,
    },
    /// The section has no curve or no area.
    #[error("the section has no area")]
    Flat,
}
