//! Catalogue: the parts on the truck, as their own papers describe them.
//!
//! Why its own room: a part's range, planes and windows are its instructions' own; the program repeats them with their source and only ever tightens them.
//!
//! Invariants: no two parts share a name; a row of the demonstration catalogue stays marked as invented when its data are copied; no maker's data ship.
//!
//! Not here: whether a part fits (`fit`), and any file access.

mod adapter;
mod as_made;
mod body;
mod bus;
mod connector;
mod consumable;
mod copies;
mod fits;
mod handling;
mod head;
mod inner;
mod link;
mod reader;
mod rubber;
mod seal;
mod shape;
mod shield_part;
mod takes;
mod taper;
mod thermal;
mod withstand;
mod word;

pub use crate::said::{FieldDuty, PartKind};
pub use adapter::Adapter;
pub use as_made::AsMade;
pub use body::Body;
pub use bus::{Bus, Plug};
pub use connector::{Connector, ConnectorEnd, Means, NoEnd, die_words};
pub use consumable::{Consumable, Wrap};
pub use fits::Fits;
pub use handling::{GoesOn, MayMove};
pub use head::{Head, InstructionStep, Instructions, Shelf};
pub use inner::{Filler, Grading, Inner, Region, ScreenStep};
pub use link::LinkRow;
pub(crate) use rubber::{DAY_S, ZERO_DEGC_K};
pub use rubber::{RUBBER_LAWS, Rubber};
pub use seal::Seal;
pub use shape::CATALOGUE;
pub use shield_part::{BridgeMoment, LayBack, ShieldPart};
pub use taper::Taper;
pub use thermal::{Ageing, Cover};
pub(crate) use thermal::{CAPACITY, RESISTIVITY, stuff};
pub use withstand::Withstand;
pub use word::{
    BONDINGS, EARTHINGS, JACKET_SURFACES, KINDS, LAYER_NAMES, METALS, SHIELD_KINDS, STRANDINGS,
    layer, metal, shield_kind, shield_word, stranding,
};

use crate::form::{Complaint, Complaints, Record, Source, read};
use copies::Print;
use head::Row;
use jiff::civil::Date;
use reader::RowReader;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::LazyLock;

/// Name of the embedded demonstration catalogue in jobs.
pub const DEMONSTRATION: &str = "demonstration";

/// Invented parts of the demonstration, as TOML.
pub const DEMONSTRATION_TEXT: &str = include_str!("../../../../data/catalogue/demonstration.toml");

static DEMONSTRATION_PRINTS: LazyLock<Vec<Print>> = LazyLock::new(|| {
    let source = Source::new(DEMONSTRATION, DEMONSTRATION_TEXT.to_owned());
    let record = read(&source, &CATALOGUE, &mut Complaints::default());
    prints(&record).into_values().flatten().collect()
});

fn prints(record: &Record) -> BTreeMap<&'static str, Vec<Print>> {
    KIND_NAMES
        .iter()
        .map(|kind| {
            (
                *kind,
                record
                    .records(kind)
                    .map(|row| Print::of(kind, row))
                    .collect(),
            )
        })
        .collect()
}

const KIND_NAMES: &[&str] = &[
    "body",
    "bus",
    "plug",
    "connector",
    "adapter",
    "shield_part",
    "seal",
    "consumable",
];

/// Parts of all catalogues of a job.
#[derive(Clone, Debug, Default)]
pub struct Catalogue {
    /// Bodies.
    pub bodies: Vec<Body>,
    /// Buses.
    pub buses: Vec<Bus>,
    /// Plugs.
    pub plugs: Vec<Plug>,
    /// Connectors.
    pub connectors: Vec<Connector>,
    /// Adapters.
    pub adapters: Vec<Adapter>,
    /// Shield restoration and bonding parts.
    pub shield_parts: Vec<ShieldPart>,
    /// Seals.
    pub seals: Vec<Seal>,
    /// Consumables.
    pub consumables: Vec<Consumable>,
    /// Kinds and names of all rows in the files, including rows that could not be read.
    names: BTreeSet<(String, String)>,
    /// Whether every file could be read in full.
    is_whole: bool,
    /// Whether one of the files has a complaint.
    has_complaints: bool,
}

impl Catalogue {
    /// Heads of all rows of all kinds; a kind that is missing here does not compile.
    pub fn heads(&self) -> impl Iterator<Item = &Head> {
        let Catalogue {
            bodies,
            buses,
            plugs,
            connectors,
            adapters,
            shield_parts,
            seals,
            consumables,
            names: _,
            is_whole: _,
            has_complaints: _,
        } = self;
        let all = bodies.iter().map(|row| &row.head);
        all.chain(buses.iter().map(|row| &row.head))
            .chain(plugs.iter().map(|row| &row.head))
            .chain(connectors.iter().map(|row| &row.head))
            .chain(adapters.iter().map(|row| &row.head))
            .chain(shield_parts.iter().map(|row| &row.head))
            .chain(seals.iter().map(|row| &row.head))
            .chain(consumables.iter().map(|row| &row.head))
    }

    /// Reads catalogue files; rows that cannot be read are left out, with a complaint.
    ///
    /// `are_all_read` is false when some file could not even be opened.
    pub fn read(sources: &[Source], are_all_read: bool, complaints: &mut Complaints) -> Catalogue {
        Catalogue::read_for(None, sources, are_all_read, complaints)
    }

    /// Reads catalogue files for the day of a work: papers may have been replaced by then.
    pub fn read_for(
        today: Option<Date>,
        sources: &[Source],
        are_all_read: bool,
        complaints: &mut Complaints,
    ) -> Catalogue {
        let mut catalogue = Catalogue {
            is_whole: are_all_read,
            ..Catalogue::default()
        };
        let mut seen = Seen::default();
        let n_before = complaints.count();
        for source in sources {
            let record = read(source, &CATALOGUE, complaints);
            catalogue.is_whole &= record.is_whole();
            catalogue.names.extend(row_names(&record));
            let mut reader = RowReader {
                source,
                complaints,
                today,
            };
            catalogue
                .bodies
                .extend(rows(&mut reader, &record, "body", &mut seen));
            catalogue
                .buses
                .extend(rows(&mut reader, &record, "bus", &mut seen));
            catalogue
                .plugs
                .extend(rows(&mut reader, &record, "plug", &mut seen));
            catalogue
                .connectors
                .extend(rows(&mut reader, &record, "connector", &mut seen));
            catalogue
                .adapters
                .extend(rows(&mut reader, &record, "adapter", &mut seen));
            catalogue
                .shield_parts
                .extend(rows(&mut reader, &record, "shield_part", &mut seen));
            catalogue
                .seals
                .extend(rows(&mut reader, &record, "seal", &mut seen));
            catalogue
                .consumables
                .extend(rows(&mut reader, &record, "consumable", &mut seen));
        }
        catalogue.has_complaints = complaints.count() > n_before;
        catalogue.mark_hidden(&seen);
        catalogue.sort();
        catalogue
    }

    /// Marks the rows that are too small to be recognised as copies themselves, if they stand beside an unmarked copy.
    fn mark_hidden(&mut self, seen: &Seen) {
        if !seen.has_disguised_copy {
            return;
        }
        for (kind, id, print) in &seen.prints {
            if !DEMONSTRATION_PRINTS.iter().any(|p| print.is_hidden_by(p)) {
                continue;
            }
            match *kind {
                "body" => mark_row(&mut self.bodies, id),
                "bus" => mark_row(&mut self.buses, id),
                "plug" => mark_row(&mut self.plugs, id),
                "connector" => mark_row(&mut self.connectors, id),
                "adapter" => mark_row(&mut self.adapters, id),
                "shield_part" => mark_row(&mut self.shield_parts, id),
                "seal" => mark_row(&mut self.seals, id),
                _ => mark_row(&mut self.consumables, id),
            }
        }
    }

    /// Whether every file could be read in full.
    pub fn is_whole(&self) -> bool {
        self.is_whole
    }

    /// Whether one of the files has a complaint; a row that is not found may stand there.
    pub fn has_complaints(&self) -> bool {
        self.has_complaints
    }

    /// Whether a row of a kind has this name, well formed or not.
    pub fn names_row(&self, kind: &str, id: &str) -> bool {
        self.names.contains(&(kind.to_owned(), id.to_owned()))
    }

    /// Kind of the row with a name, as its table is called; `None` if no row or several have it.
    pub fn kind_of(&self, id: &str) -> Option<&'static str> {
        let mut kinds = KIND_NAMES.iter().filter(|kind| self.names_row(kind, id));
        let kind = kinds.next()?;
        kinds.next().is_none().then_some(*kind)
    }

    /// Sorts the rows by name, so that the order in files changes nothing.
    fn sort(&mut self) {
        self.bodies.sort_by(|a, b| a.head.id.cmp(&b.head.id));
        self.buses.sort_by(|a, b| a.head.id.cmp(&b.head.id));
        self.plugs.sort_by(|a, b| a.head.id.cmp(&b.head.id));
        self.connectors.sort_by(|a, b| a.head.id.cmp(&b.head.id));
        self.adapters.sort_by(|a, b| a.head.id.cmp(&b.head.id));
        self.shield_parts.sort_by(|a, b| a.head.id.cmp(&b.head.id));
        self.seals.sort_by(|a, b| a.head.id.cmp(&b.head.id));
        self.consumables.sort_by(|a, b| a.head.id.cmp(&b.head.id));
    }

    /// Body with a name.
    pub fn body(&self, id: &str) -> Option<&Body> {
        self.bodies.iter().find(|row| row.head.id == id)
    }

    /// Bus with a name.
    pub fn bus(&self, id: &str) -> Option<&Bus> {
        self.buses.iter().find(|row| row.head.id == id)
    }

    /// Plug with a name.
    pub fn plug(&self, id: &str) -> Option<&Plug> {
        self.plugs.iter().find(|row| row.head.id == id)
    }

    /// Connector with a name.
    pub fn connector(&self, id: &str) -> Option<&Connector> {
        self.connectors.iter().find(|row| row.head.id == id)
    }

    /// Adapter with a name.
    pub fn adapter(&self, id: &str) -> Option<&Adapter> {
        self.adapters.iter().find(|row| row.head.id == id)
    }

    /// Shield part with a name.
    pub fn shield_part(&self, id: &str) -> Option<&ShieldPart> {
        self.shield_parts.iter().find(|row| row.head.id == id)
    }

    /// Seal with a name.
    pub fn seal(&self, id: &str) -> Option<&Seal> {
        self.seals.iter().find(|row| row.head.id == id)
    }

    /// Consumable with a name.
    pub fn consumable(&self, id: &str) -> Option<&Consumable> {
        self.consumables.iter().find(|row| row.head.id == id)
    }
}

macro_rules! heads {
    ($($row:ty),*) => { $(
        impl $row {
            /// Whether the part is invented.
            pub fn demonstration(&self) -> bool { self.head.demonstration }
        }
    )* };
}
heads!(
    Body, Bus, Plug, Connector, Adapter, ShieldPart, Seal, Consumable
);

fn row_names(record: &Record) -> impl Iterator<Item = (String, String)> {
    KIND_NAMES.iter().flat_map(move |kind| {
        let ids = record.records(kind).filter_map(|row| row.string("id"));
        ids.map(move |id| ((*kind).to_owned(), id))
    })
}

/// Rows of all files read so far.
#[derive(Default)]
struct Seen {
    /// Names of rows, each with its place.
    places: BTreeMap<String, crate::form::Span>,
    /// Data of rows, with their kinds and names.
    prints: Vec<(&'static str, String, Print)>,
    /// Whether one of them is a copy of an invented row and does not say so.
    has_disguised_copy: bool,
}

fn mark_row<R: Row>(rows: &mut [R], id: &str) {
    for row in rows.iter_mut().filter(|row| row.head().id == id) {
        row.head_mut().demonstration = true;
    }
}

fn rows<R: Row>(
    reader: &mut RowReader<'_>,
    record: &Record,
    kind: &'static str,
    seen: &mut Seen,
) -> Vec<R> {
    let mut rows = Vec::new();
    for row_record in record.records(kind) {
        let Some(mut row) = R::read(reader, row_record) else {
            continue;
        };
        let print = Print::of(kind, row_record);
        let copied = DEMONSTRATION_PRINTS
            .iter()
            .any(|invented| print.copies(invented));
        seen.has_disguised_copy |= copied && !row.head().demonstration;
        seen.prints.push((kind, row.head().id.clone(), print));
        row.mark_as_copy(copied);
        let (id, place) = (row.head().id.clone(), row.head().place.clone());
        if let Some(first) = seen.places.insert(id, place) {
            reader.complain(
                row_record.at("id"),
                format!("The name `{}` is taken by the row at {first}; every part has a name of its own.", row.head().id),
                "Rename one of them.",
            );
            continue;
        }
        rows.push(row);
    }
    rows
}

/// Checks one catalogue file by itself.
pub fn complaints_of(source: &Source) -> Vec<Complaint> {
    let mut complaints = Complaints::default();
    Catalogue::read(std::slice::from_ref(source), true, &mut complaints);
    complaints.into_sorted()
}
