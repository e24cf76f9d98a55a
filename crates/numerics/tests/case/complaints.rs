//! One test for each complaint; the slice itself, read in `meaning`, is the twin of all of them.

use super::{SLICE, check_says, check_slice, exchanged};
use jointwright_numerics::case::read;

#[test]
fn text_that_is_no_case_is_refused_where_it_stops_being_one() {
    check_says("", &[("", "The file is empty")]);
    let said = check_says(
        "{\"case\": \"a\",\n \"points\": [1 2]}",
        &[("", "not JSON here: expected `,` or `]`")],
    );
    assert_eq!((said[0].line, said[0].column), (2, 15));
    check_says(
        "[]",
        &[("", "Found a list of 0; expected a table of fields")],
    );
    check_says("3", &[("", "Found 3; expected a table of fields")]);
    check_slice(
        "\"radius\": 0.5",
        "\"radius\": 1e999",
        &[("", "not JSON here: number out of range")],
    );
    let deep = "[".repeat(100_000);
    check_says(&deep, &[("", "not JSON here: recursion limit exceeded")]);
}

#[test]
fn a_complaint_says_line_column_and_path() {
    let said = check_slice(
        "\"tag\": \"lower\"",
        "\"tga\": \"lower\"",
        &[
            ("curves[6]", "The field `tag` is missing."),
            (
                "curves[6].tga",
                "The word \"tga\" is not known here. Hint: The nearest known word is \"tag\".",
            ),
        ],
    );
    assert_eq!((said[1].line, said[1].column), (13, 31));
    assert!(
        said[1]
            .to_string()
            .starts_with("13:31 curves[6].tga: The word")
    );
}

#[test]
fn fields_that_are_missing_unknown_or_doubled_are_named() {
    check_slice(
        " \"case\": \"slice\",\n",
        "",
        &[("", "The field `case` is missing.")],
    );
    check_slice(
        "\"potentials_kv\": {\"cond\": 8.7, \"outer\": 0},",
        "",
        &[
            ("", "The field `potentials_kv` is missing."),
            ("wanted[0].kind", "the case has 0: none"),
        ],
    );
    check_slice(
        "\"about\"",
        "\"abuot\"",
        &[("abuot", "nearest known word is \"about\"")],
    );
    check_slice(
        "{\"eps_r\": 2.3}",
        "{\"epsr\": 2.3}",
        &[
            ("materials.pe", "`eps_r` is missing"),
            ("materials.pe.epsr", "nearest known word is \"eps_r\""),
        ],
    );
    check_slice(
        "\"outer\": 0}",
        "\"outer\": 0, \"outer\": 0}",
        &[("", "The word \"outer\" stands twice")],
    );
}

#[test]
fn values_of_the_wrong_kind_are_named() {
    check_slice(
        "[6, 0]",
        "[6, \"0\"]",
        &[(
            "points[0]",
            "Found a list of 2; expected two numbers [r, z] in mm",
        )],
    );
    check_slice(
        "[6, 0]",
        "[6]",
        &[("points[0]", "Found a list of 1; expected two numbers")],
    );
    check_slice(
        "[6, 0]",
        "[6, 2e6]",
        &[("points[0]", "none farther from 0 than 1000000")],
    );
    check_slice(
        "\"from\": 5",
        "\"from\": 5.5",
        &[(
            "curves[6].from",
            "Found 5.5; expected a whole number from 0",
        )],
    );
    check_slice(
        "\"from\": 5",
        "\"from\": -1",
        &[("curves[6].from", "Found -1; expected a whole number from 0")],
    );
    check_slice(
        "[1, 2, 3, 4]",
        "[1, 2, 0, 4]",
        &[(
            "regions[0].boundary[2]",
            "Found 0; expected a whole number from 1",
        )],
    );
    check_slice(
        "[1, 2, 3, 4]",
        "[]",
        &[("regions[0].boundary", "The list is empty")],
    );
    check_slice(
        "\"name\": \"in\"",
        "\"name\": \" \"",
        &[
            (
                "regions[0].name",
                "Found \" \"; expected a text with something in it",
            ),
            ("wanted[1].region", "No region has the name \"in\"."),
        ],
    );
    check_slice(
        "\"leave_out\": [",
        "\"frequency_hz\": null, \"leave_out\": [",
        &[(
            "frequency_hz",
            "Hint: A field that is not needed is left out.",
        )],
    );
    check_slice(
        "\"leave_out\": [",
        "\"frequency_hz\": -50, \"leave_out\": [",
        &[("frequency_hz", "Found -50; expected a number from 0")],
    );
    check_slice(
        "\"radius\": 0.5",
        "\"radius\": 0",
        &[(
            "leave_out[0].radius",
            "Found 0; expected a number greater than 0",
        )],
    );
    check_slice(
        "\"radius\": 0.5",
        "\"radius\": -1",
        &[("leave_out[0].radius", "expected a number greater than 0")],
    );
    check_slice(
        "8.7",
        "\"8.7\"",
        &[
            ("potentials_kv.cond", "Found \"8.7\"; expected a number"),
            ("wanted[0].kind", "the case has 1: 0 kV"),
        ],
    );
}

#[test]
fn units_are_those_of_the_format() {
    check_slice(
        "\"mm\"",
        "\"in\"",
        &[("units.length", "Found \"in\"; expected \"mm\"")],
    );
    check_slice(
        "\"kV\"",
        "\"V\"",
        &[("units.potential", "Found \"V\"; expected \"kV\"")],
    );
    check_slice(
        "\"potential\": \"kV\"",
        "\"temperature\": \"K\"",
        &[("units.temperature", "Found \"K\"; expected \"degC\"")],
    );
}

#[test]
fn a_physics_that_is_not_known_is_said_so_and_nothing_else() {
    check_slice(
        "\"about\"",
        "\"physics\": \"electrik\", \"about\"",
        &[(
            "physics",
            "Found \"electrik\"; expected \"electric\" or \"heat\" or \"rubber-tube\". Hint: The nearest known word is \"electric\"",
        )],
    );
}

#[test]
fn a_list_of_cases_is_not_a_case() {
    check_says(
        "[{\"case\": \"x\"}]",
        &[("", "Give each case of the list a file")],
    );
}

#[test]
fn materials_are_checked() {
    check_slice(
        "\"eps_r\": 2.3",
        "\"eps_r\": 0",
        &[("materials.pe.eps_r", "Found 0; expected a number from 1 to")],
    );
    check_slice(
        "\"eps_r\": 2.3",
        "\"eps_r\": -2.3",
        &[(
            "materials.pe.eps_r",
            "Found -2.3; expected a number from 1 to",
        )],
    );
    check_slice(
        "1e-9",
        "-1e-9",
        &[("materials.rubber.sigma_s_per_m", "expected a number from 0")],
    );
    check_slice(
        "\"material\": \"pe\"",
        "\"material\": \"p\"",
        &[(
            "regions[0].material",
            "The region \"in\" is of \"p\", which is no material. Hint: The nearest known word is \"pe\".",
        )],
    );
    let both = "\"sigma_rising\": {\"at_rest_s_per_m\": 0, \"knee_kv_per_mm\": 0, \"power\": -1}, \"sigma_s_per_m\"";
    check_slice(
        "\"sigma_s_per_m\"",
        both,
        &[
            (
                "materials.rubber.sigma_rising",
                "The material \"rubber\" has two conductivities.",
            ),
            (
                "materials.rubber.sigma_rising.at_rest_s_per_m",
                "greater than 0",
            ),
            (
                "materials.rubber.sigma_rising.knee_kv_per_mm",
                "greater than 0",
            ),
            ("materials.rubber.sigma_rising.power", "from 0 to 20"),
        ],
    );
}

#[test]
fn at_rest_every_region_must_conduct() {
    check_slice(
        "\"leave_out\": [",
        "\"frequency_hz\": 0, \"leave_out\": [",
        &[("regions[0].material", "The region \"in\" does not conduct")],
    );
}

#[test]
fn tags_must_be_those_of_curves() {
    check_slice(
        "\"outer\": 0",
        "\"outter\": 0",
        &[
            (
                "potentials_kv.outter",
                "No curve has the tag \"outter\". Hint: The nearest known word is \"outer\".",
            ),
            ("wanted[0].kind", "the case has 1: 8.7 kV"),
        ],
    );
    check_slice(
        "\"outer\": 0",
        "\"outer\": 0, \"interior\": 4",
        &[("potentials_kv.interior", "marks curves without meaning")],
    );
    check_slice(
        "\"leave_out\": [",
        "\"floating\": [\"ifce\"], \"leave_out\": [",
        &[("floating[0]", "No curve has the tag \"ifce\"")],
    );
    check_slice(
        "\"leave_out\": [",
        "\"floating\": [\"iface\", \"iface\"], \"leave_out\": [",
        &[("floating[1]", "stands twice")],
    );
}

#[test]
fn a_tag_is_fixed_or_floats() {
    check_slice(
        "\"leave_out\": [",
        "\"floating\": [\"outer\"], \"leave_out\": [",
        &[(
            "floating[0]",
            "The tag \"outer\" both floats and has a potential.",
        )],
    );
}

#[test]
fn what_is_wanted_must_be_there() {
    check_slice(
        "\"region\": \"in\"",
        "\"region\": \"inn\"",
        &[(
            "wanted[1].region",
            "No region has the name \"inn\". Hint: The nearest known word is \"in\".",
        )],
    );
    check_slice(
        "\"tag\": \"cond\"}",
        "\"tag\": \"core\"}",
        &[
            ("potentials_kv.cond", "No curve has the tag \"cond\""),
            (
                "wanted[0].kind",
                "A capacitance is between two different potentials; the case has 1: 0 kV",
            ),
            ("wanted[2].tag", "No curve has the tag \"cond\""),
        ],
    );
    check_slice(
        "peak-in-region",
        "peak-in-regoin",
        &[(
            "wanted[1].kind",
            "Nothing of the kind \"peak-in-regoin\" can be wanted. Hint: The nearest known word is \"peak-in-region\".",
        )],
    );
    check_slice(
        "\"name\": \"rim\"",
        "\"name\": \"peak\"",
        &[(
            "wanted[2].name",
            "The name \"peak\" stands twice, first at wanted[1].",
        )],
    );
    check_slice(
        "\"kind\": \"capacitance\"",
        "\"kin\": \"capacitance\"",
        &[("wanted[0]", "The field `kind` is missing")],
    );
    check_slice(
        "\"kind\": \"capacitance\"",
        "\"kind\": \"capacitance\", \"at\": [1, 2]",
        &[("wanted[0].at", "The word \"at\" is not known here")],
    );
}

#[test]
fn a_capacitance_is_between_two_potentials() {
    check_slice(
        "\"outer\": 0",
        "\"outer\": 0, \"lower\": 4",
        &[("wanted[0].kind", "the case has 3: 0 kV, 4 kV, 8.7 kV")],
    );
}

#[test]
fn places_outside_every_region_are_named() {
    for kind in ["potential-at", "field-at", "axial-field-at"] {
        let text = exchanged(
            SLICE,
            "\"potential-at\", \"at\": [12, 10]",
            &format!("\"{kind}\", \"at\": [5.9, 10]"),
        );
        check_says(
            &text,
            &[("wanted[4].at", "The place (5.9, 10) mm lies in no region")],
        );
    }
    // On the boundary it is inside.
    let text = exchanged(SLICE, "\"at\": [12, 10]", "\"at\": [6, 10]");
    assert!(read(&text).is_ok());
}

#[test]
fn a_line_must_run_through_the_section() {
    check_slice(
        "\"from\": [12, 1], \"to\": [12, 19]",
        "\"from\": [1, 1], \"to\": [5, 40]",
        &[(
            "wanted[3].from",
            "The line from (1, 1) mm to (5, 40) mm runs through no region",
        )],
    );
    check_slice(
        "\"to\": [12, 19]",
        "\"to\": [12, 1]",
        &[("wanted[3].to", "The line has no length")],
    );
    // Along the boundary it lies in the section; part of it inside is not enough.
    for (from, to, is_inside) in [
        ("[12, 1]", "[12, 1900]", false),
        ("[6, 1]", "[6, 300]", false),
        ("[6, 1]", "[6, 19]", true),
        ("[30, 0]", "[6, 20]", true),
    ] {
        let text = exchanged(
            SLICE,
            "\"from\": [12, 1], \"to\": [12, 19]",
            &format!("\"from\": {from}, \"to\": {to}"),
        );
        assert_eq!(read(&text).is_ok(), is_inside, "{from} {to}");
    }
}

#[test]
fn a_field_on_an_interface_needs_its_side() {
    let at = |at: &str| {
        exchanged(
            SLICE,
            "\"field-at\", \"at\": [9, 7]",
            &format!("\"field-at\", \"at\": {at}"),
        )
    };
    check_says(
        &at("[12, 7]"),
        &[(
            "wanted[5].at",
            "The place (12, 7) mm lies on curve 3 (iface), where the field differs between the two sides; `side` is missing. Hint: Give `side`: \"in\" or \"out\".",
        )],
    );
    assert!(read(&at("[12, 7], \"side\": \"out\"")).is_ok());
    check_says(
        &at("[12, 7], \"side\": \"oot\""),
        &[("wanted[5].side", "No region has the name \"oot\"")],
    );
    check_says(
        &at("[9, 7], \"side\": \"out\""),
        &[(
            "wanted[5].side",
            "The place (9, 7) mm does not lie in the region \"out\" or on its boundary.",
        )],
    );
    // If both sides have one material there is nothing to ask.
    let alike = exchanged(
        &at("[12, 7]"),
        "\"material\": \"rubber\"",
        "\"material\": \"pe\"",
    );
    assert!(read(&alike).is_ok());
    let sheet = exchanged(&alike, "\"outer\": 0}", "\"outer\": 0, \"iface\": 4}");
    let sheet = exchanged(&sheet, "{\"name\": \"C\", \"kind\": \"capacitance\"},", "");
    check_says(
        &sheet,
        &[(
            "wanted[4].at",
            "where the field differs between the two sides",
        )],
    );
}

#[test]
fn an_axial_field_on_an_interface_that_slants_is_refused() {
    let text = exchanged(SLICE, "[12, 20]", "[13, 20]");
    let text = exchanged(
        &text,
        "\"axial-field-at\", \"at\": [12, 7]",
        "\"axial-field-at\", \"at\": [12.5, 10]",
    );
    check_says(
        &text,
        &[(
            "wanted[6].at",
            "lies on curve 3 (iface), which does not run along the axis there: E_z differs",
        )],
    );
    let alike = exchanged(&text, "\"material\": \"rubber\"", "\"material\": \"pe\"");
    assert!(read(&alike).is_ok());
    let beside = exchanged(&text, "[12.5, 10]}\n", "[12.6, 10]}\n");
    assert!(read(&beside).is_ok());
}

#[test]
fn flaws_of_the_drawing_are_complaints_at_their_curves() {
    check_slice(
        "[30, 20]",
        "[10, 10]",
        &[(
            "curves[2]",
            "Curve 3 (iface) and curve 6 (outer) cross at (12, 9) mm.",
        )],
    );
    check_slice(
        "\"from\": 5",
        "\"from\": 17",
        &[(
            "curves[6].from",
            "Curve 7 (lower) names point 17, but there are 6 points, numbered from 0.",
        )],
    );
    check_slice(
        "[1, 2, 3, 4]",
        "[1, 2, 3, 9]",
        &[
            ("curves[3]", "Curve 4 (interior) belongs to no region."),
            (
                "regions[0].boundary",
                "Region \"in\" names curve 9, but there are 7 curves, numbered from 1.",
            ),
        ],
    );
    check_slice(
        "[1, 2, 3, 4]",
        "[1, 2, -3, 4]",
        &[
            (
                "regions[0].boundary",
                "The boundary of region \"in\" is not closed: curve 2 (interior) ends at (12, 20) mm, but curve 3 (iface), which is next, begins at (12, 0) mm; run the other way it would fit.",
            ),
            (
                "regions[0].boundary",
                "curve 3 (iface) ends at (12, 20) mm, but curve 4 (interior), which is next, begins at (12, 0) mm.",
            ),
        ],
    );
    check_slice(
        "\"tag\": \"lower\"",
        "\"arc_center\": [21, 0], \"tag\": \"lower\"",
        &[(
            "curves[6].arc_center",
            "Curve 7 (lower) is an arc of half a turn",
        )],
    );
    check_slice(
        "\"name\": \"out\"",
        "\"name\": \"in\"",
        &[("regions[1].name", "have the same name.")],
    );
}

#[test]
fn a_region_that_is_not_glued_has_no_field_and_is_refused() {
    // The outer layer has points and a curve of its own at the interface.
    let text = exchanged(SLICE, "[30, 0]]", "[30, 0], [12.001, 20], [12.001, 0]]");
    let text = exchanged(&text, "\"from\": 2, \"to\": 4", "\"from\": 6, \"to\": 4");
    let text = exchanged(
        &text,
        "{\"from\": 5, \"to\": 3, \"tag\": \"lower\"}",
        "{\"from\": 5, \"to\": 7, \"tag\": \"lower\"}, {\"from\": 7, \"to\": 6, \"tag\": \"own\"}",
    );
    let text = exchanged(&text, "[-3, 5, 6, 7]", "[8, 5, 6, 7]");
    check_says(
        &text,
        &[
            (
                "regions[0]",
                "The region \"in\" touches no other potential than 8.7 kV, so that there is no field there at all.",
            ),
            (
                "regions[1]",
                "The region \"out\" touches no other potential than 0 kV",
            ),
        ],
    );
    // A tag without a potential.
    let text = exchanged(SLICE, "\"cond\": 8.7, ", "");
    let text = exchanged(&text, "{\"name\": \"C\", \"kind\": \"capacitance\"},", "");
    check_says(
        &text,
        &[(
            "regions[0]",
            "The regions \"in\", \"out\", together, touch no other potential than 0 kV",
        )],
    );
    // A conductor between the two leaves each with its own potentials.
    let text = exchanged(SLICE, "\"outer\": 0}", "\"outer\": 8.7, \"iface\": 8.7}");
    let text = exchanged(&text, "{\"name\": \"C\", \"kind\": \"capacitance\"},", "");
    let said = read(&text).expect_err("there is no field at all");
    assert_eq!(said.len(), 2, "{said:#?}");
    // A floating conductor connects them.
    let text = exchanged(
        SLICE,
        "\"leave_out\": [",
        "\"floating\": [\"iface\"], \"leave_out\": [",
    );
    assert!(read(&text).is_ok());
}

#[test]
fn conductors_that_touch_must_agree() {
    // The lower rim reaches from the outer conductor to the interface.
    let text = exchanged(SLICE, "\"outer\": 0}", "\"outer\": 0, \"lower\": 8.7}");
    check_says(
        &text,
        &[(
            "wanted[0]",
            "The number \"C\" has no bound: curve 6 (outer, 0 kV) and curve 7 (lower, 8.7 kV) meet at (30, 0) mm.",
        )],
    );
    let text = exchanged(&text, "\"region\": \"in\"", "\"region\": \"out\"");
    check_says(
        &text,
        &[
            ("wanted[0]", "\"C\" has no bound"),
            ("wanted[1]", "\"peak\" has no bound"),
        ],
    );
    let text = exchanged(&text, "{\"name\": \"C\", \"kind\": \"capacitance\"},", "");
    let text = exchanged(&text, "\"at\": [6, 20]", "\"at\": [30, 0]");
    assert!(read(&text).is_ok());
    let text = exchanged(
        SLICE,
        "\"leave_out\": [",
        "\"floating\": [\"lower\"], \"leave_out\": [",
    );
    check_says(
        &text,
        &[(
            "curves[6]",
            "Conductors touch: curve 6 (outer, 0 kV) and curve 7 (lower, floating) meet at (30, 0) mm, and one of them floats.",
        )],
    );
}

#[test]
fn everything_is_said_in_one_run() {
    let text = exchanged(SLICE, "\"mm\"", "\"inch\"");
    let text = exchanged(&text, "[30, 0]]", "[30]]");
    let text = exchanged(&text, "\"to\": 2, \"tag\"", "\"too\": 2, \"tag\"");
    let text = exchanged(&text, "\"material\": \"pe\"", "\"material\": \"pf\"");
    let text = exchanged(&text, "[-3, 5, 6, 7]", "[-3, 5, 66, 7]");
    let text = exchanged(&text, "\"eps_r\": 2.8", "\"eps_r\": -2.8");
    let text = exchanged(&text, "\"outer\": 0", "\"outre\": 0");
    let text = exchanged(&text, "\"radius\": 0.5", "\"radius\": -0.5");
    let text = exchanged(
        &text,
        "\"tag\": \"cond\"},\n  {\"name\"",
        "\"tag\": \"wire\"},\n  {\"name\"",
    );
    let paths: Vec<String> = read(&text)
        .expect_err("much is wrong")
        .into_iter()
        .map(|c| c.path)
        .collect();
    let expected = [
        "units.length",
        "points[5]",
        "curves[1]",
        "curves[1].too",
        "regions[0].material",
        "regions[1].boundary",
        "materials.rubber.eps_r",
        "potentials_kv.outre",
        "leave_out[0].radius",
        "wanted[0].kind",
        "wanted[2].tag",
    ];
    assert_eq!(paths, expected);
}
