/* The vector files that all doors share, row by row: what the programs that run them have in common. A program says in
 * `call` which functions it knows; rows of other functions are left to the other programs.
 *
 * On a board (RKO_TEST_ON_BOARD) the same programs read the same rows, but each input that is a number has its bits behind
 * it, after an @: a board's own library need not read decimals. */

#ifndef RKO_TEST_ROWS_H
#define RKO_TEST_ROWS_H

#include <reckohm.h>

#include "check.h"

enum { INPUTS = 32, COLUMNS = 6, LINE = 6144 };
#define UNTOUCHED 12345.678

/* Of the rows that take a board long, it may be given one in so many. */
#ifndef RKO_TEST_EVERY
#define RKO_TEST_EVERY 1
#endif

#ifndef RKO_TEST_ON_BOARD
#include <stdlib.h>
static FILE *rows_file;

static int rows_open(const char *path) {
    rows_file = fopen(path, "r");
    return rows_file != NULL;
}

static int rows_line(char *line, size_t room) {
    return fgets(line, (int)room, rows_file) != NULL;
}

static void rows_close(void) {
    fclose(rows_file);
}
#endif

struct row {
    char *in[INPUTS];
    /* The inputs as numbers; 0 where they are words. */
    double value[INPUTS];
    size_t ins;
    /* What is still to come of the row's outputs and of their bits. */
    char *outputs, *bits;
    rko_status status;
    /* Something came out that the row does not say. */
    int differs;
    /* Something was written although the call failed. */
    int spoilt;
};

static size_t split(char *text, char separator, char **cells, size_t room) {
    size_t count = 0;
    while (count < room) {
        char *end = strchr(text, separator);
        cells[count++] = text;
        if (end == NULL) {
            break;
        }
        *end = '\0';
        text = end + 1;
    }
    return count;
}

/* The bits that sixteen hexadecimal digits stand for; 0 if it is something else. */
static int hexadecimal(const char *text, uint64_t *bits) {
    static const char digits[] = "0123456789abcdef";
    size_t count = 0;
    *bits = 0;
    for (; text[count] != '\0'; ++count) {
        const char *digit = strchr(digits, text[count]);
        if (digit == NULL) {
            return 0;
        }
        *bits = *bits << 4 | (uint64_t)(digit - digits);
    }
    return count == 16;
}

/* An input as a number. */
static double value_of(char *cell) {
#ifdef RKO_TEST_ON_BOARD
    char *mark = strchr(cell, '@');
    uint64_t bits = 0;
    double x;
    if (mark != NULL) {
        *mark = '\0';
        CHECK(hexadecimal(mark + 1, &bits));
    }
    memcpy(&x, &bits, sizeof x);
    return x;
#else
    return strtod(cell, NULL);
#endif
}

static inline double number(const struct row *row, size_t place) {
    return place < row->ins ? row->value[place] : 0.0;
}

/* Whether there is an input at this place. */
static inline int given(const struct row *row, size_t place) {
    return place < row->ins && row->in[place][0] != '\0' && strcmp(row->in[place], "\\x") != 0;
}

/* The input at this place as the bytes that it stands for, with a zero behind them; gives how many. */
static inline size_t bytes(const struct row *row, size_t place, char *out, size_t room) {
    static const char digits[] = "0123456789abcdef";
    const char *from = place < row->ins ? row->in[place] : "";
    size_t length = 0;
    CHECK(strlen(from) < room);
    while (*from != '\0' && length + 1 < room) {
        if (from[0] == '\\' && from[1] == 'x' && from[2] != '\0') {
            const char *upper = strchr(digits, from[2]), *lower = strchr(digits, from[3]);
            CHECK(upper != NULL && lower != NULL);
            out[length++] = (char)((upper - digits) * 16 + (lower - digits));
            from += 4;
        } else if (from[0] == '\\' && from[1] == 'x') {
            from += 2;
        } else {
            out[length++] = *from++;
        }
    }
    out[length] = '\0';
    return length;
}

static inline const char *yes(int holds) {
    return holds ? "true" : "false";
}

/* The next of the cells, which is cut off; null behind the last one. */
static char *next_cell(char **cells) {
    char *cell = *cells;
    char *end = cell == NULL ? NULL : strchr(cell, '|');
    if (end != NULL) {
        *end = '\0';
    }
    *cells = end == NULL ? NULL : end + 1;
    return cell;
}

/* A number came out: it must have the row's bits. */
static inline void give(struct row *row, double x) {
    char *bits = next_cell(&row->bits);
    uint64_t expected;
    if (next_cell(&row->outputs) == NULL || bits == NULL || !hexadecimal(bits, &expected) || expected != bits_of(x)) {
        row->differs = 1;
    }
}

/* A word came out: it must be the row's. */
static inline void say(struct row *row, const char *word) {
    const char *expected = next_cell(&row->outputs);
    next_cell(&row->bits);
    if (expected == NULL || strcmp(word, strcmp(expected, "\\x") == 0 ? "" : expected) != 0) {
        row->differs = 1;
    }
}

/* One number out, or a failure that must have left it alone. By pointer: it is read after the call. */
static inline void one(struct row *row, rko_status status, const double *x) {
    row->status = status;
    if (status == RKO_OK) {
        give(row, *x);
    } else {
        row->spoilt = bits_of(*x) != bits_of(UNTOUCHED);
    }
}

/* Asks the door; 0 if the function is none of this program's. */
static int call(struct row *row, const char *function);

/* Whether a row of this program's asks for what the C door words otherwise. */
static int worded_otherwise(const struct row *row, const char *function, const char *status);

static rko_status status_of(const char *text) {
    rko_status status = 0;
    for (; *text >= '0' && *text <= '9'; ++text) {
        status = 10 * status + (*text - '0');
    }
    return status;
}

static void differs(const char *path, long line, const char *function, rko_status status) {
    tell(path);
    tell(":");
    tell_number(line);
    tell(": not as the row says, status ");
    tell_number(status);
    tell(" given: ");
    tell(function);
    tell("\n");
}

static unsigned long run(const char *path, unsigned long *left_out) {
    static char line[LINE];
    unsigned long rows = 0;
    long place = 0;
    const int opened = rows_open(path);
    CHECK(opened);
    while (opened && rows_line(line, LINE)) {
        char *cells[COLUMNS];
        struct row row;
        size_t i;
        int held;
        ++place;
        /* A row that did not fit would otherwise count as two. */
        CHECK(strlen(line) < LINE - 1);
        line[strcspn(line, "\r\n")] = '\0';
        if (line[0] == '#' || line[0] == '\0' || strncmp(line, "function\t", 9) == 0) {
            continue;
        }
        CHECK(split(line, '\t', cells, COLUMNS) == COLUMNS);
        memset(&row, 0, sizeof row);
        row.ins = split(cells[1], '|', row.in, INPUTS);
        for (i = 0; i < row.ins; ++i) {
            row.value[i] = value_of(row.in[i]);
        }
        row.outputs = cells[2];
        row.bits = cells[3];
        if (worded_otherwise(&row, cells[0], cells[4])) {
            ++*left_out;
            continue;
        }
        if (!call(&row, cells[0])) {
            continue;
        }
        ++rows;
        /* All that the row says has come out, where it does not say a failure: a call of several steps may come upon that
           after some of them. Words alone have a single dash for their bits. */
        held = row.status == status_of(cells[4]) && !row.spoilt &&
               (row.status != RKO_OK || (!row.differs && row.outputs == NULL && row.bits == NULL));
        if (!held) {
            differs(path, place, cells[0], row.status);
        }
        CHECK(held);
    }
    if (opened) {
        rows_close();
    }
    return rows;
}

/* Runs every file; at least so many rows must be this program's, and no more than so many left out. */
static int run_all(int arguments, char **paths, const char *program, unsigned long least, unsigned long most_left_out) {
    unsigned long rows = 0, left_out = 0;
    int i;
    for (i = 1; i < arguments; ++i) {
        rows += run(paths[i], &left_out);
    }
    tell_number((long)rows);
    tell(" rows run; ");
    tell_number((long)left_out);
    tell(" rows that this door words otherwise\n");
    CHECK(rows >= least / RKO_TEST_EVERY);
    CHECK(left_out <= most_left_out);
    return checks_end(program);
}

#endif
