"""Packages that only some of the functions need."""

from __future__ import annotations

from importlib import import_module
from typing import Any


def needed(module: str, extra: str) -> Any:
    """A module of another package; if the package is missing, the refusal says how to get it."""
    package = module.partition(".")[0]
    try:
        return import_module(module)
    except ModuleNotFoundError as missing:
        if (missing.name or "").partition(".")[0] != package:
            raise
        raise ImportError(
            f"{package} is not installed, and this needs it: pip install 'axlewright[{extra}]'", name=package
        ) from None
