//! Integration tests of the joint room, in one program.

mod published;
