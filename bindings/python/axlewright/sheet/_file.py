"""Files that stand there whole or not at all."""

from __future__ import annotations

import atexit
import contextlib
import os
import signal
import stat
import threading
from collections.abc import Iterator
from os import PathLike
from types import FrameType
from typing import NoReturn

#: Files that are being written, under their temporary names, each with the process that writes it: a fork leaves those of its parent alone.
_begun: dict[str, int] = {}


class _Ended(BaseException):
    """A signal asks the process to end."""


@contextlib.contextmanager
def whole_file(path: str | PathLike[str]) -> Iterator[str]:
    """A temporary name beside a file: what is written there takes its place when the block ends, and is removed if it fails.

    A symbolic link stays, and its target is replaced. A file that was there keeps its mode. A pipe, a device or a folder is refused. The temporary
    file is also removed where the interpreter ends or the process is told to (SIGTERM, SIGHUP); only SIGKILL or a loss of power leaves it:
    `.NAME.axlewright-PID-RANDOM.part` beside the file.
    """
    name = os.path.realpath(os.fsdecode(path))
    before = _ordinary(name)
    folder, base = os.path.split(name)
    beside = os.path.join(folder, f".{base[:60]}.axlewright-{os.getpid()}-{os.urandom(4).hex()}.part")
    _begun[beside] = os.getpid()
    try:
        with _told_to_end():
            yield beside
            _keep_mode(beside, before)
            with open(beside, "rb+") as file:
                os.fsync(file.fileno())
            os.replace(beside, name)
    finally:
        _remove(beside)


def _ordinary(name: str) -> os.stat_result | None:
    """What is known of a file; nothing if it is not there yet."""
    try:
        known = os.stat(name)
    except FileNotFoundError:
        return None
    if stat.S_ISDIR(known.st_mode):
        raise IsADirectoryError(f"{name} is a folder, not a file")
    if not stat.S_ISREG(known.st_mode):
        raise ValueError(f"{name} is a pipe or a device: only an ordinary file is replaced as a whole; write to one and copy it there")
    return known


def _keep_mode(beside: str, before: os.stat_result | None) -> None:
    if before is None:
        return
    now = os.stat(beside)
    if (now.st_uid, now.st_gid) != (before.st_uid, before.st_gid) and hasattr(os, "chown"):
        with contextlib.suppress(OSError):
            os.chown(beside, before.st_uid, before.st_gid)
    os.chmod(beside, stat.S_IMODE(before.st_mode))


def _remove(beside: str) -> None:
    with contextlib.suppress(FileNotFoundError):
        os.unlink(beside)
    _begun.pop(beside, None)


@atexit.register
def _remove_all() -> None:
    """What a thread was writing when the interpreter ended."""
    for beside in [name for name, process in list(_begun.items()) if process == os.getpid()]:
        with contextlib.suppress(OSError):
            _remove(beside)


@contextlib.contextmanager
def _told_to_end() -> Iterator[None]:
    """Turns a signal that would end the process at once into an exception, and ends the process by that signal afterwards."""
    came: list[int] = []

    def end(number: int, frame: FrameType | None) -> NoReturn:
        came.append(number)
        raise _Ended

    names = ("SIGTERM", "SIGHUP")
    numbers = [getattr(signal, name) for name in names if hasattr(signal, name)]
    ours = []
    if threading.current_thread() is threading.main_thread():
        ours = [number for number in numbers if signal.getsignal(number) is signal.SIG_DFL]
    try:
        for number in ours:
            signal.signal(number, end)
        yield
    finally:
        for number in ours:
            signal.signal(number, signal.SIG_DFL)
        if came:
            _remove_all()
            os.kill(os.getpid(), came[0])
