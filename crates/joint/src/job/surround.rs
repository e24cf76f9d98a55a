//! Surround: surroundings of a leg along its axis, and thermal properties of its cable.

use super::one_run::is_run;
use super::reader::JobReader;
use super::shield::Formation;
use crate::catalogue::stuff;
use crate::form::{Record, Span};
use crate::said::{AroundHint, AroundSaid, CableHint, CableSaid};
use jointwright_numerics::heat::Stuff;
use jointwright_units::Length;

/// Surroundings of a leg over a stretch of its axis.
#[derive(Clone, Debug)]
pub struct Surrounding {
    /// Leg; `None` for all legs.
    pub leg: Option<String>,
    /// Name of the surroundings.
    pub what: String,
    /// Distance from the conductor end to the far end of the stretch; `None` for the last one, which goes on.
    pub until: Option<Length>,
    /// Length of the stretch, for a run of cable without a joint.
    pub length: Option<Length>,
    /// Highest temperature of the surroundings, degrees Celsius.
    pub degc: f64,
    /// Film coefficient, W/(m² K).
    pub film_w_per_m2k: Option<f64>,
    /// Thermal resistance from the cable's surface outward, K·m/W, in place of the film.
    pub outside_k_m_per_w: Option<f64>,
    /// Soil, or a duct in soil, in place of either.
    pub soil: Option<Soil>,
    /// Duct in that soil.
    pub duct: Option<Duct>,
    /// Arrangement of the leg in still air, in place of all of these.
    pub air: Option<AirForm>,
    /// Origin of the stated values, with person and date.
    pub source: String,
    /// Place in the file.
    pub place: Span,
}

/// Cables or ducts in soil.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Soil {
    /// Depth from the surface to the axis of the cable or duct, or to the middle of a trefoil, m.
    pub depth_m: f64,
    /// Thermal resistivity, K·m/W; for soil that dries, the resistivity of its moist part.
    pub resistivity_k_m_per_w: f64,
    /// Thermal diffusivity, m²/s, if stated.
    pub diffusivity_m2_per_s: Option<f64>,
    /// Drying near warm cables; `None` if the soil does not dry.
    pub drying: Option<Drying>,
    /// Formation of the cables or ducts of one circuit; `None` for one cable or duct alone.
    pub formation: Option<Formation>,
    /// Distance between the axes of neighbours, m; `None` if they touch.
    pub spacing_m: Option<f64>,
    /// Number of equal circuits with equal losses, side by side.
    pub n_circuits: usize,
    /// Distance between the middles of circuits, m.
    pub circuits_apart_m: Option<f64>,
}

/// Drying of soil near warm cables.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Drying {
    /// Thermal resistivity of the dried part, K·m/W.
    pub dry_k_m_per_w: f64,
    /// Critical temperature rise: soil dries where it is warmer than its surroundings by more than this, K.
    pub above_k: f64,
}

/// Duct.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Duct {
    /// Inside diameter, m.
    pub inside_m: f64,
    /// Outside diameter, m.
    pub outside_m: f64,
    /// Thermal resistivity of its wall, K·m/W.
    pub wall_k_m_per_w: f64,
    /// Filling beside the cables, and material of the wall: one of the words of the table of fields.
    pub holds: DuctFilling,
    /// Number of cables in it, with equal losses.
    pub n_cables: usize,
    /// Bank of another material in which the ducts lie.
    pub bank: Option<Bank>,
}

/// Filling of a duct, and material of its wall.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DuctFilling {
    /// Air in plastic.
    AirInPlastic,
    /// Air in metal.
    AirInMetal,
    /// Air in fibre within concrete.
    AirInFibreInConcrete,
    /// Air in earthenware.
    AirInEarthenware,
    /// Water.
    Water,
}

/// Bank of concrete around ducts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bank {
    /// Width and height, m.
    pub sides_m: (f64, f64),
    /// Thermal resistivity, K·m/W.
    pub resistivity_k_m_per_w: f64,
}

/// Arrangement of a cable in still air.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum AirForm {
    /// One cable, away from all others.
    Alone,
    /// Three cables in touching trefoil.
    Trefoil,
    /// Three cables side by side that touch.
    FlatTouching,
}

pub(super) fn surrounding(reader: &mut JobReader<'_>, row: &Record) -> Option<Surrounding> {
    if let Some(leg) = row.string("leg") {
        reader.known_leg(row, &leg);
    }
    reader.not_after_the_work(row);
    let (film, outside) = (
        row.number("film_w_per_m2k"),
        row.number("outside_k_m_per_w"),
    );
    let n_given = ["film_w_per_m2k", "outside_k_m_per_w", "soil", "air"]
        .into_iter()
        .filter(|name| row.is_given(name))
        .count();
    if n_given != 1 {
        reader.complain(row.at, AroundSaid::NotOneOfFour, AroundHint::GiveOneOfThem);
    }
    let (soil, duct) = (soil(reader, row), duct(reader, row));
    contents_are_whole(reader, row);
    if row.is_given("duct") && !row.is_given("soil") {
        reader.complain(
            row.at("duct"),
            AroundSaid::DuctWithoutSoil,
            AroundHint::GiveSoil,
        );
    }
    Some(Surrounding {
        leg: row.string("leg"),
        what: row.string("what")?,
        until: row.length("until"),
        length: row.length("length"),
        degc: row.number("temperature")?,
        film_w_per_m2k: film,
        outside_k_m_per_w: outside,
        soil,
        duct,
        air: row.text("air").map(|word| match word {
            "trefoil" => AirForm::Trefoil,
            "flat-touching" => AirForm::FlatTouching,
            _ => AirForm::Alone,
        }),
        source: format!(
            "{}; {}, {}",
            row.string("from")?,
            row.string("by")?,
            row.date("date")?
        ),
        place: reader.place_of(row.at),
    })
}

fn soil(reader: &mut JobReader<'_>, row: &Record) -> Option<Soil> {
    let soil = row.record("soil")?;
    let metres = |name: &str| soil.length(name).map(|length| length.m());
    let n_circuits = soil.integer("circuits")?;
    let said = soil.text("formation");
    if said == Some("flat") && !soil.is_given("spacing") {
        reader.complain(
            soil.at,
            AroundSaid::FlatNeedsSpacing,
            AroundHint::GiveSpacing,
        );
    }
    if said == Some("flat-touching") && soil.is_given("spacing") {
        reader.complain(
            soil.at("spacing"),
            AroundSaid::TouchingWithSpacing,
            AroundHint::LeaveSpacingOut,
        );
    }
    drying_is_whole(reader, soil);
    if (n_circuits > 1) != soil.is_given("circuits_apart") {
        reader.complain(
            soil.at,
            AroundSaid::CircuitsApart,
            AroundHint::BothOrNeither,
        );
    }
    Some(Soil {
        depth_m: metres("depth")?,
        resistivity_k_m_per_w: soil.number("resistivity_k_m_per_w")?,
        diffusivity_m2_per_s: soil
            .number("diffusivity_mm2_per_s")
            .map(|number| number * 1e-6),
        drying: match soil.flag("dries")? {
            true => Some(Drying {
                dry_k_m_per_w: soil.number("dry_k_m_per_w")?,
                above_k: soil.number("dries_above_k")?,
            }),
            false => None,
        },
        formation: match soil.text("formation")? {
            "trefoil" => Some(Formation::Trefoil),
            "flat" | "flat-touching" => Some(Formation::Flat),
            _ => None,
        },
        spacing_m: metres("spacing"),
        n_circuits: usize::try_from(n_circuits).ok()?,
        circuits_apart_m: metres("circuits_apart"),
    })
}

/// Checks that a duct and a bank are given if the soil names them, and only then.
fn contents_are_whole(reader: &mut JobReader<'_>, row: &Record) {
    let soil = row.record("soil");
    let Some((soil, said)) = soil.and_then(|s| Some((s, s.text("contents")?))) else {
        return;
    };
    let is_bank = row.record("duct").is_some_and(|duct| duct.is_given("bank"));
    let given = match (row.is_given("duct"), is_bank) {
        (false, _) => "cables",
        (true, false) => "ducts",
        (true, true) => "ducts-in-concrete",
    };
    if said != given {
        reader.complain(
            soil.at("contents"),
            AroundSaid::HoldsOtherwise {
                said: said.to_owned(),
                given: given.to_owned(),
            },
            AroundHint::WhatGoesTogether,
        );
    }
}

/// Checks that drying soil states both its dry resistivity and its critical rise, and other soil neither; dry soil conducts no better than moist soil.
fn drying_is_whole(reader: &mut JobReader<'_>, soil: &Record) {
    let names = ["dry_k_m_per_w", "dries_above_k"];
    let dries = soil.flag("dries");
    if dries.is_some_and(|dries| names.iter().any(|name| soil.is_given(name) != dries)) {
        reader.complain(
            soil.at,
            AroundSaid::DryingNotWhole,
            AroundHint::SayWhetherItDries,
        );
    }
    if let (Some(moist), Some(dry)) = (soil.number("resistivity_k_m_per_w"), soil.number(names[0]))
        && dry < moist
    {
        reader.complain(
            soil.at(names[0]),
            AroundSaid::DryConductsBetter { dry, moist },
            AroundHint::Exchange,
        );
    }
}

fn duct(reader: &mut JobReader<'_>, row: &Record) -> Option<Duct> {
    let duct = row.record("duct")?;
    let metres = |record: &Record, name: &str| record.length(name).map(|l| l.m());
    let (inside_m, outside_m) = (metres(duct, "inside")?, metres(duct, "outside")?);
    if inside_m >= outside_m {
        reader.complain(
            duct.at("outside"),
            AroundSaid::DuctNotLarger,
            AroundHint::BothDiameters,
        );
        return None;
    }
    let bank = duct.record("bank").and_then(|bank| {
        Some(Bank {
            sides_m: (metres(bank, "width")?, metres(bank, "height")?),
            resistivity_k_m_per_w: bank.number("resistivity_k_m_per_w")?,
        })
    });
    Some(Duct {
        inside_m,
        outside_m,
        wall_k_m_per_w: duct.number("wall_k_m_per_w")?,
        holds: match duct.text("holds")? {
            "air-in-plastic" => DuctFilling::AirInPlastic,
            "air-in-metal" => DuctFilling::AirInMetal,
            "air-in-fibre-in-concrete" => DuctFilling::AirInFibreInConcrete,
            "air-in-earthenware" => DuctFilling::AirInEarthenware,
            _ => DuctFilling::Water,
        },
        n_cables: usize::try_from(duct.integer("cables")?).ok()?,
        bank,
    })
}

/// Complains about two stretches with the same end, and about a leg whose last stretch has an end, leg by leg.
///
/// The stretches of a run of cable state their lengths instead.
pub(super) fn ends_of_surroundings(reader: &mut JobReader<'_>, record: &Record, legs: &[String]) {
    if is_run(record) {
        return;
    }
    for leg in legs {
        let ours = || {
            let rows = record.records("surrounding");
            rows.filter(|row| row.string("leg").is_none_or(|of| of == *leg))
        };
        let mut seen: Vec<Option<Length>> = Vec::new();
        for row in ours() {
            let until = row.length("until");
            if seen.contains(&until) {
                let same = AroundSaid::SameEnd {
                    leg: leg.clone(),
                    until: until.map(|until| until.to_string()),
                };
                reader.complain(row.at, same, AroundHint::OwnEnd);
                return;
            }
            seen.push(until);
        }
        if !seen.is_empty() && !seen.contains(&None) {
            reader.complain(
                record.at("surrounding"),
                AroundSaid::NoneToTheEnd { leg: leg.clone() },
                AroundHint::LeaveUntilOut,
            );
            return;
        }
    }
}

/// Thermal resistivity and heat capacity of a layer of the cable; complains if only one is given.
pub(super) fn layer_stuff(
    reader: &mut JobReader<'_>,
    cable: &Record,
    layer: &str,
) -> Option<Stuff> {
    let names = [format!("{layer}_k_m_per_w"), format!("{layer}_mj_per_m3k")];
    if cable.is_given(&names[0]) != cable.is_given(&names[1]) {
        reader.complain(
            cable.at,
            CableSaid::OnlyTogether {
                one: names[0].clone(),
                other: names[1].clone(),
            },
            CableHint::BothOrNeither,
        );
    }
    Some(stuff(cable.number(&names[0])?, cable.number(&names[1])?))
}
