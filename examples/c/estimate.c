/* Estimates a build of Tern Lane Fabrication from a quote: what every part has to carry, what its maker says
 * that it carries, how much is left, and what all of it costs. There is no verdict for the whole vehicle: one
 * short part is not made good by the others.
 *
 *     estimate dunlin_quote.csv            the estimate
 *     estimate --bits dunlin_quote.csv     the bits of each answer of the library, a line `name bits`
 *     estimate dunlin.toml prices.csv REQUIREMENT...
 *                                          the findings of a build sheet, and what a price list can do about them
 *
 * Ends with 0 where every part meets its limit, with 1 where one is tight, short or not known, or no parts of
 * the list go together, with 2 where there is no estimate.
 *
 * Units are never converted here: the text of the quote goes to axw_text_read() as it is printed, and plain
 * numbers are coherent SI from then on; a model takes them by their names. */
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

/* Goes on where the library answered; `line` is where the quote says what it was asked. */
static void must(int32_t status, int line)
{
    if (status != AXW_OK) {
        refuse(line, "%s", sentence());
    }
}

/* ---- The quote ----------------------------------------------------------------------------------------- */

enum { LONGEST_LINE = 256, MOST_ROWS = 512 };

/* One line of the quote: `part,property,printed`. */
struct row {
    int line, used;
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

/* The first row of a part, or that of one of its properties; NULL where there is none. */
static struct row *look_up(const char *part, const char *property)
{
    for (size_t i = 0; i < row_count; i++) {
        if (strcmp(rows[i].part, part) == 0 &&
            (property == NULL || strcmp(rows[i].property, property) == 0)) {
            return &rows[i];
        }
    }
    return NULL;
}

/* Line on which a part begins; 1 where the quote does not have it. */
static int line_of(const char *part)
{
    const struct row *row = look_up(part, NULL);
    return row == NULL ? 1 : row->line;
}

/* The row of a property that may be missing. */
static const struct row *find(const char *part, const char *property)
{
    struct row *row = look_up(part, property);
    if (row != NULL) {
        row->used = 1;
    }
    return row;
}

/* The row of a property that must be there. */
static const struct row *need(const char *part, const char *property)
{
    const struct row *row = find(part, property);
    if (row == NULL) {
        refuse(line_of(part), "the quote does not say `%s` of `%s`", property, part);
    }
    return row;
}

/* The printed value of a row as a quantity, in coherent SI. */
static double si_of(const struct row *row, const char *quantity)
{
    double si = NAN;
    must(axw_text_read(row->printed, quantity, &si), row->line);
    return si;
}

static double value(const char *part, const char *property, const char *quantity)
{
    return si_of(need(part, property), quantity);
}

static void read_row(const char *text, int line)
{
    if (row_count == MOST_ROWS) {
        refuse(line, "the quote is longer than this program reads");
    }
    struct row *row = &rows[row_count];
    strcpy(row->text, text);
    char *property = strchr(row->text, ','), *printed = property == NULL ? NULL : strchr(property + 1, ',');
    if (printed == NULL) {
        refuse(line, "a line is `part,property,printed`");
    }
    *property++ = *printed++ = '\0';
    row->line = line;
    row->part = trimmed(row->text);
    row->property = trimmed(property);
    row->printed = trimmed(printed);
    if (*row->part == '\0' || *row->property == '\0' || *row->printed == '\0') {
        refuse(line, "a part, a property or its printed value is empty");
    }
    const struct row *before = look_up(row->part, row->property);
    if (before != NULL && strcmp(row->property, "torque_at") != 0) {
        refuse(line, "`%s` of `%s` stands on line %d already", row->property, row->part, before->line);
    }
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
        const char *begin = trimmed(line == 1 && strncmp(text, "\xEF\xBB\xBF", 3) == 0 ? text + 3 : text);
        if (*begin == '\0' || *begin == '#') {
            continue;
        }
        if (has_heading) {
            read_row(begin, line);
        } else if (strcmp(begin, "part,property,printed") != 0) {
            refuse(line, "the first line is `part,property,printed`");
        }
        has_heading = 1;
    }
    int broken = ferror(file);
    fclose(file);
    if (broken || row_count == 0) {
        refuse(line, "%s", broken ? "the file cannot be read" : "the quote is empty");
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

/* ---- Models: what they are made of ------------------------------------------------------------------ */

enum { MOST_VALUES = 2 * MOST_ROWS };

/* Named values of a model: the text of each, or its number in coherent SI where it has none. */
struct values {
    const char *paths[MOST_VALUES], *texts[MOST_VALUES];
    double si[MOST_VALUES];
    size_t count;
};

static void add_text(struct values *to, const char *path, const char *text, double si)
{
    if (to->count == MOST_VALUES) {
        refuse(1, "the quote is longer than this program reads");
    }
    to->paths[to->count] = path;
    to->texts[to->count] = text;
    to->si[to->count++] = si;
}

/* What is printed in the quote, if it is; `quantity` is NULL for a word. */
static void add_row(struct values *to, const char *path, const struct row *row, const char *quantity)
{
    if (row != NULL) {
        add_text(to, path, quantity == NULL ? row->printed : NULL, quantity == NULL ? NAN : si_of(row, quantity));
    }
}

/* ---- Findings ------------------------------------------------------------------------------------------ */

/* What is said of one part; NULL where there is nothing to say. */
struct finding {
    const char *part, *demand, *rating, *margin, *verdict, *why;
};

enum { MOST_FINDINGS = 32 };

static struct finding findings[MOST_FINDINGS];
static size_t finding_count;

/* Formatted text that lasts as long as the program. */
static const char *text(const char *format, ...)
{
    static char store[1 << 16];
    static size_t used;
    char *begin = store + used;
    va_list arguments;
    va_start(arguments, format);
    int length = vsnprintf(begin, sizeof store - used, format, arguments);
    va_end(arguments);
    if (length < 0 || (size_t)length >= sizeof store - used) {
        refuse(1, "the quote is longer than this program reads");
    }
    used += (size_t)length + 1;
    return begin;
}

/* Facts that are no findings, printed below the parts. */
static const char *facts = "";

static void add_fact(const char *fact)
{
    facts = text("%s%s\n", facts, fact);
}

static void add_finding(struct finding of)
{
    if (finding_count == MOST_FINDINGS) {
        refuse(1, "the quote has more parts than this program reads");
    }
    findings[finding_count++] = of;
}

static int has_verdict(const struct finding *of, int32_t verdict)
{
    return strcmp(of->verdict, axw_verdict_word(verdict)) == 0;
}

/* A value in coherent SI in the unit of the shop. */
static const char *shown(double si, const char *quantity)
{
    char buffer[64];
    must(axw_text_print(si, quantity, AXW_METRIC, buffer, sizeof buffer, NULL), 1);
    return text("%s", buffer);
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

/* ---- Driveline ----------------------------------------------------------------------------------------- */

/* From the crankshaft on. */
static const char *const path[] = {"gearbox", "propeller shaft", "rear axle", "half shaft"};
enum { PATH = sizeof path / sizeof path[0] };

/* The path of a key of a part. */
static const char *key(size_t place, const char *name)
{
    return text("parts[%d].%s", (int)place, name);
}

static axw_driveline_torque_path *new_path(void)
{
    struct values values = {.count = 0};
    add_row(&values, "engine_torque", need("engine", "peak_torque"), "Torque");
    add_row(&values, "clutch_capacity", find("driveline", "clutch_capacity"), "Torque");
    add_row(&values, "shock_factor", find("driveline", "shock_factor"), "Ratio");
    for (size_t i = 0; i < PATH; i++) {
        const char *part = path[i];
        add_text(&values, key(i, "name"), part, NAN);
        /* The lowest gear loads what is behind the gearbox most. */
        add_row(&values, key(i, "ratio"), find(part, strcmp(part, "gearbox") == 0 ? "gear_1" : "ratio"), "Ratio");
        add_row(&values, key(i, "efficiency"), find(part, "efficiency"), "Ratio");
        add_row(&values, key(i, "differential"), find(part, "differential"), NULL);
        const struct row *rating = find(part, "rating");
        if (rating != NULL) {
            add_row(&values, key(i, "torque_rating"), rating, "Torque");
            add_row(&values, key(i, "rating_side"), find(part, "side"), NULL);
            add_row(&values, key(i, "rating_kind"), find(part, "kind"), NULL);
        }
    }
    axw_driveline_torque_path *model = NULL;
    if (axw_driveline_torque_path_new_si(values.paths, values.si, values.texts, values.count, &model) != AXW_OK) {
        /* The sentence counts the parts from 0. */
        const char *place = strstr(sentence(), "parts[");
        size_t refused = place == NULL ? PATH : strtoul(place + strlen("parts["), NULL, 10);
        refuse(line_of(refused < PATH ? path[refused] : "driveline"), "%s", sentence());
    }
    return model;
}

static double number_in(const axw_table *table, const char *name, size_t row)
{
    const double *values = NULL;
    size_t column = 0;
    must(axw_table_find(table, name, &column), 1);
    must(axw_table_f64(table, column, &values, NULL), 1);
    return values[row];
}

static const char *word_in(const axw_table *table, const char *name, size_t row)
{
    const int32_t *codes = NULL;
    const char *word = NULL;
    size_t column = 0;
    must(axw_table_find(table, name, &column), 1);
    must(axw_table_codes(table, column, &codes, NULL, NULL), 1);
    must(axw_table_label(table, column, codes[row], &word), 1);
    return text("%s", word); /* the table's own is freed with it */
}

static void driveline(void)
{
    axw_driveline_torque_path *model = new_path();
    int line = line_of("driveline");
    /* Without a shock factor some margins are not known, but none is better than with a factor of one. */
    double torque = value("engine", "peak_torque", "Torque"), no_shock = 1.0;
    axw_table *table = NULL, *at_best = NULL;
    double wanted = value("driveline", "wanted", "Ratio");
    must(axw_driveline_torque_path_parts_table(model, &table), line);
    must(axw_driveline_torque_path_table(model, &torque, 1, &no_shock, 1, &at_best), line);
    for (size_t i = 0; i < axw_table_rows(table); i++) {
        struct finding of = {.part = word_in(table, "part", i), .why = word_in(table, "why", i)};
        int32_t verdict = AXW_VERDICT_NOT_KNOWN;
        must(axw_verdict_of_ratio(number_in(table, "margin", i), wanted, &verdict), line);
        of.verdict = axw_verdict_word(verdict);
        const struct row *rating = find(of.part, "rating"), *kind = find(of.part, "kind");
        if (rating != NULL) {
            of.rating = text("%s %s", rating->printed, kind == NULL ? "" : kind->printed);
        }
        const int known = !isnan(number_in(table, "margin", i));
        const axw_table *from = known ? table : at_best;
        double margin = number_in(from, "margin", i), demand = number_in(from, "demand", i);
        if (!isnan(margin)) {
            of.demand = text("%s%s", known ? "" : "at least ", shown(demand, "Torque"));
            of.margin = text("%s%s", known ? "" : "at most ", shown(margin, "Ratio"));
        }
        add_finding(of);
    }
    axw_table_free(at_best);
    axw_table_free(table);

    char part[LONGEST_LINE] = "";
    double margin = NAN;
    int64_t not_known = 0;
    int32_t status =
        axw_driveline_torque_path_weakest(model, part, sizeof part, NULL, NULL, &margin, &not_known);
    if (status == AXW_NO_SOLUTION) {
        add_fact(text("Driveline: %s", sentence()));
    } else {
        must(status, line);
        answer("driveline.weakest_margin", margin);
        add_fact(text("Weakest known part of the driveline: %s, margin %s; %" PRId64
                      " others are not known and may be weaker",
                      part, shown(margin, "Ratio"), not_known));
    }
    axw_driveline_torque_path_free(model);
}

/* ---- Engine and tyres ---------------------------------------------------------------------------------- */

static void peak_power(void)
{
    struct values values = {.count = 0};
    int points = 0;
    for (size_t i = 0; i < row_count; i++) {
        if (strcmp(rows[i].part, "engine") != 0 || strcmp(rows[i].property, "torque_at") != 0) {
            continue;
        }
        char point[LONGEST_LINE];
        strcpy(point, rows[i].printed);
        char *colon = strchr(point, ':');
        if (colon == NULL) {
            refuse(rows[i].line, "a point of the torque curve is `speed: torque`");
        }
        *colon = '\0';
        struct row speed = rows[i], torque = rows[i];
        speed.printed = trimmed(point);
        torque.printed = trimmed(colon + 1);
        add_row(&values, text("points[%d].engine_speed", points), &speed, "AngularVelocity");
        add_row(&values, text("points[%d].torque", points++), &torque, "Torque");
        rows[i].used = 1;
    }
    int line = need("engine", "torque_at")->line;
    axw_engine_torque_curve *curve = NULL;
    double power = NAN, speed = NAN;
    must(axw_engine_torque_curve_new_si(values.paths, values.si, values.texts, values.count, &curve), line);
    must(axw_engine_torque_curve_peaks(curve, NULL, NULL, &power, &speed), line);
    axw_engine_torque_curve_free(curve);
    answer("engine.peak_power", power);
    add_fact(text("Peak power of the engine: %s at %s", shown(power, "Power"),
                  shown(speed, "AngularVelocity")));
}

static double rolling_radius(void)
{
    const struct row *marking = need("tyre", "marking");
    struct values values = {.count = 0};
    add_row(&values, "marking", marking, NULL);
    axw_tyre_tyre *tyre = NULL;
    double radius = NAN, diameter = NAN;
    must(axw_tyre_tyre_new_si(values.paths, values.si, values.texts, values.count, &tyre), marking->line);
    must(axw_tyre_tyre_rolling(tyre, 0.0, &radius, NULL, NULL), marking->line);
    must(axw_tyre_tyre_dimensions(tyre, NULL, NULL, NULL, &diameter, NULL, NULL, NULL), marking->line);
    axw_tyre_tyre_free(tyre);
    add_fact(text("Tyre %s: free diameter %s, rolling radius %s", marking->printed,
                  shown(diameter, "Length"), shown(radius, "Length")));
    return answer("tyre.rolling_radius", radius);
}

static void cruise(double radius)
{
    const struct row *at = need("vehicle", "cruise"), *at_most = need("engine", "cruise_at_most");
    double final_drive = value("rear axle", "ratio", "Ratio"), speed = NAN;
    must(axw_driveline_engine_speed(si_of(at, "Velocity"), value("gearbox", "gear_6", "Ratio"), final_drive,
                                    radius, &speed),
         at->line);
    answer("driveline.engine_speed", speed);
    double limit = si_of(at_most, "AngularVelocity");
    int32_t verdict = AXW_VERDICT_NOT_KNOWN;
    must(axw_verdict_of_ratio(limit / speed, value("engine", "cruise_wanted", "Ratio"), &verdict),
         at_most->line);
    add_finding((struct finding){.part = "engine",
                                 .demand = text("%s at %s", shown(speed, "AngularVelocity"), at->printed),
                                 .rating = text("at most %s", at_most->printed),
                                 .margin = text("%s %s", shown(fabs(speed - limit), "AngularVelocity"),
                                                speed > limit ? "above" : "below"),
                                 .verdict = axw_verdict_word(verdict)});

    /* What every gear reaches. */
    const struct row *peak = need("engine", "peak_speed");
    const char *speeds = text("Road speed at %s, first to sixth:", peak->printed);
    for (int gear = 1; gear <= 6; gear++) {
        double fastest = NAN;
        const struct row *ratio = need("gearbox", text("gear_%d", gear));
        must(axw_driveline_road_speed(si_of(peak, "AngularVelocity"), si_of(ratio, "Ratio"), final_drive,
                                      radius, &fastest),
             ratio->line);
        speeds = text("%s%s %s", speeds, gear > 1 ? "," : "", shown(fastest, "Velocity"));
    }
    add_fact(speeds);
}

static void tyre_load(void)
{
    const struct row *rating = find("tyre", "rating"), *laden = find("vehicle", "laden_wheel_load");
    int32_t verdict = AXW_VERDICT_NOT_KNOWN;
    struct finding of = {.part = "tyre"};
    if (rating != NULL) {
        of.rating = rating->printed;
    }
    if (rating != NULL && laden != NULL) {
        double margin = si_of(rating, "Mass") / si_of(laden, "Mass");
        must(axw_verdict_of_ratio(margin, 1.0, &verdict), laden->line);
        of.demand = laden->printed;
        of.margin = shown(margin, "Ratio");
    } else {
        of.why = rating == NULL
                     ? "no rating"
                     : "the heaviest wheel was not weighed laden: `laden_wheel_load` of `vehicle`";
    }
    of.verdict = axw_verdict_word(verdict);
    add_finding(of);
}

/* ---- Front springs: a place in a band ------------------------------------------------------------------ */

static void front_springs(void)
{
    const char *const part = "front spring";
    const struct row *from = need(part, "frequency_from"), *to = need(part, "frequency_to");
    double mass = value(part, "sprung_mass", "Mass");
    double rate = NAN, frequency = NAN, sag = NAN, gravity = NAN;
    int line = line_of(part);
    /* The ratio was measured at the lower mount, so the angle of the spring counts. */
    must(axw_spring_wheel_rate(value(part, "rate", "LinearStiffness"), value(part, "motion_ratio", "Ratio"),
                               value(part, "angle", "Angle"), &rate),
         line);
    must(axw_spring_natural_frequency(rate, mass, &frequency), line);
    must(axw_text_read("1 g0", "Acceleration", &gravity), line);
    must(axw_spring_static_deflection(mass * gravity, rate, &sag), line);
    answer("spring.wheel_rate", rate);
    answer("spring.natural_frequency", frequency);
    answer("spring.static_deflection", sag);

    double low = si_of(from, "Frequency"), high = si_of(to, "Frequency"),
           inside = fmin(frequency - low, high - frequency);
    int32_t verdict = AXW_VERDICT_NOT_KNOWN;
    must(axw_verdict_of_place(frequency, low, high, value(part, "frequency_tight_within", "Frequency"),
                              &verdict),
         from->line);
    const char *side = frequency < low ? "below" : frequency > high ? "above" : "inside";
    add_finding((struct finding){.part = part,
                                 .demand = shown(frequency, "Frequency"),
                                 .rating = text("%s to %s", from->printed, to->printed),
                                 .margin = text("%s %s", shown(fabs(inside), "Frequency"), side),
                                 .verdict = axw_verdict_word(verdict)});
    add_fact(text("Front wheel rate %s without the geometric term of a loaded spring; sag at the wheel %s if "
                  "linear from free length",
                  shown(rate, "LinearStiffness"), shown(sag, "Length")));
}

/* ---- Coolant: a difference ----------------------------------------------------------------------------- */

static void coolant_cap(void)
{
    const char *const part = "coolant cap";
    const struct row *hottest = need(part, "hottest");
    struct values values = {.count = 0};
    add_row(&values, "liquid", need(part, "liquid"), NULL);
    add_row(&values, "volume_share", find(part, "volume_share"), "Ratio");
    add_row(&values, "concentrate", find(part, "concentrate"), "Ratio");
    add_row(&values, "cap", need(part, "opens_at"), "GaugePressure");
    add_row(&values, "altitude", need("vehicle", "altitude"), "Length");
    add_row(&values, "hottest", hottest, "Temperature");
    axw_cooling_coolant *coolant = NULL;
    double boiling = NAN, margin = NAN;
    int32_t verdict = AXW_VERDICT_NOT_KNOWN;
    must(axw_cooling_coolant_new_si(values.paths, values.si, values.texts, values.count, &coolant), line_of(part));
    must(axw_cooling_coolant_margin(coolant, NULL, NULL, &boiling, &margin), line_of(part));
    must(axw_verdict_of_difference(margin, value(part, "wanted", "TemperatureDifference"), &verdict), line_of(part));
    char untested[128];
    must(axw_cooling_coolant_margin_open(coolant, untested, sizeof untested, NULL), line_of(part));
    if (untested[0] != '\0' && verdict == AXW_VERDICT_MEETS) {
        verdict = AXW_VERDICT_TIGHT; /* the margin is an upper bound */
        add_fact(text("%s: %s", part, untested));
    }
    axw_cooling_coolant_free(coolant);
    answer("cooling.boiling_temperature", boiling);
    answer("cooling.margin", margin);
    add_finding((struct finding){.part = part,
                                 .demand = shown(si_of(hottest, "Temperature"), "Temperature"),
                                 .rating = text("boils at %s", shown(boiling, "Temperature")),
                                 .margin = shown(margin, "TemperatureDifference"),
                                 .verdict = axw_verdict_word(verdict)});
}

/* ---- On the scales ------------------------------------------------------------------------------------- */

static void scales(void)
{
    const char *const of = "vehicle";
    double total = NAN, front = NAN, diagonal = NAN, behind = NAN;
    must(axw_mass_weight_distribution(
             value(of, "left_front", "Mass"), value(of, "right_front", "Mass"),
             value(of, "left_rear", "Mass"), value(of, "right_rear", "Mass"),
             value(of, "wheelbase", "Length"), value(of, "front_track", "Length"),
             value(of, "rear_track", "Length"), &total, NULL, NULL, &front, NULL, &diagonal, &behind, NULL),
         line_of(of));
    answer("mass.front_share", front);
    answer("mass.behind_front_axle", behind);
    add_fact(text("On the scales: %s, %.1f %% on the front axle, %.1f %% on the diagonal, centre of gravity "
                  "%s behind the front axle",
                  shown(total, "Mass"), 100.0 * front, 100.0 * diagonal, shown(behind, "Length")));
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
            add_finding((struct finding){.part = rows[i].part,
                                         .verdict = axw_verdict_word(AXW_VERDICT_NOT_KNOWN),
                                         .why = "nothing here checks this part"});
        }
    }
}

/* ---- The estimate -------------------------------------------------------------------------------------- */

/* Prints text, or a dash where there is none, and fills up with blanks; a character of several bytes is one
 * place wide. */
static void print_wide(const char *words, int width)
{
    const char *said = words == NULL ? "-" : words;
    for (const char *c = said; *c != '\0'; c++) {
        width -= ((unsigned char)*c & 0xC0u) != 0x80u;
    }
    printf("%s%*s", said, width > 0 ? width + 1 : 1, "");
}

static void print_line(const char *part, const char *demand, const char *rating, const char *margin,
                       const char *verdict)
{
    print_wide(part, 16);
    print_wide(demand, 18);
    print_wide(rating, 21);
    print_wide(margin, 15);
    print_wide(verdict, 10);
}

static int print_estimate(void)
{
    int code = ALL_MEET;
    long long total = 0;
    printf("Tern Lane Fabrication: estimate from %s (the Dunlin and every figure are invented)\n\n",
           quote_path);
    print_line("part", "demand", "rating or limit", "margin", "verdict");
    printf("%10s\n", "price");
    for (size_t i = 0; i < finding_count; i++) {
        const struct finding *of = &findings[i];
        long long cost = price(of->part);
        print_line(of->part, of->demand, of->rating, of->margin, of->verdict);
        if (cost < 0) {
            printf("%10s\n", "no price");
        } else {
            printf("%7lld.%02lld\n", cost / 100, cost % 100);
            total += cost;
        }
        code = has_verdict(of, AXW_VERDICT_MEETS) ? code : NOT_ALL_MEET;
    }
    print_wide("total price", 84);
    printf("%7lld.%02lld\n", total / 100, total % 100);

    printf("\nNot known:\n");
    for (size_t i = 0; i < finding_count; i++) {
        if (has_verdict(&findings[i], AXW_VERDICT_NOT_KNOWN)) {
            printf("  %s: %s\n", findings[i].part, findings[i].why == NULL ? "-" : findings[i].why);
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

/* ---- A build sheet, and parts from a price list -------------------------------------------------------- */

/* Goes on where the library took what this file says; its sentence names the line and the key. */
static void must_take(int32_t status, const char *file)
{
    if (status != AXW_OK) {
        char message[4096];
        axw_last_message(message, sizeof message);
        fprintf(stderr, "%s: %s\n", file, message);
        exit(NO_ESTIMATE);
    }
}

/* A whole file as text. */
static char *contents(const char *file_path)
{
    FILE *file = fopen(file_path, "rb");
    size_t length = 0, room = 1 << 16;
    char *whole = malloc(room);
    while (file != NULL && whole != NULL && !feof(file) && !ferror(file)) {
        length += fread(whole + length, 1, room - 1 - length, file);
        if (length == room - 1) {
            char *larger = realloc(whole, room *= 2);
            if (larger == NULL) {
                free(whole);
            }
            whole = larger;
        }
    }
    if (file == NULL || whole == NULL || ferror(file) || memchr(whole, '\0', length) != NULL) {
        fprintf(stderr, "%s cannot be %s\n", file_path, file == NULL ? "opened" : "read as text");
        exit(NO_ESTIMATE);
    }
    fclose(file);
    whole[length] = '\0';
    return whole;
}

/* One line a finding, those that are not known below with what they need, and what can hurt someone. */
static void print_findings(const axw_assessment *assessment)
{
    static char sentences[1 << 14];
    const char *cautions[64];
    size_t caution_count = 0, count = axw_assessment_findings(assessment);
    const char *path_of = NULL, *caution = NULL, *quantity = NULL, *margin_quantity = NULL;
    double of = NAN, margin = NAN, wanted = NAN;
    int32_t verdict = AXW_VERDICT_NOT_KNOWN;
    print_wide("finding", 26);
    print_wide("value", 16);
    print_wide("margin", 14);
    print_wide("wanted", 14);
    printf("verdict\n");
    for (size_t i = 0; i < count; i++) {
        must(axw_assessment_finding(assessment, i, &path_of, NULL, NULL, &caution), 1);
        must(axw_assessment_units(assessment, i, &quantity, NULL, NULL, &margin_quantity, NULL), 1);
        must(axw_assessment_answer(assessment, i, &verdict, &of, NULL, NULL, &margin, &wanted, NULL), 1);
        if (verdict == AXW_VERDICT_NOT_KNOWN) {
            continue;
        }
        print_wide(path_of, 26);
        print_wide(shown(of, quantity), 16);
        print_wide(shown(margin, margin_quantity), 14);
        /* Without limit: something that could make it worse is not written. */
        print_wide(isinf(wanted) ? "write more" : shown(wanted, margin_quantity), 14);
        printf("%s\n", axw_verdict_word(verdict));
        size_t known = 0;
        while (known < caution_count && strcmp(cautions[known], caution) != 0) {
            known++;
        }
        if (*caution != '\0' && known == caution_count && known < sizeof cautions / sizeof cautions[0]) {
            cautions[caution_count++] = caution;
        }
    }
    printf("\nNot known:\n");
    for (size_t i = 0; i < count; i++) {
        must(axw_assessment_missing(assessment, i, sentences, sizeof sentences, NULL), 1);
        if (*sentences != '\0') {
            must(axw_assessment_finding(assessment, i, &path_of, NULL, NULL, NULL), 1);
            printf("  %s: %s\n", path_of, sentences);
        }
    }
    for (size_t i = 0; i < caution_count; i++) {
        printf("\nCaution: %s\n", cautions[i]);
    }
}

/* One combination: what it costs and weighs, and its parts; behind cost and mass a table has a kind a column. */
static void print_choice(const char *which, const axw_table *table, size_t row)
{
    printf("\n%s: %.2f for parts of %s\n", which, number_in(table, "cost", row),
           shown(number_in(table, "mass", row), "Mass"));
    for (size_t column = 2; column < axw_table_columns(table); column++) {
        const char *kind = NULL;
        must(axw_table_column(table, column, &kind, NULL, NULL, NULL), 1);
        printf("  ");
        print_wide(kind, 16);
        printf("%s\n", word_in(table, kind, row));
    }
}

/* What becomes of the findings with the cheapest parts: the sheet beside itself with them. */
static void print_changes(axw_sheet *sheet, const axw_assessment *before, const axw_chosen *chosen)
{
    axw_assessment *after = NULL;
    size_t size = 0;
    must(axw_chosen_fit(chosen, 0, sheet), 1);
    must(axw_assessment_new(sheet, &after), 1);
    must(axw_assessment_compare(before, after, AXW_METRIC, NULL, 0, &size), 1);
    char *changes = malloc(size);
    if (changes != NULL) {
        must(axw_assessment_compare(before, after, AXW_METRIC, changes, size, NULL), 1);
        printf("\nAs it is, and with the cheapest parts:\n%s", changes);
    }
    free(changes);
    axw_assessment_free(after);
}

static int price_sheet(const char *sheet_path, const char *list_path, const char *const *requirements,
                       size_t count)
{
    axw_sheet *sheet = NULL;
    axw_assessment *assessment = NULL;
    axw_price_list *list = NULL;
    axw_chosen *chosen = NULL;
    axw_table *front = NULL, *rejected = NULL;
    char hash[64], *sheet_text = contents(sheet_path), *list_text = contents(list_path);
    int32_t severity = 0;
    must_take(axw_sheet_new(sheet_text, &sheet), sheet_path);
    must_take(axw_price_list_csv(list_text, &list), list_path);
    free(sheet_text);
    free(list_text);
    must_take(axw_choose(sheet, list, requirements, count, 0, NULL, NULL, &chosen), list_path);
    must_take(axw_sheet_hash(sheet, hash, sizeof hash, NULL), sheet_path);
    must_take(axw_assessment_new(sheet, &assessment), sheet_path);
    must_take(axw_assessment_severity(assessment, &severity), sheet_path);
    must_take(axw_chosen_front(chosen, &front), list_path);
    must_take(axw_chosen_rejected(chosen, &rejected), list_path);

    printf("Tern Lane Fabrication: findings of %s, sheet %s (every figure is invented)\n\n", sheet_path, hash);
    print_findings(assessment);
    printf("\nOne part of each kind from %s, %zu in all, so that:\n", list_path, axw_price_list_parts(list));
    for (size_t i = 0; i < count; i++) {
        printf("  %s\n", requirements[i]);
    }
    size_t choices = axw_table_rows(front);
    if (choices == 0) {
        printf("\nNo parts of this list do that together.\n");
    } else {
        print_choice("The cheapest", front, 0);
        print_choice("The lightest", front, choices - 1);
        printf("\n%zu in all from the cheapest to the lightest, none of them dearer and heavier than another.\n",
               choices);
        print_changes(sheet, assessment, chosen);
    }
    printf("\nIn no choice:\n");
    for (size_t i = 0; i < axw_table_rows(rejected); i++) {
        printf("  %s: %s\n", word_in(rejected, "part", i), word_in(rejected, "why", i));
    }
    printf("\nNothing but these requirements was asked of the parts: ratings of the makers, local codes and licensed "
           "practice come first.\n");
    axw_table_free(rejected);
    axw_table_free(front);
    axw_chosen_free(chosen);
    axw_assessment_free(assessment);
    axw_price_list_free(list);
    axw_sheet_free(sheet);
    return severity == 0 && choices > 0 ? ALL_MEET : NOT_ALL_MEET;
}

int main(int argc, char **argv)
{
    int bits = argc == 3 && strcmp(argv[1], "--bits") == 0, of_sheet = argc > 2 && !bits;
    if (argc < 2 || argv[of_sheet ? 1 : argc - 1][0] == '-') {
        fprintf(stderr, "usage: estimate [--bits] QUOTE.csv\n"
                        "       estimate SHEET.toml PRICES.csv [REQUIREMENT...]\n");
        return NO_ESTIMATE;
    }
    if (!axw_version_fits(AXW_VERSION_NUMBER)) {
        fprintf(stderr, "compiled for Axlewright %s, but %s is loaded\n", AXW_VERSION, axw_version());
        return NO_ESTIMATE;
    }
    if (of_sheet) {
        quote_path = argv[1];
        return price_sheet(argv[1], argv[2], (const char *const *)(argv + 3), (size_t)(argc - 3));
    }
    quote_path = argv[argc - 1];
    read_quote();
    cruise(rolling_radius());
    peak_power();
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
