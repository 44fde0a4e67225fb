/* The build sheet: assessment, what-if and choice. */
#include "check.h"

#include <pthread.h>

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

static char *room(size_t size)
{
    char *text = (char *)malloc(size > 0 ? size : 1);
    if (text == NULL) {
        exit(EXIT_FAILURE);
    }
    text[0] = '?';
    return text;
}

/* The Wagtail's front as far as it was measured; every figure is invented. */
static const char wagtail[] = "version = 1\n"
                              "name = \"Wagtail\"\n"
                              "[front]\n"
                              "sprung_mass = \"290 kg +/- 4 kg\"\n"
                              "[front.spring]\n"
                              "rate = \"30 N/mm +/- 3 %\"\n"
                              "motion_ratio = \"0.8 +/- 0.01\"\n"
                              "free_length = \"300 mm\"\n"
                              "[front.tyre]\n"
                              "rate = \"180 N/mm\"\n"
                              "[front.wanted]\n"
                              "frequency_low = \"1.2 Hz\"\n"
                              "frequency_high = \"1.8 Hz\"\n"
                              "[engine]\n"
                              "stroke = \"86 mm\"\n"
                              "red_line = \"6500 rpm\"\n"
                              "piston_speed_limit = \"18 m/s\"\n";

static axw_sheet *new_sheet(const char *text)
{
    axw_sheet *sheet = NULL;
    STATUS(axw_sheet_new(text, &sheet), AXW_OK);
    return sheet;
}

static axw_assessment *assessed(const axw_sheet *sheet)
{
    axw_assessment *assessment = NULL;
    STATUS(axw_assessment_new(sheet, &assessment), AXW_OK);
    return assessment;
}

static double value_of(const axw_assessment *assessment, const char *path)
{
    double si = UNTOUCHED;
    STATUS(axw_assessment_value(assessment, path, &si), AXW_OK);
    return si;
}

static size_t finding_of(const axw_assessment *assessment, const char *path)
{
    size_t finding = SIZE_MAX;
    STATUS(axw_assessment_find(assessment, path, &finding), AXW_OK);
    return finding;
}

static double number(const axw_table *table, const char *name, size_t row)
{
    size_t column = SIZE_MAX, length = 0;
    const double *values = NULL;
    STATUS(axw_table_find(table, name, &column), AXW_OK);
    STATUS(axw_table_f64(table, column, &values, &length), AXW_OK);
    CHECK(row < length);
    return row < length ? values[row] : UNTOUCHED;
}

static const char *word(const axw_table *table, const char *name, size_t row)
{
    size_t column = SIZE_MAX, length = 0;
    const int32_t *codes = NULL;
    const char *label = "?";
    STATUS(axw_table_find(table, name, &column), AXW_OK);
    STATUS(axw_table_codes(table, column, &codes, &length, NULL), AXW_OK);
    CHECK(row < length);
    if (row < length) {
        STATUS(axw_table_label(table, column, codes[row], &label), AXW_OK);
    }
    return label;
}

/* Every number and code of two tables, to the last bit. */
static int same_tables(const axw_table *one, size_t first, const axw_table *two)
{
    size_t columns = axw_table_columns(two), rows = axw_table_rows(two);
    if (axw_table_columns(one) != columns || axw_table_rows(one) < first + rows) {
        return 0;
    }
    for (size_t column = 0; column < columns; column++) {
        const double *a = NULL, *b = NULL;
        const int32_t *c = NULL, *d = NULL;
        int32_t type = -1;
        axw_table_column(one, column, NULL, NULL, NULL, &type);
        if (type == AXW_COLUMN_F64) {
            axw_table_f64(one, column, &a, NULL);
            axw_table_f64(two, column, &b, NULL);
            if (a == NULL || b == NULL || memcmp(a + first, b, rows * sizeof *b) != 0) {
                return 0;
            }
        } else {
            axw_table_codes(one, column, &c, NULL, NULL);
            axw_table_codes(two, column, &d, NULL, NULL);
            if (c == NULL || d == NULL || memcmp(c + first, d, rows * sizeof *d) != 0) {
                return 0;
            }
        }
    }
    return 1;
}

static void documents(void)
{
    axw_sheet *sheet = new_sheet(wagtail), *again = NULL;
    char *toml = NULL, *json = NULL, *hash = NULL, *other = NULL;
    ASK(toml, axw_sheet_toml, sheet);
    ASK(json, axw_sheet_json, sheet);
    ASK(hash, axw_sheet_hash, sheet);
    CHECK(strlen(hash) == 32 && strspn(hash, "0123456789abcdef") == 32);
    CHECK(strstr(toml, "[front.spring]\n") != NULL && strstr(toml, "rate = \"30 N/mm +/- 3 %\"\n") != NULL);
    const char *texts[] = {toml, json};
    for (size_t i = 0; i < 2; i++) {
        again = new_sheet(texts[i]);
        ASK(other, axw_sheet_toml, again);
        TEXT(other, toml);
        free(other);
        ASK(other, axw_sheet_json, again);
        TEXT(other, json);
        free(other);
        ASK(other, axw_sheet_hash, again);
        TEXT(other, hash);
        free(other);
        axw_sheet_free(again);
    }

    ASK(other, axw_sheet_get, sheet, "front.spring.rate");
    TEXT(other, "30 N/mm +/- 3 %");
    free(other);
    size_t needed = 77;
    REFUSED(axw_sheet_get(sheet, "rear.spring.rate", NULL, 0, &needed), AXW_NOT_THERE,
            "rear.spring.rate is not written");
    REFUSED(axw_sheet_get(sheet, "front.sprnig.rate", NULL, 0, &needed), AXW_DOCUMENT, "`front.spring.rate`");
    REFUSED(axw_sheet_get(sheet, NULL, NULL, 0, &needed), AXW_NULL, "path is NULL");
    REFUSED(axw_sheet_get(NULL, "front.spring.rate", NULL, 0, &needed), AXW_NULL, "sheet is NULL");
    CHECK(needed == 77);

    /* What is refused changes nothing. */
    REFUSED(axw_sheet_set(sheet, "front.spring.rate", "30 N/mmm"), AXW_DOCUMENT, "front.spring.rate: ");
    REFUSED(axw_sheet_set(sheet, "front.spring.rate", "-30 N/mm"), AXW_DOCUMENT, "outside its range; valid: ");
    REFUSED(axw_sheet_set(sheet, "front.wheel_rat", "30 N/mm"), AXW_DOCUMENT, "`wheel_rate`");
    REFUSED(axw_sheet_set(sheet, "front.natural_frequency", "1 Hz"), AXW_DOCUMENT, "is never written");
    REFUSED(axw_sheet_set(sheet, "\xff", "1 Hz"), AXW_UTF8, "path is not UTF-8");
    REFUSED(axw_sheet_set(sheet, "front.spring.rate", NULL), AXW_NULL, "text is NULL");
    REFUSED(axw_sheet_set(NULL, "front.spring.rate", "30 N/mm"), AXW_NULL, "sheet is NULL");
    REFUSED(axw_sheet_remove(sheet, "front.spring.raet"), AXW_DOCUMENT, "`rate`");
    REFUSED(axw_sheet_remove(NULL, "front.spring.rate"), AXW_NULL, "sheet is NULL");
    STATUS(axw_sheet_remove(sheet, "rear.spring.rate"), AXW_OK);
    ASK(other, axw_sheet_hash, sheet);
    TEXT(other, hash);
    free(other);
    STATUS(axw_sheet_set(sheet, "rear.spring.rate", "200 lbf/in"), AXW_OK);
    ASK(other, axw_sheet_hash, sheet);
    CHECK(strcmp(other, hash) != 0);
    free(other);
    STATUS(axw_sheet_remove(sheet, "rear.spring.rate"), AXW_OK);
    ASK(other, axw_sheet_hash, sheet);
    TEXT(other, hash);
    free(other);

    /* A fault is named by its line and its key, and there is no sheet. */
    static const struct {
        const char *text;
        int32_t status;
        const char *words;
    } faults[] = {
        {"version = 1\n[front.spring]\nrate = \"225 lbf/inn\"\n", AXW_DOCUMENT, "line 3, column 8: front.spring.rate: "},
        {"version = 1\n[front.spring]\nrat = \"225 lbf/in\"\n", AXW_DOCUMENT,
         "line 3, column 1: front.spring.rat: there is no key `rat`; did you mean `rate`?"},
        {"version = 1\n\n[front.spring]\nrate = 225\n", AXW_DOCUMENT, "line 4, column 8: front.spring.rate: 225 has no unit"},
        {"{\"version\": 1,\n\"front\": {\"spring\":\n{\"rate\": \"0 N/mm\"}}}", AXW_DOCUMENT,
         "line 3, column 10: front.spring.rate: 0 N/mm is outside its range"},
        {"version = 2\n", AXW_DOCUMENT, "line 1, column 11: version: this library reads version 1"},
        {"version = 1\nname = \n", AXW_DOCUMENT, "line 2, column "},
        {"{\"version\": 1,\n", AXW_DOCUMENT, "line "},
        {"wagtail.toml", AXW_DOCUMENT, "looks like a file name"},
        {"name = \"\xff\"", AXW_UTF8, "text is not UTF-8"},
        {NULL, AXW_NULL, "text is NULL"},
    };
    axw_sheet *untouched = sheet;
    for (size_t i = 0; i < sizeof faults / sizeof faults[0]; i++) {
        REFUSED(axw_sheet_new(faults[i].text, &untouched), faults[i].status, faults[i].words);
        CHECK(untouched == sheet);
    }
    REFUSED(axw_sheet_new(wagtail, NULL), AXW_NULL, "sheet is NULL");
    free(toml);
    free(json);
    free(hash);
    axw_sheet_free(sheet);
}

/* The findings follow from the single functions, to the last bit. */
static void assessment_of_a_sheet(void)
{
    axw_sheet *sheet = new_sheet(wagtail);
    axw_assessment *of = assessed(sheet), *other = NULL;
    double rate = 0, force = value_of(of, "front.spring.force"), mass = 290.0, wanted = UNTOUCHED;
    double stroke = 0, red_line = 0, limit = 0;
    STATUS(axw_text_read("30 N/mm", "linear stiffness", &rate), AXW_OK);
    STATUS(axw_text_read("86 mm", "length", &stroke), AXW_OK);
    STATUS(axw_text_read("6500 rpm", "angular velocity", &red_line), AXW_OK);
    STATUS(axw_text_read("18 m/s", "velocity", &limit), AXW_OK);

    double wheel_rate = UNTOUCHED, frequency = UNTOUCHED, ride = UNTOUCHED;
    STATUS(axw_spring_wheel_tangent_rate(rate, 0.8, force, 0.0, &wheel_rate), AXW_OK);
    STATUS(axw_spring_natural_frequency(wheel_rate, mass, &frequency), AXW_OK);
    STATUS(axw_spring_ride_rate(wheel_rate, 180e3, &ride), AXW_OK);
    NEAR(force, 290.0 * 9.80665 / 0.8, 1e-14); /* of one corner */
    SAME(value_of(of, "front.wheel_rate"), wheel_rate);
    SAME(value_of(of, "front.ride_rate"), ride);
    SAME(value_of(of, "front.natural_frequency"), frequency);
    CHECK(isnan(value_of(of, "rear.natural_frequency")));

    double value = UNTOUCHED, low = UNTOUCHED, high = UNTOUCHED, margin = UNTOUCHED, spread = UNTOUCHED;
    int32_t verdict = -1, graded = -2;
    size_t band = finding_of(of, "front.frequency");
    STATUS(axw_assessment_answer(of, band, &verdict, &value, &low, &high, &margin, &wanted, &spread), AXW_OK);
    SAME(value, frequency);
    SAME(low, 1.2);
    SAME(high, 1.8);
    SAME(margin, fmin(frequency - 1.2, 1.8 - frequency));
    SAME(wanted, 0.0);
    STATUS(axw_verdict_of_place(value, low, high, wanted, &graded), AXW_OK);
    CHECK(verdict == graded);
    /* To first order: f goes as the root of rate over mass, and as the ratio (JCGM 100:2008, equation 10). */
    double share = sqrt(pow(0.03 / 2.0, 2) + pow(0.01 / 0.8, 2) + pow(4.0 / 290.0 / 2.0, 2)) / sqrt(3.0);
    NEAR(spread, frequency * share, 1e-3);

    size_t pistons = finding_of(of, "engine.pistons");
    STATUS(axw_engine_mean_piston_speed(stroke, red_line, &value), AXW_OK);
    STATUS(axw_assessment_answer(of, pistons, &verdict, &wanted, &low, &high, &margin, NULL, &spread), AXW_OK);
    SAME(wanted, value);
    SAME(high, limit);
    CHECK(isnan(low));
    SAME(margin, limit - value);
    SAME(spread, 0.0);
    CHECK(verdict == AXW_VERDICT_SHORT);
    STATUS(axw_assessment_answer(of, pistons, NULL, NULL, NULL, NULL, NULL, NULL, NULL), AXW_OK);
    int32_t severity = -1;
    STATUS(axw_assessment_severity(of, &severity), AXW_OK);
    CHECK(severity == 2);

    const char *path = NULL, *system = NULL, *question = NULL, *caution = NULL;
    const char *quantity = NULL, *unit = NULL, *form = NULL, *margin_quantity = NULL, *margin_unit = NULL;
    STATUS(axw_assessment_finding(of, pistons, &path, &system, &question, &caution), AXW_OK);
    TEXT(path, "engine.pistons");
    TEXT(system, "engine");
    TEXT(question, "Do the pistons stay below the speed that they are built for?");
    TEXT(caution, "");
    STATUS(axw_assessment_units(of, pistons, &quantity, &unit, &form, &margin_quantity, &margin_unit), AXW_OK);
    TEXT(quantity, "Velocity");
    TEXT(unit, "m/s");
    TEXT(form, "difference");
    TEXT(margin_quantity, "Velocity");
    TEXT(margin_unit, "m/s");
    size_t boiling = finding_of(of, "coolant.boiling");
    STATUS(axw_assessment_units(of, boiling, &quantity, &unit, NULL, &margin_quantity, &margin_unit), AXW_OK);
    TEXT(quantity, "Temperature");
    TEXT(margin_quantity, "TemperatureDifference");
    STATUS(axw_assessment_finding(of, boiling, NULL, NULL, NULL, &caution), AXW_OK);
    CHECK(strstr(caution, "coolant scalds") != NULL);

    /* Every finding has its name and its place, and is known or says what it lacks. */
    size_t count = axw_assessment_findings(of), known = 0;
    CHECK(count > 30);
    char *text = NULL;
    for (size_t i = 0; i < count; i++) {
        STATUS(axw_assessment_finding(of, i, &path, NULL, &question, NULL), AXW_OK);
        CHECK(finding_of(of, path) == i);
        STATUS(axw_assessment_answer(of, i, &verdict, NULL, NULL, NULL, &margin, NULL, NULL), AXW_OK);
        CHECK((verdict == AXW_VERDICT_NOT_KNOWN) == (isnan(margin) != 0));
        ASK(text, axw_assessment_missing, of, i);
        CHECK((*text != '\0') == (verdict == AXW_VERDICT_NOT_KNOWN));
        free(text);
        known += verdict != AXW_VERDICT_NOT_KNOWN;
    }
    CHECK(known == 2);
    ASK(text, axw_assessment_missing, of, finding_of(of, "rear.frequency"));
    CHECK(strstr(text, "needs rear.") != NULL && strstr(text, " to answer \"") != NULL);
    free(text);
    ASK(text, axw_assessment_rests_on, of, pistons);
    TEXT(text, "engine.stroke\nengine.red_line\nengine.piston_speed_limit\nwanted.piston_speed\n");
    free(text);
    ASK(text, axw_assessment_work, of, pistons, AXW_US);
    CHECK(strstr(text, "engine.mean_piston_speed") != NULL && strstr(text, "86 mm") != NULL);
    free(text);

    char *with = NULL, *hash = NULL;
    ASK(text, axw_assessment_text, of, AXW_METRIC, false);
    ASK(with, axw_assessment_text, of, AXW_METRIC, true);
    CHECK(strstr(text, "SHORT  engine.pistons\n") != NULL && strstr(text, "\nNOT KNOWN\n") != NULL);
    CHECK(strstr(text, "mean_piston_speed") == NULL && strstr(with, "mean_piston_speed") != NULL);
    free(with);
    free(text);
    ASK(text, axw_assessment_json, of);
    ASK(hash, axw_sheet_hash, sheet);
    CHECK(strstr(text, "\"finding\":\"engine.pistons\"") != NULL && strstr(text, hash) != NULL);
    free(hash);
    free(text);

    /* Side by side with another sheet; the first does not see what became of its sheet. */
    STATUS(axw_sheet_set(sheet, "engine.red_line", "6000 rpm"), AXW_OK);
    other = assessed(sheet);
    ASK(text, axw_assessment_compare, of, other, AXW_METRIC);
    CHECK(strstr(text, "engine.pistons\n") != NULL && strstr(text, ": short\n") != NULL);
    CHECK(strstr(text, ": meets\n") != NULL && strstr(text, "front.frequency\n") == NULL);
    free(text);
    axw_assessment_free(other);

    /* Sensitivity and chances. */
    axw_table *table = NULL;
    STATUS(axw_assessment_sensitivity(of, band, &table), AXW_OK);
    CHECK(axw_table_rows(table) == 3 && axw_table_columns(table) == 5);
    TEXT(word(table, "line", 0), "front.spring.rate");
    TEXT(word(table, "unit", 0), "N/m");
    NEAR(number(table, "tolerance", 0), 900.0, 1e-12);
    NEAR(number(table, "change", 0), frequency * 0.03 / 2.0, 1e-3);
    NEAR(number(table, "share", 0) + number(table, "share", 1) + number(table, "share", 2), 1.0, 1e-12);
    CHECK(number(table, "share", 0) > number(table, "share", 1));
    axw_table_free(table);
    axw_table *same = NULL;
    STATUS(axw_assessment_chances(of, 3000, 7, &table), AXW_OK);
    STATUS(axw_assessment_chances(of, 3000, 7, &same), AXW_OK);
    CHECK(axw_table_rows(table) == count);
    TEXT(word(table, "finding", pistons), "engine.pistons");
    TEXT(word(table, "verdict", pistons), "short");
    TEXT(word(table, "unit", band), "Hz");
    SAME(number(table, "turns", pistons), 0.0);
    SAME(number(table, "short", pistons), 1.0);
    SAME(number(table, "meets", band) + number(table, "tight", band) + number(table, "short", band) +
             number(table, "not_known", band),
         1.0);
    NEAR(number(table, "mean", pistons), margin = limit - value, 1e-12);
    NEAR(number(table, "deviation", band), frequency * share, 0.05);
    CHECK(same_tables(table, 0, same));
    axw_table_free(same);
    axw_table_free(table);

    /* What the vehicle lacks is not asked, and what says so is named. */
    axw_sheet *told = NULL;
    axw_assessment *on = NULL;
    STATUS(axw_sheet_new("front.suspension = \"strut\"\nrear.leaf = \"none\"", &told), AXW_OK);
    STATUS(axw_assessment_new(told, &on), AXW_OK);
    const char *const apart[][2] = {{"front.wind_up", "front.suspension\n"}, {"rear.wind_up", "rear.leaf\n"}};
    for (size_t i = 0; i < 2; i++) {
        size_t at = finding_of(on, apart[i][0]);
        STATUS(axw_assessment_answer(on, at, &verdict, &value, NULL, NULL, &margin, NULL, NULL), AXW_OK);
        CHECK(verdict == AXW_VERDICT_DOES_NOT_APPLY && isnan(value) && isnan(margin));
        ASK(text, axw_assessment_rests_on, on, at);
        TEXT(text, apart[i][1]);
        free(text);
        ASK(text, axw_assessment_missing, on, at);
        TEXT(text, "");
        free(text);
        STATUS(axw_assessment_chances(on, 10, 1, &table), AXW_OK);
        SAME(number(table, "does_not_apply", at), 1.0);
        axw_table_free(table);
    }
    axw_assessment_free(on);
    axw_sheet_free(told);

    /* Refused. */
    table = NULL;
    size_t place = 77;
    double si = UNTOUCHED;
    verdict = -1;
    REFUSED(axw_assessment_find(of, "engine.piston", &place), AXW_NOT_THERE, "there is no finding \"engine.piston\"");
    REFUSED(axw_assessment_find(of, NULL, &place), AXW_NULL, "path is NULL");
    REFUSED(axw_assessment_find(NULL, "engine.pistons", &place), AXW_NULL, "assessment is NULL");
    REFUSED(axw_assessment_answer(of, count, &verdict, &si, NULL, NULL, NULL, NULL, NULL), AXW_NOT_THERE,
            "is not there: there are ");
    REFUSED(axw_assessment_answer(NULL, 0, &verdict, &si, NULL, NULL, NULL, NULL, NULL), AXW_NULL, "assessment");
    REFUSED(axw_assessment_finding(of, SIZE_MAX, &path, NULL, NULL, NULL), AXW_NOT_THERE, "finding = ");
    REFUSED(axw_assessment_finding(NULL, 0, &path, NULL, NULL, NULL), AXW_NULL, "assessment is NULL");
    REFUSED(axw_assessment_units(of, count, &unit, NULL, NULL, NULL, NULL), AXW_NOT_THERE, "finding = ");
    REFUSED(axw_assessment_units(NULL, 0, &unit, NULL, NULL, NULL, NULL), AXW_NULL, "assessment is NULL");
    REFUSED(axw_assessment_missing(of, count, NULL, 0, &place), AXW_NOT_THERE, "finding = ");
    REFUSED(axw_assessment_rests_on(of, count, NULL, 0, &place), AXW_NOT_THERE, "finding = ");
    REFUSED(axw_assessment_work(of, count, AXW_US, NULL, 0, &place), AXW_NOT_THERE, "finding = ");
    REFUSED(axw_assessment_work(of, 0, 7, NULL, 0, &place), AXW_NOT_THERE, "system = 7");
    REFUSED(axw_assessment_text(of, -1, false, NULL, 0, &place), AXW_NOT_THERE, "system = -1");
    REFUSED(axw_assessment_compare(of, NULL, AXW_US, NULL, 0, &place), AXW_NULL, "other is NULL");
    REFUSED(axw_assessment_value(of, "front.natural_frequencies", &si), AXW_DOCUMENT, "`front.natural_frequency`");
    REFUSED(axw_assessment_value(of, NULL, &si), AXW_NULL, "path is NULL");
    REFUSED(axw_assessment_sensitivity(of, count, &table), AXW_NOT_THERE, "finding = ");
    REFUSED(axw_assessment_sensitivity(of, 0, NULL), AXW_NULL, "table is NULL");
    REFUSED(axw_assessment_chances(of, 0, 7, &table), AXW_LENGTH, "at least one sample");
    REFUSED(axw_assessment_severity(NULL, &severity), AXW_NULL, "assessment is NULL");
    REFUSED(axw_assessment_json(NULL, NULL, 0, &place), AXW_NULL, "assessment is NULL");
    REFUSED(axw_assessment_new(NULL, &other), AXW_NULL, "sheet is NULL");
    REFUSED(axw_assessment_new(sheet, NULL), AXW_NULL, "assessment is NULL");
    CHECK(axw_assessment_findings(NULL) == 0);
    CHECK(table == NULL && place == 77 && same_bits(si, UNTOUCHED) && verdict == -1);
    axw_assessment_free(of);
    axw_sheet_free(sheet);
}

/* A name with a NUL in it does not end a report early. */
static void nul_in_a_name(void)
{
    axw_sheet *sheet = new_sheet("{\"version\": 1, \"name\": \"Wag\\u0000tail\"}");
    axw_assessment *of = assessed(sheet);
    char *text = NULL;
    ASK(text, axw_assessment_text, of, AXW_US, false);
    CHECK(strncmp(text, "Wag tail\n", 9) == 0);
    free(text);
    ASK(text, axw_assessment_compare, of, of, AXW_US);
    CHECK(strncmp(text, "Wag tail | Wag tail\n", 20) == 0);
    free(text);
    ASK(text, axw_sheet_toml, sheet);
    CHECK(strstr(text, "Wag\\u0000tail") != NULL);
    free(text);
    axw_assessment_free(of);
    axw_sheet_free(sheet);
}

typedef struct {
    size_t calls, stop_at, last;
} watch;

static int32_t watching(size_t done, void *context)
{
    watch *of = (watch *)context;
    of->calls++;
    of->last = done;
    return of->calls == of->stop_at;
}

static axw_what_if *new_what_if(const axw_sheet *sheet)
{
    axw_what_if *of = NULL;
    STATUS(axw_what_if_new(sheet, &of), AXW_OK);
    return of;
}

static axw_table *all_rows(const axw_what_if *of, size_t threads)
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

static const char prices_csv[] = "part,kind,cost,mass,front.spring.rate,front.tyre.rate\n"
                                 "soft,spring,90,4.2 kg,22 N/mm,\n"
                                 "middle,spring,100,4.5 kg,30 N/mm,\n"
                                 "light,spring,180,2.5 kg,32 N/mm,\n"
                                 "hard,spring,95,5 kg,60 N/mm,\n"
                                 "narrow,tyre,300,16 kg,,160 N/mm\n"
                                 "wide,tyre,280,19 kg,,240 N/mm\n"
                                 "slick,tyre,520,13 kg,,280 N/mm\n";

static const char prices_toml[] =
    "[[parts]]\npart = \"soft\"\nkind = \"spring\"\ncost = 90\nmass = \"4.2 kg\"\nfront.spring.rate = \"22 N/mm\"\n"
    "[[parts]]\npart = \"middle\"\nkind = \"spring\"\ncost = 100\nmass = \"4.5 kg\"\nfront.spring.rate = \"30 N/mm\"\n";

static axw_price_list *new_list(void)
{
    axw_price_list *list = NULL;
    STATUS(axw_price_list_csv(prices_csv, &list), AXW_OK);
    CHECK(axw_price_list_parts(list) == 7);
    return list;
}

/* What is chosen is what trying every combination finds. */
static void choosing(void)
{
    static const char *const springs[] = {"22 N/mm", "30 N/mm", "32 N/mm", "60 N/mm"};
    static const char *const tyres[] = {"160 N/mm", "240 N/mm", "280 N/mm"};
    static const char *const names[] = {"soft", "middle", "light", "hard", "narrow", "wide", "slick"};
    static const double cost[] = {90, 100, 180, 95, 300, 280, 520}, mass[] = {4.2, 4.5, 2.5, 5, 16, 19, 13};
    const char *requirements[] = {"1.25 Hz <= front.ride_frequency <= 1.45 Hz", "front.frequency.verdict = meets",
                                  "cost <= 690", "mass <= 24 kg"};
    axw_sheet *sheet = new_sheet(wagtail), *tried = new_sheet(wagtail);
    axw_price_list *list = new_list();
    axw_chosen *chosen = NULL;
    STATUS(axw_choose(sheet, list, requirements, 4, 100, NULL, NULL, &chosen), AXW_OK);
    axw_price_list_free(list); /* the choice lives on */

    axw_table *feasible = NULL, *front = NULL, *rejected = NULL;
    bool more = true;
    STATUS(axw_chosen_feasible(chosen, &feasible, &more), AXW_OK);
    STATUS(axw_chosen_front(chosen, &front), AXW_OK);
    STATUS(axw_chosen_rejected(chosen, &rejected), AXW_OK);
    CHECK(!more);
    size_t found = 0, stands[7] = {0};
    double cheapest = INFINITY, lightest = INFINITY;
    for (size_t spring = 0; spring < 4; spring++) {
        for (size_t tyre = 0; tyre < 3; tyre++) {
            STATUS(axw_sheet_set(tried, "front.spring.rate", springs[spring]), AXW_OK);
            STATUS(axw_sheet_set(tried, "front.tyre.rate", tyres[tyre]), AXW_OK);
            axw_assessment *one = assessed(tried);
            double ride = value_of(one, "front.ride_frequency"), costs = cost[spring] + cost[4 + tyre];
            double weighs = mass[spring] + mass[4 + tyre];
            int32_t verdict = -1;
            STATUS(axw_assessment_answer(one, finding_of(one, "front.frequency"), &verdict, NULL, NULL, NULL, NULL,
                                         NULL, NULL),
                   AXW_OK);
            axw_assessment_free(one);
            if (ride < 1.25 || ride > 1.45 || verdict != AXW_VERDICT_MEETS || costs > 690 || weighs > 24) {
                continue;
            }
            TEXT(word(feasible, "spring", found), names[spring]);
            TEXT(word(feasible, "tyre", found), names[4 + tyre]);
            SAME(number(feasible, "cost", found), costs);
            SAME(number(feasible, "mass", found), weighs);
            cheapest = fmin(cheapest, costs);
            lightest = fmin(lightest, weighs);
            stands[spring]++;
            stands[4 + tyre]++;
            found++;
        }
    }
    CHECK(found >= 3 && found < 12 && axw_table_rows(feasible) == found);
    size_t last = axw_table_rows(front) - 1;
    CHECK(last >= 1);
    SAME(number(front, "cost", 0), cheapest);
    SAME(number(front, "mass", last), lightest);
    for (size_t row = 1; row <= last; row++) {
        CHECK(number(front, "cost", row) > number(front, "cost", row - 1));
        CHECK(number(front, "mass", row) < number(front, "mass", row - 1));
    }
    size_t none = 0;
    for (size_t part = 0; part < 7; part++) {
        if (stands[part] == 0) {
            TEXT(word(rejected, "part", none), names[part]);
            TEXT(word(rejected, "kind", none), part < 4 ? "spring" : "tyre");
            CHECK(strstr(word(rejected, "why", none), "required: ") != NULL);
            none++;
        }
    }
    CHECK(none >= 1 && axw_table_rows(rejected) == none);
    char *text = NULL, *other = NULL;
    ASK(text, axw_chosen_json, chosen);
    CHECK(strstr(text, "\"cheapest\":{") != NULL && strstr(text, "\"more\":false") != NULL);
    CHECK(strstr(text, "\"part\":\"soft\"") != NULL);
    free(text);
    ASK(text, axw_chosen_not_known, chosen);
    TEXT(text, "");
    free(text);

    /* The parts of a choice, fitted. */
    STATUS(axw_chosen_fit(chosen, 0, sheet), AXW_OK);
    for (size_t part = 0; part < 4; part++) {
        if (strcmp(names[part], word(front, "spring", 0)) == 0) {
            ASK(text, axw_sheet_get, sheet, "front.spring.rate");
            TEXT(text, springs[part]);
            free(text);
        }
    }
    ASK(text, axw_sheet_hash, sheet);
    REFUSED(axw_chosen_fit(chosen, last + 1, sheet), AXW_NOT_THERE, "is not there: the front has");
    REFUSED(axw_chosen_fit(chosen, 0, NULL), AXW_NULL, "sheet is NULL");
    REFUSED(axw_chosen_fit(NULL, 0, sheet), AXW_NULL, "chosen is NULL");
    ASK(other, axw_sheet_hash, sheet);
    TEXT(other, text);
    free(other);
    free(text);
    axw_chosen_free(chosen);
    CHECK(number(front, "cost", 0) > 0.0);
    axw_table_free(feasible);
    axw_table_free(front);
    axw_table_free(rejected);
    axw_sheet_free(tried);
    axw_sheet_free(sheet);
}

/* What was measured on the old part, or of the swept line, is left out and named. */
static void readings_are_dropped(void)
{
    axw_sheet *sheet = new_sheet("version = 1\n[use]\naltitude = \"500 m\"\nstation_pressure = \"94 kPa abs\"\n[cap]\n"
                                 "rating = \"15 psi gauge\"\nrating_tolerance = \"1 psi\"\ngauge_error = \"0.5 psi\"\n"
                                 "holding_pressure = \"14.6 psi gauge\"\n");
    axw_price_list *list = NULL;
    axw_chosen *chosen = NULL;
    char *text = NULL;
    STATUS(axw_price_list_csv("part,kind,cost,cap.rating\nnew,cap,10,18 psi gauge\n", &list), AXW_OK);
    STATUS(axw_choose(sheet, list, NULL, 0, 9, NULL, NULL, &chosen), AXW_OK);
    axw_price_list_free(list);
    ASK(text, axw_chosen_dropped, chosen);
    TEXT(text, "cap.holding_pressure\n");
    free(text);
    ASK(text, axw_chosen_json, chosen);
    CHECK(strstr(text, "\"dropped\":[\"cap.holding_pressure\"]") != NULL);
    free(text);
    axw_assessment *before = assessed(sheet);
    STATUS(axw_chosen_fit(chosen, 0, sheet), AXW_OK);
    axw_chosen_free(chosen);
    axw_assessment *after = assessed(sheet);
    CHECK(value_of(before, "cap.holds_at_least") > 90e3 && isnan(value_of(after, "cap.holds_at_least")));
    axw_assessment_free(before);
    axw_assessment_free(after);

    axw_what_if *of = new_what_if(sheet);
    static const double altitudes[] = {0.0, 2000.0};
    STATUS(axw_what_if_numbers(of, "use.altitude", altitudes, 2), AXW_OK);
    STATUS(axw_what_if_output(of, "use.station_pressure"), AXW_OK);
    ASK(text, axw_what_if_dropped, of);
    TEXT(text, "use.station_pressure\n");
    free(text);
    axw_table *table = all_rows(of, 1);
    CHECK(fabs(number(table, "use.station_pressure", 0) - 101325.0) < 1.0);
    axw_table_free(table);
    axw_what_if_free(of);
    axw_sheet_free(sheet);
}

static void choosing_is_refused(void)
{
    axw_sheet *sheet = new_sheet(wagtail);
    axw_price_list *list = new_list(), *kept = list, *other = NULL;
    axw_chosen *chosen = NULL;
    axw_table *table = NULL;
    const char *wrong[] = {"front.ride_frequency <= 2 kg"}, *gap[] = {"cost <= 100", NULL};
    const char *fine[] = {"front.ride_frequency >= 1 Hz"}, *out_of_reach[] = {"cost <= 300"};
    const char *unknown[] = {"rear.natural_frequency <= 1 Hz"}, *margins[] = {"margins >= 1.3"};
    REFUSED(axw_choose(sheet, list, wrong, 1, 9, NULL, NULL, &chosen), AXW_TEXT, "2 kg");
    REFUSED(axw_choose(sheet, list, gap, 2, 9, NULL, NULL, &chosen), AXW_NULL, "requirements[1] is NULL");
    REFUSED(axw_choose(sheet, list, NULL, 1, 9, NULL, NULL, &chosen), AXW_NULL, "requirements is NULL");
    REFUSED(axw_choose(NULL, list, fine, 1, 9, NULL, NULL, &chosen), AXW_NULL, "sheet is NULL");
    REFUSED(axw_choose(sheet, NULL, fine, 1, 9, NULL, NULL, &chosen), AXW_NULL, "list is NULL");
    REFUSED(axw_choose(sheet, list, fine, 1, 9, NULL, NULL, NULL), AXW_NULL, "chosen is NULL");
    REFUSED(axw_choose(sheet, list, unknown, 1, 9, NULL, NULL, &chosen), AXW_NO_SOLUTION, "needs rear.");
    watch stop = {0, 1, 0};
    REFUSED(axw_choose(sheet, list, fine, 1, 9, watching, &stop, &chosen), AXW_STOPPED, "stopped: progress");
    CHECK(chosen == NULL && stop.calls == 1);
    watch on = {0, 0, 0};
    STATUS(axw_choose(sheet, list, fine, 1, 2, watching, &on, &chosen), AXW_OK);
    CHECK(on.calls >= 1);
    bool more = false;
    STATUS(axw_chosen_feasible(chosen, &table, &more), AXW_OK);
    CHECK(more && axw_table_rows(table) == 2);
    axw_table_free(table);
    REFUSED(axw_chosen_feasible(chosen, NULL, &more), AXW_NULL, "table is NULL");
    axw_chosen_free(chosen);

    /* Nothing is cheap enough: no row, and every part says why. */
    STATUS(axw_choose(sheet, list, out_of_reach, 1, 9, NULL, NULL, &chosen), AXW_OK);
    STATUS(axw_chosen_front(chosen, &table), AXW_OK);
    CHECK(axw_table_rows(table) == 0 && axw_table_columns(table) == 4);
    axw_table_free(table);
    STATUS(axw_chosen_rejected(chosen, &table), AXW_OK);
    CHECK(axw_table_rows(table) == 7);
    axw_table_free(table);
    REFUSED(axw_chosen_fit(chosen, 0, sheet), AXW_NOT_THERE, "the front has 0");
    axw_chosen_free(chosen);

    char *text = NULL;
    STATUS(axw_choose(sheet, list, margins, 1, 9, NULL, NULL, &chosen), AXW_OK);
    ASK(text, axw_chosen_not_known, chosen);
    CHECK(strstr(text, "clutch.holds.margin needs ") != NULL);
    free(text);
    axw_chosen_free(chosen);

    /* Lists with a fault. */
    REFUSED(axw_price_list_csv("part,kind,cost,front.spring.rate\na,spring,10,30 N/mm\nb,spring,ten,30 N/mm\n",
                               &kept),
            AXW_DOCUMENT, "line 3, column 10: cost: `ten` is no cost");
    REFUSED(axw_price_list_csv("part,kind,cost,front.spring.rat\na,spring,10,30 N/mm\n", &kept), AXW_DOCUMENT,
            "line 1, column 16: front.spring.rat: ");
    REFUSED(axw_price_list_csv("part,kind\na,spring\n", &kept), AXW_DOCUMENT, "line 1, column 1: cost: ");
    REFUSED(axw_price_list_csv("part,kind,cost\na,spring\n", &kept), AXW_DOCUMENT, "line 2, column 1: ");
    REFUSED(axw_price_list_csv(NULL, &kept), AXW_NULL, "text is NULL");
    REFUSED(axw_price_list_csv(prices_csv, NULL), AXW_NULL, "list is NULL");
    REFUSED(axw_price_list_new("[[parts]]\npart = \"a\"\nkind = \"spring\"\n", &kept), AXW_DOCUMENT,
            "cost: every part");
    REFUSED(axw_price_list_new("\xff", &kept), AXW_UTF8, "text is not UTF-8");
    REFUSED(axw_price_list_new(prices_toml, NULL), AXW_NULL, "list is NULL");
    CHECK(kept == list);
    STATUS(axw_price_list_new(prices_toml, &other), AXW_OK);
    CHECK(axw_price_list_parts(other) == 2 && axw_price_list_parts(NULL) == 0);
    axw_price_list_free(other);

    table = NULL;
    size_t needed = 77;
    REFUSED(axw_chosen_front(NULL, &table), AXW_NULL, "chosen is NULL");
    REFUSED(axw_chosen_feasible(NULL, &table, NULL), AXW_NULL, "chosen is NULL");
    REFUSED(axw_chosen_rejected(NULL, &table), AXW_NULL, "chosen is NULL");
    REFUSED(axw_chosen_json(NULL, NULL, 0, &needed), AXW_NULL, "chosen is NULL");
    REFUSED(axw_chosen_not_known(NULL, NULL, 0, &needed), AXW_NULL, "chosen is NULL");
    REFUSED(axw_chosen_dropped(NULL, NULL, 0, &needed), AXW_NULL, "chosen is NULL");
    CHECK(table == NULL && needed == 77);
    axw_price_list_free(list);
    axw_sheet_free(sheet);
}

/* Many handles of every kind at once, used in turn and freed in another order than they were made. */
static void interleaved(void)
{
    enum { MANY = 6 };
    axw_sheet *sheets[MANY];
    axw_assessment *of[MANY];
    axw_what_if *what_ifs[MANY];
    axw_table *tables[MANY];
    for (int i = 0; i < MANY; i++) {
        char text[32];
        sheets[i] = new_sheet(wagtail);
        snprintf(text, sizeof text, "%d kg", 280 + i);
        STATUS(axw_sheet_set(sheets[i], "front.sprung_mass", text), AXW_OK);
    }
    for (int i = MANY - 1; i >= 0; i--) {
        const double rate = 30e3;
        of[i] = assessed(sheets[i]);
        what_ifs[i] = new_what_if(sheets[(i + 1) % MANY]);
        STATUS(axw_what_if_numbers(what_ifs[i], "front.spring.rate", &rate, 1), AXW_OK);
        STATUS(axw_what_if_output(what_ifs[i], "front.natural_frequency"), AXW_OK);
    }
    for (int i = 0; i < MANY; i += 2) {
        axw_sheet_free(sheets[i]);
    }
    for (int i = 0; i < MANY; i++) {
        tables[i] = all_rows(what_ifs[i], 0);
    }
    for (int i = 0; i < MANY; i++) {
        axw_what_if_free(what_ifs[MANY - 1 - i]);
        SAME(number(tables[i], "front.natural_frequency", 0), value_of(of[(i + 1) % MANY], "front.natural_frequency"));
    }
    for (int i = 0; i < MANY; i++) {
        axw_table_free(tables[i]);
        axw_assessment_free(of[(i + 3) % MANY]);
        if (i % 2 == 1) {
            axw_sheet_free(sheets[i]);
        }
    }
}

typedef struct {
    const axw_sheet *sheet;
    const axw_assessment *of;
    const axw_what_if *what_if;
    const axw_table *wanted;
    double frequency;
    int same;
} errand;

static void *read_often(void *argument)
{
    errand *of = (errand *)argument;
    of->same = 1;
    for (int turn = 0; turn < 20; turn++) {
        axw_assessment *own = NULL;
        axw_table *table = NULL;
        char text[64];
        double one = 0.0, two = 0.0;
        if (axw_assessment_new(of->sheet, &own) != AXW_OK ||
            axw_assessment_value(own, "front.natural_frequency", &one) != AXW_OK ||
            axw_assessment_value(of->of, "front.natural_frequency", &two) != AXW_OK ||
            axw_what_if_table(of->what_if, 0, 6000, 2, NULL, NULL, &table) != AXW_OK ||
            axw_sheet_hash(of->sheet, text, sizeof text, NULL) != AXW_OK) {
            of->same = 0;
        }
        of->same = of->same && same_bits(one, of->frequency) && same_bits(two, of->frequency) &&
                   same_tables(of->wanted, 0, table);
        axw_table_free(table);
        axw_assessment_free(own);
    }
    return NULL;
}

/* Several threads read the same handles; the what-if is made ready by whichever of them is first. */
static void threads(void)
{
    enum { MANY = 4 };
    pthread_t thread[MANY];
    errand errands[MANY];
    axw_sheet *sheet = new_sheet(wagtail);
    axw_assessment *of = assessed(sheet);
    axw_what_if *ready = new_what_if(sheet), *shared = new_what_if(sheet);
    axw_what_if *both[] = {ready, shared};
    for (size_t i = 0; i < 2; i++) {
        STATUS(axw_what_if_range(both[i], "front.spring.rate", "20 N/mm", "40 N/mm", 6000), AXW_OK);
        STATUS(axw_what_if_output(both[i], "front.frequency.margin"), AXW_OK);
    }
    axw_table *wanted = all_rows(ready, 1);
    for (int i = 0; i < MANY; i++) {
        errand one = {sheet, of, shared, wanted, value_of(of, "front.natural_frequency"), 0};
        errands[i] = one;
        CHECK(pthread_create(&thread[i], NULL, read_often, &errands[i]) == 0);
    }
    for (int i = 0; i < MANY; i++) {
        CHECK(pthread_join(thread[i], NULL) == 0);
        CHECK(errands[i].same);
    }
    axw_table_free(wanted);
    axw_what_if_free(shared);
    axw_what_if_free(ready);
    axw_assessment_free(of);
    axw_sheet_free(sheet);
}

/* The document of a model that the sheet holds; its type and what comes from elsewhere are these. */
static char *model_at(const axw_sheet *sheet, const char *path, const char *type, const char *elsewhere)
{
    char *document = NULL, *found_type = NULL, *found_elsewhere = NULL;
    ASK(document, axw_sheet_model, sheet, path);
    ASK(found_type, axw_sheet_model_type, sheet, path);
    ASK(found_elsewhere, axw_sheet_model_elsewhere, sheet, path);
    TEXT(found_type, type);
    TEXT(found_elsewhere, elsewhere);
    free(found_type);
    free(found_elsewhere);
    return document;
}

/* A model that the sheet holds is read by the constructor of its type, and says what comes from elsewhere. */
static void models(void)
{
    axw_sheet *sheet = new_sheet("version = 1\n[cap]\nrating = \"15 psi gauge\"\nholding_pressure = \"13 psi gauge\"\n");
    char *document = model_at(sheet, "cap", "cooling.CapTest", "");
    axw_cooling_cap_test *cap = NULL;
    STATUS(axw_cooling_cap_test_new(document, &cap), AXW_OK);
    axw_cooling_cap_test_free(cap);
    free(document);

    size_t needed = 77;
    REFUSED(axw_sheet_model(sheet, "leak_test", NULL, 0, &needed), AXW_DOCUMENT, "leak_test.trapped");
    REFUSED(axw_sheet_model_type(sheet, "cop", NULL, 0, &needed), AXW_DOCUMENT, "no such model");
    REFUSED(axw_sheet_model_elsewhere(sheet, NULL, NULL, 0, &needed), AXW_NULL, "path is NULL");
    REFUSED(axw_sheet_model(NULL, "cap", NULL, 0, &needed), AXW_NULL, "sheet is NULL");
    CHECK(needed == 77);
    axw_sheet_free(sheet);

    /* An axle on leaf springs has the keys of its model; its eyes stand in the plane of the seat. */
    sheet = new_sheet(
        "version = 1\n"
        "[rear]\n"
        "tyre = { loaded_radius = \"380 mm\" }\n"
        "spring = { rate = \"110 N/mm\" }\n"
        "wheel = { centre = { x = \"0 m\", y = \"810 mm\", z = \"390 mm\" }, camber = \"0 deg\", toe = \"0 deg\" }\n"
        "[rear.leaf]\n"
        "fixed_eye = { x = \"640 mm\", z = \"460 mm\" }\n"
        "shackle_eye = { x = \"-710 mm\", z = \"550 mm\" }\n"
        "shackle_pivot = { x = \"-685 mm\", z = \"670 mm\" }\n"
        "seat = { x = \"0 m\", y = \"520 mm\", z = \"475 mm\" }\n"
        "clamped_length = \"140 mm\"\n"
        "form = \"uniform_strength\"\n"
        "load = \"9.8 kN\"\n");
    document = model_at(sheet, "rear.suspension", "suspension.LeafAxle",
                        "wheel.loaded_radius rear.tyre.loaded_radius written\n"
                        "leaf.fixed_eye.y rear.leaf.fixed_eye.y computed\n"
                        "leaf.shackle_eye.y rear.leaf.shackle_eye.y computed\n"
                        "leaf.shackle_pivot.y rear.leaf.shackle_pivot.y computed\n");
    axw_suspension_leaf_axle *axle = NULL;
    STATUS(axw_suspension_leaf_axle_new(document, &axle), AXW_OK);
    axw_suspension_leaf_axle_free(axle);
    free(document);
    axw_sheet_free(sheet);
}

void test_sheet(void)
{
    models();
    axw_sheet_free(NULL);
    axw_assessment_free(NULL);
    axw_what_if_free(NULL);
    axw_price_list_free(NULL);
    axw_chosen_free(NULL);
    documents();
    assessment_of_a_sheet();
    nul_in_a_name();
    grid();
    long_range();
    sweeps();
    axes();
    choosing();
    readings_are_dropped();
    choosing_is_refused();
    interleaved();
    threads();
}
