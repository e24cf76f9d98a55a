//! Uses: the paths in a source file that lead to other modules of its crate.
//!
//! Why its own room: two tidy rules ask who uses whom, one between rooms and one inside them.
//!
//! Not here: names that a macro makes, and `use` of a whole module by `*`.

use crate::rust_text::{Token, closing};

/// A path in code that begins with `crate` or climbs with `super`, resolved from the root of the crate.
#[derive(Debug)]
pub struct Use {
    /// Names of the path, the first one below the root of the crate.
    pub parts: Vec<String>,
    /// Line, from 1.
    pub line: usize,
}

/// Module path of a file below `src`: `form/walk.rs` is form, walk; `form/mod.rs` is form.
pub fn module_path(file: &str) -> Vec<String> {
    let mut parts: Vec<String> = file
        .trim_end_matches(".rs")
        .split('/')
        .map(str::to_owned)
        .collect();
    if parts.last().is_some_and(|name| name == "mod") {
        parts.pop();
    }
    parts
}

/// Every use of `crate::…` and `super::…`, with groups in braces expanded.
pub fn uses(tokens: &[Token<'_>], own: &[String]) -> Vec<Use> {
    let mut found = Vec::new();
    // Inline modules that are open at this token, each with the token that closes it.
    let mut inline: Vec<(String, usize)> = Vec::new();
    let mut index = 0;
    while index < tokens.len() {
        inline.retain(|(_, last)| *last > index);
        let text = tokens[index].text;
        if text == "mod" && tokens.get(index + 2).is_some_and(|token| token.text == "{") {
            inline.push((
                tokens[index + 1].text.to_owned(),
                closing(tokens, index + 2),
            ));
        }
        let is_path = matches!(text, "crate" | "super")
            && tokens.get(index + 1).is_some_and(|t| t.text == "::");
        if !is_path {
            index += 1;
            continue;
        }
        let mut base: Vec<String> = Vec::new();
        if text == "super" {
            base.extend(own.iter().cloned());
            base.extend(inline.iter().map(|(name, _)| name.clone()));
            base.pop();
        }
        let mut next = index + 2;
        while tokens.get(next).is_some_and(|t| t.text == "super")
            && tokens.get(next + 1).is_some_and(|t| t.text == "::")
        {
            base.pop();
            next += 2;
        }
        expand(tokens, next, &base, &mut found);
        index = next;
    }
    found
}

/// Names that `use` statements of a module take from its children, as paths from the root of the crate, with groups in braces expanded.
///
/// A path counts if its first name, after any `self::`, is one of the children.
pub fn taken_from_children(
    tokens: &[Token<'_>],
    own: &[String],
    is_child: &impl Fn(&str) -> bool,
) -> Vec<Use> {
    let mut found = Vec::new();
    for (index, _) in tokens.iter().enumerate().filter(|(_, t)| t.text == "use") {
        let is_self = tokens.get(index + 1).is_some_and(|t| t.text == "self");
        expand(tokens, index + if is_self { 3 } else { 1 }, own, &mut found);
    }
    found.retain(|used| used.parts.get(own.len()).is_some_and(|name| is_child(name)));
    found
}

/// Adds the path that continues at `index`.
fn expand(tokens: &[Token<'_>], index: usize, base: &[String], found: &mut Vec<Use>) {
    let Some(token) = tokens.get(index) else {
        return;
    };
    if token.text != "{" {
        let mut parts = base.to_vec();
        parts.push(token.text.to_owned());
        let goes_on = tokens.get(index + 1).is_some_and(|t| t.text == "::");
        if goes_on {
            expand(tokens, index + 2, &parts, found);
        } else {
            found.push(Use {
                parts,
                line: token.line,
            });
        }
        return;
    }
    let last = closing(tokens, index);
    let mut item = index + 1;
    while item < last {
        if tokens[item].text != "self" {
            expand(tokens, item, base, found);
        } else {
            found.push(Use {
                parts: base.to_vec(),
                line: tokens[item].line,
            });
        }
        // Moves to the comma that ends this item, past any group inside it.
        while item < last && tokens[item].text != "," {
            item = if tokens[item].text == "{" {
                closing(tokens, item) + 1
            } else {
                item + 1
            };
        }
        item += 1;
    }
}
