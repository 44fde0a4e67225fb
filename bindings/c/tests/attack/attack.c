/* Attacks the C surface: attack COUNT SEED. Every function of the generated list is called COUNT times on plausible and on
 * arbitrary numbers, through all of its entries, and the texts of a sheet are damaged. Prints a line for the table of
 * `cargo xtask attack`; ends with 1 where an invariant failed. */
#include "../family.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define MOST 8
#define UNTOUCHED (-7.25e300)

static uint64_t state;
static unsigned long long answered, refused, broken;
static char finding[160] = "none";

/* SplitMix64 (Steele, Lea and Flood, OOPSLA 2014). */
static uint64_t bits(void)
{
    uint64_t mixed = state += UINT64_C(0x9E3779B97F4A7C15);
    mixed = (mixed ^ mixed >> 30) * UINT64_C(0xBF58476D1CE4E5B9);
    mixed = (mixed ^ mixed >> 27) * UINT64_C(0x94D049BB133111EB);
    return mixed ^ mixed >> 31;
}

static double share(void)
{
    return (double)(bits() >> 11) * 0x1p-53;
}

static int same(double a, double b)
{
    return memcmp(&a, &b, sizeof a) == 0 || (isnan(a) && isnan(b));
}

static double any_number(double good)
{
    static const double special[] = {0.0, -0.0, NAN, INFINITY, -INFINITY, 5e-324, -5e-324, 1.7e308, 1.0, -1.0};
    uint64_t raw = bits();
    double number;
    switch (bits() % 8) {
    case 0:
        memcpy(&number, &raw, sizeof number);
        return number;
    case 1:
        return special[raw % (sizeof special / sizeof special[0])];
    case 2:
        return (raw & 1 ? -1.0 : 1.0) * pow(10.0, 600.0 * share() - 300.0);
    case 3:
        return nextafter(good, raw & 1 ? INFINITY : -INFINITY);
    case 4:
        return good;
    default:
        return good * 2.0 * share();
    }
}

static void fails(const char *name, const char *what, const double *x, size_t count)
{
    if (broken++ == 0) {
        snprintf(finding, sizeof finding, "%s %s", name, what);
    }
    if (broken <= 20) {
        fprintf(stderr, "%s %s at", name, what);
        for (size_t j = 0; j < count; j++) {
            fprintf(stderr, " %.17g", x[j]);
        }
        fprintf(stderr, "\n");
    }
}

/* One point through every entry of a function. */
static void one(const family *of)
{
    double x[MOST], out[MOST], first = UNTOUCHED, row = UNTOUCHED;
    const double *arrays[MOST];
    for (size_t j = 0; j < MOST; j++) {
        x[j] = j < of->count ? any_number(of->good[j]) : 0.0;
        out[j] = UNTOUCHED;
        arrays[j] = &x[j];
    }
    int32_t reason = -1, status = of->scalar(x, &first), all = of->all(x, out);
    int32_t batch = of->batch(1, arrays, &row, &reason);
    double value = of->value(x);
    if (all != status || reason != status || batch != (status == AXW_OK ? AXW_OK : AXW_ROWS)) {
        fails(of->name, "gives another status by another entry", x, of->count);
        return;
    }
    if (status == AXW_OK) {
        answered++;
        if (!same(first, out[0]) || !same(first, row) || !same(first, value)) {
            fails(of->name, "gives other bits by another entry", x, of->count);
        }
        for (size_t i = 0; i < of->outs; i++) {
            if (!isfinite(out[i])) {
                fails(of->name, "gives no finite number", x, of->count);
                break;
            }
        }
        return;
    }
    refused++;
    char message[8192];
    size_t length = axw_last_message(message, sizeof message);
    if (length == 0 || message[0] == '\0') {
        fails(of->name, "is refused without a message", x, of->count);
    }
    for (size_t i = 0; i < of->outs; i++) {
        if (!same(out[i], UNTOUCHED) || !same(first, UNTOUCHED) || !isnan(row) || !isnan(value)) {
            fails(of->name, "is refused and gives a number", x, of->count);
            break;
        }
    }
}

/* Text of a sheet with damage to its bytes, invalid UTF-8 too; its length without the end is `size`. */
static void texts(unsigned long long count)
{
    static const char good[] = "name = \"Dunlin\"\n[front.spring]\nrate = \"550 lbf/in +/- 3 %\"\n"
                               "[gearbox]\nratios = [4.7, 2.9, 1.8]\n[cap]\nrating = \"15 psi gauge\"\n";
    for (unsigned long long at = 0; at < count; at++) {
        char text[sizeof good];
        memcpy(text, good, sizeof good);
        for (uint64_t times = bits() % 4; times > 0; times--) {
            text[bits() % (sizeof good - 1)] = (char)(bits() & 0xff);
        }
        axw_sheet *sheet = NULL;
        axw_price_list *list = NULL;
        int32_t status = axw_sheet_new(text, &sheet), other = axw_price_list_csv(text, &list);
        if ((status == AXW_OK) != (sheet != NULL) || (other == AXW_OK) != (list != NULL)) {
            fails("axw_sheet_new", "gives a handle against its status", NULL, 0);
        }
        *(status == AXW_OK ? &answered : &refused) += 1;
        *(other == AXW_OK ? &answered : &refused) += 1;
        if (sheet != NULL && bits() % 16 == 0) {
            axw_assessment *assessment = NULL;
            if (axw_assessment_new(sheet, &assessment) != AXW_OK || assessment == NULL) {
                fails("axw_assessment_new", "refuses a sheet that was read", NULL, 0);
            }
            axw_assessment_free(assessment);
        }
        axw_sheet_free(sheet);
        axw_price_list_free(list);
    }
}

/* Peak memory of this process in KiB; 0 where the system does not count it. */
static long peak(void)
{
    char line[256];
    long kib = 0;
    FILE *status = fopen("/proc/self/status", "r");
    while (status != NULL && fgets(line, sizeof line, status) != NULL) {
        if (sscanf(line, "VmHWM: %ld", &kib) == 1) {
            break;
        }
    }
    if (status != NULL) {
        fclose(status);
    }
    return kib;
}

int main(int argc, char **argv)
{
    if (argc != 3) {
        fprintf(stderr, "attack COUNT SEED\n");
        return 2;
    }
    unsigned long long count = strtoull(argv[1], NULL, 10);
    state = strtoull(argv[2], NULL, 10);
    for (size_t i = 0; i < sizeof families / sizeof families[0]; i++) {
        for (unsigned long long at = 0; at < count; at++) {
            one(&families[i]);
        }
    }
    texts(count);
    printf("c\t%llu\t%llu\t%llu\t0\t%llu\t%s\t%ld\n", answered + refused, answered, refused, broken, finding, peak());
    return broken == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
