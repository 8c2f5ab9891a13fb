/* The twins in float: each beside the one for double on the same numbers, arrays beside single calls, and refusals that say
 * what they say in double and leave outputs as they were. Their bits are in the vectors. */

#include <math.h>
#include <reckohm.h>

#include "check.h"

static struct rko_detail detail;

/* Whether a float is the double of the same call but for the rounding of float. */
static int near(float x, double y) {
    return (double)x == y || fabs((double)x - y) <= 3e-6 * fabs(y);
}

#define REFUSED(wanted, output, called)                                                                                \
    do {                                                                                                               \
        pattern(&(output), sizeof(output));                                                                            \
        CHECK((called) == (wanted) && detail.status == (wanted) && !changed(&(output), sizeof(output)));               \
    } while (0)

static struct rko_estimate_f32 in_float(const struct rko_estimate *e) {
    struct rko_estimate_f32 f;
    int i;
    f.value = (float)e->value;
    f.normal_u = (float)e->normal_u;
    f.below = (float)e->below;
    f.above = (float)e->above;
    for (i = 0; i < 2; ++i) {
        f.rectangular[i] = (float)e->rectangular[i];
        f.type_a_s[i] = (float)e->type_a_s[i];
        f.type_a_dof[i] = (float)e->type_a_dof[i];
    }
    return f;
}

static int same(const struct rko_estimate_f32 *f, const struct rko_estimate *e) {
    int i, alike = near(f->value, e->value) && near(f->normal_u, e->normal_u) && near(f->below, e->below) &&
                   near(f->above, e->above);
    for (i = 0; i < 2; ++i) {
        alike = alike && near(f->rectangular[i], e->rectangular[i]) && near(f->type_a_s[i], e->type_a_s[i]) &&
                near(f->type_a_dof[i], e->type_a_dof[i]);
    }
    return alike;
}

static void estimates(void) {
    const double repeats[3] = {100.0, 101.0, 103.0}, u[2] = {3.0, 4.0}, dof[2] = {2.0, INFINITY};
    const float repeats_f32[3] = {100.0f, 101.0f, 103.0f}, u_f32[2] = {3.0f, 4.0f}, dof_f32[2] = {2.0f, INFINITY}, low[2] = {0.5f, 1.0f};
    struct rko_estimate e;
    struct rko_estimate_f32 f, g;
    double x;
    float y;
    CHECK(rko_estimate_new(4880.0, 3.0, INFINITY, &e, NULL) == RKO_OK);
    CHECK(rko_estimate_new_f32(4880.0f, 3.0f, INFINITY, &f, NULL) == RKO_OK && same(&f, &e));
    CHECK(rko_estimate_with_rectangular(&e, 69.0, &e, NULL) == RKO_OK);
    CHECK(rko_estimate_with_rectangular_f32(&f, 69.0f, &f, NULL) == RKO_OK && same(&f, &e));
    CHECK(rko_estimate_with_normal(&e, 4.0, &e, NULL) == RKO_OK && e.normal_u == 5.0);
    CHECK(rko_estimate_with_normal_f32(&f, 4.0f, &f, NULL) == RKO_OK && f.normal_u == 5.0f && same(&f, &e));
    CHECK(rko_estimate_with_type_a(&e, 6.0, 4.0, &e, NULL) == RKO_OK);
    CHECK(rko_estimate_with_type_a_f32(&f, 6.0f, 4.0f, &f, NULL) == RKO_OK && same(&f, &e));
    CHECK(rko_estimate_with_one_sided(&e, 1.0, 2.0, &e, NULL) == RKO_OK);
    CHECK(rko_estimate_with_one_sided_f32(&f, 1.0f, 2.0f, &f, NULL) == RKO_OK && same(&f, &e));
    CHECK(rko_estimate_times(&e, -0.5, &e, NULL) == RKO_OK);
    CHECK(rko_estimate_times_f32(&f, -0.5f, &f, NULL) == RKO_OK && same(&f, &e) && f.below == 1.0f);
    CHECK(rko_estimate_u(&e, &x, NULL) == RKO_OK);
    CHECK(rko_estimate_u_f32(&f, &y, NULL) == RKO_OK && near(y, x));
    CHECK(rko_estimate_effective_dof(&e, &x, NULL) == RKO_OK);
    CHECK(rko_estimate_effective_dof_f32(&f, &y, NULL) == RKO_OK && near(y, x));
    CHECK(rko_effective_dof(u, dof, 2, &x, NULL) == RKO_OK);
    CHECK(rko_effective_dof_f32(u_f32, dof_f32, 2, &y, NULL) == RKO_OK && near(y, x));
    CHECK(rko_estimate_from_repeats(repeats, 3, &e, NULL) == RKO_OK);
    CHECK(rko_estimate_from_repeats_f32(repeats_f32, 3, &f, NULL) == RKO_OK && same(&f, &e) && f.type_a_dof[0] == 2.0f);

    REFUSED(RKO_NOT_FINITE, g, rko_estimate_new_f32(NAN, 1.0f, 1.0f, &g, &detail));
    REFUSED(RKO_OUT_OF_RANGE, g, rko_estimate_new_f32(1.0f, 1.0f, 0.5f, &g, &detail));
    CHECK(detail.given == 0.5 && detail.lower == 1.0);
    /* What fits a double and no float. */
    REFUSED(RKO_RESULT_OUT_OF_RANGE, g, rko_estimate_new_f32(3e38f, 3e38f, INFINITY, &g, &detail));
    REFUSED(RKO_OUT_OF_RANGE, g, rko_estimate_with_rectangular_f32(&f, -1.0f, &g, &detail));
    REFUSED(RKO_OUT_OF_RANGE, g, rko_estimate_with_normal_f32(&f, -1.0f, &g, &detail));
    REFUSED(RKO_OUT_OF_RANGE, g, rko_estimate_with_type_a_f32(&f, 1.0f, 0.0f, &g, &detail));
    REFUSED(RKO_NOT_FINITE, g, rko_estimate_with_one_sided_f32(&f, 0.0f, INFINITY, &g, &detail));
    REFUSED(RKO_NOT_FINITE, g, rko_estimate_times_f32(&f, INFINITY, &g, &detail));
    REFUSED(RKO_NULL_POINTER, g, rko_estimate_times_f32(NULL, 1.0f, &g, &detail));
    REFUSED(RKO_WRONG_COUNT, g, rko_estimate_from_repeats_f32(repeats_f32, 1, &g, &detail));
    REFUSED(RKO_NULL_POINTER, y, rko_estimate_u_f32(NULL, &y, &detail));
    REFUSED(RKO_OUT_OF_RANGE, y, rko_effective_dof_f32(u_f32, low, 2, &y, &detail));
    f.normal_u = NAN;
    REFUSED(RKO_NOT_FINITE, y, rko_estimate_effective_dof_f32(&f, &y, &detail));
}

static void intervals(void) {
    struct rko_estimate e = {4880.0, {69.0, 2.0}, 3.0, {5.0, 0.0}, {4.0, 0.0}, 1.0, 2.0};
    const struct rko_estimate_f32 f = in_float(&e);
    struct rko_expanded wide;
    struct rko_expanded_f32 narrow;
    double x;
    float y;
    CHECK(rko_estimate_expanded(&e, 0.95, &wide, NULL) == RKO_OK);
    CHECK(rko_estimate_expanded_f32(&f, 0.95f, &narrow, NULL) == RKO_OK);
    CHECK(near(narrow.half_width, wide.half_width) && near(narrow.coverage_factor, wide.coverage_factor));
    CHECK(narrow.coverage_probability == 0.95f && near(narrow.u, wide.u));
    CHECK(near(narrow.lower, wide.lower) && near(narrow.upper, wide.upper));
    CHECK(rko_estimate_expanded_guaranteed(&e, 0.95, &wide, NULL) == RKO_OK);
    CHECK(rko_estimate_expanded_guaranteed_f32(&f, 0.95f, &narrow, NULL) == RKO_OK);
    CHECK(near(narrow.half_width, wide.half_width));
    CHECK(rko_estimate_expanded_welch_satterthwaite(&e, 0.95, &wide, NULL) == RKO_OK);
    CHECK(rko_estimate_expanded_welch_satterthwaite_f32(&f, 0.95f, &narrow, NULL) == RKO_OK);
    CHECK(near(narrow.half_width, wide.half_width));
    CHECK(rko_estimate_quantile_above(&e, 0.05, &x, NULL) == RKO_OK);
    CHECK(rko_estimate_quantile_above_f32(&f, 0.05f, &y, NULL) == RKO_OK && near(y, x));
    CHECK(rko_estimate_probability_above(&e, 4900.0, &x, NULL) == RKO_OK);
    CHECK(rko_estimate_probability_above_f32(&f, 4900.0f, &y, NULL) == RKO_OK && near(y, x));
    CHECK(rko_estimate_probability_below(&e, 4850.0, &x, NULL) == RKO_OK);
    CHECK(rko_estimate_probability_below_f32(&f, 4850.0f, &y, NULL) == RKO_OK && near(y, x));

    REFUSED(RKO_OUT_OF_RANGE, narrow, rko_estimate_expanded_f32(&f, 1.0f, &narrow, &detail));
    REFUSED(RKO_OUT_OF_RANGE, narrow, rko_estimate_expanded_guaranteed_f32(&f, 0.0f, &narrow, &detail));
    REFUSED(RKO_NOT_FINITE, narrow, rko_estimate_expanded_welch_satterthwaite_f32(&f, NAN, &narrow, &detail));
    REFUSED(RKO_OUT_OF_RANGE, y, rko_estimate_quantile_above_f32(&f, 0.6f, &y, &detail));
    REFUSED(RKO_NOT_FINITE, y, rko_estimate_probability_above_f32(&f, INFINITY, &y, &detail));
    REFUSED(RKO_NOT_FINITE, y, rko_estimate_probability_below_f32(&f, NAN, &y, &detail));
}

static void limits_and_rules(void) {
    struct rko_limits_f32 limits;
    struct rko_rule_f32 rule;
    uint8_t within = 9;
    CHECK(rko_limits_new_f32(99.0f, 101.0f, &limits, NULL) == RKO_OK && limits.lower_ohm == 99.0f && limits.upper_ohm == 101.0f);
    CHECK(rko_limits_at_most_f32(0.05f, &limits, NULL) == RKO_OK && isinf(limits.lower_ohm) && limits.upper_ohm == 0.05f);
    CHECK(rko_limits_at_least_f32(1e6f, &limits, NULL) == RKO_OK && limits.lower_ohm == 1e6f && isinf(limits.upper_ohm));
    /* 0.1 and 0.01 as decimals, each end rounded once: 0.101, not the product of two floats. */
    CHECK(rko_limits_from_tolerance_f32(0.1f, 0.01f, &limits, NULL) == RKO_OK);
    CHECK(limits.lower_ohm == 0.099f && limits.upper_ohm == 0.101f);
    CHECK(rko_limits_from_tolerance_f32(4700.0f, 0.05f, &limits, NULL) == RKO_OK);
    CHECK(limits.lower_ohm == 4465.0f && limits.upper_ohm == 4935.0f);
    CHECK(rko_limits_contains_f32(&limits, 4935.0f, &within, NULL) == RKO_OK && within == 1);
    CHECK(rko_limits_contains_f32(&limits, 4935.5f, &within, NULL) == RKO_OK && within == 0);
    CHECK(rko_rule_simple_acceptance_f32(&rule, NULL) == RKO_OK && rule.kind == RKO_RULE_SIMPLE_ACCEPTANCE && rule.risk == 0.0f);
    CHECK(rko_rule_max_risk_f32(0.01f, &rule, NULL) == RKO_OK && rule.kind == RKO_RULE_MAX_RISK && rule.risk == 0.01f);
    CHECK(rko_rule_guarded_f32(0.05f, &rule, NULL) == RKO_OK && rule.kind == RKO_RULE_GUARDED && rule.reserved == 0);

    REFUSED(RKO_CONTRADICTION, limits, rko_limits_new_f32(2.0f, 1.0f, &limits, &detail));
    CHECK(detail.lower == 2.0 && detail.upper == 1.0);
    REFUSED(RKO_NOT_FINITE, limits, rko_limits_at_most_f32(NAN, &limits, &detail));
    REFUSED(RKO_NOT_FINITE, limits, rko_limits_at_least_f32(INFINITY, &limits, &detail));
    REFUSED(RKO_OUT_OF_RANGE, limits, rko_limits_from_tolerance_f32(4700.0f, 5.0f, &limits, &detail));
    REFUSED(RKO_OUT_OF_RANGE, limits, rko_limits_from_tolerance_f32(2e15f, 0.05f, &limits, &detail));
    REFUSED(RKO_OUT_OF_RANGE, rule, rko_rule_guarded_f32(0.5f, &rule, &detail));
    REFUSED(RKO_OUT_OF_RANGE, rule, rko_rule_max_risk_f32(0.0f, &rule, &detail));
    REFUSED(RKO_NULL_POINTER, within, rko_limits_contains_f32(NULL, 1.0f, &within, &detail));
}

static void judged(const struct rko_estimate *e, const struct rko_limits *limits, const struct rko_rule *rule) {
    const struct rko_estimate_f32 f = in_float(e);
    struct rko_limits_f32 limits_f32;
    struct rko_rule_f32 rule_f32;
    struct rko_verdict v;
    struct rko_verdict_f32 w;
    struct rko_decision d;
    struct rko_decision_f32 g;
    double x;
    float y;
    limits_f32.lower_ohm = (float)limits->lower_ohm;
    limits_f32.upper_ohm = (float)limits->upper_ohm;
    rule_f32.risk = (float)rule->risk;
    rule_f32.kind = rule->kind;
    rule_f32.reserved = 0;
    CHECK(rko_judge(e, limits, rule, &v, NULL) == RKO_OK);
    CHECK(rko_judge_f32(&f, &limits_f32, &rule_f32, &w, NULL) == RKO_OK);
    CHECK(w.answer == v.answer && w.side == v.side && w.next_step == v.next_step && w.has == v.has);
    CHECK(near(w.conformance_probability, v.conformance_probability) && near(w.distance_ohm, v.distance_ohm));
    CHECK(near(w.guard_band_ohm, v.guard_band_ohm) && near(w.tur, v.tur) && w.rule.kind == rule->kind);
    CHECK(near(w.acceptance_lower_ohm, v.acceptance_lower_ohm) && near(w.acceptance_upper_ohm, v.acceptance_upper_ohm));
    CHECK(rko_judge_answer(e, limits, rule, &d, NULL) == RKO_OK);
    CHECK(d.answer == v.answer && d.side == v.side);
    CHECK(bits_of(d.conformance_probability) == bits_of(v.conformance_probability));
    CHECK(rko_judge_answer_f32(&f, &limits_f32, &rule_f32, &g, NULL) == RKO_OK);
    CHECK(g.answer == w.answer && g.side == w.side && g.conformance_probability == w.conformance_probability);
    CHECK(rko_conformance_probability(e, limits, &x, NULL) == RKO_OK);
    CHECK(rko_conformance_probability_f32(&f, &limits_f32, &y, NULL) == RKO_OK && near(y, x) && y == g.conformance_probability);
}

static void judging(void) {
    static const double shown[4] = {4700.0, 4860.0, 4880.0, 5000.0};
    const struct rko_limits limits = {4465.0, 4935.0}, at_most = {-INFINITY, 4900.0};
    const struct rko_rule rules[3] = {
        {0.0, RKO_RULE_SIMPLE_ACCEPTANCE, 0}, {0.05, RKO_RULE_GUARDED, 0}, {0.05, RKO_RULE_MAX_RISK, 0}};
    struct rko_estimate e = {0.0, {69.0, 0.0}, 3.0, {0.0, 0.0}, {0.0, 0.0}, 0.0, 2.0}, wrong;
    struct rko_estimate_f32 parts[4], broken;
    const struct rko_limits_f32 limits_f32 = {4465.0f, 4935.0f};
    const struct rko_rule_f32 guarded = {0.05f, RKO_RULE_GUARDED, 0};
    struct rko_rule_f32 odd = guarded;
    struct rko_verdict_f32 all[4], alone;
    struct rko_decision decision;
    struct rko_decision_f32 decision_f32;
    float p[4], x;
    uint8_t valid[4];
    int i, r;
    for (i = 0; i < 4; ++i) {
        e.value = shown[i];
        for (r = 0; r < 3; ++r) {
            judged(&e, &limits, &rules[r]);
            judged(&e, &at_most, &rules[r]);
        }
        parts[i] = in_float(&e);
    }
    CHECK(rko_judge_n_f32(parts, 4, &limits_f32, &guarded, all, NULL, &detail) == RKO_OK);
    CHECK(rko_conformance_probability_n_f32(parts, 4, &limits_f32, p, NULL, &detail) == RKO_OK);
    for (i = 0; i < 4; ++i) {
        CHECK(rko_judge_f32(&parts[i], &limits_f32, &guarded, &alone, NULL) == RKO_OK);
        CHECK(memcmp(&alone, &all[i], sizeof alone) == 0 && p[i] == alone.conformance_probability);
    }
    CHECK(all[0].answer == RKO_ANSWER_CONFORMS && all[3].answer == RKO_ANSWER_DOES_NOT_CONFORM);
    CHECK(all[2].answer == RKO_ANSWER_UNDECIDED && all[2].next_step == RKO_NEXT_STEP_TIGHTER_METER);

    broken = parts[1];
    parts[1].normal_u = -1.0f;
    REFUSED(RKO_OUT_OF_RANGE, all, rko_judge_n_f32(parts, 4, &limits_f32, &guarded, all, NULL, &detail));
    CHECK(detail.index == 1 && detail.failed == 1 && detail.given == -1.0);
    REFUSED(RKO_OUT_OF_RANGE, p, rko_conformance_probability_n_f32(parts, 4, &limits_f32, p, NULL, &detail));
    CHECK(rko_conformance_probability_n_f32(parts, 4, &limits_f32, p, valid, &detail) == RKO_OK);
    CHECK(valid[0] == 1 && valid[1] == 0 && valid[2] == 1 && detail.status == RKO_OUT_OF_RANGE);
    REFUSED(RKO_OUT_OF_RANGE, alone, rko_judge_f32(&parts[1], &limits_f32, &guarded, &alone, &detail));
    REFUSED(RKO_OUT_OF_RANGE, decision_f32, rko_judge_answer_f32(&parts[1], &limits_f32, &guarded, &decision_f32, &detail));
    REFUSED(RKO_OUT_OF_RANGE, x, rko_conformance_probability_f32(&parts[1], &limits_f32, &x, &detail));
    odd.kind = 9;
    REFUSED(RKO_UNKNOWN_CODE, decision_f32, rko_judge_answer_f32(&broken, &limits_f32, &odd, &decision_f32, &detail));
    REFUSED(RKO_NULL_POINTER, decision_f32, rko_judge_answer_f32(&broken, NULL, &guarded, &decision_f32, &detail));
    wrong = e;
    wrong.below = NAN;
    REFUSED(RKO_NOT_FINITE, decision, rko_judge_answer(&wrong, &limits, &rules[1], &decision, &detail));
    CHECK(rko_judge_answer(&e, &limits, &rules[1], NULL, &detail) == RKO_NULL_POINTER && detail.argument == 4);
}

/* A preferred value is the float nearest to its decimal: 0.47f, not the float of the double 0.47 less its error. */
static void preferred_values(void) {
    const float ohm[4] = {0.5f, -1.0f, 4900.0f, NAN};
    float out[4] = {7.0f, 7.0f, 7.0f, 7.0f}, x;
    uint8_t held[4] = {9, 9, 9, 9}, valid[4] = {9, 9, 9, 9}, one = 9;
    CHECK(rko_preferred_nearest_ohm_f32(0.5f, 12, &x, NULL) == RKO_OK && x == 0.47f);
    CHECK(rko_preferred_below_ohm_f32(0.5f, 12, &x, NULL) == RKO_OK && x == 0.47f);
    CHECK(rko_preferred_above_ohm_f32(0.5f, 12, &x, NULL) == RKO_OK && x == 0.56f);
    CHECK(rko_preferred_contains_f32(0.47f, 12, &one, NULL) == RKO_OK && one == 1);
    CHECK(rko_preferred_contains_f32(0.48f, 12, &one, NULL) == RKO_OK && one == 0);
    /* The end of the range, 1e15, is between two floats. */
    CHECK(rko_preferred_nearest_ohm_f32(999999986991104.0f, 12, &x, NULL) == RKO_OK && x == 1e15f);
    REFUSED(RKO_OUT_OF_RANGE, x, rko_preferred_nearest_ohm_f32(1000000054099968.0f, 12, &x, &detail));
    REFUSED(RKO_OUT_OF_RANGE, x, rko_preferred_below_ohm_f32(0.0f, 12, &x, &detail));
    REFUSED(RKO_NOT_FINITE, x, rko_preferred_above_ohm_f32(INFINITY, 12, &x, &detail));
    REFUSED(RKO_UNKNOWN_CODE, one, rko_preferred_contains_f32(1.0f, 13, &one, &detail));

    CHECK(rko_preferred_nearest_ohm_n_f32(ohm, 4, 12, out, NULL, &detail) == RKO_OUT_OF_RANGE);
    CHECK(detail.index == 1 && detail.failed == 2 && detail.given == -1.0 && out[0] == 7.0f && out[2] == 7.0f);
    CHECK(rko_preferred_nearest_ohm_n_f32(ohm, 4, 12, out, valid, &detail) == RKO_OK);
    CHECK(out[0] == 0.47f && out[1] == 7.0f && out[2] == 4700.0f && out[3] == 7.0f);
    CHECK(valid[0] == 1 && valid[1] == 0 && valid[2] == 1 && valid[3] == 0 && detail.failed == 2);
    CHECK(rko_preferred_below_ohm_n_f32(ohm, 1, 12, out, NULL, NULL) == RKO_OK && out[0] == 0.47f);
    CHECK(rko_preferred_above_ohm_n_f32(ohm, 1, 12, out, NULL, NULL) == RKO_OK && out[0] == 0.56f);
    CHECK(rko_preferred_contains_n_f32(out, 4, 12, held, valid, NULL) == RKO_OK);
    CHECK(held[0] == 1 && held[1] == 0 && held[2] == 1 && held[3] == 0);
}

static void distributions(void) {
    const float given[3] = {0.025f, 0.5f, 1.5f};
    float out[3] = {7.0f, 7.0f, 7.0f}, x;
    uint8_t valid[3];
    REFUSED(RKO_NOT_FINITE, x, rko_normal_below_f32(INFINITY, &x, &detail));
    REFUSED(RKO_NOT_FINITE, x, rko_normal_above_f32(NAN, &x, &detail));
    REFUSED(RKO_OUT_OF_RANGE, x, rko_normal_quantile_f32(1.0f, &x, &detail));
    REFUSED(RKO_OUT_OF_RANGE, x, rko_normal_quantile_above_f32(0.0f, &x, &detail));
    REFUSED(RKO_OUT_OF_RANGE, x, rko_t_below_f32(1.0f, 0.0f, &x, &detail));
    REFUSED(RKO_NOT_FINITE, x, rko_t_above_f32(NAN, 4.0f, &x, &detail));
    REFUSED(RKO_OUT_OF_RANGE, x, rko_t_quantile_f32(0.5f, -1.0f, &x, &detail));
    /* A quantile that fits a double and no float. */
    REFUSED(RKO_RESULT_OUT_OF_RANGE, x, rko_t_quantile_above_f32(1e-30f, 0.5f, &x, &detail));
    REFUSED(RKO_OUT_OF_RANGE, out, rko_normal_quantile_n_f32(given, 3, out, NULL, &detail));
    CHECK(detail.index == 2 && detail.failed == 1 && detail.given == 1.5);
    out[2] = 7.0f;
    CHECK(rko_normal_quantile_n_f32(given, 3, out, valid, &detail) == RKO_OK && valid[0] == 1 && valid[2] == 0);
    CHECK(near(out[0], -1.95996398454005424) && out[1] == 0.0f && out[2] == 7.0f);
}

int main(void) {
    preferred_values();
    distributions();
    estimates();
    intervals();
    limits_and_rules();
    judging();
    return checks_end("float");
}
