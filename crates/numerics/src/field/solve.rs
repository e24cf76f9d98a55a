//! Solves, judges and refines until every wanted number meets its tolerance.

use super::judge::{Judged, judge};
use super::like::Like;
use super::potential;
use super::section::Section;
use super::solution::{Solution, unevenness};
use super::solved::{Cut, FieldError, Options, Solved, Stage, Watch};
use super::system::{System, coefficients};
use super::wanted::{Answer, Wanted};
use crate::gas;
use crate::mesh::{self, MeshOptions};

/// Ratio of the unknowns of the next mesh to those of the last, a guess.
const NEXT_LARGER: usize = 2;
/// Greatest number of refinements of a mesh.
const LEVELS_MOST: usize = 40;
/// Least number of refinements about a number before it settles: one step shows its change, not whether the change continues.
const REFINED_LEAST: u32 = 2;
/// Least ratio of an estimate to the one before, where the triangles were halved (the error falls by four to eight).
const FALL_RATIO: f64 = 0.25;
/// Same ratio for a way across a gap: it may end at a sharp edge of 270°, about which the error falls with h^(4/3).
const FALL_EDGE_RATIO: f64 = 0.4;
/// Error of a number as a share of its last change: where the triangles were halved, and where they were not.
const MOVED_REFINED_RATIO: f64 = 0.35;
const MOVED_KEPT_RATIO: f64 = 1.0;
/// Greatest ratio of one step to the step before that is assumed.
const CREEP_RATIO: f64 = 0.75;
/// Least error of a number, as a share of its size times the energy share of the slopes' disagreement.
const WHOLE_RATIO: f64 = 0.5;
/// Least error of a recovered number, as a share of the rough error of its slopes.
const ROUGH_RATIO: f64 = 0.1;
/// Least error of a capacitance, as a share of the energy in the slopes' disagreement.
const ROUGH_ENERGY_RATIO: f64 = 2.0;
/// Least error of a first solution, as a share of a number's size.
const FIRST_RATIO: f64 = 0.03;
const ROUGH_FIRST_RATIO: f64 = 2.0;
/// Share of the disagreement energy that the triangles marked for the whole must hold.
const BULK_RATIO: f64 = 0.3;
const BULK_RATIO_CAPACITANCE: f64 = 0.6;

/// A wanted number, followed from solution to solution.
#[derive(Clone, Debug)]
pub(super) struct Goal {
    last: Judged,
    estimate: f64,
    is_settled: bool,
    is_refined: bool,
    /// Number of times that its triangles were halved.
    n_refined: u32,
    /// Last change of the number after its triangles had been halved; 0 before that is known.
    moved: f64,
}

impl Goal {
    fn moved_to(&self, judged: &Judged) -> f64 {
        (judged.parts[0] - self.last.parts[0]).hypot(judged.parts[1] - self.last.parts[1])
    }

    /// The same number of a similar section on a mesh as fine as this one's.
    ///
    /// Its error keeps its share of the number, and grows where the slopes have become so rough that they count beside it.
    fn carried(
        &self,
        section: &Section,
        wanted: &Wanted,
        options: &Options,
        judged: Judged,
    ) -> Self {
        let of_size = judged.size / self.last.size.max(f64::MIN_POSITIVE);
        let known = self.estimate * of_size.clamp(1.0, 1e3);
        let rougher = (known + ROUGH_RATIO * judged.rough_error)
            / (self.estimate + ROUGH_RATIO * self.last.rough_error).max(f64::MIN_POSITIVE);
        let estimate = (self.estimate * rougher.max(1.0))
            .max(ROUGH_RATIO * judged.rough_error)
            .max(WHOLE_RATIO * judged.energy_ratio * judged.size)
            + judged.search_error;
        Self {
            is_settled: estimate <= asked(section, wanted, options, &judged),
            last: judged,
            estimate,
            is_refined: false,
            n_refined: self.n_refined,
            moved: 0.0,
        }
    }
}

/// The last system of a solve, its numbers, and its answers.
pub(super) struct Run {
    pub system: System,
    pub goals: Vec<Goal>,
    /// Number of refinements step by step.
    pub n_refined: usize,
    pub solved: Solved,
}

/// Solves a section for wanted numbers.
///
/// # Errors
/// [`FieldError`] if the section cannot be meshed or its equations cannot be solved.
/// Numbers that did not settle are answers, and say so.
///
/// ```
/// use jointwright_numerics::{case, field::{Options, Unwatched, Wanted, solve}};
/// let text = r#"{"case": "coaxial", "about": "invented", "points": [[1, 0], [2, 0], [2, 5], [1, 5]],
///   "curves": [{"from": 0, "to": 1, "tag": "interior"}, {"from": 1, "to": 2, "tag": "outer"},
///              {"from": 2, "to": 3, "tag": "interior"}, {"from": 3, "to": 0, "tag": "inner"}],
///   "regions": [{"name": "wall", "material": "pe", "boundary": [1, 2, 3, 4]}],
///   "materials": {"pe": {"eps_r": 2.3}}, "potentials_kv": {"inner": 10, "outer": 0},
///   "wanted": [{"name": "E", "kind": "peak-in-region", "region": "wall"}]}"#;
/// let section = case::read(text).unwrap().section;
/// let wanted = [Wanted::PeakOnCurve { tag: "inner".to_owned() }];
/// let peak = solve(&section, &wanted, &Options::default(), &mut Unwatched).unwrap().answers[0];
/// // 10 kV over 1 mm · ln 2.
/// assert!((peak.value - 1e7 / 2.0_f64.ln()).abs() < 3.0 * peak.error_estimate);
/// ```
pub fn solve(
    section: &Section,
    wanted: &[Wanted],
    options: &Options,
    watch: &mut dyn Watch,
) -> Result<Solved, FieldError> {
    run(section, wanted, options, None, watch).map(|run| run.solved)
}

/// Solves a section; with `like`, from a mesh as fine as that of a similar section.
pub(super) fn run(
    section: &Section,
    wanted: &[Wanted],
    options: &Options,
    like: Option<&Like<'_>>,
    watch: &mut dyn Watch,
) -> Result<Run, FieldError> {
    watch.stage(Stage::Mesh);
    let mesh_options = MeshOptions {
        fine: section
            .leave_out
            .iter()
            .map(|disc| (disc.at, disc.radius))
            .collect(),
        ..MeshOptions::default()
    };
    let mut mesh = mesh::build(&section.outline, &mesh_options).map_err(FieldError::Mesh)?;
    if let Some(like) = like {
        mesh = like.refined(&section.outline, mesh);
    }
    let mut goals: Vec<Goal> = Vec::new();
    let mut n_levels = 0;
    let mut work = 0;
    loop {
        watch.stage(Stage::Assemble);
        let mut system = System::new(section, mesh)?;
        let n_unknowns = system.n_unknowns();
        watch.stage(Stage::Solve);
        let (potential, newton_residuals) = potential::solve(section, &mut system)?;
        // Newton's method solves once for each residual after the first.
        let last_work = n_unknowns * newton_residuals.len().max(1);
        work += last_work;
        watch.stage(Stage::Judge);
        let n_regions = section.materials.len();
        let mut solution = Solution::new(&system.mesh, &system.neighbours, &potential, n_regions);
        let judged = judge(section, wanted, &system, &mut solution);
        goals = match like.filter(|_| n_levels == 0) {
            Some(like) => carried(section, wanted, options, like.goals, judged),
            None => follow(section, wanted, options, &goals, judged),
        };
        let is_settled = goals.iter().all(|goal| goal.is_settled);
        let cut_short = (!is_settled)
            .then(|| {
                let next_work = work + NEXT_LARGER * last_work;
                cut(options, [n_unknowns, n_levels, next_work], watch)
            })
            .flatten();
        n_levels += 1;
        if is_settled || cut_short.is_some() {
            let solved = Solved {
                answers: answers(section, wanted, &goals),
                n_unknowns,
                newton_residuals,
                cut_short,
                mesh: system.mesh.clone(),
                potential,
            };
            return Ok(Run {
                system,
                goals,
                n_refined: n_levels - 1,
                solved,
            });
        }
        let is_marked = mark(section, wanted, &solution, &mut goals);
        watch.stage(Stage::Mesh);
        mesh = mesh::refine(&section.outline, &system.mesh, &is_marked);
    }
}

/// Reason to end the refinement of numbers that have not settled; `None` if there is none.
fn cut(
    options: &Options,
    [n_unknowns, n_levels, next_work]: [usize; 3],
    watch: &mut dyn Watch,
) -> Option<Cut> {
    if n_unknowns >= options.n_unknowns_most {
        Some(Cut::Unknowns)
    } else if n_levels >= LEVELS_MOST {
        Some(Cut::Refinements)
    } else if next_work > options.work_most {
        Some(Cut::Work)
    } else {
        (!watch.may_go_on()).then_some(Cut::Watch)
    }
}

pub(super) fn answers(section: &Section, wanted: &[Wanted], goals: &[Goal]) -> Vec<Answer> {
    goals
        .iter()
        .zip(wanted)
        .map(|(goal, wanted)| answer(section, goal, wanted))
        .collect()
}

/// Takes the numbers of a similar section, and their errors from the roughness of the slopes.
pub(super) fn carried(
    section: &Section,
    wanted: &[Wanted],
    options: &Options,
    goals: &[Goal],
    judged: Vec<Judged>,
) -> Vec<Goal> {
    let known = judged.into_iter().zip(goals).zip(wanted);
    known
        .map(|((judged, old), wanted)| old.carried(section, wanted, options, judged))
        .collect()
}

/// Takes the numbers of a new solution and estimates their errors from their changes.
pub(super) fn follow(
    section: &Section,
    wanted: &[Wanted],
    options: &Options,
    goals: &[Goal],
    judged: Vec<Judged>,
) -> Vec<Goal> {
    judged
        .into_iter()
        .enumerate()
        .map(|(index, judged)| {
            let moved = goals.get(index).map_or(0.0, |goal| goal.moved_to(&judged));
            let estimate = match goals.get(index) {
                // A single solution says too little about the whole to settle anything.
                None if matches!(wanted[index], Wanted::Capacitance) => f64::INFINITY,
                None => (ROUGH_FIRST_RATIO * judged.rough_error).max(FIRST_RATIO * judged.size),
                Some(goal) => estimate(goal, &judged, &wanted[index]),
            };
            let estimate = estimate + judged.search_error;
            let asked = asked(section, &wanted[index], options, &judged);
            let n_refined = goals
                .get(index)
                .map_or(0, |goal| goal.n_refined + u32::from(goal.is_refined));
            let is_rate_seen =
                n_refined >= REFINED_LEAST || matches!(wanted[index], Wanted::Capacitance);
            Goal {
                is_settled: estimate <= asked && is_rate_seen,
                last: judged,
                estimate,
                is_refined: false,
                n_refined,
                moved,
            }
        })
        .collect()
}

/// Error of a number after one more solution.
fn estimate(goal: &Goal, judged: &Judged, wanted: &Wanted) -> f64 {
    let moved = goal.moved_to(judged);
    if matches!(wanted, Wanted::Capacitance) {
        return if goal.is_refined {
            moved.max(ROUGH_ENERGY_RATIO * judged.rough_error)
        } else {
            (2.0 * moved).max(goal.estimate)
        };
    }
    let (moved, fall) = if goal.is_refined {
        // Beside a singular place a number creeps: the remaining change follows from the ratio of its steps.
        let shrinks = if goal.moved > 0.0 {
            (moved / goal.moved).min(CREEP_RATIO)
        } else {
            0.0
        };
        let left = (shrinks / (1.0 - shrinks)).max(MOVED_REFINED_RATIO);
        let fall = if matches!(wanted, Wanted::BreakdownShare { .. }) {
            FALL_EDGE_RATIO
        } else {
            FALL_RATIO
        };
        (left * moved, fall)
    } else {
        (MOVED_KEPT_RATIO * moved, 1.0)
    };
    moved
        .max(fall * goal.estimate)
        .max(ROUGH_RATIO * judged.rough_error)
        .max(WHOLE_RATIO * judged.energy_ratio * judged.size)
}

/// Tolerance for a number.
fn asked(section: &Section, wanted: &Wanted, options: &Options, judged: &Judged) -> f64 {
    let volts = section.potentials.iter().map(|(_, volts)| *volts);
    let span =
        volts.clone().fold(f64::NEG_INFINITY, f64::max) - volts.fold(f64::INFINITY, f64::min);
    match wanted {
        Wanted::Capacitance => options.capacitance_tolerance * judged.modulus(),
        Wanted::PotentialAt { .. } => options.tolerance * judged.modulus().max(1e-3 * span),
        // A number so small that no voltage of the section could break down the air needs no accuracy of its own.
        Wanted::BreakdownShare { .. } => {
            options.tolerance * judged.modulus().max(1e-3 * span / gas::LEAST_V)
        }
        _ => options.tolerance * judged.modulus(),
    }
}

fn answer(section: &Section, goal: &Goal, wanted: &Wanted) -> Answer {
    let is_complex = matches!(section.regime, super::section::Regime::Complex { .. });
    let has_phase = matches!(
        wanted,
        Wanted::PotentialAt { .. } | Wanted::AxialFieldAt { .. }
    );
    let [real, imaginary] = goal.last.parts;
    Answer {
        value: if is_complex {
            goal.last.modulus()
        } else {
            real
        },
        phase: (is_complex && has_phase).then(|| imaginary.atan2(real)),
        error_estimate: goal.estimate,
        at: goal.last.at,
        to: goal.last.to,
        is_settled: goal.is_settled,
    }
}

/// Marks the triangles that determine unsettled numbers, and those that hold most of the disagreement of the whole.
fn mark(
    section: &Section,
    wanted: &[Wanted],
    solution: &Solution<'_>,
    goals: &mut [Goal],
) -> Vec<bool> {
    let mesh = solution.mesh;
    let mut is_marked = vec![false; mesh.triangles.len()];
    let mut bulk: f64 = 0.0;
    for (goal, wanted) in goals.iter_mut().zip(wanted) {
        if goal.is_settled {
            continue;
        }
        bulk = bulk.max(BULK_RATIO);
        if matches!(wanted, Wanted::Capacitance) {
            bulk = BULK_RATIO_CAPACITANCE;
            goal.is_refined = true;
            continue;
        }
        let best = goal.last.parts[0];
        let is_peak = goal.last.at.is_some();
        for &(triangle, value) in &goal.last.spots {
            if is_peak && value < best - goal.estimate {
                continue;
            }
            for &corner in &mesh.triangles[triangle as usize][..3] {
                for &beside in solution.neighbours.rings.of(corner) {
                    is_marked[beside as usize] = true;
                }
            }
        }
        goal.is_refined = true;
    }
    mark_bulk(section, solution, bulk, &mut is_marked);
    is_marked
}

fn mark_bulk(section: &Section, solution: &Solution<'_>, bulk: f64, is_marked: &mut [bool]) {
    let per_region = coefficients(section);
    let mut parts: Vec<(f64, usize)> = (0..solution.mesh.triangles.len())
        .map(|index| {
            let [real, imaginary] = per_region[solution.mesh.region[index] as usize];
            (real.hypot(imaginary) * unevenness(solution, index).0, index)
        })
        .collect();
    let whole: f64 = parts.iter().map(|part| part.0).sum();
    parts.sort_by(|a, b| b.0.total_cmp(&a.0).then(a.1.cmp(&b.1)));
    let mut sum = 0.0;
    for (part, index) in parts {
        if sum >= bulk * whole {
            break;
        }
        sum += part;
        is_marked[index] = true;
    }
}
