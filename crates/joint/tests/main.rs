//! Integration tests of the joint room, in one program.

mod cases;
mod hostile;
mod laws;
mod published;
