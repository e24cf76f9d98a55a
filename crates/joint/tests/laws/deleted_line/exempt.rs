//! Lines whose deletion may help, with the reason: somebody's word against the joint, which no program can know if it is not written down.

use super::bench::{Bench, Help, Segment};
use toml::Value;

/// Lines by their keys, the checks that they may help (all checks if none is named), and the reason.
const EXEMPT: &[(&str, &[&str], &str)] = &[
    (
        "leg.parks",
        &["park_room"],
        "which leg the body is parked on is chosen; where no leg is, the joint itself is not judged, and each leg is asked for its seal's room only",
    ),
    (
        "leg.adapter",
        &[],
        "another joint: whether the parts that are left fit the cable is judged of them",
    ),
    (
        "owner_limit",
        &[],
        "a limit that the owner sets beside the instructions': without it nobody asks",
    ),
    (
        "owner_window",
        &["cut_window"],
        "a window that the owner makes narrower than the instructions'",
    ),
    (
        "continuity",
        &["shield_continuity"],
        "a reading against expectation: the papers set no limit, so that nobody needs to read; where the owner sets one, it is asked for",
    ),
    (
        "shield_part.contact_greatest",
        &["contact_heat"],
        "a limit that a paper need not set: without it nothing has to be read, and where somebody reads all the same the row is asked",
    ),
    (
        "connector.bore",
        &["conductor_in_connector"],
        "a limit that a paper need not set: without it the conductors that the row names are judged, and whether the one that was read is that conductor is asked by measures_like_papers",
    ),
    (
        "connector.end.bore",
        &["conductor_in_connector"],
        "the same",
    ),
    (
        "lot.expanded",
        &["kit_age"],
        "a day that somebody reads beside the expiry on the label: the label already includes the months, and counts alone where nobody reads that day",
    ),
    (
        "lot.stay",
        &[],
        "a time in store: where a lot lay is the store's own word, and the stays before and after say nothing of what is left out",
    ),
    (
        "duty.emergency",
        &["joint_emergency_heat"],
        "a demand: a joint of which no emergency is asked is not held against one",
    ),
    ("duty.emergency_time", &["joint_emergency_heat"], "the same"),
    (
        "leg.shield_load",
        &["service_temperature"],
        "a current in the shield that somebody states in place of the one that is computed from how the three cables lie: what else drives one no program can know once it is not written down",
    ),
    (
        "leg.lead",
        &["lead_fault_heat"],
        "a part that the job names beside the catalogue, which nothing prints but what is computed of it: a shield that is bonded by its own wires, or not earthed at this joint, has none, and no program can know of one that is not written down",
    ),
];

/// Lists of readings: one reading may be deleted while others of the same end stay, because no program can know a reading that was not written down.
const ONE_OF_SEVERAL: &[&str] = &[
    "reading",
    "reading.values",
    "trial_press",
    "trial_press.length_after",
    "contact",
    "moisture",
    "lot",
    "count",
];

/// Whether a help is allowed for.
pub fn is_exempt(bench: &Bench, help: &Help) -> bool {
    let is_named = EXEMPT.iter().any(|(keys, checks, _)| {
        let is_check = checks.is_empty() || checks.contains(&help.check);
        is_check && help.lines.iter().any(|line| line.keys() == *keys)
    });
    let is_one_of_several = help.lines.iter().any(|line| {
        let is_item = matches!(line.path.last(), Some(Segment::Row(_)));
        is_item
            && line.file.is_none()
            && ONE_OF_SEVERAL.contains(&line.keys().as_str())
            && !is_last_over_its_layer(bench, &line.path)
    });
    is_named || is_one_of_several
}

/// Whether a line is the only reading over a layer of an end; the program does notice that nobody read there any more.
fn is_last_over_its_layer(bench: &Bench, path: &[Segment]) -> bool {
    let [Segment::Key(key), Segment::Row(index)] = path else {
        return false;
    };
    let rows = bench.job.get(key).and_then(Value::as_array);
    let Some(rows) = rows.filter(|_| key == "reading") else {
        return false;
    };
    let place = |row: &Value| ["leg", "phase", "over"].map(|name| row.get(name).cloned());
    let ours = place(&rows[*index]);
    rows.iter().filter(|row| place(row) == ours).count() == 1
}
