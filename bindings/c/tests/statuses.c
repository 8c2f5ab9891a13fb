/* Raises every status that the header lists, each with its outputs filled with a pattern before and the same afterwards, with
 * the status in the detail and a sentence made of it. `cargo xtask test` compares the names here with those of the header. */

#include <math.h>
#include <reckohm.h>

#include "check.h"

static struct rko_detail detail;

/* The sentence must be one of its own: longer than the few words that the status means. */
static void raised(rko_status wanted, rko_status given_status, int spoilt, const char *words, const char *call_words) {
    char text[RKO_TEXT_CAPACITY];
    const int holds = given_status == wanted && !spoilt && detail.status == wanted;
    CHECK(holds);
    CHECK(rko_detail_text(&detail, text, sizeof text, NULL) == RKO_OK);
    CHECK(strlen(text) > 50 && strstr(text, words) != NULL);
    if (!holds || strstr(text, words) == NULL) {
        fprintf(stderr, "%s: status %d, output %s: %s\n", call_words, (int)given_status, spoilt ? "changed" : "as it was", text);
    }
}

#define RAISE(status, output, words, called)                                                                           \
    do {                                                                                                               \
        pattern(&(output), sizeof(output));                                                                            \
        pattern(&detail, sizeof detail);                                                                               \
        {                                                                                                              \
            const rko_status answer = (called);                                                                        \
            raised(status, answer, changed(&(output), sizeof(output)), words, #called);                                \
        }                                                                                                              \
    } while (0)

static void of_any_area(void) {
    double x;
    uint32_t code;
    uint8_t within;
    struct rko_limits limits;
    struct rko_estimate estimate, plain;
    struct rko_expanded expanded;
    struct rko_rule rule;
    RAISE(RKO_OUT_OF_RANGE, x, "0 ohm given", rko_preferred_nearest_ohm(0.0, 12, &x, &detail));
    RAISE(RKO_OUT_OF_RANGE, rule, "fraction, not percent", rko_rule_guarded(5.0, &rule, &detail));
    RAISE(RKO_OUT_OF_RANGE, rule, "fraction, not percent", rko_rule_max_risk(5.0, &rule, &detail));
    RAISE(RKO_OUT_OF_RANGE, x, "given", rko_normal_quantile(1.5, &x, &detail));
    RAISE(RKO_OUT_OF_RANGE, x, "given", rko_t_quantile_above(0.05, 0.0, &x, &detail));
    RAISE(RKO_OUT_OF_RANGE, limits, "limits from a tolerance", rko_limits_from_tolerance(4700.0, 5.0, &limits, &detail));
    RAISE(RKO_NOT_FINITE, x, "NaN", rko_preferred_above_ohm(NAN, 12, &x, &detail));
    RAISE(RKO_NOT_FINITE, code, "NaN", rko_preferred_coarsest(NAN, &code, &detail));
    RAISE(RKO_NOT_FINITE, limits, "NaN", rko_limits_new(NAN, 1.0, &limits, &detail));
    RAISE(RKO_NOT_FINITE, limits, "inf", rko_limits_at_least(INFINITY, &limits, &detail));
    RAISE(RKO_EMPTY, limits, "both ends open", rko_limits_new(-INFINITY, INFINITY, &limits, &detail));
    RAISE(RKO_CONTRADICTION, limits, "changed over", rko_limits_new(2.0, 1.0, &limits, &detail));
    RAISE(RKO_RESULT_OUT_OF_RANGE, estimate, "too large", rko_estimate_new(1e308, 1e308, INFINITY, &estimate, &detail));
    CHECK(rko_estimate_new(1.0, 1.0, INFINITY, &plain, NULL) == RKO_OK);
    RAISE(RKO_OUT_OF_RANGE, expanded, "given", rko_estimate_expanded(&plain, 95.0, &expanded, &detail));
    RAISE(RKO_OUT_OF_RANGE, expanded, "given", rko_estimate_expanded_guaranteed(&plain, 1.0, &expanded, &detail));
    RAISE(RKO_UNKNOWN_CODE, x, "argument 2: the code 13", rko_preferred_below_ohm(1.0, 13, &x, &detail));
    RAISE(RKO_UNKNOWN_CODE, within, "argument 2", rko_preferred_contains(1.0, 0, &within, &detail));
    RAISE(RKO_NULL_POINTER, x, "argument 1", rko_estimate_u(NULL, &x, &detail));
    RAISE(RKO_NULL_POINTER, within, "argument 1", rko_limits_contains(NULL, 1.0, &within, &detail));
    RAISE(RKO_UNKNOWN_SERIES, code, "no series", rko_preferred_series("E13", 3, &code, &detail));
    CHECK(rko_preferred_series("e96", 3, &code, &detail) == RKO_OK && code == 96 && detail.status == RKO_OK);
}

static void of_markings(void) {
    char text[64];
    struct rko_marking m, made;
    struct rko_bands bands;
    struct rko_limits limits;
    struct rko_both_ways ways;
    const uint8_t many[7] = {1, 2, 3, 4, 5, 6, 7}, odd[3] = {1, 2, 13};
    RAISE(RKO_EMPTY, m, "given", rko_marking_from_bands("", 0, RKO_EDITION_2016, &m, &detail));
    RAISE(RKO_UNEXPECTED_BYTE, m, "the byte 0x09 at byte 2", rko_marking_from_letters("4K\t7", 4, &m, &detail));
    RAISE(RKO_WRONG_COUNT, m, "bands", rko_marking_from_bands("red red", 7, RKO_EDITION_2016, &m, &detail));
    RAISE(RKO_WRONG_COUNT, m, "bands", rko_marking_from_band_list(many, 7, RKO_EDITION_2016, &m, &detail));
    RAISE(RKO_UNKNOWN_COLOUR, ways, "the word at byte 4", rko_marking_both_ways("red blau red", 12, RKO_EDITION_2016, &ways, &detail));
    CHECK(detail.index == 4);
    RAISE(RKO_MISPLACED_COLOUR, m, "given", rko_marking_from_bands("gold red red gold", 17, RKO_EDITION_2016, &m, &detail));
    RAISE(RKO_WRONG_FORM, m, "given", rko_marking_from_chip("4", 1, 0, &m, &detail));
    RAISE(RKO_DOUBTFUL_CODE, m, "name the scheme", rko_marking_from_chip("01S", 3, RKO_CHIP_SCHEME_NONE, &m, &detail));
    RAISE(RKO_UNKNOWN_CODE, m, "argument 3: the code 9", rko_marking_from_chip("01S", 3, 9, &m, &detail));
    RAISE(RKO_UNKNOWN_CODE, m, "argument 3: the code 2005", rko_marking_from_bands("red", 3, 2005, &m, &detail));
    RAISE(RKO_UNKNOWN_CODE, m, "the code 13", rko_marking_from_band_list(odd, 3, RKO_EDITION_2016, &m, &detail));
    RAISE(RKO_OUT_OF_RANGE, m, "given", rko_marking_from_value(0.0, 0.05, 0, &m, &detail));
    RAISE(RKO_OUT_OF_RANGE, m, "given", rko_marking_from_value(4700.0, 0.05, 70000, &m, &detail));
    CHECK(rko_marking_from_value(4700.0, 0.03, 0, &made, NULL) == RKO_OK);
    RAISE(RKO_NO_SUCH_MARKING, bands, "no band for this tolerance", rko_marking_to_bands(&made, RKO_EDITION_2016, &bands, &detail));
    RAISE(RKO_NO_SUCH_MARKING, text, "no letter for this tolerance", rko_marking_to_letters(&made, text, sizeof text, &detail));
    CHECK(rko_marking_from_value(4700.0, 0.0, 0, &made, NULL) == RKO_OK);
    RAISE(RKO_MISSING_ARGUMENT, limits, "tolerance", rko_marking_limits(&made, &limits, &detail));
    RAISE(RKO_BUFFER_TOO_SMALL, text, "4 bytes", rko_marking_to_chip(&made, text, 3, &detail));
    CHECK(detail.index == 4 && detail.given == 3.0);
    RAISE(RKO_UNKNOWN_CODE, text, "argument 2", rko_marking_to_chip_as(&made, 9, text, sizeof text, &detail));
    made.has = 8;
    RAISE(RKO_UNKNOWN_CODE, text, "argument 1", rko_marking_to_letters(&made, text, sizeof text, &detail));
}

static rko_status made_span(const char *label, double full_scale_ohm, double resolution_ohm, double unit_ohm,
                            uint32_t marks, struct rko_span *span) {
    return rko_span_new(label, strlen(label), full_scale_ohm, resolution_ohm, unit_ohm, marks, 0.008, 3.0, span, &detail);
}

static void of_spans(void) {
    struct rko_span s, good;
    double x;
    const double cold = -20.0;
    CHECK(made_span("2 kohm", 2000.0, 1.0, 1000.0, RKO_MARK_OL, &good) == RKO_OK);
    CHECK(rko_span_check(&good, &detail) == RKO_OK);
    RAISE(RKO_EMPTY, s, "label", made_span("", 2000.0, 1.0, 1000.0, RKO_MARK_OL, &s));
    RAISE(RKO_TEXT_TOO_LONG, s, "label", made_span("0123456789abcdef", 2000.0, 1.0, 1000.0, RKO_MARK_OL, &s));
    RAISE(RKO_UNEXPECTED_BYTE, s, "label", made_span("2\tkohm", 2000.0, 1.0, 1000.0, RKO_MARK_OL, &s));
    RAISE(RKO_UNEXPECTED_BYTE, s, "label", made_span("2 k\xff", 2000.0, 1.0, 1000.0, RKO_MARK_OL, &s));
    CHECK(detail.index == 3 && detail.given == 255.0);
    RAISE(RKO_UNKNOWN_RESOLUTION, s, "resolution", made_span("2 kohm", 2000.0, 3.0, 1000.0, RKO_MARK_OL, &s));
    RAISE(RKO_UNKNOWN_DISPLAY_UNIT, s, "unit", made_span("2 kohm", 2000.0, 1.0, 10.0, RKO_MARK_OL, &s));
    RAISE(RKO_UNKNOWN_MARKS, s, "marks", made_span("2 kohm", 2000.0, 1.0, 1000.0, 16, &s));
    RAISE(RKO_UNKNOWN_MARKS, s, "marks", made_span("2 kohm", 2000.0, 1.0, 1000.0, 0x100, &s));
    RAISE(RKO_CONTRADICTION, s, "steps", made_span("2 kohm", 2000.5, 1.0, 1000.0, RKO_MARK_OL, &s));
    RAISE(RKO_MISSING_ARGUMENT, s, "clause", rko_span_new("a", 1, 2e3, 1.0, 1e3, 0, 0.0, 0.0, &s, &detail));
    RAISE(RKO_MISSING_ARGUMENT, x, "temperature", rko_span_clause_half_width_ohm(&good, 1.0, &cold, &x, &detail));
    s = good;
    memset(s.label, 'x', sizeof s.label);
    CHECK(rko_span_check(&s, &detail) == RKO_TEXT_TOO_LONG);
    s = good;
    s.flags = 16;
    CHECK(rko_span_check(&s, &detail) == RKO_UNKNOWN_CODE);
    s = good;
    s.temperature_lower_c = 30.0;
    CHECK(rko_span_check(&s, &detail) == RKO_CONTRADICTION);
    CHECK(rko_span_check(NULL, &detail) == RKO_NULL_POINTER);
}

/* A prepared span says what is wrong with a text and where; what it is not, and what was written over, it is not taken for. */
static void of_prepared_spans(void) {
    struct rko_span ohm200, warm, vast;
    struct rko_prepared_span prepared, p;
    struct rko_reading r;
    double x;
    const double cold = -20.0;
    CHECK(made_span("200 ohm", 200.0, 0.1, 1.0, RKO_MARK_ONE_ALONE, &ohm200) == RKO_OK);
    CHECK(rko_span_prepare(&ohm200, NULL, &prepared, &detail) == RKO_OK && prepared.widening == 1.0);
    RAISE(RKO_TOO_MANY_DECIMALS, r, "prepared span", rko_prepared_span_read(&prepared, "1.462", 5, &r, &detail));
    CHECK(detail.index == 5);
    RAISE(RKO_MARK_NOT_OF_SPAN, r, "prepared span", rko_prepared_span_read(&prepared, " OL", 3, &r, &detail));
    CHECK(detail.index == 1);
    RAISE(RKO_TEXT_TOO_LONG, r, "prepared span", rko_prepared_span_read(&prepared, "1", 33, &r, &detail));
    RAISE(RKO_NULL_POINTER, r, "argument 2", rko_prepared_span_read(&prepared, NULL, 3, &r, &detail));
    RAISE(RKO_NULL_POINTER, r, "argument 1", rko_prepared_span_read(NULL, "11.0", 4, &r, &detail));
    RAISE(RKO_NOT_FINITE, x, "number", rko_prepared_span_clause_half_width_ohm(&prepared, INFINITY, &x, &detail));
    RAISE(RKO_MISSING_ARGUMENT, p, "temperature", rko_span_prepare(&ohm200, &cold, &p, &detail));
    CHECK(made_span("vast", 1e15, 1e9, 0.001, RKO_MARK_OL, &vast) == RKO_OK);
    CHECK(rko_span_prepare(&vast, NULL, &p, &detail) == RKO_OK);
    CHECK(rko_prepared_span_read(&p, "3000000000000", 13, &r, &detail) == RKO_OK && r.counts == 3);
    warm = ohm200;
    warm.full_scale_ohm = 200.05;
    RAISE(RKO_CONTRADICTION, p, "full scale", rko_span_prepare(&warm, NULL, &p, &detail));
    p = prepared;
    p.reserved = 1;
    RAISE(RKO_CORRUPT_MEMORY, r, "argument 1", rko_prepared_span_read(&p, "11.0", 4, &r, &detail));
    p = prepared;
    p.marks = 256;
    RAISE(RKO_CORRUPT_MEMORY, r, "argument 1", rko_prepared_span_read(&p, "11.0", 4, &r, &detail));
    p = prepared;
    p.full_scale_ohm = NAN;
    RAISE(RKO_CORRUPT_MEMORY, r, "argument 1", rko_prepared_span_read(&p, "1", 1, &r, &detail));
    p = prepared;
    p.widening = NAN;
    RAISE(RKO_CORRUPT_MEMORY, x, "argument 1", rko_prepared_span_clause_half_width_ohm(&p, 11.0, &x, &detail));
}

static void of_readings(void) {
    struct rko_span ohm200, by_two, one_or_one;
    struct rko_reading r, two[2];
    char text[64];
    const int64_t down[3] = {0, 2, 1}, up[3] = {0, 4, 9};
    uint8_t valid[2] = {7, 7};
    CHECK(made_span("200 ohm", 200.0, 0.1, 1.0, RKO_MARK_ONE_ALONE, &ohm200) == RKO_OK);
    CHECK(made_span("20 kohm by 2", 20000.0, 2.0, 1000.0, RKO_MARK_OL, &by_two) == RKO_OK);
    CHECK(made_span("200 ohm", 200.0, 1.0, 1.0, RKO_MARK_ONE_ALONE, &one_or_one) == RKO_OK);
    RAISE(RKO_EMPTY, r, "display text", rko_span_read(&ohm200, "  ", 2, &r, &detail));
    RAISE(RKO_MISSING_DIGITS, r, "display text", rko_span_read(&ohm200, "-", 1, &r, &detail));
    RAISE(RKO_UNEXPECTED_BYTE, r, "display text", rko_span_read(&ohm200, "1x0.0", 5, &r, &detail));
    RAISE(RKO_TEXT_TOO_LONG, r, "display text", rko_span_read(&ohm200, "0000000000000000000000000000000000", 34, &r, &detail));
    RAISE(RKO_MISSING_POINT, r, "display text", rko_span_read(&ohm200, "110", 3, &r, &detail));
    RAISE(RKO_TOO_FEW_DECIMALS, r, "display text", rko_span_read(&by_two, "4.7", 3, &r, &detail));
    RAISE(RKO_TOO_MANY_DECIMALS, r, "display text", rko_span_read(&ohm200, "1.462", 5, &r, &detail));
    RAISE(RKO_TOO_MANY_DIGITS, r, "display text", rko_span_read(&ohm200, "0011.0", 6, &r, &detail));
    RAISE(RKO_BEYOND_FULL_SCALE, r, "display text", rko_span_read(&ohm200, "200.0", 5, &r, &detail));
    RAISE(RKO_OFF_GRID, r, "display text", rko_span_read(&by_two, "4.701", 5, &r, &detail));
    RAISE(RKO_AMBIGUOUS_TEXT, r, "display text", rko_span_read(&one_or_one, "1", 1, &r, &detail));
    RAISE(RKO_MARK_NOT_OF_SPAN, r, "display text", rko_span_read(&ohm200, "OL", 2, &r, &detail));
    RAISE(RKO_NO_READING, r, "reply", rko_span_read_reply(&ohm200, "9.91E37", 7, &r, &detail));
    RAISE(RKO_UNDEFINED_MARK, r, "reply", rko_span_read_reply(&ohm200, "9.95E37", 7, &r, &detail));
    RAISE(RKO_MISSING_DIGITS, r, "reply", rko_span_read_reply(&ohm200, "1E", 2, &r, &detail));
    RAISE(RKO_RESULT_OUT_OF_RANGE, r, "reply", rko_span_read_reply(&ohm200, "1E999", 5, &r, &detail));
    RAISE(RKO_BEYOND_FULL_SCALE, r, "reading", rko_span_read_reply(&ohm200, "200", 3, &r, &detail));
    RAISE(RKO_NULL_POINTER, r, "argument 2", rko_span_read(&ohm200, NULL, 3, &r, &detail));
    RAISE(RKO_BUFFER_TOO_SMALL, text, "6 bytes", rko_span_display_text(&ohm200, 110.0, text, 5, &detail));
    RAISE(RKO_CONTRADICTION, two, "offset 2", rko_span_read_n(&ohm200, "0.10.2", down, 2, two, NULL, &detail));
    RAISE(RKO_UNEXPECTED_BYTE, two, "element 1, the first of 1 that failed: ",
          rko_span_read_n(&ohm200, "11.01x0.0", up, 2, two, NULL, &detail));
    CHECK(detail.index == 1 && detail.lower == 1.0);
    CHECK(rko_detail_text(&detail, text, sizeof text, NULL) == RKO_BUFFER_TOO_SMALL);
    CHECK(rko_span_read_n(&ohm200, "11.01x0.0", up, 2, two, valid, &detail) == RKO_OK);
    CHECK(valid[0] == 1 && valid[1] == 0 && two[0].ohm == 11.0 && detail.status == RKO_UNEXPECTED_BYTE);
    CHECK(rko_span_read_n(&ohm200, NULL, NULL, 0, NULL, NULL, &detail) == RKO_OK);
    RAISE(RKO_WRONG_COUNT, two, "negative count", rko_span_read_n(&ohm200, "", up, (size_t)-2, two, NULL, &detail));
    RAISE(RKO_OUT_OF_RANGE, two, "given", (ohm200.full_scale_ohm = 0.0, rko_span_read_n(&ohm200, "11.01x0.0", up, 2, two, valid, &detail)));
}

static void of_meters(void) {
    struct rko_span spans[RKO_SPANS_MOST], few[2];
    struct rko_assessment all[RKO_SPANS_MOST];
    struct rko_leads leads;
    struct rko_reading over = {200.0, 0, 1, 0}, odd = {3.0, 7, 0, 0}, flag = {3.0, 30, 2, 0};
    size_t count, chosen;
    uint32_t step;
    RAISE(RKO_BUFFER_TOO_SMALL, few, "needs", rko_meter_example_hand_held(few, 2, &count, &detail));
    CHECK(detail.index == 6);
    CHECK(rko_meter_example_hand_held(spans, RKO_SPANS_MOST, &count, NULL) == RKO_OK && count == 6);
    RAISE(RKO_NO_SPAN_HOLDS, all, "span", rko_meter_choose(spans, count, 1e9, 0.05, NULL, all, &chosen, &detail));
    RAISE(RKO_EMPTY, chosen, "span", rko_meter_choose(spans, 0, 1e3, 0.05, NULL, all, &chosen, &detail));
    RAISE(RKO_WRONG_COUNT, chosen, "17", rko_meter_choose(spans, 17, 1e3, 0.05, NULL, all, &chosen, &detail));
    RAISE(RKO_NULL_POINTER, chosen, "argument 6", rko_meter_choose(spans, count, 1e3, 0.05, NULL, NULL, &chosen, &detail));
    RAISE(RKO_NO_SUCH_SPAN, chosen, "span", rko_meter_next_span(spans, count, 6, &over, &step, &chosen, &detail));
    RAISE(RKO_CONTRADICTION, step, "reading", rko_meter_next_span(spans, count, 0, &odd, &step, &chosen, &detail));
    RAISE(RKO_UNKNOWN_CODE, step, "argument 4", rko_meter_next_span(spans, count, 0, &flag, &step, &chosen, &detail));
    RAISE(RKO_WIRE_NOT_IN_TABLE, leads, "wire", rko_leads_from_wire(1.0, 0.6, 5, &leads, &detail));
    RAISE(RKO_WIRE_NOT_IN_TABLE, leads, "wire", rko_leads_from_wire(1.0, 1.5, 257, &leads, &detail));
    RAISE(RKO_OVER_RANGE_READING, leads, "leads", rko_leads_from_reading(&over, &spans[0], &leads, &detail));
    few[0] = spans[1];
    few[1] = spans[0];
    RAISE(RKO_CONTRADICTION, chosen, "lowest", rko_meter_choose(few, 2, 1e2, 0.05, NULL, all, &chosen, &detail));
}

/* An auto-ranger that was never filled, or changed in any byte in use, is refused; refused, it is as before. */
static void of_auto_rangers(void) {
    struct rko_span spans[RKO_SPANS_MOST];
    struct rko_auto_ranger ranger, zero, kept, broken;
    struct rko_reading over = {200.0, 0, 1, 0}, flag = {3.0, 30, 2, 0}, beyond = {20001.0, 0, 0, 0};
    size_t count, next, place, noticed = 0;
    uint32_t action;
    CHECK(rko_meter_example_hand_held(spans, RKO_SPANS_MOST, &count, NULL) == RKO_OK);
    RAISE(RKO_NO_SUCH_SPAN, ranger, "span 6", rko_auto_ranger_init(spans, count, 6, 0, 0.05, 0.5, &ranger, &detail));
    RAISE(RKO_OUT_OF_RANGE, ranger, "hysteresis", rko_auto_ranger_init(spans, count, 0, 0, 0.0, 0.5, &ranger, &detail));
    RAISE(RKO_NOT_FINITE, ranger, "hysteresis", rko_auto_ranger_init(spans, count, 0, 0, 0.05, NAN, &ranger, &detail));
    RAISE(RKO_CONTRADICTION, ranger, "widest", rko_auto_ranger_init(spans, count, 0, 0, 0.2, 0.1, &ranger, &detail));
    RAISE(RKO_EMPTY, ranger, "no span", rko_auto_ranger_init(NULL, 0, 0, 0, 0.05, 0.5, &ranger, &detail));
    RAISE(RKO_WRONG_COUNT, ranger, "17", rko_auto_ranger_init(spans, 17, 0, 0, 0.05, 0.5, &ranger, &detail));
    CHECK(rko_auto_ranger_init(spans, count, 2, 1, RKO_HYSTERESIS_BY_CONVENTION, RKO_WIDEST_HYSTERESIS_BY_CONVENTION, &ranger,
                               NULL) == RKO_OK);
    kept = ranger;
    RAISE(RKO_CONTRADICTION, action, "auto-ranger", rko_auto_ranger_step(&ranger, &over, &action, &next, &detail));
    RAISE(RKO_UNKNOWN_CODE, action, "argument 2", rko_auto_ranger_step(&ranger, &flag, &action, &next, &detail));
    RAISE(RKO_BEYOND_FULL_SCALE, next, "20001", rko_auto_ranger_step(&ranger, &beyond, &action, &next, &detail));
    RAISE(RKO_NOT_FINITE, action, "NaN", rko_auto_ranger_step_ohm(&ranger, NAN, &action, &next, &detail));
    RAISE(RKO_NULL_POINTER, action, "argument 4", rko_auto_ranger_step_ohm(&ranger, 1.0, &action, NULL, &detail));
    RAISE(RKO_NULL_POINTER, action, "argument 1", rko_auto_ranger_step_ohm(NULL, 1.0, &action, &next, &detail));
    RAISE(RKO_NO_SUCH_SPAN, action, "span 6", rko_auto_ranger_restart(&ranger, 6, &detail));
    CHECK(memcmp(&kept, &ranger, sizeof kept) == 0);
    memset(&zero, 0, sizeof zero);
    RAISE(RKO_CORRUPT_MEMORY, action, "argument 1", rko_auto_ranger_step_ohm(&zero, 1.0, &action, &next, &detail));
    RAISE(RKO_CORRUPT_MEMORY, action, "argument 1", rko_auto_ranger_step(&zero, &over, &action, &next, &detail));
    RAISE(RKO_CORRUPT_MEMORY, action, "argument 1", rko_auto_ranger_restart(&zero, 0, &detail));
    for (place = 0; place < sizeof broken; ++place) {
        broken = kept;
        ((unsigned char *)&broken)[place] ^= 0x10;
        noticed += rko_auto_ranger_step_ohm(&broken, 1.0, &action, &next, NULL) == RKO_CORRUPT_MEMORY;
    }
    CHECK(noticed == 440 + 4);
    CHECK(rko_auto_ranger_step_ohm(&kept, 4700.0, &action, &next, NULL) == RKO_OK);
    CHECK(action == RKO_RANGER_ACCEPT && next == 2);
    CHECK(rko_auto_ranger_restart(&kept, 5, NULL) == RKO_OK);
    CHECK(rko_auto_ranger_step_ohm(&kept, 4700.0, &action, &next, NULL) == RKO_OK);
    CHECK(action == RKO_RANGER_SWITCH && next == 3);
}

static void of_evaluations(void) {
    struct rko_span spans[RKO_SPANS_MOST];
    struct rko_measurement m;
    struct rko_setup setup;
    struct rko_reading r = {100.0, 1000, 0, 0}, over = {200.0, 0, 1, 0};
    struct rko_reading both[2];
    size_t count;
    CHECK(rko_meter_example_hand_held(spans, RKO_SPANS_MOST, &count, NULL) == RKO_OK);
    CHECK(rko_measurement_evaluate(spans, &r, 1, NULL, NULL, 0, &m, &detail) == RKO_OK && m.estimate.value == 100.0);
    RAISE(RKO_EMPTY, m, "none given", rko_measurement_evaluate(spans, NULL, 0, NULL, NULL, 0, &m, &detail));
    both[0] = r;
    both[1] = over;
    RAISE(RKO_OVER_RANGE_READING, m, "reading 1", rko_measurement_evaluate(spans, both, 2, NULL, NULL, 0, &m, &detail));
    CHECK(detail.index == 1);
    CHECK(rko_setup_new(&setup, NULL) == RKO_OK);
    setup.flags = RKO_SETUP_PARALLEL_PATH;
    setup.parallel_path_ohm.value = 50.0;
    RAISE(RKO_CONTRADICTION, m, "path", rko_measurement_evaluate(spans, &r, 1, &setup, NULL, 0, &m, &detail));
    setup.flags = RKO_SETUP_TCR_LIMIT;
    RAISE(RKO_MISSING_ARGUMENT, m, "temperature", rko_measurement_evaluate(spans, &r, 1, &setup, NULL, 0, &m, &detail));
    setup.flags = RKO_SETUP_LEADS;
    RAISE(RKO_UNKNOWN_CODE, m, "argument 4", rko_measurement_evaluate(spans, &r, 1, &setup, NULL, 0, &m, &detail));
    setup.flags = RKO_SETUP_ZERO_ERROR_COMMON | RKO_SETUP_ZERO_ERROR_INDEPENDENT;
    RAISE(RKO_UNKNOWN_CODE, m, "argument 4", rko_measurement_evaluate(spans, &r, 1, &setup, NULL, 0, &m, &detail));
    setup.flags = 512;
    RAISE(RKO_UNKNOWN_CODE, m, "argument 4", rko_measurement_evaluate(spans, &r, 1, &setup, NULL, 0, &m, &detail));
    setup.flags = 0;
    setup.coverage_probability = 95.0;
    RAISE(RKO_OUT_OF_RANGE, m, "given", rko_measurement_evaluate(spans, &r, 1, &setup, NULL, 0, &m, &detail));
}

int main(void) {
    of_any_area();
    of_markings();
    of_spans();
    of_prepared_spans();
    of_readings();
    of_meters();
    of_auto_rangers();
    of_evaluations();
    return checks_end("statuses");
}
