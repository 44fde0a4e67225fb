/* Estimates a build of Tern Lane Fabrication from a quote: what every part has to carry, what its maker says
 * that it carries, how much is left, and what all of it costs. There is no verdict for the whole vehicle: one
 * short part is not made good by the others.
 *
 *     estimate dunlin_quote.csv            the estimate
 *     estimate --bits dunlin_quote.csv     the bits of each answer of the library, a line `name bits`
 *
 * Ends with 0 where every part meets its limit, with 1 where one is tight, short or not known, with 2 where
 * there is no estimate.
 *
 * Units are never converted here: the text of the quote goes to axw_text_read() or into a model's document as
 * it is printed, and plain numbers are coherent SI from then on. */
#include <axlewright.h>

#include <ctype.h>
#include <inttypes.h>
#include <math.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { ALL_MEET = 0, NOT_ALL_MEET = 1, NO_ESTIMATE = 2 };

/* ---- Refusals ------------------------------------------------------------------------------------------ */

static const char *quote_path;

/* Says what is wrong with a line of the quote and ends the program. */
static void refuse(int line, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    fprintf(stderr, "%s:%d: ", quote_path, line);
    vfprintf(stderr, format, arguments);
    fprintf(stderr, "\n");
    va_end(arguments);
    exit(NO_ESTIMATE);
}

/* The library's own sentence on its last refusal. */
static const char *sentence(void)
{
    static char buffer[1024];
    axw_last_message(buffer, sizeof buffer);
    return buffer;
}

/* ---- The quote ----------------------------------------------------------------------------------------- */

enum { LONGEST_LINE = 256, MOST_ROWS = 512 };

/* One line of the quote: `part,property,printed`. */
struct row {
    int line;
    int used;
    char text[LONGEST_LINE];
    const char *part, *property, *printed;
};

static struct row rows[MOST_ROWS];
static size_t row_count;

static char *trimmed(char *text)
{
    while (isspace((unsigned char)*text)) {
        text++;
    }
    for (char *end = text + strlen(text); end > text && isspace((unsigned char)end[-1]);) {
        *--end = '\0';
    }
    return text;
}

/* The row of a property, or NULL. */
static struct row *find(const char *part, const char *property)
{
    for (size_t i = 0; i < row_count; i++) {
        if (strcmp(rows[i].part, part) == 0 && strcmp(rows[i].property, property) == 0) {
            rows[i].used = 1;
            return &rows[i];
        }
    }
    return NULL;
}

/* Line on which a part begins; 1 where the quote does not have it. */
static int line_of(const char *part)
{
    for (size_t i = 0; i < row_count; i++) {
        if (strcmp(rows[i].part, part) == 0) {
            return rows[i].line;
        }
    }
    return 1;
}

/* The row of a property that must be there. */
static struct row *need(const char *part, const char *property)
{
    struct row *row = find(part, property);
    if (row == NULL) {
        refuse(line_of(part), "the quote does not say `%s` of `%s`", property, part);
    }
    return row;
}

/* The printed value of a row as a quantity, in coherent SI. */
static double si_of(const struct row *row, const char *quantity)
{
    double si = NAN;
    if (axw_text_read(row->printed, quantity, &si) != AXW_OK) {
        refuse(row->line, "%s", sentence());
    }
    return si;
}

static double value(const char *part, const char *property, const char *quantity)
{
    return si_of(need(part, property), quantity);
}

static void read_row(char *text, int line)
{
    if (row_count == MOST_ROWS) {
        refuse(line, "the quote is longer than this program reads");
    }
    struct row *row = &rows[row_count];
    strcpy(row->text, text);
    char *property = strchr(row->text, ',');
    char *printed = property == NULL ? NULL : strchr(property + 1, ',');
    if (printed == NULL) {
        refuse(line, "a line is `part,property,printed`");
    }
    *property++ = *printed++ = '\0';
    const char *part_name = trimmed(row->text), *property_name = trimmed(property);
    row->printed = trimmed(printed);
    if (*part_name == '\0' || *property_name == '\0' || *row->printed == '\0') {
        refuse(line, "a part, a property or its printed value is empty");
    }
    const struct row *before =
        strcmp(property_name, "torque_at") == 0 ? NULL : find(part_name, property_name);
    if (before != NULL) {
        refuse(line, "`%s` of `%s` stands on line %d already", property_name, part_name, before->line);
    }
    row->line = line;
    row->part = part_name;
    row->property = property_name;
    row_count++;
}

static void read_quote(void)
{
    FILE *file = fopen(quote_path, "r");
    if (file == NULL) {
        fprintf(stderr, "%s cannot be opened\n", quote_path);
        exit(NO_ESTIMATE);
    }
    char text[LONGEST_LINE];
    int line = 0, has_heading = 0;
    while (fgets(text, sizeof text, file) != NULL) {
        line++;
        if (strchr(text, '\n') == NULL && !feof(file)) {
            refuse(line, "the line is too long");
        }
        char *begin = trimmed(line == 1 && strncmp(text, "\xEF\xBB\xBF", 3) == 0 ? text + 3 : text);
        if (*begin == '\0' || *begin == '#') {
            continue;
        }
        if (has_heading) {
            read_row(begin, line);
        } else if (strcmp(begin, "part,property,printed") == 0) {
            has_heading = 1;
        } else {
            refuse(line, "the first line is `part,property,printed`");
        }
    }
    int broken = ferror(file);
    fclose(file);
    if (broken || row_count == 0) {
        refuse(line, "%s", broken ? "the file cannot be read" : "the quote is empty");
    }
    for (size_t i = 0; i < row_count; i++) {
        rows[i].used = 0;
    }
}

/* A line that nothing reads is a slip of the pen, not a thing to pass over. */
static void refuse_unused(void)
{
    for (size_t i = 0; i < row_count; i++) {
        if (!rows[i].used) {
            refuse(rows[i].line, "nothing here reads `%s` of `%s`", rows[i].property, rows[i].part);
        }
    }
}

/* ---- Documents ----------------------------------------------------------------------------------------- */

/* JSON text as it grows; so much is enough for any quote that is read. */
struct document {
    char text[8192];
    size_t length;
};

static void add(struct document *to, const char *text)
{
    size_t length = strlen(text);
    if (to->length + length >= sizeof to->text) {
        refuse(1, "the quote is longer than this program reads");
    }
    memcpy(to->text + to->length, text, length + 1);
    to->length += length;
}

static void add_string(struct document *to, const char *text)
{
    add(to, "\"");
    for (; *text != '\0'; text++) {
        char one[8] = {*text, '\0'};
        if (*text == '"' || *text == '\\') {
            add(to, "\\");
        } else if ((unsigned char)*text < 0x20) {
            snprintf(one, sizeof one, "\\u%04x", (unsigned)(unsigned char)*text);
        }
        add(to, one);
    }
    add(to, "\"");
}

/* `"key": "text"`, with a comma before all but the first member of an object. */
static void add_member(struct document *to, const char *key, const char *text)
{
    if (to->length > 0 && to->text[to->length - 1] != '{') {
        add(to, ", ");
    }
    add_string(to, key);
    add(to, ": ");
    add_string(to, text);
}

/* The same for a property of a part. A quantity is read once before, so that a refusal has its line;
 * `quantity` is NULL for a word. */
static void add_property(struct document *to, const char *key, const struct row *row, const char *quantity)
{
    if (row != NULL) {
        if (quantity != NULL) {
            si_of(row, quantity);
        }
        add_member(to, key, row->printed);
    }
}

/* ---- Findings ------------------------------------------------------------------------------------------ */

enum { TEXT = 64, WIDE = 3 * LONGEST_LINE, MOST_FINDINGS = 32 };

/* What is said of one part. */
struct finding {
    char part[WIDE], demand[WIDE], rating[WIDE], margin[WIDE];
    char verdict[16]; /* meets, tight, short or not known */
    char why[WIDE];
};

static struct finding findings[MOST_FINDINGS];
static size_t finding_count;

static struct finding *new_finding(const char *part)
{
    if (finding_count == MOST_FINDINGS) {
        refuse(1, "the quote has more parts than this program reads");
    }
    struct finding *of = &findings[finding_count++];
    snprintf(of->part, sizeof of->part, "%s", part);
    strcpy(of->demand, "-");
    strcpy(of->rating, "-");
    strcpy(of->margin, "-");
    strcpy(of->verdict, "not known");
    return of;
}

/* The words of the trade for a margin that was asked for. */
static void judge(struct finding *of, int is_short, int is_tight)
{
    strcpy(of->verdict, is_short ? "short" : is_tight ? "tight" : "meets");
}

/* Prints a value in coherent SI in the unit of the shop. */
static const char *shown(double si, const char *quantity, char *buffer, size_t size)
{
    if (axw_text_print(si, quantity, AXW_METRIC, buffer, size, NULL) != AXW_OK) {
        refuse(1, "%s", sentence());
    }
    return buffer;
}

/* Answers of the library, for --bits. */
static struct {
    const char *name;
    double si;
} answers[16];
static size_t answer_count;

static double answer(const char *name, double si)
{
    answers[answer_count].name = name;
    answers[answer_count++].si = si;
    return si;
}

/* Facts that are no findings, printed below the parts. */
static char facts[4096];

static void fact(const char *format, ...)
{
    size_t length = strlen(facts);
    va_list arguments;
    va_start(arguments, format);
    vsnprintf(facts + length, sizeof facts - length, format, arguments);
    va_end(arguments);
}

/* ---- Driveline: a model from a document that is made of the quote -------------------------------------- */

/* From the crankshaft on. */
static const char *const path[] = {"gearbox", "propeller shaft", "rear axle", "half shaft"};
enum { PATH = sizeof path / sizeof path[0] };

/* The torque path of `count` parts from `first` on; NULL where the library refuses it. */
static axw_driveline_torque_path *open_path(size_t first, size_t count)
{
    struct document json = {"{", 1};
    add_property(&json, "engine_torque", need("engine", "peak_torque"), "Torque");
    add_property(&json, "clutch_capacity", find("driveline", "clutch_capacity"), "Torque");
    add_property(&json, "shock_factor", find("driveline", "shock_factor"), "Ratio");
    add_property(&json, "tight_below", need("driveline", "tight_below"), "Ratio");
    add(&json, ", \"parts\": [");
    for (size_t i = first; i < first + count; i++) {
        const char *part = path[i];
        add(&json, i == first ? "{" : ", {");
        add_member(&json, "name", part);
        /* The lowest gear loads what is behind the gearbox most. */
        add_property(&json, "ratio", find(part, strcmp(part, "gearbox") == 0 ? "gear_1" : "ratio"), "Ratio");
        add_property(&json, "efficiency", find(part, "efficiency"), "Ratio");
        add_property(&json, "share", find(part, "share"), "Ratio");
        const struct row *rating = find(part, "rating");
        if (rating != NULL) {
            add(&json, ", \"rating\": {");
            add_property(&json, "torque", rating, "Torque");
            add_property(&json, "side", find(part, "side"), NULL);
            add_property(&json, "kind", find(part, "kind"), NULL);
            add(&json, "}");
        }
        add(&json, "}");
    }
    add(&json, "]}");
    axw_driveline_torque_path *model = NULL;
    return axw_driveline_torque_path_new(json.text, &model) == AXW_OK ? model : NULL;
}

/* Finds the part of which the library refuses a value: it refuses that part alone as well. Where it refuses
 * every one, the fault is in what they share. */
static void refuse_path(void)
{
    int line = 0;
    size_t refused = 0;
    for (size_t i = 0; i < PATH; i++) {
        axw_driveline_torque_path *alone = open_path(i, 1);
        if (alone == NULL) {
            refused++;
            line = line == 0 ? line_of(path[i]) : line;
        }
        axw_driveline_torque_path_free(alone);
    }
    axw_driveline_torque_path_free(open_path(0, PATH)); /* for its sentence */
    refuse(refused == PATH ? line_of("driveline") : line, "%s", sentence());
}

/* Place of a column. */
static size_t column(const axw_table *table, const char *wanted)
{
    const char *name = NULL;
    size_t place = 0;
    while (axw_table_column(table, place, &name, NULL, NULL, NULL) == AXW_OK && strcmp(name, wanted) != 0) {
        place++;
    }
    return place; /* beyond the last one where there is none: the next call says so */
}

static double number_in(const axw_table *table, const char *name, size_t row)
{
    const double *values = NULL;
    if (axw_table_f64(table, column(table, name), &values, NULL) != AXW_OK) {
        refuse(1, "%s", sentence());
    }
    return values[row];
}

static const char *word_in(const axw_table *table, const char *name, size_t row)
{
    const int32_t *codes = NULL;
    const char *word = "";
    size_t place = column(table, name);
    if (axw_table_codes(table, place, &codes, NULL, NULL) != AXW_OK ||
        axw_table_label(table, place, codes[row], &word) != AXW_OK) {
        refuse(1, "%s", sentence());
    }
    return word;
}

static void driveline(void)
{
    axw_driveline_torque_path *model = open_path(0, PATH);
    if (model == NULL) {
        refuse_path();
    }
    /* Without a shock factor some margins are not known, but none is better than with a factor of one. */
    double torque = value("engine", "peak_torque", "Torque"), no_shock = 1.0;
    axw_table *table = NULL, *at_best = NULL;
    if (axw_driveline_torque_path_parts_table(model, &table) != AXW_OK ||
        axw_driveline_torque_path_table(model, &torque, 1, &no_shock, 1, &at_best) != AXW_OK) {
        refuse(line_of("driveline"), "%s", sentence());
    }
    for (size_t i = 0; i < axw_table_rows(table); i++) {
        struct finding *of = new_finding(word_in(table, "part", i));
        const struct row *rating = find(of->part, "rating"), *kind = find(of->part, "kind");
        if (rating != NULL) {
            snprintf(of->rating, sizeof of->rating, "%s %s", rating->printed,
                     kind == NULL ? "" : kind->printed);
        }
        snprintf(of->verdict, sizeof of->verdict, "%s", word_in(table, "verdict", i));
        snprintf(of->why, sizeof of->why, "%s", word_in(table, "why", i));
        const int known = !isnan(number_in(table, "margin", i));
        const axw_table *from = known ? table : at_best;
        char text[TEXT];
        if (!isnan(number_in(from, "margin", i))) {
            snprintf(of->demand, sizeof of->demand, "%s%s", known ? "" : "at least ",
                     shown(number_in(from, "demand", i), "Torque", text, sizeof text));
            snprintf(of->margin, sizeof of->margin, "%s%s", known ? "" : "at most ",
                     shown(number_in(from, "margin", i), "Ratio", text, sizeof text));
        }
    }
    axw_table_free(at_best);
    axw_table_free(table);

    char part[LONGEST_LINE] = "", ratio[TEXT];
    double margin = NAN;
    int64_t not_known = 0;
    int32_t status =
        axw_driveline_torque_path_weakest(model, part, sizeof part, NULL, NULL, &margin, NULL, &not_known);
    if (status == AXW_OK) {
        answer("driveline.weakest_margin", margin);
        fact("Weakest known part of the driveline: %s, margin %s; %" PRId64
             " others are not known and may be weaker\n",
             part, shown(margin, "Ratio", ratio, sizeof ratio), not_known);
    } else if (status == AXW_NO_SOLUTION) {
        fact("Driveline: %s\n", sentence());
    } else {
        refuse(line_of("driveline"), "%s", sentence());
    }
    axw_driveline_torque_path_free(model);
}

/* ---- Engine and tyres: the cruise ---------------------------------------------------------------------- */

static void greatest_power(void)
{
    struct document json = {"{\"points\": [", 12};
    int line = 1, first = 1;
    for (size_t i = 0; i < row_count; i++) {
        if (strcmp(rows[i].part, "engine") != 0 || strcmp(rows[i].property, "torque_at") != 0) {
            continue;
        }
        char point[LONGEST_LINE];
        strcpy(point, rows[i].printed);
        char *torque = strchr(point, ':');
        if (torque == NULL) {
            refuse(rows[i].line, "a point of the torque curve is `speed: torque`");
        }
        *torque++ = '\0';
        struct row speed_row = rows[i], torque_row = rows[i];
        speed_row.printed = trimmed(point);
        torque_row.printed = trimmed(torque);
        add(&json, first ? "{" : ", {");
        add_property(&json, "engine_speed", &speed_row, "AngularVelocity");
        add_property(&json, "torque", &torque_row, "Torque");
        add(&json, "}");
        line = first ? rows[i].line : line;
        rows[i].used = 1;
        first = 0;
    }
    add(&json, "]}");
    axw_engine_torque_curve *curve = NULL;
    double power = NAN, speed = NAN;
    if (axw_engine_torque_curve_new(json.text, &curve) != AXW_OK ||
        axw_engine_torque_curve_peaks(curve, NULL, NULL, &power, &speed) != AXW_OK) {
        refuse(line, "%s", sentence());
    }
    axw_engine_torque_curve_free(curve);
    char a[TEXT], b[TEXT];
    fact("Greatest power of the engine: %s at %s\n",
         shown(answer("engine.peak_power", power), "Power", a, sizeof a),
         shown(speed, "AngularVelocity", b, sizeof b));
}

static double rolling_radius(void)
{
    const struct row *marking = need("tyre", "marking");
    struct document json = {"{", 1};
    add_property(&json, "marking", marking, NULL);
    add(&json, "}");
    axw_tyre_tyre *tyre = NULL;
    double radius = NAN, diameter = NAN;
    if (axw_tyre_tyre_new(json.text, &tyre) != AXW_OK ||
        axw_tyre_tyre_rolling(tyre, 0.0, &radius, NULL, NULL) != AXW_OK ||
        axw_tyre_tyre_dimensions(tyre, NULL, NULL, NULL, &diameter, NULL, NULL, NULL) != AXW_OK) {
        refuse(marking->line, "%s", sentence());
    }
    axw_tyre_tyre_free(tyre);
    char a[TEXT], b[TEXT];
    fact("Tyre %s: free diameter %s, rolling radius %s\n", marking->printed,
         shown(diameter, "Length", a, sizeof a),
         shown(answer("tyre.rolling_radius", radius), "Length", b, sizeof b));
    return radius;
}

static void cruise(double radius)
{
    const struct row *at_most = need("engine", "cruise_at_most");
    double final_drive = value("rear axle", "ratio", "Ratio"), speed = NAN;
    if (axw_driveline_engine_speed(value("vehicle", "cruise", "Velocity"),
                                   value("gearbox", "gear_6", "Ratio"), final_drive, radius,
                                   &speed) != AXW_OK) {
        refuse(need("vehicle", "cruise")->line, "%s", sentence());
    }
    answer("driveline.engine_speed", speed);
    double margin = si_of(at_most, "AngularVelocity") / speed;
    struct finding *of = new_finding("engine");
    char text[TEXT];
    snprintf(of->demand, sizeof of->demand, "%s at %s", shown(speed, "AngularVelocity", text, sizeof text),
             need("vehicle", "cruise")->printed);
    snprintf(of->rating, sizeof of->rating, "at most %s", at_most->printed);
    shown(margin, "Ratio", of->margin, sizeof of->margin);
    judge(of, margin < 1.0, margin < value("engine", "cruise_tight_below", "Ratio"));

    /* What every gear reaches. */
    const struct row *greatest = need("engine", "greatest_speed");
    fact("Road speed at %s, first to sixth:", greatest->printed);
    for (int gear = 1; gear <= 6; gear++) {
        char name[16], road[TEXT];
        double fastest = NAN;
        snprintf(name, sizeof name, "gear_%d", gear);
        const struct row *ratio = need("gearbox", name);
        if (axw_driveline_road_speed(si_of(greatest, "AngularVelocity"), si_of(ratio, "Ratio"), final_drive,
                                     radius, &fastest) != AXW_OK) {
            refuse(ratio->line, "%s", sentence());
        }
        fact("%s %s", gear > 1 ? "," : "", shown(fastest, "Velocity", road, sizeof road));
    }
    fact("\n");
}

static void tyre_load(void)
{
    struct finding *of = new_finding("tyre");
    const struct row *rating = find("tyre", "rating"), *laden = find("vehicle", "laden_wheel_load");
    if (rating != NULL) {
        snprintf(of->rating, sizeof of->rating, "%s", rating->printed);
    }
    if (rating == NULL || laden == NULL) {
        snprintf(of->why, sizeof of->why, "%s",
                 rating == NULL
                     ? "no rating"
                     : "the heaviest wheel was not weighed laden: `laden_wheel_load` of `vehicle`");
        return;
    }
    double margin = si_of(rating, "Mass") / si_of(laden, "Mass");
    snprintf(of->demand, sizeof of->demand, "%s", laden->printed);
    shown(margin, "Ratio", of->margin, sizeof of->margin);
    judge(of, margin < 1.0, 0);
}

/* ---- Front springs: a place in a band ------------------------------------------------------------------ */

static void front_springs(void)
{
    const struct row *from = need("front spring", "frequency_from"),
                     *to = need("front spring", "frequency_to");
    double mass = value("front spring", "sprung_mass", "Mass");
    double rate = NAN, frequency = NAN, sag = NAN, gravity = NAN;
    /* The ratio was measured at the lower mount, so the angle of the spring counts. */
    if (axw_spring_wheel_rate(value("front spring", "rate", "LinearStiffness"),
                              value("front spring", "motion_ratio", "Ratio"),
                              value("front spring", "angle", "Angle"), &rate) != AXW_OK ||
        axw_spring_natural_frequency(rate, mass, &frequency) != AXW_OK ||
        axw_text_read("1 g0", "Acceleration", &gravity) != AXW_OK ||
        axw_spring_static_deflection(mass * gravity, rate, &sag) != AXW_OK) {
        refuse(line_of("front spring"), "%s", sentence());
    }
    answer("spring.wheel_rate", rate);
    answer("spring.natural_frequency", frequency);
    answer("spring.static_deflection", sag);

    double low = si_of(from, "Frequency"), high = si_of(to, "Frequency"),
           inside = fmin(frequency - low, high - frequency);
    struct finding *of = new_finding("front spring");
    char a[TEXT], b[TEXT];
    shown(frequency, "Frequency", of->demand, sizeof of->demand);
    snprintf(of->rating, sizeof of->rating, "%s to %s", from->printed, to->printed);
    snprintf(of->margin, sizeof of->margin, "%s %s", shown(fabs(inside), "Frequency", a, sizeof a),
             inside >= 0.0     ? "inside"
             : frequency < low ? "below"
                               : "above");
    judge(of, inside < 0.0, inside < value("front spring", "frequency_tight_within", "Frequency"));
    fact("Front wheel rate %s without the geometric term of a loaded spring; sag at the wheel %s if linear "
         "from free length\n",
         shown(rate, "LinearStiffness", a, sizeof a), shown(sag, "Length", b, sizeof b));
}

/* ---- Coolant: a difference ----------------------------------------------------------------------------- */

static void coolant_cap(void)
{
    const char *const part = "coolant cap";
    struct document json = {"{", 1};
    add_property(&json, "liquid", need(part, "liquid"), NULL);
    add_property(&json, "strength", find(part, "strength"), "Ratio");
    add_property(&json, "strength_by", find(part, "strength_by"), NULL);
    add_property(&json, "concentrate", find(part, "concentrate"), "Ratio");
    add_property(&json, "cap", need(part, "opens_at"), "GaugePressure");
    add_property(&json, "altitude", need("vehicle", "altitude"), "Length");
    add_property(&json, "hottest_coolant", need(part, "hottest_coolant"), "Temperature");
    add_property(&json, "tight_below", need(part, "tight_below"), "TemperatureDifference");
    add(&json, "}");
    axw_cooling_coolant *coolant = NULL;
    double boiling = NAN, margin = NAN;
    int32_t verdict = AXW_VERDICT_NOT_KNOWN;
    struct finding *of = new_finding(part);
    if (axw_cooling_coolant_new(json.text, &coolant) != AXW_OK ||
        axw_cooling_coolant_margin(coolant, NULL, NULL, &boiling, &margin, &verdict) != AXW_OK) {
        refuse(line_of(part), "%s", sentence());
    }
    axw_cooling_coolant_free(coolant);
    answer("cooling.boiling_temperature", boiling);
    answer("cooling.margin", margin);
    char text[TEXT];
    shown(value(part, "hottest_coolant", "Temperature"), "Temperature", of->demand, sizeof of->demand);
    snprintf(of->rating, sizeof of->rating, "boils at %s", shown(boiling, "Temperature", text, sizeof text));
    shown(margin, "TemperatureDifference", of->margin, sizeof of->margin);
    if (verdict != AXW_VERDICT_NOT_KNOWN) {
        judge(of, verdict == AXW_VERDICT_SHORT, verdict == AXW_VERDICT_TIGHT);
    }
}

/* ---- On the scales ------------------------------------------------------------------------------------- */

static void scales(void)
{
    double total = NAN, front = NAN, diagonal = NAN, behind = NAN;
    if (axw_mass_weight_distribution(
            value("vehicle", "left_front", "Mass"), value("vehicle", "right_front", "Mass"),
            value("vehicle", "left_rear", "Mass"), value("vehicle", "right_rear", "Mass"),
            value("vehicle", "wheelbase", "Length"), value("vehicle", "front_track", "Length"),
            value("vehicle", "rear_track", "Length"), &total, NULL, NULL, &front, NULL, &diagonal, &behind,
            NULL) != AXW_OK) {
        refuse(line_of("vehicle"), "%s", sentence());
    }
    answer("mass.front_share", front);
    answer("mass.behind_front_axle", behind);
    char a[TEXT], b[TEXT];
    fact("On the scales: %s, %.1f %% on the front axle, %.1f %% on the diagonal, centre of gravity %s behind "
         "the front axle\n",
         shown(total, "Mass", a, sizeof a), 100.0 * front, 100.0 * diagonal,
         shown(behind, "Length", b, sizeof b));
}

/* ---- Prices -------------------------------------------------------------------------------------------- */

/* Hundredths of the currency: sums of prices are exact. -1 where the part has no price. */
static long long price(const char *part)
{
    const struct row *row = find(part, "price"), *count = find(part, "count");
    long many = 1;
    if (count != NULL) {
        char *end = NULL;
        many = strtol(count->printed, &end, 10);
        if (*end != '\0' || many < 1 || many > 100) {
            refuse(count->line, "a count is a whole number from 1 to 100");
        }
    }
    if (row == NULL) {
        return -1;
    }
    size_t whole = strspn(row->printed, "0123456789");
    const char *rest = row->printed + whole;
    if (whole < 1 || whole > 9 || rest[0] != '.' || strspn(rest + 1, "0123456789") != 2 || rest[3] != '\0') {
        refuse(row->line, "a price is written with two decimals, like 185.00");
    }
    return many * (100 * strtoll(row->printed, NULL, 10) + strtoll(rest + 1, NULL, 10));
}

/* A part that is priced and not checked is not known, and stands in the estimate as such. */
static void unchecked_parts(void)
{
    for (size_t i = 0; i < row_count; i++) {
        int is_checked = strcmp(rows[i].property, "price") != 0;
        for (size_t j = 0; j < finding_count; j++) {
            is_checked = is_checked || strcmp(rows[i].part, findings[j].part) == 0;
        }
        if (!is_checked) {
            strcpy(new_finding(rows[i].part)->why, "nothing here checks this part");
        }
    }
}

/* ---- The estimate -------------------------------------------------------------------------------------- */

/* Prints text and fills up with blanks; a character of several bytes is one place wide. */
static void print_wide(const char *text, int width)
{
    for (const char *c = text; *c != '\0'; c++) {
        width -= ((unsigned char)*c & 0xC0u) != 0x80u;
    }
    printf("%s%*s", text, width > 0 ? width + 1 : 1, "");
}

static int print_estimate(void)
{
    int code = ALL_MEET;
    long long total = 0;
    printf("Tern Lane Fabrication: estimate from %s (the Dunlin and every figure are invented)\n\n",
           quote_path);
    print_wide("part", 16);
    print_wide("demand", 18);
    print_wide("rating or limit", 21);
    print_wide("margin", 15);
    print_wide("verdict", 10);
    printf("%10s\n", "price");
    for (size_t i = 0; i < finding_count; i++) {
        const struct finding *of = &findings[i];
        long long cost = price(of->part);
        print_wide(of->part, 16);
        print_wide(of->demand, 18);
        print_wide(of->rating, 21);
        print_wide(of->margin, 15);
        print_wide(of->verdict, 10);
        if (cost < 0) {
            printf("%10s\n", "no price");
        } else {
            printf("%7lld.%02lld\n", cost / 100, cost % 100);
            total += cost;
        }
        code = strcmp(of->verdict, "meets") == 0 ? code : NOT_ALL_MEET;
    }
    print_wide("total price", 84);
    printf("%7lld.%02lld\n", total / 100, total % 100);

    printf("\nNot known:\n");
    for (size_t i = 0; i < finding_count; i++) {
        if (strcmp(findings[i].verdict, "not known") == 0) {
            printf("  %s: %s\n", findings[i].part, findings[i].why);
        }
    }
    printf("\n%s", facts);
    printf(
        "\nCaution: a part that breaks can lock a wheel or drop a shaft on the road. A compressed spring "
        "stores enough energy to kill.\n"
        "Hot pressurised coolant scalds: never open a hot system; its boiling point is an upper bound. Load "
        "index and speed symbol of a\n"
        "tyre must suit the vehicle. Ratings of the makers, local codes and licensed practice come first.\n");
    return code;
}

static int print_bits(void)
{
    for (size_t i = 0; i < answer_count; i++) {
        uint64_t bits;
        memcpy(&bits, &answers[i].si, sizeof bits);
        printf("%s %016" PRIx64 "\n", answers[i].name, bits);
    }
    return ALL_MEET;
}

int main(int argc, char **argv)
{
    int bits = argc == 3 && strcmp(argv[1], "--bits") == 0;
    if (argc != 2 + bits || argv[argc - 1][0] == '-') {
        fprintf(stderr, "usage: estimate [--bits] QUOTE.csv\n");
        return NO_ESTIMATE;
    }
    if (!axw_version_fits(AXW_VERSION_NUMBER)) {
        fprintf(stderr, "compiled for Axlewright %s, but %s is loaded\n", AXW_VERSION, axw_version());
        return NO_ESTIMATE;
    }
    quote_path = argv[argc - 1];
    read_quote();
    cruise(rolling_radius());
    greatest_power();
    driveline();
    front_springs();
    tyre_load();
    coolant_cap();
    scales();
    unchecked_parts();
    for (size_t i = 0; i < finding_count; i++) {
        price(findings[i].part);
    }
    refuse_unused();
    return bits ? print_bits() : print_estimate();
}
