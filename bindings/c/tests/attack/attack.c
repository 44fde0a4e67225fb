/* Attacks the C surface: attack COUNT SEED [CASES]. Every function of the generated list is called COUNT times on plausible and on
 * arbitrary numbers, through all of its entries; the texts of a sheet are damaged; and every entry that takes text gets texts of any
 * length. The command CASES prints documents of models with the core's answers, which the C entries must give too. Prints a line for
 * the table of `cargo xtask attack`; ends with 1 where an invariant failed. */
#include "attacked.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
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

/* Least of two sizes. */
static size_t least(size_t a, size_t b)
{
    return a < b ? a : b;
}

/* True where a part of a message repeats the filling of a text: an echo that was not cut. */
static int echoes(const char *message, const char *filling)
{
    char run[400]; /* a refusal shows 72 characters of a line, of four bytes at the most */
    size_t length = strlen(filling);
    for (size_t at = 0; at < sizeof run - 1; at++) {
        run[at] = filling[at % length];
    }
    run[sizeof run - 1] = '\0';
    return filling[0] != ' ' && strstr(message, run) != NULL;
}

/* Peak memory of this process in KiB, since `forget` if the system can do that; 0 where the system does not count it. */
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

static long highest; /* of all peaks */

static void forget(void)
{
    long before = peak();
    highest = before > highest ? before : highest;
    FILE *refs = fopen("/proc/self/clear_refs", "w");
    if (refs != NULL) {
        fputs("5", refs);
        fclose(refs);
    }
}

/* One text of each entry in turn is `long_text`, the others are short and good. */
static void entries_of_text(const char *long_text, size_t size, const char *filling)
{
    static const char *const good[][2] = {
        {"text", "225 lbf/in"}, {"quantity", "LinearStiffness"}, {"unit", "lbf/in"}, {"path", "front.spring.rate"},
        {"paths", "front.spring.rate"}, {"texts", "225 lbf/in"}, {"values", "225 lbf/in"}, {"cells", "225 lbf/in"},
        {"from", "200 lbf/in"}, {"to", "300 lbf/in"}, {"requirements", "cost <= 7000"}, {"function", "spring.wheel_rate"},
    };
    static char message[65536];
    for (size_t i = 0; i < sizeof attacked_texts / sizeof attacked_texts[0]; i++) {
        const attacked_text *of = &attacked_texts[i];
        for (size_t place = 0; place < of->count; place++) {
            const char *texts[MOST];
            for (size_t j = 0; j < of->count; j++) {
                texts[j] = "x";
                for (size_t k = 0; k < sizeof good / sizeof good[0]; k++) {
                    texts[j] = strcmp(of->names[j], good[k][0]) == 0 ? good[k][1] : texts[j];
                }
            }
            texts[place] = long_text;
            forget();
            long before = peak();
            int32_t status = of->call(texts);
            long grown = peak() - before;
            if (status == AXW_OK) {
                answered++;
                continue;
            }
            refused++;
            size_t length = axw_last_message(message, sizeof message);
            if (status == AXW_FAULT) {
                fails(of->name, "has a fault on a long text", NULL, 0);
            } else if (length == 0 || length > 20000 || echoes(message, filling)) {
                fails(of->name, "says a long text again", NULL, 0);
            } else if (size > 4000000 && grown > 4096) {
                fails(of->name, "takes memory for a text that it refuses", NULL, 0);
            }
        }
    }
}

/* Texts of a million bytes and more: letters, digits, brackets, paths, spaces, two bytes a letter, no UTF-8. */
static void long_texts(int all)
{
    static const char *const fillings[] = {"q", "9", "[", "a.", " ", "\xc3\xa9", "\xff", "{\"a\":", "1 + ", "\n", "x = 1\n", "\xe2\x80\xae"};
    static const size_t sizes[] = {1000000, 10000000, 100000000};
    const size_t most = all ? 3 : 2;
    char *text = malloc(sizes[most - 1] + 1);
    if (text == NULL || axw_sheet_new("[front.spring]\nrate = \"550 lbf/in\"\n", &held_axw_sheet) != AXW_OK ||
        axw_assessment_new(held_axw_sheet, &held_axw_assessment) != AXW_OK ||
        axw_what_if_new(held_axw_sheet, &held_axw_what_if) != AXW_OK ||
        axw_price_list_csv("part,kind,cost,front.spring.rate\na,spring,1,225 lbf/in\n", &held_axw_price_list) != AXW_OK ||
        axw_assessment_chances(held_axw_assessment, 10, 1, &held_axw_table) != AXW_OK) {
        fails("long_texts", "cannot begin", NULL, 0);
        return;
    }
    for (size_t i = 0; i < sizeof fillings / sizeof fillings[0]; i++) {
        size_t length = strlen(fillings[i]), filled = length;
        memcpy(text, fillings[i], length);
        while (filled < sizes[most - 1]) {
            size_t more = least(filled, sizes[most - 1] - filled);
            memcpy(text + filled, text, more);
            filled += more;
        }
        for (size_t j = most; j-- > 0;) {
            text[sizes[j]] = '\0';
            entries_of_text(text, sizes[j], fillings[i]);
        }
    }
    free(text);
    axw_table_free(held_axw_table);
    axw_price_list_free(held_axw_price_list);
    axw_what_if_free(held_axw_what_if);
    axw_assessment_free(held_axw_assessment);
    axw_sheet_free(held_axw_sheet);
}

/* The numbers of a table in one, as the core sums them: FNV-1a over their bits. */
static uint64_t sum_of(const axw_table *table)
{
    uint64_t sum = UINT64_C(0xcbf29ce484222325), raw;
    for (size_t column = 0; column < axw_table_columns(table); column++) {
        const double *values = NULL;
        size_t length = 0;
        if (axw_table_f64(table, column, &values, &length) != AXW_OK) {
            continue;
        }
        for (size_t row = 0; row < length; row++) {
            memcpy(&raw, &values[row], sizeof raw);
            sum = (sum ^ (isnan(values[row]) ? UINT64_C(0x7ff8000000000000) : raw)) * UINT64_C(0x100000001b3);
        }
    }
    return sum;
}

/* The words of one case, as the core writes them. */
typedef struct {
    char *next;
} words_of;

static const char *word(words_of *of)
{
    char *start = of->next, *end = strpbrk(start, " \n");
    if (end == NULL) {
        return start;
    }
    *end = '\0';
    of->next = end + 1;
    return start;
}

static size_t whole(words_of *of)
{
    return (size_t)strtoull(word(of), NULL, 10);
}

#define LISTS 8
#define VALUES 4
#define RESULTS 128

static const attacked_model *model_named(const char *name)
{
    for (size_t i = 0; i < sizeof attacked_models / sizeof attacked_models[0]; i++) {
        if (strcmp(attacked_models[i].name, name) == 0) {
            return &attacked_models[i];
        }
    }
    return NULL;
}

static void says_why(const char *name)
{
    static char message[65536];
    size_t length = axw_last_message(message, sizeof message);
    if (length <= 1 || length > 40000) {
        fails(name, "is refused without a sentence, or with an endless one", NULL, 0);
    }
}

/* The document as JSON reads as the same document. */
static void written_again(const attacked_model *of, const void *model)
{
    static char first[1 << 20], second[1 << 20];
    size_t needed = 0, again = 0;
    void *copy = NULL;
    if (of->json(model, NULL, 0, &needed) != AXW_OK) {
        fails(of->name, "is no JSON", NULL, 0);
        return;
    }
    if (needed > sizeof first) {
        return;
    }
    if (of->json(model, first, needed - 1, &again) != AXW_BUFFER || again != 0) {
        fails(of->name, "writes into a buffer that is too short", NULL, 0);
    }
    if (of->json(model, first, sizeof first, &again) != AXW_OK || again != needed || strlen(first) + 1 != needed ||
        of->make(first, &copy) != AXW_OK || of->json(copy, second, sizeof second, &again) != AXW_OK || strcmp(first, second) != 0) {
        fails(of->name, "is another model after its JSON", NULL, 0);
    }
    of->free(copy);
}

/* Asks a method twice, and holds both answers against the core's. */
static int32_t asked(const attacked_model *of, const attacked_method *method, const void *model, words_of *rest, const double *const *x, const size_t *n)
{
    double out[2][RESULTS];
    axw_table *tables[2] = {NULL, NULL};
    int32_t status[2];
    for (size_t time = 0; time < 2; time++) {
        for (size_t i = 0; i < RESULTS; i++) {
            out[time][i] = UNTOUCHED;
        }
        status[time] = method->call(model, x, n, out[time], &tables[time]);
        if (status[time] != AXW_OK) {
            says_why(method->name);
        }
    }
    if (status[0] != status[1] || status[0] == TOUCHED || status[0] == AXW_FAULT) {
        fails(of->name, "answers in another way the second time, or touches what it refuses", NULL, 0);
    }
    size_t count = whole(rest);
    if (status[0] == AXW_OK && tables[0] != NULL) {
        size_t rows = whole(rest);
        uint64_t sum = strtoull(word(rest), NULL, 16);
        if (axw_table_rows(tables[0]) != rows || sum_of(tables[0]) != sum || tables[1] == NULL || sum_of(tables[1]) != sum) {
            fails(of->name, "gives another table than the core", NULL, 0);
        }
    } else {
        for (size_t i = 0; i < RESULTS; i++) {
            const char *number = status[0] == AXW_OK && i < count ? word(rest) : "-";
            uint64_t raw = strtoull(number, NULL, 16);
            double wanted = UNTOUCHED;
            if (number[0] != '-') {
                memcpy(&wanted, &raw, sizeof wanted);
            }
            if (!same(out[0][i], wanted) || !same(out[1][i], wanted)) {
                fails(method->name, "gives other bits than the core", NULL, 0);
                break;
            }
        }
    }
    axw_table_free(tables[0]);
    axw_table_free(tables[1]);
    return status[0];
}

/* One case: its document through the handle of its model. */
static void one_model(words_of *rest, const char *text)
{
    const attacked_model *of = model_named(word(rest));
    const char *name = word(rest);
    int32_t wanted = (int32_t)whole(rest);
    size_t lists = whole(rest), n[LISTS] = {0};
    double values[LISTS][VALUES];
    const double *x[LISTS];
    for (size_t i = 0; i < lists && i < LISTS; i++) {
        n[i] = whole(rest);
        x[i] = values[i];
        for (size_t j = 0; j < n[i] && j < VALUES; j++) {
            uint64_t raw = strtoull(word(rest), NULL, 16);
            memcpy(&values[i][j], &raw, sizeof raw);
        }
    }
    void *model = NULL;
    const attacked_method *method = NULL;
    for (size_t i = 0; of != NULL && i < of->count; i++) {
        method = strcmp(of->methods[i].name, name) == 0 ? &of->methods[i] : method;
    }
    if (of == NULL || (method == NULL && name[0] != '-')) {
        fails(name, "is not in the list of models", NULL, 0);
        return;
    }
    int32_t status = of->make(text, &model);
    if ((status == AXW_OK) != (model != NULL)) {
        fails(of->name, "gives a handle against its status", NULL, 0);
    }
    if (status == AXW_OK && bits() % 8 == 0) {
        written_again(of, model);
    }
    if (status == AXW_OK && method != NULL) {
        status = asked(of, method, model, rest, x, n);
    } else if (status != AXW_OK) {
        says_why(of->name);
    }
    *(status == AXW_OK ? &answered : &refused) += 1;
    if (status != wanted) {
        fails(of->name, "gives another status than the core", NULL, 0);
    }
    of->free(model);
}

/* Every case that the command prints. */
static void models(const char *command)
{
    FILE *cases = popen(command, "r");
    char *line = NULL, *text = NULL;
    size_t size = 0, room = 0;
    unsigned long long read = 0;
    while (cases != NULL && getline(&line, &size, cases) > 0) {
        char *last = strrchr(line, ' ');
        size_t length = last == NULL ? 0 : (size_t)strtoull(last, NULL, 10);
        if (length + 2 > room) {
            room = 2 * length + 2;
            text = realloc(text, room);
        }
        if (text == NULL || fread(text, 1, length + 1, cases) != length + 1) {
            fails("cases", "end in the middle", NULL, 0);
            break;
        }
        text[length] = '\0';
        words_of rest = {line};
        one_model(&rest, text);
        read++;
    }
    if (cases == NULL || pclose(cases) != 0 || read == 0) {
        fails("cases", "are not printed", NULL, 0);
    }
    free(line);
    free(text);
}

int main(int argc, char **argv)
{
    if (argc != 3 && argc != 4) {
        fprintf(stderr, "attack COUNT SEED [CASES]\n");
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
    if (argc == 4) {
        models(argv[3]);
    }
    forget();
    long of_rest = highest;
    long_texts(count >= 1000);
    fprintf(stderr, "peak memory with long texts: %ld MB\n", highest / 1024);
    printf("c\t%llu\t%llu\t%llu\t0\t%llu\t%s\t%ld\n", answered + refused, answered, refused, broken, finding, of_rest);
    return broken == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
