//! Wasm: the core, built for browsers.
//!
//! **What.** Finds a compiler for wasm32-unknown-unknown and builds the core and its hatch with it.
//!
//! **Why separate.** This is the only chore that may fetch something; the order of choice below is its whole subject.
//!
//! **Invariants.** The order of choice is: the target that is already there; `rustup target add`; Debian's packages, unpacked below the target folder and never installed.
//! All three ways build the same crates with the same profile and the same lock file.
//!
//! **Not here.** Running the result (`tests/wasm`); fetching and unpacking packages (`debian`).

use std::ffi::OsString;
use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::Command;

use crate::error::ChoreError;

mod debian;

use debian::Compiler;

/// The target.
const TARGET: &str = "wasm32-unknown-unknown";
/// Crates that must compile for it: the core, and the hatch through which a browser reaches it.
const PACKAGES: &[&str] = &[
    "jointwright-units",
    "jointwright-numerics",
    "jointwright-joint",
    "jointwright-hatch",
];
/// Resulting file, in the release folder of the target.
const FILE: &str = "jointwright_hatch.wasm";

/// Options of one run of this chore.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Options {
    /// Skip the first two ways and take Debian's packages.
    pub is_from_debian: bool,
    /// Stop as soon as a compiler is found.
    pub is_only_compiler: bool,
}

/// Origin of the compiler.
#[derive(Debug)]
enum Way {
    /// The target was already there.
    There,
    /// rustup added the target.
    Added,
    /// A separate compiler, from Debian's packages.
    Debian(Compiler),
}

impl Way {
    fn words(&self) -> String {
        match self {
            Way::There => format!("{TARGET} was already there"),
            Way::Added => format!("rustup added {TARGET}"),
            Way::Debian(compiler) => format!(
                "Debian's packages, unpacked in {} (standard library built from source)",
                compiler.folder.display()
            ),
        }
    }
}

/// Builds the core for wasm32 and prints how, where the result is and its size; returns `false` if it does not compile.
///
/// # Errors
/// If no way leads to a compiler, or a program cannot be started.
pub fn build(root: &Path, options: Options, out: &mut impl Write) -> Result<bool, ChoreError> {
    let target_folder = target_folder(root)?;
    let way = way(
        options.is_from_debian,
        || has_target(root),
        || add_target(root),
        || {
            writeln!(out, "trying Debian's packages, about 140 MB")?;
            out.flush()?;
            debian::compiler(&target_folder)
        },
    )?;
    writeln!(out, "compiler: {}", way.words())?;
    out.flush()?;
    if options.is_only_compiler {
        return Ok(true);
    }
    let mut cargo = Command::new(program("CARGO", "cargo"));
    cargo.current_dir(root).args(arguments(&way));
    cargo.envs(environment(&way, &target_folder));
    if !ends_well(&mut cargo)? {
        return Ok(false);
    }
    let path = target_folder.join(TARGET).join("release").join(FILE);
    let size = std::fs::metadata(&path)
        .map_err(|source| ChoreError::Read {
            path: path.clone(),
            source,
        })?
        .len();
    writeln!(out, "built: {} ({size} bytes)", path.display())?;
    Ok(true)
}

/// Takes the first way that leads to a compiler.
fn way(
    is_from_debian: bool,
    has_target: impl Fn() -> bool,
    add_target: impl FnOnce() -> bool,
    unpack: impl FnOnce() -> Result<Compiler, ChoreError>,
) -> Result<Way, ChoreError> {
    if !is_from_debian {
        if has_target() {
            return Ok(Way::There);
        }
        // rustup may have added the target to another toolchain than the one in use, which does not help.
        if add_target() && has_target() {
            return Ok(Way::Added);
        }
    }
    unpack().map(Way::Debian)
}

/// Whether the compiler in use brings a standard library for the target.
fn has_target(root: &Path) -> bool {
    let printed = Command::new(program("RUSTC", "rustc"))
        .current_dir(root)
        .args(["--print", "target-libdir", "--target", TARGET])
        .output();
    let Ok(printed) = printed else { return false };
    let folder = String::from_utf8_lossy(&printed.stdout).trim().to_owned();
    let is_std = |name: &str| name.starts_with("libstd-") && name.ends_with(".rlib");
    printed.status.success()
        && std::fs::read_dir(folder).is_ok_and(|mut entries| {
            entries.any(|entry| entry.is_ok_and(|e| is_std(&e.file_name().to_string_lossy())))
        })
}

fn add_target(root: &Path) -> bool {
    let mut rustup = Command::new("rustup");
    rustup.current_dir(root).args(["target", "add", TARGET]);
    // Without rustup, or without its server, the next way is tried.
    ends_well(&mut rustup).unwrap_or(false)
}

/// Arguments of the build: the same on every way, except for the standard library's source.
fn arguments(way: &Way) -> Vec<&'static str> {
    let mut arguments = vec![
        "build",
        "--release",
        "--locked",
        "--lib",
        "--target",
        TARGET,
    ];
    arguments.extend(PACKAGES.iter().flat_map(|package| ["-p", package]));
    if matches!(way, Way::Debian(_)) {
        arguments.extend(["-Z", "build-std=std,panic_abort"]);
    }
    arguments
}

fn environment(way: &Way, target_folder: &Path) -> Vec<(&'static str, OsString)> {
    let mut variables = vec![("CARGO_TARGET_DIR", target_folder.into())];
    if let Way::Debian(compiler) = way {
        variables.extend([
            ("RUSTC", compiler.rustc().into()),
            // A stable compiler refuses `-Z` without this.
            ("RUSTC_BOOTSTRAP", "1".into()),
            ("LD_LIBRARY_PATH", compiler.libraries().into()),
            (
                "CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_LINKER",
                compiler.linker().into(),
            ),
        ]);
    }
    variables
}

/// Folder of the build, as cargo would choose it from here.
fn target_folder(root: &Path) -> Result<PathBuf, ChoreError> {
    let folder = match std::env::var_os("CARGO_TARGET_DIR") {
        Some(folder) if !folder.is_empty() => PathBuf::from(folder),
        _ => root.join("target"),
    };
    std::path::absolute(&folder).map_err(|source| ChoreError::Read {
        path: folder,
        source,
    })
}

/// Program named by a variable, or the usual one.
fn program(variable: &str, usual: &str) -> OsString {
    std::env::var_os(variable)
        .filter(|name| !name.is_empty())
        .unwrap_or_else(|| usual.into())
}

/// Runs a program with its output shown; returns whether it ended well.
fn ends_well(command: &mut Command) -> Result<bool, ChoreError> {
    let status = command.status().map_err(|source| ChoreError::Start {
        program: command.get_program().to_string_lossy().into_owned(),
        source,
    })?;
    Ok(status.success())
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::cell::Cell;

    fn compiler() -> Compiler {
        Compiler {
            folder: PathBuf::from("/t/debian"),
            n_llvm: 30,
        }
    }

    /// Way that is taken when the target is there at first, and rustup can (or cannot) add it.
    #[track_caller]
    fn check_way(is_from_debian: bool, is_there: bool, can_add: bool, expected: &str) {
        let there = Cell::new(is_there);
        let taken = way(
            is_from_debian,
            || there.get(),
            || {
                there.set(there.get() || can_add);
                can_add
            },
            || Ok(compiler()),
        )
        .expect("the last way is open");
        let name = match taken {
            Way::There => "there",
            Way::Added => "added",
            Way::Debian(_) => "debian",
        };
        assert_eq!(name, expected);
    }

    #[test]
    fn the_first_way_that_leads_to_a_compiler_is_taken() {
        check_way(false, true, true, "there");
        check_way(false, false, true, "added");
        check_way(false, false, false, "debian");
        check_way(true, true, true, "debian");
    }

    #[test]
    fn a_target_added_to_another_toolchain_is_no_way() {
        let taken = way(false, || false, || true, || Ok(compiler())).expect("a way is open");
        assert!(matches!(taken, Way::Debian(_)));
    }

    #[test]
    fn a_last_way_that_is_closed_ends_the_search() {
        let closed = || {
            Err(ChoreError::NoPackage {
                name: "rustc-web".to_owned(),
            })
        };
        assert!(way(false, || false, || false, closed).is_err());
    }

    #[test]
    fn every_way_builds_the_whole_core_from_the_lock_file() {
        for way in [Way::There, Way::Added, Way::Debian(compiler())] {
            let line = arguments(&way).join(" ");
            for part in [
                "--release",
                "--locked",
                "-p jointwright-units",
                "-p jointwright-numerics",
                "-p jointwright-joint",
                "-p jointwright-hatch",
            ] {
                assert!(line.contains(part), "{part} is missing from {line}");
            }
            assert_eq!(
                line.contains("build-std"),
                matches!(way, Way::Debian(_)),
                "{line}"
            );
        }
    }

    #[test]
    fn only_debians_way_changes_the_compiler() {
        let folder = Path::new("/t");
        assert_eq!(environment(&Way::There, folder).len(), 1);
        let shown: Vec<String> = environment(&Way::Debian(compiler()), folder)
            .into_iter()
            .map(|(name, value)| format!("{name}={}", value.to_string_lossy()))
            .collect();
        assert_eq!(
            shown,
            [
                "CARGO_TARGET_DIR=/t",
                "RUSTC=/t/debian/usr/bin/rustc",
                "RUSTC_BOOTSTRAP=1",
                &format!(
                    "LD_LIBRARY_PATH=/t/debian/usr/lib/{}-linux-gnu",
                    std::env::consts::ARCH
                ),
                "CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_LINKER=/t/debian/usr/bin/wasm-ld-30",
            ]
        );
    }
}
