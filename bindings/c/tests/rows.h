/* The vector files that all doors share, row by row: what the programs that run them have in common. A program says in
 * `call` which functions it knows; rows of other functions are left to the other programs. */

#ifndef RKO_TEST_ROWS_H
#define RKO_TEST_ROWS_H

#include <reckohm.h>
#include <stdlib.h>

#include "check.h"

enum { CELLS = 192, LINE = 8192 };
#define UNTOUCHED 12345.678

struct row {
    char *in[CELLS];
    size_t ins;
    /* What the door gave: numbers, or words where `word` is not null. */
    double number[CELLS];
    const char *word[CELLS];
    size_t outs;
    rko_status status;
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

static inline double number(const struct row *row, size_t place) {
    return place < row->ins ? strtod(row->in[place], NULL) : 0.0;
}

/* Whether there is an input at this place. */
static inline int given(const struct row *row, size_t place) {
    return place < row->ins && row->in[place][0] != '\0' && strcmp(row->in[place], "\\x") != 0;
}

/* The input at this place as the bytes that it stands for; gives how many. */
static inline size_t bytes(const struct row *row, size_t place, char *out) {
    const char *from = place < row->ins ? row->in[place] : "";
    size_t length = 0;
    while (*from != '\0') {
        if (from[0] == '\\' && from[1] == 'x' && from[2] != '\0') {
            char hex[3];
            hex[0] = from[2];
            hex[1] = from[3];
            hex[2] = '\0';
            out[length++] = (char)strtoul(hex, NULL, 16);
            from += 4;
        } else if (from[0] == '\\' && from[1] == 'x') {
            from += 2;
        } else {
            out[length++] = *from++;
        }
    }
    return length;
}

static inline const char *yes(int holds) {
    return holds ? "true" : "false";
}

static inline void give(struct row *row, double x) {
    row->word[row->outs] = NULL;
    row->number[row->outs++] = x;
}

static inline void say(struct row *row, const char *word) {
    row->word[row->outs++] = word;
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

/* Whether the door's outputs are the row's: bits for numbers, the text for words. */
static int same(const struct row *row, char *outputs, char *bits) {
    char *words[CELLS], *hex[CELLS];
    size_t i, count = split(outputs, '|', words, CELLS);
    if (split(bits, '|', hex, CELLS) != count && strcmp(bits, "-") != 0) {
        return 0;
    }
    if (row->outs != count) {
        return 0;
    }
    for (i = 0; i < count; ++i) {
        if (row->word[i] != NULL) {
            const char *expected = strcmp(words[i], "\\x") == 0 ? "" : words[i];
            if (strcmp(row->word[i], expected) != 0) {
                return 0;
            }
        } else if (strtoull(hex[i], NULL, 16) != bits_of(row->number[i])) {
            return 0;
        }
    }
    return 1;
}

static unsigned long run(const char *path, unsigned long *left_out) {
    static char line[LINE], kept[LINE];
    unsigned long rows = 0;
    FILE *file = fopen(path, "r");
    CHECK(file != NULL);
    if (file == NULL) {
        return 0;
    }
    while (fgets(line, LINE, file) != NULL) {
        char *cells[6];
        struct row row;
        int held;
        line[strcspn(line, "\r\n")] = '\0';
        if (line[0] == '#' || line[0] == '\0' || strncmp(line, "function\t", 9) == 0) {
            continue;
        }
        strcpy(kept, line);
        CHECK(split(line, '\t', cells, 6) == 6);
        memset(&row, 0, sizeof row);
        row.ins = split(cells[1], '|', row.in, CELLS);
        if (worded_otherwise(&row, cells[0], cells[4])) {
            ++*left_out;
            continue;
        }
        if (!call(&row, cells[0])) {
            continue;
        }
        ++rows;
        held = row.status == (rko_status)atoi(cells[4]) && !row.spoilt &&
               (row.status != RKO_OK || same(&row, cells[2], cells[3]));
        if (!held) {
            fprintf(stderr, "status %d given: %s\n", (int)row.status, kept);
        }
        CHECK(held);
    }
    fclose(file);
    return rows;
}

/* Runs every file; at least so many rows must be this program's, and no more than so many left out. */
static int run_all(int arguments, char **paths, const char *program, unsigned long least, unsigned long most_left_out) {
    unsigned long rows = 0, left_out = 0;
    int i;
    for (i = 1; i < arguments; ++i) {
        rows += run(paths[i], &left_out);
    }
    printf("%lu rows run; %lu rows that this door words otherwise\n", rows, left_out);
    CHECK(rows >= least);
    CHECK(left_out <= most_left_out);
    return checks_end(program);
}

#endif
