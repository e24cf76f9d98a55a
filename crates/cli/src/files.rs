//! Files: reads a job with its catalogues, writes what came out.
//!
//! Invariants: only regular files of a stated size are read, and no more of one than that, whatever it says of itself.
//! What is written is written beside its place and put there when all of it is whole; the document of a plan is taken away first and put there last, so that a folder that holds one holds one generation.
//! A run that was killed leaves files that the next one knows and takes away.

use jointwright_joint::cable::Words;
use jointwright_joint::catalogue::{DEMONSTRATION, DEMONSTRATION_TEXT};
use jointwright_joint::form::{Complaint, Source};
use jointwright_joint::job::{ListName, Order, catalogue_names, list_names, read_order_from};
use jointwright_joint::judge::{self, Judged};
use jointwright_wording::Tongue;
use std::fs::{FileType, Metadata};
use std::io::{ErrorKind, Read, Write};
use std::path::{Path, PathBuf};
use std::time::Duration;

/// Largest file that is read, bytes.
const SIZE_MOST: u64 = 8 << 20;
/// Name of the document that stands for a whole plan: taken away first, put there last.
const DOCUMENT: &str = "plan.json";
/// How the name of a file begins and ends that is not whole yet; between them stands the number of the process that writes it.
const PART: (&str, &str) = (".jointwright-", ".part");
/// After so long a file that is not whole is nobody's, whatever else is known.
const STALE: Duration = Duration::from_secs(3600);

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
    #[error("cannot write {path}: {source}; nothing there has been changed")]
    File {
        /// Which.
        path: PathBuf,
        /// Why.
        source: std::io::Error,
    },
    /// What stands in a file's place is none.
    #[error("cannot write {path}: {what} stands there; move it away, or choose another place")]
    Taken {
        /// Which.
        path: PathBuf,
        /// What it is.
        what: &'static str,
    },
    /// A new file is there already.
    #[error(
        "{path} is there already and stays as it is: `new` never writes over a file; give another name"
    )]
    Exists {
        /// Which.
        path: PathBuf,
    },
}

/// Why a file is not read, as the end of a sentence.
fn bytes(path: &Path) -> Result<Vec<u8>, String> {
    // Before it is opened: a pipe would wait for ever for somebody who writes into it.
    let about = std::fs::metadata(path).map_err(|error| why(path, &error))?;
    is_readable(&about)?;
    let file = std::fs::File::open(path).map_err(|error| why(path, &error))?;
    let about = file.metadata().map_err(|error| why(path, &error))?;
    is_readable(&about)?;
    let mut bytes = Vec::new();
    // A file may grow, or say that it is empty and be without end.
    file.take(SIZE_MOST + 1)
        .read_to_end(&mut bytes)
        .map_err(|error| why(path, &error))?;
    if bytes.len() as u64 > SIZE_MOST {
        return Err(too_large());
    }
    Ok(bytes)
}

fn is_readable(about: &Metadata) -> Result<(), String> {
    if !about.is_file() {
        let what = kind(about.file_type());
        return Err(format!("it is {what}, and only regular files are read"));
    }
    if about.len() > SIZE_MOST {
        return Err(too_large());
    }
    Ok(())
}

fn too_large() -> String {
    format!("it has more than the {SIZE_MOST} bytes that are read of one file")
}

/// Why, and where the file was looked for.
fn why(path: &Path, error: &std::io::Error) -> String {
    let place = std::path::absolute(path).unwrap_or_else(|_| path.to_owned());
    match error.kind() {
        ErrorKind::NotFound => format!("nothing is at {}", place.display()),
        _ => format!("{error}, at {}", place.display()),
    }
}

fn kind(of: FileType) -> &'static str {
    if of.is_dir() {
        return "a folder";
    }
    #[cfg(unix)]
    {
        use std::os::unix::fs::FileTypeExt;
        if of.is_fifo() {
            return "a pipe";
        }
        if of.is_char_device() || of.is_block_device() {
            return "a device";
        }
        if of.is_socket() {
            return "a socket";
        }
    }
    "no regular file"
}

/// Reads a job with the catalogues and files of rows that it names, beside it.
///
/// # Errors
/// Every complaint as a line in the language of the job, files that cannot be read among them.
pub fn read(path: &Path) -> Result<Order, Vec<String>> {
    let english = Tongue::english(Words::Us);
    let source = read_source(path).map_err(|complaint| lines(english, &[complaint]))?;
    let tongue = Tongue::of_source(&source);
    read_order(path, &source).map_err(|complaints| lines(tongue, &complaints))
}

/// Complaints as lines.
pub fn lines(tongue: Tongue, complaints: &[Complaint]) -> Vec<String> {
    let texts = tongue.complaints(complaints);
    texts.iter().map(ToString::to_string).collect()
}

/// Judges an order, and passes the result to `then`.
///
/// # Errors
/// Every complaint about rows that contradict each other, in the language of the job.
pub fn with_judged<T>(order: Order, then: impl FnOnce(&Judged<'_>) -> T) -> Result<T, Vec<String>> {
    let tongue = Tongue::of(&order.job);
    judge::with_judged(order, then).map_err(|complaints| lines(tongue, &complaints))
}

fn read_order(path: &Path, source: &Source) -> Result<Order, Vec<Complaint>> {
    let names = catalogue_names(source);
    let catalogues = names
        .iter()
        .map(|(name, at)| catalogue(path, source, name, *at));
    let lists = list_names(source).into_iter();
    let lists = lists.map(|named| (named.field, list(path, source, &named)));
    read_order_from(source, catalogues.collect(), lists.collect())
}

fn list(job: &Path, source: &Source, named: &ListName) -> Result<Source, Complaint> {
    let file = job.parent().unwrap_or(Path::new("")).join(&named.name);
    match bytes(&file) {
        Ok(bytes) => Source::from_csv_bytes(&shown(&file), &bytes),
        Err(why) => Err(source.complaint(
            named.at,
            format!("The file of rows \"{}\" cannot be read: {why}.", named.name),
            format!("`{}` names a CSV file beside the job.", named.field),
        )),
    }
}

fn catalogue(job: &Path, source: &Source, name: &str, at: usize) -> Result<Source, Complaint> {
    if name == DEMONSTRATION {
        return Ok(Source::new(DEMONSTRATION, DEMONSTRATION_TEXT.to_owned()));
    }
    let file = job.parent().unwrap_or(Path::new("")).join(name);
    match bytes(&file) {
        Ok(bytes) => Source::from_bytes(&shown(&file), &bytes),
        Err(why) => Err(source.complaint(
            at,
            format!("The catalogue \"{name}\" cannot be read: {why}."),
            format!("Catalogues are files beside the job, or \"{DEMONSTRATION}\"."),
        )),
    }
}

fn read_source(path: &Path) -> Result<Source, Complaint> {
    match bytes(path) {
        Ok(bytes) => Source::from_bytes(&shown(path), &bytes),
        Err(why) => Err(Source::new(&shown(path), String::new()).complaint(
            0,
            format!("The job file cannot be read: {why}."),
            "Give the path of a job; `jointwright new FILE` writes one to start from.",
        )),
    }
}

/// A catalogue by its path, or the embedded one by its name.
///
/// # Errors
/// That it cannot be read.
pub fn read_catalogue(path: &Path) -> Result<Source, Complaint> {
    if path == Path::new(DEMONSTRATION) {
        return Ok(Source::new(DEMONSTRATION, DEMONSTRATION_TEXT.to_owned()));
    }
    match bytes(path) {
        Ok(bytes) => Source::from_bytes(&shown(path), &bytes),
        Err(why) => Err(Source::new(&shown(path), String::new()).complaint(
            0,
            format!("The catalogue file cannot be read: {why}."),
            format!("Give the path of a catalogue, or \"{DEMONSTRATION}\"."),
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
    match bytes(path) {
        Ok(bytes) => String::from_utf8(bytes).map_err(|error| {
            let good =
                String::from_utf8_lossy(&error.as_bytes()[..error.utf8_error().valid_up_to()]);
            let source = Source::new(&shown(path), good.into_owned());
            let message = "The byte here is not UTF-8 text; a case is plain UTF-8 JSON.";
            format!("{} {message}", source.span(usize::MAX))
        }),
        Err(why) => Err(format!(
            "{}:1:1 The case file cannot be read: {why}. Hint: Give the path of a section case; docs/case-format.md says what stands in one.",
            path.display()
        )),
    }
}

/// Writes one file, whole or not at all.
///
/// # Errors
/// The file, where it cannot be written.
pub fn write_file(path: &Path, text: &str) -> Result<(), WriteError> {
    let folder = folder_of(path);
    sweep(folder);
    let written = is_free(path).and_then(|()| {
        let part = part(folder, path, text.as_bytes())?;
        part.persist(path).map_err(|error| at(path, error.error))
    });
    written.map(drop)
}

fn folder_of(path: &Path) -> &Path {
    match path.parent() {
        Some(folder) if !folder.as_os_str().is_empty() => folder,
        _ => Path::new("."),
    }
}

fn at(path: &Path, source: std::io::Error) -> WriteError {
    WriteError::File {
        path: path.to_owned(),
        source,
    }
}

/// Writes files into a folder, which is made where it does not exist: all of them, or none.
///
/// Pictures of legs that an earlier plan left there and this one does not write are taken away.
///
/// # Errors
/// The folder or file that cannot be written; what stood there stands there still.
pub fn write(folder: &Path, files: &[(String, Vec<u8>)]) -> Result<(), WriteError> {
    std::fs::create_dir_all(folder).map_err(|source| WriteError::Folder {
        path: folder.to_owned(),
        source,
    })?;
    sweep(folder);
    let mut parts = Vec::new();
    for (name, bytes) in files {
        let path = folder.join(name);
        is_free(&path)?;
        parts.push((part(folder, &path, bytes)?, path));
    }
    // The document stands for the whole: put there last.
    parts.sort_by_key(|(_, path)| path.ends_with(DOCUMENT));
    let is_plan = parts.iter().any(|(_, path)| path.ends_with(DOCUMENT));
    let kept: Vec<&Path> = parts.iter().map(|(_, path)| path.as_path()).collect();
    // The document is the last of those kept, and the first to go.
    let mut old: Vec<PathBuf> = kept.iter().rev().map(|path| path.to_path_buf()).collect();
    if is_plan {
        old.extend(older_pictures(folder, &kept)?);
    }
    let mut moved = Moved::default();
    for path in old {
        if let Err(error) = moved.aside(folder, &path) {
            moved.back();
            return Err(error);
        }
    }
    for (part, path) in parts {
        match part.persist(&path) {
            Ok(_) => moved.new.push(path),
            Err(error) => {
                moved.back();
                return Err(at(&path, error.error));
            }
        }
    }
    Ok(())
}

/// Old files that were moved aside, and new ones that took their places.
#[derive(Default)]
struct Moved {
    old: Vec<(tempfile::TempPath, PathBuf)>,
    new: Vec<PathBuf>,
}

impl Moved {
    /// Moves a file aside, where there is one; it is gone when this is.
    fn aside(&mut self, folder: &Path, path: &Path) -> Result<(), WriteError> {
        if path.symlink_metadata().is_err() {
            return Ok(());
        }
        let place = beside(folder).map_err(|error| at(path, error))?;
        let place = place.into_temp_path();
        std::fs::rename(path, &place).map_err(|error| at(path, error))?;
        self.old.push((place, path.to_owned()));
        Ok(())
    }

    /// Puts everything back as it was, as far as the disk lets it.
    fn back(self) {
        for path in self.new {
            let _ = std::fs::remove_file(path);
        }
        for (place, path) in self.old {
            let _ = place.persist(path);
        }
    }
}

/// Half-sections that an earlier plan left in a folder and this one does not write, so that none stands beside a plan it does not belong to.
fn older_pictures(folder: &Path, kept: &[&Path]) -> Result<Vec<PathBuf>, WriteError> {
    let mut found = Vec::new();
    for entry in std::fs::read_dir(folder).map_err(|error| at(folder, error))? {
        let path = entry.map_err(|error| at(folder, error))?.path();
        let name = path.file_name().map(|n| n.to_string_lossy().into_owned());
        let name = name.unwrap_or_default();
        let is_ours = name.starts_with("leg-")
            && name.ends_with(".svg")
            && bytes(&path).is_ok_and(|svg| String::from_utf8_lossy(&svg).contains("jointwright"));
        if is_ours && !kept.contains(&path.as_path()) {
            found.push(path);
        }
    }
    Ok(found)
}

/// Whether a file may be put in a place: nothing is there, or a regular file.
fn is_free(path: &Path) -> Result<(), WriteError> {
    match std::fs::metadata(path) {
        Ok(about) if !about.is_file() => Err(WriteError::Taken {
            path: path.to_owned(),
            what: kind(about.file_type()),
        }),
        _ => Ok(()),
    }
}

/// Whole contents in a file beside their place, on the disk.
fn part(folder: &Path, path: &Path, bytes: &[u8]) -> Result<tempfile::NamedTempFile, WriteError> {
    let write = || {
        let mut file = beside(folder)?;
        file.write_all(bytes)?;
        file.as_file().sync_all()?;
        Ok(file)
    };
    write().map_err(|error| at(path, error))
}

/// New file in the folder, to be renamed when it is whole.
fn beside(folder: &Path) -> std::io::Result<tempfile::NamedTempFile> {
    let mut builder = tempfile::Builder::new();
    let begin = format!("{}{}-", PART.0, std::process::id());
    builder.prefix(&begin).suffix(PART.1);
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt;
        // As any new file: the umask takes away what it takes from others.
        builder.permissions(std::fs::Permissions::from_mode(0o666));
    }
    builder.tempfile_in(folder)
}

/// Takes away what a run that was killed left in a folder; what a run that goes on is writing stays.
fn sweep(folder: &Path) {
    let Ok(entries) = std::fs::read_dir(folder) else {
        return;
    };
    for entry in entries.flatten() {
        let name = entry.file_name().to_string_lossy().into_owned();
        let Some(middle) = name
            .strip_prefix(PART.0)
            .and_then(|rest| rest.strip_suffix(PART.1))
        else {
            continue;
        };
        let about = entry.metadata();
        let age = about
            .as_ref()
            .ok()
            .and_then(|a| a.modified().ok()?.elapsed().ok());
        let is_old = age.is_some_and(|age| age > STALE);
        let process = middle.split('-').next().unwrap_or_default();
        if about.is_ok_and(|a| a.is_file()) && (is_old || is_gone(process)) {
            // What cannot be taken away is in nobody's way.
            let _ = std::fs::remove_file(entry.path());
        }
    }
}

/// Whether a process is surely gone, where the system shows its processes.
fn is_gone(process: &str) -> bool {
    let is_number = !process.is_empty() && process.chars().all(|c| c.is_ascii_digit());
    let shows = Path::new("/proc/self").exists();
    is_number && shows && !Path::new("/proc").join(process).exists()
}

/// Letters in a folder that are not among these.
pub fn other_letters(folder: &Path, names: &[&str]) -> Vec<String> {
    let entries = std::fs::read_dir(folder).into_iter().flatten().flatten();
    let found = entries.filter_map(|entry| entry.file_name().into_string().ok());
    let mut others: Vec<String> = found
        .filter(|name| name.starts_with("ask-") && !names.contains(&name.as_str()))
        .collect();
    others.sort();
    others
}

/// Writes a file that does not exist yet, whole or not at all.
///
/// # Errors
/// The file, where it exists or cannot be written.
pub fn write_new(path: &Path, text: &str) -> Result<(), WriteError> {
    let exists = || WriteError::Exists {
        path: path.to_owned(),
    };
    if path.symlink_metadata().is_ok() {
        return Err(exists());
    }
    let folder = folder_of(path);
    sweep(folder);
    let part = part(folder, path, text.as_bytes())?;
    match part.persist_noclobber(path) {
        Ok(_) => Ok(()),
        Err(error) if error.error.kind() == ErrorKind::AlreadyExists => Err(exists()),
        Err(error) => Err(at(path, error.error)),
    }
}
