//! Hold: the readings before work goes on, and the window of each.

use super::adapter;
use super::connector_marks::made;
use super::edge::shield_edge;
use super::line::Line;
use super::wanted::{Against, Wanted};
use super::{Step, practice, square_cut};
use crate::cable::Layer;
use crate::catalogue::{Fits, Head};
use crate::checks::{Inputs, LegInputs};
use crate::plane::Plane;
use crate::said::{EdgeAct, HoldSaid, Said};
use crate::slot::Measured;
use crate::stage::Stage;

/// A point at which work stops for its readings.
#[derive(Clone, Debug, PartialEq)]
pub struct Hold {
    /// Readings; at least one.
    pub readings: Vec<Wanted>,
}

/// Hold point of a stage; `None` if the stage has none.
pub(super) fn hold(inputs: &Inputs<'_>, stage: Stage, legs: &[&LegInputs<'_>]) -> Option<Hold> {
    let cut = |plane: Plane| cuts(plane, legs);
    let none = |what: HoldSaid, why: HoldSaid| vec![Wanted::new(what, Against::no_window(why))];
    let readings = match stage {
        Stage::HandOver => none(HoldSaid::WhoHandedOver, HoldSaid::NamedPersonDecides),
        Stage::Measure => legs.iter().flat_map(|leg| diameters(leg)).collect(),
        Stage::Square => legs
            .iter()
            .flat_map(|leg| square_cut::wanted(leg))
            .chain(legs.iter().flat_map(|leg| opened(leg)))
            .collect(),
        Stage::Jacket => cut(Plane::JacketEdge),
        Stage::Shield => shield(legs, cut(Plane::ShieldEdge)),
        Stage::Screen => with_looks(cut(Plane::ScreenEdge), legs, Layer::Insulation),
        Stage::Insulation => with_looks(cut(Plane::InsulationEnd), legs, Layer::Conductor),
        Stage::Phasing => legs.iter().map(|leg| phases(leg)).collect(),
        Stage::Clean => with_looks(Vec::new(), legs, Layer::Insulation),
        Stage::Connect => legs.iter().flat_map(|leg| connector(leg)).collect(),
        Stage::PushOn => match adapter::readings(inputs, legs, stage) {
            readings if readings.is_empty() => return None,
            readings => readings,
        },
        Stage::Place => [adapter::readings(inputs, legs, stage), cut(Plane::BodyEnd)].concat(),
        Stage::Bond => legs.iter().map(|leg| contact(leg)).collect(),
        Stage::BondCheck => across(legs),
        Stage::BridgeOff => none(HoldSaid::WhoTookBridgeOff, HoldSaid::NamedPersonOnTheSpot),
        Stage::Seal => seal(legs, cut(Plane::SealEnd)),
        _ => return None,
    };
    let mut distinct: Vec<Wanted> = Vec::new();
    for wanted in readings {
        let is_same =
            |other: &&mut Wanted| (&other.what, &other.against) == (&wanted.what, &wanted.against);
        match distinct.iter_mut().find(is_same) {
            None => distinct.push(wanted),
            // One sleeve on two legs is measured once.
            Some(same) => same.slots.extend(wanted.slots),
        }
    }
    if distinct.is_empty() {
        distinct = none(HoldSaid::AsInstructionsAsk, HoldSaid::NoWindowHere);
    }
    Some(Hold { readings: distinct })
}

/// A cut or a mark of these legs, with its window.
fn cuts(plane: Plane, legs: &[&LegInputs<'_>]) -> Vec<Wanted> {
    let of = |leg: &&LegInputs<'_>| {
        let cut = leg.cutback.cuts.iter().find(|c| c.plane == plane)?;
        let id = leg.leg.id.clone();
        let has_window = cut.window.is_some() || !cut.ladder.is_empty();
        let against = match &cut.why {
            _ if has_window => Against::Cut(id.clone(), plane),
            Some(why) => Against::no_window(why.clone()),
            None => Against::no_window(HoldSaid::NobodySetsWindow),
        };
        let what = HoldSaid::PlaneOn { plane, leg: id };
        Some(Wanted::on(leg, Measured::Place { plane }, what, against))
    };
    legs.iter().filter_map(of).collect()
}

/// Adds a hold point that a part's own row asks for.
pub(super) fn add_own(step: &mut Step, line: &Line) {
    let source = line.source.clone();
    let against = Against::no_window(HoldSaid::SetsNoneHere { source });
    let own = Wanted::new(line.say.clone(), against);
    let hold = step.hold.get_or_insert_with(|| Hold {
        readings: Vec::new(),
    });
    if !hold.readings.contains(&own) {
        hold.readings.push(own);
    }
}

/// Readings after the square cut: the shield, and the strands for the moisture test.
fn opened(leg: &LegInputs<'_>) -> [Wanted; 2] {
    let id = || leg.leg.id.clone();
    [
        Wanted::on(
            leg,
            Measured::Bridge,
            HoldSaid::BridgeBeforeThisCut { leg: id() },
            Against::words(HoldSaid::OnAndTight, practice()),
        ),
        moisture(
            leg,
            Measured::StrandMoisture,
            HoldSaid::StrandsDry { leg: id() },
        ),
    ]
}

fn moisture(leg: &LegInputs<'_>, measured: Measured, what: HoldSaid) -> Wanted {
    let against = Against::words(HoldSaid::Dry, HoldSaid::WetStops);
    Wanted::on(leg, measured, what, against)
}

/// Readings of the bridge before the shield is touched, then of the edge and of the kept length of a shield that is laid back.
fn shield(legs: &[&LegInputs<'_>], edges: Vec<Wanted>) -> Vec<Wanted> {
    let id = |leg: &LegInputs<'_>| leg.leg.id.clone();
    let bridge = |leg: &&LegInputs<'_>| {
        Wanted::on(
            leg,
            Measured::Bridge,
            HoldSaid::BridgeBeforeFirstCut { leg: id(leg) },
            Against::words(HoldSaid::SeenOnAndTight, practice()),
        )
    };
    let mut wanted: Vec<Wanted> = legs.iter().map(bridge).collect();
    wanted.extend(edges);
    let under = |leg: &&LegInputs<'_>| {
        let what = HoldSaid::UnderShieldDry { leg: id(leg) };
        moisture(leg, Measured::ShieldMoisture, what)
    };
    wanted.extend(legs.iter().map(under));
    for leg in legs {
        let edge = shield_edge(leg);
        if edge.act == EdgeAct::Ask {
            wanted.push(Wanted::on(
                leg,
                Measured::WiresBesideTape,
                HoldSaid::WiresBesideTape { leg: id(leg) },
                Against::no_window(HoldSaid::AskBeforeOneIsCut),
            ));
        }
        if !edge.is_laid_back() {
            continue;
        }
        let what = HoldSaid::LengthKept {
            piece: edge.piece,
            leg: id(leg),
        };
        let against = match edge.kept {
            Some(length) => {
                let length = length.into();
                Against::words(HoldSaid::AtLeast { length }, edge.source)
            }
            None => Against::no_window(HoldSaid::AskBeforeOneIsCutShort),
        };
        wanted.push(Wanted::on(leg, Measured::ShieldKept, what, against));
    }
    wanted
}

/// A cut, with the inspection all around it before anything covers it.
fn with_looks(cuts: Vec<Wanted>, legs: &[&LegInputs<'_>], on: Layer) -> Vec<Wanted> {
    let mut wanted = cuts;
    for leg in legs {
        let row = leg.chosen.body.map(|body| body.head.id.clone());
        let id = leg.leg.id.clone();
        wanted.push(Wanted::on(
            leg,
            Measured::Surface { on },
            HoldSaid::Looks { on, leg: id },
            Against::words(HoldSaid::NoneSeenOrFelt, HoldSaid::OneFoundStops { row }),
        ));
    }
    wanted
}

/// The phases of a leg here and at its far end.
fn phases(leg: &LegInputs<'_>) -> Wanted {
    let what = HoldSaid::PhaseAtFarEnd {
        leg: leg.leg.id.clone(),
        goes_to: leg.leg.goes_to.clone(),
    };
    let against = Against::words(HoldSaid::SameAsHere, HoldSaid::UnlikeStops);
    Wanted::on(leg, Measured::Phase, what, against)
}

/// Resistance of a leg's shield connection.
fn contact(leg: &LegInputs<'_>) -> Wanted {
    let part = leg.chosen.shield_part;
    let stated = part.and_then(|p| Some((p.contact_greatest_ohm?, p.head.source())));
    let against = match (stated, part) {
        (Some((ohm, source)), _) => Against::words(HoldSaid::AtMostOhm { ohm }, source),
        (None, Some(part)) => Against::no_window(HoldSaid::SetsNone {
            paper: part.head.source(),
        }),
        (None, None) => Against::no_window(HoldSaid::NoShieldPart),
    };
    let what = HoldSaid::ContactOf {
        leg: leg.leg.id.clone(),
    };
    Wanted::on(leg, Measured::ContactResistance, what, against)
}

/// Permanent bond between the legs whose shields it joins.
fn across(legs: &[&LegInputs<'_>]) -> Vec<Wanted> {
    let id = |leg: &LegInputs<'_>| leg.leg.id.clone();
    let (open, bonded): (Vec<&LegInputs<'_>>, Vec<&LegInputs<'_>>) =
        legs.iter().partition(|leg| leg.leg.bonding == "open");
    let pairs = bonded.windows(2);
    let joined = pairs.map(|pair| {
        let (from, to) = (id(pair[0]), id(pair[1]));
        let measured = Measured::BondResistance { to: to.clone() };
        let against = Against::no_window(HoldSaid::CompareThePhases);
        let what = HoldSaid::AcrossJoint { from, to };
        Wanted::on(pair[0], measured, what, against)
    });
    let open = open.iter().map(|leg| {
        let against = Against::no_window(HoldSaid::BondedOpen);
        let what = HoldSaid::OpenHere { leg: id(leg) };
        Wanted::on(leg, Measured::ShieldOpen, what, against)
    });
    joined.chain(open).collect()
}

/// Limit of a row, or the statement that the row sets none.
fn set_by<T>(head: &Head, limit: Option<T>, against: fn(T, Said) -> Against) -> Against {
    match limit {
        Some(limit) => against(limit, head.source().into()),
        None => Against::no_window(HoldSaid::SetsNone {
            paper: head.source(),
        }),
    }
}

/// Diameters of a leg, with the ranges of its parts.
fn diameters(leg: &LegInputs<'_>) -> Vec<Wanted> {
    let chosen = &leg.chosen;
    let mut wanted = Vec::new();
    let mut add = |fits: &[Fits], head: &Head, is_wanted: fn(&Fits) -> bool| {
        // From the inside out: the result does not depend on the order of rows.
        let mut fits: Vec<&Fits> = fits.iter().filter(|f| is_wanted(f)).collect();
        fits.sort_by(|a, b| {
            (a.over, &a.at, a.range.least()).cmp(&(b.over, &b.at, b.range.least()))
        });
        for fits in fits {
            let what = HoldSaid::DiameterFor {
                leg: leg.leg.id.clone(),
                over: fits.over,
                at: fits.at.clone(),
                row: head.id.clone(),
            };
            let against = Against::Range(fits.range, head.source().into());
            let measured = Measured::Diameter { over: fits.over };
            wanted.push(Wanted::on(leg, measured, what, against));
        }
    };
    if let Some(adapter) = chosen.adapter {
        add(&adapter.fits, &adapter.head, |_| true);
    }
    if let Some(body) = chosen.body {
        // An adapter stands between the cable and the bore.
        let beside_bore = |fits: &Fits| !fits.is_bore();
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

/// Connector as made, with the limits of the body and of the connector's own paper.
fn connector(leg: &LegInputs<'_>) -> Vec<Wanted> {
    let mut wanted = Vec::new();
    let Some(connector) = leg.chosen.connector else {
        return wanted;
    };
    let row = || connector.head.id.clone();
    wanted.extend(made(connector, leg));
    if let Some(gap) = leg.chosen.end.and_then(|end| end.gap_greatest) {
        let id = leg.leg.id.clone();
        wanted.push(Wanted::on(
            leg,
            Measured::ConnectorGap,
            HoldSaid::GapAtStop {
                row: row(),
                leg: id,
            },
            Against::AtMost(gap, connector.head.source().into()),
        ));
    }
    if let Some(proud) = connector.stands_proud {
        wanted.push(Wanted::on(
            leg,
            Measured::BoltProud,
            HoldSaid::BoltStandsProud { row: row() },
            Against::AtMost(proud, connector.head.source().into()),
        ));
    }
    let Some(body) = leg.chosen.body else {
        return wanted;
    };
    wanted.push(Wanted::on(
        leg,
        Measured::ConnectorLength,
        HoldSaid::LengthAsMade { row: row() },
        set_by(&body.head, body.connector_length_greatest, Against::AtMost),
    ));
    wanted.push(Wanted::on(
        leg,
        Measured::ConnectorDiameter,
        HoldSaid::DiameterAsMade { row: row() },
        set_by(&body.head, body.connector_diameter, Against::Range),
    ));
    wanted
}

fn seal(legs: &[&LegInputs<'_>], marks: Vec<Wanted>) -> Vec<Wanted> {
    let mut wanted = marks;
    for leg in legs {
        let Some(seal) = leg.chosen.seal else {
            continue;
        };
        let (row, id) = (seal.head.id.clone(), leg.leg.id.clone());
        wanted.push(Wanted::on(
            leg,
            Measured::SealOverlap,
            HoldSaid::LapOntoJacket { row, leg: id },
            set_by(&seal.head, seal.overlap_least, Against::AtLeast),
        ));
    }
    wanted
}
