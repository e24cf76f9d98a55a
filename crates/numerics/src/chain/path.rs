//! A path from plane to plane over links, each walked forward or backward.
//!
//! **Why separate.** Both solutions and errors name paths.

use std::fmt;

/// One link of a path.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct DirectedLink {
    /// Index of the link in the caller's list.
    pub link: usize,
    /// Whether the link is walked from its `from` to its `to`.
    pub forward: bool,
    /// The plane that the step arrives at.
    pub plane: usize,
}

/// A path over links, from a plane to the plane of its last step.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Path {
    /// The first plane of the path.
    pub start: usize,
    /// The links in the order of walking.
    pub steps: Vec<DirectedLink>,
}

impl Path {
    /// The planes on the path, the first and the last included.
    ///
    /// ```
    /// use jointwright_numerics::chain::{DirectedLink, Path};
    ///
    /// let path = Path { start: 4, steps: vec![DirectedLink { link: 0, forward: false, plane: 2 }] };
    /// assert_eq!(path.planes(), [4, 2]);
    /// assert_eq!(path.to_string(), "4 <-(link 0)- 2");
    /// ```
    pub fn planes(&self) -> Vec<usize> {
        std::iter::once(self.start)
            .chain(self.steps.iter().map(|step| step.plane))
            .collect()
    }
}

/// Prints planes and links; the arrow is the link's own direction: `0 -(link 3)-> 2 <-(link 1)- 5`.
impl fmt::Display for Path {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}", self.start)?;
        for step in &self.steps {
            if step.forward {
                write!(f, " -(link {})-> {}", step.link, step.plane)?;
            } else {
                write!(f, " <-(link {})- {}", step.link, step.plane)?;
            }
        }
        Ok(())
    }
}
