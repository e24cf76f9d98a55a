//! Warm: what the plan says of the temperatures that the load brings, and what a rating of the joint says.

use super::stated::stated_words;
use super::told_apart::{MarkDoc, mark_of};
use super::verdict::fails;
use super::{StateDoc, all_said, program};
use crate::cable::Words;
use crate::checks::Inputs;
use crate::judge::{Judged, worst};
use crate::limit::{Outcome, shown};
use crate::said::{HeatSaid, Language, Wording};
use crate::warm::{
    AtRatio, Done, Emergency, Govern, HOTTEST_DEGC, LONGEST_S, Lasts, LegAt, LegLimit, LegWarm,
    RATIO_MOST, Rating, Share, Warm, share_words,
};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// What every computed temperature assumes.
pub const WARM_ASSUMES: &[&str] = &[
    "one phase, its layers cut at the planned places, balanced currents in three single-core cables that touch",
    "films and temperatures of the surroundings as stated, whatever the load; nothing else that warms them",
    "the connector as its row has it at the worst, the same along its whole length",
    "legs that meet in one temperature, with no loss between them but that of the bus; no heat from the rubber of one leg to that of another; no metal and no loss in the shield over the joint",
    "a stated current of a shield that grows and falls with its leg's load",
    "still air where a body cannot close on what it covers; no dielectric loss",
];

/// Temperatures under load.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct WarmDoc {
    /// Whether it was computed.
    pub state: StateDoc,
    /// Why it is not computed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub why: Option<String>,
    /// Questions to put to makers and to the owner.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub questions: Vec<String>,
    /// What it assumes.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub assumes: Vec<String>,
    /// What surrounds the legs, with its source.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub surroundings: Vec<String>,
    /// Its legs.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub legs: Vec<LegWarmDoc>,
}

/// Temperatures of one leg.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct LegWarmDoc {
    /// Leg.
    pub leg: String,
    /// All of it in sentences.
    pub lines: Vec<String>,
    /// At the job's load all the time; left out where losses outgrow the cooling.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub at_load: Option<AtDoc>,
    /// Where the difference between the conductor in the joint and its cable without a joint comes from, at the load; the shares add up to it.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub hotter_from: Vec<HeatShareDoc>,
    /// The conductor in the joint at the load, with twice the resistance in this leg's connector alone, degrees Celsius.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub with_twice_its_connector_degc: Option<f64>,
    /// The one connector of the joint that would heat this leg's joint most, with twice its resistance, and by how much.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub worst_connector: Option<HeatShareDoc>,
    /// At the end of the job's emergency.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub at_emergency: Option<AtDoc>,
    /// Highest temperature of the conductor inside the body by its paper, all the time, degrees Celsius.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub limit_degc: Option<f64>,
    /// The same in an emergency.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub emergency_limit_degc: Option<f64>,
    /// Load of this leg at which that limit is reached, all legs rising in proportion, A.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub load_at_limit_a: Option<f64>,
    /// The same with the other legs at the job's load, which cannot meet more than `others_meet_a`; left out where none up to that reaches the limit, and of two legs.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub load_at_limit_alone_a: Option<f64>,
    /// All that the other legs, at the job's load, can bring this leg or take from it, A.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub others_meet_a: Option<f64>,
    /// The same as `load_at_limit_a` with one other leg bringing or taking all that this one has more.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub load_at_limit_fed: Option<FedDoc>,
    /// How long the job's emergency may last before the emergency limit is reached, h; left out where it is not reached in 72 h.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub emergency_lasts_h: Option<f64>,
    /// Greatest resistance of the connector by its row, µΩ at 20 °C.
    pub connector_uohm: f64,
    /// Resistance of the same length of conductor, µΩ at 20 °C.
    pub equal_length_uohm: f64,
    /// How many times as fast as at the reference of its row the rubber ages at the load.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ageing_ratio: Option<f64>,
    /// What one such emergency uses up, in hours at that reference.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub emergency_ageing_h: Option<f64>,
}

/// A share of a difference of temperatures.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct HeatShareDoc {
    /// What makes the heat.
    pub from: String,
    /// What it adds, K.
    pub k: f64,
}

/// A load of a leg with the leg that feeds it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct FedDoc {
    /// Load of this leg, A.
    pub load_a: f64,
    /// Leg that brings or takes what this one has more.
    pub by: String,
    /// Load of that leg then, A.
    pub its_load_a: f64,
}

/// Temperatures of one leg at one load, degrees Celsius.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct AtDoc {
    /// Load, A.
    pub load_a: f64,
    /// Hottest metal inside the body.
    pub joint_degc: f64,
    /// Where that is from the joint's middle, mm.
    pub joint_at_mm: f64,
    /// Hottest rubber.
    pub rubber_degc: f64,
    /// Hottest conductor that this leg's cable, going through without a joint, has where the joint is.
    pub cable_there_degc: f64,
    /// Hottest conductor of the cable beyond the body, what the seal covers included.
    pub cable_degc: f64,
}

/// A rating of the joint: loads, temperatures, what governs, how long more may flow.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct RateDoc {
    /// What stands across its face, where anything is invented.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub invented: Option<String>,
    /// Name of the job.
    pub job: String,
    /// Language of its texts, by its code in ISO 639-1.
    pub language: Language,
    /// Practice whose words its texts use: "us" or "iec".
    pub words: Words,
    /// The mark of the plan of the same job, made of the same texts by the same program.
    pub plan_mark: MarkDoc,
    /// Worst of the rulings of the whole joint: "pass", "fail" or "not-judged".
    pub outcome: Outcome,
    /// What fails on the joint, one sentence a check; none of the numbers below makes up for it.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub fails: Vec<String>,
    /// Temperatures at the job's load and emergency.
    pub warm: WarmDoc,
    /// Temperatures at loads in proportion to the job's.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub loads: Vec<LoadDoc>,
    /// Limits and the loads at which they are reached, the least first.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub governs: Vec<GovernDoc>,
    /// How long loads may flow.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub emergency: Vec<LastsDoc>,
}

/// All legs at one load.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct LoadDoc {
    /// Over the job's load.
    pub ratio: f64,
    /// Its legs; empty where losses outgrow the cooling.
    pub legs: Vec<AtDoc>,
    /// Limits that are passed.
    pub passed: Vec<PassedDoc>,
    /// Why there are no temperatures.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub why: Option<String>,
}

/// A limit that is passed.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct PassedDoc {
    /// Leg.
    pub leg: String,
    /// What it is set for.
    pub of: LimitOf,
}

/// A limit, and the load that reaches it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct GovernDoc {
    /// What is limited, to what, on whose word.
    pub what: String,
    /// Leg.
    pub leg: String,
    /// Load over the job's, 0 where it is passed without any; left out where no load is found that reaches it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ratio: Option<f64>,
    /// Load of that leg, A.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub load_a: Option<f64>,
}

/// What a limit of temperature is set for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum LimitOf {
    /// The conductor inside a body.
    Joint,
    /// The cable.
    Cable,
}

impl LimitOf {
    /// Word for it.
    pub const fn word(self) -> &'static str {
        match self {
            LimitOf::Joint => "joint",
            LimitOf::Cable => "cable",
        }
    }
}

/// How long a load may flow from the job's load at rest.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct LastsDoc {
    /// Load over the job's.
    pub ratio: f64,
    /// Loads of the legs, A.
    pub loads_a: Vec<f64>,
    /// Hours until the first limit: of a body by its paper in an emergency, or of a cable by the job's highest temperature; left out where none is reached within 72 h.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lasts_h: Option<f64>,
    /// Leg that comes to it first.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub leg: Option<String>,
    /// What of it does.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub of: Option<LimitOf>,
}

/// What is said of the joint; nothing where nobody asked.
pub(super) fn warm_doc(inputs: &Inputs<'_>, wording: &dyn Wording) -> Option<WarmDoc> {
    let open = |state: StateDoc, why: String, questions: Vec<String>| WarmDoc {
        state,
        why: Some(why),
        questions,
        assumes: Vec::new(),
        surroundings: Vec::new(),
        legs: Vec::new(),
    };
    match inputs.warm.as_ref() {
        Warm::NotAsked => None,
        Warm::Unknown(unknown) => Some(open(
            StateDoc::NotKnown,
            wording.say(&unknown.why),
            all_said(&unknown.questions, wording),
        )),
        Warm::Refused(why) => Some(open(StateDoc::NotComputed, why.clone(), Vec::new())),
        Warm::Done(done) => Some(WarmDoc {
            state: StateDoc::Computed,
            why: None,
            questions: Vec::new(),
            assumes: WARM_ASSUMES
                .iter()
                .map(|s| (*s).to_owned())
                .chain(done.bus_says.clone())
                .chain(done.legs.iter().filter_map(|of| Some(wording.say(of.shield_says.as_ref()?))))
                .chain(done.unconfirmed.iter().map(|key| {
                    format!("`{key}` from memory, not confirmed by the owner: nothing is ruled on these temperatures")
                }))
                .chain((!done.unread.is_empty()).then(|| {
                    let unread = done.unread.iter().map(|ask| ask.of.clone()).collect();
                    wording.say(&HeatSaid::PapersForUnread { unread }.into())
                }))
                .collect(),
            surroundings: surroundings(inputs)
                .into_iter()
                .chain(done.legs.iter().flat_map(|of| of.outside.clone()))
                .collect(),
            legs: (0..done.legs.len())
                .map(|index| leg_doc(inputs, done, index))
                .collect(),
        }),
    }
}

fn surroundings(inputs: &Inputs<'_>) -> Vec<String> {
    let rows = inputs.order.job.surroundings.iter();
    rows.map(stated_words).collect()
}

fn at_doc(at: &LegAt) -> AtDoc {
    AtDoc {
        load_a: at.load_a,
        joint_degc: at.joint_degc,
        joint_at_mm: at.joint_at_m * 1e3,
        rubber_degc: at.rubber_degc,
        cable_there_degc: at.alone_degc,
        cable_degc: at.cable_degc,
    }
}

fn leg_doc(inputs: &Inputs<'_>, done: &Done, index: usize) -> LegWarmDoc {
    let of = &done.legs[index];
    let pick = |legs: &Option<Vec<LegAt>>| legs.as_ref().map(|legs| legs[index]);
    let at_load = pick(&done.at_load);
    let at_emergency = done.at_emergency.as_ref().ok().and_then(pick);
    let load_a = done.model.loads_a[index];
    let load_at_limit_a = of.load_to_limit_ratio.map(|ratio| ratio * load_a);
    LegWarmDoc {
        leg: of.leg.clone(),
        lines: lines(inputs, done, index, at_load),
        at_load: at_load.as_ref().map(at_doc),
        hotter_from: done.shares(of).iter().map(share_doc).collect(),
        with_twice_its_connector_degc: of.contacts.own_degc,
        worst_connector: of.contacts.worst_k.map(|(leg, k)| HeatShareDoc {
            from: format!("the connector of leg {}", done.legs[leg].leg),
            k,
        }),
        at_emergency: at_emergency.as_ref().map(at_doc),
        limit_degc: of.limits_degc.0,
        emergency_limit_degc: of.limits_degc.1,
        load_at_limit_a,
        load_at_limit_alone_a: of.own_load.as_ref().and_then(|own| own.alone_a),
        others_meet_a: of.own_load.as_ref().map(|own| own.most_a),
        load_at_limit_fed: of.own_load.as_ref().and_then(|own| {
            let (by, load_a, its_load_a) = own.fed_a?;
            let by = done.legs[by].leg.clone();
            Some(FedDoc {
                load_a,
                by,
                its_load_a,
            })
        }),
        emergency_lasts_h: match of.emergency_lasts {
            Some(Lasts::Seconds(s)) => Some(s / 3600.0),
            _ => None,
        },
        connector_uohm: of.connector_ohm.0 * 1e6,
        equal_length_uohm: of.connector_ohm.1 * 1e6,
        ageing_ratio: of.aged.as_ref().map(|aged| aged.at_load_ratio),
        emergency_ageing_h: of.aged.as_ref().and_then(|aged| aged.emergency_h),
    }
}

/// What is said of a leg, in sentences.
fn lines(inputs: &Inputs<'_>, done: &Done, index: usize, at_load: Option<LegAt>) -> Vec<String> {
    let of = &done.legs[index];
    let mut said = Vec::new();
    let Some(at) = at_load else {
        said.push(format!(
            "at {} A all the time it warms without end, or past {HOTTEST_DEGC} degC",
            shown(done.model.loads_a[index])
        ));
        return said;
    };
    said.push(against_cable(&at, &done.shares(of)));
    said.push(to_limit(done, of, index));
    said.extend(by_itself(done, of, index));
    if let Some(emergency) = emergency(inputs, done, of, index) {
        said.push(emergency);
    }
    said.push(contact(done, of, &at));
    if let Some(aged) = &of.aged {
        let constants = &aged.constants;
        let spent = aged.emergency_h.map_or(String::new(), |hours| {
            format!(
                "; one such emergency, without the cooling after it, uses up {} h at it",
                shown(hours)
            )
        });
        said.push(format!(
            "ageing of the rubber at the load: {} times as fast as at {} degC{spent} (Arrhenius, {} kJ/mol, {})",
            shown(aged.at_load_ratio),
            constants.reference_degc,
            constants.activation_kj_per_mol,
            constants.from
        ));
    }
    said
}

fn share_doc(share: &Share) -> HeatShareDoc {
    HeatShareDoc {
        from: share.from.clone(),
        k: share.k,
    }
}

fn against_cable(at: &LegAt, shares: &[Share]) -> String {
    let by = at.joint_degc - at.alone_degc;
    let how = if by > 0.0 { "hotter" } else { "cooler" };
    format!(
        "at {} A all the time: conductor in the joint {:.1} degC ({:.0} mm from its middle), {:.1} K {how} than its cable would be going through there without a joint{}; rubber {:.1} degC; the cable beyond the body {:.1} degC at its hottest",
        shown(at.load_a),
        at.joint_degc,
        at.joint_at_m * 1e3,
        by.abs(),
        share_words(by, shares),
        at.rubber_degc,
        at.cable_degc
    )
}

/// What a worse contact would do, one at a time.
fn contact(done: &Done, of: &LegWarm, at: &LegAt) -> String {
    let (connector, equal) = (of.connector_ohm.0 * 1e6, of.connector_ohm.1 * 1e6);
    let own = of
        .contacts
        .own_k
        .map_or("the joint would warm without end".to_owned(), |k| {
            format!(
                "the conductor in this leg's joint would be {k:.1} K hotter at {} A",
                shown(at.load_a)
            )
        });
    let worst = of
        .contacts
        .worst_k
        .filter(|(leg, _)| done.legs[*leg].leg != of.leg)
        .map_or(String::new(), |(leg, k)| {
            format!(
                "; of all connectors of this joint, one at a time, that of leg {} would make it hottest, by {k:.1} K",
                done.legs[leg].leg
            )
        });
    format!(
        "connector: {} microohm at the most by its row at 20 degC, the same length of conductor {}; with twice that resistance in this one connector, all others as they are, {own}{worst}",
        shown(connector),
        shown(equal)
    )
}

/// Loads of a leg of three or more while the others do not rise in proportion.
fn by_itself(done: &Done, of: &LegWarm, index: usize) -> Option<String> {
    let (own, degc) = (of.own_load.as_ref()?, of.limits_degc.0?);
    let load_a = done.model.loads_a[index];
    let most = shown(own.most_a);
    let alone = match own.alone_a {
        Some(alone) => format!(
            "with all other legs at the job's load it comes there at {} A of its own{}",
            shown(alone),
            passed_words(done, &own.passed[0])
        ),
        None if own.most_a <= load_a => format!(
            "it cannot carry more with all other legs at the job's load: they meet {most} A at the most"
        ),
        None => format!(
            "with all other legs at the job's load it does not come there: they meet {most} A at the most"
        ),
    };
    let fed = match own.fed_a {
        Some((by, load_a, its_a)) => format!(
            "; with leg {} alone bringing or taking what it has more, it comes there at {} A, that leg then at {} A{}",
            done.legs[by].leg,
            shown(load_a),
            shown(its_a),
            passed_words(done, &own.passed[1])
        ),
        None => String::new(),
    };
    Some(format!("{degc} degC, this leg by itself: {alone}{fed}"))
}

fn to_limit(done: &Done, of: &LegWarm, index: usize) -> String {
    let load_a = done.model.loads_a[index];
    match (of.limits_degc.0, of.load_to_limit_ratio) {
        (None, _) => format!(
            "{} states no temperature for its conductor all the time",
            of.body
        ),
        (Some(degc), None) => format!(
            "no load up to {} A is found that brings the conductor in {} to {degc} degC",
            shown(RATIO_MOST * load_a),
            of.body
        ),
        (Some(degc), Some(ratio)) => {
            let own = format!(
                "the conductor in {} comes to {degc} degC, the most by its paper, at {} A all the time{}",
                of.body,
                shown(ratio * load_a),
                in_proportion(done, index, ratio)
            );
            let ratios = done
                .legs
                .iter()
                .filter_map(|other| Some((other.load_to_limit_ratio?, other)));
            let first = ratios.min_by(|a, b| a.0.total_cmp(&b.0));
            match first {
                Some((least, first)) if first.leg != of.leg => format!(
                    "{own}; leg {} comes to its own sooner, when this leg carries {} A",
                    first.leg,
                    shown(least * load_a)
                ),
                _ => own,
            }
        }
    }
}

/// Legs that are then above their own limits.
fn passed_words(done: &Done, passed: &[usize]) -> String {
    let legs: Vec<&str> = passed
        .iter()
        .map(|leg| done.legs[*leg].leg.as_str())
        .collect();
    if legs.is_empty() {
        return String::new();
    }
    format!(
        ", with which leg {} is above the limit of its own body",
        legs.join(" and leg ")
    )
}

/// That the other legs rise with it, and to what.
fn in_proportion(done: &Done, index: usize, ratio: f64) -> String {
    let others: Vec<String> = done
        .legs
        .iter()
        .zip(&done.model.loads_a)
        .enumerate()
        .filter(|(other, _)| *other != index)
        .map(|(_, (of, load_a))| format!("leg {} at {} A", of.leg, shown(ratio * load_a)))
        .collect();
    format!(" if all legs rise in proportion ({})", others.join(", "))
}

fn emergency(inputs: &Inputs<'_>, done: &Done, of: &LegWarm, index: usize) -> Option<String> {
    let load_a = done.model.loads_a[index];
    let (currents_a, time_s) = match &done.model.emergency_a_s {
        Ok((currents_a, time_s)) => (currents_a, *time_s),
        Err(why) => {
            let is_stated = inputs.order.job.duty.emergency_a.is_some();
            return is_stated.then(|| format!("emergency: not computed: {why}"));
        }
    };
    let hours = shown(time_s / 3600.0);
    let after = match &done.at_emergency {
        Ok(Some(legs)) => format!(
            "after {hours} h the conductor in the joint has {:.1} degC",
            legs[index].joint_degc
        ),
        _ => format!("within {hours} h it is past {HOTTEST_DEGC} degC"),
    };
    let lasts = match (of.limits_degc.1, of.emergency_lasts) {
        (Some(degc), Some(lasts)) => {
            let paper = format!("; the {degc} degC that its paper gives for an emergency are");
            match lasts {
                Lasts::Seconds(s) if s <= 0.0 => {
                    format!("{paper} passed by the load before it already")
                }
                Lasts::Seconds(s) => format!("{paper} reached after {}", time_words(s)),
                Lasts::Longer | Lasts::ForEver => format!(
                    "{paper} not reached within {} h, if what surrounds it stays as stated",
                    LONGEST_S / 3600.0
                ),
            }
        }
        _ => String::new(),
    };
    Some(format!(
        "emergency of {} A from {} A at rest: {after}{lasts}",
        shown(currents_a[index]),
        shown(load_a)
    ))
}

/// A time as people say it.
fn time_words(s: f64) -> String {
    if s < 3600.0 {
        format!("{} min", shown(s / 60.0))
    } else {
        format!("{} h", shown(s / 3600.0))
    }
}

/// The rating of a joint, as it was solved; `None` where its temperatures are not computed.
pub(super) fn rate_doc(
    judged: &Judged<'_>,
    rating: Option<&Rating>,
    invented: Option<String>,
    wording: &dyn Wording,
) -> RateDoc {
    let inputs = &judged.inputs;
    let warm = warm_doc(inputs, wording).unwrap_or_else(|| WarmDoc {
        state: StateDoc::NotKnown,
        why: Some("a body is left open".to_owned()),
        questions: Vec::new(),
        assumes: Vec::new(),
        surroundings: Vec::new(),
        legs: Vec::new(),
    });
    let mut doc = RateDoc {
        invented,
        language: inputs.order.job.language,
        words: inputs.order.job.words,
        job: inputs.order.job.id.clone(),
        plan_mark: mark_of(judged, &program()),
        outcome: worst(&judged.rulings),
        fails: fails(&judged.rulings, wording),
        warm,
        loads: Vec::new(),
        governs: Vec::new(),
        emergency: Vec::new(),
    };
    if let (Warm::Done(done), Some(rating)) = (inputs.warm.as_ref(), rating) {
        let govern = |of| govern_doc(done, of);
        doc.governs = rating.governs.iter().map(govern).collect();
        let load = |at| load_doc(done, at);
        doc.loads = rating.loads.iter().map(load).collect();
        let lasts = |of| lasts_doc(done, of);
        doc.emergency = rating.emergencies.iter().map(lasts).collect();
    }
    doc
}

fn govern_doc(done: &Done, of: &Govern) -> GovernDoc {
    let (leg, degc) = (of.limit.leg, of.limit.degc);
    let row = &done.legs[leg];
    GovernDoc {
        what: if of.limit.is_cable {
            format!(
                "its cable without a joint: {degc} degC, the highest in service by the job, emergencies included"
            )
        } else {
            format!("conductor inside {}: {degc} degC by its paper", row.body)
        },
        leg: row.leg.clone(),
        ratio: of.ratio,
        load_a: of.ratio.map(|ratio| ratio * done.model.loads_a[leg]),
    }
}

fn load_doc(done: &Done, at: &AtRatio) -> LoadDoc {
    let passed = |limit: &LegLimit| PassedDoc {
        leg: done.legs[limit.leg].leg.clone(),
        of: limit_of(limit),
    };
    LoadDoc {
        ratio: at.ratio,
        legs: at.legs.iter().flatten().map(at_doc).collect(),
        passed: at.passed.iter().map(passed).collect(),
        why: at
            .legs
            .is_none()
            .then(|| format!("warms without end, or past {HOTTEST_DEGC} degC")),
    }
}

fn lasts_doc(done: &Done, of: &Emergency) -> LastsDoc {
    let limit = of.first_s.map(|(limit, _)| limit);
    LastsDoc {
        ratio: of.ratio,
        loads_a: of.loads_a.clone(),
        lasts_h: of.first_s.map(|(_, s)| s / 3600.0),
        leg: limit.map(|limit| done.legs[limit.leg].leg.clone()),
        of: limit.as_ref().map(limit_of),
    }
}

const fn limit_of(limit: &LegLimit) -> LimitOf {
    if limit.is_cable {
        LimitOf::Cable
    } else {
        LimitOf::Joint
    }
}
