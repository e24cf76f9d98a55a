//! Network: conductances, capacities and sources of all cells, and of the hub.

use super::grid::Grid;
use super::shape::{Arm, LadderError, Star};
use super::temperatures::Temperatures;
use crate::fem::sparse::Structure;
use std::f64::consts::PI;

/// Temperature at which resistances are stated, °C.
const STATED_DEGC: f64 = 20.0;

/// One arm's cells in the network.
#[derive(Clone, Debug)]
pub(super) struct Cells {
    pub grid: Grid,
    /// Number of each cell, [n_along][n_across]; `None` if the slice ends below it.
    pub numbers: Vec<Vec<Option<usize>>>,
}

/// A source: a cell's share of a ring's loss.
#[derive(Clone, Copy, Debug)]
pub(super) struct Source {
    pub cell: usize,
    /// Arm whose current heats it; `None` for the hub, which takes the mean square of all currents.
    pub arm: Option<usize>,
    /// Whether it lies in the last slice of its arm.
    pub is_far: bool,
    /// Its place along its arm, m; 0 for the hub.
    pub place_m: f64,
    /// Ω at 20 °C.
    pub at20_ohm: f64,
    pub alpha_per_k: f64,
    /// W, independent of the current.
    pub constant_w: f64,
}

impl Source {
    /// Loss for each A² at these temperatures, W/A², and its growth with the temperature, W/(A² K).
    pub fn per_a2(&self, found: &Temperatures) -> (f64, f64) {
        let rise = found.degc[self.cell] - STATED_DEGC;
        let growth = self.at20_ohm * self.alpha_per_k;
        (self.at20_ohm + growth * rise, growth)
    }
}

/// A temperature between those of two cells: each cell with its weight.
#[derive(Clone, Copy, Debug)]
pub(super) struct Out(pub [(usize, f64); 2]);

impl Out {
    pub fn cell(cell: usize) -> Out {
        Out([(cell, 1.0), (cell, 0.0)])
    }

    pub fn of(&self, degc: &[f64]) -> f64 {
        self.0.iter().map(|(cell, share)| share * degc[*cell]).sum()
    }
}

/// The network of a star.
#[derive(Clone, Debug)]
pub(super) struct Network {
    pub arms: Vec<Cells>,
    pub hub: Option<usize>,
    pub n: usize,
    /// Conductances between cells, the lesser number first, W/K.
    pub links: Vec<(usize, usize, f64)>,
    /// Conductance to the surroundings, W/K, and the temperature of the surroundings, °C.
    pub films: Vec<(usize, f64, f64)>,
    /// J/K.
    pub capacity: Vec<f64>,
    pub sources: Vec<Source>,
}

/// Radius whose logarithm equals the mean of the logarithm over the ring's area.
///
/// For a disc it is the radius of its mean temperature without a source.
fn middle_m(inside: f64, outside: f64) -> f64 {
    let (i2, o2) = (inside * inside, outside * outside);
    let log = |radius: f64| if radius > 0.0 { radius.ln() } else { 0.0 };
    ((o2 * log(outside) - i2 * log(inside)) / (o2 - i2) - 0.5).exp()
}

/// Radial conductance of a part of a ring, W/K.
fn across(conductivity: f64, inside: f64, outside: f64, length: f64) -> f64 {
    2.0 * PI * conductivity * length / (outside / inside).ln()
}

fn series(one: f64, other: f64) -> f64 {
    if one == 0.0 || other == 0.0 {
        return 0.0;
    }
    1.0 / (1.0 / one + 1.0 / other)
}

/// Properties of a cell, computed once.
struct Cell {
    number: usize,
    conductivity: f64,
    inside: f64,
    middle: f64,
    outside: f64,
    length: f64,
}

impl Cell {
    fn area(&self) -> f64 {
        PI * (self.outside * self.outside - self.inside * self.inside)
    }

    /// Conductance from its middle to its face along the axis, W/K.
    fn half_along(&self) -> f64 {
        self.conductivity * self.area() / (0.5 * self.length)
    }

    fn outward(&self) -> f64 {
        across(self.conductivity, self.middle, self.outside, self.length)
    }

    fn inward(&self) -> f64 {
        across(self.conductivity, self.inside, self.middle, self.length)
    }
}

impl Network {
    pub fn new(star: &Star, fineness: usize) -> Result<Network, LadderError> {
        for arm in &star.arms {
            arm.check()?;
        }
        let mut network = Network {
            arms: Vec::new(),
            hub: None,
            n: 0,
            links: Vec::new(),
            films: Vec::new(),
            capacity: Vec::new(),
            sources: Vec::new(),
        };
        for (index, arm) in star.arms.iter().enumerate() {
            let cells = network.number(Grid::new(arm, fineness), arm);
            network.add_arm(index, arm, &cells);
            network.arms.push(cells);
        }
        if star.arms.len() > 1 {
            network.add_hub(star);
        }
        Ok(network)
    }

    /// Whether two networks have the same cells with the same links, whatever their values.
    pub fn has_cells_of(&self, other: &Network) -> bool {
        let ends = |network: &Network| -> Vec<(usize, usize)> {
            let links = network.links.iter();
            links.map(|(low, high, _)| (*low, *high)).collect()
        };
        self.n == other.n && ends(self) == ends(other)
    }

    fn number(&mut self, grid: Grid, arm: &Arm) -> Cells {
        let mut numbers = Vec::with_capacity(grid.n_along());
        for slice in &grid.slice_of {
            let present = grid.n_of(&arm.slices[*slice]);
            let row = (0..grid.n_across()).map(|across| {
                (across < present).then(|| {
                    self.n += 1;
                    self.n - 1
                })
            });
            numbers.push(row.collect());
        }
        Cells { grid, numbers }
    }

    fn add_arm(&mut self, arm_index: usize, arm: &Arm, cells: &Cells) {
        self.capacity.resize(self.n, 0.0);
        let mut before: Vec<Cell> = Vec::new();
        for along in 0..cells.grid.n_along() {
            let row = row(arm, cells, along);
            self.add_row(arm_index, arm, cells, along, &row);
            if along > 0 {
                self.join(arm, cells, along, &before, &row);
            }
            before = row;
        }
    }

    /// Adds radial links, films of the outside, heat stores and sources of the cells at one place along the axis.
    fn add_row(&mut self, arm_index: usize, arm: &Arm, cells: &Cells, along: usize, row: &[Cell]) {
        let slice = &arm.slices[cells.grid.slice_of[along]];
        let is_far = cells.grid.slice_of[along] + 1 == arm.slices.len() && arm.slices.len() > 1;
        let place_m = 0.5 * (cells.grid.places_m[along] + cells.grid.places_m[along + 1]);
        for pair in row.windows(2) {
            let conductance = series(pair[0].outward(), pair[1].inward());
            self.links
                .push((pair[0].number, pair[1].number, conductance));
        }
        if let Some(last) = row.last() {
            let film = slice.film_w_per_m2k * 2.0 * PI * last.outside * last.length;
            let conductance = series(last.outward(), film);
            self.films
                .push((last.number, conductance, slice.ambient_degc));
        }
        for (across, cell) in row.iter().enumerate() {
            let index = cells.grid.ring_of(slice, across);
            let ring = &slice.rings[index];
            self.capacity[cell.number] = ring.stuff.capacity_j_per_m3k * cell.area() * cell.length;
            let Some(loss) = ring.loss else { continue };
            let inside = index
                .checked_sub(1)
                .map_or(0.0, |i| slice.rings[i].outside_m);
            let of_ring = PI * (ring.outside_m * ring.outside_m - inside * inside);
            let share = cell.area() / of_ring * cell.length;
            self.sources.push(Source {
                cell: cell.number,
                arm: Some(arm_index),
                is_far,
                place_m,
                at20_ohm: loss.at20_ohm_per_m * share,
                alpha_per_k: loss.alpha_per_k,
                constant_w: loss.constant_w_per_m * share,
            });
        }
    }

    /// Adds links along the axis, and films of the faces that stick out beside a thinner slice.
    fn join(&mut self, arm: &Arm, cells: &Cells, along: usize, before: &[Cell], row: &[Cell]) {
        for (one, other) in before.iter().zip(row) {
            let conductance = series(one.half_along(), other.half_along());
            self.links.push((one.number, other.number, conductance));
        }
        let n = before.len().min(row.len());
        let (thick, at) = if before.len() > row.len() {
            (&before[n..], along - 1)
        } else {
            (&row[n..], along)
        };
        let slice = &arm.slices[cells.grid.slice_of[at]];
        for cell in thick {
            let film = slice.film_w_per_m2k * cell.area();
            let conductance = series(cell.half_along(), film);
            self.films
                .push((cell.number, conductance, slice.ambient_degc));
        }
    }

    fn add_hub(&mut self, star: &Star) {
        let (number, hub) = (self.n, &star.hub);
        self.n += 1;
        self.hub = Some(number);
        self.capacity.push(hub.capacity_j_per_k);
        self.films
            .push((number, hub.film_w_per_k, hub.ambient_degc));
        self.sources.push(Source {
            cell: number,
            arm: None,
            is_far: false,
            place_m: 0.0,
            at20_ohm: hub.at20_ohm,
            alpha_per_k: hub.alpha_per_k,
            constant_w: 0.0,
        });
        let mut links = Vec::new();
        for (arm, cells) in star.arms.iter().zip(&self.arms) {
            let core = arm.slices[0].rings[0].outside_m;
            let row = row(arm, cells, 0);
            let of_core = row
                .iter()
                .filter(|cell| cell.outside <= core * (1.0 + 1e-12));
            links.extend(of_core.map(|cell| (cell.number, number, cell.half_along())));
        }
        self.links.extend(links);
    }

    /// Structure of the lower triangle, the index of each link's entry, and that of each diagonal, with which its column begins.
    pub fn structure(&self) -> Result<(Structure, Vec<usize>, Vec<usize>), LadderError> {
        let mut columns: Vec<Vec<u32>> = (0..self.n).map(|j| vec![j as u32]).collect();
        for &(low, high, _) in &self.links {
            columns[low].push(high as u32);
        }
        let mut starts = vec![0_u32];
        let mut rows = Vec::new();
        for column in &mut columns {
            column.sort_unstable();
            column.dedup();
            rows.extend_from_slice(column);
            starts.push(rows.len() as u32);
        }
        let entry = |&(low, high, _): &(usize, usize, f64)| {
            let from = starts[low] as usize;
            let own = &rows[from..starts[low + 1] as usize];
            from + own.partition_point(|row| (*row as usize) < high)
        };
        let entries = self.links.iter().map(entry).collect();
        let diagonals = starts[..self.n].iter().map(|start| *start as usize);
        let diagonals = diagonals.collect();
        Ok((Structure::new(starts, rows)?, entries, diagonals))
    }

    /// Squares of the currents that heat each source: one for each arm, and their mean for the hub, A².
    pub fn square_a2(&self, source: &Source, currents_a: &[f64]) -> f64 {
        match source.arm {
            Some(arm) => currents_a[arm] * currents_a[arm],
            None => currents_a.iter().map(|i| i * i).sum::<f64>() / currents_a.len() as f64,
        }
    }

    /// The same from the squares of the currents, A².
    pub fn square_of(&self, source: &Source, squares_a2: &[f64]) -> f64 {
        match source.arm {
            Some(arm) => squares_a2[arm],
            None => squares_a2.iter().sum::<f64>() / squares_a2.len() as f64,
        }
    }

    /// Heat of a source at these temperatures, W.
    pub fn loss_w(&self, source: &Source, currents_a: &[f64], found: &Temperatures) -> f64 {
        let rise = found.degc[source.cell] - STATED_DEGC;
        let at20 = source.at20_ohm * self.square_a2(source, currents_a);
        at20 * (1.0 + source.alpha_per_k * rise) + source.constant_w
    }

    /// Heat of the sources at 0 °C, W, and its growth with the temperature, W/K.
    pub fn heating(&self, currents_a: &[f64]) -> (Vec<f64>, Vec<f64>) {
        let (mut load, mut gain) = (vec![0.0; self.n], vec![0.0; self.n]);
        for source in &self.sources {
            let at20 = source.at20_ohm * self.square_a2(source, currents_a);
            load[source.cell] +=
                at20 * (1.0 - STATED_DEGC * source.alpha_per_k) + source.constant_w;
            gain[source.cell] += at20 * source.alpha_per_k;
        }
        (load, gain)
    }

    /// Heat from the surroundings at 0 °C, W.
    pub fn cooling(&self) -> Vec<f64> {
        let mut load = vec![0.0; self.n];
        for &(cell, conductance, ambient) in &self.films {
            load[cell] += conductance * ambient;
        }
        load
    }

    /// Conductance from each cell to its neighbours and surroundings, W/K.
    pub fn diagonal(&self) -> Vec<f64> {
        let mut diagonal = vec![0.0; self.n];
        for &(low, high, conductance) in &self.links {
            diagonal[low] += conductance;
            diagonal[high] += conductance;
        }
        for &(cell, conductance, _) in &self.films {
            diagonal[cell] += conductance;
        }
        diagonal
    }

    /// Heat that leaves each cell at these temperatures, without the heat from beyond the films, W.
    pub fn outflow(&self, diagonal: &[f64], degc: &[f64]) -> Vec<f64> {
        let mut out: Vec<f64> = diagonal.iter().zip(degc).map(|(g, t)| g * t).collect();
        for &(low, high, conductance) in &self.links {
            out[low] -= conductance * degc[high];
            out[high] -= conductance * degc[low];
        }
        out
    }

    /// Inside of each watched ring of an arm, by place, m; a watched core is represented by its innermost cell.
    pub fn watched(&self, index: usize, arm: &Arm) -> Vec<(f64, Out)> {
        let cells = &self.arms[index];
        let mut found = Vec::new();
        for along in 0..cells.grid.n_along() {
            let slice = &arm.slices[cells.grid.slice_of[along]];
            let row = row(arm, cells, along);
            let place = 0.5 * (cells.grid.places_m[along] + cells.grid.places_m[along + 1]);
            for (ring_index, ring) in slice.rings.iter().enumerate() {
                let first =
                    (0..row.len()).find(|&cell| cells.grid.ring_of(slice, cell) == ring_index);
                let (true, Some(first)) = (ring.is_watched, first) else {
                    continue;
                };
                if first == 0 {
                    found.push((place, Out::cell(row[0].number)));
                    continue;
                }
                let (inner, outer) = (&row[first - 1], &row[first]);
                let (g, h) = (inner.outward(), outer.inward());
                let share = g / (g + h);
                let out = Out([(inner.number, share), (outer.number, 1.0 - share)]);
                found.push((place, out));
            }
        }
        found
    }

    /// Temperatures on the outside of an arm: place, °C.
    pub fn outside(&self, index: usize, arm: &Arm, degc: &[f64]) -> Vec<(f64, f64)> {
        let cells = &self.arms[index];
        let mut found = Vec::new();
        for along in 0..cells.grid.n_along() {
            let slice = &arm.slices[cells.grid.slice_of[along]];
            let place = 0.5 * (cells.grid.places_m[along] + cells.grid.places_m[along + 1]);
            let Some(last) = row(arm, cells, along).pop() else {
                continue;
            };
            let film = slice.film_w_per_m2k * 2.0 * PI * last.outside * last.length;
            let out = last.outward();
            let face = (out * degc[last.number] + film * slice.ambient_degc) / (out + film);
            found.push((place, face));
        }
        found
    }
}

fn row(arm: &Arm, cells: &Cells, along: usize) -> Vec<Cell> {
    let grid = &cells.grid;
    let slice = &arm.slices[grid.slice_of[along]];
    let length = grid.places_m[along + 1] - grid.places_m[along];
    let numbers = cells.numbers[along].iter().enumerate();
    let present = numbers.filter_map(|(across, number)| number.map(|number| (across, number)));
    present
        .map(|(across, number)| {
            let (inside, outside) = (grid.radii_m[across], grid.radii_m[across + 1]);
            let ring = &slice.rings[grid.ring_of(slice, across)];
            Cell {
                number,
                conductivity: ring.stuff.conductivity_w_per_mk,
                inside,
                middle: middle_m(inside, outside),
                outside,
                length,
            }
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_middle_of_a_thin_ring_lies_half_way_and_that_of_a_disc_by_its_own_mean() {
        assert!((middle_m(10.0, 10.1) - 10.05).abs() < 1e-3);
        assert!((middle_m(0.0, 1.0) - (-0.5_f64).exp()).abs() < 1e-12);
    }
}
