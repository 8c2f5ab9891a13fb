/* The frost alarm of a greenhouse, as its controller runs it.
 *
 * A thermistor hangs between the seedlings; a small ohmmeter with three spans reads it and sends what its display shows, a text.
 * Every ten minutes the controller takes a reading on the span that the auto-ranger asks for, forms an estimate with what the
 * meter's accuracy clause leaves open, and judges whether it is still warm enough. Only a sure answer switches something:
 * below the limit the alarm sounds; where the measurement cannot tell, the heating is switched on and the alarm stays off.
 * A lead that broke is an alarm too.
 *
 * This night is invented, and the meter is simulated: it shows what a meter with such a display would show of the resistances
 * below. On a board the texts come from a serial port. The same file is compiled for the host; both print the same lines. */

#include "board.h"

#include <reckohm.h>
#include <string.h>

enum { SPANS = 3, TEXT = 32, TRIES = 12 };

/* Warm enough is 2 degrees Celsius or more; the thermistor has less resistance the warmer it is. */
#define WARM_ENOUGH_C 2.0
/* Agreed with the gardener: one wrong "warm enough" in a thousand at most. */
#define RISK 0.001

/* The resistances of this night, ohm: evening, a clear sky, a lead that breaks and is mended, the sun. */
static const double night[] = {15812.0, 18944.0, 21730.0, 24105.0, 25890.0, 26050.0, 26733.0, 27418.0,
                               29350.0, 31207.0, 9e9,     30466.0, 27902.0, 23618.0, 17431.0, 9874.0};

static struct rko_span spans[SPANS];
static struct rko_auto_ranger ranger;
static struct rko_b_value_thermistor thermistor;
static struct rko_limits warm_enough;
static struct rko_rule rule;
/* All results so far, bit by bit, as one number: a last digit that differs anywhere shows in the last line. */
static uint64_t digest = 0xcbf29ce484222325u;

static void say(const char *text) {
    board_write(text);
}

static void say_whole(long number) {
    char digits[24];
    char *at = digits + sizeof digits;
    unsigned long left = number < 0 ? 0ul - (unsigned long)number : (unsigned long)number;
    *--at = '\0';
    do {
        *--at = (char)('0' + left % 10);
        left /= 10;
    } while (left > 0);
    if (number < 0) {
        *--at = '-';
    }
    say(at);
}

/* With one digit behind the point. */
static void say_tenths(double number) {
    const long tenths = (long)(number * 10.0 + (number < 0.0 ? -0.5 : 0.5));
    const char behind[] = {'.', (char)('0' + (tenths < 0 ? -tenths : tenths) % 10), '\0'};
    say(tenths < 0 ? "-" : "");
    say_whole((tenths < 0 ? -tenths : tenths) / 10);
    say(behind);
}

static void say_bits(uint64_t bits) {
    char digits[17];
    int i;
    for (i = 0; i < 16; ++i) {
        digits[i] = "0123456789abcdef"[(bits >> (60 - 4 * i)) & 15];
    }
    digits[16] = '\0';
    say(digits);
}

static void take_into_digest(double x) {
    uint64_t bits;
    int i;
    memcpy(&bits, &x, sizeof bits);
    for (i = 0; i < 8; ++i) {
        digest = (digest ^ ((bits >> (8 * i)) & 0xffu)) * 0x100000001b3u;
    }
}

/* The meter: what it shows on a span. */
static rko_status shown(size_t span, double ohm, char *text) {
    return rko_span_display_text(&spans[span], ohm, text, TEXT, NULL);
}

/* What does not depend on the weather. */
static rko_status set_up(void) {
    rko_status status = rko_arithmetic_check(NULL);
    double limit_ohm;
    static const struct {
        const char *label;
        double full_scale_ohm, resolution_ohm;
    } front_end[SPANS] = {{"2 kohm", 2e3, 1.0}, {"20 kohm", 2e4, 10.0}, {"200 kohm", 2e5, 100.0}};
    size_t i;
    for (i = 0; status == RKO_OK && i < SPANS; ++i) {
        status = rko_span_new(front_end[i].label, strlen(front_end[i].label), front_end[i].full_scale_ohm,
                              front_end[i].resolution_ohm, 1e3, RKO_MARK_ONE_ALONE, 0.005, 1.0, &spans[i], NULL);
        /* A greenhouse is colder than the bench that the meter was specified for. */
        spans[i].temperature_lower_c = -10.0;
        spans[i].temperature_upper_c = 40.0;
    }
    if (status == RKO_OK) {
        status = rko_auto_ranger_init(spans, SPANS, SPANS - 1, 1, RKO_HYSTERESIS_BY_CONVENTION,
                                      RKO_WIDEST_HYSTERESIS_BY_CONVENTION, &ranger, NULL);
    }
    /* 10 kohm at 25 degrees Celsius, B25/85 = 3435 K. */
    if (status == RKO_OK) {
        status = rko_b_value_thermistor_new(10e3, 25.0, 3435.0, 25.0, 85.0, &thermistor, NULL);
    }
    /* A B-value is of the temperatures it was measured between; that it serves for frost too is the maker's statement. */
    if (status == RKO_OK) {
        status = rko_b_value_thermistor_with_domain(&thermistor, -40.0, 85.0, &thermistor, NULL);
    }
    if (status == RKO_OK) {
        status = rko_b_value_thermistor_resistance_ohm(&thermistor, WARM_ENOUGH_C, &limit_ohm, NULL);
    }
    if (status == RKO_OK) {
        status = rko_limits_at_most(limit_ohm, &warm_enough, NULL);
    }
    return status == RKO_OK ? rko_rule_guarded(RISK, &rule, NULL) : status;
}

/* One reading that counts, on whatever span the auto-ranger ends; `action` says how it ended. */
static rko_status take(double ohm, size_t *span, struct rko_reading *reading, uint32_t *action) {
    rko_status status;
    int tries = 0;
    do {
        char text[TEXT];
        size_t next = *span;
        status = shown(*span, ohm, text);
        if (status == RKO_OK) {
            say(tries > 0 ? ", " : "");
            say(spans[*span].label);
            say(" shows ");
            say(text);
            status = rko_span_read(&spans[*span], text, strlen(text), reading, NULL);
        }
        if (status == RKO_OK) {
            status = rko_auto_ranger_step(&ranger, reading, action, &next, NULL);
        }
        if (status == RKO_OK && *action == RKO_RANGER_SWITCH) {
            *span = next;
        }
    } while (status == RKO_OK && (*action == RKO_RANGER_AGAIN || *action == RKO_RANGER_SWITCH) && ++tries < TRIES);
    return status;
}

/* Reads, estimates, judges, and says what is to be done. */
static rko_status every_ten_minutes(double ohm, size_t *span) {
    static const char *const answers[] = {"", "warm enough", "FROST: alarm", "cannot tell: heating on"};
    struct rko_reading reading;
    struct rko_estimate estimate, temperature;
    struct rko_decision decision;
    double half_width_ohm;
    uint32_t action = 0;
    rko_status status = take(ohm, span, &reading, &action);
    if (status != RKO_OK || action != RKO_RANGER_ACCEPT) {
        say(status == RKO_OK ? ": ALARM, a lead is broken or shorted\n" : "");
        return status;
    }
    status = rko_span_clause_half_width_ohm(&spans[*span], reading.ohm, NULL, &half_width_ohm, NULL);
    if (status == RKO_OK) {
        /* A value alone, then the clause as a rectangular part: within its half-width nothing is known of the error. */
        memset(&estimate, 0, sizeof estimate);
        estimate.value = reading.ohm;
        status = rko_estimate_with_rectangular(&estimate, half_width_ohm, &estimate, NULL);
    }
    if (status == RKO_OK) {
        status = rko_judge_answer(&estimate, &warm_enough, &rule, &decision, NULL);
    }
    if (status == RKO_OK) {
        status = rko_b_value_thermistor_temperature_estimate(&thermistor, &estimate, &temperature, NULL);
    }
    if (status != RKO_OK) {
        return status;
    }
    say(": ");
    say_tenths(temperature.value);
    say(" +/- ");
    say_tenths(temperature.rectangular[0]);
    say(" C, ");
    say(answers[decision.answer]);
    say("\n");
    take_into_digest(estimate.value);
    take_into_digest(half_width_ohm);
    take_into_digest(temperature.value);
    take_into_digest(temperature.rectangular[0]);
    take_into_digest(decision.conformance_probability);
    return RKO_OK;
}

int main(void) {
    size_t span = SPANS - 1, i;
    rko_status status = set_up();
    for (i = 0; status == RKO_OK && i < sizeof night / sizeof *night; ++i) {
        status = every_ten_minutes(night[i], &span);
    }
    if (status != RKO_OK) {
        say("status ");
        say_whole(status);
        say(", given up\n");
        return 1;
    }
    say("all results as one number: ");
    say_bits(digest);
    say("\n");
    return 0;
}
