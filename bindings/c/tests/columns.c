/* Measurements in columns, and large arrays over several threads: the bits of the single calls, masks, and refusals that name
 * the first element and write nothing. */

#include <math.h>
#include <reckohm.h>

#include "check.h"

enum { COUNT = 30000, MANY = 300000 };

static double value[COUNT], u[COUNT], dof[COUNT], rectangular[COUNT], probability[COUNT], again[COUNT];
static float value_f32[COUNT], probability_f32[COUNT];
static struct rko_decision decisions[COUNT];
static struct rko_decision_f32 decisions_f32[COUNT];
static unsigned char valid[MANY];
static double z[MANY], one_thread[MANY], threads[MANY];
static struct rko_limits limits;
static struct rko_limits_f32 limits_f32;
static struct rko_rule rule;
static struct rko_rule_f32 rule_f32;
static struct rko_detail detail;

/* A reproducible sequence (Lehmer, modulus 2^31 - 1), in (0, 1). */
static double unit(void) {
    static uint64_t state = 106;
    state = state * 48271 % 2147483647;
    return (double)state / 2147483647.0;
}

static const double *column_u, *column_dof, *column_rectangular;
static uint32_t one_for_all;

static double at(const double *column, uint32_t one, double none, int n) {
    return column == NULL ? none : one_for_all & one ? column[0] : column[n];
}

static struct rko_estimate estimate(int n) {
    struct rko_estimate e;
    double s = at(column_u, RKO_ONE_U, 0.0, n), v = at(column_dof, RKO_ONE_DOF, INFINITY, n);
    CHECK(rko_estimate_new(value[n], s, v, &e, NULL) == RKO_OK);
    CHECK(rko_estimate_with_rectangular(&e, at(column_rectangular, RKO_ONE_RECTANGULAR, 0.0, n), &e, NULL) == RKO_OK);
    return e;
}

static rko_status probabilities(double *out, unsigned char *mask, struct rko_detail *why) {
    return rko_columns_conformance_probability_n(value, column_u, column_dof, column_rectangular, one_for_all, COUNT, &limits,
                                                 out, mask, why);
}

static rko_status judged(unsigned char *mask, struct rko_detail *why) {
    return rko_columns_judge_answer_n(value, column_u, column_dof, column_rectangular, one_for_all, COUNT, &limits, &rule,
                                      decisions, mask, why);
}

/* Every 37th element against its single call, and all of them for any number of threads. */
static void as_single_calls(void) {
    uint32_t cores;
    int n, same;
    rko_limit_threads(1);
    CHECK(probabilities(probability, NULL, &detail) == RKO_OK);
    CHECK(judged(NULL, &detail) == RKO_OK);
    for (n = 0; n < COUNT; n += 37) {
        struct rko_estimate e = estimate(n);
        struct rko_decision decision;
        double p;
        CHECK(rko_conformance_probability(&e, &limits, &p, NULL) == RKO_OK && bits_of(p) == bits_of(probability[n]));
        CHECK(rko_judge_answer(&e, &limits, &rule, &decision, NULL) == RKO_OK);
        CHECK(decision.answer == decisions[n].answer && decision.side == decisions[n].side);
        CHECK(bits_of(decision.conformance_probability) == bits_of(decisions[n].conformance_probability));
    }
    for (cores = 2; cores <= 3; ++cores) {
        rko_limit_threads(cores);
        CHECK(probabilities(again, NULL, NULL) == RKO_OK);
        CHECK(memcmp(again, probability, sizeof again) == 0);
        pattern(again, sizeof again);
        CHECK(probabilities(again, valid, NULL) == RKO_OK);
        CHECK(memcmp(again, probability, sizeof again) == 0 && valid[0] == 1 && valid[COUNT - 1] == 1);
        CHECK(judged(NULL, NULL) == RKO_OK);
        for (n = 0, same = 1; n < COUNT; ++n) {
            same = same && bits_of(decisions[n].conformance_probability) == bits_of(probability[n]);
        }
        CHECK(same);
    }
    rko_limit_threads(0);
}

static void in_float(void) {
    const float u_f32 = 3.0f, clause_f32 = 69.0f;
    const uint32_t ones = RKO_ONE_U | RKO_ONE_RECTANGULAR;
    struct rko_estimate_f32 e;
    float p;
    int n;
    CHECK(rko_columns_conformance_probability_n_f32(value_f32, &u_f32, NULL, &clause_f32, ones, COUNT, &limits_f32,
                                                    probability_f32, NULL, NULL) == RKO_OK);
    CHECK(rko_columns_judge_answer_n_f32(value_f32, &u_f32, NULL, &clause_f32, ones, COUNT, &limits_f32, &rule_f32,
                                         decisions_f32, NULL, NULL) == RKO_OK);
    for (n = 0; n < COUNT; n += 37) {
        struct rko_decision_f32 decision;
        CHECK(rko_estimate_new_f32(value_f32[n], 3.0f, INFINITY, &e, NULL) == RKO_OK);
        CHECK(rko_estimate_with_rectangular_f32(&e, 69.0f, &e, NULL) == RKO_OK);
        CHECK(rko_conformance_probability_f32(&e, &limits_f32, &p, NULL) == RKO_OK && p == probability_f32[n]);
        CHECK(rko_judge_answer_f32(&e, &limits_f32, &rule_f32, &decision, NULL) == RKO_OK);
        CHECK(memcmp(&decision, &decisions_f32[n], sizeof decision) == 0);
    }
}

static void refusals(void) {
    char text[512];
    column_u = u;
    column_dof = column_rectangular = NULL;
    one_for_all = 0;
    u[20000] = -1.0;
    u[COUNT - 1] = NAN;
    pattern(probability, sizeof probability);
    pattern(decisions, sizeof decisions);
    CHECK(probabilities(probability, NULL, &detail) == RKO_OUT_OF_RANGE);
    CHECK(detail.index == 20000 && detail.failed == 2 && detail.given == -1.0);
    CHECK(rko_detail_text(&detail, text, sizeof text, NULL) == RKO_OK);
    CHECK(strncmp(text, "judging an array: element 20000, the first of 2 that failed: standard uncertainty", 81) == 0);
    CHECK(judged(NULL, &detail) == RKO_OUT_OF_RANGE);
    CHECK(detail.index == 20000 && detail.failed == 2);
    CHECK(!changed(probability, sizeof probability) && !changed(decisions, sizeof decisions));
    CHECK(probabilities(probability, valid, &detail) == RKO_OK);
    CHECK(detail.index == 20000 && detail.failed == 2 && valid[20000] == 0 && valid[COUNT - 1] == 0 && valid[19999] == 1);
    CHECK(!changed(&probability[20000], sizeof probability[0]) && changed(&probability[19999], sizeof probability[0]));
    CHECK(judged(valid, &detail) == RKO_OK);
    CHECK(detail.failed == 2 && valid[20000] == 0 && !changed(&decisions[20000], sizeof decisions[0]));
    one_for_all = 8;
    CHECK(probabilities(probability, NULL, &detail) == RKO_UNKNOWN_CODE && detail.argument == 5);
    CHECK(rko_columns_conformance_probability_n(NULL, u, NULL, NULL, 0, COUNT, &limits, probability, NULL, &detail) ==
          RKO_NULL_POINTER);
    CHECK(rko_columns_conformance_probability_n(NULL, NULL, NULL, NULL, 0, 0, &limits, NULL, NULL, &detail) == RKO_OK);
    CHECK(rko_columns_judge_answer_n(NULL, NULL, NULL, NULL, 0, 0, &limits, NULL, NULL, NULL, &detail) == RKO_NULL_POINTER);
}

static void large_arrays(void) {
    int n;
    for (n = 0; n < MANY; ++n) {
        z[n] = 24.0 * unit() - 12.0;
    }
    rko_limit_threads(1);
    CHECK(rko_normal_above_n(z, MANY, one_thread, NULL, NULL) == RKO_OK);
    for (n = 0; n < MANY; n += 997) {
        double p;
        CHECK(rko_normal_above(z[n], &p, NULL) == RKO_OK && bits_of(p) == bits_of(one_thread[n]));
    }
    rko_limit_threads(2);
    CHECK(rko_normal_above_n(z, MANY, threads, NULL, NULL) == RKO_OK && memcmp(threads, one_thread, sizeof threads) == 0);
    z[290000] = NAN;
    pattern(threads, sizeof threads);
    CHECK(rko_normal_above_n(z, MANY, threads, NULL, &detail) == RKO_NOT_FINITE && detail.index == 290000);
    CHECK(!changed(threads, sizeof threads));
    CHECK(rko_normal_above_n(z, MANY, threads, valid, &detail) == RKO_OK && detail.index == 290000 && detail.failed == 1);
    CHECK(valid[290000] == 0 && !changed(&threads[290000], sizeof threads[0]) && valid[MANY - 1] == 1);
    CHECK(memcmp(threads, one_thread, 290000 * sizeof threads[0]) == 0);
    rko_limit_threads(0);
}

int main(void) {
    const double one_u = 3.0, one_dof = 4.0, one_clause = 69.0;
    int n;
    CHECK(rko_limits_from_tolerance(4700.0, 0.05, &limits, NULL) == RKO_OK);
    CHECK(rko_limits_from_tolerance_f32(4700.0f, 0.05f, &limits_f32, NULL) == RKO_OK);
    CHECK(rko_rule_guarded(0.05, &rule, NULL) == RKO_OK && rko_rule_guarded_f32(0.05f, &rule_f32, NULL) == RKO_OK);
    for (n = 0; n < COUNT; ++n) {
        value[n] = 4350.0 + 700.0 * unit();
        value_f32[n] = (float)value[n];
        u[n] = n % 3 == 0 ? 0.0 : 10.0 * unit();
        dof[n] = n % 1000 == 0 ? 4.0 : INFINITY;
        rectangular[n] = n % 5 == 0 ? 0.0 : 69.0;
    }
    column_u = &one_u;
    column_rectangular = &one_clause;
    one_for_all = RKO_ONE_U | RKO_ONE_RECTANGULAR;
    as_single_calls();
    column_u = u;
    column_dof = dof;
    column_rectangular = rectangular;
    one_for_all = 0;
    as_single_calls();
    column_dof = &one_dof;
    column_rectangular = NULL;
    one_for_all = RKO_ONE_DOF;
    as_single_calls();
    in_float();
    refusals();
    large_arrays();
    return checks_end("columns");
}
