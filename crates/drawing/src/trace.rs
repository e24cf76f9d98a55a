//! Trace: joins edges on a fine grid to closed loops or open lines with few points.
//!
//! **Invariants.** Places are whole tenths of a picture point, so equal places are exactly equal.

use std::collections::BTreeMap;
use std::fmt::Write;

/// A place in tenths of a picture point.
pub(crate) type Spot = [i32; 2];

/// Greatest distance of a line from the places it stands for, tenths of a picture point.
const OFF: f64 = 2.5;

/// Directed edges; an edge and its reverse cancel.
#[derive(Debug, Default)]
pub(crate) struct Edges {
    count: BTreeMap<(Spot, Spot), u32>,
}

impl Edges {
    /// Adds an edge, or removes its reverse.
    pub(crate) fn add(&mut self, from: Spot, to: Spot) {
        if from == to {
            return;
        }
        if let Some(count) = self.count.get_mut(&(to, from)) {
            *count -= 1;
            if *count == 0 {
                self.count.remove(&(to, from));
            }
        } else {
            *self.count.entry((from, to)).or_insert(0) += 1;
        }
    }

    /// Closed loops of the edges.
    ///
    /// The edges must end wherever they begin, as the edges of polygons do; others are left out.
    pub(crate) fn into_loops(self) -> Vec<Vec<Spot>> {
        let mut next: BTreeMap<Spot, Vec<Spot>> = BTreeMap::new();
        for ((from, to), count) in self.count {
            for _ in 0..count {
                next.entry(from).or_default().push(to);
            }
        }
        let mut loops = Vec::new();
        while let Some((&start, _)) = next.first_key_value() {
            let mut walked = vec![start];
            let mut at = start;
            while let Some(to) = step(&mut next, at) {
                at = to;
                if at == start {
                    break;
                }
                walked.push(at);
            }
            if at == start && walked.len() > 2 {
                loops.push(simplified_loop(&walked));
            }
        }
        loops.retain(|walked| walked.len() > 2);
        loops
    }
}

/// Takes an edge from a place.
fn step(next: &mut BTreeMap<Spot, Vec<Spot>>, at: Spot) -> Option<Spot> {
    let ways = next.get_mut(&at)?;
    let to = ways.pop();
    if ways.is_empty() {
        next.remove(&at);
    }
    to
}

/// Pieces without a direction, joined to the longest lines.
pub(crate) fn lines(pieces: &[(Spot, Spot)]) -> Vec<Vec<Spot>> {
    let mut next: BTreeMap<Spot, Vec<Spot>> = BTreeMap::new();
    for (one, other) in pieces {
        if one != other && !next.get(one).is_some_and(|ways| ways.contains(other)) {
            next.entry(*one).or_default().push(*other);
            next.entry(*other).or_default().push(*one);
        }
    }
    // Ends first, so that no line begins in its middle.
    let ends: Vec<Spot> = next
        .iter()
        .filter(|(_, ways)| ways.len() % 2 == 1)
        .map(|(spot, _)| *spot)
        .collect();
    let mut found = Vec::new();
    for end in ends {
        if next.contains_key(&end) {
            found.push(walk(&mut next, end));
        }
    }
    while let Some((&start, _)) = next.first_key_value() {
        found.push(walk(&mut next, start));
    }
    found
        .into_iter()
        .filter(|line| line.len() > 1)
        .map(|line| simplified(&line))
        .collect()
}

fn walk(next: &mut BTreeMap<Spot, Vec<Spot>>, start: Spot) -> Vec<Spot> {
    let mut walked = vec![start];
    let mut at = start;
    while let Some(to) = step(next, at) {
        if let Some(back) = next.get_mut(&to) {
            if let Some(place) = back.iter().position(|spot| *spot == at) {
                back.swap_remove(place);
            }
            if back.is_empty() {
                next.remove(&to);
            }
        }
        walked.push(to);
        at = to;
    }
    walked
}

/// A loop with few points: divided at the place farthest from its first, so that both halves are lines.
fn simplified_loop(walked: &[Spot]) -> Vec<Spot> {
    let far = (0..walked.len()).max_by_key(|at| squared(walked[0], walked[*at]));
    let far = far.unwrap_or(0);
    let mut back = walked[far..].to_vec();
    back.push(walked[0]);
    let mut simple = simplified(&walked[..=far]);
    simple.pop();
    simple.extend(simplified(&back));
    simple.pop();
    simple
}

fn squared(one: Spot, other: Spot) -> i64 {
    let d = |axis: usize| i64::from(one[axis]) - i64::from(other[axis]);
    d(0) * d(0) + d(1) * d(1)
}

/// The line with only the points that matter: a point is kept if the line would leave it by more than [`OFF`].
fn simplified(line: &[Spot]) -> Vec<Spot> {
    if line.len() < 3 {
        return line.to_vec();
    }
    let mut is_kept = vec![false; line.len()];
    is_kept[0] = true;
    is_kept[line.len() - 1] = true;
    let mut open = vec![(0, line.len() - 1)];
    while let Some((first, last)) = open.pop() {
        let mut farthest = (OFF, 0);
        for at in first + 1..last {
            let off = distance(line[at], line[first], line[last]);
            if off > farthest.0 {
                farthest = (off, at);
            }
        }
        if farthest.1 > 0 {
            is_kept[farthest.1] = true;
            open.push((first, farthest.1));
            open.push((farthest.1, last));
        }
    }
    let kept = line.iter().zip(is_kept).filter(|(_, is_kept)| *is_kept);
    kept.map(|(spot, _)| *spot).collect()
}

/// Distance of a place from the piece between two others.
fn distance(place: Spot, from: Spot, to: Spot) -> f64 {
    let less = |a: Spot, b: Spot| {
        [
            f64::from(a[0]) - f64::from(b[0]),
            f64::from(a[1]) - f64::from(b[1]),
        ]
    };
    let (along, off) = (less(to, from), less(place, from));
    let squared = along[0] * along[0] + along[1] * along[1];
    let share = if squared > 0.0 {
        ((off[0] * along[0] + off[1] * along[1]) / squared).clamp(0.0, 1.0)
    } else {
        0.0
    };
    (off[0] - share * along[0]).hypot(off[1] - share * along[1])
}

/// Loops or lines as a path; each place after the first is written relative to the one before, which is shorter.
pub(crate) fn path(lines: &[Vec<Spot>], is_closed: bool) -> String {
    let mut path = String::new();
    for line in lines {
        let mut before: Option<Spot> = None;
        for spot in line {
            let (letter, [x, y]) = match before {
                None => ('M', *spot),
                Some(last) => (
                    'l',
                    [spot[0].wrapping_sub(last[0]), spot[1].wrapping_sub(last[1])],
                ),
            };
            let _ = write!(path, "{letter}{} {}", tenths(x), tenths(y));
            before = Some(*spot);
        }
        if is_closed {
            path.push('z');
        }
    }
    path
}

/// A number of tenths as a decimal number.
fn tenths(number: i32) -> String {
    let sign = if number < 0 { "-" } else { "" };
    let size = number.unsigned_abs();
    match size % 10 {
        0 => format!("{sign}{}", size / 10),
        rest => format!("{sign}{}.{rest}", size / 10),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn square(edges: &mut Edges, [x, y]: Spot, size: i32) {
        let corners = [[x, y], [x + size, y], [x + size, y + size], [x, y + size]];
        for at in 0..4 {
            edges.add(corners[at], corners[(at + 1) % 4]);
        }
    }

    #[test]
    fn squares_side_by_side_have_one_outline_and_a_hole_is_kept() {
        let mut edges = Edges::default();
        for x in 0..3 {
            for y in 0..3 {
                if (x, y) != (1, 1) {
                    square(&mut edges, [x * 100, y * 100], 100);
                }
            }
        }
        let mut loops = edges.into_loops();
        loops.sort_by_key(Vec::len);
        assert_eq!(loops.len(), 2);
        // The points in the middle of straight sides are gone.
        assert!(loops.iter().all(|walked| walked.len() == 4), "{loops:?}");
    }

    #[test]
    fn pieces_in_any_order_join_to_one_line() {
        let pieces = [([20, 0], [30, 50]), ([0, 0], [10, 0]), ([20, 0], [10, 0])];
        let found = lines(&pieces);
        assert_eq!(found.len(), 1);
        let mut line = found[0].clone();
        if line[0] != [0, 0] {
            line.reverse();
        }
        assert_eq!(line, vec![[0, 0], [20, 0], [30, 50]]);
        let ring = [([0, 0], [90, 0]), ([90, 0], [0, 90]), ([0, 90], [0, 0])];
        assert_eq!(lines(&ring)[0].len(), 4);
    }

    #[test]
    fn a_line_is_never_farther_from_its_points_than_it_may_be() {
        let line: Vec<Spot> = (0..500)
            .map(|n| {
                [
                    n * 7,
                    (f64::from(n) * 0.05).sin().mul_add(900.0, 0.0) as i32,
                ]
            })
            .collect();
        let simple = simplified(&line);
        assert!(simple.len() < 250 && simple.len() > 10, "{}", simple.len());
        for spot in &line {
            let off = simple
                .windows(2)
                .map(|pair| distance(*spot, pair[0], pair[1]));
            assert!(off.fold(f64::INFINITY, f64::min) <= OFF);
        }
    }
}
