//! Potential of a section on its mesh: at constant conductivities, then by Newton's method if one rises with the field.

use super::newton;
use super::section::Section;
use super::solved::FieldError;
use super::system::System;

/// Solves for the potential of every node, real and imaginary part, V; also returns the residuals of Newton's method, if it was needed.
pub(super) fn solve(
    section: &Section,
    system: &mut System,
) -> Result<(Vec<[f64; 2]>, Vec<f64>), FieldError> {
    let first = system.solve_linear(section)?;
    if newton::is_needed(section) {
        newton::solve(section, system, first)
    } else {
        Ok((first, Vec::new()))
    }
}
