//! Integration tests of the paper room, in one program.

mod sheet;
