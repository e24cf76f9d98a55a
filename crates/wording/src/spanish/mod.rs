//! Spanish.
//!
//! For crews in the Americas: the decimal point, `degC`, `kV`, `mm` and `in` stay as they are printed in English.

mod ask;
mod assumed;
mod built;
mod caution;
pub(crate) mod check;
mod closing;
mod cut;
mod duty;
mod edge;
mod fault;
mod field;
mod fit;
mod form;
mod heat;
mod hold;
mod job;
mod job_kind;
mod job_whole;
mod kit;
mod length;
mod letter;
mod limit;
mod load;
mod measured;
pub(crate) mod noun;
mod plan;
mod pressure;
mod rating;
mod rows;
mod seal;
mod section;
mod shield;
mod slack;
mod soil;
mod solver;
mod step;
mod store;
mod stress;
mod study;
mod truck;
mod unsettled;
mod warming;
mod water;
mod way;
mod word;

use crate::{Tongue, joined};
use jointwright_joint::said::{Said, Wording};

/// A message in Spanish.
pub(crate) fn say(tongue: Tongue, said: &Said) -> String {
    let say = |said: &Said| tongue.say(said);
    match said {
        Said::Text(text) => text.clone(),
        Said::All(all) => joined(tongue, all, "; "),
        Said::Listed(all) => joined(tongue, all, ", "),
        Said::Aside(said, aside) => format!("{} ({})", say(said), say(aside)),
        Said::Of(about, said) => format!("{}: {}", say(about), say(said)),
        Said::Questions(questions) => format!("Pregunte: {}", joined(tongue, questions, " ")),
        Said::Measured(said) => measured::say(tongue, said),
        Said::Stress(said) => stress::say(tongue, said),
        Said::Kit(said) => kit::say(tongue, said),
        Said::Load(said) => load::say(said),
        Said::Subject(subject) => tongue.subject(subject),
        Said::Sentences(all) => joined(tongue, all, " "),
        Said::Check(slug) => check::question(slug).unwrap_or(slug).to_owned(),
        Said::CheckName(slug) => tongue.check(slug),
        Said::Ask(said) => ask::say(tongue, said),
        Said::Heat(said) => heat::say(tongue, said),
        Said::Plan(said) => plan::say(tongue, said),
        Said::Letter(said) => letter::say(tongue, said),
        Said::Rating(said) => rating::say(tongue, said),
        Said::Assumed(said) => assumed::say(**said).to_owned(),
        Said::Soil(said) => soil::say(tongue, said),
        Said::Solver(said) => solver::say(said),
        Said::Cut(said) => cut::say(tongue, said),
        Said::Rows(said) => rows::say(tongue, said),
        Said::Whose(of) => cut::whose(of),
        Said::Limit(said) => limit::say(tongue, said),
        Said::Form(said) => form::say(said),
        Said::Job(said) => job::say(tongue, said),
        Said::Fit(said) => fit::say(tongue, said),
        Said::Duty(said) => duty::say(tongue, said),
        Said::Section(said) => section::say(said),
        Said::Study(said) => study::say(tongue, said),
        Said::Pressure(said) => pressure::say(tongue, said),
        Said::Seal(said) => seal::say(tongue, said),
        Said::Edge(said) => edge::say(tongue, said),
        Said::Slack(said) => slack::say(tongue, said),
        Said::Water(said) => water::say(said),
        Said::Built(said) => built::say(tongue, said),
        Said::Way(said) => way::say(tongue, said),
        Said::BuiltHint(said) => built::hint(said),
        Said::Closing(said) => closing::say(tongue, said),
        Said::Fault(said) => fault::say(tongue, said),
        Said::Shield(said) => shield::say(tongue, said),
        Said::Warming(said) => warming::say(tongue, said),
        Said::Caution(said) => caution::say(tongue, said),
        Said::Hold(said) => hold::say(tongue, said),
        Said::Step(said) => step::say(tongue, said),
        Said::Truck(said) => truck::say(tongue, said),
        Said::Unsettled(said) => unsettled::say(tongue, said),
        Said::Word(word) => word::say(tongue, word),
        Said::Doubt(doubt) => word::doubt(doubt),
        Said::Paper(paper) => word::paper(paper),
    }
}
