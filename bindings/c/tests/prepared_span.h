/* Every span of the vectors is prepared as well, and asked the same. For the programs of either precision: they say what
 * NUMBER is, and with NAMED what its structs and functions are called. */

#ifndef RKO_TEST_PREPARED_SPAN_H
#define RKO_TEST_PREPARED_SPAN_H

#include "rows.h"

static int alike(const struct NAMED(rko_reading) *a, const struct NAMED(rko_reading) *b) {
    return memcmp(&a->ohm, &b->ohm, sizeof a->ohm) == 0 && a->counts == b->counts && a->over == b->over && a->negative == b->negative;
}

/* The span once prepared reads the same, and refuses the same at the same byte. */
static void read_prepared(const struct row *row, const struct NAMED(rko_span) *on, const char *text, size_t length,
                          const struct NAMED(rko_reading) *expected, const struct rko_detail *refused) {
    struct NAMED(rko_prepared_span) prepared;
    struct NAMED(rko_reading) one;
    struct rko_detail detail;
    const rko_status status = NAMED(rko_span_prepare)(on, NULL, &prepared, &detail);
    /* Only in float are there spans of the vectors that cannot be prepared. */
    CHECK(status == RKO_OK || (status == RKO_CONTRADICTION && sizeof(NUMBER) < sizeof(double)));
    if (status != RKO_OK) {
        return;
    }
    pattern(&one, sizeof one);
    CHECK(NAMED(rko_prepared_span_read)(&prepared, text, length, &one, &detail) == row->status);
    CHECK(row->status == RKO_OK ? alike(&one, expected) : !changed(&one, sizeof one));
    CHECK(row->status == RKO_TEXT_TOO_LONG || detail.index == refused->index);
    prepared.step_digits = 3;
    CHECK(NAMED(rko_prepared_span_read)(&prepared, text, length, &one, NULL) == RKO_CORRUPT_MEMORY);
}

/* So does its clause, at the temperature that it was prepared for. */
static void clause_prepared(const struct NAMED(rko_span) *on, NUMBER ohm, const NUMBER *meter_temperature_c) {
    struct NAMED(rko_prepared_span) prepared;
    NUMBER expected = -1, found = -1;
    const rko_status status = NAMED(rko_span_clause_half_width_ohm)(on, ohm, meter_temperature_c, &expected, NULL);
    if (NAMED(rko_span_prepare)(on, meter_temperature_c, &prepared, NULL) != RKO_OK) {
        CHECK(status != RKO_OK || sizeof(NUMBER) < sizeof(double));
        return;
    }
    CHECK(NAMED(rko_prepared_span_clause_half_width_ohm)(&prepared, ohm, &found, NULL) == status);
    CHECK(memcmp(&found, &expected, sizeof found) == 0);
    prepared.fixed_ohm = -2 * expected - 1;
    CHECK(status != RKO_OK ||
          NAMED(rko_prepared_span_clause_half_width_ohm)(&prepared, 0, &found, NULL) == RKO_CORRUPT_MEMORY);
}

#endif
