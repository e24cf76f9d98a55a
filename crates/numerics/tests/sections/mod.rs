//! Random sections: the mesher meshes every one, or names the pair of curves at fault.

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
