//! Chain errors: the reasons for which a chain cannot be solved or sampled.
//!
//! **Invariants.** Planes and links carry the caller's own numbers; values are in counts.
//! The caller knows the names of the planes and the unit of a count, and words the message for people.

use super::{Path, REACH_MOST, SAMPLES_MOST};

/// Reason why a chain has no solution, or no sample.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum ChainError {
    /// A link names a plane that the chain does not have.
    #[error(
        "link {link} names plane {plane}, but the chain has {n_planes} planes, numbered from 0"
    )]
    NoSuchPlane {
        /// Index of the link.
        link: usize,
        /// The plane that it names.
        plane: usize,
        /// Number of planes of the chain.
        n_planes: usize,
    },
    /// A link ties a plane to itself.
    #[error("link {link} goes from plane {plane} to the same plane; a link needs two")]
    SelfLink {
        /// Index of the link.
        link: usize,
        /// The plane at both ends.
        plane: usize,
    },
    /// A window has a negative part below or above the nominal.
    #[error("link {link} has the window -({minus}) +({plus}) counts; neither part may be negative")]
    NegativeWindow {
        /// Index of the link.
        link: usize,
        /// Its part below the nominal.
        minus: i64,
        /// Its part above the nominal.
        plus: i64,
    },
    /// The shared part of a link exceeds the whole.
    #[error(
        "link {link} shares {fraction_ppm} parts per million of its window; 1000000 is the whole"
    )]
    SharedPart {
        /// Index of the link.
        link: usize,
        /// Its shared part, parts per million.
        fraction_ppm: u32,
    },
    /// The sizes of the links add up to more than the arithmetic can hold.
    #[error("with link {link} the sizes of the links add up to more than {REACH_MOST} counts")]
    Overflow {
        /// Index of the link at which the sum passes [`REACH_MOST`].
        link: usize,
    },
    /// The datum is not a plane of the chain.
    #[error("the datum is plane {plane}, but the chain has {n_planes} planes, numbered from 0")]
    Datum {
        /// The requested plane.
        plane: usize,
        /// Number of planes of the chain.
        n_planes: usize,
    },
    /// The chain is open at this plane.
    #[error("no way over the links leads from the datum to plane {plane}; a link to it is missing")]
    Open {
        /// The plane that cannot be reached.
        plane: usize,
    },
    /// Two paths give one plane two positions.
    #[error(
        "plane {plane} stands at {first_value} counts by the path {first}, but at {second_value} counts by {second}"
    )]
    Contradiction {
        /// The plane that has two positions.
        plane: usize,
        /// The canonical path, from the datum; if the datum does not reach the plane, from the least plane of its part.
        first: Path,
        /// Nominal position along `first`, in counts from its start.
        first_value: i64,
        /// The path over the link that closes the loop, from the same start.
        second: Path,
        /// Nominal position along `second`, in counts from its start.
        second_value: i64,
    },
    /// The windows around a loop cannot all be kept.
    #[error(
        "around the loop {around} the windows add up to {least} to {greatest} counts, and never to 0"
    )]
    WindowsExclude {
        /// The loop; its last plane is its first.
        around: Path,
        /// Least sum of the links around the loop, in counts.
        least: i64,
        /// Greatest sum of the links around the loop, in counts.
        greatest: i64,
    },
    /// A number of samples outside the permitted range.
    #[error("{n_samples} samples were asked for; expected 1 to {SAMPLES_MOST}")]
    SampleCount {
        /// The requested number.
        n_samples: u32,
    },
    /// The closing links rejected nearly all samples.
    #[error(
        "only {n_accepted} of {n_tried} samples kept the windows of the links that close loops; {n_needed} are needed"
    )]
    TooFewAccepted {
        /// Samples that kept every window.
        n_accepted: u32,
        /// Samples drawn.
        n_tried: u64,
        /// Samples needed for meaningful quantiles.
        n_needed: u32,
    },
}
