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
    printf("%s: %lu checks, %lu failed\n", program, checks_made, checks_failed);
    return checks_failed != 0 || checks_made == 0;
}

#endif
