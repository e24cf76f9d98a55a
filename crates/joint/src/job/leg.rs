//! Leg: one cable that enters the joint, as typed values.

use super::cable_of::construction;
use super::part_names::PartNames;
use super::part_names::part_names;
use super::reader::JobReader;
use super::shield::bonding_lead;
use super::shield::{BondingLead, ShieldRun, shield_run};
use super::surround::layer_stuff;
use crate::cable::{Construction, Metal};
use crate::catalogue::metal;
use crate::form::{Record, Span};
use crate::said::{CableHint, CableSaid};
use jointwright_numerics::heat::Stuff;
use jointwright_units::Length;

/// One cable that enters the joint.
#[derive(Clone, Debug)]
pub struct Leg {
    /// Letter.
    pub id: String,
    /// Port.
    pub port: Option<i64>,
    /// Destination of the cable.
    pub goes_to: Option<String>,
    /// Bonding.
    pub bonding: String,
    /// Whether the body parks on it.
    pub parks: bool,
    /// Room.
    pub room: Room,
    /// Construction by its papers.
    pub cable: Construction,
    /// Whether the strands are blocked, if stated.
    pub blocked: Option<bool>,
    /// Whether the far end stands or may stand in water, if stated.
    pub far_end_in_water: Option<bool>,
    /// Least bending radius that its maker permits.
    pub bend_radius_least: Option<Length>,
    /// Relative change of the insulation's diameter per kelvin, least and greatest.
    pub expansion_per_k: Option<(f64, f64)>,
    /// Relative permittivity of the insulation, if stated.
    pub relative_permittivity: Option<f64>,
    /// Thermal resistivity and heat capacity of the insulation with its screens, if stated.
    pub insulation_stuff: Option<Stuff>,
    /// Thermal resistivity and heat capacity of the jacket, if stated.
    pub jacket_stuff: Option<Stuff>,
    /// Continuous load, A, if this leg has its own.
    pub load_a: Option<f64>,
    /// Emergency load, A, if this leg has its own.
    pub emergency_a: Option<f64>,
    /// Current in this leg's shield at its load, A, if stated.
    pub shield_load_a: Option<f64>,
    /// Length of the route, for a run of cable without a joint.
    pub route_length: Option<Length>,
    /// Metal of the shield, if stated.
    pub shield_metal: Option<Metal>,
    /// Highest temperature of the shield in a short circuit, degrees Celsius, if stated.
    pub shield_fault_greatest_degc: Option<f64>,
    /// Short-circuit current in this leg's shield, A, if it has its own.
    pub shield_fault_a: Option<f64>,
    /// Its shield beyond the joint.
    pub shield_run: ShieldRun,
    /// Lead that bonds its shield; `None` if none is named.
    pub bonding_lead: Option<BondingLead>,
    /// Parts.
    pub parts: PartNames,
    /// Place in the job's file.
    pub place: Span,
}

/// Room around a leg; `None` if not measured.
#[derive(Clone, Debug, Default)]
pub struct Room {
    /// Error of each of these lengths.
    pub error: Option<Length>,
    /// Straight cable from the conductor end.
    pub straight: Option<Length>,
    /// Free length for parking from the jacket edge.
    pub park_room: Option<Length>,
    /// Bending radius as racked.
    pub bend_radius: Option<Length>,
    /// Cable that can still be cut away.
    pub slack: Option<Length>,
    /// Spare cuts asked for.
    pub spare_cuts: Option<i64>,
}

pub(super) fn leg(reader: &mut JobReader<'_>, record: &Record) -> Option<Leg> {
    let cable = record.record("cable");
    let construction = cable.and_then(|c| construction(reader, c));
    let parts = part_names(reader, record);
    let bonding_lead = bonding_lead(reader, record);
    let cable = cable?;
    let shield = cable.record("shield");
    let insulation_stuff = layer_stuff(reader, cable, "insulation");
    let jacket_stuff = layer_stuff(reader, cable, "jacket");
    let expansion = (
        cable.number("expansion_per_k_least"),
        cable.number("expansion_per_k_greatest"),
    );
    let expansion_per_k = match expansion {
        (Some(least), Some(greatest)) if least <= greatest => Some((least, greatest)),
        (None, None) => None,
        _ => {
            reader.complain(
                cable.at,
                CableSaid::ExpansionNotAPair,
                CableHint::BothFromASource,
            );
            None
        }
    };
    Some(Leg {
        id: record.string("id")?,
        port: record.integer("port"),
        goes_to: record.string("goes_to"),
        bonding: record.string("bonding")?,
        parks: record.flag("parks").unwrap_or(false),
        room: Room {
            error: record.length("room_error"),
            straight: record.length("straight"),
            park_room: record.length("park_room"),
            bend_radius: record.length("bend_radius"),
            slack: record.length("slack"),
            spare_cuts: record.integer("spare_cuts"),
        },
        cable: construction?,
        blocked: cable.flag("blocked"),
        far_end_in_water: record.flag("far_end_in_water"),
        bend_radius_least: cable.length("bend_radius_least"),
        expansion_per_k,
        relative_permittivity: cable.number("permittivity"),
        insulation_stuff,
        jacket_stuff,
        load_a: record.number("load"),
        emergency_a: record.number("emergency"),
        shield_load_a: record.number("shield_load"),
        route_length: record.length("route_length"),
        shield_metal: shield.and_then(|row| metal(row.text("metal")?)),
        shield_fault_greatest_degc: shield.and_then(|row| row.number("fault_greatest")),
        shield_fault_a: record.number("shield_fault"),
        shield_run: shield_run(record),
        bonding_lead,
        parts,
        place: reader.place_of(record.at),
    })
}
