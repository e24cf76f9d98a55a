//! Tree: the files and folders of the repository, read once.
//!
//! Why its own room: every tidy rule judges the same picture of the tree, and its tests build a small one in memory.
//!
//! Invariants: paths are relative to the root and use `/`; build results, outputs and `.git` are left out.

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};

use crate::error::ChoreError;

/// Folders that tools make, wherever they stand.
const SKIPPED_FOLDERS: &[&str] = &[
    "target",
    "out",
    ".git",
    "node_modules",
    "mutants.out",
    "mutants.out.old",
];

/// Files (as text) and folders of the repository.
#[derive(Debug, Default)]
pub struct Tree {
    files: BTreeMap<String, String>,
    folders: BTreeSet<String>,
}

impl Tree {
    /// Reads the tree below `root`.
    /// Bytes that are not UTF-8 are replaced, because only text is judged.
    ///
    /// # Errors
    /// If a file or folder cannot be read.
    pub fn read(root: &Path) -> Result<Tree, ChoreError> {
        let mut tree = Tree::default();
        tree.read_folder(root, "")?;
        Ok(tree)
    }

    /// Tree of these files, for tests.
    #[cfg(test)]
    pub fn of(files: &[(&str, &str)]) -> Tree {
        let mut tree = Tree::default();
        for (path, text) in files {
            tree.insert(path, text);
        }
        tree
    }

    /// Adds a file and the folders above it.
    #[cfg(test)]
    fn insert(&mut self, path: &str, text: &str) {
        for (at, _) in path.match_indices('/') {
            self.folders.insert(path[..at].to_owned());
        }
        self.files.insert(path.to_owned(), text.to_owned());
    }

    fn read_folder(&mut self, folder: &Path, prefix: &str) -> Result<(), ChoreError> {
        let unreadable = |source| ChoreError::Read {
            path: folder.to_owned(),
            source,
        };
        for entry in std::fs::read_dir(folder).map_err(unreadable)? {
            let entry = entry.map_err(unreadable)?;
            let name = entry.file_name().to_string_lossy().into_owned();
            let path = format!("{prefix}{name}");
            let kind = entry.file_type().map_err(unreadable)?;
            if kind.is_dir() {
                if !SKIPPED_FOLDERS.contains(&name.as_str()) {
                    self.folders.insert(path.clone());
                    self.read_folder(&entry.path(), &format!("{path}/"))?;
                }
            } else if kind.is_file() {
                let bytes = std::fs::read(entry.path()).map_err(|source| ChoreError::Read {
                    path: entry.path(),
                    source,
                })?;
                self.files
                    .insert(path, String::from_utf8_lossy(&bytes).into_owned());
            }
        }
        Ok(())
    }

    /// Text of a file.
    pub fn text(&self, path: &str) -> Option<&str> {
        self.files.get(path).map(String::as_str)
    }

    /// Every file whose path begins with `prefix` and ends with `ending`, in order of path.
    pub fn files<'t>(
        &'t self,
        prefix: &'t str,
        ending: &'t str,
    ) -> impl Iterator<Item = (&'t str, &'t str)> {
        self.files
            .iter()
            .map(|(path, text)| (path.as_str(), text.as_str()))
            .filter(move |(path, _)| path.starts_with(prefix) && path.ends_with(ending))
    }

    /// Every folder, in order of path.
    pub fn folders(&self) -> impl Iterator<Item = &str> {
        self.folders.iter().map(String::as_str)
    }

    /// Whether a file or a folder stands at `path`.
    pub fn holds(&self, path: &str) -> bool {
        let path = path.trim_end_matches('/');
        path.is_empty() || self.files.contains_key(path) || self.folders.contains(path)
    }

    /// Names directly below `folder`, folders and files alike.
    pub fn names_in(&self, folder: &str) -> Vec<&str> {
        let prefix = format!("{folder}/");
        self.folders()
            .chain(self.files.keys().map(String::as_str))
            .filter_map(|path| path.strip_prefix(&prefix))
            .filter(|name| !name.contains('/'))
            .collect()
    }
}

/// Root of the repository: the nearest folder at or above `start` whose Cargo.toml names a workspace.
///
/// # Errors
/// If there is none.
pub fn find_root(start: &Path) -> Result<PathBuf, ChoreError> {
    start
        .ancestors()
        .find(|folder| {
            std::fs::read_to_string(folder.join("Cargo.toml"))
                .is_ok_and(|text| text.lines().any(|line| line.trim() == "[workspace]"))
        })
        .map(Path::to_path_buf)
        .ok_or_else(|| ChoreError::NoWorkspace {
            start: start.to_owned(),
        })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_tree_read_from_disk_leaves_out_what_tools_make() {
        let folder = crate::scratch::folder("tree");
        for path in ["crates/a", "target/x", "out/y", "crates/node_modules"] {
            std::fs::create_dir_all(folder.join(path)).expect("scratch folder");
        }
        std::fs::write(folder.join("crates/a/one.rs"), "fn one() {}").expect("scratch file");
        std::fs::write(folder.join("target/x/two.rs"), "fn two() {}").expect("scratch file");
        let tree = Tree::read(&folder).expect("the scratch tree can be read");
        assert_eq!(tree.folders().collect::<Vec<_>>(), ["crates", "crates/a"]);
        assert_eq!(
            tree.files("", "").map(|(path, _)| path).collect::<Vec<_>>(),
            ["crates/a/one.rs"]
        );
        assert_eq!(tree.names_in("crates"), ["a"]);
        std::fs::remove_dir_all(folder).expect("scratch folder can go");
    }

    #[test]
    fn the_root_is_found_from_a_folder_far_below_and_missed_outside() {
        let folder = crate::scratch::folder("root");
        let below = folder.join("crates/a/src");
        std::fs::create_dir_all(&below).expect("scratch folder");
        assert!(find_root(&below).is_err() || find_root(&below).is_ok_and(|root| root != folder));
        std::fs::write(folder.join("Cargo.toml"), "[workspace]\n").expect("scratch file");
        assert_eq!(find_root(&below).ok(), Some(folder.clone()));
        std::fs::remove_dir_all(folder).expect("scratch folder can go");
    }
}
