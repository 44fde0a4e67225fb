"""Declarations of the installed headers, for foreign function interfaces that read C: no comments, no preprocessor."""

import re
from pathlib import Path


def declared(prefix: Path) -> tuple[str, dict[str, int]]:
    """All declarations, and the numbers of the constants."""
    folder = prefix / "include/axlewright"
    text = "".join(header.read_text() for header in [folder / "core.h", *sorted(folder.glob("[!c]*.h")), folder / "cooling.h"])
    text = re.sub(r"/\*.*?\*/|//[^\n]*", "", text, flags=re.S)
    constants = {name: int(number) for name, number in re.findall(r"^#define (AXW_\w+) (\d+)$", text, flags=re.M)}
    text = re.sub(r"^#ifdef __cplusplus\n.*?^#endif", "", text, flags=re.S | re.M)
    return re.sub(r"^#.*$", "", text, flags=re.M), constants
