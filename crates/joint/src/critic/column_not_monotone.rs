//! Finds rows at which a column of one table goes the other way, while it rises over all the rest.
//!
//! Rows stand in the order of the deciding range, connectors in the order of their smallest size.
//! Three rows are enough for a diameter, which follows the cable's diameter; a length need not follow it, so it needs four.
//! A table whose rows overlap has no order, and is left to `rows_overlap`.
//! A length of a row that contradicts the row itself is left to `links_contradict` and `electrode_short`.

use super::entry::{Entry, Grows, Measure};
use super::rows_overlap::{connector_tables, have_no_order};
use super::table::{Table, tables};
use super::{Class, Defect, electrode_short, links_contradict, listed, shown};
use crate::catalogue::Catalogue;
use jointwright_units::Length;
use std::collections::BTreeMap;

pub(super) const CLASS: Class = Class {
    slug: "column_not_monotone",
    question: "Does a column of one table go the other way at one row?",
    find,
};

/// Fewest rows from which a diameter's order can be told.
const ROWS_FOR_DIAMETER: usize = 3;
/// Fewest rows from which a length's order can be told.
const ROWS_FOR_LENGTH: usize = 4;

fn find(_: &Catalogue, entries: &[Entry<'_>]) -> Vec<Defect> {
    let mut defects = Vec::new();
    for table in tables(entries) {
        if !have_no_order(&table.lines) {
            let decides = [
                format!("least of the {}", table.range),
                format!("greatest of the {}", table.range),
            ];
            let rows: Vec<Entry<'_>> = table.lines.iter().map(|l| l.entry).collect();
            let by = order_words(&table);
            defects.extend(inverted(&rows, &decides, &by));
        }
    }
    for tips in connector_tables(entries) {
        let mut rows: Vec<(f64, Entry<'_>)> = Vec::new();
        // Rows with unlike ends have no single smallest size for the order.
        for (entry, row) in tips.into_iter().filter(|tip| !tip.1.has_unlike_ends()) {
            let areas = row.ends.iter().flat_map(|end| &end.sizes);
            let areas = areas.map(|s| s.area_mm2());
            rows.extend(areas.min_by(f64::total_cmp).map(|least| (least, entry)));
        }
        rows.sort_by(|a, b| a.0.total_cmp(&b.0));
        if rows.windows(2).all(|pair| pair[0].0 < pair[1].0) {
            let rows: Vec<Entry<'_>> = rows.into_iter().map(|(_, entry)| entry).collect();
            defects.extend(inverted(&rows, &[], "by their smallest conductor size"));
        }
    }
    defects
}

fn order_words(table: &Table<'_>) -> String {
    format!("by the {}", table.range)
}

/// A column: index and value of each row that has it.
type Column = Vec<(usize, Length)>;

/// Defects of rows in order: each row once, with every column that goes the other way there.
fn inverted(rows: &[Entry<'_>], decides: &[String], by: &str) -> Vec<Defect> {
    let mut open: BTreeMap<String, (Column, Vec<usize>)> = columns(rows)
        .into_iter()
        .filter(|(name, _)| !decides.contains(name))
        .filter_map(|(name, (grows, column))| {
            let at = out_of_order(&column, grows);
            let is_said = grows == Grows::Mostly && at.iter().any(|row| is_at_odds(&rows[*row]));
            (!is_said && !at.is_empty()).then_some((name, (column, at)))
        })
        .collect();
    let mut defects = Vec::new();
    while !open.is_empty() {
        let votes = |row: usize| open.values().filter(|(_, at)| at.contains(&row)).count();
        // The row that explains the most columns; the later of equals.
        let Some(row) = (0..rows.len()).max_by_key(|row| votes(*row)) else {
            break;
        };
        let mut said = Vec::new();
        open.retain(|name, (column, at)| {
            let explains = at.contains(&row);
            if explains {
                said.push(neighbours(rows, name, column, row));
            }
            !explains
        });
        let found = format!(
            "In the table of {} revision {}, its rows {by}, one row is out of order: {}.",
            rows[row].head.instructions.paper,
            rows[row].head.instructions.revision,
            listed(&said)
        );
        defects.push(Defect::of_row(
            CLASS.slug,
            &rows[row],
            found,
            "Expected a column that rises over all other rows to rise here too.",
            "Look up the value in the paper; two digits or two rows may be exchanged.",
        ));
    }
    defects
}

/// Whether the lengths of a row already contradict each other.
fn is_at_odds(row: &Entry<'_>) -> bool {
    !links_contradict::of_row(row).is_empty() || electrode_short::of_row(row).is_some()
}

/// Value at a row beside the values of the rows before and after it.
fn neighbours(rows: &[Entry<'_>], name: &str, column: &Column, row: usize) -> String {
    let Some(at) = column.iter().position(|(index, _)| *index == row) else {
        return name.to_owned();
    };
    let (value, id) = (column[at].1, &rows[row].head.id);
    let before = at.checked_sub(1).map(|before| column[before]);
    let after = column.get(at + 1).copied();
    let other = before
        .filter(|(_, b)| *b > value)
        .or(after.filter(|(_, a)| *a < value));
    match other {
        Some((other, theirs)) => format!(
            "the {name} is {} in `{id}` and {} in its neighbour `{}`",
            shown(value),
            shown(theirs),
            rows[other].head.id
        ),
        None => format!("the {name} is {} in `{id}`", shown(value)),
    }
}

/// Columns of lengths that are expected to rise.
fn columns(rows: &[Entry<'_>]) -> BTreeMap<String, (Grows, Column)> {
    let mut columns: BTreeMap<String, (Grows, Column)> = BTreeMap::new();
    for (index, row) in rows.iter().enumerate() {
        for Measure { name, value, grows } in row.measures() {
            if grows == Grows::No {
                continue;
            }
            let (_, column) = columns.entry(name).or_insert((grows, Vec::new()));
            // A row that states one distance twice is left to `links_contradict`.
            if column.last().is_none_or(|(last, _)| *last != index) {
                column.push((index, value));
            }
        }
    }
    columns
}

/// Rows of which any one, left out, lets the column rise; empty if it rises already.
fn out_of_order(column: &Column, grows: Grows) -> Vec<usize> {
    let enough = match grows {
        Grows::WithCable => ROWS_FOR_DIAMETER,
        _ => ROWS_FOR_LENGTH,
    };
    let values: Vec<Length> = column.iter().map(|(_, value)| *value).collect();
    if values.len() < enough || values.is_sorted() {
        return Vec::new();
    }
    let rises_without = |at: usize| {
        let mut rest = values.clone();
        rest.remove(at);
        rest.is_sorted() && rest.first() < rest.last()
    };
    // Leaving out a row must mend the first descent, so it is one of the descent's two rows.
    let descent = values.windows(2).position(|pair| pair[0] > pair[1]);
    let Some(descent) = descent else {
        return Vec::new();
    };
    // The rest must rise without help from either row of the descent: a column that is constant except for one row does not rise.
    if !rises_around(&values, descent) {
        return Vec::new();
    }
    [descent, descent + 1]
        .into_iter()
        .filter(|at| rises_without(*at))
        .map(|at| column[at].0)
        .collect()
}

/// Whether a column rises by the values around one descent; for three rows, whether the third is not a repetition.
fn rises_around(values: &[Length], descent: usize) -> bool {
    let (before, after) = (&values[..descent], &values[descent + 2..]);
    let (high, low) = (values[descent], values[descent + 1]);
    match (before, after) {
        ([], []) => false,
        ([one], []) => *one != low,
        ([], [one]) => *one != high,
        ([first, .., last], []) => first < last || *first < low,
        ([], [first, .., last]) => first < last || high < *last,
        ([first, ..], [.., last]) => first < last,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(values: &[i64], expected: &[usize]) {
        let column: Column = (values.iter().enumerate())
            .map(|(row, value)| (row, Length::MM * *value))
            .collect();
        assert_eq!(out_of_order(&column, Grows::WithCable), expected);
    }

    #[test]
    fn the_row_that_goes_the_other_way_is_named() {
        check(&[10, 14, 12, 22], &[1, 2]);
        check(&[10, 14, 9, 22], &[2]);
        check(&[10, 30, 18, 22], &[1]);
        check(&[10, 14, 18, 12], &[3]);
        check(&[10, 14, 18, 9], &[3]);
        check(&[30, 14, 18, 22], &[0]);
    }

    #[test]
    fn three_rows_tell_it_where_the_third_is_no_repetition() {
        check(&[20, 19, 26], &[0, 1]);
        check(&[20, 26, 25], &[1, 2]);
        check(&[20, 26, 19], &[2]);
        check(&[20, 26, 20], &[]);
        check(&[20, 19, 20], &[]);
    }

    #[test]
    fn a_column_that_is_constant_but_for_one_row_does_not_rise() {
        for at in 0..4 {
            for other in [9, 11] {
                let mut values = [10; 4];
                values[at] = other;
                check(&values, &[]);
            }
        }
    }

    #[test]
    fn a_column_that_rises_or_falls_or_wanders_is_left_alone() {
        check(&[10, 10, 12, 14], &[]);
        check(&[14, 12, 11, 10], &[]);
        check(&[10, 14, 11, 16, 12, 20], &[]);
    }

    #[test]
    fn two_rows_tell_nothing_and_three_nothing_of_a_length() {
        check(&[12, 10], &[]);
        let column: Column = vec![
            (0, Length::MM * 10),
            (1, Length::MM * 9),
            (2, Length::MM * 12),
        ];
        assert!(out_of_order(&column, Grows::Mostly).is_empty());
    }
}
