//! Bounds: the least and the greatest distance of two planes when every link keeps its window.
//!
//! **What.** Each link is two difference constraints,
//! x(to) − x(from) ≤ nominal + plus and x(from) − x(to) ≤ −nominal + minus.
//! The greatest value of x(b) − x(a) is the length of the shortest path from a to b over the edges
//! `from → to` of length nominal + plus and `to → from` of length −nominal + minus; it is attained.
//!
//! **Invariants.** If the nominals agree around every loop, measuring each position from its nominal leaves the
//! lengths `plus` and `minus`, none of which is negative.
//! Then there is always a solution: zero deviation.
//! A loop of negative length exists only in a chain whose nominals also contradict each other.
//!
//! **Source.** Cormen, Leiserson, Rivest, Stein, "Introduction to Algorithms", the section on difference
//! constraints and shortest paths, and the chapter on all-pairs shortest paths (memory).

use super::graph::Contradiction;
use super::{Chain, ChainError, DirectedLink, Path};

/// Least and greatest distance from one plane to another, both attained, in counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Bounds {
    /// Least distance, in counts.
    pub least: i64,
    /// Greatest distance, in counts.
    pub greatest: i64,
}

/// Larger than any sum of links (see [`super::REACH_MOST`]), and small enough to compare without overflow.
const UNREACHED: i64 = i64::MAX / 2;

/// The greatest deviation of x(b) − x(a) from its nominal, for all pairs, row by row of `a`.
///
/// # Assumes
/// The nominals agree around every loop and all planes are connected.
pub(super) fn greatest_deviations(chain: &Chain) -> Vec<i64> {
    let n = chain.n_planes;
    let mut greatest = vec![UNREACHED; n * n];
    for plane in 0..n {
        greatest[plane * n + plane] = 0;
    }
    for link in &chain.links {
        let forward = &mut greatest[link.from * n + link.to];
        *forward = (*forward).min(link.plus);
        let backward = &mut greatest[link.to * n + link.from];
        *backward = (*backward).min(link.minus);
    }
    let mut through = vec![0; n];
    for via in 0..n {
        through.copy_from_slice(&greatest[via * n..][..n]);
        for row in greatest.chunks_exact_mut(n) {
            let to_via = row[via];
            if to_via == UNREACHED {
                continue;
            }
            // Both terms are at most UNREACHED, so the sum is below i64::MAX; one that holds UNREACHED never wins.
            for (held, onward) in row.iter_mut().zip(&through) {
                *held = (*held).min(to_via + onward);
            }
        }
    }
    greatest
}

/// The loops whose windows cannot all be kept.
///
/// Each loop closed by a contradicting link is tested alone.
/// Only if none of them excludes itself, a loop over several closing links
/// is searched for.
/// The list is therefore empty exactly when all windows can be kept.
pub(super) fn excluded_windows(chain: &Chain, contradictions: &[Contradiction]) -> Vec<ChainError> {
    if contradictions.is_empty() {
        return Vec::new();
    }
    let alone: Vec<ChainError> = contradictions
        .iter()
        .filter_map(|found| exclusion(chain, found.around.clone()))
        .collect();
    if !alone.is_empty() {
        return alone;
    }
    negative_loop(chain)
        .and_then(|around| exclusion(chain, around))
        .into_iter()
        .collect()
}

fn exclusion(chain: &Chain, around: Path) -> Option<ChainError> {
    let (least, greatest) = chain.window(&around);
    (least > 0 || greatest < 0).then_some(ChainError::WindowsExclude {
        around,
        least,
        greatest,
    })
}

/// A loop whose greatest sum is negative, by n rounds of relaxing every edge (Bellman and Ford); `None` if there is
/// no such loop.
fn negative_loop(chain: &Chain) -> Option<Path> {
    let n = chain.n_planes;
    // All planes start at 0, as if one more plane had an edge of length 0 to each: every loop is within reach.
    let mut length = vec![0_i128; n];
    let mut arrival: Vec<Option<(usize, DirectedLink)>> = vec![None; n];
    let mut relaxed = None;
    for _ in 0..n {
        relaxed = None;
        for &index in &chain.order {
            let link = &chain.links[index];
            for (forward, start, plane) in [(true, link.from, link.to), (false, link.to, link.from)]
            {
                // Wide integers: around a negative loop the lengths fall in each of the n rounds.
                let found = length[start] + i128::from(link.window(forward).1);
                if found < length[plane] {
                    length[plane] = found;
                    arrival[plane] = Some((
                        start,
                        DirectedLink {
                            link: index,
                            forward,
                            plane,
                        },
                    ));
                    relaxed = Some(plane);
                }
            }
        }
    }
    // A plane that still falls in round n is reached from a loop; n steps back from it lie on the loop.
    let mut plane = relaxed?;
    for _ in 0..n {
        plane = arrival[plane].expect("a plane that fell has an arrival").0;
    }
    let mut steps = Vec::new();
    let last = plane;
    loop {
        let (before, step) = arrival[plane].expect("a plane on a loop has an arrival");
        steps.push(step);
        plane = before;
        if plane == last {
            break;
        }
    }
    steps.reverse();
    // The least plane comes first, so the same loop is always written in the same way.
    let least = (0..steps.len())
        .min_by_key(|&at| steps[at].plane)
        .expect("a loop has steps");
    let n_steps = steps.len();
    steps.rotate_left((least + 1) % n_steps);
    Some(Path {
        start: steps[n_steps - 1].plane,
        steps,
    })
}
