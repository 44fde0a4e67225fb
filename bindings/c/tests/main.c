/* Tests of the C surface. Ends with 1 where a check failed. With the argument "handles" it leaves out the functions, which keep nothing:
 * a leak checker then has less to run. With "threads" it runs only the tests that begin threads, for a checker of these; a what-if then begins none of its own. */
#include "check.h"

long checks_passed, checks_failed;

void check(int holds, const char *what, const char *detail, const char *file, int line)
{
    if (holds) {
        checks_passed++;
        return;
    }
    checks_failed++;
    printf("%s:%d: %s %s\n", file, line, what, detail);
}

const char *last_message(void)
{
    static char buffer[2048];
    axw_last_message(buffer, sizeof buffer);
    return buffer;
}

void check_status(int32_t found, int32_t wanted, const char *what, const char *file, int line)
{
    char detail[2200];
    snprintf(detail, sizeof detail, "is %d, not %d; last message: %s", (int)found, (int)wanted,
             last_message());
    check(found == wanted, what, detail, file, line);
}

void check_message(const char *words, const char *what, const char *file, int line)
{
    char detail[2200];
    snprintf(detail, sizeof detail, "does not say \"%s\" but: %s", words, last_message());
    check(strstr(last_message(), words) != NULL, what, detail, file, line);
}

void check_near(double found, double wanted, double share, const char *what, const char *file, int line)
{
    char detail[128];
    snprintf(detail, sizeof detail, "is %.17g, not %.17g", found, wanted);
    check(fabs(found - wanted) <= share * fabs(wanted), what, detail, file, line);
}

void check_text(const char *found, const char *wanted, const char *what, const char *file, int line)
{
    char detail[512];
    snprintf(detail, sizeof detail, "is \"%s\", not \"%s\"", found, wanted);
    check(strcmp(found, wanted) == 0, what, detail, file, line);
}

int same_bits(double a, double b)
{
    return memcmp(&a, &b, sizeof a) == 0;
}

int main(int count, char **words)
{
    if (count > 1 && strcmp(words[1], "threads") == 0) {
        test_threads_and_messages();
        test_threads_and_handles(1);
        printf("%ld passed, %ld failed\n", checks_passed, checks_failed);
        return checks_failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
    }
    if (count < 2 || strcmp(words[1], "handles") != 0) {
        test_functions();
        test_messages();
    }
    test_text();
    test_models();
    test_named_values();
    test_pointers();
    test_results();
    test_tables();
    test_sheet();
    test_verdicts();
    test_work();
    test_catalogue();
    printf("%ld passed, %ld failed\n", checks_passed, checks_failed);
    return checks_failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
