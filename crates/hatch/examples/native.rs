//! Answers natively the questions that the hatch answers in WebAssembly: `native solve N_UNKNOWNS_MOST` or `native plan`, with the text on standard input.
//!
//! `tests/wasm` compares the two.

use std::io::{Error, Read, Write};

fn main() -> Result<(), Error> {
    let mut text = String::new();
    std::io::stdin().read_to_string(&mut text)?;
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let words: Vec<&str> = arguments.iter().map(String::as_str).collect();
    let answer = match words.as_slice() {
        ["solve", number] => {
            let n_unknowns_most = number.parse().map_err(Error::other)?;
            jointwright_hatch::solve(&text, n_unknowns_most)
        }
        ["plan"] => jointwright_hatch::plan(&text),
        _ => {
            return Err(Error::other(
                "expected `solve N_UNKNOWNS_MOST` or `plan`, and the text on standard input",
            ));
        }
    };
    std::io::stdout().lock().write_all(answer.as_bytes())
}
