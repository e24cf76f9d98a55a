//! Labels of a ruling, for every page, paper and picture that shows one.
#![expect(missing_docs, reason = "the name of a label says what is said")]

use super::Label;
use crate::Tongue;
use jointwright_joint::limit::Outcome;
use jointwright_joint::plan::{Bound, Figure, Figures, RulingDoc};
use jointwright_joint::said::Language;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A label of a ruling.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum RulingLabel {
    InWindow,
    OutOfWindow,
    NotJudged,
    /// Whom it concerns, where that is neither a leg nor an end.
    Joint,
    /// Value with its error, limit, what is left between them.
    Figures {
        is_computed: bool,
        unit: String,
        figures: Box<Figures>,
        decides: Option<String>,
    },
}

impl From<Outcome> for RulingLabel {
    fn from(outcome: Outcome) -> RulingLabel {
        match outcome {
            Outcome::Pass => RulingLabel::InWindow,
            Outcome::Fail => RulingLabel::OutOfWindow,
            Outcome::NotJudged => RulingLabel::NotJudged,
        }
    }
}

impl Tongue {
    /// The one word for an outcome.
    pub fn outcome(self, outcome: Outcome) -> String {
        self.label(&RulingLabel::from(outcome))
    }

    /// Whom a ruling concerns: an end, a leg, or the whole joint.
    pub fn whom(self, ruling: &RulingDoc) -> String {
        match (&ruling.end, &ruling.leg) {
            (Some(end), _) => end.clone(),
            (None, Some(leg)) => leg.clone(),
            (None, None) => self.label(&RulingLabel::Joint),
        }
    }

    /// Figures that decide a ruling; `None` where it does not rest on numbers with a margin.
    pub fn figures(self, ruling: &RulingDoc) -> Option<String> {
        let is_us = self.words == jointwright_joint::cable::Words::Us;
        Some(self.label(&RulingLabel::Figures {
            is_computed: ruling.computed,
            unit: ruling.unit.clone()?,
            figures: Box::new(ruling.figures(is_us)?),
            decides: ruling.decides.clone(),
        }))
    }
}

impl Label for RulingLabel {
    fn text(&self, tongue: Tongue) -> String {
        match tongue.language {
            Language::English => english(self),
            Language::Spanish => spanish(self),
        }
    }
}

/// Value, then limit, with the one word that differs between languages.
fn joined(figure: &Figure, to: &str) -> String {
    match figure {
        Figure::One(one) => one.clone(),
        Figure::Range(low, high) => format!("{low} {to} {high}"),
    }
}

fn error(figures: &Figures) -> String {
    let error = figures.error.as_ref();
    error.map_or(String::new(), |error| format!(" ± {error}"))
}

fn inches(figures: &Figures, to: &str) -> String {
    let inches = figures.inches.as_ref();
    inches.map_or(String::new(), |[low, high]| {
        format!(" ({low} {to} {high} in)")
    })
}

fn after(decides: Option<&String>) -> String {
    decides.map_or(String::new(), |why| format!(": {why}"))
}

fn english(label: &RulingLabel) -> String {
    match label {
        RulingLabel::InWindow => "in window".to_owned(),
        RulingLabel::OutOfWindow => "out of window".to_owned(),
        RulingLabel::NotJudged => "not judged".to_owned(),
        RulingLabel::Joint => "joint".to_owned(),
        RulingLabel::Figures {
            is_computed,
            unit,
            figures,
            decides,
        } => format!(
            "{} {}{} {unit}, {} {unit}{}; {} {unit} left{}",
            if *is_computed { "computed" } else { "found" },
            joined(&figures.value, "to"),
            error(figures),
            match &figures.limit {
                Bound::AtMost(most) => format!("at most {most}"),
                Bound::AtLeast(least) => format!("at least {least}"),
                Bound::KeepTo(to) => format!("to keep to {to}"),
                Bound::Within(low, high) => format!("within {low} to {high}"),
            },
            inches(figures, "to"),
            figures.margin,
            after(decides.as_ref())
        ),
    }
}

fn spanish(label: &RulingLabel) -> String {
    match label {
        RulingLabel::InWindow => "dentro de rango".to_owned(),
        RulingLabel::OutOfWindow => "fuera de rango".to_owned(),
        RulingLabel::NotJudged => "sin juzgar".to_owned(),
        RulingLabel::Joint => "empalme".to_owned(),
        RulingLabel::Figures {
            is_computed,
            unit,
            figures,
            decides,
        } => {
            // The one unit that is a word.
            let unit = if unit == "times" { "veces" } else { unit };
            format!(
                "{} {}{} {unit}, {} {unit}{}; quedan {} {unit}{}",
                if *is_computed {
                    "calculado"
                } else {
                    "encontrado"
                },
                joined(&figures.value, "a"),
                error(figures),
                match &figures.limit {
                    Bound::AtMost(most) => format!("como máximo {most}"),
                    Bound::AtLeast(least) => format!("al menos {least}"),
                    Bound::KeepTo(to) => format!("debe ser {to}"),
                    Bound::Within(low, high) => format!("debe estar entre {low} y {high}"),
                },
                inches(figures, "a"),
                figures.margin,
                after(decides.as_ref())
            )
        }
    }
}
