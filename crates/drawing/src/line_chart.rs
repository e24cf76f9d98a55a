//! Line chart: curves of numbers against one other number, with different dashes and a legend below.

use crate::canvas::{
    Anchor, Bounds, Canvas, Element, FRAME, GRID, INK, LETTER, Look, PAPER, Page, Trail, Words,
};
use crate::field_sheet::mark_across;
use crate::label::wrapped;
use crate::level::{multiples, round_up, to_step};

/// Sizes of the page, picture points.
const WIDTH: f64 = 1000.0;
const LEFT: f64 = 84.0;
const RIGHT: f64 = 24.0;
const HEIGHT: f64 = 400.0;
const SIZE: f64 = 14.0;
const TITLE: f64 = 19.0;
const BAR: f64 = 18.0;
const LINE: f64 = 1.4 * SIZE;
/// Length of a legend's sample of a line.
const SAMPLE: f64 = 64.0;
/// Approximate number of steps of an axis.
const N_STEPS: f64 = 9.0;
/// Room above and below the curves, as a share of their span.
const MARGIN: f64 = 0.06;
/// Dashes of the curves in their order; the first is a full line.
const DASHES: [&str; 6] = ["", "10 5", "2 4", "14 4 2 4", "5 3", "18 4 2 4 2 4"];

/// One curve.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct ChartCurve {
    /// Label in the legend.
    pub label: String,
    pub points: Vec<(f64, f64)>,
}

/// A line across the chart, with a word at it.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Rule {
    /// Vertical line, at an x.
    Upright(f64, String),
    /// Horizontal line, at a y.
    Level(f64, String),
}

/// Content of an axis.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Axis {
    pub label: String,
    /// Whether the axis is logarithmic; for positive numbers only.
    pub is_logarithmic: bool,
}

/// A chart.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Chart {
    pub title: String,
    /// Lines below the title.
    pub about: Vec<String>,
    pub x: Axis,
    pub y: Axis,
    pub curves: Vec<ChartCurve>,
    pub rules: Vec<Rule>,
    /// Text that must be read before anything else.
    pub banner: Option<String>,
    /// Lines below everything.
    pub below: Vec<String>,
}

/// An axis on the page: its least and greatest number, and their places.
struct Scale {
    numbers: [f64; 2],
    places: [f64; 2],
    is_logarithmic: bool,
}

impl Scale {
    fn new(axis: &Axis, numbers: impl Iterator<Item = f64>, places: [f64; 2]) -> Option<Scale> {
        let usable = |x: &f64| x.is_finite() && (!axis.is_logarithmic || *x > 0.0);
        let usable: Vec<f64> = numbers.filter(usable).collect();
        let least = usable.iter().copied().reduce(f64::min)?;
        let most = usable.iter().copied().reduce(f64::max)?;
        let numbers = if axis.is_logarithmic {
            [least / 1.15, most * 1.15]
        } else {
            let span = (most - least).max(1e-9 * most.abs()).max(1e-12);
            [least - MARGIN * span, most + MARGIN * span]
        };
        Some(Scale {
            numbers,
            places,
            is_logarithmic: axis.is_logarithmic,
        })
    }

    fn at(&self, number: f64) -> f64 {
        let [from, to] = self.numbers;
        let share = if self.is_logarithmic {
            (number / from).ln() / (to / from).ln()
        } else {
            (number - from) / (to - from)
        };
        self.places[0] + share * (self.places[1] - self.places[0])
    }

    fn holds(&self, number: f64) -> bool {
        (self.numbers[0]..=self.numbers[1]).contains(&number)
    }

    /// Numbers with a line, and their texts.
    fn steps(&self) -> Vec<(f64, String)> {
        let [from, to] = self.numbers;
        if !self.is_logarithmic {
            let step = round_up((to - from) / N_STEPS);
            let numbers = multiples([from, to], step);
            return numbers.into_iter().map(|x| (x, to_step(x, step))).collect();
        }
        let (first, last) = (from.log10().floor() as i32, to.log10().ceil() as i32);
        let decades = first..=last;
        let numbers = decades.flat_map(|decade| [1.0, 2.0, 5.0].map(|k| k * 10.0_f64.powi(decade)));
        numbers
            .filter(|x| self.holds(*x))
            .map(|x| (x, to_step(x, x.min(1.0))))
            .collect()
    }
}

/// The chart as SVG, 1000 picture points wide; `None` if no curve has two numbers.
pub(crate) fn line_chart(chart: &Chart) -> Option<String> {
    let mut canvas = Canvas::new(1);
    head(&mut canvas, chart);
    let top = canvas.y + 1.9 * LINE;
    let room = Bounds::new([LEFT, top], [WIDTH - LEFT - RIGHT, HEIGHT]);
    let points = || chart.curves.iter().flat_map(|curve| &curve.points);
    let levels = chart.rules.iter().filter_map(|rule| match rule {
        Rule::Level(y, _) => Some(*y),
        Rule::Upright(..) => None,
    });
    let x = Scale::new(&chart.x, points().map(|p| p.0), [room.left, room.right])?;
    let ys = points().map(|p| p.1).chain(levels);
    let y = Scale::new(&chart.y, ys, [room.bottom, room.top])?;
    if !chart.curves.iter().any(|curve| curve.points.len() > 1) {
        return None;
    }
    grid(&mut canvas, chart, &room, [&x, &y]);
    for (n, curve) in chart.curves.iter().enumerate() {
        let places = curve
            .points
            .iter()
            .filter(|p| p.0.is_finite() && p.1.is_finite());
        let places: Vec<[f64; 2]> = places.map(|p| [x.at(p.0), y.at(p.1)]).collect();
        curve_line(&mut canvas, Trail::through(&places), n);
        canvas
            .lines
            .extend(places.windows(2).map(|pair| [pair[0], pair[1]]));
    }
    rules(&mut canvas, chart, &room, [&x, &y]);
    if let Some(banner) = &chart.banner {
        mark_across(&mut canvas, &room, banner);
    }
    canvas.y = room.bottom + 2.6 * LINE;
    legend(&mut canvas, chart);
    for line in &chart.below {
        lines(&mut canvas, line);
    }
    canvas.y += 0.5 * LINE;
    Some(canvas.svg(Page::points(WIDTH, canvas.y.ceil())))
}

/// Draws a piece of a curve in the dashes of its number.
fn curve_line(canvas: &mut Canvas, trail: Trail, n: usize) {
    let look = Look::line(INK, 1.9)
        .round()
        .dashed(DASHES[n % DASHES.len()]);
    if !trail.is_empty() {
        canvas.shape_above(Element::trail(trail, &look).tagged("data-part", "curve"));
    }
}

fn head(canvas: &mut Canvas, chart: &Chart) {
    if let Some(banner) = &chart.banner {
        let height = 1.8 * BAR;
        let bar = Bounds::new([0.0; 2], [WIDTH, height]);
        canvas.shape(Element::rectangle(&bar).drawn(&Look::filled(INK)));
        let words = Words::new([0.5 * WIDTH, 1.25 * BAR], BAR, banner)
            .anchored(Anchor::Middle)
            .bold();
        canvas.text(words.inked(PAPER));
        canvas.y = height;
    }
    canvas.y += 1.5 * TITLE;
    canvas.text(Words::new([LEFT, canvas.y], TITLE, &chart.title).bold());
    canvas.y += 0.4 * TITLE;
    for line in &chart.about {
        lines(canvas, line);
    }
}

fn lines(canvas: &mut Canvas, text: &str) {
    let n_letters = ((WIDTH - LEFT - RIGHT) / (LETTER * SIZE)) as usize;
    for line in wrapped(text, n_letters, 6) {
        canvas.y += LINE;
        canvas.text(Words::new([LEFT, canvas.y], SIZE, &line));
    }
}

/// Draws lines, numbers and names of both axes.
fn grid(canvas: &mut Canvas, chart: &Chart, room: &Bounds, [x, y]: [&Scale; 2]) {
    let mut lines = Trail::default();
    for (number, text) in x.steps() {
        let at = x.at(number);
        lines.join(Trail::from([at, room.top]).upright_to(room.bottom));
        let words = Words::new([at, room.bottom + 1.2 * SIZE], SIZE, &text);
        canvas.text(words.anchored(Anchor::Middle));
    }
    for (number, text) in y.steps() {
        let at = y.at(number);
        lines.join(Trail::from([room.left, at]).level_to(room.right));
        let words = Words::new([room.left - 8.0, at + 0.35 * SIZE], SIZE, &text);
        canvas.text(words.anchored(Anchor::End));
    }
    canvas.trail(lines, &Look::line(GRID, 0.7));
    canvas.shape(Element::rectangle(room).drawn(&Look::line(FRAME, 1.0)));
    let below = Words::new(
        [0.5 * (room.left + room.right), room.bottom + 2.6 * SIZE],
        SIZE,
        &chart.x.label,
    );
    canvas.text(below.anchored(Anchor::Middle));
    canvas.text(Words::new(
        [room.left, room.top - 0.5 * SIZE],
        SIZE,
        &chart.y.label,
    ));
}

/// Draws lines across the chart, each with its words where there is room.
fn rules(canvas: &mut Canvas, chart: &Chart, room: &Bounds, [x, y]: [&Scale; 2]) {
    let inner = room.grown(-2.0);
    for rule in &chart.rules {
        let (line, words, places) = match rule {
            Rule::Upright(at, words) if x.holds(*at) => {
                let at = x.at(*at);
                let ups = (1..=8).map(|n| [at + 5.0, room.top + 1.3 * SIZE * f64::from(n)]);
                (
                    Trail::from([at, room.top]).upright_to(room.bottom),
                    words,
                    ups.collect::<Vec<_>>(),
                )
            }
            Rule::Level(at, words) if y.holds(*at) => {
                let at = y.at(*at);
                let asides = (0..8).map(|n| [room.left + 8.0 + 90.0 * f64::from(n), at - 5.0]);
                (
                    Trail::from([room.left, at]).level_to(room.right),
                    words,
                    asides.collect(),
                )
            }
            _ => continue,
        };
        canvas.trail(line, &Look::line(INK, 1.0));
        let written = places
            .into_iter()
            .any(|at| canvas.text_if_free(Words::new(at, SIZE, words).on_picture(), &inner));
        if !written {
            // Words without room beside their line stand at the lower left.
            canvas.text(Words::new([room.left + 8.0, room.bottom - 6.0], SIZE, words).on_picture());
        }
    }
}

fn legend(canvas: &mut Canvas, chart: &Chart) {
    for (n, curve) in chart.curves.iter().enumerate() {
        canvas.y += LINE;
        let y = canvas.y - 0.35 * SIZE;
        curve_line(canvas, Trail::from([LEFT, y]).level_to(LEFT + SAMPLE), n);
        let words = Words::new([LEFT + SAMPLE + 10.0, canvas.y], SIZE, &curve.label);
        canvas.text(words);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn chart(points: Vec<(f64, f64)>) -> Chart {
        let axis = |label: &str, is_logarithmic| Axis {
            label: label.to_owned(),
            is_logarithmic,
        };
        Chart {
            title: "a < b".to_owned(),
            about: Vec::new(),
            x: axis("hours", true),
            y: axis("A", false),
            curves: vec![ChartCurve {
                label: "leg A".to_owned(),
                points,
            }],
            rules: vec![Rule::Level(15.0, "limit".to_owned())],
            banner: Some("INVENTED".to_owned()),
            below: Vec::new(),
        }
    }

    /// Places of the first curve.
    fn places(svg: &str) -> Vec<[f64; 2]> {
        let begin = svg.find("data-part=\"curve\"").expect("a curve");
        let d = svg[begin..]
            .split(" d=\"")
            .nth(1)
            .and_then(|d| d.split('"').next());
        let numbers = d
            .expect("a path")
            .split(['M', 'L'])
            .filter(|part| !part.is_empty());
        numbers
            .map(|part| {
                let mut both = part.split(' ').map(|n| n.parse::<f64>().expect("a number"));
                [both.next().expect("x"), both.next().expect("y")]
            })
            .collect()
    }

    #[test]
    fn equal_ratios_have_equal_lengths_and_more_lies_higher() {
        let svg =
            line_chart(&chart(vec![(0.1, 30.0), (1.0, 20.0), (10.0, 10.0)])).expect("a chart");
        let [a, b, c] = places(&svg)[..] else {
            panic!("three places");
        };
        assert!(
            (b[0] - a[0] - (c[0] - b[0])).abs() < 0.2,
            "{a:?} {b:?} {c:?}"
        );
        assert!((b[1] - a[1] - (c[1] - b[1])).abs() < 0.2 && a[1] < b[1]);
        assert!(svg.contains("a &lt; b") && svg.contains(">INVENTED<") && svg.contains(">limit<"));
    }

    #[test]
    fn what_is_no_line_is_not_drawn() {
        assert_eq!(line_chart(&chart(vec![(1.0, 1.0)])), None);
        assert_eq!(line_chart(&chart(Vec::new())), None);
        // Places that are not numbers are left out; the others are drawn.
        let svg =
            line_chart(&chart(vec![(1.0, 1.0), (2.0, f64::NAN), (3.0, 2.0)])).expect("a chart");
        assert_eq!(places(&svg).len(), 2);
        assert!(!svg.contains("NaN"));
    }
}
