//! Bounds: the window of a reading in numbers and words that can be compared.
//!
//! Invariants: only messages with typed arguments are compared; no sentence is read.

use crate::checks::Inputs;
use crate::plane::Plane;
use crate::programme::Against;
use crate::said::{HoldSaid, Said};
use jointwright_units::Station;

/// Window of a reading, to be compared.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Bounds {
    /// Least and greatest length; `None`: not bounded on that side.
    Lengths(Option<Station>, Option<Station>),
    /// Greatest resistance, ohm.
    AtMostOhm(f64),
    /// Least and greatest torque, N·m.
    Torque(f64, f64),
    /// Count.
    Count(i64),
    /// Word of what must be found.
    Word(&'static str),
    /// Every one, of a number that is not stated.
    Every,
    /// Name from a row, as of a die.
    Name(String),
    /// Nobody sets a window; the planned value if there is one.
    Nobody(Option<Station>),
}

/// Bounds of a window.
pub(super) fn bounds(inputs: &Inputs<'_>, against: &Against) -> Bounds {
    match against {
        Against::Cut(leg, plane) => of_cut(inputs, leg, *plane),
        Against::Range(range, _) | Against::Along(range, _) => {
            Bounds::Lengths(Some(range.least().into()), Some(range.greatest().into()))
        }
        Against::AtMost(most, _) => Bounds::Lengths(None, Some((*most).into())),
        Against::AtLeast(least, _) => Bounds::Lengths(Some((*least).into()), None),
        Against::Words(found, _) => match found {
            Said::Hold(found) => of_words(found),
            Said::Text(name) => Bounds::Name(name.clone()),
            _ => Bounds::Nobody(None),
        },
        Against::NoWindow(why) => Bounds::Nobody(match why {
            Said::Hold(why) => planned(why),
            _ => None,
        }),
    }
}

/// Window of a cut or mark of a leg.
fn of_cut(inputs: &Inputs<'_>, leg: &str, plane: Plane) -> Bounds {
    let leg = inputs.legs.iter().find(|of| of.leg.id == leg);
    let cut = leg.and_then(|leg| leg.cutback.cuts.iter().find(|cut| cut.plane == plane));
    match cut.and_then(|cut| cut.window) {
        Some(window) => Bounds::Lengths(Some(window.least()), Some(window.greatest())),
        None => Bounds::Nobody(cut.and_then(|cut| cut.nominal)),
    }
}

fn of_words(found: &HoldSaid) -> Bounds {
    match found {
        HoldSaid::Between { least, greatest } => Bounds::Lengths(
            Some(Station::from_half_nm(least.half_nm)),
            Some(Station::from_half_nm(greatest.half_nm)),
        ),
        HoldSaid::AtLeast { length } => {
            Bounds::Lengths(Some(Station::from_half_nm(length.half_nm)), None)
        }
        HoldSaid::AtMostOhm { ohm } => Bounds::AtMostOhm(*ohm),
        HoldSaid::Torque {
            least_nm,
            greatest_nm,
        } => Bounds::Torque(*least_nm, *greatest_nm),
        HoldSaid::All { n } | HoldSaid::Exactly { n } => Bounds::Count(*n),
        HoldSaid::EveryHead => Bounds::Every,
        HoldSaid::Dry => Bounds::Word("dry"),
        HoldSaid::OnAndTight | HoldSaid::SeenOnAndTight => Bounds::Word("on-and-tight"),
        HoldSaid::NoneSeenOrFelt => Bounds::Word("nothing"),
        HoldSaid::SameAsHere => Bounds::Word("same"),
        _ => Bounds::Nobody(None),
    }
}

/// Planned value of a reading for which a row gives no window.
fn planned(why: &HoldSaid) -> Option<Station> {
    match why {
        HoldSaid::GivesNoWindow { distance, .. } => Some(distance.length().into()),
        HoldSaid::StatesNoGap { stands, .. } => Some(Station::from_half_nm(stands.half_nm)),
        _ => None,
    }
}
