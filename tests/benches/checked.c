#include "checked.h"
#include <math.h>

/* The cosine is that of the C library; the core has its own, which costs less. */
#define TAU 6.28318530717958647692
#define RIGHT_ANGLE 1.57079632679489661923

/* Ends of every argument. */
#define LEAST 1e-30
#define MOST 1e30

static int positive(double x) { return x >= LEAST && x <= MOST; }

static int32_t put(double *result, double value) {
    if (result) *result = value;
    return 0;
}

int32_t checked_wheel_rate(double spring_rate, double motion_ratio, double angle, double *result) {
    double along;
    if (!positive(spring_rate)) return 1;
    if (!(motion_ratio >= LEAST && motion_ratio <= 1.5)) return 1;
    if (!(angle >= -RIGHT_ANGLE && angle <= RIGHT_ANGLE)) return 1;
    along = motion_ratio * cos(angle);
    return put(result, spring_rate * along * along);
}

int32_t checked_ride_rate(double wheel_rate, double tyre_rate, double *result) {
    if (!positive(wheel_rate) || !positive(tyre_rate)) return 1;
    return put(result, wheel_rate * tyre_rate / (wheel_rate + tyre_rate));
}

int32_t checked_natural_frequency(double tangent_rate, double sprung_mass, double *result) {
    if (!positive(tangent_rate) || !positive(sprung_mass)) return 1;
    return put(result, sqrt(tangent_rate / sprung_mass) / TAU);
}

int32_t checked_road_speed(double engine_speed, double gear_ratio, double final_drive, double radius, double *result) {
    if (!(engine_speed >= 0.0 && engine_speed <= 100e3)) return 1;
    if (!(gear_ratio >= 0.001 && gear_ratio <= 1000.0)) return 1;
    if (!(final_drive >= 0.001 && final_drive <= 1000.0)) return 1;
    if (!(radius >= 0.001 && radius <= 100.0)) return 1;
    return put(result, engine_speed * radius / (gear_ratio * final_drive));
}
