//! No way leads to a panic, and the linker proves it: the handler calls a symbol that is defined nowhere, so that an
//! object in which it can be reached does not link.

use core::panic::PanicInfo;

unsafe extern "C" {
    safe fn rko_a_panic_can_be_reached() -> !;
}

#[panic_handler]
fn panic(_: &PanicInfo) -> ! {
    rko_a_panic_can_be_reached()
}
