/* Results that come in one struct, as callers with older and newer headers have it. */
#include "check.h"

typedef axw_spring_corner_at_ride_height_result ride_height;

static const char CORNER_JSON[] =
    "{\"rate\": \"100 N/mm\", \"free_length\": \"320 mm\", \"solid_length\": \"165 mm\", \"minimum_gap\": \"15 mm\","
    " \"motion_ratio\": 0.5, \"sprung_mass\": \"400 kg\", \"droop_length\": \"300 mm\", \"damper_stroke\": \"110 mm\", \"damper_mounting\": \"coil_over\"}";
static const char CORNER_TOML[] =
    "rate = \"100 N/mm\"\nfree_length = \"320 mm\"\nsolid_length = \"165 mm\"\nminimum_gap = \"15 mm\"\n"
    "motion_ratio = 0.5\nsprung_mass = \"400 kg\"\ndroop_length = \"300 mm\"\ndamper_stroke = \"110 mm\"\ndamper_mounting = \"coil_over\"\n";

static const char VAN_TOML[] =
    "sprung_mass = \"2070 kg\"\nsprung_height = \"0.78 m\"\nbehind_front_axle = \"1.256 m\"\nwheelbase = \"2.65 m\"\n"
    "[front]\ntrack = \"1.54 m\"\nroll_centre_height = \"0.06 m\"\nunsprung_mass = \"134 kg\"\n"
    "unsprung_height = \"0.34 m\"\nspring_rate = \"28400 N/m\"\ntyre_rate = \"280000 N/m\"\n"
    "[rear]\ntrack = \"1.52 m\"\nroll_centre_height = \"0.38 m\"\nunsprung_mass = \"196 kg\"\n"
    "unsprung_height = \"0.345 m\"\nspring_rate = \"38000 N/m\"\ntyre_rate = \"280000 N/m\"\n";

/* 400 kg on half the travel: 7845.32 N, 78.4532 mm of spring, 58.4532 mm of it after the preload. */
static void results(const axw_spring_corner *model)
{
    ride_height on;
    on.size = sizeof on;
    STATUS(axw_spring_corner_at_ride_height(model, &on), AXW_OK);
    CHECK(on.size == sizeof on);
    NEAR(on.spring_force, 7845.32, 1e-12);
    NEAR(on.spring_length, 0.2415468, 1e-12);
    NEAR(on.sag, 0.1169064, 1e-12);
    NEAR(on.bump_remaining, 0.220 - 0.1169064, 1e-12);
    TEXT(on.ends_first, "damper closed");
    NEAR(on.bind_margin, 0.010, 1e-12);
    NEAR(on.captive_margin, 0.020, 1e-12);
    NEAR(on.wheel_rate, 25000.0, 1e-12);
    NEAR(on.frequency * on.frequency * 39.47841760435743, 62.5, 1e-12);
    int32_t bump = -1, bind = -1;
    STATUS(axw_verdict_of_difference(on.bump_remaining, 0.060, &bump), AXW_OK);
    STATUS(axw_verdict_of_difference(on.bind_margin, 0.020, &bind), AXW_OK);
    CHECK(bump == AXW_VERDICT_MEETS && bind == AXW_VERDICT_TIGHT);

    /* A text belongs to the model, which keeps it once. */
    ride_height again;
    again.size = sizeof again;
    STATUS(axw_spring_corner_at_ride_height(model, &again), AXW_OK);
    CHECK(again.ends_first == on.ends_first);
}

/* Where a field stands. */
typedef struct {
    size_t start, length;
} field;

#define FIELD(name) {offsetof(ride_height, name), sizeof((ride_height *)0)->name}

static const field fields[] = {
    FIELD(spring_force), FIELD(spring_length), FIELD(sag),        FIELD(bump_remaining), FIELD(ends_first),
    FIELD(bind_margin),  FIELD(captive_margin), FIELD(wheel_rate), FIELD(frequency),      FIELD(droop_open),
    FIELD(bump_open),    FIELD(bump_clear),     FIELD(droop_clear), FIELD(bump_clear_ends), FIELD(droop_clear_ends),
};

/* A caller that has `size` bytes and says that it has `said`: what fits is filled, what does not is left, and
 * the bytes end where the sanitizer sees a step beyond them. */
static void caller_has(const axw_spring_corner *model, const ride_height *whole, size_t size, size_t said)
{
    char *result = (char *)malloc(size);
    if (result == NULL) {
        abort();
    }
    memset(result, '#', size);
    memcpy(result, &said, sizeof said);
    int fits = said >= sizeof(size_t) + sizeof(double) && said % sizeof(size_t) == 0;
    int32_t status = axw_spring_corner_at_ride_height(model, (ride_height *)(void *)result);
    CHECK(status == (fits ? AXW_OK : AXW_BUFFER));
    if (!fits) {
        check_message("is not a size of this struct; set it to sizeof *result", "size", __FILE__, __LINE__);
    }
    size_t filled = fits ? sizeof(size_t) : 0, kept;
    for (size_t i = 0; i < sizeof fields / sizeof fields[0]; i++) {
        if (fits && fields[i].start + fields[i].length <= said) {
            filled = fields[i].start + fields[i].length;
            CHECK(memcmp(result + fields[i].start, (const char *)whole + fields[i].start, fields[i].length) == 0);
        }
    }
    /* Behind the last field that fits there are at most the bytes that align the next one. */
    for (kept = filled; fits && kept < size && kept < sizeof *whole && kept % sizeof(size_t) != 0; kept++) {
    }
    kept = fits ? kept : sizeof said;
    for (; kept < size; kept++) {
        if (result[kept] != '#') {
            break;
        }
    }
    CHECK(kept == size);
    memcpy(&kept, result, sizeof kept);
    CHECK(kept == said); /* the caller's own */
    free(result);
}

static void sizes(const axw_spring_corner *model)
{
    ride_height whole;
    whole.size = sizeof whole;
    STATUS(axw_spring_corner_at_ride_height(model, &whole), AXW_OK);
    for (size_t size = 0; size <= sizeof whole + 40; size++) {
        caller_has(model, &whole, size < sizeof size ? sizeof size : size, size);
    }

    /* An older header knew three results, a newer one knows one more. */
    struct {
        size_t size;
        double spring_force, spring_length, sag;
    } older;
    struct {
        ride_height known;
        double added;
    } newer;
    older.size = sizeof older;
    newer.known.size = sizeof newer;
    newer.added = UNTOUCHED;
    STATUS(axw_spring_corner_at_ride_height(model, (ride_height *)(void *)&older), AXW_OK);
    STATUS(axw_spring_corner_at_ride_height(model, &newer.known), AXW_OK);
    SAME(older.sag, whole.sag);
    SAME(newer.known.frequency, whole.frequency);
    SAME(newer.added, UNTOUCHED);
    CHECK(older.size == sizeof older && newer.known.size == sizeof newer);
}

static void refusals(const axw_spring_corner *model)
{
    ride_height on;
    on.size = sizeof on;
    on.sag = UNTOUCHED;
    REFUSED(axw_spring_corner_at_ride_height(NULL, &on), AXW_NULL, "model is NULL");
    REFUSED(axw_spring_corner_at_ride_height(model, NULL), AXW_NULL, "result is NULL");
    SAME(on.sag, UNTOUCHED);

    axw_suspension_roll_balance *van = NULL;
    STATUS(axw_suspension_roll_balance_new(VAN_TOML, &van), AXW_OK);
    axw_suspension_roll_balance_in_turn_result turn, before;
    memset(&turn, '#', sizeof turn);
    turn.size = sizeof turn;
    before = turn;
    REFUSED(axw_suspension_roll_balance_in_turn(van, NAN, &turn), AXW_OUT_OF_RANGE, "lateral_acceleration = NaN");
    CHECK(memcmp(&turn, &before, sizeof turn) == 0);
    STATUS(axw_suspension_roll_balance_in_turn(van, 2.0, &turn), AXW_OK);
    CHECK(turn.roll_angle > 0.0 && turn.rear_inner_load > 0.0);
    axw_suspension_roll_balance_free(van);
}

void test_results(void)
{
    const char *const documents[] = {CORNER_JSON, CORNER_TOML};
    for (size_t i = 0; i < 2; i++) {
        axw_spring_corner *model = NULL;
        STATUS(axw_spring_corner_new(documents[i], &model), AXW_OK);
        results(model);
        sizes(model);
        refusals(model);

        const double rates[] = {1e5, 0.0}, ratio = 0.5;
        axw_table *table = NULL;
        STATUS(axw_spring_corner_table(model, rates, 2, &ratio, 1, &table), AXW_OK);
        CHECK(axw_table_rows(table) == 2);
        axw_table_free(table);
        axw_spring_corner_free(model);
    }
    axw_spring_corner_free(NULL);
}
