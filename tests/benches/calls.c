/* Calls of the library, or of the same functions written by hand in C, for an instruction counter:
 * `calls <case> <library|by_hand> <times>`; without arguments it names the cases. */
#include "checked.h"
#include <axlewright.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define LOOP(CALL)                                                                                                   \
    for (long i = 0; i < times; i++) refused |= CALL

int main(int count, char **words) {
    if (count != 4) {
        puts("wheel_rate\nride_rate\nnatural_frequency\nroad_speed");
        return 0;
    }
    int library = strcmp(words[2], "library") == 0;
    long times = atol(words[3]);
    double y = 0.0;
    int32_t refused = 0;
    if (strcmp(words[1], "wheel_rate") == 0) {
        if (library) LOOP(axw_spring_wheel_rate(40e3, 0.8, 0.3, &y));
        else LOOP(checked_wheel_rate(40e3, 0.8, 0.3, &y));
    } else if (strcmp(words[1], "ride_rate") == 0) {
        if (library) LOOP(axw_spring_ride_rate(25e3, 220e3, &y));
        else LOOP(checked_ride_rate(25e3, 220e3, &y));
    } else if (strcmp(words[1], "natural_frequency") == 0) {
        if (library) LOOP(axw_spring_natural_frequency(25e3, 380.0, &y));
        else LOOP(checked_natural_frequency(25e3, 380.0, &y));
    } else if (strcmp(words[1], "road_speed") == 0) {
        if (library) LOOP(axw_driveline_road_speed(300.0, 1.4, 3.9, 0.33, &y));
        else LOOP(checked_road_speed(300.0, 1.4, 3.9, 0.33, &y));
    } else {
        return 2;
    }
    return refused != 0 || !(y > 0.0);
}
