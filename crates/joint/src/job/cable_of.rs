//! The cable of a leg, from its record.

use super::leg_shape::OTHER_SHIELDS;
use super::walk_job::JobReader;
use crate::cable::{Conductor, Construction, Insulation, Shield, Size, Wall};
use crate::catalogue::{layer, metal, stranding};
use crate::form::Record;
use jointwright_units::Interval;
use std::collections::BTreeMap;

/// Insulation that is refused in words rather than as a misspelling.
const OTHER_INSULATIONS: &[&str] = &[
    "paper",
    "oil-paper",
    "paper-lead",
    "pilc",
    "mass-impregnated",
    "oil-filled",
    "rubber",
    "butyl",
    "pvc",
    "varnished-cambric",
];
/// What a user does about a cable that is not handled.
const OTHER_CABLE: &str = "Have the joint between such a cable and others planned by its own instructions and the owner's engineer, and made by a splicer qualified for it. This program plans the joints of single-core cable with extruded insulation and a shield of its own.";

/// What a user does about a sheath of lead.
const LEAD_SHEATH: &str = "Have the joint of such a cable planned by its own instructions and the owner's engineer, and made by a splicer qualified for lead: a lead sheath is wiped or clamped by parts of its own, paper may lie under it, and lead poisons who heats or scrapes it. This program plans the joints of cable whose shield is of straps, wires, tape, or tape with wires. Where wires or a tape under the lead carry the current, the engineer says whether they are the shield.";
/// What a user does about another sheath of metal.
const METAL_SHEATH: &str = "Have the joint of such a cable planned by its own instructions and the owner's engineer, and made by a splicer qualified for it: such a sheath is cut, flared and bonded by parts of its own. This program plans the joints of cable whose shield is of straps, wires, tape, or tape with wires.";

impl JobReader<'_> {
    /// Cable by construction, or `None` where something it needs is missing.
    pub(super) fn cable(&mut self, record: &Record) -> Option<Construction> {
        let is_other = self.is_other_cable(record);
        if is_other {
            // What is missing of a cable that is refused by name is not asked for.
            self.forget_missing(record.at);
        }
        let size = self.size(record, "size");
        let wall = (!is_other).then(|| self.wall(record)).flatten();
        let insulation = (!is_other).then(|| self.insulation(record)).flatten();
        let is_shield = |shield: &&Record| {
            let kind = shield.text("kind");
            kind.is_none_or(|kind| !OTHER_SHIELDS.contains(&kind))
        };
        let shield = record.record("shield").filter(is_shield);
        let shield = shield.and_then(|shield| self.shield(shield));
        let conductor_screen = self.pair(
            record,
            "conductor_screen_least",
            "conductor_screen_greatest",
        );
        let insulation_screen = self.pair(
            record,
            "insulation_screen_least",
            "insulation_screen_greatest",
        );
        let jacket = self.pair(record, "jacket_least", "jacket_greatest");
        let mut stated = BTreeMap::new();
        for row in record.records("papers") {
            let Some(over) = row.text("over").and_then(layer) else {
                continue;
            };
            let Some(interval) = self.pair(row, "least", "greatest") else {
                continue;
            };
            if stated.insert(over, interval).is_some() {
                self.complain(
                    row.at,
                    format!(
                        "The papers' diameter over the {} is given twice.",
                        over.name(self.words)
                    ),
                    "Keep one of them.",
                );
            }
        }
        Some(Construction {
            conductor: Conductor {
                size: size?,
                metal: metal(record.text("metal")?)?,
                stranding: stranding(record.text("stranding")?)?,
            },
            wall: wall?,
            insulation: insulation?,
            shield: shield?,
            conductor_screen,
            insulation_screen,
            jacket,
            stated,
        })
    }

    pub(super) fn size(&mut self, record: &Record, name: &str) -> Option<Size> {
        let text = record.text(name)?;
        match Size::parse(text) {
            Ok(size) => Some(size),
            Err(error) => {
                self.complain(
                    record.at(name),
                    format!(
                        "`{name}` is \"{text}\": {error}; the format expects a conductor size."
                    ),
                    "Write \"4/0 AWG\", \"500 kcmil\" or \"240 mm2\".",
                );
                None
            }
        }
    }

    /// Interval of a pair of fields that are given together or not at all.
    fn pair(&mut self, record: &Record, least: &str, greatest: &str) -> Option<Interval> {
        match (record.length(least), record.length(greatest)) {
            (Some(low), Some(high)) => {
                let interval = Interval::new(low, high);
                if interval.is_none() {
                    self.complain(
                        record.at(least),
                        format!("`{least}` is {low} and `{greatest}` is {high}; the least cannot be above the greatest."),
                        "Exchange them, or look them up again.",
                    );
                }
                interval
            }
            _ => {
                if record.is_given(least) != record.is_given(greatest) {
                    self.complain(
                        record.at,
                        format!("Only one of `{least}` and `{greatest}` is given."),
                        "Give both, or neither.",
                    );
                }
                None
            }
        }
    }

    fn wall(&mut self, record: &Record) -> Option<Wall> {
        let given: Vec<&str> = ["class", "rated", "wall"]
            .into_iter()
            .filter(|n| record.is_given(n))
            .collect();
        match given.as_slice() {
            ["class"] => {
                let class_kv = record.text("class")?.trim_end_matches(" kV").parse().ok()?;
                match record.integer("level") {
                    Some(level @ (100 | 133 | 173)) => Some(Wall::Icea {
                        class_kv,
                        level_percent: level as u16,
                    }),
                    Some(level) => {
                        self.complain(
                            record.at("level"),
                            format!("The insulation level is {level} percent; levels are 100, 133 and 173 percent."),
                            "Read it on the print legend or in the cable's papers.",
                        );
                        None
                    }
                    None if record.is_given("level") => None,
                    None => {
                        self.complain(
                            record.at("class"),
                            "The class is given without an insulation level; the same class has three wall thicknesses.".to_owned(),
                            "Add `level = 100`, `133` or `173` from the print legend or the papers.",
                        );
                        None
                    }
                }
            }
            ["rated"] => rated(record.text("rated")?),
            ["wall"] => Some(Wall::Stated(record.length("wall")?)),
            [] => {
                self.complain(
                    record.at,
                    "The cable has neither `class` with `level`, nor `rated`, nor `wall`; one of them must say how thick its insulation is."
                        .to_owned(),
                    "Take it from the print legend or the cable's papers.",
                );
                None
            }
            several => {
                self.complain(
                    record.at(several[1]),
                    format!(
                        "The insulation is described by {} at once.",
                        several.join(" and ")
                    ),
                    "Keep one of them.",
                );
                None
            }
        }
    }

    /// Complains of a cable that this program does not plan for, by its name.
    fn is_other_cable(&mut self, record: &Record) -> bool {
        let mut refusals: Vec<(&str, String)> = Vec::new();
        if let Some(cores) = record.integer("cores").filter(|cores| *cores > 1) {
            refusals.push((
                "cores",
                format!("A cable with {cores} cores is not handled."),
            ));
        }
        if record.flag("belted") == Some(true) {
            let what = "A belted cable is not handled: its cores lie under one belt of insulation and have no shield of their own.";
            refusals.push(("belted", what.to_owned()));
        }
        if let Some(word) = record
            .text("insulation")
            .filter(|word| OTHER_INSULATIONS.contains(word))
        {
            refusals.push((
                "insulation",
                format!("A cable insulated with {word} is not handled."),
            ));
        }
        let mut is_other = !refusals.is_empty();
        for (name, message) in refusals {
            self.complain(record.at(name), message, OTHER_CABLE);
        }
        is_other |= self.is_sheathed(record);
        is_other
    }

    /// Complains of a cable whose shield is a sheath of metal, by its name.
    fn is_sheathed(&mut self, record: &Record) -> bool {
        let Some(shield) = record.record("shield") else {
            return false;
        };
        let kind = shield.text("kind").filter(|k| OTHER_SHIELDS.contains(k));
        let Some(metal) = kind.and_then(|kind| kind.strip_suffix("-sheath")) else {
            return false;
        };
        let of = match metal {
            "lead" => LEAD_SHEATH,
            _ => METAL_SHEATH,
        };
        self.complain(
            shield.at("kind"),
            format!("A cable whose metallic shield is a sheath of {metal} is not handled."),
            of,
        );
        true
    }

    fn insulation(&mut self, record: &Record) -> Option<Insulation> {
        let text = record.text("insulation")?.to_lowercase();
        let found = match text.as_str() {
            "xlpe" => return Some(Insulation::Xlpe),
            "tr-xlpe" => return Some(Insulation::TrXlpe),
            "epr" => return Some(Insulation::Epr),
            other => format!(
                "The insulation is \"{other}\"; the format expects \"xlpe\", \"tr-xlpe\" or \"epr\"."
            ),
        };
        self.complain(
            record.at("insulation"),
            found,
            "Other cable needs its own instructions and a splicer qualified for it.",
        );
        None
    }

    fn shield(&mut self, record: &Record) -> Option<Shield> {
        let kind = record.text("kind")?;
        let (needed, foreign) = shield_fields(kind);
        for name in needed {
            if !record.is_given(name) {
                self.complain(
                    record.at,
                    format!(
                        "A shield of {kind} has no `{name}`; it needs {}.",
                        needed.join(", ")
                    ),
                    "Measure or count it, or take it from the cable's papers.",
                );
            }
        }
        for name in foreign {
            if record.is_given(name) {
                self.complain(
                    record.at(name),
                    format!(
                        "A shield of {kind} has no `{name}`; it is described by {}.",
                        needed.join(", ")
                    ),
                    "Take the line out, or look at the kind of shield again.",
                );
            }
        }
        let count = || record.integer("count").and_then(|n| u32::try_from(n).ok());
        Some(match kind {
            "flat-straps" => Shield::FlatStraps {
                count: count()?,
                width: record.length("width")?,
                thickness: record.length("thickness")?,
            },
            "concentric-wires" => Shield::ConcentricWires {
                count: count()?,
                diameter: record.length("diameter")?,
            },
            "lapped-tape" => Shield::LappedTape {
                thickness: record.length("thickness")?,
                width: record.length("width"),
                overlap_percent: record.number("overlap_percent")?,
            },
            "tape-with-wires" => Shield::TapeWithWires {
                thickness: record.length("thickness")?,
                width: record.length("width"),
                overlap_percent: record.number("overlap_percent")?,
                count: count()?,
                diameter: record.length("diameter")?,
            },
            _ => Shield::CorrugatedTape {
                thickness: record.length("thickness")?,
                overlap: record.length("overlap")?,
            },
        })
    }
}

/// Fields of the record of a shield: those that its kind needs, and those that it cannot have.
fn shield_fields(kind: &str) -> (&'static [&'static str], &'static [&'static str]) {
    match kind {
        "flat-straps" => (
            &["count", "width", "thickness"],
            &["diameter", "overlap_percent", "overlap"],
        ),
        "concentric-wires" => (
            &["count", "diameter"],
            &["width", "thickness", "overlap_percent", "overlap"],
        ),
        "lapped-tape" => (
            &["thickness", "overlap_percent"],
            &["count", "diameter", "overlap", "lay"],
        ),
        "tape-with-wires" => (
            &["count", "diameter", "thickness", "overlap_percent"],
            &["overlap"],
        ),
        _ => (
            &["thickness", "overlap"],
            &["count", "width", "diameter", "overlap_percent", "lay"],
        ),
    }
}

/// Wall of rated voltages such as "8.7/15 kV".
fn rated(text: &str) -> Option<Wall> {
    let (u0, u) = text.strip_suffix(" kV")?.split_once('/')?;
    let tenths = match u0.split_once('.') {
        Some((whole, tenth)) => whole.parse::<u32>().ok()? * 10 + tenth.parse::<u32>().ok()?,
        None => u0.parse::<u32>().ok()? * 10,
    };
    Some(Wall::Iec {
        u0_kv_tenths: tenths,
        u_kv: u.parse().ok()?,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_rated_voltage_of_the_format_is_a_wall() {
        for text in super::super::shape::RATED {
            assert_eq!(rated(text).map(Wall::phrase).as_deref(), Some(*text));
        }
    }
}
