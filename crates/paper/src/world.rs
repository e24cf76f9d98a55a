//! World: the typesetter, with nothing in it but this sheet: its template, its data, its pictures, two fonts.
//!
//! Why separate: the only file that names the typesetting library, whose interface moves with every release.

use crate::clip::{plain, unbroken};
use crate::sheet::Sheet;
use typst::diag::{FileError, FileResult, SourceDiagnostic};
use typst::foundations::{Bytes, Datetime, Duration, Smart};
use typst::syntax::{FileId, RootedPath, Source, VirtualPath, VirtualRoot};
use typst::text::{Font, FontBook};
use typst::utils::LazyHash;
use typst::{Library, LibraryExt, World};
use typst_layout::PagedDocument;
use typst_pdf::{PdfOptions, PdfStandard, PdfStandards, Timestamp};

/// The template.
const TEMPLATE: &str = include_str!("sheet.typ");
/// The fonts: a face that tells 1, l and I apart, in two weights.
const FONTS: [&[u8]; 2] = [
    include_bytes!("../font/DejaVuSansCondensed.ttf"),
    include_bytes!("../font/DejaVuSansCondensed-Bold.ttf"),
];

/// Stand-in for a letter that the fonts do not have; an archive copy may hold none that cannot be shown.
const MISSING: char = '\u{25a1}';

/// Why there is no PDF.
#[derive(Debug, thiserror::Error)]
pub enum PaperError {
    /// The date of the job is none that a PDF can hold.
    #[error("the date `{0}` is not a year, month and day")]
    Date(String),
    /// The sheet cannot be written down for the template.
    #[error("the sheet cannot be handed to the typesetter")]
    Data(#[source] serde_json::Error),
    /// The typesetter stopped: a fault of the program.
    #[error("the page cannot be set: {0}")]
    Typeset(String),
}

/// Everything that the typesetter may see.
struct Desk {
    library: LazyHash<Library>,
    book: LazyHash<FontBook>,
    fonts: Vec<Font>,
    main: FileId,
    files: Vec<(FileId, Bytes)>,
}

impl World for Desk {
    fn library(&self) -> &LazyHash<Library> {
        &self.library
    }

    fn book(&self) -> &LazyHash<FontBook> {
        &self.book
    }

    fn main(&self) -> FileId {
        self.main
    }

    fn source(&self, id: FileId) -> FileResult<Source> {
        if id == self.main {
            Ok(Source::new(id, TEMPLATE.to_owned()))
        } else {
            Err(FileError::AccessDenied)
        }
    }

    fn file(&self, id: FileId) -> FileResult<Bytes> {
        let file = self.files.iter().find(|(held, _)| *held == id);
        file.map(|(_, bytes)| bytes.clone())
            .ok_or(FileError::AccessDenied)
    }

    fn font(&self, index: usize) -> Option<Font> {
        self.fonts.get(index).cloned()
    }

    // There is no today: the date of a sheet is its job's.
    fn today(&self, _offset: Option<Duration>) -> Option<Datetime> {
        None
    }
}

fn file_id(name: &str) -> Result<FileId, PaperError> {
    let path =
        VirtualPath::new(name).map_err(|_| PaperError::Typeset(format!("`{name}` is no path")))?;
    Ok(RootedPath::new(VirtualRoot::Project, path).intern())
}

fn desk(sheet: &Sheet) -> Result<Desk, PaperError> {
    let fonts: Vec<Font> = FONTS
        .iter()
        .filter_map(|data| Font::new(Bytes::new(*data), 0))
        .collect();
    let shown = |letter: char| {
        let has = |font: &Font| font.info().coverage.contains(u32::from(letter));
        if letter == '\n' || fonts.iter().all(has) {
            letter
        } else {
            MISSING
        }
    };
    let mut data = serde_json::to_value(sheet).map_err(PaperError::Data)?;
    each_text(&mut data, &|text| {
        let clean: String = text.chars().map(plain).map(shown).collect();
        unbroken(&clean)
    });
    let data = serde_json::to_vec(&data).map_err(PaperError::Data)?;
    let mut files = vec![(file_id("sheet.json")?, Bytes::new(data))];
    for picture in sheet.pictures() {
        let svg: String = picture.svg.chars().map(shown).collect();
        files.push((file_id(&picture.file)?, Bytes::new(svg.into_bytes())));
    }
    Ok(Desk {
        library: LazyHash::new(Library::default()),
        book: LazyHash::new(FontBook::from_fonts(&fonts)),
        fonts,
        main: file_id("sheet.typ")?,
        files,
    })
}

/// Replaces every text of a JSON value.
fn each_text(value: &mut serde_json::Value, change: &dyn Fn(&str) -> String) {
    match value {
        serde_json::Value::String(text) => *text = change(text),
        serde_json::Value::Array(items) => {
            items.iter_mut().for_each(|item| each_text(item, change));
        }
        serde_json::Value::Object(fields) => {
            fields.values_mut().for_each(|item| each_text(item, change));
        }
        _ => {}
    }
}

/// The sheet as PDF/A-2a; `ident` names it, `date` is year, month and day.
pub(crate) fn pdf(sheet: &Sheet, ident: &str, date: &[String; 3]) -> Result<Vec<u8>, PaperError> {
    let day = day(date)
        .ok_or_else(|| PaperError::Date(date.join("-").trim_end_matches('-').to_owned()))?;
    let desk = desk(sheet)?;
    let document: PagedDocument = typst::compile(&desk)
        .output
        .map_err(|said| typeset(&said))?;
    let standards = PdfStandards::new(&[PdfStandard::A_2a])
        .map_err(|said| PaperError::Typeset(said.message().to_string()))?;
    let options = PdfOptions {
        ident: Smart::Custom(format!("jointwright {} {ident}", sheet.program)),
        creator: Smart::Custom(Some(sheet.program.clone())),
        timestamp: Some(Timestamp::new_utc(day)),
        standards,
        ..PdfOptions::default()
    };
    typst_pdf::pdf(&document, &options).map_err(|said| typeset(&said))
}

/// A day at noon, so that no time zone turns it into another.
fn day(date: &[String; 3]) -> Option<Datetime> {
    let [year, month, day] = date;
    let (year, month, day) = (year.parse().ok()?, month.parse().ok()?, day.parse().ok()?);
    Datetime::from_ymd_hms(year, month, day, 12, 0, 0)
}

fn typeset(said: &[SourceDiagnostic]) -> PaperError {
    let messages: Vec<String> = said.iter().map(|d| d.message.to_string()).collect();
    PaperError::Typeset(messages.join("; "))
}
