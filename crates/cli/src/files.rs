//! Files: reads a job with its catalogues, writes the results.
//!
//! Invariants: it reads regular files only, and never more bytes of one than a fixed limit, whatever size the file states.
//! It writes each file under a temporary name beside its place, and renames it when all files are whole.
//! It removes the old document of a plan first and puts the new one in place last: a folder with a document holds the files of one run only.
//! A run that was killed leaves temporary files; the next run recognises and removes them.

use jointwright_joint::cable::Words;
use jointwright_joint::catalogue::{DEMONSTRATION, DEMONSTRATION_TEXT};
use jointwright_joint::form::{Complaint, Source};
use jointwright_joint::job::{ListName, Order, catalogue_names, list_names, read_order_from};
use jointwright_joint::judge::{self, Judged};
use jointwright_joint::model::Model;
use jointwright_wording::Tongue;
use std::fs::{FileType, Metadata};
use std::io::{ErrorKind, Read, Write};
use std::path::{Path, PathBuf};
use std::time::Duration;

/// Size of the largest file that is read, bytes.
const SIZE_MOST: u64 = 8 << 20;
/// Name of the document that stands for a whole plan: it is removed first and put in place last.
const DOCUMENT: &str = "plan.json";
/// Beginning and end of the name of a file that is not whole yet; the number of the process that writes it stands between them.
const PART: (&str, &str) = (".jointwright-", ".part");
/// Age from which a file that is not whole belongs to nobody, even if a process with its number runs.
const STALE: Duration = Duration::from_secs(3600);

/// Errors of writing.
#[derive(Debug, thiserror::Error)]
pub enum WriteError {
    /// The folder cannot be made.
    #[error("cannot make the folder {path}: {source}; choose another with --out")]
    Folder {
        /// Folder.
        path: PathBuf,
        /// Cause.
        source: std::io::Error,
    },
    /// The file cannot be written.
    #[error("cannot write {path}: {source}; nothing there has been changed")]
    File {
        /// File.
        path: PathBuf,
        /// Cause.
        source: std::io::Error,
    },
    /// Something that is not a regular file stands in the file's place.
    #[error("cannot write {path}: {what} stands there; move it away, or choose another place")]
    Taken {
        /// Place.
        path: PathBuf,
        /// Kind of thing that stands there.
        what: &'static str,
    },
    /// A file that was to be new exists already.
    #[error(
        "{path} is there already and stays as it is: `new` never writes over a file; give another name"
    )]
    Exists {
        /// File.
        path: PathBuf,
    },
}

/// Returns the bytes of a file, or the reason why it is not read as the end of a sentence.
fn bytes(path: &Path) -> Result<Vec<u8>, String> {
    // This check comes before opening: opening a pipe would wait for ever for a writer.
    let about = std::fs::metadata(path).map_err(|error| why(path, &error))?;
    is_readable(&about)?;
    let file = std::fs::File::open(path).map_err(|error| why(path, &error))?;
    let about = file.metadata().map_err(|error| why(path, &error))?;
    is_readable(&about)?;
    let mut bytes = Vec::new();
    // A file may grow, or state a size of 0 and never end.
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

/// Returns the reason, and the place where the file was looked for.
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

/// Reads a job, and the catalogues and files of rows beside it that it names.
///
/// # Errors
/// Every complaint as a line in the language of the job; a file that cannot be read is one of them.
pub fn read(path: &Path) -> Result<Order, Vec<String>> {
    let english = Tongue::english(Words::Us);
    let source = read_source(path).map_err(|complaint| lines(english, &[complaint]))?;
    let tongue = Tongue::of_source(&source);
    read_order(path, &source).map_err(|complaints| lines(tongue, &complaints))
}

/// Returns the complaints as lines.
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

/// Judges an order and passes on its model too; complaints are printed in its tongue.
///
/// # Errors
/// As for [`with_judged`].
pub fn with_model<T>(
    order: Order,
    then: impl FnOnce(&Model, &Judged<'_>) -> T,
) -> Result<T, Vec<String>> {
    let tongue = Tongue::of(&order.job);
    judge::with_model(order, then).map_err(|complaints| lines(tongue, &complaints))
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

/// Reads a file of readings as built.
///
/// # Errors
/// A complaint if the file cannot be read.
pub fn read_readings(path: &Path) -> Result<Source, Complaint> {
    match bytes(path) {
        Ok(bytes) => Source::from_bytes(&shown(path), &bytes),
        Err(why) => Err(Source::new(&shown(path), String::new()).complaint(
            0,
            format!("The file of readings cannot be read: {why}."),
            "`jointwright plan JOB --blank FILE` writes an empty one.",
        )),
    }
}

/// Reads a catalogue by its path, or the embedded one by its name.
///
/// # Errors
/// A complaint if the file cannot be read.
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

/// Returns the text of a file, which must be UTF-8.
///
/// # Errors
/// A line with the reason, and with line and column if they are known.
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
/// The file, if it cannot be written.
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

/// Writes all files into a folder, or none; makes the folder if it does not exist.
///
/// Removes pictures of legs that an earlier plan left there and this one does not write.
///
/// # Errors
/// The folder or file that cannot be written; earlier contents stay as they were.
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
    // The document stands for the whole plan, so it is put in place last.
    parts.sort_by_key(|(_, path)| path.ends_with(DOCUMENT));
    let is_plan = parts.iter().any(|(_, path)| path.ends_with(DOCUMENT));
    let kept: Vec<&Path> = parts.iter().map(|(_, path)| path.as_path()).collect();
    // The document is the last in `kept`, so the reversed list moves it aside first.
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

/// Old files that were moved aside, and new files that took their places.
#[derive(Default)]
struct Moved {
    old: Vec<(tempfile::TempPath, PathBuf)>,
    new: Vec<PathBuf>,
}

impl Moved {
    /// Moves a file aside if it exists; dropping `Moved` deletes it.
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

    /// Puts everything back as it was, as far as the disk allows.
    fn back(self) {
        for path in self.new {
            let _ = std::fs::remove_file(path);
        }
        for (place, path) in self.old {
            let _ = place.persist(path);
        }
    }
}

/// Half-sections that an earlier plan left in a folder and this one does not write.
///
/// They must go: none may stand beside a plan to which it does not belong.
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

/// Checks that a file may be put in a place: nothing is there, or a regular file.
fn is_free(path: &Path) -> Result<(), WriteError> {
    match std::fs::metadata(path) {
        Ok(about) if !about.is_file() => Err(WriteError::Taken {
            path: path.to_owned(),
            what: kind(about.file_type()),
        }),
        _ => Ok(()),
    }
}

/// Writes whole contents to the disk, in a temporary file beside their place.
fn part(folder: &Path, path: &Path, bytes: &[u8]) -> Result<tempfile::NamedTempFile, WriteError> {
    let write = || {
        let mut file = beside(folder)?;
        file.write_all(bytes)?;
        file.as_file().sync_all()?;
        Ok(file)
    };
    write().map_err(|error| at(path, error))
}

/// Makes a new file in the folder, to be renamed when it is whole.
fn beside(folder: &Path) -> std::io::Result<tempfile::NamedTempFile> {
    let mut builder = tempfile::Builder::new();
    let begin = format!("{}{}-", PART.0, std::process::id());
    builder.prefix(&begin).suffix(PART.1);
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt;
        // The same mode as any new file: the umask removes the usual permissions.
        builder.permissions(std::fs::Permissions::from_mode(0o666));
    }
    builder.tempfile_in(folder)
}

/// Removes the temporary files that a killed run left in a folder; files of a run that is still writing stay.
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
            // A file that cannot be removed does no harm.
            let _ = std::fs::remove_file(entry.path());
        }
    }
}

/// Whether a process has certainly ended; false if the system does not show its processes.
fn is_gone(process: &str) -> bool {
    let is_number = !process.is_empty() && process.chars().all(|c| c.is_ascii_digit());
    let shows = Path::new("/proc/self").exists();
    is_number && shows && !Path::new("/proc").join(process).exists()
}

/// Letters in a folder whose names are not among these.
pub fn other_letters(folder: &Path, names: &[&str]) -> Vec<String> {
    let entries = std::fs::read_dir(folder).into_iter().flatten().flatten();
    let found = entries.filter_map(|entry| entry.file_name().into_string().ok());
    let mut others: Vec<String> = found
        .filter(|name| name.starts_with("ask-") && !names.contains(&name.as_str()))
        .collect();
    others.sort();
    others
}

/// Writes a new file, whole or not at all.
///
/// # Errors
/// The file, if it exists or cannot be written.
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
