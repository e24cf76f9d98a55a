//! Fault: the demand of a short circuit on the metal that carries it.
//!
//! Why its own room: checks compare and never solve; one form heats conductor and shield, and one question asks what parts withstand.
//!
//! Invariants:
//! - The heating is adiabatic: no heat leaves the metal while the current flows, nor between shots, so the computed temperature is on the warm side.
//! - A current, a time or a number of shots that nobody states is asked for.
//! - A shield carries the whole stated current, unless the job states the current of its leg.
//!
//! Not here: whose limit it is (`checks`); the asymmetry of the first periods.
//!
//! Source: icea_p32382; `docs/theory/fault.md`.

mod comparison;
mod weakest;

pub(crate) use comparison::{Heated, Withstood};
pub use weakest::{Carries, carries, weakest};

use crate::cable::{self, Construction, Layer, Metal, Shield, Size};
use crate::job::{Duty, Job, Leg};
use crate::said::{FaultSaid, Said, ShieldMeasure, Shots};
use jointwright_numerics::rating::short_circuit::CircularMilForm;
use jointwright_numerics::rating::{conductor, shield};
use jointwright_units::Length;
use std::f64::consts::PI;

/// Square metres per square millimetre.
const MM2_M2: f64 = 1e-6;

/// A short circuit as the job states it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fault {
    /// Current, A rms.
    pub current_a: f64,
    /// Total time of all shots, s.
    pub time_s: f64,
    /// Number of shots: one, and one more for each reclosing.
    pub n_shots: i64,
}

impl Fault {
    /// The conductor's short circuit.
    ///
    /// # Errors
    /// The fact that the job does not state.
    pub fn of_conductor(duty: &Duty) -> Result<Fault, Said> {
        Fault::of(duty, "fault", duty.fault_a, duty.fault_s)
    }

    /// The short circuit of a leg's shield and of the parts that carry it across the joint.
    ///
    /// # Errors
    /// The fact that the job does not state.
    pub fn of_shield(job: &Job, leg: &Leg) -> Result<Fault, Said> {
        let duty = &job.duty;
        let current_a = leg.shield_fault_a.or(duty.shield_fault_a);
        let fault = Fault::of(duty, "shield_fault", current_a, duty.shield_fault_s)?;
        let Some(longest_s) = job.system.clearing_time_s else {
            return Err(FaultSaid::ClearingTimeNotStated.into());
        };
        if duty.shield_fault_s.is_some_and(|time| time < longest_s) {
            return Err(FaultSaid::ShorterThanClearing { longest_s }.into());
        }
        Ok(fault)
    }

    fn of(
        duty: &Duty,
        name: &str,
        current_a: Option<f64>,
        time_s: Option<f64>,
    ) -> Result<Fault, Said> {
        let missing = [
            (current_a.is_none(), name.to_owned()),
            (time_s.is_none(), format!("{name}_time")),
            (duty.reclosing.is_none(), "reclosing".to_owned()),
        ];
        let fields: Vec<String> = missing
            .into_iter()
            .filter_map(|(is_open, name)| is_open.then(|| format!("duty.{name}")))
            .collect();
        let (Some(current_a), Some(time_s), Some(reclosing), true) =
            (current_a, time_s, duty.reclosing, fields.is_empty())
        else {
            return Err(FaultSaid::NotStated { fields }.into());
        };
        if current_a <= 0.0 || time_s <= 0.0 {
            let field = format!("duty.{name}");
            return Err(FaultSaid::OfNothing { field }.into());
        }
        let n_shots = 1 + reclosing.max(0);
        Ok(Fault {
            current_a,
            time_s: time_s * n_shots as f64,
            n_shots,
        })
    }

    /// Joule integral I² t of all shots, kA²·s.
    pub fn square_ka2_s(&self) -> f64 {
        self.current_a * self.current_a * self.time_s * 1e-6
    }

    /// Heat that all shots make in a resistance, kJ: W = I² R t.
    pub fn heat_kj(&self, resistance_ohm: f64) -> f64 {
        self.square_ka2_s() * 1e3 * resistance_ohm
    }

    /// Current, time and number of shots, as a message.
    pub fn shots(&self) -> Shots {
        Shots {
            n_shots: self.n_shots,
            current_a: self.current_a,
            each_s: self.time_s / self.n_shots as f64,
        }
    }

    /// Temperature to which the short circuit heats metal from a start temperature, °C.
    ///
    /// # Source
    /// icea_p32382.
    pub fn heated_degc(&self, metal: Metal, area_mm2: f64, from_degc: f64) -> f64 {
        let form = circular_mils(metal);
        let area = area_mm2 * MM2_M2;
        form.temperature_degc(area, from_degc, self.current_a, self.time_s)
    }
}

/// Heating form for a metal.
fn circular_mils(metal: Metal) -> CircularMilForm {
    match metal {
        Metal::Copper => CircularMilForm::COPPER,
        Metal::Aluminium => CircularMilForm::ALUMINIUM,
    }
}

/// Melting temperature of a metal, °C; a computed temperature above it means that the metal melts.
///
/// # Source
/// common practice, no source: any table of metals.
pub fn melts_degc(metal: Metal) -> f64 {
    match metal {
        Metal::Copper => 1085.0,
        Metal::Aluminium => 660.0,
    }
}

/// Area of a conductor that heats, mm²: the nominal area, or the area that its greatest permitted resistance leaves, lay included.
///
/// # Errors
/// The size has no row.
///
/// # Source
/// iec_60287_1_1 table 1 for the resistivity; the sizes' own rows.
pub fn conductor_area_mm2(cable: &Construction) -> Result<f64, Said> {
    let nominal = cable.conductor.size.area_mm2();
    if !matches!(cable.conductor.size, Size::Mm2(_)) {
        return Ok(nominal);
    }
    let greatest = cable.dc_resistance_20().map_err(of_cable)?;
    let metal = match cable.conductor.metal {
        Metal::Copper => conductor::Metal::COPPER,
        Metal::Aluminium => conductor::Metal::ALUMINIUM,
    };
    let left = metal.resistivity_20_ohm_m / (greatest.resistance_ohm_per_km * 1e-3) / MM2_M2;
    Ok(nominal.min(left))
}

/// Message for a missing fact about the cable.
fn of_cable(why: cable::Unknown) -> Said {
    Said::from(&why)
}

/// Highest temperature at which a short circuit may begin, °C.
///
/// # Errors
/// A fact that is not stated, or a contradiction: a conductor whose highest temperature is below the temperature of its place.
pub fn start_degc(job: &Job) -> Result<f64, Said> {
    let Some(start) = job.duty.conductor_greatest_degc else {
        return Err(FaultSaid::StartNotStated.into());
    };
    let floor = job.place.ambient_degc.1.unwrap_or(0.0).max(0.0);
    if start < floor {
        let (start_degc, place_degc) = (start, floor);
        return Err(FaultSaid::StartColderThanPlace {
            start_degc,
            place_degc,
        }
        .into());
    }
    Ok(start)
}

/// Area in which a shield's current heats it, least and greatest, mm².
///
/// Wires and straps: their own area.
/// Corrugated tape: from a smooth tape on the screen to a tape with its seam and corrugation.
/// Tape with wires: both in parallel by their resistance, so that the metal with the densest current heats as if the whole current flowed in this area.
/// If the turns of that tape do not touch, the area is wires and b w/√(1 + (π d/a)²); if all turns touch, wires and tube.
/// Lapped tape: from the tape's own area, if no turn touches the next and the current follows the helix, to a tube whose turns all touch.
/// Nobody knows how well the turns of an old tape touch.
///
/// `n_counted`: the least number of wires or straps counted on an end, where somebody counted.
///
/// # Errors
/// A fact that is not stated, or elements that do not fit round the screen.
///
/// # Source
/// icea_p45482, memory, for the greatest area of a corrugated tape; else geometry.
/// Tape and wires share a current by their resistance along the cable: common practice, no source.
pub fn shield_area_mm2(cable: &Construction, n_counted: Option<u32>) -> Result<(f64, f64), Said> {
    let over = || {
        let band = cable.diameter_over(Layer::InsulationScreen);
        band.map_err(of_cable)
    };
    let area = |on| cable.shield.area_on_mm2(on).map_err(of_cable);
    match cable.shield {
        Shield::FlatStraps { count, width, .. } => {
            elements_area(cable, count, width.mm(), n_counted)
        }
        Shield::ConcentricWires { count, diameter } => {
            elements_area(cable, count, diameter.mm(), n_counted)
        }
        Shield::CorrugatedTape { thickness, overlap } => {
            let over = over()?;
            let round = PI * over.greatest.mm();
            fits(ShieldMeasure::Overlap, overlap.mm(), 0.5 * round)?;
            fits(ShieldMeasure::Thickness, thickness.mm(), THICKEST_TAPE_MM)?;
            let smooth = PI * over.least.mm() * thickness.mm();
            Ok((smooth, area(over.greatest)?))
        }
        Shield::LappedTape {
            thickness,
            width,
            overlap_percent,
        } => {
            let mean = over()?.greatest + thickness;
            let tape = Tape::new(thickness, width, overlap_percent, mean)?;
            Ok((tape.alone_mm2, tape.alone_mm2.max(tape.tube_mm2)))
        }
        Shield::TapeWithWires {
            count, diameter, ..
        } => {
            let (_, wires) = elements_area(cable, count, diameter.mm(), n_counted)?;
            let tape = tape_of(cable)?.ok_or(FaultSaid::NoTape)?;
            // Straight wires are the shortest conductors, so they carry the densest current.
            Ok((
                wires + tape.alone_mm2 / tape.turn_ratio,
                wires + tape.alone_mm2.max(tape.tube_mm2),
            ))
        }
    }
}

/// A lapped tape as a conductor of current.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tape {
    /// Section of the tape itself, mm².
    pub alone_mm2: f64,
    /// Section of a tube whose turns all touch, mm².
    pub tube_mm2: f64,
    /// Ratio of the tape's length to the length of its cable.
    pub turn_ratio: f64,
}

impl Tape {
    fn new(
        thickness: Length,
        width: Option<Length>,
        overlap_percent: f64,
        mean: Length,
    ) -> Result<Tape, Said> {
        let width = width.ok_or(FaultSaid::TapeWidthNotStated)?;
        let mean = mean.mm();
        let advance = width.mm() * (1.0 - overlap_percent * 1e-2);
        fits(ShieldMeasure::WidthLessLap, advance, PI * mean)?;
        fits(ShieldMeasure::Thickness, thickness.mm(), THICKEST_TAPE_MM)?;
        let (b, w) = (thickness.m(), width.m());
        let tube = shield::tape_area(b, w, mean * 1e-3, overlap_percent * 1e-2);
        Ok(Tape {
            alone_mm2: thickness.mm() * width.mm(),
            tube_mm2: tube.full_contact_m2 / MM2_M2,
            turn_ratio: 1.0_f64.hypot(PI * mean / advance),
        })
    }
}

/// Tape of a shield of tape with wires, at its widest: over the wires; `None` for another shield.
///
/// # Errors
/// A fact that is not stated, or a tape that does not fit round the screen.
pub fn tape_of(cable: &Construction) -> Result<Option<Tape>, Said> {
    let Shield::TapeWithWires {
        thickness,
        width,
        overlap_percent,
        diameter,
        ..
    } = cable.shield
    else {
        return Ok(None);
    };
    let over = cable.diameter_over(Layer::InsulationScreen);
    let mean = over.map_err(of_cable)?.greatest + thickness + diameter + diameter;
    Tape::new(thickness, width, overlap_percent, mean).map(Some)
}

/// Greatest thickness of a tape, mm.
const THICKEST_TAPE_MM: f64 = 1.0;

/// Area of wires or straps, by the counted number; refused if they do not fit side by side round the screen.
fn elements_area(
    cable: &Construction,
    count: u32,
    each_mm: f64,
    n_counted: Option<u32>,
) -> Result<(f64, f64), Said> {
    if let Ok(over) = cable.diameter_over(Layer::InsulationScreen) {
        let around = PI * (over.greatest.mm() + each_mm);
        fits(
            ShieldMeasure::SideBySide,
            f64::from(count) * each_mm,
            around,
        )?;
    }
    let of_papers = match cable.shield {
        Shield::TapeWithWires {
            count, diameter, ..
        } => Shield::ConcentricWires { count, diameter }.area_on_mm2(Length::ZERO),
        shield => shield.area_on_mm2(Length::ZERO),
    };
    let of_papers = of_papers.map_err(of_cable)?;
    let n = n_counted.unwrap_or(count).min(count);
    if n == 0 {
        return Err(FaultSaid::NothingCounted.into());
    }
    let area = of_papers * f64::from(n) / f64::from(count);
    Ok((area, area))
}

fn fits(measure: ShieldMeasure, mm: f64, most_mm: f64) -> Result<(), Said> {
    if mm <= most_mm {
        return Ok(());
    }
    Err(FaultSaid::CannotBe {
        measure,
        mm,
        most_mm,
    }
    .into())
}
