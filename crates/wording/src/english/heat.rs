//! Sentences about the temperatures that the load causes.

use super::ask::all;
use crate::Tongue;
use jointwright_joint::said::HeatSaid;

pub(super) fn say(tongue: Tongue, said: &HeatSaid) -> String {
    match said {
        HeatSaid::RestOnMemory { keys } => format!(
            "these temperatures rest on values from memory that the owner has not confirmed: `{}`",
            keys.join("`, `")
        ),
        HeatSaid::AskToConfirm { keys } => format!(
            "Ask: Does the owner's engineer confirm `{}` after reading the standard (`confirmation`: edition, by, date)?",
            keys.join("`, `")
        ),
        HeatSaid::PapersStandFor { unread } => format!(
            "the diameters of the papers stand for what nobody read: {}",
            all(tongue, unread)
        ),
        HeatSaid::PapersForUnread { unread } => format!(
            "the diameters of the papers for what nobody read, {}: nothing passes on these temperatures",
            all(tongue, unread)
        ),
        HeatSaid::AskToRead { unread } => format!("Ask: Read {}.", all(tongue, unread)),
    }
}
