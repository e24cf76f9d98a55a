//! The program as a crew runs it: exit codes, streams, files, pages.

mod asks;
mod exits;
mod files;
mod judge;
mod lint;
mod pages;
mod rate;
mod schemas;
mod solve;
mod spanish;
mod streams;

use std::path::{Path, PathBuf};
use std::process::{Command, Output, Stdio};

/// The five jobs of the examples.
pub(crate) const EXAMPLES: &[&str] = &[
    "dock-straight-not-pressed",
    "dock-straight-pressed",
    "larkspur-three-way",
    "quarry-four-way",
    "tannery-change",
];

/// Time at which every plan of these tests is made.
pub(crate) const MADE: &str = "2026-03-09 14:05 UTC+01:00";

/// Folder of the repository.
pub(crate) fn tree() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..")
}

/// Job file of an example.
pub(crate) fn example(slug: &str) -> PathBuf {
    tree().join("examples").join(slug).join("job.toml")
}

/// Own folder of one test, in which the program runs.
pub(crate) struct Vault(tempfile::TempDir);

impl Vault {
    pub(crate) fn new() -> Vault {
        Vault(tempfile::tempdir().expect("a folder for the test"))
    }

    pub(crate) fn path(&self, name: &str) -> PathBuf {
        self.0.path().join(name)
    }

    /// Writes a file and returns its name.
    pub(crate) fn write<'n>(&self, name: &'n str, text: impl AsRef<[u8]>) -> &'n str {
        std::fs::write(self.path(name), text).expect("the file is written");
        name
    }

    pub(crate) fn read(&self, name: &str) -> String {
        std::fs::read_to_string(self.path(name))
            .unwrap_or_else(|error| panic!("{name} cannot be read: {error}"))
    }

    pub(crate) fn command<A: AsRef<std::ffi::OsStr>>(&self, arguments: &[A]) -> Command {
        let mut command = Command::new(env!("CARGO_BIN_EXE_jointwright"));
        command
            .args(arguments)
            .current_dir(self.0.path())
            .env_remove("NO_COLOR")
            .stdin(Stdio::null());
        command
    }

    pub(crate) fn run<A: AsRef<std::ffi::OsStr>>(&self, arguments: &[A]) -> Ran {
        let output = self.command(arguments).output().expect("the program runs");
        Ran::of(output)
    }

    /// Runs `plan` on an example.
    pub(crate) fn plan(&self, slug: &str, more: &[&str]) -> Ran {
        let job = example(slug);
        let mut arguments = vec!["plan", job.to_str().expect("the path is UTF-8")];
        // A fixed time makes two runs print the same text.
        arguments.extend(["--made", MADE]);
        arguments.extend(more);
        self.run(&arguments)
    }
}

/// Result of a run.
#[derive(Debug)]
pub(crate) struct Ran {
    pub(crate) code: Option<i32>,
    pub(crate) out: String,
    pub(crate) err: String,
}

impl Ran {
    fn of(output: Output) -> Ran {
        Ran {
            code: output.status.code(),
            out: String::from_utf8(output.stdout).expect("standard output is UTF-8"),
            err: String::from_utf8(output.stderr).expect("standard error is UTF-8"),
        }
    }
}
