/* What the test programs share: a check that names its place and is counted. Each program is compiled as C99 and as C++11. */

#ifndef RKO_TEST_CHECK_H
#define RKO_TEST_CHECK_H

#include <stdint.h>
#include <stdio.h>
#include <string.h>

static unsigned long checks_made = 0, checks_failed = 0;

#define CHECK(holds)                                                                                                   \
    do {                                                                                                               \
        ++checks_made;                                                                                                 \
        if (!(holds)) {                                                                                                \
            ++checks_failed;                                                                                           \
            fprintf(stderr, "%s:%d: does not hold: %s\n", __FILE__, __LINE__, #holds);                                \
        }                                                                                                              \
    } while (0)

static uint64_t bits_of(double x) {
    uint64_t bits;
    memcpy(&bits, &x, sizeof bits);
    return bits;
}

/* The last line of each program. */
static int checks_end(const char *program) {
    printf("%s: %lu checks, %lu failed\n", program, checks_made, checks_failed);
    return checks_failed != 0 || checks_made == 0;
}

#endif
