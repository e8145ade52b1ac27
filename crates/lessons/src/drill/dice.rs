//! Choices drawn from a seed.

use super::identity::TaskId;
use rand_core::Rng;
use rand_pcg::Pcg32;

/// How many numbers one task may draw before the next one's begin; a power of two far above
/// what [`generate`](super::generate) can use.
const PER_TASK: u64 = 1 << 20;

/// A source of choices: the same task draws the same.
pub(super) struct Dice(Pcg32);

impl Dice {
    pub(super) fn of(id: &TaskId) -> Self {
        let mut generator = Pcg32::new(id.seed, id.kind.stream());
        generator.advance(u64::from(id.number).wrapping_mul(PER_TASK));
        Self(generator)
    }

    /// From a seed and a stream of PCG.
    pub(super) fn new(seed: u64, stream: u64) -> Self {
        Self(Pcg32::new(seed, stream))
    }

    /// A whole number from `least` to `most`, both included, each as likely to within 2⁻³².
    pub(super) fn whole(&mut self, least: i32, most: i32) -> i32 {
        let count = (i64::from(most) - i64::from(least) + 1).max(1);
        least + ((i64::from(self.0.next_u32()) * count) >> 32) as i32
    }

    /// A multiple of `step` from `least` to `most`.
    pub(super) fn stepped(&mut self, least: i32, most: i32, step: i32) -> i32 {
        least + step * self.whole(0, (most - least) / step)
    }

    /// One of some; there is at least one.
    pub(super) fn one_of<T: Copy>(&mut self, of: &[T]) -> T {
        of[self.whole(0, of.len() as i32 - 1) as usize]
    }

    /// −1 or 1.
    pub(super) fn side(&mut self) -> f64 {
        self.one_of(&[-1.0, 1.0])
    }

    /// In another order.
    pub(super) fn shuffled<T>(&mut self, mut items: Vec<T>) -> Vec<T> {
        for last in (1..items.len()).rev() {
            items.swap(last, self.whole(0, last as i32) as usize);
        }
        items
    }
}
