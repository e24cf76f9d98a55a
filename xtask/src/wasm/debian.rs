//! Debian: a compiler for wasm32 from Debian's packages, for machines whose rustup cannot add the target.
//!
//! **What.** Asks apt for the current packages, downloads them and unpacks them into a folder of their own.
//!
//! **Why separate.** No other file here knows apt; deleting this file removes the third way.
//!
//! **Invariants.** Nothing is installed: the package `rustc-web` conflicts with rustup, but its unpacked files do not.
//! No version stands here: apt's current lists give the versions, and a file beside the unpacked packages keeps them.
//!
//! **Not here.** The choice of this way, and the build itself (`wasm`).

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};
use std::process::Command;

use super::ends_well;
use crate::error::ChoreError;

/// Folder below the target folder.
const FOLDER: &str = "debian-rustc-web";
/// File that lists the packages unpacked beside it: one line `name version` for each.
const UNPACKED: &str = "unpacked.txt";
/// The compiler; it includes the machine's own library, for build scripts and macros.
const COMPILER: &str = "rustc-web";
/// Source of the standard library.
const SOURCE: &str = "rust-web-src";

/// Needs of each package: names of other packages.
type Needs = BTreeMap<String, Vec<String>>;

/// An unpacked compiler.
#[derive(Debug)]
pub struct Compiler {
    /// Folder that it was unpacked into.
    pub folder: PathBuf,
    /// Version number of the LLVM that it was built with; the linker's name contains it.
    pub n_llvm: u32,
}

impl Compiler {
    /// The compiler.
    pub fn rustc(&self) -> PathBuf {
        self.folder.join("usr/bin/rustc")
    }

    /// The linker for wasm32.
    pub fn linker(&self) -> PathBuf {
        self.folder
            .join("usr/bin")
            .join(format!("wasm-ld-{}", self.n_llvm))
    }

    /// Folder of the shared libraries that both need.
    pub fn libraries(&self) -> PathBuf {
        self.folder
            .join("usr/lib")
            .join(format!("{}-linux-gnu", std::env::consts::ARCH))
    }
}

/// The compiler below `target_folder`.
/// It is downloaded and unpacked first if apt's current version is not there.
///
/// # Errors
/// If apt is missing or does not know a package, if a package cannot be downloaded or unpacked, or if the unpacked compiler does not start.
pub fn compiler(target_folder: &Path) -> Result<Compiler, ChoreError> {
    let needs = needs_in(&output(
        "apt-cache",
        &["--important", "--recurse", "depends", COMPILER, SOURCE],
    )?);
    let names = names(&needs, &installed()?);
    let n_llvm = n_llvm(&names)?;
    let list = list(&names)?;
    let folder = target_folder.join(FOLDER);
    let compiler = Compiler {
        folder: folder.clone(),
        n_llvm,
    };
    let kept = folder.join(UNPACKED);
    if std::fs::read_to_string(&kept).is_ok_and(|text| text == list) {
        return Ok(compiler);
    }
    if folder.exists() {
        std::fs::remove_dir_all(&folder).map_err(cannot_write(&folder))?;
    }
    std::fs::create_dir_all(&folder).map_err(cannot_write(&folder))?;
    fetch(&folder, &list)?;
    point_at_source(&folder)?;
    for program in [compiler.rustc(), compiler.linker()] {
        let mut command = Command::new(&program);
        command.arg("--version");
        command.env("LD_LIBRARY_PATH", compiler.libraries());
        must_end_well(&mut command)?;
    }
    // Written last, so that half an attempt is not taken for a whole one.
    std::fs::write(&kept, list).map_err(cannot_write(&kept))?;
    Ok(compiler)
}

/// Packages to unpack: the compiler, the source, the linker of the same LLVM, and the libraries among their needs.
fn names(needs: &Needs, installed: &BTreeSet<String>) -> BTreeSet<String> {
    let mut names = BTreeSet::new();
    let mut open = vec![COMPILER.to_owned(), SOURCE.to_owned()];
    while let Some(name) = open.pop() {
        if !names.insert(name.clone()) {
            continue;
        }
        if let Some(number) = name.strip_prefix("libllvm") {
            open.push(format!("lld-{number}"));
        }
        // Needs other than libraries (a C compiler, say) were necessary to get this far, so they are there.
        // An installed library is used as it is; the compiler's own libraries are searched in its own folder.
        let is_wanted = |name: &&String| {
            name.starts_with("libstd-rust-web")
                || name.starts_with("libllvm")
                || (name.starts_with("lib") && !installed.contains(*name))
        };
        open.extend(
            needs
                .get(&name)
                .into_iter()
                .flatten()
                .filter(is_wanted)
                .cloned(),
        );
    }
    names
}

/// Version number of the LLVM among the packages.
fn n_llvm(names: &BTreeSet<String>) -> Result<u32, ChoreError> {
    names
        .iter()
        .find_map(|name| name.strip_prefix("libllvm")?.parse().ok())
        .ok_or_else(|| ChoreError::NoPackage {
            name: "libllvm<number>".to_owned(),
        })
}

/// Names of the packages that are installed on this machine.
fn installed() -> Result<BTreeSet<String>, ChoreError> {
    let text = output(
        "dpkg-query",
        &["-W", "-f", "${db:Status-Status} ${Package}\n"],
    )?;
    let names = text
        .lines()
        .filter_map(|line| line.strip_prefix("installed "));
    Ok(names.map(str::to_owned).collect())
}

/// Needs of each package, read from the output of `apt-cache depends`.
/// Of alternatives the last counts; a name that only other packages provide is left out.
fn needs_in(text: &str) -> Needs {
    let mut needs = Needs::new();
    let mut name = "";
    for line in text.lines() {
        if !line.starts_with([' ', '|']) {
            name = line;
        } else if let Some(needed) = line.strip_prefix("  Depends: ")
            && !needed.starts_with('<')
        {
            needs
                .entry(name.to_owned())
                .or_default()
                .push(needed.to_owned());
        }
    }
    needs
}

/// The packages with the versions that apt would take, one line `name version` each.
fn list(names: &BTreeSet<String>) -> Result<String, ChoreError> {
    let mut arguments = vec!["policy"];
    arguments.extend(names.iter().map(String::as_str));
    let versions = candidates_in(&output("apt-cache", &arguments)?);
    let mut list = String::new();
    for name in names {
        let Some(version) = versions.get(name) else {
            return Err(ChoreError::NoPackage { name: name.clone() });
        };
        list.push_str(&format!("{name} {version}\n"));
    }
    Ok(list)
}

/// Version of each package for which `apt-cache policy` has a candidate.
fn candidates_in(text: &str) -> BTreeMap<String, String> {
    let mut candidates = BTreeMap::new();
    let mut name = "";
    for line in text.lines() {
        if !line.starts_with(' ') {
            name = line.trim_end_matches(':');
        } else if let Some(version) = line.strip_prefix("  Candidate: ")
            && version != "(none)"
        {
            candidates.insert(name.to_owned(), version.to_owned());
        }
    }
    candidates
}

/// Downloads the packages of a list and unpacks each into the folder.
fn fetch(folder: &Path, list: &str) -> Result<(), ChoreError> {
    let wanted = list.lines().map(|line| line.replace(' ', "="));
    let mut download = Command::new("apt-get");
    download
        .current_dir(folder)
        .args(["-q", "download"])
        .args(wanted);
    must_end_well(&mut download)?;
    for entry in std::fs::read_dir(folder).map_err(cannot_read(folder))? {
        let package = entry.map_err(cannot_read(folder))?.path();
        if package.extension().is_none_or(|ending| ending != "deb") {
            continue;
        }
        let mut unpack = Command::new("dpkg-deb");
        unpack.arg("-x").arg(&package).arg(folder);
        must_end_well(&mut unpack)?;
        std::fs::remove_file(&package).map_err(cannot_write(&package))?;
    }
    Ok(())
}

/// Moves the source to the folder where the compiler looks for it, unless the package already did so.
fn point_at_source(folder: &Path) -> Result<(), ChoreError> {
    let link = folder.join("usr/lib/rustlib/src/rust");
    if link.join("library/std").is_dir() {
        return Ok(());
    }
    let sources = folder.join("usr/src");
    let mut source = None;
    for entry in std::fs::read_dir(&sources).map_err(cannot_read(&sources))? {
        let path = entry.map_err(cannot_read(&sources))?.path();
        if path.join("library/std").is_dir() {
            source = Some(path);
        }
    }
    let Some(source) = source else {
        return Err(ChoreError::NoPackage {
            name: format!("{SOURCE} (with usr/src/rustc-*/library/std in it)"),
        });
    };
    if let Some(above) = link.parent() {
        std::fs::create_dir_all(above).map_err(cannot_write(above))?;
    }
    let mut tie = Command::new("ln");
    tie.arg("-sfn").arg(source).arg(link);
    must_end_well(&mut tie)
}

/// Output of a program.
fn output(program: &str, arguments: &[&str]) -> Result<String, ChoreError> {
    let printed = Command::new(program)
        .args(arguments)
        .env("LC_ALL", "C")
        .output()
        .map_err(|source| ChoreError::Start {
            program: program.to_owned(),
            source,
        })?;
    Ok(String::from_utf8_lossy(&printed.stdout).into_owned())
}

fn must_end_well(command: &mut Command) -> Result<(), ChoreError> {
    if ends_well(command)? {
        return Ok(());
    }
    Err(ChoreError::Ended {
        program: command.get_program().to_string_lossy().into_owned(),
    })
}

fn cannot_read(path: &Path) -> impl Fn(std::io::Error) -> ChoreError {
    let path = path.to_owned();
    move |source| ChoreError::Read {
        path: path.clone(),
        source,
    }
}

fn cannot_write(path: &Path) -> impl Fn(std::io::Error) -> ChoreError {
    let path = path.to_owned();
    move |source| ChoreError::Write {
        path: path.clone(),
        source,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// An archive in which the compiler needs an LLVM, and that a library which may be installed.
    const ARCHIVE: &str = "rustc-web
  Depends: gcc
  Depends: libc6
  Depends: libstd-rust-web-dev
  Depends: <libc-dev>
    libc6-dev
  Conflicts: librust-old
libstd-rust-web-dev
  Depends: libstd-rust-web-1.99
libstd-rust-web-1.99
  Depends: libllvm30
libllvm30
  Depends: libc6
 |Depends: libz2
  Depends: libz3-4
gcc
  Depends: libgmp10
rust-web-src
";

    #[track_caller]
    fn check_names(installed: &[&str], expected: &str) {
        let installed = installed.iter().map(|name| (*name).to_owned()).collect();
        let found = names(&needs_in(ARCHIVE), &installed);
        let found: Vec<String> = found.into_iter().collect();
        assert_eq!(found.join(" "), expected);
    }

    #[test]
    fn the_linker_is_that_of_the_compilers_own_llvm() {
        check_names(
            &["gcc", "libc6", "libz3-4"],
            "libllvm30 libstd-rust-web-1.99 libstd-rust-web-dev lld-30 rust-web-src rustc-web",
        );
    }

    #[test]
    fn a_library_is_fetched_only_where_it_is_not_installed() {
        check_names(
            &["libc6", "libllvm30"],
            "libllvm30 libstd-rust-web-1.99 libstd-rust-web-dev libz3-4 lld-30 rust-web-src rustc-web",
        );
    }

    #[test]
    fn the_number_of_the_llvm_is_read_from_its_name_and_its_absence_noticed() {
        let found = names(&needs_in(ARCHIVE), &BTreeSet::new());
        assert_eq!(n_llvm(&found).expect("there is one"), 30);
        let found = names(&needs_in(""), &BTreeSet::new());
        assert!(n_llvm(&found).is_err());
    }

    #[test]
    fn a_version_is_read_where_there_is_one() {
        let text = "rustc-web:\n  Installed: (none)\n  Candidate: 1.96.0+dfsg1-1~deb12u2\n  Version table:\n     1.96.0 500\nlld-30:\n  Installed: (none)\n  Candidate: (none)\n";
        let found: Vec<_> = candidates_in(text).into_iter().collect();
        let expected = ("rustc-web".to_owned(), "1.96.0+dfsg1-1~deb12u2".to_owned());
        assert_eq!(found, [expected]);
    }
}
