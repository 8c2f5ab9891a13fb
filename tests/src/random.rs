//! Random numbers for tests: counter-based (SplitMix64), so that a failing case can be made again from its seed.

/// How many random cases to try: this many, or a hundredth of them where `RECKOHM_FEW_CASES` is set. `cargo xtask mutants`
/// sets it: broken code shows early, and there it is broken a few thousand times.
pub fn cases(all: u32) -> u32 {
    if std::env::var_os("RECKOHM_FEW_CASES").is_some() { all.div_ceil(100) } else { all }
}

/// A generator with a seed of the test's own.
pub struct Random {
    state: u64,
}

impl Random {
    /// The same seed gives the same numbers.
    pub fn new(seed: u64) -> Random {
        Random { state: seed }
    }

    /// 64 random bits.
    pub fn bits(&mut self) -> u64 {
        self.state = self.state.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.state;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    /// A whole number below `end`.
    pub fn below(&mut self, end: u64) -> u64 {
        ((u128::from(self.bits()) * u128::from(end)) >> 64) as u64
    }

    /// A whole number from `from` up to `to`, both included.
    pub fn between(&mut self, from: i64, to: i64) -> i64 {
        from + self.below((to - from + 1) as u64) as i64
    }

    /// A number in [0, 1).
    pub fn unit(&mut self) -> f64 {
        (self.bits() >> 11) as f64 / 9_007_199_254_740_992.0
    }

    /// One of these.
    pub fn one_of<T: Copy>(&mut self, among: &[T]) -> T {
        among[self.below(among.len() as u64) as usize]
    }
}
