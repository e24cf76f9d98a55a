//! Elements: one arm as a section for finite elements, and a mesh that follows its steps.
//!
//! ```text
//!   iz+1  +-----+-------+        places ir along r, iz along z, counted in cells of the mesh;
//!         |   / |     / |        a region is a ring of a slice, a curve one side of it between two steps;
//!         | /   |  /    |        nodes stand at twice these numbers, so that middles of edges have odd ones
//!   iz    +-----+-------+
//!        ir    ir+1
//! ```
//!
//! Each ring of each slice is a region, so the solution needs nothing from the network.

use super::grid::Grid;
use super::shape::{Arm, LadderError};
use crate::heat::{Film, HeatSection, Joule, When};
use crate::mesh::{Mesh, Rim};
use crate::outline::{Curve, Outline, Point, Region, Shape, Side};
use std::collections::BTreeMap;

/// A straight step of the grid: whether it runs along z, and the cell number of its lower end along r and z.
type Way = (bool, usize, usize);

/// One arm as a section with its mesh; its plane z = 0 and its far end are adiabatic.
///
/// `fineness` = 1 is usual; [`crate::heat::solve_on`] refines the mesh further.
///
/// # Errors
/// [`LadderError::Shape`].
///
/// ```
/// use jointwright_numerics::heat::{Ask, HeatOptions, Stuff, What, When, solve_on};
/// use jointwright_numerics::ladder::{Arm, Loss, Ring, Slice, elements};
/// use jointwright_numerics::outline::Point;
/// let loss = Loss { at20_ohm_per_m: 1e-3, alpha_per_k: 0.0, constant_w_per_m: 0.0 };
/// let stuff = Stuff { conductivity_w_per_mk: 385.0, capacity_j_per_m3k: 3.45e6 };
/// let core = Ring { outside_m: 0.01, stuff, loss: Some(loss), is_watched: false };
/// let slice = Slice { length_m: 1.0, rings: vec![core], film_w_per_m2k: 10.0, ambient_degc: 20.0 };
/// let arm = Arm { slices: vec![slice] };
/// let (section, mesh) = elements(&arm, 100.0, When::Steady, 1).unwrap();
/// let ask = Ask { what: What::TemperatureAt(Point::new(0.01, 0.5)), time_s: 0.0 };
/// let found = solve_on(&section, mesh, &[ask], &HeatOptions::default()).unwrap();
/// let film = 1.0 / (10.0 * std::f64::consts::TAU * 0.01);
/// assert!((found.answers[0].value - (20.0 + 10.0 * film)).abs() < 1e-6);
/// ```
pub fn elements(
    arm: &Arm,
    current_a: f64,
    when: When,
    fineness: usize,
) -> Result<(HeatSection, Mesh), LadderError> {
    arm.check()?;
    let mut plan = Plan::new(arm, Grid::new(arm, fineness));
    let (mut stuffs, mut joules) = (Vec::new(), Vec::new());
    for (index, slice) in arm.slices.iter().enumerate() {
        let mut inside = 0;
        for ring in &slice.rings {
            let outside = plan.step(ring.outside_m);
            let region = plan.add_region(index, inside, outside);
            stuffs.push(ring.stuff);
            inside = outside;
            let Some(loss) = ring.loss else { continue };
            let joule = |current_a, resistance20_ohm_per_m, alpha_per_k| Joule {
                regions: vec![region],
                current_a,
                resistance20_ohm_per_m,
                alpha_per_k,
            };
            joules.push(joule(current_a, loss.at20_ohm_per_m, loss.alpha_per_k));
            joules.push(joule(1.0, loss.constant_w_per_m, 0.0));
        }
    }
    joules.retain(|joule| joule.resistance20_ohm_per_m > 0.0);
    let films = arm.slices.iter().enumerate().map(|(index, slice)| Film {
        tag: film(index),
        coefficient_w_per_m2k: slice.film_w_per_m2k,
        ambient_degc: slice.ambient_degc,
    });
    let mesh = plan.mesh();
    let section = HeatSection {
        outline: plan.outline,
        stuffs,
        joules,
        films: films.collect(),
        when,
    };
    Ok((section, mesh))
}

fn film(slice_index: usize) -> String {
    format!("film {slice_index}")
}

/// An outline under construction on the grid of an arm.
struct Plan<'a> {
    arm: &'a Arm,
    grid: Grid,
    /// Cell numbers of the steps: along r, and along z at the ends of slices.
    radii: Vec<usize>,
    places: Vec<usize>,
    outline: Outline,
    points: BTreeMap<(usize, usize), usize>,
    curves: BTreeMap<Way, usize>,
    /// Region of each ring, by slice and by the cell number of its inside.
    regions: Vec<(usize, usize, usize)>,
}

impl<'a> Plan<'a> {
    fn new(arm: &'a Arm, grid: Grid) -> Plan<'a> {
        let mut places = vec![0];
        for along in 1..grid.n_along() {
            if grid.slice_of[along] != grid.slice_of[along - 1] {
                places.push(along);
            }
        }
        places.push(grid.n_along());
        let mut plan = Plan {
            arm,
            radii: vec![0],
            places,
            grid,
            outline: Outline::default(),
            points: BTreeMap::new(),
            curves: BTreeMap::new(),
            regions: Vec::new(),
        };
        let rings = arm.slices.iter().flat_map(|slice| &slice.rings);
        let mut radii: Vec<usize> = rings.map(|ring| plan.step(ring.outside_m)).collect();
        plan.radii.append(&mut radii);
        plan.radii.sort_unstable();
        plan.radii.dedup();
        plan
    }

    /// Cell number of a radius in the grid.
    fn step(&self, radius_m: f64) -> usize {
        let nearest = self.grid.radii_m.iter().enumerate();
        let distance = |radius: &f64| (radius - radius_m).abs();
        nearest
            .min_by(|a, b| distance(a.1).total_cmp(&distance(b.1)))
            .map_or(0, |(index, _)| index)
    }

    fn outside(&self, slice_index: usize) -> usize {
        self.step(self.arm.slices[slice_index].outside_m())
    }

    fn point(&mut self, r: usize, z: usize) -> usize {
        if let Some(index) = self.points.get(&(r, z)) {
            return *index;
        }
        let index = self.outline.points.len();
        let at = Point::new(self.grid.radii_m[r], self.grid.places_m[z]);
        self.outline.points.push(at);
        self.points.insert((r, z), index);
        index
    }

    /// The curve from one corner of the grid to the next step along z or r.
    fn side(&mut self, way: Way, to: (usize, usize), tag: impl FnOnce() -> String) -> Side {
        let known = self.curves.get(&way).copied();
        let curve_index = known.unwrap_or_else(|| {
            let curve = Curve {
                from: self.point(way.1, way.2),
                to: self.point(to.0, to.1),
                shape: Shape::Line,
                tag: tag(),
            };
            self.outline.curves.push(curve);
            self.curves.insert(way, self.outline.curves.len() - 1);
            self.outline.curves.len() - 1
        });
        Side {
            curve_index,
            is_reversed: false,
        }
    }

    /// Tag of a side normal to the axis, from a radius outward, at the beginning of a slice.
    fn tag_across(&self, r: usize, before: usize) -> String {
        let n = self.arm.slices.len();
        if before == 0 || before == n {
            return "end".to_owned();
        }
        let is_in = |index: usize| r < self.outside(index);
        match (is_in(before - 1), is_in(before)) {
            (true, false) => film(before - 1),
            (false, true) => film(before),
            _ => "interior".to_owned(),
        }
    }

    /// Sides across from one radius to another at the beginning of a slice, outward.
    fn across(&mut self, inside: usize, outside: usize, before: usize) -> Vec<Side> {
        let steps = self.radii.iter().copied();
        let steps: Vec<usize> = steps.filter(|r| (inside..=outside).contains(r)).collect();
        let z = self.places[before];
        let mut sides = Vec::new();
        for pair in steps.windows(2) {
            let tag = self.tag_across(pair[0], before);
            sides.push(self.side((false, pair[0], z), (pair[1], z), || tag));
        }
        sides
    }

    fn along(&mut self, r: usize, slice_index: usize) -> Side {
        let (from, to) = (self.places[slice_index], self.places[slice_index + 1]);
        let tag = if r == self.outside(slice_index) {
            film(slice_index)
        } else {
            "interior".to_owned()
        };
        self.side((true, r, from), (r, to), || tag)
    }

    fn add_region(&mut self, slice_index: usize, inside: usize, outside: usize) -> usize {
        let back = |side: Side| Side {
            is_reversed: true,
            ..side
        };
        let mut boundary = self.across(inside, outside, slice_index);
        boundary.push(self.along(outside, slice_index));
        let above = self.across(inside, outside, slice_index + 1);
        boundary.extend(above.into_iter().rev().map(back));
        boundary.push(back(self.along(inside, slice_index)));
        let region = self.outline.regions.len();
        self.outline.regions.push(Region {
            name: format!("ring {region} of slice {slice_index}"),
            boundary,
        });
        self.regions.push((slice_index, inside, outside));
        region
    }

    /// Divides each cell into two triangles.
    fn mesh(&self) -> Mesh {
        let mut cells: Vec<(usize, usize, usize)> = Vec::new();
        for (region, &(slice, inside, outside)) in self.regions.iter().enumerate() {
            for z in self.places[slice]..self.places[slice + 1] {
                cells.extend((inside..outside).map(|r| (r, z, region)));
            }
        }
        let mut nodes = Nodes::default();
        // Corners come first.
        for &(r, z, _) in &cells {
            for (dr, dz) in [(0, 0), (2, 0), (0, 2), (2, 2)] {
                nodes.number(2 * r + dr, 2 * z + dz);
            }
        }
        let n_corners = nodes.count as usize;
        let mut mesh = Mesh::default();
        for &(r, z, region) in &cells {
            let mut at = |dr: usize, dz: usize| nodes.number(2 * r + dr, 2 * z + dz);
            mesh.triangles
                .push([at(0, 0), at(2, 0), at(2, 2), at(1, 0), at(2, 1), at(1, 1)]);
            mesh.triangles
                .push([at(0, 0), at(2, 2), at(0, 2), at(1, 1), at(1, 2), at(0, 1)]);
            mesh.region.extend([region as u32; 2]);
        }
        mesh.n_corners = n_corners;
        mesh.nodes = vec![Point::new(0.0, 0.0); nodes.count as usize];
        for (&(r, z), &number) in &nodes.numbers {
            mesh.nodes[number as usize] = Point::new(
                middle(&self.grid.radii_m, r),
                middle(&self.grid.places_m, z),
            );
        }
        for (&way, &curve_index) in &self.curves {
            self.add_rims(&mut mesh, &nodes, way, curve_index);
        }
        mesh
    }

    fn add_rims(&self, mesh: &mut Mesh, nodes: &Nodes, way: Way, curve_index: usize) {
        let (is_along, r, z) = way;
        let (steps, list, first) = if is_along {
            (&self.places, &self.grid.places_m, z)
        } else {
            (&self.radii, &self.grid.radii_m, r)
        };
        let after = steps.iter().find(|step| **step > first);
        let last = after.copied().unwrap_or(first);
        let share = |index: usize| (list[index] - list[first]) / (list[last] - list[first]);
        for index in first..last {
            let node = |twice: usize| {
                let key = if is_along {
                    (2 * r, twice)
                } else {
                    (twice, 2 * z)
                };
                nodes.numbers.get(&key).copied().unwrap_or_default()
            };
            mesh.rims.push(Rim {
                curve_index: curve_index as u32,
                nodes: [node(2 * index), node(2 * index + 2), node(2 * index + 1)],
                shares: [share(index), share(index + 1)],
            });
        }
    }
}

/// Numbers of nodes, by twice their place in the grid.
#[derive(Default)]
struct Nodes {
    numbers: BTreeMap<(usize, usize), u32>,
    count: u32,
}

impl Nodes {
    fn number(&mut self, r: usize, z: usize) -> u32 {
        let count = &mut self.count;
        *self.numbers.entry((r, z)).or_insert_with(|| {
            *count += 1;
            *count - 1
        })
    }
}

/// A place in a list, by twice its number.
fn middle(list: &[f64], twice: usize) -> f64 {
    let low = list[twice / 2];
    if twice.is_multiple_of(2) {
        low
    } else {
        0.5 * (low + list[twice / 2 + 1])
    }
}
