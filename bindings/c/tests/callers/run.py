"""Callers of the installed C library from other languages: Python (cffi, both modes), Lua (LuaJIT) and C# (Mono).

    python run.py PREFIX OUT

The interpreter has cffi and lupa, which brings LuaJIT. Mono is that of the machine (`mono` and `mcs`); on Debian and its like without it, the
packages come by `apt-get download` and are unpacked below OUT, without root: 15 packages, 7.1 MB.
cffi and lupa are 2.6 MB.
"""

import os
import shutil
import subprocess
import sys
import time
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

from declared import declared

HERE = Path(__file__).parent

# What a console program and its compiler need, no more.
PACKAGES = """mono-runtime-sgen mono-runtime-common mono-mcs libmono-corlib4.5-dll libmono-corlib4.5-cil libmono-system4.0-cil
libmono-system-core4.0-cil libmono-system-xml4.0-cil libmono-system-configuration4.0-cil libmono-security4.0-cil
libmono-system-numerics4.0-cil libmono-system-security4.0-cil libmono-microsoft-csharp4.0-cil libmono-i18n-west4.0-cil libmono-i18n4.0-cil"""


def cffi_caller(mode: str, prefix: Path, out: Path) -> str:
    return told([sys.executable, HERE / "caller.py", mode, prefix, out])


def lua_caller(prefix: Path, out: Path) -> str:
    from lupa.luajit21 import LuaRuntime

    text, constants = declared(prefix)
    lua = LuaRuntime()
    program = lua.eval("function(text, ...) return assert(loadstring(text, '=caller.lua'))(...) end")
    held = program((HERE / "caller.lua").read_text(), text, lua.table_from(constants), str(prefix / "lib/libaxlewright.so"))
    if not held:
        raise RuntimeError("caller.lua: a check failed")
    return "all checks passed"


def told(command: list, **more) -> str:
    """The last line of what a program prints."""
    done = subprocess.run(command, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True, **more)
    if done.returncode != 0:
        raise RuntimeError(f"{command[0]} ended with {done.returncode}:\n{done.stdout}")
    return done.stdout.strip().splitlines()[-1] if done.stdout.strip() else ""


def mono(out: Path) -> tuple[list, list, dict]:
    """The compiler, the runtime, and their environment."""
    if shutil.which("mono") and shutil.which("mcs"):
        return ["mcs"], ["mono"], dict(os.environ)
    root = out / "mono"
    if not (root / "complete").exists():
        if not (shutil.which("apt-get") and shutil.which("dpkg")):
            raise RuntimeError("C# needs Mono: install `mono` and `mcs`. On Debian and its like, `apt-get` fetches them without root.")
        shutil.rmtree(root, ignore_errors=True)
        fetched = root / "packages"
        fetched.mkdir(parents=True)
        command = ["apt-get", "download", *PACKAGES.split()]
        if subprocess.run(command, cwd=fetched, capture_output=True).returncode != 0:
            # The machine has no lists of packages: they come into a folder of our own.
            lists = root / "apt"
            for folder in ["lists/partial", "cache/archives/partial"]:
                (lists / folder).mkdir(parents=True)
            own = ["-o", f"Dir::State::Lists={lists}/lists", "-o", f"Dir::Cache={lists}/cache"]
            told(["apt-get", *own, "update"])
            told(["apt-get", *own, "download", *PACKAGES.split()], cwd=fetched)
            shutil.rmtree(lists)
        for package in sorted(fetched.glob("*.deb")):
            told(["dpkg", "-x", package, root])
        shutil.rmtree(fetched)
        (root / "complete").write_text("")
    lib = root / "usr/lib"
    paths = {"MONO_PATH": str(lib / "mono/4.5"), "MONO_CFG_DIR": str(root / "etc"), "MONO_GAC_PREFIX": str(root / "usr")}
    runtime = [root / "usr/bin/mono-sgen"]
    return [*runtime, lib / "mono/4.5/mcs.exe"], runtime, {**os.environ, **paths}


def csharp_caller(prefix: Path, out: Path) -> str:
    compiler, runtime, environment = mono(out)
    soname = next(path.name for path in (prefix / "lib").glob("libaxlewright.so.*") if path.is_symlink())
    source, program = out / "Caller.cs", out / "caller.exe"
    source.write_text((HERE / "Caller.cs").read_text().replace("libaxlewright.so.@ABI@", soname))
    told([*compiler, "-warnaserror", f"-out:{program}", source], env=environment)
    return told([*runtime, program], env={**environment, "LD_LIBRARY_PATH": str(prefix / "lib")})


def main(prefix: Path, out: Path) -> int:
    out.mkdir(parents=True, exist_ok=True)
    callers = {
        "cffi, ABI mode": lambda: cffi_caller("abi", prefix, out),
        "cffi, API mode": lambda: cffi_caller("api", prefix, out),
        "LuaJIT": lambda: lua_caller(prefix, out),
        "C# on Mono": lambda: csharp_caller(prefix, out),
    }
    failed = 0

    def timed(call) -> tuple[str, float]:
        start = time.perf_counter()
        return call(), time.perf_counter() - start

    with ThreadPoolExecutor() as pool:
        for name, answer in [(name, pool.submit(timed, call)) for name, call in callers.items()]:
            try:
                said, seconds = answer.result()
                print(f"{name}: {said} ({seconds:.1f} s)")
            except Exception as error:
                failed += 1
                print(f"{name}: FAILED: {error}")
    return failed != 0


if __name__ == "__main__":
    sys.exit(main(Path(sys.argv[1]).resolve(), Path(sys.argv[2]).resolve()))
