//! Loss: the current that balanced phases drive round shields bonded at both ends, and the heat that it makes.

use super::along::{ShieldResistance, along, mean_m};
use super::unknown;
use crate::cable::Layer;
use crate::job::{Formation, Job, Leg};
use crate::said::{BondingSaid, Said};
use crate::section::Unknown;
use jointwright_numerics::rating::shield::{
    flat_loss_ratios, flat_mutual_ohm_per_m, loss_ratio, reactance_ohm_per_m,
};
use jointwright_numerics::rating::{self, Bond};

/// Circulating current of a leg's shield in steady load.
#[derive(Clone, Debug, PartialEq)]
pub enum ShieldLoss {
    /// No current, because the shield is open at one end at least; the reason.
    Nothing(Said),
    /// A current, because the shield is bonded at both ends.
    Round(Round),
}

/// Three shields bonded at both ends of a run.
#[derive(Clone, Debug, PartialEq)]
pub struct Round {
    /// Resistance of each shield along its cable.
    pub along: ShieldResistance,
    /// Formation of the three cables.
    pub formation: Formation,
    /// Distance between the axes of neighbours, m.
    pub spacing_m: f64,
    /// Least and greatest mean diameter of a shield, m.
    pub mean_m: (f64, f64),
    /// Frequency, Hz.
    pub frequency_hz: f64,
}

impl ShieldLoss {
    /// Shield for a rating, with the resistance and reactance of its greatest loss at a stated temperature of the shield.
    ///
    /// `None` if no current flows round it: any resistance then gives no loss.
    pub fn warmest(&self, shield_degc: f64) -> Option<rating::shield::Shield> {
        match self {
            ShieldLoss::Nothing(_) => None,
            ShieldLoss::Round(round) => Some(round.warmest(shield_degc)),
        }
    }

    /// λ1, ratio of the shield's greatest loss to the conductor's loss; the conductor's resistance to alternating current is given in Ω/m.
    ///
    /// # Assumes
    /// Three cables with balanced currents in the stated formation; eddy currents within a shield and currents of the neutral are left out.
    ///
    /// # Source
    /// iec_60287_1_1, clause 2.3.
    pub fn greatest_ratio(&self, conductor_ohm_per_m: f64, shield_degc: f64) -> f64 {
        match self {
            ShieldLoss::Nothing(_) => 0.0,
            ShieldLoss::Round(round) => {
                round.greatest_loss_ohm_per_m((shield_degc, shield_degc)) / conductor_ohm_per_m
            }
        }
    }

    /// Reason why there is no current, or the bounds of the resistance.
    pub fn says(&self) -> &Said {
        match self {
            ShieldLoss::Nothing(why) => why,
            ShieldLoss::Round(round) => &round.along.says,
        }
    }
}

/// Number of steps, in equal ratios, over an interval of resistance.
const N_STEPS: usize = 400;

impl Round {
    /// Least and greatest resistance over a range of temperatures, Ω/m.
    fn between_ohm_per_m(&self, degc: (f64, f64)) -> (f64, f64) {
        (
            self.along.at_ohm_per_m(degc.0).0,
            self.along.at_ohm_per_m(degc.1).1,
        )
    }

    fn bond(&self, mean_m: f64) -> Bond {
        let reactance_ohm_per_m = reactance_ohm_per_m(self.frequency_hz, self.spacing_m, mean_m);
        match self.formation {
            Formation::Trefoil => Bond::BothEnds {
                reactance_ohm_per_m,
            },
            Formation::Flat => Bond::BothEndsFlat {
                reactance_ohm_per_m,
                mutual_ohm_per_m: flat_mutual_ohm_per_m(self.frequency_hz),
            },
        }
    }

    /// Losses of the three shields for one ampere, as a resistance of the conductor, Ω/m.
    fn losses_ohm_per_m(&self, mean_m: f64, shield_ohm_per_m: f64) -> [f64; 3] {
        match self.bond(mean_m) {
            Bond::OneEnd => [0.0; 3],
            Bond::BothEnds {
                reactance_ohm_per_m,
            } => [loss_ratio(shield_ohm_per_m, 1.0, reactance_ohm_per_m); 3],
            Bond::BothEndsFlat {
                reactance_ohm_per_m,
                mutual_ohm_per_m,
            } => flat_loss_ratios(shield_ohm_per_m, 1.0, reactance_ohm_per_m, mutual_ohm_per_m),
        }
    }

    /// Mean diameters and resistances that are tried: in equal ratios over the interval, and where resistance and reactance are equal.
    fn looked_at(&self, (least, greatest): (f64, f64)) -> impl Iterator<Item = (f64, f64)> {
        let diameters = [self.mean_m.0, self.mean_m.1];
        diameters.into_iter().flat_map(move |mean_m| {
            let equal = reactance_ohm_per_m(self.frequency_hz, self.spacing_m, mean_m);
            let ratio = greatest / least;
            (0..=N_STEPS)
                .map(move |step| least * ratio.powf(step as f64 / N_STEPS as f64))
                .chain([equal.clamp(least, greatest)])
                .map(move |ohm_per_m| (mean_m, ohm_per_m))
        })
    }

    /// Mean diameter and resistance of the greatest loss, and the loss for one ampere, Ω/m.
    fn at_greatest_loss(&self, degc: (f64, f64)) -> (f64, f64, f64) {
        let between = self.between_ohm_per_m(degc);
        let loss = |(mean_m, ohm_per_m)| {
            let losses = self.losses_ohm_per_m(mean_m, ohm_per_m);
            (mean_m, ohm_per_m, losses.into_iter().fold(0.0, f64::max))
        };
        let all = self.looked_at(between).map(loss);
        let start = (self.mean_m.0, between.0, 0.0);
        all.fold(
            start,
            |best, next| if next.2 > best.2 { next } else { best },
        )
    }

    /// Greatest loss of a shield for one ampere in the conductors, over a range of shield temperatures, W/(A²·m) or Ω/m.
    ///
    /// The loss is not greatest at the greatest resistance, but where resistance and reactance are equal, or nearest to equal.
    pub fn greatest_loss_ohm_per_m(&self, shield_degc: (f64, f64)) -> f64 {
        self.at_greatest_loss(shield_degc).2
    }

    /// Least and greatest ratio of the current in a shield to the current in the conductors, over a range of shield temperatures.
    pub fn current_ratio(&self, shield_degc: (f64, f64)) -> (f64, f64) {
        let between = self.between_ohm_per_m(shield_degc);
        let currents = self.looked_at(between).flat_map(|(mean_m, ohm_per_m)| {
            let losses = self.losses_ohm_per_m(mean_m, ohm_per_m);
            losses.map(|loss| (loss / ohm_per_m).sqrt())
        });
        currents.fold((f64::INFINITY, 0.0), |(least, greatest), current| {
            (least.min(current), f64::max(greatest, current))
        })
    }

    fn warmest(&self, shield_degc: f64) -> rating::shield::Shield {
        let (mean_m, ohm_per_m, _) = self.at_greatest_loss((shield_degc, shield_degc));
        let coefficient = self.along.coefficient_20_per_k;
        let warm = 1.0 + coefficient * (shield_degc - 20.0);
        rating::shield::Shield {
            resistance_20_ohm_per_m: ohm_per_m / warm,
            coefficient_20_per_k: coefficient,
            bond: self.bond(mean_m),
        }
    }
}

/// Circulating current of a leg's shield at steady load; nothing flows if the shield is open at one end.
///
/// # Errors
/// A fact that nobody states, with its questions.
pub fn shield_loss(job: &Job, leg: &Leg) -> Result<ShieldLoss, Unknown> {
    if let Some(open) = open_end(leg)? {
        return Ok(ShieldLoss::Nothing(open));
    }
    let placed = placed(leg);
    let along = along(job, leg);
    let (formation, spacing_m, along) = match (placed, along) {
        (Ok((formation, spacing_m)), Ok(along)) => (formation, spacing_m, along),
        (Err(mut first), Err(second)) => {
            first.why = Said::all([first.why, second.why]);
            first.questions.extend(second.questions);
            return Err(first);
        }
        (Err(why), Ok(_)) | (Ok(_), Err(why)) => return Err(why),
    };
    Ok(ShieldLoss::Round(Round {
        along,
        formation,
        spacing_m,
        mean_m: mean_m(job, leg)?,
        frequency_hz: job.system.frequency_hz,
    }))
}

/// Reason why no current can flow round the shield of a leg; `None` if one can.
fn open_end(leg: &Leg) -> Result<Option<Said>, Unknown> {
    let id = || leg.id.clone();
    let far = leg.shield_run.is_far_end_bonded;
    let is_far_bonded = || Said::from(BondingSaid::AskFarEnd { leg: id() });
    let is_closed = || Said::from(BondingSaid::AskLink { leg: id() });
    match (leg.bonding.as_str(), far) {
        ("open", _) => Ok(Some(BondingSaid::OpenAtJoint { leg: id() }.into())),
        (_, Some(false)) => Ok(Some(BondingSaid::OpenAtFarEnd { leg: id() }.into())),
        ("solid", Some(true)) => Ok(None),
        ("solid", None) => Err(unknown(
            BondingSaid::FarEndNotStated { leg: id() },
            is_far_bonded(),
        )),
        (_, Some(true)) => Err(unknown(
            BondingSaid::LinkNotStated { leg: id() },
            is_closed(),
        )),
        (_, None) => Err(Unknown::new(
            BondingSaid::LinkAndFarEndNotStated { leg: id() },
            [is_closed(), is_far_bonded()],
        )),
    }
}

/// Formation of the three cables of a run, and the distance between the axes of neighbours, m.
///
/// # Errors
/// A fact that is not stated, or cables that would lie within each other.
pub(super) fn placed(leg: &Leg) -> Result<(Formation, f64), Unknown> {
    let id = || leg.id.clone();
    let run = &leg.shield_run;
    let mut fields = Vec::new();
    let mut questions = Vec::new();
    if run.formation.is_none() {
        fields.push("formation".to_owned());
        questions.push(BondingSaid::AskFormation { leg: id() });
    }
    if run.spacing.is_none() {
        fields.push("spacing".to_owned());
        questions.push(BondingSaid::AskSpacing { leg: id() });
    }
    let (Some(formation), Some(spacing)) = (run.formation, run.spacing) else {
        let leg = id();
        let why = BondingSaid::PlaceNotStated { leg, fields };
        return Err(Unknown::new(why, questions));
    };
    let least = leg.cable.diameter_over(Layer::MetallicShield);
    if let Ok(least) = least.map(|band| band.least)
        && spacing < least
    {
        return Err(unknown(
            BondingSaid::AxesTooNear {
                leg: id(),
                spacing_mm: spacing.mm(),
                shield_mm: least.mm(),
            },
            BondingSaid::AskSpacing { leg: id() },
        ));
    }
    Ok((formation, spacing.m()))
}
