//! Cable run: rating of a cable without a joint, in each stretch of its surroundings, as if that stretch were endless.
//!
//! Diameters come from the papers; of each band the end counts that makes the conductor hotter.
//!
//! Source: `docs/theory/rating.md`, `docs/theory/warm.md`.

use super::around::at_named;
use super::daily::{Buried, Cyclic, cyclic};
use super::outside::{self, FREE_AIR, SOIL_DRIES, Surface};
use crate::cable::{self, Metal};
use crate::job::{Job, Leg, Soil, Surrounding};
use crate::said::{HeatAsk, HeatCannot, HeatLacks, HeatLayer, NoDay, Said, SoilSaid, WarmingSaid};
use crate::section::Unknown;
use crate::shielding::{Round, ShieldLoss, along, shield_loss};
use jointwright_numerics::rating::conductor::{Neighbours, Proximity};
use jointwright_numerics::rating::shield::Shield;
use jointwright_numerics::rating::thermal::{StillAir, layer_k_m_per_w};
use jointwright_numerics::rating::{Bond, Circuit, Conductor, Outside, RatingError, Steady};
use std::f64::consts::PI;

/// Key of the table of cables, whose rows from memory wait for the owner's word.
const CABLE_TABLE: &str = "cable-table";
/// Temperature up to which the greatest loss of a shield is looked for, if the job states no limit for its conductor, °C.
const SHIELD_HOT_DEGC: f64 = 90.0;
/// Reactance of a shield whose loss is given as a resistance of its conductor, Ω/m: so large that the whole current flows in the shield.
const CARRIES_ALL_OHM_PER_M: f64 = 1.0e9;

/// Rated run of cable.
#[derive(Clone, Debug, PartialEq)]
pub struct CableRun {
    /// Each stretch of its surroundings.
    pub stretches: Vec<Stretched>,
    /// Message about the loss of the shield.
    pub shield_says: Said,
    /// Keys of values from memory that the owner has not confirmed.
    pub unconfirmed: Vec<&'static str>,
}

/// Stretch of a run, as if it were endless.
#[derive(Clone, Debug, PartialEq)]
pub struct Stretched {
    /// Name of the stretch, in the job's words.
    pub what: String,
    /// Temperature of its surroundings, °C.
    pub degc: f64,
    /// Message about its computed surroundings, part by part; `None` if film or resistance is stated.
    pub outside: Option<Said>,
    /// State at the job's load; `None` without a load, or in thermal runaway.
    pub at_load: Option<RunAt>,
    /// State at the load that brings the conductor to the job's highest temperature; `None` if the job states none, or if the surroundings alone exceed it.
    pub at_limit: Option<RunAt>,
    /// Peak of the job's day that brings it there; `None` if it is not computed.
    pub cyclic: Option<Cyclic>,
    /// Reason why that is not computed, if the job states a day.
    pub cyclic_left_out: Option<Said>,
}

/// State of a cable at a steady load.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RunAt {
    /// Load, A.
    pub load_a: f64,
    /// Temperature of the conductor, °C.
    pub conductor_degc: f64,
    /// Temperature of the shield, °C.
    pub shield_degc: f64,
    /// Temperature of the surface, °C.
    pub surface_degc: f64,
    /// Losses of conductor and shield, W/m.
    pub loss_w_per_m: (f64, f64),
}

impl Stretched {
    /// Stretch with its stated facts only; if the job states a day of loads, with the reason why it is left out, if it is.
    fn of(row: &Surrounding, has_day: bool) -> Stretched {
        let left_out = has_day.then(|| super::daily::left_out(row)).flatten();
        Stretched {
            what: row.what.clone(),
            degc: row.degc,
            outside: None,
            at_load: None,
            at_limit: None,
            cyclic: None,
            cyclic_left_out: left_out.map(Said::from),
        }
    }

    /// Keeps the smallest peak so far; an error leaves out the day, and nothing else.
    fn add_day(&mut self, next: Result<Option<Cyclic>, RatingError>) {
        match next {
            Ok(next) => {
                let both = next.into_iter().chain(self.cyclic);
                self.cyclic = both.min_by(|a, b| a.peak_a.total_cmp(&b.peak_a));
            }
            Err(why) => {
                let why = Said::from(&why);
                self.cyclic_left_out = Some(NoDay::NotComputed { why }.into());
            }
        }
    }
}

fn run_at(steady: &Steady) -> RunAt {
    RunAt {
        load_a: steady.current_a,
        conductor_degc: steady.conductor_degc(),
        shield_degc: steady.shield_degc(),
        surface_degc: steady.surface_degc(),
        loss_w_per_m: (steady.conductor_w_per_m, steady.shield_w_per_m),
    }
}

/// Rates the one run of a job without a joint.
///
/// # Errors
/// The missing facts with their questions, or a contradiction without a question.
pub fn rate_run(job: &Job) -> Result<CableRun, Unknown> {
    let Some(leg) = job.legs.first() else {
        return Err(Unknown::plain(HeatLacks::NoRun));
    };
    let (stuffs, shield) = (stuffs(leg), shield(job, leg));
    let rows: Vec<&Surrounding> = job.surroundings.iter().collect();
    let mut open: Vec<Unknown> = Vec::new();
    if rows.is_empty() {
        let cable = || leg.id.clone();
        open.push(Unknown::new(
            HeatLacks::RunSurroundings { cable: cable() },
            [HeatAsk::RunSurroundings { cable: cable() }],
        ));
    }
    let (stuffs, (shield, shield_says)) = match (stuffs, shield) {
        (Ok(stuffs), Ok(shield)) if open.is_empty() => (stuffs, shield),
        (stuffs, shield) => {
            open.extend(stuffs.err());
            open.extend(shield.err());
            return Err(joined(open));
        }
    };
    let (bands, table) = bands(leg).map_err(Unknown::plain)?;
    let run = Run {
        job,
        leg,
        stuffs,
        shield,
        bands,
    };
    let mut memory: Vec<&'static str> = table.into_iter().collect();
    let mut stretches = Vec::new();
    for row in rows {
        let stretched = run.stretch(row, &mut memory);
        let refused = |why: Said| Unknown::plain(at_named(row, why));
        stretches.push(stretched.map_err(refused)?);
    }
    let is_open = |key: &&str| !job.confirmations.iter().any(|row| row.key == **key);
    let mut unconfirmed: Vec<&'static str> = memory.into_iter().filter(is_open).collect();
    unconfirmed.sort_unstable();
    unconfirmed.dedup();
    Ok(CableRun {
        stretches,
        shield_says,
        unconfirmed,
    })
}

fn joined(open: Vec<Unknown>) -> Unknown {
    let why = Said::all(open.iter().map(|of| of.why.clone()));
    let questions = open.into_iter().flat_map(|of| of.questions);
    Unknown::new(why, questions)
}

/// Thermal resistivities of insulation and jacket, K·m/W.
fn stuffs(leg: &Leg) -> Result<(f64, f64), Unknown> {
    let layers = [
        (HeatLayer::Insulation, leg.insulation_stuff),
        (HeatLayer::Jacket, leg.jacket_stuff),
    ];
    let missing = layers.iter().filter(|(_, stuff)| stuff.is_none());
    let missing: Vec<Unknown> = missing
        .map(|(layer, _)| {
            let (cable, layer) = (|| leg.id.clone(), *layer);
            let ask = HeatAsk::RunStuff {
                cable: cable(),
                layer,
            };
            let why = HeatLacks::RunStuff {
                cable: cable(),
                layer,
            };
            Unknown::new(why, [ask])
        })
        .collect();
    match (leg.insulation_stuff, leg.jacket_stuff) {
        (Some(insulation), Some(jacket)) => Ok((
            1.0 / insulation.conductivity_w_per_mk,
            1.0 / jacket.conductivity_w_per_mk,
        )),
        _ => Err(joined(missing)),
    }
}

/// Shield for a rating, and the message about it: a stated current in proportion to the load, else the circulating current at its greatest loss.
fn shield(job: &Job, leg: &Leg) -> Result<(Option<Shield>, Said), Unknown> {
    let all_of = |resistance_20_ohm_per_m, coefficient_20_per_k| Shield {
        resistance_20_ohm_per_m,
        coefficient_20_per_k,
        bond: Bond::BothEnds {
            reactance_ohm_per_m: CARRIES_ALL_OHM_PER_M,
        },
    };
    if let Some(shield_load_a) = leg.shield_load_a {
        let along = along(job, leg)?;
        let load_a = job.load_of_a(leg).filter(|load_a| *load_a > 0.0);
        let load_a =
            load_a.ok_or_else(|| Unknown::new(HeatLacks::NoLoadForShield, [HeatAsk::RunLoad]))?;
        let share = shield_load_a / load_a;
        let at_20 = along.at_20_ohm_per_m.1 * share * share;
        let stated = WarmingSaid::ShieldStated { shield_load_a };
        let says = Said::all([stated.into(), along.says]);
        return Ok((Some(all_of(at_20, along.coefficient_20_per_k)), says));
    }
    let loss = shield_loss(job, leg)?;
    let says = loss.says().clone();
    let hot = job.duty.conductor_greatest_degc.unwrap_or(SHIELD_HOT_DEGC);
    let greatest = |round: &Round| round.greatest_loss_ohm_per_m((0.0, hot));
    Ok(match &loss {
        ShieldLoss::Nothing(_) => (None, says),
        ShieldLoss::Round(round) => (
            Some(all_of(greatest(round), 0.0)),
            Said::all([WarmingSaid::FlowsRoundAtWorst.into(), says]),
        ),
    })
}

/// Diameters over conductor, screen of the insulation, shield and jacket, m.
type Diameters = [f64; 4];

/// Smallest and largest value of these diameters, from the papers' bands.
///
/// Returns also the key of the table of cables, if one of them rests on its rows from memory.
fn bands(leg: &Leg) -> Result<([[f64; 2]; 4], Option<&'static str>), Said> {
    let layers = [
        cable::Layer::Conductor,
        cable::Layer::InsulationScreen,
        cable::Layer::MetallicShield,
        cable::Layer::Jacket,
    ];
    let (mut bands, mut key) = ([[0.0; 2]; 4], None);
    for (band, layer) in bands.iter_mut().zip(layers) {
        let of = leg.cable.diameter_over(layer);
        let of = of.map_err(|why| {
            let (cable, why) = (leg.id.clone(), Said::from(&why));
            Said::from(HeatCannot::Cable { cable, why })
        })?;
        *band = [of.least.m(), of.greatest.mm() * 1e-3];
        key = key.or((of.sure >= cable::Sure::MemoryRecomputed).then_some(CABLE_TABLE));
    }
    Ok((bands, key))
}

/// Run, and all facts that are the same in each of its stretches.
struct Run<'a> {
    job: &'a Job,
    leg: &'a Leg,
    /// Thermal resistivity of insulation and jacket, K·m/W.
    stuffs: (f64, f64),
    shield: Option<Shield>,
    bands: [[f64; 2]; 4],
}

impl Run<'_> {
    /// Every combination of the bands' ends in which the diameters grow outward.
    fn diameters(&self) -> Vec<Diameters> {
        let n_layers = self.bands.len();
        let ways = 0..1_usize << n_layers;
        let of = |way: usize| -> Diameters {
            std::array::from_fn(|layer| self.bands[layer][way >> layer & 1])
        };
        let grows = |diameters: &Diameters| diameters.windows(2).all(|pair| pair[0] < pair[1]);
        let mut all: Vec<Diameters> = ways.map(of).filter(grows).collect();
        all.dedup();
        all
    }

    fn stretch(
        &self,
        row: &Surrounding,
        memory: &mut Vec<&'static str>,
    ) -> Result<Stretched, Said> {
        let load_a = self.job.load_of_a(self.leg);
        let limit_degc = self.job.duty.conductor_greatest_degc;
        let daily = self.job.duty.daily.as_ref();
        let mut stretched = Stretched::of(row, daily.is_some());
        let (mut hottest, mut least): (Option<Steady>, Option<Steady>) = (None, None);
        let (mut is_endless, mut is_passed) = (false, false);
        let all = self.diameters();
        if all.is_empty() {
            return Err(HeatCannot::RunNotOutward.into());
        }
        for diameters in all {
            let (circuit, says) = self.circuit(row, &diameters, memory)?;
            if let Some(load_a) = load_a {
                match circuit.at_current(load_a) {
                    Ok(steady) => {
                        let degc = steady.conductor_degc();
                        if hottest.as_ref().is_none_or(|of| degc > of.conductor_degc()) {
                            (hottest, stretched.outside) = (Some(steady), says.clone());
                        }
                    }
                    Err(RatingError::Runaway { .. }) => is_endless = true,
                    Err(why) => return Err(Said::from(&why)),
                }
            }
            if let Some(degc) = limit_degc {
                match circuit.at_temperature(degc) {
                    Ok(steady) => {
                        if let Some(daily) = daily {
                            stretched.add_day(cyclic(
                                daily,
                                &self.buried(row, &diameters),
                                &circuit,
                                &steady,
                            ));
                        }
                        if least
                            .as_ref()
                            .is_none_or(|of| steady.current_a < of.current_a)
                        {
                            least = Some(steady);
                        }
                    }
                    Err(RatingError::NoRoom { .. }) => is_passed = true,
                    Err(why) => return Err(Said::from(&why)),
                }
            }
            if stretched.outside.is_none() {
                stretched.outside = says;
            }
        }
        stretched.at_load = hottest.filter(|_| !is_endless).as_ref().map(run_at);
        let is_whole = !is_passed && stretched.cyclic_left_out.is_none();
        stretched.cyclic = stretched.cyclic.filter(|_| is_whole);
        stretched.at_limit = least.filter(|_| !is_passed).as_ref().map(run_at);
        Ok(stretched)
    }

    fn buried<'b>(&'b self, row: &'b Surrounding, diameters: &Diameters) -> Buried<'b> {
        let [conductor_m, screen_m, _, jacket_m] = *diameters;
        Buried {
            leg: self.leg,
            row,
            conductor_m,
            screen_m,
            jacket_m,
        }
    }

    fn circuit(
        &self,
        row: &Surrounding,
        diameters: &Diameters,
        memory: &mut Vec<&'static str>,
    ) -> Result<(Circuit, Option<Said>), Said> {
        let [conductor_m, screen_m, shield_m, jacket_m] = *diameters;
        let surface = Surface {
            jacket_m: (shield_m, jacket_m),
            jacket_k_m_per_w: self.stuffs.1,
        };
        let around = outside_of(row, &surface, memory)?;
        let papers = self.leg.cable.conductor;
        let direct = papers.dc_resistance_20().map_err(|why| Said::from(&why))?;
        // The stated spacing of the axes, else touching cables, which is the warm side.
        let spacing = self.leg.shield_run.spacing.map(|spacing| spacing.m());
        let circuit = Circuit {
            frequency_hz: self.job.system.frequency_hz,
            conductor: Conductor {
                resistance_20_ohm_per_m: direct.resistance_ohm_per_km * 1e-3,
                coefficient_20_per_k: coefficient_per_k(papers.metal),
                skin_ratio: 1.0,
                proximity: Some(Proximity {
                    strand_ratio: 1.0,
                    diameter_m: conductor_m,
                    spacing_m: spacing.unwrap_or(jacket_m).max(conductor_m),
                    neighbours: Neighbours::Two,
                }),
            },
            shield: self.shield,
            dielectric_w_per_m: 0.0,
            inner_k_m_per_w: vec![layer_k_m_per_w(self.stuffs.0, conductor_m, screen_m)],
            // The jacket's material stands in for the shield's metal, which conducts better.
            outer_k_m_per_w: vec![
                layer_k_m_per_w(self.stuffs.1, screen_m, jacket_m),
                around.before_k_m_per_w,
            ],
            outside: around.outside,
            ambient_degc: row.degc,
        };
        Ok((circuit, around.says))
    }
}

fn coefficient_per_k(metal: Metal) -> f64 {
    metal.coefficient_at_per_k(20.0)
}

/// Thermal resistance of a row's surroundings.
struct Around {
    /// Part of the resistance that does not grow as the soil dries, K·m/W.
    before_k_m_per_w: f64,
    outside: Outside,
    /// Message about the resistance, if it was computed.
    says: Option<Said>,
}

fn outside_of(
    row: &Surrounding,
    surface: &Surface,
    memory: &mut Vec<&'static str>,
) -> Result<Around, Said> {
    let outside_m = surface.jacket_m.1;
    let stated = |resistance_k_m_per_w| Around {
        before_k_m_per_w: 0.0,
        outside: Outside::Soil {
            resistance_k_m_per_w,
        },
        says: None,
    };
    if let Some(soil) = &row.soil {
        return buried(row, soil, surface, memory);
    }
    if let Some(form) = row.air {
        memory.push(FREE_AIR);
        return Ok(Around {
            before_k_m_per_w: 0.0,
            outside: Outside::Air {
                film: StillAir::Coefficient(outside::hanging(form)),
                outside_m,
            },
            says: Some(SoilSaid::AirAlongRun.into()),
        });
    }
    match (row.film_w_per_m2k, row.outside_k_m_per_w) {
        (Some(film), _) => Ok(stated(1.0 / (PI * outside_m * film))),
        (None, Some(resistance)) => Ok(stated(resistance)),
        (None, None) => Err(HeatCannot::NeitherFilmNorResistance.into()),
    }
}

/// Thermal resistance of soil around a cable or its duct.
///
/// Soil that dries has two zones around a cable without a duct; around ducts all of it counts as dry.
fn buried(
    row: &Surrounding,
    soil: &Soil,
    surface: &Surface,
    memory: &mut Vec<&'static str>,
) -> Result<Around, Said> {
    let duct = row.duct.as_ref();
    let drying = soil.drying.filter(|_| duct.is_none());
    let parts = match drying {
        Some(_) => outside::in_moist_soil(soil, None, surface, row.degc)?,
        None => outside::in_soil(soil, duct, surface, row.degc)?,
    };
    memory.extend(parts.iter().filter_map(|part| part.memory));
    memory.extend(drying.map(|_| SOIL_DRIES));
    let sum = |is_soil: bool| -> f64 {
        let ours = parts.iter().filter(|part| part.is_soil == is_soil);
        ours.map(|part| part.k_m_per_w).sum()
    };
    let says = Said::from(outside::said(&parts));
    Ok(match drying {
        None => Around {
            before_k_m_per_w: sum(false),
            outside: Outside::Soil {
                resistance_k_m_per_w: sum(true),
            },
            says: Some(says),
        },
        Some(drying) => Around {
            before_k_m_per_w: sum(false),
            outside: Outside::DryingSoil {
                moist_k_m_per_w: sum(true),
                dry_ratio: drying.dry_k_m_per_w / soil.resistivity_k_m_per_w,
                critical_rise_k: drying.above_k,
            },
            says: Some(
                SoilSaid::DriesInTwoZones {
                    outside: says,
                    above_k: drying.above_k,
                    dry_k_m_per_w: drying.dry_k_m_per_w,
                }
                .into(),
            ),
        },
    })
}
