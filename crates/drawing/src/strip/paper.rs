//! Paper: one piece as a picture: scales, bars, marks, joins and texts.

use super::block::{Block, LINE, Line};
use super::layout::{
    BAR_ACROSS, BAR_IN, BAR_MM, BAR_TOP, BARS, FIGURES, JOIN, LEADER, MM_LEFT, RIM, TEXT, WIDTH,
    WINDOW,
};
use super::piece::Piece;
use crate::canvas::{Across, Anchor, BLACK, Bounds, Canvas, Element, Look, Page, Trail};
use jointwright_joint::plan::{CutDoc, Plan};
use jointwright_wording::Tongue;
use jointwright_wording::label::StripLabel;

pub(super) fn draw(
    plan: &Plan,
    piece: &Piece,
    marked: &[(f64, &CutDoc)],
    blocks: &[Block],
    covers: [f64; 2],
) -> String {
    let mut page = Paper {
        canvas: Canvas::new(4),
    };
    page.edges(covers, piece.number[0] == 1);
    if let Some(invented) = &plan.invented {
        page.across(invented, covers);
    }
    let tongue = Tongue::of_plan(plan);
    page.scales(covers, &tongue.label(&StripLabel::Inches));
    page.bars(covers[0], tongue);
    for (join, first) in [
        (piece.joins[0], piece.number[0] - 1),
        (piece.joins[1], piece.number[0]),
    ] {
        for (at, line) in join
            .into_iter()
            .flat_map(|at| [(at, 'a'), (at + JOIN, 'b')])
        {
            page.join(at, &format!("{first}{line}"));
        }
    }
    for (at, cut) in marked {
        page.mark(*at, cut);
    }
    for block in blocks {
        page.block(block);
    }
    let [from, to] = covers;
    let view = Bounds::new([0.0, from], [WIDTH, to - from]).grown(RIM);
    page.canvas.svg(Page::printed(view, WIDTH + 2.0 * RIM))
}

/// One piece as it grows.
struct Paper {
    canvas: Canvas,
}

impl Paper {
    /// Draws the edges to cut along; the zero edge is heavy.
    fn edges(&mut self, [from, to]: [f64; 2], is_first: bool) {
        self.line([0.0, from], [0.0, to], 0.2, "edge");
        self.line([WIDTH, from], [WIDTH, to], 0.2, "edge");
        self.line([0.0, to], [WIDTH, to], 0.2, "edge");
        if is_first {
            self.line([0.0, 0.0], [WIDTH, 0.0], 0.7, "zero");
        } else {
            self.line([0.0, from], [WIDTH, from], 0.2, "edge");
        }
    }

    /// Draws a line at which two pieces are joined: at both edges, with a ring, so that it is not mistaken for a mark.
    fn join(&mut self, at: f64, name: &str) {
        // The numbers of both scales stay free: a line of a join lies on a numbered line of one of them.
        let [inch, mm] = FIGURES;
        let look = Look::line(BLACK, 0.3);
        for [from, to] in [[0.0, inch[0]], [inch[1], LEADER[0]], [mm[1], WIDTH]] {
            let line = Element::line([from, at], [to, at], &look.clone().dashed("1.6 0.6"));
            self.canvas.shape(line.with("data-join", name));
        }
        for x in [LEADER[0] - 2.6, WIDTH - 1.4] {
            self.canvas
                .shape(Element::circle([x, at], 1.1).drawn(&look));
        }
    }

    fn line(&mut self, from: [f64; 2], to: [f64; 2], width: f64, what: &str) {
        let line = Element::line(from, to, &Look::line(BLACK, width));
        self.canvas.shape(line.with("data-what", what));
    }

    fn text(&mut self, at: [f64; 2], line: &Line) {
        self.canvas.text(line.words(at));
    }

    /// Writes the demonstration mark along the strip, in outline.
    fn across(&mut self, invented: &str, [from, to]: [f64; 2]) {
        let lines = vec![invented.to_owned()];
        let size = ((to - from) / (0.64 * Across::longest(&lines))).min(11.0);
        let across = Across {
            lines,
            at: [0.5 * (TEXT[0] + TEXT[1]) + 0.14 * size, to - 1.0],
            anchor: Anchor::Start,
            turn_deg: -90.0,
            size,
            pitch: 0.0,
            looks: vec![Look::line(BLACK, 0.12)],
        };
        self.canvas.across(across.elements());
    }

    /// Draws inches in sixteenths on the left edge, millimetres on the right.
    fn scales(&mut self, [from, to]: [f64; 2], inches: &str) {
        let sixteenth = 25.4 / 16.0;
        let mut n = (from / sixteenth).floor() as u32 + 1;
        while f64::from(n) * sixteenth < to {
            let y = f64::from(n) * sixteenth;
            let length = match n {
                n if n % 16 == 0 => 5.0,
                n if n % 8 == 0 => 3.6,
                n if n % 4 == 0 => 2.8,
                n if n % 2 == 0 => 2.0,
                _ => 1.3,
            };
            self.line([0.0, y], [length, y], 0.12, "inch");
            if n.is_multiple_of(16) {
                let words = Line::bold(2.6, &format!("{}", n / 16));
                self.text([5.3, y + 0.9], &words);
            }
            n += 1;
        }
        for n in from.floor() as u32 + 1..to.ceil() as u32 {
            let y = f64::from(n);
            let length = match n {
                n if n % 10 == 0 => 4.0,
                n if n % 5 == 0 => 2.8,
                _ => 1.6,
            };
            self.line([WIDTH - length, y], [WIDTH, y], 0.12, "mm");
            if n % 10 == 0 {
                let words = Line::bold(2.0, &format!("{n}"));
                self.text([MM_LEFT + 0.1, y + 0.7], &words);
            }
        }
        let y = from + 4.2;
        self.text([0.8, y], &Line::bold(2.2, inches));
        self.text([MM_LEFT - 0.6, y], &Line::bold(2.2, "mm"));
    }

    /// Draws the bars to be measured before the strip is used.
    fn bars(&mut self, from: f64, tongue: Tongue) {
        let top = from + BAR_TOP;
        for (x, length, said, down) in [
            (BARS[0], BAR_MM, StripLabel::BarMillimetres, 40.0),
            (BARS[1], BAR_IN, StripLabel::BarInches, 80.0),
        ] {
            self.line([x, top], [x, top + length], 0.25, "bar");
            for y in [top, top + length] {
                self.line([x - 0.7, y], [x + 0.7, y], 0.25, "bar-end");
            }
            let words = Line::bold(1.9, &tongue.label(&said)).words([x - 0.5, top + down]);
            self.canvas.text(words.upright());
        }
    }

    /// Draws a mark from edge to edge except across the texts, with its window beside the inches.
    fn mark(&mut self, at: f64, cut: &CutDoc) {
        let plane = cut.plane.name();
        if let Some([least, greatest]) = cut.printed_window.as_ref().and_then(|w| w.at_mm) {
            let size = [WINDOW[1] - WINDOW[0], (greatest - least).max(0.0)];
            let window = Element::rectangle(&Bounds::new([WINDOW[0], least], size));
            let window = window.drawn(&Look::line(BLACK, 0.2));
            self.canvas.shape(window.with("data-window", plane));
            // Hatched by hand: not every printer prints a pattern.
            let n = ((greatest - least) / 0.8).floor().max(0.0) as u32;
            for step in 0..n {
                let y = least + 0.8 * f64::from(step);
                self.line([WINDOW[0], y + 0.8], [WINDOW[1], y], 0.12, "hatch");
            }
        }
        for [from, to] in [[0.0, LEADER[0]], [MM_LEFT - 1.0, WIDTH]] {
            let line = Element::line([from, at], [to, at], &Look::line(BLACK, 0.45));
            self.canvas.shape(line.with("data-plane", plane));
        }
        // Arrows at both edges: their tips are on the mark.
        for (x, way) in [(0.0, 1.0), (WIDTH, -1.0)] {
            for side in [-1.0, 1.0] {
                let (down, aside) = (at + side * 1.4, x + way * 2.6);
                let arrow = Trail::through(&[[x, at], [x, down], [aside, at]]).close();
                let arrow = Element::trail(arrow, &Look::filled(BLACK));
                self.canvas.shape(arrow.with("data-what", "arrow"));
            }
        }
    }

    fn block(&mut self, block: &Block) {
        if let Some(at) = block.mark {
            let first = block.lines.first().map_or(0.0, |line| line.size * LINE);
            self.line(
                [LEADER[0], at],
                [LEADER[1], block.top + 0.6 * first],
                0.3,
                "leader",
            );
        }
        let mut y = block.top;
        for line in &block.lines {
            y += line.size * LINE;
            if line.text.is_empty() {
                let at = y - 0.5 * line.size;
                self.line([TEXT[0], at], [TEXT[0] + BAR_ACROSS, at], 0.25, "bar");
                for x in [TEXT[0], TEXT[0] + BAR_ACROSS] {
                    self.line([x, at - 0.7], [x, at + 0.7], 0.25, "bar-end");
                }
            } else {
                self.text([TEXT[0], y - 0.24 * line.size], line);
            }
        }
    }
}
