//! Sentences about water.

use jointwright_joint::said::{MoistureSaid, TestedPlace, WaterSaid, WickSaid};

pub(super) fn say(said: &WaterSaid) -> String {
    match said {
        WaterSaid::Moisture(said) => moisture(said),
        WaterSaid::Wick(said) => wick(said),
    }
}

fn moisture(said: &MoistureSaid) -> String {
    match said {
        MoistureSaid::Wet => "wet".to_owned(),
        MoistureSaid::Dry => "dry".to_owned(),
        MoistureSaid::WetIsNotJoined => "an end that holds water is not joined".to_owned(),
        MoistureSaid::FoundWet { place, how, source } => {
            format!("{} found wet ({how}, {source})", tested(*place))
        }
        MoistureSaid::StopAndCall => "Stop and call: whoever decides says whether it is cut back, dried or left; test again after it.".to_owned(),
        MoistureSaid::FoundDryBefore { place, tested: on, work } => format!(
            "{} found dry on {on}; the work is on {work}, and an open end takes water",
            tested(*place)
        ),
        MoistureSaid::TestAgain => {
            "Test again after the square cut, and write down who found what.".to_owned()
        }
        MoistureSaid::Test { how, source } => format!("test for moisture ({how}), {source}"),
        MoistureSaid::ShieldNotTested => {
            "nobody has tested under the shield of this end for moisture".to_owned()
        }
        MoistureSaid::TestUnderShield => "Test under the shield once it is bare, as the owner's rules say, and write down who found what.".to_owned(),
        MoistureSaid::StrandsNotTested { blocked, far_end_in_water } => {
            let strands = match blocked {
                Some(true) => "its papers say that the strands are blocked, which is no test",
                Some(false) => "the strands are not blocked",
                None => "whether the strands are blocked is not stated",
            };
            let far_end = match far_end_in_water {
                Some(true) => "the far end stands in water or may",
                Some(false) => "somebody looked at the far end and it does not stand in water",
                None => "nobody has said whether the far end stands in water",
            };
            format!("nobody has tested the strands of this end for moisture; {strands}; {far_end}")
        }
        MoistureSaid::TestStrands => "Test the strands and under the shield for moisture after the square cut, as the owner's rules say, and write down who found what.".to_owned(),
    }
}

/// Place of a test, as the beginning of a sentence.
fn tested(place: TestedPlace) -> &'static str {
    match place {
        TestedPlace::Strands => "the strands were",
        TestedPlace::UnderShield => "under the shield it was",
    }
}

fn wick(said: &WickSaid) -> String {
    match said {
        WickSaid::PassesNotSaid { part } => format!(
            "whether anything of {part} passes out under the seal its row does not say"
        ),
        WickSaid::AskPasses { part } => format!(
            "Does a wire, strap, braid or lead of {part} pass out under the seal, and is that stretch blocked against water?"
        ),
        WickSaid::NothingByItsRow { part } => format!(
            "the shield is bonded over a link, and by its row nothing of {part} passes out under the seal"
        ),
        WickSaid::AskWhereLeadComesOut { part } => format!(
            "Where does the bonding lead of {part} come out, and is it blocked against water there?"
        ),
        WickSaid::NothingPasses => "nothing passes out under the seal".to_owned(),
        WickSaid::BlockedWhereSomethingDoes => "blocked, where something does".to_owned(),
        WickSaid::Blocked => "blocked".to_owned(),
        WickSaid::NotBlocked => "not blocked".to_owned(),
        WickSaid::BlockedNotSaid { part } => format!(
            "whether the stretch of {part} under the seal is blocked against water its row does not say"
        ),
        WickSaid::AskBlocked { part } => format!(
            "Is the stretch of {part} that lies under the seal blocked against water?"
        ),
        WickSaid::PassesUnblocked { part } => format!(
            "{part} passes out under the seal and carries no stretch blocked against water"
        ),
        WickSaid::TakesLead => "takes a lead".to_owned(),
        WickSaid::TakesNoLead => "takes no lead".to_owned(),
        WickSaid::TakesLeadNotSaid { seal } => {
            format!("whether {seal} takes a braid or lead under it its row does not say")
        }
        WickSaid::AskTakesLead { seal } => {
            format!("May a braid or lead come out under {seal}?")
        }
        WickSaid::LetsNothingOut { part, seal } => format!(
            "{part} passes out under {seal}, whose paper lets nothing out under it"
        ),
        WickSaid::UseBlocked => "Stop: water creeps along it into the joint. Use a part with a blocked stretch, and a seal that takes it.".to_owned(),
    }
}
