/* Runs the vectors of sensors, in both precisions: results to the bit, every status, outputs untouched on a failure, and the array
 * form of each call alike. Its arguments are the files. */

#include <math.h>

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

/* The same call by the three forms of it: one number, an array of one, an array of one with a mask. */
#define ASK(single, array, thermistor, value, x, y, untouched)                                                         \
    do {                                                                                                               \
        uint8_t valid = 7;                                                                                             \
        row->status = single(thermistor, value, &x, NULL);                                                             \
        CHECK(array(thermistor, &value, 1, &y, NULL, NULL) == row->status && x == y);                                  \
        y = untouched;                                                                                                 \
        CHECK(array(thermistor, &value, 1, &y, &valid, NULL) == RKO_OK);                                               \
        CHECK(valid == (row->status == RKO_OK) && x == y);                                                             \
    } while (0)

/* The three conversions of a row by the model of its first seven inputs. The names are written out, so that who looks for a
 * function finds it. */
#define SENSOR(name, model, made, number_type, input, untouched, answer_one, resistance, resistance_n, slope, slope_n,  \
               temperature, temperature_n)                                                                             \
    static int name(struct row *row, const char *quantity) {                                                           \
        struct model t;                                                                                                \
        number_type x = untouched, y = untouched;                                                                      \
        const number_type value = input(row, 7);                                                                       \
        row->status = made(row, &t);                                                                                   \
        if (row->status != RKO_OK) {                                                                                   \
            return 1;                                                                                                  \
        }                                                                                                              \
        if (strcmp(quantity, "resistance_ohm") == 0) {                                                                 \
            ASK(resistance, resistance_n, &t, value, x, y, untouched);                                                 \
        } else if (strcmp(quantity, "slope") == 0) {                                                                   \
            ASK(slope, slope_n, &t, value, x, y, untouched);                                                           \
        } else if (strcmp(quantity, "temperature_c") == 0) {                                                           \
            ASK(temperature, temperature_n, &t, value, x, y, untouched);                                               \
        } else {                                                                                                       \
            return 0;                                                                                                  \
        }                                                                                                              \
        answer_one(row, row->status, &x);                                                                              \
        return 1;                                                                                                      \
    }

static rko_status b_value_of(const struct row *row, struct rko_b_value_thermistor *t) {
    const rko_status status =
        rko_b_value_thermistor_new(number(row, 0), number(row, 1), number(row, 2), number(row, 3), number(row, 4), t, NULL);
    return status != RKO_OK ? status : rko_b_value_thermistor_with_domain(t, number(row, 5), number(row, 6), t, NULL);
}

static rko_status b_value_of_f32(const struct row *row, struct rko_b_value_thermistor_f32 *t) {
    const rko_status status = rko_b_value_thermistor_new_f32(number_f32(row, 0), number_f32(row, 1), number_f32(row, 2),
                                                             number_f32(row, 3), number_f32(row, 4), t, NULL);
    return status != RKO_OK ? status
                            : rko_b_value_thermistor_with_domain_f32(t, number_f32(row, 5), number_f32(row, 6), t, NULL);
}

/* Where c is 0 the three terms are the same model as the four. */
static rko_status steinhart_hart_of(const struct row *row, struct rko_steinhart_hart *t) {
    const double four[4] = {number(row, 0), number(row, 1), number(row, 2), number(row, 3)};
    const double three[3] = {four[0], four[1], four[3]};
    const double reference = number(row, 4), lower = number(row, 5), upper = number(row, 6);
    struct rko_steinhart_hart other;
    const rko_status status = rko_steinhart_hart_four_terms(four, reference, lower, upper, t, NULL);
    if (status == RKO_OK && four[2] == 0.0) {
        CHECK(rko_steinhart_hart_three_terms(three, reference, lower, upper, &other, NULL) == RKO_OK);
        CHECK(bits_of(other.lowest_ohm) == bits_of(t->lowest_ohm));
        CHECK(rko_steinhart_hart_with_domain(&other, lower, upper, &other, NULL) == RKO_OK);
    }
    return status;
}

static rko_status steinhart_hart_of_f32(const struct row *row, struct rko_steinhart_hart_f32 *t) {
    const float four[4] = {number_f32(row, 0), number_f32(row, 1), number_f32(row, 2), number_f32(row, 3)};
    const float three[3] = {four[0], four[1], four[3]};
    const float reference = number_f32(row, 4), lower = number_f32(row, 5), upper = number_f32(row, 6);
    struct rko_steinhart_hart_f32 other;
    const rko_status status = rko_steinhart_hart_four_terms_f32(four, reference, lower, upper, t, NULL);
    if (status == RKO_OK && four[2] == 0.0f) {
        CHECK(rko_steinhart_hart_three_terms_f32(three, reference, lower, upper, &other, NULL) == RKO_OK);
        CHECK(other.lowest_ohm == t->lowest_ohm);
        CHECK(rko_steinhart_hart_with_domain_f32(&other, lower, upper, &other, NULL) == RKO_OK);
    }
    return status;
}

SENSOR(b_value, rko_b_value_thermistor, b_value_of, double, number, UNTOUCHED, one,
       rko_b_value_thermistor_resistance_ohm, rko_b_value_thermistor_resistance_ohm_n,
       rko_b_value_thermistor_slope_ohm_per_kelvin, rko_b_value_thermistor_slope_ohm_per_kelvin_n,
       rko_b_value_thermistor_temperature_c, rko_b_value_thermistor_temperature_c_n)
SENSOR(b_value_f32, rko_b_value_thermistor_f32, b_value_of_f32, float, number_f32, UNTOUCHED_F32, one_f32,
       rko_b_value_thermistor_resistance_ohm_f32, rko_b_value_thermistor_resistance_ohm_n_f32,
       rko_b_value_thermistor_slope_ohm_per_kelvin_f32, rko_b_value_thermistor_slope_ohm_per_kelvin_n_f32,
       rko_b_value_thermistor_temperature_c_f32, rko_b_value_thermistor_temperature_c_n_f32)
SENSOR(steinhart_hart, rko_steinhart_hart, steinhart_hart_of, double, number, UNTOUCHED, one,
       rko_steinhart_hart_resistance_ohm, rko_steinhart_hart_resistance_ohm_n,
       rko_steinhart_hart_slope_ohm_per_kelvin, rko_steinhart_hart_slope_ohm_per_kelvin_n,
       rko_steinhart_hart_temperature_c, rko_steinhart_hart_temperature_c_n)
SENSOR(steinhart_hart_f32, rko_steinhart_hart_f32, steinhart_hart_of_f32, float, number_f32, UNTOUCHED_F32, one_f32,
       rko_steinhart_hart_resistance_ohm_f32, rko_steinhart_hart_resistance_ohm_n_f32,
       rko_steinhart_hart_slope_ohm_per_kelvin_f32, rko_steinhart_hart_slope_ohm_per_kelvin_n_f32,
       rko_steinhart_hart_temperature_c_f32, rko_steinhart_hart_temperature_c_n_f32)

/* An uncertain value, in and out: value, two rectangular parts, normal u, one type A part, below, above; out without its
 * degrees of freedom, which stay the same. */
#define UNCERTAIN(name, model, made, estimate, input, untouched, answer_one, resistance, temperature)                   \
    static int name(struct row *row, const char *quantity) {                                                           \
        struct model t;                                                                                                \
        struct estimate given, out;                                                                                    \
        memset(&given, 0, sizeof given);                                                                               \
        given.value = input(row, 7);                                                                                   \
        given.rectangular[0] = input(row, 8);                                                                          \
        given.rectangular[1] = input(row, 9);                                                                          \
        given.normal_u = input(row, 10);                                                                               \
        given.type_a_s[0] = input(row, 11);                                                                            \
        given.type_a_dof[0] = input(row, 12);                                                                          \
        given.below = input(row, 13);                                                                                  \
        given.above = input(row, 14);                                                                                  \
        out.value = untouched;                                                                                         \
        row->status = made(row, &t);                                                                                   \
        if (row->status != RKO_OK) {                                                                                   \
            return 1;                                                                                                  \
        }                                                                                                              \
        answer_one(row,                                                                                                \
                   strcmp(quantity, "temperature_estimate") == 0 ? temperature(&t, &given, &out, NULL)                 \
                                                                 : resistance(&t, &given, &out, NULL),                 \
                   &out.value);                                                                                        \
        if (row->status == RKO_OK) {                                                                                   \
            CHECK(out.type_a_s[0] == 0 || out.type_a_dof[0] == given.type_a_dof[0]);                                   \
            give(row, out.rectangular[0]);                                                                             \
            give(row, out.rectangular[1]);                                                                             \
            give(row, out.normal_u);                                                                                   \
            give(row, out.type_a_s[0]);                                                                                \
            give(row, out.below);                                                                                      \
            give(row, out.above);                                                                                      \
        }                                                                                                              \
        return 1;                                                                                                      \
    }

UNCERTAIN(b_value_estimate, rko_b_value_thermistor, b_value_of, rko_estimate, number, UNTOUCHED, one,
          rko_b_value_thermistor_resistance_estimate, rko_b_value_thermistor_temperature_estimate)
UNCERTAIN(b_value_estimate_f32, rko_b_value_thermistor_f32, b_value_of_f32, rko_estimate_f32, number_f32, UNTOUCHED_F32,
          one_f32, rko_b_value_thermistor_resistance_estimate_f32, rko_b_value_thermistor_temperature_estimate_f32)
UNCERTAIN(steinhart_hart_estimate, rko_steinhart_hart, steinhart_hart_of, rko_estimate, number, UNTOUCHED, one,
          rko_steinhart_hart_resistance_estimate, rko_steinhart_hart_temperature_estimate)
UNCERTAIN(steinhart_hart_estimate_f32, rko_steinhart_hart_f32, steinhart_hart_of_f32, rko_estimate_f32, number_f32,
          UNTOUCHED_F32, one_f32, rko_steinhart_hart_resistance_estimate_f32,
          rko_steinhart_hart_temperature_estimate_f32)

static int worded_otherwise(const struct row *row, const char *function, const char *status) {
    (void)row, (void)function, (void)status;
    return 0;
}

static int call(struct row *row, const char *function) {
    const char *quantity;
    char name[32];
    size_t length;
    int single, by_b_value;
    if (strncmp(function, "sensor.", 7) != 0) {
        return 0;
    }
    function += 7;
    quantity = strchr(function, '.');
    CHECK(quantity != NULL && strlen(quantity) < sizeof name);
    if (quantity == NULL || strlen(quantity) >= sizeof name) {
        return 0;
    }
    ++quantity;
    length = strlen(quantity);
    single = length > 4 && strcmp(quantity + length - 4, "_f32") == 0;
    memcpy(name, quantity, length + 1);
    name[single ? length - 4 : length] = '\0';
    by_b_value = strncmp(function, "b_value.", 8) == 0;
    if (strstr(name, "_estimate") != NULL) {
        if (single) {
            return by_b_value ? b_value_estimate_f32(row, name) : steinhart_hart_estimate_f32(row, name);
        }
        return by_b_value ? b_value_estimate(row, name) : steinhart_hart_estimate(row, name);
    }
    if (single) {
        return by_b_value ? b_value_f32(row, name) : steinhart_hart_f32(row, name);
    }
    return by_b_value ? b_value(row, name) : steinhart_hart(row, name);
}

static struct rko_detail detail;

static void says(const char *words) {
#ifndef RKO_TEST_ON_BOARD
    char text[RKO_TEXT_CAPACITY];
    CHECK(rko_detail_text(&detail, text, sizeof text, NULL) == RKO_OK);
    CHECK(strstr(text, words) != NULL);
    if (strstr(text, words) == NULL) {
        tell(text);
        tell("\n");
    }
#else
    (void)words;
#endif
}

/* What no row asks for: sentences, structs that something has written over. */
static void refused(void) {
    const double many[3] = {25.0, 86.0, NAN};
    double out[3] = {UNTOUCHED, UNTOUCHED, UNTOUCHED}, x = UNTOUCHED;
    uint8_t valid[3] = {7, 7, 7};
    struct rko_b_value_thermistor t, bad;
    struct rko_steinhart_hart s, odd;
    const double three[3] = {1.129148e-3, 2.34125e-4, 8.76741e-8};
    CHECK(rko_b_value_thermistor_new(10000.0, 25.0, 3977.0, 25.0, 85.0, &t, &detail) == RKO_OK);
    CHECK(rko_b_value_thermistor_resistance_ohm(&t, 86.0, &x, &detail) == RKO_OUTSIDE_DOMAIN);
    says("86 degree Celsius given, 25 degree Celsius to 85 degree Celsius allowed");
    CHECK(rko_b_value_thermistor_resistance_ohm(&t, NAN, &x, &detail) == RKO_NOT_FINITE);
    says("NaN degree Celsius given");
    CHECK(rko_b_value_thermistor_resistance_ohm_n(&t, many, 3, out, NULL, &detail) == RKO_OUTSIDE_DOMAIN);
    CHECK(detail.index == 1 && detail.failed == 2 && out[0] == UNTOUCHED);
    says("element 1, the first of 2 that failed");
    CHECK(rko_b_value_thermistor_resistance_ohm_n(&t, many, 3, out, valid, &detail) == RKO_OK);
    CHECK(valid[0] == 1 && valid[1] == 0 && valid[2] == 0 && out[0] == 10000.0 && out[1] == UNTOUCHED);
    CHECK(detail.index == 1 && detail.failed == 2);
    CHECK(rko_b_value_thermistor_new(10000.0, 25.0, 3977.0, 25.0, 25.0, &bad, &detail) == RKO_CONTRADICTION);
    says("both of its temperatures");
    CHECK(rko_b_value_thermistor_new(10000.0, 25.0, 39.77, 25.0, 85.0, &bad, &detail) == RKO_OUT_OF_RANGE);
    says("39.77 K given");
    CHECK(rko_steinhart_hart_three_terms(NULL, 1.0, -40.0, 125.0, &s, &detail) == RKO_NULL_POINTER);
    CHECK(rko_steinhart_hart_three_terms(three, 1.0, -40.0, 125.0, &s, &detail) == RKO_OK);
    CHECK(rko_steinhart_hart_with_domain(&s, 125.0, -40.0, &odd, &detail) == RKO_CONTRADICTION);
    /* Every member in turn written over by numbers that no model has, or has no more: an answer that is a number, or none. */
    {
        static const double over[] = {0.0, -1.0, 1e300, -1e300, 1e-300};
        size_t member, which;
        for (member = 0; member < sizeof t / sizeof(double); ++member) {
            for (which = 0; which < sizeof over / sizeof over[0] + 3; ++which) {
                const double value = which < 5 ? over[which] : which == 5 ? NAN : which == 6 ? INFINITY : -INFINITY;
                const double at[4] = {30.0, -30.0, 9000.0, 1e300};
                size_t place;
                bad = t;
                odd = s;
                memcpy((char *)&bad + member * sizeof(double), &value, sizeof value);
                memcpy((char *)&odd + member * sizeof(double), &value, sizeof value);
                for (place = 0; place < 4; ++place) {
                    const double given = at[place];
#define FINITE_OR_REFUSED(called)                                                                                      \
    x = UNTOUCHED;                                                                                                     \
    CHECK((called) == RKO_OK ? x - x == 0.0 : x == UNTOUCHED)
                    FINITE_OR_REFUSED(rko_b_value_thermistor_resistance_ohm(&bad, given, &x, NULL));
                    FINITE_OR_REFUSED(rko_b_value_thermistor_temperature_c(&bad, given, &x, NULL));
                    FINITE_OR_REFUSED(rko_b_value_thermistor_slope_ohm_per_kelvin(&bad, given, &x, NULL));
                    FINITE_OR_REFUSED(rko_steinhart_hart_resistance_ohm(&odd, given, &x, NULL));
                    FINITE_OR_REFUSED(rko_steinhart_hart_temperature_c(&odd, given, &x, NULL));
                    FINITE_OR_REFUSED(rko_steinhart_hart_slope_ohm_per_kelvin(&odd, given, &x, NULL));
                    /* The array forms see any change that a member of the model makes. */
                    x = UNTOUCHED;
                    CHECK(rko_b_value_thermistor_temperature_c_n(&bad, &given, 1, &x, NULL, NULL) != RKO_OK ||
                          (member >= 3 && member <= 4));
                    CHECK(x == UNTOUCHED || (member >= 3 && member <= 4));
                }
            }
        }
        memset(&bad, 0, sizeof bad);
        CHECK(rko_b_value_thermistor_temperature_c(&bad, 10000.0, &x, &detail) == RKO_CORRUPT_MEMORY);
        says("memory that this library has not filled");
    }
}

#ifndef RKO_TEST_ON_BOARD
/* Enough for several threads: the bits are those of one. */
static void over_threads(void) {
    enum { COUNT = 200001 };
    static double ohm[COUNT], alone[COUNT], shared[COUNT];
    static uint8_t valid[COUNT];
    struct rko_steinhart_hart s;
    const double three[3] = {1.129148e-3, 2.34125e-4, 8.76741e-8};
    size_t i;
    for (i = 0; i < COUNT; ++i) {
        ohm[i] = 500.0 + 1.5 * (double)i;
    }
    CHECK(rko_steinhart_hart_three_terms(three, 1.0, -40.0, 125.0, &s, NULL) == RKO_OK);
    rko_limit_threads(1);
    CHECK(rko_steinhart_hart_temperature_c_n(&s, ohm, COUNT, alone, NULL, NULL) == RKO_OK);
    rko_limit_threads(3);
    CHECK(rko_steinhart_hart_temperature_c_n(&s, ohm, COUNT, shared, NULL, NULL) == RKO_OK);
    CHECK(memcmp(alone, shared, sizeof alone) == 0);
    ohm[COUNT - 1] = ohm[7] = 1.0;
    CHECK(rko_steinhart_hart_temperature_c_n(&s, ohm, COUNT, shared, NULL, &detail) == RKO_OUTSIDE_DOMAIN);
    CHECK(detail.index == 7 && detail.failed == 2 && memcmp(alone, shared, sizeof alone) == 0);
    shared[7] = shared[COUNT - 1] = UNTOUCHED;
    CHECK(rko_steinhart_hart_temperature_c_n(&s, ohm, COUNT, shared, valid, &detail) == RKO_OK);
    CHECK(valid[6] == 1 && valid[7] == 0 && valid[COUNT - 1] == 0 && shared[7] == UNTOUCHED && shared[COUNT - 1] == UNTOUCHED);
    CHECK(detail.index == 7 && detail.failed == 2 && bits_of(shared[8]) == bits_of(alone[8]));
    rko_limit_threads(0);
}
#endif

int main(int arguments, char **paths) {
    refused();
#ifndef RKO_TEST_ON_BOARD
    over_threads();
#endif
    return run_all(arguments, paths, "sensor_vectors", 2000, 0);
}
