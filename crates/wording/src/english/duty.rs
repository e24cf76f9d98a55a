//! Sentences about a leg in service.

use crate::Tongue;
use jointwright_joint::said::{DutySaid, GapLevel, GapSaid, ShortCircuitSaid, Wording};

pub(super) fn say(tongue: Tongue, said: &DutySaid) -> String {
    match said {
        DutySaid::ShortCircuit(said) => short_circuit(said),
        DutySaid::Gap(said) => gap(tongue, said),
    }
}

fn short_circuit(said: &ShortCircuitSaid) -> String {
    match said {
        ShortCircuitSaid::FaultGreatestNotSaid { row } => format!(
            "the row {row} does not say how hot the conductor in it may get in a short circuit"
        ),
        ShortCircuitSaid::AskFaultGreatest { body } => format!(
            "To what temperature may the conductor inside {body} rise in a short circuit?"
        ),
        ShortCircuitSaid::ConductorTooHot => {
            "Stop and call: in such a short circuit the conductor gets hotter in the joint than its paper allows. The engineer decides on fault level, clearing time or another body."
                .to_owned()
        }
        ShortCircuitSaid::ConnectorNotGiven => {
            "Stop and call: the paper of this connector does not give it this short circuit. Use one whose paper does, or the engineer decides on fault level and clearing time."
                .to_owned()
        }
    }
}

fn gap_level(level: GapLevel) -> &'static str {
    match level {
        GapLevel::InceptionInService => "inception at the highest voltage in service",
        GapLevel::ExtinctionInService => "extinction at the highest voltage in service",
        GapLevel::InceptionInFault => "inception while an earth fault is cleared",
        GapLevel::ExtinctionInFault => "extinction while an earth fault is cleared",
    }
}

fn trial_form(is_rectangular: bool) -> &'static str {
    if is_rectangular {
        "cosine-rectangular"
    } else {
        "sine"
    }
}

fn gap(tongue: Tongue, said: &GapSaid) -> String {
    match said {
        GapSaid::Edge => "gap before the screen edge".to_owned(),
        GapSaid::EdgeFilled => {
            "gap before the screen edge, a thread of air across its filler".to_owned()
        }
        GapSaid::Film => "film along the tapered plug".to_owned(),
        GapSaid::FilmFilled => {
            "film along the tapered plug, a thread of air across its filler".to_owned()
        }
        GapSaid::EngineerDecides => {
            "Stop and call: the engineer decides. A gap that grease fills today may be empty later."
                .to_owned()
        }
        GapSaid::EngineerDecidesField => {
            "Stop and call: the engineer decides. Do not trim, grease or bind it to make it fit."
                .to_owned()
        }
        GapSaid::AtTrial {
            multiple,
            level_kv,
            is_rectangular,
            from,
        } => {
            let form = trial_form(*is_rectangular);
            format!(
                "it would begin to discharge at {multiple:.2} of the trial's level, {level_kv} kV rms {form} ({from})"
            )
        }
        GapSaid::TellTrial => {
            "Tell whoever reads the trial; whether it is done so is decided by the owner's engineer."
                .to_owned()
        }
        GapSaid::NoneDischarges { extinction_ratio } => format!(
            "no gap discharges in service; breakdown of air from Townsend's criterion; extinction at {extinction_ratio} of inception"
        ),
        GapSaid::Level(level) => gap_level(*level).to_owned(),
        GapSaid::Against {
            subject,
            gap,
            level,
            kv,
        } => format!(
            "{}, {}, {} ({kv:.2} kV rms to earth), as a multiple of it",
            tongue.subject(subject),
            tongue.say(gap),
            gap_level(*level)
        ),
        GapSaid::ByCurves { read, lower } => format!(
            "{read:.2} times by the curve that was read, {lower:.2} times by one that is from memory"
        ),
        GapSaid::BodyOpen => "the body is left open".to_owned(),
        GapSaid::AtOwnWall => "at this leg's own wall".to_owned(),
        GapSaid::ServiceOverDischarge { subject, is_filled } => {
            let how = if *is_filled {
                "in a thread of air across its filler"
            } else {
                "empty"
            };
            format!(
                "{}, highest voltage in service over the one at which the gap before the screen edge would discharge, {how}",
                tongue.subject(subject)
            )
        }
    }
}
