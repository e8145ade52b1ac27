//! A list that grows without ever moving what it holds.

use std::ops::{Index, Range};

/// Entries to a block; chosen: a minute of a flight, ten samples a second.
const BLOCK: usize = 600;

/// A list in blocks. One in a single piece is copied into one twice as long whenever it is full,
/// and the memory of a page, which is never given back, would hold all of them.
#[derive(Clone, Debug)]
pub(crate) struct Blocks<T> {
    blocks: Vec<Vec<T>>,
}

impl<T> Default for Blocks<T> {
    fn default() -> Self {
        Self { blocks: Vec::new() }
    }
}

impl<T> Blocks<T> {
    /// Takes an entry more.
    pub(crate) fn push(&mut self, entry: T) {
        match self.blocks.last_mut() {
            Some(block) if block.len() < BLOCK => block.push(entry),
            _ => {
                let mut block = Vec::with_capacity(BLOCK);
                block.push(entry);
                self.blocks.push(block);
            }
        }
    }

    /// How many entries there are.
    pub(crate) fn len(&self) -> usize {
        let last = self.blocks.last().map_or(0, Vec::len);
        BLOCK * self.blocks.len().saturating_sub(1) + last
    }

    /// The entry at a place; none beyond the end.
    pub(crate) fn get(&self, index: usize) -> Option<&T> {
        self.blocks.get(index / BLOCK)?.get(index % BLOCK)
    }

    /// The last entry.
    pub(crate) fn last(&self) -> Option<&T> {
        self.blocks.last()?.last()
    }

    /// All entries, in order.
    pub(crate) fn iter(&self) -> impl Iterator<Item = &T> {
        self.blocks.iter().flatten()
    }

    /// Those of a range that there are, every `step`-th of them, in order.
    pub(crate) fn some(&self, range: Range<usize>, step: usize) -> impl Iterator<Item = &T> {
        range.step_by(step).map_while(|index| self.get(index))
    }

    /// How many entries come before the first of which this does not hold; it holds of none after
    /// that.
    pub(crate) fn partition_point(&self, holds: impl Fn(&T) -> bool) -> usize {
        let is_passed = |it: &Vec<T>| it.len() == BLOCK && it.last().is_some_and(&holds);
        let whole = self.blocks.partition_point(is_passed);
        let within = self.blocks.get(whole);
        BLOCK * whole + within.map_or(0, |it| it.partition_point(holds))
    }
}

impl<T> Index<usize> for Blocks<T> {
    type Output = T;

    fn index(&self, index: usize) -> &T {
        &self.blocks[index / BLOCK][index % BLOCK]
    }
}

impl<T> FromIterator<T> for Blocks<T> {
    fn from_iter<I: IntoIterator<Item = T>>(entries: I) -> Self {
        let mut blocks = Self::default();
        entries.into_iter().for_each(|it| blocks.push(it));
        blocks
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_list_in_blocks_is_the_list_in_one_piece() {
        for length in [0, 1, BLOCK - 1, BLOCK, BLOCK + 1, 3 * BLOCK] {
            let whole: Vec<usize> = (0..length).collect();
            let blocks: Blocks<usize> = whole.iter().copied().collect();
            assert_eq!(blocks.len(), length);
            assert_eq!(blocks.last(), whole.last());
            assert!(blocks.iter().eq(&whole));
            assert_eq!(blocks.get(length), None);
            for index in 0..length {
                assert_eq!(blocks[index], index);
                assert_eq!(blocks.partition_point(|it| *it < index), index);
            }
            assert_eq!(blocks.partition_point(|_| true), length);
            let some: Vec<usize> = blocks.some(1..BLOCK + 5, 7).copied().collect();
            let end = length.clamp(1, BLOCK + 5);
            assert_eq!(some, (1..end).step_by(7).collect::<Vec<_>>());
        }
    }

    #[test]
    fn what_is_held_stays_where_it_is() {
        let mut blocks = Blocks::default();
        blocks.push(0);
        let first: *const usize = &blocks[0];
        (1..5 * BLOCK).for_each(|it| blocks.push(it));
        assert_eq!(first, &raw const blocks[0]);
    }
}
