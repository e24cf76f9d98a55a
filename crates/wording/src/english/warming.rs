//! Sentences about cable and joint under load.

use crate::{Tongue, shown};
use jointwright_joint::said::{Hottest, WarmingSaid, When, Wording};

pub(super) fn say(tongue: Tongue, said: &WarmingSaid) -> String {
    match said {
        WarmingSaid::JobDoesNotState { field } => format!("the job does not state {field}"),
        WarmingSaid::AskGreatest => "What is the highest temperature of the conductor in service, emergencies included?".to_owned(),
        WarmingSaid::Conductor { hottest, load_a, when } => {
            let hottest = match hottest {
                Hottest::InJoint => "conductor in the joint",
                Hottest::InCable => "conductor of the cable",
            };
            let when = match when {
                When::AllTheTime => "all the time",
                When::EndOfEmergency => "at the end of the emergency",
            };
            format!("{hottest} with {} A {when}", shown(*load_a))
        }
        WarmingSaid::HotterThanStated => "Stop and call: pressures and short circuits here are computed for a colder conductor than the stated load makes. The engineer decides on the load, or states a higher duty.conductor_greatest and has everything computed again.".to_owned(),
        WarmingSaid::ShieldStated { shield_load_a } => format!(
            "{shield_load_a} A in the shield at the job's load, as stated, growing with it"
        ),
        WarmingSaid::FlowsRoundAtWorst => "the current that flows round, at the resistance and temperature where it loses most".to_owned(),
        WarmingSaid::RunNotKnown => "what the cable carries is not known".to_owned(),
        WarmingSaid::ConductorIn { load_a, stretch } => format!(
            "conductor of the cable with {} A all the time in {}",
            shown(*load_a),
            tongue.say(stretch)
        ),
        WarmingSaid::WithoutEnd => "without end".to_owned(),
        WarmingSaid::AtMost { degc } => format!("{degc} degC"),
        WarmingSaid::WarmsWithoutEnd => "it warms without end".to_owned(),
        WarmingSaid::RunsAway { past_degc } => format!(
            "under this load it warms without end, or past {past_degc} degC"
        ),
        WarmingSaid::CableHotterThanStated => "Stop and call: at this load the cable gets hotter than the job states for it. The engineer decides on the load, or on what surrounds the cable.".to_owned(),
        WarmingSaid::RouteNotStated { leg } => format!(
            "the job does not state route_length, so that leg {leg} may have stretches that nobody wrote down"
        ),
        WarmingSaid::StretchHasNoLength { what } => format!("{what} has no length"),
        WarmingSaid::StretchesAreNotTheRoute { leg, stretches_m, route_m, apart_mm } => format!(
            "the stretches are {stretches_m:.3} m long together, and the route of leg {leg} {route_m:.3} m: part of it ({apart_mm} mm) is said twice or not at all"
        ),
    }
}
