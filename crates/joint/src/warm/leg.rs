//! Leg: temperatures of one leg, its limits, and the places where they are taken.

use super::HOTTEST_DEGC;
use super::shape::Shape;
use crate::said::{HeatCannot, Said};
use jointwright_numerics::heat::HeatError;
use jointwright_numerics::ladder::LadderError;

/// Greatest load that is searched, as a ratio to the job's.
pub const RATIO_MOST: f64 = 20.0;

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
    pub(super) fn is_within(&self) -> bool {
        let hottest = self.joint_degc.max(self.cable_degc);
        hottest.is_finite() && hottest <= HOTTEST_DEGC
    }
}

/// Time for which a load may flow.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Lasts {
    /// Time, s; 0 if the load before it already passes the limit.
    Seconds(f64),
    /// Longer than [`LONGEST_S`](super::LONGEST_S), the longest time computed, but not for ever.
    Longer,
    /// The limit is never reached.
    ForEver,
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

/// Temperatures of a leg, from those along its core, along its cable without a joint, and of its hottest rubber.
pub(super) fn leg_at(
    shape: &Shape,
    load_a: f64,
    core: &[(f64, f64)],
    alone: &[(f64, f64)],
    rubber: Option<(f64, f64)>,
) -> LegAt {
    let (joint_at_m, joint_degc) = hottest(core, |z| z < shape.body.end_m);
    let (_, cable_degc) = hottest(core, |z| z >= shape.body.end_m);
    let (alone_at_m, alone_degc) = hottest(alone, |z| z < shape.body.end_m);
    let surroundings = shape.stretches.iter().map(|stretch| stretch.degc);
    LegAt {
        load_a,
        joint_degc,
        joint_at_m,
        rubber_degc: rubber.map_or(joint_degc, |(_, degc)| degc),
        alone_degc,
        alone_at_m,
        cable_degc,
        surrounding_degc: surroundings.fold(f64::INFINITY, f64::min),
    }
}

/// Hottest place among those that count, and its temperature.
pub(super) fn hottest(along: &[(f64, f64)], counts: impl Fn(f64) -> bool) -> (f64, f64) {
    let places = along.iter().copied().filter(|(z, _)| counts(*z));
    let best = places.max_by(|a, b| a.1.total_cmp(&b.1));
    best.unwrap_or((0.0, f64::NEG_INFINITY))
}
