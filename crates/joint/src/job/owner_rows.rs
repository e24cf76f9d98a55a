//! What the owner decided: windows, distances, limits and confirmations, each by somebody with the authority for it.

use super::types::{Closing, Confirmation, OwnerLimit, OwnerLink, OwnerWindow};
use super::walk_job::{JobReader, names};
use crate::catalogue::{LinkRow, SHRINKS_HINT, SHRINKS_INWARD};
use crate::form::Record;
use crate::limit::{
    OwnerLimits, Subject, TABLE, check_row, fact_table::FACTS, memory_keys, owner_limits, slugs,
};
use crate::plane::{Holder, Plane};
use crate::said::Whose;
use jiff::civil::Date;
use std::collections::BTreeSet;

/// Bounds that a limit of the owner may have.
const BOUNDS: &[&str] = &[
    "least",
    "greatest",
    "greatest_kv_per_mm",
    "least_kpa",
    "greatest_stretch",
    "greatest_v",
    "greatest_ohm_per_km",
];

/// Bounds that a limit of the owner may have, by what it limits.
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
    /// Name and date of somebody with the authority for it, as a source.
    pub(super) fn decided(&mut self, row: &Record, what: &str) -> Option<String> {
        let (by, date): (String, Date) = (row.string("by")?, row.date("date")?);
        if self.people_are_known
            && !self
                .people
                .iter()
                .any(|p| p.name == by && p.decides.iter().any(|d| d == what))
        {
            let who: Vec<&String> = self
                .people
                .iter()
                .filter(|p| p.decides.iter().any(|d| d == what))
                .map(|p| &p.name)
                .collect();
            let who = if who.is_empty() {
                "nobody".to_owned()
            } else {
                names(who.into_iter())
            };
            self.complain(
                row.at("by"),
                format!("{by} is not named under `authority` as one who decides {what}; the job gives that to {who}."),
                "Have somebody with that authority decide it, or add the person to `authority`.",
            );
        }
        self.not_after_the_work(row);
        Some(format!("{by}, {date}"))
    }

    /// Nothing that the plan rests on can be dated after the day of the work.
    pub(super) fn not_after_the_work(&mut self, row: &Record) {
        if let (Some(date), Some(work)) = (row.date("date"), self.date)
            && date > work
        {
            self.complain(
                row.at("date"),
                format!("This is dated {date}, after the day of the work, {work}."),
                "Look at both dates again.",
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
                format!(
                    "The {} is not set by the crew; a window for it would have no effect.",
                    plane.name().replace('-', " ")
                ),
                "Set a window for a cut, a mark or the body.",
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
                "A distance of the owner gives only one of `minus` and `plus`.".to_owned(),
                "Give both, or neither.",
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
                format!(
                    "A distance of the owner runs from {} to itself.",
                    from.name()
                ),
                "Name two planes.",
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
            self.complain(row.at, SHRINKS_INWARD.to_owned(), SHRINKS_HINT);
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
                format!("No check is named `{check}`."),
                format!("Checks are: {}.", slugs().collect::<Vec<_>>().join(", ")),
            );
        } else if permitted.is_empty() {
            let limited = TABLE.iter().filter(|row| row.owner != OwnerLimits::Nothing);
            let known: Vec<&str> = limited.map(|row| row.slug).collect();
            self.complain(
                row.at("check"),
                format!(
                    "The check `{check}` takes no limit of the owner; it would have no effect."
                ),
                format!("Checks that take one are: {}.", known.join(", ")),
            );
        } else {
            self.bounds(row, &check, permitted);
        }
        if !BOUNDS.iter().any(|name| row.is_given(name)) {
            self.complain(
                row.at,
                format!("A limit of the owner for the check `{check}` has no bound."),
                format!("Bounds are: {}.", BOUNDS.join(", ")),
            );
        }
        let (least, greatest) = (row.length("least"), row.length("greatest"));
        if let (Some(low), Some(high)) = (least, greatest)
            && low > high
        {
            self.complain(
                row.at("least"),
                format!("`least` is {low} and `greatest` is {high}; the least cannot be above the greatest."),
                "Exchange them, or look them up again.",
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

    /// Complains of bounds that say nothing to a check.
    fn bounds(&mut self, row: &Record, check: &str, permitted: &[&str]) {
        let hint = format!(
            "It takes {}.",
            permitted
                .iter()
                .map(|name| format!("`{name}`"))
                .collect::<Vec<_>>()
                .join(" and ")
        );
        for name in BOUNDS
            .iter()
            .filter(|name| row.is_given(name) && !permitted.contains(name))
        {
            self.complain(
                row.at(name),
                format!("`{name}` is no bound for the check `{check}`; it would have no effect."),
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
                "A closing names a phase and no leg.".to_owned(),
                "Name the leg, or take the phase out.",
            );
        }
        let (check, fact) = (row.string("check")?, row.string("fact")?);
        if check_row(&check).is_none() {
            self.complain(
                row.at("check"),
                format!("No check is named `{check}`."),
                format!("Checks are: {}.", slugs().collect::<Vec<_>>().join(", ")),
            );
        }
        if !FACTS.iter().any(|known| known.key == fact) {
            let known: Vec<&str> = FACTS.iter().map(|known| known.key).collect();
            self.complain(
                row.at("fact"),
                format!("No fact is named `{fact}`."),
                format!(
                    "The plan names the fact that it asks for; they are: {}.",
                    known.join(", ")
                ),
            );
        }
        let (date, until) = (row.date("date")?, row.date("until")?);
        if until < date {
            self.complain(
                row.at("until"),
                format!("A closing of {date} holds until {until}, before it was made."),
                "Look at both dates again.",
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
                format!("No value from memory has the key `{key}`; there is nothing to confirm."),
                format!("Keys are: {}.", names(known.iter())),
            );
        }
        Some(Confirmation {
            key,
            edition: row.string("edition")?,
            source: source?,
        })
    }
}
