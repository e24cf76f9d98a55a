//! Turns records into rows, and finds faults that one field alone cannot show: bounds in the wrong order, half a tolerance.

use super::handling::BridgeMoment;
use super::row::{
    Adapter, Body, Bus, Consumable, Filler, Fits, Grading, Head, Inner, Instructions, LinkRow,
    MayMove, Plug, Region, Row, ScreenStep, Seal, Shelf, ShieldPart, Step, Withstand, Wrap,
};
use super::row::{SHRINKS_HINT, SHRINKS_INWARD};
use super::thermal::{ageing, cover};
use super::word::{layer, layers, metal};
use crate::cable::Size;
use crate::form::Span;
use crate::form::{Complaints, Item, Record, Source, Value};
use crate::plane::Plane;
use crate::said::{FieldDuty, Whose};
use crate::stage::Stage;
use jiff::civil::Date;
use jointwright_units::{Interval, Length};

/// Reads the rows of one file.
pub(super) struct RowReader<'a> {
    pub source: &'a Source,
    pub complaints: &'a mut Complaints,
    /// Day of the work, where the file is read for a job.
    pub today: Option<Date>,
}

impl RowReader<'_> {
    pub fn complain(&mut self, at: usize, message: String, hint: impl Into<String>) {
        self.complaints
            .add(self.source.complaint(at, message, hint));
    }

    fn place(&self, at: usize) -> Span {
        self.source.span(at)
    }

    pub fn head(&mut self, record: &Record) -> Option<Head> {
        let steps: Vec<Step> = record
            .records("step")
            .filter_map(|step| self.step(step))
            .collect();
        self.order_of_steps(record, &steps);
        let checked = self.checked(record);
        let paper = record.record("instructions")?;
        Some(Head {
            id: record.string("id")?,
            name: record.string("name")?,
            demonstration: record.flag("demonstration").unwrap_or(false),
            instructions: Instructions {
                paper: paper.string("paper")?,
                revision: paper.string("revision")?,
                date: paper.date("date"),
                seen_current: paper.date("seen_current"),
            },
            checked,
            today: self.today,
            note: record.string("note"),
            shelf: record.record("shelf").and_then(|shelf| self.shelf(shelf)),
            steps,
            place: self.place(record.at),
        })
    }

    /// Person who compared a row with its paper, and the day: both, or neither.
    fn checked(&mut self, record: &Record) -> Option<(String, Date)> {
        for (given, other) in [("checked_by", "checked"), ("checked", "checked_by")] {
            if record.is_given(given) && !record.is_given(other) {
                self.complain(
                    record.at(given),
                    format!("`{given}` is given without `{other}`."),
                    "Say who held the row beside its paper, and on which day; or take both out.",
                );
            }
        }
        record.string("checked_by").zip(record.date("checked"))
    }

    fn shelf(&mut self, record: &Record) -> Option<Shelf> {
        let store_degc = (
            record.number("store_least"),
            record.number("store_greatest"),
        );
        if let (Some(least), Some(greatest)) = store_degc
            && least > greatest
        {
            self.complain(
                record.at("store_least"),
                format!("The lowest storage temperature, {least} degC, is above the highest, {greatest} degC."),
                "Exchange them.",
            );
        }
        Some(Shelf {
            months: record.integer("months")?,
            from: record.string("from")?,
            store_degc,
        })
    }

    fn step(&mut self, record: &Record) -> Option<Step> {
        Some(Step {
            id: record.string("id"),
            say: record.string("say")?,
            after: record.texts("after"),
            caution: record.string("caution"),
            hold: record.flag("hold").unwrap_or(false),
            stage: record.text("stage").and_then(Stage::from_name),
            metals: record
                .texts("metals")
                .iter()
                .filter_map(|m| metal(m))
                .collect(),
        })
    }

    /// Complains of steps that name a step the row does not have, share a name, or wait for each other.
    fn order_of_steps(&mut self, record: &Record, steps: &[Step]) {
        let rows: Vec<&Record> = record.records("step").collect();
        for row in &rows {
            let id = row.text("id");
            if id.is_some() && rows.iter().filter(|r| r.text("id") == id).count() > 1 {
                self.complain(
                    row.at("id"),
                    format!(
                        "Two steps of this row are called `{}`; every step has a name of its own.",
                        id.unwrap_or_default()
                    ),
                    "Rename one of them.",
                );
            }
            for item in row.list("after") {
                let Value::Text(before) = &item.value else {
                    continue;
                };
                if !rows.iter().any(|r| r.text("id") == Some(before)) {
                    self.complain(
                        item.at,
                        format!("`after` names the step `{before}`, which this row does not have."),
                        "Name a step of the same row by its `id`.",
                    );
                }
            }
        }
        if let Some(step) = step_in_a_ring(steps)
            && let Some(row) = rows.iter().find(|r| r.text("id") == Some(step))
        {
            self.complain(
                row.at,
                format!("The step `{step}` waits for itself through `after`; no order of the steps keeps to that."),
                "Look up in the paper which of them comes first.",
            );
        }
    }

    fn wrap(&mut self, record: &Record) -> Option<Wrap> {
        Some(Wrap {
            over: layer(record.text("over")?)?,
            length: record.length("length")?,
            layers: record.integer("layers")?,
            lap_ratio: record.number("lap")?,
            drawn_ratio: record.number("drawn").unwrap_or(1.0),
        })
    }

    /// Interval between two fields of a record.
    pub fn interval(&mut self, record: &Record, least: &str, greatest: &str) -> Option<Interval> {
        let (low, high) = (record.length(least)?, record.length(greatest)?);
        let interval = Interval::new(low, high);
        if interval.is_none() {
            self.complain(
                record.at(least),
                format!("`{least}` is {low} and `{greatest}` is {high}; the least cannot be above the greatest."),
                "Exchange them, or look them up again.",
            );
        }
        interval
    }

    /// Short circuit that a part's paper allows: current and time, or neither.
    pub fn withstands(&mut self, record: &Record) -> Option<Withstand> {
        let (current, time) = (record.number("fault"), record.number("fault_time"));
        let (Some(current_a), Some(time_s)) = (current, time) else {
            for (given, name, other) in [
                (current, "fault", "fault_time"),
                (time, "fault_time", "fault"),
            ] {
                if given.is_some() && record.is_given(name) && !record.is_given(other) {
                    self.complain(
                        record.at(name),
                        format!("`{name}` is given without `{other}`."),
                        "A short-circuit current means nothing without its time: write both, or neither.",
                    );
                }
            }
            return None;
        };
        if current_a > 0.0 && time_s > 0.0 {
            return Some(Withstand { current_a, time_s });
        }
        self.complain(
            record.at("fault"),
            "`fault` and `fault_time` are above 0.".to_owned(),
            "Look them up again, or take both out.",
        );
        None
    }

    pub fn fits(&mut self, record: &Record) -> Vec<Fits> {
        record
            .records("fits")
            .filter_map(|row| self.one_fits(row))
            .collect()
    }

    fn one_fits(&mut self, row: &Record) -> Option<Fits> {
        Some(Fits {
            range: self.interval(row, "least", "greatest")?,
            at: row.string("at")?,
            over: layer(row.text("over")?)?,
            at_degc: row.number("at_temperature"),
            ovality: row.length("ovality"),
        })
    }

    pub fn links(&mut self, record: &Record, head: Option<&Head>) -> Vec<LinkRow> {
        record
            .records("link")
            .filter_map(|row| self.link(row, head))
            .collect()
    }

    fn link(&mut self, row: &Record, head: Option<&Head>) -> Option<LinkRow> {
        let id = head.map_or("?", |head| head.id.as_str());
        let tolerance = match (row.length("minus"), row.length("plus")) {
            (Some(minus), Some(plus)) => Some((minus, plus)),
            (None, None) => None,
            _ if row.is_given("minus") != row.is_given("plus") => {
                self.complain(
                    row.at,
                    format!("A link of `{}` gives only one of `minus` and `plus`; a window has two sides.", id),
                    "Give both (\"0 mm\" where nothing is permitted), or neither where the paper gives none.",
                );
                return None;
            }
            _ => return None,
        };
        let (from, to) = (
            Plane::from_name(row.text("from")?)?,
            Plane::from_name(row.text("to")?)?,
        );
        if from == to {
            self.complain(
                row.at,
                format!("A link of `{}` runs from {} to itself.", id, from.name()),
                "Name two planes.",
            );
            return None;
        }
        let distance = row.length("distance")?;
        let place = row.text("place").map(str::to_owned);
        let link = LinkRow {
            from,
            to,
            distance,
            tolerance,
            source: Whose::Row {
                paper: head?.source(),
                place,
            },
            place: self.place(row.at),
        };
        let link = link.pointing_outward(row.flag("toward_end").unwrap_or(false));
        if link.shrinks_inward() {
            self.complain(row.at, SHRINKS_INWARD.to_owned(), SHRINKS_HINT);
            return None;
        }
        if link.leaves_no_length() {
            self.complain(
                row.at,
                format!(
                    "This link leaves nothing between {} and {}.",
                    link.from.name(),
                    link.to.name()
                ),
                "Write the length that the part's paper gives, from its inner to its outer end, more than its `minus`.",
            );
            return None;
        }
        Some(link)
    }

    pub fn may_move(&mut self, record: &Record) -> Option<MayMove> {
        let row = record.record("may_move")?;
        match (row.text("when")?, row.integer("minutes")) {
            ("never", _) => Some(MayMove::Never),
            ("before-holdout-is-out", _) => Some(MayMove::BeforeHoldoutIsOut),
            (_, Some(minutes)) => Some(MayMove::WithinMinutes(minutes)),
            (_, None) if row.is_given("minutes") => None,
            (_, None) => {
                self.complain(
                    row.at,
                    "`within-minutes` has no `minutes`.".to_owned(),
                    "Add the number of minutes.",
                );
                None
            }
        }
    }

    fn inner(&mut self, record: &Record) -> Option<Inner> {
        let inner = record.record("inner")?;
        let regions = inner
            .records("region")
            .filter_map(|row| self.region(row))
            .collect();
        Some(Inner {
            measured: inner.text("origin")? == "measured",
            by: inner.string("by")?,
            date: inner.date("date")?,
            uncertainty: inner.length("uncertainty")?,
            on_diameter: inner.length("on_diameter"),
            screen_step: self.screen_step(inner),
            grading: self.grading(inner),
            regions,
        })
    }

    fn grading(&mut self, inner: &Record) -> Option<Grading> {
        let row = inner.record("grading")?;
        let rise = (row.number("knee_kv_per_mm"), row.number("power"));
        let rise_kv_per_mm = match rise {
            (Some(knee), Some(power)) => Some((knee, power)),
            (None, None) => None,
            _ => {
                self.complain(
                    row.at,
                    "`knee_kv_per_mm` and `power` say something only together.".to_owned(),
                    "Give both, or neither where the conductivity does not rise.",
                );
                None
            }
        };
        let conductivity_s_per_m = row.number("conductivity_s_per_m").unwrap_or(0.0);
        if rise_kv_per_mm.is_some() && conductivity_s_per_m == 0.0 {
            self.complain(
                row.at,
                "A conductivity that rises has no value at low fields.".to_owned(),
                "Give `conductivity_s_per_m`.",
            );
        }
        Some(Grading {
            thickness: row.length("thickness")?,
            relative_permittivity: row.number("relative_permittivity")?,
            conductivity_s_per_m,
            rise_kv_per_mm,
        })
    }

    fn screen_step(&mut self, inner: &Record) -> Option<ScreenStep> {
        let step = inner.record("screen_step")?;
        let edge_radius = self.interval(step, "edge_radius_least", "edge_radius_greatest")?;
        let filler = match (step.string("filler"), step.number("filler_permittivity")) {
            (Some(name), Some(relative_permittivity)) => Some(Filler {
                name,
                relative_permittivity,
                is_permanent: step.flag("filler_permanent").unwrap_or(false),
            }),
            (None, None) => None,
            _ => {
                self.complain(
                    step.at,
                    "`filler` and `filler_permittivity` say something only together.".to_owned(),
                    "Give both, or neither where the gap is left empty.",
                );
                None
            }
        };
        Some(ScreenStep {
            edge_radius,
            bridging: step.length("bridging")?,
            filler,
        })
    }

    pub fn region(&mut self, row: &Record) -> Option<Region> {
        let (along, diameter) = (row.lengths("along"), row.lengths("diameter"));
        let name = row.string("name")?;
        if along.len() != diameter.len() || along.len() < 3 {
            self.complain(
                row.at,
                format!("Region `{name}` has {} positions and {} diameters; an outline has three corners or more, each with both.", along.len(), diameter.len()),
                "Give one diameter for each position.",
            );
            return None;
        }
        let radii = row.lengths("radius");
        if !radii.is_empty() && radii.len() != along.len() {
            self.complain(
                row.at,
                format!("Region `{name}` has {} corners and {} radii; each corner has one.", along.len(), radii.len()),
                "Give one radius for each corner, \"0 mm\" for one that is sharp or does not matter.",
            );
            return None;
        }
        Some(Region {
            radii,
            serves: row.text("serves").and_then(FieldDuty::from_name),
            name,
            material: row.string("material")?,
            corners: along.into_iter().zip(diameter).collect(),
            relative_permittivity: row.number("relative_permittivity"),
            conductive: row.flag("conductive").unwrap_or(false),
            stiffness_ratio: row.number("stiffness"),
            stuff: self.stuff(row),
        })
    }

    pub fn sizes(&mut self, record: &Record) -> Vec<Size> {
        record
            .list("sizes")
            .filter_map(|item| self.size(item, "sizes"))
            .collect()
    }

    /// Conductor size in a field.
    pub fn size_in(&mut self, record: &Record, name: &str) -> Option<Size> {
        self.size(record.item(name)?, name)
    }

    fn size(&mut self, item: &Item, name: &str) -> Option<Size> {
        let Value::Text(text) = &item.value else {
            return None;
        };
        match Size::parse(text) {
            Ok(size) => Some(size),
            Err(error) => {
                self.complain(
                    item.at,
                    format!("`{name}` holds \"{text}\": {error}."),
                    "Write \"4/0 AWG\", \"500 kcmil\" or \"240 mm2\".",
                );
                None
            }
        }
    }
}

impl RowReader<'_> {
    /// Complains of missing ranges and distances that a body without sides needs.
    fn misses_of_body(&mut self, record: &Record) {
        let id = record.text("id").unwrap_or("?");
        for (name, what) in [("fits", "ranges"), ("link", "distances")] {
            if record.is_whole() && !record.is_given(name) && !record.is_given("side") {
                self.complain(
                    record.at,
                    format!("Body `{id}` has no `{name}`."),
                    format!("Add the {what} that its paper gives, or a `side` for each side where the two differ."),
                );
            }
        }
    }

    /// Reads a body with unlike sides: the whole body, and the body as a leg sees it from each side.
    fn with_sides(&mut self, body: Body, record: &Record) -> Option<Body> {
        let id = body.head.id.clone();
        let rows: Vec<&Record> = record.records("side").collect();
        if rows.len() != 2 || body.kinds.iter().any(|kind| kind != "straight") {
            self.complain(
                record.at("side"),
                format!(
                    "Body `{id}` has {} `side` rows and is for {}; sides are for a straight body whose two sides differ.",
                    rows.len(),
                    body.kinds.join(", ")
                ),
                "Write two `side` rows with `kinds = [\"straight\"]`, or none.",
            );
            return None;
        }
        for name in ["inner", "rubber"] {
            if record.is_given(name) {
                self.complain(
                    record.at(name),
                    format!("Body `{id}` has `side` rows and `{name}` beside them."),
                    "Say it in each `side`: what holds at one need not hold at the other.",
                );
            }
        }
        let mut sides: Vec<Body> = Vec::new();
        for row in rows {
            let mut fits = body.fits.clone();
            fits.extend(self.fits(row));
            let mut links = body.links.clone();
            links.extend(self.links(row, Some(&body.head)));
            let (inner, rubber) = (self.inner(row), self.rubber(row, &fits));
            let name = row.string("name")?;
            if sides.iter().any(|side| side.side.as_ref() == Some(&name)) {
                self.complain(
                    row.at("name"),
                    format!("Both sides of `{id}` have one name."),
                    "Rename one of them.",
                );
                return None;
            }
            sides.push(Body {
                side: Some(name),
                fits,
                links,
                inner,
                rubber,
                ..body.clone()
            });
        }
        Some(Body {
            fits: Vec::new(),
            links: Vec::new(),
            sides,
            ..body
        })
    }
}

/// Name of a step that waits for itself, if one does.
fn step_in_a_ring(steps: &[Step]) -> Option<&str> {
    let before = |id: &str| {
        steps
            .iter()
            .filter(move |s| s.id.as_deref() == Some(id))
            .flat_map(|s| s.after.iter().map(String::as_str))
            .collect::<Vec<&str>>()
    };
    steps.iter().filter_map(|s| s.id.as_deref()).find(|id| {
        let mut seen: Vec<&str> = Vec::new();
        let mut open = before(id);
        while let Some(next) = open.pop() {
            if next == *id {
                return true;
            }
            if !seen.contains(&next) {
                seen.push(next);
                open.extend(before(next));
            }
        }
        false
    })
}

macro_rules! row_heads {
    () => {
        fn head(&self) -> &Head {
            &self.head
        }
        fn head_mut(&mut self) -> &mut Head {
            &mut self.head
        }
    };
}

impl Row for Body {
    row_heads!();

    fn mark_as_copy(&mut self, is_copy: bool) {
        self.head.demonstration |= is_copy;
        for side in &mut self.sides {
            side.mark_as_copy(is_copy);
        }
    }

    fn read(reader: &mut RowReader<'_>, record: &Record) -> Option<Body> {
        let head = reader.head(record);
        let fits = reader.fits(record);
        let connector_diameter = reader.interval(
            record,
            "connector_diameter_least",
            "connector_diameter_greatest",
        );
        reader.complain_of_temperatures(record);
        let inner = reader.inner(record);
        let taper = reader.taper(record);
        let rubber = reader.rubber(record, &fits);
        let may_move = reader.may_move(record);
        let links = reader.links(record, head.as_ref());
        reader.misses_of_body(record);
        let head = head?;
        let body = Body {
            side: None,
            sides: Vec::new(),
            kinds: record.texts("kinds"),
            legs: record.integer("legs"),
            system_greatest_kv: record.number("system_greatest")?,
            earthings: record.texts("earthings"),
            fits,
            may_lie_on: layers(record, "may_lie_on"),
            adapters: record.texts("parts"),
            fits_adapter: record.flag("fits_adapter").unwrap_or(false),
            length: record.length("length")?,
            parked_length: record.length("parked_length"),
            connector_length_greatest: record.length("connector_length_greatest"),
            connector_diameter,
            electrode_overlap_least: record.length("electrode_overlap_least"),
            bondings: record.texts("bondings"),
            interface: record.string("interface"),
            links,
            may_move,
            goes_on: RowReader::goes_on(record),
            passes: record.length("passes"),
            abrasive: record.string("abrasive"),
            inner,
            taper,
            rubber,
            conductor_fault_greatest_degc: record.number("conductor_fault_greatest"),
            conductor_greatest_degc: record.number("conductor_greatest"),
            conductor_emergency_greatest_degc: record.number("conductor_emergency_greatest"),
            ageing: record.record("ageing").and_then(ageing),
            bend_keep_off: record.length("bend_keep_off"),
            head,
        };
        if record.is_given("side") {
            return reader.with_sides(body, record);
        }
        Some(body)
    }
}

impl Row for Bus {
    row_heads!();
    fn read(reader: &mut RowReader<'_>, record: &Record) -> Option<Bus> {
        Some(Bus {
            head: reader.head(record)?,
            ports: record.integer("ports")?,
            resistance_ohm: record
                .number("resistance_microohm")
                .map(|micro| micro * 1e-6),
            resistance_at_degc: record.number("resistance_at"),
            interface: record.string("interface")?,
            system_greatest_kv: record.number("system_greatest")?,
        })
    }
}

impl Row for Plug {
    row_heads!();
    fn read(reader: &mut RowReader<'_>, record: &Record) -> Option<Plug> {
        Some(Plug {
            head: reader.head(record)?,
            interface: record.string("interface")?,
            system_greatest_kv: record.number("system_greatest")?,
        })
    }
}

impl Row for Adapter {
    row_heads!();
    fn read(reader: &mut RowReader<'_>, record: &Record) -> Option<Adapter> {
        let head = reader.head(record);
        let fits = reader.fits(record);
        let outside = reader.interval(record, "outside_least", "outside_greatest");
        let rubber = reader.rubber(record, &fits);
        let may_move = reader.may_move(record);
        let stuff = reader.stuff(record);
        let links = reader.links(record, head.as_ref());
        let head = head?;
        Some(Adapter {
            stuff,
            fits,
            leaves_bare: record.flag("leaves_bare"),
            may_lie_on: layers(record, "may_lie_on"),
            outside: outside?,
            system_greatest_kv: record.number("system_greatest")?,
            links,
            may_move,
            goes_on: RowReader::goes_on(record),
            passes: record.length("passes"),
            relative_permittivity: record.number("relative_permittivity"),
            rubber,
            head,
        })
    }
}

impl Row for ShieldPart {
    row_heads!();
    fn read(reader: &mut RowReader<'_>, record: &Record) -> Option<ShieldPart> {
        let head = reader.head(record);
        let fits = reader.fits(record);
        let withstands = reader.withstands(record);
        let (lay_back, cut_off) = reader.shield_edges(record);
        let links = reader.links(record, head.as_ref());
        let head = head?;
        Some(ShieldPart {
            shields: record.texts("shields"),
            bondings: record.texts("bondings"),
            area_mm2: record.number("area"),
            withstands,
            contact_greatest_ohm: record.number("contact_greatest"),
            fits,
            may_lie_on: layers(record, "may_lie_on"),
            blocked: record.flag("blocked"),
            passes_seal: record.flag("passes_seal"),
            lay_back,
            cut_off,
            bridge_off: record.text("bridge_off").and_then(BridgeMoment::from_name),
            across_legs: record.flag("across_legs").unwrap_or(false),
            links,
            head,
        })
    }
}

impl Row for Seal {
    row_heads!();
    fn read(reader: &mut RowReader<'_>, record: &Record) -> Option<Seal> {
        let head = reader.head(record);
        let fits = reader.fits(record);
        let rubber = reader.rubber(record, &fits);
        let may_move = reader.may_move(record);
        let links = reader.links(record, head.as_ref());
        let head = head?;
        Some(Seal {
            cover: record.record("cover").and_then(cover),
            fits,
            may_lie_on: layers(record, "may_lie_on"),
            spans_joint: record.text("spans") == Some("joint"),
            length: record.length("length"),
            overlap_least: record.length("overlap_least"),
            body_overlap_least: record.length("body_overlap_least"),
            parked_length: record.length("parked_length"),
            takes_lead: record.flag("takes_lead"),
            jacket_surfaces: record.texts("jacket_surfaces"),
            rubber,
            goes_on: RowReader::goes_on(record),
            passes: record.length("passes"),
            links,
            may_move,
            head,
        })
    }
}

impl Row for Consumable {
    row_heads!();
    fn read(reader: &mut RowReader<'_>, record: &Record) -> Option<Consumable> {
        let tape: Option<(Length, Length)> = record.length("width").zip(record.length("thickness"));
        let wraps: Vec<Wrap> = record
            .records("wrap")
            .filter_map(|wrap| reader.wrap(wrap))
            .collect();
        let has_size = record.is_given("width") && record.is_given("thickness");
        if !wraps.is_empty() && !has_size {
            reader.complain(
                record.at,
                "A `wrap` is given, but not both the width and the thickness of the tape."
                    .to_owned(),
                "Add `width` and `thickness`, so that its length can be computed.",
            );
        }
        Some(Consumable {
            head: reader.head(record)?,
            wraps,
            metals: record
                .texts("metals")
                .iter()
                .filter_map(|m| metal(m))
                .collect(),
            touches_conductor: record.flag("touches_conductor"),
            contains: record.string("contains"),
            tape,
            amount: record.string("amount"),
        })
    }
}
