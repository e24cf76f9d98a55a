//! Dimension: one row for every cut and mark, from the datum outward.

use super::fails;
use super::section::{COLUMN, Section, place_of};
use super::sheet::{LEFT, RIGHT, Role, SMALL, Sheet, width_mm};
use crate::canvas::{Look, Place, Trail, Words};
use crate::label::wrapped;
use jointwright_joint::plan::{CutDoc, LegDoc, Plan};
use jointwright_wording::Tongue;
use jointwright_wording::label::{CutLabel, HalfSectionLabel};

/// Distance between two small lines, mm.
const LINE: f64 = 2.6;
/// Greatest number of letters of a number.
const DIGITS: usize = 24;
/// Size of the numbers, mm.
const NUMBER: f64 = 3.2;
/// Number of letters of a small line of the column.
pub(super) const LETTERS: usize = 44;

/// Name of the datum of a leg.
pub(super) fn datum_name(leg: &LegDoc, tongue: Tongue) -> String {
    let own = || tongue.label(&HalfSectionLabel::SquareCutEnd);
    let first = leg.cuts.first();
    first.map_or_else(own, |cut| cut.from.clone())
}
/// Content of a row.
struct Row<'a> {
    cut: &'a CutDoc,
    tongue: Tongue,
    /// Action and place, in lines.
    name: Vec<String>,
    /// Number as the plan prints it, and its place, mm; `None` if it is not set.
    number: Option<(String, f64)>,
    /// Lines below the number.
    below: Vec<String>,
}

impl<'a> Row<'a> {
    fn new(cut: &'a CutDoc, tongue: Tongue) -> Self {
        let number = number(cut);
        let below = match (&number, &cut.printed_window, &cut.why) {
            (Some(_), Some(window), _) => tongue.window(window),
            (_, _, Some(why)) => why.clone(),
            (Some(_), None, None) => tongue.label(&HalfSectionLabel::NobodySetsWindow),
            (None, ..) => String::new(),
        };
        let mut below = wrapped(&below, LETTERS, 3);
        // Kept length of a shield that is laid back, or the statement that it must be asked for.
        let keeps = cut.keeps.as_deref().unwrap_or_default();
        below.extend(wrapped(keeps, LETTERS, 4));
        Self {
            cut,
            tongue,
            name: wrapped(&tongue.label(&CutLabel::act_at(cut)), LETTERS, 2),
            number,
            below,
        }
    }

    /// Text after the number in small letters.
    fn beside(&self) -> String {
        match (&self.number, &self.cut.printed_window) {
            (Some(_), Some(_)) => self.tongue.label(&CutLabel::MayLie),
            _ => String::new(),
        }
    }

    fn height(&self) -> f64 {
        // The name of the datum fits below the last line, whatever the column contains.
        6.3 + self.more_mm() + LINE * self.below.len().max(1) as f64
    }

    /// Height that a name of more than one line takes more, mm.
    fn more_mm(&self) -> f64 {
        LINE * self.name.len().saturating_sub(1) as f64
    }
}

/// Number of a row as the plan prints it, and its place, mm; `None` if it is not set.
fn number(cut: &CutDoc) -> Option<(String, f64)> {
    let (mm, at) = (cut.mark_mm.as_ref()?, place_of(cut)?);
    let number = match &cut.inch {
        // Two no-break spaces: the inches must not run into the millimetres.
        Some(inch) => format!("{inch} in\u{a0}\u{a0}{mm} mm"),
        None => format!("{mm} mm"),
    };
    // A number is printed whole or not at all.
    (number.chars().count() <= DIGITS).then_some((number, at))
}

/// Draws the rows below the axis; returns their end.
pub(super) fn rows(
    sheet: &mut Sheet,
    section: &Section,
    leg: &LegDoc,
    plan: &Plan,
    axis: f64,
) -> f64 {
    let tongue = Tongue::of_plan(plan);
    let mut y = axis + 3.0;
    if fails(plan) {
        sheet.text(
            Words::new(
                [LEFT, y + 4.0],
                NUMBER,
                &tongue.label(&HalfSectionLabel::NoNumber),
            )
            .bold(),
        );
        return y + 6.0;
    }
    let mut rows: Vec<Row> = leg.cuts.iter().map(|cut| Row::new(cut, tongue)).collect();
    // Rows without a number come first: they have no line that another could cross.
    rows.sort_by(|a, b| match (&a.number, &b.number) {
        (Some((_, a)), Some((_, b))) => a.total_cmp(b),
        (a, b) => a.is_some().cmp(&b.is_some()),
    });
    for (n, row) in rows.iter().enumerate() {
        column(sheet, row, n, y);
        if let Some((_, at)) = row.number {
            lines(
                sheet,
                section,
                row.cut,
                at,
                n,
                [axis, y + row.more_mm() + 4.4],
            );
        }
        y += row.height();
    }
    sheet.numbers_mm = Some([COLUMN - 0.6, axis + 3.0, y]);
    let datum = section.scale.at(0.0);
    let top = axis - section.surface(0.0) - 1.0;
    sheet.stroke([datum, top], [datum, y], 0.35, Role::Datum);
    // Nothing else stands left of the column below the last line.
    y += if rows.is_empty() { LINE } else { 0.0 };
    sheet.text(Words::new([datum + 1.0, y - 0.9], SMALL, &datum_name(leg, tongue)).bold());
    y
}

/// Writes the texts of a row.
fn column(sheet: &mut Sheet, row: &Row, n: usize, top: f64) {
    if n > 0 {
        sheet.stroke([COLUMN, top], [RIGHT, top], 0.12, Role::Rule);
    }
    for (at, line) in row.name.iter().enumerate() {
        let base = top + 2.3 + LINE * at as f64;
        sheet.text_of_row(n, Words::new([COLUMN, base], SMALL, line));
    }
    if row.cut.is_mark() {
        let sign = sign([COLUMN - 1.5, top + 2.3]);
        sheet.trail(sign, &Look::filled(sheet.paint.ink));
    }
    // All else stands below the name.
    let top = top + row.more_mm();
    let unset = if row.cut.growth_ladder.is_empty() {
        row.tongue.label(&CutLabel::NotSet)
    } else {
        row.tongue.label(&HalfSectionLabel::SeeLadder)
    };
    let number = row.number.as_ref().map_or(&unset, |(number, _)| number);
    let number = Words::new([COLUMN, top + 5.45], NUMBER, number).bold();
    let x = number.at[0] + width_mm(&number) + 1.2;
    sheet.text_of_row(n, number);
    if !row.beside().is_empty() {
        let fill = sheet.paint.fill("window");
        sheet.rectangle([x, top + 4.1, x + 3.0, top + 5.1], &fill, 0.15);
        let beside = Words::new([x + 3.6, top + 5.45], SMALL, &row.beside());
        sheet.text_of_row(n, beside);
    }
    for (at, line) in row.below.iter().enumerate() {
        let base = top + 5.45 + LINE * (at as f64 + 1.0);
        sheet.text_of_row(n, Words::new([COLUMN, base], SMALL, line));
    }
}

/// Triangle that stands on a mark.
fn sign([x, y]: Place) -> Trail {
    Trail::from([x, y])
        .to([x - 0.9, y - 1.6])
        .level_to(x + 0.9)
        .close()
}

/// Draws the lines of a row.
fn lines(
    sheet: &mut Sheet,
    section: &Section,
    cut: &CutDoc,
    at: f64,
    row: usize,
    [axis, y]: [f64; 2],
) {
    let [datum, x] = [0.0, at].map(|x| section.scale.at(x));
    let surface = axis - section.surface(at);
    sheet.stroke([x, surface], [x, y + 1.0], 0.18, Role::Extension(row));
    sheet.stroke([datum, y], [x, y], 0.25, Role::Dimension(row));
    sheet.dashed(
        [x + 1.0, y],
        [COLUMN - 1.5, y],
        0.12,
        "0.2 0.8",
        Role::Dimension(row),
    );
    let side = if x < datum { -1.0 } else { 1.0 };
    let head = Look::filled(sheet.paint.ink);
    for (tip, side) in [(x, side), (datum, -side)] {
        let back = tip - 2.0 * side;
        let arrow = Trail::from([tip, y]).to([back, y - 0.55]);
        sheet.trail(arrow.upright_to(y + 0.55).close(), &head);
    }
    if cut.is_mark() {
        sheet.trail(sign([x, surface]), &head);
    }
    let window = cut.printed_window.as_ref().and_then(|window| window.at_mm);
    if let Some(window) = window.filter(|ends| ends.iter().all(|x| x.is_finite())) {
        let [from, to] = window.map(|x| section.scale.at(x));
        let fill = sheet.paint.fill("window");
        let low = surface - if cut.is_mark() { 1.7 } else { 0.1 };
        let wide = (0.6 - (to - from)).max(0.0) / 2.0;
        sheet.rectangle([from - wide, low - 1.0, to + wide, low], &fill, 0.15);
    }
}
