//! Sentences about the fields that checks compare.

use super::noun;
use crate::Tongue;
use jointwright_joint::said::StressSaid;

pub(super) fn say(tongue: Tongue, said: &StressSaid) -> String {
    match said {
        StressSaid::Quantity { quantity } => noun::quantity(*quantity).to_owned(),
        StressSaid::AtWorst {
            subject,
            quantity,
            voltage_kv,
            trial_hz,
        } => format!(
            "{}, {} at {voltage_kv:.2} kV rms to earth{}, at the worst of the windows",
            tongue.subject(subject),
            noun::quantity(*quantity),
            trial_hz.map_or(String::new(), |hz| format!(", at the trial's {hz} Hz"))
        ),
        StressSaid::NoSuchPart => "the body has no such part".to_owned(),
        StressSaid::NotSettled => "the computation did not come as close as asked".to_owned(),
        StressSaid::AllowedNotSettled => "the computation of the worst that the instructions allow did not come as close as asked".to_owned(),
        StressSaid::ImpulseThroughConducting => "impulse: a layer of the body conducts, and only the field of its permittivity alone, a bound for very short times, could be computed".to_owned(),
        StressSaid::AtOwnWall => "at this leg's own wall".to_owned(),
        StressSaid::IsOneOfThose => "every dimension here lies inside what the instructions allow, so this is one of the fields that they allow".to_owned(),
        StressSaid::EngineerDecides => "Stop and call: the engineer decides. Do not trim, grease or bind it to make it fit.".to_owned(),
        StressSaid::TaperedPlug => "tapered plug".to_owned(),
    }
}
