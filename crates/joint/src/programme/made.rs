//! Made: what press, torque or shear bolt should have left behind, as readings before work goes on.
//!
//! Why its own file: each means leaves something else behind, and each reading has its window from the connector's own paper or says that there is none.

use super::COMMON_PRACTICE;
use super::hold::{Against, Wanted};
use super::line::length_text;
use crate::cable::Words;
use crate::catalogue::{Connector, ConnectorEnd, Means};
use jointwright_units::Interval;

/// Foot-pounds in a newton metre: 1 ft = 0.3048 m, 1 lbf = 4.4482216152605 N, both exact.
const FT_LBF_PER_NM: f64 = 1.0 / (0.3048 * 4.448_221_615_260_5);

/// Readings of a connector as made, by its own paper.
pub(super) fn made(
    connector: &Connector,
    end: Option<&ConnectorEnd>,
    leg: &str,
    words: Words,
) -> Vec<Wanted> {
    let id = connector.head.id.clone() + &end.map(ConnectorEnd::of_end).unwrap_or_default();
    let made = connector.as_made_at(end);
    let source = connector.head.source_text();
    let none = || Against::NoWindow(format!("{source} states none"));
    let wanted = |what: String, against: Against| Wanted { what, against };
    let window = |interval: Option<Interval>| {
        interval.map_or_else(none, |i| Against::Words(range(i, words), source.clone()))
    };
    let stated =
        |text: Option<String>| text.map_or_else(none, |text| Against::Words(text, source.clone()));
    match connector.means {
        Means::Compression => vec![
            wanted(
                format!("die in the press for {id}, leg {leg}"),
                stated(end.and_then(|end| end.die.clone())),
            ),
            wanted(
                format!("presses made on each end of {id}, leg {leg}"),
                stated(end.and_then(|end| end.presses).map(|n| n.to_string())),
            ),
            wanted(
                format!("across the flats of every press of {id}, leg {leg}"),
                window(made.across),
            ),
            wanted(
                format!("length of {id} as made, by its own paper, leg {leg}"),
                window(made.length),
            ),
        ],
        Means::ShearBolt => {
            let heads = wanted(
                format!("heads of {id} sheared off, leg {leg}"),
                match made.bolts {
                    Some(n) => Against::Words(format!("all {n}"), source.clone()),
                    None => Against::Words(
                        "every one; how many there are is not stated".to_owned(),
                        COMMON_PRACTICE.to_owned(),
                    ),
                },
            );
            // A head shears at its own torque; a crew reads it only where the paper names it.
            let torque = made.torque_nm.map(|window| {
                wanted(
                    format!("torque at which the heads of {id} shear, leg {leg}"),
                    stated(Some(torque(window, words))),
                )
            });
            [heads].into_iter().chain(torque).collect()
        }
        Means::SetScrew => vec![
            wanted(
                format!("screws of {id} tightened, leg {leg}"),
                stated(made.bolts.map(|n| format!("all {n}"))),
            ),
            wanted(
                format!("torque of every screw of {id}, leg {leg}"),
                stated(made.torque_nm.map(|t| torque(t, words))),
            ),
        ],
    }
}

/// A window of a length, as it is read.
fn range(interval: Interval, words: Words) -> String {
    let text = |length| length_text(length, words);
    format!(
        "{} to {}",
        text(interval.least()),
        text(interval.greatest())
    )
}

/// A window of torque, rounded inward to tenths.
fn torque((least, greatest): (f64, f64), words: Words) -> String {
    let inward = |unit: f64| {
        // A thousandth of a tenth is what doubles may be off, and no more.
        let (low, high) = (least * unit * 10.0, greatest * unit * 10.0);
        ((low - 1e-3).ceil() / 10.0, (high + 1e-3).floor() / 10.0)
    };
    let (low, high) = inward(1.0);
    let nm = format!("{low} to {high} N·m");
    match words {
        Words::Us => {
            let (low, high) = inward(FT_LBF_PER_NM);
            format!("{low} to {high} ft·lbf ({nm})")
        }
        Words::Iec => nm,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_window_of_torque_is_rounded_inward() {
        // 40 ft·lbf are 54.2327 N·m, 45 are 61.0118.
        let nm = |ft_lbf: f64| ft_lbf * 0.3048 * 4.448_221_615_260_5;
        let window = (nm(40.0), nm(45.0));
        assert_eq!(torque(window, Words::Iec), "54.3 to 61 N·m");
        assert_eq!(
            torque(window, Words::Us),
            "40 to 45 ft·lbf (54.3 to 61 N·m)"
        );
        assert_eq!(torque((50.0, 60.0), Words::Iec), "50 to 60 N·m");
    }
}
