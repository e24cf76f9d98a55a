//! Rust text: a source file split into code and comments, and code split into tokens.
//!
//! Why its own room: every tidy rule must tell a word in code from the same word in a comment or a string.
//!
//! Invariants: all views keep every line break, so a line has the same number in each.
//!
//! Not here: a parser. Tokens and braces suffice for the rules.

/// One file in views of equal line count.
#[derive(Debug)]
pub struct RustText {
    /// Code, with comments and the insides of literals blanked.
    pub code: String,
    /// Comments, with all else blanked.
    pub comments: String,
    /// Literals with their quotes, with all else blanked.
    pub literals: String,
}

/// One token of code: a word, `::`, or a single sign.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Token<'t> {
    /// Its text.
    pub text: &'t str,
    /// Its line, from 1.
    pub line: usize,
    /// Byte where it begins.
    pub at: usize,
}

impl RustText {
    /// Splits a source file.
    pub fn split(source: &str) -> RustText {
        let bytes = source.as_bytes();
        let mut masks = Masks::new(bytes.len());
        let mut at = 0;
        while at < bytes.len() {
            at = match bytes[at] {
                b'/' if bytes.get(at + 1) == Some(&b'/') => masks.comment(at, line_end(bytes, at)),
                b'/' if bytes.get(at + 1) == Some(&b'*') => masks.comment(at, block_end(bytes, at)),
                b'"' => masks.literal(at, text_end(bytes, at + 1)),
                b'r' if !follows_word(bytes, at)
                    || bytes[at - 1] == b'b'
                    || bytes[at - 1] == b'c' =>
                {
                    raw_end(bytes, at).map_or(at + 1, |end| masks.literal(at + 1, end))
                }
                b'\'' => char_end(bytes, at).map_or(at + 1, |end| masks.literal(at, end)),
                _ => at + 1,
            };
        }
        RustText {
            code: masks.view(source, |kind| kind == Kind::Code),
            comments: masks.view(source, |kind| kind == Kind::Comment),
            literals: masks.view(source, |kind| kind == Kind::Literal),
        }
    }

    /// Lines of literals outside of items that are compiled for tests only, with their numbers from 1.
    pub fn literals_without_tests(&self) -> Vec<(usize, &str)> {
        let kept = self.code_without_tests();
        let (mut is_test, mut found) = (false, Vec::new());
        let lines = self
            .code
            .lines()
            .zip(kept.lines())
            .zip(self.literals.lines());
        for (index, ((code, kept), literals)) in lines.enumerate() {
            // A line without code belongs to the item of the line before.
            if !code.trim().is_empty() {
                is_test = kept.trim().is_empty();
            }
            if !is_test && !literals.trim().is_empty() {
                found.push((index + 1, literals));
            }
        }
        found
    }

    /// Code without the items that are compiled for tests only.
    pub fn code_without_tests(&self) -> String {
        without_tests(&self.code)
    }
}

/// Whether a file holds only tests or benches, by its folder or its name.
pub fn is_test_file(path: &str) -> bool {
    let stem = path
        .rsplit('/')
        .next()
        .unwrap_or(path)
        .trim_end_matches(".rs");
    path.starts_with("tests/")
        || path.contains("/tests/")
        || path.contains("/benches/")
        || path.starts_with("benches/")
        || stem == "tests"
        || stem.ends_with("_tests")
}

/// Tokens of code.
pub fn tokens(code: &str) -> Vec<Token<'_>> {
    let bytes = code.as_bytes();
    let is_word = |b: u8| b.is_ascii_alphanumeric() || b == b'_' || b >= 0x80;
    let (mut found, mut at, mut line) = (Vec::new(), 0, 1);
    while at < bytes.len() {
        let start = at;
        if is_word(bytes[at]) {
            while at < bytes.len() && is_word(bytes[at]) {
                at += 1;
            }
        } else if bytes[at..].starts_with(b"::") || bytes[at..].starts_with(b"->") {
            at += 2;
        } else {
            at += 1;
        }
        match bytes[start] {
            b'\n' => line += 1,
            b if b.is_ascii_whitespace() => {}
            _ => found.push(Token {
                text: &code[start..at],
                line,
                at: start,
            }),
        }
    }
    found
}

/// Index of the token that closes the bracket at `open`, or the last index if none does.
pub fn closing(tokens: &[Token<'_>], open: usize) -> usize {
    let mut depth = 0_usize;
    for (index, token) in tokens.iter().enumerate().skip(open) {
        match token.text {
            "{" | "(" | "[" => depth += 1,
            "}" | ")" | "]" => depth = depth.saturating_sub(1),
            _ => {}
        }
        if depth == 0 {
            return index;
        }
    }
    tokens.len().saturating_sub(1)
}

fn without_tests(code: &str) -> String {
    let tokens = tokens(code);
    let mut bytes = code.as_bytes().to_vec();
    let mut index = 0;
    while index < tokens.len() {
        let is_gate = texts(&tokens, index, 7) == ["#", "[", "cfg", "(", "test", ")", "]"];
        if !is_gate {
            index += 1;
            continue;
        }
        let last = item_end(&tokens, index + 7);
        let end = tokens
            .get(last)
            .map_or(bytes.len(), |token| token.at + token.text.len());
        for byte in &mut bytes[tokens[index].at..end] {
            if *byte != b'\n' {
                *byte = b' ';
            }
        }
        index = last + 1;
    }
    String::from_utf8_lossy(&bytes).into_owned()
}

/// Texts of up to `count` tokens from `index` on.
pub fn texts<'t>(tokens: &[Token<'t>], index: usize, count: usize) -> Vec<&'t str> {
    tokens
        .iter()
        .skip(index)
        .take(count)
        .map(|token| token.text)
        .collect()
}

/// Index of the last token of the item that begins at `start`: its `;` or the brace that closes its body.
fn item_end(tokens: &[Token<'_>], start: usize) -> usize {
    let mut index = start;
    while index < tokens.len() {
        match tokens[index].text {
            ";" => return index,
            "{" => return closing(tokens, index),
            "(" | "[" => index = closing(tokens, index) + 1,
            _ => index += 1,
        }
    }
    tokens.len().saturating_sub(1)
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Kind {
    Code,
    Comment,
    Literal,
}

/// Kind of each byte of a file.
struct Masks(Vec<Kind>);

impl Masks {
    fn new(size: usize) -> Masks {
        Masks(vec![Kind::Code; size])
    }

    fn comment(&mut self, from: usize, to: usize) -> usize {
        self.0[from..to].fill(Kind::Comment);
        to
    }

    fn literal(&mut self, from: usize, to: usize) -> usize {
        self.0[from..to].fill(Kind::Literal);
        to
    }

    fn view(&self, source: &str, is_shown: impl Fn(Kind) -> bool) -> String {
        source
            .char_indices()
            .map(|(at, letter)| {
                if letter == '\n' || is_shown(self.0[at]) {
                    letter
                } else {
                    ' '
                }
            })
            .collect()
    }
}

fn follows_word(bytes: &[u8], at: usize) -> bool {
    at > 0 && (bytes[at - 1].is_ascii_alphanumeric() || bytes[at - 1] == b'_')
}

fn line_end(bytes: &[u8], at: usize) -> usize {
    bytes[at..]
        .iter()
        .position(|b| *b == b'\n')
        .map_or(bytes.len(), |n| at + n)
}

fn block_end(bytes: &[u8], start: usize) -> usize {
    let (mut at, mut depth) = (start, 0_usize);
    while at < bytes.len() {
        if bytes[at..].starts_with(b"/*") {
            depth += 1;
            at += 2;
        } else if bytes[at..].starts_with(b"*/") {
            depth -= 1;
            at += 2;
            if depth == 0 {
                return at;
            }
        } else {
            at += 1;
        }
    }
    bytes.len()
}

/// End of a text literal whose first letter stands at `at`.
fn text_end(bytes: &[u8], mut at: usize) -> usize {
    while at < bytes.len() {
        match bytes[at] {
            b'\\' => at += 2,
            b'"' => return at + 1,
            _ => at += 1,
        }
    }
    bytes.len()
}

/// End of a raw text literal whose `r` stands at `at`, or `None` if the `r` belongs to another word.
fn raw_end(bytes: &[u8], at: usize) -> Option<usize> {
    let n_hashes = bytes[at + 1..].iter().take_while(|b| **b == b'#').count();
    let quote = at + 1 + n_hashes;
    if bytes.get(quote) != Some(&b'"') {
        return None;
    }
    let mut closing = vec![b'"'];
    closing.extend(std::iter::repeat_n(b'#', n_hashes));
    let found = bytes[quote + 1..]
        .windows(closing.len())
        .position(|window| window == closing.as_slice());
    Some(found.map_or(bytes.len(), |n| quote + 1 + n + closing.len()))
}

/// End of a letter literal whose quote stands at `at`, or `None` if the quote begins a lifetime.
fn char_end(bytes: &[u8], at: usize) -> Option<usize> {
    match bytes.get(at + 1)? {
        b'\\' => bytes[at + 3..]
            .iter()
            .position(|b| *b == b'\'')
            .map(|n| at + 4 + n),
        first => {
            // A letter beyond ASCII takes two to four bytes.
            let size = match first {
                0..=0x7f => 1,
                0x80..=0xdf => 2,
                0xe0..=0xef => 3,
                _ => 4,
            };
            (bytes.get(at + 1 + size) == Some(&b'\'')).then_some(at + 2 + size)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(source: &str, code: &str, comments: &str) {
        let text = RustText::split(source);
        let squeeze = |view: &str| view.split_whitespace().collect::<Vec<_>>().join(" ");
        assert_eq!(squeeze(&text.code), code);
        assert_eq!(squeeze(&text.comments), comments);
        assert_eq!(text.code.lines().count(), source.lines().count());
    }

    #[test]
    fn comments_and_code_are_told_apart() {
        check("let a = 1; // why\nlet b;", "let a = 1; let b;", "// why");
        check(
            "/* a /* b */ c */ fn f() {}",
            "fn f() {}",
            "/* a /* b */ c */",
        );
    }

    #[test]
    fn the_inside_of_a_literal_is_neither() {
        check(r#"let a = "// {" ; b"#, "let a = ; b", "");
        check(r#"let a = "\"}" ; b"#, "let a = ; b", "");
        check("let a = r#\"\" // \"# ; b", "let a = r ; b", "");
        check(
            "let q = '\"' ; let n = '\\'' ; let u = 'µ' ; b",
            "let q = ; let n = ; let u = ; b",
            "",
        );
    }

    #[test]
    fn a_lifetime_is_code() {
        check("fn f<'a>(x: &'a str) {}", "fn f<'a>(x: &'a str) {}", "");
    }

    #[test]
    fn items_for_tests_only_are_blanked() {
        let source = "fn a() {}\n#[cfg(test)]\nmod tests {\n fn b() { {} }\n}\nfn c() {}\n#[cfg(test)]\nmod d;\nfn e() {}";
        let code = RustText::split(source).code_without_tests();
        let words: Vec<&str> = code.split_whitespace().collect();
        assert_eq!(words.join(" "), "fn a() {} fn c() {} fn e() {}");
    }

    #[test]
    fn tokens_carry_their_lines() {
        let found = tokens("use a::b;\nfn µ() -> u8");
        let shown: Vec<String> = found
            .iter()
            .map(|token| format!("{}{}", token.line, token.text))
            .collect();
        assert_eq!(shown.join(" "), "1use 1a 1:: 1b 1; 2fn 2µ 2( 2) 2-> 2u8");
    }

    #[test]
    fn test_files_are_known_by_place_or_name() {
        for path in [
            "tests/story/a.rs",
            "crates/a/tests/b.rs",
            "crates/a/src/parse_tests.rs",
            "crates/a/benches/b.rs",
        ] {
            assert!(is_test_file(path), "{path}");
        }
        assert!(!is_test_file("crates/a/src/attests_nothing.rs"));
    }
}
