//! Rows from CSV files that a job names: the same rows as in the job, and every complaint at its place in its own file.

use super::deleted_line::helped;
use super::toml_text::{rows, text, tree};
use crate::cases::{Line, accepted, lines, named, plan_of, texts};
use jointwright_joint::catalogue::{DEMONSTRATION, DEMONSTRATION_TEXT};
use jointwright_joint::form::{Complaint, Source};
use jointwright_joint::job::{List, Order, list_names, read_order_from};
use jointwright_joint::judge::judge_without_fields;
use jointwright_joint::plan::MarkDoc;
use proptest::prelude::*;
use toml::{Table, Value};

const LARKSPUR: &str = "larkspur-three-way";
const NAMES: [(&str, &str, &str); 3] = [
    ("readings_csv", "reading", "readings.csv"),
    ("counts_csv", "count", "counts.csv"),
    ("lots_csv", "lot", "lots.csv"),
];

/// Reads a job with files of rows, each under the field that names it.
fn read(job: &str, files: &[(&'static str, &str)]) -> Result<Order, Vec<Complaint>> {
    let job = Source::new("job.toml", job.to_owned());
    let catalogue = Source::new(DEMONSTRATION, DEMONSTRATION_TEXT.to_owned());
    let file = |field: &'static str| NAMES.iter().find(|(of, ..)| *of == field).expect("one").2;
    let list = |(field, text): &(&'static str, &str)| -> List {
        (field, Source::from_csv_bytes(file(field), text.as_bytes()))
    };
    read_order_from(&job, vec![Ok(catalogue)], files.iter().map(list).collect())
}

/// The plan of an order without its mark, and the mark.
fn document(order: &Order) -> (String, MarkDoc) {
    let mut plan = plan_of(order, LARKSPUR);
    let mark = plan.plan_mark.clone();
    let of_plan = &mut plan.plan_mark;
    for text in [&mut of_plan.short, &mut of_plan.aloud, &mut of_plan.whole] {
        text.clear();
    }
    (
        serde_json::to_string_pretty(&plan).expect("a document"),
        mark,
    )
}

fn cell(value: &Value) -> String {
    match value {
        Value::String(text) => text.clone(),
        Value::Integer(number) => number.to_string(),
        Value::Boolean(flag) => flag.to_string(),
        Value::Datetime(day) => day.to_string(),
        other => panic!("{other:?} is in no cell"),
    }
}

/// The rows of a table as CSV, lists as several columns of one name.
fn csv(of: &[Table], end_of_line: &str) -> String {
    let mut columns: Vec<(String, usize)> = Vec::new();
    for (name, value) in of.iter().flatten() {
        let n = value.as_array().map_or(1, Vec::len);
        match columns.iter_mut().find(|(known, _)| known == name) {
            Some((_, most)) => *most = n.max(*most),
            None => columns.push((name.clone(), n)),
        }
    }
    let head = columns.iter().flat_map(|(name, n)| vec![name.clone(); *n]);
    let mut lines = vec![head.collect::<Vec<_>>().join(",")];
    for row in of {
        let cells = columns.iter().flat_map(|(name, n)| {
            let given: Vec<String> = match row.get(name) {
                Some(Value::Array(values)) => values.iter().map(cell).collect(),
                other => other.into_iter().map(cell).collect(),
            };
            (0..*n).map(move |at| given.get(at).cloned().unwrap_or_default())
        });
        lines.push(cells.collect::<Vec<_>>().join(","));
    }
    lines
        .iter()
        .map(|line| format!("{line}{end_of_line}"))
        .collect()
}

/// The example with all readings, counts and lots in files: the job, and each file under the field that names it.
fn in_files(end_of_line: &str) -> (String, Vec<(&'static str, String)>) {
    let mut job = tree(named(LARKSPUR).job);
    let mut files = Vec::new();
    for (field, table, name) in NAMES {
        let of: Vec<Table> = rows(&mut job, table).map(|row| row.clone()).collect();
        job.remove(table);
        job.insert(field.to_owned(), Value::from(name));
        files.push((field, csv(&of, end_of_line)));
    }
    (text(&job, None), files)
}

fn given<'f>(files: &'f [(&'static str, String)]) -> Vec<(&'static str, &'f str)> {
    files
        .iter()
        .map(|(field, text)| (*field, text.as_str()))
        .collect()
}

/// Complaints about one file of readings beside a job that has no others.
fn about(readings: &str) -> Vec<String> {
    let mut job = tree(named(LARKSPUR).job);
    job.remove("reading");
    job.insert("readings_csv".to_owned(), Value::from("readings.csv"));
    match read(&text(&job, None), &[("readings_csv", readings)]) {
        Ok(_) => Vec::new(),
        Err(complaints) => complaints.iter().map(Line::line).collect(),
    }
}

/// Checks for one complaint, at this line and column of the file, with these words.
#[track_caller]
fn refused(readings: &str, at: &str, says: &str) {
    let complaints = about(readings);
    let [complaint] = complaints.as_slice() else {
        panic!("{readings}: {}", complaints.join("\n"));
    };
    assert!(
        complaint.starts_with(&format!("readings.csv:{at} ")),
        "{complaint}"
    );
    assert!(complaint.contains(says), "{complaint}");
}

const RUN: &str = include_str!("../../../../examples/millbrook-cable-run/job.toml");
const HEAD: &str = "leg,phase,over,instrument,error,temperature,values,values\n";
const ROW: &str = "A,1,jacket,calliper,0.05 mm,12 degC,40.20 mm,40.25 mm\n";

fn with(from: &str, to: &str) -> String {
    assert!(ROW.contains(from), "{from}");
    format!("{HEAD}{}", ROW.replacen(from, to, 1))
}

#[test]
fn rows_in_files_are_the_rows_of_the_job() {
    let whole = document(&named(LARKSPUR).order());
    for end_of_line in ["\n", "\r\n"] {
        let (job, files) = in_files(end_of_line);
        assert_eq!(list_names(&Source::new("job.toml", job.clone())).len(), 3);
        let order = accepted(read(&job, &given(&files)), LARKSPUR);
        let listed = document(&order);
        assert_eq!(listed.0, whole.0);
        assert_ne!(listed.1, whole.1);
    }
}

#[test]
fn one_byte_of_a_file_of_rows_changes_the_mark() {
    let (job, mut files) = in_files("\n");
    let before = document(&accepted(read(&job, &given(&files)), LARKSPUR));
    // A space at the end of a line has no meaning.
    files[1].1 = files[1].1.replacen('\n', " \n", 1);
    let after = document(&accepted(read(&job, &given(&files)), LARKSPUR));
    assert_eq!(before.0, after.0);
    assert_ne!(before.1, after.1);
}

#[test]
fn a_job_whose_file_of_rows_is_not_at_hand_is_refused_where_it_names_it() {
    let (job, files) = in_files("\n");
    for (gone, name) in [(0, "readings.csv"), (1, "counts.csv"), (2, "lots.csv")] {
        let mut given = given(&files);
        given.remove(gone);
        let complaints = read(&job, &given).expect_err("a file is not there");
        assert_eq!(complaints.len(), 1, "{}", lines(&complaints));
        let said = lines(&complaints);
        assert!(said.contains(name), "{said}");
        let line = job.lines().nth(complaints[0].line - 1).expect("a line");
        assert!(line.contains(name), "{line}");
    }
}

#[test]
fn taking_a_file_of_rows_out_never_helps() {
    let (job, files) = in_files("\n");
    let rulings = |job: &str, files: &[(&'static str, &str)]| {
        let order = accepted(read(job, files), LARKSPUR);
        accepted(judge_without_fields(&order), LARKSPUR).rulings
    };
    let before = rulings(&job, &given(&files));
    for (field, ..) in NAMES {
        let without: Vec<&str> = job
            .lines()
            .filter(|line| !line.starts_with(field))
            .collect();
        let mut rest = given(&files);
        rest.retain(|(of, _)| *of != field);
        let after = rulings(&without.join("\n"), &rest);
        assert_ne!(before, after, "{field}");
        assert_eq!(helped(&before, &after), [], "{field}");
    }
}

#[test]
fn a_file_as_a_spreadsheet_writes_it_is_read() {
    let plain = format!("{HEAD}{ROW}");
    for written in [
        plain.clone(),
        // A mark of the byte order, ends of lines as Windows has them, no end of the last line.
        format!("\u{feff}{}", plain.replace('\n', "\r\n")),
        plain.trim_end().to_owned(),
        // Empty lines and columns, spaces, quotation marks that are not needed.
        format!("{HEAD}\n{},,\n,,,,,,,,,\n", ROW.trim_end()),
        with("A,1,jacket", " A , 1 ,\"jacket\""),
        // One value fewer than columns.
        with("40.20 mm,40.25 mm", ",40.25 mm"),
    ] {
        assert_eq!(about(&written), [""; 0], "{written:?}");
    }
}

#[test]
fn what_is_wrong_with_a_file_is_said_at_its_line_and_column() {
    for (readings, at, says) in [
        ("", "1:1", "The file is empty"),
        (" \r\n", "1:1", "The file is empty"),
        ("\u{feff}", "1:1", "The file is empty"),
        (
            &format!("{}{ROW}", HEAD.replace("error,", "")),
            "1:1",
            "No column is headed `error`",
        ),
        (
            &format!("{}{ROW}", HEAD.replace("temperature", "temprature")),
            "1:33",
            "Did you mean `temperature`?",
        ),
        (
            &format!("{}{ROW}", HEAD.replace("temperature", "error")),
            "1:33",
            "Two columns are headed `error`",
        ),
        (
            &format!("{HEAD}{ROW}").replace(',', ";"),
            "1:1",
            "The columns are separated by `;`; the format expects commas.",
        ),
        (
            &format!("{HEAD}{ROW}").replace(',', "\t"),
            "1:1",
            "The columns are separated by tabs",
        ),
        (
            &with("40.25 mm", "40.25 mm,41 mm"),
            "2:55",
            "\"41 mm\" stands in a column without a name",
        ),
        (
            &with("40.20 mm", "40.20"),
            "2:37",
            "`reading.values` is \"40.20\"",
        ),
        (
            &with("40.20 mm", "402 mm"),
            "2:37",
            "a diameter on one core lies between",
        ),
        (
            &with("40.20 mm,40.25 mm", ","),
            "2:1",
            "This reading has no `values`",
        ),
        (&with("A,1", ",1"), "2:1", "This reading has no `leg`"),
        (&with("A,1", "D,1"), "2:1", "No leg is named `D`"),
        (
            &with("A,1", "A,4"),
            "2:3",
            "`reading.phase` is \"4\"; the format expects a whole number from 1 to 3.",
        ),
        (
            &with("A,1", "A,1.0"),
            "2:3",
            "the format expects a whole number from 1 to 3",
        ),
        (
            &with("jacket", "jackett"),
            "2:5",
            "Did you mean \"jacket\"?",
        ),
        (
            &with("0.05 mm", "0 mm"),
            "2:21",
            "The instrument's error is nothing",
        ),
        (
            &with("jacket", "\"jac\nket\""),
            "2:5",
            "A cell holds a line break",
        ),
        (
            &with("jacket", "\"jacket"),
            "2:5",
            "a quotation mark that opens here is not closed",
        ),
        // Characters are counted, not bytes; lines are counted as in an editor.
        (
            &format!("{HEAD}\r\n{}", ROW.replace("A,1", "½½,4")),
            "3:4",
            "`reading.phase` is \"4\"",
        ),
    ] {
        let complaints = about(readings);
        let is_said = |complaint: &String| {
            complaint.starts_with(&format!("readings.csv:{at} ")) && complaint.contains(says)
        };
        assert!(
            complaints.iter().any(is_said),
            "{says}: {readings:?}: {}",
            complaints.join("\n")
        );
    }
}

#[test]
fn everything_wrong_in_a_file_is_said_in_one_run() {
    let wrong = format!(
        "{HEAD}{}{}{}",
        ROW.replace("jacket", "jackett"),
        ROW,
        ROW.replace("A,1", "D,1")
    );
    let complaints = about(&wrong);
    assert_eq!(complaints.len(), 2, "{}", complaints.join("\n"));
}

#[test]
fn a_byte_that_is_not_utf8_is_refused_at_its_place() {
    let bytes = [
        HEAD.as_bytes(),
        b"A,1,jacket,calliper,0.05 mm,12 \xb0C,40 mm\n",
    ]
    .concat();
    let complaint = Source::from_csv_bytes("readings.csv", &bytes).expect_err("no text");
    let said = complaint.line();
    assert!(said.starts_with("readings.csv:2:32 "), "{said}");
    assert!(said.contains("plain UTF-8 CSV"), "{said}");
}

#[test]
fn a_row_that_stands_in_the_job_and_in_the_file_is_refused() {
    let (_, files) = in_files("\n");
    for (of, (field, table, name)) in NAMES.into_iter().enumerate() {
        let mut job = tree(named(LARKSPUR).job);
        job.insert(field.to_owned(), Value::from(name));
        let (head, first) = {
            let mut lines = files[of].1.lines();
            (lines.next().expect("a head"), lines.next().expect("a row"))
        };
        let one = format!("{head}\n{first}\n");
        let job = text(&job, None);
        let complaints = read(&job, &[(field, &one)]).expect_err("it stands twice");
        let [complaint] = complaints.as_slice() else {
            panic!("{}", lines(&complaints));
        };
        let says = format!("This {table} stands in the job too, at job.toml:");
        let said = texts(std::slice::from_ref(complaint)).remove(0).message;
        assert!(said.starts_with(&says), "{said}");
        assert_eq!((complaint.path.as_str(), complaint.line), (name, 2));
        // The twin: another row beside the job's rows is one row more.
        let other = one.replacen("A,", "B,", 1);
        if table == "reading" {
            assert!(read(&job, &[(field, &other)]).is_ok());
        }
    }
}

#[test]
fn where_a_lot_lay_is_written_in_the_job() {
    let job = format!("lots_csv = \"lots.csv\"\n{}", named(LARKSPUR).job);
    let lots = "leg,phase,part,lot,stay\nA,1,connector,K,x\n";
    let complaints = read(&job, &[("lots_csv", lots)]).expect_err("stays");
    assert_eq!((complaints[0].line, complaints[0].column), (1, 20));
    assert!(lines(&complaints).contains("a cell cannot hold it"));
}

#[test]
fn days_and_flags_are_read_as_spreadsheets_write_them() {
    let job = format!("lots_csv = \"lots.csv\"\n{}", named(LARKSPUR).job);
    let lots = |made: &str, flag: &str| {
        let lots = format!("leg,phase,part,lot,made,no_expiry\nA,1,connector,K,{made},{flag}\n");
        match read(&job, &[("lots_csv", &lots)]) {
            Ok(_) => String::new(),
            Err(complaints) => lines(&complaints),
        }
    };
    assert_eq!(lots("2026-01-14", "TRUE"), "");
    assert_eq!(lots("2026-01-14", ""), "");
    let of_day = lots("14.01.2026", "TRUE");
    assert!(of_day.contains("a date such as 2026-03-09"), "{of_day}");
    let of_flag = lots("2026-01-14", "yes");
    assert!(of_flag.contains("true or false"), "{of_flag}");
}

#[test]
fn a_run_of_cable_takes_no_file_of_rows() {
    let job = RUN.replacen("catalogues", "readings_csv = \"r.csv\"\ncatalogues", 1);
    let complaints = read(&job, &[("readings_csv", &format!("{HEAD}{ROW}"))]).expect_err("a run");
    let said = lines(&complaints);
    assert!(
        said.contains("nothing here reads the job's `readings_csv`"),
        "{said}"
    );
}

#[test]
fn hostile_files_of_rows_that_are_huge_end_in_one_complaint_each() {
    let many = format!("{HEAD}{}", ROW.repeat(6_000));
    refused(&many, "5002:1", "more than 5000 rows");
    let wide = format!("{}\n{ROW}", "x,".repeat(200_000));
    refused(&wide, "1:1", "at most 64 are read");
}

proptest! {
    #![proptest_config(super::tries(256))]

    #[test]
    fn hostile_bytes_in_a_file_of_rows_never_panic(
        at in any::<prop::sample::Index>(),
        bytes in prop::collection::vec(any::<u8>(), 0..6),
        n_out in 0_usize..12,
    ) {
        let (job, files) = in_files("\n");
        for (field, text) in &files {
            let mut changed = text.clone().into_bytes();
            let from = at.index(changed.len());
            let to = (from + n_out).min(changed.len());
            changed.splice(from..to, bytes.iter().copied());
            let changed = Source::from_csv_bytes("rows.csv", &changed);
            let lists: Vec<List> = vec![(field, changed)];
            let catalogue = Source::new(DEMONSTRATION, DEMONSTRATION_TEXT.to_owned());
            let job = Source::new("job.toml", job.clone());
            if let Err(complaints) = read_order_from(&job, vec![Ok(catalogue)], lists) {
                for complaint in complaints {
                    prop_assert!(complaint.line > 0 && complaint.column > 0);
                }
            }
        }
    }
}
