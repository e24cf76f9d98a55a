//! Make-up: shapes of the steps, hold points, material, tools and knife in `plan.json`, and the functions that fill them.

use super::cut::CutDoc;
use super::words::layer_words;
use crate::cable::{Layer, Words};
use crate::catalogue::PartKind;
use crate::checks::{Inputs, LegInputs};
use crate::material::{Item, ItemKind, Tool};
use crate::plane::Plane;
use crate::programme::{Against, Hold, Line, Programme, Slide, Step, Wanted, said_once};
use crate::said::{HoldSaid, PlanSaid, Read, Said, TruckSaid, WindowSaid, WindowText, Wording};
use crate::slot::Slot;
use crate::stage::Stage;
use jointwright_units::{Length, Toward};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A sentence with its source.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct LineDoc {
    /// Sentence.
    pub say: String,
    /// Source.
    pub source: String,
}

/// A part slid onto an end.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct SlideDoc {
    /// Kind of part.
    pub part: PartKind,
    /// Row of the part.
    pub id: String,
    /// End that it is for, as leg and phase.
    #[serde(rename = "for")]
    pub of: String,
    /// End that it is slid onto, as leg and phase.
    pub onto: String,
}

/// One reading of a hold point.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct WantedDoc {
    /// Quantity that is read.
    pub what: String,
    /// Window as a crew reads it; null if nobody sets one.
    pub window: Option<String>,
    /// Source of the window, or the reason why there is none.
    pub whose: String,
    /// Slots that its blanks fill: for each phase, the slots of its ends; empty if the reading belongs to no end.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub slots: Vec<Slot>,
}

/// One step of the make-up, the same for every phase.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct StepDoc {
    /// Name: legs and stage.
    pub id: String,
    /// Stage.
    pub stage: Stage,
    /// Legs; empty for the whole joint.
    pub legs: Vec<String>,
    /// Work of the step.
    pub title: String,
    /// Sentences of the parts' papers, in order.
    pub lines: Vec<LineDoc>,
    /// Dangers.
    pub cautions: Vec<LineDoc>,
    /// Parts slid on, in order.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub slides: Vec<SlideDoc>,
    /// Readings before work goes on; empty if the step is no hold point.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub hold: Vec<WantedDoc>,
    /// Names of the steps before it.
    pub after: Vec<String>,
}

/// A part or consumable of the joint.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct MaterialDoc {
    /// Kind.
    pub kind: ItemKind,
    /// Row of the item.
    pub id: String,
    /// Name in plain words.
    pub name: String,
    /// Paper and revision.
    pub instructions: String,
    /// Uses: ends as leg and phase, phases, ports.
    pub used_for: Vec<String>,
    /// Number of pieces, for items counted in pieces.
    pub pieces: Option<usize>,
    /// Total amount; null if nobody states it and it cannot be computed.
    pub amount: Option<String>,
    /// Reason why there is no amount.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub why: Option<String>,
    /// Lots on the truck, each with its end.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub lots: Vec<String>,
}

/// Limit of the depth of a knife cut into the insulation screen of a leg.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct KnifeDoc {
    /// A crew's name for the layer.
    pub words: String,
    /// Depth to stay under, as printed, rounded downward, one text for each unit; empty if the layer's least thickness is neither stated nor measured.
    pub most: Vec<String>,
    /// Source of the depth, or the reason why there is none.
    pub whose: String,
}

/// A person named in the job.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct PersonDoc {
    /// Name.
    pub name: String,
    /// Role.
    pub role: String,
    /// Matters that the person decides.
    pub decides: Vec<String>,
}

/// Make-up of the joint: steps, material, tools.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct MakeUpDoc {
    /// Steps; no step stands before a step that it waits for.
    pub steps: Vec<StepDoc>,
    /// Questions about the order that cannot be settled here.
    pub unsettled: Vec<String>,
    /// Parts and consumables.
    pub material: Vec<MaterialDoc>,
    /// Tools, each with its source.
    pub tools: Vec<LineDoc>,
    /// People named in the job.
    pub people: Vec<PersonDoc>,
}

/// Returns the make-up of a joint; its windows of cuts are the texts that the legs' cuts print.
pub(super) fn make_up(
    inputs: &Inputs<'_>,
    legs: &[(String, Vec<CutDoc>)],
    wording: &dyn Wording,
) -> MakeUpDoc {
    let Programme {
        mut steps,
        unsettled,
    } = crate::programme::programme(inputs);
    said_once(&mut steps, wording);
    let scribe = Scribe { wording, legs };
    MakeUpDoc {
        steps: steps.iter().map(|step| scribe.step(step)).collect(),
        unsettled: unsettled
            .into_iter()
            .map(|said| wording.say(&said.into()))
            .collect(),
        material: crate::material::items(inputs)
            .iter()
            .map(|item| material_doc(inputs, item, wording))
            .collect(),
        tools: crate::material::tools(inputs)
            .iter()
            .map(|tool| scribe.tool(tool))
            .collect(),
        people: people(inputs),
    }
}

/// Readings of all hold points, in the order of the make-up, each with its window as a crew reads it.
pub(super) fn holds(
    inputs: &Inputs<'_>,
    legs: &[(String, Vec<CutDoc>)],
    wording: &dyn Wording,
) -> Vec<(Wanted, WantedDoc)> {
    let steps = crate::programme::programme(inputs).steps;
    let scribe = Scribe { wording, legs };
    let holds = steps.into_iter().filter_map(|step| step.hold);
    let readings = holds.flat_map(|hold| hold.readings);
    readings
        .map(|wanted| (wanted.clone(), scribe.wanted(&wanted)))
        .collect()
}

/// People of the job, sorted by name, so that the order of rows changes nothing.
fn people(inputs: &Inputs<'_>) -> Vec<PersonDoc> {
    let mut people: Vec<PersonDoc> = inputs
        .order
        .job
        .people
        .iter()
        .map(|p| PersonDoc {
            name: p.name.clone(),
            role: p.role.clone(),
            decides: p.decides.clone(),
        })
        .collect();
    people.sort_by(|a, b| (&a.name, &a.role).cmp(&(&b.name, &b.role)));
    people
}

/// Writer of the make-up of a joint.
struct Scribe<'a> {
    wording: &'a dyn Wording,
    /// Cuts of each leg, as printed.
    legs: &'a [(String, Vec<CutDoc>)],
}

impl Scribe<'_> {
    fn step(&self, step: &Step) -> StepDoc {
        let readings = step.hold.iter().flat_map(|Hold { readings }| readings);
        StepDoc {
            id: step.id.clone(),
            stage: step.stage,
            legs: step.legs.clone(),
            title: self.wording.say(&step.title.clone().into()),
            lines: step.lines.iter().map(|line| self.line(line)).collect(),
            cautions: step.cautions.iter().map(|line| self.line(line)).collect(),
            slides: step.slides.iter().map(slide_doc).collect(),
            hold: readings.map(|wanted| self.wanted(wanted)).collect(),
            after: step.after.clone(),
        }
    }

    fn line(&self, line: &Line) -> LineDoc {
        LineDoc {
            say: self.wording.say(&line.say),
            source: self.wording.say(&line.source),
        }
    }

    fn tool(&self, tool: &Tool) -> LineDoc {
        LineDoc {
            say: self.wording.say(&tool.what.clone().into()),
            source: self.wording.say(&tool.source),
        }
    }

    fn wanted(&self, wanted: &Wanted) -> WantedDoc {
        let say = |said: &Said| self.wording.say(said);
        let text = |window: WindowText| Some(say(&window.into()));
        let (window, whose) = match &wanted.against {
            Against::Cut(leg, plane) => self.cut_window(leg, *plane),
            Against::Range(interval, source) => {
                (text(WindowText::Diameters((*interval).into())), say(source))
            }
            Against::Along(range, source) => {
                // Both ends are rounded inward, so that a crew never reads more room than there is.
                let least = Read::along(range.least(), Toward::Longer);
                let greatest = Read::along(range.greatest(), Toward::Shorter);
                (text(WindowText::Along { least, greatest }), say(source))
            }
            Against::AtMost(most, source) => {
                let most = Read::along(*most, Toward::Shorter);
                (text(WindowText::AtMost(most)), say(source))
            }
            Against::AtLeast(least, source) => {
                let least = Read::along(*least, Toward::Longer);
                (text(WindowText::AtLeast(least)), say(source))
            }
            Against::Words(found, source) => (Some(say(found)), say(source)),
            Against::NoWindow(why) => (None, say(why)),
        };
        WantedDoc {
            what: say(&wanted.what),
            window,
            whose,
            slots: wanted.slots.clone(),
        }
    }

    /// Window of a cut, in the words that the cut itself prints.
    fn cut_window(&self, leg: &str, plane: Plane) -> (Option<String>, String) {
        let say = |said: HoldSaid| self.wording.say(&said.into());
        let cuts = self.legs.iter().find(|(id, _)| id == leg);
        let cuts = cuts.map(|(_, cuts)| cuts);
        let cut = cuts.into_iter().flatten().find(|c| c.plane == plane);
        let Some(cut) = cut else {
            return (None, say(HoldSaid::NobodySetsWindow));
        };
        let whose = cut.window_of.join("; ");
        match (&cut.printed_window, cut.growth_ladder.is_empty()) {
            (Some(window), _) => {
                let (inch, mm) = (window.inch.clone(), window.mm.clone());
                (
                    Some(self.wording.say(&WindowSaid::Printed { inch, mm }.into())),
                    whose,
                )
            }
            (None, false) => (Some(say(HoldSaid::NotPlacedYet)), say(HoldSaid::OnLadder)),
            (None, true) => {
                let why = cut.why.clone();
                (None, why.unwrap_or_else(|| say(HoldSaid::NobodySetsWindow)))
            }
        }
    }
}

fn slide_doc(slide: &Slide) -> SlideDoc {
    SlideDoc {
        part: slide.part,
        id: slide.id.clone(),
        of: slide.of.clone(),
        onto: slide.onto.clone(),
    }
}

fn material_doc(inputs: &Inputs<'_>, item: &Item, wording: &dyn Wording) -> MaterialDoc {
    let say = |said: &Said| wording.say(said);
    let used_for: Vec<String> = item.used_for.iter().map(say).collect();
    let key = item.kind.name().replace(' ', "_");
    let mut lots: Vec<String> = inputs
        .order
        .job
        .lots
        .iter()
        .filter(|(_, lot)| lot.part == key)
        .map(|(end, lot)| (end.to_string(), &lot.lot))
        .filter(|(end, _)| used_for.contains(end))
        .map(|(end, lot)| format!("{end} {lot}"))
        .collect();
    // Sorted, so that the order of rows in a job changes nothing.
    lots.sort();
    MaterialDoc {
        kind: item.kind,
        id: item.id.clone(),
        name: item.name.clone(),
        instructions: say(&Said::from(&item.instructions)),
        used_for,
        pieces: item.pieces,
        amount: item.amount.as_ref().map(say),
        why: item.why.as_ref().map(say),
        lots,
    }
}

/// Limit of the depth of a knife cut on a leg: below the least thickness that its papers state or its readings show.
pub(super) fn knife(leg: &LegInputs<'_>, words: Words, wording: &dyn Wording) -> KnifeDoc {
    let say = |said: TruckSaid| wording.say(&said.into());
    let papers = leg.leg.cable.insulation_screen.map(|t| t.least());
    let read = leg.ends.iter().filter_map(|end| {
        let over = |layer| end.survey.diameters.get(&layer).map(|d| d.known);
        let (inside, outside) = (over(Layer::Insulation)?, over(Layer::InsulationScreen)?);
        let twice = outside.read.least() - outside.error - inside.read.greatest() - inside.error;
        Some(Length::from_nm(twice.nm().div_euclid(2)))
    });
    let read = read.min();
    let layer = layer_words(Layer::InsulationScreen, wording);
    let bounds = [
        papers.map(|t| (t, TruckSaid::KnifeByPapers)),
        read.map(|t| (t, TruckSaid::KnifeByReadings)),
    ];
    let least = bounds.into_iter().flatten().min_by_key(|(t, _)| *t);
    match least {
        Some((depth, whose)) if depth > Length::ZERO => KnifeDoc {
            words: layer,
            most: depth_texts(depth, words, |said| wording.say(&said.into())),
            whose: say(whose),
        },
        Some((_, whose)) => KnifeDoc {
            words: layer,
            most: Vec::new(),
            whose: say(TruckSaid::KnifeNothing {
                whose: whose.into(),
            }),
        },
        None => KnifeDoc {
            words: layer,
            most: Vec::new(),
            whose: say(TruckSaid::KnifeUnknown),
        },
    }
}

/// Texts of a depth, rounded downward: whole mils and hundredths of a millimetre, or hundredths of a millimetre alone.
fn depth_texts(depth: Length, words: Words, say: impl Fn(PlanSaid) -> String) -> Vec<String> {
    let hundredths = depth.nm().div_euclid(10_000);
    let mm = format!("{}.{:02} mm", hundredths / 100, hundredths % 100);
    match words {
        Words::Us => {
            let mils = depth.nm().div_euclid(25_400);
            vec![say(PlanSaid::Mils { mils }), mm]
        }
        Words::Iec => vec![mm],
    }
}
