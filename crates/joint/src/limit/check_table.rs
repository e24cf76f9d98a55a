//! The one table of checks: what each check rests on, what an owner may limit, and whether its lengths are diameters.
//!
//! Why its own file: two lists of names side by side drift apart; here a check is one line.

/// Computed result that a check compares, beyond places, readings and rows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Rests {
    /// No computed result.
    Nothing,
    /// A solved field.
    Field,
    /// A computed pressure, or the effect of storage.
    Pressure,
    /// The temperatures that the load causes.
    Load,
}

/// Limit that an owner may set for a check, beside the limit of the instructions.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OwnerLimits {
    /// No limit.
    Nothing,
    /// A least and a greatest length.
    Length,
    /// A greatest field.
    Field,
    /// A least pressure.
    Pressure,
    /// A greatest stretch.
    Stretch,
    /// A greatest voltage.
    Voltage,
    /// A greatest resistance along a shield.
    Resistance,
}

/// One check.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CheckRow {
    /// Name, for ever.
    pub slug: &'static str,
    /// Computed result that it rests on.
    pub rests: Rests,
    /// Limit that an owner may set for it.
    pub owner: OwnerLimits,
    /// Whether its lengths are diameters, read with a calliper; otherwise they lie along the cable.
    pub is_of_diameters: bool,
}

const fn check(slug: &'static str, rests: Rests, owner: OwnerLimits) -> CheckRow {
    CheckRow {
        slug,
        rests,
        owner,
        is_of_diameters: false,
    }
}

const fn diameters(row: CheckRow) -> CheckRow {
    CheckRow {
        is_of_diameters: true,
        ..row
    }
}

/// All checks, in the order of their names.
pub const TABLE: &[CheckRow] = &[
    diameters(check(
        "adapter_in_body",
        Rests::Nothing,
        OwnerLimits::Nothing,
    )),
    check("adapter_layer", Rests::Nothing, OwnerLimits::Nothing),
    check("bend_radius", Rests::Nothing, OwnerLimits::Nothing),
    check("body_class", Rests::Nothing, OwnerLimits::Nothing),
    check("body_layer", Rests::Nothing, OwnerLimits::Nothing),
    diameters(check(
        "bonding_part_fit",
        Rests::Nothing,
        OwnerLimits::Nothing,
    )),
    check("bus_ports", Rests::Nothing, OwnerLimits::Nothing),
    check("cable_level", Rests::Nothing, OwnerLimits::Nothing),
    check("common_parts", Rests::Nothing, OwnerLimits::Nothing),
    check("conductor_fault_heat", Rests::Nothing, OwnerLimits::Nothing),
    diameters(check(
        "conductor_in_connector",
        Rests::Nothing,
        OwnerLimits::Nothing,
    )),
    check("connector_fault", Rests::Nothing, OwnerLimits::Nothing),
    diameters(check(
        "connector_in_electrode",
        Rests::Nothing,
        OwnerLimits::Nothing,
    )),
    check("consumable_metal", Rests::Nothing, OwnerLimits::Nothing),
    check("contact_heat", Rests::Nothing, OwnerLimits::Nothing),
    check("contact_layer", Rests::Nothing, OwnerLimits::Nothing),
    check("cut_order", Rests::Nothing, OwnerLimits::Nothing),
    check("cut_window", Rests::Nothing, OwnerLimits::Nothing),
    check("deflector_stress", Rests::Field, OwnerLimits::Field),
    check("electrode_cover", Rests::Nothing, OwnerLimits::Length),
    check("electrode_end_stress", Rests::Field, OwnerLimits::Field),
    check("electrode_layer", Rests::Nothing, OwnerLimits::Nothing),
    check("gap_discharge", Rests::Field, OwnerLimits::Nothing),
    diameters(check(
        "insulation_in_body",
        Rests::Nothing,
        OwnerLimits::Nothing,
    )),
    diameters(check(
        "insulation_ovality",
        Rests::Nothing,
        OwnerLimits::Length,
    )),
    check("interface_pressure", Rests::Pressure, OwnerLimits::Pressure),
    check("interface_stress", Rests::Field, OwnerLimits::Field),
    check("jacket_surface", Rests::Nothing, OwnerLimits::Nothing),
    check("joint_emergency_heat", Rests::Load, OwnerLimits::Nothing),
    check("joint_load_heat", Rests::Load, OwnerLimits::Nothing),
    check("kit_age", Rests::Nothing, OwnerLimits::Nothing),
    check("lead_fault_heat", Rests::Nothing, OwnerLimits::Nothing),
    check("measures_like_papers", Rests::Nothing, OwnerLimits::Nothing),
    diameters(check("mouth_fit", Rests::Nothing, OwnerLimits::Nothing)),
    check("park_room", Rests::Nothing, OwnerLimits::Nothing),
    check("part_chosen", Rests::Nothing, OwnerLimits::Nothing),
    diameters(check("range_today", Rests::Pressure, OwnerLimits::Nothing)),
    check("reading_layer", Rests::Nothing, OwnerLimits::Nothing),
    check("rubber_stretch", Rests::Pressure, OwnerLimits::Stretch),
    check(
        "screen_edge_in_control",
        Rests::Nothing,
        OwnerLimits::Nothing,
    ),
    check(
        "screen_edge_pressure",
        Rests::Pressure,
        OwnerLimits::Pressure,
    ),
    check("screen_edge_stress", Rests::Field, OwnerLimits::Field),
    check("seal_body_overlap", Rests::Nothing, OwnerLimits::Nothing),
    diameters(check("seal_fit", Rests::Nothing, OwnerLimits::Nothing)),
    check("seal_layer", Rests::Nothing, OwnerLimits::Nothing),
    check("seal_overlap", Rests::Nothing, OwnerLimits::Length),
    check("seal_span", Rests::Nothing, OwnerLimits::Nothing),
    check("seal_squeeze", Rests::Pressure, OwnerLimits::Nothing),
    check("service_temperature", Rests::Load, OwnerLimits::Nothing),
    check("shield_continuity", Rests::Nothing, OwnerLimits::Resistance),
    check("shield_fault_heat", Rests::Nothing, OwnerLimits::Nothing),
    check("shield_part_fault", Rests::Nothing, OwnerLimits::Nothing),
    check("shield_part_range", Rests::Nothing, OwnerLimits::Nothing),
    check("slack_for_recut", Rests::Nothing, OwnerLimits::Nothing),
    check("standing_voltage", Rests::Nothing, OwnerLimits::Voltage),
    check("straight_length", Rests::Nothing, OwnerLimits::Nothing),
    check("strand_water", Rests::Nothing, OwnerLimits::Nothing),
    check("wick_path", Rests::Nothing, OwnerLimits::Nothing),
];

/// The row of a check; `None` if no check has that name.
pub fn check_row(slug: &str) -> Option<&'static CheckRow> {
    TABLE.iter().find(|row| row.slug == slug)
}

/// Names of all checks, in order.
pub fn slugs() -> impl Iterator<Item = &'static str> {
    TABLE.iter().map(|row| row.slug)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_check_has_one_row_and_they_stand_in_order() {
        let names: Vec<&str> = slugs().collect();
        assert!(names.is_sorted_by(|a, b| a < b));
        assert_eq!(
            check_row("cut_window").map(|row| row.slug),
            Some("cut_window")
        );
        assert_eq!(check_row("cut"), None);
    }
}
