//! Files: reads a job with its catalogues, writes what came out.

use jointwright_joint::catalogue::{DEMONSTRATION, DEMONSTRATION_TEXT};
use jointwright_joint::form::{Complaint, Source};
use jointwright_joint::job::{Order, catalogue_names, read_order_from};
use std::io::Write;
use std::path::{Path, PathBuf};

/// What can go wrong when writing.
#[derive(Debug, thiserror::Error)]
pub enum WriteError {
    /// Folder.
    #[error("cannot make the folder {path}: {source}; choose another with --out")]
    Folder {
        /// Which.
        path: PathBuf,
        /// Why.
        source: std::io::Error,
    },
    /// File.
    #[error("cannot write {path}: {source}")]
    File {
        /// Which.
        path: PathBuf,
        /// Why.
        source: std::io::Error,
    },
}

/// Reads a job and the catalogues that it names, beside it.
///
/// # Errors
/// Every complaint, files that cannot be read among them.
pub fn read(path: &Path) -> Result<Order, Vec<Complaint>> {
    let source = read_source(path).map_err(|complaint| vec![complaint])?;
    let names = catalogue_names(&source);
    let catalogues = names
        .iter()
        .map(|(name, at)| catalogue(path, &source, name, *at));
    read_order_from(&source, catalogues.collect())
}

fn catalogue(job: &Path, source: &Source, name: &str, at: usize) -> Result<Source, Complaint> {
    if name == DEMONSTRATION {
        return Ok(Source::new(DEMONSTRATION, DEMONSTRATION_TEXT.to_owned()));
    }
    let file = job.parent().unwrap_or(Path::new("")).join(name);
    match std::fs::read(&file) {
        Ok(bytes) => Source::from_bytes(&shown(&file), &bytes),
        Err(error) => Err(source.complaint(
            at,
            format!("The catalogue \"{name}\" cannot be read: {error}."),
            format!("Catalogues are files beside the job, or \"{DEMONSTRATION}\"."),
        )),
    }
}

fn read_source(path: &Path) -> Result<Source, Complaint> {
    match std::fs::read(path) {
        Ok(bytes) => Source::from_bytes(&shown(path), &bytes),
        Err(error) => Err(Source::new(&shown(path), String::new()).complaint(
            0,
            format!("The job file cannot be read: {error}."),
            "Give the path of a job; `jointwright new FILE` writes one to start from.",
        )),
    }
}

fn shown(path: &Path) -> String {
    path.display().to_string()
}

/// Text of a file that must be UTF-8.
///
/// # Errors
/// A line that says why there is none, with line and column where they can be told.
pub fn read_text(path: &Path) -> Result<String, String> {
    match std::fs::read(path) {
        Ok(bytes) => String::from_utf8(bytes).map_err(|error| {
            let good =
                String::from_utf8_lossy(&error.as_bytes()[..error.utf8_error().valid_up_to()]);
            let source = Source::new(&shown(path), good.into_owned());
            let message = "The byte here is not UTF-8 text; a case is plain UTF-8 JSON.";
            source
                .complaint(usize::MAX, message.to_owned(), "")
                .to_string()
        }),
        Err(error) => Err(format!(
            "{}:1:1 The case file cannot be read: {error}. Hint: Give the path of a section case; docs/case-format.md says what stands in one.",
            path.display()
        )),
    }
}

/// Writes one file, whole or not at all.
///
/// # Errors
/// The file, where it cannot be written.
pub fn write_file(path: &Path, text: &str) -> Result<(), WriteError> {
    let folder = match path.parent() {
        Some(folder) if !folder.as_os_str().is_empty() => folder,
        _ => Path::new("."),
    };
    replace(folder, path, text.as_bytes()).map_err(|source| WriteError::File {
        path: path.to_owned(),
        source,
    })
}

/// Writes files into a folder, which is made where it does not exist.
///
/// # Errors
/// The folder or file that cannot be written.
pub fn write(folder: &Path, files: &[(String, Vec<u8>)]) -> Result<(), WriteError> {
    std::fs::create_dir_all(folder).map_err(|source| WriteError::Folder {
        path: folder.to_owned(),
        source,
    })?;
    for (name, bytes) in files {
        let path = folder.join(name);
        replace(folder, &path, bytes).map_err(|source| WriteError::File { path, source })?;
    }
    Ok(())
}

/// Takes away half-sections that an earlier plan left in a folder and this one does not write, so that none stands beside a plan it does not belong to.
///
/// # Errors
/// The folder or file that cannot be read or taken away.
pub fn clear_pictures(folder: &Path, kept: &[&str]) -> Result<(), WriteError> {
    let at = |path: &Path| {
        let path = path.to_owned();
        |source| WriteError::File { path, source }
    };
    for entry in std::fs::read_dir(folder).map_err(at(folder))? {
        let path = entry.map_err(at(folder))?.path();
        let name = path.file_name().map(|n| n.to_string_lossy().into_owned());
        let name = name.unwrap_or_default();
        let is_ours = name.starts_with("leg-")
            && name.ends_with(".svg")
            && std::fs::read_to_string(&path).is_ok_and(|svg| svg.contains("jointwright"));
        if is_ours && !kept.contains(&name.as_str()) {
            std::fs::remove_file(&path).map_err(at(&path))?;
        }
    }
    Ok(())
}

/// Puts whole contents in the place of a file, so that a power cut leaves the old one or the new one, never half of either.
fn replace(folder: &Path, path: &Path, bytes: &[u8]) -> std::io::Result<()> {
    let mut file = beside(folder)?;
    file.write_all(bytes)?;
    file.as_file().sync_all()?;
    file.persist(path)?;
    Ok(())
}

/// New file in the folder, to be renamed when it is whole.
fn beside(folder: &Path) -> std::io::Result<tempfile::NamedTempFile> {
    let mut builder = tempfile::Builder::new();
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt;
        // As any new file: the umask takes away what it takes from others.
        builder.permissions(std::fs::Permissions::from_mode(0o666));
    }
    builder.tempfile_in(folder)
}

/// Writes a file that does not exist yet.
///
/// # Errors
/// The file, where it exists or cannot be written.
pub fn write_new(path: &Path, text: &str) -> Result<(), WriteError> {
    let file = std::fs::OpenOptions::new()
        .write(true)
        .create_new(true)
        .open(path);
    file.and_then(|mut file| file.write_all(text.as_bytes()))
        .map_err(|source| WriteError::File {
            path: path.to_owned(),
            source,
        })
}
