/* The tray file: one line a part, as written down at the bench. The file's head says what stands in each column. */

#ifndef TRAY_FILE_H
#define TRAY_FILE_H

#include <stdio.h>

enum tray_column {
    TRAY_PART,
    TRAY_KIND,
    TRAY_CODE,
    TRAY_MARKING,
    TRAY_NOMINAL,
    TRAY_TOLERANCE,
    TRAY_LOWER,
    TRAY_UPPER,
    TRAY_SPAN,
    TRAY_SHOWN,
    TRAY_LEADS,
    TRAY_PART_C,
    TRAY_NOTE,
    TRAY_COLUMNS
};

/* One line, cut into its fields: texts only, nothing of it is believed yet. */
struct tray_line {
    unsigned long number; /* in the file, counted from 1 */
    char text[512];
    const char *field[TRAY_COLUMNS];
};

struct tray_file {
    FILE *stream;
    unsigned long read; /* lines read so far */
};

enum tray_answer { TRAY_LINE, TRAY_END, TRAY_WRONG_LINE };

/* Opens the file and checks its header line. Answers 0, or -1 after a message on stderr. */
int tray_open(struct tray_file *file, const char *path);

/* Reads the next line that is neither a comment nor empty. A wrong line has its number and nothing else. */
enum tray_answer tray_next(struct tray_file *file, struct tray_line *line);

/* A number of a field: 1 if there is one, 0 if the field is empty, -1 if it holds something else. */
int tray_number(const char *field, double *number);

/* Cuts the next display text off a list separated by semicolons, without blanks around it: its start and its length, or
   null after the last one. `list` moves on. */
const char *tray_display_text(const char **list, size_t *length);

#endif
