//! Field sheet: the field of one end of a joint on one page, and below it the strength along its interface.
//!
//! ```text
//!      (1) (2)                 numbers of the greatest fields
//!   r +--+--+---------------+
//!     |  |  x               |  the section, z to the right, r upward, shaded by |E|
//!     +--x------------------+
//!     |   ___   this end    |  the tangential field along the interface:
//!     |  /   \- - - -       |  a z has the same x in both
//!     +---------------------+ z
//! ```
//!
//! **What.** [`field_sheet`]: a page to look at; [`field_strip`]: the same in small, for the back of a printed page.
//!
//! **Why separate.** [`field_picture`](crate::field_picture) shows any section; this page shows one end and the field along its interface.
//!
//! **Invariants.** Section and diagram have one z axis.
//! No text lies on another, no leader crosses another, and the page names what was left out for want of room.
//! The page says of itself that it decides nothing; the words that its data are invented cannot be switched off.
//!
//! **Not here.** The strength along the interface (numerics, `field::along`), its limits, units as people write them.

mod diagram;
mod rail;
pub(crate) mod section;

use crate::canvas::{
    Across, Anchor, BOLD_LETTER, Bounds, Canvas, Element, INK, INVENTED, LETTER, Look, PAPER, Page,
    Words,
};
use crate::equipotential::Range;
use crate::frame::{Frame, Room};
use crate::label::{shortened, wrapped};
use jointwright_numerics::mesh::Mesh;
use jointwright_numerics::outline::{Outline, Point};
use jointwright_wording::Tongue;
use jointwright_wording::label::FieldLabel;

/// Greatest number of lines below the title.
const LINES_MOST: usize = 8;
/// Greatest number of letters of a value.
const VALUE_LETTERS: usize = 12;

/// Strength along an interface.
#[derive(Clone, Debug, PartialEq)]
pub struct Curve {
    /// Label at the line, as "this end".
    pub label: String,
    /// z, m, and the tangential field there, V/m; a negative field is drawn by its modulus.
    pub points: Vec<(f64, f64)>,
    /// Whether the line is dashed, as for the worst that the instructions allow.
    pub dashed: bool,
}

/// A greatest field that is numbered.
#[derive(Clone, Debug, PartialEq)]
pub struct Peak {
    /// Label in the list, as "screen edge".
    pub label: String,
    /// Its value in kV/mm, as it is printed.
    pub value_kv_per_mm: String,
    /// Place, m.
    pub at: Point,
}

/// Text in a bar above everything else and across the face, for example that the data are invented.
#[derive(Clone, Debug, PartialEq)]
pub struct Banner(pub String);

/// Content of a field sheet.
#[derive(Clone, Debug, PartialEq)]
pub struct FieldSheet<'a> {
    /// Language of what stands on it.
    pub tongue: Tongue,
    /// The section.
    pub outline: &'a Outline,
    /// Its mesh.
    pub mesh: &'a Mesh,
    /// Real and imaginary part at each node of the mesh, V.
    pub potential: &'a [[f64; 2]],
    /// Tags of the curves that are conductors, drawn thick.
    pub conductors: Vec<String>,
    /// Its title.
    pub title: String,
    /// Lines below the title; a strip takes the first alone.
    pub about: Vec<String>,
    /// Greatest fields, in the order of their numbers.
    pub peaks: Vec<Peak>,
    /// Strengths along the interface: this end first, then dashed the worst that the instructions allow.
    pub curves: Vec<Curve>,
    /// Names of parts with their places; a name without room is left out.
    pub regions: Vec<(String, Point)>,
    /// Text that must be read before anything else.
    pub banner: Option<Banner>,
    /// Lines below everything.
    pub below: Vec<String>,
}

/// Facts about a section for the legend.
#[derive(Clone, Debug)]
struct Shown {
    /// Step of the bands, V/m.
    step: f64,
    range: Option<Range>,
    stretch: f64,
    /// Numbers of the greatest fields that are marked.
    marked: Vec<usize>,
    /// Labels that found no room at their line.
    unwritten: Vec<String>,
}

/// Sizes of a page, picture points.
#[derive(Clone, Copy, Debug)]
struct Format {
    width: f64,
    /// Width on paper, mm, for a printed page.
    width_mm: Option<f64>,
    /// Left edge of the drawing.
    left: f64,
    room: Room,
    /// Height of the diagram.
    diagram: f64,
    /// Approximate number of steps of its scale.
    n_steps: u32,
    /// Size of texts, of the title, and of the bar's letters.
    size: f64,
    title: f64,
    bar: f64,
    /// Width of lines as a share of the sheet's.
    pen: f64,
    /// Whether the list stands beside the drawing, with few texts.
    is_strip: bool,
}

impl Format {
    const SHEET: Self = Self {
        width: 1160.0,
        width_mm: None,
        left: 78.0,
        room: Room {
            width: 1040.0,
            height_most: 380.0,
            height_least: 180.0,
        },
        diagram: 190.0,
        n_steps: 5,
        size: 12.0,
        title: 19.0,
        bar: 18.0,
        pen: 1.0,
        is_strip: false,
    };

    /// Four picture points are a millimetre, so that ten are just over 7 pt.
    const STRIP: Self = Self {
        width: 680.0,
        width_mm: Some(170.0),
        left: 42.0,
        room: Room {
            width: 472.0,
            height_most: 96.0,
            height_least: 64.0,
        },
        diagram: 66.0,
        n_steps: 3,
        size: 10.0,
        title: 11.5,
        bar: 11.0,
        pen: 0.7,
        is_strip: true,
    };

    fn right(&self) -> f64 {
        self.width - 0.25 * self.left
    }

    /// Left edge of texts.
    fn margin(&self) -> f64 {
        0.25 * self.left
    }

    /// Height of a line of text.
    fn line(&self) -> f64 {
        1.35 * self.size
    }

    /// Number of letters of the usual size between the margins.
    fn n_letters(&self) -> usize {
        ((self.right() - self.margin()) / (LETTER * self.size)) as usize
    }
}

/// One end's field as SVG, 1160 picture points wide: |E| in bands, equipotential lines in tenths, numbered greatest fields, and on the same z axis the strength along the interface.
///
/// # Shapes
/// `potential` `[n_nodes]`; a mesh and a potential that do not fit each other leave the bands and lines out.
///
/// ```
/// use jointwright_drawing::{Banner, FieldSheet, field_sheet};
/// use jointwright_joint::cable::Words;
/// use jointwright_numerics::{mesh::Mesh, outline::Outline};
/// use jointwright_wording::Tongue;
/// let (outline, mesh) = (Outline::default(), Mesh::default());
/// let sheet = FieldSheet {
///     tongue: Tongue::english(Words::Us), outline: &outline, mesh: &mesh, potential: &[], conductors: vec![], title: "a < b".to_owned(), about: vec![],
///     peaks: vec![], curves: vec![], regions: vec![], banner: Some(Banner("INVENTED".to_owned())), below: vec![],
/// };
/// let svg = field_sheet(&sheet);
/// assert!(svg.contains("a &lt; b") && svg.contains(">INVENTED<"));
/// assert!(svg.contains("Computed from the dimensions given; decides nothing."));
/// ```
pub fn field_sheet(sheet: &FieldSheet) -> String {
    svg(sheet, &Format::SHEET)
}

/// The field sheet in small for the back of a printed page: 170 mm wide, about 60 mm high, no letter smaller than 7 pt.
///
/// It has only the first of the lines about it, and no names of parts; the rest is as on the sheet.
///
/// ```
/// use jointwright_drawing::{FieldSheet, field_strip};
/// use jointwright_joint::cable::Words;
/// use jointwright_numerics::{mesh::Mesh, outline::Outline};
/// use jointwright_wording::Tongue;
/// let (outline, mesh) = (Outline::default(), Mesh::default());
/// let sheet = FieldSheet {
///     tongue: Tongue::english(Words::Us), outline: &outline, mesh: &mesh, potential: &[], conductors: vec![], title: "end A".to_owned(), about: vec![],
///     peaks: vec![], curves: vec![], regions: vec![], banner: None, below: vec![],
/// };
/// assert!(field_strip(&sheet).contains("width=\"170mm\""));
/// ```
pub fn field_strip(sheet: &FieldSheet) -> String {
    svg(sheet, &Format::STRIP)
}

fn svg(sheet: &FieldSheet, format: &Format) -> String {
    let canvas = drawn(sheet, format);
    let (width, height) = (format.width, canvas.y.ceil());
    canvas.svg(match format.width_mm {
        Some(mm) => Page::printed(Bounds::new([0.0; 2], [width, height]), mm),
        None => Page::points(width, height),
    })
}

fn drawn(sheet: &FieldSheet, format: &Format) -> Canvas {
    let mut canvas = Canvas::new(1);
    head(&mut canvas, sheet, format);
    let head = canvas.y;
    let shown = drawing(&mut canvas, sheet, format);
    if format.is_strip {
        let below = canvas.y;
        canvas.y = head + format.line();
        let left = format.left + format.room.width + 14.0;
        let marked = shown.as_ref().map_or(&[][..], |shown| &shown.marked);
        list(&mut canvas, sheet, marked, [left, format.right()], format);
        canvas.y = below.max(canvas.y);
    }
    if let Some(shown) = &shown {
        for line in &shown.unwritten {
            lines(&mut canvas, line, format);
        }
        section::legend(&mut canvas, shown, sheet.tongue, format);
    }
    if !format.is_strip {
        canvas.y += 0.6 * format.line();
        let sides = [format.margin(), format.right()];
        let marked = shown.as_ref().map_or(&[][..], |shown| &shown.marked);
        list(&mut canvas, sheet, marked, sides, format);
    }
    canvas.y += if format.is_strip { 0.0 } else { 0.6 } * format.line();
    for line in &sheet.below {
        lines(&mut canvas, line, format);
    }
    canvas.y += 0.8 * format.size;
    canvas
}

/// Draws section and diagram; `None` if the outline has no extent.
fn drawing(canvas: &mut Canvas, sheet: &FieldSheet, format: &Format) -> Option<Shown> {
    let rail_y = canvas.y + 1.3 * format.size;
    let top = match sheet.peaks.is_empty() {
        true => rail_y + format.size,
        false => rail_y + 1.6 * format.size,
    };
    let frame = Frame::new(sheet.outline, [format.left, top], format.room)?;
    let section = Bounds::new([format.left, top], frame.size);
    let mut bottom = section.bottom;
    let mut shown = section::draw(canvas, sheet, &frame, rail_y, format);
    if !sheet.curves.is_empty() {
        let caption = sheet.tongue.label(&FieldLabel::TangentialField);
        let at = [format.left, bottom + 1.5 * format.size];
        canvas.text(Words::new(at, format.size, &caption).bold().on_picture());
        let room = diagram::room(&frame, bottom + 2.0 * format.size, format.diagram);
        shown.unwritten = diagram::draw(canvas, &frame, &room, sheet, format);
        bottom = room.bottom;
    }
    section::z_axis(
        canvas,
        &frame,
        [section.bottom, bottom],
        sheet.tongue,
        format,
    );
    if let Some(Banner(text)) = &sheet.banner {
        mark_across(canvas, &Bounds { bottom, ..section }, text);
    }
    canvas.y = bottom + if format.is_strip { 1.8 } else { 2.9 } * format.size;
    Some(shown)
}

/// Writes bar, title, the lines about it, and that it decides nothing.
fn head(canvas: &mut Canvas, sheet: &FieldSheet, format: &Format) {
    let left = format.margin();
    if let Some(Banner(text)) = &sheet.banner {
        let letters = (format.right() - left) / (0.68 * format.bar);
        for line in wrapped(text, letters as usize, 3) {
            let height = 1.5 * format.bar;
            let bar = Bounds::new([0.0, canvas.y], [format.width, height]);
            canvas.shape(Element::rectangle(&bar).drawn(&Look::filled(INK)));
            let at = [0.5 * format.width, canvas.y + 1.1 * format.bar];
            let words = Words::new(at, format.bar, &line).bold();
            canvas.text(words.anchored(Anchor::Middle).inked(PAPER));
            canvas.y += height;
        }
    }
    canvas.y += 1.3 * format.title;
    let letters = (format.right() - left) / (0.68 * format.title);
    let title = shortened(&sheet.title, letters as usize);
    let title_y = canvas.y;
    canvas.text(Words::new([left, title_y], format.title, &title).bold());
    let said = sheet.tongue.label(&FieldLabel::Undecided);
    let undecided = |at: [f64; 2]| Words::new(at, format.size, &said).slanted();
    if format.is_strip {
        if let Some(line) = sheet.about.first() {
            lines(canvas, line, format);
        }
        // Beside the title if there is room for both.
        let beside = undecided([format.right(), title_y]).anchored(Anchor::End);
        if canvas.is_free(&beside.bounds()) {
            canvas.text(beside);
            return;
        }
    } else {
        for line in sheet.about.iter().take(LINES_MOST) {
            lines(canvas, line, format);
        }
    }
    canvas.y += format.line();
    canvas.text(undecided([left, canvas.y]));
}

/// Writes large outlined letters across a part of the page, over its shading and below its curves.
pub(crate) fn mark_across(canvas: &mut Canvas, over: &Bounds, text: &str) {
    let lines = Across::lines(text);
    let [wide, high] = [over.right - over.left, over.bottom - over.top];
    let size = (0.95 * wide / (BOLD_LETTER * Across::longest(&lines)))
        .min(0.6 * high / lines.len().max(1) as f64);
    // Light below dark, so that it is legible on every band and does not hide the lines below it.
    let looks = [
        (PAPER, (0.09 * size).max(2.6)),
        (INVENTED, (0.035 * size).max(1.0)),
    ];
    let across = Across {
        lines,
        at: [over.left + 0.5 * wide, over.top + 0.5 * high],
        anchor: Anchor::Middle,
        turn_deg: -(0.45 * high).atan2(wide).to_degrees(),
        size,
        pitch: 1.4,
        looks: looks
            .map(|(colour, width)| Look::line(colour, width).round())
            .to_vec(),
    };
    canvas.across(across.elements());
}

/// Writes a text from margin to margin.
fn lines(canvas: &mut Canvas, text: &str, format: &Format) {
    for line in wrapped(text, format.n_letters(), 6) {
        canvas.y += format.line();
        canvas.text(Words::new([format.margin(), canvas.y], format.size, &line));
    }
}

/// Writes number, label and value of each greatest field.
fn list(
    canvas: &mut Canvas,
    sheet: &FieldSheet,
    marked: &[usize],
    [left, right]: [f64; 2],
    format: &Format,
) {
    if sheet.peaks.is_empty() {
        return;
    }
    canvas.y += format.line();
    let heading = sheet.tongue.label(&FieldLabel::GreatestFields);
    canvas.text(Words::new([left, canvas.y], format.size, &heading).bold());
    let n_columns = if format.is_strip { 1 } else { 3 };
    let gap = 3.0 * format.size;
    let width = (right - left + gap) / n_columns as f64 - gap;
    // Number and value stand at the sides, and the value is short.
    let letters = (width / (LETTER * format.size)) as usize;
    let values = sheet
        .peaks
        .iter()
        .map(|peak| peak.value_kv_per_mm.chars().count());
    let value = values.max().unwrap_or(0).min(VALUE_LETTERS);
    let room = letters.saturating_sub(3 + value + 1).max(6);
    let mut rows: Vec<(String, String, String)> = Vec::new();
    for (at, peak) in sheet.peaks.iter().enumerate() {
        if at == section::PEAKS_MOST {
            let n = sheet.peaks.len() - at;
            let more = sheet.tongue.label(&FieldLabel::AndMoreOf { n });
            rows.push((String::new(), more, String::new()));
            break;
        }
        let label = peak.label.clone();
        let label = match marked.contains(&(at + 1)) {
            true => label,
            false => sheet.tongue.label(&FieldLabel::NotMarked { label }),
        };
        let mut label = wrapped(&label, room, 4).into_iter();
        let value = shortened(&peak.value_kv_per_mm, VALUE_LETTERS);
        rows.push((
            format!("{}", at + 1),
            label.next().unwrap_or_default(),
            value,
        ));
        rows.extend(label.map(|line| (String::new(), line, String::new())));
    }
    let n_rows = rows.len().div_ceil(n_columns);
    for (at, (number, label, value)) in rows.into_iter().enumerate() {
        let x = left + (width + gap) * (at / n_rows) as f64;
        let y = canvas.y + format.line() * (at % n_rows + 1) as f64;
        let mut text = |x: f64, text: &str, anchor: Anchor, is_bold: bool| {
            if !text.is_empty() {
                let words = Words::new([x, y], format.size, text).anchored(anchor);
                canvas.text(Words { is_bold, ..words });
            }
        };
        text(x, &number, Anchor::Start, true);
        text(x + 3.0 * LETTER * format.size, &label, Anchor::Start, false);
        text(x + width, &value, Anchor::End, false);
    }
    canvas.y += format.line() * n_rows as f64;
}

#[cfg(test)]
mod tests;
