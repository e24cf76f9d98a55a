//! Finding: one reading beside its window.
//!
//! Invariants: a larger error of an instrument never turns another finding into one in the window, and never turns one in the window into stop and ask; what is further out is never found better.

use super::bounds::Bounds;
use super::reading::Found;
use crate::said::{Amount, BuiltSaid, Exact};
use jointwright_units::{Length, Station};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Kind of a finding, from the best to the worst.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
pub enum FindingKind {
    /// The reading and its error lie in the window.
    InWindow,
    /// The slot has no reading.
    Missing,
    /// Nobody sets a window for it.
    NoWindow,
    /// The reading's error reaches over the edge of the window: measure again.
    CannotTell,
    /// It is out of the window, or off a number without a tolerance: stop and ask.
    StopAndAsk,
    /// It is out, and no way back can be computed: stop and ask.
    NoWayBack,
}

/// Comparison of a reading with its window.
#[derive(Clone, Debug, PartialEq)]
pub struct Finding {
    /// Kind.
    pub kind: FindingKind,
    /// Deviation from the window, or the doubt; `None` in the window.
    pub why: Option<BuiltSaid>,
}

impl Finding {
    const IN_WINDOW: Finding = Finding {
        kind: FindingKind::InWindow,
        why: None,
    };
    const NO_WINDOW: Finding = Finding {
        kind: FindingKind::NoWindow,
        why: None,
    };

    fn ask(why: BuiltSaid) -> Finding {
        Finding {
            kind: FindingKind::StopAndAsk,
            why: Some(why),
        }
    }

    pub(super) fn unclear(why: BuiltSaid) -> Finding {
        Finding {
            kind: FindingKind::CannotTell,
            why: Some(why),
        }
    }

    /// Compares what was read with its bounds.
    pub(super) fn of(found: &Found, bounds: &Bounds) -> Finding {
        match (found, bounds) {
            (Found::Lengths(values, error), Bounds::Lengths(least, greatest)) => {
                let values: Vec<i64> = values.iter().map(|v| Station::from(*v).half_nm()).collect();
                let window = Window {
                    least: least.map(Station::half_nm),
                    greatest: greatest.map(Station::half_nm),
                };
                let length = |half_nm| Amount::Length(Exact { half_nm });
                let finding = window.finding(&values, Station::from(*error).half_nm(), length);
                Finding {
                    why: finding.why.map(rounded_down),
                    ..finding
                }
            }
            (Found::Lengths(values, error), Bounds::Nobody(Some(planned))) => {
                off_plan(values, *error, *planned)
            }
            (Found::Ohm(ohm, error), Bounds::AtMostOhm(most)) => {
                let window = Window {
                    least: None,
                    greatest: Some(*most),
                };
                window.finding(&[*ohm], *error, Amount::Ohm)
            }
            (Found::Torques(values, error), Bounds::Torque(least, greatest)) => {
                let window = Window {
                    least: Some(*least),
                    greatest: Some(*greatest),
                };
                window.finding(values, *error, Amount::Nm)
            }
            (Found::Count(n), Bounds::Count(wanted)) => match n - wanted {
                0 => Finding::IN_WINDOW,
                less if less < 0 => Finding::ask(BuiltSaid::Under {
                    by: Amount::Count(-less),
                }),
                more => Finding::ask(BuiltSaid::Over {
                    by: Amount::Count(more),
                }),
            },
            (Found::Count(0), Bounds::Every) => Finding::ask(BuiltSaid::Under {
                by: Amount::Count(1),
            }),
            (Found::Word(word), Bounds::Word(wanted)) => alike(word == wanted, wanted),
            (Found::Word(name), Bounds::Name(wanted)) => {
                let plain = |text: &str| text.trim().to_lowercase();
                alike(plain(name) == plain(wanted), wanted)
            }
            _ => Finding::NO_WINDOW,
        }
    }
}

/// Rounds the error that would settle a reading down to a hundredth of a millimetre, as it is printed.
fn rounded_down(why: BuiltSaid) -> BuiltSaid {
    const HUNDREDTH: i64 = 20_000;
    match why {
        BuiltSaid::ErrorReachesOver {
            below: Amount::Length(Exact { half_nm }),
        } if half_nm >= HUNDREDTH => BuiltSaid::ErrorReachesOver {
            below: Amount::Length(Exact {
                half_nm: half_nm - half_nm % HUNDREDTH,
            }),
        },
        other => other,
    }
}

fn alike(is_alike: bool, wanted: &str) -> Finding {
    if is_alike {
        Finding::IN_WINDOW
    } else {
        let wanted = wanted.to_owned();
        Finding::ask(BuiltSaid::Unlike { wanted })
    }
}

/// Finding of lengths for which a row gives a number without a tolerance: every deviation is stop and ask.
fn off_plan(values: &[Length], error: Length, planned: Station) -> Finding {
    let error = Station::from(error);
    let is_off = |value: &Length| {
        let off = Station::from(*value) - planned;
        off > error || -off > error
    };
    if values.iter().any(is_off) {
        Finding::ask(BuiltSaid::NotFromPlan {
            planned: planned.into(),
        })
    } else {
        Finding::NO_WINDOW
    }
}

/// Bounds of numbers of one kind.
struct Window<T> {
    least: Option<T>,
    greatest: Option<T>,
}

impl<T> Window<T>
where
    T: Copy + PartialOrd + std::ops::Sub<Output = T> + Default,
{
    /// Compares values and their error with the bounds; `amount` gives a difference its unit.
    fn finding(&self, values: &[T], error: T, amount: impl Fn(T) -> Amount) -> Finding {
        let zero = T::default();
        // Room inside each bound, of the value that has the least; negative outside.
        let rooms = |room: &dyn Fn(T) -> Option<T>| {
            let rooms = values.iter().filter_map(|value| room(*value));
            rooms.reduce(|a, b| if b < a { b } else { a })
        };
        let below = rooms(&|value| Some(value - self.least?));
        let above = rooms(&|value| Some(self.greatest? - value));
        let out = |room: Option<T>| room.map(|room| zero - room).filter(|by| *by > error);
        match (out(below), out(above)) {
            (Some(under), Some(over)) => Finding::ask(BuiltSaid::UnderAndOver {
                under: amount(under),
                over: amount(over),
            }),
            (Some(by), None) => Finding::ask(BuiltSaid::Under { by: amount(by) }),
            (None, Some(by)) => Finding::ask(BuiltSaid::Over { by: amount(by) }),
            (None, None) => {
                let unclear = [below, above].into_iter().flatten();
                let unclear = unclear.filter(|room| *room < error);
                let size = |room: T| if room < zero { zero - room } else { room };
                let least = unclear.map(size).reduce(|a, b| if b < a { b } else { a });
                match least {
                    None => Finding::IN_WINDOW,
                    Some(least) if least == zero => Finding::unclear(BuiltSaid::OnTheEdge),
                    Some(least) => Finding::unclear(BuiltSaid::ErrorReachesOver {
                        below: amount(least),
                    }),
                }
            }
        }
    }
}
