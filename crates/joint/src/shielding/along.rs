//! Along: resistance of a shield along its cable, as an interval, and the mean diameter on which it lies.

use super::unknown;
use crate::cable::{self, Construction, Layer, Metal, Shield};
use crate::fault::{shield_area_mm2, tape_of};
use crate::job::{Job, Leg};
use crate::said::{AlongSaid, Said};
use crate::section::Unknown;
use crate::survey::measured;
use jointwright_numerics::rating::conductor::{self, at_temperature};
use jointwright_units::Length;
use std::f64::consts::{FRAC_PI_4, PI};

/// Resistance of a shield along its cable.
#[derive(Clone, Debug, PartialEq)]
pub struct ShieldResistance {
    /// Least and greatest at 20 °C, Ω/m.
    pub at_20_ohm_per_m: (f64, f64),
    /// Change of resistance at 20 °C, 1/K.
    pub coefficient_20_per_k: f64,
    /// Bounds of the resistance, in words.
    pub says: Said,
}

impl ShieldResistance {
    /// Least and greatest resistance at a temperature, Ω/m.
    pub fn at_ohm_per_m(&self, degc: f64) -> (f64, f64) {
        let at = |ohm_per_m| at_temperature(ohm_per_m, self.coefficient_20_per_k, degc);
        (at(self.at_20_ohm_per_m.0), at(self.at_20_ohm_per_m.1))
    }
}

/// Resistivity and its temperature coefficient.
fn resistivity(metal: Metal) -> conductor::Metal {
    match metal {
        Metal::Copper => conductor::Metal::COPPER,
        Metal::Aluminium => conductor::Metal::ALUMINIUM,
    }
}

/// Source of the diameter under a leg's shield.
pub fn measured_said(job: &Job, leg: &Leg) -> Said {
    match measured(job, leg).1 {
        Some(read) => AlongSaid::UnderAsRead {
            least_mm: read.least().mm(),
            greatest_mm: read.greatest().mm(),
        },
        None => AlongSaid::UnderByPapers,
    }
    .into()
}

/// Least and greatest mean diameter of a shield, m: the diameter under it plus one thickness.
///
/// # Errors
/// The missing fact about the cable.
pub fn mean_m(job: &Job, leg: &Leg) -> Result<(f64, f64), Unknown> {
    mean_of(&measured(job, leg).0, leg)
}

fn mean_of(cable: &Construction, leg: &Leg) -> Result<(f64, f64), Unknown> {
    let of = |layer| cable.diameter_over(layer);
    let thickness = cable.thickness_of(Layer::MetallicShield);
    match (of(Layer::InsulationScreen), thickness) {
        (Ok(under), Ok(thickness)) => Ok((
            (under.least + thickness.least).m(),
            (under.greatest + thickness.greatest).m(),
        )),
        (Err(why), _) | (_, Err(why)) => Err(no_diameter(&leg.id, &why)),
    }
}

/// Missing fact about the cable under a shield.
fn no_diameter(id: &str, why: &cable::Unknown) -> Unknown {
    let leg = || id.to_owned();
    let said = AlongSaid::DiameterOf { leg: leg() };
    let question = AlongSaid::AskDiameters { leg: leg() };
    unknown(Said::of(said, Said::from(why)), question)
}

/// Resistance of a leg's shield along its cable, from its construction.
///
/// Wires and straps: R = ρ20/A · √(1 + (π d/p)²), straight if no lay is stated.
/// Corrugated tape: from its effective area with the seam to a smooth tape without it.
/// Lapped tape: from a tube whose turns all touch to the tape alone, whose current follows every turn, R = ρ20/(b w) · √(1 + (π d/a)²).
///
/// Tape with wires: both in parallel, from the tube to the tape alone.
///
/// ρ20: resistivity at 20 °C · A: total area · d: mean diameter · p: lay · b, w: thickness and width of the tape · a: advance of one turn, w less its lap.
///
/// # Assumes
/// The shield has as many wires as the papers state, and all are whole.
/// A corrugated tape is as long as its cable: the way along its corrugation is longer, by an amount that nobody states.
///
/// # Errors
/// A fact that is not stated, or elements that do not fit round the screen.
///
/// # Source
/// iec_60287_1_1 table 1 for the resistivity; icea_p45482, memory, for the corrugated tape; else geometry.
/// Tape and wires conduct in parallel: common practice, no source.
pub fn along(job: &Job, leg: &Leg) -> Result<ShieldResistance, Unknown> {
    along_of(&measured(job, leg).0, leg)
}

/// The same from the papers alone, whatever was read.
///
/// # Errors
/// As for [`along`].
pub fn along_by_papers(leg: &Leg) -> Result<ShieldResistance, Unknown> {
    along_of(&leg.cable, leg)
}

fn along_of(cable: &Construction, leg: &Leg) -> Result<ShieldResistance, Unknown> {
    let Some(metal) = leg.shield_metal else {
        let leg = || leg.id.clone();
        return Err(unknown(
            AlongSaid::MetalNotStated { leg: leg() },
            AlongSaid::AskMetal { leg: leg() },
        ));
    };
    let (longer, says) = path_ratio(cable, leg)?;
    let area_mm2 = shield_area_mm2(cable, None).map_err(|why| unmade(leg, why))?;
    let area_mm2 = match with_wires_mm2(cable, leg)? {
        // These areas already contain the longer ways of tape and wires.
        Some(area_mm2) => area_mm2,
        None => area_mm2,
    };
    let metal = resistivity(metal);
    let at_20 = |area, longer| metal.resistance_ohm_per_m(area * 1e-6, longer, 20.0);
    Ok(ShieldResistance {
        at_20_ohm_per_m: (at_20(area_mm2.1, longer.0), at_20(area_mm2.0, longer.1)),
        coefficient_20_per_k: metal.coefficient_20_per_k,
        says: says.into(),
    })
}

/// Least and greatest area of a straight rod that conducts as tape and wires in parallel, mm²: Σ A/ℓ, with ℓ the ratio of each one's length to the cable's; `None` for another shield.
fn with_wires_mm2(cable: &Construction, leg: &Leg) -> Result<Option<(f64, f64)>, Unknown> {
    let Shield::TapeWithWires {
        count, diameter, ..
    } = cable.shield
    else {
        return Ok(None);
    };
    let tape = tape_of(cable).map_err(|why| unmade(leg, why))?;
    let Some(tape) = tape else { return Ok(None) };
    let wires = f64::from(count) * FRAC_PI_4 * diameter.mm() * diameter.mm();
    let (least, greatest) = turns(cable, leg)?;
    Ok(Some((
        wires / greatest + tape.alone_mm2 / tape.turn_ratio,
        wires / least + tape.alone_mm2.max(tape.tube_mm2),
    )))
}

/// Ratio of the length of a wire or strap to the cable's, least and greatest; 1 if no lay is stated.
fn turns(cable: &Construction, leg: &Leg) -> Result<(f64, f64), Unknown> {
    let Some(lay) = leg.shield_run.lay else {
        return Ok((1.0, 1.0));
    };
    let (least, greatest) = mean_of(cable, leg)?;
    let turned = |mean_m: f64| 1.0_f64.hypot(PI * mean_m / lay.m());
    Ok((turned(least), turned(greatest)))
}

fn unmade(leg: &Leg, why: Said) -> Unknown {
    let leg = || leg.id.clone();
    unknown(
        Said::of(AlongSaid::ResistanceOf { leg: leg() }, why),
        AlongSaid::AskHowMade { leg: leg() },
    )
}

/// Ratio of the length of the current's way to the cable's, least and greatest; for a lapped tape from a tube, 1, to the tape alone.
fn path_ratio(cable: &Construction, leg: &Leg) -> Result<((f64, f64), AlongSaid), Unknown> {
    let lay = leg.shield_run.lay;
    match (cable.shield, lay) {
        (Shield::FlatStraps { .. } | Shield::ConcentricWires { .. }, None) => {
            Ok(((1.0, 1.0), AlongSaid::StraightWires))
        }
        (Shield::FlatStraps { .. } | Shield::ConcentricWires { .. }, Some(lay)) => Ok((
            turns(cable, leg)?,
            AlongSaid::WiresWithLay { lay_mm: lay.mm() },
        )),
        (Shield::TapeWithWires { .. }, lay) => {
            let tape = tape_of(cable).map_err(|why| unmade(leg, why))?;
            let said = AlongSaid::WiresBesideTape {
                lay_mm: lay.map(Length::mm),
                turned_ratio: tape.map_or(1.0, |tape| tape.turn_ratio),
            };
            Ok(((1.0, 1.0), said))
        }
        (Shield::CorrugatedTape { .. }, _) => Ok(((1.0, 1.0), AlongSaid::CorrugatedTape)),
        (
            Shield::LappedTape {
                thickness,
                width,
                overlap_percent,
            },
            _,
        ) => {
            let mean_m = (widest(cable, thickness, &leg.id)?).m();
            let Some(width) = width else {
                let leg = || leg.id.clone();
                return Err(unknown(
                    AlongSaid::TapeWidthNotStated { leg: leg() },
                    AlongSaid::AskTapeWidth { leg: leg() },
                ));
            };
            let advance_m = width.m() * (1.0 - overlap_percent * 1e-2);
            let turned_ratio = 1.0_f64.hypot(PI * mean_m / advance_m);
            Ok(((1.0, turned_ratio), AlongSaid::LappedTape { turned_ratio }))
        }
    }
}

/// Greatest mean diameter of a lapped tape.
fn widest(cable: &Construction, thickness: Length, id: &str) -> Result<Length, Unknown> {
    let over = cable.diameter_over(Layer::InsulationScreen);
    let over = over.map_err(|why| no_diameter(id, &why))?;
    Ok(over.greatest + thickness)
}
