/* One part judged by an installed library: 4860 ohm read for a 4.7 kohm 5 % part. */

#include <math.h>
#include <reckohm.h>
#include <stdio.h>

int main(void) {
    struct rko_limits limits;
    struct rko_estimate estimate;
    struct rko_rule rule;
    struct rko_verdict verdict;

    if (rko_abi_version() != RKO_ABI_VERSION) {
        fprintf(stderr, "the library is of another ABI than the header\n");
        return 2;
    }
    if (rko_limits_from_tolerance(4700.0, 0.05, &limits, NULL) != RKO_OK ||
        rko_estimate_new(4860.0, 3.0, INFINITY, &estimate, NULL) != RKO_OK ||
        rko_estimate_with_rectangular(&estimate, 0.008 * 4860.0 + 30.0, &estimate, NULL) != RKO_OK ||
        rko_rule_guarded(0.05, &rule, NULL) != RKO_OK ||
        rko_judge(&estimate, &limits, &rule, &verdict, NULL) != RKO_OK) {
        return 1;
    }
    printf("%s\n", verdict.answer == RKO_ANSWER_CONFORMS ? "conforms" : "does not");
    return 0;
}
