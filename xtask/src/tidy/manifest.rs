//! Manifest: the dependencies that a Cargo.toml names.
//!
//! Why its own room: two rules read it, one about our crates and one about third-party crates.

use crate::tree::Tree;

/// One workspace member.
#[derive(Debug)]
pub struct Member {
    /// Name of its folder: `units`, `joint`, `xtask`.
    pub folder_name: String,
    /// Path of its Cargo.toml.
    pub path: String,
    /// Name of its package.
    pub package: String,
    /// Its dependencies: build dependencies included, development dependencies left out.
    pub dependencies: Vec<Dependency>,
}

/// One dependency.
#[derive(Debug)]
pub struct Dependency {
    /// Name of the package.
    pub name: String,
    /// Line of the manifest.
    pub line: usize,
    /// Whether it is taken from `[workspace.dependencies]`.
    pub is_from_workspace: bool,
}

/// Every member of the workspace.
/// A manifest that is not TOML is skipped: cargo complains about it.
pub fn members(tree: &Tree) -> Vec<Member> {
    tree.files("", "Cargo.toml")
        .filter(|(path, _)| path.starts_with("crates/") || path.starts_with("xtask/"))
        .filter_map(|(path, text)| member(path, text))
        .collect()
}

fn member(path: &str, text: &str) -> Option<Member> {
    let manifest: toml::Table = text.parse().ok()?;
    let package = manifest.get("package")?.get("name")?.as_str()?.to_owned();
    let folder_name = path.rsplit('/').nth(1)?.to_owned();
    let mut tables: Vec<&toml::Value> = Vec::new();
    let mut places: Vec<&toml::Table> = vec![&manifest];
    if let Some(targets) = manifest.get("target").and_then(toml::Value::as_table) {
        places.extend(targets.values().filter_map(toml::Value::as_table));
    }
    for place in places {
        tables.extend(
            ["dependencies", "build-dependencies"]
                .iter()
                .filter_map(|key| place.get(*key)),
        );
    }
    let dependencies = tables
        .into_iter()
        .filter_map(toml::Value::as_table)
        .flatten()
        .map(|(key, value)| Dependency {
            // A crate may be renamed where it is used; the arrow leads to the crate itself.
            name: value
                .get("package")
                .and_then(toml::Value::as_str)
                .unwrap_or(key)
                .to_owned(),
            line: line_of(text, key),
            is_from_workspace: value.get("workspace").and_then(toml::Value::as_bool) == Some(true),
        })
        .collect();
    Some(Member {
        folder_name,
        path: path.to_owned(),
        package,
        dependencies,
    })
}

fn line_of(text: &str, key: &str) -> usize {
    let begins = |line: &str| {
        let line = line.trim_start();
        line.strip_prefix(key)
            .is_some_and(|rest| rest.starts_with([' ', '.', '=']))
    };
    text.lines().position(begins).map_or(1, |index| index + 1)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_manifest_names_its_package_and_what_it_uses() {
        let text = "[package]\nname = \"jointwright-units\"\n[dependencies]\nserde.workspace = true\nodd = { package = \"other\", version = \"1\" }\n[dev-dependencies]\nproptest = \"1\"\n[target.'cfg(unix)'.dependencies]\nlibc = \"1\"\n";
        let members = members(&Tree::of(&[("crates/units/Cargo.toml", text)]));
        let shown: Vec<String> = members[0]
            .dependencies
            .iter()
            .map(|d| format!("{} {} {}", d.name, d.line, d.is_from_workspace))
            .collect();
        assert_eq!(members[0].folder_name, "units");
        assert_eq!(members[0].package, "jointwright-units");
        assert_eq!(shown, ["other 5 false", "serde 4 true", "libc 9 false"]);
    }
}
