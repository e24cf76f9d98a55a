//! Integration tests of the terminal's door, in one program.

mod door;
// The checker of documents against schemas is written once, beside the tests of hostile input.
#[path = "../../joint/tests/hostile/structure.rs"]
mod structure;
