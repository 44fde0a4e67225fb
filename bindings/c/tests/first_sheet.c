/* Help for the first sheet, and the forms of a report. */
#include "sheet.h"

/* Columns of the widest line: the characters of its UTF-8 bytes. */
static size_t widest(const char *text)
{
    size_t most = 0, columns = 0;
    for (; *text != '\0'; text++) {
        columns = *text == '\n' ? 0 : columns + ((*text & 0xC0) != 0x80);
        most = columns > most ? columns : most;
    }
    return most;
}

static void keys(void)
{
    char *text = NULL;
    size_t needed = 77;
    ASK(text, axw_sheet_keys, NULL, AXW_METRIC, 80);
    CHECK(strstr(text, "front.spring") != NULL && widest(text) <= 80);
    free(text);
    ASK(text, axw_sheet_keys, "lateral rod", AXW_US, 60);
    CHECK(strstr(text, "front.lateral_rod") != NULL && widest(text) <= 60);
    free(text);
    REFUSED(axw_sheet_keys("shock", AXW_AS_WRITTEN, 80, NULL, 0, &needed), AXW_NOT_THERE, "system = 2");
    REFUSED(axw_sheet_keys("\xff", AXW_US, 80, NULL, 0, &needed), AXW_UTF8, "word");
    CHECK(needed == 77);
}

static void starter(void)
{
    const char *const questions[] = {"front", "units"}, *const answers[] = {"strut", "us"};
    const char *const unknown[] = {"front", "axles"};
    char *text = NULL;
    size_t needed = 77;
    size_t size = 0;
    STATUS(axw_sheet_questions(NULL, 0, &size), AXW_OK);
    text = room(size);
    STATUS(axw_sheet_questions(text, size, NULL), AXW_OK);
    CHECK(strstr(text, "\"asks\":\"Front suspension?\"") != NULL && strstr(text, "\"word\":\"strut\"") != NULL);
    free(text);
    ASK(text, axw_sheet_starter, "Lark", questions, answers, 2);
    CHECK(strstr(text, "suspension = \"strut\"") != NULL && strstr(text, "#rate = \"___ lbf/in\"") != NULL);
    axw_sheet *sheet = new_sheet(text);
    free(text);
    ASK(text, axw_sheet_get, sheet, "front.suspension");
    TEXT(text, "strut");
    free(text);
    axw_sheet_free(sheet);
    ASK(text, axw_sheet_starter, "Lark", NULL, NULL, 0);
    CHECK(strstr(text, "suspension = \"double_wishbone\"") != NULL);
    free(text);
    REFUSED(axw_sheet_starter("Lark", unknown, answers, 2, NULL, 0, &needed), AXW_DOCUMENT, "no such question");
    REFUSED(axw_sheet_starter("Lark", questions, unknown, 2, NULL, 0, &needed), AXW_DOCUMENT, "is not an answer");
    REFUSED(axw_sheet_starter(NULL, questions, answers, 2, NULL, 0, &needed), AXW_NULL, "name is NULL");
    REFUSED(axw_sheet_starter("Lark", questions, NULL, 2, NULL, 0, &needed), AXW_NULL, "answers is NULL");
    CHECK(needed == 77);
}

static void reports(void)
{
    axw_sheet *sheet = new_sheet(wagtail);
    axw_assessment *of = assessed(sheet);
    char *text = NULL, *other = NULL;
    size_t needed = 77;
    ASK(text, axw_assessment_report, of, NULL, AXW_METRIC, 80, false, false);
    ASK(other, axw_assessment_text, of, AXW_METRIC, false);
    TEXT(text, other);
    free(other);
    ASK(other, axw_assessment_report, of, NULL, AXW_METRIC, 60, true, false);
    CHECK(widest(text) > 60 && widest(other) <= 60 && strlen(other) > strlen(text));
    free(other);
    free(text);
    ASK(text, axw_assessment_report, of, "engine.pistons", AXW_AS_WRITTEN, 80, false, true);
    CHECK(strstr(text, "engine.mean_piston_speed") != NULL && strstr(text, "front.frequency") == NULL);
    free(text);
    ASK(text, axw_assessment_markdown, of, AXW_AS_WRITTEN);
    CHECK(strncmp(text, "# ", 2) == 0 && strstr(text, "| engine.pistons | short |") != NULL);
    free(text);
    ASK(text, axw_assessment_csv, of, AXW_US);
    CHECK(strstr(text, "\nengine.pistons,short,") != NULL && strstr(text, "ft/min") != NULL);
    free(text);
    ASK(text, axw_assessment_csv, of, AXW_METRIC);
    CHECK(strstr(text, "ft/min") == NULL && strstr(text, "m/s") != NULL);
    free(text);
    REFUSED(axw_assessment_report(of, "engine.pistols", AXW_US, 80, false, false, NULL, 0, &needed), AXW_NOT_THERE,
            "engine.pistons");
    REFUSED(axw_assessment_report(of, NULL, 3, 80, false, false, NULL, 0, &needed), AXW_NOT_THERE, "system = 3");
    REFUSED(axw_assessment_markdown(NULL, AXW_US, NULL, 0, &needed), AXW_NULL, "assessment is NULL");
    REFUSED(axw_assessment_csv(of, -1, NULL, 0, &needed), AXW_NOT_THERE, "system = -1");
    CHECK(needed == 77);
    axw_assessment_free(of);
    axw_sheet_free(sheet);
}

void test_first_sheet(void)
{
    keys();
    starter();
    reports();
}
