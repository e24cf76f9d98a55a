//! Sources of heat: one contact at a time, one leg by itself, and a bus with a temperature that nobody states.

use super::{DOCK, Edits, leg, order, planned, warm, with_done, worst};
use crate::cases::accepted;
use jointwright_joint::judge::judge;
use jointwright_joint::limit::Outcome;
use jointwright_joint::plan::Plan;
use jointwright_joint::warm::{LegAt, WarmJoint};
use jointwright_wording::plan;

const LARKSPUR: &str = "larkspur-three-way";
const BUS: &str = "resistance_microohm = 40\nresistance_at = \"20 degC\"";

fn three_way<T>(of_job: Edits<'_>, of_rows: Edits<'_>, ask: impl FnOnce(&WarmJoint) -> T) -> T {
    with_done(&order(LARKSPUR, of_job, of_rows), ask)
}

fn at_load(of_job: Edits<'_>, of_rows: Edits<'_>) -> Vec<LegAt> {
    three_way(of_job, of_rows, |done| {
        done.at_load.clone().expect("a state")
    })
}

#[track_caller]
fn three_way_plan(of_job: Edits<'_>, of_rows: Edits<'_>) -> Plan {
    let order = order(LARKSPUR, of_job, of_rows);
    plan(&accepted(judge(&order), LARKSPUR))
}

/// Superposition: the shares add up to the whole difference, in numbers and, in tenths, in words.
#[test]
fn the_shares_of_each_leg_add_up_to_what_it_is_hotter_than_its_cable() {
    for example in [LARKSPUR, DOCK] {
        with_done(&order(example, &[], &[]), |done| {
            let legs = done.at_load.as_ref().expect("a state");
            for (of, at) in done.legs.iter().zip(legs) {
                let total = of.whence.as_ref().expect("shares").total_k();
                let by = at.joint_degc - at.alone_degc;
                assert!(
                    (total - by).abs() < 1e-6,
                    "{example} {}: {total} {by}",
                    of.leg
                );
                let listed: f64 = done.shares(of).iter().map(|share| share.k).sum();
                assert!((listed - by).abs() < 1e-6, "{example} {}", of.leg);
            }
        });
    }
    let plan = three_way_plan(&[], &[]);
    for leg in &warm(&plan).legs {
        let split = |how: &str| leg.lines[0].split_once(&format!(" K {how} than its cable"));
        let (sign, (said, rest)) = match (split("hotter"), split("cooler")) {
            (Some(parts), _) => (1.0, parts),
            (None, Some(parts)) => (-1.0, parts),
            (None, None) => panic!("{}", leg.lines[0]),
        };
        let by: f64 = said.rsplit(' ').next().unwrap().parse().unwrap();
        let shares = rest.split_once("(of this: ").expect("shares").1;
        let shares = shares.split_once(')').expect("an end").0;
        let tenths = |text: &str| (text.parse::<f64>().unwrap() * 10.0).round();
        let total: f64 = shares
            .split(", ")
            .filter_map(|share| share.split_once(" K ").map(|(k, _)| tenths(k)))
            .sum();
        assert!((total - sign * 10.0 * by).abs() < 0.5, "{}", leg.lines[0]);
    }
}

/// Switching a source off removes its share at that place, and up to a twentieth more: the other sources are then cooler, and lose less.
#[test]
fn a_source_that_is_switched_off_takes_its_share_away() {
    let places = |of_rows: Edits<'_>, at_m: &[f64]| -> Vec<f64> {
        three_way(&[], of_rows, |done| {
            let along = done.model.along(1.0).unwrap().expect("a state");
            let each = along.iter().zip(at_m);
            each.map(|(along, at_m)| {
                let off = |(z, _): &&(f64, f64)| (z - at_m).abs();
                let nearest = along
                    .core_degc
                    .iter()
                    .min_by(|a, b| off(a).total_cmp(&off(b)));
                nearest.expect("a place").1
            })
            .collect()
        })
    };
    let at_m: Vec<f64> = at_load(&[], &[]).iter().map(|at| at.joint_at_m).collect();
    let shares = three_way(&[], &[], |done| {
        let legs = done.legs.iter();
        legs.map(|of| of.whence.clone().expect("shares"))
            .collect::<Vec<_>>()
    });
    // A row cannot give it zero resistance.
    let no_bus = [(
        "resistance_microohm = 40\n",
        "resistance_microohm = 0.000001\n",
    )];
    let (before, after) = (places(&[], &at_m), places(&no_bus, &at_m));
    for ((before, after), shares) in before.iter().zip(&after).zip(&shares) {
        let taken = before - after;
        assert!(shares.bus_k > 0.0, "{shares:?}");
        let off = taken / shares.bus_k - 1.0;
        assert!((0.0..0.05).contains(&off), "{taken} {shares:?}");
    }
    // Most of leg C's rise comes from the bus and leg A, not from its own connector.
    let c = &shares[2];
    let total = c.total_k();
    assert!(c.connector_k.abs() < 0.02 * total, "{c:?}");
    let leg_a = c.legs_k.iter().find(|(leg, _)| *leg == 0).expect("leg A").1;
    assert!(c.bus_k > 0.3 * total && leg_a > 0.3 * total, "{c:?}");
}

/// The same joint, with twice the resistance of one connector by its row.
#[test]
fn twice_one_connector_s_resistance_is_that_of_a_row_with_twice_of_it() {
    // Leg B alone has this contact.
    let once = "resistance_ratio = 0.7\nsizes = [\"4/0 AWG\"]";
    let twice = "resistance_ratio = 1.4\nsizes = [\"4/0 AWG\"]";
    let (before, after) = (at_load(&[], &[]), at_load(&[], &[(once, twice)]));
    three_way(&[], &[], |done| {
        let own = done.legs[1].contacts.own_degc.expect("a state");
        assert!((own - after[1].joint_degc).abs() < 1e-6, "{own} {after:?}");
        for (index, of) in done.legs.iter().enumerate() {
            let (leg, k) = of.contacts.worst_k.expect("one");
            let more = after[index].joint_degc - before[index].joint_degc;
            // No connector is worse for it than the worst one.
            assert!(k > more - 1e-6, "{}: {k} {more}", of.leg);
            assert!(
                leg != 1 || (k - more).abs() < 1e-6,
                "{}: {k} {more}",
                of.leg
            );
        }
        // One contact, not all: leg C's own contact makes much less than the worst of the joint.
        let c = &done.legs[2].contacts;
        assert!(c.own_k.unwrap() < 0.3 * c.worst_k.unwrap().1, "{c:?}");
    });
}

/// The loads stated for one leg bring it to its limit when they are put into the job, and the currents meet.
#[test]
fn the_loads_of_one_leg_by_itself_bring_it_to_its_limit() {
    three_way(&[], &[], |done| {
        for (index, of) in done.legs.iter().enumerate() {
            let degc = of.limits_degc.0.expect("a limit");
            let own = of.own_load.as_ref().expect("three legs");
            let loads = &done.model.loads_a;
            let others: f64 = loads.iter().sum::<f64>() - loads[index];
            assert!((own.most_a - others).abs() < 1e-9);
            assert!(own.alone_a.is_none_or(|alone| alone <= others));
            let (by, load_a, its_a) = own.fed_a.expect("a load");
            assert!((its_a - loads[by] - (load_a - loads[index])).abs() < 1e-9);
            let state = done.model.at_currents(&{
                let mut loads = loads.clone();
                (loads[index], loads[by]) = (load_a, its_a);
                loads
            });
            let state = state.unwrap().expect("a state");
            assert!((state[index].joint_degc - degc).abs() < 0.01, "{state:?}");
            // Every leg that is then above a limit of its own is named.
            for (other, at) in state
                .iter()
                .enumerate()
                .filter(|(other, _)| *other != index)
            {
                let limit = done.legs[other].limits_degc.0.expect("a limit");
                let is_named = own.passed[1].contains(&other);
                assert_eq!(at.joint_degc > limit, is_named, "{}: {own:?}", of.leg);
            }
        }
    });
    let plan = three_way_plan(&[], &[]);
    let lines = &leg(&plan, "C").lines;
    assert!(
        lines
            .iter()
            .any(|line| line.contains("if all legs rise in proportion")),
        "{lines:?}"
    );
    assert!(
        lines.iter().any(|line| line.contains("this leg by itself")),
        "{lines:?}"
    );
    // Two legs carry one current.
    let straight = planned(&[], &[]);
    let lines = &leg(&straight, "A").lines;
    assert!(
        !lines.iter().any(|line| line.contains("this leg by itself")),
        "{lines:?}"
    );
}

/// 40 microohm read at 0 degC are 40 (1 + 20 · 0.00403...) at 20 degC: the warm side; a stated temperature counts.
#[test]
fn a_bus_without_a_temperature_is_taken_as_read_cold_and_that_is_said() {
    let nowhere = [(BUS, "resistance_microohm = 40")];
    let cold = [(BUS, "resistance_microohm = 40\nresistance_at = \"0 degC\"")];
    let hot = [(BUS, "resistance_microohm = 40\nresistance_at = \"70 degC\"")];
    let [stated, nowhere_at, cold_at, hot_at] =
        [&[][..], &nowhere, &cold, &hot].map(|rows| at_load(&[], rows)[2].joint_degc);
    assert!((nowhere_at - cold_at).abs() < 1e-9);
    assert!(
        cold_at > stated + 0.1 && stated > hot_at + 0.1,
        "{cold_at} {stated} {hot_at}"
    );
    let says = |rows: Edits<'_>| warm(&three_way_plan(&[], rows)).assumes.join("\n");
    assert!(says(&nowhere).contains("does not say at which temperature"));
    assert!(says(&hot).contains("at 70 degC by its row"));
}

/// A joint that fails for its heat names the sources of the heat.
#[test]
fn a_failing_temperature_names_where_its_heat_comes_from() {
    let more = [
        ("\nload = \"320 A\"", "\nload = \"960 A\""),
        ("\nload = \"200 A\"", "\nload = \"600 A\""),
        ("\nload = \"120 A\"", "\nload = \"360 A\""),
        ("\nemergency = \"420 A\"", "\nemergency = \"1260 A\""),
        ("\nemergency = \"260 A\"", "\nemergency = \"780 A\""),
        ("\nemergency = \"160 A\"", "\nemergency = \"480 A\""),
    ];
    let plan = three_way_plan(&more, &[]);
    assert_eq!(worst(&plan, "joint_load_heat"), "fail");
    let failed = plan
        .rulings
        .iter()
        .filter(|r| r.check == "joint_load_heat" && r.ruling == Outcome::Fail);
    for ruling in failed {
        let why = ruling.why.as_deref().unwrap_or_default();
        assert!(why.contains("of this:") && why.contains("the bus"), "{why}");
    }
}

/// Beyond its adapter a body closes on the cable as far as its relaxed bore lets it; a relaxed bore of 28 mm leaves still air round 25.6 mm.
#[test]
fn a_body_whose_bore_is_wider_than_the_cable_holds_still_air_beyond_its_adapter() {
    let joint_degc = |length: &str, relaxed: &str| {
        let length = format!("to = \"adapter-far\", distance = \"{length} mm\"");
        let relaxed = format!("relaxed_bore = \"{relaxed} mm\"");
        let edits = [
            ("to = \"adapter-far\", distance = \"85 mm\"", &length[..]),
            ("relaxed_bore = \"23.5 mm\"", &relaxed[..]),
        ];
        at_load(&[], &edits)[1].joint_degc
    };
    // Where the rubber closes on the cable it has the adapter's properties, and the length changes little.
    let closed = joint_degc("60", "23.5") - joint_degc("130", "23.5");
    let hollow = joint_degc("60", "28") - joint_degc("130", "28");
    assert!(closed.abs() < 0.1, "{closed}");
    assert!(hollow > closed.abs() + 0.05, "{hollow} {closed}");
}
