//! Candidate: every construction of the table with the possible diameters of its layers, computed once.
//!
//! Why its own file: a comparison runs over all of them for every end, so nothing may be looked up while it runs.
//!
//! Invariants: one candidate for each conductor and nominal wall (classes that share a wall share a candidate); only layers under the metallic shield, because the table does not say which shield a cable has.

use super::table::TABLE;
use super::{
    Conductor, Construction, Insulation, Layer, Metal, Shield, Size, Stranding, Unknown, Wall,
    Words,
};
use jointwright_units::{Interval, Length};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::LazyLock;

/// Layers of a candidate: those under the metallic shield.
pub(super) const INNER: [Layer; 4] = [
    Layer::Conductor,
    Layer::ConductorScreen,
    Layer::Insulation,
    Layer::InsulationScreen,
];

/// A construction of the table.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Candidate {
    /// Conductor.
    pub conductor: Conductor,
    /// Nominal wall.
    pub wall_nominal: Length,
    /// Every class and level, or U0/U, that has this wall.
    pub walls: Vec<Wall>,
    pub(super) steps: [BuildUp; 4],
    pub(super) nominals: [Length; 4],
}

/// Rule by which the diameter over a layer follows from the layer inside it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum BuildUp {
    /// It lies in this interval, whatever is inside.
    Over(Interval),
    /// It is greater by an amount in this interval: twice the thickness.
    Grows(Interval),
}

impl BuildUp {
    /// Interval of the diameter, from the interval of the diameter inside it.
    pub(super) fn from(self, inside: Option<Interval>) -> Option<Interval> {
        match self {
            BuildUp::Over(interval) => Some(interval),
            BuildUp::Grows(by) => inside.map(|inside| inside + by),
        }
    }
}

/// Build-up of `layer` of a construction.
pub(super) fn step(construction: &Construction, layer: Layer) -> Result<BuildUp, Unknown> {
    if layer == Layer::Conductor || construction.stated.contains_key(&layer) {
        return Ok(BuildUp::Over(construction.diameter_over(layer)?.interval()));
    }
    let thickness = construction.thickness_of(layer)?.interval();
    Ok(BuildUp::Grows(thickness + thickness))
}

impl Candidate {
    /// Diameters that this construction can have over `layer`, or `None` from the metallic shield outwards.
    pub fn diameters_over(&self, layer: Layer) -> Option<Interval> {
        let mut sofar = None;
        for (step, at) in self.steps.iter().zip(INNER) {
            sofar = step.from(sofar);
            if at == layer {
                return sofar;
            }
        }
        None
    }

    /// One phrase for a page, as `4/0 AWG aluminum compressed, 15 kV 133 %`.
    pub fn phrase(&self, words: Words) -> String {
        let walls: Vec<String> = self.walls.iter().map(|w| w.phrase()).collect();
        format!("{}, {}", self.conductor.phrase(words), walls.join(" or "))
    }
}

/// Every construction of the table.
pub fn candidates() -> &'static [Candidate] {
    static ALL: LazyLock<Vec<Candidate>> = LazyLock::new(enumerate);
    &ALL
}

fn enumerate() -> Vec<Candidate> {
    let icea = TABLE.wall.icea.iter().map(|r| Wall::Icea {
        class_kv: r.class_kv,
        level_percent: r.level_percent,
    });
    let iec = TABLE.wall.iec.iter().map(|r| Wall::Iec {
        u0_kv_tenths: r.u0_kv_tenths,
        u_kv: r.u_kv,
    });
    let icea: BTreeSet<Wall> = icea.collect();
    let iec: BTreeSet<Wall> = iec.collect();
    let mut all = Vec::new();
    for conductor in conductors() {
        let walls = if conductor.size.is_metric() {
            &iec
        } else {
            &icea
        };
        let mut by_nominal: BTreeMap<Length, Vec<Wall>> = BTreeMap::new();
        for wall in walls {
            // A wall that the standard does not make on this size has no row, so it is no candidate.
            if let Ok(nominal) = plain(conductor, *wall).wall_nominal() {
                by_nominal.entry(nominal).or_default().push(*wall);
            }
        }
        for (wall_nominal, walls) in by_nominal {
            let construction = plain(conductor, walls[0]);
            let steps = INNER.map(|layer| {
                step(&construction, layer).expect("a row of the table has all its layers")
            });
            let nominals = INNER.map(|layer| {
                let band = construction.diameter_over(layer);
                band.expect("a row of the table has all its layers").nominal
            });
            all.push(Candidate {
                conductor,
                wall_nominal,
                walls,
                steps,
                nominals,
            });
        }
    }
    all
}

fn conductors() -> BTreeSet<Conductor> {
    let rows = &TABLE.conductor;
    let sizes: Vec<(Size, Stranding)> = (rows.diameter.iter().map(|r| (r.size, r.stranding)))
        .chain(rows.bounds.iter().map(|r| (r.size, r.stranding)))
        .collect();
    let both = [Metal::Copper, Metal::Aluminium];
    sizes
        .into_iter()
        .flat_map(|(size, stranding)| {
            both.map(|metal| Conductor {
                size,
                metal,
                stranding,
            })
        })
        .collect()
}

/// A construction with the table's screens; material and shield do not change the layers under the shield.
pub(super) fn plain(conductor: Conductor, wall: Wall) -> Construction {
    Construction {
        conductor,
        wall,
        insulation: Insulation::Xlpe,
        shield: Shield::ConcentricWires {
            count: 16,
            diameter: Length::MIL * 64,
        },
        conductor_screen: None,
        insulation_screen: None,
        jacket: None,
        stated: BTreeMap::new(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_table_holds_each_conductor_and_wall_once() {
        let keys: BTreeSet<_> = candidates()
            .iter()
            .map(|c| (c.conductor, c.wall_nominal))
            .collect();
        assert_eq!(keys.len(), candidates().len());
        assert!(keys.len() > 1000, "{}", keys.len());
    }

    #[test]
    fn a_candidate_measures_what_its_construction_does() {
        for candidate in candidates() {
            let construction = plain(candidate.conductor, candidate.walls[0]);
            for layer in INNER {
                let band = construction
                    .diameter_over(layer)
                    .expect("every candidate has rows")
                    .interval();
                assert_eq!(
                    candidate.diameters_over(layer),
                    Some(band),
                    "{}",
                    candidate.phrase(Words::Us)
                );
            }
            assert_eq!(candidate.diameters_over(Layer::Jacket), None);
        }
    }

    #[test]
    fn classes_that_share_a_wall_are_named_together() {
        let conductor = Conductor {
            size: Size::Awg(-3),
            metal: Metal::Aluminium,
            stranding: Stranding::Compressed,
        };
        let found = candidates()
            .iter()
            .find(|c| c.conductor == conductor && c.wall_nominal == Length::MIL * 260);
        let said = found.map(|c| c.phrase(Words::Us));
        assert_eq!(
            said.as_deref(),
            Some("4/0 AWG aluminum compressed, 15 kV 173 % or 25 kV 100 %")
        );
    }
}
