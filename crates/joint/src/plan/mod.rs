//! Plan: the program's output document, `plan.json`.
//!
//! Why its own room: other programs read the plan, so its words are few, documented and versioned.
//!
//! Invariants: the plan rounds nothing.
//! A cut without a place has no nominal, and a reason.
//! Every pass and fail has a limit and a source; every not-judged has a reason.
//! Invented data are marked across its face.
//!
//! Not here: pages and the terminal (the doors print them from this document).

mod asks;
mod by_name;
mod cable_run;
mod document;
mod field;
mod make_up;
mod missing;
mod narrowed;
mod outside;
mod pressure;
mod read_back;
mod said;
mod shield;
mod state;
mod stated;
mod told_apart;
mod verdict;
mod warm;

#[cfg(test)]
mod names_tests;

pub use asks::{AskDoc, Letter, PlaceDoc, StopDoc};
pub use cable_run::{
    CableRateDoc, CyclicDoc, RunAtDoc, StretchDoc, cable_rate_schema, cable_rating,
};
pub use document::{
    BlankDoc, ByNameDoc, CallDoc, ConnectorDoc, CutDoc, CutKind, DatumDoc, DiameterOf, EndDoc,
    FitDoc, JobDoc, LayerDoc, LegDoc, MisfitDoc, NarrowedDoc, PartDoc, PlacedDoc, Plan, PlaneDoc,
    PrintedWindowDoc, ProposalDoc, ReadingDoc, RulingDoc, RungDoc, SaidDoc, ShareDoc, StackDoc,
};

pub use field::{FieldDoc, GapDoc, GapState, PlugDoc, StressDoc};
pub use make_up::{
    AtEdge, KnifeDoc, LineDoc, MakeUpDoc, MaterialDoc, PersonDoc, SlideDoc, StepDoc, WantedDoc,
};
pub use pressure::{PartPressureDoc, PressureDoc, SitDoc};
pub use read_back::NotAPlan;
pub use said::{Bound, Figure, Figures};
pub use shield::{CarriesDoc, ShieldDoc};
pub use state::StateDoc;
pub use told_apart::{MarkDoc, mark_of};
pub use verdict::fails;
pub use warm::{
    AtDoc, FedDoc, GovernDoc, HeatShareDoc, LastsDoc, LegWarmDoc, LimitOf, LoadDoc, PassedDoc,
    RateDoc, WarmDoc,
};

use crate::cable::{Layer, Words};
use crate::catalogue::{Connector, Head, MayMove, PartKind};
use crate::checks::LegInputs;
use crate::cutback::{Cut, Dimension, Growth, Rung};
use crate::job::{Job, Order};
use crate::judge::{Judged, Proposal, governing, governing_computed, proposals, worst};
use crate::limit::{Ask, Datum, Ruling, Subject};
use crate::plane::{Holder, Plane};
use crate::programme::{EdgeAct, shield_edge};
use crate::said::{
    CutSaid, Distance, MayMoveSaid, Mover, NotComputed, Paper, PapersSaid, PlanSaid,
    PressureAssumes, Said, Whose, Wording,
};
use crate::slot::Slot;
use crate::survey::likeness;
use crate::warm::Rating;
use jointwright_units::{
    Length, Mark, Station, Tick, Toward, Window, WindowText, mark, metric_mark, metric_middle_mark,
    middle_mark, mm_beside, window_text,
};
use std::collections::BTreeSet;

/// Version of the document's shape.
pub const FORMAT: &str = "jointwright-plan-2";
/// Name and version of the program.
pub fn program() -> String {
    format!("jointwright {}", env!("CARGO_PKG_VERSION"))
}

impl Plan {
    /// Returns the same plan with a day and time of making.
    ///
    /// The door gives that text; it is printed and never compared.
    pub fn made_at(mut self, made: &str) -> Plan {
        self.plan_mark = self.plan_mark.made_at(made);
        self
    }
}

impl RateDoc {
    /// Returns the same rating with a day and time of making; see [`Plan::made_at`].
    pub fn made_at(mut self, made: &str) -> RateDoc {
        self.plan_mark = self.plan_mark.made_at(made);
        self
    }
}

/// JSON Schema of the plan.
pub fn schema() -> serde_json::Value {
    // The schema describes written documents: a field that is skipped when empty is not required.
    schemars::generate::SchemaSettings::draft2020_12()
        .for_serialize()
        .into_generator()
        .into_root_schema_for::<Plan>()
        .to_value()
}

/// JSON Schema of a rating.
pub fn rate_schema() -> serde_json::Value {
    schemars::generate::SchemaSettings::draft2020_12()
        .for_serialize()
        .into_generator()
        .into_root_schema_for::<RateDoc>()
        .to_value()
}

/// Returns the plan of a judged joint.
pub fn plan(judged: &Judged<'_>, wording: &dyn Wording) -> Plan {
    let job = &judged.inputs.order.job;
    let legs: Vec<LegDoc> = judged
        .inputs
        .legs
        .iter()
        .map(|leg| leg_doc(judged, leg, wording))
        .collect();
    let ruled = |ruling: &Ruling| ruling_doc(ruling, wording);
    let proposals = proposals(judged);
    let cuts: Vec<(String, Vec<CutDoc>)> = legs
        .iter()
        .map(|leg| (leg.mark.clone(), leg.cuts.clone()))
        .collect();
    Plan {
        format: FORMAT.to_owned(),
        program: program(),
        plan_mark: mark_of(judged, &program(), wording),
        invented: invented(judged.inputs.order, &proposals, wording),
        never: wording.say(&PlanSaid::Never.into()),
        job: JobDoc {
            id: job.id.clone(),
            title: job.title.clone(),
            date: job.date.to_string(),
            kind: job.kind,
            phases: job.phases,
            words: job.words,
            language: job.language,
            place: job.place.name.clone(),
            stop_and_call: CallDoc {
                name: job.stop_and_call.0.clone(),
                number: job.stop_and_call.1.clone(),
            },
        },
        outcome: worst(&judged.rulings),
        stops: asks::stop_docs(judged, wording),
        asks: asks::ask_docs(judged, wording),
        idle_closings: all_said(&judged.idle_closings, wording),
        not_computed: assumed(NotComputed::ALL, wording),
        missing: all_said(&missing::missing(judged), wording),
        governs: governing(&judged.rulings).map(&ruled),
        governs_computed: governing_computed(&judged.rulings).map(&ruled),
        alike: alike(judged, &legs),
        make_up: make_up::make_up(&judged.inputs, &cuts, wording),
        pressure_assumes: pressure_assumes(&legs, wording),
        warm: warm::warm_doc(&judged.inputs, wording),
        legs,
        blanks: job
            .blanks
            .iter()
            .map(|b| BlankDoc {
                port: b.port,
                plug: b.plug.clone(),
            })
            .collect(),
        rulings: judged.rulings.iter().map(ruled).collect(),
        proposals: proposals
            .iter()
            .map(|of| proposal_doc(of, wording))
            .collect(),
    }
}

/// Returns the rating of a joint: loads and temperatures, governing limits, times for which more load may flow.
///
/// `rating` is the solved rating of its temperatures.
pub fn rate(judged: &Judged<'_>, rating: Option<&Rating>, wording: &dyn Wording) -> RateDoc {
    let invented = invented(judged.inputs.order, &proposals(judged), wording);
    warm::rate_doc(judged, rating, invented, wording)
}

/// Assumptions of the pressures of all ends; empty if no pressure was asked for.
fn pressure_assumes(legs: &[LegDoc], wording: &dyn Wording) -> Vec<String> {
    let mut ends = legs.iter().flat_map(|leg| &leg.ends);
    if ends.any(|end| end.pressure.is_some()) {
        assumed(PressureAssumes::ALL, wording)
    } else {
        Vec::new()
    }
}

/// Groups of ends with the same results, ordered by the first end of each group.
fn alike(judged: &Judged<'_>, legs: &[LegDoc]) -> Vec<Vec<String>> {
    let mut groups: Vec<(String, Vec<String>)> = Vec::new();
    for (leg, doc) in judged.inputs.legs.iter().zip(legs) {
        for end in &leg.ends {
            let whom = Subject::end(&end.id);
            let rulings = judged.rulings.iter();
            let of_end = rulings.filter(|r| r.subject.covers(&whom));
            let outcomes: Vec<(&str, &str)> = of_end.map(|r| (r.check, r.outcome.name())).collect();
            let parts: Vec<&str> = doc.parts.iter().map(|p| p.id.as_str()).collect();
            let cuts: Vec<_> = doc
                .cuts
                .iter()
                .map(|c| (&c.plane, c.nominal_mm, c.min_mm, c.max_mm, &c.why))
                .collect();
            let key = format!(
                "{:?} {:?} {:?} {:?} {}",
                doc.cable, parts, cuts, outcomes, doc.parks
            );
            let name = end.id.to_string();
            match groups.iter_mut().find(|(k, _)| *k == key) {
                Some((_, names)) => names.push(name),
                None => groups.push((key, vec![name])),
            }
        }
    }
    groups.into_iter().map(|(_, names)| names).collect()
}

/// Banner across every document with invented parts or for an invented job.
fn invented(order: &Order, proposals: &[Proposal], wording: &dyn Wording) -> Option<String> {
    is_invented(order, proposals).then(|| wording.say(&PlanSaid::Invented.into()))
}

/// Whether the job, a part that it uses or a part that is offered for it is invented.
fn is_invented(order: &Order, proposals: &[Proposal]) -> bool {
    let tried = proposals.iter().flat_map(|of| {
        let fits = of.fits.iter().map(|(id, _)| id);
        fits.chain(of.does_not_fit.iter().map(|(id, _)| id))
    });
    let used: BTreeSet<&String> = order.job.rows().chain(tried).collect();
    let mut invented = order.catalogue.heads().filter(|head| head.demonstration);
    order.job.invented || invented.any(|head| used.contains(&head.id))
}

fn leg_doc(judged: &Judged<'_>, leg: &LegInputs<'_>, wording: &dyn Wording) -> LegDoc {
    let words = judged.inputs.order.job.words;
    let cable = &leg.leg.cable;
    let dimensions = [
        (
            Plane::ConnectorMouth,
            Plane::ElectrodeEnd,
            Distance::ElectrodePastMouth,
        ),
        (
            Plane::InsulationEnd,
            Plane::ElectrodeEnd,
            Distance::ElectrodeOntoInsulation,
        ),
        (
            Plane::ControlNear,
            Plane::ScreenEdge,
            Distance::InnerEndOfControl,
        ),
        (
            Plane::ScreenEdge,
            Plane::ControlFar,
            Distance::OuterEndOfControl,
        ),
        (Plane::JacketEdge, Plane::SealEnd, Distance::SealOntoJacket),
    ];
    let stacks = dimensions.into_iter().filter_map(|(from, to, what)| {
        let dimension = leg.cutback.dimension(from, to).ok()?;
        Some(stack_doc(what, (from, to), &dimension, wording))
    });
    LegDoc {
        mark: leg.leg.id.clone(),
        goes_to: leg.leg.goes_to.clone(),
        cable: wording.say(
            &PlanSaid::Cable {
                conductor: cable.conductor,
                wall: cable.wall.into(),
                shield: cable.shield.kind(),
            }
            .into(),
        ),
        layers: outside::layer_docs(judged, leg, wording),
        port: leg.leg.port,
        parks: leg.leg.parks,
        connector: leg.chosen.connector.map(|c| connector_doc(c, leg, wording)),
        parts: part_docs(leg, wording),
        cuts: leg
            .cutback
            .cuts
            .iter()
            .map(|cut| cut_doc(cut, leg, words, wording))
            .collect(),
        planes: plane_docs(leg, wording),
        knife: make_up::knife(leg, words, wording),
        field: field::field_doc(&judged.inputs, leg, wording),
        shield: shield::shield_doc(&judged.inputs.order.job, leg, wording),
        stacks: stacks.collect(),
        ends: leg
            .ends
            .iter()
            .map(|end| end_doc(&judged.inputs.order.job, leg, end, wording))
            .collect(),
    }
}

/// Planes with a known place, except the datum and the planes that the crew cuts or marks.
fn plane_docs(leg: &LegInputs<'_>, wording: &dyn Wording) -> Vec<PlaneDoc> {
    let is_cut = |plane: &Plane| leg.cutback.cuts.iter().any(|cut| cut.plane == *plane);
    let mut planes: Vec<(Station, Plane)> = Plane::ALL
        .iter()
        .copied()
        .filter(|plane| *plane != Plane::ConductorEnd && !is_cut(plane))
        .filter_map(|plane| Some((leg.cutback.nominal(plane)?, plane)))
        .collect();
    planes.sort();
    planes
        .into_iter()
        .map(|(nominal, plane)| PlaneDoc {
            plane,
            words: plane_words(plane, wording),
            nominal_mm: nominal.mm(),
        })
        .collect()
}

fn connector_doc(
    connector: &Connector,
    leg: &LegInputs<'_>,
    wording: &dyn Wording,
) -> ConnectorDoc {
    let end = leg.chosen.end;
    let other = end.and_then(|end| connector.other_end(end));
    let measured = match &leg.cutback.growth {
        Growth::Measured {
            least,
            greatest,
            source,
        } => Some(([least.mm(), greatest.mm()], wording.say(&source.into()))),
        _ => None,
    };
    ConnectorDoc {
        means: connector.means,
        two_ended: connector.two_ended,
        end: end.and_then(|end| end.name.clone()),
        end_open: leg
            .chosen
            .no_end(leg.leg)
            .map(|why| wording.say(&why.into())),
        other_end_mm: other.map(|other| other.reach.mm()),
        length_mm: connector.length.mm(),
        stop_mm: connector.stop.mm(),
        outside_diameter_mm: end
            .map_or(connector.outside_diameter, |end| end.outside_diameter)
            .mm(),
        die: end.and_then(|end| end.die.clone()),
        presses: end.and_then(|end| end.presses),
        growth_of_mouth_mm: measured.as_ref().map(|(growth, _)| *growth),
        growth_source: measured.map(|(_, source)| source),
    }
}

fn part_docs(leg: &LegInputs<'_>, wording: &dyn Wording) -> Vec<PartDoc> {
    let chosen = leg.chosen;
    let parts = [
        (
            PartKind::Body,
            chosen.body.map(|p| (&p.head, p.may_move.as_ref())),
        ),
        (
            PartKind::Adapter,
            chosen.adapter.map(|p| (&p.head, p.may_move.as_ref())),
        ),
        (
            PartKind::Connector,
            chosen.connector.map(|p| (&p.head, None)),
        ),
        (
            PartKind::ShieldPart,
            chosen.shield_part.map(|p| (&p.head, None)),
        ),
        (
            PartKind::Seal,
            chosen.seal.map(|p| (&p.head, p.may_move.as_ref())),
        ),
    ];
    let side = chosen.body.and_then(|body| body.side.clone());
    let doc = |(kind, part): (PartKind, Option<(&Head, Option<&MayMove>)>)| {
        let (head, may_move) = part?;
        Some(PartDoc {
            kind,
            id: head.id.clone(),
            side: side.clone().filter(|_| kind == PartKind::Body),
            name: head.name.clone(),
            instructions: wording.say(&paper_alone(head).into()),
            doubts: head
                .paper()
                .doubts
                .into_iter()
                .map(|doubt| wording.say(&Said::Doubt(doubt)))
                .collect(),
            may_move: may_move.map(|may| wording.say(&may_move_said(may).into())),
        })
    };
    parts.into_iter().filter_map(doc).collect()
}

/// Paper of a part without the doubts of its row; the plan prints those beside it.
fn paper_alone(head: &Head) -> Paper {
    Paper {
        doubts: Vec::new(),
        ..head.paper()
    }
}

const fn may_move_said(may_move: &MayMove) -> MayMoveSaid {
    match may_move {
        MayMove::Never => MayMoveSaid::Never,
        MayMove::BeforeHoldoutIsOut => MayMoveSaid::UntilHoldoutIsOut,
        MayMove::WithinMinutes(minutes) => MayMoveSaid::WithinMinutes { minutes: *minutes },
    }
}

fn end_doc(
    job: &Job,
    leg: &LegInputs<'_>,
    end: &crate::checks::EndInputs,
    wording: &dyn Wording,
) -> EndDoc {
    let readings = end
        .survey
        .diameters
        .iter()
        .map(|(layer, d): (&Layer, _)| ReadingDoc {
            slot: Slot::diameter(&end.id, *layer),
            over: *layer,
            words: layer_words(*layer, wording),
            min_mm: d.known.read.least().mm(),
            max_mm: d.known.read.greatest().mm(),
            error_mm: d.known.error.mm(),
            ovality_mm: d.ovality.map(Length::mm),
        });
    let likeness = likeness(
        crate::job::End {
            leg: leg.leg,
            phase: end.id.phase,
        },
        &end.survey,
    );
    EndDoc {
        phase: end.id.phase,
        measures: wording.say(&PapersSaid::in_short(&likeness).into()),
        like_its_papers: wording.say(&PapersSaid::of(&likeness).into()),
        readings: readings.collect(),
        filled: job.filled_slots(&end.id).into_iter().collect(),
        pressure: pressure::pressure_doc(end, wording),
    }
}

/// A mark and its window as printed.
struct Printed {
    inch: Option<String>,
    mm: Option<String>,
    at_mm: Option<f64>,
    window: Option<PrintedWindowDoc>,
}

/// Mark for a place and its window, on an inch rule or, in the words of IEC practice, on a millimetre rule.
///
/// The mark stands in the middle of its window, where a crew has most room on either side.
/// A place without a window is marked where it is planned.
fn printed(nominal: Station, window: Option<Window>, words: Words) -> Printed {
    let mark = match (words, window) {
        (Words::Us, Some(window)) => middle_mark(window, Tick::SIXTEENTH),
        (Words::Us, None) => mark(nominal, None, Tick::SIXTEENTH, Toward::Nearest),
        (Words::Iec, Some(window)) => metric_middle_mark(window),
        (Words::Iec, None) => metric_mark(nominal, None),
    };
    let text = window.map(|window| (window, text_around(window, mark.as_ref())));
    let (mut mm, mut window) = (mark.as_ref().map(|m| m.mm.clone()), None);
    if let Some((bounds, text)) = text {
        let mut mm_bounds = text.mm;
        if let Some(mark) = &mark {
            let beside = mm_beside(mark, bounds);
            mm = Some(beside.0);
            mm_bounds = beside.1;
        }
        let inch = text.inch.map(|(a, b)| [a, b]);
        let inch = inch.filter(|_| words == Words::Us);
        let mm = [mm_bounds.0, mm_bounds.1];
        window = Some(PrintedWindowDoc {
            at_mm: bounds_mm(inch.as_ref(), &mm),
            inch,
            mm,
        });
    }
    Printed {
        at_mm: mark.as_ref().map(|m| m.station.mm()),
        inch: mark.and_then(|m| m.inch),
        mm,
        window,
    }
}

/// Window as printed.
///
/// The tick is so fine that the mark stands on neither bound, as far as sixty-fourths of an inch allow.
fn text_around(window: Window, mark: Option<&Mark>) -> WindowText {
    let mut tick = Tick::SIXTEENTH;
    loop {
        let text = window_text(window, tick);
        let at = mark.and_then(|mark| mark.inch.as_ref());
        let is_on_a_bound = match (&text.inch, at) {
            (Some((least, greatest)), Some(at)) => at == least || at == greatest,
            _ => false,
        };
        match tick.finer().filter(|_| is_on_a_bound) {
            Some(finer) => tick = finer,
            None => return text,
        }
    }
}

/// Printed bounds as numbers, read back from the printed text, so that a picture shows the same window as the text.
fn bounds_mm(inch: Option<&[String; 2]>, mm: &[String; 2]) -> Option<[f64; 2]> {
    let read = |text: &String| match inch {
        Some(_) => Length::parse_cut(&format!("{text} in"))
            .ok()
            .map(Length::mm),
        None => text.parse().ok(),
    };
    let [least, greatest] = inch.unwrap_or(mm);
    Some([read(least)?, read(greatest)?])
}

/// Owners of the window of a cut, and the source of the measured growth that it holds.
fn owners(cut: &Cut, leg: &LegInputs<'_>) -> Vec<Whose> {
    let mut owners = cut.whose.clone();
    if let (Growth::Measured { source, .. }, Plane::InsulationEnd) =
        (&leg.cutback.growth, cut.plane)
        && !owners.is_empty()
    {
        owners.push(source.clone());
    }
    owners
}

fn cut_doc(cut: &Cut, leg: &LegInputs<'_>, words: Words, wording: &dyn Wording) -> CutDoc {
    let shown = cut
        .nominal
        .map(|nominal| printed(nominal, cut.window, words));
    let rung = |rung: &Rung| {
        let shown = printed(rung.nominal, rung.window, words);
        RungDoc {
            grew_inch: rung
                .grew
                .exact_inch()
                .filter(|_| words == Words::Us)
                .unwrap_or_default(),
            grew_mm: rung.grew.mm(),
            nominal_mm: rung.nominal.mm(),
            min_mm: rung.window.map(|w| w.least().mm()),
            max_mm: rung.window.map(|w| w.greatest().mm()),
            inch: shown.inch,
            mark_mm: shown.mm,
            mark_at_mm: shown.at_mm,
            printed_window: shown.window,
        }
    };
    let (inch, mark_mm, mark_at_mm, printed_window) = shown.map_or((None, None, None, None), |s| {
        (s.inch, s.mm, s.at_mm, s.window)
    });
    let whose = |of: &Whose| wording.say(&of.into());
    let owners = owners(cut, leg);
    let edge = (cut.plane == Plane::ShieldEdge).then(|| shield_edge(leg));
    CutDoc {
        plane: cut.plane,
        words: plane_words(cut.plane, wording),
        kind: match (cut.plane.is_cut(), &edge) {
            (false, _) => CutKind::Mark,
            (true, Some(edge)) if edge.is_laid_back() => CutKind::LayBack,
            (true, Some(edge)) if edge.act == EdgeAct::Ask => CutKind::Ask,
            (true, _) => CutKind::Cut,
        },
        keeps: edge
            .as_ref()
            .and_then(|edge| Some(wording.say(&edge.keeps()?.into()))),
        keeps_mm: edge.as_ref().and_then(|e| e.kept).map(Length::mm),
        from: wording.say(
            &PlanSaid::SquareCutEnd {
                before_pressing: leg.chosen.connector.is_some_and(Connector::grows),
            }
            .into(),
        ),
        nominal_mm: cut.nominal.map(Station::mm),
        min_mm: cut.window.map(|w| w.least().mm()),
        max_mm: cut.window.map(|w| w.greatest().mm()),
        inch,
        mark_mm,
        mark_at_mm,
        printed_window,
        window_of: owners.iter().map(whose).collect(),
        by_name: by_name::by_name_doc(cut, &owners, leg, wording),
        placed: cut.placed.as_ref().map(|placed| PlacedDoc {
            by: placed.by.iter().map(|of| wording.say(&of.into())).collect(),
            from: plane_words(placed.from, wording),
        }),
        narrowed: narrowed::narrowed_doc(cut, wording),
        why: cut.why.as_ref().map(|why| wording.say(why)),
        growth_ladder: cut.ladder.iter().map(rung).collect(),
    }
}

/// Mover of a plane.
fn mover(plane: Plane) -> Mover {
    match plane.holder() {
        Holder::Body => Mover::Body,
        Holder::Connector => Mover::Connector,
        Holder::Crew if plane == Plane::ScreenEdge => Mover::ScreenCut,
        Holder::Crew => Mover::Plane(plane),
    }
}

fn stack_doc(
    what: Distance,
    (from, to): (Plane, Plane),
    dimension: &Dimension,
    wording: &dyn Wording,
) -> StackDoc {
    let spread = dimension.stack_sample();
    let spread = spread.as_ref();
    StackDoc {
        what: wording.say(&what.into()),
        from,
        to,
        nominal_mm: dimension.nominal.mm(),
        min_mm: dimension.least.mm(),
        max_mm: dimension.greatest.mm(),
        middle_95_mm: spread.map(|s| [s.middle_95.0.mm(), s.middle_95.1.mm()]),
        shares: spread
            .map(|s| {
                s.share_ratios
                    .iter()
                    .map(|(plane, share)| ShareDoc {
                        plane: *plane,
                        words: wording.say(&mover(*plane).into()),
                        share_ratio: *share,
                    })
                    .collect()
            })
            .unwrap_or_default(),
    }
}

/// A crew's name for a layer.
fn layer_words(layer: Layer, wording: &dyn Wording) -> String {
    wording.say(&PlanSaid::Layer { layer }.into())
}

/// A crew's name for a plane.
fn plane_words(plane: Plane, wording: &dyn Wording) -> String {
    wording.say(&CutSaid::Plane { plane }.into())
}

/// Assumptions, each as a sentence.
fn assumed<T: Copy + Into<Said>>(all: &[T], wording: &dyn Wording) -> Vec<String> {
    all.iter().map(|one| wording.say(&(*one).into())).collect()
}

/// Messages, each as its sentence.
fn all_said(all: &[Said], wording: &dyn Wording) -> Vec<String> {
    all.iter().map(|said| wording.say(said)).collect()
}

fn datum_doc(datum: &Datum, wording: &dyn Wording) -> DatumDoc {
    match datum {
        Datum::Number(number) => DatumDoc::Number(*number),
        Datum::Range { min, max } => DatumDoc::Range {
            min: *min,
            max: *max,
        },
        Datum::Said(said) => DatumDoc::Text(wording.say(said)),
    }
}

/// Fact that a ruling waits for: its name, then the things that the question is about.
fn asked(ask: &Ask, wording: &dyn Wording) -> String {
    format!("{} {}", ask.fact.key, asks::of_words(&ask.of, wording))
        .trim_end()
        .to_owned()
}

fn ruling_doc(ruling: &Ruling, wording: &dyn Wording) -> RulingDoc {
    let say = |said: &Option<Said>| said.as_ref().map(|said| wording.say(said));
    let datum = |datum: &Option<Datum>| datum.as_ref().map(|datum| datum_doc(datum, wording));
    RulingDoc {
        check: ruling.check.to_owned(),
        question: wording.say(&Said::Check(ruling.check.to_owned())),
        leg: ruling.subject.leg.clone(),
        end: ruling
            .subject
            .leg
            .as_ref()
            .zip(ruling.subject.phase)
            .map(|(leg, phase)| format!("{leg}{phase}")),
        ruling: ruling.outcome,
        value: datum(&ruling.value),
        limit: datum(&ruling.limit),
        unit: ruling.unit.map(str::to_owned),
        margin: ruling.margin,
        error: ruling.error.filter(|error| *error > 0.0),
        decides: say(&ruling.decides),
        source: say(&ruling.source),
        why: say(&ruling.why),
        hint: say(&ruling.hint),
        asks: ruling.asks.iter().map(|ask| asked(ask, wording)).collect(),
        stops: ruling.stops,
        closed_by: say(&ruling.closed_by),
        closed_until: say(&ruling.closed_until),
        computed: ruling.reach == crate::limit::Reach::Computed,
        said: said_doc(ruling),
    }
}

/// Messages behind the texts of a ruling.
fn said_doc(ruling: &Ruling) -> SaidDoc {
    let words = |datum: &Option<Datum>| match datum {
        Some(Datum::Said(said)) => Some(said.clone()),
        _ => None,
    };
    SaidDoc {
        value: words(&ruling.value),
        limit: words(&ruling.limit),
        decides: ruling.decides.clone(),
        source: ruling.source.clone(),
        why: ruling.why.clone(),
        hint: ruling.hint.clone(),
        closed_by: ruling.closed_by.clone(),
        closed_until: ruling.closed_until.clone(),
    }
}

fn proposal_doc(proposal: &Proposal, wording: &dyn Wording) -> ProposalDoc {
    ProposalDoc {
        leg: proposal.leg.clone(),
        shared_with: proposal.shared_with.clone(),
        part: proposal.part,
        fits: proposal
            .fits
            .iter()
            .map(|(id, not_judged)| FitDoc {
                id: id.clone(),
                not_judged: *not_judged,
            })
            .collect(),
        does_not_fit: proposal
            .does_not_fit
            .iter()
            .map(|(id, why)| MisfitDoc {
                id: id.clone(),
                why: wording.say(why),
            })
            .collect(),
    }
}
