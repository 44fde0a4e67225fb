/* Parts of a price list that meet requirements. */
#include "sheet.h"

static const char prices_csv[] = "part,kind,cost,mass,front.spring.rate,front.tyre.rate\n"
                                 "soft,spring,90,4.2 kg,22 N/mm,\n"
                                 "middle,spring,100,4.5 kg,30 N/mm,\n"
                                 "light,spring,180,2.5 kg,32 N/mm,\n"
                                 "hard,spring,95,5 kg,60 N/mm,\n"
                                 "narrow,tyre,300,16 kg,,160 N/mm\n"
                                 "wide,tyre,280,19 kg,,240 N/mm\n"
                                 "slick,tyre,520,13 kg,,280 N/mm\n";

static const char prices_toml[] =
    "[[parts]]\npart = \"soft\"\nkind = \"spring\"\ncost = 90\nmass = \"4.2 kg\"\nfront.spring.rate = \"22 N/mm\"\n"
    "[[parts]]\npart = \"middle\"\nkind = \"spring\"\ncost = 100\nmass = \"4.5 kg\"\nfront.spring.rate = \"30 N/mm\"\n";

axw_price_list *new_list(void)
{
    axw_price_list *list = NULL;
    STATUS(axw_price_list_csv(prices_csv, &list), AXW_OK);
    CHECK(axw_price_list_parts(list) == 7);
    return list;
}

/* What is chosen is what trying every combination finds. */
static void choosing(void)
{
    static const char *const springs[] = {"22 N/mm", "30 N/mm", "32 N/mm", "60 N/mm"};
    static const char *const tyres[] = {"160 N/mm", "240 N/mm", "280 N/mm"};
    static const char *const names[] = {"soft", "middle", "light", "hard", "narrow", "wide", "slick"};
    static const double cost[] = {90, 100, 180, 95, 300, 280, 520}, mass[] = {4.2, 4.5, 2.5, 5, 16, 19, 13};
    const char *requirements[] = {"1.25 Hz <= front.ride_frequency <= 1.45 Hz", "front.frequency.verdict = meets",
                                  "cost <= 690", "mass <= 24 kg"};
    axw_sheet *sheet = new_sheet(wagtail), *tried = new_sheet(wagtail);
    axw_price_list *list = new_list();
    axw_chosen *chosen = NULL;
    STATUS(axw_choose(sheet, list, requirements, 4, 100, NULL, NULL, &chosen), AXW_OK);
    axw_price_list_free(list); /* the choice lives on */

    axw_table *feasible = NULL, *front = NULL, *rejected = NULL;
    bool more = true;
    STATUS(axw_chosen_feasible(chosen, &feasible, &more), AXW_OK);
    STATUS(axw_chosen_front(chosen, &front), AXW_OK);
    STATUS(axw_chosen_rejected(chosen, &rejected), AXW_OK);
    CHECK(!more);
    size_t found = 0, stands[7] = {0};
    double cheapest = INFINITY, lightest = INFINITY;
    for (size_t spring = 0; spring < 4; spring++) {
        for (size_t tyre = 0; tyre < 3; tyre++) {
            STATUS(axw_sheet_set(tried, "front.spring.rate", springs[spring]), AXW_OK);
            STATUS(axw_sheet_set(tried, "front.tyre.rate", tyres[tyre]), AXW_OK);
            axw_assessment *one = assessed(tried);
            double ride = value_of(one, "front.ride_frequency"), costs = cost[spring] + cost[4 + tyre];
            double weighs = mass[spring] + mass[4 + tyre];
            int32_t verdict = -1;
            STATUS(axw_assessment_answer(one, finding_of(one, "front.frequency"), &verdict, NULL, NULL, NULL, NULL,
                                         NULL, NULL),
                   AXW_OK);
            axw_assessment_free(one);
            if (ride < 1.25 || ride > 1.45 || verdict != AXW_VERDICT_MEETS || costs > 690 || weighs > 24) {
                continue;
            }
            TEXT(word(feasible, "spring", found), names[spring]);
            TEXT(word(feasible, "tyre", found), names[4 + tyre]);
            SAME(number(feasible, "cost", found), costs);
            SAME(number(feasible, "mass", found), weighs);
            cheapest = fmin(cheapest, costs);
            lightest = fmin(lightest, weighs);
            stands[spring]++;
            stands[4 + tyre]++;
            found++;
        }
    }
    CHECK(found >= 3 && found < 12 && axw_table_rows(feasible) == found);
    size_t last = axw_table_rows(front) - 1;
    CHECK(last >= 1);
    SAME(number(front, "cost", 0), cheapest);
    SAME(number(front, "mass", last), lightest);
    for (size_t row = 1; row <= last; row++) {
        CHECK(number(front, "cost", row) > number(front, "cost", row - 1));
        CHECK(number(front, "mass", row) < number(front, "mass", row - 1));
    }
    size_t none = 0;
    for (size_t part = 0; part < 7; part++) {
        if (stands[part] == 0) {
            TEXT(word(rejected, "part", none), names[part]);
            TEXT(word(rejected, "kind", none), part < 4 ? "spring" : "tyre");
            CHECK(strstr(word(rejected, "why", none), "required: ") != NULL);
            none++;
        }
    }
    CHECK(none >= 1 && axw_table_rows(rejected) == none);
    char *text = NULL, *other = NULL;
    ASK(text, axw_chosen_json, chosen);
    CHECK(strstr(text, "\"cheapest\":{") != NULL && strstr(text, "\"more\":false") != NULL);
    CHECK(strstr(text, "\"part\":\"soft\"") != NULL);
    free(text);
    ASK(text, axw_chosen_not_known, chosen);
    TEXT(text, "");
    free(text);

    /* The parts of a choice, fitted. */
    STATUS(axw_chosen_fit(chosen, 0, sheet), AXW_OK);
    for (size_t part = 0; part < 4; part++) {
        if (strcmp(names[part], word(front, "spring", 0)) == 0) {
            ASK(text, axw_sheet_get, sheet, "front.spring.rate");
            TEXT(text, springs[part]);
            free(text);
        }
    }
    ASK(text, axw_sheet_hash, sheet);
    REFUSED(axw_chosen_fit(chosen, last + 1, sheet), AXW_NOT_THERE, "is not there: the front has");
    REFUSED(axw_chosen_fit(chosen, 0, NULL), AXW_NULL, "sheet is NULL");
    REFUSED(axw_chosen_fit(NULL, 0, sheet), AXW_NULL, "chosen is NULL");
    ASK(other, axw_sheet_hash, sheet);
    TEXT(other, text);
    free(other);
    free(text);
    axw_chosen_free(chosen);
    CHECK(number(front, "cost", 0) > 0.0);
    axw_table_free(feasible);
    axw_table_free(front);
    axw_table_free(rejected);
    axw_sheet_free(tried);
    axw_sheet_free(sheet);
}

/* What a choice makes worse is named, and may be required not to be. */
static void worse_is_named(void)
{
    axw_sheet *sheet = new_sheet("version = 1\n[cap]\nrating = \"15 psi gauge\"\nrating_tolerance = \"1 psi\"\ngauge_error = "
                                 "\"0.5 psi\"\nholding_pressure = \"14.6 psi gauge\"\n");
    axw_price_list *list = NULL;
    axw_chosen *chosen = NULL;
    char *text = NULL;
    const char *kept[] = {"no finding worse"};
    STATUS(axw_price_list_csv("part,kind,cost,cap.rating,cap.rating_tolerance,cap.holding_pressure\n"
                              "fine,cap,10,15 psi gauge,1 psi,14.6 psi gauge\n"
                              "weak,cap,5,15 psi gauge,1 psi,9 psi gauge\n",
                              &list),
           AXW_OK);
    STATUS(axw_choose(sheet, list, NULL, 0, 9, NULL, NULL, &chosen), AXW_OK);
    ASK(text, axw_chosen_worse, chosen, 0);
    TEXT(text, "cap.holds: short, meets now\n");
    free(text);
    REFUSED(axw_chosen_worse(chosen, 1, NULL, 0, NULL), AXW_NOT_THERE, "the front has 1");
    REFUSED(axw_chosen_worse(NULL, 0, NULL, 0, NULL), AXW_NULL, "chosen is NULL");
    axw_chosen_free(chosen);
    STATUS(axw_choose(sheet, list, kept, 1, 9, NULL, NULL, &chosen), AXW_OK);
    ASK(text, axw_chosen_worse, chosen, 0);
    TEXT(text, "");
    free(text);
    axw_table *table = NULL;
    STATUS(axw_chosen_rejected(chosen, &table), AXW_OK);
    CHECK(axw_table_rows(table) == 1);
    TEXT(word(table, "part", 0), "weak");
    CHECK(strstr(word(table, "why", 0), "short, meets now; required: no finding worse") != NULL);
    axw_table_free(table);
    axw_chosen_free(chosen);
    axw_price_list_free(list);
    axw_sheet_free(sheet);
}

/* What describes the old part or was measured on it, or of the swept line, is left out and named. */
static void readings_are_dropped(void)
{
    axw_sheet *sheet = new_sheet("version = 1\n[use]\naltitude = \"500 m\"\nstation_pressure = \"94 kPa abs\"\n[cap]\n"
                                 "rating = \"15 psi gauge\"\nrating_tolerance = \"1 psi\"\ngauge_error = \"0.5 psi\"\n"
                                 "holding_pressure = \"14.6 psi gauge\"\n");
    axw_price_list *list = NULL;
    axw_chosen *chosen = NULL;
    char *text = NULL;
    STATUS(axw_price_list_csv("part,kind,cost,cap.rating\nnew,cap,10,18 psi gauge\n", &list), AXW_OK);
    STATUS(axw_choose(sheet, list, NULL, 0, 9, NULL, NULL, &chosen), AXW_OK);
    axw_price_list_free(list);
    ASK(text, axw_chosen_dropped, chosen);
    TEXT(text, "cap.rating_tolerance\ncap.holding_pressure\n");
    free(text);
    ASK(text, axw_chosen_json, chosen);
    CHECK(strstr(text, "\"dropped\":[\"cap.rating_tolerance\",\"cap.holding_pressure\"]") != NULL && strstr(text, "\"worse\":[") != NULL);
    free(text);
    axw_assessment *before = assessed(sheet);
    STATUS(axw_chosen_fit(chosen, 0, sheet), AXW_OK);
    axw_chosen_free(chosen);
    axw_assessment *after = assessed(sheet);
    CHECK(value_of(before, "cap.holds_at_least") > 90e3 && isnan(value_of(after, "cap.holds_at_least")));
    axw_assessment_free(before);
    axw_assessment_free(after);

    axw_what_if *of = new_what_if(sheet);
    static const double altitudes[] = {0.0, 2000.0};
    STATUS(axw_what_if_numbers(of, "use.altitude", altitudes, 2), AXW_OK);
    STATUS(axw_what_if_output(of, "use.station_pressure"), AXW_OK);
    ASK(text, axw_what_if_dropped, of);
    TEXT(text, "use.station_pressure\n");
    free(text);
    axw_table *table = all_rows(of, 1);
    CHECK(fabs(number(table, "use.station_pressure", 0) - 101325.0) < 1.0);
    axw_table_free(table);
    axw_what_if_free(of);
    axw_sheet_free(sheet);
}

static void choosing_is_refused(void)
{
    axw_sheet *sheet = new_sheet(wagtail);
    axw_price_list *list = new_list(), *kept = list, *other = NULL;
    axw_chosen *chosen = NULL;
    axw_table *table = NULL;
    const char *wrong[] = {"front.ride_frequency <= 2 kg"}, *gap[] = {"cost <= 100", NULL};
    const char *fine[] = {"front.ride_frequency >= 1 Hz"}, *out_of_reach[] = {"cost <= 300"};
    const char *unknown[] = {"rear.natural_frequency <= 1 Hz"}, *margins[] = {"margins >= 1.3"};
    REFUSED(axw_choose(sheet, list, wrong, 1, 9, NULL, NULL, &chosen), AXW_TEXT, "2 kg");
    REFUSED(axw_choose(sheet, list, gap, 2, 9, NULL, NULL, &chosen), AXW_NULL, "requirements[1] is NULL");
    REFUSED(axw_choose(sheet, list, NULL, 1, 9, NULL, NULL, &chosen), AXW_NULL, "requirements is NULL");
    REFUSED(axw_choose(NULL, list, fine, 1, 9, NULL, NULL, &chosen), AXW_NULL, "sheet is NULL");
    REFUSED(axw_choose(sheet, NULL, fine, 1, 9, NULL, NULL, &chosen), AXW_NULL, "list is NULL");
    REFUSED(axw_choose(sheet, list, fine, 1, 9, NULL, NULL, NULL), AXW_NULL, "chosen is NULL");
    REFUSED(axw_choose(sheet, list, unknown, 1, 9, NULL, NULL, &chosen), AXW_NO_SOLUTION, "needs rear.");
    watch stop = {0, 1, 0};
    REFUSED(axw_choose(sheet, list, fine, 1, 9, watching, &stop, &chosen), AXW_STOPPED, "stopped: progress");
    CHECK(chosen == NULL && stop.calls == 1);
    watch on = {0, 0, 0};
    STATUS(axw_choose(sheet, list, fine, 1, 2, watching, &on, &chosen), AXW_OK);
    CHECK(on.calls >= 1);
    bool more = false;
    STATUS(axw_chosen_feasible(chosen, &table, &more), AXW_OK);
    CHECK(more && axw_table_rows(table) == 2);
    axw_table_free(table);
    REFUSED(axw_chosen_feasible(chosen, NULL, &more), AXW_NULL, "table is NULL");
    axw_chosen_free(chosen);

    /* Nothing is cheap enough: no row, and every part says why. */
    STATUS(axw_choose(sheet, list, out_of_reach, 1, 9, NULL, NULL, &chosen), AXW_OK);
    STATUS(axw_chosen_front(chosen, &table), AXW_OK);
    CHECK(axw_table_rows(table) == 0 && axw_table_columns(table) == 4);
    axw_table_free(table);
    STATUS(axw_chosen_rejected(chosen, &table), AXW_OK);
    CHECK(axw_table_rows(table) == 7);
    axw_table_free(table);
    REFUSED(axw_chosen_fit(chosen, 0, sheet), AXW_NOT_THERE, "the front has 0");
    axw_chosen_free(chosen);

    char *text = NULL;
    STATUS(axw_choose(sheet, list, margins, 1, 9, NULL, NULL, &chosen), AXW_OK);
    ASK(text, axw_chosen_not_known, chosen);
    CHECK(strstr(text, "clutch.holds.margin needs ") != NULL);
    free(text);
    axw_chosen_free(chosen);

    /* Lists with a fault. */
    REFUSED(axw_price_list_csv("part,kind,cost,front.spring.rate\na,spring,10,30 N/mm\nb,spring,ten,30 N/mm\n",
                               &kept),
            AXW_DOCUMENT, "line 3, column 10: cost: `ten` is no cost");
    REFUSED(axw_price_list_csv("part,kind,cost,front.spring.rat\na,spring,10,30 N/mm\n", &kept), AXW_DOCUMENT,
            "line 1, column 16: front.spring.rat: ");
    REFUSED(axw_price_list_csv("part,kind\na,spring\n", &kept), AXW_DOCUMENT, "line 1, column 1: cost: ");
    REFUSED(axw_price_list_csv("part,kind,cost\na,spring\n", &kept), AXW_DOCUMENT, "line 2, column 1: ");
    REFUSED(axw_price_list_csv(NULL, &kept), AXW_NULL, "text is NULL");
    REFUSED(axw_price_list_csv(prices_csv, NULL), AXW_NULL, "list is NULL");
    REFUSED(axw_price_list_new("[[parts]]\npart = \"a\"\nkind = \"spring\"\n", &kept), AXW_DOCUMENT,
            "cost: every part");
    REFUSED(axw_price_list_new("\xff", &kept), AXW_UTF8, "text is not UTF-8");
    REFUSED(axw_price_list_new(prices_toml, NULL), AXW_NULL, "list is NULL");
    CHECK(kept == list);
    STATUS(axw_price_list_new(prices_toml, &other), AXW_OK);
    CHECK(axw_price_list_parts(other) == 2 && axw_price_list_parts(NULL) == 0);
    axw_price_list_free(other);

    table = NULL;
    size_t needed = 77;
    REFUSED(axw_chosen_front(NULL, &table), AXW_NULL, "chosen is NULL");
    REFUSED(axw_chosen_feasible(NULL, &table, NULL), AXW_NULL, "chosen is NULL");
    REFUSED(axw_chosen_rejected(NULL, &table), AXW_NULL, "chosen is NULL");
    REFUSED(axw_chosen_json(NULL, NULL, 0, &needed), AXW_NULL, "chosen is NULL");
    REFUSED(axw_chosen_not_known(NULL, NULL, 0, &needed), AXW_NULL, "chosen is NULL");
    REFUSED(axw_chosen_dropped(NULL, NULL, 0, &needed), AXW_NULL, "chosen is NULL");
    CHECK(table == NULL && needed == 77);
    axw_price_list_free(list);
    axw_sheet_free(sheet);
}

void test_choosing(void)
{
    axw_price_list_free(NULL);
    axw_chosen_free(NULL);
    choosing();
    readings_are_dropped();
    worse_is_named();
    choosing_is_refused();
}
