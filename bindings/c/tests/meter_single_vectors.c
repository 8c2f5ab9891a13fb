/* Runs the vectors of meters for float: every result to the bit, every status, and outputs untouched on a failure. The rows
 * hold the bits of the double with the float's value. Its arguments are the files. */

#define NUMBER float
#define NAMED(name) name##_f32
#include "prepared_span.h"

enum { TEXT = 512, SPAN = 14 };

static float number_f32(const struct row *row, size_t place) {
    return (float)number(row, place);
}

/* The first 14 inputs as a span. The label may be too long for the struct, so it goes the way of rko_span_new_f32. */
static rko_status span(const struct row *row, struct rko_span_f32 *made) {
    char label[TEXT];
    const size_t length = bytes(row, 0, label, TEXT);
    const int only_of_span = number(row, 5) == 0.0 && number(row, 7) == 0.0 && number(row, 6) > 0.0;
    const rko_status status =
        rko_span_new_f32(label, length, number_f32(row, 1), number_f32(row, 2), number_f32(row, 3), (uint32_t)number(row, 4),
                         number_f32(row, 5), only_of_span ? 1.0f : number_f32(row, 7), made, NULL);
    if (status != RKO_OK) {
        return status;
    }
    made->accuracy_counts = number_f32(row, 7);
    made->fraction_of_span = number_f32(row, 6);
    made->coverage_factor = number_f32(row, 8);
    made->temperature_lower_c = number_f32(row, 10);
    made->temperature_upper_c = number_f32(row, 11);
    made->temperature_coefficient_per_kelvin = number_f32(row, 12);
    made->flags = (given(row, 8) ? RKO_SPAN_COVERAGE : 0u) |
                  (strcmp(row->in[9], "false") == 0 ? RKO_SPAN_STEP_OUTSIDE_COUNTS : 0u) |
                  (given(row, 12) ? RKO_SPAN_HAS_TEMPERATURE_COEFFICIENT : 0u) |
                  (strcmp(row->in[13], "true") == 0 ? RKO_SPAN_ZEROING_REQUIRED : 0u);
    return rko_span_check_f32(made, NULL);
}

/* One by one, and as an array of two, with and without a mask: all three must answer alike. */
static void read(struct row *row, const struct rko_span_f32 *on, int reply) {
    rko_status (*const single)(const struct rko_span_f32 *, const char *, size_t, struct rko_reading_f32 *, struct rko_detail *) =
        reply ? rko_span_read_reply_f32 : rko_span_read_f32;
    rko_status (*const array)(const struct rko_span_f32 *, const char *, const int64_t *, size_t, struct rko_reading_f32 *,
                              uint8_t *, struct rko_detail *) = reply ? rko_span_read_reply_n_f32 : rko_span_read_n_f32;
    char text[2 * TEXT];
    const size_t length = bytes(row, SPAN, text, TEXT);
    int64_t offsets[3];
    struct rko_reading_f32 one, two[2];
    uint8_t valid[2] = {9, 9};
    struct rko_detail detail, of_array;
    offsets[0] = 0;
    offsets[1] = (int64_t)length;
    offsets[2] = 2 * (int64_t)length;
    memcpy(text + length, text, length);
    pattern(&one, sizeof one);
    pattern(two, sizeof two);
    row->status = single(on, text, length, &one, &detail);
    if (!reply) {
        read_prepared(row, on, text, length, &one, &detail);
    }
    CHECK(array(on, text, offsets, 2, two, NULL, &of_array) == row->status);
    CHECK(row->status == RKO_OK ? alike(&one, &two[1]) : !changed(two, sizeof two) && of_array.failed == 2);
    pattern(two, sizeof two);
    CHECK(array(on, text, offsets, 2, two, valid, &of_array) == RKO_OK && of_array.status == row->status);
    CHECK(valid[0] == valid[1] && valid[0] == (row->status == RKO_OK));
    CHECK(row->status == RKO_OK ? alike(&one, &two[1]) : !changed(two, sizeof two));
    if (row->status != RKO_OK) {
        row->spoilt = changed(&one, sizeof one);
        return;
    }
    give(row, (double)one.ohm);
    if (!reply) {
        give(row, (double)one.counts);
    }
    say(row, yes(one.over == 1));
    say(row, yes(one.negative == 1));
}

static void estimate(struct row *row, const struct rko_span_f32 *on, const float *temperature) {
    char text[TEXT];
    const size_t length = bytes(row, SPAN, text, TEXT);
    struct rko_reading_f32 reading;
    struct rko_estimate_f32 e;
    pattern(&e, sizeof e);
    row->status = rko_span_read_f32(on, text, length, &reading, NULL);
    if (row->status != RKO_OK) {
        return;
    }
    row->status = rko_span_estimate_f32(on, &reading, temperature, &e, NULL);
    if (row->status != RKO_OK) {
        row->spoilt = changed(&e, sizeof e);
        return;
    }
    give(row, (double)e.value);
    give(row, (double)e.rectangular[0]);
    give(row, (double)e.rectangular[1]);
    give(row, (double)e.normal_u);
    CHECK(e.type_a_s[0] == 0.0f && e.type_a_s[1] == 0.0f && e.below == 0.0f && e.above == 0.0f);
}

static int of_a_span(struct row *row, const char *function) {
    static char text[TEXT];
    struct rko_span_f32 on;
    const float temperature = number_f32(row, SPAN + 1);
    const float *const at = given(row, SPAN + 1) ? &temperature : NULL;
    int64_t counts = 7;
    row->status = span(row, &on);
    if (row->status != RKO_OK) {
        return 1;
    }
    if (strcmp(function, "_f32") == 0) {
        row->status = rko_span_full_scale_counts_f32(&on, &counts, NULL);
        give(row, (double)counts);
    } else if (strcmp(function, ".read_f32") == 0) {
        read(row, &on, 0);
    } else if (strcmp(function, ".read_reply_f32") == 0) {
        read(row, &on, 1);
    } else if (strcmp(function, ".estimate_f32") == 0) {
        estimate(row, &on, at);
    } else if (strcmp(function, ".clause_half_width_ohm_f32") == 0) {
        float x = 7.0f;
        clause_prepared(&on, number_f32(row, SPAN), at);
        row->status = rko_span_clause_half_width_ohm_f32(&on, number_f32(row, SPAN), at, &x, NULL);
        row->status == RKO_OK ? give(row, (double)x) : (void)(row->spoilt = x != 7.0f);
    } else if (strcmp(function, ".display_text_f32") == 0) {
        pattern(text, sizeof text);
        row->status = rko_span_display_text_f32(&on, number_f32(row, SPAN), text, sizeof text, NULL);
        row->status == RKO_OK ? say(row, text) : (void)(row->spoilt = changed(text, sizeof text));
    } else {
        return 0;
    }
    return 1;
}

/* A demonstration meter with its numbers rounded to float. */
static size_t meter(const struct row *row, struct rko_span_f32 *spans) {
    struct rko_span doubles[RKO_SPANS_MOST];
    size_t count = 0, i;
    const int bench = strcmp(row->in[0], "bench") == 0;
    CHECK((bench ? rko_meter_example_bench(doubles, RKO_SPANS_MOST, &count, NULL)
                 : rko_meter_example_hand_held(doubles, RKO_SPANS_MOST, &count, NULL)) == RKO_OK);
    for (i = 0; i < count; ++i) {
        const struct rko_span *from = &doubles[i];
        CHECK(rko_span_new_f32(from->label, strlen(from->label), (float)from->full_scale_ohm, (float)from->resolution_ohm,
                               (float)from->display_unit_ohm, from->marks, (float)from->fraction_of_reading,
                               bench ? 1.0f : (float)from->accuracy_counts, &spans[i], NULL) == RKO_OK);
        spans[i].accuracy_counts = (float)from->accuracy_counts;
        spans[i].fraction_of_span = (float)from->fraction_of_span;
    }
    return count;
}

static void next_span(struct row *row) {
    static const char *const steps[] = {"", "stay", "up", "down", "beyond highest"};
    struct rko_span_f32 spans[RKO_SPANS_MOST];
    const size_t count = meter(row, spans), from = (size_t)number(row, 1);
    struct rko_reading_f32 reading = {1.0f, 0, 0, 0};
    char text[TEXT];
    const size_t length = bytes(row, 2, text, TEXT);
    uint32_t step = 77;
    size_t to = 77;
    row->status = from < count ? rko_span_read_f32(&spans[from], text, length, &reading, NULL) : RKO_OK;
    if (row->status != RKO_OK) {
        return;
    }
    row->status = rko_meter_next_span_f32(spans, count, from, &reading, &step, &to, NULL);
    if (row->status != RKO_OK) {
        row->spoilt = step != 77 || to != 77;
        return;
    }
    say(row, step <= 4 ? steps[step] : "?");
    give(row, (double)to);
}

static void ranged(struct row *row, int as_shown) {
    static const char *const actions[] = {"", "again", "switch", "accept", "beyond highest", "below lowest"};
    struct rko_span_f32 spans[RKO_SPANS_MOST];
    struct rko_auto_ranger_f32 ranger, copy;
    const size_t count = meter(row, spans);
    size_t at = (size_t)number(row, 1), place;
    pattern(&ranger, sizeof ranger);
    row->status = rko_auto_ranger_init_f32(spans, count, at, (uint32_t)number(row, 2), number_f32(row, 3), number_f32(row, 4),
                                           &ranger, NULL);
    if (row->status != RKO_OK) {
        row->spoilt = changed(&ranger, sizeof ranger);
        return;
    }
    for (place = 5; place < row->ins; ++place) {
        const float ohm = number_f32(row, place);
        struct rko_reading_f32 reading = {0.0f, 0, 0, 0};
        char text[32];
        uint32_t action = 77;
        size_t next = 77;
        if (as_shown) {
            CHECK(rko_span_display_text_f32(&spans[at], ohm, text, sizeof text, NULL) == RKO_OK);
            CHECK(rko_span_read_f32(&spans[at], text, strlen(text), &reading, NULL) == RKO_OK);
        }
        copy = ranger;
        row->status = as_shown ? rko_auto_ranger_step_f32(&ranger, &reading, &action, &next, NULL)
                               : rko_auto_ranger_step_ohm_f32(&ranger, ohm, &action, &next, NULL);
        if (row->status != RKO_OK) {
            row->spoilt = action != 77 || next != 77 || memcmp(&copy, &ranger, sizeof copy) != 0;
            return;
        }
        say(row, action <= 5 ? actions[action] : "?");
        give(row, (double)next);
        at = next;
    }
}

static int call(struct row *row, const char *function) {
    const size_t length = strlen(function);
    if (length < 4 || strcmp(function + length - 4, "_f32") != 0) {
        return 0;
    }
    if (strncmp(function, "meter.span", 10) == 0) {
        return of_a_span(row, function + 10);
    }
    if (strcmp(function, "meter.next_span_f32") == 0) {
        next_span(row);
    } else if (strcmp(function, "meter.auto_ranger.step_f32") == 0) {
        ranged(row, 1);
    } else if (strcmp(function, "meter.auto_ranger.step_ohm_f32") == 0) {
        ranged(row, 0);
    } else {
        return 0;
    }
    return 1;
}

static int worded_otherwise(const struct row *row, const char *function, const char *status) {
    (void)row;
    (void)function;
    (void)status;
    return 0;
}

int main(int arguments, char **paths) {
    return run_all(arguments, paths, "meter_single_vectors", 900, 0);
}
