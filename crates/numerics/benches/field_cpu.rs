//! CPU time and memory of fields, on one thread: a reference section cold and with a carried mesh, and growth with unknowns.
//!
//! Prints a table; `benches/field_vs_reference` compares it with a general-purpose library on the same section.
//! The system counts the time a thread ran (/proc/self/schedstat), so a busy machine disturbs it little.
#![allow(
    clippy::disallowed_methods,
    clippy::disallowed_types,
    clippy::disallowed_macros,
    clippy::print_stdout,
    missing_docs,
    reason = "a benchmark reads its section and the counters of the system, and prints"
)]

use jointwright_numerics::case::{self, Case};
use jointwright_numerics::fem::assembly::Pattern;
use jointwright_numerics::fem::dofs::Dofs;
use jointwright_numerics::fem::sparse::Cholesky;
use jointwright_numerics::fem::triangle;
use jointwright_numerics::field::{
    Disc, Options, Reuse, Section, Unwatched, Wanted, prepare, solve,
};
use jointwright_numerics::mesh::{Mesh, MeshOptions, build, refine};
use jointwright_numerics::outline::{Point, Shape};
use std::fs::read_to_string;
use std::path::Path;

const N_SAMPLES: usize = 21;
/// Some systems count processor time in steps of milliseconds, so short jobs are timed in groups.
const N_TOGETHER: usize = 20;

fn main() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../../tests/published/field-sections/A4-15.case.json");
    let text = read_to_string(&path).unwrap_or_else(|error| panic!("{}: {error}", path.display()));
    let case = case::read(&text).unwrap_or_else(|complaints| panic!("{complaints:?}"));
    let all: Vec<Wanted> = case.wanted.iter().map(|a| a.wanted.clone()).collect();
    let judged: Vec<Wanted> = all
        .iter()
        .filter(|wanted| !matches!(wanted, Wanted::PotentialAt { .. } | Wanted::FieldAt { .. }))
        .cloned()
        .collect();
    let (total_ms, values) = cold("cold, judged numbers", &case.section, &judged);
    cold("cold, all numbers", &case.section, &all);
    warm(&case.section, &judged);
    growth(&case.section);
    if let Some(line) = read_to_string("/proc/self/status")
        .unwrap_or_default()
        .lines()
        .find(|line| line.starts_with("VmHWM"))
    {
        println!(
            "most memory of the process at any time: {}",
            line.trim_start_matches("VmHWM:").trim()
        );
    }
    let worst = worst(&path, &case, &judged, &values);
    println!("{{\"total_ms\": {total_ms}, \"worst\": {worst}}}");
}

const OPTIONS: Options = Options {
    tolerance: 1e-2,
    capacitance_tolerance: 2e-4,
    n_unknowns_most: 200_000,
    work_most: usize::MAX,
};

/// Milliseconds that this process has run on a processor.
fn cpu_ms() -> f64 {
    let text = read_to_string("/proc/self/schedstat").unwrap_or_default();
    let nanoseconds: f64 = text
        .split_whitespace()
        .next()
        .and_then(|word| word.parse().ok())
        .unwrap_or(f64::NAN);
    nanoseconds * 1e-6
}

/// Least, median and greatest of a job's CPU times, ms, each the mean of `n_together` runs.
fn times(n_samples: usize, n_together: usize, mut job: impl FnMut(usize)) -> [f64; 3] {
    let mut times: Vec<f64> = (0..n_samples)
        .map(|sample| {
            let begun = cpu_ms();
            for run in 0..n_together {
                job(sample * n_together + run);
            }
            (cpu_ms() - begun) / n_together as f64
        })
        .collect();
    times.sort_by(f64::total_cmp);
    [times[0], times[n_samples / 2], times[n_samples - 1]]
}

fn print(name: &str, n_unknowns: usize, [least, median, greatest]: [f64; 3]) {
    println!(
        "{name:<28} {n_unknowns:>7} unknowns  cpu ms: least {least:.2}, median {median:.2}, most {greatest:.2}"
    );
}

/// Median time, ms, and the last answers.
fn cold(name: &str, section: &Section, wanted: &[Wanted]) -> (f64, Vec<f64>) {
    let mut n_unknowns = 0;
    let mut values = Vec::new();
    let times = times(N_SAMPLES, N_TOGETHER, |_| {
        let solved = solve(section, wanted, &OPTIONS, &mut Unwatched)
            .unwrap_or_else(|error| panic!("{error}"));
        assert!(solved.answers.iter().all(|answer| answer.is_settled));
        n_unknowns = solved.n_unknowns;
        values = solved.answers.iter().map(|answer| answer.value).collect();
    });
    print(name, n_unknowns, times);
    (times[1], values)
}

/// Greatest relative error of the judged numbers, compared with those stored beside the section.
fn worst(path: &Path, case: &Case, judged: &[Wanted], values: &[f64]) -> f64 {
    let beside = path.to_string_lossy().replace(".case.", ".answers.");
    let text = read_to_string(&beside).unwrap_or_else(|error| panic!("{beside}: {error}"));
    let stored: serde_json::Value =
        serde_json::from_str(&text).unwrap_or_else(|error| panic!("{beside}: {error}"));
    let mut worst: f64 = 0.0;
    for (wanted, value) in judged.iter().zip(values) {
        let asked = case.wanted.iter().find(|asked| asked.wanted == *wanted);
        let name = asked.map_or("", |asked| &asked.name);
        let row = stored["answers"]
            .as_array()
            .and_then(|rows| rows.iter().find(|row| row["name"] == name))
            .unwrap_or_else(|| panic!("{beside}: no {name}"));
        // Picofarads; kV/mm.
        let unit = if *wanted == Wanted::Capacitance {
            1e12
        } else {
            1e-6
        };
        let expected = row["value"].as_f64().unwrap_or(f64::NAN);
        worst = worst.max((value * unit / expected - 1.0).abs());
    }
    worst
}

/// The body shifted along the cable by up to 2 mm, both ways.
fn shifted(section: &Section, shift: f64) -> Section {
    let mut section = section.clone();
    let moved = |place: Point| {
        let is_body = place.z > 0.1 && place.z < 0.199;
        if is_body {
            Point::new(place.r, place.z + shift)
        } else {
            place
        }
    };
    for point in &mut section.outline.points {
        *point = moved(*point);
    }
    for curve in &mut section.outline.curves {
        if let Shape::Arc { center } = &mut curve.shape {
            *center = moved(*center);
        }
    }
    section.leave_out = section
        .leave_out
        .iter()
        .map(|disc| Disc {
            at: moved(disc.at),
            radius: disc.radius,
        })
        .collect();
    section
}

fn warm(section: &Section, wanted: &[Wanted]) {
    let (mut prepared, _) = prepare(section, wanted, &OPTIONS, &mut Unwatched)
        .unwrap_or_else(|error| panic!("{error}"));
    let sections: Vec<Section> = (0..9)
        .map(|step| shifted(section, (f64::from(step) - 4.0) * 0.5e-3))
        .collect();
    let (mut n_unknowns, mut n_carried) = (0, 0);
    let times = times(N_SAMPLES, N_TOGETHER, |run| {
        let (solved, reuse) = prepared
            .solve(&sections[run % sections.len()], &mut Unwatched)
            .unwrap_or_else(|error| panic!("{error}"));
        n_carried += usize::from(reuse == Reuse::Carried);
        n_unknowns = solved.n_unknowns;
    });
    print("warm, judged numbers", n_unknowns, times);
    println!(
        "{n_carried} of {} carried along, the others meshed again",
        N_SAMPLES * N_TOGETHER
    );
}

/// Everything except judging, on ever finer meshes; and the exponent fitted to the times.
fn growth(section: &Section) {
    let mut mesh =
        build(&section.outline, &MeshOptions::default()).unwrap_or_else(|error| panic!("{error}"));
    let mut logs = Vec::new();
    for level in 0.. {
        let n_unknowns = one(section, &mesh);
        if n_unknowns > 120_000 {
            break;
        }
        if n_unknowns > 2_000 {
            let n_together = (40_000 / n_unknowns).max(1);
            let times = times(5, n_together, |_| {
                one(section, &mesh);
            });
            print("one solve", n_unknowns, times);
            logs.push(((n_unknowns as f64).ln(), times[1].ln()));
        }
        // A third of the triangles at a time, so that the numbers of unknowns are closer together.
        let is_marked: Vec<bool> = (0..mesh.triangles.len())
            .map(|index| index % 3 == level % 3)
            .collect();
        mesh = refine(&section.outline, &mesh, &is_marked);
    }
    let n = logs.len() as f64;
    let mean = |pick: fn(&(f64, f64)) -> f64| logs.iter().map(pick).sum::<f64>() / n;
    let (x, y) = (mean(|log| log.0), mean(|log| log.1));
    let (mut across, mut along) = (0.0, 0.0);
    for log in &logs {
        across += (log.0 - x) * (log.1 - y);
        along += (log.0 - x).powi(2);
    }
    println!(
        "time grows like unknowns to the power {:.2}",
        across / along
    );
}

fn one(section: &Section, mesh: &Mesh) -> usize {
    let mut volts = vec![None; mesh.nodes.len()];
    for rim in &mesh.rims {
        let tag = &section.outline.curves[rim.curve_index as usize].tag;
        if let Some((_, held)) = section.potentials.iter().find(|(name, _)| name == tag) {
            for node in rim.nodes {
                volts[node as usize] = Some(*held);
            }
        }
    }
    let fixed: Vec<(u32, f64)> = volts
        .iter()
        .enumerate()
        .filter_map(|(node, held)| held.map(|held| (node as u32, held)))
        .collect();
    let dofs = Dofs::new(mesh.nodes.len(), &fixed, &[])
        .unwrap_or_else(|error| panic!("{error}"))
        .ordered(&mesh.triangles);
    let pattern = Pattern::new(&mesh.triangles, &dofs);
    let matrices: Vec<[f64; 21]> = mesh
        .triangles
        .iter()
        .map(|numbers| triangle::stiffness(&numbers.map(|node| mesh.nodes[node as usize])))
        .collect();
    let coefficients: Vec<f64> = mesh
        .region
        .iter()
        .map(|&region| section.materials[region as usize].relative_permittivity)
        .collect();
    let system = pattern.assemble(&matrices, &coefficients, &dofs);
    let mut values = system.rhs;
    Cholesky::new(pattern.structure())
        .and_then(|mut solver| solver.factorise(&system.values)?.solve(&mut values))
        .unwrap_or_else(|error| panic!("{error}"));
    dofs.n_free()
}
