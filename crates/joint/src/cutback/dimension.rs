//! Dimension: the distance between two planes over all places that the windows allow, and the causes of its variation.

use super::Cutback;
use super::windows::{Deviation, Span};
use crate::plane::{Holder, Plane};
use crate::said::CutSaid;
use jointwright_numerics::chain::{Chain, Link, Shared, SpreadOptions};
use jointwright_units::{Interval, Station};

/// Seed of every stack, so that the same job gives the same numbers.
const SEED: u64 = 20_260_309;
/// Samples of a stack.
const N_SAMPLES: u32 = 4096;
/// Part of each crew mark's deviation that all marks share, because one crew uses one tape: an assumption, stated with every result.
const TAPE_PART_PPM: u32 = 500_000;

/// Distance between two planes.
#[derive(Clone, Debug, PartialEq)]
pub struct Dimension {
    /// Planned distance.
    pub nominal: Station,
    /// Least over all windows.
    pub least: Station,
    /// Greatest over all windows.
    pub greatest: Station,
    /// The two planes with their deviations; `None` if nothing varies.
    ends: Option<[(Plane, Station, Station); 2]>,
}

/// Result of a seeded Monte Carlo stack of a dimension.
///
/// Every deviation is uniform in its window; half of each crew mark's deviation is common to all marks (one tape).
#[derive(Clone, Debug, PartialEq)]
pub struct StackSample {
    /// Bounds of the middle 95 percent.
    pub middle_95: (Station, Station),
    /// Share of each plane in the variance, greatest first, as if the deviations were independent.
    pub share_ratios: Vec<(Plane, f64)>,
    /// Number of samples.
    pub n_samples: u32,
}

impl Dimension {
    /// Least to greatest, in whole nanometres rounded outward.
    pub fn interval(&self) -> Interval {
        Interval::new(self.least.floor(), self.greatest.ceil())
            .expect("least is not above greatest, and rounding outward keeps that")
    }

    /// Seeded stack of deviations drawn inside the windows; `None` if nothing varies.
    pub fn stack_sample(&self) -> Option<StackSample> {
        stack_sample(self.ends.as_ref()?, self.nominal)
    }
}

pub(super) fn dimension(cutback: &Cutback, from: Plane, to: Plane) -> Result<Dimension, CutSaid> {
    let place = |plane: Plane| {
        cutback
            .nominals
            .get(&plane)
            .copied()
            .ok_or(CutSaid::NotPlaced { plane })
    };
    let (a, b) = (place(from)?, place(to)?);
    let nominal = b - a;
    let by_places = by_places(cutback, from, to, nominal);
    let Some(read) = cutback.measured(from, to) else {
        return by_places;
    };
    // A distance that was read is closer than both places; if it contradicts them, everything between counts.
    let read = match &by_places {
        Ok(by_places) => {
            let places = Span {
                least: by_places.least,
                greatest: by_places.greatest,
            };
            match read.meet(places) {
                Some(_) => read,
                None => read.hull(places),
            }
        }
        Err(_) => read,
    };
    Ok(Dimension {
        nominal,
        least: read.least,
        greatest: read.greatest,
        ends: None,
    })
}

/// Distance between two planes by their places alone.
fn by_places(
    cutback: &Cutback,
    from: Plane,
    to: Plane,
    nominal: Station,
) -> Result<Dimension, CutSaid> {
    let waits = |plane: &Plane| cutback.moved_by_growth.get(plane).copied().unwrap_or(0);
    if waits(&from) != waits(&to) {
        return Err(CutSaid::GrowthNotMeasured);
    }
    if cutback.groups.are_rigid(from, to) {
        return Ok(Dimension {
            nominal,
            least: nominal,
            greatest: nominal,
            ends: None,
        });
    }
    let pair = cutback.groups.pair(from, to);
    let (span_a, span_b) = pair.map_err(|(plane, deviation)| match deviation {
        Deviation::UsedUp(_) => CutSaid::NothingLeftOfWindow { plane },
        _ => CutSaid::NoWindowOf { plane },
    })?;
    Ok(Dimension {
        nominal,
        least: nominal + span_b.least - span_a.greatest,
        greatest: nominal + span_b.greatest - span_a.least,
        ends: Some([
            (from, span_a.least, span_a.greatest),
            (to, span_b.least, span_b.greatest),
        ]),
    })
}

/// Stack of the two planes' deviations about their planned places, each measured from the conductor end.
fn stack_sample(ends: &[(Plane, Station, Station); 2], nominal: Station) -> Option<StackSample> {
    let links: Vec<Link> = ends
        .iter()
        .zip([0, nominal.half_nm()])
        .enumerate()
        .map(|(index, ((plane, least, greatest), at))| Link {
            from: 0,
            to: index + 1,
            nominal: at + least.half_nm(),
            minus: 0,
            plus: (*greatest - *least).half_nm(),
            shared: (plane.holder() != Holder::Connector).then_some(Shared {
                source: 0,
                fraction_ppm: TAPE_PART_PPM,
            }),
        })
        .collect();
    if links.iter().all(|l| l.plus == 0) {
        return None;
    }
    let solution = Chain::new(3, links).ok()?.solve(0).ok()?;
    let spread = solution
        .spread(
            &[(1, 2)],
            SpreadOptions {
                seed: SEED,
                n_samples: N_SAMPLES,
            },
        )
        .ok()?
        .into_iter()
        .next()?;
    let (low, high) = spread.middle_95();
    // With one tape the shares can exceed the whole; independent deviations show better which mark matters most.
    let widths: Vec<f64> = ends
        .iter()
        .map(|(_, least, greatest)| (*greatest - *least).half_nm() as f64)
        .collect();
    let total: f64 = widths.iter().map(|w| w * w).sum();
    let mut share_ratios: Vec<(Plane, f64)> = ends
        .iter()
        .zip(&widths)
        .map(|((plane, ..), w)| (*plane, w * w / total))
        .collect();
    share_ratios.sort_by(|a, b| b.1.total_cmp(&a.1).then(a.0.cmp(&b.0)));
    Some(StackSample {
        middle_95: (Station::from_half_nm(low), Station::from_half_nm(high)),
        share_ratios,
        n_samples: spread.n_accepted,
    })
}
