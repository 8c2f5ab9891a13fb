/* Runs the vectors of markings: every result to the bit, every status, and outputs untouched on a failure. Its arguments
 * are the files. */

#include "rows.h"

enum { TEXT = 1280, WORDS = 128 };

static void optional(struct row *row, int there, double x) {
    if (there) {
        give(row, x);
    } else {
        say(row, "");
    }
}

/* A marking with its limits, or a failure that must have left the output alone. */
static void marking(struct row *row, rko_status status, const struct rko_marking *m) {
    struct rko_limits limits;
    rko_status limited;
    row->status = status;
    if (status != RKO_OK) {
        row->spoilt = changed(m, sizeof *m);
        return;
    }
    pattern(&limits, sizeof limits);
    limited = rko_marking_limits(m, &limits, NULL);
    if (limited != RKO_OK) {
        row->spoilt = limited != RKO_MISSING_ARGUMENT || changed(&limits, sizeof limits);
    }
    give(row, m->nominal_ohm);
    optional(row, m->has & RKO_MARKING_HAS_TOLERANCE, m->tolerance);
    optional(row, m->has & RKO_MARKING_HAS_TCR, m->tcr_ppm_per_kelvin);
    optional(row, limited == RKO_OK, limits.lower_ohm);
    optional(row, limited == RKO_OK, limits.upper_ohm);
}

/* The bands of the text again, by the codes of their colours. */
static int by_codes(const char *text, size_t length, uint32_t edition, const struct rko_marking *expected) {
    struct rko_both_ways ways;
    struct rko_marking m;
    if (rko_marking_both_ways(text, length, edition, &ways, NULL) != RKO_OK) {
        return 0;
    }
    return rko_marking_from_band_list(ways.forward.bands.colours, ways.forward.bands.count, edition, &m, NULL) == RKO_OK &&
           memcmp(&m, expected, sizeof m) == 0 && memcmp(&m, &ways.forward.marking, sizeof m) == 0;
}

static uint32_t scheme(const struct row *row, size_t place) {
    const char *name = given(row, place) ? row->in[place] : "";
    return strcmp(name, "military") == 0       ? RKO_CHIP_SCHEME_MILITARY
           : strcmp(name, "common list") == 0  ? RKO_CHIP_SCHEME_COMMON_LIST
           : strcmp(name, "large values") == 0 ? RKO_CHIP_SCHEME_LARGE_VALUES
                                               : RKO_CHIP_SCHEME_NONE;
}

static void from_text(struct row *row, const char *function) {
    char text[TEXT];
    const size_t length = bytes(row, 0, text, TEXT);
    struct rko_marking m;
    pattern(&m, sizeof m);
    if (strcmp(function, "from_bands") == 0) {
        const uint32_t edition = (uint32_t)number(row, 1);
        marking(row, rko_marking_from_bands(text, length, edition, &m, NULL), &m);
        if (row->status == RKO_OK && !by_codes(text, length, edition, &m)) {
            row->spoilt = 1;
        }
    } else if (strcmp(function, "from_letters") == 0) {
        marking(row, rko_marking_from_letters(text, length, &m, NULL), &m);
    } else {
        marking(row, rko_marking_from_chip(text, length, scheme(row, 1), &m, NULL), &m);
    }
}

static void to_text(struct row *row, const char *function) {
    static char text[WORDS];
    struct rko_marking m;
    struct rko_bands bands;
    size_t i;
    if ((given(row, 1) && number(row, 1) == 0.0) || (given(row, 2) && number(row, 2) == 0.0)) {
        /* rko_marking_from_value takes 0 for none; the struct can say it, and is checked where it goes in. */
        m.nominal_ohm = number(row, 0);
        m.tolerance = number(row, 1);
        m.tcr_ppm_per_kelvin = (uint32_t)number(row, 2);
        m.has = (given(row, 1) ? RKO_MARKING_HAS_TOLERANCE : 0u) | (given(row, 2) ? RKO_MARKING_HAS_TCR : 0u);
    } else {
        row->status = rko_marking_from_value(number(row, 0), number(row, 1), (uint32_t)number(row, 2), &m, NULL);
        if (row->status != RKO_OK) {
            return;
        }
    }
    pattern(text, sizeof text);
    if (strcmp(function, "to_letters") == 0) {
        row->status = rko_marking_to_letters(&m, text, sizeof text, NULL);
    } else if (strcmp(function, "to_chip") == 0) {
        row->status = rko_marking_to_chip(&m, text, sizeof text, NULL);
    } else {
        pattern(&bands, sizeof bands);
        row->status = rko_marking_to_bands(&m, (uint32_t)number(row, 3), &bands, NULL);
        if (row->status != RKO_OK) {
            row->spoilt = changed(&bands, sizeof bands);
            return;
        }
        text[0] = '\0';
        for (i = 0; i < bands.count; ++i) {
            char word[8];
            CHECK(rko_colour_word(bands.colours[i], word, sizeof word, NULL) == RKO_OK);
            strcat(strcat(text, i > 0 ? " " : ""), word);
        }
    }
    if (row->status == RKO_OK) {
        say(row, text);
    } else {
        row->spoilt = changed(text, sizeof text);
    }
}

static const char *doubts(uint32_t bits, char *text) {
    static const char *const names[] = {"does not decode", "tolerance colour first", "in no series", "unusual tolerance"};
    uint32_t i;
    text[0] = '\0';
    for (i = 0; i < 4; ++i) {
        if (bits & (1u << i)) {
            strcat(strcat(text, text[0] != '\0' ? ", " : ""), names[i]);
        }
    }
    return text;
}

static void both_ways(struct row *row) {
    static char forward[WORDS], backward[WORDS];
    static const char *const directions[] = {"", "forward", "backward"};
    char text[TEXT];
    const size_t length = bytes(row, 0, text, TEXT);
    struct rko_both_ways ways;
    pattern(&ways, sizeof ways);
    row->status = rko_marking_both_ways(text, length, (uint32_t)number(row, 1), &ways, NULL);
    if (row->status != RKO_OK) {
        row->spoilt = changed(&ways, sizeof ways);
        return;
    }
    optional(row, ways.forward.status == RKO_OK, ways.forward.marking.nominal_ohm);
    say(row, doubts(ways.forward.doubts, forward));
    optional(row, ways.backward.status == RKO_OK, ways.backward.marking.nominal_ohm);
    say(row, doubts(ways.backward.doubts, backward));
    say(row, ways.more_plausible <= 2 ? directions[ways.more_plausible] : "?");
}

static int call(struct row *row, const char *function) {
    if (strncmp(function, "marking.", 8) != 0) {
        return 0;
    }
    function += 8;
    if (strncmp(function, "from_", 5) == 0) {
        from_text(row, function);
    } else if (strncmp(function, "to_", 3) == 0) {
        to_text(row, function);
    } else if (strcmp(function, "both_ways") == 0) {
        both_ways(row);
    } else {
        return 0;
    }
    return 1;
}

static int worded_otherwise(const struct row *row, const char *function, const char *status) {
    (void)row, (void)function, (void)status;
    return 0;
}

int main(int arguments, char **paths) {
    return run_all(arguments, paths, "marking_vectors", 900, 0);
}
