/* Checks that count. Everything here is read as C99 and as C++17. */
#ifndef CHECK_H
#define CHECK_H

#include <axlewright.h>

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

extern long checks_passed, checks_failed;

#define CHECK(condition) check((condition) != 0, #condition, "", __FILE__, __LINE__)
/** The call returns this status; where it does not, the last message is shown. */
#define STATUS(call, wanted) check_status((call), (wanted), #call, __FILE__, __LINE__)
/** The call is refused with this status, and the last message holds these words. */
#define REFUSED(call, wanted, words) (STATUS(call, wanted), check_message((words), #call, __FILE__, __LINE__))
/** Equal within a share of the wanted value. */
#define NEAR(found, wanted, share) check_near((found), (wanted), (share), #found, __FILE__, __LINE__)
#define TEXT(found, wanted) check_text((found), (wanted), #found, __FILE__, __LINE__)
/** To the last bit. */
#define SAME(found, wanted)                                                                                  \
    check(same_bits((found), (wanted)), #found " and " #wanted, "differ", __FILE__, __LINE__)

void check(int holds, const char *what, const char *detail, const char *file, int line);
void check_status(int32_t found, int32_t wanted, const char *what, const char *file, int line);
void check_message(const char *words, const char *what, const char *file, int line);
void check_near(double found, double wanted, double share, const char *what, const char *file, int line);
void check_text(const char *found, const char *wanted, const char *what, const char *file, int line);
int same_bits(double a, double b);
/** The calling thread's last message, in a buffer that the next call overwrites. */
const char *last_message(void);

/** What an output holds before the call: no result, and not a NaN. */
#define UNTOUCHED (-7.25e300)

void test_catalogue(void);
void test_functions(void);
void test_messages(void);
void test_threads_and_messages(void);
void test_text(void);
void test_models(void);
void test_named_values(void);
void test_pointers(void);
void test_results(void);
void test_tables(void);
void test_sheet(void);
void test_threads_and_handles(size_t of_what_if);
void test_verdicts(void);
void test_work(void);
void test_work_of(const char *family, const double *x, size_t count, double wanted);

#endif
