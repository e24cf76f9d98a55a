//! Regions: are their loops closed, and are they disjoint?

use super::contact::TOUCH;
use super::flaw::{Flaw, curve_name, region_name};
use super::piece::{Extent, Piece};
use super::places::Places;
use super::winding::{Run, area, winding};
use super::{Outline, Side};
use std::collections::{BTreeMap, BTreeSet};

/// A region whose loop has no flaw of its own.
struct Loop<'a> {
    region_index: usize,
    runs: Vec<Run<'a>>,
    sides: &'a [Side],
    /// Whether the loop runs counter-clockwise.
    is_left: bool,
    extent: Extent,
}

/// Judges every region, and every curve by the regions that it bounds.
pub(super) fn check(
    outline: &Outline,
    pieces: &[Option<Piece>],
    places: &Places,
    touched: &BTreeSet<usize>,
    flaws: &mut Vec<Flaw>,
) {
    let mut loops = Vec::new();
    for region_index in 0..outline.regions.len() {
        let n_before = flaws.len();
        let found = closed_loop(outline, pieces, places, touched, region_index, flaws);
        if flaws.len() == n_before {
            loops.extend(found);
        }
    }
    same_names(outline, flaws);
    stray(outline, flaws);
    let crossed: BTreeSet<usize> = loops
        .iter()
        .filter(|of| meets(of, touched))
        .map(|of| of.region_index)
        .collect();
    let overlapping = sides(outline, &loops, &crossed, flaws);
    for (at, one) in loops.iter().enumerate() {
        for other in &loops[at + 1..] {
            let pair = [one.region_index, other.region_index];
            let is_crossed = pair.iter().any(|region| crossed.contains(region));
            if !is_crossed && !overlapping.contains(&pair) && one.extent.meets(&other.extent, 0.0) {
                let found = inside(outline, one, other).or_else(|| inside(outline, other, one));
                flaws.extend(found);
            }
        }
    }
}

fn meets(of: &Loop<'_>, touched: &BTreeSet<usize>) -> bool {
    of.sides.iter().any(|s| touched.contains(&s.curve_index))
}

fn closed_loop<'a>(
    outline: &'a Outline,
    pieces: &'a [Option<Piece>],
    places: &Places,
    touched: &BTreeSet<usize>,
    region_index: usize,
    flaws: &mut Vec<Flaw>,
) -> Option<Loop<'a>> {
    let sides = outline.regions[region_index].boundary.as_slice();
    let region = || region_name(outline, region_index);
    if sides.is_empty() {
        flaws.push(Flaw::EmptyLoop { region: region() });
        return None;
    }
    let mut seen = BTreeMap::new();
    for side in sides {
        if side.curve_index >= outline.curves.len() {
            flaws.push(Flaw::NoSuchCurve {
                region: region(),
                curve_index: side.curve_index,
                n_curves: outline.curves.len(),
            });
        } else {
            let n_runs = seen.entry(side.curve_index).or_insert(0_usize);
            *n_runs += 1;
            if *n_runs == 2 {
                flaws.push(Flaw::RunTwice {
                    region: region(),
                    curve: curve_name(outline, side.curve_index),
                });
            }
        }
    }
    let runs: Option<Vec<Run<'a>>> = sides
        .iter()
        .map(|side| Some((pieces.get(side.curve_index)?.as_ref()?, side.is_reversed)))
        .collect();
    // A curve with a flaw of its own has already been named.
    let runs = runs?;
    let n_before = flaws.len();
    open(outline, places, region_index, flaws);
    if flaws.len() > n_before || seen.values().any(|n_runs| *n_runs > 1) {
        return None;
    }
    let whole = area(runs.iter().copied());
    let found = Loop {
        region_index,
        sides,
        is_left: whole > 0.0,
        extent: extent(&runs),
        runs,
    };
    if !meets(&found, touched) {
        flaws.extend(passes_through_itself(outline, places, &found));
    }
    let length: f64 = found.runs.iter().map(|(piece, _)| piece.length()).sum();
    if whole.abs() <= TOUCH * length && !meets(&found, touched) {
        flaws.push(Flaw::NoArea {
            region: region(),
            curve: curve_name(outline, sides[0].curve_index),
        });
    }
    Some(found)
}

fn extent(runs: &[Run<'_>]) -> Extent {
    let mut whole = runs[0].0.extent();
    for (piece, _) in runs {
        let next = piece.extent();
        whole.r = [whole.r[0].min(next.r[0]), whole.r[1].max(next.r[1])];
        whole.z = [whole.z[0].min(next.z[0]), whole.z[1].max(next.z[1])];
    }
    whole
}

/// Points at which a side begins and ends, in the direction of the loop.
fn ends(outline: &Outline, side: Side) -> [usize; 2] {
    let curve = &outline.curves[side.curve_index];
    if side.is_reversed {
        [curve.to, curve.from]
    } else {
        [curve.from, curve.to]
    }
}

fn open(outline: &Outline, places: &Places, region_index: usize, flaws: &mut Vec<Flaw>) {
    let sides = &outline.regions[region_index].boundary;
    for (at, side) in sides.iter().enumerate() {
        let next = sides[(at + 1) % sides.len()];
        let [_, ends_at] = ends(outline, *side);
        let [begins_at, other_end] = ends(outline, next);
        if places.of(ends_at) != places.of(begins_at) {
            flaws.push(Flaw::Open {
                region: region_name(outline, region_index),
                first: curve_name(outline, side.curve_index),
                second: curve_name(outline, next.curve_index),
                ends: outline.points[ends_at],
                begins: outline.points[begins_at],
                fits_reversed: places.of(ends_at) == places.of(other_end),
            });
        }
    }
}

/// Divides a loop at points that it visits twice, and checks whether it goes once round each of its parts.
fn passes_through_itself(outline: &Outline, places: &Places, of: &Loop<'_>) -> Option<Flaw> {
    let parts = simple_parts(outline, places, of.sides);
    if parts.len() < 2 {
        return None;
    }
    let runs = |part: &[usize]| -> Vec<Run<'_>> { part.iter().map(|at| of.runs[*at]).collect() };
    let turns: Vec<i64> = parts
        .iter()
        .map(|part| if area(runs(part)) > 0.0 { 1 } else { -1 })
        .collect();
    let whole = if of.is_left { 1 } else { -1 };
    for (at, part) in parts.iter().enumerate() {
        let place = of.runs[part[0]].0.place(0.5);
        let others = parts.iter().enumerate().filter(|(other, _)| *other != at);
        let outside: i64 = others.map(|(_, other)| winding(runs(other), place)).sum();
        let inside = outside + turns[at];
        let is_simple = |n: i64| n == 0 || n == whole;
        if !is_simple(outside) || !is_simple(inside) {
            let side = of.sides[part[0]];
            let [begins_at, _] = ends(outline, side);
            return Some(Flaw::PassesThroughItself {
                region: region_name(outline, of.region_index),
                curve: curve_name(outline, side.curve_index),
                at: outline.points[begins_at],
            });
        }
    }
    None
}

/// The simple loops that make up a loop, as indices of its sides; a simple loop visits no point twice.
fn simple_parts(outline: &Outline, places: &Places, sides: &[Side]) -> Vec<Vec<usize>> {
    let mut parts = Vec::new();
    // Sides walked so far that belong to no loop yet, with the place at which each begins.
    let mut walked: Vec<(usize, usize)> = Vec::new();
    for (at, side) in sides.iter().enumerate() {
        let [begins_at, ends_at] = ends(outline, *side).map(|point| places.of(point));
        walked.push((begins_at, at));
        if let Some(first) = walked.iter().position(|(place, _)| *place == ends_at) {
            parts.push(walked.drain(first..).map(|(_, at)| at).collect());
        }
    }
    parts
}

fn same_names(outline: &Outline, flaws: &mut Vec<Flaw>) {
    let mut first: BTreeMap<&str, usize> = BTreeMap::new();
    for (index, region) in outline.regions.iter().enumerate() {
        let stands = *first.entry(&region.name).or_insert(index);
        if stands != index {
            flaws.push(Flaw::SameName {
                first: region_name(outline, stands),
                second_index: index,
            });
        }
    }
}

fn stray(outline: &Outline, flaws: &mut Vec<Flaw>) {
    let sides = outline.regions.iter().flat_map(|region| &region.boundary);
    let used: BTreeSet<usize> = sides.map(|side| side.curve_index).collect();
    for index in 0..outline.curves.len() {
        if !used.contains(&index) {
            flaws.push(Flaw::Stray {
                curve: curve_name(outline, index),
            });
        }
    }
}

/// Judges how many regions each curve bounds and on which side; returns the pairs of regions that overlap.
///
/// A loop that crosses something has no meaningful inside.
fn sides(
    outline: &Outline,
    loops: &[Loop<'_>],
    crossed: &BTreeSet<usize>,
    flaws: &mut Vec<Flaw>,
) -> BTreeSet<[usize; 2]> {
    let mut bounded: BTreeMap<usize, Vec<(usize, bool)>> = BTreeMap::new();
    for of in loops {
        for side in of.sides {
            let is_left = of.is_left != side.is_reversed;
            let regions = bounded.entry(side.curve_index).or_default();
            regions.push((of.region_index, is_left));
        }
    }
    let mut overlapping = BTreeSet::new();
    for (curve_index, regions) in bounded {
        let curve = || curve_name(outline, curve_index);
        for (at, one) in regions.iter().enumerate() {
            for other in &regions[at + 1..] {
                let is_crossed = crossed.contains(&one.0) || crossed.contains(&other.0);
                let is_same = one.1 == other.1 && !is_crossed;
                if is_same && overlapping.insert([one.0, other.0]) && regions.len() == 2 {
                    flaws.push(Flaw::SameSide {
                        curve: curve(),
                        first: region_name(outline, one.0),
                        second: region_name(outline, other.0),
                    });
                }
            }
        }
        if regions.len() > 2 {
            flaws.push(Flaw::MoreThanTwo {
                curve: curve(),
                n_regions: regions.len(),
                first: region_name(outline, regions[0].0),
                second: region_name(outline, regions[1].0),
            });
        }
    }
    overlapping
}

/// A flaw if a curve of one region runs through the inside of another.
fn inside(outline: &Outline, one: &Loop<'_>, other: &Loop<'_>) -> Option<Flaw> {
    let shared: BTreeSet<usize> = other.sides.iter().map(|side| side.curve_index).collect();
    for (side, (piece, _)) in one.sides.iter().zip(&one.runs) {
        let at = piece.place(0.5);
        if !shared.contains(&side.curve_index) && winding(other.runs.iter().copied(), at) != 0 {
            return Some(Flaw::RegionsOverlap {
                first: region_name(outline, one.region_index),
                second: region_name(outline, other.region_index),
                curve: curve_name(outline, side.curve_index),
                at,
            });
        }
    }
    None
}
