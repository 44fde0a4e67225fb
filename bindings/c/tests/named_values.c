/* Models and sheets from named numbers in coherent SI, without text. */
#include "check.h"

static double si(const char *text, const char *quantity)
{
    double read = UNTOUCHED;
    STATUS(axw_text_read(text, quantity, &read), AXW_OK);
    return read;
}

/* The same numbers as in a document give the same bits. */
static void coolant(void)
{
    static const char toml[] =
        "liquid = \"ethylene_glycol\"\nvolume_share = \"50 %\"\nconcentrate = \"95 %\"\n"
        "cap = \"15 psi gauge\"\naltitude = \"5000 ft\"\nhottest = \"230 °F\"\n";
    const char *const paths[] = {"liquid", "volume_share", "concentrate", "cap", "altitude", "hottest", "mass_fraction", "station_pressure"};
    const char *const texts[] = {"ethylene_glycol", NULL, NULL, NULL, NULL, NULL, NULL, NULL};
    const double values[] = {UNTOUCHED,
                             0.5,
                             0.95,
                             si("15 psi gauge", "gauge pressure"),
                             si("5000 ft", "length"),
                             si("230 °F", "temperature"),
                             NAN,
                             NAN};
    axw_cooling_coolant *named = NULL, *read = NULL;
    STATUS(axw_cooling_coolant_new_si(paths, values, texts, 8, &named), AXW_OK);
    STATUS(axw_cooling_coolant_new(toml, &read), AXW_OK);
    double margin[2], boiling[2];
    STATUS(axw_cooling_coolant_margin(named, NULL, NULL, &boiling[0], &margin[0]), AXW_OK);
    STATUS(axw_cooling_coolant_margin(read, NULL, NULL, &boiling[1], &margin[1]), AXW_OK);
    SAME(margin[0], margin[1]);
    SAME(boiling[0], boiling[1]);

    /* What was not written is shown in its SI unit. */
    char json[512];
    STATUS(axw_cooling_coolant_json(named, json, sizeof json, NULL), AXW_OK);
    CHECK(strstr(json, "\"altitude\":\"1524 m\"") != NULL);
    CHECK(strstr(json, "\"hottest\":\"383.1") != NULL && strstr(json, " K\"") != NULL);
    axw_cooling_coolant_free(read);
    axw_cooling_coolant_free(named);

    axw_cooling_coolant *const before = (axw_cooling_coolant *)(void *)&checks_failed;
    axw_cooling_coolant *model = before;
    REFUSED(axw_cooling_coolant_new_si(NULL, values, texts, 8, &model), AXW_NULL, "paths is NULL");
    REFUSED(axw_cooling_coolant_new_si(paths, NULL, texts, 8, &model), AXW_NULL, "values is NULL");
    REFUSED(axw_cooling_coolant_new_si(paths, values, texts, 8, NULL), AXW_NULL, "out is NULL");
    REFUSED(axw_cooling_coolant_new_si(paths, values, texts, SIZE_MAX, &model), AXW_LENGTH, "paths has ");
    REFUSED(axw_cooling_coolant_new_si(paths, values, NULL, 8, &model), AXW_DOCUMENT, "liquid");
    REFUSED(axw_cooling_coolant_new_si(paths, values, texts, 3, &model), AXW_DOCUMENT, "cap: this key is missing");
    REFUSED(axw_cooling_coolant_new_si(NULL, NULL, NULL, 0, &model), AXW_DOCUMENT, "liquid: this key is missing");
    const char *wrong[8], *words[8];
    double numbers[8];
    memcpy(wrong, paths, sizeof wrong);
    memcpy(words, texts, sizeof words);
    memcpy(numbers, values, sizeof numbers);
    wrong[3] = NULL;
    REFUSED(axw_cooling_coolant_new_si(wrong, values, texts, 8, &model), AXW_NULL, "paths[3] is NULL");
    wrong[3] = "\xFF";
    REFUSED(axw_cooling_coolant_new_si(wrong, values, texts, 8, &model), AXW_UTF8, "paths[3] is not UTF-8");
    wrong[3] = "kap";
    REFUSED(axw_cooling_coolant_new_si(wrong, values, texts, 8, &model), AXW_DOCUMENT, "kap");
    words[0] = "\xFF";
    REFUSED(axw_cooling_coolant_new_si(paths, values, words, 8, &model), AXW_UTF8, "texts[0] is not UTF-8");
    words[0] = "colour";
    REFUSED(axw_cooling_coolant_new_si(paths, values, words, 8, &model), AXW_DOCUMENT, "colour");
    numbers[1] = INFINITY;
    REFUSED(axw_cooling_coolant_new_si(paths, numbers, texts, 8, &model), AXW_DOCUMENT, "volume_share: inf");
    numbers[1] = 1.5;
    REFUSED(axw_cooling_coolant_new_si(paths, numbers, texts, 8, &model), AXW_OUT_OF_RANGE, "volume_share = 1.5");
    CHECK(model == before);
}

/* Lists and tables inside a model. */
static void lists(void)
{
    const char *const paths[] = {"points[0].engine_speed", "points[0].torque", "points[1].engine_speed",
                                 "points[1].torque"};
    const double values[] = {100.0, 200.0, 300.0, 250.0};
    axw_engine_torque_curve *curve = NULL;
    STATUS(axw_engine_torque_curve_new_si(paths, values, NULL, 4, &curve), AXW_OK);
    double torque = UNTOUCHED;
    STATUS(axw_engine_torque_curve_torque(curve, 300.0, &torque), AXW_OK);
    SAME(torque, 250.0);
    axw_engine_torque_curve_free(curve);

    const char *const parts[] = {"engine_torque", "clutch_capacity", "parts[0].name", "parts[0].torque_rating", "parts[0].rating_kind", "parts[0].rating_side"};
    const char *const words[] = {NULL, NULL, "gearbox", NULL, "continuous", "input"};
    const double numbers[] = {360.0, 480.0, NAN, 400.0, NAN, NAN};
    axw_driveline_torque_path *path = NULL;
    STATUS(axw_driveline_torque_path_new_si(parts, numbers, words, 6, &path), AXW_OK);
    double margin = UNTOUCHED;
    STATUS(axw_driveline_torque_path_weakest(path, NULL, 0, NULL, NULL, &margin, NULL), AXW_OK);
    SAME(margin, 400.0 / 360.0);
    axw_driveline_torque_path_free(path);
    const char *const gap[] = {"engine_torque", "clutch_capacity", "parts[1].name"};
    path = NULL;
    REFUSED(axw_driveline_torque_path_new_si(gap, numbers, words, 3, &path), AXW_DOCUMENT, "parts[1].name: ");
    CHECK(path == NULL);
}

static double frequency(const axw_sheet *sheet)
{
    axw_assessment *assessment = NULL;
    STATUS(axw_assessment_new(sheet, &assessment), AXW_OK);
    double hertz = UNTOUCHED;
    STATUS(axw_assessment_value(assessment, "front.natural_frequency", &hertz), AXW_OK);
    axw_assessment_free(assessment);
    return hertz;
}

static void written(const axw_sheet *sheet, const char *path, const char *wanted)
{
    char text[64] = "";
    STATUS(axw_sheet_get(sheet, path, text, sizeof text, NULL), AXW_OK);
    TEXT(text, wanted);
}

static void sheet(void)
{
    axw_sheet *read = NULL, *named = NULL;
    STATUS(axw_sheet_new("[front]\nsprung_mass = \"290 kg\"\n[front.spring]\nrate = \"225 lbf/in\"\nmotion_ratio = 0.8\n",
                         &read),
           AXW_OK);
    const double rate = si("225 lbf/in", "linear stiffness");
    const char *const paths[] = {"name", "front.sprung_mass", "front.spring.rate", "front.spring.motion_ratio",
                                 "front.spring.free_length"};
    const char *const texts[] = {"Wagtail", NULL, NULL, "0.8", NULL};
    const double values[] = {NAN, 290.0, rate, NAN, NAN};
    STATUS(axw_sheet_new_si(paths, values, texts, 5, &named), AXW_OK);
    SAME(frequency(named), frequency(read));
    written(named, "front.sprung_mass", "290 kg");
    REFUSED(axw_sheet_get(named, "front.spring.free_length", NULL, 0, NULL), AXW_NOT_THERE, "is not written");

    /* A sheet set number by number is that of the text. */
    axw_sheet *set = NULL;
    STATUS(axw_sheet_new_si(NULL, NULL, NULL, 0, &set), AXW_OK);
    CHECK(isnan(frequency(set)));
    STATUS(axw_sheet_set_si(set, "front.sprung_mass", 290.0), AXW_OK);
    STATUS(axw_sheet_set_si(set, "front.spring.rate", rate), AXW_OK);
    STATUS(axw_sheet_set_si(set, "front.spring.motion_ratio", 0.8), AXW_OK);
    SAME(frequency(set), frequency(read));
    STATUS(axw_sheet_set_si(set, "front.spring.rate", 30e3), AXW_OK);
    written(set, "front.spring.rate", "30000 N/m");

    REFUSED(axw_sheet_set_si(set, "front.spring.rate", INFINITY), AXW_DOCUMENT, "front.spring.rate: ");
    REFUSED(axw_sheet_set_si(set, "front.spring.rate", -1.0), AXW_DOCUMENT, "-1 N/m is outside its range");
    REFUSED(axw_sheet_set_si(set, "front.spring.rat", 1.0), AXW_DOCUMENT, "did you mean `rate`?");
    REFUSED(axw_sheet_set_si(set, "front.natural_frequency", 1.0), AXW_DOCUMENT, "follows from others");
    REFUSED(axw_sheet_set_si(set, NULL, 1.0), AXW_NULL, "path is NULL");
    REFUSED(axw_sheet_set_si(NULL, "front.spring.rate", 1.0), AXW_NULL, "sheet is NULL");
    written(set, "front.spring.rate", "30000 N/m");

    /* Not known: taken out. */
    STATUS(axw_sheet_set_si(set, "front.spring.rate", NAN), AXW_OK);
    REFUSED(axw_sheet_get(set, "front.spring.rate", NULL, 0, NULL), AXW_NOT_THERE, "is not written");
    CHECK(isnan(frequency(set)));

    REFUSED(axw_sheet_new_si(paths, values, texts, 5, NULL), AXW_NULL, "sheet is NULL");
    axw_sheet_free(set);
    axw_sheet_free(named);
    axw_sheet_free(read);
}

void test_named_values(void)
{
    coolant();
    lists();
    sheet();
}
