//! Unknowns of the nodes: free nodes, fixed nodes, and groups of nodes that share one unknown.
//!
//! ```text
//! node      0    1    2    3    4    5        fixed: 1 at 5 V
//! unknown   0    -    1    2    1    3        tied: 2 and 4, a conductor without a potential of its own
//! ```
//!
//! **What.** [`Dofs`], constructed once for a set of boundary conditions.
//!
//! **Why separate.** Assembly, expansion and charges must use the same numbering, and a contradiction is reported before any computation.
//!
//! **Invariants.** A node is either free, or fixed, or a member of one group.
//! Unknowns are numbered in the order of nodes, a group at its first node, until [`Dofs::ordered`] renumbers them.
//!
//! **Not here.** The nodes of a conductor (`field`).

use super::ordering::{self, FIXED};

/// Contradiction in a list of conditions.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum DofError {
    /// A node that does not exist.
    #[error("node {node} is named, but there are {n_nodes} nodes, numbered from 0")]
    NoSuchNode {
        /// The node.
        node: u32,
        /// Number of nodes.
        n_nodes: usize,
    },
    /// More nodes than can be numbered.
    #[error("{n_nodes} nodes are more than can be numbered")]
    TooManyNodes {
        /// Number of nodes.
        n_nodes: usize,
    },
    /// A fixed value that is not finite.
    #[error("node {node} is fixed to {value}, which is not a finite number")]
    NotFinite {
        /// The node.
        node: u32,
        /// Its value.
        value: f64,
    },
    /// A node with two values.
    #[error("node {node} is fixed to {first} and to {second}")]
    FixedTwice {
        /// The node.
        node: u32,
        /// The value named first.
        first: f64,
        /// The value named later.
        second: f64,
    },
    /// A node that has a fixed value and also belongs to a group.
    #[error("node {node} is fixed and belongs to group {group} of tied nodes too")]
    FixedAndTied {
        /// The node.
        node: u32,
        /// Index of the group.
        group: usize,
    },
    /// A node in two groups.
    #[error("node {node} belongs to the groups {first} and {second} of tied nodes")]
    TiedTwice {
        /// The node.
        node: u32,
        /// Index of the group named first.
        first: usize,
        /// Index of the other group.
        second: usize,
    },
}

/// The unknown of each node, or its fixed value.
#[derive(Clone, Debug, PartialEq)]
pub struct Dofs {
    unknowns: Vec<u32>,
    values: Vec<f64>,
    n_free: usize,
    is_ordered: bool,
}

impl Dofs {
    /// Numbers the unknowns.
    ///
    /// A node may be given the same value twice, and a group may name a node twice.
    ///
    /// # Shapes
    /// `fixed`: pairs of node and value, in any order; `tied`: groups of nodes, each one unknown.
    ///
    /// # Errors
    /// [`DofError`] for the first contradiction found.
    ///
    /// ```
    /// use jointwright_numerics::fem::dofs::{DofError, Dofs};
    /// let dofs = Dofs::new(6, &[(1, 5.0)], &[vec![2, 4]]).unwrap();
    /// assert_eq!(dofs.n_free(), 4);
    /// assert_eq!(dofs.unknown(4), dofs.unknown(2));
    /// let error = Dofs::new(6, &[(1, 5.0), (1, 6.0)], &[]).unwrap_err();
    /// assert_eq!(error, DofError::FixedTwice { node: 1, first: 5.0, second: 6.0 });
    /// ```
    pub fn new(n_nodes: usize, fixed: &[(u32, f64)], tied: &[Vec<u32>]) -> Result<Self, DofError> {
        if n_nodes >= FIXED as usize {
            return Err(DofError::TooManyNodes { n_nodes });
        }
        let known = |node: u32| {
            if (node as usize) < n_nodes {
                Ok(node as usize)
            } else {
                Err(DofError::NoSuchNode { node, n_nodes })
            }
        };
        // Until they are numbered, `unknowns` holds 0 for free, FIXED, or 1 + the group.
        let mut unknowns = vec![0; n_nodes];
        let mut values = vec![0.0; n_nodes];
        for &(node, value) in fixed {
            let index = known(node)?;
            if !value.is_finite() {
                return Err(DofError::NotFinite { node, value });
            }
            let first = values[index];
            if unknowns[index] == FIXED && first != value {
                return Err(DofError::FixedTwice {
                    node,
                    first,
                    second: value,
                });
            }
            unknowns[index] = FIXED;
            values[index] = value;
        }
        for (group, nodes) in tied.iter().enumerate() {
            for &node in nodes {
                let index = known(node)?;
                let mark = group as u32 + 1;
                match unknowns[index] {
                    0 => unknowns[index] = mark,
                    FIXED => return Err(DofError::FixedAndTied { node, group }),
                    other if other == mark => {}
                    other => {
                        let first = other as usize - 1;
                        return Err(DofError::TiedTwice {
                            node,
                            first,
                            second: group,
                        });
                    }
                }
            }
        }
        let n_free = number(&mut unknowns, tied.len());
        Ok(Self {
            unknowns,
            values,
            n_free,
            is_ordered: false,
        })
    }

    /// Renumbers the unknowns in a good order of elimination, on a mesh of these triangles.
    ///
    /// Without it, solutions are the same within rounding, but analysis and factorisation take twice as long.
    ///
    /// # Panics
    /// If a triangle names a node that does not exist.
    ///
    /// ```
    /// use jointwright_numerics::fem::dofs::Dofs;
    /// let dofs = Dofs::new(6, &[(1, 5.0)], &[]).unwrap().ordered(&[[0, 1, 2, 3, 4, 5]]);
    /// // Mid-nodes come before the ends of their edges.
    /// assert!(dofs.unknown(5) < dofs.unknown(0));
    /// assert_eq!(dofs.n_free(), 5);
    /// ```
    pub fn ordered(mut self, triangles: &[[u32; 6]]) -> Self {
        let places = ordering::places(triangles, &self.unknowns, self.n_free);
        for unknown in self
            .unknowns
            .iter_mut()
            .filter(|unknown| **unknown != FIXED)
        {
            *unknown = places[*unknown as usize];
        }
        self.is_ordered = true;
        self
    }

    /// Number of nodes.
    ///
    /// ```
    /// use jointwright_numerics::fem::dofs::Dofs;
    /// assert_eq!(Dofs::new(6, &[(1, 5.0)], &[]).unwrap().n_nodes(), 6);
    /// ```
    #[inline]
    pub fn n_nodes(&self) -> usize {
        self.unknowns.len()
    }

    /// Number of unknowns.
    ///
    /// ```
    /// use jointwright_numerics::fem::dofs::Dofs;
    /// assert_eq!(Dofs::new(6, &[(1, 5.0)], &[vec![2, 4]]).unwrap().n_free(), 4);
    /// ```
    #[inline]
    pub fn n_free(&self) -> usize {
        self.n_free
    }

    /// The unknown of a node; `None` if it is fixed.
    ///
    /// # Panics
    /// If the node does not exist.
    ///
    /// ```
    /// use jointwright_numerics::fem::dofs::Dofs;
    /// let dofs = Dofs::new(3, &[(0, 5.0)], &[]).unwrap();
    /// assert_eq!((dofs.unknown(0), dofs.unknown(1)), (None, Some(0)));
    /// ```
    #[inline]
    pub fn unknown(&self, node: u32) -> Option<u32> {
        let unknown = self.unknowns[node as usize];
        (unknown != FIXED).then_some(unknown)
    }

    /// The value of a fixed node; `None` if it is free.
    ///
    /// # Panics
    /// If the node does not exist.
    ///
    /// ```
    /// use jointwright_numerics::fem::dofs::Dofs;
    /// let dofs = Dofs::new(3, &[(0, 5.0)], &[]).unwrap();
    /// assert_eq!((dofs.fixed_value(0), dofs.fixed_value(1)), (Some(5.0), None));
    /// ```
    #[inline]
    pub fn fixed_value(&self, node: u32) -> Option<f64> {
        let index = node as usize;
        (self.unknowns[index] == FIXED).then_some(self.values[index])
    }

    /// The values of all nodes, from the unknowns and from the fixed values times `scale`:
    /// 1 for a potential, 0 for the imaginary part of a potential or for a correction.
    ///
    /// # Shapes
    /// `solution` `[n_free]`; the answer `[n_nodes]`.
    ///
    /// # Panics
    /// If `solution` has another length.
    ///
    /// ```
    /// use jointwright_numerics::fem::dofs::Dofs;
    /// let dofs = Dofs::new(4, &[(1, 5.0)], &[vec![0, 3]]).unwrap();
    /// assert_eq!(dofs.expansion(&[7.0, 8.0], 1.0), [7.0, 5.0, 8.0, 7.0]);
    /// assert_eq!(dofs.expansion(&[7.0, 8.0], 0.0), [7.0, 0.0, 8.0, 7.0]);
    /// ```
    pub fn expansion(&self, solution: &[f64], scale: f64) -> Vec<f64> {
        assert_eq!(solution.len(), self.n_free);
        let node_value = |(&unknown, value): (&u32, &f64)| match unknown {
            FIXED => scale * value,
            free => solution[free as usize],
        };
        self.unknowns
            .iter()
            .zip(&self.values)
            .map(node_value)
            .collect()
    }

    /// Whether unknowns are numbered in the order of elimination.
    pub(super) fn is_ordered(&self) -> bool {
        self.is_ordered
    }

    /// The unknown of each node, or [`FIXED`].
    pub(super) fn unknowns(&self) -> &[u32] {
        &self.unknowns
    }

    /// The value of each fixed node, 0 for a free node.
    pub(super) fn values(&self) -> &[f64] {
        &self.values
    }
}

/// Turns marks into numbers of unknowns and returns the number of unknowns.
fn number(unknowns: &mut [u32], n_groups: usize) -> usize {
    let mut group_unknowns = vec![FIXED; n_groups];
    let mut n_free = 0;
    for unknown in unknowns.iter_mut() {
        let mark = *unknown;
        if mark == FIXED {
            continue;
        }
        let known = mark
            .checked_sub(1)
            .map(|group| &mut group_unknowns[group as usize]);
        *unknown = match known {
            Some(numbered) if *numbered != FIXED => *numbered,
            first => {
                if let Some(numbered) = first {
                    *numbered = n_free;
                }
                n_free += 1;
                n_free - 1
            }
        };
    }
    n_free as usize
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn unknowns_follow_the_nodes_and_a_group_counts_once() {
        let dofs = Dofs::new(6, &[(1, 5.0)], &[vec![4, 2, 4], vec![]]).unwrap();
        let numbers: Vec<_> = (0..6).map(|node| dofs.unknown(node)).collect();
        assert_eq!(numbers, [Some(0), None, Some(1), Some(2), Some(1), Some(3)]);
        assert_eq!(dofs.n_free(), 4);
        assert_eq!(dofs.fixed_value(1), Some(5.0));
        assert_eq!(
            dofs.expansion(&[1.0, 2.0, 3.0, 4.0], 1.0),
            [1.0, 5.0, 2.0, 3.0, 2.0, 4.0]
        );
        // The twin: without the group there is one unknown more, and node 4 has its own.
        let untied = Dofs::new(6, &[(1, 5.0)], &[]).unwrap();
        assert_eq!(untied.n_free(), 5);
        assert_ne!(untied.unknown(4), untied.unknown(2));
    }

    #[test]
    fn every_contradiction_is_named() {
        let error =
            |fixed: &[(u32, f64)], tied: &[Vec<u32>]| Dofs::new(6, fixed, tied).unwrap_err();
        assert_eq!(
            error(&[(6, 0.0)], &[]),
            DofError::NoSuchNode {
                node: 6,
                n_nodes: 6
            }
        );
        assert_eq!(
            error(&[], &[vec![9]]),
            DofError::NoSuchNode {
                node: 9,
                n_nodes: 6
            }
        );
        assert!(matches!(
            error(&[(1, f64::NAN)], &[]),
            DofError::NotFinite { node: 1, .. }
        ));
        let twice = DofError::FixedTwice {
            node: 1,
            first: 0.0,
            second: 1.0,
        };
        assert_eq!(error(&[(1, 0.0), (1, 1.0)], &[]), twice);
        let both = DofError::FixedAndTied { node: 1, group: 1 };
        assert_eq!(error(&[(1, 0.0)], &[vec![2], vec![3, 1]]), both);
        let groups = DofError::TiedTwice {
            node: 3,
            first: 0,
            second: 1,
        };
        assert_eq!(error(&[], &[vec![2, 3], vec![3]]), groups);
        // The twin: conditions without a contradiction pass.
        assert!(Dofs::new(6, &[(1, 0.0), (1, 0.0)], &[vec![2, 3], vec![4, 4]]).is_ok());
    }
}
