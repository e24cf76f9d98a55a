//! Shield: the metallic shield, its contribution to the diameter, and its area of metal.
//!
//! Why its own file: it has five forms, each with its own area formula, and the rule for counting neutral wires.
//!
//! Invariant: areas are geometry in mm²; the current of a fault is not here.
//!
//! Source: icea_p45482, table of effective areas, memory; `docs/theory/cable.md`.

use super::table::TABLE;
use super::{Band, Conductor, Metal, Size, Sure, Unknown};
use jointwright_units::Length;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use std::f64::consts::{FRAC_PI_4, PI};

/// A metallic shield by its form.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Shield {
    /// Flat straps laid side by side.
    FlatStraps {
        /// Number of straps.
        count: u32,
        /// Width of one strap.
        width: Length,
        /// Thickness of one strap.
        thickness: Length,
    },
    /// Round wires side by side.
    ConcentricWires {
        /// Number of wires.
        count: u32,
        /// Diameter of one wire.
        diameter: Length,
    },
    /// Tape wound with overlap.
    LappedTape {
        /// Thickness of the tape.
        thickness: Length,
        /// Width of the tape, when known.
        width: Option<Length>,
        /// Share of the width that the next turn covers, %, 0 to less than 100.
        overlap_percent: f64,
    },
    /// Corrugated tape folded along the cable.
    CorrugatedTape {
        /// Thickness of the tape.
        thickness: Length,
        /// Width of the overlap at the seam.
        overlap: Length,
    },
    /// Tape wound with overlap, with wires over or under it, in contact with it all along and of the same metal.
    TapeWithWires {
        /// Thickness of the tape.
        thickness: Length,
        /// Width of the tape, when known.
        width: Option<Length>,
        /// Share of the width that the next turn covers, %, 0 to less than 100.
        overlap_percent: f64,
        /// Number of wires.
        count: u32,
        /// Diameter of one wire.
        diameter: Length,
    },
}

/// Form of a shield alone, as it looks.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
pub enum ShieldKind {
    /// Flat straps.
    FlatStraps,
    /// Concentric wires.
    ConcentricWires,
    /// Lapped tape.
    LappedTape,
    /// Longitudinally corrugated tape.
    CorrugatedTape,
    /// Lapped tape with wires over or under it.
    TapeWithWires,
}

impl ShieldKind {
    /// Every form.
    pub const ALL: [ShieldKind; 5] = [
        ShieldKind::FlatStraps,
        ShieldKind::ConcentricWires,
        ShieldKind::LappedTape,
        ShieldKind::CorrugatedTape,
        ShieldKind::TapeWithWires,
    ];

    /// Name on a page.
    pub fn name(self) -> &'static str {
        match self {
            ShieldKind::FlatStraps => "flat straps",
            ShieldKind::ConcentricWires => "concentric wires",
            ShieldKind::LappedTape => "lapped tape",
            ShieldKind::CorrugatedTape => "longitudinally corrugated tape",
            ShieldKind::TapeWithWires => "tape with wires",
        }
    }
}

/// Effective metal of a shield.
#[derive(Clone, Debug, PartialEq)]
pub struct ShieldArea {
    /// Area, mm².
    pub area_mm2: f64,
    /// Sureness of the area.
    pub sure: Sure,
    /// Source of the formula.
    pub source: String,
}

/// Gap that the formula for corrugated tape adds to the diameter over the screen: 50 mil.
const CORRUGATED_MEAN_MORE: Length = Length::from_nm(50 * 25_400);
/// Least number of wires beside a tape that hold the jacket off the tape between them: common practice, no source.
const N_WIRES_AROUND: u32 = 6;

impl Shield {
    /// Form of the shield.
    pub fn kind(&self) -> ShieldKind {
        match self {
            Shield::FlatStraps { .. } => ShieldKind::FlatStraps,
            Shield::ConcentricWires { .. } => ShieldKind::ConcentricWires,
            Shield::LappedTape { .. } => ShieldKind::LappedTape,
            Shield::CorrugatedTape { .. } => ShieldKind::CorrugatedTape,
            Shield::TapeWithWires { .. } => ShieldKind::TapeWithWires,
        }
    }

    /// Number of straps or wires, or `None` for a tape alone.
    pub fn elements(&self) -> Option<u32> {
        match *self {
            Shield::FlatStraps { count, .. }
            | Shield::ConcentricWires { count, .. }
            | Shield::TapeWithWires { count, .. } => Some(count),
            Shield::LappedTape { .. } | Shield::CorrugatedTape { .. } => None,
        }
    }

    /// Thickness of the shield at one side of the cable.
    ///
    /// Wires: d; straps: t; lapped tape: from one layer to the number that the overlap makes; corrugated tape: the depth of the corrugation, and one tape more at the seam.
    /// Tape with wires: both; with fewer than six wires the least is the tape alone, because the jacket sinks between them.
    ///
    /// # Errors
    /// An overlap is not from 0 to less than 95 %.
    pub(super) fn thickness(&self) -> Result<Band, Unknown> {
        match *self {
            Shield::FlatStraps { thickness, .. } => {
                Ok(Band::papers(thickness, thickness, thickness))
            }
            Shield::ConcentricWires { diameter, .. } => {
                Ok(Band::papers(diameter, diameter, diameter))
            }
            Shield::LappedTape {
                thickness,
                overlap_percent,
                ..
            } => tape_layers(thickness, overlap_percent),
            Shield::TapeWithWires {
                thickness,
                overlap_percent,
                count,
                diameter,
                ..
            } => {
                let tape = tape_layers(thickness, overlap_percent)?;
                let between = if count < N_WIRES_AROUND {
                    Length::ZERO
                } else {
                    diameter
                };
                Ok(Band::papers(
                    tape.least + between,
                    tape.nominal + diameter,
                    tape.greatest + diameter,
                ))
            }
            Shield::CorrugatedTape { thickness, .. } => {
                let depth = &TABLE.layer.corrugation;
                Ok(Band::row(
                    depth.least(),
                    depth.nominal(),
                    depth.greatest() + thickness,
                    depth.sure,
                    &depth.source,
                ))
            }
        }
    }

    /// Effective area of the shield that lies on a screen of diameter `over_screen`.
    ///
    /// Wires: n·π/4·d²; straps: n·w·b; corrugated: [π·(dis + 50 mil) + B]·b; helical tape: π·b·dm·√(100/(2·(100 − L))).
    /// Tape with wires: the helical tape and the wires, side by side.
    ///
    /// `n` elements; `d` wire diameter, `w` width, `b` thickness, `B` overlap at the seam, `dis` diameter over the insulation screen, `dm` mean diameter dis + 2b, mm; `L` overlap, %.
    ///
    /// # Errors
    /// An overlap is not from 0 to less than 95 %.
    ///
    /// # Source
    /// icea_p45482, table of effective areas, memory; there in circular mils.
    /// Tape and wires conduct in parallel: common practice, no source.
    pub fn area_on_mm2(&self, over_screen: Length) -> Result<f64, Unknown> {
        Ok(match *self {
            Shield::FlatStraps {
                count,
                width,
                thickness,
            } => f64::from(count) * width.mm() * thickness.mm(),
            Shield::ConcentricWires { count, diameter } => {
                f64::from(count) * FRAC_PI_4 * diameter.mm() * diameter.mm()
            }
            Shield::LappedTape {
                thickness,
                overlap_percent,
                ..
            } => tape_area_mm2(thickness, overlap_percent, over_screen)?,
            Shield::TapeWithWires {
                thickness,
                overlap_percent,
                count,
                diameter,
                ..
            } => {
                tape_area_mm2(thickness, overlap_percent, over_screen)?
                    + f64::from(count) * FRAC_PI_4 * diameter.mm() * diameter.mm()
            }
            Shield::CorrugatedTape { thickness, overlap } => {
                (PI * (over_screen + CORRUGATED_MEAN_MORE).mm() + overlap.mm()) * thickness.mm()
            }
        })
    }

    /// Whether the area depends on the diameter over the insulation screen.
    pub(super) fn area_needs_diameter(&self) -> bool {
        !matches!(
            self,
            Shield::FlatStraps { .. } | Shield::ConcentricWires { .. }
        )
    }
}

/// Thickness of a lapped tape over one place: from one layer to the number that the overlap makes.
fn tape_layers(thickness: Length, overlap_percent: f64) -> Result<Band, Unknown> {
    let turns = turns_over_a_point(overlap_percent)?;
    let most = turns.ceil().max(1.0) as i64;
    let nominal = Length::from_nm((thickness.nm() as f64 * turns).round() as i64);
    Ok(Band::papers(
        thickness,
        nominal.min(thickness * most),
        thickness * most,
    ))
}

/// Effective area of a helical tape, by the formula of [`Shield::area_on_mm2`].
fn tape_area_mm2(
    thickness: Length,
    overlap_percent: f64,
    over_screen: Length,
) -> Result<f64, Unknown> {
    turns_over_a_point(overlap_percent)?;
    let mean = (over_screen + thickness * 2).mm();
    Ok(PI * thickness.mm() * mean * (100.0 / (2.0 * (100.0 - overlap_percent))).sqrt())
}

/// Mean number of layers of a lapped tape over a point, 1/(1 − L/100).
fn turns_over_a_point(overlap_percent: f64) -> Result<f64, Unknown> {
    if (0.0..95.0).contains(&overlap_percent) {
        Ok(100.0 / (100.0 - overlap_percent))
    } else {
        Err(Unknown::Overlap { overlap_percent })
    }
}

/// Fraction of the phase conductor's conductance that the concentric neutral has.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NeutralFraction {
    /// The same conductance.
    Full,
    /// One third of it.
    Third,
}

/// Number of copper wires of gauge `wire_awg` that make the concentric neutral of `conductor`.
///
/// N = ⌈g · A · f / a⌉, at least 6 · `g` conductance of the metal relative to copper, `A` conductor kcmil, `f` fraction, `a` wire kcmil.
///
/// # Source
/// Rule recalled for icea_s94649, memory; it reproduces the counts in `tests/published/concentric_neutral`; the floor of 6 is memory only.
pub fn neutral_wires(conductor: Conductor, fraction: NeutralFraction, wire_awg: i8) -> u32 {
    let conductance_ratio = match conductor.metal {
        Metal::Copper => 1.0,
        Metal::Aluminium => 0.61,
    };
    let part = match fraction {
        NeutralFraction::Full => 1.0,
        NeutralFraction::Third => 1.0 / 3.0,
    };
    let exact = conductance_ratio * conductor.size.kcmil() * part / Size::Awg(wire_awg).kcmil();
    (exact.ceil() as u32).max(6)
}

#[cfg(test)]
mod tests {
    use super::*;

    const MIL: Length = Length::MIL;

    #[track_caller]
    fn check(shield: Shield, least_mil: i64, greatest_mil: i64) {
        let band = shield.thickness().expect("the overlap is in range");
        assert_eq!(
            (band.least, band.greatest),
            (MIL * least_mil, MIL * greatest_mil)
        );
        assert!(band.least <= band.nominal && band.nominal <= band.greatest);
    }

    fn tape(overlap_percent: f64) -> Shield {
        Shield::LappedTape {
            thickness: MIL * 5,
            width: None,
            overlap_percent,
        }
    }

    #[test]
    fn a_shield_adds_what_lies_on_the_screen() {
        check(
            Shield::ConcentricWires {
                count: 16,
                diameter: MIL * 64,
            },
            64,
            64,
        );
        check(
            Shield::FlatStraps {
                count: 7,
                width: MIL * 175,
                thickness: MIL * 25,
            },
            25,
            25,
        );
        check(
            Shield::CorrugatedTape {
                thickness: MIL * 8,
                overlap: MIL * 375,
            },
            20,
            58,
        );
    }

    #[test]
    fn a_lapped_tape_is_one_layer_to_two() {
        check(tape(25.0), 5, 10);
        check(tape(50.0), 5, 10);
        check(tape(0.0), 5, 5);
        check(tape(60.0), 5, 15);
    }

    fn with_wires(count: u32) -> Shield {
        Shield::TapeWithWires {
            thickness: MIL * 5,
            width: Some(MIL * 1000),
            overlap_percent: 25.0,
            count,
            diameter: MIL * 40,
        }
    }

    #[test]
    fn a_tape_with_wires_is_as_thick_as_both_and_between_few_wires_as_the_tape() {
        check(with_wires(12), 45, 50);
        check(with_wires(6), 45, 50);
        check(with_wires(5), 5, 50);
    }

    #[test]
    fn the_metal_of_a_tape_with_wires_is_that_of_both() {
        let on = |shield: Shield| shield.area_on_mm2(MIL * 950).expect("an area");
        let wires = Shield::ConcentricWires {
            count: 12,
            diameter: MIL * 40,
        };
        let both = on(with_wires(12));
        assert!((both - on(tape(25.0)) - on(wires)).abs() < 1e-9);
        assert!(with_wires(12).area_needs_diameter() && !wires.area_needs_diameter());
    }

    #[test]
    fn an_overlap_out_of_range_is_unknown_not_infinite() {
        for overlap in [-1.0, 95.0, 100.0, f64::NAN, f64::INFINITY] {
            assert!(
                tape(overlap).thickness().is_err() && tape(overlap).area_on_mm2(MIL * 950).is_err(),
                "{overlap}"
            );
        }
    }

    #[test]
    fn a_third_neutral_has_at_least_six_wires() {
        let conductor = Conductor {
            size: Size::Awg(2),
            metal: Metal::Aluminium,
            stranding: super::super::Stranding::Compressed,
        };
        assert_eq!(neutral_wires(conductor, NeutralFraction::Third, 14), 6);
        assert_eq!(neutral_wires(conductor, NeutralFraction::Full, 14), 10);
    }
}
