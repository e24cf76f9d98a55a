//! What may be wanted of a field, and the answer.

use crate::gas;
use crate::outline::Point;

/// One number that is wanted of a field.
#[derive(Clone, Debug, PartialEq)]
pub enum Wanted {
    /// 2W/V² over the whole turn, F; V is the difference of the two potentials of the section.
    Capacitance,
    /// Largest |E| in a region, V/m.
    PeakInRegion {
        /// Index of the region.
        region_index: usize,
    },
    /// Largest |E| on the curves of a tag, on the sides that carry field, V/m.
    PeakOnCurve {
        /// The tag.
        tag: String,
    },
    /// Largest |E·t| along the straight line between two places, t along it, V/m.
    PeakTangentialOnLine {
        /// One end, m.
        from: Point,
        /// The other end, m.
        to: Point,
    },
    /// Potential at a place, V.
    PotentialAt {
        /// The place, m.
        at: Point,
    },
    /// |E| at a place, V/m.
    FieldAt {
        /// The place, m.
        at: Point,
        /// The region on whose side the field is meant, where the place lies between two.
        side: Option<usize>,
    },
    /// E_z = −∂φ/∂z at a place, V/m, with its sign.
    AxialFieldAt {
        /// The place, m.
        at: Point,
    },
    /// Largest voltage along a shortest straight way in a region of air over what that length of air withstands, V per V of crest.
    BreakdownShare {
        /// Index of the region.
        region_index: usize,
        /// Groups of tags: ways run from every place on the region's curves of the first to the nearest place on those of the second.
        ways: Vec<[Vec<String>; 2]>,
        /// Which curve of breakdown air has.
        curve: gas::Curve,
        /// Its pressure, Pa.
        pressure_pa: f64,
    },
}

/// A wanted number with its estimated error.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Answer {
    /// The number, SI: F, V, V/m or a ratio; the modulus in the complex regime.
    pub value: f64,
    /// Phase of the number, rad, in the complex regime and where it has one.
    pub phase: Option<f64>,
    /// Estimated absolute error of `value`, in its unit.
    pub error_estimate: f64,
    /// Where a peak lies, or a way begins.
    pub at: Option<Point>,
    /// Where a way ends.
    pub to: Option<Point>,
    /// Whether the estimate came down to what was asked.
    pub is_settled: bool,
}
