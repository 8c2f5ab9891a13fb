#![no_main]

libfuzzer_sys::fuzz_target!(|data: &[u8]| reckohm_fuzz::targets::sensors::target(data));
