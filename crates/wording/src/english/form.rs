//! Sentences about how a file is written.

use jointwright_joint::said::{
    CsvHint, CsvSaid, Expected, FieldSaid, FormHint, FormSaid, FormatOf, Holds, TextSaid, ValueSaid,
};

pub(super) fn say(said: &FormSaid) -> String {
    match said {
        FormSaid::Text(said) => text(said),
        FormSaid::Field(said) => field(said),
        FormSaid::Value(said) => value(said),
        FormSaid::Hint(hint) => self::hint(hint),
        FormSaid::Csv(said) => csv(said),
        FormSaid::CsvHint(hint) => csv_hint(hint),
    }
}

fn text(said: &TextSaid) -> String {
    match said {
        TextSaid::TooLarge {
            n_bytes,
            greatest,
            of,
        } => {
            let what = match of {
                FormatOf::Toml => "a job or catalogue",
                FormatOf::Csv => "a list of rows",
            };
            format!("The file has {n_bytes} bytes; {what} has at most {greatest}.")
        }
        TextSaid::HardlyMeant { of: FormatOf::Toml } => {
            "This is hardly the file that was meant; a large catalogue can be split.".to_owned()
        }
        TextSaid::HardlyMeant { of: FormatOf::Csv } => {
            "This is hardly the file that was meant.".to_owned()
        }
        TextSaid::NotUtf8 { byte, of } => {
            let name = match of {
                FormatOf::Toml => "TOML",
                FormatOf::Csv => "CSV",
            };
            format!(
                "The byte 0x{byte} here is not UTF-8 text; this file must be plain UTF-8 {name}."
            )
        }
        TextSaid::SaveAsUtf8 { of: FormatOf::Toml } => "Save the file again as UTF-8 from a text editor; a spreadsheet or word processor file cannot be read.".to_owned(),
        TextSaid::SaveAsUtf8 { of: FormatOf::Csv } => "Save the sheet as CSV in UTF-8.".to_owned(),
        TextSaid::Empty { of: FormatOf::Toml } => {
            "The file is empty; a TOML document was expected.".to_owned()
        }
        TextSaid::Empty { of: FormatOf::Csv } => {
            "The file is empty; a line with the names of the fields was expected.".to_owned()
        }
        TextSaid::WhatToWrite { of: FormatOf::Toml } => {
            "`jointwright new` writes a commented job to start from.".to_owned()
        }
        TextSaid::WhatToWrite { of: FormatOf::Csv } => "Write the names of the fields in the first line and a row in each line below, or take the file's name out of the job.".to_owned(),
        TextSaid::NotToml { why } => format!("This is not TOML: {why}."),
        TextSaid::LookAtTheLine => {
            "Check quotes, brackets and equals signs on this line.".to_owned()
        }
    }
}

fn field(said: &FieldSaid) -> String {
    match said {
        FieldSaid::Missing {
            path,
            field,
            expected: of,
        } => format!(
            "`{path}` has no `{field}`; the format expects {}.",
            expected(of)
        ),
        FieldSaid::Unknown { name, path } => {
            format!("`{name}` is not a field of `{path}`; the format does not know it.")
        }
        FieldSaid::DidYouMean { field } => format!("Did you mean `{field}`?"),
        FieldSaid::Known { fields } => format!("Fields here are: {}.", fields.join(", ")),
        FieldSaid::Add(of) => format!("Add `{}`: {}", of.field, of.about),
        FieldSaid::FillIn(of) => format!("Fill in `{}`: {}", of.field, of.about),
        FieldSaid::AddColumn(of) => format!("Add the column `{}`: {}", of.field, of.about),
    }
}

fn expected(of: &Expected) -> String {
    match of {
        Expected::Text => "text between quotes".to_owned(),
        Expected::ShortName => "a short name of letters, digits and hyphens".to_owned(),
        Expected::CutLength => {
            "a length with its unit, such as \"7 1/16 in\" or \"179.4 mm\"".to_owned()
        }
        Expected::Distance => {
            "a length with its unit, such as \"24 1/2 in\", \"24.5 in\" or \"620 mm\"".to_owned()
        }
        Expected::Diameter => "a diameter or thickness with its unit, such as \"1.062 in\", \"220 mil\" or \"27.0 mm\"".to_owned(),
        Expected::Quantity { example } => {
            format!("a quantity with its unit, such as \"{example}\"")
        }
        Expected::Number { least, greatest } => format!("a number from {least} to {greatest}"),
        Expected::WholeNumber { least, greatest } => {
            format!("a whole number from {least} to {greatest}")
        }
        Expected::Flag => "true or false".to_owned(),
        Expected::OneOf { words } => format!("one of {}", quoted(words).join(", ")),
        Expected::Date => "a date such as 2026-03-09".to_owned(),
        Expected::Table { table } => format!("a table `{table}`"),
        Expected::Tables { table } => {
            format!("a list of tables `{table}`, each headed by double brackets")
        }
        Expected::List(of) => format!("a list, each item {}", expected(of)),
        Expected::OneOrSeveral(of) => format!("{}, or a list of such", expected(of)),
        Expected::MoreThanNothing(of) => format!("{}, more than 0", expected(of)),
    }
}

fn quoted(words: &[String]) -> Vec<String> {
    words.iter().map(|word| format!("\"{word}\"")).collect()
}

const fn holds(what: Holds) -> &'static str {
    match what {
        Holds::Text => "text",
        Holds::BareWholeNumber => "a bare whole number",
        Holds::BareNumber => "a bare number",
        Holds::Flag => "true or false",
        Holds::DateOrTime => "a date or time",
        Holds::List => "a list",
        Holds::Table => "a table",
    }
}

fn value(said: &ValueSaid) -> String {
    let (path, found, of) = match said {
        ValueSaid::NamesTheSameTwice { path } => {
            return format!("`{path}` names the same twice in one list.");
        }
        ValueSaid::IsEmptyList { path, expected } => {
            (path, "is an empty list".to_owned(), expected)
        }
        ValueSaid::HoldsAList { path, expected } => (path, "holds a list".to_owned(), expected),
        ValueSaid::IsNothing { path, expected } => (path, "is nothing".to_owned(), expected),
        ValueSaid::Holds {
            path,
            what,
            expected,
        } => (path, format!("holds {}", holds(*what)), expected),
        ValueSaid::Is {
            path,
            found,
            expected,
        } => (path, format!("is {found}"), expected),
        ValueSaid::IsText {
            path,
            text,
            expected,
        } => (path, format!("is \"{text}\""), expected),
        ValueSaid::IsTheText {
            path,
            text,
            expected,
        } => (path, format!("is the text \"{text}\""), expected),
        ValueSaid::IsEmptyText { path, expected } => (path, "is empty text".to_owned(), expected),
        ValueSaid::BreaksALine { path, expected } => (
            path,
            "is text with a line break or another control character".to_owned(),
            expected,
        ),
        ValueSaid::IsNoLength {
            path,
            text,
            error,
            expected,
        } => (path, format!("is \"{text}\": {error}"), expected),
        ValueSaid::IsNoQuantity {
            path,
            text,
            error,
            expected,
            ..
        } => (path, format!("is \"{text}\": {error}"), expected),
    };
    format!("`{path}` {found}; the format expects {}.", expected(of))
}

fn hint(hint: &FormHint) -> String {
    let fixed = match hint {
        FormHint::NameOne => "Name at least one, or take the row out.",
        FormHint::CountsOnceForEach => "The row counts once for each: name each once.",
        FormHint::OneEndAlone => {
            "This row says what was read, counted or tested once, on one end: what one end shows says nothing of another. Give each end its own row."
        }
        FormHint::WriteWhatItIs => {
            "No instrument is off by nothing, and nothing that is there has no size: write what it is, or take the line out."
        }
        FormHint::PutQuotes => "Write the value between quotes and with its unit, if it has one.",
        FormHint::TakeBracketsAway => {
            "Take the square brackets away, or the second pair of them in a heading."
        }
        FormHint::TakeQuotesAway => "Take the quotes away.",
        FormHint::LettersAndDigits => "Use letters, digits and hyphens only.",
        FormHint::DateWithoutQuotes => "Write the date as year-month-day and without quotes.",
        FormHint::CannotBeNegative => "It cannot be negative.",
        FormHint::FillItIn => "Fill it in, or take the line out.",
        FormHint::OnOneLine => "Write it on one line, without control characters.",
        FormHint::WireGauge { gauge, mil } => {
            return format!(
                "A solid wire of {gauge} AWG is {mil} mil thick: write \"{mil} mil\", or what the papers state."
            );
        }
        FormHint::DidYouMean { words } => {
            return format!("Did you mean {}?", quoted(words).join(" or "));
        }
        FormHint::Length(error) => return error.hint(),
        FormHint::Quantity { error, .. } => return error.hint(),
    };
    fixed.to_owned()
}

fn csv(said: &CsvSaid) -> String {
    match said {
        CsvSaid::TooManyRows { most } => {
            format!("The file has more than {most} rows; nothing below is read.")
        }
        CsvSaid::SemicolonsBetween => {
            "The columns are separated by `;`; the format expects commas.".to_owned()
        }
        CsvSaid::TabsBetween => {
            "The columns are separated by tabs; the format expects commas.".to_owned()
        }
        CsvSaid::TooManyColumns { n, most } => {
            format!("The first line names {n} columns; at most {most} are read.")
        }
        CsvSaid::NoColumn { field, row } => {
            format!("No column is headed `{field}`; every {row} has one.")
        }
        CsvSaid::CannotHold {
            field,
            expected: of,
        } => format!("`{field}` is {}; a cell cannot hold it.", expected(of)),
        CsvSaid::TwoColumns { field } => format!("Two columns are headed `{field}`."),
        CsvSaid::CellBreaksALine => "A cell holds a line break.".to_owned(),
        CsvSaid::NoColumnName { text } => {
            format!("\"{text}\" stands in a column without a name.")
        }
        CsvSaid::RowHasNo {
            row,
            field,
            expected: of,
        } => format!(
            "This {row} has no `{field}`; the format expects {}.",
            expected(of)
        ),
        CsvSaid::NotAtHand { file, field } => {
            format!("The file \"{file}\" of `{field}` is not at hand.")
        }
        CsvSaid::StandsInJob { row, place } => {
            format!("This {row} stands in the job too, at {place}.")
        }
    }
}

fn csv_hint(hint: &CsvHint) -> String {
    let fixed = match hint {
        CsvHint::HardlyMeant => "This is hardly the file that was meant.",
        CsvHint::SaveWithCommas => {
            "Save the sheet as CSV with commas between columns and points in numbers."
        }
        CsvHint::WriteInJob { row } => return format!("Write such a {row} in the job file."),
        CsvHint::TakeOneColumnOut => "Take one of them out.",
        CsvHint::CloseTheQuote => {
            "Write it on one line; where it is one, a quotation mark that opens here is not closed."
        }
        CsvHint::CommaEndsCell => {
            "A comma within a value ends its cell: write numbers with a point, and put text with a comma between quotation marks."
        }
        CsvHint::WriteRowsInJob => "Write its rows in the job, or read the job where the file is.",
        CsvHint::TakeOneRowOut => "Take one of the two out.",
    };
    fixed.to_owned()
}
