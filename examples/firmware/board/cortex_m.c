/* Cortex-M: the vectors, the floating-point unit, the count of instructions by SysTick. */

#include "start.h"

#define REGISTER(address) (*(volatile uint32_t *)(address))
#define SYST_CSR REGISTER(0xe000e010u)
#define SYST_RVR REGISTER(0xe000e014u)
#define SYST_CVR REGISTER(0xe000e018u)
#define CPACR REGISTER(0xe000ed88u)

intptr_t host_call(uintptr_t operation, const void *block) {
    register uintptr_t first __asm__("r0") = operation;
    register const void *second __asm__("r1") = block;
    __asm__ volatile("bkpt 0xab" : "+r"(first) : "r"(second) : "memory");
    return (intptr_t)first;
}

static void reset(void) {
#if defined(__ARM_FP)
    /* The coprocessors 10 and 11 are the floating-point unit, which is off after a reset. */
    CPACR |= 0xfu << 20;
    __asm__ volatile("dsb\n isb" ::: "memory");
#endif
    SYST_RVR = 0xffffffu;
    SYST_CVR = 0;
    /* The processor's own clock, no interrupt. */
    SYST_CSR = 5;
    board_start();
}

static void fault(void) {
    board_fault();
}

/* Stack, reset, non-maskable interrupt, hard fault and its kinds. */
__attribute__((used, section(".start"))) static const uintptr_t vectors[16] = {
    (uintptr_t)board_stack_top, (uintptr_t)reset, (uintptr_t)fault, (uintptr_t)fault,
    (uintptr_t)fault,           (uintptr_t)fault, (uintptr_t)fault,
};

uint32_t board_counter(void) {
    return SYST_CVR;
}

/* With -icount shift=10 an instruction takes 1024 ns; a tick so many halves of a nanosecond. The counter has
 * 24 bits and counts down. */
uint32_t board_instructions_between(uint32_t from, uint32_t to) {
    return (((from - to) & 0xffffffu) * RKO_HALF_NANOSECONDS_A_TICK + 1024u) / 2048u;
}
