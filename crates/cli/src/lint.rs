//! Lint: takes catalogues, and prints their contradictions.
//!
//! Not here: rules; they are the critic's.

use crate::files;
use crate::lines::Lines;
use jointwright_joint::cable::Words;
use jointwright_joint::catalogue::Catalogue;
use jointwright_joint::critic::{Defect, Remark, criticise, remarks};
use jointwright_joint::form::{Complaints, Source};
use jointwright_joint::said::{PlanSaid, Wording};
use jointwright_wording::Tongue;
use std::path::PathBuf;

/// Sentence that finding no defect proves nothing.
const NO_PROOF: &str = "Finding nothing does not mean that a table is right: only its own paper, held beside it, shows that.";

/// Arguments of `lint`.
#[derive(clap::Args)]
pub struct Arguments {
    /// Catalogue files, read together; the word `demonstration` names the embedded one.
    #[arg(required = true, value_name = "CATALOGUE")]
    catalogues: Vec<PathBuf>,
    /// Print only the document, as JSON.
    #[arg(long)]
    pub json: bool,
}

/// Results of `lint`, for the terminal.
pub struct LintPage {
    /// Number of defects.
    pub n_defects: usize,
    /// The page.
    pub page: String,
    /// The document.
    pub document: serde_json::Value,
}

/// Reads the catalogues and criticises them.
///
/// # Errors
/// Every complaint about the files, as a line.
pub fn run(arguments: &Arguments) -> Result<LintPage, Vec<String>> {
    let mut complaints = Complaints::default();
    let mut sources = Vec::new();
    for path in &arguments.catalogues {
        match files::read_catalogue(path) {
            Ok(source) => sources.push(source),
            Err(complaint) => complaints.add(complaint),
        }
    }
    let are_all_read = complaints.is_empty();
    let catalogue = Catalogue::read(&sources, are_all_read, &mut complaints);
    if !complaints.is_empty() {
        let english = Tongue::english(Words::Us);
        return Err(files::lines(english, &complaints.into_sorted()));
    }
    let defects = criticise(&catalogue);
    let remarks = remarks(&catalogue);
    let invented = is_invented(&catalogue);
    Ok(LintPage {
        n_defects: defects.len(),
        page: page(&defects, &remarks, n_rows(&catalogue), invented),
        document: document(&sources, &defects, &remarks, n_rows(&catalogue), invented),
    })
}

/// Number of rows of each kind, and whether one of them is invented.
fn of_each_kind(catalogue: &Catalogue) -> [(usize, bool); 8] {
    macro_rules! of {
        ($rows:expr) => {
            ($rows.len(), $rows.iter().any(|row| row.demonstration()))
        };
    }
    [
        of!(catalogue.bodies),
        of!(catalogue.buses),
        of!(catalogue.plugs),
        of!(catalogue.connectors),
        of!(catalogue.adapters),
        of!(catalogue.shield_parts),
        of!(catalogue.seals),
        of!(catalogue.consumables),
    ]
}

fn n_rows(catalogue: &Catalogue) -> usize {
    of_each_kind(catalogue).iter().map(|(n, _)| n).sum()
}

fn is_invented(catalogue: &Catalogue) -> bool {
    of_each_kind(catalogue).iter().any(|(_, any)| *any)
}

/// Banner across a page of invented rows.
fn invented_words() -> String {
    Tongue::english(Words::Us).say(&PlanSaid::Invented.into())
}

fn page(defects: &[Defect], remarks: &[Remark], n_rows: usize, invented: bool) -> String {
    let mut lines = Lines::default();
    if invented {
        lines.add(&format!("{:*^80}", format!(" {} ", invented_words())));
    }
    for defect in defects {
        lines.wrap("", &format!("{} {}", defect.place, defect.class));
        lines.wrap("  ", &format!("{} {}", defect.found, defect.expected));
        lines.wrap("  ", &format!("hint: {}", defect.hint));
        lines.blank();
    }
    if !remarks.is_empty() {
        lines.add("Remarks, which are no defects:");
    }
    for remark in remarks {
        let doubts = remark.doubts.join("; ");
        lines.wrap("  ", &format!("{} {}: {doubts}", remark.place, remark.row));
    }
    lines.wrap("", NO_PROOF);
    lines.add(&count(defects.len(), n_rows));
    lines.text
}

fn count(n_defects: usize, n_rows: usize) -> String {
    let rows = if n_rows == 1 { "row" } else { "rows" };
    match n_defects {
        0 => format!("No defects found in {n_rows} {rows}."),
        1 => format!("1 defect found in {n_rows} {rows}."),
        n => format!("{n} defects found in {n_rows} {rows}."),
    }
}

fn document(
    sources: &[Source],
    defects: &[Defect],
    remarks: &[Remark],
    n_rows: usize,
    invented: bool,
) -> serde_json::Value {
    let catalogues: Vec<&str> = sources.iter().map(Source::path).collect();
    let defects: Vec<serde_json::Value> = defects
        .iter()
        .map(|defect| {
            serde_json::json!({
                "class": defect.class,
                "place": defect.place.to_string(),
                "rows": defect.rows,
                "found": defect.found,
                "expected": defect.expected,
                "hint": defect.hint,
            })
        })
        .collect();
    let remarks: Vec<serde_json::Value> = remarks
        .iter()
        .map(|remark| {
            serde_json::json!({
                "place": remark.place.to_string(),
                "row": remark.row,
                "doubts": remark.doubts,
            })
        })
        .collect();
    serde_json::json!({
        "invented": invented.then(invented_words),
        "catalogues": catalogues,
        "n_rows": n_rows,
        "n_defects": defects.len(),
        "defects": defects,
        "remarks": remarks,
        "note": NO_PROOF,
    })
}
