//! Owner rows: windows, distances, limits, confirmations and closings that the owner's people decided.

use super::authority::decided;
use super::reader::JobReader;
use crate::catalogue::LinkRow;
use crate::form::{Record, Span};
use crate::limit::{
    OwnerLimits, Subject, TABLE, check_row, fact_table::FACTS, memory_keys, owner_limits, slugs,
};
use crate::plane::{Holder, Plane};
use crate::said::{CableHint, CableSaid, OwnerHint, OwnerSaid, RowHint, Whose};
use jiff::civil::Date;
use jointwright_units::Length;
use std::collections::BTreeSet;

/// Window set by the owner.
#[derive(Clone, Debug)]
pub struct OwnerWindow {
    /// Plane.
    pub plane: Plane,
    /// Leg; `None` for all legs.
    pub leg: Option<String>,
    /// Permitted deviation to the shorter side.
    pub minus: Length,
    /// Permitted deviation to the longer side.
    pub plus: Length,
    /// Person and date.
    pub source: String,
}

/// Distance set by the owner.
#[derive(Clone, Debug)]
pub struct OwnerLink {
    /// Leg; `None` for all legs.
    pub leg: Option<String>,
    /// Link.
    pub link: LinkRow,
}

/// Limit set by the owner.
#[derive(Clone, Debug)]
pub struct OwnerLimit {
    /// Check.
    pub check: String,
    /// Least length.
    pub least: Option<Length>,
    /// Greatest length.
    pub greatest: Option<Length>,
    /// Greatest field, kV/mm rms at the highest continuous voltage to earth.
    pub greatest_kv_per_mm: Option<f64>,
    /// Least pressure, kPa.
    pub least_kpa: Option<f64>,
    /// Greatest stretch of a bore, over its relaxed diameter.
    pub greatest_stretch_ratio: Option<f64>,
    /// Greatest voltage along a shield, V rms at the load.
    pub greatest_v: Option<f64>,
    /// Greatest resistance along a shield at 20 °C, ohm/km.
    pub greatest_ohm_per_km: Option<f64>,
    /// Person and date.
    pub source: String,
}

/// Value from memory that the owner confirmed.
#[derive(Clone, Debug)]
pub struct Confirmation {
    /// Key.
    pub key: String,
    /// Edition.
    pub edition: String,
    /// Person and date.
    pub source: String,
}

/// A named engineer's reasoned word on a question that stays not judged.
#[derive(Clone, Debug)]
pub struct Closing {
    /// Check.
    pub check: String,
    /// Subject: the joint, a leg or an end.
    pub whom: Subject,
    /// Key of the missing fact, which stays unanswered.
    pub fact: String,
    /// Reason why it may stay unanswered, in the engineer's own words.
    pub why: String,
    /// Engineer, with the role.
    pub by: String,
    /// Day of the word.
    pub date: Date,
    /// Last day on which it holds.
    pub until: Date,
    /// Place in the job's file.
    pub place: Span,
}

/// All bounds that a limit of the owner may have.
const BOUNDS: &[&str] = &[
    "least",
    "greatest",
    "greatest_kv_per_mm",
    "least_kpa",
    "greatest_stretch",
    "greatest_v",
    "greatest_ohm_per_km",
];

/// Bounds that a limit of the owner may have, by the limited quantity.
const fn bounds_of(limits: OwnerLimits) -> &'static [&'static str] {
    match limits {
        OwnerLimits::Nothing => &[],
        OwnerLimits::Length => &["least", "greatest"],
        OwnerLimits::Field => &["greatest_kv_per_mm"],
        OwnerLimits::Pressure => &["least_kpa"],
        OwnerLimits::Stretch => &["greatest_stretch"],
        OwnerLimits::Voltage => &["greatest_v"],
        OwnerLimits::Resistance => &["greatest_ohm_per_km"],
    }
}

pub(super) fn owner_window(reader: &mut JobReader<'_>, row: &Record) -> Option<OwnerWindow> {
    let source = decided(reader, row, "windows");
    if let Some(leg) = row.string("leg") {
        reader.known_leg(row, &leg);
    }
    let plane = Plane::from_name(row.text("plane")?)?;
    if plane.holder() == Holder::Connector {
        reader.complain(
            row.at("plane"),
            OwnerSaid::NotSetByTheCrew {
                plane: plane.name().to_owned(),
            },
            OwnerHint::WindowForACut,
        );
    }
    Some(OwnerWindow {
        plane,
        leg: row.string("leg"),
        minus: row.length("minus")?,
        plus: row.length("plus")?,
        source: source?,
    })
}

pub(super) fn owner_link(reader: &mut JobReader<'_>, row: &Record) -> Option<OwnerLink> {
    let source = decided(reader, row, "windows");
    if let Some(leg) = row.string("leg") {
        reader.known_leg(row, &leg);
    }
    let tolerance = row.length("minus").zip(row.length("plus"));
    if row.is_given("minus") != row.is_given("plus") {
        reader.complain(
            row.at,
            OwnerSaid::OnlyOneOfMinusAndPlus,
            CableHint::BothOrNeither,
        );
        return None;
    }
    let (from, to) = (
        Plane::from_name(row.text("from")?)?,
        Plane::from_name(row.text("to")?)?,
    );
    if from == to {
        reader.complain(
            row.at,
            OwnerSaid::FromItselfToItself {
                plane: from.name().to_owned(),
            },
            OwnerHint::NameTwoPlanes,
        );
        return None;
    }
    let distance = row.length("distance")?;
    let link = LinkRow {
        from,
        to,
        distance,
        tolerance,
        source: Whose::Person(source?),
        place: reader.place_of(row.at),
    };
    let link = link.pointing_outward(row.flag("toward_end").unwrap_or(false));
    if link.shrinks_inward() {
        reader.complain(row.at, OwnerSaid::ShrinksInward, OwnerHint::FromTheCut);
        return None;
    }
    Some(OwnerLink {
        leg: row.string("leg"),
        link,
    })
}

/// Whether a row names a check; complains if it does not.
fn is_check(reader: &mut JobReader<'_>, row: &Record, check: &str) -> bool {
    let is_known = check_row(check).is_some();
    if !is_known {
        let check = check.to_owned();
        let checks = slugs().map(str::to_owned).collect();
        reader.complain(
            row.at("check"),
            OwnerSaid::NoCheck { check },
            OwnerHint::ChecksAre { checks },
        );
    }
    is_known
}

pub(super) fn owner_limit(reader: &mut JobReader<'_>, row: &Record) -> Option<OwnerLimit> {
    let source = decided(reader, row, "limits");
    let check = row.string("check")?;
    let permitted = bounds_of(owner_limits(&check));
    let is_check = is_check(reader, row, &check);
    if is_check && permitted.is_empty() {
        let limited = TABLE.iter().filter(|row| row.owner != OwnerLimits::Nothing);
        let checks = limited.map(|row| row.slug.to_owned()).collect();
        let check = check.clone();
        reader.complain(
            row.at("check"),
            OwnerSaid::TakesNoLimit { check },
            OwnerHint::LimitedChecksAre { checks },
        );
    } else if is_check {
        bounds(reader, row, &check, permitted);
    }
    if !BOUNDS.iter().any(|name| row.is_given(name)) {
        reader.complain(
            row.at,
            OwnerSaid::NoBound {
                check: check.clone(),
            },
            OwnerHint::BoundsAre {
                bounds: BOUNDS.iter().map(|bound| (*bound).to_owned()).collect(),
            },
        );
    }
    let (least, greatest) = (row.length("least"), row.length("greatest"));
    if let (Some(low), Some(high)) = (least, greatest)
        && low > high
    {
        reader.complain(
            row.at("least"),
            CableSaid::LeastAboveGreatest {
                least: "least".to_owned(),
                low: low.to_string(),
                greatest: "greatest".to_owned(),
                high: high.to_string(),
            },
            CableHint::ExchangeOrLookUp,
        );
    }
    Some(OwnerLimit {
        check,
        least,
        greatest,
        greatest_kv_per_mm: row.number("greatest_kv_per_mm"),
        least_kpa: row.number("least_kpa"),
        greatest_stretch_ratio: row.number("greatest_stretch"),
        greatest_v: row.number("greatest_v"),
        greatest_ohm_per_km: row.number("greatest_ohm_per_km"),
        source: source?,
    })
}

/// Complains about bounds that a check does not use.
fn bounds(reader: &mut JobReader<'_>, row: &Record, check: &str, permitted: &[&str]) {
    let hint = OwnerHint::ItTakes {
        bounds: permitted.iter().map(|bound| (*bound).to_owned()).collect(),
    };
    for name in BOUNDS
        .iter()
        .filter(|name| row.is_given(name) && !permitted.contains(name))
    {
        reader.complain(
            row.at(name),
            OwnerSaid::NoSuchBound {
                field: (*name).to_owned(),
                check: check.to_owned(),
            },
            hint.clone(),
        );
    }
}

pub(super) fn closing(reader: &mut JobReader<'_>, row: &Record) -> Option<Closing> {
    decided(reader, row, "closings");
    if let Some(leg) = row.string("leg") {
        reader.known_leg(row, &leg);
    } else if row.is_given("phase") {
        reader.complain(
            row.at("phase"),
            OwnerSaid::PhaseWithoutLeg,
            OwnerHint::NameTheLeg,
        );
    }
    let (check, fact) = (row.string("check")?, row.string("fact")?);
    is_check(reader, row, &check);
    if !FACTS.iter().any(|known| known.key == fact) {
        let facts = FACTS.iter().map(|known| known.key.to_owned()).collect();
        let fact = fact.clone();
        reader.complain(
            row.at("fact"),
            OwnerSaid::NoFact { fact },
            OwnerHint::FactsAre { facts },
        );
    }
    let (date, until) = (row.date("date")?, row.date("until")?);
    if until < date {
        reader.complain(
            row.at("until"),
            OwnerSaid::EndsBeforeMade {
                date: date.to_string(),
                until: until.to_string(),
            },
            RowHint::LookAtBothDates,
        );
    }
    let by = row.string("by")?;
    let role = reader.people.known.iter().find(|p| p.name == by);
    let role = role.map(|p| format!(", {}", p.role)).unwrap_or_default();
    Some(Closing {
        check,
        whom: Subject {
            leg: row.string("leg"),
            phase: row.integer("phase").and_then(|n| u8::try_from(n).ok()),
        },
        fact,
        why: row.string("why")?,
        by: format!("{by}{role}"),
        date,
        until,
        place: reader.place_of(row.at("fact")),
    })
}

pub(super) fn confirmation(reader: &mut JobReader<'_>, row: &Record) -> Option<Confirmation> {
    let source = decided(reader, row, "confirmations");
    let key = row.string("key")?;
    if !memory_keys().any(|known| known == key) {
        let known: BTreeSet<String> = memory_keys().map(str::to_owned).collect();
        reader.complain(
            row.at("key"),
            OwnerSaid::NoKey { key: key.clone() },
            OwnerHint::KeysAre {
                keys: known.into_iter().collect(),
            },
        );
    }
    Some(Confirmation {
        key,
        edition: row.string("edition")?,
        source: source?,
    })
}
