//! Sentences about the steps of a make-up.

use crate::Tongue;
use jointwright_joint::cable::Layer;
use jointwright_joint::plane::Plane;
use jointwright_joint::said::{
    BridgeMoment, EdgeAct, Exact, SetOutFrom, ShieldPiece, StepSaid, Stop, Wording,
};
use jointwright_joint::stage::Stage;

pub(super) fn say(tongue: Tongue, said: &StepSaid) -> String {
    let shield = tongue.layer(Layer::MetallicShield);
    let jacket = tongue.layer(Layer::Jacket);
    match said {
        StepSaid::Title { stage, edge } => title(tongue, *stage, *edge),
        StepSaid::HandOver => "Isolation, identification, proving, grounding or earthing, air and access: by the persons named for it, under local codes and the owner's rules, and recorded by them. This paper says nothing about any of it.".to_owned(),
        StepSaid::MeasureWhereBare => "Over each layer where it is bare: on a piece stripped from the end of this same cable, and again when the layer is bared.".to_owned(),
        StepSaid::LookAtJacket => format!("Look at the {jacket} all around where the seal will lie, and write down how it is."),
        StepSaid::WriteLegAndPhase => format!("Before the cut: write leg and phase on the {jacket} that stays, beyond where the seal will end; the second person reads it back."),
        StepSaid::MarkOut { grows } => format!(
            "From the front page or the marking strip: the outermost cut first, the others from the same end as each layer is bare, body and seal marks where they stay. All before the connector is made{}.",
            if *grows { ", for pressing moves the end" } else { "" }
        ),
        StepSaid::Phasing => "By the persons and the method that the owner names; this paper says nothing about which cable is which. Write down, phase by phase, what is found here and at the far end. Unlike or in doubt: join nothing, stop and call.".to_owned(),
        StepSaid::SlideOnNow => "Now at the latest, in this order, each clean and the right way round; the second person reads the list back. What does not go over what lies under it is not forced: its instructions say when it comes on.".to_owned(),
        StepSaid::Wipes => format!(
            "Each wipe from the conductor end toward the {}, never back; one wipe a stroke, with a clean face of the cloth. Abrasive that does not conduct, never emery, and none on the {0}.",
            tongue.layer(Layer::InsulationScreen)
        ),
        StepSaid::PushOnInOrder => "In this order, each clean and the right way round, greased as its instructions say.".to_owned(),
        StepSaid::LookAgain => "Cleaned before the connector was made: look at the insulation again, and wipe it again as the instructions say, before anything closes over it.".to_owned(),
        StepSaid::HandBack => "Trials, switching in and the release of the place: decided and recorded by the persons named for it.".to_owned(),
        StepSaid::GrowthNotMeasured { leg, waiting } => format!(
            "Leg {leg}: the growth of the connector is not measured, so the {} has no place yet. Before anything is cut, press one trial connector with this tool and die, write its growth into the job and plan again; the growth ladder on the front page shows where each growth would put it, and between two of its lines nothing is known.",
            planes(tongue, waiting)
        ),
        StepSaid::TestMoisture => format!("After the cut: test the strands for moisture, and under the {shield} once it is bare, as the owner's rules say; write down who found what. Wet: stop and call."),
        StepSaid::BridgeBesideBond => "The bridge lies beside the bond: a reading across both does not show the bond alone, and an open bond reads as good. Leave the bridge's path out of the reading, as the owner's rules say; where that cannot be done, write \"bridge on\" and call.".to_owned(),
        StepSaid::MayMove { leg, row, minutes } => format!("Leg {leg}: {row} may be moved for {minutes} minutes once it is placed, then no more. Placed at ____:____"),
        StepSaid::OfLeg { leg, said } => format!("Leg {leg}: {}.", tongue.say(said)),
        StepSaid::KeepAsked { piece } => format!(
            "no row says whether every {} is laid back or cut off with the tape: ask before one is cut",
            self::piece(*piece)
        ),
        StepSaid::Keep { length, piece, has_tape } => format!(
            "keep {} of every {} beyond this edge{}",
            tongue.exact(*length),
            self::piece(*piece),
            tape(*has_tape)
        ),
        StepSaid::KeepUnstated { piece, has_tape } => format!(
            "how much of every {} is kept is not stated: ask before one is cut short{}",
            self::piece(*piece),
            tape(*has_tape)
        ),
        StepSaid::Abrasive { what } => format!("Abrasive: {what}."),
        StepSaid::AbrasiveUnstated { row } => format!("Abrasive and grit: the row {row} states none; look it up in its paper, or ask, before any is used."),
        StepSaid::Brush { leg, metal, row } => format!(
            "Leg {leg}: for its conductor, which is {}, {row} is named, one that has touched no other metal; when and how, as the connector's instructions say.",
            tongue.metal(*metal)
        ),
        StepSaid::SeeInstructions { row } => format!("{row}: see the instructions."),
        StepSaid::SetOut { leg, from, row, is_two_ended, stands, stop, gap } => format!(
            "Leg {leg}: set the cut out from {}, with the cable trained as it will stay. The {} of {row} comes to lie there, and the conductor end stands {} from it: {}{}.",
            reference(*from),
            if *is_two_ended { "middle" } else { "contact plane" },
            standing(tongue, *stands),
            stopped(stop),
            gap.map_or(String::new(), |gap| format!(
                ", and no more than {} farther, the gap that it allows",
                tongue.exact(gap)
            ))
        ),
        StepSaid::SetOutUnknown { leg, why, from } => format!(
            "Leg {leg}: {}, so how far the conductor end stands from {} is not known; ask before this cut.",
            tongue.say(why),
            reference(*from)
        ),
        StepSaid::OpensShield => format!("Where this cut goes through a cable that is still whole it opens its {shield}, too: bridged before that, as the owner's rules say."),
        StepSaid::BridgeComesOff { when } => format!(
            "The bridge comes off {}, when the person named for it says so on the spot; it is not left under the seal.",
            moment(*when)
        ),
        StepSaid::BridgeAsk { name, number, why } => format!(
            "ASK {name}, {number}: {}. It stays on until that is said, and no seal closes over it.",
            tongue.say(why)
        ),
        StepSaid::CommonPractice => "common practice, no source".to_owned(),
        StepSaid::Nobody => "nobody says".to_owned(),
    }
}

/// Title of a stage for a crew.
fn title(tongue: Tongue, stage: Stage, edge: Option<EdgeAct>) -> String {
    let shield = tongue.layer(Layer::MetallicShield);
    let jacket = tongue.layer(Layer::Jacket);
    match stage {
        Stage::HandOver => "Hand-over of the place and the cables".to_owned(),
        Stage::Measure => "Measure the cable and compare it with the ranges".to_owned(),
        Stage::Square => "Straighten, rack, and cut the conductor end square".to_owned(),
        Stage::MarkOut => "Set off every mark from the square-cut conductor end".to_owned(),
        Stage::SlideOn => "Slide on and park all that must go over this end".to_owned(),
        Stage::Jacket => format!("Cut the {jacket}"),
        Stage::Bridge => format!("Bridge the {shield}"),
        Stage::Shield => {
            let act = match edge {
                Some(EdgeAct::Cut) => "Cut",
                Some(EdgeAct::LayBack) => "Lay back",
                Some(EdgeAct::Ask) => "Ask: cut or lay back",
                None => "Cut or lay back",
            };
            format!("{act} the {shield}")
        }
        Stage::Screen => format!(
            "Cut and take off the {}",
            tongue.layer(Layer::InsulationScreen)
        ),
        Stage::Insulation => "Cut and take off the insulation".to_owned(),
        Stage::Phasing => "Check each phase against the far end".to_owned(),
        Stage::Connect => "Make the connector".to_owned(),
        Stage::Clean => "Smooth and clean the insulation".to_owned(),
        Stage::PushOn => "Push onto the clean end what cannot be parked over the jacket".to_owned(),
        Stage::Place => "Bring the body to its place".to_owned(),
        Stage::Mate => "Plug the leg to its port".to_owned(),
        Stage::Bond => format!("Restore and bond the {shield}"),
        Stage::BondCheck => format!("Measure the permanent bond of the {shield}"),
        Stage::BridgeOff => format!("Take off the bridge of the {shield}"),
        Stage::Seal => format!("Restore the {jacket} and seal"),
        Stage::HandBack => "Support, trials, hand-back and record".to_owned(),
    }
}

fn planes(tongue: Tongue, planes: &[Plane]) -> String {
    let planes: Vec<String> = planes.iter().map(|plane| tongue.plane(*plane)).collect();
    planes.join(" and the ")
}

pub(super) fn piece(piece: ShieldPiece) -> &'static str {
    match piece {
        ShieldPiece::Strap => "strap",
        ShieldPiece::Wire => "wire",
        ShieldPiece::Turn => "turn",
    }
}

fn tape(has_tape: bool) -> &'static str {
    if has_tape {
        "; the tape is cut at this edge"
    } else {
        ""
    }
}

fn reference(from: SetOutFrom) -> String {
    match from {
        SetOutFrom::CentreLine => "the centre line of the joint, marked on the rack".to_owned(),
        SetOutFrom::ContactPlane => "the contact plane of the connector, marked on the rack where the instructions of the body put it".to_owned(),
        SetOutFrom::Port(port) => {
            format!("the mating face of port {port} of the bus, hung as it will stay")
        }
        SetOutFrom::OwnPort => {
            "the mating face of the leg's port of the bus, hung as it will stay".to_owned()
        }
    }
}

/// Distance of the conductor end from its reference; a barrel may reach past the middle from which the papers measure.
pub(super) fn standing(tongue: Tongue, stands: Exact) -> String {
    if stands.half_nm < 0 {
        let beyond = Exact {
            half_nm: -stands.half_nm,
        };
        format!("{} beyond it, on the other side,", tongue.exact(beyond))
    } else {
        tongue.exact(stands)
    }
}

fn stopped(stop: &Stop) -> String {
    match stop {
        Stop::End(name) => format!("the bottom of the end {name}"),
        Stop::Half => "half its stop".to_owned(),
        Stop::Whole => "its stop".to_owned(),
    }
}

pub(super) fn moment(when: BridgeMoment) -> &'static str {
    match when {
        BridgeMoment::AfterBondIsMeasured => "after the permanent bond is measured",
        BridgeMoment::BeforeBondIsMeasured => "before the permanent bond is measured",
    }
}
