//! Outside: thermal resistances of soil, ducts and still air around a cable, part by part, each with its source.
//!
//! Source: `docs/theory/rating.md`, which states for each constant how it was read.

use crate::job::{AirForm, Duct, DuctFilling, Formation, Soil};
use crate::said::{Said, SoilCannot, SoilPart, SoilSaid, SoilSource, SoilWhat};
use jointwright_numerics::rating::soil::{group_k_m_per_w, line, mutual_k_m_per_w};
use jointwright_numerics::rating::thermal::{
    Filling, Hanging, TOUCHING_TREFOIL_RATIO, bank_k_m_per_w, group_diameter_m, layer_k_m_per_w,
    touching_trefoil_k_m_per_w,
};
use jointwright_numerics::rating::{RatingError, step};

/// Key of the fillings of ducts.
const DUCT_FILLING: &str = "duct-filling";
/// Key of concrete banks.
const DUCT_BANK: &str = "duct-bank-concrete";
/// Key of the values for soil that dries.
pub(super) const SOIL_DRIES: &str = "soil-that-dries";
/// Key of films in free air.
pub(super) const FREE_AIR: &str = "free-air-film";

/// One part of a thermal resistance.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Part {
    pub what: SoilWhat,
    pub k_m_per_w: f64,
    pub source: SoilSource,
    /// Whether all of it counts as concrete.
    pub is_concrete: bool,
    /// Whether all of it counts as dried out.
    pub is_dry: bool,
    /// Whether it belongs to the soil itself, and grows as the soil dries.
    pub is_soil: bool,
    /// Key under which the owner may confirm it, if it is from memory.
    pub memory: Option<&'static str>,
}

impl Part {
    /// Part of the soil itself; none of it is from memory.
    const fn of_soil(what: SoilWhat, k_m_per_w: f64, source: SoilSource) -> Part {
        Part {
            what,
            k_m_per_w,
            source,
            is_concrete: false,
            is_dry: false,
            is_soil: true,
            memory: None,
        }
    }

    /// Part that lies in the soil; none of it is from memory.
    const fn in_soil(what: SoilWhat, k_m_per_w: f64, source: SoilSource) -> Part {
        Part {
            is_soil: false,
            ..Part::of_soil(what, k_m_per_w, source)
        }
    }

    /// Message about the part.
    const fn said(&self) -> SoilPart {
        SoilPart {
            what: self.what,
            k_m_per_w: self.k_m_per_w,
            source: self.source,
            is_concrete: self.is_concrete,
            is_dry: self.is_dry,
        }
    }
}

/// Converts a count for a message.
fn count(n: usize) -> u32 {
    u32::try_from(n).unwrap_or(u32::MAX)
}

/// Surface of a cable, for its surroundings.
#[derive(Clone, Copy, Debug)]
pub(super) struct Surface {
    /// Inner and outer diameter of the jacket, m.
    pub jacket_m: (f64, f64),
    /// Thermal resistivity of the jacket, K·m/W.
    pub jacket_k_m_per_w: f64,
}

/// Thermal resistance outside a cable in soil, or in a duct in soil, part by part, K·m/W for the heat of one cable; soil that dries counts as all dry.
///
/// # Errors
/// The reason why it cannot be computed.
pub(super) fn in_soil(
    soil: &Soil,
    duct: Option<&Duct>,
    surface: &Surface,
    soil_degc: f64,
) -> Result<Vec<Part>, Said> {
    let Some(drying) = soil.drying else {
        return in_moist_soil(soil, duct, surface, soil_degc);
    };
    let dry = Soil {
        resistivity_k_m_per_w: drying.dry_k_m_per_w,
        drying: None,
        ..*soil
    };
    let mut parts = in_moist_soil(&dry, duct, surface, soil_degc)?;
    for part in parts.iter_mut().filter(|part| part.is_soil) {
        part.is_dry = true;
        // A part with its own key keeps it; the soil itself has none.
        part.memory = part.memory.or(Some(SOIL_DRIES));
    }
    Ok(parts)
}

/// Thermal resistance as [`in_soil`] gives it, for soil that does not dry.
///
/// # Errors
/// As [`in_soil`].
pub(super) fn in_moist_soil(
    soil: &Soil,
    duct: Option<&Duct>,
    surface: &Surface,
    soil_degc: f64,
) -> Result<Vec<Part>, Said> {
    match duct {
        Some(duct) => in_duct(soil, duct, surface, soil_degc),
        None => buried(soil, surface),
    }
}

fn buried(soil: &Soil, surface: &Surface) -> Result<Vec<Part>, Said> {
    let outside_m = surface.jacket_m.1;
    let rho = soil.resistivity_k_m_per_w;
    if soil.formation != Some(Formation::Trefoil) || soil.spacing_m.is_some() {
        return Ok(vec![group(soil, rho, outside_m)?]);
    }
    // Each cable gives off its heat through a part of its circumference only, so its jacket counts for more.
    let jacket = layer_k_m_per_w(
        surface.jacket_k_m_per_w,
        surface.jacket_m.0,
        surface.jacket_m.1,
    );
    lie_apart_and_covered(&axes(soil, outside_m), outside_m)?;
    let own = touching_trefoil_k_m_per_w(rho, soil.depth_m, outside_m);
    let own = own.map_err(|why| Said::from(&why))?;
    let more = (TOUCHING_TREFOIL_RATIO - 1.0) * jacket;
    let mut parts = vec![
        Part::of_soil(SoilWhat::AboutTrefoil, own, SoilSource::Trefoil),
        Part::in_soil(SoilWhat::JacketOfTrefoil, more, SoilSource::Trefoil),
    ];
    if soil.n_circuits > 1 {
        let n_circuits = count(soil.n_circuits - 1);
        parts.push(Part::of_soil(
            SoilWhat::CircuitsBeside { n_circuits },
            trefoils_beside(soil)?,
            SoilSource::Images,
        ));
    }
    Ok(parts)
}

/// Thermal resistance that other touching trefoils add to the middle one; each counts as three lines at its centre.
fn trefoils_beside(soil: &Soil) -> Result<f64, Said> {
    let apart = soil.circuits_apart_m.unwrap_or(0.0);
    let middle = soil.n_circuits / 2;
    let here = [0.0, soil.depth_m];
    (0..soil.n_circuits)
        .filter(|circuit| *circuit != middle)
        .map(|circuit| {
            let across = (circuit as f64 - middle as f64) * apart;
            let line = line(here, [across, soil.depth_m]).map_err(|why| Said::from(&why))?;
            let rho = soil.resistivity_k_m_per_w;
            Ok(3.0 * mutual_k_m_per_w(rho, line.image_m, line.axis_m))
        })
        .sum()
}

/// Axes of all cables or ducts in soil, m across and down; without a stated spacing, cables of this diameter touch.
fn axes(soil: &Soil, outside_m: f64) -> Vec<[f64; 2]> {
    let spacing = soil.spacing_m.unwrap_or(outside_m);
    let one: Vec<[f64; 2]> = match soil.formation {
        None => vec![[0.0, soil.depth_m]],
        Some(Formation::Flat) => [-1.0, 0.0, 1.0]
            .map(|place| [place * spacing, soil.depth_m])
            .to_vec(),
        Some(Formation::Trefoil) => {
            let height = spacing * 0.75_f64.sqrt();
            vec![
                [0.0, soil.depth_m - 2.0 / 3.0 * height],
                [-0.5 * spacing, soil.depth_m + height / 3.0],
                [0.5 * spacing, soil.depth_m + height / 3.0],
            ]
        }
    };
    let apart = soil.circuits_apart_m.unwrap_or(0.0);
    (0..soil.n_circuits)
        .flat_map(|circuit| {
            let across = circuit as f64 * apart;
            one.iter().map(move |axis| [axis[0] + across, axis[1]])
        })
        .collect()
}

/// Distances from the worst-placed cable in soil to all others and to their images.
///
/// # Errors
/// The reason why they cannot lie like this.
pub(super) fn others(soil: &Soil, outside_m: f64) -> Result<Vec<step::Line>, RatingError> {
    let axes = axes(soil, outside_m);
    let about = |here: usize| -> Result<(f64, Vec<step::Line>), RatingError> {
        let beside = (0..axes.len()).filter(|there| *there != here);
        let lines: Result<Vec<step::Line>, RatingError> = beside
            .map(|there| {
                let line = line(axes[here], axes[there])?;
                Ok(step::Line {
                    axis_m: line.axis_m,
                    image_m: line.image_m,
                })
            })
            .collect();
        let lines = lines?;
        let own = (4.0 * axes[here][1] / outside_m).ln();
        let more = lines.iter().map(|line| (line.image_m / line.axis_m).ln());
        Ok((own + more.sum::<f64>(), lines))
    };
    let mut worst = (0.0, Vec::new());
    for here in 0..axes.len() {
        let next = about(here)?;
        if next.0 > worst.0 {
            worst = next;
        }
    }
    Ok(worst.1)
}

/// Soil around the worst-placed of all cables or ducts of this diameter, all with equal losses.
///
/// Line sources are warmer than touching cables in one plane, whose metal spreads the heat around: `docs/theory/warm.md`.
fn group(soil: &Soil, rho: f64, outside_m: f64) -> Result<Part, Said> {
    let axes = axes(soil, outside_m);
    lie_apart_and_covered(&axes, outside_m)?;
    let n_lines = count(axes.len());
    let each = group_k_m_per_w(rho, &axes, outside_m).map_err(|why| {
        Said::from(SoilCannot::LieSo {
            n_lines,
            outside_mm: outside_m * 1e3,
            depth_mm: soil.depth_m * 1e3,
            why: Said::from(&why),
        })
    })?;
    let is_touching = soil.formation == Some(Formation::Flat) && soil.spacing_m.is_none();
    let what = match n_lines {
        1 => SoilWhat::AboutOne,
        _ if is_touching => SoilWhat::AboutTouching { n_lines },
        _ => SoilWhat::AboutApart { n_lines },
    };
    let k_m_per_w = each.into_iter().fold(0.0, f64::max);
    Ok(Part::of_soil(what, k_m_per_w, SoilSource::Images))
}

/// Checks that soil covers every cable or duct, and that none lies inside another.
///
/// # Errors
/// The contradiction in the stated places.
fn lie_apart_and_covered(axes: &[[f64; 2]], outside_m: f64) -> Result<(), Said> {
    if axes.iter().any(|axis| axis[1] <= 0.5 * outside_m) {
        return Err(SoilCannot::StickOut {
            n_lines: count(axes.len()),
            outside_mm: outside_m * 1e3,
        }
        .into());
    }
    let lie_in_another = |(at, one): (usize, &[f64; 2])| {
        axes[..at].iter().any(|other| {
            let apart_m = (one[0] - other[0]).hypot(one[1] - other[1]);
            apart_m < outside_m * (1.0 - 1e-9)
        })
    };
    if axes.iter().enumerate().any(lie_in_another) {
        return Err(SoilCannot::LieInOneAnother {
            n_lines: count(axes.len()),
            outside_mm: outside_m * 1e3,
        }
        .into());
    }
    Ok(())
}

fn in_duct(soil: &Soil, duct: &Duct, surface: &Surface, soil_degc: f64) -> Result<Vec<Part>, Said> {
    let n = duct.n_cables as f64;
    let over = group_diameter_m(duct.n_cables, surface.jacket_m.1)
        .ok_or(SoilCannot::MoreThanFourInDuct)?;
    if over > duct.inside_m {
        return Err(SoilCannot::DuctTooNarrow {
            n_cables: count(duct.n_cables),
            cable_mm: surface.jacket_m.1 * 1e3,
            duct_mm: duct.inside_m * 1e3,
        }
        .into());
    }
    let filling = match duct.holds {
        DuctFilling::AirInPlastic => Filling::AIR_IN_PLASTIC,
        DuctFilling::AirInMetal => Filling::AIR_IN_METAL,
        DuctFilling::AirInFibreInConcrete => Filling::AIR_IN_FIBRE_IN_CONCRETE,
        DuctFilling::AirInEarthenware => Filling::AIR_IN_EARTHENWARE,
        DuctFilling::Water => Filling::WATER,
    };
    let rho = duct.bank.map_or(soil.resistivity_k_m_per_w, |bank| {
        bank.resistivity_k_m_per_w
    });
    let mut about = group(soil, rho, duct.outside_m)?;
    about.k_m_per_w *= n;
    about.is_concrete = duct.bank.is_some();
    let filled = n * filling.resistance_k_m_per_w(over, soil_degc);
    let wall = n * layer_k_m_per_w(duct.wall_k_m_per_w, duct.inside_m, duct.outside_m);
    let what = SoilWhat::FillingOfDuct { at_degc: soil_degc };
    let mut parts = vec![
        Part {
            memory: Some(DUCT_FILLING),
            ..Part::in_soil(what, filled, SoilSource::Memory)
        },
        Part::in_soil(SoilWhat::WallOfDuct, wall, SoilSource::ClosedForm),
        about,
    ];
    if let Some(bank) = duct.bank {
        let ducts = if soil.formation.is_some() { 3.0 } else { 1.0 };
        let resistivities = (soil.resistivity_k_m_per_w, bank.resistivity_k_m_per_w);
        let more = bank_k_m_per_w(resistivities, soil.depth_m, bank.sides_m);
        let more = more.map_err(|why| Said::from(&why))?;
        let k_m_per_w = n * ducts * soil.n_circuits as f64 * more;
        parts.push(Part {
            memory: Some(DUCT_BANK),
            ..Part::of_soil(SoilWhat::BeyondBank, k_m_per_w, SoilSource::Memory)
        });
    }
    Ok(parts)
}

/// Arrangement of cables in air, for their film.
pub(super) fn hanging(form: AirForm) -> Hanging {
    match form {
        AirForm::Alone => Hanging::ALONE,
        AirForm::Trefoil => Hanging::TREFOIL,
        AirForm::FlatTouching => Hanging::FLAT_TOUCHING,
    }
}

/// Message about all parts and their sum.
pub(super) fn said(parts: &[Part]) -> SoilSaid {
    SoilSaid::Outside {
        total_k_m_per_w: parts.iter().map(|part| part.k_m_per_w).sum(),
        parts: parts.iter().map(Part::said).collect(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const SURFACE: Surface = Surface {
        jacket_m: (68.5e-3, 75.5e-3),
        jacket_k_m_per_w: 3.5,
    };
    const SOIL: Soil = Soil {
        depth_m: 1.0,
        resistivity_k_m_per_w: 1.0,
        diffusivity_m2_per_s: None,
        drying: None,
        formation: Some(Formation::Trefoil),
        spacing_m: None,
        n_circuits: 1,
        circuits_apart_m: None,
    };

    fn total(soil: &Soil, duct: Option<&Duct>) -> f64 {
        let parts = in_soil(soil, duct, &SURFACE, 20.0).expect("parts");
        parts.iter().map(|part| part.k_m_per_w).sum()
    }

    /// TB 880, introductory case 0-1: T4 is 1.594693 and T3 is 0.0867194; the jacket by itself is 1/1.6 of T3.
    #[test]
    fn a_touching_trefoil_in_soil_is_the_published_one() {
        let expected = 1.594_692_9 + 0.086_719_375 * 0.6 / 1.6;
        assert!((total(&SOIL, None) - expected).abs() < 1e-6);
        // The twin: another depth gives another number.
        let deeper = Soil {
            depth_m: 1.01,
            ..SOIL
        };
        assert!((total(&deeper, None) - expected).abs() > 1e-3);
    }

    /// 2L/De is 26.49: ln 2u for the cable itself, and ln(1 + u²) for two neighbours at distance De.
    #[test]
    fn three_that_touch_in_one_plane_are_three_lines_a_diameter_apart() {
        let touching = Soil {
            formation: Some(Formation::Flat),
            ..SOIL
        };
        let u: f64 = 2.0 / 75.5e-3;
        let expected = (u.acosh() + u.mul_add(u, 1.0).ln()) / std::f64::consts::TAU;
        assert!((total(&touching, None) - expected).abs() < 1e-12);
        // The twin: with a gap of a tenth of a diameter they are cooler.
        let apart = Soil {
            spacing_m: Some(1.1 * 75.5e-3),
            ..touching
        };
        assert!(total(&apart, None) < expected - 1e-2);
    }

    /// A widely spaced trefoil is nearly three cables at one depth; the method of images holds for every formation.
    #[test]
    fn neighbours_and_circuits_add_what_their_images_add() {
        let alone = Soil {
            formation: None,
            ..SOIL
        };
        let one = total(&alone, None);
        let flat = Soil {
            formation: Some(Formation::Flat),
            spacing_m: Some(0.2),
            ..SOIL
        };
        let beside = 101_f64.ln() / std::f64::consts::TAU;
        assert!((total(&flat, None) - one - beside).abs() < 1e-12);
        let two = Soil {
            n_circuits: 2,
            circuits_apart_m: Some(0.5),
            ..alone
        };
        let other = 0.5 * 17_f64.ln() / std::f64::consts::TAU;
        assert!((total(&two, None) - one - other).abs() < 1e-12);
        let trefoils = Soil {
            n_circuits: 2,
            circuits_apart_m: Some(0.5),
            ..SOIL
        };
        assert!((total(&trefoils, None) - total(&SOIL, None) - 3.0 * other).abs() < 1e-12);
    }

    #[test]
    fn a_duct_is_its_filling_its_wall_and_the_soil_each_for_all_its_cables() {
        let duct = Duct {
            inside_m: 0.2,
            outside_m: 0.22,
            wall_k_m_per_w: 6.0,
            holds: DuctFilling::AirInPlastic,
            n_cables: 2,
            bank: None,
        };
        let soil = Soil {
            formation: None,
            ..SOIL
        };
        let parts = in_soil(&soil, Some(&duct), &SURFACE, 20.0).expect("parts");
        let filling = 1.87 / (1.0 + 0.1 * (0.312 + 0.0037 * 20.0) * 1.65 * 75.5);
        let wall = 6.0 / std::f64::consts::TAU * 1.1_f64.ln();
        let about = (2.0_f64 / 0.22).acosh() / std::f64::consts::TAU;
        for (part, expected) in parts.iter().zip([filling, wall, about]) {
            assert!((part.k_m_per_w - 2.0 * expected).abs() < 1e-12, "{part:?}");
        }
        assert_eq!(parts[0].memory, Some(DUCT_FILLING));
        assert!(parts[1..].iter().all(|part| part.memory.is_none()));
        // Concrete with the resistivity of the soil changes nothing; better concrete helps.
        let bank = |rho| Duct {
            bank: Some(crate::job::Bank {
                sides_m: (0.5, 0.5),
                resistivity_k_m_per_w: rho,
            }),
            ..duct
        };
        let bare = total(&soil, Some(&duct));
        assert!((total(&soil, Some(&bank(1.0))) - bare).abs() < 1e-12);
        assert!(total(&soil, Some(&bank(0.6))) < bare - 0.1);
        assert!(
            in_soil(
                &soil,
                Some(&Duct {
                    inside_m: 0.1,
                    ..duct
                }),
                &SURFACE,
                20.0
            )
            .is_err()
        );
    }
}
