//! Whence: where the warmth of a joint comes from, what one worse contact adds to it, and what one leg bears by itself.
//!
//! Source: closed form (superposition); `docs/theory/warm.md`.

use super::model::{Ladders, Model, RATIO_MOST, Rest, hottest, said, unless_runaway};
use super::{LegWarm, WarmJoint};
use crate::said::{Said, Share, ShareFrom};
use jointwright_numerics::ladder::{Ladder, Origins};

/// Of what the difference is made between the conductor inside a body and its cable going through there without a joint, K: the shares add up to it.
///
/// Every loss is taken as it is at the temperatures that were solved.
#[derive(Clone, Debug, PartialEq)]
pub struct Whence {
    /// What the leg's own connector makes, more than the same length of its conductor would.
    pub connector_k: f64,
    /// What the bus makes.
    pub bus_k: f64,
    /// What each other leg makes, its cable and connector together: its place among the legs, K.
    pub legs_k: Vec<(usize, f64)>,
    /// The leg's own current: what it makes under the joint and beyond, less what it would make in the cable without a joint.
    pub own_k: f64,
    /// The surroundings of all legs, less those of its own cable without a joint.
    pub surroundings_k: f64,
}

impl Whence {
    /// All of it.
    pub fn total_k(&self) -> f64 {
        let legs = self.legs_k.iter().map(|(_, k)| k).sum::<f64>();
        self.connector_k + self.bus_k + legs + self.own_k + self.surroundings_k
    }
}

impl WarmJoint {
    /// Where the difference of a leg comes from, the largest share first; nothing where no state was found.
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

/// Shares in whole tenths of a kelvin that add up to the difference in tenths; what is less than half a tenth is left out.
pub fn in_tenths(by_k: f64, shares: &[Share]) -> Vec<Share> {
    let tenths = |k: f64| (10.0 * k).round();
    let rest = tenths(by_k) - shares.iter().map(|share| tenths(share.k)).sum::<f64>();
    shares
        .iter()
        .enumerate()
        // What rounding leaves goes to the largest.
        .map(|(index, share)| (share, tenths(share.k) + if index == 0 { rest } else { 0.0 }))
        .filter(|(_, tenths)| *tenths != 0.0)
        .map(|(share, tenths)| Share {
            from: share.from.clone(),
            k: tenths / 10.0,
        })
        .collect()
}

/// What one connector of twice its resistance adds, the others as they are.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Contacts {
    /// The leg's own, K hotter; nothing where the joint would then warm without end.
    pub own_k: Option<f64>,
    /// Temperature of the leg's joint with it, °C.
    pub own_degc: Option<f64>,
    /// The connector that adds most to this leg: its place among the legs, and K hotter.
    pub worst_k: Option<(usize, f64)>,
}

/// Loads of one leg, at which the metal inside its body comes to the limit of the paper, while the other legs do not rise in proportion.
#[derive(Clone, Debug, PartialEq)]
pub struct OwnLoad {
    /// All other legs at the job's load: no more than this can meet in the joint, A.
    pub most_a: f64,
    /// With all other legs at the job's load, A; nothing where none up to that comes there.
    pub alone_a: Option<f64>,
    /// With one other leg bringing or taking all that this one has more: its place among the legs, A of this leg, A of that one.
    pub fed_a: Option<(usize, f64, f64)>,
    /// Other legs that are then above their own limits: with `alone_a`, and with `fed_a`.
    pub passed: [Vec<usize>; 2],
}

impl Model {
    /// Where the warmth of a leg's joint comes from, beside its cable without a joint.
    pub(super) fn whence(
        &self,
        ladders: &mut Ladders,
        rest: &Rest,
        leg: usize,
    ) -> Result<Whence, Said> {
        let (shape, at) = (&self.shapes[leg], &rest.legs[leg]);
        let joint = ladders
            .joint
            .origins(&rest.joint, &self.loads_a, leg, at.joint_at_m)
            .map_err(said)?;
        let alone = ladders.alone[leg]
            .origins(&rest.alone[leg], &self.loads_a[leg..=leg], 0, at.alone_at_m)
            .map_err(said)?;
        let of = |origins: &Origins, counts: &dyn Fn(Option<usize>, f64) -> bool| -> f64 {
            let heats = origins.heats.iter();
            heats
                .filter(|heat| counts(heat.arm, heat.place_m))
                .map(|heat| heat.rise_k)
                .sum()
        };
        let n_legs = self.shapes.len();
        // One arm has no hub: its sources are all its own.
        let own = of(&joint, &|arm, _| arm == Some(leg));
        let in_connector = of(&joint, &|arm, z| arm == Some(leg) && z < shape.mouth_m);
        let ratio = shape.connector.loss.at20_ohm_per_m / shape.conductor.loss.at20_ohm_per_m;
        let connector_k = in_connector * (1.0 - 1.0 / ratio);
        let other = |leg: usize| of(&joint, &|arm, _| arm == Some(leg));
        Ok(Whence {
            connector_k,
            bus_k: of(&joint, &|arm, _| arm.is_none()),
            legs_k: (0..n_legs)
                .filter(|of| *of != leg)
                .map(|of| (of, other(of)))
                .collect(),
            own_k: own - connector_k - of(&alone, &|_, _| true),
            surroundings_k: joint.surroundings_degc - alone.surroundings_degc,
        })
    }

    /// What one worse connector does to each leg: one at a time, with twice its resistance.
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

    /// Which loads of one leg alone bring it to the limit of its paper; nothing of two legs, which carry one current.
    pub(super) fn own_load(
        &self,
        ladder: &mut Ladder,
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
            let found = self.factor_to_degc(ladder, leg, limit_degc, currents, 1.0)?;
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
                *passed = self.passed(ladder, leg, &currents, limits_degc)?;
            }
        }
        Ok(Some(OwnLoad {
            most_a,
            alone_a,
            fed_a,
            passed,
        }))
    }

    /// Legs but this one that are above their own limits at rest with currents, A.
    fn passed(
        &self,
        ladder: &mut Ladder,
        leg: usize,
        currents_a: &[f64],
        limits_degc: &[Option<f64>],
    ) -> Result<Vec<usize>, Said> {
        let found = unless_runaway(ladder.steady(currents_a))?;
        let is_above = |(other, degc): (usize, &Option<f64>)| {
            let degc = (*degc)?;
            let is_above = found.as_ref().is_none_or(|found| {
                let within_m = self.shapes[other].body.end_m;
                hottest(&ladder.along_core(found, other), |z| z < within_m).1 > degc
            });
            (other != leg && is_above).then_some(other)
        };
        Ok(limits_degc
            .iter()
            .enumerate()
            .filter_map(is_above)
            .collect())
    }
}
