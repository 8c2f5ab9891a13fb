/* By the library. */

#include <reckohm.h>
#include <string.h>

#include "calls.h"

/* Plain structs, written down as firmware does: `ours_check` sees that they are what the library makes. */
static const struct NAMED(rko_prepared_span) span = {FRACTION, COUNTS * STEP_OHM, N(1.0), FULL_SCALE_OHM, 2000, 1, 1, 3, 4,
                                                     RKO_MARK_ONE_ALONE, 0};
static const struct NAMED(rko_limits) limits = {LOWER_OHM, UPPER_OHM};
static const struct NAMED(rko_rule) rule = {RISK, RKO_RULE_GUARDED, 0};
static struct NAMED(rko_b_value_thermistor) thermistor;

int ours_check(void) {
    static struct NAMED(rko_span) checked;
    struct NAMED(rko_prepared_span) prepared;
    struct NAMED(rko_limits) tolerance;
    struct NAMED(rko_rule) guarded;
    checked.full_scale_ohm = FULL_SCALE_OHM;
    checked.resolution_ohm = STEP_OHM;
    checked.display_unit_ohm = UNIT_OHM;
    checked.fraction_of_reading = FRACTION;
    checked.accuracy_counts = COUNTS;
    checked.temperature_lower_c = N(18.0);
    checked.temperature_upper_c = N(28.0);
    checked.marks = RKO_MARK_ONE_ALONE;
    memcpy(checked.label, "20 kohm", 8);
    return NAMED(rko_span_prepare)(&checked, NULL, &prepared, NULL) == RKO_OK &&
           NAMED(rko_limits_from_tolerance)(N(4700.0), N(0.05), &tolerance, NULL) == RKO_OK &&
           NAMED(rko_rule_guarded)(RISK, &guarded, NULL) == RKO_OK && memcmp(&prepared, &span, sizeof span) == 0 &&
           memcmp(&tolerance, &limits, sizeof limits) == 0 && memcmp(&guarded, &rule, sizeof rule) == 0;
}

uint32_t ours_read_and_judge(const char *text, size_t length, number *probability) {
    struct NAMED(rko_reading) reading;
    struct NAMED(rko_decision) decision;
    number half_width;
    if (NAMED(rko_prepared_span_read)(&span, text, length, &reading, NULL) != RKO_OK) {
        return NO_READING;
    }
    if (reading.over) {
        return OVER_RANGE;
    }
    if (NAMED(rko_prepared_span_clause_half_width_ohm)(&span, reading.ohm, &half_width, NULL) != RKO_OK ||
        NAMED(rko_judge_value)(reading.ohm, half_width, SCATTER_OHM, &limits, &rule, &decision, NULL) != RKO_OK) {
        return NO_READING;
    }
    *probability = decision.conformance_probability;
    return decision.answer;
}

number ours_normal_above(number z) {
    number p = N(-1.0);
    NAMED(rko_normal_above)(z, &p, NULL);
    return p;
}

void ours_set_up_thermistor(void) {
    if (NAMED(rko_b_value_thermistor_new)(N(10000.0), N(25.0), N(3435.0), N(25.0), N(85.0), &thermistor, NULL) != RKO_OK) {
        thermistor.rated_ohm = N(0.0);
    }
}

number ours_temperature_c(number ohm) {
    number celsius = N(-300.0);
    NAMED(rko_b_value_thermistor_temperature_c)(&thermistor, ohm, &celsius, NULL);
    return celsius;
}

number ours_nearest_in_e12(number ohm) {
    number nearest = N(-1.0);
    NAMED(rko_preferred_nearest_ohm)(ohm, 12, &nearest, NULL);
    return nearest;
}
