/* From reset to main, and what the stack was used for. */

#include "start.h"

int main(int arguments, char **words);

enum { EXIT_FAULT = 70, EXIT_STACK = 71 };
#define PAINT 0x5aa5c33cu

/* The lowest words of the stack: written to, they say that it was too small. */
enum { GUARD = 8 };

/* As many words are painted at most. */
enum { PAINTED = 3072 };

void board_fault(void) {
    board_write("the processor met a fault\n");
    board_exit(EXIT_FAULT);
}

void board_start(void) {
    char *words[BOARD_ARGUMENTS];
    uint32_t *to;
    const uint32_t *from = board_data_image;
    int i, code;
    for (to = board_data; to < board_data_end; ++to) {
        *to = *from++;
    }
    for (to = board_bss; to < board_bss_end; ++to) {
        *to = 0;
    }
    for (i = 0; i < GUARD; ++i) {
        board_stack_bottom[i] = PAINT;
    }
    code = main(board_arguments(words), words);
    for (i = 0; i < GUARD; ++i) {
        if (board_stack_bottom[i] != PAINT) {
            board_write("the stack was too small\n");
            board_exit(EXIT_STACK);
        }
    }
    board_exit(code);
}

static void nothing(void) {
}

static uint32_t counted(void (*volatile call)(void)) {
    const uint32_t from = board_counter();
    call();
    return board_instructions_between(from, board_counter());
}

uint32_t board_instructions_of(void (*call)(void)) {
    const uint32_t alone = counted(nothing);
    return counted(call) - alone;
}

static __attribute__((noinline)) uint32_t written_by(void (*volatile call)(void)) {
    register uint32_t *stack __asm__("sp");
    uint32_t *const top = stack;
    uint32_t *const bottom = top - board_stack_bottom > PAINTED ? top - PAINTED : board_stack_bottom;
    uint32_t *volatile at;
    /* Nothing lies below the stack pointer, and no interrupt comes. */
    for (at = bottom; at < top; ++at) {
        *(volatile uint32_t *)at = PAINT;
    }
    call();
    for (at = bottom; at < top && *(volatile uint32_t *)at == PAINT; ++at) {
    }
    return (uint32_t)((uintptr_t)top - (uintptr_t)at);
}

uint32_t board_stack_of(void (*call)(void)) {
    return written_by(call) - written_by(nothing);
}
