//! Answered: a fact that an ask promises to settle is settled when it is answered.
//!
//! The test gives each fact that it can write mechanically, plausibly, to the job or to a copy of the catalogue, and judges the joint again.
//! The facts without a mechanical answer stand in `UNANSWERED`, with the reason.

#![allow(
    clippy::disallowed_methods,
    reason = "the environment says whether the run is a long one"
)]

use super::{STARTER, without_ask};
use crate::cases::{CASES, Case, EXAMPLES, accepted, read};
use crate::laws::toml_text::{row, rows, text, tree};
use jointwright_joint::cable::{Layer, Words};
use jointwright_joint::job::Order;
use jointwright_joint::judge::{Judged, judge, judge_unsolved};
use jointwright_joint::limit::fact_table::FACTS;
use jointwright_joint::limit::{Ask, Outcome, Ruling};
use jointwright_joint::plane::Plane;
use std::collections::{BTreeMap, BTreeSet};
use toml::{Table, Value};

/// Facts that no test can make up, with the reason.
const UNANSWERED: &[(&str, &str)] = &[
    (
        "word",
        "a word of a named engineer closes a question and never settles it",
    ),
    (
        "inside",
        "the inside of a body is dozens of numbers that have to agree with its planes",
    ),
    ("taper", "the same of its tapered plug"),
    (
        "run-surrounding",
        "asked of a run of cable, which has no plan; its own tests ask it",
    ),
    ("route", "the same"),
    (
        "rubber",
        "relaxed diameters have to agree with the ranges of the part",
    ),
    (
        "link",
        "which plane is meant, and from where, is the part's own drawing",
    ),
    ("range", "a range decides which cables the part takes"),
    ("part", "which part is chosen decides everything after it"),
    ("bus", "so does the bus"),
    (
        "cable-papers",
        "a cable without a row needs all its diameters",
    ),
    ("shield-made", "the shield's make decides its kind"),
    ("continuity", "a second reading may be a question again"),
    (
        "rubber-heat",
        "a row whose stiffness would vanish needs another row",
    ),
];

/// A job and its catalogues as trees, to write answers into.
struct Files {
    job: Table,
    catalogues: Vec<(String, Table)>,
}

impl Files {
    fn of(case: Case) -> Files {
        let catalogues = case.catalogues().into_iter();
        Files {
            job: tree(case.job),
            catalogues: catalogues.map(|(name, text)| (name, tree(&text))).collect(),
        }
    }

    #[track_caller]
    fn order(&self, what: &str) -> Order {
        let texts: Vec<(String, String)> = self
            .catalogues
            .iter()
            .map(|(name, table)| (name.clone(), text(table, None)))
            .collect();
        accepted(read(&text(&self.job, None), &texts), what)
    }

    fn date(&self) -> String {
        self.job["job"]["date"]
            .as_datetime()
            .expect("a day")
            .to_string()
    }

    /// Adds a row, written as TOML, to a list of the job.
    fn add(&mut self, list: &str, row: &str) {
        let row: Table = row.parse().unwrap_or_else(|why| panic!("{row}: {why}"));
        let rows = self.job.entry(list).or_insert(Value::Array(Vec::new()));
        rows.as_array_mut().expect("rows").push(Value::Table(row));
    }

    fn by(&self) -> String {
        format!("by = \"A. Tester\"\ndate = {}", self.date())
    }

    /// Sets a field of a table of the job.
    fn set(&mut self, table: &str, name: &str, value: impl Into<Value>) {
        let table = self.job.entry(table).or_insert(Value::Table(Table::new()));
        table
            .as_table_mut()
            .expect("a table")
            .insert(name.to_owned(), value.into());
    }

    fn leg(&mut self, id: &str) -> &mut Table {
        row(&mut self.job, "leg", id)
    }

    fn cable(&mut self, id: &str) -> &mut Table {
        self.leg(id)["cable"].as_table_mut().expect("a cable")
    }

    /// Sets a field of a row of a catalogue, whatever kind of part it is.
    fn part(&mut self, id: &str, change: impl Fn(&mut Table)) {
        for (_, catalogue) in &mut self.catalogues {
            for (_, kind) in catalogue.iter_mut() {
                let parts = kind.as_array_mut().into_iter().flatten();
                let parts = parts.filter_map(Value::as_table_mut);
                parts
                    .filter(|part| part.get("id").and_then(Value::as_str) == Some(id))
                    .for_each(&change);
            }
        }
    }

    /// Changes the rows of a list that belong to an end.
    fn of_end(&mut self, list: &str, end: &str, change: impl FnMut(&mut Table)) {
        let (leg, phase) = split(end);
        rows(&mut self.job, list)
            .filter(|row| {
                row["leg"].as_str() == Some(&leg) && row["phase"].as_integer() == Some(phase)
            })
            .for_each(change);
    }
}

fn split(end: &str) -> (String, i64) {
    let (leg, phase) = end.split_at(end.len() - 1);
    (
        leg.to_owned(),
        phase.parse().unwrap_or_else(|_| panic!("{end} is no end")),
    )
}

/// End and layer of "A1 over the insulation".
fn end_and_layer(of: &str) -> (&str, Layer) {
    let (end, layer) = of.split_once(" over the ").expect("an end and a layer");
    let is = |l: &Layer| {
        [Words::Us, Words::Iec]
            .iter()
            .any(|words| l.name(*words) == layer)
    };
    (end, Layer::ALL.into_iter().find(is).expect("a layer"))
}

/// Four diameters around one end, near the values of its papers, at a temperature within the range of the place.
fn read_around(files: &mut Files, order: &Order, of: &str) {
    let (end, layer) = end_and_layer(of);
    let (leg, phase) = split(end);
    let cable = &order
        .job
        .legs
        .iter()
        .find(|l| l.id == leg)
        .expect("a leg")
        .cable;
    let over = layer.file_name();
    let before: Vec<String> = rows(&mut files.job, "reading")
        .filter(|r| r["leg"].as_str() == Some(&leg) && r["over"].as_str() == Some(over))
        .map(|r| r["values"][0].as_str().expect("a length").to_owned())
        .collect();
    let expected = cable.diameter_over(layer).expect("a band").nominal;
    let value = before
        .first()
        .cloned()
        .unwrap_or_else(|| expected.exact_mm());
    let degc = order.job.place.ambient_degc.0.unwrap_or(15.0);
    let is_same = |r: &Value| {
        r["leg"].as_str() == Some(&leg)
            && r["phase"].as_integer() == Some(phase)
            && r["over"].as_str() == Some(over)
    };
    if let Some(list) = files.job.get_mut("reading").and_then(Value::as_array_mut) {
        list.retain(|r| !is_same(r));
    }
    let values = vec![format!("\"{value}\""); 4].join(", ");
    files.add("reading", &format!("leg = \"{leg}\"\nphase = {phase}\nover = \"{over}\"\ninstrument = \"calliper\"\nerror = \"0.05 mm\"\ntemperature = \"{degc} degC\"\nvalues = [{values}]"));
}

/// Writes the answer to one ask; false if it has no mechanical answer.
fn answer(files: &mut Files, order: &Order, ask: &Ask) -> bool {
    let of = crate::cases::of_words(ask);
    let of = of.as_str();
    crew(files, order, ask.fact.key, of)
        || owner(files, order, ask.fact.key, of)
        || makers(files, order, ask.fact.key, of)
}

fn crew(files: &mut Files, order: &Order, key: &str, of: &str) -> bool {
    let date = files.date();
    match key {
        "reading" => read_around(files, order, of),
        "reading-temperature" | "reading-warmed" => {
            let (end, layer) = end_and_layer(of);
            let degc = order.job.place.ambient_degc.0.unwrap_or(20.0);
            files.of_end("reading", end, |row| {
                if row["over"].as_str() == Some(layer.file_name()) {
                    row.insert("temperature".to_owned(), format!("{degc} degC").into());
                }
            });
        }
        "reading-closer" => {
            let end = of.replace("leg ", "").replace(", phase ", "");
            files.of_end("reading", &end, |row| {
                row.insert("error".to_owned(), "0.0001 mm".into());
            });
        }
        "room-error" => put(files.leg(of), "room_error", "0.001 mm"),
        "straight" | "slack" | "park-room" => {
            let name = key.replace('-', "_");
            put(files.leg(of), &name, "3000 mm");
            put_new(files.leg(of), "room_error", "1 mm");
        }
        "bend" => {
            put(files.leg(of), "bend_radius", "3000 mm");
            put_new(files.leg(of), "room_error", "1 mm");
        }
        "moisture" => {
            let (leg, phase) = split(of);
            for place in ["conductor", "shield"] {
                files.add("moisture", &format!("leg = \"{leg}\"\nphase = {phase}\nin = \"{place}\"\nfound = \"dry\"\nhow = \"a test\"\nby = \"A. Tester\"\ndate = {date}"));
            }
        }
        "jacket" => {
            let (leg, phase) = split(of);
            files.add(
                "surface",
                &format!(
                    "leg = \"{leg}\"\nphase = {phase}\njacket = \"smooth\"\nby = \"A. Tester\""
                ),
            );
        }
        "trial-press" => {
            let id = of.split_once(" on ").expect("a connector").0;
            let leg = order
                .job
                .legs
                .iter()
                .find(|l| l.parts.connector.as_deref() == Some(id));
            let conductor = leg.expect("a leg").cable.conductor;
            let part = order.catalogue.connector(id).expect("a row");
            let before = part.length.exact_mm();
            let after = (part.length + jointwright_units::Length::MM * 4).exact_mm();
            let (die, presses) = (
                part.ends[0].die.clone().unwrap_or("any".to_owned()),
                part.ends[0].presses.unwrap_or(4),
            );
            let metal = conductor.metal.name(Words::Iec);
            files.add("trial_press", &format!("connector = \"{id}\"\nsize = \"{}\"\nmetal = \"{metal}\"\ntool = \"a press\"\ndie = \"{die}\"\npresses = {presses}\nlength_before = \"{before}\"\nlength_after = [\"{after}\"]\nerror = \"0.1 mm\"\nby = \"A. Tester\"\ndate = {date}", conductor.size));
        }
        "lot" => {
            let (end, rest) = of.split_once(' ').expect("an end");
            let (leg, phase) = split(end);
            let part = rest.rsplit_once(' ').expect("a part").0.replace(' ', "_");
            files.add("lot", &format!("leg = \"{leg}\"\nphase = {phase}\npart = \"{part}\"\nlot = \"T\"\nmade = {date}\nexpanded = {date}\nstore_least = \"15 degC\"\nstore_greatest = \"20 degC\"\nno_expiry = true"));
        }
        "count" => {
            let (leg, phase) = split(of);
            let shield = &order
                .job
                .legs
                .iter()
                .find(|l| l.id == leg)
                .expect("a leg")
                .cable
                .shield;
            let n = shield.elements().expect("wires or straps");
            files.add(
                "count",
                &format!("leg = \"{leg}\"\nphase = {phase}\nshield_elements = {n}"),
            );
        }
        "label-date" => {
            let (end, rest) = of.split_once(' ').expect("an end");
            let part = rest.rsplit_once(' ').expect("a part").0.replace(' ', "_");
            files.of_end("lot", end, |row| {
                if row["part"].as_str() == Some(&part) {
                    row.insert("no_expiry".to_owned(), true.into());
                }
            });
        }
        "lot-day" | "lot-store" => {
            let (end, rest) = of.split_once(' ').expect("an end");
            let part = rest.rsplit_once(' ').expect("a part").0.replace(' ', "_");
            let day: Value = files.job["job"]["date"].clone();
            files.of_end("lot", end, |row| {
                if row["part"].as_str() != Some(&part) {
                    return;
                }
                if key == "lot-day" {
                    row.insert("made".to_owned(), day.clone());
                    row.insert("expanded".to_owned(), day.clone());
                } else {
                    put_new(row, "store_least", "15 degC");
                    put_new(row, "store_greatest", "20 degC");
                }
            });
        }
        _ => return false,
    }
    true
}

fn put(table: &mut Table, name: &str, value: &str) {
    table.insert(name.to_owned(), value.into());
}

fn put_new(table: &mut Table, name: &str, value: &str) {
    table.entry(name.to_owned()).or_insert(value.into());
}

fn each_leg(files: &mut Files, order: &Order, change: impl Fn(&mut Table)) {
    for leg in &order.job.legs {
        change(files.leg(&leg.id));
    }
}

fn owner(files: &mut Files, order: &Order, key: &str, of: &str) -> bool {
    let by = files.by();
    let clearing_s = order.job.system.clearing_time_s.unwrap_or(0.0).max(0.5);
    match key {
        "confirmation" => files.add("confirmation", &format!("key = \"{of}\"\nedition = \"2020\"\n{by}")),
        "cable" => {
            let (leg, _) = split(of);
            let read: BTreeMap<String, String> = rows(&mut files.job, "reading")
                .filter(|r| r["leg"].as_str() == Some(&leg))
                .map(|r| {
                    let value = r["values"][0].as_str().expect("a length");
                    (r["over"].as_str().expect("a layer").to_owned(), value.to_owned())
                })
                .collect();
            let papers = read.into_iter().map(|(over, value)| {
                let at = jointwright_units::Length::parse_diameter(&value).expect("a length");
                let by = jointwright_units::Length::MM * 2;
                let row = format!("over = \"{over}\"\nleast = \"{}\"\ngreatest = \"{}\"", (at - by).exact_mm(), (at + by).exact_mm());
                Value::Table(row.parse().expect("a row"))
            });
            files.cable(&leg).insert("papers".to_owned(), papers.collect::<Vec<_>>().into());
        }
        "window" => {
            let (plane, leg) = of.rsplit_once(" of leg ").expect("a plane of a leg");
            let tongue = jointwright_wording::Tongue::of(&order.job);
            let is = |p: &Plane| tongue.plane(*p) == plane;
            let plane = Plane::ALL.iter().copied().find(is).expect("a plane").name();
            files.add("owner_window", &format!("plane = \"{plane}\"\nleg = \"{leg}\"\nminus = \"2 mm\"\nplus = \"2 mm\"\n{by}"));
        }
        "jacket-shrinks" => files.add("owner_link", &format!("leg = \"{of}\"\nfrom = \"jacket-edge\"\nto = \"jacket-edge-shrunk-back\"\ndistance = \"0 mm\"\nminus = \"0 mm\"\nplus = \"2 mm\"\n{by}")),
        "limit" => {
            let bound = match of {
                "insulation_ovality" => "greatest = \"1 mm\"",
                "standing_voltage" => "greatest_v = 60.0",
                "shield_continuity" => "greatest_ohm_per_km = 50.0",
                _ => "least = \"1 mm\"",
            };
            files.add("owner_limit", &format!("check = \"{of}\"\n{bound}\n{by}"));
        }
        "conductor-greatest" => files.set("duty", "conductor_greatest", "130 degC"),
        "load" => files.set("duty", "load", "100 A"),
        "emergency" => {
            let load = order.job.duty.load_a.unwrap_or(100.0);
            files.set("duty", "emergency", format!("{} A", load * 1.1));
            files.set("duty", "emergency_time", "4 h");
            each_leg(files, order, |leg| {
                if let Some(load) = leg.get("load").and_then(Value::as_str) {
                    let amperes: f64 = load.trim_end_matches(" A").parse().expect("amperes");
                    put(leg, "emergency", &format!("{} A", amperes * 1.1));
                }
            });
        }
        "fault" | "shield-fault" => {
            let name = key.replace('-', "_");
            let duty = files.job["duty"].as_table_mut().expect("a table");
            put_new(duty, &name, "0.5 kA");
            put(duty, &format!("{name}_time"), &format!("{clearing_s} s"));
            duty.entry("reclosing").or_insert(0.into());
        }
        "clearing-time" => files.set("system", "clearing_time", "0.5 s"),
        "ambient-least" => files.set("place", "ambient_least", "0 degC"),
        "ambient-greatest" => files.set("place", "ambient_greatest", "30 degC"),
        "surrounding" => {
            let leg = of.trim_start_matches("leg ");
            files.add("surrounding", &format!("leg = \"{leg}\"\nwhat = \"still air\"\ntemperature = \"30 degC\"\nfilm_w_per_m2k = 8.0\nfrom = \"made up\"\n{by}"));
        }
        "far-end" => {
            let leg = files.leg(of);
            leg.insert("far_end_bonded".to_owned(), true.into());
            put(leg, "bonding", "solid");
            put_new(leg, "formation", "trefoil");
            put_new(leg, "spacing", "90 mm");
        }
        "run" => {
            let leg = files.leg(of);
            put(leg, "formation", "trefoil");
            put(leg, "spacing", "90 mm");
            put(leg, "run_length", "200 m");
        }
        "spare-cuts" => {
            files.leg(of).insert("spare_cuts".to_owned(), 1.into());
        }
        "parks" => {
            let first = order.job.legs[0].id.clone();
            files.leg(&first).insert("parks".to_owned(), true.into());
        }
        "lead" => {
            let leg = files.leg(of);
            put(leg["lead"].as_table_mut().expect("a lead"), "fault_greatest", "200 degC");
        }
        _ => return false,
    }
    true
}

fn makers(files: &mut Files, order: &Order, key: &str, of: &str) -> bool {
    let heat = [("resistivity_k_m_per_w", 3.5), ("capacity_mj_per_m3k", 2.4)];
    let number = |table: &mut Table, name: &str, value: f64| {
        table.insert(name.to_owned(), value.into());
    };
    match key {
        "bend-least" => put(files.cable(of), "bend_radius_least", "100 mm"),
        "expansion" => {
            number(files.cable(of), "expansion_per_k_least", 1.5e-4);
            number(files.cable(of), "expansion_per_k_greatest", 2.5e-4);
        }
        "permittivity" => number(files.cable(of), "permittivity", 2.3),
        "shield-papers" => {
            let shield = files.cable(of)["shield"].as_table_mut().expect("a shield");
            put_new(shield, "metal", "copper");
            put_new(shield, "fault_greatest", "200 degC");
        }
        "cable-heat" => {
            for (name, value) in [("insulation_k_m_per_w", 3.5), ("insulation_mj_per_m3k", 2.4), ("jacket_k_m_per_w", 3.5), ("jacket_mj_per_m3k", 2.4)] {
                number(files.cable(of), name, value);
            }
        }
        "parked-length" => files.part(of, |row| put(row, "parked_length", "300 mm")),
        "bend-keep-off" => files.part(of, |row| put(row, "bend_keep_off", "50 mm")),
        "mouths" => {
            let n = i64::try_from(order.job.legs.len()).expect("few");
            files.part(of, |row| {
                row.insert("legs".to_owned(), n.into());
            });
        }
        "connector-length" => files.part(of, |row| put(row, "connector_length_greatest", "140 mm")),
        "connector-diameter" => files.part(of, |row| {
            put(row, "connector_diameter_least", "5 mm");
            put(row, "connector_diameter_greatest", "60 mm");
        }),
        "withstands" => files.part(of, |row| {
            put(row, "fault", "40 kA");
            put(row, "fault_time", "1 s");
        }),
        "fault-greatest" => files.part(of, |row| put(row, "conductor_fault_greatest", "250 degC")),
        "service-greatest" => files.part(of, |row| {
            put(row, "conductor_greatest", "90 degC");
            put(row, "conductor_emergency_greatest", "130 degC");
        }),
        "contact-greatest" => files.part(of, |row| put(row, "contact_greatest", "1 mohm")),
        "passes-seal" => files.part(of, |row| {
            row.entry("passes_seal").or_insert(true.into());
            row.insert("blocked".to_owned(), true.into());
        }),
        "takes-lead" => files.part(of, |row| {
            row.insert("takes_lead".to_owned(), true.into());
        }),
        "jackets" => files.part(of, |row| {
            row.insert("jacket_surfaces".to_owned(), vec![Value::from("smooth")].into());
        }),
        "overlap" => files.part(of, |row| put(row, "overlap_least", "20 mm")),
        "adapter-permittivity" => files.part(of, |row| number(row, "relative_permittivity", 2.8)),
        "adapter-heat" => files.part(of, |row| heat.iter().for_each(|(name, value)| number(row, name, *value))),
        "connector-heat" => files.part(of, |row| {
            put_new(row, "made_of", "copper");
            number(row, "resistance_ratio", 1.0);
        }),
        "bus-heat" => files.part(of, |row| number(row, "resistance_microohm", 20.0)),
        "seal-heat" => files.part(of, |row| {
            let cover = "wall = \"4 mm\"\ncovers_body = false\nresistivity_k_m_per_w = 3.5\ncapacity_mj_per_m3k = 2.4";
            row.insert("cover".to_owned(), Value::Table(cover.parse().expect("a table")));
        }),
        "body-heat" => files.part(of, |row| {
            let regions = row["inner"]["region"].as_array_mut().expect("regions");
            for region in regions.iter_mut().filter_map(Value::as_table_mut) {
                heat.iter().for_each(|(name, value)| number(region, name, *value));
            }
        }),
        "shelf" => files.part(of, |row| {
            let shelf = "months = 36\nfrom = \"made\"\nstore_least = \"-20 degC\"\nstore_greatest = \"40 degC\"";
            row.insert("shelf".to_owned(), Value::Table(shelf.parse().expect("a table")));
        }),
        _ => return false,
    }
    true
}

type Counts = BTreeMap<(&'static str, String), usize>;

fn counted<'r>(rulings: impl Iterator<Item = &'r Ruling>) -> Counts {
    let mut counts = Counts::new();
    for r in rulings.filter(|r| r.outcome == Outcome::NotJudged) {
        *counts.entry((r.check, r.subject.words())).or_default() += 1;
    }
    counts
}

/// Names a person who may decide everything, so that answers of the owner can be written.
fn with_a_tester(files: &mut Files) {
    let authority = files.job["authority"].as_table_mut().expect("a table");
    let people = authority
        .entry("person")
        .or_insert(Value::Array(Vec::new()));
    let person = "name = \"A. Tester\"\nrole = \"owner's engineer\"\ndecides = [\"windows\", \"limits\", \"confirmations\", \"closings\"]";
    let person = Value::Table(person.parse().expect("a table"));
    people.as_array_mut().expect("rows").push(person);
}

type JudgeFn = for<'o> fn(&'o Order) -> Result<Judged<'o>, Vec<jointwright_joint::form::Complaint>>;

/// Questions of a case that stay open although every fact that they wait for was given, with these facts.
fn unsettled(
    case: Case,
    judged: JudgeFn,
    given: &mut BTreeSet<&'static str>,
    only: Option<&str>,
) -> Vec<String> {
    let mut files = Files::of(case);
    with_a_tester(&mut files);
    let order = files.order(case.slug);
    let before = accepted(judged(&order), case.slug).rulings;
    let mut asks: Vec<&Ask> = Vec::new();
    for ask in before.iter().flat_map(|r| &r.asks) {
        if !asks.contains(&ask) && only.is_none_or(|only| only == ask.fact.key) {
            asks.push(ask);
        }
    }
    let answered: Vec<&Ask> = asks
        .into_iter()
        .filter(|ask| answer(&mut files, &order, ask))
        .collect();
    given.extend(answered.iter().map(|ask| ask.fact.key));
    let order = files.order(&format!("{} with answers", case.slug));
    let after = accepted(judged(&order), case.slug).rulings;
    assert!(without_ask(&after).is_empty(), "{}", case.slug);
    let is_settled =
        |r: &&Ruling| !r.asks.is_empty() && r.asks.iter().all(|a| answered.contains(&a));
    let (was, settled) = (
        counted(before.iter()),
        counted(before.iter().filter(is_settled)),
    );
    // A number nearer to its limit than its own error is known; its question is another one.
    let is_missing = |r: &&Ruling| {
        let own = |key: &str| ["reading-closer", "room-error", "word"].contains(&key);
        r.margin.is_none() || r.asks.iter().any(|a| !own(a.fact.key)) || before.contains(r)
    };
    let now = counted(after.iter().filter(is_missing));
    let mut wrong = Vec::new();
    for (key, n) in &settled {
        let left = now.get(key).copied().unwrap_or(0);
        if left + n > was[key] {
            let why = after.iter().filter(|r| {
                r.outcome == Outcome::NotJudged && r.check == key.0 && r.subject.words() == key.1
            });
            let why: Vec<_> = why
                .map(|r| (crate::cases::english(&r.why), &r.asks))
                .collect();
            wrong.push(format!(
                "{}: {} of {}: {} open before, {n} of them to be settled, {left} left: {why:?}",
                case.slug, key.0, key.1, was[key]
            ));
        }
    }
    wrong
}

#[track_caller]
fn check(cases: &[Case], judged: JudgeFn) -> BTreeSet<&'static str> {
    let mut given = BTreeSet::new();
    let mut wrong = Vec::new();
    for case in cases {
        wrong.extend(unsettled(*case, judged, &mut given, None));
        if std::env::var("JOINTWRIGHT_LONG").is_ok() {
            for key in given.clone() {
                wrong.extend(unsettled(*case, judged, &mut BTreeSet::new(), Some(key)));
            }
        }
    }
    assert!(wrong.is_empty(), "{}: {wrong:#?}", wrong.len());
    given
}

#[test]
fn answers_settle_what_is_said_of_them_on_the_starter_job() {
    let given = check(&[STARTER], judge);
    assert!(given.len() >= 6, "{given:?}");
}

#[test]
fn answers_settle_what_is_said_of_them_on_all_examples() {
    let given = check(EXAMPLES, judge);
    assert!(given.len() >= 4, "{given:?}");
}

#[test]
fn answers_settle_what_is_said_of_them_on_all_cases() {
    let given = check(CASES, judge_unsolved);
    assert!(given.len() >= 10, "{given:?}");
}

#[test]
fn every_fact_has_a_mechanical_answer_or_a_reason_why_none() {
    let mut files = Files::of(STARTER);
    with_a_tester(&mut files);
    let order = files.order("starter");
    // The answer to an `of` that names nothing cannot be written, and panics; so only known keys are tried.
    let known: BTreeSet<&str> = FACTS.iter().map(|fact| fact.key).collect();
    for (key, why) in UNANSWERED {
        assert!(known.contains(key) && !why.is_empty(), "{key}");
        let fact = FACTS.iter().find(|fact| fact.key == *key).expect("known");
        assert!(
            !answer(&mut files, &order, &fact.of("A1 over the insulation")),
            "{key}"
        );
    }
}

#[test]
fn a_wrong_answer_is_noticed() {
    // A lot for another part settles nothing.
    let mut files = Files::of(STARTER);
    let order = files.order("starter");
    let before = accepted(judge_unsolved(&order), "starter").rulings;
    let open = |rulings: &[Ruling]| counted(rulings.iter().filter(|r| r.check == "kit_age"));
    let n = open(&before).values().sum::<usize>();
    assert!(n > 0, "the starter leaves a lot open");
    files.add(
        "lot",
        "leg = \"A\"\nphase = 1\npart = \"connector\"\nlot = \"T\"",
    );
    let order = files.order("starter");
    let after = accepted(judge_unsolved(&order), "starter").rulings;
    assert!(open(&after).values().sum::<usize>() >= n);
}
