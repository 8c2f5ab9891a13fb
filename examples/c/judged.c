#include "judged.h"

#include <math.h>
#include <string.h>

/* The temperature that nominal values hold at in degrees Celsius (common practice). */
static const double REFERENCE_TEMPERATURE_C = 20.0;

enum { MOST_READINGS = 32 };

/* What a part is meant to be. */
struct wanted {
    struct rko_limits limits;
    struct rko_marking marking; /* all 0 where there is none */
};

/* Keeps why a line was refused: what the library said. */
static int refused(struct judged *judged, const struct rko_detail *detail) {
    judged->outcome = REFUSED;
    judged->status = detail->status;
    if (rko_detail_text(detail, judged->why, sizeof judged->why, NULL) != RKO_OK) {
        snprintf(judged->why, sizeof judged->why, "status %d", (int)detail->status);
    }
    return -1;
}

/* The same where the file itself is at fault. */
static int refused_file(struct judged *judged, const char *before, const char *given, const char *after) {
    judged->outcome = REFUSED;
    judged->status = 0;
    snprintf(judged->why, sizeof judged->why, "tray file: %s%s%s", before, given, after);
    return -1;
}

/* A number of the file: 1 if there is one, 0 if there is none, -1 for something else, which refuses the line. */
static int number(const struct tray_line *line, enum tray_column column, const char *name, double *number,
                  struct judged *judged) {
    int there = tray_number(line->field[column], number);
    char after[64];
    if (there < 0) {
        snprintf(after, sizeof after, "\" given as %s, a number with a point allowed", name);
        return refused_file(judged, "\"", line->field[column], after);
    }
    return there;
}

static int read_marking(const struct tray_line *line, struct rko_marking *marking, struct judged *judged) {
    const char *code = line->field[TRAY_CODE], *text = line->field[TRAY_MARKING];
    struct rko_detail detail;
    rko_status status;
    memset(marking, 0, sizeof *marking);
    if (*code == '\0') {
        return 0;
    }
    if (strcmp(code, "bands") == 0) {
        status = rko_marking_from_bands(text, strlen(text), RKO_EDITION_2016, marking, &detail);
    } else if (strcmp(code, "letters") == 0) {
        status = rko_marking_from_letters(text, strlen(text), marking, &detail);
    } else if (strcmp(code, "chip") == 0) {
        status = rko_marking_from_chip(text, strlen(text), RKO_CHIP_SCHEME_NONE, marking, &detail);
    } else {
        return refused_file(judged, "code \"", code,
                            "\" given, bands, letters or chip allowed, or nothing where there is no marking");
    }
    return status == RKO_OK ? 0 : refused(judged, &detail);
}

/* Marking and limits: those that the kit asks for come before those of the marking. */
static int read_wanted(const struct tray_line *line, struct wanted *wanted, struct judged *judged) {
    double nominal, tolerance, lower, upper;
    struct rko_detail detail;
    rko_status status;
    if (read_marking(line, &wanted->marking, judged) != 0) {
        return -1;
    }
    int has_nominal = number(line, TRAY_NOMINAL, "nominal", &nominal, judged);
    int has_tolerance = has_nominal < 0 ? -1 : number(line, TRAY_TOLERANCE, "tolerance", &tolerance, judged);
    int has_lower = has_tolerance < 0 ? -1 : number(line, TRAY_LOWER, "lower", &lower, judged);
    int has_upper = has_lower < 0 ? -1 : number(line, TRAY_UPPER, "upper", &upper, judged);
    if (has_upper < 0) {
        return -1;
    }
    if (!has_nominal && *line->field[TRAY_CODE] != '\0') {
        nominal = wanted->marking.nominal_ohm;
        has_nominal = 1;
    }
    if (!has_tolerance && wanted->marking.has & RKO_MARKING_HAS_TOLERANCE) {
        tolerance = wanted->marking.tolerance;
        has_tolerance = 1;
    }
    if (has_lower && has_upper) {
        status = rko_limits_new(lower, upper, &wanted->limits, &detail);
    } else if (has_lower) {
        status = rko_limits_at_least(lower, &wanted->limits, &detail);
    } else if (has_upper) {
        status = rko_limits_at_most(upper, &wanted->limits, &detail);
    } else if (has_nominal && has_tolerance) {
        status = rko_limits_from_tolerance(nominal, tolerance, &wanted->limits, &detail);
    } else {
        return refused_file(judged, "", "",
                            "neither limits nor a tolerance given; one of them is needed to judge a part");
    }
    return status == RKO_OK ? 0 : refused(judged, &detail);
}

static int find_span(const struct meter *meter, const char *label, size_t *index, struct judged *judged) {
    for (*index = 0; *index < meter->count; ++*index) {
        if (strcmp(meter->span[*index].label, label) == 0) {
            return 0;
        }
    }
    return refused_file(judged, "span \"", label,
                        "\" given, which this meter does not have; write it as it stands beside its knob");
}

/* The readings of a line; their number, or -1. */
static int read_shown(const struct tray_line *line, const struct rko_span *span, struct rko_reading *readings,
                      struct judged *judged) {
    const char *list = line->field[TRAY_SHOWN], *text;
    struct rko_detail detail;
    size_t length;
    int count = 0;
    while ((text = tray_display_text(&list, &length)) != NULL) {
        if (count == MOST_READINGS) {
            return refused_file(judged, "more readings than there is room for", "", "");
        }
        if (rko_span_read(span, text, length, &readings[count++], &detail) != RKO_OK) {
            return refused(judged, &detail);
        }
    }
    return count;
}

/* What the meter should do after a reading, as a label, "stay" or "none". */
static int next_span(const struct meter *meter, size_t index, const struct rko_reading *reading, struct judged *judged) {
    struct rko_detail detail;
    uint32_t step;
    size_t next;
    if (rko_meter_next_span(meter->span, meter->count, index, reading, &step, &next, &detail) != RKO_OK) {
        return refused(judged, &detail);
    }
    strcpy(judged->next_span, step == RKO_STEP_STAY             ? "stay"
                              : step == RKO_STEP_BEYOND_HIGHEST ? "none"
                                                                : meter->span[next].label);
    return 0;
}

/* Leads and temperatures, where they were taken. */
static int read_conditions(const struct tray_line *line, const struct rko_span *span, const struct rko_marking *marking,
                           struct rko_setup *setup, struct judged *judged) {
    const char *text = line->field[TRAY_LEADS];
    struct rko_reading reading;
    struct rko_detail detail;
    double part_c;
    if (rko_setup_new(setup, &detail) != RKO_OK) {
        return refused(judged, &detail);
    }
    if (*text != '\0') {
        if (rko_span_read(span, text, strlen(text), &reading, &detail) != RKO_OK ||
            rko_leads_from_reading(&reading, span, &setup->leads, &detail) != RKO_OK) {
            return refused(judged, &detail);
        }
        setup->flags |= RKO_SETUP_LEADS;
    }
    int has_part_c = number(line, TRAY_PART_C, "part_c", &part_c, judged);
    if (has_part_c > 0) {
        if (rko_estimate_new(part_c, 0.0, INFINITY, &setup->temperature_c, &detail) != RKO_OK) {
            return refused(judged, &detail);
        }
        setup->reference_temperature_c = REFERENCE_TEMPERATURE_C;
        setup->flags |= RKO_SETUP_TEMPERATURE;
        if (marking->has & RKO_MARKING_HAS_TCR) {
            setup->tcr_limit_ppm_per_kelvin = marking->tcr_ppm_per_kelvin;
            setup->flags |= RKO_SETUP_TCR_LIMIT;
        }
    }
    return has_part_c < 0 ? -1 : 0;
}

/* Takes over what is reported of a measurement. */
static void keep(const struct rko_measurement *measurement, struct judged *judged) {
    judged->value_ohm = measurement->estimate.value;
    judged->u_ohm = measurement->expanded.u;
    judged->effective_dof = measurement->effective_dof;
    judged->expanded_ohm = measurement->expanded.half_width;
    judged->coverage_factor = measurement->expanded.coverage_factor;
    judged->rows = (int)measurement->row_count;
    judged->pieces_of_advice = (int)measurement->advice_count;
    for (int i = 0; i < judged->rows; i++) {
        const struct rko_row *row = &measurement->rows[i];
        struct budget_line *kept = &judged->row[i];
        rko_contribution_text(row->contribution, kept->contribution, sizeof kept->contribution, NULL);
        kept->sensitivity = row->sensitivity;
        kept->u_ohm = row->u_ohm;
        kept->share = row->share;
    }
    for (int i = 0; i < judged->pieces_of_advice; i++) {
        rko_advice_text(&measurement->advice[i], judged->advice[i], sizeof judged->advice[i], NULL);
    }
}

void judge_line(const struct tray_line *line, const struct meter *meter, const struct rko_rule *rule,
                struct judged *judged) {
    struct rko_reading readings[MOST_READINGS];
    struct rko_measurement measurement;
    struct rko_detail detail;
    struct rko_setup setup;
    struct wanted wanted;
    size_t index;
    int count;
    memset(judged, 0, sizeof *judged);
    if (read_wanted(line, &wanted, judged) != 0 || find_span(meter, line->field[TRAY_SPAN], &index, judged) != 0 ||
        (count = read_shown(line, &meter->span[index], readings, judged)) < 0) {
        return;
    }
    for (int i = 0; i < count; i++) {
        if (readings[i].over) {
            judged->outcome = BEYOND_THE_SPAN;
            next_span(meter, index, &readings[i], judged);
            return;
        }
    }
    if (read_conditions(line, &meter->span[index], &wanted.marking, &setup, judged) != 0) {
        return;
    }
    if (rko_measurement_evaluate(&meter->span[index], readings, (size_t)count, &setup, meter->span, meter->count,
                                 &measurement, &detail) != RKO_OK ||
        rko_judge(&measurement.estimate, &wanted.limits, rule, &judged->verdict, &detail) != RKO_OK) {
        refused(judged, &detail);
        return;
    }
    judged->limits = wanted.limits;
    keep(&measurement, judged);
    next_span(meter, index, &readings[count - 1], judged);
}
