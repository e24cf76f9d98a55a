//! Model: the star of a joint's legs, and its temperatures in steady state and in time.

use super::course::{Lean, Projection};
use super::leg::{Lasts, LegAt, LegLimit, RATIO_MOST, hottest, leg_at, said, unless_runaway};
use super::shape::{Shape, Watch};
use super::{Aged, Contacts, Input, LegRow, LegWarm, WarmJoint, ageing_ratio};
use crate::catalogue::Ageing;
use crate::said::{Said, SoilSaid};
use jointwright_numerics::ladder::{Hub, Ladder, Spot, Star, Temperatures, factor_to_limit};
use std::sync::Arc;

/// Most rounds of the iteration for films of still air.
const AIR_ROUNDS: usize = 12;
/// Relative change of every film at which that iteration ends.
const AIR_CLOSE_RATIO: f64 = 1e-4;
/// Least temperature rise for which a film of still air is computed, K.
const AIR_RISE_LEAST_K: f64 = 1.0;

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
    /// The same with some tens of states; `None` in thermal runaway at the job's load.
    pub lean: Option<Lean>,
}

/// Joint in steady state.
pub(super) struct Rest {
    pub joint: Temperatures,
    pub alone: Vec<Temperatures>,
    pub legs: Vec<LegAt>,
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
        let lean = None;
        Ok((model, Ladders { joint, alone, lean }))
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
            lean: None,
        })
    }

    fn times(&self, ratio: f64) -> Vec<f64> {
        self.loads_a.iter().map(|load| ratio * load).collect()
    }

    /// Temperatures of each leg in steady state, at a ratio to the job's load; `None` in thermal runaway, or if a leg gets hotter than [`HOTTEST_DEGC`](super::HOTTEST_DEGC).
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

    fn legs_at(
        &self,
        ladders: &Ladders,
        currents_a: &[f64],
        found: &Temperatures,
        alone: &[Temperatures],
    ) -> Vec<LegAt> {
        let legs = self.shapes.iter().enumerate();
        legs.map(|(leg, shape)| {
            let core = ladders.joint.along_core(found, leg);
            let alone = ladders.alone[leg].along_core(&alone[leg], 0);
            let rubber = ladders.joint.hottest_watched_of(found, leg);
            leg_at(shape, currents_a[leg], &core, &alone, rubber)
        })
        .collect()
    }

    /// Temperatures along the legs in steady state, at a ratio to the job's load; `None` in thermal runaway.
    ///
    /// # Errors
    /// The errors of [`Model::at_rest`].
    pub fn along(&self, ratio: f64) -> Result<Option<Vec<TemperatureProfile>>, Said> {
        let mut ladders = self.ladders()?;
        let rest = self.rest(&mut ladders, &self.times(ratio))?;
        Ok(rest.map(|rest| self.along_at(&ladders, &rest)))
    }

    fn along_at(&self, ladders: &Ladders, rest: &Rest) -> Vec<TemperatureProfile> {
        let legs = self.shapes.iter().enumerate();
        legs.map(|(leg, shape)| TemperatureProfile {
            core_degc: ladders.joint.along_core(&rest.joint, leg),
            outside_degc: ladders.joint.along_outside(&rest.joint, leg),
            alone_degc: ladders.alone[leg].along_core(&rest.alone[leg], 0),
            ends_m: (shape.body.end_m, shape.joint_end_m()),
        })
        .collect()
    }

    /// Ratio to the job's load of the load that brings the metal of a leg inside its body to a temperature; `None` if no load up to [`RATIO_MOST`] does, or if the temperature is exceeded without a load.
    pub(super) fn joint_to_degc(
        &self,
        ladders: &mut Ladders,
        leg: usize,
        degc: f64,
    ) -> Result<Option<f64>, Said> {
        let currents = |ratio: f64| self.times(ratio);
        self.factor_to_degc(ladders, leg, degc, currents, RATIO_MOST)
    }

    /// Factor at which the metal of a leg inside its body reaches a temperature, if the currents, A, grow with it; `None` if no factor up to `greatest` does.
    pub(super) fn factor_to_degc(
        &self,
        ladders: &mut Ladders,
        leg: usize,
        degc: f64,
        currents_a: impl Fn(f64) -> Vec<f64>,
        greatest: f64,
    ) -> Result<Option<f64>, Said> {
        let excess = |factor: f64| {
            let degcs = self.bodies_degc(ladders, &currents_a(factor))?;
            Ok(degcs.map_or(f64::INFINITY, |degcs| degcs[leg] - degc))
        };
        factor_to_limit(excess, greatest)
    }

    /// Temperatures of the hottest metal inside each body in steady state; `None` in thermal runaway.
    pub(super) fn bodies_degc(
        &self,
        ladders: &mut Ladders,
        currents_a: &[f64],
    ) -> Result<Option<Vec<f64>>, Said> {
        if let Some(lean) = &ladders.lean {
            return lean.bodies_degc(&self.shapes, currents_a);
        }
        let found = unless_runaway(ladders.joint.steady(currents_a))?;
        let degc = |leg: usize, found: &Temperatures| {
            let end_m = self.shapes[leg].body.end_m;
            hottest(&ladders.joint.along_core(found, leg), |z| z < end_m).1
        };
        let legs = 0..self.shapes.len();
        Ok(found.map(|found| legs.map(|leg| degc(leg, &found)).collect()))
    }

    /// Ratio to the job's load of the load that brings a leg's cable without a joint to a temperature.
    fn cable_to_degc(
        &self,
        ladders: &mut Ladders,
        leg: usize,
        degc: f64,
    ) -> Result<Option<f64>, Said> {
        let load = self.loads_a[leg];
        if let Some(lean) = &ladders.lean {
            let excess = |ratio: f64| {
                let found = lean.cable_degc(leg, ratio * load)?;
                Ok(found.unwrap_or(f64::INFINITY) - degc)
            };
            return factor_to_limit(excess, RATIO_MOST);
        }
        let found = ladders.alone[leg].load_to_degc(&[load], Spot::Watched, degc);
        Ok(found.map_err(said)?.filter(|ratio| *ratio <= RATIO_MOST))
    }

    /// Ageing of each leg's rubber: its rate at the load, and its amount in an emergency.
    fn aged(
        &self,
        lean: &Lean,
        ageings: &[Option<Ageing>],
        rest: &Rest,
        emergency: Option<&(Vec<f64>, f64)>,
    ) -> Result<Vec<Option<Aged>>, Said> {
        let of = |(leg, ageing): (usize, &Option<Ageing>)| {
            let Some(ageing) = ageing else {
                return Ok(None);
            };
            let hours = emergency
                .map(|(currents_a, time_s)| lean.aged_h(leg, ageing, currents_a, *time_s))
                .transpose()?;
            Ok(Some(Aged {
                constants: ageing.clone(),
                at_load_ratio: ageing_ratio(ageing, rest.legs[leg].rubber_degc),
                emergency_h: hours,
            }))
        };
        ageings.iter().enumerate().map(of).collect()
    }

    /// Time for which the job's emergency may last until each leg's body reaches its limit; `None` for a leg without a limit, or without an emergency.
    fn lasting(&self, lean: Option<&Lean>, rows: &[LegRow]) -> Result<Vec<Option<Lasts>>, Said> {
        let mut found = vec![None; rows.len()];
        let (Ok((currents, _)), Some(lean)) = (&self.emergency_a_s, lean) else {
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
        let lasts = lean.lasts(&self.shapes, currents, &limits)?;
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
            Some(degc) => self.joint_to_degc(ladders, index, degc)?,
            None => None,
        };
        let cable_load_to_limit_ratio = match input.cable_greatest_degc {
            Some(degc) => self.cable_to_degc(ladders, index, degc)?,
            None => None,
        };
        let air = self.air_said(index, id);
        Ok(LegWarm {
            leg: id.clone(),
            body: row.body.clone(),
            limits_degc,
            load_to_limit_ratio,
            cable_load_to_limit_ratio,
            own_load: self.own_load(ladders, index, limits)?,
            whence: None,
            contacts: Contacts::default(),
            emergency_lasts: None,
            connector_ohm: said.connector_ohm,
            outside: said.outside.into_iter().chain(air).collect(),
            shield_says: said.shield_says,
            aged: None,
        })
    }

    /// Projects the stars about the job's load.
    fn lean(&self, ladders: &mut Ladders, rest: &Rest) -> Result<Lean, Said> {
        let emergency = self.emergency_a_s.as_ref().ok();
        Lean::new(Projection {
            joint: (&mut ladders.joint, &rest.joint),
            alone: ladders.alone.iter_mut().zip(&rest.alone).collect(),
            loads_a: &self.loads_a,
            emergency_a: emergency.map(|(currents, _)| &currents[..]),
        })
    }

    pub(super) fn answer(self, mut ladders: Ladders, input: Input) -> Result<WarmJoint, Said> {
        let rows = &input.rows;
        let rest = self.rest(&mut ladders, &self.loads_a)?;
        ladders.lean = match &rest {
            Some(rest) => Some(self.lean(&mut ladders, rest)?),
            None => None,
        };
        let lean = ladders.lean.as_ref();
        let at_emergency = match (&self.emergency_a_s, lean) {
            (Ok((currents, time_s)), Some(lean)) => {
                Ok(lean.after(&self.shapes, currents, *time_s)?)
            }
            (Ok(_), None) => Ok(None),
            (Err(why), _) => Err(why.clone()),
        };
        let error_in_time_k = match (&self.emergency_a_s, lean) {
            (Ok((currents, _)), Some(lean)) => lean.error_k(currents),
            _ => 0.0,
        };
        let lasts = self.lasting(lean, rows)?;
        // In thermal runaway the ageing has no finite amount.
        let emergency = match (&self.emergency_a_s, &at_emergency) {
            (Ok(emergency), Ok(Some(_))) => Some(emergency),
            _ => None,
        };
        let ageings: Vec<Option<Ageing>> = rows.iter().map(|row| row.ageing.clone()).collect();
        let mut aged = match (&rest, lean) {
            (Some(rest), Some(lean)) => self.aged(lean, &ageings, rest, emergency)?,
            _ => vec![None; rows.len()],
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
            along: match &rest {
                Some(rest) => self.along_at(&ladders, rest),
                None => Vec::new(),
            },
            at_load: rest.map(|rest| rest.legs),
            lean: ladders.lean.map(Arc::new),
            at_emergency,
            error_in_time_k,
            legs,
            bus_says: input.bus_says.clone(),
            unconfirmed: input.unconfirmed.clone(),
            unread: input.unread.clone(),
            model: self,
            input,
        })
    }
}
