//! Course: temperatures of a joint in time and at other loads, by its projected star.
//!
//! Why its own file: a plan and a rating ask for hundreds of states of one joint, and the full ladder is too slow for them.
//!
//! Invariants: at the job's load, without a load and at the emergency's load in steady state it equals the full ladder.
//!
//! Source: `docs/theory/ladder.md`.

use super::leg::{Lasts, LegAt, LegLimit, RATIO_MOST, leg_at, said, unless_runaway};
use super::shape::Shape;
use super::{LONGEST_S, ageing_ratio};
use crate::catalogue::Ageing;
use crate::said::Said;
use jointwright_numerics::ladder::{
    Course, Ladder, LadderError, Projected, Rises, Temperatures, factor_to_limit,
};

/// First time at which a limit is looked for, s; each further time is twice as long.
const FIRST_S: f64 = 0.25;
/// Relative accuracy of a time.
const CLOSE_RATIO: f64 = 1e-6;
/// Number of steps, an even one, over which the ageing of an emergency is added up.
const AGEING_STEPS: u32 = 24;
/// Ratio to the job's load at which the states are compared with the full ladder if there is no emergency.
const PROBE_RATIO: f64 = 1.5;

/// Projected stars of one joint: all its legs, and each leg's cable without a joint.
#[derive(Clone, Debug)]
pub(super) struct Lean {
    pub joint: Projected,
    alone: Vec<Projected>,
    /// Job's load, A.
    loads_a: Vec<f64>,
}

/// Ladders of a joint and of each leg's cable without a joint, each with its temperatures at the job's load, and the loads.
pub(super) struct Projection<'l> {
    pub joint: (&'l mut Ladder, &'l Temperatures),
    pub alone: Vec<(&'l mut Ladder, &'l Temperatures)>,
    pub loads_a: &'l [f64],
    pub emergency_a: Option<&'l [f64]>,
}

/// Projects a ladder, with its steady states at the emergency's load and without load among its states.
fn projected(
    (ladder, rest): (&mut Ladder, &Temperatures),
    loads_a: &[f64],
    emergency_a: Option<&[f64]>,
) -> Result<Projected, LadderError> {
    let mut known = vec![ladder.steady(&vec![0.0; loads_a.len()])?];
    // A runaway has no steady state.
    known.extend(emergency_a.and_then(|currents| ladder.steady(currents).ok()));
    let other: Vec<f64> = loads_a.iter().map(|load| PROBE_RATIO * load).collect();
    let known: Vec<&Temperatures> = known.iter().collect();
    Projected::new(ladder, loads_a, rest, &known, emergency_a.unwrap_or(&other))
}

impl Lean {
    pub fn new(of: Projection<'_>) -> Result<Lean, Said> {
        let (loads_a, emergency_a) = (of.loads_a, of.emergency_a);
        let joint = projected(of.joint, loads_a, emergency_a).map_err(said)?;
        let legs = of.alone.into_iter().enumerate();
        let alone = legs.map(|(leg, alone)| {
            let emergency = emergency_a.map(|currents| &currents[leg..=leg]);
            projected(alone, &loads_a[leg..=leg], emergency).map_err(said)
        });
        Ok(Lean {
            joint,
            alone: alone.collect::<Result<_, _>>()?,
            loads_a: loads_a.to_vec(),
        })
    }

    /// The job's load, times a ratio.
    fn times(&self, ratio: f64) -> Vec<f64> {
        self.loads_a.iter().map(|load| ratio * load).collect()
    }

    /// Temperatures of each leg in steady state at a ratio to the job's load; `None` as in `Model::at_rest`.
    pub fn at_ratio(&self, shapes: &[Shape], ratio: f64) -> Result<Option<Vec<LegAt>>, Said> {
        let currents_a = &self.times(ratio)[..];
        let found = unless_runaway(self.joint.at_rest(currents_a))?;
        let mut alone = Vec::new();
        for (star, current) in self.alone.iter().zip(currents_a) {
            alone.push(unless_runaway(star.at_rest(&[*current]))?);
        }
        let both = found.zip(alone.into_iter().collect::<Option<Vec<_>>>());
        let legs = both.map(|(joint, alone)| self.legs_at(shapes, currents_a, &joint, &alone));
        Ok(legs.filter(|legs| legs.iter().all(LegAt::is_within)))
    }

    /// Temperatures of the hottest metal inside each body in steady state; `None` in thermal runaway.
    pub fn bodies_degc(
        &self,
        shapes: &[Shape],
        currents_a: &[f64],
    ) -> Result<Option<Vec<f64>>, Said> {
        let found = unless_runaway(self.joint.at_rest(currents_a))?;
        let degc = |leg: usize, found: &Rises| {
            let end_m = shapes[leg].body.end_m;
            let hottest = self.joint.hottest_core(found, leg, |z| z < end_m);
            hottest.map_or(f64::NEG_INFINITY, |(_, degc)| degc)
        };
        let legs = 0..shapes.len();
        Ok(found.map(|found| legs.map(|leg| degc(leg, &found)).collect()))
    }

    /// Ratio to the job's load of the load that brings the metal of a leg inside its body to a temperature, as of the plan.
    pub fn load_to_degc(
        &self,
        shapes: &[Shape],
        leg: usize,
        degc: f64,
    ) -> Result<Option<f64>, Said> {
        let excess = |ratio: f64| {
            let degcs = self.bodies_degc(shapes, &self.times(ratio))?;
            Ok(degcs.map_or(f64::INFINITY, |degcs| degcs[leg] - degc))
        };
        factor_to_limit(excess, RATIO_MOST)
    }

    /// Temperature of a leg's hottest conductor in its cable without a joint in steady state; `None` in thermal runaway.
    pub fn cable_degc(&self, leg: usize, current_a: f64) -> Result<Option<f64>, Said> {
        let star = &self.alone[leg];
        let found = unless_runaway(star.at_rest(&[current_a]))?;
        let hottest = |found: Rises| star.hottest_watched_of(&found, 0);
        Ok(found.and_then(hottest).map(|(_, degc)| degc))
    }

    /// Temperatures of each leg after an emergency of so many seconds; `None` as in `Model::at_rest`.
    pub fn after(
        &self,
        shapes: &[Shape],
        currents_a: &[f64],
        time_s: f64,
    ) -> Result<Option<Vec<LegAt>>, Said> {
        let joint = self.joint.course(currents_a).map_err(said)?.after(time_s);
        let mut alone = Vec::new();
        for (star, current) in self.alone.iter().zip(currents_a) {
            alone.push(star.course(&[*current]).map_err(said)?.after(time_s));
        }
        let legs = self.legs_at(shapes, currents_a, &joint, &alone);
        Ok(Some(legs).filter(|legs| legs.iter().all(LegAt::is_within)))
    }

    fn legs_at(
        &self,
        shapes: &[Shape],
        currents_a: &[f64],
        joint: &Rises,
        alone: &[Rises],
    ) -> Vec<LegAt> {
        let legs = shapes.iter().enumerate();
        legs.map(|(leg, shape)| {
            let core = self.joint.along_core(joint, leg);
            let without = self.alone[leg].along_core(&alone[leg], 0);
            let rubber = self.joint.hottest_watched_of(joint, leg);
            leg_at(shape, currents_a[leg], &core, &without, rubber)
        })
        .collect()
    }

    /// Estimated error of a state with these currents, A for each leg, K.
    pub fn error_k(&self, currents_a: &[f64]) -> f64 {
        self.joint.error_k(currents_a)
    }

    /// Ageing of a leg's rubber in an emergency, in hours at the reference.
    ///
    /// Simpson's rule over the square root of the time, in [`AGEING_STEPS`] steps.
    ///
    /// # Accuracy
    /// 4e-4 of the ageing, by which the trapezoidal rule over the same steps differs in the examples; besides that of the temperatures.
    pub fn aged_h(
        &self,
        leg: usize,
        ageing: &Ageing,
        currents_a: &[f64],
        time_s: f64,
    ) -> Result<f64, Said> {
        let course = self.joint.course(currents_a).map_err(said)?;
        let mut sum = 0.0;
        for step in 1..=AGEING_STEPS {
            let root = f64::from(step) / f64::from(AGEING_STEPS);
            let rises = course.after(time_s * root * root);
            let rubber = self.joint.hottest_watched_of(&rises, leg);
            let rubber = rubber.or_else(|| self.joint.hottest_core(&rises, leg, |_| true));
            let rate = ageing_ratio(ageing, rubber.map_or(f64::NAN, |(_, degc)| degc));
            let weight = match step {
                AGEING_STEPS => 1.0,
                _ if step % 2 == 1 => 4.0,
                _ => 2.0,
            };
            sum += weight * rate * 2.0 * root;
        }
        Ok(sum * time_s / (3.0 * f64::from(AGEING_STEPS)) / 3600.0)
    }

    /// Times for which currents, A for each leg, may flow from the job's load in steady state until each limit is reached.
    ///
    /// # Accuracy
    /// 1e-6 of the time, besides the error of the states.
    pub fn lasts(
        &self,
        shapes: &[Shape],
        currents_a: &[f64],
        limits: &[LegLimit],
    ) -> Result<Vec<Lasts>, Said> {
        let run = self.run(shapes, currents_a, limits)?;
        Ok(limits.iter().map(|limit| run.lasts(limit)).collect())
    }

    /// Index of the limit that is reached first, and the time until then, s; `None` if none is reached within [`LONGEST_S`].
    pub fn first_to_limit_s(
        &self,
        shapes: &[Shape],
        currents_a: &[f64],
        limits: &[LegLimit],
    ) -> Result<Option<(usize, f64)>, Said> {
        let run = self.run(shapes, currents_a, limits)?;
        let mut best: Option<(usize, f64)> = None;
        for (index, limit) in limits.iter().enumerate() {
            let until_s = best.map_or(LONGEST_S, |(_, best)| best);
            if let Some(s) = run.until_s(limit, until_s)
                && best.is_none_or(|(_, best)| s < best)
            {
                best = Some((index, s));
            }
        }
        Ok(best)
    }

    fn run<'l>(
        &'l self,
        shapes: &'l [Shape],
        currents_a: &[f64],
        limits: &[LegLimit],
    ) -> Result<Run<'l>, Said> {
        let rest = unless_runaway(self.joint.at_rest(currents_a))?;
        // If no current falls, no temperature falls: one that rests below its limit never reaches it.
        let none_falls = currents_a
            .iter()
            .zip(&self.loads_a)
            .all(|(i, was)| i >= was);
        let mut run = Run {
            star: &self.joint,
            shapes,
            course: None,
            rest,
            none_falls,
        };
        if limits
            .iter()
            .any(|limit| !(none_falls && run.is_borne(limit)))
        {
            run.course = Some(self.joint.course(currents_a).map_err(said)?);
        }
        Ok(run)
    }
}

/// Currents that flow from the job's load in steady state.
struct Run<'l> {
    star: &'l Projected,
    shapes: &'l [Shape],
    /// `None` if no limit asks for it.
    course: Option<Course>,
    /// Steady state at the end, if there is one.
    rest: Option<Rises>,
    none_falls: bool,
}

impl Run<'_> {
    /// Distance above a limit, K; infinite for a temperature that is no number any more.
    fn excess_k(&self, limit: &LegLimit, rises: &Rises) -> f64 {
        let within_m = if limit.is_cable {
            f64::INFINITY
        } else {
            self.shapes[limit.leg].body.end_m
        };
        let hottest = self.star.hottest_core(rises, limit.leg, |z| z < within_m);
        let degc = hottest.map_or(f64::NEG_INFINITY, |(_, degc)| degc);
        if degc.is_nan() {
            return f64::INFINITY;
        }
        degc - limit.degc
    }

    fn is_borne(&self, limit: &LegLimit) -> bool {
        let rest = self.rest.as_ref();
        rest.is_some_and(|rest| self.excess_k(limit, rest) <= 0.0)
    }

    fn lasts(&self, limit: &LegLimit) -> Lasts {
        match self.until_s(limit, LONGEST_S) {
            Some(s) => Lasts::Seconds(s),
            None if self.is_borne(limit) => Lasts::ForEver,
            None => Lasts::Longer,
        }
    }

    /// Time until a limit is reached, s; `None` if it is not reached before `most_s`.
    fn until_s(&self, limit: &LegLimit, most_s: f64) -> Option<f64> {
        let course = self.course.as_ref()?;
        if self.none_falls && self.is_borne(limit) {
            return None;
        }
        let excess = |time_s: f64| self.excess_k(limit, &course.after(time_s));
        let (mut low, mut high) = ((0.0, excess(0.0)), FIRST_S.min(most_s));
        if low.1 > 0.0 {
            return Some(0.0);
        }
        loop {
            let above = excess(high);
            if above > 0.0 {
                return Some(crossing(low, (high, above), excess));
            }
            if high >= most_s {
                return None;
            }
            low = (high, above);
            high = (2.0 * high).min(most_s);
        }
    }
}

/// Time at which an excess passes 0 between two times, by secants; the time before, where it is not above 0.
fn crossing(mut low: (f64, f64), mut high: (f64, f64), excess: impl Fn(f64) -> f64) -> f64 {
    while high.0 - low.0 > CLOSE_RATIO * high.0 {
        let before = high.0 - low.0;
        let share = -low.1 / (high.1 - low.1);
        if share.is_finite() {
            // A little beyond the secant's point, on both sides, so that both ends close in.
            for off in [-0.25 * CLOSE_RATIO * high.0, 0.25 * CLOSE_RATIO * high.0] {
                let at = low.0 + share * before + off;
                if at > low.0 && at < high.0 {
                    cut(&mut low, &mut high, at, &excess);
                }
            }
        }
        if high.0 - low.0 > 0.5 * before {
            let middle = 0.5 * (low.0 + high.0);
            cut(&mut low, &mut high, middle, &excess);
        }
    }
    low.0
}

fn cut(low: &mut (f64, f64), high: &mut (f64, f64), at: f64, excess: impl Fn(f64) -> f64) {
    let found = excess(at);
    *(if found > 0.0 { high } else { low }) = (at, found);
}
