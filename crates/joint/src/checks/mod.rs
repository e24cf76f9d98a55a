//! Checks: one question each, in one file each; the file's name is the check's name for ever.
//!
//! Why its own room: a check compares, it never solves; deleting its file removes it everywhere.
//!
//! Invariants: a missing input is `not-judged`; every pass and every fail has a limit and its source; checks do not use each other.
//!
//! Not here: what may be concluded from a limit (`limit`), the joint's verdict (`judge`).

use crate::ask::{Missing, asking};
use crate::catalogue::{Fits, Head};
use crate::cutback::Cutback;
use crate::end::EndId;
use crate::fit::{Chosen, diameter_for};
use crate::job::{JointKind, Leg, Order, OwnerLimit};
use crate::limit::{
    AmountQuestion, Bound, Datum, Limit, Outcome, Question, Reach, Ruling, Subject, Word,
    fact_table as fact, word_on,
};
use crate::pressure::EndPressure;
use crate::said::{
    ChoiceSaid, Paper, ParkSaid, PartKind, RangeSaid, Read, Said, Served, ServesFor, StressSaid,
};
use crate::section::Quantity;
use crate::study::{Done, PlugStudy, Seen, Study, Worst};
use crate::survey::EndSurvey;
use crate::warm::Warm;
use jointwright_units::{Interval, Length, Toward, VoltageRms};
use std::sync::Arc;

mod adapter_in_body;
mod adapter_layer;
mod bend_radius;
mod body_class;
mod body_layer;
mod bonding_part_fit;
mod bus_ports;
mod cable_level;
mod common_parts;
mod conductor_fault_heat;
mod conductor_in_connector;
mod connector_fault;
mod connector_in_electrode;
mod consumable_metal;
mod contact_heat;
mod contact_layer;
mod cut_order;
mod cut_window;
mod deflector_stress;
mod electrode_cover;
mod electrode_end_stress;
mod electrode_layer;
mod gap_discharge;
mod insulation_in_body;
mod insulation_ovality;
mod interface_pressure;
mod interface_stress;
mod jacket_surface;
mod joint_emergency_heat;
mod joint_load_heat;
mod kit_age;
mod lead_fault_heat;
mod measures_like_papers;
mod mouth_fit;
mod park_room;
mod part_chosen;
mod range_today;
mod reading_layer;
mod rubber_stretch;
mod screen_edge_in_control;
mod screen_edge_pressure;
mod screen_edge_stress;
mod seal_body_overlap;
mod seal_fit;
mod seal_layer;
mod seal_overlap;
mod seal_span;
mod seal_squeeze;
mod service_temperature;
mod shield_continuity;
mod shield_fault_heat;
mod shield_part_fault;
mod shield_part_range;
mod slack_for_recut;
mod standing_voltage;
mod straight_length;
mod strand_water;
mod wick_path;

/// All checks, in the order of their names.
pub const CHECKS: &[Check] = &[
    adapter_in_body::CHECK,
    adapter_layer::CHECK,
    bend_radius::CHECK,
    body_class::CHECK,
    body_layer::CHECK,
    bonding_part_fit::CHECK,
    bus_ports::CHECK,
    cable_level::CHECK,
    common_parts::CHECK,
    conductor_fault_heat::CHECK,
    conductor_in_connector::CHECK,
    connector_fault::CHECK,
    connector_in_electrode::CHECK,
    consumable_metal::CHECK,
    contact_heat::CHECK,
    contact_layer::CHECK,
    cut_order::CHECK,
    cut_window::CHECK,
    deflector_stress::CHECK,
    electrode_cover::CHECK,
    electrode_end_stress::CHECK,
    electrode_layer::CHECK,
    gap_discharge::CHECK,
    insulation_in_body::CHECK,
    insulation_ovality::CHECK,
    interface_pressure::CHECK,
    interface_stress::CHECK,
    jacket_surface::CHECK,
    joint_emergency_heat::CHECK,
    joint_load_heat::CHECK,
    kit_age::CHECK,
    lead_fault_heat::CHECK,
    measures_like_papers::CHECK,
    mouth_fit::CHECK,
    park_room::CHECK,
    part_chosen::CHECK,
    range_today::CHECK,
    reading_layer::CHECK,
    rubber_stretch::CHECK,
    screen_edge_in_control::CHECK,
    screen_edge_pressure::CHECK,
    screen_edge_stress::CHECK,
    seal_body_overlap::CHECK,
    seal_fit::CHECK,
    seal_layer::CHECK,
    seal_overlap::CHECK,
    seal_span::CHECK,
    seal_squeeze::CHECK,
    service_temperature::CHECK,
    shield_continuity::CHECK,
    shield_fault_heat::CHECK,
    shield_part_fault::CHECK,
    shield_part_range::CHECK,
    slack_for_recut::CHECK,
    standing_voltage::CHECK,
    straight_length::CHECK,
    strand_water::CHECK,
    wick_path::CHECK,
];

/// One question about a joint.
#[derive(Clone, Copy)]
pub struct Check {
    /// Name, for ever.
    pub slug: &'static str,
    /// The answer.
    pub judge: Judge,
}

/// How often a check is asked.
#[derive(Clone, Copy)]
pub enum Judge {
    /// Once.
    Joint(fn(&Inputs<'_>) -> Vec<Ruling>),
    /// Once a leg.
    Leg(fn(&Inputs<'_>, &LegInputs<'_>) -> Vec<Ruling>),
    /// Once an end.
    End(fn(&Inputs<'_>, &LegInputs<'_>, &EndInputs) -> Vec<Ruling>),
}

/// What the checks compare.
#[derive(Clone, Debug)]
pub struct Inputs<'o> {
    /// Job and catalogue.
    pub order: &'o Order,
    /// Legs, in the order of their names.
    pub legs: Vec<LegInputs<'o>>,
    /// How warm the joint gets under load.
    pub warm: Arc<Warm>,
}

/// One leg, its parts and its cutbacks.
#[derive(Clone, Debug)]
pub struct LegInputs<'o> {
    /// The leg.
    pub leg: &'o Leg,
    /// Parts.
    pub chosen: Chosen<'o>,
    /// Cutbacks.
    pub cutback: Arc<Cutback>,
    /// Ends.
    pub ends: Vec<EndInputs>,
    /// Its fields.
    pub study: Arc<Study>,
    /// Those of its tapered plug.
    pub plug: Arc<PlugStudy>,
}

/// One end and what was measured on it.
#[derive(Clone, Debug)]
pub struct EndInputs {
    /// Leg and phase.
    pub id: EndId,
    /// Readings.
    pub survey: Arc<EndSurvey>,
    /// How hard its parts sit.
    pub pressure: Arc<EndPressure>,
}

impl LegInputs<'_> {
    fn subject(&self) -> Subject {
        Subject::leg(&self.leg.id)
    }

    /// The part whose bore sits on the insulation: the adapter where there is one, else the body.
    fn part_on_insulation(&self) -> Option<(&Head, &[Fits])> {
        let adapter = self.chosen.adapter.map(|a| (&a.head, a.fits.as_slice()));
        adapter.or_else(|| self.chosen.body.map(|b| (&b.head, b.fits.as_slice())))
    }

    /// Ruling on a length measured around the leg.
    ///
    /// A length that breaks its limit fails; one that keeps to it is judged only where its error is written down.
    fn on_room(&self, question: Question<'_>) -> Ruling {
        let mut question = question;
        let Some(error) = self.leg.room.error else {
            let breaks = question.limit.bound.margin(question.value.read) < Length::ZERO;
            let (check, subject) = (question.check, question.subject.clone());
            return if breaks {
                question.rule()
            } else {
                let why = ParkSaid::ErrorNotWritten;
                let ask = fact::ROOM_ERROR.of(&self.leg.id);
                Ruling::not_judged(check, subject, why).asking(ask)
            };
        };
        question.value.error = error;
        let mut ruling = question.rule();
        if !ruling.asks.is_empty() {
            ruling.asks = vec![fact::ROOM_ERROR.of(&self.leg.id)];
        }
        ruling
    }

    fn subject_of(&self, end: &EndInputs) -> Subject {
        Subject::end(&end.id)
    }

    /// What may be missing of it.
    fn missing<'a>(&'a self, inputs: &'a Inputs<'_>) -> Missing<'a> {
        Missing {
            job: &inputs.order.job,
            leg: self.leg,
            chosen: &self.chosen,
            cutback: &self.cutback,
            surveys: self.ends.iter().map(|end| end.survey.as_ref()).collect(),
        }
    }
}

impl Inputs<'_> {
    /// All rulings of a check.
    pub fn ask(&self, check: &Check) -> Vec<Ruling> {
        let legs = self.legs.iter();
        match check.judge {
            Judge::Joint(judge) => judge(self),
            Judge::Leg(judge) => legs.flat_map(|leg| judge(self, leg)).collect(),
            Judge::End(judge) => legs
                .flat_map(|leg| leg.ends.iter().flat_map(move |end| judge(self, leg, end)))
                .collect(),
        }
    }

    /// Highest continuous voltage between conductor and earth: Um over the square root of three.
    pub fn voltage(&self) -> VoltageRms {
        VoltageRms::from_kv(self.order.job.system.highest_kv / 3.0_f64.sqrt())
    }

    /// Voltage between conductor and earth while an earth fault is cleared, where earthing is not solid: Um.
    pub fn voltage_in_earth_fault(&self) -> Option<VoltageRms> {
        let system = &self.order.job.system;
        (system.earthing != "solid").then(|| VoltageRms::from_kv(system.highest_kv))
    }

    fn kind(&self) -> JointKind {
        self.order.job.kind
    }

    /// Limits for a check: the instructions' where they state one, and every one of the owner's.
    fn limits(&self, check: &str, stated: Option<Limit>) -> Vec<Limit> {
        let owners = self
            .order
            .job
            .owner_limits
            .iter()
            .filter(|l| l.check == check);
        let owner = |row: &OwnerLimit| {
            let bounds = [
                row.least.map(Bound::AtLeast),
                row.greatest.map(Bound::AtMost),
            ];
            let word = Word::Owner(row.source.clone().into());
            bounds.into_iter().flatten().map(move |bound| Limit {
                bound,
                word: word.clone(),
            })
        };
        stated.into_iter().chain(owners.flat_map(owner)).collect()
    }

    /// Rulings on the ranges of a part: those of its bore, or all others.
    fn ranges(
        &self,
        check: &'static str,
        is_bore: bool,
        part: &RangedPart<'_>,
        leg: &LegInputs<'_>,
        end: &EndInputs,
    ) -> Vec<Ruling> {
        let rows = part.fits.iter().filter(|f| (f.at == "bore") == is_bore);
        rows.map(|fits| {
            let subject = leg.subject_of(end);
            let layer = fits.over;
            let place = || Said::aside(part.id, &fits.at);
            match diameter_for(leg.leg, &end.survey, fits) {
                Err(why) => Ruling::not_judged(check, subject, Said::of(place(), why))
                    .with_hint(RangeSaid::MeasureOverItself { layer })
                    .asking_all(leg.missing(self).diameter(end.id.phase, &end.survey, fits)),
                Ok(value)
                    if is_bore
                        && is_not_read_around(&end.survey, fits)
                        && fits.range.covers(value.read) =>
                {
                    let why = Said::of(place(), RangeSaid::ThinnestNotRead);
                    Ruling::not_judged(check, subject, why)
                        .with_hint(RangeSaid::ReadFourOver { layer })
                        .asking(leg.missing(self).reading(end.id.phase, layer))
                }
                Ok(value) => Question {
                    check,
                    what: RangeSaid::OverFor {
                        subject: subject.clone(),
                        layer,
                        at: fits.at.clone(),
                        part: part.id.to_owned(),
                    }
                    .into(),
                    subject,
                    value,
                    limit: &Limit {
                        bound: Bound::Within(fits.range),
                        word: Word::Instructions(part.source.into()),
                    },
                    reach: Reach::Instructions,
                    hint: misfit(part.id, fits.range, value.read).into(),
                }
                .rule(),
            }
        })
        .collect()
    }
}

/// What a check of a field compares.
struct Stress {
    check: &'static str,
    quantity: Quantity,
}

/// A voltage on the conductor, and the fields at it.
struct At<'a> {
    voltage: VoltageRms,
    /// Nothing in service, else the frequency of the trial.
    trial_hz: Option<f64>,
    here: &'a Worst,
    allowed: &'a Result<Worst, Said>,
}

impl Stress {
    /// What is said of the field.
    fn said(&self, said: impl Into<Said>) -> Said {
        Said::of(name(self.quantity), said)
    }

    fn rule(&self, inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
        let done = match solved(self.check, name(self.quantity), inputs, leg) {
            Ok(done) => done,
            Err(rulings) => return rulings,
        };
        let mut rulings = self.at(inputs, leg, &At::service(done));
        if let Some(trial) = &done.trial {
            let at = At {
                voltage: trial.drive.voltage,
                trial_hz: Some(trial.drive.frequency_hz.unwrap_or(0.0)),
                here: &trial.here,
                allowed: &trial.allowed,
            };
            rulings.extend(self.at(inputs, leg, &at));
        }
        if done.conducts() && self.quantity == Quantity::Interface {
            let why = StressSaid::ImpulseThroughConducting;
            rulings.push(Ruling::not_judged(self.check, leg.subject(), why));
        }
        // What is missing of the worst that the instructions allow, and what did not come close.
        let asks = || {
            let missing = leg.missing(inputs).field();
            if missing.is_empty() {
                vec![word_on(self.check, &leg.subject())]
            } else {
                missing
            }
        };
        asking(rulings, asks)
    }

    fn at(&self, inputs: &Inputs<'_>, leg: &LegInputs<'_>, at: &At<'_>) -> Vec<Ruling> {
        let Some(here) = at.here.seen.get(&self.quantity) else {
            // An owner's limit is never passed over in silence.
            let owners = &inputs.order.job.owner_limits;
            let is_asked = owners.iter().any(|row| row.check == self.check);
            let why = self.said(StressSaid::NoSuchPart);
            let ruling = || Ruling::not_judged(self.check, leg.subject(), why);
            return is_asked.then(ruling).into_iter().collect();
        };
        if !here.value.is_settled {
            let why = self.said(StressSaid::NotSettled);
            return vec![Ruling::not_judged(self.check, leg.subject(), why)];
        }
        let mut rulings = vec![self.against_allowed(leg, at, here)];
        // The owner's greatest field is one in service.
        let owners = inputs.order.job.owner_limits.iter();
        for row in owners.filter(|row| row.check == self.check && at.trial_hz.is_none()) {
            let word = Word::Owner(row.source.clone().into());
            let error = here.value.error_per_m;
            rulings.push(self.question(leg, at, here, error, row.greatest_kv_per_mm, &word));
        }
        rulings
    }

    fn question(
        &self,
        leg: &LegInputs<'_>,
        at: &At<'_>,
        here: &Seen,
        error_per_m: f64,
        greatest: Option<f64>,
        word: &Word,
    ) -> Ruling {
        let scale = kv_per_mm(at.voltage);
        AmountQuestion {
            check: self.check,
            subject: leg.subject(),
            what: StressSaid::AtWorst {
                subject: leg.subject(),
                quantity: self.quantity,
                voltage_kv: at.voltage.kv(),
                trial_hz: at.trial_hz,
            }
            .into(),
            value: here.value.per_volt_per_m * scale,
            error: error_per_m * scale,
            least: None,
            greatest,
            unit: FIELD_UNIT,
            word,
            hint: StressSaid::EngineerDecides.into(),
        }
        .rule()
    }

    fn against_allowed(&self, leg: &LegInputs<'_>, at: &At<'_>, here: &Seen) -> Ruling {
        let subject = leg.subject();
        let allowed = match at.allowed {
            Err(why) => {
                let why = self.said(why);
                return Ruling::not_judged(self.check, subject, why);
            }
            Ok(worst) => worst.seen.get(&self.quantity),
        };
        let (Some(allowed), Some(body), Study::Done(done)) =
            (allowed, leg.chosen.body, leg.study.as_ref())
        else {
            return Ruling::not_judged(self.check, subject, name(self.quantity));
        };
        if !allowed.value.is_settled {
            let why = self.said(StressSaid::AllowedNotSettled);
            return Ruling::not_judged(self.check, subject, why);
        }
        // What lies wholly inside what the instructions allow is one of the things they allow, whatever the error.
        let most = allowed.value.per_volt_per_m;
        let own = here.value.error_per_m + allowed.value.error_per_m;
        let error = if done.is_within() { 0.0 } else { own };
        let word = Word::WorstAllowed(Said::listed([
            body.head.source().into(),
            StressSaid::AtOwnWall.into(),
        ]));
        let most = most * kv_per_mm(at.voltage);
        let ruling = self.question(leg, at, here, error, Some(most), &word);
        let is_one_of_those = done.is_within() && ruling.outcome == Outcome::Pass;
        Ruling {
            error: Some(own * kv_per_mm(at.voltage)),
            decides: is_one_of_those.then(|| StressSaid::IsOneOfThose.into()),
            ..ruling
        }
    }
}

impl<'a> At<'a> {
    fn service(done: &'a Done) -> At<'a> {
        At {
            voltage: done.input.service.voltage,
            trial_hz: None,
            here: &done.here,
            allowed: &done.allowed,
        }
    }
}

/// The name of a field.
fn name(quantity: Quantity) -> Said {
    StressSaid::Quantity { quantity }.into()
}

/// Unit of fields, rms.
const FIELD_UNIT: &str = "kV/mm";

/// kV/mm of a field of one per metre and volt.
fn kv_per_mm(voltage: VoltageRms) -> f64 {
    voltage.v() * 1e-6
}

/// The solved study of a leg, or the rulings for want of one; none where nobody asked for it, or the body is left open.
fn solved<'l>(
    check: &'static str,
    what: impl Into<Said>,
    inputs: &Inputs<'_>,
    leg: &'l LegInputs<'_>,
) -> Result<&'l Done, Vec<Ruling>> {
    let not_judged = |why: Said| {
        let missing = leg.missing(inputs).field();
        let is_known = missing.is_empty();
        let word = is_known.then(|| word_on(check, &leg.subject()));
        let ruling = Ruling::not_judged(check, leg.subject(), why);
        vec![ruling.asking_all(missing).asking_all(word)]
    };
    match leg.study.as_ref() {
        Study::Done(done) => Ok(done),
        Study::NotAsked => Err(Vec::new()),
        Study::Refused(why) => Err(not_judged(Said::of(what, why))),
        Study::Unknown(unknown) => {
            let mut rulings = not_judged(Said::of(what, &unknown.why));
            if let Some(ask) = unknown.ask() {
                rulings[0].hint = Some(ask);
            }
            Err(rulings)
        }
    }
}

/// Whether the readings over the layer of a range may have missed its thinnest place.
fn is_not_read_around(survey: &EndSurvey, fits: &Fits) -> bool {
    let diameter = survey.diameters.get(&fits.over);
    diameter.is_some_and(|d| !d.is_read_around)
}

/// Parts of rubber, as lots and rows name them.
const ADAPTER: PartKind = PartKind::Adapter;
const BODY: PartKind = PartKind::Body;
const SEAL: PartKind = PartKind::Seal;

/// The same rulings on a part of rubber; those that are not judged ask for what is missing of it, with its temperatures where they count.
fn asking_of_rubber(
    inputs: &Inputs<'_>,
    leg: &LegInputs<'_>,
    end: &EndInputs,
    (kind, heat): (PartKind, bool),
    rulings: Vec<Ruling>,
) -> Vec<Ruling> {
    let missing = leg.missing(inputs);
    let asks = |check: &str| {
        let mut asks = missing.pressure(kind, end.id.phase, &end.survey);
        if heat {
            asks.extend(missing.warmth(kind, end.id.phase, &end.survey));
        }
        if asks.is_empty() {
            asks.push(word_on(check, &leg.subject_of(end)));
        }
        asks
    };
    let Some(check) = rulings.first().map(|ruling| ruling.check) else {
        return rulings;
    };
    asking(rulings, || asks(check))
}

/// The same rulings on temperatures under load; those that are not judged ask for what is missing of the joint.
fn asking_of_heat(inputs: &Inputs<'_>, leg: &LegInputs<'_>, rulings: Vec<Ruling>) -> Vec<Ruling> {
    let Some(check) = rulings.first().map(|ruling| ruling.check) else {
        return rulings;
    };
    let asks = || {
        let legs: Vec<Missing<'_>> = inputs.legs.iter().map(|leg| leg.missing(inputs)).collect();
        let bus = inputs.order.job.bus.as_deref();
        let bus = bus.and_then(|id| inputs.order.catalogue.bus(id));
        let asks = crate::ask::heat(&legs, bus);
        if asks.is_empty() {
            vec![word_on(check, &leg.subject())]
        } else {
            asks
        }
    };
    asking(rulings, asks)
}

/// What a crew does about a part that is too large or too small for a leg.
fn misfit(id: &str, range: Interval, read: Interval) -> RangeSaid {
    let part = id.to_owned();
    let longer = |by: Length| Read::diameter(by, Toward::Longer);
    if read.least() < range.least() {
        let by = longer(range.least() - read.least());
        RangeSaid::TooLarge { part, by }
    } else {
        let by = longer(read.greatest() - range.greatest());
        RangeSaid::TooSmall { part, by }
    }
}

/// What was found against what a part's instructions name.
struct Listed<'a> {
    check: &'static str,
    subject: Subject,
    part: &'a Head,
    what: ServesFor,
    found: Served,
    permitted: Vec<Served>,
    hint: Said,
}

impl Listed<'_> {
    fn rule(self) -> Ruling {
        let source = Word::Instructions(self.part.source().into());
        let (found, permitted) = (self.found, self.permitted);
        let is_named = permitted.contains(&found);
        let why = ChoiceSaid::ServesOthers {
            part: self.part.id.clone(),
            what: self.what,
            permitted: permitted.clone(),
            found: found.clone(),
        };
        let (found, permitted) = (ChoiceSaid::Is { found }, ChoiceSaid::OneOf { permitted });
        let ruling = Ruling::on_words(self.check, self.subject, found, permitted, source);
        if is_named {
            ruling
        } else {
            ruling.failing(why, self.hint)
        }
    }
}

/// The highest voltage of the system against what a part is rated for.
struct Rated<'a> {
    check: &'static str,
    subject: Subject,
    part: &'a Head,
    rated_kv: f64,
    highest_kv: f64,
}

impl Rated<'_> {
    fn rule(self) -> Ruling {
        let (highest_kv, rated_kv) = (self.highest_kv, self.rated_kv);
        let source = Word::Instructions(self.part.source().into());
        let ruling = Ruling {
            value: Some(Datum::Number(highest_kv)),
            limit: Some(Datum::Number(rated_kv)),
            unit: Some("kV"),
            margin: Some(rated_kv - highest_kv),
            ..Ruling::on_words(self.check, self.subject, "", "", source)
        };
        if highest_kv <= rated_kv {
            return ruling;
        }
        let why = ChoiceSaid::RatedBelow {
            part: self.part.id.clone(),
            rated_kv,
            highest_kv,
        };
        ruling.failing(why, ChoiceSaid::UseRated)
    }
}

/// A part with ranges.
struct RangedPart<'a> {
    id: &'a str,
    fits: &'a [Fits],
    source: &'a Paper,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_list_of_names_and_the_list_of_checks_are_the_same() {
        let slugs: Vec<&str> = CHECKS.iter().map(|c| c.slug).collect();
        assert_eq!(slugs, crate::limit::slugs().collect::<Vec<_>>());
        assert!(slugs.is_sorted());
    }
}
