/* By hand, for this one span and part, with the C library's functions. It reads what this display may show and nothing else, and
 * judges by the same rule: the error is evenly spread within the clause, and normal on top of it. */

#include <math.h>
#include <string.h>

#include "calls.h"

/* Digits with a point before the last two: "4.88". Nothing but "1" at the left is over-range. */
static int read(const char *text, size_t length, number *ohm) {
    int32_t counts = 0;
    size_t point = length, digits = 0, i;
    int negative = 0;
    while (length > 0 && text[length - 1] == ' ') {
        --length;
    }
    for (i = 0; i < length && text[i] == ' '; ++i) {
    }
    if (i < length && (text[i] == '-' || text[i] == '+')) {
        negative = text[i++] == '-';
    }
    if (length - i == 1 && text[i] == '1') {
        return OVER_RANGE;
    }
    point = length;
    for (; i < length; ++i) {
        if (text[i] == '.' && point == length) {
            point = i;
        } else if (text[i] >= '0' && text[i] <= '9' && digits < 5) {
            counts = 10 * counts + (text[i] - '0');
            ++digits;
        } else {
            return NO_READING;
        }
    }
    if (digits < 3 || point + 3 != length || counts >= 2000) {
        return NO_READING;
    }
    *ohm = (number)(negative ? -counts : counts) * STEP_OHM;
    return 0;
}

/* The integral of the normal tail from z upwards: density less z times tail. */
static number integral_of_tail(number z) {
    const number density = N(0.3989422804014327) * EXP(N(-0.5) * z * z);
    return density - z * N(0.5) * ERFC(z * N(0.7071067811865476));
}

/* The probability to lie more than `distance` above the value: the mean of the normal tail over the rectangle. */
static number tail(number distance, number half_width, number u) {
    const number reach = half_width / u, z = distance / u;
    number near = z - reach, far = z + reach;
    if (z < N(0.0)) {
        return N(1.0) - tail(-distance, half_width, u);
    }
    /* Below the tail's middle the integral is that of the other tail and a straight line. */
    return ((near < N(0.0) ? integral_of_tail(-near) - near : integral_of_tail(near)) - integral_of_tail(far)) /
           (N(2.0) * reach);
}

uint32_t by_hand_read_and_judge(const char *text, size_t length, number *probability) {
    number ohm, half_width, below, above;
    const int wrong = read(text, length, &ohm);
    if (wrong) {
        return (uint32_t)wrong;
    }
    half_width = FRACTION * FABS(ohm) + COUNTS * STEP_OHM;
    below = tail(ohm - LOWER_OHM, half_width, SCATTER_OHM);
    above = tail(UPPER_OHM - ohm, half_width, SCATTER_OHM);
    *probability = N(1.0) - below - above;
    if (below <= RISK && above <= RISK) {
        return CONFORMS;
    }
    return N(1.0) - below <= RISK || N(1.0) - above <= RISK ? DOES_NOT_CONFORM : UNDECIDED;
}

number by_hand_normal_above(number z) {
    return N(0.5) * ERFC(z * N(0.7071067811865476));
}

number by_hand_temperature_c(number ohm) {
    return N(1.0) / (N(1.0) / N(298.15) + LOG(ohm / N(10000.0)) / N(3435.0)) - N(273.15);
}

number by_hand_nearest_in_e12(number ohm) {
    static const uint8_t e12[] = {10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82, 100};
    number decade = N(0.1), best = N(0.0);
    size_t i;
    while (ohm >= decade * N(100.0)) {
        decade *= N(10.0);
    }
    while (ohm < decade * N(10.0)) {
        decade /= N(10.0);
    }
    for (i = 0; i < sizeof e12; ++i) {
        const number value = decade * (number)e12[i];
        if (i == 0 || FABS(value - ohm) < FABS(best - ohm)) {
            best = value;
        }
    }
    return best;
}
