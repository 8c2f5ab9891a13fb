/* The words of codes and structs. */

#include <reckohm.h>

#include "check.h"

static struct rko_detail detail;

typedef rko_status (*words_of)(uint32_t, char *, size_t, struct rko_detail *);

/* Every code from 1 has words, each its own, and the codes around them have none; room is counted to the byte. */
static void named(words_of words, const char *const *expected, uint32_t count) {
    char text[RKO_TEXT_CAPACITY];
    uint32_t code;
    for (code = 0; code <= count + 1; ++code) {
        pattern(text, sizeof text);
        if (code == 0 || code > count) {
            CHECK(words(code, text, sizeof text, &detail) == RKO_UNKNOWN_CODE && detail.given == code);
            CHECK(!changed(text, sizeof text));
            continue;
        }
        CHECK(words(code, text, strlen(expected[code - 1]), &detail) == RKO_BUFFER_TOO_SMALL);
        CHECK(!changed(text, sizeof text) && detail.index == strlen(expected[code - 1]) + 1);
        CHECK(words(code, text, strlen(expected[code - 1]) + 1, &detail) == RKO_OK);
        CHECK(strcmp(text, expected[code - 1]) == 0);
        if (strcmp(text, expected[code - 1]) != 0) {
            fprintf(stderr, "code %u is \"%s\"\n", (unsigned)code, text);
        }
    }
    CHECK(words(1, NULL, 1, &detail) == RKO_NULL_POINTER && detail.argument == 2);
}

static void codes(void) {
    static const char *const answers[] = {"conforms", "does not conform", "undecided"};
    static const char *const sides[] = {"inside", "outside"};
    static const char *const steps[] = {"none", "take more readings",
                                        "use a span or meter with a tighter clause, or compare with a known part",
                                        "take away what pushes the reading to one side"};
    static const char *const contributions[] = {"scatter of the readings",
                                                "accuracy clause of the meter",
                                                "step of the display",
                                                "leads",
                                                "parallel path",
                                                "known temperature coefficient",
                                                "limit of the temperature coefficient",
                                                "temperature of the part"};
    static const char *const units[] = {"ohm", "ohm", "ohm", "ohm", "S", "1/K", "1/K", "K"};
    static const char *const distributions[] = {"normal", "rectangular", "Student t", "several parts"};
    static const char *const doubts[] = {"the bands say nothing in this direction",
                                         "it would begin with gold or silver, which stand at the end",
                                         "the value is in no series of preferred values, E3 to E192"};
    char text[RKO_TEXT_CAPACITY];
    uint32_t bit;
    named(rko_answer_text, answers, 3);
    named(rko_side_text, sides, 2);
    named(rko_next_step_text, steps, 4);
    named(rko_contribution_text, contributions, 8);
    named(rko_contribution_unit_text, units, 8);
    named(rko_distribution_text, distributions, 4);
    for (bit = 0; bit < 3; ++bit) {
        CHECK(rko_doubt_text(1u << bit, text, sizeof text, &detail) == RKO_OK && strcmp(text, doubts[bit]) == 0);
    }
    CHECK(rko_doubt_text(RKO_DOUBT_UNUSUAL_TOLERANCE, text, sizeof text, &detail) == RKO_OK);
    CHECK(strncmp(text, "the tolerance is unusual", 24) == 0);
    CHECK(rko_doubt_text(16, text, sizeof text, &detail) == RKO_UNKNOWN_CODE);
    CHECK(rko_doubt_text(3, text, sizeof text, &detail) == RKO_UNKNOWN_CODE);
}

static void markings(void) {
    char text[RKO_TEXT_CAPACITY];
    struct rko_marking m;
    CHECK(rko_marking_from_value(4700.0, 0.05, 0, &m, NULL) == RKO_OK);
    CHECK(rko_marking_text(&m, text, sizeof text, NULL) == RKO_OK && strcmp(text, "4.7 kohm, 5 %") == 0);
    CHECK(rko_marking_from_chip("000", 3, RKO_CHIP_SCHEME_NONE, &m, NULL) == RKO_OK && m.nominal_ohm == 0.0);
    CHECK(rko_marking_text(&m, text, sizeof text, NULL) == RKO_OK && strcmp(text, "zero-ohm link") == 0);
    CHECK(rko_marking_from_value(4700.0, 0.01, 0, &m, NULL) == RKO_OK);
    CHECK(rko_marking_to_chip_as(&m, RKO_CHIP_FORM_FOUR_CHARACTERS, text, sizeof text, NULL) == RKO_OK);
    CHECK(strcmp(text, "4701") == 0);
    CHECK(rko_marking_to_chip_as(&m, RKO_CHIP_FORM_THREE_CHARACTERS, text, sizeof text, NULL) == RKO_OK);
    CHECK(strcmp(text, "472") == 0);
    CHECK(rko_marking_from_value(10000.0, 0.01, 0, &m, NULL) == RKO_OK);
    CHECK(rko_marking_to_chip_as(&m, RKO_CHIP_FORM_CODE_AND_LETTER, text, sizeof text, NULL) == RKO_OK);
    CHECK(strcmp(text, "01C") == 0);
}

static void sentences(void) {
    char text[RKO_TEXT_CAPACITY];
    struct rko_span spans[RKO_SPANS_MOST];
    struct rko_reading reading;
    struct rko_measurement m;
    struct rko_limits limits;
    struct rko_rule rule;
    struct rko_verdict verdict;
    struct rko_advice advice;
    size_t count;
    uint32_t i;
    CHECK(rko_meter_example_hand_held(spans, RKO_SPANS_MOST, &count, NULL) == RKO_OK);
    CHECK(rko_span_read(&spans[2], "4.88", 4, &reading, NULL) == RKO_OK);
    CHECK(rko_measurement_evaluate(&spans[2], &reading, 1, NULL, spans, count, &m, NULL) == RKO_OK);
    CHECK(m.advice_count >= 2 && m.advice[0].kind == 1);
    for (i = 0; i < m.advice_count; ++i) {
        CHECK(rko_advice_text(&m.advice[i], text, sizeof text, NULL) == RKO_OK && strlen(text) > 30);
    }
    CHECK(rko_advice_text(&m.advice[0], text, sizeof text, NULL) == RKO_OK);
    CHECK(strcmp(text, "the accuracy clause of the meter dominates: 100 % of the variance; U is 65.6 ohm") == 0);
    advice = m.advice[0];
    advice.kind = 10;
    CHECK(rko_advice_text(&advice, text, sizeof text, &detail) == RKO_UNKNOWN_CODE);
    CHECK(rko_limits_from_tolerance(4700.0, 0.05, &limits, NULL) == RKO_OK);
    CHECK(rko_rule_guarded(0.05, &rule, NULL) == RKO_OK);
    CHECK(rko_judge(&m.estimate, &limits, &rule, &verdict, NULL) == RKO_OK);
    CHECK(rko_verdict_text(&verdict, text, sizeof text, NULL) == RKO_OK);
    CHECK(strcmp(text, "undecided, inside the limits (guarded at each limit, risk 0.05); conformance probability 0.898; next: use a "
                       "span or meter with a tighter clause, or compare with a known part") == 0);
    verdict.side = 3;
    CHECK(rko_verdict_text(&verdict, text, sizeof text, &detail) == RKO_UNKNOWN_CODE);
    CHECK(rko_verdict_text(NULL, text, sizeof text, &detail) == RKO_NULL_POINTER);
}

int main(void) {
    codes();
    markings();
    sentences();
    return checks_end("words");
}
