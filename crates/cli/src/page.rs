//! Page: what a crew reads in the terminal, 80 columns, nothing by colour alone.
//!
//! Not here: any number or rule of its own; it prints the plan document.

use crate::asks_page::asks;
use jointwright_joint::cable::Words;
use jointwright_joint::catalogue::{PartKind, die_words};
use jointwright_joint::limit::Outcome;
use jointwright_joint::plan::StopDoc;
use jointwright_joint::plan::{
    ConnectorDoc, CutDoc, LegDoc, MarkDoc, PartDoc, Plan, PrintedWindowDoc, ProposalDoc, RulingDoc,
    RungDoc, StackDoc, outcome_words,
};
use jointwright_wording::Tongue;

/// Width of a terminal that every crew has.
const WIDTH: usize = 80;

/// The page of a plan, without any styling.
pub fn page(plan: &Plan) -> String {
    let mut lines = Lines::default();
    head(plan, &mut lines);
    asks(plan, &mut lines);
    for legs in alike_legs(plan) {
        lines.blank();
        leg(plan, &legs, &mut lines);
    }
    warm(plan, &mut lines);
    if let Some(leg) = plan.legs.first() {
        lines.blank();
        lines.wrap("", &format!("Shields: {}", leg.shield.never));
    }
    blanks(plan, &mut lines);
    unsettled(plan, &mut lines);
    fails(plan, &mut lines);
    not_judged(plan, &mut lines);
    closed(plan, &mut lines);
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

/// What was written, and where.
pub fn written(folder: &str, names: &[&str]) -> String {
    let mut lines = Lines::default();
    lines.blank();
    // A path is one word: it is never broken.
    lines.add(&format!("Wrote into {folder}:"));
    lines.wrap("  ", &names.join(", "));
    lines.text
}

/// Lines of a page, none wider than it.
#[derive(Default)]
pub struct Lines {
    /// What has been written so far.
    pub text: String,
}

impl Lines {
    /// Adds a line.
    pub fn add(&mut self, line: &str) {
        self.text.push_str(line.trim_end());
        self.text.push('\n');
    }

    /// Adds an empty line.
    pub fn blank(&mut self) {
        self.text.push('\n');
    }

    /// Text wrapped at the width, later lines indented.
    pub fn wrap(&mut self, indent: &str, text: &str) {
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

    /// A line of columns; where its last column is too long for the page, that stands on the next line.
    pub fn wrap_under(&mut self, head: &str, last: &str) {
        let line = format!("{head}  {last}");
        if line.chars().count() <= WIDTH {
            self.add(&line);
            return;
        }
        self.add(head);
        self.wrap("      ", last);
    }

    /// An empty line, then a heading.
    pub fn heading(&mut self, text: &str) {
        self.blank();
        self.wrap("", text);
    }
}

/// What stands across an invented page.
pub fn banner(plan: &Plan, lines: &mut Lines) {
    banner_of(plan.invented.as_deref(), lines);
}

/// The same of any document.
pub fn banner_of(invented: Option<&str>, lines: &mut Lines) {
    if let Some(invented) = invented {
        lines.add(&format!("{:*^WIDTH$}", format!(" {invented} ")));
    }
}

/// What tells this plan from every other, the first that is read.
pub fn mark(mark: &MarkDoc, lines: &mut Lines) {
    lines.wrap("", &format!("{}: {}", mark.words(), mark.aloud));
    lines.wrap("  ", &mark.line());
}

/// What fails on the joint, before any number of another page of it.
pub fn verdict(outcome: Outcome, fails: &[String], lines: &mut Lines) {
    match outcome {
        Outcome::Fail => {
            lines.wrap("", "THIS JOINT FAILS ITS PLAN: CUT NOTHING. What follows makes up for none of it; `plan` says all.");
            for fail in fails {
                lines.wrap("  ", &format!("FAILS {fail}"));
            }
        }
        Outcome::Pass => lines.wrap(
            "",
            "Every ruling of the plan passes; that does not say that it may be built.",
        ),
        Outcome::NotJudged => lines.wrap("", "Nothing fails in the plan; not all is judged there."),
    }
}

fn head(plan: &Plan, lines: &mut Lines) {
    banner(plan, lines);
    mark(&plan.plan_mark, lines);
    lines.wrap("", &format!("{}: {}", plan.job.id, plan.job.title));
    let job = &plan.job;
    lines.wrap(
        "  ",
        &format!(
            "{} joint, {}, {}, work day {}",
            job.kind.name(),
            phases(plan),
            job.place,
            job.date
        ),
    );
    let count = |outcome: Outcome| plan.rulings.iter().filter(|r| r.ruling == outcome).count();
    lines.wrap(
        "  ",
        &format!(
            "Checked: {} {}, {} {}, {} {}. {}",
            count(Outcome::Pass),
            outcome_words(Outcome::Pass),
            count(Outcome::NotJudged),
            outcome_words(Outcome::NotJudged),
            count(Outcome::Fail),
            outcome_words(Outcome::Fail),
            standing(plan)
        ),
    );
    lines.wrap("  ", &call(plan));
    lines.add("  A1 is leg A, phase 1. The parts' own instructions prevail over this page.");
}

fn call(plan: &Plan) -> String {
    let call = &plan.job.stop_and_call;
    format!("Stop and call: {}, {}", call.name, call.number)
}

/// The verdict in words, and what has no place yet.
pub fn standing(plan: &Plan) -> String {
    let mut unplaced: Vec<&str> = Vec::new();
    for cut in plan.legs.iter().flat_map(|leg| &leg.cuts) {
        if cut.nominal_mm.is_none() && !unplaced.contains(&cut.words.as_str()) {
            unplaced.push(&cut.words);
        }
    }
    if plan.must_stop() || unplaced.is_empty() {
        return outcome(plan).to_owned();
    }
    format!(
        "NOT COMPLETE: no place yet for {}. {}",
        unplaced.join(", "),
        outcome(plan)
    )
}

fn outcome(plan: &Plan) -> &'static str {
    match plan.outcome {
        Outcome::Fail => "OUT OF WINDOW: CUT NOTHING.",
        _ if plan.must_stop() => {
            "STOP: CUT NOTHING. Nothing of it is out of window, and work stops all the same."
        }
        Outcome::Pass => "All is in window; that does not say that it may be built.",
        Outcome::NotJudged => "Nothing is out of window; not all is judged.",
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

fn leg(plan: &Plan, legs: &[&LegDoc], lines: &mut Lines) {
    let Some(first) = legs.first() else { return };
    let names: Vec<&str> = legs.iter().map(|l| l.mark.as_str()).collect();
    let which = if names.len() == 1 {
        format!("LEG {}", names[0])
    } else {
        format!("LEGS {}", names.join(", "))
    };
    lines.wrap("", &format!("{which}, {}: {}", phases(plan), first.cable));
    for leg in legs {
        let port = leg
            .port
            .map(|port| format!(", bus port {port}"))
            .unwrap_or_default();
        let to = leg
            .goes_to
            .as_ref()
            .map(|to| format!(" goes to {to}"))
            .unwrap_or_default();
        lines.wrap("  ", &format!("leg {}{port}{to}", leg.mark));
    }
    let manner = Manner {
        is_withheld: stops(plan, legs, lines),
        is_metric: plan.job.words == Words::Iec,
        is_of_one_end: first.connector.as_ref().is_some_and(|c| c.end.is_some()),
    };
    parts(first, lines);
    if !manner.is_withheld {
        lines.add("  Measure from the square-cut conductor end, back along the cable.");
        lines.add("  Set off every mark before the connector is made.");
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
        lines.add("  For the engineer, mm                planned  least  most  widest share");
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

/// The shield of each leg beyond the joint.
fn shields(legs: &[&LegDoc], lines: &mut Lines) {
    lines.add("  Shield beyond the joint, for the engineer");
    for leg in legs {
        let shield = &leg.shield;
        let mut said = shield.lines.clone();
        if !shield.not_known.is_empty() {
            said.push(format!(
                "Not known: {} (questions in plan.json).",
                shield.not_known.join("; ")
            ));
        }
        lines.wrap("      ", &format!("{}: {}", leg.mark, said.join(" ")));
    }
}

/// How hard the parts of each end sit, ends that say the same together.
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
    lines.add("  Pressed on the cable, for the engineer");
    for (line, names) in said {
        lines.wrap("      ", &format!("{}: {line}", names.join(" ")));
    }
}

/// How warm the joint gets under load.
fn warm(plan: &Plan, lines: &mut Lines) {
    let Some(warm) = plan.warm.as_ref().filter(|warm| !warm.legs.is_empty()) else {
        return;
    };
    lines.heading("UNDER LOAD, FOR THE ENGINEER");
    for leg in &warm.legs {
        for line in &leg.lines {
            lines.wrap("  ", &format!("{}: {line}", leg.leg));
        }
    }
}

/// What stops work on these legs; true where a ruling fails, so that no number is printed to be cut to.
fn stops(plan: &Plan, legs: &[&LegDoc], lines: &mut Lines) -> bool {
    let names: Vec<&str> = legs.iter().map(|l| l.mark.as_str()).collect();
    // One body or one bus holds all legs, so what fails on one leaves nothing to cut on the others.
    let fails: Vec<&RulingDoc> = plan
        .rulings
        .iter()
        .filter(|r| r.ruling == Outcome::Fail)
        .collect();
    let here = fails
        .iter()
        .any(|r| r.leg.as_deref().is_none_or(|l| names.contains(&l)));
    if here {
        lines
            .add("  STOP: SOMETHING HERE IS OUT OF WINDOW. CUT NOTHING. READ IT BELOW, THEN CALL.");
    } else if !fails.is_empty() {
        lines.add("  STOP: ANOTHER LEG IS OUT OF WINDOW. CUT NOTHING. READ IT BELOW, THEN CALL.");
    }
    stopped(plan, &names, lines);
    if plan.is_parking_open() {
        lines.add("  NO LEG IS NAMED TO PARK THE BODY: settle it before any connector is made.");
    }
    plan.must_stop()
}

/// What stops work on these legs though nothing fails, and whose word lifts it.
fn stopped(plan: &Plan, names: &[&str], lines: &mut Lines) {
    let is_here = |stop: &&StopDoc| names.iter().any(|leg| stop.concerns(leg, None));
    for stop in plan.stops.iter().filter(is_here) {
        let said = match &stop.lifted_by {
            Some(word) => format!("Work goes on by the word of {word}. {}", stop.say),
            None => format!("STOP AND CALL: {}: {}", stop.whom, stop.say),
        };
        lines.wrap("  ", &said);
    }
    if plan.outcome != Outcome::Fail && plan.must_stop() {
        lines.add("  STOP: CUT NOTHING HERE UNTIL A NAMED PERSON HAS SAID WHAT IT IS.");
    }
}

/// How the numbers of a leg are printed.
#[derive(Clone, Copy)]
struct Manner {
    /// Not at all, because something fails.
    is_withheld: bool,
    /// In millimetres only.
    is_metric: bool,
    /// With the growth of one end alone, for a sleeve whose ends differ.
    is_of_one_end: bool,
}

fn parts(leg: &LegDoc, lines: &mut Lines) {
    if leg.parks {
        lines.add("  The body parks on this leg: it is on before the connector is made.");
    }
    for part in &leg.parts {
        let moves = part
            .may_move
            .as_ref()
            .map(|m| format!("; may be moved: {m}"));
        let moves = moves.unwrap_or_default();
        lines.wrap(
            "  ",
            &format!(
                "{}: {}{} ({}){moves}",
                part.kind.name(),
                part.id,
                side(part),
                part.instructions
            ),
        );
        if let (Some(connector), PartKind::Connector) = (&leg.connector, part.kind) {
            self::connector(connector, lines);
        }
    }
}

/// The side by which a leg comes into a body whose sides differ.
fn side(part: &PartDoc) -> String {
    let side = part.side.as_ref();
    side.map(|side| format!(", side {side}"))
        .unwrap_or_default()
}

/// Presses of each end, or of the end named where the two differ.
fn presses(n: i64, connector: &ConnectorDoc) -> String {
    match &connector.end {
        Some(_) => format!("{n} presses at this end"),
        None => format!("{n} presses an end"),
    }
}

fn connector(connector: &ConnectorDoc, lines: &mut Lines) {
    let mut words = vec![connector.means.name().to_owned()];
    words.extend(connector.die.as_deref().map(die_words));
    words.extend(connector.end.as_ref().map(|end| format!("end {end}")));
    words.extend(connector.presses.map(|n| presses(n, connector)));
    lines.wrap("      ", &words.join(", "));
    if let Some(why) = &connector.end_open {
        lines.wrap("      ", &format!("WHICH END IS NOT KNOWN: {why}"));
    }
    if let (Some([least, most]), Some(source)) =
        (connector.growth_of_mouth_mm, &connector.growth_source)
    {
        lines.wrap(
            "      ",
            &format!("each mouth grows {least:.1} to {most:.1} mm ({source}); the insulation cut holds that already"),
        );
    }
}

/// One place to cut or mark: a line with its name and both units, a line with where it may lie, lines with whose word place and window are.
fn cut(cut: &CutDoc, manner: Manner, lines: &mut Lines) {
    let name = format!("{} {}", cut.act(), cut.words);
    let (inch, mm) = match (manner.is_withheld, &cut.nominal_mm, &cut.inch, &cut.mark_mm) {
        (true, ..) => ("withheld".to_owned(), "withheld".to_owned()),
        (_, Some(_), inch, Some(mm)) => (inches(inch.as_ref(), manner), format!("{mm} mm")),
        _ => ("not yet".to_owned(), "not yet".to_owned()),
    };
    lines.add(&format!("  {name:<44}{inch:>14}{mm:>14}"));
    if manner.is_withheld {
        return;
    }
    if let Some(window) = &cut.printed_window {
        lines.add(&format!("      {:<25}{:>43}", "may lie", window.text()));
        if let Some(edge) = cut.at_edge() {
            lines.add(&format!("      {edge}"));
        }
    }
    if let Some(keeps) = &cut.keeps {
        lines.wrap("      ", keeps);
    }
    for word in cut.whose_words() {
        lines.wrap("      ", &word);
    }
    if let Some(narrowed) = &cut.narrowed {
        lines.wrap("      ", &format!("narrowed: {}", narrowed.text));
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

/// A mark in inches, or what stands in its place.
fn inches(inch: Option<&String>, manner: Manner) -> String {
    match inch {
        Some(inch) => format!("{inch} in"),
        None if manner.is_metric => String::new(),
        None => "mm only".to_owned(),
    }
}

fn ladder(cut: &CutDoc, manner: Manner, lines: &mut Lines) {
    if cut.growth_ladder.is_empty() {
        return;
    }
    lines.add("      Choose no row by guess; between two rows, use none: press a trial,");
    let (of, grew_by) = if manner.is_of_one_end {
        ("this end, pressed alone", "this end grew")
    } else {
        ("the whole sleeve", "sleeve grew")
    };
    lines.add(&format!(
        "      write it into the job and plan again. Growth is of {of}."
    ));
    lines.add(&format!(
        "      {grew_by:<14}{:>12}   {:>43}",
        "cut at", "may lie"
    ));
    for rung in &cut.growth_ladder {
        let at = match (&rung.inch, &rung.mark_mm) {
            (None, Some(mm)) => format!("{mm} mm"),
            (inch, _) => inches(inch.as_ref(), manner),
        };
        let window = rung
            .printed_window
            .as_ref()
            .map(PrintedWindowDoc::text)
            .unwrap_or_default();
        lines.add(&format!("      {:<14}{at:>12}   {window:>43}", grew(rung)));
    }
}

fn stack(stack: &StackDoc, lines: &mut Lines) {
    let most = stack
        .shares
        .first()
        .map(|s| s.words.as_str())
        .unwrap_or_default();
    // Rounded outward: the least is shown no greater than it is, the greatest no smaller.
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

fn blanks(plan: &Plan, lines: &mut Lines) {
    for blank in &plan.blanks {
        let plug = blank.plug.as_deref().unwrap_or("NO PLUG IS NAMED");
        lines.blank();
        lines.wrap(
            "",
            &format!("PORT {}, blank: insulating plug {plug}", blank.port),
        );
    }
}

/// What about the steps a person must settle.
fn unsettled(plan: &Plan, lines: &mut Lines) {
    if plan.make_up.unsettled.is_empty() {
        return;
    }
    lines.heading("TO SETTLE BEFORE THE WORK");
    for said in &plan.make_up.unsettled {
        lines.wrap("  ", said);
    }
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
    for ruling in plan.rulings.iter().filter(|r| r.ruling == Outcome::Fail) {
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
    lines.heading("OUT OF WINDOW");
    for (ruling, ends) in groups {
        let why = ruling.why.as_deref().unwrap_or_default();
        let why = why.trim_end_matches('.');
        lines.wrap(
            "  ",
            &format!("{}, {}: {why}.", ends.join(" "), words(&ruling.check)),
        );
        if let Some(hint) = &ruling.hint {
            lines.wrap("      ", hint);
        }
        if let Some(source) = &ruling.source {
            lines.wrap("      ", &format!("word of: {source}"));
        }
    }
}

/// A check's name as it is read aloud.
fn words(check: &str) -> String {
    check.replace('_', " ")
}

/// A ruling, and the checks that stand on the same reason, each with whom they concern.
type Alike<'p> = (&'p RulingDoc, Vec<(&'p str, Vec<String>)>);

/// What is not judged, each reason in full and once, with the checks that stand on it.
fn not_judged(plan: &Plan, lines: &mut Lines) {
    let mut groups: Vec<Alike<'_>> = Vec::new();
    let open = |r: &&RulingDoc| r.ruling == Outcome::NotJudged && r.closed_by.is_none();
    for ruling in plan.rulings.iter().filter(open) {
        let same = |(first, _): &&mut (&RulingDoc, _)| first.why == ruling.why;
        match groups.iter_mut().find(same) {
            Some((_, checks)) => {
                match checks.iter_mut().find(|(check, _)| *check == ruling.check) {
                    Some((_, ends)) => ends.push(who(ruling)),
                    None => checks.push((&ruling.check, vec![who(ruling)])),
                }
            }
            None => groups.push((ruling, vec![(&ruling.check, vec![who(ruling)])])),
        }
    }
    lines.heading("NOT JUDGED");
    for (ruling, checks) in groups {
        let named = checks.into_iter().map(|(check, mut ends)| {
            ends.dedup();
            format!("{} ({})", words(check), ends.join(" "))
        });
        let named: Vec<String> = named.collect();
        let why = ruling.why.as_deref().unwrap_or_default();
        lines.wrap("  ", &format!("{}: {why}", named.join(", ")));
        if let (None, Some(hint)) = (ruling.asks.first(), &ruling.hint) {
            lines.wrap("      ", hint);
        }
    }
    for missing in &plan.missing {
        lines.wrap(
            "  ",
            &format!("not computed, something is missing: {missing}"),
        );
    }
    lines.wrap(
        "  ",
        &format!(
            "not computed by this version, whatever is stated: {}",
            plan.not_computed.join(", ")
        ),
    );
}

/// Questions that a named engineer has closed with a word of their own.
fn closed(plan: &Plan, lines: &mut Lines) {
    let closed: Vec<&RulingDoc> = plan
        .rulings
        .iter()
        .filter(|r| r.closed_by.is_some() || r.closed_until.is_some())
        .collect();
    for idle in &plan.idle_closings {
        lines.wrap("  ", idle);
    }
    if closed.is_empty() {
        return;
    }
    lines.heading("NOT JUDGED, CLOSED BY SOMEBODY'S OWN WORD: no pass of this program");
    for ruling in closed {
        let (word, ended) = match (&ruling.closed_by, &ruling.closed_until) {
            (Some(word), _) => (word, ""),
            (None, Some(word)) => (word, "IT HAS RUN OUT AND COUNTS NO MORE: "),
            (None, None) => continue,
        };
        let who = who(ruling);
        lines.wrap(
            "  ",
            &format!("{who}, {}: {ended}{word}", words(&ruling.check)),
        );
    }
}

/// The legs that a proposal is for: one, or all that share the part.
fn legs_of(proposal: &ProposalDoc) -> String {
    if proposal.shared_with.is_empty() {
        return format!("leg {}", proposal.leg);
    }
    format!("legs {} {}", proposal.leg, proposal.shared_with.join(" "))
}

fn proposals(proposals: &[ProposalDoc], lines: &mut Lines) {
    if proposals.is_empty() {
        return;
    }
    lines.heading("LEFT OPEN: somebody with the authority chooses");
    for proposal in proposals {
        let fits: Vec<&str> = proposal.fits.iter().map(|f| f.id.as_str()).collect();
        let found = if fits.is_empty() {
            "no row of the catalogues fits; call".to_owned()
        } else {
            format!("nothing is out of window with {}", fits.join(", "))
        };
        lines.wrap(
            "  ",
            &format!("{}, {}: {found}", legs_of(proposal), proposal.part.name()),
        );
        for misfit in &proposal.does_not_fit {
            lines.wrap("      ", &format!("not {}: {}", misfit.id, misfit.why));
        }
    }
}

fn foot(plan: &Plan, lines: &mut Lines) {
    if !plan.must_stop() {
        governs(plan, lines);
    }
    lines.blank();
    lines.wrap("  ", &call(plan));
    lines.wrap("  ", &plan.never);
    banner(plan, lines);
}

/// What comes nearest to its limit, in a sentence each: of what is measured in millimetres, and of what is computed.
fn governs(plan: &Plan, lines: &mut Lines) {
    let nearest = [
        (&plan.governs, "Of all lengths and diameters"),
        (&plan.governs_computed, "Of the numbers computed"),
    ];
    let said: Vec<String> = nearest
        .into_iter()
        .filter_map(|(ruling, of)| {
            let ruling = ruling.as_ref()?;
            Some(format!(
                "{of} that are {}, {} at {} comes nearest to its limit: {}.",
                outcome_words(Outcome::Pass),
                words(&ruling.check),
                who(ruling),
                Tongue::of_plan(plan).figures(ruling)?
            ))
        })
        .collect();
    if said.is_empty() {
        return;
    }
    lines.heading("LEAST ROOM");
    for line in said {
        lines.wrap("  ", &line);
    }
}
