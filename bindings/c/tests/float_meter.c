/* Meters in float: the estimate of a reading in both precisions, and refusals of the twins, which say what they say in double
 * and leave outputs as they were. What they read and compute is in the vectors. */

#include <math.h>
#include <reckohm.h>

#include "check.h"

static struct rko_detail detail;

#define REFUSED(wanted, output, called)                                                                                \
    do {                                                                                                               \
        pattern(&(output), sizeof(output));                                                                            \
        CHECK((called) == (wanted) && detail.status == (wanted) && !changed(&(output), sizeof(output)));               \
    } while (0)

static rko_status new_span(const char *label, float full_scale_ohm, float step_ohm, float unit_ohm, struct rko_span_f32 *span) {
    const rko_status status = rko_span_new_f32(label, strlen(label), full_scale_ohm, step_ohm, unit_ohm, RKO_MARK_ONE_ALONE,
                                               0.008f, 3.0f, span, &detail);
    if (status == RKO_OK) {
        span->flags |= RKO_SPAN_HAS_TEMPERATURE_COEFFICIENT;
        span->temperature_coefficient_per_kelvin = 0.1f;
    }
    return status;
}

/* Three spans, from 200 ohm to 20 kohm. */
static void meter(struct rko_span_f32 *spans) {
    CHECK(new_span("200 ohm", 200.0f, 0.1f, 1.0f, &spans[0]) == RKO_OK);
    CHECK(new_span("2 kohm", 2000.0f, 1.0f, 1000.0f, &spans[1]) == RKO_OK);
    CHECK(new_span("20 kohm", 20000.0f, 10.0f, 1000.0f, &spans[2]) == RKO_OK);
}

/* To the bit what the whole evaluation makes of the reading, in double. */
static void estimate_as_evaluated(void) {
    static const char *const texts[] = {"0.0", "146.2", "-0.3", "199.9"};
    const double cold = 3.5;
    struct rko_span spans[RKO_SPANS_MOST];
    struct rko_reading reading, over = {200.0, 0, 1, 0}, odd = {3.0, 7, 0, 0};
    struct rko_measurement measured;
    struct rko_setup setup;
    struct rko_estimate e;
    size_t count, i;
    CHECK(rko_meter_example_hand_held(spans, RKO_SPANS_MOST, &count, NULL) == RKO_OK);
    for (i = 0; i < 8; ++i) {
        const char *text = texts[i / 2];
        CHECK(rko_span_read(&spans[0], text, strlen(text), &reading, NULL) == RKO_OK);
        CHECK(rko_setup_new(&setup, NULL) == RKO_OK);
        setup.meter_temperature_c = cold;
        setup.flags = i % 2 ? RKO_SETUP_METER_TEMPERATURE : 0u;
        CHECK(rko_span_estimate(&spans[0], &reading, i % 2 ? &cold : NULL, &e, NULL) == RKO_OK);
        CHECK(rko_measurement_evaluate(&spans[0], &reading, 1, &setup, NULL, 0, &measured, NULL) == RKO_OK);
        CHECK(memcmp(&e, &measured.estimate, sizeof e) == 0 && e.rectangular[0] > 0.0);
    }
    REFUSED(RKO_OVER_RANGE_READING, e, rko_span_estimate(&spans[0], &over, NULL, &e, &detail));
    REFUSED(RKO_CONTRADICTION, e, rko_span_estimate(&spans[0], &odd, NULL, &e, &detail));
    REFUSED(RKO_NULL_POINTER, e, rko_span_estimate(&spans[0], NULL, NULL, &e, &detail));
    spans[0].flags = 0;
    REFUSED(RKO_MISSING_ARGUMENT, e, rko_span_estimate(&spans[0], &reading, &cold, &e, &detail));
}

/* All that a small processor does: read, estimate, judge. */
static void read_estimate_judge(void) {
    struct rko_span_f32 spans[3];
    struct rko_reading_f32 reading;
    struct rko_estimate_f32 e;
    struct rko_limits_f32 limits;
    struct rko_rule_f32 rule;
    struct rko_decision_f32 decision;
    meter(spans);
    CHECK(rko_span_read_f32(&spans[2], "4.70", 4, &reading, NULL) == RKO_OK && reading.ohm == 4700.0f && reading.counts == 470);
    CHECK(rko_span_estimate_f32(&spans[2], &reading, NULL, &e, NULL) == RKO_OK && e.value == 4700.0f);
    CHECK(e.rectangular[0] == 0.008f * 4700.0f + 30.0f && e.rectangular[1] == 0.0f && e.normal_u == 0.0f);
    CHECK(rko_estimate_with_type_a_f32(&e, 5.0f, 4.0f, &e, NULL) == RKO_OK);
    CHECK(rko_limits_from_tolerance_f32(4700.0f, 0.05f, &limits, NULL) == RKO_OK);
    CHECK(rko_rule_guarded_f32(0.05f, &rule, NULL) == RKO_OK);
    CHECK(rko_judge_answer_f32(&e, &limits, &rule, &decision, NULL) == RKO_OK);
    CHECK(decision.answer == RKO_ANSWER_CONFORMS && decision.side == RKO_SIDE_INSIDE && decision.conformance_probability > 0.99f);
}

static void spans_and_readings(void) {
    struct rko_span_f32 spans[3], s;
    struct rko_reading_f32 r, two[2];
    const struct rko_reading_f32 over = {200.0f, 0, 1, 0}, odd = {3.0f, 7, 0, 0}, flag = {3.0f, 30, 2, 0};
    struct rko_estimate_f32 e;
    const int64_t offsets[3] = {0, 4, 9}, down[3] = {0, 2, 1};
    uint8_t valid[2];
    int64_t counts;
    char text[32];
    float x;
    const float cold = -61.0f;
    meter(spans);
    CHECK(rko_span_check_f32(&spans[0], &detail) == RKO_OK);
    CHECK(rko_span_full_scale_counts_f32(&spans[0], &counts, NULL) == RKO_OK && counts == 2000);
    CHECK(rko_span_display_text_f32(&spans[1], -0.6f, text, sizeof text, NULL) == RKO_OK && strcmp(text, "-0.001") == 0);
    CHECK(rko_span_read_reply_f32(&spans[1], "+1.0023E+03", 11, &r, NULL) == RKO_OK && r.ohm == 1002.3f && r.counts == 0);
    CHECK(rko_span_read_reply_f32(&spans[1], "-9.9E37", 7, &r, NULL) == RKO_OK && r.ohm == -2000.0f && r.over == 1);
    REFUSED(RKO_OUT_OF_RANGE, s, new_span("none", 0.0f, 1.0f, 1.0f, &s));
    REFUSED(RKO_UNKNOWN_RESOLUTION, s, new_span("by 3", 300.0f, 3.0f, 1.0f, &s));
    REFUSED(RKO_UNKNOWN_DISPLAY_UNIT, s, new_span("ten", 200.0f, 1.0f, 10.0f, &s));
    REFUSED(RKO_CONTRADICTION, s, new_span("half", 200.5f, 1.0f, 1.0f, &s));
    CHECK(detail.given == 200.5 && detail.lower == 1.0);
    s = spans[0];
    s.flags = 16;
    CHECK(rko_span_check_f32(&s, &detail) == RKO_UNKNOWN_CODE && rko_span_check_f32(NULL, &detail) == RKO_NULL_POINTER);
    REFUSED(RKO_UNKNOWN_CODE, counts, rko_span_full_scale_counts_f32(&s, &counts, &detail));
    REFUSED(RKO_NOT_FINITE, x, rko_span_clause_half_width_ohm_f32(&spans[0], NAN, NULL, &x, &detail));
    REFUSED(RKO_OUT_OF_RANGE, x, rko_span_clause_half_width_ohm_f32(&spans[0], 1.0f, &cold, &x, &detail));
    REFUSED(RKO_BUFFER_TOO_SMALL, text, rko_span_display_text_f32(&spans[1], 1.0f, text, 5, &detail));
    /* What a failure says is the same in both precisions: 14.62 is a decimal, not the float nearest to it. */
    REFUSED(RKO_MISSING_POINT, r, rko_span_read_f32(&spans[0], "1462", 4, &r, &detail));
    CHECK(detail.given == 1462.0 && detail.lower == 146.2 && detail.upper == 199.9);
    REFUSED(RKO_UNDEFINED_MARK, r, rko_span_read_reply_f32(&spans[0], "9.95E37", 7, &r, &detail));
    REFUSED(RKO_RESULT_OUT_OF_RANGE, r, rko_span_read_reply_f32(&spans[0], "1E39", 4, &r, &detail));
    REFUSED(RKO_NULL_POINTER, r, rko_span_read_f32(&spans[0], NULL, 3, &r, &detail));
    REFUSED(RKO_UNEXPECTED_BYTE, two, rko_span_read_n_f32(&spans[0], "11.01x0.0", offsets, 2, two, NULL, &detail));
    CHECK(detail.index == 1 && detail.failed == 1 && detail.lower == 1.0);
    CHECK(rko_span_read_n_f32(&spans[0], "11.01x0.0", offsets, 2, two, valid, &detail) == RKO_OK);
    CHECK(valid[0] == 1 && valid[1] == 0 && two[0].ohm == 11.0f && two[0].counts == 110);
    REFUSED(RKO_CONTRADICTION, two, rko_span_read_reply_n_f32(&spans[0], "0.10.2", down, 2, two, NULL, &detail));
    REFUSED(RKO_OVER_RANGE_READING, e, rko_span_estimate_f32(&spans[0], &over, NULL, &e, &detail));
    REFUSED(RKO_CONTRADICTION, e, rko_span_estimate_f32(&spans[0], &odd, NULL, &e, &detail));
    REFUSED(RKO_UNKNOWN_CODE, e, rko_span_estimate_f32(&spans[0], &flag, NULL, &e, &detail));
    CHECK(rko_span_read_f32(&spans[0], "11.0", 4, &r, NULL) == RKO_OK);
    REFUSED(RKO_OUT_OF_RANGE, e, rko_span_estimate_f32(&spans[0], &r, &cold, &e, &detail));
}

/* A float holds fewer displays than a double; what it holds it reads alike. */
static void prepared_spans(void) {
    struct rko_span_f32 spans[3], fine;
    struct rko_prepared_span_f32 prepared, p;
    struct rko_reading_f32 r;
    float x;
    const float hot = 35.0f;
    meter(spans);
    CHECK(rko_span_prepare_f32(&spans[2], &hot, &prepared, NULL) == RKO_OK && prepared.widening > 1.69f);
    CHECK(rko_prepared_span_read_f32(&prepared, "-4.88", 5, &r, NULL) == RKO_OK && r.ohm == -4880.0f && r.counts == -488);
    CHECK(rko_prepared_span_read_f32(&prepared, " 1 ", 3, &r, NULL) == RKO_OK && r.over == 1 && r.ohm == 20000.0f);
    CHECK(rko_prepared_span_clause_half_width_ohm_f32(&prepared, -4880.0f, &x, NULL) == RKO_OK && x > 117.0f && x < 118.0f);
    REFUSED(RKO_MISSING_POINT, r, rko_prepared_span_read_f32(&prepared, "4880", 4, &r, &detail));
    CHECK(detail.index == 4 && detail.given == 0.0);
    REFUSED(RKO_NOT_FINITE, x, rko_prepared_span_clause_half_width_ohm_f32(&prepared, NAN, &x, &detail));
    REFUSED(RKO_NULL_POINTER, p, rko_span_prepare_f32(NULL, NULL, &p, &detail));
    CHECK(new_span("fine", 2e8f, 1.0f, 1.0f, &fine) == RKO_OK);
    REFUSED(RKO_CONTRADICTION, p, rko_span_prepare_f32(&fine, NULL, &p, &detail));
    prepared.step_power = -100;
    REFUSED(RKO_CORRUPT_MEMORY, r, rko_prepared_span_read_f32(&prepared, "4.88", 4, &r, &detail));
}

static void stepping(void) {
    struct rko_span_f32 spans[3], wrong[2];
    struct rko_auto_ranger_f32 ranger, zero, kept, broken;
    const struct rko_reading_f32 over = {200.0f, 0, 1, 0}, odd = {3.0f, 7, 0, 0}, flag = {3.0f, 30, 2, 0};
    const struct rko_reading_f32 beyond = {20001.0f, 0, 0, 0}, good = {4700.0f, 470, 0, 0};
    size_t next, place, noticed = 0;
    uint32_t action;
    meter(spans);
    CHECK(rko_meter_next_span_f32(spans, 3, 0, &over, &action, &next, NULL) == RKO_OK && action == RKO_STEP_UP && next == 1);
    CHECK(rko_meter_next_span_f32(spans, 3, 2, &good, &action, &next, NULL) == RKO_OK && action == RKO_STEP_STAY && next == 2);
    REFUSED(RKO_NO_SUCH_SPAN, next, rko_meter_next_span_f32(spans, 3, 3, &over, &action, &next, &detail));
    REFUSED(RKO_CONTRADICTION, action, rko_meter_next_span_f32(spans, 3, 0, &odd, &action, &next, &detail));
    REFUSED(RKO_WRONG_COUNT, next, rko_meter_next_span_f32(spans, 17, 0, &over, &action, &next, &detail));
    wrong[0] = spans[1];
    wrong[1] = spans[0];
    REFUSED(RKO_CONTRADICTION, next, rko_meter_next_span_f32(wrong, 2, 0, &over, &action, &next, &detail));
    REFUSED(RKO_NO_SUCH_SPAN, ranger, rko_auto_ranger_init_f32(spans, 3, 3, 0, 0.05f, 0.5f, &ranger, &detail));
    REFUSED(RKO_OUT_OF_RANGE, ranger, rko_auto_ranger_init_f32(spans, 3, 0, 0, 0.0f, 0.5f, &ranger, &detail));
    REFUSED(RKO_CONTRADICTION, ranger, rko_auto_ranger_init_f32(spans, 3, 0, 0, 0.2f, 0.1f, &ranger, &detail));
    REFUSED(RKO_EMPTY, ranger, rko_auto_ranger_init_f32(NULL, 0, 0, 0, 0.05f, 0.5f, &ranger, &detail));
    CHECK(rko_auto_ranger_init_f32(spans, 3, 2, 1, 0.05f, 0.5f, &ranger, NULL) == RKO_OK);
    kept = ranger;
    REFUSED(RKO_CONTRADICTION, action, rko_auto_ranger_step_f32(&ranger, &over, &action, &next, &detail));
    REFUSED(RKO_UNKNOWN_CODE, action, rko_auto_ranger_step_f32(&ranger, &flag, &action, &next, &detail));
    REFUSED(RKO_BEYOND_FULL_SCALE, next, rko_auto_ranger_step_f32(&ranger, &beyond, &action, &next, &detail));
    REFUSED(RKO_NOT_FINITE, action, rko_auto_ranger_step_ohm_f32(&ranger, NAN, &action, &next, &detail));
    REFUSED(RKO_NULL_POINTER, action, rko_auto_ranger_step_ohm_f32(&ranger, 1.0f, &action, NULL, &detail));
    REFUSED(RKO_NO_SUCH_SPAN, action, rko_auto_ranger_restart_f32(&ranger, 3, &detail));
    CHECK(memcmp(&kept, &ranger, sizeof kept) == 0);
    memset(&zero, 0, sizeof zero);
    REFUSED(RKO_CORRUPT_MEMORY, action, rko_auto_ranger_step_ohm_f32(&zero, 1.0f, &action, &next, &detail));
    REFUSED(RKO_CORRUPT_MEMORY, action, rko_auto_ranger_restart_f32(&zero, 0, &detail));
    for (place = 0; place < sizeof broken; ++place) {
        broken = kept;
        ((unsigned char *)&broken)[place] ^= 0x10;
        noticed += rko_auto_ranger_step_ohm_f32(&broken, 1.0f, &action, &next, NULL) == RKO_CORRUPT_MEMORY;
    }
    CHECK(noticed == 232 + 4);
    CHECK(rko_auto_ranger_step_f32(&kept, &good, &action, &next, NULL) == RKO_OK);
    CHECK(action == RKO_RANGER_ACCEPT && next == 2);
    CHECK(rko_auto_ranger_step_ohm_f32(&kept, 100.0f, &action, &next, NULL) == RKO_OK);
    CHECK(action == RKO_RANGER_SWITCH && next == 0);
    CHECK(rko_auto_ranger_step_ohm_f32(&kept, 100.0f, &action, &next, NULL) == RKO_OK && action == RKO_RANGER_AGAIN);
    CHECK(rko_auto_ranger_restart_f32(&kept, 1, NULL) == RKO_OK);
    CHECK(rko_auto_ranger_step_ohm_f32(&kept, 2000.0f, &action, &next, NULL) == RKO_OK);
    CHECK(action == RKO_RANGER_SWITCH && next == 2);
}

int main(void) {
    estimate_as_evaluated();
    read_estimate_judge();
    spans_and_readings();
    prepared_spans();
    stepping();
    return checks_end("float_meter");
}
