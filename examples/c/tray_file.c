#include "tray_file.h"

#include <stdlib.h>
#include <string.h>

static const char *const COLUMNS[TRAY_COLUMNS] = {"part",  "kind",  "code", "marking", "nominal", "tolerance", "lower",
                                                  "upper", "span", "shown", "leads",   "part_c",  "note"};

static int is_blank(char c) { return c == ' ' || c == '\t'; }

/* Takes blanks off both ends of a field. */
static const char *trimmed(char *start, char *end) {
    while (start < end && is_blank(*start)) {
        start++;
    }
    while (end > start && is_blank(end[-1])) {
        end--;
    }
    *end = '\0';
    return start;
}

/* Cuts a line in place at its commas; a field in double quotes may hold commas, and a quote doubled stands for one. */
static int cut(struct tray_line *line) {
    char *from = line->text;
    for (int column = 0;; column++) {
        char *start = from, *to = from;
        int quoted = 0;
        if (column == TRAY_COLUMNS) {
            return -1;
        }
        for (; *from != '\0' && (quoted || *from != ','); from++) {
            if (*from != '"') {
                *to++ = *from;
            } else if (quoted && from[1] == '"') {
                *to++ = *from++;
            } else {
                quoted = !quoted;
            }
        }
        int last = *from == '\0';
        from++;
        line->field[column] = trimmed(start, to);
        if (last) {
            return !quoted && column + 1 == TRAY_COLUMNS ? 0 : -1;
        }
    }
}

enum tray_answer tray_next(struct tray_file *file, struct tray_line *line) {
    while (fgets(line->text, sizeof line->text, file->stream) != NULL) {
        size_t length = strlen(line->text);
        line->number = ++file->read;
        if (length > 0 && line->text[length - 1] == '\n') {
            line->text[--length] = '\0';
        } else if (!feof(file->stream)) {
            int c;
            do { /* a line that is too long: leave its rest away */
                c = fgetc(file->stream);
            } while (c != '\n' && c != EOF);
            return TRAY_WRONG_LINE;
        }
        if (length > 0 && line->text[length - 1] == '\r') {
            line->text[--length] = '\0';
        }
        if (length == 0 || line->text[0] == '#') {
            continue;
        }
        return cut(line) == 0 ? TRAY_LINE : TRAY_WRONG_LINE;
    }
    return TRAY_END;
}

int tray_open(struct tray_file *file, const char *path) {
    struct tray_line header;
    file->read = 0;
    file->stream = fopen(path, "r");
    if (file->stream == NULL) {
        fprintf(stderr, "reading the tray %s: it cannot be opened\n", path);
        return -1;
    }
    if (tray_next(file, &header) == TRAY_LINE) {
        int column = 0;
        while (column < TRAY_COLUMNS && strcmp(header.field[column], COLUMNS[column]) == 0) {
            column++;
        }
        if (column == TRAY_COLUMNS) {
            return 0;
        }
    }
    fclose(file->stream);
    fprintf(stderr, "reading the tray %s: the columns must be", path);
    for (int column = 0; column < TRAY_COLUMNS; column++) {
        fprintf(stderr, "%c%s", column == 0 ? ' ' : ',', COLUMNS[column]);
    }
    fputc('\n', stderr);
    return -1;
}

int tray_number(const char *field, double *number) {
    char *end;
    if (*field == '\0') {
        return 0;
    }
    *number = strtod(field, &end);
    return *end == '\0' ? 1 : -1;
}

const char *tray_display_text(const char **list, size_t *length) {
    const char *start = *list, *end;
    if (start == NULL) {
        return NULL;
    }
    end = strchr(start, ';');
    *list = end == NULL ? NULL : end + 1;
    if (end == NULL) {
        end = start + strlen(start);
    }
    while (start < end && is_blank(*start)) {
        start++;
    }
    while (end > start && is_blank(end[-1])) {
        end--;
    }
    *length = (size_t)(end - start);
    return start;
}
