//! Strip: the cuts and marks of one end at full size, to be cut out and laid along the cable.
//!
//! ```text
//!    0      8   14    18                          48    54     62 mm
//!    |inches|win|lead |texts                      |bars |millim|
//!  0 ================ ZERO: square-cut conductor end ===========
//!    |      |   |     | A1, job, cautions         | |   |      |
//!    |      |   |     |                           | |   |      |
//!    ========///======+ CUT jacket edge           | |   ========   a mark
//! ```
//!
//! If a page is too short for the leg, further pieces continue where the one before ends:
//!
//! ```text
//!    piece 1 |        join a      join b   |        both lines stand on both pieces,
//!            |__________|___________|______|        1 in apart: piece 2 is laid with its
//!              |______|___________|________...      lines on those of piece 1, and taped
//!              piece 2
//! ```
//!
//! Invariants: every mark, tick and bar stands at its place in millimetres of the SVG; texts move, marks never do; texts do not lie on each other.
//!
//! Not here: the place of a cut (`joint::cutback`), and the sheet it is printed on (`paper`).

use crate::canvas::{Across, Anchor, BLACK, Bounds, Canvas, Element, Look, Page, Trail, Words};
use crate::label::{shortened, wrapped};
use jointwright_joint::cable::Words as Practice;
use jointwright_joint::plan::{CutDoc, LegDoc, Plan};
use jointwright_wording::Tongue;
use jointwright_wording::label::{CutLabel, SheetLabel, StripLabel};

/// Room around the strip, so that its edges are seen, mm.
const RIM: f64 = 1.5;
const WIDTH: f64 = 60.0;
/// From left to right: the window's bar, the leader, the texts, the bars, and the left end of the millimetre scale, mm.
const WINDOW: [f64; 2] = [8.5, 13.5];
const LEADER: [f64; 2] = [14.0, 17.5];
pub(crate) const TEXT: [f64; 2] = [18.0, 48.0];
const BARS: [f64; 2] = [49.6, 51.8];
const MM_LEFT: f64 = 53.0;
/// Columns of the numbers of inches and of millimetres, from left to right, mm.
pub(crate) const FIGURES: [[f64; 2]; 2] = [[5.2, 9.0], [MM_LEFT, 57.4]];
/// Calibration bars: lengthwise in millimetres and in inches, and across, mm.
const BAR_MM: f64 = 100.0;
const BAR_IN: f64 = 4.0 * 25.4;
const BAR_ACROSS: f64 = 30.0;
/// Beginning of the lengthwise bars, mm.
const BAR_TOP: f64 = 5.0;
/// Height below which no strip is made: the bars must be on it, mm.
const HEIGHT_LEAST: f64 = BAR_TOP + BAR_IN + 5.0;
/// Room between the last mark and the end of the strip, mm.
const TAIL: f64 = 6.0;
/// Distance between the two lines at which pieces are joined, mm: the crew measures it.
const JOIN: f64 = 25.4;
/// Paper beyond the lines of a join, mm.
const JOIN_EDGE: f64 = 5.0;
/// Greatest number of pieces of one strip: a mark farther off is set with a tape.
const PIECES_MOST: usize = 12;
/// Room between two blocks of text, mm.
pub(crate) const BETWEEN: f64 = 1.4;
/// Ratio of the height of a line to the size of its letters.
const LINE: f64 = 1.22;
/// Ratio of the usual width of a letter to its size, bold and not.
const LETTER: [f64; 2] = [0.60, 0.54];
/// A space at which no line is broken: a broken number can be read as another number.
const WITHIN: char = '\u{1}';

/// A marking strip.
#[derive(Clone, Debug, PartialEq)]
pub struct Strip {
    /// Picture; one unit is one millimetre.
    pub svg: String,
    /// Width, mm.
    pub width_mm: f64,
    /// Height, mm.
    pub height_mm: f64,
    /// Marks that stand on none of its pieces, with the reason; a sentence each.
    pub left_out: Vec<String>,
    /// Number of this piece, from 1, and the number of pieces.
    pub piece: [usize; 2],
    /// Stretch of the cable that it covers, mm from the conductor end.
    pub covers_mm: [f64; 2],
}

/// A stretch of a leg on one paper.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Piece {
    /// Number, from 1, and the number of pieces.
    number: [usize; 2],
    /// Beginning, mm from the conductor end.
    from: f64,
    to: f64,
    /// First of the two lines at the join with the piece before, and with the next.
    joins: [Option<f64>; 2],
}

/// Stretches of at most `most` mm that overlap at their joins and reach to `last`.
fn pieces(most: f64, last: f64, is_metric: bool) -> Vec<Piece> {
    // The lines of a join lie on numbered lines of the scale in use.
    let step = if is_metric { 10.0 } else { 25.4 };
    let mut pieces: Vec<Piece> = Vec::new();
    let (mut from, mut before) = (0.0, None);
    loop {
        let reaches = from + most >= last + TAIL;
        let next = (from + most - JOIN - JOIN_EDGE) / step;
        let next = (next + 1.0e-9).floor() * step;
        let is_last = reaches || next <= before.unwrap_or(from) || pieces.len() + 1 == PIECES_MOST;
        pieces.push(Piece {
            number: [pieces.len() + 1, 0],
            from,
            to: if is_last {
                last.min(from + most - TAIL) + TAIL
            } else {
                next + JOIN + JOIN_EDGE
            },
            joins: [before, (!is_last).then_some(next)],
        });
        if is_last {
            break;
        }
        before = Some(next);
        from = next - JOIN_EDGE;
    }
    let n = pieces.len();
    for piece in &mut pieces {
        piece.number[1] = n;
    }
    pieces
}

/// One line of text.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Line {
    pub(crate) text: String,
    size: f64,
    is_bold: bool,
}

impl Line {
    pub(crate) fn bold(size: f64, text: &str) -> Line {
        Line {
            text: text.to_owned(),
            size,
            is_bold: true,
        }
    }

    /// The line at a place of the strip.
    fn words(&self, at: [f64; 2]) -> Words {
        let words = Words::new(at, self.size, &self.text).inked(BLACK);
        if self.is_bold { words.bold() } else { words }
    }

    /// Lines of a text that fit the column of texts.
    pub(crate) fn wrapped(size: f64, is_bold: bool, text: &str) -> Vec<Line> {
        let letter = LETTER[usize::from(!is_bold)];
        let letters = ((TEXT[1] - TEXT[0]) / (letter * size)).floor() as usize;
        wrapped(text, letters, 12)
            .into_iter()
            .map(|text| Line {
                text,
                size,
                is_bold,
            })
            .collect()
    }
}

/// Texts that stand together, and their mark.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Block {
    /// Place of the mark, mm from the conductor end; `None` for head and tail.
    pub(crate) mark: Option<f64>,
    pub(crate) lines: Vec<Line>,
    /// Top, mm.
    pub(crate) top: f64,
}

impl Block {
    fn height(&self) -> f64 {
        self.lines.iter().map(|line| line.size * LINE).sum()
    }

    pub(crate) fn bottom(&self) -> f64 {
        self.top + self.height()
    }
}

/// Pieces of the marking strip of one end, each no longer than `length_most_mm`, to the farthest cut or mark; empty if work stops, or if nothing of the end can be marked in that length.
///
/// The zero edge is the square-cut conductor end; millimetres of the pictures are millimetres of the cable.
pub fn strips(leg: &LegDoc, phase: u8, plan: &Plan, length_most_mm: f64) -> Vec<Strip> {
    if plan.must_stop() {
        return Vec::new();
    }
    let most = length_most_mm - 2.0 * RIM;
    let placed = leg
        .cuts
        .iter()
        .filter_map(|cut| Some((cut.mark_at_mm?, cut)));
    let mut placed: Vec<(f64, &CutDoc)> = placed.filter(|(at, _)| *at >= 0.0).collect();
    placed.sort_by(|a, b| a.0.total_cmp(&b.0));
    let Some((last, _)) = placed.last().copied() else {
        return Vec::new();
    };
    let all = pieces(most, last, plan.job.words == Practice::Iec);
    let covered = all.last().map_or(0.0, |piece| piece.to);
    let left_out = left_out(leg, plan, covered);
    let drawn = all.iter().enumerate().map(|(index, piece)| {
        // Marks of the piece before are not repeated.
        let before = index.checked_sub(1).map(|index| all[index].to);
        let here = |at: f64| before.is_none_or(|to| at > to) && at <= piece.to;
        let marked: Vec<(f64, &CutDoc)> =
            placed.iter().copied().filter(|(at, _)| here(*at)).collect();
        strip(leg, phase, plan, piece, &marked, &left_out, most)
    });
    drawn.collect::<Option<Vec<Strip>>>().unwrap_or_default()
}

/// Marks that stand on no piece.
fn left_out(leg: &LegDoc, plan: &Plan, covered: f64) -> Vec<String> {
    let tongue = Tongue::of_plan(plan);
    let said = |cut: &CutDoc| {
        let at = tongue.label(&CutLabel::act_at(cut));
        let label = match cut.mark_at_mm {
            Some(at) if (0.0..=covered).contains(&at) => return None,
            Some(_) => StripLabel::BeyondStrips {
                at,
                number: number(cut, plan),
            },
            None if !cut.growth_ladder.is_empty() => StripLabel::WaitsForGrowth { at },
            None => StripLabel::NoPlace { at },
        };
        Some(tongue.label(&label))
    };
    leg.cuts.iter().filter_map(said).collect()
}

/// One piece; `None` if its texts do not fit.
fn strip(
    leg: &LegDoc,
    phase: u8,
    plan: &Plan,
    piece: &Piece,
    marked: &[(f64, &CutDoc)],
    left_out: &[String],
    most: f64,
) -> Option<Strip> {
    let said = if piece.number[0] == 1 { left_out } else { &[] };
    let mut blocks = blocks(leg, phase, plan, piece, marked);
    // Texts are arranged from the top of the piece down.
    for block in &mut blocks {
        block.top -= piece.from;
    }
    let mut blocks = arranged(blocks, floating(plan, said), most - BETWEEN)?;
    for block in &mut blocks {
        block.top += piece.from;
    }
    let last_text = blocks.iter().map(Block::bottom).fold(0.0, f64::max);
    let to = piece
        .to
        .max(last_text + BETWEEN)
        .max(piece.from + HEIGHT_LEAST);
    if to > piece.from + most + 1.0e-6 {
        return None;
    }
    let covers_mm = [piece.from, to];
    Some(Strip {
        svg: draw(plan, piece, marked, &blocks, covers_mm),
        width_mm: WIDTH + 2.0 * RIM,
        height_mm: to - piece.from + 2.0 * RIM,
        left_out: left_out.to_vec(),
        piece: piece.number,
        covers_mm,
    })
}

/// Number of a cut in the plan's own texts.
fn number(cut: &CutDoc, plan: &Plan) -> String {
    let inch = cut
        .inch
        .as_ref()
        .filter(|_| plan.job.words != Practice::Iec);
    match (inch, &cut.mark_mm) {
        (Some(inch), Some(mm)) => format!("{inch} in ({mm} mm)"),
        (None, Some(mm)) => format!("{mm} mm"),
        _ => Tongue::of_plan(plan).label(&CutLabel::NotSet),
    }
}

/// Text whose numbers are not broken over two lines.
pub(crate) fn unbroken(text: &str) -> String {
    let letters: Vec<char> = text.chars().collect();
    let beside_digit = |at: usize| {
        let digit = |at: Option<usize>| {
            at.and_then(|at| letters.get(at))
                .is_some_and(char::is_ascii_digit)
        };
        digit(at.checked_sub(1))
            && letters
                .get(at + 1)
                .is_some_and(|c| c.is_ascii_digit() || matches!(c, 'i' | 'm'))
    };
    letters
        .iter()
        .enumerate()
        .map(|(at, letter)| {
            if *letter == ' ' && beside_digit(at) {
                WITHIN
            } else {
                *letter
            }
        })
        .collect()
}

fn blocks(
    leg: &LegDoc,
    phase: u8,
    plan: &Plan,
    piece: &Piece,
    marked: &[(f64, &CutDoc)],
) -> Vec<Block> {
    let tongue = Tongue::of_plan(plan);
    let mut blocks = joins(piece, tongue);
    for (at, cut) in marked {
        let mut lines = Line::wrapped(2.7, true, &tongue.label(&CutLabel::act_at(cut)));
        let inch = cut
            .inch
            .as_ref()
            .filter(|_| plan.job.words != Practice::Iec);
        match (inch, &cut.mark_mm) {
            (Some(inch), Some(mm)) => {
                lines.push(Line::bold(4.4, &format!("{inch} in")));
                lines.push(Line::bold(3.2, &format!("{mm} mm")));
            }
            (_, Some(mm)) => lines.push(Line::bold(4.4, &format!("{mm} mm"))),
            _ => {}
        }
        match &cut.printed_window {
            Some(window) => {
                let mut window = tongue.window_lines(window);
                if let Some(first) = window.first_mut() {
                    let window = first.clone();
                    *first = tongue.label(&CutLabel::MayLieIn { window });
                }
                for line in window {
                    lines.extend(Line::wrapped(2.5, false, &unbroken(&line)));
                }
            }
            None => lines.extend(Line::wrapped(
                2.5,
                false,
                &tongue.label(&CutLabel::NoWindow),
            )),
        }
        if let Some(keeps) = &cut.keeps {
            lines.extend(Line::wrapped(2.3, true, &unbroken(keeps)));
        }
        blocks.push(Block {
            mark: Some(*at),
            lines,
            top: at - 3.2,
        });
    }
    blocks.sort_by(|a, b| a.top.total_cmp(&b.top));
    blocks.insert(0, head(leg, phase, plan, piece));
    blocks
}

/// Texts at the lines of a join.
fn joins(piece: &Piece, tongue: Tongue) -> Vec<Block> {
    let [number, n] = piece.number;
    let names = [
        (piece.joins[0], number.wrapping_sub(1)),
        (piece.joins[1], number),
    ];
    let mut blocks = Vec::new();
    for (at, first) in names {
        let Some(at) = at else { continue };
        let other = if first == number { first + 1 } else { first };
        let join = first;
        let a = tongue.label(&StripLabel::JoinA { join, other, n });
        let b = tongue.label(&StripLabel::JoinB { join });
        for (at, text) in [(at, a), (at + JOIN, b)] {
            blocks.push(Block {
                mark: Some(at),
                lines: Line::wrapped(2.2, true, &unbroken(&text)),
                top: at - 1.6,
            });
        }
    }
    blocks
}

/// Texts that belong to no mark and may stand wherever there is room.
fn floating(plan: &Plan, left_out: &[String]) -> Vec<Block> {
    let tongue = Tongue::of_plan(plan);
    let where_to = tongue.label(&StripLabel::OnlyOnOuterLayers);
    let block = |lines| Block {
        mark: None,
        lines,
        top: 0.0,
    };
    let mut blocks = vec![block(Line::wrapped(2.3, true, &where_to))];
    if !left_out.is_empty() {
        let mut lines = Line::wrapped(2.4, true, &tongue.label(&StripLabel::NotOnThisStrip));
        for said in left_out {
            lines.extend(Line::wrapped(2.3, false, &unbroken(said)));
        }
        blocks.push(block(lines));
    }
    blocks
}

fn head(leg: &LegDoc, phase: u8, plan: &Plan, piece: &Piece) -> Block {
    let [number, n] = piece.number;
    let tongue = Tongue::of_plan(plan);
    let of = |label: StripLabel| tongue.label(&label);
    let first = leg.cuts.first();
    let begins = match number {
        1 => StripLabel::Zero {
            datum: first.map_or_else(|| of(StripLabel::SquareCutEnd), |cut| cut.from.clone()),
        },
        piece => StripLabel::EdgeIsNotZero {
            piece,
            n,
            before: piece - 1,
        },
    };
    let begins = of(begins);
    let mut lines = Line::wrapped(2.5, true, &begins);
    if number == 1 && n > 1 {
        lines.extend(Line::wrapped(2.5, true, &of(StripLabel::FirstPiece { n })));
    }
    let name = format!("{}{phase}", leg.mark);
    let n_letters = name.chars().count().max(1) as f64;
    let size = (0.9 * (TEXT[1] - TEXT[0]) / (LETTER[0] * n_letters)).min(10.0);
    lines.push(Line::bold(size, &name));
    lines.push(Line::bold(3.3, &tongue.plan_mark(&plan.plan_mark)));
    let issue = shortened(&plan.plan_mark.issue_words, 60);
    lines.extend(Line::wrapped(2.4, true, &issue));
    let made = shortened(&plan.plan_mark.made, 48);
    let made = tongue.label(&SheetLabel::Made { when: made });
    lines.extend(Line::wrapped(2.2, false, &made));
    let job = format!("{}, {}, {}", plan.job.id, plan.job.date, plan.program);
    lines.extend(Line::wrapped(2.2, false, &shortened(&job, 90)));
    // This line is the place of the bar across.
    lines.push(Line::bold(3.4, ""));
    let bars = of(StripLabel::MeasureBars);
    lines.extend(Line::wrapped(2.2, true, &unbroken(&bars)));
    Block {
        mark: None,
        lines,
        top: piece.from + 1.2,
    }
}

/// Blocks with the floating ones placed where there is room, else at the end; `None` if they do not fit.
pub(crate) fn arranged(marks: Vec<Block>, floating: Vec<Block>, most: f64) -> Option<Vec<Block>> {
    let mut blocks = placed(marks, most)?;
    for mut block in floating {
        let room = block.height() + 2.0 * BETWEEN;
        let gap = (0..blocks.len()).find(|at| {
            let next = blocks.get(at + 1).map_or(most, |b| b.top);
            next - blocks[*at].bottom() >= room
        });
        let at = gap.unwrap_or(blocks.len() - 1);
        block.top = blocks[at].bottom() + BETWEEN;
        blocks.insert(at + 1, block);
        if gap.is_none() {
            blocks = placed(blocks, most)?;
        }
    }
    Some(blocks)
}

/// Blocks moved so that none lies on another and all lie above `most`, in the order of their marks; `None` if they do not fit.
fn placed(mut blocks: Vec<Block>, most: f64) -> Option<Vec<Block>> {
    let mut free_from = 0.0;
    for block in &mut blocks {
        block.top = block.top.max(free_from);
        free_from = block.bottom() + BETWEEN;
    }
    // A block beyond the end moves up, and pushes the blocks above it.
    let mut free_to = most;
    for block in blocks.iter_mut().rev() {
        block.top = block.top.min(free_to - block.height());
        free_to = block.top - BETWEEN;
    }
    (free_to >= -BETWEEN).then_some(blocks)
}

fn draw(
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
