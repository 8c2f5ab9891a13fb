//! Bytes of a fuzzer as numbers. What is left when the bytes run out is zero, so that every length is legal.

/// Numbers beside which something tends to go wrong.
pub const HOSTILE: [f64; 24] = [
    f64::NAN,
    f64::INFINITY,
    f64::NEG_INFINITY,
    0.0,
    -0.0,
    5e-324,
    -5e-324,
    f64::MIN_POSITIVE,
    2.225_073_858_507_201e-308,
    1e-300,
    1e-12,
    f64::EPSILON,
    0.1,
    0.5,
    1.0,
    -1.0,
    1.0000000000000002,
    10.0,
    9_007_199_254_740_993.0,
    1e15,
    1e37,
    1e300,
    f64::MAX,
    f64::MIN,
];

/// Powers of ten that every target may draw an exponent from; most are within what people measure.
const COMMON_EXPONENTS: core::ops::Range<i32> = -12..13;

/// A reader of the bytes.
#[derive(Clone, Copy, Debug)]
pub struct Input<'a> {
    rest: &'a [u8],
}

impl<'a> Input<'a> {
    /// From the first byte on.
    pub fn new(data: &'a [u8]) -> Input<'a> {
        Input { rest: data }
    }

    /// The next byte.
    pub fn byte(&mut self) -> u8 {
        match self.rest.split_first() {
            Some((byte, rest)) => {
                self.rest = rest;
                *byte
            }
            None => 0,
        }
    }

    /// The next bytes, as many as there are.
    pub fn bytes<const N: usize>(&mut self) -> [u8; N] {
        core::array::from_fn(|_| self.byte())
    }

    /// The next so many bytes, fewer at the end.
    pub fn take(&mut self, count: usize) -> &'a [u8] {
        let (taken, rest) = self.rest.split_at(count.min(self.rest.len()));
        self.rest = rest;
        taken
    }

    /// Everything that is left.
    pub fn rest(&mut self) -> &'a [u8] {
        self.take(usize::MAX)
    }

    /// Whether nothing is left.
    pub fn is_empty(&self) -> bool {
        self.rest.is_empty()
    }

    /// An odd byte.
    pub fn flag(&mut self) -> bool {
        self.byte() & 1 == 1
    }

    /// A number below `end`, which is 256 at most.
    pub fn below(&mut self, end: usize) -> usize {
        usize::from(self.byte()) % end
    }

    /// One of these.
    pub fn one_of<T: Copy>(&mut self, among: &[T]) -> T {
        among[self.below(among.len())]
    }

    /// Two bytes as a number.
    pub fn u16(&mut self) -> u16 {
        u16::from_le_bytes(self.bytes())
    }

    /// A whole number: small ones mostly, else any.
    pub fn i64(&mut self) -> i64 {
        match self.below(4) {
            0 => i64::from(self.byte() as i8),
            1 => i64::from(self.u16() as i16),
            2 => i64::from_le_bytes(self.bytes()),
            _ => self.one_of(&[
                i64::MIN,
                i64::MAX,
                i64::MIN + 1,
                999_999_999_999_999_999,
                -1_000_000_000_000_000_000,
                1 << 53,
            ]),
        }
    }

    /// Any double: hostile ones, decimals as people write them, and raw bits.
    pub fn number(&mut self) -> f64 {
        match self.below(4) {
            0 => self.one_of(&HOSTILE),
            1 => f64::from_le_bytes(self.bytes()),
            2 => self.decimal(COMMON_EXPONENTS),
            _ => -self.decimal(COMMON_EXPONENTS),
        }
    }

    /// A positive decimal of up to five figures, its power of ten among these.
    pub fn decimal(&mut self, exponents: core::ops::Range<i32>) -> f64 {
        let digits = u32::from(self.u16()) + 1;
        let exponent = exponents.start + i32::from(self.byte()) % exponents.len() as i32;
        written(&format!("{digits}e{exponent}"))
    }

    /// A number above 0 and below 1: any size, or an even spread.
    pub fn fraction(&mut self) -> f64 {
        match self.below(4) {
            0 => written(&format!("0.{:05}", u32::from(self.u16()) + 1)),
            1 => (f64::from(self.u16()) + 0.5) / 65_536.0,
            2 => f64::from_bits(u64::from_le_bytes(self.bytes()) % (1.0_f64.to_bits() - 1) + 1),
            _ => 1.0 - (f64::from(self.u16()) + 1.0) * f64::EPSILON / 2.0,
        }
    }

    /// A number above 0 of a size that fits among others of its sort: 16 bits spread evenly over these powers of ten.
    pub fn size(&mut self, exponents: core::ops::Range<i32>) -> f64 {
        let part = f64::from(self.u16()) / 65_536.0;
        10.0_f64.powf(f64::from(exponents.start) + part * exponents.len() as f64)
    }
}

/// The double of a decimal text, by the standard library.
pub fn written(text: &str) -> f64 {
    text.parse().unwrap_or_else(|_| panic!("no number: {text}"))
}
