//! Inputs made of others at random, with a fixed seed: what libFuzzer does, without its eyes.

/// Bytes that texts are made of, among them those at the ends of ranges.
const USUAL: &[u8] = b"0123456789.,-+eERKMGTOLk \t\n\r\0\x01\x7f\x80\xff";

/// A source of inputs (SplitMix64), the same for the same seed.
pub struct Mutation {
    state: u64,
}

impl Mutation {
    /// The same seed gives the same inputs.
    pub fn new(seed: u64) -> Mutation {
        Mutation { state: seed }
    }

    fn bits(&mut self) -> u64 {
        self.state = self.state.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.state;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    fn below(&mut self, end: usize) -> usize {
        ((u128::from(self.bits()) * end as u128) >> 64) as usize
    }

    /// One of the seeds, changed in a few places.
    pub fn of(&mut self, seeds: &[Vec<u8>]) -> Vec<u8> {
        let mut input = seeds[self.below(seeds.len())].clone();
        for _ in 0..=self.below(4) {
            let at = self.below(input.len() + 1);
            let kind = self.below(7);
            match (kind, input.get_mut(at)) {
                (0, Some(byte)) => *byte ^= 1 << self.below(8),
                (1, Some(byte)) => *byte = self.bits() as u8,
                (2, Some(byte)) => *byte = USUAL[self.below(USUAL.len())],
                (3, Some(_)) => drop(input.remove(at)),
                (4, _) => {
                    // The end of another seed, or of the same one.
                    let other = &seeds[self.below(seeds.len())];
                    input.truncate(at);
                    input.extend_from_slice(&other[self.below(other.len() + 1)..]);
                }
                (5, _) => input.insert(at, self.bits() as u8),
                _ => input.insert(at, USUAL[self.below(USUAL.len())]),
            }
        }
        input
    }
}
