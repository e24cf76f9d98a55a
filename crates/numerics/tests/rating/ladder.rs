//! A finely divided cable, and soil, stepped in time: the reference for the two cells.

use std::f64::consts::PI;

use jointwright_numerics::rating::thermal::layer_k_m_per_w;
use jointwright_numerics::rating::transient::{Body, Wall};

/// Nodes from the conductor outward, each with its heat and its link to the next; the last link ends at 0.
pub struct Ladder {
    /// J/(m·K).
    heats: Vec<f64>,
    /// K·m/W.
    links: Vec<f64>,
    /// Node at which the shield's loss enters.
    shield_index: usize,
    /// Ratio to the conductor's loss.
    shield_ratio: f64,
}

impl Ladder {
    /// Chain of a cable whose surface temperature is fixed, or which hangs in surroundings without heat capacity; it may lie in a cylinder of soil with a fixed temperature at some radius.
    pub fn of(body: &Body, soil: Option<(Wall, usize)>) -> Ladder {
        let mut ladder = Ladder {
            heats: vec![body.conductor_j_per_m_k],
            links: vec![0.0],
            shield_index: 0,
            shield_ratio: body.losses_ratio - 1.0,
        };
        ladder.add(&body.insulation, 60);
        ladder.shield_index = ladder.heats.len();
        ladder.heats.push(body.shield_j_per_m_k);
        ladder.links.push(0.0);
        ladder.add(&body.jacket.expect("a jacket"), 30);
        if let Some((soil, n_shells)) = soil {
            ladder.add(&soil, n_shells);
        }
        if let Some(last) = ladder.links.last_mut() {
            *last += body.outside_k_m_per_w;
        }
        ladder
    }

    fn add(&mut self, wall: &Wall, n_shells: usize) {
        let ratio = (wall.outside_m / wall.inside_m).powf(1.0 / n_shells as f64);
        let whole = (wall.outside_m / wall.inside_m).ln();
        let mut inside = wall.inside_m;
        for _ in 0..n_shells {
            let outside = inside * ratio;
            let middle = ((inside * inside + outside * outside) / 2.0).sqrt();
            let share = wall.resistance_k_m_per_w / whole;
            if let Some(last) = self.links.last_mut() {
                *last += share * (middle / inside).ln();
            }
            let area = PI / 4.0 * (outside * outside - inside * inside);
            self.heats.push(area * wall.heat_j_per_m3_k);
            self.links.push(share * (outside / middle).ln());
            inside = outside;
        }
    }

    /// Steady rise of every node for a loss of the conductor, K.
    pub fn steady(&self, watts: f64) -> Vec<f64> {
        let mut rises = vec![0.0; self.heats.len()];
        let mut above = 0.0;
        for index in (0..self.heats.len()).rev() {
            let shield = if index >= self.shield_index {
                self.shield_ratio
            } else {
                0.0
            };
            above += watts * (1.0 + shield) * self.links[index];
            rises[index] = above;
        }
        rises
    }

    /// One step backward in time.
    pub fn step(&self, rises: &mut [f64], watts: f64, step_s: f64) {
        let n = rises.len();
        let (mut diagonal, mut right) = (vec![0.0; n], vec![0.0; n]);
        for index in 0..n {
            let before = index.checked_sub(1).map_or(0.0, |at| 1.0 / self.links[at]);
            let after = 1.0 / self.links[index];
            let hold = self.heats[index] / step_s;
            diagonal[index] = hold + before + after;
            right[index] = hold * rises[index];
            if index == 0 {
                right[index] += watts;
            }
            if index == self.shield_index {
                right[index] += watts * self.shield_ratio;
            }
            if index > 0 {
                let share = before / diagonal[index - 1];
                diagonal[index] -= share * before;
                right[index] += share * right[index - 1];
            }
        }
        rises[n - 1] = right[n - 1] / diagonal[n - 1];
        for index in (0..n - 1).rev() {
            let after = 1.0 / self.links[index];
            rises[index] = (right[index] + after * rises[index + 1]) / diagonal[index];
        }
    }

    /// Rise of the conductor at a time after a loss of one watt and metre began, K.
    pub fn rise(&self, time_s: f64) -> f64 {
        let n = 1500;
        let mut rises = vec![0.0; self.heats.len()];
        for k in 0..n {
            let share = f64::from(2 * k + 1) / f64::from(n * n);
            self.step(&mut rises, 1.0, time_s * share);
        }
        rises[0]
    }
}

pub fn wall(inside_m: f64, outside_m: f64, resistivity_k_m_per_w: f64) -> Wall {
    Wall {
        inside_m,
        outside_m,
        resistance_k_m_per_w: layer_k_m_per_w(resistivity_k_m_per_w, inside_m, outside_m),
        heat_j_per_m3_k: 2.4e6,
    }
}

/// An invented cable: conductor, over the insulation's screen, over the jacket, m; qs.
pub fn cable(conductor_m: f64, shield_m: f64, outside_m: f64, losses_ratio: f64) -> Body {
    Body {
        conductor_j_per_m_k: 0.75 * PI / 4.0 * conductor_m * conductor_m * 2.5e6,
        insulation: wall(conductor_m, shield_m, 3.5),
        shield_j_per_m_k: 100.0,
        jacket: Some(wall(shield_m, outside_m, 3.5)),
        losses_ratio,
        outside_k_m_per_w: 0.0,
    }
}
