/* Functions: the plain entry, the batch entry and the one that returns its result. */
#include "check.h"
#include "family.h"

#include <float.h>

#define MOST 8
#define ROWS 3

/* One array an argument, each row the allowed arguments. */
static void fill(const family *of, double store[MOST][ROWS], const double **x)
{
    for (size_t j = 0; j < MOST; j++) {
        for (size_t i = 0; i < ROWS; i++) {
            store[j][i] = of->good[j];
        }
        x[j] = store[j];
    }
}

static void refuses(const family *of, size_t j, double bad)
{
    double x[MOST], out = UNTOUCHED;
    memcpy(x, of->good, sizeof x);
    x[j] = bad;
    REFUSED(of->scalar(x, &out), AXW_OUT_OF_RANGE, "valid: ");
    SAME(out, UNTOUCHED);
    STATUS(of->scalar(x, NULL), AXW_OUT_OF_RANGE);
    CHECK(isnan(of->value(x)));

    double store[MOST][ROWS], outs[ROWS] = {UNTOUCHED, UNTOUCHED, UNTOUCHED};
    const double *arrays[MOST];
    int32_t reason[ROWS] = {-1, -1, -1};
    fill(of, store, arrays);
    store[j][1] = bad;
    REFUSED(of->batch(ROWS, arrays, outs, reason), AXW_ROWS, "1 rows refused, the first at index 1: ");
    SAME(outs[0], of->value(of->good));
    CHECK(isnan(outs[1]));
    SAME(outs[2], of->value(of->good));
    CHECK(reason[0] == AXW_OK && reason[1] == AXW_OUT_OF_RANGE && reason[2] == AXW_OK);
    STATUS(of->batch(ROWS, arrays, NULL, NULL), AXW_ROWS);
}

static void one_family(const family *of)
{
    double wanted = UNTOUCHED;
    STATUS(of->scalar(of->good, &wanted), AXW_OK);
    CHECK(isfinite(wanted) && !same_bits(wanted, UNTOUCHED));
    STATUS(of->scalar(of->good, NULL), AXW_OK);
    SAME(of->value(of->good), wanted);
    test_work_of(of->name, of->good, of->count, wanted);

    double store[MOST][ROWS], outs[ROWS] = {UNTOUCHED, UNTOUCHED, UNTOUCHED};
    const double *arrays[MOST];
    int32_t reason[ROWS] = {-1, -1, -1};
    fill(of, store, arrays);
    STATUS(of->batch(ROWS, arrays, outs, reason), AXW_OK);
    for (size_t i = 0; i < ROWS; i++) {
        SAME(outs[i], wanted);
        CHECK(reason[i] == AXW_OK);
    }
    STATUS(of->batch(ROWS, arrays, NULL, reason), AXW_OK);
    STATUS(of->batch(ROWS, arrays, outs, NULL), AXW_OK);
    STATUS(of->batch(ROWS, arrays, NULL, NULL), AXW_OK);

    for (size_t j = 0; j < of->count; j++) {
        refuses(of, j, NAN);
        refuses(of, j, INFINITY);
        refuses(of, j, -INFINITY);
        refuses(of, j, DBL_MAX);
        refuses(of, j, -DBL_MAX);
        refuses(of, j, 1e200);

        /* A missing input, with rows and without. */
        double untouched = UNTOUCHED;
        int32_t no_reason = -1;
        fill(of, store, arrays);
        arrays[j] = NULL;
        REFUSED(of->batch(1, arrays, &untouched, &no_reason), AXW_NULL, " is NULL");
        SAME(untouched, UNTOUCHED);
        CHECK(no_reason == -1);
        STATUS(of->batch(0, arrays, &untouched, &no_reason), AXW_OK);
        SAME(untouched, UNTOUCHED);
        CHECK(no_reason == -1);

        /* The output array is the input array. */
        fill(of, store, arrays);
        STATUS(of->batch(ROWS, arrays, store[j], NULL), AXW_OK);
        for (size_t i = 0; i < ROWS; i++) {
            SAME(store[j][i], wanted);
        }
    }
    const double *none[MOST] = {NULL};
    STATUS(of->batch(0, none, NULL, NULL), AXW_OK);
}

/* The limits themselves, and the two sides of zero. */
static void limits(void)
{
    double out = UNTOUCHED;
    STATUS(axw_spring_wheel_rate(52000.0, 1.5, 0.0, &out), AXW_OK);
    NEAR(out, 52000.0 * 2.25, 1e-15);
    out = UNTOUCHED;
    REFUSED(axw_spring_wheel_rate(52000.0, 0.0, 0.0, &out), AXW_OUT_OF_RANGE, "motion_ratio = 0 ");
    REFUSED(axw_spring_wheel_rate(52000.0, -0.0, 0.0, &out), AXW_OUT_OF_RANGE, "motion_ratio = 0 ");
    REFUSED(axw_spring_wheel_rate(52000.0, -0.62, 0.0, &out), AXW_OUT_OF_RANGE, "motion_ratio = -0.62 ");
    REFUSED(axw_spring_wheel_rate(-1.0, 0.62, 0.0, &out), AXW_OUT_OF_RANGE, "spring_rate = -1 N/m ");
    REFUSED(axw_spring_wheel_rate(1.0, nextafter(1.5, 2.0), 0.0, &out), AXW_OUT_OF_RANGE,
            "motion_ratio <= 1.5");
    SAME(out, UNTOUCHED);
    STATUS(axw_spring_static_deflection(0.0, 18000.0, &out), AXW_OK);
    SAME(out, 0.0);
    STATUS(axw_engine_power(-100.0, 250.0, &out), AXW_OK);
    SAME(out, -25000.0);
    out = UNTOUCHED;
    REFUSED(axw_spring_coil_rate(0.11, 0.013, 7.5, 79.3e9, &out), AXW_CONTRADICTION, "must be greater than");
    SAME(out, UNTOUCHED);
}

/* Eight results from seven readings. */
static void several_results(void)
{
    double total, front, rear, front_share, left_share, diagonal, behind, left;
    STATUS(axw_mass_weight_distribution(612, 598, 455, 467, 2.65, 1.54, 1.52, &total, &front, &rear,
                                        &front_share, &left_share, &diagonal, &behind, &left),
           AXW_OK);
    SAME(total, 2132.0);
    SAME(front, 1210.0);
    SAME(rear, 922.0);
    NEAR(front_share, 1210.0 / 2132.0, 1e-15);
    NEAR(left_share, 1067.0 / 2132.0, 1e-15);
    NEAR(diagonal, 1053.0 / 2132.0, 1e-15);
    NEAR(behind, 2.65 * 922.0 / 2132.0, 1e-15);
    NEAR(left, (1.54 * 14.0 - 1.52 * 12.0) / (2.0 * 2132.0), 1e-14);

    SAME(axw_mass_weight_distribution_front_share_value(612, 598, 455, 467, 2.65, 1.54, 1.52), front_share);
    SAME(axw_mass_weight_distribution_behind_front_axle_value(612, 598, 455, 467, 2.65, 1.54, 1.52), behind);
    CHECK(isnan(axw_mass_weight_distribution_total_mass_value(0, 598, 455, 467, 2.65, 1.54, 1.52)));

    /* One wanted, then none. */
    double alone = UNTOUCHED;
    STATUS(axw_mass_weight_distribution(612, 598, 455, 467, 2.65, 1.54, 1.52, NULL, NULL, NULL, NULL, NULL,
                                        NULL, NULL, &alone),
           AXW_OK);
    SAME(alone, left);
    STATUS(axw_mass_weight_distribution(612, 598, 455, 467, 2.65, 1.54, 1.52, NULL, NULL, NULL, NULL, NULL,
                                        NULL, NULL, NULL),
           AXW_OK);

    /* All or nothing. */
    double a = UNTOUCHED, b = UNTOUCHED;
    REFUSED(axw_mass_weight_distribution(612, 598, 455, 467, 2.65, 1.54, 0, &a, NULL, NULL, NULL, NULL, NULL,
                                         NULL, &b),
            AXW_OUT_OF_RANGE, "rear_track = 0 m (0 mm, 0 in) is outside its range; valid: 0 < rear_track");
    SAME(a, UNTOUCHED);
    SAME(b, UNTOUCHED);

    /* Batch: a refused row is NaN in every output; the first of two refusals is told. */
    const double lf[3] = {612, -1, 612}, rf[3] = {598, 598, NAN}, lr[3] = {455, 455, 455},
                 rr[3] = {467, 467, 467};
    const double base[3] = {2.65, 2.65, 2.65}, track[3] = {1.54, 1.54, 1.54};
    double totals[3], behinds[3];
    int32_t reason[3];
    REFUSED(axw_mass_weight_distribution_n(3, lf, rf, lr, rr, base, track, track, totals, NULL, NULL, NULL,
                                           NULL, NULL, behinds, NULL, reason),
            AXW_ROWS, "2 rows refused, the first at index 1: left_front = -1 kg");
    SAME(totals[0], 2132.0);
    SAME(behinds[0], behind);
    CHECK(isnan(totals[1]) && isnan(behinds[1]) && isnan(totals[2]) && isnan(behinds[2]));
    CHECK(reason[0] == AXW_OK && reason[1] == AXW_OUT_OF_RANGE && reason[2] == AXW_OUT_OF_RANGE);
}

/* A seeded sequence of bits (xorshift64*, Vigna 2016). */
static uint64_t random_bits(void)
{
    static uint64_t state = UINT64_C(0x9E3779B97F4A7C15);
    state ^= state >> 12;
    state ^= state << 25;
    state ^= state >> 27;
    return state * UINT64_C(0x2545F4914F6CDD1D);
}

/* A finite argument: zero, the good one, one of its size, or any from 1e-32 to 1e32, a little beyond the ends of every argument. */
static double any_number(double good)
{
    uint64_t bits = random_bits();
    double sign = bits & 1 ? -1.0 : 1.0, share = (double)(bits >> 11) * 0x1p-53;
    switch (bits >> 1 & 7) {
    case 0:
        return sign * 0.0;
    case 1:
    case 2:
        return good;
    case 3:
        return sign * good * 2.0 * share;
    case 4:
        return good * 2.0 * share;
    case 5:
        return sign * pow(10.0, 64.0 * share - 32.0);
    default:
        return pow(10.0, 64.0 * share - 32.0);
    }
}

/* A function on its own arguments and on extreme ones. Every answer is a finite number, the same alone and in an
 * array, and so is every refusal. */
static void extremes(const family *of)
{
    enum { DRAWS = 1000 };
    long answered = 0, endless = 0, apart = 0;
    char detail[512] = "";
    for (long draw = 0; draw < DRAWS; draw++) {
        double x[MOST] = {0.0}, out[MOST];
        for (size_t j = 0; j < of->count; j++) {
            x[j] = any_number(of->good[j]);
        }
        int32_t status = of->all(x, out), reason = -1;
        const double *arrays[MOST];
        for (size_t j = 0; j < MOST; j++) {
            arrays[j] = &x[j];
        }
        double row = UNTOUCHED, value = of->value(x);
        int32_t rows = of->batch(1, arrays, &row, &reason);
        int fine = status == AXW_OK ? rows == AXW_OK && same_bits(row, out[0]) && same_bits(value, out[0])
                                    : rows == AXW_ROWS && isnan(row) && isnan(value);
        apart += !fine || reason != status;
        if (status != AXW_OK) {
            continue;
        }
        answered++;
        for (size_t i = 0; i < of->outs; i++) {
            if (!isfinite(out[i]) && endless++ == 0) {
                int length = snprintf(detail, sizeof detail, "output %d is not finite with AXW_OK at", (int)i);
                for (size_t j = 0; j < of->count; j++) {
                    length += snprintf(detail + length, sizeof detail - (size_t)length, " %.17g", x[j]);
                }
            }
        }
    }
    check(answered > 0, of->name, "refuses nearly every draw", __FILE__, __LINE__);
    check(endless == 0, of->name, detail, __FILE__, __LINE__);
    check(apart == 0, of->name, "differs alone, in an array and as a value", __FILE__, __LINE__);
}

/* Names of the version before answer. */
static void former_names(void)
{
    double out = UNTOUCHED;
    STATUS(axw_engine_charge_temperature(298.15, 2.5, 0.7, &out), AXW_OK);
    SAME(out, axw_engine_compressor_outlet_temperature_value(298.15, 2.5, 0.7));
    SAME(axw_mass_raised_axle_height_value(500, 520, 1000, 2.5, 0.5, 0.3),
         axw_mass_centre_of_gravity_height_by_tilt_value(500, 520, 1000, 2.5, 0.5, 0.3));
    SAME(axw_mass_raised_axle_height_over_tyres_value(500, 520, 1000, 2.5, 0.5, 0.3, 4e5, 4e5),
         axw_mass_centre_of_gravity_height_by_tilt_over_tyres_value(500, 520, 1000, 2.5, 0.5, 0.3, 4e5, 4e5));
    SAME(axw_cooling_leak_down_pressure_value(1e5, 298.15, 288.15, 101300),
         axw_cooling_pressure_decay_tight_pressure_value(1e5, 298.15, 288.15, 101300));
    SAME(axw_cooling_leak_down_pressure_over_coolant_value(1e5, 1e-3, 8e-3, -4e-3, 298.15, 288.15, 101300),
         axw_cooling_pressure_decay_tight_pressure_over_coolant_value(1e5, 1e-3, 8e-3, -4e-3, 298.15, 288.15,
                                                                      101300));
    SAME(axw_cooling_leak_down_least_pressure_value(1e5, 98e3, 5e3, 500, 101300),
         axw_cooling_pressure_decay_least_pressure_value(1e5, 98e3, 5e3, 500, 101300));

    axw_cooling_leak_down *model = NULL;
    double old = UNTOUCHED, margin = UNTOUCHED;
    STATUS(axw_cooling_leak_down_new(
               "{\"trapped\": \"gas\", \"gauge_pressure\": \"103 kPa gauge\", \"later_gauge_pressure\": "
               "\"97 kPa gauge\", \"temperature\": \"25 °C\", \"later_temperature\": \"15 °C\", "
               "\"station_pressure\": \"101.3 kPa absolute\", \"allowed_loss\": \"5 kPa\"}",
               &model),
           AXW_OK);
    STATUS(axw_cooling_leak_down_findings(model, NULL, NULL, NULL, NULL, &old, NULL, NULL), AXW_OK);
    STATUS(axw_cooling_pressure_decay_findings(model, NULL, NULL, NULL, NULL, &margin, NULL, NULL), AXW_OK);
    SAME(old, margin);
    axw_cooling_leak_down_free(model);
}

void test_functions(void)
{
    for (size_t i = 0; i < sizeof families / sizeof families[0]; i++) {
        long before = checks_failed;
        const family *of = &families[i];
        one_family(of);
        extremes(of);
        if (checks_failed != before) {
            printf("  in %s\n", of->name);
        }
    }
    limits();
    several_results();
    former_names();
}
