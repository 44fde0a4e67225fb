/* A program that knows one header of the library alone, and not where it is. */
#include <axlewright/spring.h>

#include <stdio.h>

int main(void)
{
    const double rate = axw_spring_wheel_rate_value(52538.0, 0.62, 0.0);
    if (!axw_version_fits(AXW_VERSION_NUMBER) || !(rate > 20195.0 && rate < 20196.0)) {
        printf("version %s, header %s, rate %g\n", axw_version(), AXW_VERSION, rate);
        return 1;
    }
    printf("1 passed, 0 failed\n");
    return 0;
}
