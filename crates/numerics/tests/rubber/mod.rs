//! Tubes of rubber on rigid cylinders, compared with results known from elsewhere.

mod closed_forms;
mod finite_elements;
mod laws;
mod oracle;
