//! Messages about sections: reasons why one cannot be drawn, and questions for it.
#![expect(
    missing_docs,
    reason = "the sentence of each message stands in `wording`"
)]

use super::{FieldDuty, Said};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Messages about sections.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum SectionSaid {
    Shape(SectionShape),
    Plug(PlugShape),
    Row(SectionRow),
    Ask(SectionAsk),
}

/// Part of an outline.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Contour {
    Electrode,
    Deflector,
    Outside,
}

/// Layer between cable and body.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Between {
    Adapter,
    SpreadsTheField,
}

/// Reason why dimensions make no section.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum SectionShape {
    CornerNotRounded {
        along_mm: f64,
        diameter_mm: f64,
        radius_mm: f64,
        takes_mm: f64,
        there_mm: f64,
    },
    RoundedAtEnd {
        contour: Contour,
        at_mm: f64,
    },
    NotReachingEnd {
        contour: Contour,
        at_mm: f64,
    },
    ScreenNotInside {
        screen_mm: f64,
        insulation_mm: f64,
    },
    NoRoomOverScreen {
        between: Between,
        outside_mm: f64,
        screen_mm: f64,
    },
    NearJunction {
        electrode_mm: f64,
    },
    InsulationShort {
        insulation_mm: f64,
        electrode_mm: f64,
    },
    ScreenAtElectrode {
        first_mm: f64,
        electrode_mm: f64,
    },
    BodyShort {
        end_mm: f64,
    },
    /// Finding of the check of outlines, in its own words.
    NoSection {
        flaw: String,
    },
}

/// Reason why the dimensions of a plug make no section.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum PlugShape {
    Length {
        length: String,
    },
    NotTapered {
        small: String,
        large: String,
    },
    StudOutside {
        stud: String,
        small: String,
    },
    FilmThickness {
        thickness_mm: f64,
    },
    LiesShort {
        duty: FieldDuty,
        over_mm: f64,
        least_mm: f64,
    },
    LittleBetween {
        deflector_mm: f64,
        electrode_mm: f64,
        least_mm: f64,
    },
    BodyShort {
        end_mm: f64,
        wall_mm: f64,
        electrode_mm: f64,
    },
    NothingOnBore {
        duty: FieldDuty,
    },
}

/// Fact that a row lacks, or contradiction within the row.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum SectionRow {
    InsideNotKnown {
        part: String,
    },
    InsideNotWhole {
        part: String,
    },
    SharpInside {
        part: String,
    },
    CornersOnBore {
        part: String,
        region: String,
        n_corners: u32,
        diameter: String,
    },
    ServesOtherwise {
        part: String,
        region: String,
        serves_as_conductor: bool,
        conducts: bool,
    },
    PlugNotKnown {
        part: String,
    },
    SharpAroundPlug,
    AroundPlugNotWhole,
    CornersOnCone {
        region: String,
        n_corners: u32,
        within_mm: f64,
    },
    Region {
        region: String,
    },
    BeginsOnBore {
        found_mm: f64,
        end_mm: f64,
    },
    NotReaching {
        end_mm: f64,
    },
    OutsideNotReaching {
        begin_mm: f64,
    },
}

/// Questions for a section.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum SectionAsk {
    CornerRadius {
        region: String,
        along_mm: f64,
        diameter_mm: f64,
    },
    OnWhatDiameter {
        part: String,
    },
    OverEdge {
        part: String,
    },
    WhereLies {
        part: String,
        duty: FieldDuty,
    },
    Permittivity {
        part: String,
    },
    Inside {
        part: String,
    },
    EdgeRadii {
        part: String,
    },
    PlugCornerRadius {
        region: String,
        along_mm: f64,
        diameter_mm: f64,
    },
    PlugWhereLies {
        duty: FieldDuty,
    },
    PlugPermittivity,
    PlugSizes {
        part: String,
    },
    PlugFilm {
        part: String,
    },
    PlugInside {
        part: String,
    },
}

impl From<SectionShape> for Said {
    fn from(said: SectionShape) -> Said {
        SectionSaid::Shape(said).into()
    }
}

impl From<PlugShape> for Said {
    fn from(said: PlugShape) -> Said {
        SectionSaid::Plug(said).into()
    }
}

impl From<SectionRow> for Said {
    fn from(said: SectionRow) -> Said {
        SectionSaid::Row(said).into()
    }
}

impl From<SectionAsk> for Said {
    fn from(said: SectionAsk) -> Said {
        SectionSaid::Ask(said).into()
    }
}
