//! What surrounds a leg along its axis, and what its cable does with heat.

use super::shape::field;
use super::types::Surrounding;
use super::walk_job::JobReader;
use crate::catalogue::{CAPACITY, RESISTIVITY, stuff};
use crate::form::Need::{Optional, Required};
use crate::form::{Field, Kind, Measure, Record, Shape};
use jointwright_numerics::heat::Stuff;
use jointwright_units::Length;

pub(super) const SURROUNDING: Shape = Shape {
    name: "surrounding",
    about: "What surrounds a leg over a stretch of its axis; each begins where the one before it ends, the first at the joint.",
    fields: &[
        field("leg", Kind::Id, Optional, "Leg; left out: all legs."),
        field(
            "what",
            Kind::Text,
            Required,
            "What it is: \"still air of the vault\", \"duct bank\", \"water\".",
        ),
        field(
            "until",
            Kind::Cut,
            Optional,
            "How far from the conductor end it reaches; left out in the last row, which goes on to the far end.",
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
            "from",
            Kind::Text,
            Required,
            "Where the film or the resistance is from: a measurement, a standard with its clause, a handbook table. No standard of cable ratings knows a vault or a riser.",
        ),
        field("by", Kind::Text, Required, "Who stands for it."),
        field("date", Kind::Date, Required, "When."),
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
        let n_given = ["film_w_per_m2k", "outside_k_m_per_w"]
            .into_iter()
            .filter(|name| row.is_given(name))
            .count();
        if n_given != 1 {
            self.complain(
                row.at,
                "A surrounding gives either `film_w_per_m2k` or `outside_k_m_per_w`.".to_owned(),
                "Give one of them: the film for a joint or a cable in air or water, the resistance for a cable in a duct or in soil.",
            );
        }
        Some(Surrounding {
            leg: row.string("leg"),
            what: row.string("what")?,
            until: row.length("until"),
            degc: row.number("temperature")?,
            film_w_per_m2k: film,
            outside_k_m_per_w: outside,
            source: format!(
                "{}; {}, {}",
                row.string("from")?,
                row.string("by")?,
                row.date("date")?
            ),
            place: self.place_of(row.at),
        })
    }

    /// Complains of stretches that end where another does, and of legs whose last one ends: leg by leg.
    pub(super) fn ends_of_surroundings(&mut self, record: &Record, legs: &[String]) {
        for leg in legs {
            let ours = || {
                let rows = record.records("surrounding");
                rows.filter(|row| row.string("leg").is_none_or(|of| of == *leg))
            };
            let mut seen: Vec<Option<Length>> = Vec::new();
            for row in ours() {
                let until = row.length("until");
                if seen.contains(&until) {
                    let place = until.map_or("at the far end".to_owned(), |until| {
                        format!("{until} from the conductor end")
                    });
                    self.complain(
                        row.at,
                        format!("Two stretches of what surrounds leg `{leg}` end {place}."),
                        "Give each its own end; the last of a leg has no `until`.",
                    );
                    return;
                }
                seen.push(until);
            }
            if !seen.is_empty() && !seen.contains(&None) {
                self.complain(
                    record.at("surrounding"),
                    format!("No stretch of what surrounds leg `{leg}` goes on to the far end."),
                    "Leave `until` out of the last one.",
                );
                return;
            }
        }
    }

    /// The two numbers of a layer of the cable, which say something only together.
    pub(super) fn layer_stuff(&mut self, cable: &Record, layer: &str) -> Option<Stuff> {
        let names = [format!("{layer}_k_m_per_w"), format!("{layer}_mj_per_m3k")];
        if cable.is_given(&names[0]) != cable.is_given(&names[1]) {
            self.complain(
                cable.at,
                format!(
                    "`{}` and `{}` say something only together.",
                    names[0], names[1]
                ),
                "Give both, or neither.",
            );
        }
        Some(stuff(cable.number(&names[0])?, cable.number(&names[1])?))
    }
}
