//! CSV: rows of a CSV file, checked against the table of fields of a row.
//!
//! Why its own file: a crew with a spreadsheet writes the same fields with the same words, one row a line, without quotes and brackets.
//!
//! Invariants: a cell is read like the text between quotes in a TOML file.
//! Every complaint has the line and column of its cell.
//! A row without any text is no row.
//!
//! Not here: separation of cells (the crate `csv-core`), the meaning of a row (`job`).

use super::walk::{NOTHING, Walk};
use super::{Complaints, Field, Item, Kind, Need, Record, Shape, Source, Value};
use crate::said::{CsvHint, CsvSaid, FieldSaid, ValueSaid};
use csv_core::{ReadFieldResult, Reader};
use jiff::civil::Date;

/// Greatest number of rows in one file; six legs in three phases have about a hundred.
const ROWS_MOST: usize = 5_000;
/// Greatest number of columns; no row has as many fields and values.
const COLUMNS_MOST: usize = 64;

/// Text between two commas, with its place.
#[derive(Clone, Debug)]
struct Cell {
    at: usize,
    text: String,
    /// Whether the text runs over the end of a line.
    is_broken: bool,
}

/// Reads the rows of a CSV file: adds everything wrong to the complaints, and returns everything well formed.
pub fn read_csv(
    source: &Source,
    shape: &'static Shape,
    complaints: &mut Complaints,
) -> Vec<Record> {
    let mut lines = cells(source.text()).into_iter();
    let mut walk = Walk::new(source, complaints);
    let Some(columns) = walk.header(&lines.next().unwrap_or_default(), shape) else {
        return Vec::new();
    };
    let mut rows = Vec::new();
    for line in lines {
        let first = line.iter().find(|cell| !cell.text.is_empty());
        let Some(first) = first else { continue };
        if rows.len() == ROWS_MOST {
            walk.complain(
                first.at,
                CsvSaid::TooManyRows { most: ROWS_MOST },
                CsvHint::HardlyMeant,
            );
            break;
        }
        rows.push(walk.row(&columns, &line, shape));
    }
    rows
}

/// Cells of a text, line by line, without the spaces around them.
fn cells(text: &str) -> Vec<Vec<Cell>> {
    let bytes = text.as_bytes();
    let mut reader = Reader::new();
    let mut out = vec![0; bytes.len() + 1];
    let (mut lines, mut line) = (Vec::new(), Vec::new());
    let (mut from, mut start) = (0, 0);
    let mut n_out = 0;
    loop {
        let (result, n_in, n) = reader.read_field(&bytes[from..], &mut out[n_out..]);
        (from, n_out) = (from + n_in, n_out + n);
        match result {
            // The next call gets no input, which ends the last cell.
            ReadFieldResult::InputEmpty => {}
            ReadFieldResult::OutputFull => out.resize(2 * out.len(), 0),
            ReadFieldResult::Field { record_end } => {
                let breaks = bytes[start..from].iter();
                let n_breaks = breaks.take_while(|b| matches!(b, b'\r' | b'\n')).count();
                let at = start + if line.is_empty() { n_breaks } else { 0 };
                let text = String::from_utf8_lossy(&out[..n_out]);
                line.push(Cell {
                    at,
                    text: text.trim().to_owned(),
                    is_broken: text.contains(['\r', '\n']),
                });
                (start, n_out) = (from, 0);
                if record_end {
                    lines.push(std::mem::take(&mut line));
                }
            }
            ReadFieldResult::End => return lines,
        }
    }
}

impl Walk<'_> {
    /// Field of each column, `None` for a column without a heading.
    ///
    /// Returns `None` if the rows cannot be read by these columns.
    fn header(
        &mut self,
        line: &[Cell],
        shape: &'static Shape,
    ) -> Option<Vec<Option<&'static Field>>> {
        let first = line.first()?;
        for (separator, said) in [
            (';', CsvSaid::SemicolonsBetween),
            ('\t', CsvSaid::TabsBetween),
        ] {
            if line.len() == 1 && first.text.contains(separator) {
                self.complain(first.at, said, CsvHint::SaveWithCommas);
                return None;
            }
        }
        if line.len() > COLUMNS_MOST {
            self.complain(
                first.at,
                CsvSaid::TooManyColumns {
                    n: line.len(),
                    most: COLUMNS_MOST,
                },
                CsvHint::HardlyMeant,
            );
            return None;
        }
        let mut columns: Vec<Option<&'static Field>> = Vec::new();
        let mut are_known = true;
        for cell in line {
            let field = self.column(cell, shape, &columns);
            are_known &= field.is_some() || cell.text.is_empty();
            columns.push(field);
        }
        let is_there = |field: &Field| {
            columns
                .iter()
                .flatten()
                .any(|known| known.name == field.name)
        };
        for field in shape.fields {
            if field.need == Need::Required && !is_there(field) {
                are_known = false;
                self.complain(
                    first.at,
                    CsvSaid::NoColumn {
                        field: field.name.to_owned(),
                        row: shape.name.to_owned(),
                    },
                    FieldSaid::AddColumn(field.of(shape.name)),
                );
            }
        }
        are_known.then_some(columns)
    }

    /// Field that the heading of a column names.
    fn column(
        &mut self,
        cell: &Cell,
        shape: &'static Shape,
        before: &[Option<&'static Field>],
    ) -> Option<&'static Field> {
        let name = cell.text.as_str();
        if name.is_empty() {
            return None;
        }
        let Some(field) = shape.fields.iter().find(|field| field.name == name) else {
            self.unknown_key(name, cell.at, shape, shape.name);
            return None;
        };
        if matches!(field.kind, Kind::Rows(_) | Kind::Table(_)) {
            self.complain(
                cell.at,
                CsvSaid::CannotHold {
                    field: name.to_owned(),
                    expected: field.kind.expected(),
                },
                CsvHint::WriteInJob {
                    row: shape.name.to_owned(),
                },
            );
            return None;
        }
        let is_again = before.iter().flatten().any(|known| known.name == name);
        if is_again && !matches!(field.kind, Kind::List(_)) {
            self.complain(
                cell.at,
                CsvSaid::TwoColumns {
                    field: name.to_owned(),
                },
                CsvHint::TakeOneColumnOut,
            );
            return None;
        }
        Some(field)
    }

    /// Reads the well-formed fields of one row.
    fn row(
        &mut self,
        columns: &[Option<&'static Field>],
        line: &[Cell],
        shape: &'static Shape,
    ) -> Record {
        let start = line.first().map_or(0, |cell| cell.at);
        let mut record = Record::new(start);
        for cell in line.iter().filter(|cell| cell.is_broken) {
            self.complain(cell.at, CsvSaid::CellBreaksALine, CsvHint::CloseTheQuote);
            record.note_broken();
        }
        if !record.is_whole() {
            return record;
        }
        let field_at = |index: usize| columns.get(index).copied().flatten();
        let cells = || {
            line.iter()
                .enumerate()
                .filter(|(_, cell)| !cell.text.is_empty())
        };
        for (_, cell) in cells().filter(|(index, _)| field_at(*index).is_none()) {
            self.complain(
                cell.at,
                CsvSaid::NoColumnName {
                    text: super::walk::quoted(&cell.text),
                },
                CsvHint::CommaEndsCell,
            );
        }
        for field in shape.fields {
            let is_its = |of: &Field| of.name == field.name;
            let ours = cells().filter(|(index, _)| field_at(*index).is_some_and(is_its));
            let ours: Vec<&Cell> = ours.map(|(_, cell)| cell).collect();
            if ours.is_empty() {
                self.left_out(field, start, shape);
                continue;
            }
            match self.of_cells(field, &ours, shape) {
                Some(value) => record.put(field.name, value),
                None => record.note_wrong(field.name),
            }
        }
        record
    }

    /// Complains if a row lacks a required field.
    fn left_out(&mut self, field: &Field, at: usize, shape: &Shape) {
        if field.need == Need::Required {
            self.complain(
                at,
                CsvSaid::RowHasNo {
                    row: shape.name.to_owned(),
                    field: field.name.to_owned(),
                    expected: field.kind.expected(),
                },
                FieldSaid::FillIn(field.of(shape.name)),
            );
        }
    }

    /// Value of a field: a list of the values of its cells, or the value of its single cell.
    fn of_cells(&mut self, field: &'static Field, cells: &[&Cell], shape: &Shape) -> Option<Item> {
        let first = cells.first()?;
        let path = format!("{}.{}", shape.name, field.name);
        let Kind::List(of) = &field.kind else {
            return self.cell(&field.kind, first, &path);
        };
        let read: Vec<Option<Item>> = cells
            .iter()
            .map(|cell| self.cell(of, cell, &path))
            .collect();
        let items: Option<Vec<Item>> = read.into_iter().collect();
        Some(Item {
            at: first.at,
            value: Value::List(items?),
        })
    }

    /// Value of a cell; complains if it has none.
    fn cell(&mut self, kind: &'static Kind, cell: &Cell, path: &str) -> Option<Item> {
        let (at, text) = (cell.at, cell.text.as_str());
        let value = match kind {
            Kind::Sole(of) | Kind::Several(of) => return self.cell(of, cell, path),
            Kind::Above(of) => {
                let item = self.cell(of, cell, path)?;
                return self.not_nothing(kind, item, path);
            }
            Kind::Integer { least, greatest } => text
                .parse()
                .ok()
                .filter(|n| (*least..=*greatest).contains(n))
                .map(Value::Integer),
            Kind::Number { least, greatest } => text
                .parse()
                .ok()
                .filter(|x| (*least..=*greatest).contains(x))
                .map(Value::Number),
            Kind::Flag => match text.to_ascii_lowercase().as_str() {
                "true" => Some(Value::Flag(true)),
                "false" => Some(Value::Flag(false)),
                _ => None,
            },
            Kind::Date => {
                let is_plain = text.len() == "2026-03-09".len();
                let day: Option<Date> = text.parse().ok().filter(|_| is_plain);
                day.filter(|day| day.year() >= 1900).map(Value::Date)
            }
            _ => {
                let value = self.read_text(kind, text, at, path)?;
                return Some(Item { at, value });
            }
        };
        if value.is_none() {
            let said = ValueSaid::IsText {
                path: path.to_owned(),
                text: super::walk::quoted(text),
                expected: kind.expected(),
            };
            self.complain(at, said, NOTHING);
        }
        value.map(|value| Item { at, value })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(text: &str, expected: &[&[(usize, &str)]]) {
        let found: Vec<Vec<(usize, String)>> = cells(text)
            .into_iter()
            .map(|line| line.into_iter().map(|cell| (cell.at, cell.text)).collect())
            .collect();
        let expected: Vec<Vec<(usize, String)>> = expected
            .iter()
            .map(|line| {
                line.iter()
                    .map(|(at, text)| (*at, (*text).to_owned()))
                    .collect()
            })
            .collect();
        assert_eq!(found, expected, "{text:?}");
    }

    #[test]
    fn every_cell_stands_where_it_begins() {
        check(
            "a,b\nc,d\n",
            &[&[(0, "a"), (2, "b")], &[(4, "c"), (6, "d")]],
        );
        // Windows ends its lines with two characters, and the last line may have no line end.
        check(
            "a,b\r\nc,d",
            &[&[(0, "a"), (2, "b")], &[(5, "c"), (7, "d")]],
        );
        // Empty lines are no rows; an empty first cell begins at its comma.
        check(
            "a,b\n\r\n\n,d\n",
            &[&[(0, "a"), (2, "b")], &[(7, ""), (8, "d")]],
        );
        check("\"a,\"\"1\"\"\",b\n", &[&[(0, "a,\"1\""), (10, "b")]]);
        check("½,b\nc", &[&[(0, "½"), (3, "b")], &[(5, "c")]]);
        check(" a , b \n", &[&[(0, "a"), (4, "b")]]);
        check("\"a\nb\",c\n", &[&[(0, "a\nb"), (6, "c")]]);
        // A quotation mark that nobody closes runs to the end.
        check("a,\"b\nc,d", &[&[(0, "a"), (2, "b\nc,d")]]);
        check("a,\n", &[&[(0, "a"), (2, "")]]);
        check("", &[]);
    }
}
