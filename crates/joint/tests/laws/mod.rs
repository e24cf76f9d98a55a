//! Laws: properties of every joint, tried on all cases and examples and on random changes to them.
//!
//! Each law is a function that returns its violations, so that a twin can show that it fails when something is made wrong.

mod again;
mod as_said;
mod body_side;
mod checked_row;
mod connector_end;
mod connector_length;
mod contradiction;
mod copy_mark;
mod deleted_line;
mod document;
mod each_check;
mod last_reading;
mod left_open;
mod listed;
mod memory;
mod missing_input;
mod never_said;
mod not_computed;
mod plan_mark;
mod rests;
mod several_ends;
mod slots;
mod spoken;
mod stated_twice;
mod tighten_only;
pub mod toml_text;
mod toward_end;
mod window;
mod words_of_the_owner;
mod written_order;

use proptest::test_runner::{Config, RngSeed};

/// Settings of a random law: a number of cases from a fixed seed, so that two runs give the same result, and no file of past failures; a failure that matters becomes a named test.
pub(crate) fn tries(cases: u32) -> Config {
    Config {
        cases,
        failure_persistence: None,
        rng_seed: RngSeed::Fixed(20_260_309),
        ..Config::default()
    }
}
