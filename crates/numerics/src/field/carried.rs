//! A section like the last one on a carried mesh: its nodes follow the outline, the structure of the factors kept.
//!
//! Corners on curves keep their share of the curve.
//! The other corners follow as a net of springs, each
//! spring as strong as its edge is short.
//! A number's estimated error is that of the first solve, enlarged by the roughness of the slopes where they are rougher now.

use super::goal::{Goal, answers, carried};
use super::judge::judge;
use super::like::{Like, Spans, spans};
use super::potential;
use super::section::Section;
use super::solution::Solution;
use super::solve::{Run, run};
use super::solved::{FieldError, Options, Solved, Stage, Watch};
use super::system::System;
use super::wanted::Wanted;
use crate::fem::sparse::{Cholesky, Structure};
use crate::mesh;
use crate::outline::{Outline, Point};

/// Whether a mesh was carried along, or the reason why a new one was made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reuse {
    /// The nodes were moved; topology and the structure of the factors were kept.
    Carried,
    /// The curves, the regions or the wanted numbers differ.
    OtherTopology,
    /// A triangle would have become too flat.
    PoorTriangles,
    /// The numbers did not meet their tolerance on the carried mesh.
    NotSettled,
}

/// A solved section, kept ready for the next one like it.
#[derive(Clone)]
pub struct Prepared {
    outline: Outline,
    wanted: Vec<Wanted>,
    options: Options,
    /// System of the first solve's last mesh.
    system: System,
    /// Numbers, edges on curves and number of refinements of the section that was refined step by step: this one, or the one that it is like.
    goals: Vec<Goal>,
    spans: Spans,
    n_refined: usize,
    /// Springs of the mesh, once it was carried along.
    net: Option<Net>,
}

/// Solves a section and keeps the parts that a similar section can reuse.
///
/// # Errors
/// The same errors as [`super::solve()`].
///
/// ```
/// use jointwright_numerics::{case, field::{Options, Reuse, Unwatched, Wanted, prepare}};
/// let text = r#"{"case": "coaxial", "about": "invented", "points": [[1, 0], [2, 0], [2, 5], [1, 5]],
///   "curves": [{"from": 0, "to": 1, "tag": "interior"}, {"from": 1, "to": 2, "tag": "outer"},
///              {"from": 2, "to": 3, "tag": "interior"}, {"from": 3, "to": 0, "tag": "inner"}],
///   "regions": [{"name": "wall", "material": "pe", "boundary": [1, 2, 3, 4]}],
///   "materials": {"pe": {"eps_r": 2.3}}, "potentials_kv": {"inner": 10, "outer": 0},
///   "wanted": [{"name": "E", "kind": "peak-in-region", "region": "wall"}]}"#;
/// let section = case::read(text).unwrap().section;
/// let wanted = [Wanted::Capacitance];
/// let (mut prepared, _) = prepare(&section, &wanted, &Options::default(), &mut Unwatched).unwrap();
/// let mut next = section.clone();
/// for place in &mut next.outline.points {
///     place.z *= 1.1;
/// }
/// let (solved, reuse) = prepared.solve(&next, &mut Unwatched).unwrap();
/// assert_eq!((solved.answers.len(), reuse), (1, Reuse::Carried));
/// ```
pub fn prepare(
    section: &Section,
    wanted: &[Wanted],
    options: &Options,
    watch: &mut dyn Watch,
) -> Result<(Prepared, Solved), FieldError> {
    let run = run(section, wanted, options, None, watch)?;
    Ok(kept(section, wanted, options, None, run))
}

/// Parts that a similar section can reuse, and the solution.
fn kept(
    section: &Section,
    wanted: &[Wanted],
    options: &Options,
    like: Option<&Like<'_>>,
    run: Run,
) -> (Prepared, Solved) {
    // Errors are known, and edges are as short as they must be, in a section that was refined step by step.
    let (spans, goals, n_refined) = match like {
        Some(like) => (like.spans.clone(), like.goals.to_vec(), like.n_refined),
        None => {
            let spans = spans(&run.system.mesh, section.outline.curves.len());
            (spans, run.goals, run.n_refined)
        }
    };
    let prepared = Prepared {
        outline: section.outline.clone(),
        wanted: wanted.to_vec(),
        options: *options,
        system: run.system,
        goals,
        spans,
        n_refined,
        net: None,
    };
    (prepared, run.solved)
}

impl Prepared {
    /// Solves another section for the same numbers, on the mesh of the last one if possible.
    ///
    /// [`prepare`] shows an example.
    ///
    /// # Errors
    /// The same errors as [`super::solve()`].
    pub fn solve(
        &mut self,
        section: &Section,
        watch: &mut dyn Watch,
    ) -> Result<(Solved, Reuse), FieldError> {
        let (solved, reuse) = self.carried(section, watch)?;
        match solved {
            Some(solved) => Ok((solved, reuse)),
            None => Ok((self.start_again(section, watch)?, reuse)),
        }
    }

    /// Solves another section on the mesh of the last one, for numbers whose places moved with the section.
    ///
    /// `None` if the mesh cannot be carried along, or if a number does not settle on it.
    /// The number and the kinds of the wanted numbers must be as before.
    ///
    /// # Errors
    /// The same errors as [`super::solve()`].
    pub fn solve_carried_for(
        &mut self,
        section: &Section,
        wanted: &[Wanted],
        watch: &mut dyn Watch,
    ) -> Result<Option<Solved>, FieldError> {
        if !self.asks_like(wanted) {
            return Ok(None);
        }
        self.wanted = wanted.to_vec();
        self.carried(section, watch).map(|(solved, _)| solved)
    }

    /// Solves a similar section on a new mesh, which is at once refined where this one is, and keeps that mesh.
    ///
    /// If the curves, the regions or the kinds of the wanted numbers differ, the new mesh is refined step by step.
    ///
    /// # Errors
    /// The same errors as [`super::solve()`].
    pub fn prepare_like(
        &self,
        section: &Section,
        wanted: &[Wanted],
        watch: &mut dyn Watch,
    ) -> Result<(Prepared, Solved), FieldError> {
        let is_alike =
            self.asks_like(wanted) && mesh::is_same_topology(&self.outline, &section.outline);
        let like = Like {
            spans: &self.spans,
            goals: &self.goals,
            n_refined: self.n_refined,
        };
        let like = is_alike.then_some(&like);
        let run = run(section, wanted, &self.options, like, watch)?;
        Ok(kept(section, wanted, &self.options, like, run))
    }

    /// Solution on the carried mesh; `None`, with the reason, if a new mesh is needed.
    fn carried(
        &mut self,
        section: &Section,
        watch: &mut dyn Watch,
    ) -> Result<(Option<Solved>, Reuse), FieldError> {
        watch.stage(Stage::Mesh);
        if !mesh::is_same_topology(&self.outline, &section.outline) {
            return Ok((None, Reuse::OtherTopology));
        }
        let reuse = self.carry(&section.outline)?;
        if reuse != Reuse::Carried {
            return Ok((None, reuse));
        }
        let solved = self.solve_carried(section, watch)?;
        if solved.answers.iter().all(|answer| answer.is_settled) {
            return Ok((Some(solved), reuse));
        }
        Ok((None, Reuse::NotSettled))
    }

    /// Whether wanted numbers are as many, and of the same kinds, as those of the last section.
    fn asks_like(&self, wanted: &[Wanted]) -> bool {
        let kind = std::mem::discriminant::<Wanted>;
        let pairs = || self.wanted.iter().zip(wanted);
        self.wanted.len() == wanted.len() && pairs().all(|(old, new)| kind(old) == kind(new))
    }

    /// Does the same as [`Prepared::solve`], for numbers whose places moved with the section.
    ///
    /// If their number or the order of their kinds differs, they are another question, and a new mesh is made.
    ///
    /// # Errors
    /// The same errors as [`super::solve()`].
    pub fn solve_for(
        &mut self,
        section: &Section,
        wanted: &[Wanted],
        watch: &mut dyn Watch,
    ) -> Result<(Solved, Reuse), FieldError> {
        let is_same_question = self.asks_like(wanted);
        self.wanted = wanted.to_vec();
        if is_same_question {
            self.solve(section, watch)
        } else {
            Ok((self.start_again(section, watch)?, Reuse::OtherTopology))
        }
    }

    fn start_again(
        &mut self,
        section: &Section,
        watch: &mut dyn Watch,
    ) -> Result<Solved, FieldError> {
        let (prepared, solved) = prepare(section, &self.wanted, &self.options, watch)?;
        *self = prepared;
        Ok(solved)
    }

    /// Moves the nodes of both meshes, unless a triangle would become too flat.
    fn carry(&mut self, outline: &Outline) -> Result<Reuse, FieldError> {
        let mesh = &self.system.mesh;
        let rims = mesh::rim_places(outline, mesh);
        let net = match &mut self.net {
            Some(net) => net,
            empty => empty.insert(Net::new(mesh).map_err(FieldError::Sparse)?),
        };
        let corners = net
            .follow(&mesh.nodes[..mesh.n_corners], &rims)
            .map_err(FieldError::Sparse)?;
        let nodes = mesh::nodes_between(outline, mesh, &corners);
        if !mesh::is_sound(mesh, &nodes) {
            return Ok(Reuse::PoorTriangles);
        }
        self.system.move_nodes(nodes);
        self.outline = outline.clone();
        Ok(Reuse::Carried)
    }

    fn solve_carried(
        &mut self,
        section: &Section,
        watch: &mut dyn Watch,
    ) -> Result<Solved, FieldError> {
        let system = &mut self.system;
        watch.stage(Stage::Solve);
        let (potential, newton_residuals) = potential::solve(section, system)?;
        watch.stage(Stage::Judge);
        let n_regions = section.materials.len();
        let mut solution = Solution::new(&system.mesh, &system.neighbours, &potential, n_regions);
        let judged = judge(section, &self.wanted, system, &mut solution);
        let goals = carried(section, &self.wanted, &self.options, &self.goals, judged);
        Ok(Solved {
            answers: answers(section, &self.wanted, &goals),
            n_unknowns: system.n_unknowns(),
            newton_residuals,
            cut_short: None,
            mesh: system.mesh.clone(),
            potential,
        })
    }
}

/// Springs between the corners of a mesh.
#[derive(Clone)]
struct Net {
    /// Number among the free corners; `None` for corners on curves.
    free: Vec<Option<u32>>,
    /// Both corners of each spring, and its strength.
    springs: Vec<([u32; 2], f64)>,
    solver: Cholesky,
    values: Vec<f64>,
}

impl Net {
    fn new(mesh: &mesh::Mesh) -> Result<Self, crate::fem::sparse::SparseError> {
        let mut is_on_rim = vec![false; mesh.n_corners];
        let mut ends = vec![[u32::MAX; 2]; mesh.nodes.len()];
        for rim in &mesh.rims {
            is_on_rim[rim.nodes[0] as usize] = true;
            is_on_rim[rim.nodes[1] as usize] = true;
        }
        for triangle in &mesh.triangles {
            for side in 0..3 {
                ends[triangle[3 + side] as usize] = [triangle[side], triangle[(side + 1) % 3]];
            }
        }
        let mut n_free = 0;
        let free: Vec<Option<u32>> = is_on_rim
            .iter()
            .map(|&is_on_rim| {
                (!is_on_rim).then(|| {
                    n_free += 1;
                    n_free - 1
                })
            })
            .collect();
        let springs: Vec<([u32; 2], f64)> = ends[mesh.n_corners..]
            .iter()
            .map(|&[a, b]| {
                let length = mesh.nodes[a as usize].distance(mesh.nodes[b as usize]);
                ([a, b], 1.0 / (length * length))
            })
            .collect();
        let mut columns: Vec<Vec<(u32, f64)>> = vec![Vec::new(); n_free as usize];
        let mut diagonal = vec![0.0; n_free as usize];
        for &([a, b], strength) in &springs {
            let pair = [free[a as usize], free[b as usize]];
            for end in pair.into_iter().flatten() {
                diagonal[end as usize] += strength;
            }
            if let [Some(p), Some(q)] = pair {
                columns[p.min(q) as usize].push((p.max(q), -strength));
            }
        }
        let (mut starts, mut rows, mut values) = (vec![0], Vec::new(), Vec::new());
        for (column, entries) in columns.iter_mut().enumerate() {
            entries.sort_by_key(|entry| entry.0);
            rows.push(column as u32);
            values.push(diagonal[column]);
            for &(row, value) in entries.iter() {
                rows.push(row);
                values.push(value);
            }
            starts.push(rows.len() as u32);
        }
        let solver = Cholesky::new(&Structure::new(starts, rows)?)?;
        Ok(Self {
            free,
            springs,
            solver,
            values,
        })
    }

    /// New places of all corners, from given places of those on curves.
    fn follow(
        &mut self,
        corners: &[Point],
        rims: &[Option<Point>],
    ) -> Result<Vec<Point>, crate::fem::sparse::SparseError> {
        let step = |corner: u32| {
            let old = corners[corner as usize];
            rims[corner as usize].map_or([0.0; 2], |new| [new.r - old.r, new.z - old.z])
        };
        let n_free = self.values.len().min(self.free.iter().flatten().count());
        let mut sides = vec![0.0; 2 * n_free];
        for &([a, b], strength) in &self.springs {
            for (here, there) in [(a, b), (b, a)] {
                if let (Some(row), None) = (self.free[here as usize], self.free[there as usize]) {
                    let [r, z] = step(there);
                    sides[row as usize] += strength * r;
                    sides[n_free + row as usize] += strength * z;
                }
            }
        }
        self.solver.factorise(&self.values)?.solve(&mut sides)?;
        Ok((0..corners.len())
            .map(|corner| {
                let old = corners[corner];
                match (self.free[corner], rims[corner]) {
                    (_, Some(new)) => new,
                    (Some(row), None) => Point::new(
                        old.r + sides[row as usize],
                        old.z + sides[n_free + row as usize],
                    ),
                    (None, None) => old,
                }
            })
            .collect())
    }
}
