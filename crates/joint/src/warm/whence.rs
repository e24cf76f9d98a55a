//! Whence: origins of a joint's heat, effect of one worse contact, and the load that one leg can carry by itself.
//!
//! Source: closed form (superposition); `docs/theory/warm.md`.

use super::leg::{RATIO_MOST, hottest, said, unless_runaway};
use super::model::{Ladders, Model, Rest};
use super::{Contacts, LegWarm, WarmJoint};
use crate::said::{Said, Share, ShareFrom};
use jointwright_numerics::ladder::Origins;

/// Origins of the temperature difference between the conductor inside a body and its cable through the same place without a joint, K.
///
/// The shares add up to the difference.
/// Every loss has its value at the computed temperatures.
#[derive(Clone, Debug, PartialEq)]
pub struct Whence {
    /// Share of the leg's own connector, beyond the share of the same length of its conductor.
    pub connector_k: f64,
    /// Share of the bus.
    pub bus_k: f64,
    /// Share of each other leg, its cable and connector together: index of the leg, K.
    pub legs_k: Vec<(usize, f64)>,
    /// Share of the leg's own current: its share under the joint and beyond, less its share in the cable without a joint.
    pub own_k: f64,
    /// Share of the surroundings of all legs, less the share of the surroundings of its own cable without a joint.
    pub surroundings_k: f64,
}

impl Whence {
    /// Sum of all shares.
    pub fn total_k(&self) -> f64 {
        let legs = self.legs_k.iter().map(|(_, k)| k).sum::<f64>();
        self.connector_k + self.bus_k + legs + self.own_k + self.surroundings_k
    }
}

impl WarmJoint {
    /// Shares of a leg's temperature difference, the largest first; empty if no state was found.
    pub fn shares(&self, of: &LegWarm) -> Vec<Share> {
        let Some(whence) = &of.whence else {
            return Vec::new();
        };
        let id = &of.leg;
        let leg = || id.clone();
        let share = |from: ShareFrom, k: f64| Share { from, k };
        let connector = ShareFrom::Connector { leg: leg() };
        let mut shares = vec![share(connector, whence.connector_k)];
        if self.bus_says.is_some() {
            shares.push(share(ShareFrom::Bus, whence.bus_k));
        }
        shares.extend(whence.legs_k.iter().map(|(other, k)| {
            let leg = self.legs[*other].leg.clone();
            share(ShareFrom::OtherLeg { leg }, *k)
        }));
        shares.push(share(ShareFrom::OwnCurrent { leg: leg() }, whence.own_k));
        shares.push(share(ShareFrom::Surroundings, whence.surroundings_k));
        shares.sort_by(|a, b| b.k.abs().total_cmp(&a.k.abs()));
        shares
    }
}

/// Rounds shares to whole tenths of a kelvin, so that they add up to the rounded difference; leaves out shares of 0.
pub fn in_tenths(by_k: f64, shares: &[Share]) -> Vec<Share> {
    let tenths = |k: f64| (10.0 * k).round();
    let rest = tenths(by_k) - shares.iter().map(|share| tenths(share.k)).sum::<f64>();
    shares
        .iter()
        .enumerate()
        // The largest share takes the rest that rounding leaves.
        .map(|(index, share)| (share, tenths(share.k) + if index == 0 { rest } else { 0.0 }))
        .filter(|(_, tenths)| *tenths != 0.0)
        .map(|(share, tenths)| Share {
            from: share.from.clone(),
            k: tenths / 10.0,
        })
        .collect()
}

/// Loads of one leg at which the metal inside its body reaches the limit of the paper, while the other legs do not rise in proportion.
#[derive(Clone, Debug, PartialEq)]
pub struct OwnLoad {
    /// Sum of the other legs' loads, A: with them at the job's load, this leg cannot carry more.
    pub most_a: f64,
    /// Load with all other legs at the job's load, A; `None` if no load up to `most_a` reaches the limit.
    pub alone_a: Option<f64>,
    /// Load if one other leg brings or takes all the additional current: index of that leg, A of this leg, A of that leg.
    pub fed_a: Option<(usize, f64, f64)>,
    /// Other legs that are above their own limits, with `alone_a` and with `fed_a`.
    pub passed: [Vec<usize>; 2],
}

impl Model {
    /// Origins of the heat of each leg's joint, compared with its cable without a joint.
    pub(super) fn whence(&self, ladders: &mut Ladders, rest: &Rest) -> Result<Vec<Whence>, Said> {
        let places = rest.legs.iter().enumerate();
        let places: Vec<_> = places.map(|(leg, at)| (leg, at.joint_at_m)).collect();
        let joints = ladders
            .joint
            .origins(&rest.joint, &self.loads_a, &places)
            .map_err(said)?;
        let mut found = Vec::new();
        for (leg, joint) in joints.iter().enumerate() {
            let place = (0, rest.legs[leg].alone_at_m);
            let current = &self.loads_a[leg..=leg];
            let alone = ladders.alone[leg]
                .origins(&rest.alone[leg], current, &[place])
                .map_err(said)?;
            found.extend(alone.iter().map(|alone| self.shares(leg, joint, alone)));
        }
        Ok(found)
    }

    /// Shares of a leg's joint, compared with its cable without a joint.
    fn shares(&self, leg: usize, joint: &Origins, alone: &Origins) -> Whence {
        let shape = &self.shapes[leg];
        let of = |origins: &Origins, counts: &dyn Fn(Option<usize>, f64) -> bool| -> f64 {
            let heats = origins.heats.iter();
            heats
                .filter(|heat| counts(heat.arm, heat.place_m))
                .map(|heat| heat.rise_k)
                .sum()
        };
        let n_legs = self.shapes.len();
        // An arm alone has no hub, so all its heat sources are its own.
        let own = of(joint, &|arm, _| arm == Some(leg));
        let in_connector = of(joint, &|arm, z| arm == Some(leg) && z < shape.mouth_m);
        let ratio = shape.connector.loss.at20_ohm_per_m / shape.conductor.loss.at20_ohm_per_m;
        let connector_k = in_connector * (1.0 - 1.0 / ratio);
        let other = |leg: usize| of(joint, &|arm, _| arm == Some(leg));
        Whence {
            connector_k,
            bus_k: of(joint, &|arm, _| arm.is_none()),
            legs_k: (0..n_legs)
                .filter(|of| *of != leg)
                .map(|of| (of, other(of)))
                .collect(),
            own_k: own - connector_k - of(alone, &|_, _| true),
            surroundings_k: joint.surroundings_degc - alone.surroundings_degc,
        }
    }

    /// Effect of worse connectors on each leg: one connector at a time has twice its resistance.
    pub(super) fn contacts(
        &self,
        ladders: &mut Ladders,
        rest: &Rest,
    ) -> Result<Vec<Contacts>, Said> {
        let n_legs = self.shapes.len();
        let mut contacts = vec![Contacts::default(); n_legs];
        for worse in 0..n_legs {
            let mouth_m = self.shapes[worse].mouth_m;
            ladders.joint.times_loss(worse, mouth_m, 2.0);
            let found = ladders.joint.steady(&self.loads_a);
            ladders.joint.times_loss(worse, mouth_m, 0.5);
            let Some(found) = unless_runaway(found)? else {
                continue;
            };
            for (leg, (shape, contact)) in self.shapes.iter().zip(&mut contacts).enumerate() {
                let core = ladders.joint.along_core(&found, leg);
                let degc = hottest(&core, |z| z < shape.body.end_m).1;
                let more = degc - rest.legs[leg].joint_degc;
                if leg == worse {
                    contact.own_k = Some(more);
                    contact.own_degc = Some(degc);
                }
                if contact.worst_k.is_none_or(|(_, most)| more > most) {
                    contact.worst_k = Some((worse, more));
                }
            }
        }
        Ok(contacts)
    }

    /// Loads of one leg alone that bring it to the limit of its paper; `None` for two legs, which carry one current.
    pub(super) fn own_load(
        &self,
        ladders: &mut Ladders,
        leg: usize,
        limits_degc: &[Option<f64>],
    ) -> Result<Option<OwnLoad>, Said> {
        let loads = &self.loads_a;
        let (Some(limit_degc), true) = (limits_degc[leg], loads.len() > 2) else {
            return Ok(None);
        };
        let others = || (0..loads.len()).filter(|other| *other != leg);
        let most_a = others().map(|other| loads[other]).sum::<f64>();
        let with = |own: f64, feeder: Option<usize>| {
            let mut currents = loads.clone();
            currents[leg] = own;
            if let Some(feeder) = feeder {
                currents[feeder] = loads[feeder] + own - loads[leg];
            }
            currents
        };
        let mut ratio = |feeder: Option<usize>, from_a: f64, most_a: f64| {
            let currents = |factor: f64| with(from_a + factor * (most_a - from_a), feeder);
            let found = self.factor_to_degc(ladders, leg, limit_degc, currents, 1.0)?;
            Ok::<Option<f64>, Said>(found.map(|factor| from_a + factor * (most_a - from_a)))
        };
        let alone_a = if most_a > loads[leg] {
            ratio(None, loads[leg], most_a)?
        } else {
            None
        };
        let feeder = others().max_by(|a, b| loads[*a].total_cmp(&loads[*b]));
        let fed_a = match feeder {
            Some(feeder) => {
                let greatest = loads.iter().copied().fold(0.0, f64::max);
                let own = ratio(Some(feeder), loads[leg], RATIO_MOST * greatest)?;
                own.map(|own| (feeder, own, loads[feeder] + own - loads[leg]))
            }
            None => None,
        };
        let states = [
            alone_a.map(|own| with(own, None)),
            fed_a.map(|(by, own, _)| with(own, Some(by))),
        ];
        let mut passed = [Vec::new(), Vec::new()];
        for (passed, currents) in passed.iter_mut().zip(states) {
            if let Some(currents) = currents {
                *passed = self.passed(ladders, leg, &currents, limits_degc)?;
            }
        }
        Ok(Some(OwnLoad {
            most_a,
            alone_a,
            fed_a,
            passed,
        }))
    }

    /// Legs except this one that are above their own limits in steady state with currents, A.
    fn passed(
        &self,
        ladders: &mut Ladders,
        leg: usize,
        currents_a: &[f64],
        limits_degc: &[Option<f64>],
    ) -> Result<Vec<usize>, Said> {
        let found = self.bodies_degc(ladders, currents_a)?;
        let is_above = |(other, degc): (usize, &Option<f64>)| {
            let degc = (*degc)?;
            let is_above = found.as_ref().is_none_or(|found| found[other] > degc);
            (other != leg && is_above).then_some(other)
        };
        Ok(limits_degc
            .iter()
            .enumerate()
            .filter_map(is_above)
            .collect())
    }
}
