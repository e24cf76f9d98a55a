//! Confusion matrix of "measures like its papers" on seeded synthetic surveys.
//!
//! Surveys: a cable is drawn inside the bands of its construction, each layer is read with an error of up to 0.1 mm, and the reading says ±0.1 mm.
//! Rows: the papers are right; the papers name another construction, disjoint by a measured layer; the conductor lies between all sizes; the wall lies between all point limits.
//! The tests assert counts that must hold for every seed, not shares.

use super::super::candidate::plain;
use super::super::{Candidate, candidates};
use super::*;
use jointwright_units::Length;

const ERROR: Length = Length::from_nm(100_000);
const SURVEYS: usize = 500;

/// Seeded generator (splitmix64): the same surveys on every machine.
struct Seeded(u64);

impl Seeded {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }

    fn index(&mut self, n: usize) -> usize {
        (self.next() % n as u64) as usize
    }

    fn within(&mut self, interval: Interval) -> Length {
        let span = interval.width().nm() as u64 + 1;
        interval.least() + Length::from_nm((self.next() % span) as i64)
    }
}

/// Diameters of one cable, drawn inside the steps of a construction.
fn drawn(steps: &[BuildUp; 4], seeded: &mut Seeded) -> [Length; 4] {
    let mut inside = Length::ZERO;
    steps.map(|step| {
        inside = match step {
            BuildUp::Over(interval) => seeded.within(interval),
            BuildUp::Grows(by) => inside + seeded.within(by),
        };
        inside
    })
}

/// Survey of a cable whose readings err by up to `error`, though each says ±0.1 mm.
fn survey(diameters: [Length; 4], metal: Metal, error: Length, seeded: &mut Seeded) -> Evidence {
    let read = |d: Length, seeded: &mut Seeded| {
        Interval::around(seeded.within(Interval::around(d, error)), ERROR)
    };
    let diameters = INNER
        .iter()
        .zip(diameters)
        .map(|(layer, d)| (*layer, read(d, seeded)))
        .collect();
    Evidence {
        diameters,
        metal: Some(metal),
        ..Evidence::default()
    }
}

fn papers(of: &Candidate) -> Construction {
    plain(of.conductor, of.walls[0])
}

const OUTCOMES: [&str; 5] = [
    "papers only",
    "others also",
    "others not papers",
    "none",
    "not enough",
];

/// Counts of the five outcomes, in the order of `OUTCOMES`.
type Row = [usize; 5];

fn count(row: &mut Row, likeness: &Likeness) {
    let column = match likeness {
        Likeness::FitsPapersOnly => 0,
        Likeness::FitsOthersAlso(_) => 1,
        Likeness::FitsOthersNotPapers(..) => 2,
        Likeness::FitsNone(_) => 3,
        Likeness::NotEnough(_) => 4,
    };
    row[column] += 1;
}

fn true_papers(error: Length, seed: u64) -> Row {
    let (mut seeded, mut row) = (Seeded(seed), Row::default());
    for _ in 0..SURVEYS {
        let cable = &candidates()[seeded.index(candidates().len())];
        let evidence = survey(
            drawn(&cable.steps, &mut seeded),
            cable.conductor.metal,
            error,
            &mut seeded,
        );
        count(&mut row, &compare(&papers(cable), &evidence, candidates()));
    }
    row
}

/// Whether no cable of one construction can give the readings of the other.
fn disjoint(a: &Candidate, b: &Candidate) -> bool {
    INNER.iter().any(
        |layer| match (a.diameters_over(*layer), b.diameters_over(*layer)) {
            // The error enters twice: the value is off by it, and the reading is wider by it.
            (Some(a), Some(b)) => a.widened(ERROR * 2).meet(b).is_none(),
            _ => false,
        },
    )
}

fn other_papers(seed: u64) -> Row {
    let (mut seeded, mut row) = (Seeded(seed), Row::default());
    while row.iter().sum::<usize>() < SURVEYS {
        let cable = &candidates()[seeded.index(candidates().len())];
        let said = &candidates()[seeded.index(candidates().len())];
        if disjoint(cable, said) {
            let evidence = survey(
                drawn(&cable.steps, &mut seeded),
                cable.conductor.metal,
                ERROR,
                &mut seeded,
            );
            count(&mut row, &compare(&papers(said), &evidence, candidates()));
        }
    }
    row
}

/// Gaps between the least and the greatest that no interval covers, even when read with the greatest error.
fn gaps(intervals: impl Iterator<Item = Interval>) -> Vec<Interval> {
    let mut sorted: Vec<Interval> = intervals.map(|i| i.widened(ERROR * 2)).collect();
    sorted.sort_by_key(|i| (i.least(), i.greatest()));
    let mut gaps = Vec::new();
    let mut reached = sorted[0].greatest();
    for interval in sorted {
        let one = Length::from_nm(1);
        gaps.extend(Interval::new(reached + one, interval.least() - one));
        reached = reached.max(interval.greatest());
    }
    gaps
}

fn conductor_between_sizes(seed: u64) -> Row {
    let (mut seeded, mut row) = (Seeded(seed), Row::default());
    let gaps = gaps(
        candidates()
            .iter()
            .filter_map(|c| c.diameters_over(Layer::Conductor)),
    );
    assert!(
        !gaps.is_empty(),
        "the sizes of the table leave room between them"
    );
    for _ in 0..SURVEYS {
        let near = &candidates()[seeded.index(candidates().len())];
        let mut steps = near.steps;
        steps[0] = BuildUp::Over(gaps[seeded.index(gaps.len())]);
        let evidence = survey(
            drawn(&steps, &mut seeded),
            near.conductor.metal,
            ERROR,
            &mut seeded,
        );
        count(&mut row, &compare(&papers(near), &evidence, candidates()));
    }
    row
}

/// A wall between the point limits of two rows: the difference of the diameters over its two sides is in no row.
fn wall_between_rows(seed: u64) -> Row {
    let (mut seeded, mut row) = (Seeded(seed), Row::default());
    // Each side of the wall is read with its own error, so a wall is wider by both before the gaps are looked for.
    let walls = candidates().iter().filter_map(|c| match c.steps[2] {
        BuildUp::Grows(by) => Some(by.widened(ERROR * 2)),
        BuildUp::Over(_) => None,
    });
    let gaps = gaps(walls);
    assert!(
        !gaps.is_empty(),
        "the walls of the table leave room between them"
    );
    for _ in 0..SURVEYS {
        let near = &candidates()[seeded.index(candidates().len())];
        let mut steps = near.steps;
        steps[2] = BuildUp::Grows(gaps[seeded.index(gaps.len())]);
        let evidence = survey(
            drawn(&steps, &mut seeded),
            near.conductor.metal,
            ERROR,
            &mut seeded,
        );
        count(&mut row, &compare(&papers(near), &evidence, candidates()));
    }
    row
}

fn print(name: &str, row: Row) -> String {
    let cells: Vec<String> = OUTCOMES
        .iter()
        .zip(row)
        .map(|(outcome, n)| format!("{outcome} {n}"))
        .collect();
    format!("{name}: {}", cells.join(", "))
}

#[test]
fn the_matrix_has_zeros_where_it_must() {
    for seed in [1, 2, 3] {
        let row = true_papers(ERROR, seed);
        assert_eq!(
            (row[0] + row[1], row[2], row[3], row[4]),
            (SURVEYS, 0, 0, 0),
            "{}",
            print("papers right", row)
        );
        let row = other_papers(seed);
        assert_eq!(row, [0, 0, SURVEYS, 0, 0], "{}", print("other papers", row));
        let row = conductor_between_sizes(seed);
        assert_eq!(
            row,
            [0, 0, 0, SURVEYS, 0],
            "{}",
            print("conductor between sizes", row)
        );
        let row = wall_between_rows(seed);
        assert_eq!(
            row,
            [0, 0, 0, SURVEYS, 0],
            "{}",
            print("wall between rows", row)
        );
    }
}

#[test]
fn some_true_papers_are_told_apart_from_all_others() {
    // Otherwise the zeros above could come from a comparison that never decides.
    let row = true_papers(ERROR, 1);
    assert!(row[0] > 0 && row[1] > 0, "{}", print("papers right", row));
}

#[test]
fn readings_that_err_by_more_than_they_say_break_the_matrix() {
    // The twin: with errors of 1 mm the zeros do not hold.
    let row = true_papers(Length::MM, 1);
    assert!(
        row[2] + row[3] > 0,
        "{}",
        print("papers right, readings wrong", row)
    );
}

#[test]
fn a_table_without_the_true_construction_breaks_the_matrix() {
    // The twin of the second row: with the true construction left out, some surveys fit nothing.
    let (mut seeded, mut row) = (Seeded(1), Row::default());
    while row.iter().sum::<usize>() < SURVEYS {
        let cable = &candidates()[seeded.index(candidates().len())];
        let said = &candidates()[seeded.index(candidates().len())];
        if disjoint(cable, said) {
            let less: Vec<Candidate> = candidates()
                .iter()
                .filter(|c| *c != cable)
                .cloned()
                .collect();
            let evidence = survey(
                drawn(&cable.steps, &mut seeded),
                cable.conductor.metal,
                ERROR,
                &mut seeded,
            );
            count(&mut row, &compare(&papers(said), &evidence, &less));
        }
    }
    assert!(row[3] > 0, "{}", print("true construction left out", row));
}
