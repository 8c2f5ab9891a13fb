/* What the programs need of a board: words to whoever debugs it, rows from the host's files, an exit code, a count of
 * instructions and the depth of the stack. All of it goes by semihosting and works on the emulated boards alike. */

#ifndef RKO_BOARD_H
#define RKO_BOARD_H

#include <stddef.h>
#include <stdint.h>

/* To the host's stderr. */
void board_write(const char *text);

/* Ends the emulation with this exit code. */
void board_exit(int code);

/* A file of the host, read line by line; 0 if there is none, or no further line. A line keeps its end, as with fgets. */
int rows_open(const char *path);
int rows_line(char *line, size_t room);
void rows_close(void);

/* How many instructions a call takes, less those of a call that does nothing; exact below half a million, where the
 * emulation was started with the board's own `-icount`. */
uint32_t board_instructions_of(void (*call)(void));

/* How many bytes of stack a call takes below its caller's, by painting. */
uint32_t board_stack_of(void (*call)(void));

#endif
