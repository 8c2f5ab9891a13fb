//! Objects that `cargo xtask firmware` has to refuse, to show that it would: built with one of the configurations `panics`,
//! `formats`, `remembers`, `allocates`; with `nothing` it is to be let through.
#![no_std]

#[path = "../../../../../bindings/c/src/panic.rs"]
mod panic;

#[cfg(nothing)]
#[unsafe(no_mangle)]
pub extern "C" fn rko_wrong(number: u32) -> u32 {
    number.wrapping_add(1)
}

#[cfg(panics)]
#[unsafe(no_mangle)]
pub extern "C" fn rko_wrong(number: u32) -> u32 {
    [1, 2, 3, 4, 5][number as usize]
}

#[cfg(formats)]
#[unsafe(no_mangle)]
pub extern "C" fn rko_wrong(number: u32) -> u32 {
    struct Counted(u32);
    impl core::fmt::Write for Counted {
        fn write_str(&mut self, part: &str) -> core::fmt::Result {
            self.0 = self.0.wrapping_add(part.len() as u32);
            Ok(())
        }
    }
    let mut counted = Counted(0);
    let _ = core::fmt::write(&mut counted, format_args!("{number}"));
    counted.0
}

#[cfg(remembers)]
#[unsafe(no_mangle)]
pub extern "C" fn rko_wrong(number: u32) -> u32 {
    static mut LAST: u32 = 0;
    // SAFETY: no other thread, as on a board.
    unsafe {
        let last = LAST;
        LAST = number;
        last
    }
}

#[cfg(allocates)]
#[unsafe(no_mangle)]
pub extern "C" fn rko_wrong(number: u32) -> usize {
    unsafe extern "C" {
        safe fn malloc(bytes: usize) -> usize;
    }
    malloc(number as usize)
}
