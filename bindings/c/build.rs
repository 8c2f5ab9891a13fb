//! Gives the shared library its name for the dynamic linker, so that programs bind to the ABI and not to a file name.

fn main() {
    println!("cargo::rerun-if-changed=build.rs");
    let unix = std::env::var_os("CARGO_CFG_UNIX").is_some();
    let apple = std::env::var("CARGO_CFG_TARGET_VENDOR").is_ok_and(|vendor| vendor == "apple");
    if unix && !apple {
        println!("cargo::rustc-cdylib-link-arg=-Wl,-soname,libreckohm.so.0");
    }
}
