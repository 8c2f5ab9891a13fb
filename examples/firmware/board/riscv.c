/* RISC-V: the first instructions, the trap, the count of instructions that retired. */

#include "start.h"

__attribute__((naked, aligned(16))) intptr_t host_call(uintptr_t operation, const void *block) {
    (void)operation, (void)block;
    /* Only with its two neighbours is this breakpoint a call to the host. */
    __asm__ volatile(".option push\n"
                     ".option norvc\n"
                     "slli x0, x0, 0x1f\n"
                     "ebreak\n"
                     "srai x0, x0, 7\n"
                     ".option pop\n"
                     "ret\n");
}

__attribute__((used, aligned(4))) static void fault(void) {
    board_fault();
}

__attribute__((naked, used, section(".start"))) static void reset(void) {
    __asm__ volatile(".option push\n"
                     ".option arch, +zicsr\n"
                     "la sp, board_stack_top\n"
                     "la t0, fault\n"
                     "csrw mtvec, t0\n"
                     "j board_start\n"
                     ".option pop\n");
}

uint32_t board_counter(void) {
    uint32_t count;
    __asm__ volatile(".option push\n"
                     ".option arch, +zicsr\n"
                     "csrr %0, minstret\n"
                     ".option pop\n"
                     : "=r"(count));
    return count;
}

uint32_t board_instructions_between(uint32_t from, uint32_t to) {
    return to - from;
}
