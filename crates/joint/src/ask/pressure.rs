//! Missing facts for how hard a part of rubber presses on one end.

use super::Missing;
use crate::cable::Layer;
use crate::catalogue::{Fits, Head, Rubber};
use crate::end::EndId;
use crate::job::Lot;
use crate::limit::{Ask, fact_table as fact};
use crate::said::{Of, PartKind};
use crate::survey::EndSurvey;

/// A part of rubber with the values of its row.
struct Part<'a> {
    kind: PartKind,
    head: &'a Head,
    fits: &'a [Fits],
    rubber: Option<&'a Rubber>,
    over: Layer,
}

impl<'a> Missing<'a> {
    fn rubber_part(&self, kind: PartKind) -> Option<Part<'a>> {
        let chosen = self.chosen;
        match kind {
            PartKind::Body => chosen.body.map(|p| Part {
                kind: PartKind::Body,
                head: &p.head,
                fits: &p.fits,
                rubber: p.rubber.as_ref(),
                over: Layer::Insulation,
            }),
            PartKind::Adapter => chosen.adapter.map(|p| Part {
                kind: PartKind::Adapter,
                head: &p.head,
                fits: &p.fits,
                rubber: p.rubber.as_ref(),
                over: Layer::Insulation,
            }),
            _ => chosen.seal.map(|p| Part {
                kind: PartKind::Seal,
                head: &p.head,
                fits: &p.fits,
                rubber: p.rubber.as_ref(),
                over: Layer::Jacket,
            }),
        }
    }

    /// Missing facts for the pressure, the stretch and today's range of a part.
    pub fn pressure(&self, kind: PartKind, phase: u8, survey: &EndSurvey) -> Vec<Ask> {
        let Some(part) = self.rubber_part(kind) else {
            return Vec::new();
        };
        let id = &part.head.id;
        let mut asks = Vec::new();
        if !is_whole(&part) {
            asks.push(fact::RUBBER.of(id));
        }
        if part.kind == PartKind::Body && self.chosen.body.is_some_and(|body| body.inner.is_none())
        {
            asks.push(fact::INSIDE.of(id));
        }
        if part.kind == PartKind::Body {
            asks.extend(self.adapter_reach(false));
        }
        asks.extend(self.seat(&part, phase, survey));
        asks.extend(self.lot(&part, phase));
        asks
    }

    /// Missing facts of its seat: the readings over its layer, its range, their temperature.
    fn seat(&self, part: &Part<'_>, phase: u8, survey: &EndSurvey) -> Vec<Ask> {
        let is_seal = part.kind == PartKind::Seal;
        let mut ranges = part.fits.iter().filter(|f| f.over == part.over);
        let Some(fits) = ranges.find(|f| is_seal || f.is_bore()) else {
            return vec![fact::RANGE.of(&part.head.id)];
        };
        let mut asks = self.diameter(phase, survey, fits);
        let Some(read) = survey.diameters.get(&fits.over) else {
            return asks;
        };
        if fits.is_bore() && !read.is_read_around {
            asks.push(self.reading(phase, fits.over));
        }
        let (least, greatest) = self.job.place.ambient_degc;
        if let (None, Some(read), Some(least), Some(greatest)) =
            (fits.at_degc, read.degc, least, greatest)
            && (read.0 < least || read.1 > greatest)
        {
            asks.push(fact::READING_WARMED.of(self.over(phase, fits.over)));
        }
        asks
    }

    /// Missing facts of the lot on the truck.
    fn lot(&self, part: &Part<'_>, phase: u8) -> Vec<Ask> {
        let end = EndId::new(&self.leg.id, phase);
        let lots = self.job.lots_of(&end, part.kind.file_name());
        let lots: Vec<&Lot> = lots.collect();
        let of = Of::Lot {
            end,
            kind: part.kind,
            row: part.head.id.clone(),
        };
        let shelf = part.head.shelf.as_ref();
        let is_held = part
            .rubber
            .is_some_and(|rubber| rubber.hold_diameter.is_some());
        if lots.is_empty() && (shelf.is_some() || is_held) {
            return vec![fact::LOT.of(of)];
        }
        let unread = lots.iter().any(|lot| lot.label_is_unread());
        let unread = unread.then(|| fact::LABEL_DATE.of(of.clone()));
        let mut asks: Vec<Ask> = unread.into_iter().collect();
        let from_expanded = shelf.is_none_or(|shelf| shelf.from == "expanded");
        let begun = |lot: &Lot| {
            if from_expanded {
                lot.expanded
            } else {
                lot.made.or(lot.expanded)
            }
        };
        let is_dated = |lot: &&Lot| begun(lot).is_some_and(|day| day <= self.job.date);
        if (shelf.is_some() || is_held) && !lots.iter().all(is_dated) {
            asks.push(fact::LOT_DAY.of(of.clone()));
        }
        if !is_held {
            return asks;
        }
        let covers = |lot: &&Lot| {
            let last = lot.stays_degc.last().map(|(until, _)| *until);
            lot.store_degc.1.is_some() || last.is_some_and(|until| until > self.job.date)
        };
        if !lots.iter().all(covers) {
            asks.push(fact::LOT_STORE.of(of.clone()));
        }
        if shelf.is_none_or(|shelf| shelf.store_degc.1.is_none()) {
            asks.push(fact::SHELF.of(&part.head.id));
        }
        asks
    }

    /// Missing facts for the effect of the joint's temperatures on a part.
    pub fn warmth(&self, kind: PartKind, phase: u8, survey: &EndSurvey) -> Vec<Ask> {
        let Some(part) = self.rubber_part(kind) else {
            return Vec::new();
        };
        let (id, job) = (&part.head.id, self.job);
        let mut asks = Vec::new();
        if job.place.ambient_degc.0.is_none() {
            asks.push(fact::AMBIENT_LEAST.of(""));
        }
        let coldest = job.place.ambient_degc.0.unwrap_or(f64::NEG_INFINITY);
        let hottest = job.duty.conductor_greatest_degc;
        if hottest.is_none_or(|hottest| hottest < coldest) {
            asks.push(fact::CONDUCTOR_GREATEST.of(""));
        }
        let fits = Fits::bore_over(part.fits, part.over);
        let is_at = fits.is_some_and(|fits| fits.at_degc.is_some());
        let read = survey.diameters.get(&part.over);
        if !is_at && read.is_some_and(|read| read.degc.is_none()) {
            asks.push(fact::READING_TEMPERATURE.of(self.over(phase, part.over)));
        }
        if self.leg.expansion_per_k.is_none() {
            asks.push(fact::EXPANSION.of(&self.leg.id));
        }
        let rubber = part.rubber;
        if rubber.is_none_or(|r| r.expansion_per_k.is_none() || r.modulus_per_k.is_none()) {
            asks.push(fact::RUBBER_HEAT.of(id));
        }
        asks
    }
}

/// Whether the row states the relaxed rubber of the part, and the effect of the store on it.
fn is_whole(part: &Part<'_>) -> bool {
    let Some(rubber) = part.rubber else {
        return false;
    };
    let is_even = part.kind != PartKind::Body;
    let is_expanded = part
        .head
        .shelf
        .as_ref()
        .is_some_and(|shelf| shelf.from == "expanded");
    (!is_even || rubber.relaxed_outside.is_some())
        && (rubber.hold_diameter.is_none() || rubber.set.is_some())
        && (rubber.hold_diameter.is_some() || !is_expanded)
}
