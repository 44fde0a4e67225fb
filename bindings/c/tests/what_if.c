/* Lines of a sheet over values. */
#include "sheet.h"

int32_t watching(size_t done, void *context)
{
    watch *of = (watch *)context;
    of->calls++;
    of->last = done;
    return of->calls == of->stop_at;
}

axw_what_if *new_what_if(const axw_sheet *sheet)
{
    axw_what_if *of = NULL;
    STATUS(axw_what_if_new(sheet, &of), AXW_OK);
    return of;
}

axw_table *all_rows(const axw_what_if *of, size_t threads)
{
    axw_table *table = NULL;
    size_t rows = 0;
    STATUS(axw_what_if_rows(of, &rows), AXW_OK);
    STATUS(axw_what_if_table(of, 0, rows, threads, NULL, NULL, &table), AXW_OK);
    CHECK(axw_table_rows(table) == rows);
    return table;
}

/* A long range takes no memory: its rows come piece by piece, and all of them at once are refused before they are allocated. */
static void long_range(void)
{
    axw_sheet *sheet = new_sheet(wagtail);
    axw_what_if *of = new_what_if(sheet);
    const size_t long_one = sizeof(size_t) > 4 ? (size_t)1000000000 * 1000000000 : 200000000;
    STATUS(axw_what_if_range(of, "front.sprung_mass", "280 kg", "300 kg", long_one), AXW_OK);
    STATUS(axw_what_if_output(of, "front.natural_frequency"), AXW_OK);
    axw_table *table = NULL;
    size_t rows = 0;
    STATUS(axw_what_if_rows(of, &rows), AXW_OK);
    CHECK(rows == long_one);
    REFUSED(axw_what_if_table(of, 0, rows, 1, NULL, NULL, &table), AXW_NO_SOLUTION,
            "one table at most 4 GiB: ask for its rows piece by piece");
    CHECK(table == NULL);
    STATUS(axw_what_if_table(of, rows - 2, 2, 1, NULL, NULL, &table), AXW_OK);
    SAME(number(table, "front.sprung_mass", 1), 300.0);
    CHECK(number(table, "front.natural_frequency", 1) > 0.0);
    axw_table_free(table);
    axw_what_if_free(of);
    axw_sheet_free(sheet);
}

/* A grid equals one assessment a row and the single functions, to the last bit. */
static void grid(void)
{
    axw_sheet *sheet = new_sheet(wagtail), *row_sheet = new_sheet(wagtail);
    axw_what_if *of = new_what_if(sheet);
    const char *rates[] = {"25 N/mm", "30 N/mm", "170 lbf/in"};
    STATUS(axw_what_if_texts(of, "front.spring.rate", rates, 3), AXW_OK);
    STATUS(axw_what_if_range(of, "front.sprung_mass", "280 kg", "300 kg", 5), AXW_OK);
    const char *outputs[] = {"front.natural_frequency", "front.frequency.margin", "front.frequency.verdict",
                             "front.frequency.value", "front.ride_rate"};
    for (size_t i = 0; i < 5; i++) {
        STATUS(axw_what_if_output(of, outputs[i]), AXW_OK);
    }
    axw_table *table = all_rows(of, 1);
    CHECK(axw_table_rows(table) == 15 && axw_table_columns(table) == 7);
    for (size_t row = 0; row < 15; row++) {
        char text[32];
        double mass = 280.0 + 5.0 * (double)(row % 5), margin = UNTOUCHED, wheel_rate = UNTOUCHED;
        int32_t verdict = -1;
        snprintf(text, sizeof text, "%g kg", mass);
        STATUS(axw_sheet_set(row_sheet, "front.sprung_mass", text), AXW_OK);
        STATUS(axw_sheet_set(row_sheet, "front.spring.rate", rates[row / 5]), AXW_OK);
        axw_assessment *one = assessed(row_sheet);
        STATUS(axw_assessment_answer(one, finding_of(one, "front.frequency"), &verdict, NULL, NULL, NULL, &margin,
                                     NULL, NULL),
               AXW_OK);
        SAME(number(table, "front.sprung_mass", row), mass);
        SAME(number(table, "front.spring.rate", row), value_of(one, "front.spring.rate"));
        SAME(number(table, "front.frequency.margin", row), margin);
        SAME(number(table, "front.natural_frequency", row), value_of(one, "front.natural_frequency"));
        SAME(number(table, "front.frequency.value", row), value_of(one, "front.natural_frequency"));
        SAME(number(table, "front.ride_rate", row), value_of(one, "front.ride_rate"));
        TEXT(word(table, "front.frequency.verdict", row), axw_verdict_word(verdict));
        STATUS(axw_spring_wheel_tangent_rate(value_of(one, "front.spring.rate"), 0.8,
                                             value_of(one, "front.spring.force"), 0.0, &wheel_rate),
               AXW_OK);
        double frequency = UNTOUCHED;
        STATUS(axw_spring_natural_frequency(wheel_rate, mass, &frequency), AXW_OK);
        SAME(number(table, "front.natural_frequency", row), frequency);
        axw_assessment_free(one);
    }

    /* A piece is the same rows. */
    axw_table *piece = NULL;
    STATUS(axw_what_if_table(of, 4, 7, 0, NULL, NULL, &piece), AXW_OK);
    CHECK(axw_table_rows(piece) == 7 && same_tables(table, 4, piece));
    axw_table_free(piece);
    STATUS(axw_what_if_table(of, 15, 0, 0, NULL, NULL, &piece), AXW_OK);
    CHECK(axw_table_rows(piece) == 0 && axw_table_columns(piece) == 7);
    axw_table_free(piece);
    piece = NULL;
    REFUSED(axw_what_if_table(of, 10, 6, 0, NULL, NULL, &piece), AXW_NO_SOLUTION, "rows 10 to 16 are asked of 15");
    REFUSED(axw_what_if_table(of, 1, SIZE_MAX, 0, NULL, NULL, &piece), AXW_NO_SOLUTION, "are asked of 15");
    REFUSED(axw_what_if_table(of, SIZE_MAX, 2, 0, NULL, NULL, &piece), AXW_NO_SOLUTION, "are asked of 15");
    REFUSED(axw_what_if_table(of, 0, 15, 0, NULL, NULL, NULL), AXW_NULL, "table is NULL");
    REFUSED(axw_what_if_table(NULL, 0, 15, 0, NULL, NULL, &piece), AXW_NULL, "what_if is NULL");
    CHECK(piece == NULL);

    /* The what-if keeps the sheet as it was; its tables outlive it. */
    STATUS(axw_sheet_set(sheet, "front.spring.motion_ratio", "0.5"), AXW_OK);
    axw_sheet_free(sheet);
    piece = all_rows(of, 1);
    CHECK(same_tables(table, 0, piece));
    axw_what_if_free(of);
    CHECK(same_tables(piece, 0, table));
    axw_table_free(piece);
    axw_table_free(table);
    axw_sheet_free(row_sheet);
}

/* Many rows: on any number of threads the same bits; a stop leaves nothing. */
static void sweeps(void)
{
    enum { MANY = 20000 };
    static double rates[MANY];
    for (int i = 0; i < MANY; i++) {
        rates[i] = 20e3 + i;
    }
    axw_sheet *sheet = new_sheet(wagtail);
    axw_what_if *of = new_what_if(sheet);
    STATUS(axw_what_if_numbers(of, "front.spring.rate", rates, MANY), AXW_OK);
    axw_table *one = all_rows(of, 1), *two = NULL;
    CHECK(axw_table_columns(one) > 60);
    for (size_t threads = 0; threads < 4; threads++) {
        two = all_rows(of, threads);
        CHECK(same_tables(one, 0, two));
        axw_table_free(two);
    }
    for (size_t threads = 1; threads < 3; threads++) {
        watch on = {0, 0, 0};
        two = NULL;
        STATUS(axw_what_if_table(of, 0, MANY, threads, watching, &on, &two), AXW_OK);
        CHECK(threads > 1 || (on.calls > 10 && on.last == MANY));
        CHECK(same_tables(one, 0, two));
        axw_table_free(two);
        /* Workers may be done before they are asked for; one thread asks after each piece. */
        watch stop = {0, 1, 0};
        two = NULL;
        int32_t status = axw_what_if_table(of, 0, MANY, threads, watching, &stop, &two);
        STATUS(status, stop.calls > 0 ? AXW_STOPPED : AXW_OK);
        CHECK((stop.calls > 0 || threads > 1) && stop.calls < 2 && (two == NULL) == (stop.calls > 0));
        axw_table_free(two);
    }
    two = NULL;
    watch later = {0, 5, 0};
    REFUSED(axw_what_if_table(of, 0, MANY, 1, watching, &later, &two), AXW_STOPPED, "stopped");
    CHECK(two == NULL && later.calls == 5 && later.last < MANY);
    axw_table_free(one);

    /* The default outputs: what is known in no row says what it needs. */
    char *text = NULL;
    ASK(text, axw_what_if_not_known, of);
    CHECK(strstr(text, "rear.frequency.margin: needs ") != NULL && strstr(text, "front.frequency") == NULL);
    free(text);
    axw_what_if_free(of);
    axw_sheet_free(sheet);
}

/* Axes side by side, entries of a catalogue, numbers that a line does not allow, and what is refused. */
static void axes(void)
{
    axw_sheet *sheet = new_sheet(wagtail);
    axw_what_if *of = new_what_if(sheet);
    const char *paths[] = {"front.spring.rate", "front.spring.motion_ratio"};
    const char *cells[] = {"25 N/mm", "0.85", "30 N/mm", "0.8", "35 N/mm", "0.75"};
    const double masses[] = {280.0, -1.0, 300.0};
    size_t rows = 77;
    STATUS(axw_what_if_entries(of, paths, 2, cells, 3), AXW_OK);
    STATUS(axw_what_if_numbers(of, "front.sprung_mass", masses, 3), AXW_OK);
    STATUS(axw_what_if_output(of, "front.natural_frequency"), AXW_OK);
    STATUS(axw_what_if_rows(of, &rows), AXW_OK);
    CHECK(rows == 9);
    STATUS(axw_what_if_side_by_side(of, true), AXW_OK);
    STATUS(axw_what_if_rows(of, &rows), AXW_OK);
    CHECK(rows == 3);
    axw_table *table = all_rows(of, 0);
    char *text = NULL;
    SAME(number(table, "front.spring.motion_ratio", 2), 0.75);
    SAME(number(table, "front.sprung_mass", 1), -1.0);
    CHECK(isnan(number(table, "front.natural_frequency", 1)));
    CHECK(number(table, "front.natural_frequency", 0) > 1.0 && number(table, "front.natural_frequency", 2) > 1.0);
    ASK(text, axw_table_reason, table, 1);
    CHECK(strstr(text, "front.sprung_mass: -1 kg (-2.205 lb) is outside its range") != NULL);
    free(text);
    ASK(text, axw_table_reason, table, 0);
    TEXT(text, "");
    free(text);
    axw_table_free(table);
    STATUS(axw_what_if_side_by_side(of, false), AXW_OK);
    STATUS(axw_what_if_rows(of, &rows), AXW_OK);
    CHECK(rows == 9);

    /* Refused at once, and the what-if is as it was. */
    const char *units[] = {"25 N/mm", "25 N/mmm"}, *gap[] = {"25 N/mm", NULL}, *odd[] = {"\xff"};
    REFUSED(axw_what_if_texts(of, "front.tyre.rate", units, 2), AXW_DOCUMENT, "front.tyre.rate: ");
    REFUSED(axw_what_if_texts(of, "front.tyre.rate", gap, 2), AXW_NULL, "values[1] is NULL");
    REFUSED(axw_what_if_texts(of, "front.tyre.rate", odd, 1), AXW_UTF8, "values[0] is not UTF-8");
    REFUSED(axw_what_if_texts(of, "front.tyre.rate", NULL, 2), AXW_NULL, "values is NULL");
    REFUSED(axw_what_if_texts(of, "front.tyre.rat", units, 1), AXW_DOCUMENT, "`rate`");
    REFUSED(axw_what_if_texts(NULL, "front.tyre.rate", units, 1), AXW_NULL, "what_if is NULL");
    REFUSED(axw_what_if_numbers(of, "front.tyre.rate", NULL, 2), AXW_NULL, "values is NULL");
    REFUSED(axw_what_if_numbers(of, "front.tyre.size", masses, 3), AXW_DOCUMENT, "takes text, not numbers");
    REFUSED(axw_what_if_numbers(of, NULL, masses, 3), AXW_NULL, "path is NULL");
    REFUSED(axw_what_if_range(of, "front.tyre.rate", "1 N/mm", "2 N/mm", 1), AXW_LENGTH, "at least two");
    REFUSED(axw_what_if_range(of, "front.tyre.rate", "1 N/mm", NULL, 3), AXW_NULL, "to is NULL");
    REFUSED(axw_what_if_range(of, "front.tyre.rate", "1 N/mm", "2 Hz", 3), AXW_DOCUMENT, "front.tyre.rate: ");
    REFUSED(axw_what_if_entries(of, paths, 0, cells, 3), AXW_LENGTH, "at least one line");
    REFUSED(axw_what_if_entries(of, paths, 2, NULL, 3), AXW_NULL, "cells is NULL");
    REFUSED(axw_what_if_entries(of, paths, 2, cells, SIZE_MAX / 2), AXW_LENGTH, "no memory is large enough");
    REFUSED(axw_what_if_output(of, "front.frequency.margn"), AXW_DOCUMENT, "`front.frequency.margin`");
    REFUSED(axw_what_if_output(of, NULL), AXW_NULL, "path is NULL");
    REFUSED(axw_what_if_output(NULL, "front.frequency.margin"), AXW_NULL, "what_if is NULL");
    REFUSED(axw_what_if_side_by_side(NULL, true), AXW_NULL, "what_if is NULL");
    REFUSED(axw_what_if_rows(NULL, &rows), AXW_NULL, "what_if is NULL");
    REFUSED(axw_what_if_not_known(NULL, NULL, 0, &rows), AXW_NULL, "what_if is NULL");
    REFUSED(axw_what_if_dropped(NULL, NULL, 0, &rows), AXW_NULL, "what_if is NULL");
    REFUSED(axw_what_if_new(NULL, &of), AXW_NULL, "sheet is NULL");
    REFUSED(axw_what_if_new(sheet, NULL), AXW_NULL, "what_if is NULL");
    STATUS(axw_what_if_rows(of, &rows), AXW_OK);
    CHECK(rows == 9);

    /* An axis without values has no rows, and that is no fault. */
    axw_what_if *none = new_what_if(sheet);
    STATUS(axw_what_if_texts(none, "front.tyre.rate", NULL, 0), AXW_OK);
    STATUS(axw_what_if_numbers(none, "front.sprung_mass", masses, 3), AXW_OK);
    table = all_rows(none, 0);
    CHECK(axw_table_rows(table) == 0 && axw_table_columns(table) > 60);
    axw_table_free(table);
    table = NULL;
    axw_what_if_free(none);

    /* Refused together. */
    STATUS(axw_what_if_texts(of, "front.spring.rate", cells, 1), AXW_OK);
    rows = 77;
    REFUSED(axw_what_if_rows(of, &rows), AXW_DOCUMENT, "front.spring.rate: two axes change this line");
    REFUSED(axw_what_if_table(of, 0, 1, 0, NULL, NULL, &table), AXW_DOCUMENT, "two axes");
    CHECK(rows == 77);
    axw_what_if_free(of);
    of = new_what_if(sheet);
    STATUS(axw_what_if_texts(of, "front.spring.rate", cells, 1), AXW_OK);
    STATUS(axw_what_if_numbers(of, "front.sprung_mass", masses, 3), AXW_OK);
    STATUS(axw_what_if_side_by_side(of, true), AXW_OK);
    REFUSED(axw_what_if_rows(of, &rows), AXW_DOCUMENT, "1 values beside 3");
    axw_what_if_free(of);
    axw_sheet_free(sheet);
}

void test_what_if(void)
{
    axw_what_if_free(NULL);
    grid();
    long_range();
    sweeps();
    axes();
}
