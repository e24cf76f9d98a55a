//! Surround: surroundings of a leg along its axis, and thermal properties of its cable.

use super::end_shape::LEGS_OR_ALL;
use super::one_run::is_run;
use super::shape::field;
use super::shield::Formation;
use super::types::{AirForm, Bank, Drying, Duct, DuctFilling, Soil, Surrounding};
use super::walk_job::JobReader;
use crate::catalogue::{CAPACITY, RESISTIVITY, stuff};
use crate::form::Need::{Optional, Required};
use crate::form::{Field, Kind, Measure, Record, Shape};
use crate::said::{AroundHint, AroundSaid, CableHint, CableSaid};
use jointwright_numerics::heat::Stuff;
use jointwright_units::Length;

pub(super) const SURROUNDING: Shape = Shape {
    name: "surrounding",
    about: "What surrounds a leg over a stretch of its axis; each begins where the one before it ends, the first at the joint.",
    fields: &[
        LEGS_OR_ALL,
        field(
            "what",
            Kind::Said,
            Required,
            "What it is: \"still air of the vault\", \"duct bank\", \"water\".",
        ),
        field(
            "until",
            Kind::Above(&Kind::Distance),
            Optional,
            "How far from the conductor end it reaches; left out in the last row, which goes on to the far end.",
        ),
        field(
            "length",
            Kind::Above(&Kind::Distance),
            Optional,
            "Of a run of cable without a joint, in place of `until`: how long this stretch of the route is; the stretches add up to the leg's `route_length`.",
        ),
        field(
            "temperature",
            Kind::Quantity(Measure::Temperature),
            Required,
            "Its highest temperature, with everything else in it under load.",
        ),
        field(
            "film_w_per_m2k",
            Kind::Number {
                least: 0.1,
                greatest: 1.0e4,
            },
            Optional,
            "Least heat that leaves a square metre of surface for each kelvin above that temperature, W/(m²·K).",
        ),
        field(
            "outside_k_m_per_w",
            Kind::Number {
                least: 0.01,
                greatest: 50.0,
            },
            Optional,
            "In place of the film, beyond the joint: greatest thermal resistance from the cable's surface to that temperature, K·m/W.",
        ),
        field(
            "soil",
            Kind::Table(&SOIL),
            Optional,
            "In place of the film, beyond the joint: the soil in which the cables or their ducts lie; the thermal resistance outside the cable is computed from it.",
        ),
        field(
            "duct",
            Kind::Table(&DUCT),
            Optional,
            "With `soil`: the duct in which the cables lie.",
        ),
        field(
            "air",
            Kind::Choice(AIR_FORMS),
            Optional,
            "In place of the film: how the cables hang in still air, out of the sun; the film is computed for it.",
        ),
        field(
            "from",
            Kind::Said,
            Required,
            "Where the film, the resistance or the soil's resistivity is from: a measurement, a standard with its clause, a handbook table. No standard of cable ratings knows a vault or a riser.",
        ),
        field("by", Kind::Text, Required, "Who stands for it."),
        field("date", Kind::Date, Required, "When."),
    ],
};

/// Words for the arrangement of cables in still air.
pub const AIR_FORMS: &[&str] = &["alone", "trefoil", "flat-touching"];
/// Words for the formation in soil of the cables or ducts of one circuit.
pub const SOIL_FORMATIONS: &[&str] = &["alone", "trefoil", "flat", "flat-touching"];
/// Words for the things that lie in soil.
pub const SOIL_CONTENTS: &[&str] = &["cables", "ducts", "ducts-in-concrete"];
/// Words for a duct's filling beside cables, and for the material of its wall.
pub const FILLINGS: &[&str] = &[
    "air-in-plastic",
    "air-in-metal",
    "air-in-fibre-in-concrete",
    "air-in-earthenware",
    "water",
];

const SOIL: Shape = Shape {
    name: "soil",
    about: "Soil about cables or ducts.",
    fields: &[
        field(
            "depth",
            Kind::Cut,
            Required,
            "From the surface to the axis of the cable or duct, to the middle of a trefoil, or of a bank.",
        ),
        field(
            "resistivity_k_m_per_w",
            Kind::Number {
                least: 0.1,
                greatest: 10.0,
            },
            Required,
            "Its greatest thermal resistivity, K·m/W, dry seasons included, and where it dries about warm cables that of what stays moist; `from` says who found it.",
        ),
        field(
            "contents",
            Kind::Choice(SOIL_CONTENTS),
            Required,
            "What lies in it: the cables themselves, ducts with cables in them (`duct`), or such ducts in a bank of concrete (`bank` of the duct).",
        ),
        field(
            "dries",
            Kind::Flag,
            Required,
            "Whether it dries out about cables or ducts that stay warm, as `from` says.",
        ),
        field(
            "dry_k_m_per_w",
            Kind::Number {
                least: 0.1,
                greatest: 10.0,
            },
            Optional,
            "With `dries`: greatest thermal resistivity of what has dried out, K·m/W.",
        ),
        field(
            "dries_above_k",
            Kind::Number {
                least: 0.0,
                greatest: 100.0,
            },
            Optional,
            "With `dries`: it dries where it is warmer than the undisturbed soil by more than this, K.",
        ),
        field(
            "diffusivity_mm2_per_s",
            Kind::Number {
                least: 0.01,
                greatest: 10.0,
            },
            Optional,
            "How fast heat spreads in it: its conductivity over its heat capacity, mm²/s; for a daily load.",
        ),
        field(
            "formation",
            Kind::Choice(SOIL_FORMATIONS),
            Required,
            "How the cables of one circuit lie, or its ducts where each holds one cable: one alone, three in trefoil, three in one plane apart, three in one plane that touch.",
        ),
        field(
            "spacing",
            Kind::Cut,
            Optional,
            "Between the axes of neighbours; left out of a trefoil: they touch.",
        ),
        field(
            "circuits",
            Kind::Integer {
                least: 1,
                greatest: 12,
            },
            Required,
            "Circuits side by side that are alike and carry the same, this one counted: 1 where it is alone.",
        ),
        field(
            "circuits_apart",
            Kind::Cut,
            Optional,
            "Between the middles of neighbouring circuits; with `circuits` above 1.",
        ),
    ],
};

const DUCT: Shape = Shape {
    name: "duct",
    about: "A duct in soil.",
    fields: &[
        field("inside", Kind::Diameter, Required, "Inside diameter."),
        field("outside", Kind::Diameter, Required, "Outside diameter."),
        field(
            "wall_k_m_per_w",
            RESISTIVITY,
            Required,
            "Thermal resistivity of its wall, K·m/W.",
        ),
        field(
            "holds",
            Kind::Choice(FILLINGS),
            Required,
            "What it holds beside cables, and what it is of.",
        ),
        field(
            "cables",
            Kind::Integer {
                least: 1,
                greatest: 4,
            },
            Required,
            "Cables in it that carry the same.",
        ),
        field(
            "bank",
            Kind::Table(&BANK),
            Optional,
            "The bank of concrete in which all ducts lie.",
        ),
    ],
};

const BANK: Shape = Shape {
    name: "bank",
    about: "A bank of concrete about ducts.",
    fields: &[
        field("width", Kind::Cut, Required, "Width."),
        field("height", Kind::Cut, Required, "Height."),
        field(
            "resistivity_k_m_per_w",
            Kind::Number {
                least: 0.1,
                greatest: 10.0,
            },
            Required,
            "Thermal resistivity of the concrete, K·m/W.",
        ),
    ],
};

pub(super) const INSULATION_RESISTIVITY: Field = field(
    "insulation_k_m_per_w",
    RESISTIVITY,
    Optional,
    "Thermal resistivity of the insulation and its screens, K·m/W; with `insulation_mj_per_m3k`.",
);
pub(super) const INSULATION_CAPACITY: Field = field(
    "insulation_mj_per_m3k",
    CAPACITY,
    Optional,
    "Heat that a cubic metre of them stores per kelvin, MJ/(m³·K).",
);
pub(super) const JACKET_RESISTIVITY: Field = field(
    "jacket_k_m_per_w",
    RESISTIVITY,
    Optional,
    "Thermal resistivity of the jacket, K·m/W; with `jacket_mj_per_m3k`.",
);
pub(super) const JACKET_CAPACITY: Field = field(
    "jacket_mj_per_m3k",
    CAPACITY,
    Optional,
    "Heat that a cubic metre of it stores per kelvin, MJ/(m³·K).",
);

impl JobReader<'_> {
    pub(super) fn surrounding(&mut self, row: &Record) -> Option<Surrounding> {
        if let Some(leg) = row.string("leg") {
            self.known_leg(row, &leg);
        }
        self.not_after_the_work(row);
        let (film, outside) = (
            row.number("film_w_per_m2k"),
            row.number("outside_k_m_per_w"),
        );
        let n_given = ["film_w_per_m2k", "outside_k_m_per_w", "soil", "air"]
            .into_iter()
            .filter(|name| row.is_given(name))
            .count();
        if n_given != 1 {
            self.complain(row.at, AroundSaid::NotOneOfFour, AroundHint::GiveOneOfThem);
        }
        let (soil, duct) = (self.soil(row), self.duct(row));
        self.contents_are_whole(row);
        if row.is_given("duct") && !row.is_given("soil") {
            self.complain(
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
            place: self.place_of(row.at),
        })
    }

    fn soil(&mut self, row: &Record) -> Option<Soil> {
        let soil = row.record("soil")?;
        let metres = |name: &str| soil.length(name).map(|length| length.m());
        let n_circuits = soil.integer("circuits")?;
        let said = soil.text("formation");
        if said == Some("flat") && !soil.is_given("spacing") {
            self.complain(
                soil.at,
                AroundSaid::FlatNeedsSpacing,
                AroundHint::GiveSpacing,
            );
        }
        if said == Some("flat-touching") && soil.is_given("spacing") {
            self.complain(
                soil.at("spacing"),
                AroundSaid::TouchingWithSpacing,
                AroundHint::LeaveSpacingOut,
            );
        }
        self.drying_is_whole(soil);
        if (n_circuits > 1) != soil.is_given("circuits_apart") {
            self.complain(
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
    fn contents_are_whole(&mut self, row: &Record) {
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
            self.complain(
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
    fn drying_is_whole(&mut self, soil: &Record) {
        let names = ["dry_k_m_per_w", "dries_above_k"];
        let dries = soil.flag("dries");
        if dries.is_some_and(|dries| names.iter().any(|name| soil.is_given(name) != dries)) {
            self.complain(
                soil.at,
                AroundSaid::DryingNotWhole,
                AroundHint::SayWhetherItDries,
            );
        }
        if let (Some(moist), Some(dry)) =
            (soil.number("resistivity_k_m_per_w"), soil.number(names[0]))
            && dry < moist
        {
            self.complain(
                soil.at(names[0]),
                AroundSaid::DryConductsBetter { dry, moist },
                AroundHint::Exchange,
            );
        }
    }

    fn duct(&mut self, row: &Record) -> Option<Duct> {
        let duct = row.record("duct")?;
        let metres = |record: &Record, name: &str| record.length(name).map(|l| l.m());
        let (inside_m, outside_m) = (metres(duct, "inside")?, metres(duct, "outside")?);
        if inside_m >= outside_m {
            self.complain(
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
    pub(super) fn ends_of_surroundings(&mut self, record: &Record, legs: &[String]) {
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
                    self.complain(row.at, same, AroundHint::OwnEnd);
                    return;
                }
                seen.push(until);
            }
            if !seen.is_empty() && !seen.contains(&None) {
                self.complain(
                    record.at("surrounding"),
                    AroundSaid::NoneToTheEnd { leg: leg.clone() },
                    AroundHint::LeaveUntilOut,
                );
                return;
            }
        }
    }

    /// Thermal resistivity and heat capacity of a layer of the cable; complains if only one is given.
    pub(super) fn layer_stuff(&mut self, cable: &Record, layer: &str) -> Option<Stuff> {
        let names = [format!("{layer}_k_m_per_w"), format!("{layer}_mj_per_m3k")];
        if cable.is_given(&names[0]) != cable.is_given(&names[1]) {
            self.complain(
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
}
