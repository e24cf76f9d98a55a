//! Sentences about a part in store.

use jointwright_joint::said::{Begun, HeldSaid, StoredSaid};

fn begun(begun: Begun) -> &'static str {
    match begun {
        Begun::Made => "made",
        Begun::Expanded => "expanded",
    }
}

pub(super) fn say(said: &StoredSaid) -> String {
    match said {
        StoredSaid::PastDate {
            part,
            lot,
            last,
            work,
        } => format!("{part}, lot {lot}: its last day was {last}; the work is on {work}"),
        StoredSaid::LotNotWritten { part } => {
            format!("{part}: its lot, and how old it is, are not written down")
        }
        StoredSaid::AskLot { part, begun: how } => format!(
            "Which lot of {part} is on the truck, and when was it {}?",
            begun(*how)
        ),
        StoredSaid::BegunAfterWork {
            part,
            lot,
            begun: how,
            day,
        } => format!(
            "{part}, lot {lot}: {} on {day}, after the day of the work",
            begun(*how)
        ),
        StoredSaid::AskBegun {
            part,
            lot,
            begun: how,
        } => format!("When was lot {lot} of {part} {}?", begun(*how)),
        StoredSaid::LabelNotWritten { part, lot } => format!(
            "{part}, lot {lot}: whether its label prints an expiry date is not written down"
        ),
        StoredSaid::AskLabel { part, lot } => {
            format!("What expiry date does the label of lot {lot} of {part} print, if any?")
        }
        StoredSaid::BegunNotWritten {
            part,
            lot,
            begun: how,
        } => format!(
            "{part}, lot {lot}: the day it was {} is not written down",
            begun(*how)
        ),
        StoredSaid::NoAgeLimit { part } => {
            format!("{part}: neither its row nor its label gives an age limit")
        }
        StoredSaid::AskAgeLimit { part } => {
            format!("For how many months, and from when, may {part} lie in store?")
        }
        StoredSaid::WarmthNotWritten { part, lot, from } => {
            format!("{part}, lot {lot}: how warm it lay from {from} on is not written down")
        }
        StoredSaid::AskWarmth { part, lot } => {
            format!("How warm did lot {lot} of {part} lie in store and on the truck?")
        }
        StoredSaid::Held(said) => held(said),
    }
}

fn held(said: &HeldSaid) -> String {
    match said {
        HeldSaid::SetNotKnown { part } => {
            format!("how much of its stretch {part} keeps after a time in store is not known")
        }
        HeldSaid::AskSet { part } => format!(
            "What share of its stretch in store stays in the bore of {part}, after how long and at what temperature?"
        ),
        HeldSaid::LotPlaceNotWritten { part } => {
            format!("{part}: its lot, and where it lay, are not written down")
        }
        HeldSaid::AskLotPlace { part } => format!(
            "Which lot of {part} is on the truck, when was it expanded, and how warm did it lie?"
        ),
        HeldSaid::HoldNotKnown { part } => {
            format!("{part} is expanded in store; to which diameter is not known")
        }
        HeldSaid::AskHold { part } => {
            format!("To what diameter is the bore of {part} held open in store?")
        }
        HeldSaid::ShelfNotSaid { part } => {
            format!("for how long and how warm {part} may lie in store its row does not say")
        }
        HeldSaid::AskShelf { part } => {
            format!("For how long, and up to what temperature, may {part} lie in store?")
        }
    }
}
