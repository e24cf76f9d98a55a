//! Connector: the metal part that joins the conductors, with the conductors that each of its ends takes.
//!
//! Why its own room: the two ends of a sleeve need not be alike, and a conductor is compared with the end that takes it, never with a mixture of both.
//!
//! Invariants: every connector has one end (both alike, or a contact's only one) or two with names.
//!
//! Not here: which end takes which leg (`fit`), growth of a mouth (`cutback`).

use super::as_made::{AS_MADE, AsMade, read_as_made};
use super::head::{Head, Row, read_head, row_heads};
use super::link::{LINK, LinkRow, read_links};
use super::reader::RowReader;
use super::takes::{CONDUCTORS, METALS_FIELD, SIZES, STRANDINGS_FIELD, read_takes};
use super::withstand::{Withstand, read_withstand};
use super::word::metal;
use crate::cable::{Conductor, Metal, Size, Stranding};
use crate::file_words::file_words;
use crate::form::Need::{Optional, Required};
use crate::form::{Field, Kind, Record, Shape, field};
use crate::said::{ConnectorSaid, Taken};
use jointwright_units::{Interval, Length, Station};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Connector.
#[derive(Clone, Debug)]
pub struct Connector {
    /// Fields that every row has.
    pub head: Head,
    /// Means of grip.
    pub means: Means,
    /// Whether it joins two conductors (sleeve); otherwise it holds one (contact).
    pub two_ended: bool,
    /// Metal of the connector, if stated.
    pub made_of: Option<Metal>,
    /// Length before it is made: of the whole sleeve, or from contact plane to mouth.
    pub length: Length,
    /// Thickness between the conductor ends, or from the contact plane to the bottom of the barrel.
    pub stop: Length,
    /// Greatest outside diameter as made.
    pub outside_diameter: Length,
    /// Greatest height by which a sheared bolt may stand proud.
    pub stands_proud: Option<Length>,
    /// Marks that making it leaves behind, where its paper states them.
    pub as_made: AsMade,
    /// Short circuit that its paper allows.
    pub withstands: Option<Withstand>,
    /// Distances that hold at every end.
    pub links: Vec<LinkRow>,
    /// One end if both are alike or there is one; otherwise two, each with a name.
    pub ends: Vec<ConnectorEnd>,
}

/// Means of grip of a connector.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Means {
    /// Pressed sleeve.
    Compression,
    /// Bolts whose heads shear.
    ShearBolt,
    /// Screws.
    SetScrew,
}

file_words!(Means {
    Compression = "compression",
    ShearBolt = "shear-bolt",
    SetScrew = "set-screw",
});

/// One end of a connector, or both if they are alike.
#[derive(Clone, Debug, PartialEq)]
pub struct ConnectorEnd {
    /// Name, where the ends differ.
    pub name: Option<String>,
    /// Conductor sizes.
    pub sizes: Vec<Size>,
    /// Conductor metals.
    pub metals: Vec<Metal>,
    /// Conductor strandings.
    pub strandings: Vec<Stranding>,
    /// Conductors one by one, if the row binds size and metal; the three lists then only summarise them.
    pub named: Vec<Conductor>,
    /// Conductor diameters that its bore takes.
    pub bore: Option<Interval>,
    /// Distance from the plane that instructions measure from (middle of a sleeve, contact plane of a contact) to the mouth, before it is made.
    pub reach: Station,
    /// Distance from the same plane to the bottom of the barrel.
    pub bottom: Station,
    /// Greatest gap between the conductor end and the bottom.
    pub gap_greatest: Option<Length>,
    /// Greatest outside diameter as made.
    pub outside_diameter: Length,
    /// Greatest ratio of its resistance to the resistance of the same length of conductor, if stated.
    pub resistance_ratio: Option<f64>,
    /// Die.
    pub die: Option<String>,
    /// Number of presses.
    pub presses: Option<i64>,
    /// Marks that making this end leaves behind, where the paper states them for this end.
    pub as_made: Option<AsMade>,
    /// Distances that hold at this end.
    pub links: Vec<LinkRow>,
}

/// Reason why no end of a connector is known to take a leg.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NoEnd {
    /// Both would take it, and the job does not say which.
    Both,
    /// Neither end names its conductor.
    Neither,
}

impl Connector {
    /// Whether pressing lengthens it.
    pub fn grows(&self) -> bool {
        self.means == Means::Compression
    }

    /// Whether its two ends differ.
    pub fn has_unlike_ends(&self) -> bool {
        self.ends.len() > 1
    }

    /// End that takes a conductor: the end that the job names, else the only end that names this conductor.
    ///
    /// # Errors
    /// Both ends name it, or none does.
    pub fn end_for(
        &self,
        conductor: Conductor,
        said: Option<&str>,
    ) -> Result<&ConnectorEnd, NoEnd> {
        if let [only] = self.ends.as_slice() {
            return Ok(only);
        }
        if let Some(end) = said.and_then(|name| self.end(name)) {
            return Ok(end);
        }
        let mut taking = self.ends.iter().filter(|end| end.takes(conductor));
        match (taking.next(), taking.next()) {
            (Some(end), None) => Ok(end),
            (Some(_), Some(_)) => Err(NoEnd::Both),
            (None, _) => Err(NoEnd::Neither),
        }
    }

    /// End with a name.
    pub fn end(&self, name: &str) -> Option<&ConnectorEnd> {
        self.ends
            .iter()
            .find(|end| end.name.as_deref() == Some(name))
    }

    /// End opposite to one end, if the ends differ.
    pub fn other_end(&self, end: &ConnectorEnd) -> Option<&ConnectorEnd> {
        self.ends
            .iter()
            .find(|other| self.has_unlike_ends() && other.name != end.name)
    }

    /// Length of conductor for the comparison of its resistance, m: of the whole connector, or of one end if the ends differ.
    pub fn compared_length_m(&self, end: &ConnectorEnd) -> f64 {
        if self.has_unlike_ends() {
            end.reach.m()
        } else {
            self.length.m()
        }
    }

    /// Marks at one of its ends: from the row's entry for that end, else for the whole.
    pub fn as_made_at(&self, end: Option<&ConnectorEnd>) -> AsMade {
        let whole = &self.as_made;
        let Some(own) = end.and_then(|end| end.as_made.as_ref()) else {
            return whole.clone();
        };
        AsMade {
            across: own.across.or(whole.across),
            length: own.length.or(whole.length),
            bolts: own.bolts.or(whole.bolts),
            torque_nm: own.torque_nm.or(whole.torque_nm),
        }
    }

    /// Names of its ends, for a message.
    pub fn end_names(&self) -> Vec<String> {
        let names = self.ends.iter().filter_map(|end| end.name.as_deref());
        names.map(str::to_owned).collect()
    }

    /// Message on why no end is known to take a leg.
    pub fn no_end(&self, why: &NoEnd, conductor: Conductor) -> ConnectorSaid {
        let connector = self.head.id.clone();
        match why {
            NoEnd::Both => ConnectorSaid::BothEndsTake {
                connector,
                conductor,
            },
            NoEnd::Neither => ConnectorSaid::NeitherEndTakes {
                connector,
                conductor,
            },
        }
    }
}

/// A die in a sentence: "die 18" for a die called 18, else its own name, which says what it is.
pub fn die_words(die: &str) -> String {
    let is_said = die
        .split(|c: char| !c.is_alphanumeric())
        .any(|word| word.eq_ignore_ascii_case("die"));
    if is_said {
        die.to_owned()
    } else {
        format!("die {die}")
    }
}

impl ConnectorEnd {
    /// Whether its row names this conductor: size, metal and stranding.
    pub fn takes(&self, conductor: Conductor) -> bool {
        if self.named.is_empty() {
            self.sizes.contains(&conductor.size)
                && self.metals.contains(&conductor.metal)
                && self.strandings.contains(&conductor.stranding)
        } else {
            self.named.contains(&conductor)
        }
    }

    /// Conductors that it takes, for a message.
    pub fn taken(&self) -> Taken {
        if !self.named.is_empty() {
            return Taken {
                named: self.named.clone(),
                sizes: Vec::new(),
                metals: Vec::new(),
                strandings: Vec::new(),
            };
        }
        Taken {
            named: Vec::new(),
            sizes: self.sizes.clone(),
            metals: self.metals.clone(),
            strandings: self.strandings.clone(),
        }
    }

    /// Whether sizes and metals stand in lists of several each, so that the row does not say which belong together.
    pub fn is_mixed(&self) -> bool {
        self.named.is_empty() && self.sizes.len() > 1 && self.metals.len() > 1
    }

    /// Name with a comma, for a message; empty if the ends are alike.
    pub fn of_end(&self) -> String {
        self.name
            .as_ref()
            .map(|name| format!(", end {name}"))
            .unwrap_or_default()
    }
}

pub(super) const BORE: Shape = Shape {
    name: "bore",
    about: "Conductor diameters that a bore takes.",
    fields: &[
        field(
            "least",
            Kind::Above(&Kind::Diameter),
            Required,
            "Least conductor diameter.",
        ),
        field(
            "greatest",
            Kind::Above(&Kind::Diameter),
            Required,
            "Greatest conductor diameter.",
        ),
    ],
};

/// Fields that a whole connector and one end of it have in common.
pub(super) const BORE_FIELD: Field = field(
    "bore",
    Kind::Table(&BORE),
    Optional,
    "Conductor diameters its bore takes.",
);
pub(super) const GAP: Field = field(
    "gap_greatest",
    Kind::Cut,
    Optional,
    "How far short of the stop the conductor end may be.",
);
pub(super) const DIE: Field = field("die", Kind::Text, Optional, "Die, for compression.");
pub(super) const PRESSES: Field = field(
    "presses",
    Kind::Integer {
        least: 1,
        greatest: 40,
    },
    Optional,
    "Presses an end, for compression.",
);
pub(super) const RESISTANCE_RATIO: Field = field(
    "resistance_ratio",
    Kind::Number {
        least: 0.01,
        greatest: 10.0,
    },
    Optional,
    "Greatest resistance of it as made, over that of the same length of the conductor, as its paper states.",
);
pub(super) const LINKS: Field = field(
    "link",
    Kind::Rows(&LINK),
    Optional,
    "Distances its instructions give.",
);

/// One end of a sleeve whose ends differ.
pub(super) const CONNECTOR_END: Shape = Shape {
    name: "end",
    about: "One end of a sleeve whose two ends differ.",
    fields: &[
        field(
            "name",
            Kind::Id,
            Required,
            "Short name by which jobs call the end.",
        ),
        SIZES,
        METALS_FIELD,
        STRANDINGS_FIELD,
        CONDUCTORS,
        BORE_FIELD,
        field(
            "length",
            Kind::Above(&Kind::Cut),
            Required,
            "From the connector-centre that its paper measures from to the mouth of this end, before it is made.",
        ),
        field(
            "depth",
            Kind::Above(&Kind::Cut),
            Required,
            "From the mouth of this end to the bottom of its barrel, before it is made.",
        ),
        GAP,
        field(
            "outside_diameter",
            Kind::Above(&Kind::Diameter),
            Optional,
            "Outside diameter of this end as made, the greatest; left out: the connector's.",
        ),
        RESISTANCE_RATIO,
        DIE,
        PRESSES,
        field(
            "as_made",
            Kind::Table(&AS_MADE),
            Optional,
            "What the tool, die, torque or shear bolt leaves behind at this end; left out: the connector's.",
        ),
        LINKS,
    ],
};

/// Fields that an end states itself and a connector with unlike ends may not state.
const OF_ENDS: &[&str] = &[
    "sizes",
    "metals",
    "strandings",
    "conductors",
    "bore",
    "length",
    "stop",
    "gap_greatest",
    "die",
    "presses",
    "resistance_ratio",
];

/// Ends of a connector, with its length and its stop.
struct Ends {
    ends: Vec<ConnectorEnd>,
    length: Length,
    stop: Length,
}

/// Reads the ends of a connector, alike or not.
fn read_connector_ends(
    reader: &mut RowReader<'_>,
    record: &Record,
    two_ended: bool,
    outside: Length,
    head: Option<&Head>,
) -> Option<Ends> {
    if record.is_given("end") {
        return read_unlike_ends(reader, record, two_ended, outside, head);
    }
    let id = record.text("id").unwrap_or("?");
    let what = format!("Connector `{id}`");
    let takes = read_takes(reader, record, &what);
    for (name, hint) in [
        (
            "length",
            "Add its length before it is made, or an `end` for each end where the two differ.",
        ),
        (
            "stop",
            "Add the thickness between the conductor ends, or an `end` for each end where the two differ.",
        ),
    ] {
        reader.complain_of_missing(record, &what, name, hint);
    }
    let bore = read_bore(reader, record);
    let (length, stop) = (record.length("length")?, record.length("stop")?);
    if stop >= length {
        reader.complain(
            record.at("stop"),
            format!("The stop, {stop}, is not shorter than the connector, {length}."),
            "Look both up again.",
        );
    }
    let part = |length: Length| {
        if two_ended {
            Station::half_of(length)
        } else {
            Station::from(length)
        }
    };
    let end = ConnectorEnd {
        name: None,
        sizes: takes.sizes,
        metals: takes.metals,
        strandings: takes.strandings,
        named: takes.named,
        bore,
        reach: part(length),
        bottom: part(stop),
        gap_greatest: record.length("gap_greatest"),
        outside_diameter: outside,
        resistance_ratio: record.number("resistance_ratio"),
        die: record.string("die"),
        presses: record.integer("presses"),
        as_made: None,
        links: Vec::new(),
    };
    Some(Ends {
        ends: vec![end],
        length,
        stop,
    })
}

fn read_bore(reader: &mut RowReader<'_>, record: &Record) -> Option<Interval> {
    let bore = record.record("bore")?;
    reader.interval(bore, "least", "greatest")
}

fn read_unlike_ends(
    reader: &mut RowReader<'_>,
    record: &Record,
    two_ended: bool,
    outside: Length,
    head: Option<&Head>,
) -> Option<Ends> {
    let id = record.text("id").unwrap_or("?").to_owned();
    for name in OF_ENDS.iter().filter(|name| record.is_given(name)) {
        reader.complain(
            record.at(name),
            format!("Connector `{id}` has `end` rows and `{name}` beside them."),
            "Say it in each `end`: what holds at one need not hold at the other.",
        );
    }
    let rows: Vec<&Record> = record.records("end").collect();
    if !two_ended || rows.len() != 2 {
        reader.complain(
            record.at("end"),
            format!(
                "Connector `{id}` has {} `end` rows and `ends = {}`; `end` rows are for a sleeve whose two ends differ.",
                rows.len(),
                if two_ended { 2 } else { 1 }
            ),
            "Write two `end` rows with `ends = 2`, or none.",
        );
        return None;
    }
    let ends: Vec<Option<ConnectorEnd>> = rows
        .iter()
        .map(|row| read_connector_end(reader, row, outside, head, &id))
        .collect();
    let ends: Vec<ConnectorEnd> = ends.into_iter().collect::<Option<_>>()?;
    let [one, other] = ends.as_slice() else {
        return None;
    };
    if one.name == other.name {
        reader.complain(
            rows[1].at("name"),
            format!("Both ends of `{id}` have one name."),
            "Rename one of them.",
        );
        return None;
    }
    let whole = |a: Station, b: Station| Length::from_nm((a + b).half_nm() / 2);
    let (length, stop) = (
        whole(one.reach, other.reach),
        whole(one.bottom, other.bottom),
    );
    if stop < Length::ZERO {
        reader.complain(
            rows[1].at("depth"),
            format!(
                "The barrels of `{id}` are deeper together than it is long, {length}: they run into one another by {}.",
                -stop
            ),
            "Look up `length` and `depth` of both ends again.",
        );
        return None;
    }
    Some(Ends { ends, length, stop })
}

fn read_connector_end(
    reader: &mut RowReader<'_>,
    row: &Record,
    outside: Length,
    head: Option<&Head>,
    id: &str,
) -> Option<ConnectorEnd> {
    let name = row.string("name");
    let what = format!("End `{}` of `{id}`", name.as_deref().unwrap_or("?"));
    let takes = read_takes(reader, row, &what);
    let bore = read_bore(reader, row);
    let links = read_links(reader, row, head);
    let (length, depth) = (row.length("length")?, row.length("depth")?);
    if depth <= Length::ZERO || length <= Length::ZERO {
        reader.complain(
            row.at,
            format!("{what} has a barrel {depth} deep and reaches {length}."),
            "Look both up again; neither is nothing.",
        );
        return None;
    }
    Some(ConnectorEnd {
        name: Some(name?),
        sizes: takes.sizes,
        metals: takes.metals,
        strandings: takes.strandings,
        named: takes.named,
        bore,
        reach: Station::from(length),
        bottom: Station::from(length) - Station::from(depth),
        gap_greatest: row.length("gap_greatest"),
        outside_diameter: row.length("outside_diameter").unwrap_or(outside),
        resistance_ratio: row.number("resistance_ratio"),
        die: row.string("die"),
        presses: row.integer("presses"),
        as_made: row.is_given("as_made").then(|| read_as_made(reader, row)),
        links,
    })
}

impl Row for Connector {
    row_heads!();

    fn read(reader: &mut RowReader<'_>, record: &Record) -> Option<Connector> {
        let head = read_head(reader, record);
        let two_ended = record.integer("ends").map(|ends| ends == 2);
        let outside = record.length("outside_diameter");
        let ends = read_connector_ends(
            reader,
            record,
            two_ended.unwrap_or(true),
            outside.unwrap_or(Length::ZERO),
            head.as_ref(),
        );
        let withstands = read_withstand(reader, record);
        let as_made = read_as_made(reader, record);
        let links = read_links(reader, record, head.as_ref());
        let (head, ends) = (head?, ends?);
        Some(Connector {
            means: record.text("means").and_then(Means::from_name)?,
            two_ended: two_ended?,
            made_of: record.text("made_of").and_then(metal),
            length: ends.length,
            stop: ends.stop,
            outside_diameter: outside?,
            stands_proud: record.length("stands_proud"),
            as_made,
            withstands,
            links,
            ends: ends.ends,
            head,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_die_is_called_a_die_once() {
        for (name, words) in [
            ("18", "die 18"),
            ("die 18", "die 18"),
            ("Die U-26", "Die U-26"),
            ("invented die 26", "invented die 26"),
            ("hex-die-9", "hex-die-9"),
            ("diesel 4", "die diesel 4"),
        ] {
            assert_eq!(die_words(name), words);
        }
    }
}
