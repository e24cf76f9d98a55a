//! Exports: the functions that a WebAssembly module shows; they take and return only numbers.
//!
//! **What.** A text goes in byte by byte with [`put`].
//! [`solve`] and [`plan`] answer it and return the length of the answer.
//! [`take`] returns the answer byte by byte.
//!
//! **Why separate.** The lint on unsafe code is allowed only for exported names, and this file holds nothing else.
//!
//! **Invariants.** No pointer crosses the hatch and no memory is shared, so no operation here is unsafe.
//! An answer stays until the next question is answered.
//! Natively nothing is exported, so no name can collide with another in a program.
//!
//! **Not here.** The answers themselves (the crate's root).
#![allow(
    unsafe_code,
    reason = "an exported name counts as unsafe, because another symbol could have it too; there is no unsafe block here"
)]

use std::sync::{Mutex, MutexGuard, PoisonError};

/// Question that has gone in, and answer that comes out.
struct Tray {
    question: Vec<u8>,
    answer: Vec<u8>,
}

static TRAY: Mutex<Tray> = Mutex::new(Tray {
    question: Vec::new(),
    answer: Vec::new(),
});

fn tray() -> MutexGuard<'static, Tray> {
    // A panic ends a WebAssembly module; natively it leaves bytes that are still bytes.
    TRAY.lock().unwrap_or_else(PoisonError::into_inner)
}

/// Adds one byte to the question.
#[cfg_attr(target_arch = "wasm32", unsafe(no_mangle))]
pub extern "C" fn put(byte: u8) {
    tray().question.push(byte);
}

/// Answers the section case that was put in, and returns the length of the answer in bytes; see [`crate::solve()`].
#[cfg_attr(target_arch = "wasm32", unsafe(no_mangle))]
pub extern "C" fn solve(n_unknowns_most: u32) -> u32 {
    exchange(|text| crate::solve(text, n_unknowns_most as usize))
}

/// Answers the job that was put in, and returns the length of the answer in bytes; see [`crate::plan()`].
#[cfg_attr(target_arch = "wasm32", unsafe(no_mangle))]
pub extern "C" fn plan() -> u32 {
    exchange(crate::plan)
}

/// Returns one byte of the last answer.
///
/// # Panics
/// If the answer has no such byte.
#[cfg_attr(target_arch = "wasm32", unsafe(no_mangle))]
pub extern "C" fn take(index: u32) -> u8 {
    tray().answer[index as usize]
}

/// Takes the question, and keeps the answer for [`take`].
fn exchange(answer: impl FnOnce(&str) -> String) -> u32 {
    let question = std::mem::take(&mut tray().question);
    let answer = match String::from_utf8(question) {
        Ok(text) => answer(&text),
        Err(error) => crate::failed(&error),
    };
    let length = u32::try_from(answer.len()).expect("an answer is far below 4 GB");
    tray().answer = answer.into_bytes();
    length
}

#[cfg(test)]
mod tests {
    use super::*;

    fn through_the_hatch(bytes: &[u8], ask: impl FnOnce() -> u32) -> String {
        for &byte in bytes {
            put(byte);
        }
        let answer: Vec<u8> = (0..ask()).map(|index| take(index)).collect();
        String::from_utf8(answer).expect("an answer is text")
    }

    // One test, because there is one tray.
    #[test]
    fn what_comes_out_is_the_answer_to_what_went_in_last() {
        for text in ["", "{", "[1, 2", "id = 7", "à côté"] {
            let answer = through_the_hatch(text.as_bytes(), || solve(1000));
            assert_eq!(answer, crate::solve(text, 1000));
            let answer = through_the_hatch(text.as_bytes(), || plan());
            assert_eq!(answer, crate::plan(text));
        }
        let answer = through_the_hatch(b"{\xff}", || solve(1000));
        assert!(
            answer.contains("error") && answer.contains("index 1"),
            "{answer}"
        );
    }
}
