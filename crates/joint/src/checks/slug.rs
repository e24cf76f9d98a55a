//! Slug: the name of a check, which is the name of its file.

/// Last name of a module's path: the slug of the check in that file.
pub(super) const fn slug(module: &'static str) -> &'static str {
    let bytes = module.as_bytes();
    let mut begins = bytes.len();
    while begins > 0 && bytes[begins - 1] != b':' {
        begins -= 1;
    }
    module.split_at(begins).1
}
