/* Calls from several threads at once, on inputs that they share: every thread gets the bits that one thread alone got,
 * errors of one do not show in another. Run under helgrind too, which sees the library's accesses to memory. */

#include <math.h>
#include <pthread.h>
#include <reckohm.h>

#include "check.h"

enum { THREADS = 8, ROUNDS = 8, ELEMENTS = 65 };

/* What all threads read. */
struct shared {
    struct rko_span span;
    struct rko_limits limits;
    struct rko_rule rule;
    struct rko_estimate parts[ELEMENTS];
    double ohm[ELEMENTS], probabilities[ELEMENTS];
};

/* What one round gives; compared as bytes, so it begins as zeros. */
struct answers {
    double nearest[ELEMENTS], quantile[ELEMENTS], conforming[ELEMENTS], distance;
    struct rko_verdict verdict;
    struct rko_reading reading;
    struct rko_marking marking;
    struct rko_detail of_element, of_text;
    char sentence[RKO_TEXT_CAPACITY];
    int32_t statuses[8];
};

struct job {
    const struct shared *shared;
    const struct answers *expected;
    unsigned long others;
};

static void ask(const struct shared *shared, struct answers *answers) {
    double bad[ELEMENTS], untouched[ELEMENTS];
    memset(answers, 0, sizeof *answers);
    memcpy(bad, shared->ohm, sizeof bad);
    bad[50] = -1.0;
    answers->statuses[0] = rko_preferred_nearest_ohm_n(shared->ohm, ELEMENTS, 96, answers->nearest, NULL, NULL);
    answers->statuses[1] = rko_t_quantile_n(shared->probabilities, ELEMENTS, 3.5, answers->quantile, NULL, NULL);
    answers->statuses[2] = rko_conformance_probability_n(shared->parts, ELEMENTS, &shared->limits, answers->conforming, NULL, NULL);
    answers->statuses[3] = rko_judge(&shared->parts[7], &shared->limits, &shared->rule, &answers->verdict, NULL);
    answers->statuses[4] = rko_estimate_quantile_above(&shared->parts[9], 1e-6, &answers->distance, NULL);
    answers->statuses[5] = rko_span_read(&shared->span, "1.462", 5, &answers->reading, NULL);
    answers->statuses[6] = rko_marking_from_bands("red violet gold mauve", 21, RKO_EDITION_2016, &answers->marking, &answers->of_text);
    answers->statuses[7] = rko_preferred_nearest_ohm_n(bad, ELEMENTS, 12, untouched, NULL, &answers->of_element);
    (void)rko_detail_text(&answers->of_element, answers->sentence, sizeof answers->sentence, NULL);
}

static void *work(void *given) {
    struct job *job = (struct job *)given;
    struct answers answers;
    int round;
    for (round = 0; round < ROUNDS; ++round) {
        ask(job->shared, &answers);
        job->others += memcmp(&answers, job->expected, sizeof answers) != 0;
    }
    return NULL;
}

static void prepare(struct shared *shared) {
    size_t i;
    CHECK(rko_span_new("2k", 2, 2000.0, 1.0, 1000.0, RKO_MARK_OL, 0.008, 2.0, &shared->span, NULL) == RKO_OK);
    CHECK(rko_limits_from_tolerance(1000.0, 0.05, &shared->limits, NULL) == RKO_OK);
    CHECK(rko_rule_guarded(0.05, &shared->rule, NULL) == RKO_OK);
    for (i = 0; i < ELEMENTS; ++i) {
        struct rko_estimate *part = &shared->parts[i];
        shared->ohm[i] = 0.37 * (double)(i + 1);
        shared->probabilities[i] = (double)(i + 1) / (ELEMENTS + 1);
        CHECK(rko_estimate_new(900.0 + (double)i, 1.0 + 0.01 * (double)i, INFINITY, part, NULL) == RKO_OK);
        CHECK(rko_estimate_with_rectangular(part, 5.0, part, NULL) == RKO_OK);
        CHECK(rko_estimate_with_type_a(part, 2.0, 4.0, part, NULL) == RKO_OK);
    }
}

int main(void) {
    static struct shared shared;
    static struct answers expected;
    pthread_t threads[THREADS];
    struct job jobs[THREADS];
    size_t i;
    prepare(&shared);
    ask(&shared, &expected);
    for (i = 0; i < 6; ++i) {
        CHECK(expected.statuses[i] == RKO_OK);
    }
    CHECK(expected.statuses[6] == RKO_UNKNOWN_COLOUR && expected.of_text.index == 16);
    CHECK(expected.statuses[7] == RKO_OUT_OF_RANGE && expected.of_element.index == 50);
    CHECK(strstr(expected.sentence, "element 50") != NULL);
    for (i = 0; i < THREADS; ++i) {
        jobs[i].shared = &shared;
        jobs[i].expected = &expected;
        jobs[i].others = 0;
        CHECK(pthread_create(&threads[i], NULL, work, &jobs[i]) == 0);
    }
    for (i = 0; i < THREADS; ++i) {
        CHECK(pthread_join(threads[i], NULL) == 0 && jobs[i].others == 0);
    }
    return checks_end("threads");
}
