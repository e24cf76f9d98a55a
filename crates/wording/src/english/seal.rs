//! Sentences about seals.

use crate::Tongue;
use jointwright_joint::said::{LapSaid, SealSaid, SpanSaid, Wording};

pub(super) fn say(tongue: Tongue, said: &SealSaid) -> String {
    match said {
        SealSaid::Lap(said) => lap(tongue, said),
        SealSaid::Span(said) => span(tongue, said),
        SealSaid::NoRange { row } => format!("the row {row} gives no range"),
    }
}

fn lap(tongue: Tongue, said: &LapSaid) -> String {
    match said {
        LapSaid::OverlapOnBody => "overlap of the seal on the body".to_owned(),
        LapSaid::OverlapOnBodyEnd { subject, seal } => format!(
            "{}, overlap of {seal} on the end of the body, at the worst of the windows",
            tongue.subject(subject)
        ),
        LapSaid::ClosesOverBodyEnd => "a seal closes over the end of the body".to_owned(),
        LapSaid::LeavesBodyEndOpen => "Stop. Use a longer seal, or have the owner's engineer look at the windows; an end of the body that is left open lets water in.".to_owned(),
        LapSaid::BodyOverlapNotSaid { row } => format!(
            "the row {row} does not say how far it must lap over the end of the body"
        ),
        LapSaid::JacketOverlapNotSaid => "neither the instructions nor the owner say how far it must lap onto the jacket".to_owned(),
        LapSaid::OverlapOnJacket { subject, seal } => format!(
            "{}, overlap of {seal} on the jacket, at the worst of the windows",
            tongue.subject(subject)
        ),
        LapSaid::UseLonger => "Stop. Use a longer seal, or have the owner's engineer look at the windows.".to_owned(),
        LapSaid::ShrinkageNotStated => "how far the jacket shrinks back after it is cut is not stated, so the overlap that is left then cannot be said".to_owned(),
        LapSaid::AskShrinkage => "How far does the jacket of this cable shrink back? The owner sets it as a distance from jacket-edge to jacket-edge-shrunk-back.".to_owned(),
    }
}

fn span(tongue: Tongue, said: &SpanSaid) -> String {
    match said {
        SpanSaid::NotNamedByBoth { seal } => {
            format!("{seal} goes over the whole joint, and the legs do not both name it")
        }
        SpanSaid::LengthNotSaid { row } => {
            format!("the row {row} does not say how long it is once it has closed")
        }
        SpanSaid::OverlapNotSaid { row } => {
            format!("the row {row} does not say how far it must lap onto the jacket")
        }
        SpanSaid::Joint { kind } => tongue.joint_kind(*kind).to_owned(),
        SpanSaid::OnePieceOverTwoLegs { seal, kind } => format!(
            "{seal} is one piece over two legs; here the joint is {}",
            tongue.joint_kind(*kind)
        ),
        SpanSaid::UseOneForEachLeg => "Use a seal for each leg.".to_owned(),
        SpanSaid::Length { seal } => format!("length of {seal} over the whole joint"),
        SpanSaid::SetOff {
            seal,
            to_leg,
            from_leg,
        } => format!(
            "overlap of {seal} on the jacket of leg {to_leg}, when its other end is set to the mark on leg {from_leg}"
        ),
        SpanSaid::AtWorst { what } => {
            format!("{}, at the worst of the windows", tongue.say(what))
        }
        SpanSaid::UseLongerOrOneALeg => {
            "Stop. Use a longer seal, or one seal a leg; do not stretch it along the joint."
                .to_owned()
        }
    }
}
