//! Test of the windows' law: any mixture inside them keeps every link inside its own tolerance.

use super::*;
use proptest::prelude::*;

fn s(x: i64) -> Station {
    Station::from_half_nm(x)
}

fn link(from: Plane, to: Plane, minus: i64, plus: i64) -> Joined {
    Joined {
        from,
        to,
        distance: s(1000),
        tolerance: Tolerance::Window(s(minus), s(plus)),
        source: Whose::Person(format!("{} to {}", from.name(), to.name())),
        place: crate::form::Span::default(),
    }
}

fn groups(links: &[Joined], bounds: &[OwnBound]) -> Groups {
    let planes: Vec<Plane> = Plane::ALL
        .iter()
        .copied()
        .filter(|p| *p == Plane::ConductorEnd || links.iter().any(|l| l.from == *p || l.to == *p))
        .collect();
    Groups::new(&planes, links, bounds)
}

#[track_caller]
fn check_split(budget: i64, first: Option<i64>, second: Option<i64>, expected: (i64, i64)) {
    let (a, b) = split(s(budget), first.map(s), second.map(s));
    assert_eq!((a.half_nm(), b.half_nm()), expected);
    assert!(a.half_nm() + b.half_nm() <= budget, "the budget is kept");
}

#[track_caller]
fn check_window(groups: &Groups, plane: Plane, expected: (i64, i64)) {
    match groups.window(plane) {
        Deviation::Within(span, _) => {
            assert_eq!((span.least.half_nm(), span.greatest.half_nm()), expected);
        }
        other => panic!("{} has no window: {other:?}", plane.name()),
    }
}

#[test]
fn two_free_planes_share_a_tolerance_in_halves() {
    check_split(10, None, None, (5, 5));
    check_split(11, None, None, (5, 5));
}

#[test]
fn a_plane_that_needs_little_leaves_the_rest() {
    check_split(10, Some(2), None, (2, 8));
    check_split(10, None, Some(2), (8, 2));
    check_split(10, Some(2), Some(3), (2, 3));
}

#[test]
fn two_planes_that_want_too_much_get_half_each() {
    check_split(10, Some(9), Some(9), (5, 5));
    check_split(10, Some(9), None, (5, 5));
}

#[test]
fn one_wide_and_one_narrow_get_the_whole_together() {
    check_split(10, Some(9), Some(3), (7, 3));
}

#[test]
fn a_cut_from_the_conductor_end_has_the_window_of_its_link() {
    let groups = groups(&[link(Plane::ConductorEnd, Plane::ScreenEdge, 3, 5)], &[]);
    check_window(&groups, Plane::ScreenEdge, (-3, 5));
}

#[test]
fn two_cuts_tied_without_tolerance_are_each_cut_exactly() {
    let links = [
        link(Plane::ConductorEnd, Plane::ScreenEdge, 6, 6),
        link(Plane::ScreenEdge, Plane::ShieldEdge, 0, 0),
    ];
    check_window(&groups(&links, &[]), Plane::ScreenEdge, (0, 0));
    check_window(&groups(&links, &[]), Plane::ShieldEdge, (0, 0));
}

#[test]
fn play_of_the_moulding_does_not_tighten_where_the_body_sits_but_shows_in_what_it_covers() {
    let links = [
        link(Plane::ConductorEnd, Plane::BodyCentre, 3, 3),
        link(Plane::BodyCentre, Plane::ElectrodeEnd, 2, 1),
        link(Plane::ConductorEnd, Plane::InsulationEnd, 1, 1),
    ];
    let groups = groups(&links, &[]);
    check_window(&groups, Plane::BodyCentre, (-3, 3));
    let (insulation, electrode) = groups
        .pair(Plane::InsulationEnd, Plane::ElectrodeEnd)
        .unwrap();
    assert_eq!((insulation.least, insulation.greatest), (s(-1), s(1)));
    assert_eq!((electrode.least, electrode.greatest), (s(-5), s(4)));
}

#[test]
fn where_two_ways_lead_to_a_plane_of_a_part_the_tightest_bounds_count() {
    let links = [
        link(Plane::ConductorEnd, Plane::BodyCentre, 0, 0),
        link(Plane::BodyCentre, Plane::ElectrodeEnd, 9, 1),
        link(Plane::BodyCentre, Plane::BodyEnd, 2, 2),
        link(Plane::ElectrodeEnd, Plane::BodyEnd, 1, 1),
    ];
    let turned: Vec<Joined> = links.iter().rev().cloned().collect();
    for links in [&links[..], &turned] {
        let groups = groups(links, &[]);
        let (_, electrode) = groups
            .pair(Plane::ConductorEnd, Plane::ElectrodeEnd)
            .unwrap();
        assert_eq!((electrode.least, electrode.greatest), (s(-3), s(1)));
    }
}

#[test]
fn play_larger_than_the_tolerance_leaves_nothing() {
    let links = [
        link(Plane::ConnectorMouthBefore, Plane::ConnectorMouth, 4, 4),
        Joined {
            tolerance: Tolerance::Exact,
            ..link(Plane::ConductorEnd, Plane::ConnectorMouthBefore, 0, 0)
        },
        link(Plane::ConnectorMouth, Plane::InsulationEnd, 0, 6),
    ];
    let groups = groups(&links, &[]);
    assert!(matches!(
        groups.window(Plane::InsulationEnd),
        Deviation::UsedUp(_)
    ));
}

#[test]
fn the_owner_can_tighten_and_cannot_widen() {
    let links = [link(Plane::ConductorEnd, Plane::JacketEdge, 6, 6)];
    let owner = |minus, plus| OwnBound {
        plane: Plane::JacketEdge,
        minus: s(minus),
        plus: s(plus),
        source: Whose::Person("owner".to_owned()),
    };
    check_window(&groups(&links, &[owner(2, 9)]), Plane::JacketEdge, (-2, 6));
}

/// Links over few planes, all with tolerances; a loop of links serves here as well as a tree, because only deviations count.
fn random_links() -> impl Strategy<Value = Vec<Joined>> {
    let pair = (0..PLANES.len(), 0..PLANES.len(), 0i64..40, 0i64..40);
    proptest::collection::vec(pair, 1..12).prop_map(|rows| {
        let rows = rows.into_iter().filter(|(a, b, ..)| a != b);
        rows.map(|(a, b, minus, plus)| link(PLANES[a.min(b)], PLANES[a.max(b)], minus, plus))
            .collect()
    })
}

const PLANES: &[Plane] = &[
    Plane::ConductorEnd,
    Plane::ConnectorCentre,
    Plane::ConnectorMouth,
    Plane::InsulationEnd,
    Plane::ScreenEdge,
    Plane::ShieldEdge,
    Plane::JacketEdge,
    Plane::BodyCentre,
    Plane::ElectrodeEnd,
    Plane::BodyEnd,
];

/// Number of links between two anchors that a mixture of marks inside the windows can break, `loosened` wider than printed.
fn broken(links: &[Joined], loosened: i64) -> usize {
    let groups = groups(links, &[]);
    let breaks = |link: &&Joined| {
        let Tolerance::Window(minus, plus) = link.tolerance else {
            return false;
        };
        let (Some(a), Some(b)) = (groups.anchor(link.from), groups.anchor(link.to)) else {
            return false;
        };
        // Within one part the link is the play itself.
        let Ok((from, to)) = groups.pair(link.from, link.to) else {
            return false;
        };
        let moved = |anchor: usize| groups.shifts[anchor];
        let up = to.greatest + moved(b.0) - from.least - moved(a.0) + s(loosened);
        let down = to.least + moved(b.0) - from.greatest - moved(a.0) - s(loosened);
        a.0 != b.0 && (up > plus || down < -minus)
    };
    links.iter().filter(breaks).count()
}

proptest! {
    #[test]
    fn any_mixture_inside_the_windows_keeps_every_link(links in random_links()) {
        prop_assert_eq!(broken(&links, 0), 0);
    }

    #[test]
    fn the_order_of_links_changes_nothing(links in random_links()) {
        let turned: Vec<Joined> = links.iter().rev().cloned().collect();
        let (one, other) = (groups(&links, &[]), groups(&turned, &[]));
        for plane in PLANES.iter().filter(|p| links.iter().any(|l| l.from == **p || l.to == **p)) {
            prop_assert_eq!(one.window(*plane), other.window(*plane));
        }
    }
}

#[test]
fn a_window_wider_than_printed_breaks_a_link() {
    let links = [
        link(Plane::ConductorEnd, Plane::ScreenEdge, 3, 3),
        link(Plane::ScreenEdge, Plane::ShieldEdge, 6, 6),
    ];
    assert_eq!(broken(&links, 0), 0);
    assert!(broken(&links, 1) > 0);
}
