//! Language: languages of a plan.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Language of pages and papers, by its code in ISO 639-1.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default, Serialize, Deserialize, JsonSchema)]
pub enum Language {
    /// English.
    #[default]
    #[serde(rename = "en")]
    English,
    /// Spanish.
    #[serde(rename = "es")]
    Spanish,
}

impl Language {
    /// All languages.
    pub const ALL: [Language; 2] = [Language::English, Language::Spanish];

    /// Code in ISO 639-1.
    pub const fn code(self) -> &'static str {
        match self {
            Language::English => "en",
            Language::Spanish => "es",
        }
    }
}
