//! Tubes of rubber on rigid cylinders against what is known of them elsewhere.

mod closed_forms;
mod finite_elements;
mod laws;
mod oracle;
