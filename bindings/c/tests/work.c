/* The work behind an answer, of every function. */
#include "check.h"

typedef int32_t shows(const char *function, const double *inputs_si, size_t count, int32_t system,
                      char *buffer, size_t size, size_t *needed);

/* The text in a buffer of exactly its size, which the next call frees. */
static const char *shown(shows *show, const char *function, const double *x, size_t count, int32_t system)
{
    static char *text = NULL;
    size_t needed = 0;
    free(text);
    text = NULL;
    STATUS(show(function, x, count, system, NULL, 0, &needed), AXW_OK);
    text = (char *)malloc(needed > 0 ? needed : 1);
    if (text == NULL || needed == 0) {
        return "";
    }
    text[0] = '?';
    size_t untouched = 77;
    REFUSED(show(function, x, count, system, text, needed - 1, &untouched), AXW_BUFFER, "buffer is too short");
    CHECK(text[0] == '?' && untouched == 77);
    STATUS(show(function, x, count, system, text, needed, NULL), AXW_OK);
    CHECK(strlen(text) + 1 == needed);
    return text;
}

/* A function as functions.h names it, on arguments that have an answer, of which the first result is known. */
void test_work_of(const char *family, const double *x, size_t count, double wanted)
{
    char path[128];
    snprintf(path, sizeof path, "%s", family);
    char *dot = strchr(path, '_');
    CHECK(dot != NULL);
    if (dot == NULL) {
        return;
    }
    *dot = '.';
    const char *text = shown(axw_work, path, x, count, AXW_US);
    CHECK(strncmp(text, path, strlen(path)) == 0);
    const char *headings[] = {"\nFormula\n", "\nArguments\n", "\nWith the numbers, in SI\n", "\nResult\n", "\nSource\n"};
    for (size_t i = 0; i < sizeof headings / sizeof headings[0]; i++) {
        CHECK(strstr(text, headings[i]) != NULL);
    }
    const char *results = strstr(shown(axw_work_json, path, x, count, AXW_METRIC), "\"results\"");
    const char *si = results == NULL ? NULL : strstr(results, "\"si\": ");
    CHECK(si != NULL);
    if (si != NULL) {
        SAME(strtod(si + strlen("\"si\": "), NULL), wanted);
    }
    REFUSED(axw_work(path, x, count - 1, AXW_US, NULL, 0, NULL), AXW_LENGTH, "inputs has");
    double bad[8];
    memcpy(bad, x, count * sizeof *x);
    bad[count - 1] = NAN;
    REFUSED(axw_work(path, bad, count, AXW_US, NULL, 0, NULL), AXW_OUT_OF_RANGE, "NaN");
}

void test_work(void)
{
    /* 300 lbf/in, 0.75, no angle: 168.75 lbf/in, to four figures. */
    const double x[3] = {300.0 * 4.4482216152605 / 0.0254, 0.75, 0.0};
    const char *text = shown(axw_work, "spring.wheel_rate", x, 3, AXW_US);
    CHECK(strstr(text, "k = spring_rate = 300 lbf/in (52538.1 N/m)") != NULL);
    CHECK(strstr(text, "k_w = (52538.1 N/m) (0.75)^2 cos^2 (0 rad)") != NULL);
    CHECK(strstr(text, "k_w = wheel_rate = 168.8 lbf/in") != NULL);
    CHECK(strstr(shown(axw_work, "spring.wheel_rate", x, 3, AXW_METRIC), "N/mm") != NULL);
    STATUS(axw_work("spring.wheel_rate", x, 3, AXW_US, NULL, 0, NULL), AXW_OK);

    size_t needed = 77;
    REFUSED(axw_work("spring.wheelrate", x, 3, AXW_US, NULL, 0, &needed), AXW_NOT_THERE, "`spring.wheel_rate`");
    REFUSED(axw_work("", x, 3, AXW_US, NULL, 0, &needed), AXW_NOT_THERE, "no function");
    REFUSED(axw_work("\xff", x, 3, AXW_US, NULL, 0, &needed), AXW_UTF8, "function");
    REFUSED(axw_work(NULL, x, 3, AXW_US, NULL, 0, &needed), AXW_NULL, "function is NULL");
    REFUSED(axw_work("spring.wheel_rate", NULL, 3, AXW_US, NULL, 0, &needed), AXW_NULL, "inputs_si is NULL");
    REFUSED(axw_work("spring.wheel_rate", NULL, 0, AXW_US, NULL, 0, &needed), AXW_LENGTH, "inputs has 0");
    REFUSED(axw_work("spring.wheel_rate", x, 3, 7, NULL, 0, &needed), AXW_NOT_THERE, "system = 7");
    REFUSED(axw_work_json("spring.wheel_rate", x, 2, AXW_US, NULL, 0, &needed), AXW_LENGTH, "inputs has 2");
    CHECK(needed == 77);
}
