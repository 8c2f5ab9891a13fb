//! The three processors that the firmware is built for, each with its compiler and the emulated board that runs it.

/// A target of the Rust compiler, the C compiler for the same machine code, and a board with such a processor.
pub struct Board {
    /// The target, as the Rust compiler names it.
    pub target: &'static str,
    /// The processor, as a reader knows it.
    pub processor: &'static str,
    /// What the names of the C compiler's programs begin with.
    pub tools: &'static str,
    /// What the C compiler has to be told about the processor.
    pub machine: &'static [&'static str],
    /// What the linker has to be told when it makes one object of many.
    pub relocatable: &'static [&'static str],
    /// The emulator.
    pub emulator: &'static str,
    /// Its board.
    pub emulated: &'static [&'static str],
    /// Whether the C compiler's own double-precision subtraction was seen to be wrong for this processor (gcc 12.2).
    pub wrong_subtraction: bool,
    /// What the emulator counts by when instructions are counted: the processor's counter is then exact.
    pub counting: &'static str,
    /// The file of `examples/firmware/board` with the processor's start.
    pub start: &'static str,
    /// The linker script there.
    pub memory: &'static str,
}

/// Every board, the fastest first.
pub const BOARDS: [Board; 3] = [
    Board {
        target: "thumbv7em-none-eabihf",
        processor: "Cortex-M4F",
        tools: "arm-none-eabi-",
        machine: &[
            "-mcpu=cortex-m4",
            "-mthumb",
            "-mfloat-abi=hard",
            "-mfpu=fpv4-sp-d16",
            "-DRKO_HALF_NANOSECONDS_A_TICK=80u",
        ],
        relocatable: &[],
        emulator: "qemu-system-arm",
        emulated: &["-M", "mps2-an386"],
        wrong_subtraction: true,
        counting: "shift=10",
        start: "cortex_m.c",
        memory: "mps2_an386.ld",
    },
    Board {
        target: "thumbv6m-none-eabi",
        processor: "Cortex-M0",
        tools: "arm-none-eabi-",
        machine: &["-mcpu=cortex-m0", "-mthumb", "-mfloat-abi=soft", "-DRKO_HALF_NANOSECONDS_A_TICK=125u"],
        relocatable: &[],
        emulator: "qemu-system-arm",
        // The larger of the two versions of its microcontroller.
        emulated: &["-M", "microbit", "-global", "nrf51-soc.sram-size=32768"],
        wrong_subtraction: false,
        counting: "shift=10",
        start: "cortex_m.c",
        memory: "microbit.ld",
    },
    Board {
        target: "riscv32imc-unknown-none-elf",
        processor: "RV32IMC",
        tools: "riscv64-unknown-elf-",
        machine: &["--specs=picolibc.specs", "-march=rv32imc", "-mabi=ilp32"],
        relocatable: &["-melf32lriscv"],
        emulator: "qemu-system-riscv32",
        emulated: &["-M", "virt", "-bios", "none", "-cpu", "rv32,a=false,f=false,d=false"],
        wrong_subtraction: false,
        counting: "shift=0",
        start: "riscv.c",
        memory: "virt.ld",
    },
];

impl Board {
    /// One of the C compiler's programs.
    pub fn tool(&self, name: &str) -> String {
        format!("{}{name}", self.tools)
    }
}
