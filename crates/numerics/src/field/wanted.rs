//! Numbers that may be wanted of a field, and their answers.

use crate::gas;
use crate::outline::Point;

/// One wanted number of a field.
#[derive(Clone, Debug, PartialEq)]
pub enum Wanted {
    /// Capacitance, 2W/V² over the whole turn, F; V is the difference of the section's two potentials.
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
        /// The region on whose side the field is taken, if the place lies between two.
        side: Option<usize>,
    },
    /// E_z = −∂φ/∂z at a place, V/m, with its sign.
    AxialFieldAt {
        /// The place, m.
        at: Point,
    },
    /// Greatest ratio in a region of air of the voltage along a shortest straight way to the withstand voltage of that length, V per V of crest.
    BreakdownShare {
        /// Index of the region.
        region_index: usize,
        /// Groups of tags: ways lead from every place on the region's curves of the first tags to the nearest place on those of the second.
        ways: Vec<[Vec<String>; 2]>,
        /// Breakdown curve of the air.
        curve: gas::Curve,
        /// Pressure of the air, Pa.
        pressure_pa: f64,
    },
}

/// A wanted number with its estimated error.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Answer {
    /// The number, SI: F, V, V/m or a ratio; the modulus in the complex regime.
    pub value: f64,
    /// Phase of the number, rad; `None` outside the complex regime or if the number has no phase.
    pub phase: Option<f64>,
    /// Estimated absolute error of `value`, in its unit.
    pub error_estimate: f64,
    /// Place of a peak, or beginning of a way.
    pub at: Option<Point>,
    /// End of a way.
    pub to: Option<Point>,
    /// Whether the estimate came down to the tolerance.
    pub is_settled: bool,
}
