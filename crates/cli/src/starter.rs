//! Starter: the commented job that `jointwright new` writes.

/// Text of the starter job: an invented job without complaints, to be overwritten line by line.
pub const STARTER: &str = include_str!("../../../data/starter.toml");
