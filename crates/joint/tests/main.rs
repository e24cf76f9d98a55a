//! Integration tests of the joint room, in one program.

mod asks;
mod built;
mod cases;
mod critic;
mod faults;
mod fields;
mod hostile;
mod laws;
mod pressure;
mod programme;
mod published;
mod shields;
mod underlay;
mod warm;
