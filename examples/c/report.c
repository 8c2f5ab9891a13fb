#include "report.h"

#include <inttypes.h>
#include <math.h>
#include <string.h>

static const char *side_words(uint32_t side) { return side == RKO_SIDE_INSIDE ? "inside" : "outside"; }

static const char *next_step_words(uint32_t next_step) {
    switch (next_step) {
    case RKO_NEXT_STEP_REPEAT:
        return "take more readings";
    case RKO_NEXT_STEP_TIGHTER_METER:
        return "use a span or meter with a tighter clause, or compare with a known part";
    case RKO_NEXT_STEP_REMOVE_ONE_SIDED:
        return "take away what pushes the reading to one side";
    default:
        return "none";
    }
}

const char *answer_words(const struct judged *judged) {
    if (judged->outcome == REFUSED) {
        return "refused";
    }
    if (judged->outcome == BEYOND_THE_SPAN) {
        return "beyond the span";
    }
    switch (judged->verdict.answer) {
    case RKO_ANSWER_CONFORMS:
        return "conforms";
    case RKO_ANSWER_DOES_NOT_CONFORM:
        return "does not conform";
    default:
        return "undecided";
    }
}

/* How many digits behind the point show two figures of a positive number; 0 where it has two in front of it. */
static int decimals_of_two_figures(double number) {
    char text[32];
    int exponent = 0;
    snprintf(text, sizeof text, "%.1e", number);
    sscanf(strchr(text, 'e') + 1, "%d", &exponent);
    return exponent < 1 ? 1 - exponent : 0;
}

/* A value with its expanded uncertainty, this one to two figures and the value to the same place, in a fitting unit. */
static void with_uncertainty(double ohm, double expanded_ohm, char *text, size_t capacity) {
    double size = fabs(ohm) > expanded_ohm ? fabs(ohm) : expanded_ohm;
    double factor = size >= 1e6 ? 1e6 : size >= 1e3 ? 1e3 : 1.0;
    const char *name = size >= 1e6 ? "Mohm" : size >= 1e3 ? "kohm" : "ohm";
    int decimals = decimals_of_two_figures(expanded_ohm / factor);
    double steps_of_unit = pow(10.0, decimals);
    /* Rounded as whole ohms where the place is whole: 8825 ohm is 8.83 kohm. */
    double steps = factor >= steps_of_unit ? ohm / (factor / steps_of_unit) : ohm * (steps_of_unit / factor);
    snprintf(text, capacity, "%.*f +/- %.*f %s", decimals, round(steps) / steps_of_unit, decimals,
             expanded_ohm / factor, name);
}

void report_head(void) {
    printf("%4s  %-6s  %-20s  %-8s  %22s  %-18s  %7s  %6s  %s\n", "line", "part", "kind", "span", "mean +/- U95", "answer",
           "p conf.", "TUR", "next");
    for (int i = 0; i < 122; i++) {
        putchar('-');
    }
    putchar('\n');
}

void report_row(const struct tray_line *line, const struct judged *judged) {
    char mean[48] = "", chance[16] = "", tur[16] = "", answer[32], next[96] = "";
    const struct rko_verdict *verdict = &judged->verdict;
    snprintf(answer, sizeof answer, "%s", answer_words(judged));
    if (judged->outcome == JUDGED) {
        double p = verdict->conformance_probability;
        with_uncertainty(judged->value_ohm, judged->expanded_ohm, mean, sizeof mean);
        if (p > 0.999 && p < 1.0) {
            snprintf(chance, sizeof chance, "> 0.999");
        } else if (p < 0.001 && p > 0.0) {
            snprintf(chance, sizeof chance, "< 0.001");
        } else {
            snprintf(chance, sizeof chance, "%.3f", p);
        }
        if (verdict->has & RKO_VERDICT_HAS_TUR) {
            snprintf(tur, sizeof tur, "%.2g", verdict->tur);
        }
        if (verdict->answer == RKO_ANSWER_UNDECIDED) {
            snprintf(answer, sizeof answer, "undecided, %s", side_words(verdict->side));
            snprintf(next, sizeof next, "%s", next_step_words(verdict->next_step));
        } else if (strcmp(judged->next_span, "stay") != 0) {
            snprintf(next, sizeof next, "finer on %s", judged->next_span);
        }
    } else if (judged->outcome == BEYOND_THE_SPAN) {
        int up = strcmp(judged->next_span, "none") != 0;
        snprintf(next, sizeof next, "%s%s", up ? "step up to " : "open, or not for this meter", up ? judged->next_span : "");
    } else {
        snprintf(next, sizeof next, "see the message");
    }
    printf("%4lu  %-6s  %-20s  %-8s  %22s  %-18s  %7s  %6s  %s\n", line->number, line->field[TRAY_PART],
           line->field[TRAY_KIND], line->field[TRAY_SPAN], mean, answer, chance, tur, next);
}

FILE *every_digit_open(const char *path) {
    FILE *file = fopen(path, "w");
    if (file == NULL) {
        fprintf(stderr, "writing %s: it cannot be opened\n", path);
        return NULL;
    }
    fputs("line,part,quantity,value,bits\n", file);
    return file;
}

/* A field of a comma-separated file, in quotes where it needs them. */
static void field(FILE *file, const char *text) {
    if (strpbrk(text, ",\"\r\n") == NULL) {
        fputs(text, file);
        return;
    }
    putc('"', file);
    for (; *text != '\0'; text++) {
        if (*text == '"') {
            putc('"', file);
        }
        putc(*text, file);
    }
    putc('"', file);
}

static void put_text(FILE *file, const struct tray_line *line, const char *quantity, const char *text) {
    fprintf(file, "%lu,", line->number);
    field(file, line->field[TRAY_PART]);
    fprintf(file, ",%s,", quantity);
    field(file, text);
    fputs(",\n", file);
}

static void put_number(FILE *file, const struct tray_line *line, const char *quantity, double number) {
    uint64_t bits;
    memcpy(&bits, &number, sizeof bits);
    fprintf(file, "%lu,", line->number);
    field(file, line->field[TRAY_PART]);
    fprintf(file, ",%s,%.16e,%016" PRIx64 "\n", quantity, number, bits);
}

/* A number that a verdict has only if one of these bits says so. */
static void put_if(FILE *file, const struct tray_line *line, const struct rko_verdict *verdict, uint32_t bit,
                   const char *quantity, double number) {
    if (verdict->has & bit) {
        put_number(file, line, quantity, number);
    } else {
        put_text(file, line, quantity, "none");
    }
}

static void put_judged(FILE *file, const struct tray_line *line, const struct judged *judged) {
    const struct rko_verdict *verdict = &judged->verdict;
    put_number(file, line, "lower limit", judged->limits.lower_ohm);
    put_number(file, line, "upper limit", judged->limits.upper_ohm);
    put_number(file, line, "value", judged->value_ohm);
    put_number(file, line, "u", judged->u_ohm);
    put_number(file, line, "effective degrees of freedom", judged->effective_dof);
    put_number(file, line, "expanded uncertainty", judged->expanded_ohm);
    put_number(file, line, "coverage factor", judged->coverage_factor);
    for (int i = 0; i < judged->rows; i++) {
        const struct budget_line *row = &judged->row[i];
        char quantity[NAME_CAPACITY + 16];
        snprintf(quantity, sizeof quantity, "%s: sensitivity", row->contribution);
        put_number(file, line, quantity, row->sensitivity);
        snprintf(quantity, sizeof quantity, "%s: u", row->contribution);
        put_number(file, line, quantity, row->u_ohm);
        snprintf(quantity, sizeof quantity, "%s: share", row->contribution);
        put_number(file, line, quantity, row->share);
    }
    put_number(file, line, "conformance probability", verdict->conformance_probability);
    put_if(file, line, verdict, RKO_VERDICT_HAS_GUARD_BAND, "guard band", verdict->guard_band_ohm);
    put_if(file, line, verdict, RKO_VERDICT_HAS_ACCEPTANCE, "lower acceptance limit", verdict->acceptance_lower_ohm);
    put_if(file, line, verdict, RKO_VERDICT_HAS_ACCEPTANCE, "upper acceptance limit", verdict->acceptance_upper_ohm);
    put_if(file, line, verdict, RKO_VERDICT_HAS_TUR, "test uncertainty ratio", verdict->tur);
    put_text(file, line, "side", side_words(verdict->side));
    put_text(file, line, "next step", next_step_words(verdict->next_step));
    for (int i = 0; i < judged->pieces_of_advice; i++) {
        put_text(file, line, "advice", judged->advice[i]);
    }
}

void every_digit_write(FILE *file, const struct tray_line *line, const struct judged *judged) {
    put_text(file, line, "outcome", answer_words(judged));
    if (judged->outcome == REFUSED) {
        char status[16];
        snprintf(status, sizeof status, "%d", (int)judged->status);
        put_text(file, line, "status", status);
        put_text(file, line, "message", judged->why);
        return;
    }
    put_text(file, line, "next span", judged->next_span);
    if (judged->outcome == JUDGED) {
        put_judged(file, line, judged);
    }
}
