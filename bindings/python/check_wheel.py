"""Content that a built wheel must hold, and must not: python check_wheel.py WHEEL PATH...

It has a description, both licences and the notices. No file in it holds one of the paths, which are those of the machine that built it.
"""

import sys
import zipfile


def main(wheel: str, paths: list[str]) -> int:
    faults = []
    with zipfile.ZipFile(wheel) as files:
        names = files.namelist()
        for wanted in ["LICENSE-MIT", "LICENSE-APACHE", "generated.notices.txt"]:
            if not any(name.endswith(f".dist-info/licenses/{wanted}") for name in names):
                faults.append(f"lacks {wanted}")
        metadata = next(files.read(name).decode() for name in names if name.endswith(".dist-info/METADATA"))
        head, _, description = metadata.partition("\n\n")
        if "Description-Content-Type: text/markdown" not in head or len(description) < 500:
            faults.append("has no description")
        for name in names:
            content = files.read(name)
            faults += [f"{name} holds {path}" for path in paths if path.encode() in content]
    for fault in faults:
        print(f"{wheel}: {fault}")
    return bool(faults)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1], sys.argv[2:]))
