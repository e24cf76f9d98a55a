//! Flaw: the reason why a drawing is not a section, with names and places.
//!
//! **Invariants.** Indices count from 0, as in the outline; people read numbers from 1, and tags and names.
//! Places are in metres here and in millimetres in messages.

use super::{Outline, Point};
use std::fmt;

/// A curve by its index, and the tag that people know it by.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct CurveName {
    /// Index into [`super::Outline::curves`], from 0.
    pub index: usize,
    /// Its tag.
    pub tag: String,
}

impl fmt::Display for CurveName {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "curve {} ({})",
            self.index.saturating_add(1),
            shown(&self.tag)
        )
    }
}

/// A region by its index, and its name.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct RegionName {
    /// Index into [`super::Outline::regions`], from 0.
    pub index: usize,
    /// Its name.
    pub name: String,
}

impl fmt::Display for RegionName {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "region \"{}\"", shown(&self.name))
    }
}

/// Name of the curve with this index: index and tag.
pub(super) fn curve_name(outline: &Outline, index: usize) -> CurveName {
    let tag = outline.curves.get(index).map(|curve| curve.tag.clone());
    CurveName {
        index,
        tag: tag.unwrap_or_default(),
    }
}

/// Name of the region with this index: index and name.
pub(super) fn region_name(outline: &Outline, index: usize) -> RegionName {
    let name = outline.regions.get(index).map(|region| region.name.clone());
    RegionName {
        index,
        name: name.unwrap_or_default(),
    }
}

/// A name on one line, cut so that the rest of the message has room.
fn shown(name: &str) -> String {
    const LENGTH_MOST: usize = 60;
    let mut short: String = name
        .chars()
        .take(LENGTH_MOST)
        .flat_map(char::escape_debug)
        .collect();
    if name.chars().count() > LENGTH_MOST {
        short.push('…');
    }
    short
}

/// A number of metres as millimetres, to 1e-7 mm.
///
/// ```
/// use jointwright_numerics::outline::mm;
/// assert_eq!(mm(0.0111), "11.1");
/// assert_eq!(mm(-1.5e-9), "-0.0000015");
/// ```
pub fn mm(metres: f64) -> String {
    let value = metres * 1e3;
    if !value.is_finite() || value.abs() >= 1e9 {
        return format!("{value:e}");
    }
    let text = format!("{value:.7}");
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if text == "-0" {
        "0".to_owned()
    } else {
        text.to_owned()
    }
}

/// A place in words: (r, z) in millimetres.
///
/// ```
/// use jointwright_numerics::outline::{Point, place_mm};
/// assert_eq!(place_mm(Point::new(0.0111, 0.073)), "(11.1, 73) mm");
/// ```
pub fn place_mm(place: Point) -> String {
    format!("({}, {}) mm", mm(place.r), mm(place.z))
}

/// Entity of an outline that has a flaw, by which the reader of the drawing finds it there.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Entity {
    /// A point, by its index.
    Point(usize),
    /// A curve, by its index.
    Curve(usize),
    /// A region, by its index.
    Region(usize),
}

/// Reason why an outline is not a section.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum Flaw {
    /// A coordinate is not finite.
    #[error("point {index} of the outline, numbered from 0, is not at finite coordinates")]
    NotFinite {
        /// Index of the point.
        index: usize,
    },
    /// A curve names a point that does not exist.
    #[error("{curve} names point {point}, but there are {n_points} points, numbered from 0")]
    NoSuchPoint {
        /// The curve.
        curve: CurveName,
        /// The point that it names.
        point: usize,
        /// Number of points.
        n_points: usize,
    },
    /// A curve reaches beyond the axis of rotation.
    #[error("{curve} reaches to r = {} mm at {}; r is the distance from the axis and never negative", mm(at.r), place_mm(*at))]
    BeyondAxis {
        /// The curve.
        curve: CurveName,
        /// Its place farthest beyond the axis, m.
        at: Point,
    },
    /// A curve begins and ends at the same place.
    #[error("{curve} has no length: it begins and ends at {}", place_mm(*at))]
    NoLength {
        /// The curve.
        curve: CurveName,
        /// That place, m.
        at: Point,
    },
    /// The centre of an arc is not finite, or lies at an end.
    #[error("{curve} is an arc whose centre {} says no circle through its ends", place_mm(*center))]
    NoCircle {
        /// The curve.
        curve: CurveName,
        /// The centre as given, m.
        center: Point,
    },
    /// The ends of an arc do not lie on one circle about its centre.
    #[error(
        "{curve} is an arc about {}, but its ends lie {} mm and {} mm from there; they must be equal to 0.000001 mm",
        place_mm(*center), mm(radii[0]), mm(radii[1])
    )]
    OffCircle {
        /// The curve.
        curve: CurveName,
        /// Its centre, m.
        center: Point,
        /// Distances of its ends from the centre, m.
        radii: [f64; 2],
    },
    /// An arc is half a turn, so its centre does not tell which of two arcs is meant.
    #[error("{curve} is an arc of half a turn from {} to {}; its centre {} does not say which of the two halves is meant, so it needs a point between", place_mm(*from), place_mm(*to), place_mm(*center))]
    HalfTurn {
        /// The curve.
        curve: CurveName,
        /// One end, m.
        from: Point,
        /// The other end, m.
        to: Point,
        /// Its centre, m.
        center: Point,
    },
    /// Two points lie at one place, and each is an end of a curve.
    #[error("{first} and {second} end at two different points, {} and {} (numbered from 0), at the same place {}: they are not glued; curves that meet share a point", points[0], points[1], place_mm(*at))]
    Unglued {
        /// A curve that ends at one of the points.
        first: CurveName,
        /// A curve that ends at the other.
        second: CurveName,
        /// Indices of the points.
        points: [usize; 2],
        /// That place, m.
        at: Point,
    },
    /// A curve ends within another.
    #[error("{curve} ends at {} in the middle of {on}: they are not glued; {on} must be divided there, so that both share the point", place_mm(*at))]
    EndsWithin {
        /// The curve that ends.
        curve: CurveName,
        /// The curve on which it ends.
        on: CurveName,
        /// Place of that end, m.
        at: Point,
    },
    /// Two curves cross.
    #[error("{first} and {second} cross at {}", place_mm(*at))]
    Cross {
        /// One curve.
        first: CurveName,
        /// The other curve.
        second: CurveName,
        /// Place of the crossing, m.
        at: Point,
    },
    /// Two curves touch away from their ends.
    #[error("{first} and {second} touch at {}, where neither ends; both need a point there, and share it", place_mm(*at))]
    Touch {
        /// One curve.
        first: CurveName,
        /// The other curve.
        second: CurveName,
        /// Place of the contact, m.
        at: Point,
    },
    /// One curve lies on another.
    #[error("{first} and {second} lie on each other from {} to {}: they are not glued; neighbours share one curve", place_mm(*from), place_mm(*to))]
    Doubled {
        /// One curve.
        first: CurveName,
        /// The other curve.
        second: CurveName,
        /// Place where the overlap begins, m.
        from: Point,
        /// Place where the overlap ends, m.
        to: Point,
    },
    /// There are so many contacts that the search ended.
    #[error(
        "from {curve} on, no more curves were compared: {n_found} crossings and other contacts are enough for one reading"
    )]
    TooMany {
        /// The curve at which the search ended.
        curve: CurveName,
        /// Number of contacts found by then.
        n_found: usize,
    },
    /// A curve bounds no region.
    #[error("{curve} belongs to no region")]
    Stray {
        /// The curve.
        curve: CurveName,
    },
    /// Two regions lie on the same side of a curve.
    #[error("{curve} has both {first} and {second} on one side, so that these regions overlap")]
    SameSide {
        /// The curve.
        curve: CurveName,
        /// One region.
        first: RegionName,
        /// The other region.
        second: RegionName,
    },
    /// The loops of more than two regions run along a curve.
    #[error(
        "{curve} bounds {n_regions} regions, {first} and {second} among them; a curve has two sides"
    )]
    MoreThanTwo {
        /// The curve.
        curve: CurveName,
        /// Number of regions whose loops run along it.
        n_regions: usize,
        /// One of these regions.
        first: RegionName,
        /// Another of these regions.
        second: RegionName,
    },
    /// A region has no curves.
    #[error("the boundary of {region} is empty; it needs a closed loop of curves")]
    EmptyLoop {
        /// The region.
        region: RegionName,
    },
    /// A region names a curve that does not exist.
    #[error("{region} names curve {}, but there are {n_curves} curves, numbered from 1", curve_index.saturating_add(1))]
    NoSuchCurve {
        /// The region.
        region: RegionName,
        /// Index of the curve that it names, from 0.
        curve_index: usize,
        /// Number of curves.
        n_curves: usize,
    },
    /// A loop has a gap at the end of a curve.
    #[error("the boundary of {region} is not closed: {first} ends at {}, but {second}, which is next, begins at {}{}", place_mm(*ends), place_mm(*begins), if *fits_reversed { "; run the other way it would fit" } else { "" })]
    Open {
        /// The region.
        region: RegionName,
        /// The curve after which the loop has a gap.
        first: CurveName,
        /// The next curve, which begins elsewhere.
        second: CurveName,
        /// Place where the first ends, m.
        ends: Point,
        /// Place where the second begins, m.
        begins: Point,
        /// Whether the second would close the gap if it were reversed.
        fits_reversed: bool,
    },
    /// A loop runs along a curve twice.
    #[error(
        "the boundary of {region} runs {curve} twice; a region has no slits: divide it in two by two curves"
    )]
    RunTwice {
        /// The region.
        region: RegionName,
        /// The curve.
        curve: CurveName,
    },
    /// A loop crosses itself at a point.
    #[error("the boundary of {region} passes through itself at {}", place_mm(*at))]
    PassesThroughItself {
        /// The region.
        region: RegionName,
        /// A curve that ends there.
        curve: CurveName,
        /// Place of that point, m.
        at: Point,
    },
    /// A loop encloses no area.
    #[error("the boundary of {region} encloses no area")]
    NoArea {
        /// The region.
        region: RegionName,
        /// Its first curve.
        curve: CurveName,
    },
    /// Two regions overlap.
    #[error("{first} overlaps {second}: {curve}, of the first, runs through the inside of the second at {}; regions have no holes, so the second must go round it", place_mm(*at))]
    RegionsOverlap {
        /// The region whose boundary runs inside the other region.
        first: RegionName,
        /// The other region.
        second: RegionName,
        /// A curve of the first inside the other.
        curve: CurveName,
        /// A place on that curve, m.
        at: Point,
    },
    /// Two regions have the same name.
    #[error("{first} and the region after it at place {} have the same name", second_index.saturating_add(1))]
    SameName {
        /// The first region with that name.
        first: RegionName,
        /// Index of the other region.
        second_index: usize,
    },
}

impl Flaw {
    /// Entity that has the flaw.
    ///
    /// ```
    /// use jointwright_numerics::outline::{Flaw, Entity};
    /// assert_eq!(Flaw::NotFinite { index: 3 }.entity(), Entity::Point(3));
    /// ```
    pub fn entity(&self) -> Entity {
        match self {
            Flaw::NotFinite { index } => Entity::Point(*index),
            Flaw::NoSuchPoint { curve, .. }
            | Flaw::BeyondAxis { curve, .. }
            | Flaw::NoLength { curve, .. }
            | Flaw::NoCircle { curve, .. }
            | Flaw::OffCircle { curve, .. }
            | Flaw::HalfTurn { curve, .. }
            | Flaw::EndsWithin { curve, .. }
            | Flaw::TooMany { curve, .. }
            | Flaw::Stray { curve }
            | Flaw::SameSide { curve, .. }
            | Flaw::MoreThanTwo { curve, .. } => Entity::Curve(curve.index),
            Flaw::Unglued { first, .. }
            | Flaw::Cross { first, .. }
            | Flaw::Touch { first, .. }
            | Flaw::Doubled { first, .. } => Entity::Curve(first.index),
            Flaw::EmptyLoop { region }
            | Flaw::NoSuchCurve { region, .. }
            | Flaw::Open { region, .. }
            | Flaw::RunTwice { region, .. }
            | Flaw::PassesThroughItself { region, .. }
            | Flaw::NoArea { region, .. } => Entity::Region(region.index),
            Flaw::RegionsOverlap { first, .. } => Entity::Region(first.index),
            Flaw::SameName { second_index, .. } => Entity::Region(*second_index),
        }
    }

    /// The first curve that the flaw names, or `None` if it names none.
    pub(super) fn curve_index(&self) -> Option<usize> {
        match self {
            Flaw::NotFinite { .. }
            | Flaw::EmptyLoop { .. }
            | Flaw::NoSuchCurve { .. }
            | Flaw::SameName { .. } => None,
            Flaw::Open { first, .. } => Some(first.index),
            Flaw::RunTwice { curve, .. }
            | Flaw::PassesThroughItself { curve, .. }
            | Flaw::NoArea { curve, .. }
            | Flaw::RegionsOverlap { curve, .. } => Some(curve.index),
            _ => match self.entity() {
                Entity::Curve(index) => Some(index),
                Entity::Point(_) | Entity::Region(_) => None,
            },
        }
    }
}
