//! Picture: the field of a section on one page.

use crate::band::Strength;
use crate::canvas::{
    Anchor, BLACK, Bounds, Canvas, EQUIPOTENTIAL, Element, FRAME, Look, OUTLINE, PAPER, Page,
    Trail, Words,
};
use crate::colour::{BANDS, hex};
use crate::equipotential::{Range, along, tenths};
use crate::field_sheet::section::{potential_said, scale_said};
use crate::frame::{Frame, Room, curves};
use crate::label::{shortened, wrapped};
use crate::level::{multiples, round_up, short, to_step};
use crate::trace::{Spot, path};
use jointwright_joint::cable::Words as Practice;
use jointwright_numerics::mesh::Mesh;
use jointwright_numerics::outline::{Outline, Point};
use jointwright_wording::Tongue;
use jointwright_wording::label::{FieldLabel, FieldLegend};

/// Width of the page, picture points.
const WIDTH: f64 = 1160.0;
/// Least height of the page, picture points.
const HEIGHT_LEAST: f64 = 80.0;
/// Size of texts, and of the title, picture points.
const SIZE: f64 = 12.0;
const TITLE: f64 = 19.0;
/// Size of numbers beside crosses and on lines, picture points.
const SMALL: f64 = 10.0;
/// Typeface of a screen.
const FONT: &str = "sans-serif";
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
    let mut page = Picture {
        canvas: Canvas::new(1),
    };
    page.head(caption);
    if let Some(frame) = Frame::new(outline, [LEFT, page.canvas.y + 28.0], Room::PICTURE) {
        let strength = Strength::new(mesh, potential, &frame);
        let step = strength.step();
        page.bands(&strength, step);
        let range = page.equipotentials(mesh, potential, &frame);
        page.outlines(outline, &frame, caption);
        page.axes(&frame);
        page.crosses(&frame, caption);
        page.canvas.y = frame.origin[1] + frame.size[1] + 58.0;
        page.legend(step, range, frame.stretch);
    }
    page.list(caption);
    page.whole()
}

struct Picture {
    canvas: Canvas,
}

impl Picture {
    /// Writes a text among the shapes, so that later shapes lie over it.
    fn words(&mut self, words: &Words) {
        self.canvas.shape(words.element());
    }

    fn text(&mut self, at: [f64; 2], text: &str) {
        self.words(&Words::new(at, SIZE, text));
    }

    fn anchored(&mut self, at: [f64; 2], anchor: Anchor, text: &str) {
        self.words(&Words::new(at, SIZE, text).anchored(anchor));
    }

    fn head(&mut self, caption: &Caption) {
        let mut y = 34.0;
        let title = shortened(&caption.title, 100);
        self.words(&Words::new([LEFT, y], TITLE, &title).bold());
        for line in wrapped(&caption.about, 170, 4) {
            y += 18.0;
            self.text([LEFT, y], &line);
        }
        y += 18.0;
        let unjudged = TONGUE.label(&FieldLabel::Unjudged);
        self.words(&Words::new([LEFT, y], SIZE, &unjudged).slanted());
        self.canvas.y = y;
    }

    fn bands(&mut self, strength: &Strength, step: f64) {
        for (at, colour) in BANDS.iter().enumerate() {
            let level = (at > 0).then_some(at as f64 * step);
            let loops = strength.above(level);
            self.canvas
                .path(&path(&loops, true), &Look::filled(hex(*colour)));
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
        let dark = Look::line(EQUIPOTENTIAL, 0.8);
        let path = Element::new("path").with("d", drawn);
        self.twice("p", path, [Look::line(PAPER, 2.0).faint(0.5), dark]);
        for (spot, label) in labels {
            let [x, y] = spot.map(|x| f64::from(x) / 10.0);
            let words = Words::new([x, y + 3.5], SMALL, &label).anchored(Anchor::Middle);
            self.words(&words.on_picture());
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
        for (lines, look) in [
            (thin, Look::line(OUTLINE, 0.8)),
            (thick, Look::line(BLACK, 2.4)),
        ] {
            self.canvas.path(&path(&lines, false), &look.round());
        }
    }

    fn axes(&mut self, frame: &Frame) {
        let [left, top] = frame.origin;
        let [width, height] = frame.size;
        let bottom = top + height + 8.0;
        let mut ticks = Trail::default();
        let step = round_up((frame.z[1] - frame.z[0]) * 1e3 / 12.0);
        for mm in multiples(frame.z.map(|z| z * 1e3), step) {
            let x = left + (mm / 1e3 - frame.z[0]) * frame.scale;
            ticks.join(Trail::from([x, bottom]).upright_to(bottom + 5.0));
            self.anchored([x, bottom + 17.0], Anchor::Middle, &to_step(mm, step));
        }
        ticks.join(Trail::from([left, bottom]).level_to(left + width));
        let step = round_up((frame.r[1] - frame.r[0]) * 1e3 / 6.0);
        for mm in multiples(frame.r.map(|r| r * 1e3), step) {
            let y = frame.at(Point::new(mm / 1e3, frame.z[0]))[1];
            ticks.join(Trail::from([left - 8.0, y]).level_to(left - 13.0));
            self.anchored([left - 16.0, y + 4.0], Anchor::End, &to_step(mm, step));
        }
        ticks.join(Trail::from([left - 8.0, top]).upright_to(top + height));
        self.canvas.trail(ticks, &Look::line(FRAME, 1.0));
        if frame.r[0] <= 0.0 {
            let y = frame.at(Point::new(0.0, 0.0))[1];
            let axis = Look::line(FRAME, 1.0).dashed("14 4 3 4");
            self.canvas
                .trail(Trail::from([left, y]).level_to(left + width), &axis);
            let at = [left + width + 6.0, y + 4.0];
            self.text(at, &TONGUE.label(&FieldLegend::Axis));
        }
        let along = TONGUE.label(&FieldLegend::AlongAxis);
        self.anchored([left + width, bottom + 33.0], Anchor::End, &along);
        let across = TONGUE.label(&FieldLegend::AcrossAxis);
        self.text([left - 48.0, top - 12.0], &across);
    }

    fn crosses(&mut self, frame: &Frame, caption: &Caption) {
        let mut drawn = Trail::default();
        let mut numbers = Vec::new();
        for (number, (at, _)) in grouped(caption).into_iter().enumerate().take(MARKS_MOST) {
            let [x, y] = frame.at(at);
            if x.is_finite() && y.is_finite() {
                drawn.join(Trail::from([x - 4.0, y - 4.0]).to([x + 4.0, y + 4.0]));
                drawn.join(Trail::from([x - 4.0, y + 4.0]).to([x + 4.0, y - 4.0]));
                numbers.push(([x + 5.0, y - 4.0], format!("{}", number + 1)));
            }
        }
        let path = Element::new("path").along(drawn);
        self.twice("k", path, [Look::line(PAPER, 3.4), Look::line(BLACK, 1.5)]);
        for (place, number) in numbers {
            self.words(&Words::new(place, SMALL, &number).bold().on_picture());
        }
    }

    fn legend(&mut self, step: f64, range: Option<Range>, stretch: f64) {
        const BOX: f64 = 72.0;
        let kv_per_mm = step / 1e6;
        let mut y = self.canvas.y;
        self.text([LEFT, y], &TONGUE.label(&FieldLegend::FlatBands));
        y += 10.0;
        for (at, colour) in BANDS.iter().enumerate() {
            let x = LEFT + at as f64 * BOX;
            let patch = Bounds::new([x, y], [BOX, 16.0]);
            let look = Look::filled(hex(*colour)).edged(OUTLINE, 1.0);
            self.canvas.shape(Element::rectangle(&patch).drawn(&look));
            let number = to_step(at as f64 * kv_per_mm, kv_per_mm);
            self.anchored([x, y + 31.0], Anchor::Middle, &number);
        }
        let beyond = LEFT + BANDS.len() as f64 * BOX + 8.0;
        let above = TONGUE.label(&FieldLegend::AndAbove);
        self.text([beyond, y + 13.0], &above);
        y += 52.0;
        if let Some((least, greatest, is_modulus)) = range {
            let line = TONGUE.label(&FieldLegend::Lines {
                of: potential_said(is_modulus),
                least_kv: short(least / 1e3),
                greatest_kv: short(greatest / 1e3),
            });
            self.text([LEFT, y], &line);
            y += 18.0;
        }
        let scale = TONGUE.label(&scale_said(stretch));
        self.text([LEFT, y], &scale);
        self.canvas.y = y + 26.0;
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
        let mut y = self.canvas.y;
        if !entries.is_empty() {
            let heading = TONGUE.label(&FieldLabel::MarkedPlaces);
            self.words(&Words::new([LEFT, y], SIZE, &heading).bold());
            y += 18.0;
        }
        let n_rows = entries.len().div_ceil(N_COLUMNS);
        for (at, entry) in entries.iter().enumerate() {
            let x = LEFT + 350.0 * (at / n_rows) as f64;
            let at = [x, y + 15.0 * (at % n_rows) as f64];
            self.words(&Words::new(at, SIZE - 1.0, entry));
        }
        self.canvas.y = y + 15.0 * n_rows as f64 + 10.0;
    }

    /// Draws a path that is written once in two looks, the second over the first.
    fn twice(&mut self, name: &'static str, path: Element, looks: [Look; 2]) {
        let path = path.tagged("id", name);
        self.canvas.shape(Element::new("defs").around([path]));
        for look in looks {
            let again = Element::new("use").with("href", format!("#{name}"));
            self.canvas.shape(again.drawn(&look.round()));
        }
    }

    fn whole(self) -> String {
        let height = self.canvas.y.max(HEIGHT_LEAST).round();
        self.canvas.svg(Page::points(WIDTH, height).in_font(FONT))
    }
}

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
