//! Windows: any mixture of marks inside the windows of one leg, with the connector anywhere within its play, keeps every link of the rows inside its own tolerance.
//!
//! The connector's places are computed here from its row alone, not by the program's own solver.

use super::toml_text::{rows, text, tree};
use super::tries;
use crate::cases::{CASES, Case, EXAMPLES, everything, named, read};
use jointwright_joint::catalogue::{Connector, LinkRow};
use jointwright_joint::cutback::{Cut, Cutback, Growth, cutback};
use jointwright_joint::fit::Chosen;
use jointwright_joint::job::{Job, Leg, Order};
use jointwright_joint::plane::{Holder, Plane};
use jointwright_units::{Length, Station, Window};
use proptest::prelude::*;
use std::collections::BTreeMap;
use toml::Value;

/// Thousandths of the way from the least to the greatest of each quantity that may vary, used in turn.
struct Draw<'d> {
    thousandths: &'d [i64],
    next: usize,
    /// Half-nanometres by which every window is widened at both sides; zero except in a twin.
    widened: i64,
}

impl Draw<'_> {
    fn thousandth(&mut self) -> i64 {
        let t = self.thousandths[self.next % self.thousandths.len()];
        self.next += 1;
        t
    }

    fn between(&mut self, least: i64, greatest: i64) -> i64 {
        let t = self.thousandth();
        // Whole part and remainder separately, so that both ends are hit exactly and nothing overflows.
        let width = greatest - least;
        least + width / 1000 * t + width % 1000 * t / 1000
    }

    fn in_window(&mut self, window: Window) -> i64 {
        self.between(
            window.least().half_nm() - self.widened,
            window.greatest().half_nm() + self.widened,
        )
    }
}

/// Everything of one leg that the law needs.
struct Made<'m> {
    job: &'m Job,
    leg: &'m Leg,
    chosen: Chosen<'m>,
    cutback: Cutback,
}

fn made(order: &Order) -> Option<Vec<Made<'_>>> {
    order
        .job
        .legs
        .iter()
        .map(|leg| {
            let chosen = Chosen::from_names(&order.catalogue, &leg.parts, leg.cable.conductor);
            let cutback = cutback(&order.job, leg, &chosen).ok()?;
            Some(Made {
                job: &order.job,
                leg,
                chosen,
                cutback,
            })
        })
        .collect()
}

impl Made<'_> {
    /// Links of rows and owner with a tolerance.
    fn links(&self) -> Vec<&LinkRow> {
        let parts = [
            self.chosen.connector.map(|p| &p.links),
            self.chosen.body.map(|p| &p.links),
            self.chosen.adapter.map(|p| &p.links),
            self.chosen.shield_part.map(|p| &p.links),
            self.chosen.seal.map(|p| &p.links),
        ];
        let owners = self
            .job
            .owner_links
            .iter()
            .filter(|o| o.leg.as_ref().is_none_or(|l| *l == self.leg.id));
        let rows = parts
            .into_iter()
            .flatten()
            .flatten()
            .chain(owners.map(|o| &o.link));
        rows.filter(|link| link.tolerance.is_some()).collect()
    }

    fn cut(&self, plane: Plane) -> Option<&Cut> {
        self.cutback.cuts.iter().find(|c| c.plane == plane)
    }

    /// Places of all planes that can be drawn, half-nanometres from the conductor end.
    fn draw(&self, draw: &mut Draw<'_>) -> BTreeMap<Plane, i64> {
        let mut places = BTreeMap::from([(Plane::ConductorEnd, 0)]);
        let rung = (draw.thousandth() * 8 / 1000) as usize;
        if let Some(connector) = self.chosen.connector {
            self.draw_connector(connector, rung, draw, &mut places);
        }
        for cut in &self.cutback.cuts {
            let window = match cut.ladder.get(rung) {
                Some(rung) => rung.window,
                None => cut.window,
            };
            if let Some(window) = window {
                places.insert(cut.plane, draw.in_window(window));
            }
        }
        self.draw_body(draw, &mut places);
        places
    }

    /// Draws the body from the place of its end: its datum, and from there each of its planes, each within the body's own rows.
    fn draw_body(&self, draw: &mut Draw<'_>, places: &mut BTreeMap<Plane, i64>) {
        let Some(end) = places.get(&Plane::BodyEnd).copied() else {
            return;
        };
        let nominal = |plane: Plane| self.cutback.nominal(plane).map(Station::half_nm);
        let datum = [Plane::BodyCentre, Plane::BodySeat]
            .into_iter()
            .find_map(|plane| Some((plane, nominal(plane)?)));
        let (Some((datum, at)), Some(end_at)) = (datum, nominal(Plane::BodyEnd)) else {
            return;
        };
        let rows = self.chosen.body.map(|body| body.links.as_slice());
        let mut play = |plane: Plane| {
            let mut rows = rows.into_iter().flatten();
            let row = rows.find(|l| (l.from, l.to) == (datum, plane));
            let (minus, plus) = row.and_then(|l| l.tolerance).unwrap_or_default();
            draw.between(-2 * minus.nm(), 2 * plus.nm())
        };
        let placed = end - (end_at - at) - play(Plane::BodyEnd);
        places.insert(datum, placed);
        let of_body = |plane: &Plane| plane.holder() == Holder::Body;
        let inside = |plane: &Plane| of_body(plane) && *plane != datum && *plane != Plane::BodyEnd;
        for plane in Plane::ALL.iter().copied().filter(inside) {
            if let Some(nominal) = nominal(plane) {
                places.insert(plane, placed + (nominal - at) + play(plane));
            }
        }
    }

    fn draw_connector(
        &self,
        connector: &Connector,
        rung: usize,
        draw: &mut Draw<'_>,
        places: &mut BTreeMap<Plane, i64>,
    ) {
        let part = |length: Length| {
            if connector.two_ended {
                length.nm()
            } else {
                2 * length.nm()
            }
        };
        let gap = connector.ends[0].gap_greatest.map_or(0, |gap| 2 * gap.nm());
        let datum = -part(connector.stop) - draw.between(0, gap);
        let growth = match &self.cutback.growth {
            Growth::None => 0,
            Growth::Measured {
                least, greatest, ..
            } => draw.between(least.half_nm(), greatest.half_nm()),
            Growth::Unknown(_) => part(Length::INCH_64TH * 4 * rung as i64),
        };
        let plane = if connector.two_ended {
            Plane::ConnectorCentre
        } else {
            Plane::ConnectorSeat
        };
        places.insert(plane, datum);
        places.insert(Plane::ConnectorMouthBefore, datum + part(connector.length));
        places.insert(
            Plane::ConnectorMouth,
            datum + part(connector.length) + growth,
        );
    }

    /// Links that a draw breaks, and the number of links examined.
    fn broken(&self, places: &BTreeMap<Plane, i64>) -> (Vec<String>, usize) {
        let mut broken = Vec::new();
        let mut n_asked = 0;
        for link in self.links() {
            let (Some(from), Some(to), Some((minus, plus))) =
                (places.get(&link.from), places.get(&link.to), link.tolerance)
            else {
                continue;
            };
            n_asked += 1;
            let off = to - from - 2 * link.distance.nm();
            if off < -2 * minus.nm() || off > 2 * plus.nm() {
                broken.push(format!(
                    "leg {}: {} to {} is off by {off} half-nanometres, {minus} less and {plus} more are permitted ({:?})",
                    self.leg.id, link.from.name(), link.to.name(), link.source
                ));
            }
        }
        (broken, n_asked)
    }
}

/// Links broken on all legs of an order by one draw.
fn broken(order: &Order, thousandths: &[i64], widened: i64) -> (Vec<String>, usize) {
    let mut draw = Draw {
        thousandths,
        next: 0,
        widened,
    };
    let (mut all, mut n_asked) = (Vec::new(), 0);
    for made in made(order).into_iter().flatten() {
        let places = made.draw(&mut draw);
        let (broken, asked) = made.broken(&places);
        all.extend(broken);
        n_asked += asked;
    }
    (all, n_asked)
}

/// Ends of windows are more frequent than places between.
fn thousandths() -> impl Strategy<Value = Vec<i64>> {
    let one = prop_oneof![3 => Just(0_i64), 3 => Just(1000), 2 => 0_i64..=1000];
    proptest::collection::vec(one, 31)
}

/// The case with every tolerance of its rows replaced by another, in whole nanometres, and some of the body's own dimensions given one too.
fn with_tolerances(case: Case, tolerances_nm: &[i64]) -> Option<Order> {
    let mut catalogues = case.catalogues();
    let mut next = 0;
    let mut tolerance = || {
        next += 1;
        tolerances_nm[(next - 1) % tolerances_nm.len()]
    };
    for (_, catalogue) in &mut catalogues {
        let mut parts = tree(catalogue);
        for kind in ["body", "connector", "adapter", "shield_part", "seal"] {
            for row in rows(&mut parts, kind) {
                let links = row.get_mut("link").and_then(Value::as_array_mut);
                for link in links.into_iter().flatten().filter_map(Value::as_table_mut) {
                    let from = link.get("from").and_then(Value::as_str);
                    let is_inner = matches!(from, Some("body-seat" | "body-centre"));
                    // At most a fifth, so that play does not use up everything.
                    let play = tolerance();
                    if is_inner && play % 2 == 0 {
                        link.insert(
                            "minus".to_owned(),
                            Length::from_nm(play / 10).exact_mm().into(),
                        );
                        link.insert(
                            "plus".to_owned(),
                            Length::from_nm(play / 5).exact_mm().into(),
                        );
                    } else if link.contains_key("minus") {
                        for side in ["minus", "plus"] {
                            let own = Length::from_nm(tolerance()).exact_mm();
                            link.insert(side.to_owned(), own.into());
                        }
                    }
                }
            }
        }
        *catalogue = text(&parts, None);
    }
    read(case.job, &catalogues).ok()
}

fn case(pick: usize) -> Case {
    everything().nth(pick).expect("a case")
}

const N: usize = CASES.len() + EXAMPLES.len();

proptest! {
    #![proptest_config(tries(256))]

    #[test]
    fn any_mixture_of_marks_keeps_every_link(pick in 0..N, thousandths in thousandths()) {
        let (broken, n_asked) = broken(&case(pick).order(), &thousandths, 0);
        prop_assert!(broken.is_empty(), "{}: {broken:#?}", case(pick).slug);
        prop_assert!(n_asked >= 6, "{n_asked} links asked");
    }

    #[test]
    fn with_any_tolerances_too(
        pick in 0..N,
        thousandths in thousandths(),
        tolerances in proptest::collection::vec(prop_oneof![1 => Just(0_i64), 6 => 0_i64..9_000_001], 23),
    ) {
        let order = with_tolerances(case(pick), &tolerances).expect("tolerances do not contradict");
        let (broken, _) = broken(&order, &thousandths, 0);
        prop_assert!(broken.is_empty(), "{}: {broken:#?}", case(pick).slug);
    }

    #[test]
    fn two_windows_are_together_no_wider_than_the_link_between_them(
        pick in 0..N,
        tolerances in proptest::collection::vec(0_i64..9_000_001, 23),
    ) {
        let order = with_tolerances(case(pick), &tolerances).expect("tolerances do not contradict");
        for made in made(&order).expect("the rows agree") {
            let wide = too_wide(&made, 0);
            prop_assert!(wide.is_empty(), "{}: {wide:#?}", case(pick).slug);
        }
    }
}

/// Links whose two windows together are wider than the link's own tolerance.
fn too_wide(made: &Made<'_>, widened: i64) -> Vec<String> {
    let width = |plane: Plane| match plane {
        // The datum does not vary, and the connector's play is no window: its width only takes away.
        plane if plane.holder() == Holder::Connector => Some(0),
        // The body's window is the window of its end.
        plane if plane.holder() == Holder::Body => made.cut(Plane::BodyEnd).and_then(width_of),
        plane => made.cut(plane).and_then(width_of),
    };
    let wide = made.links().into_iter().filter(|link| {
        // The distance between two planes of the body has its own play; the crew's window drops out.
        if link.from.holder() == Holder::Body && link.to.holder() == Holder::Body {
            return false;
        }
        let (Some(a), Some(b), Some((minus, plus))) =
            (width(link.from), width(link.to), link.tolerance)
        else {
            return false;
        };
        a + b + 2 * widened > 2 * (minus + plus).nm()
    });
    wide.map(|link| format!("{} to {}", link.from.name(), link.to.name()))
        .collect()
}

fn width_of(cut: &Cut) -> Option<i64> {
    let window = cut
        .window
        .or_else(|| cut.ladder.first().and_then(|r| r.window))?;
    Some((window.greatest() - window.least()).half_nm())
}

#[test]
fn a_window_half_a_nanometre_wider_breaks_a_link() {
    let order = named("straight-wires-growth-measured").order();
    let corners = [[0_i64, 1000], [1000, 0], [0, 0], [1000, 1000]];
    assert!(corners.iter().all(|c| broken(&order, c, 0).0.is_empty()));
    assert!(corners.iter().any(|c| !broken(&order, c, 1).0.is_empty()));
    let made = made(&order).expect("the rows agree");
    assert!(too_wide(&made[0], 0).is_empty());
    assert!(!too_wide(&made[0], 1).is_empty());
}

#[test]
fn on_every_case_a_wider_window_breaks_some_link() {
    for case in everything() {
        let order = case.order();
        let mut seen = super::toml_text::Order(7);
        let found = (0..400).any(|_| {
            let draw: Vec<i64> = (0..31).map(|_| 1000 * seen.below(2) as i64).collect();
            !broken(&order, &draw, 100_000).0.is_empty()
        });
        assert!(found, "{}", case.slug);
    }
}

#[test]
fn the_planned_place_lies_in_its_window() {
    for case in everything() {
        let order = case.order();
        for made in made(&order).expect("the rows agree") {
            for cut in &made.cutback.cuts {
                let planned = cut.nominal.zip(cut.window).into_iter();
                let rungs = cut
                    .ladder
                    .iter()
                    .filter_map(|r| r.window.map(|w| (r.nominal, w)));
                let all: Vec<(Station, Window)> = planned.chain(rungs).collect();
                assert!(
                    all.iter().all(|(at, window)| window.contains(*at)),
                    "{} {:?}",
                    case.slug,
                    cut.plane
                );
            }
        }
    }
}
