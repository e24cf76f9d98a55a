//! Does every document have one title, and does every link to a file lead to one?

use super::{Complaint, Report};
use crate::tree::Tree;

/// Judges every document.
pub fn judge(tree: &Tree) -> Report {
    let mut complaints = Vec::new();
    for (path, text) in tree.files("", ".md") {
        complaints.extend(judge_titles(path, text));
        for (target, line) in links(text) {
            if resolve(path, &target).is_none_or(|file| !tree.holds(&file)) {
                let found = format!("the link to `{target}` leads nowhere");
                complaints.push(Complaint::at(
                    path,
                    line,
                    found,
                    "correct the path, which is read from the document's own folder",
                ));
            }
        }
    }
    complaints.into()
}

/// Lines outside fenced blocks with their numbers.
fn prose(text: &str) -> impl Iterator<Item = (usize, &str)> {
    let mut is_inside = false;
    text.lines().enumerate().filter_map(move |(index, line)| {
        let is_fence = line.trim_start().starts_with("```");
        is_inside ^= is_fence;
        (!is_inside && !is_fence).then_some((index + 1, line))
    })
}

fn judge_titles(path: &str, text: &str) -> Option<Complaint> {
    let titles: Vec<usize> = prose(text)
        .filter(|(_, line)| line.starts_with("# "))
        .map(|(line, _)| line)
        .collect();
    match titles.as_slice() {
        [_] => None,
        [] => Some(Complaint::of(
            path,
            "it has no title",
            "begin it with `# ` and what it is about",
        )),
        [_, second, ..] => {
            let cure = "lower the second one to `## `, or make it a document of its own";
            Some(Complaint::at(path, *second, "it has a second title", cure))
        }
    }
}

/// Targets of relative links with their lines, without anchors.
fn links(text: &str) -> Vec<(String, usize)> {
    let mut found = Vec::new();
    for (number, line) in prose(text) {
        let line: String = line.split('`').step_by(2).collect::<Vec<_>>().join(" ");
        for (at, _) in line.match_indices("](") {
            let inner = &line[at + 2..];
            let target = inner.split([')', ' ', '#']).next().unwrap_or_default();
            let is_outside = target.contains(':') || target.is_empty();
            if !is_outside {
                found.push((target.to_owned(), number));
            }
        }
    }
    found
}

/// Path from the root of a link that stands in `document`, or `None` if it climbs out of the tree.
fn resolve(document: &str, target: &str) -> Option<String> {
    let mut parts: Vec<&str> = document.split('/').collect();
    parts.pop();
    for step in target.split('/') {
        match step {
            "" | "." => {}
            ".." => {
                parts.pop()?;
            }
            name => parts.push(name),
        }
    }
    Some(parts.join("/"))
}

#[cfg(test)]
mod tests {
    use super::super::check;
    use super::*;

    #[track_caller]
    fn check_text(text: &str, expected: &[&str]) {
        check(
            judge,
            &[("docs/howto/a.md", text), ("STYLE.md", "# Style\n")],
            expected,
        );
    }

    #[test]
    fn one_title_and_links_that_lead_somewhere_are_right() {
        check_text(
            "# A\n\n[style](../../STYLE.md#tests) [out](https://example.org/x) [here](#b) [folder](../howto)\n",
            &[],
        );
        check_text(
            "# A\n\n```sh\n# a comment\n```\n`[shown](nowhere.md)`\n",
            &[],
        );
    }

    #[test]
    fn a_missing_or_second_title_is_named() {
        check_text("words\n", &["a.md: it has no title"]);
        check_text("# A\n\n# B\n", &["a.md:3: it has a second title"]);
    }

    #[test]
    fn a_link_that_leads_nowhere_is_named() {
        check_text(
            "# A\n\n[gone](gone.md)\n",
            &["a.md:3: the link to `gone.md` leads nowhere"],
        );
        check_text("# A\n\n[out](../../../x.md)\n", &["leads nowhere"]);
    }
}
