#!/bin/sh
# Installs the C library: headers, shared and static library, pkg-config and CMake files, and what valgrind need not report.
#
#     cargo build --release --package axlewright-c
#     bindings/c/install.sh --prefix DIR [--destdir DIR] [--libdir lib] [--target-dir DIR] [--keep-debug]
#
# --prefix      where the library will live; nothing that is installed names it, so the folder may move
# --destdir     put before the prefix while packaging, and named nowhere
# --libdir      below the prefix (lib/x86_64-linux-gnu)
# --target-dir  cargo's target folder; CARGO_TARGET_DIR or the workspace's own by default
# --keep-debug  leaves debugging information in the libraries
set -eu

# What the static library needs besides itself, as `rustc --print native-static-libs` tells it on Linux with glibc.
NATIVE='-lgcc_s -lutil -lrt -lpthread -lm -ldl -lc'

fail() {
    echo "install.sh: $1" >&2
    exit 1
}

here=$(cd "$(dirname "$0")" && pwd)
root=$(cd "$here/../.." && pwd)
debug=no prefix='' destdir='' libdir=lib target=${CARGO_TARGET_DIR:-$root/target}
while [ $# -gt 0 ]; do
    case $1 in
        --keep-debug) debug=yes && shift && continue ;;
    esac
    case $1 in
        --prefix | --destdir | --libdir | --target-dir) [ $# -ge 2 ] || fail "$1 needs a folder after it" ;;
        *) fail "$1 is not known; usage: install.sh --prefix DIR [--destdir DIR] [--libdir lib] [--target-dir DIR] [--keep-debug]" ;;
    esac
    case $1 in
        --prefix) prefix=$2 ;;
        --destdir) destdir=$2 ;;
        --libdir) libdir=$2 ;;
        --target-dir) target=$2 ;;
    esac
    shift 2
done
[ -n "$prefix" ] || fail "--prefix is missing: the folder below which include/ and lib/ go"
case $prefix in /*) ;; *) prefix=$PWD/$prefix ;; esac
case $libdir in '' | /* | *..*) fail "--libdir = $libdir is not a folder below the prefix, such as lib" ;; esac
case $libdir in *[\|\&\\]*) fail "--libdir must not hold |, & or a backslash" ;; esac

[ "$(uname -s)" = Linux ] || fail "this script knows the file names of Linux only, and this is $(uname -s)"
version=$(sed -n '/^\[workspace.package\]/,/^\[/s/^version = "\(.*\)"$/\1/p' "$root/Cargo.toml")
case $version in *.*.*) ;; *) fail "the workspace's Cargo.toml states no version" ;; esac
major=${version%%.*}
minor=${version#*.} minor=${minor%%.*}
if [ "$major" = 0 ]; then abi=$major.$minor; else abi=$major; fi
soname=libaxlewright.so.$abi
shared=libaxlewright.so.$version
up=$(echo "$libdir" | sed 's|[^/][^/]*|..|g')

for built in libaxlewright.so libaxlewright.a; do
    [ -f "$target/release/$built" ] || fail "$target/release/$built is missing: run cargo build --release --package axlewright-c, or say --target-dir"
done
grep -q -a -F "$soname" "$target/release/libaxlewright.so" || fail "$target/release/libaxlewright.so was not built as $soname: build it again"

lib=$destdir$prefix/$libdir
include=$destdir$prefix/include
share=$destdir$prefix/share/axlewright
doc=$destdir$prefix/share/doc/axlewright
mkdir -p "$include/axlewright" "$share" "$doc" "$lib/pkgconfig" "$lib/cmake/axlewright" || fail "$destdir$prefix cannot be written"
# A new file each time: a program that runs keeps the library that it has.
put() {
    rm -f "$3/$4"
    install -m "$1" "$2" "$3/$4" || fail "$3/$4 cannot be written"
}
fill() {
    sed -e "s|@LIBDIR@|$libdir|" -e "s|@VERSION@|$version|" -e "s|@MAJOR@|$major|" -e "s|@MINOR@|$minor|" \
        -e "s|@SHARED@|$shared|" -e "s|@SONAME@|$soname|" -e "s|@UP@|$up|" -e "s|@NATIVE@|$2|" "$here/$1.in" >"$3/$1" || fail "$3/$1 cannot be written"
}
# The headers of this version and no others.
rm -f "$include"/axlewright/*.h
put 644 "$here/include/axlewright.h" "$include" axlewright.h
for header in "$here"/include/axlewright/*.h; do
    put 644 "$header" "$include/axlewright" "${header##*/}"
done
put 755 "$target/release/libaxlewright.so" "$lib" "$shared"
put 644 "$target/release/libaxlewright.a" "$lib" libaxlewright.a
# Debugging information goes. The shared library keeps its entries and the two names by which valgrind knows what it need not report;
# without the others, and without the number that the linker makes of them, it has the same bytes wherever it was built.
if [ "$debug" = no ]; then
    "${STRIP:-strip}" --wildcard --strip-all --keep-symbol='*init_current*' --keep-symbol='*compress256*' --remove-section=.note.gnu.build-id "$lib/$shared" || fail "$lib/$shared cannot be stripped: say --keep-debug"
    "${STRIP:-strip}" --strip-debug "$lib/libaxlewright.a" || fail "$lib/libaxlewright.a cannot be stripped: say --keep-debug"
fi
ln -sf "$shared" "$lib/$soname"
ln -sf "$soname" "$lib/libaxlewright.so"
put 644 "$root/LICENSE-MIT" "$doc" LICENSE-MIT
put 644 "$root/LICENSE-APACHE" "$doc" LICENSE-APACHE
put 644 "$here/generated.notices.txt" "$doc" THIRD-PARTY.txt
put 644 "$here/valgrind.supp" "$share" valgrind.supp
fill axlewright.pc "$NATIVE" "$lib/pkgconfig"
fill axlewrightConfig.cmake "$(echo "$NATIVE" | tr ' ' ';')" "$lib/cmake/axlewright"
fill axlewrightConfigVersion.cmake '' "$lib/cmake/axlewright"
echo "axlewright $version is below $destdir$prefix"
