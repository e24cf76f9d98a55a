//! Error: the reasons for which a chore stops before it has an answer.

use std::path::PathBuf;

/// Failures of the world: a file, a folder, a program, a terminal.
#[derive(Debug, thiserror::Error)]
pub enum ChoreError {
    /// A file or folder could not be read.
    #[error("cannot read `{}`", path.display())]
    Read {
        /// File or folder that could not be read.
        path: PathBuf,
        /// Cause, from the system.
        source: std::io::Error,
    },
    /// A file could not be written.
    #[error("cannot write `{}`", path.display())]
    Write {
        /// File that could not be written.
        path: PathBuf,
        /// Cause, from the system.
        source: std::io::Error,
    },
    /// The terminal could not be written to.
    #[error("cannot write to the terminal")]
    Print(#[from] std::io::Error),
    /// No workspace stands at or above the folder.
    #[error("no Cargo.toml with [workspace] at or above `{}`; run this inside the repository", start.display())]
    NoWorkspace {
        /// Folder where the search began.
        start: PathBuf,
    },
    /// A slug is not of the agreed form.
    #[error(
        "slug `{slug}` is not <where>_<quantity> in lower-case letters, digits and underscores, as in `screen_edge_field`"
    )]
    SlugForm {
        /// The slug.
        slug: String,
    },
    /// A slug is taken.
    #[error("slug `{slug}` is taken by `{path}`; a slug is for ever, choose another")]
    SlugTaken {
        /// The slug.
        slug: String,
        /// File that has it.
        path: String,
    },
    /// Two rows claim one slug.
    #[error(
        "slug `{slug}` stands in two rows of the table of checks, of `{first}` and `{second}`; rename the younger one"
    )]
    SlugTwice {
        /// The slug.
        slug: String,
        /// File of the first.
        first: String,
        /// File of the second.
        second: String,
    },
    /// A program could not be started.
    #[error("cannot start `{program}`")]
    Start {
        /// The program.
        program: String,
        /// Cause, from the system.
        source: std::io::Error,
    },
    /// A program ended badly, after saying why.
    #[error("`{program}` ended badly; what it said stands above")]
    Ended {
        /// The program.
        program: String,
    },
    /// apt does not know a package.
    #[error(
        "apt knows no package `{name}`; run `apt-get update` as root and try again, or add the target where rustup can: `rustup target add wasm32-unknown-unknown`"
    )]
    NoPackage {
        /// The package.
        name: String,
    },
}
