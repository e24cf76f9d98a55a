//! Scratch: a separate folder for each test that must write.

use std::path::PathBuf;

/// Makes an empty folder for one test; `name` must differ between tests.
pub fn folder(name: &str) -> PathBuf {
    let folder = std::env::temp_dir().join(format!("xtask-{}-{name}", std::process::id()));
    if folder.exists() {
        std::fs::remove_dir_all(&folder).expect("an old scratch folder can go");
    }
    std::fs::create_dir_all(&folder).expect("a scratch folder can be made");
    folder
}
