/* Status numbers, the last message, and versions. */
#include "check.h"

#include <pthread.h>

/* These numbers are in compiled programs: none of them ever changes. */
static void frozen_numbers(void)
{
    static const struct {
        const char *name;
        long found, frozen;
    } numbers[] = {
        {"AXW_OK", AXW_OK, 0},
        {"AXW_OUT_OF_RANGE", AXW_OUT_OF_RANGE, 1},
        {"AXW_CONTRADICTION", AXW_CONTRADICTION, 2},
        {"AXW_NO_SOLUTION", AXW_NO_SOLUTION, 3},
        {"AXW_TEXT", AXW_TEXT, 4},
        {"AXW_DOCUMENT", AXW_DOCUMENT, 5},
        {"AXW_LENGTH", AXW_LENGTH, 6},
        {"AXW_NULL", AXW_NULL, 100},
        {"AXW_BUFFER", AXW_BUFFER, 101},
        {"AXW_UTF8", AXW_UTF8, 102},
        {"AXW_NOT_THERE", AXW_NOT_THERE, 103},
        {"AXW_ROWS", AXW_ROWS, 104},
        {"AXW_STOPPED", AXW_STOPPED, 105},
        {"AXW_FAULT", AXW_FAULT, 199},
        {"AXW_VERDICT_MEETS", AXW_VERDICT_MEETS, 0},
        {"AXW_VERDICT_TIGHT", AXW_VERDICT_TIGHT, 1},
        {"AXW_VERDICT_SHORT", AXW_VERDICT_SHORT, 2},
        {"AXW_VERDICT_NOT_KNOWN", AXW_VERDICT_NOT_KNOWN, 3},
        {"AXW_COLUMN_F64", AXW_COLUMN_F64, 0},
        {"AXW_COLUMN_I64", AXW_COLUMN_I64, 1},
        {"AXW_COLUMN_CATEGORY", AXW_COLUMN_CATEGORY, 2},
        {"AXW_METRIC", AXW_METRIC, 0},
        {"AXW_US", AXW_US, 1},
    };
    for (size_t i = 0; i < sizeof numbers / sizeof numbers[0]; i++) {
        char detail[64];
        snprintf(detail, sizeof detail, "is %ld, was %ld", numbers[i].found, numbers[i].frozen);
        check(numbers[i].found == numbers[i].frozen, numbers[i].name, detail, __FILE__, __LINE__);
    }
}

static void content(void)
{
    double out = UNTOUCHED;
    STATUS(axw_spring_wheel_rate(52000.0, 3.5, 0.0, &out), AXW_OUT_OF_RANGE);
    TEXT(last_message(),
         "motion_ratio = 3.5 is outside its range; valid: 0 < motion_ratio <= 1.5 (plausibility limit: "
         "above 1.5 it is a percentage or an inverted ratio)");
    REFUSED(axw_fluid_water_boiling_temperature(NAN, &out), AXW_OUT_OF_RANGE,
            "absolute_pressure = NaN is not a finite absolute pressure; valid: ");

    /* A success leaves the sentence of the last failure; a value entry records its own. */
    char before[512];
    axw_last_message(before, sizeof before);
    STATUS(axw_engine_power(1.0, 1.0, &out), AXW_OK);
    TEXT(last_message(), before);
    CHECK(isnan(axw_engine_power_value(1.0, -2.0)));
    check_message("engine_speed = -2 rad/s (-19.1 rpm) is outside its range; valid: 0 <= engine_speed",
                  "value entry", __FILE__, __LINE__);
}

/* A cut sentence is the head of the whole, whole characters only, and nothing behind it is written. */
static void short_buffers(void)
{
    double out;
    char whole[512], cut[512];
    STATUS(axw_text_read("½ µΩ €", "Torque", &out), AXW_TEXT);
    size_t needed = axw_last_message(whole, sizeof whole);
    CHECK(needed == strlen(whole) + 1);
    CHECK(strstr(whole, "€") != NULL);
    CHECK(axw_last_message(NULL, 0) == needed);
    CHECK(axw_last_message(NULL, 100) == needed);
    for (size_t size = 0; size <= needed + 1; size++) {
        memset(cut, '#', sizeof cut);
        CHECK(axw_last_message(cut, size) == needed);
        CHECK(cut[size] == '#');
        if (size == 0) {
            continue;
        }
        size_t length = strlen(cut);
        CHECK(length < size && strncmp(cut, whole, length) == 0);
        CHECK(length == needed - 1 || length + 4 >= size);
        CHECK(((unsigned char)whole[length] & 0xC0u) != 0x80u);
    }
    CHECK(strcmp(cut, whole) == 0);
    CHECK(axw_last_message(cut, 1) == needed && cut[0] == '\0');
    CHECK(axw_last_message(cut, needed - 1) == needed && strlen(cut) == needed - 2);
}

typedef struct {
    double wrong;
    int starts_empty, keeps_its_own;
} errand;

static void *fail_often(void *argument)
{
    errand *of = (errand *)argument;
    char wanted[64], found[256];
    of->starts_empty = axw_last_message(found, sizeof found) == 1 && found[0] == '\0';
    of->keeps_its_own = 1;
    snprintf(wanted, sizeof wanted, "motion_ratio = -%d is", (int)of->wrong);
    for (int turn = 0; turn < 2000; turn++) {
        double out = UNTOUCHED;
        int32_t status = axw_spring_wheel_rate(1.0, -of->wrong, 0.0, &out);
        axw_last_message(found, sizeof found);
        if (status != AXW_OUT_OF_RANGE || !same_bits(out, UNTOUCHED) ||
            strncmp(found, wanted, strlen(wanted)) != 0) {
            of->keeps_its_own = 0;
        }
    }
    return NULL;
}

void test_threads_and_messages(void)
{
    enum { MANY = 4 };
    pthread_t thread[MANY];
    errand errands[MANY];
    double out;
    char before[512];
    STATUS(axw_engine_power(1.0, -4.0, &out), AXW_OUT_OF_RANGE);
    axw_last_message(before, sizeof before);
    for (int i = 0; i < MANY; i++) {
        errands[i].wrong = 10.0 + i;
        CHECK(pthread_create(&thread[i], NULL, fail_often, &errands[i]) == 0);
    }
    for (int i = 0; i < MANY; i++) {
        CHECK(pthread_join(thread[i], NULL) == 0);
        CHECK(errands[i].starts_empty);
        CHECK(errands[i].keeps_its_own);
    }
    TEXT(last_message(), before);
}

static void versions(void)
{
    char text[32];
    snprintf(text, sizeof text, "%d.%d.%d", AXW_VERSION_MAJOR, AXW_VERSION_MINOR, AXW_VERSION_PATCH);
    TEXT(AXW_VERSION, text);
    TEXT(axw_version(), text);
    CHECK(axw_version_number() == AXW_VERSION_NUMBER);
    CHECK(AXW_VERSION_NUMBER == AXW_VERSION_MAJOR * 1000000 + AXW_VERSION_MINOR * 1000 + AXW_VERSION_PATCH);
    CHECK(axw_version_fits(AXW_VERSION_NUMBER));
    CHECK(!axw_version_fits(AXW_VERSION_NUMBER + 1));
    CHECK(!axw_version_fits(AXW_VERSION_NUMBER + 1000));
    CHECK(!axw_version_fits(AXW_VERSION_NUMBER + 1000000));
    CHECK(!axw_version_fits(AXW_VERSION_NUMBER - 1000));
}

void test_messages(void)
{
    frozen_numbers();
    content();
    short_buffers();
    test_threads_and_messages();
    versions();
}
