//! Solves, judges and refines until every wanted number meets its tolerance.

use super::goal::{Goal, answers, carried, follow};
use super::judge::judge;
use super::like::Like;
use super::potential;
use super::section::Section;
use super::solution::{Solution, unevenness};
use super::solved::{Cut, FieldError, Options, Solved, Stage, Watch};
use super::system::{System, coefficients};
use super::wanted::Wanted;
use crate::mesh::{self, MeshOptions};

/// Ratio of the unknowns of the next mesh to those of the last, a guess.
const NEXT_LARGER: usize = 2;
/// Greatest number of refinements of a mesh.
const LEVELS_MOST: usize = 40;
/// Share of the disagreement energy that the triangles marked for the whole must hold.
const BULK_RATIO: f64 = 0.3;
const BULK_RATIO_CAPACITANCE: f64 = 0.6;

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
        // Newton's method begins with a linear solve, and solves once more for each residual after the first.
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
