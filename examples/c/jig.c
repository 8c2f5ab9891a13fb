/*
 * jig: a tray of parts, judged from C. Reads the tray file, prints each part with its verdict, what was wrong with the lines
 * that could not be used, and a count of the answers.
 *
 *   jig TRAY [--csv FILE] [--quiet]
 *
 *   --csv FILE   write the judged tray with every digit, a row a quantity
 *   --quiet      print nothing else
 *
 * Safety: measure resistance only on a part that is out of its circuit, with the circuit off and its capacitors discharged;
 * let a lamp cool; keep fingers off the tips, and never send a meter's current through a body; the low spans of a meter drive
 * a current that can heat a small part. Local codes and the advice of licensed people come before anything that is said here.
 */

#include <stdio.h>
#include <string.h>

#include "report.h"

/* The risk of accepting a part that does not conform, and of rejecting one that does, that the workshop agreed on. */
static const double RISK = 0.05;

enum { ANSWERS = 5 };
static const char *const ANSWER[ANSWERS] = {"conforms", "does not conform", "undecided", "beyond the span", "refused"};

struct arguments {
    const char *tray, *csv;
    int quiet;
};

static int read_arguments(int count, char **words, struct arguments *arguments) {
    memset(arguments, 0, sizeof *arguments);
    for (int i = 1; i < count; i++) {
        if (strcmp(words[i], "--quiet") == 0) {
            arguments->quiet = 1;
        } else if (strcmp(words[i], "--csv") == 0 && i + 1 < count) {
            arguments->csv = words[++i];
        } else if (words[i][0] != '-' && arguments->tray == NULL) {
            arguments->tray = words[i];
        } else {
            return -1;
        }
    }
    return arguments->tray == NULL ? -1 : 0;
}

static void count_answer(const struct judged *judged, int *counts) {
    for (int i = 0; i < ANSWERS; i++) {
        counts[i] += strcmp(ANSWER[i], answer_words(judged)) == 0;
    }
}

/* Judges line after line; -1 if the file with every digit cannot be written. */
static int judge_tray(struct tray_file *tray, const struct arguments *arguments, const struct meter *meter,
                      const struct rko_rule *rule) {
    static struct judged judged; /* large, and there is one tray */
    struct tray_line line;
    enum tray_answer answer;
    int counts[ANSWERS] = {0}, lines = 0;
    FILE *messages = tmpfile(), *csv = NULL;
    if (messages == NULL || (arguments->csv != NULL && (csv = every_digit_open(arguments->csv)) == NULL)) {
        return -1;
    }
    if (!arguments->quiet) {
        report_head();
    }
    for (; (answer = tray_next(tray, &line)) != TRAY_END; lines++) {
        if (answer == TRAY_WRONG_LINE) {
            counts[ANSWERS - 1]++;
            fprintf(messages, "  line %lu: tray file: not a line of %d columns\n", line.number, (int)TRAY_COLUMNS);
            continue;
        }
        judge_line(&line, meter, rule, &judged);
        count_answer(&judged, counts);
        if (judged.outcome == REFUSED) {
            fprintf(messages, "  line %lu, %s: %s\n", line.number, line.field[TRAY_PART], judged.why);
        }
        if (!arguments->quiet) {
            report_row(&line, &judged);
        }
        if (csv != NULL) {
            every_digit_write(csv, &line, &judged);
        }
    }
    if (!arguments->quiet) {
        int c;
        printf("\nLines that could not be used:\n");
        for (rewind(messages); (c = getc(messages)) != EOF;) {
            putchar(c);
        }
        putchar('\n');
        for (int i = 0; i < ANSWERS; i++) {
            printf("%-18s %4d\n", ANSWER[i], counts[i]);
        }
        printf("%-18s %4d\n", "in all", lines);
    }
    fclose(messages);
    if (csv != NULL && (ferror(csv) | fclose(csv)) != 0) {
        fprintf(stderr, "writing %s: not all of it could be written\n", arguments->csv);
        return -1;
    }
    return 0;
}

int main(int count, char **words) {
    struct arguments arguments;
    struct tray_file tray;
    struct meter meter;
    struct rko_rule rule;
    int outcome;
    if (rko_abi_version() != RKO_ABI_VERSION) {
        fprintf(stderr, "the library and its header are of different versions\n");
        return 1;
    }
    if (read_arguments(count, words, &arguments) != 0) {
        fprintf(stderr, "usage: %s TRAY [--csv FILE] [--quiet]\n", words[0]);
        return 2;
    }
    if (rko_rule_guarded(RISK, &rule, NULL) != RKO_OK ||
        rko_meter_example_hand_held(meter.span, RKO_SPANS_MOST, &meter.count, NULL) != RKO_OK) {
        fprintf(stderr, "the rule or the meter cannot be had\n");
        return 1;
    }
    if (tray_open(&tray, arguments.tray) != 0) {
        return 1;
    }
    outcome = judge_tray(&tray, &arguments, &meter, &rule);
    fclose(tray.stream);
    return outcome == 0 ? 0 : 1;
}
