//! Warm: temperatures under load in the plan, and the rating of a joint.

use super::program;
use super::state::StateDoc;
use super::stated::stated;
use super::told_apart::{MarkDoc, mark_of};
use super::verdict::fails;
use super::words::all_said;
use crate::cable::Words;
use crate::checks::Inputs;
use crate::judge::{Judged, worst};
use crate::limit::Outcome;
use crate::said::{
    AgainstCable, AloneSaid, EmergencyEnd, EmergencyLimit, FedSaid, HeatSaid, Language, LegLoad,
    LegRating, RatingSaid, Said, ShareFrom, ToLimit, WarmAssumes, Wording, WorseContact,
    WorstConnector,
};
use crate::warm::{
    AtRatio, Emergency, Govern, HOTTEST_DEGC, LONGEST_S, Lasts, LegAt, LegLimit, LegWarm,
    RATIO_MOST, Rating, Share, Warm, WarmJoint, in_tenths,
};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Temperatures under load.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct WarmDoc {
    /// Whether it was computed.
    pub state: StateDoc,
    /// Reason why it is not computed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub why: Option<String>,
    /// Questions to put to makers and to the owner.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub questions: Vec<String>,
    /// Assumptions.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub assumes: Vec<String>,
    /// Surroundings of the legs, with their sources.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub surroundings: Vec<String>,
    /// Legs.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub legs: Vec<LegWarmDoc>,
}

/// Temperatures of one leg.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct LegWarmDoc {
    /// Leg.
    pub leg: String,
    /// The whole in sentences.
    pub lines: Vec<String>,
    /// State at the job's load all the time; left out if losses outgrow the cooling (thermal runaway).
    #[serde(skip_serializing_if = "Option::is_none")]
    pub at_load: Option<AtDoc>,
    /// Shares of the temperature difference between the conductor in the joint and the same cable without a joint, at the load; they add up to the difference.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub hotter_from: Vec<HeatShareDoc>,
    /// Temperature of the conductor in the joint at the load, with twice the resistance in this leg's connector alone, degrees Celsius.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub with_twice_its_connector_degc: Option<f64>,
    /// Connector of the joint that would heat this leg's joint most at twice its resistance, with that rise.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub worst_connector: Option<HeatShareDoc>,
    /// State at the end of the job's emergency.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub at_emergency: Option<AtDoc>,
    /// Highest continuous temperature of the conductor inside the body by its paper, degrees Celsius.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub limit_degc: Option<f64>,
    /// Highest temperature of that conductor in an emergency by the same paper, degrees Celsius.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub emergency_limit_degc: Option<f64>,
    /// Load of this leg at which the continuous limit is reached while all legs rise in proportion, A.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub load_at_limit_a: Option<f64>,
    /// The same with the other legs at the job's load, A; they can meet at most `others_meet_a`.
    /// Left out if no load up to that reaches the limit, or if the joint has two legs.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub load_at_limit_alone_a: Option<f64>,
    /// Greatest current that the other legs, at the job's load, can bring this leg or take from it, A.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub others_meet_a: Option<f64>,
    /// The same as `load_at_limit_a` with one other leg that brings or takes the whole rise of this leg.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub load_at_limit_fed: Option<FedDoc>,
    /// Time until the job's emergency reaches the emergency limit, h; left out if the limit is not reached in 72 h.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub emergency_lasts_h: Option<f64>,
    /// Greatest resistance of the connector by its row, µΩ at 20 °C.
    pub connector_uohm: f64,
    /// Resistance of the same length of conductor, µΩ at 20 °C.
    pub equal_length_uohm: f64,
    /// Ratio of the rubber's ageing rate at the load to its rate at the reference of its row.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ageing_ratio: Option<f64>,
    /// Life that one such emergency uses up, in hours at that reference.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub emergency_ageing_h: Option<f64>,
}

/// Share of a temperature difference.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct HeatShareDoc {
    /// Source of the heat.
    pub from: String,
    /// Contribution, K.
    pub k: f64,
}

/// Load of a leg, with the leg that feeds it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct FedDoc {
    /// Load of this leg, A.
    pub load_a: f64,
    /// Leg that brings or takes the whole rise of this leg.
    pub by: String,
    /// Load of that other leg at the same time, A.
    pub its_load_a: f64,
}

/// Temperatures of one leg at one load, degrees Celsius.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct AtDoc {
    /// Load, A.
    pub load_a: f64,
    /// Temperature of the hottest metal inside the body.
    pub joint_degc: f64,
    /// Place of that metal, mm from the joint's middle.
    pub joint_at_mm: f64,
    /// Temperature of the hottest rubber.
    pub rubber_degc: f64,
    /// Temperature of the hottest conductor at the joint's place if this leg's cable ran through without a joint.
    pub cable_there_degc: f64,
    /// Temperature of the hottest conductor of the cable beyond the body, including the cable under the seal.
    pub cable_degc: f64,
}

/// Rating of the joint: loads, temperatures, governing limits, times for which more load may flow.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct RateDoc {
    /// Banner; present if anything is invented.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub invented: Option<String>,
    /// Name of the job.
    pub job: String,
    /// Language of its texts, by its code in ISO 639-1.
    pub language: Language,
    /// Practice whose words its texts use: "us" or "iec".
    pub words: Words,
    /// Mark of the plan of the same job, made from the same texts by the same program.
    pub plan_mark: MarkDoc,
    /// Worst of the rulings of the whole joint: "pass", "fail" or "not-judged".
    pub outcome: Outcome,
    /// Failures of the joint, one sentence for each check; none of the numbers below makes up for them.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub fails: Vec<String>,
    /// Temperatures at the job's load and in its emergency.
    pub warm: WarmDoc,
    /// Temperatures at loads in proportion to the job's.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub loads: Vec<LoadDoc>,
    /// Limits and the loads at which they are reached, the least first.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub governs: Vec<GovernDoc>,
    /// Times for which loads may flow.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub emergency: Vec<LastsDoc>,
}

impl RateDoc {
    /// Returns the same rating with a day and time of making; see [`super::Plan::made_at`].
    pub fn made_at(mut self, made: &str) -> RateDoc {
        self.plan_mark = self.plan_mark.made_at(made);
        self
    }
}

/// All legs at one load.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct LoadDoc {
    /// Ratio to the job's load.
    pub ratio: f64,
    /// Legs; empty if losses outgrow the cooling (thermal runaway).
    pub legs: Vec<AtDoc>,
    /// Limits that this load passes.
    pub passed: Vec<PassedDoc>,
    /// Reason why there are no temperatures.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub why: Option<String>,
}

/// A limit that is passed.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct PassedDoc {
    /// Leg.
    pub leg: String,
    /// Place that the limit is set for.
    pub of: LimitOf,
}

/// Limit, and the load that reaches it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct GovernDoc {
    /// Limited quantity, its limit and the source of the limit.
    pub what: String,
    /// Leg.
    pub leg: String,
    /// Ratio to the job's load, 0 if the limit is passed without any load; left out if no load is found that reaches it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ratio: Option<f64>,
    /// Load of that leg, A.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub load_a: Option<f64>,
}

/// Place that a limit of temperature is set for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum LimitOf {
    /// Conductor inside a body.
    Joint,
    /// Cable.
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

/// Time for which a load may flow, starting from the job's load at rest.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct LastsDoc {
    /// Ratio to the job's load.
    pub ratio: f64,
    /// Loads of the legs, A.
    pub loads_a: Vec<f64>,
    /// Hours until the first limit is reached; left out if none is reached within 72 h.
    /// The limit is a body's emergency limit by its paper, or the job's highest temperature for a cable.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lasts_h: Option<f64>,
    /// Leg that reaches its limit first.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub leg: Option<String>,
    /// Part of that leg that reaches the limit.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub of: Option<LimitOf>,
}

/// Returns the temperatures of the joint; `None` if nobody asked.
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
        Warm::NotAsked | Warm::BodyOpen => None,
        Warm::Unknown(unknown) => Some(open(
            StateDoc::NotKnown,
            wording.say(&unknown.why),
            all_said(&unknown.questions, wording),
        )),
        Warm::Refused(why) => Some(open(StateDoc::NotComputed, wording.say(why), Vec::new())),
        Warm::Done(done) => Some(WarmDoc {
            state: StateDoc::Computed,
            why: None,
            questions: Vec::new(),
            assumes: all_said(&assumes(done), wording),
            surroundings: all_said(&surroundings(inputs, done), wording),
            legs: (0..done.legs.len())
                .map(|index| leg_doc(inputs, done, index, wording))
                .collect(),
        }),
    }
}

/// Assumptions of temperatures: the general ones, then those of this joint.
fn assumes(done: &WarmJoint) -> Vec<Said> {
    let always = WarmAssumes::ALL.iter().copied().map(Said::from);
    let shields = done.legs.iter().filter_map(|of| of.shield_says.clone());
    let unread: Vec<_> = done.unread.iter().map(|ask| ask.of.clone()).collect();
    let unread = (!unread.is_empty()).then(|| HeatSaid::PapersForUnread { unread }.into());
    always
        .chain(done.bus_says.clone())
        .chain(shields)
        .chain(done.unconfirmed.iter().copied().map(from_memory))
        .chain(unread)
        .collect()
}

/// Message that a value from memory rules nothing.
pub(super) fn from_memory(key: &str) -> Said {
    let key = key.to_owned();
    RatingSaid::FromMemory { key }.into()
}

/// Surroundings of the legs: the stated ones, then the computed values.
fn surroundings(inputs: &Inputs<'_>, done: &WarmJoint) -> Vec<Said> {
    let rows = inputs.order.job.surroundings.iter();
    let computed = done.legs.iter().flat_map(|of| of.outside.clone());
    rows.map(stated).chain(computed).collect()
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

fn leg_doc(
    inputs: &Inputs<'_>,
    done: &WarmJoint,
    index: usize,
    wording: &dyn Wording,
) -> LegWarmDoc {
    let of = &done.legs[index];
    let pick = |legs: &Option<Vec<LegAt>>| legs.as_ref().map(|legs| legs[index]);
    let at_load = pick(&done.at_load);
    let at_emergency = done.at_emergency.as_ref().ok().and_then(pick);
    let load_a = done.model.loads_a[index];
    let load_at_limit_a = of.load_to_limit_ratio.map(|ratio| ratio * load_a);
    LegWarmDoc {
        leg: of.leg.clone(),
        lines: all_said(&lines(inputs, done, index, at_load), wording),
        at_load: at_load.as_ref().map(at_doc),
        hotter_from: done
            .shares(of)
            .iter()
            .map(|share| share_doc(share, wording))
            .collect(),
        with_twice_its_connector_degc: of.contacts.own_degc,
        worst_connector: of.contacts.worst_k.map(|(leg, k)| {
            let leg = done.legs[leg].leg.clone();
            let from = ShareFrom::ConnectorOf { leg };
            share_doc(&Share { from, k }, wording)
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

/// Messages about a leg.
fn lines(inputs: &Inputs<'_>, done: &WarmJoint, index: usize, at_load: Option<LegAt>) -> Vec<Said> {
    let of = &done.legs[index];
    let Some(at) = at_load else {
        let (load_a, past_degc) = (done.model.loads_a[index], HOTTEST_DEGC);
        return vec![LegRating::RunsAwayAt { load_a, past_degc }.into()];
    };
    let always = [
        against_cable(&at, &done.shares(of)),
        to_limit(done, of, index),
    ];
    always
        .into_iter()
        .chain(by_itself(done, of, index))
        .chain(emergency(inputs, done, of, index))
        .chain([contact(done, of, &at)])
        .chain(ageing(of))
        .map(Said::from)
        .collect()
}

fn ageing(of: &LegWarm) -> Option<LegRating> {
    let aged = of.aged.as_ref()?;
    Some(LegRating::Ageing {
        ratio: aged.at_load_ratio,
        reference_degc: aged.constants.reference_degc,
        emergency_h: aged.emergency_h,
        activation_kj_per_mol: aged.constants.activation_kj_per_mol,
        from: aged.constants.from.clone(),
    })
}

fn share_doc(share: &Share, wording: &dyn Wording) -> HeatShareDoc {
    HeatShareDoc {
        from: wording.say(&Said::from(&share.from)),
        k: share.k,
    }
}

fn against_cable(at: &LegAt, shares: &[Share]) -> LegRating {
    let by_k = at.joint_degc - at.alone_degc;
    LegRating::AgainstCable(AgainstCable {
        load_a: at.load_a,
        joint_degc: at.joint_degc,
        joint_at_mm: at.joint_at_m * 1e3,
        by_k,
        shares: in_tenths(by_k, shares),
        rubber_degc: at.rubber_degc,
        cable_degc: at.cable_degc,
    })
}

/// Effect of a worse contact, one contact at a time.
fn contact(done: &WarmJoint, of: &LegWarm, at: &LegAt) -> LegRating {
    let worst = of.contacts.worst_k.map(|(leg, k)| WorstConnector {
        leg: done.legs[leg].leg.clone(),
        k,
    });
    LegRating::WorseContact(WorseContact {
        connector_uohm: of.connector_ohm.0 * 1e6,
        equal_uohm: of.connector_ohm.1 * 1e6,
        load_a: at.load_a,
        own_k: of.contacts.own_k,
        worst: worst.filter(|worst| worst.leg != of.leg),
    })
}

/// Loads of one leg of three or more, while the others do not rise in proportion.
fn by_itself(done: &WarmJoint, of: &LegWarm, index: usize) -> Option<LegRating> {
    let (own, limit_degc) = (of.own_load.as_ref()?, of.limits_degc.0?);
    let names = |legs: &[usize]| legs.iter().map(|leg| done.legs[*leg].leg.clone()).collect();
    let most_a = own.most_a;
    let alone = match own.alone_a {
        Some(load_a) => AloneSaid::At {
            load_a,
            passed: names(&own.passed[0]),
        },
        None if most_a <= done.model.loads_a[index] => AloneSaid::CannotCarryMore { most_a },
        None => AloneSaid::NeverThere { most_a },
    };
    let fed = own.fed_a.map(|(by, load_a, its_load_a)| FedSaid {
        by: done.legs[by].leg.clone(),
        load_a,
        its_load_a,
        passed: names(&own.passed[1]),
    });
    Some(LegRating::ByItself {
        limit_degc,
        alone,
        fed,
    })
}

fn to_limit(done: &WarmJoint, of: &LegWarm, index: usize) -> LegRating {
    let load_a = done.model.loads_a[index];
    let body = of.body.clone();
    LegRating::ToLimit(match (of.limits_degc.0, of.load_to_limit_ratio) {
        (None, _) => ToLimit::NotStated { body },
        (Some(limit_degc), None) => ToLimit::NotFound {
            body,
            limit_degc,
            most_a: RATIO_MOST * load_a,
        },
        (Some(limit_degc), Some(ratio)) => ToLimit::At {
            body,
            limit_degc,
            load_a: ratio * load_a,
            others: in_proportion(done, index, ratio),
            sooner: sooner(done, of, load_a),
        },
    })
}

/// Leg that reaches its own limit before this one, with the load of this leg at that point; `None` if this leg is first.
fn sooner(done: &WarmJoint, of: &LegWarm, load_a: f64) -> Option<LegLoad> {
    let ratios = done
        .legs
        .iter()
        .filter_map(|other| Some((other.load_to_limit_ratio?, other)));
    let (least, first) = ratios.min_by(|a, b| a.0.total_cmp(&b.0))?;
    (first.leg != of.leg).then(|| LegLoad {
        leg: first.leg.clone(),
        load_a: least * load_a,
    })
}

/// Loads of the other legs, which rise in proportion with it.
fn in_proportion(done: &WarmJoint, index: usize, ratio: f64) -> Vec<LegLoad> {
    let legs = done.legs.iter().zip(&done.model.loads_a).enumerate();
    legs.filter(|(other, _)| *other != index)
        .map(|(_, (of, load_a))| LegLoad {
            leg: of.leg.clone(),
            load_a: ratio * load_a,
        })
        .collect()
}

fn emergency(
    inputs: &Inputs<'_>,
    done: &WarmJoint,
    of: &LegWarm,
    index: usize,
) -> Option<LegRating> {
    let (currents_a, time_s) = match &done.model.emergency_a_s {
        Ok((currents_a, time_s)) => (currents_a, *time_s),
        Err(why) => {
            let is_stated = inputs.order.job.duty.emergency_a.is_some();
            let why = why.clone();
            return is_stated.then_some(LegRating::EmergencyNotComputed { why });
        }
    };
    let end = match &done.at_emergency {
        Ok(Some(legs)) => EmergencyEnd::At {
            joint_degc: legs[index].joint_degc,
        },
        _ => EmergencyEnd::Past {
            past_degc: HOTTEST_DEGC,
        },
    };
    let limit = of.limits_degc.1.zip(of.emergency_lasts);
    Some(LegRating::Emergency {
        load_a: currents_a[index],
        from_a: done.model.loads_a[index],
        time_h: time_s / 3600.0,
        end,
        limit: limit.map(|(limit_degc, lasts)| match lasts {
            Lasts::Seconds(s) if s <= 0.0 => EmergencyLimit::PassedBefore { limit_degc },
            Lasts::Seconds(time_s) => EmergencyLimit::After { limit_degc, time_s },
            Lasts::Longer | Lasts::ForEver => EmergencyLimit::NotWithin {
                limit_degc,
                time_h: LONGEST_S / 3600.0,
            },
        }),
    })
}

/// Returns the rating of a joint as solved; it has no loads if its temperatures are not computed.
pub(super) fn rate_doc(
    judged: &Judged<'_>,
    rating: Option<&Rating>,
    invented: Option<String>,
    wording: &dyn Wording,
) -> RateDoc {
    let inputs = &judged.inputs;
    let warm = warm_doc(inputs, wording).unwrap_or_else(|| WarmDoc {
        state: StateDoc::NotKnown,
        why: Some(wording.say(&RatingSaid::BodyLeftOpen.into())),
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
        plan_mark: mark_of(judged, &program(), wording),
        outcome: worst(&judged.rulings),
        fails: fails(&judged.rulings, wording),
        warm,
        loads: Vec::new(),
        governs: Vec::new(),
        emergency: Vec::new(),
    };
    if let (Warm::Done(done), Some(rating)) = (inputs.warm.as_ref(), rating) {
        let govern = |of| govern_doc(done, of, wording);
        doc.governs = rating.governs.iter().map(govern).collect();
        let load = |at| load_doc(done, at, wording);
        doc.loads = rating.loads.iter().map(load).collect();
        let lasts = |of| lasts_doc(done, of);
        doc.emergency = rating.emergencies.iter().map(lasts).collect();
    }
    doc
}

fn govern_doc(done: &WarmJoint, of: &Govern, wording: &dyn Wording) -> GovernDoc {
    let (leg, limit_degc) = (of.limit.leg, of.limit.degc);
    let row = &done.legs[leg];
    let what = if of.limit.is_cable {
        RatingSaid::LimitOfCable { limit_degc }
    } else {
        let body = row.body.clone();
        RatingSaid::LimitOfBody { body, limit_degc }
    };
    GovernDoc {
        what: wording.say(&what.into()),
        leg: row.leg.clone(),
        ratio: of.ratio,
        load_a: of.ratio.map(|ratio| ratio * done.model.loads_a[leg]),
    }
}

fn load_doc(done: &WarmJoint, at: &AtRatio, wording: &dyn Wording) -> LoadDoc {
    let passed = |limit: &LegLimit| PassedDoc {
        leg: done.legs[limit.leg].leg.clone(),
        of: limit_of(limit),
    };
    LoadDoc {
        ratio: at.ratio,
        legs: at.legs.iter().flatten().map(at_doc).collect(),
        passed: at.passed.iter().map(passed).collect(),
        why: at.legs.is_none().then(|| {
            let past_degc = HOTTEST_DEGC;
            wording.say(&RatingSaid::RunsAway { past_degc }.into())
        }),
    }
}

fn lasts_doc(done: &WarmJoint, of: &Emergency) -> LastsDoc {
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
