//! Half-section: one leg as it is made up, cut open to its axis, with where every layer ends.
//!
//! ```text
//!        body - - - - - - - - - - - - - -            leaders
//!              |###|screen#|~~shield~~~|MMM jacket   to names
//!   ===========|###########################
//!   datum ─────▸ axis
//!   |──────────▸|                                    2 1/16 in  CUT insulation end
//!   |──────────────────▸|                            4 7/8 in   CUT insulation shield edge
//! ```
//!
//! Invariants: one scale for both directions, but for stretches that are broken and marked so; a number is a text of the plan; where a ruling fails there is none; nearer dimensions stand above farther ones, and their texts in a column that no line enters.
//!
//! Not here: marks at full size (`strip`).

mod axis;
mod page;
#[cfg(test)]
mod tests;

use crate::label::{shortened, wrapped};
use axis::Axis;
use jointwright_joint::plan::{CutDoc, LegDoc, Plan};
use page::{Ink, Page, width_of};

const WIDTH: f64 = 190.0;
/// Left end of the section, what is left for it, and the column of texts, mm.
const LEFT: f64 = 22.0;
const ROOM: f64 = 110.0;
const COLUMN: f64 = 143.0;
/// Paper between the last plane and the broken end of the cable, mm.
const BEYOND: f64 = 7.0;
/// Size of small letters, of names of layers, of names and of numbers, mm.
const SMALL: f64 = 2.3;
const LAYER: f64 = 2.2;
const NAME: f64 = 2.6;
const NUMBER: f64 = 3.4;
/// Height of the rubber over the thickest layer; its outside is not known, mm of paper.
const RUBBER: f64 = 5.0;

/// What a picture is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Theme {
    /// Bright screens.
    Light,
    /// A phone in the dark.
    Dark,
    /// Paper: black on white alone.
    Print,
}

/// How a picture looks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Style {
    /// What it is for.
    pub theme: Theme,
}

impl Style {
    fn ink(self) -> Ink {
        let (paper, line, grey) = match self.theme {
            Theme::Light => ("#ffffff", "#111111", "#e8e8e8"),
            Theme::Dark => ("#111111", "#eeeeee", "#333333"),
            Theme::Print => ("#ffffff", "#000000", "#ffffff"),
        };
        Ink { paper, line, grey }
    }
}

/// The half-section of a leg as made up, SVG in millimetres, 190 wide.
///
/// Nothing is computed here but where things lie on paper; every number is a text of the plan.
pub fn half_section(leg: &LegDoc, plan: &Plan, style: &Style) -> String {
    let (page, height) = drawn(leg, plan, *style);
    page.whole(WIDTH, height, plan.invented.as_deref())
}

/// The picture and its height, mm.
fn drawn(leg: &LegDoc, plan: &Plan, style: Style) -> (Page, f64) {
    let mut page = Page::new(style.ink());
    let mut y = 4.0;
    if let Some(invented) = &plan.invented {
        page.text([2.0, y], NAME, true, &shortened(invented, 100));
        y += 5.0;
    }
    let title = format!("Leg {}: {}", shortened(&leg.mark, 12), leg.cable);
    page.text([2.0, y], NAME, true, &shortened(&title, 110));
    let section = Section::new(leg);
    let axis_y = y + 5.0 + section.height();
    section.draw(&mut page, axis_y);
    section.name_layers(&mut page, axis_y);
    let mut bottom = axis_y + 3.5;
    if plan.outcome == "fail" {
        page.text(
            [LEFT, bottom + 4.0],
            NUMBER,
            true,
            "a check fails: no number is printed",
        );
        bottom += 8.0;
    } else {
        bottom = section.dimensions(&mut page, plan, axis_y);
    }
    for line in section.legend(plan) {
        bottom += 3.4;
        page.text([2.0, bottom], SMALL, false, &line);
    }
    (page, bottom + 2.5)
}

/// One layer of the cable as drawn.
struct Ring<'l> {
    words: &'l str,
    layer: &'l str,
    /// Where it ends, mm along the leg.
    from: f64,
    /// Inner and outer radius, mm.
    radii: [f64; 2],
    /// Whether its end is where the plan says.
    is_set: bool,
}

struct Section<'l> {
    leg: &'l LegDoc,
    axis: Axis,
    rings: Vec<Ring<'l>>,
}

impl<'l> Section<'l> {
    fn new(leg: &'l LegDoc) -> Section<'l> {
        let cuts = leg.cuts.iter().filter_map(place);
        let planes = leg.planes.iter().map(|p| p.nominal_mm);
        let places: Vec<f64> = cuts.chain(planes).filter(|p| *p >= 0.0).collect();
        Section {
            leg,
            axis: Axis::new(&places, LEFT, ROOM),
            rings: rings(leg),
        }
    }

    fn plane(&self, name: &str) -> Option<f64> {
        let plane = self.leg.planes.iter().find(|p| p.plane == name);
        plane.map(|p| p.nominal_mm).or_else(|| {
            let cut = self.leg.cuts.iter().find(|c| c.plane == name);
            cut.and_then(place)
        })
    }

    /// Millimetres of paper for a length across the axis.
    fn across(&self, length: f64) -> f64 {
        length / self.axis.scale
    }

    fn radius_most(&self) -> f64 {
        let connector = self.leg.connector.as_ref();
        let connector = connector.map_or(0.0, |c| 0.5 * c.outside_diameter_mm);
        self.rings
            .iter()
            .map(|r| r.radii[1])
            .fold(connector, f64::max)
    }

    /// Paper above the axis, for the section and for the names of its layers, mm.
    fn height(&self) -> f64 {
        let names = 3.6 * self.rings.len() as f64 + 2.0;
        (self.across(self.radius_most()) + RUBBER + 4.0).max(names)
    }

    fn draw(&self, page: &mut Page, axis_y: f64) {
        let right = self.axis.right() + BEYOND;
        for ring in &self.rings {
            let fill = match ring.layer {
                "conductor" => "url(#metal)",
                "metallic-shield" => "url(#tape)",
                "jacket" => "url(#grey)",
                "insulation" => page.ink.paper,
                _ => page.ink.line,
            };
            let rect = [
                self.axis.at(ring.from),
                axis_y - self.across(ring.radii[1]),
                right,
                axis_y - self.across(ring.radii[0]),
            ];
            page.rect(rect, fill, if ring.is_set { "" } else { "1 1" });
        }
        self.draw_connector(page, axis_y);
        self.draw_body(page, axis_y);
        let top = axis_y - self.across(self.radius_most()) - 1.0;
        page.broken(right, top, axis_y);
        for x in self.axis.breaks() {
            page.broken(x, top, axis_y);
        }
        // The axis, and the datum.
        page.line(
            [LEFT - 18.0, axis_y],
            [right + 2.0, axis_y],
            0.15,
            "4 1 1 1",
        );
        let datum_top = axis_y - self.across(self.radius_most()) - RUBBER - 1.5;
        page.line([LEFT, datum_top], [LEFT, axis_y], 0.5, "");
    }

    fn draw_connector(&self, page: &mut Page, axis_y: f64) {
        let Some(connector) = &self.leg.connector else {
            return;
        };
        let mouth = self.plane("connector-mouth").unwrap_or(0.0);
        let centre = self
            .plane("connector-centre")
            .or_else(|| self.plane("connector-seat"))
            .unwrap_or(0.0);
        let radius = self.across(0.5 * connector.outside_diameter_mm);
        let left = self.axis.at(centre).max(LEFT - 16.0);
        let rect = [left, axis_y - radius, self.axis.at(mouth), axis_y];
        page.rect(rect, "none", "");
        page.line(
            [left, axis_y - radius],
            [self.axis.at(mouth), axis_y - radius],
            0.5,
            "",
        );
    }

    /// The body in dashes, for its outside is not known; inside it what its planes say.
    fn draw_body(&self, page: &mut Page, axis_y: f64) {
        let Some(end) = self.plane("body-end") else {
            return;
        };
        let thickest = axis_y - self.across(self.radius_most());
        let rect = [
            LEFT - 16.0,
            thickest - RUBBER,
            self.axis.at(end),
            thickest - 1.2,
        ];
        page.rect(rect, "none", "1.6 0.8");
        if let Some(electrode) = self.plane("electrode-end") {
            page.line(
                [LEFT - 16.0, thickest - 1.8],
                [self.axis.at(electrode), thickest - 1.8],
                0.7,
                "",
            );
        }
        let control = self
            .plane("stress-control-near")
            .zip(self.plane("stress-control-far"));
        if let Some((near, far)) = control {
            page.line(
                [self.axis.at(near), thickest - 3.4],
                [self.axis.at(far), thickest - 3.4],
                0.7,
                "",
            );
        }
    }

    /// Names of the layers in the column, the outermost uppermost, each with a leader to its layer at the broken end.
    fn name_layers(&self, page: &mut Page, axis_y: f64) {
        let right = self.axis.right() + BEYOND;
        let n = self.rings.len();
        for (at, ring) in self.rings.iter().rev().enumerate() {
            let y = axis_y - 3.6 * (n - at) as f64 + 1.4;
            let middle = axis_y - self.across(0.5 * (ring.radii[0] + ring.radii[1]));
            let x = right - 2.0;
            page.line([x, middle], [COLUMN - 3.0, y - 0.9], 0.15, "");
            page.line([COLUMN - 3.0, y - 0.9], [COLUMN - 0.8, y - 0.9], 0.15, "");
            let most = ((WIDTH - COLUMN - 0.5) / width_of("m", LAYER)).floor() as usize;
            page.text([COLUMN, y], LAYER, false, &shortened(ring.words, most));
        }
    }

    /// Dimension rows below the axis; the bottom of the last.
    fn dimensions(&self, page: &mut Page, plan: &Plan, axis_y: f64) -> f64 {
        let mut cuts: Vec<&CutDoc> = self.leg.cuts.iter().collect();
        let key = |cut: &CutDoc| cut.mark_at_mm.unwrap_or(f64::INFINITY);
        cuts.sort_by(|a, b| key(a).total_cmp(&key(b)));
        let mut top = axis_y + 3.5;
        let mut datum_bottom = axis_y;
        for cut in cuts {
            let texts = texts(cut, plan);
            let first = texts.first().map_or(SMALL, |t| t.1);
            let row = top + first;
            if let Some(at) = cut.mark_at_mm {
                let x = self.axis.at(at);
                let y = row - 0.4 * first;
                page.dimension_line([x, axis_y], [x, y + 1.0], 0.15, "");
                page.dimension_line([LEFT, y], [x, y], 0.2, "");
                page.dimension_line([x, y], [COLUMN - 1.0, y], 0.1, "0.4 0.8");
                page.arrow([x, y], 1.0);
                page.arrow([LEFT, y], -1.0);
                self.window(page, cut, axis_y);
                datum_bottom = y + 1.0;
            }
            let mut y = row;
            for (at, (text, size, is_bold)) in texts.iter().enumerate() {
                if at > 0 {
                    y += 1.3 * size;
                }
                page.text([COLUMN, y], *size, *is_bold, text);
            }
            top = y + 1.6;
        }
        page.dimension_line([LEFT, axis_y], [LEFT, datum_bottom], 0.3, "");
        top
    }

    /// The window of a cut, below the axis, where the dimension begins.
    fn window(&self, page: &mut Page, cut: &CutDoc, axis_y: f64) {
        if let Some([least, greatest]) = cut.printed_window.as_ref().and_then(|w| w.at_mm) {
            let rect = [
                self.axis.at(least),
                axis_y + 0.4,
                self.axis.at(greatest),
                axis_y + 2.2,
            ];
            page.rect(rect, "url(#window)", "");
        }
    }

    fn legend(&self, plan: &Plan) -> Vec<String> {
        let mut said = format!(
            "Scale 1 : {} along and across{}. Left edge of the numbers: square-cut conductor end, before pressing. Hatched under the axis: where a cut or mark may lie. ",
            self.axis.scale,
            if self.axis.breaks().is_empty() {
                ""
            } else {
                ", but where it is broken: there it is not to scale"
            }
        );
        if self.plane("body-end").is_some() {
            said.push_str("Dashed: body, its outside is not known. ");
        }
        if self.plane("electrode-end").is_some() {
            said.push_str("Thick line in it: electrode; shorter one: stress control. ");
        }
        let missing: Vec<&str> = LAYERS
            .iter()
            .filter(|layer| self.rings.iter().all(|r| r.layer != **layer))
            .copied()
            .collect();
        if !missing.is_empty() {
            said.push_str(&format!(
                "Not known and not drawn: {}. ",
                missing.join(", ")
            ));
        }
        said.push_str(&format!(
            "{}, job {}, {}. The parts' own instructions prevail.",
            plan.program,
            shortened(&plan.job.id, 40),
            plan.job.date
        ));
        let letters = ((WIDTH - 4.0) / width_of("m", SMALL)).floor() as usize;
        wrapped(&said, letters, 6)
    }
}

/// Layers of a cable, from the inside out.
const LAYERS: [&str; 6] = [
    "conductor",
    "conductor-screen",
    "insulation",
    "insulation-screen",
    "metallic-shield",
    "jacket",
];

/// Where a cut is drawn: its mark, else its plan, else the first rung of its ladder.
fn place(cut: &CutDoc) -> Option<f64> {
    cut.mark_at_mm
        .or(cut.nominal_mm)
        .or_else(|| cut.growth_ladder.first().map(|rung| rung.nominal_mm))
}

fn rings(leg: &LegDoc) -> Vec<Ring<'_>> {
    let end_of = |layer: &str| match layer {
        "conductor" => None,
        "conductor-screen" | "insulation" => Some("insulation-end"),
        "insulation-screen" => Some("insulation-screen-edge"),
        "metallic-shield" => Some("metallic-shield-edge"),
        _ => Some("jacket-edge"),
    };
    let mut rings: Vec<Ring<'_>> = Vec::new();
    for layer in &leg.layers {
        let inner = rings.last().map_or(0.0, |ring| ring.radii[1]);
        let outer = 0.5 * layer.diameter_mm;
        let cut = end_of(&layer.layer).and_then(|plane| leg.cuts.iter().find(|c| c.plane == plane));
        let from = match (end_of(&layer.layer), cut.and_then(place)) {
            (None, _) => 0.0,
            (Some(_), Some(place)) => place,
            // Nobody says where it ends: it is drawn from the edge of the layer under it, in dashes.
            (Some(_), None) => rings.last().map_or(0.0, |ring| ring.from),
        };
        rings.push(Ring {
            words: &layer.words,
            layer: &layer.layer,
            from,
            radii: [inner.min(outer), outer],
            is_set: end_of(&layer.layer).is_none() || cut.is_some_and(|c| c.mark_at_mm.is_some()),
        });
    }
    rings
}

/// What a dimension row says, line by line: text, size, whether bold.
fn texts(cut: &CutDoc, plan: &Plan) -> Vec<(String, f64, bool)> {
    let room = WIDTH - COLUMN - 2.0;
    let letters = |size: f64| (room / width_of("m", size)).floor() as usize;
    let inch = cut.inch.as_ref().filter(|_| plan.job.words != "iec");
    let mut texts = Vec::new();
    match (inch, &cut.mark_mm) {
        (Some(inch), Some(mm)) => {
            texts.push((format!("{inch} in  {mm} mm"), NUMBER, true));
        }
        (_, Some(mm)) => texts.push((format!("{mm} mm"), NUMBER, true)),
        _ if cut.growth_ladder.is_empty() => texts.push(("not set".to_owned(), NAME, true)),
        _ => texts.push(("see the growth ladder".to_owned(), NAME, true)),
    }
    let act = if cut.kind == "cut" { "CUT" } else { "MARK" };
    for line in wrapped(&format!("{act} {}", cut.words), letters(SMALL), 3) {
        texts.push((line, SMALL, true));
    }
    if let Some(window) = &cut.printed_window {
        let text = window.text();
        for (at, part) in text.split(", ").enumerate() {
            let part = if at == 0 {
                format!("may lie {part}")
            } else {
                part.to_owned()
            };
            texts.push((shortened(&part, letters(SMALL)), SMALL, false));
        }
    }
    texts
}
