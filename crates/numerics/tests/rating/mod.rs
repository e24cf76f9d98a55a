//! Ratings compared with published numbers and closed forms, each with a mistake that leaves the tolerance.
//!
//! Values: rows of a collection of published numbers; each test names its rows, and their source stands in `docs/theory/rating.md`.

mod air_and_soil;
mod conductor;
mod cyclic;
mod emergency;
mod fin;
mod ladder;
mod line;
mod printed_currents;
mod published_case;
mod shield;
mod short_circuit;
mod soil;
mod steady;
mod step;
mod touching_flat;
mod transient;

/// Asserts that the two agree within a share of the second.
fn agree(found: f64, expected: f64, tolerance: f64) -> bool {
    (found - expected).abs() <= tolerance * expected.abs()
}

#[track_caller]
fn close(found: f64, expected: f64, tolerance: f64) {
    let share = (found - expected) / expected;
    assert!(
        agree(found, expected, tolerance),
        "{found}: expected {expected}, off by {share:.3e} of it, and {tolerance:.1e} is allowed"
    );
}

/// Asserts that the result of a mistake lies outside the tolerance of the comparison.
#[track_caller]
fn apart(mistaken: f64, expected: f64, tolerance: f64) {
    assert!(
        !agree(mistaken, expected, tolerance),
        "the mistake gives {mistaken}, which passes for {expected} within {tolerance:.1e}"
    );
}

/// One circular mil, m².
const CMIL_M2: f64 = 5.067_074_790_974_977e-10;
/// One mil, m.
const MIL_M: f64 = 25.4e-6;
