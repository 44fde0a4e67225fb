/* Verdicts of the caller's own margins. */
#include "check.h"

static void is(int32_t status, int32_t found, int32_t wanted, const char *file, int line)
{
    check_status(status, AXW_OK, "verdict", file, line);
    check_status(found, wanted, "verdict", file, line);
}

#define RATIO(margin, wanted, verdict)                                                                       \
    (status = axw_verdict_of_ratio(margin, wanted, &found), is(status, found, verdict, __FILE__, __LINE__))
#define DIFFERENCE(margin, wanted, verdict)                                                                  \
    (status = axw_verdict_of_difference(margin, wanted, &found),                                             \
     is(status, found, verdict, __FILE__, __LINE__))
#define PLACE(place, low, high, wanted, verdict)                                                             \
    (status = axw_verdict_of_place(place, low, high, wanted, &found),                                        \
     is(status, found, verdict, __FILE__, __LINE__))

static void rules(void)
{
    int32_t status, found = -1;
    RATIO(nextafter(1.0, 0.0), 1.25, AXW_VERDICT_SHORT);
    RATIO(1.0, 1.25, AXW_VERDICT_TIGHT);
    RATIO(nextafter(1.25, 0.0), 1.25, AXW_VERDICT_TIGHT);
    RATIO(1.25, 1.25, AXW_VERDICT_MEETS);
    RATIO(INFINITY, 1.25, AXW_VERDICT_NOT_KNOWN);
    RATIO(INFINITY, INFINITY, AXW_VERDICT_NOT_KNOWN);
    RATIO(-INFINITY, 1.25, AXW_VERDICT_SHORT);
    RATIO(NAN, 1.25, AXW_VERDICT_NOT_KNOWN);
    RATIO(2.0, NAN, AXW_VERDICT_NOT_KNOWN);

    DIFFERENCE(-0.001, 10.0, AXW_VERDICT_SHORT);
    DIFFERENCE(0.0, 10.0, AXW_VERDICT_TIGHT);
    DIFFERENCE(9.999, 10.0, AXW_VERDICT_TIGHT);
    DIFFERENCE(10.0, 10.0, AXW_VERDICT_MEETS);
    DIFFERENCE(NAN, 10.0, AXW_VERDICT_NOT_KNOWN);
    DIFFERENCE(INFINITY, 10.0, AXW_VERDICT_NOT_KNOWN);

    PLACE(1.0, 1.125, 1.5, 0.0625, AXW_VERDICT_SHORT);
    PLACE(1.125, 1.125, 1.5, 0.0625, AXW_VERDICT_TIGHT);
    PLACE(1.1875, 1.125, 1.5, 0.0625, AXW_VERDICT_MEETS);
    PLACE(1.4375, 1.125, 1.5, 0.0625, AXW_VERDICT_MEETS);
    PLACE(1.5, 1.125, 1.5, 0.0625, AXW_VERDICT_TIGHT);
    PLACE(1.75, 1.125, 1.5, 0.0625, AXW_VERDICT_SHORT);
    PLACE(1.75, 1.125, INFINITY, 0.0625, AXW_VERDICT_MEETS);
    PLACE(NAN, 1.125, 1.5, 0.0625, AXW_VERDICT_NOT_KNOWN);
    PLACE(1.25, 1.125, 1.5, NAN, AXW_VERDICT_NOT_KNOWN);

    STATUS(axw_verdict_of_ratio(1.0, 1.0, NULL), AXW_OK);
    STATUS(axw_verdict_of_difference(1.0, 1.0, NULL), AXW_OK);
    STATUS(axw_verdict_of_place(1.0, 0.0, 2.0, 1.0, NULL), AXW_OK);
    found = -1;
    REFUSED(axw_verdict_of_place(1.0, 2.0, 1.0, 0.0, &found), AXW_CONTRADICTION,
            "high = 1 must be greater than low = 2");
    REFUSED(axw_verdict_of_place(1.0, 1.0, 1.0, 0.0, &found), AXW_CONTRADICTION,
            "high = 1 must be greater than low = 1");
    REFUSED(axw_verdict_of_place(1.0, NAN, 2.0, 0.0, &found), AXW_OUT_OF_RANGE,
            "low = NaN is not an edge");
    REFUSED(axw_verdict_of_place(1.0, 0.0, NAN, 0.0, &found), AXW_OUT_OF_RANGE,
            "high = NaN is not an edge");
    CHECK(found == -1);
}

/* A code that is none has no word, and says so. */
static void words(void)
{
    TEXT(axw_verdict_word(AXW_VERDICT_MEETS), "meets");
    TEXT(axw_verdict_word(AXW_VERDICT_TIGHT), "tight");
    TEXT(axw_verdict_word(AXW_VERDICT_SHORT), "short");
    TEXT(axw_verdict_word(AXW_VERDICT_NOT_KNOWN), "not known");
    TEXT(axw_verdict_word(AXW_VERDICT_DOES_NOT_APPLY), "does not apply");
    const int32_t none[] = {-1, AXW_VERDICT_DOES_NOT_APPLY + 1, INT32_MIN, INT32_MAX};
    for (size_t i = 0; i < sizeof none / sizeof none[0]; i++) {
        char wanted[64];
        CHECK(axw_verdict_word(none[i]) == NULL);
        snprintf(wanted, sizeof wanted, "verdict = %d is not a code; the codes are 0 to 4", (int)none[i]);
        check_message(wanted, "axw_verdict_word", __FILE__, __LINE__);
    }
}

void test_verdicts(void)
{
    rules();
    words();
}
