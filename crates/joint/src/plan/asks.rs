//! Asks: every missing fact once, the checks that it settles, and the letters that ask for it.

use crate::catalogue::{Catalogue, Head};
use crate::checks::LegInputs;
use crate::judge::Judged;
use crate::limit::{Ask, Fact, File, Outcome, Ruling, Who, fact_row, fact_table};
use crate::said::{AskSaid, FactKey, LetterSaid, Of, PlanSaid, Said, SettledCheck, Wording};
use crate::slot::Slot;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use std::collections::{BTreeMap, BTreeSet};

/// One missing fact, with everything for which it is missing.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct AskDoc {
    /// Name of the fact; it never changes.
    pub fact: FactKey,
    /// Addressee who can answer.
    pub who: Who,
    /// The addressee in words.
    pub who_words: String,
    /// Whether crew, store or owner can answer it themselves; makers may not publish their answers.
    pub near: bool,
    /// Whether it can be found only while the joint is made, on a cable that is cut.
    pub during_work: bool,
    /// Question.
    pub question: String,
    /// Things that the question is about: legs, ends, parts, keys; an empty text for the job.
    pub of: Vec<String>,
    /// The same things, before any language.
    pub about: Vec<Of>,
    /// Slots of the readings at ends that would answer it; empty if no reading does.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub slots: Vec<Slot>,
    /// Kind of row of each of these things, by the name of its table; an empty text if it names no row.
    pub kinds: Vec<String>,
    /// Place for the answer.
    pub goes_into: PlaceDoc,
    /// Checks of a leg or an end that wait for this fact alone.
    pub settles: Vec<String>,
    /// Checks with a ruling that waits for other facts too.
    pub helps: Vec<String>,
}

/// Place for an answer.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct PlaceDoc {
    /// File.
    pub file: File,
    /// Tables of that file that take the answer: the tables of all kinds of parts asked about, if those kinds are known.
    pub tables: Vec<String>,
    /// Fields.
    pub fields: Vec<String>,
}

/// Cause that stops work though nothing fails.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct StopDoc {
    /// Check.
    pub check: String,
    /// Subject, as pages name it: an end, a leg, or "joint" for the whole.
    pub whom: String,
    /// Leg; null for the whole joint.
    pub leg: Option<String>,
    /// Phase; null for all phases.
    pub phase: Option<u8>,
    /// Reason, and what to do.
    pub say: String,
    /// Person whose word lifts it; null while nobody has said what it is.
    pub lifted_by: Option<String>,
}

impl StopDoc {
    /// Whether it concerns a leg, or one of its ends.
    pub fn concerns(&self, leg: &str, phase: Option<u8>) -> bool {
        let is_leg = self.leg.as_deref().is_none_or(|own| own == leg);
        is_leg && (phase.is_none() || self.phase.is_none() || self.phase == phase)
    }
}

/// Subject of a ruling, as pages name it.
fn whom(ruling: &Ruling, wording: &dyn Wording) -> String {
    wording.say(&PlanSaid::Whom(ruling.subject.clone()).into())
}

/// A fact, the things that it is about, and the rulings that wait for it.
pub(super) struct Waiting<'r> {
    fact: &'static Fact,
    of: Vec<Of>,
    alone: Vec<&'r Ruling>,
    with_others: Vec<&'r Ruling>,
}

/// Missing facts, each once.
///
/// Facts that crew or owner can close before the work come first, then facts found during the work, then questions to makers.
/// Within each group, the fact that settles most comes first.
pub(super) fn ask_docs(judged: &Judged<'_>, wording: &dyn Wording) -> Vec<AskDoc> {
    asked(
        &judged.rulings,
        &of_rows(judged),
        &judged.inputs.order.catalogue,
        wording,
    )
}

/// Asks of these rulings, and asks about rows, sorted as in [`ask_docs`].
pub(super) fn asked(
    rulings: &[Ruling],
    of_rows: &[Waiting<'_>],
    catalogue: &Catalogue,
    wording: &dyn Wording,
) -> Vec<AskDoc> {
    let is_open = |r: &&Ruling| r.outcome == Outcome::NotJudged && r.closed_by.is_none();
    let mut by_key: BTreeMap<&str, Waiting<'_>> = BTreeMap::new();
    for ruling in rulings.iter().filter(is_open) {
        let mut keys: Vec<&str> = ruling.asks.iter().map(|ask| ask.fact.key).collect();
        keys.dedup();
        for key in &keys {
            let asks = ruling.asks.iter().filter(|ask| ask.fact.key == *key);
            add(&mut by_key, key, asks, ruling, keys.len() == 1);
        }
    }
    let waiting = by_key.into_values();
    let mut docs: Vec<AskDoc> = waiting.map(|w| ask_doc(&w, catalogue, wording)).collect();
    docs.extend(of_rows.iter().map(|w| ask_doc(w, catalogue, wording)));
    docs.sort_by_key(|ask| {
        let most_first = |n: usize| usize::MAX - n;
        (
            !ask.near,
            ask.during_work,
            most_first(ask.settles.len()),
            most_first(ask.settles.len() + ask.helps.len()),
            ask.key(),
        )
    });
    docs
}

/// Asks about the rows themselves, for which no ruling waits: a check by a second person, and a paper that is still in force.
fn of_rows<'r>(judged: &Judged<'_>) -> Vec<Waiting<'r>> {
    let heads = used_heads(judged);
    let of = |fact: &'static Fact, is_asked: fn(&Head) -> bool| {
        let mut of: Vec<Of> = Vec::new();
        for head in heads.iter().filter(|head| is_asked(head)) {
            let row = Of::from(&head.id);
            if !of.contains(&row) {
                of.push(row);
            }
        }
        (!of.is_empty()).then(|| Waiting {
            fact,
            of,
            alone: Vec::new(),
            with_others: Vec::new(),
        })
    };
    let unchecked = of(&fact_table::ROW_CHECKED, |head| head.checked.is_none());
    let stale = of(&fact_table::PAPER_CURRENT, |head| {
        head.current_only_until().is_some()
    });
    unchecked.into_iter().chain(stale).collect()
}

/// Catalogue rows of the joint, leg by leg.
fn used_heads<'j>(judged: &'j Judged<'_>) -> Vec<&'j Head> {
    let order = judged.inputs.order;
    let bus = order
        .job
        .bus
        .as_deref()
        .and_then(|id| order.catalogue.bus(id));
    let of_leg = |leg: &'j LegInputs<'_>| {
        let chosen = &leg.chosen;
        let parts = [
            chosen.body.map(|p| &p.head),
            chosen.adapter.map(|p| &p.head),
            chosen.connector.map(|p| &p.head),
            chosen.shield_part.map(|p| &p.head),
            chosen.seal.map(|p| &p.head),
        ];
        let names = leg.leg.parts.consumables.iter();
        let named = names.filter_map(|id| order.catalogue.consumable(id));
        let named = named.map(|part| &part.head);
        parts.into_iter().flatten().chain(named)
    };
    let legs = judged.inputs.legs.iter();
    legs.flat_map(of_leg)
        .chain(bus.map(|bus| &bus.head))
        .collect()
}

fn add<'r>(
    by_key: &mut BTreeMap<&'r str, Waiting<'r>>,
    key: &'r str,
    asks: impl Iterator<Item = &'r Ask>,
    ruling: &'r Ruling,
    is_alone: bool,
) {
    for ask in asks {
        let entry = by_key.entry(key).or_insert_with(|| Waiting {
            fact: ask.fact,
            of: Vec::new(),
            alone: Vec::new(),
            with_others: Vec::new(),
        });
        if !entry.of.contains(&ask.of) {
            entry.of.push(ask.of.clone());
        }
        let list = if is_alone {
            &mut entry.alone
        } else {
            &mut entry.with_others
        };
        if !list.iter().any(|other| std::ptr::eq(*other, ruling)) {
            list.push(ruling);
        }
    }
}

fn ask_doc(waiting: &Waiting<'_>, catalogue: &Catalogue, wording: &dyn Wording) -> AskDoc {
    let fact = waiting.fact;
    let named = |rulings: &[&Ruling]| {
        let mut names: Vec<String> = Vec::new();
        for ruling in rulings {
            let name = format!("{} {}", ruling.check, whom(ruling, wording));
            if !names.contains(&name) {
                names.push(name);
            }
        }
        names
    };
    // This fact does not settle a check if one of the check's rulings waits for other facts too.
    let helps = named(&waiting.with_others);
    let mut settles = named(&waiting.alone);
    settles.retain(|name| !helps.contains(name));
    let kinds: Vec<String> = waiting.of.iter().map(|of| kind_of(of, catalogue)).collect();
    AskDoc {
        fact: fact.id,
        who: fact.who,
        who_words: wording.say(&AskSaid::Who(fact.who).into()),
        near: fact.who.is_near(),
        during_work: fact.is_found_during_the_work(),
        question: wording.say(&fact.question(&waiting.of).into()),
        of: waiting.of.iter().map(|of| of_words(of, wording)).collect(),
        about: waiting.of.clone(),
        slots: slots_of(fact, &waiting.of),
        goes_into: PlaceDoc {
            file: fact.file,
            tables: tables_of(fact.tables.iter().copied(), &kinds),
            fields: fact.fields.iter().map(|f| (*f).to_owned()).collect(),
        },
        kinds,
        settles,
        helps,
    }
}

/// Slots of the readings at ends that would answer a fact about all of these things, each once.
fn slots_of(fact: &'static Fact, of: &[Of]) -> Vec<Slot> {
    let asks = of.iter().map(|of| fact.of(of.clone()));
    let slots: BTreeSet<Slot> = asks.flat_map(|ask| ask.slots()).collect();
    slots.into_iter().collect()
}

/// Kind of the row that an ask names; empty if it names no row.
fn kind_of(of: &Of, catalogue: &Catalogue) -> String {
    let row = match of {
        Of::Name(name) => name,
        Of::Plane { of, .. } => return kind_of(of, catalogue),
        _ => return String::new(),
    };
    catalogue.kind_of(row).unwrap_or_default().to_owned()
}

/// Words for the thing that an ask is about; an empty text for the job.
pub(super) fn of_words(of: &Of, wording: &dyn Wording) -> String {
    wording.say(&AskSaid::Of(of.clone()).into())
}

/// Selects from tables such as `body.shelf` those of these kinds of rows; returns all tables if a kind is not known or none fits.
fn tables_of<'t>(tables: impl Iterator<Item = &'t str>, kinds: &[String]) -> Vec<String> {
    let all: Vec<String> = tables.map(str::to_owned).collect();
    let is_of = |table: &&String| {
        let row = table.split('.').next().unwrap_or_default();
        kinds.iter().any(|kind| kind == row)
    };
    let ours: Vec<String> = all.iter().filter(is_of).cloned().collect();
    let is_known = kinds.iter().all(|kind| {
        let row = |table: &String| table.split('.').next() == Some(kind);
        ours.iter().any(row)
    });
    if is_known && !ours.is_empty() {
        ours
    } else {
        all
    }
}

/// Causes that stop work though nothing fails.
pub(super) fn stop_docs(judged: &Judged<'_>, wording: &dyn Wording) -> Vec<StopDoc> {
    let stops = judged.rulings.iter().filter(|ruling| ruling.stops);
    stops
        .map(|ruling| {
            let said =
                |said: &Option<Said>| said.as_ref().map_or(String::new(), |s| wording.say(s));
            let (why, hint) = (said(&ruling.why), said(&ruling.hint));
            StopDoc {
                check: ruling.check.to_owned(),
                whom: whom(ruling, wording),
                leg: ruling.subject.leg.clone(),
                phase: ruling.subject.phase,
                say: format!("{why} {hint}").trim().to_owned(),
                lifted_by: ruling.closed_by.as_ref().map(|word| wording.say(word)),
            }
        })
        .collect()
}

impl AskDoc {
    /// Name of its fact in documents; it never changes.
    pub const fn key(&self) -> &'static str {
        fact_row(self.fact).key
    }

    /// Returns the same ask about one of its things; its place is the table of that row's kind.
    pub(super) fn of_one(&self, of: &Of) -> AskDoc {
        let mut ask = self.clone();
        let mut each = self.about.iter().zip(&self.kinds);
        if let Some((_, kind)) = each.find(|(known, _)| *known == of) {
            let tables = self.goes_into.tables.iter().map(String::as_str);
            ask.goes_into.tables = tables_of(tables, std::slice::from_ref(kind));
        }
        ask.slots = slots_of(fact_row(self.fact), std::slice::from_ref(of));
        ask
    }

    /// Place for the answer.
    pub fn place(&self) -> Said {
        let place = &self.goes_into;
        LetterSaid::AnswerPlace {
            file: place.file,
            tables: place.tables.clone(),
            fields: place.fields.clone(),
        }
        .into()
    }

    /// Checks that it settles, each with its legs and ends.
    pub fn settled(&self) -> Said {
        LetterSaid::SettledBy {
            alone: by_check(&self.settles),
            with_others: by_check(&self.helps),
        }
        .into()
    }
}

/// Groups "cut_window A" and "cut_window B" into one check with its legs and ends.
fn by_check(rulings: &[String]) -> Vec<SettledCheck> {
    let mut checks: Vec<SettledCheck> = Vec::new();
    for ruling in rulings {
        let (check, whom) = ruling.split_once(' ').unwrap_or((ruling, ""));
        let whom = whom.to_owned();
        match checks.iter_mut().find(|known| known.check == check) {
            Some(known) if known.of.contains(&whom) => {}
            Some(known) => known.of.push(whom),
            None => checks.push(SettledCheck {
                check: check.to_owned(),
                of: vec![whom],
            }),
        }
    }
    checks
}
