/* By the library. */

#include <reckohm.h>
#include <string.h>

#include "calls.h"

static struct NAMED(rko_span) span;
static struct NAMED(rko_limits) limits;
static struct NAMED(rko_rule) rule;
static struct NAMED(rko_b_value_thermistor) thermistor;

/* Plain structs: those that need no check of their own are written down, as firmware does. */
void ours_set_up(void) {
    span.full_scale_ohm = FULL_SCALE_OHM;
    span.resolution_ohm = STEP_OHM;
    span.display_unit_ohm = UNIT_OHM;
    span.fraction_of_reading = FRACTION;
    span.accuracy_counts = COUNTS;
    span.temperature_lower_c = N(18.0);
    span.temperature_upper_c = N(28.0);
    span.marks = RKO_MARK_ONE_ALONE;
    memcpy(span.label, "20 kohm", 8);
    limits.lower_ohm = LOWER_OHM;
    limits.upper_ohm = UPPER_OHM;
    rule.kind = RKO_RULE_GUARDED;
    rule.risk = RISK;
}

uint32_t ours_read_and_judge(const char *text, size_t length, number *probability) {
    struct NAMED(rko_reading) reading;
    struct NAMED(rko_decision) decision;
    number half_width;
    if (NAMED(rko_span_read)(&span, text, length, &reading, NULL) != RKO_OK) {
        return NO_READING;
    }
    if (reading.over) {
        return OVER_RANGE;
    }
    if (NAMED(rko_span_clause_half_width_ohm)(&span, reading.ohm, NULL, &half_width, NULL) != RKO_OK ||
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
