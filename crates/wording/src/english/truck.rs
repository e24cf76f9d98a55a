//! Sentences about the items on the truck.

use crate::Tongue;
use jointwright_joint::said::{TruckSaid, Wording};

pub(super) fn say(tongue: Tongue, said: &TruckSaid) -> String {
    match said {
        TruckSaid::TrialOn { conductor, end } => format!(
            "trial press on a piece of {}{}",
            tongue.conductor(*conductor),
            end.as_ref().map(|end| format!(", end {end}")).unwrap_or_default()
        ),
        TruckSaid::Phase { phase } => format!("phase {phase}"),
        TruckSaid::Port { port, phase } => format!("port {port} phase {phase}"),
        TruckSaid::Stated { amount, n_ends } => format!("{amount}, {n_ends} ends"),
        TruckSaid::NoAmount => "its row states no amount and no wraps".to_owned(),
        TruckSaid::NotMeasured { leg, phase, over } => format!(
            "nobody has measured leg {leg}, phase {phase} over the {}, and its papers do not say",
            tongue.layer(*over)
        ),
        TruckSaid::Tape { metres, n_ends, row_says } => format!(
            "{metres:.1} m of tape in all, {n_ends} ends, waste not in it{}",
            row_says.as_ref().map(|amount| format!("; its row says {amount}")).unwrap_or_default()
        ),
        TruckSaid::Press { die } => format!(
            "press, its calibration in date, with {}",
            die.as_deref().unwrap_or("the die that its instructions name")
        ),
        TruckSaid::BoltDriver => "driver for the shear bolts, and a file to dress them flush".to_owned(),
        TruckSaid::ScrewDriver => "driver for the screws, with the torque that its instructions name".to_owned(),
        TruckSaid::Rule => "tape or steel rule, its hook checked, with sixteenths and millimetres".to_owned(),
        TruckSaid::Calliper => "calliper, and a diameter tape".to_owned(),
        TruckSaid::SawGuide => "square saw guide".to_owned(),
        TruckSaid::KnifeStop => "knife or stripper with a depth stop, set on a scrap of the same cable".to_owned(),
        TruckSaid::Bridge => "bridge for the open shield".to_owned(),
        TruckSaid::Ohmmeter => "low-resistance ohmmeter".to_owned(),
        TruckSaid::Wipes => "lint-free wipes, abrasive cloth that does not conduct, clean bags for what is parked".to_owned(),
        TruckSaid::KnifeByPapers => "the least that the cable's papers allow".to_owned(),
        TruckSaid::KnifeByReadings => "the least that the readings leave".to_owned(),
        TruckSaid::KnifeNothing { whose } => format!("{} is nothing: measure again before any cut", tongue.say(whose)),
        TruckSaid::KnifeUnknown => "its thickness is neither on the papers nor measured: set the stop on a scrap of this cable".to_owned(),
    }
}
