//! The layer under each part: joints that are wrong on purpose fail at the wrong place, and the same joints made right do not fail.

mod picture;
mod span;
mod wrong;
