//! What lies under each part: joints that are wrong on purpose fail at the place that is wrong, and the same joints made right do not.

mod picture;
mod span;
mod wrong;
