//! Model: the star of a joint's legs, and its temperatures at rest and in time.

use super::shape::{Shape, Watch};
use super::{Aged, Done, HOTTEST_DEGC, LONGEST_S, LegSubject, LegWarm, ageing_ratio};
use crate::catalogue::Ageing;
use crate::job::Job;
use jointwright_numerics::heat::HeatError;
use jointwright_numerics::ladder::{Core, Hub, Ladder, LadderError, Spot, Star, Temperatures};

/// Loads are looked for up to so many times the job's.
pub const RATIO_MOST: f64 = 20.0;
/// Times, of the whole, at which the ageing of an emergency is added up.
const AGEING_STEPS: usize = 24;

/// First time at which a state of an emergency is looked at, s.
const FIRST_S: f64 = 0.25;
/// Parts into which an interval is cut in which a limit is passed.
const N_PARTS: u32 = 12;

/// A joint under load: its legs as they lie, where they meet, what they carry.
#[derive(Clone, Debug)]
pub struct Model {
    shapes: Vec<Shape>,
    hub: Hub,
    /// Continuous loads, A.
    pub loads_a: Vec<f64>,
    /// Emergency loads, A, and how long they last, s; or why there are none.
    pub emergency_a_s: Result<(Vec<f64>, f64), String>,
}

/// Temperatures of one leg, °C.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LegAt {
    /// Load, A.
    pub load_a: f64,
    /// Hottest metal inside the body.
    pub joint_degc: f64,
    /// Where that is from the joint's middle, m.
    pub joint_at_m: f64,
    /// Hottest rubber of body and adapter.
    pub rubber_degc: f64,
    /// Hottest conductor that this leg's cable, going through without a joint, has where the joint is.
    pub alone_degc: f64,
    /// Hottest conductor of the cable beyond the body, what the seal covers included.
    pub cable_degc: f64,
    /// The coldest of what surrounds the leg: rises counted from it are the largest.
    pub surrounding_degc: f64,
}

/// A temperature that the metal of a leg may not pass.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LegLimit {
    /// Place of the leg among the legs.
    pub leg: usize,
    /// The temperature, °C.
    pub degc: f64,
    /// Whether it is that of the whole cable, else that of the metal inside the body.
    pub is_cable: bool,
}

impl LegAt {
    /// Whether it is a state that is worth saying.
    fn is_within(&self) -> bool {
        let hottest = self.joint_degc.max(self.cable_degc);
        hottest.is_finite() && hottest <= HOTTEST_DEGC
    }
}

/// How long a load may flow.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Lasts {
    /// So long, s; 0 where the load before it is too much already.
    Seconds(f64),
    /// Longer than is looked at, [`LONGEST_S`], but not for ever.
    Longer,
    /// The limit is never reached.
    ForEver,
}

/// Temperatures along one leg: place from the joint's middle, m, and °C.
#[derive(Clone, Debug, PartialEq)]
pub struct Along {
    /// Of the metal.
    pub core_degc: Vec<(f64, f64)>,
    /// Of the outside.
    pub outside_degc: Vec<(f64, f64)>,
    /// Of the metal of a cable without a joint.
    pub alone_degc: Vec<(f64, f64)>,
    /// Where the body and where the joint ends, m.
    pub ends_m: (f64, f64),
}

/// Ladders of one joint, each for what it watches.
struct Ladders {
    plain: Ladder,
    alone: Vec<Ladder>,
    rubber: Vec<Ladder>,
}

/// A state, unless losses outgrow the cooling.
fn unless_runaway<T>(found: Result<T, LadderError>) -> Result<Option<T>, String> {
    match found {
        Ok(found) => Ok(Some(found)),
        Err(LadderError::Heat(HeatError::Runaway)) => Ok(None),
        Err(why) => Err(said(why)),
    }
}

fn said(why: LadderError) -> String {
    format!("its temperatures cannot be computed: {why}")
}

impl Model {
    pub(super) fn new(
        shapes: Vec<Shape>,
        hub: Hub,
        loads_a: Vec<f64>,
        emergency_a_s: Result<(Vec<f64>, f64), String>,
    ) -> Result<Model, String> {
        let model = Model {
            shapes,
            hub,
            loads_a,
            emergency_a_s,
        };
        // What no ladder can be made of is refused at once.
        model.plain().map(|_| model)
    }

    fn star(&self, watch: impl Fn(usize) -> Watch) -> Star {
        let arms = self.shapes.iter().enumerate();
        Star {
            arms: arms.map(|(leg, shape)| shape.arm(watch(leg))).collect(),
            hub: self.hub,
        }
    }

    /// The star of the joint, nothing in it watched: for other ways of solving it.
    pub fn bare_star(&self) -> Star {
        self.star(|_| Watch::Nothing)
    }

    fn plain(&self) -> Result<Ladder, String> {
        Ladder::new(self.bare_star()).map_err(said)
    }

    /// The cable of a leg as if it went through without a joint, watched.
    fn alone(&self, leg: usize) -> Result<Ladder, String> {
        let star = Star {
            arms: vec![self.shapes[leg].arm_alone()],
            hub: Hub::default(),
        };
        Ladder::new(star).map_err(said)
    }

    fn watching(&self, leg: usize, watch: Watch) -> Result<Ladder, String> {
        let star = self.star(|of| if of == leg { watch } else { Watch::Nothing });
        Ladder::new(star).map_err(said)
    }

    fn ladders(&self) -> Result<Ladders, String> {
        Ok(Ladders {
            plain: self.plain()?,
            alone: (0..self.shapes.len())
                .map(|leg| self.alone(leg))
                .collect::<Result<_, _>>()?,
            rubber: (0..self.shapes.len())
                .map(|leg| self.watching(leg, Watch::Rubber))
                .collect::<Result<_, _>>()?,
        })
    }

    fn times(&self, ratio: f64) -> Vec<f64> {
        self.loads_a.iter().map(|load| ratio * load).collect()
    }

    /// Temperatures at rest at so many times the job's load, leg by leg; nothing where its losses outgrow its cooling.
    ///
    /// # Errors
    /// That it cannot be solved.
    pub fn at_rest(&self, ratio: f64) -> Result<Option<Vec<LegAt>>, String> {
        let currents = self.times(ratio);
        let mut ladders = self.ladders()?;
        let found = unless_runaway(ladders.plain.steady(&currents))?;
        let mut alone = Vec::new();
        for (ladder, current) in ladders.alone.iter_mut().zip(&currents) {
            alone.push(unless_runaway(ladder.steady(&[*current]))?);
        }
        let both = found.zip(alone.into_iter().collect::<Option<Vec<_>>>());
        let legs = both.map(|(found, alone)| self.legs_at(&ladders, &currents, &found, &alone));
        Ok(legs.filter(|legs| legs.iter().all(LegAt::is_within)))
    }

    fn legs_at(
        &self,
        ladders: &Ladders,
        currents_a: &[f64],
        found: &Temperatures,
        alone: &[Temperatures],
    ) -> Vec<LegAt> {
        let legs = self.shapes.iter().enumerate();
        legs.map(|(leg, shape)| {
            let core = ladders.plain.along_core(found, leg);
            let (joint_at_m, joint_degc) = hottest(&core, |z| z < shape.body.end_m);
            let (_, cable_degc) = hottest(&core, |z| z >= shape.body.end_m);
            let alone = ladders.alone[leg].along_core(&alone[leg], 0);
            let rubber = ladders.rubber[leg].hottest_watched(found);
            let surroundings = shape.stretches.iter().map(|stretch| stretch.degc);
            LegAt {
                load_a: currents_a[leg],
                joint_degc,
                joint_at_m,
                rubber_degc: rubber.map_or(joint_degc, |(.., degc)| degc),
                alone_degc: hottest(&alone, |z| z < shape.body.end_m).1,
                cable_degc,
                surrounding_degc: surroundings.fold(f64::INFINITY, f64::min),
            }
        })
        .collect()
    }

    /// Temperatures along the legs at rest at so many times the job's load; nothing where its losses outgrow its cooling.
    ///
    /// # Errors
    /// As [`Model::at_rest`].
    pub fn along(&self, ratio: f64) -> Result<Option<Vec<Along>>, String> {
        let currents = self.times(ratio);
        let mut plain = self.plain()?;
        let Some(found) = unless_runaway(plain.steady(&currents))? else {
            return Ok(None);
        };
        let mut along = Vec::new();
        for (leg, shape) in self.shapes.iter().enumerate() {
            let mut without = self.alone(leg)?;
            let Some(alone) = unless_runaway(without.steady(&currents[leg..=leg]))? else {
                return Ok(None);
            };
            along.push(Along {
                core_degc: plain.along_core(&found, leg),
                outside_degc: plain.along_outside(&found, leg),
                alone_degc: without.along_core(&alone, 0),
                ends_m: (shape.body.end_m, shape.joint_end_m()),
            });
        }
        Ok(Some(along))
    }

    /// How many times the job's load brings the metal of a leg inside its body to a temperature; nothing where none up to [`RATIO_MOST`] does, or no load is too much.
    ///
    /// # Errors
    /// That it cannot be solved.
    pub fn load_to_degc(&self, leg: usize, degc: f64) -> Result<Option<f64>, String> {
        let mut ladder = self.watching(leg, Watch::Metal)?;
        let found = ladder.load_to_degc(&self.loads_a, Spot::Watched, degc);
        Ok(found.map_err(said)?.filter(|ratio| *ratio <= RATIO_MOST))
    }

    fn cable_load_to_degc(&self, leg: usize, degc: f64) -> Result<Option<f64>, String> {
        let mut ladder = self.alone(leg)?;
        let found = ladder.load_to_degc(&self.loads_a[leg..=leg], Spot::Watched, degc);
        Ok(found.map_err(said)?.filter(|ratio| *ratio <= RATIO_MOST))
    }

    /// How long currents may flow, A for each leg, from the job's load at rest, before each limit is reached.
    ///
    /// # Accuracy
    /// 2e-3 of the time, beside the ladder's own.
    ///
    /// # Errors
    /// That it cannot be solved.
    pub fn lasts(&self, currents_a: &[f64], limits: &[LegLimit]) -> Result<Vec<Lasts>, String> {
        let mut course = self.course(currents_a, limits)?;
        (0..limits.len()).map(|index| course.lasts(index)).collect()
    }

    /// The limit that is reached first, its place in the list, and when, s; nothing where none is within [`LONGEST_S`].
    ///
    /// # Accuracy
    /// As [`Model::lasts`].
    ///
    /// # Errors
    /// As [`Model::lasts`].
    pub fn first_to_limit_s(
        &self,
        currents_a: &[f64],
        limits: &[LegLimit],
    ) -> Result<Option<(usize, f64)>, String> {
        let mut course = self.course(currents_a, limits)?;
        let firsts: Vec<Option<usize>> = course.asked.iter().map(|of| course.first(of)).collect();
        let Some(least) = firsts.iter().flatten().min().copied() else {
            return Ok(None);
        };
        let mut best: Option<(usize, f64)> = None;
        for (index, first) in firsts.iter().enumerate() {
            if *first == Some(least)
                && let Lasts::Seconds(s) = course.lasts(index)?
                && best.is_none_or(|(_, best)| s < best)
            {
                best = Some((index, s));
            }
        }
        Ok(best)
    }

    /// The states of an emergency, doubling by doubling, until every leg is above its temperature.
    fn course(&self, currents_a: &[f64], limits: &[LegLimit]) -> Result<Course, String> {
        let mut ladder = self.plain()?;
        let start = ladder.steady(&self.loads_a).map_err(said)?;
        let rest = unless_runaway(ladder.steady(currents_a))?;
        let asked = limits.iter().map(|limit| Asked {
            limit_degc: limit.degc,
            core: ladder.core(limit.leg),
            within_m: if limit.is_cable {
                f64::INFINITY
            } else {
                self.shapes[limit.leg].body.end_m
            },
        });
        let asked: Vec<Asked> = asked.collect();
        let times = doublings(FIRST_S, LONGEST_S);
        let is_enough = |state: &Temperatures| asked.iter().all(|of| of.is_above(state));
        let later = ladder.after_until(&start, currents_a, &times, is_enough);
        let states =
            std::iter::once((0.0, start)).chain(times.into_iter().zip(later.map_err(said)?));
        Ok(Course {
            states: states.collect(),
            currents_a: currents_a.to_vec(),
            ladder,
            rest,
            asked,
        })
    }

    /// Temperatures after an emergency of so many seconds, from the job's load at rest; nothing where they grow beyond [`HOTTEST_DEGC`].
    fn after_emergency(
        &self,
        emergency_a: &[f64],
        time_s: f64,
    ) -> Result<Option<Vec<LegAt>>, String> {
        let mut ladders = self.ladders()?;
        let Some(found) = last(&mut ladders.plain, &self.loads_a, emergency_a, time_s)? else {
            return Ok(None);
        };
        let mut alone = Vec::new();
        for (leg, ladder) in ladders.alone.iter_mut().enumerate() {
            let (load, emergency) = (&self.loads_a[leg..=leg], &emergency_a[leg..=leg]);
            let Some(state) = last(ladder, load, emergency, time_s)? else {
                return Ok(None);
            };
            alone.push(state);
        }
        let legs = self.legs_at(&ladders, emergency_a, &found, &alone);
        Ok(Some(legs).filter(|legs| legs.iter().all(LegAt::is_within)))
    }

    /// What an emergency uses up of a leg's rubber, in hours at the reference of its ageing.
    fn aged_h(
        &self,
        leg: usize,
        emergency_a: &[f64],
        time_s: f64,
        ageing: &Ageing,
    ) -> Result<f64, String> {
        let mut ladder = self.watching(leg, Watch::Rubber)?;
        let start = ladder.steady(&self.loads_a).map_err(said)?;
        let place = |step: usize| time_s * (step as f64 / AGEING_STEPS as f64).powi(2);
        let times: Vec<f64> = (1..=AGEING_STEPS).map(place).collect();
        let found = ladder.after(&start, emergency_a, &times).map_err(said)?;
        let states = std::iter::once(&start).chain(&found);
        let rates: Vec<f64> = states
            .map(|state| ageing_ratio(ageing, ladder.at_spot_degc(state, Spot::Watched)))
            .collect();
        let mut hours = 0.0;
        for step in 0..AGEING_STEPS {
            let length = place(step + 1) - place(step);
            hours += 0.5 * (rates[step] + rates[step + 1]) * length / 3600.0;
        }
        Ok(hours)
    }

    /// How fast the load, and how much an emergency, uses a leg's rubber up.
    fn aged(
        &self,
        leg: usize,
        ageing: &Ageing,
        at_load: &LegAt,
        emergency: Option<&(Vec<f64>, f64)>,
    ) -> Result<Aged, String> {
        let of_emergency =
            emergency.map(|(currents, time_s)| self.aged_h(leg, currents, *time_s, ageing));
        Ok(Aged {
            constants: ageing.clone(),
            at_load_ratio: ageing_ratio(ageing, at_load.rubber_degc),
            emergency_h: of_emergency.transpose()?,
        })
    }

    /// The same joint with connectors of so many times the resistance.
    pub fn with_connectors(&self, ratio: f64) -> Model {
        let mut other = self.clone();
        for shape in &mut other.shapes {
            shape.connector.loss.at20_ohm_per_m *= ratio;
        }
        other
    }

    /// How long the job's emergency may last before each leg's body comes to its limit; nothing without one.
    fn lasting(
        &self,
        subjects: &[LegSubject<'_>],
        has_rest: bool,
    ) -> Result<Vec<Option<Lasts>>, String> {
        let mut found = vec![None; subjects.len()];
        let (Ok((currents, _)), true) = (&self.emergency_a_s, has_rest) else {
            return Ok(found);
        };
        let limits = subjects.iter().enumerate().filter_map(|(leg, subject)| {
            let degc = subject.chosen.body?.conductor_emergency_greatest_degc?;
            Some(LegLimit {
                leg,
                degc,
                is_cable: false,
            })
        });
        let limits: Vec<LegLimit> = limits.collect();
        for (limit, lasts) in limits.iter().zip(self.lasts(currents, &limits)?) {
            found[limit.leg] = Some(lasts);
        }
        Ok(found)
    }

    pub(super) fn answer(
        self,
        job: &Job,
        subjects: &[LegSubject<'_>],
        ohms: Vec<(f64, f64)>,
    ) -> Result<Done, String> {
        let at_load = self.at_rest(1.0)?;
        let at_emergency = match (&self.emergency_a_s, &at_load) {
            (Ok((currents, time_s)), Some(_)) => Ok(self.after_emergency(currents, *time_s)?),
            (Ok(_), None) => Ok(None),
            (Err(why), _) => Err(why.clone()),
        };
        let lasts = self.lasting(subjects, at_load.is_some())?;
        // What runs away ages without end.
        let emergency = match (&self.emergency_a_s, &at_emergency) {
            (Ok(emergency), Ok(Some(_))) => Some(emergency),
            _ => None,
        };
        let mut legs = Vec::new();
        for ((index, subject), connector_ohm) in subjects.iter().enumerate().zip(ohms) {
            let Some(body) = subject.chosen.body else {
                return Err(format!("leg {}: the body is left open", subject.leg.id));
            };
            let limits_degc = (
                body.conductor_greatest_degc,
                body.conductor_emergency_greatest_degc,
            );
            let load_to_limit_ratio = match limits_degc.0 {
                Some(degc) => self.load_to_degc(index, degc)?,
                None => None,
            };
            let cable_load_to_limit_ratio = match job.duty.conductor_greatest_degc {
                Some(degc) => self.cable_load_to_degc(index, degc)?,
                None => None,
            };
            let emergency_lasts = lasts[index];
            let aged = match (&body.ageing, &at_load) {
                (Some(ageing), Some(at_load)) => {
                    Some(self.aged(index, ageing, &at_load[index], emergency)?)
                }
                _ => None,
            };
            legs.push(LegWarm {
                leg: subject.leg.id.clone(),
                body: body.head.id.clone(),
                limits_degc,
                load_to_limit_ratio,
                cable_load_to_limit_ratio,
                emergency_lasts,
                connector_ohm,
                aged,
            });
        }
        Ok(Done {
            at_load_twice: self.with_connectors(2.0).at_rest(1.0)?,
            at_load,
            at_emergency,
            legs,
            model: self,
        })
    }
}

/// State after a time, from the loads at rest; nothing where the metal of any arm grows beyond [`HOTTEST_DEGC`] on the way.
fn last(
    ladder: &mut Ladder,
    loads_a: &[f64],
    currents_a: &[f64],
    time_s: f64,
) -> Result<Option<Temperatures>, String> {
    let start = ladder.steady(loads_a).map_err(said)?;
    let cores: Vec<Core> = (0..currents_a.len()).map(|arm| ladder.core(arm)).collect();
    let is_beyond = |state: &Temperatures| {
        cores.iter().any(|core| {
            let degc = hottest(&core.along(state), |_| true).1;
            degc.is_nan() || degc > HOTTEST_DEGC
        })
    };
    let times = doublings(FIRST_S.min(time_s), time_s);
    let found = ladder.after_until(&start, currents_a, &times, is_beyond);
    let mut found = found.map_err(said)?;
    Ok(found.pop().filter(|state| !is_beyond(state)))
}

/// Times from a first to a last, each twice the one before it, but for the last, s.
fn doublings(first_s: f64, last_s: f64) -> Vec<f64> {
    if first_s >= last_s {
        return vec![last_s];
    }
    let mut times = vec![first_s];
    let mut next = 2.0 * first_s;
    while next < last_s {
        times.push(next);
        next *= 2.0;
    }
    times.push(last_s);
    times
}

/// A leg whose metal may come to a temperature.
struct Asked {
    limit_degc: f64,
    core: Core,
    within_m: f64,
}

impl Asked {
    fn degc(&self, state: &Temperatures) -> f64 {
        hottest(&self.core.along(state), |z| z < self.within_m).1
    }

    fn is_above(&self, state: &Temperatures) -> bool {
        let degc = self.degc(state);
        degc.is_nan() || degc > self.limit_degc
    }
}

/// States of an emergency at some times, and that at rest where there is one.
struct Course {
    ladder: Ladder,
    currents_a: Vec<f64>,
    rest: Option<Temperatures>,
    states: Vec<(f64, Temperatures)>,
    asked: Vec<Asked>,
}

impl Course {
    /// Which state is the first above a temperature.
    fn first(&self, of: &Asked) -> Option<usize> {
        self.states.iter().position(|(_, state)| of.is_above(state))
    }

    fn lasts(&mut self, index: usize) -> Result<Lasts, String> {
        let of = &self.asked[index];
        let Some(first) = self.first(of) else {
            let is_borne = self.rest.as_ref().is_some_and(|rest| !of.is_above(rest));
            return Ok(if is_borne {
                Lasts::ForEver
            } else {
                Lasts::Longer
            });
        };
        if first == 0 {
            return Ok(Lasts::Seconds(0.0));
        }
        // States at equal steps within the doubling, and a straight line between the last below and the first above.
        let ((low, before), (high, above)) = (&self.states[first - 1], &self.states[first]);
        let step = (high - low) / f64::from(N_PARTS);
        let times: Vec<f64> = (1..N_PARTS).map(|part| step * f64::from(part)).collect();
        let is_enough = |state: &Temperatures| of.is_above(state);
        let found = self
            .ladder
            .after_until(before, &self.currents_a, &times, is_enough);
        let mut degcs = vec![of.degc(before)];
        degcs.extend(found.map_err(said)?.iter().map(|state| of.degc(state)));
        degcs.push(of.degc(above));
        let after = degcs
            .iter()
            .position(|degc| degc.is_nan() || *degc > of.limit_degc);
        let after = after.unwrap_or(degcs.len() - 1).max(1);
        let (t0, t1) = (degcs[after - 1], degcs[after]);
        let share = (of.limit_degc - t0) / (t1 - t0);
        let share = if share.is_finite() {
            share.clamp(0.0, 1.0)
        } else {
            0.0
        };
        Ok(Lasts::Seconds(low + step * ((after - 1) as f64 + share)))
    }
}

/// Hottest of the places that count, and its temperature.
fn hottest(along: &[(f64, f64)], counts: impl Fn(f64) -> bool) -> (f64, f64) {
    let places = along.iter().copied().filter(|(z, _)| counts(*z));
    let best = places.max_by(|a, b| a.1.total_cmp(&b.1));
    best.unwrap_or((0.0, f64::NEG_INFINITY))
}
