//! Chores: commands that keep the tree in order and make new files in the agreed form.
//!
//! Why its own room: chores are written in the same language as the program and are tested like it.
//!
//! Not here: anything that the program itself needs.

use std::io::Write;
use std::path::Path;
use std::process::ExitCode;

use clap::{Parser, Subcommand};

mod error;
mod list;
mod new_check;
mod rust_text;
#[cfg(test)]
mod scratch;
mod slugs;
mod tidy;
mod tree;
mod uses;
mod wasm;
mod wrap;

use error::ChoreError;
use tree::Tree;

/// The project's chores.
#[derive(Debug, Parser)]
#[command(name = "cargo xtask", bin_name = "cargo xtask")]
struct Door {
    #[command(subcommand)]
    chore: Option<Chore>,
}

/// One chore.
#[derive(Debug, Subcommand)]
enum Chore {
    /// List what there is: chores, crates, rooms, checks, tidy rules, examples, how-tos.
    List,
    /// Hold the tree to its own rules; exit 1 if it breaks one.
    Tidy,
    /// List the slugs of all checks, refusing duplicates.
    Slugs,
    /// Make the file of a new check and say what else it needs.
    NewCheck {
        /// `<where>_<quantity>`, never used before; it will never change.
        slug: String,
    },
    /// Build the core for browsers (wasm32); exit 1 if it does not compile, 2 if no compiler can be had.
    ///
    /// The compiler is the one in use if it has the target, else `rustup target add wasm32-unknown-unknown` is tried, else Debian's packages are unpacked below the target folder; nothing is installed.
    /// CARGO_TARGET_DIR is respected.
    Wasm {
        /// Skip the first two ways and take Debian's packages.
        #[arg(long)]
        from_debian: bool,
        /// Only see to it that there is a compiler, and build nothing.
        #[arg(long)]
        only_compiler: bool,
    },
}

fn main() -> ExitCode {
    let door = Door::parse();
    match run(door.chore.unwrap_or(Chore::List)) {
        Ok(true) => ExitCode::SUCCESS,
        Ok(false) => ExitCode::FAILURE,
        Err(error) => {
            let mut words = error.to_string();
            let mut cause = std::error::Error::source(&error);
            while let Some(inner) = cause {
                words.push_str(&format!(": {inner}"));
                cause = inner.source();
            }
            // Nobody is left to tell if this fails too.
            let _ = writeln!(std::io::stderr(), "{}", wrap::at_80("", &words, "  "));
            ExitCode::from(2)
        }
    }
}

/// Runs a chore in the repository around the current folder; returns whether all is well.
fn run(chore: Chore) -> Result<bool, ChoreError> {
    let here = std::env::current_dir().map_err(|source| ChoreError::Read {
        path: Path::new(".").to_owned(),
        source,
    })?;
    let root = tree::find_root(&here)?;
    let tree = Tree::read(&root)?;
    let mut out = std::io::stdout().lock();
    match chore {
        Chore::List => list::print(&tree, &mut out)?,
        Chore::Tidy => return tidy::print(&tree, &mut out),
        Chore::Slugs => {
            for slug in slugs::all(&tree)?.keys() {
                writeln!(out, "{slug}")?;
            }
        }
        Chore::NewCheck { slug } => new_check::make(&root, &tree, &slug, &mut out)?,
        Chore::Wasm {
            from_debian,
            only_compiler,
        } => {
            let options = wasm::Options {
                is_from_debian: from_debian,
                is_only_compiler: only_compiler,
            };
            return wasm::build(&root, options, &mut out);
        }
    }
    Ok(true)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_command_line_is_put_together_rightly() {
        use clap::CommandFactory;
        Door::command().debug_assert();
        let door = Door::try_parse_from(["cargo xtask", "new-check", "screen_edge_field"])
            .expect("it parses");
        assert!(
            matches!(door.chore, Some(Chore::NewCheck { slug }) if slug == "screen_edge_field")
        );
        assert!(Door::try_parse_from(["cargo xtask", "new-check"]).is_err());
    }
}
