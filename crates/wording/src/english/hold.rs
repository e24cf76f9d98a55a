//! Sentences about the readings at a hold point, and their windows.

use super::step::{piece, standing};
use super::word::paper;
use crate::Tongue;
use jointwright_joint::cable::Layer;
use jointwright_joint::said::{ConnectorOf, HoldSaid, Wording};

pub(super) fn say(tongue: Tongue, said: &HoldSaid) -> String {
    let shield = tongue.layer(Layer::MetallicShield);
    match said {
        HoldSaid::PlaneOn { plane, leg } => format!("{} on leg {leg}", tongue.plane(*plane)),
        HoldSaid::NobodySetsWindow => "nobody sets a window".to_owned(),
        HoldSaid::WhoHandedOver => "who handed over, to whom, when".to_owned(),
        HoldSaid::NamedPersonDecides => "a named person decides, and records it".to_owned(),
        HoldSaid::WhoTookBridgeOff => "who said that the bridge comes off, to whom, when".to_owned(),
        HoldSaid::NamedPersonOnTheSpot => "a named person says it on the spot, and records it".to_owned(),
        HoldSaid::AsInstructionsAsk => "what the instructions ask for".to_owned(),
        HoldSaid::NoWindowHere => "no window is set here".to_owned(),
        HoldSaid::SetsNoneHere { source } => format!("{} sets none here", tongue.say(source)),
        HoldSaid::BridgeBeforeThisCut { leg } => format!("bridge of the {shield} of leg {leg}, seen before this cut where it opens a whole cable"),
        HoldSaid::OnAndTight => "on and tight".to_owned(),
        HoldSaid::StrandsDry { leg } => format!("strands of leg {leg}: dry or wet, by which test, by whom"),
        HoldSaid::UnderShieldDry { leg } => format!("under the {shield} of leg {leg}: dry or wet, by which test, by whom"),
        HoldSaid::Dry => "dry".to_owned(),
        HoldSaid::WetStops => "common practice, no source; wet: stop and call".to_owned(),
        HoldSaid::BridgeBeforeFirstCut { leg } => format!("bridge of the {shield} of leg {leg}, before the first cut"),
        HoldSaid::SeenOnAndTight => "seen, on and tight".to_owned(),
        HoldSaid::WiresBesideTape { leg } => format!("wires beside the tape of leg {leg}: laid back or cut off"),
        HoldSaid::AskBeforeOneIsCut => "no row states it: ask before one is cut".to_owned(),
        HoldSaid::LengthKept { piece: of, leg } => format!("length of every {} kept beyond the edge, leg {leg}", piece(*of)),
        HoldSaid::AtLeast { length } => format!("at least {}", tongue.exact(*length)),
        HoldSaid::AskBeforeOneIsCutShort => "no row states it: ask before one is cut short".to_owned(),
        HoldSaid::Looks { on, leg } => format!(
            "nicks, ring cuts and specks on the {} of leg {leg}, by eye and finger all around",
            if *on == Layer::Conductor { "strands" } else { tongue.layer(*on) }
        ),
        HoldSaid::NoneSeenOrFelt => "none seen or felt".to_owned(),
        HoldSaid::OneFoundStops { row } => match row {
            Some(row) => format!("common practice, no source; one found: what the instructions of {row} allow, else stop and call"),
            None => "common practice, no source; one found: stop and call".to_owned(),
        },
        HoldSaid::PhaseAtFarEnd { leg, goes_to } => format!(
            "leg {leg}, phase found at the far end ({}), by whom",
            goes_to.as_deref().unwrap_or("where it goes is not said")
        ),
        HoldSaid::SameAsHere => "the same as here".to_owned(),
        HoldSaid::UnlikeStops => "common practice, no source; unlike or in doubt: join nothing, stop and call".to_owned(),
        HoldSaid::ContactOf { leg } => format!("resistance across the connection of the {shield} of leg {leg}"),
        HoldSaid::AtMostOhm { ohm } => {
            if *ohm < 1.0 {
                format!("at most {} mohm", ohm * 1e3)
            } else {
                format!("at most {ohm} ohm")
            }
        }
        HoldSaid::SetsNone { paper: of } => format!("{} sets none", paper(of)),
        HoldSaid::NoShieldPart => "no shield part is named".to_owned(),
        HoldSaid::AcrossJoint { from, to } => format!("resistance of the {shield} across the joint, leg {from} to leg {to}"),
        HoldSaid::CompareThePhases => "write it down; compare the phases, and call where one is unlike the others".to_owned(),
        HoldSaid::OpenHere { leg } => format!("{shield} of leg {leg}: open here, not joined to the other legs"),
        HoldSaid::BondedOpen => "the job bonds it open; who measures it, and how, is the owner's to say".to_owned(),
        HoldSaid::DiameterFor { leg, over, at, row } => format!(
            "leg {leg}, diameter over the {}, for the {at} of {row}",
            tongue.layer(*over)
        ),
        HoldSaid::GapAtStop { row, leg } => format!("gap between conductor end and stop in {row}, leg {leg}"),
        HoldSaid::BoltStandsProud { row } => format!("how far a sheared bolt of {row} stands proud"),
        HoldSaid::LengthAsMade { row } => format!("length of {row} as made"),
        HoldSaid::DiameterAsMade { row } => format!("outside diameter of {row} as made"),
        HoldSaid::LapOntoJacket { row, leg } => format!("lap of {row} onto the {} of leg {leg}", tongue.layer(Layer::Jacket)),
        HoldSaid::ConductorEnd { leg } => format!("conductor end of leg {leg} from the reference line"),
        HoldSaid::Between { least, greatest } => format!("{} to {}", tongue.exact(*least), tongue.exact(*greatest)),
        HoldSaid::AskBeforeThisCut { why } => format!("{}: ask before this cut", tongue.say(why)),
        HoldSaid::StatesNoGap { paper: of, stands } => format!(
            "{} states no gap between conductor end and stop; the place is {} from it",
            paper(of),
            standing(tongue, *stands)
        ),
        HoldSaid::Die { of } => format!("die in the press for {}", connector(of)),
        HoldSaid::Presses { of } => format!("presses made on each end of {}", connector(of)),
        HoldSaid::AcrossFlats { of } => format!("across the flats of every press of {}", connector(of)),
        HoldSaid::LengthByPaper { of } => format!("length of {} as made, by its own paper, leg {}", row(of), of.leg),
        HoldSaid::StatesNone { paper: of } => format!("{} states none", paper(of)),
        HoldSaid::HeadsSheared { of } => format!("heads of {} sheared off, leg {}", row(of), of.leg),
        HoldSaid::Exactly { n } => n.to_string(),
        HoldSaid::All { n } => format!("all {n}"),
        HoldSaid::EveryHead => "every one; how many there are is not stated".to_owned(),
        HoldSaid::HeadTorque { of } => format!("torque at which the heads of {} shear, leg {}", row(of), of.leg),
        HoldSaid::ScrewsTightened { of } => format!("screws of {} tightened, leg {}", row(of), of.leg),
        HoldSaid::ScrewTorque { of } => format!("torque of every screw of {}", connector(of)),
        HoldSaid::Torque { least_nm, greatest_nm } => tongue.torque((*least_nm, *greatest_nm), "to"),
        HoldSaid::FromTo { from, to, leg } => format!("from the {} to the {}, on leg {leg}", tongue.plane(*from), tongue.plane(*to)),
        HoldSaid::GivesNoRange { source } => format!("{} gives no range", tongue.say(source)),
        HoldSaid::GivesNoWindow { source, distance } => format!(
            "{} gives {} and no window: stop and ask if it is another",
            tongue.say(source),
            tongue.read(*distance)
        ),
        HoldSaid::WhereEnds { row, leg } => format!("where {row} ends, on leg {leg}"),
        HoldSaid::NoRowSaysWhere => "no row says where it lies: see its instructions".to_owned(),
        HoldSaid::NotPlacedYet => "no place yet, see the growth ladder: press a trial, write its growth into the job, plan again".to_owned(),
        HoldSaid::OnLadder => "growth ladder on the front page".to_owned(),
    }
}

/// A connector with its end.
fn row(of: &ConnectorOf) -> String {
    match &of.end {
        Some(end) => format!("{}, end {end}", of.row),
        None => of.row.clone(),
    }
}

/// A connector with its end, on its leg.
fn connector(of: &ConnectorOf) -> String {
    format!("{}, leg {}", row(of), of.leg)
}
