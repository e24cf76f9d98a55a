//! Runs of cable without a joint: the example, and the same example made worse on purpose.

use super::Bench;
use crate::cases::Case;
use crate::laws::toml_text::rows;
use toml::{Table, Value};

const RUN: Case = Case {
    slug: "millbrook-cable-run",
    job: include_str!("../../../../../examples/millbrook-cable-run/job.toml"),
    parts: None,
};

/// Sets fields of a table of the job.
fn set(job: &mut Table, table: &str, pairs: &str) {
    let pairs: Table = format!("x = {{ {pairs} }}").parse().expect("fields");
    let Value::Table(pairs) = pairs["x"].clone() else {
        panic!("no table")
    };
    let into = match job.get_mut(table).expect("what is changed") {
        Value::Table(into) => into,
        Value::Array(rows) => rows[0].as_table_mut().expect("a row"),
        other => panic!("{other:?}"),
    };
    into.extend(pairs);
}

/// Sets fields of the last stretch.
fn of_soil(job: &mut Table, pairs: &str) {
    let soil = rows(job, "surrounding").last().expect("a stretch");
    set(soil, "soil", pairs);
}

fn confirm(job: &mut Table, keys: &[&str]) {
    let row = |key: &&str| {
        let text = format!(
            "x = {{ key = \"{key}\", edition = \"invented\", by = \"Ines Calloway\", date = 2026-03-01 }}"
        );
        text.parse::<Table>().expect("a row")["x"].clone()
    };
    let rows = keys.iter().map(row).collect();
    job.insert("confirmation".to_owned(), Value::Array(rows));
}

fn papers(job: &mut Table, jacket: &str) {
    let text = format!(
        r#"x = [
  {{ over = "conductor", least = "12.2 mm", greatest = "13.2 mm" }},
  {{ over = "insulation", least = "24 mm", greatest = "25 mm" }},
  {{ over = "insulation-screen", least = "26 mm", greatest = "27 mm" }},
  {{ over = "metallic-shield", least = "29 mm", greatest = "30 mm" }},
  {{ over = "jacket", {jacket} }},
]"#
    );
    let papers = text.parse::<Table>().expect("papers");
    let leg = rows(job, "leg").next().expect("a leg");
    let cable = leg["cable"].as_table_mut().expect("a cable");
    cable.insert("papers".to_owned(), papers["x"].clone());
}

type Change = (&'static str, fn(&mut Table));

/// Changes that make a run worse.
const CHANGES: &[Change] = &[
    ("a run", |_| {}),
    ("a load that is too much", |job| {
        set(job, "duty", "load = \"900 A\"");
    }),
    ("a stretch of bad soil", |job| {
        of_soil(job, "resistivity_k_m_per_w = 6.0");
    }),
    ("a stretch of bad soil in the middle", |job| {
        of_soil(job, "resistivity_k_m_per_w = 6.0");
        let stretches = job["surrounding"].as_array_mut().expect("stretches");
        stretches.insert(1, stretches[1].clone());
        of_soil(job, "resistivity_k_m_per_w = 1.2");
        set(job, "leg", "route_length = \"436 m\"");
    }),
    ("a hot stretch", |job| {
        let stretch = rows(job, "surrounding").next().expect("a stretch");
        stretch.insert(
            "temperature".to_owned(),
            Value::String("85 degC".to_owned()),
        );
    }),
    ("a limit that is low", |job| {
        set(job, "duty", "conductor_greatest = \"40 degC\"");
    }),
    ("a shield that carries much", |job| {
        set(job, "leg", "shield_load = \"400 A\"");
    }),
    ("soil that dries, confirmed", |job| {
        of_soil(
            job,
            "dries = true, dry_k_m_per_w = 5.0, dries_above_k = 1.0",
        );
        confirm(job, &["soil-that-dries"]);
    }),
    ("many circuits", |job| {
        of_soil(job, "circuits = 9, circuits_apart = \"0.2 m\"");
    }),
    ("ducts, confirmed", |job| {
        ducts(job, "\"ducts\"", "");
    }),
    ("ducts in bad concrete, confirmed", |job| {
        ducts(
            job,
            "\"ducts-in-concrete\"",
            ", bank = { width = \"1 m\", height = \"0.6 m\", resistivity_k_m_per_w = 4.0 }",
        );
    }),
    ("still air, confirmed", |job| {
        let stretch = rows(job, "surrounding").next().expect("a stretch");
        stretch.remove("film_w_per_m2k");
        stretch.insert("air".to_owned(), Value::String("trefoil".to_owned()));
        confirm(job, &["free-air-film"]);
        set(job, "duty", "load = \"600 A\"");
    }),
    ("papers of a thick jacket", |job| {
        papers(job, "least = \"34 mm\", greatest = \"60 mm\"");
        set(job, "duty", "load = \"330 A\"");
    }),
    ("far apart and bonded at both ends", |job| {
        set(job, "leg", "spacing = \"400 mm\"");
        set(job, "duty", "load = \"330 A\"");
    }),
];

fn ducts(job: &mut Table, contents: &str, bank: &str) {
    of_soil(job, &format!("contents = {contents}, spacing = \"200 mm\""));
    let stretch = rows(job, "surrounding").last().expect("a stretch");
    let duct = format!(
        "x = {{ inside = \"104 mm\", outside = \"110 mm\", wall_k_m_per_w = 6.0, holds = \"air-in-plastic\", cables = 1{bank} }}"
    );
    let duct = duct.parse::<Table>().expect("a duct")["x"].clone();
    stretch.insert("duct".to_owned(), duct);
    set(job, "leg", "spacing = \"200 mm\"");
    set(job, "duty", "load = \"500 A\"");
    confirm(job, &["duct-filling", "duct-bank-concrete"]);
}

/// Every run.
pub fn runs() -> impl Iterator<Item = Bench> {
    CHANGES.iter().map(|(name, change)| {
        let mut bench = Bench::of(RUN);
        // It names no part, and so no catalogue.
        bench.catalogues.clear();
        change(&mut bench.job);
        bench.name = (*name).to_owned();
        bench
    })
}
