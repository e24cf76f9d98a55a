//! Fixed: texts without arguments, a row each, in every language.

/// An enum of texts without arguments: its name, then a row a text: key, English, Spanish. A row without one of them does not compile.
///
/// Places that a page fills stand in braces; a test holds that every language has the same.
macro_rules! fixed {
    ($(#[$about:meta])* $name:ident { $($key:ident => $english:literal, $spanish:literal;)* }) => {
        $(#[$about])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, serde::Deserialize, schemars::JsonSchema)]
        #[serde(rename_all = "kebab-case")]
        #[allow(missing_docs, reason = "the name of a label says what is said")]
        pub enum $name { $($key,)* }

        impl $name {
            /// All of them.
            pub const ALL: &[$name] = &[$($name::$key,)*];

            /// Its name, for a template.
            pub const fn key(self) -> &'static str {
                match self { $($name::$key => stringify!($key),)* }
            }
        }

        impl crate::label::Label for $name {
            fn text(&self, tongue: crate::Tongue) -> String {
                use jointwright_joint::said::Language;
                match (self, tongue.language) {
                    $(($name::$key, Language::English) => $english.to_owned(),
                    ($name::$key, Language::Spanish) => $spanish.to_owned(),)*
                }
            }
        }
    };
}

pub(crate) use fixed;
