//! Rough air from a seed: the same seed gives the same gusts.

use compass::gust::{GustNumbers, NUMBERS};
use rand_core::Rng;
use rand_pcg::Pcg32;

/// PCG's stream for gusts; chosen, so that other uses of a seed can have streams of their own.
const STREAM: u64 = 0x6775_7374;

/// White numbers from a seed. Each step's numbers depend on the seed and the step alone, so a
/// flight can be replayed from anywhere.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SeededAir {
    /// The seed.
    pub seed: u64,
}

impl SeededAir {
    /// The numbers of the first step, the second and so on: what [`at`](GustNumbers::at) gives for
    /// each, without looking each of them up.
    pub fn in_turn(self) -> impl Iterator<Item = [f64; NUMBERS]> {
        let mut generator = Pcg32::new(self.seed, STREAM);
        std::iter::repeat_with(move || white(&mut generator))
    }
}

impl GustNumbers for SeededAir {
    fn at(&self, step: u64) -> [f64; NUMBERS] {
        let mut generator = Pcg32::new(self.seed, STREAM);
        generator.advance(step.wrapping_mul(NUMBERS as u64));
        white(&mut generator)
    }
}

/// The next numbers, even over (−√3, √3): mean 0, variance 1. The gusts' filters sum hundreds of
/// them.
fn white(generator: &mut Pcg32) -> [f64; NUMBERS] {
    std::array::from_fn(|_| {
        let fraction = (f64::from(generator.next_u32()) + 0.5) / 4_294_967_296.0;
        3.0_f64.sqrt() * (2.0 * fraction - 1.0)
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_have_mean_nought_and_variance_one() {
        let air = SeededAir { seed: 7 };
        let numbers: Vec<f64> = (0..50_000).flat_map(|step| air.at(step)).collect();
        let count = numbers.len() as f64;
        let mean = numbers.iter().sum::<f64>() / count;
        let variance = numbers.iter().map(|n| n * n).sum::<f64>() / count - mean * mean;
        // Four standard errors of 200 000 draws: of the mean 1/√N, of the variance √0.8/√N.
        assert!(mean.abs() < 4.0 / count.sqrt());
        assert!((variance - 1.0).abs() < 4.0 * 0.8_f64.sqrt() / count.sqrt());
    }

    #[test]
    fn steps_and_seeds_differ_and_repeat() {
        let air = SeededAir { seed: 1 };
        assert_eq!(air.at(1_000_000), air.at(1_000_000));
        assert_ne!(air.at(0), air.at(1));
        assert_ne!(air.at(0), SeededAir { seed: 2 }.at(0));
    }

    #[test]
    fn numbers_in_turn_are_those_of_each_step() {
        let air = SeededAir { seed: 3 };
        for (step, numbers) in (0..1000).zip(air.in_turn()) {
            assert_eq!(numbers, air.at(step), "{step}");
        }
    }
}
