/* The judged tray: a table for a person, and a file with every digit for a program. */

#ifndef REPORT_H
#define REPORT_H

#include "judged.h"

/* The table's head, and a row of it. */
void report_head(void);
void report_row(const struct tray_line *line, const struct judged *judged);

/* Opens the file with every digit and writes its head; null after a message on stderr. */
FILE *every_digit_open(const char *path);

/* Writes a line of the tray, a row a quantity: numbers as decimals of 17 figures and as the bits of the double. */
void every_digit_write(FILE *file, const struct tray_line *line, const struct judged *judged);

/* The words of an answer, a side, a next step. */
const char *answer_words(const struct judged *judged);

#endif
