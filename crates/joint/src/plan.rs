//! Plan: the document that comes out, `plan.json`.
//!
//! Why its own room: other programs read it, so its words are few, documented and versioned.
//!
//! Invariants: nothing in it is rounded; a cut that cannot be said has no nominal and a reason; limit and source stand on every pass and fail, a reason on every not-judged; invented data mark it across its face.
//!
//! Not here: pages and the terminal (the doors print them from this document).

use crate::cable::{Layer, Words};
use crate::catalogue::{Body, Bus, Connector, Consumable, MayMove, Plug};
use crate::checks::{CHECKS, LegInputs};
use crate::cutback::{Cut, Dimension, Growth, Rung};
use crate::judge::{Judged, Proposal, governing, worst};
use crate::limit::{Datum, Ruling};
use crate::plane::{Holder, Plane};
use crate::survey::{likeness, likeness_words};
use jointwright_units::{Length, Station, Tick, Toward, Window, mark, mm_beside, window_text};
use schemars::JsonSchema;
use serde::Serialize;

/// Version of the document's shape.
pub const FORMAT: &str = "jointwright-plan-1";
/// What stands across everything made with invented parts or for an invented job.
pub const INVENTED: &str = "INVENTED DEMONSTRATION DATA - NOT FOR ANY CABLE";
/// What this version does not compute.
pub const NOT_COMPUTED: &[&str] = &[
    "electric field",
    "interface pressure",
    "load and temperature",
    "fault current in conductor and shield",
    "water past the seals",
];
/// What the plan never says.
pub const NEVER: &str = "This plan says nothing about which cable is dead or identified, and nothing in it says that anything may be cut, touched or energised, or that a joint may be built or kept. That is decided and recorded by the persons named for it. The parts' own instructions prevail.";

/// The plan of one joint.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Plan {
    /// Version of this document's shape.
    pub format: String,
    /// Version of the program that wrote it.
    pub program: String,
    /// Present when anything in it is invented.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub invented: Option<String>,
    /// What it never says.
    pub never: String,
    /// The job.
    pub job: JobDoc,
    /// Worst of the rulings: "pass", "fail" or "not-judged".
    pub outcome: String,
    /// What this version does not compute.
    pub not_computed: Vec<String>,
    /// The passing ruling with the least margin in millimetres: what governs while nothing fails.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub governs: Option<RulingDoc>,
    /// Ends that come out alike, by leg and phase: the same cable, parts, cuts and outcomes.
    pub alike: Vec<Vec<String>>,
    /// Legs.
    pub legs: Vec<LegDoc>,
    /// Ports without a leg.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub blanks: Vec<BlankDoc>,
    /// Rulings.
    pub rulings: Vec<RulingDoc>,
    /// Parts that would fit where one is left open.
    pub proposals: Vec<ProposalDoc>,
}

/// The job that the plan is for.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct JobDoc {
    /// Short name.
    pub id: String,
    /// Title.
    pub title: String,
    /// Day of the work, year-month-day.
    pub date: String,
    /// Kind of joint.
    pub kind: String,
    /// Number of phases.
    pub phases: u8,
    /// Place.
    pub place: String,
    /// Whom to call.
    pub stop_and_call: CallDoc,
}

/// Whom to call.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct CallDoc {
    /// Name.
    pub name: String,
    /// Number.
    pub number: String,
}

/// One leg.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct LegDoc {
    /// Letter or short name.
    pub mark: String,
    /// Where it goes.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub goes_to: Option<String>,
    /// The cable on its papers.
    pub cable: String,
    /// Port of the bus, for separable joints.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub port: Option<i64>,
    /// Whether the body parks on it.
    pub parks: bool,
    /// How its connector is made.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub connector: Option<ConnectorDoc>,
    /// Its parts by kind and name; open parts are left out.
    pub parts: Vec<PartDoc>,
    /// Cuts and marks from the conductor end outward.
    pub cuts: Vec<CutDoc>,
    /// Distances that the windows make vary.
    pub stacks: Vec<StackDoc>,
    /// Ends.
    pub ends: Vec<EndDoc>,
}

/// How a connector is made.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct ConnectorDoc {
    /// How it grips.
    pub means: String,
    /// Die, as the instructions name it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub die: Option<String>,
    /// Presses an end, as the instructions say.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub presses: Option<i64>,
    /// Growth of the mouth that the cuts already hold, least and greatest, mm.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub growth_of_mouth_mm: Option<[f64; 2]>,
    /// Whose trial press.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub growth_source: Option<String>,
}

/// A port without a leg.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct BlankDoc {
    /// Port.
    pub port: i64,
    /// Its insulating plug; null where none is named.
    pub plug: Option<String>,
}

/// A part of a leg.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct PartDoc {
    /// Kind.
    pub kind: String,
    /// Name in the catalogue.
    pub id: String,
    /// What it is.
    pub name: String,
    /// Its instructions and their revision.
    pub instructions: String,
    /// When it may still be moved once placed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub may_move: Option<String>,
}

/// A place to cut or to mark.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct CutDoc {
    /// Plane.
    pub plane: String,
    /// What a crew calls it.
    pub words: String,
    /// "cut" or "mark".
    pub kind: String,
    /// Datum: always the square-cut conductor end, before pressing.
    pub from: String,
    /// Distance from the datum, mm, not rounded; null where it cannot be said.
    pub nominal_mm: Option<f64>,
    /// Least, mm; null where nobody sets a window.
    pub min_mm: Option<f64>,
    /// Greatest, mm; null where nobody sets a window.
    pub max_mm: Option<f64>,
    /// Tick on an inch rule inside the window, where one of 1/64 in or coarser is.
    pub inch: Option<String>,
    /// The same mark in millimetres as printed.
    pub mark_mm: Option<String>,
    /// The window as printed: rounded inward.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub printed_window: Option<PrintedWindowDoc>,
    /// Whose window it is.
    pub window_of: Vec<String>,
    /// Why there is no nominal or no window.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub why: Option<String>,
    /// Where the cut goes for each growth of the sleeve, while that is not measured.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub growth_ladder: Vec<RungDoc>,
}

/// A window as printed.
#[derive(Clone, Debug, Serialize, JsonSchema, PartialEq)]
pub struct PrintedWindowDoc {
    /// Least and greatest on an inch rule, where a tick of 1/64 in or coarser is inside.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub inch: Option<[String; 2]>,
    /// Least and greatest in mm.
    pub mm: [String; 2],
}

/// A rung of the growth ladder.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct RungDoc {
    /// Growth of the whole sleeve, inches.
    pub grew_inch: String,
    /// Growth of the whole sleeve, mm.
    pub grew_mm: f64,
    /// Cut, mm from the datum.
    pub nominal_mm: f64,
    /// Least, mm; null where nobody sets a window.
    pub min_mm: Option<f64>,
    /// Greatest, mm; null where nobody sets a window.
    pub max_mm: Option<f64>,
    /// Tick on an inch rule inside the window.
    pub inch: Option<String>,
    /// The same mark in millimetres as printed.
    pub mark_mm: Option<String>,
    /// The window as printed: rounded inward.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub printed_window: Option<PrintedWindowDoc>,
}

/// A distance that the windows make vary.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct StackDoc {
    /// What it is.
    pub what: String,
    /// Plane it is measured from.
    pub from: String,
    /// Plane it is measured to.
    pub to: String,
    /// As planned, mm.
    pub nominal_mm: f64,
    /// Least over all windows, mm.
    pub min_mm: f64,
    /// Greatest over all windows, mm.
    pub max_mm: f64,
    /// Bounds of the middle 95 percent of a seeded stack, mm: every deviation uniform in its window, half of each crew mark's common to all (one tape).
    #[serde(skip_serializing_if = "Option::is_none")]
    pub middle_95_mm: Option<[f64; 2]>,
    /// Share of each plane in its variance, greatest first: which mark matters most.
    pub shares: Vec<ShareDoc>,
}

/// Share of one plane.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct ShareDoc {
    /// Plane.
    pub plane: String,
    /// What a crew calls the thing that moves it.
    pub words: String,
    /// Share of the variance if all deviations were independent, 0 to 1.
    pub share_ratio: f64,
}

/// One end.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct EndDoc {
    /// Phase.
    pub phase: u8,
    /// Outcome of the comparison with its papers, in a few words.
    pub measures: String,
    /// Whether it measures like its papers, and what that never says.
    pub like_its_papers: String,
    /// What was read.
    pub readings: Vec<ReadingDoc>,
}

/// What was read over one layer.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct ReadingDoc {
    /// Layer.
    pub over: String,
    /// Least diameter read, mm.
    pub min_mm: f64,
    /// Greatest diameter read, mm.
    pub max_mm: f64,
    /// How far off either may be, mm.
    pub error_mm: f64,
    /// Greatest difference at one place, mm; null where only one diameter was read.
    pub ovality_mm: Option<f64>,
}

/// A number, a range or words.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
#[serde(untagged)]
pub enum DatumDoc {
    /// Number.
    Number(f64),
    /// Range.
    Range {
        /// Least.
        min: f64,
        /// Greatest.
        max: f64,
    },
    /// Words.
    Text(String),
}

/// One ruling.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct RulingDoc {
    /// Check.
    pub check: String,
    /// The question it asks.
    pub question: String,
    /// Leg; null for the whole joint.
    pub leg: Option<String>,
    /// End, as leg and phase; absent where it holds for all phases.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub end: Option<String>,
    /// "pass", "fail" or "not-judged".
    pub ruling: String,
    /// What was found.
    pub value: Option<DatumDoc>,
    /// What it must keep to: a number, a range or words.
    pub limit: Option<DatumDoc>,
    /// Unit of value, limit and margin.
    pub unit: Option<String>,
    /// Distance from the limit; negative outside.
    pub margin: Option<f64>,
    /// On whose word the limit stands.
    pub source: Option<String>,
    /// Why it fails or is not judged.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub why: Option<String>,
    /// What to do next.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub hint: Option<String>,
    /// Whether it rests on something that this program computed.
    pub computed: bool,
}

/// For one open part of one leg: what fits, and why the rest does not.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct ProposalDoc {
    /// Leg.
    pub leg: String,
    /// Kind of part.
    pub part: String,
    /// Parts against which no check fails.
    pub fits: Vec<FitDoc>,
    /// Parts that fail, with the first reason.
    pub does_not_fit: Vec<MisfitDoc>,
}

/// A part that fits.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct FitDoc {
    /// Name in the catalogue.
    pub id: String,
    /// Number of questions about it that stay unjudged.
    pub not_judged: usize,
}

/// A part that does not fit.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct MisfitDoc {
    /// Name in the catalogue.
    pub id: String,
    /// First reason.
    pub why: String,
}

/// JSON Schema of the plan.
pub fn schema() -> serde_json::Value {
    // Of what is written: a field that is skipped when empty is not required.
    schemars::generate::SchemaSettings::draft2020_12()
        .for_serialize()
        .into_generator()
        .into_root_schema_for::<Plan>()
        .to_value()
}

/// The plan of a judged joint.
pub fn plan(judged: &Judged<'_>) -> Plan {
    let job = &judged.inputs.order.job;
    let legs: Vec<LegDoc> = judged
        .inputs
        .legs
        .iter()
        .map(|leg| leg_doc(judged, leg))
        .collect();
    Plan {
        format: FORMAT.to_owned(),
        program: format!("jointwright {}", env!("CARGO_PKG_VERSION")),
        invented: is_invented(judged).then(|| INVENTED.to_owned()),
        never: NEVER.to_owned(),
        job: JobDoc {
            id: job.id.clone(),
            title: job.title.clone(),
            date: job.date.to_string(),
            kind: job.kind.name().to_owned(),
            phases: job.phases,
            place: job.place.name.clone(),
            stop_and_call: CallDoc {
                name: job.stop_and_call.0.clone(),
                number: job.stop_and_call.1.clone(),
            },
        },
        outcome: worst(&judged.rulings).name().to_owned(),
        not_computed: NOT_COMPUTED.iter().map(|s| (*s).to_owned()).collect(),
        governs: governing(&judged.rulings).map(ruling_doc),
        alike: alike(judged, &legs),
        legs,
        blanks: job
            .blanks
            .iter()
            .map(|b| BlankDoc {
                port: b.port,
                plug: b.plug.clone(),
            })
            .collect(),
        rulings: judged.rulings.iter().map(ruling_doc).collect(),
        proposals: judged.proposals.iter().map(proposal_doc).collect(),
    }
}

/// Ends by what came out for them, in the order of their first.
fn alike(judged: &Judged<'_>, legs: &[LegDoc]) -> Vec<Vec<String>> {
    let mut groups: Vec<(String, Vec<String>)> = Vec::new();
    for (leg, doc) in judged.inputs.legs.iter().zip(legs) {
        for end in &leg.ends {
            let of_end = judged.rulings.iter().filter(|r| {
                r.subject.leg.as_ref() == Some(&leg.leg.id)
                    && r.subject.phase.is_none_or(|phase| phase == end.phase)
            });
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
            let name = format!("{}{}", leg.leg.id, end.phase);
            match groups.iter_mut().find(|(k, _)| *k == key) {
                Some((_, names)) => names.push(name),
                None => groups.push((key, vec![name])),
            }
        }
    }
    groups.into_iter().map(|(_, names)| names).collect()
}

/// Whether the job or anything it uses or is offered is invented.
fn is_invented(judged: &Judged<'_>) -> bool {
    let order = judged.inputs.order;
    let c = &order.catalogue;
    let proposed = |id: &String| {
        c.body(id).is_some_and(Body::demonstration)
            || c.connector(id).is_some_and(Connector::demonstration)
            || c.adapter(id).is_some_and(|r| r.demonstration())
            || c.shield_part(id).is_some_and(|r| r.demonstration())
            || c.seal(id).is_some_and(|r| r.demonstration())
    };
    let plugs = order
        .job
        .blanks
        .iter()
        .filter_map(|b| b.plug.as_deref())
        .filter_map(|id| c.plug(id));
    let consumables = order
        .job
        .legs
        .iter()
        .flat_map(|l| &l.parts.consumables)
        .filter_map(|id| c.consumable(id));
    order.job.invented
        || judged
            .inputs
            .legs
            .iter()
            .any(|leg| leg.chosen.demonstration())
        || order
            .job
            .bus
            .as_deref()
            .and_then(|id| c.bus(id))
            .is_some_and(Bus::demonstration)
        || plugs.into_iter().any(Plug::demonstration)
        || consumables.into_iter().any(Consumable::demonstration)
        || judged
            .proposals
            .iter()
            .flat_map(|p| {
                p.fits
                    .iter()
                    .map(|f| &f.0)
                    .chain(p.does_not_fit.iter().map(|f| &f.0))
            })
            .any(proposed)
}

fn leg_doc(judged: &Judged<'_>, leg: &LegInputs<'_>) -> LegDoc {
    let words = judged.inputs.order.job.words;
    let cable = &leg.leg.cable;
    let dimensions = [
        (
            Plane::ConnectorMouth,
            Plane::ElectrodeEnd,
            "electrode past connector mouth",
        ),
        (
            Plane::InsulationEnd,
            Plane::ElectrodeEnd,
            "electrode onto insulation",
        ),
        (
            Plane::ControlNear,
            Plane::ScreenEdge,
            "inner end of stress control",
        ),
        (
            Plane::ScreenEdge,
            Plane::ControlFar,
            "outer end of stress control",
        ),
        (Plane::JacketEdge, Plane::SealEnd, "seal onto jacket"),
    ];
    let stacks = dimensions.into_iter().filter_map(|(from, to, what)| {
        let dimension = leg.cutback.dimension(from, to, words).ok()?;
        Some(stack_doc(what, from, to, &dimension, words))
    });
    LegDoc {
        mark: leg.leg.id.clone(),
        goes_to: leg.leg.goes_to.clone(),
        cable: format!(
            "{}, {}, {} shield",
            cable.conductor.phrase(words),
            cable.wall.phrase(),
            cable.shield.kind().name().replace('-', " ")
        ),
        port: leg.leg.port,
        parks: leg.leg.parks,
        connector: leg
            .chosen
            .connector
            .map(|c| connector_doc(c, &leg.cutback.growth)),
        parts: part_docs(leg),
        cuts: leg
            .cutback
            .cuts
            .iter()
            .map(|cut| cut_doc(cut, leg, words))
            .collect(),
        stacks: stacks.collect(),
        ends: leg
            .ends
            .iter()
            .map(|end| end_doc(judged, leg, end))
            .collect(),
    }
}

fn connector_doc(connector: &Connector, growth: &Growth) -> ConnectorDoc {
    let measured = match growth {
        Growth::Measured {
            least,
            greatest,
            source,
        } => Some(([least.mm(), greatest.mm()], source.clone())),
        _ => None,
    };
    ConnectorDoc {
        means: connector.means.name().to_owned(),
        die: connector.die.clone(),
        presses: connector.presses,
        growth_of_mouth_mm: measured.as_ref().map(|(growth, _)| *growth),
        growth_source: measured.map(|(_, source)| source),
    }
}

fn part_docs(leg: &LegInputs<'_>) -> Vec<PartDoc> {
    let chosen = leg.chosen;
    let parts = [
        ("body", chosen.body.map(|p| (&p.head, p.may_move.as_ref()))),
        (
            "adapter",
            chosen.adapter.map(|p| (&p.head, p.may_move.as_ref())),
        ),
        ("connector", chosen.connector.map(|p| (&p.head, None))),
        ("shield part", chosen.shield_part.map(|p| (&p.head, None))),
        ("seal", chosen.seal.map(|p| (&p.head, p.may_move.as_ref()))),
    ];
    let doc = |(kind, part): (&str, Option<(&crate::catalogue::Head, Option<&MayMove>)>)| {
        let (head, may_move) = part?;
        Some(PartDoc {
            kind: kind.to_owned(),
            id: head.id.clone(),
            name: head.name.clone(),
            instructions: format!(
                "{} revision {}",
                head.instructions.paper, head.instructions.revision
            ),
            may_move: may_move.map(|m| match m {
                MayMove::Never => "never".to_owned(),
                MayMove::BeforeHoldoutIsOut => "until the holdout is out".to_owned(),
                MayMove::WithinMinutes(minutes) => format!("within {minutes} minutes of placing"),
            }),
        })
    };
    parts.into_iter().filter_map(doc).collect()
}

fn end_doc(judged: &Judged<'_>, leg: &LegInputs<'_>, end: &crate::checks::EndInputs) -> EndDoc {
    let words = judged.inputs.order.job.words;
    let readings = end
        .survey
        .diameters
        .iter()
        .map(|(layer, d): (&Layer, _)| ReadingDoc {
            over: layer.name(words).to_owned(),
            min_mm: d.known.read.least().mm(),
            max_mm: d.known.read.greatest().mm(),
            error_mm: d.known.error.mm(),
            ovality_mm: d.ovality.map(Length::mm),
        });
    let likeness = likeness(
        crate::job::End {
            leg: leg.leg,
            phase: end.phase,
        },
        &end.survey,
    );
    EndDoc {
        phase: end.phase,
        measures: likeness_words(&likeness).to_owned(),
        like_its_papers: likeness.sentence(words),
        readings: readings.collect(),
    }
}

/// A mark and its window as printed.
struct Printed {
    inch: Option<String>,
    mm: Option<String>,
    window: Option<PrintedWindowDoc>,
}

/// Mark for a place on an inch rule, and its window; no mark where the window holds nothing at all.
fn printed(nominal: Station, window: Option<Window>) -> Printed {
    let mark = mark(nominal, window, Tick::SIXTEENTH, Toward::Nearest);
    let text = window.map(|window| (window, window_text(window, Tick::SIXTEENTH)));
    let (mut mm, mut window) = (mark.as_ref().map(|m| m.mm.clone()), None);
    if let Some((bounds, text)) = text {
        let mut mm_bounds = text.mm;
        if let Some(mark) = &mark {
            let beside = mm_beside(mark, bounds);
            mm = Some(beside.0);
            mm_bounds = beside.1;
        }
        window = Some(PrintedWindowDoc {
            inch: text.inch.map(|(a, b)| [a, b]),
            mm: [mm_bounds.0, mm_bounds.1],
        });
    }
    Printed {
        inch: mark.and_then(|m| m.inch),
        mm,
        window,
    }
}

fn cut_doc(cut: &Cut, leg: &LegInputs<'_>, words: Words) -> CutDoc {
    let shown = cut.nominal.map(|nominal| printed(nominal, cut.window));
    let rung = |rung: &Rung| {
        let shown = printed(rung.nominal, rung.window);
        RungDoc {
            grew_inch: rung.grew.exact_inch().unwrap_or_default(),
            grew_mm: rung.grew.mm(),
            nominal_mm: rung.nominal.mm(),
            min_mm: rung.window.map(|w| w.least().mm()),
            max_mm: rung.window.map(|w| w.greatest().mm()),
            inch: shown.inch,
            mark_mm: shown.mm,
            printed_window: shown.window,
        }
    };
    let (inch, mark_mm, printed_window) =
        shown.map_or((None, None, None), |s| (s.inch, s.mm, s.window));
    let mut window_of = cut.whose.clone();
    if let (Growth::Measured { source, .. }, true) = (
        &leg.cutback.growth,
        cut.plane == Plane::InsulationEnd && !window_of.is_empty(),
    ) {
        window_of.push(source.clone());
    }
    CutDoc {
        plane: cut.plane.name().to_owned(),
        words: cut.plane.words(words),
        kind: if cut.plane.is_cut() { "cut" } else { "mark" }.to_owned(),
        from: "square-cut conductor end, before pressing".to_owned(),
        nominal_mm: cut.nominal.map(Station::mm),
        min_mm: cut.window.map(|w| w.least().mm()),
        max_mm: cut.window.map(|w| w.greatest().mm()),
        inch,
        mark_mm,
        printed_window,
        window_of,
        why: cut.why.clone(),
        growth_ladder: cut.ladder.iter().map(rung).collect(),
    }
}

/// What a crew calls the thing that moves a plane.
fn mover(plane: Plane, words: Words) -> String {
    match plane.holder() {
        Holder::Body => "body position".to_owned(),
        Holder::Connector => "connector growth and seat".to_owned(),
        Holder::Crew => match (plane, words) {
            (Plane::ScreenEdge, Words::Us) => "insulation shield cut".to_owned(),
            (Plane::ScreenEdge, Words::Iec) => "insulation screen cut".to_owned(),
            _ => plane.words(words),
        },
    }
}

fn stack_doc(what: &str, from: Plane, to: Plane, dimension: &Dimension, words: Words) -> StackDoc {
    let spread = dimension.spread();
    let spread = spread.as_ref();
    StackDoc {
        what: what.to_owned(),
        from: from.name().to_owned(),
        to: to.name().to_owned(),
        nominal_mm: dimension.nominal.mm(),
        min_mm: dimension.least.mm(),
        max_mm: dimension.greatest.mm(),
        middle_95_mm: spread.map(|s| [s.middle_95.0.mm(), s.middle_95.1.mm()]),
        shares: spread
            .map(|s| {
                s.share_ratios
                    .iter()
                    .map(|(plane, share)| ShareDoc {
                        plane: plane.name().to_owned(),
                        words: mover(*plane, words),
                        share_ratio: *share,
                    })
                    .collect()
            })
            .unwrap_or_default(),
    }
}

fn datum_doc(datum: &Datum) -> DatumDoc {
    match datum {
        Datum::Number(number) => DatumDoc::Number(*number),
        Datum::Range { min, max } => DatumDoc::Range {
            min: *min,
            max: *max,
        },
        Datum::Text(text) => DatumDoc::Text(text.clone()),
    }
}

fn ruling_doc(ruling: &Ruling) -> RulingDoc {
    RulingDoc {
        check: ruling.check.to_owned(),
        question: CHECKS
            .iter()
            .find(|c| c.slug == ruling.check)
            .map(|c| c.question.to_owned())
            .unwrap_or_default(),
        leg: ruling.subject.leg.clone(),
        end: ruling
            .subject
            .leg
            .as_ref()
            .zip(ruling.subject.phase)
            .map(|(leg, phase)| format!("{leg}{phase}")),
        ruling: ruling.outcome.name().to_owned(),
        value: ruling.value.as_ref().map(datum_doc),
        limit: ruling.limit.as_ref().map(datum_doc),
        unit: ruling.unit.map(str::to_owned),
        margin: ruling.margin,
        source: ruling.source.clone(),
        why: ruling.why.clone(),
        hint: ruling.hint.clone(),
        computed: ruling.reach == crate::limit::Reach::Computed,
    }
}

fn proposal_doc(proposal: &Proposal) -> ProposalDoc {
    ProposalDoc {
        leg: proposal.leg.clone(),
        part: proposal.part.name().to_owned(),
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
                why: why.clone(),
            })
            .collect(),
    }
}
