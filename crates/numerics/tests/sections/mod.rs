//! Sections made at random: the mesher takes them all, or names the pair of curves it stumbles over.

#![allow(
    clippy::needless_range_loop,
    reason = "grids are walked by column and row"
)]

mod counts;
mod judge;
mod patches;
mod property;
mod random;
mod sketch;
