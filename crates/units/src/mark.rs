//! The mark printer: the length that a crew sets on a tape, and its window.
//!
//! Why separate: only this file of the project rounds a length, and it rounds only as far as the window allows.
//!
//! Invariants:
//! a mark lies in its window and on the wanted side of the nominal;
//! the printed millimetres are those of the mark, never of the nominal, and lie in the window too;
//! a printed window is rounded inward.
//! If no sixty-fourth of an inch satisfies this, the mark is in millimetres only; if nothing does, there is no mark.
//!
//! Not here: the object of the nominal and the window, and printing without rounding (`print`).

use crate::print::{decimal_fixed, inch_fraction};
use crate::{Interval, Length, Station};
use std::fmt;

/// Half-nanometres in 0.1 mm, the coarsest step of printed millimetres.
const COARSEST_MM_STEP: i128 = 200_000;
/// Decimals of a millimetre that express a half-nanometre exactly.
const MM_DECIMALS_MAX: usize = 7;

/// The side of the nominal on which a mark may lie.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Toward {
    /// Either side; a tie goes to the greater value, as in school rounding.
    Nearest,
    /// At most the nominal.
    Shorter,
    /// At least the nominal.
    Longer,
}

/// The division of an inch on a tape.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Tick {
    denominator: u8,
}

impl Tick {
    /// Eighths of an inch.
    pub const EIGHTH: Tick = Tick { denominator: 8 };
    /// Sixteenths of an inch.
    pub const SIXTEENTH: Tick = Tick { denominator: 16 };
    /// Thirty-seconds of an inch.
    pub const THIRTY_SECOND: Tick = Tick { denominator: 32 };
    /// Sixty-fourths of an inch, the finest.
    pub const SIXTY_FOURTH: Tick = Tick { denominator: 64 };

    /// The next finer tick, or `None` after sixty-fourths.
    pub const fn finer(self) -> Option<Tick> {
        if self.denominator < Tick::SIXTY_FOURTH.denominator {
            Some(Tick {
                denominator: self.denominator * 2,
            })
        } else {
            None
        }
    }

    /// Distance from one tick to the next.
    pub fn size(self) -> Length {
        Length::INCH_64TH * i64::from(64 / self.denominator)
    }

    /// This tick and every finer one, coarsest first.
    fn ladder(self) -> impl Iterator<Item = Tick> {
        std::iter::successors(Some(self), |tick| tick.finer())
    }

    fn step(self) -> i128 {
        i128::from(self.size().nm()) * 2
    }
}

/// The tick as a fraction, `1/16 in`.
impl fmt::Display for Tick {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "1/{} in", self.denominator)
    }
}

/// Range in which a mark may lie, both bounds included.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Window {
    least: Station,
    greatest: Station,
}

impl Window {
    /// Window between two stations, or `None` if the first is greater than the second.
    pub fn new(least: Station, greatest: Station) -> Option<Window> {
        (least <= greatest).then_some(Window { least, greatest })
    }

    /// Lower bound.
    pub const fn least(self) -> Station {
        self.least
    }

    /// Upper bound.
    pub const fn greatest(self) -> Station {
        self.greatest
    }

    /// Middle between the bounds, rounded down to the half-nanometre.
    pub fn middle(self) -> Station {
        let sum = i128::from(self.least.half_nm()) + i128::from(self.greatest.half_nm());
        station(sum.div_euclid(2)).unwrap_or(self.least)
    }

    /// Whether at least a quarter of the window lies on either side of `station`.
    fn holds_in_its_middle(self, station: Station) -> bool {
        let at = i128::from(station.half_nm());
        let least = i128::from(self.least.half_nm());
        let greatest = i128::from(self.greatest.half_nm());
        let width = greatest - least;
        4 * (at - least) >= width && 4 * (greatest - at) >= width
    }

    /// Whether `station` lies inside, bounds included.
    pub fn contains(self, station: Station) -> bool {
        self.least <= station && station <= self.greatest
    }
}

/// A mark to be set on the tape.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Mark {
    /// Exact place of the mark, inside the window and on the wanted side of the nominal.
    pub station: Station,
    /// The mark as a length: `station`, with an odd half-nanometre dropped.
    ///
    /// Only a mark of seven decimals has an odd half-nanometre, in a window that holds no whole nanometre on the wanted side.
    /// Then `station` and `mm` keep the invariant, and this length is half a nanometre short.
    pub value: Length,
    /// Inches and a reduced fraction without unit, `7 1/16`; `None` if no tick fits.
    pub inch: Option<String>,
    /// The mark's own millimetres without unit, `179.4`: rounded to the fewest decimals, at least one, that lie in the window.
    ///
    /// Exact when there is no `inch`.
    /// Beside an `inch`, rounding may put the figure beyond the nominal; it still lies in the window.
    pub mm: String,
    /// The tick on which the mark lies; `None` if the mark is in millimetres only.
    pub tick: Option<Tick>,
}

/// The mark for `nominal`: the nearest tick on the side `toward`, inside `window`.
///
/// If `tick` gives no mark, finer ticks are tried down to 1/64 in, then millimetres to 0.1 and finer until exact.
/// `None` if the window holds no value on the wanted side of the nominal.
pub fn mark(nominal: Station, window: Option<Window>, tick: Tick, toward: Toward) -> Option<Mark> {
    let range = Range::of(nominal, window, toward);
    let nominal = i128::from(nominal.half_nm());
    for tick in tick.ladder() {
        if let Some(station) = range.nearest(nominal, tick.step()) {
            let value = station.floor();
            return Some(Mark {
                station,
                value,
                inch: inch_fraction(value),
                mm: rounded_mm(station, window),
                tick: Some(tick),
            });
        }
    }
    mm_ladder().find_map(|(step, decimals)| {
        let station = range.nearest(nominal, step)?;
        let mm = mm_at(i128::from(station.half_nm()), step, decimals);
        Some(Mark {
            station,
            value: station.floor(),
            inch: None,
            mm,
            tick: None,
        })
    })
}

/// The mark for `nominal` on a millimetre rule: the nearest whole millimetre inside `window`, else tenths and finer.
///
/// `None` if the window holds no value, which cannot happen.
pub fn metric_mark(nominal: Station, window: Option<Window>) -> Option<Mark> {
    let range = Range::of(nominal, window, Toward::Nearest);
    let nominal = i128::from(nominal.half_nm());
    let whole = (COARSEST_MM_STEP * 10, 0);
    [whole]
        .into_iter()
        .chain(mm_ladder())
        .find_map(|(step, decimals)| {
            let station = range.nearest(nominal, step)?;
            Some(Mark {
                station,
                value: station.floor(),
                inch: None,
                mm: mm_at(i128::from(station.half_nm()), step, decimals),
                tick: None,
            })
        })
}

/// The mark for a window: as close to its middle as ticks of 1/16 in or finer allow.
///
/// It lies on the coarsest tick that leaves at least a quarter of the window on either side.
/// If no tick down to 1/64 in does, it lies on the coarsest tick in the window, or else in millimetres.
pub fn middle_mark(window: Window, tick: Tick) -> Option<Mark> {
    let middle = window.middle();
    let range = Range::of(middle, Some(window), Toward::Nearest);
    let inside = tick.ladder().find(|tick| {
        let station = range.nearest(i128::from(middle.half_nm()), tick.step());
        station.is_some_and(|station| window.holds_in_its_middle(station))
    });
    mark(
        middle,
        Some(window),
        inside.unwrap_or(tick),
        Toward::Nearest,
    )
}

/// The mark for a window on a millimetre rule: a whole millimetre, else tenths and finer.
pub fn metric_middle_mark(window: Window) -> Option<Mark> {
    let middle = window.middle();
    let whole = metric_mark(middle, Some(window))?;
    if window.holds_in_its_middle(whole.station) {
        return Some(whole);
    }
    let range = Range::of(middle, Some(window), Toward::Nearest);
    let at = i128::from(middle.half_nm());
    let inside = mm_ladder().find_map(|(step, decimals)| {
        let station = range.nearest(at, step)?;
        window.holds_in_its_middle(station).then(|| Mark {
            station,
            value: station.floor(),
            inch: None,
            mm: mm_at(i128::from(station.half_nm()), step, decimals),
            tick: None,
        })
    });
    Some(inside.unwrap_or(whole))
}

/// A window as printed: lower and upper bound, without units.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct WindowText {
    /// Inches and reduced fractions; `None` if the window holds no sixty-fourth.
    pub inch: Option<(String, String)>,
    /// Millimetres, both with the same number of decimals.
    pub mm: (String, String),
}

/// `window` as printed, with each bound rounded inward: the window allows every value that the text allows.
///
/// The inches are at `tick`, or at the coarsest finer tick at which the printed window has two ticks, because one tick is no window.
/// If no tick has two, the window is in millimetres only.
/// The millimetres are chosen in the same way, from 0.1 on.
/// A window without width is printed exactly.
/// A mark with more decimals than the text may lie outside the text, but never outside the window.
pub fn window_text(window: Window, tick: Tick) -> WindowText {
    let least = i128::from(window.least.half_nm());
    let greatest = i128::from(window.greatest.half_nm());
    let inward = |step| {
        let bounds = (round_up(least, step), round_down(greatest, step));
        (bounds.0 <= bounds.1).then_some(bounds)
    };
    let inch = tick.ladder().find_map(|tick| {
        let (low, high) = inward(tick.step())?;
        if low == high && least != greatest {
            return None;
        }
        Some((
            inch_fraction(station(low)?.floor())?,
            inch_fraction(station(high)?.floor())?,
        ))
    });
    let mm = mm_ladder().find_map(|(step, decimals)| {
        let (low, high) = inward(step)?;
        if low == high && least != greatest && step > 1 {
            return None;
        }
        Some((mm_at(low, step, decimals), mm_at(high, step, decimals)))
    });
    // A step of one half-nanometre rounds nothing, and least <= greatest.
    let mm = mm.unwrap_or_else(|| {
        (
            mm_at(least, 1, MM_DECIMALS_MAX),
            mm_at(greatest, 1, MM_DECIMALS_MAX),
        )
    });
    WindowText { inch, mm }
}

/// Millimetres of a mark and of its window, all with the same number of decimals: the fewest at which the printed mark lies in the printed window.
pub fn mm_beside(mark: &Mark, window: Window) -> (String, (String, String)) {
    let at = i128::from(mark.station.half_nm());
    let least = i128::from(window.least.half_nm());
    let greatest = i128::from(window.greatest.half_nm());
    for (step, decimals) in mm_ladder() {
        let (low, high) = (round_up(least, step), round_down(greatest, step));
        let rounded = round_down(at + step / 2, step);
        let is_single = low == high && least != greatest && step > 1;
        if low <= rounded && rounded <= high && !is_single {
            let text = |x| mm_at(x, step, decimals);
            return (text(rounded), (text(low), text(high)));
        }
    }
    // Only a mark outside its window reaches this line; all three are then printed exactly.
    let text = |x| mm_at(x, 1, MM_DECIMALS_MAX);
    (text(at), (text(least), text(greatest)))
}

/// A permitted range of diameters as printed: inches with three decimals and millimetres with two, or more.
/// Every bound is rounded inward, so that no printed number lies outside.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct RangeText {
    /// Decimal inches, without unit, `0.830`.
    pub inch: (String, String),
    /// Millimetres, without unit, `21.09`.
    pub mm: (String, String),
}

/// `range` as printed.
pub fn range_text(range: Interval) -> RangeText {
    let (least, greatest) = (
        i128::from(range.least().nm()),
        i128::from(range.greatest().nm()),
    );
    // A thousandth of an inch is 25 400 nm, a hundredth of a millimetre 10 000 nm; finer steps follow where these leave nothing.
    let inward = |unit: i128, decimals: usize| {
        let (low, high) = (round_up(least, unit), round_down(greatest, unit));
        (low <= high).then(|| {
            (
                decimal_fixed(low / unit, decimals),
                decimal_fixed(high / unit, decimals),
            )
        })
    };
    let inch = [(25_400, 3), (2_540, 4), (254, 5)];
    let mm = [(10_000, 2), (1_000, 3), (100, 4), (10, 5), (1, 6)];
    let of = |steps: &[(i128, usize)]| {
        let mut steps = steps.iter();
        steps.find_map(|(unit, decimals)| inward(*unit, *decimals))
    };
    let mm = of(&mm).unwrap_or_else(|| (range.least().exact_mm(), range.greatest().exact_mm()));
    // No hundred-thousandth of an inch lies inside: millimetres with the same digits say it alone.
    let inch = of(&inch).unwrap_or_default();
    RangeText {
        inch,
        mm: without_idle_noughts(mm),
    }
}

/// Both numbers without the last zero if both end in one; at least one decimal stays.
fn without_idle_noughts((low, high): (String, String)) -> (String, String) {
    let decimals = |text: &str| text.split_once('.').map_or(0, |(_, d)| d.len());
    if decimals(&low) > 1 && low.ends_with('0') && high.ends_with('0') {
        let cut = |text: &str| text[..text.len() - 1].to_owned();
        return without_idle_noughts((cut(&low), cut(&high)));
    }
    (low, high)
}

/// Instrument that a length is read with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Gauge {
    /// A rule or a tape, for a cut, a mark or a length along the cable: sixty-fourths of an inch.
    Rule,
    /// A calliper, for diameters: thousandths of an inch.
    Calliper,
}

/// A length that must not be exceeded, printed in both units and rounded down: `0.118 in (3.0 mm)` or, on a rule, `7/64 in (3.0 mm)`.
/// A length that must be reached is rounded up.
///
/// The step is finer where the length has fewer than ten of the coarsest step, and on a rule it is a thousandth below 1/16 in.
pub fn bound_text(length: Length, toward: Toward, gauge: Gauge) -> String {
    let nm = i128::from(length.nm());
    let tick = i128::from(Length::INCH_64TH.nm());
    let on_a_rule = (gauge == Gauge::Rule)
        .then(|| length_of(rounded_to(nm, tick, toward)))
        .flatten()
        .filter(|_| nm % tick == 0 || nm.abs() >= 4 * tick)
        .and_then(inch_fraction);
    let inch = on_a_rule.unwrap_or_else(|| {
        const STEPS: [(i128, usize); 3] = [(25_400, 3), (2_540, 4), (254, 5)];
        decimal_side(nm, toward, &STEPS)
    });
    format!("{inch} in ({})", bound_mm_text(length, toward))
}

/// The same length in millimetres alone: `3.0 mm`.
pub fn bound_mm_text(length: Length, toward: Toward) -> String {
    const STEPS: [(i128, usize); 5] = [(10_000, 2), (1_000, 3), (100, 4), (10, 5), (1, 6)];
    let mm = decimal_side(i128::from(length.nm()), toward, &STEPS);
    let mm = mm.strip_suffix('0').unwrap_or(&mm);
    format!("{mm} mm")
}

/// A length rounded to one side, in the first of these steps that it contains at least ten times or exactly.
fn decimal_side(nm: i128, toward: Toward, steps: &[(i128, usize)]) -> String {
    let mut steps = steps.iter();
    let finest = steps.clone().next_back();
    let enough = steps.find(|(unit, _)| nm.abs() >= 10 * unit || nm % unit == 0);
    let (unit, decimals) = *enough.or(finest).expect("there are steps");
    decimal_fixed(rounded_to(nm, unit, toward) / unit, decimals)
}

fn rounded_to(nm: i128, unit: i128, toward: Toward) -> i128 {
    match toward {
        Toward::Longer => round_up(nm, unit),
        Toward::Shorter => round_down(nm, unit),
        Toward::Nearest => round_down(nm + unit / 2, unit),
    }
}

fn length_of(nm: i128) -> Option<Length> {
    i64::try_from(nm).ok().map(Length::from_nm)
}

/// Range in which the mark may lie, by window and wanted side together, in half-nanometres.
struct Range {
    least: i128,
    greatest: i128,
}

impl Range {
    fn of(nominal: Station, window: Option<Window>, toward: Toward) -> Range {
        let (mut least, mut greatest) = match window {
            Some(window) => (window.least, window.greatest),
            None => (
                Station::from_half_nm(i64::MIN),
                Station::from_half_nm(i64::MAX),
            ),
        };
        match toward {
            Toward::Nearest => {}
            Toward::Shorter => greatest = greatest.min(nominal),
            Toward::Longer => least = least.max(nominal),
        }
        Range {
            least: i128::from(least.half_nm()),
            greatest: i128::from(greatest.half_nm()),
        }
    }

    /// The multiple of `step` in the range that is nearest to `nominal`, if the range holds one.
    fn nearest(&self, nominal: i128, step: i128) -> Option<Station> {
        if self.least > self.greatest {
            return None;
        }
        let inside = nominal.clamp(self.least, self.greatest);
        [round_up(inside, step), round_down(inside, step)]
            .into_iter()
            .filter(|candidate| self.least <= *candidate && *candidate <= self.greatest)
            // Of equals the first is kept, so that a tie goes up.
            .min_by_key(|candidate| (candidate - nominal).abs())
            .and_then(station)
    }
}

/// Steps of printed millimetres in half-nanometres, with their decimals: 0.1 mm, 0.01 mm … 1 nm, then the half-nanometre.
fn mm_ladder() -> impl Iterator<Item = (i128, usize)> {
    (1..MM_DECIMALS_MAX)
        .scan(COARSEST_MM_STEP * 10, |step, decimals| {
            *step /= 10;
            Some((*step, decimals))
        })
        .chain([(1, MM_DECIMALS_MAX)])
}

/// Millimetres of a multiple of `step`, with all decimals of that step.
fn mm_at(half_nm: i128, step: i128, decimals: usize) -> String {
    // Half a nanometre is five units of the seventh decimal.
    let units = if decimals == MM_DECIMALS_MAX {
        half_nm * 5
    } else {
        half_nm / step
    };
    decimal_fixed(units, decimals)
}

/// Millimetres of `station` with the fewest decimals at which the rounded figure lies in `window`.
fn rounded_mm(at: Station, window: Option<Window>) -> String {
    let half_nm = i128::from(at.half_nm());
    mm_ladder()
        .find_map(|(step, decimals)| {
            // Steps above one are even, so half a step is whole.
            let rounded = round_down(half_nm + step / 2, step);
            let is_inside = match window {
                None => true,
                Some(window) => station(rounded).is_some_and(|s| window.contains(s)),
            };
            is_inside.then(|| mm_at(rounded, step, decimals))
        })
        .unwrap_or_else(|| mm_at(half_nm, 1, MM_DECIMALS_MAX))
}

fn round_down(half_nm: i128, step: i128) -> i128 {
    half_nm.div_euclid(step) * step
}

fn round_up(half_nm: i128, step: i128) -> i128 {
    -round_down(-half_nm, step)
}

/// The station, or `None` if rounding went past the largest one.
fn station(half_nm: i128) -> Option<Station> {
    i64::try_from(half_nm).ok().map(Station::from_half_nm)
}

#[cfg(test)]
#[path = "mark_tests.rs"]
mod tests;
