/* Single calls through the C door against C that a careful programmer writes by hand, with libm. Each contest runs both
 * ways over the same inputs, in turn, round by round; there are many, since the processor would learn few by heart. It prints
 * a line a round: name, ours, theirs, in nanoseconds a call. What does not agree is no contest and ends the program. */
#define _POSIX_C_SOURCE 199309L

#include <math.h>
#include <reckohm.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

enum { COUNT = 65536 };

static double inputs[COUNT];
static char texts[COUNT][8];
static size_t lengths[COUNT];
static struct rko_estimate estimates[COUNT];

static double ours_out[COUNT], theirs_out[COUNT];

/* A reproducible sequence (Lehmer, modulus 2^31 - 1), in (0, 1). */
static double unit(void) {
    static uint64_t state = 20;
    state = state * 48271 % 2147483647;
    return (double)state / 2147483647.0;
}

static void must(rko_status status) {
    if (status != RKO_OK) {
        fprintf(stderr, "status %d\n", (int)status);
        exit(1);
    }
}

static double seconds(void) {
    struct timespec now;
    clock_gettime(CLOCK_MONOTONIC, &now);
    return (double)now.tv_sec + 1e-9 * (double)now.tv_nsec;
}

static double timed(void (*pass)(double *), double *out, int passes) {
    double start = seconds();
    int n;
    for (n = 0; n < passes; n++) {
        pass(out);
    }
    return (seconds() - start) / passes / COUNT * 1e9;
}

static void contest(const char *name, void (*ours)(double *), void (*theirs)(double *), double agree, int rounds) {
    int n, passes;
    ours(ours_out);
    theirs(theirs_out);
    for (n = 0; n < COUNT; n++) {
        if (!(fabs(ours_out[n] - theirs_out[n]) <= agree * fmax(1.0, fabs(theirs_out[n])))) {
            fprintf(stderr, "%s: %.17g against %.17g at input %d\n", name, ours_out[n], theirs_out[n], n);
            exit(1);
        }
    }
    /* Some 10 ms a measurement. */
    passes = 1 + (int)(1e7 / COUNT / fmax(timed(ours, ours_out, 1), timed(theirs, theirs_out, 1)));
    for (n = 0; n < rounds; n++) {
        double a = timed(ours, ours_out, passes);
        double b = timed(theirs, theirs_out, passes);
        printf("%s\t%.3f\t%.3f\n", name, a, b);
        fflush(stdout);
    }
}

/* Preferred values. By hand: the power of ten by log10, then a search in the decade; the result is a product, so its last bit
 * may differ from the decimal's. */

static const double e24[25] = {1.0, 1.1, 1.2, 1.3, 1.5, 1.6, 1.8, 2.0, 2.2, 2.4, 2.7, 3.0, 3.3,
                               3.6, 3.9, 4.3, 4.7, 5.1, 5.6, 6.2, 6.8, 7.5, 8.2, 9.1, 10.0};

static double nearest_by_hand(double ohm) {
    double power = pow(10.0, floor(log10(ohm)));
    double figures = ohm / power;
    int low = 0, high = 24;
    while (high - low > 1) {
        int middle = (low + high) / 2;
        if (e24[middle] <= figures) {
            low = middle;
        } else {
            high = middle;
        }
    }
    return power * (figures <= 0.5 * (e24[low] + e24[high]) ? e24[low] : e24[high]);
}

static void nearest_ours(double *out) {
    int n;
    for (n = 0; n < COUNT; n++) {
        must(rko_preferred_nearest_ohm(inputs[n], 24, &out[n], NULL));
    }
}

static void nearest_theirs(double *out) {
    int n;
    for (n = 0; n < COUNT; n++) {
        out[n] = nearest_by_hand(inputs[n]);
    }
}

/* A thermistor's temperature from its resistance, by the B-value. */

static struct rko_b_value_thermistor thermistor;

static void thermistor_ours(double *out) {
    int n;
    for (n = 0; n < COUNT; n++) {
        must(rko_b_value_thermistor_temperature_c(&thermistor, inputs[n], &out[n], NULL));
    }
}

static void thermistor_theirs(double *out) {
    int n;
    for (n = 0; n < COUNT; n++) {
        out[n] = 3977.0 / (log(inputs[n] / 10000.0) + 3977.0 / 298.15) - 273.15;
    }
}

/* The upper tail of the normal distribution. */

static void normal_ours(double *out) {
    int n;
    for (n = 0; n < COUNT; n++) {
        must(rko_normal_above(inputs[n], &out[n], NULL));
    }
}

static void normal_theirs(double *out) {
    int n;
    for (n = 0; n < COUNT; n++) {
        out[n] = 0.5 * erfc(inputs[n] * 0.70710678118654752);
    }
}

/* Conformance probability of a rectangular and a normal part: with G(z) = z Phi(z) + phi(z) the cumulative distribution is
 * s/(2a) (G((x + a)/s) - G((x - a)/s)). */

static const double u_ohm = 3.0, clause_ohm = 69.0;
static struct rko_limits limits;

static double g(double z) {
    return z * 0.5 * erfc(z * -0.70710678118654752) + 0.39894228040143268 * exp(-0.5 * z * z);
}

static double below(double x) {
    return u_ohm / (2.0 * clause_ohm) * (g((x + clause_ohm) / u_ohm) - g((x - clause_ohm) / u_ohm));
}

static void conformance_ours(double *out) {
    int n;
    for (n = 0; n < COUNT; n++) {
        must(rko_conformance_probability(&estimates[n], &limits, &out[n], NULL));
    }
}

static void conformance_theirs(double *out) {
    int n;
    for (n = 0; n < COUNT; n++) {
        out[n] = below(limits.upper_ohm - estimates[n].value) - below(limits.lower_ohm - estimates[n].value);
    }
}

/* What a display shows, on the 20 kohm span of a meter of 2000 counts: "4.70" or "1" for over-range. By hand twice: with
 * strtod, and with a loop over the digits; both refuse what does not end at the text's end, has not two decimals or is beyond
 * the span, as a jig program has to. Over-range is -1 here. */

static struct rko_span span;
static struct rko_prepared_span prepared;

static double read_by_strtod(const char *text) {
    char *end;
    const char *point;
    double kilohm;
    if (strcmp(text, "1") == 0 || strcmp(text, "OL") == 0) {
        return -1.0;
    }
    kilohm = strtod(text, &end);
    point = strchr(text, '.');
    if (end == text || *end != 0 || point == NULL || end - point != 3 || !(fabs(kilohm) < 20.0)) {
        exit(1);
    }
    return 10.0 * round(100.0 * kilohm);
}

static double read_by_loop(const char *text) {
    const char *at = text;
    long counts = 0;
    int decimals = -1, negative = *at == '-';
    if ((text[0] == '1' && text[1] == 0) || (text[0] == 'O' && text[1] == 'L' && text[2] == 0)) {
        return -1.0;
    }
    at += negative;
    for (; *at != 0; at++) {
        if (*at == '.' && decimals < 0) {
            decimals = 0;
        } else if (*at >= '0' && *at <= '9' && counts < 100000) {
            counts = 10 * counts + (*at - '0');
            decimals += decimals >= 0;
        } else {
            exit(1);
        }
    }
    if (decimals != 2 || counts >= 2000) {
        exit(1);
    }
    return 10.0 * (double)(negative ? -counts : counts);
}

static void read_ours(double *out) {
    struct rko_reading reading;
    int n;
    for (n = 0; n < COUNT; n++) {
        must(rko_span_read(&span, texts[n], lengths[n], &reading, NULL));
        out[n] = reading.over ? -1.0 : reading.ohm;
    }
}

static void read_strtod(double *out) {
    int n;
    for (n = 0; n < COUNT; n++) {
        out[n] = read_by_strtod(texts[n]);
    }
}

static void read_prepared(double *out) {
    struct rko_reading reading;
    int n;
    for (n = 0; n < COUNT; n++) {
        must(rko_prepared_span_read(&prepared, texts[n], lengths[n], &reading, NULL));
        out[n] = reading.over ? -1.0 : reading.ohm;
    }
}

static void read_loop(double *out) {
    int n;
    for (n = 0; n < COUNT; n++) {
        out[n] = read_by_loop(texts[n]);
    }
}

int main(int given, char **words) {
    struct rko_span spans[RKO_SPANS_MOST];
    int rounds = given > 1 ? atoi(words[1]) : 15;
    size_t count;
    int n;

    for (n = 0; n < COUNT; n++) {
        inputs[n] = pow(10.0, 7.0 * unit());
    }
    contest("preferred value, E24 | log10, pow, search", nearest_ours, nearest_theirs, 1e-12, rounds);

    must(rko_b_value_thermistor_new(10000.0, 25.0, 3977.0, 25.0, 85.0, &thermistor, NULL));
    must(rko_b_value_thermistor_with_domain(&thermistor, -40.0, 125.0, &thermistor, NULL));
    for (n = 0; n < COUNT; n++) {
        inputs[n] = 400.0 * pow(500.0, unit());
    }
    contest("thermistor by its B-value, temperature | log", thermistor_ours, thermistor_theirs, 1e-11, rounds);

    for (n = 0; n < COUNT; n++) {
        inputs[n] = 10.0 * unit() - 5.0;
    }
    contest("normal distribution, upper tail | erfc", normal_ours, normal_theirs, 1e-14, rounds);

    must(rko_limits_from_tolerance(4700.0, 0.05, &limits, NULL));
    for (n = 0; n < COUNT; n++) {
        struct rko_estimate plain;
        must(rko_estimate_new(4350.0 + 700.0 * unit(), u_ohm, INFINITY, &plain, NULL));
        must(rko_estimate_with_rectangular(&plain, clause_ohm, &estimates[n], NULL));
    }
    contest("conformance probability | erfc, exp", conformance_ours, conformance_theirs, 1e-12, rounds);

    must(rko_meter_example_hand_held(spans, RKO_SPANS_MOST, &count, NULL));
    span = spans[2];
    must(rko_span_prepare(&span, NULL, &prepared, NULL));
    for (n = 0; n < COUNT; n++) {
        int counts = (int)(2100.0 * unit());
        if (counts < 2000) {
            sprintf(texts[n], "%d.%02d", counts / 100, counts % 100);
        } else {
            strcpy(texts[n], "1");
        }
        lengths[n] = strlen(texts[n]);
    }
    contest("display read | strtod", read_ours, read_strtod, 0.0, rounds);
    contest("display read | loop over digits", read_ours, read_loop, 0.0, rounds);
    contest("display read, prepared span | strtod", read_prepared, read_strtod, 0.0, rounds);
    contest("display read, prepared span | loop over digits", read_prepared, read_loop, 0.0, rounds);
    return 0;
}
