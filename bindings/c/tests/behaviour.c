/* What the vectors do not show: arrays with and without a mask, details and their text, null pointers, wrong codes,
 * parts of an estimate added one by one. */

#include <math.h>
#include <reckohm.h>

#include "check.h"

static void preferred_arrays(void) {
    const double ohm[4] = {4900.0, -1.0, 0.5, NAN};
    double out[4] = {7.0, 7.0, 7.0, 7.0};
    uint8_t valid[4] = {9, 9, 9, 9}, held[4] = {9, 9, 9, 9};
    uint32_t series[4] = {9, 9, 9, 9};
    struct rko_detail detail;

    CHECK(rko_preferred_nearest_ohm_n(ohm, 4, 12, out, NULL, &detail) == RKO_OUT_OF_RANGE);
    CHECK(detail.index == 1 && detail.failed == 2 && detail.given == -1.0);
    CHECK(out[0] == 7.0 && out[2] == 7.0);
    CHECK(rko_preferred_nearest_ohm_n(ohm, 4, 12, out, valid, &detail) == RKO_OK);
    CHECK(out[0] == 4700.0 && out[1] == 7.0 && out[2] == 0.47 && out[3] == 7.0);
    CHECK(valid[0] == 1 && valid[1] == 0 && valid[2] == 1 && valid[3] == 0 && detail.failed == 2);

    CHECK(rko_preferred_below_ohm_n(ohm, 1, 12, out, NULL, NULL) == RKO_OK && out[0] == 4700.0);
    CHECK(rko_preferred_above_ohm_n(ohm, 1, 12, out, NULL, NULL) == RKO_OK && out[0] == 5600.0);
    CHECK(rko_preferred_contains_n(ohm, 3, 12, held, valid, NULL) == RKO_OK);
    CHECK(held[0] == 0 && held[1] == 9 && held[2] == 0 && held[3] == 9);
    CHECK(rko_preferred_coarsest_n(out, 1, series, NULL, NULL) == RKO_OK && series[0] == 12);
    CHECK(rko_preferred_nearest_ohm_n(NULL, 0, 12, NULL, NULL, &detail) == RKO_OK && detail.status == RKO_OK);
    CHECK(rko_preferred_nearest_ohm_n(NULL, 1, 12, out, NULL, NULL) == RKO_NULL_POINTER);
    CHECK(rko_preferred_nearest_ohm(4900.0, 13, out, NULL) == RKO_UNKNOWN_CODE && out[0] == 5600.0);
    CHECK(rko_preferred_tolerance(0, out, NULL) == RKO_UNKNOWN_CODE && out[0] == 5600.0);
    CHECK(rko_preferred_decade(3, out, NULL) == RKO_OK && out[0] == 1.0 && out[1] == 2.2 && out[2] == 4.7);
    CHECK(rko_preferred_nearest_ohm(4900.0, 12, NULL, &detail) == RKO_NULL_POINTER);
    CHECK(detail.status == RKO_NULL_POINTER);
}

static void estimates(void) {
    struct rko_estimate e, f;
    double x = 7.0;
    struct rko_detail detail;
    CHECK(rko_estimate_new(4880.0, 0.0, INFINITY, &e, NULL) == RKO_OK && e.value == 4880.0);
    CHECK(rko_estimate_u(&e, &x, NULL) == RKO_OK && x == 0.0);
    CHECK(rko_estimate_with_rectangular(&e, 69.0, &e, NULL) == RKO_OK && e.rectangular[0] == 69.0);
    CHECK(rko_estimate_with_normal(&e, 3.0, &e, NULL) == RKO_OK && e.normal_u == 3.0);
    CHECK(rko_estimate_u(&e, &x, NULL) == RKO_OK && fabs(x - sqrt(69.0 * 69.0 / 3.0 + 9.0)) < 1e-12);
    CHECK(rko_estimate_effective_dof(&e, &x, NULL) == RKO_OK && isinf(x));
    CHECK(rko_estimate_with_type_a(&e, 4.0, 2.0, &f, NULL) == RKO_OK);
    CHECK(rko_estimate_effective_dof(&f, &x, NULL) == RKO_OK && x > 2.0 && x < 1e9);
    CHECK(rko_estimate_with_one_sided(&f, 1.0, 2.0, &f, NULL) == RKO_OK && f.below == 1.0 && f.above == 2.0);
    CHECK(rko_estimate_times(&f, -2.0, &f, NULL) == RKO_OK);
    CHECK(f.value == -9760.0 && f.rectangular[0] == 138.0 && f.below == 4.0 && f.above == 2.0);

    f = e;
    CHECK(rko_estimate_with_normal(&e, -1.0, &f, &detail) == RKO_OUT_OF_RANGE && detail.given == -1.0);
    CHECK(memcmp(&e, &f, sizeof e) == 0);
    CHECK(rko_estimate_new(NAN, 1.0, INFINITY, &f, NULL) == RKO_NOT_FINITE && memcmp(&e, &f, sizeof e) == 0);
    CHECK(rko_estimate_with_type_a(&e, 1.0, 0.0, &f, NULL) == RKO_OUT_OF_RANGE);
    CHECK(rko_estimate_times(&e, INFINITY, &f, NULL) == RKO_NOT_FINITE);
    f.type_a_s[1] = 0.0;
    f.type_a_dof[1] = 0.0;
    CHECK(rko_estimate_u(&f, &x, NULL) == RKO_OK && x > 0.0);
    CHECK(rko_estimate_times(NULL, 1.0, &f, NULL) == RKO_NULL_POINTER);
}

static void judging(void) {
    struct rko_limits limits, other;
    struct rko_rule rule;
    struct rko_estimate parts[3];
    struct rko_verdict one, all[3];
    double p[3], single;
    uint8_t valid[3], within = 9;
    struct rko_detail detail;
    const double shown[3] = {4860.0, 4880.0, 4998.0};
    size_t i;

    CHECK(rko_limits_from_tolerance(4700.0, 0.05, &limits, NULL) == RKO_OK);
    CHECK(rko_limits_contains(&limits, 4935.0, &within, NULL) == RKO_OK && within == 1);
    CHECK(rko_limits_contains(&limits, 4935.1, &within, NULL) == RKO_OK && within == 0);
    CHECK(rko_limits_contains(&limits, NAN, &within, NULL) == RKO_OK && within == 0);
    CHECK(rko_limits_at_most(2.0, &other, NULL) == RKO_OK && isinf(other.lower_ohm) && other.upper_ohm == 2.0);
    CHECK(rko_limits_at_least(2.0, &other, NULL) == RKO_OK && other.lower_ohm == 2.0 && isinf(other.upper_ohm));
    CHECK(rko_limits_new(2.0, 1.0, &other, NULL) == RKO_CONTRADICTION && other.lower_ohm == 2.0);
    CHECK(rko_rule_guarded(0.7, &rule, NULL) == RKO_OUT_OF_RANGE);
    CHECK(rko_rule_guarded(0.05, &rule, NULL) == RKO_OK && rule.kind == RKO_RULE_GUARDED && rule.reserved == 0);

    for (i = 0; i < 3; ++i) {
        CHECK(rko_estimate_new(shown[i], 3.0, INFINITY, &parts[i], NULL) == RKO_OK);
        CHECK(rko_estimate_with_rectangular(&parts[i], 0.008 * shown[i] + 30.0, &parts[i], NULL) == RKO_OK);
    }
    CHECK(rko_judge_n(parts, 3, &limits, &rule, all, NULL, NULL) == RKO_OK);
    CHECK(rko_conformance_probability_n(parts, 3, &limits, p, NULL, NULL) == RKO_OK);
    for (i = 0; i < 3; ++i) {
        CHECK(rko_judge(&parts[i], &limits, &rule, &one, NULL) == RKO_OK);
        CHECK(memcmp(&one, &all[i], sizeof one) == 0);
        CHECK(rko_conformance_probability(&parts[i], &limits, &single, NULL) == RKO_OK);
        CHECK(bits_of(single) == bits_of(p[i]));
    }
    CHECK(all[0].answer == RKO_ANSWER_CONFORMS && all[1].answer == RKO_ANSWER_UNDECIDED);
    CHECK(all[2].answer == RKO_ANSWER_DOES_NOT_CONFORM);

    parts[1].normal_u = -1.0;
    one = all[0];
    all[0].answer = 77;
    CHECK(rko_judge_n(parts, 3, &limits, &rule, all, NULL, &detail) == RKO_OUT_OF_RANGE);
    CHECK(detail.index == 1 && detail.failed == 1 && all[0].answer == 77);
    CHECK(rko_judge_n(parts, 3, &limits, &rule, all, valid, &detail) == RKO_OK && detail.failed == 1);
    CHECK(valid[0] == 1 && valid[1] == 0 && valid[2] == 1 && all[0].answer == one.answer);

    CHECK(rko_rule_simple_acceptance(&rule, NULL) == RKO_OK);
    rule.kind = 99;
    CHECK(rko_judge(&parts[0], &limits, &rule, &one, &detail) == RKO_UNKNOWN_CODE);
    CHECK(rko_judge(NULL, &limits, &rule, &one, NULL) == RKO_NULL_POINTER);
    CHECK(rko_rule_max_risk(0.05, &rule, NULL) == RKO_OK && rule.risk == 0.05);
}

/* Sentences are for hosts: the library for boards has none. */
#ifndef RKO_TEST_ON_BOARD
static void texts(void) {
    char text[RKO_TEXT_CAPACITY], small[4] = "abc";
    struct rko_detail detail, about;
    double x;
    CHECK(rko_preferred_nearest_ohm(-1.0, 12, &x, &detail) == RKO_OUT_OF_RANGE);
    CHECK(rko_detail_text(&detail, text, sizeof text, NULL) == RKO_OK);
    CHECK(strstr(text, "-1 ohm given") != NULL);
    CHECK(rko_detail_text(&detail, small, sizeof small, &about) == RKO_BUFFER_TOO_SMALL);
    CHECK(about.index == strlen(text) + 1 && strcmp(small, "abc") == 0);
    CHECK(rko_detail_text(NULL, text, sizeof text, NULL) == RKO_NULL_POINTER);
}
#endif

int main(void) {
    preferred_arrays();
    estimates();
    judging();
#ifndef RKO_TEST_ON_BOARD
    texts();
#endif
    return checks_end("behaviour");
}
