//! A seal on memory that a caller keeps for us: it says that every byte is as we left it.

/// The seal of these words. Each step maps what came before one to one, so a change within a single word always shows; of
/// other changes one in four thousand million does not.
pub(crate) fn seal(words: &[u32], kind: u32) -> u32 {
    words.iter().fold(kind, |so_far, word| (so_far.rotate_left(5) ^ word).wrapping_mul(0x9e37_79b1))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_single_bit_shows() {
        let words = [7, 0, 0, u32::MAX, 0x1234_5678, 0];
        let sealed = seal(&words, 1);
        assert_ne!(sealed, seal(&words, 2));
        for place in 0..words.len() {
            for bit in 0..32 {
                let mut changed = words;
                changed[place] ^= 1 << bit;
                assert_ne!(seal(&changed, 1), sealed, "bit {bit} of word {place}");
            }
        }
        // Memory that is all zero, and all ones, as of a cleared static and of erased flash.
        assert!(seal(&[0; 60], 1) != 0 && seal(&[u32::MAX; 60], 1) != u32::MAX);
    }
}
