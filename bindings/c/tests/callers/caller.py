"""The C library through cffi: by the installed shared library alone (ABI mode), and compiled against the headers (API mode).

    python caller.py abi|api PREFIX OUT
"""

import importlib.util
import json
import math
import os
import subprocess
import sys
import sysconfig
from pathlib import Path

import cffi
from declared import declared

CORNER = """{"rate": "450 lbf/in", "free_length": "320 mm", "solid_length": "165 mm", "minimum_gap": "15 mm", "motion_ratio": 0.62,
"sprung_mass": "545 kg", "droop_length": "300 mm", "damper_stroke": "110 mm", "damper_mounting": "coil_over"}"""
SHEET = """version = 1
[front]
sprung_mass = "545 kg"
[front.spring]
rate = "550 lbf/in +/- 3 %"
motion_ratio = 0.6
[front.wanted]
frequency_low = "1.2 Hz"
frequency_high = "1.5 Hz"
"""


def opened(mode: str, prefix: Path, out: Path):
    """The interface and the library."""
    text, constants = declared(prefix)
    ffi = cffi.FFI()
    if mode == "abi":
        ffi.cdef(text)
        return ffi, ffi.dlopen(str(prefix / "lib/libaxlewright.so")), constants
    ffi.cdef(text + "".join(f"#define {name} ...\n" for name in constants))
    ffi.set_source("_axlewright_c", "#include <axlewright.h>")
    out.mkdir(parents=True, exist_ok=True)
    source, module = out / "_axlewright_c.c", out / "_axlewright_c.so"
    ffi.emit_c_code(str(source))
    flags = [f"-I{prefix}/include", f"-I{sysconfig.get_path('include')}", f"-L{prefix}/lib", "-laxlewright", f"-Wl,-rpath,{prefix}/lib"]
    subprocess.run([os.environ.get("CC", "cc"), "-shared", "-fPIC", "-O0", "-o", module, source, *flags], check=True)
    spec = importlib.util.spec_from_file_location("_axlewright_c", module)
    made = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(made)
    return made.ffi, made.lib, {name: getattr(made.lib, name) for name in constants}


passed = failed = 0


def check(holds: bool, what: str) -> None:
    global passed, failed
    passed, failed = passed + bool(holds), failed + (not holds)
    if not holds:
        print(what)


def main(mode: str, prefix: Path, out: Path) -> int:
    ffi, lib, status = opened(mode, prefix, out)

    def message() -> str:
        buffer = ffi.new("char[]", 1000)
        lib.axw_last_message(buffer, 1000)
        return ffi.string(buffer).decode()

    def ok(call: int) -> None:
        check(call == status["AXW_OK"], f"status {call}: {message()}")

    def text(entry, *arguments) -> str:
        needed = ffi.new("size_t *")
        ok(entry(*arguments, ffi.NULL, 0, needed))
        buffer = ffi.new("char[]", needed[0])
        ok(entry(*arguments, buffer, needed[0], needed))
        return ffi.string(buffer).decode()

    # A function, and text with its unit.
    rate = ffi.new("double *")
    ok(lib.axw_text_read(b"300 lbf/in", b"linear stiffness", rate))
    ok(lib.axw_spring_wheel_rate(rate[0], 0.62, 0.0, rate))
    check(text(lib.axw_text_print, rate[0], b"linear stiffness", status["AXW_METRIC"]) == "20.2 N/mm", "the wheel rate")
    # An error and its message.
    refused = lib.axw_spring_wheel_rate(50000.0, 62.0, 0.0, rate)
    check(refused == status["AXW_OUT_OF_RANGE"] and "motion_ratio = 62" in message(), message())
    # A model of JSON text.
    corner, on = ffi.new("axw_spring_corner **"), ffi.new("axw_spring_corner_at_ride_height_result *")
    ok(lib.axw_spring_corner_new(CORNER.encode(), corner))
    on.size = ffi.sizeof("axw_spring_corner_at_ride_height_result")
    ok(lib.axw_spring_corner_at_ride_height(corner[0], on))
    check(math.isclose(on.sag, 0.144, abs_tol=5e-4) and ffi.string(on.ends_first) == b"damper closed", "the corner")
    lib.axw_spring_corner_free(corner[0])
    refused = lib.axw_spring_corner_new(b'{"rat": "450 lbf/in"}', corner)
    check(refused == status["AXW_DOCUMENT"] and "did you mean" in message(), message())
    # A sheet and its assessment.
    sheet, assessment = ffi.new("axw_sheet **"), ffi.new("axw_assessment **")
    finding, margin = ffi.new("size_t *"), ffi.new("double *")
    ok(lib.axw_sheet_new(SHEET.encode(), sheet))
    ok(lib.axw_assessment_new(sheet[0], assessment))
    ok(lib.axw_assessment_find(assessment[0], b"front.frequency", finding))
    none = ffi.NULL
    ok(lib.axw_assessment_answer(assessment[0], finding[0], none, none, none, none, margin, none, none))
    check(math.isclose(margin[0], 0.069, abs_tol=5e-4), f"margin {margin[0]}")
    check("front.frequency" in text(lib.axw_assessment_json, assessment[0]), "the assessment as JSON")
    lib.axw_assessment_free(assessment[0])
    lib.axw_sheet_free(sheet[0])
    # All functions at run time.
    names = [ffi.string(lib.axw_function_name(place)) for place in range(lib.axw_function_count())]
    check(b"spring.wheel_rate" in names and names == sorted(names), "the names of the functions")
    told = json.loads(text(lib.axw_function_describe, b"spring.wheel_rate"))
    check([of["name"] for of in told["parameters"]][1] == "motion_ratio", "the description of a function")
    inputs, result = ffi.new("double[]", [52538.0, 0.62, 0.0]), ffi.new("double *")
    ok(lib.axw_function_call(b"spring.wheel_rate", inputs, 3, result, 1))
    check(result[0] == lib.axw_spring_wheel_rate_value(52538.0, 0.62, 0.0), "a call by name")
    print(f"{passed} passed, {failed} failed")
    return failed != 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1], Path(sys.argv[2]), Path(sys.argv[3])))
