//! Sentences about the cable that is left.

use crate::Tongue;
use jointwright_joint::said::SlackSaid;

pub(super) fn say(tongue: Tongue, said: &SlackSaid) -> String {
    match said {
        SlackSaid::NotMeasured => "nobody has measured the slack".to_owned(),
        SlackSaid::SpareCutsNotSaid => {
            "the job does not say how many spare cuts are wanted".to_owned()
        }
        SlackSaid::JacketEdgeOpen => "the jacket edge has no place or no window yet".to_owned(),
        SlackSaid::For { subject, times } => {
            format!("{}, slack for {times} more cuts", tongue.subject(subject))
        }
        SlackSaid::SpareCuts { times, each } => {
            format!("{times} spare cuts of {} each", tongue.read(*each))
        }
        SlackSaid::CallBeforeCutting => {
            "Call before anything is cut: a spoilt end could not be made again.".to_owned()
        }
        SlackSaid::StraightNotMeasured => {
            "nobody has measured how far the leg is straight".to_owned()
        }
        SlackSaid::StraightNotSaid { row } => {
            format!("the row {row} does not say how much straight cable it wants beyond its end")
        }
        SlackSaid::EndOpen { part } => format!(
            "the end of the {} has no place or no window yet",
            tongue.part(*part)
        ),
        SlackSaid::Straight { subject } => format!(
            "{}, straight cable from the conductor end",
            tongue.subject(subject)
        ),
        SlackSaid::StraightenOrCall => {
            "Straighten more of the leg before anything is cut, or call.".to_owned()
        }
    }
}
