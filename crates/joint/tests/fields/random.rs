//! Random valid joints: number and reasons of the refused sections.
#![allow(
    clippy::disallowed_methods,
    reason = "the environment says whether the run is a long one"
)]

use super::{Edit, planned};
use jointwright_joint::plan::StateDoc;
use std::collections::BTreeMap;

/// Joints of the short run; the long one takes several thousand.
const N_SHORT: u64 = 120;
const N_LONG: u64 = 4000;
/// Greatest share of refused joints.
const REFUSED_MOST: f64 = 0.02;

/// SplitMix64, from a seed.
struct Draw(u64);

impl Draw {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    /// A number between two, to a micrometre.
    fn between(&mut self, least: f64, greatest: f64) -> f64 {
        let share = (self.next() >> 11) as f64 / (1u64 << 53) as f64;
        ((least + share * (greatest - least)) * 1e3).round() / 1e3
    }

    fn index(&mut self, n: u64) -> usize {
        (self.next() % n) as usize
    }
}

/// A body of sound proportions on a cable within its range or a little outside, its screen edge anywhere about the heel.
fn joint(seed: u64) -> Edit {
    let mut draw = Draw(seed);
    let on = draw.between(18.0, 34.0);
    let electrode_end = draw.between(70.0, 100.0);
    let thick = draw.between(5.0, 8.0);
    let radii = [
        draw.between(1.0, 0.35 * thick),
        draw.between(1.0, 0.35 * thick),
    ];
    let (rise, reach) = (draw.between(8.0, 14.0), draw.between(14.0, 22.0));
    let slope = rise.atan2(reach);
    let length = rise.hypot(reach);
    let tip = draw.between(1.0, 2.5);
    let tip_takes = tip * ((std::f64::consts::PI - slope) / 2.0).tan();
    let heel_most = (0.85 * length - tip_takes) / (slope / 2.0).tan();
    let heel_radius = draw.between(0.4 * heel_most, heel_most);
    let corner = electrode_end + draw.between(25.0, 55.0);
    let heel = corner + heel_radius * (slope / 2.0).tan();
    let far = heel + draw.between(40.0, 70.0);
    let outside = on + 2.0 * rise + 2.0 * draw.between(5.0, 10.0);
    let mm = |value: f64| format!("\"{value:.3} mm\"");
    let pair = |a: f64, b: f64| format!("{}, {}", mm(a), mm(b));
    let edge_least = draw.between(0.05, 0.2);
    let fillers = [
        None,
        Some((draw.between(2.0, 5.0), false)),
        Some((3.0, true)),
    ];
    let bridging_mm = [0.0, draw.between(0.5, 4.0)][draw.index(2)];
    Edit {
        edge_mm: ((heel + draw.between(-12.0, 12.0)) * 1e3).round() / 1e3,
        bridging_mm,
        filler: fillers[draw.index(3)],
        diameter_mm: (on * draw.between(0.94, 1.06) * 1e3).round() / 1e3,
        shape: vec![
            ("\"22.2 mm\"", mm(on)),
            ("\"21 mm\"", mm(0.95 * on)),
            ("\"23 mm\"", mm(1.05 * on)),
            ("\"60 mm\"", mm(outside)),
            ("\"75 mm\"", mm(electrode_end)),
            ("\"34.2 mm\"", mm(on + 2.0 * thick)),
            ("\"2 mm\", \"4 mm\"", pair(radii[0], radii[1])),
            ("\"122.388049 mm\"", mm(corner)),
            ("\"104.262888 mm\"", mm(corner - reach)),
            ("\"47.582748 mm\"", mm(on + 2.0 * rise)),
            ("\"40 mm\", \"3 mm\"", pair(heel_radius, tip)),
            ("\"200 mm\"", mm(far)),
            ("\"135.5 mm\"", mm(heel + 0.5)),
            ("\"170 mm\"", mm(heel + 30.0)),
            (
                "edge_radius_least = \"0.25 mm\"",
                format!("edge_radius_least = {}", mm(edge_least)),
            ),
            (
                "edge_radius_greatest = \"0.25 mm\"",
                format!("edge_radius_greatest = {}", mm(edge_least + 0.3)),
            ),
        ],
        ..Edit::default()
    }
}

/// Reasons for which joints of these seeds are refused or do not settle, each with its first seed and its count.
fn refused(seeds: std::ops::Range<u64>) -> BTreeMap<String, (u64, u32)> {
    let mut reasons = BTreeMap::new();
    for seed in seeds {
        let plan = planned(&joint(seed));
        let field = plan.legs[0].field.as_ref().expect("it has a body");
        let unsettled = plan.rulings.iter().find_map(|ruling| {
            let why = ruling.why.as_deref().unwrap_or_default();
            let is_unsettled = why.contains("did not come as close as asked")
                || (field.state == StateDoc::Computed && why.contains("from the body's datum: "));
            is_unsettled.then(|| why.to_owned())
        });
        let why = if field.state == StateDoc::Computed {
            unsettled
        } else {
            field.why.clone()
        };
        if let Some(why) = why {
            // The reason without its numbers; the first seed stands for all.
            let why: String = why.chars().filter(|c| !c.is_ascii_digit()).collect();
            reasons.entry(why).or_insert((seed, 0)).1 += 1;
        }
    }
    reasons
}

#[track_caller]
fn check(n: u64) {
    let reasons = refused(0..n);
    let count: u32 = reasons.values().map(|(_, count)| count).sum();
    let share = f64::from(count) / n as f64;
    assert!(share <= REFUSED_MOST, "{count} of {n}: {reasons:#?}");
}

#[test]
fn few_random_joints_are_refused() {
    let is_long = std::env::var_os("JOINTWRIGHT_LONG").is_some();
    check(if is_long { N_LONG } else { N_SHORT });
}

#[test]
fn a_joint_that_is_no_section_is_counted() {
    let edit = Edit {
        // The screen reaches under the electrode.
        edge_mm: 72.0,
        ..Edit::default()
    };
    let plan = planned(&edit);
    let field = plan.legs[0].field.as_ref().expect("it has a body");
    assert_eq!(field.state, StateDoc::NotComputed);
    let why = field.why.as_deref().unwrap_or_default();
    assert!(why.contains("the electrode ends at"), "{why}");
}
