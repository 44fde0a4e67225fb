/* Quantities as text. */
#include "check.h"

static void reads(const char *text, const char *quantity, double wanted)
{
    double si = UNTOUCHED;
    STATUS(axw_text_read(text, quantity, &si), AXW_OK);
    check_near(si, wanted, 1e-15, text, __FILE__, __LINE__);
    STATUS(axw_text_read(text, quantity, NULL), AXW_OK);
}

static void refuses(const char *text, const char *quantity, int32_t status, const char *words)
{
    double si = UNTOUCHED;
    STATUS(axw_text_read(text, quantity, &si), status);
    check_message(words, text == NULL ? "NULL" : text, __FILE__, __LINE__);
    SAME(si, UNTOUCHED);
}

static void reading(void)
{
    /* Exact definitions: lb = 0.45359237 kg, g = 9.80665 m/s2, in = 0.0254 m (NIST SP 811, App. B). */
    reads("300 lbf/in", "LinearStiffness", 300.0 * 0.45359237 * 9.80665 / 0.0254);
    reads("15 psi gauge", "GaugePressure", 15.0 * 0.45359237 * 9.80665 / (0.0254 * 0.0254));
    reads("2650 mm", "Length", 2.65);
    reads("3 1/2 in", "Length", 3.5 * 0.0254);
    reads("230 °F", "Temperature", (230.0 + 459.67) * 5.0 / 9.0);
    reads("20 delta_degF", "TemperatureDifference", 100.0 / 9.0);
    reads("50 %", "Ratio", 0.5);
    reads("4.10", "Ratio", 4.1);
    reads("0 mm", "Length", 0.0);
    reads("-12 mm", "Length", -0.012);

    reads("300 lbf/in", "linear stiffness", 300.0 * 0.45359237 * 9.80665 / 0.0254);
    reads("300 lbf/in", "LINEARSTIFFNESS", 300.0 * 0.45359237 * 9.80665 / 0.0254);
    reads("4 bar", "Stress or pressure difference", 4e5);

    refuses("300 mm", "LinearStiffness", AXW_TEXT, "300 mm");
    refuses("2,5 mm", "Length", AXW_TEXT, "2,5 mm");
    refuses("20 hp", "Power", AXW_TEXT, "mechanical hp");
    refuses("15 psi", "GaugePressure", AXW_TEXT, "gauge");
    refuses("300", "LinearStiffness", AXW_TEXT, "lbf/in");
    refuses("10 °F", "TemperatureDifference", AXW_TEXT, "delta");
    refuses("", "Length", AXW_TEXT, "there is no text");
    refuses("nan mm", "Length", AXW_TEXT, "nan mm");
    refuses("1e999 mm", "Length", AXW_TEXT, "1e999 mm");
    refuses("300 lbf/in", "Stiffness", AXW_NOT_THERE,
            "there is no quantity \"Stiffness\"; there are LinearStiffness, RotationalStiffness");
    refuses("300 lbf/in", "Rate", AXW_NOT_THERE, "Damping, MomentOfInertia, SecondMoment, SectionModulus, WarpingConstant, RollGradient");
    refuses("300 lbf/in", "", AXW_NOT_THERE, "no quantity");
    refuses(NULL, "Length", AXW_NULL, "text is NULL");
    refuses("1 mm", NULL, AXW_NULL, "quantity is NULL");
    refuses("1 \xB5m", "Length", AXW_UTF8, "text is not UTF-8");
    refuses("1 mm", "Len\xFFgth", AXW_UTF8, "quantity is not UTF-8");
}

static void printing(void)
{
    char buffer[64];
    size_t needed = 99;
    double rate = 0.0;
    STATUS(axw_text_read("300 lbf/in", "LinearStiffness", &rate), AXW_OK);
    STATUS(axw_text_print(rate, "LinearStiffness", AXW_US, buffer, sizeof buffer, &needed), AXW_OK);
    TEXT(buffer, "300 lbf/in");
    CHECK(needed == sizeof "300 lbf/in");
    STATUS(axw_text_print(rate, "LinearStiffness", AXW_METRIC, buffer, sizeof buffer, NULL), AXW_OK);
    TEXT(buffer, "52.54 N/mm");
    STATUS(axw_text_print(383.15, "Temperature", AXW_METRIC, buffer, sizeof buffer, NULL), AXW_OK);
    TEXT(buffer, "110 °C");

    needed = 99;
    STATUS(axw_text_print(rate, "LinearStiffness", AXW_US, NULL, 0, &needed), AXW_OK);
    CHECK(needed == 11);
    STATUS(axw_text_print(rate, "LinearStiffness", AXW_US, NULL, 0, NULL), AXW_OK);
    for (size_t size = 0; size < 11; size++) {
        memset(buffer, '#', sizeof buffer);
        needed = 99;
        REFUSED(axw_text_print(rate, "LinearStiffness", AXW_US, buffer, size, &needed), AXW_BUFFER,
                "buffer is too short: 11 bytes are needed");
        CHECK(buffer[0] == '#' && buffer[size] == '#' && needed == 99);
    }
    STATUS(axw_text_print(rate, "LinearStiffness", AXW_US, buffer, 11, &needed), AXW_OK);
    CHECK(needed == 11 && buffer[10] == '\0' && buffer[11] == '#');

    memset(buffer, '#', sizeof buffer);
    needed = 99;
    const double no_numbers[] = {NAN, -INFINITY};
    for (size_t i = 0; i < sizeof no_numbers / sizeof no_numbers[0]; i++) {
        REFUSED(axw_text_print(no_numbers[i], "AbsolutePressure", AXW_METRIC, buffer, sizeof buffer, &needed),
                AXW_OUT_OF_RANGE, "it is no finite number of kPa absolute");
    }
    REFUSED(axw_text_print(1e308, "Length", AXW_METRIC, buffer, sizeof buffer, &needed), AXW_OUT_OF_RANGE,
            "si = 1e308 is outside its range: it is no finite number of mm");
    CHECK(needed == 99);
    REFUSED(axw_text_print(rate, "LinearStiffness", 7, buffer, sizeof buffer, NULL), AXW_NOT_THERE,
            "system = 7");
    REFUSED(axw_text_print(rate, "Rate", AXW_US, buffer, sizeof buffer, NULL), AXW_NOT_THERE, "Rate");
    REFUSED(axw_text_print(rate, NULL, AXW_US, buffer, sizeof buffer, NULL), AXW_NULL, "quantity is NULL");
    CHECK(buffer[0] == '#');

    /* A wanted margin that no margin reaches yet. */
    STATUS(axw_text_print(INFINITY, "Ratio", AXW_METRIC, buffer, sizeof buffer, &needed), AXW_OK);
    TEXT(buffer, "no limit");
    STATUS(axw_text_print(INFINITY, "Length", AXW_US, buffer, sizeof buffer, &needed), AXW_OK);
    TEXT(buffer, "no limit");
    CHECK(needed == 9);
}

static void units(void)
{
    double si = UNTOUCHED, back = UNTOUCHED;
    STATUS(axw_unit_to_si(230.0, "°F", "Temperature", &si), AXW_OK);
    NEAR(si, 383.15, 1e-15);
    STATUS(axw_unit_from_si(si, "°F", "Temperature", &back), AXW_OK);
    NEAR(back, 230.0, 1e-14);
    STATUS(axw_unit_to_si(4.1, "", "Ratio", &si), AXW_OK);
    SAME(si, 4.1);
    STATUS(axw_unit_to_si(1.0, "rpm", "AngularVelocity", NULL), AXW_OK);
    STATUS(axw_unit_from_si(1.0, "rpm", "AngularVelocity", NULL), AXW_OK);

    si = back = UNTOUCHED;
    REFUSED(axw_unit_to_si(NAN, "mm", "Length", &si), AXW_OUT_OF_RANGE, "value = NaN is outside its range");
    REFUSED(axw_unit_from_si(1e308, "mm", "Length", &back), AXW_OUT_OF_RANGE, "si = 1e308 is outside");
    REFUSED(axw_unit_to_si(1.0, "furlong", "Length", &si), AXW_TEXT, "furlong");
    REFUSED(axw_unit_from_si(1.0, "hp", "Power", &back), AXW_TEXT, "metric hp");
    REFUSED(axw_unit_to_si(1.0, "rpm", "Frequency", &si), AXW_TEXT, "rpm");
    REFUSED(axw_unit_to_si(1.0, NULL, "Length", &si), AXW_NULL, "unit is NULL");
    REFUSED(axw_unit_from_si(1.0, "mm", NULL, &back), AXW_NULL, "quantity is NULL");
    REFUSED(axw_unit_to_si(1.0, "\xFF", "Length", &si), AXW_UTF8, "unit is not UTF-8");
    SAME(si, UNTOUCHED);
    SAME(back, UNTOUCHED);
}

void test_text(void)
{
    reading();
    printing();
    units();
}
