//! Random joints as slices: conductor, connector, wall, screen, shield, jacket, body, filler, sleeve, air or soil.

use jointwright_numerics::heat::Stuff;
use jointwright_numerics::ladder::{Arm, Hub, Loss, Ring, Slice, Star};
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;

/// One joint and the current that warms its cable by some tens of kelvins.
#[derive(Clone, Debug)]
pub struct Joint {
    pub arm: Arm,
    pub current_a: f64,
    pub ambient_degc: f64,
}

/// Properties that all slices of a joint share.
struct Draw {
    rng: ChaCha8Rng,
    core: Stuff,
    ohm_per_m: f64,
    alpha_per_k: f64,
    radii: Vec<f64>,
    wall: Stuff,
    film: f64,
    ambient: f64,
}

fn stuff(conductivity_w_per_mk: f64, capacity_j_per_m3k: f64) -> Stuff {
    Stuff {
        conductivity_w_per_mk,
        capacity_j_per_m3k,
    }
}

const fn ring(outside_m: f64, stuff: Stuff, loss: Option<Loss>, is_watched: bool) -> Ring {
    Ring {
        outside_m,
        stuff,
        loss,
        is_watched,
    }
}

impl Draw {
    fn between(&mut self, least: f64, greatest: f64) -> f64 {
        self.rng.random_range(least..greatest)
    }

    fn loss(&self, ratio: f64) -> Loss {
        Loss {
            at20_ohm_per_m: self.ohm_per_m * ratio,
            alpha_per_k: self.alpha_per_k,
            constant_w_per_m: 0.0,
        }
    }

    /// Rings of the cable up to one of its layers.
    fn cable(&mut self, n_layers: usize, shield_ratio: f64) -> Vec<Ring> {
        let semicon = stuff(0.35, 2.2e6);
        let shield = stuff(200.0, 3.4e6);
        let jacket = stuff(0.29, 2.4e6);
        let stuffs = [self.core, self.wall, semicon, shield, jacket];
        let shield_loss = Loss {
            at20_ohm_per_m: self.ohm_per_m * shield_ratio,
            alpha_per_k: self.alpha_per_k,
            constant_w_per_m: 0.0,
        };
        let losses = [Some(self.loss(1.0)), None, None, Some(shield_loss), None];
        (0..n_layers)
            .map(|index| ring(self.radii[index], stuffs[index], losses[index], index == 1))
            .collect()
    }

    fn slice(&self, length_m: f64, rings: Vec<Ring>) -> Slice {
        Slice {
            length_m,
            rings,
            film_w_per_m2k: self.film,
            ambient_degc: self.ambient,
        }
    }
}

/// Joint with this number.
pub fn joint(seed: u64) -> Joint {
    let mut rng = ChaCha8Rng::seed_from_u64(seed);
    let is_copper = rng.random_bool(0.5);
    let area_mm2: f64 = rng.random_range(33.0..700.0);
    let conductor = (area_mm2 / rng.random_range(0.75..1.0) / std::f64::consts::PI).sqrt() * 1e-3;
    let wall_m = rng.random_range(2.5e-3..12e-3);
    let over_screen = rng.random_range(0.7e-3..1.3e-3);
    let shield_m = rng.random_range(0.1e-3..1.2e-3);
    let jacket_m = rng.random_range(1.4e-3..3.5e-3);
    let mut radii = vec![conductor];
    for thick in [wall_m, over_screen, shield_m, jacket_m] {
        radii.push(radii[radii.len() - 1] + thick);
    }
    let resistivity = if is_copper { 1.7241e-8 } else { 2.8264e-8 };
    let mut draw = Draw {
        core: if is_copper {
            stuff(385.0, 3.45e6)
        } else {
            stuff(230.0, 2.5e6)
        },
        ohm_per_m: 1.02 * resistivity / (area_mm2 * 1e-6),
        alpha_per_k: if is_copper { 3.93e-3 } else { 4.03e-3 },
        wall: stuff(rng.random_range(0.18..0.32), 2.2e6),
        film: rng.random_range(4.0..60.0),
        ambient: rng.random_range(5.0..45.0),
        radii,
        rng,
    };
    let arm = slices(&mut draw);
    // Current that warms the undisturbed cable by 15 to 60 K with its resistance at 20 °C.
    let rise = draw.between(15.0, 60.0);
    let tau = std::f64::consts::TAU;
    let mut resistance = 0.0;
    let far = &arm.slices[arm.slices.len() - 1];
    for pair in far.rings.windows(2) {
        resistance += (pair[1].outside_m / pair[0].outside_m).ln()
            / (tau * pair[1].stuff.conductivity_w_per_mk);
    }
    resistance += 1.0 / (tau * far.outside_m() * far.film_w_per_m2k);
    let current_a = (rise / resistance / (1.3 * draw.ohm_per_m)).sqrt();
    Joint {
        arm,
        current_a,
        ambient_degc: draw.ambient,
    }
}

/// From the middle of the connector: connector, bare conductor, insulation, screen in the body, shield and jacket, cable.
fn slices(draw: &mut Draw) -> Arm {
    let conductor = draw.radii[0];
    let connector = conductor * draw.between(1.25, 1.9);
    let connector_m = draw.between(0.03, 0.11);
    let bare_m = draw.between(0.003, 0.015);
    let insulation_m = draw.between(0.04, 0.16);
    let screen_m = draw.between(0.02, 0.1);
    let insulation = draw.radii[1];
    let electrode = insulation.max(connector) + draw.between(1e-3, 5e-3);
    let body = electrode.max(draw.radii[4]) + draw.between(8e-3, 25e-3);
    let semicon = body + draw.between(1.5e-3, 4e-3);
    let sleeve = semicon + draw.between(2e-3, 6e-3);
    let (rubber_k, electrode_k) = (draw.between(0.18, 0.4), draw.between(0.25, 0.6));
    let rubber = stuff(rubber_k, 1.9e6);
    let electrode_stuff = stuff(electrode_k, 2.0e6);
    let filler = stuff(draw.between(0.03, 0.3), 1.2e6);
    let sleeve_stuff = stuff(0.29, 2.4e6);
    let contact = draw.between(0.5, 3.0) * (conductor / connector).powi(2).max(0.4);
    let over = |rings: &mut Vec<Ring>, from: f64| {
        if from < electrode {
            rings.push(ring(electrode, electrode_stuff, None, false));
        }
        rings.push(ring(body, rubber, None, true));
        rings.push(ring(semicon, electrode_stuff, None, false));
        rings.push(ring(sleeve, sleeve_stuff, None, false));
    };
    let mut middle = vec![ring(connector, draw.core, Some(draw.loss(contact)), false)];
    over(&mut middle, connector);
    let mut bare = vec![
        ring(conductor, draw.core, Some(draw.loss(1.0)), false),
        ring(connector.min(insulation), filler, None, false),
    ];
    over(&mut bare, connector.min(insulation));
    let mut plain = draw.cable(2, 0.0);
    over(&mut plain, insulation);
    let shield_ratio = draw.between(0.0, 0.3);
    let mut screened = draw.cable(4, shield_ratio);
    over(&mut screened, draw.radii[3]);
    let mut cable = draw.cable(5, shield_ratio);
    cable.iter_mut().for_each(|ring| ring.is_watched = false);
    let mut far = draw.slice(2.5, cable.clone());
    let mut slices = vec![
        draw.slice(connector_m, middle),
        draw.slice(bare_m, bare),
        draw.slice(insulation_m, plain),
        draw.slice(screen_m, screened),
    ];
    if draw.rng.random_bool(0.5) {
        // A stretch of the cable in other surroundings: the mouth of a duct, water.
        let near = draw.between(0.1, 1.0);
        slices.push(draw.slice(near, cable));
        far.film_w_per_m2k = draw.between(4.0, 60.0);
        far.ambient_degc = draw.between(5.0, 45.0);
    }
    slices.push(far);
    Arm { slices }
}

/// Its one arm, mirrored at the middle of the connector.
pub fn star(joint: &Joint) -> Star {
    Star {
        arms: vec![joint.arm.clone()],
        hub: Hub::default(),
    }
}
