//! Nouns: names of layers, planes, parts and the like in a tongue.

use crate::{Language, Tongue, english, spanish};
use jointwright_joint::cable::{Conductor, Layer, Metal, Stranding};
use jointwright_joint::catalogue::{Means, PartKind, die_words};
use jointwright_joint::job::JointKind;
use jointwright_joint::limit::Subject;
use jointwright_joint::material::ItemKind;
use jointwright_joint::plan::{GapState, StateDoc};
use jointwright_joint::plane::Plane;

impl Tongue {
    /// A layer.
    pub fn layer(self, layer: Layer) -> &'static str {
        match self.language {
            Language::English => layer.name(self.words),
            Language::Spanish => spanish::noun::layer(layer, self.words),
        }
    }

    /// A plane.
    pub fn plane(self, plane: Plane) -> String {
        match self.language {
            Language::English => english::noun::plane(plane, self.words),
            Language::Spanish => spanish::noun::plane(plane, self.words),
        }
    }

    /// Subject of a statement: "leg A, phase 1".
    pub fn subject(self, subject: &Subject) -> String {
        match self.language {
            Language::English => subject.words(),
            Language::Spanish => spanish::noun::subject(subject),
        }
    }

    /// A kind of part.
    pub fn part(self, part: PartKind) -> &'static str {
        match self.language {
            Language::English => part.name(),
            Language::Spanish => spanish::noun::part(part),
        }
    }

    /// A kind of what is on the truck.
    pub fn item(self, item: ItemKind) -> &'static str {
        match self.language {
            Language::English => item.name(),
            Language::Spanish => spanish::noun::item(item),
        }
    }

    /// A metal.
    pub fn metal(self, metal: Metal) -> &'static str {
        match self.language {
            Language::English => metal.name(self.words),
            Language::Spanish => spanish::noun::metal(metal),
        }
    }

    /// Arrangement of the strands.
    pub fn stranding(self, stranding: Stranding) -> &'static str {
        match self.language {
            Language::English => stranding.name(),
            Language::Spanish => spanish::noun::stranding(stranding),
        }
    }

    /// A kind of joint, before or after "joint": "straight", "recto".
    pub fn joint_kind(self, kind: JointKind) -> &'static str {
        match self.language {
            Language::English => kind.name(),
            Language::Spanish => spanish::noun::joint_kind(kind),
        }
    }

    /// Grip of a connector.
    pub fn means(self, means: Means) -> &'static str {
        match self.language {
            Language::English => means.name(),
            Language::Spanish => spanish::noun::means(means),
        }
    }

    /// A die by its name, which may say already that it is one.
    pub fn die(self, die: &str) -> String {
        match self.language {
            Language::English => die_words(die),
            Language::Spanish => spanish::noun::die(die),
        }
    }

    /// Whether something was computed.
    pub fn state(self, state: StateDoc) -> &'static str {
        match self.language {
            Language::English => state.words(),
            Language::Spanish => spanish::noun::state(state),
        }
    }

    /// Content of a gap.
    pub fn gap(self, state: GapState) -> &'static str {
        match (self.language, state) {
            (Language::English, GapState::Filled) => "a thread of air across its filler",
            (Language::English, GapState::Empty) => "empty",
            (Language::Spanish, GapState::Filled) => "un canal de aire a través de su relleno",
            (Language::Spanish, GapState::Empty) => "sin relleno (con aire)",
        }
    }

    /// A check by its name in documents, in a few words; a name that is no check's stays as it is.
    pub fn check(self, slug: &str) -> String {
        let english = || slug.replace('_', " ");
        match self.language {
            Language::English => english(),
            Language::Spanish => spanish::check::name(slug).map_or_else(english, str::to_owned),
        }
    }

    /// A conductor, as `4/0 AWG aluminum compressed`.
    pub fn conductor(self, conductor: Conductor) -> String {
        let (metal, stranding) = (
            self.metal(conductor.metal),
            self.stranding(conductor.stranding),
        );
        match self.language {
            Language::English => format!("{} {metal} {stranding}", conductor.size),
            Language::Spanish => format!("{} de {metal} {stranding}", conductor.size),
        }
    }

    /// One thing or another.
    pub(crate) fn or<T: AsRef<str>>(self, names: &[T]) -> String {
        let names: Vec<&str> = names.iter().map(AsRef::as_ref).collect();
        match self.language {
            Language::English => names.join(" or "),
            Language::Spanish => names.join(" o "),
        }
    }
}
