/* The self-test of the arithmetic, with the processor set up rightly and in every wrong way that it has. */

#include <reckohm.h>

#include "check.h"

/* What the processor is set up with: the control word of the unit that computes. */
#if defined(__SSE2__) && !defined(RKO_TEST_ON_BOARD)
#include <stdlib.h>
#include <xmmintrin.h>
#define DOUBLES_TOO 1
#define FLUSH_RESULTS 0x8000u
#define FLUSH_OPERANDS 0x0040u
#define ROUNDING 0x6000u
#define ROUNDING_STEP 0x2000u
static unsigned control(void) {
    return _mm_getcsr();
}
static void set_control(unsigned word) {
    _mm_setcsr(word);
}
/* Under valgrind, which computes as usual whatever the control word says. */
static int without_effect(void) {
    const char *loaded = getenv("LD_PRELOAD");
    return loaded != NULL && strstr(loaded, "vgpreload") != NULL;
}
#elif defined(__ARM_FP)
/* A unit of single precision; double precision is computed without it. */
#define DOUBLES_TOO 0
#define FLUSH_RESULTS (1u << 24)
#define FLUSH_OPERANDS (1u << 24)
#define ROUNDING (3u << 22)
#define ROUNDING_STEP (1u << 22)
static unsigned control(void) {
    unsigned word;
    __asm__ volatile("vmrs %0, fpscr" : "=r"(word));
    return word;
}
static void set_control(unsigned word) {
    __asm__ volatile("vmsr fpscr, %0" : : "r"(word));
}
static int without_effect(void) {
    return 0;
}
#endif

static struct rko_detail detail;

static void as_it_should_be(void) {
    CHECK(rko_arithmetic_check(NULL) == RKO_OK);
    memset(&detail, 0x5a, sizeof detail);
    CHECK(rko_arithmetic_check(&detail) == RKO_OK && detail.status == RKO_OK && detail.argument == 0);
}

#ifdef FLUSH_RESULTS
/* With the control word changed, the self-test says in which way; set back, all is well again. */
static void set_wrongly(unsigned clear, unsigned set, unsigned in_double, unsigned in_single) {
    const unsigned before = control();
    rko_status status;
    set_control((before & ~clear) | set);
    status = rko_arithmetic_check(&detail);
    set_control(before);
    if (without_effect()) {
        tell("not tried: this processor's control word has no effect here\n");
        return;
    }
    CHECK(status == RKO_WRONG_ARITHMETIC && detail.status == RKO_WRONG_ARITHMETIC);
    CHECK(detail.argument == (DOUBLES_TOO ? in_double : in_single));
    CHECK(bits_of(detail.given) != bits_of(detail.lower) && bits_of(detail.lower) == bits_of(detail.upper));
    as_it_should_be();
}
#endif

int main(void) {
    as_it_should_be();
#ifdef FLUSH_RESULTS
    {
        unsigned direction;
        set_wrongly(0, FLUSH_RESULTS, RKO_ARITHMETIC_FLUSHED, RKO_ARITHMETIC_FLUSHED_F32);
        set_wrongly(0, FLUSH_OPERANDS, RKO_ARITHMETIC_FLUSHED, RKO_ARITHMETIC_FLUSHED_F32);
        for (direction = 1; direction <= 3; ++direction) {
            set_wrongly(ROUNDING, direction * ROUNDING_STEP, RKO_ARITHMETIC_ROUNDED, RKO_ARITHMETIC_ROUNDED_F32);
        }
    }
#endif
    return checks_end("arithmetic");
}
