/* The build sheet: documents, assessment, models and many handles at once. */
#include "sheet.h"

#include <pthread.h>

char *room(size_t size)
{
    char *text = (char *)malloc(size > 0 ? size : 1);
    if (text == NULL) {
        exit(EXIT_FAILURE);
    }
    text[0] = '?';
    return text;
}

/* The Wagtail's front as far as it was measured; every figure is invented. */
const char wagtail[] = "version = 1\n"
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

axw_sheet *new_sheet(const char *text)
{
    axw_sheet *sheet = NULL;
    STATUS(axw_sheet_new(text, &sheet), AXW_OK);
    return sheet;
}

axw_assessment *assessed(const axw_sheet *sheet)
{
    axw_assessment *assessment = NULL;
    STATUS(axw_assessment_new(sheet, &assessment), AXW_OK);
    return assessment;
}

double value_of(const axw_assessment *assessment, const char *path)
{
    double si = UNTOUCHED;
    STATUS(axw_assessment_value(assessment, path, &si), AXW_OK);
    return si;
}

size_t finding_of(const axw_assessment *assessment, const char *path)
{
    size_t finding = SIZE_MAX;
    STATUS(axw_assessment_find(assessment, path, &finding), AXW_OK);
    return finding;
}

double number(const axw_table *table, const char *name, size_t row)
{
    size_t column = SIZE_MAX, length = 0;
    const double *values = NULL;
    STATUS(axw_table_find(table, name, &column), AXW_OK);
    STATUS(axw_table_f64(table, column, &values, &length), AXW_OK);
    CHECK(row < length);
    return row < length ? values[row] : UNTOUCHED;
}

const char *word(const axw_table *table, const char *name, size_t row)
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
int same_tables(const axw_table *one, size_t first, const axw_table *two)
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

    /* A text that is too long is refused by its size alone. */
    char *long_text = (char *)malloc(4000002);
    if (long_text == NULL) {
        abort();
    }
    memset(long_text, 'x', 4000001);
    long_text[4000001] = '\0';
    axw_sheet *none = NULL;
    axw_price_list *no_list = NULL;
    REFUSED(axw_sheet_new(long_text, &none), AXW_DOCUMENT, "has 4000001 bytes; at most 4000000 are read");
    REFUSED(axw_price_list_new(long_text, &no_list), AXW_DOCUMENT, "has 4000001 bytes; at most 4000000 are read");
    REFUSED(axw_price_list_csv(long_text, &no_list), AXW_DOCUMENT, "has 4000001 bytes; at most 4000000 are read");
    CHECK(none == NULL && no_list == NULL);
    free(long_text);

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
    /* Every bound against it: the rate, the ratio and the mass at their worse ends. */
    double worst = UNTOUCHED;
    STATUS(axw_assessment_worst(of, band, &worst), AXW_OK);
    CHECK(worst < margin && worst > margin - frequency * share * 3.0);
    REFUSED(axw_assessment_worst(of, axw_assessment_findings(of), &worst), AXW_NOT_THERE, "finding");
    STATUS(axw_assessment_worst(of, band, NULL), AXW_OK);

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
    CHECK(strstr(text, "  short      engine.pistons") != NULL && strstr(text, "  not known  ") != NULL);
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
    CHECK(strstr(text, "\nengine.pistons: ") != NULL && strstr(text, "  short      A  ") != NULL);
    CHECK(strstr(text, "  meets      B  ") != NULL && strstr(text, "front.frequency: ") == NULL);
    free(text);
    axw_assessment_free(other);

    /* Sensitivity and chances. */
    axw_table *table = NULL;
    STATUS(axw_assessment_sensitivity(of, band, &table), AXW_OK);
    CHECK(axw_table_rows(table) == 3 && axw_table_columns(table) == 6);
    TEXT(word(table, "finding", 0), "front.frequency");
    TEXT(word(table, "line", 0), "front.spring.rate");
    TEXT(word(table, "unit", 0), "N/m");
    NEAR(number(table, "tolerance", 0), 900.0, 1e-12);
    NEAR(number(table, "margin_change", 0), frequency * 0.03 / 2.0, 1e-3);
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
    REFUSED(axw_assessment_chances(of, SIZE_MAX, 7, &table), AXW_LENGTH, "at most 10,000,000 samples");
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
    CHECK(strncmp(text, "Wag\\x00tail\n", 12) == 0);
    free(text);
    ASK(text, axw_assessment_compare, of, of, AXW_US);
    CHECK(strncmp(text, "A: Wag\\x00tail, ", 16) == 0 && strstr(text, "\nB: Wag\\x00tail, ") != NULL);
    free(text);
    ASK(text, axw_sheet_toml, sheet);
    CHECK(strstr(text, "Wag\\u0000tail") != NULL);
    free(text);
    axw_assessment_free(of);
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
    size_t threads; /* of the what-if itself */
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
            axw_what_if_table(of->what_if, 0, 6000, of->threads, NULL, NULL, &table) != AXW_OK ||
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
void test_threads_and_handles(size_t of_what_if)
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
    if (of_what_if == 1) { /* a checker of threads does not follow the once-only lock of Rust: nothing is made ready under it then */
        axw_table_free(all_rows(shared, 1));
    }
    for (int i = 0; i < MANY; i++) {
        errand one = {sheet, of, shared, wanted, of_what_if, value_of(of, "front.natural_frequency"), 0};
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
    axw_sheet_free(NULL);
    axw_assessment_free(NULL);
    models();
    documents();
    assessment_of_a_sheet();
    nul_in_a_name();
    test_what_if();
    test_choosing();
    test_first_sheet();
    interleaved();
    test_threads_and_handles(2);
}
