//! Checks: one question each; the name of a file is the permanent name of its check.
//!
//! Why its own room: a check compares and never solves; deleting its file and its row removes it everywhere.
//!
//! Invariants: a missing input is `not-judged`; every pass and every fail has a limit and its source; checks do not use each other.
//! A file whose name is one word holds code that several checks share.
//!
//! Not here: the table of checks (`limit::check_list`), the conclusions that a limit permits (`limit`), the joint's verdict (`judge`).

// Shared by several checks.
mod asks;
mod inputs;
mod intended_use;
mod layer;
mod list;
mod ranges;
mod room;
mod slug;
mod stress;
mod withstand;

// One check a file.
mod adapter_in_body;
mod bend_radius;
mod body_class;
mod bonding_part_fit;
mod bus_ports;
mod cable_level;
mod common_parts;
mod conductor_fault_heat;
mod conductor_in_connector;
mod connector_in_electrode;
mod consumable_metal;
mod contact_heat;
mod cut_order;
mod cut_window;
mod electrode_cover;
mod gap_discharge;
mod insulation_in_body;
mod insulation_ovality;
mod interface_pressure;
mod jacket_surface;
mod joint_emergency_heat;
mod joint_load_heat;
mod kit_age;
mod lead_fault_heat;
mod measures_like_papers;
mod mouth_fit;
mod park_room;
mod part_chosen;
mod range_today;
mod reading_layer;
mod rubber_stretch;
mod screen_edge_in_control;
mod screen_edge_pressure;
mod seal_body_overlap;
mod seal_fit;
mod seal_overlap;
mod seal_span;
mod seal_squeeze;
mod service_temperature;
mod shield_continuity;
mod shield_fault_heat;
mod shield_part_range;
mod slack_for_recut;
mod standing_voltage;
mod straight_length;
mod strand_water;
mod wick_path;

pub use inputs::{EndInputs, Inputs, LegInputs};
pub use list::{CHECKS, Check, Judge};

use asks::{asking_of_heat, asking_of_rubber};
use intended_use::{Listed, Rated};
use ranges::RangedPart;
use slug::slug;
use stress::solved;
