//! Sentences about ways back.

use crate::Tongue;
use jointwright_joint::end::EndId;
use jointwright_joint::said::{BuiltSaid, PartKind, Said, WaySaid, Wording};

pub(super) fn say(tongue: Tongue, said: &WaySaid) -> String {
    let part = |part: &PartKind| tongue.part(*part);
    match said {
        WaySaid::CutOn { plane, to } => format!(
            "take more off, so that the {} lies at {}",
            tongue.plane(*plane),
            tongue.exact(*to)
        ),
        WaySaid::MoveTo {
            part: of,
            plane,
            to,
        } => format!(
            "move the {}: the {} to {}",
            part(of),
            tongue.plane(*plane),
            tongue.exact(*to)
        ),
        WaySaid::Finish { measured } => {
            let measured = measured.clone();
            let what = tongue.say(&Said::from(BuiltSaid::Slot { measured }));
            format!("finish the step that was begun: {what}")
        }
        WaySaid::StartAgain { ends } => format!("cut back and start again: {}", all(ends)),
        WaySaid::UntilHoldoutIsOut => "only until its holdout is out".to_owned(),
        WaySaid::WithinMinutes { minutes } => {
            format!("only within {minutes} minutes of bringing it to its place")
        }
        WaySaid::ReadAnew => {
            "everything on it is made and read anew, and nothing read before counts".to_owned()
        }
        WaySaid::UsesUp { rows } => format!(
            "uses up {}: no row says that it may be used again",
            rows.join(", ")
        ),
        WaySaid::Slack { leg, needs, slack } => format!(
            "leg {leg}: uses {} of the {} of slack that the job states; take off what was cut since",
            tongue.exact(*needs),
            tongue.exact(*slack)
        ),
        WaySaid::TooMuchIsOff { plane } => {
            format!(
                "taking more off: too much is off at the {} already",
                tongue.plane(*plane)
            )
        }
        WaySaid::Covered { plane } => format!(
            "taking more off: by the readings the {} is covered by now",
            tongue.plane(*plane)
        ),
        WaySaid::ConnectorCovered => {
            "finishing the step: by the readings the body covers the connector by now".to_owned()
        }
        WaySaid::PartCovered { part: of } => format!(
            "moving the {}: by the readings something covers it by now",
            part(of)
        ),
        WaySaid::NoRowPlaces { plane } => {
            format!("no row says where the {} belongs", tongue.plane(*plane))
        }
        WaySaid::NeverMoves { part: of, row } => {
            format!(
                "moving the {}: {row} says that it may not be moved",
                part(of)
            )
        }
        WaySaid::MoveNotSaid { part: of, row } => format!(
            "moving the {}: {row} does not say whether it may be moved",
            part(of)
        ),
        WaySaid::NotToDress { row } => {
            format!("dressing it out: {row} states no depth to which it may be dressed")
        }
        WaySaid::NotToWind { row } => {
            format!("making the edge anew: {row} has no step for it")
        }
        WaySaid::SlackNotMeasured { leg } => {
            format!("cutting back: the job does not state the slack of leg {leg}")
        }
        WaySaid::SlackTooShort { leg, needs, slack } => format!(
            "cutting back: leg {leg} needs {} and has {} of slack",
            tongue.exact(*needs),
            tongue.exact(*slack)
        ),
        WaySaid::JacketEdgeOpen { leg } => {
            format!(
                "cutting back: the jacket edge of leg {leg} has no place, so nobody knows how much cable it takes"
            )
        }
        WaySaid::SameCable => {
            "cutting back: a fresh end of the same cable measures the same".to_owned()
        }
        WaySaid::CannotUndo => "it cannot be undone".to_owned(),
    }
}

fn all(ends: &[EndId]) -> String {
    let ends: Vec<String> = ends.iter().map(ToString::to_string).collect();
    ends.join(", ")
}
