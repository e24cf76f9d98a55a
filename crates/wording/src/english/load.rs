//! Sentences about the load and the emergency of a joint, and about its bonding lead in a short circuit.

use crate::shown;
use jointwright_joint::said::{LoadSaid, Share, ShareFrom};

pub(super) fn say(said: &LoadSaid) -> String {
    match said {
        LoadSaid::TooHotAtLoad => "Stop and call: at this load the joint gets hotter than its paper allows. The engineer decides on the load, on what surrounds the joint, or on another body or connector.".to_owned(),
        LoadSaid::GreatestAtLoadNotSaid { row } => {
            format!("the row {row} does not say how hot the conductor in it may be all the time")
        }
        LoadSaid::AskGreatestAtLoad { body } => {
            format!("How hot may the conductor inside {body} be all the time?")
        }
        LoadSaid::InsideAtLoad { body, load_a } => format!(
            "conductor inside {body} with {} A all the time",
            shown(*load_a)
        ),
        LoadSaid::MoreThanCable { by_k, shares: of } => format!(
            "{by_k:.1} K more than its cable would have there{}",
            shares(of)
        ),
        LoadSaid::ShareFrom(from) => share_from(from),
        LoadSaid::TooHotInEmergency => "Stop and call: in such an emergency the joint gets hotter than its paper allows. The engineer decides how much load, and for how long.".to_owned(),
        LoadSaid::GreatestInEmergencyNotSaid { row } => format!(
            "the row {row} does not say how hot the conductor in it may be in an emergency"
        ),
        LoadSaid::AskGreatestInEmergency { body } => {
            format!("How hot may the conductor inside {body} be in an emergency?")
        }
        LoadSaid::InsideInEmergency {
            body,
            time_h,
            load_a,
        } => format!(
            "conductor inside {body} after {} h with {} A",
            shown(*time_h),
            shown(*load_a)
        ),
        LoadSaid::PassesBefore => "the load before it passes it already".to_owned(),
        LoadSaid::GetsThereIn { time_h } => format!("it gets there in {} h", shown(*time_h)),
        LoadSaid::LeadTooSmall => "Stop and call: this lead does not carry the stated short circuit. The engineer decides on a larger one, clearing time, or how the current returns.".to_owned(),
        LoadSaid::LeadGreatestNotStated => {
            "the job does not state the lead's fault_greatest".to_owned()
        }
        LoadSaid::AskLeadGreatest => "To what temperature may this bonding lead rise in a short circuit, by its paper?".to_owned(),
        LoadSaid::PaperOfLead => "the lead's paper, as the job states it".to_owned(),
    }
}

/// Shares of a difference; empty if there are none.
pub(super) fn shares(shares: &[Share]) -> String {
    if shares.is_empty() {
        return String::new();
    }
    let each = shares
        .iter()
        .map(|share| format!("{:+.1} K {}", share.k, share_from(&share.from)));
    format!(" (of this: {})", each.collect::<Vec<_>>().join(", "))
}

fn share_from(from: &ShareFrom) -> String {
    match from {
        ShareFrom::Connector { leg } => {
            format!("the connector of leg {leg} against the same length of its conductor")
        }
        ShareFrom::Bus => "the bus".to_owned(),
        ShareFrom::OtherLeg { leg } => format!("leg {leg}, from where the legs meet"),
        ShareFrom::OwnCurrent { leg } => {
            format!("leg {leg}'s own current, under the joint instead of in the open cable")
        }
        ShareFrom::Surroundings => {
            "what surrounds the joint against what surrounds the cable".to_owned()
        }
        ShareFrom::ConnectorOf { leg } => format!("the connector of leg {leg}"),
    }
}
