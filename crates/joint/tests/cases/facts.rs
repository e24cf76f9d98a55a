//! A plan as one fact per line, for snapshots: numbers as they stand in the document, without sentences.

use jointwright_joint::plan::{CutDoc, DatumDoc, LegDoc, Plan, RulingDoc};
use std::fmt::Write as _;

/// Facts of a plan; the program's version is not among them.
pub fn facts(plan: &Plan) -> String {
    let mut text = String::new();
    let mut line = |fact: String| writeln!(text, "{fact}").expect("a string takes every line");
    line(format!("format   {}", plan.format));
    line(format!(
        "invented {}",
        plan.invented.as_deref().unwrap_or("no")
    ));
    line(format!(
        "job      {}, {}, {} phase(s)",
        plan.job.id,
        plan.job.kind.name(),
        plan.job.phases
    ));
    line(format!("outcome  {}", plan.outcome.name()));
    let governs = plan.governs.as_ref().map_or("nothing".to_owned(), ruling);
    line(format!("governs  {governs}"));
    for group in &plan.alike {
        line(format!("alike    {}", group.join(" ")));
    }
    for leg in &plan.legs {
        line(String::new());
        leg_facts(leg).into_iter().for_each(&mut line);
    }
    line(String::new());
    plan.rulings.iter().map(ruling).for_each(&mut line);
    for proposal in &plan.proposals {
        line(String::new());
        line(format!(
            "open     {} {}",
            proposal.leg,
            proposal.part.name()
        ));
        for fit in &proposal.fits {
            line(format!("  fits {}, {} not judged", fit.id, fit.not_judged));
        }
        for misfit in &proposal.does_not_fit {
            line(format!("  does not fit {}", misfit.id));
        }
    }
    text
}

fn leg_facts(leg: &LegDoc) -> Vec<String> {
    let parks = if leg.parks { ", parks" } else { "" };
    let mut lines = vec![format!("leg {}    {}{parks}", leg.mark, leg.cable)];
    let parts: Vec<&str> = leg.parts.iter().map(|p| p.id.as_str()).collect();
    lines.push(format!("  parts  {}", parts.join(", ")));
    for cut in &leg.cuts {
        lines.push(cut_line(cut));
        lines.extend(cut.growth_ladder.iter().map(|rung| {
            format!(
                "    grew {} -> {} [{}, {}] {} = {} mm",
                rung.grew_inch,
                rung.nominal_mm,
                number(rung.min_mm),
                number(rung.max_mm),
                rung.inch.as_deref().unwrap_or("no tick"),
                rung.mark_mm.as_deref().unwrap_or("none")
            )
        }));
    }
    for stack in &leg.stacks {
        lines.push(format!(
            "  stack  {} to {} {} [{}, {}]",
            stack.from.name(),
            stack.to.name(),
            stack.nominal_mm,
            stack.min_mm,
            stack.max_mm
        ));
    }
    lines
}

fn cut_line(cut: &CutDoc) -> String {
    let unjudged = if cut.why.is_some() { " (says why)" } else { "" };
    let printed = cut.printed_window.as_ref().map_or(String::new(), |window| {
        format!(" printed {}..{} mm", window.mm[0], window.mm[1])
    });
    format!(
        "  {:4} {} {} [{}, {}] {} = {} mm{printed}{unjudged}",
        cut.kind.name(),
        cut.plane.name(),
        number(cut.nominal_mm),
        number(cut.min_mm),
        number(cut.max_mm),
        cut.inch.as_deref().unwrap_or("no tick"),
        cut.mark_mm.as_deref().unwrap_or("none")
    )
}

fn ruling(ruling: &RulingDoc) -> String {
    let whom = ruling
        .end
        .as_deref()
        .or(ruling.leg.as_deref())
        .unwrap_or("joint");
    let mut text = format!("{:10} {} {whom}", ruling.ruling.name(), ruling.check);
    if let Some(value) = &ruling.value {
        write!(text, ": {}", datum(value)).expect("a string takes it");
    }
    if let Some(limit) = &ruling.limit {
        write!(text, " against {}", datum(limit)).expect("a string takes it");
    }
    if let Some(unit) = &ruling.unit {
        write!(text, " {unit}").expect("a string takes it");
    }
    if let Some(margin) = ruling.margin {
        write!(text, ", margin {margin}").expect("a string takes it");
    }
    if ruling.computed {
        text.push_str(", computed");
    }
    text
}

fn datum(datum: &DatumDoc) -> String {
    match datum {
        DatumDoc::Number(number) => number.to_string(),
        DatumDoc::Range { min, max } => format!("[{min}, {max}]"),
        DatumDoc::Text(text) => format!("\"{text}\""),
    }
}

fn number(number: Option<f64>) -> String {
    number.map_or("null".to_owned(), |n| n.to_string())
}
