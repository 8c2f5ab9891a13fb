/* Runs the vectors of numbers: preferred values, distributions, estimates, verdicts. Every result to the bit, every status,
 * and outputs untouched on a failure. Its arguments are the files. */

#include "rows.h"

/* The series of this name, or 0 with the row's status. */
static uint32_t series(struct row *row, size_t place) {
    const char *name = place < row->ins ? row->in[place] : "";
    uint32_t count = 0;
    row->status = rko_preferred_series(name, strlen(name), &count, NULL);
    return count;
}

/* The name of a series with so many values, of at most three digits. */
static void series_name(uint32_t values, char *name) {
    uint32_t unit = values < 10 ? 1 : values < 100 ? 10 : 100;
    *name++ = 'E';
    for (; unit > 0; unit /= 10) {
        *name++ = (char)('0' + values / unit % 10);
    }
    *name = '\0';
}

static int preferred(struct row *row, const char *name) {
    static char text[8];
    const int alone = strcmp(name, "decade") == 0 || strcmp(name, "tolerance") == 0;
    const uint32_t of = strcmp(name, "coarsest") == 0 ? 0 : series(row, alone ? 0 : 1);
    double x = UNTOUCHED, y = UNTOUCHED;
    if (row->status != RKO_OK) {
        return 1;
    }
    if (strcmp(name, "nearest") == 0) {
        one(row, rko_preferred_nearest_ohm(number(row, 0), of, &x, NULL), &x);
    } else if (strcmp(name, "below") == 0) {
        one(row, rko_preferred_below_ohm(number(row, 0), of, &x, NULL), &x);
    } else if (strcmp(name, "above") == 0) {
        one(row, rko_preferred_above_ohm(number(row, 0), of, &x, NULL), &x);
    } else if (strcmp(name, "neighbours") == 0) {
        one(row, rko_preferred_below_ohm(number(row, 0), of, &x, NULL), &x);
        one(row, rko_preferred_above_ohm(number(row, 0), of, &y, NULL), &y);
    } else if (strcmp(name, "contains") == 0) {
        uint8_t held = 7;
        row->status = rko_preferred_contains(number(row, 0), of, &held, NULL);
        row->status == RKO_OK ? say(row, held ? "true" : "false") : (void)(row->spoilt = held != 7);
    } else if (strcmp(name, "coarsest") == 0) {
        uint32_t found = 7;
        row->status = rko_preferred_coarsest(number(row, 0), &found, NULL);
        series_name(found, text);
        row->status == RKO_OK ? say(row, found ? text : "") : (void)(row->spoilt = found != 7);
    } else if (strcmp(name, "tolerance") == 0) {
        row->status = rko_preferred_tolerance(of, &x, NULL);
        if (row->status != RKO_OK) {
            row->spoilt = bits_of(x) != bits_of(UNTOUCHED);
        } else if (x == 0.0) {
            say(row, ""); /* a series without a usual tolerance */
        } else {
            give(row, x);
        }
    } else if (strcmp(name, "decade") == 0) {
        double values[192];
        uint32_t i, count = of;
        row->status = rko_preferred_decade(count, values, NULL);
        for (i = 0; row->status == RKO_OK && i < count && !row->differs; ++i) {
            give(row, values[i]);
        }
    } else {
        return 0;
    }
    return 1;
}

/* Each of the eight, and its array form on an array of one, which has to answer alike. */
static int distribution(struct row *row, const char *name) {
    static const struct {
        const char *name;
        rko_status (*one)(double, double *, struct rko_detail *);
        rko_status (*array)(const double *, size_t, double *, uint8_t *, struct rko_detail *);
    } normal[] = {
        {"normal_below", rko_normal_below, rko_normal_below_n},
        {"normal_above", rko_normal_above, rko_normal_above_n},
        {"normal_quantile", rko_normal_quantile, rko_normal_quantile_n},
        {"normal_quantile_above", rko_normal_quantile_above, rko_normal_quantile_above_n},
    };
    static const struct {
        const char *name;
        rko_status (*one)(double, double, double *, struct rko_detail *);
        rko_status (*array)(const double *, size_t, double, double *, uint8_t *, struct rko_detail *);
    } student[] = {
        {"t_below", rko_t_below, rko_t_below_n},
        {"t_above", rko_t_above, rko_t_above_n},
        {"t_quantile", rko_t_quantile, rko_t_quantile_n},
        {"t_quantile_above", rko_t_quantile_above, rko_t_quantile_above_n},
    };
    const double given = number(row, 0), dof = number(row, 1);
    double x = UNTOUCHED, y = UNTOUCHED;
    rko_status of_array = RKO_OK;
    size_t i;
    for (i = 0; i < 4; ++i) {
        if (strcmp(name, normal[i].name) == 0) {
            one(row, normal[i].one(given, &x, NULL), &x);
            of_array = normal[i].array(&given, 1, &y, NULL, NULL);
            break;
        }
        if (strcmp(name, student[i].name) == 0) {
            one(row, student[i].one(given, dof, &x, NULL), &x);
            of_array = student[i].array(&given, 1, dof, &y, NULL, NULL);
            break;
        }
    }
    if (of_array != row->status || bits_of(x) != bits_of(y)) {
        row->spoilt = 1;
    }
    return i < 4;
}

/* The first ten inputs as an estimate. The calls that take it check it. */
static struct rko_estimate estimate(const struct row *row) {
    struct rko_estimate e;
    e.value = number(row, 0);
    e.rectangular[0] = number(row, 1);
    e.rectangular[1] = number(row, 2);
    e.normal_u = number(row, 3);
    e.type_a_s[0] = number(row, 4);
    e.type_a_dof[0] = number(row, 5);
    e.type_a_s[1] = number(row, 6);
    e.type_a_dof[1] = number(row, 7);
    e.below = number(row, 8);
    e.above = number(row, 9);
    return e;
}

static void from_repeats(struct row *row) {
    double observations[16];
    size_t count = 0;
    struct rko_estimate mean;
    struct rko_expanded expanded;
    mean.value = UNTOUCHED;
    for (; count < row->ins && count < 16; ++count) {
        observations[count] = number(row, count);
    }
    one(row, rko_estimate_from_repeats(observations, count, &mean, NULL), &mean.value);
    if (row->status == RKO_OK) {
        row->status = rko_estimate_expanded(&mean, 0.95, &expanded, NULL);
        give(row, expanded.u);
    }
}

static void effective(struct row *row) {
    double u[8], dof[8], x = UNTOUCHED;
    size_t count = 0;
    for (; 2 * count + 1 < row->ins && count < 8; ++count) {
        u[count] = number(row, 2 * count);
        dof[count] = number(row, 2 * count + 1);
    }
    one(row, rko_effective_dof(u, dof, count, &x, NULL), &x);
}

static int uncertainty(struct row *row, const char *name) {
    const struct rko_estimate e = estimate(row);
    const double p = number(row, 10);
    double x = UNTOUCHED;
    struct rko_expanded expanded;
    expanded.half_width = UNTOUCHED;
    if (strcmp(name, "expanded") == 0) {
        one(row, rko_estimate_expanded(&e, p, &expanded, NULL), &expanded.half_width);
        if (row->status == RKO_OK) {
            give(row, expanded.coverage_factor);
            give(row, expanded.lower);
            give(row, expanded.upper);
            give(row, expanded.u);
        }
    } else if (strcmp(name, "expanded_guaranteed") == 0) {
        one(row, rko_estimate_expanded_guaranteed(&e, p, &expanded, NULL), &expanded.half_width);
    } else if (strcmp(name, "expanded_welch_satterthwaite") == 0) {
        one(row, rko_estimate_expanded_welch_satterthwaite(&e, p, &expanded, NULL), &expanded.half_width);
    } else if (strcmp(name, "quantile_above") == 0) {
        one(row, rko_estimate_quantile_above(&e, p, &x, NULL), &x);
    } else if (strcmp(name, "probability_above") == 0) {
        one(row, rko_estimate_probability_above(&e, p, &x, NULL), &x);
    } else if (strcmp(name, "probability_below") == 0) {
        one(row, rko_estimate_probability_below(&e, p, &x, NULL), &x);
    } else {
        return 0;
    }
    return 1;
}

static void optional(struct row *row, const struct rko_verdict *verdict, uint32_t flag, double x) {
    if (verdict->has & flag) {
        give(row, x);
    } else {
        say(row, "");
    }
}

static void judge(struct row *row, const struct rko_estimate *e, const struct rko_limits *limits) {
    static const char *const answers[] = {"", "conforms", "does not conform", "undecided"};
    static const char *const sides[] = {"", "inside", "outside"};
    static const char *const steps[] = {"", "none", "take more readings",
                                        "use a span or meter with a tighter clause, or compare with a known part",
                                        "take away what pushes the reading to one side"};
    struct rko_rule rule;
    struct rko_verdict v;
    const char *name = row->in[12];
    v.distance_ohm = UNTOUCHED;
    row->status = strcmp(name, "guarded") == 0    ? rko_rule_guarded(number(row, 13), &rule, NULL)
                  : strcmp(name, "max risk") == 0 ? rko_rule_max_risk(number(row, 13), &rule, NULL)
                                                  : rko_rule_simple_acceptance(&rule, NULL);
    if (row->status != RKO_OK) {
        return;
    }
    row->status = rko_judge(e, limits, &rule, &v, NULL);
    if (row->status != RKO_OK) {
        row->spoilt = bits_of(v.distance_ohm) != bits_of(UNTOUCHED);
        return;
    }
    say(row, v.answer <= 3 ? answers[v.answer] : "?");
    say(row, v.side <= 2 ? sides[v.side] : "?");
    give(row, v.conformance_probability);
    optional(row, &v, RKO_VERDICT_HAS_GUARD_BAND, v.guard_band_ohm);
    optional(row, &v, RKO_VERDICT_HAS_ACCEPTANCE, v.acceptance_lower_ohm);
    optional(row, &v, RKO_VERDICT_HAS_ACCEPTANCE, v.acceptance_upper_ohm);
    give(row, v.distance_ohm);
    optional(row, &v, RKO_VERDICT_HAS_TUR, v.tur);
    say(row, v.next_step <= 4 ? steps[v.next_step] : "?");
}

static int verdict(struct row *row, const char *name) {
    struct rko_limits limits;
    double x = UNTOUCHED;
    if (strcmp(name, "limits.from_tolerance") == 0) {
        limits.lower_ohm = UNTOUCHED;
        one(row, rko_limits_from_tolerance(number(row, 0), number(row, 1), &limits, NULL), &limits.lower_ohm);
        if (row->status == RKO_OK) {
            give(row, limits.upper_ohm);
        }
        return 1;
    }
    row->status = rko_limits_new(number(row, 10), number(row, 11), &limits, NULL);
    if (strcmp(name, "judge") == 0) {
        const struct rko_estimate e = estimate(row);
        if (row->status == RKO_OK) {
            judge(row, &e, &limits);
        }
    } else if (strcmp(name, "conformance_probability") == 0) {
        const struct rko_estimate e = estimate(row);
        if (row->status == RKO_OK) {
            one(row, rko_conformance_probability(&e, &limits, &x, NULL), &x);
        }
    } else {
        return 0;
    }
    return 1;
}

/* The degrees of freedom of a part without scatter are not read here; behaviour.c holds that. */
static int worded_otherwise(const struct row *row, const char *function, const char *status) {
    const int of_an_estimate = strncmp(function, "uncertainty.", 12) == 0 || strncmp(function, "verdict.", 8) == 0;
    return of_an_estimate && strstr(function, "_f32") == NULL && row->ins > 7 && strcmp(status, "0") != 0 &&
           ((number(row, 4) == 0.0 && number(row, 5) < 1.0) || (number(row, 6) == 0.0 && number(row, 7) < 1.0));
}

static int call(struct row *row, const char *function) {
    if (strncmp(function, "preferred.", 10) == 0) {
        return preferred(row, function + 10);
    }
    if (strncmp(function, "uncertainty.", 12) == 0) {
        if (strcmp(function + 12, "from_repeats") == 0) {
            from_repeats(row);
            return 1;
        }
        if (strcmp(function + 12, "effective_dof") == 0) {
            effective(row);
            return 1;
        }
        return uncertainty(row, function + 12);
    }
    if (strncmp(function, "distribution.", 13) == 0) {
        return distribution(row, function + 13);
    }
    if (strncmp(function, "verdict.", 8) == 0) {
        return verdict(row, function + 8);
    }
    return 0;
}

int main(int arguments, char **paths) {
    return run_all(arguments, paths, "number_vectors", 3000, 15);
}
