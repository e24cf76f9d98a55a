//! Source: a text with a name, and the complaints about it.

use crate::said::{FieldSaid, FormSaid, FormatOf, Said, TextSaid};
use std::fmt;

/// Largest file that is read, bytes.
const SIZE_GREATEST: usize = 4_000_000;

/// Text that somebody wrote, with the name that complaints use for it.
#[derive(Clone, Debug)]
pub struct Source {
    path: String,
    text: String,
    line_starts: Vec<usize>,
}

impl Source {
    /// Returns the text of a job or a catalogue from its bytes.
    ///
    /// # Errors
    /// A complaint at the first byte that is not UTF-8, or at 1:1 if the file is empty or far too large.
    pub fn from_bytes(path: &str, bytes: &[u8]) -> Result<Source, Complaint> {
        Source::checked(path, bytes, FormatOf::Toml)
    }

    /// Returns the text of a CSV file from its bytes.
    ///
    /// # Errors
    /// As for [`Source::from_bytes`].
    pub fn from_csv_bytes(path: &str, bytes: &[u8]) -> Result<Source, Complaint> {
        Source::checked(path, bytes, FormatOf::Csv)
    }

    fn checked(path: &str, bytes: &[u8], of: FormatOf) -> Result<Source, Complaint> {
        if bytes.len() > SIZE_GREATEST {
            return Err(Source::new(path, String::new()).complaint(
                0,
                TextSaid::TooLarge {
                    n_bytes: bytes.len(),
                    greatest: SIZE_GREATEST,
                    of,
                },
                TextSaid::HardlyMeant { of },
            ));
        }
        let text = match std::str::from_utf8(bytes) {
            Ok(text) => text.strip_prefix('\u{feff}').unwrap_or(text),
            Err(error) => {
                let good = String::from_utf8_lossy(&bytes[..error.valid_up_to()]).into_owned();
                let (end, byte) = (good.len(), bytes[error.valid_up_to()]);
                let byte = format!("{byte:02X}");
                return Err(Source::new(path, good).complaint(
                    end,
                    TextSaid::NotUtf8 { byte, of },
                    TextSaid::SaveAsUtf8 { of },
                ));
            }
        };
        let source = Source::new(path, text.to_owned());
        if text.trim().is_empty() {
            let (message, hint) = (TextSaid::Empty { of }, TextSaid::WhatToWrite { of });
            return Err(source.complaint(0, message, hint));
        }
        Ok(source)
    }

    /// Returns a source whose text is known to be UTF-8.
    pub fn new(path: &str, text: String) -> Source {
        let line_starts = std::iter::once(0)
            .chain(text.match_indices('\n').map(|(i, _)| i + 1))
            .collect();
        Source {
            path: path.to_owned(),
            text,
            line_starts,
        }
    }

    /// Name that complaints use.
    pub fn path(&self) -> &str {
        &self.path
    }

    /// Text.
    pub fn text(&self) -> &str {
        &self.text
    }

    /// Line and column of a byte offset, both from 1; columns count characters.
    pub fn line_and_column(&self, offset: usize) -> (usize, usize) {
        let mut offset = offset.min(self.text.len());
        while !self.text.is_char_boundary(offset) {
            offset -= 1;
        }
        let line = self.line_starts.partition_point(|&start| start <= offset) - 1;
        (
            line + 1,
            self.text[self.line_starts[line]..offset].chars().count() + 1,
        )
    }

    /// Place of a byte offset.
    pub fn span(&self, offset: usize) -> Span {
        let (line, column) = self.line_and_column(offset);
        Span {
            path: self.path.clone(),
            line,
            column,
        }
    }

    /// Complaint about the text at a byte offset.
    pub fn complaint(
        &self,
        offset: usize,
        message: impl Into<Said>,
        hint: impl Into<Said>,
    ) -> Complaint {
        Complaint::at(&self.span(offset), message, hint)
    }
}

/// Place in a file.
#[derive(Clone, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct Span {
    /// Name of the file.
    pub path: String,
    /// Line, from 1.
    pub line: usize,
    /// Column in characters, from 1.
    pub column: usize,
}

impl fmt::Display for Span {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}:{}:{}", self.path, self.line, self.column)
    }
}

/// One error in a file, with its place and the next thing to do.
#[derive(Clone, Debug, PartialEq)]
pub struct Complaint {
    /// Name of the file.
    pub path: String,
    /// Line, from 1.
    pub line: usize,
    /// Column in characters, from 1.
    pub column: usize,
    /// Found and expected value, in whole sentences.
    pub message: Said,
    /// Next thing to do, in a whole sentence; an empty text if there is nothing to add.
    pub hint: Said,
}

impl Complaint {
    /// Complaint about the text at a place.
    pub fn at(place: &Span, message: impl Into<Said>, hint: impl Into<Said>) -> Complaint {
        let Span { path, line, column } = place.clone();
        Complaint {
            path,
            line,
            column,
            message: message.into(),
            hint: hint.into(),
        }
    }

    fn place(&self) -> (&str, usize, usize) {
        (&self.path, self.line, self.column)
    }

    /// Whether the complaint is about a missing field.
    fn is_of_missing(&self) -> bool {
        let Said::Form(form) = &self.message else {
            return false;
        };
        matches!(**form, FormSaid::Field(FieldSaid::Missing { .. }))
    }
}

/// Complaints of one run.
#[derive(Clone, Debug, Default)]
pub struct Complaints(Vec<Complaint>);

impl Complaints {
    /// Adds one complaint.
    pub fn add(&mut self, complaint: Complaint) {
        self.0.push(complaint);
    }

    /// Forgets the complaints about missing fields of the table that begins at an offset.
    pub fn forget_missing(&mut self, source: &Source, offset: usize) {
        let place = source.line_and_column(offset);
        self.0.retain(|complaint| {
            let is_there = (complaint.line, complaint.column) == place;
            !(is_there && complaint.path == source.path() && complaint.is_of_missing())
        });
    }

    /// Number of complaints so far.
    pub fn count(&self) -> usize {
        self.0.len()
    }

    /// Whether there are no complaints.
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// Returns the complaints, each once, in the order of file, line and column; complaints at one place stay in the order in which they were found.
    pub fn into_sorted(mut self) -> Vec<Complaint> {
        self.0.sort_by(|a, b| a.place().cmp(&b.place()));
        let mut sorted: Vec<Complaint> = Vec::with_capacity(self.0.len());
        for complaint in self.0 {
            let of_place = sorted.iter().rev();
            let mut of_place = of_place.take_while(|other| other.place() == complaint.place());
            if !of_place.any(|other| *other == complaint) {
                sorted.push(complaint);
            }
        }
        sorted
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(text: &str, offset: usize, expected: (usize, usize)) {
        assert_eq!(
            Source::new("f", text.to_owned()).line_and_column(offset),
            expected
        );
    }

    #[test]
    fn lines_and_columns_count_from_one() {
        check("ab\ncd", 0, (1, 1));
        check("ab\ncd", 2, (1, 3));
        check("ab\ncd", 3, (2, 1));
        check("ab\ncd", 99, (2, 3));
    }

    #[test]
    fn columns_count_characters_not_bytes() {
        check("½½x", 4, (1, 3));
    }

    #[test]
    fn bytes_that_are_not_utf8_are_found_at_their_place() {
        let complaint = Source::from_bytes("f", b"a = 1\nb = \xff").unwrap_err();
        assert_eq!((complaint.line, complaint.column), (2, 5));
        let said = TextSaid::NotUtf8 {
            byte: "FF".to_owned(),
            of: FormatOf::Toml,
        };
        assert_eq!(complaint.message, said.into());
    }

    #[test]
    fn an_empty_file_is_a_complaint_at_its_start() {
        for bytes in [&b""[..], b" \n\n", b"\xef\xbb\xbf"] {
            let complaint = Source::from_bytes("f", bytes).unwrap_err();
            assert_eq!((complaint.line, complaint.column), (1, 1));
        }
    }
}
