//! Heat flow along a rod.

use std::f64::consts::PI;

use jointwright_numerics::rating::fin::{decay_per_m, rise_k, rod_loss_w};

use super::{apart, close};

// Oracle: conn.fin.incropera.*: incropera_heat chapter 3, infinite rod, recalled; printed to two figures.
#[test]
fn an_endless_rod_in_air() {
    let (rod_m, film) = (0.005, 100.0);
    let loss = |conductivity: f64, film: f64| {
        let area = PI / 4.0 * rod_m * rod_m;
        rod_loss_w(75.0, 1.0 / (film * PI * rod_m), conductivity, area)
    };
    for (conductivity, printed, computed) in
        [(398.0, 8.3, 8.310), (180.0, 5.6, 5.588), (14.0, 1.6, 1.558)]
    {
        close(loss(conductivity, film), computed, 4e-4);
        // Half a unit of the last printed figure.
        assert!((loss(conductivity, film) - printed).abs() <= 0.05);
        apart(loss(conductivity, film * 1.01), computed, 4e-4);
    }
}

// Oracle: conn.fin.decay and conn.fin.rise, computed elsewhere for 5 W on 53.49 mm².
// Their resistance and conductivity are not stated; 1.5 K·m/W and 218 W/(m·K) are the round numbers that give both.
#[test]
fn a_source_on_an_endless_conductor() {
    let length_mm = |resistance| 1e3 / decay_per_m(resistance, 218.0, 53.49e-6);
    close(length_mm(1.5), 132.254_413_9, 1e-8);
    apart(length_mm(1.51), 132.254_413_9, 1e-8);
    let rise = |at_m| rise_k(5.0, at_m, 1.5, 218.0, 53.49e-6);
    close(rise(0.0), 28.354_441_18, 1e-8);
    // Twin: the heat leaves one way only.
    apart(2.0 * rise(0.0), 28.354_441_18, 1e-8);
    close(rise(0.132_254_413_9) / rise(0.0), (-1.0_f64).exp(), 1e-8);
    close(rise(-0.05), rise(0.05), 1e-15);
}

// Oracle: all heat that enters leaves through the side, by Simpson's rule along the rod.
#[test]
fn heat_in_is_heat_out() {
    let (resistance, conductivity, area) = (1.5, 218.0, 53.49e-6);
    let (n, length) = (4000, 5.0);
    let step = length / f64::from(n);
    let leaves: f64 = (0..=n)
        .map(|index| {
            let weight = match index {
                0 => 1.0,
                _ if index == n => 1.0,
                _ if index % 2 == 1 => 4.0,
                _ => 2.0,
            };
            let at = f64::from(index) * step;
            weight * rise_k(5.0, at, resistance, conductivity, area) / resistance
        })
        .sum::<f64>()
        * step
        / 3.0;
    close(2.0 * leaves, 5.0, 1e-6);
    // Each half takes as much heat as a rod from a wall of that temperature.
    let wall = rise_k(5.0, 0.0, resistance, conductivity, area);
    close(rod_loss_w(wall, resistance, conductivity, area), 2.5, 1e-12);
}
