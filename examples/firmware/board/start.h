/* Between the parts of a board. */

#ifndef RKO_START_H
#define RKO_START_H

#include "board.h"

/* One operation of the host; in cortex_m.c and riscv.c. */
intptr_t host_call(uintptr_t operation, const void *block);

/* The words that the program was started with, into an array of BOARD_ARGUMENTS; gives how many. */
enum { BOARD_ARGUMENTS = 16 };
int board_arguments(char **arguments);

/* A counter of the processor's, and the instructions between two of its readings. */
uint32_t board_counter(void);
uint32_t board_instructions_between(uint32_t from, uint32_t to);

/* Memory, main, exit; the processor's own start calls it with the stack in place. */
void board_start(void);

/* Whatever the processor could not do ends here. */
void board_fault(void);

/* By the linker script. */
extern uint32_t board_data[], board_data_end[], board_data_image[], board_bss[], board_bss_end[], board_stack_bottom[],
    board_stack_top[];

#endif
