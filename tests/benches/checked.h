/* The library's calls written by hand in C: the same checks, an output that may be NULL, a status. */
#ifndef CHECKED_H
#define CHECKED_H
#include <stdint.h>

int32_t checked_wheel_rate(double spring_rate, double motion_ratio, double angle, double *result);
int32_t checked_ride_rate(double wheel_rate, double tyre_rate, double *result);
int32_t checked_natural_frequency(double tangent_rate, double sprung_mass, double *result);
int32_t checked_road_speed(double engine_speed, double gear_ratio, double final_drive, double radius, double *result);

#endif
