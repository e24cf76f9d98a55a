//! Case: a section as a file, and the answers as a document.
//!
//! **What.** [`read_question`] turns the text of a `*.case.json` into a section ([`Case`]), a tube of rubber ([`TubeCase`]) or a section that conducts heat ([`HeatCase`]), or reports all its faults in one run; [`read`] accepts sections only;
//! [`document`] makes the answers' document; [`schema`] and [`answers_schema`] describe both.
//!
//! ```text
//! text ─ tree ─ walk ─ drawing ─ matter ─ asked ─ ties ─ Case
//!       (JSON,  (table  (outline,  (materials, (what is  (does every part
//!       places)  of      its flaws) potentials) wanted)   lie between two
//!                words)                                   potentials?)
//! ```
//!
//! **Why separate.** Files use millimetres and kilovolts; only this room knows that, and only this room of the crate has a document form.
//!
//! **Invariants.** No input makes it fail: the result is a case or at least one complaint, each with line, column and the path of the value.
//! Every returned case has an outline without a flaw, and every number in it is finite and in SI units.
//! The table of words in `words` determines both the reading and the schema.
//!
//! **Not here.** Files, clock and terminal; the solution.
//!
//! **Source.** `docs/case-format.md`.

mod asked;
mod complaint;
mod document;
mod drawing;
mod heat;
mod matter;
mod parse;
mod schema;
mod sense;
mod si;
mod ties;
mod tree;
mod tube;
mod walk;
mod words;

pub use asked::Asked;
pub use complaint::Complaint;
pub use document::{AnswerDoc, AnswersDoc, Run, SecondsDoc, answers_schema, document};
pub use heat::HeatCase;
pub use schema::schema;
pub use sense::Refused;
pub use tube::{Held, TubeCase};

use crate::field::Section;
use complaint::Complaints;
use tree::{Node, Segment};
use words::{CASE, Kind};

/// Size of the largest text that is read, bytes.
const SIZE_MOST: usize = 4_000_000;

/// A section case: the section, and the numbers wanted of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Case {
    /// Its name.
    pub name: String,
    /// One line about it; printed on everything that is made from it.
    pub about: String,
    /// Geometry, materials and potentials, in SI units.
    pub section: Section,
    /// The wanted numbers that can be computed, in the order of the file.
    pub wanted: Vec<Asked>,
    /// The wanted numbers whose field is singular, with the reason.
    pub refused: Vec<Refused>,
}

/// Question of a case.
#[derive(Clone, Debug, PartialEq)]
pub enum Question {
    /// The electric field of a section.
    Section(Box<Case>),
    /// The pressure of a tube of rubber.
    Tube(TubeCase),
    /// The temperatures of a section.
    Heat(Box<HeatCase>),
}

/// Reads a section case from the text of its file.
///
/// # Errors
/// All its faults, in the order of the text; or that it is a case of another physics.
///
/// ```
/// use jointwright_numerics::case::read;
/// let text = r#"{"case": "coaxial", "about": "invented", "points": [[1, 0], [2, 0], [2, 5], [1, 5]],
///   "curves": [{"from": 0, "to": 1, "tag": "interior"}, {"from": 1, "to": 2, "tag": "outer"},
///              {"from": 2, "to": 3, "tag": "interior"}, {"from": 3, "to": 0, "tag": "inner"}],
///   "regions": [{"name": "wall", "material": "pe", "boundary": [1, 2, 3, 4]}],
///   "materials": {"pe": {"eps_r": 2.3}}, "potentials_kv": {"inner": 10, "outer": 0},
///   "wanted": [{"name": "E", "kind": "peak-in-region", "region": "wall"}]}"#;
/// let case = read(text).expect("nothing is wrong");
/// assert_eq!(case.section.potentials[0], ("inner".to_owned(), 10_000.0));
/// let said = read(&text.replace("\"outer\": 0", "\"oter\": 0")).unwrap_err();
/// assert!(said[0].message.contains("No curve has the tag \"oter\""));
/// assert_eq!(said[0].path, "potentials_kv.oter");
/// ```
pub fn read(text: &str) -> Result<Case, Vec<Complaint>> {
    match read_question(text)? {
        Question::Section(case) => Ok(*case),
        Question::Tube(_) | Question::Heat(_) => {
            let mut complaints = Complaints::new(text);
            let message = "This is a case of another physics; a section with a field was expected.";
            complaints.add_top(message, "Only \"electric\" cases have a field.");
            Err(complaints.into_sorted())
        }
    }
}

/// Reads a case of any physics from the text of its file.
///
/// # Errors
/// All its faults, in the order of the text.
///
/// ```
/// use jointwright_numerics::case::{Question, read_question};
/// let text = r#"{"case": "tube", "physics": "rubber-tube", "bore_mm": 10, "outer_mm": 20,
///   "law": {"kind": "neo-hookean", "mu_mpa": 0.5}, "ends": "fixed-length", "stretch": 1.5}"#;
/// let Ok(Question::Tube(case)) = read_question(text) else { panic!("no tube") };
/// let pressed = case.pressed().expect("it is pressed");
/// assert!((pressed.pressure_pa - 214_114.2).abs() < 0.1);
/// ```
pub fn read_question(text: &str) -> Result<Question, Vec<Complaint>> {
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let mut complaints = Complaints::new(text);
    let question = read_into(text, &mut complaints);
    let complaints = complaints.into_sorted();
    match question {
        Some(question) if complaints.is_empty() => Ok(question),
        _ => Err(complaints),
    }
}

fn read_into(text: &str, complaints: &mut Complaints<'_>) -> Option<Question> {
    if text.len() > SIZE_MOST {
        let message = format!(
            "The file has {} bytes; a case has at most {SIZE_MOST}.",
            text.len()
        );
        complaints.add_top(message, "This is hardly the file that was meant.");
        return None;
    }
    let tree = parse::parse(text, complaints)?;
    if let tree::Value::List(items) = &tree.value {
        let n = items.len();
        let message =
            format!("Found a list of {n}; expected a table of fields, which is one case.");
        complaints.add(&tree, &[], message, "Give each case of the list a file.");
        return None;
    }
    match tree.text_at("physics") {
        Some(words::RUBBER_TUBE) => tube::tube(&tree, complaints).map(Question::Tube),
        Some(words::HEAT_WORD) => {
            heat::heat(&tree, complaints).map(|case| Question::Heat(Box::new(case)))
        }
        Some(physics) if !words::PHYSICS.contains(&physics) => {
            complain_of_physics(&tree, physics, complaints);
            None
        }
        _ => section(&tree, complaints).map(|case| Question::Section(Box::new(case))),
    }
}

fn complain_of_physics(tree: &Node, physics: &str, complaints: &mut Complaints<'_>) {
    let known: Vec<String> = words::PHYSICS
        .iter()
        .map(|word| complaint::quoted(word))
        .collect();
    let known = known.join(" or ");
    let found = complaint::quoted(physics);
    let hint = complaint::nearest(physics, words::PHYSICS.iter().copied());
    let message = format!("Found {found}; expected {known}.");
    complaints.add(tree, &[Segment::Name("physics")], message, hint);
}

fn section(tree: &Node, complaints: &mut Complaints<'_>) -> Option<Case> {
    walk::walk(tree, &Kind::Table(&CASE), &mut Vec::new(), tree, complaints);
    let outline = drawing::outline(tree, complaints);
    let matter = matter::matter(tree, &outline, complaints);
    let wanted = asked::asked(tree, &outline, &matter, complaints);
    if outline.is_sound && matter.has_all_conductors {
        ties::check(tree, &outline.outline, &matter, &wanted, complaints);
        sense::check(tree, &outline.outline, &matter, complaints);
    }
    let section = Section {
        outline: outline.outline,
        materials: matter.of_region.into_iter().collect::<Option<_>>()?,
        potentials: matter
            .potentials
            .into_iter()
            .map(|p| (p.tag, p.volts))
            .collect(),
        floating: matter.floating,
        regime: matter.regime,
        leave_out: matter.leave_out,
    };
    let wanted = wanted.into_iter().flatten().collect();
    // A drawing with a complaint permits no conclusions.
    let (wanted, refused) = if complaints.len() == 0 {
        sense::bounded(&section, wanted)
    } else {
        (wanted, Vec::new())
    };
    Some(Case {
        name: tree.text_at("case")?.to_owned(),
        about: tree.text_at("about").unwrap_or_default().to_owned(),
        section,
        wanted,
        refused,
    })
}
