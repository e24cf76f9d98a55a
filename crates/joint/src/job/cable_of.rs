//! Cable of a leg, read from its record.

use super::leg_shape::OTHER_SHIELDS;
use super::reader::JobReader;
use crate::cable::{Conductor, Construction, Insulation, Shield, Size, SizeError, Wall};
use crate::catalogue::{layer, metal, stranding};
use crate::form::Record;
use crate::said::{CableHint, CableSaid, SizeUnit};
use jointwright_units::Interval;
use std::collections::BTreeMap;

/// Other insulations, which are refused by name and not as misspellings.
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

/// Fields of the record of a shield: the fields that its kind needs, and the fields that it cannot have.
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

/// Wall for a rated voltage such as "8.7/15 kV".
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

/// Cable by construction; `None` if a fact that it needs is missing.
pub(super) fn construction(reader: &mut JobReader<'_>, record: &Record) -> Option<Construction> {
    let is_other = is_other_cable(reader, record);
    if is_other {
        // A cable that is refused by name needs no further fields.
        reader.forget_missing(record.at);
    }
    let size = size(reader, record, "size");
    let wall = (!is_other).then(|| wall(reader, record)).flatten();
    let insulation = (!is_other).then(|| insulation(reader, record)).flatten();
    let is_shield = |shield: &&Record| {
        let kind = shield.text("kind");
        kind.is_none_or(|kind| !OTHER_SHIELDS.contains(&kind))
    };
    let row = record.record("shield").filter(is_shield);
    let shield = row.and_then(|row| shield(reader, row));
    let conductor_screen = pair(
        reader,
        record,
        "conductor_screen_least",
        "conductor_screen_greatest",
    );
    let insulation_screen = pair(
        reader,
        record,
        "insulation_screen_least",
        "insulation_screen_greatest",
    );
    let jacket = pair(reader, record, "jacket_least", "jacket_greatest");
    let mut stated = BTreeMap::new();
    for row in record.records("papers") {
        let Some(over) = row.text("over").and_then(layer) else {
            continue;
        };
        let Some(interval) = pair(reader, row, "least", "greatest") else {
            continue;
        };
        if stated.insert(over, interval).is_some() {
            reader.complain(
                row.at,
                CableSaid::GivenTwice { layer: over },
                CableHint::KeepOne,
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

pub(super) fn size(reader: &mut JobReader<'_>, record: &Record, name: &str) -> Option<Size> {
    let text = record.text(name)?;
    match Size::parse(text) {
        Ok(size) => Some(size),
        Err(error) => {
            let (field, text) = (name.to_owned(), text.to_owned());
            let said = match error {
                SizeError::NoUnit { .. } => CableSaid::SizeHasNoUnit { field, text },
                SizeError::Number { number, unit, .. } => CableSaid::IsNoSize {
                    field,
                    text,
                    number,
                    unit: match unit {
                        "AWG" => SizeUnit::Awg,
                        "kcmil" => SizeUnit::Kcmil,
                        _ => SizeUnit::Mm2,
                    },
                },
            };
            reader.complain(record.at(name), said, CableHint::WriteASize);
            None
        }
    }
}

/// Interval of two fields that are given together or not at all.
fn pair(
    reader: &mut JobReader<'_>,
    record: &Record,
    least: &str,
    greatest: &str,
) -> Option<Interval> {
    match (record.length(least), record.length(greatest)) {
        (Some(low), Some(high)) => {
            let interval = Interval::new(low, high);
            if interval.is_none() {
                reader.complain(
                    record.at(least),
                    CableSaid::LeastAboveGreatest {
                        least: least.to_owned(),
                        low: low.to_string(),
                        greatest: greatest.to_owned(),
                        high: high.to_string(),
                    },
                    CableHint::ExchangeOrLookUp,
                );
            }
            interval
        }
        _ => {
            if record.is_given(least) != record.is_given(greatest) {
                reader.complain(
                    record.at,
                    CableSaid::OnlyOneGiven {
                        one: least.to_owned(),
                        other: greatest.to_owned(),
                    },
                    CableHint::BothOrNeither,
                );
            }
            None
        }
    }
}

fn wall(reader: &mut JobReader<'_>, record: &Record) -> Option<Wall> {
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
                    reader.complain(
                        record.at("level"),
                        CableSaid::NoSuchLevel { level },
                        CableHint::ReadTheLegend,
                    );
                    None
                }
                None if record.is_given("level") => None,
                None => {
                    reader.complain(
                        record.at("class"),
                        CableSaid::ClassWithoutLevel,
                        CableHint::AddLevel,
                    );
                    None
                }
            }
        }
        ["rated"] => rated(record.text("rated")?),
        ["wall"] => Some(Wall::Stated(record.length("wall")?)),
        [] => {
            reader.complain(record.at, CableSaid::NoWall, CableHint::TakeFromLegend);
            None
        }
        several => {
            reader.complain(
                record.at(several[1]),
                CableSaid::WallTwice {
                    fields: several.iter().map(|field| (*field).to_owned()).collect(),
                },
                CableHint::KeepOne,
            );
            None
        }
    }
}

/// Complains about a cable that this program does not plan for, and names its kind.
fn is_other_cable(reader: &mut JobReader<'_>, record: &Record) -> bool {
    let mut refusals: Vec<(&str, CableSaid)> = Vec::new();
    if let Some(cores) = record.integer("cores").filter(|cores| *cores > 1) {
        refusals.push(("cores", CableSaid::SeveralCores { cores }));
    }
    if record.flag("belted") == Some(true) {
        refusals.push(("belted", CableSaid::Belted));
    }
    if let Some(word) = record
        .text("insulation")
        .filter(|word| OTHER_INSULATIONS.contains(word))
    {
        let what = word.to_owned();
        refusals.push(("insulation", CableSaid::InsulatedWith { what }));
    }
    let mut is_other = !refusals.is_empty();
    for (name, message) in refusals {
        reader.complain(record.at(name), message, CableHint::OtherCable);
    }
    is_other |= is_sheathed(reader, record);
    is_other
}

/// Complains about a cable whose shield is a metal sheath, and names the metal.
fn is_sheathed(reader: &mut JobReader<'_>, record: &Record) -> bool {
    let Some(shield) = record.record("shield") else {
        return false;
    };
    let kind = shield.text("kind").filter(|k| OTHER_SHIELDS.contains(k));
    let Some(metal) = kind.and_then(|kind| kind.strip_suffix("-sheath")) else {
        return false;
    };
    let of = match metal {
        "lead" => CableHint::LeadSheath,
        _ => CableHint::MetalSheath,
    };
    reader.complain(
        shield.at("kind"),
        CableSaid::SheathOf {
            metal: metal.to_owned(),
        },
        of,
    );
    true
}

fn insulation(reader: &mut JobReader<'_>, record: &Record) -> Option<Insulation> {
    let text = record.text("insulation")?.to_lowercase();
    let found = match text.as_str() {
        "xlpe" => return Some(Insulation::Xlpe),
        "tr-xlpe" => return Some(Insulation::TrXlpe),
        "epr" => return Some(Insulation::Epr),
        other => CableSaid::InsulationIs {
            what: other.to_owned(),
        },
    };
    reader.complain(record.at("insulation"), found, CableHint::OwnInstructions);
    None
}

fn shield(reader: &mut JobReader<'_>, record: &Record) -> Option<Shield> {
    let kind = record.text("kind")?;
    let (needed, foreign) = shield_fields(kind);
    for name in needed {
        if !record.is_given(name) {
            reader.complain(
                record.at,
                CableSaid::ShieldHasNo {
                    kind: kind.to_owned(),
                    field: (*name).to_owned(),
                    needs: needed.iter().map(|field| (*field).to_owned()).collect(),
                },
                CableHint::MeasureOrCount,
            );
        }
    }
    for name in foreign {
        if record.is_given(name) {
            reader.complain(
                record.at(name),
                CableSaid::ShieldTakesNo {
                    kind: kind.to_owned(),
                    field: (*name).to_owned(),
                    takes: needed.iter().map(|field| (*field).to_owned()).collect(),
                },
                CableHint::LookAtTheKind,
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_rated_voltage_of_the_format_is_a_wall() {
        for text in super::super::leg_shape::RATED {
            assert_eq!(rated(text).map(Wall::phrase).as_deref(), Some(*text));
        }
    }
}
