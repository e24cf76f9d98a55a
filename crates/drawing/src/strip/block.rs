//! Block: texts that stand together beside a mark, arranged so that none lies on another.

use super::layout::TEXT;
use crate::canvas::{BLACK, Words};
use crate::label::wrapped;

/// Room between two blocks of text, mm.
pub(super) const BETWEEN: f64 = 1.4;
/// Ratio of the height of a line to the size of its letters.
pub(super) const LINE: f64 = 1.22;
/// Ratio of the usual width of a letter to its size, bold and not.
pub(super) const LETTER: [f64; 2] = [0.60, 0.54];
/// A space at which no line is broken: a broken number can be read as another number.
const WITHIN: char = '\u{1}';

/// One line of text.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Line {
    pub(super) text: String,
    pub(super) size: f64,
    is_bold: bool,
}

impl Line {
    pub(super) fn bold(size: f64, text: &str) -> Line {
        Line {
            text: text.to_owned(),
            size,
            is_bold: true,
        }
    }

    /// The line at a place of the strip.
    pub(super) fn words(&self, at: [f64; 2]) -> Words {
        let words = Words::new(at, self.size, &self.text).inked(BLACK);
        if self.is_bold { words.bold() } else { words }
    }

    /// Lines of a text that fit the column of texts.
    pub(super) fn wrapped(size: f64, is_bold: bool, text: &str) -> Vec<Line> {
        let letter = LETTER[usize::from(!is_bold)];
        let letters = ((TEXT[1] - TEXT[0]) / (letter * size)).floor() as usize;
        wrapped(text, letters, 12)
            .into_iter()
            .map(|text| Line {
                text,
                size,
                is_bold,
            })
            .collect()
    }
}

/// Texts that stand together, and their mark.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Block {
    /// Place of the mark, mm from the conductor end; `None` for head and tail.
    pub(super) mark: Option<f64>,
    pub(super) lines: Vec<Line>,
    /// Top, mm.
    pub(super) top: f64,
}

impl Block {
    pub(super) fn height(&self) -> f64 {
        self.lines.iter().map(|line| line.size * LINE).sum()
    }

    pub(super) fn bottom(&self) -> f64 {
        self.top + self.height()
    }
}

/// Text whose numbers are not broken over two lines.
pub(super) fn unbroken(text: &str) -> String {
    let letters: Vec<char> = text.chars().collect();
    let beside_digit = |at: usize| {
        let digit = |at: Option<usize>| {
            at.and_then(|at| letters.get(at))
                .is_some_and(char::is_ascii_digit)
        };
        digit(at.checked_sub(1))
            && letters
                .get(at + 1)
                .is_some_and(|c| c.is_ascii_digit() || matches!(c, 'i' | 'm'))
    };
    letters
        .iter()
        .enumerate()
        .map(|(at, letter)| {
            if *letter == ' ' && beside_digit(at) {
                WITHIN
            } else {
                *letter
            }
        })
        .collect()
}

/// Blocks with the floating ones placed where there is room, else at the end; `None` if they do not fit.
pub(super) fn arranged(marks: Vec<Block>, floating: Vec<Block>, most: f64) -> Option<Vec<Block>> {
    let mut blocks = placed(marks, most)?;
    for mut block in floating {
        let room = block.height() + 2.0 * BETWEEN;
        let gap = (0..blocks.len()).find(|at| {
            let next = blocks.get(at + 1).map_or(most, |b| b.top);
            next - blocks[*at].bottom() >= room
        });
        let at = gap.unwrap_or(blocks.len() - 1);
        block.top = blocks[at].bottom() + BETWEEN;
        blocks.insert(at + 1, block);
        if gap.is_none() {
            blocks = placed(blocks, most)?;
        }
    }
    Some(blocks)
}

/// Blocks moved so that none lies on another and all lie above `most`, in the order of their marks; `None` if they do not fit.
fn placed(mut blocks: Vec<Block>, most: f64) -> Option<Vec<Block>> {
    let mut free_from = 0.0;
    for block in &mut blocks {
        block.top = block.top.max(free_from);
        free_from = block.bottom() + BETWEEN;
    }
    // A block beyond the end moves up, and pushes the blocks above it.
    let mut free_to = most;
    for block in blocks.iter_mut().rev() {
        block.top = block.top.min(free_to - block.height());
        free_to = block.top - BETWEEN;
    }
    (free_to >= -BETWEEN).then_some(blocks)
}
