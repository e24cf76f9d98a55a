//! Hold: what is measured before work goes on, and what each reading is held against.

use super::adapter;
use super::edge::{EdgeAct, shield_edge};
use super::line::{Line, length_text};
use super::made::made;
use super::{COMMON_PRACTICE, Step, square};
use crate::cable::{Layer, Words};
use crate::catalogue::{Fits, Head};
use crate::checks::{Inputs, LegInputs};
use crate::plane::Plane;
use crate::stage::Stage;
use jointwright_units::{Interval, Length};

/// What a reading is held against.
#[derive(Clone, Debug, PartialEq)]
pub enum Against {
    /// The window of a cut or mark of the leg named.
    Cut(String, Plane),
    /// A range, on somebody's word.
    Range(Interval, String),
    /// A range of lengths along the cable, on somebody's word.
    Along(Interval, String),
    /// Not above, on somebody's word.
    AtMost(Length, String),
    /// Not below, on somebody's word.
    AtLeast(Length, String),
    /// Words or numbers of another kind, on somebody's word.
    Words(String, String),
    /// Nobody sets a window; why.
    NoWindow(String),
}

/// One reading of a hold point.
#[derive(Clone, Debug, PartialEq)]
pub struct Wanted {
    /// What is read.
    pub what: String,
    /// What it is held against.
    pub against: Against,
}

/// A point at which work stops until it is measured.
#[derive(Clone, Debug, PartialEq)]
pub struct Hold {
    /// Readings; one at least.
    pub readings: Vec<Wanted>,
}

/// Hold point of a stage, where it is one.
pub(super) fn hold(inputs: &Inputs<'_>, stage: Stage, legs: &[&LegInputs<'_>]) -> Option<Hold> {
    let words = inputs.order.job.words;
    let cut = |plane: Plane| -> Vec<Wanted> {
        let of = |leg: &&LegInputs<'_>| {
            let cut = leg.cutback.cuts.iter().find(|c| c.plane == plane)?;
            let what = format!("{} on leg {}", plane.words(words), leg.leg.id);
            let against = match (&cut.window, &cut.why) {
                (Some(_), _) => Against::Cut(leg.leg.id.clone(), plane),
                _ if !cut.ladder.is_empty() => Against::Cut(leg.leg.id.clone(), plane),
                (None, why) => Against::NoWindow(
                    why.clone()
                        .unwrap_or_else(|| "nobody sets a window".to_owned()),
                ),
            };
            Some(Wanted { what, against })
        };
        legs.iter().filter_map(of).collect()
    };
    let none = |what: &str, why: &str| {
        vec![Wanted {
            what: what.to_owned(),
            against: Against::NoWindow(why.to_owned()),
        }]
    };
    let readings = match stage {
        Stage::HandOver => none(
            "who handed over, to whom, when",
            "a named person decides, and records it",
        ),
        Stage::Measure => legs.iter().flat_map(|leg| diameters(leg, words)).collect(),
        Stage::Square => legs
            .iter()
            .flat_map(|leg| square::wanted(leg, words))
            .chain(legs.iter().flat_map(|leg| opened(leg, words)))
            .collect(),
        Stage::Jacket => cut(Plane::JacketEdge),
        Stage::Shield => shield(legs, cut(Plane::ShieldEdge), words),
        Stage::Screen => with_looks(cut(Plane::ScreenEdge), legs, "insulation"),
        Stage::Insulation => with_looks(cut(Plane::InsulationEnd), legs, "strands"),
        Stage::Phasing => legs.iter().map(|leg| phases(leg)).collect(),
        Stage::Clean => with_looks(Vec::new(), legs, "insulation"),
        Stage::Connect => legs.iter().flat_map(|leg| connector(leg, words)).collect(),
        Stage::PushOn => match adapter::readings(inputs, legs, stage) {
            readings if readings.is_empty() => return None,
            readings => readings,
        },
        Stage::Place => [adapter::readings(inputs, legs, stage), cut(Plane::BodyEnd)].concat(),
        Stage::Bond => legs.iter().map(|leg| contact(leg, words)).collect(),
        Stage::BondCheck => across(legs, words),
        Stage::BridgeOff => none(
            "who said that the bridge comes off, to whom, when",
            "a named person says it on the spot, and records it",
        ),
        Stage::Seal => seal(legs, cut(Plane::SealEnd), words),
        _ => return None,
    };
    let mut distinct: Vec<Wanted> = Vec::new();
    for wanted in readings {
        if !distinct.contains(&wanted) {
            distinct.push(wanted);
        }
    }
    if distinct.is_empty() {
        distinct = none("what the instructions ask for", "no window is set here");
    }
    Some(Hold { readings: distinct })
}

/// A hold point that a part's own row asks for.
pub(super) fn add_own(step: &mut Step, line: &Line) {
    let own = Wanted {
        what: line.say.clone(),
        against: Against::NoWindow(format!("{} sets none here", line.source)),
    };
    let hold = step.hold.get_or_insert_with(|| Hold {
        readings: Vec::new(),
    });
    if !hold.readings.contains(&own) {
        hold.readings.push(own);
    }
}

/// What the square cut opens: the shield, and the strands for whoever tests them.
fn opened(leg: &LegInputs<'_>, words: Words) -> [Wanted; 2] {
    let (id, shield) = (&leg.leg.id, Layer::MetallicShield.name(words));
    [
        Wanted {
            what: format!(
                "bridge of the {shield} of leg {id}, seen before this cut where it opens a whole cable"
            ),
            against: Against::Words("on and tight".to_owned(), COMMON_PRACTICE.to_owned()),
        },
        moisture(&format!("strands of leg {id}")),
    ]
}

fn moisture(place: &str) -> Wanted {
    Wanted {
        what: format!("{place}: dry or wet, by which test, by whom"),
        against: Against::Words(
            "dry".to_owned(),
            format!("{COMMON_PRACTICE}; wet: stop and call"),
        ),
    }
}

/// The bridge before the shield is touched, then the edge itself and what is kept of a shield that is laid back.
fn shield(legs: &[&LegInputs<'_>], edges: Vec<Wanted>, words: Words) -> Vec<Wanted> {
    let name = Layer::MetallicShield.name(words);
    let mut wanted = Vec::new();
    for leg in legs {
        wanted.push(Wanted {
            what: format!(
                "bridge of the {name} of leg {}, before the first cut",
                leg.leg.id
            ),
            against: Against::Words("seen, on and tight".to_owned(), COMMON_PRACTICE.to_owned()),
        });
    }
    wanted.extend(edges);
    wanted.extend(
        legs.iter()
            .map(|leg| moisture(&format!("under the {name} of leg {}", leg.leg.id))),
    );
    for leg in legs {
        let edge = shield_edge(leg);
        if edge.act == EdgeAct::Ask {
            wanted.push(Wanted {
                what: format!(
                    "wires beside the tape of leg {}: laid back or cut off",
                    leg.leg.id
                ),
                against: Against::NoWindow("no row states it: ask before one is cut".to_owned()),
            });
        }
        if !edge.is_laid_back() {
            continue;
        }
        wanted.push(Wanted {
            what: format!(
                "length of every {} kept beyond the edge, leg {}",
                edge.piece, leg.leg.id
            ),
            against: match edge.kept {
                Some(length) => Against::Words(
                    format!("at least {}", length_text(length, words)),
                    edge.source,
                ),
                None => {
                    Against::NoWindow("no row states it: ask before one is cut short".to_owned())
                }
            },
        });
    }
    wanted
}

/// A cut with what is looked for all around it before anything covers it.
fn with_looks(cuts: Vec<Wanted>, legs: &[&LegInputs<'_>], on: &str) -> Vec<Wanted> {
    let mut wanted = cuts;
    for leg in legs {
        let body = leg.chosen.body.map(|body| &body.head.id);
        wanted.push(Wanted {
            what: format!(
                "nicks, ring cuts and specks on the {on} of leg {}, by eye and finger all around",
                leg.leg.id
            ),
            against: Against::Words(
                "none seen or felt".to_owned(),
                match body {
                    Some(body) => format!(
                        "{COMMON_PRACTICE}; one found: what the instructions of {body} allow, else stop and call"
                    ),
                    None => format!("{COMMON_PRACTICE}; one found: stop and call"),
                },
            ),
        });
    }
    wanted
}

/// The phases of a leg here and at its far end.
fn phases(leg: &LegInputs<'_>) -> Wanted {
    Wanted {
        what: format!(
            "leg {}, phase found at the far end ({}), by whom",
            leg.leg.id,
            leg.leg
                .goes_to
                .as_deref()
                .unwrap_or("where it goes is not said")
        ),
        against: Against::Words(
            "the same as here".to_owned(),
            format!("{COMMON_PRACTICE}; unlike or in doubt: join nothing, stop and call"),
        ),
    }
}

/// Resistance of the connection of a leg's shield.
fn contact(leg: &LegInputs<'_>, words: Words) -> Wanted {
    let name = Layer::MetallicShield.name(words);
    let part = leg.chosen.shield_part;
    let stated = part.and_then(|p| Some((p.contact_greatest_ohm?, p.head.source_text())));
    Wanted {
        what: format!(
            "resistance across the connection of the {name} of leg {}",
            leg.leg.id
        ),
        against: match stated {
            Some((ohm, source)) => Against::Words(format!("at most {}", resistance(ohm)), source),
            None => Against::NoWindow(match part {
                Some(part) => format!("{} sets none", part.head.source_text()),
                None => "no shield part is named".to_owned(),
            }),
        },
    }
}

fn resistance(ohm: f64) -> String {
    if ohm < 1.0 {
        format!("{} mohm", ohm * 1e3)
    } else {
        format!("{ohm} ohm")
    }
}

/// The permanent bond between the legs whose shields it joins.
fn across(legs: &[&LegInputs<'_>], words: Words) -> Vec<Wanted> {
    let name = Layer::MetallicShield.name(words);
    let (open, bonded): (Vec<&LegInputs<'_>>, Vec<&LegInputs<'_>>) =
        legs.iter().partition(|leg| leg.leg.bonding == "open");
    let mut wanted: Vec<Wanted> = bonded
        .windows(2)
        .map(|pair| Wanted {
            what: format!(
                "resistance of the {name} across the joint, leg {} to leg {}",
                pair[0].leg.id, pair[1].leg.id
            ),
            against: Against::NoWindow(
                "write it down; compare the phases, and call where one is unlike the others"
                    .to_owned(),
            ),
        })
        .collect();
    wanted.extend(open.iter().map(|leg| Wanted {
        what: format!(
            "{name} of leg {}: open here, not joined to the other legs",
            leg.leg.id
        ),
        against: Against::NoWindow(
            "the job bonds it open; who measures it, and how, is the owner's to say".to_owned(),
        ),
    }));
    wanted
}

/// Diameters of a leg against the ranges of its parts.
fn diameters(leg: &LegInputs<'_>, words: Words) -> Vec<Wanted> {
    let chosen = &leg.chosen;
    let mut wanted = Vec::new();
    let mut add = |fits: &[Fits], head: &Head, is_wanted: fn(&Fits) -> bool| {
        // From the inside out: the order of rows changes nothing.
        let mut fits: Vec<&Fits> = fits.iter().filter(|f| is_wanted(f)).collect();
        fits.sort_by(|a, b| {
            (a.over, &a.at, a.range.least()).cmp(&(b.over, &b.at, b.range.least()))
        });
        for fits in fits {
            wanted.push(Wanted {
                what: format!(
                    "leg {}, diameter over the {}, for the {} of {}",
                    leg.leg.id,
                    fits.over.name(words),
                    fits.at,
                    head.id
                ),
                against: Against::Range(fits.range, head.source_text()),
            });
        }
    };
    if let Some(adapter) = chosen.adapter {
        add(&adapter.fits, &adapter.head, |_| true);
    }
    if let Some(body) = chosen.body {
        // An adapter stands between the cable and the bore.
        let beside_bore = |fits: &Fits| fits.at != "bore";
        let all = |_: &Fits| true;
        add(
            &body.fits,
            &body.head,
            if chosen.adapter.is_some() {
                beside_bore
            } else {
                all
            },
        );
    }
    if let Some(seal) = chosen.seal {
        add(&seal.fits, &seal.head, |_| true);
    }
    wanted
}

/// The connector as made, against what the body admits and the connector's own paper.
fn connector(leg: &LegInputs<'_>, words: Words) -> Vec<Wanted> {
    let mut wanted = Vec::new();
    let Some(connector) = leg.chosen.connector else {
        return wanted;
    };
    let id = &connector.head.id;
    wanted.extend(made(connector, leg.chosen.end, &leg.leg.id, words));
    if let Some(gap) = leg.chosen.end.and_then(|end| end.gap_greatest) {
        wanted.push(Wanted {
            what: format!(
                "gap between conductor end and stop in {id}, leg {}",
                leg.leg.id
            ),
            against: Against::AtMost(gap, connector.head.source_text()),
        });
    }
    if let Some(proud) = connector.stands_proud {
        wanted.push(Wanted {
            what: format!("how far a sheared bolt of {id} stands proud"),
            against: Against::AtMost(proud, connector.head.source_text()),
        });
    }
    let Some(body) = leg.chosen.body else {
        return wanted;
    };
    let length = format!("length of {id} as made");
    wanted.push(Wanted {
        what: length,
        against: body.connector_length_greatest.map_or_else(
            || Against::NoWindow(format!("{} sets none", body.head.source_text())),
            |most| Against::AtMost(most, body.head.source_text()),
        ),
    });
    let diameter = format!("outside diameter of {id} as made");
    wanted.push(Wanted {
        what: diameter,
        against: body.connector_diameter.map_or_else(
            || Against::NoWindow(format!("{} sets none", body.head.source_text())),
            |range| Against::Range(range, body.head.source_text()),
        ),
    });
    wanted
}

fn seal(legs: &[&LegInputs<'_>], marks: Vec<Wanted>, words: Words) -> Vec<Wanted> {
    let mut wanted = marks;
    for leg in legs {
        let Some(seal) = leg.chosen.seal else {
            continue;
        };
        wanted.push(Wanted {
            what: format!(
                "lap of {} onto the {} of leg {}",
                seal.head.id,
                Layer::Jacket.name(words),
                leg.leg.id
            ),
            against: seal.overlap_least.map_or_else(
                || Against::NoWindow(format!("{} sets none", seal.head.source_text())),
                |least| Against::AtLeast(least, seal.head.source_text()),
            ),
        });
    }
    wanted
}
