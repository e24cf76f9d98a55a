//! The one table of checks: scope, computed result, owner's limits and direction of lengths of each.
//!
//! Why its own file: two lists of names drift apart; here a check is one row, and every other list is made from the rows.
//!
//! Not here: the functions that answer (`checks`), the sentences of the questions (`wording`).

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

/// Direction of a check's lengths.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lengths {
    /// Along the cable, read with a tape.
    Along,
    /// Across it: diameters, read with a calliper.
    Across,
}

/// One check.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CheckRow {
    /// Permanent name.
    pub slug: &'static str,
    /// Computed result that it rests on.
    pub rests: Rests,
    /// Limit that an owner may set for it.
    pub owner: OwnerLimits,
    /// Direction of its lengths.
    pub lengths: Lengths,
}

/// Hands the rows of all checks to a macro, in the order of their names.
///
/// A row: its permanent name; its scope (once for each joint, leg or end); the computed result on which it rests; the limit that an owner may set; the direction of its lengths.
/// A check without further entries is answered by `judge` in the file of its name in `checks`.
/// A check that differs from others in constants only names its family there, and its constants.
macro_rules! check_list {
    ($take:ident) => {
        $take! {
            adapter_in_body, Leg, Nothing, Nothing, Across;
            adapter_layer, Leg, Nothing, Nothing, Along, layer(Adapter);
            bend_radius, Leg, Nothing, Nothing, Along;
            body_class, Leg, Nothing, Nothing, Along;
            body_layer, Leg, Nothing, Nothing, Along, layer(Body);
            bonding_part_fit, Leg, Nothing, Nothing, Across;
            bus_ports, Joint, Nothing, Nothing, Along;
            cable_level, Leg, Nothing, Nothing, Along;
            common_parts, Joint, Nothing, Nothing, Along;
            conductor_fault_heat, Leg, Nothing, Nothing, Along;
            conductor_in_connector, Leg, Nothing, Nothing, Across;
            connector_fault, Leg, Nothing, Nothing, Along, withstand(Connector);
            connector_in_electrode, Leg, Nothing, Nothing, Across;
            consumable_metal, Leg, Nothing, Nothing, Along;
            contact_heat, End, Nothing, Nothing, Along;
            contact_layer, Leg, Nothing, Nothing, Along, layer(Contact);
            cut_order, Leg, Nothing, Nothing, Along;
            cut_window, Leg, Nothing, Nothing, Along;
            deflector_stress, Leg, Field, Field, Along, stress(DeflectorTip, DeflectorHeel);
            electrode_cover, Leg, Nothing, Length, Along;
            electrode_end_stress, Leg, Field, Field, Along, stress(ElectrodeEnd);
            electrode_layer, Leg, Nothing, Nothing, Along, layer(Electrode);
            gap_discharge, Leg, Field, Nothing, Along;
            insulation_in_body, End, Nothing, Nothing, Across;
            insulation_ovality, End, Nothing, Length, Across;
            interface_pressure, End, Pressure, Pressure, Along;
            interface_stress, Leg, Field, Field, Along, stress(Interface);
            jacket_surface, End, Nothing, Nothing, Along;
            joint_emergency_heat, Leg, Load, Nothing, Along;
            joint_load_heat, Leg, Load, Nothing, Along;
            kit_age, End, Nothing, Nothing, Along;
            lead_fault_heat, Leg, Nothing, Nothing, Along;
            measures_like_papers, End, Nothing, Nothing, Along;
            mouth_fit, End, Nothing, Nothing, Across;
            park_room, Joint, Nothing, Nothing, Along;
            part_chosen, Leg, Nothing, Nothing, Along;
            range_today, End, Pressure, Nothing, Across;
            reading_layer, End, Nothing, Nothing, Along;
            rubber_stretch, End, Pressure, Stretch, Along;
            screen_edge_in_control, Leg, Nothing, Nothing, Along;
            screen_edge_pressure, End, Pressure, Pressure, Along;
            screen_edge_stress, Leg, Field, Field, Along, stress(ScreenEdge);
            seal_body_overlap, Leg, Nothing, Nothing, Along;
            seal_fit, End, Nothing, Nothing, Across;
            seal_layer, Leg, Nothing, Nothing, Along, layer(Seal);
            seal_overlap, Leg, Nothing, Length, Along;
            seal_span, Joint, Nothing, Nothing, Along;
            seal_squeeze, End, Pressure, Nothing, Along;
            service_temperature, Leg, Load, Nothing, Along;
            shield_continuity, End, Nothing, Resistance, Along;
            shield_fault_heat, Leg, Nothing, Nothing, Along;
            shield_part_fault, Leg, Nothing, Nothing, Along, withstand(ShieldPart);
            shield_part_range, End, Nothing, Nothing, Along;
            slack_for_recut, Leg, Nothing, Nothing, Along;
            standing_voltage, Leg, Nothing, Voltage, Along;
            straight_length, Leg, Nothing, Nothing, Along;
            strand_water, End, Nothing, Nothing, Along;
            wick_path, Leg, Nothing, Nothing, Along;
        }
    };
}
pub(crate) use check_list;

/// The table from the rows.
macro_rules! table {
    ($($slug:ident, $asked:ident, $rests:ident, $owner:ident, $lengths:ident
        $(, $family:ident($($row:ident),+))?;)*) => {
        /// All checks, in the order of their names.
        pub const TABLE: &[CheckRow] = &[$(CheckRow {
            slug: stringify!($slug),
            rests: Rests::$rests,
            owner: OwnerLimits::$owner,
            lengths: Lengths::$lengths,
        }),*];
    };
}

check_list!(table);

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
