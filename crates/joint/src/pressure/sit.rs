//! Sit: the least pressure of one part over its slices and over the temperatures, and the worst that its instructions allow.

use super::heat::{Heat, Warmth};
use super::kit::Kit;
use super::wall::{Slice, Wall, rubber_said};
use super::{FittedEnd, Seat};
use crate::catalogue::{Head, Rubber};
use crate::job::Job;
use crate::limit::Word;
use crate::plane::Plane;
use crate::said::{CutSaid, Paper, PressureBench, PressureSaid, PressureSeat, Said};
use crate::section::Unknown;
use jointwright_numerics::rubber::{Ends, Pressed, RubberError, Tube};

/// Steps of the bisection for the radius that gives a pressure over all temperatures.
const N_HALVINGS: u32 = 40;
/// Distance up to which two slices touch, m.
const TOUCH_M: f64 = 1e-6;
/// Number of growths, from the least to the greatest, at which a kit is compared with the oldest.
const N_GROWTHS: u32 = 5;
/// Axial conditions of a part's ends; nobody knows how far the cable holds them.
const ENDS: [Ends; 2] = [Ends::FixedLength, Ends::Free];
/// Relative difference up to which two radii are equal.
const CLOSE_RATIO: f64 = 1e-9;

/// Least pressure over a stretch of a part.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Compared {
    /// Least ratio of this pressure to the worst that the instructions allow at the same place and temperature.
    pub ratio: f64,
    /// Error of the ratio.
    pub error_ratio: f64,
    /// Error of the ratio for printing; a kit inside its instructions has it too, though its ruling uses none.
    pub read_error_ratio: f64,
    /// Temperatures at the least ratio, if they are known.
    pub warmth: Option<Warmth>,
    /// Least pressure, Pa, where the law of the rubber is stated.
    pub pressure_pa: Option<f64>,
    /// Error of the least pressure, Pa.
    pub pressure_error_pa: f64,
    /// Temperatures at the least pressure, if they are known.
    pub pressure_warmth: Option<Warmth>,
    /// Stretch along the part with the least pressure, from and to, m from its datum; infinite where the part is alike all along.
    pub along_m: (f64, f64),
    /// Whether the least pressure there belongs to free ends, else to fixed length.
    pub is_free: bool,
    /// Whether the least ratio belongs to free ends, else to fixed length; both sides of the ratio have the same ends.
    pub is_ratio_free: bool,
}

/// Range of cables that this kit can take today.
#[derive(Clone, Debug, PartialEq)]
pub struct Today {
    /// Least radius, m.
    pub least_m: f64,
    /// Source of the least radius.
    pub word: Word,
    /// Greatest radius, m.
    pub greatest_m: f64,
}

/// One part on one end.
#[derive(Clone, Debug, PartialEq)]
pub struct Sit {
    /// Name of the part.
    pub id: String,
    /// Paper of the part.
    pub source: Paper,
    /// Seat of the part.
    pub seat: Seat,
    /// State of the part after its time in store.
    pub kit: Kit,
    /// Radius of the bore, relaxed and without set, m.
    pub bore_m: f64,
    /// Error of that radius, m.
    pub bore_error_m: f64,
    /// Whether the law of the rubber is stated.
    pub has_law: bool,
    /// Greatest stretch of the bore that the paper allows, if it states one.
    pub stretch_greatest_ratio: Option<f64>,
    /// Temperatures, or the missing fact about them; without them pressures are as read.
    pub heat: Result<Heat, Unknown>,
    /// Least pressure on the whole seat.
    pub seat_least: Compared,
    /// Least pressure where the edge of the insulation screen may lie, or the reason why there is none.
    pub edge: Result<Compared, Said>,
    /// Range that the kit can take today, or the reason why it is not stated.
    pub today: Result<Today, Said>,
    /// Least pressures asked for, Pa, each with its source.
    pub asked_pa: Vec<(f64, Word)>,
}

impl Sit {
    /// Greatest stretch of the bore: here, and over the allowed range.
    pub fn stretch_ratios(&self) -> (f64, f64) {
        (
            self.seat.here_m.1 / self.bore_m,
            self.seat.allowed_m.1 / self.bore_m,
        )
    }

    /// Squeeze: excess of the seat over the bore, as a share of the bore; the least here, and the least allowed.
    pub fn squeeze_ratios(&self) -> (f64, f64) {
        (
            self.seat.here_m.0 / self.kit.today.bore_m - 1.0,
            self.seat.allowed_m.0 / self.kit.oldest.bore_m - 1.0,
        )
    }

    /// Whether cable and kit lie inside what the instructions allow, errors included.
    pub fn is_within(&self) -> bool {
        is_within(&self.seat, &self.kit)
    }

    /// Whether a pressure in pascals can be stated: the row gives the law, and the loss of stiffness in store.
    pub fn has_pressure(&self) -> bool {
        self.has_law && self.kit.has_relaxation
    }
}

fn is_within(seat: &Seat, kit: &Kit) -> bool {
    seat.here_m.0 - seat.error_m >= seat.allowed_m.0 && kit_is_within(kit)
}

fn kit_is_within(kit: &Kit) -> bool {
    kit.today.bore_m <= kit.oldest.bore_m && kit.today.kept_ratio >= kit.oldest.kept_ratio
}

/// Seat of a part along its axis, from its datum, m.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct SeatSpan {
    seat_m: (f64, f64),
    edge_m: Result<(f64, f64), Said>,
}

impl SeatSpan {
    /// The whole part, without an edge of a screen.
    pub fn whole() -> SeatSpan {
        SeatSpan {
            seat_m: (f64::NEG_INFINITY, f64::INFINITY),
            edge_m: Err(PressureBench::NoScreenUnderIt.into()),
        }
    }

    /// From the end of the insulation to the edge of its screen, as far as the windows let them lie.
    pub fn of_body(subject: &FittedEnd<'_>) -> SeatSpan {
        let cutback = subject.cutback;
        let datum = [Plane::BodyCentre, Plane::BodySeat]
            .into_iter()
            .find(|plane| cutback.nominal(*plane).is_some());
        let from_datum = |plane: Plane| -> Result<(f64, f64), Said> {
            let datum = datum.ok_or(CutSaid::BodyNotPlaced)?;
            let interval = cutback.dimension(datum, plane)?.interval();
            Ok((interval.least().m(), interval.greatest().m()))
        };
        let edge_m = from_datum(Plane::ScreenEdge);
        let end_m = from_datum(cutback.in_service(Plane::InsulationEnd));
        let least = end_m.map_or(f64::NEG_INFINITY, |end| end.0);
        let greatest = edge_m.as_ref().map_or(f64::INFINITY, |edge| edge.1);
        SeatSpan {
            seat_m: (least, greatest),
            edge_m,
        }
    }
}

/// Least pressures asked for, each with its source.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Limits {
    asked_pa: Vec<(f64, Word)>,
}

impl Limits {
    pub fn of(job: &Job, head: &Head, rubber: &Rubber, kind: &str) -> Limits {
        let row = rubber
            .pressure_least_kpa
            .map(|kpa| (kpa * 1e3, Word::Instructions(head.source().into())));
        let owners = job
            .limits_of("interface_pressure")
            .filter(|_| kind != "seal")
            .filter_map(|limit| {
                Some((
                    limit.least_kpa? * 1e3,
                    Word::Owner(limit.source.clone().into()),
                ))
            });
        Limits {
            asked_pa: row.into_iter().chain(owners).collect(),
        }
    }
}

/// Facts of one part on one end.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Case {
    pub head: Head,
    pub rubber: Rubber,
    pub seat: Seat,
    pub wall: Wall,
    pub kit: Kit,
    pub heat: Result<Heat, Unknown>,
    pub along: SeatSpan,
    pub limits: Limits,
}

/// Computes one part on one end.
///
/// # Errors
/// The reason why there is no pressure.
pub(super) fn sit(case: &Case) -> Result<Sit, Said> {
    if case.rubber.law.is_some_and(|law| law.may_fall()) {
        return Err(PressureBench::MayFall.into());
    }
    let bench = Bench {
        seat: &case.seat,
        kit: &case.kit,
        heat: case.heat.as_ref().ok(),
        has_law: case.wall.has_law && case.kit.has_relaxation,
        uncertainty_m: case.rubber.uncertainty.m() / 2.0,
    };
    let seat_slices = covering(&case.wall, case.along.seat_m)?;
    if let Some(hold) = case.rubber.hold_diameter {
        follows(&seat_slices, hold.m() / 2.0).map_err(|why| {
            let diameter = hold.to_string();
            Said::listed([PressureBench::HeldOpen { diameter }.into(), why])
        })?;
    }
    let seat_least = bench.least(&seat_slices)?;
    bench.follows_the_thickest(&seat_slices, bench.seat.here_m.1)?;
    let edge = match &case.along.edge_m {
        Err(why) => Err(why.clone()),
        Ok(edge_m) => covering(&case.wall, *edge_m).and_then(|slices| bench.least(&slices)),
    };
    let today = bench.today(&seat_slices, &case.head, &case.limits);
    Ok(Sit {
        id: case.head.id.clone(),
        source: case.head.source(),
        bore_m: case.rubber.relaxed_bore.m() / 2.0,
        bore_error_m: bench.uncertainty_m,
        has_law: case.wall.has_law,
        stretch_greatest_ratio: case.rubber.stretch_greatest_ratio,
        seat_least,
        edge,
        today,
        asked_pa: case.limits.asked_pa.clone(),
        heat: case.heat.clone(),
        seat: case.seat.clone(),
        kit: case.kit.clone(),
    })
}

/// Slices of a stretch; they must cover it from the beginning of the wall on.
fn covering(wall: &Wall, (from, to): (f64, f64)) -> Result<Vec<&Slice>, Said> {
    let slices: Vec<&Slice> = wall
        .slices
        .iter()
        .filter(|slice| slice.along_m.0 <= to && slice.along_m.1 >= from)
        .collect();
    let ends = |pick: fn(&Slice) -> f64| wall.slices.iter().map(pick);
    let begins = ends(|slice| slice.along_m.0).fold(f64::INFINITY, f64::min);
    let stops = ends(|slice| slice.along_m.1).fold(f64::NEG_INFINITY, f64::max);
    let to = if to.is_finite() { to } else { stops };
    let mut reached = from.max(begins);
    let gap = |from: f64, to: f64| {
        PressureBench::NoRubberFrom {
            from_mm: 1e3 * from,
            to_mm: 1e3 * to,
        }
        .into()
    };
    for slice in &slices {
        if slice.along_m.0 > reached + TOUCH_M {
            return Err(gap(reached, slice.along_m.0));
        }
        reached = reached.max(slice.along_m.1);
    }
    if reached < to - TOUCH_M {
        return Err(gap(reached, to));
    }
    Ok(slices)
}

/// Checks that the law of every slice, as made, reaches a radius.
fn follows(slices: &[&Slice], radius_m: f64) -> Result<(), Said> {
    slices.iter().try_for_each(|slice| {
        let pressed = slice.tube.pressed_least(radius_m);
        pressed.map(drop).map_err(rubber)
    })
}

/// Reason why a part is loose on its seat as read, errors included; `None` if it touches.
pub(super) fn loose(seat: &Seat, kit: &Kit, rubber: &Rubber) -> Option<PressureSeat> {
    let bore_m = kit.today.bore_m - rubber.uncertainty.m() / 2.0;
    (seat.here_m.0 + seat.error_m <= bore_m).then(|| PressureSeat::Loose {
        bore_mm: 2e3 * kit.today.bore_m,
        on: seat.on.clone(),
        seat_mm: 2e3 * seat.here_m.0,
    })
}

/// Quantities from which pressures are computed.
struct Bench<'a> {
    seat: &'a Seat,
    kit: &'a Kit,
    heat: Option<&'a Heat>,
    has_law: bool,
    uncertainty_m: f64,
}

/// State of temperature: growth and stiffness.
#[derive(Clone, Copy)]
struct At {
    warmth: Option<Warmth>,
    growth: (f64, f64),
    stiffness_ratio: f64,
}

impl Bench<'_> {
    fn states(&self) -> Vec<At> {
        let Some(heat) = self.heat else {
            return vec![At {
                warmth: None,
                growth: (0.0, 0.0),
                stiffness_ratio: 1.0,
            }];
        };
        let at = |warmth: Warmth| At {
            warmth: Some(warmth),
            growth: heat.growth_ratio(warmth),
            stiffness_ratio: heat.stiffness_ratio(warmth),
        };
        heat.states().into_iter().map(at).collect()
    }

    /// Pressures today and of the worst allowed with the same ends, Pa at the stated stiffness; the cable has grown by exp(`growth`).
    fn pair(
        &self,
        tubes: &Aging,
        here_m: f64,
        growth: f64,
        ends: Ends,
    ) -> Result<(f64, f64), Said> {
        let grown = growth.exp();
        let today = tubes.today.pressed(here_m * grown, ends);
        let oldest = tubes.oldest.pressed(self.seat.allowed_m.0 * grown, ends);
        let pressure = |found: Result<Pressed, RubberError>| {
            found.map(|pressed| pressed.pressure_pa).map_err(rubber)
        };
        Ok((
            pressure(today)? * self.kit.today.kept_ratio,
            pressure(oldest)? * self.kit.oldest.kept_ratio,
        ))
    }

    /// Lower pressure today of both conditions of the ends, Pa at the stated stiffness.
    fn least_here(&self, tubes: &Aging, here_m: f64, growth: f64) -> Result<f64, Said> {
        let today = tubes.today.pressed_least(here_m * growth.exp());
        let today = today.map_err(rubber)?;
        Ok(today.pressure_pa * self.kit.today.kept_ratio)
    }

    fn aging(&self, tube: &Tube, more_m: f64) -> Aging {
        Aging {
            today: tube.set_to(self.kit.today.bore_m + more_m),
            oldest: tube.set_to(self.kit.oldest.bore_m + more_m),
        }
    }

    fn ratio(&self, (here, allowed): (f64, f64)) -> Result<f64, Said> {
        let oldest = self.kit.oldest_of;
        if self.kit.oldest.kept_ratio <= 0.0 {
            return Err(PressureBench::NoStiffnessLeft { oldest }.into());
        }
        if allowed <= 0.0 {
            return Err(PressureBench::WouldNotTouch {
                on: self.seat.on.clone(),
                least_mm: 2e3 * self.seat.allowed_m.0,
                oldest,
            }
            .into());
        }
        Ok(here / allowed)
    }

    /// Least pressure over slices and temperatures.
    fn least(&self, slices: &[&Slice]) -> Result<Compared, Said> {
        let mut least_ratio: Option<(f64, At, (f64, Ends), &Slice)> = None;
        let mut least_pa: Option<(f64, At, &Slice, bool)> = None;
        let here_m = self.seat.here_m.0;
        for slice in slices {
            let tubes = self.aging(&slice.tube, 0.0);
            for (at, ends) in self
                .states()
                .into_iter()
                .flat_map(|at| ENDS.map(|e| (at, e)))
            {
                let (here, allowed) = self.pair(&tubes, here_m, at.growth.0, ends)?;
                let pressure = here * at.stiffness_ratio;
                if least_pa.is_none_or(|(least, ..)| pressure < least) {
                    least_pa = Some((pressure, at, slice, ends == Ends::Free));
                }
                let mut ratio = (self.ratio((here, allowed))?, at.growth.0);
                if at.growth.1 > at.growth.0 {
                    let other = self.ratio(self.pair(&tubes, here_m, at.growth.1, ends)?)?;
                    if other < ratio.0 {
                        ratio = (other, at.growth.1);
                    }
                }
                if least_ratio.is_none_or(|(least, ..)| ratio.0 < least) {
                    least_ratio = Some((ratio.0, at, (ratio.1, ends), slice));
                }
            }
        }
        let (Some((ratio, at, grown, slice)), Some((pressure, cold, thin, is_free))) =
            (least_ratio, least_pa)
        else {
            return Err(PressureBench::NoSliceThere.into());
        };
        let found = self.error_ratio(slice, grown, ratio);
        let (error_ratio, read_error_ratio) = if is_within(self.seat, self.kit) {
            (0.0, found.unwrap_or(f64::INFINITY))
        } else {
            let error_ratio = found?;
            (error_ratio, error_ratio)
        };
        // The instructions allow a kit that lies wholly inside them, whatever the last digit says.
        let ratio = if is_within(self.seat, self.kit) {
            ratio.max(1.0)
        } else {
            ratio
        };
        Ok(Compared {
            ratio,
            error_ratio,
            read_error_ratio,
            warmth: at.warmth,
            pressure_pa: self.has_law.then_some(pressure),
            pressure_error_pa: self.pressure_error(thin, cold, pressure)?,
            pressure_warmth: cold.warmth,
            along_m: thin.along_m,
            is_free,
            is_ratio_free: grown.1 == Ends::Free,
        })
    }

    /// Error of a ratio from the errors of the reading and of the relaxed bore.
    fn error_ratio(
        &self,
        slice: &Slice,
        (growth, ends): (f64, Ends),
        ratio: f64,
    ) -> Result<f64, Said> {
        let thinner = self.seat.here_m.0 - self.seat.error_m;
        let of = |tubes: &Aging, here_m: f64| -> Result<f64, Said> {
            self.ratio(self.pair(tubes, here_m, growth, ends)?)
        };
        let read = ratio - of(&self.aging(&slice.tube, 0.0), thinner)?;
        // A bore that would no longer touch has an uncertainty too large to conclude anything.
        let wider = of(
            &self.aging(&slice.tube, self.uncertainty_m),
            self.seat.here_m.0,
        );
        Ok(read.abs() + wider.map_or(f64::INFINITY, |wider| (ratio - wider).abs()))
    }

    fn pressure_error(&self, slice: &Slice, at: At, pressure: f64) -> Result<f64, Said> {
        let tubes = self.aging(&slice.tube, self.uncertainty_m);
        let thinner = self.seat.here_m.0 - self.seat.error_m;
        let lower = self.least_here(&tubes, thinner, at.growth.0)?;
        Ok((pressure - lower * at.stiffness_ratio).abs())
    }

    /// Range that the kit can take today.
    fn today(&self, slices: &[&Slice], head: &Head, limits: &Limits) -> Result<Today, Said> {
        let mut today = Today {
            least_m: self.seat.allowed_m.0,
            word: Word::Instructions(head.source().into()),
            greatest_m: self.seat.allowed_m.1,
        };
        self.follows_the_thickest(slices, self.seat.allowed_m.1)?;
        if !kit_is_within(self.kit) {
            for slice in slices {
                let needed = self.as_hard_as_oldest(slice)?;
                today.raise(needed, || Word::WorstAllowed(head.source().into()));
            }
        }
        for (pressure_pa, word) in &limits.asked_pa {
            if !self.has_law || self.heat.is_none() {
                let word = word.clone();
                return Err(PressureSaid::LeastAskedButNotSaid { word }.into());
            }
            for slice in slices {
                today.raise(self.pressed_with(slice, *pressure_pa)?, || word.clone());
            }
        }
        Ok(today)
    }

    /// Least and greatest growth over all states.
    fn growths(&self) -> (f64, f64) {
        let states = self.states();
        let least = states.iter().map(|at| at.growth.0);
        let greatest = states.iter().map(|at| at.growth.1);
        (
            least.fold(f64::INFINITY, f64::min),
            greatest.fold(f64::NEG_INFINITY, f64::max),
        )
    }

    /// Checks that the law reaches a seat of this radius at its greatest growth.
    fn follows_the_thickest(&self, slices: &[&Slice], radius_m: f64) -> Result<(), Said> {
        let grown = radius_m * self.growths().1.max(0.0).exp();
        for slice in slices {
            let today = self.aging(&slice.tube, 0.0).today;
            let pressed = today.pressed_least(grown);
            pressed.map_err(|why| PressureBench::OnDiameter {
                diameter_mm: 2e3 * radius_m,
                why: rubber_said(why),
            })?;
        }
        Ok(())
    }

    /// Radius with the same pressure as the oldest kit on the thinnest allowed cable, at any growth of both.
    fn as_hard_as_oldest(&self, slice: &Slice) -> Result<f64, Said> {
        let tubes = self.aging(&slice.tube, 0.0);
        let (least, greatest) = self.growths();
        let mut radius: f64 = 0.0;
        for step in 0..N_GROWTHS {
            let share = f64::from(step) / f64::from(N_GROWTHS - 1);
            let growth = least + (greatest - least) * share;
            for ends in ENDS {
                let (_, oldest) = self.pair(&tubes, self.seat.here_m.0, growth, ends)?;
                let pressure = oldest / self.kit.today.kept_ratio;
                let found = tubes.today.radius_for_ends(pressure, ends);
                radius = radius.max(no_radius(found)? / growth.exp());
            }
        }
        Ok(radius)
    }

    /// Radius at which the least pressure over all temperatures equals this pressure; infinite if there is none.
    fn pressed_with(&self, slice: &Slice, pressure_pa: f64) -> Result<f64, Said> {
        let tubes = self.aging(&slice.tube, 0.0);
        let states = self.states();
        let least = |radius: f64| -> Result<f64, Said> {
            let mut least = f64::INFINITY;
            for at in &states {
                let here = self.least_here(&tubes, radius, at.growth.0)?;
                least = least.min(here * at.stiffness_ratio);
            }
            Ok(least)
        };
        let (mut low, mut high) = self.seat.allowed_m;
        if least(low)? >= pressure_pa {
            return Ok(low);
        }
        if least(high)? < pressure_pa {
            return Ok(f64::INFINITY);
        }
        for _ in 0..N_HALVINGS {
            let middle = 0.5 * (low + high);
            if least(middle)? >= pressure_pa {
                high = middle;
            } else {
                low = middle;
            }
        }
        Ok(high)
    }
}

fn rubber(why: RubberError) -> Said {
    rubber_said(why).into()
}

fn no_radius(found: Result<f64, RubberError>) -> Result<f64, Said> {
    match found {
        Ok(radius) => Ok(radius),
        Err(RubberError::NoRadius { .. }) => Ok(f64::INFINITY),
        Err(why) => Err(rubber(why)),
    }
}

impl Today {
    fn raise(&mut self, radius_m: f64, word: impl FnOnce() -> Word) {
        if radius_m > self.least_m * (1.0 + CLOSE_RATIO) {
            self.least_m = radius_m;
            self.word = word();
        }
    }
}

/// A tube after its time in store, and at its oldest.
struct Aging {
    today: Tube,
    oldest: Tube,
}
