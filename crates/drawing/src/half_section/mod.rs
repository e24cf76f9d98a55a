//! Half section: a made-up leg from its conductor end to its seal, with every mark measured from the datum.
//!
//! **What.** [`half_section`]: the upper half of the leg in one scale, and below it one row for every cut and mark.
//!
//! **Why.** A crew reads a place on a picture faster than in a table, and sees when two rows are exchanged.
//!
//! **Invariants.** Numbers of dimensions are the plan's own texts; this module does not round or format any.
//! A plan in which a check fails gets no number at all, and an invented plan is marked across its face.
//! Layers differ by hatching and by name, never by colour alone.
//!
//! **Not here.** Any judgement, the made-up joint as a whole, the electric field.

mod dimension;
mod paint;
mod scale;
mod section;
mod sheet;

use crate::canvas::{Anchor, Words};
use crate::label::shortened;
use jointwright_joint::plan::{LegDoc, Plan};
use jointwright_wording::Tongue;
use jointwright_wording::label::HalfSectionLabel;
use paint::Paint;
use section::Section;
use sheet::{LEFT, RIGHT, SMALL, Sheet, fitted, width_mm};

/// Colours of a picture.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Theme {
    /// Dark lines on white, tinted.
    Light,
    /// Light lines on near-black, for a screen in the dark.
    Dark,
    /// Black on white and nothing else.
    Print,
}

/// Look of a picture.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Style {
    /// Colours.
    pub theme: Theme,
}

/// The half section of a leg as SVG, 190 mm wide.
///
/// The plan's words that it is invented stand in a banner and across the face; no setting removes them.
pub fn half_section(leg: &LegDoc, plan: &Plan, style: &Style) -> String {
    composed(leg, plan, style).svg()
}

/// Whether work stops, so that no number may stand on the page.
fn fails(plan: &Plan) -> bool {
    plan.must_stop()
}

/// The page before it is written as SVG.
fn composed(leg: &LegDoc, plan: &Plan, style: &Style) -> Sheet {
    let paint = Paint::new(style.theme, &leg.mark);
    let mut sheet = Sheet::new(paint);
    let mut y = head(&mut sheet, leg, plan);
    let section = Section::new(leg, fails(plan), Tongue::of_plan(plan));
    y = notes(&mut sheet, &section, plan, y);
    let axis_y = section.draw(&mut sheet, y);
    y = dimension::rows(&mut sheet, &section, leg, plan, axis_y);
    foot(&mut sheet, plan, y);
    if let Some(invented) = &plan.invented {
        sheet.mark_across(invented);
    }
    sheet
}

/// Writes banner and title.
fn head(sheet: &mut Sheet, leg: &LegDoc, plan: &Plan) -> f64 {
    let mut y = 1.5;
    if let Some(invented) = &plan.invented {
        sheet.banner(y, &shortened(invented, 76));
        y += 5.5;
    }
    y += 5.2;
    let tongue = Tongue::of_plan(plan);
    let title = tongue.label(&HalfSectionLabel::Leg {
        leg: shortened(&leg.mark, 8),
        cable: leg.cable.clone(),
    });
    sheet.text(fitted(Words::new([LEFT, y], 3.6, &title).bold(), 84));
    // Large enough to be compared with another page from a distance.
    y += 5.4;
    let mark = Words::new([LEFT, y], 4.4, &tongue.plan_mark(&plan.plan_mark)).bold();
    let beside = mark.at[0] + width_mm(&mark) + 6.0;
    sheet.text(mark);
    let line = shortened(&tongue.plan_issue(&plan.plan_mark), 84);
    sheet.text(Words::new([beside, y], SMALL, &line));
    y
}

/// Writes the scale, and the list of what is missing from the picture.
fn notes(sheet: &mut Sheet, section: &Section, plan: &Plan, mut y: f64) -> f64 {
    let tongue = Tongue::of_plan(plan);
    let of = |label: HalfSectionLabel| tongue.label(&label);
    let mut about = if fails(plan) {
        of(HalfSectionLabel::NotToMeasure)
    } else {
        of(HalfSectionLabel::ToScale {
            ratio: format!("{:.1}", section.ratio()),
        })
    };
    if section.has_unset_edge {
        about = format!("{about} {}", of(HalfSectionLabel::RaggedEdge));
    }
    let mut lines = vec![about];
    if !section.missing.is_empty() {
        lines.push(of(HalfSectionLabel::LeftOut {
            layers: section.missing.clone(),
        }));
    }
    for line in lines {
        y += 3.4;
        sheet.text(Words::new([LEFT, y], SMALL, &shortened(&line, 128)));
    }
    y + 1.0
}

/// Writes program, job and date, and that the parts' own instructions prevail.
fn foot(sheet: &mut Sheet, plan: &Plan, y: f64) {
    let y = y + 3.4;
    let tongue = Tongue::of_plan(plan);
    let of = tongue.label(&HalfSectionLabel::Foot {
        program: shortened(&plan.program, 24),
        job: shortened(&plan.job.id, 36),
        day: shortened(&plan.job.date, 12),
    });
    sheet.text(Words::new([LEFT, y], SMALL, &of));
    let instructions = tongue.label(&HalfSectionLabel::InstructionsPrevail);
    sheet.text(Words::new([RIGHT, y], SMALL, &instructions).anchored(Anchor::End));
    sheet.height = (y + 1.4).ceil();
}

#[cfg(test)]
mod tests;
