//! Owner rows: windows, distances, limits and confirmations of the owner, each by somebody with the authority for it.

use super::types::{Closing, Confirmation, OwnerLimit, OwnerLink, OwnerWindow, Person};
use super::walk_job::JobReader;
use crate::catalogue::LinkRow;
use crate::form::Record;
use crate::limit::{
    OwnerLimits, Subject, TABLE, check_row, fact_table::FACTS, memory_keys, owner_limits, slugs,
};
use crate::plane::{Holder, Plane};
use crate::said::{CableHint, CableSaid, OwnerHint, OwnerSaid, RowHint, RowSaid, Whose};
use jiff::civil::Date;
use std::collections::BTreeSet;

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

impl JobReader<'_> {
    /// Name and date of somebody with the authority for the decision, as a source.
    pub(super) fn decided(&mut self, row: &Record, what: &str) -> Option<String> {
        let (by, date): (String, Date) = (row.string("by")?, row.date("date")?);
        if self.people_are_known
            && !self
                .people
                .iter()
                .any(|p| p.name == by && p.decides.iter().any(|d| d == what))
        {
            let decides = |p: &&Person| p.decides.iter().any(|d| d == what);
            let who = self.people.iter().filter(decides);
            let no_authority = OwnerSaid::HasNoAuthority {
                by: by.clone(),
                what: what.to_owned(),
                who: who.map(|p| p.name.clone()).collect(),
            };
            self.complain(row.at("by"), no_authority, OwnerHint::LetSomebodyDecide);
        }
        self.not_after_the_work(row);
        Some(format!("{by}, {date}"))
    }

    /// Complains about a date after the day of the work: the plan can rest on nothing later.
    pub(super) fn not_after_the_work(&mut self, row: &Record) {
        if let (Some(date), Some(work)) = (row.date("date"), self.date)
            && date > work
        {
            self.complain(
                row.at("date"),
                RowSaid::DatedAfterWork {
                    date: date.to_string(),
                    work: work.to_string(),
                },
                RowHint::LookAtBothDates,
            );
        }
    }

    pub(super) fn owner_window(&mut self, row: &Record) -> Option<OwnerWindow> {
        let source = self.decided(row, "windows");
        if let Some(leg) = row.string("leg") {
            self.known_leg(row, &leg);
        }
        let plane = Plane::from_name(row.text("plane")?)?;
        if plane.holder() == Holder::Connector {
            self.complain(
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

    pub(super) fn owner_link(&mut self, row: &Record) -> Option<OwnerLink> {
        let source = self.decided(row, "windows");
        if let Some(leg) = row.string("leg") {
            self.known_leg(row, &leg);
        }
        let tolerance = row.length("minus").zip(row.length("plus"));
        if row.is_given("minus") != row.is_given("plus") {
            self.complain(
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
            self.complain(
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
            place: self.place_of(row.at),
        };
        let link = link.pointing_outward(row.flag("toward_end").unwrap_or(false));
        if link.shrinks_inward() {
            self.complain(row.at, OwnerSaid::ShrinksInward, OwnerHint::FromTheCut);
            return None;
        }
        Some(OwnerLink {
            leg: row.string("leg"),
            link,
        })
    }

    pub(super) fn owner_limit(&mut self, row: &Record) -> Option<OwnerLimit> {
        let source = self.decided(row, "limits");
        let check = row.string("check")?;
        let permitted = bounds_of(owner_limits(&check));
        if check_row(&check).is_none() {
            self.complain(
                row.at("check"),
                OwnerSaid::NoCheck {
                    check: check.clone(),
                },
                OwnerHint::ChecksAre {
                    checks: slugs().map(str::to_owned).collect(),
                },
            );
        } else if permitted.is_empty() {
            let limited = TABLE.iter().filter(|row| row.owner != OwnerLimits::Nothing);
            let checks = limited.map(|row| row.slug.to_owned()).collect();
            let check = check.clone();
            self.complain(
                row.at("check"),
                OwnerSaid::TakesNoLimit { check },
                OwnerHint::LimitedChecksAre { checks },
            );
        } else {
            self.bounds(row, &check, permitted);
        }
        if !BOUNDS.iter().any(|name| row.is_given(name)) {
            self.complain(
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
            self.complain(
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
    fn bounds(&mut self, row: &Record, check: &str, permitted: &[&str]) {
        let hint = OwnerHint::ItTakes {
            bounds: permitted.iter().map(|bound| (*bound).to_owned()).collect(),
        };
        for name in BOUNDS
            .iter()
            .filter(|name| row.is_given(name) && !permitted.contains(name))
        {
            self.complain(
                row.at(name),
                OwnerSaid::NoSuchBound {
                    field: (*name).to_owned(),
                    check: check.to_owned(),
                },
                hint.clone(),
            );
        }
    }

    pub(super) fn closing(&mut self, row: &Record) -> Option<Closing> {
        self.decided(row, "closings");
        if let Some(leg) = row.string("leg") {
            self.known_leg(row, &leg);
        } else if row.is_given("phase") {
            self.complain(
                row.at("phase"),
                OwnerSaid::PhaseWithoutLeg,
                OwnerHint::NameTheLeg,
            );
        }
        let (check, fact) = (row.string("check")?, row.string("fact")?);
        if check_row(&check).is_none() {
            self.complain(
                row.at("check"),
                OwnerSaid::NoCheck {
                    check: check.clone(),
                },
                OwnerHint::ChecksAre {
                    checks: slugs().map(str::to_owned).collect(),
                },
            );
        }
        if !FACTS.iter().any(|known| known.key == fact) {
            let facts = FACTS.iter().map(|known| known.key.to_owned()).collect();
            let fact = fact.clone();
            self.complain(
                row.at("fact"),
                OwnerSaid::NoFact { fact },
                OwnerHint::FactsAre { facts },
            );
        }
        let (date, until) = (row.date("date")?, row.date("until")?);
        if until < date {
            self.complain(
                row.at("until"),
                OwnerSaid::EndsBeforeMade {
                    date: date.to_string(),
                    until: until.to_string(),
                },
                RowHint::LookAtBothDates,
            );
        }
        let by = row.string("by")?;
        let role = self.people.iter().find(|p| p.name == by);
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
            place: self.place_of(row.at("fact")),
        })
    }

    pub(super) fn confirmation(&mut self, row: &Record) -> Option<Confirmation> {
        let source = self.decided(row, "confirmations");
        let key = row.string("key")?;
        if !memory_keys().any(|known| known == key) {
            let known: BTreeSet<String> = memory_keys().map(str::to_owned).collect();
            self.complain(
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
}
