/* Models by handle, from JSON and from TOML. */
#include "check.h"

static const char TYRE_JSON[] = "{\"marking\": \"225/70R15C 112/110R\"}";
static const char TYRE_TOML[] = "marking = \"225/70R15C 112/110R\"\n";

static const char CURVE_JSON[] = "{\"points\": [{\"engine_speed\": \"1000 rpm\", \"torque\": \"210 N·m\"},"
                                 " {\"engine_speed\": \"1600 rpm\", \"torque\": \"360 N·m\"},"
                                 " {\"engine_speed\": \"2800 rpm\", \"torque\": \"360 N·m\"},"
                                 " {\"engine_speed\": \"4200 rpm\", \"torque\": \"250 N·m\"}]}";
static const char CURVE_TOML[] =
    "[[points]]\nengine_speed = \"1000 rpm\"\ntorque = \"210 N·m\"\n"
    "[[points]]\nengine_speed = \"1600 rpm\"\ntorque = \"360 N·m\"\n"
    "[[points]]\nengine_speed = \"2800 rpm\"\ntorque = { value = 360, unit = \"N·m\" }\n"
    "[[points]]\nengine_speed = \"4200 rpm\"\ntorque = \"250 N·m\"\n";

static const char PATH_JSON[] =
    "{\"engine_torque\": \"360 N·m\", \"stall_ratio\": \"none\", \"parts\": ["
    "{\"name\": \"gearbox\", \"ratio\": 4.7, \"efficiency\": \"97 %\","
    " \"torque_rating\": \"400 N·m\", \"rating_side\": \"input\", \"rating_kind\": \"continuous\"},"
    "{\"name\": \"Gelenkwelle ö\", \"torque_rating\": \"2000 N·m\", \"rating_kind\": \"peak\"}]}";
static const char PATH_TOML[] =
    "engine_torque = \"360 N·m\"\nstall_ratio = \"none\"\n"
    "[[parts]]\nname = \"gearbox\"\nratio = 4.7\nefficiency = \"97 %\"\n"
    "torque_rating = { value = 400, unit = \"N·m\" }\nrating_side = \"input\"\nrating_kind = \"continuous\"\n"
    "[[parts]]\nname = \"Gelenkwelle ö\"\ntorque_rating = \"2000 N·m\"\nrating_kind = \"peak\"\n";

static const char COOLANT_JSON[] =
    "{\"liquid\": \"ethylene_glycol\", \"volume_share\": \"50 %\", \"concentrate\": "
    "\"95 %\","
    " \"cap\": \"15 psi gauge\", \"altitude\": \"5000 ft\", \"hottest\": \"230 °F\"}";
static const char COOLANT_TOML[] =
    "liquid = \"ethylene_glycol\"\nvolume_share = \"50 %\"\nconcentrate = \"95 %\"\n"
    "cap = \"15 psi gauge\"\naltitude = \"5000 ft\"\nhottest = \"230 °F\"\n";

static void tyre(const char *text)
{
    axw_tyre_tyre *model = NULL;
    STATUS(axw_tyre_tyre_new(text, &model), AXW_OK);
    CHECK(model != NULL);

    double width, height, rim, diameter, radius, circumference, turns;
    STATUS(axw_tyre_tyre_dimensions(model, &width, &height, &rim, &diameter, &radius, &circumference, &turns),
           AXW_OK);
    NEAR(width, 0.225, 1e-15);
    NEAR(height, 0.1575, 1e-15);
    NEAR(rim, 0.381, 1e-15);
    NEAR(diameter, 0.696, 1e-15);
    SAME(radius, diameter / 2.0);
    NEAR(circumference * turns, 1.0, 1e-15);
    STATUS(axw_tyre_tyre_dimensions(model, NULL, NULL, NULL, NULL, NULL, NULL, NULL), AXW_OK);

    double rolling = UNTOUCHED;
    STATUS(axw_tyre_tyre_rolling(model, 0.0, &rolling, NULL, NULL), AXW_OK);
    NEAR(rolling, 3.05 * 0.696 / (2.0 * 3.14159265358979323846), 1e-15);
    rolling = UNTOUCHED;
    REFUSED(axw_tyre_tyre_rolling(model, 0.031, &rolling, NULL, NULL), AXW_OUT_OF_RANGE,
            "tread_worn = 0.031 m");
    REFUSED(axw_tyre_tyre_rolling(model, -0.001, &rolling, NULL, NULL), AXW_OUT_OF_RANGE,
            "tread_worn = -0.001 m");
    REFUSED(axw_tyre_tyre_rolling(model, NAN, &rolling, NULL, NULL), AXW_OUT_OF_RANGE, "tread_worn = NaN is not a finite length");
    REFUSED(axw_tyre_tyre_rolling(NULL, 0.0, &rolling, NULL, NULL), AXW_NULL, "model is NULL");
    SAME(rolling, UNTOUCHED);

    /* As JSON, and back. */
    char json[64];
    size_t needed = 0;
    STATUS(axw_tyre_tyre_json(model, NULL, 0, &needed), AXW_OK);
    CHECK(needed == sizeof "{\"marking\":\"225/70R15C 112/110R\"}");
    for (size_t size = 0; size < needed; size += needed - 2) { /* 0 and one too few */
        memset(json, '#', sizeof json);
        REFUSED(axw_tyre_tyre_json(model, json, size, NULL), AXW_BUFFER, "buffer is too short");
        CHECK(json[0] == '#');
        size++;
    }
    STATUS(axw_tyre_tyre_json(model, json, needed, NULL), AXW_OK);
    TEXT(json, "{\"marking\":\"225/70R15C 112/110R\"}");
    axw_tyre_tyre *again = NULL;
    STATUS(axw_tyre_tyre_new(json, &again), AXW_OK);
    CHECK(again != NULL && again != model);
    REFUSED(axw_tyre_tyre_json(NULL, json, sizeof json, NULL), AXW_NULL, "model is NULL");

    axw_tyre_tyre_free(again);
    axw_tyre_tyre_free(model);
    axw_tyre_tyre_free(NULL);
}

static void torque_curve(const char *text)
{
    const double rpm = 3.14159265358979323846 / 30.0;
    axw_engine_torque_curve *model = NULL;
    STATUS(axw_engine_torque_curve_new(text, &model), AXW_OK);
    double torque = UNTOUCHED, power = UNTOUCHED;
    STATUS(axw_engine_torque_curve_torque(model, 2000.0 * rpm, &torque), AXW_OK);
    NEAR(torque, 360.0, 1e-12);
    STATUS(axw_engine_torque_curve_power(model, 2000.0 * rpm, &power), AXW_OK);
    NEAR(power, 360.0 * 2000.0 * rpm, 1e-12);
    torque = UNTOUCHED;
    CHECK(axw_engine_torque_curve_torque(model, 5000.0 * rpm, &torque) != AXW_OK);
    check_message("engine_speed", "beyond the last point", __FILE__, __LINE__);
    CHECK(axw_engine_torque_curve_torque(model, NAN, &torque) != AXW_OK);
    REFUSED(axw_engine_torque_curve_torque(NULL, 1.0, &torque), AXW_NULL, "model is NULL");
    SAME(torque, UNTOUCHED);
    double peak, peak_speed, most, most_speed;
    STATUS(axw_engine_torque_curve_peaks(model, &peak, &peak_speed, &most, &most_speed), AXW_OK);
    NEAR(peak, 360.0, 1e-12);
    NEAR(peak_speed, 1600.0 * rpm, 1e-12);
    CHECK(most > 360.0 * 2800.0 * rpm && most_speed > 2800.0 * rpm && most_speed <= 4200.0 * rpm);
    STATUS(axw_engine_torque_curve_peaks(model, NULL, NULL, NULL, NULL), AXW_OK);
    axw_engine_torque_curve_free(model);
    axw_engine_torque_curve_free(NULL);
}

static void torque_path(const char *text)
{
    axw_driveline_torque_path *model = NULL;
    STATUS(axw_driveline_torque_path_new(text, &model), AXW_OK);
    char part[32] = "";
    size_t part_needed = 0;
    double torque, margin;
    int32_t verdict = -1;
    int64_t not_known = -1;
    STATUS(axw_driveline_torque_path_weakest(model, part, sizeof part, &part_needed, &torque, &margin,
                                             &not_known),
           AXW_OK);
    TEXT(part, "gearbox");
    CHECK(part_needed == sizeof "gearbox");
    SAME(torque, 360.0);
    NEAR(margin, 400.0 / 360.0, 1e-15);
    STATUS(axw_verdict_of_ratio(margin, 1.25, &verdict), AXW_OK);
    CHECK(verdict == AXW_VERDICT_TIGHT);
    CHECK(not_known == 2); /* of the gearbox the shock, of the shaft everything */

    STATUS(axw_driveline_torque_path_weakest(model, part, sizeof "gearbox", NULL, NULL, NULL, NULL),
           AXW_OK);
    STATUS(axw_driveline_torque_path_weakest(model, NULL, 0, NULL, NULL, NULL, NULL), AXW_OK);
    torque = UNTOUCHED;
    not_known = -1;
    part_needed = 99;
    memset(part, '#', sizeof part);
    for (size_t size = 0; size < sizeof "gearbox"; size++) {
        REFUSED(
            axw_driveline_torque_path_weakest(model, part, size, &part_needed, &torque, NULL, &not_known),
            AXW_BUFFER, "part is too short: 8 bytes are needed");
    }
    CHECK(part[0] == '#' && part_needed == 99 && not_known == -1);
    SAME(torque, UNTOUCHED);
    REFUSED(axw_driveline_torque_path_weakest(NULL, part, sizeof part, NULL, NULL, NULL, NULL),
            AXW_NULL, "model is NULL");
    axw_driveline_torque_path_free(model);
    axw_driveline_torque_path_free(NULL);

    /* Nothing known: no weakest part. */
    STATUS(axw_driveline_torque_path_new(
               "{\"engine_torque\": \"1 N·m\", \"parts\": [{\"name\": \"a\"}]}", &model),
           AXW_OK);
    REFUSED(axw_driveline_torque_path_weakest(model, part, sizeof part, NULL, &torque, NULL, NULL),
            AXW_NO_SOLUTION, "no weakest part");
    SAME(torque, UNTOUCHED);
    axw_driveline_torque_path_free(model);
}

static void coolant(const char *text)
{
    axw_cooling_coolant *model = NULL;
    STATUS(axw_cooling_coolant_new(text, &model), AXW_OK);
    double pressure, fraction, boiling, margin, freezing;
    int32_t verdict = -1;
    STATUS(axw_cooling_coolant_margin(model, &pressure, &fraction, &boiling, &margin), AXW_OK);
    CHECK(pressure > 187.0e3 && pressure < 188.5e3);
    CHECK(fraction > 0.45 && fraction < 0.53);
    NEAR(margin, boiling - 0.8 - 383.15, 1e-9); /* 0.8 K: the bound of the mixture model */
    CHECK(margin > 15.0 && margin < 17.0);
    STATUS(axw_verdict_of_difference(margin, 20.0 / 1.8, &verdict), AXW_OK);
    CHECK(verdict == AXW_VERDICT_MEETS);
    STATUS(axw_cooling_coolant_margin(model, NULL, NULL, NULL, NULL), AXW_OK);
    STATUS(axw_cooling_coolant_freezing_temperature(model, &freezing), AXW_OK);
    CHECK(freezing > 230.0 && freezing < 245.0);
    margin = UNTOUCHED;
    REFUSED(axw_cooling_coolant_margin(NULL, NULL, NULL, NULL, &margin), AXW_NULL, "model is NULL");
    SAME(margin, UNTOUCHED);
    axw_cooling_coolant_free(model);
    axw_cooling_coolant_free(NULL);
}

static void refuses(const char *text, int32_t status, const char *first, const char *second)
{
    axw_driveline_torque_path *const before = (axw_driveline_torque_path *)(void *)&checks_failed;
    axw_driveline_torque_path *model = before;
    STATUS(axw_driveline_torque_path_new(text, &model), status);
    check_message(first, text == NULL ? "NULL" : text, __FILE__, __LINE__);
    check_message(second, text == NULL ? "NULL" : text, __FILE__, __LINE__);
    CHECK(model == before);
}

/* Text that opens `depth` lists; the caller frees it. */
static char *nested(const char *head, size_t depth)
{
    char *text = (char *)malloc(strlen(head) + depth + 1);
    if (text == NULL) {
        abort();
    }
    strcpy(text, head);
    memset(text + strlen(head), '[', depth);
    text[strlen(head) + depth] = '\0';
    return text;
}

static void bad_documents(void)
{
    refuses(NULL, AXW_NULL, "text is NULL", "");
    refuses("engine_torque = \"\xFF\"", AXW_UTF8, "text is not UTF-8", "");
    refuses("", AXW_DOCUMENT, "engine_torque", "");
    refuses("{", AXW_DOCUMENT, "line 1", "");
    refuses("{\"engine_torque\": \"360 N·m\",\n \"parts\": [\n  {\"nmae\": "
            "\"gearbox\"}]}",
            AXW_DOCUMENT, "line 3, column 4: parts[0].nmae: ", "did you mean `name`?");
    refuses("engine_torque = \"360 N·m\"\n[[parts]]\nname = \"gearbox\"\nefficiency = "
            "\"97 mm\"\n",
            AXW_DOCUMENT, "line 4, column 14: parts[0].efficiency: ", "97 mm");
    refuses("{\"engine_torque\": 360,\n \"parts\": []}", AXW_DOCUMENT,
            "line 1, column 19: engine_torque: ", "360 has no unit; a torque is text with N·m");
    refuses("engine_torque = \"360 N·m\"\n[[parts]]\nname = \"gearbox\"\n"
            "torque_rating = \"400 N·m\"\nrating_kind = \"continous\"\n",
            AXW_DOCUMENT, "line 5, column 15: parts[0].rating_kind: ", "continous");
    refuses("{\"engine_torque\": \"360 N·m\", \"parts\": [{\"name\": \"a\"}]} more",
            AXW_DOCUMENT, "line 1", "");
    refuses("{\"engine_torque\": \"360 N·m\", \"parts\": []}", AXW_LENGTH,
            "parts has 0 entries", "");
    refuses("{\"engine_torque\": \"360 N·m\", \"shock_factor\": 0.5, \"parts\": [{\"name\": \"a\"}]}",
            AXW_OUT_OF_RANGE, "shock_factor = 0.5 ", "1 <= shock_factor");
    refuses("{\"engine_torque\": \"360 N·m\", \"tight_below\": 1.25, \"parts\": [{\"name\": \"a\"}]}", AXW_DOCUMENT,
            "tight_below: the margin that is wanted belongs on a build sheet (`wanted.strength`)", "Verdict::of_ratio");

    char *json = nested("{\"parts\": ", 100000), *toml = nested("parts = ", 100000);
    refuses(json, AXW_DOCUMENT, "", "");
    refuses(toml, AXW_DOCUMENT, "", "");
    free(json);
    free(toml);

    STATUS(axw_tyre_tyre_new(TYRE_JSON, NULL), AXW_NULL);
    STATUS(axw_driveline_torque_path_new(PATH_JSON, NULL), AXW_NULL);
    STATUS(axw_engine_torque_curve_new(CURVE_JSON, NULL), AXW_NULL);
    STATUS(axw_cooling_coolant_new(COOLANT_JSON, NULL), AXW_NULL);
    check_message("out is NULL", "new without out", __FILE__, __LINE__);

    axw_tyre_tyre *none = NULL;
    REFUSED(axw_tyre_tyre_new("marking = \"205/55\"", &none), AXW_TEXT, "not a tyre size");
    axw_engine_torque_curve *curve = NULL;
    CHECK(axw_engine_torque_curve_new("points = []", &curve) == AXW_LENGTH);
    axw_cooling_coolant *water = NULL;
    REFUSED(axw_cooling_coolant_new("liquid = \"water\"\ncap = \"15 psi\"\n", &water), AXW_DOCUMENT,
            "line 2, column 7: cap: ");
    CHECK(none == NULL && curve == NULL && water == NULL);
}

void test_models(void)
{
    tyre(TYRE_JSON);
    tyre(TYRE_TOML);
    torque_curve(CURVE_JSON);
    torque_curve(CURVE_TOML);
    torque_path(PATH_JSON);
    torque_path(PATH_TOML);
    coolant(COOLANT_JSON);
    coolant(COOLANT_TOML);
    bad_documents();
}
