/* One line of the tray, from what the display showed to a verdict. */

#ifndef JUDGED_H
#define JUDGED_H

#include <reckohm.h>

#include "tray_file.h"

enum outcome { JUDGED, BEYOND_THE_SPAN, REFUSED };

enum { NAME_CAPACITY = 64 };

struct meter {
    struct rko_span span[RKO_SPANS_MOST];
    size_t count;
};

struct budget_line {
    char contribution[NAME_CAPACITY];
    double sensitivity, u_ohm, share;
};

/* What became of a line. Which members hold something depends on the outcome. */
struct judged {
    enum outcome outcome;
    rko_status status;           /* refused: 0 where the file itself is at fault */
    char why[RKO_TEXT_CAPACITY]; /* refused */
    char next_span[16];         /* judged or beyond: a label, "stay" or "none" */
    struct rko_limits limits;    /* judged, as all below */
    double value_ohm, u_ohm, effective_dof, expanded_ohm, coverage_factor;
    struct rko_verdict verdict;
    int rows, pieces_of_advice;
    struct budget_line row[RKO_ROWS_MOST];
    char advice[RKO_ADVICE_MOST][RKO_TEXT_CAPACITY];
};

/* Judges a line: marking and limits, display texts to readings, leads off, budget, verdict. */
void judge_line(const struct tray_line *line, const struct meter *meter, const struct rko_rule *rule,
                struct judged *judged);

#endif
