//! Words: the table of fields of a section case, which determines both the reading and the schema.

use crate::rubber::LawKind;

/// Kind of a value.
#[derive(Clone, Copy, Debug)]
pub(super) enum Kind {
    /// A text that is not empty.
    Text,
    /// A text that may be empty.
    Remark,
    /// One of some words.
    Word(&'static [&'static str]),
    /// A number from `least` to `greatest`.
    Number {
        /// Least value allowed.
        least: f64,
        /// Greatest value allowed.
        greatest: f64,
    },
    /// A number above zero, up to `greatest`.
    Positive {
        /// Greatest value allowed.
        greatest: f64,
    },
    /// A whole number from 0: the index of a point.
    Index,
    /// A whole number from 1 upwards, or its negative: the number of a curve.
    CurveNumber,
    /// Two lengths, [r, z].
    Place,
    /// A list of at most `most` values.
    List {
        /// Kind of the values.
        of: &'static Kind,
        /// Greatest number of values.
        most: usize,
        /// Whether it may be empty.
        may_be_empty: bool,
    },
    /// A table with these fields.
    Table(&'static Shape),
    /// A table whose keys are names.
    Names(&'static Kind),
    /// A table whose field `kind` states its kind.
    Kinds(&'static [(&'static str, &'static Shape)]),
}

/// A field of a table.
#[derive(Debug)]
pub(super) struct Field {
    pub(super) name: &'static str,
    pub(super) kind: Kind,
    pub(super) is_needed: bool,
    pub(super) about: &'static str,
}

/// The fields of a table.
#[derive(Debug)]
pub(super) struct Shape {
    pub(super) about: &'static str,
    pub(super) fields: &'static [Field],
}

/// Names of the computed physics.
pub(super) const PHYSICS: &[&str] = &["electric", HEAT_WORD, RUBBER_TUBE];
/// Name of heat.
pub(super) const HEAT_WORD: &str = "heat";
/// Name of a tube of rubber.
pub(super) const RUBBER_TUBE: &str = "rubber-tube";

/// Greatest distance of a place from the origin, mm.
pub(super) const PLACE_MM_MOST: f64 = 1e6;
/// Least number above zero; a smaller one is no permittivity and no length, and its inverse overflows.
pub(super) const POSITIVE_LEAST: f64 = 1e-30;
/// Greatest number of points and of curves; every two curves are compared.
const POINTS_MOST: usize = 20_000;
const CURVES_MOST: usize = 5_000;

const LENGTH: Kind = Kind::Positive {
    greatest: PLACE_MM_MOST,
};

const fn needed(name: &'static str, kind: Kind, about: &'static str) -> Field {
    Field {
        name,
        kind,
        is_needed: true,
        about,
    }
}

const fn optional(name: &'static str, kind: Kind, about: &'static str) -> Field {
    Field {
        name,
        kind,
        is_needed: false,
        about,
    }
}

/// A list that may be empty.
const fn list(of: &'static Kind, most: usize) -> Kind {
    Kind::List {
        of,
        most,
        may_be_empty: true,
    }
}

/// A list with at least one value.
const fn some(of: &'static Kind, most: usize) -> Kind {
    Kind::List {
        of,
        most,
        may_be_empty: false,
    }
}

/// A section case.
pub(super) const CASE: Shape = Shape {
    about: "One axisymmetric section: geometry, materials, potentials, and the numbers that are wanted of it.",
    fields: &[
        needed("case", Kind::Text, "Its name."),
        optional(
            "about",
            Kind::Remark,
            "One line on it, printed on everything that is made from it; says so where it is invented.",
        ),
        optional(
            "physics",
            Kind::Word(&["electric"]),
            "What is computed; electric if absent.",
        ),
        optional(
            "units",
            Kind::Table(&UNITS),
            "The units of the file, which are always these.",
        ),
        needed(
            "points",
            some(&Kind::Place, POINTS_MOST),
            "Places [r, z], mm, numbered from 0.",
        ),
        needed(
            "curves",
            some(&Kind::Table(&CURVE), CURVES_MOST),
            "Lines and arcs between points, numbered from 1.",
        ),
        needed(
            "regions",
            some(&Kind::Table(&REGION), 1_000),
            "What carries field; conductors are holes.",
        ),
        needed(
            "materials",
            Kind::Names(&Kind::Table(&MATERIAL)),
            "Materials by name.",
        ),
        needed(
            "potentials_kv",
            Kind::Names(&POTENTIAL),
            "Potential by tag, kV; it holds on every curve of that tag, and every other outer curve carries no flux.",
        ),
        optional(
            "floating",
            list(&Kind::Text, 1_000),
            "Tags that are each one conductor whose potential is unknown and whose charge is zero.",
        ),
        optional(
            "frequency_hz",
            Kind::Number {
                least: 0.0,
                greatest: 1e12,
            },
            "Frequency, Hz; absent: capacitive; above 0: complex amplitudes; 0: conduction at rest, an extension.",
        ),
        optional(
            "leave_out",
            list(&Kind::Table(&DISC), 10_000),
            "Open discs left out of peaks and of peak-tangential-on-line, never of values at points.",
        ),
        needed(
            "wanted",
            some(&Kind::Kinds(WANTED), 2_000),
            "The numbers that are wanted.",
        ),
    ],
};

const POTENTIAL: Kind = Kind::Number {
    least: -1e6,
    greatest: 1e6,
};

const UNITS: Shape = Shape {
    about: "The units of the file.",
    fields: &[
        optional("length", Kind::Word(&["mm"]), "Lengths are millimetres."),
        optional(
            "potential",
            Kind::Word(&["kV"]),
            "Potentials are kilovolts, fields kV/mm, capacitances pF.",
        ),
        optional(
            "temperature",
            Kind::Word(&["degC"]),
            "Temperatures are degrees Celsius.",
        ),
    ],
};

const CURVE: Shape = Shape {
    about: "A line, or the arc shorter than half a turn about arc_center.",
    fields: &[
        needed("from", Kind::Index, "Point where it begins."),
        needed("to", Kind::Index, "Point where it ends."),
        needed(
            "tag",
            Kind::Text,
            "What it is called; \"interior\" marks curves without meaning.",
        ),
        optional(
            "arc_center",
            Kind::Place,
            "Centre [r, z] of the arc, mm; its ends lie on the circle to 0.000001 mm.",
        ),
    ],
};

const REGION: Shape = Shape {
    about: "What one closed loop of curves bounds; it has no holes.",
    fields: &[
        needed("name", Kind::Text, "Its name."),
        needed("material", Kind::Text, "Name of its material."),
        needed(
            "boundary",
            some(&Kind::CurveNumber, CURVES_MOST),
            "One closed loop of curve numbers in order, either way round; negative where a curve is run from `to` to `from`.",
        ),
    ],
};

const MATERIAL: Shape = Shape {
    about: "A material.",
    fields: &[
        needed(
            "eps_r",
            Kind::Number {
                least: 1.0,
                greatest: 1e9,
            },
            "Relative permittivity; that of nothing is 1.",
        ),
        optional(
            "sigma_s_per_m",
            CONDUCTIVITY,
            "Conductivity, S/m; 0 if absent.",
        ),
        optional(
            "sigma_rising",
            Kind::Table(&RISING),
            "Conductivity that rises with the field, instead of sigma_s_per_m; an extension.",
        ),
    ],
};

const CONDUCTIVITY: Kind = Kind::Number {
    least: 0.0,
    greatest: 1e9,
};

const RISING: Shape = Shape {
    about: "Conductivity σ(E) = σ0 (1 + (E/E1)²)^(p/2), E the modulus of the field as given (rms in, rms compared).",
    fields: &[
        needed(
            "at_rest_s_per_m",
            Kind::Positive { greatest: 1e9 },
            "σ0, S/m.",
        ),
        needed(
            "knee_kv_per_mm",
            Kind::Positive { greatest: 1e6 },
            "E1, kV/mm.",
        ),
        needed(
            "power",
            Kind::Number {
                least: 0.0,
                greatest: 20.0,
            },
            "p, power of the field far above the knee.",
        ),
    ],
};

const DISC: Shape = Shape {
    about: "An open disc.",
    fields: &[
        needed("at", Kind::Place, "Its middle [r, z], mm."),
        needed("radius", LENGTH, "Its radius, mm."),
    ],
};

const NAME: Field = needed("name", Kind::Text, "Its name, which no other has.");
const AT: Field = needed(
    "at",
    Kind::Place,
    "The place [r, z], mm, in a region or on its boundary.",
);

/// Wanted numbers, by kind.
pub(super) const WANTED: &[(&str, &Shape)] = &[
    (
        "capacitance",
        &Shape {
            about: "2W/V² over the whole turn, pF; V is the difference of the two potentials.",
            fields: &[NAME],
        },
    ),
    (
        "peak-in-region",
        &Shape {
            about: "Largest |E| in a region, kV/mm.",
            fields: &[NAME, needed("region", Kind::Text, "Name of the region.")],
        },
    ),
    (
        "peak-on-curve",
        &Shape {
            about: "Largest |E| on the curves of a tag, on the side that carries field, kV/mm.",
            fields: &[NAME, needed("tag", Kind::Text, "The tag.")],
        },
    ),
    (
        "peak-tangential-on-line",
        &Shape {
            about: "Largest |E·t|, t the unit vector along the straight line, kV/mm.",
            fields: &[
                NAME,
                needed("from", Kind::Place, "One end [r, z], mm."),
                needed("to", Kind::Place, "The other end [r, z], mm."),
            ],
        },
    ),
    (
        "potential-at",
        &Shape {
            about: "Potential at a place, kV.",
            fields: &[NAME, AT],
        },
    ),
    (
        "field-at",
        &Shape {
            about: "|E| at a place, kV/mm.",
            fields: &[
                NAME,
                AT,
                optional(
                    "side",
                    Kind::Text,
                    "Name of the region on whose side it is meant; needed where two materials meet.",
                ),
            ],
        },
    ),
    (
        "axial-field-at",
        &Shape {
            about: "E_z = −∂φ/∂z at a place, kV/mm, sign kept.",
            fields: &[NAME, AT],
        },
    ),
];

/// Greatest stretch of a bore; the pressure of a tube has reached its greatest value long before.
const STRETCH_MOST: f64 = 1e6;
/// Largest modulus, MPa.
const MODULUS_MPA_MOST: f64 = 1e6;

const MODULUS: Kind = Kind::Positive {
    greatest: MODULUS_MPA_MOST,
};
const CONSTANT: Kind = Kind::Number {
    least: 0.0,
    greatest: MODULUS_MPA_MOST,
};
/// A number that is not read: a result that somebody else found.
const FOUND: Kind = Kind::Number {
    least: f64::MIN,
    greatest: f64::MAX,
};

/// A tube of rubber on a rigid cylinder.
pub(super) const TUBE: Shape = Shape {
    about: "A tube of incompressible rubber on a rigid cylinder without friction: how hard it presses.",
    fields: &[
        needed("case", Kind::Text, "Its name."),
        optional(
            "about",
            Kind::Remark,
            "One line on it, printed on everything that is made from it; says so where it is invented.",
        ),
        needed(
            "physics",
            Kind::Word(&[RUBBER_TUBE]),
            "That it is a tube of rubber.",
        ),
        optional(
            "units",
            Kind::Table(&UNITS),
            "The units of the file, which are always these.",
        ),
        needed("bore_mm", LENGTH, "Relaxed radius of the bore, mm."),
        optional("outer_mm", LENGTH, "Relaxed outer radius, mm; of one ring."),
        optional("law", Kind::Kinds(LAWS), "Its rubber; of one ring."),
        optional(
            "rings",
            some(&Kind::Table(&RING), 1_000),
            "Rings bonded to each other, from the inside out, instead of outer_mm and law; an extension.",
        ),
        needed(
            "ends",
            Kind::Word(&["fixed-length", "free"]),
            "Whether the tube keeps its length, or nothing holds its ends.",
        ),
        optional(
            "axial_stretch",
            Kind::Number {
                least: 0.01,
                greatest: 100.0,
            },
            "Length at which a fixed tube is held, over its own; 1 if absent; an extension.",
        ),
        needed(
            "stretch",
            Kind::Number {
                least: 1.0,
                greatest: STRETCH_MOST,
            },
            "Radius of the cylinder over that of the bore.",
        ),
        optional(
            "pressure_mpa",
            FOUND,
            "A pressure that somebody found, MPa; not read.",
        ),
        optional(
            "error_estimate",
            FOUND,
            "How far off that may be; not read.",
        ),
    ],
};

const RING: Shape = Shape {
    about: "One ring of a tube.",
    fields: &[
        needed("outer_mm", LENGTH, "Its relaxed outer radius, mm."),
        needed("law", Kind::Kinds(LAWS), "Its rubber."),
    ],
};

/// Laws of rubber, by their kind.
const LAWS: &[(&str, &Shape)] = &[
    (
        LawKind::MooneyRivlin.name(),
        &Shape {
            about: "W = C1 (I1 − 3) + C2 (I2 − 3).",
            fields: &[
                needed("c1_mpa", CONSTANT, "C1, MPa."),
                needed("c2_mpa", CONSTANT, "C2, MPa; one of both is above nothing."),
            ],
        },
    ),
    (
        LawKind::NeoHookean.name(),
        &Shape {
            about: "W = μ/2 (I1 − 3).",
            fields: &[needed("mu_mpa", MODULUS, "Shear modulus μ, MPa.")],
        },
    ),
    (
        LawKind::Gent.name(),
        &Shape {
            about: "W = −μ J/2 ln(1 − (I1 − 3)/J).",
            fields: &[
                needed("mu_mpa", MODULUS, "Shear modulus μ at rest, MPa."),
                needed(
                    "limit",
                    Kind::Positive { greatest: 1e9 },
                    "J, the most that I1 − 3 comes near.",
                ),
            ],
        },
    ),
];

const DEGC: Kind = Kind::Number {
    least: -273.15,
    greatest: 1e5,
};

/// A section that conducts heat.
pub(super) const HEAT: Shape = Shape {
    about: "One axisymmetric section that conducts heat: geometry, materials, currents, films, and the numbers that are wanted of it.",
    fields: &[
        needed("case", Kind::Text, "Its name."),
        optional(
            "about",
            Kind::Remark,
            "One line on it, printed on everything that is made from it; says so where it is invented.",
        ),
        needed("physics", Kind::Word(&[HEAT_WORD]), "That it is heat."),
        optional(
            "units",
            Kind::Table(&UNITS),
            "The units of the file, which are always these.",
        ),
        needed(
            "points",
            some(&Kind::Place, POINTS_MOST),
            "Places [r, z], mm, numbered from 0.",
        ),
        needed(
            "curves",
            some(&Kind::Table(&CURVE), CURVES_MOST),
            "Lines and arcs between points, numbered from 1.",
        ),
        needed(
            "regions",
            some(&Kind::Table(&REGION), 1_000),
            "What conducts heat.",
        ),
        needed(
            "materials",
            Kind::Names(&Kind::Table(&STUFF)),
            "Materials by name.",
        ),
        optional(
            "joule",
            list(&Kind::Table(&JOULE), 1_000),
            "Currents along the axis, and what they lose.",
        ),
        needed(
            "convection",
            Kind::Names(&Kind::Table(&FILM)),
            "What cools, by tag of outer curves; every other outer curve is adiabatic.",
        ),
        optional(
            "transient",
            Kind::Table(&TRANSIENT),
            "The start, where the answer is not steady.",
        ),
        needed(
            "wanted",
            some(&Kind::Kinds(HEAT_WANTED), 2_000),
            "The numbers that are wanted.",
        ),
    ],
};

const STUFF: Shape = Shape {
    about: "A material.",
    fields: &[
        needed(
            "k_w_per_mk",
            Kind::Positive { greatest: 1e6 },
            "Thermal conductivity k, W/(m K).",
        ),
        optional(
            "rho_c_j_per_m3k",
            Kind::Positive { greatest: 1e12 },
            "Heat capacity of a volume ρc, J/(m³ K); needed where the answer is not steady.",
        ),
    ],
};

const JOULE: Shape = Shape {
    about: "A current along the axis: I² r20 (1 + α (T − 20)) a metre, spread over the cross-section of each region.",
    fields: &[
        needed(
            "regions",
            some(&Kind::Text, 1_000),
            "Names of the regions; each loses it on its own length.",
        ),
        needed(
            "amperes",
            Kind::Number {
                least: 0.0,
                greatest: 1e7,
            },
            "I, A.",
        ),
        needed(
            "r20_ohm_per_m",
            Kind::Number {
                least: 0.0,
                greatest: 1e6,
            },
            "Resistance at 20 °C, Ω/m.",
        ),
        optional(
            "alpha_per_k",
            Kind::Number {
                least: 0.0,
                greatest: 1.0,
            },
            "α, 1/K; 0 if absent.",
        ),
    ],
};

const FILM: Shape = Shape {
    about: "What cools a curve.",
    fields: &[
        needed(
            "h_w_per_m2k",
            Kind::Number {
                least: 0.0,
                greatest: 1e9,
            },
            "h, W/(m² K).",
        ),
        needed("ambient_c", DEGC, "Temperature beyond it, °C."),
    ],
};

const HOURS: Kind = Kind::Number {
    least: 0.0,
    greatest: 1e7,
};

const TRANSIENT: Shape = Shape {
    about: "Everything at one temperature, and the currents switched on.",
    fields: &[
        needed("start_c", DEGC, "Temperature at the start, °C."),
        optional(
            "hours",
            list(&HOURS, 1_000),
            "Times for which something is wanted; others are answered too.",
        ),
    ],
};

const HOUR: Field = optional(
    "hour",
    HOURS,
    "Time since the start, h; needed where the answer is not steady.",
);

/// Wanted quantities of heat, by kind.
const HEAT_WANTED: &[(&str, &Shape)] = &[
    (
        "temperature-at",
        &Shape {
            about: "Temperature at a place, °C.",
            fields: &[NAME, AT, HOUR],
        },
    ),
    (
        "total-loss",
        &Shape {
            about: "What all currents lose in the section as drawn, over the whole turn, W.",
            fields: &[NAME, HOUR],
        },
    ),
];
