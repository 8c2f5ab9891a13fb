/* Runs the vectors of preferred values and limits for float: results to the bit, every status, and outputs untouched on a
 * failure. The rows hold the bits of the double with the float's value. Its arguments are the files. */

#include "rows.h"

static int limits(struct row *row) {
    struct rko_limits_f32 l;
    pattern(&l, sizeof l);
    row->status = rko_limits_from_tolerance_f32((float)number(row, 0), (float)number(row, 1), &l, NULL);
    if (row->status == RKO_OK) {
        give(row, (double)l.lower_ohm);
        give(row, (double)l.upper_ohm);
    } else {
        row->spoilt = changed(&l, sizeof l);
    }
    return 1;
}

/* Each of the three, and its array form on an array of one, which has to answer alike. */
static int preferred(struct row *row, const char *name) {
    static const struct {
        const char *name;
        rko_status (*one)(float, uint32_t, float *, struct rko_detail *);
        rko_status (*array)(const float *, size_t, uint32_t, float *, uint8_t *, struct rko_detail *);
    } all[] = {
        {"nearest_f32", rko_preferred_nearest_ohm_f32, rko_preferred_nearest_ohm_n_f32},
        {"below_f32", rko_preferred_below_ohm_f32, rko_preferred_below_ohm_n_f32},
        {"above_f32", rko_preferred_above_ohm_f32, rko_preferred_above_ohm_n_f32},
    };
    const float ohm = (float)number(row, 0);
    float x = 7.0f, y = 7.0f;
    uint8_t held = 7, too = 7;
    uint32_t series = 0;
    size_t i;
    CHECK(row->ins == 2 && rko_preferred_series(row->in[1], strlen(row->in[1]), &series, NULL) == RKO_OK);
    for (i = 0; i < 3; ++i) {
        if (strcmp(name, all[i].name) == 0) {
            row->status = all[i].one(ohm, series, &x, NULL);
            CHECK(all[i].array(&ohm, 1, series, &y, NULL, NULL) == row->status && x == y);
            row->status == RKO_OK ? give(row, (double)x) : (void)(row->spoilt = x != 7.0f);
            return 1;
        }
    }
    if (strcmp(name, "contains_f32") == 0) {
        row->status = rko_preferred_contains_f32(ohm, series, &held, NULL);
        CHECK(rko_preferred_contains_n_f32(&ohm, 1, series, &too, NULL, NULL) == row->status && held == too);
        row->status == RKO_OK ? say(row, yes(held == 1)) : (void)(row->spoilt = held != 7);
        return 1;
    }
    return 0;
}

static int call(struct row *row, const char *function) {
    if (strcmp(function, "verdict.limits.from_tolerance_f32") == 0) {
        return limits(row);
    }
    return strncmp(function, "preferred.", 10) == 0 && strstr(function, "_f32") != NULL ? preferred(row, function + 10) : 0;
}

static int worded_otherwise(const struct row *row, const char *function, const char *status) {
    (void)row;
    (void)function;
    (void)status;
    return 0;
}

int main(int arguments, char **paths) {
    return run_all(arguments, paths, "part_single_vectors", 600, 0);
}
