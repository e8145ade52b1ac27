//! What a seed draws for a worksheet.

use compass::rule_of_thumb::Turn;
use rand_core::Rng;
use rand_pcg::Pcg32;

/// PCG's stream for tasks; chosen, so that other uses of a seed can have streams of their own.
const STREAM: u64 = 0x7461_736b;

/// Draws lots.
pub(super) struct Lot(Pcg32);

impl Lot {
    /// The lots of a seed.
    pub(super) fn of(seed: u64) -> Self {
        Self(Pcg32::new(seed, STREAM))
    }

    /// One of `least`, `least + step`, … up to `most`.
    pub(super) fn among(&mut self, least: u16, most: u16, step: u16) -> u16 {
        let count = u32::from((most - least) / step) + 1;
        least + step * (self.0.next_u32() % count) as u16
    }

    /// One of two.
    pub(super) fn either<T>(&mut self, one: T, other: T) -> T {
        if self.among(0, 1, 1) == 0 { one } else { other }
    }

    /// A way to turn.
    pub(super) fn turn(&mut self) -> Turn {
        self.either(Turn::Left, Turn::Right)
    }

    /// A target within 60° of north or south, where the rules say something.
    pub(super) fn off_east_and_west(&mut self) -> u16 {
        let off = self.among(0, 120, 10);
        let middle = self.either(360, 180);
        (middle + off + 300 - 1) % 360 + 1
    }

    /// A heading within 40° of east or west, where the errors of speed are.
    pub(super) fn near_east_or_west(&mut self) -> u16 {
        let middle = self.either(90, 270);
        middle - 40 + self.among(0, 80, 10)
    }
}
