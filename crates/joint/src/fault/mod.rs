//! Fault: what a short circuit asks of the metal it flows through.
//!
//! Why its own room: checks compare and never solve; conductor and shield are heated by one form, and what parts withstand is asked in one way.
//!
//! Invariants: nothing leaves the metal while the current flows, nor between shots, so that what is computed is never too cool; a current, a time or a number of shots that nobody states is asked for.
//! A shield carries the whole stated current, unless the job states that of its leg.
//!
//! Not here: whose limit it is (`checks`); contacts, leads, and the asymmetry of the first periods.
//!
//! Source: icea_p32382; `docs/theory/fault.md`.

mod question;

pub(crate) use question::{Heated, Withstood};

use crate::cable::{Construction, Layer, Metal, Shield, Size};
use crate::job::{Duty, Leg};
use jointwright_numerics::rating::shield;
use jointwright_numerics::rating::short_circuit::CircularMilForm;

/// Square metres of a square millimetre.
const MM2_M2: f64 = 1e-6;

/// A short circuit as the job states it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fault {
    /// Current, A rms.
    pub current_a: f64,
    /// Time of all shots together, s.
    pub time_s: f64,
    /// How often it flows: once, and once more for each reclosing shot.
    pub n_shots: i64,
}

impl Fault {
    /// That of the conductor.
    ///
    /// # Errors
    /// What the job does not state.
    pub fn of_conductor(duty: &Duty) -> Result<Fault, String> {
        Fault::of(duty, "fault", duty.fault_a, duty.fault_s)
    }

    /// That of a leg's shield, and of what carries it across the joint.
    ///
    /// # Errors
    /// What the job does not state.
    pub fn of_shield(duty: &Duty, leg: &Leg) -> Result<Fault, String> {
        let current_a = leg.shield_fault_a.or(duty.shield_fault_a);
        Fault::of(duty, "shield_fault", current_a, duty.shield_fault_s)
    }

    fn of(
        duty: &Duty,
        name: &str,
        current_a: Option<f64>,
        time_s: Option<f64>,
    ) -> Result<Fault, String> {
        let missing = [
            (current_a.is_none(), name.to_owned()),
            (time_s.is_none(), format!("{name}_time")),
            (duty.reclosing.is_none(), "reclosing".to_owned()),
        ];
        let missing: Vec<String> = missing
            .into_iter()
            .filter_map(|(is_open, name)| is_open.then(|| format!("duty.{name}")))
            .collect();
        let (Some(current_a), Some(time_s), Some(reclosing), true) =
            (current_a, time_s, duty.reclosing, missing.is_empty())
        else {
            return Err(format!("the job does not state {}", missing.join(", ")));
        };
        let n_shots = 1 + reclosing.max(0);
        Ok(Fault {
            current_a,
            time_s: time_s * n_shots as f64,
            n_shots,
        })
    }

    /// I² t of all shots, kA²·s.
    pub fn square_ka2_s(&self) -> f64 {
        self.current_a * self.current_a * self.time_s * 1e-6
    }

    /// In words: how much, how long, how often.
    pub fn words(&self) -> String {
        let shots = match self.n_shots {
            1 => String::new(),
            n => format!(" in all, {n} shots without cooling between them"),
        };
        format!(
            "{} kA for {:.2} s{shots}",
            kilo(self.current_a),
            self.time_s
        )
    }

    /// Temperature to which it heats metal from a first one, °C.
    ///
    /// # Source
    /// icea_p32382.
    pub fn heated_degc(&self, metal: Metal, area_mm2: f64, from_degc: f64) -> f64 {
        let form = match metal {
            Metal::Copper => CircularMilForm::COPPER,
            Metal::Aluminium => CircularMilForm::ALUMINIUM,
        };
        let area = area_mm2 * MM2_M2;
        form.temperature_degc(area, from_degc, self.current_a, self.time_s)
    }
}

/// Kiloamperes, with as many digits as they have.
fn kilo(amperes: f64) -> String {
    let text = format!("{:.3}", amperes * 1e-3);
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

/// Temperature at which a metal melts, °C; a computed one above it means that it does.
///
/// # Source
/// common practice, no source: any table of metals.
pub fn melts_degc(metal: Metal) -> f64 {
    match metal {
        Metal::Copper => 1085.0,
        Metal::Aluminium => 660.0,
    }
}

/// Area of a conductor that heats, mm²: the nominal one, or what its greatest permitted resistance leaves of it.
///
/// # Errors
/// When the size has no row.
pub fn conductor_area_mm2(cable: &Construction) -> Result<f64, String> {
    let nominal = cable.conductor.size.area_mm2();
    if !matches!(cable.conductor.size, Size::Mm2(_)) {
        return Ok(nominal);
    }
    let greatest = cable.dc_resistance_20().map_err(|why| why.to_string())?;
    let rule = cable.conductor.rule_20();
    let share = rule.resistance_ohm_per_km / greatest.resistance_ohm_per_km;
    Ok(nominal * share.min(1.0))
}

/// Area in which a shield's current heats it, least and greatest, mm².
///
/// Wires and straps: their own. Corrugated tape: of a smooth one on the screen, to that with the seam and the corrugation.
/// Lapped tape: the tape's own, where no turn touches the next and the current follows it round, to that of a tube whose turns all touch;
/// how well those of an old tape do nobody knows.
///
/// # Errors
/// What is not stated.
///
/// # Source
/// icea_p45482, memory, for the greatest of a corrugated tape; else geometry.
pub fn shield_area_mm2(cable: &Construction) -> Result<(f64, f64), String> {
    let over = cable
        .diameter_over(Layer::InsulationScreen)
        .map_err(|why| why.to_string())?;
    let area = |on| cable.shield.area_on_mm2(on).map_err(|why| why.to_string());
    Ok(match cable.shield {
        Shield::FlatStraps { .. } | Shield::ConcentricWires { .. } => {
            let own = area(over.least)?;
            (own, own)
        }
        Shield::CorrugatedTape { thickness, .. } => {
            let smooth = std::f64::consts::PI * over.least.mm() * thickness.mm();
            (smooth, area(over.greatest)?)
        }
        Shield::LappedTape {
            thickness,
            width,
            overlap_percent,
        } => {
            let width = width.ok_or("the width of the lapped tape is not stated")?;
            let mean = (over.greatest + thickness).mm() * 1e-3;
            let (b, w) = (thickness.mm() * 1e-3, width.mm() * 1e-3);
            let tube = shield::tape_area(b, w, mean, overlap_percent * 1e-2).full_contact_m2;
            let alone = thickness.mm() * width.mm();
            (alone, alone.max(tube / MM2_M2))
        }
    })
}
