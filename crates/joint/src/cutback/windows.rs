//! Windows: the greatest deviation of each plane from its planned place, if every mark is set off from the conductor end.
//!
//! Instructions measure from many datums; the crew measures from one.
//! Planes held together exactly form a group.
//! A group that a part carries with some play hangs on an anchor: the connector's groups hang on the conductor end, the body's groups on its datum.
//! A link with a tolerance between two anchors, less all play, is shared out between them, so any mixture of marks inside their windows keeps every link inside its own tolerance.
//! The computed windows can only be tighter than the instructions' windows, never wider.
//!
//! Source: `docs/theory/cutback.md`.

use super::links::{Joined, Tolerance};
use crate::plane::{Holder, Plane};
use crate::said::Whose;
use jointwright_units::Station;
use std::collections::BTreeMap;

/// Deviation from the planned place, least and greatest.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Span {
    pub least: Station,
    pub greatest: Station,
}

impl Span {
    pub fn plus(self, other: Span) -> Span {
        Span {
            least: self.least + other.least,
            greatest: self.greatest + other.greatest,
        }
    }

    /// Values in both; `None` if there are none.
    pub fn meet(self, other: Span) -> Option<Span> {
        let least = self.least.max(other.least);
        let greatest = self.greatest.min(other.greatest);
        (least <= greatest).then_some(Span { least, greatest })
    }

    /// Least span that holds both.
    pub fn hull(self, other: Span) -> Span {
        Span {
            least: self.least.min(other.least),
            greatest: self.greatest.max(other.greatest),
        }
    }

    /// Span whose sum with another one is this one.
    pub fn without(self, other: Span) -> Span {
        Span {
            least: self.least - other.least,
            greatest: self.greatest - other.greatest,
        }
    }

    /// The same way, walked from its other end.
    pub fn reversed(self) -> Span {
        Span {
            least: -self.greatest,
            greatest: -self.least,
        }
    }

    fn less(self, other: Span) -> Span {
        Span {
            least: self.least - other.greatest,
            greatest: self.greatest - other.least,
        }
    }
}

/// Deviation of an anchor, as far as it is known.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Deviation {
    /// Within this span, from these sources.
    Within(Span, Vec<Whose>),
    /// Nobody sets a window.
    Unset,
    /// Play uses up the tolerance; names the sources.
    UsedUp(Vec<Whose>),
}

/// Groups of planes, their anchors and their deviations.
#[derive(Clone, Debug)]
pub(super) struct Groups {
    group_of: BTreeMap<Plane, usize>,
    /// Anchor of each group, and the group's play about it.
    carried: Vec<(usize, Span)>,
    /// Deviation of each anchor; zero for the conductor end.
    deviations: Vec<Deviation>,
    /// Move of each anchor's plan into its window.
    shifts: Vec<Station>,
    /// Both sides of each anchor's window, each with its source.
    sides: Vec<Open>,
    /// Tolerance printed in the row that places each anchor, if it prints one.
    printed: Vec<Option<Printed>>,
    /// Rows of each group's own play about its anchor.
    play_of: Vec<Vec<Whose>>,
}

/// Tolerance with which a row places an anchor.
#[derive(Clone, Debug)]
struct Printed {
    width: Station,
    source: Whose,
    /// First plane of the anchor from which it is measured.
    from: Plane,
    /// Rows whose play is taken off the tolerance.
    play: Vec<Whose>,
}

/// A window that is narrower than the row that places the plane prints.
#[derive(Clone, Debug, PartialEq)]
pub struct Narrowed {
    /// Row that prints the window.
    pub paper: Whose,
    /// Printed width.
    pub printed: Station,
    /// Width that is left.
    pub left: Station,
    /// Planes that share the tolerance, because each is set off from the conductor end.
    pub shared_with: Vec<Plane>,
    /// Rows and owners whose own windows or play take the rest.
    pub by: Vec<Whose>,
}

/// A bound that somebody sets on the deviation of a plane from its planned place.
pub(super) struct OwnBound {
    pub plane: Plane,
    pub minus: Station,
    pub plus: Station,
    pub source: Whose,
}

impl Groups {
    /// Groups of the planes, from the links between them and the owner's bounds.
    pub fn new(planes: &[Plane], links: &[Joined], bounds: &[OwnBound]) -> Groups {
        let group_of = rigid_groups(planes, links);
        let carried = carried(&group_of, links);
        let budgets = budgets(&group_of, &carried, links);
        let datum = group_of.get(&Plane::ConductorEnd).copied();
        let mut own = own_windows(carried.len(), datum, &budgets);
        // The owner's windows lie about the planned place that the rows alone give.
        let planned: Vec<Station> = allocate(own.clone(), datum, &budgets)
            .into_iter()
            .map(|open| shift(&closed(open)))
            .collect();
        for bound in bounds {
            let Some(&group) = group_of.get(&bound.plane) else {
                continue;
            };
            let (anchor, play) = carried[group];
            let (about, source) = (planned[anchor], &bound.source);
            own[anchor].lower_greatest(about + bound.plus - play.greatest, false, source);
            own[anchor].raise_least(about - bound.minus - play.least, false, source);
        }
        let sides = allocate(own, datum, &budgets);
        let mut deviations: Vec<Deviation> = sides.iter().cloned().map(closed).collect();
        if let Some(datum) = datum {
            deviations[datum] = Deviation::Within(Span::default(), Vec::new());
        }
        let shifts: Vec<Station> = deviations.iter().map(shift).collect();
        for (deviation, shift) in deviations.iter_mut().zip(&shifts) {
            if let Deviation::Within(span, _) = deviation {
                *span = span.less(Span {
                    least: *shift,
                    greatest: *shift,
                });
            }
        }
        let play_of = play_of(&group_of, &carried, links);
        let printed = printed(&group_of, &carried, links, &play_of);
        Groups {
            group_of,
            carried,
            deviations,
            shifts,
            sides,
            printed,
            play_of,
        }
    }

    /// Narrowing of a plane's window; `None` unless it is narrower than the row that places it prints.
    pub fn narrowed(&self, plane: Plane) -> Option<Narrowed> {
        let group = *self.group_of.get(&plane)?;
        let (anchor, _) = self.carried[group];
        let printed = self.printed[anchor].as_ref()?;
        let Deviation::Within(span, _) = self.window(plane) else {
            return None;
        };
        let left = span.greatest - span.least;
        if left >= printed.width {
            return None;
        }
        let sides = &self.sides[anchor];
        let (mut shared_with, mut by) = (Vec::new(), Vec::new());
        for edge in [&sides.least, &sides.greatest].into_iter().flatten() {
            if edge.source != printed.source {
                by.push(edge.source.clone());
            } else if edge.share {
                shared_with.push(printed.from);
            }
        }
        by.extend(printed.play.iter().cloned());
        by.extend(self.play_of[group].iter().cloned());
        by.sort();
        by.dedup();
        shared_with.dedup();
        Some(Narrowed {
            paper: printed.source.clone(),
            printed: printed.width,
            left,
            shared_with,
            by,
        })
    }

    /// Move of a plane's planned place into its window; zero if it lies inside or has no window.
    pub fn shift(&self, plane: Plane) -> Station {
        self.anchor(plane)
            .map_or(Station::ZERO, |(anchor, _)| self.shifts[anchor])
    }

    /// Window within which the crew sets a plane; whatever the play, all that the plane anchors then stays in its own window.
    pub fn window(&self, plane: Plane) -> Deviation {
        let Some((anchor, play)) = self.anchor(plane) else {
            return Deviation::Unset;
        };
        match &self.deviations[anchor] {
            Deviation::Within(span, whose) => {
                let least = span.least + play.greatest;
                let greatest = span.greatest + play.least;
                if least > greatest {
                    Deviation::UsedUp(whose.clone())
                } else {
                    Deviation::Within(Span { least, greatest }, whose.clone())
                }
            }
            other => other.clone(),
        }
    }

    /// Deviations of two planes: about their common anchor if one anchor carries both, else of each in full; an error names the plane without a deviation.
    pub fn pair(&self, from: Plane, to: Plane) -> Result<(Span, Span), (Plane, &Deviation)> {
        let (Some((a, play_a)), Some((b, play_b))) = (self.anchor(from), self.anchor(to)) else {
            return Err((from, &Deviation::Unset));
        };
        if a == b {
            return Ok((play_a, play_b));
        }
        let whole = |plane: Plane, anchor: usize, play: Span| match &self.deviations[anchor] {
            Deviation::Within(span, _) => Ok(span.plus(play)),
            other => Err((plane, other)),
        };
        Ok((whole(from, a, play_a)?, whole(to, b, play_b)?))
    }

    /// Whether two planes are held together exactly.
    pub fn are_rigid(&self, a: Plane, b: Plane) -> bool {
        self.group_of.contains_key(&a) && self.group_of.get(&a) == self.group_of.get(&b)
    }

    /// Anchor that carries a plane; `None` if no row places it.
    pub fn anchor_of(&self, plane: Plane) -> Option<usize> {
        self.anchor(plane).map(|(anchor, _)| anchor)
    }

    /// Play of a plane about its anchor.
    pub fn play_of_plane(&self, plane: Plane) -> Span {
        let play = self.anchor(plane).map(|(_, play)| play);
        play.unwrap_or_default()
    }

    /// Deviation of a plane's anchor, from that of the plane.
    pub fn anchor_off(&self, plane: Plane, off: Span) -> Span {
        off.less(self.play_of_plane(plane))
    }

    /// Sets the deviation of an anchor.
    pub fn set(&mut self, anchor: usize, off: Span) {
        self.deviations[anchor] = Deviation::Within(off, Vec::new());
    }

    /// Sets the play of a plane about its anchor; a plane farther along the same part moves with it.
    pub fn set_play(&mut self, plane: Plane, play: Span) {
        let Some(group) = self.group_of.get(&plane).copied() else {
            return;
        };
        let (anchor, before) = self.carried[group];
        self.carried[group].1 = play;
        for (other, at) in &self.group_of {
            let moves = plane.holder() == Holder::Crew && *other > plane;
            if *at == group || self.carried[*at].0 != anchor {
                continue;
            }
            if moves && plane.is_of_one_piece_with(*other) {
                let beside = &mut self.carried[*at].1;
                let length = Span {
                    least: (beside.least - before.least).min(Station::ZERO),
                    greatest: (beside.greatest - before.greatest).max(Station::ZERO),
                };
                *beside = play.plus(length);
            }
        }
    }

    /// Adds a plane that no row places, with a deviation of its own.
    pub fn add(&mut self, plane: Plane, off: Span) {
        let group = self.carried.len();
        self.group_of.insert(plane, group);
        self.carried.push((group, Span::default()));
        self.deviations.push(Deviation::Within(off, Vec::new()));
        self.shifts.push(Station::ZERO);
        self.sides.push(Open::default());
        self.printed.push(None);
        self.play_of.push(Vec::new());
    }

    fn anchor(&self, plane: Plane) -> Option<(usize, Span)> {
        self.group_of.get(&plane).map(|group| self.carried[*group])
    }
}

/// Deviation inside a window that is nearest to zero.
fn shift(deviation: &Deviation) -> Station {
    match deviation {
        Deviation::Within(span, _) => Station::ZERO.max(span.least).min(span.greatest),
        _ => Station::ZERO,
    }
}

/// Planes held together exactly, numbered in the order of their first plane; the conductor end's number is 0.
fn rigid_groups(planes: &[Plane], links: &[Joined]) -> BTreeMap<Plane, usize> {
    let mut root: BTreeMap<Plane, Plane> = planes.iter().map(|p| (*p, *p)).collect();
    let find = |root: &BTreeMap<Plane, Plane>, plane: Plane| {
        let mut plane = plane;
        while root[&plane] != plane {
            plane = root[&plane];
        }
        plane
    };
    for link in links {
        if is_rigid(link) && root.contains_key(&link.from) && root.contains_key(&link.to) {
            let (a, b) = (find(&root, link.from), find(&root, link.to));
            // The plane nearer the datum is the root, so the numbering does not depend on the order of links.
            root.insert(a.max(b), a.min(b));
        }
    }
    let mut numbers: BTreeMap<Plane, usize> = BTreeMap::new();
    let roots: Vec<(Plane, Plane)> = root.keys().map(|p| (*p, find(&root, *p))).collect();
    for (_, root) in &roots {
        let next = numbers.len();
        numbers.entry(*root).or_insert(next);
    }
    roots
        .into_iter()
        .map(|(plane, root)| (plane, numbers[&root]))
        .collect()
}

/// Whether a link leads from a plane to a plane that hangs on it: both sit on one piece, or the crew sets the second off from the first.
fn leads(from: Plane, to: Plane) -> bool {
    from.is_of_one_piece_with(to) || to.is_set_off_from(from)
}

/// Whether one plane of a link hangs on the other, so that only play changes the distance between them.
fn is_of_one_part(link: &Joined) -> bool {
    leads(link.from, link.to) || leads(link.to, link.from)
}

fn is_rigid(link: &Joined) -> bool {
    match link.tolerance {
        Tolerance::Exact => true,
        Tolerance::Window(minus, plus) => {
            is_of_one_part(link) && minus == Station::ZERO && plus == Station::ZERO
        }
        Tolerance::Unstated => false,
    }
}

/// Anchor of each group, and the group's play about it: sum of the links of one part from the part's first plane.
///
/// The first plane of the connector is the conductor end; the first plane of the body is its centre or seat.
/// If several ways lead to a group, all of them hold, so the tightest bounds count.
fn carried(group_of: &BTreeMap<Plane, usize>, links: &[Joined]) -> Vec<(usize, Span)> {
    let n_groups = group_of.values().max().map_or(0, |g| g + 1);
    let mut carried: Vec<Option<(usize, Span)>> = vec![None; n_groups];
    // In the order of planes, so that a part's first plane anchors all planes that its links reach.
    for &group in group_of.values() {
        if carried[group].is_none() {
            for (reached, play) in play_about(group, n_groups, group_of, links) {
                // A group that hangs on two edges hangs on the edge nearer the datum; the other edge bounds it.
                carried[reached].get_or_insert((group, play));
            }
        }
    }
    let whole = |(group, c): (usize, Option<(usize, Span)>)| c.unwrap_or((group, Span::default()));
    carried.into_iter().enumerate().map(whole).collect()
}

/// Groups that links of one part join to an anchor, each with its play: shortest ways, upward and downward.
fn play_about(
    anchor: usize,
    n_groups: usize,
    group_of: &BTreeMap<Plane, usize>,
    links: &[Joined],
) -> Vec<(usize, Span)> {
    let mut reach: Vec<Option<(Station, Station)>> = vec![None; n_groups];
    reach[anchor] = Some((Station::ZERO, Station::ZERO));
    for _ in 0..n_groups {
        for link in links.iter().filter(|l| is_of_one_part(l)) {
            let ends = group_of.get(&link.from).zip(group_of.get(&link.to));
            if let (Some((&a, &b)), Tolerance::Window(minus, plus)) = (ends, link.tolerance) {
                if leads(link.from, link.to) {
                    shorten(&mut reach, a, b, minus, plus);
                }
                if leads(link.to, link.from) {
                    shorten(&mut reach, b, a, plus, minus);
                }
            }
        }
    }
    let span = |(group, reach): (usize, Option<(Station, Station)>)| {
        let (down, up) = reach?;
        let span = Span {
            least: -down,
            greatest: up,
        };
        Some((group, span))
    };
    reach.into_iter().enumerate().filter_map(span).collect()
}

/// Shortens the ways down and up to group `b` by way of group `a`.
fn shorten(
    reach: &mut [Option<(Station, Station)>],
    a: usize,
    b: usize,
    down: Station,
    up: Station,
) {
    let Some((down_a, up_a)) = reach[a] else {
        return;
    };
    let by_way = (down_a + down, up_a + up);
    let (down_b, up_b) = reach[b].unwrap_or(by_way);
    reach[b] = Some((down_b.min(by_way.0), up_b.min(by_way.1)));
}

/// Rows of each group's play about its anchor; empty for a group that is its own anchor or is carried exactly.
fn play_of(
    group_of: &BTreeMap<Plane, usize>,
    carried: &[(usize, Span)],
    links: &[Joined],
) -> Vec<Vec<Whose>> {
    let of_group = |(anchor, play): &(usize, Span)| {
        if *play == Span::default() {
            return Vec::new();
        }
        let has_play = |link: &&Joined| match link.tolerance {
            Tolerance::Window(minus, plus) => minus != Station::ZERO || plus != Station::ZERO,
            _ => false,
        };
        let is_of_anchor = |link: &&Joined| {
            let anchors = [link.from, link.to].map(|p| group_of.get(&p).map(|g| carried[*g].0));
            is_of_one_part(link) && anchors == [Some(*anchor); 2]
        };
        let rows = links.iter().filter(has_play).filter(is_of_anchor);
        rows.map(|link| link.source.clone()).collect()
    };
    carried.iter().map(of_group).collect()
}

/// Tolerance printed in the row that places each anchor: the first link with a tolerance that ends on it.
fn printed(
    group_of: &BTreeMap<Plane, usize>,
    carried: &[(usize, Span)],
    links: &[Joined],
    play_of: &[Vec<Whose>],
) -> Vec<Option<Printed>> {
    let mut all: Vec<Option<Printed>> = vec![None; carried.len()];
    for link in links {
        let ends = group_of.get(&link.from).zip(group_of.get(&link.to));
        let (Some((&from, &to)), Tolerance::Window(minus, plus)) = (ends, link.tolerance) else {
            continue;
        };
        let (a, b) = (carried[from].0, carried[to].0);
        if a == b || all[b].is_some() {
            continue;
        }
        all[b] = Some(Printed {
            width: minus + plus,
            source: link.source.clone(),
            from: link.from,
            play: play_of[from].iter().chain(&play_of[to]).cloned().collect(),
        });
    }
    all
}

/// Part of a link's tolerance that is left for two anchors: deviation(b) - deviation(a) within [-minus, plus], all play taken off.
struct Budget<'l> {
    a: usize,
    b: usize,
    minus: Station,
    plus: Station,
    source: &'l Whose,
}

fn budgets<'l>(
    group_of: &BTreeMap<Plane, usize>,
    carried: &[(usize, Span)],
    links: &'l [Joined],
) -> Vec<Budget<'l>> {
    let budget = |link: &'l Joined| {
        let Tolerance::Window(minus, plus) = link.tolerance else {
            return None;
        };
        let (a, play_a) = carried[*group_of.get(&link.from)?];
        let (b, play_b) = carried[*group_of.get(&link.to)?];
        (a != b).then_some(Budget {
            a,
            b,
            minus: minus - play_a.greatest + play_b.least,
            plus: plus - play_b.greatest + play_a.least,
            source: &link.source,
        })
    };
    links.iter().filter_map(budget).collect()
}

/// An interval of deviation that may be open on either side.
#[derive(Clone, Debug, Default)]
struct Open {
    least: Option<Edge>,
    greatest: Option<Edge>,
}

/// One side of a window, with its source.
#[derive(Clone, Debug)]
struct Edge {
    at: Station,
    /// Whether it is a share of a link between two placed groups; a source of its own is named first.
    share: bool,
    source: Whose,
}

impl Edge {
    /// Whether this edge is named rather than the other, if both lie at the same place.
    fn is_named_before(&self, other: &Edge) -> bool {
        (self.share, &self.source) < (other.share, &other.source)
    }
}

impl Open {
    fn raise_least(&mut self, at: Station, share: bool, source: &Whose) {
        let edge = Edge {
            at,
            share,
            source: source.clone(),
        };
        if self
            .least
            .as_ref()
            .is_none_or(|e| at > e.at || (at == e.at && edge.is_named_before(e)))
        {
            self.least = Some(edge);
        }
    }

    fn lower_greatest(&mut self, at: Station, share: bool, source: &Whose) {
        let edge = Edge {
            at,
            share,
            source: source.clone(),
        };
        if self
            .greatest
            .as_ref()
            .is_none_or(|e| at < e.at || (at == e.at && edge.is_named_before(e)))
        {
            self.greatest = Some(edge);
        }
    }
}

/// Windows of the anchors with respect to the conductor end.
fn own_windows(n_groups: usize, datum: Option<usize>, budgets: &[Budget<'_>]) -> Vec<Open> {
    let mut own = vec![Open::default(); n_groups];
    for budget in budgets {
        if Some(budget.a) == datum {
            own[budget.b].lower_greatest(budget.plus, false, budget.source);
            own[budget.b].raise_least(-budget.minus, false, budget.source);
        } else if Some(budget.b) == datum {
            own[budget.a].lower_greatest(budget.minus, false, budget.source);
            own[budget.a].raise_least(-budget.plus, false, budget.source);
        }
    }
    own
}

/// Shares out the budgets between anchors that the crew places.
fn allocate(own: Vec<Open>, datum: Option<usize>, budgets: &[Budget<'_>]) -> Vec<Open> {
    let mut shared = own.clone();
    let up = |open: &Open| open.greatest.as_ref().map(|e| e.at);
    let down = |open: &Open| open.least.as_ref().map(|e| -e.at);
    for budget in budgets {
        let (a, b) = (budget.a, budget.b);
        if Some(a) == datum || Some(b) == datum {
            continue;
        }
        let (up_b, down_a) = split(budget.plus, up(&own[b]), down(&own[a]));
        let (up_a, down_b) = split(budget.minus, up(&own[a]), down(&own[b]));
        shared[b].lower_greatest(up_b, true, budget.source);
        shared[a].raise_least(-down_a, true, budget.source);
        shared[a].lower_greatest(up_a, true, budget.source);
        shared[b].raise_least(-down_b, true, budget.source);
    }
    shared
}

fn closed(open: Open) -> Deviation {
    let (Some(least), Some(greatest)) = (open.least, open.greatest) else {
        return Deviation::Unset;
    };
    let mut whose = vec![least.source, greatest.source];
    whose.sort();
    whose.dedup();
    if least.at > greatest.at {
        return Deviation::UsedUp(whose);
    }
    let span = Span {
        least: least.at,
        greatest: greatest.at,
    };
    Deviation::Within(span, whose)
}

/// Splits a budget between two deviations: each keeps its own part if that leaves the other enough, and at least half otherwise.
fn split(budget: Station, first: Option<Station>, second: Option<Station>) -> (Station, Station) {
    // Rounds the half down, so that both halves together never exceed the budget.
    let half = Station::from_half_nm(budget.half_nm().div_euclid(2));
    let part = |own: Option<Station>, other: Option<Station>| {
        let left = other.map_or(half, |other| half.max(budget - other));
        own.map_or(left, |own| own.min(left))
    };
    (part(first, second), part(second, first))
}

#[cfg(test)]
mod tests;
