/* Runs the vectors of the twins for float: results to the bit, every status, and outputs untouched on a failure. Its arguments
 * are the files. */

#include "rows.h"

#define UNTOUCHED_F32 12345.678f

static float number_f32(const struct row *row, size_t place) {
    return (float)number(row, place);
}

/* One number out, or a failure that must have left it alone. The rows hold the bits of the double with the float's value. */
static void one_f32(struct row *row, rko_status status, const float *x) {
    row->status = status;
    if (status == RKO_OK) {
        give(row, (double)*x);
    } else {
        row->spoilt = *x != UNTOUCHED_F32;
    }
}

/* Each of the eight, and its array form on an array of one, which has to answer alike. */
static int distribution(struct row *row, const char *name) {
    static const struct {
        const char *name;
        rko_status (*one)(float, float *, struct rko_detail *);
        rko_status (*array)(const float *, size_t, float *, uint8_t *, struct rko_detail *);
    } normal[] = {
        {"normal_below_f32", rko_normal_below_f32, rko_normal_below_n_f32},
        {"normal_above_f32", rko_normal_above_f32, rko_normal_above_n_f32},
        {"normal_quantile_f32", rko_normal_quantile_f32, rko_normal_quantile_n_f32},
        {"normal_quantile_above_f32", rko_normal_quantile_above_f32, rko_normal_quantile_above_n_f32},
    };
    static const struct {
        const char *name;
        rko_status (*one)(float, float, float *, struct rko_detail *);
        rko_status (*array)(const float *, size_t, float, float *, uint8_t *, struct rko_detail *);
    } student[] = {
        {"t_below_f32", rko_t_below_f32, rko_t_below_n_f32},
        {"t_above_f32", rko_t_above_f32, rko_t_above_n_f32},
        {"t_quantile_f32", rko_t_quantile_f32, rko_t_quantile_n_f32},
        {"t_quantile_above_f32", rko_t_quantile_above_f32, rko_t_quantile_above_n_f32},
    };
    const float given = number_f32(row, 0), dof = number_f32(row, 1);
    float x = UNTOUCHED_F32, y = UNTOUCHED_F32;
    rko_status of_array = RKO_OK;
    size_t i;
    for (i = 0; i < 4; ++i) {
        if (strcmp(name, normal[i].name) == 0) {
            one_f32(row, normal[i].one(given, &x, NULL), &x);
            of_array = normal[i].array(&given, 1, &y, NULL, NULL);
            break;
        }
        if (strcmp(name, student[i].name) == 0) {
            one_f32(row, student[i].one(given, dof, &x, NULL), &x);
            of_array = student[i].array(&given, 1, dof, &y, NULL, NULL);
            break;
        }
    }
    if (of_array != row->status || x != y) {
        row->spoilt = 1;
    }
    return i < 4;
}

/* The first ten inputs as an estimate. The calls that take it check it. */
static struct rko_estimate_f32 estimate(const struct row *row) {
    struct rko_estimate_f32 e;
    e.value = number_f32(row, 0);
    e.rectangular[0] = number_f32(row, 1);
    e.rectangular[1] = number_f32(row, 2);
    e.normal_u = number_f32(row, 3);
    e.type_a_s[0] = number_f32(row, 4);
    e.type_a_dof[0] = number_f32(row, 5);
    e.type_a_s[1] = number_f32(row, 6);
    e.type_a_dof[1] = number_f32(row, 7);
    e.below = number_f32(row, 8);
    e.above = number_f32(row, 9);
    return e;
}

static int uncertainty(struct row *row, const char *name) {
    const struct rko_estimate_f32 e = estimate(row);
    const float p = number_f32(row, 10);
    float x = UNTOUCHED_F32;
    struct rko_expanded_f32 expanded;
    expanded.half_width = UNTOUCHED_F32;
    if (strcmp(name, "expanded_f32") == 0) {
        one_f32(row, rko_estimate_expanded_f32(&e, p, &expanded, NULL), &expanded.half_width);
        if (row->status == RKO_OK) {
            give(row, (double)expanded.coverage_factor);
            give(row, (double)expanded.lower);
            give(row, (double)expanded.upper);
            give(row, (double)expanded.u);
            CHECK(rko_estimate_u_f32(&e, &x, NULL) == RKO_OK && x == expanded.u);
        }
    } else if (strcmp(name, "expanded_guaranteed_f32") == 0) {
        one_f32(row, rko_estimate_expanded_guaranteed_f32(&e, p, &expanded, NULL), &expanded.half_width);
    } else if (strcmp(name, "expanded_welch_satterthwaite_f32") == 0) {
        one_f32(row, rko_estimate_expanded_welch_satterthwaite_f32(&e, p, &expanded, NULL), &expanded.half_width);
    } else if (strcmp(name, "quantile_above_f32") == 0) {
        one_f32(row, rko_estimate_quantile_above_f32(&e, p, &x, NULL), &x);
    } else if (strcmp(name, "probability_above_f32") == 0) {
        one_f32(row, rko_estimate_probability_above_f32(&e, p, &x, NULL), &x);
    } else if (strcmp(name, "probability_below_f32") == 0) {
        one_f32(row, rko_estimate_probability_below_f32(&e, p, &x, NULL), &x);
    } else {
        return 0;
    }
    return 1;
}

static void optional(struct row *row, const struct rko_verdict_f32 *verdict, uint32_t flag, float x) {
    if (verdict->has & flag) {
        give(row, (double)x);
    } else {
        say(row, "");
    }
}

static void judge(struct row *row, const struct rko_estimate_f32 *e, const struct rko_limits_f32 *limits) {
    static const char *const answers[] = {"", "conforms", "does not conform", "undecided"};
    static const char *const sides[] = {"", "inside", "outside"};
    static const char *const steps[] = {"", "none", "take more readings",
                                        "use a span or meter with a tighter clause, or compare with a known part",
                                        "take away what pushes the reading to one side"};
    struct rko_rule_f32 rule;
    struct rko_verdict_f32 v;
    struct rko_decision_f32 decision;
    const char *name = row->in[12];
    v.distance_ohm = UNTOUCHED_F32;
    row->status = strcmp(name, "guarded") == 0    ? rko_rule_guarded_f32(number_f32(row, 13), &rule, NULL)
                  : strcmp(name, "max risk") == 0 ? rko_rule_max_risk_f32(number_f32(row, 13), &rule, NULL)
                                                  : rko_rule_simple_acceptance_f32(&rule, NULL);
    if (row->status != RKO_OK) {
        return;
    }
    row->status = rko_judge_f32(e, limits, &rule, &v, NULL);
    if (row->status != RKO_OK) {
        row->spoilt = v.distance_ohm != UNTOUCHED_F32;
        return;
    }
    say(row, v.answer <= 3 ? answers[v.answer] : "?");
    say(row, v.side <= 2 ? sides[v.side] : "?");
    give(row, (double)v.conformance_probability);
    optional(row, &v, RKO_VERDICT_HAS_GUARD_BAND, v.guard_band_ohm);
    optional(row, &v, RKO_VERDICT_HAS_ACCEPTANCE, v.acceptance_lower_ohm);
    optional(row, &v, RKO_VERDICT_HAS_ACCEPTANCE, v.acceptance_upper_ohm);
    give(row, (double)v.distance_ohm);
    optional(row, &v, RKO_VERDICT_HAS_TUR, v.tur);
    say(row, v.next_step <= 4 ? steps[v.next_step] : "?");
    /* The decision alone is the verdict's. */
    CHECK(rko_judge_answer_f32(e, limits, &rule, &decision, NULL) == RKO_OK);
    CHECK(decision.answer == v.answer && decision.side == v.side);
    CHECK(decision.conformance_probability == v.conformance_probability);
    /* And so is that on a value, where the estimate is no more than that. */
    if (e->rectangular[1] == 0.0f && e->type_a_s[0] == 0.0f && e->below == 0.0f && e->above == 0.0f) {
        memset(&decision, 0, sizeof decision);
        CHECK(rko_judge_value_f32(e->value, e->rectangular[0], e->normal_u, limits, &rule, &decision, NULL) == RKO_OK);
        CHECK(decision.answer == v.answer && decision.side == v.side);
        CHECK(decision.conformance_probability == v.conformance_probability);
    }
}

static int verdict(struct row *row, const char *name) {
    const struct rko_estimate_f32 e = estimate(row);
    struct rko_limits_f32 limits;
    float x = UNTOUCHED_F32;
    row->status = rko_limits_new_f32(number_f32(row, 10), number_f32(row, 11), &limits, NULL);
    if (row->status != RKO_OK) {
        return 1;
    }
    if (strcmp(name, "judge_f32") == 0) {
        judge(row, &e, &limits);
    } else if (strcmp(name, "conformance_probability_f32") == 0) {
        one_f32(row, rko_conformance_probability_f32(&e, &limits, &x, NULL), &x);
    } else {
        return 0;
    }
    return 1;
}

/* The degrees of freedom of a part without scatter are not read here; behaviour.c holds that. */
static int worded_otherwise(const struct row *row, const char *function, const char *status) {
    const int of_an_estimate = strncmp(function, "uncertainty.", 12) == 0 || strncmp(function, "verdict.", 8) == 0;
    return of_an_estimate && strstr(function, "_f32") != NULL && row->ins > 7 && strcmp(status, "0") != 0 &&
           ((number(row, 4) == 0.0 && number(row, 5) < 1.0) || (number(row, 6) == 0.0 && number(row, 7) < 1.0));
}

static int call(struct row *row, const char *function) {
    if (strstr(function, "_f32") == NULL) {
        return 0;
    }
    if (strncmp(function, "uncertainty.", 12) == 0) {
        return uncertainty(row, function + 12);
    }
    if (strncmp(function, "distribution.", 13) == 0) {
        return distribution(row, function + 13);
    }
    if (strncmp(function, "verdict.", 8) == 0) {
        return verdict(row, function + 8);
    }
    return 0;
}

/* What no row asks for: the ways to make estimates, limits and rules, each beside its twin for double. */
static void made(void) {
    const float repeats[4] = {1000.25f, 1000.5f, 999.75f, 1000.125f}, u[2] = {3.0f, 4.0f}, dof[2] = {1.0f, 2.5f};
    const double same[4] = {1000.25, 1000.5, 999.75, 1000.125};
    struct rko_estimate_f32 single, changed;
    struct rko_estimate twin;
    struct rko_limits_f32 limits;
    struct rko_rule rule;
    struct rko_limits wide;
    struct rko_decision decision;
    struct rko_verdict verdict;
    uint8_t held = 7;
    float x = 0.0f;
    CHECK(rko_estimate_new_f32(1000.0f, 0.5f, 4.0f, &single, NULL) == RKO_OK);
    CHECK(single.value == 1000.0f && single.type_a_s[0] == 0.5f && single.type_a_dof[0] == 4.0f);
    CHECK(rko_estimate_effective_dof_f32(&single, &x, NULL) == RKO_OK && x == 4.0f);
    CHECK(rko_estimate_with_rectangular_f32(&single, 8.0f, &changed, NULL) == RKO_OK && changed.rectangular[0] == 8.0f);
    CHECK(rko_estimate_with_normal_f32(&changed, 0.25f, &changed, NULL) == RKO_OK && changed.normal_u == 0.25f);
    CHECK(rko_estimate_with_type_a_f32(&changed, 0.125f, 9.0f, &changed, NULL) == RKO_OK && changed.type_a_dof[1] == 9.0f);
    CHECK(rko_estimate_with_one_sided_f32(&changed, 1.0f, 2.0f, &changed, NULL) == RKO_OK);
    CHECK(rko_estimate_times_f32(&changed, -2.0f, &changed, NULL) == RKO_OK);
    CHECK(changed.value == -2000.0f && changed.rectangular[0] == 16.0f && changed.below == 4.0f && changed.above == 2.0f);
    CHECK(rko_estimate_from_repeats_f32(repeats, 4, &single, NULL) == RKO_OK);
    CHECK(rko_estimate_from_repeats(same, 4, &twin, NULL) == RKO_OK);
    CHECK((double)single.value == twin.value && single.type_a_s[0] == (float)twin.type_a_s[0]);
    CHECK(rko_effective_dof_f32(u, dof, 2, &x, NULL) == RKO_OK && x > 3.4f && x < 3.7f);
    CHECK(rko_limits_from_tolerance_f32(4700.0f, 0.05f, &limits, NULL) == RKO_OK);
    CHECK(limits.lower_ohm == 4465.0f && limits.upper_ohm == 4935.0f);
    CHECK(rko_limits_contains_f32(&limits, 4935.0f, &held, NULL) == RKO_OK && held == 1);
    CHECK(rko_limits_at_most_f32(2.0f, &limits, NULL) == RKO_OK && limits.upper_ohm == 2.0f);
    CHECK(rko_limits_at_least_f32(2.0f, &limits, NULL) == RKO_OK && limits.lower_ohm == 2.0f);
    CHECK(rko_estimate_new(4880.0, 3.0, 1e9, &twin, NULL) == RKO_OK && rko_rule_guarded(0.05, &rule, NULL) == RKO_OK);
    CHECK(rko_limits_from_tolerance(4700.0, 0.05, &wide, NULL) == RKO_OK);
    CHECK(rko_judge_answer(&twin, &wide, &rule, &decision, NULL) == RKO_OK);
    CHECK(rko_judge(&twin, &wide, &rule, &verdict, NULL) == RKO_OK);
    CHECK(decision.answer == verdict.answer && decision.side == verdict.side);
    CHECK(bits_of(decision.conformance_probability) == bits_of(verdict.conformance_probability));
    CHECK(rko_judge_value(4880.0, 69.0, 3.0, &wide, &rule, &decision, NULL) == RKO_OK);
    CHECK(decision.answer == RKO_ANSWER_UNDECIDED && decision.side == RKO_SIDE_INSIDE);
    CHECK(decision.conformance_probability > 0.898 && decision.conformance_probability < 0.9);
    CHECK(rko_judge_value(4880.0, -69.0, 3.0, &wide, &rule, &decision, NULL) == RKO_OUT_OF_RANGE);
    CHECK(rko_judge_value(4880.0, 69.0, 3.0, NULL, &rule, &decision, NULL) == RKO_NULL_POINTER);
}

int main(int arguments, char **paths) {
    made();
    return run_all(arguments, paths, "single_vectors", 1000, 10);
}
