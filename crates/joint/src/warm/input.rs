//! Input: one leg from its readings, papers, rows and surroundings, or the missing facts and whom to ask.

use super::around::stretches;
use super::shape::{Adapter, Body, Core, Layer, Region, Shape};
use crate::cable::{self, Metal};
use crate::catalogue::{self, FieldDuty};
use crate::cutback::Cutback;
use crate::fault::shield_area_mm2;
use crate::fit::Chosen;
use crate::job::{Job, Leg, Surrounding};
use crate::limit::{Ask, fact_table as fact};
use crate::plane::Plane;
use crate::said::{self, HeatAsk, HeatCannot, HeatLacks, HeatLayer, HeatPlace, PartKind};
use crate::section::Unknown;
use crate::shielding::{ShieldLoss, along, measured_said, shield_loss};
use crate::survey::{EndSurvey, place_of};
use jointwright_numerics::heat::Stuff;
use jointwright_numerics::ladder::Loss;
use jointwright_numerics::rating::Conductor;
use jointwright_numerics::rating::conductor::{Neighbours, Proximity};
use jointwright_units::{Interval, Length};
use std::f64::consts::PI;

/// One leg with its parts, cutbacks and surveys.
#[derive(Clone, Copy, Debug)]
pub struct LegSubject<'a> {
    /// The leg.
    pub leg: &'a Leg,
    /// Its parts.
    pub chosen: &'a Chosen<'a>,
    /// Its cutbacks.
    pub cutback: &'a Cutback,
    /// Surveys of its ends.
    pub surveys: &'a [EndSurvey],
}

/// Reason why a leg cannot be read.
pub(super) enum Missing {
    /// A fact is not known.
    Unknown(Unknown),
    /// The known facts contradict each other.
    Refused(said::Said),
}

/// Leg that was read.
pub(super) struct LegInput {
    pub shape: Shape,
    pub said: Said,
}

/// Statements printed beside its temperatures.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Said {
    /// Greatest resistance of the connector by its row, and the resistance of the same length of conductor, Ω at 20 °C.
    pub connector_ohm: (f64, f64),
    /// Computed heat flow into the surroundings, stretch by stretch.
    pub outside: Vec<said::Said>,
    /// Keys of its values from memory.
    pub memory: Vec<&'static str>,
    /// Message about the origin of its shield's diameter, if a loss follows from it.
    pub shield_says: Option<said::Said>,
    /// Asks for the diameters that nobody read, and that the papers' replace here.
    pub unread: Vec<Ask>,
}

/// Missing facts of one leg, collected.
#[derive(Default)]
struct Open {
    why: Vec<said::Said>,
    questions: Vec<said::Said>,
}

impl Open {
    /// Adds a missing fact without a question; another room asks for it.
    fn lack(&mut self, why: impl Into<said::Said>) {
        self.why.push(why.into());
    }

    fn ask(&mut self, why: impl Into<said::Said>, question: impl Into<said::Said>) {
        self.lack(why);
        self.questions.push(question.into());
    }

    /// Returns a part, or notes that it is left open.
    fn part<T>(&mut self, part: Option<T>, leg: &Leg, kind: PartKind) -> Option<T> {
        if part.is_none() {
            let (leg, part) = (leg.id.clone(), kind);
            self.lack(HeatLacks::LeftOpen { leg, part });
        }
        part
    }

    /// Returns a value, or notes that it is missing, with its question.
    fn need<T>(
        &mut self,
        value: Option<T>,
        why: impl FnOnce() -> HeatLacks,
        question: impl FnOnce() -> HeatAsk,
    ) -> Option<T> {
        if value.is_none() {
            self.ask(why(), question());
        }
        value
    }
}

/// Thermal conductivity and heat capacity of a metal.
///
/// # Source
/// common practice, no source: any table of metals; for aluminium, the grade of conductors.
pub(super) fn metal_stuff(metal: Metal) -> Stuff {
    match metal {
        Metal::Copper => Stuff {
            conductivity_w_per_mk: 385.0,
            capacity_j_per_m3k: 3.45e6,
        },
        Metal::Aluminium => Stuff {
            conductivity_w_per_mk: 230.0,
            capacity_j_per_m3k: 2.5e6,
        },
    }
}

/// Reads a leg.
pub(super) fn read(job: &Job, subject: &LegSubject<'_>) -> Result<LegInput, Missing> {
    let mut open = Open::default();
    let planes = planes(subject, &mut open);
    let cable = cable(job, subject, planes.as_ref(), &mut open);
    let body = body(subject, planes.as_ref(), &mut open);
    let adapter = adapter(subject, planes.as_ref(), &mut open);
    let cover = cover(subject, &mut open);
    let connector = connector(subject, &mut open);
    let surroundings = surroundings(job, subject.leg, &mut open);
    let (Some(planes), Some(cable), Some(body), Some(adapter), Some(cover), Some(connector), true) = (
        planes,
        cable,
        body,
        adapter,
        cover,
        connector,
        open.why.is_empty() && !surroundings.is_empty(),
    ) else {
        return Err(Missing::Unknown(Unknown {
            why: said::Said::all(open.why),
            questions: open.questions,
        }));
    };
    let (part, end, metal, ratio) = connector;
    let has_round = cable.layers.iter().any(|layer| layer.loss.is_some());
    let at20 = cable.conductor.loss.at20_ohm_per_m;
    let mut shape = Shape {
        conductor: cable.conductor,
        connector: Core {
            radius_m: half_m(end.outside_diameter),
            stuff: metal_stuff(metal),
            loss: Loss {
                at20_ohm_per_m: ratio * at20,
                ..cable.conductor.loss
            },
        },
        mouth_m: planes.mouth_m,
        insulation_end_m: planes.insulation_end_m,
        layers: cable.layers,
        adapter,
        body,
        cover,
        seal_end_m: planes.seal_end_m,
        stretches: Vec::new(),
    };
    // The resistance that a reading with direct current would give.
    let equal_ohm = cable.direct_ohm_per_m * part.compared_length_m(end);
    let around = stretches(job, subject.leg, &shape, planes.zero_mm, &surroundings)
        .map_err(Missing::Refused)?;
    shape.stretches = around.stretches;
    fits(subject, &shape)?;
    let shape = shape.shortened();
    Ok(LegInput {
        shape,
        said: Said {
            connector_ohm: (ratio * equal_ohm, equal_ohm),
            outside: around.says,
            memory: around.memory,
            unread: unread(subject.leg, subject.surveys),
            shield_says: has_round.then(|| {
                let leg = subject.leg.id.clone();
                said::Said::of(
                    said::AlongSaid::ShieldOf { leg },
                    measured_said(job, subject.leg),
                )
            }),
        },
    })
}

/// Checks the conditions under which the heat of a joint can be computed.
fn fits(subject: &LegSubject<'_>, shape: &Shape) -> Result<(), Missing> {
    let Some(body) = subject.chosen.body else {
        return Ok(());
    };
    let id = &body.head.id;
    if let Some(along) = shape.hollow_m() {
        let (part, along_mm) = (id.clone(), along * 1e3);
        let why = HeatLacks::Filling { part, along_mm };
        let part = id.clone();
        let ask = HeatAsk::Filling { part, along_mm };
        return Err(Missing::Unknown(Unknown::new(why, [ask])));
    }
    let over = shape.layers.first().map_or(0.0, |layer| layer.outside_m);
    let over = shape
        .adapter
        .map_or(over, |adapter| adapter.outside_m.max(over));
    let ratio = over / shape.body.bore_m;
    if ratio.max(1.0 / ratio) > STRETCH_GREATEST_RATIO {
        let why = HeatCannot::SitsTooFar {
            part: id.clone(),
            stated_mm: 2e3 * shape.body.bore_m,
            leg: subject.leg.id.clone(),
            over_mm: 2e3 * over,
        };
        return Err(Missing::Refused(why.into()));
    }
    if shape.connector.radius_m <= shape.conductor.radius_m {
        let why = HeatCannot::ConnectorInConductor {
            leg: subject.leg.id.clone(),
            connector_mm: 2e3 * shape.connector.radius_m,
            conductor_mm: 2e3 * shape.conductor.radius_m,
        };
        return Err(Missing::Refused(why.into()));
    }
    Ok(())
}

/// Greatest ratio between the diameter under a body and the diameter for which its inside is stated, in either direction.
const STRETCH_GREATEST_RATIO: f64 = 1.5;

fn half_m(diameter: Length) -> f64 {
    diameter.mm() * 0.5e-3
}

/// Places along the leg, from the middle of the joint, m.
struct Planes {
    /// Station of the middle of the joint, mm from the conductor end.
    zero_mm: f64,
    mouth_m: f64,
    insulation_end_m: f64,
    screen_edge_m: f64,
    shield_edge_m: f64,
    jacket_edge_m: f64,
    body_datum_m: f64,
    body_end_m: f64,
    seal_end_m: f64,
    /// Both ends of the adapter; 0 if the leg has none.
    adapter_m: [f64; 2],
}

fn planes(subject: &LegSubject<'_>, open: &mut Open) -> Option<Planes> {
    let station = |plane| subject.cutback.nominal(plane).map(|station| station.mm());
    let either = |planes: [Plane; 2]| planes.into_iter().find_map(station);
    let zero = either([Plane::ConnectorCentre, Plane::ConnectorSeat]);
    let datum = either([Plane::BodyCentre, Plane::BodySeat]);
    let mut missing = Vec::new();
    let mut at = |place: HeatPlace, found: Option<f64>| {
        if found.is_none() {
            missing.push(place);
        }
        let zero = zero.unwrap_or(0.0);
        found.map_or(0.0, |mm| (mm - zero) * 1e-3)
    };
    let mut of = |plane: Plane| at(HeatPlace::Plane(plane), station(plane));
    let adapter_m = match subject.chosen.adapter {
        Some(_) => [of(Plane::AdapterNear), of(Plane::AdapterFar)],
        None => [0.0; 2],
    };
    let planes = Planes {
        zero_mm: zero.unwrap_or(0.0),
        mouth_m: of(Plane::ConnectorMouth),
        insulation_end_m: of(Plane::InsulationEnd),
        screen_edge_m: of(Plane::ScreenEdge),
        shield_edge_m: of(Plane::ShieldEdge),
        jacket_edge_m: of(Plane::JacketEdge),
        body_end_m: of(Plane::BodyEnd),
        seal_end_m: of(Plane::SealEnd),
        body_datum_m: at(HeatPlace::BodyDatum, datum),
        adapter_m,
    };
    at(HeatPlace::ConnectorMiddle, zero);
    if missing.is_empty() {
        return Some(planes);
    }
    open.lack(HeatLacks::Places {
        leg: subject.leg.id.clone(),
        places: missing,
    });
    None
}

/// Cable of a leg.
struct Cable {
    conductor: Core,
    direct_ohm_per_m: f64,
    layers: Vec<Layer>,
}

fn cable(
    job: &Job,
    subject: &LegSubject<'_>,
    planes: Option<&Planes>,
    open: &mut Open,
) -> Option<Cable> {
    let leg = subject.leg;
    let id = || leg.id.clone();
    let ask = |layer| HeatAsk::CableStuff { leg: id(), layer };
    let lack = |layer| HeatLacks::CableStuff { leg: id(), layer };
    let (of_insulation, of_jacket) = (HeatLayer::Insulation, HeatLayer::Jacket);
    let insulation = open.need(
        leg.insulation_stuff,
        || lack(of_insulation),
        || ask(of_insulation),
    );
    let jacket = open.need(leg.jacket_stuff, || lack(of_jacket), || ask(of_jacket));
    let shield_metal = open.need(
        leg.shield_metal,
        || HeatLacks::ShieldMetal { leg: id() },
        || HeatAsk::ShieldMetal { leg: id() },
    );
    let radii = or_ask(radii(subject), leg, open);
    let conductor = radii.and_then(|radii| or_ask(conductor(job, leg, &radii), leg, open));
    let area = or_ask(shield_area_mm2(&leg.cable, None), leg, open);
    let round_ohm_per_m = round_ohm_per_m(job, leg, open);
    let (planes, radii, shield_metal) = (planes?, radii?, shield_metal?);
    let (conductor, direct_ohm_per_m) = conductor?;
    let (insulation, jacket) = (insulation?, jacket?);
    // The shield's metal fills a share of its ring; the jacket's material fills the rest.
    let ring = PI * (radii.shield_m * radii.shield_m - radii.screen_m * radii.screen_m);
    let share = (area?.0 * 1e-6 / ring).min(1.0);
    let metal = metal_stuff(shield_metal);
    let mixed = |metal: f64, rest: f64| share * metal + (1.0 - share) * rest;
    let shield = Stuff {
        conductivity_w_per_mk: mixed(metal.conductivity_w_per_mk, jacket.conductivity_w_per_mk),
        capacity_j_per_m3k: mixed(metal.capacity_j_per_m3k, jacket.capacity_j_per_m3k),
    };
    let layer = |from_m, outside_m, stuff| Layer {
        from_m,
        outside_m,
        stuff,
        loss: None,
    };
    Some(Cable {
        conductor,
        direct_ohm_per_m,
        layers: vec![
            layer(planes.insulation_end_m, radii.insulation_m, insulation),
            layer(planes.screen_edge_m, radii.screen_m, insulation),
            Layer {
                loss: round_ohm_per_m?,
                ..layer(planes.shield_edge_m, radii.shield_m, shield)
            },
            layer(planes.jacket_edge_m, radii.jacket_m, jacket),
        ],
    })
}

/// Greatest loss of the circulating current in the shield over all temperatures of the shield; `Some(None)` if none flows.
fn round_ohm_per_m(job: &Job, leg: &Leg, open: &mut Open) -> Option<Option<Loss>> {
    if let Some(shield_load_a) = leg.shield_load_a {
        return stated_ohm_per_m(job, leg, shield_load_a, open).map(Some);
    }
    let loss = match shield_loss(job, leg) {
        Ok(loss) => loss,
        Err(unknown) => {
            open.why.push(unknown.why);
            open.questions.extend(unknown.questions);
            return None;
        }
    };
    let ShieldLoss::Round(round) = loss else {
        return Some(None);
    };
    let hot = job.duty.conductor_greatest_degc.unwrap_or(SHIELD_HOT_DEGC);
    Some(Some(Loss {
        at20_ohm_per_m: round.greatest_loss_ohm_per_m((SHIELD_COLD_DEGC, hot)),
        alpha_per_k: 0.0,
        constant_w_per_m: 0.0,
    }))
}

/// Loss of the current that the job states for the shield: at its greatest resistance, and in proportion to the leg's load squared.
fn stated_ohm_per_m(job: &Job, leg: &Leg, shield_load_a: f64, open: &mut Open) -> Option<Loss> {
    let along = match along(job, leg) {
        Ok(along) => along,
        Err(unknown) => {
            open.why.push(unknown.why);
            open.questions.extend(unknown.questions);
            return None;
        }
    };
    let load_a = job.load_of_a(leg)?;
    if load_a <= 0.0 {
        // The leg carries no load, so its shield's current stays constant, whatever the load of the others.
        let hot = job.duty.conductor_greatest_degc.unwrap_or(SHIELD_HOT_DEGC);
        return Some(Loss {
            at20_ohm_per_m: 0.0,
            alpha_per_k: 0.0,
            constant_w_per_m: along.at_ohm_per_m(hot).1 * shield_load_a * shield_load_a,
        });
    }
    if shield_load_a > SHIELD_SHARE_MOST * load_a {
        let why = HeatCannot::ShieldCarriesMore {
            leg: leg.id.clone(),
            shield_a: shield_load_a,
            load_a,
        };
        let leg = leg.id.clone();
        open.ask(why, HeatAsk::ShieldLoad { leg });
        return None;
    }
    let share = shield_load_a / load_a;
    Some(Loss {
        at20_ohm_per_m: along.at_ohm_per_m(20.0).1 * share * share,
        alpha_per_k: along.coefficient_20_per_k,
        constant_w_per_m: 0.0,
    })
}

/// Greatest share of a conductor's current that balanced phases or a return current can drive in its shield, with a little room.
const SHIELD_SHARE_MOST: f64 = 1.1;

/// Temperatures between which a shield's greatest loss is looked for, if the job states no limit for its conductor, °C.
const SHIELD_COLD_DEGC: f64 = 0.0;
const SHIELD_HOT_DEGC: f64 = 90.0;

fn or_ask<T>(found: Result<T, said::Said>, leg: &Leg, open: &mut Open) -> Option<T> {
    let subject = said::Subject::leg(&leg.id);
    found
        .map_err(|why| open.lack(said::Said::of(subject, why)))
        .ok()
}

/// Outer radii of the layers, m.
#[derive(Clone, Copy)]
struct Radii {
    conductor_m: f64,
    insulation_m: f64,
    screen_m: f64,
    shield_m: f64,
    jacket_m: f64,
}

/// Layers whose diameters must be read: nothing passes on the papers' diameters of these.
///
/// The conductor is not among them: its area of metal comes from its size in the papers, and so does its diameter, whatever was read.
const READ_FOR_HEAT: [cable::Layer; 3] = [
    cable::Layer::Insulation,
    cable::Layer::InsulationScreen,
    cable::Layer::Jacket,
];

/// Asks for the diameters of these layers that nobody read on the ends of a leg, phase by phase.
pub fn unread<'s>(leg: &Leg, surveys: impl IntoIterator<Item = &'s EndSurvey>) -> Vec<Ask> {
    let ends = (1_u8..).zip(surveys);
    let unread = ends.flat_map(|(phase, survey)| {
        let layers = READ_FOR_HEAT.into_iter();
        let unread = layers.filter(|over| !survey.diameters.contains_key(over));
        unread.map(move |over| fact::READING.of(place_of(leg, phase, over)))
    });
    unread.collect()
}

/// Radii from the readings, or from the papers if nobody read them; the conductor's always comes from the papers.
fn radii(subject: &LegSubject<'_>) -> Result<Radii, said::Said> {
    let papers = &subject.leg.cable;
    let read = |layer| {
        let readings = subject
            .surveys
            .iter()
            .filter_map(|survey| survey.diameters.get(&layer));
        let hull =
            Interval::hull(readings.flat_map(|d| [d.known.read.least(), d.known.read.greatest()]));
        hull.map(|hull| (hull.least().mm() + hull.greatest().mm()) * 0.25e-3)
    };
    let stated = |layer| -> Result<f64, said::Said> {
        let band = papers.diameter_over(layer);
        band.map(|band| half_m(band.nominal))
            .map_err(|why| said::Said::from(&why))
    };
    let over = |layer| read(layer).map_or_else(|| stated(layer), Ok);
    let screen_m = over(cable::Layer::InsulationScreen)?;
    let shield = papers.thickness_of(cable::Layer::MetallicShield);
    let shield = shield.map_err(|why| said::Said::from(&why))?;
    let radii = Radii {
        conductor_m: stated(cable::Layer::Conductor)?,
        insulation_m: over(cable::Layer::Insulation)?,
        screen_m,
        shield_m: screen_m + shield.nominal.m(),
        jacket_m: over(cable::Layer::Jacket)?,
    };
    let grow = [
        radii.conductor_m,
        radii.insulation_m,
        radii.screen_m,
        radii.shield_m,
        radii.jacket_m,
    ];
    if grow.windows(2).any(|pair| pair[1] <= pair[0]) {
        return Err(HeatCannot::LayersNotOutward.into());
    }
    Ok(radii)
}

/// Conductor with its resistance, skin effect and the proximity effect of two touching neighbours included, which is the warm side.
///
/// Returns also its resistance to direct current at 20 °C, Ω/m.
fn conductor(job: &Job, leg: &Leg, radii: &Radii) -> Result<(Core, f64), said::Said> {
    let papers = leg.cable.conductor;
    let direct = papers
        .dc_resistance_20()
        .map_err(|why| said::Said::from(&why))?;
    let coefficient = papers.metal.coefficient_at_per_k(20.0);
    let conductor = Conductor {
        resistance_20_ohm_per_m: direct.resistance_ohm_per_km * 1e-3,
        coefficient_20_per_k: coefficient,
        skin_ratio: 1.0,
        proximity: Some(Proximity {
            strand_ratio: 1.0,
            diameter_m: 2.0 * radii.conductor_m,
            spacing_m: 2.0 * radii.jacket_m,
            neighbours: Neighbours::Two,
        }),
    };
    // Both effects are greatest in cold metal; their share at 20 °C is kept at every temperature.
    let at20 = conductor
        .resistance_ohm_per_m(20.0, job.system.frequency_hz)
        .map_err(|why| said::Said::from(&why))?;
    let metal = metal_stuff(papers.metal);
    let round = PI * radii.conductor_m * radii.conductor_m;
    let share = (papers.size.area_mm2() * 1e-6 / round).min(1.0);
    let core = Core {
        radius_m: radii.conductor_m,
        stuff: Stuff {
            conductivity_w_per_mk: share * metal.conductivity_w_per_mk,
            capacity_j_per_m3k: share * metal.capacity_j_per_m3k,
        },
        loss: Loss {
            at20_ohm_per_m: at20,
            alpha_per_k: coefficient,
            constant_w_per_m: 0.0,
        },
    };
    Ok((core, conductor.resistance_20_ohm_per_m))
}

fn body(subject: &LegSubject<'_>, planes: Option<&Planes>, open: &mut Open) -> Option<Body> {
    let part = open.part(subject.chosen.body, subject.leg, PartKind::Body)?;
    let id = || part.head.id.clone();
    let inside = part
        .inner
        .as_ref()
        .and_then(|inner| Some((inner, inner.on_diameter?)));
    let (inner, on) = open.need(
        inside,
        || HeatLacks::Inside { part: id() },
        || HeatAsk::Inside { part: id() },
    )?;
    let bare: Vec<String> = inner
        .regions
        .iter()
        .filter(|region| region.stuff.is_none())
        .map(|region| region.name.clone())
        .collect();
    if !bare.is_empty() {
        let (part, regions) = (id(), bare.clone());
        let why = HeatLacks::RegionStuff { part, regions };
        let (part, regions) = (id(), bare);
        open.ask(why, HeatAsk::RegionStuff { part, regions });
        return None;
    }
    let layer = inner.grading.map_or(Length::ZERO, |layer| layer.thickness);
    let region = |region: &catalogue::Region| Region {
        corners_m: region
            .corners
            .iter()
            .map(|(along, diameter)| [half_m(*diameter), along.m()])
            .collect(),
        stuff: region.stuff.unwrap_or(super::shape::STILL_AIR),
        gives_way: region.serves == Some(FieldDuty::Insulation),
    };
    let planes = planes?;
    Some(Body {
        datum_m: planes.body_datum_m,
        end_m: planes.body_end_m,
        bore_m: half_m(on) + layer.m(),
        relaxed_m: part
            .rubber
            .as_ref()
            .map(|rubber| half_m(rubber.relaxed_bore)),
        regions: inner.regions.iter().map(region).collect(),
    })
}

/// Adapter at its planned place; `Some(None)` if the leg has none.
fn adapter(
    subject: &LegSubject<'_>,
    planes: Option<&Planes>,
    open: &mut Open,
) -> Option<Option<Adapter>> {
    let Some(part) = subject.chosen.adapter else {
        return Some(None);
    };
    let id = || part.head.id.clone();
    let stuff = open.need(
        part.stuff,
        || HeatLacks::AdapterStuff { part: id() },
        || HeatAsk::AdapterStuff { part: id() },
    )?;
    let [from_m, to_m] = planes?.adapter_m;
    Some(Some(Adapter {
        from_m,
        to_m,
        outside_m: half_m(part.outside.greatest()),
        stuff,
    }))
}

fn cover(subject: &LegSubject<'_>, open: &mut Open) -> Option<Option<catalogue::Cover>> {
    let part = open.part(subject.chosen.seal, subject.leg, PartKind::Seal)?;
    let id = || part.head.id.clone();
    let cover = open.need(
        part.cover,
        || HeatLacks::Cover { part: id() },
        || HeatAsk::Cover { part: id() },
    )?;
    Some(Some(cover))
}

fn connector<'c>(
    subject: &LegSubject<'c>,
    open: &mut Open,
) -> Option<(
    &'c catalogue::Connector,
    &'c catalogue::ConnectorEnd,
    Metal,
    f64,
)> {
    let kind = PartKind::Connector;
    let part = open.part(subject.chosen.connector, subject.leg, kind)?;
    let (id, leg) = (|| part.head.id.clone(), || subject.leg.id.clone());
    let names = part.ends.iter().filter_map(|end| end.name.clone());
    let end = open.need(
        subject.chosen.end,
        || HeatLacks::WhichEnd {
            leg: leg(),
            part: id(),
        },
        || HeatAsk::WhichEnd {
            leg: leg(),
            part: id(),
            ends: names.collect(),
        },
    )?;
    let metal = open.need(
        part.made_of,
        || HeatLacks::MetalOf { part: id() },
        || HeatAsk::MadeOf { part: id() },
    );
    let name = || end.name.clone();
    let ratio = open.need(
        end.resistance_ratio,
        || HeatLacks::ResistanceOf {
            part: id(),
            end: name(),
        },
        || HeatAsk::ConnectorResistance {
            part: id(),
            end: name(),
        },
    );
    Some((part, end, metal?, ratio?))
}

fn surroundings<'j>(job: &'j Job, leg: &Leg, open: &mut Open) -> Vec<&'j Surrounding> {
    let rows = job.surroundings.iter();
    let ours = rows.filter(|row| row.leg.as_ref().is_none_or(|of| *of == leg.id));
    let mut ours: Vec<&Surrounding> = ours.collect();
    ours.sort_by_key(|row| (row.until.is_none(), row.until));
    if job.place.ambient_degc.1.is_none() {
        open.ask(HeatLacks::PlaceWarmest, HeatAsk::PlaceWarmest);
    }
    if ours.is_empty() {
        let id = || leg.id.clone();
        open.ask(
            HeatLacks::Surroundings { leg: id() },
            HeatAsk::Surroundings { leg: id() },
        );
    }
    ours
}
