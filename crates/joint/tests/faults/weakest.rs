//! Heat in contacts, and the part of a leg with the smallest ratio of capacity to demand in a short circuit.

use super::{LARKSPUR, fault, found, planned};
use jointwright_joint::fault::Fault;
use jointwright_joint::plan::{Plan, ShieldDoc};

#[test]
fn three_milliohms_at_ten_kiloamperes_for_half_a_second_are_150_kilojoules() {
    let heat = fault(10e3, 0.5).heat_kj(3e-3);
    assert!((heat - 150.0).abs() < 1e-9, "{heat}");
    // The same fault three times, as with reclosing.
    let thrice = Fault {
        n_shots: 3,
        ..fault(10e3, 1.5)
    };
    assert!((thrice.heat_kj(3e-3) - 450.0).abs() < 1e-9);
}

#[test]
fn a_contact_above_its_paper_fails_and_says_its_heat() {
    let job = [
        ("\nshield_fault = \"2 kA\"", "\nshield_fault = \"10 kA\""),
        ("resistance = \"0.4 mohm\"", "resistance = \"3 mohm\""),
    ];
    let rulings = found(&planned(LARKSPUR, &job, &[]), "contact_heat", "B");
    assert_eq!(rulings[0].0, "fail");
    // The check asks for the readings of the other phases.
    assert_eq!(rulings.len(), 3);
    for (outcome, why) in &rulings[1..] {
        assert_eq!(outcome, "not-judged");
        assert!(why.contains("nobody has read"), "{why}");
    }
    assert!(rulings[0].1.contains("150 kJ"), "{rulings:?}");
    let silent = [("contact_greatest = \"1 mohm\"\n", "")];
    let rulings = found(&planned(LARKSPUR, &job, &silent), "contact_heat", "B");
    assert_eq!(rulings[0].0, "not-judged");
    assert!(
        rulings[0].1.contains("150 kJ")
            && rulings[0]
                .1
                .contains("What resistance may the connection of demo-bond-wires have?"),
        "{rulings:?}"
    );
    // Without the current there is no ruling on its heat, but the resistance is judged all the same.
    let no_current = [("\nshield_fault = \"2 kA\"", ""), job[1]];
    let rulings = found(&planned(LARKSPUR, &no_current, &[]), "contact_heat", "B");
    assert_eq!(rulings[0].0, "fail");
    assert!(rulings[0].1.contains("not known"), "{rulings:?}");
}

fn of_leg(plan: &Plan, mark: &str) -> ShieldDoc {
    let leg = plan.legs.iter().find(|leg| leg.mark == mark);
    leg.expect("the example has this leg").shield.clone()
}

#[track_caller]
fn carried(doc: &ShieldDoc, what: &str, expected_a: f64) {
    let part = doc
        .short_circuit
        .iter()
        .find(|part| part.what.contains(what));
    let carries_a = part.and_then(|part| part.carries_a).expect(what);
    assert!(
        (carries_a / expected_a - 1.0).abs() < 1e-4,
        "{what}: {carries_a}"
    );
}

#[test]
fn each_part_carries_what_its_own_paper_gives_it() {
    let doc = of_leg(&planned(LARKSPUR, &[], &[]), "B");
    // By the ICEA form for half a second, by hand: 211 600 cmil of aluminium from 130 to 250 degC, 45 197 cmil and 69 073 cmil of copper to 200 degC.
    carried(&doc, "conductor", 11_854.6);
    carried(&doc, "metallic shield", 3_044.5);
    carried(&doc, "bonding lead", 4_652.83);
    carried(&doc, "connector", 15e3);
    carried(&doc, "shield part", 4e3);
    // 1.19 times for the conductor; the wires 1.52.
    assert_eq!(doc.weakest.as_deref(), Some("conductor"));
    // Three shots: the current that a paper gives for half a second decreases for one and a half seconds by the root of three.
    let thrice = of_leg(
        &planned(LARKSPUR, &[("reclosing = 0", "reclosing = 2")], &[]),
        "B",
    );
    carried(&thrice, "shield part", 4e3 / 3.0_f64.sqrt());
    // A shorter time does not permit more current than the paper names.
    let short = [("\nfault_time = \"0.5 s\"", "\nfault_time = \"0.1 s\"")];
    carried(
        &of_leg(&planned(LARKSPUR, &short, &[]), "B"),
        "connector",
        15e3,
    );
}

#[test]
fn the_weakest_turns_with_what_is_asked_and_what_is_stated() {
    let weakest = |job: &[(&str, &str)], parts: &[(&str, &str)]| {
        of_leg(&planned(LARKSPUR, job, parts), "B").weakest.unwrap()
    };
    assert_eq!(
        weakest(&[("\nfault = \"10 kA\"", "\nfault = \"5 kA\"")], &[]),
        "metallic shield"
    );
    let part = [("fault = \"4 kA\"", "fault = \"2.1 kA\"")];
    assert_eq!(weakest(&[], &part), "shield part demo-bond-wires");
    let lead = [("area = \"35 mm2\"", "area = \"16 mm2\"")];
    assert_eq!(weakest(&lead, &[]), "bonding lead");
}

#[test]
fn what_is_not_stated_is_named_beside_the_weakest() {
    let open = [(" fault_greatest = \"200 degC\", count", " count")];
    let doc = of_leg(&planned(LARKSPUR, &open, &[]), "B");
    assert_eq!(doc.weakest.as_deref(), Some("conductor"));
    let line = doc.lines.iter().find(|line| line.contains("Weakest"));
    assert!(
        line.is_some_and(
            |line| line.contains("of those that are known; not known: metallic shield")
        ),
        "{:?}",
        doc.lines
    );
    let nothing = [
        ("\nfault = \"10 kA\"", ""),
        ("\nshield_fault = \"2 kA\"", ""),
    ];
    let doc = of_leg(&planned(LARKSPUR, &nothing, &[]), "B");
    assert_eq!(doc.weakest, None);
}
