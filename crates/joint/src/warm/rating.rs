//! Rating: the loads at which limits are reached, temperatures at other loads, how long more may flow, and temperatures along the axis.
//!
//! Why its own file: it asks the solved star a hundred times more than a plan does, so it is solved when somebody asks for it.
//!
//! Not here: the document of a rating (`plan`), its pictures (`drawing`).

use super::{LegAt, LegLimit, LegWarm, RATIO_MOST, TemperatureProfile, Warm, WarmJoint};
use crate::said::Said;

/// Loads of the emergency table, over the least that is not borne for ever.
const EMERGENCY_RATIOS: [f64; 12] = [
    1.02, 1.05, 1.1, 1.15, 1.2, 1.3, 1.4, 1.5, 1.7, 1.9, 2.2, 2.5,
];
/// Step of the table of loads, over the job's.
const LOAD_STEP: f64 = 0.25;
/// Most rows of that table.
const LOADS_MOST: usize = 12;
/// It goes on to so many times the load that governs.
const BEYOND: f64 = 1.1;

/// Everything that a rating says beyond the temperatures at the job's load.
#[derive(Clone, Debug, PartialEq)]
pub struct Rating {
    /// Limits and the loads at which they are reached, the least first.
    pub governs: Vec<Govern>,
    /// Temperatures at loads in proportion to the job's, the least first.
    pub loads: Vec<AtRatio>,
    /// How long loads may flow; empty where a limit is not stated, or the load before it passes one.
    pub emergencies: Vec<Emergency>,
    /// Temperatures along each leg at the job's load; none where its losses outgrow its cooling.
    pub along: Option<Vec<TemperatureProfile>>,
}

/// A limit of one leg, and the load that reaches it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Govern {
    /// The limit.
    pub limit: LegLimit,
    /// Load over the job's, 0 where it is passed without any; none where no load is found that reaches it.
    pub ratio: Option<f64>,
}

/// All legs at one load.
#[derive(Clone, Debug, PartialEq)]
pub struct AtRatio {
    /// Load over the job's.
    pub ratio: f64,
    /// Its legs; none where losses outgrow the cooling.
    pub legs: Option<Vec<LegAt>>,
    /// Limits that are passed.
    pub passed: Vec<LegLimit>,
}

/// How long a load may flow from the job's load at rest.
#[derive(Clone, Debug, PartialEq)]
pub struct Emergency {
    /// Load over the job's.
    pub ratio: f64,
    /// Loads of the legs, A.
    pub loads_a: Vec<f64>,
    /// The first limit that is reached, and after how many seconds; none where none is within the longest time looked at.
    pub first_s: Option<(LegLimit, f64)>,
}

impl Warm {
    /// The rating of a joint; none where its temperatures are not computed.
    ///
    /// # Errors
    /// That a state could not be solved.
    pub fn rating(&self) -> Result<Option<Rating>, Said> {
        let Warm::Done(done) = self else {
            return Ok(None);
        };
        let governs = done.governs()?;
        Ok(Some(Rating {
            loads: done.loads(&governs)?,
            emergencies: done.emergencies()?,
            along: done.model.along(1.0)?,
            governs,
        }))
    }
}

impl WarmJoint {
    /// Limits of all legs: of the metal inside each body all the time, and of the cables.
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
        // A limit that the surroundings alone pass is passed before any load.
        let unloaded = self.model.at_rest(0.0)?;
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
            let legs = self.model.at_rest(ratio)?;
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

    /// How long loads flow until the first limit, of a body in an emergency or of the job for its cables.
    fn emergencies(&self) -> Result<Vec<Emergency>, Said> {
        let bodies = self.legs.iter().map(|of| of.limits_degc.1);
        let (Some(bodies), Some(at_load)) = (bodies.collect::<Option<Vec<f64>>>(), &self.at_load)
        else {
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
        // From the load that is borne all the time on; that of the cables by the nearest of what is known.
        let mut borne = RATIO_MOST;
        for (leg, of) in self.legs.iter().enumerate() {
            let body = of.limits_degc.1;
            let body = body.map(|degc| self.model.load_to_degc(leg, degc));
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
            let first = self.model.first_to_limit_s(&loads_a, &limits)?;
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
    /// Whether the legs of a state are hotter.
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

/// Loads of the table, over the job's, up to beyond the one that governs.
fn load_ratios(governing: f64) -> Vec<f64> {
    let most = BEYOND * governing.max(1.0);
    let step = LOAD_STEP * (most / LOAD_STEP / LOADS_MOST as f64).ceil().max(1.0);
    let n = (most / step).ceil() as usize;
    let mut ratios: Vec<f64> = (1..=n).map(|k| k as f64 * step).collect();
    // The job's own load has its row, whatever the step, and so has what lies below a limit that it passes.
    ratios.push(1.0);
    if governing > 0.0 && governing < 1.0 {
        ratios.retain(|ratio| *ratio <= 1.0);
        ratios.extend([0.25, 0.5, 0.75, 0.9, 1.0].map(|share| share * governing));
    }
    ratios.sort_by(f64::total_cmp);
    ratios.dedup_by(|later, earlier| *later - *earlier < 1e-9);
    ratios
}
