/* Functions: the plain entry, the batch entry and the one that returns its result. */
#include "check.h"

/* Family, number of arguments, arguments that are allowed (invented, of a van's size, in SI). */
#define FAMILIES(X)                                                                                          \
    X(air_geopotential_altitude, 1, 1524.0)                                                                  \
    X(air_standard_pressure, 1, 1524.0)                                                                      \
    X(air_standard_density, 1, 1524.0)                                                                       \
    X(driveline_engine_speed, 4, 29.0, 0.72, 4.1, 0.338)                                                     \
    X(driveline_road_speed, 4, 250.0, 0.72, 4.1, 0.338)                                                      \
    X(driveline_wheel_torque, 4, 360.0, 4.7, 4.1, 0.93)                                                      \
    X(engine_power, 2, 360.0, 250.0)                                                                         \
    X(engine_torque, 2, 90000.0, 250.0)                                                                      \
    X(fluid_ethylene_glycol_freezing_temperature, 1, 0.5)                                                    \
    X(fluid_propylene_glycol_freezing_temperature, 1, 0.5)                                                   \
    X(fluid_ethylene_glycol_boiling_temperature, 2, 190000.0, 0.5)                                           \
    X(fluid_propylene_glycol_boiling_temperature, 2, 190000.0, 0.5)                                          \
    X(fluid_water_boiling_temperature, 1, 190000.0)                                                          \
    X(fluid_water_saturation_pressure, 1, 390.0)                                                             \
    X(spring_coil_rate, 4, 0.013, 0.11, 7.5, 79.3e9)                                                         \
    X(spring_critical_damping, 2, 18000.0, 545.0)                                                            \
    X(spring_inclined_tangent_rate, 5, 52000.0, 0.62, 0.31, 5000.0, 0.35)                                    \
    X(spring_natural_frequency, 2, 18000.0, 545.0)                                                           \
    X(spring_ride_rate, 2, 18000.0, 220000.0)                                                                \
    X(spring_static_deflection, 2, 5300.0, 18000.0)                                                          \
    X(spring_wheel_rate, 3, 52000.0, 0.62, 0.31)                                                             \
    X(spring_wheel_tangent_rate, 4, 52000.0, 0.62, 5000.0, 0.4)

#define MOST 5
#define OF_1(x, i) x[0] i
#define OF_2(x, i) x[0] i, x[1] i
#define OF_3(x, i) x[0] i, x[1] i, x[2] i
#define OF_4(x, i) x[0] i, x[1] i, x[2] i, x[3] i
#define OF_5(x, i) x[0] i, x[1] i, x[2] i, x[3] i, x[4] i

/* Each family behind one signature. */
#define WRAP(family, count, ...)                                                                             \
    static int32_t scalar_##family(const double *x, double *result)                                          \
    {                                                                                                        \
        return axw_##family(OF_##count(x, ), result);                                                        \
    }                                                                                                        \
    static double value_##family(const double *x)                                                            \
    {                                                                                                        \
        return axw_##family##_value(OF_##count(x, ));                                                        \
    }                                                                                                        \
    static int32_t batch_##family(size_t n, const double *const *x, double *result, int32_t *reason)         \
    {                                                                                                        \
        return axw_##family##_n(n, OF_##count(x, ), result, reason);                                         \
    }
FAMILIES(WRAP)

typedef struct {
    const char *name;
    size_t count;
    double good[MOST];
    int32_t (*scalar)(const double *, double *);
    double (*value)(const double *);
    int32_t (*batch)(size_t, const double *const *, double *, int32_t *);
} family;

#define ROW(family, count, ...)                                                                              \
    {#family, count, {__VA_ARGS__}, scalar_##family, value_##family, batch_##family},
static const family families[] = {FAMILIES(ROW)};

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
    const double *none[MOST] = {NULL, NULL, NULL, NULL, NULL};
    STATUS(of->batch(0, none, NULL, NULL), AXW_OK);
}

/* The limits themselves, and the two sides of zero. */
static void limits(void)
{
    double out = UNTOUCHED;
    STATUS(axw_spring_wheel_rate(52000.0, 3.0, 0.0, &out), AXW_OK);
    NEAR(out, 52000.0 * 9.0, 1e-15);
    out = UNTOUCHED;
    REFUSED(axw_spring_wheel_rate(52000.0, 0.0, 0.0, &out), AXW_OUT_OF_RANGE, "motion_ratio = 0 ");
    REFUSED(axw_spring_wheel_rate(52000.0, -0.0, 0.0, &out), AXW_OUT_OF_RANGE, "motion_ratio = -0 ");
    REFUSED(axw_spring_wheel_rate(52000.0, -0.62, 0.0, &out), AXW_OUT_OF_RANGE, "motion_ratio = -0.62 ");
    REFUSED(axw_spring_wheel_rate(-1.0, 0.62, 0.0, &out), AXW_OUT_OF_RANGE, "spring_rate = -1 N/m ");
    REFUSED(axw_spring_wheel_rate(1.0, nextafter(3.0, 4.0), 0.0, &out), AXW_OUT_OF_RANGE,
            "motion_ratio <= 3");
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
            AXW_OUT_OF_RANGE, "rear_track = 0 m is outside its range; valid: 0 < rear_track m");
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

void test_functions(void)
{
    for (size_t i = 0; i < sizeof families / sizeof families[0]; i++) {
        long before = checks_failed;
        one_family(&families[i]);
        if (checks_failed != before) {
            printf("  in %s\n", families[i].name);
        }
    }
    limits();
    several_results();
}
