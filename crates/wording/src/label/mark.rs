//! Labels of a plan's mark, for every page, paper and picture.
#![expect(missing_docs, reason = "the name of a label says what is said")]

use super::Label;
use crate::Tongue;
use jointwright_joint::plan::MarkDoc;
use jointwright_joint::said::Language;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A label of a plan's mark.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum MarkLabel {
    /// The mark as it stands on every page.
    Plan { short: String },
    /// Issue, and when it was made, in one line.
    Issue { issue: String, made: String },
}

impl Tongue {
    /// The mark as it stands on every page: "PLAN KTRM-47WX".
    pub fn plan_mark(self, mark: &MarkDoc) -> String {
        let short = mark.short.clone();
        self.label(&MarkLabel::Plan { short })
    }

    /// Issue of a plan, and when it was made, in one line.
    pub fn plan_issue(self, mark: &MarkDoc) -> String {
        self.label(&MarkLabel::Issue {
            issue: mark.issue_words.clone(),
            made: mark.made.clone(),
        })
    }
}

impl Label for MarkLabel {
    fn text(&self, tongue: Tongue) -> String {
        match (self, tongue.language) {
            (MarkLabel::Plan { short }, _) => format!("PLAN {short}"),
            (MarkLabel::Issue { issue, made }, Language::English) => {
                format!("{issue}; made {made}")
            }
            (MarkLabel::Issue { issue, made }, Language::Spanish) => {
                format!("{issue}; hecho {made}")
            }
        }
    }
}
