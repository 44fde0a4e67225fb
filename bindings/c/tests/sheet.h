/* Shared by the tests of the build sheet. */
#ifndef SHEET_H
#define SHEET_H

#include "check.h"

/* Asks an entry for its text: first for the size, then into a buffer that is too small by one, then into one of that size. */
#define ASK(to, entry, ...)                                                                                  \
    do {                                                                                                     \
        size_t wanted_size = 0, untouched = 77;                                                              \
        STATUS(entry(__VA_ARGS__, NULL, 0, &wanted_size), AXW_OK);                                           \
        (to) = room(wanted_size);                                                                            \
        REFUSED(entry(__VA_ARGS__, (to), wanted_size - 1, &untouched), AXW_BUFFER, "buffer is too short");   \
        CHECK((to)[0] == '?' && untouched == 77);                                                            \
        STATUS(entry(__VA_ARGS__, (to), wanted_size, NULL), AXW_OK);                                         \
        CHECK(strlen(to) + 1 == wanted_size);                                                                \
    } while (0)

extern const char wagtail[];

char *room(size_t size);
axw_sheet *new_sheet(const char *text);
axw_assessment *assessed(const axw_sheet *sheet);
double value_of(const axw_assessment *assessment, const char *path);
size_t finding_of(const axw_assessment *assessment, const char *path);
double number(const axw_table *table, const char *name, size_t row);
const char *word(const axw_table *table, const char *name, size_t row);
int same_tables(const axw_table *one, size_t first, const axw_table *two);

typedef struct {
    size_t calls, stop_at, last;
} watch;

int32_t watching(size_t done, void *context);
axw_what_if *new_what_if(const axw_sheet *sheet);
axw_table *all_rows(const axw_what_if *of, size_t threads);
axw_price_list *new_list(void);

/* Parts of `test_sheet`, by what they ask. */
void test_what_if(void);
void test_choosing(void);
void test_first_sheet(void);

#endif
