//! Page: what a crew reads in the terminal, 80 columns, nothing by colour alone.
//!
//! Not here: any number or rule of its own; it prints the plan document.

use jointwright_joint::plan::{CutDoc, LegDoc, Plan, ProposalDoc, RulingDoc, StackDoc};
use std::collections::BTreeMap;

/// Width of a terminal that every crew has.
const WIDTH: usize = 80;

/// The page of a plan, without any styling.
pub fn page(plan: &Plan) -> String {
    let mut lines = Lines::default();
    head(plan, &mut lines);
    for legs in alike_legs(plan) {
        lines.blank();
        leg(plan, &legs, &mut lines);
    }
    fails(plan, &mut lines);
    not_judged(plan, &mut lines);
    proposals(&plan.proposals, &mut lines);
    foot(plan, &mut lines);
    lines.text
}

/// The page with headings in bold where the terminal can show it.
pub fn styled(page: &str, style: bool) -> String {
    if !style {
        return page.to_owned();
    }
    let line = |line: &str| {
        let heading = line.starts_with(|c: char| c.is_alphabetic() || c == '*');
        if heading {
            format!("\x1b[1m{line}\x1b[0m\n")
        } else {
            format!("{line}\n")
        }
    };
    page.lines().map(line).collect()
}

#[derive(Default)]
struct Lines {
    text: String,
}

impl Lines {
    fn add(&mut self, line: &str) {
        self.text.push_str(line.trim_end());
        self.text.push('\n');
    }

    fn blank(&mut self) {
        self.text.push('\n');
    }

    /// Text wrapped at the width, later lines indented.
    fn wrap(&mut self, indent: &str, text: &str) {
        let later = format!("{indent}  ");
        let options = textwrap::Options::new(WIDTH)
            .initial_indent(indent)
            .subsequent_indent(&later)
            .word_splitter(textwrap::WordSplitter::NoHyphenation)
            .word_separator(textwrap::WordSeparator::AsciiSpace);
        for line in textwrap::wrap(text, options) {
            self.add(&line);
        }
    }

    fn heading(&mut self, text: &str) {
        self.blank();
        self.wrap("", text);
    }
}

fn banner(plan: &Plan, lines: &mut Lines) {
    if let Some(invented) = &plan.invented {
        lines.add(&format!("{:*^WIDTH$}", format!(" {invented} ")));
    }
}

fn head(plan: &Plan, lines: &mut Lines) {
    banner(plan, lines);
    lines.wrap("", &format!("{}: {}", plan.job.id, plan.job.title));
    lines.wrap(
        "  ",
        &format!(
            "{} joint, {}, {}, {}",
            plan.job.kind,
            phases(plan),
            plan.job.place,
            plan.job.date
        ),
    );
    let count = |word: &str| plan.rulings.iter().filter(|r| r.ruling == word).count();
    lines.wrap(
        "  ",
        &format!(
            "Rulings: {} fail, {} not judged, {} pass. {}",
            count("fail"),
            count("not-judged"),
            count("pass"),
            outcome(plan)
        ),
    );
    lines.wrap(
        "  ",
        &format!(
            "Stop and call: {}, {}",
            plan.job.stop_and_call.name, plan.job.stop_and_call.number
        ),
    );
}

fn outcome(plan: &Plan) -> &'static str {
    match plan.outcome.as_str() {
        "fail" => "FAILS.",
        "pass" => "Every ruling passes; that does not say that it may be built.",
        _ => "None fails; not all is judged.",
    }
}

fn phases(plan: &Plan) -> String {
    if plan.job.phases == 1 {
        "phase 1".to_owned()
    } else {
        format!("phases 1 to {}", plan.job.phases)
    }
}

/// Legs with the same cable, parts and cuts, in the order of their first.
fn alike_legs(plan: &Plan) -> Vec<Vec<&LegDoc>> {
    let mut groups: Vec<Vec<&LegDoc>> = Vec::new();
    for leg in &plan.legs {
        let same = |other: &&LegDoc| {
            let key = |l: &LegDoc| {
                (
                    l.cable.clone(),
                    l.parks,
                    l.parts.iter().map(|p| p.id.clone()).collect::<Vec<_>>(),
                )
            };
            let cuts = |l: &LegDoc| {
                l.cuts
                    .iter()
                    .map(|c| (c.nominal_mm, c.min_mm, c.max_mm, c.why.clone()))
                    .collect::<Vec<_>>()
            };
            key(leg) == key(other) && cuts(leg) == cuts(other)
        };
        match groups.iter_mut().find(|g| g.first().is_some_and(same)) {
            Some(group) => group.push(leg),
            None => groups.push(vec![leg]),
        }
    }
    groups
}

fn leg(plan: &Plan, legs: &[&LegDoc], lines: &mut Lines) {
    let Some(first) = legs.first() else { return };
    let names: Vec<&str> = legs.iter().map(|l| l.mark.as_str()).collect();
    let which = if names.len() == 1 {
        format!("LEG {}", names[0])
    } else {
        format!("LEGS {}", names.join(", "))
    };
    let parks = if first.parks { ", body parks here" } else { "" };
    lines.wrap(
        "",
        &format!("{which}, {}{parks}: {}", phases(plan), first.cable),
    );
    let fails = plan
        .rulings
        .iter()
        .any(|r| r.ruling == "fail" && r.leg.as_deref().is_none_or(|l| names.contains(&l)));
    if fails {
        lines.add("  STOP: SOMETHING FAILS HERE; READ \"FAILS\" BELOW BEFORE ANYTHING IS CUT");
    }
    for part in &first.parts {
        let may_move = part
            .may_move
            .as_ref()
            .map(|m| format!("; may move: {m}"))
            .unwrap_or_default();
        lines.wrap(
            "  ",
            &format!(
                "{}: {} ({}){may_move}",
                part.kind, part.id, part.instructions
            ),
        );
    }
    lines.add(&format!(
        "  {:<42}{:>14}{:>12}",
        "From the square-cut end, before pressing", "inches", "mm"
    ));
    for cut in &first.cuts {
        self::cut(cut, lines);
    }
    let varying: Vec<&StackDoc> = first
        .stacks
        .iter()
        .filter(|s| s.middle_95_mm.is_some())
        .collect();
    if !varying.is_empty() {
        lines.add("  What the windows leave, mm         planned  least  most  most of it from");
        for stack in varying {
            self::stack(stack, lines);
        }
    }
}

fn cut(cut: &CutDoc, lines: &mut Lines) {
    let name = format!("{} {}", cut.kind.to_uppercase(), cut.words);
    let (inch, mm) = match (&cut.nominal_mm, &cut.inch, &cut.mark_mm) {
        (Some(_), inch, Some(mm)) => (inch.as_deref().unwrap_or("mm only"), mm.as_str()),
        (Some(_), _, None) => ("no mark fits", "see why"),
        (None, ..) => ("not yet", "not yet"),
    };
    if name.chars().count() <= 42 {
        lines.add(&format!("  {name:<42}{inch:>14}{mm:>12}"));
    } else {
        lines.wrap("  ", &name);
        lines.add(&format!("  {:<42}{inch:>14}{mm:>12}", ""));
    }
    if let Some(window) = &cut.printed_window {
        let inch = window
            .inch
            .as_ref()
            .map(|w| format!("{} to {} in, ", w[0], w[1]))
            .unwrap_or_default();
        lines.wrap(
            "      ",
            &format!(
                "window {inch}{} to {} mm, of: {}",
                window.mm[0],
                window.mm[1],
                cut.window_of.join("; ")
            ),
        );
    }
    if let Some(why) = &cut.why {
        lines.wrap("      ", why);
    }
    for rung in &cut.growth_ladder {
        let inch = rung
            .inch
            .as_ref()
            .map_or("mm only".to_owned(), |inch| format!("{inch} in"));
        let mm = rung.mark_mm.as_deref().unwrap_or("no mark fits");
        lines.add(&format!(
            "      if the whole sleeve grew {:<8}{:>28}{mm:>12}",
            rung.grew_inch, inch
        ));
    }
}

fn stack(stack: &StackDoc, lines: &mut Lines) {
    let most = stack
        .shares
        .first()
        .map(|s| s.words.as_str())
        .unwrap_or_default();
    // Rounded inward: the least is shown no greater than it is, the greatest no smaller.
    let (least, greatest) = (
        (stack.min_mm * 10.0).floor() / 10.0,
        (stack.max_mm * 10.0).ceil() / 10.0,
    );
    let line = format!(
        "  {:<33}{:>9.1}{least:>7.1}{greatest:>6.1}  {most}",
        stack.what, stack.nominal_mm
    );
    lines.add(&shortened(&line));
}

fn who(ruling: &RulingDoc) -> String {
    match (&ruling.end, &ruling.leg) {
        (Some(end), _) => end.clone(),
        (None, Some(leg)) => leg.clone(),
        (None, None) => "joint".to_owned(),
    }
}

fn fails(plan: &Plan, lines: &mut Lines) {
    let mut groups: Vec<(&RulingDoc, Vec<String>)> = Vec::new();
    for ruling in plan.rulings.iter().filter(|r| r.ruling == "fail") {
        match groups
            .iter_mut()
            .find(|(r, _)| r.check == ruling.check && r.why == ruling.why)
        {
            Some((_, ends)) => ends.push(who(ruling)),
            None => groups.push((ruling, vec![who(ruling)])),
        }
    }
    if groups.is_empty() {
        return;
    }
    lines.heading("FAILS");
    for (ruling, ends) in groups {
        lines.wrap(
            "  ",
            &format!(
                "{} [{}]: {}.",
                ends.join(" "),
                ruling.check,
                ruling.why.as_deref().unwrap_or_default()
            ),
        );
        if let Some(hint) = &ruling.hint {
            lines.wrap("      ", hint);
        }
        if let Some(source) = &ruling.source {
            lines.wrap("      ", &format!("on the word of: {source}"));
        }
    }
}

/// What is not judged, one line a group; the reasons in full are in plan.json.
fn not_judged(plan: &Plan, lines: &mut Lines) {
    let mut groups: BTreeMap<&str, Vec<&RulingDoc>> = BTreeMap::new();
    for ruling in plan.rulings.iter().filter(|r| r.ruling == "not-judged") {
        groups.entry(&ruling.check).or_default().push(ruling);
    }
    if !groups.is_empty() {
        lines.heading("NOT JUDGED (whole reasons in plan.json)");
    }
    for (check, rulings) in groups {
        let mut ends: Vec<String> = rulings.iter().map(|r| who(r)).collect();
        ends.dedup();
        let ends = if ends.len() > 4 {
            format!("{} places", ends.len())
        } else {
            ends.join(" ")
        };
        let why = rulings
            .first()
            .and_then(|r| r.why.as_deref())
            .unwrap_or_default();
        lines.add(&shortened(&format!("  {check} ({ends}): {why}")));
    }
    lines.wrap(
        "  ",
        &format!(
            "not computed by this version: {}",
            plan.not_computed.join(", ")
        ),
    );
}

fn shortened(line: &str) -> String {
    if line.chars().count() <= WIDTH {
        return line.to_owned();
    }
    line.chars().take(WIDTH - 3).chain("...".chars()).collect()
}

fn proposals(proposals: &[ProposalDoc], lines: &mut Lines) {
    if proposals.is_empty() {
        return;
    }
    lines.heading("LEFT OPEN: somebody chooses");
    for proposal in proposals {
        let fits: Vec<String> = proposal
            .fits
            .iter()
            .map(|f| format!("{} ({} not judged)", f.id, f.not_judged))
            .collect();
        let fits = if fits.is_empty() {
            "none in the catalogues".to_owned()
        } else {
            fits.join(", ")
        };
        lines.wrap(
            "  ",
            &format!(
                "leg {}, {}; nothing fails with: {fits}",
                proposal.leg, proposal.part
            ),
        );
        for misfit in &proposal.does_not_fit {
            lines.wrap("      ", &format!("not {}: {}", misfit.id, misfit.why));
        }
    }
}

fn foot(plan: &Plan, lines: &mut Lines) {
    if let (Some(governs), true) = (&plan.governs, plan.outcome != "fail") {
        let margin = governs
            .margin
            .map(|m| format!("{m:.1} {}", governs.unit.as_deref().unwrap_or_default()))
            .unwrap_or_default();
        lines.heading(&format!(
            "GOVERNS: {} {}, inside by {margin}",
            who(governs),
            governs.check
        ));
    }
    lines.blank();
    lines.wrap("  ", &plan.never);
    banner(plan, lines);
}
