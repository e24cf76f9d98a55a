//! Examples made worse on purpose, so that a ruling fails whose evidence could be deleted.

use super::Bench;
use crate::cases::named;
use crate::laws::toml_text::rows;
use toml::{Table, Value};

fn table<'t>(job: &'t mut Table, name: &str) -> &'t mut Table {
    let value = job
        .entry(name)
        .or_insert_with(|| Value::Table(Table::new()));
    value.as_table_mut().expect("a table")
}

fn set(table: &mut Table, pairs: &[(&str, &str)]) {
    for (key, value) in pairs {
        let value: Table = format!("x = {value}").parse().expect("a value");
        table.insert((*key).to_owned(), value["x"].clone());
    }
}

fn add(job: &mut Table, kind: &str, row: &str) {
    let row: Table = format!("x = {row}").parse().expect("a row");
    let rows = job.entry(kind).or_insert_with(|| Value::Array(Vec::new()));
    rows.as_array_mut().expect("rows").push(row["x"].clone());
}

fn scale_values(job: &mut Table, by: f64) {
    for row in rows(job, "reading") {
        for value in row["values"].as_array_mut().expect("values") {
            let text = value.as_str().expect("a diameter");
            let length = jointwright_units::Length::parse_diameter(text).expect("a diameter");
            *value = Value::String(format!("{:.2} mm", length.mm() * by));
        }
    }
}

fn straight() -> Bench {
    Bench::of(named("dock-straight-pressed"))
}

fn branch() -> Bench {
    Bench::of(named("branch-wires-kit-past-its-date"))
}

fn three_way() -> Bench {
    Bench::of(named("larkspur-three-way")).in_one_phase()
}

type Change = (&'static str, fn() -> Bench, fn(&mut Bench));

const HOLD: &str = r#"by = "Ines Calloway", date = 2026-03-02"#;

/// Changes that make an example worse.
const CHANGES: &[Change] = &[
    ("read hot", straight, |b| {
        set(
            table(&mut b.job, "place"),
            &[
                ("ambient_least", "\"5 degC\""),
                ("ambient_greatest", "\"30 degC\""),
            ],
        );
        rows(&mut b.job, "reading").for_each(|r| set(r, &[("temperature", "\"45 degC\"")]));
    }),
    ("read hot in three ways", three_way, |b| {
        rows(&mut b.job, "reading").for_each(|r| set(r, &[("temperature", "\"45 degC\"")]));
    }),
    ("a place colder than the readings", three_way, |b| {
        set(
            table(&mut b.job, "place"),
            &[("ambient_greatest", "\"8 degC\"")],
        );
    }),
    ("an insulation that cannot be", straight, |b| {
        rows(&mut b.job, "reading")
            .filter(|r| r["over"].as_str() == Some("insulation") && r["leg"].as_str() == Some("B"))
            .for_each(|r| {
                set(
                    r,
                    &[("values", r#"["61.0 mm", "61.1 mm", "61.0 mm", "61.1 mm"]"#)],
                )
            });
    }),
    ("thin cables", straight, |b| scale_values(&mut b.job, 0.7)),
    ("thin cables in three ways", three_way, |b| {
        scale_values(&mut b.job, 0.7)
    }),
    ("thick cables", straight, |b| scale_values(&mut b.job, 1.3)),
    ("thick cables in three ways", three_way, |b| {
        scale_values(&mut b.job, 1.3)
    }),
    ("wide errors", straight, |b| {
        rows(&mut b.job, "reading").for_each(|r| set(r, &[("error", "\"4 mm\"")]));
    }),
    ("screens read as insulation", three_way, |b| {
        rows(&mut b.job, "reading")
            .filter(|r| r["over"].as_str() == Some("insulation-screen"))
            .for_each(|r| set(r, &[("over", "\"insulation\"")]));
    }),
    ("out of round", straight, |b| {
        rows(&mut b.job, "reading")
            .filter(|r| r["over"].as_str() == Some("insulation"))
            .for_each(|r| {
                set(
                    r,
                    &[("values", r#"["26.4 mm", "29.0 mm", "27.5 mm", "28.0 mm"]"#)],
                )
            });
    }),
    ("brushes of the other metal", three_way, |b| {
        for leg in rows(&mut b.job, "leg") {
            let is_copper = leg["cable"]["metal"].as_str() == Some("copper");
            let brush = if is_copper { "aluminium" } else { "copper" };
            set(
                leg,
                &[(
                    "consumables",
                    &format!("[\"demo-brush-{brush}\", \"demo-grease\"]"),
                )],
            );
        }
        b.catalogues = Bench::of(named("larkspur-three-way")).catalogues;
    }),
    ("labels past their date", three_way, |b| {
        rows(&mut b.job, "lot").for_each(|lot| {
            lot.remove("no_expiry");
            set(lot, &[("expires", "2026-03-01")]);
        });
    }),
    ("lots older than their months", branch, |b| {
        rows(&mut b.job, "lot")
            .for_each(|lot| set(lot, &[("made", "2019-03-01"), ("expanded", "2019-04-01")]));
    }),
    ("lots that lay hot", three_way, |b| {
        rows(&mut b.job, "lot").for_each(|lot| set(lot, &[("store_greatest", "\"61 degC\"")]));
    }),
    ("lots that lay cold", straight, |b| {
        rows(&mut b.job, "lot").for_each(|lot| set(lot, &[("store_least", "\"-40 degC\"")]));
    }),
    ("stays that were hot", straight, |b| {
        rows(&mut b.job, "lot").for_each(|lot| {
            set(lot, &[("stay", r#"[{ until = 2025-12-24, greatest = "61 degC" }, { until = 2026-01-01, greatest = "40 degC" }]"#)]);
        });
    }),
    (
        "long clearing",
        || Bench::of(named("straight-corrugated-isolated-earthing")),
        |b| {
            set(table(&mut b.job, "system"), &[("clearing_time", "\"5 h\"")]);
            set(
                table(&mut b.job, "duty"),
                &[
                    ("shield_fault", "\"1 kA\""),
                    ("shield_fault_time", "\"0.5 s\""),
                    ("reclosing", "0"),
                    ("conductor_greatest", "\"90 degC\""),
                ],
            );
            for leg in rows(&mut b.job, "leg") {
                let shield = leg["cable"]["shield"].as_table_mut().expect("a shield");
                set(
                    shield,
                    &[("metal", "\"copper\""), ("fault_greatest", "\"200 degC\"")],
                );
            }
        },
    ),
    ("short circuits that melt", three_way, |b| {
        set(
            table(&mut b.job, "duty"),
            &[
                ("fault", "\"120 kA\""),
                ("shield_fault", "\"60 kA\""),
                ("reclosing", "3"),
            ],
        );
    }),
    ("loads that are too much", three_way, |b| {
        set(
            table(&mut b.job, "duty"),
            &[("load", "\"900 A\""), ("emergency", "\"1200 A\"")],
        );
        rows(&mut b.job, "leg").for_each(|leg| {
            if leg.contains_key("load") {
                set(leg, &[("load", "\"450 A\""), ("emergency", "\"600 A\"")]);
            }
        });
    }),
    ("a hot conductor", three_way, |b| {
        set(
            table(&mut b.job, "duty"),
            &[("conductor_greatest", "\"60 degC\"")],
        );
    }),
    ("a higher system", straight, |b| {
        set(
            table(&mut b.job, "system"),
            &[("nominal", "\"33 kV\""), ("highest", "\"36 kV\"")],
        );
    }),
    ("an isolated system", three_way, |b| {
        set(
            table(&mut b.job, "system"),
            &[("earthing", "\"isolated\""), ("clearing_time", "\"9 h\"")],
        );
    }),
    ("no room", straight, |b| {
        rows(&mut b.job, "leg").for_each(|leg| {
            set(
                leg,
                &[
                    ("straight", "\"5 in\""),
                    ("park_room", "\"5 in\""),
                    ("slack", "\"1 in\""),
                    ("spare_cuts", "3"),
                    ("bend_radius", "\"3 in\""),
                ],
            )
        });
    }),
    ("room within its error", straight, |b| {
        rows(&mut b.job, "leg").for_each(|leg| set(leg, &[("room_error", "\"30 in\"")]));
    }),
    ("wet strands and shields", three_way, |b| {
        rows(&mut b.job, "moisture").for_each(|row| set(row, &[("found", "\"wet\"")]));
        rows(&mut b.job, "surface").for_each(|row| set(row, &[("jacket", "\"scored\"")]));
        rows(&mut b.job, "leg").for_each(|leg| {
            set(leg, &[("far_end_in_water", "true")]);
            set(table(leg, "cable"), &[("blocked", "false")]);
        });
    }),
    ("shields that conduct badly", three_way, |b| {
        rows(&mut b.job, "continuity").for_each(|row| set(row, &[("resistance", "\"2000 mohm\"")]));
        rows(&mut b.job, "contact").for_each(|row| set(row, &[("resistance", "\"200 mohm\"")]));
        add(
            &mut b.job,
            "owner_limit",
            &format!("{{ check = \"shield_continuity\", greatest_ohm_per_km = 0.5, {HOLD} }}"),
        );
    }),
    ("straps that are missing", three_way, |b| {
        rows(&mut b.job, "count").for_each(|row| set(row, &[("shield_elements", "2")]));
    }),
    ("leads that melt", three_way, |b| {
        rows(&mut b.job, "leg").for_each(|leg| {
            if let Some(lead) = leg.get_mut("lead").and_then(Value::as_table_mut) {
                set(lead, &[("area", "\"2 mm2\"")]);
            }
        });
    }),
    ("growth that is much", three_way, |b| {
        rows(&mut b.job, "trial_press")
            .for_each(|row| set(row, &[("length_after", r#"["70 mm", "78 mm"]"#)]));
    }),
    ("papers of another cable", straight, |b| {
        rows(&mut b.job, "leg").for_each(|leg| {
            set(
                table(leg, "cable"),
                &[("class", "\"35 kV\""), ("level", "133")],
            )
        });
    }),
    ("rows with little", straight, |b| {
        for (_, catalogue) in &mut b.catalogues {
            for body in rows(catalogue, "body") {
                set(
                    body,
                    &[
                        ("conductor_fault_greatest", "\"100 degC\""),
                        ("conductor_greatest", "\"40 degC\""),
                        ("conductor_emergency_greatest", "\"41 degC\""),
                        ("connector_length_greatest", "\"1 in\""),
                        ("connector_diameter_greatest", "\"5 mm\""),
                        ("connector_diameter_least", "\"4 mm\""),
                        ("electrode_overlap_least", "\"10 in\""),
                        ("bondings", "[\"open\"]"),
                        ("bend_keep_off", "\"90 in\""),
                    ],
                );
            }
            for seal in rows(catalogue, "seal") {
                set(
                    seal,
                    &[
                        ("overlap_least", "\"40 in\""),
                        ("jacket_surfaces", "[\"smooth\"]"),
                        ("takes_lead", "false"),
                        ("parked_length", "\"90 in\""),
                    ],
                );
            }
            for part in rows(catalogue, "shield_part") {
                set(
                    part,
                    &[("fault", "\"0.1 kA\""), ("fault_time", "\"0.1 s\"")],
                );
            }
            for part in rows(catalogue, "connector") {
                set(
                    part,
                    &[
                        ("fault", "\"0.1 kA\""),
                        ("fault_time", "\"0.1 s\""),
                        ("bore", r#"{ least = "3 mm", greatest = "4 mm" }"#),
                    ],
                );
            }
        }
    }),
    ("rows of a separable joint with little", three_way, |b| {
        for (_, catalogue) in &mut b.catalogues {
            for body in rows(catalogue, "body") {
                set(
                    body,
                    &[
                        ("conductor_fault_greatest", "\"100 degC\""),
                        ("conductor_greatest", "\"40 degC\""),
                        ("conductor_emergency_greatest", "\"41 degC\""),
                        ("bondings", "[\"open\"]"),
                        ("fits_adapter", "false"),
                        ("interface", "\"other\""),
                        ("parts", "[]"),
                    ],
                );
            }
            for part in rows(catalogue, "shield_part") {
                set(
                    part,
                    &[
                        ("fault", "\"0.1 kA\""),
                        ("fault_time", "\"0.1 s\""),
                        ("contact_greatest", "\"0.001 mohm\""),
                        ("blocked", "false"),
                        ("passes_seal", "true"),
                    ],
                );
            }
            for part in rows(catalogue, "seal") {
                set(
                    part,
                    &[("takes_lead", "false"), ("jacket_surfaces", "[\"smooth\"]")],
                );
            }
        }
        rows(&mut b.job, "surface").for_each(|row| set(row, &[("jacket", "\"scored\"")]));
    }),
    ("limits of the owner that are exceeded", straight, |b| {
        for limit in [
            "check = \"insulation_ovality\", greatest = \"0.01 mm\"",
            "check = \"seal_overlap\", least = \"20 in\"",
            "check = \"electrode_cover\", least = \"20 in\"",
            "check = \"interface_pressure\", least_kpa = 5000.0",
            "check = \"screen_edge_pressure\", least_kpa = 5000.0",
            "check = \"rubber_stretch\", greatest_stretch = 1.01",
        ] {
            add(&mut b.job, "owner_limit", &format!("{{ {limit}, {HOLD} }}"));
        }
    }),
];

/// Every example made worse.
pub fn worse() -> impl Iterator<Item = Bench> {
    CHANGES.iter().map(|(name, of, change)| {
        let mut bench = of();
        change(&mut bench);
        bench.name = (*name).to_owned();
        bench
    })
}
