//! Rating: loads that reach the limits, temperatures at other loads, durations of emergency loads, and temperatures along the axis.
//!
//! Why its own file: it solves the star a hundred times more often than a plan does, so it runs only when somebody asks for it.
//!
//! Not here: the document of a rating (`plan`), its pictures (`drawing`).

use super::{LegAt, LegLimit, LegWarm, RATIO_MOST, TemperatureProfile, Warm, WarmJoint};
use crate::said::Said;

/// Loads of the emergency table, over the smallest load that cannot flow for ever.
const EMERGENCY_RATIOS: [f64; 12] = [
    1.02, 1.05, 1.1, 1.15, 1.2, 1.3, 1.4, 1.5, 1.7, 1.9, 2.2, 2.5,
];
/// Step of the table of loads, over the job's.
const LOAD_STEP: f64 = 0.25;
/// Most rows of that table.
const LOADS_MOST: usize = 12;
/// Ratio of the last load of that table to the governing load.
const BEYOND: f64 = 1.1;

/// Rating of a joint, beyond its temperatures at the job's load.
#[derive(Clone, Debug, PartialEq)]
pub struct Rating {
    /// Limits and the loads that reach them, the smallest load first.
    pub governs: Vec<Govern>,
    /// Temperatures at loads in proportion to the job's, the smallest load first.
    pub loads: Vec<AtRatio>,
    /// Durations of emergency loads; empty if a limit is not stated, or if the load before the emergency passes one.
    pub emergencies: Vec<Emergency>,
    /// Temperatures along each leg at the job's load; `None` in thermal runaway.
    pub along: Option<Vec<TemperatureProfile>>,
}

/// Limit of one leg, and the load that reaches it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Govern {
    /// The limit.
    pub limit: LegLimit,
    /// Ratio of that load to the job's; 0 if the limit is passed without a load; `None` if no load is found that reaches it.
    pub ratio: Option<f64>,
}

/// State of all legs at one load.
#[derive(Clone, Debug, PartialEq)]
pub struct AtRatio {
    /// Ratio of the load to the job's.
    pub ratio: f64,
    /// Temperatures of the legs; `None` in thermal runaway.
    pub legs: Option<Vec<LegAt>>,
    /// Limits that are passed.
    pub passed: Vec<LegLimit>,
}

/// Duration of a load that follows the job's load in steady state.
#[derive(Clone, Debug, PartialEq)]
pub struct Emergency {
    /// Ratio of the load to the job's.
    pub ratio: f64,
    /// Loads of the legs, A.
    pub loads_a: Vec<f64>,
    /// First limit that is reached, and the time until then, s; `None` if none is reached within the longest time computed.
    pub first_s: Option<(LegLimit, f64)>,
}

impl Warm {
    /// Rating of a joint; `None` if its temperatures are not computed.
    ///
    /// # Errors
    /// The reason why a state could not be solved.
    pub fn rating(&self) -> Result<Option<Rating>, Said> {
        let Warm::Done(done) = self else {
            return Ok(None);
        };
        let governs = done.governs()?;
        let along = done.at_load.as_ref().map(|_| done.along.clone());
        Ok(Some(Rating {
            loads: done.loads(&governs)?,
            emergencies: done.emergencies()?,
            along,
            governs,
        }))
    }
}

impl WarmJoint {
    /// Temperatures of the legs in steady state at a ratio to the job's load, as of [`Model::at_rest`](super::Model::at_rest).
    fn at_ratio(&self, ratio: f64) -> Result<Option<Vec<LegAt>>, Said> {
        match &self.lean {
            Some(lean) => lean.at_ratio(&self.model.shapes, ratio),
            None => self.model.at_rest(ratio),
        }
    }

    /// Limits of all legs: the continuous limit of the metal inside each body, and the limit of the cables.
    fn limits(&self) -> Vec<LegLimit> {
        let of = |(leg, row): (usize, &LegWarm)| {
            let body = row.limits_degc.0.map(|degc| LegLimit {
                leg,
                degc,
                is_cable: false,
            });
            let cable = self.input.cable_greatest_degc.map(|degc| LegLimit {
                leg,
                degc,
                is_cable: true,
            });
            [body, cable].into_iter().flatten()
        };
        self.legs.iter().enumerate().flat_map(of).collect()
    }

    fn governs(&self) -> Result<Vec<Govern>, Said> {
        // A limit below the temperature of the surroundings is passed without any load.
        let unloaded = self.at_ratio(0.0)?;
        let govern = |limit: LegLimit| {
            let of = &self.legs[limit.leg];
            let ratio = if limit.is_cable {
                of.cable_load_to_limit_ratio
            } else {
                of.load_to_limit_ratio
            };
            let is_passed = unloaded.as_ref().is_none_or(|legs| limit.is_passed(legs));
            Govern {
                limit,
                ratio: is_passed.then_some(0.0).or(ratio),
            }
        };
        let mut all: Vec<Govern> = self.limits().into_iter().map(govern).collect();
        let key = |of: &Govern| of.ratio.unwrap_or(f64::INFINITY);
        all.sort_by(|a, b| key(a).total_cmp(&key(b)));
        Ok(all)
    }

    fn loads(&self, governs: &[Govern]) -> Result<Vec<AtRatio>, Said> {
        let governing = governs.first().and_then(|of| of.ratio).unwrap_or(1.0);
        let limits = self.limits();
        let row = |ratio: f64| {
            let legs = self.at_ratio(ratio)?;
            let passed = legs.as_ref().map_or(Vec::new(), |legs| {
                let passed = limits.iter().filter(|limit| limit.is_passed(legs));
                passed.copied().collect()
            });
            Ok(AtRatio {
                ratio,
                legs,
                passed,
            })
        };
        load_ratios(governing).into_iter().map(row).collect()
    }

    /// Durations of loads until the first limit: the emergency limit of a body, or the job's limit for its cables.
    fn emergencies(&self) -> Result<Vec<Emergency>, Said> {
        let bodies = self.legs.iter().map(|of| of.limits_degc.1);
        let bodies = bodies.collect::<Option<Vec<f64>>>();
        let (Some(bodies), Some(at_load), Some(lean)) = (bodies, &self.at_load, &self.lean) else {
            return Ok(Vec::new());
        };
        let normal = self.legs.iter().zip(at_load);
        let passes =
            |(of, at): (&LegWarm, &LegAt)| of.limits_degc.0.is_none_or(|degc| at.joint_degc > degc);
        if normal.into_iter().any(passes) {
            return Ok(Vec::new());
        }
        let of_body = |(leg, degc): (usize, f64)| LegLimit {
            leg,
            degc,
            is_cable: false,
        };
        let mut limits: Vec<LegLimit> = bodies.into_iter().enumerate().map(of_body).collect();
        limits.extend(self.limits().into_iter().filter(|limit| limit.is_cable));
        // The table begins at the load that can flow for ever; for the cables, their load without a joint stands in for it.
        let mut borne = RATIO_MOST;
        for (leg, of) in self.legs.iter().enumerate() {
            let body = of.limits_degc.1;
            let body = body.map(|degc| lean.load_to_degc(&self.model.shapes, leg, degc));
            let body = body.transpose()?.flatten();
            let both = [body, of.cable_load_to_limit_ratio];
            borne = both.into_iter().flatten().fold(borne, f64::min);
        }
        if borne >= RATIO_MOST {
            return Ok(Vec::new());
        }
        let row = |over: f64| {
            let ratio = over * borne.max(1.0);
            let loads_a: Vec<f64> = self.model.loads_a.iter().map(|load| ratio * load).collect();
            let first = lean.first_to_limit_s(&self.model.shapes, &loads_a, &limits)?;
            Ok(Emergency {
                ratio,
                loads_a,
                first_s: first.map(|(index, s)| (limits[index], s)),
            })
        };
        EMERGENCY_RATIOS.into_iter().map(row).collect()
    }
}

impl LegLimit {
    /// Whether a state of the legs exceeds the limit.
    fn is_passed(&self, legs: &[LegAt]) -> bool {
        let at = &legs[self.leg];
        let degc = if self.is_cable {
            at.cable_degc
        } else {
            at.joint_degc
        };
        degc > self.degc
    }
}

/// Loads of the table as ratios to the job's, up to a little more than the governing load.
fn load_ratios(governing: f64) -> Vec<f64> {
    let most = BEYOND * governing.max(1.0);
    let step = LOAD_STEP * (most / LOAD_STEP / LOADS_MOST as f64).ceil().max(1.0);
    let n = (most / step).ceil() as usize;
    let mut ratios: Vec<f64> = (1..=n).map(|k| k as f64 * step).collect();
    // The job's own load always has a row. If it passes a limit, loads below that limit have rows too.
    ratios.push(1.0);
    if governing > 0.0 && governing < 1.0 {
        ratios.retain(|ratio| *ratio <= 1.0);
        ratios.extend([0.25, 0.5, 0.75, 0.9, 1.0].map(|share| share * governing));
    }
    ratios.sort_by(f64::total_cmp);
    ratios.dedup_by(|later, earlier| *later - *earlier < 1e-9);
    ratios
}
