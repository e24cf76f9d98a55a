//! Model: the star of a joint's legs, and its temperatures in steady state and in time.

use super::shape::{Shape, Watch};
use super::{
    Aged, Contacts, HOTTEST_DEGC, Input, LONGEST_S, LegRow, LegWarm, WarmJoint, ageing_ratio,
};
use crate::catalogue::Ageing;
use crate::said::{HeatCannot, Said, SoilSaid};
use jointwright_numerics::heat::HeatError;
use jointwright_numerics::ladder::{Core, Hub, Ladder, LadderError, Spot, Star, Temperatures};

/// Greatest load that is searched, as a ratio to the job's.
pub const RATIO_MOST: f64 = 20.0;
/// Steps into which an emergency is divided to add up its ageing.
const AGEING_STEPS: usize = 24;

/// Most rounds of the iteration for films of still air.
const AIR_ROUNDS: usize = 12;
/// Relative change of every film at which that iteration ends.
const AIR_CLOSE_RATIO: f64 = 1e-4;
/// Least temperature rise for which a film of still air is computed, K.
const AIR_RISE_LEAST_K: f64 = 1.0;

/// First time at which the state of an emergency is computed, s.
const FIRST_S: f64 = 0.25;
/// Parts into which the interval is divided in which a limit is passed.
const N_PARTS: u32 = 12;

/// Joint under load: its legs, their hub and their loads.
#[derive(Clone, Debug)]
pub struct Model {
    pub(super) shapes: Vec<Shape>,
    hub: Hub,
    /// Continuous loads, A.
    pub loads_a: Vec<f64>,
    /// Emergency loads, A, and their duration, s; or the reason why there are none.
    pub emergency_a_s: Result<(Vec<f64>, f64), Said>,
}

/// Temperatures of one leg, °C.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LegAt {
    /// Load, A.
    pub load_a: f64,
    /// Temperature of the hottest metal inside the body.
    pub joint_degc: f64,
    /// Place of that metal, from the joint's middle, m.
    pub joint_at_m: f64,
    /// Temperature of the hottest rubber of body and adapter.
    pub rubber_degc: f64,
    /// Temperature of the hottest conductor along the body's length, if this leg's cable went through without a joint.
    pub alone_degc: f64,
    /// Place of that conductor, from the joint's middle, m.
    pub alone_at_m: f64,
    /// Temperature of the hottest conductor of the cable beyond the body, including the part under the seal.
    pub cable_degc: f64,
    /// Coldest temperature of the leg's surroundings: temperature rises above it are the largest.
    pub surrounding_degc: f64,
}

/// Temperature that the metal of a leg may not exceed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LegLimit {
    /// Index of the leg among the legs.
    pub leg: usize,
    /// The temperature, °C.
    pub degc: f64,
    /// Whether it applies to the metal of the whole cable, and not only to the metal inside the body.
    pub is_cable: bool,
}

impl LegAt {
    /// Whether the state is finite and no metal is hotter than [`HOTTEST_DEGC`].
    fn is_within(&self) -> bool {
        let hottest = self.joint_degc.max(self.cable_degc);
        hottest.is_finite() && hottest <= HOTTEST_DEGC
    }
}

/// Time for which a load may flow.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Lasts {
    /// Time, s; 0 if the load before it already passes the limit.
    Seconds(f64),
    /// Longer than [`LONGEST_S`], the longest time computed, but not for ever.
    Longer,
    /// The limit is never reached.
    ForEver,
}

/// Temperatures along one leg: place from the joint's middle, m, and °C.
#[derive(Clone, Debug, PartialEq)]
pub struct TemperatureProfile {
    /// Temperatures of the metal.
    pub core_degc: Vec<(f64, f64)>,
    /// Temperatures of the outer surface.
    pub outside_degc: Vec<(f64, f64)>,
    /// Temperatures of the metal of a cable without a joint.
    pub alone_degc: Vec<(f64, f64)>,
    /// End of the body and end of the joint, m.
    pub ends_m: (f64, f64),
}

/// Ladders of one joint: all its legs, with their rubber watched, and each leg's cable without a joint.
pub(super) struct Ladders {
    pub joint: Ladder,
    pub alone: Vec<Ladder>,
}

/// Joint in steady state.
pub(super) struct Rest {
    pub joint: Temperatures,
    pub alone: Vec<Temperatures>,
    pub legs: Vec<LegAt>,
}

/// Returns a state; `None` in thermal runaway (the losses outgrow the cooling).
pub(super) fn unless_runaway<T>(found: Result<T, LadderError>) -> Result<Option<T>, Said> {
    match found {
        Ok(found) => Ok(Some(found)),
        Err(LadderError::Heat(HeatError::Runaway)) => Ok(None),
        Err(why) => Err(said(why)),
    }
}

pub(super) fn said(why: LadderError) -> Said {
    let why = Said::from(&why);
    HeatCannot::NotComputed { why }.into()
}

impl Model {
    pub(super) fn new(
        shapes: Vec<Shape>,
        hub: Hub,
        loads_a: Vec<f64>,
        emergency_a_s: Result<(Vec<f64>, f64), Said>,
    ) -> Result<(Model, Ladders), Said> {
        let mut model = Model {
            shapes,
            hub,
            loads_a,
            emergency_a_s,
        };
        // A shape of which no ladder can be made is refused at once.
        let joint = model.joint()?;
        let joint = model.settle_air(joint)?;
        let alone = model.alones()?;
        Ok((model, Ladders { joint, alone }))
    }

    /// Iterates the films of still air at the job's load.
    ///
    /// Each is computed for the least temperature rise and the greatest diameter along its stretch, which give the smallest film.
    /// Returns the ladder of the joint with the films found.
    fn settle_air(&mut self, mut ladder: Ladder) -> Result<Ladder, Said> {
        let has_air = |shape: &Shape| shape.stretches.iter().any(|of| of.air.is_some());
        if !self.shapes.iter().any(has_air) {
            return Ok(ladder);
        }
        for _ in 0..AIR_ROUNDS {
            let Some(found) = unless_runaway(ladder.steady(&self.loads_a))? else {
                break;
            };
            let mut moved: f64 = 0.0;
            for (leg, shape) in self.shapes.iter_mut().enumerate() {
                let faces = ladder.along_outside(&found, leg);
                let radii = ladder.outside_radii_m(leg);
                let mut from_m = 0.0;
                for stretch in &mut shape.stretches {
                    let until_m = stretch.until_m;
                    let is_in = |z: f64| z >= from_m && z < until_m;
                    if let Some(air) = &mut stretch.air {
                        let rises = faces.iter().filter(|(z, _)| is_in(*z));
                        let rises = rises.map(|(_, degc)| degc - stretch.degc);
                        air.rise_k = rises.fold(f64::INFINITY, f64::min).max(AIR_RISE_LEAST_K);
                        let within = radii.iter().filter(|(z, _)| is_in(*z));
                        air.diameter_m = within.fold(0.0, |most, (_, r)| f64::max(most, 2.0 * r));
                        let film = air.hanging.coefficient(air.diameter_m) * air.rise_k.powf(0.25);
                        moved = moved.max((film / stretch.film_w_per_m2k - 1.0).abs());
                        stretch.film_w_per_m2k = film;
                    }
                    from_m = until_m;
                }
            }
            ladder.exchange(self.watched_star()).map_err(said)?;
            if moved < AIR_CLOSE_RATIO {
                break;
            }
        }
        Ok(ladder)
    }

    /// Messages about the computed films of still air.
    fn air_said(&self, leg: usize, id: &str) -> impl Iterator<Item = Said> {
        let stretches = self.shapes[leg].stretches.iter();
        stretches.filter_map(move |stretch| {
            let air = stretch.air.as_ref()?;
            let film = SoilSaid::AirFilm {
                leg: id.to_owned(),
                what: air.what.clone(),
                film_w_per_m2k: stretch.film_w_per_m2k,
                rise_k: air.rise_k,
                diameter_mm: air.diameter_m * 1e3,
            };
            Some(film.into())
        })
    }

    fn star(&self, watch: impl Fn(usize) -> Watch) -> Star {
        let arms = self.shapes.iter().enumerate();
        Star {
            arms: arms.map(|(leg, shape)| shape.arm(watch(leg))).collect(),
            hub: self.hub,
        }
    }

    /// Star of the joint with no rings watched, for other methods of solution.
    pub fn bare_star(&self) -> Star {
        self.star(|_| Watch::Nothing)
    }

    /// Star of the joint with the rubber of its bodies watched.
    fn watched_star(&self) -> Star {
        self.star(|_| Watch::Rubber)
    }

    fn joint(&self) -> Result<Ladder, Said> {
        Ladder::new(self.watched_star()).map_err(said)
    }

    /// Ladder of a leg's cable as if it went through without a joint, with its metal watched.
    fn alone(&self, leg: usize) -> Result<Ladder, Said> {
        let star = Star {
            arms: vec![self.shapes[leg].arm_alone()],
            hub: Hub::default(),
        };
        Ladder::new(star).map_err(said)
    }

    fn alones(&self) -> Result<Vec<Ladder>, Said> {
        let legs = 0..self.shapes.len();
        legs.map(|leg| self.alone(leg)).collect()
    }

    pub(super) fn ladders(&self) -> Result<Ladders, Said> {
        Ok(Ladders {
            joint: self.joint()?,
            alone: self.alones()?,
        })
    }

    fn times(&self, ratio: f64) -> Vec<f64> {
        self.loads_a.iter().map(|load| ratio * load).collect()
    }

    /// Temperatures of each leg in steady state, at a ratio to the job's load; `None` in thermal runaway, or if a leg gets hotter than [`HOTTEST_DEGC`].
    ///
    /// # Errors
    /// The reason why it cannot be solved.
    pub fn at_rest(&self, ratio: f64) -> Result<Option<Vec<LegAt>>, Said> {
        self.at_currents(&self.times(ratio))
    }

    /// Temperatures of each leg in steady state with these currents, A for each leg; `None` as in [`Model::at_rest`].
    ///
    /// # Errors
    /// The errors of [`Model::at_rest`].
    pub fn at_currents(&self, currents_a: &[f64]) -> Result<Option<Vec<LegAt>>, Said> {
        let mut ladders = self.ladders()?;
        let rest = self.rest(&mut ladders, currents_a)?;
        Ok(rest.map(|rest| rest.legs))
    }

    pub(super) fn at_ratio(
        &self,
        ladders: &mut Ladders,
        ratio: f64,
    ) -> Result<Option<Vec<LegAt>>, Said> {
        let rest = self.rest(ladders, &self.times(ratio))?;
        Ok(rest.map(|rest| rest.legs))
    }

    pub(super) fn rest(
        &self,
        ladders: &mut Ladders,
        currents_a: &[f64],
    ) -> Result<Option<Rest>, Said> {
        let found = unless_runaway(ladders.joint.steady(currents_a))?;
        let mut alone = Vec::new();
        for (ladder, current) in ladders.alone.iter_mut().zip(currents_a) {
            alone.push(unless_runaway(ladder.steady(&[*current]))?);
        }
        let both = found.zip(alone.into_iter().collect::<Option<Vec<_>>>());
        let rest = both.map(|(joint, alone)| Rest {
            legs: self.legs_at(ladders, currents_a, &joint, &alone),
            joint,
            alone,
        });
        Ok(rest.filter(|rest| rest.legs.iter().all(LegAt::is_within)))
    }

    pub(super) fn legs_at(
        &self,
        ladders: &Ladders,
        currents_a: &[f64],
        found: &Temperatures,
        alone: &[Temperatures],
    ) -> Vec<LegAt> {
        let legs = self.shapes.iter().enumerate();
        legs.map(|(leg, shape)| {
            let core = ladders.joint.along_core(found, leg);
            let (joint_at_m, joint_degc) = hottest(&core, |z| z < shape.body.end_m);
            let (_, cable_degc) = hottest(&core, |z| z >= shape.body.end_m);
            let alone = ladders.alone[leg].along_core(&alone[leg], 0);
            let (alone_at_m, alone_degc) = hottest(&alone, |z| z < shape.body.end_m);
            let rubber = ladders.joint.hottest_watched_of(found, leg);
            let surroundings = shape.stretches.iter().map(|stretch| stretch.degc);
            LegAt {
                load_a: currents_a[leg],
                joint_degc,
                joint_at_m,
                rubber_degc: rubber.map_or(joint_degc, |(_, degc)| degc),
                alone_degc,
                alone_at_m,
                cable_degc,
                surrounding_degc: surroundings.fold(f64::INFINITY, f64::min),
            }
        })
        .collect()
    }

    /// Temperatures along the legs in steady state, at a ratio to the job's load; `None` in thermal runaway.
    ///
    /// # Errors
    /// The errors of [`Model::at_rest`].
    pub fn along(&self, ratio: f64) -> Result<Option<Vec<TemperatureProfile>>, Said> {
        self.along_in(&mut self.ladders()?, ratio)
    }

    pub(super) fn along_in(
        &self,
        ladders: &mut Ladders,
        ratio: f64,
    ) -> Result<Option<Vec<TemperatureProfile>>, Said> {
        let currents = self.times(ratio);
        let joint = &mut ladders.joint;
        let Some(found) = unless_runaway(joint.steady(&currents))? else {
            return Ok(None);
        };
        let mut along = Vec::new();
        let legs = self.shapes.iter().zip(&mut ladders.alone).enumerate();
        for (leg, (shape, without)) in legs {
            let Some(alone) = unless_runaway(without.steady(&currents[leg..=leg]))? else {
                return Ok(None);
            };
            along.push(TemperatureProfile {
                core_degc: joint.along_core(&found, leg),
                outside_degc: joint.along_outside(&found, leg),
                alone_degc: without.along_core(&alone, 0),
                ends_m: (shape.body.end_m, shape.joint_end_m()),
            });
        }
        Ok(Some(along))
    }

    /// Ratio to the job's load of the load that brings the metal of a leg inside its body to a temperature; `None` if no load up to [`RATIO_MOST`] does, or if the temperature is exceeded without a load.
    ///
    /// # Errors
    /// The reason why it cannot be solved.
    pub fn load_to_degc(&self, leg: usize, degc: f64) -> Result<Option<f64>, Said> {
        self.joint_to_degc(&mut self.joint()?, leg, degc)
    }

    pub(super) fn joint_to_degc(
        &self,
        ladder: &mut Ladder,
        leg: usize,
        degc: f64,
    ) -> Result<Option<f64>, Said> {
        let currents = |ratio: f64| self.times(ratio);
        self.factor_to_degc(ladder, leg, degc, currents, RATIO_MOST)
    }

    /// Factor at which the metal of a leg inside its body reaches a temperature, if the currents, A, grow with it; `None` if no factor up to `greatest` does.
    pub(super) fn factor_to_degc(
        &self,
        ladder: &mut Ladder,
        leg: usize,
        degc: f64,
        currents_a: impl Fn(f64) -> Vec<f64>,
        greatest: f64,
    ) -> Result<Option<f64>, Said> {
        let within_m = self.shapes[leg].body.end_m;
        let core = ladder.core(leg);
        let joint =
            |_: &Ladder, found: &Temperatures| hottest(&core.along(found), |z| z < within_m).1;
        let found = ladder.factor_to_degc(currents_a, joint, degc, greatest);
        found.map_err(said)
    }

    /// Ratio to the job's load of the load that brings a leg's cable without a joint to a temperature.
    fn cable_to_degc(
        &self,
        ladder: &mut Ladder,
        leg: usize,
        degc: f64,
    ) -> Result<Option<f64>, Said> {
        let found = ladder.load_to_degc(&self.loads_a[leg..=leg], Spot::Watched, degc);
        Ok(found.map_err(said)?.filter(|ratio| *ratio <= RATIO_MOST))
    }

    /// Times for which currents, A for each leg, may flow from a start until each limit is reached.
    ///
    /// # Accuracy
    /// 2e-3 of the time, in addition to the ladder's own error.
    ///
    /// # Errors
    /// The reason why it cannot be solved.
    fn lasts_from(
        &self,
        ladder: &mut Ladder,
        start: &Temperatures,
        currents_a: &[f64],
        limits: &[LegLimit],
    ) -> Result<Vec<Lasts>, Said> {
        let mut course = self.course(ladder, start, currents_a, limits)?;
        (0..limits.len()).map(|index| course.lasts(index)).collect()
    }

    /// Index of the limit that is reached first, and the time until then, s; `None` if none is reached within [`LONGEST_S`].
    ///
    /// # Accuracy
    /// The accuracy of [`Model::lasts_from`].
    ///
    /// # Errors
    /// The errors of [`Model::lasts_from`].
    pub(super) fn first_to_limit_s(
        &self,
        ladder: &mut Ladder,
        start: &Temperatures,
        currents_a: &[f64],
        limits: &[LegLimit],
    ) -> Result<Option<(usize, f64)>, Said> {
        let mut course = self.course(ladder, start, currents_a, limits)?;
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

    /// Computes the states of an emergency at doubled times, until every limit is passed that will be passed.
    fn course<'l>(
        &self,
        ladder: &'l mut Ladder,
        start: &Temperatures,
        currents_a: &[f64],
        limits: &[LegLimit],
    ) -> Result<Course<'l>, Said> {
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
        // If no current falls, no temperature falls: one that rests below its limit never reaches it.
        let none_falls = currents_a
            .iter()
            .zip(&self.loads_a)
            .all(|(i, was)| i >= was);
        let passes = |of: &Asked| {
            let is_borne = rest.as_ref().is_some_and(|rest| !of.is_above(rest));
            !(none_falls && is_borne)
        };
        let passing: Vec<&Asked> = asked.iter().filter(|of| passes(of)).collect();
        let is_enough = |state: &Temperatures| passing.iter().all(|of| of.is_above(state));
        let mut states = vec![(0.0, start.clone())];
        if !is_enough(start) {
            let times = doublings(FIRST_S, LONGEST_S);
            let later = ladder.after_until(start, currents_a, &times, is_enough);
            states.extend(times.into_iter().zip(later.map_err(said)?));
        }
        Ok(Course {
            states,
            currents_a: currents_a.to_vec(),
            ladder,
            rest,
            asked,
        })
    }

    /// Temperatures after an emergency of so many seconds, from the job's load in steady state; `None` if they exceed [`HOTTEST_DEGC`].
    fn after_emergency(
        &self,
        ladders: &mut Ladders,
        rest: &Rest,
        emergency_a: &[f64],
        time_s: f64,
    ) -> Result<Option<Vec<LegAt>>, Said> {
        let Some(found) = last(&mut ladders.joint, &rest.joint, emergency_a, time_s)? else {
            return Ok(None);
        };
        let mut alone = Vec::new();
        for (leg, ladder) in ladders.alone.iter_mut().enumerate() {
            let emergency = &emergency_a[leg..=leg];
            let Some(state) = last(ladder, &rest.alone[leg], emergency, time_s)? else {
                return Ok(None);
            };
            alone.push(state);
        }
        let legs = self.legs_at(ladders, emergency_a, &found, &alone);
        Ok(Some(legs).filter(|legs| legs.iter().all(LegAt::is_within)))
    }

    /// Ageing of each leg's rubber: its rate at the load, and its amount in an emergency.
    fn aged(
        &self,
        ladder: &mut Ladder,
        ageings: &[Option<Ageing>],
        rest: &Rest,
        emergency: Option<&(Vec<f64>, f64)>,
    ) -> Result<Vec<Option<Aged>>, Said> {
        let course = match emergency {
            Some((currents_a, time_s)) if ageings.iter().any(Option::is_some) => {
                let start = rest.joint.clone();
                let share = |step: usize| (step as f64 / AGEING_STEPS as f64).powi(2);
                let times: Vec<f64> = (0..=AGEING_STEPS).map(|k| time_s * share(k)).collect();
                let later = ladder.after(&start, currents_a, &times[1..]);
                let states = std::iter::once(start).chain(later.map_err(said)?);
                Some(times.into_iter().zip(states).collect::<Vec<_>>())
            }
            _ => None,
        };
        // Ageing of the emergency, in hours at the reference (trapezoidal rule).
        let hours = |leg: usize, ageing: &Ageing| {
            let states = course.as_ref()?.iter();
            let rates: Vec<(f64, f64)> = states
                .map(|(time, state)| {
                    let rubber = ladder.hottest_watched_of(state, leg);
                    let degc = rubber.map_or_else(|| ladder.middle_degc(state), |(_, degc)| degc);
                    (*time, ageing_ratio(ageing, degc))
                })
                .collect();
            let of = |pair: &[(f64, f64)]| 0.5 * (pair[0].1 + pair[1].1) * (pair[1].0 - pair[0].0);
            Some(rates.windows(2).map(of).sum::<f64>() / 3600.0)
        };
        let of = |(leg, ageing): (usize, &Option<Ageing>)| {
            let ageing = ageing.as_ref()?;
            Some(Aged {
                constants: ageing.clone(),
                at_load_ratio: ageing_ratio(ageing, rest.legs[leg].rubber_degc),
                emergency_h: hours(leg, ageing),
            })
        };
        Ok(ageings.iter().enumerate().map(of).collect())
    }

    /// Time for which the job's emergency may last until each leg's body reaches its limit; `None` for a leg without a limit, or without an emergency.
    fn lasting(
        &self,
        ladder: &mut Ladder,
        rows: &[LegRow],
        rest: Option<&Rest>,
    ) -> Result<Vec<Option<Lasts>>, Said> {
        let mut found = vec![None; rows.len()];
        let (Ok((currents, _)), Some(rest)) = (&self.emergency_a_s, rest) else {
            return Ok(found);
        };
        let limits = rows.iter().enumerate().filter_map(|(leg, row)| {
            let degc = row.limits_degc.1?;
            Some(LegLimit {
                leg,
                degc,
                is_cable: false,
            })
        });
        let limits: Vec<LegLimit> = limits.collect();
        let lasts = self.lasts_from(ladder, &rest.joint, currents, &limits)?;
        for (limit, lasts) in limits.iter().zip(lasts) {
            found[limit.leg] = Some(lasts);
        }
        Ok(found)
    }

    /// Answers for a leg that do not depend on its state at the load.
    fn leg(
        &self,
        ladders: &mut Ladders,
        input: &Input,
        (index, limits): (usize, &[Option<f64>]),
    ) -> Result<LegWarm, Said> {
        let (row, said) = (&input.rows[index], input.said[index].clone());
        let (id, limits_degc) = (&row.leg, row.limits_degc);
        let load_to_limit_ratio = match limits_degc.0 {
            Some(degc) => self.joint_to_degc(&mut ladders.joint, index, degc)?,
            None => None,
        };
        let cable_load_to_limit_ratio = match input.cable_greatest_degc {
            Some(degc) => self.cable_to_degc(&mut ladders.alone[index], index, degc)?,
            None => None,
        };
        let air = self.air_said(index, id);
        Ok(LegWarm {
            leg: id.clone(),
            body: row.body.clone(),
            limits_degc,
            load_to_limit_ratio,
            cable_load_to_limit_ratio,
            own_load: self.own_load(&mut ladders.joint, index, limits)?,
            whence: None,
            contacts: Contacts::default(),
            emergency_lasts: None,
            connector_ohm: said.connector_ohm,
            outside: said.outside.into_iter().chain(air).collect(),
            shield_says: said.shield_says,
            aged: None,
        })
    }

    pub(super) fn answer(self, mut ladders: Ladders, input: Input) -> Result<WarmJoint, Said> {
        let rows = &input.rows;
        let rest = self.rest(&mut ladders, &self.loads_a)?;
        let at_emergency = match (&self.emergency_a_s, &rest) {
            (Ok((currents, time_s)), Some(rest)) => {
                Ok(self.after_emergency(&mut ladders, rest, currents, *time_s)?)
            }
            (Ok(_), None) => Ok(None),
            (Err(why), _) => Err(why.clone()),
        };
        let lasts = self.lasting(&mut ladders.joint, rows, rest.as_ref())?;
        // In thermal runaway the ageing has no finite amount.
        let emergency = match (&self.emergency_a_s, &at_emergency) {
            (Ok(emergency), Ok(Some(_))) => Some(emergency),
            _ => None,
        };
        let ageings: Vec<Option<Ageing>> = rows.iter().map(|row| row.ageing.clone()).collect();
        let mut aged = match &rest {
            Some(rest) => self.aged(&mut ladders.joint, &ageings, rest, emergency)?,
            None => vec![None; rows.len()],
        };
        let contacts = match &rest {
            Some(rest) => self.contacts(&mut ladders, rest)?,
            None => vec![Contacts::default(); rows.len()],
        };
        let mut whences = match &rest {
            Some(rest) => self.whence(&mut ladders, rest)?,
            None => Vec::new(),
        }
        .into_iter();
        let limits: Vec<Option<f64>> = rows.iter().map(|row| row.limits_degc.0).collect();
        let mut legs = Vec::new();
        for index in 0..rows.len() {
            let mut of = self.leg(&mut ladders, &input, (index, &limits))?;
            of.whence = whences.next();
            of.contacts = contacts[index];
            of.emergency_lasts = lasts[index];
            of.aged = aged[index].take();
            legs.push(of);
        }
        Ok(WarmJoint {
            at_load: rest.map(|rest| rest.legs),
            at_emergency,
            legs,
            bus_says: input.bus_says.clone(),
            unconfirmed: input.unconfirmed.clone(),
            unread: input.unread.clone(),
            model: self,
            input,
        })
    }
}

/// State after a time from a start; `None` if the metal of any arm exceeds [`HOTTEST_DEGC`] on the way.
fn last(
    ladder: &mut Ladder,
    start: &Temperatures,
    currents_a: &[f64],
    time_s: f64,
) -> Result<Option<Temperatures>, Said> {
    let cores: Vec<Core> = (0..currents_a.len()).map(|arm| ladder.core(arm)).collect();
    let is_beyond = |state: &Temperatures| {
        cores.iter().any(|core| {
            let degc = hottest(&core.along(state), |_| true).1;
            degc.is_nan() || degc > HOTTEST_DEGC
        })
    };
    let times = doublings(FIRST_S.min(time_s), time_s);
    let found = ladder.after_until(start, currents_a, &times, is_beyond);
    let mut found = found.map_err(said)?;
    Ok(found.pop().filter(|state| !is_beyond(state)))
}

/// Times from a first to a last, s; each is twice the one before it, except the last.
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

/// Leg, with the temperature that its metal may reach.
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

/// States of an emergency at some times, and its steady state, if there is one.
struct Course<'l> {
    ladder: &'l mut Ladder,
    currents_a: Vec<f64>,
    rest: Option<Temperatures>,
    states: Vec<(f64, Temperatures)>,
    asked: Vec<Asked>,
}

impl Course<'_> {
    /// Index of the first state above a temperature.
    fn first(&self, of: &Asked) -> Option<usize> {
        self.states.iter().position(|(_, state)| of.is_above(state))
    }

    fn lasts(&mut self, index: usize) -> Result<Lasts, Said> {
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
        // States at equal steps within the interval, then linear interpolation between the last state below and the first above.
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

/// Hottest place among those that count, and its temperature.
pub(super) fn hottest(along: &[(f64, f64)], counts: impl Fn(f64) -> bool) -> (f64, f64) {
    let places = along.iter().copied().filter(|(z, _)| counts(*z));
    let best = places.max_by(|a, b| a.1.total_cmp(&b.1));
    best.unwrap_or((0.0, f64::NEG_INFINITY))
}
