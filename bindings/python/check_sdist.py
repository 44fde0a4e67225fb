"""Content that a source distribution must hold: python check_sdist.py SDIST ROOT

It holds every file of the repository from which the module is built, with the bytes that it has there: the Python package, and the sources and
manifests of each crate that its workspace names. What a source includes is one of these files.
"""

import re
import subprocess
import sys
import tarfile
import tomllib
from pathlib import Path, PurePosixPath

#: Files of the module's own folder that nothing is built from.
NOT_BUILT = ("tests/", "benches/", "requirements/", "check_", "axlewright/")
INCLUDED = re.compile(r'include_(?:str|bytes)!\("([^"]*)"\)')


def main(sdist: str, root: str) -> int:
    with tarfile.open(sdist) as files:
        held = {PurePosixPath(*PurePosixPath(one.name).parts[1:]): files.extractfile(one).read() for one in files if one.isfile()}
    faults = [f"lacks {name}" for name in ("PKG-INFO", "pyproject.toml", "Cargo.toml", "Cargo.lock") if PurePosixPath(name) not in held]
    if faults:
        return said(sdist, faults)
    crates = tomllib.loads(held[PurePosixPath("Cargo.toml")].decode())["workspace"]["members"]
    listed = subprocess.run(["git", "ls-files", "bindings/python", *crates], cwd=root, check=True, capture_output=True, text=True)
    for name in listed.stdout.splitlines():
        inside = name.removeprefix("bindings/python/")
        if inside.startswith("axlewright/"):
            place = PurePosixPath(inside)
        elif inside == name or not inside.startswith((*NOT_BUILT, "pyproject.toml")):
            place = PurePosixPath(name)
        else:
            continue
        if place not in held:
            faults.append(f"lacks {place}")
        elif place.name != "Cargo.toml" and held[place] != (Path(root) / name).read_bytes():
            faults.append(f"holds another {place} than the repository")
    for place, content in held.items():
        if place.suffix == ".rs":
            for name in INCLUDED.findall(content.decode()):
                if place.with_name(name) not in held:
                    faults.append(f"lacks {name}, which {place} includes")
    return said(sdist, faults)


def said(sdist: str, faults: list[str]) -> int:
    for fault in faults:
        print(f"{sdist}: {fault}")
    return bool(faults)


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
