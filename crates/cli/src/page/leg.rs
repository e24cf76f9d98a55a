//! Leg: its parts, cuts, marks and windows on the page of a plan, and the stops on it.

use crate::lines::Lines;
use jointwright_joint::cable::Words;
use jointwright_joint::catalogue::PartKind;
use jointwright_joint::limit::Outcome;
use jointwright_joint::plan::{
    ConnectorDoc, CutDoc, LegDoc, Plan, RulingDoc, RungDoc, StackDoc, StopDoc,
};
use jointwright_wording::label::{CutLabel, LegCutLabel, LegLine, LegStop, PlanLegLabel};

/// Groups of legs with the same cable, parts and cuts, in the order of the first leg of each.
pub(super) fn alike_legs(plan: &Plan) -> Vec<Vec<&LegDoc>> {
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
            key(leg) == key(other)
                && leg.cuts == other.cuts
                && leg.connector == other.connector
                && leg.stacks == other.stacks
        };
        match groups.iter_mut().find(|g| g.first().is_some_and(same)) {
            Some(group) => group.push(leg),
            None => groups.push(vec![leg]),
        }
    }
    groups
}

fn line(lines: &mut Lines, line: LegLine) {
    lines.label("  ", &PlanLegLabel::Line(line));
}

fn cut_label(lines: &Lines, label: LegCutLabel) -> String {
    lines.say(&PlanLegLabel::Cut(label))
}

pub(super) fn leg(plan: &Plan, legs: &[&LegDoc], lines: &mut Lines) {
    let Some(first) = legs.first() else { return };
    lines.label(
        "",
        &PlanLegLabel::Legs {
            names: legs.iter().map(|leg| leg.mark.clone()).collect(),
            n_phases: plan.job.phases.into(),
            cable: first.cable.clone(),
        },
    );
    for leg in legs {
        let (leg, port, to) = (leg.mark.clone(), leg.port, leg.goes_to.clone());
        lines.label("  ", &PlanLegLabel::Leg { leg, port, to });
    }
    let manner = Manner {
        is_withheld: stops(plan, legs, lines),
        is_metric: plan.job.words == Words::Iec,
        is_of_one_end: first.connector.as_ref().is_some_and(|c| c.end.is_some()),
    };
    parts(first, lines);
    if !manner.is_withheld {
        line(lines, LegLine::MeasureFrom);
        line(lines, LegLine::SetOffBefore);
    }
    let outward = first.cuts.iter().rev();
    let (cuts, marks): (Vec<&CutDoc>, Vec<&CutDoc>) = outward.partition(|c| !c.is_mark());
    for place in cuts.into_iter().chain(marks) {
        cut(place, manner, lines);
    }
    let varying: Vec<&StackDoc> = first
        .stacks
        .iter()
        .filter(|s| s.middle_95_mm.is_some())
        .collect();
    if !varying.is_empty() && !manner.is_withheld {
        line(lines, LegLine::ForTheEngineer);
        for stack in varying {
            self::stack(stack, lines);
        }
    }
    if !manner.is_withheld {
        for leg in legs {
            crate::field_page::table(leg, lines);
        }
    }
    pressures(legs, lines);
    shields(legs, lines);
}

/// Adds the lines about the shield of each leg beyond the joint.
fn shields(legs: &[&LegDoc], lines: &mut Lines) {
    line(lines, LegLine::Shield);
    for leg in legs {
        let shield = &leg.shield;
        let mut said = shield.lines.clone();
        if !shield.not_known.is_empty() {
            let what = shield.not_known.clone();
            said.push(lines.say(&PlanLegLabel::NotKnown { what }));
        }
        lines.wrap("      ", &format!("{}: {}", leg.mark, said.join(" ")));
    }
}

/// Adds the interface pressures of each end; ends with the same sentence share a line.
fn pressures(legs: &[&LegDoc], lines: &mut Lines) {
    let mut said: Vec<(&str, Vec<String>)> = Vec::new();
    for leg in legs {
        for end in &leg.ends {
            let Some(pressure) = &end.pressure else {
                continue;
            };
            let name = format!("{}{}", leg.mark, end.phase);
            match said.iter_mut().find(|(line, _)| *line == pressure.line) {
                Some((_, names)) => names.push(name),
                None => said.push((&pressure.line, vec![name])),
            }
        }
    }
    if said.is_empty() {
        return;
    }
    line(lines, LegLine::Pressed);
    for (line, names) in said {
        lines.wrap("      ", &format!("{}: {line}", names.join(" ")));
    }
}

/// Adds the reasons to stop work on these legs; returns whether the plan must stop, so that no number to cut to is printed.
fn stops(plan: &Plan, legs: &[&LegDoc], lines: &mut Lines) -> bool {
    let names: Vec<&str> = legs.iter().map(|l| l.mark.as_str()).collect();
    // One body or one bus holds all legs: if one leg fails, the others must not be cut either.
    let fails: Vec<&RulingDoc> = plan
        .rulings
        .iter()
        .filter(|r| r.ruling == Outcome::Fail)
        .collect();
    let here = fails
        .iter()
        .any(|r| r.leg.as_deref().is_none_or(|l| names.contains(&l)));
    if here {
        stop(lines, LegStop::SomethingHere);
    } else if !fails.is_empty() {
        stop(lines, LegStop::AnotherLeg);
    }
    stopped(plan, &names, lines);
    if plan.is_parking_open() {
        stop(lines, LegStop::NobodyNamedToPark);
    }
    plan.must_stop()
}

fn stop(lines: &mut Lines, stop: LegStop) {
    lines.label("  ", &PlanLegLabel::Stop(stop));
}

/// Adds the stops on these legs that need no failing ruling, and who may lift each.
fn stopped(plan: &Plan, names: &[&str], lines: &mut Lines) {
    let is_here = |stop: &&StopDoc| names.iter().any(|leg| stop.concerns(leg, None));
    for of in plan.stops.iter().filter(is_here) {
        let said = of.say.clone();
        let label = match &of.lifted_by {
            Some(word) => LegStop::GoesOnBy {
                word: word.clone(),
                said,
            },
            None => LegStop::StopAndCall {
                whom: of.whom.clone(),
                said,
            },
        };
        stop(lines, label);
    }
    if plan.outcome != Outcome::Fail && plan.must_stop() {
        stop(lines, LegStop::UntilSaid);
    }
}

/// Manner of printing a leg's numbers.
#[derive(Clone, Copy)]
struct Manner {
    /// Whether no number is printed, because the plan must stop.
    is_withheld: bool,
    /// Whether the job uses IEC words, so that a missing value in inches is left blank.
    is_metric: bool,
    /// Whether the growth printed is of one end alone, for a sleeve whose ends differ.
    is_of_one_end: bool,
}

fn parts(leg: &LegDoc, lines: &mut Lines) {
    if leg.parks {
        line(lines, LegLine::BodyParksHere);
    }
    for part in &leg.parts {
        lines.label(
            "  ",
            &PlanLegLabel::Part {
                kind: part.kind,
                id: part.id.clone(),
                side: part.side.clone(),
                paper: part.instructions.clone(),
                may_move: part.may_move.clone(),
            },
        );
        if let (Some(connector), PartKind::Connector) = (&leg.connector, part.kind) {
            self::connector(connector, lines);
        }
    }
}

/// Label with the number of presses of each end, or of the named end if the two differ.
fn presses(n: i64, connector: &ConnectorDoc) -> PlanLegLabel {
    match &connector.end {
        Some(_) => PlanLegLabel::PressesHere { n },
        None => PlanLegLabel::PressesAnEnd { n },
    }
}

fn connector(connector: &ConnectorDoc, lines: &mut Lines) {
    let mut words = vec![lines.tongue.means(connector.means).to_owned()];
    words.extend(connector.die.as_deref().map(|die| lines.tongue.die(die)));
    let end = connector.end.clone();
    words.extend(end.map(|end| lines.say(&PlanLegLabel::ConnectorEnd { end })));
    let of_presses = connector.presses.map(|n| presses(n, connector));
    words.extend(of_presses.map(|label| lines.say(&label)));
    lines.wrap("      ", &words.join(", "));
    if let Some(why) = connector.end_open.clone() {
        lines.label("      ", &PlanLegLabel::WhichEndNotKnown { why });
    }
    if let (Some([least, most]), Some(source)) =
        (connector.growth_of_mouth_mm, &connector.growth_source)
    {
        lines.label(
            "      ",
            &PlanLegLabel::MouthGrows {
                least: format!("{least:.1}"),
                most: format!("{most:.1}"),
                source: source.clone(),
            },
        );
    }
}

/// Adds one place to cut or mark: a line with its name and both units, a line with its window, and lines with the sources of both.
fn cut(cut: &CutDoc, manner: Manner, lines: &mut Lines) {
    let name = lines.say(&CutLabel::act_at(cut));
    let both = |label: LegCutLabel| {
        let text = cut_label(lines, label);
        (text.clone(), text)
    };
    let (inch, mm) = match (manner.is_withheld, &cut.nominal_mm, &cut.inch, &cut.mark_mm) {
        (true, ..) => both(LegCutLabel::Withheld),
        (_, Some(_), inch, Some(mm)) => (inches(inch.as_ref(), manner, lines), format!("{mm} mm")),
        _ => both(LegCutLabel::NotYet),
    };
    lines.named("  ", &name, 44, &format!("{inch:>14}{mm:>14}"));
    if manner.is_withheld {
        return;
    }
    if let Some(window) = &cut.printed_window {
        let (may_lie, window) = (lines.say(&CutLabel::MayLie), lines.tongue.window(window));
        lines.add(&format!("      {may_lie:<25}{window:>43}"));
        if let Some(edge) = CutLabel::at_edge(cut) {
            lines.label("      ", &edge);
        }
    }
    if let Some(keeps) = &cut.keeps {
        lines.wrap("      ", keeps);
    }
    for whose in CutLabel::whose(cut) {
        lines.label("      ", &whose);
    }
    if let Some(narrowed) = &cut.narrowed {
        let text = narrowed.text.clone();
        lines.label("      ", &CutLabel::Narrowed { text });
    }
    if let Some(why) = &cut.why {
        lines.wrap("      ", why);
    }
    ladder(cut, manner, lines);
}

fn grew(rung: &RungDoc) -> String {
    if rung.grew_inch.is_empty() {
        format!("{} mm", rung.grew_mm)
    } else {
        rung.grew_inch.clone()
    }
}

/// Text of a mark in inches, or the words that stand in its place.
fn inches(inch: Option<&String>, manner: Manner, lines: &Lines) -> String {
    match inch {
        Some(inch) => format!("{inch} in"),
        None if manner.is_metric => String::new(),
        None => cut_label(lines, LegCutLabel::MillimetresOnly),
    }
}

fn ladder(cut: &CutDoc, manner: Manner, lines: &mut Lines) {
    if cut.growth_ladder.is_empty() {
        return;
    }
    let (of, grew_by) = if manner.is_of_one_end {
        (LegCutLabel::GrowthOfThisEnd, LegCutLabel::ThisEndGrew)
    } else {
        (LegCutLabel::GrowthOfSleeve, LegCutLabel::SleeveGrew)
    };
    lines.laid_out("      ", &PlanLegLabel::Cut(of));
    let [grew_by, cut_at] = [grew_by, LegCutLabel::CutAt].map(|label| cut_label(lines, label));
    let may_lie = lines.say(&CutLabel::MayLie);
    lines.add(&format!("      {grew_by:<14}{cut_at:>12}   {may_lie:>43}"));
    for rung in &cut.growth_ladder {
        let at = match (&rung.inch, &rung.mark_mm) {
            (None, Some(mm)) => format!("{mm} mm"),
            (inch, _) => inches(inch.as_ref(), manner, lines),
        };
        let window = rung.printed_window.as_ref();
        let window = window.map(|window| lines.tongue.window(window));
        let window = window.unwrap_or_default();
        lines.add(&format!("      {:<14}{at:>12}   {window:>43}", grew(rung)));
    }
}

fn stack(stack: &StackDoc, lines: &mut Lines) {
    let most = stack
        .shares
        .first()
        .map(|s| s.words.as_str())
        .unwrap_or_default();
    // Rounded outward: the minimum down, the maximum up.
    let (least, greatest) = (
        (stack.min_mm * 10.0).floor() / 10.0,
        (stack.max_mm * 10.0).ceil() / 10.0,
    );
    let head = format!(
        "  {:<33}{:>9.1}{least:>7.1}{greatest:>6.1}",
        stack.what, stack.nominal_mm
    );
    lines.wrap_under(&head, most);
}
