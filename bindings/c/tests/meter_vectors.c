/* Runs the vectors of meters and of evaluations: every result to the bit, every status, and outputs untouched on a failure.
 * Its arguments are the files. */

#include <math.h>

#define NUMBER double
#define NAMED(name) name
#include "prepared_span.h"

enum { TEXT = 512, SPAN = 14, READINGS = 64 };

/* The first 14 inputs as a span. The label may be too long for the struct, so it goes the way of rko_span_new. */
static rko_status span(const struct row *row, struct rko_span *made) {
    char label[TEXT];
    const size_t length = bytes(row, 0, label, TEXT);
    const rko_status status = rko_span_new(label, length, number(row, 1), number(row, 2), number(row, 3),
                                           (uint32_t)number(row, 4), number(row, 5), number(row, 7), made, NULL);
    /* A clause may have its only part in a fraction of the span, which is set below. */
    if (status != RKO_OK && !(status == RKO_MISSING_ARGUMENT && number(row, 6) > 0.0)) {
        return status;
    }
    if (status != RKO_OK) {
        CHECK(rko_span_new(label, length, number(row, 1), number(row, 2), number(row, 3), (uint32_t)number(row, 4),
                           number(row, 5), 1.0, made, NULL) == RKO_OK);
        made->accuracy_counts = 0.0;
    }
    made->fraction_of_span = number(row, 6);
    made->coverage_factor = number(row, 8);
    made->temperature_lower_c = number(row, 10);
    made->temperature_upper_c = number(row, 11);
    made->temperature_coefficient_per_kelvin = number(row, 12);
    made->flags = (given(row, 8) ? RKO_SPAN_COVERAGE : 0u) |
                  (strcmp(row->in[9], "false") == 0 ? RKO_SPAN_STEP_OUTSIDE_COUNTS : 0u) |
                  (given(row, 12) ? RKO_SPAN_HAS_TEMPERATURE_COEFFICIENT : 0u) |
                  (strcmp(row->in[13], "true") == 0 ? RKO_SPAN_ZEROING_REQUIRED : 0u);
    return rko_span_check(made, NULL);
}

/* One by one, and as an array of two, with and without a mask: all three must answer alike. */
static void read(struct row *row, const struct rko_span *on, int reply) {
    char text[2 * TEXT];
    const size_t length = bytes(row, SPAN, text, TEXT);
    int64_t offsets[3];
    struct rko_reading one, two[2];
    uint8_t valid[2] = {9, 9};
    struct rko_detail detail, of_array;
    rko_status array, masked;
    offsets[0] = 0;
    offsets[1] = (int64_t)length;
    offsets[2] = 2 * (int64_t)length;
    memcpy(text + length, text, length);
    pattern(&one, sizeof one);
    pattern(two, sizeof two);
    row->status = reply ? rko_span_read_reply(on, text, length, &one, &detail) : rko_span_read(on, text, length, &one, &detail);
    array = reply ? rko_span_read_reply_n(on, text, offsets, 2, two, NULL, &of_array)
                  : rko_span_read_n(on, text, offsets, 2, two, NULL, &of_array);
    CHECK(array == row->status);
    if (!reply) {
        read_prepared(row, on, text, length, &one, &detail);
    }
    CHECK(array == RKO_OK ? memcmp(&one, &two[1], sizeof one) == 0 : !changed(two, sizeof two) && of_array.failed == 2);
    pattern(two, sizeof two);
    masked = reply ? rko_span_read_reply_n(on, text, offsets, 2, two, valid, &of_array)
                   : rko_span_read_n(on, text, offsets, 2, two, valid, &of_array);
    CHECK(masked == RKO_OK && of_array.status == row->status && valid[0] == valid[1]);
    CHECK(valid[0] == (row->status == RKO_OK));
    CHECK(row->status == RKO_OK ? memcmp(&one, &two[1], sizeof one) == 0 : !changed(two, sizeof two));
    if (row->status != RKO_OK) {
        row->spoilt = changed(&one, sizeof one);
        return;
    }
    give(row, one.ohm);
    if (!reply) {
        give(row, (double)one.counts);
    }
    say(row, yes(one.over == 1));
    say(row, yes(one.negative == 1));
}

static int of_a_span(struct row *row, const char *function) {
    static char text[TEXT];
    struct rko_span on;
    double x = UNTOUCHED, temperature = number(row, SPAN + 1);
    int64_t counts = 7;
    row->status = span(row, &on);
    if (row->status != RKO_OK) {
        return 1;
    }
    if (strcmp(function, "") == 0) {
        row->status = rko_span_full_scale_counts(&on, &counts, NULL);
        give(row, (double)counts);
    } else if (strcmp(function, ".read") == 0) {
        read(row, &on, 0);
    } else if (strcmp(function, ".read_reply") == 0) {
        read(row, &on, 1);
    } else if (strcmp(function, ".clause_half_width_ohm") == 0) {
        clause_prepared(&on, number(row, SPAN), given(row, SPAN + 1) ? &temperature : NULL);
        one(row, rko_span_clause_half_width_ohm(&on, number(row, SPAN), given(row, SPAN + 1) ? &temperature : NULL, &x, NULL),
            &x);
    } else if (strcmp(function, ".display_text") == 0) {
        pattern(text, sizeof text);
        row->status = rko_span_display_text(&on, number(row, SPAN), text, sizeof text, NULL);
        if (row->status == RKO_OK) {
            say(row, text);
        } else {
            row->spoilt = changed(text, sizeof text);
        }
    } else {
        return 0;
    }
    return 1;
}

static size_t meter(const struct row *row, struct rko_span *spans) {
    size_t count = 0;
    const int bench = strcmp(row->in[0], "bench") == 0;
    CHECK((bench ? rko_meter_example_bench(spans, RKO_SPANS_MOST, &count, NULL)
                 : rko_meter_example_hand_held(spans, RKO_SPANS_MOST, &count, NULL)) == RKO_OK);
    return count;
}

static void choose(struct row *row, int assess) {
    static const char *const outcomes[] = {"", "chosen", "over-range", "wider"};
    static char display[32];
    struct rko_span spans[RKO_SPANS_MOST];
    struct rko_assessment all[RKO_SPANS_MOST];
    const size_t count = meter(row, spans), asked = (size_t)number(row, 4);
    const double temperature = number(row, 3);
    size_t chosen = 77;
    pattern(all, sizeof all);
    row->status = rko_meter_choose(spans, count, number(row, 1), number(row, 2), given(row, 3) ? &temperature : NULL, all,
                                   &chosen, NULL);
    if (row->status != RKO_OK) {
        row->spoilt = chosen != 77 || changed(all, sizeof all);
    } else if (!assess) {
        give(row, (double)chosen);
    } else {
        const struct rko_assessment *a = &all[asked];
        memcpy(display, a->expected_display, sizeof display);
        say(row, yes(a->holds == 1));
        say(row, display);
        give(row, a->expected_ohm);
        give(row, (double)a->counts_used);
        give(row, a->expanded_ohm);
        give(row, a->tur);
        give(row, a->conformance_probability_at_centre);
        say(row, yes(a->accepts_some == 1));
        say(row, a->outcome <= 3 ? outcomes[a->outcome] : "?");
        give(row, a->outcome == RKO_OUTCOME_CHOSEN ? 1.0 : a->wider_factor);
        CHECK((a->outcome == RKO_OUTCOME_CHOSEN) == (asked == chosen));
    }
}

static void next_span(struct row *row) {
    static const char *const steps[] = {"", "stay", "up", "down", "beyond highest"};
    struct rko_span spans[RKO_SPANS_MOST];
    const size_t count = meter(row, spans), from = (size_t)number(row, 1);
    struct rko_reading reading = {1.0, 0, 0, 0};
    char text[TEXT];
    const size_t length = bytes(row, 2, text, TEXT);
    uint32_t step = 77;
    size_t to = 77;
    row->status = from < count ? rko_span_read(&spans[from], text, length, &reading, NULL) : RKO_OK;
    if (row->status != RKO_OK) {
        return;
    }
    row->status = rko_meter_next_span(spans, count, from, &reading, &step, &to, NULL);
    if (row->status != RKO_OK) {
        row->spoilt = step != 77 || to != 77;
        return;
    }
    say(row, step <= 4 ? steps[step] : "?");
    give(row, (double)to);
}

/* What is said after each resistance, and the span for the next; a copy goes on as the original does. */
static void ranged(struct row *row, int as_shown) {
    static const char *const actions[] = {"", "again", "switch", "accept", "beyond highest", "below lowest"};
    struct rko_span spans[RKO_SPANS_MOST];
    struct rko_auto_ranger ranger, copy;
    const size_t count = meter(row, spans);
    size_t at = (size_t)number(row, 1), place;
    pattern(&ranger, sizeof ranger);
    row->status =
        rko_auto_ranger_init(spans, count, at, (uint32_t)number(row, 2), number(row, 3), number(row, 4), &ranger, NULL);
    if (row->status != RKO_OK) {
        row->spoilt = changed(&ranger, sizeof ranger);
        return;
    }
    for (place = 5; place < row->ins; ++place) {
        const double ohm = number(row, place);
        struct rko_reading reading = {0.0, 0, 0, 0};
        char text[32];
        uint32_t action = 77, again = 77;
        size_t next = 77, there = 77;
        if (as_shown) {
            CHECK(rko_span_display_text(&spans[at], ohm, text, sizeof text, NULL) == RKO_OK);
            CHECK(rko_span_read(&spans[at], text, strlen(text), &reading, NULL) == RKO_OK);
        }
        copy = ranger;
        row->status = as_shown ? rko_auto_ranger_step(&ranger, &reading, &action, &next, NULL)
                               : rko_auto_ranger_step_ohm(&ranger, ohm, &action, &next, NULL);
        if (row->status != RKO_OK) {
            row->spoilt = action != 77 || next != 77 || memcmp(&copy, &ranger, sizeof copy) != 0;
            return;
        }
        CHECK((as_shown ? rko_auto_ranger_step(&copy, &reading, &again, &there, NULL)
                        : rko_auto_ranger_step_ohm(&copy, ohm, &again, &there, NULL)) == RKO_OK);
        CHECK(again == action && there == next && memcmp(&copy, &ranger, sizeof copy) == 0);
        say(row, action <= 5 ? actions[action] : "?");
        give(row, (double)next);
        at = next;
    }
}

static void leads(struct row *row) {
    struct rko_leads made;
    pattern(&made, sizeof made);
    row->status = rko_leads_from_wire(number(row, 0), number(row, 1), (uint32_t)number(row, 2), &made, NULL);
    if (row->status != RKO_OK) {
        row->spoilt = changed(&made, sizeof made);
        return;
    }
    give(row, made.ohm);
    give(row, made.half_width_ohm);
}

static rko_status normal(double value, double u, struct rko_estimate *made) {
    return rko_estimate_new(value, u, HUGE_VAL, made, NULL);
}

/* The conditions of an evaluation, as its inputs say. */
static rko_status conditions(const struct row *row, const struct rko_span *on, struct rko_setup *setup) {
    char text[TEXT];
    struct rko_reading touched;
    rko_status status = rko_setup_new(setup, NULL);
    if (status == RKO_OK && given(row, 2)) {
        const size_t length = bytes(row, 2, text, TEXT);
        status = rko_span_read(on, text, length, &touched, NULL);
        status = status == RKO_OK ? rko_leads_from_reading(&touched, on, &setup->leads, NULL) : status;
        setup->flags |= RKO_SETUP_LEADS;
    }
    if (status == RKO_OK && given(row, 3)) {
        status = normal(number(row, 3), number(row, 4), &setup->parallel_path_ohm);
        setup->flags |= RKO_SETUP_PARALLEL_PATH;
    }
    if (status == RKO_OK && given(row, 5)) {
        status = normal(number(row, 5), number(row, 6), &setup->known_tcr_ppm_per_kelvin);
        setup->flags |= RKO_SETUP_KNOWN_TCR;
    }
    if (given(row, 7)) {
        setup->tcr_limit_ppm_per_kelvin = number(row, 7);
        setup->flags |= RKO_SETUP_TCR_LIMIT;
    }
    if (status == RKO_OK && given(row, 8)) {
        status = normal(number(row, 8), 0.0, &setup->temperature_c);
        if (status == RKO_OK && given(row, 9)) {
            status = rko_estimate_with_rectangular(&setup->temperature_c, number(row, 9), &setup->temperature_c, NULL);
        }
        setup->reference_temperature_c = number(row, 10);
        setup->flags |= RKO_SETUP_TEMPERATURE;
    }
    if (given(row, 11)) {
        setup->meter_temperature_c = number(row, 11);
        setup->flags |= RKO_SETUP_METER_TEMPERATURE;
    }
    if (given(row, 12)) {
        setup->repeatability_ohm = number(row, 12);
        setup->flags |= RKO_SETUP_REPEATABILITY;
    }
    if (given(row, 13)) {
        setup->coverage_probability = number(row, 13);
    }
    return status;
}

static void evaluate(struct row *row) {
    struct rko_span spans[RKO_SPANS_MOST];
    struct rko_reading readings[READINGS];
    struct rko_setup setup;
    struct rko_measurement measured;
    char text[TEXT];
    char *shown[READINGS];
    const size_t length = bytes(row, 1, text, TEXT), on = (size_t)number(row, 0);
    size_t count = 0, i, texts;
    double u = UNTOUCHED, variance = 0.0;
    CHECK(rko_meter_example_hand_held(spans, RKO_SPANS_MOST, &count, NULL) == RKO_OK && on < count);
    texts = length == 0 ? 0 : split(text, ' ', shown, READINGS);
    row->status = conditions(row, &spans[on], &setup);
    for (i = 0; row->status == RKO_OK && i < texts; ++i) {
        row->status = rko_span_read(&spans[on], shown[i], strlen(shown[i]), &readings[i], NULL);
    }
    if (row->status != RKO_OK) {
        return;
    }
    pattern(&measured, sizeof measured);
    row->status = rko_measurement_evaluate(&spans[on], readings, texts, &setup, spans, count, &measured, NULL);
    if (row->status != RKO_OK) {
        row->spoilt = changed(&measured, sizeof measured);
        return;
    }
    CHECK(rko_estimate_u(&measured.estimate, &u, NULL) == RKO_OK);
    give(row, measured.estimate.value);
    give(row, u);
    give(row, measured.expanded.half_width);
    CHECK(measured.row_count >= 1 && measured.row_count <= RKO_ROWS_MOST && measured.readings == texts);
    for (i = 0; i < measured.row_count; ++i) {
        variance += measured.rows[i].u_ohm * measured.rows[i].u_ohm;
    }
    CHECK(variance > 0.999999 * u * u && variance < 1.000001 * u * u);
    CHECK(measured.advice_count >= 1 && measured.advice[0].kind != 0);
}

static int call(struct row *row, const char *function) {
    if (strstr(function, "_f32") != NULL) {
        return 0;
    }
    if (strncmp(function, "meter.span", 10) == 0) {
        return of_a_span(row, function + 10);
    }
    if (strcmp(function, "meter.choose") == 0) {
        choose(row, 0);
    } else if (strcmp(function, "meter.choice.assessment") == 0) {
        choose(row, 1);
    } else if (strcmp(function, "meter.next_span") == 0) {
        next_span(row);
    } else if (strcmp(function, "meter.auto_ranger.step") == 0) {
        ranged(row, 1);
    } else if (strcmp(function, "meter.auto_ranger.step_ohm") == 0) {
        ranged(row, 0);
    } else if (strcmp(function, "meter.leads.from_wire") == 0) {
        leads(row);
    } else if (strcmp(function, "measurement.evaluate") == 0) {
        evaluate(row);
    } else {
        return 0;
    }
    return 1;
}

/* This door gives the assessments of all spans at once, so none can be asked for that is not there. */
static int worded_otherwise(const struct row *row, const char *function, const char *status) {
    (void)row;
    return strcmp(function, "meter.choice.assessment") == 0 && strcmp(status, "231") == 0;
}

int main(int arguments, char **paths) {
    return run_all(arguments, paths, "meter_vectors", 1900, 2);
}
