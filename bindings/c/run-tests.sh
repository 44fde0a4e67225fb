#!/bin/sh
# Tests of the C surface as installed: run-tests.sh PREFIX TARGET_DIR
#
# CC and CXX name the compilers. Each variant is compiled and run by itself, all at once.
set -eu
[ $# -eq 2 ] || { echo "usage: run-tests.sh PREFIX TARGET_DIR" >&2; exit 2; }
prefix=$1
out=$2/c-tests
generated=$2/generated
here=$(cd "$(dirname "$0")" && pwd)
tests=$here/tests
example=$here/../../examples/c
cc=${CC:-cc} cxx=${CXX:-c++}
[ -e "$generated/functions.h" ] || { echo "$generated/functions.h is missing: run cargo xtask generate" >&2; exit 2; }
mkdir -p "$out"
rm -f "$out"/*.log "$out"/*.failed

warnings='-Wall -Wextra -Wpedantic -Werror -Wconversion -Wshadow -Wundef'
plain="$warnings -Wstrict-prototypes -Wmissing-prototypes"
include="-I$prefix/include -I$generated"
native=$(sed -n 's/^Libs.private: //p' "$prefix/lib/pkgconfig/axlewright.pc")
shared="-L$prefix/lib -laxlewright -Wl,-rpath,$prefix/lib -lm -lpthread"
static="$prefix/lib/libaxlewright.a $native"
sanitize='-g -fsanitize=address,undefined -fno-sanitize-recover=all'
export ASAN_OPTIONS=detect_leaks=1 UBSAN_OPTIONS=print_stacktrace=1

# variant NAME COMPILE...: compiles a program and runs it; its last line is its count. RUN and AFTER go
# before and after the program's name.
variant() {
    name=$1
    shift
    if "$@" -o "$out/$name" >"$out/$name.log" 2>&1 && ${RUN:-} "$out/$name" ${AFTER:-} >>"$out/$name.log" 2>&1; then
        echo "$name: $(tail -n 1 "$out/$name.log")"
    else
        touch "$out/$name.failed"
        echo "$name: FAILED" && cat "$out/$name.log"
    fi
}

# The shared library exports what the header declares, and nothing else.
symbols() {
    sed -n 's/^[a-z][a-z0-9_ ]*[ *]\(axw_[a-z0-9_]*\)(.*/\1/p' "$prefix"/include/axlewright/*.h | sort >"$out/declared.txt"
    nm -D --defined-only "$prefix/lib/libaxlewright.so" | sed 's/.* //' | sort >"$out/exported.txt"
    if [ -s "$out/declared.txt" ] && diff "$out/declared.txt" "$out/exported.txt" >"$out/symbols.log" 2>&1; then
        echo "symbols: $(wc -l <"$out/exported.txt") declared and exported"
    else
        touch "$out/symbols.failed"
        echo "symbols: FAILED, < declared, > exported" && cat "$out/symbols.log"
    fi
}

# Every function of the header is tried by functions.c, through the list of them that the generator builds.
functions() {
    sed -n 's/^int32_t axw_\([a-z0-9_]*\)_n(.*/\1/p' "$prefix"/include/axlewright/*.h >"$out/functions.txt"
    while read -r function; do
        grep -q -w -F -e "$function" -e "axw_$function" "$generated/functions.h" || echo "functions.h lacks axw_$function: has it an outside row?"
    done <"$out/functions.txt" >"$out/functions.log"
    if [ -s "$out/functions.txt" ] && [ ! -s "$out/functions.log" ]; then
        echo "functions: $(wc -l <"$out/functions.txt") tried"
    else
        touch "$out/functions.failed"
        echo "functions: FAILED" && cat "$out/functions.log"
    fi
}

# under_valgrind NAME PART OPTIONS...: that part of the tests under a tool of valgrind, if valgrind is there.
under_valgrind() {
    name=$1 part=$2
    shift 2
    if command -v valgrind >/dev/null; then
        RUN="valgrind --quiet --error-exitcode=9 $*" \
            AFTER=$part variant "$name" $cc -std=c99 -D_XOPEN_SOURCE=600 $plain -g $include "$tests"/*.c $shared
    else
        echo "$name: valgrind is not there, its $part are not checked"
    fi
}

# The full leak check finds nothing beside what the installed file names, "possibly lost" neither.
leaks() {
    under_valgrind valgrind handles --leak-check=full --errors-for-leak-kinds=definite,indirect,possible \
        --show-leak-kinds=definite,indirect,possible --suppressions="$prefix/share/axlewright/valgrind.supp"
}

# Helgrind finds no race between threads of the caller.
races() {
    under_valgrind helgrind threads --tool=helgrind --suppressions="$tests/helgrind.supp"
}

# The shared library asks for no newer glibc than DEVELOPERS.md says. Newer machines may bind functions to newer versions: there it is told only.
glibc() {
    floor=2.34
    asked=$(objdump -T "$prefix/lib/libaxlewright.so" | sed -n 's/.*(GLIBC_\([0-9.]*\)).*/\1/p' | sort -V | tail -n 1)
    machine=$(getconf GNU_LIBC_VERSION | sed 's/.* //')
    newest=$(printf '%s\n' "$asked" "$floor" | sort -V | tail -n 1)
    known=$(printf '%s\n' "$machine" 2.37 | sort -V | tail -n 1)
    if [ "$newest" = "$floor" ] || [ "$known" != 2.37 ]; then
        echo "glibc: $asked is needed"
    else
        touch "$out/glibc.failed"
        echo "glibc: FAILED, $asked is needed and not $floor: objdump -T names the function"
    fi
}

# Licences and notices stand beside the library.
licences() {
    for name in LICENSE-MIT LICENSE-APACHE THIRD-PARTY.txt; do
        [ -s "$prefix/share/doc/axlewright/$name" ] || { touch "$out/licences.failed" && echo "licences: FAILED, $name is missing"; }
    done
}

# Every header is complete without the others, in C and in C++, and may stand twice.
headers() {
    for header in "$prefix"/include/axlewright.h "$prefix"/include/axlewright/*.h; do
        name=${header#"$prefix"/include/}
        printf '#include <%s>\n#include <%s>\nint main(void) { return 0; }\n' "$name" "$name" >"$out/alone.c"
        $cc -std=c99 $plain $include -fsyntax-only "$out/alone.c" || echo "$name: C"
        $cxx -std=c++17 $warnings $include -fsyntax-only -x c++ "$out/alone.c" || echo "$name: C++"
        if LC_ALL=C grep -n '[^ -~]' "$header"; then echo "$name is not ASCII"; fi
    done >"$out/headers.log" 2>&1
    if [ ! -s "$out/headers.log" ]; then
        echo "headers: each by itself"
    else
        touch "$out/headers.failed"
        echo "headers: FAILED" && cat "$out/headers.log"
    fi
}

# The prefix may move: a program is compiled and run from a copy, by what its pkg-config file says.
moved() {
    rm -rf "$out/elsewhere"
    cp -R "$prefix" "$out/elsewhere"
    files=$out/elsewhere/lib/pkgconfig
    if grep -r -l -I -F "$prefix" "$out/elsewhere"; then
        touch "$out/moved.failed"
        echo "moved: FAILED, these files name the prefix" && return
    fi
    if command -v pkg-config >/dev/null; then
        flags=$(PKG_CONFIG_PATH=$files pkg-config --cflags --libs axlewright)
    else
        flags=$(sed -n 's/^Cflags: //p; s/^Libs: //p' "$files/axlewright.pc" |
            sed "s|\${includedir}|$files/../../include|; s|\${libdir}|$files/../../lib|")
    fi
    variant moved $cc -std=c99 $plain "$tests/alone/moved.c" $flags "-Wl,-rpath,$out/elsewhere/lib"
}

# Every entry of the build sheet is called by the tests.
sheet() {
    sed -n 's/^[a-z][a-z0-9_ ]*[ *]\(axw_\(sheet\|assessment\|what_if\|price_list\|choose\|chosen\)[a-z_]*\)(.*/\1/p' "$prefix/include/axlewright/sheet.h" >"$out/sheet.txt"
    while read -r entry; do
        grep -q -w -F -e "$entry" "$tests"/*.c || echo "no test calls $entry"
    done <"$out/sheet.txt" >"$out/sheet.log"
    if [ -s "$out/sheet.txt" ] && [ ! -s "$out/sheet.log" ]; then
        echo "sheet: $(wc -l <"$out/sheet.txt") entries called"
    else
        touch "$out/sheet.failed"
        echo "sheet: FAILED" && cat "$out/sheet.log"
    fi
}

# shellcheck disable=SC2086 # the flags are lists
{
    variant c99 $cc -std=c99 -D_XOPEN_SOURCE=600 $plain $include "$tests"/*.c $shared &
    variant c++17 $cxx -std=c++17 $warnings $include -x c++ "$tests"/*.c -x none $shared &
    leaks &
    races &
    variant header-c++17 $cxx -std=c++17 $warnings $include "$tests/header.cpp" $shared &
    variant sanitized $cc -std=c99 -D_XOPEN_SOURCE=600 $plain $sanitize $include "$tests"/*.c $shared &
    variant sanitized-static $cc -std=c99 -D_XOPEN_SOURCE=600 $plain $sanitize $include "$tests"/*.c $static &
    variant sanitized-header-c++17 $cxx -std=c++17 $warnings $sanitize $include "$tests/header.cpp" $shared &
    RUN="sh $tests/estimate.sh" AFTER="$example/dunlin_quote.csv $example/../sheets $out/estimate-quotes" \
        variant estimate $cc -std=c99 $plain $sanitize $include "$example/estimate.c" $shared &
    glibc &
    licences &
    headers &
    moved &
    symbols &
    functions &
    sheet &
    wait
}
set -- "$out"/*.failed
[ ! -e "$1" ]
