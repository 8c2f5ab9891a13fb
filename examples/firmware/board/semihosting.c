/* The host behind the debugger: words, files, the exit. The numbers of the operations are those of the semihosting
 * specification for Arm, which RISC-V shares. */

#include "start.h"

#include <string.h>

enum { SYS_OPEN = 1, SYS_CLOSE = 2, SYS_WRITE0 = 4, SYS_READ = 6, SYS_GET_CMDLINE = 21, SYS_EXIT_EXTENDED = 32 };
enum { READ_BYTES = 1, EXITED = 0x20026 };
enum { WORDS = 256, PIECE = 256 };

static uintptr_t file;
static char piece[PIECE];
static size_t piece_at, piece_end;

void board_write(const char *text) {
    host_call(SYS_WRITE0, text);
}

void board_exit(int code) {
    uintptr_t block[2];
    block[0] = EXITED;
    block[1] = (uintptr_t)code;
    host_call(SYS_EXIT_EXTENDED, block);
    for (;;) {
    }
}

int rows_open(const char *path) {
    uintptr_t block[3];
    intptr_t opened;
    block[0] = (uintptr_t)path;
    block[1] = READ_BYTES;
    block[2] = strlen(path);
    opened = host_call(SYS_OPEN, block);
    file = (uintptr_t)opened;
    piece_at = piece_end = 0;
    return opened != -1;
}

static int next_piece(void) {
    uintptr_t block[3];
    block[0] = file;
    block[1] = (uintptr_t)piece;
    block[2] = PIECE;
    /* The answer is how many bytes were not read. */
    piece_end = PIECE - (size_t)host_call(SYS_READ, block);
    piece_at = 0;
    return piece_end != 0;
}

int rows_line(char *line, size_t room) {
    size_t length = 0;
    while (length + 1 < room && (piece_at < piece_end || next_piece())) {
        const char byte = piece[piece_at++];
        line[length++] = byte;
        if (byte == '\n') {
            break;
        }
    }
    line[length] = '\0';
    return length != 0;
}

void rows_close(void) {
    host_call(SYS_CLOSE, &file);
}

/* The words that the program was started with, the first of them its name. */
int board_arguments(char **arguments) {
    static char words[WORDS];
    uintptr_t block[2];
    char *at = words;
    int count = 0;
    block[0] = (uintptr_t)words;
    block[1] = sizeof words;
    if (host_call(SYS_GET_CMDLINE, block) != 0) {
        return 0;
    }
    while (count < BOARD_ARGUMENTS && *at != '\0') {
        arguments[count++] = at;
        at += strcspn(at, " ");
        if (*at == ' ') {
            *at++ = '\0';
        }
    }
    return count;
}
