//! Taper: the tapered plug under the body of a separable leg, and the part of the body around it.
//!
//! ```text
//!   r
//!   |  outside, at earth
//!   |  ....................................................
//!   |  deflector )           body          ( electrode
//!   |  ===========)                       (================
//!   |  collar \-------- film --------------------- small end
//!   |         |          plug
//!   +---------+------------------------------------------- z, from the large end
//!      stud
//! ```
//!
//! Not here: the drawing of the section (`section`).

use super::inner::{Filler, REGION, Region, read_region};
use super::reader::RowReader;
use super::word::ORIGINS;
use crate::form::Need::{Optional, Required};
use crate::form::{Kind, Record, Shape, field};
use jiff::civil::Date;
use jointwright_units::{Interval, Length};

/// Fields of the table `taper`.
pub(super) const TAPER: Shape = Shape {
    name: "taper",
    about: "The tapered plug that the body of a separable leg sits on, and what of the body lies around it; where it is not known the field there cannot be judged.",
    fields: &[
        field(
            "origin",
            Kind::Choice(ORIGINS),
            Required,
            "From the maker, or measured on parts cut open.",
        ),
        field("by", Kind::Text, Required, "Who stands for it."),
        field("date", Kind::Date, Required, "When."),
        field(
            "uncertainty",
            Kind::Above(&Kind::Diameter),
            Required,
            "How far off any of it may be.",
        ),
        field(
            "stud_diameter",
            Kind::Above(&Kind::Diameter),
            Required,
            "Diameter of the conductor inside the plug.",
        ),
        field(
            "plug_permittivity",
            Kind::Number {
                least: 1.0,
                greatest: 20.0,
            },
            Required,
            "Relative permittivity of what the plug is made of.",
        ),
        field(
            "large_diameter",
            Kind::Above(&Kind::Diameter),
            Required,
            "Diameter of the plug's large end, at the collar that is earthed: position 0.",
        ),
        field(
            "small_diameter",
            Kind::Above(&Kind::Diameter),
            Required,
            "Diameter of the plug's small end.",
        ),
        field(
            "length",
            Kind::Above(&Kind::Cut),
            Required,
            "Distance along the axis from the large end to the small end.",
        ),
        field(
            "film_thickness_least",
            Kind::Diameter,
            Required,
            "Least thickness of the film that the fit leaves between plug and body, square to the cone.",
        ),
        field(
            "film_thickness_greatest",
            Kind::Above(&Kind::Diameter),
            Required,
            "Greatest thickness of that film.",
        ),
        field(
            "filler",
            Kind::Text,
            Optional,
            "What fills the film; with `filler_permittivity`, or neither.",
        ),
        field(
            "filler_permittivity",
            Kind::Number {
                least: 1.0,
                greatest: 1.0e3,
            },
            Optional,
            "Relative permittivity of the filler.",
        ),
        field(
            "filler_permanent",
            Kind::Flag,
            Optional,
            "True where the paper calls the filler permanent there.",
        ),
        field(
            "region",
            Kind::Rows(&REGION),
            Required,
            "The materials around the plug; positions run from the large end towards the small end.",
        ),
    ],
};

/// Tapered plug inside the body of a separable leg, and the part of the body around it.
#[derive(Clone, Debug, PartialEq)]
pub struct Taper {
    /// Whether a user measured it on parts cut open (otherwise the maker gave it).
    pub measured: bool,
    /// Person who answers for it.
    pub by: String,
    /// Date.
    pub date: Date,
    /// Uncertainty of every place in it.
    pub uncertainty: Length,
    /// Diameter of the conductor inside the plug.
    pub stud_diameter: Length,
    /// Relative permittivity of the plug.
    pub relative_permittivity: f64,
    /// Diameter of its large end, at the earthed collar.
    pub large_diameter: Length,
    /// Diameter of its small end.
    pub small_diameter: Length,
    /// Distance along the axis between the two ends.
    pub length: Length,
    /// Thickness of the film between plug and body, square to the cone.
    pub film_thickness: Interval,
    /// Filler of the film.
    pub filler: Option<Filler>,
    /// Materials around the plug.
    pub regions: Vec<Region>,
}

/// Reads the table `taper` of a row, if it has one.
pub(super) fn read_taper(reader: &mut RowReader<'_>, record: &Record) -> Option<Taper> {
    let taper = record.record("taper")?;
    let regions = taper
        .records("region")
        .filter_map(|row| read_region(reader, row))
        .collect();
    let film_thickness = reader.interval(taper, "film_thickness_least", "film_thickness_greatest");
    let filler = read_film_filler(reader, taper);
    let read = Taper {
        measured: taper.text("origin")? == "measured",
        by: taper.string("by")?,
        date: taper.date("date")?,
        uncertainty: taper.length("uncertainty")?,
        stud_diameter: taper.length("stud_diameter")?,
        relative_permittivity: taper.number("plug_permittivity")?,
        large_diameter: taper.length("large_diameter")?,
        small_diameter: taper.length("small_diameter")?,
        length: taper.length("length")?,
        film_thickness: film_thickness?,
        filler,
        regions,
    };
    complain_of_cone(reader, taper, &read);
    Some(read)
}

/// Complains of a plug that does not narrow from its large end to its stud.
fn complain_of_cone(reader: &mut RowReader<'_>, record: &Record, taper: &Taper) {
    let (large, small, stud) = (
        taper.large_diameter,
        taper.small_diameter,
        taper.stud_diameter,
    );
    if small >= large {
        reader.complain(
            record.at("small_diameter"),
            format!("`small_diameter` is {small} and `large_diameter` {large}; a plug narrows towards its small end."),
            "Exchange them, or look them up again.",
        );
    }
    if stud >= small {
        reader.complain(
            record.at("stud_diameter"),
            format!("`stud_diameter` is {stud} and `small_diameter` {small}; the stud lies inside the plug."),
            "Look both up again.",
        );
    }
}

fn read_film_filler(reader: &mut RowReader<'_>, taper: &Record) -> Option<Filler> {
    match (taper.string("filler"), taper.number("filler_permittivity")) {
        (Some(name), Some(relative_permittivity)) => Some(Filler {
            name,
            relative_permittivity,
            is_permanent: taper.flag("filler_permanent").unwrap_or(false),
        }),
        (None, None) => {
            if taper.is_given("filler_permanent") {
                reader.complain(
                    taper.at("filler_permanent"),
                    "`filler_permanent` stands without a `filler`.".to_owned(),
                    "Name the filler and its permittivity, or take the mark away.",
                );
            }
            None
        }
        _ => {
            reader.complain(
                taper.at,
                "`filler` and `filler_permittivity` say something only together.".to_owned(),
                "Give both, or neither where nothing fills the film.",
            );
            None
        }
    }
}
