//! The commented job that `jointwright new` writes.

/// Text of the starter job: an invented job that reads without a complaint, to be overwritten line by line.
pub const STARTER: &str = include_str!("../../../data/starter.toml");
