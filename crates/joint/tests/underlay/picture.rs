//! Rulings on the layer under each part, against a picture of the layers painted by brute force, on 500 random catalogues.
//!
//! The picture knows the windows and the numbers of the rows, but not the program's comparison: it sets every plane to the ends and the middle of its window, paints the layers along the leg, and examines every stretch between two changes.
#![allow(
    clippy::disallowed_methods,
    reason = "the environment says whether the run is a long one"
)]

use crate::cases::{accepted, named, read};
use jointwright_joint::judge::judge_unsolved;
use jointwright_joint::limit::{Outcome, Ruling};
use jointwright_joint::plane::Plane;
use std::collections::BTreeMap;
use std::fmt::Write as _;

/// Names of layers in files, from the conductor end outward.
const LAYERS: [&str; 5] = [
    "conductor",
    "insulation",
    "insulation-screen",
    "metallic-shield",
    "jacket",
];

/// A seeded generator: the same numbers in every run.
struct Dice(u64);

impl Dice {
    fn below(&mut self, n: u64) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        (z ^ (z >> 31)) % n
    }

    /// Tenths of a millimetre from one to another.
    fn tenths(&mut self, least_mm: u64, greatest_mm: u64) -> i64 {
        (least_mm * 10 + self.below((greatest_mm - least_mm) * 10 + 1)) as i64
    }

    fn one_in(&mut self, n: u64) -> bool {
        self.below(n) == 0
    }

    fn layers(&mut self) -> Vec<&'static str> {
        let mut layers = LAYERS.to_vec();
        layers.retain(|_| self.one_in(4));
        layers
    }
}

/// Random lengths of one joint, tenths of a millimetre: distance, minus, plus.
struct Drawn {
    lengths: BTreeMap<&'static str, [i64; 3]>,
    mouth_over: &'static str,
    has_adapter: bool,
    may_lie_on: BTreeMap<&'static str, Vec<&'static str>>,
}

fn drawn(dice: &mut Dice) -> Drawn {
    let mut lengths = BTreeMap::new();
    let mut add = |dice: &mut Dice, name: &'static str, least: u64, greatest: u64, play: u64| {
        let distance = dice.tenths(least, greatest);
        let play = |dice: &mut Dice| dice.tenths(0, play).min(distance);
        lengths.insert(name, [distance, play(dice), play(dice)]);
    };
    add(dice, "sleeve", 60, 120, 0);
    add(dice, "stop", 2, 10, 0);
    add(dice, "gap", 0, 2, 0);
    add(dice, "electrode", 40, 130, 0);
    add(dice, "body", 110, 330, 0);
    add(dice, "insulation", 3, 6, 3);
    add(dice, "screen", 80, 150, 4);
    add(dice, "shield", 30, 150, 6);
    add(dice, "jacket", 15, 80, 6);
    add(dice, "seal", 30, 150, 6);
    add(dice, "seal-length", 60, 400, 0);
    add(dice, "contact", 0, 12, 6);
    add(dice, "contact-length", 3, 70, 0);
    add(dice, "adapter", 0, 8, 6);
    add(dice, "adapter-length", 20, 110, 0);
    let shrinks = [("insulation-shrinks", 4), ("jacket-shrinks", 12)];
    for (name, most) in shrinks {
        if dice.one_in(2) {
            add(dice, name, 0, most, 4);
        }
    }
    let mut may_lie_on = BTreeMap::new();
    for part in ["body", "adapter", "contact", "seal"] {
        may_lie_on.insert(part, dice.layers());
    }
    Drawn {
        lengths,
        mouth_over: LAYERS[2 + dice.below(3) as usize],
        has_adapter: dice.one_in(2),
        may_lie_on,
    }
}

fn mm(tenths: i64) -> String {
    format!("{}.{} mm", tenths / 10, tenths % 10)
}

impl Drawn {
    fn link(&self, from: &str, to: &str, name: &str) -> String {
        let [distance, minus, plus] = self.lengths[name].map(mm);
        format!(
            "  {{ from = \"{from}\", to = \"{to}\", distance = \"{distance}\", minus = \"{minus}\", plus = \"{plus}\" }},\n"
        )
    }

    fn part(&self, from: &str, to: &str, name: &str) -> String {
        let distance = mm(self.lengths[name][0]);
        format!("  {{ from = \"{from}\", to = \"{to}\", distance = \"{distance}\" }},\n")
    }

    fn shrink(&self, from: &str, name: &str) -> String {
        if self.lengths.contains_key(name) {
            self.link(from, &format!("{from}-shrunk-back"), name)
        } else {
            String::new()
        }
    }

    fn row(&self, kind: &str, id: &str, fields: &str, links: &str) -> String {
        format!(
            "[[{kind}]]\nid = \"{id}\"\nname = \"Invented {id}\"\ndemonstration = true\ninstructions = {{ paper = \"{id}\", revision = \"1\" }}\n{fields}\nlink = [\n{links}]\n\n"
        )
    }

    fn may(&self, part: &str) -> String {
        format!("may_lie_on = {:?}", self.may_lie_on[part])
    }

    /// The rows as a catalogue file.
    fn catalogue(&self) -> String {
        let mut text = "about = \"Invented parts with random lengths\"\n\n".to_owned();
        let mut row = |kind: &str, id: &str, fields: &str, links: &str| {
            text += &self.row(kind, id, fields, links);
        };
        let fields = format!(
            "kinds = [\"straight\"]\nsystem_greatest = \"15.5 kV\"\nearthings = [\"solid\"]\nlength = \"{}\"\nparts = [\"cover-adapter\"]\nfits_adapter = true\nfits = [{{ at = \"bore\", over = \"insulation\", least = \"10 mm\", greatest = \"40 mm\" }}, {{ at = \"mouth\", over = \"{}\", least = \"10 mm\", greatest = \"60 mm\" }}]\n{}",
            mm(2 * self.lengths["body"][0]),
            self.mouth_over,
            self.may("body")
        );
        let links = [
            "  { from = \"connector-centre\", to = \"body-centre\", distance = \"0 mm\", minus = \"3 mm\", plus = \"3 mm\" },\n".to_owned(),
            self.part("body-centre", "electrode-end", "electrode"),
            self.part("body-centre", "body-end", "body"),
            self.link("connector-mouth", "insulation-end", "insulation"),
            self.shrink("insulation-end", "insulation-shrinks"),
            self.link("conductor-end", "insulation-screen-edge", "screen"),
        ];
        row("body", "cover-body", &fields, &links.concat());
        let fields = format!(
            "means = \"shear-bolt\"\nends = 2\nsizes = [\"350 kcmil\"]\nmetals = [\"copper\"]\nstrandings = [\"compact\"]\noutside_diameter = \"28 mm\"\nlength = \"{}\"\nstop = \"{}\"\ngap_greatest = \"{}\"",
            mm(self.lengths["sleeve"][0]),
            mm(self.lengths["stop"][0]),
            mm(self.lengths["gap"][0])
        );
        row("connector", "cover-sleeve", &fields, "");
        let fields = format!(
            "leaves_bare = true\nsystem_greatest = \"15.5 kV\"\noutside_least = \"30 mm\"\noutside_greatest = \"36 mm\"\nfits = [{{ at = \"bore\", over = \"insulation\", least = \"10 mm\", greatest = \"40 mm\" }}]\n{}",
            self.may("adapter")
        );
        let links = self.link("insulation-end", "adapter-near", "adapter")
            + &self.part("adapter-near", "adapter-far", "adapter-length");
        row("adapter", "cover-adapter", &fields, &links);
        let fields = format!(
            "shields = [\"lapped-tape\"]\nbondings = [\"solid\"]\n{}",
            self.may("contact")
        );
        let links = self.link("insulation-screen-edge", "metallic-shield-edge", "shield")
            + &self.link("metallic-shield-edge", "shield-contact-near", "contact")
            + &self.part(
                "shield-contact-near",
                "shield-contact-far",
                "contact-length",
            );
        row("shield_part", "cover-bond", &fields, &links);
        let fields = format!(
            "fits = [{{ at = \"seal\", over = \"jacket\", least = \"10 mm\", greatest = \"60 mm\" }}]\n{}",
            self.may("seal")
        );
        let links = self.link("metallic-shield-edge", "jacket-edge", "jacket")
            + &self.shrink("jacket-edge", "jacket-shrinks")
            + &self.link("jacket-edge", "seal-end", "seal")
            + &self.part("seal-start", "seal-end", "seal-length");
        row("seal", "cover-seal", &fields, &links);
        text
    }

    fn job(&self) -> String {
        let job = named("body-over-the-jacket").job;
        let job = job.replace("[\"demonstration\", \"parts.toml\"]", "[\"parts.toml\"]");
        let mut out = String::new();
        for line in job.lines().filter(|l| !l.starts_with("consumables")) {
            writeln!(out, "{line}").expect("a string takes every line");
            if self.has_adapter && line.starts_with("body = ") {
                out += "adapter = \"cover-adapter\"\n";
            }
        }
        out
    }
}

/// Half-nanometres from the conductor end.
type Place = i64;

/// A part on one leg: the planes between which it lies, and the layers on which it may lie.
struct Part {
    check: &'static str,
    may_lie_on: Vec<&'static str>,
}

/// One leg as the program places it, for the picture.
struct Leg<'d> {
    drawn: &'d Drawn,
    /// Window of each plane that the crew sets.
    windows: BTreeMap<&'static str, [Place; 2]>,
    /// The electrode's end, from the body's end.
    electrode: Place,
}

const SET: [(&str, Plane); 6] = [
    ("insulation", Plane::InsulationEnd),
    ("insulation-screen", Plane::ScreenEdge),
    ("metallic-shield", Plane::ShieldEdge),
    ("jacket", Plane::JacketEdge),
    ("body", Plane::BodyEnd),
    ("seal", Plane::SealEnd),
];

/// Half-nanometres in a tenth of a millimetre.
const TENTH: Place = 200_000;

/// Way of painting the picture: correct, or with a mistake that a twin makes on purpose.
#[derive(Clone, Copy, PartialEq)]
enum Painted {
    AtEveryPlace,
    InTheMiddleOfTheWindows,
    WithoutShrinking,
}

impl Leg<'_> {
    /// Whether a part can lie on a forbidden layer, by the picture.
    fn lies_wrongly(&self, part: &Part, painted: Painted) -> bool {
        let choices: Vec<Vec<Place>> = SET
            .iter()
            .map(|(name, _)| {
                let [least, greatest] = self.windows[name];
                let middle = least + (greatest - least) / 2;
                match painted {
                    Painted::InTheMiddleOfTheWindows => vec![middle],
                    _ if is_of(part.check, name) => vec![least, middle, greatest],
                    _ => vec![middle],
                }
            })
            .collect();
        let mut picked = vec![0_usize; SET.len()];
        loop {
            let set: BTreeMap<&str, Place> = SET
                .iter()
                .enumerate()
                .map(|(i, (name, _))| (*name, choices[i][picked[i]]))
                .collect();
            if self.lies_wrongly_at(part, &set, painted) {
                return true;
            }
            let Some(next) = (0..SET.len()).find(|i| picked[*i] + 1 < choices[*i].len()) else {
                return false;
            };
            picked[next] += 1;
            picked[..next].fill(0);
        }
    }

    fn play(&self, name: &str) -> [Place; 3] {
        let [distance, minus, plus] = self.drawn.lengths[name];
        [distance - minus, distance, distance + plus].map(|tenths| tenths * TENTH)
    }

    fn lies_wrongly_at(&self, part: &Part, set: &BTreeMap<&str, Place>, painted: Painted) -> bool {
        let shrunk = |name: &str| -> Vec<Place> {
            let shrinks = self.drawn.lengths.contains_key(name);
            let mut all = vec![0];
            if shrinks && painted != Painted::WithoutShrinking {
                all.extend(self.play(name));
            }
            all
        };
        let length = |name: &str| self.drawn.lengths[name][0] * TENTH;
        let stretches: Vec<[Place; 2]> = match part.check {
            "body_layer" => vec![[-1_000 * TENTH, set["body"]]],
            "electrode_layer" => vec![[-1_000 * TENTH, set["body"] + self.electrode]],
            "adapter_layer" => {
                let near = self.play("adapter").map(|play| set["insulation"] + play);
                near.map(|near| [near, near + length("adapter-length")])
                    .to_vec()
            }
            "contact_layer" => {
                let near = self
                    .play("contact")
                    .map(|play| set["metallic-shield"] + play);
                near.map(|near| [near, near + length("contact-length")])
                    .to_vec()
            }
            _ => {
                let begin = (set["seal"] - length("seal-length")).max(set["body"]);
                vec![[begin, set["seal"]]]
            }
        };
        for insulation in shrunk("insulation-shrinks") {
            for jacket in shrunk("jacket-shrinks") {
                let edges = [
                    set["insulation"] + insulation,
                    set["insulation-screen"],
                    set["metallic-shield"],
                    set["jacket"] + jacket,
                ];
                if stretches.iter().any(|s| is_wrong(part, *s, edges)) {
                    return true;
                }
            }
        }
        false
    }
}

/// Whether a plane matters to a check; the others stay in the middle of their windows.
fn is_of(check: &str, plane: &str) -> bool {
    match plane {
        "body" => matches!(check, "body_layer" | "electrode_layer" | "seal_layer"),
        "seal" => check == "seal_layer",
        _ => true,
    }
}

/// Whether some place of a stretch lies on a forbidden layer: one place between every two changes.
fn is_wrong(part: &Part, [begin, end]: [Place; 2], edges: [Place; 4]) -> bool {
    let mut changes: Vec<Place> = edges
        .into_iter()
        .filter(|edge| begin < *edge && *edge < end)
        .collect();
    changes.extend([begin, end]);
    changes.sort_unstable();
    changes
        .windows(2)
        .filter(|pair| pair[0] < pair[1])
        .any(|pair| {
            // Twice the middle, so that it is whole.
            let twice = pair[0] + pair[1];
            let outermost = edges.iter().rposition(|edge| 2 * edge < twice);
            let layer = LAYERS[outermost.map_or(0, |index| index + 1)];
            !part.may_lie_on.contains(&layer)
        })
}

/// Stretches and layers of each part, by the rows.
fn parts(drawn: &Drawn) -> Vec<Part> {
    let with = |check: &'static str, part: Option<&str>, own: &[&'static str]| {
        let mut may_lie_on = part.map_or(Vec::new(), |part| drawn.may_lie_on[part].clone());
        may_lie_on.extend(own);
        Part { check, may_lie_on }
    };
    let mut parts = vec![
        with(
            "body_layer",
            Some("body"),
            &["conductor", "insulation", drawn.mouth_over],
        ),
        with("electrode_layer", None, &["conductor", "insulation"]),
        with("contact_layer", Some("contact"), &["metallic-shield"]),
        with("seal_layer", Some("seal"), &["jacket"]),
    ];
    if drawn.has_adapter {
        parts.push(with("adapter_layer", Some("adapter"), &["insulation"]));
    }
    parts
}

/// Differences between the rulings and the picture; counts of parts that lie wrongly and rightly.
fn differences(drawn: &Drawn, painted: Painted, counts: &mut [usize; 2]) -> Vec<String> {
    let catalogue = drawn.catalogue();
    let order = read(
        &drawn.job(),
        &[("parts.toml".to_owned(), catalogue.clone())],
    );
    let order = accepted(order, &catalogue);
    let judged = accepted(judge_unsolved(&order), &catalogue);
    let leg = &judged.inputs.legs[0];
    let window = |plane: Plane| {
        let cut = leg.cutback.cuts.iter().find(|c| c.plane == plane)?;
        let window = cut.window?;
        Some([window.least().half_nm(), window.greatest().half_nm()])
    };
    let windows: BTreeMap<&str, [Place; 2]> = SET
        .iter()
        .filter_map(|(name, plane)| Some((*name, window(*plane)?)))
        .collect();
    if windows.len() < SET.len() {
        // Play has used up a window: the plan says so, and there is nothing to paint.
        return Vec::new();
    }
    let nominal = |plane| leg.cutback.nominal(plane).expect("it is placed").half_nm();
    let leg = Leg {
        drawn,
        windows,
        electrode: nominal(Plane::ElectrodeEnd) - nominal(Plane::BodyEnd),
    };
    let mut different = Vec::new();
    for part in parts(drawn) {
        let is_wrong = leg.lies_wrongly(&part, painted);
        counts[usize::from(!is_wrong)] += 1;
        let of_check = |r: &&Ruling| r.check == part.check && r.subject.leg.as_deref() == Some("A");
        let outcomes: Vec<Outcome> = judged
            .rulings
            .iter()
            .filter(of_check)
            .map(|r| r.outcome)
            .collect();
        let fails = outcomes.contains(&Outcome::Fail);
        if fails != is_wrong || outcomes.contains(&Outcome::NotJudged) {
            different.push(format!(
                "{}: {outcomes:?}, and the picture says {is_wrong}\n{catalogue}",
                part.check
            ));
        }
    }
    different
}

fn n_tries() -> usize {
    let is_long = std::env::var_os("JOINTWRIGHT_LONG").is_some();
    if is_long { 20_000 } else { 500 }
}

#[test]
fn no_part_lies_on_a_layer_that_no_row_allows_without_a_fail_and_none_fails_that_does_not() {
    let mut dice = Dice(16);
    let mut counts = [0, 0];
    for _ in 0..n_tries() {
        let different = differences(&drawn(&mut dice), Painted::AtEveryPlace, &mut counts);
        assert!(different.is_empty(), "{}", different.join("\n"));
    }
    // Both outcomes are frequent: neither side of the comparison is empty.
    let [wrong, right] = counts;
    assert!(wrong > n_tries() / 2 && right > n_tries() / 2, "{counts:?}");
}

#[test]
fn a_picture_that_forgets_windows_or_shrinking_is_found() {
    for painted in [Painted::InTheMiddleOfTheWindows, Painted::WithoutShrinking] {
        let mut dice = Dice(16);
        let found = (0..200).any(|_| {
            let drawn = drawn(&mut dice);
            !differences(&drawn, painted, &mut [0, 0]).is_empty()
        });
        assert!(found);
    }
}
