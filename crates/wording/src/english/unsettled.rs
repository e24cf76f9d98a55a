//! Questions that a person must settle before work goes on.

use super::step::{moment, piece};
use crate::Tongue;
use jointwright_joint::cable::Layer;
use jointwright_joint::said::{UnsettledSaid, Wording};

pub(super) fn say(tongue: Tongue, said: &UnsettledSaid) -> String {
    match said {
        UnsettledSaid::WiresBesideTape { leg, piece: of, row } => format!(
            "Leg {leg}: are the {}s of the {} laid back or cut off with the tape, and how much of each is kept? {}; settle it before the square cut.",
            piece(*of),
            tongue.layer(Layer::MetallicShield),
            match row {
                Some(row) => format!("The row {row} does not say (`lay_back`, `cut_off`)"),
                None => "The shield part is left open".to_owned(),
            }
        ),
        UnsettledSaid::KeptTooLong { leg, kept, piece: of, edge_mm } => format!(
            "Leg {leg}: {} of every {} are to be kept beyond the edge, and the edge lies {edge_mm:.1} mm from the square cut; settle before that cut how they stay long enough.",
            tongue.exact(*kept),
            piece(*of)
        ),
        UnsettledSaid::BridgeNobodySays => "nobody's word says whether the bridge comes off before or after the permanent bond is measured".to_owned(),
        UnsettledSaid::BridgeNotAllSame { words } => {
            let all: Vec<String> = words
                .iter()
                .map(|(who, when)| format!("{}: {}", tongue.say(who), moment(*when)))
                .collect();
            format!("not all say the same of when the bridge comes off ({})", all.join("; "))
        }
        UnsettledSaid::AskOfBridge { name, number, why } => format!(
            "Ask {name}, {number} before any seal closes: {}; the bridge stays on until that is said.",
            tongue.say(why)
        ),
        UnsettledSaid::AloneAcross { row, leg } => format!("{row} goes across the joint from leg to leg, and leg {leg} alone names it; settle what carries the shield of the others."),
        UnsettledSaid::NobodyParks => "No leg is named to park the body; settle it before any connector is made.".to_owned(),
        UnsettledSaid::TooManyPark { n } => format!("{n} legs are named to park the one body; settle which before any connector is made."),
        UnsettledSaid::OwnOrder { row, before, after } => format!(
            "{row} wants `{}` before `{}`, against the order that joints need; settle it with its instructions in hand.",
            tongue.say(before),
            tongue.say(after)
        ),
        UnsettledSaid::SlidOnByPaper { row, leg, passes, jacket } => format!(
            "{row} is slid on before the connector by its own paper, and by its row it passes over {} at most, and the jacket of leg {leg} may be {}; settle with its instructions in hand when it comes on.",
            tongue.read(*passes),
            tongue.read(*jacket)
        ),
        UnsettledSaid::CannotPark { row, leg, passes, jacket } => format!(
            "{row} cannot be parked over the jacket: it passes over {} at most, and the jacket of leg {leg} may be {}; settle where it parks.",
            tongue.read(*passes),
            tongue.read(*jacket)
        ),
        UnsettledSaid::HowItGoesOn { row } => format!("The row {row} does not say how it goes on (`goes_on`), nor what it passes over (`passes`); settle when it comes on before any connector is made."),
        UnsettledSaid::NoConnector => "no connector is named".to_owned(),
    }
}
