/* Tables by column. */
#include "check.h"

typedef struct {
    const char *name, *quantity, *unit;
    int32_t type;
} heading;

static void has_columns(const axw_table *table, const heading *wanted, size_t count)
{
    CHECK(axw_table_columns(table) == count);
    for (size_t i = 0; i < count; i++) {
        const char *name = NULL, *quantity = NULL, *unit = NULL;
        int32_t type = -1;
        STATUS(axw_table_column(table, i, &name, &quantity, &unit, &type), AXW_OK);
        size_t place = SIZE_MAX;
        TEXT(name, wanted[i].name);
        STATUS(axw_table_find(table, wanted[i].name, &place), AXW_OK);
        CHECK(place == i);
        STATUS(axw_table_find(table, name, NULL), AXW_OK);
        TEXT(quantity, wanted[i].quantity);
        TEXT(unit, wanted[i].unit);
        CHECK(type == wanted[i].type);
        STATUS(axw_table_column(table, i, NULL, NULL, NULL, NULL), AXW_OK);

        /* Numbers and words are read as what they are. */
        const double *values = NULL;
        const int64_t *whole = NULL;
        const int32_t *codes = NULL;
        const char *label = NULL;
        size_t length = 99, labels = 99;
        STATUS(axw_table_f64(table, i, &values, &length), type == AXW_COLUMN_F64 ? AXW_OK : AXW_NOT_THERE);
        CHECK((values != NULL) == (type == AXW_COLUMN_F64));
        STATUS(axw_table_i64(table, i, &whole, NULL), type == AXW_COLUMN_I64 ? AXW_OK : AXW_NOT_THERE);
        CHECK((whole != NULL) == (type == AXW_COLUMN_I64));
        STATUS(axw_table_codes(table, i, &codes, &length, &labels),
               type == AXW_COLUMN_CATEGORY ? AXW_OK : AXW_NOT_THERE);
        CHECK((codes != NULL) == (type == AXW_COLUMN_CATEGORY));
        CHECK(length == axw_table_rows(table));
        if (type != AXW_COLUMN_CATEGORY) {
            REFUSED(axw_table_label(table, i, 0, &label), AXW_NOT_THERE, "of another type");
            CHECK(label == NULL);
        }
    }
}

/* The word of a column in a row. */
static const char *word(const axw_table *table, size_t column, size_t row)
{
    const int32_t *codes = NULL;
    const char *label = "?";
    size_t length = 0;
    STATUS(axw_table_codes(table, column, &codes, &length, NULL), AXW_OK);
    if (codes != NULL && row < length) {
        STATUS(axw_table_label(table, column, codes[row], &label), AXW_OK);
    }
    return label;
}

static void words_and_numbers(void)
{
    static const heading wanted[] = {
        {"part", "", "", AXW_COLUMN_CATEGORY},
        {"input_torque", "Torque", "N·m", AXW_COLUMN_F64},
        {"output_torque", "Torque", "N·m", AXW_COLUMN_F64},
        {"demand", "Torque", "N·m", AXW_COLUMN_F64},
        {"rating", "Torque", "N·m", AXW_COLUMN_F64},
        {"margin", "Ratio", "1", AXW_COLUMN_F64},
        {"why", "", "", AXW_COLUMN_CATEGORY},
        {"demand_bound", "", "", AXW_COLUMN_CATEGORY},
        {"wanted", "Ratio", "1", AXW_COLUMN_F64},
        {"open", "", "", AXW_COLUMN_CATEGORY},
        {"bound", "", "", AXW_COLUMN_CATEGORY},
    };
    axw_driveline_torque_path *model = NULL;
    STATUS(axw_driveline_torque_path_new(
               "{\"engine_torque\": \"360 N·m\", \"stall_ratio\": \"none\", \"parts\": ["
               "{\"name\": \"gearbox\", \"ratio\": 4.7, \"torque_rating\": \"400 N·m\", \"rating_side\": "
               "\"input\", \"rating_kind\": \"continuous\"},"
               "{\"name\": \"shaft\", \"torque_rating\": \"2000 N·m\", \"rating_kind\": \"peak\"},"
               "{\"name\": \"gearbox\", \"torque_rating\": \"1500 N·m\", \"rating_kind\": \"continuous\"}]}",
               &model),
           AXW_OK);
    axw_table *table = NULL;
    STATUS(axw_driveline_torque_path_parts_table(model, &table), AXW_OK);

    /* 20 000 torques by 20 000 factors and three parts: refused before anything of the table is allocated. */
    enum { MANY = 20000 };
    double *many = (double *)calloc(MANY, sizeof *many);
    axw_table *too_large = NULL;
    REFUSED(axw_driveline_torque_path_table(model, many, MANY, many, MANY, &too_large), AXW_NO_SOLUTION,
            "a table of 1200000000 rows (20000 x 20000 x 3) of ");
    CHECK(too_large == NULL);
    free(many);

    /* A row that is refused has no words. */
    const double torques[] = {360.0, -1.0}, shock = 2.0;
    const int32_t *why = NULL;
    axw_table *half = NULL;
    STATUS(axw_driveline_torque_path_table(model, torques, 2, &shock, 1, &half), AXW_OK);
    size_t place_of_why = 0;
    STATUS(axw_table_find(half, "why", &place_of_why), AXW_OK);
    STATUS(axw_table_codes(half, place_of_why, &why, NULL, NULL), AXW_OK);
    CHECK(axw_table_rows(half) == 6 && why[0] >= 0 && why[3] == -1 && why[5] == -1);
    axw_table_free(half);
    axw_driveline_torque_path_free(model); /* the table lives on */

    CHECK(axw_table_rows(table) == 3);
    has_columns(table, wanted, sizeof wanted / sizeof wanted[0]);
    TEXT(word(table, 0, 0), "gearbox");
    TEXT(word(table, 0, 1), "shaft");
    TEXT(word(table, 6, 0), "");
    TEXT(word(table, 6, 1), "the rating is not a continuous one, and no clutch_capacity is given");
    TEXT(word(table, 7, 0), "engine");
    TEXT(word(table, 7, 1), "");
    TEXT(word(table, 9, 0), "the shock of a dropped clutch is not known");
    TEXT(word(table, 10, 1), "engine");

    /* Equal words share a code. */
    const int32_t *codes = NULL;
    size_t labels = 0;
    STATUS(axw_table_codes(table, 0, &codes, NULL, &labels), AXW_OK);
    CHECK(labels == 2 && codes[0] == codes[2] && codes[0] != codes[1]);

    const double *margin = NULL;
    size_t length = 0;
    STATUS(axw_table_f64(table, 5, &margin, &length), AXW_OK);
    CHECK(length == 3);
    NEAR(margin[0], 400.0 / 360.0, 1e-15);
    CHECK(isnan(margin[1]));
    NEAR(margin[2], 1500.0 / (360.0 * 4.7), 1e-15);
    STATUS(axw_table_f64(table, 5, NULL, NULL), AXW_OK);
    STATUS(axw_table_codes(table, 0, NULL, NULL, NULL), AXW_OK);

    /* Not there. */
    const char *text = NULL;
    REFUSED(axw_table_column(table, 11, &text, NULL, NULL, NULL), AXW_NOT_THERE,
            "column = 11 is not there: the table has 11");
    size_t place = 99;
    REFUSED(axw_table_find(table, "Margin", &place), AXW_NOT_THERE,
            "name = \"Margin\" is not there: the table has part, input_torque, output_torque, demand");
    REFUSED(axw_table_find(table, NULL, &place), AXW_NULL, "name is NULL");
    REFUSED(axw_table_find(table, "\xFF", &place), AXW_UTF8, "name is not UTF-8");
    CHECK(place == 99);
    REFUSED(axw_table_f64(table, SIZE_MAX, &margin, &length), AXW_NOT_THERE, "is not there");
    REFUSED(axw_table_label(table, 0, 2, &text), AXW_NOT_THERE, "code = 2 is not in column 0");
    REFUSED(axw_table_label(table, 0, -1, &text), AXW_NOT_THERE, "code = -1");
    REFUSED(axw_table_label(table, 0, INT32_MIN, &text), AXW_NOT_THERE, "code = -2147483648");
    STATUS(axw_table_label(table, 0, 0, NULL), AXW_OK);
    CHECK(text == NULL && length == 3);
    axw_table_free(table);
}

static void refused_rows(void)
{
    axw_cooling_coolant *model = NULL;
    STATUS(
        axw_cooling_coolant_new("liquid = \"ethylene_glycol\"\nmass_fraction = \"50 %\"\n"
                                "cap = \"15 psi gauge\"\naltitude = \"0 m\"\nhottest = \"230 °F\"\n",
                                &model),
        AXW_OK);
    const double cap[2] = {0.0, 100e3}, altitude[3] = {0.0, 99000.0, 1500.0}, strength[1] = {0.5};
    axw_table *table = NULL;
    STATUS(axw_cooling_coolant_margin_table(model, cap, 2, altitude, 3, strength, 1, &table), AXW_OK);
    CHECK(axw_table_rows(table) == 6 && axw_table_columns(table) == 8);

    const double *caps = NULL, *altitudes = NULL, *margins = NULL;
    STATUS(axw_table_f64(table, 0, &caps, NULL), AXW_OK);
    STATUS(axw_table_f64(table, 1, &altitudes, NULL), AXW_OK);
    STATUS(axw_table_f64(table, 6, &margins, NULL), AXW_OK);
    char sentence[512];
    for (size_t row = 0; row < 6; row++) {
        int is_refused = row % 3 == 1;
        size_t needed = 0;
        SAME(caps[row], cap[row / 3]);
        SAME(altitudes[row], altitude[row % 3]); /* inputs are kept */
        CHECK(isnan(margins[row]) == is_refused);
        STATUS(axw_table_reason(table, row, sentence, sizeof sentence, &needed), AXW_OK);
        CHECK(needed == strlen(sentence) + 1);
        CHECK((strstr(sentence, "altitude = 99000 m") != NULL) == is_refused && (needed == 1) == !is_refused);
    }

    const size_t *refused = NULL;
    size_t count = 99;
    STATUS(axw_table_refused(table, &refused, &count), AXW_OK);
    CHECK(count == 2 && refused[0] == 1 && refused[1] == 4);
    STATUS(axw_table_refused(table, NULL, NULL), AXW_OK);

    /* Buffers for a reason: none, empty, one byte too few, exact. */
    size_t needed = 0;
    STATUS(axw_table_reason(table, 1, NULL, 0, &needed), AXW_OK);
    memset(sentence, '#', sizeof sentence);
    size_t untouched = 99;
    REFUSED(axw_table_reason(table, 1, sentence, 0, &untouched), AXW_BUFFER, "buffer is too short");
    REFUSED(axw_table_reason(table, 1, sentence, needed - 1, &untouched), AXW_BUFFER, "buffer is too short");
    CHECK(sentence[0] == '#' && untouched == 99);
    STATUS(axw_table_reason(table, 1, sentence, needed, NULL), AXW_OK);
    CHECK(strlen(sentence) == needed - 1 && sentence[needed] == '#');
    STATUS(axw_table_reason(table, 0, sentence, 1, NULL), AXW_OK);
    CHECK(sentence[0] == '\0');
    REFUSED(axw_table_reason(table, 6, sentence, sizeof sentence, NULL), AXW_NOT_THERE,
            "row = 6 is not there: the table has 6");
    axw_table_free(table);

    /* Lists: empty without an array is no row; rows without an array are refused, and the table is always
     * wanted. */
    table = NULL;
    STATUS(axw_cooling_coolant_margin_table(model, NULL, 0, altitude, 3, strength, 1, &table), AXW_OK);
    CHECK(table != NULL && axw_table_rows(table) == 0 && axw_table_columns(table) == 8);
    STATUS(axw_table_refused(table, NULL, &count), AXW_OK);
    CHECK(count == 0);
    axw_table_free(table);
    axw_table *const before = (axw_table *)(void *)&checks_failed;
    table = before;
    REFUSED(axw_cooling_coolant_margin_table(model, cap, 2, NULL, 3, strength, 1, &table), AXW_NULL,
            "altitude is NULL");
    REFUSED(axw_cooling_coolant_margin_table(model, cap, SIZE_MAX, altitude, 3, strength, 1, &table),
            AXW_LENGTH, "cap has 18446744073709551615 entries");
    REFUSED(axw_cooling_coolant_margin_table(NULL, cap, 2, altitude, 3, strength, 1, &table), AXW_NULL,
            "model is NULL");
    CHECK(table == before);
    REFUSED(axw_cooling_coolant_margin_table(model, cap, 2, altitude, 3, strength, 1, NULL), AXW_NULL,
            "result is NULL");
    axw_cooling_coolant_free(model);
}

static void no_table(void)
{
    CHECK(axw_table_rows(NULL) == 0);
    CHECK(axw_table_columns(NULL) == 0);
    STATUS(axw_table_column(NULL, 0, NULL, NULL, NULL, NULL), AXW_NULL);
    STATUS(axw_table_find(NULL, "part", NULL), AXW_NULL);
    STATUS(axw_table_f64(NULL, 0, NULL, NULL), AXW_NULL);
    STATUS(axw_table_i64(NULL, 0, NULL, NULL), AXW_NULL);
    STATUS(axw_table_codes(NULL, 0, NULL, NULL, NULL), AXW_NULL);
    STATUS(axw_table_label(NULL, 0, 0, NULL), AXW_NULL);
    REFUSED(axw_table_reason(NULL, 0, NULL, 0, NULL), AXW_NULL, "table is NULL");
    size_t count = 99;
    REFUSED(axw_table_refused(NULL, NULL, &count), AXW_NULL, "table is NULL");
    CHECK(count == 99);
    axw_table_free(NULL);
}

void test_tables(void)
{
    words_and_numbers();
    refused_rows();
    no_table();
}
