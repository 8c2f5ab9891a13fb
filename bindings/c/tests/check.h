/* What the test programs share: a check that names its place and is counted. Each program is compiled as C99 and as C++11. */

#ifndef RKO_TEST_CHECK_H
#define RKO_TEST_CHECK_H

#include <stdint.h>
#include <string.h>

/* What a program says goes to stderr on a host, and to whoever debugs a board. */
#ifdef RKO_TEST_ON_BOARD
#include <board.h>
static void tell(const char *text) {
    board_write(text);
}
#else
#include <stdio.h>
static void tell(const char *text) {
    fputs(text, stderr);
}
#endif

static void tell_number(long number) {
    char digits[24];
    char *at = digits + sizeof digits;
    unsigned long left = number < 0 ? 0ul - (unsigned long)number : (unsigned long)number;
    *--at = '\0';
    do {
        *--at = (char)('0' + left % 10);
        left /= 10;
    } while (left > 0);
    if (number < 0) {
        *--at = '-';
    }
    tell(at);
}

static unsigned long checks_made = 0, checks_failed = 0;

static void check(int holds, const char *file, long line, const char *words) {
    ++checks_made;
    if (!holds) {
        ++checks_failed;
        tell(file);
        tell(":");
        tell_number(line);
        tell(": does not hold: ");
        tell(words);
        tell("\n");
    }
}

#define CHECK(holds) check((holds) != 0, __FILE__, __LINE__, #holds)

static inline uint64_t bits_of(double x) {
    uint64_t bits;
    memcpy(&bits, &x, sizeof bits);
    return bits;
}

/* Fills an output with a pattern before a call, and says afterwards whether any of it has changed. */
static inline void pattern(void *output, size_t size) {
    memset(output, 0x5a, size);
}

static inline int changed(const void *output, size_t size) {
    const unsigned char *byte = (const unsigned char *)output;
    size_t i;
    for (i = 0; i < size; ++i) {
        if (byte[i] != 0x5a) {
            return 1;
        }
    }
    return 0;
}

/* The last line of each program. */
static int checks_end(const char *program) {
    tell(program);
    tell(": ");
    tell_number((long)checks_made);
    tell(" checks, ");
    tell_number((long)checks_failed);
    tell(" failed\n");
    return checks_failed != 0 || checks_made == 0;
}

#endif
