//! The questions of the checks.

/// Question of a check by its name in documents; `None` if no check has that name.
pub(crate) fn question(slug: &str) -> Option<&'static str> {
    Some(match slug {
        "adapter_in_body" => "Does the adapter on this leg belong in its body?",
        "adapter_layer" => {
            "Does the adapter lie only on layers for which its paper gives it a range?"
        }
        "bend_radius" => "Is the leg bent no tighter than its maker permits?",
        "body_class" => "Are the parts rated for this system and this kind of joint?",
        "body_layer" => "Does the body lie only on layers for which its paper gives it a range?",
        "bonding_part_fit" => {
            "Does the shield part take this leg's metallic shield, and make the bonding that the job asks for?"
        }
        "bus_ports" => "Has every port of the bus a leg or a blank with its insulating plug?",
        "cable_level" => {
            "Does the cable's insulation level suit the system's earthing and clearing time?"
        }
        "common_parts" => "Do the legs that share a part name the same part?",
        "conductor_fault_heat" => {
            "Does the conductor, heated by the stated short circuit, stay below the temperature for which the body's paper gives the joint?"
        }
        "conductor_in_connector" => "Is the connector made for this conductor?",
        "connector_fault" => {
            "Does the connector carry the short circuit that the job states for the conductor?"
        }
        "connector_in_electrode" => "Does the connector, as made, go under the body's electrode?",
        "consumable_metal" => "Is every consumable of this leg made for its conductor's metal?",
        "contact_heat" => {
            "Does each connection of the shield have no more resistance than the paper of its part allows, in which a short circuit makes heat?"
        }
        "contact_layer" => {
            "Does the shield part touch bare metallic shield along its whole contact?"
        }
        "cut_order" => "Do the cuts of this leg lie in the order of the layers?",
        "cut_window" => "Does every cut and mark of this leg have a place and a window?",
        "deflector_stress" => {
            "Is the field at the tip and the heel of the deflector no stronger than the worst that the instructions allow?"
        }
        "electrode_cover" => {
            "Does the body's electrode cover the whole connector and lap onto the insulation?"
        }
        "electrode_end_stress" => {
            "Is the field at the end of the electrode no stronger than the worst that the instructions allow?"
        }
        "electrode_layer" => {
            "Does the body's electrode end before the edge of the insulation screen?"
        }
        "gap_discharge" => {
            "Is the gap before the screen edge no nearer to a discharge than the worst that the instructions allow?"
        }
        "insulation_in_body" => {
            "Does this leg's insulation lie in the range of the body or adapter on it?"
        }
        "insulation_ovality" => "Is the insulation round enough for the part on it?",
        "interface_pressure" => {
            "Is every part pressed on the cable at least as hard as the worst that its instructions allow?"
        }
        "interface_stress" => {
            "Is the field along the interfaces between cable, adapter and body no stronger than the worst that the instructions allow?"
        }
        "jacket_surface" => {
            "Is the jacket where the seal will lie in a condition on which the seal may close?"
        }
        "joint_emergency_heat" => {
            "Does the conductor inside the body, at the end of the job's emergency, keep below the temperature for which the body's paper gives the joint in one?"
        }
        "joint_load_heat" => {
            "Does the conductor inside the body, at the job's load all the time, keep below the temperature for which the body's paper gives the joint?"
        }
        "kit_age" => "Is every part on the truck within its date on the day of the work?",
        "lead_fault_heat" => {
            "Does the bonding lead, heated by the stated short circuit of the shield, stay below what its paper allows it?"
        }
        "measures_like_papers" => "Does the leg measure like its papers?",
        "mouth_fit" => {
            "Do the mouths of the body and of the adapter close on the layers that they sit on?"
        }
        "park_room" => {
            "Is there room to park the body, and the seals behind it, on the leg that parks?"
        }
        "part_chosen" => "Is every part of this leg named?",
        "range_today" => "Does this leg lie in the range that this very kit can take today?",
        "reading_layer" => "Was the diameter read over the layer that the reading names?",
        "rubber_stretch" => "Is no part stretched farther than its instructions allow?",
        "screen_edge_in_control" => {
            "Does the edge of the insulation screen lie where the body controls the stress?"
        }
        "screen_edge_pressure" => {
            "Is the body pressed on the cable at the edge of the insulation screen at least as hard as the worst that its instructions allow?"
        }
        "screen_edge_stress" => {
            "Is the field before the edge of the insulation screen no stronger than the worst that the instructions allow?"
        }
        "seal_body_overlap" => "Does the seal close over the end of the body?",
        "seal_fit" => "Does the seal close on this leg?",
        "seal_layer" => {
            "Does the seal lie, beyond the body, only on layers for which its paper gives it a range?"
        }
        "seal_overlap" => "Does the seal lap far enough onto the jacket?",
        "seal_span" => "Is one seal over the whole joint long enough for both legs?",
        "seal_squeeze" => {
            "Does the seal squeeze the jacket at least as much as at the worst that its instructions allow?"
        }
        "service_temperature" => {
            "Do load and emergency keep joint and cable below the highest temperature that the job states for the conductor?"
        }
        "shield_continuity" => {
            "Does the resistance read along a shield agree with what its papers let expect, and with the owner's greatest?"
        }
        "shield_fault_heat" => {
            "Does the cable's metallic shield, heated by the stated short circuit, stay below what the cable's papers allow it?"
        }
        "shield_part_fault" => {
            "Does what carries or bonds the shield carry the short circuit that the job states for it?"
        }
        "shield_part_range" => {
            "Do the layers on which the shield part sits lie in the ranges that its paper gives?"
        }
        "slack_for_recut" => "Is there cable left for as many fresh starts as the job asks for?",
        "standing_voltage" => {
            "Does the voltage along a shield that is open at one end stay below what the owner allows, at the stated load?"
        }
        "straight_length" => "Is the leg straight for as far as the body and its seal go?",
        "strand_water" => {
            "Is there no water in the strands of this end, nor found under its shield?"
        }
        "wick_path" => {
            "Is every wire, strap, braid or lead that passes under the seal blocked against water?"
        }
        _ => return None,
    })
}
