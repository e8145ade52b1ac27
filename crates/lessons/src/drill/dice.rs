//! Choices drawn from a seed.

use super::identity::TaskId;
use rand_core::Rng;
use rand_pcg::Pcg32;

/// A source of choices: the same task draws the same.
pub(super) struct Dice(Pcg32);

impl Dice {
    pub(super) fn of(id: &TaskId) -> Self {
        Self::new(mixed(id.seed, id.number), id.drawn_as().stream())
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

/// One seed out of a seed and a number: nearby ones give seeds that have nothing in common, as
/// neither nearby seeds nor even strides along one sequence of PCG do.
///
/// Source: SplitMix64 (Steele, Lea and Flood, *Fast splittable pseudorandom number generators*,
/// 2014); the constants from memory. Any good mixing serves as well.
fn mixed(seed: u64, number: u32) -> u64 {
    let step = 0x9e37_79b9_7f4a_7c15_u64.wrapping_mul(u64::from(number) + 1);
    let mut mixed = seed.wrapping_add(step);
    mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    mixed ^ (mixed >> 31)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drill::Kind;

    /// The share of tasks whose first choice of two is the second, over numbers or over seeds.
    fn share(id: impl Fn(u32) -> TaskId) -> f64 {
        let second = |at: &u32| Dice::of(&id(*at)).whole(0, 1) == 1;
        (0..4000).filter(second).count() as f64 / 4000.0
    }

    #[test]
    fn first_choices_are_even_over_numbers_and_over_seeds() {
        // Four standard errors of 4000 tosses: 0.032.
        let first = TaskId::new(Kind::Read, 5);
        assert!((share(|number| TaskId { number, ..first }) - 0.5).abs() < 0.032);
        let by_seed = |seed: u32| TaskId::new(Kind::Read, u64::from(seed));
        assert!((share(by_seed) - 0.5).abs() < 0.032);
    }

    #[test]
    fn one_task_s_choices_do_not_tell_the_next_one_s() {
        let first = TaskId::new(Kind::NameTheCause, 5);
        let toss = |number: u32| Dice::of(&TaskId { number, ..first }).whole(0, 1);
        let same = (0..4000).filter(|it| toss(*it) == toss(it + 1)).count();
        assert!((same as f64 / 4000.0 - 0.5).abs() < 0.032, "{same}");
    }

    #[test]
    fn a_whole_number_takes_both_its_limits_and_nothing_beyond() {
        let mut dice = Dice::new(1, 2);
        let drawn: Vec<i32> = (0..1000).map(|_| dice.whole(-3, 3)).collect();
        for it in -3..=3 {
            assert!(drawn.contains(&it));
        }
        assert!(drawn.iter().all(|it| (-3..=3).contains(it)));
        let shuffled = dice.shuffled(vec![1, 2, 3, 4, 5, 6, 7, 8]);
        let mut sorted = shuffled.clone();
        sorted.sort_unstable();
        assert_eq!(sorted, [1, 2, 3, 4, 5, 6, 7, 8]);
        assert_ne!(shuffled, sorted);
    }
}
