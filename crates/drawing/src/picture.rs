//! Picture: the field of a section on one page.

use crate::band::Strength;
use crate::colour::{BANDS, hex};
use crate::equipotential::{Range, along, tenths};
use crate::field_sheet::section::{potential_said, scale_said};
use crate::frame::{Frame, Room, curves};
use crate::label::{escaped, shortened, wrapped};
use crate::level::{multiples, round_up, short, to_step};
use crate::trace::{Spot, path};
use jointwright_joint::cable::Words as Practice;
use jointwright_numerics::mesh::Mesh;
use jointwright_numerics::outline::{Outline, Point};
use jointwright_wording::Tongue;
use jointwright_wording::label::{FieldLabel, FieldLegend};
use std::fmt::Write;

/// Width of the page, picture points.
const WIDTH: f64 = 1160.0;
/// Left edge of the drawing, picture points.
const LEFT: f64 = 70.0;
/// Greatest number of entries in the list of places.
const MARKS_MOST: usize = 60;
/// Language of a section case, which belongs to no job.
const TONGUE: Tongue = Tongue::english(Practice::Us);

/// A marked place.
#[derive(Clone, Debug, PartialEq)]
pub struct Mark {
    /// Label in the list.
    pub label: String,
    /// Place, m.
    pub at: Point,
}

/// Texts of a picture.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Caption {
    /// Title.
    pub title: String,
    /// Text below the title.
    pub about: String,
    /// Tags of the curves that are conductors, drawn thick.
    pub conductors: Vec<String>,
    /// Marked places, in the order of the list.
    pub marks: Vec<Mark>,
}

/// The field of a section as SVG: |E| in bands, equipotential lines in tenths, outlines, marked places and scales.
///
/// `potential` `[n_nodes]`: real and imaginary part, V.
/// A mesh and a potential that do not fit each other leave the bands and lines out.
///
/// ```
/// use jointwright_drawing::{Caption, field_picture};
/// use jointwright_numerics::{mesh::Mesh, outline::Outline};
/// let caption = Caption { title: "a < b".to_owned(), ..Caption::default() };
/// let svg = field_picture(&Outline::default(), &Mesh::default(), &[], &caption);
/// assert!(svg.starts_with("<svg ") && svg.contains("a &lt; b"));
/// assert!(svg.contains("Computed from the drawing given; nobody has judged it."));
/// ```
pub fn field_picture(
    outline: &Outline,
    mesh: &Mesh,
    potential: &[[f64; 2]],
    caption: &Caption,
) -> String {
    let mut page = Page::default();
    page.head(caption);
    if let Some(frame) = Frame::new(outline, [LEFT, page.y + 28.0], Room::PICTURE) {
        let strength = Strength::new(mesh, potential, &frame);
        let step = strength.step();
        page.bands(&strength, step);
        let range = page.equipotentials(mesh, potential, &frame);
        page.outlines(outline, &frame, caption);
        page.axes(&frame);
        page.crosses(&frame, caption);
        page.y = frame.origin[1] + frame.size[1] + 58.0;
        page.legend(step, range, frame.stretch);
    }
    page.list(caption);
    page.whole()
}

#[derive(Default)]
struct Page {
    body: String,
    /// Height at which the next item goes, picture points.
    y: f64,
}

impl Page {
    /// Writes a text at a place; `class` is a class of the style sheet.
    fn text(&mut self, [x, y]: [f64; 2], class: &str, text: &str) {
        // Writing to a text cannot fail.
        let _ = writeln!(
            self.body,
            "<text x=\"{x:.1}\" y=\"{y:.1}\" class=\"{class}\">{}</text>",
            escaped(text)
        );
    }

    fn head(&mut self, caption: &Caption) {
        self.y = 34.0;
        self.text([LEFT, self.y], "t", &shortened(&caption.title, 100));
        for line in wrapped(&caption.about, 170, 4) {
            self.y += 18.0;
            self.text([LEFT, self.y], "", &line);
        }
        self.y += 18.0;
        self.text([LEFT, self.y], "i", &TONGUE.label(&FieldLabel::Unjudged));
    }

    fn bands(&mut self, strength: &Strength, step: f64) {
        for (at, colour) in BANDS.iter().enumerate() {
            let level = (at > 0).then_some(at as f64 * step);
            let loops = strength.above(level);
            if !loops.is_empty() {
                let path = path(&loops, true);
                let _ = writeln!(self.body, "<path fill=\"{}\" d=\"{path}\"/>", hex(*colour));
            }
        }
    }

    /// Draws the potential in tenths, each line with its share of the difference.
    fn equipotentials(
        &mut self,
        mesh: &Mesh,
        potential: &[[f64; 2]],
        frame: &Frame,
    ) -> Option<Range> {
        let (range, tenths) = tenths(mesh, potential, frame)?;
        let mut labels = Vec::new();
        let mut drawn = String::new();
        for tenth in &tenths {
            drawn.push_str(&path(&tenth.lines, false));
            if let Some(longest) = tenth.longest() {
                // Each a little farther along than the one before, so that labels of neighbouring lines do not meet.
                labels.push((along(longest, 0.1 * f64::from(tenth.tenth)), tenth.label()));
            }
        }
        // Dark on light, so that a line is visible on every band.
        let _ = writeln!(self.body, "{}", twice("p", &drawn, ["w", "e"]));
        for (spot, label) in labels {
            let [x, y] = spot.map(|x| f64::from(x) / 10.0);
            self.text([x, y + 3.5], "l", &label);
        }
        Some(range)
    }

    fn outlines(&mut self, outline: &Outline, frame: &Frame, caption: &Caption) {
        let (mut thin, mut thick) = (Vec::new(), Vec::new());
        for (curve, places) in outline.curves.iter().zip(curves(outline)) {
            let line: Vec<Spot> = places.iter().map(|place| frame.spot(*place)).collect();
            if caption.conductors.contains(&curve.tag) {
                thick.push(line);
            } else {
                thin.push(line);
            }
        }
        for (class, lines) in [("o", thin), ("c", thick)] {
            let _ = writeln!(
                self.body,
                "<path class=\"{class}\" d=\"{}\"/>",
                path(&lines, false)
            );
        }
    }

    fn axes(&mut self, frame: &Frame) {
        let [left, top] = frame.origin;
        let [width, height] = frame.size;
        let bottom = top + height + 8.0;
        let mut ticks = String::new();
        let step = round_up((frame.z[1] - frame.z[0]) * 1e3 / 12.0);
        for mm in multiples(frame.z.map(|z| z * 1e3), step) {
            let x = left + (mm / 1e3 - frame.z[0]) * frame.scale;
            let _ = write!(ticks, "M{x:.1} {bottom:.1}v5");
            self.text([x, bottom + 17.0], "m", &to_step(mm, step));
        }
        let _ = write!(ticks, "M{left:.1} {bottom:.1}h{width:.1}");
        let step = round_up((frame.r[1] - frame.r[0]) * 1e3 / 6.0);
        for mm in multiples(frame.r.map(|r| r * 1e3), step) {
            let y = frame.at(Point::new(mm / 1e3, frame.z[0]))[1];
            let _ = write!(ticks, "M{:.1} {y:.1}h-5", left - 8.0);
            self.text([left - 16.0, y + 4.0], "r", &to_step(mm, step));
        }
        let _ = write!(ticks, "M{:.1} {top:.1}v{height:.1}", left - 8.0);
        let _ = writeln!(self.body, "<path class=\"a\" d=\"{ticks}\"/>");
        if frame.r[0] <= 0.0 {
            let y = frame.at(Point::new(0.0, 0.0))[1];
            let _ = writeln!(
                self.body,
                "<path class=\"x\" d=\"M{left:.1} {y:.1}h{width:.1}\"/>"
            );
            self.text(
                [left + width + 6.0, y + 4.0],
                "",
                &TONGUE.label(&FieldLegend::Axis),
            );
        }
        self.text(
            [left + width, bottom + 33.0],
            "r",
            &TONGUE.label(&FieldLegend::AlongAxis),
        );
        self.text(
            [left - 48.0, top - 12.0],
            "",
            &TONGUE.label(&FieldLegend::AcrossAxis),
        );
    }

    fn crosses(&mut self, frame: &Frame, caption: &Caption) {
        let mut drawn = String::new();
        let mut numbers = Vec::new();
        for (number, (at, _)) in grouped(caption).into_iter().enumerate().take(MARKS_MOST) {
            let [x, y] = frame.at(at);
            if x.is_finite() && y.is_finite() {
                let _ = write!(drawn, "M{:.1} {:.1}l8 8m-8 0l8 -8", x - 4.0, y - 4.0);
                numbers.push(([x + 5.0, y - 4.0], format!("{}", number + 1)));
            }
        }
        let _ = writeln!(self.body, "{}", twice("k", &drawn, ["h", "k"]));
        for (place, number) in numbers {
            self.text(place, "n", &number);
        }
    }

    fn legend(&mut self, step: f64, range: Option<Range>, stretch: f64) {
        const BOX: f64 = 72.0;
        let kv_per_mm = step / 1e6;
        self.text([LEFT, self.y], "", &TONGUE.label(&FieldLegend::FlatBands));
        self.y += 10.0;
        for (at, colour) in BANDS.iter().enumerate() {
            let x = LEFT + at as f64 * BOX;
            let _ = writeln!(
                self.body,
                "<rect x=\"{x:.1}\" y=\"{:.1}\" width=\"{BOX}\" height=\"16\" fill=\"{}\" stroke=\"#222\"/>",
                self.y,
                hex(*colour)
            );
            self.text(
                [x, self.y + 31.0],
                "m",
                &to_step(at as f64 * kv_per_mm, kv_per_mm),
            );
        }
        let beyond = LEFT + BANDS.len() as f64 * BOX + 8.0;
        self.text(
            [beyond, self.y + 13.0],
            "",
            &TONGUE.label(&FieldLegend::AndAbove),
        );
        self.y += 52.0;
        if let Some((least, greatest, is_modulus)) = range {
            let line = TONGUE.label(&FieldLegend::Lines {
                of: potential_said(is_modulus),
                least_kv: short(least / 1e3),
                greatest_kv: short(greatest / 1e3),
            });
            self.text([LEFT, self.y], "", &line);
            self.y += 18.0;
        }
        let scale = TONGUE.label(&scale_said(stretch));
        self.text([LEFT, self.y], "", &scale);
        self.y += 26.0;
    }

    fn list(&mut self, caption: &Caption) {
        const N_COLUMNS: usize = 3;
        const LETTERS: usize = 52;
        let mut entries = Vec::new();
        for (number, (_, labels)) in grouped(caption).into_iter().enumerate() {
            if number == MARKS_MOST {
                entries.push(TONGUE.label(&FieldLabel::AndMore));
                break;
            }
            let whole = format!("{}: {}", number + 1, labels.join("; "));
            let mut lines = wrapped(&whole, LETTERS, 4).into_iter();
            entries.extend(lines.next());
            entries.extend(lines.map(|line| format!("\u{2003}{line}")));
        }
        if !entries.is_empty() {
            self.text(
                [LEFT, self.y],
                "b",
                &TONGUE.label(&FieldLabel::MarkedPlaces),
            );
            self.y += 18.0;
        }
        let n_rows = entries.len().div_ceil(N_COLUMNS);
        for (at, entry) in entries.iter().enumerate() {
            let x = LEFT + 350.0 * (at / n_rows) as f64;
            let y = self.y + 15.0 * (at % n_rows) as f64;
            self.text([x, y], "s", entry);
        }
        self.y += 15.0 * n_rows as f64 + 10.0;
    }

    fn whole(self) -> String {
        let height = self.y.max(80.0);
        format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {WIDTH} {height:.0}\" width=\"{WIDTH}\" height=\"{height:.0}\">\n\
             <style>{STYLE}</style>\n\
             <rect width=\"100%\" height=\"100%\" fill=\"#fff\"/>\n{}</svg>\n",
            self.body
        )
    }
}

/// Classes: t title, i slanted, b bold, s small, m centred, r right, l on a line, n beside a cross;
/// w and e the light and dark of equipotentials, h and k of crosses, o outline, c conductor, a axes, x the axis of rotation.
const STYLE: &str = "text{font:12px sans-serif;fill:#111}.t{font-size:19px;font-weight:bold}.i{font-style:italic}\
.b{font-weight:bold}.s{font-size:11px}.m{text-anchor:middle}.r{text-anchor:end}\
.l{font-size:10px;text-anchor:middle;paint-order:stroke;stroke:#fff;stroke-width:3px}\
.n{font-size:10px;font-weight:bold;paint-order:stroke;stroke:#fff;stroke-width:3px}\
path{stroke-linejoin:round}.w,.e,.o,.c,.a,.x,.h,.k{fill:none}.w{stroke:#fff;stroke-width:2;stroke-opacity:.5}\
.e{stroke:#123a5e;stroke-width:.8}.o{stroke:#222;stroke-width:.8}.c{stroke:#000;stroke-width:2.4}\
.a{stroke:#444;stroke-width:1}.x{stroke:#444;stroke-width:1;stroke-dasharray:14 4 3 4}\
.h{stroke:#fff;stroke-width:3.4}.k{stroke:#000;stroke-width:1.5}";

/// Groups of marks at one place, in the order of the first mark of each.
fn grouped(caption: &Caption) -> Vec<(Point, Vec<String>)> {
    let mut groups: Vec<(Point, Vec<String>)> = Vec::new();
    for mark in &caption.marks {
        match groups.iter_mut().find(|(at, _)| *at == mark.at) {
            Some((_, labels)) => labels.push(mark.label.clone()),
            None => groups.push((mark.at, vec![mark.label.clone()])),
        }
    }
    groups
}

/// A path that is written once and drawn twice, in two classes.
fn twice(id: &str, path: &str, [below, above]: [&str; 2]) -> String {
    format!(
        "<defs><path id=\"{id}\" d=\"{path}\"/></defs>\n<use href=\"#{id}\" class=\"{below}\"/><use href=\"#{id}\" class=\"{above}\"/>"
    )
}
